#include "ui/document/actions.h"

#include "ui/document/subject.h"

#include <QObject>

#include <algorithm>
#include <cmath>
#include <set>

namespace shaftwright::ui::actions {

namespace {

Finding refusal(std::string code, std::string path, NamedValues values = {})
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = std::move(code);
    finding.path = std::move(path);
    finding.values = std::move(values);
    return finding;
}

std::string freshId(const Arrangement& arrangement, const std::string& prefix)
{
    std::set<std::string> used;
    for (const Part& part : arrangement.parts)
        used.insert(part.id.value);
    for (const Support& support : arrangement.supports)
        used.insert(support.id.value);
    for (const Segment& segment : arrangement.shaft.segments) {
        used.insert(segment.id.value);
        for (const Feature& feature : segment.features)
            used.insert(feature.id.value);
    }
    for (int number = 1;; ++number) {
        std::string id = prefix + std::to_string(number);
        if (!used.contains(id))
            return id;
    }
}

std::string freshLetter(const Arrangement& arrangement)
{
    for (char letter = 'A'; letter <= 'Z'; ++letter) {
        const std::string name(1, letter);
        const bool used = std::any_of(arrangement.supports.begin(), arrangement.supports.end(), [&](const Support& support) {
            return support.name == name || support.id.value == name;
        });
        if (!used && findPart(arrangement, PartId(name)) == nullptr && findSegment(arrangement, SegmentId(name)) == nullptr)
            return name;
    }
    return freshId(arrangement, "S");
}

/// The first part that carries torque states it; the next balances it.
Drive usualDrive(const Arrangement& arrangement)
{
    bool stated = false, balanced = false;
    for (const Part& part : arrangement.parts) {
        if (part.drive) {
            stated = stated || part.drive->power_kW || part.drive->torque_Nmm;
            balanced = balanced || part.drive->takes_remaining;
        }
    }
    Drive drive;
    if (stated && !balanced) {
        drive.power = PowerSense::driving;
        drive.takes_remaining = true;
    } else {
        drive.power = PowerSense::driven;
        drive.power_kW = stated ? 1.0 : 5.0;
    }
    return drive;
}

std::size_t segmentAt(const Shaft& shaft, double x_mm, double& start_mm)
{
    start_mm = 0.0;
    for (std::size_t i = 0; i < shaft.segments.size(); ++i) {
        const double end_mm = start_mm + shaft.segments[i].length_mm;
        if (x_mm <= end_mm || i + 1 == shaft.segments.size())
            return i;
        start_mm = end_mm;
    }
    return 0;
}

PartBody usualBody(ShelfItem item, double seat_mm, double x_mm, double length_mm)
{
    const double seat = std::max(10.0, seat_mm);
    switch (item) {
    case ShelfItem::gear: {
        CylindricalGear gear;
        gear.normal_module_mm = seat > 60.0 ? 4.0 : (seat > 30.0 ? 2.5 : 1.5);
        gear.teeth = std::max(20, static_cast<int>(std::ceil(2.2 * seat / gear.normal_module_mm)));
        gear.mesh_angle_deg = 90.0;
        gear.face_width_mm = std::round(0.6 * seat);
        return gear;
    }
    case ShelfItem::bevel_gear: {
        BevelGear gear;
        gear.outer_module_mm = seat > 60.0 ? 5.0 : 3.0;
        gear.teeth = std::max(20, static_cast<int>(std::ceil(2.4 * seat / gear.outer_module_mm)));
        gear.cone_angle_deg = 45.0;
        gear.mesh_angle_deg = 90.0;
        gear.face_width_mm = std::round(0.5 * seat);
        return gear;
    }
    case ShelfItem::worm: {
        Worm worm;
        worm.starts = 2;
        worm.axial_module_mm = std::max(2.0, std::round(seat / 12.0));
        worm.reference_diameter_mm = std::round(seat + 2.6 * worm.axial_module_mm);
        worm.face_width_mm = std::round(1.2 * seat);
        worm.mesh_angle_deg = 270.0;
        return worm;
    }
    case ShelfItem::worm_wheel: {
        WormWheel wheel;
        wheel.teeth = 40;
        wheel.reference_diameter_mm = std::round(3.2 * seat);
        wheel.lead_angle_deg = 11.0;
        wheel.mesh_angle_deg = 90.0;
        wheel.face_width_mm = std::round(0.8 * seat);
        return wheel;
    }
    case ShelfItem::belt_pulley: {
        BeltPulley pulley;
        pulley.diameter_mm = std::round(3.0 * seat / 5.0) * 5.0;
        pulley.other_diameter_mm = pulley.diameter_mm;
        pulley.centre_distance_mm = 3.0 * pulley.diameter_mm;
        pulley.direction_deg = 90.0;
        pulley.grooves = 2;
        pulley.groove_deg = 36.0;
        pulley.face_width_mm = std::max(30.0, std::round(0.9 * seat));
        return pulley;
    }
    case ShelfItem::sprocket: {
        ChainSprocket sprocket;
        sprocket.teeth = 21;
        sprocket.pitch_mm = seat > 45.0 ? 25.4 : (seat > 28.0 ? 19.05 : 12.7);
        sprocket.other_teeth = 42;
        sprocket.centre_distance_mm = 40.0 * sprocket.pitch_mm;
        sprocket.direction_deg = 90.0;
        sprocket.face_width_mm = std::round(0.6 * sprocket.pitch_mm);
        return sprocket;
    }
    case ShelfItem::coupling: {
        Coupling coupling;
        coupling.outer_mm = std::round(2.2 * seat);
        coupling.length_mm = std::round(1.2 * seat);
        return coupling;
    }
    case ShelfItem::impeller: {
        Impeller impeller;
        impeller.outer_mm = std::round(4.0 * seat);
        impeller.width_mm = std::round(seat);
        return impeller;
    }
    case ShelfItem::weight: {
        WeightBody weight;
        weight.outer_mm = std::round(3.5 * seat);
        weight.width_mm = std::round(0.6 * seat);
        return weight;
    }
    case ShelfItem::line_load: {
        DistributedLoad load;
        load.end_mm = std::min(length_mm, x_mm + 40.0);
        load.start_N_per_mm.z = -5.0;
        load.end_N_per_mm.z = -5.0;
        return load;
    }
    default: {
        PointLoad load;
        load.force_N.z = -1000.0;
        return load;
    }
    }
}

const char* idPrefix(ShelfItem item)
{
    switch (item) {
    case ShelfItem::belt_pulley:
        return "P";
    case ShelfItem::sprocket:
        return "K";
    case ShelfItem::coupling:
        return "C";
    case ShelfItem::weight:
        return "W";
    case ShelfItem::impeller:
        return "I";
    case ShelfItem::free_force:
    case ShelfItem::line_load:
        return "F";
    default:
        return "G";
    }
}

Result<Inserted> insertSegment(const Arrangement& arrangement, double x_mm)
{
    Inserted made{arrangement, {}, QObject::tr("Insert segment")};
    Segment segment;
    segment.id = SegmentId(freshId(arrangement, "s"));
    segment.length_mm = arrangement.shaft.segments.empty() ? 100.0 : 30.0;
    segment.outer_mm = 40.0;
    std::vector<Segment>& segments = made.value.shaft.segments;
    std::size_t at = 0;
    if (!segments.empty()) {
        // At the edge that lies nearest, a step smaller than its neighbour.
        double best = 1e300, edge = 0.0;
        for (std::size_t i = 0; i <= segments.size(); ++i) {
            if (std::abs(edge - x_mm) < best) {
                best = std::abs(edge - x_mm);
                at = i;
            }
            if (i < segments.size())
                edge += segments[i].length_mm;
        }
        const double neighbour = at > 0 ? segments[at - 1].outerRight_mm() : segments.front().outer_mm;
        segment.outer_mm = std::max(5.0, neighbour - 5.0);
        // What stands to the right moves along with the shaft it stands on.
        const double from_mm = segmentStart_mm(made.value.shaft, at);
        for (Part& part : made.value.parts) {
            if (part.x_mm > from_mm) {
                part.x_mm += segment.length_mm;
                if (auto* load = std::get_if<DistributedLoad>(&part.body))
                    load->end_mm += segment.length_mm;
            }
        }
        for (Support& support : made.value.supports) {
            if (support.x_mm > from_mm)
                support.x_mm += segment.length_mm;
        }
    }
    made.subject = pathOf(segment.id);
    segments.insert(segments.begin() + static_cast<std::ptrdiff_t>(at), std::move(segment));
    return made;
}

Result<Inserted> insertFeature(const Arrangement& arrangement, ShelfItem item, double x_mm)
{
    double start_mm = 0.0;
    const std::size_t index = segmentAt(arrangement.shaft, x_mm, start_mm);
    Inserted made{arrangement, {}, {}};
    Segment& segment = made.value.shaft.segments[index];
    Feature feature;
    feature.id = FeatureId(freshId(arrangement, "f"));
    if (item == ShelfItem::groove) {
        feature.kind = FeatureKind::groove;
        feature.length_mm = std::min(2.0, segment.length_mm / 2.0);
        feature.depth_mm = std::max(0.5, std::round(segment.outer_mm * 0.03 * 2.0) / 2.0);
        made.text = QObject::tr("Insert groove");
    } else {
        feature.kind = FeatureKind::keyway;
        feature.length_mm = std::min(std::round(0.7 * segment.length_mm), 60.0);
        feature.width_mm = std::max(2.0, std::round(segment.outer_mm * 0.28));
        feature.depth_mm = std::max(1.2, std::round(segment.outer_mm * 0.12 * 2.0) / 2.0);
        feature.angle_deg = 90.0;
        made.text = QObject::tr("Insert keyway");
    }
    feature.position_mm = std::clamp(std::round(x_mm - start_mm - feature.length_mm / 2.0), 0.0, segment.length_mm - feature.length_mm);
    segment.features.push_back(feature);
    made.subject = pathOf(segment.id);
    return made;
}

Result<Inserted> insertRing(const Arrangement& arrangement, double x_mm)
{
    if (arrangement.supports.empty())
        return refusal("ring-needs-support", "supports");
    Inserted made{arrangement, {}, QObject::tr("Hold the ring")};
    const auto nearest = std::min_element(made.value.supports.begin(), made.value.supports.end(), [&](const Support& a, const Support& b) {
        return std::abs(a.x_mm - x_mm) < std::abs(b.x_mm - x_mm);
    });
    (x_mm < nearest->x_mm ? nearest->holds.inner_left : nearest->holds.inner_right) = HoldKind::retaining_ring;
    made.subject = pathOf(nearest->id);
    return made;
}

} // namespace

