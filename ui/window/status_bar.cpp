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
    void set(int missed, int all, const QStringList& without_bearing)
    {
        m_missed = missed;
        m_all = all;
        m_open = !without_bearing.isEmpty();
        QStringList words;
        if (missed > 0)
            words << tr("%1 of %2 requirements not met").arg(missed).arg(all);
        constexpr qsizetype few = 3;
        if (without_bearing.size() == 1)
            words << tr("%1 has no bearing yet").arg(without_bearing.front());
        else if (m_open && without_bearing.size() <= few)
            words << tr("%1 have no bearing yet").arg(without_bearing.join(QStringLiteral(", ")));
        else if (m_open)
            words << tr("%1 supports have no bearing yet").arg(without_bearing.size());
        if (words.isEmpty())
            words << (all == 0   ? tr("no requirement stated")
                      : all == 1 ? tr("the requirement is met")
                                 : tr("all %1 requirements met").arg(all));
        setText(words.join(QStringLiteral(" · ")));
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
        const bool plain = m_all == 0 && !m_open;
        const QColor colour = m_missed > 0 ? t.stop : (m_open ? t.caution : (plain ? t.ink2 : t.met));
        painter.setPen(plain ? QPen(t.rule, 1.0) : Qt::NoPen);
        painter.setBrush(m_missed > 0 ? t.stop_soft : (m_open ? t.caution_soft : (plain ? t.panel : t.met_soft)));
        painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 9.5, 9.5);
        const QFont font = windowFont(12, QFont::DemiBold);
        double x = 14.0;
        if (!plain) {
            drawMark(painter, m_missed > 0 ? Mark::cross : (m_open ? Mark::bang : Mark::tick), QPointF(20.0, height() / 2.0), 8.0,
                     colour, 2.0);
            x = 31.0;
        }
        painter.setPen(colour);
        drawTabular(painter, font, QPointF(x, height() / 2.0 + 4.5), text());
    }

private:
    int m_missed = 0, m_all = 0;
    bool m_open = false;
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

void StatusBar::setRequirements(int missed, int all, const QStringList& without_bearing)
{
    m_pill->set(missed, all, without_bearing);
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
