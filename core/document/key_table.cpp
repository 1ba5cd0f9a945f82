#include "core/document/key_table.h"

#include "core/document/codec.h"
#include "core/document/document.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <numeric>

namespace shaftwright
{

const KeyField* KeyType::find(std::string_view key, std::string_view word) const
{
    const auto pick = [&](const std::vector<KeyField>& list) -> const KeyField* {
        const auto found = std::find_if(list.begin(), list.end(), [&](const KeyField& field) { return field.key == key; });
        return found == list.end() ? nullptr : &*found;
    };
    if (const KeyField* field = pick(fields))
        return field;
    for (const KeyAlternative& alternative : alternatives) {
        if (alternative.word == word)
            return pick(alternative.fields);
    }
    return nullptr;
}

std::vector<const KeyField*> KeyType::allFields(std::string_view word) const
{
    std::vector<const KeyField*> all;
    for (const KeyField& field : fields)
        all.push_back(&field);
    for (const KeyAlternative& alternative : alternatives) {
        if (alternative.word == word) {
            for (const KeyField& field : alternative.fields)
                all.push_back(&field);
        }
    }
    return all;
}

bool KeyType::isListById() const
{
    if (kind != Kind::list || element.empty())
        return false;
    const KeyField* id = element.front().find("id");
    return id != nullptr && id->type.kind == Kind::id;
}

const KeyType& documentType()
{
    static const KeyType type = [] {
        KeyType document = format::typeOf<Arrangement>({});
        KeyField name{"format", {}, true, "", "tells the file from others", ""};
        name.type.kind = KeyType::Kind::word;
        name.type.words = {arrangementFormat};
        KeyField version{"format_version", {}, true, "", "version of the format", ""};
        version.type.kind = KeyType::Kind::integer;
        version.type.least = arrangementFormatVersion;
        version.type.greatest = arrangementFormatVersion;
        document.fields.insert(document.fields.begin(), {std::move(name), std::move(version)});
        return document;
    }();
    return type;
}

bool isId(std::string_view text)
{
    return !text.empty() && text.size() <= 64 && std::all_of(text.begin(), text.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
    });
}

std::string nearestWord(std::string_view text, const std::vector<std::string>& candidates)
{
    if (text.size() > 80)
        return {};
    std::string best;
    std::size_t best_distance = std::string::npos;
    std::vector<std::size_t> row;
    for (const std::string& candidate : candidates) {
        row.resize(candidate.size() + 1);
        std::iota(row.begin(), row.end(), std::size_t{0});
        for (std::size_t i = 0; i < text.size(); ++i) {
            std::size_t diagonal = row[0];
            row[0] = i + 1;
            for (std::size_t j = 0; j < candidate.size(); ++j) {
                const bool same =
                    std::tolower(static_cast<unsigned char>(text[i])) == std::tolower(static_cast<unsigned char>(candidate[j]));
                const std::size_t above = row[j + 1];
                row[j + 1] = std::min({above + 1, row[j] + 1, diagonal + (same ? 0u : 1u)});
                diagonal = above;
            }
        }
        // A key without its unit is the commonest slip.
        const bool start = text.size() >= 3 && candidate.size() > text.size() && candidate.compare(0, text.size(), text) == 0 &&
                           candidate[text.size()] == '_';
        const std::size_t distance = start ? 1 : row.back();
        if (distance < best_distance && (start || 5 * distance <= 2 * std::max(text.size(), candidate.size()))) {
            best = candidate;
            best_distance = distance;
        }
    }
    return best;
}

