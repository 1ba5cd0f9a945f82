#include "core/drawing/sheet_common.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace shaftwright::drawing
{

using namespace inner;

namespace
{

struct Scale {
    double value;
    const char* text;
};
/// ISO 5455.
constexpr std::array<Scale, 16> scales{{{50.0, "50:1"},
                                        {20.0, "20:1"},
                                        {10.0, "10:1"},
                                        {5.0, "5:1"},
                                        {2.0, "2:1"},
                                        {1.0, "1:1"},
                                        {1.0 / 2.0, "1:2"},
                                        {1.0 / 5.0, "1:5"},
                                        {1.0 / 10.0, "1:10"},
                                        {1.0 / 20.0, "1:20"},
                                        {1.0 / 50.0, "1:50"},
                                        {1.0 / 100.0, "1:100"},
                                        {1.0 / 200.0, "1:200"},
                                        {1.0 / 500.0, "1:500"},
                                        {1.0 / 1000.0, "1:1000"},
                                        {1.0 / 2000.0, "1:2000"}}};

/// ISO 5457, trimmed, landscape.
constexpr std::array<std::array<double, 2>, 4> sizes{{{420.0, 297.0}, {594.0, 420.0}, {841.0, 594.0}, {1189.0, 841.0}}};

constexpr double border_left = 20.0, border = 10.0;
constexpr double block_width = 180.0, block_height = 39.0;
constexpr double inset = 5.0; ///< clear space inside the frame
constexpr double card_height = 34.0, card_width = 72.0, compact_height = 21.0, compact_width = 48.0, card_gap = 4.0;
constexpr double ruler_height = 8.0;
constexpr double least_strip = 15.0, best_strip = 56.0;
constexpr double notes_height = 11.0;
constexpr double item_column = 58.0, item_pitch = 4.2;

Text words(double x, double y, double height, std::string text, Ink ink = Ink::ink, bool bold = false,
           HAlign align = HAlign::left)
{
    return Text{x, y, height, std::move(text), align, VAlign::baseline, 0.0, ink, Font::drawing, bold, false};
}

/// Everything about one page size and scale that is known before it is drawn.
struct Plan {
    double width = 420.0, height = 297.0;
    Scale scale{1.0, "1:1"};
    SheetView view;
    Extent extent;
    double x0 = 0.0; ///< left face of the shaft on the page
    double axis_y = 0.0;
    double end_radius = 0.0; ///< 0: no end view
    double end_x = 0.0;
    double cards_top = 0.0, cards_height = 0.0;
    double card_w = 0.0, card_h = 0.0;
    int card_rows = 0;
    bool cards_aside = false; ///< in the column right of the drawing, else under the drawing
    double column_left = 0.0;
    double strips_top = 0.0, strip_height = 0.0;
    bool fits = false;
};

bool manyParts(const Arrangement& arrangement)
{
    return arrangement.parts.size() > 8;
}

/// Loads as the page shows them: its head line names the case already.
DisplayList pageLoads(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view)
{
    DisplayList list = loadList(arrangement, assessment, view);
    list.groups.erase(std::remove_if(list.groups.begin(), list.groups.end(),
                                     [](const Group& group) {
                                         const Text* text =
                                             group.items.empty() ? nullptr : std::get_if<Text>(&group.items.front());
                                         return text != nullptr && text->text == labels::arrowsOfCase;
                                     }),
                      list.groups.end());
    return list;
}

Plan planFor(const Arrangement& arrangement, const Assessment& assessment, const SheetView& wanted, double width, double height,
             const Scale& scale, bool aside)
{
    Plan plan;
    plan.width = width;
    plan.height = height;
    plan.scale = scale;
    plan.view = wanted;
    plan.view.scale = scale.value;
    plan.view.pixels_per_mm = 5.0; // 3 mm and 8 mm of half section are the limits of the signs in print
    plan.view.label_height_mm = 2.5;
    plan.view.dimension_height_mm = 3.5;
    plan.view.label_font = Font::drawing;
    plan.view.held_force_N = 0.0;
    plan.view.detail.reset(); // what the window shows does not decide on paper
    plan.view.dimensions = plan.view.loads = true;
    const bool empty = arrangement.shaft.segments.empty() && arrangement.parts.empty() && arrangement.supports.empty();
    plan.extent = drawingExtent(arrangement, plan.view);
    if (!empty) { // what the loads of this case really take
        const Layout places = layoutOf(arrangement, plan.view);
        plan.extent.above_mm = places.largest_radius + 3.0;
        plan.extent.right_mm = places.right - places.length + 6.0;
        const DisplayList loads = pageLoads(arrangement, assessment, plan.view);
        for (const Group& group : loads.groups) {
            if (group.items.empty())
                continue;
            plan.extent.above_mm = std::max(plan.extent.above_mm, group.bounds[3] + 2.0);
            plan.extent.right_mm = std::max(plan.extent.right_mm, group.bounds[2] - places.length + 2.0);
        }
        for (const DiameterLabel& label : places.diameters)
            plan.extent.right_mm = std::max(plan.extent.right_mm, label.box.x1 - places.length + 2.0);
    }
    const Layout layout = layoutOf(arrangement, plan.view);
    const double inner_left = border_left + inset;
    const double inner_right = width - border - inset;
    const double inner_top = height - border - inset;

    const double length = empty ? 100.0 : layout.length;
    plan.x0 = inner_left + std::max(stripHead_mm, plan.extent.left_mm);
    const double drawing_right = plan.x0 + length + plan.extent.right_mm;
    const double strips_right = plan.x0 + length + 14.0;

    plan.end_radius = std::min(layout.largest_radius, 32.0);
    const double reach = plan.end_radius > 0.0 ? endViewReach_mm(plan.end_radius) : 0.0;
    const double end_half = reach + 2.0;
    bool ok = plan.end_radius > 0.0 ? drawing_right + 2.0 * end_half <= inner_right : drawing_right <= inner_right;
    plan.end_x = inner_right - end_half;
    plan.column_left = std::max(drawing_right, strips_right) + 6.0;
    if (aside && plan.end_radius > 0.0)
        plan.end_x = std::max((plan.column_left + inner_right) / 2.0, plan.column_left + end_half);

    double above = plan.extent.above_mm + 6.0; // line of the case on top
    if (plan.end_radius > 0.0)
        above = std::max(above, reach + endViewCaption_mm + 1.0);
    plan.axis_y = inner_top - above;
    const double below = std::max(plan.extent.below_mm, plan.end_radius > 0.0 ? reach + 1.0 : 0.0);

    const auto supports = static_cast<int>(arrangement.supports.size());
    plan.card_w = card_width;
    plan.card_h = card_height;
    plan.cards_aside = aside;
    const double row = inner_right - (aside ? plan.column_left : inner_left);
    int per_row = std::max(1, static_cast<int>((row + card_gap) / (card_width + card_gap)));
    if (aside) {
        per_row = std::min(per_row, 2);
        ok = ok && row >= card_width && supports > 0 && !manyParts(arrangement);
    } else if (supports > per_row) {
        plan.card_w = compact_width;
        plan.card_h = compact_height;
        per_row = std::max(1, static_cast<int>((row + card_gap) / (compact_width + card_gap)));
    }
    plan.card_rows = supports == 0 ? 0 : (supports + per_row - 1) / per_row;
    plan.cards_height = plan.card_rows > 0 ? plan.card_rows * (plan.card_h + card_gap) - card_gap : 0.0;
    if (aside) {
        // Between the end view and the title block.
        plan.cards_top = plan.axis_y - reach - 6.0;
        ok = ok && plan.cards_top - plan.cards_height >= border + block_height + 6.0;
        plan.strips_top = plan.axis_y - below - 4.0;
    } else {
        plan.cards_top = plan.axis_y - below - (plan.card_rows > 0 ? 4.0 : 0.0);
        plan.strips_top = plan.cards_top - plan.cards_height - 4.0;
    }

    const auto strips = static_cast<double>(std::max<std::size_t>(plan.view.strips.size(), 1));
    const bool beside_block = strips_right <= width - border - block_width - 4.0;
    const double bottom = beside_block ? border + notes_height + 2.0 : border + block_height + 3.0;
    const double room = plan.strips_top - bottom - ruler_height;
    plan.strip_height = std::min(room / strips, best_strip);
    plan.view.strip_height_mm = plan.strip_height;
    ok = ok && plan.strip_height >= least_strip;
    if (manyParts(arrangement)) {
        const double list_left = std::max(strips_right + 4.0, inner_left);
        const int columns = static_cast<int>((inner_right - list_left) / item_column);
        const int lines = static_cast<int>((plan.strips_top - (border + block_height + 8.0)) / item_pitch);
        ok = ok && columns * lines >= static_cast<int>(arrangement.parts.size());
    }
    plan.fits = ok;
    return plan;
}

/// True when things on this page are large enough to be read: smallest bearing drawn at least as a sign, planes apart.
bool readable(const Arrangement& arrangement, const Plan& plan)
{
    for (const Support& support : arrangement.supports) {
        if (!support.bearing)
            continue;
        for (const SetRow& row : support.bearing->rows) {
            const double half = (row.row.outer_mm - row.row.bore_mm) / 2.0 * plan.view.scale;
            if (half > 0.0 && half < 3.0)
                return false;
        }
    }
    std::size_t tight = 0;
    const std::vector<PlaneDimension> chain = planeDimensions(arrangement);
    for (const PlaneDimension& one : chain)
        tight += (one.to_mm - one.from_mm) * plan.view.scale < 3.0 ? 1U : 0U;
    return tight <= 2 || tight * 4 <= chain.size();
}

Plan choosePlan(const Arrangement& arrangement, const Assessment& assessment, const SheetView& wanted)
{
    Plan last;
    bool any = false;
    for (const std::array<double, 2>& size : sizes) {
        for (const Scale& scale : scales) {
            // Cards beside the drawing where it leaves the room; else each stands under its support.
            Plan plan = planFor(arrangement, assessment, wanted, size[0], size[1], scale, true);
            if (!plan.fits)
                plan = planFor(arrangement, assessment, wanted, size[0], size[1], scale, false);
            if (!plan.fits)
                continue;
            if (readable(arrangement, plan))
                return plan;
            if (!any)
                last = plan; // the smallest page that holds it all, if no page makes it readable
            any = true;
            break;
        }
    }
    if (!any) { // a shaft of an absurd size: the smallest scale on the largest page
        last = planFor(arrangement, assessment, wanted, sizes.back()[0], sizes.back()[1], scales.back(), false);
        last.strip_height = std::max(last.strip_height, least_strip);
        last.view.strip_height_mm = last.strip_height;
    }
    return last;
}

void frame(Group& group, double width, double height)
{
    const double w = 0.7; // ISO 5457
    const double x0 = border_left;
    const double x1 = width - border;
    const double y0 = border;
    const double y1 = height - border;
    const auto bar = [&](double ax, double ay, double bx, double by) {
        rectangle(group, {ax, ay, bx, by}, Stroke::none, Ink::ink, Ink::ink);
    };
    bar(x0, y0, x1, y0 + w);
    bar(x0, y1 - w, x1, y1);
    bar(x0, y0, x0 + w, y1);
    bar(x1 - w, y0, x1, y1);
    const double cx = width / 2.0;
    const double cy = height / 2.0;
    bar(cx - w / 2.0, 5.0, cx + w / 2.0, 15.0);
    bar(cx - w / 2.0, height - 15.0, cx + w / 2.0, height - 5.0);
    bar(x0 - 5.0, cy - w / 2.0, x0 + 5.0, cy + w / 2.0);
    bar(x1 - 5.0, cy - w / 2.0, x1 + 5.0, cy + w / 2.0);
}

/// First angle: frustum with the small end left, the two circles at its right (ISO 5456-2).
void projectionSign(Group& group, double x, double y)
{
    line(group, x - 1.5, y, x + 11.5, y, Stroke::thin, Ink::ink);
    group.items.emplace_back(
        Path{{{x, y - 1.5}, {x + 10.0, y - 3.0}, {x + 10.0, y + 3.0}, {x, y + 1.5}}, true, Stroke::medium, Ink::ink, {}});
    const double cx = x + 17.0;
    line(group, cx - 4.2, y, cx + 4.2, y, Stroke::thin, Ink::ink);
    line(group, cx, y - 4.2, cx, y + 4.2, Stroke::thin, Ink::ink);
    group.items.emplace_back(Circle{cx, y, 3.0, Stroke::medium, Ink::ink, {}});
    group.items.emplace_back(Circle{cx, y, 1.5, Stroke::medium, Ink::ink, {}});
}

void titleBlock(Group& group, const Arrangement& arrangement, double width, const char* scale)
{
    const double x0 = width - border - block_width;
    const double y0 = border;
    rectangle(group, {x0, y0, x0 + block_width, y0 + block_height}, Stroke::thick, Ink::ink, Ink::paper);
    const double row = block_height / 3.0;
    const auto cell = [&](double x, int line_index, double w, std::string_view name, const std::string& value) {
        const double bottom = y0 + row * line_index;
        group.items.emplace_back(words(x + 1.5, bottom + row - 3.2, 1.8, std::string(name), Ink::ink2));
        if (!value.empty()) {
            const double room = w - 3.0;
            if (textWidth_mm(value, 3.5) <= room || textWidth_mm(value, 2.5) <= room) {
                group.items.emplace_back(words(x + 1.5, bottom + 3.0, textWidth_mm(value, 3.5) <= room ? 3.5 : 2.5, value));
            } else { // two or three lines, broken at spaces
                const auto broken = [&](double height, std::size_t most) {
                    std::vector<std::string> lines{value};
                    while (lines.size() < most && textWidth_mm(lines.back(), height) > room) {
                        std::size_t cut = std::string::npos;
                        for (std::size_t at = lines.back().find(' '); at != std::string::npos;
                             at = lines.back().find(' ', at + 1)) {
                            if (textWidth_mm(lines.back().substr(0, at), height) <= room)
                                cut = at;
                        }
                        if (cut == std::string::npos)
                            break;
                        std::string rest = lines.back().substr(cut + 1);
                        lines.back().erase(cut);
                        lines.push_back(std::move(rest));
                    }
                    return lines;
                };
                std::vector<std::string> lines = broken(2.2, 2);
                const bool two = textWidth_mm(lines.back(), 2.2) <= room;
                if (!two)
                    lines = broken(1.8, 3);
                const double height = two ? 2.2 : 1.8;
                const double pitch = two ? 3.7 : 2.7;
                double y = bottom + (two ? 5.4 : 6.4);
                for (const std::string& text : lines) {
                    group.items.emplace_back(words(x + 1.5, y, height, elide(text, room, height, Font::drawing)));
                    y -= pitch;
                }
            }
        }
        if (x > x0 + 0.1)
            line(group, x, bottom, x, bottom + row, Stroke::thin, Ink::ink);
    };
    line(group, x0, y0 + row, x0 + block_width, y0 + row, Stroke::thin, Ink::ink);
    line(group, x0, y0 + 2.0 * row, x0 + block_width, y0 + 2.0 * row, Stroke::thin, Ink::ink);
    const TitleBlock& title = arrangement.title;
    const std::string revision = arrangement.revisions.empty() ? std::string() : arrangement.revisions.back().letter;
    std::string date = title.date;
    if (date.empty() && !arrangement.revisions.empty())
        date = arrangement.revisions.back().date;
    cell(x0, 2, 52.0, labels::legalOwner, title.organisation);
    cell(x0 + 52.0, 2, 66.0, labels::documentType, std::string(labels::documentTypeValue));
    cell(x0 + 118.0, 2, 32.0, labels::dateOfIssue, date);
    cell(x0 + 150.0, 2, 30.0, labels::scale, scale);
    cell(x0, 1, 86.0, labels::title, title.title.empty() ? std::string(labels::untitled) : title.title);
    cell(x0 + 86.0, 1, 54.0, labels::purpose, title.purpose);
    cell(x0 + 140.0, 1, 40.0, labels::projection, {});
    projectionSign(group, x0 + 143.5, y0 + row + 4.6);
    group.items.emplace_back(words(x0 + 169.5, y0 + row + 3.4, 2.5, std::string(labels::millimetres)));
    cell(x0, 0, 52.0, labels::number, title.number);
    cell(x0 + 52.0, 0, 44.0, labels::createdBy, title.author);
    cell(x0 + 96.0, 0, 40.0, labels::approvedBy, {});
    cell(x0 + 136.0, 0, 14.0, labels::revision, revision);
    cell(x0 + 150.0, 0, 14.0, labels::language, std::string(labels::languageValue));
    cell(x0 + 164.0, 0, 16.0, labels::sheet, std::string(labels::sheetValue));
}

/// Ruler under the strips: the x of everything.
void ruler(Group& group, double length_mm, double scale)
{
    if (!(length_mm > 0.0) || !std::isfinite(length_mm))
        return;
    line(group, 0.0, 0.0, length_mm * scale, 0.0, Stroke::thin, Ink::ink2);
    const double wanted = 25.0 / scale; // about 25 mm on paper between numbers
    const double decade = std::pow(10.0, std::floor(std::log10(wanted)));
    const double factor = wanted / decade;
    const double step = decade * (factor < 1.5 ? 1.0 : factor < 3.5 ? 2.0 : factor < 7.5 ? 5.0 : 10.0);
    const int count = static_cast<int>(std::min(length_mm / step + 1e-9, 400.0));
    for (int i = 0; i <= count; ++i) {
        const double x = i * step * scale;
        line(group, x, 0.0, x, -1.6, Stroke::thin, Ink::ink2);
        group.items.emplace_back(Text{x, -2.6, 2.0, typographic(shortestDecimal(i * step)), HAlign::centre, VAlign::top, 0.0,
                                      Ink::ink3, Font::drawing, false, false});
    }
    group.items.emplace_back(
        Text{-stripHead_mm + 1.0, -1.0, 2.25, "x, mm", HAlign::left, VAlign::top, 0.0, Ink::ink2, Font::drawing, false, false});
}

std::string verdictWord(std::optional<bool> met)
{
    return std::string(!met ? labels::notJudged : *met ? labels::met : labels::notMet);
}

} // namespace

DisplayList supportCard(const Arrangement&, const Assessment& assessment, const SheetView& view, const Support& support,
                        double width_mm, double height_mm)
{
    DisplayList list;
    Group group;
    group.subject = supportPath(support);
    group.handle = "card";
    group.layer = Layer::card;
    const bool full = width_mm >= 66.0 && height_mm >= 30.0;
    const bool selected = view.selected == group.subject;
    const Font font = view.label_font;
    const auto put = [&](double x, double y, double h, const std::string& text, Ink ink, bool bold, HAlign align = HAlign::left) {
        group.items.emplace_back(Text{x, y, h, text, align, VAlign::baseline, 0.0, ink, font, bold, false});
    };
    roundRectangle(group, {0.0, 0.0, width_mm, height_mm}, 2.0, selected ? Stroke::thick : Stroke::thin,
                   selected ? Ink::live : Ink::edge, Ink::card);

    const double left = 3.0;
    const double right = width_mm - 3.0;
    double y = height_mm - 6.0;
    const std::string name = elide(support.id.value, width_mm * 0.4, 3.0, font);
    put(left, y, 3.0, name, Ink::ink, true);
    const double after_name = left + textWidth_mm(name, 3.0, font) * 1.06 + 2.5;
    const std::string role = elide(labels::role(support.role), right - after_name, 2.2, font);
    put(after_name, y, 2.2, role, Ink::ink2, false);

    const SupportAssessment* found = assessment.find(support.id);
    const BearingAssessment* bearing = found != nullptr && found->bearing ? &*found->bearing : nullptr;
    const int governing = found == nullptr       ? -1
                          : view.case_index >= 0 ? std::min(view.case_index, static_cast<int>(found->cases.size()) - 1)
                                                 : found->governing_case;
    const bool named = found != nullptr && governing >= 0 && static_cast<std::size_t>(governing) < assessment.load_cases.size() &&
                       assessment.load_cases.size() > 1;
    std::string case_below;
    if (full && named) {
        const double room = right - after_name - textWidth_mm(role, 2.2, font) - 3.0;
        const std::string& case_name = assessment.load_cases[static_cast<std::size_t>(governing)].name;
        std::string text = case_name;
        if (view.case_index < 0 && textWidth_mm(case_name + std::string(labels::governs), 2.0, font) <= room)
            text += std::string(labels::governs);
        if (textWidth_mm(text, 2.0, font) <= room)
            put(right, y, 2.0, text, Ink::ink2, false, HAlign::right);
        else
            case_below = text; // beside the verdict's words there is more room
    }
    y -= 5.6;
    if (!support.bearing || support.bearing->rows.empty()) {
        put(left, y, 2.5, std::string(labels::noBearing), Ink::ink2, false);
    } else {
        const std::string designation = elide(support.bearing->designation(), width_mm * 0.6, 3.0, font);
        put(left, y, 3.0, designation, Ink::ink, true);
        if (full) {
            const CatalogueRow& row = support.bearing->rows.front().row;
            const double x = left + textWidth_mm(designation, 3.0, font) * 1.06 + 2.5;
            const std::string size = numberTrimmed(row.bore_mm, 2) + " × " + numberTrimmed(row.outer_mm, 2) + " × " +
                                     numberTrimmed(support.bearing->width_mm(), 2);
            const double room = right - x;
            std::string text = std::string(labels::family(support.bearing->family)) + " " + size;
            if (textWidth_mm(text, 2.0, font) > room) // the family tells more than the size does
                text = std::string(labels::family(support.bearing->family));
            put(x, y, 2.0, elide(text, room, 2.0, font), Ink::ink2, false);
        }
    }
    y -= 5.2;
    // Life bar: linear, 0 to 2.3 times the required life, arrow head beyond.
    const double required = bearing != nullptr ? bearing->required_L_h.value_or(0.0) : 0.0;
    const std::optional<double> life = bearing != nullptr ? (bearing->Lnm_h ? bearing->Lnm_h : bearing->L10_h) : std::nullopt;
    const std::optional<bool> met = bearing == nullptr                               ? std::optional<bool>{}
                                    : (bearing->static_met && !*bearing->static_met) ? std::optional<bool>(false)
                                                                                     : bearing->met;
    if (bearing != nullptr) {
        double text_x = left;
        if (required > 0.0 && life && std::isfinite(*life)) {
            const double bar = full ? 26.0 : width_mm - 6.0;
            const double bar_y = full ? y : y + 0.8;
            const double share = *life / required / 2.3;
            roundRectangle(group, {left, bar_y, left + bar, bar_y + 2.0}, 1.0, Stroke::thin, Ink::edge, Ink::card);
            const Ink ink = *life >= required ? Ink::met : Ink::stop;
            const double end = left + std::max(bar * std::min(share, 1.0), 1.0);
            roundRectangle(group, {left, bar_y, end, bar_y + 2.0}, 1.0, Stroke::none, ink, ink);
            if (share > 1.0)
                group.items.emplace_back(Path{{{end - 0.5, bar_y - 0.6}, {end + 2.0, bar_y + 1.0}, {end - 0.5, bar_y + 2.6}},
                                              true,
                                              Stroke::none,
                                              ink,
                                              ink});
            const double mark = left + bar / 2.3;
            line(group, mark, bar_y - 1.0, mark, bar_y + 3.0, Stroke::thick, Ink::ink);
            if (full)
                text_x = left + bar + 4.0;
        }
        if (!full)
            y -= 4.0;
        if (met) {
            verdictMark(group, text_x, y, 2.2, *met ? 0 : 2);
            text_x += 3.6;
        }
        const std::string value = life ? lifeText(*life) : std::string(labels::noLife);
        const Ink ink = !met ? Ink::ink : *met ? Ink::met : Ink::stop;
        put(text_x, y, 2.4, value, ink, true);
        text_x += textWidth_mm(value, 2.4, font) * 1.06 + 2.0;
        if (full) {
            std::string rest = verdictWord(met);
            if (required > 0.0)
                rest += ", " + lifeText(required) + std::string(labels::required);
            const std::string verdict = elide(rest, right - left, 2.0, font);
            put(left, y - 4.0, 2.0, verdict, Ink::ink2, false);
            const double room = right - left - textWidth_mm(verdict, 2.0, font) - 3.0;
            if (!case_below.empty() && room > 12.0)
                put(right, y - 4.0, 2.0, elide(case_below, room, 2.0, font), Ink::ink2, false, HAlign::right);
        } else {
            put(text_x, y, 2.0, elide(verdictWord(met), std::max(right - text_x, 4.0), 2.0, font), Ink::ink2, false);
        }
    }
    if (full) {
        const SupportCase* one = found != nullptr && governing >= 0 && static_cast<std::size_t>(governing) < found->cases.size()
                                     ? &found->cases[static_cast<std::size_t>(governing)]
                                     : nullptr;
        if (one == nullptr) {
            put(left, 4.0, 2.2, std::string(labels::noResult), Ink::ink2, false);
        } else {
            constexpr std::array<double, 4> columns{0.0, 0.25, 0.51, 0.87};
            const auto field = [&](std::size_t index, std::string_view head_text, const std::string& value) {
                const double x = left + (right - left) * columns[index];
                put(x, 7.2, 1.8, std::string(head_text), Ink::ink2, false);
                put(x, 3.2, 2.3, value, Ink::ink, true);
            };
            const Unit unit = forceUnit(std::max(one->radial_N, std::abs(one->axial_N)));
            const double nil = 1e-6 * std::max(one->radial_N, 1.0);
            field(0, labels::radial, one->radial_N > nil ? withUnit(one->radial_N, unit) : std::string(labels::none));
            field(1, labels::axial,
                  std::abs(one->axial_N) > nil ? withUnit(std::abs(one->axial_N), unit) : std::string(labels::none));
            // Over all cases the steepest tilt counts, as the least static safety beside it does.
            double tilt_mrad = one->tilt_mrad;
            if (view.case_index < 0) {
                for (const SupportCase& other : found->cases)
                    tilt_mrad = std::max(tilt_mrad, other.tilt_mrad);
            }
            field(2, labels::tilt, number3(tilt_mrad) + " mrad");
            if (bearing != nullptr && bearing->S0_min)
                field(3, labels::staticSafety, number3(*bearing->S0_min));
        }
    }
    computeBounds(group);
    list.groups.push_back(std::move(group));
    return list;
}

Page pageOf(const Arrangement& arrangement, const Assessment& assessment)
{
    SheetView view;
    view.strips = {StripKind::shear, StripKind::moment, StripKind::torque, StripKind::deflection};
    return pageOf(arrangement, assessment, view);
}

Page pageOf(const Arrangement& arrangement, const Assessment& assessment, const SheetView& wanted)
{
    const Plan plan = choosePlan(arrangement, assessment, wanted);
    Page page;
    page.width_mm = plan.width;
    page.height_mm = plan.height;
    page.scale_text = plan.scale.text;
    const double inner_left = border_left + inset;
    const double inner_right = plan.width - border - inset;

    Group ground;
    ground.layer = Layer::overlay; // the frame stays whole
    frame(ground, plan.width, plan.height);
    titleBlock(ground, arrangement, plan.width, plan.scale.text);
    computeBounds(ground);
    page.list.groups.push_back(std::move(ground));

    const auto place = [&](DisplayList part, double x, double y) {
        part.translate(x, y);
        page.list.append(std::move(part));
    };
    place(drawingList(arrangement, assessment, plan.view), plan.x0, plan.axis_y);
    place(dimensionList(arrangement, assessment, plan.view), plan.x0, plan.axis_y);
    place(pageLoads(arrangement, assessment, plan.view), plan.x0, plan.axis_y);
    if (plan.end_radius > 0.0)
        place(endViewList(arrangement, assessment, plan.view, plan.end_radius), plan.end_x, plan.axis_y);

    Group notes;
    notes.layer = Layer::overlay;
    const int shown = shownCase(assessment, plan.view);
    if (shown >= 0) {
        std::string text = std::string(labels::forcesOf) + assessment.load_cases[static_cast<std::size_t>(shown)].name + "; " +
                           std::string(plan.view.plane == Plane::z   ? labels::shownPlaneZ
                                       : plan.view.plane == Plane::y ? labels::shownPlaneY
                                                                     : labels::shownResultant);
        notes.items.emplace_back(words(
            inner_left, plan.height - border - inset - 2.5, 2.5,
            elide(text, (plan.end_radius > 0.0 ? plan.end_x - endViewReach_mm(plan.end_radius) : inner_right) - inner_left - 4.0,
                  2.5, Font::drawing),
            Ink::ink2));
    }
    bool generic = false;
    for (const Support& support : arrangement.supports) {
        if (support.bearing) {
            for (const SetRow& row : support.bearing->rows)
                generic = generic || row.row.catalogue == "generic";
        }
    }
    double note_y = border + 3.0;
    const double note_room = plan.width - border - block_width - inner_left - 4.0;
    if (generic) {
        notes.items.emplace_back(
            words(inner_left, note_y, 2.2, elide(labels::genericRatings, note_room, 2.2, Font::drawing), Ink::ink2));
        note_y += 4.0;
    }
    notes.items.emplace_back(words(inner_left, note_y, 2.2, std::string(labels::notAssessed)));
    computeBounds(notes);
    page.list.groups.push_back(std::move(notes));

    // Cards under their supports, in order of x, pushed apart where they would overlap.
    if (plan.card_rows > 0) {
        std::vector<const Support*> order;
        for (const Support& support : arrangement.supports)
            order.push_back(&support);
        std::stable_sort(order.begin(), order.end(), [](const Support* a, const Support* b) { return a->x_mm < b->x_mm; });
        const std::size_t per_row =
            (order.size() + static_cast<std::size_t>(plan.card_rows) - 1) / static_cast<std::size_t>(plan.card_rows);
        for (std::size_t first = 0, row = 0; first < order.size(); first += per_row, ++row) {
            const std::size_t last = std::min(first + per_row, order.size());
            std::vector<double> lefts;
            const double from = plan.cards_aside ? plan.column_left : inner_left;
            double free_from = from;
            for (std::size_t i = first; i < last; ++i) {
                const double x =
                    std::isfinite(order[i]->x_mm) && !plan.cards_aside ? plan.x0 + order[i]->x_mm * plan.view.scale : from;
                const double left = std::max(x - plan.card_w / 2.0, free_from);
                lefts.push_back(left);
                free_from = left + plan.card_w + card_gap;
            }
            double free_to = inner_right;
            for (std::size_t i = lefts.size(); i-- > 0;) {
                lefts[i] = plan.cards_aside ? free_to - plan.card_w : std::min(lefts[i], free_to - plan.card_w);
                free_to = lefts[i] - card_gap;
            }
            const double top = plan.cards_top - static_cast<double>(row) * (plan.card_h + card_gap);
            for (std::size_t i = first; i < last; ++i) {
                const double left = lefts[i - first];
                place(supportCard(arrangement, assessment, plan.view, *order[i], plan.card_w, plan.card_h), left,
                      top - plan.card_h);
                const double x = plan.x0 + order[i]->x_mm * plan.view.scale;
                if (row == 0 && !plan.cards_aside && x > left + 2.5 && x < left + plan.card_w - 2.5) {
                    Group tie;
                    tie.layer = Layer::card;
                    line(tie, x, top, x, top + 4.0, Stroke::thin, Ink::edge);
                    computeBounds(tie);
                    page.list.groups.push_back(std::move(tie));
                }
            }
        }
    }

    // Beside a narrow drawing: the load cases and how many requirements are met.
    if (plan.cards_aside && !assessment.load_cases.empty()) {
        Group table;
        table.layer = Layer::card;
        const double left = std::max(inner_right - 2.0 * plan.card_w - card_gap, plan.column_left);
        const double pitch = 4.6;
        double row_y = plan.cards_top - plan.cards_height - 9.0;
        const double lowest = border + block_height + 6.0;
        const double share_x = std::min(left + 122.0, inner_right);
        const double speed_x = share_x - 26.0;
        const auto cells = [&](const std::string& name, const std::string& speed, const std::string& share, Ink ink) {
            table.items.emplace_back(words(left, row_y, 2.2, elide(name, speed_x - left - 22.0, 2.2, Font::drawing), ink));
            table.items.emplace_back(words(speed_x, row_y, 2.2, speed, ink, false, HAlign::right));
            table.items.emplace_back(words(share_x, row_y, 2.2, share, ink, false, HAlign::right));
            row_y -= pitch;
        };
        const auto lines = static_cast<std::size_t>(std::max(0.0, (row_y - lowest) / pitch - 2.0));
        if (lines >= assessment.load_cases.size()) {
            cells(std::string(labels::loadCase), std::string(labels::speed), std::string(labels::timeShare), Ink::ink2);
            line(table, left, row_y + pitch - 1.6, share_x, row_y + pitch - 1.6, Stroke::thin, Ink::rule);
            for (const CaseSummary& one : assessment.load_cases)
                cells(one.name,
                      numberTrimmed(one.speed_rpm, std::abs(one.speed_rpm) < 100.0 ? 1 : 0) + std::string(labels::perMinute),
                      numberTrimmed(100.0 * one.time_share, 1) + " %", Ink::ink);
        }
        if (!assessment.requirements.empty() && row_y - 2.0 > lowest) {
            std::size_t met = 0;
            for (const RequirementResult& one : assessment.requirements)
                met += one.met && *one.met ? 1U : 0U;
            const std::size_t all = assessment.requirements.size();
            row_y -= 2.0;
            verdictMark(table, left, row_y, 2.2, met == all ? 0 : 2);
            const std::string text = met == all && all == 1 ? std::string(labels::theRequirementMet)
                                     : met == all
                                         ? std::string(labels::allOf) + std::to_string(all) + std::string(labels::requirementsMet)
                                         : std::to_string(all - met) + std::string(labels::ofWord) + std::to_string(all) +
                                               std::string(labels::requirementsNotMet);
            table.items.emplace_back(words(left + 3.8, row_y, 2.4, text, met == all ? Ink::met : Ink::stop, true));
        }
        computeBounds(table);
        page.list.groups.push_back(std::move(table));
    }

    double y = plan.strips_top;
    for (const StripKind kind : plan.view.strips) {
        place(stripList(arrangement, assessment, plan.view, kind), plan.x0, y);
        y -= plan.strip_height;
    }
    DisplayList scale_list;
    Group scale_group;
    scale_group.layer = Layer::strip;
    ruler(scale_group, arrangement.shaft.length_mm(), plan.view.scale);
    computeBounds(scale_group);
    scale_list.groups.push_back(std::move(scale_group));
    place(std::move(scale_list), plan.x0, y - 1.0);

    if (manyParts(arrangement)) {
        Group items;
        items.layer = Layer::card;
        const double list_left = std::max(plan.x0 + arrangement.shaft.length_mm() * plan.view.scale + 18.0, inner_left);
        const double top = plan.strips_top - 3.0;
        const int lines = std::max(1, static_cast<int>((plan.strips_top - (border + block_height + 8.0)) / item_pitch));
        items.items.emplace_back(words(list_left, top, 2.5, std::string(labels::items), Ink::ink, true));
        for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
            const Part& part = arrangement.parts[i];
            const double x = list_left + item_column * static_cast<double>(static_cast<int>(i) / lines);
            const double line_y = top - item_pitch * static_cast<double>(static_cast<int>(i) % lines + 1);
            if (x + item_column > inner_right + 1.0)
                break;
            items.items.emplace_back(words(x + 5.0, line_y, 2.0, std::to_string(i + 1), Ink::ink, false, HAlign::right));
            items.items.emplace_back(words(
                x + 7.0, line_y, 2.0,
                elide((part.name.empty() ? std::string(labels::kind(part)) : part.name) + ", x " + numberTrimmed(part.x_mm, 2),
                      item_column - 9.0, 2.0, Font::drawing),
                Ink::ink2));
        }
        computeBounds(items);
        page.list.groups.push_back(std::move(items));
    }
    return page;
}

} // namespace shaftwright::drawing
