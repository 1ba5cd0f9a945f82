#include "core/edit/edit.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>

namespace shaftwright
{
namespace
{

constexpr double greatestPlace_mm = 1e5;
constexpr double edge_mm = 1e-9;

Finding refusal(std::string code, std::string subject, std::string path, NamedValues values)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = std::move(code);
    finding.subject = std::move(subject);
    finding.path = std::move(path);
    finding.values = std::move(values);
    return finding;
}

Finding unknownId(const std::string& id)
{
    return refusal("edit-unknown-id", id, "", {{"id", id}});
}

Finding duplicateId(const std::string& id)
{
    return refusal("edit-duplicate-id", id, "", {{"id", id}});
}

/// A place or length as the document can hold it; none when it is fine.
std::optional<Finding> badPlace(const std::string& subject, const std::string& path, double value)
{
    if (std::isfinite(value) && std::abs(value) <= greatestPlace_mm)
        return std::nullopt;
    return refusal("value-invalid", subject, path,
                   {{"value", std::isfinite(value) ? TextValue(value) : TextValue(std::string("not finite"))},
                    {"least", -greatestPlace_mm},
                    {"greatest", greatestPlace_mm},
                    {"unit", "mm"}});
}

std::optional<Finding> badSize(const std::string& subject, const std::string& path, double value_mm, double least_mm)
{
    if (auto finding = badPlace(subject, path, value_mm))
        return finding;
    if (value_mm >= least_mm)
        return std::nullopt;
    return refusal("segment-size", subject, path, {{"value_mm", value_mm}, {"least_mm", least_mm}});
}

std::optional<Finding> badSegment(const Segment& segment)
{
    const std::string& id = segment.id.value;
    const std::string path = "shaft.segments." + id;
    if (auto finding = badSize(id, path + ".length_mm", segment.length_mm, leastSegment_mm))
        return finding;
    for (const double outer_mm : {segment.outer_mm, segment.outerRight_mm()}) {
        if (auto finding = badSize(id, path + ".outer_mm", outer_mm, leastSegment_mm))
            return finding;
    }
    for (const double bore_mm : {segment.boreLeft_mm(), segment.boreRight_mm()}) {
        if (auto finding = badSize(id, path + ".bore_mm", bore_mm, 0.0))
            return finding;
    }
    if (segment.boreLeft_mm() >= segment.outer_mm)
        return refusal("segment-bore", id, path + ".bore_mm",
                       {{"bore_mm", segment.boreLeft_mm()}, {"outer_mm", segment.outer_mm}});
    if (segment.boreRight_mm() >= segment.outerRight_mm())
        return refusal("segment-bore", id, path + ".bore_mm",
                       {{"bore_mm", segment.boreRight_mm()}, {"outer_mm", segment.outerRight_mm()}});
    return std::nullopt;
}

template <class List, class Id> auto placeOf(List& list, const Id& id)
{
    return std::find_if(list.begin(), list.end(), [&](const auto& item) { return item.id == id; });
}

/// Parts and supports share one space of names: findings and requirements speak of both by id alone.
bool isTaken(const Arrangement& arrangement, const std::string& id)
{
    return findPart(arrangement, PartId(id)) != nullptr || findSupport(arrangement, SupportId(id)) != nullptr;
}

std::string numbered(const std::string& prefix, const auto& taken)
{
    for (int i = 1;; ++i) {
        std::string id = prefix + std::to_string(i);
        if (!taken(id))
            return id;
    }
}

/// Forgets the origins of everything below a path.
void forgetOrigins(Arrangement& arrangement, const std::string& path)
{
    for (auto it = arrangement.proposed.begin(); it != arrangement.proposed.end();) {
        const std::string& key = it->first;
        const bool below = key == path || key.compare(0, path.size() + 1, path + ".") == 0;
        it = below ? arrangement.proposed.erase(it) : std::next(it);
    }
}

/// Drops what refers to a part or support that is gone.
void dropReferences(Arrangement& arrangement, const std::string& id)
{
    auto& list = arrangement.requirements;
    list.erase(std::remove_if(list.begin(), list.end(), [&](const Requirement& requirement) { return requirement.where == id; }),
               list.end());
}

void shiftPart(Part& part, double by_mm)
{
    part.x_mm += by_mm;
    if (auto* load = std::get_if<DistributedLoad>(&part.body))
        load->end_mm += by_mm;
}

/// Shifts everything that stands at or right of `from_mm`. A load that reaches over the place is stretched.
void shiftRest(Arrangement& arrangement, double from_mm, double by_mm)
{
    const auto right = [&](double x_mm) { return x_mm >= from_mm - edge_mm; };
    for (Part& part : arrangement.parts) {
        if (auto* load = std::get_if<DistributedLoad>(&part.body)) {
            if (load->end_mm > from_mm + edge_mm)
                load->end_mm += by_mm;
        }
        if (right(part.x_mm))
            part.x_mm += by_mm;
    }
    for (Support& support : arrangement.supports) {
        if (right(support.x_mm))
            support.x_mm += by_mm;
    }
    for (Requirement& requirement : arrangement.requirements) {
        if (requirement.x_mm && right(*requirement.x_mm))
            *requirement.x_mm += by_mm;
    }
}

/// Standard sizes for new shaft ends and pitches: the shaft at x, or 30 mm where there is none.
double diameterFor_mm(const Arrangement& arrangement, double x_mm)
{
    const double diameter_mm = shaftDiameterAt_mm(arrangement.shaft, x_mm, false);
    return diameter_mm > 0.0 ? diameter_mm : 30.0;
}

double roundedUp(double value, double step)
{
    return std::ceil(value / step - 1e-9) * step;
}

Drive newDrive(const Arrangement& arrangement)
{
    const bool any =
        std::any_of(arrangement.parts.begin(), arrangement.parts.end(), [](const Part& part) { return part.drive.has_value(); });
    const bool remainder = std::any_of(arrangement.parts.begin(), arrangement.parts.end(),
                                       [](const Part& part) { return part.drive && part.drive->takes_remaining; });
    Drive drive;
    if (!any) {
        drive.power_kW = 5.5;
        return drive;
    }
    drive.power = PowerSense::driving;
    if (remainder)
        drive.power_kW = 1.0;
    else
        drive.takes_remaining = true;
    return drive;
}

} // namespace

