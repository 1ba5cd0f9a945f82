#include "ui/panels/part_panel.h"

#include "core/edit/edit.h"
#include "core/loads/loads.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/widgets/number_text.h"

#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace shaftwright::ui
{

namespace
{

using K = QuantityKind;

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

    using Get = std::function<std::optional<double>(const Body&)>;
    using Set = std::function<void(Body&, std::optional<double>)>;
    using Seen = std::function<bool(const Body&)>;
    struct More {
        bool open = false;
        QString open_text = {}, tip = {};
        Seen seen = {};
    };

    QuantityField* row(const QString& label, QuantityKind kind, const char* key, Get get, Set set, More more = {})
    {
        std::function<QString(const Assessment&)> open_text;
        if (more.open)
            open_text = [text = more.open_text](const Assessment&) { return text; };
        return m_form.quantity({label, kind, m_base + key,
                                [id = m_id, get](const Arrangement& a) -> std::optional<double> {
                                    const Body* body = bodyOf<Body>(a, id);
                                    return body == nullptr ? std::nullopt : get(*body);
                                },
                                [id = m_id, set](const Arrangement& a, std::optional<double> value) {
                                    return changed(a, id, [&](Part& part) { set(std::get<Body>(part.body), value); });
                                },
                                more.open, open_text, more.tip, seen(more.seen)});
    }
    void number(const QString& label, QuantityKind kind, const char* key, double Body::*member, const QString& tip = {},
                Seen visible = {})
    {
        row(
            label, kind, key, [member](const Body& body) { return std::optional(body.*member); },
            [member](Body& body, std::optional<double> value) { body.*member = value.value_or(0.0); },
            {false, {}, tip, std::move(visible)});
    }
    void open(const QString& label, QuantityKind kind, const char* key, std::optional<double> Body::*member,
              const QString& open_text, const QString& tip = {}, Seen visible = {})
    {
        row(
            label, kind, key, [member](const Body& body) { return body.*member; },
            [member](Body& body, std::optional<double> value) { body.*member = value; },
            {true, open_text, tip, std::move(visible)});
    }
    void count(const QString& label, const char* key, int Body::*member)
    {
        QuantityField* field = row(
            label, K::number, key, [member](const Body& body) { return std::optional<double>(body.*member); },
            [member](Body& body, std::optional<double> value) {
                body.*member = static_cast<int>(std::lround(value.value_or(0.0)));
            });
        field->setProperty("whole", true);
    }
    void openCount(const QString& label, const char* key, std::optional<int> Body::*member, const QString& open_text,
                   const QString& tip = {})
    {
        QuantityField* field = row(
            label, K::number, key,
            [member](const Body& body) {
                return body.*member ? std::optional<double>(*(body.*member)) : std::optional<double>{};
            },
            [member](Body& body, std::optional<double> value) {
                body.*member = value ? std::optional<int>(static_cast<int>(std::lround(*value))) : std::nullopt;
            },
            {true, open_text, tip, {}});
        field->setProperty("whole", true);
    }
    void pick(const QString& label, const char* key, const QStringList& words, std::function<int(const Body&)> get,
              std::function<void(Body&, int)> set, Seen visible = {}, const QString& tip = {})
    {
        m_form.choice({label,
                       words,
                       m_base + key,
                       [id = m_id, get](const Arrangement& a) {
                           const Body* body = bodyOf<Body>(a, id);
                           return body == nullptr ? -1 : get(*body);
                       },
                       [id = m_id, set](const Arrangement& a, int index) {
                           return changed(a, id, [&](Part& part) { set(std::get<Body>(part.body), index); });
                       },
                       {},
                       seen(std::move(visible)),
                       false,
                       tip});
    }
    template <class Enum> void choice(const QString& label, const char* key, const QStringList& words, Enum Body::*member)
    {
        pick(
            label, key, words, [member](const Body& body) { return static_cast<int>(body.*member); },
            [member](Body& body, int index) { body.*member = static_cast<Enum>(index); });
    }
    void yesNo(const QString& label, const char* key, const QStringList& words, bool Body::*member)
    {
        pick(
            label, key, words, [member](const Body& body) { return body.*member ? 1 : 0; },
            [member](Body& body, int index) { body.*member = index == 1; });
    }

private:
    std::function<bool(const Arrangement&)> seen(Seen visible) const
    {
        if (!visible)
            return {};
        return [id = m_id, visible = std::move(visible)](const Arrangement& a) {
            const Body* body = bodyOf<Body>(a, id);
            return body != nullptr && visible(*body);
        };
    }
    Form& m_form;
    PartId m_id;
    std::string m_base;
};

void gearRows(Form& form, const PartId& id, const std::string& base, const QStringList& hands)
{
    using B = CylindricalGear;
    BodyRows<B> rows(form, id, base);
    const auto helical = [](const B& gear) { return gear.helix_deg > 0.0; };
    rows.yesNo(QObject::tr("Teeth point"), "internal", {QObject::tr("outwards"), QObject::tr("inwards (ring gear)")},
               &B::internal);
    rows.count(QObject::tr("Teeth"), "teeth", &B::teeth);
    rows.number(QObject::tr("Normal module"), K::length_mm, "normal_module_mm", &B::normal_module_mm);
    rows.number(QObject::tr("Helix angle"), K::angle_deg, "helix_deg", &B::helix_deg, QObject::tr("0: spur gear"));
    rows.pick(
        QObject::tr("Hand of helix"), "hand", hands, [](const B& gear) { return static_cast<int>(gear.hand); },
        [](B& gear, int index) { gear.hand = static_cast<Hand>(index); }, helical);
    rows.pick(
        QObject::tr("Helix"), "double_helical", {QObject::tr("single"), QObject::tr("double")},
        [](const B& gear) { return gear.double_helical ? 1 : 0; }, [](B& gear, int index) { gear.double_helical = index == 1; },
        helical, QObject::tr("Double helical teeth: the axial forces of both halves cancel"));
    rows.number(QObject::tr("Face width"), K::length_mm, "face_width_mm", &B::face_width_mm);
    rows.number(QObject::tr("Direction of mesh"), K::angle_deg, "mesh_angle_deg", &B::mesh_angle_deg,
                QObject::tr("Seen from the right end: 0° to the right, 90° up"));
    rows.open(QObject::tr("Pressure angle"), K::angle_deg, "pressure_angle_deg", &B::pressure_angle_deg, QStringLiteral("20"));
    rows.openCount(QObject::tr("Teeth of the mate"), "mate_teeth", &B::mate_teeth, QObject::tr("open"),
                   QObject::tr("With the centre distance: working values of shifted gears"));
    rows.open(QObject::tr("Centre distance"), K::length_mm, "centre_distance_mm", &B::centre_distance_mm, QObject::tr("open"),
              QObject::tr("With the teeth of the mate"));
    rows.open(QObject::tr("Working diameter"), K::length_mm, "working_diameter_mm", &B::working_diameter_mm,
              QObject::tr("as pitch"), QObject::tr("Instead of mate and centre distance"));
}

void bevelRows(Form& form, const PartId& id, const std::string& base, const QStringList& hands)
{
    using B = BevelGear;
    BodyRows<B> rows(form, id, base);
    rows.count(QObject::tr("Teeth"), "teeth", &B::teeth);
    rows.number(QObject::tr("Outer module"), K::length_mm, "outer_module_mm", &B::outer_module_mm);
    rows.number(QObject::tr("Pitch cone angle"), K::angle_deg, "cone_angle_deg", &B::cone_angle_deg);
    rows.number(QObject::tr("Spiral angle"), K::angle_deg, "spiral_deg", &B::spiral_deg, QObject::tr("0: straight teeth"));
    rows.pick(
        QObject::tr("Hand of spiral"), "hand", hands, [](const B& gear) { return static_cast<int>(gear.hand); },
        [](B& gear, int index) { gear.hand = static_cast<Hand>(index); }, [](const B& gear) { return gear.spiral_deg > 0.0; });
    rows.choice(QObject::tr("Apex lies"), "apex", {QObject::tr("to the right"), QObject::tr("to the left")}, &B::apex);
    rows.number(QObject::tr("Face width"), K::length_mm, "face_width_mm", &B::face_width_mm, QObject::tr("Along the cone"));
    rows.number(QObject::tr("Direction of mesh"), K::angle_deg, "mesh_angle_deg", &B::mesh_angle_deg);
    rows.open(QObject::tr("Pressure angle"), K::angle_deg, "pressure_angle_deg", &B::pressure_angle_deg, QStringLiteral("20"));
    rows.open(QObject::tr("Mean diameter"), K::length_mm, "mean_diameter_mm", &B::mean_diameter_mm, QObject::tr("computed"),
              QObject::tr("Instead of teeth and module"));
    rows.open(QObject::tr("Cone angle of the mate"), K::angle_deg, "mate_cone_angle_deg", &B::mate_cone_angle_deg,
              QObject::tr("open"), QObject::tr("Only to check that both cones fit the shaft angle"));
    rows.open(QObject::tr("Shaft angle"), K::angle_deg, "shaft_angle_deg", &B::shaft_angle_deg, QStringLiteral("90"));
}

void beltRows(Form& form, Document& document, const PartId& id, const std::string& base)
{
    using B = BeltPulley;
    BodyRows<B> rows(form, id, base);
    rows.choice(QObject::tr("Belt"), "kind",
                {QObject::tr("flat"), QObject::tr("V"), QObject::tr("ribbed"), QObject::tr("toothed")}, &B::kind);
    rows.number(QObject::tr("Pitch diameter"), K::length_mm, "diameter_mm", &B::diameter_mm);
    rows.number(QObject::tr("Other pulley"), K::length_mm, "other_diameter_mm", &B::other_diameter_mm);
    rows.number(QObject::tr("Centre distance"), K::length_mm, "centre_distance_mm", &B::centre_distance_mm);
    rows.yesNo(QObject::tr("Belt runs"), "crossed", {QObject::tr("open"), QObject::tr("crossed")}, &B::crossed);
    rows.number(QObject::tr("Direction of belt"), K::angle_deg, "direction_deg", &B::direction_deg,
                QObject::tr("From this axis to the other, seen from the right end: 0° to the right, 90° up"));
    rows.number(QObject::tr("Face width"), K::length_mm, "face_width_mm", &B::face_width_mm);
    rows.count(QObject::tr("Grooves"), "grooves", &B::grooves);

    // The belt pull is stated in one of four ways, or left to the kind of belt.
    const auto way = [](const B& belt) { return belt.tension ? 1 + static_cast<int>(belt.tension->index()) : 0; };
    rows.pick(
        QObject::tr("Tension by"), "tension",
        {QObject::tr("kind of belt"), QObject::tr("force factor"), QObject::tr("strand ratio"), QObject::tr("pretension"),
         QObject::tr("both strands")},
        way, [&document, id](B& belt, int index) {
            // What is taken now is the start of another way of stating it.
            double force = 1000.0, useful = 500.0;
            for (const CaseLoads& loads : document.results().loads) {
                for (const PartLoad& load : loads.parts) {
                    if (load.part != id || belt.diameter_mm <= 0.0)
                        continue;
                    force = std::hypot(load.force_N.y, load.force_N.z);
                    useful = 2.0 * std::abs(load.torque_Nmm) / belt.diameter_mm;
                }
                break;
            }
            if (index == 0)
                belt.tension.reset();
            else if (index == 1)
                belt.tension = TensionFactor{};
            else if (index == 2)
                belt.tension = TensionRatio{};
            else if (index == 3)
                belt.tension = Pretension{std::round(force / 2.0), {}};
            else
                belt.tension = StrandForces{std::round((force + useful) / 2.0), std::round(std::max(0.0, force - useful) / 2.0)};
        });
    const auto in = [](auto want) {
        using Way = decltype(want);
        return [](const B& belt) { return belt.tension && std::holds_alternative<Way>(*belt.tension); };
    };
    const auto part = [&](const QString& label, QuantityKind kind, const char* key, auto want, auto member, const QString& tip) {
        using Way = decltype(want);
        rows.row(
            label, kind, key,
            [member](const B& belt) -> std::optional<double> {
                const auto* stated = belt.tension ? std::get_if<Way>(&*belt.tension) : nullptr;
                return stated == nullptr ? std::nullopt : std::optional<double>(stated->*member);
            },
            [member](B& belt, std::optional<double> value) {
                if (belt.tension) {
                    if (auto* stated = std::get_if<Way>(&*belt.tension))
                        stated->*member = value.value_or(0.0);
                }
            },
            {false, {}, tip, in(want)});
    };
    part(QObject::tr("Shaft force over useful force"), K::number, "tension.force_over_useful", TensionFactor{},
         &TensionFactor::force_over_useful, QObject::tr("Useful force: torque over the pitch radius"));
    part(QObject::tr("Tight over slack strand"), K::number, "tension.tight_over_slack", TensionRatio{},
         &TensionRatio::tight_over_slack, {});
    part(QObject::tr("Pretension of a strand"), K::force_N, "tension.strand_N", Pretension{}, &Pretension::strand_N,
         QObject::tr("At standstill"));
    rows.row(
        QObject::tr("Mass of the belt (kg/m)"), K::number, "tension.belt_mass_kg_m",
        [](const B& belt) -> std::optional<double> {
            const auto* stated = belt.tension ? std::get_if<Pretension>(&*belt.tension) : nullptr;
            return stated == nullptr ? std::nullopt : stated->belt_mass_kg_m;
        },
        [](B& belt, std::optional<double> value) {
            if (belt.tension) {
                if (auto* stated = std::get_if<Pretension>(&*belt.tension))
                    stated->belt_mass_kg_m = value;
            }
        },
        {true, QObject::tr("not counted"), QObject::tr("Its centrifugal force relieves the shaft"), in(Pretension{})});
    part(QObject::tr("Tight strand"), K::force_N, "tension.tight_N", StrandForces{}, &StrandForces::tight_N, {});
    part(QObject::tr("Slack strand"), K::force_N, "tension.slack_N", StrandForces{}, &StrandForces::slack_N, {});
    rows.open(QObject::tr("Friction of the belt"), K::number, "friction", &B::friction, QObject::tr("open"),
              QObject::tr("Only to check against slip"), [](const B& belt) { return belt.kind != BeltKind::toothed; });
    rows.open(QObject::tr("Groove angle"), K::angle_deg, "groove_deg", &B::groove_deg, QObject::tr("by belt"), {},
              [](const B& belt) { return belt.kind == BeltKind::v || belt.kind == BeltKind::ribbed; });
}

void couplingRows(Form& form, const PartId& id, const std::string& base)
{
    using B = Coupling;
    BodyRows<B> rows(form, id, base);
    rows.number(QObject::tr("Outside diameter"), K::length_mm, "outer_mm", &B::outer_mm);
    rows.number(QObject::tr("Length on the shaft"), K::length_mm, "length_mm", &B::length_mm);
    rows.open(QObject::tr("Radial force"), K::force_N, "radial_force_N", &B::radial_force_N, QObject::tr("none"),
              QObject::tr("Residual force of a flexible coupling that is misaligned"));
    const auto radial = [](const B& coupling) { return coupling.radial_force_N.has_value(); };
    rows.pick(
        QObject::tr("Its direction"), "radial_direction", {QObject::tr("worst everywhere"), QObject::tr("as given")},
        [](const B& coupling) { return static_cast<int>(coupling.radial_direction.index()); },
        [](B& coupling, int index) {
            coupling.radial_direction = index == 0 ? ForceDirection(WorstDirection{}) : ForceDirection(GivenDirection{});
        },
        radial, QObject::tr("Worst: at each support the direction that loads it most"));
    rows.row(
        QObject::tr("Direction"), K::angle_deg, "radial_direction.angle_deg",
        [](const B& coupling) -> std::optional<double> {
            const auto* given = std::get_if<GivenDirection>(&coupling.radial_direction);
            return given == nullptr ? std::nullopt : std::optional(given->angle_deg);
        },
        [](B& coupling, std::optional<double> value) { coupling.radial_direction = GivenDirection{value.value_or(0.0)}; },
        {false, {}, QObject::tr("Seen from the right end: 0° to the right, 90° up"), [](const B& coupling) {
             return coupling.radial_force_N.has_value() && std::holds_alternative<GivenDirection>(coupling.radial_direction);
         }});
    rows.open(QObject::tr("Axial force"), K::force_N, "axial_force_N", &B::axial_force_N, QObject::tr("none"),
              QObject::tr("Positive to the right"));
    rows.open(QObject::tr("Bending moment"), K::moment_Nmm, "bending_moment_Nmm", &B::bending_moment_Nmm, QObject::tr("none"),
              QObject::tr("From angular misalignment"));
    rows.open(QObject::tr("Axis of that moment"), K::angle_deg, "bending_moment_axis_deg", &B::bending_moment_axis_deg,
              QObject::tr("worst"), {}, [](const B& coupling) { return coupling.bending_moment_Nmm.has_value(); });
    rows.open(QObject::tr("Cardan joint: angle"), K::angle_deg, "joint_angle_deg", &B::joint_angle_deg, QObject::tr("no joint"),
              QObject::tr("Between this shaft and the other"));
    rows.open(QObject::tr("Joint leans towards"), K::angle_deg, "joint_direction_deg", &B::joint_direction_deg,
              QObject::tr("worst"), {}, [](const B& coupling) { return coupling.joint_angle_deg.has_value(); });
}

void weightRows(Form& form, const PartId& id, const std::string& base)
{
    using B = WeightBody;
    BodyRows<B> rows(form, id, base);
    rows.number(QObject::tr("Outside diameter"), K::length_mm, "outer_mm", &B::outer_mm);
    rows.number(QObject::tr("Width"), K::length_mm, "width_mm", &B::width_mm);
    rows.pick(
        QObject::tr("Unbalance by"), "unbalance",
        {QObject::tr("none"), QObject::tr("balance grade"), QObject::tr("mass times arm"), QObject::tr("eccentricity")},
        [](const B& weight) { return static_cast<int>(weight.unbalance.index()); },
        [](B& weight, int index) {
            if (index == 0)
                weight.unbalance = std::monostate{};
            else if (index == 1)
                weight.unbalance = BalanceGrade{};
            else if (index == 2)
                weight.unbalance = UnbalanceGmm{0.01};
            else
                weight.unbalance = MassEccentricity{0.05};
        });
    const auto part = [&](const QString& label, QuantityKind kind, const char* key, auto want, auto member, const QString& tip) {
        using Way = decltype(want);
        rows.row(
            label, kind, key,
            [member](const B& weight) -> std::optional<double> {
                const auto* stated = std::get_if<Way>(&weight.unbalance);
                return stated == nullptr ? std::nullopt : std::optional<double>(stated->*member);
            },
            [member](B& weight, std::optional<double> value) {
                Way stated;
                stated.*member = value.value_or(0.0);
                weight.unbalance = stated;
            },
            {false, {}, tip, [](const B& weight) { return std::holds_alternative<Way>(weight.unbalance); }});
    };
    part(QObject::tr("Grade G (mm/s)"), K::number, "unbalance.mm_s", BalanceGrade{}, &BalanceGrade::mm_s,
         QObject::tr("ISO 21940-11"));
    part(QObject::tr("Unbalance (kg mm)"), K::number, "unbalance.kg_mm", UnbalanceGmm{}, &UnbalanceGmm::kg_mm, {});
    part(QObject::tr("Eccentricity"), K::length_mm, "unbalance.mm", MassEccentricity{}, &MassEccentricity::mm,
         QObject::tr("Of the centre of mass from the shaft axis"));
}

/// Rows of a torque that is stated as power, as torque, or as what the others leave.
struct DriveRows {
    Form& form;
    Document& document;
    PartId id;
    std::string base;
    std::function<const Drive*(const Part&)> get; ///< null: takes no part in the torque flow
    std::function<Drive&(Part&)> set;             ///< makes one when there is none
    std::function<void(Part&)> drop;              ///< empty: it cannot go

    [[nodiscard]] const Drive* drive(const Arrangement& a) const
    {
        const Part* part = findPart(a, id);
        return part == nullptr ? nullptr : get(*part);
    }

    void build() const
    {
        const DriveRows self = *this;
        QStringList ways{QObject::tr("power"), QObject::tr("torque"), QObject::tr("what remains")};
        if (drop)
            ways << QObject::tr("no torque");
        form.choice({QObject::tr("Stated as"),
                     ways,
                     base + "stated",
                     [self](const Arrangement& a) {
                         const Drive* now = self.drive(a);
                         if (now == nullptr)
                             return 3;
                         return now->takes_remaining ? 2 : (now->torque_Nmm ? 1 : 0);
                     },
                     [self](const Arrangement& a, int index) {
                         // The same torque, stated otherwise: at the speed of the first case that turns.
                         double speed = 0.0;
                         for (const LoadCase& load_case : a.duty.load_cases) {
                             speed = std::abs(load_case.speed_rpm);
                             if (speed > 0.0)
                                 break;
                         }
                         const double torque_of_1kW = speed > 0.0 ? torque_Nmm(1.0, speed) : 0.0;
                         return changed(a, self.id, [&](Part& part) {
                             if (index == 3) {
                                 self.drop(part);
                                 return;
                             }
                             Drive& next = self.set(part);
                             const Drive before = next;
                             next.takes_remaining = index == 2;
                             next.power_kW.reset();
                             next.torque_Nmm.reset();
                             if (index == 0)
                                 next.power_kW = before.power_kW.value_or(
                                     before.torque_Nmm && torque_of_1kW > 0.0
                                         ? std::round(std::abs(*before.torque_Nmm) / torque_of_1kW * 1000.0) / 1000.0
                                         : 1.0);
                             else if (index == 1)
                                 next.torque_Nmm = before.torque_Nmm.value_or(before.power_kW && torque_of_1kW > 0.0
                                                                                  ? std::round(*before.power_kW * torque_of_1kW)
                                                                                  : 10000.0);
                         });
                     },
                     {}});
        form.choice({QObject::tr("Power"),
                     {QObject::tr("it gives away"), QObject::tr("it takes in")},
                     base + "power",
                     [self](const Arrangement& a) {
                         const Drive* now = self.drive(a);
                         return now == nullptr ? -1 : static_cast<int>(now->power);
                     },
                     [self](const Arrangement& a, int index) {
                         return changed(a, self.id, [&](Part& part) { self.set(part).power = static_cast<PowerSense>(index); });
                     },
                     {},
                     [self](const Arrangement& a) {
                         const Drive* now = self.drive(a);
                         return now != nullptr && (!now->takes_remaining || now->sense_fixed);
                     },
                     false,
                     QObject::tr("Gives away: drives what it meshes with")});
        form.choice({QObject::tr("Its sense"),
                     {QObject::tr("as it comes out"), QObject::tr("as stated")},
                     base + "sense_fixed",
                     [self](const Arrangement& a) {
                         const Drive* now = self.drive(a);
                         return now != nullptr && now->sense_fixed ? 1 : 0;
                     },
                     [self](const Arrangement& a, int index) {
                         return changed(a, self.id, [&](Part& part) { self.set(part).sense_fixed = index == 1; });
                     },
                     {},
                     [self](const Arrangement& a) {
                         const Drive* now = self.drive(a);
                         return now != nullptr && now->takes_remaining;
                     }});
        const auto value = [&](const QString& label, QuantityKind kind, const char* key, std::optional<double> Drive::*member) {
            form.quantity({label,
                           kind,
                           base + key,
                           [self, member](const Arrangement& a) -> std::optional<double> {
                               const Drive* now = self.drive(a);
                               return now == nullptr ? std::nullopt : now->*member;
                           },
                           [self, member](const Arrangement& a, std::optional<double> v) {
                               return changed(a, self.id, [&](Part& part) { self.set(part).*member = v.value_or(0.0); });
                           },
                           false,
                           {},
                           {},
                           [self, member](const Arrangement& a) {
                               const Drive* now = self.drive(a);
                               return now != nullptr && (now->*member).has_value();
                           }});
        };
        value(QObject::tr("Power"), K::power_kW, "power_kW", &Drive::power_kW);
        value(QObject::tr("Torque"), K::moment_Nmm, "torque_Nmm", &Drive::torque_Nmm);
    }
};

} // namespace

