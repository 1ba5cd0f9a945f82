#pragma once
// True axial sections of rolling bearings and wheels from their dimensions; ISO 128, ISO 2203, ISO 8826.
// All builders: model mm times `scale` = sheet mm; origin = the place (x, shaft axis) of the thing; both halves drawn
// (upper half above the axis, lower half mirrored) unless said otherwise.

#include "core/drawing/display_list.h"
#include "core/model/arrangement.h"

namespace shaftwright::drawing
{

/// How much is drawn, by the size of the half section on the device.
enum class Detail { block, general_sign, detailed_sign, tone_section, section, full_section };

struct SectionStyle {
    double scale = 1.0; ///< sheet mm per model mm
    Detail detail = Detail::section;
    double hatch_spacing_mm = 1.8;
    bool contact_lines = false;       ///< contact lines and effective centre of a selected bearing
    bool quiet_contact_lines = false; ///< the same thin in ink: adjusted supports always show where they act
    double hatch_phase_mm = 0.0;
};

/// Section of the bearing (or set) of a support, middle of its width at x = 0. Rows of a set stand side by side.
[[nodiscard]] Group bearingSection(const BearingChoice& choice, std::optional<Carries> carries, const SectionStyle& style);

/// Level of detail for a half section of `half_section_px` device pixels, with hysteresis against `previous`.
[[nodiscard]] Detail detailFor(double half_section_px, std::optional<Detail> previous = {});

/// Gear, pulley, sprocket, coupling, impeller, weight with hub on a shaft of the given diameter; x = 0 at the part's x.
/// Free loads give an empty group (they are arrows of the load layer).
[[nodiscard]] Group partSection(const Part& part, double shaft_diameter_mm, const SectionStyle& style);

/// Outline radius of the part as drawn (tip circle, outside diameter / 2), model mm; 0 for free loads.
[[nodiscard]] double partOuterRadius_mm(const Part& part);
/// Half of the part's length along x as drawn, model mm.
[[nodiscard]] double partHalfLength_mm(const Part& part);

/// Shaft outline with steps, cones, chamfers, fillets, grooves, keyways (broken-out section), bores. One group per segment,
/// subject "shaft.segments.<id>"; origin at the left face on the axis.
[[nodiscard]] std::vector<Group> shaftOutline(const Shaft& shaft, const SectionStyle& style);

} // namespace shaftwright::drawing
