#include "tests/app/call.h"

using namespace shaftwright;
using namespace shaftwright::test;

TEST_CASE("draw writes the same picture twice", "[app]")
{
    const Outcome once = call({"draw", gearbox()});
    REQUIRE(once.code == 0);
    CHECK(once.out.size() > 10000);
    CHECK(has(once.out, "<svg"));
    CHECK(has(once.out, "</svg>"));
    CHECK(once.out == call({"draw", gearbox(), "-f", "svg"}).out);
    CHECK_FALSE(has(once.out, "nan"));
    CHECK_FALSE(has(once.out, "inf\""));
    const Outcome dark = call({"draw", gearbox(), "--dark"});
    CHECK(dark.code == 0);
    CHECK(dark.out != once.out);
    // Another input, another picture.
    CHECK(call({"draw", gearbox(), "--set", "shaft.segments.S2.outer_mm=52"}).out != once.out);
}

TEST_CASE("without a renderer draw says that it writes svg only", "[app]")
{
    const Folder folder;
    for (const char* format : {"pdf", "png"}) {
        const Outcome outcome = call({"draw", gearbox(), "-o", folder / (std::string("page.") + format)});
        CHECK(outcome.code == 2);
        CHECK(has(outcome.err, "svg"));
        CHECK(folder.count() == 0);
    }
}

TEST_CASE("the renderer gets page, title and wishes; its bytes come out unchanged", "[app]")
{
    const std::string bytes("\x89PNG\r\n\0\xff\n", 9);
    command_line::RenderRequest seen;
    double width = 0.0;
    const command_line::Renderer renderer = [&](const drawing::Page& page, const command_line::RenderRequest& request,
                                                std::string&) {
        seen = request;
        width = page.width_mm;
        return std::optional<std::string>(bytes);
    };
    const Folder folder;
    const Outcome outcome =
        call({"draw", gearbox(), "-o", folder / "page.png", "--dark", "--pixels-per-mm", "3.5"}, {}, renderer);
    INFO(outcome.err);
    CHECK(outcome.code == 0);
    CHECK(seen.format == "png");
    CHECK(seen.title == "Intermediate shaft of a bucket elevator drive");
    CHECK(seen.dark);
    CHECK(seen.pixels_per_mm == 3.5);
    CHECK(width >= 420.0); // A3 or larger, ISO 5457
    CHECK(textOf(folder / "page.png") == bytes);
}

TEST_CASE("a renderer that fails is our own error and leaves no file", "[app]")
{
    const command_line::Renderer renderer = [](const drawing::Page&, const command_line::RenderRequest&, std::string& error) {
        error = "the printer is on fire";
        return std::optional<std::string>();
    };
    const Folder folder;
    const Outcome outcome = call({"draw", gearbox(), "-o", folder / "page.pdf"}, {}, renderer);
    CHECK(outcome.code == 3);
    CHECK(has(outcome.err, "the printer is on fire"));
    CHECK(folder.count() == 0);
}
