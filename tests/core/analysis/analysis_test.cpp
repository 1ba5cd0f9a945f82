// Whole arrangements against statics worked out by hand beside them.
#include "core/analysis/analyse.h"
#include "core/analysis/shares.h"
#include "core/catalogue/catalogue.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace shaftwright;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace
{

Catalogues generic()
{
    return Catalogues{{&genericCatalogue()}};
}

Support supportAt(const char* id, double x_mm, Role role)
{
    Support support;
    support.id = SupportId(id);
    support.x_mm = x_mm;
    support.role = role;
    return support;
}

Part force(const char* id, double x_mm, Vector3 F)
{
    Part part;
    part.id = PartId(id);
    part.x_mm = x_mm;
    part.body = PointLoad{F, {}, 0.0, 0.0, false};
    return part;
}

/// Plain shaft of 40 mm without weight, one case at 1000 rpm.
Arrangement plainShaft(double length_mm, std::vector<Support> supports, std::vector<Part> parts)
{
    Arrangement a;
    Segment segment;
    segment.id = SegmentId("s1");
    segment.length_mm = length_mm;
    segment.outer_mm = 40;
    a.shaft.segments = {segment};
    a.supports = std::move(supports);
    a.parts = std::move(parts);
    a.options.own_weight = false;
    LoadCase only;
    only.id = CaseId("run");
    only.name = "Run";
    only.speed_rpm = 1000;
    a.duty.load_cases = {only};
    return a;
}

const Finding* find(const Assessment& assessment, const std::string& code)
{
    const auto it =
        std::find_if(assessment.findings.begin(), assessment.findings.end(), [&](const Finding& f) { return f.code == code; });
    return it != assessment.findings.end() ? &*it : nullptr;
}

Assessment run(const Arrangement& a)
{
    return analyse(a, generic());
}

double N_at(const Assessment& assessment, double x_mm)
{
    return beam::stateAt(assessment.beam, 0, x_mm, beam::Side::left).N_N;
}

} // namespace

TEST_CASE("a gear shaft on two bearings carries what the hand calculation says", "[core][analysis]")
{
    // Spur gear z 40, m 2.5: d = 100 mm. T = 50 N m: Ft = 2 T/d = 1000 N, Fr = 1000 tan 20 deg = 363.9702 N.
    // Contact on top (90 deg), driven, turning positive: Ft along -y, Fr along -z. Midway between A and B: half each.
    CylindricalGear gear;
    gear.teeth = 40;
    gear.normal_module_mm = 2.5;
    gear.mesh_angle_deg = 90;
    gear.face_width_mm = 20;
    gear.pressure_angle_deg = 20;
    Part wheel;
    wheel.id = PartId("G");
    wheel.x_mm = 150;
    wheel.body = gear;
    wheel.drive = Drive{};
    wheel.drive->torque_Nmm = 50000;
    Part coupling;
    coupling.id = PartId("C");
    coupling.x_mm = 290;
    coupling.body = Coupling{};
    coupling.drive = Drive{};
    coupling.drive->takes_remaining = true;
    const Assessment found =
        run(plainShaft(300, {supportAt("A", 50, Role::locating), supportAt("B", 250, Role::non_locating)}, {wheel, coupling}));
    REQUIRE(found.beam.usable());
    for (const SupportAssessment& support : found.supports) {
        CHECK_THAT(support.cases[0].force_N.y, WithinRel(500.0, 1e-9));
        CHECK_THAT(support.cases[0].force_N.z, WithinRel(181.98511713310083, 1e-9));
        CHECK_THAT(support.cases[0].axial_N, WithinAbs(0.0, 1e-9));
    }
    CHECK(found.load_cases[0].torque_residual_Nmm == 0.0);
}

TEST_CASE("unequal arms share forces by the lever", "[core][analysis]")
{
    // A at 50, B at 250. 1000 N down at 100: Bz = 1000 x 50/200 = 250, Az = 750. 600 N in +y at 200: By = -450, Ay = -150.
    const Assessment found = run(plainShaft(300, {supportAt("A", 50, Role::locating), supportAt("B", 250, Role::non_locating)},
                                            {force("P", 100, {0, 0, -1000}), force("Q", 200, {0, 600, 0})}));
    CHECK_THAT(found.supports[0].cases[0].force_N.z, WithinRel(750.0, 1e-9));
    CHECK_THAT(found.supports[1].cases[0].force_N.z, WithinRel(250.0, 1e-9));
    CHECK_THAT(found.supports[0].cases[0].force_N.y, WithinRel(-150.0, 1e-9));
    CHECK_THAT(found.supports[1].cases[0].force_N.y, WithinRel(-450.0, 1e-9));
    const std::vector<HandStatics> hand = handStatics(found, 0);
    REQUIRE(hand.size() == 2);
    CHECK(hand[0].plane == StaticsPlane::y);
    CHECK_THAT(hand[0].steps[0].result, WithinRel(-450.0, 1e-9));
    CHECK_THAT(hand[0].steps[1].result, WithinRel(-150.0, 1e-9));
    CHECK_THAT(hand[1].steps[0].result, WithinRel(250.0, 1e-9));
    CHECK_THAT(hand[1].steps[1].result, WithinRel(750.0, 1e-9));
}

