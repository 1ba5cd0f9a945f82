// Journeys through the window: real mouse and key events, sent to the window only.
#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include "bench.h"
#include "core/document/document.h"
#include "core/edit/edit.h"
#include "ui/document/actions.h"
#include "ui/document/subject.h"
#include "ui/panels/panel_parts.h"
#include "ui/panels/selection_panel.h"
#include "ui/sheet/sheet_view.h"
#include "ui/widgets/theme.h"
#include "ui/window/exports.h"
#include "ui/window/main_window.h"
#include "ui/window/shelf.h"
#include "ui/window/status_bar.h"

#include <QAbstractButton>
#include <QApplication>
#include <QLineEdit>
#include <QMessageBox>
#include <QStandardPaths>
#include <QStyleFactory>
#include <QTemporaryDir>
#include <QTest>

using namespace shaftwright;
using namespace shaftwright::ui;
using namespace bench;

TEST_CASE("a drag is one step that undo takes back wholly", "[ui][sheet]")
{
    Bench bench;
    const Arrangement before = bench.document().committed();
    const PartId gear = before.parts.front().id;
    const QPoint from = bench.onPart(gear, 40.0);
    const QPoint to = from + QPoint(qRound(20.0 * (bench.sheet().pixelOf(1.0).x() - bench.sheet().pixelOf(0.0).x())), 0);
    bench.drag(from, to);
    const double moved_mm = findPart(bench.document().committed(), gear)->x_mm - findPart(before, gear)->x_mm;
    CHECK(moved_mm > 13.0);
    CHECK(moved_mm < 27.0);
    CHECK(bench.document().undoStack().count() == 1);
    CHECK(bench.document().selection() == pathOf(gear));
    QTest::keyClick(&bench.window, Qt::Key_Z, Qt::ControlModifier);
    settle();
    CHECK(bench.document().committed() == before);
    CHECK(bench.document().selection() == pathOf(gear));
}

TEST_CASE("Esc ends a drag without a trace", "[ui][sheet]")
{
    Bench bench;
    const Arrangement before = bench.document().committed();
    const QPoint from = bench.onPart(before.parts.front().id, 40.0);
    bench.drag(from, from + QPoint(60, 0), false);
    CHECK(bench.document().previewing());
    CHECK_FALSE(bench.document().shown() == before);
    QTest::keyClick(&bench.sheet(), Qt::Key_Escape);
    settle();
    CHECK_FALSE(bench.document().previewing());
    CHECK(bench.document().shown() == before);
    CHECK(bench.document().undoStack().count() == 0);
    QTest::mouseRelease(&bench.sheet(), Qt::LeftButton, Qt::NoModifier, from + QPoint(60, 0));
    settle();
    CHECK(bench.document().committed() == before);
    CHECK_FALSE(bench.document().modified());
}

TEST_CASE("each value is analysed once, however many views show it", "[ui][document]")
{
    Bench bench;
    const int start = bench.document().analysisCount();
    bench.document().select(QStringLiteral("supports.A"));
    bench.window.repaint();
    settle();
    CHECK(bench.document().analysisCount() == start); // looking costs nothing
    QTest::keyClick(&bench.sheet(), Qt::Key_Right);
    settle();
    bench.window.repaint();
    CHECK(bench.document().analysisCount() == start + 1);
    QTest::keyClick(&bench.window, Qt::Key_Z, Qt::ControlModifier);
    settle();
    CHECK(bench.document().analysisCount() == start + 2);
}

TEST_CASE("a gear comes from the shelf by the mouse", "[ui][shelf]")
{
    Bench bench;
    const std::size_t parts = bench.document().committed().parts.size();
    ShelfButton* button = bench.window.shelf().button(actions::ShelfItem::gear);
    REQUIRE(button != nullptr);
    const QPoint start = button->rect().center();
    const QPoint end = button->mapFromGlobal(bench.sheet().mapToGlobal(bench.sheet().pixelOf(60.0, 10.0).toPoint()));
    QTest::mousePress(button, Qt::LeftButton, Qt::NoModifier, start);
    QTest::mouseMove(button, start + QPoint(20, 0));
    QTest::mouseMove(button, end);
    settle();
    CHECK(bench.document().previewing());
    CHECK(bench.document().undoStack().count() == 0);
    QTest::mouseRelease(button, Qt::LeftButton, Qt::NoModifier, end);
    settle();
    REQUIRE(bench.document().committed().parts.size() == parts + 1);
    CHECK(bench.document().committed().parts.back().x_mm == Approx(60.0).margin(1.0)); // one pixel
    CHECK(bench.document().undoStack().count() == 1);
    CHECK(bench.document().selection() == pathOf(bench.document().committed().parts.back().id));
}

