#pragma once
// What a piece of a spreadsheet would make of the arrangement, before anything is taken. Pure functions.

#include "ui/tables/table_shape.h"

#include <QList>

namespace shaftwright::ui
{

/// Cells of a pasted text: tabs between cells, else semicolons; quoted cells may hold tabs and line breaks. Empty lines are
/// dropped.
[[nodiscard]] QList<QStringList> splitPasted(const QString& text);
/// The other way: cells with tabs, quoted where needed.
[[nodiscard]] QString joinCells(const QList<QStringList>& rows);

/// How the pasted columns are understood.
struct PasteMapping {
    bool has_head = false; ///< the first row names the columns
    QList<int> columns;    ///< of the table for every pasted column; -1: left out
    QStringList units;     ///< from the head, empty: the table's own
};
/// By the words of the head when the first row is one, else by order from `first_column` on.
[[nodiscard]] PasteMapping guessMapping(const QList<QStringList>& rows, TableKind kind, int first_column);

struct PasteRow {
    QStringList cells; ///< as pasted
    QString reason;    ///< why it cannot be read; empty: it can
    QString note;      ///< what becomes of it: "new, S7", "changes S2"
};
struct PastePlan {
    Arrangement value;    ///< with every readable row
    QList<PasteRow> rows; ///< without the head
    int readable = 0;
    QString trouble; ///< nothing at all can be taken, and why
};
/// @param first_row  rows of the table from here on are written over; -1: every row is new. A row whose id is known is written
///                   over wherever it stands.
[[nodiscard]] PastePlan planPaste(const Arrangement& arrangement, TableKind kind, const QList<QStringList>& rows,
                                  const PasteMapping& mapping, int first_row);

} // namespace shaftwright::ui
