#include "tests/core/bearings/fixtures.h"

#include <catch2/catch.hpp>

using namespace shaftwright;
using namespace shaftwright::fixtures;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace
{

Findings said(const BearingRating& rating, BearingCondition condition)
{
    return loadFindings(rating, condition, equivalentLoad(rating, condition.Fr_N, condition.Fa_N));
}

BearingCondition running(double Fr_N, double Fa_N, double speed_rpm = 1500)
{
    BearingCondition c;
    c.Fr_N = Fr_N;
    c.Fa_N = Fa_N;
    c.speed_rpm = speed_rpm;
    return c;
}

bool is(const Finding* finding, Severity severity, const char* variant = "")
{
    return finding && finding->severity == severity && finding->variant == variant;
}

} // namespace

TEST_CASE("ribs take a share of the radial load", "[core][bearings]")
{
    // 0.1 free, to 0.4 with care, above a stop; peaks of a few seconds to 0.5 (common practice).
    const BearingRating NJ = cylindrical(Family::cylindrical_roller_NJ, 60000, 60000);
    CHECK_FALSE(find(said(NJ, running(10000, 999)), "rib-load"));
    CHECK(is(find(said(NJ, running(10000, 1001)), "rib-load"), Severity::caution));
    CHECK(is(find(said(NJ, running(10000, 3999)), "rib-load"), Severity::caution));
    const Findings beyond = said(NJ, running(10000, 4001));
    REQUIRE(is(find(beyond, "rib-load"), Severity::stop, "limit"));
    CHECK_THAT(number(*find(beyond, "rib-load"), "Fa_limit_N"), WithinRel(4000.0, 1e-12));
    CHECK(is(find(said(NJ, running(0, 100)), "rib-load"), Severity::stop, "no-radial"));
    BearingCondition peak = running(10000, 4500);
    peak.short_peak = true;
    CHECK(is(find(said(NJ, peak), "rib-load"), Severity::caution, "peak"));
    peak.Fa_N = 5001;
    CHECK(is(find(said(NJ, peak), "rib-load"), Severity::stop, "limit"));
    CHECK_FALSE(find(said(NJ, running(10000, 9000, 0)), "rib-load")); // standing: no sliding
    CatalogueRow r = row(GeometryClass::cylindrical_roller, 60000, 60000);
    r.axial_limit_N = 500;
    CHECK(is(find(said(ratingOf(single(Family::cylindrical_roller_NUP, r)), running(10000, 501)), "rib-load"), Severity::stop,
             "stated-limit"));
}

TEST_CASE("a deep groove bearing stops at half its static rating in axial direction", "[core][bearings]")
{
    const BearingRating bearing = deepGroove(30000, 20000, 14);
    CHECK_FALSE(find(said(bearing, running(5000, 9990)), "deep-groove-axial-limit"));
    const Findings stop = said(bearing, running(5000, 10010));
    REQUIRE(is(find(stop, "deep-groove-axial-limit"), Severity::stop));
    CHECK_THAT(number(*find(stop, "deep-groove-axial-limit"), "share_percent"), WithinRel(50.05, 1e-12));
    CatalogueRow thin = row(GeometryClass::deep_groove_ball, 30000, 20000);
    thin.f0 = 14;
    thin.series = "618";
    CHECK(is(find(said(ratingOf(single(Family::deep_groove_ball, thin)), running(5000, 5010)), "deep-groove-axial-limit"),
             Severity::caution, "small"));
    thin.series = "62";
    CHECK_FALSE(find(said(ratingOf(single(Family::deep_groove_ball, thin)), running(5000, 5010)), "deep-groove-axial-limit"));
    thin.bore_mm = 10;
    CHECK(find(said(ratingOf(single(Family::deep_groove_ball, thin)), running(5000, 5010)), "deep-groove-axial-limit"));
}

TEST_CASE("a second row without load is told beyond e", "[core][bearings]")
{
    // Spherical roller, 10 deg: e = 1.5 tan 10 deg = 0.2645.
    const BearingRating bearing =
        ratingOf(single(Family::spherical_roller, row(GeometryClass::spherical_roller, 90000, 95000, 10)));
    CHECK_FALSE(find(said(bearing, running(10000, 2640)), "row-unloaded"));
    const Findings findings = said(bearing, running(10000, 2650));
    REQUIRE(is(find(findings, "row-unloaded"), Severity::caution));
    CHECK_THAT(number(*find(findings, "row-unloaded"), "axial_ratio"), WithinRel(0.265, 1e-12));
    CHECK_THAT(number(*find(findings, "row-unloaded"), "e"), WithinAbs(0.2645, 5e-5));
    CHECK(find(said(bearing, running(0, 1000)), "row-unloaded")->variant == "axial-only");
    const CatalogueRow forty = row(GeometryClass::angular_contact_ball, 30000, 20000, 40);
    const BearingRating set = ratingOf(setOf(Family::angular_contact_set_O, SetArrangement::O, forty));
    CHECK(find(said(set, running(1000, 1150)), "row-unloaded"));
    BearingCondition preloaded = running(1000, 1150);
    preloaded.pressed = true;
    CHECK_FALSE(find(said(set, preloaded), "row-unloaded"));
    CHECK_FALSE(find(said(angular(30000, 20000, 40), running(1000, 1500)), "row-unloaded")); // one row
}

