// Every guard meets a bad value: code, place, what would be right. A refused part brings no load.
#include "tests/core/loads/one_part.h"

#include <catch2/catch.hpp>

#include <functional>
#include <limits>

using namespace shaftwright;
using namespace shaftwright::test;

namespace
{

constexpr double notNumber = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

template <class Body> struct Bad {
    std::function<void(Body&)> change;
    std::string code, input, variant;
    std::vector<std::string> numbers; ///< names that must stand in the values
};

template <class Body> void refuse(const Body& good, const std::vector<Bad<Body>>& rows, double speed_rpm = 1000.0)
{
    const Drive drive = driveTorque(PowerSense::driving, 50000.0);
    {
        const LoadResult fine = runOne(good, drive, speed_rpm);
        REQUIRE(fine.cases[0].parts.size() == 1);
        for (const Finding& finding : fine.findings)
            CHECK(finding.code == "torque-unbalanced"); // a part alone is never in balance
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Bad<Body>& row = rows[i];
        INFO("row " << i << " " << row.code << " " << row.input);
        Body bad = good;
        row.change(bad);
        const LoadResult result = runOne(bad, drive, speed_rpm);
        CHECK(result.cases[0].parts.empty());
        const Finding* finding = find(result.findings, row.code);
        REQUIRE(finding != nullptr);
        CHECK(finding->severity == Severity::stop);
        CHECK(finding->subject == "P");
        CHECK(finding->path == (row.input.empty() ? "parts.P" : "parts.P." + row.input));
        CHECK(finding->variant == row.variant);
        CHECK(finding->values.find("part") != nullptr);
        for (const std::string& name : row.numbers)
            CHECK(finding->values.find(name) != nullptr);
        for (const auto& [name, value] : finding->values.entries) {
            if (const double* number = std::get_if<double>(&value))
                CHECK(std::isfinite(*number));
        }
    }
}

CylindricalGear goodGear()
{
    CylindricalGear gear;
    gear.teeth = 30;
    gear.normal_module_mm = 3.0;
    gear.helix_deg = 15.0;
    gear.hand = Hand::right;
    gear.pressure_angle_deg = 20.0;
    return gear;
}

BevelGear goodBevel()
{
    BevelGear gear;
    gear.teeth = 20;
    gear.outer_module_mm = 4.0;
    gear.cone_angle_deg = 45.0;
    gear.face_width_mm = 15.0;
    gear.pressure_angle_deg = 20.0;
    return gear;
}

Worm goodWorm()
{
    Worm worm;
    worm.starts = 2;
    worm.axial_module_mm = 4.0;
    worm.reference_diameter_mm = 45.0;
    worm.pressure_angle_deg = 20.0;
    worm.friction = 0.04;
    return worm;
}

WormWheel goodWheel()
{
    WormWheel wheel;
    wheel.teeth = 40;
    wheel.reference_diameter_mm = 160.0;
    wheel.lead_angle_deg = 12.0;
    wheel.pressure_angle_deg = 20.0;
    wheel.friction = 0.04;
    return wheel;
}

BeltPulley goodPulley()
{
    BeltPulley pulley;
    pulley.kind = BeltKind::v;
    pulley.diameter_mm = 140.0;
    pulley.other_diameter_mm = 300.0;
    pulley.centre_distance_mm = 500.0;
    pulley.tension = TensionFactor{1.5};
    return pulley;
}

ChainSprocket goodSprocket()
{
    ChainSprocket sprocket;
    sprocket.teeth = 21;
    sprocket.other_teeth = 57;
    sprocket.pitch_mm = 19.05;
    sprocket.centre_distance_mm = 760.0;
    sprocket.force_factor = 1.05;
    return sprocket;
}

} // namespace

