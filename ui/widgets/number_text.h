#pragma once
// Numbers as the window writes them, and digits of one width, since figures that change live must not dance.

#include "core/units/quantity.h"

#include <QFont>
#include <QPainter>
#include <QPointF>
#include <QString>

namespace shaftwright::ui
{

/// Significant figures with thin spaces and a true minus sign.
[[nodiscard]] QString number(double value, int significant_digits = 3);
/// Fixed decimals, trailing zeros dropped.
[[nodiscard]] QString fixedNumber(double value, int decimals);
/// Shortest text that reads back, for fields.
[[nodiscard]] QString plainNumber(double value);
/// "3.67 kN", "530 N".
[[nodiscard]] QString forceText(double force_N);
/// "13 700 h", "1.33 million h".
[[nodiscard]] QString lifeText(double life_h);
/// The same with as many digits as it takes to differ from a requirement that it misses.
[[nodiscard]] QString lifeAgainst(double life_h, double required_h);
/// "35", "100.5": a length in mm with at most three decimals, without unit.
[[nodiscard]] QString lengthText(double length_mm);
/// Case line: "7.5 kW · 720/min · 62 %".
[[nodiscard]] QString speedText(double speed_rpm);

/// Width of a text whose digits all take the widest digit's advance.
[[nodiscard]] double tabularWidth(const QFont& font, const QString& text);
/// Draws such a text; `anchor` is the baseline at the left, middle or right end.
void drawTabular(QPainter& painter, const QFont& font, QPointF anchor, const QString& text, Qt::Alignment align = Qt::AlignLeft);

/// Elided in the middle, whole when it fits.
[[nodiscard]] QString elided(const QFont& font, const QString& text, double width);

} // namespace shaftwright::ui
