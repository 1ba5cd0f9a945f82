#include "tests/core/bearings/fixtures.h"

#include <catch2/catch.hpp>

#include <vector>

using namespace shaftwright;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("a1 has the values of the table at its nodes", "[core][bearings]")
{
    // ISO 281:2007 Table 12, from memory.
    const std::pair<double, double> rows[] = {{90, 1},       {95, 0.64},     {96, 0.55},     {97, 0.47},    {98, 0.37},
                                              {99, 0.25},    {99.2, 0.22},   {99.4, 0.19},   {99.6, 0.16},  {99.8, 0.12},
                                              {99.9, 0.093}, {99.92, 0.087}, {99.94, 0.080}, {99.95, 0.077}};
    for (const auto& [S, value] : rows) {
        CHECK(a1(S) == value);
        // The law between the nodes meets them within the rounding of the table.
        CHECK_THAT(a1(S - 1e-6), WithinAbs(value, S > 99.85 ? 0.0006 : 0.0052));
    }
    // Between: 0.05 + 0.95 (ln(100/92)/ln(100/90))^(2/3) = 0.861294 (ISO/TR 1281-2, from memory; by hand).
    CHECK_THAT(a1(92), WithinRel(0.05 + 0.95 * std::pow(std::log(100.0 / 92) / std::log(100.0 / 90), 2.0 / 3.0), 1e-12));
    CHECK(a1(80) > 1.0);
    CHECK(a1(30) == a1(50));
    CHECK(a1(100) == a1(99.95));
}

TEST_CASE("survival follows the three-parameter law", "[core][bearings]")
{
    // ISO/TR 1281-2 (from memory), by hand: R(L) = 0.9, R(2 L) = 0.734, R(0.5 L) = 0.966, 1 up to 0.05 L.
    CHECK_THAT(survival(1000, 1000), WithinRel(0.9, 1e-12));
    CHECK_THAT(survival(2000, 1000), WithinAbs(0.734, 5e-4));
    CHECK_THAT(survival(500, 1000), WithinAbs(0.966, 5e-4));
    CHECK(survival(50, 1000) == 1.0);
    CHECK(survival(0, 1000) == 1.0);
}

TEST_CASE("several bearings together live shorter than the shortest", "[core][bearings]")
{
    // (sum L^-w)^(-1/w) with w 10/9 and 9/8; mixed: root of the sum, by hand to five digits.
    const auto life = [](std::vector<SystemMember> members) { return systemLife(members, std::nullopt).L10_h.value(); };
    CHECK_THAT(life({{10000, false}, {10000, false}}), WithinAbs(5359, 0.5));
    CHECK_THAT(life({{10000, true}, {10000, true}}), WithinAbs(5400, 0.5));
    CHECK_THAT(life({{20000, false}, {35000, false}, {60000, false}}), WithinAbs(11598, 0.5));
    CHECK_THAT(life({{20000, true}, {35000, true}, {60000, true}}), WithinAbs(11726, 0.5));
    CHECK_THAT(life({{20000, false}, {35000, true}}), WithinAbs(13640, 0.5));
    CHECK(life({{12345, true}}) == 12345);
    const std::vector<SystemMember> balls{{1, false}, {2, false}}, rollers{{1, true}}, mixed{{1, false}, {2, true}};
    CHECK_THAT(systemLife(balls, {}).slope, WithinRel(10.0 / 9, 1e-15));
    CHECK_THAT(systemLife(rollers, {}).slope, WithinRel(9.0 / 8, 1e-15));
    CHECK(systemLife(mixed, {}).slope == 0.0);
}

TEST_CASE("the reliability of the set at the required life is the product of its bearings", "[core][bearings]")
{
    // L10 30 000 and 45 000 h, t 20 000 h: 0.920 (by hand).
    const std::vector<SystemMember> members{{30000, false}, {45000, false}};
    CHECK_THAT(systemLife(members, 20000.0).reliability_at_required.value(), WithinAbs(0.920, 5e-4));
    CHECK_FALSE(systemLife(members, std::nullopt).reliability_at_required);
    // Budynas & Nisbett, 10th ed., problem 11-4 (printed): 0.945 * 0.917 = 0.867 as a product of two reliabilities.
    CHECK_THAT(0.945 * 0.917, WithinAbs(0.867, 6e-4)); // three decimals
}

