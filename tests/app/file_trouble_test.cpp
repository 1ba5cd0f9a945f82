#include "tests/app/call.h"

#include <iostream>
#include <sys/stat.h>
#include <unistd.h>

using namespace shaftwright;
using namespace shaftwright::test;

namespace
{

const std::vector<std::string> readers = {"report", "check", "paths", "normalise", "draw"};

/// All commands refuse the file, name it and say `says`.
void refused(const std::string& file, const std::string& says)
{
    for (const std::string& command : readers) {
        const Outcome outcome = call({command, file});
        INFO(command << ' ' << file << '\n' << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK(has(outcome.err, file));
        CHECK(has(outcome.err, "error: "));
        CHECK(has(outcome.err, "[" + says + "]"));
        CHECK_FALSE(has(outcome.err, "reader.")); // sentences, not keys
    }
}

} // namespace

TEST_CASE("files that are none are named", "[app]")
{
    const Folder folder;
    refused(folder / "missing.shaftwright", "file-unreadable");
    refused(folder / "", "file-unreadable");
}

TEST_CASE("a file without permission is named", "[app]")
{
    if (geteuid() == 0) {
        std::cout << "skipped: a file without permission (root may read everything)\n";
        SUCCEED();
        return;
    }
    const Folder folder;
    const std::string file = folder.write("locked.shaftwright", textOf(gearbox()));
    REQUIRE(chmod(file.c_str(), 0) == 0);
    refused(file, "file-unreadable");
}

TEST_CASE("files of others, newer ones and broken ones are told apart", "[app]")
{
    const Folder folder;
    const std::string text = textOf(gearbox());
    refused(folder.write("empty.shaftwright", ""), "file-truncated");
    refused(folder.write("foreign.json", "{\"name\": \"something else\"}\n"), "file-foreign");
    refused(folder.write("picture.png", std::string("\x89PNG\r\n\x1a\n\0\0", 10)), "file-not-json");
    std::string newer = text;
    newer.replace(newer.find("\"format_version\": 1"), 19, "\"format_version\": 7");
    const std::string newer_file = folder.write("newer.shaftwright", newer);
    refused(newer_file, "file-newer");
    CHECK(has(call({"check", newer_file}).err, "7"));
    refused(folder.write("half.shaftwright", text.substr(0, text.size() / 2)), "file-truncated");
}

TEST_CASE("a wrong value is told with line and column, all of them at once", "[app]")
{
    const Folder folder;
    std::string text = textOf(gearbox());
    const std::size_t first = text.find("\"length_mm\": 27");
    text.replace(first, 15, "\"length_mm\": \"x\"");
    const std::size_t second = text.find("\"teeth\": 82");
    text.replace(second, 11, "\"teath\": 82");
    const std::string file = folder.write("wrong.shaftwright", text);
    const Outcome outcome = call({"check", file});
    INFO(outcome.err);
    CHECK(outcome.code == 2);
    const auto line_of = [&](std::size_t at) {
        return std::to_string(1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
    };
    CHECK(has(outcome.err, file + ":" + line_of(first) + ":"));
    CHECK(has(outcome.err, file + ":" + line_of(second) + ":"));
    CHECK(has(outcome.err, "teath"));
    CHECK(has(outcome.err, "teeth"));
}

TEST_CASE("an output that cannot be written is told and nothing is left behind", "[app]")
{
    const Folder folder;
    const std::string nowhere = folder / "no/such/folder/out.json";
    const Outcome missing = call({"report", gearbox(), "-o", nowhere});
    CHECK(missing.code == 2);
    CHECK(has(missing.err, nowhere));
    std::filesystem::create_directory(folder / "taken.json");
    const Outcome directory = call({"report", gearbox(), "-o", folder / "taken.json"});
    CHECK(directory.code == 2);
    CHECK(has(directory.err, "taken.json"));
    CHECK(std::filesystem::is_directory(folder / "taken.json"));
    CHECK(folder.count() == 1);
}

TEST_CASE("an output file changes as a whole or not at all", "[app]")
{
    const Folder folder;
    const std::string target = folder.write("out.json", "what was there\n");
    REQUIRE(chmod(target.c_str(), 0640) == 0);
    // Nothing to write since the input is bad: the old text stays.
    CHECK(call({"report", folder / "missing.shaftwright", "-o", target}).code == 2);
    CHECK(textOf(target) == "what was there\n");
    CHECK(call({"report", gearbox(), "--set", "x=1", "-o", target}).code == 2);
    CHECK(textOf(target) == "what was there\n");
    // Then the new text, whole, under the same permissions, and no other file beside it.
    CHECK(call({"report", gearbox(), "-o", target}).code == 0);
    CHECK(textOf(target) == call({"report", gearbox(), "-f", "json"}).out);
    struct stat state = {};
    REQUIRE(stat(target.c_str(), &state) == 0);
    CHECK((state.st_mode & 0777U) == 0640U);
    CHECK(folder.count() == 1);
    // Through a link the file behind it is written and the link stays.
    const std::string link = folder / "link.json";
    std::filesystem::create_symlink("out.json", link);
    CHECK(call({"report", gearbox(), "-o", link, "--without", "curves"}).code == 0);
    CHECK(std::filesystem::is_symlink(link));
    CHECK(textOf(target) == call({"report", gearbox(), "-f", "json", "--without", "curves"}).out);
}

TEST_CASE("a stream that takes no more is noticed", "[app]")
{
    std::istringstream in;
    std::ostringstream out, err;
    out.setstate(std::ios::badbit);
    CHECK(command_line::run({"schema"}, command_line::Streams{in, out, err, false}) == 2);
}
