#pragma once
// Internal to core/drawing: the true section of one bearing row, class by class. Local axes: x = 0 in the middle of the
// width, r = y from the shaft axis, upper half; canonical orientation: the bearing holds the shaft from moving to +x
// (outer back face right, effective centre left).

#include "core/drawing/section_builder.h"

#include <string_view>

namespace shaftwright::drawing
{

/// Ribs of a cylindrical roller bearing, canonical orientation.
struct Ribs {
    bool inner_left = false, inner_right = false, outer_left = true, outer_right = true;
    bool loose_inner_right = false; ///< NUP: the right inner rib is a ring of its own
};
enum class Covers { none, shields, seals };

/// What a section is drawn from. Lengths mm.
struct RowDimensions {
    GeometryClass geometry_class = GeometryClass::deep_groove_ball;
    double d = 0.0, D = 0.0, W = 0.0;                              ///< bore, outside, width along the axis (tapered: T; axial: H)
    double cone_width = 0.0, cup_width = 0.0, cup_small_end = 0.0; ///< tapered: B, C, E
    double inner_raceway = 0.0;                                    ///< needle: F_w
    double chamfer = 0.0;                                          ///< r_s
    bool inner_ring = true;                                        ///< needle: with an inner ring
    InternalGeometry inside;
    Ribs ribs;
    Covers covers_left = Covers::none, covers_right = Covers::none;
    double effective_from_back = 0.0; ///< a, effective centre from the outer back face; 0: radial contact

    [[nodiscard]] double section() const { return 0.5 * (D - d); }
};

/// Dimensions for drawing; inside from the row, else by the generic proportions. None when the row cannot be drawn true to
/// its kind (dimension missing, not finite, no room for the elements): then outline and sign stand for it.
[[nodiscard]] std::optional<RowDimensions> dimensionsOf(const CatalogueRow& row, Family family);

/// Draws the row; false when its parts do not fit into its own boundary dimensions (nothing drawn then).
[[nodiscard]] bool drawRow(SectionBuilder& builder, const RowDimensions& row, const Hatching& ring, const Hatching& other);

/// Bearing sign of ISO 8826-1 (general) or ISO 8826-2 in the outline of the row.
enum class Sign {
    general,
    one_row,
    two_rows,
    self_aligning_one_row,
    self_aligning,
    angular,
    angular_O,
    angular_X,
    needle,
    four_point,
    thrust,
    thrust_double,
    thrust_spherical,
    thrust_angular,
    plain
};
[[nodiscard]] Sign signOf(const CatalogueRow& row, Family family);
void drawSign(SectionBuilder& builder, Sign sign, double bore_mm, double outer_mm, double width_mm);

/// Plain bush: wall with outside chamfers; `liner_mm` > 0: sliding layer inside, drawn solid.
void drawBush(SectionBuilder& builder, double bore_mm, double outer_mm, double width_mm, double liner_mm,
              const Hatching& hatching);

} // namespace shaftwright::drawing
