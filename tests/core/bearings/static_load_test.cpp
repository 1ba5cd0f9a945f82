#include "tests/core/bearings/fixtures.h"

#include <catch2/catch.hpp>

using namespace shaftwright;
using namespace shaftwright::fixtures;
using Catch::Matchers::WithinRel;

TEST_CASE("static loads of five families follow ISO 76", "[core][bearings]")
{
    // Fr 1, Fa 3 kN; formulas of ISO 76:2006 (from memory) evaluated by hand:
    // deep groove 0.6 + 1.5; angular 40 deg 0.5 + 0.78; its pair 1 + 1.56; tapered 14 deg 0.5 + 0.66 cot 14 deg;
    // thrust roller 50 deg 3 + 2.3 tan 50 deg.
    CHECK_THAT(*staticLoad(deepGroove(30000, 20000, 14), 1000, 3000).P0_N, WithinRel(2100.0, 1e-12));
    CHECK_THAT(*staticLoad(angular(30000, 20000, 40), 1000, 3000).P0_N, WithinRel(1280.0, 1e-12));
    const CatalogueRow forty = row(GeometryClass::angular_contact_ball, 30000, 20000, 40);
    const StaticLoad pair = staticLoad(ratingOf(setOf(Family::angular_contact_set_X, SetArrangement::X, forty)), 1000, 3000);
    CHECK_THAT(*pair.P0_N, WithinRel(2560.0, 1e-12));
    CHECK_THAT(pair.S0.value(), WithinRel(40000.0 / 2560.0, 1e-12));
    CHECK_THAT(*staticLoad(tapered(52000, 60000, 14), 1000, 3000).P0_N, WithinRel(3147.1, 2e-5)); // five digits
    CHECK_THAT(*staticLoad(thrust(Family::spherical_roller_thrust, 3e5, 8e5, 50), 1000, 3000).P0_N, WithinRel(5741.0, 1e-5));
}

TEST_CASE("the table of Y0 is met at every angle", "[core][bearings]")
{
    // ISO 76:2006, angular contact, one row (from memory).
    const std::pair<double, double> rows[] = {{5, 0.52},  {10, 0.50}, {15, 0.46}, {20, 0.42}, {25, 0.38},
                                              {30, 0.33}, {35, 0.29}, {40, 0.26}, {45, 0.22}};
    for (const auto& [alpha, Y0] : rows) {
        const StaticLoad load = staticLoad(angular(30000, 20000, alpha), 0, 1000);
        CHECK_THAT(load.Y0, WithinRel(Y0, 1e-9)); // the angle returns from radians with a rounding error
        CHECK(load.X0 == 0.5);
    }
    CHECK_THAT(staticLoad(angular(30000, 20000, 22), 0, 1000).Y0, WithinRel(0.404, 1e-9)); // 0.42 - 0.4 * 0.04
}

TEST_CASE("the static load of one row is never below the radial force", "[core][bearings]")
{
    CHECK(*staticLoad(deepGroove(30000, 20000, 14), 2000, 100).P0_N == 2000);
    CHECK(*staticLoad(angular(30000, 20000, 40), 2000, 100).P0_N == 2000);
    CHECK(*staticLoad(tapered(30000, 20000, 14), 2000, 100).P0_N == 2000);
    CHECK(*staticLoad(cylindrical(Family::cylindrical_roller_NJ, 30000, 20000), 2000, 100).P0_N == 2000);
}

