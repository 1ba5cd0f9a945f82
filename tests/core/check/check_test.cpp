// Every guard on the inputs by themselves meets a bad value: code, place, severity, what would be right.
#include "core/check/check.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <functional>
#include <limits>

using namespace shaftwright;

namespace
{

constexpr double notNumber = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

SetRow bearingRow()
{
    CatalogueRow row;
    row.catalogue = "typed";
    row.designation = "made up";
    row.bore_mm = 40.0;
    row.outer_mm = 80.0;
    row.width_mm = 18.0;
    row.C_N = 30000.0;
    row.C0_N = 18000.0;
    row.source = "made up for the test";
    return {row, std::nullopt};
}

/// Two segments, two supports, one part of several kinds, two cases; nothing wrong.
Arrangement good()
{
    Arrangement a;
    Segment first;
    first.id = SegmentId("S1");
    first.length_mm = 100.0;
    first.outer_mm = 40.0;
    first.features = {{FeatureId("F1"), FeatureKind::keyway, 20.0, 30.0, 5.0, 12.0, 0.0}};
    Segment second = first;
    second.id = SegmentId("S2");
    second.length_mm = 200.0;
    second.outer_mm = 50.0;
    second.outer_end_mm = 45.0;
    second.bore_mm = 10.0;
    second.features.clear();
    a.shaft.segments = {first, second};

    Part part;
    part.id = PartId("G");
    part.name = "gear";
    part.x_mm = 150.0;
    part.mass_kg = 4.0;
    part.drive = Drive{PowerSense::driven, 5.0, std::nullopt, false, false};
    CylindricalGear gear;
    gear.teeth = 40;
    gear.normal_module_mm = 3.0;
    gear.further_meshes = {{180.0, Drive{PowerSense::driving, std::nullopt, 100.0, false, false}}};
    part.body = gear;
    Part line;
    line.id = PartId("Q");
    line.x_mm = 50.0;
    DistributedLoad load;
    load.end_mm = 300.0;
    line.body = load;
    a.parts = {part, line};

    Support left;
    left.id = SupportId("A");
    left.x_mm = 30.0;
    left.role = Role::locating;
    left.bearing = BearingChoice{Family::deep_groove_ball, {bearingRow()}, SetArrangement::none};
    Support right = left;
    right.id = SupportId("B");
    right.name = "drive end";
    right.x_mm = 270.0;
    right.role = Role::non_locating;
    a.supports = {left, right};

    LoadCase rated;
    rated.id = CaseId("rated");
    rated.time_share = 0.4;
    rated.speed_rpm = 1000.0;
    LoadCase idle = rated;
    idle.id = CaseId("idle");
    idle.time_share = 0.6;
    a.duty.load_cases = {rated, idle};
    Requirement requirement;
    requirement.id = RequirementId("R1");
    requirement.where = "G";
    requirement.limit = 0.05;
    a.requirements = {requirement};
    return a;
}

struct Bad {
    std::function<void(Arrangement&)> change;
    std::string code, subject, path, variant;
    Severity severity = Severity::stop;
    std::vector<std::string> numbers;
};

void expect(const std::vector<Bad>& rows)
{
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Bad& row = rows[i];
        INFO("row " << i << " " << row.code << " " << row.path);
        Arrangement a = good();
        row.change(a);
        const Findings findings = checkArrangement(a);
        bool found = false;
        for (const Finding& finding : findings) {
            for (const auto& [name, value] : finding.values.entries) {
                if (const double* number = std::get_if<double>(&value))
                    CHECK(std::isfinite(*number));
            }
            if (finding.code != row.code || finding.path != row.path)
                continue;
            found = true;
            CHECK(finding.severity == row.severity);
            CHECK(finding.subject == row.subject);
            CHECK(finding.variant == row.variant);
            for (const std::string& name : row.numbers)
                CHECK(finding.values.find(name) != nullptr);
        }
        CHECK(found);
        CHECK(findings.size() == 1); // one fault, one statement
    }
}

