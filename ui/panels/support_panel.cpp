#include "ui/panels/support_panel.h"

#include "core/catalogue/catalogue.h"
#include "core/catalogue/family_rows.h"
#include "core/edit/edit.h"
#include "ui/document/bearing_text.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/panels/own_bearing_dialog.h"
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
    m_findings = new FindingList(m_document, this);
    column->addWidget(m_findings);
    m_form = new Form(m_document, this);
    column->addWidget(m_form);
    auto* own = new QuietButton(tr("Type a maker’s data …"), this);
    own->setObjectName(QStringLiteral("ownBearing"));
    own->setToolTip(tr("A bearing that stands in no catalogue here: dimensions, ratings and their source"));
    connect(own, &QuietButton::clicked, this, &SupportPanel::typeOwnBearing);
    column->addWidget(own, 0, Qt::AlignLeft);
    m_folds.push_back(new PanelFold(
        m_document, QStringLiteral("seat"), tr("Seat, rings, limits"), [this](PanelFold& fold) { buildSeat(fold); }, this));
    m_folds.push_back(new PanelFold(
        m_document, QStringLiteral("stiffness"), tr("Stiffness, gap, displacement"),
        [this](PanelFold& fold) { buildStiffness(fold); }, this));
    for (PanelFold* fold : m_folds)
        column->addWidget(fold);
    column->addWidget(new PanelRule(this));
    m_life_head = new PanelLabel(PanelLabel::Look::head, {}, this);
    column->addWidget(m_life_head);
    m_derivation = new DerivationView(this);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    m_derivation->setSizePolicy(policy);
    column->addWidget(m_derivation);
    m_all_head = new PanelLabel(PanelLabel::Look::head, tr("Over all cases"), this);
    column->addWidget(m_all_head);
    m_all_derivation = new DerivationView(this);
    m_all_derivation->setSizePolicy(policy);
    column->addWidget(m_all_derivation);
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
    m_notes = new FindingList(m_document, this);
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
                        s.carries = index < 0 ? std::nullopt : std::optional(static_cast<Carries>(index));
                        return setSupport(a, std::move(s));
                    },
                    [](const Assessment&) { return tr("both ways"); },
                    [id](const Arrangement& a) {
                        // Only one-way bearings and stops with end play need the side.
                        const Support* s = findSupport(a, id);
                        return s != nullptr && (s->carries || s->role == Role::adjusted || s->role == Role::end_play ||
                                                s->role == Role::axial_only);
                    },
                    true});
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
                           Result<BearingChoice> choice = bearingFromText(text);
                           if (!choice.ok()) {
                               Finding finding = choice.finding();
                               finding.path = "supports." + id.value + ".bearing";
                               return finding;
                           }
                           return setBearing(a, id, choice.value());
                       },
                       true, tr("6208, NU208 …")});
    auto* completer = new QCompleter(bearing);
    auto* names = new QStringListModel(completer);
    completer->setModel(names);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    completer->setMaxVisibleItems(12);
    bearing->setCompleter(completer);
    connect(bearing, &QLineEdit::textEdited, names, [this, names] {
        // Bearings of the seat's bore first, then all others; made when typing starts.
        const SupportAssessment* found = m_document.results().find(m_id);
        const double bore = found != nullptr ? found->seat_mm : 0.0;
        QStringList fitting, others;
        for (const CatalogueRow& row : genericCatalogue().rows)
            (std::abs(row.bore_mm - bore) < 1e-6 ? fitting : others) << QString::fromStdString(row.designation);
        if (names->rowCount() != fitting.size() + others.size() || names->stringList().value(0) != fitting.value(0))
            names->setStringList(fitting + others);
    });
    m_form->choice({tr("Mounted as"),
                    {tr("one bearing"), tr("two, back to back"), tr("two, face to face"), tr("two, tandem")},
                    base + "arrangement",
                    [id](const Arrangement& a) {
                        const Support* s = findSupport(a, id);
                        return s == nullptr || !s->bearing ? -1 : static_cast<int>(s->bearing->arrangement);
                    },
                    [id](const Arrangement& a, int index) -> Result<Arrangement> {
                        const Support* s = findSupport(a, id);
                        if (s == nullptr || !s->bearing)
                            return a;
                        return setBearing(a, id, mountedAs(*s->bearing, static_cast<SetArrangement>(index)));
                    },
                    {},
                    [id](const Arrangement& a) {
                        const Support* s = findSupport(a, id);
                        return s != nullptr && s->bearing && canBeSet(*s->bearing);
                    }});
    for (std::size_t row = 0; row < 3; ++row) {
        m_form->choice({tr("Row %1 keeps from").arg(row + 1),
                        {tr("moving right"), tr("moving left")},
                        base + "bearing.rows." + std::to_string(row) + ".carries",
                        [id, row](const Arrangement& a) {
                            const Support* s = findSupport(a, id);
                            if (s == nullptr || !s->bearing || row >= s->bearing->rows.size() || !s->bearing->rows[row].carries)
                                return -1;
                            return static_cast<int>(*s->bearing->rows[row].carries);
                        },
                        [id, row](const Arrangement& a, int index) -> Result<Arrangement> {
                            const Support* s = findSupport(a, id);
                            if (s == nullptr || !s->bearing || row >= s->bearing->rows.size())
                                return a;
                            BearingChoice next = *s->bearing;
                            next.rows[row].carries = index < 0 ? std::nullopt : std::optional(static_cast<Carries>(index));
                            return setBearing(a, id, std::move(next));
                        },
                        [](const Assessment&) { return tr("by mounting"); },
                        [id, row](const Arrangement& a) {
                            const Support* s = findSupport(a, id);
                            return s != nullptr && s->bearing && s->bearing->rows.size() > 1 && row < s->bearing->rows.size() &&
                                   s->bearing->arrangement == SetArrangement::none;
                        },
                        true});
    }
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
}

