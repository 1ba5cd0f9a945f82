// The tables: cells, clipboard and keys.
#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include "core/document/document.h"
#include "core/edit/edit.h"
#include "ui/document/document.h"
#include "ui/document/subject.h"
#include "ui/sheet/sheet_view.h"
#include "ui/tables/paste_dialog.h"
#include "ui/tables/paste_plan.h"
#include "ui/tables/tables_dock.h"
#include "ui/widgets/theme.h"
#include "ui/window/main_window.h"

#include <QAbstractButton>
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QLineEdit>
#include <QStandardPaths>
#include <QStyleFactory>
#include <QTableWidget>
#include <QTest>
#include <QTimer>

using namespace shaftwright;
using namespace shaftwright::ui;

namespace
{

void settle()
{
    for (int i = 0; i < 3; ++i)
        QCoreApplication::processEvents();
}

Arrangement gearbox()
{
    const ReadResult read = readArrangement(
        *loadFile(std::string(SHAFTWRIGHT_SOURCE_DIR) + "/samples/gearbox-intermediate.shaftwright").text, "sample");
    REQUIRE(read.ok());
    return *read.arrangement;
}

struct Bench {
    MainWindow window;
    Bench()
    {
        window.resize(1440, 900);
        window.document().reset(gearbox());
        window.show();
        settle();
    }
    Document& document() { return window.document(); }
    TableView& table(TableKind kind)
    {
        window.tables().open();
        window.tables().showTable(kind);
        settle();
        TableView& view = window.tables().view(kind);
        view.setFocus();
        settle();
        return view;
    }
    static QModelIndex at(TableView& view, int row, const char* key)
    {
        return view.table().index(row, columnIndex(view.table().kind(), QString::fromLatin1(key)));
    }
    /// As somebody would: the cell, F2, the text, Enter.
    static void type(TableView& view, const QModelIndex& index, const QString& text)
    {
        view.setCurrentIndex(index);
        QTest::keyClick(&view, Qt::Key_F2);
        settle();
        QWidget* editor = view.findChild<QLineEdit*>();
        REQUIRE(editor != nullptr);
        static_cast<QLineEdit*>(editor)->selectAll();
        QTest::keyClicks(editor, text);
        QTest::keyClick(editor, Qt::Key_Return);
        settle();
    }
};

TableEdit typed(const Arrangement& arrangement, TableKind kind, const QString& path, const char* key, const QString& text)
{
    return withCell(arrangement, kind, path, columnIndex(kind, QString::fromLatin1(key)), text);
}

} // namespace

TEST_CASE("every cell shows what the document holds and takes its own text back", "[ui][tables]")
{
    const Arrangement arrangement = gearbox();
    int cells = 0;
    for (const TableKind kind : tableKinds) {
        const TableCells table = cellsOf(arrangement, kind);
        const QStringList paths = rowPaths(arrangement, kind);
        REQUIRE(table.size() == static_cast<std::size_t>(paths.size()));
        CHECK_FALSE(table.empty());
        for (std::size_t r = 0; r < table.size(); ++r) {
            REQUIRE(table[r].size() == columnsOf(kind).size());
            for (std::size_t c = 0; c < table[r].size(); ++c) {
                const TableColumn& column = columnsOf(kind)[c];
                const TableCell& cell = table[r][c];
                if (column.fixed || !cell.applies || (cell.typed.isEmpty() && !column.may_be_open))
                    continue;
                const TableEdit edit = withCell(arrangement, kind, paths[static_cast<int>(r)], static_cast<int>(c), cell.typed);
                INFO(paths[static_cast<int>(r)].toStdString() << ' ' << column.key.toStdString() << " '"
                                                              << cell.typed.toStdString() << "' " << edit.message.toStdString());
                REQUIRE(edit.value);
                Arrangement value = *edit.value;
                value.proposed = arrangement.proposed; // what is typed is given from then on
                CHECK(value == arrangement);
                ++cells;
            }
        }
    }
    CHECK(cells > 60);
}

