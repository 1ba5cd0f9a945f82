#include "ui/panels/support_panel.h"

#include "core/catalogue/catalogue.h"
#include "core/catalogue/family_rows.h"
#include "core/edit/edit.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/segmented.h"
#include "ui/widgets/theme.h"

#include <QCompleter>
#include <QLineEdit>
#include <QStringListModel>
#include <QVBoxLayout>

#include <algorithm>

namespace shaftwright::ui
{

namespace
{

/// The same support with one member changed.
template <class Change>
std::function<Result<Arrangement>(const Arrangement&, std::optional<double>)> change(SupportId id, Change change_member)
{
    return [id, change_member](const Arrangement& arrangement, std::optional<double> value) -> Result<Arrangement> {
        const Support* found = findSupport(arrangement, id);
        if (found == nullptr)
            return arrangement;
        Support support = *found;
        change_member(support, value);
        return setSupport(arrangement, std::move(support));
    };
}

template <class Member> Form::Get read(SupportId id, Member member)
{
    return [id, member](const Arrangement& arrangement) -> std::optional<double> {
        const Support* support = findSupport(arrangement, id);
        return support == nullptr ? std::optional<double>{} : std::optional<double>{support->*member};
    };
}

} // namespace

SupportPanel::SupportPanel(Document& document, ViewState& view, SupportId id)
    : m_document(document), m_view(view), m_id(std::move(id))
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 16, 18, 16);
    column->setSpacing(8);
    m_title = new PanelLabel(PanelLabel::Look::title, {}, this);
    column->addWidget(m_title);
    m_findings = new QWidget(this);
    auto* findings = new QVBoxLayout(m_findings);
    findings->setContentsMargins(0, 0, 0, 0);
    findings->setSpacing(6);
    column->addWidget(m_findings);
    m_form = new Form(m_document, this);
    column->addWidget(m_form);
    m_more_button = new QuietButton(tr("Fits, holds, stiffness"), this);
    m_more_button->setChevron(true);
    column->addWidget(m_more_button, 0, Qt::AlignLeft);
    m_more = new Form(m_document, this);
    m_more->hide();
    column->addWidget(m_more);
    connect(m_more_button, &QuietButton::clicked, this, [this] { m_more->setVisible(!m_more->isVisible()); });
    column->addWidget(new PanelRule(this));
    m_life_head = new PanelLabel(PanelLabel::Look::head, {}, this);
    column->addWidget(m_life_head);
    m_derivation = new DerivationView(this);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    m_derivation->setSizePolicy(policy);
    column->addWidget(m_derivation);
    m_steps_button = new QuietButton(tr("Show every step"), this);
    m_steps_button->setObjectName(QStringLiteral("everyStep"));
    connect(m_steps_button, &QuietButton::clicked, this, [this] {
        m_every_step = !m_every_step;
        refresh();
    });
    column->addWidget(m_steps_button, 0, Qt::AlignLeft);
    m_life_note = new PanelLabel(PanelLabel::Look::second, {}, this);
    column->addWidget(m_life_note);
    column->addWidget(new PanelRule(this));
    m_suggestion_head = new PanelLabel(PanelLabel::Look::head, tr("Worth considering here"), this);
    column->addWidget(m_suggestion_head);
    m_suggestions = new QWidget(this);
    auto* rows = new QVBoxLayout(m_suggestions);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(6);
    column->addWidget(m_suggestions);
    m_all_button = new QuietButton(tr("Show all families"), this);
    connect(m_all_button, &QuietButton::clicked, this, [this] {
        m_all = !m_all;
        m_shown_suggestions.clear();
        refresh();
    });
    column->addWidget(m_all_button, 0, Qt::AlignLeft);
    m_notes = new QWidget(this);
    auto* notes = new QVBoxLayout(m_notes);
    notes->setContentsMargins(0, 8, 0, 0);
    notes->setSpacing(6);
    column->addWidget(m_notes);
    column->addStretch(1);
    buildForm();
}

SupportPanel::~SupportPanel()
{
    if (m_view.ghost) {
        m_view.ghost.reset();
        m_view.ghost_text.clear();
    }
}

