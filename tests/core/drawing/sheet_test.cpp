// Tests on the display list, not on pixels.

#include "tests/core/drawing/sheet_fixture.h"

#include "core/drawing/sheet.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <string>
#include <vector>

using namespace shaftwright;
using namespace shaftwright::drawing;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace
{

struct Box {
    double x0, y0, x1, y1;
};

/// What ink covers: capitals, and tails where the text has any.
Box boxOf(const Text& text)
{
    const double width = textWidth_mm(text.text, text.height_mm, text.font) * (text.bold ? 1.06 : 1.0);
    const double tail = text.text.find_first_of("gjpqy,;()") != std::string::npos ? 0.25 * text.height_mm : 0.0;
    const double x0 = text.h == HAlign::left ? 0.0 : text.h == HAlign::centre ? -width / 2.0 : -width;
    const double y0 = text.v == VAlign::baseline ? 0.0 : text.v == VAlign::middle ? -text.height_mm / 2.0 : -text.height_mm;
    if (text.angle_deg == 90.0)
        return {text.x - y0 - text.height_mm, text.y + x0, text.x - y0 + tail, text.y + x0 + width};
    return {text.x + x0, text.y + y0 - tail, text.x + x0 + width, text.y + y0 + text.height_mm};
}

std::vector<Text> textsOf(const DisplayList& list)
{
    std::vector<Text> out;
    for (const Group& group : list.groups) {
        for (const Primitive& item : group.items) {
            if (const Text* text = std::get_if<Text>(&item))
                out.push_back(*text);
        }
    }
    return out;
}

bool hasText(const DisplayList& list, const std::string& wanted)
{
    const std::vector<Text> texts = textsOf(list);
    return std::any_of(texts.begin(), texts.end(), [&](const Text& text) { return text.text == wanted; });
}

/// Pairs of texts that cover each other by more than 0.05 mm both ways.
std::vector<std::string> overlaps(const DisplayList& list)
{
    std::vector<std::string> out;
    const std::vector<Text> texts = textsOf(list);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        for (std::size_t k = i + 1; k < texts.size(); ++k) {
            const Box a = boxOf(texts[i]);
            const Box b = boxOf(texts[k]);
            if (std::min(a.x1, b.x1) - std::max(a.x0, b.x0) > 0.05 && std::min(a.y1, b.y1) - std::max(a.y0, b.y0) > 0.05)
                out.push_back(texts[i].text + " | " + texts[k].text);
        }
    }
    return out;
}

struct Arrow {
    std::string subject;
    double tail_x, tail_y, tip_x, tip_y;
    double length() const { return std::hypot(tip_x - tail_x, tip_y - tail_y); }
};

/// Arrows of the load list: a thick line followed by a filled head whose first vertex is the tip.
std::vector<Arrow> arrowsOf(const DisplayList& list)
{
    std::vector<Arrow> out;
    for (const Group& group : list.groups) {
        for (std::size_t i = 1; i < group.items.size(); ++i) {
            const Path* shaft = std::get_if<Path>(&group.items[i - 1]);
            const Path* tip = std::get_if<Path>(&group.items[i]);
            if (shaft == nullptr || tip == nullptr || shaft->vertices.size() != 2 || shaft->stroke != Stroke::thick ||
                shaft->ink != Ink::live || tip->vertices.size() != 3 || tip->stroke != Stroke::none)
                continue;
            out.push_back({group.subject, shaft->vertices[0].x, shaft->vertices[0].y, tip->vertices[0].x, tip->vertices[0].y});
        }
    }
    return out;
}

const Path* curveOf(const DisplayList& strip)
{
    for (const Group& group : strip.groups) {
        for (const Primitive& item : group.items) {
            const Path* path = std::get_if<Path>(&item);
            if (path != nullptr && path->stroke == Stroke::thick && path->ink == Ink::live && !path->closed)
                return path;
        }
    }
    return nullptr;
}

/// Value of a height on the strip, by its tick labels "0" and another one.
struct TickScale {
    double zero_y = 0.0, per_mm = 0.0;
    bool found_zero = false, found = false;
};
TickScale tickScale(const DisplayList& strip)
{
    TickScale out;
    double value = 0.0;
    double y = 0.0;
    for (const Text& text : textsOf(strip)) {
        if (text.h != HAlign::right || text.v != VAlign::middle)
            continue;
        if (text.text == "0") {
            out.zero_y = text.y;
            out.found_zero = true;
            continue;
        }
        std::string plain = text.text;
        const bool minus = plain.rfind("\u2212", 0) == 0;
        value = minus ? -std::stod(plain.substr(3)) : std::stod(plain);
        y = text.y;
        out.found = true;
    }
    if (out.found)
        out.per_mm = value / (y - out.zero_y);
    return out;
}

SheetView viewOf(double scale, int case_index, Plane plane)
{
    SheetView view;
    view.scale = scale;
    view.case_index = case_index;
    view.plane = plane;
    return view;
}

} // namespace

namespace
{

/// Straight pieces of a path; an arc counts as its chords over four pieces.
std::vector<std::array<double, 4>> piecesOf(const Path& path)
{
    std::vector<std::array<double, 4>> out;
    const std::size_t n = path.vertices.size();
    for (std::size_t i = 0; i + (path.closed ? 0 : 1) < n; ++i) {
        const Vertex& a = path.vertices[i];
        const Vertex& b = path.vertices[(i + 1) % n];
        if (std::abs(a.bulge) < 1e-9) {
            out.push_back({a.x, a.y, b.x, b.y});
            continue;
        }
        // Apex of the arc: the middle of the chord moved by bulge times half the chord to its right (y up).
        const double mx = (a.x + b.x) / 2.0 + a.bulge * (b.y - a.y) / 2.0;
        const double my = (a.y + b.y) / 2.0 - a.bulge * (b.x - a.x) / 2.0;
        out.push_back({a.x, a.y, mx, my});
        out.push_back({mx, my, b.x, b.y});
    }
    return out;
}

bool crosses(const std::array<double, 4>& piece, const Box& box)
{
    double from = 0.0;
    double to = 1.0;
    const double d[2] = {piece[2] - piece[0], piece[3] - piece[1]};
    const double low[2] = {box.x0 - piece[0], box.y0 - piece[1]};
    const double high[2] = {box.x1 - piece[0], box.y1 - piece[1]};
    for (int k = 0; k < 2; ++k) {
        if (std::abs(d[k]) < 1e-12) {
            if (low[k] > 0.0 || high[k] < 0.0)
                return false;
            continue;
        }
        from = std::max(from, std::min(low[k] / d[k], high[k] / d[k]));
        to = std::min(to, std::max(low[k] / d[k], high[k] / d[k]));
    }
    return from < to;
}

/// Texts that stand on the drawing without a ground of their own and are crossed by a line of it.
std::vector<std::string> crossed(const DisplayList& list, const std::vector<Text>& texts)
{
    std::vector<std::string> out;
    for (const Text& text : texts) {
        Box box = boxOf(text);
        box = {box.x0 + 0.1, box.y0 + 0.1, box.x1 - 0.1, box.y1 - 0.1};
        for (const Group& group : list.groups) {
            for (const Primitive& item : group.items) {
                const Path* path = std::get_if<Path>(&item);
                if (path == nullptr || path->stroke == Stroke::none)
                    continue;
                for (const std::array<double, 4>& piece : piecesOf(*path)) {
                    if (crosses(piece, box))
                        out.push_back(text.text + " crossed by " + group.subject);
                }
            }
        }
    }
    return out;
}

std::vector<Text> diametersOf(const DisplayList& list)
{
    std::vector<Text> out;
    for (const Text& text : textsOf(list)) {
        if (text.text.rfind("⌀", 0) == 0 && !text.paper_ground)
            out.push_back(text);
    }
    return out;
}

/// Pinion cut into its shaft, helical, with a torque; a keyed helical wheel beside it.
Arrangement pinionShaft()
{
    Arrangement a = sheet_fixture::reducer();
    Part pinion = a.parts[0];
    pinion.id = PartId("G2");
    pinion.name = "Pinion, second stage of the reducer";
    pinion.x_mm = 175;
    auto& body = std::get<CylindricalGear>(pinion.body);
    body.teeth = 20;
    body.helix_deg = 20;
    body.face_width_mm = 58;
    body.mate_teeth = 60;
    a.parts.push_back(pinion);
    return a;
}

} // namespace

