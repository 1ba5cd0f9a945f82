// Bad input: each guard meets a bad value and gives its finding; nothing is solved, nothing throws.

#include "tests/core/beam/beam_cases.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <functional>
#include <limits>

using namespace beamtest;

namespace
{

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInf = std::numeric_limits<double>::infinity();

struct Input {
    Model model;
    LoadCase load;
};

Input good()
{
    Input in;
    in.model = shaft({cylinder(0, 100, 40), cylinder(100, 300, 50)});
    in.model.supports = {pin("A", 20), roller("B", 280)};
    in.load = loads({force(150, 0, -1000, 0)}, {line(120, 180, -3, -3)});
    return in;
}

struct Row {
    const char* name;
    const char* code;
    Severity severity;
    std::function<void(Input&)> spoil;
};

} // namespace

TEST_CASE("the unspoilt input is accepted without a finding", "[core][beam]")
{
    const Input in = good();
    const Solution s = solveOne(in.model, in.load);
    CHECK(s.usable());
    CHECK(s.findings.empty());
}

TEST_CASE("each bad input gives its finding and no result", "[core][beam]")
{
    const Severity stop = Severity::stop;
    const std::vector<Row> rows{
        {"no segment", "segment-size", stop, [](Input& i) { i.model.pieces.clear(); }},
        {"length zero", "segment-size", stop, [](Input& i) { i.model.pieces[0].x1_mm = 0; }},
        {"length negative", "segment-size", stop, [](Input& i) { i.model.pieces[1].x1_mm = 50; }},
        {"diameter zero", "segment-size", stop, [](Input& i) { i.model.pieces[0].outer0_mm = 0; }},
        {"diameter negative at the far end", "segment-size", stop, [](Input& i) { i.model.pieces[0].outer1_mm = -3; }},
        {"gap between segments", "segment-size", stop, [](Input& i) { i.model.pieces[1].x0_mm = 101; }},
        {"overlap of segments", "segment-size", stop, [](Input& i) { i.model.pieces[1].x0_mm = 99; }},
        {"bore as large as the shaft", "segment-bore", stop, [](Input& i) { i.model.pieces[0].bore0_mm = 40; }},
        {"bore too large at the far end", "segment-bore", stop, [](Input& i) { i.model.pieces[0].bore1_mm = 45; }},
        {"bore negative", "segment-bore", stop, [](Input& i) { i.model.pieces[0].bore0_mm = -1; }},
        {"diameter not a number", "value-invalid", stop, [](Input& i) { i.model.pieces[0].outer0_mm = kNan; }},
        {"E zero", "material-elastic", stop, [](Input& i) { i.model.properties.modulus_MPa = 0; }},
        {"G negative", "material-elastic", stop, [](Input& i) { i.model.properties.shear_modulus_MPa = -1; }},
        {"Poisson ratio above one half", "material-elastic", stop,
         [](Input& i) { i.model.properties.shear_modulus_MPa = 60000; }},
        {"Poisson ratio below zero", "material-elastic", stop, [](Input& i) { i.model.properties.shear_modulus_MPa = 110000; }},
        {"E infinite", "value-invalid", stop, [](Input& i) { i.model.properties.modulus_MPa = kInf; }},
        {"density negative", "value-invalid", stop, [](Input& i) { i.model.properties.density_kg_m3 = -1; }},
        {"support left of the shaft", "support-place", stop, [](Input& i) { i.model.supports[0].x_mm = -1; }},
        {"support right of the shaft", "support-place", stop, [](Input& i) { i.model.supports[1].x_mm = 301; }},
        {"two supports on one seat", "support-place", stop, [](Input& i) { i.model.supports[1].x_mm = 20; }},
        {"support place not a number", "value-invalid", stop, [](Input& i) { i.model.supports[0].x_mm = kNan; }},
        {"stiffness not symmetric", "support-stiffness", stop,
         [](Input& i) {
             i.model.supports[0].stiffness[3][3] = i.model.supports[0].stiffness[4][4] = 1e7;
             i.model.supports[0].stiffness[3][4] = 1e5;
         }},
        {"stiffness negative", "support-stiffness", stop, [](Input& i) { i.model.supports[0].stiffness[3][3] = -1e7; }},
        {"stiffness indefinite", "support-stiffness", stop,
         [](Input& i) {
             auto& k = i.model.supports[0].stiffness;
             k[3][3] = k[4][4] = 1e7;
             k[3][4] = k[4][3] = 2e7;
         }},
        {"stiffness infinite", "value-invalid", stop, [](Input& i) { i.model.supports[0].stiffness[3][3] = kInf; }},
        {"rigid and spring in one direction", "support-rigid-and-spring", stop,
         [](Input& i) { i.model.supports[0].stiffness[1][1] = 1e5; }},
        {"rigid and gap in one direction", "support-rigid-and-spring", stop,
         [](Input& i) {
             i.model.supports[0].gap = Gap{0.01, 1e5, 1.0};
         }},
        {"gap negative", "support-stiffness", stop,
         [](Input& i) {
             i.model.supports[0].rigid = {true, false, false, false, false};
             i.model.supports[0].gap = Gap{-0.01, 1e5, 1.0};
         }},
        {"gap stiffness zero", "support-stiffness", stop,
         [](Input& i) {
             i.model.supports[0].rigid = {true, false, false, false, false};
             i.model.supports[0].gap = Gap{0.01, 0, 1.0};
         }},
        {"gap exponent below one", "support-stiffness", stop,
         [](Input& i) {
             i.model.supports[0].rigid = {true, false, false, false, false};
             i.model.supports[0].gap = Gap{0.01, 1e5, 0.9};
         }},
        {"gap beside a spring", "support-stiffness", stop,
         [](Input& i) {
             i.model.supports[0].rigid = {true, false, false, false, false};
             i.model.supports[0].stiffness[1][1] = 1e4;
             i.model.supports[0].gap = Gap{0.01, 1e5, 1.0};
         }},
        {"force off the shaft", "part-x-outside", stop, [](Input& i) { i.load.point_loads[0].x_mm = 305; }},
        {"force not a number", "value-invalid", stop, [](Input& i) { i.load.point_loads[0].force_N[1] = kNan; }},
        {"line load backwards", "load-range", stop, [](Input& i) { i.load.line_loads[0].x1_mm = 110; }},
        {"line load beyond the shaft", "load-range", stop, [](Input& i) { i.load.line_loads[0].x1_mm = 320; }},
        {"temperature infinite", "value-invalid", stop, [](Input& i) { i.load.temperature_rise_K = kInf; }},
    };
    for (const Row& row : rows) {
        INFO(row.name);
        Input in = good();
        row.spoil(in);
        const Solution s = solveOne(in.model, in.load);
        CHECK(has(s.findings, row.code, row.severity));
        CHECK_FALSE(s.usable());
    }
}

