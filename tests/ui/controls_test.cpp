// Every control of the window has a name and can be reached with the keyboard; journeys that do not fit elsewhere.
#include <catch2/catch.hpp>

#include "bench.h"
#include "ui/panels/fold.h"
#include "ui/panels/panel_parts.h"
#include "ui/panels/selection_panel.h"
#include "ui/widgets/segmented.h"
#include "ui/widgets/theme.h"
#include "ui/window/one_bearing_dialog.h"
#include "ui/window/shelf.h"
#include "ui/window/title_band.h"

#include <QAbstractButton>
#include <QAbstractSpinBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QLineEdit>
#include <QMenu>
#include <QMessageBox>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTimer>

#include <set>

using namespace bench;

namespace
{

bool isControl(const QWidget* widget)
{
    return qobject_cast<const QAbstractButton*>(widget) != nullptr || qobject_cast<const QLineEdit*>(widget) != nullptr ||
           qobject_cast<const QComboBox*>(widget) != nullptr || qobject_cast<const QPlainTextEdit*>(widget) != nullptr ||
           qobject_cast<const QAbstractSpinBox*>(widget) != nullptr || qobject_cast<const SheetView*>(widget) != nullptr ||
           qobject_cast<const CaseTiles*>(widget) != nullptr || qobject_cast<const SegmentedSwitch*>(widget) != nullptr;
}

QString describe(const QWidget* widget)
{
    return QStringLiteral("%1 \"%2\" in %3")
        .arg(QString::fromLatin1(widget->metaObject()->className()), widget->objectName(),
             widget->parentWidget() ? widget->parentWidget()->objectName() : QString());
}

/// What Tab does: the next widget of the focus chain that takes Tab.
std::set<const QWidget*> reachedByTab(QWidget& window)
{
    std::set<const QWidget*> reached;
    QWidget* start = window.nextInFocusChain();
    for (QWidget* at = start; at != nullptr;) {
        QWidget* target = at->focusProxy() != nullptr ? at->focusProxy() : at;
        if (at->isVisibleTo(&window) && at->isEnabled() && (target->focusPolicy() & Qt::TabFocus))
            reached.insert(target);
        at = at->nextInFocusChain();
        if (at == start)
            break;
    }
    return reached;
}

void controlsHold(MainWindow& window, const char* where)
{
    INFO(where);
    settle();
    const std::set<const QWidget*> reached = reachedByTab(window);
    int controls = 0;
    for (const QWidget* widget : window.findChildren<QWidget*>()) {
        if (!isControl(widget) || !widget->isVisibleTo(&window) || !widget->isEnabled())
            continue;
        const auto* box = qobject_cast<const FindingBox*>(widget);
        ++controls;
        INFO(describe(widget).toStdString());
        CHECK_FALSE(widget->accessibleName().trimmed().isEmpty());
        if (box != nullptr && box->group().path.isEmpty())
            continue; // leads nowhere: nothing to press
        CHECK(reached.count(widget) == 1);
    }
    CHECK(controls > 20);
}

} // namespace

TEST_CASE("every control has a name and Tab reaches it, whatever is selected", "[ui][keyboard]")
{
    MainWindow window;
    window.resize(1440, 900);
    REQUIRE(window.openFile(QStringLiteral(SHAFTWRIGHT_SOURCE_DIR "/samples/gearbox-intermediate.shaftwright")));
    window.show();
    settle();
    const Arrangement value = window.document().committed();
    window.document().select({});
    settle();
    for (PanelFold* fold : window.panel().findChildren<PanelFold*>())
        fold->setOpen(true);
    controlsHold(window, "nothing selected");
    window.document().select(pathOf(value.supports.front().id));
    settle();
    for (PanelFold* fold : window.panel().findChildren<PanelFold*>())
        fold->setOpen(true);
    controlsHold(window, "support");
    for (const Part& part : value.parts) {
        window.document().select(pathOf(part.id));
        settle();
        for (PanelFold* fold : window.panel().findChildren<PanelFold*>())
            fold->setOpen(true);
        controlsHold(window, part.id.value.c_str());
    }
    window.document().select(pathOf(value.shaft.segments.front().id));
    controlsHold(window, "segment");
    for (QAction* action : window.actions()) {
        INFO(action->objectName().toStdString());
        CHECK_FALSE(action->objectName().isEmpty());
    }
}