// --- Ids -------------------------------------------------------------------------------------------------------

PartId freePartId(const Arrangement& arrangement, const PartBody& body)
{
    static constexpr const char* prefixes[] = {"G", "G", "W", "W", "P", "C", "K", "I", "M", "F", "Q"};
    static_assert(std::variant_size_v<PartBody> == std::size(prefixes));
    return PartId(numbered(prefixes[body.index()], [&](const std::string& id) { return isTaken(arrangement, id); }));
}

SupportId freeSupportId(const Arrangement& arrangement)
{
    for (int round = 1;; ++round) {
        for (char letter = 'A'; letter <= 'Z'; ++letter) {
            std::string id(1, letter);
            if (round > 1)
                id += std::to_string(round);
            if (!isTaken(arrangement, id))
                return SupportId(id);
        }
    }
}

SegmentId freeSegmentId(const Arrangement& arrangement)
{
    return SegmentId(numbered("S", [&](const std::string& id) { return findSegment(arrangement, SegmentId(id)) != nullptr; }));
}

FeatureId freeFeatureId(const Segment& segment)
{
    return FeatureId(
        numbered("F", [&](const std::string& id) { return placeOf(segment.features, FeatureId(id)) != segment.features.end(); }));
}

CaseId freeCaseId(const Arrangement& arrangement)
{
    return CaseId(numbered("LC", [&](const std::string& id) { return findCase(arrangement, CaseId(id)) != nullptr; }));
}

RequirementId freeRequirementId(const Arrangement& arrangement)
{
    return RequirementId(numbered("R", [&](const std::string& id) {
        return placeOf(arrangement.requirements, RequirementId(id)) != arrangement.requirements.end();
    }));
}

RemarkId freeRemarkId(const Arrangement& arrangement)
{
    return RemarkId(numbered(
        "N", [&](const std::string& id) { return placeOf(arrangement.remarks, RemarkId(id)) != arrangement.remarks.end(); }));
}

// --- Templates -------------------------------------------------------------------------------------------------

Arrangement emptyArrangement()
{
    Arrangement arrangement;
    LoadCase rated;
    rated.id = CaseId("rated");
    rated.speed_rpm = 1000.0;
    arrangement.duty.load_cases.push_back(rated);
    return arrangement;
}