TEST_CASE("a cell understands units, arithmetic and a decimal comma", "[ui][tables]")
{
    const Arrangement arrangement = gearbox();
    const auto length = [&](const QString& text) {
        return typed(arrangement, TableKind::segments, QStringLiteral("shaft.segments.S2"), "length_mm", text);
    };
    // 2.5 in = 63.5 mm (inch of 25.4 mm); sums by hand.
    CHECK(findSegment(*length(QStringLiteral("2.5 in")).value, SegmentId("S2"))->length_mm == Approx(63.5).epsilon(1e-12));
    CHECK(findSegment(*length(QStringLiteral("60+3*2")).value, SegmentId("S2"))->length_mm == 66.0);
    CHECK(findSegment(*length(QStringLiteral("62,5")).value, SegmentId("S2"))->length_mm == 62.5);
    CHECK(findPart(*typed(arrangement, TableKind::parts, QStringLiteral("parts.G1"), "power_kW", QStringLiteral("9000 W")).value,
                   PartId("G1"))
              ->drive->power_kW == 9.0);
    CHECK(typed(arrangement, TableKind::load_cases, rowPaths(arrangement, TableKind::load_cases).front(), "time_share",
                QStringLiteral("40 %"))
              .value->duty.load_cases.front()
              .time_share == Approx(0.4).epsilon(1e-12));
}

TEST_CASE("what a cell cannot take is told and changes nothing", "[ui][tables]")
{
    const Arrangement arrangement = gearbox();
    const QString s2 = QStringLiteral("shaft.segments.S2"), g1 = QStringLiteral("parts.G1"), a = QStringLiteral("supports.A");
    for (const auto& [kind, path, key, text] : std::vector<std::tuple<TableKind, QString, const char*, QString>>{
             {TableKind::segments, s2, "length_mm", QStringLiteral("long")},
             {TableKind::segments, s2, "length_mm", QString()},
             {TableKind::segments, s2, "length_mm", QStringLiteral("-5")},
             {TableKind::segments, s2, "length_mm", QStringLiteral("5 kN")},
             {TableKind::segments, s2, "bore_mm", QStringLiteral("56")}, // no wall left
             {TableKind::segments, s2, "bore_end_mm", QStringLiteral("20")},
             {TableKind::segments, s2, "start_mm", QStringLiteral("20")},
             {TableKind::parts, g1, "teeth", QStringLiteral("24.5")},
             {TableKind::parts, g1, "hand", QStringLiteral("up")},
             {TableKind::parts, g1, "power_kW", QString()}, // neither power nor torque would be left
             {TableKind::supports, a, "role", QStringLiteral("fixed")},
             {TableKind::supports, a, "bearing", QStringLiteral("6208X9")}}) {
        const TableEdit edit = typed(arrangement, kind, path, key, text);
        INFO(key << " '" << text.toStdString() << '\'');
        CHECK_FALSE(edit.value);
        CHECK_FALSE(edit.message.isEmpty());
    }
}

TEST_CASE("power, torque and the rest exclude one another", "[ui][tables]")
{
    const Arrangement arrangement = gearbox();
    const TableEdit torque =
        typed(arrangement, TableKind::parts, QStringLiteral("parts.G1"), "torque_Nmm", QStringLiteral("120 Nm"));
    REQUIRE(torque.value);
    const Drive& drive = *findPart(*torque.value, PartId("G1"))->drive;
    CHECK(drive.torque_Nmm == 120000.0);
    CHECK_FALSE(drive.power_kW);
    CHECK_FALSE(drive.takes_remaining);
}

TEST_CASE("a bearing is typed by its designation", "[ui][tables]")
{
    const Arrangement arrangement = gearbox();
    const TableEdit edit =
        typed(arrangement, TableKind::supports, QStringLiteral("supports.A"), "bearing", QStringLiteral("6309"));
    REQUIRE(edit.value);
    const Support* support = findSupport(*edit.value, SupportId("A"));
    REQUIRE(support->bearing);
    CHECK(support->bearing->designation() == "6309");
    CHECK(support->bearing->family == Family::deep_groove_ball);
    CHECK(support->bearing->rows.front().row.outer_mm == 100.0); // ISO 15, dimension series 03, bore 45
}

