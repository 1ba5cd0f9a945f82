#pragma once
// Checks a JSON tree against a JSON Schema (draft 2020-12), for the keywords that our schema uses. An unknown keyword is an
// error of its own, so that a schema cannot outgrow this check unnoticed.

#include "core/document/json_positions.h"

#include <map>
#include <regex>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

namespace shaftwright::test
{

class SchemaCheck
{
public:
    explicit SchemaCheck(const JsonNode& schema) : m_root(schema) {}

    /// What is wrong, each with its place; empty: valid.
    [[nodiscard]] std::vector<std::string> errors(const JsonNode& value) const
    {
        std::vector<std::string> list;
        check(value, m_root, "", list);
        return list;
    }

private:
    static const char* typeName(const JsonNode& value)
    {
        switch (value.kind) {
        case JsonNode::Kind::null:
            return "null";
        case JsonNode::Kind::boolean:
            return "boolean";
        case JsonNode::Kind::number:
            return "number";
        case JsonNode::Kind::text:
            return "string";
        case JsonNode::Kind::array:
            return "array";
        case JsonNode::Kind::object:
        case JsonNode::Kind::raw:
            return "object";
        }
        return "";
    }

    static bool equal(const JsonNode& a, const JsonNode& b)
    {
        return a.kind == b.kind && a.text == b.text && a.number == b.number && a.flag == b.flag;
    }

    const JsonNode& resolve(const std::string& reference) const
    {
        const std::string prefix = "#/$defs/";
        const JsonNode* definitions = m_root.find("$defs");
        const JsonNode* found = reference.compare(0, prefix.size(), prefix) == 0 && definitions != nullptr
                                    ? definitions->find(reference.substr(prefix.size()))
                                    : nullptr;
        if (found == nullptr)
            throw std::runtime_error("unknown reference " + reference);
        return *found;
    }

    void check(const JsonNode& value, const JsonNode& schema, const std::string& path, std::vector<std::string>& list) const
    {
        const auto wrong = [&](const std::string& what) { list.push_back(path + ": " + what); };
        for (const JsonMember& member : schema.members) {
            const std::string& keyword = member.key;
            const JsonNode& rule = member.value;
            static const std::set<std::string> annotations = {"$schema", "$id", "$defs", "title", "description", "default"};
            if (annotations.count(keyword) > 0)
                continue;
            if (keyword == "$ref") {
                check(value, resolve(rule.text), path, list);
            } else if (keyword == "type") {
                const bool integer = rule.text == "integer" && value.kind == JsonNode::Kind::number &&
                                     value.number == static_cast<double>(static_cast<long long>(value.number));
                if (!integer && rule.text != typeName(value))
                    wrong("is no " + rule.text);
            } else if (keyword == "enum") {
                bool any = false;
                for (const JsonNode& item : rule.items)
                    any = any || equal(item, value);
                if (!any)
                    wrong("is none of the words");
            } else if (keyword == "const") {
                if (!equal(rule, value))
                    wrong("is not " + rule.text);
            } else if (keyword == "minimum" || keyword == "maximum" || keyword == "exclusiveMinimum") {
                if (value.kind != JsonNode::Kind::number)
                    continue;
                const bool fits = keyword == "minimum"   ? value.number >= rule.number
                                  : keyword == "maximum" ? value.number <= rule.number
                                                         : value.number > rule.number;
                if (!fits)
                    wrong("breaks " + keyword);
            } else if (keyword == "pattern") {
                static std::map<std::string, std::regex> compiled;
                const auto pattern = compiled.try_emplace(rule.text, rule.text).first;
                if (value.kind == JsonNode::Kind::text && !std::regex_search(value.text, pattern->second))
                    wrong("does not match the pattern");
            } else if (keyword == "minItems" || keyword == "maxItems") {
                const auto count = static_cast<double>(value.items.size());
                if (value.kind == JsonNode::Kind::array && (keyword == "minItems" ? count < rule.number : count > rule.number))
                    wrong("breaks " + keyword);
            } else if (keyword == "items") {
                for (std::size_t i = 0; i < value.items.size(); ++i)
                    check(value.items[i], rule, path + "/" + std::to_string(i), list);
            } else if (keyword == "required") {
                for (const JsonNode& key : rule.items) {
                    if (value.kind == JsonNode::Kind::object && value.find(key.text) == nullptr)
                        wrong("lacks " + key.text);
                }
            } else if (keyword == "dependentRequired") {
                for (const JsonMember& need : rule.members) {
                    for (const JsonNode& key : need.value.items) {
                        if (value.find(need.key) != nullptr && value.find(key.text) == nullptr)
                            wrong("lacks " + key.text);
                    }
                }
            } else if (keyword == "properties") {
                for (const JsonMember& property : rule.members) {
                    if (const JsonNode* present = value.find(property.key))
                        check(*present, property.value, path + "/" + property.key, list);
                }
            } else if (keyword == "additionalProperties") {
                const JsonNode* properties = schema.find("properties");
                for (const JsonMember& present : value.members) {
                    if (properties != nullptr && properties->find(present.key) != nullptr)
                        continue;
                    if (rule.kind == JsonNode::Kind::boolean && !rule.flag)
                        wrong("has the unknown key " + present.key);
                    else if (rule.kind == JsonNode::Kind::object)
                        check(present.value, rule, path + "/" + present.key, list);
                }
            } else if (keyword == "oneOf") {
                int fitting = 0;
                for (const JsonNode& choice : rule.items) {
                    std::vector<std::string> inner;
                    check(value, choice, path, inner);
                    fitting += inner.empty() ? 1 : 0;
                }
                if (fitting != 1)
                    wrong("fits " + std::to_string(fitting) + " of the alternatives");
            } else {
                throw std::runtime_error("keyword not known to this check: " + keyword);
            }
        }
    }

    const JsonNode& m_root;
};

} // namespace shaftwright::test
