// Closed forms of beams. The formula stands beside each case and is evaluated here; the number behind it in the comment
// is its value. Sources: Roark's Formulas for Stress and Strain, ch. 8; Timoshenko, Strength of Materials I (from memory);
// shear terms and cones derived by virtual work. Tolerance 1e-9: both sides are double precision, sums of few terms.

#include "tests/core/beam/beam_cases.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace beamtest;
using Catch::Matchers::WithinRel;

namespace
{
constexpr double kRel = 1e-9;
constexpr double kPi = std::numbers::pi;
} // namespace

// The value as printed and the formula must agree to the digits printed: a slip in one shows.
#define CHECK_FORM(found, formula, printed)                                                                                      \
    do {                                                                                                                         \
        CHECK_THAT(formula, WithinRel(printed, 5e-7));                                                                           \
        CHECK_THAT(found, WithinRel(formula, kRel));                                                                             \
    } while (false)

TEST_CASE("a clamped shaft with an end force bends and shears", "[core][beam]")
{
    const double L = 100, F = -10000;
    const Ring r(50);
    const Model m = shaft({cylinder(0, L, 50)});
    Model s = m;
    s.supports = {clamp("A", 0)};
    const Solution x = solveOne(s, loads({force(L, 0, F, 0)}));
    REQUIRE(x.usable());
    CHECK_FORM(at(x, L).v_mm, F * L * L * L / (3 * r.EI) + F * L / r.kGA, -0.059994718); // 1
    CHECK_THAT(F * L / r.kGA, WithinRel(-0.0072521087, 5e-7));
    CHECK_FORM(at(x, L).rz_rad, F * L * L / (2 * r.EI), -7.9113913e-4); // 2
    s.properties.shear = Shear::nine_tenths;
    const Ring nine(50, 0, kE, kG, 0.9);
    CHECK_FORM(at(solveOne(s, loads({force(L, 0, F, 0)})), L).v_mm, F * L * L * L / (3 * nine.EI) + F * L / nine.kGA,
               -0.059884837); // 3
}

TEST_CASE("a hollow clamped shaft under a uniform load, also inside its one element", "[core][beam]")
{
    const double L = 160, q = -40, x = 80;
    const Ring r(80, 50);
    Model m = shaft({cylinder(0, L, 80, 50)});
    m.supports = {clamp("A", 0)};
    const Solution s = solveOne(m, loads({}, {line(0, L, q, q)}));
    CHECK(s.node_x_mm.size() == 2);
    CHECK_THAT(shearFactor(Shear::cowper, 0.3, 50.0 / 80.0), WithinRel(0.574921, 2e-6));                // printed to six digits
    CHECK_FORM(at(s, L).v_mm, q * std::pow(L, 4) / (8 * r.EI) + q * L * L / (2 * r.kGA), -0.013005497); // 4
    CHECK_FORM(at(s, x).v_mm, q * x * x * (6 * L * L - 4 * L * x + x * x) / (24 * r.EI) + q * (L * x - x * x / 2) / r.kGA,
               -0.0060586450); // 5
}

TEST_CASE("a clamped shaft under a load that falls to zero, and under an end moment", "[core][beam]")
{
    const double L = 150, q = -60;
    const Ring r(40);
    Model m = shaft({cylinder(0, L, 40)});
    m.supports = {clamp("A", 0)};
    CHECK_FORM(at(solveOne(m, loads({}, {line(0, L, q, 0)})), L).v_mm, q * std::pow(L, 4) / (30 * r.EI) + q * L * L / (6 * r.kGA),
               -0.041662283);                                                                                  // 6
    CHECK_FORM(at(solveOne(m, loads({moment(L, 0, 0, 2e5)})), L).v_mm, 2e5 * L * L / (2 * r.EI), 0.086917141); // 7
}

