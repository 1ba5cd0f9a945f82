#pragma once
// The sheet: drawing with dimensions, loads and supports, end view, strips and support cards, all on one x scale.

#include "core/analysis/assessment.h"
#include "core/drawing/display_list.h"
#include "core/drawing/sections.h"
#include "core/model/arrangement.h"

#include <optional>
#include <string>
#include <vector>

namespace shaftwright::drawing {

enum class Plane { y, z, resultant };
enum class StripKind { shear, moment, torque, axial, deflection, slope };

/// What is shown. View state: neither in the file nor undone.
struct SheetView {
    double scale = 1.0;            ///< sheet mm per model mm
    double pixels_per_mm = 3.78;   ///< of the device, decides the level of detail
    int case_index = -1;           ///< -1: all cases (envelope, governing values)
    Plane plane = Plane::z;
    std::string selected;          ///< subject of the selection, "supports.B"
    std::vector<StripKind> strips{StripKind::moment, StripKind::deflection};
    double strip_height_mm = 18.0;
    double held_force_N = 0.0;     ///< > 0: scale of arrows is held during a drag
    std::optional<double> held_strip_max; ///< reserved per strip by the caller, see stripList
    bool dimensions = true;
    bool loads = true;
};

/// x in sheet mm of a model x. Same for drawing, strips, ruler, cards.
[[nodiscard]] double sheetX_mm(const SheetView& view, double x_mm);

/// Shaft, parts, bearings. Origin: left face of the shaft on the axis.
[[nodiscard]] DisplayList drawingList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view);
/// Load arrows, support signs, reactions, sense of rotation. Same origin.
[[nodiscard]] DisplayList loadList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view);
/// Chain of bearing and load planes, diameters. Same origin; `handle` names what an edit in place changes.
[[nodiscard]] DisplayList dimensionList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view);
/// Height of the drawing above and below the axis in sheet mm, with loads and dimensions.
struct Extent { double above_mm = 0.0, below_mm = 0.0, left_mm = 0.0, right_mm = 0.0; };
[[nodiscard]] Extent drawingExtent(const Arrangement& arrangement, const SheetView& view);

/// View from the right end: section circle, mates as thin outlines, handles for mesh and belt directions, force vectors,
/// sense of rotation. Origin: shaft axis; radius in sheet mm given by the caller.
[[nodiscard]] DisplayList endViewList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view,
                                      double radius_mm);

/// One strip: zero line, ticks, curve or envelope, labelled extremes. Origin: left face at the top edge of the strip, y down to
/// -strip_height_mm. `held_range`: keeps the value scale while dragging; out: the range used.
struct StripRange { double low = 0.0, high = 0.0; };
[[nodiscard]] DisplayList stripList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view, StripKind kind,
                                    std::optional<StripRange> held_range = {}, StripRange* used = nullptr);
/// Value of a strip under the hairline with its unit, and its head ("Moment My", "N m").
struct StripReading { double value = 0.0; double left = 0.0, right = 0.0; bool jump = false; std::string unit; };
[[nodiscard]] StripReading readStrip(const Assessment& assessment, const SheetView& view, StripKind kind, double x_mm);
[[nodiscard]] std::string stripTitle(StripKind kind, Plane plane);

/// A complete page (A3 landscape by default) with frame and title block for `draw`: drawing, end view, strips, cards.
/// Origin lower left corner of the page.
struct Page { double width_mm = 420.0, height_mm = 297.0; DisplayList list; };
[[nodiscard]] Page pageOf(const Arrangement& arrangement, const Assessment& assessment);

/// SVG 1.1 text of a page. Same bytes for the same input.
struct SvgMeta { std::string title, description; };
[[nodiscard]] std::string svg(const DisplayList& list, double width_mm, double height_mm, const SvgMeta& meta, bool dark = false);

} // namespace shaftwright::drawing
