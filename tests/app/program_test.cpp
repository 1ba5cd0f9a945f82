// The program as a shell sees it: pipes, signals, no display.

#include "core/document/document.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <regex>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

namespace
{

const std::string program = std::string("'") + SHAFTWRIGHT_PROGRAM + "'";
const std::string sample = std::string("'") + SHAFTWRIGHT_SOURCE_DIR + "/samples/gearbox-intermediate.shaftwright'";

struct Outcome {
    int code = -1;
    std::string out;
};

/// Runs a line of bash; the output is that of the line, with standard error when the line says 2>&1.
Outcome shell(const std::string& line)
{
    // No display and a fixed place for settings whatever the tests run in.
    const std::string whole =
        "env -u DISPLAY -u WAYLAND_DISPLAY -u QT_QPA_PLATFORM -u SOURCE_DATE_EPOCH HOME=/nonexistent bash -c \"" + line + "\"";
    FILE* pipe = popen(whole.c_str(), "r");
    REQUIRE(pipe != nullptr);
    Outcome outcome;
    std::array<char, 65536> buffer{};
    for (std::size_t got = 0; (got = fread(buffer.data(), 1, buffer.size(), pipe)) > 0;)
        outcome.out.append(buffer.data(), got);
    const int status = pclose(pipe);
    outcome.code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    return outcome;
}

[[maybe_unused]] std::string textOf(const std::string& file)
{
    std::ifstream stream(file, std::ios::binary);
    return std::string(std::istreambuf_iterator<char>(stream), {});
}

bool has(const std::string& text, const std::string& piece)
{
    return text.find(piece) != std::string::npos;
}

class Folder
{
public:
    Folder()
    {
        std::string name = (std::filesystem::temp_directory_path() / "shaftwright-test-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()) != nullptr);
        path = name;
    }
    ~Folder()
    {
        std::error_code ignored;
        std::filesystem::remove_all(path, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    std::string path;
};

} // namespace

TEST_CASE("a reader that leaves early ends the program quietly", "[app][program]")
{
    // The report is larger than a pipe holds, so the program does write into a closed pipe.
    for (const std::string command : {"report", "draw"}) {
        const Outcome head =
            shell("set -o pipefail; { { " + program + " " + command + " " + sample + (command == "report" ? " -f json" : "") +
                  " 2>&9; echo code \\$? >&9; } | head -c 10 >/dev/null; } 9>&1");
        INFO(head.out);
        CHECK(has(head.out, "code "));
        CHECK(head.out.rfind("code ", 0) == 0); // not a word of complaint before it
        CHECK_FALSE(has(head.out, "code 141")); // not killed by the signal
        CHECK_FALSE(has(head.out, "code 3"));
    }
}

TEST_CASE("a full disk is an error, not silence", "[app][program]")
{
    if (!std::filesystem::exists("/dev/full")) {
        std::cout << "skipped: full disk (no /dev/full here)\n";
        SUCCEED();
        return;
    }
    CHECK(shell(program + " schema > /dev/full").code == 2);
}

TEST_CASE("without a display the window is refused with exit 2 and commands work", "[app][program]")
{
    const Outcome window = shell(program + " " + sample + " 2>&1");
    INFO(window.out);
    CHECK(window.code == 2);
    CHECK(window.out.rfind("shaftwright: ", 0) == 0);
    CHECK(std::count(window.out.begin(), window.out.end(), '\n') == 1);
    CHECK(shell(program + " 2>&1").code == 2);
    CHECK(shell(program + " " + sample + " " + sample + " 2>&1").code == 2);
    const Outcome report = shell(program + " report " + sample);
    CHECK(report.code == 0);
    CHECK(report.out.size() > 1000);
}

TEST_CASE("the program reads a pipe and writes a pipe", "[app][program]")
{
    const Outcome outcome = shell(program + " normalise " + sample + " | " + program + " normalise - | " + program +
                                  " check - -f json; exit \\${PIPESTATUS[1]}");
    CHECK(outcome.code == 0);
    CHECK(outcome.out.rfind("[", 0) == 0);
}

TEST_CASE("numbers do not follow the locale", "[app][program]")
{
    const std::string plain = shell("LC_ALL=C " + program + " report " + sample + " -f json").out;
    CHECK(plain.size() > 1000);
    CHECK(shell("LC_ALL=de_DE.UTF-8 " + program + " report " + sample + " -f json").out == plain);
}

#ifdef SHAFTWRIGHT_WITH_WINDOW
TEST_CASE("draw makes the same PDF twice, without a display", "[app][program]")
{
    const Folder folder;
    const std::string first = folder.path + "/first.pdf", second = folder.path + "/second.pdf",
                      dated = folder.path + "/dated.pdf";
    for (const std::string& file : {first, second}) {
        const Outcome outcome = shell(program + " draw " + sample + " -o " + file + " 2>&1");
        INFO(outcome.out);
        CHECK(outcome.code == 0);
        CHECK(outcome.out.empty());
    }
    const std::string pdf = textOf(first);
    REQUIRE(pdf.size() > 10000);
    CHECK(pdf.rfind("%PDF-1.", 0) == 0);
    CHECK(has(pdf, "%%EOF"));
    CHECK(pdf == textOf(second)); // two processes, two moments
    CHECK(has(pdf, "(D:20000101000000"));
    // 1767225600 s after 1970 is 2026-01-01 00:00:00 UTC (`date -u -d @1767225600`).
    CHECK(shell("SOURCE_DATE_EPOCH=1767225600 " + program + " draw " + sample + " -o " + dated).code == 0);
    const std::string other = textOf(dated);
    CHECK(has(other, "(D:20260101000000"));
    CHECK(other.size() == pdf.size());
    // Nonsense in the variable does not come into the file.
    CHECK(shell("SOURCE_DATE_EPOCH=yesterday " + program + " draw " + sample + " -o " + dated).code == 0);
    CHECK(textOf(dated) == pdf);
}

TEST_CASE("the PDF holds its words as text, its fonts and its size", "[app][program]")
{
    if (shell("command -v pdftotext pdfinfo pdffonts").code != 0) {
        std::cout << "skipped: words of the PDF (no poppler-utils here)\n";
        SUCCEED();
        return;
    }
    const Folder folder;
    const std::string file = folder.path + "/page.pdf";
    REQUIRE(shell(program + " draw " + sample + " -o " + file).code == 0);
    const std::string words = shell("pdftotext -layout " + file + " - 2>&1").out;
    INFO(words);
    CHECK(has(words, "Intermediate shaft of a bucket"));
    const std::string info = shell("pdfinfo " + file + " 2>&1").out;
    INFO(info);
    CHECK(has(info, "Intermediate shaft of a bucket elevator drive"));
    CHECK(has(info, "Pages:           1"));
    // A sheet of the A series, landscape: A3 is 420 x 297 mm = 1190.55 x 841.89 pt (ISO 216, 72 pt an inch); the writer rounds to
    // whole points.
    CHECK((has(info, "1191 x 842 pts") || has(info, "1684 x 1191 pts")));
    const std::string fonts = shell("pdffonts " + file + " | tail -n +3").out;
    INFO(fonts);
    CHECK_FALSE(fonts.empty());
    // Each font is embedded and can be read back: the columns "emb" and "uni".
    std::istringstream lines(fonts);
    for (std::string line; std::getline(lines, line);)
        CHECK(std::regex_search(line, std::regex(R"(Identity-H\s+yes\s+(yes|no)\s+yes)")));
}

TEST_CASE("the PNG has the size that was asked for", "[app][program]")
{
    const Folder folder;
    const auto big_endian = [](const std::string& bytes, std::size_t at) {
        unsigned value = 0;
        for (std::size_t i = 0; i < 4; ++i)
            value = value * 256U + static_cast<unsigned char>(bytes[at + i]);
        return value;
    };
    for (const unsigned pixels_per_mm : {2U, 4U}) {
        const std::string file = folder.path + "/page.png", again = folder.path + "/again.png";
        for (const std::string& name : {file, again})
            REQUIRE(
                shell(program + " draw " + sample + " --pixels-per-mm " + std::to_string(pixels_per_mm) + " -o " + name + " 2>&1")
                    .code == 0);
        const std::string png = textOf(file);
        REQUIRE(png.size() > 1000);
        CHECK(png == textOf(again));
        CHECK(png.compare(0, 8, "\x89PNG\r\n\x1a\n") == 0);
        // Header of the PNG (ISO/IEC 15948): width and height from byte 16 on.
        const unsigned width = big_endian(png, 16), height = big_endian(png, 20);
        INFO(width << " x " << height);
        CHECK((width == 420U * pixels_per_mm || width == 594U * pixels_per_mm));
        CHECK((height == 297U * pixels_per_mm || height == 420U * pixels_per_mm));
    }
    CHECK(shell(program + " draw " + sample + " --pixels-per-mm 400 -f png 2>/dev/null").code == 2);
}
#endif
