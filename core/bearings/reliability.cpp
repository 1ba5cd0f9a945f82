#include "core/bearings/load_rating.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace shaftwright
{
namespace
{

// ISO 281:2007 Table 12 (from memory).
struct ReliabilityNode {
    double percent, a1;
};
constexpr std::array<ReliabilityNode, 14> table12 = {{{90.0, 1.0},
                                                      {95.0, 0.64},
                                                      {96.0, 0.55},
                                                      {97.0, 0.47},
                                                      {98.0, 0.37},
                                                      {99.0, 0.25},
                                                      {99.2, 0.22},
                                                      {99.4, 0.19},
                                                      {99.6, 0.16},
                                                      {99.8, 0.12},
                                                      {99.9, 0.093},
                                                      {99.92, 0.087},
                                                      {99.94, 0.080},
                                                      {99.95, 0.077}}};

// Three-parameter Weibull law behind the table (ISO/TR 1281-2, from memory): no failure before 5 % of L10, slope 1.5.
constexpr double noFailureBefore = 0.05, slope = 1.5;
const double unitHazard = std::log(1.0 / 0.9);

double slopeOf(const SystemMember& member)
{
    return member.roller ? 9.0 / 8.0 : 10.0 / 9.0;
}

} // namespace

double a1(double reliability_percent)
{
    const double S = std::clamp(reliability_percent, 50.0, 99.95);
    for (const ReliabilityNode& node : table12) {
        if (std::abs(node.percent - S) < 1e-9)
            return node.a1;
    }
    return noFailureBefore + (1.0 - noFailureBefore) * std::pow(std::log(100.0 / S) / unitHazard, 1.0 / slope);
}

double survival(double hours_at, double L10_h)
{
    const double ratio = hours_at / L10_h;
    if (ratio <= noFailureBefore)
        return 1.0;
    return std::exp(-unitHazard * std::pow((ratio - noFailureBefore) / (1.0 - noFailureBefore), slope));
}

SystemLife systemLife(std::span<const SystemMember> members, std::optional<double> required_h)
{
    SystemLife out;
    if (members.empty())
        return out;
    double least = 0.0;
    for (const SystemMember& member : members) {
        if (!(member.L10_h > 0.0) || !std::isfinite(member.L10_h))
            return out;
        least = least == 0.0 ? member.L10_h : std::min(least, member.L10_h);
    }
    out.slope = slopeOf(members.front());
    for (const SystemMember& member : members) {
        if (slopeOf(member) != out.slope) {
            out.slope = 0.0;
            break;
        }
    }
    if (members.size() == 1) {
        out.L10_h = least;
    } else if (out.slope > 0.0) {
        double sum = 0.0;
        for (const SystemMember& member : members)
            sum += std::pow(least / member.L10_h, out.slope);
        out.L10_h = least * std::pow(sum, -1.0 / out.slope);
    } else {
        // The sum rises strictly with t and is at least 1 at the shortest life; halving cannot leave the root.
        double low = 0.0, high = least;
        for (int i = 0; i < 200 && high - low > 1e-15 * least; ++i) {
            const double t = 0.5 * (low + high);
            double sum = 0.0;
            for (const SystemMember& member : members)
                sum += std::pow(t / member.L10_h, slopeOf(member));
            (sum < 1.0 ? low : high) = t;
        }
        out.L10_h = 0.5 * (low + high);
    }
    if (required_h && *required_h >= 0.0) {
        double product = 1.0;
        for (const SystemMember& member : members)
            product *= survival(*required_h, member.L10_h);
        out.reliability_at_required = product;
    }
    return out;
}

} // namespace shaftwright
