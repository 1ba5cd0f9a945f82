#include "ui/sheet/sheet_view.h"

#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/sheet/snap.h"
#include "ui/widgets/marks.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/segmented.h"
#include "ui/widgets/theme.h"

#include "core/edit/edit.h"
#include "core/units/quantity.h"

#include <QApplication>
#include <QContextMenuEvent>
#include <QElapsedTimer>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QToolTip>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright::ui
{

namespace
{

constexpr double rulerHeight = 26.0;
constexpr double toolRow = 32.0; ///< below the ruler: plane switch, strips
constexpr double cardGap = 12.0;
constexpr double leastDrawing = 220.0, leastStrip = 44.0;
constexpr double hitReach = 12.0; ///< half of the least target
constexpr double snapReach_px = 6.0;
/// Pixels of one sheet millimetre: sizes of arrows, signs and lettering are stated in sheet millimetres by core/drawing, and are
/// shown at 60 % of their paper size so that the shaft, not its marks, takes the room.
constexpr double screenSheet_px_per_mm = 2.35, smallSheet_px_per_mm = 1.9;
constexpr double headWidth_px = 112.0; ///< heads of the strips in the gutter

QRectF united(const QRectF& a, const QRectF& b)
{
    return a.isNull() ? b : a.united(b);
}

/// 1-2-5 step with at least `least_px` between two ticks.
double tickStep_mm(double px_per_mm, double least_px)
{
    const double raw = least_px / px_per_mm;
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double factor : {1.0, 2.0, 5.0, 10.0}) {
        if (factor * power >= raw - 1e-12)
            return factor * power;
    }
    return 10.0 * power;
}

bool isDegrees(const QString& handle)
{
    return handle.endsWith(QLatin1String("_deg"));
}

/// Path of the input behind a handle of a display list.
QString inputPath(const QString& subject, const QString& handle)
{
    if (handle.startsWith(subject + QLatin1Char('.')))
        return handle;
    return subject + QLatin1Char('.') + handle;
}

} // namespace

SheetView::SheetView(Document& document, ViewState& view, QWidget* parent) : QWidget(parent), m_document(document), m_view(view)
{
    setObjectName(QStringLiteral("sheet"));
    setAccessibleName(tr("Sheet"));
    setAccessibleDescription(
        tr("Drawing of the shaft with end view, support cards and diagrams. Page up and down select, arrow keys "
           "move the selection."));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAttribute(Qt::WA_InputMethodEnabled, false);
    setMinimumSize(360, 400);
    m_sheet_px_per_mm = screenSheet_px_per_mm;

    m_plane_label = new QLabel(tr("Plane"), this);
    m_plane = new SegmentedSwitch({QStringLiteral("y"), QStringLiteral("z"), tr("res")}, this);
    m_plane->setObjectName(QStringLiteral("plane"));
    m_plane->setAccessibleName(tr("Plane of loads and diagrams"));
    m_plane->setTips({tr("Loads and diagrams in plane y (horizontal)"), tr("Loads and diagrams in plane z (vertical)"),
                      tr("Resultants of both planes")});
    m_plane->setCurrent(static_cast<int>(m_view.plane));
    connect(m_plane, &SegmentedSwitch::chosen, this, [this](int index) {
        m_view.plane = static_cast<drawing::Plane>(index);
        m_view.notify();
    });
    m_strip_button = new QuietButton(tr("Strips"), this);
    m_strip_button->setObjectName(QStringLiteral("strips"));
    m_strip_button->setChevron(true);
    m_strip_button->setToolTip(tr("Which diagrams stand under the drawing"));
    connect(m_strip_button, &QuietButton::clicked, this, [this] {
        QMenu menu(this);
        using drawing::StripKind;
        for (const StripKind kind : {StripKind::shear, StripKind::moment, StripKind::torque, StripKind::axial,
                                     StripKind::deflection, StripKind::slope}) {
            QAction* action = menu.addAction(stripName(kind));
            action->setCheckable(true);
            action->setChecked(std::find(m_view.strips.begin(), m_view.strips.end(), kind) != m_view.strips.end());
            connect(action, &QAction::triggered, this, [this, kind](bool on) {
                if (on) {
                    m_view.strips.push_back(kind);
                    std::sort(m_view.strips.begin(), m_view.strips.end());
                } else {
                    std::erase(m_view.strips, kind);
                }
                m_view.notify();
            });
        }
        menu.exec(m_strip_button->mapToGlobal(QPoint(0, m_strip_button->height() + 2)));
    });
    m_fit_button = new QuietButton(tr("Fit"), this);
    m_fit_button->setObjectName(QStringLiteral("fit"));
    m_fit_button->setToolTip(tr("Show the whole shaft (0)"));
    m_fit_button->hide();
    connect(m_fit_button, &QuietButton::clicked, this, &SheetView::fit);

    connect(&m_document, &Document::changed, this, [this] {
        if (m_lists_revision != m_document.revision())
            invalidate();
        else
            update();
    });
    connect(&m_document, &Document::selectionChanged, this, &SheetView::invalidate);
    connect(&m_view, &ViewState::changed, this, [this] {
        m_plane->setCurrent(static_cast<int>(m_view.plane));
        invalidate();
    });
    connect(&Theme::instance(), &Theme::changed, this, [this] {
        m_painter.clear();
        invalidate();
    });
}

QPointF SheetView::pixelOf(double x_mm, double radius_mm) const
{
    return {m_scale.toPx(x_mm), m_axis_y - radius_mm * m_scale.px_per_mm};
}

std::optional<QPointF> SheetView::handlePixel(const QString& subject, const QString& handle) const
{
    const std::string wanted_subject = subject.toStdString(), wanted_handle = handle.toStdString();
    const auto look = [&](const drawing::DisplayList& list, QPointF origin) -> std::optional<QPointF> {
        const MmMap map{m_sheet_px_per_mm, origin};
        for (const drawing::Group& group : list.groups) {
            if (group.subject != wanted_subject || group.handle != wanted_handle)
                continue;
            for (const drawing::Primitive& item : group.items) {
                if (const auto* text = std::get_if<drawing::Text>(&item); text != nullptr && !isDegrees(handle))
                    return map.toPx(text->x, text->y + text->height_mm / 2.0);
                if (const auto* circle = std::get_if<drawing::Circle>(&item); circle != nullptr && isDegrees(handle))
                    return map.toPx(circle->x, circle->y);
            }
            return map.rectToPx(group.bounds).center();
        }
        return std::nullopt;
    };
    if (const auto found = look(m_dimensions, QPointF(m_scale.zero_px, m_axis_y)))
        return found;
    return look(m_end_view, m_end_room.isNull() ? QPointF() : QPointF(m_end_room.center().x(), m_axis_y));
}

// --- Layout and lists -----------------------------------------------------------------------------------------------

bool SheetView::holding() const
{
    return m_gesture.kind == Gesture::Kind::move || m_gesture.kind == Gesture::Kind::shoulder ||
           m_gesture.kind == Gesture::Kind::turn || m_gesture.kind == Gesture::Kind::shelf;
}

void SheetView::invalidate()
{
    m_lists_dirty = true;
    if (!holding())
        m_layout_dirty = true;
    update();
}

void SheetView::placeTools()
{
    const int y = static_cast<int>(rulerHeight) + 6;
    m_plane_label->adjustSize();
    m_plane_label->move(14, y + (24 - m_plane_label->height()) / 2);
    m_plane->adjustSize();
    m_plane->move(m_plane_label->x() + m_plane_label->width() + 8, y);
    m_strip_button->adjustSize();
    m_strip_button->move(m_plane->x() + m_plane->width() + 8, y);
    m_fit_button->adjustSize();
    m_fit_button->move(m_strip_button->x() + m_strip_button->width() + 4, y);
    const bool any = !m_document.shown().shaft.segments.empty();
    m_plane_label->setVisible(any);
    m_plane->setVisible(any);
    m_strip_button->setVisible(any);
    const bool zoomed = std::abs(m_zoom - 1.0) > 1e-6 || !m_pan.isNull();
    m_fit_button->setVisible(any && zoomed);
}

