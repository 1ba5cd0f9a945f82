#pragma once
// Arrangements and assessments for the tests of the sheet, of our own invention. The assessment is filled from the loads and the
// beam directly, so that the tests of the drawing stand on few modules; lives are typed in.

#include "core/analysis/assessment.h"
#include "core/beam/beam.h"
#include "core/loads/loads.h"
#include "core/model/arrangement.h"

#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace sheet_fixture
{

using namespace shaftwright;

inline CatalogueRow row(const std::string& designation, GeometryClass geometry, double d, double D, double B, double C, double C0)
{
    CatalogueRow out;
    out.catalogue = "generic";
    out.designation = designation;
    out.geometry_class = geometry;
    out.bore_mm = d;
    out.outer_mm = D;
    out.width_mm = B;
    out.chamfer_mm = 1.1;
    out.C_N = C;
    out.C0_N = C0;
    out.source = "typed for the test";
    return out;
}

inline Segment segment(const std::string& id, double length, double outer)
{
    Segment out;
    out.id = SegmentId(id);
    out.length_mm = length;
    out.outer_mm = outer;
    return out;
}

/// Second shaft of a reducer: helical wheel between the supports, belt pulley overhung on the right; three cases.
inline Arrangement reducer()
{
    Arrangement a;
    a.title = {"Kiln drive, second shaft", "KD-2-014", "design office", "Example works", "2026-01-15", "Calculation basis"};
    a.shaft.segments = {segment("s1", 24, 35), segment("s2", 58, 42), segment("s3", 52, 48), segment("s4", 10, 58),
                        segment("s5", 64, 46), segment("s6", 36, 40), segment("s7", 50, 32)};
    Part gear;
    gear.id = PartId("G1");
    gear.name = "Wheel";
    gear.x_mm = 108;
    gear.drive = Drive{PowerSense::driven, 7.5, {}, false, false};
    CylindricalGear body;
    body.teeth = 43;
    body.normal_module_mm = 2.5;
    body.helix_deg = 12;
    body.hand = Hand::right;
    body.face_width_mm = 50;
    body.mate_teeth = 19;
    body.mesh_angle_deg = 150;
    gear.body = body;
    Part pulley;
    pulley.id = PartId("P1");
    pulley.name = "Pulley";
    pulley.x_mm = 270;
    pulley.drive = Drive{PowerSense::driving, {}, {}, true, false};
    BeltPulley belt;
    belt.diameter_mm = 125;
    belt.other_diameter_mm = 250;
    belt.centre_distance_mm = 480;
    belt.direction_deg = 35;
    belt.face_width_mm = 44;
    belt.grooves = 3;
    pulley.body = belt;
    a.parts = {gear, pulley};
    Support left;
    left.id = SupportId("A");
    left.name = "A";
    left.x_mm = 13.5;
    left.role = Role::non_locating;
    left.shaft_fit = "k6";
    left.bearing = BearingChoice{Family::cylindrical_roller_NU,
                                 {{row("NU207", GeometryClass::cylindrical_roller, 35, 72, 17, 50200, 46700), {}}},
                                 SetArrangement::none};
    Support right;
    right.id = SupportId("B");
    right.name = "B";
    right.x_mm = 219;
    right.role = Role::locating;
    right.shaft_fit = "k6";
    right.bearing = BearingChoice{Family::deep_groove_ball,
                                  {{row("6208", GeometryClass::deep_groove_ball, 40, 80, 18, 30400, 18600), {}}},
                                  SetArrangement::none};
    a.supports = {left, right};
    LoadCase rated;
    rated.id = CaseId("c1");
    rated.name = "Rated";
    rated.time_share = 0.62;
    rated.speed_rpm = 720;
    LoadCase reversed = rated;
    reversed.id = CaseId("c2");
    reversed.name = "Reversed";
    reversed.time_share = 0.35;
    reversed.speed_rpm = -640;
    reversed.power_factor = 0.8;
    LoadCase start = rated;
    start.id = CaseId("c3");
    start.name = "Start";
    start.time_share = 0.03;
    start.power_factor = 2.2;
    a.duty.load_cases = {rated, reversed, start};
    a.duty.required_L_h = 20000;
    return a;
}

/// Loads and beam of any arrangement with rigid supports: y and z everywhere, x at the first locating one.
inline Assessment assess(const Arrangement& a, const std::vector<CaseLoads>* given = nullptr)
{
    Assessment out;
    out.settled = settle(a);
    out.loads = given != nullptr ? *given : evaluateLoads(a, out.settled).cases;
    beam::Model model;
    double x = 0.0;
    for (const Segment& one : a.shaft.segments) {
        model.pieces.push_back({x, x + one.length_mm, one.outer_mm, one.outerRight_mm(), one.boreLeft_mm(), one.boreRight_mm()});
        x += one.length_mm;
    }
    bool held = false;
    for (const Support& one : a.supports) {
        beam::Support support;
        support.id = one.id.value;
        support.x_mm = one.x_mm;
        const bool holds = one.role == Role::locating && !held;
        held = held || holds;
        support.rigid = {holds, true, true, false, false};
        model.supports.push_back(support);
    }
    std::vector<beam::LoadCase> cases;
    for (std::size_t i = 0; i < out.loads.size(); ++i) {
        beam::LoadCase one;
        for (const PartLoad& load : out.loads[i].parts) {
            one.point_loads.push_back({load.x_mm,
                                       {load.force_N.x, load.force_N.y, load.force_N.z},
                                       {load.moment_Nmm.x, load.moment_Nmm.y, load.moment_Nmm.z}});
        }
        cases.push_back(one);
        const LoadCase& settled = out.settled.load_cases[std::min(i, out.settled.load_cases.size() - 1)];
        out.load_cases.push_back({settled.id, settled.name, settled.time_share, settled.speed_rpm, 0.0, out.loads[i].K_N});
    }
    if (!a.shaft.segments.empty() && !a.supports.empty())
        out.beam = beam::solve(model, cases);
    for (std::size_t i = 0; i < a.supports.size(); ++i) {
        SupportAssessment support;
        support.id = a.supports[i].id;
        support.name = a.supports[i].name;
        support.x_mm = a.supports[i].x_mm;
        support.role = a.supports[i].role;
        double largest = -1.0;
        for (std::size_t k = 0; k < out.beam.cases.size(); ++k) {
            const beam::Reaction& reaction = out.beam.cases[k].reactions[i];
            SupportCase one;
            one.case_id = out.load_cases[k].id;
            one.force_N = {reaction.force_N[0], reaction.force_N[1], reaction.force_N[2]};
            one.radial_N = std::hypot(one.force_N.y, one.force_N.z);
            one.radial_angle_deg = std::atan2(one.force_N.z, one.force_N.y) * 57.29577951308232;
            one.axial_N = one.force_N.x;
            one.tilt_mrad = 1e3 * std::hypot(reaction.ry_rad, reaction.rz_rad);
            if (one.radial_N > largest) {
                largest = one.radial_N;
                support.governing_case = static_cast<int>(k);
            }
            support.cases.push_back(one);
        }
        if (a.supports[i].bearing) {
            BearingAssessment bearing;
            bearing.required_L_h = a.duty.required_L_h;
            bearing.L10_h = i == 0 ? 1.33e6 : 7600.0; // typed in: the drawing shows what it is given
            bearing.met = i == 0;
            bearing.S0_min = i == 0 ? 12.1 : 2.3;
            bearing.centre_x_mm = a.supports[i].x_mm;
            support.bearing = bearing;
            RequirementResult life;
            life.id = "supports." + support.id.value + ".life";
            life.met = bearing.met;
            out.requirements.push_back(life);
        }
        out.supports.push_back(support);
    }
    return out;
}

/// Overhung belt and a helical wheel between two supports, loads given; all in the plane z:
/// belt 1500 N down at 23, wheel 743 N down and 529 N along +x at 60.8 mm above the axis at 135, supports 89 and 187, torque 120
/// N m.
inline std::pair<Arrangement, std::vector<CaseLoads>> bench()
{
    Arrangement a;
    a.title.title = "Bench";
    a.shaft.segments = {segment("s1", 75, 35), segment("s2", 127, 40)};
    Part belt;
    belt.id = PartId("P");
    belt.name = "Belt";
    belt.x_mm = 23;
    belt.body = PointLoad{{0, 0, -1500}, {120000, 0, 0}, 0, 0, false};
    Part wheel;
    wheel.id = PartId("W");
    wheel.name = "Wheel";
    wheel.x_mm = 135;
    wheel.body = PointLoad{{529, 0, -743}, {-120000, 0, 0}, 0, 60.8, false};
    a.parts = {belt, wheel};
    Support left;
    left.id = SupportId("A");
    left.name = "A";
    left.x_mm = 89;
    left.role = Role::locating;
    Support right = left;
    right.id = SupportId("B");
    right.name = "B";
    right.x_mm = 187;
    right.role = Role::non_locating;
    a.supports = {left, right};
    LoadCase one;
    one.id = CaseId("c");
    one.name = "Only";
    one.speed_rpm = 1000;
    a.duty.load_cases = {one};
    CaseLoads loads;
    loads.case_id = one.id;
    PartLoad pull;
    pull.part = belt.id;
    pull.x_mm = 23;
    pull.force_N = {0, 0, -1500};
    pull.moment_Nmm = {-120000, 0, 0};
    pull.torque_Nmm = -120000;
    PartLoad mesh;
    mesh.part = wheel.id;
    mesh.x_mm = 135;
    mesh.force_N = {529, 0, -743};
    mesh.moment_Nmm = {120000, 529 * 60.8, 0}; // r x F with r = (0, 0, 60.8): My = z Fx
    mesh.torque_Nmm = 120000;
    mesh.axial_N = 529;
    loads.parts = {pull, mesh};
    return {a, {loads}};
}

/// Forty weights on a long shaft with three supports.
inline Arrangement forty()
{
    Arrangement a;
    a.title.title = "Forty parts";
    a.shaft.segments = {segment("s1", 400, 60), segment("s2", 500, 70), segment("s3", 300, 60)};
    for (int i = 0; i < 40; ++i) {
        Part part;
        part.id = PartId("p" + std::to_string(i + 1));
        part.name = "Disk " + std::to_string(i + 1);
        part.x_mm = 15.0 + 29.0 * i;
        part.body = PointLoad{{0, 0, -100.0 - 10.0 * i}, {}, 0, 0, false};
        a.parts.push_back(part);
    }
    for (int i = 0; i < 3; ++i) {
        Support support;
        support.id = SupportId(std::string(1, static_cast<char>('A' + i)));
        support.x_mm = 60.0 + 520.0 * i;
        support.role = i == 0 ? Role::locating : Role::non_locating;
        a.supports.push_back(support);
    }
    LoadCase one;
    one.id = CaseId("c");
    one.name = "Only";
    one.speed_rpm = 100;
    a.duty.load_cases = {one};
    return a;
}

} // namespace sheet_fixture
