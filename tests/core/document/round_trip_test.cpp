#include "core/document/document.h"
#include "core/edit/edit.h"
#include "tests/support/rich_arrangement.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

using namespace shaftwright;

TEST_CASE("an arrangement that uses every field survives the file", "[core][document]")
{
    const Arrangement rich = test::richArrangement();
    const std::string text = writeArrangement(rich);
    const ReadResult read = readArrangement(text, "rich");
    REQUIRE(read.errors.empty());
    REQUIRE(read.ok());
    CHECK(*read.arrangement == rich);
    CHECK(writeArrangement(*read.arrangement) == text);
    CHECK(read.file_version == 1);
    CHECK(text.back() == '\n');
}

TEST_CASE("templates survive the file and open questions stay open", "[core][document]")
{
    for (const Arrangement& arrangement : {Arrangement{}, emptyArrangement(), plainTwoBearingShaft()}) {
        const std::string text = writeArrangement(arrangement);
        const ReadResult read = readArrangement(text, "template");
        REQUIRE(read.ok());
        CHECK(*read.arrangement == arrangement);
        CHECK(writeArrangement(*read.arrangement) == text);
        CHECK(text.find("null") == std::string::npos);
        CHECK(text.find("required_L_h") == std::string::npos);
    }
}

TEST_CASE("every kind of new part survives the file", "[core][document]")
{
    Arrangement arrangement = plainTwoBearingShaft();
    for (const char* kind : {"cylindrical_gear", "bevel_gear", "worm", "worm_wheel", "belt_pulley", "chain_sprocket", "coupling",
                             "impeller", "weight", "point_load", "distributed_load"}) {
        const auto part = newPart(arrangement, kind, 100.0);
        REQUIRE(part);
        CHECK(std::string(kindOf(*part)) == kind);
        const auto added = addPart(arrangement, *part);
        REQUIRE(added);
        arrangement = *added;
    }
    const ReadResult read = readArrangement(writeArrangement(arrangement), "parts");
    REQUIRE(read.ok());
    CHECK(*read.arrangement == arrangement);
}

TEST_CASE("numbers come back as the same double", "[core][document]")
{
    std::mt19937_64 random(20261125);
    std::uniform_real_distribution<double> exponent(-18.0, 4.9);
    Arrangement arrangement = plainTwoBearingShaft();
    for (int i = 0; i < 500; ++i) {
        arrangement.supports.front().x_mm = std::pow(10.0, exponent(random)) * (i % 2 == 0 ? 1.0 : -1.0);
        const ReadResult read = readArrangement(writeArrangement(arrangement), "number");
        REQUIRE(read.ok());
        REQUIRE(read.arrangement->supports.front().x_mm == arrangement.supports.front().x_mm);
    }
}

TEST_CASE("extra is kept to the byte", "[core][document]")
{
    Arrangement arrangement = plainTwoBearingShaft();
    arrangement.extra_json = "{\"n\":1.0e0,  \"list\":[ 1,2 ,3],\n\t\"big\": 12345678901234567890}";
    const std::string text = writeArrangement(arrangement);
    const ReadResult read = readArrangement(text, "extra");
    REQUIRE(read.ok());
    CHECK(read.arrangement->extra_json == arrangement.extra_json);
    CHECK(writeArrangement(*read.arrangement) == text);
}

TEST_CASE("a file in another layout reads the same and is written in ours", "[core][document]")
{
    const Arrangement arrangement = plainTwoBearingShaft();
    std::string text = canonicalInputs(arrangement);
    const ReadResult read = readArrangement("\xEF\xBB\xBF\r\n" + text + "\r\n", "other layout");
    REQUIRE(read.ok());
    CHECK(*read.arrangement == arrangement);
}

TEST_CASE("what no file can hold is not written", "[core][document]")
{
    const Arrangement good = test::richArrangement();
    CHECK_FALSE(whyNotWritable(good));
    const auto refused = [&](auto change, const std::string& path) {
        Arrangement bad = good;
        change(bad);
        const auto finding = whyNotWritable(bad);
        REQUIRE(finding);
        CHECK(finding->code == "value-invalid");
        CHECK(finding->path == path);
        CHECK_THROWS_AS(writeArrangement(bad), std::domain_error);
        CHECK_THROWS_AS(digestOf(bad), std::domain_error);
    };
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    constexpr double infinity = std::numeric_limits<double>::infinity();
    refused([&](Arrangement& a) { a.supports[1].x_mm = nan; }, "supports.B.x_mm");
    refused([&](Arrangement& a) { a.duty.required_L_h = infinity; }, "duty.required_L_h");
    refused([&](Arrangement& a) { std::get<PointLoad>(a.parts[15].body).force_N.y = -infinity; }, "parts.F1.force_N.y");
    refused([&](Arrangement& a) { a.parts[1].id = PartId("G1"); }, "parts.G1.id");
    refused([&](Arrangement& a) { a.parts[1].id = PartId("G 1"); }, "parts.1.id");
    refused([&](Arrangement& a) { a.supports[1].id = SupportId("G1"); }, "supports.G1.id");
    refused([&](Arrangement& a) { a.title.author = "\xff"; }, "arrangement.author");
    refused([&](Arrangement& a) { a.extra_json = "{"; }, "extra");
    refused([&](Arrangement& a) { a.extra_json = "[]"; }, "extra");
    refused([&](Arrangement& a) { a.requirements[0].where = "gone"; }, "requirements.R1.where");
    refused([&](Arrangement& a) { a.supports[0].bearing->rows.clear(); }, "supports.A.bearing.rows");
}
