#pragma once
// The sheet: ruler, drawing with loads and dimensions, end view, support cards, strips, hairline. One widget, painted in one
// pass; gestures ask the document for edits.

#include "core/drawing/sheet.h"
#include "ui/cards/support_card.h"
#include "ui/document/actions.h"
#include "ui/document/document.h"
#include "ui/document/view_state.h"
#include "ui/sheet/axial_scale.h"
#include "ui/sheet/painter.h"
#include "ui/strips/strip_stack.h"

#include <QWidget>

#include <optional>
#include <vector>

class QLabel;
class QLineEdit;

namespace shaftwright::ui
{

class QuietButton;
class SegmentedSwitch;

class SheetView : public QWidget
{
    Q_OBJECT
public:
    SheetView(Document& document, ViewState& view, QWidget* parent = nullptr);

    /// Sheet millimetres per model millimetre at 96 dots an inch.
    [[nodiscard]] double scaleRatio() const { return m_view_list.scale; }
    /// Pixel of a place on the shaft axis, for tests and gestures that come from outside.
    [[nodiscard]] QPointF pixelOf(double x_mm, double radius_mm = 0.0) const;
    [[nodiscard]] double placeAt(QPointF pixel) const { return m_scale.toMm(pixel.x()); }
    /// Middle of a handle of the end view, or of a dimension text; none when it is not drawn.
    [[nodiscard]] std::optional<QPointF> handlePixel(const QString& subject, const QString& handle) const;

    // --- Shelf drag: the shelf owns the mouse, the sheet shows what would happen ---
    void shelfDragTo(actions::ShelfItem item, QPoint global);
    void shelfDrop(actions::ShelfItem item, QPoint global);
    void shelfCancel();

    /// Milliseconds of the last paintEvent, primitives drawn in it.
    [[nodiscard]] double lastPaint_ms() const { return m_last_paint_ms; }
    [[nodiscard]] int lastPrimitives() const { return m_last_primitives; }
    [[nodiscard]] bool gestureRunning() const { return m_gesture.kind != Gesture::Kind::none; }
    /// The field that stands in place of a dimension while it is edited.
    [[nodiscard]] QLineEdit* placeField() const { return m_field; }

public slots:
    void insertAtHairline(actions::ShelfItem item);
    void deleteSelection();
    void duplicateSelection();
    void selectNext(int step);
    void zoomIn() { zoomBy(1.25, std::nullopt); }
    void zoomOut() { zoomBy(1.0 / 1.25, std::nullopt); }
    void fit();
    void editSelectionInPlace();

signals:
    void scaleChanged();
    void hinted(const QString& hint);

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void mousePressEvent(QMouseEvent*) override;
    void mouseMoveEvent(QMouseEvent*) override;
    void mouseReleaseEvent(QMouseEvent*) override;
    void mouseDoubleClickEvent(QMouseEvent*) override;
    void wheelEvent(QWheelEvent*) override;
    void keyPressEvent(QKeyEvent*) override;
    void leaveEvent(QEvent*) override;
    bool event(QEvent*) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void contextMenuEvent(QContextMenuEvent*) override;

private:
    struct Hit {
        enum class Kind { paper, thing, shoulder, handle, card, ruler, strips };
        Kind kind = Kind::paper;
        QString subject, handle;
        int shoulder = -1;
        bool load = false; ///< an arrow or label of a load, not the thing itself
        QRectF rect;
    };
    struct Gesture {
        enum class Kind { none, pressed, move, shoulder, turn, pan, hairline, shelf };
        Kind kind = Kind::none;
        Hit hit;
        QPointF press;
        double grab_mm = 0.0;
        QPointF pan0;
        std::vector<double> snaps;
        QString tip;
        QPointF tip_at;
    };

    void placeTools();
    void layoutSheet();
    void updateLists();
    void invalidate();
    [[nodiscard]] bool holding() const;
    [[nodiscard]] Hit hitAt(QPointF at) const;
    [[nodiscard]] QRectF subjectRect(const QString& subject) const;
    void zoomBy(double factor, std::optional<QPointF> around);
    void startGesture(QPointF at);
    void moveGesture(QPointF at, Qt::KeyboardModifiers modifiers);
    void finishGesture();
    void cancelGesture();
    void nudge(int key, Qt::KeyboardModifiers modifiers);
    void setHairline(double x_mm);

    void paintRuler(QPainter& painter);
    void paintGrid(QPainter& painter);
    void paintFrames(QPainter& painter);
    void paintBadges(QPainter& painter);
    void paintCards(QPainter& painter);
    void paintHairline(QPainter& painter);
    void paintTip(QPainter& painter);
    void paintScrollMark(QPainter& painter);
    void paintGhostWords(QPainter& painter);
    [[nodiscard]] QString loadHandle(const QString& subject) const;

    void openField(const QString& subject, const QString& handle, const QRectF& rect);
    bool takeField();
    void closeField();
    void fieldNext(int step);
    void positionField();

    Document& m_document;
    ViewState& m_view;

    SegmentedSwitch* m_plane = nullptr;
    QLabel* m_plane_label = nullptr;
    QuietButton* m_strip_button = nullptr;
    QuietButton* m_fit_button = nullptr;

    // Geometry of the last layout, widget pixels.
    AxialScale m_scale;
    double m_axis_y = 200.0;
    double m_gutter = 96.0;
    QRectF m_drawing_room, m_end_room, m_card_room, m_strip_room, m_ruler_room;
    double m_sheet_px_per_mm = 96.0 / 25.4;
    double m_fit_scale = 1.0;
    double m_zoom = 1.0;
    QPointF m_pan;
    double m_strip_scroll = 0.0;
    bool m_layout_dirty = true;

    // Lists of the shown value.
    drawing::SheetView m_view_list;
    drawing::DisplayList m_drawing, m_loads, m_dimensions, m_end_view, m_ghost;
    StripStack m_strips;
    std::vector<SupportCardData> m_cards;
    std::vector<PlacedCard> m_placed;
    quint64 m_lists_revision = 0;
    bool m_lists_dirty = true;
    double m_held_force_N = 0.0;
    ListPainter m_painter;

    Gesture m_gesture;
    Hit m_hover;
    QLineEdit* m_field = nullptr;
    QLabel* m_field_message = nullptr;
    QString m_field_subject, m_field_handle;
    double m_last_paint_ms = 0.0;
    int m_last_primitives = 0;
};

} // namespace shaftwright::ui
