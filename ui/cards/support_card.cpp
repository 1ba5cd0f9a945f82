#include "ui/cards/support_card.h"

#include "core/units/number_text.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/widgets/marks.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/theme.h"

#include <QFontMetricsF>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shaftwright::ui
{

namespace
{

QString dimensions(const BearingChoice& choice)
{
    if (choice.rows.empty())
        return {};
    const CatalogueRow& row = choice.rows.front().row;
    return QStringLiteral("%1 × %2 × %3").arg(lengthText(row.bore_mm), lengthText(row.outer_mm), lengthText(choice.width_mm()));
}

QString caseName(const Assessment& results, int index)
{
    if (index < 0 || index >= static_cast<int>(results.load_cases.size()))
        return {};
    const CaseSummary& summary = results.load_cases[static_cast<std::size_t>(index)];
    return QString::fromStdString(summary.name.empty() ? summary.id.value : summary.name);
}

void drawLine(QPainter& painter, QPointF baseline, const QFont& font, const QColor& colour, const QString& text)
{
    painter.setPen(colour);
    drawTabular(painter, font, baseline, text);
}

} // namespace

SupportCardData supportCardData(const Support& support, const Assessment& results, int case_index, bool old_results)
{
    SupportCardData data;
    data.subject = pathOf(support.id);
    data.letter = QString::fromStdString(support.name.empty() ? support.id.value : support.name);
    data.role = roleName(support.role);
    data.old_results = old_results;
    if (support.bearing) {
        data.designation = QString::fromStdString(support.bearing->designation());
        data.bearing_line = familyName(support.bearing->family) + QLatin1Char(' ') + dimensions(*support.bearing);
    }
    for (const Finding& finding : results.findings) {
        if (finding.subject != support.id.value || finding.accepted)
            continue;
        data.stops += finding.severity == Severity::stop ? 1 : 0;
        data.cautions += finding.severity == Severity::caution ? 1 : 0;
    }
    const SupportAssessment* found = results.find(support.id);
    if (found == nullptr || found->cases.empty())
        return data;
    const bool one_case = case_index >= 0 && case_index < static_cast<int>(found->cases.size());
    const int shown = one_case ? case_index : std::clamp(found->governing_case, 0, static_cast<int>(found->cases.size()) - 1);
    const SupportCase& load = found->cases[static_cast<std::size_t>(shown)];
    data.radial = forceText(load.radial_N);
    data.axial = std::abs(load.axial_N) < 0.5 ? QObject::tr("none") : forceText(std::abs(load.axial_N));
    double tilt_mrad = load.tilt_mrad;
    const bool all_cases = !one_case && results.load_cases.size() > 1;
    if (all_cases) {
        // The case that governs the life need not be the one that bends most.
        int steepest = shown;
        for (std::size_t i = 0; i < found->cases.size(); ++i) {
            if (found->cases[i].tilt_mrad > tilt_mrad * (1.0 + 1e-9)) {
                tilt_mrad = found->cases[i].tilt_mrad;
                steepest = static_cast<int>(i);
            }
        }
        data.load_case = caseName(results, shown);
        data.tilt_case = caseName(results, steepest);
    }
    data.tilt = QString::fromStdString(fixedDecimal(tilt_mrad, 2)) + QStringLiteral(" mrad"); // as many digits on every card
    if (found->bearing) {
        const BearingAssessment& bearing = *found->bearing;
        data.life_h = bearing.L10_h;
        if (bearing.L10_h)
            data.life_h = *bearing.L10_h * bearing.a1;
        data.required_h = bearing.required_L_h;
        data.met = bearing.met;
        std::optional<double> s0 = bearing.S0_min;
        if (one_case && static_cast<std::size_t>(shown) < bearing.cases.size())
            s0 = bearing.cases[static_cast<std::size_t>(shown)].S0;
        if (s0)
            data.s0 = number(*s0);
        if (all_cases && s0)
            data.s0_case = caseName(results, bearing.governing_static_case);
        // In fatigue nothing may add up; then no case governs and none is named.
        if (bearing.governing_case >= 0 && results.load_cases.size() > 1)
            data.governs = QObject::tr("%1 governs").arg(caseName(results, bearing.governing_case));
        // Loads of the bearing itself include what a partner pushes onto it.
        if (static_cast<std::size_t>(shown) < bearing.cases.size()) {
            const BearingCase& own = bearing.cases[static_cast<std::size_t>(shown)];
            data.radial = forceText(own.Fr_N);
            data.axial = own.Fa_N < 0.5 ? QObject::tr("none") : forceText(own.Fa_N);
        }
    }
    return data;
}

std::vector<PlacedCard> placeCards(const std::vector<double>& places_px, QRectF room, int selected)
{
    constexpr double gap = 12.0, bent = 200.0;
    const std::size_t count = places_px.size();
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return places_px[a] < places_px[b]; });

    // `beside`: how far a card may stand off its place, to which a bent leader then goes.
    const auto attempt = [&](double width, double beside = 0.0) -> std::optional<std::vector<double>> {
        // Leftmost and rightmost feasible left edges; in between the card stands centred under its place.
        const double reach = 18.0 - beside;
        std::vector<double> low(count), high(count), left(count);
        for (std::size_t i = 0; i < count; ++i) {
            const double place = places_px[order[i]];
            low[i] = std::max(room.left(), place - width + reach);
            if (i > 0)
                low[i] = std::max(low[i], low[i - 1] + width + gap);
        }
        for (std::size_t i = count; i-- > 0;) {
            const double place = places_px[order[i]];
            high[i] = std::min(room.right() - width, place - reach);
            if (i + 1 < count)
                high[i] = std::min(high[i], high[i + 1] - width - gap);
            if (high[i] < low[i] - 0.5)
                return std::nullopt;
        }
        for (std::size_t i = 0; i < count; ++i) {
            double least = low[i];
            if (i > 0)
                least = std::max(least, left[i - 1] + width + gap);
            left[i] = std::clamp(places_px[order[i]] - width / 2.0, least, std::max(least, high[i]));
        }
        return left;
    };

    CardForm form = CardForm::pin;
    double width = 32.0, height = compactCardHeight;
    std::optional<std::vector<double>> edges;
    for (const double full : {364.0, 336.0, 312.0}) {
        edges = room.height() >= fullCardHeight - 1.0 ? attempt(full) : std::nullopt;
        if (edges) {
            form = CardForm::full;
            width = full;
            height = fullCardHeight;
            break;
        }
    }
    if (!edges && room.height() >= fullCardHeight - 1.0) {
        edges = attempt(304.0, bent);
        if (edges) {
            form = CardForm::full;
            width = 304.0;
            height = fullCardHeight;
        }
    }
    for (const double beside : {0.0, bent}) {
        for (const double compact : {220.0, 180.0, 148.0}) {
            if (edges)
                break;
            edges = attempt(compact, beside);
            if (edges) {
                form = CardForm::compact;
                width = compact;
            }
        }
    }
    if (!edges)
        edges = attempt(32.0);

    std::vector<PlacedCard> cards;
    for (std::size_t i = 0; i < count; ++i) {
        const double left = edges ? (*edges)[i] : places_px[order[i]] - 16.0;
        const double card_height = form == CardForm::pin ? 32.0 : std::min(height, room.height());
        cards.push_back({static_cast<int>(order[i]), QRectF(std::round(left), room.top(), width, card_height), form});
    }
    if (form != CardForm::full && selected >= 0) {
        const auto it = std::find_if(cards.begin(), cards.end(), [&](const PlacedCard& card) { return card.index == selected; });
        if (it != cards.end()) {
            // Opens over its neighbours: last in the list is painted on top.
            PlacedCard open = *it;
            if (open.form == CardForm::compact && room.height() < fullCardHeight - 1.0)
                return cards; // no room to open
            cards.erase(it);
            open.form = room.height() >= fullCardHeight - 1.0 ? CardForm::full : CardForm::compact;
            const double open_width = open.form == CardForm::full ? 312.0 : 220.0;
            const double place = places_px[static_cast<std::size_t>(selected)];
            const double most = std::max(room.left(), room.right() - open_width);
            open.rect = QRectF(std::round(std::clamp(place - open_width / 2.0, room.left(), most)), room.top(), open_width,
                               open.form == CardForm::full ? fullCardHeight : std::min(compactCardHeight, room.height()));
            cards.push_back(open);
        }
    }
    return cards;
}

