#include "core/edit/edit.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include <limits>
#include <set>

using namespace shaftwright;

namespace
{

const PartId gear{"G1"};
const PartId coupling{"K1"};
const SupportId a{"A"};
const SupportId b{"B"};

Arrangement done(const Result<Arrangement>& result)
{
    if (!result) {
        INFO(result.finding().code << " " << result.finding().path);
        REQUIRE(result.ok());
    }
    return *result;
}

std::string codeOf(const Result<Arrangement>& result)
{
    REQUIRE_FALSE(result.ok());
    CHECK(result.finding().severity == Severity::stop);
    return result.finding().code;
}

std::vector<double> lengths(const Arrangement& arrangement)
{
    std::vector<double> list;
    for (const Segment& segment : arrangement.shaft.segments)
        list.push_back(segment.length_mm);
    return list;
}

Part distributed(double from_mm, double to_mm)
{
    Part part;
    part.id = PartId("Q1");
    part.x_mm = from_mm;
    DistributedLoad load;
    load.end_mm = to_mm;
    part.body = load;
    return part;
}

} // namespace

TEST_CASE("the plain shaft stands as described", "[core][edit]")
{
    // Segments 25, 60, 70, 25, 60 mm; supports in the middle of the 40 mm seats; gear and coupling on their segments.
    const Arrangement shaft = plainTwoBearingShaft();
    CHECK(shaft.shaft.length_mm() == 240.0);
    CHECK(lengths(shaft) == std::vector<double>{25, 60, 70, 25, 60});
    REQUIRE(shaft.supports.size() == 2);
    CHECK(shaft.supports[0].id == a);
    CHECK(shaft.supports[0].role == Role::locating);
    CHECK(shaft.supports[1].id == b);
    CHECK(shaft.supports[1].role == Role::non_locating);
    CHECK(shaft.supports[1].x_mm == 167.5);
    REQUIRE(findPart(shaft, gear) != nullptr);
    REQUIRE(findPart(shaft, coupling) != nullptr);
    CHECK(findPart(shaft, gear)->drive->power == PowerSense::driven);
    CHECK(findPart(shaft, coupling)->drive->takes_remaining);
    CHECK(shaft.duty.load_cases.size() == 1);
}

TEST_CASE("ids are free and distinct", "[core][edit]")
{
    Arrangement shaft = plainTwoBearingShaft();
    std::set<std::string> ids;
    for (int i = 0; i < 40; ++i) {
        const Support support = newSupport(shaft, 10.0 + i);
        CHECK(ids.insert(support.id.value).second);
        shaft = done(addSupport(shaft, support));
    }
    CHECK(ids.count("C") == 1);
    CHECK(ids.count("A2") == 1);
    for (const char* kind : {"cylindrical_gear", "bevel_gear", "worm", "worm_wheel", "belt_pulley", "chain_sprocket", "coupling",
                             "impeller", "weight", "point_load", "distributed_load"}) {
        for (int i = 0; i < 2; ++i) {
            const auto part = newPart(shaft, kind, 50.0);
            REQUIRE(part);
            CHECK(ids.insert(part->id.value).second);
            shaft = done(addPart(shaft, *part));
        }
    }
    CHECK_FALSE(newPart(shaft, "rope_drum", 1.0));
}

TEST_CASE("only one new part takes the remaining power", "[core][edit]")
{
    Arrangement shaft = plainTwoBearingShaft();
    shaft = done(addPart(shaft, *newPart(shaft, "belt_pulley", 200.0)));
    shaft = done(duplicatePart(shaft, coupling, 10.0));
    int takers = 0;
    for (const Part& part : shaft.parts)
        takers += part.drive && part.drive->takes_remaining ? 1 : 0;
    CHECK(takers == 1);
    // The copy invents no power: it stays open until somebody states it.
    const auto copy = std::find_if(shaft.parts.begin(), shaft.parts.end(), [&](const Part& part) {
        return part.drive && !part.drive->takes_remaining && !part.drive->power_kW && !part.drive->torque_Nmm;
    });
    CHECK(copy != shaft.parts.end());
}

TEST_CASE("a moved part stops at the ends of the shaft", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    CHECK(findPart(done(movePart(shaft, gear, 100.25)), gear)->x_mm == 100.25);
    CHECK(findPart(done(movePart(shaft, gear, -5.0)), gear)->x_mm == 0.0);
    CHECK(findPart(done(movePart(shaft, gear, 1000.0)), gear)->x_mm == 240.0);
    CHECK(findSupport(done(moveSupport(shaft, b, 1000.0)), b)->x_mm == 240.0);
    // There and back is the same value: undo by edit.
    CHECK(done(movePart(done(movePart(shaft, gear, 33.0)), gear, 105.0)) == shaft);
}

