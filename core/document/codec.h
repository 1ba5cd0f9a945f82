#pragma once
// The three visitors of the key list: model to tree, tree to model, and the list itself as data.
// Included by the sources of this folder only.

#include "core/document/json_positions.h"
#include "core/document/json_text.h"
#include "core/document/key_table.h"
#include "core/document/keys.h"

#include <algorithm>
#include <map>
#include <type_traits>

namespace shaftwright::format
{

template <class T> inline constexpr bool isOptional = false;
template <class T> inline constexpr bool isOptional<std::optional<T>> = true;
template <class T> inline constexpr bool isVector = false;
template <class T> inline constexpr bool isVector<std::vector<T>> = true;
template <class T> inline constexpr bool isArray = false;
template <class T, std::size_t N> inline constexpr bool isArray<std::array<T, N>> = true;
template <class T> inline constexpr bool isMap = false;
template <class K, class T> inline constexpr bool isMap<std::map<K, T>> = true;
template <class T> inline constexpr bool isStrongId = false;
template <class Tag> inline constexpr bool isStrongId<StrongId<Tag>> = true;
template <class T> inline constexpr bool isVariant = false;
template <class... T> inline constexpr bool isVariant<std::variant<T...>> = true;

template <class T, class F, std::size_t... I> void forEachAlternativeOf(F&& f, std::index_sequence<I...>)
{
    (f(I, std::type_identity<std::variant_alternative_t<I, T>>{}), ...);
}

/// Calls f(index, type_identity<alternative>) for each alternative of a variant.
template <class T, class F> void forEachAlternative(F&& f)
{
    forEachAlternativeOf<T>(std::forward<F>(f), std::make_index_sequence<std::variant_size_v<T>>{});
}

/// Keys of T without describing them.
template <class T> std::vector<std::string> keysOf();

// --- Model to tree ---------------------------------------------------------------------------------------------

template <class T> JsonNode encode(const T& value);

template <class T> class EncodeVisitor
{
public:
    EncodeVisitor(const T& object, JsonNode& node) : m_object(object), m_node(node) {}

    template <class M> void operator()(const char* key, M T::*member, Presence presence, const Limits&, const char*)
    {
        (*this)(key, member, presence, "");
    }

    template <class M> void operator()(const char* key, M T::*member, Presence presence, const char*)
    {
        const M& value = m_object.*member;
        if constexpr (isOptional<M>) {
            if (value)
                m_node.add(key, encode(*value));
        } else if constexpr (std::is_same_v<M, ForceDirection>) {
            if (const auto* given = std::get_if<GivenDirection>(&value))
                m_node.add(key, encode(given->angle_deg));
        } else if constexpr (std::is_same_v<M, Unbalance>) {
            if (!std::holds_alternative<std::monostate>(value))
                m_node.add(key, encode(value));
        } else {
            static const T defaults{};
            if (presence == Presence::required || !(value == defaults.*member))
                m_node.add(key, encode(value));
        }
    }

    template <class M> void rows(const char* key, M T::*member, Presence presence, const char* meaning)
    {
        (*this)(key, member, presence, meaning);
    }

    void id(const char* key, std::string T::*member, const char*) { m_node.add(key, encode(m_object.*member)); }

    void constant(const char* key, const char* word, const char*) { m_node.add(key, JsonNode::ofText(word)); }

    void freeObject(const char* key, std::string T::*member, bool, const char*)
    {
        if (!(m_object.*member).empty())
            m_node.add(key, JsonNode::ofRaw(m_object.*member));
    }

    template <class M> void flat(M T::*member)
    {
        if constexpr (isOptional<M>) {
            if (m_object.*member)
                append(*(m_object.*member));
        } else {
            append(m_object.*member);
        }
    }

    template <class Variant> void choice(Variant T::*member)
    {
        using A = Alternatives<Variant>;
        m_node.add(A::key, JsonNode::ofText(A::words[(m_object.*member).index()]));
    }

    template <class Variant> void body(Variant T::*member)
    {
        std::visit([this](const auto& alternative) { this->append(alternative); }, m_object.*member);
    }

private:
    template <class U> void append(const U& value) { Keys<U>::visit(EncodeVisitor<U>(value, m_node)); }

    const T& m_object;
    JsonNode& m_node;
};

template <class T> JsonNode encode(const T& value)
{
    if constexpr (std::is_same_v<T, bool>) {
        return JsonNode::ofFlag(value);
    } else if constexpr (std::is_enum_v<T>) {
        static const std::vector<std::string_view> words = Words<T>::words();
        return JsonNode::ofText(std::string(words.at(static_cast<std::size_t>(value))));
    } else if constexpr (std::is_arithmetic_v<T>) {
        return JsonNode::ofNumber(static_cast<double>(value));
    } else if constexpr (std::is_same_v<T, std::string>) {
        return JsonNode::ofText(value);
    } else if constexpr (isStrongId<T>) {
        return JsonNode::ofText(value.value);
    } else if constexpr (isVector<T> || isArray<T>) {
        JsonNode node = JsonNode::array();
        for (const auto& item : value)
            node.items.push_back(encode(item));
        return node;
    } else if constexpr (isMap<T>) {
        JsonNode node = JsonNode::object();
        for (const auto& [key, item] : value) {
            if constexpr (isStrongId<std::decay_t<decltype(key)>>)
                node.add(key.value, encode(item));
            else
                node.add(key, encode(item));
        }
        return node;
    } else if constexpr (std::is_same_v<T, ElasticSupport>) {
        return encode(value.stiffness);
    } else if constexpr (isVariant<T>) {
        JsonNode node = JsonNode::object();
        node.add(Alternatives<T>::key, JsonNode::ofText(Alternatives<T>::words[value.index()]));
        std::visit(
            [&](const auto& alternative) {
                using U = std::decay_t<decltype(alternative)>;
                Keys<U>::visit(EncodeVisitor<U>(alternative, node));
            },
            value);
        return node;
    } else {
        JsonNode node = JsonNode::object();
        Keys<T>::visit(EncodeVisitor<T>(value, node));
        return node;
    }
}

// --- Tree to model ---------------------------------------------------------------------------------------------

/// Needs a tree that was held against the key table before; `source` is the text in which it stands.
template <class T> T decode(const JsonNode& node, std::string_view source);

template <class T> class DecodeVisitor
{
public:
    DecodeVisitor(const JsonNode& node, std::string_view source, T& object) : m_node(node), m_source(source), m_object(object) {}

    template <class M> void operator()(const char* key, M T::*member, Presence presence, const Limits&, const char*)
    {
        (*this)(key, member, presence, "");
    }

    template <class M> void operator()(const char* key, M T::*member, Presence, const char*)
    {
        const JsonNode* value = m_node.find(key);
        if (value == nullptr)
            return;
        if constexpr (isOptional<M>)
            m_object.*member = decode<typename M::value_type>(*value, m_source);
        else if constexpr (std::is_same_v<M, ForceDirection>)
            m_object.*member = GivenDirection{value->number};
        else
            m_object.*member = decode<M>(*value, m_source);
    }

    template <class M> void rows(const char* key, M T::*member, Presence presence, const char* meaning)
    {
        (*this)(key, member, presence, meaning);
    }

    void id(const char* key, std::string T::*member, const char*) { (*this)(key, member, Presence::required, ""); }

    void constant(const char*, const char*, const char*) {}

    void freeObject(const char* key, std::string T::*member, bool canonical, const char*)
    {
        const JsonNode* value = m_node.find(key);
        if (value == nullptr)
            return;
        if (value->kind == JsonNode::Kind::raw)
            m_object.*member = value->text;
        else if (canonical)
            m_object.*member = canonicalJson(*value);
        else
            m_object.*member = std::string(m_source.substr(value->begin, value->end - value->begin));
    }

    template <class M> void flat(M T::*member)
    {
        if constexpr (isOptional<M>) {
            using U = typename M::value_type;
            const std::vector<std::string> keys = keysOf<U>();
            if (std::any_of(keys.begin(), keys.end(), [&](const std::string& key) { return m_node.find(key) != nullptr; }))
                m_object.*member = decode<U>(m_node, m_source);
        } else {
            m_object.*member = decode<M>(m_node, m_source);
        }
    }

    template <class Variant> void choice(Variant T::*) {}

    template <class Variant> void body(Variant T::*member) { m_object.*member = decode<Variant>(m_node, m_source); }

private:
    const JsonNode& m_node;
    std::string_view m_source;
    T& m_object;
};

template <class T> T decode(const JsonNode& node, std::string_view source)
{
    T value{};
    if constexpr (std::is_same_v<T, bool>) {
        value = node.flag;
    } else if constexpr (std::is_enum_v<T>) {
        const std::vector<std::string_view> words = Words<T>::words();
        const auto found = std::find(words.begin(), words.end(), node.text);
        if (found != words.end())
            value = static_cast<T>(found - words.begin());
    } else if constexpr (std::is_arithmetic_v<T>) {
        value = static_cast<T>(node.number);
    } else if constexpr (std::is_same_v<T, std::string>) {
        value = node.text;
    } else if constexpr (isStrongId<T>) {
        value = T(node.text);
    } else if constexpr (isVector<T>) {
        value.reserve(node.items.size());
        for (const JsonNode& item : node.items)
            value.push_back(decode<typename T::value_type>(item, source));
    } else if constexpr (isArray<T>) {
        for (std::size_t i = 0; i < std::min(value.size(), node.items.size()); ++i)
            value[i] = decode<typename T::value_type>(node.items[i], source);
    } else if constexpr (isMap<T>) {
        for (const JsonMember& member : node.members)
            value.emplace(typename T::key_type(member.key), decode<typename T::mapped_type>(member.value, source));
    } else if constexpr (std::is_same_v<T, ElasticSupport>) {
        value.stiffness = decode<Matrix5>(node, source);
    } else if constexpr (isVariant<T>) {
        const JsonNode* word = node.find(Alternatives<T>::key);
        forEachAlternative<T>([&](std::size_t index, auto type) {
            using U = typename decltype(type)::type;
            if (word != nullptr && word->text == Alternatives<T>::words[index])
                value = decode<U>(node, source);
        });
    } else {
        Keys<T>::visit(DecodeVisitor<T>(node, source, value));
    }
    return value;
}

// --- The list as data ------------------------------------------------------------------------------------------

template <class T> KeyType typeOf(const Limits& limits);

template <class T> class DescribeVisitor
{
public:
    explicit DescribeVisitor(KeyType& type) : m_type(type) {}

    template <class M> void operator()(const char* key, M T::*member, Presence presence, const char* meaning)
    {
        (*this)(key, member, presence, Limits{}, meaning);
    }

    template <class M>
    void operator()(const char* key, M T::*member, Presence presence, const Limits& limits, const char* meaning)
    {
        KeyField field;
        field.key = key;
        field.required = presence == Presence::required;
        field.meaning = meaning;
        if constexpr (isOptional<M>) {
            field.type = typeOf<typename M::value_type>(limits);
        } else if constexpr (std::is_same_v<M, ForceDirection>) {
            field.type = typeOf<double>(limits);
        } else {
            field.type = typeOf<M>(limits);
            if constexpr (!isVariant<M>) {
                static const T defaults{};
                if (!field.required)
                    field.default_json = canonicalJson(encode(defaults.*member));
            }
        }
        m_type.fields.push_back(std::move(field));
    }

    template <class M> void rows(const char* key, M T::*member, Presence presence, const char* meaning)
    {
        (*this)(key, member, presence, Limits{}, meaning);
        m_type.fields.back().type.least_items = 1;
    }

    void id(const char* key, std::string T::*, const char* meaning)
    {
        KeyField field{key, {}, true, "", meaning, ""};
        field.type.kind = KeyType::Kind::id;
        m_type.fields.push_back(std::move(field));
    }

    void constant(const char* key, const char* word, const char* meaning)
    {
        KeyField field{key, {}, true, "", meaning, ""};
        field.type.kind = KeyType::Kind::word;
        field.type.words = {word};
        m_type.fields.push_back(std::move(field));
    }

    void freeObject(const char* key, std::string T::*, bool, const char* meaning)
    {
        KeyField field{key, {}, false, "", meaning, ""};
        field.type.kind = KeyType::Kind::free_object;
        m_type.fields.push_back(std::move(field));
    }

    template <class M> void flat(M T::*)
    {
        if constexpr (isOptional<M>) {
            KeyType flat;
            Keys<typename M::value_type>::visit(DescribeVisitor<typename M::value_type>(flat));
            std::string needed;
            for (const KeyField& field : flat.fields) {
                if (field.required)
                    needed = field.key;
            }
            for (KeyField& field : flat.fields) {
                if (!field.required)
                    field.needs = needed;
                field.required = false;
                m_type.fields.push_back(std::move(field));
            }
        } else {
            Keys<M>::visit(DescribeVisitor<M>(m_type));
        }
    }

    template <class Variant> void choice(Variant T::*) { addChoice<Variant>(m_type); }

    template <class Variant> void body(Variant T::*) {}

    template <class Variant> static void addChoice(KeyType& type)
    {
        using A = Alternatives<Variant>;
        KeyField field{A::key, {}, true, "", A::meaning, ""};
        field.type.kind = KeyType::Kind::word;
        type.discriminator = A::key;
        forEachAlternative<Variant>([&](std::size_t index, auto alternative_type) {
            using U = typename decltype(alternative_type)::type;
            if (A::words[index][0] == '\0')
                return;
            field.type.words.emplace_back(A::words[index]);
            KeyType alternative;
            Keys<U>::visit(DescribeVisitor<U>(alternative));
            type.alternatives.push_back({A::words[index], Keys<U>::meaning, std::move(alternative.fields)});
        });
        type.fields.push_back(std::move(field));
    }

private:
    KeyType& m_type;
};

template <class T> KeyType typeOf(const Limits& limits)
{
    using Kind = KeyType::Kind;
    KeyType type;
    if constexpr (std::is_same_v<T, bool>) {
        type.kind = Kind::boolean;
    } else if constexpr (std::is_enum_v<T>) {
        type.kind = Kind::word;
        for (const std::string_view word : Words<T>::words())
            type.words.emplace_back(word);
    } else if constexpr (std::is_arithmetic_v<T>) {
        type.kind = std::is_integral_v<T> ? Kind::integer : Kind::number;
        type.unit = limits.unit;
        type.least = limits.least;
        type.greatest = limits.greatest;
        type.least_excluded = limits.least_excluded;
    } else if constexpr (std::is_same_v<T, std::string>) {
        type.kind = Kind::text;
    } else if constexpr (isStrongId<T>) {
        type.kind = Kind::id;
    } else if constexpr (isVector<T>) {
        type.kind = Kind::list;
        type.element.push_back(typeOf<typename T::value_type>(limits));
    } else if constexpr (isArray<T>) {
        type.kind = Kind::list;
        type.fixed_items = std::tuple_size_v<T>;
        type.element.push_back(typeOf<typename T::value_type>(limits));
    } else if constexpr (isMap<T>) {
        type.kind = Kind::map;
        type.element.push_back(typeOf<typename T::mapped_type>(limits));
    } else if constexpr (std::is_same_v<T, ElasticSupport>) {
        type = typeOf<Matrix5>(limits);
    } else if constexpr (isVariant<T>) {
        type.kind = Kind::object;
        DescribeVisitor<Shaft>::addChoice<T>(type);
    } else {
        type.kind = Kind::object;
        type.name = Keys<T>::name;
        Keys<T>::visit(DescribeVisitor<T>(type));
    }
    return type;
}

template <class T> std::vector<std::string> keysOf()
{
    KeyType type;
    Keys<T>::visit(DescribeVisitor<T>(type));
    std::vector<std::string> keys;
    for (const KeyField& field : type.fields)
        keys.push_back(field.key);
    return keys;
}

} // namespace shaftwright::format