void SheetView::layoutSheet()
{
    m_layout_dirty = false;
    const Arrangement& shown = m_document.shown();
    const double w = width(), h = height();
    const double end_width = w >= 860.0 ? 232.0 : (w >= 600.0 ? 184.0 : 0.0);
    m_sheet_px_per_mm = h < 680.0 ? smallSheet_px_per_mm : screenSheet_px_per_mm;
    const double ppm = m_sheet_px_per_mm;

    drawing::SheetView view;
    view.pixels_per_mm = ppm * devicePixelRatioF();
    view.case_index = m_view.case_index;
    view.plane = m_view.plane;
    view.selected = m_document.selection().toStdString();
    view.dimensions = m_view.dimensions;
    view.loads = m_view.loads;
    view.label_height_mm = 8.9 / ppm; // 12 px text of the window has capitals of 8.7 px
    view.dimension_height_mm = 9.6 / ppm;
    view.strips = m_view.strips;

    m_gutter = headWidth_px;
    const double length = std::max(1.0, shown.shaft.length_mm());
    const double right_edge = w - end_width - 12.0;

    // Room from top to bottom: ruler, tools, drawing, cards, strips.
    const bool any_support = !shown.supports.empty();
    const auto strips = static_cast<double>(m_view.strips.size());
    // So many supports that only pins fit need less height than cards do.
    const bool pins = static_cast<double>(shown.supports.size()) * 160.0 - 12.0 > w - 28.0;
    const double card_height = !any_support ? 0.0 : (h >= 680.0 && !pins ? fullCardHeight : compactCardHeight);
    const double cards = any_support ? card_height + 2.0 * cardGap : cardGap;
    const double top = rulerHeight + toolRow;
    const double bottom = 8.0;
    const double wished_strip = std::clamp((h - 420.0) / std::max(2.0, strips) * 0.42, 60.0, 96.0);

    // What loads need above and below, over all cases and planes, so that switching them moves nothing.
    const Assessment& results = m_document.results();
    struct Reach {
        double above = 0.0, below = 0.0, left = 0.0, right = 0.0;
    };
    const auto reachAt = [&](double scale) {
        Reach reach;
        view.scale = scale;
        const auto take = [&](const drawing::DisplayList& list) {
            for (const drawing::Group& group : list.groups) {
                if (group.items.empty())
                    continue;
                reach.left = std::max(reach.left, -group.bounds[0]);
                reach.below = std::max(reach.below, -group.bounds[1]);
                reach.right = std::max(reach.right, group.bounds[2] - length * scale);
                reach.above = std::max(reach.above, group.bounds[3]);
            }
        };
        take(drawing::dimensionList(shown, results, view));
        drawing::SheetView other = view;
        const int cases = static_cast<int>(results.load_cases.size());
        for (int index = -1; index < std::min(cases, 6); ++index) {
            other.case_index = index;
            for (const drawing::Plane plane : {drawing::Plane::y, drawing::Plane::z, drawing::Plane::resultant}) {
                other.plane = plane;
                take(drawing::loadList(shown, results, other));
            }
        }
        for (const Segment& segment : shown.shaft.segments)
            reach.above = std::max(reach.above, std::max(segment.outer_mm, segment.outerRight_mm()) / 2.0 * scale);
        for (const Part& part : shown.parts) {
            reach.above = std::max(reach.above, drawing::partOuterRadius_mm(part) * scale);
            reach.left = std::max(reach.left, (drawing::partHalfLength_mm(part) - part.x_mm) * scale);
            reach.right = std::max(reach.right, (part.x_mm + drawing::partHalfLength_mm(part) - length) * scale);
        }
        for (const Support& support : shown.supports) {
            double outer = support.greatest_outer_mm.value_or(0.0);
            if (support.bearing && !support.bearing->rows.empty())
                outer = support.bearing->rows.front().row.outer_mm;
            reach.above = std::max(reach.above, outer / 2.0 * scale + 3.0);
        }
        return reach;
    };

    double zero = m_gutter + 20.0;
    double scale = std::max(20.0, right_edge - zero - 12.0) / (length * ppm);
    Reach reach;
    double strip = wished_strip;
    double room = 0.0;
    // The largest scale whose drawing, with all that stands above and below it, fits. What loads need is no smooth function of
    // the scale (labels stack up when they come closer), so scales are tried from the widest down, then refined.
    room = h - top - cards - strips * strip - bottom;
    if (room < leastDrawing) {
        strip = std::max(leastStrip, (h - top - cards - bottom - leastDrawing) / std::max(1.0, strips));
        room = std::max(leastDrawing, h - top - cards - strips * strip - bottom);
    }
    const auto fits = [&](double candidate) {
        reach = reachAt(candidate);
        zero = std::max(m_gutter + 20.0, std::min(reach.left * ppm, 150.0) + 12.0);
        const double by_width = std::max(40.0, right_edge - zero - std::min(reach.right * ppm, 120.0) - 8.0) / (length * ppm);
        return candidate <= by_width * 1.002 && (reach.above + reach.below) * ppm <= room;
    };
    const double widest = scale;
    const auto largest = [&]() -> std::optional<double> {
        constexpr double step_down = 0.88;
        double candidate = widest, too_large = 0.0;
        int trial = 0;
        for (; trial < 12 && !fits(candidate); ++trial) {
            too_large = candidate;
            candidate *= step_down;
        }
        if (trial == 12)
            return std::nullopt;
        for (int refinement = 0; refinement < 3 && too_large > 0.0; ++refinement) {
            const double between = (candidate + too_large) / 2.0;
            (fits(between) ? candidate : too_large) = between;
        }
        return candidate;
    };
    std::optional<double> best = largest();
    if (best.value_or(0.0) < 0.55 * widest && strips > 1.0) {
        // The shaft comes before the strips: one stays in sight, the others scroll under the pinned drawing.
        const double all_in_sight = room;
        room = std::max(leastDrawing, h - top - cards - strip - bottom);
        const std::optional<double> larger = largest();
        if (larger.value_or(0.0) > best.value_or(0.0))
            best = larger;
        else
            room = all_in_sight;
    }
    scale = best.value_or(0.45 * widest);
    scale = std::clamp(scale, 0.005, 40.0);
    (void)fits(scale); // reach and zero of the scale that is taken
    m_fit_scale = scale;

    const double need = std::max(leastDrawing, (reach.above + reach.below) * ppm);
    // What is left over goes to the strips first, then above and below the drawing.
    double spare = std::max(0.0, h - top - cards - strips * strip - bottom - need);
    if (strips > 0.0) {
        const double more = std::min(spare, strips * std::max(0.0, 112.0 - strip));
        strip += more / strips;
        spare -= more;
    }
    const double drawing_height = need + std::min(spare, 140.0);
    const double lift = (drawing_height - (reach.above + reach.below) * ppm) / 2.0;
    m_axis_y = std::round(top + lift + reach.above * ppm) + 0.5;
    m_drawing_room = QRectF(0.0, rulerHeight, w - end_width, top + drawing_height - rulerHeight);
    m_end_room = end_width > 0.0 ? QRectF(w - end_width, rulerHeight, end_width, top + drawing_height - rulerHeight) : QRectF();
    m_card_room = QRectF(14.0, top + drawing_height + cardGap, w - 28.0, card_height);
    const double strips_top = any_support ? m_card_room.bottom() + cardGap : top + drawing_height + cardGap;
    m_strip_room = QRectF(0.0, strips_top, w, std::max(0.0, h - strips_top));
    m_ruler_room = QRectF(0.0, 0.0, w, rulerHeight);
    m_strips.setHeightOfOne_px(std::floor(strip));
    const double hidden = std::max(0.0, m_strips.heightOfOne_px() * strips - m_strip_room.height());
    m_strip_scroll = std::clamp(m_strip_scroll, 0.0, hidden);

    // A short shaft stands in the middle of its room instead of at the gutter.
    const double used = length * scale * ppm;
    const double by_room = right_edge - zero - std::min(reach.right * ppm, 120.0) - 8.0;
    const double shift = std::max(0.0, std::min((by_room - used) / 2.0, 160.0));
    m_scale.zero_px = std::round(zero + shift + m_pan.x());
    m_axis_y += m_pan.y();
    view.scale = scale * m_zoom;
    view.strip_height_mm = (m_strips.heightOfOne_px() - 12.0) / ppm;
    m_scale.px_per_mm = view.scale * ppm;
    m_view_list = view;
    placeTools();
    m_lists_dirty = true;
    emit scaleChanged();
}

void SheetView::updateLists()
{
    // A paint can come between an edit and its announcement: the new value never stands in the old layout.
    if (m_lists_revision != m_document.revision() && !holding())
        m_layout_dirty = true;
    if (m_layout_dirty)
        layoutSheet();
    if (!m_lists_dirty && m_lists_revision == m_document.revision())
        return;
    m_lists_dirty = false;
    m_lists_revision = m_document.revision();
    const Arrangement& shown = m_document.shown();
    const Assessment& results = m_document.results();
    drawing::SheetView& view = m_view_list;
    view.case_index = m_view.case_index;
    view.plane = m_view.plane;
    view.selected = m_document.selection().toStdString();
    view.strips = m_view.strips;
    view.held_force_N = holding() ? m_held_force_N : 0.0;
    m_drawing = drawing::drawingList(shown, results, view);
    m_loads = drawing::loadList(shown, results, view);
    m_dimensions = drawing::dimensionList(shown, results, view);
    if (!m_end_room.isNull()) {
        double radius = 0.0;
        for (const Part& part : shown.parts)
            radius = std::max(radius, drawing::partOuterRadius_mm(part) * view.scale);
        for (const Segment& segment : shown.shaft.segments)
            radius = std::max(radius, segment.outer_mm / 2.0 * view.scale);
        // The end view keeps the scale of the drawing where its room allows it.
        double most = (m_end_room.width() / 2.0 - 26.0) / m_sheet_px_per_mm;
        double fitting = most;
        while (fitting > 2.0 && drawing::endViewReach_mm(fitting) > most)
            fitting *= 0.95;
        m_end_view = drawing::endViewList(shown, results, view, std::min(std::max(radius, 4.0), fitting));
    } else {
        m_end_view = {};
    }
    m_strips.build(shown, results, view, holding());
    m_ghost = {};
    if (m_view.ghost) {
        m_ghost = drawing::drawingList(*m_view.ghost, results, view);
        // Only what would change is outlined.
        const std::string subject = m_view.ghost_subject.toStdString();
        std::erase_if(m_ghost.groups, [&](const drawing::Group& group) { return group.subject != subject; });
    }

    m_cards.clear();
    std::vector<double> places;
    int selected = -1;
    const bool old = m_document.resultsAreOld();
    for (const Support& support : shown.supports) {
        m_cards.push_back(supportCardData(support, results, m_view.case_index, old));
        if (m_cards.back().subject == m_document.selection())
            selected = static_cast<int>(places.size());
        places.push_back(m_scale.toPx(support.x_mm));
    }
    m_placed = placeCards(places, m_card_room, selected);
}