const std::vector<ShelfEntry>& shelf()
{
    static const std::vector<ShelfEntry> entries{
        {ShelfItem::segment, 0, QObject::tr("Segment"), QObject::tr("Cylinder of the shaft, at the nearest edge")},
        {ShelfItem::groove, 0, QObject::tr("Groove"), QObject::tr("Groove in a segment")},
        {ShelfItem::keyway, 0, QObject::tr("Keyway"), QObject::tr("Keyway in a segment")},
        {ShelfItem::gear, 1, QObject::tr("Gear"), QObject::tr("Spur, helical or ring gear")},
        {ShelfItem::bevel_gear, 1, QObject::tr("Bevel gear"), QObject::tr("Straight or spiral bevel gear")},
        {ShelfItem::worm, 1, QObject::tr("Worm"), QObject::tr("Worm on this shaft")},
        {ShelfItem::worm_wheel, 1, QObject::tr("Worm wheel"), QObject::tr("Worm wheel on this shaft")},
        {ShelfItem::belt_pulley, 1, QObject::tr("Belt pulley"), QObject::tr("Flat, V, ribbed or toothed belt")},
        {ShelfItem::sprocket, 1, QObject::tr("Sprocket"), QObject::tr("Roller chain sprocket")},
        {ShelfItem::coupling, 1, QObject::tr("Coupling"), QObject::tr("Brings torque in or out")},
        {ShelfItem::impeller, 1, QObject::tr("Impeller"), QObject::tr("Fan, pump wheel, propeller")},
        {ShelfItem::weight, 1, QObject::tr("Weight"), QObject::tr("Flywheel, disk, unbalance")},
        {ShelfItem::free_force, 1, QObject::tr("Free force"), QObject::tr("Force and moment at a point")},
        {ShelfItem::line_load, 1, QObject::tr("Line load"), QObject::tr("Force spread over a length")},
        {ShelfItem::support, 2, QObject::tr("Support"), QObject::tr("Place of a bearing")},
        {ShelfItem::ring, 2, QObject::tr("Ring, nut"), QObject::tr("Holds an inner ring: drop it beside a bearing")},
    };
    return entries;
}

