#include "core/report/writers.h"

#include <algorithm>
#include <cstdint>

namespace shaftwright::report
{
namespace
{

/// Code point at `at` and its length; length 0 for broken bytes.
std::pair<std::uint32_t, std::size_t> decode(std::string_view text, std::size_t at)
{
    const auto byte = [&](std::size_t i) { return static_cast<std::uint32_t>(static_cast<unsigned char>(text[i])); };
    const std::uint32_t first = byte(at);
    std::size_t length = 0;
    std::uint32_t code = 0;
    if (first < 0x80) {
        return {first, 1};
    } else if (first >= 0xC2 && first < 0xE0) {
        length = 2;
        code = first & 0x1Fu;
    } else if (first >= 0xE0 && first < 0xF0) {
        length = 3;
        code = first & 0x0Fu;
    } else if (first >= 0xF0 && first < 0xF5) {
        length = 4;
        code = first & 0x07u;
    } else {
        return {0, 0};
    }
    if (at + length > text.size())
        return {0, 0};
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(at + i) & 0xC0u) != 0x80u)
            return {0, 0};
        code = (code << 6) | (byte(at + i) & 0x3Fu);
    }
    const bool overlong = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
    if (overlong || (code >= 0xD800 && code < 0xE000) || code > 0x10FFFF)
        return {0, 0};
    return {code, length};
}

bool isControl(std::uint32_t code)
{
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0xFEFF || code == 0xFFFE || code == 0xFFFF || code == 0x2028 ||
           code == 0x2029;
}

/// Marks that turn the direction of writing could make a report read differently from what it says.
bool turnsDirection(std::uint32_t code)
{
    return (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069) || code == 0x200E || code == 0x200F ||
           code == 0x061C;
}

} // namespace

std::string cleaned(std::string_view text)
{
    std::string out;
    out.reserve(text.size());
    std::size_t at = 0;
    while (at < text.size()) {
        const auto [code, length] = decode(text, at);
        if (length == 0) {
            out += "\uFFFD";
            ++at;
            continue;
        }
        if (isControl(code))
            out += ' ';
        else if (!turnsDirection(code))
            out += text.substr(at, length);
        at += length;
    }
    return out;
}

std::size_t columnsOf(std::string_view text)
{
    std::size_t count = 0;
    std::size_t at = 0;
    while (at < text.size()) {
        const auto [code, length] = decode(text, at);
        const bool combining = (code >= 0x0300 && code < 0x0370) || code == 0x200B || code == 0x200D;
        const bool wide = (code >= 0x1100 && code < 0x1160) || (code >= 0x2E80 && code < 0xA4D0) ||
                          (code >= 0xAC00 && code < 0xD7A4) || (code >= 0xF900 && code < 0xFB00) ||
                          (code >= 0xFF00 && code < 0xFF61) || (code >= 0x1F300 && code < 0x1FA00);
        count += combining ? 0 : wide ? 2 : 1;
        at += std::max<std::size_t>(1, length);
    }
    return count;
}

namespace
{

/// The longest start of a text that fits into a number of columns, at least one code point.
std::size_t fitting(std::string_view text, std::size_t columns)
{
    std::size_t at = 0;
    std::size_t used = 0;
    while (at < text.size()) {
        const std::size_t length = std::max<std::size_t>(1, decode(text, at).second);
        const std::size_t wide = columnsOf(text.substr(at, length));
        if (at > 0 && used + wide > columns)
            break;
        used += wide;
        at += length;
    }
    return at;
}

/// Lines of at most `columns`, broken at spaces; a longer word is cut, a path of an input between its words.
std::vector<std::string> wrapped(std::string_view text, std::size_t columns)
{
    columns = std::max<std::size_t>(1, columns);
    std::vector<std::string> lines;
    std::string line;
    std::size_t used = 0;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        std::string_view word = text.substr(at, end - at);
        at = end + 1;
        if (word.empty())
            continue;
        std::size_t wide = columnsOf(word);
        if (!line.empty() && used + 1 + wide > columns) {
            lines.push_back(std::move(line));
            line.clear();
            used = 0;
        }
        while (line.empty() && wide > columns) {
            std::size_t cut = fitting(word, columns);
            // Paths of inputs are cut behind a dot or a low line, if there is one in the second half.
            const std::size_t mark = word.substr(0, cut).find_last_of("._");
            if (cut < word.size() && mark != std::string_view::npos && mark + 1 > cut / 2)
                cut = mark + 1;
            lines.emplace_back(word.substr(0, cut));
            word.remove_prefix(cut);
            wide = columnsOf(word);
        }
        if (word.empty())
            continue;
        if (!line.empty()) {
            line += ' ';
            ++used;
        }
        line += word;
        used += wide;
    }
    if (!line.empty() || lines.empty())
        lines.push_back(std::move(line));
    return lines;
}

