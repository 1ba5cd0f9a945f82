#include "core/base/embedded.h"
#include "core/document/document.h"
#include "core/document/document_tree.h"
#include "core/document/json_positions.h"
#include "core/document/key_table.h"
#include "core/edit/edit.h"
#include "tests/support/json_schema.h"
#include "tests/support/rich_arrangement.h"

#include <catch2/catch.hpp>

#include <filesystem>

using namespace shaftwright;

namespace
{

const std::string folder = std::string(SHAFTWRIGHT_SOURCE_DIR) + "/resources/format/v1";

std::string fileText(const std::string& path)
{
    const LoadedFile file = loadFile(path);
    INFO(path);
    REQUIRE(file.text);
    return *file.text;
}

const JsonNode& schema()
{
    static const JsonParse parse = parseJson(fileText(folder + "/arrangement.schema.json"));
    REQUIRE(parse.root);
    return *parse.root;
}

} // namespace

TEST_CASE("the schema in the tree is the one that the reader uses", "[core][document]")
{
    CHECK(fileText(folder + "/arrangement.schema.json") == schemaText());
    CHECK(embeddedResource("format/v1/arrangement.schema.json") == schemaText());
}

TEST_CASE("the description documents exactly the keys that the reader knows", "[core][document]")
{
    const std::string readme = fileText(folder + "/README.md");
    const std::string tables = keyDescription();
    REQUIRE(readme.size() > tables.size());
    CHECK(readme.substr(readme.size() - tables.size()) == tables);
    CHECK(tables.find("|  |\n") == std::string::npos); // no key without a meaning
}

TEST_CASE("written files fit the schema", "[core][document]")
{
    const test::SchemaCheck check(schema());
    for (const Arrangement& arrangement : {Arrangement{}, emptyArrangement(), plainTwoBearingShaft(), test::richArrangement()}) {
        const JsonParse parse = parseJson(writeArrangement(arrangement));
        REQUIRE(parse.root);
        const std::vector<std::string> errors = check.errors(*parse.root);
        INFO((errors.empty() ? std::string() : errors.front()));
        CHECK(errors.empty());
    }
}

TEST_CASE("samples fit the schema and are written as they stand", "[core][document]")
{
    const test::SchemaCheck check(schema());
    int count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(SHAFTWRIGHT_SOURCE_DIR) + "/samples")) {
        if (entry.path().extension() != ".shaftwright")
            continue;
        ++count;
        INFO(entry.path().string());
        const std::string text = fileText(entry.path().string());
        const JsonParse parse = parseJson(text);
        REQUIRE(parse.root);
        const std::vector<std::string> errors = check.errors(*parse.root);
        INFO((errors.empty() ? std::string() : errors.front()));
        CHECK(errors.empty());
        const ReadResult read = readArrangement(text, entry.path().string());
        REQUIRE(read.ok());
        CHECK(writeArrangement(*read.arrangement) == text);
    }
    CHECK(count >= 1);
}

TEST_CASE("schema and reader refuse the same single faults", "[core][document]")
{
    // Each key of the rich arrangement is removed, nulled, or made negative, huge or a text; ids and references are left out,
    // since a schema cannot follow them.
    const test::SchemaCheck check(schema());
    JsonNode root = format::encodeDocument(test::richArrangement());
    // Raw text is no value for the schema check.
    root.remove("extra");
    root.find("revisions")->items.front().remove("inputs");
    std::size_t compared = 0;
    const auto compare = [&](const std::string& path) {
        const std::vector<format::TreeError> found = format::checkDocument(root);
        bool structural = found.empty();
        for (const format::TreeError& error : found)
            structural = structural || (error.code != "file-reference" && error.code != "file-duplicate-id");
        if (!structural)
            return;
        INFO(path);
        const std::vector<std::string> errors = check.errors(root);
        INFO((errors.empty() ? std::string("schema finds nothing") : errors.front()));
        CHECK(errors.empty() == found.empty());
        ++compared;
    };
    const auto visit = [&](auto&& self, JsonNode& node, const std::string& path) -> void {
        for (std::size_t i = 0; i < node.members.size(); ++i) {
            const std::string below = path + "/" + node.members[i].key;
            const JsonMember good = node.members[i];
            if (good.value.members.empty() && good.value.items.empty()) {
                for (const JsonNode& bad :
                     {JsonNode(), JsonNode::ofNumber(-7.5), JsonNode::ofNumber(1e300), JsonNode::ofText("NaN")}) {
                    node.members[i].value = bad;
                    compare(below);
                }
                node.members[i] = good;
                node.members.erase(node.members.begin() + static_cast<std::ptrdiff_t>(i));
                compare(below + " removed");
                node.members.insert(node.members.begin() + static_cast<std::ptrdiff_t>(i), good);
            } else {
                self(self, node.members[i].value, below);
            }
        }
        if (!node.items.empty())
            self(self, node.items.front(), path + "/0");
    };
    visit(visit, *root.find("shaft"), "shaft");
    visit(visit, *root.find("supports"), "supports");
    visit(visit, *root.find("duty"), "duty");
    visit(visit, *root.find("surroundings"), "surroundings");
    for (JsonNode& part : root.find("parts")->items)
        visit(visit, part, "parts");
    CHECK(compared > 800);
}
