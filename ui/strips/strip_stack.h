#pragma once
// Diagrams under the drawing on its x scale: heads in the gutter, curves, and the values under the hairline.

#include "core/analysis/assessment.h"
#include "core/drawing/sheet.h"
#include "ui/sheet/axial_scale.h"
#include "ui/sheet/painter.h"

#include <QRectF>

#include <map>
#include <optional>

namespace shaftwright::ui
{

[[nodiscard]] QString stripName(drawing::StripKind kind);

class StripStack
{
public:
    /// Builds the lists anew. `hold`: value scales stay as they are, for a drag.
    void build(const Arrangement& arrangement, const Assessment& results, const drawing::SheetView& view, bool hold);

    /// @param room of all strips; @param scroll pixels by which they are moved up
    void paint(QPainter& painter, ListPainter& lists, const QRectF& room, double scroll, const AxialScale& scale,
               double gutter_px, double sheet_px_per_mm, bool dimmed);
    /// Values at the hairline, on paper tags that keep clear of the head and the edges.
    void paintReadings(QPainter& painter, const QRectF& room, double scroll, const AxialScale& scale, double x_mm,
                       double right_px, double sheet_px_per_mm, const Assessment& results, const drawing::SheetView& view);

    [[nodiscard]] double heightOfOne_px() const { return m_height_px; }
    void setHeightOfOne_px(double height) { m_height_px = height; }
    [[nodiscard]] double total_px() const { return m_height_px * static_cast<double>(m_strips.size()); }
    [[nodiscard]] std::size_t count() const { return m_strips.size(); }

private:
    struct Strip {
        drawing::StripKind kind = drawing::StripKind::moment;
        drawing::DisplayList list;
        drawing::StripRange range;
        QString title, unit;
    };
    std::vector<Strip> m_strips;
    std::map<drawing::StripKind, drawing::StripRange> m_ranges;
    double m_height_px = 84.0;
};

} // namespace shaftwright::ui
