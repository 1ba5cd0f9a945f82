#include "ui/widgets/focus_ring.h"

#include "ui/widgets/theme.h"

#include <QApplication>
#include <QFocusEvent>
#include <QPainter>

namespace shaftwright::ui
{

FocusRing::FocusRing(QWidget* window) : QWidget(window)
{
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setAttribute(Qt::WA_NoSystemBackground);
    setFocusPolicy(Qt::NoFocus);
    hide();
    qApp->installEventFilter(this);
}

void FocusRing::follow(QWidget* target)
{
    m_target = target;
    // Docks and dialogs have rings of their own.
    if (target == nullptr || !parentWidget()->isAncestorOf(target) || !target->isVisible()) {
        hide();
        return;
    }
    const QPoint corner = target->mapTo(parentWidget(), QPoint(0, 0));
    setGeometry(QRect(corner, target->size()).adjusted(-4, -4, 4, 4));
    raise();
    show();
}

bool FocusRing::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::FocusIn && watched->isWidgetType()) {
        const Qt::FocusReason reason = static_cast<QFocusEvent*>(event)->reason();
        const bool by_key = reason == Qt::TabFocusReason || reason == Qt::BacktabFocusReason || reason == Qt::ShortcutFocusReason;
        auto* widget = static_cast<QWidget*>(watched);
        follow(by_key ? widget : nullptr);
    } else if (m_target != nullptr && watched == m_target.data() &&
               (event->type() == QEvent::Move || event->type() == QEvent::Resize || event->type() == QEvent::Hide ||
                event->type() == QEvent::MouseButtonPress || event->type() == QEvent::FocusOut)) {
        if (event->type() == QEvent::Move || event->type() == QEvent::Resize)
            follow(m_target);
        else
            follow(nullptr);
    }
    return false;
}

void FocusRing::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(tokens().ink, 2.0));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 8, 8);
}

} // namespace shaftwright::ui
