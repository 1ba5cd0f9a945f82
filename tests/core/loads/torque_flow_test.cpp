// Who gives and who takes power; factors of cases; what they multiply and what not.
#include "tests/core/loads/one_part.h"

#include <catch2/catch.hpp>

using namespace shaftwright;
using namespace shaftwright::test;
using Catch::WithinAbs;
using Catch::WithinRel;

namespace
{

CylindricalGear gearOf(double d_w, double phi_deg = 0.0)
{
    CylindricalGear gear;
    gear.working_diameter_mm = d_w;
    gear.pressure_angle_deg = 20.0;
    gear.mesh_angle_deg = phi_deg;
    return gear;
}

Drive remaining()
{
    Drive drive;
    drive.takes_remaining = true;
    return drive;
}

Setup gearAndCoupling()
{
    Setup setup;
    setup.add(partOf("G", gearOf(100.0), drivePower(PowerSense::driven, 10.0), 60.0));
    setup.add(partOf("C", Coupling{}, remaining(), 180.0));
    return setup;
}

const PartLoad& load(const LoadResult& result, const char* id, std::size_t case_index = 0)
{
    for (const PartLoad& candidate : result.cases.at(case_index).parts) {
        if (candidate.part.value == id)
            return candidate;
    }
    throw std::runtime_error(std::string("no load of ") + id);
}

} // namespace

TEST_CASE("torque follows from power and speed", "[core][loads]")
{
    CHECK_THAT(torque_Nmm(1.0, 1.0), WithinAbs(9549296.6, 0.05)); // 60e6 / (2 pi), printed to 0.1
    CHECK(torque_Nmm(5.0, -100.0) == torque_Nmm(5.0, 100.0));
}

TEST_CASE("the part that takes what remains balances the shaft", "[core][loads]")
{
    const LoadResult result = gearAndCoupling().run();
    CHECK(result.findings.empty());
    const double T = torque_Nmm(10.0, 1000.0);
    CHECK_THAT(load(result, "G").torque_Nmm, WithinRel(T, 1e-12));
    CHECK_THAT(load(result, "C").torque_Nmm, WithinRel(-T, 1e-12));
    CHECK(result.cases[0].torque_residual_Nmm == 0.0);
}

TEST_CASE("power in is power out with three parts", "[core][loads]")
{
    Setup setup(-730.0);
    setup.add(partOf("A", gearOf(120.0), drivePower(PowerSense::driven, 12.0)));
    setup.add(partOf("B", gearOf(80.0, 90.0), drivePower(PowerSense::driving, 4.5)));
    setup.add(partOf("C", Coupling{}, remaining()));
    const LoadResult result = setup.run();
    const double omega = 2.0 * std::numbers::pi * -730.0 / 60.0;
    CHECK_THAT(load(result, "A").torque_Nmm * omega / 1e6, WithinRel(12.0, 1e-12)); // kW
    CHECK_THAT(load(result, "B").torque_Nmm * omega / 1e6, WithinRel(-4.5, 1e-12));
    CHECK_THAT(load(result, "C").torque_Nmm * omega / 1e6, WithinRel(-7.5, 1e-12));
}

TEST_CASE("application factor multiplies what torque brings, and the remainder stays balanced", "[core][loads]")
{
    Setup setup = gearAndCoupling();
    // A free moment is stated as real; the taker must not multiply it.
    PointLoad brake;
    brake.moment_Nmm.x = -20000.0;
    brake.force_N.z = -300.0;
    setup.add(partOf("F", brake, std::nullopt));
    Part heavy = partOf("W", WeightBody{}, std::nullopt);
    heavy.mass_kg = 3.0;
    setup.add(heavy);
    setup.settled.K_A = 1.5;
    const LoadResult result = setup.run();
    const double T = torque_Nmm(10.0, 1000.0);
    CHECK_THAT(load(result, "G").torque_Nmm, WithinRel(1.5 * T, 1e-12));
    CHECK_THAT(load(result, "G").tangential_N, WithinRel(1.5 * T / 50.0, 1e-12));
    CHECK_THAT(load(result, "C").torque_Nmm, WithinRel(-(1.5 * T - 20000.0), 1e-12));
    CHECK(load(result, "F").force_N.z == -300.0);
    CHECK_THAT(load(result, "W").force_N.z, WithinRel(-3.0 * 9.80665, 1e-12));
    CHECK(result.cases[0].torque_residual_Nmm == 0.0);
    CHECK(find(result.findings, "torque-unbalanced") == nullptr);
}

