#include "ui/panels/arrangement_panel.h"

#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/panels/duty_folds.h"
#include "ui/widgets/marks.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/theme.h"

#include <QPainter>
#include <QVBoxLayout>

namespace shaftwright::ui
{

namespace
{

QString inUnit(double value, const std::string& unit)
{
    if (unit == "h")
        return lifeText(value);
    return number(value) + (unit.empty() ? QString() : QLatin1Char(' ') + QString::fromStdString(unit));
}

/// Change of one member of the value itself.
template <class Change> Form::Set change(Change apply)
{
    return [apply](const Arrangement& arrangement, std::optional<double> value) -> Result<Arrangement> {
        Arrangement next = arrangement;
        apply(next, value);
        return next;
    };
}

template <class Enum>
void openChoice(Form& form, const QString& label, const QStringList& words, const char* key,
                std::optional<Enum> Surroundings::*member, std::function<int(const Settled&)> settled)
{
    form.choice(
        {label,
         words,
         std::string("surroundings.") + key,
         [member](const Arrangement& a) { return a.surroundings.*member ? static_cast<int>(*(a.surroundings.*member)) : -1; },
         [member](const Arrangement& a, int index) -> Result<Arrangement> {
             Arrangement next = a;
             if (index < 0)
                 (next.surroundings.*member).reset();
             else
                 next.surroundings.*member = static_cast<Enum>(index);
             return next;
         },
         [words, settled](const Assessment& assessment) { return words.value(settled(assessment.settled)); },
         {},
         true});
}

} // namespace

RequirementRow::RequirementRow(QWidget* parent) : QAbstractButton(parent)
{
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
    setFixedHeight(40);
}

void RequirementRow::set(const RequirementResult& result, const QString& where, const QString& case_name, const QString& path)
{
    m_path = path;
    m_met = result.met;
    m_words = requirementText(result, where);
    m_found = result.found ? inUnit(*result.found, result.unit) : tr("not found");
    if (result.found && result.unit == "h")
        m_found = lifeAgainst(*result.found, result.required);
    m_required = tr("of %1").arg(inUnit(result.required, result.unit));
    m_case = case_name;
    setAccessibleName(m_words + QStringLiteral(", ") + m_found + QLatin1Char(' ') + m_required +
                      (m_case.isEmpty() ? QString() : QStringLiteral(", ") + m_case) + QStringLiteral(", ") + verdict());
    place();
    update();
}

QString RequirementRow::verdict() const
{
    return !m_met ? tr("not evaluated") : (*m_met ? tr("met") : tr("not met"));
}

void RequirementRow::place()
{
    const QFont text = windowFont(12), strong = windowFont(12, QFont::DemiBold);
    const double room = width() - 30.0 - tabularWidth(strong, m_found) - 7.0 - 8.0 - tabularWidth(strong, verdict()) - 4.0;
    m_case_below = !m_case.isEmpty() && tabularWidth(text, m_required + QStringLiteral(", ") + m_case) > room;
    setFixedHeight(m_case_below ? 55 : 40);
}

void RequirementRow::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    const bool met = m_met.value_or(false);
    const QColor colour = met ? t.met : t.stop;
    if (underMouse()) {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(Qt::NoPen);
        painter.setBrush(t.card);
        painter.drawRoundedRect(QRectF(rect()), 6, 6);
    }
    drawMarkOnDisc(painter, met ? Mark::tick : Mark::cross, QPointF(12.0, 20.0), 9.0, colour, met ? t.met_soft : t.stop_soft);
    const QFont text = windowFont(12), strong = windowFont(12, QFont::DemiBold);
    painter.setPen(t.ink);
    painter.setFont(text);
    painter.drawText(QPointF(30.0, 17.0), elided(text, m_words, width() - 36.0));
    painter.setPen(met ? t.ink : t.stop);
    drawTabular(painter, strong, QPointF(30.0, 33.0), m_found);
    painter.setPen(t.ink2);
    const double required_x = 30.0 + tabularWidth(strong, m_found) + 7.0;
    const QString required = m_case.isEmpty() || m_case_below ? m_required : m_required + QStringLiteral(", ") + m_case;
    drawTabular(painter, text, QPointF(required_x, 33.0),
                elided(text, required, width() - 4.0 - tabularWidth(strong, verdict()) - 8.0 - required_x));
    if (m_case_below)
        drawTabular(painter, text, QPointF(30.0, 48.0), elided(text, m_case, width() - 36.0));
    painter.setPen(colour);
    drawTabular(painter, strong, QPointF(width() - 4.0, 33.0), verdict(), Qt::AlignRight);
}

