#include "ui/panels/own_bearing_dialog.h"

#include "core/catalogue/family_rows.h"
#include "ui/document/texts.h"
#include "ui/panels/panel_parts.h"
#include "ui/widgets/theme.h"

#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <vector>

namespace shaftwright::ui
{

namespace
{

/// Kinds that one row of typed data can describe.
const std::vector<Family>& typedFamilies()
{
    static const std::vector<Family> families{Family::deep_groove_ball,
                                              Family::self_aligning_ball,
                                              Family::angular_contact_ball_15,
                                              Family::angular_contact_ball_25,
                                              Family::angular_contact_ball_40,
                                              Family::angular_contact_ball_two_row,
                                              Family::four_point_contact_ball,
                                              Family::cylindrical_roller_NU,
                                              Family::cylindrical_roller_NJ,
                                              Family::cylindrical_roller_NUP,
                                              Family::needle_roller,
                                              Family::tapered_roller,
                                              Family::spherical_roller,
                                              Family::thrust_ball,
                                              Family::cylindrical_roller_thrust,
                                              Family::needle_roller_thrust,
                                              Family::spherical_roller_thrust};
    return families;
}

QString typedName(Family family)
{
    switch (family) {
    case Family::cylindrical_roller_NU:
        return QObject::tr("cylindrical roller NU, N");
    case Family::cylindrical_roller_NJ:
        return QObject::tr("cylindrical roller NJ");
    case Family::cylindrical_roller_NUP:
        return QObject::tr("cylindrical roller NUP");
    default:
        return familyName(family);
    }
}

/// Nominal contact angle of a kind, for a start.
double usualAngle_deg(Family family)
{
    switch (family) {
    case Family::angular_contact_ball_15:
        return 15.0;
    case Family::angular_contact_ball_25:
        return 25.0;
    case Family::angular_contact_ball_40:
        return 40.0;
    case Family::angular_contact_ball_two_row:
        return 30.0;
    case Family::four_point_contact_ball:
        return 35.0;
    case Family::thrust_ball:
    case Family::cylindrical_roller_thrust:
    case Family::needle_roller_thrust:
        return 90.0;
    case Family::spherical_roller_thrust:
        return 50.0;
    default:
        return 0.0;
    }
}

} // namespace

OwnBearingDialog::OwnBearingDialog(const std::optional<BearingChoice>& present, double seat_mm, QWidget* parent) : QDialog(parent)
{
    setObjectName(QStringLiteral("ownBearing"));
    setWindowTitle(tr("Bearing by its maker’s data"));
    CatalogueRow row;
    row.bore_mm = seat_mm;
    Family family = Family::deep_groove_ball;
    if (present && !present->rows.empty()) {
        row = present->rows.front().row;
        family = present->family;
    }
    const bool typed = row.catalogue == "typed";
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(24, 20, 24, 20);
    column->setSpacing(12);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(12);
    grid->setVerticalSpacing(6);
    grid->setColumnMinimumWidth(2, 16);
    int line = 0;
    const auto place = [&](const QString& label, QWidget* field, int side, bool wide = false) {
        auto* name = new QLabel(label, this);
        name->setBuddy(field);
        grid->addWidget(name, line, side * 3);
        grid->addWidget(field, line, side * 3 + 1, 1, wide ? 4 : 1);
        if (side == 1 || wide)
            ++line;
    };
    m_designation = new QLineEdit(QString::fromStdString(row.designation), this);
    m_designation->setObjectName(QStringLiteral("designation"));
    m_designation->setAccessibleName(tr("Designation"));
    place(tr("Designation"), m_designation, 0);
    QStringList names;
    int at = 0;
    for (std::size_t i = 0; i < typedFamilies().size(); ++i) {
        names << typedName(typedFamilies()[i]);
        if (typedFamilies()[i] == family)
            at = static_cast<int>(i);
    }
    m_family = new ChoiceButton(tr("Kind"), names, this);
    m_family->setObjectName(QStringLiteral("kind"));
    m_family->setFixedWidth(210);
    m_family->setCurrent(at);
    connect(m_family, &ChoiceButton::chosen, this, [this](int index) { m_family->setCurrent(index); });
    place(tr("Kind"), m_family, 1);

    const auto number = [&](const char* name, const QString& label, QuantityKind kind, std::optional<double> value, int side,
                            const QString& open = {}) {
        auto* field = new QuantityField(kind, label, this);
        field->setObjectName(QString::fromLatin1(name));
        field->setMayBeOpen(true);
        this->value(name) = value && *value != 0.0 ? value : std::nullopt;
        field->setValue(this->value(name), open);
        connect(field, &QuantityField::taken, this, [this, field, name, open](double v) {
            this->value(name) = v;
            field->setValue(v, open);
        });
        connect(field, &QuantityField::cleared, this, [this, field, name, open] {
            this->value(name).reset();
            field->setValue(std::nullopt, open);
        });
        place(label, field, side);
    };
    using K = QuantityKind;
    const QString needed = tr("needed"), none = tr("not stated"), rule = tr("standard");
    number("d", tr("Bore d"), K::length_mm, row.bore_mm, 0, needed);
    number("C", tr("Dynamic rating C"), K::force_N, typed ? std::optional(row.C_N) : std::nullopt, 1, needed);
    number("D", tr("Outside diameter D"), K::length_mm, row.outer_mm, 0, needed);
    number("C0", tr("Static rating C0"), K::force_N, typed ? std::optional(row.C0_N) : std::nullopt, 1, needed);
    number("B", tr("Width B (T, H)"), K::length_mm, row.width_mm, 0, needed);
    number("Cu", tr("Fatigue load limit Cu"), K::force_N, typed ? row.Cu_N : std::nullopt, 1, none);
    number("r", tr("Chamfer r"), K::length_mm, row.chamfer_mm, 0, none);
    number("e", tr("Limit e"), K::number, typed ? row.e : std::nullopt, 1, rule);
    number("angle", tr("Contact angle"), K::angle_deg, typed ? std::optional(row.contact_angle_deg) : std::nullopt, 0,
           tr("of the kind"));
    number("X", tr("Factor X"), K::number, typed ? row.X : std::nullopt, 1, rule);
    number("a", tr("Pressure centre a"), K::length_mm, typed ? row.pressure_centre_mm : std::nullopt, 0, tr("geometry"));
    number("Y", tr("Factor Y"), K::number, typed ? row.Y : std::nullopt, 1, rule);
    number("speed", tr("Speed limit"), K::speed_rpm, typed ? row.speed_limit_rpm : std::nullopt, 0, none);
    number("Y0", tr("Factor Y0"), K::number, typed ? row.Y0 : std::nullopt, 1, rule);
    number("axial", tr("Axial limit"), K::force_N, typed ? row.axial_limit_N : std::nullopt, 0, none);
    number("f0", tr("Factor f0"), K::number, typed ? row.f0 : std::nullopt, 1, rule);
    m_source = new QLineEdit(typed ? QString::fromStdString(row.source) : QString(), this);
    m_source->setObjectName(QStringLiteral("source"));
    m_source->setAccessibleName(tr("Source"));
    m_source->setPlaceholderText(tr("needed: which sheet, edition, page"));
    place(tr("Source"), m_source, 0, true);
    column->addLayout(grid);
    m_message = new QLabel(this);
    m_message->setObjectName(QStringLiteral("message"));
    m_message->setWordWrap(true);
    m_message->setStyleSheet(QStringLiteral("color:%1").arg(tokens().stop.name()));
    m_message->hide();
    column->addWidget(m_message);
    auto* buttons = new QDialogButtonBox(this);
    buttons->addButton(tr("Use it here"), QDialogButtonBox::AcceptRole)->setObjectName(QStringLiteral("use"));
    buttons->addButton(tr("Cancel"), QDialogButtonBox::RejectRole);
    connect(buttons, &QDialogButtonBox::accepted, this, &OwnBearingDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
}

std::optional<double>& OwnBearingDialog::value(const std::string& name)
{
    for (auto& [known, stated] : m_values) {
        if (known == name)
            return stated;
    }
    return m_values.emplace_back(name, std::nullopt).second;
}

void OwnBearingDialog::accept()
{
    QStringList missing;
    const std::pair<const char*, QString> needed[] = {{"d", tr("the bore d")},
                                                      {"D", tr("the outside diameter D")},
                                                      {"B", tr("the width B")},
                                                      {"C", tr("the dynamic rating C")},
                                                      {"C0", tr("the static rating C0")}};
    for (const auto& [name, words] : needed) {
        if (!value(name) || *value(name) <= 0.0)
            missing << words;
    }
    if (m_designation->text().trimmed().isEmpty())
        missing << tr("a designation");
    if (m_source->text().trimmed().isEmpty())
        missing << tr("the source of the data");
    QString words;
    if (!missing.isEmpty())
        words = tr("Still needed: %1.").arg(missing.join(QStringLiteral(", ")));
    else if (*value("D") <= *value("d"))
        words = tr("The outside diameter must be greater than the bore.");
    if (!words.isEmpty()) {
        m_message->setText(words);
        m_message->show();
        return;
    }
    const Family family = typedFamilies()[static_cast<std::size_t>(std::max(0, m_family->current()))];
    CatalogueRow row;
    row.catalogue = "typed";
    row.designation = m_designation->text().trimmed().remove(QLatin1Char(' ')).toStdString();
    row.geometry_class = geometryClassOf(family);
    row.bore_mm = *value("d");
    row.outer_mm = *value("D");
    row.width_mm = *value("B");
    row.chamfer_mm = value("r").value_or(0.0);
    row.C_N = *value("C");
    row.C0_N = *value("C0");
    row.Cu_N = value("Cu");
    row.f0 = value("f0");
    row.contact_angle_deg = value("angle").value_or(usualAngle_deg(family));
    row.e = value("e");
    row.X = value("X");
    row.Y = value("Y");
    row.Y0 = value("Y0");
    row.pressure_centre_mm = value("a");
    row.axial_limit_N = value("axial");
    row.speed_limit_rpm = value("speed");
    row.source = m_source->text().trimmed().toStdString();
    row.provenance = Provenance::own;
    m_choice = {};
    m_choice.family = family;
    m_choice.rows.push_back({row, std::nullopt});
    QDialog::accept();
}

} // namespace shaftwright::ui