Result<Inserted> insert(const Arrangement& arrangement, ShelfItem item, double x_mm)
{
    if (item == ShelfItem::segment)
        return insertSegment(arrangement, x_mm);
    if (arrangement.shaft.segments.empty())
        return refusal("shaft-missing", "shaft.segments");
    const double length_mm = arrangement.shaft.length_mm();
    const double place_mm = std::clamp(x_mm, 0.0, length_mm);
    if (item == ShelfItem::groove || item == ShelfItem::keyway)
        return insertFeature(arrangement, item, place_mm);
    if (item == ShelfItem::ring)
        return insertRing(arrangement, place_mm);
    const auto name = std::find_if(shelf().begin(), shelf().end(), [&](const ShelfEntry& entry) { return entry.item == item; })->name;
    Inserted made{arrangement, {}, QObject::tr("Insert %1").arg(name.toLower())};
    if (item == ShelfItem::support) {
        Support support;
        const std::string letter = freshLetter(arrangement);
        support.id = SupportId(letter);
        support.name = letter;
        support.x_mm = place_mm;
        const bool located = std::any_of(arrangement.supports.begin(), arrangement.supports.end(),
                                         [](const Support& other) { return other.role == Role::locating; });
        support.role = located ? Role::non_locating : Role::locating;
        made.subject = pathOf(support.id);
        made.value.supports.push_back(std::move(support));
        return made;
    }
    Part part;
    part.id = PartId(freshId(arrangement, idPrefix(item)));
    part.x_mm = place_mm;
    part.body = usualBody(item, shaftDiameterAt_mm(arrangement.shaft, place_mm), place_mm, length_mm);
    if (item == ShelfItem::weight)
        part.mass_kg = 5.0;
    else if (item != ShelfItem::free_force && item != ShelfItem::line_load)
        part.drive = usualDrive(arrangement);
    made.subject = pathOf(part.id);
    made.value.parts.push_back(std::move(part));
    return made;
}

