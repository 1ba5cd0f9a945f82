// Mating parts placed in space: what one does to the other comes back (action = reaction). And the limits and symmetries of the
// formulas.
#include "tests/core/loads/one_part.h"

#include <catch2/catch.hpp>

#include <random>

using namespace shaftwright;
using namespace shaftwright::test;
using Catch::WithinAbs;
using Catch::WithinRel;

namespace
{

class Dice
{
public:
    explicit Dice(unsigned seed) : m_random(seed) {}
    double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(m_random); }
    double sign() { return between(-1.0, 1.0) < 0.0 ? -1.0 : 1.0; }
    Hand hand() { return sign() > 0.0 ? Hand::right : Hand::left; }

private:
    std::mt19937_64 m_random;
};

Hand opposite(Hand hand)
{
    return hand == Hand::right ? Hand::left : hand == Hand::left ? Hand::right : Hand::none;
}

Vector3 radial(double phi_deg)
{
    return {0.0, std::cos(phi_deg * degree), std::sin(phi_deg * degree)};
}

/// At standstill a torque is signed, so that no speed is needed.
PartLoad atRest(PartBody body, double Mx_Nmm)
{
    return loadOf(std::move(body), driveTorque(PowerSense::driven, Mx_Nmm), 0.0);
}

double difference(const Vector3& a, const Vector3& b)
{
    return norm(a + (-1.0) * b) / std::max(norm(a), 1e-300);
}

} // namespace

TEST_CASE("forces of external and internal pairs cancel", "[core][loads][law]")
{
    Dice dice(1);
    for (int i = 0; i < 500; ++i) {
        const bool ring = dice.sign() > 0.0;
        CylindricalGear pinion;
        pinion.working_diameter_mm = dice.between(20.0, 90.0);
        pinion.helix_deg = dice.between(0.5, 40.0);
        pinion.hand = dice.hand();
        pinion.double_helical = dice.sign() > 0.5;
        pinion.pressure_angle_deg = dice.between(12.0, 30.0);
        pinion.mesh_angle_deg = dice.between(0.0, 360.0);
        CylindricalGear mate = pinion;
        mate.internal = ring;
        mate.working_diameter_mm = *pinion.working_diameter_mm * dice.between(1.2, 6.0);
        mate.mesh_angle_deg = ring ? pinion.mesh_angle_deg : pinion.mesh_angle_deg + 180.0;
        mate.hand = ring ? pinion.hand : opposite(pinion.hand);
        const double T1 = dice.sign() * dice.between(1e3, 1e6);
        const double T2 = (ring ? -1.0 : 1.0) * T1 * *mate.working_diameter_mm / *pinion.working_diameter_mm;
        const PartLoad first = atRest(pinion, T1);
        const PartLoad second = atRest(mate, T2);
        INFO("pair " << i);
        REQUIRE(difference(first.force_N, -1.0 * second.force_N) < 1e-12); // rounding of a dozen products
        REQUIRE_THAT(first.moment_Nmm.x, WithinRel(T1, 1e-12));
        REQUIRE_THAT(second.moment_Nmm.x, WithinRel(T2, 1e-12));
    }
}

TEST_CASE("forces of bevel pairs cancel at any shaft angle", "[core][loads][law]")
{
    Dice dice(2);
    for (int i = 0; i < 500; ++i) {
        BevelGear first;
        first.mean_diameter_mm = dice.between(30.0, 90.0);
        first.cone_angle_deg = dice.between(8.0, 60.0);
        first.spiral_deg = dice.between(0.5, 44.0);
        first.hand = dice.hand();
        first.apex = dice.sign() > 0.0 ? ApexSide::plus : ApexSide::minus;
        first.pressure_angle_deg = dice.between(12.0, 30.0);
        first.mesh_angle_deg = dice.between(0.0, 360.0);
        BevelGear second = first;
        second.cone_angle_deg = dice.between(8.0, 80.0);
        second.mean_diameter_mm =
            *first.mean_diameter_mm * std::sin(second.cone_angle_deg * degree) / std::sin(first.cone_angle_deg * degree);
        second.hand = opposite(first.hand);
        second.apex = dice.sign() > 0.0 ? ApexSide::plus : ApexSide::minus;

        // Axes through the common apex: outwards along the first axis, the pitch line at delta1, the second axis delta2 beyond
        // it.
        const double c1 = first.apex == ApexSide::plus ? 1.0 : -1.0;
        const double c2 = second.apex == ApexSide::plus ? 1.0 : -1.0;
        const double d1 = first.cone_angle_deg * degree, sum = d1 + second.cone_angle_deg * degree;
        const Vector3 out1{-c1, 0.0, 0.0}, er1 = radial(first.mesh_angle_deg);
        const Vector3 line = std::cos(d1) * out1 + std::sin(d1) * er1;
        const Vector3 out2 = std::cos(sum) * out1 + std::sin(sum) * er1;
        const Frame frame = Frame::along(-c2 * out2);
        const Vector3 er2 = unit(line + (-dot(line, out2)) * out2);
        second.mesh_angle_deg = frame.angleOf_deg(er2);

        const double T1 = dice.sign() * dice.between(1e3, 1e6);
        const PartLoad load1 = atRest(first, T1);
        const Vector3 et2 = cross(frame.x, er2);
        const double T2 = 0.5 * *second.mean_diameter_mm * dot(-1.0 * load1.force_N, et2);
        const PartLoad load2 = atRest(second, T2);
        INFO("pair " << i);
        REQUIRE(difference(load1.force_N, -1.0 * frame.toSpace(load2.force_N)) < 1e-12);
    }
}

