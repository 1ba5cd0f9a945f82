#include "ui/tables/paste_plan.h"

#include <QObject>
#include <QSet>

#include <algorithm>

namespace shaftwright::ui
{

namespace
{

/// Word of a head without its unit and without what people put around it: "Länge [mm]" gives "länge".
QString plainHead(const QString& text, QString* unit = nullptr)
{
    QString word = text.simplified();
    QString found;
    for (const auto& [open, close] : {std::pair{QLatin1Char('('), QLatin1Char(')')}, {QLatin1Char('['), QLatin1Char(']')}}) {
        const qsizetype from = word.indexOf(open);
        const qsizetype to = word.indexOf(close, from + 1);
        if (from >= 0 && to > from) {
            found = word.mid(from + 1, to - from - 1).trimmed();
            word = (word.left(from) + word.mid(to + 1)).simplified();
            break;
        }
    }
    if (found.isEmpty()) {
        for (const QString& separator : {QStringLiteral(" in "), QStringLiteral(", "), QStringLiteral(" / ")}) {
            const qsizetype at = word.lastIndexOf(separator);
            if (at > 0 && word.size() - at - separator.size() <= 6) {
                found = word.mid(at + separator.size()).trimmed();
                word = word.left(at).trimmed();
                break;
            }
        }
    }
    if (unit != nullptr)
        *unit = found;
    word = word.toLower();
    while (word.endsWith(QLatin1Char(':')) || word.endsWith(QLatin1Char('.')))
        word.chop(1);
    return word;
}

/// A unit that the quantity understands.
bool unitFits(const QString& unit, const TableColumn& column)
{
    return column.quantity && !unit.isEmpty() &&
           std::holds_alternative<double>(parseQuantity(("1 " + unit).toStdString(), *column.quantity));
}

int columnOfHead(const QString& head, TableKind kind)
{
    QString unit;
    const QString word = plainHead(head, &unit);
    if (word.isEmpty())
        return -1;
    const auto& columns = columnsOf(kind);
    const auto index = [&](auto&& fits) {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (fits(columns[i]))
                return static_cast<int>(i);
        }
        return -1;
    };
    int found = index([&](const TableColumn& c) {
        return c.title.toLower() == word || c.head().toLower() == head.simplified().toLower() || c.key == word;
    });
    if (found < 0)
        found = index([&](const TableColumn& c) { return c.also.contains(word); });
    return found;
}

bool plainNumberText(const QString& text)
{
    return std::holds_alternative<double>(parseQuantity(text.toStdString(), QuantityKind::number));
}

QString partKindOf(const QString& text)
{
    for (const auto& [word, shown] : partKindWords()) {
        if (word.compare(text, Qt::CaseInsensitive) == 0 || shown.compare(text, Qt::CaseInsensitive) == 0)
            return word;
    }
    // Shapes of the cylindrical gear that people call by their own name.
    for (const QString& name :
         {QObject::tr("spur gear"), QObject::tr("helical gear"), QObject::tr("double-helical gear"), QObject::tr("gear wheel")}) {
        if (name.compare(text, Qt::CaseInsensitive) == 0)
            return QStringLiteral("cylindrical_gear");
    }
    return {};
}

} // namespace

