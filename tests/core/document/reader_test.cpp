#include "core/document/document.h"
#include "core/document/document_tree.h"
#include "core/document/json_text.h"
#include "core/document/key_table.h"
#include "core/edit/edit.h"
#include "tests/support/rich_arrangement.h"

#include <catch2/catch.hpp>

#include <functional>
#include <set>

using namespace shaftwright;

namespace
{

std::string sampleText()
{
    return writeArrangement(plainTwoBearingShaft());
}

std::string replaced(std::string text, const std::string& from, const std::string& to)
{
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

std::string wordOf(const ReadError& error, const char* name)
{
    const TextValue* value = error.values.find(name);
    REQUIRE(value != nullptr);
    REQUIRE(std::holds_alternative<std::string>(*value));
    return std::get<std::string>(*value);
}

double numberOf(const ReadError& error, const char* name)
{
    const TextValue* value = error.values.find(name);
    REQUIRE(value != nullptr);
    REQUIRE(std::holds_alternative<double>(*value));
    return std::get<double>(*value);
}

/// The only error of a text.
ReadError onlyError(const std::string& text)
{
    const ReadResult result = readArrangement(text, "file.shaftwright");
    CHECK_FALSE(result.ok());
    REQUIRE(result.errors.size() == 1);
    CHECK(result.errors.front().file == "file.shaftwright");
    return result.errors.front();
}

const char* const minimal = R"({
  "format": "shaftwright-arrangement",
  "format_version": 1,
  "shaft": {
    "material": { "name": "steel" },
    "segments": [{ "id": "S1", "length_mm": 200, "outer_mm": 40 }]
  },
  "supports": [
    { "id": "A", "x_mm": 20, "role": "locating" },
    { "id": "B", "x_mm": 180, "role": "non_locating" }
  ]
})";

} // namespace

TEST_CASE("the least file is read", "[core][document]")
{
    const ReadResult result = readArrangement(minimal, "minimal");
    REQUIRE(result.ok());
    CHECK(result.arrangement->supports.size() == 2);
    CHECK(result.arrangement->supports[1].x_mm == 180.0);
}

TEST_CASE("an unknown key is named with the nearest known one and its place", "[core][document]")
{
    const ReadError error = onlyError(replaced(minimal, "\"x_mm\": 180", "\"x_m\": 180, \"x_mm\": 180"));
    CHECK(error.code == "file-unknown-key");
    CHECK(error.path == "supports.B.x_m");
    CHECK(error.line == 10);
    CHECK(error.column == 18);
    CHECK(wordOf(error, "key") == "x_m");
    CHECK(wordOf(error, "suggestion") == "x_mm");

    CHECK(wordOf(onlyError(replaced(minimal, "\"shaft\"", "\"zzzzzzzz\": 1, \"shaft\"")), "suggestion").empty());
    // A key without its unit is the commonest slip.
    const ReadResult without_unit = readArrangement(replaced(minimal, "\"length_mm\"", "\"length\""), "f");
    REQUIRE(without_unit.errors.size() == 2);
    CHECK(without_unit.errors[0].code == "file-missing-key");
    CHECK(without_unit.errors[0].path == "shaft.segments.S1.length_mm");
    CHECK(wordOf(without_unit.errors[1], "suggestion") == "length_mm");
}

TEST_CASE("a wrong word is named with the nearest known one", "[core][document]")
{
    const ReadError error = onlyError(replaced(minimal, "\"locating\"", "\"Locating\""));
    CHECK(error.code == "file-type");
    CHECK(error.path == "supports.A.role");
    CHECK(error.line == 9);
    CHECK(error.column == 38);
    CHECK(wordOf(error, "suggestion") == "locating");
    CHECK(wordOf(error, "found") == "Locating");
    CHECK(wordOf(error, "words").find("end_play") != std::string::npos);
}

