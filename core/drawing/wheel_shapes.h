#pragma once
// Internal to core/drawing: sizes of a part as it is drawn. Model mm.

#include "core/drawing/sections.h"
#include "core/model/arrangement.h"

namespace shaftwright::drawing
{

/// V-belt groove by profile, ISO 4183 (from memory, high confidence). mm.
struct VProfile {
    double datum_width, above, below, pitch, edge; ///< b_d, c, h below the datum line, e, f
};
[[nodiscard]] const VProfile& vProfileOf(const BeltPulley& pulley);
/// Groove angle: given, else by datum diameter (34 deg up to 80, 118, 190, 315 mm, above 38 deg).
[[nodiscard]] double grooveAngle_deg(const BeltPulley& pulley, const VProfile& profile);

struct GearSize {
    double pitch_mm = 0.0, tip_mm = 0.0, root_mm = 0.0; ///< radii
    double module_mm = 0.0, width_mm = 0.0;
    bool width_known = true;
};
[[nodiscard]] GearSize sizeOf(const CylindricalGear& gear);

struct BevelSize {
    double cone_rad = 0.0, outer_mm = 0.0, cone_distance_mm = 0.0, module_mm = 0.0,
           width_mm = 0.0; ///< delta, R_m outer pitch radius, R_e
    bool width_known = true;
};
[[nodiscard]] BevelSize sizeOf(const BevelGear& gear);

struct WormWheelSize {
    double pitch_mm = 0.0, module_mm = 0.0, worm_pitch_mm = 0.0, outer_mm = 0.0, width_mm = 0.0; ///< radii; outer: flat outside
    bool width_known = true;
};
[[nodiscard]] WormWheelSize sizeOf(const WormWheel& wheel);

struct WormSize {
    double pitch_mm = 0.0, tip_mm = 0.0, root_mm = 0.0, module_mm = 0.0, lead_rad = 0.0, length_mm = 0.0;
    bool width_known = true;
};
[[nodiscard]] WormSize sizeOf(const Worm& worm);

struct SprocketSize {
    double pitch_mm = 0.0, tip_mm = 0.0, root_mm = 0.0, tooth_width_mm = 0.0, strand_pitch_mm = 0.0, width_mm = 0.0;
};
[[nodiscard]] SprocketSize sizeOf(const ChainSprocket& sprocket);

struct PulleySize {
    double pitch_mm = 0.0, outer_mm = 0.0, root_mm = 0.0, width_mm = 0.0;
    bool width_known = true;
};
[[nodiscard]] PulleySize sizeOf(const BeltPulley& pulley);

/// Which halves of the shaft the drawn part hides, and where its tooth traces lie (model mm, below the axis).
struct ShaftCover {
    bool lower = false, upper = false;
    double trace_y_mm = 0.0, trace_reach_mm = 0.0, trace_rise_mm = 0.0; ///< reach 0: no traces
};
[[nodiscard]] ShaftCover shaftCover(const Part& part, double shaft_radius_mm, Detail detail, double scale);

/// Tooth traces of a cylindrical gear: centre below the axis, half length, half rise of the middle line. Model mm; reach 0: none.
struct TraceSize {
    double y_mm = 0.0, reach_mm = 0.0, rise_mm = 0.0;
};
[[nodiscard]] TraceSize tracesOf(const CylindricalGear& gear, double half_width_mm, double y_mm, double scale);
/// Teeth cut into the shaft: less than 2 m of wall under the root.
[[nodiscard]] bool cutIntoShaft(const GearSize& size, double bore_mm);

} // namespace shaftwright::drawing