TEST_CASE("a simple span with one force", "[core][beam]")
{
    const double L = 300, F = -8000, a = 100, b = L - a;
    const Ring r(45);
    Model m = shaft({cylinder(0, L, 45)});
    m.supports = {pin("A", 0), roller("B", L)};
    const Solution s = solveOne(m, loads({force(a, 0, F, 0)}));
    CHECK_FORM(at(s, a).v_mm, F * a * a * b * b / (3 * r.EI * L) + F * a * b / (L * r.kGA), -0.090522320); // 8
    CHECK_FORM(at(s, 0).rz_rad, F * b * (L * L - b * b) / (6 * r.EI * L), -0.0010718409);                  // 9
    CHECK_FORM(at(s, L).rz_rad, -F * a * (L * L - a * a) / (6 * r.EI * L), 8.5747269e-4);
    m.properties.shear = Shear::off;
    const Solution thin = solveOne(m, loads({force(a, 0, F, 0)}));
    const double largest = F * a * std::pow(L * L - a * a, 1.5) / (9 * std::sqrt(3.0) * r.EI * L); // 10
    CHECK_FORM(-thin.cases[0].deflection_mm.value, largest, -0.093349802);
    // The place of a flat maximum: the derivative is found to 1e-9 of the length.
    CHECK_THAT(thin.cases[0].deflection_mm.x_mm, Catch::Matchers::WithinAbs(L - std::sqrt((L * L - a * a) / 3), 1e-6));
    CHECK_THAT(L - std::sqrt((L * L - a * a) / 3), WithinRel(136.7007, 5e-7));
}

TEST_CASE("simple spans with uniform load, two forces, triangular load", "[core][beam]")
{
    {
        const double L = 150, q = -200;
        const Ring r(60);
        Model m = shaft({cylinder(0, L, 60)});
        m.supports = {pin("A", 0), roller("B", L)};
        CHECK_FORM(at(solveOne(m, loads({}, {line(0, L, q, q)})), L / 2).v_mm,
                   5 * q * std::pow(L, 4) / (384 * r.EI) + q * L * L / (8 * r.kGA), -0.012892709); // 11
        CHECK_THAT(q * L * L / (8 * r.kGA), WithinRel(-0.0028328550, 5e-7));
    }
    {
        const double L = 400, F = -6000, a = 120;
        const Ring r(50);
        Model m = shaft({cylinder(0, L, 50)});
        m.supports = {pin("A", 0), roller("B", L)};
        CHECK_FORM(at(solveOne(m, loads({force(a, 0, F, 0), force(L - a, 0, F, 0)})), L / 2).v_mm,
                   F * a * (3 * L * L - 4 * a * a) / (24 * r.EI) + F * a / r.kGA, -0.20572782); // 12
    }
    {
        const double L = 250, q = -30, x = 0.5193296 * L;
        const Ring r(35);
        Model m = shaft({cylinder(0, L, 35)}, Shear::off);
        m.supports = {pin("A", 0), roller("B", L)};
        const Solution s = solveOne(m, loads({}, {line(0, L, 0, q)}));
        CHECK_FORM(at(s, x).v_mm, q * x * (7 * std::pow(L, 4) - 10 * L * L * x * x + 3 * std::pow(x, 4)) / (360 * r.EI * L),
                   -0.050369200); // 13
        CHECK_FORM(s.cases[0].reactions[1].force_N[1], -q * L / 3, 2500.0);
    }
}

TEST_CASE("a simple span with a moment", "[core][beam]")
{
    const double L = 300, M = 5e5, a = 90, b = L - a;
    const Ring r(40);
    Model m = shaft({cylinder(0, L, 40)}, Shear::off);
    m.supports = {pin("A", 0), roller("B", L)};
    const Solution s = solveOne(m, loads({moment(a, 0, 0, M)}));
    CHECK_FORM(s.cases[0].reactions[0].force_N[1], M / L, 1666.6667); // 14
    CHECK_FORM(at(s, a).v_mm, M * a * b * (b - a) / (3 * r.EI * L), 0.048673599);
    CHECK_FORM(at(s, a).rz_rad, M * (L * L - 3 * a * b) / (3 * r.EI * L), 7.1465205e-4); // 15
    m.properties.shear = Shear::cowper;
    CHECK_FORM(at(solveOne(m, loads({moment(a, 0, 0, M)})), a).rz_rad, M * (L * L - 3 * a * b) / (3 * r.EI * L) + M / (r.kGA * L),
               7.3353775e-4);
}

