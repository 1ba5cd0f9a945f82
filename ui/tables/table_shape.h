#pragma once
// Segments, parts, supports and load cases as rows and columns: what a cell shows, and what a typed text makes of the
// arrangement. Pure functions; model, paste and tests use the same ones.

// Qt first: its moc stumbles over <concepts> when a header of the standard library comes before all others.
#include <QString>
#include <QStringList>

#include "core/model/arrangement.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace shaftwright::ui
{

enum class TableKind { segments, parts, supports, load_cases };
inline constexpr TableKind tableKinds[] = {TableKind::segments, TableKind::parts, TableKind::supports, TableKind::load_cases};

/// "Segments", "Parts" ...
[[nodiscard]] QString tableName(TableKind kind);
/// "segment", "part" ... with its article-free name in a sentence.
[[nodiscard]] QString rowName(TableKind kind);

struct TableColumn {
    QString key;                                    ///< stable name
    QString title;                                  ///< without unit
    std::optional<QuantityKind> quantity;           ///< none: text or word
    std::vector<std::pair<QString, QString>> words; ///< word of the file and word shown; empty: free text
    bool may_be_open = false;                       ///< an empty cell is a value of its own
    bool fixed = false;                             ///< shown, not typed
    bool needed = false;                            ///< a new row must have it
    std::vector<std::string> keys;                  ///< key of the file below the row; the first one that the row knows
    QStringList also;                               ///< further head words by which a spreadsheet may call it, lower case

    /// Title with unit: "Length (mm)".
    [[nodiscard]] QString head() const;
};
[[nodiscard]] const std::vector<TableColumn>& columnsOf(TableKind kind);
[[nodiscard]] int columnIndex(TableKind kind, const QString& key);

/// Paths of the rows: "shaft.segments.S1", "parts.G1", "supports.A", "duty.load_cases.rated".
[[nodiscard]] QStringList rowPaths(const Arrangement& arrangement, TableKind kind);

struct TableCell {
    QString shown;        ///< as read
    QString typed;        ///< as it would be typed: point, no unit
    bool applies = true;  ///< false: this row has no such input
    bool assumed = false; ///< the value is assumed by the program
};
using TableCells = std::vector<std::vector<TableCell>>; ///< [row][column]
[[nodiscard]] TableCells cellsOf(const Arrangement& arrangement, TableKind kind);

/// What an edit made: a value, or why there is none.
struct TableEdit {
    std::optional<Arrangement> value;
    QString message; ///< why not
    QString note;    ///< done, but something is worth knowing
};
/// The cell of a row typed anew.
[[nodiscard]] TableEdit withCell(const Arrangement& arrangement, TableKind kind, const QString& row_path, int column,
                                 const QString& text);

struct TableRowAdded {
    std::optional<Arrangement> value;
    QString path; ///< of the new row
    QString message;
};
/// A new row with usual inputs behind row `after` (-1: at the end). `part_kind`: word of the file, empty: a cylindrical gear.
[[nodiscard]] TableRowAdded withNewRow(const Arrangement& arrangement, TableKind kind, int after, const QString& part_kind = {});
[[nodiscard]] TableEdit withoutRows(const Arrangement& arrangement, TableKind kind, const QStringList& row_paths);

/// Words of the file and shown words of the kinds of parts.
[[nodiscard]] const std::vector<std::pair<QString, QString>>& partKindWords();

} // namespace shaftwright::ui