TEST_CASE("a set with an unusable member has no life", "[core][bearings]")
{
    for (const double bad : {0.0, -1.0, std::nan(""), HUGE_VAL}) {
        const std::vector<SystemMember> members{{20000, false}, {bad, true}};
        CHECK_FALSE(systemLife(members, 1000.0).L10_h);
        CHECK_FALSE(systemLife(members, 1000.0).reliability_at_required);
    }
    CHECK_FALSE(systemLife({}, 1000.0).L10_h);
}

namespace
{

// The three-parameter Weibull of Budynas & Nisbett (x0 0.02, theta - x0 4.439, b 1.483): test only, ISO 281 has its own law.
double bookRating(double F, double x, double R, double p)
{
    return F * std::pow(x / (0.02 + 4.439 * std::pow(std::log(1 / R), 1 / 1.483)), 1 / p);
}

double bookReliability(double F, double C, double x, double p)
{
    return std::exp(-std::pow((x * std::pow(F / C, p) - 0.02) / 4.439, 1.483));
}

} // namespace

TEST_CASE("the life exponents reproduce printed solutions with the book's Weibull parameters", "[core][bearings]")
{
    // Budynas & Nisbett, Shigley's Mechanical Engineering Design, instructor's solutions (printed), 8th ed. 11-1, 11-2, 11-3,
    // 10th ed. 11-1, 11-2 to 11-4, 11-5, 11-6. Exponents 3 and 10/3 come from the rating of a ball and a roller bearing.
    const double ball = fixtures::deepGroove(1, 1, 14).life_exponent, roller = fixtures::tapered(1, 1, 14).life_exponent;
    CHECK_THAT(bookRating(2.278, 540, 0.90, ball), WithinAbs(18.59, 0.005));
    CHECK_THAT(bookReliability(2.278, 19.5, 540, ball), WithinAbs(0.919, 0.0006));
    CHECK_THAT(bookRating(854, 1440, 0.90, ball), WithinAbs(9665, 0.5));
    CHECK_THAT(bookReliability(3.80, 46.2, 1440, ball), WithinAbs(0.927, 0.0006));
    // The print takes C = F x^(1/p) here, without the Weibull parameters.
    CHECK_THAT(10.279 * std::pow(1440.0, 1 / roller), WithinAbs(91.1, 0.05));
    CHECK_THAT(bookReliability(10.279, 102, 1440, roller), WithinAbs(0.942, 0.0006));
    CHECK_THAT(bookRating(3.0, 525, 0.90, ball), WithinAbs(24.3, 0.05));
    CHECK_THAT(bookReliability(3.0, 25.5, 525, ball), WithinAbs(0.920, 0.0006));
    CHECK_THAT(bookReliability(4.52, 55.9, 1248, ball), WithinAbs(0.945, 0.0006));
    CHECK_THAT(bookReliability(13.92, 123, 1248, roller), WithinAbs(0.917, 0.0006));
    CHECK_THAT(bookRating(1015, 1248, 0.95, ball), WithinAbs(12822, 0.5));
    CHECK_THAT(bookRating(13.92, 1248, 0.95, roller), WithinAbs(136.5, 0.06)); // four digits
    CHECK_THAT(bookRating(20, 456, 0.95, roller), WithinAbs(145, 0.1));        // three digits
    // Course solution (re-solved): life at 99 %, C 19.5, P 5.34 kN, 400 rpm: 445.53 h.
    const double L10 = ratingLife_Mrev(19.5, 5.34, ball);
    CHECK_THAT(hours(L10 * (0.02 + 4.439 * std::pow(std::log(1 / 0.99), 1 / 1.483)), 400), WithinAbs(445.53, 0.05));
}