Arrangement plainTwoBearingShaft()
{
    Arrangement arrangement = emptyArrangement();
    const auto addSegment = [&](double length_mm, double outer_mm) {
        Segment segment;
        segment.id = freeSegmentId(arrangement);
        segment.length_mm = length_mm;
        segment.outer_mm = outer_mm;
        arrangement.shaft.segments.push_back(segment);
    };
    addSegment(25.0, 40.0);
    addSegment(60.0, 50.0);
    addSegment(70.0, 45.0);
    addSegment(25.0, 40.0);
    addSegment(60.0, 35.0);

    Support left = newSupport(arrangement, 12.5);
    arrangement.supports.push_back(left);
    Support right = newSupport(arrangement, 167.5);
    arrangement.supports.push_back(right);

    Part gear = *newPart(arrangement, "cylindrical_gear", 105.0);
    arrangement.parts.push_back(gear);
    Part coupling = *newPart(arrangement, "coupling", 215.0);
    arrangement.parts.push_back(coupling);
    return arrangement;
}

std::optional<Part> newPart(const Arrangement& arrangement, std::string_view kind, double x_mm)
{
    const double shaft_mm = diameterFor_mm(arrangement, x_mm);
    Part part;
    part.x_mm = clampedToShaft_mm(arrangement, x_mm);
    if (kind == "cylindrical_gear") {
        CylindricalGear gear;
        gear.normal_module_mm = 3.0;
        gear.teeth = std::max(24, static_cast<int>(std::ceil(1.8 * shaft_mm / gear.normal_module_mm)));
        gear.mesh_angle_deg = 90.0;
        gear.face_width_mm = 40.0;
        part.body = gear;
    } else if (kind == "bevel_gear") {
        BevelGear gear;
        gear.outer_module_mm = 3.0;
        gear.teeth = std::max(24, static_cast<int>(std::ceil(2.2 * shaft_mm / gear.outer_module_mm)));
        gear.cone_angle_deg = 45.0;
        gear.mesh_angle_deg = 90.0;
        gear.face_width_mm = 20.0;
        part.body = gear;
    } else if (kind == "worm") {
        Worm worm;
        worm.starts = 2;
        worm.axial_module_mm = 4.0;
        worm.reference_diameter_mm = std::max(40.0, roundedUp(1.3 * shaft_mm, 5.0));
        worm.mesh_angle_deg = 270.0;
        worm.face_width_mm = 60.0;
        part.body = worm;
    } else if (kind == "worm_wheel") {
        WormWheel wheel;
        wheel.teeth = 40;
        wheel.reference_diameter_mm = std::max(160.0, roundedUp(2.5 * shaft_mm, 10.0));
        wheel.lead_angle_deg = 11.31; // two starts, axial module 4 mm, diameter 40 mm
        wheel.mesh_angle_deg = 90.0;
        wheel.face_width_mm = 35.0;
        part.body = wheel;
    } else if (kind == "belt_pulley") {
        BeltPulley pulley;
        pulley.diameter_mm = std::max(125.0, roundedUp(2.5 * shaft_mm, 5.0));
        pulley.other_diameter_mm = pulley.diameter_mm;
        pulley.centre_distance_mm = 4.0 * pulley.diameter_mm;
        pulley.direction_deg = 90.0;
        pulley.face_width_mm = 50.0;
        pulley.grooves = 3;
        part.body = pulley;
    } else if (kind == "chain_sprocket") {
        ChainSprocket sprocket;
        sprocket.pitch_mm = 15.875; // ISO 606, chain 10B
        sprocket.teeth = std::max(21, static_cast<int>(std::ceil(2.0 * 3.1416 * shaft_mm / sprocket.pitch_mm)));
        sprocket.other_teeth = sprocket.teeth;
        sprocket.centre_distance_mm = 40.0 * sprocket.pitch_mm; // usual span of 30 to 50 pitches, common practice
        sprocket.direction_deg = 90.0;
        sprocket.face_width_mm = 9.0;
        part.body = sprocket;
    } else if (kind == "coupling") {
        Coupling coupling;
        coupling.outer_mm = roundedUp(2.5 * shaft_mm, 5.0);
        coupling.length_mm = 60.0;
        part.body = coupling;
    } else if (kind == "impeller") {
        Impeller impeller;
        impeller.thrust_N = 500.0;
        impeller.outer_mm = roundedUp(8.0 * shaft_mm, 10.0);
        impeller.width_mm = 50.0;
        part.body = impeller;
        part.mass_kg = 5.0;
    } else if (kind == "weight") {
        WeightBody body;
        body.outer_mm = roundedUp(5.0 * shaft_mm, 10.0);
        body.width_mm = 40.0;
        part.body = body;
        // A steel disk of this size.
        part.mass_kg = std::round(7.85e-6 * 3.14159 / 4.0 * body.outer_mm * body.outer_mm * body.width_mm * 10.0) / 10.0;
    } else if (kind == "point_load") {
        PointLoad load;
        load.force_N.z = -1000.0;
        part.body = load;
    } else if (kind == "distributed_load") {
        DistributedLoad load;
        load.start_N_per_mm.z = -5.0;
        load.end_N_per_mm.z = -5.0;
        part.body = load;
        const double length_mm = arrangement.shaft.length_mm();
        const double reach_mm = length_mm > 0.0 ? std::min(50.0, length_mm) : 50.0;
        if (length_mm > 0.0 && part.x_mm + reach_mm > length_mm)
            part.x_mm = length_mm - reach_mm;
        std::get<DistributedLoad>(part.body).end_mm = part.x_mm + reach_mm;
    } else {
        return std::nullopt;
    }
    const bool loads_only = std::holds_alternative<WeightBody>(part.body) || std::holds_alternative<PointLoad>(part.body) ||
                            std::holds_alternative<DistributedLoad>(part.body);
    if (!loads_only)
        part.drive = newDrive(arrangement);
    part.id = freePartId(arrangement, part.body);
    return part;
}