namespace
{

std::string typeWords(const KeyType& type)
{
    using Kind = KeyType::Kind;
    switch (type.kind) {
    case Kind::number:
        return "number";
    case Kind::integer:
        return "integer";
    case Kind::boolean:
        return "boolean";
    case Kind::text:
        return "text";
    case Kind::id:
        return "id";
    case Kind::word: {
        std::string words;
        for (const std::string& word : type.words)
            words += (words.empty() ? "`" : ", `") + word + "`";
        return words;
    }
    case Kind::object:
        return type.name.empty() ? "object" : "object " + type.name;
    case Kind::list:
        return "list of " + (type.fixed_items > 0 ? std::to_string(type.fixed_items) + " " : std::string()) +
               (type.element.front().kind == Kind::word ? std::string("words") : typeWords(type.element.front()));
    case Kind::map:
        return "object of " + typeWords(type.element.front());
    case Kind::free_object:
        return "free object";
    }
    return {};
}

const KeyType& innermost(const KeyType& type)
{
    return type.element.empty() ? type : innermost(type.element.front());
}

std::string rangeWords(const KeyType& outer)
{
    const KeyType& type = innermost(outer);
    if (!std::isfinite(type.least) && !std::isfinite(type.greatest))
        return {};
    if (type.least == type.greatest)
        return jsonNumber(type.least);
    return (type.least_excluded ? "> " : "") + jsonNumber(type.least) + " to " + jsonNumber(type.greatest);
}

void describeFields(const std::vector<KeyField>& fields, std::string& out)
{
    out += "| key | type | unit | range | default | meaning |\n| --- | --- | --- | --- | --- | --- |\n";
    for (const KeyField& field : fields) {
        const std::string default_text = field.required               ? "required"
                                         : field.default_json.empty() ? "left open"
                                                                      : "`" + field.default_json + "`";
        out += "| `" + field.key + "` | " + typeWords(field.type) + " | " + innermost(field.type).unit + " | " +
               rangeWords(field.type) + " | " + default_text + " | " + field.meaning +
               (field.needs.empty() ? std::string() : "; stands beside `" + field.needs + "`") + " |\n";
    }
}

void describeType(const KeyType& type, std::vector<std::string>& done, std::string title, std::string& out)
{
    if (type.kind == KeyType::Kind::list || type.kind == KeyType::Kind::map) {
        describeType(type.element.front(), done, std::move(title), out);
        return;
    }
    if (type.kind != KeyType::Kind::object)
        return;
    const std::string name = type.name.empty() ? std::move(title) : type.name;
    if (std::find(done.begin(), done.end(), name) != done.end())
        return;
    done.push_back(name);
    out += "\n## " + name + "\n";
    describeFields(type.fields, out);
    for (const KeyAlternative& alternative : type.alternatives) {
        out += "\nWith `" + type.discriminator + "` = `" + alternative.word + "` (" + alternative.meaning + "):\n\n";
        describeFields(alternative.fields, out);
    }
    for (const KeyField& field : type.fields)
        describeType(field.type, done, field.key, out);
    for (const KeyAlternative& alternative : type.alternatives) {
        for (const KeyField& field : alternative.fields)
            describeType(field.type, done, field.key, out);
    }
}

JsonNode schemaOf(const KeyType& type, JsonNode& definitions);

JsonNode fieldSchemas(const std::vector<KeyField>& fields, JsonNode& definitions, JsonNode& required, JsonNode& needs)
{
    JsonNode properties = JsonNode::object();
    for (const KeyField& field : fields) {
        JsonNode schema = schemaOf(field.type, definitions);
        schema.add("description", JsonNode::ofText(field.meaning + (innermost(field.type).unit.empty()
                                                                        ? std::string()
                                                                        : " [" + innermost(field.type).unit + "]")));
        if (!field.default_json.empty())
            schema.add("default", *parseJson(field.default_json).root);
        properties.add(field.key, std::move(schema));
        if (field.required)
            required.items.push_back(JsonNode::ofText(field.key));
        if (!field.needs.empty()) {
            JsonNode list = JsonNode::array();
            list.items.push_back(JsonNode::ofText(field.needs));
            needs.add(field.key, std::move(list));
        }
    }
    return properties;
}

JsonNode closedObject(const std::vector<const std::vector<KeyField>*>& parts, const std::string& discriminator,
                      const std::string& word, JsonNode& definitions)
{
    JsonNode schema = JsonNode::object();
    schema.add("type", JsonNode::ofText("object"));
    schema.add("additionalProperties", JsonNode::ofFlag(false));
    JsonNode required = JsonNode::array();
    JsonNode needs = JsonNode::object();
    JsonNode properties = JsonNode::object();
    for (const std::vector<KeyField>* fields : parts) {
        for (JsonMember& member : fieldSchemas(*fields, definitions, required, needs).members) {
            if (!discriminator.empty() && member.key == discriminator) {
                member.value = JsonNode::object();
                member.value.add("const", JsonNode::ofText(word));
            }
            properties.members.push_back(std::move(member));
        }
    }
    if (!required.items.empty())
        schema.add("required", std::move(required));
    if (!needs.members.empty())
        schema.add("dependentRequired", std::move(needs));
    schema.add("properties", std::move(properties));
    return schema;
}

JsonNode reference(const std::string& name)
{
    JsonNode schema = JsonNode::object();
    schema.add("$ref", JsonNode::ofText("#/$defs/" + name));
    return schema;
}

JsonNode objectSchema(const KeyType& type, JsonNode& definitions)
{
    if (type.alternatives.empty())
        return closedObject({&type.fields}, "", "", definitions);
    JsonNode choices = JsonNode::array();
    for (const KeyAlternative& alternative : type.alternatives)
        choices.items.push_back(
            closedObject({&type.fields, &alternative.fields}, type.discriminator, alternative.word, definitions));
    JsonNode schema = JsonNode::object();
    schema.add("oneOf", std::move(choices));
    return schema;
}

JsonNode schemaOf(const KeyType& type, JsonNode& definitions)
{
    using Kind = KeyType::Kind;
    JsonNode schema = JsonNode::object();
    const auto typeIs = [&](const char* name) { schema.add("type", JsonNode::ofText(name)); };
    switch (type.kind) {
    case Kind::number:
    case Kind::integer:
        typeIs(type.kind == Kind::number ? "number" : "integer");
        if (std::isfinite(type.least))
            schema.add(type.least_excluded ? "exclusiveMinimum" : "minimum", JsonNode::ofNumber(type.least));
        if (std::isfinite(type.greatest))
            schema.add("maximum", JsonNode::ofNumber(type.greatest));
        break;
    case Kind::boolean:
        typeIs("boolean");
        break;
    case Kind::text:
        typeIs("string");
        break;
    case Kind::id:
        typeIs("string");
        schema.add("pattern", JsonNode::ofText("^[A-Za-z0-9_-]{1,64}$"));
        break;
    case Kind::word: {
        JsonNode words = JsonNode::array();
        for (const std::string& word : type.words)
            words.items.push_back(JsonNode::ofText(word));
        schema.add("enum", std::move(words));
        break;
    }
    case Kind::list:
        typeIs("array");
        schema.add("items", schemaOf(type.element.front(), definitions));
        if (type.fixed_items > 0 || type.least_items > 0)
            schema.add("minItems", JsonNode::ofNumber(static_cast<double>(std::max(type.fixed_items, type.least_items))));
        if (type.fixed_items > 0)
            schema.add("maxItems", JsonNode::ofNumber(static_cast<double>(type.fixed_items)));
        break;
    case Kind::map:
        typeIs("object");
        schema.add("additionalProperties", schemaOf(type.element.front(), definitions));
        break;
    case Kind::free_object:
        typeIs("object");
        break;
    case Kind::object:
        if (type.name.empty())
            return objectSchema(type, definitions);
        if (definitions.find(type.name) == nullptr) {
            definitions.add(type.name, {}); // keeps the place while the types inside are described
            JsonNode described = objectSchema(type, definitions);
            *definitions.find(type.name) = std::move(described);
        }
        return reference(type.name);
    }
    return schema;
}

} // namespace

std::string schemaText()
{
    JsonNode definitions = JsonNode::object();
    JsonNode schema = JsonNode::object();
    schema.add("$schema", JsonNode::ofText("https://json-schema.org/draft/2020-12/schema"));
    schema.add("$id", JsonNode::ofText("urn:shaftwright:arrangement:" + std::to_string(arrangementFormatVersion)));
    schema.add("title", JsonNode::ofText("Shaft-and-bearing arrangement"));
    for (JsonMember& member : objectSchema(documentType(), definitions).members)
        schema.members.push_back(std::move(member));
    schema.add("$defs", std::move(definitions));
    return readableJson(schema);
}

std::string keyDescription()
{
    std::string out;
    std::vector<std::string> done;
    describeType(documentType(), done, "Document", out);
    return out;
}

} // namespace shaftwright