std::size_t PartPanel::shapeOf(const Part& part)
{
    const auto* gear = std::get_if<CylindricalGear>(&part.body);
    return part.body.index() + 100 * (gear == nullptr ? 0 : gear->further_meshes.size());
}

PartPanel::PartPanel(Document& document, ViewState& view, PartId id) : m_document(document), m_view(view), m_id(std::move(id))
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
    buildBody();
    const Part* part = findPart(m_document.shown(), m_id);
    const bool free = part == nullptr || std::holds_alternative<PointLoad>(part->body) ||
                      std::holds_alternative<DistributedLoad>(part->body) || std::holds_alternative<WeightBody>(part->body);
    if (!free) {
        column->addWidget(new PanelRule(this));
        column->addWidget(new PanelLabel(PanelLabel::Look::head, tr("Torque"), this));
        m_drive = new Form(m_document, this);
        column->addWidget(m_drive);
        DriveRows{*m_drive,
                  m_document,
                  m_id,
                  "parts." + m_id.value + ".", // the file keeps torque beside the other inputs of a part
                  [](const Part& p) { return p.drive ? &*p.drive : nullptr; },
                  [](Part& p) -> Drive& {
                      if (!p.drive)
                          p.drive.emplace();
                      return *p.drive;
                  },
                  [](Part& p) { p.drive.reset(); }}
            .build();
    }
    if (part != nullptr && std::holds_alternative<CylindricalGear>(part->body)) {
        column->addWidget(new PanelRule(this));
        m_folds.push_back(new PanelFold(
            m_document, QStringLiteral("meshes"), tr("Further meshes"), [this](PanelFold& fold) { buildMeshes(fold); }, this));
        column->addWidget(m_folds.back());
        const auto count = std::get<CylindricalGear>(part->body).further_meshes.size();
        m_folds.back()->setAside(count == 0 ? tr("none") : QString::number(count));
    }
    column->addWidget(new PanelRule(this));
    m_folds.push_back(new PanelFold(
        m_document, QStringLiteral("partCases"), tr("In the load cases"), [this](PanelFold& fold) { buildCases(fold); }, this));
    m_folds.back()->setSignature([this] {
        QStringList ids;
        for (const LoadCase& load_case : m_document.shown().duty.load_cases)
            ids << QString::fromStdString(load_case.id.value + load_case.name);
        return ids.join(QLatin1Char('|'));
    });
    column->addWidget(m_folds.back());
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
    const Part* part = findPart(m_document.shown(), m_id);
    if (part == nullptr)
        return;
    const bool spread = std::holds_alternative<DistributedLoad>(part->body);
    m_form->words({tr("Name"),
                   base + "name",
                   [id](const Arrangement& a) {
                       const Part* p = findPart(a, id);
                       return p ? QString::fromStdString(p->name) : QString();
                   },
                   [id](const Arrangement& a, const QString& text) {
                       return changed(a, id, [&](Part& p) { p.name = text.trimmed().toStdString(); });
                   },
                   true,
                   {},
                   {},
                   true});
    m_form->quantity(
        {spread ? tr("Begins at") : tr("Place"),
         K::length_mm,
         base + "x_mm",
         [id](const Arrangement& a) {
             const Part* p = findPart(a, id);
             return p ? std::optional(p->x_mm) : std::nullopt;
         },
         [id](const Arrangement& a, std::optional<double> v) { return movePart(a, id, v.value_or(0.0)); },
         false,
         {},
         spread ? tr("From the left end of the shaft") : tr("Middle of the face width, from the left end of the shaft")});
    const QStringList hands{tr("none"), tr("right"), tr("left")};
    if (std::holds_alternative<CylindricalGear>(part->body)) {
        gearRows(*m_form, id, base, hands);
    } else if (std::holds_alternative<BevelGear>(part->body)) {
        bevelRows(*m_form, id, base, hands);
    } else if (std::holds_alternative<Worm>(part->body)) {
        using B = Worm;
        BodyRows<B> rows(*m_form, id, base);
        rows.count(tr("Starts"), "starts", &B::starts);
        rows.number(tr("Axial module"), K::length_mm, "axial_module_mm", &B::axial_module_mm);
        rows.number(tr("Reference diameter"), K::length_mm, "reference_diameter_mm", &B::reference_diameter_mm);
        rows.open(tr("Lead angle"), K::angle_deg, "lead_angle_deg", &B::lead_angle_deg, tr("computed"),
                  tr("Instead of starts and module"));
        rows.choice(tr("Hand"), "hand", hands, &B::hand);
        rows.number(tr("Threaded length"), K::length_mm, "face_width_mm", &B::face_width_mm);
        rows.number(tr("Direction of mesh"), K::angle_deg, "mesh_angle_deg", &B::mesh_angle_deg);
        rows.open(tr("Pressure angle"), K::angle_deg, "pressure_angle_deg", &B::pressure_angle_deg, QStringLiteral("20"));
        rows.open(tr("Friction"), K::number, "friction", &B::friction, tr("by speed"));
    } else if (std::holds_alternative<WormWheel>(part->body)) {
        using B = WormWheel;
        BodyRows<B> rows(*m_form, id, base);
        rows.count(tr("Teeth"), "teeth", &B::teeth);
        rows.number(tr("Reference diameter"), K::length_mm, "reference_diameter_mm", &B::reference_diameter_mm);
        rows.number(tr("Lead angle of worm"), K::angle_deg, "lead_angle_deg", &B::lead_angle_deg);
        rows.choice(tr("Hand"), "hand", hands, &B::hand);
        rows.number(tr("Face width"), K::length_mm, "face_width_mm", &B::face_width_mm);
        rows.number(tr("Direction of mesh"), K::angle_deg, "mesh_angle_deg", &B::mesh_angle_deg);
        rows.pick(
            tr("Worm pushes"), "worm_direction", {tr("by speed and hand"), tr("along plus"), tr("along minus")},
            [](const B& wheel) { return !wheel.worm_direction ? 0 : (*wheel.worm_direction > 0 ? 1 : 2); },
            [](B& wheel, int index) {
                wheel.worm_direction = index == 0 ? std::nullopt : std::optional<int>(index == 1 ? 1 : -1);
            },
            {}, tr("Which way the worm turns the wheel; usually it follows"));
        rows.open(tr("Pressure angle"), K::angle_deg, "pressure_angle_deg", &B::pressure_angle_deg, QStringLiteral("20"));
        rows.open(tr("Friction"), K::number, "friction", &B::friction, tr("by speed"));
    } else if (std::holds_alternative<BeltPulley>(part->body)) {
        beltRows(*m_form, m_document, id, base);
    } else if (std::holds_alternative<ChainSprocket>(part->body)) {
        using B = ChainSprocket;
        BodyRows<B> rows(*m_form, id, base);
        rows.count(tr("Teeth"), "teeth", &B::teeth);
        rows.number(tr("Pitch"), K::length_mm, "pitch_mm", &B::pitch_mm);
        rows.count(tr("Strands"), "strands", &B::strands);
        rows.count(tr("Teeth of the other"), "other_teeth", &B::other_teeth);
        rows.number(tr("Centre distance"), K::length_mm, "centre_distance_mm", &B::centre_distance_mm);
        rows.number(tr("Direction of chain"), K::angle_deg, "direction_deg", &B::direction_deg);
        rows.number(tr("Face width"), K::length_mm, "face_width_mm", &B::face_width_mm);
        rows.open(tr("Force factor"), K::number, "force_factor", &B::force_factor, QStringLiteral("1.05"),
                  tr("Shaft force over chain pull"));
        rows.open(tr("Pull of the slack side"), K::force_N, "sag_force_N", &B::sag_force_N, tr("by factor"),
                  tr("From its sag, instead of the factor"));
    } else if (std::holds_alternative<Coupling>(part->body)) {
        couplingRows(*m_form, id, base);
    } else if (std::holds_alternative<Impeller>(part->body)) {
        using B = Impeller;
        BodyRows<B> rows(*m_form, id, base);
        rows.number(tr("Thrust"), K::force_N, "thrust_N", &B::thrust_N, tr("Positive to the right"));
        rows.number(tr("Force along y"), K::force_N, "radial_y_N", &B::radial_y_N);
        rows.number(tr("Force along z"), K::force_N, "radial_z_N", &B::radial_z_N);
        rows.number(tr("Thrust off axis, y"), K::length_mm, "offset_y_mm", &B::offset_y_mm);
        rows.number(tr("Thrust off axis, z"), K::length_mm, "offset_z_mm", &B::offset_z_mm);
        rows.open(tr("Force turning along"), K::force_N, "rotating_radial_N", &B::rotating_radial_N, tr("none"),
                  tr("Turns with the shaft"));
        rows.number(tr("Outside diameter"), K::length_mm, "outer_mm", &B::outer_mm);
        rows.number(tr("Width"), K::length_mm, "width_mm", &B::width_mm);
    } else if (std::holds_alternative<WeightBody>(part->body)) {
        weightRows(*m_form, id, base);
    } else if (std::holds_alternative<PointLoad>(part->body)) {
        using B = PointLoad;
        BodyRows<B> rows(*m_form, id, base);
        const auto component = [&](const QString& label, QuantityKind kind, const char* key, Vector3 B::*vector,
                                   double Vector3::*axis) {
            rows.row(
                label, kind, key, [vector, axis](const B& load) { return std::optional((load.*vector).*axis); },
                [vector, axis](B& load, std::optional<double> value) { (load.*vector).*axis = value.value_or(0.0); });
        };
        component(tr("Force along x"), K::force_N, "force_N.x", &B::force_N, &Vector3::x);
        component(tr("Force along y"), K::force_N, "force_N.y", &B::force_N, &Vector3::y);
        component(tr("Force along z"), K::force_N, "force_N.z", &B::force_N, &Vector3::z);
        component(tr("Moment about x"), K::moment_Nmm, "moment_Nmm.x", &B::moment_Nmm, &Vector3::x);
        component(tr("Moment about y"), K::moment_Nmm, "moment_Nmm.y", &B::moment_Nmm, &Vector3::y);
        component(tr("Moment about z"), K::moment_Nmm, "moment_Nmm.z", &B::moment_Nmm, &Vector3::z);
        rows.number(tr("Acts off axis, y"), K::length_mm, "offset_y_mm", &B::offset_y_mm);
        rows.number(tr("Acts off axis, z"), K::length_mm, "offset_z_mm", &B::offset_z_mm);
        rows.yesNo(tr("Turns with the shaft"), "rotating", {tr("no"), tr("yes")}, &B::rotating);
    } else if (spread) {
        using B = DistributedLoad;
        BodyRows<B> rows(*m_form, id, base);
        rows.number(tr("Ends at"), K::length_mm, "end_mm", &B::end_mm);
        const auto component = [&](const QString& label, const char* key, Vector3 B::*vector, double Vector3::*axis) {
            rows.row(
                label, K::line_load_N_per_mm, key, [vector, axis](const B& load) { return std::optional((load.*vector).*axis); },
                [vector, axis](B& load, std::optional<double> value) { (load.*vector).*axis = value.value_or(0.0); });
        };
        component(tr("Along z, at its start"), "start_N_per_mm.z", &B::start_N_per_mm, &Vector3::z);
        component(tr("Along z, at its end"), "end_N_per_mm.z", &B::end_N_per_mm, &Vector3::z);
        component(tr("Along y, at its start"), "start_N_per_mm.y", &B::start_N_per_mm, &Vector3::y);
        component(tr("Along y, at its end"), "end_N_per_mm.y", &B::end_N_per_mm, &Vector3::y);
        component(tr("Along x, at its start"), "start_N_per_mm.x", &B::start_N_per_mm, &Vector3::x);
        component(tr("Along x, at its end"), "end_N_per_mm.x", &B::end_N_per_mm, &Vector3::x);
        rows.number(tr("Torque at its start (N mm/mm)"), K::number, "start_torque_Nmm_per_mm", &B::start_torque_Nmm_per_mm);
        rows.number(tr("Torque at its end (N mm/mm)"), K::number, "end_torque_Nmm_per_mm", &B::end_torque_Nmm_per_mm);
    }
    if (!std::holds_alternative<PointLoad>(part->body) && !spread) {
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
             [](const Assessment&) { return tr("none"); },
             {}});
    }
}

