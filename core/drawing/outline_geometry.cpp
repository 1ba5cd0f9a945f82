#include "core/drawing/outline_geometry.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::drawing
{

namespace
{

constexpr double pi = 3.14159265358979323846;
constexpr double straightBelow = 1e-9; ///< bulges below are straight lines

} // namespace

Arc arcOf(const Vertex& from, const Vertex& to)
{
    // With h = half chord: radius = h / sin(sweep / 2), centre = middle + left normal * h / tan(sweep / 2).
    const double dx = to.x - from.x, dy = to.y - from.y;
    const double half = 0.5 * std::hypot(dx, dy);
    Arc arc;
    arc.sweep_rad = 4.0 * std::atan(from.bulge);
    const double b = from.bulge;
    arc.radius = half * (1.0 + b * b) / (2.0 * std::abs(b));
    const double lift = half > 0.0 ? (1.0 - b * b) / (4.0 * b) : 0.0; // times the chord vector turned left
    arc.centre = {0.5 * (from.x + to.x) - dy * lift, 0.5 * (from.y + to.y) + dx * lift};
    arc.start_rad = std::atan2(from.y - arc.centre.y, from.x - arc.centre.x);
    return arc;
}

double bulgeAbout(Point from, Point to, Point centre, bool counterClockwise)
{
    const double start = std::atan2(from.y - centre.y, from.x - centre.x);
    const double end = std::atan2(to.y - centre.y, to.x - centre.x);
    double sweep = std::fmod(end - start, 2.0 * pi);
    if (sweep < 0.0)
        sweep += 2.0 * pi;
    if (!counterClockwise)
        sweep -= 2.0 * pi;
    return std::tan(0.25 * sweep);
}

void Bounds::add(double x, double y)
{
    x_low = std::min(x_low, x);
    x_high = std::max(x_high, x);
    y_low = std::min(y_low, y);
    y_high = std::max(y_high, y);
}

void Bounds::add(const Contour& contour, bool closed)
{
    const std::size_t count = contour.size();
    for (std::size_t i = 0; i < count; ++i) {
        add(contour[i].x, contour[i].y);
        if (std::abs(contour[i].bulge) < straightBelow || (i + 1 == count && !closed))
            continue;
        // Extreme points of the circle on the arc's side of the chord, without angles: this runs for every arc of every picture.
        const Vertex& from = contour[i];
        const Vertex& to = contour[(i + 1) % count];
        const double b = from.bulge, dx = to.x - from.x, dy = to.y - from.y;
        const double lift = (1.0 - b * b) / (4.0 * b);
        const double radius = std::sqrt(dx * dx + dy * dy) * (1.0 + b * b) / (4.0 * std::abs(b));
        const Point centre{0.5 * (from.x + to.x) - dy * lift, 0.5 * (from.y + to.y) + dx * lift};
        for (const Point extreme : {Point{centre.x + radius, centre.y}, Point{centre.x - radius, centre.y},
                                    Point{centre.x, centre.y + radius}, Point{centre.x, centre.y - radius}}) {
            const double side = dx * (extreme.y - from.y) - dy * (extreme.x - from.x); // left of the chord: positive
            if (side * b < 0.0)
                add(extreme.x, extreme.y);
        }
    }
}

std::vector<Point> flattened(const Contour& contour, bool closed, double chordError)
{
    std::vector<Point> points;
    points.reserve(contour.size() * 2);
    const std::size_t count = contour.size();
    for (std::size_t i = 0; i < count; ++i) {
        points.push_back({contour[i].x, contour[i].y});
        if (std::abs(contour[i].bulge) < straightBelow || (i + 1 == count && !closed))
            continue;
        const Arc arc = arcOf(contour[i], contour[(i + 1) % count]);
        if (!(arc.radius > 0.0))
            continue;
        // Sagitta of one chord: radius (1 - cos(step / 2)).
        const double ratio = std::clamp(1.0 - chordError / arc.radius, -1.0, 1.0);
        const double step = std::max(2.0 * std::acos(ratio), 0.01);
        const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(arc.sweep_rad) / step)));
        for (int piece = 1; piece < pieces; ++piece) {
            const double angle = arc.start_rad + arc.sweep_rad * piece / pieces;
            points.push_back({arc.centre.x + arc.radius * std::cos(angle), arc.centre.y + arc.radius * std::sin(angle)});
        }
    }
    return points;
}

Contour mirroredAtAxis(Contour contour)
{
    for (Vertex& vertex : contour) {
        vertex.y = -vertex.y;
        vertex.bulge = -vertex.bulge;
    }
    return contour;
}

Contour mirroredAtCentre(Contour contour)
{
    for (Vertex& vertex : contour) {
        vertex.x = -vertex.x;
        vertex.bulge = -vertex.bulge;
    }
    return contour;
}

Contour scaledAndMoved(Contour contour, double factor, double dx, double dy)
{
    for (Vertex& vertex : contour) {
        vertex.x = factor * vertex.x + dx;
        vertex.y = factor * vertex.y + dy;
    }
    return contour;
}

Contour softened(const Contour& contour, const std::vector<double>& values)
{
    const std::size_t count = contour.size();
    Contour result;
    result.reserve(count * 2);
    for (std::size_t i = 0; i < count; ++i) {
        const Vertex& before = contour[(i + count - 1) % count];
        const Vertex& here = contour[i];
        const Vertex& after = contour[(i + 1) % count];
        const double value = i < values.size() ? values[i] : 0.0;
        if (value == 0.0 || before.bulge != 0.0 || here.bulge != 0.0) {
            result.push_back(here);
            continue;
        }
        const double inLength = std::hypot(here.x - before.x, here.y - before.y);
        const double outLength = std::hypot(after.x - here.x, after.y - here.y);
        if (!(inLength > 0.0) || !(outLength > 0.0)) {
            result.push_back(here);
            continue;
        }
        const Point in{(here.x - before.x) / inLength, (here.y - before.y) / inLength};
        const Point out{(after.x - here.x) / outLength, (after.y - here.y) / outLength};
        const double turn = std::atan2(in.x * out.y - in.y * out.x, in.x * out.x + in.y * out.y); // > 0: left
        if (std::abs(turn) < 1e-6 || std::abs(turn) > pi - 1e-6) {
            result.push_back(here);
            continue;
        }
        // Tangent length of a fillet of radius r in a corner that turns by `turn`: r tan(turn / 2).
        double tangent = value > 0.0 ? value * std::tan(0.5 * std::abs(turn)) : -value;
        tangent = std::min({tangent, 0.49 * inLength, 0.49 * outLength});
        const double bulge = value > 0.0 ? std::tan(0.25 * turn) : 0.0;
        result.push_back({here.x - in.x * tangent, here.y - in.y * tangent, bulge});
        result.push_back({here.x + out.x * tangent, here.y + out.y * tangent, 0.0});
    }
    return result;
}

} // namespace shaftwright::drawing
