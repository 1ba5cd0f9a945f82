#include "core/bearings/factor_tables.h"
#include "tests/core/bearings/fixtures.h"

#include <catch2/catch.hpp>

#include <numbers>

using namespace shaftwright;
using namespace shaftwright::fixtures;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("a deep groove bearing under combined load meets the printed exercise", "[core][bearings]")
{
    // Exercise after Roloff/Matek, Maschinenelemente, rolling bearings (printed: e = 0.29, Y = 1.5, P = 5.8 kN): Fr 5, Fa 2 kN,
    // C0 20.4 kN, f0 12.3. The print has two digits; the interpolation by hand is
    // rel = 12.3 * 2000/20400 = 1.20588, e = 0.28 + 0.02 (rel - 1.03)/0.35, Y = 1.55 - 0.10 (rel - 1.03)/0.35.
    const EquivalentLoad load = equivalentLoad(deepGroove(31000, 20400, 12.3), 5000, 2000);
    REQUIRE(load.P_N);
    CHECK_THAT(load.relative_axial_load, WithinRel(1.2058823529411764, 1e-12));
    CHECK_THAT(load.e, WithinAbs(0.29, 0.005));
    CHECK_THAT(load.Y, WithinAbs(1.5, 0.005));
    CHECK_THAT(*load.P_N, WithinAbs(5800.0, 50.0));
    CHECK_THAT(load.e, WithinRel(0.2900504, 1e-6));
    CHECK_THAT(load.Y, WithinRel(1.4997479, 1e-7));
    CHECK_THAT(*load.P_N, WithinRel(5799.4958, 1e-8));
    CHECK(load.axial_branch);
    CHECK(load.findings.empty());
    // The life of the same exercise: C 31 kN, P 5.8 kN, 250 rpm, printed 10 179 h.
    CHECK_THAT(hours(ratingLife_Mrev(31000, 5800, 3), 250), WithinAbs(10179.0, 0.5));
}

TEST_CASE("re-solved textbook loads with the older factor for a turning outer ring are reproduced", "[core][bearings]")
{
    // V = 1.2 is not in ISO 281:2007; the examples multiply Fr by it before.
    SECTION("Wentzell, Machine Design (2004), Example 20.4, open companion: Fa/C0 = 300/2320, Y 1.40 after rounding")
    {
        const EquivalentLoad load = equivalentLoad(deepGroove(5050, 2320, 12.3), 100, 300);
        CHECK_THAT(load.Y, WithinRel(1.40, 0.006)); // the book rounds Y to two digits
        // rel = 12.3 * 300/2320 = 1.590517; Y = 1.45 - 0.14 * 0.210517/0.69.
        CHECK_THAT(load.Y, WithinRel(1.4072864, 1e-7));
    }
    SECTION("course solution to Budynas & Nisbett ch. 11: Fr 7 * 1.2, Fa 3, C0 34 kN, 9.294 kN")
    {
        CHECK_THAT(*equivalentLoad(deepGroove(1e5, 34000, 12.3), 8400, 3000).P_N,
                   WithinRel(9294.0, 0.0015)); // its Y has 3 digits
    }
    SECTION("course solution, other problem: Fr 5, Fa 2, C0 10 kN, 5.34 kN")
    {
        CHECK_THAT(*equivalentLoad(deepGroove(19500, 10000, 12.3), 5000, 2000).P_N,
                   WithinRel(5340.0, 0.0021)); // its Y has 3 digits
    }
}

TEST_CASE("deep groove factors hold their end values and say so beyond the table", "[core][bearings]")
{
    const BearingRating bearing = deepGroove(35000, 10000, 14.0);
    const EquivalentLoad low = equivalentLoad(bearing, 1000, 10); // rel 0.014
    CHECK(low.e == 0.19);
    const EquivalentLoad high = equivalentLoad(bearing, 1000, 5000); // rel 7
    CHECK(high.e == 0.44);
    CHECK(high.Y == 1.00);
    REQUIRE(find(high.findings, "axial-beyond-table"));
    CHECK_THAT(number(*find(high.findings, "axial-beyond-table"), "relative_axial_load"), WithinRel(7.0, 1e-12));
    CHECK(find(high.findings, "axial-beyond-table")->severity == Severity::caution);
    CHECK_FALSE(find(equivalentLoad(bearing, 1000, 4900).findings, "axial-beyond-table")); // rel 6.86
}

