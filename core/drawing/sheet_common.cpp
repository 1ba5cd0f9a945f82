#include "core/drawing/sheet_common.h"

#include "core/drawing/wheel_shapes.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright::drawing
{

namespace inner
{

namespace
{
constexpr double degree = std::numbers::pi / 180.0;
}

Box boxOf(const Text& text)
{
    const double width = textWidth_mm(text.text, text.height_mm, text.font) * (text.bold ? 1.06 : 1.0);
    const double along0 = text.h == HAlign::left ? 0.0 : text.h == HAlign::centre ? -width / 2.0 : -width;
    const double up0 = text.v == VAlign::baseline ? 0.0 : text.v == VAlign::middle ? -text.height_mm / 2.0 : -text.height_mm;
    if (std::abs(text.angle_deg - 90.0) < 1.0) // along = +y, up = -x
        return {text.x - up0 - text.height_mm, text.y + along0, text.x - up0, text.y + along0 + width};
    return {text.x + along0, text.y + up0, text.x + along0 + width, text.y + up0 + text.height_mm};
}

void line(Group& group, double x0, double y0, double x1, double y1, Stroke stroke, Ink ink)
{
    group.items.emplace_back(Path{{{x0, y0}, {x1, y1}}, false, stroke, ink, {}});
}

void rectangle(Group& group, const Box& box, Stroke stroke, Ink ink, std::optional<Ink> fill)
{
    group.items.emplace_back(
        Path{{{box.x0, box.y0}, {box.x1, box.y0}, {box.x1, box.y1}, {box.x0, box.y1}}, true, stroke, ink, fill});
}

void roundRectangle(Group& group, const Box& box, double radius_mm, Stroke stroke, Ink ink, std::optional<Ink> fill)
{
    const double r = std::min({radius_mm, (box.x1 - box.x0) / 2.0, (box.y1 - box.y0) / 2.0});
    const double b = std::tan(std::numbers::pi / 8.0); // quarter circle, counter-clockwise
    group.items.emplace_back(Path{{{box.x0 + r, box.y0},
                                   {box.x1 - r, box.y0, b},
                                   {box.x1, box.y0 + r},
                                   {box.x1, box.y1 - r, b},
                                   {box.x1 - r, box.y1},
                                   {box.x0 + r, box.y1, b},
                                   {box.x0, box.y1 - r},
                                   {box.x0, box.y0 + r, b}},
                                  true,
                                  stroke,
                                  ink,
                                  fill});
}

void head(Group& group, double x, double y, double dx, double dy, double length_mm, double half_width_mm, Ink ink)
{
    const double bx = x - dx * length_mm;
    const double by = y - dy * length_mm;
    group.items.emplace_back(
        Path{{{x, y}, {bx - dy * half_width_mm, by + dx * half_width_mm}, {bx + dy * half_width_mm, by - dx * half_width_mm}},
             true,
             Stroke::none,
             ink,
             ink});
}

void arrow(Group& group, double tail_x, double tail_y, double tip_x, double tip_y, Ink ink, Stroke stroke, int heads)
{
    const double length = std::hypot(tip_x - tail_x, tip_y - tail_y);
    if (length < 1e-9)
        return;
    const double dx = (tip_x - tail_x) / length;
    const double dy = (tip_y - tail_y) / length;
    // The line ends inside the head, so that its flat end does not blunt the tip.
    line(group, tail_x, tail_y, tip_x - dx * arrowHead_mm * 0.8, tip_y - dy * arrowHead_mm * 0.8, stroke, ink);
    for (int i = 0; i < heads; ++i) {
        const double back = i * arrowHead_mm * 0.85;
        head(group, tip_x - dx * back, tip_y - dy * back, dx, dy, arrowHead_mm, arrowHeadHalf_mm, ink);
    }
}

void arc(Group& group, double x, double y, double radius, double a0_deg, double a1_deg, Stroke stroke, Ink ink)
{
    const double a0 = a0_deg * degree;
    const double a1 = a1_deg * degree;
    Path path{{}, false, stroke, ink, {}};
    const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(a1 - a0) / 1.6)));
    const double step = (a1 - a0) / pieces;
    for (int i = 0; i <= pieces; ++i) {
        const double a = a0 + step * i;
        path.vertices.push_back({x + radius * std::cos(a), y + radius * std::sin(a), i < pieces ? std::tan(step / 4.0) : 0.0});
    }
    group.items.emplace_back(std::move(path));
}