TEST_CASE("adjusted pairs carry induced and external axial force, both ways round and both senses", "[core][analysis]")
{
    // 2000 N down midway: Fr = 1000 N each. No bearing chosen: S = Fr/(2 x 1.6) = 312.5 N each. K = +-1000 N at 150 mm.
    // The bearing that K pushes on carries 312.5 + 1000 = 1312.5 N, the other its own 312.5 N.
    for (const double sense : {1.0, -1.0}) {
        for (const bool back_to_back : {false, true}) {
            Support left = supportAt("A", 50, Role::adjusted);
            Support right = supportAt("B", 250, Role::adjusted);
            left.carries = back_to_back ? Carries::plus : Carries::minus;
            right.carries = back_to_back ? Carries::minus : Carries::plus;
            const Assessment found = run(plainShaft(300, {left, right}, {force("K", 150, {sense * 1000, 0, -2000})}));
            REQUIRE(found.beam.usable());
            const SupportAssessment& plus = found.supports[back_to_back ? 0 : 1];
            const SupportAssessment& minus = found.supports[back_to_back ? 1 : 0];
            CHECK_THAT(plus.cases[0].axial_N, WithinRel(sense > 0 ? -1312.5 : -312.5, 1e-9));
            CHECK_THAT(minus.cases[0].axial_N, WithinRel(sense > 0 ? 312.5 : 1312.5, 1e-9));
            // Internal force left of K balances the left support; face to face presses (N < 0), back to back pulls.
            const double left_N = found.supports[0].cases[0].axial_N;
            CHECK_THAT(N_at(found, 100), WithinRel(-left_N, 1e-9));
            CHECK_THAT(N_at(found, 200), WithinRel(-left_N - sense * 1000, 1e-9));
            CHECK((back_to_back ? N_at(found, 100) > 0 : N_at(found, 100) < 0));
        }
    }
}

TEST_CASE("a thrust support takes the axial force and nothing across", "[core][analysis]")
{
    const Assessment found = run(plainShaft(
        300,
        {supportAt("A", 50, Role::non_locating), supportAt("B", 250, Role::non_locating), supportAt("T", 285, Role::axial_only)},
        {force("P", 150, {800, 0, -1000})}));
    REQUIRE(found.beam.usable());
    const SupportCase& thrust = found.supports[2].cases[0];
    CHECK_THAT(thrust.axial_N, WithinRel(-800.0, 1e-9));
    CHECK_THAT(thrust.radial_N, WithinAbs(0.0, 1e-9));
    CHECK_THAT(found.supports[0].cases[0].force_N.z, WithinRel(500.0, 1e-9));
}

TEST_CASE("a shaft that is not held says so", "[core][analysis]")
{
    const std::vector<Part> load = {force("P", 150, {100, 0, -1000})};
    SECTION("no support")
    {
        const Assessment found = run(plainShaft(300, {}, load));
        CHECK_FALSE(found.beam.usable());
        CHECK(find(found, "shaft-unsupported") != nullptr);
    }
    SECTION("one support")
    {
        const Assessment found = run(plainShaft(300, {supportAt("A", 50, Role::locating)}, load));
        CHECK_FALSE(found.beam.usable());
        CHECK(find(found, "shaft-tilts") != nullptr);
    }
    SECTION("nobody holds x")
    {
        const Assessment found =
            run(plainShaft(300, {supportAt("A", 50, Role::non_locating), supportAt("B", 250, Role::non_locating)}, load));
        REQUIRE(find(found, "axial-location-missing") != nullptr);
        CHECK(find(found, "axial-location-missing")->variant == "both");
    }
    SECTION("two hold x")
    {
        const Assessment found =
            run(plainShaft(300, {supportAt("A", 50, Role::locating), supportAt("B", 250, Role::locating)}, load));
        REQUIRE(find(found, "two-locating") != nullptr);
        CHECK(find(found, "two-locating")->severity == Severity::stop);
    }
    SECTION("held in one sense only")
    {
        const Assessment found = run(plainShaft(300,
                                                {supportAt("A", 50, Role::non_locating), supportAt("B", 250, Role::non_locating),
                                                 supportAt("T", 285, Role::axial_only)},
                                                {force("P", 150, {-800, 0, -1000})}));
        REQUIRE(find(found, "axial-location-missing") != nullptr);
        CHECK(find(found, "axial-location-missing")->variant.empty());
    }
}