TEST_CASE("real Tab presses come round to the sheet again", "[ui][keyboard]")
{
    Bench bench;
    bench.window.activateWindow();
    bench.sheet().setFocus();
    settle();
    std::set<const QWidget*> seen;
    bool round = false;
    for (int i = 0; i < 200 && !round; ++i) {
        QWidget* at = QApplication::focusWidget();
        REQUIRE(at != nullptr);
        QTest::keyClick(at, Qt::Key_Tab);
        at = QApplication::focusWidget();
        REQUIRE(at != nullptr);
        round = at == &bench.sheet();
        seen.insert(at);
    }
    CHECK(round);
    CHECK(seen.size() > 30);
}

TEST_CASE("Esc during a drag from the shelf leaves nothing behind", "[ui][shelf]")
{
    Bench bench;
    const Arrangement before = bench.document().committed();
    ShelfButton* button = bench.window.shelf().button(actions::ShelfItem::belt_pulley);
    REQUIRE(button != nullptr);
    const QPoint start = button->rect().center();
    const QPoint end = button->mapFromGlobal(bench.sheet().mapToGlobal(bench.sheet().pixelOf(70.0, 10.0).toPoint()));
    QTest::mousePress(button, Qt::LeftButton, Qt::NoModifier, start);
    QTest::mouseMove(button, start + QPoint(20, 0));
    QTest::mouseMove(button, end);
    settle();
    CHECK(bench.document().previewing());
    QTest::keyClick(button, Qt::Key_Escape);
    settle();
    CHECK_FALSE(bench.document().previewing());
    QTest::mouseRelease(button, Qt::LeftButton, Qt::NoModifier, end);
    settle();
    CHECK(bench.document().committed() == before);
    CHECK(bench.document().undoStack().count() == 0);
}

TEST_CASE("every thing of the shelf can be put at the hairline and taken back", "[ui][shelf]")
{
    for (const actions::ShelfEntry& entry : actions::shelf()) {
        INFO(entry.name.toStdString());
        Bench bench;
        const Arrangement before = bench.document().committed();
        bench.window.view().hairline_mm = 55.0;
        QTest::keyClick(bench.window.shelf().button(entry.item), Qt::Key_Return);
        settle();
        bench.window.repaint();
        CHECK(bench.document().undoStack().count() == 1);
        CHECK_FALSE(bench.document().committed() == before);
        CHECK_FALSE(bench.document().selection().isEmpty());
        QTest::keyClick(&bench.window, Qt::Key_Z, Qt::ControlModifier);
        settle();
        CHECK(bench.document().committed() == before);
    }
}

TEST_CASE("a handle of the end view turns the mesh", "[ui][sheet]")
{
    Bench bench;
    const PartId gear = bench.document().committed().parts.front().id;
    const QString subject = pathOf(gear);
    const auto at = bench.sheet().handlePixel(subject, QStringLiteral("mesh_angle_deg"));
    REQUIRE(at.has_value());
    const Arrangement before = bench.document().committed();
    const int analyses = bench.document().analysisCount();
    bench.drag(at->toPoint(), at->toPoint() + QPoint(30, -60));
    const auto turned = actions::direction(*findPart(bench.document().committed(), gear));
    REQUIRE(turned.has_value());
    CHECK_FALSE(*turned == *actions::direction(before.parts.front()));
    CHECK(bench.document().undoStack().count() == 1);
    // Five moves, at most one analysis each, none for press and release.
    CHECK(bench.document().analysisCount() - analyses <= 5);
    QTest::keyClick(&bench.window, Qt::Key_Z, Qt::ControlModifier);
    settle();
    CHECK(bench.document().committed() == before);
}

