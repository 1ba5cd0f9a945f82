#include "core/document/json_text.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <cmath>

namespace shaftwright
{

std::string jsonNumber(double value)
{
    assert(std::isfinite(value));
    if (value == 0.0)
        return "0";
    std::array<char, 40> buffer{};
    const auto written =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::abs(value), std::chars_format::scientific);
    const std::string_view text(buffer.data(), static_cast<std::size_t>(written.ptr - buffer.data()));
    const std::size_t e = text.find('e');
    std::string digits;
    for (const char c : text.substr(0, e)) {
        if (c != '.')
            digits += c;
    }
    int exponent = 0;
    std::string_view exponent_text = text.substr(e + 1);
    if (exponent_text.front() == '+')
        exponent_text.remove_prefix(1);
    std::from_chars(exponent_text.data(), exponent_text.data() + exponent_text.size(), exponent);

    // ECMAScript Number::toString: k digits, value = digits * 10^(n - k).
    const int k = static_cast<int>(digits.size());
    const int n = exponent + 1;
    std::string out = value < 0.0 ? "-" : "";
    if (k <= n && n <= 21) {
        out += digits;
        out.append(static_cast<std::size_t>(n - k), '0');
    } else if (0 < n && n <= 21) {
        out += digits.substr(0, static_cast<std::size_t>(n)) + '.' + digits.substr(static_cast<std::size_t>(n));
    } else if (-6 < n && n <= 0) {
        out += "0.";
        out.append(static_cast<std::size_t>(-n), '0');
        out += digits;
    } else {
        out += digits.front();
        if (k > 1)
            out += '.' + digits.substr(1);
        out += n - 1 < 0 ? "e-" : "e+";
        out += std::to_string(std::abs(n - 1));
    }
    return out;
}

std::string jsonText(std::string_view text)
{
    std::string out = "\"";
    for (const char c : text) {
        switch (c) {
        case '"':
            out += "\\\"";
            break;
        case '\\':
            out += "\\\\";
            break;
        case '\b':
            out += "\\b";
            break;
        case '\f':
            out += "\\f";
            break;
        case '\n':
            out += "\\n";
            break;
        case '\r':
            out += "\\r";
            break;
        case '\t':
            out += "\\t";
            break;
        default:
            if (static_cast<unsigned char>(c) < 0x20u) {
                static constexpr char hex[] = "0123456789abcdef";
                out += "\\u00";
                out += hex[static_cast<unsigned char>(c) >> 4u];
                out += hex[static_cast<unsigned char>(c) & 0xFu];
            } else {
                out += c;
            }
        }
    }
    return out + '"';
}

