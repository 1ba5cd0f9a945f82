#pragma once
// Basic dynamic and static ratings of one bearing from its internal geometry: ISO 281:2007, ISO 76:2006, with the
// factors in closed form (ISO/TR 1281-1, ISO/TR 10657). Nothing here knows a designation. N, mm, MPa, rad.

#include "core/base/derivation.h"
#include "core/base/result.h"
#include "core/model/catalogue_row.h"

#include <optional>
#include <span>

namespace shaftwright
{

/// Ratings of a bearing with all its rows, and the factors they came from. Axial for contact angles above 45 deg.
struct BasicRating {
    double gamma = 0.0; ///< D_w cos alpha / D_pw; D_w / D_pw at 90 deg
    double b_m = 0.0;   ///< ISO 281: factor for contemporary steel
    double f_c = 0.0;   ///< ISO 281: factor of geometry and accuracy
    double f_0 = 0.0;   ///< ISO 76: factor of geometry; 0 for rollers
    double C_N = 0.0;   ///< basic dynamic rating
    double C0_N = 0.0;  ///< basic static rating
    double Cu_N = 0.0;  ///< fatigue load limit, estimate of ISO 281:2007 B.3.3
    bool axial = false; ///< contact angle above 45 deg: C and C0 are axial
    Findings findings;  ///< `geometry-gamma-range` (note): gamma outside the tables of the standard
};

/// @return the ratings; else `value-invalid` naming the member of the geometry at fault (path "geometry.<member>").
/// Groove radii within the limits of the standards (inner 0.52, outer 0.53; self-aligning inner 0.53; thrust 0.54) and
/// 0 (not stated) give the factors of the standards' tables; larger ones enter with their true size.
[[nodiscard]] Result<BasicRating> basicRating(GeometryClass geometry_class, const InternalGeometry& geometry);

/// The same calculation written out; the last steps are Cu by the estimate and, for balls with stated groove radii, by
/// Hertz. Empty when basicRating refuses the geometry.
[[nodiscard]] Derivation basicRatingDerivation(GeometryClass geometry_class, const InternalGeometry& geometry);

/// Fatigue load limit from the load at 1500 MPa (ISO 281:2007 B.3.2) with the geometry's own groove radii.
/// None for rollers: a line contact without profile would come out 1.4 times too high.
[[nodiscard]] std::optional<double> fatigueLoadLimitHertz_N(GeometryClass geometry_class, const InternalGeometry& geometry);

[[nodiscard]] bool isRoller(GeometryClass geometry_class);

// --- Factors in closed form ----------------------------------------------------------------------------------------

/// f_c of radial and angular contact ball bearings (ISO/TR 1281-1). lambda: 0.95 one row and angular contact,
/// 0.90 deep groove of two rows, 1.00 self-aligning. Groove radii over D_w, outer may be infinite. 0 < gamma < 1.
[[nodiscard]] double fcRadialBall(double gamma, double lambda, double conformity_inner, double conformity_outer);
/// f_c of thrust ball bearings, 45 deg < alpha <= 90 deg (ISO/TR 1281-1).
[[nodiscard]] double fcThrustBall(double gamma, double contact_angle_rad, double conformity_inner = 0.535,
                                  double conformity_outer = 0.535);
/// f_c of radial roller bearings (ISO/TR 1281-1, 207.9 as the rounded table of ISO 281 asks).
[[nodiscard]] double fcRadialRoller(double gamma);
/// f_c of thrust roller bearings, 45 deg < alpha <= 90 deg, by the column of ISO 281 (50, 65, 80, 90 deg).
[[nodiscard]] double fcThrustRoller(double gamma, double contact_angle_rad);

/// f_0 of radial and angular contact ball bearings at 4200 MPa (ISO/TR 10657).
[[nodiscard]] double f0RadialBall(double gamma, double conformity_inner = 0.52, double conformity_outer = 0.53);
/// f_0 of self-aligning ball bearings at 4600 MPa, outer raceway a sphere.
[[nodiscard]] double f0SelfAligning(double gamma, double conformity_inner = 0.53);
/// f_0 of thrust ball bearings at 4200 MPa; gamma = D_w cos alpha / D_pw, 0 at 90 deg.
[[nodiscard]] double f0ThrustBall(double gamma, double conformity_inner = 0.54, double conformity_outer = 0.54);

/// C of rows that share the load: n^0.7 for balls, n^(7/9) for rollers (ISO 281:2007 5.1, 7.1). n >= 1
[[nodiscard]] double rowsFactor(bool roller, int rows);
/// C of two single-row deep groove bearings mounted as a unit, over C of one: 2^0.7 * 0.90 / 0.95.
[[nodiscard]] double deepGroovePairFactor();

/// One row of a thrust bearing whose rows carry in one direction.
struct ThrustRow {
    int elements = 0;
    double effective_length_mm = 0.0; ///< rollers only
    double C_N = 0.0;
};
/// ISO 281:2007 6.1 (balls), 8.1 (rollers). @pre each row has elements and C > 0
[[nodiscard]] double thrustRowsRating_N(std::span<const ThrustRow> rows, bool roller);

// --- Contact of a ball by Hertz --------------------------------------------------------------------------------------

struct EllipticIntegrals {
    double K = 0.0, E = 0.0;
};
/// Complete elliptic integrals with parameter m, 0 <= m < 1, by the arithmetic-geometric mean (relative 1e-15).
[[nodiscard]] EllipticIntegrals ellipticIntegrals(double m);

/// Axis ratio a/b >= 1 of the contact ellipse from the difference of curvatures F(rho), 0 <= F < 1 (relative 1e-12).
[[nodiscard]] double ellipseRatio(double curvature_difference);

/// Load of a steel ball (E = 207 000 MPa, nu = 0.3) that presses with this greatest pressure.
/// @param raceway_curvature_rolling_per_mm   of the raceway along the rolling direction, + convex
/// @param raceway_curvature_across_per_mm    of the groove across it, - for a groove
[[nodiscard]] double ballLoadAtPressure_N(double pressure_MPa, double ball_diameter_mm, double raceway_curvature_rolling_per_mm,
                                          double raceway_curvature_across_per_mm);

} // namespace shaftwright
