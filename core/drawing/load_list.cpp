#include "core/drawing/sheet_common.h"
#include "core/drawing/wheel_shapes.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::drawing
{

using namespace inner;

namespace
{

constexpr double nothing = 1e-6; ///< of the largest force: not drawn

struct Context {
    const Arrangement& arrangement;
    const Assessment& assessment;
    const SheetView& view;
    const Layout& layout;
    Placer placer;
    Unit unit;
    Unit moment_unit;
    double largest_N = 0.0;
    double least_x = 0.0, most_x = 0.0; ///< labels stay between

    [[nodiscard]] double arrowLength(double force_N) const
    {
        return largest_N > 0.0
                   ? std::clamp(longestArrow_mm * std::abs(force_N) / largest_N, shortestArrow_mm, 1.4 * longestArrow_mm)
                   : shortestArrow_mm;
    }
};

/// A long name in up to three lines, broken at spaces; what is still too long loses its middle.
std::string inLines(std::string rest, double width_mm, double height_mm, Font font)
{
    std::string out;
    for (int count = 1; textWidth_mm(rest, height_mm, font) > width_mm; ++count) {
        std::size_t cut = std::string::npos;
        for (std::size_t at = rest.find(' '); at != std::string::npos; at = rest.find(' ', at + 1)) {
            if (textWidth_mm(rest.substr(0, at), height_mm, font) <= width_mm)
                cut = at;
        }
        if (cut == std::string::npos || count == 3)
            return out + elide(rest, width_mm, height_mm, font);
        out += rest.substr(0, cut) + "\n";
        rest.erase(0, cut + 1);
    }
    return out + rest;
}

/// How far a label may go to be placed: rows away from the shaft, steps sideways, and whether it may interrupt extension lines.
struct Effort {
    int rows = 3;
    int steps = 0;
    bool through_lines = false;
};

/// A label of one or two lines beside an anchor: right, left, then rows further from the shaft, then further aside. False when
/// no place is free.
bool placeLabel(Group& group, Context& context, double x, double y, const std::string& value, const std::string& what,
                bool upwards, const Effort& effort)
{
    const double h = context.view.label_height_mm;
    const Font font = context.view.label_font;
    std::vector<std::string> lines; // under the number
    for (std::size_t from = 0; from < what.size();) {
        const std::size_t to = std::min(what.find('\n', from), what.size());
        lines.push_back(what.substr(from, to - from));
        from = to + 1;
    }
    double width = textWidth_mm(value, h, font) * 1.06;
    for (const std::string& one : lines)
        width = std::max(width, textWidth_mm(one, 0.8 * h, font));
    const double depth = 1.35 * h * static_cast<double>(lines.size());
    const double step = h + depth + 0.6;
    for (int aside = 0; aside <= effort.steps; ++aside) {
        // Loads give way upwards, reactions downwards: away from the shaft; a reaction without room there goes up beside its
        // sign.
        for (int k = 0; k <= effort.rows + 1; ++k) {
            const double rows = k <= effort.rows ? k : -1;
            if (upwards && rows < 0.0)
                break;
            const double shift = (upwards ? step : -step) * rows;
            for (const bool right : {true, false}) {
                const double away = 1.8 + 4.5 * aside;
                const double x0 = right ? x + away : x - away - width;
                const double top = y + shift;
                const Box box{x0, top - h - depth - 0.3, x0 + width, top};
                if (box.x0 < context.least_x || box.x1 > context.most_x || !context.placer.isFree(box, 0.3, effort.through_lines))
                    continue;
                context.placer.take(box);
                const HAlign align = right ? HAlign::left : HAlign::right;
                const double tx = right ? x0 : x0 + width;
                group.items.emplace_back(Text{tx, top - h, h, value, align, VAlign::baseline, 0.0, Ink::live, font, true, true});
                for (std::size_t i = 0; i < lines.size(); ++i)
                    group.items.emplace_back(Text{tx, top - (2.25 + 1.35 * static_cast<double>(i)) * h, 0.8 * h, lines[i], align,
                                                  VAlign::baseline, 0.0, Ink::ink2, font, false, true});
                if (shift != 0.0 || aside > 0) // a thin leader says what the number belongs to
                    line(group, x, y - h / 2.0, right ? x0 - 0.4 : x0 + width + 0.4, top - h / 2.0, Stroke::hairline, Ink::ink2);
                return true;
            }
        }
    }
    return false;
}

void supportSign(Group& group, const Support& support, double x, double y)
{
    const auto triangle = [&](double tip_x, double tip_y) {
        group.items.emplace_back(Path{{{tip_x, tip_y}, {tip_x - 3.0, tip_y - 5.0}, {tip_x + 3.0, tip_y - 5.0}},
                                      true,
                                      Stroke::medium,
                                      Ink::ink,
                                      Ink::paper});
    };
    const auto ground = [&](double gy) {
        line(group, x - 4.5, gy, x + 4.5, gy, Stroke::medium, Ink::ink);
        for (int i = 0; i < 6; ++i) {
            const double gx = x - 3.1 + 1.5 * i;
            line(group, gx, gy, gx - 1.0, gy - 1.0, Stroke::thin, Ink::ink);
        }
    };
    const auto stop = [&](double sx) { line(group, sx, y - 6.1, sx, y - 3.1, Stroke::thick, Ink::ink); };
    const bool plus = support.carries.value_or(Carries::plus) == Carries::plus;
    switch (support.role) {
    case Role::locating:
        triangle(x, y);
        ground(y - 5.0);
        break;
    case Role::non_locating:
        triangle(x, y);
        ground(y - 6.1);
        break;
    case Role::adjusted:
        triangle(x, y);
        ground(y - 6.1);
        stop(plus ? x + 3.3 : x - 3.3);
        break;
    case Role::end_play:
        triangle(x, y);
        ground(y - 6.1);
        stop(x + 4.0);
        stop(x - 4.0);
        break;
    case Role::axial_only: {
        // Holds along x only: a triangle lying on its side against a wall on the side towards which it holds.
        const double d = plus ? 1.0 : -1.0;
        group.items.emplace_back(
            Path{{{x, y - 3.0}, {x + d * 4.0, y - 0.6}, {x + d * 4.0, y - 5.4}}, true, Stroke::medium, Ink::ink, Ink::paper});
        line(group, x + d * 4.0, y, x + d * 4.0, y - 6.0, Stroke::medium, Ink::ink);
        for (int i = 0; i < 4; ++i)
            line(group, x + d * 4.0, y - 0.6 - 1.5 * i, x + d * 5.0, y - 1.6 - 1.5 * i, Stroke::thin, Ink::ink);
        break;
    }
    }
}

/// A three-quarter turn with one head about (x, y).
void momentArc(Group& group, double x, double y, bool counter_clockwise)
{
    const double r = 4.5;
    if (counter_clockwise) {
        arc(group, x, y, r, -45.0, 215.0, Stroke::thick, Ink::live);
        head(group, x - r * 0.707, y - r * 0.707, 0.707, -0.707, arrowHead_mm, arrowHeadHalf_mm, Ink::live);
    } else {
        arc(group, x, y, r, 225.0, -35.0, Stroke::thick, Ink::live);
        head(group, x + r * 0.707, y - r * 0.707, -0.707, -0.707, arrowHead_mm, arrowHeadHalf_mm, Ink::live);
    }
}

const Part* partOf(const Arrangement& arrangement, const PartId& id, std::size_t& index)
{
    for (index = 0; index < arrangement.parts.size(); ++index) {
        if (arrangement.parts[index].id == id)
            return &arrangement.parts[index];
    }
    return nullptr;
}

void itemNumber(Group& group, Context& context, double x, double y, std::size_t number)
{
    for (const double shift : {0.0, 5.6, 11.2, 16.8}) {
        const Box box{x - 2.6, y + shift, x + 2.6, y + shift + 5.2};
        if (shift < 16.0 && !context.placer.isFree(box))
            continue;
        context.placer.take(box);
        if (shift > 0.0)
            line(group, x, y, x, y + shift, Stroke::hairline, Ink::ink2);
        group.items.emplace_back(Circle{x, y + shift + 2.6, 2.5, Stroke::thin, Ink::ink, Ink::paper});
        group.items.emplace_back(Text{x, y + shift + 2.6, 2.2, std::to_string(number), HAlign::centre, VAlign::middle, 0.0,
                                      Ink::ink, context.view.label_font, false, false});
        return;
    }
}

} // namespace

DisplayList loadList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view)
{
    DisplayList list;
    if (arrangement.shaft.segments.empty() && arrangement.parts.empty() && arrangement.supports.empty())
        return list;
    const Layout layout = layoutOf(arrangement, view);
    const double s = view.scale;
    const int case_index = shownCase(assessment, view);
    const CaseLoads* loads = view.loads ? shownLoads(assessment, view) : nullptr;
    const double largest = largestForce_N(assessment, view);

    Context context{arrangement, assessment, view, layout, {}, {}, {}, 0.0, 0.0, 0.0};
    // The heads of the strips leave room at the left; at the right the end view begins.
    context.least_x = -std::max(-layout.left + (view.loads ? labelsLeft_mm : 6.0), stripHead_mm - 1.0);
    context.most_x = layout.right + labelsRight_mm;
    context.largest_N = view.held_force_N > 0.0 ? view.held_force_N : largest;
    context.unit = forceUnit(context.largest_N);
    double largest_moment = 0.0;
    if (loads != nullptr) {
        for (const PartLoad& load : loads->parts)
            largest_moment = std::max(largest_moment, std::abs(load.torque_Nmm));
    }
    context.moment_unit = momentUnit(largest_moment);

    // What labels keep clear of.
    for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
        const double x = arrangement.parts[i].x_mm * s;
        if (layout.part_half[i] > 0.0)
            context.placer.take(
                {x - layout.part_half[i], -layout.part_radius[i], x + layout.part_half[i], layout.part_radius[i]});
        if (view.dimensions && arrangement.parts.size() <= fewParts)
            context.placer.take({x - 0.3, layout.chain_y, x + 0.3, -layout.part_radius[i]}, true);
    }
    for (std::size_t i = 0; i < arrangement.supports.size(); ++i) {
        const double x = arrangement.supports[i].x_mm * s;
        context.placer.take(
            {x - layout.support_half[i], -layout.support_radius[i], x + layout.support_half[i], layout.support_radius[i]});
        context.placer.take({x - 5.0, -layout.support_radius[i] - 1.0 - supportSign_mm, x + 5.0, -layout.support_radius[i]});
    }
    if (view.dimensions) {
        context.placer.take({-0.3, layout.overall_y, 0.3, 0.0}, true);
        context.placer.take({layout.length - 0.3, layout.overall_y, layout.length + 0.3, 0.0}, true);
    }
    if (view.dimensions) // rows of dimensions
        context.placer.take(
            {layout.left - 40.0, layout.overall_y - 3.0, layout.right + 40.0, layout.chain_y + 1.2 + view.dimension_height_mm});
    for (const DiameterLabel& label : layout.diameters) {
        context.placer.take(label.box);
        if (!label.leader)
            continue;
        constexpr int pieces = 8; // a leaning line as small boxes
        const double dx = (label.landing_x - label.target_x) / pieces;
        const double dy = (layout.leader_y - label.target_y) / pieces;
        for (int i = 0; i < pieces; ++i) {
            const double x = label.target_x + dx * i;
            const double y = label.target_y + dy * i;
            context.placer.take({std::min(x, x + dx) - 0.3, y + dy, std::max(x, x + dx) + 0.3, y}, true);
        }
    }

    if (case_index >= 0 && view.loads) { // the sense of rotation, drawn last
        const double x = layout.left - 7.0;
        const double r = std::clamp(seatAt_mm(arrangement.shaft, 0.0) / 2.0 * s * 0.6, 4.0, 12.0);
        const double width = 6.5 * view.label_height_mm; // "1 450 /min"
        const double end = std::min(x + width / 2.0, -1.2);
        context.placer.take({x - 4.0, -r - 1.5, x + 3.0, r + 1.5});
        context.placer.take({end - width, r + 1.8, end, r + 1.8 + view.label_height_mm});
    }

    // Arrows first, so that every label knows all of them.
    enum class Place { beside, along, torque };
    struct Pending {
        std::size_t group = 0;
        double x = 0.0, y = 0.0;
        std::string value, what;
        double force_N = 0.0;
        std::size_t item = 0; ///< number of the part; 0: none
        bool selected = false;
        Place place = Place::beside;
        double length = 0.0; ///< along: of the arrow, signed along x; its tail stands at (x, y). Torque: y is its sense along x,
                             ///< length the radius of the seat
        bool done = false;
    };
    std::vector<Pending> pending;
    std::vector<Box> moment_arcs;

    if (loads != nullptr) {
        for (const PartLoad& load : loads->parts) {
            std::size_t index = 0;
            const Part* part = partOf(arrangement, load.part, index);
            if (part == nullptr || !std::isfinite(load.x_mm))
                continue;
            Group group;
            group.subject = partPath(*part);
            group.layer = Layer::load;
            const double x = load.x_mm * s;
            double radius = layout.part_radius[index];
            if (layout.part_half[index] <= 0.0) { // a force on a tool or drum stands on its outline, not inside it
                for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
                    if (std::abs(arrangement.parts[i].x_mm * s - x) <= layout.part_half[i])
                        radius = std::max(radius, layout.part_radius[i]);
                }
            }
            const bool selected = view.selected == group.subject;
            const std::string what(part->name.empty() ? labels::kind(*part) : std::string_view(part->name));
            const std::size_t own = list.groups.size();

            if (load.distributed) {
                const double end = load.end_mm * s;
                const double q0 = component({load.q0_N_mm.x, load.q0_N_mm.y, load.q0_N_mm.z}, view.plane);
                const double q1 = component({load.q1_N_mm.x, load.q1_N_mm.y, load.q1_N_mm.z}, view.plane);
                const double q = std::max(std::abs(q0), std::abs(q1));
                if (q > 0.0 && end > x) {
                    const int count = std::clamp(static_cast<int>((end - x) / 6.0), 2, 12);
                    Path top{{}, false, Stroke::thin, Ink::live, {}};
                    for (int i = 0; i <= count; ++i) {
                        const double t = static_cast<double>(i) / count;
                        const double value = q0 + (q1 - q0) * t;
                        const double ax = x + (end - x) * t;
                        const double base = seatAt_mm(arrangement.shaft, ax / s) / 2.0 * s + 0.8;
                        const double length = 10.0 * std::abs(value) / q;
                        top.vertices.push_back({ax, base + length});
                        if (length > 3.4) {
                            if (value < 0.0 || view.plane == Plane::resultant)
                                arrow(group, ax, base + length, ax, base, Ink::live, Stroke::thin);
                            else
                                arrow(group, ax, base, ax, base + length, Ink::live, Stroke::thin);
                        }
                    }
                    const double y = top.vertices.front().y;
                    group.items.emplace_back(std::move(top));
                    context.placer.take({x, 0.0, end, y});
                    // In N/mm whatever the unit of the forces: per mm the figures stay readable.
                    const std::string value = q0 == q1 ? number3(q) : number3(std::abs(q0)) + " ... " + number3(std::abs(q1));
                    pending.push_back({own, x - 1.0, y + 2.0 * view.label_height_mm, value + " N/mm", what,
                                       q * (load.end_mm - load.x_mm), index + 1, selected});
                }
            } else {
                const double force = component(load.force_N, view.plane);
                // Arrows of one place stand side by side; further meshes of the same wheel leave the name to the first.
                double before = 0.0;
                bool named = false;
                for (const PartLoad* other = loads->parts.data(); other != &load; ++other) {
                    if (other->distributed || !(std::abs(other->x_mm - load.x_mm) * s < 1.0))
                        continue;
                    before += 1.0;
                    named = named || other->part == load.part;
                }
                const auto drawForce = [&](double ax, double value, const std::string& text, const std::string& below) {
                    const double length = context.arrowLength(value);
                    const double foot = radius + 1.0;
                    if (value < 0.0 || view.plane == Plane::resultant)
                        arrow(group, ax, foot + length, ax, foot, Ink::live);
                    else
                        arrow(group, ax, foot, ax, foot + length, Ink::live);
                    context.placer.take({ax - 0.8, foot, ax + 0.8, foot + length});
                    pending.push_back({own, ax, foot + length, text, below, std::abs(value), index + 1, selected});
                };
                if (std::isfinite(force) && std::abs(force) > nothing * context.largest_N) {
                    std::string text = withUnit(std::abs(force), context.unit);
                    if (view.plane == Plane::resultant) {
                        double angle = std::atan2(load.force_N.z, load.force_N.y) * 57.29577951308232;
                        angle = angle < -0.5 ? angle + 360.0 : std::max(angle, 0.0);
                        text += ", " + numberTrimmed(angle, 0) + "°";
                    }
                    drawForce(x + 3.0 * before, force, text, named ? std::string() : what);
                }
                if (load.worst_direction_N > nothing * context.largest_N && std::isfinite(load.worst_direction_N)) {
                    const bool second = std::isfinite(force) && std::abs(force) > nothing * context.largest_N;
                    drawForce(x + 3.0 * before + (second ? 3.0 : 0.0), -load.worst_direction_N,
                              withUnit(load.worst_direction_N, context.unit),
                              (second ? std::string() : what + "\n") + std::string(labels::anyDirection));
                }

                // Axial force at the radius where it acts; the number stands beside the part.
                if (std::isfinite(load.force_N.x) && std::abs(load.force_N.x) > nothing * context.largest_N) {
                    const double length = context.arrowLength(load.force_N.x);
                    const double acting = actingDiameter_mm(*part) / 2.0 * s;
                    const double seat = seatAt_mm(arrangement.shaft, part->x_mm) / 2.0 * s;
                    double y = acting > seat ? acting : 0.45 * seat;
                    if (const auto* free = std::get_if<PointLoad>(&part->body)) {
                        const double offset = view.plane == Plane::z   ? free->offset_z_mm
                                              : view.plane == Plane::y ? free->offset_y_mm
                                                                       : std::hypot(free->offset_y_mm, free->offset_z_mm);
                        y = offset * s;
                    }
                    const double direction = load.force_N.x > 0.0 ? 1.0 : -1.0;
                    // Beside the part on the side towards which it pushes, the tail on the face; where a bearing or another
                    // part stands there, on the other side with its tip on the face.
                    const auto runsInto = [&](double from, double to) {
                        const double low = std::min(from, to);
                        const double high = std::max(from, to);
                        const auto within = [&](double at, double half, double outer) {
                            return std::abs(y) - 0.9 < outer && low < at + half && high > at - half;
                        };
                        for (std::size_t k = 0; k < arrangement.supports.size(); ++k) {
                            if (within(arrangement.supports[k].x_mm * s, layout.support_half[k], layout.support_radius[k]))
                                return true;
                        }
                        for (std::size_t k = 0; k < arrangement.parts.size(); ++k) {
                            if (k != index && layout.part_half[k] > 0.0 &&
                                within(arrangement.parts[k].x_mm * s, layout.part_half[k], layout.part_radius[k]))
                                return true;
                        }
                        return false;
                    };
                    const double face = layout.part_half[index] + 1.0;
                    double tail = x + direction * face;
                    if (runsInto(tail, tail + direction * length) &&
                        !runsInto(x - direction * face, x - direction * (face + length)))
                        tail = x - direction * (face + length);
                    arrow(group, tail, y, tail + direction * length, y, Ink::live);
                    context.placer.take(
                        {std::min(tail, tail + direction * length), y - 0.9, std::max(tail, tail + direction * length), y + 0.9});
                    const std::string text = withUnit(std::abs(load.force_N.x), context.unit);
                    pending.push_back({own,
                                       tail,
                                       y,
                                       text,
                                       {},
                                       std::abs(load.force_N.x),
                                       index + 1,
                                       selected,
                                       Place::along,
                                       direction * length,
                                       false});
                }
                // Torque: moment vector with two heads along the axis.
                if (std::isfinite(load.torque_Nmm) && largest_moment > 0.0 &&
                    std::abs(load.torque_Nmm) > nothing * largest_moment) {
                    const std::string text = withUnit(std::abs(load.torque_Nmm), context.moment_unit);
                    pending.push_back({own, x, load.torque_Nmm > 0.0 ? 1.0 : -1.0, text, {}, 0.0, index + 1, selected});
                    pending.back().place = Place::torque;
                    pending.back().length = seatAt_mm(arrangement.shaft, part->x_mm) / 2.0 * s;
                }
                // Couples given as such, in the plane that is shown: My turns clockwise on the sheet (y points away), Mz
                // counter-clockwise.
                // What an axial force makes at its radius is told by its arrow already.
                double my = 0.0;
                double mz = 0.0;
                if (const auto* free = std::get_if<PointLoad>(&part->body)) {
                    my = load.moment_Nmm.y - free->offset_z_mm * load.force_N.x;
                    mz = load.moment_Nmm.z + free->offset_y_mm * load.force_N.x;
                } else if (std::holds_alternative<Coupling>(part->body)) {
                    my = load.moment_Nmm.y;
                    mz = load.moment_Nmm.z;
                }
                if (my != 0.0 || mz != 0.0) {
                    const double m = view.plane == Plane::z ? my : view.plane == Plane::y ? mz : std::hypot(my, mz);
                    if (std::isfinite(m) && std::abs(m) > 1e-3) {
                        momentArc(group, x, 0.0, view.plane == Plane::y ? m > 0.0 : m < 0.0);
                        context.placer.take({x - 4.8, -4.8, x + 4.8, 4.8});
                        moment_arcs.push_back({x - 4.8, -4.8, x + 4.8, 4.8});
                        pending.push_back({own,
                                           x + 5.0,
                                           view.label_height_mm / 2.0,
                                           withUnit(std::abs(m), momentUnit(std::abs(m))),
                                           {},
                                           0.0,
                                           index + 1,
                                           selected});
                    }
                }
            }
            list.groups.push_back(std::move(group));
        }
    }

    // Supports: sign, reaction below it, axial reaction beside it, effective centre on the axis.
    for (std::size_t i = 0; i < arrangement.supports.size(); ++i) {
        const Support& support = arrangement.supports[i];
        if (!std::isfinite(support.x_mm))
            continue;
        Group group;
        group.subject = supportPath(support);
        group.handle = "x_mm";
        group.layer = Layer::support;
        const std::size_t own = list.groups.size();
        const double x = support.x_mm * s;
        const double tip = -(layout.support_radius[i] + 1.0);
        supportSign(group, support, x, tip);
        const SupportAssessment* found = assessment.find(support.id);
        const SupportCase* reaction = found != nullptr && view.loads ? shownReaction(*found, assessment, view) : nullptr;
        const std::string letter = elide(support.id.value, 18.0, view.label_height_mm, view.label_font);
        bool lettered = false;
        if (reaction != nullptr) {
            double centre = x;
            if (found->bearing && std::abs(found->bearing->centre_x_mm - support.x_mm) > 0.05 &&
                std::isfinite(found->bearing->centre_x_mm)) {
                centre = found->bearing->centre_x_mm * s;
                group.items.emplace_back(Circle{centre, 0.0, 1.1, Stroke::thin, Ink::ink, Ink::paper});
            }
            const double force = component(reaction->force_N, view.plane);
            const double below = tip - supportSign_mm;
            if (std::isfinite(force) && std::abs(force) > nothing * context.largest_N) {
                const double length = context.arrowLength(force);
                if (force > 0.0 || view.plane == Plane::resultant)
                    arrow(group, x, below - length, x, below, Ink::live);
                else
                    arrow(group, x, below, x, below - length, Ink::live);
                context.placer.take({x - 0.8, below - length, x + 0.8, below});
                std::string text = letter + "  " + withUnit(std::abs(force), context.unit);
                if (view.plane == Plane::resultant)
                    text += ", " + numberTrimmed(std::fmod(reaction->radial_angle_deg + 360.0, 360.0), 0) + "°";
                pending.push_back({own,
                                   x,
                                   below - std::min(length, longestArrow_mm) + view.label_height_mm + 1.0,
                                   text,
                                   {},
                                   std::abs(force),
                                   0,
                                   view.selected == group.subject});
                lettered = true;
            }
            if (std::isfinite(reaction->force_N.x) && std::abs(reaction->force_N.x) > nothing * context.largest_N) {
                const double length = context.arrowLength(reaction->force_N.x);
                const double direction = reaction->force_N.x > 0.0 ? 1.0 : -1.0;
                const double tail = x + direction * 5.5;
                arrow(group, tail, tip - 2.5, tail + direction * length, tip - 2.5, Ink::live);
                context.placer.take(
                    {std::min(tail, tail + direction * length), tip - 3.4, std::max(tail, tail + direction * length), tip - 1.6});
                pending.push_back(
                    {own,
                     tail,
                     tip - 2.5,
                     (lettered ? std::string() : letter + "  ") + withUnit(std::abs(reaction->force_N.x), context.unit),
                     {},
                     std::abs(reaction->force_N.x),
                     0,
                     view.selected == group.subject,
                     Place::along,
                     direction * length,
                     false});
                lettered = true;
            }
        }
        if (!lettered)
            pending.push_back({own, x + 4.0, tip - 1.5, letter, {}, 1e300, 0, true});
        list.groups.push_back(std::move(group));
    }

    // Labels. Many loads: full text for the selected part and the five largest, item numbers for the rest.
    std::size_t part_labels = 0;
    for (const Pending& one : pending)
        part_labels += one.item > 0 && one.place == Place::beside ? 1U : 0U;
    const bool many = part_labels > fewParts;
    std::stable_sort(pending.begin(), pending.end(), [](const Pending& a, const Pending& b) {
        return a.selected != b.selected ? a.selected : a.force_N > b.force_N;
    });
    const double h = view.label_height_mm;
    const auto put = [&](Group& group, const Box& box, const std::string& text, bool ground) {
        context.placer.take(box);
        group.items.emplace_back(
            Text{box.x0, box.y0, h, text, HAlign::left, VAlign::baseline, 0.0, Ink::live, view.label_font, true, ground});
    };
    // A number without a place of its own becomes a line of the thing's other label, the one with the name.
    const auto joinLabel = [&](const Pending& one, const std::string& text) {
        Pending* host = nullptr;
        for (Pending& other : pending) {
            if (other.group == one.group && other.place == Place::beside &&
                (host == nullptr || host->what.rfind(labels::anyDirection, 0) == 0))
                host = &other;
        }
        if (host != nullptr)
            host->what += (host->what.empty() ? "" : "\n") + text;
    };
    // Along an arrow of an axial force: above it, below it, before its tip. Without room the number joins the label of the same
    // thing as a second line.
    for (Pending& one : pending) {
        if (one.place != Place::along || (many && !one.selected))
            continue;
        one.done = true;
        const double width = textWidth_mm(one.value, h, view.label_font) * 1.06;
        const double tip_x = one.x + one.length;
        const double near = one.length > 0.0 ? one.x : one.x - width;
        const double beyond = one.length > 0.0 ? tip_x + 1.0 : tip_x - 1.0 - width;
        const Box candidates[] = {{near, one.y + 1.4, near + width, one.y + 1.4 + h},
                                  {near, one.y - 1.4 - h, near + width, one.y - 1.4},
                                  {beyond, one.y - h / 2.0, beyond + width, one.y + h / 2.0}};
        const auto* place = std::find_if(std::begin(candidates), std::end(candidates), [&](const Box& box) {
            return box.x0 >= context.least_x && box.x1 <= context.most_x && context.placer.isFree(box, 0.25);
        });
        if (place != std::end(candidates)) {
            put(list.groups[one.group], *place, one.value, true);
            continue;
        }
        joinLabel(one, std::string(labels::axialShort) + one.value);
    }
    // Torques stand on the white shaft: the part's own body does not count as an obstacle, other labels do.
    Placer on_shaft;
    for (const DiameterLabel& label : layout.diameters)
        on_shaft.take(label.box);
    // Edges that are seen: steps of the shaft where no part hides them, faces of the parts.
    const Detail detail = viewDetail(arrangement, view);
    std::vector<ShaftCover> covers;
    covers.reserve(arrangement.parts.size());
    for (const Part& part : arrangement.parts)
        covers.push_back(shaftCover(part, seatAt_mm(arrangement.shaft, part.x_mm) / 2.0, detail, s));
    const auto hidden = [&](double x) {
        for (std::size_t i = 0; i < covers.size(); ++i) {
            if (covers[i].lower && covers[i].upper && std::abs(arrangement.parts[i].x_mm * s - x) < layout.part_half[i])
                return true;
        }
        return false;
    };
    double edge_x = 0.0;
    for (std::size_t i = 0; i <= arrangement.shaft.segments.size(); ++i) {
        if (!hidden(edge_x))
            on_shaft.take({edge_x - 0.2, -layout.largest_radius, edge_x + 0.2, layout.largest_radius});
        if (i < arrangement.shaft.segments.size())
            edge_x += arrangement.shaft.segments[i].length_mm * s;
    }
    for (std::size_t i = 0; i < covers.size(); ++i) {
        for (const double side : {-1.0, 1.0}) {
            const double x = arrangement.parts[i].x_mm * s + side * layout.part_half[i];
            if (covers[i].lower && std::isfinite(x))
                on_shaft.take({x - 0.2, -layout.part_radius[i], x + 0.2, covers[i].upper ? layout.part_radius[i] : 0.0});
        }
        const double pitch = actingDiameter_mm(arrangement.parts[i]) / 2.0 * s;
        const double part_x = arrangement.parts[i].x_mm * s;
        if (pitch > 0.0 && covers[i].lower && std::isfinite(part_x)) {
            const double reach = layout.part_half[i] + 3.0;
            on_shaft.take({part_x - reach, -pitch - 0.02, part_x + reach, -pitch + 0.02});
            if (covers[i].upper)
                on_shaft.take({part_x - reach, pitch - 0.02, part_x + reach, pitch + 0.02});
        }
    }
    for (const Box& box : layout.busy)
        on_shaft.take(box);
    on_shaft.take({-1e6, -0.02, 1e6, 0.02}); // the centre line
    for (const Box& box : moment_arcs)
        on_shaft.take(box);
    for (const Pending& one : pending) {
        if (one.place != Place::torque)
            continue;
        Group& group = list.groups[one.group];
        const double seat = one.length;
        const double width = textWidth_mm(one.value, h, view.label_font) * 1.06;
        // Arrow with two heads along the axis on the shaft, its number over or under it, away from keys, traces and diameters.
        const bool view_below = covers[one.item - 1].lower;
        const bool view_above = covers[one.item - 1].upper;
        const double outer = layout.part_radius[one.item - 1] - 0.5;
        struct Candidate {
            double y, text_y; ///< beside: both centred on the part in one line
            bool beside;
        };
        const double near = std::max(0.42 * seat, 1.6);
        const double mid = 2.05;
        const double low = seat + 1.6; // on the view of a wheel that hides the shaft below
        const Candidate candidates[] = {{near, near + 1.4, false},     {-near, -near - 1.4 - h, false},
                                        {mid, mid + 1.4, false},       {-mid, -mid - 1.4 - h, false},
                                        {mid, mid - h / 2.0, true},    {-mid, -mid - h / 2.0, true},
                                        {near, near - h / 2.0, true},  {-near, -near - h / 2.0, true},
                                        {-low, -low - 1.4 - h, false}, {low, low + 1.4, false}};
        const Candidate* chosen = nullptr;
        Box text_box{};
        double arrow_x = one.x;
        bool labelled = !many || one.selected;
        const auto choose = [&](const Candidate& candidate) {
            arrow_x = candidate.beside && labelled ? one.x - (1.2 + width) / 2.0 : one.x;
            const Box arrow_box{arrow_x - 5.2, candidate.y - 0.8, arrow_x + 5.2, candidate.y + 0.8};
            const double x0 = candidate.beside ? arrow_x + 6.4 : one.x - width / 2.0;
            text_box = {x0, candidate.text_y, x0 + width, candidate.text_y + h};
            const double top = std::max(arrow_box.y1, labelled ? text_box.y1 : -1e9);
            const double bottom = std::min(arrow_box.y0, labelled ? text_box.y0 : 1e9);
            const bool inside = top <= seat - 0.3 && bottom >= -seat + 0.3;
            const bool on_view = (view_below && top < 0.0 && bottom > -outer) || (view_above && bottom > 0.0 && top < outer);
            return (inside || on_view) && on_shaft.isFree(arrow_box, 0.2) && (!labelled || on_shaft.isFree(text_box, 0.2));
        };
        chosen = std::find_if(std::begin(candidates), std::end(candidates), choose);
        if (chosen == std::end(candidates) && labelled) {
            // No room on the shaft: the number joins the label of the force, the arrow stands alone.
            labelled = false;
            joinLabel(one, std::string(labels::torqueShort) + one.value);
            chosen = std::find_if(std::begin(candidates), std::end(candidates), choose);
        }
        if (chosen == std::end(candidates)) {
            chosen = nullptr;
            arrow_x = one.x;
        }
        const double y = chosen != nullptr ? chosen->y : 0.0;
        arrow(group, arrow_x - one.y * 5.0, y, arrow_x + one.y * 5.0, y, Ink::live, Stroke::thick, 2);
        on_shaft.take({arrow_x - 5.2, y - 0.8, arrow_x + 5.2, y + 0.8});
        if (chosen != nullptr && labelled) {
            on_shaft.take(text_box);
            put(group, text_box, one.value, false);
        }
    }

    std::size_t full = 0;
    std::vector<std::size_t> told; // items that have a label or a number
    const auto isTold = [&](std::size_t item) { return std::find(told.begin(), told.end(), item) != told.end(); };
    for (const Pending& one : pending) {
        if (one.done || one.place == Place::torque)
            continue;
        Group& group = list.groups[one.group];
        if (many && one.item > 0 && !one.selected && (full >= 5 || one.place == Place::along)) {
            if (one.place == Place::beside && !isTold(one.item)) {
                told.push_back(one.item);
                itemNumber(group, context, one.x, one.y + 0.6, one.item);
            }
            continue;
        }
        if (one.item > 0 && !one.selected)
            ++full;
        const bool up = one.item > 0;
        const std::size_t first = std::min(one.what.find('\n'), one.what.size());
        const std::string brief =
            inLines(one.what.substr(0, first), 26.0, 0.8 * view.label_height_mm, view.label_font) + one.what.substr(first);
        const auto attempt = [&](const std::string& what, const Effort& effort) {
            return placeLabel(group, context, one.x, one.y, one.value, what, up, effort);
        };
        // A reaction in a narrow gap: its letter over its number, at last the letter alone.
        const auto inParts = [&] {
            const std::size_t gap = one.value.find("  ");
            if (up || gap == std::string::npos)
                return false;
            const std::string letter = one.value.substr(0, gap);
            return placeLabel(group, context, one.x, one.y, letter, one.value.substr(gap + 2), up, {3, 2, true}) ||
                   placeLabel(group, context, one.x, one.y, letter, {}, up, {3, 2, true});
        };
        // The whole name close by or a little aside, then cut, then the number alone; extension lines give way last.
        const bool done = attempt(one.what, {1, 0, false}) || (brief != one.what && attempt(brief, {0, 0, false})) ||
                          attempt(one.what, {3, 2, false}) || (brief != one.what && attempt(brief, {3, 2, false})) ||
                          (!one.what.empty() && attempt({}, {3, 0, false})) || attempt({}, {3, up ? 1 : 4, true}) || inParts();
        if (done) {
            told.push_back(one.item);
        } else if (one.item > 0 && !isTold(one.item)) {
            told.push_back(one.item);
            itemNumber(group, context, one.x, one.y + 0.6, one.item);
        }
    }
    // Sense of rotation: the part of the turn that faces the viewer; positive speed moves the near side down.
    if (case_index >= 0 && view.loads) {
        const double speed = assessment.load_cases[static_cast<std::size_t>(case_index)].speed_rpm;
        Group group;
        group.layer = Layer::load;
        const double x = layout.left - 7.0;
        const double r = std::clamp(seatAt_mm(arrangement.shaft, 0.0) / 2.0 * s * 0.6, 4.0, 12.0);
        if (std::isfinite(speed) && speed != 0.0) {
            const double d = speed > 0.0 ? -1.0 : 1.0; // of the near side on the sheet
            const double bulge = 0.55;
            // From the tail over the near side (left) to the foot of the head; the head continues the curve.
            const double hx = d < 0.0 ? 0.35 : 0.35;
            if (d < 0.0)
                group.items.emplace_back(Path{{{x, r, bulge}, {x - hx, -r + 1.6}}, false, Stroke::thick, Ink::ink, {}});
            else
                group.items.emplace_back(Path{{{x - hx, r - 1.6, bulge}, {x, -r}}, false, Stroke::thick, Ink::ink, {}});
            const double length = std::hypot(0.6, 0.8);
            head(group, x + 1.2, d * r, 0.6 / length, d * 0.8 / length, arrowHead_mm, arrowHeadHalf_mm, Ink::ink);
        }
        const std::string text =
            speed == 0.0 ? std::string(labels::standstill)
                         : numberTrimmed(std::abs(speed), std::abs(speed) < 100.0 ? 1 : 0) + std::string(labels::perMinute);
        const double width = textWidth_mm(text, 0.9 * view.label_height_mm, view.label_font);
        const Text label{std::min(x + width / 2.0, -1.2),
                         r + 1.8,
                         0.9 * view.label_height_mm,
                         text,
                         HAlign::right,
                         VAlign::baseline,
                         0.0,
                         Ink::ink,
                         view.label_font,
                         false,
                         true};
        group.items.emplace_back(label);
        list.groups.push_back(std::move(group));
    }
    // With all cases shown, the case whose arrows these are, left of the last row below the drawing.
    if (const std::string name = view.loads && largest > 0.0 ? shownCaseName(assessment, view) : std::string(); !name.empty()) {
        const Font font = view.label_font;
        const double small = 0.8 * h;
        const std::string cut = elide(name, -context.least_x - 4.0, small, font);
        const double width =
            std::max(textWidth_mm(cut, small, font), textWidth_mm(std::string(labels::arrowsOfCase), small, font));
        double low = view.dimensions ? layout.overall_y - 1.5 : layout.support_bottom + 0.5;
        const auto at = [&](double y) { return Box{-3.0 - width, y, -3.0, y + 1.35 * small + small}; };
        for (int k = 0; !view.dimensions && k < 6 && !context.placer.isFree(at(low)); ++k)
            low += 3.0;
        Group group;
        group.layer = Layer::load;
        group.items.emplace_back(Text{-3.0, low + 1.35 * small, small, std::string(labels::arrowsOfCase), HAlign::right,
                                      VAlign::baseline, 0.0, Ink::ink2, font, false, true});
        group.items.emplace_back(Text{-3.0, low, small, cut, HAlign::right, VAlign::baseline, 0.0, Ink::ink2, font, false, true});
        list.groups.push_back(std::move(group));
    }
    for (Group& group : list.groups)
        computeBounds(group);
    return list;
}

} // namespace shaftwright::drawing