TEST_CASE("nudges of one thing merge into one step", "[ui][sheet]")
{
    Bench bench;
    const Arrangement before = bench.document().committed();
    bench.document().select(QStringLiteral("supports.B"));
    bench.sheet().setFocus();
    const double x_mm = findSupport(before, SupportId("B"))->x_mm;
    QTest::keyClick(&bench.sheet(), Qt::Key_Left);
    QTest::keyClick(&bench.sheet(), Qt::Key_Left, Qt::ShiftModifier);
    QTest::keyClick(&bench.sheet(), Qt::Key_Left, Qt::AltModifier);
    settle();
    CHECK(findSupport(bench.document().committed(), SupportId("B"))->x_mm == Approx(x_mm - 11.1).margin(1e-9));
    CHECK(bench.document().undoStack().count() == 1);
}

TEST_CASE("a number is typed where the dimension stands", "[ui][sheet]")
{
    Bench bench;
    const SegmentId segment = bench.document().committed().shaft.segments[1].id;
    const QString subject = pathOf(segment);
    const auto at = bench.sheet().handlePixel(subject, subject + QStringLiteral(".outer_mm"));
    REQUIRE(at.has_value());
    QTest::mouseDClick(&bench.sheet(), Qt::LeftButton, Qt::NoModifier, at->toPoint());
    settle();
    QLineEdit* field = bench.sheet().placeField();
    REQUIRE(field != nullptr);
    field->selectAll();
    QTest::keyClicks(field, QStringLiteral("50+2.5"));
    QTest::keyClick(field, Qt::Key_Return);
    settle();
    CHECK(findSegment(bench.document().committed(), segment)->outer_mm == 52.5);
    CHECK(bench.sheet().placeField() == nullptr);

    QTest::mouseDClick(&bench.sheet(), Qt::LeftButton, Qt::NoModifier, at->toPoint());
    field = bench.sheet().placeField();
    REQUIRE(field != nullptr);
    QTest::keyClicks(field, QStringLiteral("7"));
    QTest::keyClick(field, Qt::Key_Escape);
    settle();
    CHECK(findSegment(bench.document().committed(), segment)->outer_mm == 52.5);

    QTest::mouseDClick(&bench.sheet(), Qt::LeftButton, Qt::NoModifier, at->toPoint());
    field = bench.sheet().placeField();
    REQUIRE(field != nullptr);
    field->selectAll();
    QTest::keyClicks(field, QStringLiteral("wide"));
    QTest::keyClick(field, Qt::Key_Return);
    settle();
    REQUIRE(bench.sheet().placeField() != nullptr); // stays open and says why
    CHECK(bench.sheet().findChild<QWidget*>(QStringLiteral("placeFieldMessage")) != nullptr);
    CHECK(findSegment(bench.document().committed(), segment)->outer_mm == 52.5);
}

TEST_CASE("taking a suggestion is one step, saving and reopening gives the same arrangement", "[ui][journey]")
{
    Bench bench;
    bench.document().select(QStringLiteral("supports.A"));
    settle();
    SuggestionRow* row = nullptr;
    for (SuggestionRow* candidate : bench.window.panel().findChildren<SuggestionRow*>()) {
        if (candidate->suggestion().choice && row == nullptr)
            row = candidate;
    }
    REQUIRE(row != nullptr);
    const std::string designation = row->suggestion().choice->designation();
    row->setFocus();
    QTest::keyClick(row, Qt::Key_Return); // opens it
    QTest::keyClick(row, Qt::Key_Return); // takes it
    settle();
    const Support* support = findSupport(bench.document().committed(), SupportId("A"));
    REQUIRE(support->bearing.has_value());
    CHECK(support->bearing->designation() == designation);
    CHECK(bench.document().undoStack().count() == 1);
    CHECK(bench.document().modified());

    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("journey.shaftwright"));
    REQUIRE(bench.window.saveTo(file));
    CHECK_FALSE(bench.document().modified());
    const Arrangement saved = bench.document().committed();
    MainWindow other;
    REQUIRE(other.openFile(file));
    CHECK(other.document().committed() == saved);
}

