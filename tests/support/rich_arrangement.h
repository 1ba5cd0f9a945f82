#pragma once
// An arrangement that sets every field of the model and uses every kind of part. Its numbers mean nothing.

#include "core/model/arrangement.h"

namespace shaftwright::test
{

[[nodiscard]] inline CatalogueRow richRow()
{
    CatalogueRow row;
    row.catalogue = "typed";
    row.catalogue_version = "1";
    row.designation = "6208";
    row.series = "62";
    row.geometry_class = GeometryClass::deep_groove_ball;
    row.bore_mm = 40;
    row.outer_mm = 80;
    row.width_mm = 18;
    row.inner_width_mm = 17.5;
    row.outer_width_mm = 16.25;
    row.inner_raceway_mm = 45.5;
    row.outer_small_end_mm = 70.125;
    row.chamfer_mm = 1.1;
    row.C_N = 29100;
    row.C0_N = 17900;
    row.Cu_N = 810.5;
    row.f0 = 14;
    row.contact_angle_deg = 15;
    row.e = 0.3;
    row.X = 0.56;
    row.Y = 1.6;
    row.Y0 = 0.5;
    row.pressure_centre_mm = -3.25;
    row.axial_limit_N = 5000;
    row.speed_limit_rpm = 11000;
    row.mass_kg = 0.37;
    InternalGeometry geometry;
    geometry.element_diameter_mm = 12;
    geometry.effective_length_mm = 1;
    geometry.roller_length_mm = 2;
    geometry.elements_per_row = 9;
    geometry.rows = 2;
    geometry.pitch_diameter_mm = 60;
    geometry.contact_angle_rad = 0.1;
    geometry.conformity_inner = 0.52;
    geometry.conformity_outer = 0.53;
    geometry.row_distance_mm = 3;
    geometry.raceway_inner_mm = 48;
    geometry.raceway_outer_mm = 72;
    geometry.shoulder_inner_mm = 53;
    geometry.shoulder_outer_mm = 67;
    row.geometry = geometry;
    row.source = "made up for the test";
    row.provenance = Provenance::own;
    row.note = "quote \" backslash \\ tab \t accents \u00e9 \u20ac and a clef \U0001D11E";
    return row;
}

[[nodiscard]] inline Arrangement richArrangement()
{
    Arrangement a;
    a.title = {"Rich", "R-1", "nobody", "none", "2026-01-02", "shows every field"};
    a.shaft.material = {"own steel", 205000.0, 79000.5, 1.15e-5, 7850.0};
    a.shaft.surface_hardness_HRC = 60;
    const auto kinds = {FeatureKind::fillet, FeatureKind::chamfer,    FeatureKind::undercut, FeatureKind::groove,
                        FeatureKind::keyway, FeatureKind::press_seat, FeatureKind::thread,   FeatureKind::centre_hole};
    Segment first;
    first.id = SegmentId("S1");
    first.length_mm = 50.5;
    first.outer_mm = 40;
    first.outer_end_mm = 45;
    first.bore_mm = 10;
    first.bore_end_mm = 12;
    for (const FeatureKind kind : kinds) {
        Feature feature{FeatureId("F" + std::to_string(first.features.size() + 1)), kind, 1.5, 2, 3, 4, 45};
        first.features.push_back(feature);
    }
    Segment second;
    second.id = SegmentId("S2");
    second.length_mm = 250;
    second.outer_mm = 55;
    a.shaft.segments = {first, second};

    const auto add = [&](const char* id, PartBody body) {
        Part part;
        part.id = PartId(id);
        part.name = std::string("part ") + id;
        part.x_mm = 10.0 * static_cast<double>(a.parts.size() + 1);
        part.mass_kg = 2.5;
        part.drive = Drive{PowerSense::driving, 12.5, 1000.25, true, true};
        part.body = std::move(body);
        a.parts.push_back(std::move(part));
    };
    CylindricalGear gear;
    gear.teeth = 24;
    gear.normal_module_mm = 3;
    gear.helix_deg = 15;
    gear.hand = Hand::left;
    gear.double_helical = true;
    gear.internal = true;
    gear.pressure_angle_deg = 22.5;
    gear.working_diameter_mm = 74.5;
    gear.mate_teeth = 71;
    gear.centre_distance_mm = 148;
    gear.mesh_angle_deg = 90;
    gear.face_width_mm = 30;
    gear.further_meshes = {{180, Drive{PowerSense::driven, 1.0, {}, false, false}},
                           {270, Drive{PowerSense::driving, {}, 5.0, true, true}}};
    add("G1", gear);
    BevelGear bevel;
    bevel.teeth = 17;
    bevel.outer_module_mm = 4;
    bevel.mean_diameter_mm = 60;
    bevel.cone_angle_deg = 25;
    bevel.spiral_deg = 35;
    bevel.hand = Hand::right;
    bevel.apex = ApexSide::minus;
    bevel.pressure_angle_deg = 20;
    bevel.mesh_angle_deg = -90;
    bevel.face_width_mm = 22;
    bevel.mate_cone_angle_deg = 65;
    bevel.shaft_angle_deg = 90;
    add("G2", bevel);
    Worm worm;
    worm.starts = 2;
    worm.axial_module_mm = 4;
    worm.reference_diameter_mm = 40;
    worm.lead_angle_deg = 11.3;
    worm.hand = Hand::left;
    worm.pressure_angle_deg = 20;
    worm.friction = 0.04;
    worm.mesh_angle_deg = 270;
    worm.face_width_mm = 60;
    add("W1", worm);
    WormWheel wheel;
    wheel.teeth = 40;
    wheel.reference_diameter_mm = 160;
    wheel.lead_angle_deg = 11.3;
    wheel.hand = Hand::left;
    wheel.pressure_angle_deg = 20;
    wheel.friction = 0.05;
    wheel.mesh_angle_deg = 90;
    wheel.worm_direction = -1;
    wheel.face_width_mm = 35;
    add("W2", wheel);
    BeltPulley pulley;
    pulley.kind = BeltKind::ribbed;
    pulley.diameter_mm = 100;
    pulley.other_diameter_mm = 200;
    pulley.centre_distance_mm = 400;
    pulley.crossed = true;
    pulley.direction_deg = 45;
    pulley.tension = Pretension{250, 0.3};
    pulley.friction = 0.5;
    pulley.groove_deg = 38;
    pulley.face_width_mm = 40;
    pulley.grooves = 3;
    add("B1", pulley);
    pulley.tension = TensionFactor{2};
    add("B2", pulley);
    pulley.tension = TensionRatio{4};
    add("B3", pulley);
    pulley.tension = StrandForces{900, 300};
    add("B4", pulley);
    ChainSprocket sprocket;
    sprocket.teeth = 19;
    sprocket.pitch_mm = 15.875;
    sprocket.other_teeth = 57;
    sprocket.centre_distance_mm = 600;
    sprocket.direction_deg = 30;
    sprocket.force_factor = 1.1;
    sprocket.sag_force_N = 20;
    sprocket.face_width_mm = 9;
    sprocket.strands = 2;
    add("C1", sprocket);
    Coupling coupling;
    coupling.radial_force_N = 300;
    coupling.radial_direction = GivenDirection{60};
    coupling.axial_force_N = -40;
    coupling.bending_moment_Nmm = 1500;
    coupling.bending_moment_axis_deg = 10;
    coupling.joint_angle_deg = 5;
    coupling.joint_direction_deg = 90;
    coupling.outer_mm = 110;
    coupling.length_mm = 80;
    add("C2", coupling);
    Impeller impeller;
    impeller.thrust_N = -800;
    impeller.radial_y_N = 20;
    impeller.radial_z_N = -30;
    impeller.offset_y_mm = 1;
    impeller.offset_z_mm = -2;
    impeller.rotating_radial_N = 15;
    impeller.outer_mm = 320;
    impeller.width_mm = 60;
    add("I1", impeller);
    add("M0", WeightBody{std::monostate{}, 200, 30});
    add("M1", WeightBody{BalanceGrade{2.5}, 200, 30});
    add("M2", WeightBody{UnbalanceGmm{0.02}, 200, 30});
    add("M3", WeightBody{MassEccentricity{0.001}, 200, 30});
    add("F1", PointLoad{{1, 2, 3}, {4, 5, 6}, 7, 8, true});
    add("Q1", DistributedLoad{120, {0.1, 0.2, 0.3}, {0.4, 0.5, 0.6}, 0.7, 0.8});

    Support support;
    support.id = SupportId("A");
    support.name = "left";
    support.x_mm = 20;
    support.role = Role::adjusted;
    support.carries = Carries::minus;
    support.bearing = BearingChoice{
        Family::angular_contact_set_O, {{richRow(), Carries::plus}, {richRow(), Carries::minus}}, SetArrangement::O};
    support.greatest_outer_mm = 90;
    support.greatest_width_mm = 40;
    support.required_L_h = 12000;
    support.reliability_percent = 95;
    support.required_S0 = 1.5;
    support.play_mm = 0.2;
    support.mounting_error_mrad = 0.3;
    support.shaft_fit = "k6";
    support.housing_fit = "H7";
    support.holds = {HoldKind::shoulder, HoldKind::nut, HoldKind::cover, HoldKind::nothing};
    ElasticSupport elastic;
    for (std::size_t i = 0; i < 5; ++i) {
        for (std::size_t j = 0; j < 5; ++j)
            elastic.stiffness[i][j] = 1.0e4 * static_cast<double>(i + 1) + static_cast<double>(j) / 8.0;
    }
    support.elastic = elastic;
    support.gap = RadialGap{0.02, 1.0e5, 1.5};
    support.prescribed = PrescribedDisplacement{0.01, 0.02, 0.03, 0.1, 0.2};
    Support other;
    other.id = SupportId("B");
    other.x_mm = 280;
    a.supports = {support, other};

    LoadCase rated;
    rated.id = CaseId("rated");
    rated.name = "rated load";
    rated.time_share = 0.75;
    rated.speed_rpm = -480;
    rated.power_factor = 1.1;
    rated.free_load_factor = 0.9;
    rated.peak_factor = 2;
    rated.shaft_temperature_C = 75;
    rated.housing_temperature_C = 60;
    rated.parts[PartId("G1")] = {0.5, true};
    rated.parts[PartId("B1")] = {{}, false};
    LoadCase idle;
    idle.id = CaseId("idle");
    idle.time_share = 0.25;
    a.duty = {{rated, idle}, 20000.0, 95.0, LifeBasis::modified, 1.25};

    Surroundings& s = a.surroundings;
    s.temperature_C = 80;
    s.ambient_C = 15;
    s.assembly_C = 18;
    s.lubricant = Lubricant::oil;
    s.viscosity_grade = 220;
    s.dirt = Dirt::severe;
    s.moist = true;
    s.housing_material = HousingMaterial::nodular_iron;
    s.attitude_deg = 30;
    s.accuracy = Grade::high;
    s.quiet = Grade::raised;
    s.guide = Grade::unimportant;
    s.stiffness_wish = StiffnessWish::both;
    s.motion = Motion::oscillation;
    s.swing_deg = 90;
    s.swings_per_min = 30;
    s.separable_wanted = true;
    s.allow_plain = true;
    s.allow_special = false;
    s.profile = "general_gearbox";
    s.weights = {{"cost", 2.0}, {"life", 0.5}};

    a.requirements = {{RequirementId("R1"), RequirementKind::deflection_at, "G1", {}, 0.05, "mesh stays even"},
                      {RequirementId("R2"), RequirementKind::slope_at, "B", {}, 0.5, ""},
                      {RequirementId("R3"), RequirementKind::all_supports_life, "", {}, 18000, ""},
                      {RequirementId("R4"), RequirementKind::static_safety, "", 55.5, 1.2, "at the step"}};
    a.remarks = {{RemarkId("N1"), "supports.B.x_mm", "reviewer", "2026-01-03", "Why here?\nSecond line.", true}};
    a.acceptances = {{"X1", "value-unusual", "parts.G1.helix_deg", "agreed", "nobody", "2026-01-04", {{"value", 41.5}}}};
    a.revisions = {{"A", "2026-01-05", "nobody", "first", "sha256:00", "{\"format\":\"shaftwright-arrangement\"}"}};
    a.proposed = {{"supports.A.bearing", {"first that suited"}}};
    a.options = {ShearModel::nine_tenths, true, false, InducedLoadRule::half_Fr_over_Y};
    a.extra_json = "{ \"erp\" : [ 1.50, \"x\", {\"deep\": null} ] }";
    return a;
}

} // namespace shaftwright::test
