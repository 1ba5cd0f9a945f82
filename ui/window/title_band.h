#pragma once
// Top of the window: what is open and in which state, the duty, undo and menu.

#include "ui/document/document.h"
#include "ui/document/view_state.h"

#include <QAbstractButton>
#include <QWidget>

namespace shaftwright::ui
{

class QuietButton;

/// The load cases as tiles, or as one tile with a menu when they do not fit.
class CaseTiles : public QWidget
{
    Q_OBJECT
public:
    CaseTiles(Document& document, ViewState& view, QWidget* parent = nullptr);
    void refresh();
    void choose(int index); ///< -1: all cases
    [[nodiscard]] int count() const { return static_cast<int>(m_tiles.size()); }
    /// Width that all tiles take side by side.
    [[nodiscard]] double naturalWidth() const { return m_natural_width; }

signals:
    /// The load cases are to be changed.
    void asked();

protected:
    void paintEvent(QPaintEvent*) override;
    void mouseDoubleClickEvent(QMouseEvent*) override;
    void mousePressEvent(QMouseEvent*) override;
    void mouseMoveEvent(QMouseEvent*) override;
    void leaveEvent(QEvent*) override;
    void keyPressEvent(QKeyEvent*) override;
    void resizeEvent(QResizeEvent*) override { layoutTiles(); }

private:
    struct Tile {
        int index = -1;
        QString head, line;
        QRectF rect;
    };
    void layoutTiles();
    void openMenu();
    Document& m_document;
    ViewState& m_view;
    std::vector<Tile> m_tiles;
    double m_natural_width = 0.0;
    bool m_folded = false;
    int m_hover = -2;
};

/// Small line icon button.
class IconButton : public QAbstractButton
{
    Q_OBJECT
public:
    enum class Icon { undo, redo, menu };
    IconButton(Icon icon, const QString& name, QWidget* parent = nullptr);
    [[nodiscard]] QSize sizeHint() const override { return {30, 30}; }

protected:
    void paintEvent(QPaintEvent*) override;

private:
    Icon m_icon;
};

class TitleBand : public QWidget
{
    Q_OBJECT
public:
    TitleBand(Document& document, ViewState& view, QWidget* parent = nullptr);
    void refresh();
    [[nodiscard]] IconButton* undoButton() const { return m_undo; }
    [[nodiscard]] IconButton* redoButton() const { return m_redo; }
    [[nodiscard]] IconButton* menuButton() const { return m_menu; }
    [[nodiscard]] CaseTiles* tiles() const { return m_tiles; }

signals:
    void caseAsked();

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { arrange(); }

private:
    void arrange();
    Document& m_document;
    CaseTiles* m_tiles = nullptr;
    IconButton *m_undo = nullptr, *m_redo = nullptr, *m_menu = nullptr;
    QString m_title, m_state;
};

} // namespace shaftwright::ui