TEST_CASE("cylindrical gears refuse what makes no tooth", "[core][loads][rejection]")
{
    using G = CylindricalGear;
    refuse<G>(
        goodGear(),
        {{[](G& g) { g.teeth = 3; }, "gear-size", "teeth", "teeth", {"value", "low"}},
         {[](G& g) { g.teeth = -5; }, "gear-size", "teeth", "teeth", {"value", "low"}},
         {[](G& g) { g.internal = true, g.teeth = 11; }, "gear-size", "teeth", "teeth", {"value", "low"}},
         {[](G& g) { g.normal_module_mm = 0.0; }, "gear-size", "normal_module_mm", "module", {"value", "high"}},
         {[](G& g) { g.normal_module_mm = -2.0; }, "gear-size", "normal_module_mm", "module", {"value"}},
         {[](G& g) { g.normal_module_mm = 101.0; }, "gear-size", "normal_module_mm", "module", {"value", "high"}},
         {[](G& g) { g.normal_module_mm = notNumber; }, "gear-size", "normal_module_mm", "module", {"high"}},
         {[](G& g) { g.working_diameter_mm = 0.0; }, "gear-size", "working_diameter_mm", "diameter", {"value"}},
         {[](G& g) { g.helix_deg = -8.0; }, "gear-beta-sign", "helix_deg", "", {"helix_deg"}},
         {[](G& g) { g.helix_deg = 60.0; }, "gear-size", "helix_deg", "helix", {"value", "high"}},
         {[](G& g) { g.helix_deg = notNumber; }, "gear-size", "helix_deg", "helix", {"high"}},
         {[](G& g) { g.hand = Hand::none; }, "gear-hand-missing", "hand", "", {"helix_deg"}},
         {[](G& g) { g.pressure_angle_deg = 5.0; },
          "gear-size",
          "pressure_angle_deg",
          "pressure_angle",
          {"value", "low", "high"}},
         {[](G& g) { g.pressure_angle_deg = 40.0; }, "gear-size", "pressure_angle_deg", "pressure_angle", {"value"}},
         {[](G& g) { g.pressure_angle_deg = notNumber; }, "gear-size", "pressure_angle_deg", "pressure_angle", {"low"}},
         {[](G& g) { g.working_diameter_mm = 9.0; },
          "gear-smaller-than-shaft",
          "working_diameter_mm",
          "",
          {"pitch_diameter_mm", "shaft_mm"}},
         {[](G& g) { g.teeth = 4, g.normal_module_mm = 0.5; }, "gear-smaller-than-shaft", "teeth", "", {"shaft_mm"}},
         {[](G& g) { g.centre_distance_mm = 100.0; }, "gear-size", "mate_teeth", "mate", {"value"}},
         {[](G& g) { g.centre_distance_mm = 100.0, g.mate_teeth = 0; }, "gear-size", "mate_teeth", "mate", {"value"}},
         {[](G& g) { g.centre_distance_mm = 100.0, g.internal = true, g.mate_teeth = 30; },
          "gear-size",
          "mate_teeth",
          "mate",
          {"value"}},
         {[](G& g) { g.centre_distance_mm = -1.0, g.mate_teeth = 40; }, "gear-size", "centre_distance_mm", "diameter", {"value"}},
         {[](G& g) { g.centre_distance_mm = 90.0, g.mate_teeth = 40; },
          "gear-centre-distance-small",
          "centre_distance_mm",
          "",
          {"centre_distance_mm", "least_mm"}},
         {[](G& g) { g.mesh_angle_deg = notNumber; }, "value-invalid", "", "not_finite", {}},
         {[](G& g) { g.mesh_angle_deg = infinity; }, "value-invalid", "", "not_finite", {}}});
    // The smallest possible centre distance works.
    CylindricalGear gear = goodGear();
    gear.mate_teeth = 40;
    gear.centre_distance_mm = 90.0;
    const LoadResult small = runOne(gear, driveTorque(PowerSense::driving, 5e4), 1000.0);
    gear.centre_distance_mm = numberOf(*find(small.findings, "gear-centre-distance-small"), "least_mm") * (1.0 + 1e-12);
    CHECK(runOne(gear, driveTorque(PowerSense::driving, 5e4), 1000.0).cases[0].parts.size() == 1);
    // A ring around the shaft may be anything; a double-helical gear needs no hand.
    CylindricalGear herringbone = goodGear();
    herringbone.double_helical = true;
    herringbone.helix_deg = 30.0;
    herringbone.hand = Hand::none;
    CHECK(loadOf(herringbone, driveTorque(PowerSense::driving, 5e4), 1000.0).force_N.x == 0.0);
}

