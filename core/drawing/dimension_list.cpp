#include "core/drawing/sheet_common.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::drawing
{

using namespace inner;

namespace
{

constexpr double dimensionHead_mm = 3.0;
constexpr double dimensionHeadHalf_mm = 0.475; // 18 degrees included

/// Dimension line from x0 to x1 at y, arrows inside or outside; ends without room get an oblique stroke.
void dimensionLine(Group& group, double x0, double x1, double y, bool crowded_left, bool crowded_right)
{
    const double span = x1 - x0;
    line(group, x0, y, x1, y, Stroke::thin, Ink::ink);
    const auto stroke = [&](double x) { line(group, x - 1.1, y - 1.1, x + 1.1, y + 1.1, Stroke::medium, Ink::ink); };
    if (span >= 8.0) {
        head(group, x0, y, -1.0, 0.0, dimensionHead_mm, dimensionHeadHalf_mm, Ink::ink);
        head(group, x1, y, 1.0, 0.0, dimensionHead_mm, dimensionHeadHalf_mm, Ink::ink);
        return;
    }
    if (crowded_left) {
        stroke(x0);
    } else {
        head(group, x0, y, 1.0, 0.0, dimensionHead_mm, dimensionHeadHalf_mm, Ink::ink);
        line(group, x0 - 5.0, y, x0 - 2.5, y, Stroke::thin, Ink::ink);
    }
    if (crowded_right) {
        stroke(x1);
    } else {
        head(group, x1, y, -1.0, 0.0, dimensionHead_mm, dimensionHeadHalf_mm, Ink::ink);
        line(group, x1 + 2.5, y, x1 + 5.0, y, Stroke::thin, Ink::ink);
    }
}

/// Number of a dimension: above the line, smaller, shifted to a free side, or on a raised place with a thin leader.
void dimensionText(Group& group, Placer& placer, double x0, double x1, double y, const std::string& value, double height, int end)
{
    const double middle = (x0 + x1) / 2.0;
    const double small = 0.72 * height;
    struct Candidate {
        double x, y, height;
        bool leader;
    };
    const double width = textWidth_mm(value, height);
    const double narrow = textWidth_mm(value, small);
    // Over its line, smaller over its line, then outside the chain's end, then raised or lowered with a thin leader.
    std::vector<Candidate> candidates;
    if (width + 0.8 <= x1 - x0)
        candidates.push_back({middle, y + 1.0, height, false});
    if (narrow + 0.8 <= x1 - x0)
        candidates.push_back({middle, y + 1.0, small, false});
    if (end > 0)
        candidates.push_back({x1 + 5.5 + width / 2.0, y + 1.0, height, false});
    if (end < 0)
        candidates.push_back({x0 - 5.5 - width / 2.0, y + 1.0, height, false});
    candidates.push_back({middle, y - 2.3 - small, small, true}); // below: the extension lines end there
    candidates.push_back({middle, y + 2.0 + small, small, true});
    for (const Candidate& candidate : candidates) {
        const double w = candidate.height == height ? width : narrow;
        const Box box{candidate.x - w / 2.0, candidate.y, candidate.x + w / 2.0, candidate.y + candidate.height};
        if (!placer.isFree(box, 0.5))
            continue;
        placer.take(box);
        if (candidate.x > x1)
            line(group, x1, y, box.x1, y, Stroke::thin, Ink::ink);
        else if (candidate.x < x0)
            line(group, box.x0, y, x0, y, Stroke::thin, Ink::ink);
        if (candidate.leader)
            line(group, middle, y, middle, candidate.y > y ? candidate.y - 0.5 : candidate.y + candidate.height + 0.5,
                 Stroke::hairline, Ink::ink2);
        group.items.emplace_back(Text{candidate.x, candidate.y, candidate.height, value, HAlign::centre, VAlign::baseline, 0.0,
                                      Ink::ink, Font::drawing, false, false});
        return;
    }
}

} // namespace

std::vector<PlaneDimension> planeDimensions(const Arrangement& arrangement)
{
    struct Plane1 {
        double x;
        std::string subject, path;
    };
    const double length = arrangement.shaft.length_mm();
    std::vector<Plane1> planes;
    for (const Support& support : arrangement.supports)
        planes.push_back({support.x_mm, supportPath(support), supportPath(support) + ".x_mm"});
    for (const Part& part : arrangement.parts)
        planes.push_back({part.x_mm, partPath(part), partPath(part) + ".x_mm"});
    planes.erase(std::remove_if(planes.begin(), planes.end(), [](const Plane1& plane) { return !std::isfinite(plane.x); }),
                 planes.end());
    std::stable_sort(planes.begin(), planes.end(), [](const Plane1& a, const Plane1& b) { return a.x < b.x; });
    std::vector<PlaneDimension> chain;
    if (!(length > 0.0) || !std::isfinite(length))
        return chain;
    constexpr double same = 0.005; // closer planes print the same number
    double previous = 0.0;
    for (const Plane1& plane : planes) {
        if (plane.x - previous > same)
            chain.push_back({previous, plane.x, plane.subject, plane.path, previous, 1.0});
        previous = std::max(previous, plane.x);
    }
    if (!planes.empty() && length - previous > same) {
        const Plane1& last = planes.back();
        chain.push_back({previous, length, last.subject, last.path, length, -1.0});
    }
    const Segment& last = arrangement.shaft.segments.back();
    chain.push_back({0.0, length, "shaft.segments." + last.id.value, "shaft.segments." + last.id.value + ".length_mm",
                     -segmentStart_mm(arrangement.shaft, arrangement.shaft.segments.size() - 1), 1.0});
    return chain;
}

DisplayList dimensionList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view)
{
    DisplayList list;
    if (!view.dimensions || arrangement.shaft.segments.empty() || !(arrangement.shaft.length_mm() > 0.0))
        return list;
    const Layout layout = layoutOf(arrangement, view);
    const double s = view.scale;
    const double h = view.dimension_height_mm;

    // Extension lines: from the thing, or from below the reactions, to 2 mm past the last line.
    Group extension;
    extension.layer = Layer::dimension;
    const std::vector<PlaneDimension> chain = planeDimensions(arrangement);
    const bool has_chain = chain.size() > 1;
    const auto bottomAt = [&](double x, double radius) {
        for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
            if (std::abs(arrangement.parts[i].x_mm * s - x) < layout.part_half[i] + 0.3)
                radius = std::max(radius, layout.part_radius[i]);
        }
        for (std::size_t i = 0; i < arrangement.supports.size(); ++i) {
            if (std::abs(arrangement.supports[i].x_mm * s - x) < layout.support_half[i] + 0.3)
                radius = std::max(radius, layout.support_radius[i]);
        }
        return -(radius + 1.0);
    };
    const double right_face = arrangement.shaft.length_mm();
    line(extension, 0.0, bottomAt(0.0, seatAt_mm(arrangement.shaft, 0.0) / 2.0 * s), 0.0, layout.overall_y - 2.0, Stroke::thin,
         Ink::ink);
    line(extension, layout.length, bottomAt(layout.length, seatAt_mm(arrangement.shaft, right_face) / 2.0 * s), layout.length,
         layout.overall_y - 2.0, Stroke::thin, Ink::ink);
    for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
        const double x = arrangement.parts[i].x_mm * s;
        if (std::isfinite(x))
            line(extension, x, arrangement.parts.size() <= fewParts ? bottomAt(x, layout.part_radius[i]) : layout.chain_y + 2.0,
                 x, layout.chain_y - 2.0, Stroke::thin, Ink::ink);
    }
    for (const Support& support : arrangement.supports) {
        const double x = support.x_mm * s;
        if (std::isfinite(x))
            line(extension, x, std::min(layout.support_bottom, layout.chain_y + 2.0), x, layout.chain_y - 2.0, Stroke::thin,
                 Ink::ink);
    }
    computeBounds(extension);
    list.groups.push_back(std::move(extension));

    Placer placer;
    const std::size_t count = chain.size() - 1;
    for (std::size_t turn = 0; turn <= count && !chain.empty(); ++turn) {
        const std::size_t i = turn == 0 ? count : turn - 1; // the overall length takes its place first
        const PlaneDimension& dimension = chain[i];
        if (i < count && !has_chain)
            continue;
        Group group;
        group.layer = Layer::dimension;
        group.subject = dimension.subject;
        group.handle = dimension.path;
        const double x0 = dimension.from_mm * s;
        const double x1 = dimension.to_mm * s;
        const double y = i == count ? layout.overall_y : layout.chain_y;
        const bool crowded_left = i < count && i > 0;
        const bool crowded_right = i + 1 < count;
        dimensionLine(group, x0, x1, y, crowded_left, crowded_right);
        dimensionText(group, placer, x0, x1, y, numberTrimmed(dimension.to_mm - dimension.from_mm, 3), h,
                      i == count       ? 0
                      : i == 0         ? -1
                      : i + 1 == count ? 1
                                       : 0);
        computeBounds(group);
        list.groups.push_back(std::move(group));
    }

    // Lengths of segments have their own row, so that they can be typed where they stand.
    double start = 0.0;
    if (has_chain && layout.all_segments) // numbers keep off the line above
        placer.take({0.0, layout.chain_y - 0.1, layout.length, layout.chain_y + 0.1});
    const std::size_t last_segment = arrangement.shaft.segments.size() - 1;
    for (std::size_t i = 0; i <= last_segment; ++i) {
        const Segment& segment = arrangement.shaft.segments[i];
        const std::string subject = "shaft.segments." + segment.id.value;
        if ((layout.all_segments || subject == view.selected) && segment.length_mm > 0.0) {
            Group group;
            group.layer = Layer::dimension;
            group.subject = subject;
            group.handle = subject + ".length_mm";
            const double x0 = start * s;
            const double x1 = (start + segment.length_mm) * s;
            if (layout.all_segments) {
                // One extension line per step, at a bare shaft from the outline on.
                if (i < last_segment) {
                    const double outline =
                        -std::max(segment.outerRight_mm(), arrangement.shaft.segments[i + 1].outer_mm) / 2.0 * s - 1.0;
                    line(group, x1, has_chain ? layout.segment_y + 1.5 : outline, x1, layout.segment_y - 2.0, Stroke::thin,
                         Ink::ink);
                }
                dimensionLine(group, x0, x1, layout.segment_y, i > 0, i < last_segment);
                dimensionText(group, placer, x0, x1, layout.segment_y, numberTrimmed(segment.length_mm, 3), h,
                              i == 0              ? -1
                              : i == last_segment ? 1
                                                  : 0);
            } else {
                for (const double x : {x0, x1}) {
                    if (x > 0.01 && x < layout.length - 0.01)
                        line(group, x, layout.segment_y + 1.5, x, layout.segment_y - 2.0, Stroke::thin, Ink::ink);
                }
                dimensionLine(group, x0, x1, layout.segment_y, false, false);
                dimensionText(group, placer, x0, x1, layout.segment_y, numberTrimmed(segment.length_mm, 3), h, 1);
            }
            computeBounds(group);
            list.groups.push_back(std::move(group));
        }
        start += segment.length_mm;
    }

    // A selected adjusted support: how far apart the effective centres of the pair stand, on the row of the segment.
    for (const Support& support : arrangement.supports) {
        if (support.role != Role::adjusted || view.selected != supportPath(support))
            continue;
        std::vector<double> centres;
        for (const Support& other : arrangement.supports) {
            const SupportAssessment* found = assessment.find(other.id);
            if (other.role == Role::adjusted && found != nullptr && found->bearing && std::isfinite(found->bearing->centre_x_mm))
                centres.push_back(found->bearing->centre_x_mm);
        }
        if (centres.size() != 2 || std::abs(centres[1] - centres[0]) < 0.01)
            continue;
        Group group;
        group.layer = Layer::dimension;
        group.subject = supportPath(support);
        const double x0 = std::min(centres[0], centres[1]) * s;
        const double x1 = std::max(centres[0], centres[1]) * s;
        for (const double x : {x0, x1})
            line(group, x, -1.6, x, layout.segment_y - 2.0, Stroke::hairline, Ink::live);
        dimensionLine(group, x0, x1, layout.segment_y, false, false);
        dimensionText(group, placer, x0, x1, layout.segment_y, "(" + numberTrimmed(std::abs(centres[1] - centres[0]), 1) + ")", h,
                      1);
        computeBounds(group);
        list.groups.push_back(std::move(group));
    }

    for (const DiameterLabel& label : layout.diameters) {
        Group group;
        group.layer = Layer::dimension;
        group.subject = "shaft.segments." + arrangement.shaft.segments[label.segment].id.value;
        group.handle = group.subject + ".outer_mm";
        if (label.leader) {
            const double shelf_y = layout.leader_y;
            const double dx = label.target_x - label.landing_x;
            const double dy = label.target_y - shelf_y;
            const double length = std::hypot(dx, dy);
            line(group, label.landing_x, shelf_y, label.target_x, label.target_y, Stroke::thin, Ink::ink);
            head(group, label.target_x, label.target_y, dx / length, dy / length, dimensionHead_mm, dimensionHeadHalf_mm,
                 Ink::ink);
            line(group, label.box.x0, shelf_y, label.box.x1, shelf_y, Stroke::thin, Ink::ink);
        }
        if (label.second)
            group.items.emplace_back(*label.second);
        group.items.emplace_back(label.text);
        computeBounds(group);
        list.groups.push_back(std::move(group));
    }
    return list;
}

} // namespace shaftwright::drawing
