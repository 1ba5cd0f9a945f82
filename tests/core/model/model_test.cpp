// The document as a value: names, places on the shaft, what an open input becomes.
#include "core/model/arrangement.h"
#include "core/model/defaults.h"

#include <catch2/catch.hpp>

#include <set>

using namespace shaftwright;

namespace
{

Segment segmentOf(const char* id, double length_mm, double outer_mm, std::optional<double> outer_end_mm = std::nullopt)
{
    Segment segment;
    segment.id = SegmentId(id);
    segment.length_mm = length_mm;
    segment.outer_mm = outer_mm;
    segment.outer_end_mm = outer_end_mm;
    return segment;
}

SetRow rowOf(const char* designation, double width_mm)
{
    SetRow row;
    row.row.designation = designation;
    row.row.width_mm = width_mm;
    return row;
}

bool assumed(const Settled& settled, const std::string& path)
{
    for (const Assumption& assumption : settled.assumptions) {
        if (assumption.path == path)
            return true;
    }
    return false;
}

} // namespace

TEST_CASE("sets name their rows", "[core][model]")
{
    BearingChoice choice;
    CHECK(choice.designation().empty());
    CHECK(choice.width_mm() == 0.0);
    choice.rows = {rowOf("6208", 18.0)};
    CHECK(choice.designation() == "6208");
    choice.rows = {rowOf("7309-40", 25.0), rowOf("7309-40", 25.0)};
    choice.arrangement = SetArrangement::O;
    CHECK(choice.designation() == "2x7309-40 O");
    CHECK(choice.width_mm() == 50.0);
    choice.arrangement = SetArrangement::X;
    CHECK(choice.designation() == "2x7309-40 X");
    choice.arrangement = SetArrangement::tandem;
    CHECK(choice.designation() == "2x7309-40 T");
    choice.arrangement = SetArrangement::none;
    choice.rows = {rowOf("NU209", 19.0), rowOf("QJ209", 19.0)};
    CHECK(choice.designation() == "NU209 + QJ209");
}

TEST_CASE("the diameter at a step is the smaller or the larger one", "[core][model]")
{
    Shaft shaft;
    shaft.segments = {segmentOf("S1", 100.0, 40.0), segmentOf("S2", 50.0, 60.0, 50.0)};
    CHECK(shaft.length_mm() == 150.0);
    CHECK(segmentStart_mm(shaft, 0) == 0.0);
    CHECK(segmentStart_mm(shaft, 1) == 100.0);
    CHECK(segmentStart_mm(shaft, 2) == 150.0);
    CHECK(segmentStart_mm(shaft, 9) == 150.0);
    CHECK(shaftDiameterAt_mm(shaft, 50.0) == 40.0);
    CHECK(shaftDiameterAt_mm(shaft, 100.0) == 40.0);
    CHECK(shaftDiameterAt_mm(shaft, 100.0, false) == 60.0);
    CHECK(shaftDiameterAt_mm(shaft, 125.0) == 55.0);
    CHECK(shaftDiameterAt_mm(shaft, 150.0) == 50.0);
    CHECK(shaftDiameterAt_mm(shaft, 151.0) == 0.0);
    CHECK(shaftDiameterAt_mm(shaft, -1.0) == 0.0);
    CHECK(shaftDiameterAt_mm(Shaft{}, 0.0) == 0.0);
}

TEST_CASE("there are 39 families, each found by its own name", "[core][model]")
{
    std::set<std::string_view> names;
    for (const Family family : allFamilies()) {
        names.insert(toString(family));
        CHECK(familyFromString(toString(family)) == family);
    }
    CHECK(names.size() == 39);
    CHECK_FALSE(familyFromString("floating"));
    CHECK_FALSE(familyFromString(""));
}

TEST_CASE("open inputs are settled and listed, stated ones are neither changed nor listed", "[core][model]")
{
    Arrangement a;
    const Settled open = settle(a);
    CHECK(open.K_A == 1.0);
    CHECK(open.reliability_percent == 90.0);
    CHECK(open.temperature_C == 70.0);
    CHECK(open.lubricant == Lubricant::grease);
    CHECK(open.own_weight);
    CHECK(open.load_cases.size() == 1);
    CHECK(open.load_cases[0].time_share == 1.0);
    for (const char* path :
         {"duty.K_A", "duty.load_cases", "duty.required_L_h", "surroundings.temperature_C", "options.own_weight"})
        CHECK(assumed(open, path));

    a.duty.K_A = 1.5;
    a.surroundings.temperature_C = 90.0;
    a.options.own_weight = false;
    LoadCase load_case;
    load_case.id = CaseId("rated");
    a.duty.load_cases = {load_case};
    Part gear;
    gear.body = CylindricalGear{};
    a.parts = {gear};
    const Settled stated = settle(a);
    CHECK(stated.K_A == 1.5);
    CHECK(stated.temperature_C == 90.0);
    CHECK_FALSE(stated.own_weight);
    CHECK(stated.load_cases == a.duty.load_cases);
    CHECK(stated.lubricant == Lubricant::oil); // toothed parts run in oil
    for (const char* path : {"duty.K_A", "duty.load_cases", "surroundings.temperature_C", "options.own_weight"})
        CHECK_FALSE(assumed(stated, path));
    CHECK(assumed(stated, "surroundings.lubricant"));
}

TEST_CASE("steel is the material of shafts; free values go before the table", "[core][model]")
{
    // E 206 000 MPa, nu 0.3, 11.5e-6 1/K, 7850 kg/m3: handbook values of shaft steel.
    Arrangement a;
    const SettledMaterial steel = settle(a).material;
    CHECK(steel.modulus_MPa == 206000.0);
    CHECK(steel.poisson() == Approx(0.3).margin(1e-5)); // G of the table is rounded to 1 MPa
    CHECK(steel.expansion_per_K == Approx(11.5e-6));
    CHECK(steel.density_kg_m3 == 7850.0);
    a.shaft.material.modulus_MPa = 70000.0;
    CHECK(settle(a).material.modulus_MPa == 70000.0);
    CHECK(settle(a).material.poisson() == Approx(0.3));
    a.shaft.material = {};
    a.shaft.material.name = "something else";
    const Settled unknown = settle(a);
    CHECK(unknown.material.name == "something else");
    CHECK(assumed(unknown, "shaft.material.modulus_MPa"));
}

TEST_CASE("a copy is equal until something changes", "[core][model]")
{
    Arrangement a;
    a.shaft.segments = {segmentOf("S1", 100.0, 40.0)};
    const Arrangement before = a;
    Arrangement after = a;
    after.shaft.segments[0].outer_mm = 45.0;
    CHECK(a == before);
    CHECK_FALSE(after == before);
    after = before;
    CHECK(after == before);
    CHECK(findSegment(after, SegmentId("S1")) == &after.shaft.segments[0]);
    CHECK(findSegment(after, SegmentId("S2")) == nullptr);
    CHECK(findPart(after, PartId("P")) == nullptr);
    CHECK(findSupport(after, SupportId("A")) == nullptr);
    CHECK(findCase(after, CaseId("c")) == nullptr);
}
