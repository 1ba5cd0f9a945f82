#include "core/drawing/sheet_common.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

namespace shaftwright::drawing
{

using namespace inner;

namespace
{

constexpr double degree = std::numbers::pi / 180.0;

/// Circle of another shaft's wheel, thin; only the piece within `reach` of the own axis is drawn.
void mate(Group& group, double cx, double cy, double radius, double reach)
{
    const double distance = std::hypot(cx, cy);
    if (distance + radius <= reach) {
        group.items.emplace_back(Circle{cx, cy, radius, Stroke::thin, Ink::ink3, {}});
        return;
    }
    // Angle at the mate's centre, about the line to the own axis, within which |p| <= reach.
    const double cosine = (distance * distance + radius * radius - reach * reach) / (2.0 * distance * radius);
    if (!(cosine < 1.0))
        return;
    const double half = std::acos(std::max(cosine, -1.0)) / degree;
    const double towards = std::atan2(-cy, -cx) / degree;
    arc(group, cx, cy, radius, towards - half, towards + half, Stroke::thin, Ink::ink3);
}

/// Ids are short; a long one would not fit beside an arrow.
std::string shortId(const std::string& id)
{
    return id.size() <= 4 ? id : std::string();
}

void handleMark(Group& group, double x, double y)
{
    group.items.emplace_back(Circle{x, y, 1.6, Stroke::thick, Ink::live, Ink::paper});
}

/// First free place for a text near (x, y), seen from there along (ux, uy); stays within `bound` on all sides. The axes may be
/// interrupted when nothing else is left and `may_cross` allows it.
std::optional<Box> placeNear(Placer& placer, double x, double y, double ux, double uy, double width, double height, double bound,
                             bool may_cross)
{
    for (const bool crossing : {false, true}) {
        if (crossing && !may_cross)
            break;
        for (const double out : {1.5, 4.5, 8.0, 11.5}) {
            for (const double turn : {0.0, 25.0, -25.0, 50.0, -50.0, 80.0, -80.0}) {
                const double c = std::cos(turn * degree);
                const double sn = std::sin(turn * degree);
                const double vx = ux * c - uy * sn;
                const double vy = ux * sn + uy * c;
                const double ax = x + vx * out;
                const double ay = y + vy * out + (vy - 1.0) * height / 2.0;
                double x0 = vx > 0.3 ? ax : vx < -0.3 ? ax - width : ax - width / 2.0;
                x0 = std::max(std::min(x0, bound - width), -bound);
                const double y0 = std::clamp(ay, -bound + Placer::tails_mm, std::max(bound - height, -bound + Placer::tails_mm));
                const Box box{x0, y0, x0 + width, y0 + height};
                if (!placer.isFree(box, 0.3, crossing))
                    continue;
                placer.take(box);
                return box;
            }
        }
    }
    return std::nullopt;
}

} // namespace

double endViewReach_mm(double radius_mm)
{
    return 1.3 * radius_mm + 8.0;
}

DisplayList endViewList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view, double radius_mm)
{
    DisplayList list;
    double largest = 0.0;
    for (const Segment& segment : arrangement.shaft.segments)
        largest = std::max({largest, segment.outer_mm / 2.0, segment.outerRight_mm() / 2.0});
    for (const Part& part : arrangement.parts)
        largest = std::max(largest, partOuterRadius_mm(part));
    // Nothing but the caption stands further out than this, on any side.
    const double bound = endViewReach_mm(radius_mm) - 0.4;
    const double clip = bound - 0.5;
    const double h = view.label_height_mm;
    const Font font = view.label_font;

    Group caption;
    caption.layer = Layer::overlay;
    const double top = endViewReach_mm(radius_mm);
    caption.items.emplace_back(Text{-bound, top + 1.0 + 2.8 * h, h, std::string(labels::endView), HAlign::left, VAlign::baseline,
                                    0.0, Ink::ink, font, true, false});
    caption.items.emplace_back(Text{-bound, top + 1.0 + 1.3 * h, 0.8 * h, std::string(labels::fromRight), HAlign::left,
                                    VAlign::baseline, 0.0, Ink::ink2, font, false, false});
    computeBounds(caption);
    list.groups.push_back(std::move(caption));
    if (!(largest > 0.0) || !(radius_mm > 0.0))
        return list;
    const double s = radius_mm / largest;

    Placer placer;
    std::vector<double> busy; // directions in which something stands

    // Axes, then circles from the outside inwards.
    Group axes;
    axes.layer = Layer::behind;
    const double overrun = radius_mm + 4.0;
    line(axes, -overrun, 0.0, overrun, 0.0, Stroke::centre, Ink::ink);
    line(axes, 0.0, -overrun, 0.0, overrun, Stroke::centre, Ink::ink);
    computeBounds(axes);
    placer.take({-overrun, -0.2, overrun, 0.2}, true);
    placer.take({-0.4, -overrun, 0.4, overrun}, true);

    std::vector<const Part*> parts;
    for (const Part& part : arrangement.parts) {
        if (partOuterRadius_mm(part) > 0.0)
            parts.push_back(&part);
    }
    std::stable_sort(parts.begin(), parts.end(),
                     [](const Part* a, const Part* b) { return partOuterRadius_mm(*a) > partOuterRadius_mm(*b); });
    struct Pending {
        std::size_t group;
        double x, y, dx, dy;
        std::string text;
        std::string word{}, who{}; ///< of grips: what stands before the angle, and whose it is
        double angle = 0.0;
    };
    std::vector<Group> handles;
    std::vector<std::array<double, 2>> marks; // where grips stand
    std::vector<Pending> grips;               // their labels wait until all arrows are known
    constexpr std::size_t shown_parts = 8;
    std::size_t drawn = 0;
    for (const Part* part : parts) {
        Group group;
        group.subject = partPath(*part);
        group.layer = Layer::part;
        const double outer = partOuterRadius_mm(*part) * s;
        const double acting = actingDiameter_mm(*part) / 2.0 * s;
        const bool selected = view.selected == group.subject;
        // With forty parts the circles of the largest eight and the selection are enough to find the way.
        if (drawn++ < shown_parts || selected) {
            group.items.emplace_back(Circle{0.0, 0.0, outer, Stroke::thick, selected ? Ink::live : Ink::ink, {}});
            const bool toothed = part->body.index() < 4;
            if (acting > 0.0 && std::abs(acting - outer) > 0.7)
                group.items.emplace_back(
                    Circle{0.0, 0.0, acting, toothed || part->body.index() <= 5 ? Stroke::centre : Stroke::thin, Ink::ink, {}});
        }
        const bool shown = drawn <= shown_parts || selected;
        const auto addHandle = [&](double angle, double distance, const std::string& handle, std::string_view word) {
            Group grip;
            grip.subject = group.subject;
            grip.handle = handle;
            grip.layer = Layer::overlay;
            // Wheels of one size that mesh at the same angle: their grips stand behind each other on the ray, each within reach.
            double place = distance;
            const auto taken = [&](double at) {
                return std::any_of(marks.begin(), marks.end(), [&](const std::array<double, 2>& mark) {
                    return std::hypot(mark[0] - at * std::cos(angle * degree), mark[1] - at * std::sin(angle * degree)) < 3.4;
                });
            };
            for (int k = 0; shown && k < 4 && taken(place); ++k)
                place += place + 3.6 < clip - 2.0 ? 3.6 : 0.0;
            if (shown && taken(place)) {
                for (place = distance - 3.6; place > 4.0 && taken(place);)
                    place -= 3.6;
                if (place <= 4.0)
                    place = distance;
            }
            const double x = place * std::cos(angle * degree);
            const double y = place * std::sin(angle * degree);
            marks.push_back({x, y});
            handleMark(grip, x, y);
            placer.take({x - 1.8, y - 1.8, x + 1.8, y + 1.8});
            busy.push_back(angle);
            if (shown) {
                Pending label{handles.size(), x, y, std::cos(angle * degree), std::sin(angle * degree), {}};
                label.word = std::string(word);
                label.who = shortId(part->id.value);
                label.angle = angle;
                // The same angle is told once, outermost, with the names of those who share it.
                const auto same = std::find_if(grips.begin(), grips.end(), [&](const Pending& other) {
                    return other.word == label.word && numberTrimmed(other.angle, 1) == numberTrimmed(angle, 1);
                });
                if (same == grips.end()) {
                    label.text = label.word + " " + numberTrimmed(angle, 1) + "°";
                    grips.push_back(std::move(label));
                } else {
                    const std::string names = same->who.empty() || label.who.empty() ? std::string()
                                              : same->who == label.who               ? same->who
                                                                                     : same->who + ", " + label.who;
                    same->text = label.word + " " + numberTrimmed(angle, 1) + "°" + (names.empty() ? "" : " " + names);
                    same->who = names;
                    if (std::hypot(x, y) > std::hypot(same->x, same->y)) {
                        same->x = x;
                        same->y = y;
                        same->group = label.group;
                    }
                }
            }
            handles.push_back(std::move(grip));
        };
        // Where the mate's axis lies: a line of centres through the mesh, and a cross on the axis itself when it is in sight.
        const auto towards = [&](double angle, double distance) {
            const double end = std::min(distance + 3.0, clip);
            line(group, outer * std::cos(angle * degree), outer * std::sin(angle * degree), end * std::cos(angle * degree),
                 end * std::sin(angle * degree), Stroke::centre, Ink::ink3);
            if (distance + 1.0 < clip) {
                const double cx = distance * std::cos(angle * degree);
                const double cy = distance * std::sin(angle * degree);
                const double tx = -std::sin(angle * degree) * 2.5;
                const double ty = std::cos(angle * degree) * 2.5;
                line(group, cx - tx, cy - ty, cx + tx, cy + ty, Stroke::thin, Ink::ink3);
            }
        };
        if (const auto* gear = std::get_if<CylindricalGear>(&part->body)) {
            const double other = gear->mate_teeth && gear->teeth > 0 ? acting * *gear->mate_teeth / gear->teeth : 0.55 * acting;
            const double centre = gear->internal ? acting - other : acting + other;
            const auto meshAt = [&](double angle, const std::string& handle) {
                if (shown) {
                    mate(group, centre * std::cos(angle * degree), centre * std::sin(angle * degree), other, clip);
                    if (!gear->internal)
                        towards(angle, centre);
                }
                addHandle(angle, acting, handle, labels::mesh);
            };
            meshAt(gear->mesh_angle_deg, "mesh_angle_deg");
            for (std::size_t i = 0; i < gear->further_meshes.size(); ++i)
                meshAt(gear->further_meshes[i].mesh_angle_deg, "further_meshes." + std::to_string(i) + ".mesh_angle_deg");
        } else if (const auto* bevel = std::get_if<BevelGear>(&part->body)) {
            addHandle(bevel->mesh_angle_deg, acting, "mesh_angle_deg", labels::mesh);
        } else if (const auto* worm = std::get_if<Worm>(&part->body)) {
            addHandle(worm->mesh_angle_deg, acting, "mesh_angle_deg", labels::mesh);
        } else if (const auto* wheel = std::get_if<WormWheel>(&part->body)) {
            addHandle(wheel->mesh_angle_deg, acting, "mesh_angle_deg", labels::mesh);
        } else {
            double direction = 0.0;
            double centre = 0.0;
            double other = 0.0;
            bool crossed = false;
            bool flexible = false;
            if (const auto* pulley = std::get_if<BeltPulley>(&part->body)) {
                direction = pulley->direction_deg;
                centre = pulley->centre_distance_mm * s;
                other = pulley->other_diameter_mm / 2.0 * s;
                crossed = pulley->crossed;
                flexible = true;
            } else if (const auto* sprocket = std::get_if<ChainSprocket>(&part->body)) {
                direction = sprocket->direction_deg;
                centre = sprocket->centre_distance_mm * s;
                other = sprocket->teeth > 0 ? acting * sprocket->other_teeth / sprocket->teeth : acting;
                flexible = true;
            }
            if (flexible && acting > 0.0 && shown) {
                // Two strands, tangents of both wheels, cut off at the reach.
                const double ratio = centre > 0.0 ? std::clamp((acting - (crossed ? -other : other)) / centre, -0.95, 0.95) : 0.0;
                const double spread = std::acos(ratio) / degree;
                for (const double side : {1.0, -1.0}) {
                    const double a = (direction + side * spread) * degree;
                    const double x = acting * std::cos(a);
                    const double y = acting * std::sin(a);
                    // Along the strand: perpendicular to the radius at the point of tangency, towards the other wheel.
                    const double tx = side * std::sin(a);
                    const double ty = -side * std::cos(a);
                    const double whole = centre > 0.0 ? centre * std::sqrt(1.0 - ratio * ratio) : clip;
                    const double cut = std::sqrt(std::max(clip * clip - acting * acting, 0.0));
                    const double length = std::min(whole, cut);
                    line(group, x, y, x + tx * length, y + ty * length, Stroke::thin, Ink::ink3);
                }
                if (other > 0.0 && centre > 0.0 && centre - other < clip)
                    mate(group, centre * std::cos(direction * degree), centre * std::sin(direction * degree), other, clip);
            }
            if (flexible && acting > 0.0)
                addHandle(direction, std::min(1.3 * radius_mm + 1.0, clip - 2.0), "direction_deg",
                          std::holds_alternative<BeltPulley>(part->body) ? labels::belt : labels::chain);
        }
        computeBounds(group);
        list.groups.push_back(std::move(group));
    }

    // The shaft end as seen: last segment, its bore.
    if (!arrangement.shaft.segments.empty()) {
        const Segment& last = arrangement.shaft.segments.back();
        Group group;
        group.subject = "shaft.segments." + last.id.value;
        group.layer = Layer::shaft;
        double radius = last.outerRight_mm() / 2.0 * s;
        group.items.emplace_back(Circle{0.0, 0.0, radius, Stroke::thick, Ink::ink, Ink::shaft});
        if (last.boreRight_mm() > 0.0)
            group.items.emplace_back(Circle{0.0, 0.0, last.boreRight_mm() / 2.0 * s, Stroke::thick, Ink::ink, Ink::paper});
        computeBounds(group);
        list.groups.push_back(std::move(group));
    }
    list.groups.push_back(std::move(axes));

    std::vector<Pending> pending;
    // Vectors of the case, all from the axis: loads with the part's name, reactions with the letter of the support.
    if (view.loads) {
        struct Vector {
            double y, z;
            std::string word, subject;
            bool reaction;
        };
        std::vector<Vector> vectors;
        const double fmax = view.held_force_N > 0.0 ? view.held_force_N : largestForce_N(assessment, view);
        if (const CaseLoads* loads = shownLoads(assessment, view)) {
            for (const PartLoad& load : loads->parts) {
                if (load.distributed)
                    continue;
                vectors.push_back({load.force_N.y, load.force_N.z, shortId(load.part.value), "parts." + load.part.value, false});
            }
        }
        for (const Support& support : arrangement.supports) {
            const SupportAssessment* found = assessment.find(support.id);
            if (found == nullptr)
                continue;
            if (const SupportCase* reaction = shownReaction(*found, assessment, view))
                vectors.push_back(
                    {reaction->force_N.y, reaction->force_N.z, shortId(support.id.value), supportPath(support), true});
        }
        std::stable_sort(vectors.begin(), vectors.end(),
                         [](const Vector& a, const Vector& b) { return std::hypot(a.y, a.z) > std::hypot(b.y, b.z); });
        const Unit unit = forceUnit(fmax);
        if (fmax > 0.0 && !vectors.empty()) {
            Group& words = list.groups.front();
            std::string what = std::string(labels::forcesIn) + std::string(unit.name);
            if (const std::string name = shownCaseName(assessment, view); !name.empty()) {
                what += ", ";
                const double room = 2.0 * bound - textWidth_mm(what, 0.8 * h, font);
                const std::string whole = std::string(labels::caseWord) + name;
                what += textWidth_mm(whole, 0.8 * h, font) <= room ? whole : elide(name, room, 0.8 * h, font);
            }
            words.items.emplace_back(
                Text{-bound, top + 1.0, 0.8 * h, what, HAlign::left, VAlign::baseline, 0.0, Ink::ink2, font, false, false});
            computeBounds(words);
        }
        std::size_t labelled = 0;
        for (const Vector& vector : vectors) {
            const double size = std::hypot(vector.y, vector.z);
            if (!std::isfinite(size) || !(size > 1e-6 * fmax) || !(fmax > 0.0))
                continue;
            const double length = std::max(6.0, 0.92 * radius_mm * std::min(size / fmax, 1.2));
            const double dx = vector.y / size;
            const double dy = vector.z / size;
            Group group;
            group.subject = vector.subject;
            group.layer = Layer::load;
            arrow(group, 0.0, 0.0, dx * length, dy * length, Ink::live);
            for (double t = 0.15; t < 1.0; t += 0.1)
                placer.take({dx * length * t - 0.7, dy * length * t - 0.7, dx * length * t + 0.7, dy * length * t + 0.7});
            busy.push_back(std::atan2(dy, dx) / degree);
            if (labelled++ < 6 || view.selected == vector.subject)
                pending.push_back({list.groups.size(), dx * length, dy * length, dx, dy,
                                   (vector.word.empty() ? std::string() : vector.word + " ") + number3(size * unit.factor)});
            list.groups.push_back(std::move(group));
        }
    }
    // Sense of rotation outside the circles, where most room is; positive speed is counter-clockwise from this end.
    const int index = shownCase(assessment, view);
    if (index >= 0) {
        const double speed = assessment.load_cases[static_cast<std::size_t>(index)].speed_rpm;
        if (std::isfinite(speed) && speed != 0.0) {
            double best = 270.0;
            double room = -1.0;
            for (const double candidate : {290.0, 250.0, 330.0, 210.0, 30.0, 150.0, 70.0, 110.0}) {
                double least = 180.0;
                for (const double angle : busy) {
                    double difference = std::fmod(std::abs(angle - candidate), 360.0);
                    difference = std::min(difference, 360.0 - difference);
                    least = std::min(least, difference);
                }
                if (least > room + 1.0) {
                    room = least;
                    best = candidate;
                }
            }
            Group group;
            group.layer = Layer::load;
            const double r = radius_mm + 4.5;
            const double half = std::clamp(12.0 / r / degree, 12.0, 25.0);
            const double from = speed > 0.0 ? best - half : best + half;
            const double to = speed > 0.0 ? best + half : best - half;
            const double sense = speed > 0.0 ? 1.0 : -1.0;
            const double shorten = sense * arrowHead_mm * 0.7 / r / degree;
            for (double a = std::min(from, to); a <= std::max(from, to); a += 2.0)
                placer.take({r * std::cos(a * degree) - 0.7, r * std::sin(a * degree) - 0.7, r * std::cos(a * degree) + 0.7,
                             r * std::sin(a * degree) + 0.7});
            arc(group, 0.0, 0.0, r, from, to - shorten, Stroke::thick, Ink::ink);
            const double mid = (to - shorten / 2.0) * degree;
            head(group, r * std::cos(to * degree), r * std::sin(to * degree), -sense * std::sin(mid), sense * std::cos(mid),
                 arrowHead_mm, arrowHeadHalf_mm, Ink::ink);
            const std::string text =
                numberTrimmed(std::abs(speed), std::abs(speed) < 100.0 ? 1 : 0) + std::string(labels::perMinute);
            const double width = textWidth_mm(text, 0.9 * h, font);
            const double c = std::cos(best * degree);
            const double sn = std::sin(best * degree);
            if (const auto box = placeNear(placer, r * c, r * sn, c, sn, width, 0.9 * h, bound, true))
                group.items.emplace_back(
                    Text{box->x0, box->y0, 0.9 * h, text, HAlign::left, VAlign::baseline, 0.0, Ink::ink, font, false, true});
            computeBounds(group);
            list.groups.push_back(std::move(group));
        }
    }
    for (const Pending& one : pending) {
        const double width = textWidth_mm(one.text, h, font) * 1.06;
        if (const auto box = placeNear(placer, one.x, one.y, one.dx, one.dy, width, h, bound, true))
            list.groups[one.group].items.emplace_back(
                Text{box->x0, box->y0, h, one.text, HAlign::left, VAlign::baseline, 0.0, Ink::live, font, true, true});
    }
    for (const Pending& one : grips) {
        // With the names of those who share it if there is room, else the bare angle.
        for (const std::string& text : {one.text, one.word + " " + numberTrimmed(one.angle, 1) + "°"}) {
            const double width = textWidth_mm(text, 0.9 * h, font);
            const auto box =
                placeNear(placer, one.x + 1.2 * one.dx, one.y + 1.2 * one.dy, one.dx, one.dy, width, 0.9 * h, bound, false);
            if (!box)
                continue;
            handles[one.group].items.emplace_back(
                Text{box->x0, box->y0, 0.9 * h, text, HAlign::left, VAlign::baseline, 0.0, Ink::ink2, font, false, true});
            break;
        }
    }
    for (Group& grip : handles)
        computeBounds(grip);
    for (Group& group : list.groups) {
        if (group.layer == Layer::load)
            computeBounds(group);
    }
    for (Group& grip : handles)
        list.groups.push_back(std::move(grip));
    return list;
}

} // namespace shaftwright::drawing