TEST_CASE("a four-point bearing wants mostly axial load", "[core][bearings]")
{
    const BearingRating four =
        ratingOf(single(Family::four_point_contact_ball, row(GeometryClass::four_point_contact_ball, 40000, 35000, 35)));
    CHECK(is(find(said(four, running(1000, 1290)), "four-point-low-axial"), Severity::caution));
    CHECK_FALSE(find(said(four, running(1000, 1310)), "four-point-low-axial"));
    CHECK_FALSE(find(said(four, running(0, 1000)), "four-point-low-axial"));
}

TEST_CASE("a turning thrust bearing must stay loaded", "[core][bearings]")
{
    CatalogueRow r = row(GeometryClass::thrust_ball, 40000, 80000, 90);
    InternalGeometry inside;
    inside.elements_per_row = 14;
    inside.element_diameter_mm = 10;
    inside.pitch_diameter_mm = 65;
    r.geometry = inside;
    const BearingRating bearing = ratingOf(single(Family::thrust_ball, r));
    // Gyroscopic least load after Harris (from memory), Z 14, Dw 10, Dpw 65 mm, 3000 rpm: 459 N (by hand).
    CHECK_THAT(leastThrustLoad_N(bearing, 3000), WithinAbs(459, 0.5));
    CHECK_THAT(leastThrustLoad_N(bearing, -1500), WithinAbs(459 / 4.0, 0.2));
    CHECK(is(find(said(bearing, running(0, 0, 3000)), "thrust-unloaded"), Severity::stop));
    CHECK(is(find(said(bearing, running(0, 450, 3000)), "thrust-unloaded"), Severity::caution, "below-least"));
    CHECK_FALSE(find(said(bearing, running(0, 470, 3000)), "thrust-unloaded"));
    CHECK_FALSE(find(said(bearing, running(0, 0, 0)), "thrust-unloaded"));
    BearingCondition spring = running(0, 0, 3000);
    spring.pressed = true;
    CHECK_FALSE(find(said(bearing, spring), "thrust-unloaded"));
    const BearingRating roller = thrust(Family::cylindrical_roller_thrust, 90000, 300000, 90);
    CHECK(leastThrustLoad_N(roller, 100) == 300.0);
    CHECK(leastThrustLoad_N(deepGroove(1, 1, 14), 100) == 0.0);
    CHECK(leastThrustLoad_N(thrust(Family::spherical_roller_thrust, 3e5, 8e5, 50), 100) == 0.0);
}

TEST_CASE("the load stays within the range of the life formula", "[core][bearings]")
{
    const BearingRating ball = deepGroove(30000, 16000, 14);
    CHECK_FALSE(find(said(ball, running(14990, 0)), "load-above-half-c"));
    CHECK(is(find(said(ball, running(15010, 0)), "load-above-half-c"), Severity::caution));
    CHECK(is(find(said(ball, running(16010, 0)), "load-above-c0"), Severity::stop));
    const Findings over = said(ball, running(30010, 0));
    CHECK(is(find(over, "load-above-c"), Severity::stop));
    CHECK_FALSE(find(over, "load-above-half-c"));
    const BearingRating roller = cylindrical(Family::cylindrical_roller_NU, 30000, 16000);
    CHECK_FALSE(find(said(roller, running(16010, 0)), "load-above-c0"));
}

TEST_CASE("elements that may slide are told by the length of the case", "[core][bearings]")
{
    const BearingRating roller = cylindrical(Family::cylindrical_roller_NU, 50000, 50000);
    CHECK_FALSE(find(said(roller, running(1001, 0)), "below-minimum-load"));
    CHECK(is(find(said(roller, running(999, 0)), "below-minimum-load"), Severity::caution, "roller"));
    BearingCondition brief = running(999, 0);
    brief.time_share = 0.05;
    CHECK(is(find(said(roller, brief), "below-minimum-load"), Severity::note, "roller"));
    BearingCondition pressed = running(999, 0);
    pressed.pressed = true;
    CHECK_FALSE(find(said(roller, pressed), "below-minimum-load"));
    CHECK_FALSE(find(said(roller, running(999, 0, 0)), "below-minimum-load"));
    CHECK(is(find(said(deepGroove(50000, 30000, 14), running(499, 0)), "below-minimum-load"), Severity::caution, "ball"));
    CHECK(find(said(cylindrical(Family::cylindrical_roller_full, 50000, 50000), running(1999, 0)), "below-minimum-load"));
    CHECK(leastLoadRatio(Family::deep_groove_ball_two_row) == 0.015);
    CHECK(leastLoadRatio(Family::thrust_ball) == 0.0);
}