ArrangementPanel::ArrangementPanel(Document& document, ViewState& view) : m_document(document)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 16, 18, 16);
    column->setSpacing(8);
    m_title = new PanelLabel(PanelLabel::Look::title, tr("Arrangement"), this);
    column->addWidget(m_title);
    m_findings = new FindingList(m_document, this);
    column->addWidget(m_findings);
    column->addWidget(new PanelRule(this));
    column->addWidget(new PanelLabel(PanelLabel::Look::head, tr("Requirements"), this));
    m_requirements = new QWidget(this);
    auto* requirements = new QVBoxLayout(m_requirements);
    requirements->setContentsMargins(0, 0, 0, 0);
    requirements->setSpacing(2);
    m_no_requirement =
        new PanelLabel(PanelLabel::Look::second, tr("None yet. State the life that the bearings must reach."), m_requirements);
    requirements->addWidget(m_no_requirement);
    column->addWidget(m_requirements);

    using K = QuantityKind;
    m_duty = new Form(m_document, this);
    m_duty->quantity({tr("Required life"), K::life_h, "duty.required_L_h",
                      [](const Arrangement& a) { return a.duty.required_L_h; },
                      change([](Arrangement& a, std::optional<double> v) { a.duty.required_L_h = v; }), true,
                      [](const Assessment&) { return tr("not judged"); }, tr("Of every support that states no life of its own")});
    m_duty->quantity({tr("Reliability"),
                      K::percent,
                      "duty.reliability_percent",
                      [](const Arrangement& a) { return a.duty.reliability_percent; },
                      change([](Arrangement& a, std::optional<double> v) { a.duty.reliability_percent = v; }),
                      true,
                      [](const Assessment& s) { return plainNumber(s.settled.reliability_percent); },
                      {}});
    m_duty->quantity({tr("Application factor"), K::number, "duty.K_A", [](const Arrangement& a) { return a.duty.K_A; },
                      change([](Arrangement& a, std::optional<double> v) { a.duty.K_A = v; }), true,
                      [](const Assessment& s) { return plainNumber(s.settled.K_A); }, tr("On forces that come from torque")});
    column->addWidget(m_duty);
    const auto fold = [&](PanelFold* made) {
        m_folds.push_back(made);
        column->addWidget(made);
    };
    fold(ownRequirementsFold(m_document, this));
    fold(loadCasesFold(m_document, view, this));

    column->addWidget(new PanelRule(this));
    column->addWidget(new PanelLabel(PanelLabel::Look::head, tr("Surroundings"), this));
    m_surroundings = new Form(m_document, this);
    const auto open = [&](const QString& label, K kind, const char* key, std::optional<double> Surroundings::*member,
                          double Settled::*settled, const QString& tip = {}) {
        m_surroundings->quantity({label, kind, std::string("surroundings.") + key,
                                  [member](const Arrangement& a) { return a.surroundings.*member; },
                                  change([member](Arrangement& a, std::optional<double> v) { a.surroundings.*member = v; }), true,
                                  [settled](const Assessment& s) { return plainNumber(s.settled.*settled); }, tip});
    };
    open(tr("Bearing temperature"), K::temperature_C, "temperature_C", &Surroundings::temperature_C, &Settled::temperature_C);
    open(tr("Room temperature"), K::temperature_C, "ambient_C", &Surroundings::ambient_C, &Settled::ambient_C);
    openChoice<Lubricant>(*m_surroundings, tr("Lubricant"), {tr("oil"), tr("grease")}, "lubricant", &Surroundings::lubricant,
                          [](const Settled& s) { return static_cast<int>(s.lubricant); });
    openChoice<Dirt>(*m_surroundings, tr("Dirt"), {tr("clean"), tr("normal"), tr("dirty"), tr("severe")}, "dirt",
                     &Surroundings::dirt, [](const Settled& s) { return static_cast<int>(s.dirt); });
    openChoice<HousingMaterial>(
        *m_surroundings, tr("Housing"), {tr("grey iron"), tr("nodular iron"), tr("steel"), tr("aluminium")}, "housing_material",
        &Surroundings::housing_material, [](const Settled& s) { return static_cast<int>(s.housing_material); });
    open(tr("Shaft attitude"), K::angle_deg, "attitude_deg", &Surroundings::attitude_deg, &Settled::attitude_deg,
         tr("Right end above the horizontal: 0° lies, 90° stands"));
    const QStringList grades{tr("unimportant"), tr("normal"), tr("raised"), tr("high")};
    openChoice<Grade>(*m_surroundings, tr("Running accuracy"), grades, "accuracy", &Surroundings::accuracy,
                      [](const Settled& s) { return static_cast<int>(s.accuracy); });
    openChoice<Grade>(*m_surroundings, tr("Quiet running"), grades, "quiet", &Surroundings::quiet,
                      [](const Settled& s) { return static_cast<int>(s.quiet); });
    openChoice<Grade>(*m_surroundings, tr("Axial guidance"), grades, "guide", &Surroundings::guide,
                      [](const Settled& s) { return static_cast<int>(s.guide); });
    column->addWidget(m_surroundings);
    fold(surroundingsFold(m_document, this));
    fold(suggestionsFold(m_document, this));
    fold(materialFold(m_document, this));
    fold(methodFold(m_document, this));

    column->addWidget(new PanelRule(this));
    column->addWidget(new PanelLabel(PanelLabel::Look::head, tr("Title block"), this));
    m_block = new Form(m_document, this);
    const auto words = [&](const QString& label, const char* key, std::string TitleBlock::*member) {
        m_block->words({label,
                        std::string("title.") + key,
                        [member](const Arrangement& a) { return QString::fromStdString(a.title.*member); },
                        [member](const Arrangement& a, const QString& text) -> Result<Arrangement> {
                            Arrangement next = a;
                            next.title.*member = text.trimmed().toStdString();
                            return next;
                        },
                        true,
                        {},
                        {},
                        true});
    };
    words(tr("Title"), "title", &TitleBlock::title);
    words(tr("Number"), "number", &TitleBlock::number);
    words(tr("Author"), "author", &TitleBlock::author);
    words(tr("Organisation"), "organisation", &TitleBlock::organisation);
    words(tr("Date"), "date", &TitleBlock::date);
    words(tr("Purpose"), "purpose", &TitleBlock::purpose);
    column->addWidget(m_block);
    column->addWidget(new PanelRule(this));
    m_notes = new FindingList(m_document, this);
    column->addWidget(m_notes);
    column->addStretch(1);
}