QList<QStringList> splitPasted(const QString& text)
{
    QString clean = text;
    clean.replace(QStringLiteral("\r\n"), QStringLiteral("\n")).replace(QLatin1Char('\r'), QLatin1Char('\n'));
    const QLatin1Char separator(clean.contains(QLatin1Char('\t')) || !clean.contains(QLatin1Char(';')) ? '\t' : ';');
    QList<QStringList> rows;
    QStringList row;
    QString cell;
    bool quoted = false, was_quoted = false;
    const auto end_cell = [&] {
        row << cell.trimmed();
        cell.clear();
        was_quoted = false;
    };
    const auto end_row = [&] {
        end_cell();
        if (std::any_of(row.cbegin(), row.cend(), [](const QString& one) { return !one.isEmpty(); }))
            rows << row;
        row.clear();
    };
    for (qsizetype i = 0; i < clean.size(); ++i) {
        const QChar c = clean[i];
        if (quoted) {
            if (c == QLatin1Char('"') && i + 1 < clean.size() && clean[i + 1] == QLatin1Char('"')) {
                cell += c;
                ++i;
            } else if (c == QLatin1Char('"')) {
                quoted = false;
            } else {
                cell += c == QLatin1Char('\n') ? QLatin1Char(' ') : c;
            }
        } else if (c == QLatin1Char('"') && cell.trimmed().isEmpty() && !was_quoted &&
                   clean.indexOf(QLatin1Char('"'), i + 1) > i) {
            // Inch marks stand behind a number, quotation marks before the text.
            quoted = was_quoted = true;
            cell.clear();
        } else if (c == separator) {
            end_cell();
        } else if (c == QLatin1Char('\n')) {
            end_row();
        } else {
            cell += c;
        }
    }
    end_row();
    return rows;
}

QString joinCells(const QList<QStringList>& rows)
{
    QString text;
    for (const QStringList& row : rows) {
        QStringList cells;
        for (QString cell : row) {
            if (cell.contains(QLatin1Char('\t')) || cell.contains(QLatin1Char('\n')) || cell.startsWith(QLatin1Char('"')))
                cell = QLatin1Char('"') + cell.replace(QLatin1Char('"'), QStringLiteral("\"\"")) + QLatin1Char('"');
            cells << cell;
        }
        text += cells.join(QLatin1Char('\t')) + QLatin1Char('\n');
    }
    return text;
}

PasteMapping guessMapping(const QList<QStringList>& rows, TableKind kind, int first_column)
{
    PasteMapping mapping;
    qsizetype width = 0;
    for (const QStringList& row : rows)
        width = std::max(width, row.size());
    const auto& columns = columnsOf(kind);
    if (!rows.isEmpty()) {
        // A head has known words and not a single value.
        int known = 0, values = 0;
        for (const QString& cell : rows.front()) {
            known += columnOfHead(cell, kind) >= 0 ? 1 : 0;
            values += plainNumberText(cell) ? 1 : 0;
        }
        mapping.has_head = known > 0 && values == 0;
    }
    QSet<int> taken;
    for (qsizetype i = 0; i < width; ++i) {
        int column = -1;
        QString unit;
        if (mapping.has_head && i < rows.front().size()) {
            column = columnOfHead(rows.front()[i], kind);
            plainHead(rows.front()[i], &unit);
        } else if (!mapping.has_head) {
            // In order; what is not typed is passed over unless the pasted piece starts with it.
            column = first_column + static_cast<int>(i);
            if (column >= static_cast<int>(columns.size()))
                column = -1;
        }
        if (column >= 0 && taken.contains(column))
            column = -1;
        if (column >= 0)
            taken.insert(column);
        mapping.columns << column;
        mapping.units << (column >= 0 && unitFits(unit, columns[static_cast<std::size_t>(column)]) ? unit : QString());
    }
    return mapping;
}

