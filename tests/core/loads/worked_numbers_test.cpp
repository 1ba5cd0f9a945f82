// Published forces and our own worked numbers. Worked problems that stand in the reference data are checked by
// tests/reference/gear_checks.cpp and are not repeated here.
#include "tests/core/loads/one_part.h"

#include <catch2/catch.hpp>

using namespace shaftwright;
using namespace shaftwright::test;
using Catch::WithinAbs;
using Catch::WithinRel;

namespace
{

constexpr double lbf = 4.4482216; // N
constexpr double inch = 25.4;     // mm

void checkVector(const Vector3& found, const Vector3& expected, double tolerance)
{
    CHECK_THAT(found.x, WithinAbs(expected.x, tolerance));
    CHECK_THAT(found.y, WithinAbs(expected.y, tolerance));
    CHECK_THAT(found.z, WithinAbs(expected.z, tolerance));
}

/// Forces are printed to 1e-4 N, moments to 1e-3 Nmm: half a unit of the last digit.
void checkLoad(const PartLoad& load, const Vector3& force_N, const Vector3& moment_Nmm)
{
    checkVector(load.force_N, force_N, 0.6e-4);
    checkVector(load.moment_Nmm, moment_Nmm, 0.6e-3);
}

CylindricalGear helical(int z, double m_n, double beta_deg, Hand hand, double phi_deg)
{
    CylindricalGear gear;
    gear.teeth = z;
    gear.normal_module_mm = m_n;
    gear.helix_deg = beta_deg;
    gear.hand = hand;
    gear.pressure_angle_deg = 20.0;
    gear.mesh_angle_deg = phi_deg;
    return gear;
}

BevelGear spiralBevel(Hand hand)
{
    BevelGear gear;
    gear.mean_diameter_mm = 56.0;
    gear.cone_angle_deg = 22.0;
    gear.spiral_deg = 32.0;
    gear.hand = hand;
    gear.apex = ApexSide::plus;
    gear.pressure_angle_deg = 20.0;
    gear.mesh_angle_deg = 90.0;
    return gear;
}

Worm worm8()
{
    Worm worm;
    worm.starts = 2;
    worm.axial_module_mm = 4.0;
    worm.reference_diameter_mm = 45.0;
    worm.hand = Hand::right;
    worm.pressure_angle_deg = 20.0;
    worm.friction = 0.04;
    worm.mesh_angle_deg = 270.0;
    return worm;
}

BeltPulley pulley10()
{
    BeltPulley pulley;
    pulley.kind = BeltKind::v;
    pulley.diameter_mm = 140.0;
    pulley.other_diameter_mm = 315.0;
    pulley.centre_distance_mm = 520.0;
    pulley.direction_deg = 60.0;
    pulley.tension = TensionFactor{1.5};
    return pulley;
}

} // namespace

// --- Published ---------------------------------------------------------------------------------------------------

TEST_CASE("helical gears of Shigley problem 13-35", "[core][loads][published]")
{
    // Budynas and Nisbett, Shigley's Mechanical Engineering Design, problem 13-35 (solutions manual): 4 teeth per inch in the
    // normal section, 18 and 32 teeth, 20 and 30 degrees, Wt 800 lbf: Wr 336, Wa 462, W 983 lbf, diameters 5.196 and 9.238 in.
    // Torque from their Wt and diameter. Tolerance: half a unit of the printed digit.
    const double T = 800.0 * lbf * 5.196152 * inch / 2.0;
    const PartLoad load = loadOf(helical(18, inch / 4.0, 30.0, Hand::right, 0.0), driveTorque(PowerSense::driving, T), 1800.0);
    CHECK_THAT(load.diameter_mm / inch, WithinAbs(5.196, 0.0005));
    CHECK_THAT(std::abs(load.radial_N) / lbf, WithinAbs(336.0, 0.5));
    CHECK_THAT(std::abs(load.axial_N) / lbf, WithinAbs(462.0, 0.5));
    CHECK_THAT(norm(load.force_N) / lbf, WithinAbs(983.0, 0.5));
    const PartLoad mate = loadOf(helical(32, inch / 4.0, 30.0, Hand::left, 0.0), driveTorque(PowerSense::driven, T), 1000.0);
    CHECK_THAT(mate.diameter_mm / inch, WithinAbs(9.238, 0.0005));
}