Result<Arrangement> moveTo(const Arrangement& arrangement, const QString& subject, double x_mm)
{
    const double place_mm = std::clamp(x_mm, 0.0, arrangement.shaft.length_mm());
    const Subject what = subjectOf(subject);
    if (what.kind == SubjectKind::support)
        return withSupport(arrangement, SupportId(what.id), [&](Support& support) { support.x_mm = place_mm; });
    return withPart(arrangement, PartId(what.id), [&](Part& part) {
        if (auto* load = std::get_if<DistributedLoad>(&part.body))
            load->end_mm += place_mm - part.x_mm;
        part.x_mm = place_mm;
    });
}

Result<Arrangement> moveShoulder(const Arrangement& arrangement, std::size_t index, double x_mm, bool push)
{
    constexpr double least_mm = 0.5;
    Arrangement next = arrangement;
    std::vector<Segment>& segments = next.shaft.segments;
    if (index >= segments.size())
        return refusal("segment-missing", "shaft.segments");
    const double start_mm = segmentStart_mm(arrangement.shaft, index);
    double end_mm = std::max(x_mm, start_mm + least_mm);
    const bool neighbour_gives = !push && index + 1 < segments.size();
    if (neighbour_gives)
        end_mm = std::min(end_mm, segmentStart_mm(arrangement.shaft, index + 2) - least_mm);
    const auto tidy = [](double value) { return std::round(value * 1e6) / 1e6; };
    const double shift_mm = end_mm - start_mm - segments[index].length_mm;
    segments[index].length_mm = tidy(end_mm - start_mm);
    if (neighbour_gives) {
        segments[index + 1].length_mm = tidy(segments[index + 1].length_mm - shift_mm);
    } else {
        const double edge_mm = start_mm + arrangement.shaft.segments[index].length_mm;
        for (Part& part : next.parts) {
            if (push && part.x_mm >= edge_mm)
                part.x_mm = tidy(part.x_mm + shift_mm);
        }
        for (Support& support : next.supports) {
            if (push && support.x_mm >= edge_mm)
                support.x_mm = tidy(support.x_mm + shift_mm);
        }
    }
    return next;
}

Result<Arrangement> setDiameter(const Arrangement& arrangement, const SegmentId& id, double outer_mm)
{
    if (!(outer_mm > 0.0) || !(outer_mm <= 10000.0))
        return refusal("diameter-out-of-range", "shaft.segments." + id.value + ".outer_mm", {{"outer_mm", outer_mm}});
    return withSegment(arrangement, id, [&](Segment& segment) { segment.outer_mm = outer_mm; });
}

