#include "core/drawing/sections.h"
#include "tests/core/drawing/sections_geometry.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <limits>
#include <set>
#include <string>

using namespace shaftwright;
using namespace shaftwright::drawing;
using namespace sections_geometry;
using Catch::Matchers::WithinAbs;

namespace
{

std::vector<Part> everyKind()
{
    std::vector<PartBody> bodies;
    CylindricalGear gear;
    gear.teeth = 47;
    gear.normal_module_mm = 2.5;
    gear.face_width_mm = 50.0;
    bodies.emplace_back(gear);
    gear.helix_deg = 15.0;
    gear.hand = Hand::right;
    bodies.emplace_back(gear);
    gear.double_helical = true;
    bodies.emplace_back(gear);
    gear.internal = true;
    bodies.emplace_back(gear);
    BevelGear bevel;
    bevel.teeth = 25;
    bevel.outer_module_mm = 4.0;
    bevel.face_width_mm = 22.0;
    for (const double cone : {15.0, 45.0, 75.0}) {
        bevel.cone_angle_deg = cone;
        bodies.emplace_back(bevel);
    }
    Worm worm;
    worm.axial_module_mm = 4.0;
    worm.reference_diameter_mm = 50.0;
    worm.face_width_mm = 60.0;
    bodies.emplace_back(worm);
    WormWheel wheel;
    wheel.teeth = 36;
    wheel.reference_diameter_mm = 144.0;
    wheel.lead_angle_deg = 10.0;
    wheel.face_width_mm = 32.0;
    bodies.emplace_back(wheel);
    BeltPulley pulley;
    pulley.diameter_mm = 125.0;
    pulley.face_width_mm = 35.0;
    pulley.grooves = 2;
    for (const BeltKind kind : {BeltKind::flat, BeltKind::v, BeltKind::ribbed, BeltKind::toothed}) {
        pulley.kind = kind;
        bodies.emplace_back(pulley);
    }
    ChainSprocket sprocket;
    sprocket.teeth = 21;
    sprocket.pitch_mm = 19.05;
    bodies.emplace_back(sprocket);
    sprocket.strands = 3;
    bodies.emplace_back(sprocket);
    Coupling coupling;
    coupling.outer_mm = 110.0;
    coupling.length_mm = 90.0;
    bodies.emplace_back(coupling);
    coupling.radial_force_N = 50.0;
    bodies.emplace_back(coupling);
    Impeller impeller;
    impeller.outer_mm = 150.0;
    impeller.width_mm = 40.0;
    bodies.emplace_back(impeller);
    WeightBody weight;
    weight.outer_mm = 150.0;
    weight.width_mm = 40.0;
    bodies.emplace_back(weight);
    std::vector<Part> parts;
    for (PartBody& body : bodies) {
        Part part;
        part.body = std::move(body);
        parts.push_back(std::move(part));
    }
    return parts;
}

Segment segment(const char* id, double length, double outer)
{
    Segment out;
    out.id = SegmentId(id);
    out.length_mm = length;
    out.outer_mm = outer;
    return out;
}

Feature feature(FeatureKind kind, double position, double length, double depth = 0.0, double width = 0.0)
{
    Feature out;
    out.id = FeatureId("f1");
    out.kind = kind;
    out.position_mm = position;
    out.length_mm = length;
    out.depth_mm = depth;
    out.width_mm = width;
    return out;
}

} // namespace