TEST_CASE("spur gear of Shigley problem 13-32", "[core][loads][published]")
{
    // Same book, problem 13-32: 60 hp, 900 rpm, 4 teeth per inch, 20 teeth, 20 degrees: T 4202 lbf in, Wt 1681, Wr 612 lbf.
    // Tolerance one unit: the book rounds the factor 63 025.
    const PartLoad load =
        loadOf(helical(20, inch / 4.0, 0.0, Hand::none, 0.0), drivePower(PowerSense::driving, 60.0 * 0.7456999), 900.0);
    CHECK_THAT(std::abs(load.torque_Nmm) / (lbf * inch), WithinAbs(4202.0, 1.0));
    CHECK_THAT(load.tangential_N / lbf, WithinAbs(1681.0, 1.0));
    CHECK_THAT(std::abs(load.radial_N) / lbf, WithinAbs(612.0, 1.0));
    // The same in SI, worked apart.
    CHECK_THAT(std::abs(load.torque_Nmm), WithinAbs(474727.0, 1.0));
    CHECK_THAT(load.tangential_N, WithinAbs(7476.0, 0.1));
    CHECK_THAT(load.radial_N, WithinAbs(-2721.0, 0.1));
}

TEST_CASE("spur gear of Shigley problem 13-31", "[core][loads][published]")
{
    // Same book, problem 13-31: Wt 622 lbf, 20 degrees: Wr 226, F 662 lbf.
    const double T = 622.0 * lbf * 2.0 * inch;
    CylindricalGear gear = helical(40, 0.1 * inch, 0.0, Hand::none, 0.0);
    const PartLoad load = loadOf(gear, driveTorque(PowerSense::driving, T), 100.0);
    CHECK_THAT(load.diameter_mm, WithinAbs(4.0 * inch, 1e-9));
    CHECK_THAT(std::abs(load.radial_N) / lbf, WithinAbs(226.0, 0.5));
    CHECK_THAT(norm(load.force_N) / lbf, WithinAbs(662.0, 0.5));
}

TEST_CASE("straight bevel gear with 500 lbf at the teeth", "[core][loads][published]")
{
    // Problem of a shaft with a bevel gear (book not named where it was seen): 500 tangential, 58 radial, 173 lbf axial.
    // 20 degrees and the ratio 3 are inferred from the numbers.
    BevelGear gear;
    gear.mean_diameter_mm = 100.0;
    gear.cone_angle_deg = std::atan(3.0) / degree;
    gear.pressure_angle_deg = 20.0;
    const PartLoad load = loadOf(gear, driveTorque(PowerSense::driven, 500.0 * lbf * 50.0), 100.0);
    CHECK_THAT(load.tangential_N / lbf, WithinAbs(500.0, 1e-6));
    CHECK_THAT(-load.radial_N / lbf, WithinAbs(58.0, 0.5));
    CHECK_THAT(-load.axial_N / lbf, WithinAbs(173.0, 0.5));
}

TEST_CASE("toothed belt at 1.5 kW", "[core][loads][published]")
{
    // Worked school solution after Roloff/Matek: 1.5 kW at 9.58 m/s, shaft load 1.1 Ft = 172.24 N.
    BeltPulley pulley;
    pulley.kind = BeltKind::toothed;
    pulley.diameter_mm = 9.58 * 60000.0 / (std::numbers::pi * 3000.0);
    pulley.other_diameter_mm = pulley.diameter_mm;
    pulley.centre_distance_mm = 300.0;
    const PartLoad load = loadOf(pulley, drivePower(PowerSense::driving, 1.5), 3000.0);
    CHECK_THAT(load.radial_N, WithinAbs(172.24, 0.02)); // last printed digits of 1.1 * 1500 / 9.58
}

