#pragma once
// What the clipboard would do to a table, row by row, before anything is taken.

// Qt first: its meta-object compiler trips over a header of the standard library otherwise.
#include <QDialog>

#include "ui/tables/paste_plan.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;
class QTableWidget;

namespace shaftwright::ui
{

class PasteDialog : public QDialog
{
    Q_OBJECT
public:
    /// @param row, column  where the cursor of the table stands; -1: nowhere
    PasteDialog(const Arrangement& arrangement, TableKind kind, const QString& text, int row, int column,
                QWidget* parent = nullptr);

    [[nodiscard]] const PastePlan& plan() const { return m_plan; }

private:
    void build();
    void choose();
    void show(const PastePlan& plan);

    Arrangement m_arrangement;
    TableKind m_kind;
    QList<QStringList> m_rows;
    PasteMapping m_mapping;
    int m_row;
    PastePlan m_plan;
    QLabel* m_summary = nullptr;
    QCheckBox* m_head = nullptr;
    QComboBox* m_where = nullptr;
    QList<QComboBox*> m_columns;
    QTableWidget* m_preview = nullptr;
    QPushButton* m_take = nullptr;
};

} // namespace shaftwright::ui