TEST_CASE("every kind of part is drawn with finite numbers inside its outline", "[core][drawing][sections]")
{
    for (const Part& part : everyKind()) {
        const double radius = partOuterRadius_mm(part);
        REQUIRE(radius > 0.0);
        REQUIRE(partHalfLength_mm(part) > 0.0);
        for (const double shaft : {0.0, 20.0, 40.0, 70.0, 200.0}) {
            for (const Detail detail :
                 {Detail::block, Detail::detailed_sign, Detail::tone_section, Detail::section, Detail::full_section}) {
                for (const double scale : {0.2, 1.0, 3.0}) {
                    SectionStyle style;
                    style.detail = detail;
                    style.scale = scale;
                    const Group group = partSection(part, shaft, style);
                    INFO(kindOf(part) << " shaft " << shaft << " scale " << scale << " index " << part.body.index());
                    REQUIRE_FALSE(group.items.empty());
                    REQUIRE(group.layer == Layer::part);
                    bool hatched = false;
                    for (const Primitive& item : group.items) {
                        if (const auto* path = std::get_if<Path>(&item)) {
                            for (const Vertex& vertex : path->vertices)
                                REQUIRE((std::isfinite(vertex.x) && std::isfinite(vertex.y) && std::isfinite(vertex.bulge)));
                            if (path->stroke != Stroke::thick)
                                continue; // pitch lines and traces may run beyond
                            for (const Vertex& vertex : path->vertices)
                                REQUIRE(std::abs(vertex.y) <= scale * radius * (1.0 + 1e-9));
                            if (path->closed)
                                REQUIRE(simple(polygonOf(path->vertices)));
                        } else if (const auto* hatch = std::get_if<Hatch>(&item)) {
                            hatched = true;
                            REQUIRE(hatch->spacing_mm >= 0.7); // ISO 128: clear gap of parallel lines
                            for (const auto& contour : hatch->contours) {
                                REQUIRE(simple(polygonOf(contour)));
                                for (const Vertex& vertex : contour)
                                    REQUIRE(std::abs(vertex.y) <= scale * radius * (1.0 + 1e-9));
                            }
                        }
                    }
                    if (detail < Detail::section)
                        REQUIRE_FALSE(hatched);
                }
            }
        }
    }
}

TEST_CASE("tooth traces fall to the right for right hand on the near side", "[core][drawing][sections]")
{
    const auto fall = [](Hand hand) {
        CylindricalGear gear;
        gear.teeth = 47;
        gear.normal_module_mm = 2.5;
        gear.face_width_mm = 50.0;
        gear.helix_deg = 15.0;
        gear.hand = hand;
        Part part;
        part.body = gear;
        for (const Primitive& item : partSection(part, 40.0, SectionStyle{}).items) {
            const auto* path = std::get_if<Path>(&item);
            if (path != nullptr && path->stroke == Stroke::thin && path->vertices.size() == 2)
                return (path->vertices[1].y - path->vertices[0].y) / (path->vertices[1].x - path->vertices[0].x);
        }
        return 0.0;
    };
    CHECK_THAT(fall(Hand::right), WithinAbs(-std::tan(15.0 * 3.14159265358979323846 / 180.0), 1e-9));
    CHECK_THAT(fall(Hand::left), WithinAbs(std::tan(15.0 * 3.14159265358979323846 / 180.0), 1e-9));
}

TEST_CASE("radii of wheels follow from teeth and module", "[core][drawing][sections]")
{
    CylindricalGear gear;
    gear.teeth = 40;
    gear.normal_module_mm = 3.0;
    Part part;
    part.body = gear;
    CHECK_THAT(partOuterRadius_mm(part), WithinAbs(63.0, 1e-9)); // d / 2 + m = 60 + 3, ISO 21771
    BeltPulley pulley;
    pulley.diameter_mm = 125.0;
    pulley.kind = BeltKind::v;
    pulley.grooves = 2;
    pulley.face_width_mm = 35.0; // e + 2 f of profile SPA: 15 + 20
    part.body = pulley;
    CHECK_THAT(partOuterRadius_mm(part), WithinAbs(62.5 + 2.75, 1e-9)); // ISO 4183: c = 2.75 (from memory)
    CHECK_THAT(partHalfLength_mm(part), WithinAbs(17.5, 1e-9));
}