void SupportPanel::buildForm()
{
    const std::string base = "supports." + m_id.value + ".";
    const SupportId id = m_id;
    m_form->quantity({tr("Place"),
                      QuantityKind::length_mm,
                      base + "x_mm",
                      read(id, &Support::x_mm),
                      [id](const Arrangement& a, std::optional<double> v) { return moveSupport(a, id, v.value_or(0.0)); },
                      false,
                      {},
                      tr("Middle of the seat, from the left end of the shaft")});
    QStringList roles;
    for (const Role role : {Role::locating, Role::non_locating, Role::adjusted, Role::end_play, Role::axial_only})
        roles << roleName(role);
    m_form->choice({tr("Role"),
                    roles,
                    base + "role",
                    [id](const Arrangement& a) {
                        const Support* s = findSupport(a, id);
                        return s == nullptr ? -1 : static_cast<int>(s->role);
                    },
                    [id](const Arrangement& a, int index) { return setRole(a, id, static_cast<Role>(index)); },
                    {}});
    m_form->choice({tr("Keeps the shaft from"),
                    {tr("moving right"), tr("moving left")},
                    base + "carries",
                    [id](const Arrangement& a) {
                        const Support* s = findSupport(a, id);
                        return s == nullptr || !s->carries ? -1 : static_cast<int>(*s->carries);
                    },
                    [id](const Arrangement& a, int index) -> Result<Arrangement> {
                        Support s = *findSupport(a, id);
                        s.carries = static_cast<Carries>(index);
                        return setSupport(a, std::move(s));
                    },
                    [](const Assessment&) { return tr("both ways"); },
                    [id](const Arrangement& a) {
                        // Only one-way bearings and stops with end play need the side.
                        const Support* s = findSupport(a, id);
                        return s != nullptr && (s->carries || s->role == Role::adjusted || s->role == Role::end_play ||
                                                s->role == Role::axial_only);
                    }});
    QLineEdit* bearing =
        m_form->words({tr("Bearing"), base + "bearing",
                       [id](const Arrangement& a) {
                           const Support* s = findSupport(a, id);
                           return s == nullptr || !s->bearing ? QString() : QString::fromStdString(s->bearing->designation());
                       },
                       [id, this](const Arrangement& a, const QString& text) -> Result<Arrangement> {
                           const QString wanted = text.trimmed().remove(QLatin1Char(' '));
                           if (wanted.isEmpty())
                               return clearBearing(a, id);
                           // A suggestion knows sets and composites too.
                           if (const SupportAssessment* found = m_document.assessment().find(id)) {
                               for (const Suggestion& suggestion : found->suggestions) {
                                   if (suggestion.choice && QString::fromStdString(suggestion.choice->designation())
                                                                    .remove(QLatin1Char(' '))
                                                                    .compare(wanted, Qt::CaseInsensitive) == 0)
                                       return setBearing(a, id, *suggestion.choice);
                               }
                           }
                           const CatalogueRow* row = genericCatalogue().find(wanted.toUpper().toStdString());
                           if (row == nullptr)
                               row = genericCatalogue().find(wanted.toStdString());
                           if (row == nullptr) {
                               Finding finding;
                               finding.severity = Severity::stop;
                               finding.code = "bearing-unknown";
                               finding.path = "supports." + id.value + ".bearing";
                               finding.values.set("designation", wanted.toStdString());
                               return finding;
                           }
                           BearingChoice choice;
                           choice.family = naturalFamily(*row).value_or(Family::deep_groove_ball);
                           choice.rows.push_back({*row, std::nullopt});
                           return setBearing(a, id, std::move(choice));
                       },
                       true, tr("6208, NU208 …")});
    auto* completer = new QCompleter(bearing);
    auto* names = new QStringListModel(completer);
    completer->setModel(names);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    completer->setMaxVisibleItems(12);
    bearing->setCompleter(completer);
    connect(bearing, &QLineEdit::textEdited, names, [this, names] {
        // Bearings of the seat's bore, made when typing starts.
        const SupportAssessment* found = m_document.results().find(m_id);
        const double bore = found != nullptr ? found->seat_mm : 0.0;
        QStringList list;
        for (const CatalogueRow& row : genericCatalogue().rows) {
            if (std::abs(row.bore_mm - bore) < 1e-6)
                list << QString::fromStdString(row.designation);
        }
        if (names->rowCount() != list.size())
            names->setStringList(list);
    });
    m_form->quantity({tr("Greatest ⌀ outside"), QuantityKind::length_mm, base + "greatest_outer_mm",
                      [id](const Arrangement& a) {
                          const Support* s = findSupport(a, id);
                          return s ? s->greatest_outer_mm : std::nullopt;
                      },
                      change(id, [](Support& s, std::optional<double> v) { s.greatest_outer_mm = v; }), true,
                      [](const Assessment&) { return tr("no limit"); }, tr("Space in the housing")});
    m_form->quantity({tr("Greatest width"), QuantityKind::length_mm, base + "greatest_width_mm",
                      [id](const Arrangement& a) {
                          const Support* s = findSupport(a, id);
                          return s ? s->greatest_width_mm : std::nullopt;
                      },
                      change(id, [](Support& s, std::optional<double> v) { s.greatest_width_mm = v; }), true,
                      [](const Assessment&) { return tr("no limit"); }, tr("Space along the shaft")});
    m_form->quantity({tr("Required life"), QuantityKind::life_h, base + "required_L_h",
                      [id](const Arrangement& a) {
                          const Support* s = findSupport(a, id);
                          return s && s->required_L_h ? s->required_L_h : a.duty.required_L_h;
                      },
                      change(id, [](Support& s, std::optional<double> v) { s.required_L_h = v; }), true,
                      [](const Assessment&) { return tr("not judged"); }, tr("Empty: what the duty asks of all supports")});
    m_form->quantity({tr("Reliability"),
                      QuantityKind::percent,
                      base + "reliability_percent",
                      [id](const Arrangement& a) {
                          const Support* s = findSupport(a, id);
                          return s && s->reliability_percent ? s->reliability_percent : a.duty.reliability_percent;
                      },
                      change(id, [](Support& s, std::optional<double> v) { s.reliability_percent = v; }),
                      true,
                      [](const Assessment& assessment) { return plainNumber(assessment.settled.reliability_percent); },
                      {}});

    m_more->words({tr("Name"),
                   base + "name",
                   [id](const Arrangement& a) {
                       const Support* s = findSupport(a, id);
                       return s ? QString::fromStdString(s->name) : QString();
                   },
                   [id](const Arrangement& a, const QString& text) -> Result<Arrangement> {
                       Support s = *findSupport(a, id);
                       s.name = text.trimmed().toStdString();
                       return setSupport(a, std::move(s));
                   },
                   true,
                   {}});
    const auto fit = [&](const QString& label, const char* key, std::string Support::*member, const QString& hint) {
        m_more->words({label, base + key,
                       [id, member](const Arrangement& a) {
                           const Support* s = findSupport(a, id);
                           return s ? QString::fromStdString(s->*member) : QString();
                       },
                       [id, member](const Arrangement& a, const QString& text) -> Result<Arrangement> {
                           Support s = *findSupport(a, id);
                           s.*member = text.trimmed().toStdString();
                           return setSupport(a, std::move(s));
                       },
                       false, hint});
    };
    fit(tr("Shaft seat"), "shaft_fit", &Support::shaft_fit, tr("k6"));
    fit(tr("Housing bore"), "housing_fit", &Support::housing_fit, tr("H7"));
    const QStringList holds{tr("shoulder"),  tr("retaining ring"), tr("nut"),    tr("sleeve"),
                            tr("end plate"), tr("cover"),          tr("nothing")};
    const auto hold = [&](const QString& label, const char* key, std::optional<HoldKind> Holds::*member) {
        m_more->choice({label,
                        holds,
                        base + "holds." + key,
                        [id, member](const Arrangement& a) {
                            const Support* s = findSupport(a, id);
                            return s && s->holds.*member ? static_cast<int>(*(s->holds.*member)) : -1;
                        },
                        [id, member](const Arrangement& a, int index) -> Result<Arrangement> {
                            Support s = *findSupport(a, id);
                            s.holds.*member = static_cast<HoldKind>(index);
                            return setSupport(a, std::move(s));
                        },
                        {}});
    };
    hold(tr("Inner ring, left"), "inner_left", &Holds::inner_left);
    hold(tr("Inner ring, right"), "inner_right", &Holds::inner_right);
    hold(tr("Outer ring, left"), "outer_left", &Holds::outer_left);
    hold(tr("Outer ring, right"), "outer_right", &Holds::outer_right);
    m_more->quantity({tr("Required S0"), QuantityKind::number, base + "required_S0",
                      [id](const Arrangement& a) {
                          const Support* s = findSupport(a, id);
                          return s ? s->required_S0 : std::nullopt;
                      },
                      change(id, [](Support& s, std::optional<double> v) { s.required_S0 = v; }), true,
                      [id](const Assessment& assessment) {
                          const SupportAssessment* found = assessment.find(id);
                          return found && found->bearing ? number(found->bearing->required_S0) : tr("by duty");
                      },
                      tr("Static safety; empty: by the motion and the quiet asked")});
    m_more->quantity({tr("End play"), QuantityKind::length_mm, base + "play_mm",
                      [id](const Arrangement& a) {
                          const Support* s = findSupport(a, id);
                          return s ? s->play_mm : std::nullopt;
                      },
                      change(id, [](Support& s, std::optional<double> v) { s.play_mm = v; }), true,
                      [](const Assessment&) { return tr("none"); }, tr("Of a pair with end play")});
    m_more->quantity({tr("Mounting error"), QuantityKind::tilt_mrad, base + "mounting_error_mrad",
                      [id](const Arrangement& a) {
                          const Support* s = findSupport(a, id);
                          return s ? s->mounting_error_mrad : std::nullopt;
                      },
                      change(id, [](Support& s, std::optional<double> v) { s.mounting_error_mrad = v; }), true,
                      [](const Assessment&) { return plainNumber(defaultMountingError_mrad); },
                      tr("Misalignment of the housing bore")});
}

