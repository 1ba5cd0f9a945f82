// What is typed and chosen in the panel reaches the document.
#include <catch2/catch.hpp>

#include "bench.h"
#include "core/catalogue/catalogue.h"
#include "core/report/texts.h"
#include "ui/document/bearing_text.h"
#include "ui/panels/fold.h"
#include "ui/panels/own_bearing_dialog.h"
#include "ui/panels/panel_parts.h"
#include "ui/panels/selection_panel.h"
#include "ui/widgets/quantity_field.h"
#include "ui/widgets/segmented.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

using namespace bench;

namespace
{

void openFolds(Bench& bench)
{
    settle();
    for (PanelFold* fold : bench.window.panel().findChildren<PanelFold*>())
        fold->setOpen(true);
    settle();
}

/// The visible row with this name; null when it is not there.
template <class Widget> Widget* row(Bench& bench, const char* name)
{
    for (Widget* widget : bench.window.panel().findChildren<Widget*>(QStringLiteral("field.") + QLatin1String(name))) {
        if (widget->isVisibleTo(&bench.window))
            return widget;
    }
    return nullptr;
}

void type(Bench& bench, const char* name, const QString& text)
{
    INFO(name);
    auto* field = row<QuantityField>(bench, name);
    REQUIRE(field != nullptr);
    field->edit()->setFocus();
    field->edit()->selectAll();
    QTest::keyClicks(field->edit(), text);
    QTest::keyClick(field->edit(), Qt::Key_Return);
    settle();
}

void choose(Bench& bench, const char* name, int index)
{
    INFO(name);
    auto* button = row<ChoiceButton>(bench, name);
    REQUIRE(button != nullptr);
    emit button->chosen(index);
    settle();
}

const Part& insertPart(Bench& bench, actions::ShelfItem item)
{
    bench.window.view().hairline_mm = 60.0;
    bench.sheet().insertAtHairline(item);
    openFolds(bench);
    return bench.document().committed().parts.back();
}

template <class Body> const Body& body(Bench& bench)
{
    return std::get<Body>(bench.document().committed().parts.back().body);
}

} // namespace

TEST_CASE("the pull of a belt is stated in each of its four ways", "[ui][panel]")
{
    Bench bench;
    insertPart(bench, actions::ShelfItem::belt_pulley);
    choose(bench, "tension", 1);
    type(bench, "force_over_useful", QStringLiteral("2.1"));
    REQUIRE(body<BeltPulley>(bench).tension.has_value());
    CHECK(std::get<TensionFactor>(*body<BeltPulley>(bench).tension).force_over_useful == 2.1);
    choose(bench, "tension", 2);
    CHECK(row<QuantityField>(bench, "force_over_useful") == nullptr);
    type(bench, "tight_over_slack", QStringLiteral("4"));
    CHECK(std::get<TensionRatio>(*body<BeltPulley>(bench).tension).tight_over_slack == 4.0);
    choose(bench, "tension", 3);
    type(bench, "strand_N", QStringLiteral("0.9 kN"));
    type(bench, "belt_mass_kg_m", QStringLiteral("0.3"));
    CHECK(std::get<Pretension>(*body<BeltPulley>(bench).tension).strand_N == 900.0);
    CHECK(std::get<Pretension>(*body<BeltPulley>(bench).tension).belt_mass_kg_m == 0.3);
    choose(bench, "tension", 4);
    type(bench, "tight_N", QStringLiteral("1500"));
    type(bench, "slack_N", QStringLiteral("300"));
    CHECK(std::get<StrandForces>(*body<BeltPulley>(bench).tension) == StrandForces{1500.0, 300.0});
    choose(bench, "tension", 0);
    CHECK_FALSE(body<BeltPulley>(bench).tension.has_value());
}