TEST_CASE("a place beyond the shaft is told", "[ui][tables]")
{
    const TableEdit edit = typed(gearbox(), TableKind::parts, QStringLiteral("parts.G1"), "x_mm", QStringLiteral("900"));
    REQUIRE(edit.value);
    CHECK(findPart(*edit.value, PartId("G1"))->x_mm == 218.0); // 27 + 62 + 14 + 74 + 14 + 27
    CHECK(edit.note.contains(QStringLiteral("218")));
}

TEST_CASE("text from a spreadsheet is split as a spreadsheet wrote it", "[ui][tables]")
{
    CHECK(splitPasted(QStringLiteral("a\tb\r\n1\t2\r\n")) == QList<QStringList>{{"a", "b"}, {"1", "2"}});
    CHECK(splitPasted(QStringLiteral("1,5;2\n\n3;4")) == QList<QStringList>{{"1,5", "2"}, {"3", "4"}});
    CHECK(splitPasted(QStringLiteral("\"two\nlines\"\t\"say \"\"so\"\"\"")) == QList<QStringList>{{"two lines", "say \"so\""}});
    CHECK(splitPasted(QStringLiteral("2.5\"\t3\"")) == QList<QStringList>{{"2.5\"", "3\""}}); // inch marks
    CHECK(splitPasted(QString()).isEmpty());
    const QList<QStringList> odd{{"a\tb", "\"c\""}, {"", "d"}};
    CHECK(splitPasted(joinCells(odd)) == odd);
}

TEST_CASE("columns are found by head words with units", "[ui][tables]")
{
    const QList<QStringList> rows = splitPasted(QStringLiteral("Remark\tDiameter [in]\tLänge (cm)\nseat\t2\t3,5\n"));
    const PasteMapping mapping = guessMapping(rows, TableKind::segments, 2);
    CHECK(mapping.has_head);
    CHECK(mapping.columns ==
          QList<int>{-1, columnIndex(TableKind::segments, "outer_mm"), columnIndex(TableKind::segments, "length_mm")});
    CHECK(mapping.units == QStringList{"", "in", "cm"});
    const PastePlan plan = planPaste(gearbox(), TableKind::segments, rows, mapping, -1);
    REQUIRE(plan.readable == 1);
    const Segment& made = plan.value.shaft.segments.back();
    CHECK(made.outer_mm == Approx(50.8).epsilon(1e-12)); // 2 in of 25.4 mm
    CHECK(made.length_mm == 35.0);
    CHECK(plan.value.shaft.segments.size() == gearbox().shaft.segments.size() + 1);
}

TEST_CASE("a unit in a cell wins over the one in the head", "[ui][tables]")
{
    const QList<QStringList> rows = splitPasted(QStringLiteral("length in cm\tdiameter\n2\t40\n20 mm\t40\n"));
    const PastePlan plan = planPaste(gearbox(), TableKind::segments, rows, guessMapping(rows, TableKind::segments, 2), -1);
    REQUIRE(plan.readable == 2);
    const auto& segments = plan.value.shaft.segments;
    CHECK(segments[segments.size() - 2].length_mm == 20.0);
    CHECK(segments[segments.size() - 1].length_mm == 20.0);
}

TEST_CASE("columns are found by order without a head", "[ui][tables]")
{
    const QList<QStringList> rows = splitPasted(QStringLiteral("30\t45\n12,5\t50\n"));
    const PasteMapping mapping = guessMapping(rows, TableKind::segments, columnIndex(TableKind::segments, "length_mm"));
    CHECK_FALSE(mapping.has_head);
    const PastePlan plan = planPaste(gearbox(), TableKind::segments, rows, mapping, 0);
    REQUIRE(plan.readable == 2);
    CHECK(plan.value.shaft.segments[0].length_mm == 30.0);
    CHECK(plan.value.shaft.segments[0].outer_mm == 45.0);
    CHECK(plan.value.shaft.segments[1].length_mm == 12.5);
    CHECK(plan.value.shaft.segments.size() == gearbox().shaft.segments.size());
}

