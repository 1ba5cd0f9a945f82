#pragma once
#include "ui/document/actions.h"

#include <QColor>
#include <QPainter>
#include <QRectF>

namespace shaftwright::ui
{

/// Line sign of a shelf item in a box of about 24 x 24: what the thing looks like in section.
void drawShelfIcon(QPainter& painter, actions::ShelfItem item, const QRectF& box, const QColor& line, const QColor& fill);

} // namespace shaftwright::ui
