#include "ui/tables/table_shape.h"

#include "core/catalogue/catalogue.h"
#include "core/catalogue/family_rows.h"
#include "core/document/paths.h"
#include "core/edit/edit.h"
#include "core/units/number_text.h"
#include "ui/document/actions.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/widgets/number_text.h"

#include <QHash>
#include <QObject>

#include <algorithm>
#include <cmath>

namespace shaftwright::ui
{

namespace
{

using Words = std::vector<std::pair<QString, QString>>;

QString tr(const char* text)
{
    return QObject::tr(text);
}

TableColumn fixedColumn(const char* key, const QString& title)
{
    TableColumn column;
    column.key = QString::fromLatin1(key);
    column.title = title;
    column.fixed = true;
    column.also = {QStringLiteral("id")};
    return column;
}

TableColumn text(const char* key, const QString& title, QStringList also = {})
{
    TableColumn column;
    column.key = QString::fromLatin1(key);
    column.title = title;
    column.may_be_open = true;
    column.keys = {key};
    column.also = std::move(also);
    return column;
}

TableColumn word(const char* key, const QString& title, Words words, bool open, QStringList also = {})
{
    TableColumn column = text(key, title, std::move(also));
    column.words = std::move(words);
    column.may_be_open = open;
    return column;
}

TableColumn amount(const char* key, const QString& title, QuantityKind kind, bool open, bool needed, QStringList also = {},
                   std::vector<std::string> keys = {})
{
    TableColumn column = text(key, title, std::move(also));
    column.quantity = kind;
    column.may_be_open = open;
    column.needed = needed;
    if (!keys.empty())
        column.keys = std::move(keys);
    return column;
}

using Q = QuantityKind;

std::vector<TableColumn> segmentColumns()
{
    TableColumn start =
        amount("start_mm", tr("From the left"), Q::length_mm, false, false, {QStringLiteral("start"), QStringLiteral("from")});
    start.fixed = true;
    start.keys.clear();
    return {fixedColumn("id", tr("Id")),
            start,
            amount("length_mm", tr("Length"), Q::length_mm, false, true,
                   {QStringLiteral("l"), QStringLiteral("länge"), QStringLiteral("width")}),
            amount("outer_mm", tr("Diameter"), Q::length_mm, false, true,
                   {QStringLiteral("d"), QStringLiteral("ø"), QStringLiteral("outer"), QStringLiteral("od"),
                    QStringLiteral("durchmesser")}),
            amount("outer_end_mm", tr("Diameter at right end"), Q::length_mm, true, false,
                   {QStringLiteral("right diameter"), QStringLiteral("d2")}),
            amount("bore_mm", tr("Bore"), Q::length_mm, true, false,
                   {QStringLiteral("inner"), QStringLiteral("id diameter"), QStringLiteral("bohrung")}),
            amount("bore_end_mm", tr("Bore at right end"), Q::length_mm, true, false, {})};
}

std::vector<TableColumn> partColumns()
{
    TableColumn kind = word("kind", tr("Kind"), partKindWords(), false, {QStringLiteral("type"), QStringLiteral("art")});
    kind.fixed = true;
    kind.needed = true;
    return {
        fixedColumn("id", tr("Id")),
        kind,
        text("name", tr("Name"), {QStringLiteral("bezeichnung")}),
        amount("x_mm", tr("Place x"), Q::length_mm, false, true,
               {QStringLiteral("x"), QStringLiteral("place"), QStringLiteral("position")}),
        word("power", tr("Power goes"), {{QStringLiteral("driven"), tr("in")}, {QStringLiteral("driving"), tr("out")}}, false,
             {QStringLiteral("direction of power")}),
        amount("power_kW", tr("Power"), Q::power_kW, true, false, {QStringLiteral("p"), QStringLiteral("leistung")}),
        amount("torque_Nmm", tr("Torque"), Q::moment_Nmm, true, false, {QStringLiteral("t"), QStringLiteral("drehmoment")}),
        word("takes_remaining", tr("Takes what remains"),
             {{QStringLiteral("false"), tr("no")}, {QStringLiteral("true"), tr("yes")}}, false, {}),
        amount("mass_kg", tr("Mass"), Q::mass_kg, true, false, {QStringLiteral("m"), QStringLiteral("masse")}),
        amount("teeth", tr("Teeth"), Q::number, false, false,
               {QStringLiteral("z"), QStringLiteral("starts"), QStringLiteral("zähne")}, {"teeth", "starts"}),
        amount("module_mm", tr("Module"), Q::length_mm, false, false,
               {QStringLiteral("mn"), QStringLiteral("m_n"), QStringLiteral("modul")},
               {"normal_module_mm", "outer_module_mm", "axial_module_mm"}),
        amount("diameter_mm", tr("Diameter"), Q::length_mm, false, false, {QStringLiteral("d"), QStringLiteral("ø")},
               {"diameter_mm", "reference_diameter_mm", "outer_mm"}),
        amount("helix_deg", tr("Helix, spiral"), Q::angle_deg, false, false,
               {QStringLiteral("helix"), QStringLiteral("beta"), QStringLiteral("spiral")}, {"helix_deg", "spiral_deg"}),
        word("hand", tr("Hand"),
             {{QStringLiteral("none"), tr("none")}, {QStringLiteral("right"), tr("right")}, {QStringLiteral("left"), tr("left")}},
             false, {}),
        amount("angle_deg", tr("Direction"), Q::angle_deg, false, false,
               {QStringLiteral("angle"), QStringLiteral("mesh angle"), QStringLiteral("winkel")},
               {"mesh_angle_deg", "direction_deg"}),
        amount("face_width_mm", tr("Width"), Q::length_mm, false, false,
               {QStringLiteral("b"), QStringLiteral("face width"), QStringLiteral("breite")},
               {"face_width_mm", "width_mm", "length_mm"})};
}

std::vector<TableColumn> supportColumns()
{
    Words roles;
    for (const auto& [key, role] : {std::pair{"locating", Role::locating},
                                    {"non_locating", Role::non_locating},
                                    {"adjusted", Role::adjusted},
                                    {"end_play", Role::end_play},
                                    {"axial_only", Role::axial_only}})
        roles.emplace_back(QString::fromLatin1(key), roleName(role));
    return {
        fixedColumn("id", tr("Id")),
        text("name", tr("Name"), {QStringLiteral("bezeichnung")}),
        amount("x_mm", tr("Place x"), Q::length_mm, false, true,
               {QStringLiteral("x"), QStringLiteral("place"), QStringLiteral("position")}),
        word("role", tr("Role"), roles, false, {}),
        word("carries", tr("Keeps from moving to"),
             {{QStringLiteral("plus"), QStringLiteral("+x")}, {QStringLiteral("minus"), QStringLiteral("−x")}}, true,
             {QStringLiteral("carries")}),
        text("bearing", tr("Bearing"), {QStringLiteral("designation"), QStringLiteral("lager")}),
        amount("greatest_outer_mm", tr("Greatest diameter"), Q::length_mm, true, false, {}),
        amount("greatest_width_mm", tr("Greatest width"), Q::length_mm, true, false, {}),
        amount("required_L_h", tr("Life asked"), Q::life_h, true, false, {QStringLiteral("life"), QStringLiteral("lebensdauer")}),
        amount("reliability_percent", tr("Reliability"), Q::percent, true, false, {}),
        amount("required_S0", tr("Static safety asked"), Q::number, true, false, {QStringLiteral("s0")}),
        text("shaft_fit", tr("Shaft fit"), {}),
        text("housing_fit", tr("Housing fit"), {})};
}

std::vector<TableColumn> caseColumns()
{
    return {fixedColumn("id", tr("Id")),
            text("name", tr("Name"), {QStringLiteral("bezeichnung"), QStringLiteral("case"), QStringLiteral("load case")}),
            amount("time_share", tr("Share of time"), Q::number, false, true,
                   {QStringLiteral("share"), QStringLiteral("time"), QStringLiteral("anteil")}),
            amount("speed_rpm", tr("Speed"), Q::speed_rpm, false, true, {QStringLiteral("n"), QStringLiteral("drehzahl")}),
            amount("power_factor", tr("Factor on power"), Q::number, false, false,
                   {QStringLiteral("power factor"), QStringLiteral("load factor")}),
            amount("free_load_factor", tr("Factor on free loads"), Q::number, false, false, {}),
            amount("peak_factor", tr("Peak factor"), Q::number, true, false, {QStringLiteral("peak")}),
            amount("shaft_temperature_C", tr("Shaft temperature"), Q::temperature_C, true, false, {}),
            amount("housing_temperature_C", tr("Housing temperature"), Q::temperature_C, true, false, {})};
}

std::string idOf(const QString& path)
{
    return path.section(QLatin1Char('.'), -1).toStdString();
}

/// The key of the column that a row knows; empty: none. Depends on the kind of a part only.
std::string keyFor(const Arrangement& arrangement, TableKind kind, const QString& path, const TableColumn& column)
{
    if (column.keys.empty())
        return {};
    if (kind != TableKind::parts)
        return column.keys.front();
    static QHash<QString, std::string> known;
    const Part* part = findPart(arrangement, PartId(idOf(path)));
    if (part == nullptr)
        return {};
    if (!part->drive && (column.key.startsWith(QLatin1String("power")) || column.key == QLatin1String("torque_Nmm") ||
                         column.key == QLatin1String("takes_remaining")))
        return {};
    const QString name = QString::fromLatin1(kindOf(*part)) + QLatin1Char('/') + column.key;
    const auto found = known.constFind(name);
    if (found != known.constEnd())
        return *found;
    std::string key;
    for (const std::string& candidate : column.keys) {
        if (isInputPath(arrangement, path.toStdString() + "." + candidate)) {
            key = candidate;
            break;
        }
    }
    known.insert(name, key);
    return key;
}

const QString* shownWord(const TableColumn& column, const QString& file_word)
{
    for (const auto& [word_of_file, shown] : column.words) {
        if (word_of_file == file_word)
            return &shown;
    }
    return nullptr;
}

QString sentence(const Finding& finding)
{
    return findingText(finding);
}

TableEdit edited(const Result<Arrangement>& result)
{
    if (!result.ok())
        return {std::nullopt, sentence(result.finding()), {}};
    return {result.value(), {}, {}};
}

TableEdit refused(const QString& message)
{
    return {std::nullopt, message, {}};
}

TableEdit setPlace(const Arrangement& arrangement, TableKind kind, const std::string& id, double x_mm)
{
    TableEdit edit = edited(kind == TableKind::supports ? moveSupport(arrangement, SupportId(id), x_mm)
                                                        : movePart(arrangement, PartId(id), x_mm));
    if (edit.value) {
        const double landed =
            kind == TableKind::supports ? findSupport(*edit.value, SupportId(id))->x_mm : findPart(*edit.value, PartId(id))->x_mm;
        if (std::abs(landed - x_mm) > 1e-9)
            edit.note = tr("%1 mm lies beyond the shaft; put at its end, %2 mm").arg(plainNumber(x_mm), plainNumber(landed));
    }
    return edit;
}

TableEdit setSegmentCell(const Arrangement& arrangement, const std::string& id, const QString& key, std::optional<double> value)
{
    const SegmentId segment_id(id);
    const Segment* segment = findSegment(arrangement, segment_id);
    if (segment == nullptr)
        return refused(tr("This segment is gone"));
    if (key == QLatin1String("length_mm"))
        return edited(resizeSegment(arrangement, segment_id, value.value_or(0.0), Rest::moves_along));
    if (key == QLatin1String("outer_mm"))
        return edited(setDiameter(arrangement, segment_id, value.value_or(0.0), segment->outer_end_mm));
    if (key == QLatin1String("outer_end_mm"))
        return edited(setDiameter(arrangement, segment_id, segment->outer_mm, value));
    if (key == QLatin1String("bore_mm"))
        return edited(setBore(arrangement, segment_id, value, value ? segment->bore_end_mm : std::nullopt));
    if (value && !segment->bore_mm)
        return refused(tr("State the bore at the left end first"));
    return edited(setBore(arrangement, segment_id, segment->bore_mm, value));
}

/// Power, torque or what remains: exactly one of them holds.
TableEdit setDriveCell(const Arrangement& arrangement, const std::string& id, const QString& key, std::optional<double> value,
                       const QString& chosen)
{
    const Part* found = findPart(arrangement, PartId(id));
    if (found == nullptr || !found->drive)
        return refused(tr("This part takes no power"));
    Part part = *found;
    Drive& drive = *part.drive;
    const auto nothing_left = [&] { return !drive.power_kW && !drive.torque_Nmm && !drive.takes_remaining; };
    if (key == QLatin1String("power")) {
        drive.power = chosen == QLatin1String("driving") ? PowerSense::driving : PowerSense::driven;
    } else if (key == QLatin1String("takes_remaining")) {
        drive.takes_remaining = chosen == QLatin1String("true");
        if (drive.takes_remaining) {
            drive.power_kW.reset();
            drive.torque_Nmm.reset();
        }
    } else if (key == QLatin1String("power_kW")) {
        drive.power_kW = value;
        if (value) {
            drive.torque_Nmm.reset();
            drive.takes_remaining = false;
        }
    } else {
        drive.torque_Nmm = value;
        if (value) {
            drive.power_kW.reset();
            drive.takes_remaining = false;
        }
    }
    if (nothing_left())
        return refused(tr("State power or torque, or that it takes what remains"));
    return edited(setPart(arrangement, std::move(part)));
}

TableEdit setBearingCell(const Arrangement& arrangement, const std::string& id, const QString& typed)
{
    if (typed.isEmpty())
        return edited(clearBearing(arrangement, SupportId(id)));
    const Support* support = findSupport(arrangement, SupportId(id));
    if (support != nullptr && support->bearing && QString::fromStdString(support->bearing->designation()) == typed)
        return {arrangement, {}, {}};
    QString compact = typed;
    compact.remove(QLatin1Char(' '));
    const auto row = genericCatalogue().find(compact.toStdString());
    if (!row)
        return refused(tr("The generic catalogue has no bearing “%1”").arg(typed));
    const auto family = naturalFamily(*row);
    if (!family)
        return refused(tr("“%1” is used in sets only; choose it on its card").arg(typed));
    BearingChoice choice;
    choice.family = *family;
    choice.rows.push_back({*row, std::nullopt});
    return edited(setBearing(arrangement, SupportId(id), std::move(choice)));
}

} // namespace

const std::vector<std::pair<QString, QString>>& partKindWords()
{
    static const Words words = {{QStringLiteral("cylindrical_gear"), tr("Gear")},
                                {QStringLiteral("bevel_gear"), tr("Bevel gear")},
                                {QStringLiteral("worm"), tr("Worm")},
                                {QStringLiteral("worm_wheel"), tr("Worm wheel")},
                                {QStringLiteral("belt_pulley"), tr("Belt pulley")},
                                {QStringLiteral("chain_sprocket"), tr("Sprocket")},
                                {QStringLiteral("coupling"), tr("Coupling")},
                                {QStringLiteral("impeller"), tr("Impeller")},
                                {QStringLiteral("weight"), tr("Weight")},
                                {QStringLiteral("point_load"), tr("Free force")},
                                {QStringLiteral("distributed_load"), tr("Line load")}};
    return words;
}

QString tableName(TableKind kind)
{
    switch (kind) {
    case TableKind::segments:
        return tr("Segments");
    case TableKind::parts:
        return tr("Parts");
    case TableKind::supports:
        return tr("Supports");
    case TableKind::load_cases:
        return tr("Load cases");
    }
    return {};
}

QString rowName(TableKind kind)
{
    switch (kind) {
    case TableKind::segments:
        return tr("segment");
    case TableKind::parts:
        return tr("part");
    case TableKind::supports:
        return tr("support");
    case TableKind::load_cases:
        return tr("load case");
    }
    return {};
}

QString TableColumn::head() const
{
    if (!quantity || *quantity == QuantityKind::number)
        return title;
    const std::string_view unit = unitName(*quantity);
    return title + QStringLiteral(" (") + QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size())) + QLatin1Char(')');
}