TEST_CASE("an overhang carries a line load or a tip force", "[core][beam]")
{
    const double L = 200, c = 90, q = -50, F = -4000;
    const Ring r(50);
    Model m = shaft({cylinder(0, L + c, 50)}, Shear::off);
    m.supports = {pin("A", 0), roller("B", L)};
    const Solution s = solveOne(m, loads({}, {line(L, L + c, q, q)}));
    CHECK_FORM(at(s, L + c).v_mm, q * c * c * c * (4 * L + 3 * c) / (24 * r.EI), -0.025713011); // 16
    CHECK_FORM(s.cases[0].reactions[0].force_N[1], q * c * c / (2 * L), -1012.5);
    m.properties.shear = Shear::cowper;
    CHECK_FORM(at(solveOne(m, loads({force(L + c, 0, F, 0)})), L + c).v_mm,
               F * c * c * (L + c) / (3 * r.EI) + F * c * (L + c) / (L * r.kGA), -0.053342556); // 17
    // The same shaft turned end for end: the overhang on the left.
    Model left = shaft({cylinder(0, L + c, 50)});
    left.supports = {roller("B", c), pin("A", L + c)};
    CHECK_FORM(at(solveOne(left, loads({force(0, 0, F, 0)})), 0).v_mm,
               F * c * c * (L + c) / (3 * r.EI) + F * c * (L + c) / (L * r.kGA), -0.053342556);
}

TEST_CASE("a shaft clamped at both ends", "[core][beam]")
{
    const double L = 150, F = -50000, q = -300;
    const Ring r(60);
    const double phi = 12 * r.EI / (r.kGA * L * L);
    Model m = shaft({cylinder(0, L, 60)});
    m.supports = {clamp("A", 0), clamp("B", L)};
    CHECK_FORM(at(solveOne(m, loads({force(L / 2, 0, F, 0)})), L / 2).v_mm, F * L * L * L / (192 * r.EI) + F * L / (4 * r.kGA),
               -0.016149419); // 18
    CHECK_THAT(F * L * L * L / (192 * r.EI), WithinRel(-0.0067065695, 5e-7));
    const double a = 50, b = 100;
    const Solution s = solveOne(m, loads({force(a, 0, F, 0)}));
    CHECK_FORM(s.cases[0].reactions[0].mz_Nmm, -F * a * b * (b + phi * L / 2) / (L * L * (1 + phi)), 1038790.3); // 19
    CHECK_FORM(s.cases[0].reactions[1].mz_Nmm, F * a * b * (a + phi * L / 2) / (L * L * (1 + phi)), -627876.40);
    m.properties.shear = Shear::off;
    CHECK_FORM(solveOne(m, loads({force(a, 0, F, 0)})).cases[0].reactions[0].mz_Nmm, -F * a * b * b / (L * L), 1111111.1);
    m.properties.shear = Shear::cowper;
    const Solution u = solveOne(m, loads({}, {line(0, L, q, q)}));
    CHECK_FORM(at(u, L / 2).v_mm, q * std::pow(L, 4) / (384 * r.EI) + q * L * L / (8 * r.kGA), -0.0072672388); // 20
    CHECK_FORM(u.cases[0].reactions[0].mz_Nmm, -q * L * L / 12, 562500.0);
}

TEST_CASE("a propped clamp shares by bending and shear", "[core][beam]")
{
    const double L = 280, a = 140, F = -20000;
    const Ring r(70);
    Model m = shaft({cylinder(0, L, 70)});
    m.supports = {clamp("A", 0), roller("B", L)};
    const double expected = -F * (a * a * (3 * L - a) / (6 * r.EI) + a / r.kGA) / (L * L * L / (3 * r.EI) + L / r.kGA);
    CHECK_FORM(solveOne(m, loads({force(a, 0, F, 0)})).cases[0].reactions[1].force_N[1], expected, 6374.6224); // 21
    m.properties.shear = Shear::off;
    CHECK_FORM(solveOne(m, loads({force(a, 0, F, 0)})).cases[0].reactions[1].force_N[1], -F * 5 / 16, 6250.0);
}

