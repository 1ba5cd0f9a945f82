#include "core/drawing/display_list.h"

#include "core/base/embedded.h"
#include "core/drawing/outline_geometry.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string_view>
#include <unordered_map>

namespace shaftwright::drawing
{

namespace
{

constexpr double pi = 3.14159265358979323846;

struct Advance {
    double drawing = 0.0, window = 0.0; ///< in heights of capitals
};

/// What a character without a row gets: the advance of a digit.
constexpr Advance unknownAdvance{0.8, 0.9};

class AdvanceTable
{
public:
    AdvanceTable()
    {
        low_.assign(0x250, unknownAdvance);
        std::string_view text = embeddedResource("drawing/text-advances.csv");
        bool head = true;
        while (!text.empty()) {
            const std::size_t end = std::min(text.find('\n'), text.size());
            const std::string_view line = text.substr(0, end);
            text.remove_prefix(std::min(end + 1, text.size()));
            if (head || line.empty()) {
                head = false;
                continue;
            }
            readLine(line);
        }
    }

    [[nodiscard]] const Advance& of(char32_t character) const
    {
        if (character < low_.size())
            return low_[character];
        const auto found = high_.find(character);
        return found == high_.end() ? unknownAdvance : found->second;
    }

private:
    void readLine(std::string_view line)
    {
        std::array<std::string_view, 3> fields;
        for (std::string_view& field : fields) {
            const std::size_t comma = line.find(',');
            if (comma == std::string_view::npos)
                return;
            field = line.substr(0, comma);
            line.remove_prefix(comma + 1);
        }
        char32_t character = 0;
        for (const char digit : fields[0])
            character = character * 16 + static_cast<char32_t>(digit <= '9' ? digit - '0' : digit - 'A' + 10);
        const std::optional<double> drawing = parseDecimal(fields[1]), window = parseDecimal(fields[2]);
        if (!drawing || !window)
            return;
        if (character < low_.size())
            low_[character] = {*drawing, *window};
        else
            high_[character] = {*drawing, *window};
    }