QRectF SheetView::subjectRect(const QString& subject) const
{
    const std::string wanted = subject.toStdString();
    const MmMap map{m_sheet_px_per_mm, QPointF(m_scale.zero_px, m_axis_y)};
    QRectF rect;
    for (const drawing::Group& group : m_drawing.groups) {
        if (group.subject == wanted && !group.items.empty())
            rect = united(rect, map.rectToPx(group.bounds));
    }
    if (rect.isNull()) {
        for (const drawing::Group& group : m_loads.groups) {
            if (group.subject == wanted && !group.items.empty())
                rect = united(rect, map.rectToPx(group.bounds));
        }
    }
    return rect;
}

// --- Painting -------------------------------------------------------------------------------------------------------

void SheetView::paintEvent(QPaintEvent*)
{
    QElapsedTimer timer;
    timer.start();
    updateLists();
    QPainter painter(this);
    const Tokens& t = tokens();
    painter.fillRect(rect(), t.sheet);
    if (m_document.shown().shaft.segments.empty() && m_document.empty()) {
        m_last_paint_ms = static_cast<double>(timer.nsecsElapsed()) / 1e6;
        return;
    }
    const bool dimmed = m_document.resultsAreOld();
    paintGrid(painter);
    m_strips.paint(painter, m_painter, m_strip_room, m_strip_scroll, m_scale, m_gutter, m_sheet_px_per_mm, dimmed);

    const MmMap map{m_sheet_px_per_mm, QPointF(m_scale.zero_px, m_axis_y)};
    painter.save();
    painter.setClipRect(m_drawing_room);
    m_painter.paint(painter, m_drawing, map, m_drawing_room);
    if (!m_ghost.groups.empty())
        m_painter.paintGhost(painter, m_ghost, map);
    m_painter.paint(painter, m_dimensions, map, m_drawing_room);
    if (dimmed)
        painter.setOpacity(0.55);
    m_painter.paint(painter, m_loads, map, m_drawing_room);
    painter.setOpacity(1.0);
    paintFrames(painter);
    paintBadges(painter);
    painter.restore();

    if (!m_end_room.isNull()) {
        painter.setPen(QPen(t.rule, 1.0));
        const double x = std::round(m_end_room.left()) + 0.5;
        painter.drawLine(QPointF(x, rulerHeight + 14.0), QPointF(x, m_end_room.bottom() - 10.0));
        painter.save();
        painter.setClipRect(m_end_room);
        m_painter.paint(painter, m_end_view, MmMap{m_sheet_px_per_mm, QPointF(m_end_room.center().x(), m_axis_y)}, m_end_room);
        painter.restore();
    }
    paintCards(painter);
    paintRuler(painter);
    paintHairline(painter);
    paintScrollMark(painter);
    paintGhostWords(painter);
    paintTip(painter);
    m_last_primitives = m_painter.primitivesDrawn();
    m_painter.endFrame();
    m_last_paint_ms = static_cast<double>(timer.nsecsElapsed()) / 1e6;
}

void SheetView::paintGrid(QPainter& painter)
{
    const double step = tickStep_mm(m_scale.px_per_mm, 34.0);
    const double length = m_document.shown().shaft.length_mm();
    painter.setPen(QPen(tokens().grid, 1.0));
    const double bottom = std::min(m_strip_room.bottom() - 4.0, m_strip_room.top() + m_strips.total_px() - m_strip_scroll);
    QVector<QLineF> lines;
    for (double x = 0.0; x <= length + 1e-9; x += step) {
        const double px = std::round(m_scale.toPx(x)) + 0.5;
        if (px < m_gutter - 4.0 || px > width())
            continue;
        lines.append(QLineF(px, m_ruler_room.bottom() + 2.0, px, bottom));
    }
    painter.drawLines(lines);
}

void SheetView::paintRuler(QPainter& painter)
{
    const Tokens& t = tokens();
    painter.fillRect(m_ruler_room, t.sheet);
    const double label_step = tickStep_mm(m_scale.px_per_mm, 64.0);
    const double minor_step = label_step / 5.0;
    const QFont font = windowFont(11);
    const double length = m_document.shown().shaft.length_mm();
    const double first = std::max(0.0, std::floor(m_scale.toMm(0.0) / minor_step) * minor_step);
    const double last = std::min(length + 1e-9, m_scale.toMm(m_drawing_room.right()));
    double last_label = -1e9;
    for (int i = 0; first + i * minor_step <= last; ++i) {
        const double x = first + i * minor_step;
        const double px = std::round(m_scale.toPx(x)) + 0.5;
        const bool labelled = std::abs(std::remainder(x, label_step)) < minor_step * 0.25;
        painter.setPen(QPen(t.ink3, 1.0));
        painter.drawLine(QPointF(px, rulerHeight - (labelled ? 8.0 : 5.0)), QPointF(px, rulerHeight - 1.0));
        if (labelled) {
            drawTabular(painter, font, QPointF(px, 13.0), fixedNumber(x, 3), Qt::AlignHCenter);
            last_label = px;
        }
    }
    if (last_label > 0.0) {
        painter.setPen(t.ink3);
        painter.setFont(font);
        painter.drawText(QPointF(last_label + 18.0, 13.0), QStringLiteral("mm"));
    }
}

