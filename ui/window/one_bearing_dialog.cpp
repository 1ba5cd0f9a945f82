#include "ui/window/one_bearing_dialog.h"

#include "core/edit/edit.h"
#include "ui/widgets/quantity_field.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace shaftwright::ui
{

OneBearingDialog::OneBearingDialog(QWidget* parent) : QDialog(parent)
{
    setObjectName(QStringLiteral("oneBearing"));
    setWindowTitle(tr("Loads of one bearing"));
    auto* form = new QFormLayout(this);
    form->setContentsMargins(24, 20, 24, 20);
    form->setVerticalSpacing(8);
    form->setHorizontalSpacing(16);
    const auto row = [&](const QString& label, QuantityKind kind, double OneBearingDialog::*member) {
        auto* field = new QuantityField(kind, label, this);
        field->setValue(this->*member);
        connect(field, &QuantityField::taken, this, [this, field, member](double value) {
            this->*member = value;
            field->setValue(value);
        });
        form->addRow(label, field);
    };
    row(tr("Radial force"), QuantityKind::force_N, &OneBearingDialog::m_radial_N);
    row(tr("Axial force, + to the right"), QuantityKind::force_N, &OneBearingDialog::m_axial_N);
    row(tr("Speed"), QuantityKind::speed_rpm, &OneBearingDialog::m_speed_rpm);
    row(tr("Shaft diameter at the seat"), QuantityKind::length_mm, &OneBearingDialog::m_bore_mm);
    row(tr("Required life"), QuantityKind::life_h, &OneBearingDialog::m_life_h);
    auto* buttons = new QDialogButtonBox(this);
    buttons->addButton(tr("Draw it"), QDialogButtonBox::AcceptRole);
    buttons->addButton(tr("Cancel"), QDialogButtonBox::RejectRole);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    form->addRow(buttons);
}

Arrangement OneBearingDialog::arrangement() const
{
    Arrangement value = emptyArrangement();
    value.title.title = tr("One bearing").toStdString();
    const double width_mm = std::max(20.0, 0.6 * m_bore_mm);
    const double span_mm = std::max(100.0, 3.0 * m_bore_mm);
    Segment segment;
    segment.id = freeSegmentId(value);
    segment.length_mm = span_mm + 2.0 * width_mm;
    segment.outer_mm = m_bore_mm;
    value.shaft.segments.push_back(segment);
    Support aid = newSupport(value, width_mm);
    aid.role = Role::non_locating;
    value.supports.push_back(aid);
    Support asked = newSupport(value, width_mm + span_mm);
    asked.role = Role::locating;
    asked.required_L_h = m_life_h;
    value.supports.push_back(asked);
    Part load = *newPart(value, "point_load", asked.x_mm);
    PointLoad force;
    force.force_N = {m_axial_N, 0.0, -m_radial_N};
    load.body = force;
    load.drive.reset();
    load.name = tr("Load of the bearing").toStdString();
    value.parts.push_back(load);
    if (value.duty.load_cases.empty()) {
        LoadCase load_case;
        load_case.id = freeCaseId(value);
        value.duty.load_cases.push_back(load_case);
    }
    value.duty.load_cases.front().speed_rpm = m_speed_rpm;
    value.options.own_weight = false;
    return value;
}

} // namespace shaftwright::ui
