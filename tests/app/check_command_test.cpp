#include "tests/app/call.h"

#include <regex>

using namespace shaftwright;
using namespace shaftwright::test;

namespace
{

struct Line {
    std::string file, severity, text, code;
    int line = 0, column = 0;
};

std::vector<Line> read(const std::string& out)
{
    static const std::regex form(R"(^(.+):(\d+):(\d+): (stop|caution|note): (.+) \[([a-z0-9]+(-[a-z0-9]+)*)\]$)");
    std::vector<Line> lines;
    for (const std::string& text : linesOf(out)) {
        std::smatch match;
        INFO(text);
        REQUIRE(std::regex_match(text, match, form));
        lines.push_back({match[1], match[4], match[5], match[6], std::stoi(match[2]), std::stoi(match[3])});
    }
    return lines;
}

} // namespace

TEST_CASE("check writes one line a finding with place, severity and code", "[app]")
{
    const Outcome outcome = call({"check", gearbox(), "--set", "supports.A.x_mm=-4000"});
    INFO(outcome.out << outcome.err);
    const std::vector<Line> lines = read(outcome.out);
    REQUIRE_FALSE(lines.empty());
    const std::vector<std::string> source = linesOf(textOf(gearbox()));
    bool placed = false;
    for (const Line& line : lines) {
        CHECK(line.file == gearbox());
        CHECK(line.line >= 1);
        CHECK(line.line <= static_cast<int>(source.size()));
        CHECK(line.column >= 1);
        CHECK_FALSE(line.text.empty());
        // A sentence, not the key of one.
        CHECK(line.text.find("finding.") == std::string::npos);
        CHECK(line.text.find('{') == std::string::npos);
        placed = placed || (line.severity == "stop" && has(source[static_cast<std::size_t>(line.line - 1)], "x_mm"));
    }
    // The support beyond the end of the shaft is pointed at where it stands in the file.
    CHECK(placed);
    CHECK(outcome.code == 1);
}

TEST_CASE("check exits 1 exactly when something is missed", "[app]")
{
    const Outcome asked_too_much = call({"check", gearbox(), "--set", "duty.required_L_h=1000000"});
    CHECK(asked_too_much.code == 1);
    bool stop = false;
    for (const Line& line : read(asked_too_much.out))
        stop = stop || line.severity == "stop";
    CHECK(stop);

    const Outcome easy = call({"check", gearbox(), "--set", "duty.required_L_h=100"});
    for (const Line& line : read(easy.out)) {
        INFO(line.text << ' ' << line.code);
        CHECK(line.severity != "stop");
    }
    CHECK(easy.code == 0);
    // No other command knows exit 1.
    CHECK(call({"report", gearbox(), "--set", "duty.required_L_h=1000000"}).code == 0);
}

TEST_CASE("strict counts cautions that nobody accepted", "[app]")
{
    // A shaft on three supports: the reactions depend on the heights of the seats, which is a caution and no stop.
    const std::string text = textOf(std::string(SHAFTWRIGHT_SOURCE_DIR) + "/samples/conveyor-three-supports.shaftwright");
    Arrangement arrangement = *readArrangement(text, "sample").arrangement;
    REQUIRE_FALSE(arrangement.acceptances.empty());
    const auto cautions = [](const std::string& out) {
        int count = 0;
        for (const Line& line : read(out)) {
            REQUIRE(line.severity != "stop");
            count += line.severity == "caution" ? 1 : 0;
        }
        return count;
    };
    const Outcome accepted = call({"check", "-", "--strict"}, text);
    CHECK(cautions(accepted.out) > 0);
    CHECK(has(accepted.out, "(accepted)"));
    CHECK(accepted.code == 0);

    arrangement.acceptances.clear();
    const std::string open = writeArrangement(arrangement);
    const Outcome plain = call({"check", "-"}, open);
    const Outcome strict = call({"check", "-", "--strict"}, open);
    CHECK(plain.out == strict.out);
    CHECK(cautions(strict.out) > 0);
    CHECK_FALSE(has(strict.out, "(accepted)"));
    CHECK(plain.code == 0);
    CHECK(strict.code == 1);
}

TEST_CASE("check reads several files and goes on after a bad one", "[app]")
{
    const Folder folder;
    const std::string bad = folder.write("bad.shaftwright", "{ \"format\": ");
    const Outcome outcome = call({"check", bad, gearbox(), "--set", "duty.required_L_h=1000000"});
    CHECK(outcome.code == 2); // unusable outweighs missed
    CHECK(has(outcome.err, bad + ":"));
    for (const Line& line : read(outcome.out))
        CHECK(line.file == gearbox());
    CHECK_FALSE(outcome.out.empty());
}

TEST_CASE("check as JSON holds the same findings", "[app]")
{
    const std::vector<std::string> setting = {"--set", "duty.required_L_h=1000000"};
    const Outcome text = call({"check", gearbox(), setting[0], setting[1]});
    const Outcome outcome = call({"check", gearbox(), setting[0], setting[1], "-f", "json"});
    CHECK(outcome.code == text.code);
    const JsonNode list = json(outcome.out);
    REQUIRE(list.kind == JsonNode::Kind::array);
    const std::vector<Line> lines = read(text.out);
    REQUIRE(list.items.size() == lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        CHECK(list.items[i].find("code")->text == lines[i].code);
        CHECK(list.items[i].find("severity")->text == lines[i].severity);
        CHECK(list.items[i].find("text")->text == lines[i].text);
        CHECK(list.items[i].find("line")->number == lines[i].line);
        CHECK(list.items[i].find("column")->number == lines[i].column);
    }
    CHECK(json(call({"check", "-", "-f", "json"}, "{}").out).items.empty());
}