TEST_CASE("a value beyond its range is named with the range", "[core][document]")
{
    const ReadError error = onlyError(replaced(minimal, "\"outer_mm\": 40", "\"outer_mm\": -40"));
    CHECK(error.code == "file-range");
    CHECK(error.path == "shaft.segments.S1.outer_mm");
    CHECK(numberOf(error, "value") == -40.0);
    CHECK(numberOf(error, "least") == 0.0);
    CHECK(numberOf(error, "greatest") == 100000.0);
    CHECK(wordOf(error, "unit") == "mm");

    const ReadError overflow = onlyError(replaced(minimal, "\"outer_mm\": 40", "\"outer_mm\": 4e999"));
    CHECK(overflow.code == "file-range");
    CHECK(overflow.line == 6);
}

TEST_CASE("a key that stands twice is refused", "[core][document]")
{
    const ReadError error = onlyError(replaced(minimal, "\"x_mm\": 180", "\"x_mm\": 170, \"x_mm\": 180"));
    CHECK(error.code == "file-duplicate-key");
    CHECK(error.line == 10);
    CHECK(error.column == 31);
    CHECK(wordOf(error, "key") == "x_mm");
}

TEST_CASE("an id that stands twice is refused, across parts and supports too", "[core][document]")
{
    const ReadError error = onlyError(replaced(minimal, "\"id\": \"B\"", "\"id\": \"A\""));
    CHECK(error.code == "file-duplicate-id");
    CHECK(error.path == "supports.A.id");
    CHECK(wordOf(error, "id") == "A");

    const std::string part = R"("parts": [{ "id": "A", "kind": "weight", "x_mm": 100, "mass_kg": 1 }], "supports")";
    CHECK(onlyError(replaced(minimal, "\"supports\"", part)).code == "file-duplicate-id");
}

TEST_CASE("an id that leads nowhere is refused", "[core][document]")
{
    const std::string cases =
        R"("duty": { "load_cases": [{ "id": "rated", "time_share": 1, "speed_rpm": 0, "parts": { "G9": { "active": false } } }] }, "supports")";
    const ReadError error = onlyError(replaced(minimal, "\"supports\"", cases));
    CHECK(error.code == "file-reference");
    CHECK(error.path == "duty.load_cases.rated.parts.G9");
    CHECK(wordOf(error, "id") == "G9");
    const std::string requirement =
        R"("requirements": [{ "id": "R1", "kind": "slope_at", "where": "Z", "limit": 1 }], "supports")";
    CHECK(onlyError(replaced(minimal, "\"supports\"", requirement)).path == "requirements.R1.where");
}

TEST_CASE("all errors are collected in the order of the text", "[core][document]")
{
    std::string text = replaced(minimal, "\"length_mm\": 200", "\"length_mm\": null");
    text = replaced(text, "\"outer_mm\": 40", "\"outer_mm\": \"40\"");
    text = replaced(text, "\"role\": \"locating\"", "\"role\": \"locating\", \"bogus\": 1");
    text = replaced(text, "\"id\": \"B\", ", "");
    const ReadResult result = readArrangement(text, "f");
    REQUIRE(result.errors.size() == 4);
    CHECK(result.errors[0].path == "shaft.segments.S1.length_mm");
    CHECK(wordOf(result.errors[0], "found") == "null");
    CHECK(result.errors[1].path == "shaft.segments.S1.outer_mm");
    CHECK(result.errors[2].path == "supports.A.bogus");
    CHECK(result.errors[3].path == "supports.1.id");
    CHECK(result.errors[3].code == "file-missing-key");
}

TEST_CASE("a newer file is refused by its version alone", "[core][document]")
{
    const ReadError error =
        onlyError(R"({ "format": "shaftwright-arrangement", "format_version": 7, "something": "new", "shaft": 3 })");
    CHECK(error.code == "file-newer");
    CHECK(numberOf(error, "version_needed") == 7.0);
    CHECK(numberOf(error, "version_known") == 1.0);
    CHECK(error.column == 58);
}