TEST_CASE("a negative power factor lets power flow back", "[core][loads]")
{
    CylindricalGear gear = gearOf(100.0);
    gear.helix_deg = 15.0;
    gear.hand = Hand::right;
    Setup setup;
    setup.add(partOf("G", gear, drivePower(PowerSense::driven, 10.0)));
    setup.add(partOf("C", Coupling{}, remaining()));
    LoadCase braking = setup.loadCase();
    braking.id = CaseId("brake");
    braking.power_factor = -0.4;
    setup.settled.load_cases.push_back(braking);
    const LoadResult result = setup.run();
    const PartLoad& pull = load(result, "G", 0);
    const PartLoad& push = load(result, "G", 1);
    CHECK_THAT(push.torque_Nmm, WithinRel(-0.4 * pull.torque_Nmm, 1e-12));
    CHECK_THAT(push.force_N.x, WithinRel(-0.4 * pull.force_N.x, 1e-12));
    CHECK_THAT(push.force_N.y, WithinRel(0.4 * pull.force_N.y, 1e-12)); // separating force stays outwards
    CHECK(result.findings.empty());
}

TEST_CASE("a fixed sense that the balance contradicts is a stop", "[core][loads]")
{
    Setup setup = gearAndCoupling();
    Drive& drive = *setup.arrangement.parts[1].drive;
    drive.sense_fixed = true;
    drive.power = PowerSense::driving; // the gear takes 10 kW in, so the coupling has to give them away
    CHECK(find(setup.run().findings, "part-role-contradiction") == nullptr);
    drive.power = PowerSense::driven;
    const LoadResult result = setup.run();
    const Finding* finding = find(result.findings, "part-role-contradiction");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::stop);
    CHECK(finding->subject == "C");
    CHECK(finding->path == "parts.C.drive.power");
    CHECK(finding->variant == "takes");
    CHECK_THAT(numberOf(*finding, "power_kW"), WithinRel(10.0, 1e-12));
    // With the power flowing back the senses swap and both agree again.
    setup.loadCase().power_factor = -1.0;
    CHECK(find(setup.run().findings, "part-role-contradiction") != nullptr);
    drive.power = PowerSense::driving;
    CHECK(find(setup.run().findings, "part-role-contradiction") == nullptr);
    drive.sense_fixed = false;
    drive.power = PowerSense::driven;
    CHECK(setup.run().findings.empty());
}

TEST_CASE("an idler carries two meshes and no torque", "[core][loads]")
{
    CylindricalGear idler = gearOf(100.0, 180.0);
    FurtherMesh out;
    out.mesh_angle_deg = 0.0;
    out.drive = remaining();
    idler.further_meshes = {out};
    const LoadResult result = Setup().add(partOf("I", idler, drivePower(PowerSense::driven, 5.0))).run();
    REQUIRE(result.cases[0].parts.size() == 2);
    const PartLoad& in = result.cases[0].parts[0];
    const PartLoad& away = result.cases[0].parts[1];
    CHECK_THAT(in.torque_Nmm + away.torque_Nmm, WithinAbs(0.0, 1e-9));
    // On opposite sides the tangential forces add up, the separating ones cancel.
    const Vector3 sum = in.force_N + away.force_N;
    CHECK_THAT(sum.y, WithinAbs(0.0, 1e-9));
    CHECK_THAT(std::abs(sum.z), WithinRel(2.0 * in.tangential_N, 1e-12));
    CHECK(result.findings.empty());
}

