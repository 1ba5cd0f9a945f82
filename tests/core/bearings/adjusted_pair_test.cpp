#include "tests/core/bearings/fixtures.h"

#include <catch2/catch.hpp>

using namespace shaftwright;
using namespace shaftwright::fixtures;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace
{

struct Chain {
    double S_L, S_R, Fa_L, Fa_R, P_L, P_R, L_L, L_R;
};

/// Left bearing carries plus in O, minus in X.
Chain taperedChain(bool O, double K)
{
    const BearingRating bearing = tapered(52000, 60000, 14);
    const double Fr_L = 4000, Fr_R = 7000;
    Chain c{};
    c.S_L = inducedLoad(bearing, Fr_L, InducedLoadRule::e_times_Fr).S_N;
    c.S_R = inducedLoad(bearing, Fr_R, InducedLoadRule::e_times_Fr).S_N;
    const PairAxialLoads pair = O ? adjustedPair(c.S_L, c.S_R, K) : adjustedPair(c.S_R, c.S_L, K);
    c.Fa_L = O ? pair.plus_N : pair.minus_N;
    c.Fa_R = O ? pair.minus_N : pair.plus_N;
    c.P_L = *equivalentLoad(bearing, Fr_L, c.Fa_L).P_N;
    c.P_R = *equivalentLoad(bearing, Fr_R, c.Fa_R).P_N;
    c.L_L = hours(ratingLife_Mrev(52000, c.P_L, 10.0 / 3.0), 960);
    c.L_R = hours(ratingLife_Mrev(52000, c.P_R, 10.0 / 3.0), 960);
    return c;
}

} // namespace

TEST_CASE("the tapered pair is followed step by step through every sense of the axial force", "[core][bearings]")
{
    // Own chain, no published value; evaluated by hand: alpha 14 deg, Fr 4 and 7 kN, C 52 kN, 960 rpm,
    // S = 1.25 tan 14 deg Fr. Digits as evaluated.
    SECTION("O, K = +2500")
    {
        const Chain c = taperedChain(true, 2500);
        CHECK_THAT(c.S_L, WithinAbs(1246.64, 0.005));
        CHECK_THAT(c.S_R, WithinAbs(2181.62, 0.005));
        CHECK_THAT(c.Fa_L, WithinAbs(4681.62, 0.005));
        CHECK_THAT(c.Fa_R, WithinAbs(2181.62, 0.005));
        CHECK_THAT(c.P_L, WithinAbs(9110.8, 0.05));
        CHECK_THAT(c.P_R, WithinAbs(7000.0, 0.05));
        CHECK_THAT(c.L_L, WithinAbs(5769, 0.5));
        CHECK_THAT(c.L_R, WithinAbs(13887, 0.5));
    }
    SECTION("O, K = -2500")
    {
        const Chain c = taperedChain(true, -2500);
        CHECK_THAT(c.Fa_L, WithinAbs(1246.64, 0.005));
        CHECK_THAT(c.Fa_R, WithinAbs(3746.64, 0.005));
        CHECK_THAT(c.P_L, WithinAbs(4000.0, 0.05));
        CHECK_THAT(c.P_R, WithinAbs(8810.8, 0.05));
        CHECK_THAT(c.L_L, WithinAbs(89685, 0.5));
        CHECK_THAT(c.L_R, WithinAbs(6450, 0.5));
    }
    SECTION("O, K = 0")
    {
        const Chain c = taperedChain(true, 0);
        CHECK_THAT(c.Fa_L, WithinAbs(2181.62, 0.005));
        CHECK_THAT(c.Fa_R, WithinAbs(2181.62, 0.005));
        CHECK_THAT(c.P_L, WithinAbs(5100.0, 0.05));
        CHECK_THAT(c.P_R, WithinAbs(7000.0, 0.05));
        CHECK_THAT(c.L_L, WithinAbs(39904, 0.5));
    }
    SECTION("X with +2500 equals O with -2500")
    {
        const Chain X = taperedChain(false, 2500), O = taperedChain(true, -2500);
        CHECK(X.Fa_L == O.Fa_L);
        CHECK(X.Fa_R == O.Fa_R);
    }
}