const std::vector<TableColumn>& columnsOf(TableKind kind)
{
    static const std::vector<TableColumn> columns[] = {segmentColumns(), partColumns(), supportColumns(), caseColumns()};
    return columns[static_cast<std::size_t>(kind)];
}

int columnIndex(TableKind kind, const QString& key)
{
    const auto& columns = columnsOf(kind);
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (columns[i].key == key)
            return static_cast<int>(i);
    }
    return -1;
}

QStringList rowPaths(const Arrangement& arrangement, TableKind kind)
{
    QStringList paths;
    switch (kind) {
    case TableKind::segments:
        for (const Segment& segment : arrangement.shaft.segments)
            paths << pathOf(segment.id);
        break;
    case TableKind::parts:
        for (const Part& part : arrangement.parts)
            paths << pathOf(part.id);
        break;
    case TableKind::supports:
        for (const Support& support : arrangement.supports)
            paths << pathOf(support.id);
        break;
    case TableKind::load_cases:
        for (const LoadCase& load_case : arrangement.duty.load_cases)
            paths << QStringLiteral("duty.load_cases.") + QString::fromStdString(load_case.id.value);
        break;
    }
    return paths;
}

TableCells cellsOf(const Arrangement& arrangement, TableKind kind)
{
    QHash<QString, AddressedInput> inputs;
    for (AddressedInput& input : addressableInputs(arrangement))
        inputs.insert(QString::fromStdString(input.path), std::move(input));
    TableCells cells;
    int row = 0;
    for (const QString& path : rowPaths(arrangement, kind)) {
        std::vector<TableCell> line;
        for (const TableColumn& column : columnsOf(kind)) {
            TableCell cell;
            const auto number = [&](double value) {
                cell.typed = QString::fromStdString(shortestDecimal(value));
                cell.shown = plainNumber(value);
            };
            if (column.key == QLatin1String("id")) {
                cell.shown = cell.typed = QString::fromStdString(idOf(path));
            } else if (column.key == QLatin1String("start_mm")) {
                number(segmentStart_mm(arrangement.shaft, static_cast<std::size_t>(row)));
            } else if (column.key == QLatin1String("kind")) {
                const Part& part = arrangement.parts[static_cast<std::size_t>(row)];
                cell.shown = kindName(part);
                cell.typed = QString::fromLatin1(kindOf(part));
                if (const QString* shown = shownWord(column, cell.typed))
                    cell.typed = *shown;
            } else if (column.key == QLatin1String("bearing")) {
                const Support& support = arrangement.supports[static_cast<std::size_t>(row)];
                if (support.bearing)
                    cell.shown = cell.typed = QString::fromStdString(support.bearing->designation());
            } else {
                const std::string key = keyFor(arrangement, kind, path, column);
                cell.applies = !key.empty();
                const auto found = inputs.constFind(path + QLatin1Char('.') + QString::fromStdString(key));
                if (cell.applies && found != inputs.constEnd()) {
                    // A default of the format is as good as given; what the program settles by itself is assumed.
                    cell.assumed = found->origin == Origin::assumed && column.may_be_open;
                    if (const double* value = std::get_if<double>(&found->value)) {
                        number(*value);
                    } else {
                        cell.shown = cell.typed = QString::fromStdString(std::get<std::string>(found->value));
                        if (const QString* shown = shownWord(column, cell.shown))
                            cell.shown = cell.typed = *shown;
                    }
                    if (cell.assumed)
                        cell.typed.clear();
                }
            }
            line.push_back(std::move(cell));
        }
        cells.push_back(std::move(line));
        ++row;
    }
    return cells;
}