void SheetView::paintFrames(QPainter& painter)
{
    const Tokens& t = tokens();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    const auto frame = [&](const QString& subject, const QPen& pen) {
        QRectF rect = subjectRect(subject);
        if (rect.isNull())
            return;
        painter.setPen(pen);
        painter.drawRoundedRect(rect.adjusted(-6, -6, 6, 6), 6, 6);
    };
    if (m_gesture.kind == Gesture::Kind::none && m_hover.kind == Hit::Kind::thing && m_hover.subject != m_document.selection())
        frame(m_hover.subject, QPen(t.edge, 1.2));
    const bool shoulder = m_hover.kind == Hit::Kind::shoulder || m_gesture.kind == Gesture::Kind::shoulder;
    const int index = m_gesture.kind == Gesture::Kind::shoulder ? m_gesture.hit.shoulder : m_hover.shoulder;
    const Shaft& shaft = m_document.shown().shaft;
    if (shoulder && index >= 0 && static_cast<std::size_t>(index) < shaft.segments.size()) {
        const double x_mm = segmentStart_mm(shaft, static_cast<std::size_t>(index) + 1);
        double radius = shaft.segments[static_cast<std::size_t>(index)].outerRight_mm() / 2.0;
        if (static_cast<std::size_t>(index) + 1 < shaft.segments.size())
            radius = std::max(radius, shaft.segments[static_cast<std::size_t>(index) + 1].outer_mm / 2.0);
        painter.setPen(QPen(t.live, 2.4, Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(pixelOf(x_mm, radius), pixelOf(x_mm, -radius));
    }
}

void SheetView::paintBadges(QPainter& painter)
{
    // What is wrong says so where it is wrong: one badge for each thing, the worst mark, a number when there is more.
    const Tokens& t = tokens();
    struct Badge {
        QString subject;
        int stops = 0, cautions = 0;
    };
    std::vector<Badge> badges;
    for (const Finding& finding : m_document.assessment().findings) {
        if (finding.accepted || finding.severity == Severity::note)
            continue;
        const QString path = subjectPath(m_document.shown(), finding.subject);
        if (path.isEmpty())
            continue;
        auto it = std::find_if(badges.begin(), badges.end(), [&](const Badge& badge) { return badge.subject == path; });
        if (it == badges.end())
            it = badges.insert(badges.end(), {path, 0, 0});
        (finding.severity == Severity::stop ? it->stops : it->cautions) += 1;
    }
    const QFont font = windowFont(10, QFont::DemiBold);
    for (const Badge& badge : badges) {
        const QRectF rect = subjectRect(badge.subject);
        if (rect.isNull())
            continue;
        const bool stop = badge.stops > 0;
        const int count = stop ? badge.stops : badge.cautions; // as the card says it
        const QPointF centre(rect.right() + 7.0, rect.top() - 5.0);
        const QColor colour = stop ? t.stop : t.caution;
        painter.setPen(QPen(t.sheet, 2.0));
        painter.setBrush(stop ? t.stop_soft : t.caution_soft);
        painter.drawEllipse(centre, 9.0, 9.0);
        painter.setPen(QPen(colour, 1.0));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(centre, 8.0, 8.0);
        drawMark(painter, stop ? Mark::cross : Mark::bang, centre, 7.5, colour, 1.8);
        if (count > 1) {
            painter.setPen(colour);
            painter.setFont(font);
            painter.drawText(centre + QPointF(10.0, 4.0), QString::number(count));
        }
    }
}

void SheetView::paintCards(QPainter& painter)
{
    const Tokens& t = tokens();
    for (const PlacedCard& card : m_placed) {
        const SupportCardData& card_data = m_cards[static_cast<std::size_t>(card.index)];
        const Support& support = m_document.shown().supports[static_cast<std::size_t>(card.index)];
        const bool selected = card_data.subject == m_document.selection();
        const double x = std::round(m_scale.toPx(support.x_mm)) + 0.5;
        painter.setRenderHint(QPainter::Antialiasing, false);
        painter.setPen(QPen(selected ? t.live : t.edge, selected ? 2.0 : 1.0));
        if (x > card.rect.left() + 4.0 && x < card.rect.right() - 4.0) {
            painter.drawLine(QPointF(x, m_drawing_room.bottom()), QPointF(x, card.rect.top() + 1.0));
        } else if (x > m_gutter - 40.0 && x < m_drawing_room.right()) {
            // The card stands beside its place: a leader goes there.
            const double foot = std::clamp(x, card.rect.left() + 16.0, card.rect.right() - 16.0);
            painter.setRenderHint(QPainter::Antialiasing);
            painter.drawLine(QPointF(x, m_drawing_room.bottom() - 6.0), QPointF(foot, card.rect.top() + 1.0));
        }
        const bool hovered = m_hover.kind == Hit::Kind::card && m_hover.subject == card_data.subject;
        paintSupportCard(painter, card_data, card.rect, card.form, selected, hovered);
    }
}

void SheetView::paintHairline(QPainter& painter)
{
    if (!m_view.hairline_mm)
        return;
    const Tokens& t = tokens();
    const double x_mm = *m_view.hairline_mm;
    const double x = std::round(m_scale.toPx(x_mm)) + 0.5;
    if (x < m_gutter - 40.0 || x > m_drawing_room.right())
        return;
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(QPen(t.ink, 1.0));
    const double bottom = std::min<double>(height() - 6.0, m_strip_room.top() + m_strips.total_px() - m_strip_scroll);
    // Cards are read as a whole: the line passes behind them.
    double y = rulerHeight;
    QVector<QRectF> covers;
    for (const PlacedCard& card : m_placed) {
        if (x >= card.rect.left() && x <= card.rect.right())
            covers.append(card.rect);
    }
    std::sort(covers.begin(), covers.end(), [](const QRectF& a, const QRectF& b) { return a.top() < b.top(); });
    for (const QRectF& cover : covers) {
        if (cover.top() > y)
            painter.drawLine(QPointF(x, y), QPointF(x, cover.top()));
        y = std::max(y, cover.bottom());
    }
    if (bottom > y)
        painter.drawLine(QPointF(x, y), QPointF(x, bottom));

    m_strips.paintReadings(painter, m_strip_room, m_strip_scroll, m_scale, x_mm, width() - 12.0, m_sheet_px_per_mm,
                           m_document.results(), m_view_list);

    const QFont font = windowFont(12, QFont::DemiBold);
    const QString words = fixedNumber(x_mm, m_scale.px_per_mm > 8.0 ? 2 : 1) + QStringLiteral(" mm");
    const double tag_width = tabularWidth(font, words) + 14.0;
    const QRectF tag(x - tag_width / 2.0, 2.0, tag_width, 20.0); // in the ruler, clear of the tools
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(t.ink);
    painter.drawRoundedRect(tag, 4, 4);
    painter.setPen(t.sheet);
    drawTabular(painter, font, QPointF(tag.center().x(), tag.bottom() - 5.5), words, Qt::AlignHCenter);
}

void SheetView::paintScrollMark(QPainter& painter)
{
    const double hidden = m_strips.total_px() - m_strip_room.height();
    if (hidden <= 1.0)
        return;
    const Tokens& t = tokens();
    const double share = m_strip_room.height() / m_strips.total_px();
    const double track = m_strip_room.height() - 8.0;
    const double length = std::max(24.0, track * share);
    const double top = m_strip_room.top() + 4.0 + (track - length) * (m_strip_scroll / hidden);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(t.edge);
    painter.drawRoundedRect(QRectF(width() - 9.0, top, 5.0, length), 2.5, 2.5);
}

void SheetView::paintGhostWords(QPainter& painter)
{
    // What taking the suggestion would change, beside its outline.
    if (!m_view.ghost || m_view.ghost_text.isEmpty())
        return;
    const QRectF thing = subjectRect(m_view.ghost_subject);
    if (thing.isNull())
        return;
    const Tokens& t = tokens();
    const QFont font = windowFont(12, QFont::DemiBold);
    const double room = (m_end_room.isNull() ? width() : m_end_room.left()) - 16.0;
    const QString words = elided(font, m_view.ghost_text, room - 24.0);
    const double wide = tabularWidth(font, words) + 18.0;
    QRectF box(thing.center().x() - wide / 2.0, thing.bottom() + 10.0, wide, 24.0);
    box.moveLeft(std::clamp(box.left(), 8.0, std::max(8.0, room - wide)));
    box.moveTop(std::clamp(box.top(), rulerHeight + toolRow, std::max(rulerHeight + toolRow, m_drawing_room.bottom() - 28.0)));
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(t.live, 1.2));
    painter.setBrush(t.live_soft);
    painter.drawRoundedRect(box, 5, 5);
    painter.setPen(t.live);
    drawTabular(painter, font, QPointF(box.left() + 9.0, box.bottom() - 7.5), words);
}

void SheetView::paintTip(QPainter& painter)
{
    if (m_gesture.tip.isEmpty() || !(holding()))
        return;
    const Tokens& t = tokens();
    const QFont font = windowFont(12, QFont::DemiBold);
    const double tip_width = tabularWidth(font, m_gesture.tip) + 16.0;
    QRectF box(m_gesture.tip_at.x() + 16.0, m_gesture.tip_at.y() - 30.0, tip_width, 22.0);
    if (box.right() > width() - 4.0)
        box.moveRight(m_gesture.tip_at.x() - 12.0);
    box.moveTop(std::max(box.top(), rulerHeight + 2.0));
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(t.live, 1.2));
    painter.setBrush(t.card);
    painter.drawRoundedRect(box, 5, 5);
    painter.setPen(t.live);
    drawTabular(painter, font, QPointF(box.left() + 8.0, box.bottom() - 6.5), m_gesture.tip);
}

// --- Hit test -------------------------------------------------------------------------------------------------------

SheetView::Hit SheetView::hitAt(QPointF at) const
{
    Hit hit;
    if (m_document.shown().shaft.segments.empty())
        return hit;
    if (m_ruler_room.contains(at)) {
        hit.kind = Hit::Kind::ruler;
        return hit;
    }
    for (auto it = m_placed.rbegin(); it != m_placed.rend(); ++it) {
        if (it->rect.contains(at)) {
            hit.kind = Hit::Kind::card;
            hit.subject = m_cards[static_cast<std::size_t>(it->index)].subject;
            hit.rect = it->rect;
            return hit;
        }
    }
    if (m_strip_room.contains(at)) {
        hit.kind = Hit::Kind::strips;
        return hit;
    }
    if (m_end_room.contains(at)) {
        const MmMap map{m_sheet_px_per_mm, QPointF(m_end_room.center().x(), m_axis_y)};
        double nearest = 1e9;
        for (const drawing::Group& group : m_end_view.groups) {
            if (group.handle.empty() || group.items.empty())
                continue;
            QRectF rect = map.rectToPx(group.bounds);
            const QPointF centre = rect.center();
            rect = rect.adjusted(-std::max(0.0, hitReach - rect.width() / 2.0), -std::max(0.0, hitReach - rect.height() / 2.0),
                                 std::max(0.0, hitReach - rect.width() / 2.0), std::max(0.0, hitReach - rect.height() / 2.0));
            const double distance = std::hypot(at.x() - centre.x(), at.y() - centre.y());
            if (rect.contains(at) && distance < nearest) {
                nearest = distance;
                hit.kind = Hit::Kind::handle;
                hit.subject = QString::fromStdString(group.subject);
                hit.handle = QString::fromStdString(group.handle);
                hit.rect = rect;
            }
        }
        return hit;
    }
    const MmMap map{m_sheet_px_per_mm, QPointF(m_scale.zero_px, m_axis_y)};
    const auto grown = [](QRectF rect) {
        const double dx = std::max(0.0, hitReach - rect.width() / 2.0), dy = std::max(0.0, hitReach - rect.height() / 2.0);
        return rect.adjusted(-dx, -dy, dx, dy);
    };
    // Dimension numbers first: they stand on top. Only the text counts, not its long lines.
    for (const drawing::Group& group : m_dimensions.groups) {
        if (group.handle.empty())
            continue;
        for (const drawing::Primitive& item : group.items) {
            const auto* text = std::get_if<drawing::Text>(&item);
            if (text == nullptr)
                continue;
            drawing::Group only;
            only.items.emplace_back(*text);
            drawing::computeBounds(only);
            const QRectF rect = map.rectToPx(only.bounds).adjusted(-4, -4, 4, 4);
            if (rect.contains(at)) {
                hit.kind = Hit::Kind::handle;
                hit.subject = QString::fromStdString(group.subject);
                hit.handle = QString::fromStdString(group.handle);
                hit.rect = rect;
                return hit;
            }
        }
    }
    // Things from the top layer down; the smaller one wins within a layer.
    const drawing::Group* best = nullptr;
    QRectF best_rect;
    const auto consider = [&](const drawing::DisplayList& list, bool shaft) {
        for (const drawing::Group& group : list.groups) {
            if (group.subject.empty() || group.items.empty() || (group.layer == drawing::Layer::shaft) != shaft)
                continue;
            const QRectF rect = grown(map.rectToPx(group.bounds));
            if (!rect.contains(at))
                continue;
            const bool better =
                best == nullptr || group.layer > best->layer ||
                (group.layer == best->layer && rect.width() * rect.height() < best_rect.width() * best_rect.height());
            if (better) {
                best = &group;
                best_rect = rect;
            }
        }
    };
    consider(m_drawing, false);
    if (best == nullptr) {
        consider(m_loads, false);
        hit.load = best != nullptr;
    }
    if (best == nullptr) {
        // Shoulders: edges of the shaft that can be taken.
        const Shaft& shaft = m_document.shown().shaft;
        double x_mm = 0.0;
        for (std::size_t i = 0; i < shaft.segments.size(); ++i) {
            x_mm += shaft.segments[i].length_mm;
            double radius = shaft.segments[i].outerRight_mm() / 2.0;
            if (i + 1 < shaft.segments.size())
                radius = std::max(radius, shaft.segments[i + 1].outer_mm / 2.0);
            const double px = m_scale.toPx(x_mm);
            if (std::abs(at.x() - px) <= 5.0 && std::abs(at.y() - m_axis_y) <= radius * m_scale.px_per_mm + 6.0) {
                hit.kind = Hit::Kind::shoulder;
                hit.shoulder = static_cast<int>(i);
                hit.subject = pathOf(shaft.segments[i].id);
                return hit;
            }
        }
        consider(m_drawing, true);
    }
    if (best != nullptr) {
        hit.kind = Hit::Kind::thing;
        hit.subject = QString::fromStdString(best->subject);
        hit.handle = QString::fromStdString(best->handle);
        hit.rect = best_rect;
    }
    return hit;
}