TEST_CASE("no line crosses a diameter that stands on the shaft", "[core][drawing]")
{
    for (const Arrangement& arrangement : {sheet_fixture::reducer(), pinionShaft()}) {
        const Assessment assessment = sheet_fixture::assess(arrangement);
        std::size_t seen = 0;
        for (const double scale : {0.3, 0.5, 0.8, 1.0, 2.0}) {
            INFO("scale " << scale);
            const SheetView view = viewOf(scale, 0, Plane::z);
            DisplayList list = drawingList(arrangement, assessment, view);
            const DisplayList dimensions = dimensionList(arrangement, assessment, view);
            const std::vector<Text> diameters = diametersOf(dimensions);
            seen += diameters.size();
            list.append(dimensions);
            CHECK(crossed(list, diameters) == std::vector<std::string>{});
        }
        CHECK(seen > 10);
    }
}

TEST_CASE("a diameter under a pinion is told when its segment is selected, not on the pinion's teeth", "[core][drawing]")
{
    const Arrangement arrangement = pinionShaft();
    SheetView view = viewOf(1.0, 0, Plane::z);
    Arrangement wide = arrangement; // the segment reaches from 144 to 208
    std::get<CylindricalGear>(wide.parts[2].body).face_width_mm = 66;
    wide.parts[2].x_mm = 176;
    CHECK_FALSE(hasText(dimensionList(wide, Assessment{}, view), "⌀46"));
    view.selected = "shaft.segments.s5";
    CHECK(hasText(dimensionList(wide, Assessment{}, view), "⌀46"));
}

TEST_CASE("torques keep off keyways, tooth traces, steps and diameters", "[core][drawing]")
{
    for (const Arrangement& arrangement : {sheet_fixture::reducer(), pinionShaft()}) {
        const Assessment assessment = sheet_fixture::assess(arrangement);
        for (const double scale : {0.3, 0.5, 1.0, 1.6}) {
            INFO("scale " << scale);
            const SheetView view = viewOf(scale, 0, Plane::z);
            const DisplayList loads = loadList(arrangement, assessment, view);
            std::vector<Text> torques;
            std::size_t told = 0;
            for (const Text& text : textsOf(loads)) {
                const bool torque = text.text.size() > 4 && text.text.compare(text.text.size() - 3, 3, "N m") == 0;
                told += torque ? 1U : 0U;
                if (torque && !text.paper_ground)
                    torques.push_back(text);
            }
            CHECK(told >= 2);
            // Only what is seen: keys, traces (thin) and the paths of dimensions.
            DisplayList seen = dimensionList(arrangement, assessment, view);
            for (Group& group : drawingList(arrangement, assessment, view).groups) {
                Group kept = group;
                kept.items.clear();
                for (const Primitive& item : group.items) {
                    const Path* path = std::get_if<Path>(&item);
                    if (path != nullptr && (group.layer == Layer::key || path->stroke == Stroke::thin))
                        kept.items.push_back(item);
                }
                seen.groups.push_back(std::move(kept));
            }
            CHECK(crossed(seen, torques) == std::vector<std::string>{});
        }
    }
}

TEST_CASE("a load tells its whole name, in two lines where one has no room, and every support its letter", "[core][drawing]")
{
    const Arrangement arrangement = pinionShaft();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    for (const double scale : {0.5, 1.0}) {
        const DisplayList list = loadList(arrangement, assessment, viewOf(scale, 0, Plane::z));
        std::string all;
        for (const Text& text : textsOf(list))
            all += text.text + " ";
        INFO(all);
        CHECK(all.find("Pinion, second stage of the reducer") != std::string::npos);
        CHECK(all.find("...") == std::string::npos);
        CHECK(all.find("A  ") != std::string::npos);
        CHECK(all.find("B  ") != std::string::npos);
    }
}

TEST_CASE("a card shows the letter, the role and the governing case in full", "[core][drawing]")
{
    Arrangement arrangement = sheet_fixture::reducer();
    arrangement.supports[0].name = "Left pedestal on the drive side";
    const Assessment assessment = sheet_fixture::assess(arrangement);
    const DisplayList card = supportCard(arrangement, assessment, viewOf(1.0, -1, Plane::z), arrangement.supports[0], 72, 34);
    CHECK(hasText(card, "A"));
    bool governs = false;
    for (const Text& text : textsOf(card)) {
        INFO(text.text);
        CHECK(text.text.find("...") == std::string::npos);
        CHECK(boxOf(text).x1 <= 72.0);
        governs = governs || text.text.find(" governs") != std::string::npos;
    }
    CHECK(governs);
}

TEST_CASE("adjusted supports show contact lines and effective centre without being selected", "[core][drawing]")
{
    Arrangement arrangement = sheet_fixture::reducer();
    CatalogueRow row = sheet_fixture::row("7208", GeometryClass::angular_contact_ball, 40, 80, 18, 30000, 20000);
    row.contact_angle_deg = 40;
    BearingChoice choice;
    choice.family = Family::angular_contact_ball_40;
    choice.rows = {SetRow{row, {}}};
    const auto phantoms = [&](Role role, Ink ink) {
        arrangement.supports[1].role = role;
        arrangement.supports[1].carries = Carries::plus;
        arrangement.supports[1].bearing = choice;
        int count = 0;
        for (const Group& group : drawingList(arrangement, Assessment{}, viewOf(1.0, -1, Plane::z)).groups) {
            for (const Primitive& item : group.items) {
                const Path* path = std::get_if<Path>(&item);
                count += group.subject == "supports.B" && path != nullptr && path->stroke == Stroke::phantom && path->ink == ink
                             ? 1
                             : 0;
            }
        }
        return count;
    };
    CHECK(phantoms(Role::adjusted, Ink::ink2) == 1);
    CHECK(phantoms(Role::locating, Ink::ink2) == 0);
    CHECK(phantoms(Role::adjusted, Ink::live) == 0);
}