TEST_CASE("bevel gears refuse what makes no cone", "[core][loads][rejection]")
{
    using G = BevelGear;
    refuse<G>(
        goodBevel(),
        {{[](G& g) { g.cone_angle_deg = 0.0; }, "bevel-delta", "cone_angle_deg", "range", {"cone_angle_deg"}},
         {[](G& g) { g.cone_angle_deg = 90.0; }, "bevel-delta", "cone_angle_deg", "range", {"cone_angle_deg"}},
         {[](G& g) { g.cone_angle_deg = notNumber; }, "bevel-delta", "cone_angle_deg", "range", {}},
         {[](G& g) { g.mate_cone_angle_deg = 44.0; },
          "bevel-delta",
          "mate_cone_angle_deg",
          "sum",
          {"cone_angle_deg", "mate_cone_angle_deg", "shaft_angle_deg"}},
         {[](G& g) { g.mate_cone_angle_deg = 45.0, g.shaft_angle_deg = 100.0; }, "bevel-delta", "mate_cone_angle_deg", "sum", {}},
         {[](G& g) { g.spiral_deg = -5.0; }, "gear-beta-sign", "spiral_deg", "", {"helix_deg"}},
         {[](G& g) { g.spiral_deg = 50.0, g.hand = Hand::right; }, "gear-size", "spiral_deg", "helix", {"value", "high"}},
         {[](G& g) { g.spiral_deg = 35.0; }, "gear-hand-missing", "hand", "", {"helix_deg"}},
         {[](G& g) { g.teeth = 3; }, "gear-size", "teeth", "teeth", {"value", "low"}},
         {[](G& g) { g.outer_module_mm = 0.0; }, "gear-size", "outer_module_mm", "module", {"value", "high"}},
         {[](G& g) { g.face_width_mm = 0.0; }, "gear-size", "face_width_mm", "face_width", {"value", "high"}},
         {[](G& g) { g.face_width_mm = 120.0; }, "gear-size", "face_width_mm", "face_width", {"value", "high"}},
         {[](G& g) { g.mean_diameter_mm = 0.0; }, "gear-size", "mean_diameter_mm", "diameter", {"value"}},
         {[](G& g) { g.pressure_angle_deg = 45.0; }, "gear-size", "pressure_angle_deg", "pressure_angle", {"value"}}});
    BevelGear right = goodBevel();
    right.mate_cone_angle_deg = 45.005; // within 0.01 degrees
    CHECK(find(runOne(right, driveTorque(PowerSense::driving, 5e4), 1000.0).findings, "bevel-delta") == nullptr);
}

