#include "ui/widgets/segmented.h"

#include "ui/widgets/marks.h"
#include "ui/widgets/theme.h"

#include <QFontMetricsF>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>

#include <cmath>

namespace shaftwright::ui
{

SegmentedSwitch::SegmentedSwitch(const QStringList& choices, QWidget* parent) : QWidget(parent), m_choices(choices)
{
    setFocusPolicy(Qt::TabFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setCursor(Qt::PointingHandCursor);
}

void SegmentedSwitch::setCurrent(int index)
{
    if (m_current == index)
        return;
    m_current = index;
    update();
}

QSize SegmentedSwitch::sizeHint() const
{
    const QFontMetricsF metrics(windowFont(12, QFont::DemiBold));
    double width = 0.0;
    for (const QString& choice : m_choices)
        width += std::ceil(metrics.horizontalAdvance(choice)) + 18.0;
    return {static_cast<int>(width) + 2, 24};
}

QRectF SegmentedSwitch::cell(int index) const
{
    const QFontMetricsF metrics(windowFont(12, QFont::DemiBold));
    double left = 1.0;
    for (int i = 0; i < index; ++i)
        left += std::ceil(metrics.horizontalAdvance(m_choices[i])) + 18.0;
    return {left, 1.0, std::ceil(metrics.horizontalAdvance(m_choices[index])) + 18.0, height() - 2.0};
}

int SegmentedSwitch::cellAt(QPointF at) const
{
    for (int i = 0; i < m_choices.size(); ++i) {
        if (cell(i).contains(at))
            return i;
    }
    return -1;
}

void SegmentedSwitch::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(t.edge, 1.0));
    painter.setBrush(t.card);
    painter.drawRoundedRect(QRectF(0.5, 0.5, width() - 1.0, height() - 1.0), 6, 6);
    for (int i = 0; i < m_choices.size(); ++i) {
        const QRectF own = cell(i);
        if (i == m_current) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(t.ink);
            painter.drawRoundedRect(own.adjusted(0.5, 0.5, -0.5, -0.5), 5, 5);
        }
        painter.setPen(i == m_current ? t.sheet : t.ink2);
        painter.setFont(windowFont(12, i == m_current ? QFont::DemiBold : QFont::Normal));
        painter.drawText(own, Qt::AlignCenter, m_choices[i]);
    }
}

void SegmentedSwitch::mousePressEvent(QMouseEvent* event)
{
    const int index = cellAt(event->position());
    if (event->button() == Qt::LeftButton && index >= 0 && index != m_current) {
        setCurrent(index);
        emit chosen(index);
    }
}

void SegmentedSwitch::keyPressEvent(QKeyEvent* event)
{
    const int step = event->key() == Qt::Key_Right || event->key() == Qt::Key_Down ? 1
                     : event->key() == Qt::Key_Left || event->key() == Qt::Key_Up  ? -1
                                                                                   : 0;
    if (step == 0) {
        QWidget::keyPressEvent(event);
        return;
    }
    const int index = m_current + step;
    if (index >= 0 && index < m_choices.size()) {
        setCurrent(index);
        emit chosen(index);
    }
}

bool SegmentedSwitch::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const int index = cellAt(help->pos());
        if (index >= 0 && index < m_tips.size())
            QToolTip::showText(help->globalPos(), m_tips[index], this);
        return true;
    }
    return QWidget::event(event);
}

QuietButton::QuietButton(const QString& text, QWidget* parent) : QAbstractButton(parent)
{
    setText(text);
    setAccessibleName(text);
    setFocusPolicy(Qt::TabFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
}

QSize QuietButton::sizeHint() const
{
    const double width = QFontMetricsF(windowFont(12)).horizontalAdvance(text());
    return {static_cast<int>(std::ceil(width)) + 18 + (m_chevron ? 14 : 0), 24};
}

void QuietButton::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (m_framed || (underMouse() && isEnabled()) || isDown()) {
        painter.setPen(QPen(underMouse() && isEnabled() ? t.ink2 : t.edge, 1.0));
        painter.setBrush(isDown() ? t.live_soft : t.card);
        painter.drawRoundedRect(QRectF(0.5, 0.5, width() - 1.0, height() - 1.0), 6, 6);
    }
    painter.setPen(isEnabled() ? t.ink : t.ink3);
    painter.setFont(windowFont(12));
    painter.drawText(QRectF(0, 0, width() - (m_chevron ? 14 : 0), height()), Qt::AlignCenter, text());
    if (m_chevron)
        drawChevron(painter, QPointF(width() - 13.0, height() / 2.0), 7.0, isEnabled() ? t.ink2 : t.ink3);
}

} // namespace shaftwright::ui
