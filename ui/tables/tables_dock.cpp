#include "ui/tables/tables_dock.h"

#include "ui/document/subject.h"
#include "ui/tables/paste_dialog.h"
#include "ui/widgets/focus_ring.h"
#include "ui/widgets/theme.h"

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QPushButton>
#include <QStackedWidget>
#include <QStyledItemDelegate>
#include <QTabBar>
#include <QVBoxLayout>

#include <algorithm>
#include <set>

namespace shaftwright::ui
{

namespace
{

/// A line for numbers and texts, a list for words; both say what they edit.
class CellDelegate : public QStyledItemDelegate
{
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem&, const QModelIndex& index) const override
    {
        const QStringList words = index.data(TableModel::wordsRole).toStringList();
        QWidget* editor = nullptr;
        if (words.isEmpty()) {
            auto* line = new QLineEdit(parent);
            line->setFrame(false);
            line->setAlignment(Qt::Alignment(index.data(Qt::TextAlignmentRole).toInt()));
            editor = line;
        } else {
            auto* box = new QComboBox(parent);
            box->addItems(words);
            editor = box;
        }
        editor->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
        return editor;
    }

    void setEditorData(QWidget* editor, const QModelIndex& index) const override
    {
        const QString text = index.data(Qt::EditRole).toString();
        if (auto* box = qobject_cast<QComboBox*>(editor))
            box->setCurrentIndex(std::max(0, box->findText(text)));
        else
            static_cast<QLineEdit*>(editor)->setText(text);
    }

    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override
    {
        if (const auto* box = qobject_cast<QComboBox*>(editor))
            model->setData(index, box->currentText());
        else
            model->setData(index, static_cast<QLineEdit*>(editor)->text());
    }
};

} // namespace

TableView::TableView(Document& document, TableKind kind, QWidget* parent)
    : QTableView(parent), m_document(document), m_model(new TableModel(document, kind, this))
{
    setModel(m_model);
    setObjectName(QStringLiteral("table.") + tableName(kind));
    setAccessibleName(tableName(kind));
    setAccessibleDescription(tr("Arrows move, typing or F2 edits, Insert adds a row, Ctrl+Delete removes rows"));
    setItemDelegate(new CellDelegate(this));
    setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed | QAbstractItemView::AnyKeyPressed);
    setSelectionMode(QAbstractItemView::ExtendedSelection);
    setTabKeyNavigation(false); // Tab leaves the table
    setWordWrap(false);
    setAlternatingRowColors(false);
    verticalHeader()->setDefaultSectionSize(26);
    verticalHeader()->setMinimumWidth(28);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setDefaultSectionSize(112);
    const auto& columns = columnsOf(kind);
    for (int c = 0; c < m_model->columnCount(); ++c) {
        const int wanted = fontMetrics().horizontalAdvance(columns[static_cast<std::size_t>(c)].head()) + 28;
        setColumnWidth(c, std::max(columns[static_cast<std::size_t>(c)].key == QLatin1String("id") ? 52 : 92, wanted));
    }
    connect(m_model, &TableModel::told, this, [this](const QModelIndex&, const QString& words) { emit told(words); });
    // A row that came or went must not lose the cursor.
    connect(m_model, &QAbstractItemModel::modelAboutToBeReset, this, [this] {
        setProperty("row", m_model->pathOfRow(currentIndex().row()));
        setProperty("rowNumber", currentIndex().row());
        setProperty("column", currentIndex().column());
    });
    connect(m_model, &QAbstractItemModel::modelReset, this, [this] {
        const int column = property("column").toInt();
        int row = m_model->rowOfPath(property("row").toString());
        if (row < 0)
            row = std::min(property("rowNumber").toInt(), m_model->rowCount() - 1);
        if (row >= 0 && column >= 0)
            setCurrentIndex(m_model->index(row, column));
    });
}

bool TableView::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        // The window has these keys too; in the table they mean the table.
        auto* key = static_cast<QKeyEvent*>(event);
        const bool plain = !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
        const bool own = key->matches(QKeySequence::Copy) || key->matches(QKeySequence::Paste) ||
                         key->matches(QKeySequence::SelectAll) || (key->key() == Qt::Key_Delete) ||
                         key->key() == Qt::Key_Insert ||
                         (key->key() == Qt::Key_C && key->modifiers() == (Qt::ControlModifier | Qt::ShiftModifier)) ||
                         (plain && (key->key() < Qt::Key_F1 || key->key() == Qt::Key_F2) && key->key() != Qt::Key_Tab);
        if (own) {
            event->accept();
            return true;
        }
    }
    return QTableView::event(event);
}