TEST_CASE("three supports", "[core][beam]")
{
    const double L1 = 180, L2 = 320, F = -5000, a = 110, b = L1 - a;
    const Ring r(40);
    Model m = shaft({cylinder(0, L1 + L2, 40)}, Shear::off);
    m.supports = {pin("A", 0), roller("B", L1), roller("C", L1 + L2)};
    const Solution s = solveOne(m, loads({force(a, 0, F, 0)}));
    const double mb = F * a * b * (L1 + a) / (2 * L1 * (L1 + L2));
    CHECK_FORM(at(s, L1).Mz_Nmm, mb, -62027.778); // 22
    CHECK_FORM(s.cases[0].reactions[2].force_N[1], mb / L2, -193.83681);
    CHECK_FALSE(s.determinate);
    m.properties.shear = Shear::cowper;
    const Solution t = solveOne(m, loads({force(a, 0, F, 0)}));
    const double mbShear = F * a * b * (L1 + a) / (6 * r.EI * L1) / ((L1 + L2) / (3 * r.EI) + (1 / L1 + 1 / L2) / r.kGA);
    CHECK_FORM(at(t, L1).Mz_Nmm, mbShear, -61094.391); // 23
    // Force method: R_B = share of the simple span plus what M_B turns into.
    CHECK_FORM(t.cases[0].reactions[1].force_N[1], -F * a / L1 - mbShear / L1 - mbShear / L2, 3585.8888);
    Model two = shaft({cylinder(0, 400, 40)}, Shear::off);
    two.supports = {pin("A", 0), roller("B", 200), roller("C", 400)};
    CHECK_FORM(solveOne(two, loads({force(100, 0, -3000, 0), force(300, 0, -3000, 0)})).cases[0].reactions[1].force_N[1],
               11.0 * 3000 / 8, 4125.0); // 24
}

TEST_CASE("springs share with the shaft", "[core][beam]")
{
    {
        const double L = 400, k = 20000, F = -9000;
        const Ring r(45);
        Model m = shaft({cylinder(0, L, 45)});
        m.supports = {pin("A", 0), spring("S", L / 2, k), roller("B", L)};
        const double f = L * L * L / (48 * r.EI) + L / (4 * r.kGA);
        CHECK_FORM(solveOne(m, loads({force(L / 2, 0, F, 0)})).cases[0].reactions[1].force_N[1], -F * f / (f + 1 / k),
                   3581.6131); // 25
    }
    {
        const double L = 180, c = 100, F = -7000, k1 = 3e5, k2 = 5e5;
        const Ring r(60);
        Model m = shaft({cylinder(0, L + c, 60)});
        m.supports = {spring("A", 0, k1, true), spring("B", L, k2)};
        CHECK_FORM(at(solveOne(m, loads({force(L + c, 0, F, 0)})), L + c).v_mm,
                   F * c * c * (L + c) / (3 * r.EI) + F * c * (L + c) / (L * r.kGA) +
                       F * (std::pow((L + c) / L, 2) / k2 + std::pow(c / L, 2) / k1),
                   -0.096415197); // 26
    }
    {
        const double L = 300, q = -25, kr = 8e7;
        const Ring r(50);
        Model m = shaft({cylinder(0, L, 50)}, Shear::off);
        m.supports = {pin("A", 0), roller("B", L)};
        m.supports[0].stiffness[3][3] = m.supports[0].stiffness[4][4] = kr;
        const LoadCase c = loads({}, {line(0, L, q, q)});
        const double top = -q * L * L * L / (24 * r.EI);
        CHECK_FORM(solveOne(m, c).cases[0].reactions[0].mz_Nmm, top / (L / (3 * r.EI) + 1 / kr), 31601.120); // 27
        m.properties.shear = Shear::cowper;
        CHECK_FORM(solveOne(m, c).cases[0].reactions[0].mz_Nmm, top / (L / (3 * r.EI) + 1 / (r.kGA * L) + 1 / kr), 31546.966);
    }
}

TEST_CASE("supports that are moved press on an indeterminate shaft", "[core][beam]")
{
    const double L = 200, d = -0.08, t = 5e-4;
    const Ring r(40);
    const double phi = 12 * r.EI / (r.kGA * L * L);
    Model m = shaft({cylinder(0, L, 40)});
    m.supports = {clamp("A", 0), roller("B", L)};
    m.supports[1].prescribed[1] = d;
    CHECK_FORM(solveOne(m, loads({})).cases[0].reactions[1].force_N[1], d / (L * L * L / (3 * r.EI) + L / r.kGA),
               -759.88425); // 28
    m.supports = {clamp("A", 0), clamp("B", L)};
    m.supports[1].prescribed[1] = d;
    CHECK_FORM(solveOne(m, loads({})).cases[0].reactions[1].force_N[1], 12 * r.EI * d / (L * L * L * (1 + phi)),
               -2855.1533); // 29
    m.supports[1].prescribed = {0, 0, 0, 0, t};
    CHECK_FORM(solveOne(m, loads({})).cases[0].reactions[1].mz_Nmm, (4 + phi) * r.EI * t / (L * (1 + phi)), 243163.89); // 30
    Model two = shaft({cylinder(0, 400, 40)}, Shear::off);
    two.supports = {pin("A", 0), roller("B", 200), roller("C", 400)};
    two.supports[0].prescribed[1] = 0.05;
    CHECK_FORM(solveOne(two, loads({})).cases[0].reactions[0].force_N[1], 3 * r.EI * 0.05 / (2 * 200.0 * 200 * 200),
               242.68803); // 31
}