TEST_CASE("arrows of forces stand at the x of their part and grow with the force", "[core][drawing]")
{
    const auto [arrangement, loads] = sheet_fixture::bench();
    const Assessment assessment = sheet_fixture::assess(arrangement, &loads);
    const DisplayList list = loadList(arrangement, assessment, viewOf(1.0, 0, Plane::z));
    double belt = 0.0;
    double wheel = 0.0;
    double left = 0.0;
    double right = 0.0;
    for (const Arrow& arrow : arrowsOf(list)) {
        if (std::abs(arrow.tip_y - arrow.tail_y) < 1e-9)
            continue; // axial force and torque
        const double x = arrow.subject == "parts.P"      ? 23
                         : arrow.subject == "parts.W"    ? 135
                         : arrow.subject == "supports.A" ? 89
                                                         : 187;
        CHECK_THAT(arrow.tip_x, WithinAbs(x, 1e-9));
        CHECK_THAT(arrow.tail_x, WithinAbs(x, 1e-9));
        (arrow.subject == "parts.P"      ? belt
         : arrow.subject == "parts.W"    ? wheel
         : arrow.subject == "supports.A" ? left
                                         : right) = arrow.length();
        if (arrow.subject == "parts.P" || arrow.subject == "parts.W")
            CHECK(arrow.tip_y < arrow.tail_y); // loads act down
        if (arrow.subject == "supports.A")
            CHECK(arrow.tip_y > arrow.tail_y); // support pushes up
        if (arrow.subject == "supports.B")
            CHECK(arrow.tip_y < arrow.tail_y); // support pulls down
    }
    // Longest 22 mm for the largest force 2577 N, shortest 7 mm: 1500 N -> 22 * 1500 / 2577 = 12.806 mm. Statics by hand below;
    // 0.01 mm covers the three digits of 2577.
    CHECK_THAT(left, WithinAbs(22.0, 1e-9));
    CHECK_THAT(belt, WithinAbs(12.806, 0.01));
    CHECK_THAT(wheel, WithinAbs(7.0, 1e-9)); // 22 * 743 / 2577 = 6.34, raised to the least length
    CHECK_THAT(right, WithinAbs(7.0, 1e-9));
}

TEST_CASE("reactions are labelled with the letter of the support and a held scale keeps arrow lengths", "[core][drawing]")
{
    const auto [arrangement, loads] = sheet_fixture::bench();
    const Assessment assessment = sheet_fixture::assess(arrangement, &loads);
    SheetView view = viewOf(1.0, 0, Plane::z);
    // Moments about B (x = 187), counting up positive: RA * 98 = 1500 * 164 + 743 * 52 - 529 * 60.8 -> RA = 2576.3 N,
    // RB = 2243 - 2576.3 = -333.3 N.
    CHECK(hasText(loadList(arrangement, assessment, view), "A  2.58 kN"));
    CHECK(hasText(loadList(arrangement, assessment, view), "B  0.333 kN"));
    view.held_force_N = 5152.6;
    for (const Arrow& arrow : arrowsOf(loadList(arrangement, assessment, view))) {
        if (arrow.subject == "supports.A" && std::abs(arrow.tip_y - arrow.tail_y) > 0.1)
            CHECK_THAT(arrow.length(), WithinAbs(11.0, 0.01)); // half of 22: the held force is twice the reaction
    }
}

TEST_CASE("strip of the moment hits the hand calculation and draws the jump upright", "[core][drawing]")
{
    const auto [arrangement, loads] = sheet_fixture::bench();
    const Assessment assessment = sheet_fixture::assess(arrangement, &loads);
    const SheetView view = viewOf(1.0, 0, Plane::z);
    const DisplayList strip = stripList(arrangement, assessment, view, StripKind::moment);
    const Path* curve = curveOf(strip);
    REQUIRE(curve != nullptr);
    const TickScale scale = tickScale(strip);
    REQUIRE(scale.found_zero);
    REQUIRE(scale.found);
    // By hand: My(89) = 1500 * 66 = 99 000 Nmm; left of the wheel My(135) = 1500 * 112 - 2576.3 * 46 = 49 490 Nmm; the axial
    // force at its radius takes away 529 * 60.8 = 32 163 Nmm.
    const auto valueAt = [&](double x, bool right) {
        double y = 1e9;
        for (const Vertex& vertex : curve->vertices) {
            if (std::abs(vertex.x - x) < 1e-6 && (y > 1e8 || right))
                y = vertex.y;
        }
        return (y - scale.zero_y) * scale.per_mm;
    };
    CHECK_THAT(valueAt(89, false), WithinAbs(99.0, 0.01));
    CHECK_THAT(valueAt(135, false), WithinAbs(49.49, 0.02));
    CHECK_THAT(valueAt(135, true), WithinAbs(17.33, 0.02));
    CHECK_THAT(valueAt(0, false), WithinAbs(0.0, 1e-6));
    int upright = 0;
    for (std::size_t i = 1; i < curve->vertices.size(); ++i) {
        if (curve->vertices[i].x == curve->vertices[i - 1].x && std::abs(curve->vertices[i].y - curve->vertices[i - 1].y) > 0.5)
            ++upright;
    }
    CHECK(upright == 1);
    CHECK(curve->vertices.size() <= 150);
    CHECK(hasText(strip, "99.0 at 89"));
    CHECK(hasText(strip, "49.5"));
    CHECK(hasText(strip, "17.3"));
    CHECK(hasText(strip, "N m"));

    const StripReading reading = readStrip(assessment, view, StripKind::moment, 135.0);
    CHECK(reading.jump);
    CHECK_THAT(reading.left, WithinAbs(49.49, 0.02));
    CHECK_THAT(reading.right, WithinAbs(17.33, 0.02));
    CHECK_THAT(reading.value, WithinAbs(49.49, 0.02));
    CHECK(reading.unit == "N m");
    CHECK_FALSE(readStrip(assessment, view, StripKind::moment, 100.0).jump);
}

