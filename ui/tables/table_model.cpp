#include "ui/tables/table_model.h"

#include "ui/document/document.h"
#include "ui/widgets/theme.h"

#include <QColor>
#include <QFont>

namespace shaftwright::ui
{

TableModel::TableModel(Document& document, TableKind kind, QObject* parent)
    : QAbstractTableModel(parent), m_document(document), m_kind(kind)
{
    connect(&m_document, &Document::changed, this, [this] {
        if (m_live)
            refresh();
    });
    refresh();
}

void TableModel::setLive(bool live)
{
    if (live && !m_live)
        refresh();
    m_live = live;
}

void TableModel::refresh()
{
    QStringList paths = rowPaths(m_document.shown(), m_kind);
    TableCells cells = cellsOf(m_document.shown(), m_kind);
    if (paths != m_paths) {
        beginResetModel();
        m_paths = std::move(paths);
        m_cells = std::move(cells);
        if (rowOfPath(m_rejected.path) < 0)
            m_rejected = {};
        endResetModel();
        return;
    }
    m_cells = std::move(cells);
    if (!m_paths.isEmpty())
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

int TableModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_paths.size());
}

int TableModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(columnsOf(m_kind).size());
}

const TableCell& TableModel::cell(const QModelIndex& index) const
{
    return m_cells.at(static_cast<std::size_t>(index.row())).at(static_cast<std::size_t>(index.column()));
}

QVariant TableModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= rowCount() || index.column() >= columnCount())
        return {};
    const TableColumn& column = columnsOf(m_kind)[static_cast<std::size_t>(index.column())];
    const TableCell& what = cell(index);
    const bool rejected = m_rejected.column == index.column() && m_rejected.path == pathOfRow(index.row());
    switch (role) {
    case Qt::DisplayRole:
        return rejected ? m_rejected.text : what.applies ? what.shown : QString();
    case Qt::EditRole:
        return rejected ? m_rejected.text : what.typed;
    case Qt::TextAlignmentRole:
        return static_cast<int>((column.quantity ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    case Qt::ForegroundRole:
        if (rejected)
            return tokens().stop;
        return what.assumed || column.fixed ? tokens().ink2 : tokens().ink;
    case Qt::BackgroundRole:
        if (rejected)
            return tokens().stop_soft;
        return what.applies ? QVariant() : QVariant(tokens().panel);
    case Qt::FontRole: {
        QFont font = windowFont(13);
        font.setItalic(what.assumed && !rejected);
        return font;
    }
    case Qt::ToolTipRole:
        if (rejected)
            return m_rejected.message;
        if (!what.applies)
            return tr("%1 does not apply here").arg(column.title);
        return what.assumed ? QVariant(tr("Assumed; type a value to state it")) : QVariant();
    case Qt::AccessibleTextRole: {
        const QString value = rejected ? m_rejected.text : what.applies ? what.shown : QString();
        return tr("%1 of %2: %3")
            .arg(column.head(), pathOfRow(index.row()).section(QLatin1Char('.'), -1), value.isEmpty() ? tr("open") : value);
    }
    case Qt::AccessibleDescriptionRole:
        return rejected       ? QVariant(tr("Not taken: %1").arg(m_rejected.message))
               : what.assumed ? QVariant(tr("Assumed"))
                              : QVariant();
    case wordsRole: {
        QStringList shown;
        for (const auto& entry : column.words)
            shown << entry.second;
        return shown;
    }
    case messageRole:
        return rejected ? m_rejected.message : QString();
    default:
        return {};
    }
}

QVariant TableModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation == Qt::Horizontal && section >= 0 && section < columnCount()) {
        const TableColumn& column = columnsOf(m_kind)[static_cast<std::size_t>(section)];
        if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole || role == Qt::ToolTipRole)
            return column.head();
    }
    if (orientation == Qt::Vertical && role == Qt::DisplayRole)
        return section + 1;
    return {};
}

Qt::ItemFlags TableModel::flags(const QModelIndex& index) const
{
    if (!index.isValid())
        return Qt::NoItemFlags;
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    if (!columnsOf(m_kind)[static_cast<std::size_t>(index.column())].fixed && cell(index).applies)
        flags |= Qt::ItemIsEditable;
    return flags;
}

bool TableModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    if (role != Qt::EditRole || !(flags(index) & Qt::ItemIsEditable))
        return false;
    const QString text = value.toString().trimmed();
    const QPersistentModelIndex place(index);
    const TableColumn& column = columnsOf(m_kind)[static_cast<std::size_t>(index.column())];
    if (text == cell(index).typed) {
        // Left as it was; a rejected text is withdrawn by this.
        m_rejected = {};
        emit dataChanged(index, index);
        emit told(index, {});
        return true;
    }
    const QString path = pathOfRow(index.row());
    const TableEdit edit = withCell(m_document.committed(), m_kind, path, index.column(), text);
    if (!edit.value) {
        m_rejected = {path, text, edit.message, index.column()};
        emit dataChanged(index, index);
        emit told(index, tr("%1 of %2: %3").arg(column.title, path.section(QLatin1Char('.'), -1), edit.message));
        return false;
    }
    m_rejected = {};
    m_document.push(*edit.value, tr("%1 of %2").arg(column.title, path.section(QLatin1Char('.'), -1)));
    refresh();
    emit told(place, edit.note);
    return true;
}

int TableModel::addRow(int after)
{
    const TableRowAdded added = withNewRow(m_document.committed(), m_kind, after);
    if (!added.value) {
        emit told({}, added.message);
        return -1;
    }
    m_document.push(*added.value, tr("Add a %1").arg(rowName(m_kind)));
    refresh();
    emit told({}, {});
    return rowOfPath(added.path);
}

bool TableModel::removeRowsAt(const QList<int>& rows)
{
    QStringList paths;
    for (const int row : rows)
        paths << pathOfRow(row);
    if (paths.isEmpty())
        return false;
    const TableEdit edit = withoutRows(m_document.committed(), m_kind, paths);
    if (!edit.value) {
        emit told({}, edit.message);
        return false;
    }
    m_document.push(*edit.value, paths.size() == 1 ? tr("Remove %1").arg(paths.front().section(QLatin1Char('.'), -1))
                                                   : tr("Remove %1 rows").arg(paths.size()));
    refresh();
    emit told({}, {});
    return true;
}

bool TableModel::clearCells(const QModelIndexList& cells)
{
    Arrangement value = m_document.committed();
    QString message;
    for (const QModelIndex& index : cells) {
        if (!(flags(index) & Qt::ItemIsEditable))
            continue;
        const TableEdit edit = withCell(value, m_kind, pathOfRow(index.row()), index.column(), {});
        if (edit.value)
            value = *edit.value;
        else if (message.isEmpty())
            message = edit.message;
    }
    const bool changed =
        m_document.push(std::move(value), cells.size() == 1 ? tr("Leave open") : tr("Leave %1 cells open").arg(cells.size()));
    if (changed)
        refresh();
    emit told({}, message);
    return changed;
}

} // namespace shaftwright::ui