TEST_CASE("angular contact 40 deg in O uses e Fr as induced load", "[core][bearings]")
{
    // Own chain: Fr 3, 2 kN, S = 1.14 Fr = 3420, 2280 N (common practice).
    const BearingRating bearing = angular(30000, 20000, 40);
    const double S_L = inducedLoad(bearing, 3000, InducedLoadRule::e_times_Fr).S_N;
    const double S_R = inducedLoad(bearing, 2000, InducedLoadRule::e_times_Fr).S_N;
    CHECK_THAT(S_L, WithinRel(3420.0, 1e-12));
    CHECK_THAT(S_R, WithinRel(2280.0, 1e-12));
    CHECK_THAT(adjustedPair(S_L, S_R, 1500).plus_N, WithinRel(3780.0, 1e-12));
    CHECK_THAT(adjustedPair(S_L, S_R, 1500).minus_N, WithinRel(2280.0, 1e-12));
    CHECK_THAT(adjustedPair(S_L, S_R, -1500).plus_N, WithinRel(3420.0, 1e-12));
    CHECK_THAT(adjustedPair(S_L, S_R, -1500).minus_N, WithinRel(4920.0, 1e-12));
    CHECK_THAT(adjustedPair(S_L, S_R, 0).plus_N, WithinRel(3420.0, 1e-12));
    CHECK_THAT(adjustedPair(S_L, S_R, 0).minus_N, WithinRel(3420.0, 1e-12));
    CHECK(adjustedPair(S_L, S_R, 0).plus_at_own);
    CHECK_FALSE(adjustedPair(S_L, S_R, 0).minus_at_own);
    // Roloff/Matek (from memory): 0.5 Fr/Y = 0.5/0.57 Fr.
    CHECK_THAT(inducedLoad(bearing, 3000, InducedLoadRule::half_Fr_over_Y).S_N, WithinRel(1500.0 / 0.57, 1e-12));
}

TEST_CASE("below 20 deg the induced load solves its own equation", "[core][bearings]")
{
    // alpha 15 deg, f0 14.5, C0 20 kN; roots of S = e(f0 S/C0) Fr found by hand iteration: 391.9, 1358.5, 3008.7 N.
    const BearingRating bearing = angular(30000, 20000, 15, 14.5);
    const std::pair<double, double> rows[] = {{1000, 391.9}, {3000, 1358.5}, {6000, 3008.7}};
    for (const auto& [Fr, S] : rows) {
        const InducedLoad induced = inducedLoad(bearing, Fr, InducedLoadRule::e_times_Fr);
        CHECK_THAT(induced.S_N, WithinAbs(S, 0.05));
        // The step that is shown closes with its own numbers.
        const DerivationStep* shown = step(induced.derivation, "induced_load");
        REQUIRE(shown);
        CHECK_THAT(input(*shown, "e") * input(*shown, "Fr"), WithinRel(induced.S_N, 1e-11)); // end of the iteration
    }
    // A tandem set of two shares S: the same e at twice the load.
    CatalogueRow r = row(GeometryClass::angular_contact_ball, 30000, 20000, 15);
    r.f0 = 14.5;
    const BearingRating set = ratingOf(setOf(Family::angular_contact_set_tandem, SetArrangement::tandem, r));
    CHECK_THAT(inducedLoad(set, 6000, InducedLoadRule::e_times_Fr).S_N, WithinAbs(2 * 1358.5, 0.1));
}