TEST_CASE("static loads that a bearing cannot take leave no number", "[core][bearings]")
{
    const StaticLoad loose = staticLoad(cylindrical(Family::cylindrical_roller_NU, 30000, 20000), 1000, 100);
    CHECK_FALSE(loose.P0_N);
    CHECK_FALSE(loose.S0);
    REQUIRE(find(loose.findings, "axial-not-carried"));
    CHECK(find(loose.findings, "axial-not-carried")->variant == "static");
    CHECK(find(staticLoad(thrust(Family::thrust_ball, 3e4, 6e4, 90), 100, 1000).findings, "radial-on-thrust"));
    // 0.67 Fa cot 50 deg = 0.5622 Fa.
    const BearingRating spherical = thrust(Family::spherical_roller_thrust, 3e5, 8e5, 50);
    CHECK(staticLoad(spherical, 562, 1000).P0_N);
    CHECK_FALSE(staticLoad(spherical, 563, 1000).P0_N);
    CHECK(std::isnan(staticLoadQuick_N(spherical, 563, 1000)));
    for (const double bad : {0.0, -1.0, std::nan("")})
        CHECK(find(staticLoad(deepGroove(30000, bad, 14), 1000, 0).findings, "value-invalid"));
    CHECK(find(staticLoad(deepGroove(30000, 20000, 14), std::nan(""), 0).findings, "value-invalid"));
    CHECK(find(staticLoad(ratingOf(single(Family::magnetic, CatalogueRow{})), 1, 0).findings, "not-assessed"));
}

TEST_CASE("no load gives no static safety", "[core][bearings]")
{
    const StaticLoad load = staticLoad(deepGroove(30000, 20000, 14), 0, 0);
    CHECK(*load.P0_N == 0.0);
    CHECK_FALSE(load.S0);
}

TEST_CASE("the static safety of a composite is that of its weakest bearing", "[core][bearings]")
{
    BearingChoice choice;
    choice.family = Family::composite_NU_four_point;
    choice.rows.push_back({row(GeometryClass::cylindrical_roller, 64000, 60000), std::nullopt});
    choice.rows.push_back({row(GeometryClass::four_point_contact_ball, 40000, 35000, 35), std::nullopt});
    // NU: 60/20 = 3; four-point under Fa 10 kN alone: P0 = 0.58 * 10 = 5.8 kN, 35/5.8 = 6.03.
    CHECK_THAT(staticLoad(ratingOf(choice), 20000, 10000).S0.value(), WithinRel(3.0, 1e-12));
    // Fa 30 kN: 35/17.4 = 2.0115.
    CHECK_THAT(staticLoad(ratingOf(choice), 20000, 30000).S0.value(), WithinRel(35.0 / 17.4, 1e-12));
}

TEST_CASE("the least static safety follows motion, quiet running and shocks", "[core][bearings]")
{
    // ISO 76:2006, informative table (from memory): ball 2, 1, 1.5; roller 3, 1.5, 3. Standing: common practice.
    const BearingRating ball = deepGroove(30000, 20000, 14), roller = tapered(52000, 60000, 14);
    CHECK(requiredS0(ball, Grade::high, true, false) == 2.0);
    CHECK(requiredS0(ball, Grade::raised, true, false) == 2.0);
    CHECK(requiredS0(ball, Grade::normal, true, false) == 1.0);
    CHECK(requiredS0(ball, Grade::unimportant, true, true) == 1.5);
    CHECK(requiredS0(ball, Grade::high, true, true) == 2.0);
    CHECK(requiredS0(roller, Grade::high, true, false) == 3.0);
    CHECK(requiredS0(roller, Grade::normal, true, false) == 1.5);
    CHECK(requiredS0(roller, Grade::normal, true, true) == 3.0);
    CHECK(requiredS0(ball, Grade::normal, false, false) == 0.5);
    CHECK(requiredS0(ball, Grade::normal, false, true) == 1.0);
    CHECK(requiredS0(roller, Grade::normal, false, false) == 1.0);
    CHECK(requiredS0(roller, Grade::normal, false, true) == 2.0);
    CHECK(requiredS0(thrust(Family::spherical_roller_thrust, 3e5, 8e5, 50), Grade::normal, true, false) == 4.0);
    CHECK(requiredS0(cylindrical(Family::needle_drawn_cup, 2e4, 2e4), Grade::normal, true, false) == 3.0);
    CHECK(settledS0(ball, 0.7, true) == 1.0);
    CHECK(settledS0(roller, 0.7, true) == 1.5);
    CHECK(settledS0(ball, 0.7, false) == 0.7);
    CHECK(settledS0(ball, 2.5, true) == 2.5);
}
