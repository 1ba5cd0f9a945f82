#pragma once
// The tables under the sheet: segments, parts, supports and load cases of the same document.

#include "ui/document/document.h"
#include "ui/tables/table_model.h"

#include <QDockWidget>
#include <QTableView>

class QLabel;
class QPushButton;
class QTabBar;
class QStackedWidget;

namespace shaftwright::ui
{

/// A table that keeps the keys it needs for itself while it has the focus.
class TableView : public QTableView
{
    Q_OBJECT
public:
    TableView(Document& document, TableKind kind, QWidget* parent = nullptr);

    [[nodiscard]] TableModel& table() { return *m_model; }
    void copyCells(bool with_heads);
    /// Shows what the clipboard would do; takes it when confirmed.
    void pasteRows();
    void addRow();
    void removeSelectedRows();
    void leaveOpen();
    /// Low, so that the sheet above keeps its room; the user may draw it up.
    [[nodiscard]] QSize sizeHint() const override { return {600, 112}; }

signals:
    void told(const QString& message);

protected:
    bool event(QEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

private:
    [[nodiscard]] QList<int> selectedRows() const;

    Document& m_document;
    TableModel* m_model = nullptr;
};

class TablesDock : public QDockWidget
{
    Q_OBJECT
public:
    TablesDock(Document& document, QWidget* parent = nullptr);

    /// Shows the table of the selection, or the one shown last, and gives it the keyboard.
    void open();
    void showTable(TableKind kind);
    [[nodiscard]] TableView& view(TableKind kind) { return *m_views[static_cast<std::size_t>(kind)]; }
    [[nodiscard]] TableView& current();
    [[nodiscard]] QString message() const;

private:
    void followSelection();
    void tell(const QString& message);

    Document& m_document;
    QTabBar* m_tabs = nullptr;
    QStackedWidget* m_stack = nullptr;
    QLabel* m_message = nullptr;
    TableView* m_views[4] = {};
    bool m_following = false;
};

} // namespace shaftwright::ui