// --- Mouse ----------------------------------------------------------------------------------------------------------

void SheetView::mousePressEvent(QMouseEvent* event)
{
    setFocus(Qt::MouseFocusReason);
    if (m_field != nullptr) {
        if (!takeField())
            return;
    }
    const QPointF at = event->position();
    if (event->button() == Qt::MiddleButton) {
        m_gesture = {};
        m_gesture.kind = Gesture::Kind::pan;
        m_gesture.press = at;
        m_gesture.pan0 = m_pan;
        setCursor(Qt::ClosedHandCursor);
        return;
    }
    if (event->button() != Qt::LeftButton)
        return;
    updateLists();
    const Hit hit = hitAt(at);
    m_gesture = {};
    m_gesture.hit = hit;
    m_gesture.press = at;
    m_gesture.pan0 = m_pan;
    switch (hit.kind) {
    case Hit::Kind::ruler:
    case Hit::Kind::strips:
        m_gesture.kind = Gesture::Kind::hairline;
        setHairline(m_scale.toMm(at.x()));
        break;
    case Hit::Kind::card:
        m_document.select(hit.subject);
        break;
    case Hit::Kind::paper:
        m_document.select({});
        m_gesture.kind = Gesture::Kind::pressed;
        break;
    case Hit::Kind::thing:
    case Hit::Kind::handle:
    case Hit::Kind::shoulder:
        m_document.select(hit.subject);
        m_gesture.kind = Gesture::Kind::pressed;
        break;
    }
}

void SheetView::mouseMoveEvent(QMouseEvent* event)
{
    const QPointF at = event->position();
    switch (m_gesture.kind) {
    case Gesture::Kind::none: {
        updateLists();
        const Hit before = m_hover;
        m_hover = hitAt(at);
        if (m_hover.kind == Hit::Kind::strips || m_hover.kind == Hit::Kind::ruler)
            setHairline(m_scale.toMm(at.x()));
        if (before.kind != m_hover.kind || before.subject != m_hover.subject || before.handle != m_hover.handle ||
            before.shoulder != m_hover.shoulder) {
            Qt::CursorShape shape = Qt::ArrowCursor;
            if (m_hover.kind == Hit::Kind::shoulder)
                shape = Qt::SizeHorCursor;
            else if (m_hover.kind == Hit::Kind::handle)
                shape = isDegrees(m_hover.handle) ? Qt::OpenHandCursor : Qt::IBeamCursor;
            else if (m_hover.kind == Hit::Kind::thing && subjectOf(m_hover.subject).kind != SubjectKind::segment)
                shape = Qt::SizeHorCursor;
            else if (m_hover.kind == Hit::Kind::card)
                shape = Qt::PointingHandCursor;
            setCursor(shape);
            update();
        }
        break;
    }
    case Gesture::Kind::pressed:
        if (std::hypot(at.x() - m_gesture.press.x(), at.y() - m_gesture.press.y()) > 3.0) {
            startGesture(m_gesture.press);
            moveGesture(at, event->modifiers());
        }
        break;
    case Gesture::Kind::hairline:
        setHairline(m_scale.toMm(at.x()));
        break;
    case Gesture::Kind::pan:
        m_pan = m_gesture.pan0 + (at - m_gesture.press);
        m_layout_dirty = true;
        update();
        break;
    default:
        moveGesture(at, event->modifiers());
        break;
    }
}

void SheetView::mouseReleaseEvent(QMouseEvent*)
{
    finishGesture();
}

void SheetView::startGesture(QPointF at)
{
    const Hit& hit = m_gesture.hit;
    const Subject what = subjectOf(hit.subject);
    const Arrangement& value = m_document.committed();
    m_held_force_N = drawing::largestForce_N(m_document.results(), m_view_list);
    if (hit.kind == Hit::Kind::handle && isDegrees(hit.handle)) {
        m_gesture.kind = Gesture::Kind::turn;
        setCursor(Qt::ClosedHandCursor);
        return;
    }
    if (hit.kind == Hit::Kind::shoulder) {
        m_gesture.kind = Gesture::Kind::shoulder;
        m_gesture.snaps = shoulderSnapPlaces(value, static_cast<std::size_t>(hit.shoulder));
        m_gesture.grab_mm = m_scale.toMm(at.x()) - segmentStart_mm(value.shaft, static_cast<std::size_t>(hit.shoulder) + 1);
        return;
    }
    if (hit.kind == Hit::Kind::thing && (what.kind == SubjectKind::support || what.kind == SubjectKind::part)) {
        double x_mm = 0.0;
        if (const Support* support = what.kind == SubjectKind::support ? findSupport(value, SupportId(what.id)) : nullptr)
            x_mm = support->x_mm;
        else if (const Part* part = findPart(value, PartId(what.id)))
            x_mm = part->x_mm;
        m_gesture.kind = Gesture::Kind::move;
        m_gesture.grab_mm = m_scale.toMm(at.x()) - x_mm;
        m_gesture.snaps = snapPlaces(value, hit.subject);
        return;
    }
    if (hit.kind == Hit::Kind::paper || what.kind == SubjectKind::segment) {
        m_gesture.kind = Gesture::Kind::pan;
        setCursor(Qt::ClosedHandCursor);
    }
}

void SheetView::moveGesture(QPointF at, Qt::KeyboardModifiers modifiers)
{
    const Arrangement& base = m_document.committed();
    const double reach = modifiers & Qt::ControlModifier ? 0.0 : snapReach_px / m_scale.px_per_mm;
    const double step = modifiers & Qt::ControlModifier ? 0.1 : dragStep_mm(m_scale.px_per_mm);
    const double raw = m_scale.toMm(at.x()) - m_gesture.grab_mm;
    m_gesture.tip_at = at;
    std::optional<Result<Arrangement>> next;
    if (m_gesture.kind == Gesture::Kind::move) {
        const double x_mm = snapped(raw, m_gesture.snaps, reach, step);
        next = actions::moveTo(base, m_gesture.hit.subject, x_mm);
        m_gesture.tip = lengthText(x_mm) + QStringLiteral(" mm");
    } else if (m_gesture.kind == Gesture::Kind::shoulder) {
        const double x_mm = snapped(raw, m_gesture.snaps, reach, step);
        next = actions::moveShoulderAfter(base, static_cast<std::size_t>(m_gesture.hit.shoulder), x_mm,
                                          modifiers & Qt::ShiftModifier);
        m_gesture.tip = lengthText(x_mm) + QStringLiteral(" mm");
    } else if (m_gesture.kind == Gesture::Kind::turn) {
        const QPointF centre(m_end_room.center().x(), m_axis_y);
        double angle = std::atan2(centre.y() - at.y(), at.x() - centre.x()) * 180.0 / std::numbers::pi;
        angle = std::round(angle);
        if (!(modifiers & Qt::ControlModifier) && std::abs(std::remainder(angle, 15.0)) <= 3.0)
            angle = std::round(angle / 15.0) * 15.0;
        if (angle < 0.0)
            angle += 360.0;
        if (angle >= 360.0)
            angle -= 360.0;
        next = actions::setDirection(base, PartId(subjectOf(m_gesture.hit.subject).id), angle,
                                     actions::furtherMeshOf(m_gesture.hit.handle));
        m_gesture.tip = fixedNumber(angle, 1) + QStringLiteral("°");
    }
    if (next) {
        if (next->ok())
            m_document.preview(next->value());
        else
            m_gesture.tip = findingText(next->finding());
        invalidate();
    }
}