Segment& segment(Arrangement& a, std::size_t i = 0)
{
    return a.shaft.segments.at(i);
}

CatalogueRow& rowOf(Arrangement& a)
{
    return a.supports[0].bearing->rows[0].row;
}

} // namespace

TEST_CASE("a good arrangement has no finding", "[core][check]")
{
    CHECK(checkArrangement(good()).empty());
}

TEST_CASE("an empty document says that the shaft is missing, and no more", "[core][check][rejection]")
{
    const Findings findings = checkArrangement(Arrangement{});
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].code == "segment-size");
    CHECK(findings[0].variant == "none");
    CHECK(findings[0].path == "shaft.segments");
    CHECK(findings[0].severity == Severity::stop);
}

TEST_CASE("segments must have size and wall", "[core][check][rejection]")
{
    const auto wrong = [](const char* input, auto change) {
        return Bad{change,
                   "segment-size",
                   "S1",
                   std::string("shaft.segments.S1.") + input,
                   input,
                   Severity::stop,
                   {"segment", "low", "high"}};
    };
    // A segment without usable length leaves the places of the rest open: only the segment is at fault.
    expect({wrong("length_mm", [](Arrangement& a) { segment(a).length_mm = 0.0; }),
            wrong("length_mm", [](Arrangement& a) { segment(a).length_mm = -5.0; }),
            wrong("length_mm", [](Arrangement& a) { segment(a).length_mm = 1e-9; }),
            wrong("length_mm", [](Arrangement& a) { segment(a).length_mm = 1e9; }),
            wrong("length_mm", [](Arrangement& a) { segment(a).length_mm = notNumber; }),
            wrong("outer_mm", [](Arrangement& a) { segment(a).outer_mm = 0.0; }),
            wrong("outer_mm", [](Arrangement& a) { segment(a).outer_mm = 1e300; }),
            wrong("outer_mm", [](Arrangement& a) { segment(a).outer_mm = infinity; }),
            wrong("outer_end_mm", [](Arrangement& a) { segment(a).outer_end_mm = -1.0; })});
    const auto hollow = [](const char* segment_id, const char* input, auto change) {
        return Bad{
            change,         "segment-bore",         segment_id, std::string("shaft.segments.") + segment_id + "." + input, "",
            Severity::stop, {"segment", "outer_mm"}};
    };
    expect({hollow("S1", "bore_mm", [](Arrangement& a) { segment(a).bore_mm = 40.0; }),
            hollow("S1", "bore_mm", [](Arrangement& a) { segment(a).bore_mm = 41.0; }),
            hollow("S1", "bore_mm", [](Arrangement& a) { segment(a).bore_mm = -1.0; }),
            hollow("S1", "bore_mm", [](Arrangement& a) { segment(a).bore_mm = notNumber; }),
            hollow("S2", "bore_mm", [](Arrangement& a) { segment(a, 1).bore_mm = 47.0; }), // thin end of the cone
            hollow("S2", "bore_end_mm", [](Arrangement& a) { segment(a, 1).bore_end_mm = 45.0; })});
    expect({{[](Arrangement& a) { segment(a).outer_end_mm = 3.9; }, // 40 to 3.9: ratio 10.3
             "segment-cone",
             "S1",
             "shaft.segments.S1.outer_end_mm",
             "",
             Severity::caution,
             {"ratio", "half_angle_deg"}},
            {[](Arrangement& a) { segment(a).outer_end_mm = 241.0; }, // atan(100.5/100)
             "segment-cone",
             "S1",
             "shaft.segments.S1.outer_end_mm",
             "",
             Severity::caution,
             {"ratio", "half_angle_deg"}},
            {[](Arrangement& a) { segment(a).features[0].position_mm = 101.0; },
             "value-invalid",
             "S1",
             "shaft.segments.S1.features.F1.position_mm",
             "",
             Severity::stop,
             {"value", "low", "high"}},
            {[](Arrangement& a) { segment(a).features[0].depth_mm = 21.0; },
             "value-invalid",
             "S1",
             "shaft.segments.S1.features.F1.depth_mm",
             "",
             Severity::stop,
             {"value", "high"}}});
}

