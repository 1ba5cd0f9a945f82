#include "ui/panels/part_panel.h"

#include "core/edit/edit.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/widgets/number_text.h"

#include <QVBoxLayout>

#include <cmath>

namespace shaftwright::ui
{

namespace
{

/// A copy of the part with one thing changed.
template <class Change> Result<Arrangement> changed(const Arrangement& arrangement, const PartId& id, Change change)
{
    const Part* found = findPart(arrangement, id);
    if (found == nullptr)
        return arrangement;
    Part part = *found;
    change(part);
    return setPart(arrangement, std::move(part));
}

template <class Body> const Body* bodyOf(const Arrangement& arrangement, const PartId& id)
{
    const Part* part = findPart(arrangement, id);
    return part == nullptr ? nullptr : std::get_if<Body>(&part->body);
}

/// Rows for members of one kind of body.
template <class Body> class BodyRows
{
public:
    BodyRows(Form& form, PartId id, std::string base) : m_form(form), m_id(std::move(id)), m_base(std::move(base)) {}

    void number(const QString& label, QuantityKind kind, const char* key, double Body::*member, const QString& tip = {})
    {
        m_form.quantity({label,
                         kind,
                         m_base + key,
                         [id = m_id, member](const Arrangement& a) -> std::optional<double> {
                             const Body* body = bodyOf<Body>(a, id);
                             return body == nullptr ? std::optional<double>{} : std::optional<double>{body->*member};
                         },
                         [id = m_id, member](const Arrangement& a, std::optional<double> value) {
                             return changed(a, id, [&](Part& part) { std::get<Body>(part.body).*member = value.value_or(0.0); });
                         },
                         false,
                         {},
                         tip});
    }
    void open(const QString& label, QuantityKind kind, const char* key, std::optional<double> Body::*member,
              const QString& open_text, const QString& tip = {})
    {
        m_form.quantity({label, kind, m_base + key,
                         [id = m_id, member](const Arrangement& a) -> std::optional<double> {
                             const Body* body = bodyOf<Body>(a, id);
                             return body == nullptr ? std::optional<double>{} : body->*member;
                         },
                         [id = m_id, member](const Arrangement& a, std::optional<double> value) {
                             return changed(a, id, [&](Part& part) { std::get<Body>(part.body).*member = value; });
                         },
                         true, [open_text](const Assessment&) { return open_text; }, tip});
    }
    void count(const QString& label, const char* key, int Body::*member)
    {
        m_form.quantity({label,
                         QuantityKind::number,
                         m_base + key,
                         [id = m_id, member](const Arrangement& a) -> std::optional<double> {
                             const Body* body = bodyOf<Body>(a, id);
                             return body == nullptr ? std::optional<double>{} : std::optional<double>{body->*member};
                         },
                         [id = m_id, member](const Arrangement& a, std::optional<double> value) {
                             return changed(a, id, [&](Part& part) {
                                 std::get<Body>(part.body).*member = static_cast<int>(std::lround(value.value_or(0.0)));
                             });
                         },
                         false,
                         {},
                         {}});
    }
    template <class Enum> void choice(const QString& label, const char* key, const QStringList& words, Enum Body::*member)
    {
        m_form.choice({label,
                       words,
                       m_base + key,
                       [id = m_id, member](const Arrangement& a) {
                           const Body* body = bodyOf<Body>(a, id);
                           return body == nullptr ? -1 : static_cast<int>(body->*member);
                       },
                       [id = m_id, member](const Arrangement& a, int index) {
                           return changed(a, id,
                                          [&](Part& part) { std::get<Body>(part.body).*member = static_cast<Enum>(index); });
                       },
                       {}});
    }

private:
    Form& m_form;
    PartId m_id;
    std::string m_base;
};

} // namespace

PartPanel::PartPanel(Document& document, PartId id) : m_document(document), m_id(std::move(id))
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
    buildBody();
    const Part* part = findPart(m_document.shown(), m_id);
    if (part != nullptr && part->drive) {
        column->addWidget(new PanelRule(this));
        column->addWidget(new PanelLabel(PanelLabel::Look::head, tr("Torque"), this));
        m_drive = new Form(m_document, this);
        column->addWidget(m_drive);
        buildDrive();
    }
    column->addWidget(new PanelRule(this));
    m_load_head = new PanelLabel(PanelLabel::Look::head, tr("What it does to the shaft"), this);
    column->addWidget(m_load_head);
    m_derivation = new DerivationView(this);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    m_derivation->setSizePolicy(policy);
    column->addWidget(m_derivation);
    column->addStretch(1);
}

