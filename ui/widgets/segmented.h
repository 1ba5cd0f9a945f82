#pragma once
// Small controls of our own drawing: a row of exclusive choices, and a quiet button that may open a menu.

#include <QAbstractButton>
#include <QStringList>
#include <QWidget>

namespace shaftwright::ui
{

/// One choice of a few, side by side. Arrow keys move the choice.
class SegmentedSwitch : public QWidget
{
    Q_OBJECT
public:
    explicit SegmentedSwitch(const QStringList& choices, QWidget* parent = nullptr);
    [[nodiscard]] int current() const { return m_current; }
    void setCurrent(int index);
    void setTips(const QStringList& tips) { m_tips = tips; }
    [[nodiscard]] QSize sizeHint() const override;

signals:
    void chosen(int index);

protected:
    void paintEvent(QPaintEvent*) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool event(QEvent* event) override;

private:
    [[nodiscard]] QRectF cell(int index) const;
    [[nodiscard]] int cellAt(QPointF at) const;
    QStringList m_choices, m_tips;
    int m_current = 0;
};

/// Text button without a frame of its own; a border appears on hover.
class QuietButton : public QAbstractButton
{
    Q_OBJECT
public:
    explicit QuietButton(const QString& text, QWidget* parent = nullptr);
    void setChevron(bool chevron) { m_chevron = chevron; }
    void setFramed(bool framed) { m_framed = framed; }
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;
    void enterEvent(QEnterEvent*) override { update(); }
    void leaveEvent(QEvent*) override { update(); }

private:
    bool m_chevron = false, m_framed = false;
};

} // namespace shaftwright::ui