TEST_CASE("bevel gear of Shigley's worked example", "[core][loads][published]")
{
    // Budynas and Nisbett, bevel example (results from memory, medium): 5 hp at 600 rpm of the pinion, 15 and 45 teeth, mean
    // radius of the pinion 1.293 in, 20 degrees: Wt 406, on the gear Wr about 47 and Wa 140 lbf.
    BevelGear gear;
    gear.mean_diameter_mm = 2.0 * 1.293 * 3.0 * inch;
    gear.cone_angle_deg = std::atan(3.0) / degree;
    gear.pressure_angle_deg = 20.0;
    const PartLoad load = loadOf(gear, drivePower(PowerSense::driven, 5.0 * 0.7456999), 200.0);
    CHECK_THAT(load.tangential_N / lbf, WithinAbs(406.0, 0.5));
    CHECK_THAT(-load.radial_N / lbf, WithinAbs(47.0, 0.5));
    CHECK_THAT(-load.axial_N / lbf, WithinAbs(140.0, 0.5));
}

TEST_CASE("worm of Shigley's worked example", "[core][loads][published]")
{
    // Same book, worm example (from memory, high): two starts, right hand, 1 hp, 1200 rpm, 2 in, lead 1.0472 in, 14.5 degrees, f
    // 0.03: lead angle 9.46 degrees, Wx 52.5, W 278, Wy 69.6, Wz 264 lbf.
    Worm worm;
    worm.reference_diameter_mm = 2.0 * inch;
    worm.lead_angle_deg = std::atan(1.0472 / (std::numbers::pi * 2.0)) / degree;
    worm.hand = Hand::right;
    worm.pressure_angle_deg = 14.5;
    worm.friction = 0.03;
    const PartLoad load = loadOf(worm, drivePower(PowerSense::driving, 0.7456999), 1200.0);
    CHECK_THAT(*worm.lead_angle_deg, WithinAbs(9.46, 0.005));
    CHECK_THAT(load.tangential_N / lbf, WithinAbs(52.5, 0.05));
    CHECK_THAT(std::abs(load.radial_N) / lbf, WithinAbs(69.6, 0.1)); // their W is rounded to 278
    CHECK_THAT(std::abs(load.axial_N) / lbf, WithinAbs(264.0, 0.5));
    for (const DerivationStep& step : load.derivation) {
        if (step.code == "normal_force")
            CHECK_THAT(step.result / lbf, WithinAbs(278.0, 0.5));
    }
}

TEST_CASE("helical gear of Shigley's worked example", "[core][loads][published]")
{
    // Same book, helical example (from memory, high): 1 hp, 1800 rpm, 18 teeth, 12 teeth per inch, 20 and 30 degrees:
    // Wt 40.4, Wr 17.0, Wa 23.3 lbf.
    const PartLoad load =
        loadOf(helical(18, inch / 12.0, 30.0, Hand::left, 0.0), drivePower(PowerSense::driving, 0.7456999), 1800.0);
    CHECK_THAT(load.tangential_N / lbf, WithinAbs(40.4, 0.05));
    CHECK_THAT(std::abs(load.radial_N) / lbf, WithinAbs(17.0, 0.05));
    CHECK_THAT(std::abs(load.axial_N) / lbf, WithinAbs(23.3, 0.05));
}

// --- Worked by a second way: the force is built from the normal of the flank ------------------------------------------

TEST_CASE("helical pair: pinion and its mate", "[core][loads]")
{
    const PartLoad pinion = loadOf(helical(23, 2.5, 14.0, Hand::right, 205.0), drivePower(PowerSense::driving, 11.0), 1460.0);
    CHECK_THAT(pinion.diameter_mm, WithinAbs(59.26028, 0.6e-5));
    checkLoad(pinion, {605.4085, -200.6892, 2585.5963}, {-71946.755, -7581.070, 16257.658});
    const PartLoad mate =
        loadOf(helical(71, 2.5, 14.0, Hand::left, 25.0), driveTorque(PowerSense::driven, 222096.505), -1460.0 * 23.0 / 71.0);
    CHECK_THAT(mate.diameter_mm, WithinAbs(182.93392, 0.6e-5));
    checkLoad(mate, {-605.4085, 200.6892, -2585.5963}, {-222096.505, -23402.435, 50186.683});
}