void verdictMark(Group& group, double x, double y, double height_mm, int verdict)
{
    const double h = height_mm;
    if (verdict == 0) {
        group.items.emplace_back(Path{
            {{x, y + 0.45 * h}, {x + 0.33 * h, y + 0.1 * h}, {x + 0.95 * h, y + 0.95 * h}}, false, Stroke::thick, Ink::met, {}});
    } else if (verdict == 1) {
        group.items.emplace_back(Path{{{x, y + 0.4 * h, -0.5}, {x + 0.45 * h, y + 0.5 * h, 0.5}, {x + 0.9 * h, y + 0.6 * h}},
                                      false,
                                      Stroke::thick,
                                      Ink::caution,
                                      {}});
    } else {
        line(group, x + 0.05 * h, y + 0.08 * h, x + 0.87 * h, y + 0.92 * h, Stroke::thick, Ink::stop);
        line(group, x + 0.05 * h, y + 0.92 * h, x + 0.87 * h, y + 0.08 * h, Stroke::thick, Ink::stop);
    }
}

std::string number3(double value)
{
    return typographic(significant(value, 3));
}

std::string numberTrimmed(double value, int decimals)
{
    std::string text = fixedDecimal(value, decimals);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.')
            text.pop_back();
    }
    return typographic(text);
}

Unit forceUnit(double largest_N)
{
    return largest_N >= 1000.0 ? Unit{1e-3, "kN"} : Unit{1.0, "N"};
}

Unit momentUnit(double largest_Nmm)
{
    return largest_Nmm >= 1e6 ? Unit{1e-6, "kN m"} : Unit{1e-3, "N m"};
}

std::string withUnit(double value, const Unit& unit)
{
    return number3(value * unit.factor) + " " + std::string(unit.name);
}

std::string shownCaseName(const Assessment& assessment, const SheetView& view)
{
    const int index = shownCase(assessment, view);
    if (view.case_index >= 0 || index < 0 || assessment.load_cases.size() < 2)
        return {};
    const CaseSummary& shown = assessment.load_cases[static_cast<std::size_t>(index)];
    return shown.name.empty() ? shown.id.value : shown.name;
}

std::string lifeText(double hours)
{
    if (!std::isfinite(hours))
        return std::string(labels::noLife);
    if (hours >= 1e6)
        return number3(hours / 1e6) + std::string(labels::million);
    return number3(hours) + std::string(labels::hours);
}

std::string elide(std::string_view text, double width_mm, double height_mm, Font font)
{
    std::string whole(text);
    if (textWidth_mm(whole, height_mm, font) <= width_mm)
        return whole;
    // Start of every character, so that no UTF-8 sequence is cut.
    std::vector<std::size_t> starts;
    for (std::size_t i = 0; i < whole.size(); ++i) {
        if ((static_cast<unsigned char>(whole[i]) & 0xC0U) != 0x80U)
            starts.push_back(i);
    }
    starts.push_back(whole.size());
    const std::size_t count = starts.size() - 1;
    for (std::size_t keep = count - 1; keep >= 2; --keep) {
        const std::size_t front = (keep + 1) / 2;
        const std::size_t back = keep - front;
        std::string cut = whole.substr(0, starts[front]) + "..." + whole.substr(starts[count - back]);
        if (textWidth_mm(cut, height_mm, font) <= width_mm)
            return cut;
    }
    return "...";
}

std::string partPath(const Part& part)
{
    return "parts." + part.id.value;
}

std::string supportPath(const Support& support)
{
    return "supports." + support.id.value;
}