void PartPanel::buildBody()
{
    const std::string base = "parts." + m_id.value + ".";
    const PartId id = m_id;
    m_form->words({tr("Name"),
                   base + "name",
                   [id](const Arrangement& a) {
                       const Part* p = findPart(a, id);
                       return p ? QString::fromStdString(p->name) : QString();
                   },
                   [id](const Arrangement& a, const QString& text) {
                       return changed(a, id, [&](Part& part) { part.name = text.trimmed().toStdString(); });
                   },
                   true,
                   {}});
    m_form->quantity({tr("Place"),
                      QuantityKind::length_mm,
                      base + "x_mm",
                      [id](const Arrangement& a) {
                          const Part* p = findPart(a, id);
                          return p ? std::optional(p->x_mm) : std::nullopt;
                      },
                      [id](const Arrangement& a, std::optional<double> v) { return movePart(a, id, v.value_or(0.0)); },
                      false,
                      {},
                      tr("Middle of the face width, from the left end of the shaft")});
    const Part* part = findPart(m_document.shown(), m_id);
    if (part == nullptr)
        return;
    const QStringList hands{tr("none"), tr("right"), tr("left")};
    using K = QuantityKind;
    if (std::holds_alternative<CylindricalGear>(part->body)) {
        BodyRows<CylindricalGear> rows(*m_form, id, base);
        rows.count(tr("Teeth"), "teeth", &CylindricalGear::teeth);
        rows.number(tr("Normal module"), K::length_mm, "normal_module_mm", &CylindricalGear::normal_module_mm);
        rows.number(tr("Helix angle"), K::angle_deg, "helix_deg", &CylindricalGear::helix_deg, tr("0: spur gear"));
        rows.choice(tr("Hand of helix"), "hand", hands, &CylindricalGear::hand);
        rows.number(tr("Face width"), K::length_mm, "face_width_mm", &CylindricalGear::face_width_mm);
        rows.number(tr("Direction of mesh"), K::angle_deg, "mesh_angle_deg", &CylindricalGear::mesh_angle_deg,
                    tr("Seen from the right end: 0° to the right, 90° up"));
        rows.open(tr("Pressure angle"), K::angle_deg, "pressure_angle_deg", &CylindricalGear::pressure_angle_deg,
                  QStringLiteral("20"));
        rows.open(tr("Working diameter"), K::length_mm, "working_diameter_mm", &CylindricalGear::working_diameter_mm,
                  tr("as pitch"));
    } else if (std::holds_alternative<BevelGear>(part->body)) {
        BodyRows<BevelGear> rows(*m_form, id, base);
        rows.count(tr("Teeth"), "teeth", &BevelGear::teeth);
        rows.number(tr("Outer module"), K::length_mm, "outer_module_mm", &BevelGear::outer_module_mm);
        rows.number(tr("Pitch cone angle"), K::angle_deg, "cone_angle_deg", &BevelGear::cone_angle_deg);
        rows.number(tr("Spiral angle"), K::angle_deg, "spiral_deg", &BevelGear::spiral_deg, tr("0: straight teeth"));
        rows.choice(tr("Hand of spiral"), "hand", hands, &BevelGear::hand);
        rows.choice(tr("Apex lies"), "apex", {tr("to the right"), tr("to the left")}, &BevelGear::apex);
        rows.number(tr("Face width"), K::length_mm, "face_width_mm", &BevelGear::face_width_mm);
        rows.number(tr("Direction of mesh"), K::angle_deg, "mesh_angle_deg", &BevelGear::mesh_angle_deg);
        rows.open(tr("Pressure angle"), K::angle_deg, "pressure_angle_deg", &BevelGear::pressure_angle_deg, QStringLiteral("20"));
        rows.open(tr("Mean diameter"), K::length_mm, "mean_diameter_mm", &BevelGear::mean_diameter_mm, tr("computed"));
    } else if (std::holds_alternative<Worm>(part->body)) {
        BodyRows<Worm> rows(*m_form, id, base);
        rows.count(tr("Starts"), "starts", &Worm::starts);
        rows.number(tr("Axial module"), K::length_mm, "axial_module_mm", &Worm::axial_module_mm);
        rows.number(tr("Reference diameter"), K::length_mm, "reference_diameter_mm", &Worm::reference_diameter_mm);
        rows.choice(tr("Hand"), "hand", hands, &Worm::hand);
        rows.number(tr("Threaded length"), K::length_mm, "face_width_mm", &Worm::face_width_mm);
        rows.number(tr("Direction of mesh"), K::angle_deg, "mesh_angle_deg", &Worm::mesh_angle_deg);
        rows.open(tr("Friction"), K::number, "friction", &Worm::friction, tr("by speed"));
    } else if (std::holds_alternative<WormWheel>(part->body)) {
        BodyRows<WormWheel> rows(*m_form, id, base);
        rows.count(tr("Teeth"), "teeth", &WormWheel::teeth);
        rows.number(tr("Reference diameter"), K::length_mm, "reference_diameter_mm", &WormWheel::reference_diameter_mm);
        rows.number(tr("Lead angle of worm"), K::angle_deg, "lead_angle_deg", &WormWheel::lead_angle_deg);
        rows.choice(tr("Hand"), "hand", hands, &WormWheel::hand);
        rows.number(tr("Face width"), K::length_mm, "face_width_mm", &WormWheel::face_width_mm);
        rows.number(tr("Direction of mesh"), K::angle_deg, "mesh_angle_deg", &WormWheel::mesh_angle_deg);
        rows.open(tr("Friction"), K::number, "friction", &WormWheel::friction, tr("by speed"));
    } else if (std::holds_alternative<BeltPulley>(part->body)) {
        BodyRows<BeltPulley> rows(*m_form, id, base);
        rows.choice(tr("Belt"), "kind", {tr("flat"), tr("V"), tr("ribbed"), tr("toothed")}, &BeltPulley::kind);
        rows.number(tr("Pitch diameter"), K::length_mm, "diameter_mm", &BeltPulley::diameter_mm);
        rows.number(tr("Other pulley"), K::length_mm, "other_diameter_mm", &BeltPulley::other_diameter_mm);
        rows.number(tr("Centre distance"), K::length_mm, "centre_distance_mm", &BeltPulley::centre_distance_mm);
        rows.number(tr("Direction of belt"), K::angle_deg, "direction_deg", &BeltPulley::direction_deg,
                    tr("From this axis to the other, seen from the right end: 0° to the right, 90° up"));
        rows.number(tr("Face width"), K::length_mm, "face_width_mm", &BeltPulley::face_width_mm);
        rows.count(tr("Grooves"), "grooves", &BeltPulley::grooves);
        m_form->quantity({tr("Shaft force over useful force"),
                          K::number,
                          base + "tension",
                          [id](const Arrangement& a) -> std::optional<double> {
                              const BeltPulley* body = bodyOf<BeltPulley>(a, id);
                              if (body == nullptr || !body->tension)
                                  return std::nullopt;
                              const auto* factor = std::get_if<TensionFactor>(&*body->tension);
                              return factor == nullptr ? std::nullopt : std::optional(factor->force_over_useful);
                          },
                          [id](const Arrangement& a, std::optional<double> value) {
                              return changed(a, id, [&](Part& p) {
                                  std::get<BeltPulley>(p.body).tension =
                                      value ? std::optional<BeltTension>(TensionFactor{*value}) : std::nullopt;
                              });
                          },
                          true,
                          [](const Assessment&) { return tr("by belt"); },
                          {}});
    } else if (std::holds_alternative<ChainSprocket>(part->body)) {
        BodyRows<ChainSprocket> rows(*m_form, id, base);
        rows.count(tr("Teeth"), "teeth", &ChainSprocket::teeth);
        rows.number(tr("Pitch"), K::length_mm, "pitch_mm", &ChainSprocket::pitch_mm);
        rows.count(tr("Teeth of the other"), "other_teeth", &ChainSprocket::other_teeth);
        rows.number(tr("Centre distance"), K::length_mm, "centre_distance_mm", &ChainSprocket::centre_distance_mm);
        rows.number(tr("Direction of chain"), K::angle_deg, "direction_deg", &ChainSprocket::direction_deg);
        rows.number(tr("Face width"), K::length_mm, "face_width_mm", &ChainSprocket::face_width_mm);
        rows.open(tr("Force factor"), K::number, "force_factor", &ChainSprocket::force_factor, QStringLiteral("1.05"));
    } else if (std::holds_alternative<Coupling>(part->body)) {
        BodyRows<Coupling> rows(*m_form, id, base);
        rows.number(tr("Outside diameter"), K::length_mm, "outer_mm", &Coupling::outer_mm);
        rows.number(tr("Length on the shaft"), K::length_mm, "length_mm", &Coupling::length_mm);
        rows.open(tr("Radial force"), K::force_N, "radial_force_N", &Coupling::radial_force_N, tr("none"),
                  tr("Restoring force of a misaligned coupling"));
        rows.open(tr("Axial force"), K::force_N, "axial_force_N", &Coupling::axial_force_N, tr("none"),
                  tr("Positive to the right"));
        rows.open(tr("Bending moment"), K::moment_Nmm, "bending_moment_Nmm", &Coupling::bending_moment_Nmm, tr("none"));
    } else if (std::holds_alternative<Impeller>(part->body)) {
        BodyRows<Impeller> rows(*m_form, id, base);
        rows.number(tr("Thrust"), K::force_N, "thrust_N", &Impeller::thrust_N, tr("Positive to the right"));
        rows.number(tr("Force along y"), K::force_N, "radial_y_N", &Impeller::radial_y_N);
        rows.number(tr("Force along z"), K::force_N, "radial_z_N", &Impeller::radial_z_N);
        rows.number(tr("Thrust off axis, y"), K::length_mm, "offset_y_mm", &Impeller::offset_y_mm);
        rows.number(tr("Thrust off axis, z"), K::length_mm, "offset_z_mm", &Impeller::offset_z_mm);
        rows.open(tr("Force turning along"), K::force_N, "rotating_radial_N", &Impeller::rotating_radial_N, tr("none"));
        rows.number(tr("Outside diameter"), K::length_mm, "outer_mm", &Impeller::outer_mm);
        rows.number(tr("Width"), K::length_mm, "width_mm", &Impeller::width_mm);
    } else if (std::holds_alternative<WeightBody>(part->body)) {
        BodyRows<WeightBody> rows(*m_form, id, base);
        rows.number(tr("Outside diameter"), K::length_mm, "outer_mm", &WeightBody::outer_mm);
        rows.number(tr("Width"), K::length_mm, "width_mm", &WeightBody::width_mm);
        m_form->quantity({tr("Balance grade G"), K::number, base + "unbalance",
                          [id](const Arrangement& a) -> std::optional<double> {
                              const WeightBody* body = bodyOf<WeightBody>(a, id);
                              const auto* grade = body == nullptr ? nullptr : std::get_if<BalanceGrade>(&body->unbalance);
                              return grade == nullptr ? std::nullopt : std::optional(grade->mm_s);
                          },
                          [id](const Arrangement& a, std::optional<double> value) {
                              return changed(a, id, [&](Part& p) {
                                  std::get<WeightBody>(p.body).unbalance = value ? Unbalance(BalanceGrade{*value}) : Unbalance();
                              });
                          },
                          true, [](const Assessment&) { return tr("balanced"); }, tr("ISO 21940-11, mm/s")});
    } else if (std::holds_alternative<PointLoad>(part->body)) {
        const auto component = [&](const QString& label, QuantityKind kind, const char* key, Vector3 PointLoad::*vector,
                                   double Vector3::*axis) {
            m_form->quantity({label,
                              kind,
                              base + key,
                              [id, vector, axis](const Arrangement& a) -> std::optional<double> {
                                  const PointLoad* body = bodyOf<PointLoad>(a, id);
                                  return body == nullptr ? std::nullopt : std::optional((body->*vector).*axis);
                              },
                              [id, vector, axis](const Arrangement& a, std::optional<double> value) {
                                  return changed(
                                      a, id, [&](Part& p) { (std::get<PointLoad>(p.body).*vector).*axis = value.value_or(0.0); });
                              },
                              false,
                              {},
                              {}});
        };
        component(tr("Force along x"), K::force_N, "force_N.x", &PointLoad::force_N, &Vector3::x);
        component(tr("Force along y"), K::force_N, "force_N.y", &PointLoad::force_N, &Vector3::y);
        component(tr("Force along z"), K::force_N, "force_N.z", &PointLoad::force_N, &Vector3::z);
        component(tr("Moment about x"), K::moment_Nmm, "moment_Nmm.x", &PointLoad::moment_Nmm, &Vector3::x);
        component(tr("Moment about y"), K::moment_Nmm, "moment_Nmm.y", &PointLoad::moment_Nmm, &Vector3::y);
        component(tr("Moment about z"), K::moment_Nmm, "moment_Nmm.z", &PointLoad::moment_Nmm, &Vector3::z);
        m_form->choice({tr("Turns with the shaft"),
                        {tr("no"), tr("yes")},
                        base + "rotating",
                        [id](const Arrangement& a) {
                            const PointLoad* body = bodyOf<PointLoad>(a, id);
                            return body == nullptr ? -1 : (body->rotating ? 1 : 0);
                        },
                        [id](const Arrangement& a, int index) {
                            return changed(a, id, [&](Part& p) { std::get<PointLoad>(p.body).rotating = index == 1; });
                        },
                        {}});
    } else if (std::holds_alternative<DistributedLoad>(part->body)) {
        BodyRows<DistributedLoad> rows(*m_form, id, base);
        rows.number(tr("Ends at"), K::length_mm, "end_mm", &DistributedLoad::end_mm);
        const auto component = [&](const QString& label, const char* key, Vector3 DistributedLoad::*vector,
                                   double Vector3::*axis) {
            m_form->quantity({label,
                              K::line_load_N_per_mm,
                              base + key,
                              [id, vector, axis](const Arrangement& a) -> std::optional<double> {
                                  const DistributedLoad* body = bodyOf<DistributedLoad>(a, id);
                                  return body == nullptr ? std::nullopt : std::optional((body->*vector).*axis);
                              },
                              [id, vector, axis](const Arrangement& a, std::optional<double> value) {
                                  return changed(a, id, [&](Part& p) {
                                      (std::get<DistributedLoad>(p.body).*vector).*axis = value.value_or(0.0);
                                  });
                              },
                              false,
                              {},
                              {}});
        };
        component(tr("Along z, at its start"), "start_N_per_mm.z", &DistributedLoad::start_N_per_mm, &Vector3::z);
        component(tr("Along z, at its end"), "end_N_per_mm.z", &DistributedLoad::end_N_per_mm, &Vector3::z);
        component(tr("Along y, at its start"), "start_N_per_mm.y", &DistributedLoad::start_N_per_mm, &Vector3::y);
        component(tr("Along y, at its end"), "end_N_per_mm.y", &DistributedLoad::end_N_per_mm, &Vector3::y);
    }
    if (!std::holds_alternative<PointLoad>(part->body) && !std::holds_alternative<DistributedLoad>(part->body)) {
        m_form->quantity(
            {tr("Mass"),
             K::mass_kg,
             base + "mass_kg",
             [id](const Arrangement& a) {
                 const Part* p = findPart(a, id);
                 return p ? p->mass_kg : std::nullopt;
             },
             [id](const Arrangement& a, std::optional<double> v) { return changed(a, id, [&](Part& p) { p.mass_kg = v; }); },
             true,
             [](const Assessment&) { return tr("not counted"); },
             {}});
    }
}