Support newSupport(const Arrangement& arrangement, double x_mm)
{
    Support support;
    support.id = freeSupportId(arrangement);
    support.x_mm = clampedToShaft_mm(arrangement, x_mm);
    const bool located = std::any_of(arrangement.supports.begin(), arrangement.supports.end(),
                                     [](const Support& other) { return other.role == Role::locating; });
    support.role = located ? Role::non_locating : Role::locating;
    return support;
}

Segment newSegment(const Arrangement& arrangement, std::size_t index)
{
    Segment segment;
    segment.id = freeSegmentId(arrangement);
    segment.length_mm = 40.0;
    segment.outer_mm = 30.0;
    const auto& list = arrangement.shaft.segments;
    if (!list.empty())
        segment.outer_mm = index > 0 ? list[std::min(index, list.size()) - 1].outerRight_mm() : list.front().outer_mm;
    return segment;
}

// --- Parts -----------------------------------------------------------------------------------------------------

double clampedToShaft_mm(const Arrangement& arrangement, double x_mm)
{
    const double length_mm = arrangement.shaft.length_mm();
    return length_mm > 0.0 ? std::clamp(x_mm, 0.0, length_mm) : x_mm;
}

namespace
{

/// Puts the point of action at x; a distributed load keeps its length as far as the shaft reaches.
void placePart(const Arrangement& arrangement, Part& part, double x_mm)
{
    if (const auto* load = std::get_if<DistributedLoad>(&part.body)) {
        const double reach_mm = load->end_mm - part.x_mm;
        const double length_mm = arrangement.shaft.length_mm();
        double target_mm = x_mm;
        if (length_mm > 0.0 && reach_mm >= 0.0 && reach_mm <= length_mm)
            target_mm = std::clamp(x_mm, 0.0, length_mm - reach_mm);
        shiftPart(part, target_mm - part.x_mm);
        return;
    }
    part.x_mm = clampedToShaft_mm(arrangement, x_mm);
}

} // namespace

Result<Arrangement> addPart(const Arrangement& arrangement, Part part)
{
    if (part.id.empty() || isTaken(arrangement, part.id.value))
        return duplicateId(part.id.value);
    if (auto finding = badPlace(part.id.value, "parts." + part.id.value + ".x_mm", part.x_mm))
        return *finding;
    Arrangement changed = arrangement;
    placePart(changed, part, part.x_mm);
    changed.parts.push_back(std::move(part));
    return changed;
}

