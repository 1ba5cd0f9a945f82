#include "core/document/paths.h"

#include "core/document/document.h"
#include "core/document/document_tree.h"
#include "core/document/json_text.h"
#include "core/model/defaults.h"
#include "core/units/number_text.h"
#include "core/units/quantity.h"

#include <algorithm>
#include <optional>
#include <set>

namespace shaftwright
{
namespace
{

using Kind = KeyType::Kind;

/// Chapters of the file that hold no inputs of the calculation.
bool isInputChapter(std::string_view key)
{
    for (const std::string_view other :
         {"format", "format_version", "arrangement", "origins", "remarks", "acceptances", "revisions", "extra"}) {
        if (key == other)
            return false;
    }
    return true;
}

std::string pickedWord(const JsonNode& node, const KeyType& type)
{
    const JsonNode* word = type.discriminator.empty() ? nullptr : node.find(type.discriminator);
    return word == nullptr ? std::string() : word->text;
}

std::string joined(const std::string& path, std::string_view segment)
{
    return path.empty() ? std::string(segment) : path + "." + std::string(segment);
}

std::string elementName(const JsonNode& item, const KeyType& list, std::size_t index)
{
    const JsonNode* id = list.isListById() ? item.find("id") : nullptr;
    return id != nullptr ? id->text : std::to_string(index);
}

class Collector
{
public:
    std::vector<AddressedInput> inputs;

    void walk(const JsonNode& node, const KeyType& type, const std::string& path)
    {
        switch (type.kind) {
        case Kind::object:
            for (const KeyField* field : type.allFields(pickedWord(node, type))) {
                if ((path.empty() && !isInputChapter(field->key)) || field->type.kind == Kind::id)
                    continue;
                const JsonNode* value = node.find(field->key);
                const std::string below = joined(path, field->key);
                if (value != nullptr)
                    walk(*value, field->type, below);
                else if (!field->default_json.empty())
                    leaf(*parseJson(field->default_json).root, field->type, below, Origin::assumed);
            }
            break;
        case Kind::list:
            for (std::size_t i = 0; i < node.items.size(); ++i)
                walk(node.items[i], type.element.front(), joined(path, elementName(node.items[i], type, i)));
            break;
        case Kind::map:
            for (const JsonMember& member : node.members)
                walk(member.value, type.element.front(), joined(path, member.key));
            break;
        default:
            leaf(node, type, path, Origin::given);
        }
    }

    void leaf(const JsonNode& node, const KeyType& type, const std::string& path, Origin origin)
    {
        if (node.kind == JsonNode::Kind::number)
            inputs.push_back({path, node.number, type.unit, origin});
        else if (node.kind == JsonNode::Kind::boolean)
            inputs.push_back({path, std::string(node.flag ? "true" : "false"), "", origin});
        else if (node.kind == JsonNode::Kind::text && (type.kind == Kind::word || !node.text.empty()))
            inputs.push_back({path, node.text, "", origin});
    }
};

std::optional<QuantityKind> quantityOf(std::string_view unit)
{
    static constexpr std::pair<std::string_view, QuantityKind> kinds[] = {{"", QuantityKind::number},
                                                                          {"mm", QuantityKind::length_mm},
                                                                          {"deg", QuantityKind::angle_deg},
                                                                          {"N", QuantityKind::force_N},
                                                                          {"Nmm", QuantityKind::moment_Nmm},
                                                                          {"kW", QuantityKind::power_kW},
                                                                          {"rpm", QuantityKind::speed_rpm},
                                                                          {"h", QuantityKind::life_h},
                                                                          {"%", QuantityKind::percent},
                                                                          {"kg", QuantityKind::mass_kg},
                                                                          {"degC", QuantityKind::temperature_C},
                                                                          {"mrad", QuantityKind::tilt_mrad},
                                                                          {"N/mm", QuantityKind::line_load_N_per_mm}};
    for (const auto& [name, kind] : kinds) {
        if (name == unit)
            return kind;
    }
    return std::nullopt;
}

/// Where a path leads to.
struct Target {
    JsonNode* parent = nullptr; ///< object, list or map that holds the value
    std::string key;            ///< in an object or map
    std::size_t index = 0;      ///< in a list
    const KeyType* type = nullptr;
    const KeyField* field = nullptr; ///< none for elements of lists and maps
};

class Finder
{
public:
    Finder(JsonNode& root, std::string_view path) : m_root(root), m_path(path) {}

    std::optional<Target> find()
    {
        JsonNode* node = &m_root;
        const KeyType* type = &documentType();
        Target target;
        std::string_view left = m_path;
        bool first = true;
        while (!left.empty()) {
            const std::size_t dot = left.find('.');
            const std::string segment(left.substr(0, dot));
            left = dot == std::string_view::npos ? std::string_view() : left.substr(dot + 1);
            if (dot != std::string_view::npos && left.empty())
                return unknown(segment, {});
            if (node == nullptr)
                return unknown(segment, {});
            if (type->kind == Kind::object) {
                const std::string word = pickedWord(*node, *type);
                const KeyField* field = type->find(segment, word);
                if (field == nullptr || (first && !isInputChapter(segment))) {
                    std::vector<std::string> keys;
                    for (const KeyField* candidate : type->allFields(word)) {
                        if (!first || isInputChapter(candidate->key))
                            keys.push_back(candidate->key);
                    }
                    return unknown(segment, keys);
                }
                target = {node, segment, 0, &field->type, field};
                JsonNode* next = node->find(segment);
                // A chapter that is not in the file yet is opened on the way.
                if (next == nullptr && !left.empty() && (field->type.kind == Kind::object || field->type.kind == Kind::map)) {
                    node->add(segment, JsonNode::object());
                    next = node->find(segment);
                }
                node = next;
                type = &field->type;
            } else if (type->kind == Kind::list) {
                std::vector<std::string> names;
                std::size_t found = node->items.size();
                for (std::size_t i = 0; i < node->items.size(); ++i) {
                    names.push_back(elementName(node->items[i], *type, i));
                    if (names.back() == segment)
                        found = i;
                }
                if (found == node->items.size())
                    return unknown(segment, names);
                target = {node, "", found, &type->element.front(), nullptr};
                node = &node->items[found];
                type = &type->element.front();
            } else if (type->kind == Kind::map) {
                target = {node, segment, 0, &type->element.front(), nullptr};
                JsonNode* next = node->find(segment);
                if (next == nullptr && !left.empty()) {
                    node->add(segment, JsonNode::object());
                    next = node->find(segment);
                }
                node = next;
                type = &type->element.front();
            } else {
                return unknown(segment, {});
            }
            first = false;
        }
        if (target.parent == nullptr)
            return unknown("", {});
        return target;
    }

