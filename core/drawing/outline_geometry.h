#pragma once
// Contours of straight lines and arcs: bounds, flattening, mirroring, rounding of corners. Lengths in the caller's unit.

#include "core/drawing/display_list.h"

#include <array>
#include <limits>
#include <vector>

namespace shaftwright::drawing
{

struct Point {
    double x = 0.0, y = 0.0;
};

using Contour = std::vector<Vertex>;

/// Arc of a bulge between two points.
struct Arc {
    Point centre;
    double radius = 0.0, start_rad = 0.0, sweep_rad = 0.0; ///< sweep > 0: counter-clockwise
};
[[nodiscard]] Arc arcOf(const Vertex& from, const Vertex& to);

/// Bulge of the arc from `from` to `to` about `centre`; counter-clockwise or clockwise, less than a full turn.
[[nodiscard]] double bulgeAbout(Point from, Point to, Point centre, bool counterClockwise);

/// Grows by what is put in; empty: low > high.
struct Bounds {
    double x_low = std::numeric_limits<double>::infinity(), y_low = std::numeric_limits<double>::infinity();
    double x_high = -std::numeric_limits<double>::infinity(), y_high = -std::numeric_limits<double>::infinity();

    void add(double x, double y);
    void add(const Contour& contour, bool closed); ///< exact, arcs included
    [[nodiscard]] bool empty() const { return x_low > x_high || y_low > y_high; }
};

/// Polygon with a chord error of at most `chordError`; a closed contour does not repeat its first point.
[[nodiscard]] std::vector<Point> flattened(const Contour& contour, bool closed, double chordError);

/// (x, y) -> (x, -y); the sense of the arcs turns round.
[[nodiscard]] Contour mirroredAtAxis(Contour contour);
/// (x, y) -> (-x, y).
[[nodiscard]] Contour mirroredAtCentre(Contour contour);
[[nodiscard]] Contour scaledAndMoved(Contour contour, double factor, double dx, double dy);

/// Rounds (value > 0: fillet radius) or breaks (value < 0: chamfer leg) the straight corners of a closed contour;
/// values[i] belongs to vertex i, 0 leaves it. A corner at an arc is left. Limited to 0.49 of each side.
[[nodiscard]] Contour softened(const Contour& contour, const std::vector<double>& values);

} // namespace shaftwright::drawing