TEST_CASE("doubtful input is solved and the doubt is told", "[core][beam]")
{
    {
        Input in = good();
        in.model.pieces[0] = cone(0, 100, 3, 40); // ratio 13
        const Solution s = solveOne(in.model, in.load);
        CHECK(s.usable());
        CHECK(has(s.findings, "segment-cone", Severity::caution));
    }
    {
        Input in = good();
        in.model.pieces = {cylinder(0, 90, 20), cone(90, 100, 20, 50), cylinder(100, 300, 50)}; // 56 degrees
        CHECK(has(solveOne(in.model, in.load).findings, "segment-cone", Severity::caution));
    }
    {
        Input in = good();
        in.model.supports.push_back(roller("C", 280.05));
        const Solution s = solveOne(in.model, in.load);
        CHECK(s.usable());
        CHECK(has(s.findings, "support-place", Severity::caution));
    }
    {
        Input in = good();
        in.model.supports[0].x_mm = 130;
        in.model.supports[1].x_mm = 170;
        CHECK(has(solveOne(in.model, in.load).findings, "span-stubby", Severity::note));
    }
    {
        Input in = good();
        in.load.point_loads[0].force_N[1] = -3e6;
        in.load.id = "overload";
        const Solution s = solveOne(in.model, in.load);
        CHECK(s.usable());
        CHECK(has(s.findings, "shaft-large-deflection", Severity::caution));
        CHECK(s.findings.back().case_id == "overload");
    }
    {
        Input in = good();
        in.load.line_loads.clear();
        for (int k = 1; k < 2200; ++k)
            in.load.point_loads.push_back(force(300.0 * k / 2200, 0, -0.1, 0));
        const Solution s = solveOne(in.model, in.load);
        CHECK(s.usable());
        CHECK(has(s.findings, "shaft-too-many-nodes", Severity::note));
    }
}

TEST_CASE("a place off the shaft, or no number, is brought to the shaft", "[core][beam]")
{
    const Input in = good();
    const Solution s = solveOne(in.model, in.load);
    REQUIRE(s.usable());
    CHECK(at(s, -5).x_mm == 0.0);
    CHECK(at(s, 1e9).x_mm == 300.0);
    CHECK(std::isfinite(at(s, kNan).v_mm));
}

TEST_CASE("places closer than a micrometre become one node and keep their statics", "[core][beam]")
{
    Input in = good();
    in.load = loads({force(150, 0, -1000, 0), force(150.0004, 0, -1000, 0)}, {line(99.9998, 200, -2, -2)});
    const Solution s = solveOne(in.model, in.load);
    REQUIRE(s.usable());
    CHECK(s.merged_x_mm.size() == 2);
    // Moments about A (x = 20) by hand: forces with their own arms, the line load between its nodes 100 and 200.
    const double rb = (1000 * 130 + 1000 * 130.0004 + 200 * 130) / 260;
    CHECK(s.cases[0].reactions[1].force_N[1] == Approx(rb).epsilon(1e-12));
}
