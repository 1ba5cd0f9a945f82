#pragma once
// X, Y, e and X0, Y0 of ISO 281:2007 and ISO 76:2006. Private to core/bearings. Nothing here allocates.
// All tables are from memory; each was checked against the closed forms behind it: e = (1 - X2)/Y2 within rounding,
// two rows = 1.625 times one row for X2 and Y2, grids of relative axial load = deep groove grid / cos alpha.

#include <array>
#include <cstddef>
#include <span>

namespace shaftwright::factors
{

/// P = max(X1 Fr + Y1 Fa, X2 Fr + Y2 Fa). The tables are rounded, so their two branches miss each other at e by up to 1 %;
/// the larger of both is continuous in the loads, never below Fr, and picks the same branch away from e.
struct LoadFactors {
    double X1 = 1.0, Y1 = 0.0, X2 = 1.0, Y2 = 0.0, e = 0.0;
};

/// Contact angles for which ISO 281:2007 Table 3 gives factors.
inline constexpr double leastAngularAngle_deg = 5.0, greatestRadialAngle_deg = 45.0;
inline constexpr std::size_t relNodes = 9;

/// One contact angle of ISO 281:2007 Table 3. From 20 deg on the values do not depend on the relative axial load.
struct AngularColumn {
    double alpha_deg;
    bool depends_on_load;
    std::array<double, relNodes> rel, e;
    double X2_single;
    std::array<double, relNodes> Y2_single, Y1_double;
    double X2_double;
    std::array<double, relNodes> Y2_double;
};
[[nodiscard]] std::span<const AngularColumn> angularColumns();

/// Place of a value between two nodes; low == high at and beyond the ends.
struct Bracket {
    std::size_t low = 0, high = 0;
    double weight = 0.0; ///< of the high node
    [[nodiscard]] double in(const std::array<double, relNodes>& values) const
    {
        return values[low] + weight * (values[high] - values[low]);
    }
};
[[nodiscard]] Bracket bracket(const std::array<double, relNodes>& nodes, double value);

/// ISO 281:2007 Table 3, radial contact groove ball bearings; grid of f0 Fa/C0r, e, Y2.
[[nodiscard]] const std::array<double, relNodes>& deepGrooveRel();
[[nodiscard]] const std::array<double, relNodes>& deepGrooveE();
[[nodiscard]] const std::array<double, relNodes>& deepGrooveY();
inline constexpr double deepGrooveX = 0.56;

[[nodiscard]] LoadFactors deepGroove(double rel);
/// Factors of one column at its own grid.
[[nodiscard]] LoadFactors angularAt(const AngularColumn& column, bool two_rows, double rel);
/// Linear in alpha between the two neighbouring columns. @pre 5 <= alpha_deg <= 45
[[nodiscard]] LoadFactors angular(double alpha_deg, bool two_rows, double rel);
/// Self-aligning ball, ISO 281:2007 Table 3.
[[nodiscard]] LoadFactors selfAligning(double tan_alpha, bool two_rows);
/// Radial roller with inclined contact (tapered, spherical), ISO 281:2007 Table 8.
[[nodiscard]] LoadFactors radialRoller(double tan_alpha, bool two_rows);
/// Thrust ball, 45 < alpha < 90 deg, ISO 281:2007 Table 5 in closed form. One direction: branch 1 does not exist.
[[nodiscard]] LoadFactors thrustBall(double alpha_rad);
/// Thrust roller, 45 < alpha < 90 deg, ISO 281:2007 Table 11.
[[nodiscard]] LoadFactors thrustRoller(double alpha_rad);

/// ISO 76:2006, angular contact ball, one row: Y0 linear in alpha (X0 = 0.5); two rows: twice that (X0 = 1).
[[nodiscard]] double angularY0(double alpha_deg);

} // namespace shaftwright::factors
