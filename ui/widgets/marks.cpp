#include "ui/widgets/marks.h"

#include <QPainterPath>

namespace shaftwright::ui
{

void drawMark(QPainter& painter, Mark mark, QPointF centre, double size, const QColor& colour, double width)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(centre);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const double h = size / 2.0;
    QPainterPath path;
    switch (mark) {
    case Mark::tick:
        path.moveTo(-h, 0.05 * h);
        path.lineTo(-0.25 * h, 0.8 * h);
        path.lineTo(h, -0.75 * h);
        break;
    case Mark::cross:
        path.moveTo(-0.75 * h, -0.75 * h);
        path.lineTo(0.75 * h, 0.75 * h);
        path.moveTo(0.75 * h, -0.75 * h);
        path.lineTo(-0.75 * h, 0.75 * h);
        break;
    case Mark::tilde:
        path.moveTo(-h, 0.2 * h);
        path.cubicTo(-0.5 * h, -0.8 * h, 0.4 * h, 0.9 * h, h, -0.2 * h);
        break;
    case Mark::bang:
        path.moveTo(0.0, -h);
        path.lineTo(0.0, 0.25 * h);
        path.moveTo(0.0, 0.95 * h);
        path.lineTo(0.0, 0.96 * h);
        break;
    case Mark::info:
        path.moveTo(0.0, -0.2 * h);
        path.lineTo(0.0, h);
        path.moveTo(0.0, -0.96 * h);
        path.lineTo(0.0, -0.95 * h);
        break;
    }
    painter.drawPath(path);
    painter.restore();
}

void drawMarkOnDisc(QPainter& painter, Mark mark, QPointF centre, double radius, const QColor& colour, const QColor& ground)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ground);
    painter.drawEllipse(centre, radius, radius);
    painter.restore();
    drawMark(painter, mark, centre, radius * 0.9, colour);
}

void drawChevron(QPainter& painter, QPointF centre, double size, const QColor& colour)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, 1.4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const QPointF points[] = {centre + QPointF(-size / 2, -size / 4), centre + QPointF(0, size / 4),
                              centre + QPointF(size / 2, -size / 4)};
    painter.drawPolyline(points, 3);
    painter.restore();
}

} // namespace shaftwright::ui
