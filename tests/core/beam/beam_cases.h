#pragma once
// Small builders for the beam's tests. No engineering in here.

#include "core/beam/beam.h"

#include <algorithm>
#include <numbers>
#include <string>
#include <vector>

namespace beamtest
{

using namespace shaftwright;
using namespace shaftwright::beam;

inline constexpr double kE = 206000.0;
inline constexpr double kG = 206000.0 / 2.6;

/// Properties of the section for the formulas, computed here and not by core.
struct Ring {
    double A, I, J, EI, EA, GJ, kGA;
    explicit Ring(double d, double b = 0.0, double E = kE, double G = kG, double kappaGiven = 0.0)
    {
        const double pi = std::numbers::pi;
        A = pi / 4.0 * (d * d - b * b);
        I = pi / 64.0 * (d * d * d * d - b * b * b * b);
        J = 2.0 * I;
        const double nu = E / (2.0 * G) - 1.0, m = b / d, s = (1 + m * m) * (1 + m * m);
        // Cowper, J. Appl. Mech. 33 (1966) 335
        const double kappa = kappaGiven > 0.0 ? kappaGiven : 6 * (1 + nu) * s / ((7 + 6 * nu) * s + (20 + 12 * nu) * m * m);
        EI = E * I;
        EA = E * A;
        GJ = G * J;
        kGA = kappa * G * A;
    }
};

inline Piece cylinder(double x0, double x1, double d, double b = 0.0)
{
    return {x0, x1, d, d, b, b};
}
inline Piece cone(double x0, double x1, double d0, double d1)
{
    return {x0, x1, d0, d1, 0.0, 0.0};
}

inline Model shaft(std::vector<Piece> pieces, Shear shear = Shear::cowper)
{
    Model m;
    m.pieces = std::move(pieces);
    m.properties.modulus_MPa = kE;
    m.properties.shear_modulus_MPa = kG;
    m.properties.shear = shear;
    return m;
}

inline Support support(const std::string& id, double x, std::array<bool, 5> rigid)
{
    Support s;
    s.id = id;
    s.x_mm = x;
    s.rigid = rigid;
    return s;
}
inline Support clamp(const std::string& id, double x)
{
    return support(id, x, {true, true, true, true, true});
}
inline Support pin(const std::string& id, double x)
{
    return support(id, x, {true, true, true, false, false});
}
inline Support roller(const std::string& id, double x)
{
    return support(id, x, {false, true, true, false, false});
}
inline Support spring(const std::string& id, double x, double k, bool holdsX = false)
{
    Support s = support(id, x, {holdsX, false, false, false, false});
    s.stiffness[1][1] = s.stiffness[2][2] = k;
    return s;
}

inline PointLoad force(double x, double fx, double fy, double fz)
{
    return {x, {fx, fy, fz}, {}};
}
inline PointLoad moment(double x, double mx, double my, double mz)
{
    return {x, {}, {mx, my, mz}};
}
inline LineLoad line(double x0, double x1, double qy0, double qy1)
{
    return {x0, x1, {0, qy0, 0}, {0, qy1, 0}, 0, 0};
}

inline LoadCase loads(std::vector<PointLoad> points, std::vector<LineLoad> lines = {})
{
    LoadCase c;
    c.point_loads = std::move(points);
    c.line_loads = std::move(lines);
    return c;
}

inline Solution solveOne(const Model& m, const LoadCase& c)
{
    return solve(m, std::vector<LoadCase>{c});
}

inline State at(const Solution& s, double x, Side side = Side::left)
{
    return stateAt(s, 0, x, side);
}

inline bool has(const Findings& findings, const std::string& code, Severity severity)
{
    return std::any_of(findings.begin(), findings.end(),
                       [&](const Finding& f) { return f.code == code && f.severity == severity; });
}

} // namespace beamtest
