#pragma once
// Short words for writing the samples. Every dimension is in mm, every angle in degrees, as in the model.

#include "core/model/arrangement.h"
#include "tests/support/generic_rows.h"

#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace shaftwright::samples
{

/// A shaft drawn from left to right; remembers where its right end is.
class ShaftMaker
{
public:
    explicit ShaftMaker(Shaft& shaft) : m_shaft(shaft) {}

    /// One cylinder. @return x of its left face
    double cylinder(double length_mm, double outer_mm, double bore_mm = 0.0)
    {
        Segment made;
        made.id = SegmentId("S" + std::to_string(m_shaft.segments.size() + 1));
        made.length_mm = length_mm;
        made.outer_mm = outer_mm;
        if (bore_mm > 0.0)
            made.bore_mm = bore_mm;
        m_shaft.segments.push_back(made);
        m_end_mm += length_mm;
        return m_end_mm - length_mm;
    }
    double cone(double length_mm, double outer_mm, double outer_end_mm, double bore_mm = 0.0)
    {
        const double start_mm = cylinder(length_mm, outer_mm, bore_mm);
        m_shaft.segments.back().outer_end_mm = outer_end_mm;
        return start_mm;
    }
    /// A feature of the segment drawn last.
    ShaftMaker& feature(FeatureKind kind, double position_mm, double length_mm, double depth_mm = 0.0, double width_mm = 0.0,
                        double angle_deg = 0.0)
    {
        Segment& last = m_shaft.segments.back();
        const FeatureId id("F" + std::to_string(last.features.size() + 1));
        last.features.push_back({id, kind, position_mm, length_mm, depth_mm, width_mm, angle_deg});
        return *this;
    }
    ShaftMaker& chamferLeft(double leg_mm) { return feature(FeatureKind::chamfer, 0, leg_mm, 0, 0, 45); }
    ShaftMaker& chamferRight(double leg_mm) { return feature(FeatureKind::chamfer, length_mm(), leg_mm, 0, 0, 45); }
    ShaftMaker& filletLeft(double radius_mm) { return feature(FeatureKind::fillet, 0, radius_mm); }
    ShaftMaker& filletRight(double radius_mm) { return feature(FeatureKind::fillet, length_mm(), radius_mm); }
    ShaftMaker& keyway(double position_mm, double length_mm, double depth_mm, double width_mm)
    {
        return feature(FeatureKind::keyway, position_mm, length_mm, depth_mm, width_mm, 90);
    }
    ShaftMaker& groove(double position_mm, double width_mm, double depth_mm)
    {
        return feature(FeatureKind::groove, position_mm, width_mm, depth_mm);
    }

    [[nodiscard]] double end_mm() const { return m_end_mm; }

private:
    [[nodiscard]] double length_mm() const { return m_shaft.segments.back().length_mm; }

    Shaft& m_shaft;
    double m_end_mm = 0.0;
};

[[nodiscard]] inline Drive power(PowerSense sense, double power_kW)
{
    return Drive{sense, power_kW, {}, false, false};
}
[[nodiscard]] inline Drive torque(PowerSense sense, double torque_Nm)
{
    return Drive{sense, {}, 1000.0 * torque_Nm, false, false};
}
[[nodiscard]] inline Drive remaining(PowerSense sense)
{
    return Drive{sense, {}, {}, true, false};
}

[[nodiscard]] inline Part part(const char* id, const char* name, double x_mm, std::optional<double> mass_kg,
                               std::optional<Drive> drive, PartBody body)
{
    Part made;
    made.id = PartId(id);
    made.name = name;
    made.x_mm = x_mm;
    made.mass_kg = mass_kg;
    made.drive = drive;
    made.body = std::move(body);
    return made;
}

[[nodiscard]] inline CylindricalGear gear(int teeth, double module_mm, double helix_deg, Hand hand, double mesh_angle_deg,
                                          double face_width_mm)
{
    CylindricalGear made;
    made.teeth = teeth;
    made.normal_module_mm = module_mm;
    made.helix_deg = helix_deg;
    made.hand = hand;
    made.mesh_angle_deg = mesh_angle_deg;
    made.face_width_mm = face_width_mm;
    return made;
}

[[nodiscard]] inline BeltPulley pulley(BeltKind kind, double diameter_mm, double other_mm, double centre_mm, double direction_deg,
                                       double face_width_mm, int grooves = 1)
{
    BeltPulley made;
    made.kind = kind;
    made.diameter_mm = diameter_mm;
    made.other_diameter_mm = other_mm;
    made.centre_distance_mm = centre_mm;
    made.direction_deg = direction_deg;
    made.face_width_mm = face_width_mm;
    made.grooves = grooves;
    return made;
}

[[nodiscard]] inline ChainSprocket sprocket(int teeth, double pitch_mm, int other_teeth, double centre_mm, double direction_deg,
                                            double face_width_mm)
{
    ChainSprocket made;
    made.teeth = teeth;
    made.pitch_mm = pitch_mm;
    made.other_teeth = other_teeth;
    made.centre_distance_mm = centre_mm;
    made.direction_deg = direction_deg;
    made.face_width_mm = face_width_mm;
    return made;
}

[[nodiscard]] inline Coupling coupling(double outer_mm, double length_mm)
{
    Coupling made;
    made.outer_mm = outer_mm;
    made.length_mm = length_mm;
    return made;
}

/// Two rows of the same bearing at one seat. @param left, right what each row keeps the shaft from (unset: both alike)
[[nodiscard]] inline BearingChoice bearingSet(Family family, const std::string& designation, SetArrangement arrangement,
                                              Carries left, Carries right)
{
    return BearingChoice{family, {{test::genericRow(designation), left}, {test::genericRow(designation), right}}, arrangement};
}

[[nodiscard]] inline Support support(const char* id, double x_mm, Role role, std::optional<BearingChoice> bearing,
                                     const char* shaft_fit, const char* housing_fit, Holds holds = {})
{
    Support made;
    made.id = SupportId(id);
    made.x_mm = x_mm;
    made.role = role;
    made.bearing = std::move(bearing);
    made.shaft_fit = shaft_fit;
    made.housing_fit = housing_fit;
    made.holds = holds;
    return made;
}

[[nodiscard]] inline LoadCase loadCase(const char* id, const char* name, double time_share, double speed_rpm,
                                       double power_factor = 1.0)
{
    LoadCase made;
    made.id = CaseId(id);
    made.name = name;
    made.time_share = time_share;
    made.speed_rpm = speed_rpm;
    made.power_factor = power_factor;
    return made;
}

[[nodiscard]] inline double middle(double left_mm, double width_mm)
{
    return left_mm + 0.5 * width_mm;
}

/// One sample: its file is `samples/<name>.shaftwright`.
struct NamedSample {
    std::string name;
    Arrangement (*make)();
};
/// All samples, the first one first.
[[nodiscard]] const std::vector<NamedSample>& all();

Arrangement intermediateShaft();
Arrangement fanShaft();
Arrangement bevelPinion();
Arrangement wormShaft();
Arrangement wormWheelShaft();
Arrangement hastySawShaft();
Arrangement classroomShaft();
Arrangement tideMill();
Arrangement conveyorHeadShaft();
Arrangement verticalAgitator();
Arrangement lineShaft();
Arrangement doubleHelicalPinion();
Arrangement idlerShaft();
Arrangement millingSpindle();
Arrangement sluiceShaft();
Arrangement mixerDrum();
Arrangement extruderScrew();
Arrangement blowerPinion();
Arrangement stagePump();
Arrangement craneWheel();
Arrangement knifeShaft();
Arrangement drillHead();
Arrangement loomShaft();
Arrangement winchDrum();

} // namespace shaftwright::samples