void PartPanel::buildMeshes(PanelFold& fold)
{
    const Part* part = findPart(m_document.shown(), m_id);
    const auto* gear = part == nullptr ? nullptr : std::get_if<CylindricalGear>(&part->body);
    if (gear == nullptr)
        return;
    const PartId id = m_id;
    for (std::size_t i = 0; i < gear->further_meshes.size(); ++i) {
        fold.addLabel(tr("Mesh %1").arg(i + 2), PanelLabel::Look::text);
        const std::string base = "parts." + id.value + ".further_meshes." + std::to_string(i) + ".";
        Form* form = fold.addForm();
        BodyRows<CylindricalGear> rows(*form, id, base);
        rows.row(
            tr("Direction of mesh"), K::angle_deg, "mesh_angle_deg",
            [i](const CylindricalGear& g) {
                return i < g.further_meshes.size() ? std::optional(g.further_meshes[i].mesh_angle_deg) : std::nullopt;
            },
            [i](CylindricalGear& g, std::optional<double> v) { g.further_meshes[i].mesh_angle_deg = v.value_or(0.0); });
        DriveRows{*form,
                  m_document,
                  id,
                  base,
                  [i](const Part& p) -> const Drive* {
                      const auto* g = std::get_if<CylindricalGear>(&p.body);
                      return g != nullptr && i < g->further_meshes.size() ? &g->further_meshes[i].drive : nullptr;
                  },
                  [i](Part& p) -> Drive& { return std::get<CylindricalGear>(p.body).further_meshes[i].drive; },
                  {}}
            .build();
        fold.addButtons({{tr("Remove mesh %1").arg(i + 2), QStringLiteral("removeMesh"), [this, id, i] {
                              m_document.push(changed(m_document.committed(), id,
                                                      [i](Part& p) {
                                                          auto& meshes = std::get<CylindricalGear>(p.body).further_meshes;
                                                          meshes.erase(meshes.begin() + static_cast<std::ptrdiff_t>(i));
                                                      }),
                                              tr("Remove mesh"));
                          }}});
    }
    fold.addButtons({{tr("Add a mesh"), QStringLiteral("addMesh"), [this, id] {
                          m_document.push(changed(m_document.committed(), id,
                                                  [](Part& p) {
                                                      auto& g = std::get<CylindricalGear>(p.body);
                                                      FurtherMesh mesh;
                                                      mesh.mesh_angle_deg = std::fmod(g.mesh_angle_deg + 180.0, 360.0);
                                                      mesh.drive.power = PowerSense::driving;
                                                      mesh.drive.power_kW = 1.0;
                                                      g.further_meshes.push_back(mesh);
                                                  }),
                                          tr("Add mesh"));
                      }}});
}

