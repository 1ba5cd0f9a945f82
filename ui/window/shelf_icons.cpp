#include "ui/window/shelf_icons.h"

#include <QPainterPath>

#include <algorithm>

namespace shaftwright::ui
{

void drawShelfIcon(QPainter& painter, actions::ShelfItem item, const QRectF& box, const QColor& line, const QColor& fill)
{
    using actions::ShelfItem;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(box.center());
    const double unit = std::min(box.width(), box.height()) / 24.0;
    painter.scale(unit, unit);
    const QPen thick(line, 1.5, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin), thin(line, 1.0, Qt::SolidLine, Qt::FlatCap);
    QPen axis(line, 1.0, Qt::SolidLine, Qt::FlatCap);
    axis.setDashPattern({4.0, 2.0, 1.0, 2.0});
    painter.setPen(thick);
    painter.setBrush(fill);
    const auto polygon = [&](std::initializer_list<QPointF> points) { painter.drawPolygon(QPolygonF(QList<QPointF>(points))); };
    const auto stroke = [&](double x0, double y0, double x1, double y1) { painter.drawLine(QPointF(x0, y0), QPointF(x1, y1)); };
    const auto head = [&](double x, double y, double dy) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(line);
        polygon({{x, y}, {x - 3.2, y - dy}, {x + 3.2, y - dy}});
    };
    switch (item) {
    case ShelfItem::segment:
        polygon({{-11, -3.5}, {-5, -3.5}, {-5, -6}, {11, -6}, {11, 6}, {-5, 6}, {-5, 3.5}, {-11, 3.5}});
        stroke(-5, -4, -5, 4);
        break;
    case ShelfItem::groove:
        polygon({{-11, -5.5},
                 {-2, -5.5},
                 {-2, -3},
                 {2, -3},
                 {2, -5.5},
                 {11, -5.5},
                 {11, 5.5},
                 {2, 5.5},
                 {2, 3},
                 {-2, 3},
                 {-2, 5.5},
                 {-11, 5.5}});
        stroke(-2, -3, -2, 3);
        stroke(2, -3, 2, 3);
        break;
    case ShelfItem::keyway:
        painter.drawRect(QRectF(-11, -5.5, 22, 11));
        painter.drawRoundedRect(QRectF(-6.5, -2.2, 13, 4.4), 2.2, 2.2);
        break;
    case ShelfItem::gear:
        painter.drawRect(QRectF(-4, -10, 8, 20));
        stroke(-4, -6.5, 4, -6.5);
        stroke(-4, 6.5, 4, 6.5);
        painter.setPen(thin);
        stroke(-6, -8.2, 6, -8.2);
        stroke(-6, 8.2, 6, 8.2);
        painter.setPen(axis);
        stroke(-8, 0, 8, 0);
        break;
    case ShelfItem::bevel_gear:
        polygon({{-5, -5}, {2, -11}, {6, -7}, {6, 7}, {2, 11}, {-5, 5}});
        painter.setPen(axis);
        stroke(-9, 0, 10, 0);
        break;
    case ShelfItem::worm:
        painter.drawRect(QRectF(-11, -5, 22, 10));
        for (const double x : {-8.5, -3.5, 1.5, 6.5})
            stroke(x - 1.5, 5, x + 3.5, -5);
        break;
    case ShelfItem::worm_wheel:
        polygon({{-5, -10}, {-3, -8}, {3, -8}, {5, -10}, {5, 10}, {3, 8}, {-3, 8}, {-5, 10}});
        stroke(-5, -4.5, 5, -4.5);
        stroke(-5, 4.5, 5, 4.5);
        painter.setPen(axis);
        stroke(-8, 0, 8, 0);
        break;
    case ShelfItem::belt_pulley:
        polygon({{-8, -10},
                 {-5, -10},
                 {-3.4, -5},
                 {-1.6, -5},
                 {0, -10},
                 {1.6, -5},
                 {3.4, -5},
                 {5, -10},
                 {8, -10},
                 {8, 10},
                 {5, 10},
                 {3.4, 5},
                 {1.6, 5},
                 {0, 10},
                 {-1.6, 5},
                 {-3.4, 5},
                 {-5, 10},
                 {-8, 10}});
        break;
    case ShelfItem::sprocket:
        polygon({{-1.5, -11},
                 {1.5, -11},
                 {2.5, -7},
                 {2.5, -4},
                 {5.5, -4},
                 {5.5, 4},
                 {2.5, 4},
                 {2.5, 7},
                 {1.5, 11},
                 {-1.5, 11},
                 {-2.5, 7},
                 {-2.5, -7}});
        painter.drawEllipse(QPointF(0, -7.2), 1.2, 1.2);
        painter.drawEllipse(QPointF(0, 7.2), 1.2, 1.2);
        break;
    case ShelfItem::coupling:
        painter.drawRect(QRectF(-11, -3.5, 5, 7));
        painter.drawRect(QRectF(6, -3.5, 5, 7));
        painter.drawRect(QRectF(-6, -8.5, 5, 17));
        painter.drawRect(QRectF(1, -8.5, 5, 17));
        stroke(-1, 0, 1, 0);
        break;
    case ShelfItem::impeller: {
        painter.drawRect(QRectF(-3, -3.5, 8, 7));
        QPainterPath blades;
        blades.moveTo(-3, -3.5);
        blades.quadTo(-1, -9, -7, -10.5);
        blades.lineTo(3, -10.5);
        blades.lineTo(3, -3.5);
        blades.moveTo(-3, 3.5);
        blades.quadTo(-1, 9, -7, 10.5);
        blades.lineTo(3, 10.5);
        blades.lineTo(3, 3.5);
        painter.drawPath(blades);
        break;
    }
    case ShelfItem::weight:
        polygon({{-5, -10}, {5, -10}, {5, -6}, {1.5, -6}, {1.5, -3}, {4, -3}, {4, 3},   {1.5, 3},   {1.5, 6},   {5, 6},
                 {5, 10},   {-5, 10}, {-5, 6}, {-1.5, 6}, {-1.5, 3}, {-4, 3}, {-4, -3}, {-1.5, -3}, {-1.5, -6}, {-5, -6}});
        break;
    case ShelfItem::free_force:
        stroke(0, -10, 0, 6);
        head(0, 10, 7.5);
        break;
    case ShelfItem::line_load:
        stroke(-10, -7, 10, -7);
        stroke(-9.2, -7, -9.2, 4);
        stroke(0, -7, 0, 4);
        stroke(9.2, -7, 9.2, 4);
        head(-9.2, 8, 5.5);
        head(0, 8, 5.5);
        head(9.2, 8, 5.5);
        break;
    case ShelfItem::support:
        painter.drawRect(QRectF(-7, -10, 14, 10.5));
        painter.drawEllipse(QPointF(0, -4.8), 2.9, 2.9);
        polygon({{0, 2.6}, {-4.6, 8.4}, {4.6, 8.4}});
        stroke(-8, 10.6, 8, 10.6);
        break;
    case ShelfItem::ring:
        stroke(-11, 3, 11, 3);
        painter.drawRect(QRectF(-5, -6, 10, 9));
        painter.setPen(thin);
        stroke(-11, 7, 11, 7);
        painter.setPen(thick);
        painter.setBrush(line);
        painter.drawRect(QRectF(5, -1, 2.4, 6));
        break;
    }
    painter.restore();
}

} // namespace shaftwright::ui