TEST_CASE("a moved distributed load keeps its length", "[core][edit]")
{
    const Arrangement shaft = done(addPart(plainTwoBearingShaft(), distributed(50.0, 90.0)));
    const Arrangement moved = done(movePart(shaft, PartId("Q1"), 300.0));
    CHECK(findPart(moved, PartId("Q1"))->x_mm == 200.0);
    CHECK(std::get<DistributedLoad>(findPart(moved, PartId("Q1"))->body).end_mm == 240.0);
}

TEST_CASE("a removed part takes along what refers to it", "[core][edit]")
{
    Arrangement shaft = plainTwoBearingShaft();
    shaft.duty.load_cases[0].parts[gear] = {0.5, true};
    shaft.requirements = {{RequirementId("R1"), RequirementKind::slope_at, "G1", {}, 1.0, ""},
                          {RequirementId("R2"), RequirementKind::slope_at, "A", {}, 1.0, ""}};
    shaft.proposed = {{"parts.G1.x_mm", {"r"}}, {"parts.G10.x_mm", {"r"}}, {"supports.A.bearing", {"r"}}};
    const Arrangement without = done(removePart(shaft, gear));
    CHECK(findPart(without, gear) == nullptr);
    CHECK(without.duty.load_cases[0].parts.empty());
    REQUIRE(without.requirements.size() == 1);
    CHECK(without.requirements[0].where == "A");
    CHECK(without.proposed.size() == 2);
    CHECK(done(removeSupport(without, a)).requirements.empty());
}

TEST_CASE("a copy stands beside its original", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    const Arrangement two = done(duplicatePart(shaft, gear, 20.0));
    REQUIRE(two.parts.size() == 3);
    CHECK(two.parts[1].id == PartId("G2"));
    CHECK(two.parts[1].x_mm == 125.0);
    CHECK(std::get<CylindricalGear>(two.parts[1].body) == std::get<CylindricalGear>(two.parts[0].body));
    const Arrangement three = done(duplicateSupport(shaft, a, 30.0));
    CHECK(three.supports[2].role == Role::non_locating);
    CHECK(done(removePart(two, PartId("G2"))) == shaft);
}

TEST_CASE("role and bearing of a support change with their origins", "[core][edit]")
{
    Arrangement shaft = plainTwoBearingShaft();
    shaft.supports[1].carries = Carries::plus;
    shaft.supports[1].role = Role::end_play;
    shaft.supports[1].play_mm = 0.3;
    const Arrangement changed = done(setRole(shaft, b, Role::non_locating));
    CHECK(changed.supports[1].role == Role::non_locating);
    CHECK_FALSE(changed.supports[1].carries);
    CHECK_FALSE(changed.supports[1].play_mm);

    BearingChoice choice;
    choice.rows.emplace_back();
    choice.rows[0].row.designation = "6208";
    const Arrangement proposed = done(setBearing(shaft, a, choice, "suited"));
    CHECK(proposed.supports[0].bearing == choice);
    CHECK(proposed.proposed.at("supports.A.bearing").reason == "suited");
    CHECK(done(setBearing(proposed, a, choice)).proposed.empty());
    CHECK(done(clearBearing(proposed, a)) == shaft);
    CHECK(codeOf(setBearing(shaft, a, BearingChoice{})) == "value-invalid");
}

TEST_CASE("a moved shoulder keeps the total: the neighbour gives way", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    const Arrangement moved = done(moveShoulder(shaft, 2, 100.0, Rest::neighbour_gives_way));
    CHECK(lengths(moved) == std::vector<double>{25, 75, 55, 25, 60});
    CHECK(moved.supports == shaft.supports);
    CHECK(moved.parts == shaft.parts);
    CHECK(done(moveShoulder(moved, 2, 85.0, Rest::neighbour_gives_way)) == shaft);
    // It stops before the next faces.
    CHECK(done(moveShoulder(shaft, 2, 500.0, Rest::neighbour_gives_way)).shaft.segments[2].length_mm == Approx(leastSegment_mm));
    CHECK(done(moveShoulder(shaft, 2, -500.0, Rest::neighbour_gives_way)).shaft.segments[1].length_mm == Approx(leastSegment_mm));
}

