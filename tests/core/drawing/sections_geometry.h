#pragma once
// Plain polygon tests for drawn contours; none of it is used by the program.

#include "core/drawing/display_list.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace sections_geometry
{

struct P {
    double x, y;
};
using Polygon = std::vector<P>;

/// Corner points of a closed contour; arcs in 24 chords, found by the chord-and-height form of a circular arc.
inline Polygon polygonOf(const std::vector<shaftwright::drawing::Vertex>& contour)
{
    Polygon out;
    const std::size_t n = contour.size();
    for (std::size_t i = 0; i < n; ++i) {
        const auto& a = contour[i];
        const auto& b = contour[(i + 1) % n];
        out.push_back({a.x, a.y});
        if (std::abs(a.bulge) < 1e-12)
            continue;
        // Rational parametrisation of the arc: weights 1, cos(sweep / 2), 1 and the crossing of the tangents.
        const double sweep = 4.0 * std::atan(a.bulge), pieces = 24.0;
        const double dx = b.x - a.x, dy = b.y - a.y, c = std::hypot(dx, dy);
        const double radius = 0.5 * c / std::sin(0.5 * std::abs(sweep)), d = radius * std::cos(0.5 * sweep);
        const double side = a.bulge > 0.0 ? 1.0 : -1.0;
        const P m{0.5 * (a.x + b.x) - side * d * dy / c, 0.5 * (a.y + b.y) + side * d * dx / c};
        for (double k = 1.0; k < pieces; k += 1.0) {
            const double t = sweep * k / pieces, ct = std::cos(t), st = std::sin(t);
            out.push_back({m.x + (a.x - m.x) * ct - (a.y - m.y) * st, m.y + (a.x - m.x) * st + (a.y - m.y) * ct});
        }
    }
    return out;
}

inline double turn(P a, P b, P c)
{
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// No two edges that are not neighbours cross properly.
inline bool simple(const Polygon& polygon)
{
    const std::size_t n = polygon.size();
    for (std::size_t i = 0; i < n; ++i) {
        const P a = polygon[i], b = polygon[(i + 1) % n];
        const double x0 = std::min(a.x, b.x), x1 = std::max(a.x, b.x), y0 = std::min(a.y, b.y), y1 = std::max(a.y, b.y);
        for (std::size_t j = i + 2; j < n; ++j) {
            if (i == 0 && j == n - 1)
                continue;
            const P c = polygon[j], d = polygon[(j + 1) % n];
            if (std::min(c.x, d.x) > x1 || std::max(c.x, d.x) < x0 || std::min(c.y, d.y) > y1 || std::max(c.y, d.y) < y0)
                continue;
            const double t1 = turn(a, b, c), t2 = turn(a, b, d), t3 = turn(c, d, a), t4 = turn(c, d, b);
            const double grain = 1e-9;
            if (((t1 > grain && t2 < -grain) || (t1 < -grain && t2 > grain)) &&
                ((t3 > grain && t4 < -grain) || (t3 < -grain && t4 > grain)))
                return false;
        }
    }
    return true;
}

inline bool inside(const Polygon& polygon, P p)
{
    bool in = false;
    for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
        const P a = polygon[i], b = polygon[j];
        if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x)
            in = !in;
    }
    return in;
}

/// How deep a point lies inside a polygon; 0 outside.
inline double depth(const Polygon& polygon, P p)
{
    if (!inside(polygon, p))
        return 0.0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
        const P a = polygon[j], b = polygon[i];
        const double dx = b.x - a.x, dy = b.y - a.y, l2 = dx * dx + dy * dy;
        const double t = l2 > 0.0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / l2, 0.0, 1.0) : 0.0;
        least = std::min(least, std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy));
    }
    return least;
}

inline double middleY(const std::vector<shaftwright::drawing::Vertex>& contour)
{
    double sum = 0.0;
    for (const auto& vertex : contour)
        sum += vertex.y;
    return contour.empty() ? 0.0 : sum / static_cast<double>(contour.size());
}

} // namespace sections_geometry