Result<Arrangement> removePart(const Arrangement& arrangement, const PartId& id)
{
    Arrangement changed = arrangement;
    const auto place = placeOf(changed.parts, id);
    if (place == changed.parts.end())
        return unknownId(id.value);
    changed.parts.erase(place);
    for (LoadCase& load_case : changed.duty.load_cases)
        load_case.parts.erase(id);
    dropReferences(changed, id.value);
    forgetOrigins(changed, "parts." + id.value);
    return changed;
}

Result<Arrangement> movePart(const Arrangement& arrangement, const PartId& id, double x_mm)
{
    Arrangement changed = arrangement;
    const auto place = placeOf(changed.parts, id);
    if (place == changed.parts.end())
        return unknownId(id.value);
    if (auto finding = badPlace(id.value, "parts." + id.value + ".x_mm", x_mm))
        return *finding;
    placePart(changed, *place, x_mm);
    forgetOrigins(changed, "parts." + id.value + ".x_mm");
    return changed;
}

Result<Arrangement> setPart(const Arrangement& arrangement, Part part)
{
    Arrangement changed = arrangement;
    const auto place = placeOf(changed.parts, part.id);
    if (place == changed.parts.end())
        return unknownId(part.id.value);
    if (auto finding = badPlace(part.id.value, "parts." + part.id.value + ".x_mm", part.x_mm))
        return *finding;
    *place = std::move(part);
    return changed;
}

Result<Arrangement> duplicatePart(const Arrangement& arrangement, const PartId& id, double offset_mm)
{
    const Part* original = findPart(arrangement, id);
    if (original == nullptr)
        return unknownId(id.value);
    if (auto finding = badPlace(id.value, "parts." + id.value + ".x_mm", original->x_mm + offset_mm))
        return *finding;
    Part copy = *original;
    copy.id = freePartId(arrangement, copy.body);
    placePart(arrangement, copy, original->x_mm + offset_mm);
    if (copy.drive && copy.drive->takes_remaining) {
        copy.drive->takes_remaining = false;
        copy.drive->sense_fixed = false; // one part takes what is left; the copy's power stays open and a finding asks for it
    }
    Arrangement changed = arrangement;
    changed.parts.insert(std::next(changed.parts.begin(), std::distance(arrangement.parts.data(), original) + 1),
                         std::move(copy));
    return changed;
}

// --- Supports --------------------------------------------------------------------------------------------------

namespace
{

/// Changes one support of a copy.
template <class Change> Result<Arrangement> withSupport(const Arrangement& arrangement, const SupportId& id, Change change)
{
    Arrangement changed = arrangement;
    const auto place = placeOf(changed.supports, id);
    if (place == changed.supports.end())
        return unknownId(id.value);
    change(changed, *place);
    return changed;
}

} // namespace

Result<Arrangement> addSupport(const Arrangement& arrangement, Support support)
{
    if (support.id.empty() || isTaken(arrangement, support.id.value))
        return duplicateId(support.id.value);
    if (auto finding = badPlace(support.id.value, "supports." + support.id.value + ".x_mm", support.x_mm))
        return *finding;
    Arrangement changed = arrangement;
    support.x_mm = clampedToShaft_mm(changed, support.x_mm);
    changed.supports.push_back(std::move(support));
    return changed;
}

Result<Arrangement> removeSupport(const Arrangement& arrangement, const SupportId& id)
{
    Arrangement changed = arrangement;
    const auto place = placeOf(changed.supports, id);
    if (place == changed.supports.end())
        return unknownId(id.value);
    changed.supports.erase(place);
    dropReferences(changed, id.value);
    forgetOrigins(changed, "supports." + id.value);
    return changed;
}

Result<Arrangement> moveSupport(const Arrangement& arrangement, const SupportId& id, double x_mm)
{
    if (auto finding = badPlace(id.value, "supports." + id.value + ".x_mm", x_mm))
        return *finding;
    return withSupport(arrangement, id, [&](Arrangement& changed, Support& support) {
        support.x_mm = clampedToShaft_mm(changed, x_mm);
        forgetOrigins(changed, "supports." + id.value + ".x_mm");
    });
}

Result<Arrangement> setSupport(const Arrangement& arrangement, Support support)
{
    if (auto finding = badPlace(support.id.value, "supports." + support.id.value + ".x_mm", support.x_mm))
        return *finding;
    const SupportId id = support.id;
    return withSupport(arrangement, id, [&](Arrangement&, Support& place) { place = std::move(support); });
}