TEST_CASE("the quantity field keeps what it does not understand and says why", "[ui][widgets]")
{
    QuantityField field(QuantityKind::length_mm, QStringLiteral("Place"));
    field.show();
    field.setValue(10.0);
    std::vector<double> taken;
    QObject::connect(&field, &QuantityField::taken, [&](double value) { taken.push_back(value); });
    field.edit()->setFocus();
    field.edit()->selectAll();
    QTest::keyClicks(field.edit(), QStringLiteral("2 furlong"));
    QTest::keyClick(field.edit(), Qt::Key_Return);
    CHECK(taken.empty());
    CHECK_FALSE(field.message().isEmpty());
    field.edit()->selectAll();
    QTest::keyClicks(field.edit(), QStringLiteral("3*(4-1)"));
    QTest::keyClick(field.edit(), Qt::Key_Return);
    REQUIRE(taken.size() == 1);
    CHECK(taken.front() == 9.0);
    CHECK(field.message().isEmpty());
}

TEST_CASE("the system theme follows the desktop's wish", "[ui][theme]")
{
    Theme& theme = Theme::instance();
    theme.setChoice(ThemeChoice::system);
    theme.setDarkSource([] { return std::optional<bool>(true); });
    CHECK(theme.tokens().dark);
    theme.setDarkSource([] { return std::optional<bool>(false); });
    CHECK_FALSE(theme.tokens().dark);
    theme.setChoice(ThemeChoice::dark);
    CHECK(theme.tokens().dark);
    theme.setDarkSource({});
    theme.setChoice(ThemeChoice::light);
}

TEST_CASE("a support without a bearing is said and never shown as met", "[ui][status]")
{
    Bench bench;
    bench.document().reset(plainTwoBearingShaft()); // both supports still wait for a bearing, nothing is required
    settle();
    const auto* pill = bench.window.foot().findChild<QAbstractButton*>(QStringLiteral("requirements"));
    REQUIRE(pill != nullptr);
    CHECK(pill->text() == QStringLiteral("A, B have no bearing yet"));
    Arrangement value = plainTwoBearingShaft();
    value.duty.required_L_h = 20000.0; // asked of both: they wait, so none of it is missed or met
    bench.document().reset(value);
    settle();
    CHECK(pill->text() == QStringLiteral("A, B have no bearing yet"));
}

TEST_CASE("a save that fails says where and why", "[ui][file]")
{
    Bench bench;
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("gone/mine.shaftwright"));
    bench.document().select(QStringLiteral("supports.A"));
    bench.sheet().setFocus();
    QTest::keyClick(&bench.sheet(), Qt::Key_Right);
    settle();
    CHECK_FALSE(bench.window.saveTo(file));
    auto* box = bench.window.findChild<QMessageBox*>(QStringLiteral("notWritten"));
    REQUIRE(box != nullptr);
    CHECK(box->informativeText().contains(file));
    CHECK(box->informativeText().contains(folder.filePath(QStringLiteral("gone"))));
    CHECK(box->informativeText().contains(QStringLiteral("does not exist")));
    CHECK(bench.document().modified());
    box->close();
    settle();
}

TEST_CASE("report and drawing leave the window in the form of their suffix", "[ui][file]")
{
    Bench bench;
    QTemporaryDir folder;
    const auto begins = [&](const char* name, const QByteArray& with) {
        INFO(name);
        QFile file(folder.filePath(QLatin1String(name)));
        REQUIRE(file.open(QIODevice::ReadOnly));
        CHECK(file.readAll().trimmed().startsWith(with));
    };
    const auto at = [&](const char* name) { return folder.filePath(QLatin1String(name)); };
    CHECK(writeReport(bench.document(), at("r.html")).isEmpty());
    begins("r.html", "<!DOCTYPE html>");
    CHECK(writeReport(bench.document(), at("r.json")).isEmpty());
    begins("r.json", "{");
    CHECK(writeReport(bench.document(), at("r.txt")).isEmpty());
    CHECK(writeDrawing(bench.document(), at("d.pdf")).isEmpty());
    begins("d.pdf", "%PDF-");
    CHECK(writeDrawing(bench.document(), at("d.png")).isEmpty());
    begins("d.png", "\x89PNG");
    CHECK(writeDrawing(bench.document(), at("d.svg")).isEmpty());
    CHECK(writeDrawing(bench.document(), at("d.doc")).contains(QStringLiteral("d.doc")));
    CHECK_FALSE(QFile::exists(at("d.doc")));
    CHECK(writeReport(bench.document(), at("gone/r.html")).contains(QStringLiteral("gone")));
}

