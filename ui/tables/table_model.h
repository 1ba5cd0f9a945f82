#pragma once
// One of the tables over the open document. Each edit of a cell is one undoable step; a text that is not understood stays in its
// cell, marked, with the reason, while the document keeps its value.

// Qt first: its meta-object compiler trips over a header of the standard library otherwise.
#include <QAbstractTableModel>

#include "ui/tables/table_shape.h"

namespace shaftwright::ui
{

class Document;

class TableModel : public QAbstractTableModel
{
    Q_OBJECT
public:
    TableModel(Document& document, TableKind kind, QObject* parent = nullptr);

    enum Role {
        wordsRole = Qt::UserRole, ///< QStringList of the words to choose from
        messageRole               ///< why the typed text was not taken
    };

    [[nodiscard]] TableKind kind() const { return m_kind; }
    [[nodiscard]] QString pathOfRow(int row) const { return m_paths.value(row); }
    [[nodiscard]] int rowOfPath(const QString& path) const { return static_cast<int>(m_paths.indexOf(path)); }

    /// A table that nobody sees does not follow the document.
    void setLive(bool live);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

    /// Row of the new one; -1: refused, see `told`.
    int addRow(int after);
    bool removeRowsAt(const QList<int>& rows);
    /// Inputs that may be left open are left open again, in one step.
    bool clearCells(const QModelIndexList& cells);

signals:
    /// A message about a cell, empty when there is none any more.
    void told(const QModelIndex& index, const QString& message);

private:
    void refresh();
    [[nodiscard]] const TableCell& cell(const QModelIndex& index) const;

    struct Rejected {
        QString path, text, message;
        int column = -1;
    };
    Document& m_document;
    TableKind m_kind;
    bool m_live = true;
    QStringList m_paths;
    TableCells m_cells;
    Rejected m_rejected; ///< the last text that was not understood
};

} // namespace shaftwright::ui