TEST_CASE("three supports share by stiffness", "[core][analysis]")
{
    // Two equal spans, P midway in each, shear flexibility off: 5P/16, 11P/8, 5P/16 (continuous beam of two spans, from memory).
    Arrangement a = plainShaft(
        400,
        {supportAt("A", 0, Role::locating), supportAt("B", 200, Role::non_locating), supportAt("C", 400, Role::non_locating)},
        {force("P", 100, {0, 0, -1600}), force("Q", 300, {0, 0, -1600})});
    a.options.shear_factor = ShearModel::off;
    const Assessment found = run(a);
    REQUIRE(found.beam.usable());
    CHECK_THAT(found.supports[0].cases[0].force_N.z, WithinRel(500.0, 1e-9));
    CHECK_THAT(found.supports[1].cases[0].force_N.z, WithinRel(2200.0, 1e-9));
    CHECK_THAT(found.supports[2].cases[0].force_N.z, WithinRel(500.0, 1e-9));
    CHECK(find(found, "three-supports") != nullptr);
    CHECK(handStatics(found, 0).empty());
}

TEST_CASE("unbalance turns with the shaft and is shared", "[core][analysis]")
{
    // 10 kg, 0.1 mm off the axis, 3000 rpm: F = 10 x 1e-4 x (100 pi)^2 = 98.6960 N, half at each support; weight 10 g/2
    // = 49.03325 N.
    Part disk;
    disk.id = PartId("D");
    disk.x_mm = 150;
    disk.mass_kg = 10;
    disk.body = WeightBody{MassEccentricity{0.1}, 200, 20};
    Arrangement a = plainShaft(300, {supportAt("A", 50, Role::locating), supportAt("B", 250, Role::non_locating)}, {disk});
    a.duty.load_cases[0].speed_rpm = 3000;
    const Assessment found = run(a);
    REQUIRE(found.beam.usable());
    for (const SupportAssessment& support : found.supports) {
        CHECK_THAT(support.cases[0].rotating_N, WithinRel(49.348022005446793, 1e-9));
        CHECK_THAT(support.cases[0].force_N.z, WithinRel(49.03325, 1e-9));
    }
}

TEST_CASE("a force of unknown direction counts at its worst for each support", "[core][analysis]")
{
    // 400 N at 300 mm beside A 50, B 250: B = 400 x 250/200 = 500 N, A = 400 x 50/200 = 100 N.
    Part coupling;
    coupling.id = PartId("C");
    coupling.x_mm = 300;
    Coupling body;
    body.radial_force_N = 400;
    coupling.body = body;
    const Assessment found =
        run(plainShaft(300, {supportAt("A", 50, Role::locating), supportAt("B", 250, Role::non_locating)}, {coupling}));
    CHECK_THAT(found.supports[0].cases[0].worst_direction_N, WithinRel(100.0, 1e-9));
    CHECK_THAT(found.supports[1].cases[0].worst_direction_N, WithinRel(500.0, 1e-9));
    CHECK_THAT(found.supports[0].cases[0].radial_N, WithinAbs(0.0, 1e-9));
}

TEST_CASE("a support with a gap follows statics, and shares have no meaning", "[core][analysis]")
{
    Support right = supportAt("B", 250, Role::non_locating);
    right.gap = RadialGap{0.01, 1e5, 1.0};
    const Assessment found = run(plainShaft(300, {supportAt("A", 50, Role::locating), right}, {force("P", 150, {0, 0, -1000})}));
    REQUIRE(found.beam.usable());
    CHECK_THAT(found.supports[1].cases[0].force_N.z, WithinRel(500.0, 1e-6)); // Newton's tolerance
    // Law of the gap: 500 = 1e5 (r - 0.01), r = 0.015 mm.
    CHECK_THAT(found.supports[1].cases[0].displacement_mm.z, WithinRel(-0.015, 1e-6));
    CHECK_FALSE(loadShares(found, 0).valid);
}

TEST_CASE("power at standstill is refused", "[core][analysis]")
{
    Part coupling;
    coupling.id = PartId("C");
    coupling.x_mm = 290;
    coupling.body = Coupling{};
    coupling.drive = Drive{};
    coupling.drive->power_kW = 3.0;
    Arrangement a = plainShaft(300, {supportAt("A", 50, Role::locating), supportAt("B", 250, Role::non_locating)}, {coupling});
    a.duty.load_cases[0].speed_rpm = 0.0;
    CHECK(find(run(a), "part-power-at-standstill") != nullptr);
}