TEST_CASE("every angular contact column is met at its nodes", "[core][bearings]")
{
    // ISO 281:2007 Table 3, from memory: last node of 15 deg and the constant columns.
    struct Row {
        double alpha, X, Y, e;
    };
    for (const Row& r : {Row{20, 0.43, 1.00, 0.57}, Row{25, 0.41, 0.87, 0.68}, Row{30, 0.39, 0.76, 0.80},
                         Row{35, 0.37, 0.66, 0.95}, Row{40, 0.35, 0.57, 1.14}, Row{45, 0.33, 0.50, 1.34}}) {
        const EquivalentLoad load = equivalentLoad(angular(30000, 20000, r.alpha), 1000, 2000);
        CHECK_THAT(load.X, WithinRel(r.X, 1e-12));
        CHECK_THAT(load.Y, WithinRel(r.Y, 1e-12));
        CHECK_THAT(load.e, WithinRel(r.e, 1e-12));
        CHECK_THAT(*load.P_N, WithinRel(r.X * 1000 + r.Y * 2000, 1e-12));
    }
    // 15 deg, rel 0.714 exactly: e 0.43, X 0.44, Y 1.30 (f0 14.28, C0 20 kN, Fa 1 kN).
    const EquivalentLoad fifteen = equivalentLoad(angular(30000, 20000, 15, 14.28), 1000, 1000);
    CHECK_THAT(fifteen.e, WithinRel(0.43, 1e-12));
    CHECK_THAT(*fifteen.P_N, WithinRel(0.44 * 1000 + 1.30 * 1000, 1e-12));
}

TEST_CASE("between two columns X, Y and e are linear in the contact angle", "[core][bearings]")
{
    // 32 deg: 2/5 of the way from 30 to 35. X = 0.39 - 0.4 * 0.02, Y = 0.76 - 0.4 * 0.10, e = 0.80 + 0.4 * 0.15.
    const EquivalentLoad load = equivalentLoad(angular(30000, 20000, 32), 1000, 2000);
    CHECK_THAT(load.X, WithinRel(0.382, 1e-9)); // the angle returns from radians with a rounding error
    CHECK_THAT(load.Y, WithinRel(0.720, 1e-9));
    CHECK_THAT(load.e, WithinRel(0.860, 1e-9));
}

TEST_CASE("the tables agree with the closed forms behind them", "[core][bearings]")
{
    // Two rows = 1.625 times one row for X2 and Y2 (0.65/0.40), e = (1 - X2)/Y2, grids = deep groove grid / cos alpha.
    const auto columns = factors::angularColumns();
    REQUIRE(columns.size() == 9);
    for (const auto& column : columns) {
        for (std::size_t i = 0; i < factors::relNodes; ++i) {
            CHECK_THAT(column.Y2_double[i], WithinAbs(1.625 * column.Y2_single[i], 0.012)); // both rounded to 0.01
            if (column.alpha_deg > 5.0)
                CHECK_THAT(column.e[i], WithinAbs((1.0 - column.X2_single) / column.Y2_single[i], 0.0062)); // rounding of e, Y
            if (column.depends_on_load)
                CHECK_THAT(column.rel[i] * std::cos(column.alpha_deg * std::numbers::pi / 180.0),
                           WithinRel(factors::deepGrooveRel()[i], 0.006)); // three digits
        }
        if (column.alpha_deg > 5.0)
            CHECK_THAT(column.X2_double, WithinAbs(1.625 * column.X2_single, 0.009)); // rounded to 0.01
    }
    for (std::size_t i = 0; i < factors::relNodes; ++i)
        CHECK_THAT(factors::deepGrooveE()[i], WithinAbs(0.44 / factors::deepGrooveY()[i], 0.0055)); // rounding of e, Y
}

TEST_CASE("tapered rollers follow the contact angle", "[core][bearings]")
{
    // ISO 281:2007: Y = 0.4 cot 14 deg = 1.6043, e = 1.5 tan 14 deg = 0.3740; P of the worked pair below.
    const EquivalentLoad load = equivalentLoad(tapered(52000, 60000, 14), 4000, 4681.62);
    CHECK_THAT(load.Y, WithinAbs(1.6043, 5e-5));
    CHECK_THAT(load.e, WithinAbs(0.3740, 5e-5));
    CHECK_THAT(*load.P_N, WithinAbs(9110.8, 0.05));
    // A stated Y settles the angle, and with it e = 0.6/Y.
    CatalogueRow stated = row(GeometryClass::tapered_roller, 52000, 60000, 12);
    stated.Y = 1.5;
    const EquivalentLoad own = equivalentLoad(ratingOf(single(Family::tapered_roller, stated)), 1000, 1000);
    CHECK(own.Y == 1.5);
    CHECK_THAT(own.e, WithinRel(0.4, 1e-12));
}