TEST_CASE("a dragged shoulder takes from its neighbour, with Shift it pushes the rest", "[ui][sheet]")
{
    for (const bool push : {false, true}) {
        Bench bench;
        const Arrangement before = bench.document().committed();
        REQUIRE(before.shaft.segments.size() >= 3);
        // A shoulder that nothing covers: its place just outside the thinner segment.
        std::size_t shoulder = 0;
        QPoint from;
        bool found = false;
        for (std::size_t i = 0; i + 1 < before.shaft.segments.size() && !found; ++i) {
            const double x_mm = segmentStart_mm(before.shaft, i + 1);
            for (const Part& part : before.parts)
                found = found || std::abs(part.x_mm - x_mm) < 30.0;
            for (const Support& support : before.supports)
                found = found || std::abs(support.x_mm - x_mm) < 12.0;
            if (found) {
                found = false;
                continue;
            }
            shoulder = i;
            from = bench.sheet().pixelOf(x_mm, 3.0).toPoint();
            found = true;
        }
        if (!found) {
            // Lengthen the shaft's end: a segment without anything on it.
            continue;
        }
        const double px_per_mm = bench.sheet().pixelOf(1.0).x() - bench.sheet().pixelOf(0.0).x();
        bench.drag(from, from + QPoint(qRound(4.0 * px_per_mm), 0), true, push ? Qt::ShiftModifier : Qt::NoModifier);
        const Arrangement after = bench.document().committed();
        CHECK(bench.document().undoStack().count() == 1);
        CHECK(after.shaft.segments[shoulder].length_mm > before.shaft.segments[shoulder].length_mm);
    }
}

TEST_CASE("copy, paste, cut and duplicate of a part", "[ui][edit]")
{
    Bench bench;
    const Arrangement before = bench.document().committed();
    const Part gear = before.parts.front();
    bench.document().select(pathOf(gear.id));
    bench.sheet().setFocus();
    settle();
    QTest::keyClick(&bench.window, Qt::Key_C, Qt::ControlModifier);
    bench.window.view().hairline_mm = 33.0;
    QTest::keyClick(&bench.window, Qt::Key_V, Qt::ControlModifier);
    settle();
    REQUIRE(bench.document().committed().parts.size() == before.parts.size() + 1);
    const Part pasted = bench.document().committed().parts.back();
    CHECK(pasted.x_mm == 33.0);
    CHECK(pasted.body == gear.body);
    CHECK_FALSE(pasted.id == gear.id);
    QTest::keyClick(&bench.window, Qt::Key_D, Qt::ControlModifier);
    settle();
    CHECK(bench.document().committed().parts.size() == before.parts.size() + 2);
    QTest::keyClick(&bench.window, Qt::Key_X, Qt::ControlModifier);
    settle();
    CHECK(bench.document().committed().parts.size() == before.parts.size() + 1);
    QTest::keyClick(&bench.window, Qt::Key_V, Qt::ControlModifier);
    settle();
    CHECK(bench.document().committed().parts.size() == before.parts.size() + 2);
    while (bench.document().undoStack().canUndo())
        bench.document().undoStack().undo();
    settle();
    CHECK(bench.document().committed() == before);
}