TEST_CASE("a heated shaft between axial supports", "[core][beam]")
{
    const double L1 = 100, L2 = 150, alpha = 11.5e-6, dT = 40;
    const Ring a(30), b(50);
    Model m = shaft({cylinder(0, L1, 30), cylinder(L1, L1 + L2, 50)});
    m.properties.expansion_per_K = alpha;
    m.supports = {pin("A", 0), pin("B", L1 + L2)};
    LoadCase c;
    c.temperature_rise_K = dT;
    const double soft = L1 / a.EA + L2 / b.EA;
    CHECK_FORM(at(solveOne(m, c), 50).N_N, -alpha * dT * (L1 + L2) / soft, -108736.85); // 32
    m.supports[1] = roller("B", L1 + L2);
    const double k = 25000;
    m.supports[1].stiffness[0][0] = k;
    CHECK_FORM(at(solveOne(m, c), L1 + L2).u_mm, alpha * dT * (L1 + L2) / (1 + k * soft), 0.11203772); // 33
}

TEST_CASE("twist of steps, of a cone, under a line of torque", "[core][beam]")
{
    {
        const double L1 = 120, L2 = 80, T = 3e5;
        const Ring a(30), b(40, 20);
        Model m = shaft({cylinder(0, L1, 30), cylinder(L1, L1 + L2, 40, 20)});
        m.supports = {pin("A", 0), roller("B", L1 + L2)};
        const Solution s = solveOne(m, loads({moment(0, -T, 0, 0), moment(L1 + L2, T, 0, 0)}));
        CHECK_FORM(at(s, L1 + L2).rx_rad, T * (L1 / a.GJ + L2 / b.GJ), 0.0069993837); // 34
        CHECK(std::abs(s.cases[0].torque_residual_Nmm) < 1e-9 * T);
    }
    {
        const double L = 100, d1 = 50, d2 = 30, T = 2e5;
        Model m = shaft({cone(0, L, d1, d2)});
        m.supports = {pin("A", 0), roller("B", L)};
        CHECK_FORM(at(solveOne(m, loads({moment(0, -T, 0, 0), moment(L, T, 0, 0)})), L).rx_rad,
                   32 * T * L * (d1 * d1 + d1 * d2 + d2 * d2) / (3 * kPi * kG * std::pow(d1, 3) * std::pow(d2, 3)),
                   0.0012443349); // 35
    }
    {
        const double L = 150, mx = 2000;
        const Ring r(40);
        Model m = shaft({cylinder(0, L, 40)});
        m.supports = {pin("A", 0), roller("B", L)};
        LoadCase c = loads({moment(0, -mx * L, 0, 0)});
        c.line_loads.push_back({0, L, {}, {}, mx, mx});
        CHECK_FORM(at(solveOne(m, c), L).rx_rad, mx * L * L / (2 * r.GJ), 0.0011299228); // 36
    }
}