TEST_CASE("two rows, sets and four-point bearings use the two-row factors", "[core][bearings]")
{
    const CatalogueRow forty = row(GeometryClass::angular_contact_ball, 30000, 20000, 40);
    const BearingRating O = ratingOf(setOf(Family::angular_contact_set_O, SetArrangement::O, forty));
    // 40 deg double: below e Fr + 0.55 Fa, above 0.57 Fr + 0.93 Fa, e 1.14.
    CHECK_THAT(*equivalentLoad(O, 1000, 500).P_N, WithinRel(1275.0, 1e-12));
    CHECK_THAT(*equivalentLoad(O, 1000, 2000).P_N, WithinRel(2430.0, 1e-12));
    CHECK_FALSE(equivalentLoad(O, 1000, 500).axial_branch);

    // Four-point 35 deg: Fr + 0.66 Fa, 0.60 Fr + 1.07 Fa; C and C0 stay those of one row.
    const BearingRating four =
        ratingOf(single(Family::four_point_contact_ball, row(GeometryClass::four_point_contact_ball, 40000, 35000, 35)));
    CHECK(four.C_N == 40000);
    CHECK_THAT(*equivalentLoad(four, 1000, 2000).P_N, WithinRel(2740.0, 1e-12));
    CHECK_THAT(*equivalentLoad(four, 1000, 100).P_N, WithinRel(1066.0, 1e-12));

    // Spherical roller, alpha 10 deg: below Fr + 0.45 cot 10 Fa (cot 10 deg = 5.6712818), above 0.67 (Fr + cot 10 Fa).
    const BearingRating spherical =
        ratingOf(single(Family::spherical_roller, row(GeometryClass::spherical_roller, 90000, 95000, 10)));
    CHECK_THAT(*equivalentLoad(spherical, 1000, 100).P_N, WithinRel(1000 + 0.45 * 5.67128182 * 100, 1e-9)); // cot to 9 digits
    CHECK_THAT(*equivalentLoad(spherical, 1000, 1000).P_N, WithinRel(670 + 0.67 * 5671.28182, 1e-9));

    // Self-aligning ball, alpha 10 deg: 0.65 Fr + 0.65 cot 10 Fa, e = 1.5 tan 10 = 0.26449047.
    const BearingRating aligning =
        ratingOf(single(Family::self_aligning_ball, row(GeometryClass::self_aligning_ball, 20000, 8000, 10)));
    CHECK_THAT(*equivalentLoad(aligning, 1000, 1000).P_N, WithinRel(650 + 0.65 * 5671.28182, 1e-9));
    CHECK_THAT(equivalentLoad(aligning, 1000, 1000).e, WithinRel(0.26449047, 1e-8));
}

TEST_CASE("a tandem set shares the axial load before the table is entered", "[core][bearings]")
{
    CatalogueRow fifteen = row(GeometryClass::angular_contact_ball, 30000, 20000, 15);
    fifteen.f0 = 14.28;
    BearingChoice choice = setOf(Family::angular_contact_set_tandem, SetArrangement::tandem, fifteen);
    const BearingRating set = ratingOf(choice);
    // 2 kN on two bearings: rel of one bearing 14.28 * 1000/20000 = 0.714, single row Y 1.30 with the total loads.
    const EquivalentLoad load = equivalentLoad(set, 1000, 2000);
    CHECK_THAT(load.relative_axial_load, WithinRel(0.714, 1e-12));
    CHECK_THAT(*load.P_N, WithinRel(0.44 * 1000 + 1.30 * 2000, 1e-12));
}

TEST_CASE("two deep groove rows share the axial load", "[core][bearings]")
{
    CatalogueRow r = row(GeometryClass::deep_groove_ball, 30000, 20000);
    r.f0 = 13.78;
    const BearingRating pair = ratingOf(setOf(Family::deep_groove_ball, SetArrangement::none, r));
    // rel = 13.78 * 2000/40000 = 0.689: Y 1.71.
    CHECK_THAT(*equivalentLoad(pair, 1000, 2000).P_N, WithinRel(560 + 1.71 * 2000, 1e-12));
}

