// Writes pictures of every kind of section, to be looked at: section_sheets DIRECTORY. All sizes of our own choice, bearings
// from the generic catalogue.

#include "core/catalogue/catalogue.h"
#include "core/drawing/sections.h"
#include "core/drawing/sheet.h"

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <string>
#include <utility>
#include <vector>

using namespace shaftwright;
using namespace shaftwright::drawing;

namespace
{

void caption(DisplayList& list, double x, double y, const std::string& text)
{
    Group group;
    group.layer = Layer::dimension;
    Text label;
    label.x = x;
    label.y = y;
    label.height_mm = 2.5;
    label.text = text;
    label.h = HAlign::centre;
    group.items.emplace_back(label);
    list.groups.push_back(std::move(group));
}

void put(DisplayList& list, Group group, double x, double y)
{
    DisplayList one;
    one.groups.push_back(std::move(group));
    one.translate(x, y);
    list.append(std::move(one));
}

void write(const DisplayList& list, const std::string& path, double width, double height)
{
    std::ofstream(path) << svg(list, width, height, {"Sections", "To be looked at"});
}

BearingChoice single(const CatalogueRow& row, Family family = Family::deep_groove_ball)
{
    BearingChoice choice;
    choice.family = family;
    choice.rows.push_back({row, {}});
    return choice;
}

/// Bearings in rows, each scaled to the same half section on the sheet (at most a given radius).
void bearings(const std::string& path, const std::vector<std::string>& names, double section_mm, Detail detail, double width)
{
    struct Cell {
        Group group;
        std::string name;
        double x = 0.0;
    };
    std::vector<std::vector<Cell>> lines(1);
    std::vector<double> heights(1, 0.0);
    double at = 6.0;
    int i = 0;
    for (const std::string& name : names) {
        const std::string listed = name.substr(0, name.find("-2"));
        const CatalogueRow* found = genericCatalogue().find(name);
        if (found == nullptr)
            found = genericCatalogue().find(listed); // suffixes of covers have no rows of their own
        if (found == nullptr) {
            std::printf("not in the catalogue: %s\n", name.c_str());
            continue;
        }
        CatalogueRow row = *found;
        row.designation = name;
        SectionStyle style;
        style.detail = detail;
        style.scale = section_mm / (0.5 * (row.outer_mm - row.bore_mm));
        style.contact_lines = i % 2 == 1;
        const Family family = row.geometry_class == GeometryClass::needle ? Family::needle_roller : Family::deep_groove_ball;
        Group group = bearingSection(single(row, family), {}, style);
        const double wide = group.bounds[2] - group.bounds[0];
        if (at + wide + 6.0 > width) {
            lines.emplace_back();
            heights.push_back(0.0);
            at = 6.0;
        }
        heights.back() = std::max(heights.back(), group.bounds[3] - group.bounds[1]);
        const double x = at - group.bounds[0];
        at += wide + 10.0;
        lines.back().push_back({std::move(group), name, x});
        ++i;
    }
    double total = 0.0;
    for (const double height : heights)
        total += height + 14.0;
    DisplayList list;
    double y = total;
    for (std::size_t line = 0; line < lines.size(); ++line) {
        y -= 0.5 * heights[line] + 4.0;
        for (Cell& cell : lines[line]) {
            put(list, std::move(cell.group), cell.x, y);
            caption(list, cell.x, y - 0.5 * heights[line] - 5.0, cell.name);
        }
        y -= 0.5 * heights[line] + 10.0;
    }
    write(list, path, width, total);
}

Part part(PartBody body, double mass = 0.0)
{
    Part out;
    out.body = std::move(body);
    out.mass_kg = mass;
    return out;
}

std::vector<std::pair<std::string, Part>> wheels()
{
    std::vector<std::pair<std::string, Part>> list;
    CylindricalGear gear;
    gear.teeth = 47;
    gear.normal_module_mm = 2.5;
    gear.face_width_mm = 50.0;
    list.emplace_back("spur", part(gear));
    gear.helix_deg = 15.0;
    gear.hand = Hand::right;
    list.emplace_back("helical R", part(gear));
    gear.double_helical = true;
    gear.helix_deg = 25.0;
    list.emplace_back("double helical", part(gear));
    gear.double_helical = false;
    gear.teeth = 17;
    gear.hand = Hand::left;
    gear.helix_deg = 15.0;
    list.emplace_back("pinion L", part(gear));
    gear.teeth = 26;
    list.emplace_back("full disc", part(gear));
    gear.internal = true;
    gear.teeth = 53;
    gear.face_width_mm = 35.0;
    list.emplace_back("ring gear", part(gear));
    BevelGear bevel;
    bevel.teeth = 25;
    bevel.outer_module_mm = 4.0;
    bevel.cone_angle_deg = 45.0;
    bevel.face_width_mm = 22.0;
    list.emplace_back("bevel 45", part(bevel));
    bevel.teeth = 42;
    bevel.outer_module_mm = 3.0;
    bevel.cone_angle_deg = 68.0;
    bevel.spiral_deg = 35.0;
    bevel.hand = Hand::left;
    list.emplace_back("spiral crown", part(bevel));
    bevel.teeth = 17;
    bevel.outer_module_mm = 4.0;
    bevel.cone_angle_deg = 22.0;
    bevel.apex = ApexSide::minus;
    list.emplace_back("bevel pinion", part(bevel));
    Worm worm;
    worm.axial_module_mm = 4.0;
    worm.reference_diameter_mm = 44.0;
    worm.starts = 2;
    worm.face_width_mm = 60.0;
    list.emplace_back("worm", part(worm));
    WormWheel wheel;
    wheel.teeth = 36;
    wheel.reference_diameter_mm = 126.0;
    wheel.lead_angle_deg = 10.3;
    wheel.face_width_mm = 32.0;
    list.emplace_back("worm wheel", part(wheel));
    BeltPulley pulley;
    pulley.kind = BeltKind::v;
    pulley.diameter_mm = 125.0;
    pulley.grooves = 2;
    pulley.face_width_mm = 35.0;
    list.emplace_back("V pulley", part(pulley));
    pulley.kind = BeltKind::flat;
    pulley.face_width_mm = 50.0;
    list.emplace_back("flat pulley", part(pulley));
    pulley.kind = BeltKind::ribbed;
    pulley.grooves = 8;
    pulley.face_width_mm = 30.0;
    list.emplace_back("ribbed pulley", part(pulley));
    pulley.kind = BeltKind::toothed;
    pulley.diameter_mm = 100.0;
    list.emplace_back("toothed pulley", part(pulley));
    ChainSprocket sprocket;
    sprocket.teeth = 21;
    sprocket.pitch_mm = 19.05;
    list.emplace_back("sprocket", part(sprocket));
    sprocket.strands = 2;
    list.emplace_back("double sprocket", part(sprocket));
    Coupling coupling;
    coupling.outer_mm = 110.0;
    coupling.length_mm = 90.0;
    list.emplace_back("flange coupling", part(coupling));
    coupling.radial_force_N = 100.0;
    list.emplace_back("elastic coupling", part(coupling));
    Impeller impeller;
    impeller.outer_mm = 150.0;
    impeller.width_mm = 45.0;
    list.emplace_back("impeller", part(impeller));
    WeightBody weight;
    weight.outer_mm = 150.0;
    weight.width_mm = 45.0;
    list.emplace_back("flywheel", part(weight));
    gear = {};
    gear.teeth = 40;
    gear.normal_module_mm = 2.5;
    list.emplace_back("width unknown", part(gear));
    return list;
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
    out.id = FeatureId("f");
    out.kind = kind;
    out.position_mm = position;
    out.length_mm = length;
    out.depth_mm = depth;
    out.width_mm = width;
    return out;
}

Shaft shaft()
{
    Shaft out;
    out.segments = {segment("s1", 48, 30), segment("s2", 26, 35), segment("s3", 24, 40),
                    segment("s4", 12, 48), segment("s5", 50, 45), segment("s6", 42, 40)};
    out.segments[0].features = {feature(FeatureKind::chamfer, 0, 1.5), feature(FeatureKind::keyway, 6, 36, 4, 8),
                                feature(FeatureKind::centre_hole, 0, 0), feature(FeatureKind::fillet, 48, 1)};
    out.segments[2].features = {feature(FeatureKind::undercut, 24, 0), feature(FeatureKind::chamfer, 0, 2),
                                feature(FeatureKind::groove, 4, 1.85, 1.25)};
    out.segments[4].features = {feature(FeatureKind::keyway, 5, 40, 5.5, 14)};
    out.segments[5].features = {feature(FeatureKind::thread, 28, 14), feature(FeatureKind::chamfer, 42, 1.5),
                                feature(FeatureKind::groove, 24, 2.5, 1.25)};
    return out;
}

} // namespace

