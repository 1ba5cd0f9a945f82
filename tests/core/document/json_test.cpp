#include "core/document/json_positions.h"
#include "core/document/json_text.h"

#include <catch2/catch.hpp>

#include <cstring>
#include <string>

using namespace shaftwright;

TEST_CASE("numbers are written as RFC 8785 asks", "[core][document]")
{
    // RFC 8785, appendix B (from memory): bits of the double and its text.
    const std::pair<std::uint64_t, const char*> vectors[] = {
        {0x0000000000000000u, "0"},
        {0x8000000000000000u, "0"},
        {0x0000000000000001u, "5e-324"},
        {0x8000000000000001u, "-5e-324"},
        {0x7fefffffffffffffu, "1.7976931348623157e+308"},
        {0xffefffffffffffffu, "-1.7976931348623157e+308"},
        {0x4340000000000000u, "9007199254740992"},
        {0xc340000000000000u, "-9007199254740992"},
        {0x4430000000000000u, "295147905179352830000"},
        {0x44b52d02c7e14af5u, "9.999999999999997e+22"},
        {0x44b52d02c7e14af6u, "1e+23"},
        {0x44b52d02c7e14af7u, "1.0000000000000001e+23"},
        {0x444b1ae4d6e2ef4eu, "999999999999999700000"},
        {0x444b1ae4d6e2ef4fu, "999999999999999900000"},
        {0x444b1ae4d6e2ef50u, "1e+21"},
        {0x3eb0c6f7a0b5ed8cu, "9.999999999999997e-7"},
        {0x3eb0c6f7a0b5ed8du, "0.000001"},
        {0x41b3de4355555553u, "333333333.3333332"},
        {0x41b3de4355555554u, "333333333.33333325"},
        {0x41b3de4355555555u, "333333333.3333333"},
        {0x41b3de4355555556u, "333333333.3333334"},
        {0x41b3de4355555557u, "333333333.33333343"},
        {0xbecbf647612f3696u, "-0.0000033333333333333333"},
        {0x43143ff3c1cb0959u, "1424953923781206.2"},
    };
    for (const auto& [bits, text] : vectors) {
        double value = 0.0;
        std::memcpy(&value, &bits, sizeof value);
        CHECK(jsonNumber(value) == text);
    }
}

TEST_CASE("members are sorted by UTF-16 code units and text is escaped as RFC 8785 asks", "[core][document]")
{
    // RFC 8785, section 3.2.3 (from memory): the astral character sorts before U+FB33.
    const JsonParse parse =
        parseJson(R"({"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh",)"
                  R"("1":"One","\ud83d\ude00":"Emoji","\u0080":"Control","\u00f6":"Latin"})");
    REQUIRE(parse.root);
    const std::string text = canonicalJson(*parse.root);
    const char* order[] = {"Carriage", "One", "Control", "Latin", "Euro", "Emoji", "Hebrew"};
    std::size_t at = 0;
    for (const char* word : order) {
        const std::size_t next = text.find(word);
        CHECK(next != std::string::npos);
        CHECK(next > at);
        at = next;
    }
    CHECK(jsonText("\"\\/\b\f\n\r\t\x01\x1f\u00e9") == "\"\\\"\\\\/\\b\\f\\n\\r\\t\\u0001\\u001f\u00e9\"");
}

TEST_CASE("every value knows its place", "[core][document]")
{
    const std::string text = "{\n  \"a\": [1, -2.5e3,\n    \"\u00e9x\"], \"b\":{\"c\":true},\"d\":null }\n";
    const JsonParse parse = parseJson(text);
    REQUIRE(parse.root);
    const LineTable lines(text);
    const auto slice = [&](const JsonNode& node) { return text.substr(node.begin, node.end - node.begin); };
    const JsonNode& a = *parse.root->find("a");
    CHECK(slice(a) == "[1, -2.5e3,\n    \"\u00e9x\"]");
    CHECK(slice(a.items[0]) == "1");
    CHECK(slice(a.items[1]) == "-2.5e3");
    CHECK(slice(a.items[2]) == "\"\u00e9x\"");
    CHECK(lines.at(a.items[2].begin).line == 3);
    CHECK(lines.at(a.items[2].begin).column == 5);
    const JsonNode& b = *parse.root->find("b");
    CHECK(slice(b) == "{\"c\":true}");
    // The accented letter counts as one column.
    CHECK(lines.at(b.begin).column == 16);
    CHECK(slice(*b.find("c")) == "true");
    CHECK(slice(*parse.root->find("d")) == "null");
    CHECK(lines.at(parse.root->members[2].key_begin).line == 3);
}

TEST_CASE("a duplicate key is found at every level and the first value stays", "[core][document]")
{
    const JsonParse parse = parseJson(R"({"a": 1, "b": {"c": 1, "c": 2}, "a": [1, {"x": 1, "x": {}}]})");
    REQUIRE(parse.root);
    REQUIRE(parse.problems.size() == 3);
    for (const JsonProblem& problem : parse.problems)
        CHECK(problem.kind == JsonProblem::Kind::duplicate_key);
    CHECK(parse.root->find("a")->number == 1.0);
    CHECK(parse.root->find("b")->find("c")->number == 1.0);
}

TEST_CASE("nesting is refused beyond 64 levels", "[core][document]")
{
    const auto nested = [](std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); };
    CHECK(parseJson(nested(64)).root);
    const JsonParse deep = parseJson(nested(65));
    CHECK_FALSE(deep.root);
    REQUIRE(deep.problems.size() == 1);
    CHECK(deep.problems.front().kind == JsonProblem::Kind::too_deep);
    CHECK(deep.problems.front().offset == 64);
    CHECK_FALSE(parseJson(nested(10000)).root);
    CHECK_FALSE(parseJson(std::string(1000000, '[')).root);
}

TEST_CASE("a million values are the limit", "[core][document]")
{
    std::string text = "[";
    for (int i = 0; i < 1000000; ++i)
        text += "1,";
    text += "1]";
    const JsonParse parse = parseJson(text);
    CHECK_FALSE(parse.root);
    REQUIRE(parse.problems.size() == 1);
    CHECK(parse.problems.front().kind == JsonProblem::Kind::too_many_values);
}

TEST_CASE("syntax faults are found where they stand", "[core][document]")
{
    const auto fault = [](const std::string& text) {
        const JsonParse parse = parseJson(text);
        CHECK_FALSE(parse.root);
        REQUIRE(parse.problems.size() == 1);
        return parse.problems.front();
    };
    CHECK(fault("{\"a\": nul}").offset == 6);
    CHECK(fault("{\"a\": 1 \"b\": 2}").offset == 8);
    CHECK(fault("{\"a\": NaN}").kind == JsonProblem::Kind::syntax);
    CHECK(fault("{\"a\": 1,}").offset == 8);
    CHECK(fault("{\"a\": 1}}").offset == 8);
    CHECK(fault("[1,,2]").offset == 3);
    CHECK(fault("{\"a\" 1}").offset == 5);
    CHECK(fault("{\"a\": nul}").detail == "nul}");
    CHECK(fault("{\"a\": 1e999}").kind == JsonProblem::Kind::number_too_large);
    CHECK(fault("{\"a\": 1e999}").offset == 6);
    CHECK(fault("{\"a\": \"\xff\"}").kind == JsonProblem::Kind::syntax);
    CHECK(fault("{\"a\": [1, 2").kind == JsonProblem::Kind::truncated);
    CHECK(fault("").kind == JsonProblem::Kind::truncated);
}