TEST_CASE("forces of worm and wheel cancel whoever drives", "[core][loads][law]")
{
    Dice dice(3);
    int driven_worms = 0;
    for (int i = 0; i < 500; ++i) {
        Worm worm;
        worm.reference_diameter_mm = dice.between(25.0, 90.0);
        worm.lead_angle_deg = dice.between(4.0, 40.0);
        worm.hand = dice.hand();
        worm.pressure_angle_deg = dice.between(14.0, 30.0);
        worm.friction = dice.between(0.0, 0.1);
        worm.mesh_angle_deg = dice.between(0.0, 360.0);
        const double n1 = dice.sign() * 1000.0;
        const double limit = std::cos(*worm.pressure_angle_deg * degree) * std::tan(*worm.lead_angle_deg * degree);
        const bool worm_drives = dice.sign() > 0.0 || limit < 1.05 * *worm.friction;
        driven_worms += worm_drives ? 0 : 1;
        const double T = dice.between(1e3, 1e5);
        const PartLoad load1 = loadOf(worm, driveTorque(worm_drives ? PowerSense::driving : PowerSense::driven, T), n1);

        // The wheel's axis along +-e_t of the worm; its contact looks back at the worm.
        const double sigma = dice.sign();
        const Vector3 er1 = radial(worm.mesh_angle_deg), et1 = cross({1, 0, 0}, er1);
        const Frame frame = Frame::along(sigma * et1);
        const Vector3 er2 = -1.0 * er1, et2 = cross(frame.x, er2);
        WormWheel wheel;
        wheel.reference_diameter_mm = 4.0 * worm.reference_diameter_mm;
        wheel.lead_angle_deg = *worm.lead_angle_deg;
        wheel.hand = worm.hand;
        wheel.pressure_angle_deg = worm.pressure_angle_deg;
        wheel.friction = worm.friction;
        wheel.mesh_angle_deg = frame.angleOf_deg(er2);
        const int direction = n1 * sigma > 0.0 ? 1 : -1;
        wheel.worm_direction = direction;
        const double n2 = -direction * (worm.hand == Hand::right ? 1.0 : -1.0) * 50.0; // kinematics of the thread
        const double T2 = 0.5 * wheel.reference_diameter_mm * dot(-1.0 * load1.force_N, et2);
        const PowerSense sense = worm_drives ? PowerSense::driven : PowerSense::driving;
        const PartLoad load2 = loadOf(wheel, driveTorque(sense, std::abs(T2)), n2);
        INFO("pair " << i << (worm_drives ? " worm drives" : " wheel drives"));
        REQUIRE_THAT(load2.moment_Nmm.x, WithinRel(T2, 1e-12)); // the sense of rotation and who drives fix the sign
        REQUIRE(difference(load1.force_N, -1.0 * frame.toSpace(load2.force_N)) < 1e-11);
        // Open direction follows from the speed.
        wheel.worm_direction.reset();
        REQUIRE(loadOf(wheel, driveTorque(sense, std::abs(T2)), n2).force_N == load2.force_N);
    }
    CHECK(driven_worms > 50);
}