TEST_CASE("rows that cannot be read say why and leave the others alone", "[ui][tables]")
{
    const QList<QStringList> rows = splitPasted(QStringLiteral("Kind\tx\tTeeth\n"
                                                               "Spur gear\t100\t24\n"
                                                               "Windmill\t100\t24\n"
                                                               "\t100\t24\n"
                                                               "Gear\t\t24\n"
                                                               "Gear\tabout here\t24\n"
                                                               "Gear\t100\t24,5\n"
                                                               "Weight\t50\n"));
    const PastePlan plan = planPaste(gearbox(), TableKind::parts, rows, guessMapping(rows, TableKind::parts, 1), -1);
    REQUIRE(plan.rows.size() == 7);
    CHECK(plan.readable == 2);
    CHECK(plan.rows[0].reason.isEmpty());
    CHECK(plan.rows[1].reason.contains(QStringLiteral("Windmill")));
    CHECK(plan.rows[2].reason.contains(QStringLiteral("missing")));
    CHECK(plan.rows[3].reason.contains(QStringLiteral("Place x")));
    CHECK(plan.rows[4].reason.startsWith(QStringLiteral("Place x")));
    CHECK(plan.rows[5].reason.startsWith(QStringLiteral("Teeth")));
    CHECK(plan.rows[6].reason.isEmpty());
    CHECK(plan.value.parts.size() == gearbox().parts.size() + 2);
}

TEST_CASE("copied with its heads a table comes back unchanged", "[ui][tables]")
{
    const Arrangement arrangement = gearbox();
    for (const TableKind kind : tableKinds) {
        QList<QStringList> cells;
        QStringList head;
        for (const TableColumn& column : columnsOf(kind))
            head << column.head();
        cells << head;
        for (const auto& row : cellsOf(arrangement, kind)) {
            QStringList line;
            for (const TableCell& cell : row)
                line << cell.typed;
            cells << line;
        }
        const QList<QStringList> pasted = splitPasted(joinCells(cells));
        const PastePlan plan = planPaste(arrangement, kind, pasted, guessMapping(pasted, kind, 0), -1);
        for (const PasteRow& row : plan.rows) {
            INFO(tableName(kind).toStdString() << ' ' << row.cells.value(0).toStdString() << ' ' << row.reason.toStdString());
            CHECK(row.reason.isEmpty());
        }
        Arrangement value = plan.value;
        value.proposed = arrangement.proposed;
        CHECK(value == arrangement);
    }
}

TEST_CASE("a diameter and a bore that only fit together are taken together", "[ui][tables]")
{
    Arrangement arrangement = gearbox();
    arrangement.shaft.segments[1].bore_mm = 40.0;
    // From 56/40 to 30/10: the diameter alone would leave no wall.
    const QList<QStringList> rows = splitPasted(QStringLiteral("Id\tDiameter\tBore\nS2\t30\t10\n"));
    const PastePlan plan = planPaste(arrangement, TableKind::segments, rows, guessMapping(rows, TableKind::segments, 0), -1);
    INFO(plan.rows.front().reason.toStdString());
    REQUIRE(plan.readable == 1);
    CHECK(plan.value.shaft.segments[1].outer_mm == 30.0);
    CHECK(plan.value.shaft.segments[1].bore_mm == 10.0);
}

TEST_CASE("typing into a cell is one step that undo takes back", "[ui][tables]")
{
    Bench bench;
    TableView& view = bench.table(TableKind::segments);
    const Arrangement before = bench.document().committed();
    Bench::type(view, Bench::at(view, 1, "length_mm"), QStringLiteral("70+2"));
    CHECK(bench.document().committed().shaft.segments[1].length_mm == 72.0);
    CHECK(bench.document().undoStack().count() == 1);
    CHECK(Bench::at(view, 1, "length_mm").data().toString() == QStringLiteral("72"));
    // What stands right of it moved along, as in the panel.
    CHECK(Bench::at(view, 2, "start_mm").data().toString() == QStringLiteral("99"));
    QTest::keyClick(&bench.window, Qt::Key_Z, Qt::ControlModifier);
    settle();
    CHECK(bench.document().committed() == before);
    CHECK(Bench::at(view, 1, "length_mm").data().toString() == QStringLiteral("62"));
}

