#include "ui/sheet/painter.h"

#include "ui/widgets/theme.h"

#include <QFontMetricsF>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <numbers>

namespace shaftwright::ui
{

namespace
{

using namespace shaftwright::drawing;

class Hash
{
public:
    void add(double value)
    {
        std::uint64_t bits = 0;
        std::memcpy(&bits, &value, sizeof bits);
        mix(bits);
    }
    void mix(std::uint64_t bits)
    {
        m_state = (m_state ^ bits) * 0x9E3779B97F4A7C15ULL;
        m_state ^= m_state >> 29;
    }
    void add(const std::string& text) { mix(std::hash<std::string>{}(text)); }
    [[nodiscard]] quint64 value() const { return m_state; }

private:
    std::uint64_t m_state = 0xCBF29CE484222325ULL;
};

void hashVertices(Hash& hash, const std::vector<Vertex>& vertices)
{
    hash.mix(vertices.size());
    for (const Vertex& v : vertices) {
        hash.add(v.x);
        hash.add(v.y);
        hash.add(v.bulge);
    }
}

quint64 hashOf(const Group& group, const MmMap& map, double dpr)
{
    Hash hash;
    hash.add(map.px_per_mm);
    hash.add(map.origin.x());
    hash.add(map.origin.y());
    hash.add(dpr);
    hash.mix(tokens().dark ? 1 : 2);
    for (const Primitive& item : group.items) {
        hash.mix(item.index());
        if (const auto* path = std::get_if<Path>(&item)) {
            hashVertices(hash, path->vertices);
            hash.mix((path->closed ? 1U : 0U) + 2U * static_cast<unsigned>(path->stroke) +
                     64U * static_cast<unsigned>(path->ink) +
                     4096U * (path->fill ? 1U + static_cast<unsigned>(*path->fill) : 0U));
        } else if (const auto* circle = std::get_if<Circle>(&item)) {
            hash.add(circle->x);
            hash.add(circle->y);
            hash.add(circle->radius);
            hash.mix(2U * static_cast<unsigned>(circle->stroke) + 64U * static_cast<unsigned>(circle->ink) +
                     4096U * (circle->fill ? 1U + static_cast<unsigned>(*circle->fill) : 0U));
        } else if (const auto* hatch = std::get_if<Hatch>(&item)) {
            for (const auto& contour : hatch->contours)
                hashVertices(hash, contour);
            hash.add(hatch->angle_deg);
            hash.add(hatch->spacing_mm);
            hash.add(hatch->phase_mm);
            hash.mix(static_cast<unsigned>(hatch->ink));
        } else if (const auto* text = std::get_if<Text>(&item)) {
            hash.add(text->x);
            hash.add(text->y);
            hash.add(text->height_mm);
            hash.add(text->text);
            hash.add(text->angle_deg);
            hash.mix(static_cast<unsigned>(text->h) + 8U * static_cast<unsigned>(text->v) +
                     64U * static_cast<unsigned>(text->ink) + 4096U * static_cast<unsigned>(text->font) +
                     16384U * (text->bold ? 1U : 0U) + 32768U * (text->paper_ground ? 1U : 0U));
        }
    }
    return hash.value();
}

/// Every broken line begins and ends with a long element: the long dash is stretched to fit the length.
void fitDashes(QPen& pen, Stroke stroke, double length_px)
{
    const double d = pen.widthF();
    const double l = length_px / d;
    double fixed = 6.0, first = 24.0, period = 30.5;
    if (stroke == Stroke::centre) {
        const double n = std::max(1.0, std::round((l - 14.0) / 21.5));
        const double dash = (l - 7.5 * n) / (n + 1.0);
        if (dash < 2.0)
            pen.setStyle(Qt::SolidLine);
        else
            pen.setDashPattern({dash, 3.0, 1.5, 3.0});
        return;
    }
    if (stroke == Stroke::hidden) {
        fixed = 3.0;
        first = 8.0;
        period = 11.0;
        const double n = std::max(1.0, std::round((l - first) / period));
        const double dash = (l - fixed * n) / (n + 1.0);
        if (dash < 2.0)
            pen.setStyle(Qt::SolidLine);
        else
            pen.setDashPattern({dash, 3.0});
    }
}

void addArc(QPainterPath& path, QPointF from, QPointF to, double bulge)
{
    // from, to in pixels (y down); bulge positive = counter-clockwise seen with y up.
    const QPointF chord = to - from;
    const double length = std::hypot(chord.x(), chord.y());
    if (length < 1e-9)
        return;
    const double sweep = 4.0 * std::atan(bulge);
    const double radius = length / (2.0 * std::sin(std::abs(sweep) / 2.0));
    // Centre lies on the left of the chord for positive bulge in a y-up system, which is on the right with y down.
    const QPointF mid = (from + to) / 2.0;
    const double apothem = radius * std::cos(std::abs(sweep) / 2.0);
    const QPointF unit = chord / length;
    const QPointF left_up(unit.y(), -unit.x()); // left of the chord as seen with y up, in y-down pixels
    const QPointF centre = bulge > 0.0 ? mid + left_up * apothem : mid - left_up * apothem;
    const double start = std::atan2(-(from.y() - centre.y()), from.x() - centre.x()) * 180.0 / std::numbers::pi;
    path.arcTo(QRectF(centre.x() - radius, centre.y() - radius, 2.0 * radius, 2.0 * radius), start,
               sweep * 180.0 / std::numbers::pi);
}

QPainterPath pathOf(const std::vector<Vertex>& vertices, bool closed, const MmMap& map)
{
    QPainterPath path;
    if (vertices.empty())
        return path;
    path.moveTo(map.toPx(vertices.front().x, vertices.front().y));
    const std::size_t count = vertices.size();
    for (std::size_t i = 0; i + 1 < count + (closed ? 1 : 0); ++i) {
        const Vertex& a = vertices[i];
        const Vertex& b = vertices[(i + 1) % count];
        const QPointF to = map.toPx(b.x, b.y);
        if (std::abs(a.bulge) > 1e-9)
            addArc(path, map.toPx(a.x, a.y), to, a.bulge);
        else
            path.lineTo(to);
    }
    if (closed)
        path.closeSubpath();
    return path;
}

/// Lines along the axes sit on device pixels, so that they are sharp.
double snapped(double value, double width, double dpr)
{
    const double device = value * dpr;
    const bool odd = (qRound(width * dpr) % 2) == 1;
    return (odd ? std::floor(device) + 0.5 : std::round(device)) / dpr;
}

} // namespace

QColor ListPainter::colour(Ink ink) const
{
    return m_page_colours != nullptr ? colourOf(*m_page_colours, ink) : Theme::instance().colour(ink);
}

QPen ListPainter::penFor(Stroke stroke, Ink ink, double px_per_mm) const
{
    if (stroke == Stroke::none)
        return Qt::NoPen;
    double width_mm = 0.25, least_px = 1.0;
    switch (stroke) {
    case Stroke::thick:
        width_mm = 0.5;
        least_px = 1.7;
        break;
    case Stroke::medium:
        width_mm = 0.35;
        least_px = 1.4;
        break;
    case Stroke::hairline:
        width_mm = 0.13;
        least_px = 1.0;
        break;
    default:
        break;
    }
    // On screen the drawn widths stay as on paper; below that the least keeps 2 : 1.
    const double width =
        m_page_colours != nullptr ? width_mm * px_per_mm : std::max(width_mm * std::min(px_per_mm, 4.0), least_px);
    QPen pen(colour(ink), width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    pen.setMiterLimit(3.0);
    if (stroke == Stroke::centre)
        pen.setDashPattern({14.0, 3.0, 1.5, 3.0});
    else if (stroke == Stroke::hidden)
        pen.setDashPattern({6.0, 3.0});
    else if (stroke == Stroke::phantom)
        pen.setDashPattern({14.0, 3.0, 1.5, 3.0, 1.5, 3.0});
    return pen;
}

void ListPainter::paint(QPainter& painter, const DisplayList& list, const MmMap& map, const QRectF& visible)
{
    if (m_cached_px_per_mm != map.px_per_mm)
        m_cached_px_per_mm = map.px_per_mm;
    std::vector<const Group*> order;
    order.reserve(list.groups.size());
    for (const Group& group : list.groups)
        order.push_back(&group);
    std::stable_sort(order.begin(), order.end(), [](const Group* a, const Group* b) { return a->layer < b->layer; });
    for (const Group* group : order)
        paintGroup(painter, *group, map, visible);
}

void ListPainter::paintGroup(QPainter& painter, const Group& group, const MmMap& map, const QRectF& visible)
{
    const QRectF bounds = map.rectToPx(group.bounds).adjusted(-4, -4, 4, 4);
    if (group.items.empty() || !bounds.intersects(visible))
        return;
    const bool hatched =
        std::any_of(group.items.begin(), group.items.end(), [](const Primitive& p) { return std::holds_alternative<Hatch>(p); });
    const double dpr = painter.device()->devicePixelRatioF();
    const bool small_enough = bounds.width() * bounds.height() * dpr * dpr < 3.0e6;
    if (m_page_colours != nullptr || !(hatched || group.items.size() > 24) || !small_enough) {
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        drawItems(painter, group, map);
        painter.restore();
        return;
    }
    const quint64 key = hashOf(group, map, dpr);
    auto found = m_cache.find(key);
    if (found == m_cache.end()) {
        Entry entry;
        entry.rect = bounds.toAlignedRect();
        entry.pixmap = QPixmap((QSizeF(entry.rect.size()) * dpr).toSize());
        entry.pixmap.setDevicePixelRatio(dpr);
        entry.pixmap.fill(Qt::transparent);
        QPainter inner(&entry.pixmap);
        inner.setRenderHint(QPainter::Antialiasing);
        MmMap shifted = map;
        shifted.origin -= entry.rect.topLeft();
        drawItems(inner, group, shifted);
        inner.end();
        found = m_cache.insert(key, entry);
    } else {
        ++m_cached;
    }
    found->used = m_frame;
    painter.drawPixmap(found->rect.topLeft(), found->pixmap);
}

void ListPainter::drawItems(QPainter& painter, const Group& group, const MmMap& map)
{
    const double dpr = painter.device()->devicePixelRatioF();
    for (const Primitive& item : group.items) {
        ++m_drawn;
        if (const auto* path = std::get_if<Path>(&item)) {
            QPen pen = penFor(path->stroke, path->ink, map.px_per_mm);
            const bool straight = path->vertices.size() == 2 && !path->closed && std::abs(path->vertices[0].bulge) < 1e-9;
            if (straight) {
                QPointF a = map.toPx(path->vertices[0].x, path->vertices[0].y);
                QPointF b = map.toPx(path->vertices[1].x, path->vertices[1].y);
                if (std::abs(a.x() - b.x()) < 1e-6)
                    a.rx() = b.rx() = snapped(a.x(), pen.widthF(), dpr);
                if (std::abs(a.y() - b.y()) < 1e-6)
                    a.ry() = b.ry() = snapped(a.y(), pen.widthF(), dpr);
                if (path->stroke == Stroke::centre || path->stroke == Stroke::hidden)
                    fitDashes(pen, path->stroke, std::hypot(b.x() - a.x(), b.y() - a.y()));
                painter.setPen(pen);
                painter.drawLine(a, b);
                continue;
            }
            painter.setPen(pen);
            painter.setBrush(path->fill ? QBrush(colour(*path->fill)) : QBrush(Qt::NoBrush));
            painter.drawPath(pathOf(path->vertices, path->closed, map));
        } else if (const auto* circle = std::get_if<Circle>(&item)) {
            painter.setPen(penFor(circle->stroke, circle->ink, map.px_per_mm));
            painter.setBrush(circle->fill ? QBrush(colour(*circle->fill)) : QBrush(Qt::NoBrush));
            const double r = circle->radius * map.px_per_mm;
            painter.drawEllipse(map.toPx(circle->x, circle->y), r, r);
        } else if (const auto* hatch = std::get_if<Hatch>(&item)) {
            QVector<QLineF> lines;
            for (const auto& line : hatchLines(*hatch))
                lines.append(QLineF(map.toPx(line[0], line[1]), map.toPx(line[2], line[3])));
            constexpr double hatch_mm = 0.18;
            const double width = m_page_colours != nullptr ? hatch_mm * map.px_per_mm : 1.0;
            painter.setPen(QPen(colour(hatch->ink), width, Qt::SolidLine, Qt::FlatCap));
            painter.drawLines(lines);
        } else if (const auto* text = std::get_if<Text>(&item)) {
            drawText(painter, *text, map);
        }
    }
}

void ListPainter::drawText(QPainter& painter, const Text& text, const MmMap& map)
{
    const double capital_px = text.height_mm * map.px_per_mm;
    const QString key = QString::number(static_cast<int>(text.font)) + (text.bold ? QLatin1Char('b') : QLatin1Char('n')) +
                        QString::number(capital_px, 'f', 1) + QLatin1Char('|') + QString::fromStdString(text.text);
    auto found = m_texts.find(key);
    if (found == m_texts.end()) {
        LaidOut made;
        if (text.font == Font::drawing) {
            made.font = drawingFont(capital_px);
        } else {
            // Inter's capitals are 0.727 of the em.
            made.font = windowFont(std::max(8, qRound(capital_px / 0.727)), text.bold ? QFont::DemiBold : QFont::Normal);
        }
        if (text.bold && text.font == Font::drawing)
            made.font.setWeight(QFont::DemiBold);
        made.text.setText(QString::fromStdString(text.text));
        made.text.setTextFormat(Qt::PlainText);
        made.text.setPerformanceHint(QStaticText::AggressiveCaching);
        made.text.prepare(QTransform(), made.font);
        const QFontMetricsF metrics(made.font);
        made.size = made.text.size();
        made.ascent = metrics.ascent();
        made.capital = metrics.capHeight();
        found = m_texts.insert(key, made);
    }
    found->used = m_frame;
    const double width = found->size.width();
    double x = 0.0;
    if (text.h == HAlign::centre)
        x = -width / 2.0;
    else if (text.h == HAlign::right)
        x = -width;
    double baseline = 0.0;
    if (text.v == VAlign::middle)
        baseline = found->capital / 2.0;
    else if (text.v == VAlign::top)
        baseline = found->capital;

    const QPointF anchor = map.toPx(text.x, text.y);
    const bool turned = std::abs(text.angle_deg) > 1e-6;
    painter.save();
    if (turned) {
        painter.translate(anchor);
        painter.rotate(-text.angle_deg);
    }
    const QPointF base = turned ? QPointF(x, baseline) : anchor + QPointF(x, baseline);
    if (text.paper_ground) {
        const double px = m_page_colours != nullptr ? map.px_per_mm / 4.0 : 1.0; // 0.5 mm on paper
        painter.fillRect(
            QRectF(base.x() - 2.0 * px, base.y() - found->capital - 2.0 * px, width + 4.0 * px, found->capital + 4.5 * px),
            colour(Ink::paper));
    }
    painter.setFont(found->font);
    painter.setPen(colour(text.ink));
    painter.drawStaticText(QPointF(base.x(), base.y() - found->ascent), found->text);
    painter.restore();
}

void ListPainter::paintGhost(QPainter& painter, const DisplayList& list, const MmMap& map)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QPen pen(tokens().live, 1.2, Qt::DashLine, Qt::FlatCap, Qt::MiterJoin);
    pen.setDashPattern({5.0, 3.0});
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    for (const Group& group : list.groups) {
        for (const Primitive& item : group.items) {
            if (const auto* path = std::get_if<Path>(&item)) {
                if (path->stroke == Stroke::thick || path->stroke == Stroke::medium)
                    painter.drawPath(pathOf(path->vertices, path->closed, map));
            } else if (const auto* circle = std::get_if<Circle>(&item)) {
                if (circle->stroke == Stroke::thick || circle->stroke == Stroke::medium)
                    painter.drawEllipse(map.toPx(circle->x, circle->y), circle->radius * map.px_per_mm,
                                        circle->radius * map.px_per_mm);
            }
        }
    }
    painter.restore();
}

void ListPainter::endFrame()
{
    constexpr quint64 keptFrames = 30;
    ++m_frame;
    m_drawn = 0;
    m_cached = 0;
    if (m_frame % keptFrames != 0)
        return;
    m_cache.removeIf([&](const auto& entry) { return entry.value().used + keptFrames < m_frame; });
    m_texts.removeIf([&](const auto& entry) { return entry.value().used + 20 * keptFrames < m_frame; });
}

void ListPainter::clear()
{
    m_cache.clear();
    m_texts.clear();
}

} // namespace shaftwright::ui