void paintLifeBar(QPainter& painter, const QRectF& rect, double found, double required, bool met)
{
    const Tokens& t = tokens();
    constexpr double full_scale = 2.3;
    const double share = required > 0.0 ? found / required : full_scale;
    const double head = 6.0;
    const QRectF track(rect.left(), rect.center().y() - rect.height() / 2.0, rect.width(), rect.height());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(t.edge, 1.2));
    painter.setBrush(t.card);
    painter.drawRoundedRect(track.adjusted(0, 0, -head, 0), track.height() / 2.0, track.height() / 2.0);
    const QColor fill = met ? t.met : t.stop;
    const double length = std::clamp(share / full_scale, 0.0, 1.0) * (track.width() - head);
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    if (length > 1.0)
        painter.drawRoundedRect(QRectF(track.left() + 1, track.top() + 1, length - 1, track.height() - 2),
                                track.height() / 2.0 - 1, track.height() / 2.0 - 1);
    if (share > full_scale) {
        QPainterPath tip;
        tip.moveTo(track.right() - head - 3, track.top() - 2);
        tip.lineTo(track.right() + 2, track.center().y());
        tip.lineTo(track.right() - head - 3, track.bottom() + 2);
        tip.closeSubpath();
        painter.drawPath(tip);
    }
    if (required > 0.0) {
        const double at = std::round(track.left() + (track.width() - head) / full_scale) + 0.5;
        painter.setPen(QPen(t.ink, 2.0, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(at, track.top() - 3), QPointF(at, track.bottom() + 3));
    }
    painter.restore();
}