std::string padded(const std::string& text, std::size_t columns, bool right = false)
{
    const std::size_t own = columnsOf(text);
    const std::string gap(columns > own ? columns - own : 0, ' ');
    return right ? gap + text : text + gap;
}

std::size_t longestWord(std::string_view text)
{
    std::size_t longest = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        longest = std::max(longest, columnsOf(text.substr(at, end - at)));
        at = end + 1;
    }
    return longest;
}

/// Part of a number before its decimal mark.
std::size_t beforeMark(const std::string& cell)
{
    const std::size_t mark = cell.find_first_of(".,");
    return columnsOf(std::string_view(cell).substr(0, std::min(mark, cell.size())));
}

bool startsLikeNumber(const std::string& cell)
{
    return !cell.empty() && ((cell[0] >= '0' && cell[0] <= '9') || cell[0] == '-' || cell.starts_with("\u2212"));
}

class TextWriter
{
public:
    explicit TextWriter(int width) : m_width(static_cast<std::size_t>(std::clamp(width, 40, 400))) {}

    std::string write(const Document& document)
    {
        line(cleaned(document.kicker));
        for (const std::string& part : wrapped(cleaned(document.title), m_width))
            line(part);
        line(std::string(m_width, '='));
        put(document.title_block);
        line("");
        put(document.verdict);
        int number = 0;
        for (const Chapter& chapter : document.chapters) {
            ++number;
            put(chapter, std::to_string(number), 0);
        }
        line("");
        line(std::string(m_width, '-'));
        put(Paragraph{document.foot, Tone::second});
        return std::move(m_out);
    }

private:
    std::size_t m_width;
    std::string m_out;

    void line(std::string_view text)
    {
        const std::size_t end = text.find_last_not_of(' ');
        m_out += text.substr(0, end == std::string_view::npos ? 0 : end + 1);
        m_out += '\n';
    }

    void put(const Chapter& chapter, const std::string& number, int depth)
    {
        line("");
        if (depth == 0)
            line("");
        const std::string head = number + "  " + cleaned(chapter.title);
        line(head);
        line(std::string(std::min(columnsOf(head), m_width), depth == 0 ? '=' : '-'));
        bool first = true;
        for (const Block& block : chapter.blocks) {
            if (!first)
                line("");
            first = false;
            std::visit([this](const auto& one) { put(one); }, block);
        }
        int index = 0;
        for (const Chapter& section : chapter.sections) {
            ++index;
            put(section, number + "." + std::to_string(index), depth + 1);
        }
    }

    void put(const Paragraph& paragraph)
    {
        for (const std::string& part : wrapped(cleaned(paragraph.text), m_width))
            line(part);
    }

    void put(const Facts& facts)
    {
        std::size_t label = 0;
        for (const Fact& fact : facts.facts)
            label = std::max(label, columnsOf(cleaned(fact.label)));
        label = std::min(label, m_width / 2);
        for (const Fact& fact : facts.facts) {
            const auto labels = wrapped(cleaned(fact.label), label);
            const auto values = wrapped(cleaned(fact.value), m_width - label - 2);
            for (std::size_t i = 0; i < std::max(labels.size(), values.size()); ++i)
                line(padded(i < labels.size() ? labels[i] : "", label) + "  " + (i < values.size() ? values[i] : ""));
        }
    }

    void put(const Bullets& bullets)
    {
        for (const std::string& item : bullets.items)
            hanging("- ", cleaned(item));
    }

    void hanging(const std::string& lead, const std::string& text)
    {
        const std::size_t indent = columnsOf(lead);
        bool first = true;
        for (const std::string& part : wrapped(text, m_width > indent ? m_width - indent : 1)) {
            line((first ? lead : std::string(indent, ' ')) + part);
            first = false;
        }
    }

    void put(const Notice& notice)
    {
        const std::string lead = cleaned(notice.mark + " " + notice.word) + "  ";
        hanging(lead, cleaned(notice.text));
        const std::string indent(4, ' ');
        if (!notice.advice.empty())
            hanging(indent + "> ", cleaned(notice.advice));
        std::string small = notice.place;
        if (!notice.source.empty())
            small += (small.empty() ? "" : " · ") + notice.source;
        if (!small.empty())
            hanging(indent + "  ", cleaned(small));
        if (!notice.accepted.empty())
            hanging(indent + "  ", cleaned(notice.accepted));
    }

    void put(const DerivationBlock& block)
    {
        if (!block.title.empty())
            put(Paragraph{block.title, Tone::plain});
        for (const DerivationLine& step : block.lines) {
            hanging("  ", cleaned(step.line));
            std::string small = step.name;
            if (!step.source.empty())
                small += (small.empty() ? "" : " · ") + step.source;
            if (!small.empty())
                hanging("      ", cleaned(small));
        }
    }