double seatAt_mm(const Shaft& shaft, double x_mm)
{
    if (shaft.segments.empty())
        return 0.0;
    if (!std::isfinite(x_mm) || x_mm <= 0.0)
        return shaft.segments.front().outer_mm;
    if (x_mm >= shaft.length_mm())
        return shaft.segments.back().outerRight_mm();
    return shaftDiameterAt_mm(shaft, x_mm);
}

double supportOuter_mm(const Arrangement& arrangement, const Support& support)
{
    double outer = 0.0;
    if (support.bearing) {
        for (const SetRow& row : support.bearing->rows)
            outer = std::max(outer, row.row.outer_mm);
    }
    if (outer > 0.0)
        return outer;
    const double seat = seatAt_mm(arrangement.shaft, support.x_mm);
    return support.greatest_outer_mm.value_or(std::max(1.8 * seat, seat + 10.0));
}

double supportWidth_mm(const Arrangement& arrangement, const Support& support)
{
    if (support.bearing) {
        if (const double width = support.bearing->width_mm(); width > 0.0)
            return width;
    }
    return support.greatest_width_mm.value_or(std::max(0.45 * seatAt_mm(arrangement.shaft, support.x_mm), 6.0));
}

double component(const Vector3& force, Plane plane)
{
    switch (plane) {
    case Plane::y:
        return force.y;
    case Plane::z:
        return force.z;
    case Plane::resultant:
        return std::hypot(force.y, force.z);
    }
    return 0.0;
}

const CaseLoads* shownLoads(const Assessment& assessment, const SheetView& view)
{
    const int index = shownCase(assessment, view);
    return index >= 0 && static_cast<std::size_t>(index) < assessment.loads.size()
               ? &assessment.loads[static_cast<std::size_t>(index)]
               : nullptr;
}

const SupportCase* shownReaction(const SupportAssessment& support, const Assessment& assessment, const SheetView& view)
{
    const int index = shownCase(assessment, view);
    return index >= 0 && static_cast<std::size_t>(index) < support.cases.size() ? &support.cases[static_cast<std::size_t>(index)]
                                                                                : nullptr;
}

