// Sample: the intermediate shaft of a gear unit.

#include "tests/support/sample_helpers.h"

namespace shaftwright::samples
{

namespace
{

Segment segment(const char* id, double length_mm, double outer_mm)
{
    Segment made;
    made.id = SegmentId(id);
    made.length_mm = length_mm;
    made.outer_mm = outer_mm;
    return made;
}

} // namespace

/// Second of three shafts of a helical gear unit that drives a bucket elevator for grain.
Arrangement intermediateShaft()
{
    Arrangement a;
    a.title = {"Intermediate shaft of a bucket elevator drive",
               "BE-214-02",
               "",
               "",
               "2026-11-20",
               "Two-stage helical gear unit, 15 kW, head drive of a grain elevator"};

    // Left bearing seat, gear seat, collar, pinion cut into the shaft, shoulder, right bearing seat.
    a.shaft.material.name = "16MnCr5";
    a.shaft.segments = {segment("S1", 27, 45), segment("S2", 62, 56), segment("S3", 14, 68),
                        segment("S4", 74, 68), segment("S5", 14, 56), segment("S6", 27, 45)};
    a.shaft.segments[0].features = {{FeatureId("F1"), FeatureKind::chamfer, 0, 2, 0, 0, 45},
                                    {FeatureId("F2"), FeatureKind::fillet, 27, 1, 0, 0, 0}};
    a.shaft.segments[1].features = {{FeatureId("F1"), FeatureKind::keyway, 20, 36, 6, 16, 90}};
    a.shaft.segments[5].features = {{FeatureId("F1"), FeatureKind::fillet, 0, 1, 0, 0, 0},
                                    {FeatureId("F2"), FeatureKind::chamfer, 27, 2, 0, 0, 45}};

    Part wheel;
    wheel.id = PartId("G1");
    wheel.name = "Wheel, first stage";
    wheel.x_mm = 66.5;
    wheel.mass_kg = 11.5;
    wheel.drive = Drive{PowerSense::driven, 15.0, {}, false, false};
    CylindricalGear first;
    first.teeth = 82;
    first.normal_module_mm = 2.5;
    first.helix_deg = 15;
    first.hand = Hand::right;
    first.mesh_angle_deg = 180;
    first.face_width_mm = 45;
    wheel.body = first;
    Part pinion;
    pinion.id = PartId("G2");
    pinion.name = "Pinion, second stage";
    pinion.x_mm = 140;
    Drive remaining;
    remaining.power = PowerSense::driving;
    remaining.takes_remaining = true;
    pinion.drive = remaining;
    CylindricalGear second;
    second.teeth = 19;
    second.normal_module_mm = 4;
    second.helix_deg = 12;
    second.hand = Hand::right;
    second.mesh_angle_deg = 0;
    second.face_width_mm = 66;
    pinion.body = second;
    a.parts = {wheel, pinion};

    Support left;
    left.id = SupportId("A");
    left.x_mm = 14.5;
    left.role = Role::locating;
    left.bearing = test::genericBearing(Family::deep_groove_ball, "6309");
    left.greatest_outer_mm = 110;
    left.shaft_fit = "k6";
    left.housing_fit = "H7";
    left.holds = {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover, HoldKind::shoulder};
    Support right;
    right.id = SupportId("B");
    right.x_mm = 203.5;
    right.role = Role::non_locating;
    right.bearing = test::genericBearing(Family::cylindrical_roller_NU, "NU309");
    right.greatest_outer_mm = 110;
    right.shaft_fit = "k6";
    right.housing_fit = "H7";
    right.holds = {HoldKind::shoulder, HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover};
    a.supports = {left, right};

    LoadCase full;
    full.id = CaseId("full");
    full.name = "Full buckets";
    full.time_share = 0.7;
    full.speed_rpm = 480;
    LoadCase half = full;
    half.id = CaseId("half");
    half.name = "Half load";
    half.time_share = 0.27;
    half.power_factor = 0.55;
    LoadCase start = full;
    start.id = CaseId("start");
    start.name = "Start with full buckets";
    start.time_share = 0.03;
    start.speed_rpm = 240;
    // 15 kW stand for the rated speed: half the speed at 1.8 times the torque is 0.9 times the power.
    start.power_factor = 0.9;
    start.peak_factor = 1.3;
    a.duty.load_cases = {full, half, start};
    a.duty.required_L_h = 20000;
    a.duty.reliability_percent = 90;
    a.duty.K_A = 1.25; // uniform driver, light shocks; ISO 6336-6

    a.surroundings.temperature_C = 75;
    a.surroundings.ambient_C = 20;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 220;
    a.surroundings.dirt = Dirt::normal;
    a.surroundings.moist = false;
    a.surroundings.housing_material = HousingMaterial::grey_iron;
    a.surroundings.attitude_deg = 0;

    a.requirements = {
        {RequirementId("R1"), RequirementKind::deflection_at, "G2", {}, 0.04, "A hundredth of the module at the pinion"}};
    a.remarks = {{RemarkId("N1"), "supports.A.bearing", "", "2026-11-20",
                  "Could a smaller bore do here once the wheel is lighter?", false}};
    return a;
}

} // namespace shaftwright::samples
