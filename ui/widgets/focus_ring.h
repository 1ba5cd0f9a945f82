#pragma once
// Ring around the widget that has the keyboard: 2 px ink, 2 px outside, only after a key moved the focus there.

#include <QPointer>
#include <QWidget>

namespace shaftwright::ui
{

class FocusRing : public QWidget
{
    Q_OBJECT
public:
    explicit FocusRing(QWidget* window);

protected:
    void paintEvent(QPaintEvent*) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void follow(QWidget* target);
    QPointer<QWidget> m_target;
};

} // namespace shaftwright::ui
