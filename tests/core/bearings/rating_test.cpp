#include "tests/core/bearings/fixtures.h"

#include <catch2/catch.hpp>

#include <numbers>

using namespace shaftwright;
using namespace shaftwright::fixtures;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("matched sets are rated as one bearing", "[core][bearings]")
{
    // ISO 281:2007, 5.1 and 7.1 (from memory): 2^0.7 = 1.6245, 2^(7/9) = 1.7145; ISO 76: C0 adds.
    const CatalogueRow ball = row(GeometryClass::angular_contact_ball, 30000, 20000, 40);
    const CatalogueRow roller = row(GeometryClass::tapered_roller, 50000, 60000, 14);
    for (const Family family : {Family::angular_contact_set_O, Family::angular_contact_set_X, Family::precision_set_O_25}) {
        const BearingRating set = ratingOf(setOf(family, SetArrangement::O, ball));
        CHECK_THAT(set.C_N, WithinAbs(30000 * 1.6245, 1.0)); // factor to five digits
        CHECK(set.C0_N == 40000);
        CHECK(set.C0_single_N == 20000);
        CHECK(set.rows == 2);
        CHECK(set.tandem == 1);
        CHECK_FALSE(set.angular_or_tapered);
    }
    const BearingRating tandem = ratingOf(setOf(Family::angular_contact_set_tandem, SetArrangement::tandem, ball, 3));
    CHECK_THAT(tandem.C_N, WithinRel(30000 * std::pow(3.0, 0.7), 1e-12));
    CHECK(tandem.C0_N == 60000);
    CHECK(tandem.rows == 1);
    CHECK(tandem.tandem == 3);
    CHECK(tandem.angular_or_tapered);

    const BearingRating pair = ratingOf(setOf(Family::tapered_roller_pair, SetArrangement::X, roller));
    CHECK_THAT(pair.C_N, WithinAbs(50000 * 1.7145, 1.0)); // factor to five digits
    CHECK(pair.C0_N == 120000);
    CHECK_THAT(pair.life_exponent, WithinRel(10.0 / 3.0, 1e-15));

    // Two deep groove side by side: 2^0.7 * 0.90/0.95 = 1.539.
    const BearingRating two =
        ratingOf(setOf(Family::deep_groove_ball, SetArrangement::none, row(GeometryClass::deep_groove_ball, 30000, 20000)));
    CHECK_THAT(two.C_N, WithinAbs(30000 * 1.539, 2.0)); // factor to four digits
    CHECK(two.C0_N == 40000);

    // Two single thrust bearings share nothing: one for each sense.
    const BearingRating thrusts =
        ratingOf(setOf(Family::thrust_ball, SetArrangement::none, row(GeometryClass::thrust_ball, 40000, 80000, 90)));
    CHECK(thrusts.C_N == 40000);
    CHECK(thrusts.C0_N == 80000);
}

TEST_CASE("the steps of a set repeat its ratings", "[core][bearings]")
{
    const BearingRating set = ratingOf(
        setOf(Family::angular_contact_set_O, SetArrangement::O, row(GeometryClass::angular_contact_ball, 30000, 20000, 40)));
    const DerivationStep* C = step(set.derivation, "set_dynamic_rating");
    REQUIRE(C);
    CHECK_THAT(std::pow(input(*C, "i"), 0.7) * input(*C, "C1"), WithinRel(set.C_N, 1e-14));
    CHECK(step(set.derivation, "set_static_rating")->result == set.C0_N);
    CHECK(ratingOf(single(Family::deep_groove_ball, row(GeometryClass::deep_groove_ball, 1, 1))).derivation.empty());
}

TEST_CASE("a set of unlike rows is rated by the weakest", "[core][bearings]")
{
    BearingChoice choice =
        setOf(Family::angular_contact_set_O, SetArrangement::O, row(GeometryClass::angular_contact_ball, 30000, 20000, 40));
    choice.rows[1].row.C_N = 28000;
    CHECK_THAT(ratingOf(choice).C_N, WithinRel(28000 * std::pow(2.0, 0.7), 1e-12));
}

