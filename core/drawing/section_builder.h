#pragma once
// Internal to core/drawing: collects the areas of an axial section (model mm, upper half, y = radius) and lays them with
// their mirror images at the shaft axis on the sheet.

#include "core/drawing/outline_geometry.h"
#include "core/drawing/sections.h"

#include <initializer_list>
#include <vector>

namespace shaftwright::drawing
{

enum class Half { both, upper, lower };

/// Hatching of one part: neighbours differ in angle, one part is alike everywhere.
struct Hatching {
    double angle_deg = 45.0;
    double spacing_mm = 1.8; ///< on the sheet
    bool crossed = false;    ///< elastomers and plastics
};

class SectionBuilder
{
public:
    explicit SectionBuilder(const SectionStyle& style) : style_(style) {}

    /// Place of what follows: local x = 0 comes to dx_mm; `mirrored`: local +x points to -x.
    void place(double dx_mm, bool mirrored)
    {
        dx_mm_ = dx_mm;
        mirrored_ = mirrored;
    }
    [[nodiscard]] const SectionStyle& style() const { return style_; }
    [[nodiscard]] double onSheet_mm(double model_mm) const { return model_mm * style_.scale; }
    [[nodiscard]] double onModel_mm(double sheet_mm) const { return sheet_mm / style_.scale; }
    /// Spacing that gives an area of this thickness at least three strokes, not closer than 0.9 mm.
    [[nodiscard]] double spacingFor_mm(double thickness_mm) const;

    /// Cut areas of one part: ground, hatching, edges.
    void cut(const std::vector<Contour>& contours, const Hatching& hatching, Half half = Half::both);
    /// Hatching alone, for a broken-out section whose border is drawn by the caller.
    void hatchOnly(const Contour& contour, const Hatching& hatching, Half half);
    /// Thin sections: filled black.
    void solid(const Contour& contour, Half half = Half::both);
    /// What is not cut lengthwise: white with edges.
    void white(const Contour& contour, Half half = Half::both, Stroke stroke = Stroke::thick, Ink fill = Ink::paper);
    void circle(Point centre, double radius_mm, Half half = Half::both);
    void line(Point from, Point to, Stroke stroke, Half half = Half::both, Ink ink = Ink::ink);
    void curve(const Contour& contour, Stroke stroke, Half half = Half::both, Ink ink = Ink::ink, bool closed = false);
    /// Axis cross of a rolling element; `reach_mm` from the centre, turned by `angle_rad`.
    void cross(Point centre, double along_mm, double across_mm, double angle_rad, Half half = Half::both);
    /// Mark of constant size on the axis.
    void axisMark(double x_mm, double sheetDiameter_mm, Ink ink);

    [[nodiscard]] Group take(Layer layer);

private:
    [[nodiscard]] Contour laid(const Contour& contour, bool lower) const;
    [[nodiscard]] Point laid(Point point, bool lower) const;
    [[nodiscard]] Stroke edge() const { return style_.detail == Detail::tone_section ? Stroke::medium : Stroke::thick; }

    const SectionStyle& style_;
    Group group_;
    double dx_mm_ = 0.0;
    bool mirrored_ = false;
};

/// Closed axis-parallel rectangle, counter-clockwise from its lower left corner.
[[nodiscard]] Contour rectangle(double x0, double y0, double x1, double y1);

} // namespace shaftwright::drawing
