#pragma once
// Paints display lists with QPainter: millimetres to pixels, y up to y down. Groups that did not change are taken from a cache.

#include "core/drawing/display_list.h"

#include <QHash>
#include <QPainter>
#include <QPixmap>
#include <QPointF>
#include <QRectF>
#include <QStaticText>

#include <deque>

namespace shaftwright::ui
{

struct Tokens;

/// Sheet millimetres to widget pixels.
struct MmMap {
    double px_per_mm = 3.7795;
    QPointF origin; ///< of the list in widget pixels

    [[nodiscard]] QPointF toPx(double x_mm, double y_mm) const
    {
        return {origin.x() + x_mm * px_per_mm, origin.y() - y_mm * px_per_mm};
    }
    [[nodiscard]] QPointF toMm(QPointF px) const
    {
        return {(px.x() - origin.x()) / px_per_mm, (origin.y() - px.y()) / px_per_mm};
    }
    [[nodiscard]] QRectF rectToPx(const std::array<double, 4>& bounds) const
    {
        return QRectF(toPx(bounds[0], bounds[3]), toPx(bounds[2], bounds[1])).normalized();
    }
};

class ListPainter
{
public:
    /// On the screen.
    ListPainter() = default;
    /// On a page in these colours, which must outlive the painter: line widths as in the standard, nothing kept as an image.
    explicit ListPainter(const Tokens& page_colours) : m_page_colours(&page_colours) {}

    /// Draws the groups in the order of their layers. `visible` in widget pixels; what lies outside is skipped.
    void paint(QPainter& painter, const drawing::DisplayList& list, const MmMap& map, const QRectF& visible);
    void paintGroup(QPainter& painter, const drawing::Group& group, const MmMap& map, const QRectF& visible);
    /// The outlines only, thin and dashed in the live colour: a pinned or proposed state behind the present one.
    void paintGhost(QPainter& painter, const drawing::DisplayList& list, const MmMap& map);
    /// To be called once a frame: forgets what was not used for a while.
    void endFrame();
    void clear();

    /// Of the frame so far, for measuring.
    [[nodiscard]] int primitivesDrawn() const { return m_drawn; }
    [[nodiscard]] int groupsFromCache() const { return m_cached; }

private:
    struct Entry {
        QPixmap pixmap;
        QRect rect;
        quint64 used = 0;
    };
    [[nodiscard]] QColor colour(drawing::Ink ink) const;
    [[nodiscard]] QPen penFor(drawing::Stroke stroke, drawing::Ink ink, double px_per_mm) const;
    void drawItems(QPainter& painter, const drawing::Group& group, const MmMap& map);
    void drawText(QPainter& painter, const drawing::Text& text, const MmMap& map);

    const Tokens* m_page_colours = nullptr;
    QHash<quint64, Entry> m_cache;
    struct LaidOut {
        QStaticText text;
        QFont font;
        QSizeF size;
        double ascent = 0.0, capital = 0.0;
        quint64 used = 0;
    };
    QHash<QString, LaidOut> m_texts;
    quint64 m_frame = 0;
    int m_drawn = 0, m_cached = 0;
    double m_cached_px_per_mm = 0.0;
};

} // namespace shaftwright::ui