TEST_CASE("strands of the two pulleys of a drive pull against each other", "[core][loads][law]")
{
    Dice dice(4);
    for (int i = 0; i < 300; ++i) {
        BeltPulley first;
        first.crossed = dice.sign() > 0.5;
        first.diameter_mm = dice.between(60.0, 300.0);
        first.other_diameter_mm = dice.between(60.0, 300.0);
        first.centre_distance_mm = first.diameter_mm + first.other_diameter_mm;
        first.direction_deg = dice.between(0.0, 360.0);
        first.tension = TensionFactor{dice.between(1.0, 3.0)};
        BeltPulley second = first;
        std::swap(second.diameter_mm, second.other_diameter_mm);
        second.direction_deg = first.direction_deg + 180.0;
        const double T1 = dice.sign() * dice.between(1e3, 1e5);
        const double T2 = (first.crossed ? 1.0 : -1.0) * T1 * second.diameter_mm / first.diameter_mm;
        const PartLoad load1 = atRest(first, T1);
        const PartLoad load2 = atRest(second, T2);
        REQUIRE(norm(load1.force_N + load2.force_N) < 1e-9 * std::max(norm(load1.force_N), 1.0));
    }
}

TEST_CASE("a lever arm times the tangential force is the torque", "[core][loads][law]")
{
    CylindricalGear gear;
    gear.working_diameter_mm = 80.0;
    gear.helix_deg = 20.0;
    gear.hand = Hand::left;
    gear.mesh_angle_deg = 33.0;
    const PartLoad load = atRest(gear, 12345.0);
    const Vector3 arm = 40.0 * radial(33.0);
    const Vector3 M = cross(arm, load.force_N);
    CHECK_THAT(M.x, WithinRel(12345.0, 1e-12));
    CHECK_THAT(load.moment_Nmm.y, WithinRel(M.y, 1e-12));
    CHECK_THAT(load.moment_Nmm.z, WithinRel(M.z, 1e-12));
}

TEST_CASE("limits join the formulas of the kinds", "[core][loads][law]")
{
    CylindricalGear spur;
    spur.working_diameter_mm = 80.0;
    spur.mesh_angle_deg = 33.0;
    const Vector3 straight = atRest(spur, 5e4).force_N;
    CHECK(straight.x == 0.0);
    SECTION("helix angle to 0")
    {
        CylindricalGear helical = spur;
        helical.helix_deg = 1e-9;
        helical.hand = Hand::right;
        CHECK(difference(straight, atRest(helical, 5e4).force_N) < 1e-10); // tan of 1e-9 degrees is 2e-11
    }
    SECTION("cone angle to 0: a bevel gear is a cylindrical gear, spiral or straight")
    {
        BevelGear bevel;
        bevel.mean_diameter_mm = 80.0;
        bevel.cone_angle_deg = 1e-9;
        bevel.mesh_angle_deg = 33.0;
        for (const ApexSide apex : {ApexSide::plus, ApexSide::minus}) {
            bevel.apex = apex;
            bevel.spiral_deg = 0.0;
            bevel.hand = Hand::none;
            CHECK(difference(straight, atRest(bevel, 5e4).force_N) < 1e-10);
            bevel.spiral_deg = 25.0;
            bevel.hand = Hand::right;
            CylindricalGear helical = spur;
            helical.helix_deg = 25.0;
            helical.hand = Hand::right;
            CHECK(difference(atRest(helical, 5e4).force_N, atRest(bevel, 5e4).force_N) < 1e-10);
        }
    }
    SECTION("no friction: the worm is a screw without loss")
    {
        Worm worm;
        worm.reference_diameter_mm = 50.0;
        worm.lead_angle_deg = 12.0;
        worm.friction = 0.0;
        const PartLoad load = atRest(worm, 1e4);
        CHECK_THAT(load.tangential_N / std::abs(load.axial_N), WithinRel(std::tan(12.0 * degree), 1e-12));
        // and a helical gear of helix 78 degrees would have the same ratio
        CHECK_THAT(std::abs(load.radial_N) / load.tangential_N,
                   WithinRel(std::tan(20.0 * degree) / std::sin(12.0 * degree), 1e-12));
    }
}