void TableView::showEvent(QShowEvent* event)
{
    m_model->setLive(true);
    QTableView::showEvent(event);
}

void TableView::hideEvent(QHideEvent* event)
{
    m_model->setLive(false);
    QTableView::hideEvent(event);
}

void TableView::keyPressEvent(QKeyEvent* event)
{
    const bool control = event->modifiers() & Qt::ControlModifier;
    if (event->matches(QKeySequence::Copy))
        copyCells(false);
    else if (event->key() == Qt::Key_C && event->modifiers() == (Qt::ControlModifier | Qt::ShiftModifier))
        copyCells(true);
    else if (event->matches(QKeySequence::Paste))
        pasteRows();
    else if (event->key() == Qt::Key_Insert && !control)
        addRow();
    else if (event->key() == Qt::Key_Delete && control)
        removeSelectedRows();
    else if (event->key() == Qt::Key_Delete)
        leaveOpen();
    else if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && state() != QAbstractItemView::EditingState)
        edit(currentIndex());
    else
        QTableView::keyPressEvent(event);
}

void TableView::currentChanged(const QModelIndex& current, const QModelIndex& previous)
{
    QTableView::currentChanged(current, previous);
    if (!current.isValid())
        return;
    emit told(current.data(TableModel::messageRole).toString());
    // What the cursor stands on is what the sheet shows as selected; load cases are no things on the sheet.
    if (hasFocus() && m_model->kind() != TableKind::load_cases && current.row() != previous.row())
        m_document.select(m_model->pathOfRow(current.row()));
}

QList<int> TableView::selectedRows() const
{
    std::set<int> rows;
    const QModelIndexList selected = selectionModel()->selectedIndexes();
    for (const QModelIndex& index : selected)
        rows.insert(index.row());
    if (rows.empty() && currentIndex().isValid())
        rows.insert(currentIndex().row());
    return {rows.begin(), rows.end()};
}

void TableView::copyCells(bool with_heads)
{
    const QModelIndexList selected = selectionModel()->selectedIndexes();
    if (selected.isEmpty())
        return;
    std::set<int> rows, columns;
    for (const QModelIndex& index : selected) {
        rows.insert(index.row());
        columns.insert(index.column());
    }
    QList<QStringList> cells;
    if (with_heads) {
        QStringList head;
        for (const int column : columns)
            head << m_model->headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
        cells << head;
    }
    for (const int row : rows) {
        QStringList line;
        for (const int column : columns) {
            const QModelIndex index = m_model->index(row, column);
            line << (selectionModel()->isSelected(index) ? index.data(Qt::EditRole).toString() : QString());
        }
        cells << line;
    }
    QApplication::clipboard()->setText(joinCells(cells));
    emit told(tr("%1 × %2 cells copied").arg(rows.size()).arg(columns.size()));
}

void TableView::pasteRows()
{
    const QString text = QApplication::clipboard()->text();
    if (text.trimmed().isEmpty()) {
        emit told(tr("The clipboard holds no text"));
        return;
    }
    PasteDialog dialog(m_document.committed(), m_model->kind(), text, currentIndex().row(), currentIndex().column(), this);
    if (dialog.exec() != QDialog::Accepted || dialog.plan().readable == 0)
        return;
    m_document.push(dialog.plan().value, tr("Rows from the clipboard"));
    emit told(tr("%1 rows taken").arg(dialog.plan().readable));
}

void TableView::addRow()
{
    const int row = m_model->addRow(currentIndex().row());
    if (row < 0)
        return;
    const int first = m_model->kind() == TableKind::segments ? columnIndex(TableKind::segments, QStringLiteral("length_mm")) : 1;
    setCurrentIndex(m_model->index(row, std::max(first, currentIndex().column())));
}

void TableView::removeSelectedRows()
{
    m_model->removeRowsAt(selectedRows());
}

void TableView::leaveOpen()
{
    QModelIndexList cells = selectionModel()->selectedIndexes();
    if (cells.isEmpty() && currentIndex().isValid())
        cells << currentIndex();
    m_model->clearCells(cells);
}