TEST_CASE("a version that cannot be is refused", "[core][document]")
{
    for (const char* version : {"0", "-1", "1.5", "\"1\"", "null", "1e300", "true"}) {
        const ReadError error =
            onlyError(replaced(minimal, "\"format_version\": 1", std::string("\"format_version\": ") + version));
        CHECK(error.path == "format_version");
        CHECK((error.code == "file-range" || error.code == "file-type" || error.code == "file-newer"));
    }
}

TEST_CASE("a foreign file is refused as such", "[core][document]")
{
    for (const char* text :
         {"[]", "1", "\"x\"", "null", "{}", R"({"format": 1})", R"({"format": "something-else", "format_version": 1})",
          R"({"type": "FeatureCollection", "features": []})"})
        CHECK(onlyError(text).code == "file-foreign");
    CHECK(onlyError("<xml/>").code == "file-not-json");
    CHECK(onlyError("\x89PNG\r\n\x1a\n").code == "file-not-json");
}

TEST_CASE("a file that ends too early is recognised at every byte", "[core][document]")
{
    const std::string text = sampleText();
    const ReadResult whole = readArrangement(text, "f");
    REQUIRE(whole.ok());
    for (std::size_t length = 0; length + 2 <= text.size(); ++length) {
        const ReadResult result = readArrangement(std::string_view(text).substr(0, length), "f");
        REQUIRE_FALSE(result.ok());
        REQUIRE(result.errors.size() == 1);
        REQUIRE(result.errors.front().code == "file-truncated");
        REQUIRE(result.errors.front().line >= 1);
    }
    CHECK(readArrangement(std::string_view(text).substr(0, text.size() - 1), "f").ok());
}

TEST_CASE("deep nesting and garbage are refused without harm", "[core][document]")
{
    const ReadError deep = onlyError(std::string(10000, '[') + std::string(10000, ']'));
    CHECK(deep.code == "file-too-large");
    CHECK(wordOf(deep, "what") == "depth");
    CHECK(deep.column == 65);
    const std::string extra = R"("extra": )" + [] {
        std::string nested = "1";
        for (int i = 0; i < 10000; ++i)
            nested = "{\"a\":" + nested + "}";
        return nested;
    }() + R"(, "supports")";
    CHECK(onlyError(replaced(minimal, "\"supports\"", extra)).code == "file-too-large");

    std::string garbage;
    unsigned state = 12345;
    for (int i = 0; i < 10 * 1024 * 1024; ++i) {
        state = state * 1664525u + 1013904223u;
        garbage += static_cast<char>(state >> 24u);
    }
    CHECK_FALSE(readArrangement(garbage, "garbage").ok());
    CHECK(onlyError("{\"format\": \"" + std::string(10 * 1024 * 1024, 'x') + "\"}").code == "file-foreign");
    CHECK(onlyError(std::string(70u * 1024u * 1024u, ' ')).code == "file-too-large");
}

TEST_CASE("bytes of a good file may change in any way without harm", "[core][document]")
{
    const std::string text = sampleText();
    const std::string bytes("\0\xff{}[]\",:-9eE\\u \n", 19);
    unsigned state = 99;
    for (std::size_t i = 0; i < text.size(); ++i) {
        std::string changed = text;
        state = state * 1664525u + 1013904223u;
        changed[i] = bytes[(state >> 16u) % bytes.size()];
        const ReadResult result = readArrangement(changed, "f");
        REQUIRE(result.ok() == result.errors.empty());
        for (const ReadError& error : result.errors) {
            REQUIRE(error.line >= 1);
            REQUIRE(error.column >= 1);
        }
    }
}