    void put(const Picture&) {}

    void put(const Table& table)
    {
        if (!table.caption.empty())
            put(Paragraph{table.caption, Tone::plain});
        const std::size_t n = table.columns.size();
        std::vector<std::vector<std::string>> cells;
        for (const Row& row : table.rows) {
            std::vector<std::string> one;
            for (std::size_t c = 0; c < n; ++c)
                one.push_back(c < row.cells.size() ? cleaned(row.cells[c]) : "");
            cells.push_back(std::move(one));
        }
        // Decimal marks of a column stand under each other.
        for (std::size_t c = 0; c < n; ++c) {
            if (table.columns[c].align != Align::decimal)
                continue;
            std::size_t before = 0, after = 0;
            for (const auto& row : cells) {
                if (!startsLikeNumber(row[c]))
                    continue;
                before = std::max(before, beforeMark(row[c]));
                after = std::max(after, columnsOf(row[c]) - beforeMark(row[c]));
            }
            for (auto& row : cells) {
                if (startsLikeNumber(row[c])) {
                    const std::size_t own = beforeMark(row[c]);
                    const std::size_t rest = columnsOf(row[c]) - own;
                    row[c] = std::string(before - own, ' ') + row[c] + std::string(after - rest, ' ');
                }
            }
        }
        std::vector<std::size_t> widths(n, 1);
        std::vector<std::size_t> least(n, 1);
        for (std::size_t c = 0; c < n; ++c) {
            // Heads may be broken at their spaces.
            const std::string head = cleaned(table.columns[c].head);
            std::size_t at = 0;
            while (at <= head.size()) {
                const std::size_t end = std::min(head.find(' ', at), head.size());
                least[c] = std::max(least[c], columnsOf(std::string_view(head).substr(at, end - at)));
                at = end + 1;
            }
            widths[c] = least[c];
            for (const auto& row : cells)
                widths[c] = std::max(widths[c], columnsOf(row[c]));
            if (table.columns[c].align != Align::left)
                least[c] = widths[c];
            else
                least[c] = std::min<std::size_t>(std::max<std::size_t>(least[c], 8), widths[c]);
        }
        // Wide tables: the widest text columns give way, then everything else.
        const auto total = [&] {
            std::size_t sum = n > 0 ? 2 * (n - 1) : 0;
            for (const std::size_t w : widths)
                sum += w;
            return sum;
        };
        const auto shrink = [&](const std::vector<std::size_t>& floor) {
            while (total() > m_width) {
                std::size_t widest = n;
                for (std::size_t c = 0; c < n; ++c) {
                    if (widths[c] > floor[c] && (widest == n || widths[c] > widths[widest]))
                        widest = c;
                }
                if (widest == n)
                    break;
                --widths[widest];
            }
        };
        // Words stay whole as long as the others can still give way.
        std::vector<std::size_t> whole = least;
        for (std::size_t c = 0; c < n; ++c) {
            for (const auto& row : cells)
                whole[c] = std::max(whole[c], std::min(longestWord(row[c]), widths[c]));
        }
        shrink(whole);
        shrink(least);
        std::vector<std::string> heads;
        for (const Column& column : table.columns)
            heads.push_back(cleaned(column.head));
        putRow(table, heads, widths, true);
        std::string rule;
        for (std::size_t c = 0; c < n; ++c)
            rule += (c > 0 ? "  " : "") + std::string(widths[c], '-');
        line(rule);
        for (std::size_t r = 0; r < cells.size(); ++r) {
            if (table.rows[r].strong && r > 0)
                line(rule);
            putRow(table, cells[r], widths, false);
        }
    }

    void putRow(const Table& table, const std::vector<std::string>& cells, const std::vector<std::size_t>& widths, bool head)
    {
        std::vector<std::vector<std::string>> parts;
        std::size_t lines = 1;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            // Aligned numbers carry their padding and are not broken.
            if (table.columns[c].align == Align::decimal && !head && columnsOf(cells[c]) <= widths[c])
                parts.push_back({cells[c]});
            else
                parts.push_back(wrapped(cells[c], widths[c]));
            lines = std::max(lines, parts.back().size());
        }
        for (std::size_t i = 0; i < lines; ++i) {
            std::string out;
            for (std::size_t c = 0; c < cells.size(); ++c) {
                const bool right = table.columns[c].align != Align::left;
                // Heads of several lines stand on the rule.
                const std::size_t skip = head ? lines - parts[c].size() : 0;
                const std::string& cell = i >= skip && i - skip < parts[c].size() ? parts[c][i - skip] : std::string{};
                out += (c > 0 ? "  " : "") + padded(cell, widths[c], right);
            }
            line(out);
        }
    }
};

} // namespace

std::string writeText(const Document& document, int width)
{
    return TextWriter(width).write(document);
}

} // namespace shaftwright::report