TEST_CASE("a pushed shoulder moves the rest along", "[core][edit]")
{
    const Arrangement shaft = done(addPart(plainTwoBearingShaft(), distributed(50.0, 90.0)));
    const Arrangement moved = done(moveShoulder(shaft, 2, 95.0, Rest::moves_along));
    CHECK(lengths(moved) == std::vector<double>{25, 70, 70, 25, 60});
    CHECK(moved.supports[0].x_mm == 12.5);
    CHECK(moved.supports[1].x_mm == 177.5);
    CHECK(findPart(moved, gear)->x_mm == 115.0);
    CHECK(findPart(moved, coupling)->x_mm == 225.0);
    // The load reaches over the shoulder and is stretched.
    CHECK(findPart(moved, PartId("Q1"))->x_mm == 50.0);
    CHECK(std::get<DistributedLoad>(findPart(moved, PartId("Q1"))->body).end_mm == 100.0);
}

TEST_CASE("the ends of the shaft move alone", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    const Arrangement right = done(moveShoulder(shaft, 5, 250.0, Rest::neighbour_gives_way));
    CHECK(right.shaft.length_mm() == 250.0);
    CHECK(right.parts == shaft.parts);
    // 10 mm longer at the left: everything keeps its place in space and counts 10 mm more.
    const Arrangement left = done(moveShoulder(shaft, 0, -10.0, Rest::neighbour_gives_way));
    CHECK(left.shaft.segments[0].length_mm == 35.0);
    CHECK(left.supports[0].x_mm == 22.5);
    CHECK(findPart(left, gear)->x_mm == 115.0);
    CHECK(done(moveShoulder(left, 0, 10.0, Rest::neighbour_gives_way)) == shaft);
}

TEST_CASE("a typed length changes the neighbour or moves the rest", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    const SegmentId second = shaft.shaft.segments[1].id;
    CHECK(lengths(done(resizeSegment(shaft, second, 80.0, Rest::neighbour_gives_way))) ==
          std::vector<double>{25, 80, 50, 25, 60});
    const Arrangement pushed = done(resizeSegment(shaft, second, 80.0, Rest::moves_along));
    CHECK(lengths(pushed) == std::vector<double>{25, 80, 70, 25, 60});
    CHECK(pushed.supports[1].x_mm == 187.5);
    CHECK(codeOf(resizeSegment(shaft, second, 200.0, Rest::neighbour_gives_way)) == "segment-size");
    CHECK(codeOf(resizeSegment(shaft, second, 0.0, Rest::moves_along)) == "segment-size");
    const SegmentId last = shaft.shaft.segments[4].id;
    CHECK(done(resizeSegment(shaft, last, 70.0, Rest::neighbour_gives_way)).shaft.length_mm() == 250.0);
}

TEST_CASE("segments are inserted and removed with what stands right of them", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    const Segment segment = newSegment(shaft, 2);
    CHECK(segment.id == SegmentId("S6"));
    CHECK(segment.outer_mm == 50.0);
    const Arrangement longer = done(insertSegment(shaft, 2, segment));
    CHECK(lengths(longer) == std::vector<double>{25, 60, 40, 70, 25, 60});
    CHECK(longer.supports[0].x_mm == 12.5);
    CHECK(longer.supports[1].x_mm == 207.5);
    CHECK(done(removeSegment(longer, segment.id)) == shaft);
    CHECK(done(insertSegment(shaft, 99, segment)).supports == shaft.supports);
    // What stood on the removed segment lands at its left end.
    const Arrangement shorter = done(removeSegment(shaft, shaft.shaft.segments[2].id));
    CHECK(findPart(shorter, gear)->x_mm == 85.0);
    CHECK(findPart(shorter, coupling)->x_mm == 145.0);
    CHECK(shorter.supports[1].x_mm == 97.5);
}