TEST_CASE("thrust bearings follow the closed forms of the tables", "[core][bearings]")
{
    // ISO 281:2007 Table 5, two directions, rounded in the table to 0.01 (from memory): alpha, X2, X1, Y1, e.
    struct Row {
        double alpha, X2, X1, Y1, e;
    };
    for (const Row& r : {Row{50, 0.73, 1.37, 0.57, 1.49}, Row{55, 0.81, 1.60, 0.56, 1.79}, Row{60, 0.92, 1.90, 0.55, 2.17},
                         Row{65, 1.06, 2.30, 0.54, 2.68}, Row{70, 1.28, 2.90, 0.53, 3.43}, Row{75, 1.66, 3.89, 0.52, 4.67},
                         Row{80, 2.43, 5.86, 0.52, 7.09}, Row{85, 4.80, 11.75, 0.51, 14.29}}) {
        const factors::LoadFactors f = factors::thrustBall(r.alpha * std::numbers::pi / 180.0);
        CHECK_THAT(f.X2, WithinAbs(r.X2, 0.0051));
        CHECK_THAT(f.X1, WithinAbs(r.X1, 0.0051));
        CHECK_THAT(f.Y1, WithinAbs(r.Y1, 0.0051));
        CHECK_THAT(f.e, WithinAbs(r.e, 0.0051));
    }
    // Self-aligning roller thrust, 50 deg: P = Fa + 1.1917536 Fr, only for Fr <= Fa/(1.5 tan 50 deg) = 0.559 Fa.
    const BearingRating spherical = thrust(Family::spherical_roller_thrust, 300000, 800000, 50);
    CHECK_THAT(*equivalentLoad(spherical, 1000, 3000).P_N, WithinRel(3000 + 1191.7536, 1e-8)); // tan 50 deg to 8 digits
    CHECK(equivalentLoad(spherical, 1000, 1000 / 0.5590).P_N);
    const EquivalentLoad beyond = equivalentLoad(spherical, 1000, 1000 / 0.5600);
    CHECK_FALSE(beyond.P_N);
    REQUIRE(find(beyond.findings, "radial-on-thrust"));
    CHECK(hasStop(beyond.findings));
    CHECK_THAT(number(*find(beyond.findings, "radial-on-thrust"), "Fr_limit_N"),
               WithinRel(998.928, 1e-6)); // 1000/0.56 cot 50 deg/1.5

    // Angular contact thrust, 60 deg, two directions: both branches exist.
    const BearingRating sixty = thrust(Family::angular_contact_thrust_ball, 60000, 90000, 60);
    CHECK_THAT(*equivalentLoad(sixty, 1000, 1000).P_N, WithinRel(1.90 * 1000 + 0.55 * 1000, 0.004)); // table rounded to 0.01
    CHECK_THAT(*equivalentLoad(sixty, 1000, 5000).P_N, WithinRel(0.92 * 1000 + 5000, 0.002));
}