Result<Arrangement> setLength(const Arrangement& arrangement, const SegmentId& id, double length_mm)
{
    if (!(length_mm > 0.0) || !(length_mm <= 100000.0))
        return refusal("length-out-of-range", "shaft.segments." + id.value + ".length_mm", {{"length_mm", length_mm}});
    for (std::size_t i = 0; i < arrangement.shaft.segments.size(); ++i) {
        if (arrangement.shaft.segments[i].id == id)
            return moveShoulder(arrangement, i, segmentStart_mm(arrangement.shaft, i) + length_mm, true);
    }
    return refusal("segment-missing", "shaft.segments");
}

Result<Arrangement> setDirection(const Arrangement& arrangement, const PartId& id, double angle_deg)
{
    return withPart(arrangement, id, [&](Part& part) {
        std::visit(
            [&](auto& body) {
                if constexpr (requires { body.mesh_angle_deg; })
                    body.mesh_angle_deg = angle_deg;
                else if constexpr (requires { body.direction_deg; })
                    body.direction_deg = angle_deg;
            },
            part.body);
    });
}

std::optional<double> direction(const Part& part)
{
    return std::visit(
        [](const auto& body) -> std::optional<double> {
            if constexpr (requires { body.mesh_angle_deg; })
                return body.mesh_angle_deg;
            else if constexpr (requires { body.direction_deg; })
                return body.direction_deg;
            else
                return std::nullopt;
        },
        part.body);
}

Result<Arrangement> remove(const Arrangement& arrangement, const QString& subject)
{
    Arrangement next = arrangement;
    const Subject what = subjectOf(subject);
    if (what.kind == SubjectKind::support) {
        std::erase_if(next.supports, [&](const Support& support) { return support.id.value == what.id; });
    } else if (what.kind == SubjectKind::part) {
        std::erase_if(next.parts, [&](const Part& part) { return part.id.value == what.id; });
        for (LoadCase& load_case : next.duty.load_cases)
            load_case.parts.erase(PartId(what.id));
    } else if (what.kind == SubjectKind::segment) {
        std::erase_if(next.shaft.segments, [&](const Segment& segment) { return segment.id.value == what.id; });
    }
    std::erase_if(next.requirements, [&](const Requirement& requirement) { return !what.id.empty() && requirement.where == what.id; });
    return next;
}

Result<Inserted> duplicate(const Arrangement& arrangement, const QString& subject)
{
    Inserted made{arrangement, {}, QObject::tr("Duplicate")};
    const Subject what = subjectOf(subject);
    const double length_mm = arrangement.shaft.length_mm();
    const auto beside = [&](double x_mm) { return x_mm + 20.0 <= length_mm ? x_mm + 20.0 : std::max(0.0, x_mm - 20.0); };
    if (what.kind == SubjectKind::support) {
        if (const Support* support = findSupport(arrangement, SupportId(what.id))) {
            Support copy = *support;
            copy.name = freshLetter(arrangement);
            copy.id = SupportId(copy.name);
            copy.x_mm = beside(copy.x_mm);
            made.subject = pathOf(copy.id);
            made.value.supports.push_back(std::move(copy));
            return made;
        }
    } else if (what.kind == SubjectKind::part) {
        if (const Part* part = findPart(arrangement, PartId(what.id))) {
            Part copy = *part;
            copy.id = PartId(freshId(arrangement, "G"));
            copy.x_mm = beside(copy.x_mm);
            made.subject = pathOf(copy.id);
            made.value.parts.push_back(std::move(copy));
            return made;
        }
    } else if (what.kind == SubjectKind::segment) {
        for (std::size_t i = 0; i < arrangement.shaft.segments.size(); ++i) {
            if (arrangement.shaft.segments[i].id.value != what.id)
                continue;
            Segment copy = arrangement.shaft.segments[i];
            copy.id = SegmentId(freshId(arrangement, "s"));
            copy.features.clear();
            made.subject = pathOf(copy.id);
            made.value.shaft.segments.insert(made.value.shaft.segments.begin() + static_cast<std::ptrdiff_t>(i) + 1, std::move(copy));
            return made;
        }
    }
    return refusal("nothing-selected", "");
}

Result<Arrangement> chooseBearing(const Arrangement& arrangement, const SupportId& id, const BearingChoice& choice)
{
    return withSupport(arrangement, id, [&](Support& support) { support.bearing = choice; });
}

} // namespace shaftwright::ui::actions
