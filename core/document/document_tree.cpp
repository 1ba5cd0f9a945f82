#include "core/document/document_tree.h"

#include "core/document/codec.h"
#include "core/document/document.h"

#include <cmath>
#include <set>

namespace shaftwright::format
{
namespace
{

constexpr std::size_t shownLength = 60;

/// At most some characters of a text, cut between code points.
std::string shortened(std::string_view text)
{
    if (text.size() <= shownLength)
        return std::string(text);
    std::size_t length = shownLength;
    while (length > 0 && (static_cast<unsigned char>(text[length]) & 0xC0u) == 0x80u)
        --length;
    return std::string(text.substr(0, length)) + "...";
}

std::string kindName(const JsonNode& node)
{
    switch (node.kind) {
    case JsonNode::Kind::null:
        return "null";
    case JsonNode::Kind::boolean:
        return "boolean";
    case JsonNode::Kind::number:
        return "number";
    case JsonNode::Kind::text:
        return "text";
    case JsonNode::Kind::array:
        return "list";
    case JsonNode::Kind::object:
    case JsonNode::Kind::raw:
        return "object";
    }
    return {};
}

std::string joined(const std::string& path, std::string_view segment)
{
    return path.empty() ? std::string(segment) : path + "." + std::string(segment);
}

class Checker
{
public:
    std::vector<TreeError> errors;

    void value(const JsonNode& node, const KeyType& type, const std::string& path)
    {
        using Kind = KeyType::Kind;
        switch (type.kind) {
        case Kind::number:
        case Kind::integer:
            number(node, type, path);
            break;
        case Kind::boolean:
            expect(node, JsonNode::Kind::boolean, "boolean", path);
            break;
        case Kind::text:
            if (expect(node, JsonNode::Kind::text, "text", path) && !isUtf8(node.text))
                report("file-type", node.begin, path, {{"expected", "text"}, {"found", "bytes"}});
            break;
        case Kind::id:
            if (expect(node, JsonNode::Kind::text, "id", path) && !isId(node.text))
                report("file-type", node.begin, path, {{"expected", "id"}, {"found", shown(node.text)}});
            break;
        case Kind::word:
            word(node, type, path);
            break;
        case Kind::object:
            if (expect(node, JsonNode::Kind::object, "object", path))
                object(node, type, path);
            break;
        case Kind::list:
            if (expect(node, JsonNode::Kind::array, "list", path))
                list(node, type, path);
            break;
        case Kind::map:
            if (expect(node, JsonNode::Kind::object, "object", path)) {
                for (const JsonMember& member : node.members) {
                    if (!isUtf8(member.key))
                        report("file-type", member.key_begin, path, {{"expected", "text"}, {"found", "bytes"}});
                    value(member.value, type.element.front(), joined(path, shortened(member.key)));
                }
            }
            break;
        case Kind::free_object:
            if (node.kind == JsonNode::Kind::raw) {
                const JsonParse parse = parseJson(node.text);
                if (!parse.root || !parse.problems.empty() || parse.root->kind != JsonNode::Kind::object)
                    report("file-type", node.begin, path, {{"expected", "object"}, {"found", "text"}});
            } else {
                expect(node, JsonNode::Kind::object, "object", path);
            }
            break;
        }
    }

    void report(std::string code, std::size_t offset, std::string path, NamedValues values)
    {
        errors.push_back({std::move(code), offset, std::move(path), std::move(values)});
    }

    static std::string shown(const std::string& text) { return isUtf8(text) ? shortened(text) : "bytes"; }

private:
    bool expect(const JsonNode& node, JsonNode::Kind kind, const char* expected, const std::string& path)
    {
        if (node.kind == kind)
            return true;
        report("file-type", node.begin, path, {{"expected", expected}, {"found", kindName(node)}});
        return false;
    }

    void number(const JsonNode& node, const KeyType& type, const std::string& path)
    {
        const bool integer = type.kind == KeyType::Kind::integer;
        if (!expect(node, JsonNode::Kind::number, integer ? "integer" : "number", path))
            return;
        if (integer && std::isfinite(node.number) && node.number != std::floor(node.number)) {
            report("file-type", node.begin, path, {{"expected", "integer"}, {"found", jsonNumber(node.number)}});
            return;
        }
        const bool low = type.least_excluded ? !(node.number > type.least) : !(node.number >= type.least);
        if (std::isfinite(node.number) && !low && node.number <= type.greatest)
            return;
        const TextValue shown_value = std::isfinite(node.number) ? TextValue(node.number) : TextValue(std::string("not finite"));
        report("file-range", node.begin, path,
               {{"value", shown_value},
                {"least", type.least},
                {"greatest", type.greatest},
                {"unit", type.unit},
                {"least_excluded", type.least_excluded ? 1.0 : 0.0}});
    }