void PartPanel::buildCases(PanelFold& fold)
{
    const PartId id = m_id;
    for (const LoadCase& load_case : m_document.shown().duty.load_cases) {
        fold.addLabel(QString::fromStdString(load_case.name.empty() ? load_case.id.value : load_case.name),
                      PanelLabel::Look::text);
        Form* form = fold.addForm();
        const CaseId case_id = load_case.id;
        const std::string base = "duty.load_cases." + case_id.value + ".parts." + id.value + ".";
        const auto read = [case_id, id](const Arrangement& a) -> const PartInCase* {
            const LoadCase* found = findCase(a, case_id);
            if (found == nullptr)
                return nullptr;
            const auto entry = found->parts.find(id);
            return entry == found->parts.end() ? nullptr : &entry->second;
        };
        const auto write = [case_id, id](const Arrangement& a, auto change) -> Result<Arrangement> {
            const LoadCase* found = findCase(a, case_id);
            if (found == nullptr)
                return a;
            LoadCase next = *found;
            PartInCase& entry = next.parts[id];
            change(entry);
            if (entry == PartInCase{})
                next.parts.erase(id);
            return setLoadCase(a, std::move(next));
        };
        form->choice(
            {tr("Acts"),
             {tr("yes"), tr("no")},
             base + "active",
             [read](const Arrangement& a) {
                 const PartInCase* entry = read(a);
                 return entry != nullptr && !entry->active ? 1 : 0;
             },
             [write](const Arrangement& a, int index) { return write(a, [&](PartInCase& entry) { entry.active = index == 0; }); },
             {}});
        form->quantity({tr("Power factor here"), K::number, base + "power_factor",
                        [read](const Arrangement& a) {
                            const PartInCase* entry = read(a);
                            return entry == nullptr ? std::nullopt : entry->power_factor;
                        },
                        [write](const Arrangement& a, std::optional<double> v) {
                            return write(a, [&](PartInCase& entry) { entry.power_factor = v; });
                        },
                        true, [](const Assessment&) { return QStringLiteral("1"); },
                        tr("Multiplies the factor of the case for this part")});
    }
    if (m_document.shown().duty.load_cases.empty())
        fold.addLabel(tr("There is no load case yet."));
}

