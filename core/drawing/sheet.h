#pragma once
// The sheet: drawing with dimensions, loads and supports, end view, strips and support cards, all on one x scale.

#include "core/analysis/assessment.h"
#include "core/drawing/display_list.h"
#include "core/drawing/sections.h"
#include "core/model/arrangement.h"

#include <optional>
#include <string>
#include <vector>

namespace shaftwright::drawing
{

enum class Plane { y, z, resultant };
enum class StripKind { shear, moment, torque, axial, deflection, slope };

/// What is shown. View state: neither in the file nor undone.
struct SheetView {
    double scale = 1.0;          ///< sheet mm per model mm
    double pixels_per_mm = 3.78; ///< of the device, decides the level of detail
    int case_index = -1;         ///< -1: all cases (envelope, governing values)
    Plane plane = Plane::z;
    std::string selected; ///< subject of the selection, "supports.B"
    std::vector<StripKind> strips{StripKind::moment, StripKind::deflection};
    double strip_height_mm = 18.0;
    double held_force_N = 0.0;            ///< > 0: scale of arrows is held during a drag
    std::optional<double> held_strip_max; ///< reserved per strip by the caller, see stripList
    bool dimensions = true;
    bool loads = true;
    double label_height_mm = 2.5;     ///< capitals of loads, strips, end view
    double dimension_height_mm = 3.5; ///< capitals of dimensions (ISO 3098)
    Font label_font = Font::window;   ///< dimensions always use the drawing font
    std::optional<Detail> detail;     ///< level of detail shown before, see viewDetail; unset: none
};

/// Index of the case whose forces are drawn: the chosen one; with all cases shown the governing case of the support with the
/// least life against its requirement, else the case with the largest radial reaction. -1 without cases.
[[nodiscard]] int shownCase(const Assessment& assessment, const SheetView& view);
/// Largest force of the case that is drawn (loads and reactions, radial resultant or axial); what `held_force_N` holds.
[[nodiscard]] double largestForce_N(const Assessment& assessment, const SheetView& view);
/// Level of detail of the whole view, by the smallest bearing (one kind of representation on one drawing, ISO 8826-1). A level
/// in `view.detail` is left only when its bound is passed by the hysteresis: the caller stores the result there for the next
/// picture.
[[nodiscard]] Detail viewDetail(const Arrangement& arrangement, const SheetView& view);

/// x in sheet mm of a model x. Same for drawing, strips, ruler, cards.
[[nodiscard]] double sheetX_mm(const SheetView& view, double x_mm);

/// Shaft, parts, bearings. Origin: left face of the shaft on the axis.
[[nodiscard]] DisplayList drawingList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view);
/// Load arrows, support signs, reactions, sense of rotation. Same origin.
[[nodiscard]] DisplayList loadList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view);
/// Chain of bearing and load planes, overall length, diameters, and lengths of segments: all of them with up to eight segments
/// or on a bare shaft, else that of the selected one. Same origin.
/// `Group::handle` is the path of the input that an edit in place changes: "supports.B.x_mm", "parts.G1.x_mm",
/// "shaft.segments.s3.length_mm", "shaft.segments.s3.outer_mm"; see planeDimensions for the chain.
[[nodiscard]] DisplayList dimensionList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view);
/// One dimension of the chain, and of the overall length (the last entry). Typing `value` into it sets the input at `path`
/// to offset_mm + sign * value.
struct PlaneDimension {
    double from_mm = 0.0, to_mm = 0.0;
    std::string subject, path;
    double offset_mm = 0.0, sign = 1.0;
};
[[nodiscard]] std::vector<PlaneDimension> planeDimensions(const Arrangement& arrangement);
/// Height of the drawing above and below the axis in sheet mm, with loads and dimensions.
struct Extent {
    double above_mm = 0.0, below_mm = 0.0, left_mm = 0.0, right_mm = 0.0;
};
[[nodiscard]] Extent drawingExtent(const Arrangement& arrangement, const SheetView& view);

/// View from the right end (+y right, +z up): tip and pitch circles, shaft, mates as thin outlines, handles for mesh and belt
/// directions (subject "parts.G1", handle "mesh_angle_deg", "direction_deg" or "further_meshes.0.mesh_angle_deg"), vectors of
/// loads and reactions, sense of rotation. Origin: shaft axis. `radius_mm`: sheet radius of the largest circle of the shaft's
/// own parts; mates and labels reach to endViewReach_mm, the caption stands on top of that.
inline constexpr double endViewCaption_mm = 12.0;
[[nodiscard]] double endViewReach_mm(double radius_mm);
[[nodiscard]] DisplayList endViewList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view,
                                      double radius_mm);

/// One strip: zero line, ticks, curve or envelope over the cases, labelled extremes. Origin: left face at the top edge of the
/// strip, y down to -strip_height_mm. Head and tick labels stand left of x = 0 within stripHead_mm. `held_range`: keeps the value
/// scale while dragging; out: the range used.
inline constexpr double stripHead_mm = 40.0;
/// Value scale of a strip: limits together with the unit they are in, so that both are held or neither.
struct StripRange {
    double low = 0.0, high = 0.0;
    std::string unit{};  ///< "N m"; empty: the limits are in the unit that the strip chooses
    double factor = 0.0; ///< unit per N, Nmm, mm or rad; read only with a unit
};
[[nodiscard]] DisplayList stripList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view,
                                    StripKind kind, std::optional<StripRange> held_range = {}, StripRange* used = nullptr);
/// Value of a strip under the hairline in the unit of the strip; with all cases the largest by amount and its case.
/// At a jump `value` is the larger of both limits by amount.
struct StripReading {
    double value = 0.0;
    double left = 0.0, right = 0.0;
    bool jump = false;
    std::string unit;
    int case_index = -1; /**< -1: no value */
};
/// `held_range`: the range that the strip was drawn with; the reading is in its unit.
[[nodiscard]] StripReading readStrip(const Assessment& assessment, const SheetView& view, StripKind kind, double x_mm,
                                     const std::optional<StripRange>& held_range = {});
/// Height of a value on a strip with this range, sheet mm, 0 at the top edge, down to -strip_height_mm.
[[nodiscard]] double stripY_mm(const SheetView& view, const StripRange& range, double value);
[[nodiscard]] std::string stripTitle(StripKind kind, Plane plane);

/// What the sign of a strip means, one sentence.
[[nodiscard]] std::string stripSignNote(StripKind kind, Plane plane);

/// A complete page (A3 landscape by default) with frame and title block for `draw`: drawing, end view, strips, cards.
/// Origin lower left corner of the page.
/// `wanted`: case, plane, strips and selection of the view; scale, lettering and heights are the page's own.
struct Page {
    double width_mm = 420.0, height_mm = 297.0;
    DisplayList list;
    std::string scale_text; /**< "1:2" */
};
[[nodiscard]] Page pageOf(const Arrangement& arrangement, const Assessment& assessment, const SheetView& wanted);
/// All cases, plane z, shear, moment, torque and deflection.
[[nodiscard]] Page pageOf(const Arrangement& arrangement, const Assessment& assessment);

/// One support card in the box (0, 0) to (width, height), text in mm; full form from 66 mm width and 30 mm height on, else
/// compact.
[[nodiscard]] DisplayList supportCard(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view,
                                      const Support& support, double width_mm, double height_mm);

/// SVG 1.1 text of a page. Same bytes for the same input.
struct SvgMeta {
    std::string title, description;
};
[[nodiscard]] std::string svg(const DisplayList& list, double width_mm, double height_mm, const SvgMeta& meta, bool dark = false);

} // namespace shaftwright::drawing