TableEdit withCell(const Arrangement& arrangement, TableKind kind, const QString& row_path, int column_index, const QString& text)
{
    const TableColumn& column = columnsOf(kind).at(static_cast<std::size_t>(column_index));
    const std::string id = idOf(row_path);
    const QString typed = text.trimmed();
    if (column.fixed)
        return refused(tr("%1 is not typed here").arg(column.title));
    if (column.key == QLatin1String("bearing"))
        return setBearingCell(arrangement, id, typed);
    const std::string key = keyFor(arrangement, kind, row_path, column);
    if (key.empty())
        return typed.isEmpty() ? TableEdit{arrangement, {}, {}} : refused(tr("%1 does not apply here").arg(column.title));
    if (typed.isEmpty() && !column.may_be_open)
        return refused(tr("%1 needs a value").arg(column.title));

    std::optional<double> value;
    QString chosen = typed;
    if (column.quantity) {
        if (!typed.isEmpty()) {
            const auto parsed = parseQuantity(typed.toStdString(), *column.quantity);
            if (const auto* error = std::get_if<QuantityError>(&parsed))
                return refused(quantityErrorText(error->code, error->detail));
            value = std::get<double>(parsed);
        }
    } else if (!column.words.empty() && !typed.isEmpty()) {
        const auto same = [&](const QString& other) { return other.compare(typed, Qt::CaseInsensitive) == 0; };
        QString plain = typed; // a plain hyphen is as good as a minus sign
        plain.replace(QLatin1Char('-'), QStringLiteral("−"));
        const auto found = std::find_if(column.words.begin(), column.words.end(), [&](const auto& entry) {
            return same(entry.first) || same(entry.second) || entry.second == plain;
        });
        if (found == column.words.end()) {
            QStringList choices;
            for (const auto& entry : column.words)
                choices << entry.second;
            return refused(tr("“%1” is none of %2").arg(typed, choices.join(QStringLiteral(", "))));
        }
        chosen = found->first;
    }

    if (kind == TableKind::segments)
        return setSegmentCell(arrangement, id, column.key, value);
    if (key == "x_mm")
        return setPlace(arrangement, kind, id, *value);
    if (kind == TableKind::supports && key == "role") {
        for (const auto& [name, role] : {std::pair{"locating", Role::locating},
                                         {"non_locating", Role::non_locating},
                                         {"adjusted", Role::adjusted},
                                         {"end_play", Role::end_play},
                                         {"axial_only", Role::axial_only}}) {
            if (chosen == QLatin1String(name))
                return edited(setRole(arrangement, SupportId(id), role));
        }
    }
    if (kind == TableKind::parts) {
        if (column.key == QLatin1String("power") || column.key == QLatin1String("power_kW") ||
            column.key == QLatin1String("torque_Nmm") || column.key == QLatin1String("takes_remaining"))
            return setDriveCell(arrangement, id, column.key, value, chosen);
        if (column.key == QLatin1String("angle_deg"))
            return edited(actions::setDirection(arrangement, PartId(id), *value));
    }
    const std::string path = row_path.toStdString() + "." + key;
    return edited(setByPath(arrangement, path,
                            value             ? shortestDecimal(*value)
                            : column.quantity ? std::string()
                                              : chosen.toStdString()));
}