TEST_CASE("a split cone is the same cone", "[core][edit]")
{
    Arrangement shaft = plainTwoBearingShaft();
    Segment& cone = shaft.shaft.segments[1];
    cone.outer_end_mm = 62.0;
    cone.bore_mm = 10.0;
    cone.bore_end_mm = 16.0;
    cone.features = {{FeatureId("F1"), FeatureKind::groove, 5.0, 1.0, 1.0, 0.0, 0.0},
                     {FeatureId("F2"), FeatureKind::groove, 50.0, 1.0, 1.0, 0.0, 0.0}};
    const Arrangement split = done(splitSegment(shaft, cone.id, 20.0));
    REQUIRE(split.shaft.segments.size() == 6);
    const Segment& left = split.shaft.segments[1];
    const Segment& right = split.shaft.segments[2];
    CHECK(left.length_mm == 20.0);
    CHECK(right.length_mm == 40.0);
    CHECK(left.outerRight_mm() == Approx(54.0));
    CHECK(right.outer_mm == Approx(54.0));
    CHECK(right.outerRight_mm() == 62.0);
    CHECK(right.boreLeft_mm() == Approx(12.0));
    CHECK(right.boreRight_mm() == 16.0);
    REQUIRE(left.features.size() == 1);
    REQUIRE(right.features.size() == 1);
    CHECK(right.features[0].position_mm == 30.0);
    CHECK(split.shaft.length_mm() == 240.0);
    CHECK(codeOf(splitSegment(shaft, cone.id, 0.0)) == "segment-size");
    CHECK(codeOf(splitSegment(shaft, cone.id, 60.0)) == "segment-size");
    // A cylinder stays a cylinder.
    CHECK_FALSE(done(splitSegment(shaft, shaft.shaft.segments[2].id, 20.0)).shaft.segments[3].outer_end_mm);
}

TEST_CASE("diameters and bores leave a wall", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    const SegmentId second = shaft.shaft.segments[1].id;
    CHECK(done(setDiameter(shaft, second, 55.0)).shaft.segments[1].outer_mm == 55.0);
    CHECK(done(setDiameter(shaft, second, 55.0, 60.0)).shaft.segments[1].outerRight_mm() == 60.0);
    const Arrangement bored = done(setBore(shaft, second, 20.0));
    CHECK(bored.shaft.segments[1].boreRight_mm() == 20.0);
    CHECK(done(setBore(bored, second, std::nullopt)) == shaft);
    CHECK(codeOf(setBore(shaft, second, 50.0)) == "segment-bore");
    CHECK(codeOf(setDiameter(bored, second, 20.0)) == "segment-bore");
    CHECK(codeOf(setDiameter(shaft, second, 0.0)) == "segment-size");
    CHECK(codeOf(setDiameter(shaft, second, 60.0, -1.0)) == "segment-size");
    CHECK(codeOf(setBore(shaft, second, -1.0)) == "segment-size");
}

TEST_CASE("features come and go", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    const SegmentId second = shaft.shaft.segments[1].id;
    Feature keyway{freeFeatureId(shaft.shaft.segments[1]), FeatureKind::keyway, 500.0, 40.0, 5.5, 14.0, 90.0};
    const Arrangement with = done(addFeature(shaft, second, keyway));
    REQUIRE(with.shaft.segments[1].features.size() == 1);
    CHECK(with.shaft.segments[1].features[0].position_mm == 60.0); // no farther than the segment
    CHECK(codeOf(addFeature(with, second, keyway)) == "edit-duplicate-id");
    CHECK(done(removeFeature(with, second, keyway.id)) == shaft);
    CHECK(codeOf(removeFeature(shaft, second, keyway.id)) == "edit-unknown-id");
    keyway.depth_mm = -1.0;
    CHECK(codeOf(addFeature(shaft, second, keyway)) == "segment-size");
}

TEST_CASE("load cases come and go", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    LoadCase start;
    start.id = freeCaseId(shaft);
    CHECK(start.id == CaseId("LC1"));
    start.time_share = 0.02;
    const Arrangement two = done(addLoadCase(shaft, start));
    start.speed_rpm = 100.0;
    CHECK(done(setLoadCase(two, start)).duty.load_cases[1].speed_rpm == 100.0);
    CHECK(done(removeLoadCase(two, start.id)) == shaft);
    CHECK(codeOf(addLoadCase(two, start)) == "edit-duplicate-id");
    CHECK(codeOf(removeLoadCase(shaft, start.id)) == "edit-unknown-id");
    CHECK(codeOf(setLoadCase(shaft, start)) == "edit-unknown-id");
}