TEST_CASE("profile-shifted pair at its centre distance", "[core][loads]")
{
    CylindricalGear gear = helical(19, 3.0, 12.0, Hand::right, 0.0);
    gear.mate_teeth = 56;
    gear.centre_distance_mm = 118.0;
    const PartLoad load = loadOf(gear, driveTorque(PowerSense::driving, 250000.0), 1000.0);
    CHECK_THAT(load.diameter_mm, WithinAbs(59.78667, 0.6e-5));
    CHECK_THAT(load.tangential_N, WithinAbs(8363.07, 0.006));
    CHECK_THAT(-load.radial_N, WithinAbs(3724.66, 0.006));
    CHECK_THAT(std::abs(load.axial_N), WithinAbs(1823.79, 0.006));
    // Without the shift: the same axial force, the radial one 17 % off.
    const PartLoad plain = loadOf(helical(19, 3.0, 12.0, Hand::right, 0.0), driveTorque(PowerSense::driving, 250000.0), 1000.0);
    CHECK_THAT(plain.tangential_N, WithinAbs(8580.24, 0.006));
    CHECK_THAT(-plain.radial_N, WithinAbs(3192.72, 0.006));
    CHECK_THAT(plain.axial_N, WithinRel(load.axial_N, 1e-12));
    // Angles of the derivation, in degrees.
    for (const DerivationStep& step : load.derivation) {
        if (step.code == "working_transverse_angle")
            CHECK_THAT(step.result, WithinAbs(24.00677, 0.6e-5));
        if (step.code == "working_helix_angle")
            CHECK_THAT(step.result, WithinAbs(12.30224, 0.6e-5));
        if (step.code == "working_normal_angle")
            CHECK_THAT(step.result, WithinAbs(23.51594, 0.6e-5));
    }
}

TEST_CASE("ring gear and the pinion inside it", "[core][loads]")
{
    CylindricalGear pinion = helical(0, 0.0, 18.0, Hand::left, 310.0);
    pinion.working_diameter_mm = 48.0;
    checkLoad(loadOf(pinion, driveTorque(PowerSense::driving, 180000.0), -900.0), {2436.8977, 3900.3676, 7019.6516},
              {180000.0, -44802.527, -37593.784});
    CylindricalGear ring = pinion;
    ring.internal = true;
    ring.working_diameter_mm = 144.0;
    checkLoad(loadOf(ring, driveTorque(PowerSense::driven, 540000.0), -300.0), {-2436.8977, -3900.3676, -7019.6516},
              {-540000.0, 134407.581, 112781.352});
}

TEST_CASE("spiral bevel pinion: the hand decides whether it is pulled into the mesh", "[core][loads]")
{
    const LoadResult away = runOne(spiralBevel(Hand::left), drivePower(PowerSense::driving, 15.0), 1500.0);
    checkLoad(away.cases[0].parts[0], {-2524.2359, 3410.4631, -558.8180}, {-95492.966, -70678.605, 0.0});
    CHECK(find(away.findings, "bevel-thrust-to-apex") == nullptr);
    const LoadResult into = runOne(spiralBevel(Hand::right), drivePower(PowerSense::driving, 15.0), 1500.0);
    checkLoad(into.cases[0].parts[0], {1427.5957, 3410.4631, -2155.4616}, {-95492.966, 39972.680, 0.0});
    const Finding* finding = find(into.findings, "bevel-thrust-to-apex");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::caution);
    CHECK(finding->path == "parts.P.hand");
    CHECK(finding->case_id == std::optional<std::string>("run"));
    CHECK_THAT(numberOf(*finding, "Fx_N"), WithinAbs(1427.5957, 0.6e-4));
}