TEST_CASE("cones pulled and bent", "[core][beam]")
{
    const double L = 120, D = 60, d = 40;
    const double kappa = 6 * 1.3 / (7 + 6 * 0.3);
    Model m = shaft({cone(0, L, D, d)});
    m.supports = {clamp("A", 0)};
    CHECK_FORM(at(solveOne(m, loads({force(L, 15000, 0, 0)})), L).u_mm, 4 * 15000 * L / (kPi * kE * D * d), 0.0046355809); // 37
    const double M = 4e5;
    const Solution s = solveOne(m, loads({moment(L, 0, 0, M)}));
    CHECK_FORM(at(s, L).rz_rad, 64 * M * L * (D * D + D * d + d * d) / (3 * kPi * kE * std::pow(D, 3) * std::pow(d, 3)),
               8.6988678e-4); // 38
    CHECK_FORM(at(s, L).v_mm, 32 * M * L * L * (D + 2 * d) / (3 * kPi * kE * std::pow(D, 3) * d * d), 0.038458152);
    Model thin = shaft({cone(0, L, d, D)});
    thin.supports = {clamp("A", 0)};
    const double F = -6000;
    CHECK_FORM(at(solveOne(thin, loads({force(L, 0, F, 0)})), L).v_mm,
               64 * F * L * L * L / (3 * kPi * kE * d * d * d * D) + 4 * F * L / (kappa * kPi * kG * d * D), -0.094442234); // 39
    Model two = shaft({cone(0, L, d, D), cone(L, 2 * L, D, d)});
    two.supports = {pin("A", 0), roller("B", 2 * L)};
    CHECK_FORM(at(solveOne(two, loads({force(L, 0, -12000, 0)})), L).v_mm,
               64 * F * L * L * L / (3 * kPi * kE * D * D * D * d) + 4 * F * L / (kappa * kPi * kG * d * D), -0.044996038); // 40
}

TEST_CASE("effective centres outside their seats lengthen the span", "[core][beam]")
{
    const double L = 200, a = 15, F = -10000;
    const Ring r(50);
    Model m = shaft({cylinder(0, L, 50)}, Shear::off);
    m.supports = {pin("A", 0), roller("B", L)};
    m.supports[0].centre_offset_mm = -a;
    m.supports[1].centre_offset_mm = a;
    CHECK_FORM(at(solveOne(m, loads({force(L / 2, 0, F, 0)})), L / 2).v_mm,
               F / r.EI * (L * L * L / 48 + a * L * L / 8 + a * a * L / 4), -0.040018455); // 41
}

TEST_CASE("an eccentric axial force bends", "[core][beam]")
{
    const double L = 300, Fx = -6000, y = 80;
    const Ring r(40);
    Model m = shaft({cylinder(0, L, 40)}, Shear::off);
    m.supports = {pin("A", 0), roller("B", L)};
    const double M = -y * Fx; // (0, y, 0) x (Fx, 0, 0) = (0, 0, -y Fx)
    const Solution s = solveOne(m, loads({PointLoad{150, {Fx, 0, 0}, {0, 0, M}}}));
    CHECK_FORM(at(s, 150, Side::left).Mz_Nmm - at(s, 150, Side::right).Mz_Nmm, M, 480000.0); // 42
    CHECK_FORM(at(s, 150).rz_rad, M * L / (12 * r.EI), 4.6355809e-4);
    CHECK_FORM(s.cases[0].reactions[0].force_N[1], M / L, 1600.0);
    CHECK_THAT(s.cases[0].reactions[0].force_N[0], WithinRel(-Fx, kRel));
}

TEST_CASE("own weight, hanging and lying", "[core][beam]")
{
    const double g = 9.80665, rho = 7850e-9; // kg/mm^3
    {
        const double L = 500;
        Model m = shaft({cylinder(0, L, 40)});
        m.supports = {clamp("A", 0)};
        LoadCase c;
        c.gravity = {g, 0, 0};
        CHECK_FORM(at(solveOne(m, c), L).u_mm, rho * g * L * L / (2 * kE), 4.6712502e-5); // 43
    }
    {
        const double L = 800;
        const Ring r(30);
        Model m = shaft({cylinder(0, L, 30)});
        m.supports = {pin("A", 0), roller("B", L)};
        LoadCase c;
        c.gravity = {0, 0, -g};
        const double q = rho * r.A * g;
        CHECK_FORM(at(solveOne(m, c), L / 2).w_mm, -(5 * q * std::pow(L, 4) / (384 * r.EI) + q * L * L / (8 * r.kGA)),
                   -0.035519992); // 44
        CHECK_THAT(solveOne(m, c).mass_kg, WithinRel(rho * r.A * L, kRel));
    }
    {
        // A cone hanging from its thick end: u = int over x of (weight below x)/(E A), weight below by the volume of the
        // frustum. With d = d1 - t x and V(x) = pi/(12 t) (d^3 - d2^3): u = rho g/(3 E t) int (d - d2^3/d^2) dx.
        const double L = 300, d1 = 60, d2 = 30, t = (d1 - d2) / L;
        Model m = shaft({cone(0, L, d1, d2)});
        m.supports = {clamp("A", 0)};
        LoadCase c;
        c.gravity = {g, 0, 0};
        const double integral = (d1 * d1 - d2 * d2) / (2 * t) - d2 * d2 * d2 / t * (1 / d2 - 1 / d1);
        CHECK_THAT(at(solveOne(m, c), L).u_mm, WithinRel(rho * g / (3 * kE * t) * integral, kRel));
        c.gravity = {0, 0, -g};
        // Lying: moment at the clamp = weight times distance of its centroid, L/4 (d1^2 + 2 d1 d2 + 3 d2^2)/(d1^2 + d1 d2 +
        // d2^2).
        const double volume = kPi / 12 * L * (d1 * d1 + d1 * d2 + d2 * d2);
        const double centroid = L / 4 * (d1 * d1 + 2 * d1 * d2 + 3 * d2 * d2) / (d1 * d1 + d1 * d2 + d2 * d2);
        CHECK_THAT(solveOne(m, c).cases[0].reactions[0].my_Nmm, WithinRel(-rho * g * volume * centroid, kRel));
    }
}

