#include "ui/strips/strip_stack.h"

#include "ui/widgets/number_text.h"
#include "ui/widgets/theme.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::ui
{

namespace
{

constexpr double margin_px = 6.0; ///< between two strips, above and below the diagram

/// Depth below the strip's top edge at which its list draws a value: room for a label on each side that has values.
double stripDepth(double low, double high, double value, double height, double label, double px_per_mm)
{
    const double text_room = label + 1.9 * px_per_mm;
    const double above = high > 0.0 ? text_room : 1.5 * px_per_mm;
    const double below = low < 0.0 ? text_room : 1.5 * px_per_mm;
    const double plot = std::max(height - above - below, 2.0 * px_per_mm);
    if (!(high > low))
        return height / 2.0;
    return height - below - (value - low) / (high - low) * plot;
}

} // namespace

QString stripName(drawing::StripKind kind)
{
    using drawing::StripKind;
    switch (kind) {
    case StripKind::shear:
        return QObject::tr("Shear force");
    case StripKind::moment:
        return QObject::tr("Bending moment");
    case StripKind::torque:
        return QObject::tr("Torque");
    case StripKind::axial:
        return QObject::tr("Axial force");
    case StripKind::deflection:
        return QObject::tr("Deflection");
    case StripKind::slope:
        return QObject::tr("Slope");
    }
    return {};
}

void StripStack::build(const Arrangement& arrangement, const Assessment& results, const drawing::SheetView& view, bool hold)
{
    m_strips.clear();
    for (const drawing::StripKind kind : view.strips) {
        Strip strip;
        strip.kind = kind;
        std::optional<drawing::StripRange> held;
        if (const auto found = m_ranges.find(kind); hold && found != m_ranges.end())
            held = found->second;
        strip.list = drawing::stripList(arrangement, results, view, kind, held, &strip.range);
        if (!hold)
            m_ranges[kind] = strip.range;
        strip.title = QString::fromStdString(drawing::stripTitle(kind, view.plane));
        strip.unit = QString::fromStdString(drawing::readStrip(results, view, kind, 0.0, strip.range).unit);
        m_strips.push_back(std::move(strip));
    }
}

void StripStack::paint(QPainter& painter, ListPainter& lists, const QRectF& room, double scroll, const AxialScale& scale,
                       double gutter_px, double sheet_px_per_mm, bool dimmed)
{
    const Tokens& t = tokens();
    double top = room.top() - scroll;
    painter.save();
    painter.setClipRect(room);
    for (std::size_t i = 0; i < m_strips.size(); ++i) {
        const Strip& strip = m_strips[i];
        const QRectF own(room.left(), top, room.width(), m_height_px);
        if (own.intersects(room)) {
            if (i > 0) {
                painter.setPen(QPen(t.rule, 1.0));
                const double y = std::round(own.top()) + 0.5;
                painter.drawLine(QPointF(room.left() + 12.0, y), QPointF(room.right() - 12.0, y));
            }
            painter.setOpacity(dimmed ? 0.55 : 1.0);
            const double y0 = std::round(own.top() + margin_px);
            const MmMap map{sheet_px_per_mm, QPointF(scale.zero_px, y0)};
            const MmMap pinned{sheet_px_per_mm, QPointF(room.left() + 12.0 + drawing::stripHead_mm * sheet_px_per_mm, y0)};
            painter.save();
            painter.setClipRect(
                QRectF(scale.zero_px < gutter_px ? gutter_px - 36.0 : room.left(), own.top(), room.width(), own.height()),
                Qt::IntersectClip);
            for (const drawing::Group& group : strip.list.groups) {
                if (group.handle != "strip")
                    lists.paintGroup(painter, group, map, own);
            }
            painter.restore();
            // The head keeps its place in the gutter while the drawing is moved.
            for (const drawing::Group& group : strip.list.groups) {
                if (group.handle == "strip")
                    lists.paintGroup(painter, group, pinned, own);
            }
            painter.setOpacity(1.0);
        }
        top += m_height_px;
    }
    painter.restore();
}

void StripStack::paintReadings(QPainter& painter, const QRectF& room, double scroll, const AxialScale& scale, double x_mm,
                               double right_px, double sheet_px_per_mm, const Assessment& results, const drawing::SheetView& view)
{
    if (!results.beam.usable())
        return;
    const Tokens& t = tokens();
    const QFont figures = windowFont(12, QFont::DemiBold);
    const double x_px = scale.toPx(x_mm);
    painter.save();
    painter.setClipRect(room);
    painter.setRenderHint(QPainter::Antialiasing);
    double top = room.top() - scroll;
    for (const Strip& strip : m_strips) {
        const QRectF own(room.left(), top, room.width(), m_height_px);
        top += m_height_px;
        if (!own.intersects(room))
            continue;
        const drawing::StripReading reading = drawing::readStrip(results, view, strip.kind, x_mm, strip.range);
        if (!std::isfinite(reading.value))
            continue;
        QString words = number(reading.value);
        if (reading.jump)
            words = number(reading.left) + QStringLiteral(" | ") + number(reading.right);
        // With all cases shown the reading is that of the case that governs here.
        if (view.case_index < 0 && results.load_cases.size() > 1 && reading.case_index >= 0 &&
            static_cast<std::size_t>(reading.case_index) < results.load_cases.size()) {
            const CaseSummary& summary = results.load_cases[static_cast<std::size_t>(reading.case_index)];
            words += QStringLiteral(", ") + QString::fromStdString(summary.name.empty() ? summary.id.value : summary.name);
        }
        const double low = strip.range.low, high = strip.range.high;
        const double inner = m_height_px - 2.0 * margin_px;
        const double y = own.top() + margin_px +
                         stripDepth(low, high, reading.value, inner, view.label_height_mm * sheet_px_per_mm, sheet_px_per_mm);
        painter.setPen(Qt::NoPen);
        painter.setBrush(t.ink);
        painter.drawEllipse(QPointF(x_px, y), 3.5, 3.5);
        const double width = tabularWidth(figures, words) + 12.0;
        double left = x_px + 8.0;
        if (left + width > right_px)
            left = x_px - 8.0 - width;
        // Labels of extremes stand outside the curve: the reading stands on its inner side.
        const double beside = y < own.center().y() ? y + 13.0 : y - 13.0;
        const double centre = std::clamp(beside, own.top() + 11.0, own.bottom() - 11.0);
        const QRectF tag(left, centre - 9.0, width, 18.0);
        painter.setPen(QPen(t.edge, 1.0));
        painter.setBrush(t.card);
        painter.drawRoundedRect(tag, 4, 4);
        painter.setPen(t.ink);
        drawTabular(painter, figures, QPointF(tag.left() + 6.0, tag.bottom() - 5.0), words);
    }
    painter.restore();
}

} // namespace shaftwright::ui