void SheetView::finishGesture()
{
    const Gesture done = m_gesture;
    m_gesture = {};
    unsetCursor();
    if (done.kind == Gesture::Kind::move || done.kind == Gesture::Kind::shoulder || done.kind == Gesture::Kind::turn) {
        const QString name = subjectName(m_document.committed(), done.hit.subject);
        const QString text = done.kind == Gesture::Kind::turn       ? tr("Turn %1").arg(name)
                             : done.kind == Gesture::Kind::shoulder ? tr("Move shoulder")
                                                                    : tr("Move %1").arg(name);
        m_document.commitPreview(text);
    } else if (done.kind == Gesture::Kind::pan) {
        m_layout_dirty = true;
    }
    invalidate();
}

void SheetView::cancelGesture()
{
    if (m_gesture.kind == Gesture::Kind::pan) {
        m_pan = m_gesture.pan0;
        m_layout_dirty = true;
    }
    m_gesture = {};
    unsetCursor();
    m_document.dropPreview();
    invalidate();
}

void SheetView::mouseDoubleClickEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton)
        return;
    updateLists();
    m_gesture = {};
    const Hit hit = hitAt(event->position());
    if (hit.kind == Hit::Kind::handle) {
        openField(hit.subject, hit.handle, hit.rect);
    } else if (hit.kind == Hit::Kind::thing && hit.load && subjectOf(hit.subject).kind == SubjectKind::part) {
        // On a load its own size is typed: power or torque of a drive, the component of a free force.
        const QString handle = loadHandle(hit.subject);
        if (handle.isEmpty())
            emit hinted(tr("This load follows from the others: type theirs"));
        else
            openField(hit.subject, handle, QRectF(event->position().x() - 40.0, event->position().y() - 12.0, 80.0, 24.0));
    } else if (hit.kind == Hit::Kind::thing) {
        const Subject what = subjectOf(hit.subject);
        const QString key = what.kind == SubjectKind::segment ? QStringLiteral("outer_mm") : QStringLiteral("x_mm");
        openField(hit.subject, hit.subject + QLatin1Char('.') + key,
                  QRectF(event->position().x() - 40.0, event->position().y() - 12.0, 80.0, 24.0));
    }
}

void SheetView::wheelEvent(QWheelEvent* event)
{
    const QPointF delta = event->pixelDelta().isNull() ? QPointF(event->angleDelta()) / 2.0 : QPointF(event->pixelDelta());
    if (event->modifiers() & Qt::ControlModifier) {
        zoomBy(std::pow(1.0015, delta.y() * 2.0), event->position());
    } else if (m_strip_room.contains(event->position()) || (std::abs(m_zoom - 1.0) < 1e-6 && m_pan.isNull())) {
        const double hidden = std::max(0.0, m_strips.total_px() - m_strip_room.height());
        m_strip_scroll = std::clamp(m_strip_scroll - delta.y(), 0.0, hidden);
        update();
    } else {
        m_pan += event->modifiers() & Qt::ShiftModifier ? QPointF(delta.y(), 0.0) : QPointF(delta.x(), delta.y());
        m_layout_dirty = true;
        update();
    }
    event->accept();
}

void SheetView::leaveEvent(QEvent*)
{
    if (m_hover.kind != Hit::Kind::paper) {
        m_hover = {};
        update();
    }
}

void SheetView::resizeEvent(QResizeEvent*)
{
    m_layout_dirty = true;
    positionField();
}