TablesDock::TablesDock(Document& document, QWidget* parent) : QDockWidget(tr("Tables"), parent), m_document(document)
{
    setObjectName(QStringLiteral("tablesDock"));
    setAllowedAreas(Qt::BottomDockWidgetArea | Qt::RightDockWidgetArea | Qt::TopDockWidgetArea);
    auto* body = new QWidget(this);
    auto* column = new QVBoxLayout(body);
    column->setContentsMargins(12, 6, 12, 8);
    column->setSpacing(6);
    auto* head = new QHBoxLayout;
    m_tabs = new QTabBar(body);
    m_tabs->setObjectName(QStringLiteral("tables"));
    m_tabs->setAccessibleName(tr("Tables"));
    m_tabs->setDrawBase(false);
    m_stack = new QStackedWidget(body);
    for (const TableKind kind : tableKinds) {
        m_tabs->addTab(tableName(kind));
        auto* table = new TableView(document, kind, m_stack);
        m_views[static_cast<std::size_t>(kind)] = table;
        m_stack->addWidget(table);
        connect(table, &TableView::told, this, &TablesDock::tell);
    }
    connect(m_tabs, &QTabBar::currentChanged, this, [this](int index) {
        m_stack->setCurrentIndex(index);
        tell({});
    });
    head->addWidget(m_tabs);
    head->addStretch(1);
    const auto button = [&](const char* name, const QString& text, const QString& tip, auto run) {
        auto* made = new QPushButton(text, body);
        made->setObjectName(QString::fromLatin1(name));
        made->setAccessibleName(text);
        made->setToolTip(tip);
        connect(made, &QPushButton::clicked, this, [this, run] { (current().*run)(); });
        head->addWidget(made);
    };
    button("addRow", tr("Add a row"), tr("Insert"), &TableView::addRow);
    button("removeRows", tr("Remove rows"), tr("Ctrl+Delete"), &TableView::removeSelectedRows);
    button("pasteRows", tr("Paste rows …"), tr("Ctrl+V; shows first what would be taken"), &TableView::pasteRows);
    column->addLayout(head);
    column->addWidget(m_stack, 1);
    m_message = new QLabel(body);
    m_message->setObjectName(QStringLiteral("tableMessage"));
    m_message->setWordWrap(true);
    m_message->setMinimumHeight(18);
    column->addWidget(m_message);
    setWidget(body);
    new FocusRing(body);
    connect(&document, &Document::selectionChanged, this, &TablesDock::followSelection);
}

TableView& TablesDock::current()
{
    return *m_views[static_cast<std::size_t>(std::max(0, m_tabs->currentIndex()))];
}

void TablesDock::showTable(TableKind kind)
{
    m_tabs->setCurrentIndex(static_cast<int>(kind));
}

void TablesDock::open()
{
    show();
    raise();
    followSelection();
    TableView& table = current();
    if (!table.currentIndex().isValid() && table.table().rowCount() > 0)
        table.setCurrentIndex(table.table().index(0, 1));
    table.setFocus(Qt::ShortcutFocusReason);
}

void TablesDock::followSelection()
{
    const Subject what = subjectOf(m_document.selection());
    if (!isVisible() || what.kind == SubjectKind::nothing)
        return;
    const TableKind kind = what.kind == SubjectKind::segment ? TableKind::segments
                           : what.kind == SubjectKind::part  ? TableKind::parts
                                                             : TableKind::supports;
    TableView& table = view(kind);
    const int row = table.table().rowOfPath(m_document.selection());
    if (row < 0 || (table.hasFocus() && table.currentIndex().row() == row))
        return;
    showTable(kind);
    table.setCurrentIndex(table.table().index(row, std::max(1, table.currentIndex().column())));
}

void TablesDock::tell(const QString& message)
{
    m_message->setText(message);
    // A refusal is the cell's own; the rest is a plain word.
    const bool refusal = !message.isEmpty() && current().currentIndex().data(TableModel::messageRole).toString().size() > 0;
    m_message->setStyleSheet(QStringLiteral("color:%1").arg((refusal ? tokens().stop : tokens().ink2).name()));
    m_message->setAccessibleName(message);
}

QString TablesDock::message() const
{
    return m_message->text();
}

} // namespace shaftwright::ui