TEST_CASE("worm and wheel refuse what does not turn", "[core][loads][rejection]")
{
    using W = Worm;
    refuse<W>(goodWorm(),
              {{[](W& w) { w.reference_diameter_mm = 0.0; }, "gear-size", "reference_diameter_mm", "diameter", {"value"}},
               {[](W& w) { w.starts = 0; }, "gear-size", "starts", "starts", {"value", "low"}},
               {[](W& w) { w.axial_module_mm = 0.0; }, "gear-size", "axial_module_mm", "module", {"value", "high"}},
               {[](W& w) { w.lead_angle_deg = 0.0; }, "gear-size", "lead_angle_deg", "lead", {"value", "high"}},
               {[](W& w) { w.lead_angle_deg = 60.0; }, "gear-size", "lead_angle_deg", "lead", {"value"}},
               {[](W& w) { w.friction = -0.01; }, "gear-size", "friction", "friction", {"value", "high"}},
               {[](W& w) { w.friction = 0.21; }, "gear-size", "friction", "friction", {"value"}},
               {[](W& w) { w.friction = notNumber; }, "gear-size", "friction", "friction", {"high"}},
               {[](W& w) { w.hand = Hand::none; }, "gear-hand-missing", "hand", "", {"helix_deg"}},
               {[](W& w) { w.pressure_angle_deg = 3.0; }, "gear-size", "pressure_angle_deg", "pressure_angle", {"value"}}});
    using H = WormWheel;
    refuse<H>(goodWheel(),
              {{[](H& w) { w.reference_diameter_mm = -1.0; }, "gear-size", "reference_diameter_mm", "diameter", {"value"}},
               {[](H& w) { w.lead_angle_deg = 60.0; }, "gear-size", "lead_angle_deg", "lead", {"value"}},
               {[](H& w) { w.friction = 0.3; }, "gear-size", "friction", "friction", {"value"}},
               {[](H& w) { w.hand = Hand::none; }, "gear-hand-missing", "hand", "", {"helix_deg"}},
               {[](H& w) { w.worm_direction = 0; }, "value-invalid", "worm_direction", "", {"value", "low", "high"}},
               {[](H& w) { w.worm_direction = 1; },
                "mesh-mismatch",
                "worm_direction",
                "worm_direction",
                {"given", "needed", "speed_rpm"}},
               {[](H& w) { w.lead_angle_deg = 2.0; }, "worm-self-locking", "friction", "", {"mu", "limit"}}});
    // At standstill the direction cannot follow from the speed.
    const LoadResult rest = runOne(goodWheel(), driveTorque(PowerSense::driven, 5e4), 0.0);
    REQUIRE(find(rest.findings, "mesh-mismatch") != nullptr);
    CHECK(find(rest.findings, "mesh-mismatch")->variant == "worm_direction_missing");
}

TEST_CASE("a worm locks itself below its limit of friction", "[core][loads][rejection]")
{
    // d_m1 45, two starts, module 4, 20 degrees: the wheel cannot drive above mu = 0.16706.
    Worm worm = goodWorm();
    worm.friction = 0.168;
    const LoadResult locked = runOne(worm, driveTorque(PowerSense::driven, 20000.0), 960.0);
    const Finding* finding = find(locked.findings, "worm-self-locking");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::stop);
    CHECK_THAT(numberOf(*finding, "limit"), Catch::WithinAbs(0.16706, 0.6e-5));
    CHECK(finding->case_id == std::optional<std::string>("run"));
    CHECK(locked.cases[0].parts.empty());
    worm.friction = 0.167;
    CHECK(find(runOne(worm, driveTorque(PowerSense::driven, 20000.0), 960.0).findings, "worm-self-locking") == nullptr);
    worm.friction = 0.168; // driving it turns all the same
    CHECK(find(runOne(worm, driveTorque(PowerSense::driving, 20000.0), 960.0).findings, "worm-self-locking") == nullptr);
    // Power flowing back makes a driving worm a driven one.
    Setup back(960.0);
    back.add(partOf("P", worm, driveTorque(PowerSense::driving, 20000.0)));
    back.loadCase().power_factor = -1.0;
    CHECK(find(back.run().findings, "worm-self-locking") != nullptr);
    // Without torque nothing can lock, and nothing is divided by zero.
    const LoadResult idle = runOne(worm, driveTorque(PowerSense::driven, 0.0), 960.0);
    CHECK(idle.findings.size() <= 1); // the caution about the high friction
    CHECK(idle.cases[0].parts[0].force_N == Vector3{});
}