    void word(const JsonNode& node, const KeyType& type, const std::string& path)
    {
        if (!expect(node, JsonNode::Kind::text, "word", path))
            return;
        if (std::find(type.words.begin(), type.words.end(), node.text) != type.words.end())
            return;
        std::string words;
        for (const std::string& candidate : type.words)
            words += (words.empty() ? "" : ", ") + candidate;
        report("file-type", node.begin, path,
               {{"expected", "word"},
                {"found", shown(node.text)},
                {"words", words},
                {"suggestion", nearestWord(node.text, type.words)}});
    }

    void object(const JsonNode& node, const KeyType& type, const std::string& path)
    {
        std::string picked;
        bool known_word = true;
        if (!type.discriminator.empty()) {
            const JsonNode* discriminator = node.find(type.discriminator);
            picked = discriminator == nullptr ? "" : discriminator->text;
            known_word = std::any_of(type.alternatives.begin(), type.alternatives.end(),
                                     [&](const KeyAlternative& alternative) { return alternative.word == picked; });
        }
        const std::vector<const KeyField*> fields = type.allFields(picked);
        for (const JsonMember& member : node.members) {
            const KeyField* field = type.find(member.key, picked);
            if (field != nullptr) {
                value(member.value, field->type, joined(path, member.key));
                continue;
            }
            const bool elsewhere = !known_word && std::any_of(type.alternatives.begin(), type.alternatives.end(),
                                                              [&](const KeyAlternative& alternative) {
                                                                  return type.find(member.key, alternative.word) != nullptr;
                                                              });
            if (elsewhere)
                continue;
            std::vector<std::string> candidates;
            for (const KeyField* candidate : fields)
                candidates.push_back(candidate->key);
            report("file-unknown-key", member.key_begin, joined(path, shown(member.key)),
                   {{"key", shown(member.key)}, {"suggestion", nearestWord(member.key, candidates)}});
        }
        for (const KeyField* field : fields) {
            const JsonNode* present = node.find(field->key);
            if (field->required && present == nullptr)
                report("file-missing-key", node.begin, joined(path, field->key), {{"key", field->key}});
            if (!field->needs.empty() && present != nullptr && node.find(field->needs) == nullptr &&
                std::none_of(errors.begin(), errors.end(), [&](const TreeError& error) {
                    return error.code == "file-missing-key" && error.path == joined(path, field->needs);
                }))
                report("file-missing-key", node.begin, joined(path, field->needs), {{"key", field->needs}});
        }
    }