TEST_CASE("free loads are no parts to be drawn and bad sizes draw nothing wrong", "[core][drawing][sections]")
{
    Part part;
    part.body = PointLoad{};
    CHECK(partSection(part, 40.0, SectionStyle{}).items.empty());
    CHECK(partOuterRadius_mm(part) == 0.0);
    part.body = DistributedLoad{};
    CHECK(partSection(part, 40.0, SectionStyle{}).items.empty());
    CHECK(partHalfLength_mm(part) == 0.0);
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CylindricalGear gear;
    gear.teeth = -4;
    gear.normal_module_mm = nan;
    gear.face_width_mm = -1.0;
    part.body = gear;
    CHECK(partSection(part, nan, SectionStyle{}).items.empty());
    WeightBody weight;
    weight.outer_mm = nan;
    part.body = weight;
    CHECK(partSection(part, 40.0, SectionStyle{}).items.empty());
}

TEST_CASE("the shaft gives one group a segment, keys on top, and the same lines every time", "[core][drawing][sections]")
{
    Shaft shaft;
    shaft.segments = {segment("a", 48, 30), segment("b", 26, 35), segment("c", 60, 45)};
    shaft.segments[0].features = {feature(FeatureKind::chamfer, 0, 1.5), feature(FeatureKind::keyway, 8, 32, 4, 8),
                                  feature(FeatureKind::fillet, 48, 1), feature(FeatureKind::centre_hole, 0, 0)};
    shaft.segments[1].features = {feature(FeatureKind::undercut, 26, 0), feature(FeatureKind::groove, 5, 1.6, 1)};
    shaft.segments[2].features = {feature(FeatureKind::thread, 30, 30), feature(FeatureKind::press_seat, 0, 20)};
    shaft.segments[2].bore_mm = 20.0;
    const std::vector<Group> groups = shaftOutline(shaft, SectionStyle{});
    REQUIRE(groups.size() == 4);
    CHECK(groups[0].subject == "shaft.segments.a");
    CHECK(groups[2].subject == "shaft.segments.c");
    CHECK(groups[3].layer == Layer::key);
    CHECK(groups[3].subject == "shaft.segments.a");
    // Key 8 x 7 (DIN 6885-1): floor 4 mm under the surface of 30 mm, top 3 mm above it.
    CHECK_THAT(groups[3].bounds[1], WithinAbs(11.0, 1e-9));
    CHECK_THAT(groups[3].bounds[3], WithinAbs(18.0, 1e-9));
    for (const Group& group : groups) {
        for (const Primitive& item : group.items) {
            if (const auto* path = std::get_if<Path>(&item)) {
                for (const Vertex& vertex : path->vertices)
                    REQUIRE((std::isfinite(vertex.x) && std::isfinite(vertex.y) && std::isfinite(vertex.bulge)));
                if (path->closed)
                    REQUIRE(simple(polygonOf(path->vertices)));
            }
        }
    }
    const std::vector<Group> again = shaftOutline(shaft, SectionStyle{});
    for (std::size_t i = 0; i < groups.size(); ++i)
        CHECK(groups[i].bounds == again[i].bounds);
    // The step to 45 mm is one line over its whole lower half, the bored upper half shows it above the smaller neighbour only.
    bool lower = false;
    for (const Primitive& item : groups[2].items) {
        const auto* path = std::get_if<Path>(&item);
        if (path != nullptr && path->vertices.size() == 2 && path->vertices[0].x == 74.0 && path->vertices[1].x == 74.0)
            lower = lower || (path->vertices[0].y == -22.5 && path->vertices[1].y == 0.0);
    }
    CHECK(lower);
    CHECK(shaftOutline(Shaft{}, SectionStyle{}).empty());
    shaft.segments[0].length_mm = std::numeric_limits<double>::quiet_NaN();
    CHECK(shaftOutline(shaft, SectionStyle{}).size() == 2);
}

