#include "ui/panels/duty_folds.h"

#include "core/edit/edit.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/widgets/number_text.h"

#include <QCompleter>
#include <QLineEdit>
#include <QStringListModel>

#include <cmath>

namespace shaftwright::ui
{

namespace
{

using K = QuantityKind;

QString caseName(const LoadCase& load_case)
{
    return QString::fromStdString(load_case.name.empty() ? load_case.id.value : load_case.name);
}

/// Row of an optional number of some part of the arrangement.
template <class Access>
Form::Quantity optionalRow(const QString& label, K kind, std::string path, Access access, const QString& open_text = {},
                           const QString& tip = {}, std::function<bool(const Arrangement&)> visible = {})
{
    std::function<QString(const Assessment&)> open;
    if (!open_text.isEmpty())
        open = [open_text](const Assessment&) { return open_text; };
    return {label,
            kind,
            std::move(path),
            [access](const Arrangement& a) -> std::optional<double> {
                Arrangement& look = const_cast<Arrangement&>(a); // only read here
                return access(look);
            },
            [access](const Arrangement& a, std::optional<double> value) -> Result<Arrangement> {
                Arrangement next = a;
                access(next) = value;
                return next;
            },
            true,
            open,
            tip,
            std::move(visible)};
}

/// Choice of an optional enum; leaving it open is a choice too.
template <class Enum, class Access>
Form::Choice optionalChoice(const QString& label, const QStringList& words, std::string path, Access access,
                            std::function<int(const Settled&)> settled = {}, const QString& tip = {})
{
    std::function<QString(const Assessment&)> open;
    if (settled)
        open = [words, settled](const Assessment& s) { return words.value(settled(s.settled)); };
    return {label,
            words,
            std::move(path),
            [access](const Arrangement& a) {
                Arrangement& look = const_cast<Arrangement&>(a); // only read here
                const auto& value = access(look);
                return value ? static_cast<int>(*value) : -1;
            },
            [access](const Arrangement& a, int index) -> Result<Arrangement> {
                Arrangement next = a;
                if (index < 0)
                    access(next).reset();
                else
                    access(next) = static_cast<Enum>(index);
                return next;
            },
            open,
            {},
            true,
            tip};
}

} // namespace

PanelFold* loadCasesFold(Document& document, ViewState& view, QWidget* parent)
{
    auto* fold = new PanelFold(
        document, QStringLiteral("loadCases"), QObject::tr("Load cases"),
        [&document, &view](PanelFold& self) {
            const auto& cases = document.shown().duty.load_cases;
            // The case of the chosen tile; with all cases the first.
            const std::size_t index = view.case_index >= 0 && static_cast<std::size_t>(view.case_index) < cases.size()
                                          ? static_cast<std::size_t>(view.case_index)
                                          : 0;
            Form* form = self.addForm();
            if (cases.size() > 1) {
                QStringList names;
                for (const LoadCase& load_case : cases)
                    names << caseName(load_case);
                form->choice({QObject::tr("Case"),
                              names,
                              "",
                              [index](const Arrangement&) { return static_cast<int>(index); },
                              [&view](const Arrangement& a, int chosen) -> Result<Arrangement> {
                                  view.case_index = chosen; // looks at another case, changes nothing
                                  view.notify();
                                  return a;
                              },
                              {}});
            }
            if (index < cases.size()) {
                const CaseId id = cases[index].id;
                const std::string base = "duty.load_cases." + id.value + ".";
                const auto changed = [id](const Arrangement& a, auto change) -> Result<Arrangement> {
                    const LoadCase* found = findCase(a, id);
                    if (found == nullptr)
                        return a;
                    LoadCase next = *found;
                    change(next);
                    return setLoadCase(a, std::move(next));
                };
                form->words({QObject::tr("Name"),
                             base + "name",
                             [id](const Arrangement& a) {
                                 const LoadCase* found = findCase(a, id);
                                 return found ? QString::fromStdString(found->name) : QString();
                             },
                             [changed](const Arrangement& a, const QString& text) {
                                 return changed(a, [&](LoadCase& c) { c.name = text.trimmed().toStdString(); });
                             },
                             true,
                             {},
                             {},
                             true});
                const auto number = [&](const QString& label, K kind, const char* key, double LoadCase::*member, double scale,
                                        const QString& tip) {
                    form->quantity({label,
                                    kind,
                                    base + key,
                                    [id, member, scale](const Arrangement& a) -> std::optional<double> {
                                        const LoadCase* found = findCase(a, id);
                                        if (found == nullptr)
                                            return std::nullopt;
                                        return std::round(found->*member * scale * 1e9) / 1e9;
                                    },
                                    [changed, member, scale](const Arrangement& a, std::optional<double> v) {
                                        return changed(a, [&](LoadCase& c) { c.*member = v.value_or(0.0) / scale; });
                                    },
                                    false,
                                    {},
                                    tip});
                };
                number(QObject::tr("Speed"), K::speed_rpm, "speed_rpm", &LoadCase::speed_rpm, 1.0,
                       QObject::tr("Positive: right-hand rule about x, which points to the right; 0: standstill"));
                form->choice({QObject::tr("Sense of rotation"),
                              {QObject::tr("positive"), QObject::tr("negative")},
                              base + "sense",
                              [id](const Arrangement& a) {
                                  const LoadCase* found = findCase(a, id);
                                  return found != nullptr && found->speed_rpm < 0.0 ? 1 : 0;
                              },
                              [changed](const Arrangement& a, int chosen) {
                                  return changed(a, [&](LoadCase& c) {
                                      c.speed_rpm = chosen == 1 ? -std::abs(c.speed_rpm) : std::abs(c.speed_rpm);
                                  });
                              },
                              {},
                              [id](const Arrangement& a) {
                                  const LoadCase* found = findCase(a, id);
                                  return found != nullptr && found->speed_rpm != 0.0;
                              }});
                number(QObject::tr("Time share"), K::percent, "time_share", &LoadCase::time_share, 100.0,
                       QObject::tr("Of the running time; all cases together 100 %"));
                number(QObject::tr("Power factor"), K::number, "power_factor", &LoadCase::power_factor, 1.0,
                       QObject::tr("Multiplies every power and torque"));
                number(QObject::tr("Free load factor"), K::number, "free_load_factor", &LoadCase::free_load_factor, 1.0,
                       QObject::tr("Multiplies free forces, moments, spread loads and thrust"));
                const auto open = [&](const QString& label, K kind, const char* key, std::optional<double> LoadCase::*member,
                                      const QString& text, const QString& tip) {
                    form->quantity(
                        {label, kind, base + key,
                         [id, member](const Arrangement& a) -> std::optional<double> {
                             const LoadCase* found = findCase(a, id);
                             return found ? found->*member : std::nullopt;
                         },
                         [changed, member](const Arrangement& a, std::optional<double> v) {
                             return changed(a, [&](LoadCase& c) { c.*member = v; });
                         },
                         true,
                         [text](const Assessment& s) { return text.isEmpty() ? plainNumber(s.settled.temperature_C) : text; },
                         tip});
                };
                open(QObject::tr("Peak factor"), K::number, "peak_factor", &LoadCase::peak_factor, QStringLiteral("1"),
                     QObject::tr("Largest over steady load, for static safety"));
                open(QObject::tr("Shaft temperature"), K::temperature_C, "shaft_temperature_C", &LoadCase::shaft_temperature_C,
                     {}, QObject::tr("Empty: as the bearings"));
                open(QObject::tr("Housing temperature"), K::temperature_C, "housing_temperature_C",
                     &LoadCase::housing_temperature_C, {}, QObject::tr("Empty: as the bearings"));
            }
            self.addButtons(
                {{QObject::tr("Add"), QStringLiteral("addCase"),
                  [&document, &view] {
                      LoadCase load_case;
                      load_case.id = freeCaseId(document.committed());
                      load_case.time_share = document.committed().duty.load_cases.empty() ? 1.0 : 0.0;
                      if (document.push(addLoadCase(document.committed(), load_case), QObject::tr("Add load case"))) {
                          view.case_index = static_cast<int>(document.committed().duty.load_cases.size()) - 1;
                          view.notify();
                      }
                  }},
                 {QObject::tr("Duplicate"), QStringLiteral("duplicateCase"),
                  [&document, &view, index] {
                      const auto& now = document.committed().duty.load_cases;
                      if (index >= now.size())
                          return;
                      LoadCase load_case = now[index];
                      load_case.id = freeCaseId(document.committed());
                      load_case.name = QObject::tr("%1, copy").arg(caseName(now[index])).toStdString();
                      load_case.time_share = 0.0; // the shares still make up the whole
                      if (document.push(addLoadCase(document.committed(), load_case), QObject::tr("Duplicate load case"))) {
                          view.case_index = static_cast<int>(document.committed().duty.load_cases.size()) - 1;
                          view.notify();
                      }
                  },
                  !cases.empty()},
                 {QObject::tr("Delete"), QStringLiteral("deleteCase"),
                  [&document, &view, index] {
                      const auto& now = document.committed().duty.load_cases;
                      if (index < now.size() &&
                          document.push(removeLoadCase(document.committed(), now[index].id), QObject::tr("Delete load case"))) {
                          view.case_index = -1;
                          view.notify();
                      }
                  },
                  !cases.empty()}});
        },
        parent);
    fold->setSignature([&document, &view] {
        QStringList words{QString::number(view.case_index)};
        for (const LoadCase& load_case : document.shown().duty.load_cases)
            words << QString::fromStdString(load_case.id.value) + QLatin1Char('=') + caseName(load_case);
        return words.join(QLatin1Char('|'));
    });
    return fold;
}

PanelFold* ownRequirementsFold(Document& document, QWidget* parent)
{
    auto* fold = new PanelFold(
        document, QStringLiteral("ownRequirements"), QObject::tr("Requirements of your own"),
        [&document](PanelFold& self) {
            const Arrangement& shown = document.shown();
            // Places that a requirement can be about.
            QStringList places;
            std::vector<std::string> ids;
            for (const Part& part : shown.parts) {
                places << subjectName(shown, pathOf(part.id));
                ids.push_back(part.id.value);
            }
            for (const Support& support : shown.supports) {
                places << subjectName(shown, pathOf(support.id));
                ids.push_back(support.id.value);
            }
            places << QObject::tr("a place x");
            ids.emplace_back();
            for (const Requirement& requirement : shown.requirements) {
                const RequirementId id = requirement.id;
                const std::string base = "requirements." + id.value + ".";
                Form* form = self.addForm();
                const auto find = [id](const Arrangement& a) -> const Requirement* {
                    for (const Requirement& r : a.requirements) {
                        if (r.id == id)
                            return &r;
                    }
                    return nullptr;
                };
                const auto changed = [id](const Arrangement& a, auto change) -> Result<Arrangement> {
                    Arrangement next = a;
                    for (Requirement& r : next.requirements) {
                        if (r.id == id)
                            change(r);
                    }
                    return next;
                };
                const bool at_place =
                    requirement.kind == RequirementKind::deflection_at || requirement.kind == RequirementKind::slope_at;
                form->choice({QObject::tr("At most"),
                              {QObject::tr("deflection"), QObject::tr("slope"), QObject::tr("life of all (at least)"),
                               QObject::tr("static safety (at least)")},
                              base + "kind",
                              [find](const Arrangement& a) {
                                  const Requirement* r = find(a);
                                  return r ? static_cast<int>(r->kind) : -1;
                              },
                              [changed](const Arrangement& a, int index) {
                                  return changed(a, [&](Requirement& r) { r.kind = static_cast<RequirementKind>(index); });
                              },
                              {}});
                if (at_place || requirement.kind == RequirementKind::static_safety) {
                    form->choice({QObject::tr("At"),
                                  places,
                                  base + "where",
                                  [find, ids](const Arrangement& a) {
                                      const Requirement* r = find(a);
                                      if (r == nullptr)
                                          return -1;
                                      for (std::size_t i = 0; i < ids.size(); ++i) {
                                          if (ids[i] == r->where)
                                              return static_cast<int>(i);
                                      }
                                      return -1;
                                  },
                                  [changed, ids](const Arrangement& a, int index) {
                                      return changed(a, [&](Requirement& r) {
                                          r.where = ids[static_cast<std::size_t>(index)];
                                          r.x_mm = r.where.empty() ? std::optional(a.shaft.length_mm() / 2.0) : std::nullopt;
                                      });
                                  },
                                  {}});
                    form->quantity({QObject::tr("Place x"),
                                    K::length_mm,
                                    base + "x_mm",
                                    [find](const Arrangement& a) -> std::optional<double> {
                                        const Requirement* r = find(a);
                                        return r ? r->x_mm : std::nullopt;
                                    },
                                    [changed](const Arrangement& a, std::optional<double> v) {
                                        return changed(a, [&](Requirement& r) { r.x_mm = v; });
                                    },
                                    false,
                                    {},
                                    {},
                                    [find](const Arrangement& a) {
                                        const Requirement* r = find(a);
                                        return r != nullptr && r->where.empty();
                                    }});
                }
                const K kind = requirement.kind == RequirementKind::deflection_at   ? K::length_mm
                               : requirement.kind == RequirementKind::slope_at      ? K::tilt_mrad
                               : requirement.kind == RequirementKind::static_safety ? K::number
                                                                                    : K::life_h;
                form->quantity({QObject::tr("Limit"),
                                kind,
                                base + "limit",
                                [find](const Arrangement& a) -> std::optional<double> {
                                    const Requirement* r = find(a);
                                    return r ? std::optional(r->limit) : std::nullopt;
                                },
                                [changed](const Arrangement& a, std::optional<double> v) {
                                    return changed(a, [&](Requirement& r) { r.limit = v.value_or(0.0); });
                                },
                                false,
                                {},
                                {}});
                form->words({QObject::tr("In your words"),
                             base + "text",
                             [find](const Arrangement& a) {
                                 const Requirement* r = find(a);
                                 return r ? QString::fromStdString(r->text) : QString();
                             },
                             [changed](const Arrangement& a, const QString& text) {
                                 return changed(a, [&](Requirement& r) { r.text = text.trimmed().toStdString(); });
                             },
                             true,
                             {},
                             {},
                             true});
                self.addButtons({{QObject::tr("Delete this one"), QStringLiteral("deleteRequirement"), [&document, id] {
                                      Arrangement next = document.committed();
                                      std::erase_if(next.requirements, [&](const Requirement& r) { return r.id == id; });
                                      document.push(std::move(next), QObject::tr("Delete requirement"));
                                  }}});
            }
            if (shown.requirements.empty())
                self.addLabel(QObject::tr("Limits of deflection, slope, life of all bearings together, static safety."));
            self.addButtons({{QObject::tr("Add"), QStringLiteral("addRequirement"), [&document] {
                                  Arrangement next = document.committed();
                                  Requirement requirement;
                                  requirement.id = freeRequirementId(next);
                                  requirement.limit = 0.05;
                                  if (!next.parts.empty())
                                      requirement.where = next.parts.front().id.value;
                                  else
                                      requirement.x_mm = next.shaft.length_mm() / 2.0;
                                  next.requirements.push_back(std::move(requirement));
                                  document.push(std::move(next), QObject::tr("Add requirement"));
                              }}});
        },
        parent);
    fold->setSignature([&document] {
        QStringList words;
        const Arrangement& shown = document.shown();
        for (const Requirement& requirement : shown.requirements)
            words << QString::fromStdString(requirement.id.value) + QString::number(static_cast<int>(requirement.kind));
        for (const Part& part : shown.parts)
            words << QString::fromStdString(part.id.value + part.name);
        for (const Support& support : shown.supports)
            words << QString::fromStdString(support.id.value + support.name);
        return words.join(QLatin1Char('|'));
    });
    return fold;
}

PanelFold* materialFold(Document& document, QWidget* parent)
{
    return new PanelFold(
        document, QStringLiteral("material"), QObject::tr("Shaft material"),
        [](PanelFold& self) {
            Form* form = self.addForm();
            QLineEdit* name = form->words({QObject::tr("Material"),
                                           "shaft.material.name",
                                           [](const Arrangement& a) { return QString::fromStdString(a.shaft.material.name); },
                                           [](const Arrangement& a, const QString& text) -> Result<Arrangement> {
                                               Arrangement next = a;
                                               next.shaft.material.name = text.trimmed().toStdString();
                                               return next;
                                           },
                                           true,
                                           {}});
            QStringList names;
            for (const std::string& known : materialNames())
                names << QString::fromStdString(known);
            auto* completer = new QCompleter(names, name);
            completer->setCaseSensitivity(Qt::CaseInsensitive);
            completer->setFilterMode(Qt::MatchContains);
            completer->setMaxVisibleItems(12);
            name->setCompleter(completer);
            name->setToolTip(QObject::tr("A name of the table (type a letter to see), or your own with free values below"));
            const auto value = [&](const QString& label, const char* key, std::optional<double> Material::*member,
                                   double SettledMaterial::*settled, double scale) {
                form->quantity({label, K::number, std::string("shaft.material.") + key,
                                [member, scale](const Arrangement& a) -> std::optional<double> {
                                    const auto& stated = a.shaft.material.*member;
                                    return stated ? std::optional(*stated * scale) : std::nullopt;
                                },
                                [member, scale](const Arrangement& a, std::optional<double> v) -> Result<Arrangement> {
                                    Arrangement next = a;
                                    next.shaft.material.*member = v ? std::optional(*v / scale) : std::nullopt;
                                    return next;
                                },
                                true,
                                [settled, scale](const Assessment& s) { return number(s.settled.material.*settled * scale, 4); },
                                QObject::tr("Empty: the value of the named material")});
            };
            value(QObject::tr("Young’s modulus E (MPa)"), "modulus_MPa", &Material::modulus_MPa, &SettledMaterial::modulus_MPa,
                  1.0);
            value(QObject::tr("Shear modulus G (MPa)"), "shear_modulus_MPa", &Material::shear_modulus_MPa,
                  &SettledMaterial::shear_modulus_MPa, 1.0);
            value(QObject::tr("Expansion (10⁻⁶/K)"), "expansion_per_K", &Material::expansion_per_K,
                  &SettledMaterial::expansion_per_K, 1e6);
            value(QObject::tr("Density (kg/m³)"), "density_kg_m3", &Material::density_kg_m3, &SettledMaterial::density_kg_m3,
                  1.0);
            form->quantity(optionalRow(
                QObject::tr("Surface hardness (HRC)"), K::number, "shaft.surface_hardness_HRC",
                [](Arrangement& a) -> std::optional<double>& { return a.shaft.surface_hardness_HRC; }, {},
                QObject::tr("Where needles run on the shaft itself")));
        },
        parent);
}

PanelFold* surroundingsFold(Document& document, QWidget* parent)
{
    return new PanelFold(
        document, QStringLiteral("surroundings"), QObject::tr("More of the surroundings"),
        [](PanelFold& self) {
            Form* form = self.addForm();
            const QStringList no_yes{QObject::tr("no"), QObject::tr("yes")};
            form->quantity(optionalRow(QObject::tr("Assembly temperature"), K::temperature_C, "surroundings.assembly_C",
                                       [](Arrangement& a) -> std::optional<double>& { return a.surroundings.assembly_C; }));
            form->quantity(optionalRow(
                QObject::tr("Viscosity grade ISO VG"), K::number, "surroundings.viscosity_grade",
                [](Arrangement& a) -> std::optional<double>& { return a.surroundings.viscosity_grade; },
                QObject::tr("not stated")));
            form->choice(optionalChoice<bool>(
                QObject::tr("Moist"), no_yes, "surroundings.moist",
                [](Arrangement& a) -> std::optional<bool>& { return a.surroundings.moist; },
                [](const Settled& s) { return s.moist ? 1 : 0; }));
            form->choice(optionalChoice<StiffnessWish>(
                QObject::tr("Stiff bearings wanted"),
                {QObject::tr("no"), QObject::tr("radially"), QObject::tr("axially"), QObject::tr("both")},
                "surroundings.stiffness_wish",
                [](Arrangement& a) -> std::optional<StiffnessWish>& { return a.surroundings.stiffness_wish; },
                [](const Settled& s) { return static_cast<int>(s.stiffness_wish); }));
            form->choice(optionalChoice<Motion>(
                QObject::tr("Motion"), {QObject::tr("turns"), QObject::tr("swings"), QObject::tr("slides")},
                "surroundings.motion", [](Arrangement& a) -> std::optional<Motion>& { return a.surroundings.motion; },
                [](const Settled& s) { return static_cast<int>(s.motion); }));
            const auto swings = [](const Arrangement& a) { return a.surroundings.motion == Motion::oscillation; };
            form->quantity(optionalRow(
                QObject::tr("Swing, to and fro"), K::angle_deg, "surroundings.swing_deg",
                [](Arrangement& a) -> std::optional<double>& { return a.surroundings.swing_deg; }, QObject::tr("not stated"), {},
                swings));
            form->quantity(optionalRow(
                QObject::tr("Swings a minute"), K::number, "surroundings.swings_per_min",
                [](Arrangement& a) -> std::optional<double>& { return a.surroundings.swings_per_min; }, QObject::tr("not stated"),
                {}, swings));
            form->choice(optionalChoice<bool>(
                QObject::tr("Rings must come apart"), no_yes, "surroundings.separable_wanted",
                [](Arrangement& a) -> std::optional<bool>& { return a.surroundings.separable_wanted; },
                [](const Settled& s) { return s.separable_wanted ? 1 : 0; }));
        },
        parent);
}

PanelFold* suggestionsFold(Document& document, QWidget* parent)
{
    return new PanelFold(
        document, QStringLiteral("suggestions"), QObject::tr("What counts in suggestions"),
        [](PanelFold& self) {
            Form* form = self.addForm();
            const QStringList no_yes{QObject::tr("no"), QObject::tr("yes")};
            // Names of the weight sets as the file spells them.
            const std::vector<std::string> profiles{"general_gearbox", "precision_spindle", "conveyor",     "electric_motor",
                                                    "pump_fan",        "vehicle",           "agricultural", "low_friction"};
            const QStringList names{QObject::tr("general gearbox"), QObject::tr("precise spindle"), QObject::tr("conveyor"),
                                    QObject::tr("electric motor"),  QObject::tr("pump, fan"),       QObject::tr("vehicle"),
                                    QObject::tr("farm machine"),    QObject::tr("low friction")};
            form->choice({QObject::tr("Weights for a"),
                          names,
                          "surroundings.profile",
                          [profiles](const Arrangement& a) {
                              if (!a.surroundings.profile)
                                  return -1;
                              for (std::size_t i = 0; i < profiles.size(); ++i) {
                                  if (profiles[i] == *a.surroundings.profile)
                                      return static_cast<int>(i);
                              }
                              return -1;
                          },
                          [profiles](const Arrangement& a, int index) -> Result<Arrangement> {
                              Arrangement next = a;
                              next.surroundings.profile =
                                  index < 0 ? std::nullopt : std::optional(profiles[static_cast<std::size_t>(index)]);
                              return next;
                          },
                          [](const Assessment& s) {
                              return QString::fromStdString(s.settled.profile).replace(QLatin1Char('_'), QLatin1Char(' '));
                          },
                          {},
                          true});
            form->choice(optionalChoice<bool>(
                QObject::tr("Plain bearings too"), no_yes, "surroundings.allow_plain",
                [](Arrangement& a) -> std::optional<bool>& { return a.surroundings.allow_plain; },
                [](const Settled& s) { return s.allow_plain ? 1 : 0; }));
            form->choice(optionalChoice<bool>(
                QObject::tr("Special types too"), no_yes, "surroundings.allow_special",
                [](Arrangement& a) -> std::optional<bool>& { return a.surroundings.allow_special; },
                [](const Settled& s) { return s.allow_special ? 1 : 0; }));
            const std::pair<const char*, QString> criteria[] = {
                {"life", QObject::tr("Life")},     {"static", QObject::tr("Static safety")}, {"axial", QObject::tr("Axial load")},
                {"tilt", QObject::tr("Tilt")},     {"speed", QObject::tr("Speed")},          {"stiff", QObject::tr("Stiffness")},
                {"fric", QObject::tr("Friction")}, {"space", QObject::tr("Space")},          {"mount", QObject::tr("Mounting")},
                {"cost", QObject::tr("Cost")},     {"noise", QObject::tr("Quiet running")},  {"seal", QObject::tr("Sealing")}};
            for (const auto& [key, label] : criteria) {
                const std::string name = key;
                form->quantity({label, K::number, "surroundings.weights." + name,
                                [name](const Arrangement& a) -> std::optional<double> {
                                    const auto found = a.surroundings.weights.find(name);
                                    return found == a.surroundings.weights.end() ? std::nullopt : std::optional(found->second);
                                },
                                [name](const Arrangement& a, std::optional<double> v) -> Result<Arrangement> {
                                    Arrangement next = a;
                                    if (v)
                                        next.surroundings.weights[name] = *v;
                                    else
                                        next.surroundings.weights.erase(name);
                                    return next;
                                },
                                true, [](const Assessment&) { return QObject::tr("of the set"); },
                                QObject::tr("Weight of this criterion; 0 leaves it out")});
            }
        },
        parent);
}

PanelFold* methodFold(Document& document, QWidget* parent)
{
    return new PanelFold(
        document, QStringLiteral("method"), QObject::tr("Method"),
        [](PanelFold& self) {
            Form* form = self.addForm();
            form->choice(optionalChoice<bool>(
                QObject::tr("Own weight of the shaft"), {QObject::tr("left out"), QObject::tr("counts")}, "options.own_weight",
                [](Arrangement& a) -> std::optional<bool>& { return a.options.own_weight; },
                [](const Settled& s) { return s.own_weight ? 1 : 0; }));
            form->choice(optionalChoice<ShearModel>(
                QObject::tr("Shear correction"),
                {QObject::tr("Cowper"), QObject::tr("Hutchinson"), QObject::tr("0.9"), QObject::tr("no shear")},
                "options.shear_factor", [](Arrangement& a) -> std::optional<ShearModel>& { return a.options.shear_factor; },
                [](const Settled& s) { return static_cast<int>(s.shear_factor); }));
            form->choice(optionalChoice<bool>(
                QObject::tr("Shoulders give way"), {QObject::tr("no"), QObject::tr("yes")}, "options.shoulder_flexibility",
                [](Arrangement& a) -> std::optional<bool>& { return a.options.shoulder_flexibility; },
                [](const Settled& s) { return s.shoulder_flexibility ? 1 : 0; },
                QObject::tr("A steep shoulder bends more than a beam of full diameter")));
            form->choice(optionalChoice<InducedLoadRule>(
                QObject::tr("Induced axial load"), {QStringLiteral("e · Fr"), QStringLiteral("Fr / (2 Y)")},
                "options.induced_load", [](Arrangement& a) -> std::optional<InducedLoadRule>& { return a.options.induced_load; },
                [](const Settled& s) { return static_cast<int>(s.induced_load); },
                QObject::tr("Of angular contact ball bearings")));
        },
        parent);
}

} // namespace shaftwright::ui