TEST_CASE("shear, torque and axial strips hit the hand calculation", "[core][drawing]")
{
    const auto [arrangement, loads] = sheet_fixture::bench();
    const Assessment assessment = sheet_fixture::assess(arrangement, &loads);
    const SheetView view = viewOf(0.5, 0, Plane::z);
    // V' = -q: a load of -1500 N lifts Vz to +1500; the reaction 2576.3 N takes it to -1076.3; N is zero right of the wheel.
    CHECK_THAT(readStrip(assessment, view, StripKind::shear, 50).value, WithinAbs(1.5, 1e-6));
    CHECK_THAT(readStrip(assessment, view, StripKind::shear, 100).value, WithinAbs(-1.0763, 1e-3));
    CHECK_THAT(readStrip(assessment, view, StripKind::torque, 100).value, WithinAbs(120.0, 1e-6));
    CHECK_THAT(readStrip(assessment, view, StripKind::torque, 150).value, WithinAbs(0.0, 1e-6));
    // Locating support at 89 holds 529 N: tension between 89 and 135 is +529 towards the wheel.
    CHECK_THAT(readStrip(assessment, view, StripKind::axial, 100).value, WithinAbs(529.0, 1e-3));
    CHECK_THAT(readStrip(assessment, view, StripKind::axial, 150).value, WithinAbs(0.0, 1e-3));
    CHECK(readStrip(assessment, view, StripKind::axial, 100).unit == "N");
    CHECK(readStrip(assessment, view, StripKind::shear, 100).unit == "kN");
}

TEST_CASE("every strip carries a zero tick inside its bounds and labels that keep clear of each other", "[core][drawing]")
{
    const Arrangement arrangement = sheet_fixture::reducer();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    for (const int case_index : {-1, 0, 1, 2}) {
        for (const Plane plane : {Plane::y, Plane::z, Plane::resultant}) {
            for (const StripKind kind : {StripKind::shear, StripKind::moment, StripKind::torque, StripKind::axial,
                                         StripKind::deflection, StripKind::slope}) {
                SheetView view = viewOf(0.5, case_index, plane);
                StripRange range;
                const DisplayList strip = stripList(arrangement, assessment, view, kind, {}, &range);
                INFO(stripTitle(kind, plane) << " case " << case_index);
                CHECK(tickScale(strip).found_zero);
                CHECK(overlaps(strip) == std::vector<std::string>{});
                for (const Text& text : textsOf(strip)) {
                    const Box box = boxOf(text);
                    CHECK(box.y1 <= 0.01);
                    CHECK(box.y0 >= -view.strip_height_mm - 0.01);
                    CHECK(box.x0 >= -stripHead_mm);
                }
                CHECK(range.low <= 0.0);
                CHECK(range.high >= 0.0);
                if (plane == Plane::resultant && kind != StripKind::torque && kind != StripKind::axial)
                    CHECK(range.low == 0.0);
                const Path* curve = curveOf(strip);
                REQUIRE(curve != nullptr);
                CHECK(curve->vertices.size() <= 150);
                for (const Vertex& vertex : curve->vertices) {
                    CHECK(vertex.y <= 0.0);
                    CHECK(vertex.y >= -view.strip_height_mm);
                }
                CHECK_FALSE(stripSignNote(kind, plane).empty());
            }
        }
    }
}

TEST_CASE("the envelope spans the single cases and names the governing one", "[core][drawing]")
{
    const Arrangement arrangement = sheet_fixture::reducer();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    double low = 0.0;
    double high = 0.0;
    for (int i = 0; i < 3; ++i) {
        StripRange range;
        (void)stripList(arrangement, assessment, viewOf(0.5, i, Plane::z), StripKind::deflection, {}, &range);
        low = std::min(low, range.low);
        high = std::max(high, range.high);
    }
    StripRange all;
    const DisplayList strip = stripList(arrangement, assessment, viewOf(0.5, -1, Plane::z), StripKind::deflection, {}, &all);
    // 1e-3: the extreme between nodes is refined per case from the samples of that case or of the envelope.
    CHECK_THAT(all.low, WithinRel(low, 1e-3));
    CHECK_THAT(all.high, WithinRel(high, 1e-3));
    const std::vector<Text> texts = textsOf(strip);
    CHECK(
        std::any_of(texts.begin(), texts.end(), [](const Text& text) { return text.text.find(", Start") != std::string::npos; }));
    const StripReading reading = readStrip(assessment, viewOf(0.5, -1, Plane::z), StripKind::torque, 200.0);
    CHECK(reading.case_index == 2); // start has 2.2 times the rated torque
}

TEST_CASE("a held value scale does not breathe but never cuts the curve", "[core][drawing]")
{
    const auto [arrangement, loads] = sheet_fixture::bench();
    const Assessment assessment = sheet_fixture::assess(arrangement, &loads);
    const SheetView view = viewOf(1.0, 0, Plane::z);
    StripRange used;
    (void)stripList(arrangement, assessment, view, StripKind::moment, StripRange{-50.0, 400.0}, &used);
    CHECK(used.low == -50.0);
    CHECK(used.high == 400.0);
    (void)stripList(arrangement, assessment, view, StripKind::moment, StripRange{0.0, 20.0}, &used);
    CHECK_THAT(used.high, WithinAbs(99.0, 0.01));
}

TEST_CASE("loads and dimensions of a reducer do not collide in any plane, scale or case", "[core][drawing]")
{
    const Arrangement arrangement = sheet_fixture::reducer();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    for (const double scale : {0.2, 0.5, 1.0, 2.0}) {
        for (const Plane plane : {Plane::y, Plane::z, Plane::resultant}) {
            for (int case_index = -1; case_index < 3; ++case_index) {
                const SheetView view = viewOf(scale, case_index, plane);
                DisplayList list = loadList(arrangement, assessment, view);
                list.append(dimensionList(arrangement, assessment, view));
                INFO("scale " << scale << " case " << case_index << " plane " << static_cast<int>(plane));
                CHECK(overlaps(list) == std::vector<std::string>{});
                const Extent extent = drawingExtent(arrangement, view);
                for (const Group& group : list.groups) {
                    if (group.items.empty())
                        continue;
                    CHECK(group.bounds[1] >= -extent.below_mm - 0.01);
                    CHECK(group.bounds[3] <= extent.above_mm + 3.0 * 2.0 * 5.0); // labels may give way upwards by three rows
                }
            }
        }
    }
}