TEST_CASE("edits of what is not there are refused", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    const PartId no_part("X");
    const SupportId no_support("X");
    const SegmentId no_segment("X");
    Part part;
    part.id = no_part;
    Support support;
    support.id = no_support;
    CHECK(codeOf(removePart(shaft, no_part)) == "edit-unknown-id");
    CHECK(codeOf(movePart(shaft, no_part, 1.0)) == "edit-unknown-id");
    CHECK(codeOf(setPart(shaft, part)) == "edit-unknown-id");
    CHECK(codeOf(duplicatePart(shaft, no_part, 1.0)) == "edit-unknown-id");
    CHECK(codeOf(removeSupport(shaft, no_support)) == "edit-unknown-id");
    CHECK(codeOf(moveSupport(shaft, no_support, 1.0)) == "edit-unknown-id");
    CHECK(codeOf(setSupport(shaft, support)) == "edit-unknown-id");
    CHECK(codeOf(duplicateSupport(shaft, no_support, 1.0)) == "edit-unknown-id");
    CHECK(codeOf(setRole(shaft, no_support, Role::locating)) == "edit-unknown-id");
    CHECK(codeOf(clearBearing(shaft, no_support)) == "edit-unknown-id");
    CHECK(codeOf(removeSegment(shaft, no_segment)) == "edit-unknown-id");
    CHECK(codeOf(splitSegment(shaft, no_segment, 1.0)) == "edit-unknown-id");
    CHECK(codeOf(resizeSegment(shaft, no_segment, 1.0, Rest::moves_along)) == "edit-unknown-id");
    CHECK(codeOf(setDiameter(shaft, no_segment, 1.0)) == "edit-unknown-id");
    CHECK(codeOf(setBore(shaft, no_segment, 1.0)) == "edit-unknown-id");
    CHECK(codeOf(addFeature(shaft, no_segment, {})) == "edit-unknown-id");
    CHECK(codeOf(moveShoulder(shaft, 6, 1.0, Rest::moves_along)) == "edit-unknown-id");
    CHECK(codeOf(moveShoulder(emptyArrangement(), 0, 1.0, Rest::moves_along)) == "edit-unknown-id");
}

TEST_CASE("an id that is taken is refused, across parts and supports", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    Part part = *newPart(shaft, "weight", 10.0);
    part.id = PartId("A");
    CHECK(codeOf(addPart(shaft, part)) == "edit-duplicate-id");
    part.id = PartId();
    CHECK(codeOf(addPart(shaft, part)) == "edit-duplicate-id");
    Support support = newSupport(shaft, 10.0);
    support.id = SupportId("G1");
    CHECK(codeOf(addSupport(shaft, support)) == "edit-duplicate-id");
    CHECK(codeOf(insertSegment(shaft, 0, shaft.shaft.segments[0])) == "edit-duplicate-id");
}

TEST_CASE("values that are no places are refused", "[core][edit]")
{
    const Arrangement shaft = plainTwoBearingShaft();
    const SegmentId second = shaft.shaft.segments[1].id;
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                             -std::numeric_limits<double>::infinity(), 1e300}) {
        CHECK(codeOf(movePart(shaft, gear, bad)) == "value-invalid");
        CHECK(codeOf(moveSupport(shaft, a, bad)) == "value-invalid");
        CHECK(codeOf(duplicatePart(shaft, gear, bad)) == "value-invalid");
        CHECK(codeOf(duplicateSupport(shaft, a, bad)) == "value-invalid");
        CHECK(codeOf(moveShoulder(shaft, 2, bad, Rest::moves_along)) == "value-invalid");
        CHECK(codeOf(resizeSegment(shaft, second, bad, Rest::moves_along)) == "value-invalid");
        CHECK(codeOf(splitSegment(shaft, second, bad)) == "value-invalid");
        CHECK(codeOf(setDiameter(shaft, second, bad)) == "value-invalid");
        CHECK(codeOf(setBore(shaft, second, bad)) == "value-invalid");
        Part part = shaft.parts[0];
        part.x_mm = bad;
        CHECK(codeOf(setPart(shaft, part)) == "value-invalid");
        part.id = PartId("new");
        CHECK(codeOf(addPart(shaft, part)) == "value-invalid");
        Support support = shaft.supports[0];
        support.x_mm = bad;
        CHECK(codeOf(setSupport(shaft, support)) == "value-invalid");
        support.id = SupportId("new");
        CHECK(codeOf(addSupport(shaft, support)) == "value-invalid");
        Segment segment = newSegment(shaft, 0);
        segment.length_mm = bad;
        CHECK(codeOf(insertSegment(shaft, 0, segment)) == "value-invalid");
    }
}

TEST_CASE("an arrangement without a shaft can be filled", "[core][edit]")
{
    Arrangement arrangement = emptyArrangement();
    CHECK(findPart(done(addPart(arrangement, *newPart(arrangement, "cylindrical_gear", 55.0))), gear)->x_mm == 55.0);
    arrangement = done(insertSegment(arrangement, 0, newSegment(arrangement, 0)));
    CHECK(arrangement.shaft.length_mm() == 40.0);
    arrangement = done(removeSegment(arrangement, SegmentId("S1")));
    CHECK(arrangement == emptyArrangement());
}