TEST_CASE("bearings that push nothing out have no induced load", "[core][bearings]")
{
    CHECK(inducedLoad(cylindrical(Family::cylindrical_roller_NJ, 3e4, 3e4), 1000, InducedLoadRule::e_times_Fr).S_N == 0.0);
    CHECK(inducedLoad(ratingOf(single(Family::spherical_roller, row(GeometryClass::spherical_roller, 9e4, 9e4, 10))), 1000,
                      InducedLoadRule::e_times_Fr)
              .S_N == 0.0);
    CHECK(inducedLoad(angular(30000, 20000, 40), std::nan(""), InducedLoadRule::e_times_Fr).S_N == 0.0);
    CHECK(inducedLoad(angular(30000, 0, 15), 1000, InducedLoadRule::e_times_Fr).S_N == 0.0);
    CHECK(inducedLoad(angular(30000, 20000, 60), 1000, InducedLoadRule::e_times_Fr).S_N == 0.0);
    // Deep groove with the clearance taken out does: between e at the ends of its table.
    const double S = inducedLoad(deepGroove(30000, 20000, 14), 5000, InducedLoadRule::e_times_Fr).S_N;
    CHECK(S > 0.19 * 5000);
    CHECK(S < 0.44 * 5000);
}

TEST_CASE("preload shares an external force until the relieved bearing lifts", "[core][bearings]")
{
    // F0 ((1+z)^n - (1-z)^n) = K solved by hand to two digits; n 1.5 ball, 10/9 roller; lift-off 2^n F0 = 2.83, 2.16 F0.
    struct Row {
        double K, ball, ballRelieved, roller, rollerRelieved;
    };
    for (const Row& r : {Row{0.5, 1.26, 0.76, 1.25, 0.75}, Row{1, 1.54, 0.54, 1.51, 0.51}, Row{1.5, 1.85, 0.35, 1.78, 0.28},
                         Row{2, 2.18, 0.18, 2.06, 0.06}, Row{2.5, 2.55, 0.05, 2.50, 0.0}}) {
        const PreloadedLoads ball = preloadedPair(1000, 1000 * r.K, 1.5);
        CHECK_THAT(ball.loaded_N, WithinAbs(1000 * r.ball, 6.0)); // two digits
        CHECK_THAT(ball.relieved_N, WithinAbs(1000 * r.ballRelieved, 6.0));
        CHECK_FALSE(ball.lifted);
        const PreloadedLoads roller = preloadedPair(1000, 1000 * r.K, 10.0 / 9.0);
        CHECK_THAT(roller.loaded_N, WithinAbs(1000 * r.roller, 6.0));
        CHECK_THAT(roller.relieved_N, WithinAbs(1000 * r.rollerRelieved, 6.0));
    }
    const PreloadedLoads lifted = preloadedPair(1000, 3000, 1.5);
    CHECK(lifted.lifted);
    CHECK(lifted.loaded_N == 3000);
    CHECK(lifted.relieved_N == 0.0);
    CHECK_THAT(lifted.lift_off_N, WithinAbs(2828.4, 0.05));
    CHECK_FALSE(preloadedPair(0, 0, 1.5).lifted);
    CHECK_THAT(preloadedPair(1000, 0, 1.5).loaded_N, WithinRel(1000.0, 1e-12));
}

TEST_CASE("a spring keeps its bearing loaded until the external force overcomes it", "[core][bearings]")
{
    // Equilibrium: fixed - sprung = K as long as the spring holds.
    CHECK(sprungPair(500, 2000).sprung_N == 500);
    CHECK(sprungPair(500, 2000).fixed_N == 2500);
    CHECK(sprungPair(500, -300).sprung_N == 500);
    CHECK(sprungPair(500, -300).fixed_N == 200);
    CHECK_FALSE(sprungPair(500, -500).shaft_moves);
    const SprungLoads beyond = sprungPair(500, -700);
    CHECK(beyond.shaft_moves);
    CHECK(beyond.sprung_N == 700);
    CHECK(beyond.fixed_N == 0);
}