TEST_CASE("elastic constants must belong to a solid", "[core][check][rejection]")
{
    const auto wrong = [](const char* input, const char* variant, auto change) {
        return Bad{change, "material-elastic", "", std::string("shaft.material.") + input, variant, Severity::stop, {}};
    };
    expect({wrong("modulus_MPa", "modulus_MPa", [](Arrangement& a) { a.shaft.material.modulus_MPa = 0.0; }),
            wrong("modulus_MPa", "modulus_MPa", [](Arrangement& a) { a.shaft.material.modulus_MPa = notNumber; }),
            wrong("shear_modulus_MPa", "shear_modulus_MPa", [](Arrangement& a) { a.shaft.material.shear_modulus_MPa = -1.0; }),
            wrong("density_kg_m3", "density_kg_m3", [](Arrangement& a) { a.shaft.material.density_kg_m3 = 0.0; }),
            // E/2G - 1: 206/400 - 1 < 0, also when E comes from the table; 206/130 - 1 = 0.58
            wrong("shear_modulus_MPa", "poisson", [](Arrangement& a) { a.shaft.material.shear_modulus_MPa = 200000.0; }),
            wrong("shear_modulus_MPa", "poisson",
                  [](Arrangement& a) {
                      a.shaft.material.modulus_MPa = 206000.0;
                      a.shaft.material.shear_modulus_MPa = 65000.0;
                  }),
            {[](Arrangement& a) { a.shaft.material.expansion_per_K = 1.0; },
             "value-invalid",
             "",
             "shaft.material.expansion_per_K",
             "",
             Severity::stop,
             {"value", "high"}}});
    Arrangement soft = good();
    soft.shaft.material.modulus_MPa = 70000.0;
    CHECK(checkArrangement(soft).empty());
}

TEST_CASE("parts stand on the shaft and have numbers", "[core][check][rejection]")
{
    const auto outside = [](auto change) {
        return Bad{change, "part-x-outside", "G", "parts.G.x_mm", "", Severity::stop, {"part", "x_mm", "length_mm"}};
    };
    const auto broken = [](const char* input, auto change) {
        return Bad{change,         "value-invalid",        "G", std::string("parts.G.") + input, "not_finite",
                   Severity::stop, {"path", "low", "high"}};
    };
    expect(
        {outside([](Arrangement& a) { a.parts[0].x_mm = -0.01; }),
         outside([](Arrangement& a) { a.parts[0].x_mm = 300.01; }),
         broken("x_mm", [](Arrangement& a) { a.parts[0].x_mm = notNumber; }),
         broken("mass_kg", [](Arrangement& a) { a.parts[0].mass_kg = notNumber; }),
         broken("normal_module_mm",
                [](Arrangement& a) { std::get<CylindricalGear>(a.parts[0].body).normal_module_mm = notNumber; }),
         broken("mesh_angle_deg", [](Arrangement& a) { std::get<CylindricalGear>(a.parts[0].body).mesh_angle_deg = infinity; }),
         broken("further_meshes.1.mesh_angle_deg",
                [](Arrangement& a) { std::get<CylindricalGear>(a.parts[0].body).further_meshes[0].mesh_angle_deg = notNumber; }),
         broken(
             "further_meshes.1.drive.torque_Nmm",
             [](Arrangement& a) { std::get<CylindricalGear>(a.parts[0].body).further_meshes[0].drive.torque_Nmm = notNumber; }),
         broken("drive.power_kW", [](Arrangement& a) { a.parts[0].drive->power_kW = infinity; }),
         {[](Arrangement& a) { a.parts[0].drive->power_kW = -5.0; },
          "value-invalid",
          "G",
          "parts.G.drive.power_kW",
          "",
          Severity::stop,
          {"value", "low"}},
         {[](Arrangement& a) { a.parts[0].drive->torque_Nmm = 1e13; },
          "value-invalid",
          "G",
          "parts.G.drive.torque_Nmm",
          "",
          Severity::stop,
          {"value", "high"}},
         {[](Arrangement& a) { std::get<DistributedLoad>(a.parts[1].body).end_mm = 300.5; },
          "load-range",
          "Q",
          "parts.Q.end_mm",
          "beyond",
          Severity::stop,
          {"start_mm", "end_mm", "length_mm"}},
         {[](Arrangement& a) { a.parts[1].id = PartId("G"); },
          "value-invalid",
          "G",
          "parts.G.id",
          "id_twice",
          Severity::stop,
          {"id"}},
         {[](Arrangement& a) { a.supports[1].id = SupportId("G"); },
          "value-invalid",
          "G",
          "supports.G.id",
          "id_twice",
          Severity::stop,
          {"id"}}});
    Arrangement edge = good();
    edge.parts[0].x_mm = 300.0;
    CHECK(checkArrangement(edge).empty());
    edge.parts[0].x_mm = 0.0;
    CHECK(checkArrangement(edge).empty());
}