bool SheetView::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        updateLists();
        const Hit hit = hitAt(help->pos());
        QString words;
        if (hit.kind == Hit::Kind::handle)
            words = isDegrees(hit.handle) ? tr("Drag to turn, double click to type") : tr("Double click to type");
        else if (hit.kind == Hit::Kind::shoulder)
            words = tr("Shoulder: drag, the neighbour gives way; with Shift the rest moves along");
        else if (hit.kind == Hit::Kind::strips) {
            const auto index =
                static_cast<std::size_t>((help->pos().y() - m_strip_room.top() + m_strip_scroll) / m_strips.heightOfOne_px());
            if (index < m_view.strips.size())
                words = QString::fromStdString(drawing::stripSignNote(m_view.strips[index], m_view.plane));
        } else if (!hit.subject.isEmpty()) {
            words = subjectName(m_document.shown(), hit.subject);
            if (hit.load && subjectOf(hit.subject).kind == SubjectKind::part && !loadHandle(hit.subject).isEmpty())
                words += QStringLiteral("\n") + tr("Double click to type this load");
            for (const Finding& finding : m_document.assessment().findings) {
                if (subjectPath(m_document.shown(), finding.subject) == hit.subject && finding.severity != Severity::note)
                    words += QStringLiteral("\n") + severityName(finding.severity) + QStringLiteral(": ") + findingText(finding);
            }
        }
        if (words.isEmpty())
            QToolTip::hideText();
        else
            QToolTip::showText(help->globalPos(), words, this);
        return true;
    }
    if (event->type() == QEvent::ShortcutOverride) {
        // While a gesture runs or a field is open, Esc and the arrows belong to it.
        auto* key = static_cast<QKeyEvent*>(event);
        if (m_gesture.kind != Gesture::Kind::none && key->key() == Qt::Key_Escape) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

void SheetView::contextMenuEvent(QContextMenuEvent* event)
{
    updateLists();
    const Hit hit = hitAt(event->pos());
    if (!hit.subject.isEmpty())
        m_document.select(hit.subject);
    QMenu menu(this);
    if (!hit.subject.isEmpty()) {
        if (hit.kind == Hit::Kind::handle)
            menu.addAction(tr("Type a value"), this, [this, hit] { openField(hit.subject, hit.handle, hit.rect); });
        menu.addAction(tr("Duplicate"), this, &SheetView::duplicateSelection);
        menu.addAction(tr("Delete"), this, &SheetView::deleteSelection);
    } else {
        setHairline(m_scale.toMm(event->pos().x()));
        QMenu* insert = menu.addMenu(tr("Insert here"));
        for (const actions::ShelfEntry& entry : actions::shelf())
            insert->addAction(entry.name, this, [this, item = entry.item] { insertAtHairline(item); });
        menu.addAction(tr("Show the whole shaft"), this, &SheetView::fit);
    }
    menu.exec(event->globalPos());
}

// --- Keys -----------------------------------------------------------------------------------------------------------

void SheetView::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Escape:
        if (m_gesture.kind != Gesture::Kind::none)
            cancelGesture();
        else if (!m_document.selection().isEmpty())
            m_document.select({});
        else
            m_view.hairline_mm.reset();
        update();
        return;
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
        nudge(event->key(), event->modifiers());
        return;
    case Qt::Key_PageDown:
        selectNext(1);
        return;
    case Qt::Key_PageUp:
        selectNext(-1);
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        editSelectionInPlace();
        return;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoomIn();
        return;
    case Qt::Key_Minus:
        zoomOut();
        return;
    case Qt::Key_0:
        fit();
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void SheetView::nudge(int key, Qt::KeyboardModifiers modifiers)
{
    const double size = modifiers & Qt::ShiftModifier ? 10.0 : (modifiers & Qt::AltModifier ? 0.1 : 1.0);
    const Subject what = subjectOf(m_document.selection());
    const Arrangement& value = m_document.committed();
    const QString gesture = QStringLiteral("nudge ") + m_document.selection();
    const bool along = key == Qt::Key_Left || key == Qt::Key_Right;
    const double step = key == Qt::Key_Left || key == Qt::Key_Down ? -size : size;
    const auto tidy = [](double x) { return std::round(x * 1e6) / 1e6; };
    const QString name = subjectName(value, m_document.selection());
    if (what.kind == SubjectKind::support && along) {
        if (const Support* support = findSupport(value, SupportId(what.id)))
            m_document.push(actions::moveTo(value, m_document.selection(), tidy(support->x_mm + step)), tr("Move %1").arg(name),
                            gesture);
    } else if (what.kind == SubjectKind::part && along) {
        if (const Part* part = findPart(value, PartId(what.id)))
            m_document.push(actions::moveTo(value, m_document.selection(), tidy(part->x_mm + step)), tr("Move %1").arg(name),
                            gesture);
    } else if (what.kind == SubjectKind::segment) {
        if (const Segment* segment = findSegment(value, SegmentId(what.id))) {
            if (along)
                m_document.push(resizeSegment(value, segment->id, tidy(segment->length_mm + step), Rest::moves_along),
                                tr("Change length of %1").arg(name), gesture + QStringLiteral(" length"));
            else
                m_document.push(setDiameter(value, segment->id, tidy(segment->outer_mm + step), segment->outer_end_mm),
                                tr("Change diameter of %1").arg(name), gesture + QStringLiteral(" diameter"));
        }
    } else if (along) {
        setHairline(m_view.hairline_mm.value_or(value.shaft.length_mm() / 2.0) + step);
    }
}

void SheetView::setHairline(double x_mm)
{
    const double length = m_document.shown().shaft.length_mm();
    m_view.hairline_mm = std::round(std::clamp(x_mm, 0.0, length) * 10.0) / 10.0;
    update();
}

void SheetView::selectNext(int step)
{
    // In the order of x: supports and parts first, then segments.
    const Arrangement& value = m_document.shown();
    std::vector<std::pair<double, QString>> things;
    for (const Support& support : value.supports)
        things.emplace_back(support.x_mm, pathOf(support.id));
    for (const Part& part : value.parts)
        things.emplace_back(part.x_mm, pathOf(part.id));
    std::stable_sort(things.begin(), things.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const Segment& segment : value.shaft.segments)
        things.emplace_back(0.0, pathOf(segment.id));
    if (things.empty())
        return;
    const auto it =
        std::find_if(things.begin(), things.end(), [&](const auto& thing) { return thing.second == m_document.selection(); });
    const auto count = static_cast<int>(things.size());
    const int at = it == things.end() ? (step > 0 ? -1 : count) : static_cast<int>(it - things.begin());
    m_document.select(things[static_cast<std::size_t>((at + step + count) % count)].second);
}

// --- Zoom -----------------------------------------------------------------------------------------------------------

void SheetView::zoomBy(double factor, std::optional<QPointF> around)
{
    const QPointF centre =
        around.value_or(QPointF(m_view.hairline_mm ? m_scale.toPx(*m_view.hairline_mm) : m_drawing_room.center().x(), m_axis_y));
    const double x_mm = m_scale.toMm(centre.x());
    const double r_mm = (m_axis_y - centre.y()) / m_scale.px_per_mm;
    const double next = std::clamp(m_zoom * factor, 0.5, 40.0);
    if (next == m_zoom)
        return;
    m_zoom = next;
    layoutSheet();
    // What lay under the pointer stays there.
    m_pan.rx() += centre.x() - m_scale.toPx(x_mm);
    m_pan.ry() += centre.y() - (m_axis_y - r_mm * m_scale.px_per_mm);
    if (std::abs(m_zoom - 1.0) < 1e-3) {
        m_zoom = 1.0;
        m_pan = {};
    }
    m_layout_dirty = true;
    update();
}

void SheetView::fit()
{
    m_zoom = 1.0;
    m_pan = {};
    m_layout_dirty = true;
    update();
}

// --- Edits ----------------------------------------------------------------------------------------------------------

void SheetView::insertAtHairline(actions::ShelfItem item)
{
    const double x_mm = m_view.hairline_mm.value_or(m_document.committed().shaft.length_mm() / 2.0);
    const Result<actions::Inserted> made = actions::insert(m_document.committed(), item, x_mm);
    if (!made.ok()) {
        emit hinted(findingText(made.finding()));
        return;
    }
    m_document.push(made.value().value, made.value().text);
    m_document.select(made.value().subject);
}

void SheetView::deleteSelection()
{
    const QString subject = m_document.selection();
    if (subject.isEmpty())
        return;
    const QString name = subjectName(m_document.committed(), subject);
    if (m_document.push(actions::remove(m_document.committed(), subject), tr("Delete %1").arg(name)))
        m_document.select({});
}

void SheetView::duplicateSelection()
{
    if (m_document.selection().isEmpty())
        return;
    const Result<actions::Inserted> made = actions::duplicate(m_document.committed(), m_document.selection());
    if (!made.ok()) {
        emit hinted(findingText(made.finding()));
        return;
    }
    m_document.push(made.value().value, made.value().text);
    m_document.select(made.value().subject);
}

void SheetView::shelfDragTo(actions::ShelfItem item, QPoint global)
{
    const QPointF at = mapFromGlobal(global);
    updateLists();
    const bool over = rect().contains(at.toPoint());
    if (!over) {
        if (m_gesture.kind == Gesture::Kind::shelf) {
            m_gesture = {};
            m_document.dropPreview();
            invalidate();
        }
        return;
    }
    if (m_gesture.kind != Gesture::Kind::shelf) {
        m_gesture = {};
        m_gesture.kind = Gesture::Kind::shelf;
        m_held_force_N = drawing::largestForce_N(m_document.results(), m_view_list);
    }
    const double x_mm = snapped(m_scale.toMm(at.x()), {}, 0.0, dragStep_mm(m_scale.px_per_mm));
    const Result<actions::Inserted> made = actions::insert(m_document.committed(), item, x_mm);
    m_gesture.tip_at = at;
    if (made.ok()) {
        m_gesture.tip = lengthText(std::clamp(x_mm, 0.0, m_document.committed().shaft.length_mm())) + QStringLiteral(" mm");
        m_document.preview(made.value().value);
    } else {
        m_gesture.tip = findingText(made.finding());
        m_document.dropPreview();
    }
    invalidate();
}

void SheetView::shelfDrop(actions::ShelfItem item, QPoint global)
{
    const bool over = m_gesture.kind == Gesture::Kind::shelf;
    m_gesture = {};
    if (!over) {
        m_document.dropPreview();
        invalidate();
        return;
    }
    const QPointF at = mapFromGlobal(global);
    const double x_mm = snapped(m_scale.toMm(at.x()), {}, 0.0, dragStep_mm(m_scale.px_per_mm));
    const Result<actions::Inserted> made = actions::insert(m_document.committed(), item, x_mm);
    if (made.ok()) {
        if (m_document.previewing())
            m_document.commitPreview(made.value().text);
        else
            m_document.push(made.value().value, made.value().text);
        m_document.select(made.value().subject);
    } else {
        m_document.dropPreview();
        emit hinted(findingText(made.finding()));
    }
    setFocus(Qt::OtherFocusReason);
    invalidate();
}

void SheetView::shelfCancel()
{
    if (m_gesture.kind == Gesture::Kind::shelf)
        cancelGesture();
}

QString SheetView::loadHandle(const QString& subject) const
{
    const Part* part = findPart(m_document.committed(), PartId(subjectOf(subject).id));
    if (part == nullptr)
        return {};
    QString key;
    if (part->drive && part->drive->power_kW) {
        key = QStringLiteral("drive.power_kW");
    } else if (part->drive && part->drive->torque_Nmm) {
        key = QStringLiteral("drive.torque_Nmm");
    } else if (const auto* load = std::get_if<PointLoad>(&part->body)) {
        const bool y = m_view.plane == drawing::Plane::y ||
                       (m_view.plane == drawing::Plane::resultant && std::abs(load->force_N.y) > std::abs(load->force_N.z));
        const double seen = y ? load->force_N.y : load->force_N.z;
        key = seen == 0.0 && load->force_N.x != 0.0 ? QStringLiteral("force_N.x")
              : y                                   ? QStringLiteral("force_N.y")
                                                    : QStringLiteral("force_N.z");
    } else if (std::holds_alternative<WeightBody>(part->body)) {
        key = QStringLiteral("mass_kg");
    } else if (const auto* coupling = std::get_if<Coupling>(&part->body)) {
        key = coupling->radial_force_N ? QStringLiteral("radial_force_N") : QString();
    } else if (std::holds_alternative<Impeller>(part->body)) {
        key = QStringLiteral("thrust_N");
    } else if (std::holds_alternative<DistributedLoad>(part->body)) {
        key = m_view.plane == drawing::Plane::y ? QStringLiteral("start_N_per_mm.y") : QStringLiteral("start_N_per_mm.z");
    }
    return key.isEmpty() ? QString() : subject + QLatin1Char('.') + key;
}

// --- Field in place ---------------------------------------------------------------------------------------------------

namespace
{

struct PlaceInput {
    double value = 0.0;
    QuantityKind kind = QuantityKind::length_mm;
    double offset = 0.0, sign = 1.0; ///< input = offset + sign * typed value
};

/// The input behind a load that is typed on the sheet.
struct LoadInput {
    double* value = nullptr; ///< in the given part
    QuantityKind kind = QuantityKind::force_N;
};

std::optional<LoadInput> loadInput(Part& part, const QString& handle)
{
    const auto is = [&](const char* key) { return handle.endsWith(QLatin1Char('.') + QLatin1String(key)); };
    if (is("drive.power_kW") && part.drive && part.drive->power_kW)
        return LoadInput{&*part.drive->power_kW, QuantityKind::power_kW};
    if (is("drive.torque_Nmm") && part.drive && part.drive->torque_Nmm)
        return LoadInput{&*part.drive->torque_Nmm, QuantityKind::moment_Nmm};
    if (is("mass_kg") && part.mass_kg)
        return LoadInput{&*part.mass_kg, QuantityKind::mass_kg};
    if (auto* load = std::get_if<PointLoad>(&part.body)) {
        for (const auto& [key, axis] :
             {std::pair{"force_N.x", &Vector3::x}, {"force_N.y", &Vector3::y}, {"force_N.z", &Vector3::z}}) {
            if (is(key))
                return LoadInput{&(load->force_N.*axis), QuantityKind::force_N};
        }
    }
    if (auto* coupling = std::get_if<Coupling>(&part.body);
        coupling != nullptr && is("radial_force_N") && coupling->radial_force_N)
        return LoadInput{&*coupling->radial_force_N, QuantityKind::force_N};
    if (auto* impeller = std::get_if<Impeller>(&part.body); impeller != nullptr && is("thrust_N"))
        return LoadInput{&impeller->thrust_N, QuantityKind::force_N};
    if (auto* spread = std::get_if<DistributedLoad>(&part.body)) {
        if (is("start_N_per_mm.y"))
            return LoadInput{&spread->start_N_per_mm.y, QuantityKind::line_load_N_per_mm};
        if (is("start_N_per_mm.z"))
            return LoadInput{&spread->start_N_per_mm.z, QuantityKind::line_load_N_per_mm};
    }
    return std::nullopt;
}

std::optional<PlaceInput> placeInput(const Arrangement& value, const QString& subject, const QString& handle)
{
    const std::string path = inputPath(subject, handle).toStdString();
    const Subject what = subjectOf(subject);
    const QString key = QString::fromStdString(path).section(QLatin1Char('.'), -1);
    if (key == QLatin1String("x_mm") && handle.contains(QLatin1Char('.'))) {
        for (const drawing::PlaneDimension& dimension : drawing::planeDimensions(value)) {
            if (dimension.path == path)
                return PlaceInput{dimension.to_mm - dimension.from_mm, QuantityKind::length_mm, dimension.offset_mm,
                                  dimension.sign};
        }
    }
    if (what.kind == SubjectKind::support) {
        if (const Support* support = findSupport(value, SupportId(what.id)); support != nullptr && key == QLatin1String("x_mm"))
            return PlaceInput{support->x_mm};
    } else if (what.kind == SubjectKind::part) {
        if (const Part* part = findPart(value, PartId(what.id))) {
            if (key == QLatin1String("x_mm"))
                return PlaceInput{part->x_mm};
            Part look = *part;
            if (const auto input = loadInput(look, handle))
                return PlaceInput{*input->value, input->kind};
            if (const auto angle = actions::direction(*part, actions::furtherMeshOf(handle)); angle && isDegrees(key))
                return PlaceInput{*angle, QuantityKind::angle_deg};
        }
    } else if (what.kind == SubjectKind::segment) {
        if (const Segment* segment = findSegment(value, SegmentId(what.id))) {
            if (key == QLatin1String("outer_mm"))
                return PlaceInput{segment->outer_mm};
            if (key == QLatin1String("length_mm"))
                return PlaceInput{segment->length_mm};
        }
    }
    return std::nullopt;
}

Result<Arrangement> setPlaceInput(const Arrangement& value, const QString& subject, const QString& handle, double input)
{
    const Subject what = subjectOf(subject);
    const QString key = inputPath(subject, handle).section(QLatin1Char('.'), -1);
    if (key == QLatin1String("outer_mm"))
        return setDiameter(value, SegmentId(what.id), input);
    if (key == QLatin1String("length_mm"))
        return resizeSegment(value, SegmentId(what.id), input, Rest::moves_along);
    if (const Part* part = what.kind == SubjectKind::part ? findPart(value, PartId(what.id)) : nullptr) {
        Part next = *part;
        if (const auto load = loadInput(next, handle)) {
            *load->value = input;
            return setPart(value, std::move(next));
        }
    }
    if (isDegrees(key))
        return actions::setDirection(value, PartId(what.id), input, actions::furtherMeshOf(handle));
    return actions::moveTo(value, subject, input);
}

} // namespace

void SheetView::openField(const QString& subject, const QString& handle, const QRectF& rect)
{
    closeField();
    const auto input = placeInput(m_document.committed(), subject, handle);
    if (!input)
        return;
    m_document.select(subject);
    m_field_subject = subject;
    m_field_handle = handle;
    m_field = new QLineEdit(this);
    m_field->setObjectName(QStringLiteral("placeField"));
    m_field->setAccessibleName(tr("Value of %1").arg(subjectName(m_document.committed(), subject)));
    m_field->setFont(windowFont(13));
    m_field->setAlignment(Qt::AlignRight);
    m_field->setText(
        plainNumber(input->value).remove(QChar(0x2009)).remove(QChar(0x202F)).replace(QChar(0x2212), QLatin1Char('-')));
    const std::string_view unit = unitName(input->kind);
    m_field->setToolTip(QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size())));
    if (input->kind != QuantityKind::length_mm && input->kind != QuantityKind::angle_deg)
        m_field->setText(m_field->text() + QLatin1Char(' ') + m_field->toolTip());
    m_field->setGeometry(QRectF(rect.center().x() - 44.0, rect.center().y() - 14.0, 88.0, 28.0).toRect());
    m_field->installEventFilter(this);
    m_field->show();
    m_field->selectAll();
    m_field->setFocus(Qt::OtherFocusReason);
}

