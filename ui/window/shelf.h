#pragma once
// What can be put on the shaft: dragged onto the sheet, or put at the hairline by a click or Enter.

#include "ui/document/actions.h"

#include <QAbstractButton>
#include <QWidget>

#include <vector>

namespace shaftwright::ui
{

class ShelfButton : public QAbstractButton
{
    Q_OBJECT
public:
    ShelfButton(const actions::ShelfEntry& entry, QWidget* parent);
    [[nodiscard]] actions::ShelfItem item() const { return m_item; }
    void setNarrow(bool narrow);

signals:
    void dragged(actions::ShelfItem item, QPoint global);
    void dropped(actions::ShelfItem item, QPoint global);
    void dragCancelled();
    void put(actions::ShelfItem item);

protected:
    void paintEvent(QPaintEvent*) override;
    void mousePressEvent(QMouseEvent*) override;
    void mouseMoveEvent(QMouseEvent*) override;
    void mouseReleaseEvent(QMouseEvent*) override;
    void keyPressEvent(QKeyEvent*) override;
    bool event(QEvent* event) override;

private:
    actions::ShelfItem m_item;
    bool m_narrow = false, m_pressed = false, m_dragging = false;
    QPoint m_press;
};

class Shelf : public QWidget
{
    Q_OBJECT
public:
    explicit Shelf(QWidget* parent = nullptr);
    /// Icons only.
    void setNarrow(bool narrow);
    [[nodiscard]] ShelfButton* button(actions::ShelfItem item) const;

signals:
    void dragged(actions::ShelfItem item, QPoint global);
    void dropped(actions::ShelfItem item, QPoint global);
    void dragCancelled();
    void put(actions::ShelfItem item);

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { arrange(); }

private:
    void arrange();
    std::vector<ShelfButton*> m_buttons;
    std::vector<std::pair<QString, int>> m_heads; ///< text and y
    bool m_narrow = false;
};

} // namespace shaftwright::ui