TEST_CASE("reversing the sense of rotation turns the tangential and axial forces only", "[core][loads][law]")
{
    CylindricalGear gear;
    gear.working_diameter_mm = 80.0;
    gear.helix_deg = 20.0;
    gear.hand = Hand::left;
    const Drive drive = drivePower(PowerSense::driving, 5.0);
    const PartLoad forward = loadOf(gear, drive, 1000.0);
    const PartLoad backward = loadOf(gear, drive, -1000.0);
    CHECK(backward.force_N.x == -forward.force_N.x);
    CHECK(backward.force_N.y == forward.force_N.y); // radial at 0 degrees
    CHECK(backward.force_N.z == -forward.force_N.z);
    CHECK(backward.torque_Nmm == -forward.torque_Nmm);
    // Hand and sense reversed together leave the axial force.
    gear.hand = Hand::right;
    CHECK(loadOf(gear, drive, -1000.0).force_N.x == forward.force_N.x);
}

TEST_CASE("mirrored shafts, both kinds", "[core][loads][law]")
{
    Dice dice(5);
    const auto check = [](const PartBody& body, const PartBody& reflected, const PartBody& turned, const Drive& drive, double n) {
        const Vector3 F = loadOf(body, drive, n).force_N;
        const double tolerance = 1e-12 * std::max(norm(F), 1.0);
        // Reflection x -> -x: hand and apex side change, sense, angles stay.
        const Vector3 R = loadOf(reflected, drive, n).force_N;
        CHECK(norm(R + (-1.0) * Vector3{-F.x, F.y, F.z}) < tolerance);
        // Half-turn about the vertical: the sign of the speed and the apex side change, angles go to 180 - phi, hands stay.
        const Vector3 H = loadOf(turned, drive, -n).force_N;
        CHECK(norm(H + (-1.0) * Vector3{-F.x, -F.y, F.z}) < tolerance);
    };
    for (int i = 0; i < 200; ++i) {
        const double phi = dice.between(0.0, 360.0), n = dice.sign() * 800.0;
        const Drive drive = drivePower(dice.sign() > 0.0 ? PowerSense::driving : PowerSense::driven, 7.0);
        CylindricalGear gear;
        gear.working_diameter_mm = 90.0;
        gear.helix_deg = 17.0;
        gear.hand = dice.hand();
        gear.internal = dice.sign() > 0.5;
        gear.mesh_angle_deg = phi;
        CylindricalGear gear_r = gear, gear_h = gear;
        gear_r.hand = opposite(gear.hand);
        gear_h.mesh_angle_deg = 180.0 - phi;
        check(gear, gear_r, gear_h, drive, n);

        BevelGear bevel;
        bevel.mean_diameter_mm = 70.0;
        bevel.cone_angle_deg = dice.between(10.0, 80.0);
        bevel.spiral_deg = 33.0;
        bevel.hand = dice.hand();
        bevel.apex = dice.sign() > 0.0 ? ApexSide::plus : ApexSide::minus;
        bevel.mesh_angle_deg = phi;
        BevelGear bevel_r = bevel, bevel_h = bevel;
        bevel_r.apex = bevel_h.apex = bevel.apex == ApexSide::plus ? ApexSide::minus : ApexSide::plus;
        bevel_r.hand = opposite(bevel.hand);
        bevel_h.mesh_angle_deg = 180.0 - phi;
        check(bevel, bevel_r, bevel_h, drive, n);

        Worm worm;
        worm.reference_diameter_mm = 50.0;
        worm.lead_angle_deg = 15.0;
        worm.friction = 0.05;
        worm.hand = dice.hand();
        worm.mesh_angle_deg = phi;
        Worm worm_r = worm, worm_h = worm;
        worm_r.hand = opposite(worm.hand);
        worm_h.mesh_angle_deg = 180.0 - phi;
        check(worm, worm_r, worm_h, drive, n);

        WormWheel wheel;
        wheel.reference_diameter_mm = 200.0;
        wheel.lead_angle_deg = 15.0;
        wheel.friction = 0.05;
        wheel.hand = dice.hand();
        wheel.mesh_angle_deg = phi;
        WormWheel wheel_r = wheel, wheel_h = wheel;
        wheel_r.hand = opposite(wheel.hand);
        wheel_h.mesh_angle_deg = 180.0 - phi;
        check(wheel, wheel_r, wheel_h, drive, n);

        BeltPulley pulley;
        pulley.diameter_mm = 100.0;
        pulley.other_diameter_mm = 250.0;
        pulley.centre_distance_mm = 400.0;
        pulley.direction_deg = phi;
        BeltPulley pulley_h = pulley;
        pulley_h.direction_deg = 180.0 - phi;
        check(pulley, pulley, pulley_h, drive, n);
    }
}
