#include "ui/window/status_bar.h"

#include "ui/widgets/marks.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/theme.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QTimer>

#include <cmath>

namespace shaftwright::ui
{

class StatusBar::Pill : public QAbstractButton
{
public:
    explicit Pill(QWidget* parent) : QAbstractButton(parent)
    {
        setObjectName(QStringLiteral("requirements"));
        setFocusPolicy(Qt::TabFocus);
        setCursor(Qt::PointingHandCursor);
    }
    void set(int missed, int all)
    {
        m_missed = missed;
        m_all = all;
        setText(all == 0 ? tr("no requirement stated")
                         : (missed == 0 ? (all == 1 ? tr("the requirement is met") : tr("all %1 requirements met").arg(all))
                                        : tr("%1 of %2 requirements not met").arg(missed).arg(all)));
        setAccessibleName(text());
        update();
    }
    QSize sizeHint() const override
    {
        return {static_cast<int>(std::ceil(QFontMetricsF(windowFont(12, QFont::DemiBold)).horizontalAdvance(text()))) + 46, 20};
    }

protected:
    void paintEvent(QPaintEvent*) override
    {
        const Tokens& t = tokens();
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const QColor colour = m_all == 0 ? t.ink2 : (m_missed > 0 ? t.stop : t.met);
        painter.setPen(m_all == 0 ? QPen(t.rule, 1.0) : Qt::NoPen);
        painter.setBrush(m_all == 0 ? t.panel : (m_missed > 0 ? t.stop_soft : t.met_soft));
        painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 9.5, 9.5);
        const QFont font = windowFont(12, QFont::DemiBold);
        double x = 14.0;
        if (m_all > 0) {
            drawMark(painter, m_missed > 0 ? Mark::cross : Mark::tick, QPointF(20.0, height() / 2.0), 8.0, colour, 2.0);
            x = 31.0;
        }
        painter.setPen(colour);
        drawTabular(painter, font, QPointF(x, height() / 2.0 + 4.5), text());
    }

private:
    int m_missed = 0, m_all = 0;
};

StatusBar::StatusBar(QWidget* parent) : QWidget(parent), m_timer(new QTimer(this))
{
    setFixedHeight(28);
    m_pill = new Pill(this);
    connect(m_pill, &QAbstractButton::clicked, this, &StatusBar::requirementsAsked);
    m_timer->setSingleShot(true);
    connect(m_timer, &QTimer::timeout, this, [this] {
        m_hint.clear();
        update();
    });
    setRequirements(0, 0);
}

void StatusBar::setNote(const QString& note)
{
    m_note = note;
    update();
}

void StatusBar::setScale(double ratio)
{
    QString words;
    if (ratio > 0.0)
        words =
            ratio >= 1.0 ? tr("Scale %1 : 1").arg(fixedNumber(ratio, 1)) : tr("Scale 1 : %1").arg(fixedNumber(1.0 / ratio, 1));
    if (words == m_scale)
        return;
    m_scale = words;
    update();
}

void StatusBar::setRequirements(int missed, int all)
{
    m_pill->set(missed, all);
    m_pill->resize(m_pill->sizeHint());
    m_pill->move(width() - m_pill->width() - 16, 4);
}

void StatusBar::hint(const QString& words)
{
    m_hint = words;
    m_timer->start(6000);
    update();
}

void StatusBar::resizeEvent(QResizeEvent*)
{
    m_pill->move(width() - m_pill->width() - 16, 4);
}

void StatusBar::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.fillRect(rect(), t.panel);
    painter.setPen(QPen(t.rule, 1.0));
    painter.drawLine(QPointF(0, 0.5), QPointF(width(), 0.5));
    const QFont font = windowFont(11);
    const double scale_width = tabularWidth(font, m_scale);
    const double scale_x = m_pill->x() - 28.0 - scale_width;
    painter.setPen(m_hint.isEmpty() ? t.ink2 : t.stop);
    painter.setFont(font);
    painter.drawText(QPointF(18, 18), elided(font, m_hint.isEmpty() ? m_note : m_hint, scale_x - 36.0));
    painter.setPen(t.ink2);
    drawTabular(painter, font, QPointF(scale_x, 18.0), m_scale);
}

} // namespace shaftwright::ui