TEST_CASE("every number of every kind of part is looked at", "[core][check][rejection]")
{
    BeltPulley pulley;
    pulley.tension = Pretension{100.0, notNumber};
    BevelGear bevel;
    bevel.spiral_deg = notNumber;
    Worm worm;
    worm.friction = notNumber;
    WormWheel wheel;
    wheel.reference_diameter_mm = infinity;
    ChainSprocket chain;
    chain.sag_force_N = notNumber;
    Coupling coupling;
    coupling.radial_direction = GivenDirection{notNumber};
    Impeller impeller;
    impeller.offset_z_mm = notNumber;
    PointLoad point;
    point.moment_Nmm.y = -infinity;
    DistributedLoad line;
    line.end_mm = 200.0;
    line.end_N_per_mm.z = notNumber;
    const std::pair<PartBody, const char*> rows[] = {
        {pulley, "tension.belt_mass_kg_m"},
        {bevel, "spiral_deg"},
        {worm, "friction"},
        {wheel, "reference_diameter_mm"},
        {chain, "sag_force_N"},
        {coupling, "radial_direction_deg"},
        {impeller, "offset_z_mm"},
        {WeightBody{BalanceGrade{notNumber}, 0.0, 0.0}, "unbalance.grade_mm_s"},
        {WeightBody{UnbalanceGmm{notNumber}, 0.0, 0.0}, "unbalance.moment_kg_mm"},
        {WeightBody{MassEccentricity{notNumber}, 0.0, 0.0}, "unbalance.eccentricity_mm"},
        {point, "moment_Nmm.y"},
        {line, "end_N_per_mm.z"},
    };
    for (const auto& [body, input] : rows) {
        Arrangement a = good();
        a.parts[0].body = body;
        const Findings findings = checkArrangement(a);
        INFO(input);
        REQUIRE(findings.size() == 1);
        CHECK(findings[0].code == "value-invalid");
        CHECK(findings[0].variant == "not_finite");
        CHECK(findings[0].path == std::string("parts.G.") + input);
    }
}

TEST_CASE("supports stand on the shaft, apart from each other", "[core][check][rejection]")
{
    const auto place = [](const char* id, const char* variant, Severity severity, std::vector<std::string> numbers, auto change) {
        return Bad{change, "support-place", id, std::string("supports.") + id + ".x_mm", variant, severity, std::move(numbers)};
    };
    expect(
        {place("B", "outside", Severity::stop, {"support", "x_mm", "length_mm"},
               [](Arrangement& a) { a.supports[1].x_mm = 301.0; }),
         place("A", "outside", Severity::stop, {"support", "length_mm"}, [](Arrangement& a) { a.supports[0].x_mm = -1.0; }),
         place("A", "outside", Severity::stop, {"support", "length_mm"}, [](Arrangement& a) { a.supports[0].x_mm = notNumber; }),
         place("B", "same", Severity::stop, {"support", "other", "x_mm"}, [](Arrangement& a) { a.supports[1].x_mm = 30.0; }),
         place("B", "close", Severity::caution, {"support", "other", "distance_mm"},
               [](Arrangement& a) { a.supports[1].x_mm = 30.05; }),
         place("B", "overlap", Severity::stop, {"support", "other", "distance_mm", "needed_mm"},
               [](Arrangement& a) { a.supports[1].x_mm = 47.9; })});
    Arrangement beside = good();
    beside.supports[1].x_mm = 48.0; // two widths of 18 touch
    CHECK(checkArrangement(beside).empty());
    beside.supports[1].x_mm = 40.0; // a thrust bearing round the radial one
    beside.supports[1].role = Role::axial_only;
    CHECK(checkArrangement(beside).empty());
}