TEST_CASE("belts and chains refuse what does not run", "[core][loads][rejection]")
{
    using P = BeltPulley;
    refuse<P>(
        goodPulley(),
        {{[](P& p) { p.diameter_mm = 0.0; }, "belt-geometry", "diameter_mm", "diameter", {"value"}},
         {[](P& p) { p.other_diameter_mm = -3.0; }, "belt-geometry", "other_diameter_mm", "diameter", {"value"}},
         {[](P& p) { p.centre_distance_mm = 220.0; },
          "belt-geometry",
          "centre_distance_mm",
          "",
          {"centre_distance_mm", "least_mm"}},
         {[](P& p) { p.centre_distance_mm = notNumber; }, "belt-geometry", "centre_distance_mm", "", {"least_mm"}},
         {[](P& p) { p.tension = TensionRatio{1.0}; }, "belt-ratio", "tension.tight_over_slack", "ratio", {"value", "low"}},
         {[](P& p) { p.tension = TensionFactor{0.99}; }, "belt-ratio", "tension.force_over_useful", "factor", {"value", "low"}},
         {[](P& p) { p.tension = TensionFactor{notNumber}; }, "belt-ratio", "tension.force_over_useful", "factor", {"low"}},
         // Ft = 2 * 50 000 / 140 = 714.3 N
         {[](P& p) {
              p.tension = Pretension{357.0, {}};
          },
          "belt-slack",
          "tension.strand_N",
          "",
          {"F0_N", "least_N", "Ft_N"}},
         {[](P& p) {
              p.tension = Pretension{-1.0, {}};
          },
          "value-invalid",
          "tension.strand_N",
          "",
          {"value", "low"}},
         {[](P& p) {
              p.tension = Pretension{900.0, -0.1};
          },
          "value-invalid",
          "tension.belt_mass_kg_m",
          "",
          {"value", "low"}},
         {[](P& p) {
              p.tension = StrandForces{500.0, 500.0};
          },
          "belt-ratio",
          "tension.tight_N",
          "strands",
          {"value", "low"}},
         {[](P& p) {
              p.tension = StrandForces{500.0, -1.0};
          },
          "belt-ratio",
          "tension.tight_N",
          "strands",
          {"value"}},
         {[](P& p) {
              p.tension = StrandForces{1000.0, 250.0};
          },
          "part-torque-contradiction",
          "tension.tight_N",
          "strands",
          {"tight_N", "slack_N", "torque_Nmm", "torque_from_strands_Nmm"}},
         {[](P& p) { p.friction = -0.1; }, "value-invalid", "friction", "", {"value"}},
         {[](P& p) { p.friction = 0.3, p.groove_deg = 0.0; }, "value-invalid", "groove_deg", "", {"value"}},
         {[](P& p) { p.direction_deg = notNumber; }, "value-invalid", "", "not_finite", {}}});
    using C = ChainSprocket;
    refuse<C>(goodSprocket(),
              {{[](C& c) { c.teeth = 5; }, "gear-size", "teeth", "teeth", {"value", "low"}},
               {[](C& c) { c.other_teeth = 5; }, "gear-size", "other_teeth", "teeth", {"value", "low"}},
               {[](C& c) { c.pitch_mm = 0.0; }, "gear-size", "pitch_mm", "diameter", {"value"}},
               {[](C& c) { c.centre_distance_mm = 200.0; }, "belt-geometry", "centre_distance_mm", "", {"least_mm"}},
               {[](C& c) { c.force_factor = 0.9; }, "belt-ratio", "force_factor", "factor", {"value", "low"}},
               {[](C& c) { c.sag_force_N = -1.0; }, "belt-ratio", "sag_force_N", "sag", {"value", "low"}}});
    // A slack strand without force slips whatever the friction.
    BeltPulley loose = goodPulley();
    loose.kind = BeltKind::flat;
    loose.friction = 0.5;
    loose.tension = TensionFactor{1.0};
    const LoadResult result = runOne(loose, driveTorque(PowerSense::driving, 5e4), 1000.0);
    REQUIRE(find(result.findings, "belt-slips") != nullptr);
    CHECK(find(result.findings, "belt-slips")->severity == Severity::caution);
    CHECK(find(result.findings, "belt-slips")->variant == "no_slack_force");
}

