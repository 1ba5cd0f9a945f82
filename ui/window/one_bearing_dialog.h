#pragma once
#include <QDialog>

#include "core/model/arrangement.h"

namespace shaftwright::ui
{

class QuantityField;

/// Radial and axial force, speed, bore and life of one bearing. The answer is an arrangement in which support B carries exactly
/// these loads; support A only keeps the shaft from tilting.
class OneBearingDialog : public QDialog
{
    Q_OBJECT
public:
    explicit OneBearingDialog(QWidget* parent = nullptr);
    [[nodiscard]] Arrangement arrangement() const;

private:
    double m_radial_N = 3000.0, m_axial_N = 0.0, m_speed_rpm = 1450.0, m_bore_mm = 40.0, m_life_h = 20000.0;
};

} // namespace shaftwright::ui