TEST_CASE("what is stated for a support stays in its range", "[core][check][rejection]")
{
    const auto wrong = [](const char* input, const char* variant, auto change) {
        return Bad{change,         "value-invalid",        "A", std::string("supports.A.") + input, variant,
                   Severity::stop, {"path", "low", "high"}};
    };
    expect({wrong("greatest_outer_mm", "", [](Arrangement& a) { a.supports[0].greatest_outer_mm = 0.0; }),
            wrong("greatest_width_mm", "", [](Arrangement& a) { a.supports[0].greatest_width_mm = -2.0; }),
            wrong("required_L_h", "", [](Arrangement& a) { a.supports[0].required_L_h = 0.0; }),
            wrong("required_L_h", "not_finite", [](Arrangement& a) { a.supports[0].required_L_h = infinity; }),
            wrong("reliability_percent", "", [](Arrangement& a) { a.supports[0].reliability_percent = 100.0; }),
            wrong("required_S0", "", [](Arrangement& a) { a.supports[0].required_S0 = 0.0; }),
            wrong("play_mm", "", [](Arrangement& a) { a.supports[0].play_mm = -0.1; }),
            wrong("mounting_error_mrad", "not_finite", [](Arrangement& a) { a.supports[0].mounting_error_mrad = notNumber; }),
            wrong("prescribed.y_mm", "not_finite",
                  [](Arrangement& a) {
                      a.supports[0].prescribed = PrescribedDisplacement{0, notNumber, 0, 0, 0};
                  }),
            wrong("prescribed.rz_mrad", "", [](Arrangement& a) {
                a.supports[0].prescribed = PrescribedDisplacement{0, 0, 0, 0, 2000};
            })});
}

TEST_CASE("stiffness matrices are symmetric and push back", "[core][check][rejection]")
{
    const auto matrix = [](auto set) {
        return [set](Arrangement& a) {
            ElasticSupport elastic;
            for (std::size_t i = 0; i < 5; ++i)
                elastic.stiffness[i][i] = 1e5;
            set(elastic.stiffness);
            a.supports[0].elastic = elastic;
        };
    };
    const auto wrong = [&](const char* variant, auto set) {
        return Bad{matrix(set), "support-stiffness", "A", "supports.A.elastic", variant, Severity::stop, {"support"}};
    };
    expect({wrong("not_symmetric", [](Matrix5& K) { K[1][2] = 10.0; }), wrong("negative", [](Matrix5& K) { K[3][3] = -1.0; }),
            // each diagonal entry positive, yet one direction pulls: 1e5 and 2e5 beside the diagonal
            wrong("negative", [](Matrix5& K) { K[1][2] = K[2][1] = 2e5; }),
            // an entry beside a zero on the diagonal
            wrong("negative",
                  [](Matrix5& K) {
                      K[3][3] = 0.0;
                      K[1][3] = K[3][1] = 5e4;
                  }),
            wrong("not_finite", [](Matrix5& K) { K[0][0] = notNumber; })});
    Arrangement fine = good();
    matrix([](Matrix5& K) {
        K[1][4] = K[4][1] = 9e4;
        K[0][0] = 0.0;
        K[3][3] = 0.0;
    })(fine);
    CHECK(checkArrangement(fine).empty());

    const auto gap = [](RadialGap value) {
        return Bad{[value](Arrangement& a) { a.supports[0].gap = value; },
                   "support-stiffness",
                   "A",
                   "supports.A.gap",
                   "gap",
                   Severity::stop,
                   {"support"}};
    };
    expect({gap({-0.01, 1e5, 1.5}), gap({0.01, 0.0, 1.5}), gap({0.01, 1e5, 0.9}), gap({notNumber, 1e5, 1.0}),
            gap({0.01, infinity, 1.0}), gap({0.01, 1e5, notNumber}), gap({0.01, 1e5, infinity})});
    expect({{[](Arrangement& a) {
                 ElasticSupport elastic;
                 elastic.stiffness[1][1] = 1e5;
                 a.supports[0].elastic = elastic;
                 a.supports[0].gap = RadialGap{0.01, 1e5, 1.5};
             },
             "support-rigid-and-spring",
             "A",
             "supports.A.gap",
             "gap",
             Severity::stop,
             {"support"}}});
}

