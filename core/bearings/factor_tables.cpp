#include "core/bearings/factor_tables.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::factors
{
namespace
{

using Nodes = std::array<double, relNodes>;

constexpr Nodes same(double value)
{
    Nodes nodes{};
    for (double& node : nodes)
        node = value;
    return nodes;
}

// ISO 281:2007 Table 3, radial contact groove ball bearings (from memory). The grid is 25, 50, 100, 150, 200, 300, 500,
// 750, 1000 lbf/in^2 in MPa.
constexpr Nodes radialRel = {0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89};
constexpr Nodes radialE = {0.19, 0.22, 0.26, 0.28, 0.30, 0.34, 0.38, 0.42, 0.44};
constexpr Nodes radialY = {2.30, 1.99, 1.71, 1.55, 1.45, 1.31, 1.15, 1.04, 1.00};

// ISO 281:2007 Table 3, angular contact ball bearings (from memory). One row at 5 deg has the factors of the radial
// contact groove on the grid of 5 deg, as the table refers to them.
constexpr std::array<AngularColumn, 9> columns = {{
    {5.0,
     true,
     {0.173, 0.346, 0.692, 1.04, 1.38, 2.08, 3.46, 5.19, 6.92},
     {0.23, 0.26, 0.30, 0.34, 0.36, 0.40, 0.45, 0.50, 0.52},
     deepGrooveX,
     radialY,
     {2.78, 2.40, 2.07, 1.87, 1.75, 1.58, 1.39, 1.26, 1.21},
     0.78,
     {3.74, 3.23, 2.78, 2.52, 2.36, 2.13, 1.87, 1.69, 1.63}},
    {10.0,
     true,
     {0.175, 0.350, 0.700, 1.05, 1.40, 2.10, 3.50, 5.25, 7.00},
     {0.29, 0.32, 0.36, 0.38, 0.40, 0.44, 0.49, 0.54, 0.54},
     0.46,
     {1.88, 1.71, 1.52, 1.41, 1.34, 1.23, 1.10, 1.01, 1.00},
     {2.18, 1.98, 1.76, 1.63, 1.55, 1.42, 1.27, 1.17, 1.16},
     0.75,
     {3.06, 2.78, 2.47, 2.29, 2.18, 2.00, 1.79, 1.64, 1.63}},
    {15.0,
     true,
     {0.178, 0.357, 0.714, 1.07, 1.43, 2.14, 3.57, 5.35, 7.14},
     {0.38, 0.40, 0.43, 0.46, 0.47, 0.50, 0.55, 0.56, 0.56},
     0.44,
     {1.47, 1.40, 1.30, 1.23, 1.19, 1.12, 1.02, 1.00, 1.00},
     {1.65, 1.57, 1.46, 1.38, 1.34, 1.26, 1.14, 1.12, 1.12},
     0.72,
     {2.39, 2.28, 2.11, 2.00, 1.93, 1.82, 1.66, 1.63, 1.63}},
    {20.0, false, radialRel, same(0.57), 0.43, same(1.00), same(1.09), 0.70, same(1.63)},
    {25.0, false, radialRel, same(0.68), 0.41, same(0.87), same(0.92), 0.67, same(1.41)},
    {30.0, false, radialRel, same(0.80), 0.39, same(0.76), same(0.78), 0.63, same(1.24)},
    {35.0, false, radialRel, same(0.95), 0.37, same(0.66), same(0.66), 0.60, same(1.07)},
    {40.0, false, radialRel, same(1.14), 0.35, same(0.57), same(0.55), 0.57, same(0.93)},
    {45.0, false, radialRel, same(1.34), 0.33, same(0.50), same(0.47), 0.54, same(0.81)},
}};

// ISO 76:2006, angular contact ball bearings, one row (from memory).
constexpr std::array<double, 9> staticY0 = {0.52, 0.50, 0.46, 0.42, 0.38, 0.33, 0.29, 0.26, 0.22};

double mix(double low, double high, double weight)
{
    return low + weight * (high - low);
}

/// Index of the column at or below alpha, so that index + 1 exists.
std::size_t columnBelow(double alpha_deg)
{
    const double steps = (alpha_deg - leastAngularAngle_deg) / 5.0;
    const auto index = static_cast<std::size_t>(std::max(0.0, steps)); // cut off, not rounded
    return std::min(index, columns.size() - 2);
}

} // namespace

std::span<const AngularColumn> angularColumns()
{
    return columns;
}

const Nodes& deepGrooveRel()
{
    return radialRel;
}

const Nodes& deepGrooveE()
{
    return radialE;
}

const Nodes& deepGrooveY()
{
    return radialY;
}

Bracket bracket(const Nodes& nodes, double value)
{
    if (!(value > nodes.front()))
        return {0, 0, 0.0};
    if (value >= nodes.back())
        return {relNodes - 1, relNodes - 1, 0.0};
    std::size_t high = 1;
    while (nodes[high] < value)
        ++high;
    return {high - 1, high, (value - nodes[high - 1]) / (nodes[high] - nodes[high - 1])};
}

LoadFactors deepGroove(double rel)
{
    const Bracket at = bracket(radialRel, rel);
    return {1.0, 0.0, deepGrooveX, at.in(radialY), at.in(radialE)};
}

LoadFactors angularAt(const AngularColumn& column, bool two_rows, double rel)
{
    const Bracket at = column.depends_on_load ? bracket(column.rel, rel) : Bracket{};
    if (two_rows)
        return {1.0, at.in(column.Y1_double), column.X2_double, at.in(column.Y2_double), at.in(column.e)};
    // One row at 5 deg is read as a radial contact groove, so its e is that of the groove too.
    const double e = column.alpha_deg == leastAngularAngle_deg ? at.in(radialE) : at.in(column.e);
    return {1.0, 0.0, column.X2_single, at.in(column.Y2_single), e};
}

LoadFactors angular(double alpha_deg, bool two_rows, double rel)
{
    const std::size_t index = columnBelow(alpha_deg);
    const double weight = (alpha_deg - columns[index].alpha_deg) / 5.0;
    // Exactly on a column the neighbour has no say, and angles read from radians land a rounding error beside it.
    if (std::abs(weight) < 1e-9)
        return angularAt(columns[index], two_rows, rel);
    if (std::abs(weight - 1.0) < 1e-9)
        return angularAt(columns[index + 1], two_rows, rel);
    const LoadFactors low = angularAt(columns[index], two_rows, rel);
    const LoadFactors high = angularAt(columns[index + 1], two_rows, rel);
    return {1.0, mix(low.Y1, high.Y1, weight), mix(low.X2, high.X2, weight), mix(low.Y2, high.Y2, weight),
            mix(low.e, high.e, weight)};
}

LoadFactors selfAligning(double tan_alpha, bool two_rows)
{
    if (two_rows)
        return {1.0, 0.42 / tan_alpha, 0.65, 0.65 / tan_alpha, 1.5 * tan_alpha};
    return {1.0, 0.0, 0.40, 0.40 / tan_alpha, 1.5 * tan_alpha};
}

LoadFactors radialRoller(double tan_alpha, bool two_rows)
{
    if (two_rows)
        return {1.0, 0.45 / tan_alpha, 0.67, 0.67 / tan_alpha, 1.5 * tan_alpha};
    return {1.0, 0.0, 0.40, 0.40 / tan_alpha, 1.5 * tan_alpha};
}

LoadFactors thrustBall(double alpha_rad)
{
    const double tangent = std::tan(alpha_rad), sine = std::sin(alpha_rad);
    return {20.0 / 13.0 * tangent * (1.0 - sine / 3.0), 10.0 / 13.0 * (1.0 - sine / 3.0),
            1.25 * tangent * (1.0 - 2.0 / 3.0 * sine), 1.0, 1.25 * tangent};
}

LoadFactors thrustRoller(double alpha_rad)
{
    const double tangent = std::tan(alpha_rad);
    return {1.5 * tangent, 0.67, tangent, 1.0, 1.5 * tangent};
}

double angularY0(double alpha_deg)
{
    const std::size_t index = columnBelow(alpha_deg);
    return mix(staticY0[index], staticY0[index + 1], (alpha_deg - columns[index].alpha_deg) / 5.0);
}

} // namespace shaftwright::factors