namespace
{

struct DiameterWords {
    std::string size, fit; ///< as written: diameter sign and number; tolerance class
};

DiameterWords diameterText(const Arrangement& arrangement, std::size_t index, double start_mm)
{
    const Segment& segment = arrangement.shaft.segments[index];
    DiameterWords words{"⌀" + numberTrimmed(segment.outer_mm, 3), {}};
    if (segment.outer_end_mm && *segment.outer_end_mm != segment.outer_mm) {
        words.size += "/" + numberTrimmed(*segment.outer_end_mm, 3);
        return words;
    }
    for (const Support& support : arrangement.supports) {
        if (!support.shaft_fit.empty() && support.x_mm >= start_mm && support.x_mm <= start_mm + segment.length_mm) {
            words.fit = support.shaft_fit;
            break;
        }
    }
    return words;
}

/// Stretches of [from, to] that none of the covers hides, widest first.
struct Stretch {
    double from, to;
    [[nodiscard]] double length() const { return to - from; }
};
std::vector<Stretch> uncovered(double from, double to, const std::vector<Stretch>& covers)
{
    std::vector<Stretch> open{{from, to}};
    for (const Stretch& cover : covers) {
        std::vector<Stretch> rest;
        for (const Stretch& one : open) {
            if (cover.to <= one.from || cover.from >= one.to) {
                rest.push_back(one);
                continue;
            }
            if (cover.from > one.from)
                rest.push_back({one.from, cover.from});
            if (cover.to < one.to)
                rest.push_back({cover.to, one.to});
        }
        open = std::move(rest);
    }
    std::stable_sort(open.begin(), open.end(), [](const Stretch& a, const Stretch& b) { return a.length() > b.length(); });
    return open;
}

Box traceBox(const Part& part, const ShaftCover& cover, double s)
{
    const double x = part.x_mm * s;
    const double reach = cover.trace_reach_mm * s + 0.5;
    const double half = cover.trace_rise_mm * s + 2.5; // two more lines 2 mm apart
    return {x - reach, -cover.trace_y_mm * s - half, x + reach, -cover.trace_y_mm * s + half};
}

/// Where lines of a segment's own features stand across the shaft: chamfer edges, grooves, ends of threads.
std::vector<Stretch> edgesOf(const Segment& segment, double x0, double s)
{
    std::vector<Stretch> edges;
    for (const Feature& feature : segment.features) {
        if (!std::isfinite(feature.position_mm) || !std::isfinite(feature.length_mm))
            continue;
        const bool right = feature.position_mm > 0.5 * segment.length_mm;
        const double at = x0 + feature.position_mm * s;
        const double length = feature.length_mm * s;
        const double end = x0 + segment.length_mm * s;
        if (feature.kind == FeatureKind::groove) {
            const double half = std::max(length, 0.7) / 2.0 + 0.2;
            edges.push_back({at + length / 2.0 - half, at + length / 2.0 + half});
        } else if (feature.kind == FeatureKind::chamfer && length >= 0.7) {
            edges.push_back(right ? Stretch{end - length, end} : Stretch{x0, x0 + length});
        } else if (feature.kind == FeatureKind::thread) {
            edges.push_back({at - 0.3, at + 0.3});
            edges.push_back({at + length - 0.3, at + length + 0.3});
        }
    }
    return edges;
}

/// Broken-out keyways of the shaft, sheet mm, a little larger than drawn.
void keywayBoxes(const Shaft& shaft, double s, std::vector<Box>& out)
{
    double start = 0.0;
    const Feature* first = nullptr;
    for (const Segment& segment : shaft.segments) {
        for (const Feature& feature : segment.features) {
            if (feature.kind != FeatureKind::keyway || !(feature.length_mm > 0.0) || !std::isfinite(feature.position_mm))
                continue;
            if (first == nullptr)
                first = &feature;
            const double radius = std::min(segment.outer_mm, segment.outerRight_mm()) / 2.0 * s;
            const double depth = std::min(feature.depth_mm > 0.0 ? feature.depth_mm * s : 0.25 * radius, 0.6 * radius);
            const double floor = radius - depth;
            const double under = std::min(std::max(1.1 * depth, 2.6), 0.75 * floor) + 1.0;
            const double x0 = (start + feature.position_mm) * s - 3.0;
            const double x1 = (start + feature.position_mm + feature.length_mm) * s + 3.0;
            const bool below = std::cos((feature.angle_deg - first->angle_deg) * degree) < -0.5;
            out.push_back(below ? Box{x0, -(radius + depth), x1, -(floor - under)} : Box{x0, floor - under, x1, radius + depth});
        }
        start += segment.length_mm;
    }
}

} // namespace