TEST_CASE("rows of bearings are whole", "[core][check][rejection]")
{
    const auto wrong = [](const char* input, const char* variant, auto change) {
        return Bad{change,  "value-invalid", "A",     std::string("supports.A.bearing.rows.1.") + input,
                   variant, Severity::stop,  {"path"}};
    };
    expect({wrong("bore_mm", "", [](Arrangement& a) { rowOf(a).bore_mm = 0.0; }),
            wrong("outer_mm", "ring", [](Arrangement& a) { rowOf(a).outer_mm = 40.0; }),
            wrong("width_mm", "not_finite", [](Arrangement& a) { rowOf(a).width_mm = notNumber; }),
            wrong("C_N", "", [](Arrangement& a) { rowOf(a).C_N = 0.0; }),
            wrong("C0_N", "", [](Arrangement& a) { rowOf(a).C0_N = -5.0; }),
            wrong("contact_angle_deg", "", [](Arrangement& a) { rowOf(a).contact_angle_deg = 91.0; }),
            wrong("Y", "not_finite", [](Arrangement& a) { rowOf(a).Y = infinity; }),
            wrong("Cu_N", "", [](Arrangement& a) { rowOf(a).Cu_N = -1.0; }),
            wrong("source", "source", [](Arrangement& a) { rowOf(a).source.clear(); }),
            {[](Arrangement& a) { a.supports[0].bearing->rows.clear(); },
             "value-invalid",
             "A",
             "supports.A.bearing.rows",
             "empty",
             Severity::stop,
             {"path"}}});
}

