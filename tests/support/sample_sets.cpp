// Samples: shafts whose locating support holds several bearings, and bearings full of rollers.

#include "tests/support/sample_helpers.h"

namespace shaftwright::samples
{

/// Screw that presses clay against its thrust bearing.
Arrangement extruderScrew()
{
    Arrangement a;
    a.title = {"Screw shaft of a brick press",
               "BP-022-01",
               "",
               "",
               "2026-11-25",
               "Thrust of 42 kN always to the same side: spherical roller thrust bearing with a radial guide beside it"};
    a.shaft.material.name = "42CrMo4";
    ShaftMaker shaft(a.shaft);
    const double screw = shaft.cylinder(260, 86);
    shaft.keyway(20, 200, 9, 22).chamferLeft(2);
    const double left = shaft.cylinder(34, 90);
    shaft.filletRight(1);
    const double collar = shaft.cylinder(20, 106);
    const double seat = shaft.cylinder(130, 96);
    shaft.keyway(15, 100, 9, 28);
    shaft.cylinder(60, 94);
    const double right = shaft.cylinder(90, 80);
    shaft.filletLeft(1.5);
    shaft.cylinder(22, 80);
    shaft.feature(FeatureKind::thread, 0, 22, 1.2).chamferRight(2);
    (void)left;

    Impeller auger;
    auger.thrust_N = 42000;
    auger.radial_z_N = -600;
    auger.outer_mm = 260;
    auger.width_mm = 220;
    a.parts.push_back(part("I1", "Pressing screw", screw + 125, 42, power(PowerSense::driving, 22), auger));
    a.parts.push_back(
        part("G1", "Spur wheel", seat + 65, 48, remaining(PowerSense::driven), gear(72, 5, 0, Hand::none, 120, 90)));

    const BearingChoice guide = test::genericBearing(Family::cylindrical_roller_NU, "NU218");
    const BearingChoice thrust{Family::composite_spherical_thrust,
                               {{test::genericRow("29416"), Carries::plus}, {test::genericRow("22216"), std::nullopt}},
                               SetArrangement::none};
    a.supports.push_back(support("A", collar - 0.5 * guide.width_mm(), Role::non_locating, guide, "m6", "H7",
                                 {HoldKind::sleeve, HoldKind::shoulder, HoldKind::shoulder, HoldKind::cover}));
    Support back = support("B", right + 0.5 * thrust.width_mm(), Role::locating, thrust, "m6", "H7",
                           {HoldKind::shoulder, HoldKind::nut, HoldKind::shoulder, HoldKind::cover});
    back.carries = Carries::plus;
    a.supports.push_back(back);

    LoadCase stiff = loadCase("stiff", "Stiff clay", 0.25, 38, 1.15);
    stiff.free_load_factor = 1.3;
    a.duty = {{loadCase("press", "Pressing", 0.75, 42), stiff}, 40000.0, 90.0, {}, 1.25};
    a.surroundings.temperature_C = 65;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 320;
    a.surroundings.dirt = Dirt::dirty;
    const char* reason = "Springs press the housing washer on; the bore beside it is free for the guide";
    a.acceptances = {
        {"X1", "no-suited-family", "supports.B", reason, "Design office", "2026-11-25", {{"spring_N", 30634.9}}},
        {"X2", "chosen-is-reserved", "supports.B.bearing", reason, "Design office", "2026-11-25", {{"spring_N", 30634.9}}}};
    return a;
}

/// Fast pinion: rollers for the radial, four-point contact balls for the axial force.
Arrangement blowerPinion()
{
    Arrangement a;
    a.title = {"Fast pinion of a blower gear",
               "BG-064-02",
               "",
               "",
               "2026-11-25",
               "Cylindrical rollers take the radial, four-point contact balls with a free outer ring the axial force"};
    a.shaft.material.name = "18CrNiMo7-6";
    ShaftMaker shaft(a.shaft);
    const double left = shaft.cylinder(42, 45);
    shaft.chamferLeft(1.5).filletRight(0.6);
    const double collar = shaft.cylinder(18, 54);
    const double teeth = shaft.cylinder(72, 62);
    shaft.cylinder(18, 54);
    const double right = shaft.cylinder(22, 45);
    shaft.filletLeft(0.6);
    shaft.cylinder(40, 43);
    shaft.cylinder(64, 40);
    shaft.keyway(7, 50, 5, 12).chamferRight(1.5);
    (void)left;

    a.parts.push_back(
        part("G1", "Pinion", teeth + 36, {}, remaining(PowerSense::driven), gear(26, 2.75, 12, Hand::left, 200, 64)));
    Coupling blower = coupling(130, 60);
    blower.radial_force_N = 250;
    blower.axial_force_N = 120;
    a.parts.push_back(
        part("C1", "Disc coupling to the blower", shaft.end_mm() - 32, 4.5, power(PowerSense::driving, 75), blower));

    const BearingChoice fixed{Family::composite_NU_four_point,
                              {{test::genericRow("NU209"), std::nullopt}, {test::genericRow("QJ209"), std::nullopt}},
                              SetArrangement::none};
    const BearingChoice roller = test::genericBearing(Family::cylindrical_roller_NU, "NU209");
    a.supports.push_back(support("A", collar - 0.5 * fixed.width_mm(), Role::locating, fixed, "k5", "H6",
                                 {HoldKind::nut, HoldKind::shoulder, HoldKind::cover, HoldKind::shoulder}));
    a.supports.push_back(support("B", right + 0.5 * roller.width_mm(), Role::non_locating, roller, "k5", "H6",
                                 {HoldKind::shoulder, HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover}));

    LoadCase hot = loadCase("full", "Full air", 0.7, 5800);
    hot.shaft_temperature_C = 85;
    hot.housing_temperature_C = 70;
    LoadCase part_load = loadCase("part", "Half air", 0.3, 5800, 0.55);
    part_load.shaft_temperature_C = 75;
    part_load.housing_temperature_C = 64;
    a.duty = {{hot, part_load}, 30000.0, 90.0, {}, 1.1};
    a.surroundings.temperature_C = 80;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 68;
    return a;
}

/// Pump with all impellers facing the same way.
Arrangement stagePump()
{
    Arrangement a;
    a.title = {"Shaft of a four-stage water pump",
               "WP-410-01",
               "",
               "",
               "2026-11-25",
               "Thrust of four wheels on two bearings in tandem, a third holds the opposite sense while the pump starts"};
    a.shaft.material.name = "C45E";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(90, 48);
    shaft.keyway(8, 74, 5.5, 14).chamferLeft(2);
    shaft.cylinder(60, 55);
    const double left = shaft.cylinder(34, 60);
    shaft.filletRight(1);
    shaft.cylinder(70, 72);
    const double wet = shaft.cylinder(440, 76);
    shaft.keyway(20, 400, 5, 14);
    shaft.cylinder(70, 72);
    const double right = shaft.cylinder(94, 60);
    shaft.filletLeft(1);
    shaft.cylinder(20, 60);
    shaft.feature(FeatureKind::thread, 0, 20, 1).chamferRight(2);

    Coupling motor = coupling(160, 80);
    motor.radial_force_N = 400;
    a.parts.push_back(part("C1", "Flexible coupling", 42, 8, remaining(PowerSense::driven), motor));
    for (int stage = 0; stage < 4; ++stage) {
        const std::string id = "I" + std::to_string(stage + 1);
        const std::string name = "Wheel, stage " + std::to_string(stage + 1);
        Impeller wheel;
        wheel.thrust_N = -2100;
        wheel.radial_z_N = stage == 3 ? -420 : -260;
        wheel.rotating_radial_N = 45;
        wheel.outer_mm = 240;
        wheel.width_mm = 46;
        a.parts.push_back(part(id.c_str(), name.c_str(), wet + 60 + 106 * stage, 7.5, power(PowerSense::driving, 18.5), wheel));
    }

    const BearingChoice guide = test::genericBearing(Family::deep_groove_ball, "6212");
    const BearingChoice thrust{Family::composite_tandem_opposed,
                               {{test::genericRow("7312-40"), Carries::minus},
                                {test::genericRow("7312-40"), Carries::minus},
                                {test::genericRow("7312-40"), Carries::plus}},
                               SetArrangement::none};
    a.supports.push_back(support("A", left + 34 - 0.5 * guide.width_mm(), Role::non_locating, guide, "k6", "H7",
                                 {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::nothing, HoldKind::nothing}));
    a.supports.push_back(support("B", right + 0.5 * thrust.width_mm(), Role::locating, thrust, "k6", "J7",
                                 {HoldKind::shoulder, HoldKind::nut, HoldKind::shoulder, HoldKind::cover}));

    LoadCase start = loadCase("start", "Start, thrust reversed", 0.01, 2960, 0.5);
    start.free_load_factor = -0.5;
    a.duty = {{loadCase("run", "Running", 0.99, 2960), start}, 25000.0, 90.0, {}, 1.0};
    a.surroundings.temperature_C = 75;
    a.surroundings.lubricant = Lubricant::oil;
    a.surroundings.viscosity_grade = 68;
    return a;
}

/// Slow wheel with as many rollers as fit.
Arrangement craneWheel()
{
    Arrangement a;
    a.title = {"Travelling wheel of a dock crane",
               "DC-008-06",
               "",
               "",
               "2026-11-25",
               "Slow and heavy: full complement cylindrical rollers with end play take side forces of either sense"};
    a.shaft.material.name = "42CrMo4";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(44, 80);
    shaft.chamferLeft(2).filletRight(0.6);
    const double left_collar = shaft.cylinder(24, 94);
    const double seat = shaft.cylinder(124, 98);
    shaft.keyway(12, 100, 9, 28);
    shaft.cylinder(24, 94);
    const double right = shaft.cylinder(46, 80);
    shaft.filletLeft(0.6);
    shaft.cylinder(22, 78);
    shaft.cylinder(96, 70);
    shaft.keyway(10, 80, 7.5, 20).chamferRight(2);

    PointLoad rail;
    rail.force_N = {0, 0, 62000};
    PointLoad side;
    side.force_N = {3000, 0, 0};
    side.offset_z_mm = -200;
    PointLoad other_side = side;
    other_side.force_N = {-3000, 0, 0};
    a.parts.push_back(
        part("M1", "Travelling wheel", seat + 62, 62, remaining(PowerSense::driving), WeightBody{std::monostate{}, 400, 118}));
    a.parts.push_back(part("F1", "Rail: wheel load", seat + 62, {}, {}, rail));
    a.parts.push_back(part("F2", "Side force, skewing out", seat + 62, {}, {}, side));
    a.parts.push_back(part("F3", "Side force, skewing in", seat + 62, {}, {}, other_side));
    a.parts.push_back(
        part("G1", "Drive wheel", shaft.end_mm() - 48, 21, torque(PowerSense::driven, 900), gear(48, 6, 0, Hand::none, 60, 80)));

    const BearingChoice full = test::genericBearing(Family::cylindrical_roller_full, "NCF3016");
    Support a1 = support("A", left_collar - 0.5 * full.width_mm(), Role::end_play, full, "m6", "K7",
                         {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover, HoldKind::nothing});
    a1.carries = Carries::minus;
    a1.play_mm = 0.8;
    Support b1 = support("B", right + 0.5 * full.width_mm(), Role::end_play, full, "m6", "K7",
                         {HoldKind::shoulder, HoldKind::sleeve, HoldKind::nothing, HoldKind::cover});
    b1.carries = Carries::plus;
    b1.play_mm = 0.8;
    a.supports = {a1, b1};

    LoadCase forth = loadCase("forth", "Forth, trolley near", 0.4, 40);
    forth.parts[PartId("F3")] = {{}, false};
    LoadCase back = loadCase("back", "Back, trolley near", 0.4, -40);
    back.parts[PartId("F2")] = {{}, false};
    LoadCase away = loadCase("away", "Forth, trolley far", 0.2, 40, 0.6);
    away.free_load_factor = 0.55;
    away.parts = forth.parts;
    a.duty = {{forth, back, away}, 12500.0, 90.0, {}, 1.25};
    a.surroundings.temperature_C = 30;
    a.surroundings.lubricant = Lubricant::grease;
    a.surroundings.dirt = Dirt::dirty;
    a.surroundings.moist = true;
    return a;
}

/// Small and quick: knife shaft on a set back to back.
Arrangement knifeShaft()
{
    Arrangement a;
    a.title = {"Knife shaft of a bread slicer",
               "BS-300-02",
               "",
               "",
               "2026-11-25",
               "Overhung knife on a set of angular contact bearings back to back, toothed belt with given pretension behind"};
    a.shaft.material.name = "C45E";
    ShaftMaker shaft(a.shaft);
    shaft.cylinder(28, 22);
    shaft.chamferLeft(1).feature(FeatureKind::thread, 0, 14, 0.9);
    shaft.cylinder(14, 36);
    const double front = shaft.cylinder(34, 30);
    shaft.filletLeft(0.6);
    shaft.cylinder(70, 28);
    const double rear = shaft.cylinder(20, 25);
    shaft.filletLeft(0.6);
    shaft.cylinder(10, 24);
    shaft.cylinder(40, 20);
    shaft.keyway(5, 32, 3.5, 6).chamferRight(1);

    PointLoad cut;
    cut.force_N = {60, -90, 150};
    a.parts.push_back(
        part("M1", "Round knife", 20, 3.6, remaining(PowerSense::driving), WeightBody{UnbalanceGmm{0.015}, 300, 3}));
    a.parts.push_back(part("F1", "Cutting force", 20, {}, {}, cut));
    BeltPulley belt = pulley(BeltKind::toothed, 61.1, 40.7, 210, -60, 26);
    belt.tension = Pretension{300, {}};
    a.parts.push_back(part("P1", "Toothed pulley", shaft.end_mm() - 21, 0.5, power(PowerSense::driven, 0.75), belt));

    const BearingChoice set =
        bearingSet(Family::angular_contact_set_O, "7206-40", SetArrangement::O, Carries::plus, Carries::minus);
    const BearingChoice rear_ball = test::genericBearing(Family::deep_groove_ball_two_row, "4205");
    a.supports.push_back(support("A", front + 0.5 * set.width_mm(), Role::locating, set, "k5", "J6",
                                 {HoldKind::shoulder, HoldKind::sleeve, HoldKind::cover, HoldKind::shoulder}));
    a.supports.push_back(support("B", rear + 0.5 * rear_ball.width_mm(), Role::non_locating, rear_ball, "k5", "H6",
                                 {HoldKind::sleeve, HoldKind::sleeve, HoldKind::nothing, HoldKind::nothing}));
    a.duty = {{loadCase("slice", "Slicing", 0.8, 900), loadCase("idle", "Idling", 0.2, 900, 0.2)}, 10000.0, 90.0, {}, 1.25};
    a.duty.load_cases[1].free_load_factor = 0.6;
    a.surroundings.temperature_C = 40;
    a.surroundings.lubricant = Lubricant::grease;
    a.surroundings.quiet = Grade::raised;
    return a;
}

} // namespace shaftwright::samples