void SupportPanel::buildSeat(PanelFold& fold)
{
    const std::string base = "supports." + m_id.value + ".";
    const SupportId id = m_id;
    Form* form = fold.addForm();
    form->words({tr("Name"),
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
        form->words({label, base + key,
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
        form->choice({label,
                      holds,
                      base + "holds." + key,
                      [id, member](const Arrangement& a) {
                          const Support* s = findSupport(a, id);
                          return s && s->holds.*member ? static_cast<int>(*(s->holds.*member)) : -1;
                      },
                      [id, member](const Arrangement& a, int index) -> Result<Arrangement> {
                          Support s = *findSupport(a, id);
                          s.holds.*member = index < 0 ? std::nullopt : std::optional(static_cast<HoldKind>(index));
                          return setSupport(a, std::move(s));
                      },
                      {},
                      {},
                      true});
    };
    hold(tr("Inner ring, left"), "inner_left", &Holds::inner_left);
    hold(tr("Inner ring, right"), "inner_right", &Holds::inner_right);
    hold(tr("Outer ring, left"), "outer_left", &Holds::outer_left);
    hold(tr("Outer ring, right"), "outer_right", &Holds::outer_right);
    form->quantity({tr("Required S0"), QuantityKind::number, base + "required_S0",
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
    form->quantity({tr("End play"), QuantityKind::length_mm, base + "play_mm",
                    [id](const Arrangement& a) {
                        const Support* s = findSupport(a, id);
                        return s ? s->play_mm : std::nullopt;
                    },
                    change(id, [](Support& s, std::optional<double> v) { s.play_mm = v; }), true,
                    [](const Assessment&) { return tr("none"); }, tr("Of a pair with end play")});
    form->quantity({tr("Mounting error"), QuantityKind::tilt_mrad, base + "mounting_error_mrad",
                    [id](const Arrangement& a) {
                        const Support* s = findSupport(a, id);
                        return s ? s->mounting_error_mrad : std::nullopt;
                    },
                    change(id, [](Support& s, std::optional<double> v) { s.mounting_error_mrad = v; }), true,
                    [](const Assessment&) { return plainNumber(defaultMountingError_mrad); },
                    tr("Misalignment of the housing bore")});
}

void SupportPanel::typeOwnBearing()
{
    const Support* support = findSupport(m_document.committed(), m_id);
    if (support == nullptr)
        return;
    OwnBearingDialog dialog(support->bearing, shaftDiameterAt_mm(m_document.committed().shaft, support->x_mm), window());
    if (dialog.exec() != QDialog::Accepted)
        return;
    m_document.push(
        setBearing(m_document.committed(), m_id, dialog.choice()),
        tr("Type %1 at %2").arg(QString::fromStdString(dialog.choice().designation()), QString::fromStdString(m_id.value)));
}

void SupportPanel::buildStiffness(PanelFold& fold)
{
    const std::string base = "supports." + m_id.value + ".";
    const SupportId id = m_id;
    Form* form = fold.addForm();
    using K = QuantityKind;
    const auto onOff = [&](const QString& label, const char* key, const QStringList& words, auto member, auto start) {
        form->choice({label,
                      words,
                      base + key,
                      [id, member](const Arrangement& a) {
                          const Support* s = findSupport(a, id);
                          return s != nullptr && (s->*member).has_value() ? 1 : 0;
                      },
                      [id, member, start](const Arrangement& a, int index) -> Result<Arrangement> {
                          Support s = *findSupport(a, id);
                          if (index == 0)
                              (s.*member).reset();
                          else if (!(s.*member))
                              s.*member = start;
                          return setSupport(a, std::move(s));
                      },
                      {}});
    };
    const auto part = [&](const QString& label, K kind, const char* key, auto member, auto read_value, auto write_value,
                          const QString& tip = {}) {
        form->quantity({label,
                        kind,
                        base + key,
                        [id, member, read_value](const Arrangement& a) -> std::optional<double> {
                            const Support* s = findSupport(a, id);
                            return s == nullptr || !(s->*member) ? std::nullopt
                                                                 : std::optional<double>(read_value(*(s->*member)));
                        },
                        [id, member, write_value](const Arrangement& a, std::optional<double> v) -> Result<Arrangement> {
                            Support s = *findSupport(a, id);
                            if (s.*member)
                                write_value(*(s.*member), v.value_or(0.0));
                            return setSupport(a, std::move(s));
                        },
                        false,
                        {},
                        tip,
                        [id, member](const Arrangement& a) {
                            const Support* s = findSupport(a, id);
                            return s != nullptr && (s->*member).has_value();
                        }});
    };
    ElasticSupport start;
    constexpr double usual_N_per_mm = 200000.0; // order of size of a rolling bearing in its housing, to be overtyped
    start.stiffness[1][1] = start.stiffness[2][2] = usual_N_per_mm;
    onOff(tr("Support is"), "elastic", {tr("rigid"), tr("elastic")}, &Support::elastic, start);
    const QString names[] = {tr("Along x"), tr("Along y"), tr("Along z"), tr("About y (N mm/rad)"), tr("About z (N mm/rad)")};
    const char* keys[] = {"elastic.x", "elastic.y", "elastic.z", "elastic.ry", "elastic.rz"};
    for (std::size_t i = 0; i < 5; ++i) {
        part(
            names[i], i < 3 ? K::stiffness_N_per_mm : K::number, keys[i], &Support::elastic,
            [i](const ElasticSupport& elastic) { return elastic.stiffness[i][i]; },
            [i](ElasticSupport& elastic, double v) { elastic.stiffness[i][i] = v; },
            tr("At the effective centre; what couples two directions stands in the file"));
    }
    onOff(tr("Radial gap"), "gap", {tr("none"), tr("given")}, &Support::gap, RadialGap{0.02, usual_N_per_mm, 1.0});
    part(
        tr("Gap"), K::length_mm, "gap.gap_mm", &Support::gap, [](const RadialGap& gap) { return gap.gap_mm; },
        [](RadialGap& gap, double v) { gap.gap_mm = v; }, tr("Radial, before contact"));
    part(
        tr("Contact stiffness k"), K::number, "gap.stiffness", &Support::gap, [](const RadialGap& gap) { return gap.stiffness; },
        [](RadialGap& gap, double v) { gap.stiffness = v; }, tr("Force k times the approach to the power n, in N and mm"));
    part(
        tr("Exponent n"), K::number, "gap.exponent", &Support::gap, [](const RadialGap& gap) { return gap.exponent; },
        [](RadialGap& gap, double v) { gap.exponent = v; }, tr("1 linear, 10/9 rollers, 3/2 balls"));
    onOff(tr("Housing bore"), "prescribed", {tr("in place"), tr("displaced")}, &Support::prescribed, PrescribedDisplacement{});
    const auto shift = [&](const QString& label, K kind, const char* key, double PrescribedDisplacement::*value) {
        part(
            label, kind, key, &Support::prescribed, [value](const PrescribedDisplacement& given) { return given.*value; },
            [value](PrescribedDisplacement& given, double v) { given.*value = v; });
    };
    shift(tr("Along x"), K::length_mm, "prescribed.x_mm", &PrescribedDisplacement::x_mm);
    shift(tr("Along y"), K::length_mm, "prescribed.y_mm", &PrescribedDisplacement::y_mm);
    shift(tr("Along z"), K::length_mm, "prescribed.z_mm", &PrescribedDisplacement::z_mm);
    shift(tr("About y"), K::tilt_mrad, "prescribed.ry_mrad", &PrescribedDisplacement::ry_mrad);
    shift(tr("About z"), K::tilt_mrad, "prescribed.rz_mrad", &PrescribedDisplacement::rz_mrad);
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
    for (PanelFold* fold : m_folds)
        fold->refresh();

    const bool has_bearing = found != nullptr && found->bearing.has_value();
    QString head = tr("How the life comes about");
    Derivation steps, all_steps;
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
                all_steps = bearing.derivation;
            else if (bearing.L10_h)
                note = tr("Over all cases %1").arg(lifeText(*bearing.L10_h));
        }
    } else {
        note = support->bearing ? tr("The bearing cannot be assessed yet: see what stops it above.")
                                : tr("Choose a bearing: type its designation, or take one of those below.");
    }
    m_life_head->setText(head);
    // The three numbers that a hand calculation ends with; every step on demand.
    const auto main_steps = [this](const Derivation& whole) {
        Derivation few = whole;
        if (!m_every_step) {
            std::erase_if(few, [](const DerivationStep& step) {
                return step.symbol != "P" && step.symbol != "L10" && step.symbol != "L10h";
            });
        }
        return few.empty() ? whole : few;
    };
    Derivation shown = main_steps(steps), all_shown = main_steps(all_steps);
    m_steps_button->setVisible(has_bearing &&
                               (m_every_step || shown.size() + all_shown.size() < steps.size() + all_steps.size()));
    m_all_head->setVisible(has_bearing && !all_shown.empty());
    m_all_derivation->setVisible(has_bearing && !all_shown.empty());
    m_all_derivation->setSteps(std::move(all_shown));
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
    int stops = 0, cautions = 0;
    for (const Finding& finding : assessment.findings) {
        if (finding.subject != m_id.value || finding.accepted)
            continue;
        stops += finding.severity == Severity::stop ? 1 : 0;
        cautions += finding.severity == Severity::caution ? 1 : 0;
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
    // What stops or warns stands first; notes are for later reading.
    const auto here = [&](bool note) {
        return findingGroups(assessment.findings, m_document.shown(), false, [&](const Finding& finding) {
            return finding.subject == m_id.value && (finding.severity == Severity::note) == note;
        });
    };
    m_findings->set(here(false));
    m_notes->set(here(true));
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
    // During a drag each row keeps its place and family, and its numbers move; a new order waits for the release.
    if (m_document.previewing() && !m_rows.empty() && found != nullptr) {
        for (SuggestionRow* row : m_rows) {
            for (const Suggestion& suggestion : found->suggestions) {
                if (suggestion.family == row->suggestion().family && !(suggestion == row->suggestion()))
                    row->set(suggestion, support);
            }
        }
        m_shown_suggestions.clear();
        return;
    }
    m_shown_suggestions = list;
    m_shown_bearing = support.bearing;
    while (m_rows.size() > list.size()) {
        delete m_rows.back();
        m_rows.pop_back();
    }
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (i < m_rows.size()) {
            m_rows[i]->set(list[i], support);
            m_rows[i]->setOpen(m_open == list[i].family);
            continue;
        }
        auto* row = new SuggestionRow(list[i], support, m_suggestions);
        m_suggestions->layout()->addWidget(row);
        row->setOpen(m_open == list[i].family);
        connect(row, &SuggestionRow::looked, this, [this, row](bool over) { lookAt(row->suggestion(), over); });
        connect(row, &QAbstractButton::clicked, this, [this, row] {
            const bool open = !row->isOpen();
            for (SuggestionRow* other : m_rows)
                other->setOpen(other == row && open);
            m_open = open ? std::optional(row->suggestion().family) : std::nullopt;
        });
        connect(row, &SuggestionRow::take, this, [this, row] {
            if (row->underMouse())
                setProperty("mouseRests", QCursor::pos());
            take(row->suggestion());
        });
        row->show();
        m_rows.push_back(row);
    }
}

void SupportPanel::lookAt(const Suggestion& suggestion, bool over)
{
    // A card that slides under the resting mouse was not looked at.
    const QVariant resting = property("mouseRests");
    const bool slid = over && resting.isValid() && resting.toPoint() == QCursor::pos();
    if (over && !slid && resting.isValid())
        setProperty("mouseRests", QVariant());
    if (!over || slid || !suggestion.choice) {
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
    QStringList words{QString::fromStdString(suggestion.choice->designation())};
    if (suggestion.L10_h)
        words << lifeText(*suggestion.L10_h);
    if (const Support* support = findSupport(m_document.committed(), m_id)) {
        const QString change = consequenceText(*suggestion.choice, *support);
        words << (change.isEmpty() ? tr("the first bearing here") : change);
        const CatalogueRow& row = suggestion.choice->rows.front().row;
        words << tr("⌀ %1, %2 wide").arg(lengthText(row.outer_mm), lengthText(suggestion.choice->width_mm()));
    }
    m_view.ghost_text = words.join(QStringLiteral(" · "));
    m_view.ghost_subject = pathOf(m_id);
    m_view.notify();
}

void SupportPanel::take(const Suggestion& suggestion)
{
    if (!suggestion.choice)
        return;
    // The row may show something else as soon as the document changes.
    const BearingChoice choice = *suggestion.choice;
    m_view.ghost.reset();
    m_open.reset();
    std::string reason =
        suggestion.reasons.empty() ? std::string("suggestion") : reasonText(suggestion.reasons.front()).toStdString();
    m_document.push(setBearing(m_document.committed(), m_id, choice, reason),
                    tr("Take %1 at %2").arg(QString::fromStdString(choice.designation()), QString::fromStdString(m_id.value)));
}

} // namespace shaftwright::ui