TEST_CASE("loads that a family cannot carry leave no number and a stop", "[core][bearings]")
{
    SECTION("axial force on loose rings")
    {
        for (const Family family : {Family::cylindrical_roller_NU, Family::needle_roller, Family::needle_roller_no_inner,
                                    Family::needle_drawn_cup, Family::toroidal_roller}) {
            const BearingRating bearing = cylindrical(family, 60000, 60000);
            CHECK(*equivalentLoad(bearing, 1000, 0).P_N == 1000);
            CHECK(equivalentLoad(bearing, 1000, 19).P_N);
            const EquivalentLoad load = equivalentLoad(bearing, 1000, 21);
            CHECK_FALSE(load.P_N);
            REQUIRE(find(load.findings, "axial-not-carried"));
            CHECK_THAT(number(*find(load.findings, "axial-not-carried"), "Fa_limit_N"), WithinRel(20.0, 1e-12));
            CHECK(std::isnan(equivalentLoadQuick_N(bearing, 1000, 21)));
        }
    }
    SECTION("radial force on a flat thrust bearing")
    {
        for (const Family family :
             {Family::thrust_ball, Family::thrust_ball_double, Family::cylindrical_roller_thrust, Family::needle_roller_thrust}) {
            const BearingRating bearing = thrust(family, 40000, 80000, 90);
            CHECK(*equivalentLoad(bearing, 40, 1000).P_N == 1000);
            const EquivalentLoad load = equivalentLoad(bearing, 51, 1000);
            CHECK_FALSE(load.P_N);
            CHECK(find(load.findings, "radial-on-thrust"));
            CHECK(std::isnan(equivalentLoadQuick_N(bearing, 51, 1000)));
        }
    }
    SECTION("a family without a rating by these standards")
    {
        const EquivalentLoad load = equivalentLoad(ratingOf(single(Family::plain_bronze, CatalogueRow{})), 1000, 0);
        CHECK_FALSE(load.P_N);
        REQUIRE(find(load.findings, "not-assessed"));
        CHECK(std::get<std::string>(*find(load.findings, "not-assessed")->values.find("family")) == "plain_bronze");
    }
    SECTION("contact angles outside the table")
    {
        for (const double alpha : {2.0, 50.0, 120.0}) {
            const EquivalentLoad load = equivalentLoad(angular(30000, 20000, alpha), 1000, 1000);
            CHECK_FALSE(load.P_N);
            REQUIRE(find(load.findings, "value-invalid"));
            CHECK_THAT(number(*find(load.findings, "value-invalid"), "contact_angle_deg"), WithinRel(alpha, 1e-12));
            CHECK(std::isnan(equivalentLoadQuick_N(angular(30000, 20000, alpha), 1000, 1000)));
        }
    }
    SECTION("forces and ratings that are no numbers")
    {
        const double nan = std::nan(""), inf = HUGE_VAL;
        for (const auto& [Fr, Fa] : {std::pair{nan, 0.0}, std::pair{0.0, nan}, std::pair{inf, 1.0}, std::pair{1.0, -inf}}) {
            const EquivalentLoad load = equivalentLoad(deepGroove(30000, 20000, 14), Fr, Fa);
            CHECK_FALSE(load.P_N);
            REQUIRE(find(load.findings, "value-invalid"));
            CHECK(std::get<std::string>(*find(load.findings, "value-invalid")->values.find("name")) ==
                  (std::isfinite(Fr) ? "Fa_N" : "Fr_N"));
        }
        for (const double bad : {0.0, -1.0, nan, inf}) {
            CHECK(find(equivalentLoad(deepGroove(bad, 20000, 14), 1000, 100).findings, "value-invalid"));
            CHECK(find(equivalentLoad(deepGroove(30000, bad, 14), 1000, 100).findings, "value-invalid"));
        }
        const EquivalentLoad empty = equivalentLoad(ratingOf(BearingChoice{}), 1000, 100);
        CHECK_FALSE(empty.P_N);
        CHECK(hasStop(empty.findings));
    }
}

TEST_CASE("without load P is zero, not missing", "[core][bearings]")
{
    CHECK(*equivalentLoad(deepGroove(30000, 20000, 14), 0, 0).P_N == 0.0);
    CHECK(*equivalentLoad(cylindrical(Family::cylindrical_roller_NU, 30000, 20000), 0, 0).P_N == 0.0);
    CHECK(*equivalentLoad(thrust(Family::thrust_ball, 30000, 20000, 90), 0, 0).P_N == 0.0);
}

TEST_CASE("factors stated by a row go before the table", "[core][bearings]")
{
    CatalogueRow r = row(GeometryClass::deep_groove_ball, 30000, 20000);
    r.e = 0.3;
    r.X = 0.5;
    r.Y = 1.7;
    const EquivalentLoad load = equivalentLoad(ratingOf(single(Family::deep_groove_ball, r)), 1000, 1000);
    CHECK_THAT(*load.P_N, WithinRel(2200.0, 1e-12));
    CHECK(load.findings.empty()); // f0 is not asked for
    CHECK(load.e == 0.3);
}

TEST_CASE("a missing f0 is taken from the inside, else assumed and said", "[core][bearings]")
{
    CatalogueRow r = row(GeometryClass::deep_groove_ball, 30000, 20000);
    CHECK(find(equivalentLoad(ratingOf(single(Family::deep_groove_ball, r)), 1000, 1000).findings, "default-used"));
    InternalGeometry inside;
    inside.element_diameter_mm = 12.0;
    inside.elements_per_row = 10;
    inside.pitch_diameter_mm = 65.0;
    r.geometry = inside;
    // ISO 76: f0 = C0/(i Z Dw^2 cos alpha) = 20000/1440.
    const BearingRating rating = ratingOf(single(Family::deep_groove_ball, r));
    CHECK_THAT(rating.f0.value(), WithinRel(20000.0 / 1440.0, 1e-12));
    CHECK(equivalentLoad(rating, 1000, 1000).findings.empty());
}

