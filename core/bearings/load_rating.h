#pragma once
// From the load of one bearing to P, P0, life and static safety. ISO 281:2007, ISO 76:2006.
// Loads here are magnitudes >= 0 (Fr_N, Fa_N).

#include "core/base/finding.h"
#include "core/bearings/rating.h"

#include <optional>
#include <span>
#include <vector>

namespace shaftwright {

struct EquivalentLoad {
    std::optional<double> P_N;          ///< none: not rated for this load, see findings
    double X = 1.0, Y = 0.0, e = 0.0;
    double relative_axial_load = 0.0;   ///< f0 (i) Fa / C0, 0 where it has no meaning
    bool axial_branch = false;          ///< Fa/Fr > e governs
    Findings findings;
    Derivation derivation;
};
/// P = max(X1 Fr + Y1 Fa, X2 Fr + Y2 Fa) for radial families; thrust families by 1.8 of the method brief.
[[nodiscard]] EquivalentLoad equivalentLoad(const BearingRating& rating, double Fr_N, double Fa_N);

/// The same P without findings, derivation or allocation, for suggestions over hundreds of rows.
/// NaN when not rated for this load.
[[nodiscard]] double equivalentLoadQuick_N(const BearingRating& rating, double Fr_N, double Fa_N);

struct StaticLoad {
    std::optional<double> P0_N;
    std::optional<double> S0;           ///< C0 / P0; none when P0 = 0
    double X0 = 1.0, Y0 = 0.0;
    Findings findings;
    Derivation derivation;
};
[[nodiscard]] StaticLoad staticLoad(const BearingRating& rating, double Fr_N, double Fa_N);
[[nodiscard]] double staticLoadQuick_N(const BearingRating& rating, double Fr_N, double Fa_N);

/// Least S0 for the motion and running quality asked (ISO 76:2006, informative table).
[[nodiscard]] double requiredS0(const BearingRating& rating, Grade quiet, bool turning, bool shocks);

/// L10 in 10^6 revolutions. @pre C_N > 0, P_N > 0
[[nodiscard]] double ratingLife_Mrev(double C_N, double P_N, double life_exponent);
/// Hours at |speed|; @pre speed != 0
[[nodiscard]] double hours(double life_Mrev, double speed_rpm);

/// a1 by ISO 281:2007 Table 12 at its nodes, by the law behind it between them. 50 <= S <= 99.95.
[[nodiscard]] double a1(double reliability_percent);

/// Survival of one bearing at time t (three-parameter law, slope 1.5, ISO/TR 1281-2).
[[nodiscard]] double survival(double hours_at, double L10_h);

/// One case of a duty: what it asks of a bearing.
struct DutyPoint {
    double time_share = 1.0, speed_rpm = 0.0;
    std::optional<double> P_N;          ///< none: no rating in this case
};
struct DutyLife {
    std::optional<double> L10_h, L10_Mrev, P_mean_N;
    double mean_speed_rpm = 0.0;
    std::vector<double> damage_share;   ///< per point, sum 1; 0 for standstill and unloaded
    std::vector<std::optional<double>> L10_h_each;
    int governing = -1;                 ///< index of the largest damage share
};
/// Miner over the cases, each with its own P. Cases with P = 0 do no damage; a turning case without a rating makes L10 none.
[[nodiscard]] DutyLife dutyLife(double C_N, double life_exponent, std::span<const DutyPoint> points);

// --- Adjusted pairs ----------------------------------------------------------------------------------------------

struct InducedLoad {
    double S_N = 0.0;
    double factor = 0.0; ///< S / Fr
    Derivation derivation;
};
[[nodiscard]] InducedLoad inducedLoad(const BearingRating& rating, double Fr_N, InducedLoadRule rule);

struct PairAxialLoads {
    double plus_N = 0.0, minus_N = 0.0;   ///< Fa of the bearing that carries plus, minus
    bool plus_at_own = false, minus_at_own = false; ///< sits at its own induced load
    Derivation derivation;
};
/// Fa_plus = max(S_plus, S_minus + K), Fa_minus = max(S_minus, S_plus - K); K external axial sum, + along +x.
[[nodiscard]] PairAxialLoads adjustedPair(double S_plus_N, double S_minus_N, double K_N);

// --- All bearings together -----------------------------------------------------------------------------------------

struct SystemMember {
    double L10_h = 0.0;
    bool roller = false;
};
struct SystemLife {
    std::optional<double> L10_h;
    double slope = 0.0;                  ///< 10/9, 9/8; 0: mixed
    std::optional<double> reliability_at_required; ///< product of three-parameter survivals
};
[[nodiscard]] SystemLife systemLife(std::span<const SystemMember> members, std::optional<double> required_h);

/// Least load to make the elements roll: P >= ratio * C; 0 when the family is treated apart.
[[nodiscard]] double leastLoadRatio(Family family);

} // namespace shaftwright