TEST_CASE("couplings, impellers and weights refuse what cannot be", "[core][loads][rejection]")
{
    using C = Coupling;
    refuse<C>(C{}, {{[](C& c) { c.joint_angle_deg = -1.0; }, "cardan-angle", "joint_angle_deg", "", {"joint_angle_deg", "limit"}},
                    {[](C& c) { c.joint_angle_deg = 45.5; }, "cardan-angle", "joint_angle_deg", "", {"joint_angle_deg", "limit"}},
                    {[](C& c) { c.joint_angle_deg = notNumber; }, "cardan-angle", "joint_angle_deg", "", {"limit"}},
                    {[](C& c) { c.radial_force_N = -5.0; }, "value-invalid", "radial_force_N", "", {"value", "low"}},
                    {[](C& c) { c.axial_force_N = infinity; }, "value-invalid", "", "not_finite", {}}});
    Coupling bent;
    bent.joint_angle_deg = 16.0;
    const LoadResult caution = runOne(bent, driveTorque(PowerSense::driving, 5e4), 1000.0);
    REQUIRE(find(caution.findings, "cardan-angle") != nullptr);
    CHECK(find(caution.findings, "cardan-angle")->severity == Severity::caution);
    CHECK(numberOf(*find(caution.findings, "cardan-angle"), "limit") == 15.0);

    Impeller impeller;
    impeller.thrust_N = 100.0;
    refuse<Impeller>(impeller,
                     {{[](Impeller& i) { i.rotating_radial_N = -1.0; }, "value-invalid", "rotating_radial_N", "", {"value"}},
                      {[](Impeller& i) { i.thrust_N = notNumber; }, "value-invalid", "", "not_finite", {}}});

    const auto weight = [](std::optional<double> mass_kg, Unbalance unbalance) {
        Part part = partOf("P", WeightBody{unbalance, 0.0, 0.0}, std::nullopt);
        part.mass_kg = mass_kg;
        return Setup().add(part).run();
    };
    const std::tuple<std::optional<double>, Unbalance, const char*, const char*> rows[] = {
        {std::nullopt, std::monostate{}, "mass_kg", "mass"},
        {0.0, std::monostate{}, "mass_kg", "mass"},
        {-2.0, std::monostate{}, "mass_kg", "mass"},
        {notNumber, std::monostate{}, "mass_kg", "mass"},
        {1e308 * 10.0, std::monostate{}, "mass_kg", "mass"},
        {5.0, BalanceGrade{5.0}, "unbalance", "grade"},
        {5.0, BalanceGrade{0.0}, "unbalance", "grade"},
        {5.0, MassEccentricity{-0.1}, "unbalance", "eccentricity"},
        {5.0, UnbalanceGmm{-0.1}, "unbalance", "eccentricity"},
        {5.0, UnbalanceGmm{notNumber}, "unbalance", "eccentricity"},
    };
    for (const auto& [mass, unbalance, input, variant] : rows) {
        const LoadResult result = weight(mass, unbalance);
        INFO(input << " " << variant << " " << mass.value_or(-1.0));
        CHECK(result.cases[0].parts.empty());
        const Finding* finding = find(result.findings, "weight-value");
        REQUIRE(finding != nullptr);
        CHECK(finding->severity == Severity::stop);
        CHECK(finding->path == std::string("parts.P.") + input);
        CHECK(finding->variant == variant);
        CHECK(result.findings.size() == 1);
    }
    CHECK(weight(5.0, BalanceGrade{2.5}).findings.empty());
    // Any part may weigh, and a refused part does not.
    Part gear = partOf("P", goodGear(), driveTorque(PowerSense::driving, 1.0));
    gear.mass_kg = -1.0;
    CHECK(find(Setup().add(gear).run().findings, "weight-value") != nullptr);
    std::get<CylindricalGear>(gear.body).teeth = 1;
    gear.mass_kg = 4.0;
    CHECK(Setup().add(gear).run().cases[0].parts.empty());
}

TEST_CASE("free loads refuse an empty range and note a missing force", "[core][loads][rejection]")
{
    DistributedLoad line;
    line.end_mm = 100.0; // the part starts at 100
    line.start_N_per_mm.z = line.end_N_per_mm.z = -1.0;
    const LoadResult empty = runOne(line, std::nullopt, 0.0);
    const Finding* finding = find(empty.findings, "load-range");
    REQUIRE(finding != nullptr);
    CHECK(finding->path == "parts.P.end_mm");
    CHECK(numberOf(*finding, "start_mm") == 100.0);
    CHECK(numberOf(*finding, "end_mm") == 100.0);
    line.end_mm = notNumber;
    CHECK(find(runOne(line, std::nullopt, 0.0).findings, "load-range") != nullptr);
    line.end_mm = 120.0;
    line.end_N_per_mm.z = notNumber;
    CHECK(find(runOne(line, std::nullopt, 0.0).findings, "value-invalid") != nullptr);

    const LoadResult nothing = runOne(PointLoad{}, std::nullopt, 0.0);
    REQUIRE(nothing.findings.size() == 1);
    CHECK(nothing.findings[0].code == "load-zero");
    CHECK(nothing.findings[0].severity == Severity::note);
    CHECK(nothing.findings[0].path == "parts.P");
    PointLoad broken;
    broken.force_N = {0.0, notNumber, 1.0};
    const LoadResult refused = runOne(broken, std::nullopt, 0.0);
    CHECK(refused.cases[0].parts.empty());
    CHECK(find(refused.findings, "value-invalid") != nullptr);
}