bool SheetView::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_field && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        switch (key->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (takeField())
                setFocus(Qt::OtherFocusReason);
            return true;
        case Qt::Key_Escape:
            closeField();
            setFocus(Qt::OtherFocusReason);
            return true;
        case Qt::Key_Tab:
            fieldNext(1);
            return true;
        case Qt::Key_Backtab:
            fieldNext(-1);
            return true;
        default:
            break;
        }
    }
    if (watched == m_field && event->type() == QEvent::ShortcutOverride) {
        event->accept();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

bool SheetView::takeField()
{
    if (m_field == nullptr)
        return true;
    const auto input = placeInput(m_document.committed(), m_field_subject, m_field_handle);
    if (!input) {
        closeField();
        return true;
    }
    const auto complain = [this](const QString& words) {
        if (m_field_message == nullptr) {
            m_field_message = new QLabel(this);
            m_field_message->setObjectName(QStringLiteral("placeFieldMessage"));
        }
        const Tokens& t = tokens();
        m_field_message->setStyleSheet(
            QStringLiteral("background:%1;color:%2;border:1px solid %2;border-radius:5px;padding:3px 7px;")
                .arg(t.stop_soft.name(), t.stop.name()));
        m_field_message->setText(words);
        m_field_message->adjustSize();
        const int x = std::min(m_field->x(), width() - m_field_message->width() - 4);
        m_field_message->move(std::max(4, x), m_field->y() + m_field->height() + 3);
        m_field_message->show();
        m_field_message->raise();
        m_field->setProperty("invalid", true);
        m_field->setStyleSheet(m_field->styleSheet());
        m_field->setFocus(Qt::OtherFocusReason);
    };
    const auto parsed = parseQuantity(m_field->text().toStdString(), input->kind);
    if (const auto* error = std::get_if<QuantityError>(&parsed)) {
        complain(quantityErrorText(error->code, error->detail));
        return false;
    }
    const double typed = std::get<double>(parsed);
    const Result<Arrangement> next =
        setPlaceInput(m_document.committed(), m_field_subject, m_field_handle, input->offset + input->sign * typed);
    if (!next.ok()) {
        complain(findingText(next.finding()));
        return false;
    }
    const QString name = subjectName(m_document.committed(), m_field_subject);
    Arrangement typed_value = next.value();
    typed_value.proposed.erase(
        inputPath(m_field_subject, m_field_handle).replace(QLatin1String(".drive."), QLatin1String(".")).toStdString());
    closeField();
    m_document.push(std::move(typed_value), tr("Type a value of %1").arg(name));
    return true;
}

void SheetView::closeField()
{
    if (m_field_message != nullptr) {
        m_field_message->deleteLater();
        m_field_message = nullptr;
    }
    if (m_field != nullptr) {
        m_field->removeEventFilter(this);
        m_field->hide();
        m_field->deleteLater();
        m_field = nullptr;
    }
}

void SheetView::fieldNext(int step)
{
    const QString subject = m_field_subject, handle = m_field_handle;
    if (!takeField())
        return;
    m_layout_dirty = true;
    updateLists();
    // Reading order: rows from the top, then from the left.
    struct Place {
        QString subject, handle;
        QRectF rect;
    };
    std::vector<Place> places;
    const MmMap map{m_sheet_px_per_mm, QPointF(m_scale.zero_px, m_axis_y)};
    for (const drawing::Group& group : m_dimensions.groups) {
        if (group.handle.empty())
            continue;
        for (const drawing::Primitive& item : group.items) {
            if (const auto* text = std::get_if<drawing::Text>(&item)) {
                const QPointF at = map.toPx(text->x, text->y);
                places.push_back({QString::fromStdString(group.subject), QString::fromStdString(group.handle),
                                  QRectF(at.x() - 20, at.y() - 12, 40, 20)});
                break;
            }
        }
    }
    std::stable_sort(places.begin(), places.end(), [](const Place& a, const Place& b) {
        const int row_a = static_cast<int>(a.rect.center().y() / 16.0), row_b = static_cast<int>(b.rect.center().y() / 16.0);
        return row_a != row_b ? row_a < row_b : a.rect.left() < b.rect.left();
    });
    const auto it =
        std::find_if(places.begin(), places.end(), [&](const Place& p) { return p.subject == subject && p.handle == handle; });
    if (it == places.end() || places.empty()) {
        setFocus(Qt::OtherFocusReason);
        return;
    }
    const auto count = static_cast<int>(places.size());
    const int next = (static_cast<int>(it - places.begin()) + step + count) % count;
    const Place& place = places[static_cast<std::size_t>(next)];
    openField(place.subject, place.handle, place.rect);
}

void SheetView::positionField()
{
    if (m_field != nullptr)
        closeField();
}

void SheetView::editSelectionInPlace()
{
    updateLists();
    const QString subject = m_document.selection();
    if (subject.isEmpty())
        return;
    const Subject what = subjectOf(subject);
    const QString handle = subject + (what.kind == SubjectKind::segment ? QStringLiteral(".outer_mm") : QStringLiteral(".x_mm"));
    const QRectF rect = subjectRect(subject);
    const QPointF at = handlePixel(subject, handle).value_or(rect.center());
    openField(subject, handle, QRectF(at.x() - 30.0, at.y() - 12.0, 60.0, 24.0));
}

} // namespace shaftwright::ui