TEST_CASE("dimensions tell which input an edit in place changes", "[core][drawing]")
{
    const Arrangement arrangement = sheet_fixture::reducer();
    const std::vector<PlaneDimension> chain = planeDimensions(arrangement);
    // Planes at 0, 13.5 (A), 108 (G1), 219 (B), 270 (P1), 294: five dimensions and the overall length.
    REQUIRE(chain.size() == 6);
    CHECK(chain[0].path == "supports.A.x_mm");
    CHECK(chain[1].path == "parts.G1.x_mm");
    CHECK(chain[1].to_mm - chain[1].from_mm == 94.5);
    CHECK(chain[1].offset_mm + chain[1].sign * 100.0 == 113.5); // typing 100 puts the wheel at 113.5
    CHECK(chain[4].path == "parts.P1.x_mm");
    CHECK(chain[4].offset_mm + chain[4].sign * 30.0 == 264.0); // 30 from the right end
    CHECK(chain[5].path == "shaft.segments.s7.length_mm");
    CHECK(chain[5].offset_mm + chain[5].sign * 300.0 == 56.0); // six longer overall

    SheetView view = viewOf(1.0, 0, Plane::z);
    view.selected = "shaft.segments.s4";
    const DisplayList list = dimensionList(arrangement, Assessment{}, view);
    CHECK(hasText(list, "94.5"));
    CHECK(hasText(list, "294"));
    CHECK(hasText(list, "⌀40 k6"));
    bool length = false;
    bool diameter = false;
    for (const Group& group : list.groups) {
        length = length || group.handle == "shaft.segments.s4.length_mm";
        diameter = diameter || (group.handle == "shaft.segments.s6.outer_mm" && group.subject == "shaft.segments.s6");
    }
    CHECK(length);
    CHECK(diameter);
}

TEST_CASE("the centre line runs past both ends and an open support keeps its place", "[core][drawing]")
{
    Arrangement arrangement = sheet_fixture::reducer();
    arrangement.supports[1].bearing.reset();
    const DisplayList list = drawingList(arrangement, Assessment{}, viewOf(1.0, -1, Plane::z));
    bool axis = false;
    bool open = false;
    for (const Group& group : list.groups) {
        for (const Primitive& item : group.items) {
            const Path* path = std::get_if<Path>(&item);
            if (path == nullptr)
                continue;
            if (path->stroke == Stroke::centre && path->vertices.size() == 2 && path->vertices[0].y == 0.0 &&
                path->vertices[1].y == 0.0)
                axis = axis || (path->vertices[0].x <= -2.0 && path->vertices[1].x >= 296.0);
            if (group.subject == "supports.B" && path->stroke == Stroke::hidden)
                open = true;
        }
    }
    CHECK(axis);
    CHECK(open);
}

TEST_CASE("each role has its own support sign", "[core][drawing]")
{
    Arrangement arrangement = sheet_fixture::reducer();
    std::vector<std::size_t> lines;
    for (const Role role : {Role::locating, Role::non_locating, Role::adjusted, Role::end_play, Role::axial_only}) {
        arrangement.supports[0].role = role;
        const DisplayList list = loadList(arrangement, Assessment{}, viewOf(1.0, -1, Plane::z));
        std::string sign;
        for (const Group& group : list.groups) {
            if (group.subject != "supports.A")
                continue;
            for (const Primitive& item : group.items) {
                if (const Path* path = std::get_if<Path>(&item)) {
                    for (const Vertex& vertex : path->vertices)
                        sign += std::to_string(vertex.x) + "," + std::to_string(vertex.y) + ";";
                }
            }
        }
        REQUIRE_FALSE(sign.empty());
        lines.push_back(std::hash<std::string>{}(sign));
    }
    std::sort(lines.begin(), lines.end());
    CHECK(std::unique(lines.begin(), lines.end()) == lines.end());
}

TEST_CASE("the end view looks from the right end: forces at their angle, positive speed counter-clockwise", "[core][drawing]")
{
    Arrangement arrangement = sheet_fixture::reducer();
    Assessment assessment = sheet_fixture::assess(arrangement);
    assessment.loads[0].parts[0].force_N = {0.0, 1000.0, 0.0}; // +y: to the right
    const DisplayList list = endViewList(arrangement, assessment, viewOf(1.0, 0, Plane::z), 40.0);
    bool found = false;
    for (const Arrow& arrow : arrowsOf(list)) {
        if (arrow.subject != "parts.G1")
            continue;
        found = true;
        CHECK(arrow.tip_x > 5.0);
        CHECK_THAT(arrow.tip_y, WithinAbs(0.0, 1e-9));
    }
    CHECK(found);
    CHECK(hasText(list, "from the right end"));
    bool mesh = false;
    bool belt = false;
    for (const Group& group : list.groups) {
        if (group.handle == "mesh_angle_deg" && group.subject == "parts.G1") {
            const auto& grip = std::get<Circle>(group.items.front());
            CHECK_THAT(std::atan2(grip.y, grip.x) * 57.29577951308232, WithinAbs(150.0, 1e-6));
            mesh = true;
        }
        if (group.handle == "direction_deg" && group.subject == "parts.P1") {
            const auto& grip = std::get<Circle>(group.items.front());
            CHECK_THAT(std::atan2(grip.y, grip.x) * 57.29577951308232, WithinAbs(35.0, 1e-6));
            belt = true;
        }
    }
    CHECK(mesh);
    CHECK(belt);
    // The rotation arrow is the only arc in ink with a head after it: from its first to its last point the angle grows.
    const auto turn = [&](int case_index) {
        for (const Group& group : endViewList(arrangement, assessment, viewOf(1.0, case_index, Plane::z), 40.0).groups) {
            if (group.layer != Layer::load || !group.subject.empty())
                continue;
            const Path& path = std::get<Path>(group.items.front());
            const Vertex& a = path.vertices.front();
            const Vertex& b = path.vertices.back();
            return a.x * b.y - a.y * b.x;
        }
        return 0.0;
    };
    CHECK(turn(0) > 0.0); // 720 rpm
    CHECK(turn(1) < 0.0); // -640 rpm
}

TEST_CASE("the end view keeps its labels apart", "[core][drawing]")
{
    const Arrangement arrangement = sheet_fixture::reducer();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    for (int case_index = -1; case_index < 3; ++case_index) {
        for (const double radius : {9.0, 14.0, 20.0, 32.0, 60.0}) {
            INFO(case_index << " " << radius);
            const DisplayList list = endViewList(arrangement, assessment, viewOf(1.0, case_index, Plane::z), radius);
            CHECK(overlaps(list) == std::vector<std::string>{});
            // Whoever gives the view its reach cuts nothing off.
            const double reach = endViewReach_mm(radius) + 0.01;
            for (const Group& group : list.groups) {
                INFO(group.subject << " " << group.handle);
                if (group.items.empty())
                    continue;
                CHECK(group.bounds[0] >= -reach);
                CHECK(group.bounds[2] <= reach);
                CHECK(group.bounds[1] >= -reach);
                CHECK(group.bounds[3] <= reach + endViewCaption_mm);
            }
            // Labels of handles stand beside the axes.
            for (const Group& group : list.groups) {
                if (group.layer != Layer::overlay || group.handle.empty())
                    continue;
                for (const Primitive& item : group.items) {
                    if (const Text* text = std::get_if<Text>(&item)) {
                        const Box box = boxOf(*text);
                        CHECK((box.y0 > 0.1 || box.y1 < -0.1 || box.x0 > radius + 4.0 || box.x1 < -radius - 4.0));
                    }
                }
            }
        }
    }
}