TEST_CASE("a text that is not understood stays in its cell with a message, the value stays", "[ui][tables]")
{
    Bench bench;
    TableView& view = bench.table(TableKind::segments);
    const Arrangement before = bench.document().committed();
    const QModelIndex cell = Bench::at(view, 1, "outer_mm");
    Bench::type(view, cell, QStringLiteral("thick"));
    CHECK(bench.document().committed() == before);
    CHECK(bench.document().undoStack().count() == 0);
    CHECK(cell.data().toString() == QStringLiteral("thick"));
    CHECK_FALSE(cell.data(TableModel::messageRole).toString().isEmpty());
    CHECK(cell.data(Qt::AccessibleDescriptionRole).toString().contains(cell.data(TableModel::messageRole).toString()));
    CHECK(bench.window.tables().message().contains(QStringLiteral("S2")));
    Bench::type(view, cell, QStringLiteral("58"));
    CHECK(bench.document().committed().shaft.segments[1].outer_mm == 58.0);
    CHECK(cell.data(TableModel::messageRole).toString().isEmpty());
    CHECK(bench.window.tables().message().isEmpty());
}

TEST_CASE("rows come and go by keys", "[ui][tables]")
{
    Bench bench;
    for (const TableKind kind : tableKinds) {
        TableView& view = bench.table(kind);
        const Arrangement before = bench.document().committed();
        const int rows = view.table().rowCount();
        view.setCurrentIndex(view.table().index(0, 1));
        QTest::keyClick(&view, Qt::Key_Insert);
        settle();
        INFO(tableName(kind).toStdString());
        CHECK(view.table().rowCount() == rows + 1);
        CHECK(view.currentIndex().row() > 0); // on the new row
        QTest::keyClick(&view, Qt::Key_Delete, Qt::ControlModifier);
        settle();
        CHECK(view.table().rowCount() == rows);
        QTest::keyClick(&bench.window, Qt::Key_Z, Qt::ControlModifier);
        QTest::keyClick(&bench.window, Qt::Key_Z, Qt::ControlModifier);
        settle();
        CHECK(bench.document().committed() == before);
    }
}

TEST_CASE("Delete leaves an input open and does not take the part from the sheet", "[ui][tables]")
{
    Bench bench;
    TableView& view = bench.table(TableKind::parts);
    const QModelIndex mass = Bench::at(view, 0, "mass_kg");
    view.setCurrentIndex(mass);
    const std::size_t parts = bench.document().committed().parts.size();
    QTest::keyClick(&view, Qt::Key_Delete);
    settle();
    CHECK(bench.document().committed().parts.size() == parts);
    CHECK_FALSE(bench.document().committed().parts.front().mass_kg);
    CHECK(bench.document().undoStack().count() == 1);
}

TEST_CASE("the cursor of a table selects on the sheet and the other way round", "[ui][tables]")
{
    Bench bench;
    TableView& view = bench.table(TableKind::supports);
    view.setCurrentIndex(view.table().index(0, 1));
    QTest::keyClick(&view, Qt::Key_Down);
    settle();
    CHECK(bench.document().selection() == view.table().pathOfRow(1));
    bench.document().select(QStringLiteral("parts.G2"));
    settle();
    TableView& parts = bench.window.tables().current();
    CHECK(parts.table().kind() == TableKind::parts);
    CHECK(parts.table().pathOfRow(parts.currentIndex().row()) == QStringLiteral("parts.G2"));
}