TEST_CASE("unbalance is stated in each of its three ways", "[ui][panel]")
{
    Bench bench;
    insertPart(bench, actions::ShelfItem::weight);
    choose(bench, "unbalance", 1);
    type(bench, "mm_s", QStringLiteral("2.5"));
    CHECK(std::get<BalanceGrade>(body<WeightBody>(bench).unbalance).mm_s == 2.5);
    choose(bench, "unbalance", 2);
    type(bench, "kg_mm", QStringLiteral("0.02"));
    CHECK(std::get<UnbalanceGmm>(body<WeightBody>(bench).unbalance).kg_mm == 0.02);
    choose(bench, "unbalance", 3);
    type(bench, "mm", QStringLiteral("0.1"));
    CHECK(std::get<MassEccentricity>(body<WeightBody>(bench).unbalance).mm == 0.1);
    choose(bench, "unbalance", 0);
    CHECK(std::holds_alternative<std::monostate>(body<WeightBody>(bench).unbalance));
}

TEST_CASE("a gear takes its mate, further meshes and another way of stating its torque", "[ui][panel]")
{
    Bench bench;
    const PartId id = insertPart(bench, actions::ShelfItem::gear).id;
    type(bench, "mate_teeth", QStringLiteral("61"));
    type(bench, "centre_distance_mm", QStringLiteral("125"));
    CHECK(body<CylindricalGear>(bench).mate_teeth == 61);
    CHECK(body<CylindricalGear>(bench).centre_distance_mm == 125.0);
    auto* add = bench.window.panel().findChild<QuietButton*>(QStringLiteral("addMesh"));
    REQUIRE(add != nullptr);
    add->click();
    settle();
    openFolds(bench);
    REQUIRE(body<CylindricalGear>(bench).further_meshes.size() == 1);
    auto* drop = bench.window.panel().findChild<QuietButton*>(QStringLiteral("removeMesh"));
    REQUIRE(drop != nullptr);
    drop->click();
    settle();
    CHECK(body<CylindricalGear>(bench).further_meshes.empty());
    choose(bench, "stated", 1);
    const Part* gear = findPart(bench.document().committed(), id);
    REQUIRE(gear->drive.has_value());
    CHECK(gear->drive->torque_Nmm.has_value());
    CHECK_FALSE(gear->drive->power_kW.has_value());
    type(bench, "torque_Nmm", QStringLiteral("12 Nm"));
    CHECK(findPart(bench.document().committed(), id)->drive->torque_Nmm == 12000.0);
    choose(bench, "active", 1);
    const auto& entry = bench.document().committed().duty.load_cases.front().parts;
    REQUIRE(entry.count(id) == 1);
    CHECK_FALSE(entry.at(id).active);
}

TEST_CASE("the residual force of a coupling has a worst or a given direction", "[ui][panel]")
{
    Bench bench;
    insertPart(bench, actions::ShelfItem::coupling);
    CHECK(row<ChoiceButton>(bench, "radial_direction") == nullptr);
    type(bench, "radial_force_N", QStringLiteral("200"));
    CHECK(std::holds_alternative<WorstDirection>(body<Coupling>(bench).radial_direction));
    choose(bench, "radial_direction", 1);
    type(bench, "angle_deg", QStringLiteral("270"));
    CHECK(std::get<GivenDirection>(body<Coupling>(bench).radial_direction).angle_deg == 270.0);
    type(bench, "joint_angle_deg", QStringLiteral("12"));
    CHECK(body<Coupling>(bench).joint_angle_deg == 12.0);
}

