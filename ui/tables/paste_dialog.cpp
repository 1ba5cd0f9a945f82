#include "ui/tables/paste_dialog.h"

#include "ui/widgets/theme.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

namespace shaftwright::ui
{

PasteDialog::PasteDialog(const Arrangement& arrangement, TableKind kind, const QString& text, int row, int column,
                         QWidget* parent)
    : QDialog(parent), m_arrangement(arrangement), m_kind(kind), m_rows(splitPasted(text)), m_row(row)
{
    setObjectName(QStringLiteral("pasteDialog"));
    setWindowTitle(tr("Rows from the clipboard for %1").arg(tableName(kind)));
    // A column that nobody can type into receives nothing: the next one that takes values begins.
    const auto& all = columnsOf(kind);
    while (column > 0 && static_cast<std::size_t>(column) < all.size() && all[static_cast<std::size_t>(column)].fixed)
        ++column;
    if (static_cast<std::size_t>(std::max(column, 0)) >= all.size())
        column = 0;
    // Nothing typed stands in the first column, so order begins behind it.
    m_mapping = guessMapping(m_rows, kind,
                             column > 0 ? column
                                        : columnIndex(kind, kind == TableKind::segments ? QStringLiteral("length_mm")
                                                            : kind == TableKind::parts  ? QStringLiteral("kind")
                                                                                        : QStringLiteral("name")));
    build();
    choose();
}

void PasteDialog::build()
{
    resize(900, 520);
    auto* column = new QVBoxLayout(this);
    column->setSpacing(10);
    m_summary = new QLabel(this);
    m_summary->setObjectName(QStringLiteral("summary"));
    m_summary->setWordWrap(true);
    column->addWidget(m_summary);

    auto* choices = new QHBoxLayout;
    m_head = new QCheckBox(tr("The first row names the columns"), this);
    m_head->setObjectName(QStringLiteral("head"));
    m_head->setChecked(m_mapping.has_head);
    choices->addWidget(m_head);
    choices->addStretch(1);
    auto* where_label = new QLabel(tr("Put them"), this);
    choices->addWidget(where_label);
    m_where = new QComboBox(this);
    m_where->setObjectName(QStringLiteral("where"));
    m_where->setAccessibleName(tr("Where the rows are put"));
    m_where->addItem(tr("behind the last row"));
    if (m_row >= 0 && m_row < rowPaths(m_arrangement, m_kind).size())
        m_where->addItem(tr("over row %1 and the ones below").arg(m_row + 1));
    where_label->setBuddy(m_where);
    choices->addWidget(m_where);
    column->addLayout(choices);

    m_preview = new QTableWidget(this);
    m_preview->setObjectName(QStringLiteral("preview"));
    m_preview->setAccessibleName(tr("Rows from the clipboard"));
    m_preview->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_preview->setTabKeyNavigation(false);
    m_preview->setColumnCount(static_cast<int>(m_mapping.columns.size()) + 1);
    QStringList heads;
    for (qsizetype i = 0; i < m_mapping.columns.size(); ++i)
        heads << tr("Column %1").arg(i + 1);
    heads << tr("What becomes of it");
    m_preview->setHorizontalHeaderLabels(heads);
    m_preview->verticalHeader()->hide();
    m_preview->horizontalHeader()->setStretchLastSection(true);
    m_preview->setRowCount(1);
    for (qsizetype i = 0; i < m_mapping.columns.size(); ++i) {
        auto* box = new QComboBox(m_preview);
        box->setObjectName(QStringLiteral("column%1").arg(i + 1));
        box->setAccessibleName(tr("Meaning of column %1").arg(i + 1));
        box->addItem(tr("left out"), -1);
        const auto& columns = columnsOf(m_kind);
        for (std::size_t c = 0; c < columns.size(); ++c) {
            if (!columns[c].fixed || columns[c].key == QLatin1String("id") || columns[c].key == QLatin1String("kind"))
                box->addItem(columns[c].head(), static_cast<int>(c));
        }
        const int at = box->findData(m_mapping.columns[i]);
        if (at < 0)
            m_mapping.columns[i] = -1;
        box->setCurrentIndex(std::max(at, 0));
        connect(box, &QComboBox::currentIndexChanged, this, &PasteDialog::choose);
        m_preview->setCellWidget(0, static_cast<int>(i), box);
        m_preview->setColumnWidth(static_cast<int>(i), 132);
        m_columns << box;
    }
    column->addWidget(m_preview, 1);

    auto* buttons = new QDialogButtonBox(this);
    m_take = buttons->addButton(QString(), QDialogButtonBox::AcceptRole);
    m_take->setObjectName(QStringLiteral("take"));
    QPushButton* leave = buttons->addButton(tr("Take nothing"), QDialogButtonBox::RejectRole);
    leave->setObjectName(QStringLiteral("leave"));
    m_take->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    connect(m_head, &QCheckBox::toggled, this, &PasteDialog::choose);
    connect(m_where, &QComboBox::currentIndexChanged, this, &PasteDialog::choose);
}

void PasteDialog::choose()
{
    m_mapping.has_head = m_head->isChecked();
    for (qsizetype i = 0; i < m_columns.size(); ++i)
        m_mapping.columns[i] = m_columns[i]->currentData().toInt();
    m_plan = planPaste(m_arrangement, m_kind, m_rows, m_mapping, m_where->currentIndex() == 1 ? m_row : -1);
    show(m_plan);
}

void PasteDialog::show(const PastePlan& plan)
{
    const int last = m_preview->columnCount() - 1;
    m_preview->setRowCount(static_cast<int>(plan.rows.size()) + 1);
    for (qsizetype r = 0; r < plan.rows.size(); ++r) {
        const PasteRow& row = plan.rows[r];
        const bool bad = !row.reason.isEmpty();
        for (int c = 0; c <= last; ++c) {
            auto* item = new QTableWidgetItem(
                c == last ? (bad ? QStringLiteral("✕ ") + row.reason : QStringLiteral("✓ ") + row.note) : row.cells.value(c));
            item->setForeground(bad ? tokens().stop : c == last ? tokens().met : tokens().ink);
            if (bad)
                item->setBackground(tokens().stop_soft);
            item->setToolTip(item->text());
            if (bad)
                item->setData(Qt::AccessibleDescriptionRole, tr("Cannot be read: %1").arg(row.reason));
            m_preview->setItem(static_cast<int>(r) + 1, c, item);
        }
    }
    const auto left_out = static_cast<int>(plan.rows.size()) - plan.readable;
    QString words = plan.trouble.isEmpty()
                        ? (plan.readable == 1 ? tr("1 row can be read.") : tr("%1 rows can be read.").arg(plan.readable))
                        : plan.trouble + QLatin1Char('.');
    if (plan.trouble.isEmpty() && left_out > 0)
        words += QLatin1Char(' ') + (left_out == 1
                                         ? tr("1 row cannot, and will be left out; the reason stands beside.")
                                         : tr("%1 rows cannot, and will be left out; the reason stands beside.").arg(left_out));
    words += QLatin1Char(' ') + tr("Nothing is taken until you confirm it.");
    m_summary->setText(words);
    m_take->setText(left_out > 0 ? tr("Take %1 rows, leave out %2").arg(plan.readable).arg(left_out)
                                 : tr("Take %1 rows").arg(plan.readable));
    m_take->setEnabled(plan.readable > 0);
}

} // namespace shaftwright::ui
