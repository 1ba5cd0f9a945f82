// Samples: small shafts with bearings of little height, and single angular contact bearings set against each other.

#include "tests/support/sample_helpers.h"

namespace shaftwright::samples
{

/// Angular contact bearings adjusted back to back, two of them in tandem.
Arrangement drillHead()
{
    Arrangement a;
    a.title = {"Spindle of a drilling head",
               "DR-116-02",
               "",
               "",
               "2026-11-25",
               "Feed force on two angular contact bearings in tandem, adjusted back to back against a third; ribbed belt above, "
               "chuck below"};
    a.shaft.material.name = "C45E";
    ShaftMaker shaft(a.shaft);
    shaft.cone(48, 26, 34);
    shaft.cylinder(12, 52);
    const double low = shaft.cylinder(38, 45);
    shaft.filletLeft(0.6);
    shaft.cylinder(96, 44);
    const double high = shaft.cylinder(16, 40);
    shaft.filletLeft(0.6);
    shaft.cylinder(16, 40);
    shaft.feature(FeatureKind::thread, 0, 16, 1);
    shaft.cylinder(52, 32);
    shaft.keyway(6, 40, 5, 10).chamferRight(1);

    PointLoad drill;
    drill.force_N = {2600, 120, -220};
    a.parts.push_back(
        part("M1", "Chuck and drill", 20, 2.8, remaining(PowerSense::driving), WeightBody{BalanceGrade{6.3}, 64, 36}));
    a.parts.push_back(part("F1", "Feed force", 20, {}, {}, drill));
    a.parts.push_back(part("P1", "Ribbed pulley", shaft.end_mm() - 26, 1.4, power(PowerSense::driven, 3),
                           pulley(BeltKind::ribbed, 112, 80, 260, 100, 34, 8)));

    const BearingChoice front =
        bearingSet(Family::angular_contact_set_tandem, "7009-40", SetArrangement::tandem, Carries::plus, Carries::plus);
    const BearingChoice back = test::genericBearing(Family::angular_contact_ball_40, "7208-40");
    Support a1 = support("A", low + 0.5 * front.width_mm(), Role::adjusted, front, "k5", "J6",
                         {HoldKind::shoulder, HoldKind::nothing, HoldKind::nothing, HoldKind::shoulder});
    a1.carries = Carries::plus;
    Support b1 = support("B", high + 0.5 * back.width_mm(), Role::adjusted, back, "j5", "J6",
                         {HoldKind::nothing, HoldKind::nut, HoldKind::shoulder, HoldKind::nothing});
    b1.carries = Carries::minus;
    a.supports = {a1, b1};

    LoadCase small = loadCase("small", "Small drills", 0.6, 1900, 0.6);
    small.free_load_factor = 0.5;
    a.duty = {{loadCase("large", "Large drills", 0.4, 620), small}, 12000.0, 90.0, {}, 1.1};
    a.surroundings.attitude_deg = 90;
    a.surroundings.temperature_C = 45;
    a.surroundings.lubricant = Lubricant::grease;
    a.acceptances = {
        {"X1",
         "chosen-is-reserved",
         "supports.A.bearing",
         "Bought as a matched tandem set and ground to the third bearing; one bearing of this height would be too soft",
         "Design office",
         "2026-11-25",
         {{"axial_ratio", 9.185}}}};
    return a;
}

/// Hardened shaft that runs straight on drawn cups.
Arrangement loomShaft()
{
    Arrangement a;
    a.title = {"Pattern shaft of a ribbon loom",
               "RL-045-07",
               "",
               "",
               "2026-11-25",
               "Little height: drawn cup needle bearings on the hardened shaft, a two-row ball bearing with a free outer ring "
               "guides it"};
    a.shaft.material.name = "16MnCr5";
    a.shaft.surface_hardness_HRC = 60.0;
    ShaftMaker shaft(a.shaft);
    const double left = shaft.cylinder(20, 25);
    shaft.chamferLeft(1);
    const double seat = shaft.cylinder(40, 32);
    shaft.feature(FeatureKind::press_seat, 5, 30);
    shaft.cylinder(90, 34);
    const double right = shaft.cylinder(20, 25);
    const double guide = shaft.cylinder(16, 20);
    shaft.filletLeft(0.6);
    shaft.cylinder(12, 20);
    shaft.feature(FeatureKind::thread, 0, 12, 0.8).chamferRight(1);

    a.parts.push_back(
        part("G1", "Helical wheel", seat + 20, 1.6, power(PowerSense::driven, 1.1), gear(54, 2, 20, Hand::left, -60, 24)));
    PointLoad cam;
    cam.force_N = {0, 300, -1300};
    a.parts.push_back(
        part("M1", "Cam drum", seat + 84, 2.2, remaining(PowerSense::driving), WeightBody{std::monostate{}, 90, 60}));
    a.parts.push_back(part("F1", "Cam rollers", seat + 84, {}, {}, cam));

    const BearingChoice cup = test::genericBearing(Family::needle_drawn_cup, "HK2512");
    const BearingChoice four_point = test::genericBearing(Family::four_point_contact_ball, "QJ204");
    a.supports.push_back(support("A", left + 12, Role::non_locating, cup, "h5", "N6"));
    a.supports.push_back(support("B", right + 8, Role::non_locating, cup, "h5", "N6"));
    a.supports.push_back(support("C", guide + 0.5 * four_point.width_mm(), Role::axial_only, four_point, "h6", "",
                                 {HoldKind::sleeve, HoldKind::nut, HoldKind::cover, HoldKind::cover}));
    a.duty = {{loadCase("weave", "Weaving", 0.95, 240), loadCase("back", "Searching a fault, backwards", 0.05, -60, 0.25)},
              20000.0,
              90.0,
              {},
              1.25};
    a.surroundings.temperature_C = 40;
    a.surroundings.lubricant = Lubricant::grease;
    return a;
}

/// Rope drum on cylindrical rollers, one of them with ribs both ways.
Arrangement winchDrum()
{
    Arrangement a;
    a.title = {"Drum shaft of a ferry winch",
               "FW-027-01",
               "",
               "",
               "2026-11-25",
               "Cylindrical rollers with ribs both ways locate the shaft, spur wheel beside the drum, brake holds at rest"};
    a.shaft.material.name = "42CrMo4";
    ShaftMaker shaft(a.shaft);
    const double left = shaft.cylinder(36, 70);
    shaft.chamferLeft(2).filletRight(1).groove(7, 2.65, 1.5);
    const double collar = shaft.cylinder(20, 84);
    const double seat = shaft.cylinder(96, 90);
    shaft.keyway(8, 80, 9, 25);
    const double drum = shaft.cylinder(300, 96);
    shaft.keyway(30, 240, 9, 28);
    shaft.cylinder(20, 84);
    const double right = shaft.cylinder(36, 70);
    shaft.filletLeft(1).groove(25, 2.65, 1.5).chamferRight(2);
    (void)left;

    a.parts.push_back(
        part("G1", "Spur wheel", seat + 46, 44, torque(PowerSense::driven, 1900), gear(76, 5, 0, Hand::none, 210, 80)));
    a.parts.push_back(
        part("M1", "Rope drum", drum + 150, 85, remaining(PowerSense::driving), WeightBody{std::monostate{}, 340, 260}));
    PointLoad rope;
    rope.force_N = {500, 3300, 10500};
    a.parts.push_back(part("F1", "Rope pull", drum + 190, {}, {}, rope));
    const BearingChoice fixed = test::genericBearing(Family::cylindrical_roller_NUP, "NUP214");
    const BearingChoice free_end = test::genericBearing(Family::cylindrical_roller_NU, "NU214");
    a.supports.push_back(support("A", collar - 0.5 * fixed.width_mm(), Role::locating, fixed, "m6", "H7",
                                 {HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover, HoldKind::shoulder}));
    a.supports.push_back(support("B", right + 0.5 * free_end.width_mm(), Role::non_locating, free_end, "m6", "H7",
                                 {HoldKind::shoulder, HoldKind::retaining_ring, HoldKind::shoulder, HoldKind::cover}));
    LoadCase hold = loadCase("hold", "Brake holds", 0.5, 0, 1.25);
    hold.free_load_factor = 1.25;
    LoadCase veer = loadCase("veer", "Veer out", 0.25, -26, 0.6);
    veer.free_load_factor = 0.6;
    a.duty = {{loadCase("haul", "Haul in", 0.25, 22), veer, hold}, 8000.0, 90.0, {}, 1.25};
    a.surroundings.temperature_C = 25;
    a.surroundings.lubricant = Lubricant::grease;
    a.surroundings.moist = true;
    return a;
}

} // namespace shaftwright::samples
