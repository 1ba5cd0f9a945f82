#include "tests/app/call.h"

using namespace shaftwright;
using namespace shaftwright::test;

namespace
{
const std::vector<std::string> commands = {"report", "check", "life", "schema", "paths", "normalise", "draw"};
}

TEST_CASE("help is asked for and not an error", "[app]")
{
    const Outcome help = call({"--help"});
    CHECK(help.code == 0);
    CHECK(help.err.empty());
    for (const std::string& command : commands) {
        INFO(command);
        CHECK(has(help.out, command));
        const Outcome own = call({command, "--help"});
        CHECK(own.code == 0);
        CHECK(own.err.empty());
        CHECK(has(own.out, command));
        CHECK(has(own.out, "--output"));
    }
    // What each exit code means can be read where scripts are written.
    for (const char* words : {"0 fine", "1 a requirement not met", "2 unusable", "3 our own error"})
        CHECK(has(help.out, words));
}

TEST_CASE("help of each command names its options", "[app]")
{
    const auto names = [](const std::string& command, std::initializer_list<const char*> options) {
        const std::string text = call({command, "--help"}).out;
        for (const char* option : options) {
            INFO(command << ' ' << option);
            CHECK(has(text, option));
        }
    };
    names("report", {"--set", "--format", "--language", "--without"});
    names("check", {"--set", "--strict", "--format"});
    names("life", {"--designation", "--radial-N", "--axial-N", "--speed-rpm", "--case", "--required-h", "--C-N", "--source"});
    names("paths", {"--set", "--format"});
    names("normalise", {"--in-place"});
    names("draw", {"--dark", "--pixels-per-mm", "--format"});
}

TEST_CASE("the version is one line", "[app]")
{
    const Outcome version = call({"--version"});
    CHECK(version.code == 0);
    CHECK(version.err.empty());
    REQUIRE(linesOf(version.out).size() == 1);
    CHECK(version.out.rfind("shaftwright ", 0) == 0);
    CHECK(version.out.find_first_of("0123456789") != std::string::npos);
}

TEST_CASE("a mistyped command is answered with the nearest one", "[app]")
{
    for (const auto& [typed, meant] : std::vector<std::pair<std::string, std::string>>{
             {"raport", "report"}, {"chekc", "check"}, {"normalize", "normalise"}, {"shema", "schema"}, {"darw", "draw"}}) {
        const Outcome outcome = call({typed});
        INFO(outcome.err);
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK(has(outcome.err, "'" + typed + "'"));
        CHECK(has(outcome.err, "did you mean '" + meant + "'"));
    }
    const Outcome far = call({"xylophone"});
    CHECK(far.code == 2);
    CHECK_FALSE(has(far.err, "did you mean"));
    for (const std::string& command : commands)
        CHECK(has(far.err, command));
}

TEST_CASE("a mistyped option is answered with the nearest one", "[app]")
{
    for (const auto& [arguments, meant] :
         std::vector<std::pair<std::vector<std::string>, std::string>>{{{"report", gearbox(), "--langauge", "de"}, "--language"},
                                                                       {{"draw", gearbox(), "--drak"}, "--dark"},
                                                                       {{"check", gearbox(), "--strct"}, "--strict"},
                                                                       {{"life", "--desigation=6208"}, "--designation"}}) {
        const Outcome outcome = call(arguments);
        INFO(outcome.err);
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK(has(outcome.err, "unknown option"));
        CHECK(has(outcome.err, "did you mean '" + meant + "'"));
    }
}

TEST_CASE("usage errors exit with 2 whatever their kind", "[app]")
{
    for (const std::vector<std::string>& arguments :
         std::vector<std::vector<std::string>>{{},                                          // nothing asked for
                                               {"report"},                                  // no file
                                               {"check"},                                   //
                                               {"report", gearbox(), "surplus"},            // one file too many
                                               {"report", gearbox(), "--language"},         // option without its word
                                               {"report", gearbox(), "--language", "fr"},   // unknown language
                                               {"report", gearbox(), "--without", "words"}, // unknown piece
                                               {"draw", gearbox(), "--pixels-per-mm", "x"}, // no number
                                               {"draw", gearbox(), "--pixels-per-mm", "0"}, // out of range
                                               {"schema", gearbox()},                       // takes no file
                                               {"normalise", "-", "--in-place"},            // standard input cannot be written
                                               {"report", gearbox(), "-f", "pdf"},          // a format of another command
                                               {"--nothing"}}) {
        const Outcome outcome = call(arguments);
        INFO(Catch::Detail::stringify(arguments) << '\n' << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK_FALSE(outcome.err.empty());
    }
}

TEST_CASE("a word is a file when it exists, has a separator or the suffix", "[app]")
{
    using command_line::asksForCommand;
    CHECK_FALSE(asksForCommand({}));
    CHECK_FALSE(asksForCommand({"shaft.shaftwright"}));
    CHECK_FALSE(asksForCommand({"./raport"}));
    CHECK_FALSE(asksForCommand({gearbox()}));
    CHECK(asksForCommand({"report"}));
    CHECK(asksForCommand({"raport"}));
    CHECK(asksForCommand({"--help"}));
    CHECK(asksForCommand({"-h"}));
}

TEST_CASE("suffix and -f may not contradict each other", "[app]")
{
    const Folder folder;
    const std::string target = folder / "out.json";
    const Outcome outcome = call({"report", gearbox(), "-o", target, "-f", "text"});
    INFO(outcome.err);
    CHECK(outcome.code == 2);
    CHECK(has(outcome.err, "contradicts"));
    CHECK(folder.count() == 0);

    // Agreeing is fine, and a suffix that says nothing leaves the word to -f.
    CHECK(call({"report", gearbox(), "-o", target, "-f", "json"}).code == 0);
    CHECK(call({"report", gearbox(), "-o", folder / "out.dat", "-f", "json"}).code == 0);
    CHECK(textOf(target) == textOf(folder / "out.dat"));

    const Outcome unclear = call({"report", gearbox(), "-o", folder / "unclear.dat"});
    CHECK(unclear.code == 2);
    CHECK(has(unclear.err, "-f"));
    CHECK_FALSE(std::filesystem::exists(folder / "unclear.dat"));
}

TEST_CASE("output goes to standard output with - as without -o", "[app]")
{
    const Outcome plain = call({"normalise", gearbox()});
    const Outcome dash = call({"normalise", gearbox(), "-o", "-"});
    CHECK(plain.code == 0);
    CHECK(dash.code == 0);
    CHECK(plain.out == dash.out);
}