TEST_CASE("Ctrl+C in a table copies cells with tabs", "[ui][tables]")
{
    Bench bench;
    TableView& view = bench.table(TableKind::segments);
    view.selectionModel()->select(QItemSelection(Bench::at(view, 0, "length_mm"), Bench::at(view, 1, "outer_mm")),
                                  QItemSelectionModel::ClearAndSelect);
    QTest::keyClick(&view, Qt::Key_C, Qt::ControlModifier);
    CHECK(QApplication::clipboard()->text() == QStringLiteral("27\t45\n62\t56\n"));
    QTest::keyClick(&view, Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(QApplication::clipboard()->text() == QStringLiteral("Length (mm)\tDiameter (mm)\n27\t45\n62\t56\n"));
}

TEST_CASE("Ctrl+V shows first what would be taken; confirmed it is one step", "[ui][tables]")
{
    Bench bench;
    TableView& view = bench.table(TableKind::segments);
    const Arrangement before = bench.document().committed();
    QApplication::clipboard()->setText(QStringLiteral("Length (mm)\tDiameter\n10\t40\nno\t40\n12,5\t42\n"));
    const auto answer = [&](const QString& button) {
        QTimer::singleShot(0, &bench.window, [button] {
            auto* dialog = qobject_cast<PasteDialog*>(QApplication::activeModalWidget());
            REQUIRE(dialog != nullptr);
            CHECK(dialog->plan().readable == 2);
            auto* preview = dialog->findChild<QTableWidget*>(QStringLiteral("preview"));
            CHECK(preview->rowCount() == 4); // choices of columns and three rows
            CHECK(preview->item(2, preview->columnCount() - 1)->text().contains(QStringLiteral("Length")));
            // Each control can be named by a screen reader.
            for (const QWidget* control : dialog->findChildren<QWidget*>()) {
                if (qobject_cast<const QComboBox*>(control) != nullptr)
                    CHECK_FALSE(control->accessibleName().isEmpty());
            }
            dialog->findChild<QAbstractButton*>(button)->click();
        });
        QTest::keyClick(&view, Qt::Key_V, Qt::ControlModifier);
        settle();
    };
    answer(QStringLiteral("leave"));
    CHECK(bench.document().committed() == before);
    CHECK(bench.document().undoStack().count() == 0);
    answer(QStringLiteral("take"));
    CHECK(bench.document().committed().shaft.segments.size() == before.shaft.segments.size() + 2);
    CHECK(bench.document().committed().shaft.segments.back().length_mm == 12.5);
    CHECK(bench.document().undoStack().count() == 1);
    bench.window.activateWindow(); // without a window manager nothing gives it back
    settle();
    QTest::keyClick(&bench.window, Qt::Key_Z, Qt::ControlModifier);
    settle();
    CHECK(bench.document().committed() == before);
}

TEST_CASE("every table, its cells and buttons can be named", "[ui][tables]")
{
    Bench bench;
    for (const TableKind kind : tableKinds) {
        TableView& view = bench.table(kind);
        CHECK_FALSE(view.accessibleName().isEmpty());
        for (int row = 0; row < view.table().rowCount(); ++row) {
            for (int column = 0; column < view.table().columnCount(); ++column)
                CHECK_FALSE(view.table().index(row, column).data(Qt::AccessibleTextRole).toString().isEmpty());
        }
    }
    for (const char* name : {"addRow", "removeRows", "pasteRows"})
        CHECK_FALSE(bench.window.tables().findChild<QWidget*>(QString::fromLatin1(name))->accessibleName().isEmpty());
}

TEST_CASE("opened tables leave the sheet most of the window", "[ui][tables]")
{
    Bench bench;
    const double before = bench.window.sheet().scaleRatio();
    bench.table(TableKind::parts);
    CHECK(bench.window.tables().height() <= 240);
    CHECK(bench.window.sheet().height() >= 500);
    INFO(before << ' ' << bench.window.sheet().scaleRatio());
    CHECK(bench.window.sheet().scaleRatio() > 0.3 * before); // still readable
}

TEST_CASE("hidden tables do not work while something is dragged", "[ui][tables]")
{
    Bench bench;
    TableView& view = bench.table(TableKind::parts);
    bench.window.tables().hide();
    settle();
    int changes = 0;
    QObject::connect(&view.table(), &QAbstractItemModel::dataChanged, &bench.window, [&] { ++changes; });
    bench.document().push(movePart(bench.document().committed(), PartId("G1"), 60.0), QStringLiteral("move"));
    settle();
    CHECK(changes == 0);
    bench.window.tables().open();
    settle();
    CHECK(Bench::at(view, 0, "x_mm").data().toString() == QStringLiteral("60"));
}

int main(int argc, char** argv)
{
    QStandardPaths::setTestModeEnabled(true);
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("shaftwright-test"));
    QApplication::setOrganizationName(QStringLiteral("shaftwright-test"));
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    Theme::instance().setChoice(ThemeChoice::light);
    return Catch::Session().run(argc, argv);
}