TEST_CASE("unbalanced torque is told by size", "[core][loads]")
{
    const auto residual = [](double out_kW) {
        Setup setup;
        setup.add(partOf("A", gearOf(120.0), drivePower(PowerSense::driven, 10.0)));
        setup.add(partOf("B", gearOf(80.0), drivePower(PowerSense::driving, out_kW)));
        return setup.run();
    };
    CHECK(residual(10.0).findings.empty());
    CHECK(residual(10.0 + 5e-6).findings.empty());
    const LoadResult small = residual(9.85);
    const Finding* note = find(small.findings, "torque-unbalanced");
    REQUIRE(note != nullptr);
    CHECK(note->severity == Severity::note);
    CHECK(note->path == "duty.load_cases.run");
    CHECK_THAT(numberOf(*note, "share_percent"), WithinRel(1.5, 1e-9));
    CHECK_THAT(small.cases[0].torque_residual_Nmm, WithinRel(-torque_Nmm(0.15, 1000.0), 1e-9));
    const LoadResult large = residual(8.0);
    const Finding* caution = find(large.findings, "torque-unbalanced");
    REQUIRE(caution != nullptr);
    CHECK(caution->severity == Severity::caution);
    const auto* parts = caution->values.find("parts");
    REQUIRE(parts != nullptr);
    CHECK(std::get<std::string>(*parts) == "A 95.49 N\u00b7m, B -76.39 N\u00b7m");

    const LoadResult alone = runOne(gearOf(100.0), drivePower(PowerSense::driven, 10.0), 1000.0);
    const Finding* stop = find(alone.findings, "torque-unbalanced");
    REQUIRE(stop != nullptr);
    CHECK(stop->severity == Severity::stop);
    CHECK(stop->variant == "one_sign");
    CHECK(alone.cases[0].parts.size() == 1); // bending is still solved

    PointLoad twist;
    twist.moment_Nmm.x = 5000.0;
    CHECK(find(runOne(twist, std::nullopt, 0.0).findings, "torque-unbalanced") != nullptr);
    // A free moment may balance a drive.
    twist.moment_Nmm.x = -torque_Nmm(10.0, 1000.0);
    Setup balanced;
    balanced.add(partOf("A", gearOf(120.0), drivePower(PowerSense::driven, 10.0))).add(partOf("F", twist, std::nullopt));
    CHECK(balanced.run().findings.empty());
}

TEST_CASE("factors of parts and cases multiply; what is switched off still weighs", "[core][loads]")
{
    Setup setup = gearAndCoupling();
    setup.arrangement.parts[0].mass_kg = 8.0;
    setup.loadCase().power_factor = 0.5;
    setup.loadCase().parts[PartId("G")].power_factor = 0.3;
    CHECK_THAT(load(setup.run(), "G").torque_Nmm, WithinRel(0.15 * torque_Nmm(10.0, 1000.0), 1e-12));
    for (const DerivationStep& step : load(setup.run(), "G").derivation) {
        if (step.code == "torque_from_power")
            CHECK_THAT(std::get<double>(*step.inputs.find("f")), WithinRel(0.15, 1e-12));
    }
    setup.loadCase().parts[PartId("G")].active = false;
    const LoadResult off = setup.run();
    CHECK(load(off, "G").torque_Nmm == 0.0);
    CHECK_THAT(load(off, "G").force_N.z, WithinRel(-8.0 * 9.80665, 1e-12));
    CHECK(load(off, "C").torque_Nmm == 0.0);
    // A weight that is switched off is not there.
    Part body = partOf("W", WeightBody{}, std::nullopt);
    body.mass_kg = 5.0;
    setup.add(body);
    CHECK(load(setup.run(), "W").force_N.z < 0.0);
    setup.loadCase().parts[PartId("W")].active = false;
    CHECK_THROWS(load(setup.run(), "W"));
}