TEST_CASE("a change of theme repaints everything and changes nothing", "[ui][theme]")
{
    Bench bench;
    const Arrangement before = bench.document().committed();
    const int analyses = bench.document().analysisCount();
    Theme::instance().setChoice(ThemeChoice::light);
    settle();
    const QImage light = bench.window.grab().toImage();
    Theme::instance().setChoice(ThemeChoice::dark);
    settle();
    const QImage dark = bench.window.grab().toImage();
    Theme::instance().setChoice(ThemeChoice::light);
    settle();
    CHECK(light.pixelColor(700, 300).lightness() > 200);
    const QPoint corners[] = {{4, 890}, {700, 300}, {1300, 500}, {300, 20}};
    for (const QPoint& at : corners)
        CHECK(dark.pixelColor(at).lightness() < 90);
    CHECK(bench.window.grab().toImage() == light);
    CHECK(bench.document().committed() == before);
    CHECK(bench.document().analysisCount() == analyses);
}

TEST_CASE("the loads of one bearing become a shaft whose support carries them", "[ui][start]")
{
    OneBearingDialog dialog;
    for (QuantityField* field : dialog.findChildren<QuantityField*>())
        CHECK_FALSE(field->edit()->accessibleName().isEmpty());
    dialog.show();
    auto fields = dialog.findChildren<QuantityField*>();
    REQUIRE(fields.size() == 5);
    fields[0]->edit()->setFocus();
    fields[0]->edit()->selectAll();
    QTest::keyClicks(fields[0]->edit(), QStringLiteral("3.67 kN"));
    QTest::keyClick(fields[0]->edit(), Qt::Key_Return);
    MainWindow window;
    window.document().reset(dialog.arrangement());
    const SupportAssessment* asked = window.document().assessment().find(SupportId("B"));
    REQUIRE(asked != nullptr);
    REQUIRE_FALSE(asked->cases.empty());
    CHECK(asked->cases.front().radial_N == Approx(3670.0).epsilon(1e-9));
}

TEST_CASE("leaving unsaved changes asks first", "[ui][file]")
{
    Bench bench;
    CHECK(bench.window.mayLeave()); // nothing changed yet
    bench.document().select(QStringLiteral("supports.A"));
    bench.sheet().setFocus();
    QTest::keyClick(&bench.sheet(), Qt::Key_Right);
    settle();
    REQUIRE(bench.document().modified());
    const auto answer = [&](QMessageBox::ButtonRole role) {
        bool asked = false;
        QTimer::singleShot(50, &bench.window, [&] {
            auto* question = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (question == nullptr)
                return;
            asked = question->objectName() == QLatin1String("leaveQuestion");
            for (QAbstractButton* button : question->buttons()) {
                if (question->buttonRole(button) == role) {
                    button->click();
                    return;
                }
            }
        });
        const bool leave = bench.window.mayLeave();
        CHECK(asked);
        return leave;
    };
    CHECK_FALSE(answer(QMessageBox::RejectRole));
    CHECK(answer(QMessageBox::DestructiveRole));
    CHECK(bench.document().modified());
}

TEST_CASE("one action costs at most one analysis", "[ui][document]")
{
    Bench bench;
    const auto runs = [&](const char* what, int most, auto act) {
        INFO(what);
        settle();
        bench.window.repaint();
        const int before = bench.document().analysisCount();
        act();
        settle();
        bench.window.repaint();
        settle();
        CHECK(bench.document().analysisCount() - before <= most);
    };
    const PartId gear = bench.document().committed().parts.front().id;
    runs("selecting", 0, [&] { bench.document().select(pathOf(gear)); });
    runs("another plane", 0, [&] { QTest::keyClick(&bench.window, Qt::Key_Y, Qt::AltModifier); });
    runs("zoom", 0, [&] { bench.sheet().zoomIn(); });
    runs("fit", 0, [&] { bench.sheet().fit(); });
    runs("hairline", 0, [&] { bench.window.view().hairline_mm = 40.0; });
    runs("nudge", 1, [&] { QTest::keyClick(&bench.sheet(), Qt::Key_Left); });
    runs("undo", 1, [&] { bench.document().undoStack().undo(); });
    runs("insert", 1, [&] { bench.sheet().insertAtHairline(actions::ShelfItem::coupling); });
    runs("delete", 1, [&] { bench.sheet().deleteSelection(); });
}