TEST_CASE("a bearing without load and a very slow one are told", "[core][bearings]")
{
    const BearingRating bearing = deepGroove(30000, 20000, 14);
    CHECK(is(find(said(bearing, running(0, 0)), "bearing-unloaded"), Severity::caution));
    CHECK_FALSE(find(said(bearing, running(0, 0)), "below-minimum-load"));
    CHECK_FALSE(find(said(bearing, running(0, 0, 0)), "bearing-unloaded"));
    CHECK(is(find(said(bearing, running(1000, 0, -9)), "speed-very-low"), Severity::note));
    CHECK(find(said(bearing, running(1000, 0, 15)), "speed-very-low")); // 15 rpm * 65 mm < 1000
    CHECK_FALSE(find(said(bearing, running(1000, 0, 16)), "speed-very-low"));
}

TEST_CASE("a bearing loaded the wrong way is told", "[core][bearings]")
{
    BearingCondition wrong = running(1000, 500);
    wrong.sense_held = false;
    CHECK(is(find(said(tapered(52000, 60000, 14), wrong), "axial-not-carried"), Severity::stop, "wrong-sense"));
    wrong.Fa_N = 0;
    CHECK_FALSE(find(said(tapered(52000, 60000, 14), wrong), "axial-not-carried"));
}

TEST_CASE("static and life verdicts carry the numbers that decided", "[core][bearings]")
{
    const BearingRating bearing = deepGroove(30000, 20000, 14);
    const StaticLoad load = staticLoad(bearing, 25000, 0);
    const Findings low = staticFindings(bearing, load, 1.0);
    REQUIRE(is(find(low, "static-low"), Severity::stop));
    CHECK_THAT(number(*find(low, "static-low"), "S0"), WithinRel(0.8, 1e-12));
    CHECK(number(*find(low, "static-low"), "S0_required") == 1.0);
    CHECK(staticFindings(bearing, load, 0.8).empty());
    CHECK(staticFindings(bearing, StaticLoad{}, 1.0).empty());

    CHECK(is(find(lifeFindings(9999, 10000, 5), "life-short"), Severity::stop));
    CHECK(lifeFindings(10000, 10000, 5).empty());
    CHECK(is(find(lifeFindings(160001, 10000, 5), "life-generous"), Severity::note));
    CHECK(is(find(lifeFindings(1000001, std::nullopt, 5), "life-generous"), Severity::note, "million-hours"));
    CHECK(is(find(lifeFindings(5000, std::nullopt, 30.1), "life-generous"), Severity::note, "light-load"));
    CHECK(lifeFindings(std::nullopt, 10000, 5).empty());
}

TEST_CASE("numbers that are none say nothing twice", "[core][bearings]")
{
    CHECK(said(deepGroove(30000, 20000, 14), running(std::nan(""), 0)).empty());
}

TEST_CASE("each bearing of a composite is judged by its own share", "[core][bearings]")
{
    BearingChoice choice;
    choice.family = Family::composite_NU_four_point;
    choice.rows.push_back({row(GeometryClass::cylindrical_roller, 64000, 60000), std::nullopt});
    choice.rows.push_back({row(GeometryClass::four_point_contact_ball, 40000, 35000, 35), std::nullopt});
    choice.rows[1].row.designation = "QJ";
    const BearingRating rating = ratingOf(choice);
    // 1.07 * 20 kN = 21.4 kN > 40/2 kN on the four-point bearing, 10 of 64 kN on the roller bearing.
    const Findings findings = said(rating, running(10000, 20000));
    REQUIRE(is(find(findings, "load-above-half-c"), Severity::caution));
    CHECK_THAT(number(*find(findings, "load-above-half-c"), "P_N"), WithinRel(21400.0, 1e-12));
    CHECK(std::get<std::string>(*find(findings, "load-above-half-c")->values.find("row")) == "QJ");
    CHECK(said(rating, running(10000, 15000)).empty());

    BearingChoice combined;
    combined.family = Family::needle_thrust_combined;
    combined.rows.push_back({row(GeometryClass::needle, 30000, 45000), std::nullopt});
    combined.rows.push_back({row(GeometryClass::needle_roller_thrust, 20000, 90000, 90), std::nullopt});
    CHECK(find(said(ratingOf(combined), running(5000, 0)), "thrust-unloaded"));
    CHECK_FALSE(find(said(ratingOf(combined), running(5000, 500)), "thrust-unloaded"));
}