TEST_CASE("a page keeps everything inside its frame and no two words cover each other", "[core][drawing]")
{
    const auto inside = [](const Page& page) {
        for (const Text& text : textsOf(page.list)) {
            const Box box = boxOf(text);
            INFO(text.text);
            CHECK(box.x0 >= 20.0);
            CHECK(box.x1 <= page.width_mm - 10.0);
            CHECK(box.y0 >= 10.0);
            CHECK(box.y1 <= page.height_mm - 10.0);
        }
        CHECK(overlaps(page.list) == std::vector<std::string>{});
    };
    const Arrangement arrangement = sheet_fixture::reducer();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    const Page page = pageOf(arrangement, assessment);
    CHECK(page.width_mm == 420.0);
    CHECK(page.height_mm == 297.0);
    CHECK(page.scale_text == "1:2");
    inside(page);
    CHECK(hasText(page.list, "Strength, fatigue and critical speed are not assessed."));
    CHECK(hasText(page.list, "Generic catalogue: ratings computed from standard dimensions, not a maker's."));
    CHECK(hasText(page.list, "Kiln drive, second shaft"));
    CHECK(hasText(page.list, "1 of 2 requirements not met or not judged"));
    CHECK(hasText(page.list, "62 %"));
    CHECK(hasText(page.list, "not met, 20\u2009000 h required"));

    const auto [bench, loads] = sheet_fixture::bench();
    const Page small = pageOf(bench, sheet_fixture::assess(bench, &loads));
    inside(small);
    CHECK_FALSE(hasText(small.list, "Generic catalogue: ratings computed from standard dimensions, not a maker's."));
    for (const Plane plane : {Plane::y, Plane::resultant}) {
        SheetView view;
        view.plane = plane;
        view.case_index = 1;
        inside(pageOf(arrangement, assessment, view));
    }
}

TEST_CASE("forty parts get item numbers, five full labels and a list", "[core][drawing]")
{
    const Arrangement arrangement = sheet_fixture::forty();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    REQUIRE(assessment.beam.usable());
    const DisplayList list = loadList(arrangement, assessment, viewOf(0.2, 0, Plane::z));
    CHECK(hasText(list, "1"));
    CHECK(hasText(list, "0.490 kN"));
    std::size_t named = 0;
    for (const Text& text : textsOf(list))
        named += text.text.rfind("Disk ", 0) == 0 ? 1U : 0U;
    CHECK(named <= 5);
    CHECK(named >= 1);
    CHECK(overlaps(list) == std::vector<std::string>{});
    SheetView selected = viewOf(0.2, 0, Plane::z);
    selected.selected = "parts.p7";
    CHECK(hasText(loadList(arrangement, assessment, selected), "Disk 7"));

    const Page page = pageOf(arrangement, assessment);
    CHECK(hasText(page.list, "Disk 1, x 15"));
    CHECK(hasText(page.list, "Disk 40, x 1146"));
    CHECK(overlaps(page.list) == std::vector<std::string>{});
}

TEST_CASE("an empty arrangement invites and crashes nothing", "[core][drawing]")
{
    const Arrangement empty;
    const Assessment none;
    const SheetView view;
    CHECK(hasText(drawingList(empty, none, view), "Draw the first segment"));
    CHECK(loadList(empty, none, view).groups.empty());
    CHECK(dimensionList(empty, none, view).groups.empty());
    CHECK(endViewList(empty, none, view, 30.0).primitiveCount() > 0);
    for (const StripKind kind : {StripKind::shear, StripKind::deflection}) {
        CHECK(stripList(empty, none, view, kind).primitiveCount() > 0);
        CHECK(readStrip(none, view, kind, 10.0).case_index == -1);
    }
    CHECK(shownCase(none, view) == -1);
    CHECK(largestForce_N(none, view) == 0.0);
    CHECK(svg(pageOf(empty, none).list, 420, 297, {"", ""}).find("</svg>") != std::string::npos);
}

TEST_CASE("a shaft without a solution says so in the strips", "[core][drawing]")
{
    Arrangement arrangement = sheet_fixture::reducer();
    arrangement.supports.clear();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    REQUIRE_FALSE(assessment.beam.usable());
    const std::vector<Text> texts = textsOf(stripList(arrangement, assessment, viewOf(1.0, 0, Plane::z), StripKind::moment));
    CHECK(std::any_of(texts.begin(), texts.end(), [](const Text& text) { return text.text.rfind("no curve", 0) == 0; }));
}

TEST_CASE("numbers that are not finite leave nothing broken in the picture", "[core][drawing]")
{
    Arrangement arrangement = sheet_fixture::reducer();
    Assessment assessment = sheet_fixture::assess(arrangement);
    const double nan = std::nan("");
    assessment.loads[0].parts[0].force_N = {nan, nan, nan};
    assessment.loads[0].parts[1].torque_Nmm = nan;
    assessment.supports[0].cases[0].force_N = {nan, nan, nan};
    arrangement.parts[1].x_mm = nan;
    SheetView view;
    view.case_index = 0;
    const Page page = pageOf(arrangement, assessment, view);
    const std::string text = svg(page.list, page.width_mm, page.height_mm, {"t", "d"});
    CHECK(text.find("nan") == std::string::npos);
    CHECK(text.find("inf") == std::string::npos);
}

TEST_CASE("svg has the same bytes twice, escapes text and carries millimetres", "[core][drawing]")
{
    Arrangement arrangement = sheet_fixture::reducer();
    arrangement.title.title = "Fan <3> & \"belt\"";
    const Assessment assessment = sheet_fixture::assess(arrangement);
    const Page page = pageOf(arrangement, assessment);
    const std::string one = svg(page.list, page.width_mm, page.height_mm, {arrangement.title.title, "Revision A"});
    const std::string two =
        svg(pageOf(arrangement, assessment).list, page.width_mm, page.height_mm, {arrangement.title.title, "Revision A"});
    CHECK(one == two);
    CHECK(one.find("Fan &lt;3&gt; &amp; &quot;belt&quot;") != std::string::npos);
    CHECK(one.find("<3>") == std::string::npos);
    CHECK(one.find("width=\"420mm\" height=\"297mm\" viewBox=\"0 0 420 297\"") != std::string::npos);
    CHECK(one.find("<desc>Revision A</desc>") != std::string::npos);
    CHECK(one.find("#FCFBF7") != std::string::npos);
    const std::string dark = svg(page.list, page.width_mm, page.height_mm, {"", ""}, true);
    CHECK(dark.find("#1D2226") != std::string::npos);
    CHECK(dark.find("#FCFBF7") == std::string::npos);
}