void ArrangementPanel::refreshFindings(const Assessment& assessment)
{
    int stops = 0, cautions = 0;
    for (const Finding& finding : assessment.findings) {
        if (finding.accepted)
            continue;
        stops += finding.severity == Severity::stop ? 1 : 0;
        cautions += finding.severity == Severity::caution ? 1 : 0;
    }
    if (stops > 0)
        m_title->setAside(QStringLiteral("%1 %2").arg(stops).arg(stops == 1 ? tr("stop") : tr("stops")), Severity::stop);
    else if (cautions > 0)
        m_title->setAside(QStringLiteral("%1 %2").arg(cautions).arg(cautions == 1 ? tr("caution") : tr("cautions")),
                          Severity::caution);
    else
        m_title->setAside(tr("nothing needs attention"));
    // What stops or warns stands first; notes follow at the end.
    const auto those = [&](bool note) {
        return findingGroups(assessment.findings, m_document.shown(), true,
                             [note](const Finding& finding) { return (finding.severity == Severity::note) == note; });
    };
    m_findings->set(those(false));
    m_notes->set(those(true));
}

void ArrangementPanel::refreshRequirements(const Assessment& assessment)
{
    while (m_rows.size() > assessment.requirements.size()) {
        delete m_rows.back();
        m_rows.pop_back();
    }
    for (std::size_t i = 0; i < assessment.requirements.size(); ++i) {
        const RequirementResult& result = assessment.requirements[i];
        if (i == m_rows.size()) {
            auto* row = new RequirementRow(m_requirements);
            connect(row, &QAbstractButton::clicked, this, [this, row] {
                if (!row->path().isEmpty())
                    m_document.select(row->path());
            });
            m_requirements->layout()->addWidget(row);
            row->show();
            m_rows.push_back(row);
        }
        const QString path = subjectPath(m_document.shown(), result.where);
        QString case_name;
        if (result.case_id && assessment.load_cases.size() > 1) {
            for (const CaseSummary& summary : assessment.load_cases) {
                if (summary.id == *result.case_id)
                    case_name = QString::fromStdString(summary.name.empty() ? summary.id.value : summary.name);
            }
        }
        m_rows[i]->set(result, subjectName(m_document.shown(), path), case_name, path);
    }
    m_no_requirement->setVisible(assessment.requirements.empty());
}

void ArrangementPanel::refresh()
{
    const Assessment& assessment = m_document.assessment();
    refreshFindings(assessment);
    refreshRequirements(assessment);
    m_duty->refresh();
    m_surroundings->refresh();
    m_block->refresh();
    const Arrangement& shown = m_document.shown();
    for (PanelFold* fold : m_folds) {
        if (fold->objectName() == QLatin1String("loadCases"))
            fold->setAside(QString::number(shown.duty.load_cases.size()));
        else if (fold->objectName() == QLatin1String("ownRequirements"))
            fold->setAside(shown.requirements.empty() ? tr("none") : QString::number(shown.requirements.size()));
        else if (fold->objectName() == QLatin1String("material"))
            fold->setAside(QString::fromStdString(shown.shaft.material.name));
        fold->refresh();
    }
}

} // namespace shaftwright::ui
