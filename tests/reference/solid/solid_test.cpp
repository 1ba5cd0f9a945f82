// The beam against solid finite elements (20-node bricks, reduced integration, own structured mesh): a determinate stepped
// shaft and one on three supports. Plain beam theory takes the full section right up to a sharp shoulder and is too stiff;
// with the shoulders' flexibility it meets the solid. Both are shown, with the convergence of the mesh.

#include "core/beam/beam.h"
#include "tests/reference/solid/solid_mesh.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <random>

using namespace shaftwright::beam;
using namespace solidtest;

namespace
{

constexpr double kE = 206000.0, kNu = 0.3;

bool solverIsThere()
{
    return std::system("command -v ccx > /dev/null 2>&1") == 0;
}

class Directory
{
public:
    Directory()
    {
        std::random_device random;
        path = std::filesystem::temp_directory_path() / ("solid-" + std::to_string(random()));
        std::filesystem::create_directories(path);
    }
    ~Directory()
    {
        std::error_code ignored;
        std::filesystem::remove_all(path, ignored);
    }
    std::filesystem::path path;
};

Model beamOf(const SolidShaft& shaft, bool shoulders)
{
    Model m;
    for (const auto& p : shaft.pieces) {
        const double d = p.thick ? shaft.thick_mm : shaft.thin_mm;
        m.pieces.push_back({p.x0_mm, p.x1_mm, d, d, 0.0, 0.0});
    }
    m.properties.modulus_MPa = kE;
    m.properties.shear_modulus_MPa = kE / (2 * (1 + kNu));
    m.properties.shoulder_flexibility = shoulders;
    return m;
}

Support held(const char* id, double x, bool axially)
{
    Support s;
    s.id = id;
    s.x_mm = x;
    s.rigid = {axially, true, true, false, false};
    return s;
}

// Coarse, middle, fine.
const std::vector<Fineness> kMeshes{{2, 1, 1, 6.0}, {2, 2, 2, 3.0}, {3, 2, 2, 2.5}};

} // namespace

TEST_CASE("a determinate stepped shaft bends as a solid does", "[reference][slow]")
{
    if (!solverIsThere()) {
        WARN("passed over: the solver ccx is not installed (package calculix-ccx)");
        return;
    }
    SolidShaft shaft{{{0, 100, false}, {100, 200, true}, {200, 300, false}}, 40, 60, {0, 150, 300}, kE, kNu};
    const double F = -10000;
    double solid = 0, before = 0;
    for (const Fineness& fineness : kMeshes) {
        const SolidModel model(shaft, fineness);
        REQUIRE(model.degreesOfFreedom() <= 60000);
        const Directory directory;
        const auto found = model.solve({0, 2}, {{{1, F}}}, directory.path.string());
        REQUIRE(found.size() == 1);
        before = solid;
        solid = found[0][1];
        std::printf("determinate shaft: %6zu degrees of freedom, deflection %.6f mm\n", model.degreesOfFreedom(), solid);
    }
    CHECK(std::abs(solid / before - 1) < 0.003); // the mesh has converged: last change
    double beam[2];
    for (const bool shoulders : {false, true}) {
        Model m = beamOf(shaft, shoulders);
        m.supports = {held("A", 0, true), held("B", 300, false)};
        LoadCase c;
        c.point_loads.push_back({150, {0, F, 0}, {}});
        const Solution s = solve(m, std::vector<LoadCase>{c});
        REQUIRE(s.usable());
        beam[shoulders] = stateAt(s, 0, 150, Side::left).v_mm;
        CHECK(s.cases[0].reactions[0].force_N[1] == Approx(5000.0));
    }
    std::printf("  plain beam %.6f (%+.2f %%), with shoulders %.6f (%+.2f %%)\n", beam[0], 100 * (beam[0] / solid - 1), beam[1],
                100 * (beam[1] / solid - 1));
    CHECK(std::abs(beam[1] / solid - 1) < 0.01); // the shoulder fit is made for pure bending; here shear acts too
    CHECK(beam[0] / solid < 0.95);               // and without it the shaft is too stiff: the test can tell the two apart
}

TEST_CASE("a stepped shaft on three supports shares its load as a solid does", "[reference][slow]")
{
    if (!solverIsThere()) {
        WARN("passed over: the solver ccx is not installed (package calculix-ccx)");
        return;
    }
    SolidShaft shaft{{{0, 100, false}, {100, 240, true}, {240, 400, false}}, 40, 60, {0, 170, 320, 400}, kE, kNu};
    const double F = -10000;
    double reaction = 0, deflection = 0, before = 0;
    for (const Fineness& fineness : kMeshes) {
        const SolidModel model(shaft, fineness);
        REQUIRE(model.degreesOfFreedom() <= 60000);
        const Directory directory;
        // Force method on the solid itself: with the middle support taken away, the load and a unit force there.
        const auto found = model.solve({0, 3}, {{{2, F}}, {{1, 1000.0}}}, directory.path.string());
        REQUIRE(found.size() == 2);
        before = reaction;
        const double unit = found[1][1] / 1000;
        reaction = -found[0][1] / unit;
        deflection = found[0][2] + reaction * found[1][2] / 1000;
        std::printf("three supports: %6zu degrees of freedom, middle reaction %.2f N, deflection %.6f mm\n",
                    model.degreesOfFreedom(), reaction, deflection);
    }
    CHECK(std::abs(reaction / before - 1) < 0.003);
    for (const bool shoulders : {false, true}) {
        Model m = beamOf(shaft, shoulders);
        m.supports = {held("A", 0, true), held("B", 170, false), held("C", 400, false)};
        LoadCase c;
        c.point_loads.push_back({320, {0, F, 0}, {}});
        const Solution s = solve(m, std::vector<LoadCase>{c});
        REQUIRE(s.usable());
        const double r = s.cases[0].reactions[1].force_N[1], v = stateAt(s, 0, 320, Side::left).v_mm;
        std::printf("  %s: reaction %.2f (%+.2f %%), deflection %.6f (%+.2f %%)\n",
                    shoulders ? "with shoulders" : "plain beam    ", r, 100 * (r / reaction - 1), v, 100 * (v / deflection - 1));
        if (shoulders) {
            CHECK(std::abs(r / reaction - 1) < 0.01);
            CHECK(std::abs(v / deflection - 1) < 0.015); // load at two thin diameters from the shoulder
        }
    }
}