TEST_CASE("duty adds up", "[core][check][rejection]")
{
    const auto case_value = [](const char* input, const char* variant, auto change) {
        return Bad{change,  "value-invalid", "rated",        std::string("duty.load_cases.rated.") + input,
                   variant, Severity::stop,  {"path", "low"}};
    };
    expect(
        {{[](Arrangement& a) { a.duty.load_cases[0].time_share = -0.1; },
          "duty-share",
          "rated",
          "duty.load_cases.rated.time_share",
          "negative",
          Severity::stop,
          {"case", "time_share"}},
         {[](Arrangement& a) { a.duty.load_cases[0].time_share = notNumber; },
          "duty-share",
          "rated",
          "duty.load_cases.rated.time_share",
          "not_finite",
          Severity::stop,
          {"case"}},
         {[](Arrangement& a) { a.duty.load_cases[0].time_share = 0.401; },
          "duty-share",
          "",
          "duty.load_cases",
          "sum",
          Severity::caution,
          {"sum"}},
         {[](Arrangement& a) { a.duty.load_cases[0].time_share = a.duty.load_cases[1].time_share = 0.0; },
          "duty-share",
          "",
          "duty.load_cases",
          "sum",
          Severity::stop,
          {"sum"}},
         {[](Arrangement& a) { a.duty.K_A = 0.0; }, "value-invalid", "", "duty.K_A", "", Severity::stop, {"value"}},
         {[](Arrangement& a) { a.duty.required_L_h = -1.0; },
          "value-invalid",
          "",
          "duty.required_L_h",
          "",
          Severity::stop,
          {"value"}},
         {[](Arrangement& a) { a.duty.reliability_percent = 49.0; },
          "value-invalid",
          "",
          "duty.reliability_percent",
          "",
          Severity::stop,
          {"value"}},
         {[](Arrangement& a) { a.duty.load_cases[1].id = CaseId("rated"); },
          "value-invalid",
          "rated",
          "duty.load_cases.rated.id",
          "id_twice",
          Severity::stop,
          {"id"}},
         {[](Arrangement& a) { a.duty.load_cases[0].parts[PartId("gone")] = {}; },
          "value-invalid",
          "rated",
          "duty.load_cases.rated.parts.gone",
          "reference",
          Severity::stop,
          {"id"}},
         case_value("speed_rpm", "not_finite", [](Arrangement& a) { a.duty.load_cases[0].speed_rpm = notNumber; }),
         case_value("power_factor", "", [](Arrangement& a) { a.duty.load_cases[0].power_factor = 1e6; }),
         case_value("free_load_factor", "not_finite", [](Arrangement& a) { a.duty.load_cases[0].free_load_factor = infinity; }),
         case_value("peak_factor", "", [](Arrangement& a) { a.duty.load_cases[0].peak_factor = 0.0; }),
         case_value("shaft_temperature_C", "", [](Arrangement& a) { a.duty.load_cases[0].shaft_temperature_C = 5000.0; }),
         case_value("housing_temperature_C", "not_finite",
                    [](Arrangement& a) { a.duty.load_cases[0].housing_temperature_C = notNumber; }),
         case_value("parts.G.power_factor", "not_finite",
                    [](Arrangement& a) { a.duty.load_cases[0].parts[PartId("G")].power_factor = notNumber; })});
    Arrangement near = good();
    near.duty.load_cases[0].time_share = 0.4 + 5e-7;
    CHECK(checkArrangement(near).empty());
}

TEST_CASE("surroundings and requirements", "[core][check][rejection]")
{
    const auto around = [](const char* input, const char* variant, auto change) {
        return Bad{change,         "value-invalid",        "", std::string("surroundings.") + input, variant,
                   Severity::stop, {"path", "low", "high"}};
    };
    expect({around("temperature_C", "", [](Arrangement& a) { a.surroundings.temperature_C = -300.0; }),
            around("ambient_C", "not_finite", [](Arrangement& a) { a.surroundings.ambient_C = notNumber; }),
            around("assembly_C", "", [](Arrangement& a) { a.surroundings.assembly_C = 700.0; }),
            around("attitude_deg", "", [](Arrangement& a) { a.surroundings.attitude_deg = 91.0; }),
            around("swing_deg", "", [](Arrangement& a) { a.surroundings.swing_deg = 361.0; }),
            around("swings_per_min", "", [](Arrangement& a) { a.surroundings.swings_per_min = -1.0; }),
            around("viscosity_grade", "", [](Arrangement& a) { a.surroundings.viscosity_grade = 0.0; }),
            around("weights.cost", "", [](Arrangement& a) { a.surroundings.weights["cost"] = -1.0; })});
    const auto wanted = [](const char* input, const char* variant, auto change) {
        return Bad{change, "value-invalid", "R1", std::string("requirements.R1.") + input, variant, Severity::stop, {"path"}};
    };
    expect({wanted("limit", "", [](Arrangement& a) { a.requirements[0].limit = 0.0; }),
            wanted("limit", "not_finite", [](Arrangement& a) { a.requirements[0].limit = notNumber; }),
            wanted("where", "reference", [](Arrangement& a) { a.requirements[0].where = "gone"; }),
            wanted("where", "place", [](Arrangement& a) { a.requirements[0].where.clear(); }),
            wanted("x_mm", "", [](Arrangement& a) { a.requirements[0].where.clear(), a.requirements[0].x_mm = 301.0; })});
    Arrangement fine = good();
    fine.requirements[0].where = "B";
    CHECK(checkArrangement(fine).empty());
    fine.requirements[0].where.clear();
    fine.requirements[0].x_mm = 150.0;
    CHECK(checkArrangement(fine).empty());
}
