// A shaft that can move is refused with the name of the motion.

#include "tests/core/beam/beam_cases.h"

#include <catch2/catch.hpp>

using namespace beamtest;

namespace
{

Model plain()
{
    return shaft({cylinder(0, 400, 40)});
}
const LoadCase kLoad = loads({force(150, 0, -1000, 0)});

Solution tryWith(std::vector<Support> supports)
{
    Model m = plain();
    m.supports = std::move(supports);
    return solveOne(m, kLoad);
}

void checkOnly(const Solution& s, const std::string& code)
{
    CHECK_FALSE(s.usable());
    int stops = 0;
    for (const Finding& f : s.findings)
        stops += f.severity == Severity::stop;
    CHECK(stops == 1);
    CHECK(has(s.findings, code, Severity::stop));
}

} // namespace

TEST_CASE("no support, or none that holds radially, is named unsupported", "[core][beam]")
{
    checkOnly(tryWith({}), "shaft-unsupported");
    checkOnly(tryWith({support("A", 100, {true, false, false, false, false})}), "shaft-unsupported");
    checkOnly(tryWith({support("A", 100, {true, false, false, true, true})}), "shaft-unsupported");
}

TEST_CASE("a shaft on one radial support tilts about it, unless the support holds the tilt", "[core][beam]")
{
    const Solution s = tryWith({pin("A", 120)});
    checkOnly(s, "shaft-tilts");
    const Finding& f = s.findings.front();
    CHECK(f.subject == "A");
    CHECK(std::get<double>(*f.values.find("x_mm")) == 120.0);
    Support tilting = pin("A", 120);
    tilting.stiffness[3][3] = tilting.stiffness[4][4] = 1e8;
    CHECK(tryWith({tilting}).usable());
    CHECK(tryWith({clamp("A", 120)}).usable());
}

TEST_CASE("two supports whose effective centres meet let the shaft tilt", "[core][beam]")
{
    Support a = pin("A", 100), b = roller("B", 200);
    a.centre_offset_mm = 50;
    b.centre_offset_mm = -50;
    const Solution s = tryWith({a, b});
    checkOnly(s, "shaft-tilts-centres-coincide");
    CHECK(std::get<double>(*s.findings.front().values.find("x_mm")) == Approx(150.0));
    b.centre_offset_mm = -40;
    CHECK(tryWith({a, b}).usable());
}

TEST_CASE("springs in one plane leave the other free", "[core][beam]")
{
    Support a = support("A", 50, {true, false, false, false, false});
    a.stiffness[1][1] = 1e5;
    Support b = support("B", 350, {});
    b.stiffness[1][1] = 1e5;
    const Solution s = tryWith({a, b});
    checkOnly(s, "support-plane-missing");
    CHECK(std::get<std::string>(*s.findings.front().values.find("direction")) == "z");
    // One support in z besides: then it tilts in that plane about it.
    a.stiffness[2][2] = 1e5;
    checkOnly(tryWith({a, b}), "shaft-tilts");
}

TEST_CASE("springs of very different rate are no mechanism", "[core][beam]")
{
    const Solution s = tryWith({spring("A", 50, 1e4, true), spring("B", 350, 1e7)});
    REQUIRE(s.usable());
    CHECK(s.findings.empty());
}

TEST_CASE("supports almost on one spot are nearly a mechanism", "[core][beam]")
{
    const Solution s = tryWith({pin("A", 200), roller("B", 201)});
    REQUIRE(s.usable());
    CHECK(has(s.findings, "shaft-nearly-mechanism", Severity::caution));
    CHECK_FALSE(has(tryWith({pin("A", 200), roller("B", 210)}).findings, "shaft-nearly-mechanism", Severity::caution));
}

TEST_CASE("nothing that holds x is no mechanism of the beam but is told", "[core][beam]")
{
    Model m = plain();
    m.supports = {roller("A", 50), roller("B", 350)};
    const Solution s = solveOne(m, loads({force(150, 700, -1000, 0)}));
    REQUIRE(s.usable());
    CHECK(s.cases[0].axially_free);
    CHECK(s.cases[0].reactions[0].force_N[0] == Approx(-700.0));
    CHECK(s.cases[0].reactions[0].displacement_mm[0] == 0.0);
    // Per case: the second case may let go what the first holds.
    m.supports[0].rigid[0] = true;
    LoadCase held = loads({force(150, 700, -1000, 0)}), free = held, other = held;
    m.supports[1].rigid[0] = true;
    held.holds_x = {true, false};
    other.holds_x = {false, true};
    free.holds_x = {false, false};
    const Solution t = solve(m, std::vector<LoadCase>{held, other, free});
    REQUIRE(t.usable());
    CHECK_FALSE(t.cases[0].axially_free);
    CHECK(t.cases[0].reactions[0].force_N[0] == Approx(-700.0));
    CHECK(t.cases[0].reactions[1].force_N[0] == 0.0);
    CHECK(t.cases[1].reactions[1].force_N[0] == Approx(-700.0));
    CHECK(t.cases[1].reactions[0].force_N[0] == 0.0);
    CHECK(t.cases[2].axially_free);
}

TEST_CASE("contacts that stay open leave the shaft unsupported", "[core][beam]")
{
    Model m = plain();
    m.supports = {pin("A", 50), support("G", 350, {})};
    m.supports[1].gap = Gap{0.05, 1e5, 1.0};
    const Solution open = solveOne(m, loads({}));
    CHECK_FALSE(open.usable());
    CHECK(has(open.findings, "shaft-unsupported", Severity::stop));
    // With a load the shaft turns until the contact closes; the force is the lever's, whatever the law.
    for (const double n : {1.0, 10.0 / 9.0, 1.5}) {
        m.supports[1].gap->exponent = n;
        const Solution s = solveOne(m, loads({force(200, 0, -1000, 600)}));
        REQUIRE(s.usable());
        CHECK(s.cases[0].reactions[1].force_N[1] == Approx(500.0).epsilon(1e-9));
        CHECK(s.cases[0].reactions[1].force_N[2] == Approx(-300.0).epsilon(1e-9));
    }
}

TEST_CASE("the beam says when reactions follow from equilibrium alone", "[core][beam]")
{
    CHECK(tryWith({pin("A", 50), roller("B", 350)}).determinate);
    CHECK(tryWith({clamp("A", 50)}).determinate);
    CHECK_FALSE(tryWith({pin("A", 50), roller("B", 200), roller("C", 350)}).determinate);
    Support tilting = pin("A", 50);
    tilting.stiffness[3][3] = tilting.stiffness[4][4] = 1e8;
    CHECK_FALSE(tryWith({tilting, roller("B", 350)}).determinate);
}