TEST_CASE("hatch lines agree with the closed form of a rectangle", "[core][drawing][sections]")
{
    Hatch hatch;
    const double w = 30.0, h = 11.0;
    hatch.contours = {{{2.0, 5.0}, {2.0 + w, 5.0}, {2.0 + w, 5.0 + h}, {2.0, 5.0 + h}}};
    hatch.spacing_mm = 2.0;
    hatch.angle_deg = 0.0;
    // Heights 6, 8, 10, 12, 14, tied to the origin; 1e-6: the lines are moved off the vertices by 1e-7.
    const auto level = hatchLines(hatch);
    REQUIRE(level.size() == 5);
    for (std::size_t i = 0; i < level.size(); ++i) {
        CHECK_THAT(level[i][1], WithinAbs(6.0 + 2.0 * static_cast<double>(i), 1e-6));
        CHECK_THAT(level[i][0], WithinAbs(2.0, 1e-9));
        CHECK_THAT(level[i][2], WithinAbs(2.0 + w, 1e-9));
    }
    hatch.angle_deg = 45.0;
    const double root = std::sqrt(2.0);
    const auto lines = hatchLines(hatch);
    std::size_t expected = 0;
    for (int k = -100; k < 100; ++k) {
        // Line y - x = c; inside for x from max(2, 5 - c) to min(2 + w, 5 + h - c).
        const double c = k * hatch.spacing_mm * root, from = std::max(2.0, 5.0 - c), to = std::min(2.0 + w, 5.0 + h - c);
        if ((to - from) * root < 0.12)
            continue;
        ++expected;
        bool found = false;
        for (const auto& line : lines)
            found = found ||
                    (std::abs(line[0] - from) < 1e-6 && std::abs(line[2] - to) < 1e-6 && std::abs(line[1] - from - c) < 1e-6);
        REQUIRE(found);
    }
    CHECK(lines.size() == expected);
    hatch.contours.push_back({{10.0, 7.0}, {20.0, 7.0}, {20.0, 12.0}, {10.0, 12.0}}); // a hole
    hatch.angle_deg = 0.0;
    double length = 0.0;
    for (const auto& line : hatchLines(hatch))
        length += line[2] - line[0];
    CHECK_THAT(length, WithinAbs(5.0 * w - 2.0 * 10.0, 1e-6)); // heights 8, 10 cross the hole, 12 only touches its edge
    hatch.spacing_mm = 0.0;
    CHECK(hatchLines(hatch).empty());
}

TEST_CASE("bounds hold arcs, texts are as wide as their font says", "[core][drawing][sections]")
{
    Group group;
    Path path;
    path.vertices = {{0.0, 0.0, 1.0}, {10.0, 0.0, 0.0}}; // half circle below, counter-clockwise
    group.items.emplace_back(path);
    computeBounds(group);
    CHECK_THAT(group.bounds[1], WithinAbs(-5.0, 1e-9));
    CHECK_THAT(group.bounds[3], WithinAbs(0.0, 1e-9));
    DisplayList list;
    list.groups.push_back(group);
    list.translate(1.0, 2.0);
    CHECK_THAT(list.groups[0].bounds[1], WithinAbs(-3.0, 1e-9));
    DisplayList two;
    two.append(list);
    two.append(list);
    CHECK(two.primitiveCount() == 2);
    // osifont: A 1258 units wide, capitals 1515 high (read from the font file); the table has four decimals.
    CHECK_THAT(textWidth_mm("AA", 2.5), WithinAbs(2.0 * 2.5 * 1258.0 / 1515.0, 1e-3));
    CHECK(textWidth_mm("\xE2\x8C\x80", 2.5) > 1.0); // one sign, not three bytes
    CHECK(textWidth_mm("\xE2\x8C\x80", 2.5) < 3.0);
    CHECK(textWidth_mm("", 2.5) == 0.0);
    CHECK(textWidth_mm("A", 2.5, Font::window) > textWidth_mm("i", 2.5, Font::window));
}