TEST_CASE("torque that cannot be told", "[core][loads][rejection]")
{
    const auto only = [](std::optional<Drive> drive, double speed_rpm) {
        return runOne(goodGear(), std::move(drive), speed_rpm);
    };
    SECTION("no drive at all")
    {
        for (const PartBody& body : {PartBody(goodGear()), PartBody(goodBevel()), PartBody(goodWorm()), PartBody(goodWheel()),
                                     PartBody(goodPulley()), PartBody(goodSprocket()), PartBody(Coupling{})}) {
            const LoadResult result = runOne(body, std::nullopt, 1000.0);
            REQUIRE(result.findings.size() == 1);
            CHECK(result.findings[0].code == "part-torque-missing");
            CHECK(result.findings[0].path == "parts.P.drive");
            CHECK(result.findings[0].severity == Severity::stop);
        }
    }
    SECTION("neither power nor torque")
    {
        const LoadResult result = only(Drive{}, 1000.0);
        REQUIRE(result.findings.size() == 1);
        CHECK(result.findings[0].code == "part-torque-missing");
        CHECK(result.findings[0].path == "parts.P.drive.power_kW");
    }
    SECTION("power at standstill")
    {
        CHECK(find(only(drivePower(PowerSense::driven, 3.0), 0.0).findings, "part-power-at-standstill") != nullptr);
        CHECK(find(only(drivePower(PowerSense::driven, 0.0), 0.0).findings, "part-power-at-standstill") == nullptr);
        // At rest a torque is signed.
        CHECK(only(driveTorque(PowerSense::driven, -5e4), 0.0).cases[0].parts[0].torque_Nmm == -5e4);
    }
    SECTION("power and torque that differ")
    {
        Drive drive = drivePower(PowerSense::driven, 10.0);
        drive.torque_Nmm = torque_Nmm(10.0, 1000.0) * 1.0009;
        CHECK(find(only(drive, 1000.0).findings, "part-torque-contradiction") == nullptr);
        drive.torque_Nmm = torque_Nmm(10.0, 1000.0) * 1.002;
        const LoadResult result = only(drive, 1000.0);
        const Finding* finding = find(result.findings, "part-torque-contradiction");
        REQUIRE(finding != nullptr);
        CHECK(finding->path == "parts.P.drive.torque_Nmm");
        for (const char* name : {"power_kW", "torque_Nmm", "torque_from_power_Nmm", "speed_rpm"})
            CHECK(finding->values.find(name) != nullptr);
        CHECK(result.cases[0].parts.empty());
    }
    SECTION("a number and the remainder")
    {
        Drive drive = drivePower(PowerSense::driven, 10.0);
        drive.takes_remaining = true;
        const LoadResult result = only(drive, 1000.0);
        const Finding* finding = find(result.findings, "part-torque-contradiction");
        REQUIRE(finding != nullptr);
        CHECK(finding->variant == "remaining");
    }
    SECTION("two parts take the remainder")
    {
        Drive rest;
        rest.takes_remaining = true;
        Setup setup;
        setup.add(partOf("A", goodGear(), drivePower(PowerSense::driven, 10.0)));
        setup.add(partOf("B", Coupling{}, rest)).add(partOf("C", Coupling{}, rest));
        const LoadResult result = setup.run();
        const Finding* finding = find(result.findings, "torque-remainder-twice");
        REQUIRE(finding != nullptr);
        CHECK(finding->subject == "C");
        CHECK(finding->path == "parts.C.drive.takes_remaining");
        CHECK(std::get<std::string>(*finding->values.find("other")) == "B");
        CHECK(result.cases[0].parts.size() == 1); // the gear
    }
    SECTION("numbers that are none")
    {
        for (const double value : {notNumber, infinity, -1.0})
            CHECK(find(only(drivePower(PowerSense::driven, value), 1000.0).findings, "value-invalid") != nullptr);
        for (const double value : {notNumber, -infinity})
            CHECK(find(only(driveTorque(PowerSense::driven, value), 1000.0).findings, "value-invalid") != nullptr);
        CHECK(find(only(driveTorque(PowerSense::driven, 1.0), notNumber).findings, "value-invalid") != nullptr);
    }
}

