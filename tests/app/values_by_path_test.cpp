#include "tests/app/call.h"

using namespace shaftwright;
using namespace shaftwright::test;

TEST_CASE("schema is the schema of the tree and JSON", "[app]")
{
    const Outcome outcome = call({"schema"});
    CHECK(outcome.code == 0);
    CHECK(outcome.out == textOf(std::string(SHAFTWRIGHT_SOURCE_DIR) + "/resources/format/v1/arrangement.schema.json"));
    CHECK(json(outcome.out).find("$schema") != nullptr);
}

TEST_CASE("paths lists inputs with value, unit and origin", "[app]")
{
    const Outcome text = call({"paths", gearbox()});
    const Outcome outcome = call({"paths", gearbox(), "-f", "json"});
    CHECK(text.code == 0);
    REQUIRE(outcome.code == 0);
    const JsonNode list = json(outcome.out);
    CHECK(list.items.size() > 40);
    CHECK(linesOf(text.out).size() == list.items.size());
    bool speed = false;
    for (const JsonNode& entry : list.items) {
        const std::string& path = entry.find("path")->text;
        CHECK(has(text.out, path));
        const std::string& origin = entry.find("origin")->text;
        CHECK((origin == "given" || origin == "assumed" || origin == "proposed"));
        speed = speed || (path.ends_with(".speed_rpm") && entry.find("unit")->text == "rpm");
    }
    CHECK(speed);
}

TEST_CASE("setting inputs to the values they have changes nothing", "[app]")
{
    // Every number that the file gives, all in one run.
    const JsonNode list = json(call({"paths", gearbox(), "-f", "json"}).out);
    std::vector<std::string> arguments = {"normalise", gearbox()};
    for (const JsonNode& entry : list.items) {
        if (entry.find("origin")->text != "given")
            continue;
        const JsonNode& value = *entry.find("value");
        std::ostringstream number;
        number.precision(17);
        number << value.number;
        arguments.push_back("--set");
        arguments.push_back(entry.find("path")->text + "=" + (value.kind == JsonNode::Kind::text ? value.text : number.str()));
    }
    CHECK(arguments.size() > 60);
    const Outcome outcome = call(arguments);
    INFO(outcome.err);
    CHECK(outcome.code == 0);
    CHECK(outcome.out == call({"normalise", gearbox()}).out);
}

TEST_CASE("--set changes what it names and nothing else", "[app]")
{
    const std::vector<std::string> before = linesOf(call({"normalise", gearbox()}).out);
    const Outcome outcome = call({"normalise", gearbox(), "--set", "supports.B.x_mm=20,15 cm"});
    INFO(outcome.err);
    REQUIRE(outcome.code == 0);
    const std::vector<std::string> after = linesOf(outcome.out);
    REQUIRE(before.size() == after.size());
    int different = 0;
    for (std::size_t i = 0; i < before.size(); ++i) {
        if (before[i] == after[i])
            continue;
        ++different;
        CHECK(has(after[i], "\"x_mm\": 201.5"));
    }
    CHECK(different == 1);
    // The file itself stays.
    CHECK(linesOf(call({"normalise", gearbox()}).out) == before);
}

TEST_CASE("a later --set wins over an earlier one", "[app]")
{
    const Outcome outcome = call({"normalise", gearbox(), "--set", "supports.B.x_mm=1", "--set", "supports.B.x_mm=203"});
    CHECK(outcome.out == call({"normalise", gearbox(), "--set", "supports.B.x_mm=203"}).out);
}

TEST_CASE("a bad --set names what is wrong", "[app]")
{
    for (const auto& [setting, says] :
         std::vector<std::pair<std::string, std::string>>{{"supports.B.x_mm", "PATH=VALUE"},
                                                          {"=5", "PATH=VALUE"},
                                                          {"supports.B.x_m=5", "x_mm"},
                                                          {"supports.Z9.x_mm=5", "Z9"},
                                                          {"nothing=5", "nothing"},
                                                          {"supports.B.x_mm=five", "five"},
                                                          {"supports.B.x_mm=5 kN", "kN"},
                                                          {"supports.B.x_mm=nan", "nan"},
                                                          {"supports.B.role=lokating", "locating"},
                                                          {"shaft.segments.S1.outer_mm=-3", "-3"}}) {
        for (const char* command : {"report", "check", "paths", "normalise", "draw"}) {
            const Outcome outcome = call({command, gearbox(), "--set", setting});
            INFO(command << ' ' << setting << '\n' << outcome.err);
            CHECK(outcome.code == 2);
            CHECK(outcome.out.empty());
            CHECK(has(outcome.err, "--set"));
            CHECK(has(outcome.err, says));
            CHECK_FALSE(has(outcome.err, "finding."));
        }
    }
}

TEST_CASE("normalise is its own fixed point", "[app]")
{
    const Outcome once = call({"normalise", gearbox()});
    REQUIRE(once.code == 0);
    const Outcome twice = call({"normalise", "-"}, once.out);
    CHECK(twice.code == 0);
    CHECK(once.out == twice.out);
    CHECK(once.out.back() == '\n');
}

TEST_CASE("normalise in place writes the file that was read", "[app]")
{
    const Folder folder;
    std::string shuffled = call({"normalise", gearbox()}).out;
    shuffled += "\n\n";
    const std::string file = folder.write("shaft.shaftwright", shuffled);
    const Outcome outcome = call({"normalise", file, "--in-place"});
    CHECK(outcome.code == 0);
    CHECK(outcome.out.empty());
    CHECK(textOf(file) == call({"normalise", gearbox()}).out);
    CHECK(folder.count() == 1); // nothing left beside it
    CHECK(call({"normalise", file, "--in-place", "-o", folder / "other"}).code == 2);
}

TEST_CASE("- reads standard input for every command that takes a file", "[app]")
{
    const std::string text = textOf(gearbox());
    for (const char* command : {"report", "paths", "normalise", "draw"}) {
        const Outcome by_file = call({command, gearbox()});
        const Outcome by_stream = call({command, "-"}, text);
        INFO(command << by_stream.err);
        CHECK(by_stream.code == 0);
        CHECK(by_file.out == by_stream.out);
    }
    const Outcome bad = call({"check", "-"}, "{");
    CHECK(bad.code == 2);
    CHECK(has(bad.err, "standard input:1:"));
}