void PartPanel::refresh()
{
    const Arrangement& shown = m_document.shown();
    const Part* part = findPart(shown, m_id);
    if (part == nullptr)
        return;
    m_title->setText(part->name.empty() ? kindName(*part) : QString::fromStdString(part->name));
    m_title->setAside(part->name.empty() ? QString::fromStdString(part->id.value) : kindName(*part));
    m_findings->set(findingGroups(m_document.assessment().findings, shown, false,
                                  [this](const Finding& finding) { return finding.subject == m_id.value; }));
    m_form->refresh();
    if (m_drive != nullptr)
        m_drive->refresh();
    for (PanelFold* fold : m_folds)
        fold->refresh();
    Derivation steps;
    const Assessment& results = m_document.results();
    const int chosen = std::clamp(m_view.case_index, 0, std::max(0, static_cast<int>(results.loads.size()) - 1));
    if (!results.loads.empty()) {
        const auto index = static_cast<std::size_t>(chosen);
        for (const PartLoad& load : results.loads[index].parts) {
            if (load.part == m_id)
                steps.insert(steps.end(), load.derivation.begin(), load.derivation.end());
        }
        if (results.load_cases.size() > 1 && index < results.load_cases.size()) {
            const CaseSummary& summary = results.load_cases[index];
            m_load_head->setText(tr("What it does to the shaft, case %1")
                                     .arg(QString::fromStdString(summary.name.empty() ? summary.id.value : summary.name)));
        }
    }
    // A head stands over something or not at all.
    m_load_head->setVisible(!steps.empty());
    m_derivation->setSteps(std::move(steps));
}

} // namespace shaftwright::ui