void SupportPanel::refresh()
{
    const Support* support = findSupport(m_document.shown(), m_id);
    if (support == nullptr)
        return;
    const Assessment& assessment = m_document.assessment();
    const Assessment& results = m_document.results();
    const SupportAssessment* found = results.find(m_id);
    m_title->setText(subjectName(m_document.shown(), pathOf(m_id)));
    refreshFindings(assessment);
    m_form->refresh();
    m_more->refresh();

    const bool has_bearing = found != nullptr && found->bearing.has_value();
    QString head = tr("How the life comes about");
    Derivation steps;
    QString note;
    if (has_bearing) {
        const BearingAssessment& bearing = *found->bearing;
        int index = m_view.case_index >= 0 ? m_view.case_index : bearing.governing_case;
        if (index < 0 && !bearing.cases.empty())
            index = 0;
        if (index >= 0 && static_cast<std::size_t>(index) < bearing.cases.size()) {
            steps = bearing.cases[static_cast<std::size_t>(index)].derivation;
            if (results.load_cases.size() > 1 && static_cast<std::size_t>(index) < results.load_cases.size()) {
                const CaseSummary& summary = results.load_cases[static_cast<std::size_t>(index)];
                head = tr("How the life comes about, case %1")
                           .arg(QString::fromStdString(summary.name.empty() ? summary.id.value : summary.name));
            }
        }
        if (results.load_cases.size() > 1) {
            if (m_view.case_index < 0)
                steps.insert(steps.end(), bearing.derivation.begin(), bearing.derivation.end());
            else if (bearing.L10_h)
                note = tr("Over all cases %1").arg(lifeText(*bearing.L10_h));
        }
    } else {
        note = support->bearing ? tr("The bearing cannot be assessed yet: see what stops it above.")
                                : tr("Choose a bearing: type its designation, or take one of those below.");
    }
    m_life_head->setText(head);
    // The three numbers that a hand calculation ends with; every step on demand.
    Derivation shown = steps;
    if (!m_every_step) {
        std::erase_if(shown, [](const DerivationStep& step) {
            return step.symbol != "P" && step.symbol != "L10" && step.symbol != "L10h";
        });
        if (shown.empty())
            shown = steps;
    }
    m_steps_button->setVisible(has_bearing && (m_every_step || shown.size() < steps.size()));
    m_steps_button->setText(m_every_step ? tr("Show the main steps only") : tr("Show every step"));
    m_steps_button->adjustSize();
    m_derivation->setSteps(std::move(shown));
    m_derivation->setVisible(has_bearing);
    m_life_note->setText(note);
    m_life_note->setVisible(!note.isEmpty());
    refreshSuggestions(*support, found);
}