void PartPanel::buildDrive()
{
    const std::string base = "parts." + m_id.value + ".drive.";
    const PartId id = m_id;
    m_drive->choice({tr("Power"),
                     {tr("it gives away"), tr("it takes in")},
                     base + "power",
                     [id](const Arrangement& a) {
                         const Part* p = findPart(a, id);
                         return p && p->drive ? static_cast<int>(p->drive->power) : -1;
                     },
                     [id](const Arrangement& a, int index) {
                         return changed(a, id, [&](Part& p) { p.drive->power = static_cast<PowerSense>(index); });
                     },
                     {}});
    m_drive->choice({tr("Stated as"),
                     {tr("power"), tr("torque"), tr("what remains")},
                     base + "stated",
                     [id](const Arrangement& a) {
                         const Part* p = findPart(a, id);
                         if (!p || !p->drive)
                             return -1;
                         return p->drive->takes_remaining ? 2 : (p->drive->torque_Nmm ? 1 : 0);
                     },
                     [id](const Arrangement& a, int index) {
                         return changed(a, id, [&](Part& p) {
                             Drive& drive = *p.drive;
                             drive.takes_remaining = index == 2;
                             if (index == 0)
                                 drive.power_kW = drive.power_kW.value_or(1.0);
                             else
                                 drive.power_kW.reset();
                             if (index == 1)
                                 drive.torque_Nmm = drive.torque_Nmm.value_or(10000.0);
                             else
                                 drive.torque_Nmm.reset();
                         });
                     },
                     {}});
    m_drive->quantity({tr("Power"),
                       QuantityKind::power_kW,
                       base + "power_kW",
                       [id](const Arrangement& a) {
                           const Part* p = findPart(a, id);
                           return p && p->drive ? p->drive->power_kW : std::nullopt;
                       },
                       [id](const Arrangement& a, std::optional<double> v) {
                           return changed(a, id, [&](Part& p) {
                               p.drive->power_kW = v;
                               if (v) {
                                   p.drive->torque_Nmm.reset();
                                   p.drive->takes_remaining = false;
                               }
                           });
                       },
                       true,
                       [](const Assessment&) { return tr("not so stated"); },
                       {}});
    m_drive->quantity({tr("Torque"),
                       QuantityKind::moment_Nmm,
                       base + "torque_Nmm",
                       [id](const Arrangement& a) {
                           const Part* p = findPart(a, id);
                           return p && p->drive ? p->drive->torque_Nmm : std::nullopt;
                       },
                       [id](const Arrangement& a, std::optional<double> v) {
                           return changed(a, id, [&](Part& p) {
                               p.drive->torque_Nmm = v;
                               if (v) {
                                   p.drive->power_kW.reset();
                                   p.drive->takes_remaining = false;
                               }
                           });
                       },
                       true,
                       [](const Assessment&) { return tr("not so stated"); },
                       {}});
}

