#pragma once
// What a chosen bearing is rated for: one row, or a set combined by ISO 281:2007 5.1 and 7.1.

#include "core/base/derivation.h"
#include "core/model/arrangement.h"

#include <optional>

namespace shaftwright {

/// How a family carries load (brief table of directions); independent of size.
enum class AxialSense { none, one_way, both_ways };

struct BearingRating {
    Family family = Family::deep_groove_ball;
    std::string designation;
    double C_N = 0.0, C0_N = 0.0;
    std::optional<double> Cu_N;
    double contact_angle_rad = 0.0;
    int rows = 1;                       ///< i of the X, Y tables (sets O, X: 2)
    int tandem = 1;                     ///< bearings side by side in one direction
    std::optional<double> f0;           ///< of one bearing
    double C0_single_N = 0.0;           ///< of one bearing of the set
    double Dpw_mm = 0.0;
    double dm_mm = 0.0;                 ///< (d + D) / 2
    double bore_mm = 0.0, outer_mm = 0.0, width_mm = 0.0;
    bool roller = false;
    double life_exponent = 3.0;         ///< p: 3 ball, 10/3 roller
    bool axial_bearing = false;         ///< contact angle > 45 deg: C, C0 are axial
    bool angular_or_tapered = false;    ///< one-way, needs a partner, has an induced load
    std::optional<double> e, X, Y, Y0;  ///< stated by the row; else the standard's factors
    std::optional<InternalGeometry> geometry; ///< of one row
    Derivation derivation;              ///< how C, C0, Cu of the set came about (not of the row's geometry)
};

/// @pre choice.rows not empty
[[nodiscard]] BearingRating ratingOf(const BearingChoice& choice);

[[nodiscard]] AxialSense axialSense(Family family);
/// False for thrust bearings at 90 deg.
[[nodiscard]] bool carriesRadial(Family family);

/// Distance of the effective (pressure) centre from the seat middle along +x: -s (Dpw/2) tan alpha, s = +1 carries plus,
/// -1 minus; 0 for all families but single angular contact and tapered rows. A row's own `pressure_centre_mm` goes first.
[[nodiscard]] double centreOffset_mm(const BearingChoice& choice, std::optional<Carries> carries);

} // namespace shaftwright
