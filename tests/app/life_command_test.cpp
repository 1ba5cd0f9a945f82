#include "tests/app/call.h"

using namespace shaftwright;
using namespace shaftwright::test;
using Catch::Matchers::WithinRel;

namespace
{

std::vector<std::string> typedBearing()
{
    return {"life",  "--family", "deep_groove_ball", "--bore-mm", "40",   "--outer-mm", "80",       "--width-mm",          "18",
            "--C-N", "30000",    "--C0-N",           "18000",     "--f0", "14",         "--source", "made up for the test"};
}

std::vector<std::string> with(std::vector<std::string> arguments, const std::vector<std::string>& more)
{
    arguments.insert(arguments.end(), more.begin(), more.end());
    return arguments;
}

/// Depth first: the first member of this name.
const JsonNode* deep(const JsonNode& node, const std::string& key)
{
    if (const JsonNode* found = node.find(key))
        return found;
    for (const JsonMember& member : node.members) {
        if (const JsonNode* found = deep(member.value, key))
            return found;
    }
    for (const JsonNode& item : node.items) {
        if (const JsonNode* found = deep(item, key))
            return found;
    }
    return nullptr;
}

} // namespace

TEST_CASE("life of a typed bearing is (C/P)^3 for balls", "[app]")
{
    // ISO 281: L10 = (C/P)^3 million revolutions; without axial load P = Fr. (30000/3000)^3 = 1000 million revolutions,
    // at 1000/min 1e9 / 60000 = 16 666.67 h. By hand.
    const Outcome outcome = call(with(typedBearing(), {"--radial-N", "3000", "--speed-rpm", "1000", "-f", "json"}));
    INFO(outcome.err);
    REQUIRE(outcome.code == 0);
    const JsonNode root = json(outcome.out);
    REQUIRE(deep(root, "L10_Mrev") != nullptr);
    REQUIRE(deep(root, "L10_h") != nullptr);
    CHECK_THAT(deep(root, "L10_Mrev")->number, WithinRel(1000.0, 1e-9));
    CHECK_THAT(deep(root, "L10_h")->number, WithinRel(1e9 / 60000.0, 1e-9));
}

TEST_CASE("cases of life are added by damage", "[app]")
{
    // Half the time 3000 N (1000 million revolutions), half 6000 N (125): at equal speed the means of the damages give
    // 1 / (0.5/1000 + 0.5/125) = 222.22 million revolutions. By hand (linear damage, ISO 281).
    const Outcome outcome = call(with(typedBearing(), {"--case", "3000,0,1000,0.5", "--case", "6000,0,1000,0.5", "-f", "json"}));
    INFO(outcome.err);
    REQUIRE(outcome.code == 0);
    CHECK_THAT(deep(json(outcome.out), "L10_Mrev")->number, WithinRel(2000.0 / 9.0, 1e-9));
}

TEST_CASE("life reads the generic catalogue by name", "[app]")
{
    const Outcome outcome = call({"life", "--designation", "6208", "--radial-N", "3500", "--axial-N", "420", "--speed-rpm", "720",
                                  "--required-h", "20000"});
    INFO(outcome.err);
    CHECK(outcome.code == 0);
    CHECK(has(outcome.out, "6208"));
    CHECK(has(outcome.out, "h"));
    // The same in German, and as a page.
    CHECK(call({"life", "--designation", "6208", "--radial-N", "3500", "--speed-rpm", "720", "--language", "de"}).code == 0);
    const Outcome page = call({"life", "--designation", "NU208", "--radial-N", "3500", "--speed-rpm", "720", "-f", "html"});
    CHECK(page.code == 0);
    CHECK(has(page.out, "<html"));
    CHECK(has(page.out, "NU208"));
}

TEST_CASE("life says what it misses", "[app]")
{
    struct Case {
        std::vector<std::string> arguments;
        std::string says;
    };
    const std::vector<std::string> load = {"--radial-N", "3500", "--speed-rpm", "720"};
    for (const Case& one : std::vector<Case>{
             {{"life"}, "--designation"},
             {with({"life", "--designation", "6208Q"}, load), "did you mean '6208'"},
             {with({"life", "--designation", "6208", "--family", "deep_grove_ball"}, load), "did you mean 'deep_groove_ball'"},
             {with({"life", "--designation", "6208", "--family", "plain_sintered"}, load), "no rating life"},
             {{"life", "--designation", "6208"}, "--radial-N"},
             {{"life", "--designation", "6208", "--radial-N", "3500"}, "--speed-rpm"},
             {{"life", "--designation", "6208", "--radial-N", "-1", "--speed-rpm", "720"}, "0 or more"},
             {{"life", "--designation", "6208", "--radial-N", "many", "--speed-rpm", "720"}, "--radial-N"},
             {{"life", "--designation", "6208", "--case", "1,2,3"}, "FR,FA,N,SHARE"},
             {{"life", "--designation", "6208", "--case", "1,2,3,x"}, "'1,2,3,x'"},
             {{"life", "--designation", "6208", "--case", "1,2,3,1", "--radial-N", "5"}, "leave out"},
             {with({"life", "--designation", "6208", "--reliability-percent", "100"}, load), "99.95"},
             {with({"life", "--designation", "6208", "--required-h", "0"}, load), "above 0"},
             {with({"life", "--designation", "6208", "-f", "svg"}, load), "unknown format"},
             {with({"life", "--C-N", "30000"}, load), "--family"},
             {with({"life", "--family", "deep_groove_ball", "--C-N", "30000", "--bore-mm", "40"}, load), "--outer-mm"},
             {with({"life", "--family", "deep_groove_ball", "--bore-mm", "80", "--outer-mm", "40", "--width-mm", "18", "--C-N",
                    "1", "--C0-N", "1"},
                   load),
              "larger than"},
             {with({"life", "--family", "deep_groove_ball", "--bore-mm", "40", "--outer-mm", "80", "--width-mm", "18", "--C-N",
                    "1", "--C0-N", "1"},
                   load),
              "--source"}}) {
        const Outcome outcome = call(one.arguments);
        INFO(Catch::Detail::stringify(one.arguments) << '\n' << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK(has(outcome.err, one.says));
    }
}

TEST_CASE("numbers that are none never come out of life", "[app]")
{
    for (const std::string number : {"nan", "-nan", "inf", "-inf", "1e400"}) {
        for (const std::string option :
             {"--radial-N", "--axial-N", "--speed-rpm", "--required-h", "--reliability-percent", "--required-S0"}) {
            std::vector<std::string> arguments = {"life", "--designation", "6208"};
            for (const std::string& other : {std::string("--radial-N"), std::string("--speed-rpm")}) {
                if (other != option)
                    arguments.push_back(other + "=1000");
            }
            arguments.push_back(option + "=" + number);
            const Outcome outcome = call(arguments);
            INFO(option << ' ' << number << '\n' << outcome.out << outcome.err);
            CHECK(outcome.code == 2);
            CHECK(outcome.out.empty());
            CHECK(has(outcome.err, option));
        }
    }
}