    void list(const JsonNode& node, const KeyType& type, const std::string& path)
    {
        const std::size_t count = node.items.size();
        if ((type.fixed_items > 0 && count != type.fixed_items) || count < type.least_items) {
            report("file-count", node.begin, path,
                   {{"expected", static_cast<double>(std::max(type.fixed_items, type.least_items))},
                    {"found", static_cast<double>(count)}});
        }
        const bool by_id = type.isListById();
        std::set<std::string> ids;
        for (std::size_t i = 0; i < count; ++i) {
            std::string segment = std::to_string(i);
            const JsonNode* id = by_id ? node.items[i].find("id") : nullptr;
            if (id != nullptr && id->kind == JsonNode::Kind::text && isId(id->text)) {
                segment = id->text;
                if (!ids.insert(id->text).second)
                    report("file-duplicate-id", id->begin, joined(joined(path, segment), "id"), {{"id", id->text}});
            }
            value(node.items[i], type.element.front(), joined(path, segment));
        }
    }
};

std::set<std::string> idsOf(const JsonNode& root, const char* key)
{
    std::set<std::string> ids;
    if (const JsonNode* list = root.find(key)) {
        for (const JsonNode& item : list->items) {
            if (const JsonNode* id = item.find("id"))
                ids.insert(id->text);
        }
    }
    return ids;
}

std::string idText(const JsonNode& node, std::size_t index)
{
    const JsonNode* id = node.find("id");
    return id != nullptr && isId(id->text) ? id->text : std::to_string(index);
}

void checkReferences(const JsonNode& root, Checker& checker)
{
    const std::set<std::string> parts = idsOf(root, "parts");
    const std::set<std::string> supports = idsOf(root, "supports");
    if (const JsonNode* list = root.find("supports")) {
        for (const JsonNode& support : list->items) {
            const JsonNode* id = support.find("id");
            if (id != nullptr && id->kind == JsonNode::Kind::text && isId(id->text) && parts.count(id->text) > 0)
                checker.report("file-duplicate-id", id->begin, "supports." + id->text + ".id", {{"id", id->text}});
        }
    }
    const JsonNode* duty = root.find("duty");
    if (const JsonNode* cases = duty == nullptr ? nullptr : duty->find("load_cases")) {
        for (std::size_t i = 0; i < cases->items.size(); ++i) {
            const JsonNode* in_case = cases->items[i].find("parts");
            if (in_case == nullptr)
                continue;
            for (const JsonMember& member : in_case->members) {
                if (parts.count(member.key) == 0)
                    checker.report("file-reference", member.key_begin,
                                   "duty.load_cases." + idText(cases->items[i], i) + ".parts." + Checker::shown(member.key),
                                   {{"id", Checker::shown(member.key)}, {"expected", "part"}});
            }
        }
    }
    if (const JsonNode* list = root.find("requirements")) {
        for (std::size_t i = 0; i < list->items.size(); ++i) {
            const JsonNode* where = list->items[i].find("where");
            if (where != nullptr && where->kind == JsonNode::Kind::text && !where->text.empty() &&
                parts.count(where->text) == 0 && supports.count(where->text) == 0)
                checker.report("file-reference", where->begin, "requirements." + idText(list->items[i], i) + ".where",
                               {{"id", Checker::shown(where->text)}, {"expected", "part_or_support"}});
        }
    }
}

} // namespace

bool isUtf8(std::string_view text)
{
    for (std::size_t i = 0; i < text.size();) {
        const auto byte = [&](std::size_t k) -> unsigned {
            return i + k < text.size() ? static_cast<unsigned char>(text[i + k]) : 0u;
        };
        const unsigned first = byte(0);
        std::size_t length = 1;
        unsigned low = 0x80, high = 0xBF;
        if (first >= 0x80) {
            if (first >= 0xC2 && first <= 0xDF)
                length = 2;
            else if (first >= 0xE0 && first <= 0xEF)
                length = 3;
            else if (first >= 0xF0 && first <= 0xF4)
                length = 4;
            else
                return false;
            if (first == 0xE0)
                low = 0xA0;
            if (first == 0xED)
                high = 0x9F;
            if (first == 0xF0)
                low = 0x90;
            if (first == 0xF4)
                high = 0x8F;
            if (byte(1) < low || byte(1) > high)
                return false;
            for (std::size_t k = 2; k < length; ++k) {
                if (byte(k) < 0x80 || byte(k) > 0xBF)
                    return false;
            }
        }
        i += length;
    }
    return true;
}

std::vector<TreeError> checkDocument(const JsonNode& root)
{
    Checker checker;
    checker.value(root, documentType(), "");
    checkReferences(root, checker);
    return std::move(checker.errors);
}

JsonNode encodeDocument(const Arrangement& arrangement)
{
    JsonNode root = JsonNode::object();
    root.add("format", JsonNode::ofText(arrangementFormat));
    root.add("format_version", JsonNode::ofNumber(arrangementFormatVersion));
    for (JsonMember& member : encode(arrangement).members)
        root.members.push_back(std::move(member));
    return root;
}

Arrangement decodeDocument(const JsonNode& root, std::string_view source)
{
    return decode<Arrangement>(root, source);
}

const std::vector<MigrationStep>& migrationSteps()
{
    static const std::vector<MigrationStep> steps;
    return steps;
}

void migrate(JsonNode& root, int version, const std::vector<MigrationStep>& steps)
{
    for (std::size_t from = static_cast<std::size_t>(version); from <= steps.size(); ++from) {
        steps[from - 1](root);
        if (JsonNode* stated = root.find("format_version"))
            stated->number = static_cast<double>(from + 1);
    }
}

} // namespace shaftwright::format
