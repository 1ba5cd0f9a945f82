// Samples: machines, among them long, vertical, hollow and fast shafts.

#include "tests/support/sample_helpers.h"

#include <array>

namespace shaftwright::samples
{

/// Head shaft of two belts side by side: three self-aligning bearings, the middle one on a soft cross beam.
Arrangement conveyorHeadShaft()
{
    Arrangement a;
    a.title = {
        "Head shaft of a twin conveyor",
        "CV-402-05",
        "",
        "",
        "2026-11-24",
        "Three spherical roller bearings; the middle pedestal yields and has settled, so the shaft is statically indeterminate"};
    a.shaft.material.name = "C45E";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(34, 60);
    shaft.chamferLeft(2).filletRight(1);
    const double drum1 = shaft.cylinder(400, 78);
    shaft.cylinder(14, 90);
    const double middle_seat = shaft.cylinder(44, 75);
    shaft.filletLeft(1).feature(FeatureKind::thread, 32, 12, 1);
    const double drum2 = shaft.cylinder(410, 72);
    const double right = shaft.cylinder(36, 60);
    shaft.filletLeft(1);
    shaft.cylinder(24, 58);
    shaft.cylinder(115, 55);
    shaft.keyway(10, 90, 6, 16).chamferRight(2);

    BeltPulley drum = pulley(BeltKind::flat, 400, 400, 24000, 180, 320);
    drum.tension = TensionRatio{2.0};
    a.parts.push_back(part("P1", "Drum, sand", drum1 + 200, 120, power(PowerSense::driving, 4.4), drum));
    a.parts.push_back(part("P2", "Drum, gravel", drum2 + 210, 120, power(PowerSense::driving, 5.5), drum));
    DistributedLoad scraper;
    scraper.end_mm = drum1 + 350;
    scraper.start_N_per_mm = {0, 0.6, 0};
    scraper.end_N_per_mm = {0, 0.6, 0};
    a.parts.push_back(part("Q1", "Belt scraper", drum1 + 50, {}, {}, scraper));
    Coupling cardan = coupling(150, 90);
    cardan.joint_angle_deg = 6;
    cardan.joint_direction_deg = 180;
    a.parts.push_back(part("C1", "Cardan shaft to the gear unit", shaft.end_mm() - 55, 9, remaining(PowerSense::driven), cardan));

    const BearingChoice end = test::genericBearing(Family::spherical_roller, "22212");
    const BearingChoice centre = test::genericBearing(Family::spherical_roller, "22215");
    const Holds free_ring{HoldKind::nut, HoldKind::shoulder, HoldKind::nothing, HoldKind::nothing};
    Support left = support("A", 34 - 0.5 * end.width_mm(), Role::non_locating, end, "m6", "H7", free_ring);
    Support mid = support("B", middle_seat + 0.5 * centre.width_mm(), Role::non_locating, centre, "m6", "H7",
                          {HoldKind::shoulder, HoldKind::nut, HoldKind::nothing, HoldKind::nothing});
    ElasticSupport beam;
    beam.stiffness[1][1] = 6.0e4;
    beam.stiffness[2][2] = 2.5e4;
    mid.elastic = beam;
    mid.prescribed = PrescribedDisplacement{0, 0, -0.15, 0, 0};
    mid.mounting_error_mrad = 2.0;
    Support drive = support("C", right + 0.5 * end.width_mm(), Role::locating, end, "m6", "H7",
                            {HoldKind::shoulder, HoldKind::nut, HoldKind::cover, HoldKind::cover});
    a.supports = {left, mid, drive};

    LoadCase empty = loadCase("empty", "Empty belts", 0.2, 62, 0.5);
    LoadCase sand = loadCase("sand", "Sand alone", 0.2, 62);
    sand.parts[PartId("P2")] = {0.5, true};
    a.duty = {{loadCase("both", "Both belts loaded", 0.6, 62), sand, empty}, 50000.0, 90.0, {}, 1.25};
    a.surroundings.temperature_C = 45;
    a.surroundings.ambient_C = 15;
    a.surroundings.lubricant = Lubricant::grease;
    a.surroundings.dirt = Dirt::severe;
    a.surroundings.moist = true;
    a.acceptances = {{"X1",
                      "three-supports",
                      "supports.B.x_mm",
                      "Pedestal heights are shimmed on site to 0.05 mm and checked yearly",
                      "Works engineer",
                      "2026-11-24",
                      {{"dF_N", 312.9}}}};
    return a;
}

/// Upright agitator; the weight and the flow hang on a thrust bearing.
Arrangement verticalAgitator()
{
    Arrangement a;
    a.title = {
        "Upright agitator of a brine tank",
        "AG-077-01",
        "",
        "",
        "2026-11-24",
        "Shaft upright, +x upwards: weight and flow hang on a double thrust ball bearing, two radial guides, own weight counts"};
    a.shaft.material.name = "42CrMo4";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(130, 50);
    shaft.chamferLeft(2).keyway(15, 100, 5.5, 14);
    shaft.cylinder(640, 62);
    const double guide = shaft.cylinder(32, 65);
    shaft.filletRight(1);
    shaft.cylinder(430, 78);
    const double top = shaft.cylinder(44, 60);
    shaft.filletLeft(1);
    const double thrust = shaft.cylinder(60, 50);
    shaft.filletLeft(0.6).feature(FeatureKind::thread, 48, 12, 1);
    shaft.cylinder(100, 45);
    shaft.keyway(10, 80, 5.5, 14).chamferRight(2);

    Impeller blades;
    blades.thrust_N = -900;
    blades.rotating_radial_N = 260;
    blades.radial_z_N = 140;
    blades.outer_mm = 620;
    blades.width_mm = 90;
    a.parts.push_back(part("I1", "Pitched blades", 65, 48, power(PowerSense::driving, 7.5), blades));
    Coupling motor = coupling(150, 90);
    motor.radial_force_N = 450;
    a.parts.push_back(part("C1", "Flexible coupling", shaft.end_mm() - 48, 9, remaining(PowerSense::driven), motor));

    const BearingChoice low = test::genericBearing(Family::deep_groove_ball, "6213");
    const BearingChoice high = test::genericBearing(Family::deep_groove_ball, "6212");
    const BearingChoice axial = test::genericBearing(Family::thrust_ball_double, "52212");
    a.supports.push_back(support("A", guide + 32 - 0.5 * low.width_mm(), Role::non_locating, low, "k6", "H7",
                                 {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::nothing, HoldKind::nothing}));
    a.supports.push_back(support("B", top + 0.5 * high.width_mm(), Role::non_locating, high, "k6", "H7",
                                 {HoldKind::shoulder, HoldKind::sleeve, HoldKind::nothing, HoldKind::nothing}));
    a.supports.push_back(support("C", thrust + 0.5 * axial.width_mm(), Role::axial_only, axial, "j6", "",
                                 {HoldKind::shoulder, HoldKind::nut, HoldKind::shoulder, HoldKind::cover}));

    LoadCase settle = loadCase("thick", "Thick brine", 0.15, 90, 1.0);
    settle.free_load_factor = 1.3;
    LoadCase still = loadCase("still", "Standing, tank full", 0.15, 0, 0);
    still.free_load_factor = 0;
    a.duty = {{loadCase("stir", "Stirring", 0.7, 96, 0.8), settle, still}, 40000.0, 90.0, {}, 1.25};
    a.surroundings.attitude_deg = 90;
    a.surroundings.temperature_C = 55;
    a.surroundings.ambient_C = 25;
    a.surroundings.lubricant = Lubricant::grease;
    a.surroundings.moist = true;
    return a;
}

/// Forty parts on one shaft.
Arrangement lineShaft()
{
    Arrangement a;
    a.title = {"Line shaft of a museum workshop",
               "LS-900-01",
               "",
               "",
               "2026-11-25",
               "Forty parts and nine bearings on one shaft: how a crowded arrangement reads"};
    a.shaft.material.name = "C35E";
    ShaftMaker shaft(a.shaft);
    constexpr int bays = 8;
    constexpr double bay_mm = 750;
    const BearingChoice bearing = test::genericBearing(Family::self_aligning_ball, "1216");
    const double half_mm = 0.5 * bearing.width_mm();
    shaft.cylinder(2 * 120 + bays * bay_mm, 80);
    shaft.chamferLeft(2).chamferRight(2);
    for (int i = 0; i <= bays; ++i) {
        const double x = 120 + i * bay_mm;
        shaft.groove(x - half_mm - 2.65, 2.65, 1.75).groove(x + half_mm, 2.65, 1.75);
        const bool locating = i == bays / 2;
        const HoldKind outer = locating ? HoldKind::cover : HoldKind::nothing;
        const std::string id(1, static_cast<char>('A' + i));
        a.supports.push_back(support(id.c_str(), x, locating ? Role::locating : Role::non_locating, bearing, "h6", "H7",
                                     {HoldKind::retaining_ring, HoldKind::retaining_ring, outer, outer}));
    }

    // Machines take turns along the shaft: what drives them, how much, and to which side.
    struct Machine {
        const char* name;
        double power_kW;
    };
    constexpr std::array<Machine, 10> machines{{{"Lathe", 0.9},
                                                {"Drill", 0.6},
                                                {"Planer", 1.1},
                                                {"Band saw", 0.8},
                                                {"Grindstone", 0.5},
                                                {"Shaper", 0.9},
                                                {"Press", 1.2},
                                                {"Forge blower", 0.7},
                                                {"Mill", 1.0},
                                                {"Bellows pump", 0.6}}};
    for (int i = 0; i < 40; ++i) {
        const double x = 120 + bay_mm * (i / 5) + bay_mm * (i % 5 + 1) / 6.0;
        const std::string id = "P" + std::to_string(i + 1);
        const Machine& machine = machines[static_cast<std::size_t>(i) % machines.size()];
        const double side_deg = i % 2 == 0 ? -40 : -140;
        if (i == 17) {
            a.parts.push_back(part(id.c_str(), "Main pulley, from the engine", x, 85, remaining(PowerSense::driven),
                                   pulley(BeltKind::flat, 900, 450, 4200, -75, 110)));
            continue;
        }
        if (i == 38) {
            a.parts.push_back(part(id.c_str(), "Flywheel", x, 130, {}, WeightBody{BalanceGrade{6.3}, 640, 70}));
            continue;
        }
        const std::string name = std::string(machine.name) + " " + std::to_string(i / 10 + 1);
        const Drive drive = power(PowerSense::driving, machine.power_kW);
        switch (i % 5) {
        case 0:
            a.parts.push_back(part(id.c_str(), name.c_str(), x, 18, drive, pulley(BeltKind::flat, 360, 220, 2200, side_deg, 70)));
            break;
        case 1:
            a.parts.push_back(part(id.c_str(), name.c_str(), x, 12, drive, pulley(BeltKind::v, 280, 140, 1400, side_deg, 50, 3)));
            break;
        case 2:
            a.parts.push_back(part(id.c_str(), name.c_str(), x, 9, drive, sprocket(30, 19.05, 19, 900, side_deg, 11)));
            break;
        case 3:
            a.parts.push_back(
                part(id.c_str(), name.c_str(), x, 8, drive, pulley(BeltKind::ribbed, 224, 112, 700, side_deg, 30, 6)));
            break;
        default:
            a.parts.push_back(
                part(id.c_str(), name.c_str(), x, 11, drive, pulley(BeltKind::toothed, 254, 127, 900, side_deg, 45)));
            break;
        }
    }

    LoadCase half = loadCase("open", "Open day, half the machines", 0.6, 220, 0.5);
    a.duty = {{loadCase("all", "All machines", 0.4, 220), half}, 30000.0, 90.0, {}, 1.1};
    a.surroundings.temperature_C = 40;
    a.surroundings.lubricant = Lubricant::grease;
    a.acceptances = {{"X1",
                      "three-supports",
                      "supports.E.x_mm",
                      "Hangers are set by a stretched wire; self-aligning bearings follow",
                      "Keeper of the workshop",
                      "2026-11-25",
                      {{"dF_N", 276.6}}}};
    return a;
}

/// Pinion that centres itself in its wheel; the bearings leave it end play.
Arrangement doubleHelicalPinion()
{
    Arrangement a;
    a.title = {"Double-helical pinion of a stone mill",
               "DH-055-01",
               "",
               "",
               "2026-11-25",
               "The teeth place the shaft along its axis: cylindrical roller bearings with one rib each leave it end play"};
    a.shaft.material.name = "18CrNiMo7-6";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(110, 70);
    shaft.chamferLeft(2).feature(FeatureKind::press_seat, 5, 95);
    shaft.cylinder(48, 78);
    shaft.cylinder(36, 80);
    shaft.filletRight(1);
    const double left_shoulder = shaft.cylinder(34, 92);
    const double teeth = shaft.cylinder(130, 98);
    const double right_shoulder = shaft.cylinder(34, 92);
    const double right = shaft.cylinder(30, 80);
    shaft.filletLeft(1).chamferRight(2);
    (void)right_shoulder;

    a.parts.push_back(part("C1", "Toothed coupling", 52, 18, remaining(PowerSense::driven), coupling(190, 95)));
    CylindricalGear pinion = gear(25, 4, 25, Hand::none, 0, 125);
    pinion.double_helical = true;
    a.parts.push_back(part("G1", "Double-helical pinion", teeth + 65, {}, power(PowerSense::driving, 160), pinion));

    const BearingChoice roller = test::genericBearing(Family::cylindrical_roller_NJ, "NJ216");
    Support a1 = support("A", left_shoulder - 0.5 * roller.width_mm(), Role::end_play, roller, "m6", "H7",
                         {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover, HoldKind::nothing});
    a1.carries = Carries::minus;
    a1.play_mm = 0.6;
    Support b1 = support("B", right + 0.5 * roller.width_mm(), Role::end_play, roller, "m6", "H7",
                         {HoldKind::shoulder, HoldKind::end_plate, HoldKind::nothing, HoldKind::cover});
    b1.carries = Carries::plus;
    b1.play_mm = 0.6;
    a.supports = {a1, b1};

    a.duty = {{loadCase("mill", "Milling", 0.9, 1485, 0.85), loadCase("peak", "Hard stone", 0.1, 1485)}, 30000.0, 90.0, {}, 1.25};
    a.surroundings.temperature_C = 75;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 220;
    return a;
}

/// Idler with two meshes on needle bearings.
Arrangement idlerShaft()
{
    Arrangement a;
    a.title = {"Idler shaft of a printing press",
               "ID-012-04",
               "",
               "",
               "2026-11-25",
               "Helical idler with two meshes on needle roller bearings, one straight on the hardened shaft; a small ball "
               "bearing guides it"};
    a.shaft.material.name = "16MnCr5";
    a.shaft.surface_hardness_HRC = 60.0;
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(26, 35);
    shaft.chamferLeft(1).filletRight(0.3);
    const double collar = shaft.cylinder(12, 44);
    const double seat = shaft.cylinder(40, 46);
    shaft.feature(FeatureKind::press_seat, 0, 40);
    shaft.cylinder(12, 50);
    const double right = shaft.cylinder(26, 42);
    const double guide = shaft.cylinder(16, 25);
    shaft.filletLeft(0.3);
    shaft.cylinder(6, 24);
    shaft.feature(FeatureKind::groove, 1, 1.3, 0.5);

    CylindricalGear wheel = gear(41, 3, 12, Hand::right, 180, 36);
    wheel.further_meshes = {{40, remaining(PowerSense::driving)}};
    a.parts.push_back(part("G1", "Idler wheel", seat + 20, 3.2, power(PowerSense::driven, 9), wheel));

    PointLoad spring;
    spring.force_N = {-180, 0, 0};
    a.parts.push_back(part("F1", "Wave spring against rattling", guide + 12, {}, {}, spring));

    const BearingChoice left = test::genericBearing(Family::needle_roller, "NA4907");
    const BearingChoice bare = test::genericBearing(Family::needle_roller_no_inner, "RNA4907");
    const BearingChoice ball = test::genericBearing(Family::deep_groove_ball, "6005");
    a.supports.push_back(support("A", collar - 0.5 * left.width_mm(), Role::non_locating, left, "k6", "K7",
                                 {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::retaining_ring, HoldKind::shoulder}));
    a.supports.push_back(support("B", right + 13, Role::non_locating, bare, "h6", "N7",
                                 {HoldKind::nothing, HoldKind::nothing, HoldKind::shoulder, HoldKind::retaining_ring}));
    a.supports.push_back(support("C", guide + 0.5 * ball.width_mm(), Role::axial_only, ball, "h6", "",
                                 {HoldKind::shoulder, HoldKind::retaining_ring, HoldKind::cover, HoldKind::cover}));

    a.duty = {
        {loadCase("print", "Printing", 0.9, 600), loadCase("inch", "Wash-up, reversed", 0.1, -300, 0.3)}, 20000.0, 90.0, {}, 1.1};
    a.surroundings.temperature_C = 60;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 150;
    return a;
}

/// Fast hollow spindle of a milling machine.
Arrangement millingSpindle()
{
    Arrangement a;
    a.title = {
        "Milling spindle with a hollow shaft",
        "MS-330-02",
        "",
        "",
        "2026-11-25",
        "Preloaded set of angular contact bearings at the cutter, cylindrical rollers at the belt; fast, accurate and warm"};
    a.shaft.material.name = "42CrMo4";
    ShaftMaker shaft(a.shaft);
    shaft.cone(70, 44, 58, 16);
    shaft.cylinder(22, 78, 16);
    const double front = shaft.cylinder(46, 70, 16);
    shaft.filletLeft(0.6);
    shaft.cylinder(14, 70, 16);
    shaft.feature(FeatureKind::thread, 0, 14, 1);
    shaft.cylinder(180, 67, 16);
    const double rear = shaft.cylinder(20, 60, 16);
    shaft.filletLeft(0.6).feature(FeatureKind::undercut, 0, 2, 0.3);
    shaft.cylinder(18, 58, 16);
    shaft.cylinder(70, 50, 16);
    shaft.keyway(8, 50, 5.5, 14).chamferRight(1);

    a.parts.push_back(part("M1", "Face mill", 30, 9, remaining(PowerSense::driving), WeightBody{BalanceGrade{2.5}, 200, 50}));
    PointLoad cut;
    cut.force_N = {900, 700, 2200};
    a.parts.push_back(part("F1", "Cutting force", 30, {}, {}, cut));
    a.parts.push_back(part("P1", "Toothed pulley", shaft.end_mm() - 35, 2.6, power(PowerSense::driven, 15),
                           pulley(BeltKind::toothed, 127, 159, 420, -90, 46)));

    const BearingChoice set = bearingSet(Family::precision_set_O_25, "7014-25", SetArrangement::O, Carries::plus, Carries::minus);
    const BearingChoice roller = test::genericBearing(Family::cylindrical_roller_NU, "NU1012");
    a.supports.push_back(support("A", front + 0.5 * set.width_mm(), Role::locating, set, "js5", "JS5",
                                 {HoldKind::shoulder, HoldKind::nut, HoldKind::cover, HoldKind::shoulder}));
    a.supports.push_back(support("B", rear + 0.5 * roller.width_mm(), Role::non_locating, roller, "k5", "K6",
                                 {HoldKind::shoulder, HoldKind::sleeve, HoldKind::shoulder, HoldKind::cover}));

    LoadCase rough = loadCase("rough", "Roughing", 0.4, 2400);
    rough.shaft_temperature_C = 48;
    rough.housing_temperature_C = 38;
    LoadCase fine = loadCase("fine", "Finishing", 0.6, 3000, 0.65);
    fine.free_load_factor = 0.5;
    fine.shaft_temperature_C = 45;
    fine.housing_temperature_C = 37;
    a.duty = {{rough, fine}, 15000.0, 90.0, {}, 1.0};
    a.surroundings.temperature_C = 45;
    a.surroundings.lubricant = Lubricant::grease;
    a.surroundings.dirt = Dirt::clean;
    a.surroundings.accuracy = Grade::raised;
    a.surroundings.quiet = Grade::raised;
    a.surroundings.guide = Grade::high;
    a.surroundings.stiffness_wish = StiffnessWish::both;
    a.requirements = {{RequirementId("R1"), RequirementKind::deflection_at, "M1", {}, 0.02, "Flatness of the work"}};
    return a;
}

/// Slow cross shaft that also holds its load at rest.
Arrangement sluiceShaft()
{
    Arrangement a;
    a.title = {"Cross shaft of a sluice gate",
               "SL-019-01",
               "",
               "",
               "2026-11-25",
               "Straight bevel wheel and rack pinion: a few turns a minute both ways, most of its life at rest under load"};
    a.shaft.material.name = "42CrMo4";
    ShaftMaker shaft(a.shaft);
    const double left = shaft.cylinder(34, 50);
    shaft.chamferLeft(1.5).filletRight(0.6);
    const double collar = shaft.cylinder(18, 80);
    shaft.cylinder(92, 70);
    shaft.keyway(20, 60, 7.5, 20);
    shaft.cylinder(220, 68);
    const double right = shaft.cylinder(28, 50);
    shaft.filletLeft(0.6);
    shaft.cylinder(96, 48);
    shaft.keyway(12, 72, 5.5, 14).chamferRight(1.5);
    (void)left;

    BevelGear bevel;
    bevel.teeth = 40;
    bevel.outer_module_mm = 6;
    bevel.cone_angle_deg = 63.435;
    bevel.mate_cone_angle_deg = 26.565;
    bevel.apex = ApexSide::plus;
    bevel.mesh_angle_deg = 90;
    bevel.face_width_mm = 38;
    a.parts.push_back(part("G1", "Straight bevel wheel", collar + 18 + 62, 14, torque(PowerSense::driven, 420), bevel));
    a.parts.push_back(
        part("G2", "Rack pinion", shaft.end_mm() - 48, 7, remaining(PowerSense::driving), gear(17, 8, 0, Hand::none, 180, 80)));
    PointLoad brake;
    brake.moment_Nmm = {0, 0, 30000};
    a.parts.push_back(part("F1", "Moment of the position switch arm", collar + 18 + 200, {}, {}, brake));

    const BearingChoice two_row = test::genericBearing(Family::angular_contact_ball_two_row, "3210");
    CatalogueRow row;
    row.catalogue = "typed";
    row.catalogue_version = "1";
    row.designation = "6310";
    row.series = "63";
    row.geometry_class = GeometryClass::deep_groove_ball;
    row.bore_mm = 50;
    row.outer_mm = 110;
    row.width_mm = 27;
    row.chamfer_mm = 2;
    row.C_N = 62000;
    row.C0_N = 38000;
    row.f0 = 13;
    row.provenance = Provenance::own;
    row.source = "Store sheet of the water board, noted 2026-11-10";
    const BearingChoice stock{Family::deep_groove_ball, {{row, std::nullopt}}, SetArrangement::none};
    a.supports.push_back(support("A", collar - 0.5 * two_row.width_mm(), Role::locating, two_row, "k6", "H7",
                                 {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover, HoldKind::cover}));
    a.supports.push_back(support("B", right + 0.5 * row.width_mm, Role::non_locating, stock, "k6", "H7",
                                 {HoldKind::shoulder, HoldKind::retaining_ring, HoldKind::nothing, HoldKind::nothing}));
    for (Support& each : a.supports)
        each.required_S0 = 1.5;

    LoadCase hold = loadCase("hold", "Held against the spring tide", 0.9, 0, 1.3);
    a.duty = {{loadCase("raise", "Raise", 0.05, 8), loadCase("lower", "Lower", 0.05, -8, 0.3), hold}, 3000.0, 90.0, {}, 1.25};
    a.surroundings.temperature_C = 20;
    a.surroundings.ambient_C = 12;
    a.surroundings.lubricant = Lubricant::grease;
    a.surroundings.moist = true;
    return a;
}

/// Hollow drum shaft driven through an internal ring gear.
Arrangement mixerDrum()
{
    Arrangement a;
    a.title = {
        "Hollow shaft of a clay mixer",
        "CM-140-03",
        "",
        "",
        "2026-11-25",
        "Bored shaft with conical mouth, driven by an internal ring gear; water runs through; roller bearing with clearance"};
    a.shaft.material.name = "S355JR";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(90, 118, 80);
    a.shaft.segments.back().bore_mm = 90;
    a.shaft.segments.back().bore_end_mm = 70;
    shaft.chamferLeft(2).keyway(12, 64, 11, 32);
    shaft.cylinder(36, 118, 70);
    const double left = shaft.cylinder(50, 120, 70);
    shaft.filletRight(1);
    const double body = shaft.cylinder(260, 138, 70);
    const double right = shaft.cylinder(34, 120, 70);
    shaft.filletLeft(1);
    shaft.cylinder(30, 118, 70);
    shaft.cone(150, 116, 100, 70);
    (void)left;

    CylindricalGear ring = gear(90, 4, 0, Hand::none, -90, 60);
    ring.internal = true;
    a.parts.push_back(part("G1", "Ring gear", 46, 38, power(PowerSense::driven, 9), ring));
    a.parts.push_back(part("M1", "Mixing drum, full", shaft.end_mm() - 75, 320, remaining(PowerSense::driving),
                           WeightBody{MassEccentricity{3.0}, 620, 130}));

    const BearingChoice spherical = test::genericBearing(Family::spherical_roller, "23024");
    const BearingChoice roller = test::genericBearing(Family::cylindrical_roller_NU, "NU1024");
    a.supports.push_back(support("A", body - 0.5 * spherical.width_mm(), Role::locating, spherical, "m6", "H7",
                                 {HoldKind::nut, HoldKind::shoulder, HoldKind::cover, HoldKind::shoulder}));
    Support b1 = support("B", right + 0.5 * roller.width_mm(), Role::non_locating, roller, "m6", "H7",
                         {HoldKind::shoulder, HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover});
    b1.gap = RadialGap{0.03, 1.5e6, 1.0};
    a.supports.push_back(b1);

    a.duty = {
        {loadCase("mix", "Mixing", 0.8, 34), loadCase("empty", "Emptying, reversed", 0.2, -28, 0.7)}, 25000.0, 90.0, {}, 1.5};
    a.surroundings.temperature_C = 50;
    a.surroundings.lubricant = Lubricant::grease;
    a.surroundings.dirt = Dirt::dirty;
    a.surroundings.moist = true;
    return a;
}

} // namespace shaftwright::samples