namespace
{

/// Calls `visit` once for each key of the format that the tree uses: with the object that holds it and its place there.
void eachKey(JsonNode& node, const KeyType& type, const std::string& path, std::set<std::string>& seen,
             const std::function<void(JsonNode& object, const KeyField& field, const std::string& path)>& visit)
{
    if (type.kind == KeyType::Kind::object) {
        const JsonNode* word = type.discriminator.empty() ? nullptr : node.find(type.discriminator);
        const std::string picked = word == nullptr ? "" : word->text;
        for (const KeyField* field : type.allFields(picked)) {
            const std::string below = path.empty() ? field->key : path + "." + field->key;
            const std::string name =
                (type.name.empty() ? path.substr(path.rfind('.') + 1) : type.name) + "/" + picked + "/" + field->key;
            if (node.find(field->key) == nullptr)
                continue;
            if (seen.insert(name).second)
                visit(node, *field, below);
            eachKey(*node.find(field->key), field->type, below, seen, visit);
        }
    } else if (type.kind == KeyType::Kind::list) {
        for (std::size_t i = 0; i < node.items.size(); ++i) {
            const JsonNode* id = type.isListById() ? node.items[i].find("id") : nullptr;
            eachKey(node.items[i], type.element.front(), path + "." + (id != nullptr ? id->text : std::to_string(i)), seen,
                    visit);
        }
    } else if (type.kind == KeyType::Kind::map) {
        for (JsonMember& member : node.members)
            eachKey(member.value, type.element.front(), path + "." + member.key, seen, visit);
    }
}

std::size_t keyCount(const KeyType& type, std::set<std::string>& seen, const std::string& path)
{
    std::size_t count = 0;
    for (const KeyType& element : type.element)
        count += keyCount(element, seen, path);
    if (type.kind != KeyType::Kind::object)
        return count;
    const auto add = [&](const std::vector<KeyField>& fields, const std::string& word) {
        for (const KeyField& field : fields) {
            const std::string below = path.empty() ? field.key : path + "." + field.key;
            if (seen.insert((type.name.empty() ? path.substr(path.rfind('.') + 1) : type.name) + "/" + word + "/" + field.key)
                    .second)
                ++count;
            count += keyCount(field.type, seen, below);
        }
    };
    if (type.alternatives.empty())
        add(type.fields, "");
    for (const KeyAlternative& alternative : type.alternatives) {
        add(type.fields, alternative.word);
        add(alternative.fields, alternative.word);
    }
    return count;
}

} // namespace