TEST_CASE("both planes together", "[core][beam]")
{
    const double L = 240;
    const Ring r(40);
    Model m = shaft({cylinder(0, L, 40)});
    m.supports = {pin("A", 0), roller("B", L)};
    const Solution s = solveOne(m, loads({force(120, 0, 3000, 0), force(60, 0, 0, -4000)}));
    const double v = 3000 * L * L * L / (48 * r.EI) + 3000 * L / (4 * r.kGA);
    // Force at a = 60 seen at x = 120 from the other end: F a x (L^2 - a^2 - x^2)/(6 L EI) + F a x/(L kGA), x = 120.
    const double a = 60, x = 120;
    const double w = -4000 * a * x * (L * L - a * a - x * x) / (6 * L * r.EI) - 4000 * a * x / (L * r.kGA);
    const State mid = at(s, 120);
    CHECK_FORM(std::hypot(mid.v_mm, mid.w_mm), std::hypot(v, w), 0.047700925); // 45
    const auto& f = s.cases[0].reactions[0].force_N;
    CHECK_FORM(std::hypot(f[1], f[2]), std::hypot(1500.0, 3000.0), 3354.1020);
    // Signs: a force in -y gives Mz > 0, a force in -z gives My < 0.
    const Solution down = solveOne(m, loads({force(120, 0, -1, 0), force(120, 0, 0, -1)}));
    CHECK(at(down, 120).Mz_Nmm > 0.0);
    CHECK(at(down, 120).My_Nmm < 0.0);
}

TEST_CASE("a support with a gap takes what the shaft leaves to it", "[core][beam]")
{
    const double L = 400, F = -2000, c = 0.05, k = 1e5;
    const Ring r(30);
    const double f = L * L * L / (48 * r.EI) + L / (4 * r.kGA);
    CHECK_THAT(f, WithinRel(1.6480030e-4, 5e-7));
    Model m = shaft({cylinder(0, L, 30)});
    m.supports = {pin("A", 0), support("G", L / 2, {}), roller("B", L)};
    m.supports[1].gap = Gap{c, k, 1.0};
    const LoadCase load = loads({force(L / 2, 0, F, 0)});
    const Solution s = solveOne(m, load);
    REQUIRE(s.usable());
    CHECK_FORM(s.cases[0].reactions[1].force_N[1], (-F * f - c) / (f + 1 / k), 1599.5430); // 46
    m.supports[1].gap->exponent = 10.0 / 9.0;
    const double R = solveOne(m, load).cases[0].reactions[1].force_N[1];
    CHECK_THAT(R, WithinRel(1553.6293, 5e-8)); // 47, printed value
    CHECK_THAT(k * std::pow(f * (-F - R) - c, 10.0 / 9.0), WithinRel(R, kRel));
    // Too small a force to close it: the span carries all, and it is said.
    const Solution open = solveOne(m, loads({force(L / 2, 0, -100, 0)}));
    CHECK_FALSE(open.cases[0].reactions[1].in_contact);
    CHECK(open.cases[0].reactions[1].force_N[1] == 0.0);
    CHECK_THAT(at(open, L / 2).v_mm, WithinRel(-100 * f, kRel));
    CHECK(has(open.findings, "bearing-unloaded", Severity::caution));
}

