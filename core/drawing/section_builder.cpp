#include "core/drawing/section_builder.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::drawing
{

namespace
{

template <class Draw> void forHalves(Half half, const Draw& draw)
{
    if (half != Half::lower)
        draw(false);
    if (half != Half::upper)
        draw(true);
}

} // namespace

Contour rectangle(double x0, double y0, double x1, double y1)
{
    return {{x0, y0, 0.0}, {x1, y0, 0.0}, {x1, y1, 0.0}, {x0, y1, 0.0}};
}

double SectionBuilder::spacingFor_mm(double thickness_mm) const
{
    constexpr double closest_mm = 0.9; // clear gap of thin lines >= 0.7 mm, ISO 128 (from memory)
    return std::clamp(onSheet_mm(thickness_mm) * 0.42, std::min(closest_mm, style_.hatch_spacing_mm), style_.hatch_spacing_mm);
}

Contour SectionBuilder::laid(const Contour& contour, bool lower) const
{
    Contour result;
    result.reserve(contour.size());
    const double sx = mirrored_ ? -style_.scale : style_.scale, sy = lower ? -style_.scale : style_.scale;
    const double turn = (mirrored_ != lower) ? -1.0 : 1.0;
    for (const Vertex& vertex : contour)
        result.push_back({sx * vertex.x + style_.scale * dx_mm_, sy * vertex.y, turn * vertex.bulge});
    return result;
}

Point SectionBuilder::laid(Point point, bool lower) const
{
    const double sx = mirrored_ ? -style_.scale : style_.scale;
    return {sx * point.x + style_.scale * dx_mm_, (lower ? -style_.scale : style_.scale) * point.y};
}

void SectionBuilder::cut(const std::vector<Contour>& contours, const Hatching& hatching, Half half)
{
    const bool toned = style_.detail < Detail::section;
    std::vector<Contour> placed;
    placed.reserve(contours.size() * 2);
    for (const Contour& contour : contours)
        forHalves(half, [&](bool lower) { placed.push_back(laid(contour, lower)); });
    if (toned) {
        for (Contour& contour : placed)
            group_.items.emplace_back(Path{std::move(contour), true, edge(), Ink::ink, Ink::rule});
        return;
    }
    for (const Contour& contour : placed)
        group_.items.emplace_back(Path{contour, true, Stroke::none, Ink::ink, Ink::paper});
    Hatch hatch;
    hatch.contours = placed;
    // A mirrored neighbour leans the other way: one part, one angle, whichever way round it stands.
    hatch.angle_deg = hatching.angle_deg;
    hatch.spacing_mm = hatching.spacing_mm;
    hatch.phase_mm = style_.hatch_phase_mm;
    if (hatching.crossed) {
        Hatch other = hatch;
        other.angle_deg = -hatching.angle_deg;
        group_.items.emplace_back(std::move(other));
    }
    group_.items.emplace_back(std::move(hatch));
    for (Contour& contour : placed)
        group_.items.emplace_back(Path{std::move(contour), true, edge(), Ink::ink, {}});
}

void SectionBuilder::hatchOnly(const Contour& contour, const Hatching& hatching, Half half)
{
    Hatch hatch;
    forHalves(half, [&](bool lower) { hatch.contours.push_back(laid(contour, lower)); });
    hatch.angle_deg = hatching.angle_deg;
    hatch.spacing_mm = hatching.spacing_mm;
    hatch.phase_mm = style_.hatch_phase_mm;
    group_.items.emplace_back(std::move(hatch));
}

void SectionBuilder::solid(const Contour& contour, Half half)
{
    forHalves(half, [&](bool lower) {
        group_.items.emplace_back(Path{laid(contour, lower), true, Stroke::thin, Ink::ink, Ink::ink});
    });
}

void SectionBuilder::white(const Contour& contour, Half half, Stroke stroke, Ink fill)
{
    const Stroke drawn = stroke == Stroke::thick ? edge() : stroke;
    forHalves(half, [&](bool lower) { group_.items.emplace_back(Path{laid(contour, lower), true, drawn, Ink::ink, fill}); });
}

void SectionBuilder::circle(Point centre, double radius_mm, Half half)
{
    forHalves(half, [&](bool lower) {
        const Point at = laid(centre, lower);
        group_.items.emplace_back(Circle{at.x, at.y, onSheet_mm(radius_mm), edge(), Ink::ink, Ink::paper});
    });
}

void SectionBuilder::line(Point from, Point to, Stroke stroke, Half half, Ink ink)
{
    curve({{from.x, from.y, 0.0}, {to.x, to.y, 0.0}}, stroke, half, ink);
}

void SectionBuilder::curve(const Contour& contour, Stroke stroke, Half half, Ink ink, bool closed)
{
    const Stroke drawn = stroke == Stroke::thick ? edge() : stroke;
    forHalves(half, [&](bool lower) { group_.items.emplace_back(Path{laid(contour, lower), closed, drawn, ink, {}}); });
}

void SectionBuilder::cross(Point centre, double along_mm, double across_mm, double angle_rad, Half half)
{
    const double c = std::cos(angle_rad), s = std::sin(angle_rad);
    line({centre.x - along_mm * c, centre.y - along_mm * s}, {centre.x + along_mm * c, centre.y + along_mm * s}, Stroke::centre,
         half);
    line({centre.x + across_mm * s, centre.y - across_mm * c}, {centre.x - across_mm * s, centre.y + across_mm * c},
         Stroke::centre, half);
}

void SectionBuilder::axisMark(double x_mm, double sheetDiameter_mm, Ink ink)
{
    const Point at = laid(Point{x_mm, 0.0}, false);
    group_.items.emplace_back(Circle{at.x, at.y, 0.5 * sheetDiameter_mm, Stroke::thin, ink, Ink::paper});
}

Group SectionBuilder::take(Layer layer)
{
    group_.layer = layer;
    computeBounds(group_);
    return std::move(group_);
}

} // namespace shaftwright::drawing