TEST_CASE("stated strand forces keep their sum when the case changes the torque", "[core][loads]")
{
    BeltPulley pulley;
    pulley.diameter_mm = 100.0;
    pulley.other_diameter_mm = 100.0;
    pulley.centre_distance_mm = 300.0;
    pulley.tension = StrandForces{1000.0, 200.0}; // 800 N at 50 mm
    Setup setup;
    setup.add(partOf("P", pulley, driveTorque(PowerSense::driven, 40000.0)));
    CHECK_THAT(load(setup.run(), "P").radial_N, WithinRel(1200.0, 1e-12));
    setup.settled.K_A = 1.25;
    CHECK_THAT(load(setup.run(), "P").radial_N, WithinRel(1200.0, 1e-12));
    CHECK(find(setup.run().findings, "part-torque-contradiction") == nullptr);
    setup.loadCase().power_factor = 2.0; // 2000 N of useful force from strands of 600 N each
    const LoadResult slack = setup.run();
    const Finding* finding = find(slack.findings, "belt-slack");
    REQUIRE(finding != nullptr);
    CHECK_THAT(numberOf(*finding, "least_N"), WithinRel(1000.0, 1e-12));
    // Within 1 % the moment keeps the given torque.
    Setup near;
    near.add(partOf("P", pulley, driveTorque(PowerSense::driven, 40300.0)));
    CHECK(load(near.run(), "P").moment_Nmm.x == 40300.0);
    CHECK_THAT(load(near.run(), "P").radial_N, WithinRel(1200.0, 1e-12));
}

TEST_CASE("a tension roller needs no torque", "[core][loads]")
{
    BeltPulley roller;
    roller.diameter_mm = 80.0;
    roller.other_diameter_mm = 80.0;
    roller.centre_distance_mm = 300.0;
    roller.direction_deg = 90.0;
    roller.tension = Pretension{400.0, std::nullopt};
    const LoadResult result = runOne(roller, std::nullopt, 1000.0);
    CHECK(result.findings.empty());
    CHECK_THAT(result.cases[0].parts[0].force_N.z, WithinRel(800.0, 1e-12));
    CHECK(result.cases[0].parts[0].torque_Nmm == 0.0);
}

TEST_CASE("pretension gives way to the centrifugal part", "[core][loads]")
{
    BeltPulley pulley;
    pulley.diameter_mm = 200.0;
    pulley.other_diameter_mm = 200.0;
    pulley.centre_distance_mm = 600.0;
    pulley.tension = Pretension{1000.0, 0.5};
    // v = pi 0.2 * 1500 / 60 = 15.70796 m/s, q v^2 = 123.37 N; both strands parallel: 2 (1000 - 123.37).
    CHECK_THAT(loadOf(pulley, driveTorque(PowerSense::driven, 10000.0), 1500.0).radial_N, WithinAbs(1753.26, 0.01));
}

TEST_CASE("open inputs are listed once with their reason", "[core][loads]")
{
    Setup setup;
    CylindricalGear gear = gearOf(100.0);
    gear.pressure_angle_deg.reset();
    setup.add(partOf("G", gear, drivePower(PowerSense::driven, 10.0)));
    Worm worm;
    worm.reference_diameter_mm = 50.0;
    worm.lead_angle_deg = 15.0;
    worm.pressure_angle_deg = 20.0;
    setup.add(partOf("W", worm, drivePower(PowerSense::driving, 10.0)));
    LoadCase second = setup.loadCase();
    second.id = CaseId("slow");
    second.speed_rpm = 300.0;
    setup.settled.load_cases.push_back(second);
    // Even when the first case leaves a part out.
    setup.loadCase(0).parts[PartId("G")].active = false;
    const LoadResult result = setup.run();
    int angles = 0, frictions = 0;
    for (const Assumption& assumption : result.assumptions) {
        angles += assumption.path == "parts.G.pressure_angle_deg" ? 1 : 0;
        frictions += assumption.path == "parts.W.friction" ? 1 : 0;
    }
    CHECK(angles == 1);
    CHECK(frictions == 2); // it depends on the sliding speed
}

TEST_CASE("friction of an open worm falls with its sliding speed", "[core][loads]")
{
    // ANSI/AGMA 6034 curve (from memory): 0.080, 0.043, 0.027, 0.016 at 0.1, 1, 3, 10 m/s; 0.15 at rest. Tolerance: printed
    // digits.
    const std::pair<double, double> rows[] = {{0.1, 0.080}, {1.0, 0.043}, {3.0, 0.027}, {10.0, 0.016}};
    for (const auto& [v_m_s, mu] : rows) {
        Worm worm;
        worm.reference_diameter_mm = 50.0;
        worm.lead_angle_deg = 15.0;
        worm.pressure_angle_deg = 20.0;
        const double n = v_m_s * 60000.0 * std::cos(15.0 * degree) / (std::numbers::pi * 50.0);
        const LoadResult result = runOne(worm, driveTorque(PowerSense::driving, 1000.0), n);
        REQUIRE(result.assumptions.size() == 1);
        CHECK_THAT(std::get<double>(result.assumptions[0].value), WithinAbs(mu, 0.0005));
    }
}

