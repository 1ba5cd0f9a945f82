// Shoulders, extremes, sampling, the shear factor.

#include "core/beam/element.h"
#include "core/beam/shoulder.h"
#include "tests/core/beam/beam_cases.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace beamtest;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("a shoulder is worth as much thin shaft as the solid model says", "[core][beam]")
{
    // Axisymmetric solid model, first harmonic, pure bending, sharp shoulder, nu 0.3 (derived). The fit misses it by less
    // than 2e-4 of the thin diameter.
    const std::vector<std::pair<double, double>> solid{{1.05, 0.0077}, {1.1, 0.0220}, {1.25, 0.0703}, {1.5, 0.1331},
                                                       {1.75, 0.1719}, {2.0, 0.1960}, {2.5, 0.2215},  {3.0, 0.2334}};
    for (const auto& [ratio, delta] : solid)
        CHECK_THAT(shoulderExtraLength_mm(40, 40 * ratio, 0, 0) / 40, WithinAbs(delta, 2.5e-4)); // fit, and last digit
    CHECK(shoulderExtraLength_mm(40, 40, 0, 0) == 0.0);
    // Bored thin parts, same model.
    CHECK_THAT(shoulderExtraLength_mm(40, 60, 12, 0) / shoulderExtraLength_mm(40, 60, 0, 0), WithinRel(1.04, 1e-12));
    CHECK_THAT(shoulderExtraLength_mm(40, 80, 28, 0) / shoulderExtraLength_mm(40, 80, 0, 0), WithinRel(1.04, 1e-12));
    CHECK_THAT(shoulderExtraLength_mm(40, 50, 28, 0) / shoulderExtraLength_mm(40, 50, 0, 0), WithinRel(1.13, 1e-12));
}

TEST_CASE("a collar gives only a share of what plain theory promises", "[core][beam]")
{
    // Share of the plain stiffening left after both shoulders' extra length: (w s - 2 delta)/(w s), s = 1 - (d/D)^4.
    struct Row {
        double ratio, width, share;
    };
    const std::vector<Row> solid{{1.25, 0.1, 0.23}, {1.25, 0.25, 0.35}, {1.25, 0.5, 0.55}, {1.25, 1, 0.76}, {1.25, 2, 0.88},
                                 {1.5, 0.1, 0.23},  {1.5, 0.25, 0.31},  {1.5, 0.5, 0.45},  {1.5, 1, 0.67},  {1.5, 2, 0.84},
                                 {2, 0.1, 0.23},    {2, 0.25, 0.29},    {2, 0.5, 0.41},    {2, 1, 0.60},    {2, 2, 0.79}};
    for (const Row& row : solid) {
        INFO(row.ratio << " " << row.width);
        const double d = 40, w = row.width * d, s = 1 - std::pow(1 / row.ratio, 4);
        const double share = 1 - 2 * shoulderExtraLength_mm(d, d * row.ratio, 0, w) / (w * s);
        // The simple limit 0.3 w s meets the solid model within 0.05, plus the printed digit.
        CHECK_THAT(share, WithinAbs(row.share, 0.055));
    }
}

TEST_CASE("shoulders soften a stepped shaft and leave its reactions", "[core][beam]")
{
    // Span 300, d 40, middle 100 of diameter D, force in the middle: extra deflection by virtual work. Each shoulder stands
    // where the moment is F/2 100, so v += 2 (F/2 100)(1/2 100) delta/(E I); plus plain theory.
    for (const auto& [D, printed] : {std::pair{60.0, 10.1}, std::pair{80.0, 18.8}, std::pair{100.0, 23.0}}) {
        Model m = shaft({cylinder(0, 100, 40), cylinder(100, 200, D), cylinder(200, 300, 40)});
        m.supports = {pin("A", 0), roller("B", 300)};
        const LoadCase c = loads({force(150, 0, -1000, 0)});
        const Solution plain = solveOne(m, c);
        m.properties.shoulder_flexibility = true;
        const Solution soft = solveOne(m, c);
        const double more = 100 * (at(soft, 150).v_mm / at(plain, 150).v_mm - 1);
        CHECK_THAT(more, WithinAbs(printed, 0.15)); // printed digit, and shear in or out of the plain value
        const Ring r(40);
        const double delta = 40 * 0.2512 * std::pow(1 - std::pow(40 / D, 2.885), 1.710);
        CHECK_THAT(at(soft, 150).v_mm - at(plain, 150).v_mm, WithinRel(-2.0 * 50000 * 50 * delta / r.EI, 1e-9));
        CHECK_THAT(soft.cases[0].reactions[0].force_N[1], WithinRel(500.0, 1e-12));
        // The rotation jumps by M delta/(E I) at the shoulder, on its thin side.
        const double jump = at(soft, 100, Side::right).rz_rad - at(soft, 100, Side::left).rz_rad;
        CHECK_THAT(jump, WithinRel(500 * 100 * delta / r.EI, 1e-9));
    }
}

