#pragma once
// From the load of one bearing to P, P0, life and static safety. ISO 281:2007, ISO 76:2006.
// Loads here are magnitudes >= 0 (Fr_N, Fa_N).

#include "core/base/finding.h"
#include "core/bearings/rating.h"

#include <optional>
#include <span>
#include <vector>

namespace shaftwright
{

struct EquivalentLoad {
    std::optional<double> P_N; ///< none: not rated for this load, see findings
    double X = 1.0, Y = 0.0, e = 0.0;
    double relative_axial_load = 0.0; ///< f0 (i) Fa / C0, 0 where it has no meaning
    bool axial_branch = false;        ///< Fa/Fr > e governs
    Findings findings;
    Derivation derivation;
};
/// P = max(X1 Fr + Y1 Fa, X2 Fr + Y2 Fa) for radial families (ISO 281:2007, 5.2 and 7.2), P = Fa or X Fr + Fa for thrust
/// families (6.2, 8.2). The signs of the forces do not matter.
/// @param sense which way the bearing keeps the shaft from moving in this case; only composites of unlike sides ask for it
/// P is none with a stop beside it: `value-invalid`, `axial-not-carried` (axial force on loose rings), `radial-on-thrust`,
/// `not-assessed` (no rating by these standards). With P: `axial-beyond-table`, `default-used` (f0).
[[nodiscard]] EquivalentLoad equivalentLoad(const BearingRating& rating, double Fr_N, double Fa_N,
                                            std::optional<Carries> sense = {});

/// The same P without findings, derivation or allocation, for suggestions over hundreds of rows.
/// NaN when not rated for this load.
[[nodiscard]] double equivalentLoadQuick_N(const BearingRating& rating, double Fr_N, double Fa_N,
                                           std::optional<Carries> sense = {});

struct StaticLoad {
    std::optional<double> P0_N;
    std::optional<double> S0; ///< C0 / P0; none when P0 = 0
    double X0 = 1.0, Y0 = 0.0;
    Findings findings;
    Derivation derivation;
};
/// P0 by ISO 76:2006, for the largest load (start, shock, standstill), not for the mean. Stops as `equivalentLoad`, with the
/// variant "static"; the sign of the forces does not matter.
[[nodiscard]] StaticLoad staticLoad(const BearingRating& rating, double Fr_N, double Fa_N, std::optional<Carries> sense = {});
/// The same P0 without findings, derivation or allocation; NaN when not rated for this load.
[[nodiscard]] double staticLoadQuick_N(const BearingRating& rating, double Fr_N, double Fa_N, std::optional<Carries> sense = {});

/// Least S0 for the motion and running quality asked (ISO 76:2006, informative table; standing: common practice).
[[nodiscard]] double requiredS0(const BearingRating& rating, Grade quiet, bool turning, bool shocks);
/// What a user's own S0 never counts below: turning 1 (ball), 1.5 (roller), standing 0. @return max(own, that)
[[nodiscard]] double settledS0(const BearingRating& rating, double own, bool turning);

/// L10 in 10^6 revolutions. @pre C_N > 0, P_N > 0
[[nodiscard]] double ratingLife_Mrev(double C_N, double P_N, double life_exponent);
/// Hours at |speed|; @pre speed != 0
[[nodiscard]] double hours(double life_Mrev, double speed_rpm);
/// C needed for a life. @pre all > 0
[[nodiscard]] double requiredC_N(double P_N, double life_h, double speed_rpm, double life_exponent);
/// L10 and L10h as steps. @pre C > 0, P > 0; the hours are left out at standstill
[[nodiscard]] Derivation ratingLifeSteps(double C_N, double P_N, double life_exponent, double speed_rpm);

/// a1 by ISO 281:2007 Table 12 at its nodes, by the law behind it between them (ISO/TR 1281-2).
/// 50 <= S <= 99.95; outside it the nearest end counts. Below 90 % the standard is silent: an estimate, not a rating.
[[nodiscard]] double a1(double reliability_percent);

/// Survival of one bearing at time t (three-parameter law, slope 1.5, ISO/TR 1281-2). Times >= 0; @pre L10_h > 0
[[nodiscard]] double survival(double hours_at, double L10_h);

/// One case of a duty: what it asks of a bearing.
struct DutyPoint {
    double time_share = 1.0, speed_rpm = 0.0;
    std::optional<double> P_N; ///< none: no rating in this case
};
struct DutyLife {
    std::optional<double> L10_h, L10_Mrev, P_mean_N;
    double mean_speed_rpm = 0.0;
    std::vector<double> damage_share; ///< per point, sum 1; 0 for standstill and unloaded
    std::vector<std::optional<double>> L10_h_each;
    int governing = -1;    ///< index of the largest damage share
    Derivation derivation; ///< n_m, P_m, L10, L10h; empty without a life
};
/// Miner over the cases, each with its own P. Cases with P = 0 do no damage; a turning case without a rating makes L10 none.
/// Shares are taken relative to their sum. A negative or not finite number in any point leaves every result empty.
/// A composite's cases are added as damage of the whole, which is never longer than adding per member.
[[nodiscard]] DutyLife dutyLife(double C_N, double life_exponent, std::span<const DutyPoint> points);

// --- Loads that vary within one case, at constant speed ---------------------------------------------------------------

/// Equivalent mean of a load that varies in time, exact for the life exponent p (linear damage).
/// Linear between two values >= 0.
[[nodiscard]] double meanOfLinear_N(double P_from_N, double P_to_N, double life_exponent);
/// |sin| between 0 and its peak.
[[nodiscard]] double meanOfSine_N(double P_peak_N, double life_exponent);
/// (1 + cos)/2 between 0 and its peak.
[[nodiscard]] double meanOfRaisedCosine_N(double P_peak_N, double life_exponent);
/// A steady force and one that turns against it (unbalance beside weight): mean of |F1 + F2| over the angle between them.
/// Accuracy: relative 1e-9.
[[nodiscard]] double meanOfSteadyAndRotating_N(double steady_N, double rotating_N, double life_exponent);

// --- Adjusted pairs ----------------------------------------------------------------------------------------------

struct InducedLoad {
    double S_N = 0.0;
    double factor = 0.0; ///< S / Fr
    Derivation derivation;
};
/// What a radial load pushes out of an inclined contact that is adjusted to zero clearance; only for adjusted supports.
/// Tapered: Fr/(2 Y). Angular contact from 20 deg: e Fr, or 0.5 Fr/Y by choice. Below 20 deg and deep groove, whose e and Y
/// depend on the axial load: the S that solves its own equation. 0 for all others (common practice).
[[nodiscard]] InducedLoad inducedLoad(const BearingRating& rating, double Fr_N, InducedLoadRule rule);
/// The same S without derivation or allocation.
[[nodiscard]] double inducedLoadQuick_N(const BearingRating& rating, double Fr_N, InducedLoadRule rule);

struct PairAxialLoads {
    double plus_N = 0.0, minus_N = 0.0;             ///< Fa of the bearing that carries plus, minus
    bool plus_at_own = false, minus_at_own = false; ///< sits at its own induced load
    Derivation derivation;
};
/// Fa_plus = max(S_plus, S_minus + K), Fa_minus = max(S_minus, S_plus - K); K external axial sum, + along +x.
[[nodiscard]] PairAxialLoads adjustedPair(double S_plus_N, double S_minus_N, double K_N);

/// Two like bearings pressed together with a force, external axial force on one of them.
struct PreloadedLoads {
    double loaded_N = 0.0, relieved_N = 0.0;
    double lift_off_N = 0.0; ///< external force at which the relieved bearing comes free: 2^n F0
    bool lifted = false;
};
/// Contact law F ~ delta^n; F0 ((1 + z)^n - (1 - z)^n) = K for z in 0..1; beyond lift-off loaded = K, relieved = 0.
/// n = 3/2 ball, 10/9 roller (line contact without profile, the cautious value).
/// With a radial load each bearing carries at least its induced load (common practice). @pre preload_N >= 0, K_N >= 0
[[nodiscard]] PreloadedLoads preloadedPair(double preload_N, double K_N, double contact_exponent);

/// A spring on a sliding outer ring presses the two bearings of a shaft together.
struct SprungLoads {
    double fixed_N = 0.0, sprung_N = 0.0;
    bool shaft_moves = false; ///< the external force against the spring is greater than the spring's
};
/// The sprung bearing keeps the spring force; the other takes it together with the external force.
/// @param K_N external axial force, + into the fixed bearing. @pre spring_N >= 0
[[nodiscard]] SprungLoads sprungPair(double spring_N, double K_N);

// --- All bearings together -----------------------------------------------------------------------------------------

struct SystemMember {
    double L10_h = 0.0;
    bool roller = false;
};
struct SystemLife {
    std::optional<double> L10_h;
    double slope = 0.0;                            ///< 10/9, 9/8; 0: mixed
    std::optional<double> reliability_at_required; ///< product of three-parameter survivals
};
/// Independent bearings: sum over (t/L_i)^slope_i = 1, slope 10/9 ball, 9/8 roller; a set of bearings counts once.
/// Members without a positive finite life leave the result empty.
[[nodiscard]] SystemLife systemLife(std::span<const SystemMember> members, std::optional<double> required_h);

// --- What is to be said about one bearing in one case -------------------------------------------------------------------

/// Circumstances of one case for `loadFindings`.
struct BearingCondition {
    double Fr_N = 0.0, Fa_N = 0.0; ///< magnitudes
    double speed_rpm = 0.0;        ///< 0: standing
    double time_share = 1.0;
    bool pressed = false;           ///< spring or preload stated
    bool short_peak = false;        ///< lasts a few seconds
    std::optional<Carries> sense;   ///< as in `equivalentLoad`; composites of unlike sides only
    std::optional<bool> sense_held; ///< false: the bearing is loaded in a sense that it cannot hold
};
/// Everything but what `equivalentLoad` already said: `axial-not-carried` (wrong sense), `bearing-unloaded`, `rib-load`,
/// `deep-groove-axial-limit`, `row-unloaded`, `four-point-low-axial`, `thrust-unloaded`, `below-minimum-load`,
/// `load-above-half-c`, `load-above-c`, `load-above-c0`, `speed-very-low`. Subject, path and case are left to the caller.
[[nodiscard]] Findings loadFindings(const BearingRating& rating, const BearingCondition& condition, const EquivalentLoad& load);
/// `static-low` when S0 is below the value required.
[[nodiscard]] Findings staticFindings(const BearingRating& rating, const StaticLoad& load, double required_S0);
/// `life-short`, `life-generous` for a life in the asked basis. @param C_over_P at the mean load; none: not judged
[[nodiscard]] Findings lifeFindings(std::optional<double> life_h, std::optional<double> required_h,
                                    std::optional<double> C_over_P);

/// Least axial load of a thrust bearing so that its elements do not slide by gyroscopic moment or weight; 0 where none applies.
/// Ball at 90 deg: Z rho pi Dw^3 Dpw omega^2/(240 mu), mu = 0.02 (after Harris, from memory), needs the inside of the bearing;
/// roller: 0.001 C0 (common practice).
[[nodiscard]] double leastThrustLoad_N(const BearingRating& rating, double speed_rpm);

/// Least load to make the elements roll: P >= ratio * C; 0 when the family is treated apart.
[[nodiscard]] double leastLoadRatio(Family family);

} // namespace shaftwright
