#pragma once
// A gearbox shaft of our own invention: a helical wheel drives, a spur pinion takes what is left, two bearings.

#include "core/analysis/analyse.h"
#include "core/catalogue/catalogue.h"

namespace shaftwright::test
{

inline Catalogues generic()
{
    return Catalogues{{&genericCatalogue()}};
}

inline Segment segment(const char* id, double length_mm, double outer_mm)
{
    Segment result;
    result.id = SegmentId(id);
    result.length_mm = length_mm;
    result.outer_mm = outer_mm;
    return result;
}

inline Part gear(const char* id, double x_mm, int teeth, double module_mm, double helix_deg, double mesh_deg)
{
    CylindricalGear body;
    body.teeth = teeth;
    body.normal_module_mm = module_mm;
    body.helix_deg = helix_deg;
    body.hand = helix_deg > 0.0 ? Hand::right : Hand::none;
    body.mesh_angle_deg = mesh_deg;
    body.face_width_mm = 30;
    Part part;
    part.id = PartId(id);
    part.name = id;
    part.x_mm = x_mm;
    part.body = body;
    return part;
}

inline Arrangement gearbox()
{
    Arrangement a;
    a.title.title = "Conveyor gear unit, second shaft";
    a.shaft.segments = {segment("s1", 20, 30), segment("s2", 160, 45), segment("s3", 20, 30)};
    Part wheel = gear("G1", 60, 60, 2.5, 15, 90);
    wheel.drive = Drive{};
    wheel.drive->power = PowerSense::driven;
    wheel.drive->power_kW = 4.0;
    Part pinion = gear("G2", 140, 20, 3.0, 0, 270);
    pinion.drive = Drive{};
    pinion.drive->takes_remaining = true;
    a.parts = {wheel, pinion};
    Support left;
    left.id = SupportId("A");
    left.x_mm = 10;
    left.role = Role::locating;
    left.bearing = BearingChoice{Family::deep_groove_ball, {{*genericCatalogue().find("6306"), {}}}, SetArrangement::none};
    Support right = left;
    right.id = SupportId("B");
    right.x_mm = 190;
    right.role = Role::non_locating;
    a.supports = {left, right};
    LoadCase full;
    full.id = CaseId("full");
    full.name = "Full load";
    full.time_share = 0.6;
    full.speed_rpm = 700;
    LoadCase part = full;
    part.id = CaseId("part");
    part.name = "Part load";
    part.time_share = 0.4;
    part.power_factor = 0.5;
    a.duty.load_cases = {full, part};
    a.duty.required_L_h = 12000;
    return a;
}

inline Assessment analysed(const Arrangement& arrangement)
{
    return analyse(arrangement, generic());
}

} // namespace shaftwright::test
