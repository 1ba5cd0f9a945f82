#pragma once
// The generic internal geometry: what the inside of a bearing with standard boundary dimensions usually looks like.
// Own rules. Proportions from handbooks (balls about 0.3 (D - d), filling angle near 190 deg, rollers 0.25 to
// 0.28 (D - d)); bearings on the market differ, C by about 15 %, C0 by about 25 %.

#include "core/base/result.h"
#include "core/model/catalogue_row.h"

namespace shaftwright
{

/// Boundary dimensions of one bearing, as a standard's table states them; 0 where a class has no such dimension.
struct BoundaryDimensions {
    double bore_mm = 0.0;               ///< d; drawn cup: F_w; double-direction thrust: d of the single bearing of the series
    double outer_mm = 0.0;              ///< D
    double width_mm = 0.0;              ///< B; tapered: T; axial bearings: H of one direction
    double inner_width_mm = 0.0;        ///< tapered: B of the cone
    double outer_width_mm = 0.0;        ///< tapered: C of the cup
    double inner_raceway_mm = 0.0;      ///< needle, drawn cup: F_w
    double contact_angle_deg = 0.0;     ///< nominal
    double centre_washer_mm = 0.0;      ///< double-direction thrust: height of the centre washer
    double centre_washer_bore_mm = 0.0; ///< double-direction thrust: bore of the centre washer
};

/// Proportions of one series; S = D - d. A row of resources/catalogue/series.csv. 0: not used by the class.
struct SeriesRule {
    GeometryClass geometry_class = GeometryClass::deep_groove_ball;
    double k = 0.0;        ///< element diameter over S; needle: over D - F_w; thrust roller: over H
    double k_growth = 0.0; ///< added to k in proportion to S up to k_growth_section_mm
    double k_growth_section_mm = 0.0;
    double k_offset_mm = 0.0;      ///< added to k S
    double w = 0.0;                ///< ball: greatest D_w over B (H); roller: length L over B (C, H)
    double w_growth = 0.0;         ///< added to w between B = 15 and 45 mm
    double l = 0.0;                ///< length over S (thrust roller), over B (needle)
    double effective = 1.0;        ///< L_we over L
    double fill_deg = 0.0;         ///< greatest angle filled by balls that lie side by side (assembly by displacing)
    double spacing = 0.0;          ///< least distance of element centres over D_w
    double coverage = 0.0;         ///< share of the pitch circle filled with elements
    double row_distance = 0.0;     ///< of two rows, over D_w (ball), over B (roller)
    double two_rows_from_mm = 0.0; ///< needle: bore from which the series has two rows; 0: never
};

/// @return the geometry; else `value-invalid` naming the dimension at fault (path "bore_mm" ...), or
/// `geometry-impossible` when the rule leaves no room for the elements.
[[nodiscard]] Result<InternalGeometry> genericGeometry(const SeriesRule& rule, const BoundaryDimensions& dimensions);

/// Mass of steel rings, elements and cage, 7850 kg/m3. Bearings on the market differ by about 10 %, needle 15 %.
[[nodiscard]] double genericMass_kg(GeometryClass geometry_class, const BoundaryDimensions& dimensions,
                                    const InternalGeometry& geometry);

/// Mass of the inner ring of a needle bearing, part of genericMass_kg.
[[nodiscard]] double needleInnerRingMass_kg(const BoundaryDimensions& dimensions);

/// Sheet thickness of a drawn cup from its section h = (D - F_w) / 2.
[[nodiscard]] double drawnCupSheet_mm(double section_mm);

} // namespace shaftwright