TEST_CASE("a shoulder in an indeterminate shaft shares by its rotation", "[core][beam]")
{
    // Clamp at 0, prop at L, step at a; force at the step. Force method with the shoulder's c = delta/(E I_thin): unit prop
    // force bends with L - x; the thin side is the right one.
    const double a = 120, L = 300, F = -5000;
    const Ring thick(60), thin(40);
    Model m = shaft({cylinder(0, a, 60), cylinder(a, L, 40)}, Shear::off);
    m.properties.shoulder_flexibility = true;
    m.supports = {clamp("A", 0), roller("B", L)};
    const Solution s = solveOne(m, loads({force(a, 0, F, 0)}));
    const double b = L - a, delta = 40 * 0.2512 * std::pow(1 - std::pow(40.0 / 60, 2.885), 1.710);
    const double f11 = (L * L * L - b * b * b) / (3 * thick.EI) + b * b * b / (3 * thin.EI) + b * b * delta / thin.EI;
    const double f10 = a * a * (3 * L - a) / (6 * thick.EI); // the force at a bends only the part left of it
    CHECK_THAT(s.cases[0].reactions[1].force_N[1], WithinRel(-F * f10 / f11, 1e-9));
}

TEST_CASE("the largest values are found between the nodes too", "[core][beam]")
{
    const double L = 400, q = -12;
    Model m = shaft({cylinder(0, L, 40)});
    m.supports = {pin("A", 0), roller("B", L)};
    const Solution s = solveOne(m, loads({}, {line(0, L, q, q)}));
    REQUIRE(s.usable());
    const CaseResult& c = s.cases[0];
    CHECK_THAT(c.moment_Nmm.value, WithinRel(-q * L * L / 8, 1e-9)); // q L^2/8 in the middle
    CHECK_THAT(c.moment_Nmm.x_mm, WithinAbs(L / 2, 1e-5));
    CHECK_THAT(c.shear_N.value, WithinRel(-q * L / 2, 1e-12));
    CHECK_THAT(c.deflection_mm.x_mm, WithinAbs(L / 2, 1e-5));
    CHECK(c.slope_rad.x_mm == 0.0);
    // Triangle: largest moment q L^2/(9 sqrt 3) at L/sqrt 3.
    const Solution t = solveOne(m, loads({}, {line(0, L, 0, q)}));
    CHECK_THAT(t.cases[0].moment_Nmm.value, WithinRel(-q * L * L / (9 * std::sqrt(3.0)), 1e-9));
    CHECK_THAT(t.cases[0].moment_Nmm.x_mm, WithinAbs(L / std::sqrt(3.0), 1e-5));
}

TEST_CASE("a sampled curve stands in order and carries both limits of each node", "[core][beam]")
{
    Model m = shaft({cylinder(0, 100, 40), cone(100, 300, 40, 60)});
    m.supports = {pin("A", 0), roller("B", 300)};
    const Solution s = solveOne(m, loads({force(100, 0, -1000, 0)}));
    const std::vector<State> curve = sample(s, 0, 8);
    CHECK(curve.size() == 2 * 3 + 2 * 8);
    for (std::size_t k = 1; k < curve.size(); ++k)
        CHECK(curve[k].x_mm >= curve[k - 1].x_mm);
    CHECK_THAT(at(s, 100, Side::left).Vy_N - at(s, 100, Side::right).Vy_N, WithinRel(-1000.0, 1e-12));
    CHECK(at(s, 0, Side::left).Vy_N == 0.0);
    for (const State& state : curve) {
        const State asked = at(s, state.x_mm, Side::right);
        CHECK_THAT(asked.v_mm, WithinAbs(state.v_mm, 1e-12));
    }
}

TEST_CASE("the shear factor of rings", "[core][beam]")
{
    // Table computed from Cowper's formula, five digits.
    CHECK_THAT(shearFactor(Shear::cowper, 0.30, 0.0), WithinAbs(0.88636, 5e-6));
    CHECK_THAT(shearFactor(Shear::cowper, 0.25, 0.4), WithinAbs(0.66757, 5e-6));
    CHECK_THAT(shearFactor(Shear::cowper, 0.30, 0.5), WithinAbs(0.62023, 5e-6));
    CHECK_THAT(shearFactor(Shear::cowper, 0.33, 0.9), WithinAbs(0.53543, 5e-6));
    // Hutchinson 2001 at nu 0.3, solid, and its thin-walled limit (1 + nu)/(2 + nu) (from memory).
    CHECK_THAT(shearFactor(Shear::hutchinson, 0.30, 0.0), WithinAbs(0.92518, 5e-6));
    CHECK_THAT(shearFactor(Shear::hutchinson, 0.30, 1.0), WithinRel(1.3 / 2.3, 1e-12));
}

TEST_CASE("a cone integrates the same, however steep", "[core][beam]")
{
    // Solid cone in closed form (derived): int ds/d^4 = L (d1^2 + d1 d2 + d2^2)/(3 d1^3 d2^3), and so on.
    for (const double ratio : {1.2, 2.0, 3.0, 5.0, 9.0}) {
        const double L = 200, d1 = 20, d2 = 20 * ratio;
        const Element e = makeElement(cone(0, L, d1, d2), shaft({}, Shear::off).properties, 0, L, nullptr);
        const BendingFlexibility f = flexibilityAbout(e, 0);
        const double k = 64 / (std::numbers::pi * kE);
        CHECK_THAT(f.f22, WithinRel(k * L * (d1 * d1 + d1 * d2 + d2 * d2) / (3 * std::pow(d1, 3) * std::pow(d2, 3)), 1e-12));
        CHECK_THAT(f.f11, WithinRel(k * L * L * L / (3 * std::pow(d1, 3) * d2), 1e-12)); // arm from the thick end
        CHECK_THAT(f.axial, WithinRel(4 / (std::numbers::pi * kE) * L / (d1 * d2), 1e-12));
    }
}