TEST_CASE("load cases are added, duplicated, changed and deleted", "[ui][panel]")
{
    Bench bench;
    bench.document().select({});
    openFolds(bench);
    const std::size_t count = bench.document().committed().duty.load_cases.size();
    const auto press = [&](const char* name) {
        auto* button = bench.window.panel().findChild<QuietButton*>(QLatin1String(name));
        REQUIRE(button != nullptr);
        button->click();
        settle();
        settle();
    };
    press("duplicateCase");
    REQUIRE(bench.document().committed().duty.load_cases.size() == count + 1);
    CHECK(bench.window.view().case_index == static_cast<int>(count));
    type(bench, "speed_rpm", QStringLiteral("300"));
    choose(bench, "sense", 1);
    type(bench, "time_share", QStringLiteral("25"));
    type(bench, "peak_factor", QStringLiteral("1.8"));
    const LoadCase& made = bench.document().committed().duty.load_cases.back();
    CHECK(made.speed_rpm == -300.0);
    CHECK(made.time_share == 0.25);
    CHECK(made.peak_factor == 1.8);
    press("deleteCase");
    CHECK(bench.document().committed().duty.load_cases.size() == count);
    press("addCase");
    CHECK(bench.document().committed().duty.load_cases.size() == count + 1);
}

TEST_CASE("requirements of one's own are judged", "[ui][panel]")
{
    Bench bench;
    bench.document().select({});
    openFolds(bench);
    auto* add = bench.window.panel().findChild<QuietButton*>(QStringLiteral("addRequirement"));
    REQUIRE(add != nullptr);
    add->click();
    settle();
    REQUIRE(bench.document().committed().requirements.size() == 1);
    type(bench, "limit", QStringLiteral("1e-6"));
    const RequirementId id = bench.document().committed().requirements.front().id;
    bool judged = false;
    for (const RequirementResult& result : bench.document().assessment().requirements) {
        if (result.id == id.value) {
            judged = true;
            CHECK(result.met == false);
        }
    }
    CHECK(judged);
}

TEST_CASE("a bearing is chosen by typing its designation", "[ui][panel]")
{
    Bench bench;
    bench.document().select(QStringLiteral("supports.A"));
    settle();
    auto* field = row<QLineEdit>(bench, "bearing");
    REQUIRE(field != nullptr);
    const auto enter = [&](const QString& text) {
        field->setFocus();
        field->selectAll();
        QTest::keyClicks(field, text);
        QTest::keyClick(field, Qt::Key_Return);
        settle();
    };
    enter(QStringLiteral("nu 208"));
    const auto designation = [&] {
        const Support* support = findSupport(bench.document().committed(), SupportId("A"));
        return support->bearing ? support->bearing->designation() : std::string();
    };
    CHECK(designation() == "NU208");
    enter(QStringLiteral("no such thing"));
    CHECK(designation() == "NU208"); // refused, in words
    CHECK_FALSE(bench.document().refusal().isEmpty());
    enter(QStringLiteral("2x7208-40 O"));
    CHECK(designation() == "2x7208-40 O");
    choose(bench, "arrangement", 2);
    CHECK(designation() == "2x7208-40 X");
    choose(bench, "arrangement", 0);
    CHECK(designation() == "7208-40");
}

TEST_CASE("typed text names single bearings, sets and composites", "[ui][document]")
{
    CHECK(bearingFromText(QStringLiteral("6208")).value().family == Family::deep_groove_ball);
    CHECK(bearingFromText(QStringLiteral("2 x 7208-40 T")).value().family == Family::angular_contact_set_tandem);
    CHECK(bearingFromText(QStringLiteral("NU209 + QJ209")).value().family == Family::composite_NU_four_point);
    CHECK_FALSE(bearingFromText(QStringLiteral("2x6208 O")).ok());
    CHECK_FALSE(bearingFromText(QStringLiteral("")).ok());
    CHECK(bearingFromText(QStringLiteral("6208x")).finding().code == "bearing-unknown");
}