TEST_CASE("every key with every kind of bad value is refused with its place", "[core][document]")
{
    JsonNode root = format::encodeDocument(test::richArrangement());
    std::set<std::string> seen;
    std::size_t keys = 0;
    std::size_t refused = 0;
    std::size_t accepted = 0;
    eachKey(root, documentType(), "", seen, [&](JsonNode& object, const KeyField& field, const std::string& path) {
        ++keys;
        const JsonNode good = *object.find(field.key);
        const auto attempt = [&](const JsonNode* bad, bool must_fail) {
            if (bad == nullptr)
                object.remove(field.key);
            else
                *object.find(field.key) = *bad;
            const ReadResult result = readArrangement(readableJson(root), "bad");
            INFO(path);
            REQUIRE(result.ok() == result.errors.empty());
            if (must_fail)
                REQUIRE_FALSE(result.ok());
            (result.ok() ? accepted : refused) += 1;
            bool names_it = result.ok();
            for (const ReadError& error : result.errors) {
                REQUIRE(error.code.rfind("file-", 0) == 0);
                REQUIRE(error.line >= 1);
                REQUIRE(error.column >= 1);
                names_it = names_it || error.path == path || error.path.rfind(path + ".", 0) == 0 ||
                           error.code == "file-foreign" || error.code == "file-newer";
            }
            // An id or a discriminator that is wrong changes the path itself or the meaning of its neighbours; ids are referred
            // to.
            if (field.type.kind != KeyType::Kind::id && field.key != "kind" && field.key != "given_as" && field.key != "parts" &&
                field.key != "supports" && field.key != "power")
                REQUIRE(names_it);
            if (bad == nullptr)
                object.add(field.key, good);
            else
                *object.find(field.key) = good;
        };
        const KeyType::Kind kind = field.type.kind;
        const bool numeric = kind == KeyType::Kind::number || kind == KeyType::Kind::integer;
        const bool textual = kind == KeyType::Kind::text || kind == KeyType::Kind::word || kind == KeyType::Kind::id;
        const bool listed = kind == KeyType::Kind::list;
        const bool objective = !numeric && !textual && !listed && kind != KeyType::Kind::boolean;
        const JsonNode null;
        const JsonNode number = JsonNode::ofNumber(1.0);
        const JsonNode negative = JsonNode::ofNumber(-1.0e7);
        const JsonNode huge = JsonNode::ofNumber(1.0e300);
        const JsonNode text = JsonNode::ofText("NaN");
        const JsonNode flag = JsonNode::ofFlag(true);
        const JsonNode list = JsonNode::array();
        const JsonNode empty = JsonNode::object();
        attempt(nullptr, field.required);
        attempt(&null, true);
        attempt(&number, !numeric);
        attempt(&negative, !numeric);
        attempt(&huge, true);
        attempt(&text, kind != KeyType::Kind::text && kind != KeyType::Kind::id);
        attempt(&flag, kind != KeyType::Kind::boolean);
        attempt(&list, !listed);
        attempt(&empty, !objective);
    });
    // The rich arrangement must not leave a key of the format out.
    std::set<std::string> all;
    CHECK(keys == keyCount(documentType(), all, ""));
    std::string missing;
    for (const std::string& name : all)
        missing += seen.count(name) == 0 ? name + " " : "";
    CHECK(missing == "");
    CHECK(keys > 250);
    CHECK(refused > 7 * keys);
    CHECK(accepted > 0);
    // Nothing of all this sticks.
    CHECK(readArrangement(readableJson(root), "good").errors.size() == 0);
}

TEST_CASE("a part of unknown kind does not blame its other keys", "[core][document]")
{
    const std::string part =
        R"("parts": [{ "id": "G1", "kind": "cylindrical_geer", "x_mm": 100, "teeth": 20, "normal_module_mm": 2, "mesh_angle_deg": 0 }], "supports")";
    const ReadError error = onlyError(replaced(minimal, "\"supports\"", part));
    CHECK(error.path == "parts.G1.kind");
    CHECK(wordOf(error, "suggestion") == "cylindrical_gear");
}

TEST_CASE("a power without its sense is refused", "[core][document]")
{
    const std::string part =
        R"("parts": [{ "id": "K1", "kind": "coupling", "x_mm": 100, "power_kW": 3, "takes_remaining": true }], "supports")";
    const ReadError error = onlyError(replaced(minimal, "\"supports\"", part));
    CHECK(error.code == "file-missing-key");
    CHECK(error.path == "parts.K1.power");
}

TEST_CASE("migration steps run in order from the version of the file", "[core][document]")
{
    const std::vector<format::MigrationStep> steps = {
        [](JsonNode& root) { root.add("second", JsonNode::ofNumber(root.find("format_version")->number)); },
        [](JsonNode& root) { root.add("third", JsonNode::ofNumber(root.find("format_version")->number)); },
    };
    const auto migrated = [&](int version) {
        JsonNode root = JsonNode::object();
        root.add("format_version", JsonNode::ofNumber(version));
        format::migrate(root, version, steps);
        return canonicalJson(root);
    };
    CHECK(migrated(1) == R"({"format_version":3,"second":1,"third":2})");
    CHECK(migrated(2) == R"({"format_version":3,"third":2})");
    CHECK(migrated(3) == R"({"format_version":3})");
    CHECK(format::migrationSteps().size() + 1 == arrangementFormatVersion);
}