TEST_CASE("composites give each of their bearings its own force", "[core][bearings]")
{
    BearingChoice choice;
    choice.family = Family::composite_NU_four_point;
    choice.rows.push_back({row(GeometryClass::four_point_contact_ball, 40000, 35000, 35), std::nullopt});
    choice.rows.push_back({row(GeometryClass::cylindrical_roller, 64000, 60000), std::nullopt});
    const BearingRating rating = ratingOf(choice);
    CHECK(rating.C_N == 64000); // the radial bearing leads whatever the order of the rows
    CHECK(rating.roller);
    // Radial alone: the four-point bearing is idle, P is that of the cylindrical one.
    CHECK_THAT(*equivalentLoad(rating, 5000, 0).P_N, WithinRel(5000.0, 1e-12));
    // Both: L1 = (64/5)^(10/3) = 4898.2, P2 = 1.07 * 3000, L2 = (40/3.21)^3 = 1934.93,
    // joint (L1^-w + L2^-w)^(-1/w), w = 10/9.
    const double L1 = std::pow(64.0 / 5.0, 10.0 / 3.0), L2 = std::pow(40.0 / 3.21, 3.0), w = 10.0 / 9.0;
    const double joint = std::pow(std::pow(L1, -w) + std::pow(L2, -w), -1.0 / w);
    const EquivalentLoad load = equivalentLoad(rating, 5000, 3000);
    CHECK_THAT(ratingLife_Mrev(rating.C_N, *load.P_N, rating.life_exponent), WithinRel(joint, 1e-12));
    CHECK_THAT(equivalentLoadQuick_N(rating, 5000, 3000), WithinRel(*load.P_N, 1e-14));
    REQUIRE(step(load.derivation, "equivalent_load_joint"));
    CHECK_THAT(input(*step(load.derivation, "equivalent_load_joint"), "P2"), WithinRel(3210.0, 1e-12));

    BearingChoice three;
    three.family = Family::composite_tandem_opposed;
    const CatalogueRow forty = row(GeometryClass::angular_contact_ball, 30000, 20000, 40);
    three.rows = {{forty, Carries::plus}, {forty, Carries::minus}, {forty, Carries::plus}};
    const BearingRating opposed = ratingOf(three);
    CHECK_THAT(opposed.C_N, WithinRel(30000 * std::pow(2.0, 0.7), 1e-12));
    // Main direction: tandem, 0.35 Fr + 0.57 Fa. Against it one bearing: life by C of one.
    CHECK_THAT(*equivalentLoad(opposed, 1000, 4000, Carries::plus).P_N, WithinRel(2630.0, 1e-12));
    const double against = *equivalentLoad(opposed, 1000, 4000, Carries::minus).P_N;
    CHECK_THAT(ratingLife_Mrev(opposed.C_N, against, 3), WithinRel(std::pow(30000.0 / 2630.0, 3), 1e-12));
    CHECK_THAT(*equivalentLoad(opposed, 1000, 4000).P_N, WithinRel(2630.0, 1e-12));
}

TEST_CASE("the steps of a load repeat its number from the numbers beside them", "[core][bearings]")
{
    for (const double alpha : {15.0, 17.5, 40.0}) {
        const EquivalentLoad load = equivalentLoad(angular(30000, 20000, alpha), 1500, 2500);
        const DerivationStep* last = step(load.derivation, "equivalent_load");
        REQUIRE(last);
        CHECK_THAT(input(*last, "X") * input(*last, "Fr") + input(*last, "Y") * input(*last, "Fa"), WithinRel(*load.P_N, 1e-14));
        const DerivationStep* Y = step(load.derivation, "axial_factor");
        REQUIRE(Y);
        CHECK(Y->result == load.Y);
        if (alpha == 15.0)
            CHECK_THAT(input(*Y, "Ya") + (input(*Y, "Yb") - input(*Y, "Ya")) * (input(*Y, "rel") - input(*Y, "rela")) /
                                             (input(*Y, "relb") - input(*Y, "rela")),
                       WithinRel(load.Y, 1e-14));
        if (alpha == 17.5)
            CHECK_THAT(input(*Y, "Ya") + (input(*Y, "Yb") - input(*Y, "Ya")) * (input(*Y, "alpha") - input(*Y, "alphaa")) / 5,
                       WithinRel(load.Y, 1e-12));
    }
}