TEST_CASE("worm and its wheel", "[core][loads]")
{
    const PartLoad worm = loadOf(worm8(), drivePower(PowerSense::driving, 2.2), 960.0);
    checkLoad(worm, {4380.6476, -972.6135, 1631.7736}, {-21883.805, -98564.570, 0.0});
    WormWheel wheel;
    wheel.reference_diameter_mm = 160.0;
    wheel.lead_angle_deg = std::atan(8.0 / 45.0) / degree;
    wheel.hand = Hand::right;
    wheel.pressure_angle_deg = 20.0;
    wheel.friction = 0.04;
    wheel.worm_direction = 1;
    // T2 = T1 i eta; a right-handed wheel whose worm moves towards its +x turns negatively.
    const PartLoad load = loadOf(wheel, driveTorque(PowerSense::driven, 350451.806), -48.0);
    checkVector(load.force_N, {972.6135, -1631.7736, -4380.6476}, 1e-3); // the torque is given to 1e-3 Nmm
    checkVector(load.moment_Nmm, {-350451.806, 0.0, -77809.083}, 0.6e-2);
    // Efficiency of the mesh by powers: eta = T2 n2 / (T1 n1) = 0.80071 (i = 20).
    CHECK_THAT(350451.806 / (20.0 * std::abs(worm.torque_Nmm)), WithinAbs(0.80071, 0.6e-5));
}

TEST_CASE("open V-belt by factor and by pretension", "[core][loads]")
{
    const PartLoad load = loadOf(pulley10(), drivePower(PowerSense::driving, 7.5), 1450.0);
    checkVector(load.force_N, {0.0, 418.8381, 962.9147}, 0.6e-4);
    CHECK_THAT(load.moment_Nmm.x, WithinAbs(-49392.91, 0.006));
    CHECK_THAT(load.tangential_N, WithinAbs(705.613, 0.6e-3));
    CHECK_THAT(load.radial_N, WithinAbs(1050.06, 0.006));

    BeltPulley tensioned = pulley10();
    tensioned.tension = Pretension{846.736, std::nullopt};
    const PartLoad running = loadOf(tensioned, drivePower(PowerSense::driving, 7.5), 1450.0);
    checkVector(running.force_N, {0.0, 731.8364, 1505.0437}, 1e-3); // pretension rounded to 1e-3 N
    const PartLoad resting = loadOf(tensioned, driveTorque(PowerSense::driving, 0.0), 0.0);
    CHECK_THAT(resting.radial_N, WithinAbs(1669.32, 0.006));
    // With little friction it slips; in a groove of 38 degrees 0.3165 is reached by a third of it.
    tensioned.kind = BeltKind::flat;
    tensioned.friction = 0.3;
    const LoadResult slipping = runOne(tensioned, drivePower(PowerSense::driving, 7.5), 1450.0);
    const Finding* slip = find(slipping.findings, "belt-slips");
    REQUIRE(slip != nullptr);
    CHECK_THAT(numberOf(*slip, "mu_needed"), WithinAbs(0.3165, 0.6e-4));
    CHECK_THAT(numberOf(*slip, "ratio"), WithinAbs(2.4286, 0.6e-4));
    CHECK_THAT(numberOf(*slip, "wrap_deg"), WithinAbs(160.6256, 0.6e-4));
    tensioned.friction = 0.32;
    CHECK(find(runOne(tensioned, drivePower(PowerSense::driving, 7.5), 1450.0).findings, "belt-slips") == nullptr);
    tensioned.kind = BeltKind::v;
    tensioned.friction = 0.11; // 0.11 / sin 19 degrees = 0.338
    CHECK(find(runOne(tensioned, drivePower(PowerSense::driving, 7.5), 1450.0).findings, "belt-slips") == nullptr);
}

TEST_CASE("chain with a stated sag force", "[core][loads]")
{
    ChainSprocket sprocket;
    sprocket.teeth = 21;
    sprocket.pitch_mm = 19.05;
    sprocket.other_teeth = 57;
    sprocket.centre_distance_mm = 760.0;
    sprocket.direction_deg = 150.0;
    sprocket.sag_force_N = 0.05 * 3735.56;
    const PartLoad load = loadOf(sprocket, drivePower(PowerSense::driven, 3.0), 120.0);
    CHECK_THAT(load.diameter_mm, WithinAbs(127.8161, 0.6e-4));
    CHECK_THAT(load.tangential_N, WithinAbs(3735.56, 0.006));
    checkVector(load.force_N, {0.0, -3253.938, 2497.290}, 2e-3); // sag force from the rounded Ft
    CHECK_THAT(load.radial_N, WithinAbs(4101.78, 0.006));
}