TEST_CASE("distributed loads carry their factor and their axial sum", "[core][loads]")
{
    DistributedLoad line;
    line.end_mm = 150.0;
    line.start_N_per_mm = {1.0, 0.0, -2.0};
    line.end_N_per_mm = {3.0, 0.0, -4.0};
    line.start_torque_Nmm_per_mm = 10.0;
    line.end_torque_Nmm_per_mm = 30.0;
    Setup setup;
    setup.loadCase().free_load_factor = 0.5;
    setup.add(partOf("Q", line, std::nullopt)); // from 100 to 150
    setup.add(partOf("C", Coupling{}, remaining()));
    const LoadResult result = setup.run();
    CHECK(load(result, "Q").q1_N_mm.z == -2.0);
    CHECK_THAT(result.cases[0].K_N, WithinRel(0.5 * 0.5 * (1.0 + 3.0) * 50.0, 1e-12));
    CHECK_THAT(load(result, "C").torque_Nmm, WithinRel(-0.5 * 0.5 * (10.0 + 30.0) * 50.0, 1e-12));
}

TEST_CASE("eccentric thrust bends the shaft", "[core][loads]")
{
    Impeller impeller;
    impeller.thrust_N = -800.0;
    impeller.offset_y_mm = 5.0;
    impeller.offset_z_mm = -2.0;
    impeller.rotating_radial_N = 40.0;
    const PartLoad load = loadOf(impeller, driveTorque(PowerSense::driving, 1000.0), 1450.0);
    CHECK(load.moment_Nmm.y == 1600.0); // z0 Fx
    CHECK(load.moment_Nmm.z == 4000.0); // -y0 Fx
    CHECK(load.rotating_force_N.y == 40.0);
}

TEST_CASE("coupling forces by direction", "[core][loads]")
{
    Coupling coupling;
    coupling.radial_force_N = 300.0;
    coupling.axial_force_N = -50.0;
    coupling.bending_moment_Nmm = 1000.0;
    coupling.bending_moment_axis_deg = 90.0;
    const PartLoad worst = loadOf(coupling, std::nullopt, 1000.0);
    CHECK(worst.worst_direction_N == 300.0);
    CHECK(worst.force_N == Vector3{-50.0, 0.0, 0.0});
    CHECK(worst.moment_Nmm == Vector3{0.0, 0.0, 1000.0});
    coupling.radial_direction = GivenDirection{270.0};
    const PartLoad given = loadOf(coupling, std::nullopt, 1000.0);
    CHECK(given.worst_direction_N == 0.0);
    CHECK(given.force_N == Vector3{-50.0, 0.0, -300.0});
}

TEST_CASE("the same statement stands once, with its case only when it does not hold in all", "[core][loads]")
{
    Setup setup(0.0);
    setup.add(partOf("G", gearOf(100.0), drivePower(PowerSense::driven, 10.0)));
    LoadCase second = setup.loadCase();
    second.id = CaseId("turning");
    second.speed_rpm = 500.0;
    setup.settled.load_cases.push_back(second);
    const LoadResult result = setup.run();
    const Finding* still = find(result.findings, "part-power-at-standstill");
    REQUIRE(still != nullptr);
    CHECK(still->case_id == std::optional<std::string>("run"));
    CHECK(still->path == "parts.G.drive.power_kW");
    CHECK_THAT(numberOf(*still, "power_kW"), WithinRel(10.0, 1e-12));

    CylindricalGear bad = gearOf(100.0);
    bad.helix_deg = 10.0;
    Setup twice;
    twice.add(partOf("G", bad, drivePower(PowerSense::driven, 10.0)));
    twice.settled.load_cases.push_back(second);
    const LoadResult hand = twice.run();
    int count = 0;
    for (const Finding& finding : hand.findings) {
        if (finding.code == "gear-hand-missing") {
            ++count;
            CHECK_FALSE(finding.case_id);
        }
    }
    CHECK(count == 1);
}
