#include "core/drawing/sheet_common.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::drawing
{

using namespace inner;

namespace
{

void move(Group& group, double dx)
{
    DisplayList one;
    one.groups.push_back(std::move(group));
    one.translate(dx, 0.0);
    group = std::move(one.groups.front());
}

/// A support whose bearing is still open: the space it may take, dashed.
Group placeholder(const Arrangement& arrangement, const Support& support, const SheetView& view)
{
    Group group;
    group.layer = Layer::bearing;
    const double half = supportWidth_mm(arrangement, support) / 2.0 * view.scale;
    const double outer = supportOuter_mm(arrangement, support) / 2.0 * view.scale;
    const double seat = seatAt_mm(arrangement.shaft, support.x_mm) / 2.0 * view.scale;
    if (outer > seat) {
        rectangle(group, {-half, seat, half, outer}, Stroke::hidden, Ink::ink2);
        rectangle(group, {-half, -outer, half, -seat}, Stroke::hidden, Ink::ink2);
    }
    return group;
}

DisplayList invitation(const SheetView& view)
{
    DisplayList list;
    Group axis;
    axis.layer = Layer::behind;
    line(axis, -5.0, 0.0, 105.0, 0.0, Stroke::centre, Ink::ink3);
    rectangle(axis, {0.0, -12.0, 100.0, 12.0}, Stroke::hidden, Ink::ink3);
    computeBounds(axis);
    list.groups.push_back(std::move(axis));
    Group words;
    words.layer = Layer::overlay;
    words.handle = "first_segment";
    words.items.emplace_back(Text{50.0, 3.0, 3.5, std::string(labels::inviteHead), HAlign::centre, VAlign::baseline, 0.0,
                                  Ink::ink, view.label_font, true, true});
    words.items.emplace_back(Text{50.0, -6.5, 2.5, std::string(labels::inviteLine), HAlign::centre, VAlign::baseline, 0.0,
                                  Ink::ink2, view.label_font, false, true});
    computeBounds(words);
    list.groups.push_back(std::move(words));
    return list;
}

} // namespace

DisplayList drawingList(const Arrangement& arrangement, const Assessment&, const SheetView& view)
{
    if (arrangement.shaft.segments.empty() && arrangement.parts.empty() && arrangement.supports.empty())
        return invitation(view);

    DisplayList list;
    const double s = view.scale;
    SectionStyle style;
    style.scale = s;
    style.detail = viewDetail(arrangement, view);

    double left = 0.0;
    double right = arrangement.shaft.length_mm() * s;
    for (Group& group : shaftOutline(arrangement.shaft, style)) {
        computeBounds(group);
        list.groups.push_back(std::move(group));
    }
    for (const Part& part : arrangement.parts) {
        if (!std::isfinite(part.x_mm))
            continue;
        Group group = partSection(part, seatAt_mm(arrangement.shaft, part.x_mm), style);
        if (group.items.empty())
            continue;
        group.subject = partPath(part);
        group.handle = "x_mm";
        move(group, part.x_mm * s); // its bounds with it
        left = std::min(left, group.bounds[0]);
        right = std::max(right, group.bounds[2]);
        list.groups.push_back(std::move(group));
    }
    for (const Support& support : arrangement.supports) {
        if (!std::isfinite(support.x_mm))
            continue;
        SectionStyle own = style;
        own.contact_lines = view.selected == supportPath(support);
        own.quiet_contact_lines = support.role == Role::adjusted;
        const bool chosen = support.bearing && !support.bearing->rows.empty();
        Group group = chosen ? bearingSection(*support.bearing, support.carries, own) : placeholder(arrangement, support, view);
        group.subject = supportPath(support);
        group.handle = "x_mm";
        group.layer = Layer::bearing;
        if (!chosen)
            computeBounds(group);
        move(group, support.x_mm * s);
        left = std::min(left, group.bounds[0]);
        right = std::max(right, group.bounds[2]);
        list.groups.push_back(std::move(group));
    }

    // The axis lies over everything turned and runs past both ends.
    Group axis;
    axis.layer = Layer::key;
    line(axis, left - 5.0, 0.0, right + 5.0, 0.0, Stroke::centre, Ink::ink);
    computeBounds(axis);
    list.groups.push_back(std::move(axis));

    if (!view.selected.empty()) {
        Box box{1e9, 1e9, -1e9, -1e9};
        for (const Group& group : list.groups) {
            if (group.subject == view.selected)
                box = {std::min(box.x0, group.bounds[0]), std::min(box.y0, group.bounds[1]), std::max(box.x1, group.bounds[2]),
                       std::max(box.y1, group.bounds[3])};
        }
        if (box.x0 < box.x1) {
            Group frame;
            frame.layer = Layer::overlay;
            roundRectangle(frame, {box.x0 - 1.5, box.y0 - 1.5, box.x1 + 1.5, box.y1 + 1.5}, 1.5, Stroke::thick, Ink::live);
            computeBounds(frame);
            list.groups.push_back(std::move(frame));
        }
    }
    return list;
}

} // namespace shaftwright::drawing