TEST_CASE("the families hold the senses that their inside allows", "[core][bearings]")
{
    CHECK(axialSense(Family::cylindrical_roller_NU) == AxialSense::none);
    CHECK(axialSense(Family::cylindrical_roller_NJ) == AxialSense::one_way);
    CHECK(axialSense(Family::cylindrical_roller_NUP) == AxialSense::both_ways);
    CHECK(axialSense(Family::tapered_roller) == AxialSense::one_way);
    CHECK(axialSense(Family::deep_groove_ball) == AxialSense::both_ways);
    CHECK(axialSense(Family::spherical_roller_thrust) == AxialSense::one_way);
    CHECK(axialSense(Family::thrust_ball_double) == AxialSense::both_ways);
    int radial = 0;
    for (const Family family : allFamilies())
        radial += carriesRadial(family) ? 1 : 0;
    CHECK(radial == familyCount - 5); // four flat thrust families and the linear guide
    CHECK_FALSE(carriesRadial(Family::thrust_ball));
    CHECK(carriesRadial(Family::spherical_roller_thrust));

    const BearingChoice tapered = single(Family::tapered_roller, row(GeometryClass::tapered_roller, 5e4, 6e4, 14));
    CHECK(holdsSense(tapered, Carries::plus, Carries::plus));
    CHECK_FALSE(holdsSense(tapered, Carries::plus, Carries::minus));
    CHECK(holdsSense(tapered, std::nullopt, Carries::minus));
    BearingChoice own = tapered;
    own.rows[0].carries = Carries::minus;
    CHECK(holdsSense(own, Carries::plus, Carries::minus));
    const BearingChoice NU = single(Family::cylindrical_roller_NU, row(GeometryClass::cylindrical_roller, 5e4, 6e4));
    CHECK_FALSE(holdsSense(NU, Carries::plus, Carries::plus));
}

TEST_CASE("the effective centre lies off the seat by half the pitch circle times tan alpha", "[core][bearings]")
{
    // T 22.75, d 45, D 85, alpha 14 deg: a = T/2 + (d + D)/4 tan alpha = 19.48 mm from the back face (common practice).
    CatalogueRow r = row(GeometryClass::tapered_roller, 5e4, 6e4, 14);
    r.width_mm = 22.75;
    const BearingChoice choice = single(Family::tapered_roller, r);
    CHECK_THAT(22.75 / 2.0 - centreOffset_mm(choice, Carries::plus), WithinAbs(19.48, 0.005));
    CHECK(centreOffset_mm(choice, Carries::minus) == -centreOffset_mm(choice, Carries::plus));
    CHECK(centreOffset_mm(choice, std::nullopt) == 0.0);

    // A known inside replaces (d + D)/2 by the pitch circle.
    InternalGeometry inside;
    inside.pitch_diameter_mm = 66.0;
    r.geometry = inside;
    CHECK_THAT(centreOffset_mm(single(Family::tapered_roller, r), Carries::plus),
               WithinRel(-33.0 * std::tan(14.0 * std::numbers::pi / 180.0), 1e-12));
    // A stated place goes before the formula.
    r.pressure_centre_mm = 20.0;
    CHECK_THAT(centreOffset_mm(single(Family::tapered_roller, r), Carries::minus), WithinRel(20.0 - 11.375, 1e-12));

    const CatalogueRow forty = row(GeometryClass::angular_contact_ball, 30000, 20000, 40);
    CHECK(centreOffset_mm(setOf(Family::angular_contact_set_O, SetArrangement::O, forty), Carries::plus) == 0.0);
    CHECK(centreOffset_mm(single(Family::deep_groove_ball, row(GeometryClass::deep_groove_ball, 1, 1)), Carries::plus) == 0.0);
    CHECK(centreOffset_mm(BearingChoice{}, Carries::plus) == 0.0);
    // A tandem set pushes one way like each of its bearings.
    CHECK_THAT(centreOffset_mm(setOf(Family::angular_contact_set_tandem, SetArrangement::tandem, forty), Carries::plus),
               WithinRel(-32.5 * std::tan(40.0 * std::numbers::pi / 180.0), 1e-12));
}

TEST_CASE("a needle bearing without inner ring runs on the shaft", "[core][bearings]")
{
    CatalogueRow r = row(GeometryClass::needle, 30000, 45000);
    r.inner_raceway_mm = 52.0;
    CHECK(ratingOf(single(Family::needle_roller_no_inner, r)).bore_mm == 52.0);
    CHECK(ratingOf(single(Family::needle_roller, r)).bore_mm == 45.0);
}

TEST_CASE("an empty choice is rated as nothing", "[core][bearings]")
{
    const BearingRating nothing = ratingOf(BearingChoice{});
    CHECK(nothing.C_N == 0.0);
    CHECK(std::isnan(equivalentLoadQuick_N(nothing, 1000, 0)));
    CHECK(std::isnan(staticLoadQuick_N(nothing, 1000, 0)));
}