void paintSupportCard(QPainter& painter, const SupportCardData& data, const QRectF& rect, CardForm form, bool selected,
                      bool hovered)
{
    const Tokens& t = tokens();
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(t.card);
    painter.setPen(selected ? QPen(t.live, 2.0) : QPen(hovered ? t.ink2 : t.edge, 1.2));
    const double inset = selected ? 1.0 : 0.6;
    painter.drawRoundedRect(rect.adjusted(inset, inset, -inset, -inset), 8, 8);
    painter.setClipRect(rect.adjusted(2, 2, -2, -2));
    painter.setOpacity(data.old_results ? 0.62 : 1.0);

    const QFont strong = windowFont(15, QFont::DemiBold), text = windowFont(12), figures = windowFont(13, QFont::DemiBold),
                small = windowFont(11);
    const double left = rect.left() + 14.0, right = rect.right() - 14.0;

    const auto verdict = [&](QPointF baseline, double room, bool with_requirement) {
        if (!data.life_h) {
            const QString words = data.designation.isEmpty() ? QObject::tr("no bearing yet") : QObject::tr("no life found");
            drawLine(painter, baseline, text, t.ink2, elided(text, words, room));
            return;
        }
        const bool judged = data.met.has_value();
        const QColor colour = !judged ? t.ink2 : (*data.met ? t.met : t.stop);
        double x = baseline.x();
        if (judged) {
            drawMark(painter, *data.met ? Mark::tick : Mark::cross, QPointF(x + 5, baseline.y() - 4.5), 9, colour, 2.0);
            x += 16.0;
        }
        const QString life = data.required_h ? lifeAgainst(*data.life_h, *data.required_h) : lifeText(*data.life_h);
        painter.setPen(judged && !*data.met ? t.stop : t.ink);
        drawTabular(painter, figures, QPointF(x, baseline.y()), life);
        x += tabularWidth(figures, life) + 8.0;
        if (with_requirement) {
            QString words;
            if (data.required_h && judged && !*data.met)
                words = QObject::tr("of %1 required").arg(lifeText(*data.required_h).remove(QStringLiteral(" h")));
            else if (!data.required_h)
                words = QObject::tr("no life required");
            if (!words.isEmpty() && x + tabularWidth(text, words) <= baseline.x() + room)
                drawLine(painter, QPointF(x, baseline.y()), text, t.ink2, words);
        }
    };

    if (form == CardForm::pin) {
        painter.setPen(t.ink);
        painter.setFont(strong);
        painter.drawText(rect.adjusted(0, -1, 0, -10), Qt::AlignCenter, data.letter);
        const bool bad = data.stops > 0 || (data.met && !*data.met);
        const Mark mark = bad ? Mark::cross : (data.cautions > 0 ? Mark::bang : (data.met ? Mark::tick : Mark::info));
        const QColor colour = bad ? t.stop : (data.cautions > 0 ? t.caution : (data.met ? t.met : t.ink2));
        drawMark(painter, mark, QPointF(rect.center().x(), rect.bottom() - 8), 7, colour);
        painter.restore();
        return;
    }

    // First line: letter, role, governing case or what is wrong.
    double baseline = rect.top() + 21.0;
    drawLine(painter, QPointF(left, baseline), strong, t.ink, data.letter);
    const double role_x = left + tabularWidth(strong, data.letter) + 10.0;
    if (form == CardForm::full) {
        QString head = data.old_results ? QObject::tr("before the stop") : data.governs;
        double head_right = right;
        if (data.stops > 0) {
            drawMark(painter, Mark::cross, QPointF(right - 4.0, baseline - 4.0), 8.0, t.stop, 2.0);
            head_right -= 16.0;
            head = data.stops == 1 ? QObject::tr("1 stop") : QObject::tr("%1 stops").arg(data.stops);
        }
        const double head_room = right - role_x - tabularWidth(text, data.role) - 16.0;
        head = elided(small, head, head_room);
        drawLine(painter, QPointF(role_x, baseline), text, t.ink2, data.role);
        painter.setPen(data.stops > 0 ? t.stop : t.ink2);
        drawTabular(painter, small, QPointF(head_right, baseline), head, Qt::AlignRight);
    } else {
        const QString designation = data.designation.isEmpty() ? data.role : data.designation;
        painter.setPen(t.ink);
        drawLine(painter, QPointF(role_x, baseline), figures, t.ink, elided(figures, designation, right - role_x));
    }

    if (form == CardForm::compact) {
        const double bar_y = rect.top() + 35.0;
        if (data.life_h)
            paintLifeBar(painter, QRectF(left, bar_y - 4.0, right - left, 8.0), *data.life_h, data.required_h.value_or(0.0),
                         data.met.value_or(true));
        verdict(QPointF(left, rect.top() + 60.0), right - left, right - left > 190.0);
        painter.restore();
        return;
    }

    baseline = rect.top() + 43.0;
    if (data.designation.isEmpty()) {
        drawLine(painter, QPointF(left, baseline), text, t.ink2, QObject::tr("No bearing chosen: see what suits in the panel"));
    } else {
        drawLine(painter, QPointF(left, baseline), strong, t.ink, data.designation);
        const double at = left + tabularWidth(strong, data.designation) + 10.0;
        drawLine(painter, QPointF(at, baseline), text, t.ink2, elided(text, data.bearing_line, right - at));
    }
    baseline = rect.top() + 63.0;
    if (data.life_h) {
        paintLifeBar(painter, QRectF(left, baseline - 8.5, 126.0, 8.0), *data.life_h, data.required_h.value_or(0.0),
                     data.met.value_or(true));
        verdict(QPointF(left + 140.0, baseline), right - left - 140.0, true);
    } else if (!data.designation.isEmpty()) {
        verdict(QPointF(left, baseline), right - left, false);
    }

    // Each number names the case it is of, unless the head of the card does.
    const bool head_says = data.stops == 0 && !data.old_results && !data.governs.isEmpty();
    const QString said = head_says ? data.load_case : QString();
    const double step = (right - left) / 4.0;
    const auto labelled = [&](const QString& label, const QString& of_case) {
        if (of_case.isEmpty() || of_case == said)
            return label;
        const QString words = label + QStringLiteral(", ") + of_case;
        return QFontMetricsF(small).elidedText(words, Qt::ElideRight, step - 6.0);
    };
    const std::pair<QString, QString> columns[] = {{labelled(QObject::tr("Radial"), data.load_case), data.radial},
                                                   {labelled(QObject::tr("Axial"), data.load_case), data.axial},
                                                   {labelled(QObject::tr("Tilt"), data.tilt_case), data.tilt},
                                                   {labelled(QStringLiteral("S0"), data.s0_case), data.s0}};
    double x = left;
    for (const auto& [label, value] : columns) {
        if (!value.isEmpty()) {
            drawLine(painter, QPointF(x, rect.top() + 84.0), small, t.ink2, label);
            drawLine(painter, QPointF(x, rect.top() + 101.0), figures, t.ink, value);
        }
        x += step;
    }
    painter.restore();
}

} // namespace shaftwright::ui