TEST_CASE("a stiff line contact behind a soft shaft still finds its equilibrium", "[core][beam]")
{
    // The load closes the gap only just: rounding of the displacement is then large against the depth of contact.
    const double L = 900, c = 0.03, k = 4e5, n = 10.0 / 9.0;
    const Ring r(60);
    const double f = L * L * L / (48 * r.EI) + L / (4 * r.kGA);
    Model m = shaft({cylinder(0, L, 60)});
    m.supports = {pin("A", 0), support("G", L / 2, {}), roller("B", L)};
    m.supports[1].gap = Gap{c, k, n};
    for (const double closing : {1.0005, 1.01, 1.2, 3.0}) {
        const double F = -closing * c / f;
        const Solution s = solveOne(m, loads({force(L / 2, 0, F, 0)}));
        REQUIRE(s.usable());
        const double R = s.cases[0].reactions[1].force_N[1];
        // Law of the contact at the displacement that the span gives: 1e-6 since the depth is a small difference.
        CHECK_THAT(k * std::pow(f * (-F - R) - c, n), WithinRel(R, 1e-6));
    }
}

TEST_CASE("a point-contact gap in two planes beside springs", "[core][beam]")
{
    // 48: solved once by an independent program (statics and quadrature of curvature, no finite elements); printed to
    // eight digits, hence the tolerance.
    Model m = shaft({cylinder(0, 150, 35), cylinder(150, 400, 45)});
    m.supports = {spring("A", 0, 2e5, true), support("G", 180, {}), spring("B", 400, 3e5)};
    m.supports[1].gap = Gap{0.012, 2.5e5, 1.5};
    const Solution s = solveOne(m, loads({force(260, 0, -4126.6781, -2823.2124), force(90, 0, 1500, -1000)}));
    REQUIRE(s.usable());
    const auto& r = s.cases[0].reactions;
    CHECK_THAT(r[0].force_N[1], WithinRel(-505.61644, 2e-8));
    CHECK_THAT(r[0].force_N[2], WithinRel(634.43318, 2e-8));
    CHECK_THAT(r[1].force_N[1], WithinRel(1431.73412, 2e-8));
    CHECK_THAT(r[1].force_N[2], WithinRel(2052.16573, 2e-8));
    CHECK_THAT(r[2].force_N[1], WithinRel(1700.56039, 2e-8));
    CHECK_THAT(r[2].force_N[2], WithinRel(1136.61346, 2e-8));
    CHECK(s.cases[0].newton_steps < 15);
    // And its own law holds at the displacement found.
    const double e = std::hypot(r[1].displacement_mm[1], r[1].displacement_mm[2]);
    CHECK_THAT(std::hypot(r[1].force_N[1], r[1].force_N[2]), WithinRel(2.5e5 * std::pow(e - 0.012, 1.5), 1e-9));
}

TEST_CASE("the influence line of the middle support of two equal spans", "[core][beam]")
{
    const double L = 200;
    Model m = shaft({cylinder(0, 2 * L, 40)}, Shear::off);
    m.supports = {pin("A", 0), roller("B", L), roller("C", 2 * L)};
    const Solution s = solveOne(m, loads({}));
    const InfluenceBasis basis = influenceBasis(s, 0);
    const std::vector<std::pair<double, double>> printed{
        {25, -0.18652344}, {50, -0.36718750}, {100, -0.68750000}, {150, -0.91406250}}; // 49
    for (const auto& [x, value] : printed)
        CHECK_FORM(influenceAt(basis, x).reaction_per_fy[1][1], -x * (3 * L * L - x * x) / (2 * L * L * L), value * (1 + 0 * L));
    // Moment influence: the derivative of the same line.
    CHECK_THAT(influenceAt(s, 0, 50).reaction_per_mz[1][1], WithinRel(-3 * (L * L - 50 * 50) / (2 * L * L * L), kRel));
    CHECK_THAT(influenceAt(s, 0, 50).reaction_per_mz[1][1], WithinRel(-0.00703125, 5e-7));
}