Layout layoutOf(const Arrangement& arrangement, const SheetView& view)
{
    Layout layout;
    const double s = view.scale;
    layout.scale = s;
    layout.length = arrangement.shaft.length_mm() * s;
    layout.right = layout.length;
    for (const Segment& segment : arrangement.shaft.segments)
        layout.largest_radius = std::max({layout.largest_radius, segment.outer_mm / 2.0 * s, segment.outerRight_mm() / 2.0 * s});
    layout.part_radius.reserve(arrangement.parts.size());
    layout.part_half.reserve(arrangement.parts.size());
    for (const Part& part : arrangement.parts) {
        const double seat = seatAt_mm(arrangement.shaft, part.x_mm) / 2.0 * s;
        const double radius = std::max(partOuterRadius_mm(part) * s, seat);
        const double half = partHalfLength_mm(part) * s;
        layout.part_radius.push_back(radius);
        layout.part_half.push_back(half);
        layout.largest_radius = std::max(layout.largest_radius, radius);
        layout.left = std::min(layout.left, part.x_mm * s - half);
        layout.right = std::max(layout.right, part.x_mm * s + half);
    }
    for (const Support& support : arrangement.supports) {
        const double radius = supportOuter_mm(arrangement, support) / 2.0 * s;
        const double half = supportWidth_mm(arrangement, support) / 2.0 * s;
        layout.support_radius.push_back(radius);
        layout.support_half.push_back(half);
        layout.largest_radius = std::max(layout.largest_radius, radius);
        layout.left = std::min(layout.left, support.x_mm * s - half);
        layout.right = std::max(layout.right, support.x_mm * s + half);
    }
    layout.support_bottom = -layout.largest_radius;
    for (const double radius : layout.support_radius) {
        const double reaction = view.loads ? 1.0 + longestArrow_mm + 0.5 : 0.5;
        layout.support_bottom = std::min(layout.support_bottom, -(radius + 1.0 + supportSign_mm + reaction));
    }

    keywayBoxes(arrangement.shaft, s, layout.busy);
    const Detail detail = viewDetail(arrangement, view);
    std::vector<Stretch> hides_lower, hides_upper, bearings;
    for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
        const Part& part = arrangement.parts[i];
        if (!std::isfinite(part.x_mm))
            continue;
        const ShaftCover cover = shaftCover(part, seatAt_mm(arrangement.shaft, part.x_mm) / 2.0, detail, s);
        const Stretch stretch{part.x_mm * s - layout.part_half[i], part.x_mm * s + layout.part_half[i]};
        if (cover.lower)
            hides_lower.push_back(stretch);
        if (cover.upper)
            hides_upper.push_back(stretch);
        if (cover.trace_reach_mm > 0.0 && detail >= Detail::tone_section)
            layout.busy.push_back(traceBox(part, cover, s));
    }
    for (std::size_t i = 0; i < arrangement.supports.size(); ++i) {
        const double x = arrangement.supports[i].x_mm * s;
        if (std::isfinite(x))
            bearings.push_back({x - layout.support_half[i] - 0.3, x + layout.support_half[i] + 0.3});
    }
    const auto isBusy = [&](const Box& box) {
        return std::any_of(layout.busy.begin(), layout.busy.end(), [&](const Box& other) { return box.overlaps(other); });
    };

    // Diameters: on the shaft where nothing covers it, below the axis if possible; upright or in two lines where it is narrow;
    // else on a leader that starts at an edge beside bearings and parts, not across them.
    if (view.dimensions) {
        const double h = view.dimension_height_mm;
        double start = 0.0;
        double leader_row = -(layout.largest_radius + 2.5 + h);
        std::vector<Stretch> arrows; // reactions
        std::vector<Stretch> lines;  // extension lines
        for (const Support& support : arrangement.supports)
            arrows.push_back({support.x_mm * s - 6.5, support.x_mm * s + 6.5});
        for (const Part& part : arrangement.parts)
            lines.push_back({part.x_mm * s - 1.0, part.x_mm * s + 1.0});
        lines.push_back({-0.8, 0.8});
        lines.push_back({layout.length - 0.8, layout.length + 0.8});
        std::vector<Stretch> shelves;
        bool leaders = false;
        for (std::size_t i = 0; i < arrangement.shaft.segments.size(); ++i) {
            const Segment& segment = arrangement.shaft.segments[i];
            const double x0 = start * s;
            const double x1 = (start + segment.length_mm) * s;
            const double radius = std::min(segment.outer_mm, segment.outerRight_mm()) / 2.0 * s;
            const DiameterWords words = diameterText(arrangement, i, start);
            start += segment.length_mm;
            if (!(x1 > x0) || !(radius > 0.0) || !std::isfinite(x1))
                continue;
            const bool bored = segment.boreLeft_mm() > 0.0 || segment.boreRight_mm() > 0.0;
            const std::string whole = words.fit.empty() ? words.size : words.size + " " + words.fit;
            DiameterLabel label;
            label.segment = i;
            label.text = {0.0, 0.0, h, whole, HAlign::centre, VAlign::middle, 0.0, Ink::ink, Font::drawing, false, bored};
            const std::vector<Stretch> own = edgesOf(segment, x0, s);
            const auto seen = [&](std::vector<Stretch> covers) {
                covers.insert(covers.end(), own.begin(), own.end());
                return uncovered(x0, x1, covers);
            };
            const std::vector<Stretch> lower = seen(hides_lower);
            const std::vector<Stretch> upper = bored ? std::vector<Stretch>{} : seen(hides_upper);
            bool placed = false;
            const auto settle = [&](double x, double y, double height, double angle, const std::string& text) {
                label.text.x = x;
                label.text.y = y;
                label.text.height_mm = height;
                label.text.angle_deg = angle;
                label.text.text = text;
                label.box = boxOf(label.text);
                placed = !isBusy(label.box);
                return placed;
            };
            const auto onShaft = [&](const Stretch& room, double height, double side) {
                const double middle = (room.from + room.to) / 2.0;
                const double width = textWidth_mm(whole, height);
                if (width + 2.0 <= room.length() && height + 1.6 <= radius) {
                    for (const double share : {0.5, 0.3, 0.7}) {
                        const double y = std::clamp(share * radius, height / 2.0 + 0.8,
                                                    std::max(radius - 0.6 - height / 2.0, height / 2.0 + 0.8));
                        if (settle(middle, side * y, height, 0.0, whole))
                            return true;
                    }
                }
                const double first = textWidth_mm(words.size, height);
                const double line_pitch = 1.45 * height;
                if (!words.fit.empty() && std::max(first, textWidth_mm(words.fit, height)) + 1.6 <= room.length() &&
                    line_pitch + height + 1.6 <= radius) {
                    const double y = side * radius / 2.0;
                    if (settle(middle, y + line_pitch / 2.0, height, 0.0, words.size)) {
                        label.second = label.text;
                        label.second->text = words.fit;
                        label.second->y = y - line_pitch / 2.0;
                        const Box low = boxOf(*label.second);
                        label.box = {std::min(label.box.x0, low.x0), low.y0, std::max(label.box.x1, low.x1), label.box.y1};
                        if (!isBusy(label.box))
                            return true;
                        label.second.reset();
                        placed = false;
                    }
                }
                return height + 1.2 <= room.length() && width + 2.0 <= radius &&
                       settle(middle, side * radius / 2.0, height, 90.0, whole);
            };
            for (const double height : {h, 0.72 * h}) {
                for (const Stretch& room : lower)
                    if (!placed && onShaft(room, height, -1.0))
                        break;
                for (const Stretch& room : upper)
                    if (!placed && onShaft(room, height, 1.0))
                        break;
                if (placed)
                    break;
            }
            if (!placed) {
                // Hidden by a part on both sides of the axis: told only when it is asked for.
                const bool hidden =
                    (lower.empty() || lower.front().length() < 0.5) && (upper.empty() || upper.front().length() < 0.5);
                const std::string subject = "shaft.segments." + segment.id.value;
                if (hidden && subject != view.selected)
                    continue;
                std::vector<Stretch> covers = hides_lower;
                covers.insert(covers.end(), bearings.begin(), bearings.end());
                for (std::size_t k = 0; k < arrangement.parts.size(); ++k) {
                    const double x = arrangement.parts[k].x_mm * s;
                    covers.push_back({x - layout.part_half[k], x + layout.part_half[k]});
                }
                const std::vector<Stretch> open = uncovered(x0, x1, covers);
                if (!open.empty() && open.front().length() >= 0.4) {
                    label.target_x = (open.front().from + open.front().to) / 2.0;
                } else { // the edge of the step where the thing above it ends
                    const auto reaches = [&](double x) {
                        double least = 1e9;
                        for (const Stretch& cover : covers) {
                            if (cover.from <= x && cover.to >= x)
                                least = std::min({least, x - cover.from, cover.to - x});
                        }
                        return least > 1e8 ? 0.0 : least;
                    };
                    label.target_x = reaches(x0) <= reaches(x1) ? x0 : x1;
                }
                label.target_y = -radius;
                label.leader = true;
                leaders = true;
                label.text.height_mm = h;
                label.text.text = whole;
                label.text.angle_deg = 0.0;
                label.text.v = VAlign::baseline;
                label.text.y = leader_row;
                const double width = textWidth_mm(whole, h);
                const auto hits = [](double from, double to, double margin) {
                    return [=](const Stretch& zone) { return from - margin < zone.to && to + margin > zone.from; };
                };
                // Bodies below the axis and support signs: a leader over them reads badly.
                const double t = label.target_x;
                const auto crosses = [&](double landing) {
                    const double run = leader_row - 1.0 + radius;
                    const auto over = [&](double from, double to, double low, double high) {
                        // x of the leader at both heights, as far as it gets there
                        const double a = t + (landing - t) * std::clamp((high + radius) / run, 0.0, 1.0);
                        const double b = t + (landing - t) * std::clamp((low + radius) / run, 0.0, 1.0);
                        return std::min(a, b) < to - 0.3 && std::max(a, b) > from + 0.3;
                    };
                    int count = 0;
                    for (std::size_t k = 0; k < arrangement.parts.size(); ++k) {
                        const double x = arrangement.parts[k].x_mm * s;
                        if (layout.part_radius[k] > radius + 0.5)
                            count +=
                                over(x - layout.part_half[k], x + layout.part_half[k], -layout.part_radius[k], -radius) ? 1 : 0;
                    }
                    for (std::size_t k = 0; k < arrangement.supports.size(); ++k) {
                        const double x = arrangement.supports[k].x_mm * s;
                        const double outer = layout.support_radius[k];
                        count += over(x - layout.support_half[k], x + layout.support_half[k], -outer, -radius) ? 1 : 0;
                        count += over(x - 5.0, x + 5.0, -outer - 1.0 - supportSign_mm, -outer) ? 1 : 0;
                    }
                    return count;
                };
                // Straight down if it can be, the text on either side; else the nearest place to which it leans. An extension
                // line of a part may be interrupted by the text, an arrow may not.
                double best = 1e9;
                double left_edge = 0.0;
                for (int step = 0; step <= 80; ++step) {
                    if (best <= 0.5 * step)
                        break;
                    for (const double sense : {1.0, -1.0}) {
                        const double landing = t + sense * 0.5 * step;
                        double cost = 0.5 * step;
                        if (cost >= best)
                            continue;
                        cost += 12.0 * crosses(landing);
                        for (const double from : {landing, landing - width}) {
                            const double to = from + width;
                            if (std::any_of(arrows.begin(), arrows.end(), hits(from, to, 0.5)) ||
                                std::any_of(shelves.begin(), shelves.end(), hits(from, to, 2.0)))
                                continue;
                            const double whole_cost = cost + (from < landing ? 0.3 : 0.0) +
                                                      (std::any_of(lines.begin(), lines.end(), hits(from, to, 0.5)) ? 4.0 : 0.0);
                            if (whole_cost < best) {
                                best = whole_cost;
                                label.landing_x = landing;
                                left_edge = from;
                            }
                        }
                    }
                }
                label.text.paper_ground = true;
                if (best > 1e8) {
                    label.landing_x = left_edge = layout.right + 3.0;
                    for (const Stretch& shelf : shelves)
                        label.landing_x = left_edge = std::max(left_edge, shelf.to + 3.0);
                }
                label.text.h = HAlign::left;
                label.text.x = left_edge;
                shelves.push_back({left_edge, left_edge + width});
                label.box = boxOf(label.text);
            }
            layout.diameters.push_back(std::move(label));
        }
        layout.leader_y = leaders ? leader_row - 1.0 : -layout.largest_radius;
    } else {
        layout.leader_y = -layout.largest_radius;
    }
    const double lowest = std::min(layout.leader_y, layout.support_bottom);
    const double row = std::max(2.0 * view.dimension_height_mm, view.dimension_height_mm + 3.5); // numbers below extension lines
    layout.chain_y = lowest - 1.8 - 1.4 * view.dimension_height_mm;
    const bool bare = arrangement.parts.empty() && arrangement.supports.empty(); // no chain of planes
    layout.segment_y = bare ? layout.chain_y : layout.chain_y - row;
    const std::size_t segments = arrangement.shaft.segments.size();
    layout.all_segments = segments > 1 && (bare || segments <= fewSegments);
    const bool segment_row = layout.all_segments || view.selected.rfind("shaft.segments.", 0) == 0 ||
                             std::any_of(arrangement.supports.begin(), arrangement.supports.end(), [&](const Support& support) {
                                 return support.role == Role::adjusted && view.selected == supportPath(support);
                             });
    layout.overall_y = segment_row ? layout.segment_y - row : layout.chain_y - row;
    return layout;
}

} // namespace inner