    [[nodiscard]] const Finding& finding() const { return m_finding; }

private:
    std::optional<Target> unknown(const std::string& key, const std::vector<std::string>& candidates)
    {
        m_finding.severity = Severity::stop;
        m_finding.code = "path-unknown";
        m_finding.path = std::string(m_path);
        m_finding.values = {{"path", std::string(m_path)}, {"key", key}, {"suggestion", nearestWord(key, candidates)}};
        return std::nullopt;
    }

    JsonNode& m_root;
    std::string_view m_path;
    Finding m_finding;
};

Finding invalid(std::string_view path, NamedValues values, const std::string& reader_code)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = "value-invalid";
    finding.path = std::string(path);
    finding.variant = reader_code;
    finding.values = std::move(values);
    finding.values.set("reader_code", reader_code);
    return finding;
}

bool isLeaf(const KeyType& type)
{
    return type.kind != Kind::object && type.kind != Kind::list && type.kind != Kind::map && type.kind != Kind::free_object &&
           type.kind != Kind::id;
}

} // namespace

std::string_view toString(Origin origin)
{
    switch (origin) {
    case Origin::given:
        return "given";
    case Origin::assumed:
        return "assumed";
    case Origin::proposed:
        return "proposed";
    }
    return "";
}

std::vector<AddressedInput> addressableInputs(const Arrangement& arrangement)
{
    Collector collector;
    collector.walk(format::encodeDocument(arrangement), documentType(), "");
    std::set<std::string> known;
    for (AddressedInput& input : collector.inputs) {
        known.insert(input.path);
        // What was proposed for a whole (a bearing) is proposed in all its inputs.
        for (const auto& [path, origin] : arrangement.proposed) {
            if (input.path == path || (input.path.size() > path.size() && input.path.compare(0, path.size(), path) == 0 &&
                                       input.path[path.size()] == '.'))
                input.origin = Origin::proposed;
        }
    }
    for (const Assumption& assumption : settle(arrangement).assumptions) {
        if (known.insert(assumption.path).second)
            collector.inputs.push_back({assumption.path, assumption.value, assumption.unit, Origin::assumed});
    }
    return std::move(collector.inputs);
}

Result<Arrangement> setByPath(const Arrangement& arrangement, std::string_view path, std::string_view value)
{
    JsonNode root = format::encodeDocument(arrangement);
    Finder finder(root, path);
    const std::optional<Target> target = finder.find();
    if (!target)
        return finder.finding();
    const KeyType& type = *target->type;
    if (!isLeaf(type)) {
        Finding finding = invalid(path, {{"path", std::string(path)}}, "");
        finding.code = "path-not-settable";
        finding.values = {{"path", std::string(path)}};
        return finding;
    }

    JsonNode node;
    bool clear = false;
    if (type.kind == Kind::number || type.kind == Kind::integer) {
        if (value.empty() && target->field != nullptr && !target->field->required) {
            clear = true;
        } else if (const std::optional<double> plain = parseDecimal(value)) {
            node = JsonNode::ofNumber(*plain);
        } else {
            const auto parsed = parseQuantity(value, quantityOf(type.unit).value_or(QuantityKind::number));
            if (const auto* error = std::get_if<QuantityError>(&parsed))
                return invalid(path,
                               {{"value", std::string(value)},
                                {"unit", type.unit},
                                {"quantity_code", error->code},
                                {"detail", error->detail}},
                               "quantity");
            node = JsonNode::ofNumber(std::get<double>(parsed));
        }
    } else if (value.empty() && type.kind != Kind::text && target->field != nullptr && !target->field->required) {
        clear = true;
    } else if (type.kind == Kind::boolean && (value == "true" || value == "false")) {
        node = JsonNode::ofFlag(value == "true");
    } else {
        node = JsonNode::ofText(std::string(value));
    }

    if (target->parent->kind == JsonNode::Kind::array) {
        target->parent->items[target->index] = std::move(node);
    } else {
        JsonNode* present = target->parent->find(target->key);
        if (clear)
            target->parent->remove(target->key);
        else if (present != nullptr)
            *present = std::move(node);
        else
            target->parent->add(target->key, std::move(node));
    }

    const std::vector<format::TreeError> errors = format::checkDocument(root);
    if (!errors.empty())
        return invalid(errors.front().path, errors.front().values, errors.front().code);
    Arrangement changed = format::decodeDocument(root, {});
    // What somebody sets is given from then on.
    changed.proposed.erase(std::string(path));
    return changed;
}

bool isInputPath(const Arrangement& arrangement, std::string_view path)
{
    JsonNode root = format::encodeDocument(arrangement);
    Finder finder(root, path);
    const std::optional<Target> target = finder.find();
    return target && isLeaf(*target->type);
}

} // namespace shaftwright
