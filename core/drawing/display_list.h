#pragma once
// One display list of primitives in millimetres on the sheet feeds the window, SVG, PDF and PNG. Nothing draws straight
// to a device. y points UP (radius up); renderers flip. The origin is chosen by each builder and stated there.

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace shaftwright::drawing
{

/// Line types of ISO 128-2. Widths: thick 0.5 mm, thin 0.25 mm, medium 0.35 mm.
enum class Stroke { none, thick, medium, thin, hidden, centre, phantom, hairline };

/// Meaning of a colour; the renderer maps it to the theme. Never the only mark of a meaning.
enum class Ink {
    ink,
    ink2,
    ink3,
    live,
    live_soft,
    hatch,
    edge,
    rule,
    grid,
    paper,
    panel,
    card,
    shaft,
    stop,
    stop_soft,
    caution,
    caution_soft,
    met,
    met_soft
};

struct Vertex {
    double x = 0.0, y = 0.0;
    double bulge = 0.0; ///< tan(sweep / 4) of the segment that starts here, positive = counter-clockwise (y up)
};

struct Path {
    std::vector<Vertex> vertices;
    bool closed = false;
    Stroke stroke = Stroke::thick;
    Ink ink = Ink::ink;
    std::optional<Ink> fill;
};

struct Circle {
    double x = 0.0, y = 0.0, radius = 0.0;
    Stroke stroke = Stroke::thick;
    Ink ink = Ink::ink;
    std::optional<Ink> fill;
};

/// Hatching of closed contours (even-odd) at an angle; renderers that cannot tile use `lines`.
struct Hatch {
    std::vector<std::vector<Vertex>> contours;
    double angle_deg = 45.0, spacing_mm = 1.6, phase_mm = 0.0;
    Ink ink = Ink::hatch;
};

enum class HAlign { left, centre, right };
enum class VAlign { baseline, middle, top };
enum class Font { drawing, window }; ///< ISO 3098 lettering, or the window's text font

struct Text {
    double x = 0.0, y = 0.0;
    double height_mm = 2.5; ///< of capitals
    std::string text;       ///< UTF-8
    HAlign h = HAlign::left;
    VAlign v = VAlign::baseline;
    double angle_deg = 0.0; ///< counter-clockwise
    Ink ink = Ink::ink;
    Font font = Font::drawing;
    bool bold = false;
    bool paper_ground = false; ///< paper-coloured box behind the text
};

using Primitive = std::variant<Path, Circle, Hatch, Text>;

/// Painting order of groups, lowest first.
enum class Layer { ground, behind, shaft, part, bearing, key, dimension, load, support, strip, card, overlay };

/// What belongs together: one shaft segment, one part, one bearing, one dimension ...
struct Group {
    std::string subject; ///< path of what it shows, "parts.G1", "supports.B", "shaft.segments.s3"; empty: decoration
    std::string handle;  ///< what a drag or click on it does, e.g. "x_mm", "outer_mm", "length_mm", "mesh_angle_deg"; empty: none
    Layer layer = Layer::part;
    std::vector<Primitive> items;
    std::array<double, 4> bounds{0, 0, 0, 0}; ///< xmin, ymin, xmax, ymax for hit tests
};

struct DisplayList {
    std::vector<Group> groups;
    void append(DisplayList other);
    /// Moves everything by (dx, dy).
    void translate(double dx, double dy);
    [[nodiscard]] std::size_t primitiveCount() const;
};

/// Fills Group::bounds from its items (texts by the table of advances).
void computeBounds(Group& group);

/// Width of a text in mm at a height of capitals, from the table of osifont advances (resources/drawing).
[[nodiscard]] double textWidth_mm(const std::string& text, double height_mm, Font font = Font::drawing);

/// Straight segments of a hatch: exact clip of parallel lines against the contours, phase tied to the sheet origin.
[[nodiscard]] std::vector<std::array<double, 4>> hatchLines(const Hatch& hatch);

} // namespace shaftwright::drawing
