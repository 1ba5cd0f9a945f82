#pragma once
// Small signs that stand beside verdict words, drawn as lines so that no font has to have them.

#include <QColor>
#include <QPainter>
#include <QPointF>

namespace shaftwright::ui
{

enum class Mark { tick, cross, tilde, bang, info };

/// Sign of about `size` pixels around `centre`.
void drawMark(QPainter& painter, Mark mark, QPointF centre, double size, const QColor& colour, double width = 1.8);
/// The same on a round ground.
void drawMarkOnDisc(QPainter& painter, Mark mark, QPointF centre, double radius, const QColor& colour, const QColor& ground);
/// Small downward chevron of buttons that open a menu.
void drawChevron(QPainter& painter, QPointF centre, double size, const QColor& colour);

} // namespace shaftwright::ui
