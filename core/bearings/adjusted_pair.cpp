#include "core/bearings/load_law.h"
#include "core/bearings/load_rating.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright
{
namespace
{

using namespace bearings;

constexpr double degree = std::numbers::pi / 180.0;
constexpr int iterationLimit = 200;
constexpr double iterationTolerance = 1e-13; // of Fr; the iteration contracts by 0.36 a step or better

/// S/Fr at the axial load S itself.
double inducedFactor(const BearingRating& rating, LoadLaw law, InducedLoadRule rule, double S_N)
{
    const factors::LoadFactors f = loadFactors(rating, law, relativeAxialLoad(rating, law, S_N));
    // A radial contact has no Y of its own at its limit but the e that goes with it.
    return rule == InducedLoadRule::half_Fr_over_Y && law == LoadLaw::angular ? 0.5 / f.Y2 : f.e;
}

/// S of an inclined or radial ball contact at its own axial load; 0 where the row lacks what that takes.
double ballInduced_N(const BearingRating& rating, LoadLaw law, double Fr_N, InducedLoadRule rule)
{
    if (needsF0(rating, law) && !(rating.C0_N > 0.0))
        return 0.0;
    double S_N = 0.5 * Fr_N;
    for (int i = 0; i < iterationLimit; ++i) {
        const double next_N = inducedFactor(rating, law, rule, S_N) * Fr_N;
        const double change_N = std::abs(next_N - S_N);
        S_N = next_N;
        if (change_N <= iterationTolerance * Fr_N)
            break;
    }
    return S_N;
}

} // namespace

double inducedLoadQuick_N(const BearingRating& rating, double Fr_N, InducedLoadRule rule)
{
    Fr_N = std::abs(Fr_N);
    const LoadLaw law = lawOf(rating);
    if (!std::isfinite(Fr_N) || twoRows(rating))
        return 0.0;
    if (law == LoadLaw::inclined_roller) {
        const double Y = loadFactors(rating, law, 0.0).Y2;
        return Y > 0.0 ? 0.5 / Y * Fr_N : 0.0;
    }
    return law == LoadLaw::angular || law == LoadLaw::deep_groove ? ballInduced_N(rating, law, Fr_N, rule) : 0.0;
}

InducedLoad inducedLoad(const BearingRating& rating, double Fr_N, InducedLoadRule rule)
{
    InducedLoad out;
    Fr_N = std::abs(Fr_N);
    if (!std::isfinite(Fr_N))
        return out;
    const LoadLaw law = lawOf(rating);
    if (twoRows(rating))
        return out;
    if (law == LoadLaw::inclined_roller) {
        const factors::LoadFactors f = loadFactors(rating, law, 0.0);
        if (!(f.Y2 > 0.0))
            return out;
        out.factor = 0.5 / f.Y2;
        out.S_N = out.factor * Fr_N;
        if (!rating.Y)
            out.derivation.push_back({"axial_factor",
                                      "Y",
                                      "0.40 cot(alpha)",
                                      {{"alpha", rating.contact_angle_rad / degree}},
                                      f.Y2,
                                      "",
                                      "ISO 281:2007, Table 8 (from memory)"});
        out.derivation.push_back({"induced_load",
                                  "S",
                                  "Fr / (2 Y)",
                                  {{"Fr", Fr_N}, {"Y", f.Y2}},
                                  out.S_N,
                                  "N",
                                  "Eschmann, Hasbargen & Weigand, Ball and Roller Bearings (from memory)"});
        return out;
    }
    if (law != LoadLaw::angular && law != LoadLaw::deep_groove)
        return out;
    if (needsF0(rating, law) && !(rating.C0_N > 0.0))
        return out;

    const double S_N = ballInduced_N(rating, law, Fr_N, rule);
    const double rel = relativeAxialLoad(rating, law, S_N);
    const factors::LoadFactors f = loadFactors(rating, law, rel);
    out.factor = inducedFactor(rating, law, rule, S_N);
    out.S_N = S_N;
    const char* source = "common practice";
    if (needsF0(rating, law))
        out.derivation.push_back({"relative_axial_load",
                                  "rel",
                                  "f0 S / C0",
                                  {{"f0", rating.f0.value_or(assumedF0)}, {"S", S_N}, {"C0", rating.C0_N}},
                                  rel,
                                  "",
                                  "ISO 281:2007, Table 3 (from memory)"});
    if (rule == InducedLoadRule::half_Fr_over_Y && law == LoadLaw::angular)
        out.derivation.push_back({"induced_load",
                                  "S",
                                  "0.5 Fr / Y",
                                  {{"Fr", Fr_N}, {"Y", f.Y2}},
                                  S_N,
                                  "N",
                                  "Roloff/Matek, Maschinenelemente (from memory)"});
    else
        out.derivation.push_back({"induced_load", "S", "e Fr", {{"e", f.e}, {"Fr", Fr_N}}, S_N, "N", source});
    return out;
}

PairAxialLoads adjustedPair(double S_plus_N, double S_minus_N, double K_N)
{
    PairAxialLoads out;
    const double viaMinus_N = S_minus_N + K_N, viaPlus_N = S_plus_N - K_N;
    out.plus_N = std::max(S_plus_N, viaMinus_N);
    out.minus_N = std::max(S_minus_N, viaPlus_N);
    out.plus_at_own = S_plus_N >= viaMinus_N;
    out.minus_at_own = S_minus_N >= viaPlus_N;
    const char* source = "common practice; equilibrium along the shaft";
    const NamedValues inputs = {{"S+", S_plus_N}, {"S-", S_minus_N}, {"K", K_N}};
    out.derivation.push_back({"pair_axial_plus", "Fa+", "max(S+, S- + K)", inputs, out.plus_N, "N", source});
    out.derivation.push_back({"pair_axial_minus", "Fa-", "max(S-, S+ - K)", inputs, out.minus_N, "N", source});
    return out;
}

PreloadedLoads preloadedPair(double preload_N, double K_N, double contact_exponent)
{
    PreloadedLoads out;
    const double n = contact_exponent;
    out.lift_off_N = std::pow(2.0, n) * preload_N;
    if (K_N >= out.lift_off_N) {
        out.lifted = preload_N > 0.0 || K_N > 0.0;
        out.loaded_N = K_N;
        return out;
    }
    // (1+z)^n - (1-z)^n rises strictly from 0 to 2^n on 0..1, so halving always closes in on the one root.
    double low = 0.0, high = 1.0;
    for (int i = 0; i < 200 && high - low > 1e-16; ++i) {
        const double z = 0.5 * (low + high);
        const double sum = preload_N * (std::pow(1.0 + z, n) - std::pow(1.0 - z, n));
        (sum < K_N ? low : high) = z;
    }
    const double z = 0.5 * (low + high);
    out.relieved_N = preload_N * std::pow(1.0 - z, n);
    out.loaded_N = out.relieved_N + K_N;
    return out;
}

SprungLoads sprungPair(double spring_N, double K_N)
{
    SprungLoads out;
    if (K_N >= -spring_N) {
        out.sprung_N = spring_N;
        out.fixed_N = spring_N + K_N;
        return out;
    }
    // The spring gives way: the fixed bearing is free and the stop behind the spring holds the rest.
    out.sprung_N = -K_N;
    out.shaft_moves = true;
    return out;
}

} // namespace shaftwright
