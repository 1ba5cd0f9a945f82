#include "ui/document/actions.h"

#include "core/document/paths.h"
#include "ui/document/subject.h"

#include "core/edit/edit.h"

#include <QObject>

#include <algorithm>
#include <cmath>

namespace shaftwright::ui::actions
{

namespace
{

Finding refusal(std::string code, std::string path)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = std::move(code);
    finding.path = std::move(path);
    return finding;
}

/// Word of the file for a part of the shelf.
const char* kindWord(ShelfItem item)
{
    switch (item) {
    case ShelfItem::gear:
        return "cylindrical_gear";
    case ShelfItem::bevel_gear:
        return "bevel_gear";
    case ShelfItem::worm:
        return "worm";
    case ShelfItem::worm_wheel:
        return "worm_wheel";
    case ShelfItem::belt_pulley:
        return "belt_pulley";
    case ShelfItem::sprocket:
        return "chain_sprocket";
    case ShelfItem::coupling:
        return "coupling";
    case ShelfItem::impeller:
        return "impeller";
    case ShelfItem::weight:
        return "weight";
    case ShelfItem::line_load:
        return "distributed_load";
    default:
        return "point_load";
    }
}

Result<Inserted> inserted(const Result<Arrangement>& next, const QString& subject, const QString& text)
{
    if (!next.ok())
        return next.finding();
    return Inserted{next.value(), subject, text};
}

/// What the shelf fills in was stated by nobody: it counts as proposed until it is typed. The place is where it was dropped.
Result<Inserted> proposed(Result<Inserted> made)
{
    if (!made.ok())
        return made;
    Inserted next = made.value();
    const std::string below = next.subject.toStdString() + ".";
    for (const AddressedInput& input : addressableInputs(next.value)) {
        if (input.origin != Origin::given || input.path.compare(0, below.size(), below) != 0)
            continue;
        const std::string key = input.path.substr(below.size());
        if (std::holds_alternative<double>(input.value) && key != "x_mm")
            next.value.proposed[input.path] = ProposedOrigin{"usual value of the shelf, not stated by anybody yet"};
    }
    return next;
}

Result<Inserted> insertShaftSegment(const Arrangement& arrangement, double x_mm)
{
    // At the edge that lies nearest to the place.
    std::size_t at = 0;
    double best = 1e300, edge_mm = 0.0;
    for (std::size_t i = 0; i <= arrangement.shaft.segments.size(); ++i) {
        if (std::abs(edge_mm - x_mm) < best) {
            best = std::abs(edge_mm - x_mm);
            at = i;
        }
        if (i < arrangement.shaft.segments.size())
            edge_mm += arrangement.shaft.segments[i].length_mm;
    }
    const Segment segment = newSegment(arrangement, at);
    return proposed(inserted(insertSegment(arrangement, at, segment), pathOf(segment.id), QObject::tr("Insert segment")));
}

Result<Inserted> insertFeature(const Arrangement& arrangement, ShelfItem item, double x_mm)
{
    double start_mm = 0.0;
    std::size_t index = 0;
    while (index + 1 < arrangement.shaft.segments.size() && x_mm > start_mm + arrangement.shaft.segments[index].length_mm) {
        start_mm += arrangement.shaft.segments[index].length_mm;
        ++index;
    }
    const Segment& segment = arrangement.shaft.segments[index];
    Feature feature;
    feature.id = freeFeatureId(segment);
    if (item == ShelfItem::groove) {
        feature.kind = FeatureKind::groove;
        feature.length_mm = std::min(2.0, segment.length_mm / 2.0);
        feature.depth_mm = std::max(0.5, std::round(segment.outer_mm * 0.06) / 2.0);
    } else {
        // Proportions of parallel keys, common practice; the exact size is typed afterwards.
        feature.kind = FeatureKind::keyway;
        feature.length_mm = std::min(std::round(0.7 * segment.length_mm), 60.0);
        feature.width_mm = std::max(2.0, std::round(segment.outer_mm * 0.28));
        feature.depth_mm = std::max(1.2, std::round(segment.outer_mm * 0.24) / 2.0);
        feature.angle_deg = 90.0;
    }
    feature.position_mm = std::clamp(std::round(x_mm - start_mm - feature.length_mm / 2.0), 0.0,
                                     std::max(0.0, segment.length_mm - feature.length_mm));
    return inserted(addFeature(arrangement, segment.id, feature), pathOf(segment.id),
                    item == ShelfItem::groove ? QObject::tr("Insert groove") : QObject::tr("Insert keyway"));
}

Result<Inserted> insertRing(const Arrangement& arrangement, double x_mm)
{
    if (arrangement.supports.empty())
        return refusal("ring-needs-support", "supports");
    const auto nearest =
        std::min_element(arrangement.supports.begin(), arrangement.supports.end(),
                         [&](const Support& a, const Support& b) { return std::abs(a.x_mm - x_mm) < std::abs(b.x_mm - x_mm); });
    Support support = *nearest;
    (x_mm < support.x_mm ? support.holds.inner_left : support.holds.inner_right) = HoldKind::retaining_ring;
    return inserted(setSupport(arrangement, support), pathOf(support.id),
                    QObject::tr("Hold the ring of %1").arg(QString::fromStdString(support.id.value)));
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
        return insertShaftSegment(arrangement, x_mm);
    if (arrangement.shaft.segments.empty())
        return refusal("shaft-missing", "shaft.segments");
    const double place_mm = clampedToShaft_mm(arrangement, x_mm);
    if (item == ShelfItem::groove || item == ShelfItem::keyway)
        return insertFeature(arrangement, item, place_mm);
    if (item == ShelfItem::ring)
        return insertRing(arrangement, place_mm);
    if (item == ShelfItem::support) {
        const Support support = newSupport(arrangement, place_mm);
        return inserted(addSupport(arrangement, support), pathOf(support.id), QObject::tr("Insert support"));
    }
    const std::optional<Part> part = newPart(arrangement, kindWord(item), place_mm);
    if (!part)
        return refusal("edit-unknown-id", "parts");
    const auto entry = std::find_if(shelf().begin(), shelf().end(), [&](const ShelfEntry& e) { return e.item == item; });
    return proposed(inserted(addPart(arrangement, *part), pathOf(part->id), QObject::tr("Insert %1").arg(entry->name.toLower())));
}

Result<Arrangement> moveTo(const Arrangement& arrangement, const QString& subject, double x_mm)
{
    const Subject what = subjectOf(subject);
    if (what.kind == SubjectKind::support)
        return moveSupport(arrangement, SupportId(what.id), x_mm);
    return movePart(arrangement, PartId(what.id), x_mm);
}

Result<Arrangement> moveShoulderAfter(const Arrangement& arrangement, std::size_t index, double x_mm, bool push)
{
    return moveShoulder(arrangement, index + 1, x_mm, push ? Rest::moves_along : Rest::neighbour_gives_way);
}

Result<Arrangement> setDirection(const Arrangement& arrangement, const PartId& id, double angle_deg, int further_mesh)
{
    const Part* found = findPart(arrangement, id);
    if (found == nullptr)
        return refusal("edit-unknown-id", "parts." + id.value);
    Part part = *found;
    std::visit(
        [&](auto& body) {
            if constexpr (requires { body.further_meshes; }) {
                if (further_mesh >= 0 && static_cast<std::size_t>(further_mesh) < body.further_meshes.size()) {
                    body.further_meshes[static_cast<std::size_t>(further_mesh)].mesh_angle_deg = angle_deg;
                    return;
                }
            }
            if constexpr (requires { body.mesh_angle_deg; })
                body.mesh_angle_deg = angle_deg;
            else if constexpr (requires { body.direction_deg; })
                body.direction_deg = angle_deg;
        },
        part.body);
    return setPart(arrangement, std::move(part));
}

std::optional<double> direction(const Part& part, int further_mesh)
{
    return std::visit(
        [&](const auto& body) -> std::optional<double> {
            if constexpr (requires { body.further_meshes; }) {
                if (further_mesh >= 0 && static_cast<std::size_t>(further_mesh) < body.further_meshes.size())
                    return body.further_meshes[static_cast<std::size_t>(further_mesh)].mesh_angle_deg;
            }
            if constexpr (requires { body.mesh_angle_deg; })
                return body.mesh_angle_deg;
            else if constexpr (requires { body.direction_deg; })
                return body.direction_deg;
            else
                return std::nullopt;
        },
        part.body);
}

int furtherMeshOf(const QString& handle)
{
    const QString key = QStringLiteral("further_meshes.");
    const qsizetype at = handle.indexOf(key);
    return at < 0 ? -1 : handle.mid(at + key.size()).section(QLatin1Char('.'), 0, 0).toInt();
}

Result<Arrangement> remove(const Arrangement& arrangement, const QString& subject)
{
    const Subject what = subjectOf(subject);
    switch (what.kind) {
    case SubjectKind::support:
        return removeSupport(arrangement, SupportId(what.id));
    case SubjectKind::part:
        return removePart(arrangement, PartId(what.id));
    case SubjectKind::segment:
        return removeSegment(arrangement, SegmentId(what.id));
    case SubjectKind::nothing:
        break;
    }
    return refusal("nothing-selected", "");
}

Result<Inserted> duplicate(const Arrangement& arrangement, const QString& subject)
{
    constexpr double offset_mm = 20.0;
    const Subject what = subjectOf(subject);
    const QString text = QObject::tr("Duplicate");
    if (what.kind == SubjectKind::support) {
        return inserted(duplicateSupport(arrangement, SupportId(what.id), offset_mm), pathOf(freeSupportId(arrangement)), text);
    }
    if (what.kind == SubjectKind::part) {
        if (const Part* part = findPart(arrangement, PartId(what.id)))
            return inserted(duplicatePart(arrangement, part->id, offset_mm), pathOf(freePartId(arrangement, part->body)), text);
    }
    if (what.kind == SubjectKind::segment) {
        for (std::size_t i = 0; i < arrangement.shaft.segments.size(); ++i) {
            if (arrangement.shaft.segments[i].id.value != what.id)
                continue;
            Segment copy = arrangement.shaft.segments[i];
            copy.id = freeSegmentId(arrangement);
            copy.features.clear();
            const QString path = pathOf(copy.id);
            return inserted(insertSegment(arrangement, i + 1, std::move(copy)), path, text);
        }
    }
    return refusal("nothing-selected", "");
}

} // namespace shaftwright::ui::actions
