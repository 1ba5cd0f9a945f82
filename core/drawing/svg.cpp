#include "core/drawing/sheet_common.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace shaftwright::drawing
{

namespace
{

struct Colour {
    const char* light;
    const char* dark;
};

/// Tokens of the look, light and dark; order of Ink.
constexpr std::array<Colour, 19> colours{{
    {"#1C2830", "#E6E9E8"}, // ink
    {"#525D66", "#A5AEB3"}, // ink2
    {"#5F6970", "#8B959B"}, // ink3
    {"#0A6A73", "#5CC2CB"}, // live
    {"#DCEBEC", "#1F3A3E"}, // live_soft
    {"#7F8A91", "#808A90"}, // hatch
    {"#827F77", "#76828A"}, // edge
    {"#DAD6CB", "#343C42"}, // rule
    {"#EFECE4", "#262C31"}, // grid
    {"#FCFBF7", "#1D2226"}, // paper
    {"#F5F3ED", "#1A1F22"}, // panel
    {"#FFFFFF", "#23292E"}, // card
    {"#F2F0EA", "#272E33"}, // shaft
    {"#7E1712", "#EE7A66"}, // stop
    {"#F3DAD4", "#43251E"}, // stop_soft
    {"#8F5600", "#FFC24D"}, // caution
    {"#F6E8CB", "#3D311C"}, // caution_soft
    {"#326744", "#A6DDB0"}, // met
    {"#DCE8DC", "#20342A"}, // met_soft
}};

constexpr std::array<const char*, 12> layerNames{"ground",    "behind", "shaft",   "part",  "bearing", "key",
                                                 "dimension", "load",   "support", "strip", "card",    "overlay"};

double widthOf(Stroke stroke)
{
    switch (stroke) {
    case Stroke::none:
        return 0.0;
    case Stroke::thick:
        return 0.5;
    case Stroke::medium:
        return 0.35;
    case Stroke::thin:
    case Stroke::hidden:
    case Stroke::centre:
    case Stroke::phantom:
        return 0.25;
    case Stroke::hairline:
        return 0.13;
    }
    return 0.25;
}

class Writer
{
public:
    Writer(double height_mm, bool dark) : m_height(height_mm), m_dark(dark) {}

    std::string out;

    static std::string number(double value)
    {
        std::string text = fixedDecimal(value, 3);
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.')
            text.pop_back();
        return text;
    }

    [[nodiscard]] const char* colour(Ink ink) const
    {
        const Colour& entry = colours[static_cast<std::size_t>(ink)];
        return m_dark ? entry.dark : entry.light;
    }

    static std::string escape(const std::string& text)
    {
        std::string safe;
        safe.reserve(text.size());
        for (const char c : text) {
            switch (c) {
            case '&':
                safe += "&amp;";
                break;
            case '<':
                safe += "&lt;";
                break;
            case '>':
                safe += "&gt;";
                break;
            case '"':
                safe += "&quot;";
                break;
            default:
                if (static_cast<unsigned char>(c) >= 0x20U || c == '\n' || c == '\t')
                    safe += c; // other control characters have no place in XML 1.0
            }
        }
        return safe;
    }

    void write(const Primitive& primitive)
    {
        std::visit([this](const auto& item) { draw(item); }, primitive);
    }

private:
    double m_height;
    bool m_dark;

    [[nodiscard]] std::string point(double x, double y) const { return number(x) + " " + number(m_height - y); }

    /// stroke, width and dashes; dashes are stretched so that a broken line begins and ends with a long element (ISO 128).
    [[nodiscard]] std::string strokeOf(Stroke stroke, Ink ink, double length, bool closed) const
    {
        if (stroke == Stroke::none)
            return " stroke=\"none\"";
        const double d = widthOf(stroke);
        std::string text = std::string(" stroke=\"") + colour(ink) + "\" stroke-width=\"" + number(d) + "\"";
        const double fixed = stroke == Stroke::hidden    ? 3.0 * d
                             : stroke == Stroke::centre  ? 6.5 * d
                             : stroke == Stroke::phantom ? 10.0 * d
                                                         : 0.0;
        if (fixed == 0.0 || !(length > 0.0))
            return text;
        const double lead = stroke == Stroke::hidden ? 12.0 * d : 24.0 * d;
        double long_element = 0.0;
        if (closed) {
            const double n = std::max(1.0, std::round(length / (lead + fixed)));
            long_element = length / n - fixed;
        } else {
            const double period = stroke == Stroke::hidden ? 15.0 * d : stroke == Stroke::centre ? 30.5 * d : 34.0 * d;
            const double n = std::max(1.0, std::round((length - lead) / period));
            long_element = (length - fixed * n) / (n + 1.0);
        }
        if (long_element < 2.0 * d)
            return text; // too short to be broken
        const std::string gap = "," + number(3.0 * d);
        const std::string dot = "," + number(0.5 * d);
        text += " stroke-dasharray=\"" + number(long_element) + gap;
        if (stroke == Stroke::centre)
            text += dot + gap;
        else if (stroke == Stroke::phantom)
            text += dot + gap + dot + gap;
        return text + "\"";
    }

    [[nodiscard]] std::string fillOf(const std::optional<Ink>& fill) const
    {
        return std::string(" fill=\"") + (fill ? colour(*fill) : "none") + "\"";
    }

    void draw(const Path& path)
    {
        if (path.vertices.size() < 2)
            return;
        std::string d;
        double length = 0.0;
        const std::size_t count = path.vertices.size();
        for (const Vertex& vertex : path.vertices) {
            if (!std::isfinite(vertex.x) || !std::isfinite(vertex.y) || !std::isfinite(vertex.bulge))
                return;
        }
        d += "M" + point(path.vertices[0].x, path.vertices[0].y);
        const std::size_t segments = path.closed ? count : count - 1;
        for (std::size_t i = 0; i < segments; ++i) {
            const Vertex& a = path.vertices[i];
            const Vertex& b = path.vertices[(i + 1) % count];
            const double chord = std::hypot(b.x - a.x, b.y - a.y);
            if (a.bulge == 0.0 || chord < 1e-9) {
                if (i + 1 < count)
                    d += "L" + point(b.x, b.y);
                length += chord;
                continue;
            }
            const double sweep = 4.0 * std::atan(std::abs(a.bulge));
            const double radius = chord / (2.0 * std::sin(sweep / 2.0));
            // y is flipped: counter-clockwise with y up is sweep flag 0.
            d += "A" + number(std::abs(radius)) + " " + number(std::abs(radius)) + " 0 " +
                 (sweep > std::numbers::pi ? "1 " : "0 ") + (a.bulge > 0.0 ? "0 " : "1 ") + point(b.x, b.y);
            length += std::abs(radius) * sweep;
        }
        if (path.closed)
            d += "Z";
        out += "<path d=\"" + d + "\"" + fillOf(path.fill) + strokeOf(path.stroke, path.ink, length, path.closed) + "/>\n";
    }

    void draw(const Circle& circle)
    {
        if (!std::isfinite(circle.x) || !std::isfinite(circle.y) || !std::isfinite(circle.radius) || !(circle.radius > 0.0))
            return;
        out += "<circle cx=\"" + number(circle.x) + "\" cy=\"" + number(m_height - circle.y) + "\" r=\"" + number(circle.radius) +
               "\"" + fillOf(circle.fill) + strokeOf(circle.stroke, circle.ink, 2.0 * std::numbers::pi * circle.radius, true) +
               "/>\n";
    }

    void draw(const Hatch& hatch)
    {
        std::string d;
        for (const std::array<double, 4>& one : hatchLines(hatch)) {
            if (std::isfinite(one[0]) && std::isfinite(one[1]) && std::isfinite(one[2]) && std::isfinite(one[3]))
                d += "M" + point(one[0], one[1]) + "L" + point(one[2], one[3]);
        }
        if (!d.empty())
            out += "<path d=\"" + d + "\" fill=\"none\" stroke=\"" + colour(hatch.ink) + "\" stroke-width=\"0.18\"/>\n";
    }

    void draw(const Text& text)
    {
        if (text.text.empty() || !std::isfinite(text.x) || !std::isfinite(text.y) || !(text.height_mm > 0.0))
            return;
        const double drop = text.v == VAlign::baseline ? 0.0 : text.v == VAlign::middle ? text.height_mm / 2.0 : text.height_mm;
        // Height of capitals over em: osifont 0.740, Inter 0.727 (measured in the font files).
        const bool drawing = text.font == Font::drawing;
        const double size = text.height_mm / (drawing ? 0.740 : 0.727);
        std::string turn;
        if (text.angle_deg != 0.0)
            turn = " transform=\"rotate(" + number(-text.angle_deg) + " " + point(text.x, text.y) + ")\"";
        if (text.paper_ground) {
            const double width = textWidth_mm(text.text, text.height_mm, text.font) * (text.bold ? 1.06 : 1.0);
            const double x0 = text.h == HAlign::left ? text.x : text.h == HAlign::centre ? text.x - width / 2.0 : text.x - width;
            const double y0 = m_height - text.y + drop - text.height_mm;
            out += "<rect x=\"" + number(x0 - 0.3) + "\" y=\"" + number(y0 - 0.3) + "\" width=\"" + number(width + 0.6) +
                   "\" height=\"" + number(text.height_mm + 0.6) + "\" fill=\"" + colour(Ink::paper) + "\"" + turn + "/>\n";
        }
        out += "<text x=\"" + number(text.x) + "\" y=\"" + number(m_height - text.y + drop) + "\" font-size=\"" + number(size) +
               "\" class=\"" + (drawing ? "d" : "w") + "\"";
        if (text.h != HAlign::left)
            out += text.h == HAlign::centre ? " text-anchor=\"middle\"" : " text-anchor=\"end\"";
        if (text.bold)
            out += " font-weight=\"600\"";
        out += std::string(" fill=\"") + colour(text.ink) + "\"" + turn + ">" + escape(text.text) + "</text>\n";
    }
};

} // namespace

std::string svg(const DisplayList& list, double width_mm, double height_mm, const SvgMeta& meta, bool dark)
{
    Writer writer(height_mm, dark);
    const std::string w = Writer::number(width_mm);
    const std::string h = Writer::number(height_mm);
    writer.out =
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" + w +
        "mm\" height=\"" + h + "mm\" viewBox=\"0 0 " + w + " " + h +
        "\" stroke-linejoin=\"miter\" stroke-miterlimit=\"3\" stroke-linecap=\"butt\">\n";
    writer.out += "<title>" + Writer::escape(meta.title) + "</title>\n<desc>" + Writer::escape(meta.description) + "</desc>\n";
    writer.out += "<style type=\"text/css\">.d{font-family:osifont,\"Routed Gothic\",\"DejaVu Sans\",sans-serif}"
                  ".w{font-family:Inter,\"DejaVu Sans\",sans-serif}</style>\n";
    writer.out += "<rect width=\"" + w + "\" height=\"" + h + "\" fill=\"" + writer.colour(Ink::paper) + "\"/>\n";
    for (std::size_t layer = 0; layer < layerNames.size(); ++layer) {
        bool open = false;
        for (const Group& group : list.groups) {
            if (static_cast<std::size_t>(group.layer) != layer || group.items.empty())
                continue;
            if (!open)
                writer.out += std::string("<g id=\"") + layerNames[layer] + "\">\n";
            open = true;
            for (const Primitive& primitive : group.items)
                writer.write(primitive);
        }
        if (open)
            writer.out += "</g>\n";
    }
    writer.out += "</svg>\n";
    return writer.out;
}

} // namespace shaftwright::drawing
