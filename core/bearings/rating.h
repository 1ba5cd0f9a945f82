#pragma once
// What a chosen bearing is rated for: one row, or a set combined by ISO 281:2007 5.1 and 7.1.

#include "core/base/derivation.h"
#include "core/model/arrangement.h"

#include <optional>
#include <string>
#include <vector>

namespace shaftwright {

/// Which axial senses a family can hold; independent of size.
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
    std::optional<double> axial_limit_N; ///< stated by the row
    std::string series;                 ///< of the first row
    bool Dpw_assumed = false;           ///< D_pw = (d + D)/2, the inside is not known
    std::optional<Carries> carries;     ///< of a member of a composite
    std::optional<InternalGeometry> geometry; ///< of one row
    /// Composites only: what stands side by side at the support, each with its own load. C_N, C0_N and the exponent are
    /// then those of the first member; P and P0 are referred to them, so that life and S0 come out for the whole.
    std::vector<BearingRating> members;
    Derivation derivation;              ///< how C, C0, Cu of the set came about (not of the row's geometry)
};

/// Set of like bearings at one support: ISO 281:2007, 5.1 and 7.1 (paired mounting); ISO 76:2006 for C0.
/// A set family with one row given counts as two of it; a set of unlike rows is rated by the weakest of them.
/// Without rows C, C0 stay 0 and nothing is rated.
[[nodiscard]] BearingRating ratingOf(const BearingChoice& choice);
/// Rating of one row that stands alone, as the family.
[[nodiscard]] BearingRating ratingOf(const CatalogueRow& row, Family family);

/// Family of a row by its class and contact angle alone; cylindrical rows count as NU, needle rows as with inner ring.
[[nodiscard]] Family familyByInside(const CatalogueRow& row);

[[nodiscard]] AxialSense axialSense(Family family);
/// False for thrust bearings at 90 deg.
[[nodiscard]] bool carriesRadial(Family family);

/// Whether the bearing can keep the shaft from moving in that sense. `carries` is the side of a one-way bearing; a row's
/// own side goes first. A one-way bearing without a stated side is taken to be mounted the right way.
[[nodiscard]] bool holdsSense(const BearingChoice& choice, std::optional<Carries> carries, Carries sense);

/// Distance of the effective (pressure) centre from the seat middle along +x: -s (Dpw/2) tan alpha, s = +1 carries plus,
/// -1 minus; 0 for all families but angular contact and tapered rows that stand alone or in tandem. A row's own `pressure_centre_mm` goes first.
[[nodiscard]] double centreOffset_mm(const BearingChoice& choice, std::optional<Carries> carries);

} // namespace shaftwright