TEST_CASE("couple of a cardan joint at either end", "[core][loads]")
{
    // T tan 12 degrees = 68 018.1 Nmm at most, half of it stands still towards the other shaft.
    Coupling coupling;
    coupling.joint_angle_deg = 12.0;
    coupling.joint_direction_deg = 0.0;
    Setup right;
    right.add(partOf("P", coupling, driveTorque(PowerSense::driven, 320000.0), 200.0));
    const PartLoad at_right = right.run().cases[0].parts[0];
    CHECK_THAT(at_right.moment_Nmm.y, WithinAbs(34009.0, 0.06));
    CHECK_THAT(at_right.worst_moment_Nmm, WithinAbs(34009.0, 0.06));
    // At the left end the other shaft leaves towards -x: T' = Mx (e_x' . e_x) changes its sign.
    Setup left;
    left.add(partOf("P", coupling, driveTorque(PowerSense::driven, 320000.0), 0.0));
    CHECK_THAT(left.run().cases[0].parts[0].moment_Nmm.y, WithinAbs(-34009.0, 0.06));
    coupling.joint_direction_deg.reset();
    CHECK_THAT(loadOf(coupling, driveTorque(PowerSense::driven, 320000.0), 1000.0).worst_moment_Nmm, WithinAbs(68018.1, 0.06));
}

TEST_CASE("disk of 38 kg balanced to G 6.3", "[core][loads]")
{
    // ISO 21940-11: e_per omega = 6.3 mm/s; 1480 rpm: omega 154.9852, F_u 37.103 N, weight 372.653 N.
    Setup setup(1480.0);
    Part disk = partOf("P", WeightBody{BalanceGrade{6.3}, 0.0, 0.0}, std::nullopt);
    disk.mass_kg = 38.0;
    setup.add(disk);
    const PartLoad load = setup.run().cases[0].parts[0];
    CHECK_THAT(load.rotating_force_N.y, WithinAbs(37.103, 0.6e-3));
    checkVector(load.force_N, {0.0, 0.0, -372.653}, 0.6e-3);
}

TEST_CASE("own weight of an inclined shaft", "[core][loads]")
{
    // d 60, 7850 kg/m3, +x end raised by 30 degrees: q 0.217662 N/mm, qx -0.108831, qz -0.188501.
    Setup setup;
    setup.settled.own_weight = true;
    setup.settled.attitude_deg = 30.0;
    const Vector3 g = setup.run().cases[0].gravity_m_s2;
    const double line_kg_mm = 7850e-9 * std::numbers::pi / 4.0 * 3600.0;
    checkVector(line_kg_mm * g, {-0.108831, 0.0, -0.188501}, 0.6e-6);
    setup.settled.attitude_deg = 90.0;
    CHECK(setup.run().cases[0].gravity_m_s2 == Vector3{-9.80665, 0.0, 0.0});
    setup.settled.attitude_deg = -90.0;
    CHECK(setup.run().cases[0].gravity_m_s2 == Vector3{9.80665, 0.0, 0.0});
    setup.settled.attitude_deg = 0.0;
    CHECK(setup.run().cases[0].gravity_m_s2 == Vector3{0.0, 0.0, -9.80665});
    setup.settled.own_weight = false;
    CHECK(setup.run().cases[0].gravity_m_s2 == Vector3{});
}

TEST_CASE("axial force off the axis", "[core][loads]")
{
    PointLoad point;
    point.force_N.x = -6000.0;
    point.offset_z_mm = 85.0;
    checkLoad(loadOf(point, std::nullopt, 0.0), {-6000.0, 0.0, 0.0}, {0.0, -510000.0, 0.0});
}