TEST_CASE("svg draws arcs with the right sweep and broken lines that begin and end with a dash", "[core][drawing]")
{
    DisplayList list;
    Group group;
    // Quarter circle, counter-clockwise with y up, from (10, 0) to (0, 10): radius 10, sweep flag 0 since y is flipped.
    group.items.emplace_back(Path{{{10, 0, std::tan(3.14159265358979 / 8)}, {0, 10}}, false, Stroke::thin, Ink::ink, {}});
    group.items.emplace_back(Path{{{0, 5}, {50, 5}}, false, Stroke::centre, Ink::ink, {}});
    list.groups.push_back(group);
    const std::string text = svg(list, 100, 20, {"", ""});
    CHECK(text.find("M10 20A10 10 0 0 0 0 10") != std::string::npos);
    // ISO 128 with d = 0.25: n = round((50 - 6) / 7.625) = 6, long element (50 - 1.625 * 6) / 7 = 5.75 mm.
    CHECK(text.find("stroke-dasharray=\"5.75,0.75,0.125,0.75\"") != std::string::npos);
}

TEST_CASE("loads, dimensions, four strips and end view are built well within a frame", "[core][drawing]")
{
    const Arrangement arrangement = sheet_fixture::reducer();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    const SheetView view = viewOf(1.0, 0, Plane::z);
    double best_ms = 1e9;
    for (int round = 0; round < 20; ++round) {
        const auto start = std::chrono::steady_clock::now();
        std::size_t count = loadList(arrangement, assessment, view).primitiveCount() +
                            dimensionList(arrangement, assessment, view).primitiveCount();
        for (const StripKind kind : {StripKind::shear, StripKind::moment, StripKind::torque, StripKind::deflection})
            count += stripList(arrangement, assessment, view, kind).primitiveCount();
        count += endViewList(arrangement, assessment, view, 40.0).primitiveCount();
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
        REQUIRE(count > 100);
        best_ms = std::min(best_ms, took.count());
    }
    // Measured 0.06 ms in Release on a machine with two cores; ten times that for sanitizers and busy machines.
    CHECK(best_ms < 5.0);
}

TEST_CASE("a held strip keeps unit, ticks, curve and hairline together when the moment outgrows the unit", "[core][drawing]")
{
    const auto [arrangement, loads] = sheet_fixture::bench();
    const SheetView view = viewOf(1.0, 0, Plane::z);
    StripRange held;
    (void)stripList(arrangement, sheet_fixture::assess(arrangement, &loads), view, StripKind::moment, {}, &held);
    CHECK(held.unit == "N m");
    CHECK(held.factor == 1e-3);
    // Every force twenty times as large: My(89) = 20 * 99 N m = 1980 N m, which by itself would be told in kN m.
    std::vector<CaseLoads> grown = loads;
    for (CaseLoads& one : grown) {
        for (PartLoad& load : one.parts) {
            load.force_N = {20 * load.force_N.x, 20 * load.force_N.y, 20 * load.force_N.z};
            load.moment_Nmm = {20 * load.moment_Nmm.x, 20 * load.moment_Nmm.y, 20 * load.moment_Nmm.z};
        }
    }
    const Assessment assessment = sheet_fixture::assess(arrangement, &grown);
    StripRange used;
    const DisplayList strip = stripList(arrangement, assessment, view, StripKind::moment, held, &used);
    CHECK(hasText(strip, "N m"));
    CHECK_FALSE(hasText(strip, "kN m"));
    CHECK(used.unit == "N m");
    CHECK_THAT(used.high, WithinAbs(1980.0, 0.2)); // statics to four digits
    const TickScale scale = tickScale(strip);
    REQUIRE(scale.found);
    const Path* curve = curveOf(strip);
    REQUIRE(curve != nullptr);
    double top = -1e9;
    for (const Vertex& vertex : curve->vertices)
        top = std::max(top, vertex.y);
    CHECK_THAT((top - scale.zero_y) * scale.per_mm, WithinAbs(1980.0, 0.2));
    CHECK_THAT(stripY_mm(view, used, 1980.0), WithinAbs(top, 0.01));
    const StripReading reading = readStrip(assessment, view, StripKind::moment, 89.0, used);
    CHECK(reading.unit == "N m");
    CHECK_THAT(reading.value, WithinAbs(1980.0, 0.2));
    // Released, the strip chooses its unit again, for curve and hairline alike.
    (void)stripList(arrangement, assessment, view, StripKind::moment, {}, &used);
    CHECK(used.unit == "kN m");
    CHECK(readStrip(assessment, view, StripKind::moment, 89.0).unit == "kN m");
}

TEST_CASE("every segment's length stands on the drawing of a short shaft, the last one too", "[core][drawing]")
{
    const auto lengths = [](const Arrangement& arrangement) {
        std::vector<std::string> out;
        for (const Group& group : dimensionList(arrangement, Assessment{}, viewOf(1.0, 0, Plane::z)).groups) {
            for (const Primitive& item : group.items) {
                const Text* text = std::get_if<Text>(&item);
                if (text != nullptr && group.handle == group.subject + ".length_mm")
                    out.push_back(group.handle + " " + text->text);
            }
        }
        return out;
    };
    Arrangement arrangement = sheet_fixture::reducer();
    const Segment last = arrangement.shaft.segments.back();
    const auto has = [](const std::vector<std::string>& all, const std::string& one) {
        return std::find(all.begin(), all.end(), one) != all.end();
    };
    REQUIRE(arrangement.shaft.segments.size() == 7);
    CHECK(lengths(arrangement).size() == 8); // seven and the overall length
    CHECK(has(lengths(arrangement), "shaft.segments.s7.length_mm 50"));
    CHECK(last.length_mm == 50.0);
    arrangement.parts.clear();
    arrangement.supports.clear();
    CHECK(lengths(arrangement).size() == 8);
    for (int i = 0; i < 3; ++i) { // ten on a bare shaft
        Segment more = last;
        more.id = SegmentId("t" + std::to_string(i));
        arrangement.shaft.segments.push_back(more);
    }
    CHECK(lengths(arrangement).size() == 11);
    CHECK(overlaps(dimensionList(arrangement, Assessment{}, viewOf(1.0, 0, Plane::z))) == std::vector<std::string>{});
    arrangement.supports = sheet_fixture::reducer().supports;
    CHECK(lengths(arrangement).size() == 1); // the overall length
}

TEST_CASE("a line load is told in N per mm with three figures", "[core][drawing]")
{
    auto [arrangement, loads] = sheet_fixture::bench();
    PartLoad& load = loads[0].parts[0];
    load.distributed = true;
    load.x_mm = 10;
    load.end_mm = 60;
    load.q0_N_mm = load.q1_N_mm = {0.0, 0.0, -5.0};
    const DisplayList list = loadList(arrangement, sheet_fixture::assess(arrangement, &loads), viewOf(1.0, 0, Plane::z));
    CHECK(hasText(list, "5.00 N/mm"));
}