double sheetX_mm(const SheetView& view, double x_mm)
{
    return x_mm * view.scale;
}

int shownCase(const Assessment& assessment, const SheetView& view)
{
    const auto count = static_cast<int>(assessment.load_cases.size());
    if (count == 0)
        return -1;
    if (view.case_index >= 0)
        return std::min(view.case_index, count - 1);
    int best = -1;
    double least = 0.0;
    bool best_required = false;
    for (const SupportAssessment& support : assessment.supports) {
        if (!support.bearing || !support.bearing->L10_h || support.governing_case < 0 || support.governing_case >= count)
            continue;
        const bool required = support.bearing->required_L_h.value_or(0.0) > 0.0;
        const double ratio = required ? *support.bearing->L10_h / *support.bearing->required_L_h : *support.bearing->L10_h;
        if (best < 0 || (required && !best_required) || (required == best_required && ratio < least)) {
            best = support.governing_case;
            least = ratio;
            best_required = required;
        }
    }
    if (best >= 0)
        return best;
    double largest = -1.0;
    best = 0;
    for (const SupportAssessment& support : assessment.supports) {
        for (std::size_t i = 0; i < support.cases.size() && static_cast<int>(i) < count; ++i) {
            if (support.cases[i].radial_N > largest) {
                largest = support.cases[i].radial_N;
                best = static_cast<int>(i);
            }
        }
    }
    return best;
}