Result<Arrangement> duplicateSupport(const Arrangement& arrangement, const SupportId& id, double offset_mm)
{
    const Support* original = findSupport(arrangement, id);
    if (original == nullptr)
        return unknownId(id.value);
    if (auto finding = badPlace(id.value, "supports." + id.value + ".x_mm", original->x_mm + offset_mm))
        return *finding;
    Support copy = *original;
    copy.id = freeSupportId(arrangement);
    copy.x_mm = clampedToShaft_mm(arrangement, original->x_mm + offset_mm);
    if (copy.role == Role::locating)
        copy.role = Role::non_locating;
    Arrangement changed = arrangement;
    changed.supports.push_back(std::move(copy));
    return changed;
}

Result<Arrangement> setRole(const Arrangement& arrangement, const SupportId& id, Role role)
{
    return withSupport(arrangement, id, [&](Arrangement& changed, Support& support) {
        support.role = role;
        if (role == Role::locating || role == Role::non_locating)
            support.carries.reset();
        if (role != Role::end_play)
            support.play_mm.reset();
        forgetOrigins(changed, "supports." + id.value + ".role");
    });
}

Result<Arrangement> setBearing(const Arrangement& arrangement, const SupportId& id, BearingChoice bearing,
                               const std::optional<std::string>& proposal_reason)
{
    if (bearing.rows.empty())
        return refusal("value-invalid", id.value, "supports." + id.value + ".bearing.rows",
                       {{"value", 0.0}, {"least", 1.0}, {"greatest", 1000.0}, {"unit", ""}});
    return withSupport(arrangement, id, [&](Arrangement& changed, Support& support) {
        support.bearing = std::move(bearing);
        const std::string path = "supports." + id.value + ".bearing";
        forgetOrigins(changed, path);
        if (proposal_reason)
            changed.proposed[path] = ProposedOrigin{*proposal_reason};
    });
}

Result<Arrangement> clearBearing(const Arrangement& arrangement, const SupportId& id)
{
    return withSupport(arrangement, id, [&](Arrangement& changed, Support& support) {
        support.bearing.reset();
        forgetOrigins(changed, "supports." + id.value + ".bearing");
    });
}

// --- Segments --------------------------------------------------------------------------------------------------

Result<Arrangement> insertSegment(const Arrangement& arrangement, std::size_t index, Segment segment)
{
    if (segment.id.empty() || findSegment(arrangement, segment.id) != nullptr)
        return duplicateId(segment.id.value);
    if (auto finding = badSegment(segment))
        return *finding;
    Arrangement changed = arrangement;
    auto& list = changed.shaft.segments;
    index = std::min(index, list.size());
    // At the right end nothing moves: what stands beyond it stands on the new segment from now on.
    if (index < list.size())
        shiftRest(changed, segmentStart_mm(arrangement.shaft, index), segment.length_mm);
    list.insert(std::next(list.begin(), static_cast<std::ptrdiff_t>(index)), std::move(segment));
    return changed;
}

Result<Arrangement> removeSegment(const Arrangement& arrangement, const SegmentId& id)
{
    Arrangement changed = arrangement;
    auto& list = changed.shaft.segments;
    const auto place = placeOf(list, id);
    if (place == list.end())
        return unknownId(id.value);
    const auto index = static_cast<std::size_t>(std::distance(list.begin(), place));
    const double start_mm = segmentStart_mm(changed.shaft, index);
    const double end_mm = start_mm + place->length_mm;
    const auto moved = [&](double x_mm) {
        if (x_mm < start_mm)
            return x_mm;
        return x_mm >= end_mm - edge_mm ? x_mm - (end_mm - start_mm) : start_mm;
    };
    list.erase(place);
    for (Part& part : changed.parts) {
        part.x_mm = moved(part.x_mm);
        if (auto* load = std::get_if<DistributedLoad>(&part.body))
            load->end_mm = moved(load->end_mm);
    }
    for (Support& support : changed.supports)
        support.x_mm = moved(support.x_mm);
    for (Requirement& requirement : changed.requirements) {
        if (requirement.x_mm)
            *requirement.x_mm = moved(*requirement.x_mm);
    }
    forgetOrigins(changed, "shaft.segments." + id.value);
    return changed;
}

