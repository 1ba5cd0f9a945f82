// Published beam examples. Units of the source, converted where that changes nothing.

#include "core/beam/solve_given_sections.h"
#include "tests/core/beam/beam_cases.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace beamtest;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("slopes of a gear shaft as published", "[core][beam][published]")
{
    // Budynas & Nisbett, Shigley's Mechanical Engineering Design, solutions, problem 7-8: span 11 in, d 1.875 in,
    // E 30e6 psi, 1449 lbf at 9 in from the left bearing; shear not counted. The computation is free of units.
    Model m = shaft({cylinder(0, 11, 1.875)}, Shear::off);
    m.properties.modulus_MPa = 30e6;
    m.properties.shear_modulus_MPa = 30e6 / 2.6;
    m.supports = {pin("A", 0), roller("B", 11)};
    const Solution s = solveOne(m, loads({force(9, 0, -1449, 0)}));
    REQUIRE(s.usable());
    // Printed to four, four and three digits.
    CHECK_THAT(std::abs(at(s, 0).rz_rad), WithinAbs(2.823e-4, 0.6e-7));
    CHECK_THAT(std::abs(at(s, 11).rz_rad), WithinAbs(4.342e-4, 0.6e-7));
    CHECK_THAT(std::abs(at(s, 9).rz_rad), WithinAbs(3.04e-4, 0.6e-6));
}

TEST_CASE("a beam loaded on its overhangs rises in the middle as published", "[core][beam][published]")
{
    // Timoshenko, Strength of Materials I, 3rd ed., p. 98 problem 4 (value from memory): I 7892 in^4, E 30e6 psi,
    // span 240 in, overhangs of 120 in with 833.33 lb/in; 0.182 in at mid span. Shear not counted.
    const double I = 7892, E = 30e6, L = 240, c = 120, q = -833.33;
    Model m = shaft({cylinder(0, L + 2 * c, 20)}, Shear::off);
    m.properties.modulus_MPa = E;
    m.properties.shear_modulus_MPa = E / 2.6;
    m.supports = {pin("A", c), roller("B", c + L)};
    LoadCase load = loads({force(c + L / 2, 0, 0, 0)}, {line(0, c, q, q), line(c + L, L + 2 * c, q, q)});
    const std::vector<Flexibility> given{{1.0 / (E * 100), 1.0 / (E * 100), 1.0 / (E * I), 0.0}};
    const Solution s = solveWithGivenSections(m, std::vector<LoadCase>{load}, given);
    REQUIRE(s.usable());
    const double mid = at(s, c + L / 2).v_mm;
    CHECK_THAT(mid, WithinAbs(0.182, 0.5e-3));                              // printed to three digits
    CHECK_THAT(mid, WithinRel(-q * c * c / 2 * L * L / (8 * E * I), 1e-9)); // M L^2/(8 E I), M = q c^2/2
    CHECK_THAT(mid, WithinRel(0.182463, 3e-6));
}

TEST_CASE("a short beam with shear as published", "[core][beam][published]")
{
    // AFNOR, Guide de validation des progiciels de calcul de structures, SSLL 02/89 (from memory): short beam on two
    // simple supports, L 1.44 m, A 31e-4 m^2, I 2810e-8 m^4, shear area A/2.42, E 2e11 Pa, nu 0.3, 1e5 N/m: 1.25926e-3 m.
    const double L = 1.44, A = 31e-4, I = 2810e-8, E = 2e11, G = E / 2.6, q = -1e5;
    Model m = shaft({cylinder(0, L, 0.1)});
    m.properties.modulus_MPa = E;
    m.properties.shear_modulus_MPa = G;
    const std::vector<Flexibility> given{{1 / (E * A), 1 / (2 * G * I), 1 / (E * I), 2.42 / (G * A)}};
    m.supports = {pin("A", 0), roller("B", L)};
    LoadCase load = loads({force(L / 2, 0, 0, 0)}, {line(0, L, q, q)});
    const Solution s = solveWithGivenSections(m, std::vector<LoadCase>{load}, given);
    REQUIRE(s.usable());
    const double mid = at(s, L / 2).v_mm;
    CHECK_THAT(mid, WithinRel(5 * q * std::pow(L, 4) / (384 * E * I) + q * L * L * 2.42 / (8 * G * A), 1e-9));
    CHECK_THAT(-mid, WithinAbs(1.25926e-3, 0.5e-8)); // printed to six digits
}

TEST_CASE("a cone clamped at its thick end as published", "[core][beam][published]")
{
    // Benchmark SSLL400 (V3.01.400): solid cone, radius 0.1 m to 0.05 m, L 1 m, E 2e11 Pa, nu 0.3, no shear.
    // N and m here. Closed forms; printed to seven digits.
    Model m = shaft({cone(0, 1, 0.2, 0.1)}, Shear::off);
    m.properties.modulus_MPa = 2e11;
    m.properties.shear_modulus_MPa = 2e11 / 2.6;
    m.supports = {clamp("A", 0)};
    const double digits = 2e-7;
    const State pull = at(solveOne(m, loads({force(1, 100, 0, 0)})), 1);
    CHECK_THAT(pull.u_mm, WithinRel(3.183099e-8, digits));
    const State bend = at(solveOne(m, loads({force(1, 0, 100, 0)})), 1);
    CHECK_THAT(bend.v_mm, WithinRel(4.244132e-6, digits));
    CHECK_THAT(bend.rz_rad, WithinRel(8.488264e-6, digits));
    const State twist = at(solveOne(m, loads({moment(0, -100, 0, 0), moment(1, 100, 0, 0)})), 1);
    CHECK_THAT(twist.rx_rad, WithinRel(3.862160e-5, digits));
    const State couple = at(solveOne(m, loads({moment(1, 0, 0, 100)})), 1);
    CHECK_THAT(couple.v_mm, WithinRel(8.488264e-6, digits));
    CHECK_THAT(couple.rz_rad, WithinRel(2.970892e-5, digits));
    LoadCase along;
    along.line_loads = {{0, 1, {100, 0, 0}, {100, 0, 0}, 0, 0}};
    CHECK_THAT(at(solveOne(m, along), 1).u_mm, WithinRel(1.229613e-8, digits));
    LoadCase across;
    across.line_loads = {{0, 1, {0, 100, 0}, {0, 100, 0}, 0, 0}};
    const State lying = at(solveOne(m, across), 1);
    CHECK_THAT(lying.v_mm, WithinRel(1.348641e-6, 4e-7)); // last digit of the print
    CHECK_THAT(lying.rz_rad, WithinRel(2.122066e-6, 4e-7));
}