void SupportPanel::refreshFindings(const Assessment& assessment)
{
    Findings mine;
    int stops = 0, cautions = 0;
    for (const Finding& finding : assessment.findings) {
        if (finding.subject != m_id.value)
            continue;
        mine.push_back(finding);
        if (!finding.accepted) {
            stops += finding.severity == Severity::stop ? 1 : 0;
            cautions += finding.severity == Severity::caution ? 1 : 0;
        }
    }
    if (stops > 0)
        m_title->setAside(
            tr("%n stop(s) here", nullptr, stops).replace(QStringLiteral("stop(s)"), stops == 1 ? tr("stop") : tr("stops")),
            Severity::stop);
    else if (cautions > 0)
        m_title->setAside(QStringLiteral("%1 %2").arg(cautions).arg(cautions == 1 ? tr("caution here") : tr("cautions here")),
                          Severity::caution);
    else
        m_title->setAside({});
    if (mine == m_shown_findings || (m_document.previewing() && !m_shown_findings.empty()))
        return;
    m_shown_findings = mine;
    // What stops or warns stands first; notes are for later reading.
    bool any = false;
    for (QWidget* place : {m_findings, m_notes})
        qDeleteAll(place->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly));
    for (const Finding& finding : mine) {
        const bool note = finding.severity == Severity::note;
        any = any || !note;
        QWidget* place = note ? m_notes : m_findings;
        auto* box = new FindingBox(finding, {}, place);
        place->layout()->addWidget(box);
        box->show();
    }
    m_findings->setVisible(any);
}