PastePlan planPaste(const Arrangement& arrangement, TableKind kind, const QList<QStringList>& rows, const PasteMapping& mapping,
                    int first_row)
{
    PastePlan plan;
    plan.value = arrangement;
    const auto& columns = columnsOf(kind);
    const int id_column = columnIndex(kind, QStringLiteral("id"));
    const int kind_column = columnIndex(kind, QStringLiteral("kind"));
    const bool any = std::any_of(mapping.columns.cbegin(), mapping.columns.cend(), [&](int c) {
        return c >= 0 && (!columns[static_cast<std::size_t>(c)].fixed || c == kind_column);
    });
    if (rows.size() <= (mapping.has_head ? 1 : 0))
        plan.trouble = QObject::tr("The clipboard holds no rows");
    else if (!any)
        plan.trouble = QObject::tr("No column is assigned; choose above what the columns mean");
    const QStringList before = rowPaths(arrangement, kind);
    QSet<QString> written;
    int place = first_row;
    for (qsizetype i = mapping.has_head ? 1 : 0; i < rows.size(); ++i) {
        PasteRow row;
        row.cells = rows[i];
        const auto cell = [&](int column) -> QString {
            const qsizetype at = mapping.columns.indexOf(column);
            return column >= 0 && at >= 0 && at < row.cells.size() ? row.cells[at].trimmed() : QString();
        };
        // Which row it becomes.
        QString path;
        const QString id = cell(id_column);
        if (!id.isEmpty()) {
            const auto found = std::find_if(before.cbegin(), before.cend(),
                                            [&](const QString& one) { return one.section(QLatin1Char('.'), -1) == id; });
            if (found != before.cend())
                path = *found;
        }
        if (path.isEmpty() && place >= 0 && place < before.size())
            path = before[place];
        if (place >= 0)
            ++place;
        const bool is_new = path.isEmpty();
        Arrangement value = plan.value;
        if (!plan.trouble.isEmpty()) {
            row.reason = plan.trouble;
        } else if (is_new) {
            QString part_kind;
            if (kind == TableKind::parts) {
                part_kind = partKindOf(cell(kind_column));
                if (part_kind.isEmpty())
                    row.reason = cell(kind_column).isEmpty() ? QObject::tr("The kind of part is missing")
                                                             : QObject::tr("“%1” is no kind of part").arg(cell(kind_column));
            }
            for (std::size_t c = 0; c < columns.size() && row.reason.isEmpty(); ++c) {
                if (columns[c].needed && !columns[c].fixed && cell(static_cast<int>(c)).isEmpty())
                    row.reason = QObject::tr("%1 is missing").arg(columns[c].title);
            }
            if (row.reason.isEmpty()) {
                TableRowAdded added = withNewRow(value, kind, -1, part_kind);
                if (added.value) {
                    value = std::move(*added.value);
                    path = added.path;
                } else {
                    row.reason = added.message;
                }
            }
        } else if (written.contains(path)) {
            row.reason = QObject::tr("Another row above already changes %1").arg(path.section(QLatin1Char('.'), -1));
        }
        // Cells one after the other in the table's order; what only fits after its neighbours is tried again.
        QStringList notes;
        if (row.reason.isEmpty()) {
            QList<int> open;
            for (std::size_t c = 0; c < columns.size(); ++c) {
                const int column = static_cast<int>(c);
                if (!columns[c].fixed && mapping.columns.contains(column) && mapping.columns.indexOf(column) < row.cells.size())
                    open << column;
            }
            bool progress = true;
            QString trouble;
            while (!open.isEmpty() && progress) {
                progress = false;
                trouble.clear();
                for (const int column : QList<int>(open)) {
                    const TableColumn& what = columns[static_cast<std::size_t>(column)];
                    QString text = cell(column);
                    if (text.isEmpty() && (is_new || !what.may_be_open)) {
                        open.removeOne(column); // nothing said: it stays as it is
                        continue;
                    }
                    const QString unit = mapping.units.value(mapping.columns.indexOf(column));
                    if (!unit.isEmpty() && plainNumberText(text))
                        text += QLatin1Char(' ') + unit;
                    const TableEdit edit = withCell(value, kind, path, column, text);
                    if (edit.value) {
                        value = *edit.value;
                        if (!edit.note.isEmpty())
                            notes << edit.note;
                        open.removeOne(column);
                        progress = true;
                    } else if (trouble.isEmpty()) {
                        trouble = what.title + QStringLiteral(": ") + edit.message;
                    }
                }
            }
            if (!open.isEmpty())
                row.reason = trouble;
        }
        if (row.reason.isEmpty()) {
            written.insert(path);
            const QString name = path.section(QLatin1Char('.'), -1);
            row.note = is_new                ? QObject::tr("new: %1").arg(name)
                       : value == plan.value ? QObject::tr("%1 stays as it is").arg(name)
                                             : QObject::tr("changes %1").arg(name);
            if (!notes.isEmpty())
                row.note += QStringLiteral("; ") + notes.join(QStringLiteral("; "));
            plan.value = std::move(value);
            ++plan.readable;
        }
        plan.rows << row;
    }
    return plan;
}

} // namespace shaftwright::ui
