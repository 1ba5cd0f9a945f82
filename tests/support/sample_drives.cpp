// Samples: shafts of drives, each with the bearings that its plant would use.

#include "tests/support/sample_helpers.h"

namespace shaftwright::samples
{

/// Fan wheel and pulley, both overhung, in split plummer blocks.
Arrangement fanShaft()
{
    Arrangement a;
    a.title = {"Fan shaft with overhung pulley",
               "FN-031-01",
               "",
               "",
               "2026-11-21",
               "Drying air for a hop kiln: V-belt from the motor below, fan wheel on the other end, two split plummer blocks"};
    a.shaft.material.name = "C45E";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(80, 50);
    shaft.chamferLeft(2).keyway(8, 63, 5.5, 14).feature(FeatureKind::centre_hole, 0, 12, 0, 8);
    shaft.cylinder(30, 55);
    shaft.filletRight(0.6);
    const double left = shaft.cylinder(42, 60);
    shaft.filletRight(1);
    const double body = shaft.cylinder(360, 72);
    const double right = shaft.cylinder(42, 60);
    shaft.filletLeft(1);
    shaft.cylinder(40, 55);
    shaft.cylinder(120, 50);
    shaft.keyway(20, 80, 5.5, 14).chamferRight(2);

    BeltPulley drive = pulley(BeltKind::v, 250, 200, 700, -60, 63, 3);
    drive.tension = TensionFactor{2.0};
    drive.groove_deg = 38;
    a.parts.push_back(part("P1", "Pulley, 3 grooves", 40, 14, power(PowerSense::driven, 11), drive));
    Impeller wheel;
    wheel.thrust_N = -100;
    wheel.rotating_radial_N = 90;
    wheel.outer_mm = 630;
    wheel.width_mm = 90;
    a.parts.push_back(part("I1", "Fan wheel", right + 42 + 40 + 60, 78, remaining(PowerSense::driving), wheel));

    const BearingChoice belt_side = test::genericBearing(Family::self_aligning_ball, "2212");
    const BearingChoice fan_side = test::genericBearing(Family::self_aligning_ball, "1212");
    a.supports.push_back(support("A", body - 0.5 * belt_side.width_mm(), Role::non_locating, belt_side, "k6", "H7",
                                 {HoldKind::nut, HoldKind::shoulder, HoldKind::nothing, HoldKind::nothing}));
    a.supports.push_back(support("B", right + 0.5 * fan_side.width_mm(), Role::locating, fan_side, "k6", "H7",
                                 {HoldKind::shoulder, HoldKind::nut, HoldKind::cover, HoldKind::cover}));
    (void)left;

    LoadCase warm = loadCase("warm", "Warm air", 0.85, 1160);
    warm.shaft_temperature_C = 65;
    warm.housing_temperature_C = 50;
    LoadCase cold = loadCase("cold", "Cold start, dense air", 0.15, 1160, 1.2);
    cold.free_load_factor = 1.15;
    a.duty = {{warm, cold}, 20000.0, 90.0, {}, 1.1};
    a.surroundings.temperature_C = 55;
    a.surroundings.lubricant = Lubricant::grease;
    a.surroundings.housing_material = HousingMaterial::grey_iron;
    a.surroundings.dirt = Dirt::normal;
    a.requirements = {{RequirementId("R1"), RequirementKind::slope_at, "A", {}, 1.5, "Felt seals of the blocks"}};
    return a;
}

/// Spiral bevel pinion with an adjusted pair of tapered rollers back to back.
Arrangement bevelPinion()
{
    Arrangement a;
    a.title = {"Bevel pinion shaft of a right-angle drive",
               "RW-118-03",
               "",
               "",
               "2026-11-21",
               "Overhung spiral bevel pinion; two tapered roller bearings adjusted back to back by a nut"};
    a.shaft.material.name = "18CrNiMo7-6";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(55, 34);
    shaft.chamferLeft(1.5);
    shaft.cylinder(7, 60);
    const double left = shaft.cylinder(28, 50);
    shaft.filletLeft(1);
    shaft.cylinder(78, 48);
    const double right = shaft.cylinder(24, 45);
    shaft.filletLeft(0.6);
    shaft.cylinder(20, 45);
    shaft.feature(FeatureKind::thread, 0, 18, 1);
    shaft.cylinder(70, 38);
    shaft.keyway(6, 56, 5, 10).chamferRight(2);

    BevelGear pinion;
    pinion.teeth = 15;
    pinion.outer_module_mm = 5;
    pinion.cone_angle_deg = 20.556;
    pinion.mate_cone_angle_deg = 69.444;
    pinion.spiral_deg = 35;
    pinion.hand = Hand::right;
    pinion.apex = ApexSide::minus;
    pinion.mesh_angle_deg = 0;
    pinion.face_width_mm = 32;
    a.parts.push_back(part("G1", "Bevel pinion", 22, 0.8, power(PowerSense::driving, 15), pinion));
    Coupling motor = coupling(120, 66);
    motor.radial_force_N = 350;
    a.parts.push_back(part("C1", "Flexible coupling", shaft.end_mm() - 35, 4.2, remaining(PowerSense::driven), motor));

    const BearingChoice large = test::genericBearing(Family::tapered_roller, "32210");
    const BearingChoice small = test::genericBearing(Family::tapered_roller, "32209");
    Support front = support("A", left + 0.5 * large.width_mm(), Role::adjusted, large, "m6", "H7",
                            {HoldKind::shoulder, HoldKind::sleeve, HoldKind::nothing, HoldKind::shoulder});
    front.carries = Carries::plus;
    Support rear = support("B", right + 0.5 * small.width_mm(), Role::adjusted, small, "j6", "H7",
                           {HoldKind::nothing, HoldKind::nut, HoldKind::shoulder, HoldKind::nothing});
    rear.carries = Carries::minus;
    a.supports = {front, rear};

    LoadCase start = loadCase("start", "Start against the load", 0.02, 730, 0.8);
    start.peak_factor = 1.6;
    a.duty = {{loadCase("full", "Full load", 0.6, 1460), loadCase("part", "Part load", 0.38, 1460, 0.6), start},
              15000.0,
              90.0,
              {},
              1.25};
    a.surroundings.temperature_C = 80;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 150;
    a.surroundings.housing_material = HousingMaterial::grey_iron;
    a.surroundings.guide = Grade::raised;
    a.surroundings.stiffness_wish = StiffnessWish::both;
    a.requirements = {{RequirementId("R1"), RequirementKind::deflection_at, "G1", {}, 0.05, "A hundredth of the outer module"}};
    return a;
}

/// Worm shaft that turns both ways; tapered pair takes the thrust.
Arrangement wormShaft()
{
    Arrangement a;
    a.title = {
        "Worm shaft of a gate hoist",
        "GH-009-01",
        "",
        "",
        "2026-11-22",
        "Worm shaft that lifts and lowers: thrust of either sense on a steep tapered pair, warm shaft free at the other end"};
    a.shaft.material.name = "16MnCr5";
    a.shaft.surface_hardness_HRC = 58.0;
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(60, 30);
    shaft.chamferLeft(2).keyway(5, 45, 4, 8);
    shaft.cylinder(32, 38);
    const double left = shaft.cylinder(22, 40);
    shaft.filletRight(0.6).groove(1.15, 1.85, 1.25);
    const double collar = shaft.cylinder(16, 48);
    shaft.cylinder(110, 38);
    shaft.cylinder(16, 50);
    const double right = shaft.cylinder(44, 40);
    shaft.filletLeft(0.6);
    shaft.cylinder(23, 40);
    shaft.feature(FeatureKind::thread, 0, 23, 1).chamferRight(2);

    Coupling motor = coupling(105, 58);
    motor.radial_force_N = 220;
    a.parts.push_back(part("C1", "Flexible coupling", 30, 3.4, remaining(PowerSense::driven), motor));
    Worm worm;
    worm.starts = 2;
    worm.axial_module_mm = 5;
    worm.reference_diameter_mm = 50;
    worm.hand = Hand::right;
    worm.mesh_angle_deg = -90;
    worm.face_width_mm = 80;
    a.parts.push_back(part("W1", "Worm", collar + 16 + 55, {}, power(PowerSense::driving, 5.5), worm));

    const BearingChoice roller = test::genericBearing(Family::cylindrical_roller_NU, "NU208");
    const BearingChoice pair = bearingSet(Family::tapered_roller_pair, "31308", SetArrangement::X, Carries::minus, Carries::plus);
    Support a1 = support("A", collar - 0.5 * roller.width_mm(), Role::non_locating, roller, "k6", "J7",
                         {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover, HoldKind::retaining_ring});
    // Face to face the inner rings stand on the shoulder, the outer rings reach beyond them.
    Support b1 = support("B", right + pair.rows.front().row.inner_width_mm, Role::locating, pair, "k6", "J7",
                         {HoldKind::shoulder, HoldKind::nut, HoldKind::shoulder, HoldKind::cover});
    a.supports = {a1, b1};
    (void)left;

    LoadCase lift = loadCase("lift", "Lift", 0.5, 1450);
    lift.shaft_temperature_C = 95;
    lift.housing_temperature_C = 70;
    LoadCase lower = loadCase("lower", "Lower", 0.48, -1450, 0.45);
    lower.shaft_temperature_C = 80;
    lower.housing_temperature_C = 60;
    LoadCase jam = loadCase("jam", "Silted sill", 0.02, 1450, 1.4);
    jam.peak_factor = 1.5;
    a.duty = {{lift, lower, jam}, 8000.0, 90.0, {}, 1.1};
    a.surroundings.temperature_C = 90;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 460;
    a.surroundings.housing_material = HousingMaterial::grey_iron;
    const char* reason = "Pair set with light preload when mounted, so that the idle row keeps rolling; run in on the bench";
    a.acceptances = {
        {"X1", "row-unloaded", "supports.B.bearing", reason, "Design office", "2026-11-22", {{"axial_ratio", 2.892}}},
        {"X2", "chosen-is-reserved", "supports.B.bearing", reason, "Design office", "2026-11-22", {{"axial_ratio", 2.892}}}};
    a.remarks = {
        {RemarkId("N1"), "supports.B.bearing", "", "2026-11-22", "Is the pair set with play or light preload when cold?", false}};
    return a;
}

/// Wheel of a worm gear with a sprocket outside.
Arrangement wormWheelShaft()
{
    Arrangement a;
    a.title = {"Worm wheel shaft with chain drive",
               "GH-009-02",
               "",
               "",
               "2026-11-22",
               "Slow shaft of a worm gear, sprocket overhung; two tapered roller bearings adjusted face to face by the cover"};
    a.shaft.material.name = "42CrMo4";
    ShaftMaker shaft(a.shaft);
    const double left = shaft.cylinder(26, 55);
    shaft.chamferLeft(2).filletRight(1);
    const double sleeve = shaft.cylinder(12, 66);
    const double seat = shaft.cylinder(64, 66);
    shaft.keyway(7, 50, 7, 18);
    shaft.cylinder(14, 78);
    shaft.cylinder(12, 69);
    const double right = shaft.cylinder(28, 60);
    shaft.filletLeft(1);
    shaft.cylinder(30, 58);
    shaft.cylinder(70, 50);
    shaft.keyway(8, 56, 5.5, 14).chamferRight(2);
    (void)sleeve;

    WormWheel wheel;
    wheel.teeth = 40;
    wheel.reference_diameter_mm = 200;
    wheel.lead_angle_deg = 11.31;
    wheel.hand = Hand::right;
    wheel.friction = 0.045;
    wheel.mesh_angle_deg = 90;
    wheel.face_width_mm = 45;
    a.parts.push_back(part("W1", "Worm wheel", seat + 32, 13, power(PowerSense::driven, 4.4), wheel));
    a.parts.push_back(part("K1", "Chain sprocket", shaft.end_mm() - 36, 6.5, remaining(PowerSense::driving),
                           sprocket(25, 25.4, 38, 760, 150, 15)));

    const BearingChoice l = test::genericBearing(Family::tapered_roller, "32011X");
    const BearingChoice r = test::genericBearing(Family::tapered_roller, "32012X");
    Support a1 = support("A", left + 26 - 0.5 * l.width_mm(), Role::adjusted, l, "k6", "J7",
                         {HoldKind::nothing, HoldKind::shoulder, HoldKind::cover, HoldKind::nothing});
    a1.carries = Carries::minus;
    Support b1 = support("B", right + 0.5 * r.width_mm(), Role::adjusted, r, "k6", "J7",
                         {HoldKind::shoulder, HoldKind::nothing, HoldKind::nothing, HoldKind::cover});
    b1.carries = Carries::plus;
    a.supports = {a1, b1};

    a.duty = {{loadCase("lift", "Lift", 0.5, 72.5), loadCase("lower", "Lower", 0.5, -72.5, 0.4)}, 20000.0, 95.0, {}, 1.1};
    a.surroundings.temperature_C = 70;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 460;
    return a;
}

/// Nothing here is sized: the findings are the purpose.
Arrangement hastySawShaft()
{
    Arrangement a;
    a.title = {"Saw shaft drawn in a hurry",
               "SW-066-00",
               "",
               "",
               "2026-11-23",
               "Misses its requirements on purpose: too slender and under-sized, see the findings"};
    a.shaft.material.name = "E295";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(60, 28);
    shaft.keyway(6, 48, 4, 8).chamferLeft(1);
    const double left = shaft.cylinder(18, 30);
    const double body = shaft.cylinder(520, 34);
    shaft.keyway(240, 60, 5, 10);
    const double right = shaft.cylinder(18, 30);
    shaft.cylinder(60, 28);
    shaft.chamferRight(1);

    BeltPulley drive = pulley(BeltKind::flat, 140, 224, 900, 180, 60);
    drive.tension = TensionFactor{2.5};
    a.parts.push_back(part("P1", "Flat belt pulley", 30, 5, power(PowerSense::driven, 11), drive));
    a.parts.push_back(
        part("G1", "Feed pinion", body + 270, 3, power(PowerSense::driving, 4), gear(32, 3, 0, Hand::none, 90, 30)));
    a.parts.push_back(
        part("M1", "Saw blade", shaft.end_mm() - 30, 8, remaining(PowerSense::driving), WeightBody{UnbalanceGmm{4.0}, 500, 5}));
    PointLoad cut;
    cut.force_N = {0, -400, 900};
    a.parts.push_back(part("F1", "Cutting force", shaft.end_mm() - 30, {}, {}, cut));

    const BearingChoice ball = test::genericBearing(Family::deep_groove_ball, "6206");
    const BearingChoice roller = test::genericBearing(Family::cylindrical_roller_NU, "NU206");
    a.supports.push_back(support("A", body - 0.5 * ball.width_mm(), Role::locating, ball, "k6", "H7",
                                 {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover, HoldKind::cover}));
    a.supports.push_back(support("B", right + 0.5 * roller.width_mm(), Role::non_locating, roller, "k6", "H7",
                                 {HoldKind::shoulder, HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover}));
    (void)left;
    LoadCase knot = loadCase("knot", "Knot in the log", 0.02, 1200, 2.5);
    knot.free_load_factor = 3;
    knot.peak_factor = 3;
    a.duty = {{loadCase("cut", "Cutting", 0.98, 1200), knot}, 10000.0, 90.0, {}, 1.5};
    a.surroundings.dirt = Dirt::dirty;
    a.surroundings.lubricant = Lubricant::grease;
    a.requirements = {{RequirementId("R1"), RequirementKind::deflection_at, "G1", {}, 0.03, "A hundredth of the module"},
                      {RequirementId("R2"), RequirementKind::all_supports_life, "", {}, 8000, "Both bearings together"}};
    return a;
}

/// Round numbers for pencil and paper.
Arrangement classroomShaft()
{
    Arrangement a;
    a.title = {
        "Beam of the first lesson",
        "LB-001",
        "",
        "",
        "2026-11-23",
        "Span 400 mm, 1000 N at a quarter: reactions 750 N and 250 N, moment 75 Nm under the force (weight and shear left out)"};
    a.shaft.material.name = "steel";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(440, 30);
    shaft.chamferLeft(1).chamferRight(1);
    for (const double x : {13.5 - 1.6, 26.5, 413.5 - 1.6, 426.5})
        shaft.groove(x, 1.6, 0.7);
    PointLoad force;
    force.force_N = {0, 0, -1000};
    a.parts.push_back(part("F1", "Force of the exercise", 120, {}, {}, force));
    const BearingChoice ball = test::genericBearing(Family::deep_groove_ball, "6006");
    const Holds rings{HoldKind::retaining_ring, HoldKind::retaining_ring, HoldKind::cover, HoldKind::cover};
    a.supports.push_back(support("A", 20, Role::locating, ball, "k6", "H7", rings));
    a.supports.push_back(support("B", 420, Role::non_locating, ball, "k6", "H7",
                                 {HoldKind::retaining_ring, HoldKind::retaining_ring, HoldKind::nothing, HoldKind::nothing}));
    a.duty.load_cases = {loadCase("one", "The only case", 1, 1000)};
    a.duty.required_L_h = 20000;
    a.requirements = {
        {RequirementId("R1"), RequirementKind::deflection_at, "F1", {}, 0.1, "By hand: F a^2 b^2 / (3 L E I) = 0.0916 mm"}};
    a.options.own_weight = false;
    a.options.shear_factor = ShearModel::off;
    a.surroundings.temperature_C = 40;
    return a;
}

/// Reducer between tide wheel and generator; turns both ways.
Arrangement tideMill()
{
    Arrangement a;
    a.title = {"Second shaft of a tide mill reducer",
               "TM-207-02",
               "",
               "",
               "2026-11-24",
               "Helical gear from the water wheel side, V-belt to the generator; the tide turns it both ways"};
    a.shaft.material.name = "C45E";
    ShaftMaker shaft(a.shaft);
    const double left = shaft.cylinder(20, 35);
    shaft.chamferLeft(1.5).filletRight(0.6).groove(1.4, 1.6, 0.75);
    const double collar = shaft.cylinder(12, 44);
    const double seat = shaft.cylinder(58, 46);
    shaft.keyway(6, 45, 5.5, 14);
    shaft.cylinder(52, 54);
    const double right = shaft.cylinder(22, 40);
    shaft.filletLeft(0.6).groove(18.1, 1.85, 1.25);
    shaft.cylinder(26, 38);
    shaft.cylinder(66, 35);
    shaft.keyway(6, 50, 5, 10).chamferRight(1.5);
    (void)left;

    a.parts.push_back(
        part("G1", "Helical wheel", seat + 29, 7.5, power(PowerSense::driven, 7.5), gear(56, 3, 12, Hand::right, -90, 50)));
    BeltPulley belt = pulley(BeltKind::v, 180, 112, 620, -105, 50, 3);
    a.parts.push_back(part("P1", "V-belt pulley", right + 22 + 26 + 33, 5.2, remaining(PowerSense::driving), belt));

    const BearingChoice roller = test::genericBearing(Family::cylindrical_roller_NU, "NU207");
    const BearingChoice ball = test::genericBearing(Family::deep_groove_ball, "6208");
    a.supports.push_back(support("A", collar - 0.5 * roller.width_mm(), Role::non_locating, roller, "k6", "H7",
                                 {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover, HoldKind::shoulder}));
    a.supports.push_back(support("B", right + 0.5 * ball.width_mm(), Role::locating, ball, "k6", "H7",
                                 {HoldKind::shoulder, HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover}));

    LoadCase flood = loadCase("flood", "Flood", 0.35, -640, 6.1 / 7.5);
    LoadCase start = loadCase("start", "Start", 0.03, 720, 2.2);
    a.duty = {{loadCase("ebb", "Ebb", 0.62, 720), flood, start}, 20000.0, 90.0, {}, 1.1};
    a.surroundings.temperature_C = 60;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 220;
    a.surroundings.moist = true;
    a.revisions = {{"A", "2026-11-24", "", "First issue for the belt maker's check", "", ""}};
    a.proposed = {{"supports.A.bearing", {"smallest roller bearing of the seat that lasts"}}};
    return a;
}

} // namespace shaftwright::samples