Result<Arrangement> splitSegment(const Arrangement& arrangement, const SegmentId& id, double from_left_mm)
{
    Arrangement changed = arrangement;
    auto& list = changed.shaft.segments;
    const auto place = placeOf(list, id);
    if (place == list.end())
        return unknownId(id.value);
    const std::string path = "shaft.segments." + id.value + ".length_mm";
    if (auto finding = badSize(id.value, path, from_left_mm, leastSegment_mm))
        return *finding;
    if (auto finding = badSize(id.value, path, place->length_mm - from_left_mm, leastSegment_mm))
        return *finding;

    Segment& left = *place;
    Segment right = left;
    right.id = freeSegmentId(arrangement);
    const double share = from_left_mm / left.length_mm;
    const double outer_mm = left.outer_mm + share * (left.outerRight_mm() - left.outer_mm);
    const double bore_mm = left.boreLeft_mm() + share * (left.boreRight_mm() - left.boreLeft_mm());
    right.length_mm = left.length_mm - from_left_mm;
    left.length_mm = from_left_mm;
    right.outer_mm = outer_mm;
    if (left.outer_end_mm)
        left.outer_end_mm = outer_mm;
    if (left.bore_end_mm) {
        right.bore_mm = bore_mm;
        left.bore_end_mm = bore_mm;
    }
    const auto isRight = [&](const Feature& feature) { return feature.position_mm >= from_left_mm; };
    left.features.erase(std::remove_if(left.features.begin(), left.features.end(), isRight), left.features.end());
    right.features.erase(std::remove_if(right.features.begin(), right.features.end(), std::not_fn(isRight)),
                         right.features.end());
    for (Feature& feature : right.features)
        feature.position_mm -= from_left_mm;
    list.insert(std::next(place), std::move(right));
    return changed;
}

Result<Arrangement> resizeSegment(const Arrangement& arrangement, const SegmentId& id, double length_mm, Rest rest)
{
    const auto& list = arrangement.shaft.segments;
    const auto place = placeOf(list, id);
    if (place == list.end())
        return unknownId(id.value);
    if (auto finding = badSize(id.value, "shaft.segments." + id.value + ".length_mm", length_mm, leastSegment_mm))
        return *finding;
    const auto index = static_cast<std::size_t>(std::distance(list.begin(), place));
    const bool last = index + 1 == list.size();
    if (rest == Rest::neighbour_gives_way && !last) {
        // A typed length that the neighbour cannot give is refused; a drag stops there instead.
        const Segment& next = list[index + 1];
        const double left_mm = next.length_mm - (length_mm - place->length_mm);
        if (auto finding = badSize(next.id.value, "shaft.segments." + next.id.value + ".length_mm", left_mm, leastSegment_mm))
            return *finding;
    }
    Arrangement changed = arrangement;
    auto& segments = changed.shaft.segments;
    const double change_mm = length_mm - place->length_mm;
    if (last || rest == Rest::moves_along) {
        if (!last)
            shiftRest(changed, segmentStart_mm(arrangement.shaft, index + 1), change_mm);
        segments[index].length_mm = length_mm;
    } else {
        segments[index].length_mm = length_mm;
        segments[index + 1].length_mm -= change_mm;
    }
    return changed;
}

Result<Arrangement> moveShoulder(const Arrangement& arrangement, std::size_t index, double x_mm, Rest rest)
{
    const auto& list = arrangement.shaft.segments;
    if (list.empty() || index > list.size())
        return refusal("edit-unknown-id", "", "shaft.segments", {{"id", std::to_string(index)}});
    if (auto finding = badPlace("", "shaft.segments", x_mm))
        return *finding;
    Arrangement changed = arrangement;
    auto& segments = changed.shaft.segments;
    if (index == 0) {
        const double end_mm = segments.front().length_mm;
        const double face_mm = std::min(x_mm, end_mm - leastSegment_mm);
        segments.front().length_mm = end_mm - face_mm;
        for (Feature& feature : segments.front().features)
            feature.position_mm = std::max(0.0, feature.position_mm - face_mm);
        // x counts from the left face: everything keeps its place in space.
        for (Part& part : changed.parts)
            shiftPart(part, -face_mm);
        for (Support& support : changed.supports)
            support.x_mm -= face_mm;
        for (Requirement& requirement : changed.requirements) {
            if (requirement.x_mm)
                *requirement.x_mm -= face_mm;
        }
        return changed;
    }
    const double start_mm = segmentStart_mm(arrangement.shaft, index - 1);
    const double old_mm = segmentStart_mm(arrangement.shaft, index);
    double face_mm = std::max(x_mm, start_mm + leastSegment_mm);
    if (index < list.size() && rest == Rest::neighbour_gives_way)
        face_mm = std::min(face_mm, old_mm + segments[index].length_mm - leastSegment_mm);
    const double change_mm = face_mm - old_mm;
    segments[index - 1].length_mm = face_mm - start_mm;
    if (index == list.size())
        return changed;
    if (rest == Rest::moves_along)
        shiftRest(changed, old_mm, change_mm);
    else
        segments[index].length_mm -= change_mm;
    return changed;
}