TEST_CASE("a maker's bearing needs its ratings and their source", "[ui][panel]")
{
    OwnBearingDialog dialog(std::nullopt, 40.0);
    dialog.show();
    auto* message = dialog.findChild<QLabel*>(QStringLiteral("message"));
    REQUIRE(message != nullptr);
    dialog.accept();
    CHECK(dialog.isVisible());
    CHECK(message->text().contains(QStringLiteral("source")));
    const auto put = [&](const char* name, const QString& text) {
        auto* field = dialog.findChild<QuantityField*>(QLatin1String(name));
        REQUIRE(field != nullptr);
        field->edit()->setFocus();
        field->edit()->selectAll();
        QTest::keyClicks(field->edit(), text);
        QTest::keyClick(field->edit(), Qt::Key_Return);
    };
    put("D", QStringLiteral("80"));
    put("B", QStringLiteral("18"));
    put("C", QStringLiteral("31.2 kN"));
    put("C0", QStringLiteral("19 kN"));
    QTest::keyClicks(dialog.findChild<QLineEdit*>(QStringLiteral("designation")), QStringLiteral("K 40-18"));
    dialog.accept();
    CHECK(dialog.isVisible()); // the source is still missing
    QTest::keyClicks(dialog.findChild<QLineEdit*>(QStringLiteral("source")), QStringLiteral("sheet of the maker, page 4"));
    dialog.accept();
    CHECK_FALSE(dialog.isVisible());
    const BearingChoice choice = dialog.choice();
    REQUIRE(choice.rows.size() == 1);
    CHECK(choice.rows.front().row.catalogue == "typed");
    CHECK(choice.rows.front().row.C_N == 31200.0);
    CHECK(choice.rows.front().row.bore_mm == 40.0);
    CHECK(choice.rows.front().row.source == "sheet of the maker, page 4");

    Bench bench;
    const Result<Arrangement> next = setBearing(bench.document().committed(), SupportId("A"), choice);
    REQUIRE(next.ok());
    bench.document().push(next, QStringLiteral("Type"));
    const SupportAssessment* found = bench.document().assessment().find(SupportId("A"));
    REQUIRE(found != nullptr);
    REQUIRE(found->bearing.has_value());
    CHECK(found->bearing->L10_h.has_value());
}

TEST_CASE("rows of suggestions follow a drag without being made anew", "[ui][panel]")
{
    Bench bench;
    bench.document().select(QStringLiteral("supports.B"));
    settle();
    const auto rows = bench.window.panel().findChildren<SuggestionRow*>();
    REQUIRE_FALSE(rows.isEmpty());
    const PartId gear = bench.document().committed().parts.front().id;
    const double x_mm = findPart(bench.document().committed(), gear)->x_mm;
    const Result<Arrangement> moved = movePart(bench.document().committed(), gear, x_mm - 15.0);
    REQUIRE(moved.ok());
    bench.document().preview(moved.value());
    settle();
    CHECK(bench.window.panel().findChildren<SuggestionRow*>() == rows);
    const SupportAssessment* found = bench.document().assessment().find(SupportId("B"));
    REQUIRE(found != nullptr);
    for (const SuggestionRow* shown : rows) {
        for (const Suggestion& suggestion : found->suggestions) {
            if (suggestion.family == shown->suggestion().family)
                CHECK(shown->suggestion() == suggestion);
        }
    }
    bench.document().dropPreview();
}

TEST_CASE("no finding of a sample shows a placeholder, notes of one kind are read as one", "[ui][panel]")
{
    for (const char* sample : {"gearbox-intermediate", "saw-shaft-fails", "line-shaft-forty-parts", "bevel-pinion"}) {
        MainWindow window;
        REQUIRE(window.openFile(QStringLiteral(SHAFTWRIGHT_SOURCE_DIR "/samples/%1.shaftwright").arg(QLatin1String(sample))));
        const auto groups = findingGroups(window.document().assessment().findings, window.document().committed(), true,
                                          [](const Finding&) { return true; });
        int not_assessed = 0;
        for (const FindingGroup& group : groups) {
            INFO(group.sentence.toStdString());
            CHECK_FALSE(group.sentence.isEmpty());
            CHECK_FALSE(group.sentence.contains(QLatin1Char('<')));
            CHECK_FALSE(group.sentence.contains(QLatin1Char('{')));
            CHECK_FALSE(group.advice.contains(QLatin1Char('{')));
            not_assessed += group.sentence.contains(QStringLiteral("not assessed:")) ? 1 : 0;
        }
        CHECK(not_assessed == 1);
    }
}
