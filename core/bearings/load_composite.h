#pragma once
// How the loads of a composite's members become one P and P0 of the whole. Private to core/bearings.

#include "core/bearings/load_law.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shaftwright::bearings
{

/// Weibull slope at which the members of one support are joined (Lundberg/Palmgren, point contact; the cautious one).
inline constexpr double jointSlope = 10.0 / 9.0;

/// P of the whole such that (C/P)^p is the joint life of the members. NaN when a member is not rated.
template <class MemberP>
double jointP_N(const BearingRating& whole, double Fr_N, double Fa_N, std::optional<Carries> sense, MemberP memberP)
{
    double sum = 0.0;
    for (const BearingRating& member : whole.members) {
        const MemberLoad load = memberLoad(whole, member, Fr_N, Fa_N, sense);
        const double P = memberP(member, load);
        if (!std::isfinite(P) || !(member.C_N > 0.0))
            return std::numeric_limits<double>::quiet_NaN();
        sum += std::pow(P / member.C_N, member.life_exponent * jointSlope);
    }
    return whole.C_N * std::pow(sum, 1.0 / (whole.life_exponent * jointSlope));
}

/// P0 of the whole such that C0/P0 is the least S0 of the members.
template <class MemberP0>
double jointP0_N(const BearingRating& whole, double Fr_N, double Fa_N, std::optional<Carries> sense, MemberP0 memberP0)
{
    double share = 0.0;
    for (const BearingRating& member : whole.members) {
        const MemberLoad load = memberLoad(whole, member, Fr_N, Fa_N, sense);
        const double P0 = memberP0(member, load);
        if (!std::isfinite(P0) || !(member.C0_N > 0.0))
            return std::numeric_limits<double>::quiet_NaN();
        share = std::max(share, P0 / member.C0_N);
    }
    return whole.C0_N * share;
}

} // namespace shaftwright::bearings