void PartPanel::refresh()
{
    const Arrangement& shown = m_document.shown();
    const Part* part = findPart(shown, m_id);
    if (part == nullptr)
        return;
    m_title->setText(part->name.empty() ? kindName(*part) : QString::fromStdString(part->name));
    m_title->setAside(part->name.empty() ? QString::fromStdString(part->id.value) : kindName(*part));
    Findings mine;
    for (const Finding& finding : m_document.assessment().findings) {
        if (finding.subject == m_id.value)
            mine.push_back(finding);
    }
    if (mine != m_shown_findings) {
        m_shown_findings = mine;
        qDeleteAll(m_findings->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly));
        for (const Finding& finding : mine) {
            auto* box = new FindingBox(finding, {}, m_findings);
            m_findings->layout()->addWidget(box);
            box->show();
        }
    }
    m_findings->setVisible(!mine.empty());
    m_form->refresh();
    if (m_drive != nullptr)
        m_drive->refresh();
    Derivation steps;
    const Assessment& results = m_document.results();
    if (!results.loads.empty()) {
        for (const PartLoad& load : results.loads.front().parts) {
            if (load.part == m_id)
                steps.insert(steps.end(), load.derivation.begin(), load.derivation.end());
        }
        if (results.load_cases.size() > 1)
            m_load_head->setText(
                tr("What it does to the shaft, case %1").arg(QString::fromStdString(results.load_cases.front().name)));
    }
    m_derivation->setSteps(std::move(steps));
}

} // namespace shaftwright::ui