void SupportPanel::refreshSuggestions(const Support& support, const SupportAssessment* found)
{
    std::vector<Suggestion> list;
    if (found != nullptr) {
        constexpr std::size_t few = 5;
        for (const Suggestion& suggestion : found->suggestions) {
            if (!m_all && list.size() >= few)
                break;
            // The bearing that is there already is no suggestion.
            if (!m_all && support.bearing && suggestion.choice && *suggestion.choice == *support.bearing)
                continue;
            list.push_back(suggestion);
        }
    }
    m_suggestion_head->setText(list.empty() ? tr("Nothing to consider before the loads are known")
                                            : tr("Worth considering here"));
    m_all_button->setVisible(found != nullptr && found->suggestions.size() > list.size());
    if (m_all && found != nullptr) {
        m_all_button->setText(tr("Show the best only"));
        m_all_button->setVisible(true);
    } else if (found != nullptr) {
        m_all_button->setText(tr("Show all %1 families").arg(found->suggestions.size()));
    }
    m_all_button->adjustSize();
    if (list == m_shown_suggestions && support.bearing == m_shown_bearing)
        return;
    // During a drag the rows are filled anew; rebuilding widgets would cost the frame, so it waits for the release.
    if (m_document.previewing() && !m_rows.empty())
        return;
    m_shown_suggestions = list;
    m_shown_bearing = support.bearing;
    qDeleteAll(m_rows);
    m_rows.clear();
    for (const Suggestion& suggestion : list) {
        auto* row = new SuggestionRow(suggestion, support, m_suggestions);
        m_suggestions->layout()->addWidget(row);
        row->setOpen(m_open == suggestion.family);
        connect(row, &SuggestionRow::looked, this, [this, suggestion](bool over) { lookAt(suggestion, over); });
        connect(row, &QAbstractButton::clicked, this, [this, row] {
            const bool open = !row->isOpen();
            for (SuggestionRow* other : m_rows)
                other->setOpen(other == row && open);
            m_open = open ? std::optional(row->suggestion().family) : std::nullopt;
        });
        connect(row, &SuggestionRow::take, this, [this, suggestion] { take(suggestion); });
        row->show();
        m_rows.push_back(row);
    }
}

void SupportPanel::lookAt(const Suggestion& suggestion, bool over)
{
    if (!over || !suggestion.choice) {
        if (m_view.ghost) {
            m_view.ghost.reset();
            m_view.ghost_text.clear();
            m_view.notify();
        }
        return;
    }
    const Result<Arrangement> next = setBearing(m_document.committed(), m_id, *suggestion.choice);
    if (!next.ok())
        return;
    m_view.ghost = next.value();
    m_view.ghost_text = QString::fromStdString(suggestion.choice->designation());
    m_view.notify();
}

void SupportPanel::take(const Suggestion& suggestion)
{
    if (!suggestion.choice)
        return;
    const BearingChoice choice = *suggestion.choice;
    m_view.ghost.reset();
    m_open.reset();
    std::string reason = suggestion.reasons.empty() ? std::string("suggestion") : suggestion.reasons.front().code;
    m_document.push(setBearing(m_document.committed(), m_id, choice, reason),
                    tr("Take %1 at %2").arg(QString::fromStdString(choice.designation()), QString::fromStdString(m_id.value)));
}

} // namespace shaftwright::ui
