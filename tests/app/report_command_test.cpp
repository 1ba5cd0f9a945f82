#include "tests/app/call.h"

#include <regex>

using namespace shaftwright;
using namespace shaftwright::test;

TEST_CASE("the report as JSON is JSON and holds every support", "[app]")
{
    const Outcome outcome = call({"report", gearbox(), "-f", "json"});
    REQUIRE(outcome.code == 0);
    CHECK(outcome.err.empty());
    const JsonNode root = json(outcome.out);
    const JsonNode* supports = root.find("supports");
    REQUIRE(supports != nullptr);
    const JsonNode arrangement = json(textOf(gearbox()));
    CHECK(supports->items.size() == arrangement.find("supports")->items.size());
    CHECK(root.find("findings") != nullptr);
    CHECK(root.find("curves") != nullptr);
    CHECK(outcome.out == call({"report", gearbox(), "-f", "json"}).out);
    const Outcome lean = call({"report", gearbox(), "-f", "json", "--without", "curves"});
    CHECK(lean.out.size() < outcome.out.size());
    CHECK(json(lean.out).find("curves") == nullptr);
}

TEST_CASE("the report for people comes as text and page, in two languages", "[app]")
{
    const Outcome english = call({"report", gearbox()});
    const Outcome german = call({"report", gearbox(), "--language", "de"});
    CHECK(english.code == 0);
    CHECK(german.code == 0);
    CHECK(english.out != german.out);
    for (const Outcome* outcome : {&english, &german}) {
        CHECK(has(outcome->out, "Intermediate shaft of a bucket elevator drive"));
        CHECK_FALSE(has(outcome->out, "finding.")); // sentences, not their keys
        CHECK_FALSE(std::regex_search(outcome->out, std::regex(R"(\b-?(nan|inf)\b)")));
    }
    const Outcome page = call({"report", gearbox(), "-f", "html"});
    CHECK(page.code == 0);
    CHECK(has(page.out, "<svg"));
    const Outcome plain = call({"report", gearbox(), "-f", "html", "--without", "pictures"});
    CHECK_FALSE(has(plain.out, "<svg"));
}

TEST_CASE("the format follows the suffix of -o", "[app]")
{
    const Folder folder;
    REQUIRE(call({"report", gearbox(), "-o", folder / "r.json"}).code == 0);
    REQUIRE(call({"report", gearbox(), "-o", folder / "r.HTML"}).code == 0);
    REQUIRE(call({"report", gearbox(), "-o", folder / "r.txt"}).code == 0);
    CHECK(textOf(folder / "r.json") == call({"report", gearbox(), "-f", "json"}).out);
    CHECK(textOf(folder / "r.HTML") == call({"report", gearbox(), "-f", "html"}).out);
    CHECK(textOf(folder / "r.txt") == call({"report", gearbox(), "-f", "text"}).out);
}

TEST_CASE("an arrangement that cannot be solved is still reported", "[app]")
{
    const Outcome outcome = call({"report", gearbox(), "-f", "json", "--set", "supports.A.x_mm=190"});
    CHECK(outcome.code == 0);
    const JsonNode root = json(outcome.out);
    REQUIRE(root.find("findings") != nullptr);
    CHECK_FALSE(root.find("findings")->items.empty());
}
