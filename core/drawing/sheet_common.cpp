#include "core/drawing/sheet_common.h"

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

std::string supportName(const Support& support)
{
    return support.name.empty() ? support.id.value : support.name;
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

std::string diameterText(const Arrangement& arrangement, std::size_t index, double start_mm)
{
    const Segment& segment = arrangement.shaft.segments[index];
    std::string text = "⌀" + numberTrimmed(segment.outer_mm, 3);
    if (segment.outer_end_mm && *segment.outer_end_mm != segment.outer_mm)
        return text + "/" + numberTrimmed(*segment.outer_end_mm, 3);
    for (const Support& support : arrangement.supports) {
        if (!support.shaft_fit.empty() && support.x_mm >= start_mm && support.x_mm <= start_mm + segment.length_mm)
            return text + " " + support.shaft_fit;
    }
    return text;
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

    // Diameters: in the segment below the axis, else upright in the segment, else on a leader below the drawing.
    if (view.dimensions) {
        const double h = view.dimension_height_mm;
        double start = 0.0;
        double previous_end = -1e9;
        double leader_row = -(layout.largest_radius + 2.5 + h);
        struct Blocked {
            double x0, x1;
        };
        std::vector<Blocked> blocked;
        for (const Support& support : arrangement.supports)
            blocked.push_back({support.x_mm * s - 6.5, support.x_mm * s + 6.5});
        for (const Part& part : arrangement.parts)
            blocked.push_back({part.x_mm * s - 1.0, part.x_mm * s + 1.0});
        std::sort(blocked.begin(), blocked.end(), [](const Blocked& a, const Blocked& b) { return a.x0 < b.x0; });
        bool leaders = false;
        for (std::size_t i = 0; i < arrangement.shaft.segments.size(); ++i) {
            const Segment& segment = arrangement.shaft.segments[i];
            const double x0 = start * s;
            const double length = segment.length_mm * s;
            const double radius = std::min(segment.outer_mm, segment.outerRight_mm()) / 2.0 * s;
            DiameterLabel label;
            label.segment = i;
            label.text.text = diameterText(arrangement, i, start);
            label.text.font = Font::drawing;
            label.text.paper_ground = segment.boreLeft_mm() > 0.0 || segment.boreRight_mm() > 0.0;
            start += segment.length_mm;
            if (!(length > 0.0) || !(radius > 0.0))
                continue;
            bool placed = false;
            for (const double height : {h, 0.72 * h}) {
                label.text.height_mm = height;
                const double width = textWidth_mm(label.text.text, height);
                if (width + 2.0 <= length && height + 1.6 <= radius) {
                    label.text.x = x0 + length / 2.0;
                    label.text.y = -std::max(0.5 * radius, height / 2.0 + 0.8);
                    if (label.text.y - height / 2.0 < -(radius - 0.6))
                        label.text.y = -(radius - 0.6 - height / 2.0);
                    label.text.h = HAlign::centre;
                    label.text.v = VAlign::middle;
                    placed = true;
                } else if (height + 1.2 <= length && width + 2.0 <= radius) {
                    label.text.x = x0 + length / 2.0;
                    label.text.y = -radius / 2.0;
                    label.text.h = HAlign::centre;
                    label.text.v = VAlign::middle;
                    label.text.angle_deg = 90.0;
                    placed = true;
                }
                if (placed)
                    break;
            }
            if (!placed) {
                label.text.height_mm = h;
                const double width = textWidth_mm(label.text.text, h);
                double landing = std::max(x0 + length / 2.0, previous_end + 3.0);
                for (const Blocked& zone : blocked) {
                    if (landing - 0.5 < zone.x1 && landing + width + 0.5 > zone.x0)
                        landing = zone.x1 + 0.6;
                }
                label.leader = true;
                leaders = true;
                label.target_x = x0 + length / 2.0;
                label.target_y = -radius;
                label.text.x = landing;
                label.text.y = leader_row;
                previous_end = landing + width;
            }
            label.box = boxOf(label.text);
            layout.diameters.push_back(std::move(label));
        }
        layout.leader_y = leaders ? leader_row - 1.0 : -layout.largest_radius;
    } else {
        layout.leader_y = -layout.largest_radius;
    }
    const double lowest = std::min(layout.leader_y, layout.support_bottom);
    const double row = 2.0 * view.dimension_height_mm;
    layout.chain_y = lowest - 1.8 - 1.4 * view.dimension_height_mm;
    layout.segment_y = layout.chain_y - row;
    const bool segment_row = view.selected.rfind("shaft.segments.", 0) == 0;
    layout.overall_y = segment_row ? layout.segment_y - row : layout.segment_y;
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
    if (view.detail)
        return *view.detail;
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
    return detailFor(smallest * view.scale * view.pixels_per_mm);
}

Extent drawingExtent(const Arrangement& arrangement, const SheetView& view)
{
    const inner::Layout layout = inner::layoutOf(arrangement, view);
    const double label = 2.0 * view.label_height_mm + 4.0;
    Extent extent;
    extent.above_mm = layout.largest_radius + (view.loads ? 1.0 + inner::longestArrow_mm + label : 4.0);
    extent.below_mm = view.dimensions ? -layout.overall_y + 3.0 : -layout.support_bottom + 1.0;
    extent.left_mm = -layout.left + (view.loads ? 16.0 : 6.0);
    extent.right_mm = layout.right - layout.length + (view.loads ? 12.0 : 6.0);
    return extent;
}

} // namespace shaftwright::drawing