TEST_CASE("shares of all loads add up to the reactions", "[core][analysis]")
{
    for (const double K : {-300.0, 0.0, 700.0}) {
        for (const Role role : {Role::locating, Role::adjusted}) {
            Arrangement a = plainShaft(
                300,
                {supportAt("A", 50, role), supportAt("B", 250, role == Role::adjusted ? Role::adjusted : Role::non_locating)},
                {force("P", 100, {K, 120, -1000}), force("Q", 280, {0, 600, 50})});
            a.options.own_weight = true;
            const Assessment found = run(a);
            REQUIRE(found.beam.usable());
            const ShareTable table = loadShares(found, 0);
            REQUIRE(table.valid);
            for (std::size_t s = 0; s < found.supports.size(); ++s) {
                Vector3 sum;
                for (const LoadShare& share : table.supports[s])
                    sum = {sum.x + share.force_N.x, sum.y + share.force_N.y, sum.z + share.force_N.z};
                const Vector3& R = found.supports[s].cases[0].force_N;
                CHECK_THAT(sum.x, WithinAbs(R.x, 1e-9 * 1000));
                CHECK_THAT(sum.y, WithinAbs(R.y, 1e-9 * 1000));
                CHECK_THAT(sum.z, WithinAbs(R.z, 1e-9 * 1000));
            }
            // Sums by hand against the beam.
            for (const HandStatics& hand : handStatics(found, 0)) {
                if (hand.plane == StaticsPlane::x)
                    continue;
                const bool in_y = hand.plane == StaticsPlane::y;
                const Vector3 &A = found.supports[0].cases[0].force_N, &B = found.supports[1].cases[0].force_N;
                CHECK_THAT(hand.steps[0].result, WithinRel(in_y ? B.y : B.z, 1e-9) || WithinAbs(in_y ? B.y : B.z, 1e-9));
                CHECK_THAT(hand.steps[1].result, WithinRel(in_y ? A.y : A.z, 1e-9) || WithinAbs(in_y ? A.y : A.z, 1e-9));
            }
        }
    }
}

TEST_CASE("the same arrangement gives the same assessment", "[core][analysis]")
{
    const Arrangement a = plainShaft(300, {supportAt("A", 50, Role::locating), supportAt("B", 250, Role::non_locating)},
                                     {force("P", 100, {200, 120, -1000})});
    const Assessment first = run(a), second = run(a);
    CHECK(first.findings == second.findings);
    CHECK(first.loads == second.loads);
    CHECK(first.assumptions == second.assumptions);
    for (std::size_t s = 0; s < 2; ++s) {
        CHECK(first.supports[s].cases[0].force_N == second.supports[s].cases[0].force_N);
        CHECK(first.supports[s].suggestions == second.supports[s].suggestions);
    }
}

TEST_CASE("an accepted caution opens again when its number moves", "[core][analysis]")
{
    Part in;
    in.id = PartId("in");
    in.x_mm = 10;
    in.body = Coupling{};
    in.drive = Drive{};
    in.drive->power_kW = 4.0;
    Part out = in;
    out.id = PartId("out");
    out.x_mm = 290;
    out.drive->power = PowerSense::driving;
    out.drive->power_kW = 3.0;
    Arrangement a = plainShaft(300, {supportAt("A", 50, Role::locating), supportAt("B", 250, Role::non_locating)}, {in, out});
    const Finding* open = nullptr;
    const Assessment before = run(a);
    open = find(before, "torque-unbalanced");
    REQUIRE(open != nullptr);
    REQUIRE(open->severity == Severity::caution);
    CHECK_FALSE(open->accepted);
    // 1 kW at 1000 rpm: 60e6/(2 pi 1000) Nmm = 9.549297 N m are left over.
    Acceptance acceptance;
    acceptance.code = "torque-unbalanced";
    acceptance.path = open->path;
    acceptance.reason = "Fan torque is an estimate";
    acceptance.values = {{"residual_Nm", 9.549296585513721}};
    a.acceptances = {acceptance};
    const Assessment accepted = run(a);
    CHECK(find(accepted, "torque-unbalanced")->accepted);
    a.parts[1].drive->power_kW = 2.9;
    const Assessment reopened = run(a);
    CHECK_FALSE(find(reopened, "torque-unbalanced")->accepted);
    // A stop is never accepted.
    a.parts.clear();
    a.supports.pop_back();
    Acceptance stop;
    stop.code = "shaft-tilts";
    stop.path = "supports.A";
    a.acceptances = {stop};
    const Assessment stopped = run(a);
    REQUIRE(find(stopped, "shaft-tilts") != nullptr);
    CHECK_FALSE(find(stopped, "shaft-tilts")->accepted);
}

TEST_CASE("every support gets a verdict on all 39 families", "[core][analysis]")
{
    const Assessment found = run(plainShaft(300, {supportAt("A", 50, Role::locating), supportAt("B", 250, Role::non_locating)},
                                            {force("P", 150, {300, 0, -1500})}));
    for (const SupportAssessment& support : found.supports)
        CHECK(support.suggestions.size() == 39);
}