TEST_CASE("with all cases shown the drawing and the end view say whose forces they show", "[core][drawing]")
{
    const Arrangement arrangement = sheet_fixture::reducer();
    const Assessment assessment = sheet_fixture::assess(arrangement);
    const SheetView all = viewOf(1.0, -1, Plane::z);
    const std::string name = assessment.load_cases[static_cast<std::size_t>(shownCase(assessment, all))].name;
    const DisplayList loads = loadList(arrangement, assessment, all);
    CHECK(hasText(loads, "arrows: case"));
    CHECK(hasText(loads, name));
    CHECK(hasText(endViewList(arrangement, assessment, all, 30.0), "forces in kN, case " + name));
    const SheetView one = viewOf(1.0, 0, Plane::z);
    CHECK_FALSE(hasText(loadList(arrangement, assessment, one), "arrows: case"));
    CHECK(hasText(endViewList(arrangement, assessment, one, 30.0), "forces in kN"));
}

TEST_CASE("wheels that mesh at one angle share the label, and their grips stand apart", "[core][drawing]")
{
    Arrangement arrangement = sheet_fixture::reducer();
    Part second = arrangement.parts[0];
    second.id = PartId("G2");
    second.x_mm = 175;
    arrangement.parts.push_back(second);
    std::vector<std::array<double, 2>> grips;
    std::vector<std::string> labels;
    for (const Group& group :
         endViewList(arrangement, sheet_fixture::assess(arrangement), viewOf(1.0, 0, Plane::z), 30.0).groups) {
        if (group.handle != "mesh_angle_deg")
            continue;
        for (const Primitive& item : group.items) {
            if (const Circle* circle = std::get_if<Circle>(&item))
                grips.push_back({circle->x, circle->y});
            if (const Text* text = std::get_if<Text>(&item))
                labels.push_back(text->text);
        }
    }
    REQUIRE(grips.size() == 2);
    CHECK(std::hypot(grips[0][0] - grips[1][0], grips[0][1] - grips[1][1]) >= 3.2); // circles of 3.2 mm
    CHECK_THAT(std::atan2(grips[0][1], grips[0][0]), WithinAbs(std::atan2(grips[1][1], grips[1][0]), 1e-9));
    CHECK(labels == std::vector<std::string>{"mesh 150° G1, G2"});
}

TEST_CASE("the level of detail that is shown stays within its hysteresis", "[core][drawing]")
{
    const Arrangement arrangement = sheet_fixture::reducer();
    double smallest = 1e9;
    for (const Support& support : arrangement.supports) {
        for (const SetRow& row : support.bearing->rows)
            smallest = std::min(smallest, (row.row.outer_mm - row.row.bore_mm) / 2.0);
    }
    SheetView view;
    view.pixels_per_mm = 4.0;
    const auto at = [&](double px) {
        view.scale = px / 4.0 / smallest;
        return viewDetail(arrangement, view);
    };
    CHECK(at(44.0) == Detail::tone_section); // bound at 45 px
    CHECK(at(46.0) == Detail::section);
    view.detail = Detail::tone_section;
    CHECK(at(46.0) == Detail::tone_section);
    CHECK(at(60.0) == Detail::section);
    view.detail = Detail::section;
    CHECK(at(44.0) == Detail::section);
    CHECK(at(30.0) == Detail::tone_section);
}

TEST_CASE("an axial arrow gives way to a bearing beside its wheel", "[core][drawing]")
{
    auto [arrangement, loads] = sheet_fixture::bench();
    const auto axial = [&] {
        for (const Arrow& arrow :
             arrowsOf(loadList(arrangement, sheet_fixture::assess(arrangement, &loads), viewOf(1.0, 0, Plane::z)))) {
            if (arrow.subject == "parts.W" && arrow.tail_y == arrow.tip_y && arrow.length() < 30.0)
                return arrow;
        }
        return Arrow{};
    };
    const Arrow free = axial();
    REQUIRE(free.length() > 5.0);
    const double direction = free.tip_x > free.tail_x ? 1.0 : -1.0;
    const double before = (free.tail_x - 135.0) * direction; // the tail stands on the face
    CHECK(before > 0.0);
    Support& support = arrangement.supports[direction > 0.0 ? 1 : 0];
    support.x_mm = 135.0 + direction * (before + 10.0);
    support.greatest_outer_mm = 300.0;
    support.bearing.reset();
    const Arrow moved = axial();
    REQUIRE(moved.length() > 5.0);
    CHECK((moved.tip_x - moved.tail_x) * direction > 0.0);
    CHECK((moved.tip_x - 135.0) * direction < 0.0); // behind the wheel, pushing it
}

TEST_CASE("every group of the drawing tells its own bounds", "[core][drawing]")
{
    Arrangement open = pinionShaft();
    open.supports[1].bearing.reset();
    for (const Arrangement& arrangement : {sheet_fixture::reducer(), open, sheet_fixture::forty()}) {
        for (const double scale : {0.2, 1.0, 3.0}) {
            for (const Group& group : drawingList(arrangement, Assessment{}, viewOf(scale, -1, Plane::z)).groups) {
                INFO(group.subject << " " << group.handle << " scale " << scale);
                Group own = group;
                computeBounds(own);
                for (std::size_t i = 0; i < 4; ++i)
                    CHECK_THAT(group.bounds[i], WithinAbs(own.bounds[i], 1e-9));
            }
        }
    }
}

TEST_CASE("labels of extremes stand clear of their own curve", "[core][drawing]")
{
    std::size_t seen = 0;
    for (const Arrangement& arrangement : {sheet_fixture::reducer(), pinionShaft()}) {
        const Assessment assessment = sheet_fixture::assess(arrangement);
        for (const double scale : {0.3, 0.5, 1.0}) {
            for (int case_index = -1; case_index < 3; ++case_index) {
                for (const Plane plane : {Plane::y, Plane::z, Plane::resultant}) {
                    for (const StripKind kind : {StripKind::shear, StripKind::moment, StripKind::torque, StripKind::axial,
                                                 StripKind::deflection, StripKind::slope}) {
                        const DisplayList strip = stripList(arrangement, assessment, viewOf(scale, case_index, plane), kind);
                        INFO(stripTitle(kind, plane) << " case " << case_index << " scale " << scale);
                        DisplayList curves;
                        curves.groups.emplace_back();
                        for (const Group& group : strip.groups) {
                            for (const Primitive& item : group.items) {
                                const Path* path = std::get_if<Path>(&item);
                                if (path != nullptr && path->stroke == Stroke::thick && path->ink == Ink::live)
                                    curves.groups.back().items.push_back(item);
                            }
                        }
                        std::vector<Text> labels;
                        for (const Text& text : textsOf(strip)) {
                            if (text.text.find(" at ") != std::string::npos)
                                labels.push_back(text);
                        }
                        seen += labels.size();
                        CHECK(crossed(curves, labels) == std::vector<std::string>{});
                    }
                }
            }
        }
    }
    CHECK(seen > 300);
}