int main(int count, char** arguments)
{
    const std::string folder = count > 1 ? arguments[1] : ".";
    const std::vector<std::string> kinds{"6208",   "6208-2Z", "6208-2RS", "4208",    "1208",    "2308",    "N208",
                                         "NU208",  "NJ208",   "NUP208",   "NCF3008", "7208-40", "7208-15", "3208",
                                         "QJ208",  "30208",   "31308",    "32008X",  "22208",   "23124",   "NA4908",
                                         "NA6908", "HK1010",  "51208",    "52208",   "81108",   "AXK4060", "29412"};
    bearings(folder + "/sections-30.svg", kinds, 30.0, Detail::full_section, 620.0);
    bearings(folder + "/sections-12.svg", kinds, 12.0, Detail::section, 420.0);
    bearings(folder + "/sections-8.svg", kinds, 8.0, Detail::tone_section, 300.0);
    bearings(folder + "/signs-12.svg", kinds, 12.0, Detail::detailed_sign, 420.0);

    DisplayList list;
    int i = 0;
    for (const auto& [name, one] : wheels()) {
        SectionStyle style;
        const double x = (i % 8 + 0.5) * 120.0, y = 3.0 * 190.0 - (i / 8 + 0.5) * 190.0;
        put(list, partSection(one, 40.0, style), x, y);
        caption(list, x, y - 92.0, name);
        ++i;
    }
    write(list, folder + "/wheels.svg", 960.0, 570.0);

    DisplayList assembly;
    SectionStyle style;
    const Shaft turned = shaft();
    for (Group& group : shaftOutline(turned, style))
        assembly.groups.push_back(std::move(group));
    const auto all = wheels();
    put(assembly, partSection(all[11].second, 30.0, style), 24.0, 0.0);
    put(assembly, partSection(all[1].second, 45.0, style), 135.0, 0.0);
    if (const CatalogueRow* row = genericCatalogue().find("6208"))
        put(assembly, bearingSection(single(*row), {}, style), 89.0, 0.0);
    if (const CatalogueRow* row = genericCatalogue().find("NU208"))
        put(assembly, bearingSection(single(*row), {}, style), 169.0, 0.0);
    assembly.translate(30.0, 90.0);
    write(assembly, folder + "/assembly.svg", 270.0, 180.0);

    Shaft hollow;
    hollow.segments = {segment("h1", 40, 40), segment("h2", 60, 60), segment("h3", 40, 45), segment("h4", 30, 30)};
    hollow.segments[0].bore_mm = 20.0;
    hollow.segments[1].bore_mm = 28.0;
    hollow.segments[1].outer_end_mm = 50.0;
    hollow.segments[2].features = {feature(FeatureKind::fillet, 0, 2.5), feature(FeatureKind::fillet, 40, 1.5)};
    hollow.segments[3].features = {feature(FeatureKind::fillet, 0, 3), feature(FeatureKind::centre_hole, 30, 0)};
    DisplayList tube;
    for (Group& group : shaftOutline(hollow, style))
        tube.groups.push_back(std::move(group));
    BearingChoice pair;
    pair.family = Family::angular_contact_set_O;
    pair.arrangement = SetArrangement::O;
    if (const CatalogueRow* row = genericCatalogue().find("7208-40"))
        pair.rows = {{*row, {}}, {*row, {}}};
    SectionStyle lines;
    lines.contact_lines = true;
    put(tube, bearingSection(pair, {}, lines), 240.0, 0.0);
    pair.arrangement = SetArrangement::X;
    if (const CatalogueRow* row = genericCatalogue().find("30208"))
        pair.rows = {{*row, {}}, {*row, {}}};
    put(tube, bearingSection(pair, {}, lines), 330.0, 0.0);
    tube.translate(20.0, 60.0);
    write(tube, folder + "/hollow.svg", 420.0, 120.0);
    return 0;
}
