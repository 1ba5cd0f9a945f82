#include "core/document/locate.h"

#include <string>

namespace shaftwright
{
namespace
{

const JsonNode* child(const JsonNode& node, const std::string& name)
{
    if (node.kind == JsonNode::Kind::object)
        return node.find(name);
    if (node.kind != JsonNode::Kind::array)
        return nullptr;
    for (const JsonNode& item : node.items) {
        const JsonNode* id = item.find("id");
        if (id != nullptr && id->kind == JsonNode::Kind::text && id->text == name)
            return &item;
    }
    // Lists without ids are counted from 1.
    if (!name.empty() && name.find_first_not_of("0123456789") == std::string::npos && name.size() < 9) {
        const auto index = static_cast<std::size_t>(std::stoul(name));
        if (index >= 1 && index <= node.items.size())
            return &node.items[index - 1];
    }
    return nullptr;
}

} // namespace

PathLocator::PathLocator(std::string_view text) : m_parse(parseJson(text)), m_lines(text) {}

TextPosition PathLocator::find(std::string_view path) const
{
    if (!m_parse.root)
        return {};
    const JsonNode* node = &*m_parse.root;
    while (!path.empty()) {
        const std::size_t dot = path.find('.');
        const JsonNode* next = child(*node, std::string(path.substr(0, dot)));
        if (next == nullptr)
            break;
        node = next;
        path = dot == std::string_view::npos ? std::string_view{} : path.substr(dot + 1);
    }
    return m_lines.at(node->begin);
}

} // namespace shaftwright