namespace
{

/// UTF-16 code units of valid UTF-8, for the order of RFC 8785.
std::u16string utf16(std::string_view text)
{
    std::u16string out;
    for (std::size_t i = 0; i < text.size();) {
        const auto first = static_cast<unsigned char>(text[i]);
        const std::size_t length = first < 0x80u ? 1 : first < 0xE0u ? 2 : first < 0xF0u ? 3 : 4;
        std::uint32_t code = length == 1 ? first : first & (0xFFu >> (length + 1));
        for (std::size_t j = 1; j < length && i + j < text.size(); ++j)
            code = (code << 6u) | (static_cast<unsigned char>(text[i + j]) & 0x3Fu);
        i += length;
        if (code >= 0x10000u) {
            code -= 0x10000u;
            out += static_cast<char16_t>(0xD800u + (code >> 10u));
            out += static_cast<char16_t>(0xDC00u + (code & 0x3FFu));
        } else {
            out += static_cast<char16_t>(code);
        }
    }
    return out;
}

void writeScalar(const JsonNode& node, std::string& out)
{
    switch (node.kind) {
    case JsonNode::Kind::null:
        out += "null";
        break;
    case JsonNode::Kind::boolean:
        out += node.flag ? "true" : "false";
        break;
    case JsonNode::Kind::number:
        out += jsonNumber(node.number);
        break;
    case JsonNode::Kind::text:
        out += jsonText(node.text);
        break;
    case JsonNode::Kind::raw:
        out += node.text;
        break;
    case JsonNode::Kind::array:
    case JsonNode::Kind::object:
        break;
    }
}

void writeCanonical(const JsonNode& node, std::string& out)
{
    if (node.kind == JsonNode::Kind::array) {
        out += '[';
        for (std::size_t i = 0; i < node.items.size(); ++i) {
            if (i > 0)
                out += ',';
            writeCanonical(node.items[i], out);
        }
        out += ']';
    } else if (node.kind == JsonNode::Kind::object) {
        std::vector<std::pair<std::u16string, const JsonMember*>> sorted;
        sorted.reserve(node.members.size());
        for (const JsonMember& member : node.members)
            sorted.emplace_back(utf16(member.key), &member);
        std::sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
        out += '{';
        for (std::size_t i = 0; i < sorted.size(); ++i) {
            if (i > 0)
                out += ',';
            out += jsonText(sorted[i].second->key) + ':';
            writeCanonical(sorted[i].second->value, out);
        }
        out += '}';
    } else {
        writeScalar(node, out);
    }
}

bool isContainer(const JsonNode& node)
{
    return node.kind == JsonNode::Kind::array || node.kind == JsonNode::Kind::object;
}

bool isEmpty(const JsonNode& node)
{
    return node.items.empty() && node.members.empty();
}

/// Text on one line; none when the value is not small: it holds more than one level below it, or raw text.
bool writeOnOneLine(const JsonNode& node, std::string& out, int levels)
{
    if (!isContainer(node)) {
        if (node.kind == JsonNode::Kind::raw)
            return false;
        writeScalar(node, out);
        return true;
    }
    if (levels == 0 && !isEmpty(node))
        return false;
    const bool list = node.kind == JsonNode::Kind::array;
    out += list ? "[" : isEmpty(node) ? "{" : "{ ";
    for (std::size_t i = 0; i < (list ? node.items.size() : node.members.size()); ++i) {
        if (i > 0)
            out += ", ";
        if (!list)
            out += jsonText(node.members[i].key) + ": ";
        if (!writeOnOneLine(list ? node.items[i] : node.members[i].value, out, levels - 1))
            return false;
    }
    out += list ? "]" : isEmpty(node) ? "}" : " }";
    return true;
}

constexpr std::size_t lineWidth = 112;

void writeReadable(const JsonNode& node, std::size_t indent, std::size_t used, bool top, std::string& out)
{
    if (!isContainer(node)) {
        writeScalar(node, out);
        return;
    }
    const bool numbers = node.kind == JsonNode::Kind::array &&
                         std::all_of(node.items.begin(), node.items.end(),
                                     [](const JsonNode& item) { return item.kind == JsonNode::Kind::number; });
    std::string line;
    if (!top && writeOnOneLine(node, line, node.kind == JsonNode::Kind::array ? 1 : 2) &&
        (numbers || used + line.size() <= lineWidth)) {
        out += line;
        return;
    }
    const bool list = node.kind == JsonNode::Kind::array;
    const std::string pad(indent + 2, ' ');
    out += list ? "[\n" : "{\n";
    for (std::size_t i = 0; i < (list ? node.items.size() : node.members.size()); ++i) {
        if (i > 0)
            out += ",\n";
        out += pad;
        std::size_t before = pad.size();
        if (!list) {
            const std::string key = jsonText(node.members[i].key) + ": ";
            before += key.size();
            out += key;
        }
        writeReadable(list ? node.items[i] : node.members[i].value, indent + 2, before, false, out);
    }
    out += '\n' + std::string(indent, ' ') + (list ? "]" : "}");
}

} // namespace

std::string canonicalJson(const JsonNode& node)
{
    std::string out;
    writeCanonical(node, out);
    return out;
}

std::string readableJson(const JsonNode& node)
{
    std::string out;
    writeReadable(node, 0, 0, true, out);
    return out + '\n';
}

bool allFinite(const JsonNode& node)
{
    if (node.kind == JsonNode::Kind::number)
        return std::isfinite(node.number);
    return std::all_of(node.items.begin(), node.items.end(), allFinite) &&
           std::all_of(node.members.begin(), node.members.end(),
                       [](const JsonMember& member) { return allFinite(member.value); });
}

} // namespace shaftwright