    std::vector<Advance> low_;
    std::unordered_map<char32_t, Advance> high_;
};

/// Next character of UTF-8 text; a broken sequence counts as one unknown character a byte.
char32_t nextCharacter(std::string_view text, std::size_t& at)
{
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char first = byte(at++);
    int more = 0;
    char32_t character = first;
    if (first >= 0xF0 && first < 0xF8) {
        more = 3;
        character = first & 0x07u;
    } else if (first >= 0xE0) {
        more = 2;
        character = first & 0x0Fu;
    } else if (first >= 0xC0) {
        more = 1;
        character = first & 0x1Fu;
    } else if (first >= 0x80) {
        return 0xFFFD;
    }
    for (; more > 0; --more) {
        if (at >= text.size() || (byte(at) & 0xC0u) != 0x80u)
            return 0xFFFD;
        character = (character << 6) | (byte(at++) & 0x3Fu);
    }
    return character;
}

void addText(Bounds& bounds, const Text& text)
{
    const double width = textWidth_mm(text.text, text.height_mm, text.font) * (text.bold ? 1.06 : 1.0);
    const double left = text.h == HAlign::left ? 0.0 : text.h == HAlign::centre ? -0.5 * width : -width;
    // Below the base line hang the tails of letters (0.3 h), above the capitals lie accents (0.2 h).
    const double base = text.v == VAlign::baseline ? 0.0 : text.v == VAlign::middle ? -0.5 * text.height_mm : -text.height_mm;
    const double low = base - 0.3 * text.height_mm, high = base + 1.2 * text.height_mm;
    const double angle = text.angle_deg * pi / 180.0, c = std::cos(angle), s = std::sin(angle);
    for (const double x : {left, left + width}) {
        for (const double y : {low, high})
            bounds.add(text.x + x * c - y * s, text.y + x * s + y * c);
    }
}

void moveItem(Primitive& item, double dx, double dy)
{
    const auto moveContour = [&](std::vector<Vertex>& contour) {
        for (Vertex& vertex : contour) {
            vertex.x += dx;
            vertex.y += dy;
        }
    };
    if (auto* path = std::get_if<Path>(&item)) {
        moveContour(path->vertices);
    } else if (auto* circle = std::get_if<Circle>(&item)) {
        circle->x += dx;
        circle->y += dy;
    } else if (auto* hatch = std::get_if<Hatch>(&item)) {
        for (std::vector<Vertex>& contour : hatch->contours)
            moveContour(contour);
    } else if (auto* text = std::get_if<Text>(&item)) {
        text->x += dx;
        text->y += dy;
    }
}

} // namespace

void DisplayList::append(DisplayList other)
{
    if (groups.empty())
        groups = std::move(other.groups);
    else
        groups.insert(groups.end(), std::make_move_iterator(other.groups.begin()), std::make_move_iterator(other.groups.end()));
}

void DisplayList::translate(double dx, double dy)
{
    for (Group& group : groups) {
        for (Primitive& item : group.items)
            moveItem(item, dx, dy);
        group.bounds[0] += dx;
        group.bounds[1] += dy;
        group.bounds[2] += dx;
        group.bounds[3] += dy;
    }
}

std::size_t DisplayList::primitiveCount() const
{
    std::size_t count = 0;
    for (const Group& group : groups)
        count += group.items.size();
    return count;
}

void computeBounds(Group& group)
{
    Bounds bounds;
    for (const Primitive& item : group.items) {
        if (const auto* path = std::get_if<Path>(&item)) {
            bounds.add(path->vertices, path->closed);
        } else if (const auto* circle = std::get_if<Circle>(&item)) {
            bounds.add(circle->x - circle->radius, circle->y - circle->radius);
            bounds.add(circle->x + circle->radius, circle->y + circle->radius);
        } else if (const auto* hatch = std::get_if<Hatch>(&item)) {
            for (const Contour& contour : hatch->contours)
                bounds.add(contour, true);
        } else if (const auto* text = std::get_if<Text>(&item)) {
            addText(bounds, *text);
        }
    }
    if (bounds.empty())
        group.bounds = {0.0, 0.0, 0.0, 0.0};
    else
        group.bounds = {bounds.x_low, bounds.y_low, bounds.x_high, bounds.y_high};
}

double textWidth_mm(const std::string& text, double height_mm, Font font)
{
    static const AdvanceTable table;
    double heights = 0.0;
    for (std::size_t at = 0; at < text.size();) {
        const Advance& advance = table.of(nextCharacter(text, at));
        heights += font == Font::drawing ? advance.drawing : advance.window;
    }
    return heights * height_mm;
}

std::vector<std::array<double, 4>> hatchLines(const Hatch& hatch)
{
    constexpr double chordError_mm = 0.01;
    constexpr double shortest_mm = 0.12; // shorter strokes are blots, not lines
    constexpr double offVertex = 1e-7;   // no line runs exactly through a vertex
    std::vector<std::array<double, 4>> lines;
    if (!(hatch.spacing_mm > 0.0))
        return lines;
    const double angle = hatch.angle_deg * pi / 180.0, c = std::cos(angle), s = std::sin(angle);

    struct Edge {
        double x0, y0, x1, y1;
    };
    std::vector<Edge> edges;
    double low = std::numeric_limits<double>::infinity(), high = -low;
    for (const Contour& contour : hatch.contours) {
        std::vector<Point> points = flattened(contour, true, chordError_mm);
        for (Point& point : points) {
            point = {point.x * c + point.y * s, point.y * c - point.x * s};
            low = std::min(low, point.y);
            high = std::max(high, point.y);
        }
        for (std::size_t i = 0; i < points.size(); ++i) {
            const Point& from = points[i];
            const Point& to = points[(i + 1) % points.size()];
            if (from.y != to.y)
                edges.push_back({from.x, from.y, to.x, to.y});
        }
    }
    if (!(low < high) || !std::isfinite(low) || !std::isfinite(high))
        return lines;
    const double first = std::ceil((low - hatch.phase_mm) / hatch.spacing_mm);
    const double last = std::floor((high - hatch.phase_mm) / hatch.spacing_mm);
    if (last - first > 100000.0) // a spacing far below what could be drawn
        return lines;
    const auto count = static_cast<std::size_t>(std::max(last - first + 1.0, 0.0));
    std::vector<std::vector<double>> crossings(count);
    const auto heightOf = [&](std::size_t k) {
        return (first + static_cast<double>(k)) * hatch.spacing_mm + hatch.phase_mm + offVertex;
    };
    for (const Edge& edge : edges) {
        const double edgeLow = std::min(edge.y0, edge.y1), edgeHigh = std::max(edge.y0, edge.y1);
        const double from = std::floor((edgeLow - hatch.phase_mm) / hatch.spacing_mm) - first;
        const double to = std::ceil((edgeHigh - hatch.phase_mm) / hatch.spacing_mm) - first;
        for (double k = std::max(from, 0.0); k <= to && k < static_cast<double>(count); k += 1.0) {
            const double y = heightOf(static_cast<std::size_t>(k));
            if ((edge.y0 > y) != (edge.y1 > y))
                crossings[static_cast<std::size_t>(k)].push_back(edge.x0 +
                                                                 (y - edge.y0) * (edge.x1 - edge.x0) / (edge.y1 - edge.y0));
        }
    }
    for (std::size_t k = 0; k < count; ++k) {
        std::vector<double>& xs = crossings[k];
        std::sort(xs.begin(), xs.end());
        const double y = heightOf(k);
        for (std::size_t i = 0; i + 1 < xs.size(); i += 2) {
            if (xs[i + 1] - xs[i] < shortest_mm)
                continue;
            lines.push_back({xs[i] * c - y * s, xs[i] * s + y * c, xs[i + 1] * c - y * s, xs[i + 1] * s + y * c});
        }
    }
    return lines;
}

} // namespace shaftwright::drawing