namespace
{

template <class Change> Result<Arrangement> withSegment(const Arrangement& arrangement, const SegmentId& id, Change change)
{
    Arrangement changed = arrangement;
    const auto place = placeOf(changed.shaft.segments, id);
    if (place == changed.shaft.segments.end())
        return unknownId(id.value);
    change(*place);
    if (auto finding = badSegment(*place))
        return *finding;
    return changed;
}

} // namespace

Result<Arrangement> setDiameter(const Arrangement& arrangement, const SegmentId& id, double outer_mm,
                                std::optional<double> outer_end_mm)
{
    return withSegment(arrangement, id, [&](Segment& segment) {
        segment.outer_mm = outer_mm;
        segment.outer_end_mm = outer_end_mm;
    });
}

Result<Arrangement> setBore(const Arrangement& arrangement, const SegmentId& id, std::optional<double> bore_mm,
                            std::optional<double> bore_end_mm)
{
    return withSegment(arrangement, id, [&](Segment& segment) {
        segment.bore_mm = bore_mm;
        segment.bore_end_mm = bore_end_mm;
    });
}

Result<Arrangement> addFeature(const Arrangement& arrangement, const SegmentId& id, Feature feature)
{
    const Segment* segment = findSegment(arrangement, id);
    if (segment == nullptr)
        return unknownId(id.value);
    if (feature.id.empty() || placeOf(segment->features, feature.id) != segment->features.end())
        return duplicateId(feature.id.value);
    for (const double value : {feature.position_mm, feature.length_mm, feature.depth_mm, feature.width_mm}) {
        if (auto finding = badSize(id.value, "shaft.segments." + id.value + ".features." + feature.id.value, value, 0.0))
            return *finding;
    }
    feature.position_mm = std::min(feature.position_mm, segment->length_mm);
    return withSegment(arrangement, id, [&](Segment& changed) { changed.features.push_back(std::move(feature)); });
}

Result<Arrangement> removeFeature(const Arrangement& arrangement, const SegmentId& id, const FeatureId& feature)
{
    const Segment* segment = findSegment(arrangement, id);
    if (segment == nullptr)
        return unknownId(id.value);
    if (placeOf(segment->features, feature) == segment->features.end())
        return unknownId(feature.value);
    return withSegment(arrangement, id, [&](Segment& changed) { changed.features.erase(placeOf(changed.features, feature)); });
}

// --- Duty ------------------------------------------------------------------------------------------------------

Result<Arrangement> addLoadCase(const Arrangement& arrangement, LoadCase load_case)
{
    if (load_case.id.empty() || findCase(arrangement, load_case.id) != nullptr)
        return duplicateId(load_case.id.value);
    Arrangement changed = arrangement;
    changed.duty.load_cases.push_back(std::move(load_case));
    return changed;
}

Result<Arrangement> removeLoadCase(const Arrangement& arrangement, const CaseId& id)
{
    Arrangement changed = arrangement;
    const auto place = placeOf(changed.duty.load_cases, id);
    if (place == changed.duty.load_cases.end())
        return unknownId(id.value);
    changed.duty.load_cases.erase(place);
    forgetOrigins(changed, "duty.load_cases." + id.value);
    return changed;
}

Result<Arrangement> setLoadCase(const Arrangement& arrangement, LoadCase load_case)
{
    Arrangement changed = arrangement;
    const auto place = placeOf(changed.duty.load_cases, load_case.id);
    if (place == changed.duty.load_cases.end())
        return unknownId(load_case.id.value);
    *place = std::move(load_case);
    return changed;
}

} // namespace shaftwright
