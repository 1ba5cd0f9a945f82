#pragma once
// Which load formula a rated bearing follows. Private to core/bearings. Nothing here allocates.

#include "core/bearings/factor_tables.h"
#include "core/bearings/rating.h"

#include <optional>

namespace shaftwright::bearings
{

enum class LoadLaw {
    none,        ///< not rated by a standard: plain, magnetic, linear
    bad_angle,   ///< contact angle for which the standard has no factors
    radial_only, ///< P = Fr: cylindrical, needle, toroidal
    deep_groove, ///< radial contact groove
    angular,     ///< angular contact ball, one row or two
    self_aligning,
    inclined_roller, ///< tapered, spherical
    axial_only,      ///< P = Fa: thrust at 90 deg
    thrust_ball_one_way,
    thrust_ball_two_way,
    thrust_roller_one_way,
    apart, ///< composite: every member its own load
};

[[nodiscard]] LoadLaw lawOf(const BearingRating& rating);
[[nodiscard]] bool isThrustLaw(LoadLaw law);
/// Two rows in the sense of the X, Y tables.
[[nodiscard]] bool twoRows(const BearingRating& rating);

/// f0 where a row states none and its inside is not known: middle of ISO 76:2006 Table 1 for usual bearings.
inline constexpr double assumedF0 = 14.0;
/// The factors depend on f0 Fa/C0.
[[nodiscard]] bool needsF0(const BearingRating& rating, LoadLaw law);
/// f0 (i) Fa / C0r as the table of the law enters it; 0 where it has no meaning.
[[nodiscard]] double relativeAxialLoad(const BearingRating& rating, LoadLaw law, double Fa_N);

/// Factors of a law with two branches. @pre law is neither none, bad_angle, radial_only, axial_only nor apart
[[nodiscard]] factors::LoadFactors loadFactors(const BearingRating& rating, LoadLaw law, double rel);

struct StaticFactors {
    double X0 = 1.0, Y0 = 0.0;
    bool least_Fr = false; ///< P0 is never below Fr
};
[[nodiscard]] StaticFactors staticFactors(const BearingRating& rating, LoadLaw law);

/// Loads of one member of a composite out of the loads of the whole.
struct MemberLoad {
    double Fr_N = 0.0, Fa_N = 0.0;
};
[[nodiscard]] MemberLoad memberLoad(const BearingRating& whole, const BearingRating& member, double Fr_N, double Fa_N,
                                    std::optional<Carries> sense);

/// Slack below which a force is the rounding error of the statics before it.
inline constexpr double noForce_N = 1e-6;
/// Axial force that the loose rings of a bearing without ribs stand by friction alone (common practice).
inline constexpr double looseRingAxialShare = 0.02;
/// Radial force that a thrust bearing at 90 deg stands beside its axial load (common practice).
inline constexpr double flatThrustRadialShare = 0.05;

} // namespace shaftwright::bearings
