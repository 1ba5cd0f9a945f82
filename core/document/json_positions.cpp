#include "core/document/json_positions.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <iterator>
#include <unordered_set>

namespace shaftwright
{

const JsonNode* JsonNode::find(std::string_view key) const
{
    for (const JsonMember& member : members) {
        if (member.key == key)
            return &member.value;
    }
    return nullptr;
}

JsonNode* JsonNode::find(std::string_view key)
{
    return const_cast<JsonNode*>(static_cast<const JsonNode*>(this)->find(key));
}

void JsonNode::add(std::string key, JsonNode value)
{
    members.push_back({std::move(key), std::move(value), 0});
}

void JsonNode::remove(std::string_view key)
{
    members.erase(std::remove_if(members.begin(), members.end(), [&](const JsonMember& member) { return member.key == key; }),
                  members.end());
}

JsonNode JsonNode::ofNumber(double value)
{
    JsonNode node;
    node.kind = Kind::number;
    node.number = value;
    return node;
}

JsonNode JsonNode::ofText(std::string value)
{
    JsonNode node;
    node.kind = Kind::text;
    node.text = std::move(value);
    return node;
}

JsonNode JsonNode::ofFlag(bool value)
{
    JsonNode node;
    node.kind = Kind::boolean;
    node.flag = value;
    return node;
}

JsonNode JsonNode::ofRaw(std::string value)
{
    JsonNode node;
    node.kind = Kind::raw;
    node.text = std::move(value);
    return node;
}

JsonNode JsonNode::object()
{
    JsonNode node;
    node.kind = Kind::object;
    return node;
}

JsonNode JsonNode::array()
{
    JsonNode node;
    node.kind = Kind::array;
    return node;
}

LineTable::LineTable(std::string_view text) : m_text(text)
{
    m_starts.push_back(0);
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\n')
            m_starts.push_back(i + 1);
    }
}

TextPosition LineTable::at(std::size_t offset) const
{
    offset = std::min(offset, m_text.size());
    const auto next = std::upper_bound(m_starts.begin(), m_starts.end(), offset);
    const std::size_t start = *std::prev(next);
    int column = 1;
    for (std::size_t i = start; i < offset; ++i) {
        const auto byte = static_cast<unsigned char>(m_text[i]);
        if ((byte & 0xC0u) != 0x80u)
            ++column;
    }
    return {static_cast<int>(next - m_starts.begin()), column};
}

namespace
{

/// Tells how far the lexer has read; all copies of the iterator share the place.
class CountingIterator
{
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    CountingIterator(const char* place, const char** furthest) : m_place(place), m_furthest(furthest) {}
    reference operator*() const { return *m_place; }
    CountingIterator& operator++()
    {
        ++m_place;
        *m_furthest = m_place;
        return *this;
    }
    CountingIterator operator++(int)
    {
        CountingIterator old = *this;
        ++*this;
        return old;
    }
    friend bool operator==(const CountingIterator& a, const CountingIterator& b) { return a.m_place == b.m_place; }

private:
    const char* m_place;
    const char** m_furthest;
};

class TreeBuilder
{
public:
    TreeBuilder(std::string_view text, const char* const* furthest) : m_text(text), m_furthest(furthest)
    {
        if (text.substr(0, 3) == "\xEF\xBB\xBF")
            m_last_end = 3;
    }

    // The interface that the parser calls; names are its own.
    bool null() { return place({}); }
    bool boolean(bool value) { return place(JsonNode::ofFlag(value)); }
    bool number_integer(std::int64_t value) { return place(JsonNode::ofNumber(static_cast<double>(value))); }
    bool number_unsigned(std::uint64_t value) { return place(JsonNode::ofNumber(static_cast<double>(value))); }
    bool number_float(double value, const std::string&) { return place(JsonNode::ofNumber(value)); }
    bool string(std::string& value) { return place(JsonNode::ofText(std::move(value))); }
    bool binary(nlohmann::json::binary_t&) { return false; }

    bool start_object(std::size_t) { return open(JsonNode::object()); }
    bool start_array(std::size_t) { return open(JsonNode::array()); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }

    bool key(std::string& value)
    {
        const auto [begin, end] = token();
        m_last_end = end;
        Level& level = m_open.back();
        level.key_begin = begin;
        level.duplicate = !level.seen.insert(value).second;
        if (level.duplicate)
            result.problems.push_back({JsonProblem::Kind::duplicate_key, begin, value});
        level.key = std::move(value);
        return true;
    }

    bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& error)
    {
        result.root.reset();
        m_open.clear();
        // The parser's own idea of its last token may reach back over several; ours starts behind the last good one.
        const std::size_t begin = afterSeparator(m_last_end);
        JsonProblem problem{JsonProblem::Kind::syntax, begin,
                            std::string(m_text.substr(begin, std::max(position, begin + 1) - begin))};
        if (error.id == 406) {
            problem.kind = JsonProblem::Kind::number_too_large;
        } else if (position > m_text.size()) {
            problem.kind = JsonProblem::Kind::truncated;
            problem.offset = m_text.size();
            problem.detail.clear();
        }
        result.problems.push_back(std::move(problem));
        m_failed = true;
        return false;
    }

    [[nodiscard]] bool failed() const { return m_failed; }

    JsonParse result;

private:
    struct Level {
        JsonNode node;
        std::string key;
        std::size_t key_begin = 0;
        bool duplicate = false;
        std::unordered_set<std::string> seen;
    };

    /// The next place behind white space and at most one comma or colon.
    [[nodiscard]] std::size_t afterSeparator(std::size_t at) const
    {
        const auto skipSpace = [&] {
            while (at < m_text.size() && std::string_view(" \t\r\n").find(m_text[at]) != std::string_view::npos)
                ++at;
        };
        skipSpace();
        if (at < m_text.size() && (m_text[at] == ',' || m_text[at] == ':')) {
            ++at;
            skipSpace();
        }
        return std::min(at, m_text.size());
    }

    /// Begin and end of the token that was just read.
    [[nodiscard]] std::pair<std::size_t, std::size_t> token() const
    {
        const std::size_t begin = afterSeparator(m_last_end);
        auto end = static_cast<std::size_t>(*m_furthest - m_text.data());
        // The lexer reads one character beyond a number.
        if (begin < m_text.size() && (m_text[begin] == '-' || (m_text[begin] >= '0' && m_text[begin] <= '9'))) {
            end = begin;
            while (end < m_text.size() && std::string_view("+-.0123456789eE").find(m_text[end]) != std::string_view::npos)
                ++end;
        }
        return {begin, end};
    }

    bool refuse(JsonProblem::Kind kind, std::size_t offset, std::size_t limit)
    {
        result.root.reset();
        result.problems.push_back({kind, offset, std::to_string(limit)});
        m_failed = true;
        return false;
    }

    bool countValue(std::size_t offset)
    {
        return ++m_values <= greatestJsonValues || refuse(JsonProblem::Kind::too_many_values, offset, greatestJsonValues);
    }

    bool place(JsonNode node)
    {
        const auto [begin, end] = token();
        node.begin = begin;
        node.end = end;
        m_last_end = end;
        if (!countValue(begin))
            return false;
        put(std::move(node));
        return true;
    }

    void put(JsonNode node)
    {
        if (m_open.empty()) {
            result.root = std::move(node);
            return;
        }
        Level& level = m_open.back();
        if (level.node.kind == JsonNode::Kind::array)
            level.node.items.push_back(std::move(node));
        else if (!level.duplicate)
            level.node.members.push_back({std::move(level.key), std::move(node), level.key_begin});
    }

    bool open(JsonNode node)
    {
        const auto [begin, end] = token();
        node.begin = begin;
        m_last_end = end;
        if (m_open.size() >= greatestJsonDepth)
            return refuse(JsonProblem::Kind::too_deep, begin, greatestJsonDepth);
        if (!countValue(begin))
            return false;
        m_open.emplace_back();
        m_open.back().node = std::move(node);
        return true;
    }

    bool close()
    {
        m_last_end = token().second;
        JsonNode node = std::move(m_open.back().node);
        node.end = m_last_end;
        m_open.pop_back();
        put(std::move(node));
        return true;
    }

    std::string_view m_text;
    const char* const* m_furthest;
    std::size_t m_last_end = 0;
    std::size_t m_values = 0;
    std::vector<Level> m_open;
    bool m_failed = false;
};

} // namespace

JsonParse parseJson(std::string_view text)
{
    if (text.size() > greatestJsonBytes) {
        JsonParse parse;
        parse.problems.push_back({JsonProblem::Kind::too_long, 0, std::to_string(greatestJsonBytes)});
        return parse;
    }
    const char* furthest = text.data();
    TreeBuilder builder(text, &furthest);
    const CountingIterator first(text.data(), &furthest);
    const CountingIterator last(text.data() + text.size(), &furthest);
    const bool read = nlohmann::json::sax_parse(first, last, &builder);
    if (!read || builder.failed())
        builder.result.root.reset();
    return std::move(builder.result);
}

} // namespace shaftwright