TableRowAdded withNewRow(const Arrangement& arrangement, TableKind kind, int after, const QString& part_kind)
{
    const auto made = [](const Result<Arrangement>& result, const QString& path) -> TableRowAdded {
        if (!result.ok())
            return {std::nullopt, {}, sentence(result.finding())};
        return {result.value(), path, {}};
    };
    const double middle_mm = arrangement.shaft.length_mm() / 2.0;
    switch (kind) {
    case TableKind::segments: {
        const std::size_t count = arrangement.shaft.segments.size();
        const std::size_t at = after < 0 ? count : std::min(static_cast<std::size_t>(after) + 1, count);
        const Segment segment = newSegment(arrangement, at);
        return made(insertSegment(arrangement, at, segment), pathOf(segment.id));
    }
    case TableKind::parts: {
        const auto part =
            newPart(arrangement, part_kind.isEmpty() ? std::string("cylindrical_gear") : part_kind.toStdString(), middle_mm);
        if (!part)
            return {std::nullopt, {}, tr("“%1” is no kind of part").arg(part_kind)};
        return made(addPart(arrangement, *part), pathOf(part->id));
    }
    case TableKind::supports: {
        const Support support = newSupport(arrangement, middle_mm);
        return made(addSupport(arrangement, support), pathOf(support.id));
    }
    case TableKind::load_cases: {
        LoadCase load_case;
        load_case.id = freeCaseId(arrangement);
        if (!arrangement.duty.load_cases.empty()) {
            load_case.speed_rpm = arrangement.duty.load_cases.back().speed_rpm;
            load_case.time_share = 0.0; // the shares of the others still add up
        }
        return made(addLoadCase(arrangement, load_case),
                    QStringLiteral("duty.load_cases.") + QString::fromStdString(load_case.id.value));
    }
    }
    return {};
}

TableEdit withoutRows(const Arrangement& arrangement, TableKind kind, const QStringList& row_paths)
{
    Arrangement value = arrangement;
    for (const QString& path : row_paths) {
        const Result<Arrangement> next =
            kind == TableKind::load_cases ? removeLoadCase(value, CaseId(idOf(path))) : actions::remove(value, path);
        if (!next.ok())
            return refused(sentence(next.finding()));
        value = next.value();
    }
    return {value, {}, {}};
}

} // namespace shaftwright::ui