TEST_CASE("what the shelf fills in is proposed until it is typed or changed", "[ui][panel]")
{
    Bench bench;
    const auto made = actions::insert(bench.document().committed(), actions::ShelfItem::gear, 60.0);
    REQUIRE(made.ok());
    const std::string base = made.value().subject.toStdString() + ".";
    CHECK(made.value().value.proposed.count(base + "teeth") == 1);
    CHECK(made.value().value.proposed.count(base + "x_mm") == 0); // the place is where it was dropped
    bench.document().push(made.value().value, made.value().text);
    bench.document().select(made.value().subject);
    settle();
    QuantityField* teeth = nullptr;
    for (auto* field : bench.window.panel().findChildren<QuantityField*>(QStringLiteral("field.teeth")))
        teeth = field;
    REQUIRE(teeth != nullptr);
    const auto type = [&](const QString& text) {
        teeth->edit()->setFocus();
        teeth->edit()->selectAll();
        QTest::keyClicks(teeth->edit(), text);
        QTest::keyClick(teeth->edit(), Qt::Key_Return);
        settle();
    };
    type(QStringLiteral("30.5")); // no whole tooth
    CHECK_FALSE(teeth->message().isEmpty());
    CHECK(bench.document().committed().proposed.count(base + "teeth") == 1);
    type(QString::number(
        std::get<CylindricalGear>(bench.document().committed().parts.back().body).teeth)); // the proposed value, stated now
    CHECK(teeth->message().isEmpty());
    CHECK(bench.document().committed().proposed.count(base + "teeth") == 0);
    CHECK(bench.document().committed().proposed.count(base + "face_width_mm") == 1); // its neighbour still is
}

TEST_CASE("whatever comes from the shelf can be saved and read again with its origins", "[ui][document]")
{
    for (const actions::ShelfEntry& entry : actions::shelf()) {
        INFO(entry.name.toStdString());
        const auto made = actions::insert(plainTwoBearingShaft(), entry.item, 60.0);
        REQUIRE(made.ok());
        const ReadResult read = readArrangement(writeArrangement(made.value().value), "shelf");
        REQUIRE(read.ok());
        CHECK(*read.arrangement == made.value().value);
    }
}

TEST_CASE("a copy of the part that takes what remains leaves its power open", "[ui][document]")
{
    const Arrangement before = plainTwoBearingShaft();
    const Part* original = nullptr;
    for (const Part& part : before.parts) {
        if (part.drive && part.drive->takes_remaining)
            original = &part;
    }
    REQUIRE(original != nullptr);
    const auto made = actions::duplicate(before, pathOf(original->id));
    REQUIRE(made.ok());
    const Part* copy = findPart(made.value().value, PartId(subjectOf(made.value().subject).id));
    REQUIRE(copy != nullptr);
    REQUIRE(copy->drive.has_value());
    CHECK_FALSE(copy->drive->takes_remaining);
    CHECK_FALSE(copy->drive->power_kW.has_value());
}

TEST_CASE("an unusable file leaves the present arrangement and says why", "[ui][document]")
{
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("broken.shaftwright"));
    QFile broken(file);
    REQUIRE(broken.open(QIODevice::WriteOnly));
    broken.write("{\"format\": \"shaftwright-arr");
    broken.close();
    Bench bench;
    const Arrangement before = bench.document().committed();
    CHECK_FALSE(bench.window.openFile(file));
    CHECK(bench.document().committed() == before);
    CHECK_FALSE(bench.document().open(file).isEmpty());
}

int main(int argc, char** argv)
{
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    QApplication::setOrganizationName(QStringLiteral("ShaftwrightTest"));
    QApplication::setApplicationName(QStringLiteral("ShaftwrightTest"));
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    Theme::instance().setChoice(ThemeChoice::light);
    return Catch::Session().run(argc, argv);
}