double largestForce_N(const Assessment& assessment, const SheetView& view)
{
    double largest = 0.0;
    if (const CaseLoads* loads = inner::shownLoads(assessment, view)) {
        for (const PartLoad& load : loads->parts)
            largest =
                std::max({largest, std::hypot(load.force_N.y, load.force_N.z), std::abs(load.force_N.x), load.worst_direction_N});
    }
    for (const SupportAssessment& support : assessment.supports) {
        if (const SupportCase* reaction = inner::shownReaction(support, assessment, view))
            largest = std::max({largest, std::hypot(reaction->force_N.y, reaction->force_N.z), std::abs(reaction->force_N.x)});
    }
    return std::isfinite(largest) ? largest : 0.0;
}

Detail viewDetail(const Arrangement& arrangement, const SheetView& view)
{
    double smallest = 0.0;
    for (const Support& support : arrangement.supports) {
        if (!support.bearing)
            continue;
        for (const SetRow& row : support.bearing->rows) {
            const double half = (row.row.outer_mm - row.row.bore_mm) / 2.0;
            if (half > 0.0 && (smallest == 0.0 || half < smallest))
                smallest = half;
        }
    }
    if (smallest == 0.0)
        return Detail::full_section;
    return detailFor(smallest * view.scale * view.pixels_per_mm, view.detail);
}

Extent drawingExtent(const Arrangement& arrangement, const SheetView& view)
{
    const inner::Layout layout = inner::layoutOf(arrangement, view);
    const double label = 2.0 * view.label_height_mm + 4.0;
    Extent extent;
    extent.above_mm = layout.largest_radius + (view.loads ? 1.0 + inner::longestArrow_mm + label : 4.0);
    extent.below_mm = view.dimensions ? -layout.overall_y + 3.0 : -layout.support_bottom + 1.0;
    extent.left_mm = -layout.left + (view.loads ? inner::labelsLeft_mm : 6.0);
    extent.right_mm = layout.right - layout.length + (view.loads ? inner::labelsRight_mm : 6.0);
    return extent;
}

} // namespace shaftwright::drawing
