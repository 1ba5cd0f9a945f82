#include "ui/window/shelf.h"

#include "ui/widgets/theme.h"
#include "ui/window/shelf_icons.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

namespace shaftwright::ui
{

ShelfButton::ShelfButton(const actions::ShelfEntry& entry, QWidget* parent) : QAbstractButton(parent), m_item(entry.item)
{
    setText(entry.name);
    setObjectName(QStringLiteral("shelf.") + entry.name);
    setAccessibleName(tr("Insert %1").arg(entry.name.toLower()));
    setToolTip(entry.name + QStringLiteral("\n") + entry.tip + QStringLiteral("\n") +
               tr("Drag onto the sheet, or click to put it at the hairline"));
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::OpenHandCursor);
    setAttribute(Qt::WA_Hover);
}

void ShelfButton::setNarrow(bool narrow)
{
    m_narrow = narrow;
    update();
}

void ShelfButton::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (underMouse() || m_dragging) {
        painter.setPen(QPen(m_dragging ? t.live : t.edge, 1.0));
        painter.setBrush(m_dragging ? t.live_soft : t.card);
        painter.drawRoundedRect(QRectF(2.5, 0.5, width() - 5.0, height() - 1.0), 6, 6);
    }
    const QRectF icon =
        m_narrow ? QRectF((width() - 24) / 2.0, (height() - 24) / 2.0, 24, 24) : QRectF(9, (height() - 23) / 2.0, 23, 23);
    drawShelfIcon(painter, m_item, icon, t.ink, t.card);
    if (!m_narrow) {
        painter.setPen(t.ink);
        painter.setFont(windowFont(11));
        painter.drawText(QRectF(37, 0, width() - 38, height()), Qt::AlignVCenter | Qt::AlignLeft, text());
    }
}

void ShelfButton::mousePressEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton)
        return;
    m_pressed = true;
    m_press = event->position().toPoint();
}

void ShelfButton::mouseMoveEvent(QMouseEvent* event)
{
    if (!m_pressed)
        return;
    if (!m_dragging && (event->position().toPoint() - m_press).manhattanLength() > 5) {
        m_dragging = true;
        setFocus(Qt::MouseFocusReason); // Esc comes here while the mouse is held
        setCursor(Qt::ClosedHandCursor);
        update();
    }
    if (m_dragging)
        emit dragged(m_item, event->globalPosition().toPoint());
}

void ShelfButton::mouseReleaseEvent(QMouseEvent* event)
{
    const bool was_drag = m_dragging;
    const bool pressed = m_pressed;
    m_pressed = m_dragging = false;
    setCursor(Qt::OpenHandCursor);
    update();
    if (was_drag)
        emit dropped(m_item, event->globalPosition().toPoint());
    else if (pressed && rect().contains(event->position().toPoint()))
        emit put(m_item);
}

void ShelfButton::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape && m_dragging) {
        m_pressed = m_dragging = false;
        setCursor(Qt::OpenHandCursor);
        update();
        emit dragCancelled();
        return;
    }
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_Space) {
        emit put(m_item);
        return;
    }
    QAbstractButton::keyPressEvent(event);
}

bool ShelfButton::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride && m_dragging && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QAbstractButton::event(event);
}

Shelf::Shelf(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("shelf"));
    setAccessibleName(tr("Parts"));
    for (const actions::ShelfEntry& entry : actions::shelf()) {
        auto* button = new ShelfButton(entry, this);
        connect(button, &ShelfButton::dragged, this, &Shelf::dragged);
        connect(button, &ShelfButton::dropped, this, &Shelf::dropped);
        connect(button, &ShelfButton::dragCancelled, this, &Shelf::dragCancelled);
        connect(button, &ShelfButton::put, this, &Shelf::put);
        m_buttons.push_back(button);
    }
    setNarrow(false);
}

void Shelf::setNarrow(bool narrow)
{
    m_narrow = narrow;
    setFixedWidth(narrow ? 48 : 110);
    for (ShelfButton* button : m_buttons)
        button->setNarrow(narrow);
    arrange();
    update();
}

ShelfButton* Shelf::button(actions::ShelfItem item) const
{
    for (ShelfButton* button : m_buttons) {
        if (button->item() == item)
            return button;
    }
    return nullptr;
}

void Shelf::arrange()
{
    const QStringList names{tr("Shaft"), tr("Carries"), tr("Holds")};
    const auto count = static_cast<int>(m_buttons.size());
    const int heads = m_narrow ? 3 * 12 : 3 * 34;
    const int row = std::clamp((height() - heads - 16) / std::max(1, count), 26, m_narrow ? 34 : 33);
    m_heads.clear();
    int y = 8, group = -1;
    for (std::size_t i = 0; i < m_buttons.size(); ++i) {
        const actions::ShelfEntry& entry = actions::shelf()[i];
        if (entry.group != group) {
            group = entry.group;
            if (m_narrow) {
                if (i > 0) {
                    m_heads.emplace_back(QString(), y + 5);
                    y += 12;
                }
            } else {
                y += i > 0 ? 8 : 2;
                m_heads.emplace_back(names[group], y);
                y += 24;
            }
        }
        m_buttons[i]->setGeometry(0, y, width() - 1, row);
        y += row;
    }
}

void Shelf::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.fillRect(rect(), t.panel);
    painter.setPen(QPen(t.rule, 1.0));
    painter.drawLine(QPointF(width() - 0.5, 0), QPointF(width() - 0.5, height()));
    for (const auto& [text, y] : m_heads) {
        if (text.isEmpty()) {
            painter.setPen(QPen(t.rule, 1.0));
            painter.drawLine(QPointF(10, y + 0.5), QPointF(width() - 11, y + 0.5));
        } else {
            painter.setPen(t.ink);
            painter.setFont(windowFont(12, QFont::DemiBold));
            painter.drawText(QPointF(13, y + 15), text);
        }
    }
}

} // namespace shaftwright::ui