TEST_CASE("values outside the usual range are cautions, at their edges none", "[core][loads][rejection]")
{
    const auto unusual = [](const PartBody& body, const char* input) {
        const LoadResult result = runOne(body, driveTorque(PowerSense::driving, 5e4), 1000.0);
        CHECK(result.cases[0].parts.size() == 1);
        for (const Finding& finding : result.findings) {
            if (finding.code == "value-unusual" && finding.path == std::string("parts.P.") + input) {
                CHECK(finding.severity == Severity::caution);
                CHECK(numberOf(finding, "low") < numberOf(finding, "high"));
                CHECK_FALSE(finding.case_id);
                return true;
            }
        }
        return false;
    };
    CylindricalGear gear = goodGear();
    gear.teeth = 11;
    CHECK(unusual(gear, "teeth"));
    gear.teeth = 12;
    CHECK_FALSE(unusual(gear, "teeth"));
    gear.teeth = 251;
    CHECK(unusual(gear, "teeth"));
    gear = goodGear();
    gear.normal_module_mm = 0.45;
    gear.teeth = 40;
    CHECK(unusual(gear, "normal_module_mm"));
    gear = goodGear();
    gear.helix_deg = 4.0;
    CHECK(unusual(gear, "helix_deg"));
    gear.helix_deg = 36.0;
    CHECK(unusual(gear, "helix_deg"));
    gear.double_helical = true;
    CHECK_FALSE(unusual(gear, "helix_deg"));
    gear.helix_deg = 14.0;
    CHECK(unusual(gear, "helix_deg"));
    gear.pressure_angle_deg = 26.0;
    CHECK(unusual(gear, "pressure_angle_deg"));
    BevelGear bevel = goodBevel();
    bevel.face_width_mm = 20.0; // cone distance 56.6 mm, 35 % of it 19.8 mm
    CHECK(unusual(bevel, "face_width_mm"));
    bevel.face_width_mm = 19.0;
    CHECK_FALSE(unusual(bevel, "face_width_mm"));
    bevel.spiral_deg = 46.0;
    bevel.hand = Hand::left;
    CHECK(unusual(bevel, "spiral_deg"));
    Worm worm = goodWorm();
    worm.friction = 0.11;
    CHECK(unusual(worm, "friction"));
    worm.lead_angle_deg = 31.0;
    CHECK(unusual(worm, "lead_angle_deg"));
    WormWheel wheel = goodWheel();
    wheel.lead_angle_deg = 31.0;
    CHECK(unusual(wheel, "lead_angle_deg"));
    ChainSprocket chain = goodSprocket();
    chain.teeth = 16;
    CHECK(unusual(chain, "teeth"));
    chain.teeth = 17;
    chain.force_factor = 1.6;
    CHECK(unusual(chain, "force_factor"));

    gear = goodGear();
    gear.helix_deg = 0.0;
    const LoadResult useless = runOne(gear, driveTorque(PowerSense::driving, 5e4), 1000.0);
    REQUIRE(find(useless.findings, "gear-hand-useless") != nullptr);
    CHECK(find(useless.findings, "gear-hand-useless")->severity == Severity::note);
    CHECK(find(useless.findings, "gear-hand-useless")->path == "parts.P.hand");
}
