#include "core/report/writers.h"

namespace shaftwright::report
{
namespace
{

/// Text as content or quoted attribute of HTML.
std::string escaped(std::string_view text)
{
    std::string out;
    for (const char c : cleaned(text)) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        case '\'':
            out += "&#39;";
            break;
        default:
            out += c;
        }
    }
    return out;
}

constexpr std::string_view style = R"css(
:root{color-scheme:light dark;--desk:#E9E6DF;--sheet:#FCFBF7;--panel:#F5F3ED;--ink:#1C2830;--ink2:#525D66;--ink3:#5F6970;
--rule:#DAD6CB;--edge:#827F77;--live:#0A6A73;--stop:#7E1712;--caution:#8F5600;--met:#326744;--stopsoft:#F3DAD4;
--cautionsoft:#F6E8CB;--metsoft:#DCE8DC}
@media (prefers-color-scheme:dark){:root{--desk:#15191C;--sheet:#1D2226;--panel:#23292E;--ink:#E6E9E8;--ink2:#A5AEB3;
--ink3:#8B959B;--rule:#343C42;--edge:#76828A;--live:#5CC2CB;--stop:#EE7A66;--caution:#FFC24D;--met:#A6DDB0;
--stopsoft:#43251E;--cautionsoft:#3D311C;--metsoft:#20342A}}
*{box-sizing:border-box}
body{margin:0;background:var(--desk);color:var(--ink);font:14px/1.5 Inter,"Liberation Sans",Arial,sans-serif;
font-variant-numeric:tabular-nums}
main{max-width:210mm;margin:24px auto;padding:18mm 17mm 16mm;background:var(--sheet);border:1px solid var(--rule)}
.kicker{color:var(--ink2);margin:0 0 2px}
h1{font-size:24px;line-height:1.25;margin:0 0 14px;font-weight:650;overflow-wrap:anywhere}
h2{font-size:17px;margin:34px 0 8px;padding-top:10px;border-top:1.5px solid var(--ink);font-weight:650}
h3{font-size:14.5px;margin:22px 0 6px;font-weight:650}
h4{font-size:14px;margin:16px 0 4px;font-weight:600}
h2 .n,h3 .n,h4 .n{color:var(--ink3);font-weight:400;margin-right:.7em}
p{margin:6px 0;overflow-wrap:anywhere}
.lead{font-size:17px;font-weight:600}
.second,.small{color:var(--ink2)}
.small{font-size:12px}
.verdict{margin:16px 0 6px;padding:10px 14px;border-left:5px solid var(--edge);background:var(--panel);font-size:16px;font-weight:600}
.verdict.met{border-color:var(--met);background:var(--metsoft)}
.verdict.stop{border-color:var(--stop);background:var(--stopsoft)}
.verdict.caution{border-color:var(--caution);background:var(--cautionsoft)}
dl{display:grid;grid-template-columns:max-content 1fr;gap:2px 18px;margin:8px 0}
dt{color:var(--ink2);max-width:75mm}dd{margin:0;overflow-wrap:anywhere}
.t{overflow-x:auto;margin:8px 0 12px}
table{border-collapse:collapse;width:100%;font-size:12.5px;line-height:1.4}
caption{text-align:left;color:var(--ink2);padding:2px 0 4px}
th{font-weight:600;text-align:left;vertical-align:bottom;border-bottom:1.5px solid var(--ink);padding:3px 10px 3px 0}
td{vertical-align:top;border-bottom:1px solid var(--rule);padding:3px 10px 3px 0;overflow-wrap:anywhere}
.r{text-align:right;white-space:nowrap}
th.r{white-space:normal}
th:last-child,td:last-child{padding-right:0}
td .i{display:inline-block;text-align:right}td .f{display:inline-block;text-align:left}
tr.sum td{font-weight:650;border-top:1.5px solid var(--ink)}
td.met{color:var(--met);font-weight:600}td.stop{color:var(--stop);font-weight:600}td.caution{color:var(--caution);font-weight:600}
.notice{margin:8px 0;padding:7px 12px 8px;border-left:4px solid var(--edge);background:var(--panel);break-inside:avoid}
.notice p{margin:2px 0}
.notice b{font-weight:650}
.notice.stop{border-color:var(--stop);background:var(--stopsoft)}.notice.stop b{color:var(--stop)}
.notice.caution{border-color:var(--caution);background:var(--cautionsoft)}.notice.caution b{color:var(--caution)}
details{margin:6px 0 10px;border-left:2px solid var(--rule);padding-left:12px}
summary{cursor:pointer;color:var(--live);font-weight:600}
summary:focus-visible{outline:2px solid var(--ink);outline-offset:2px}
.step{margin:5px 0}.step p{margin:0}
ul{margin:6px 0;padding-left:20px}li{margin:3px 0;overflow-wrap:anywhere}
figure{margin:14px 0}figure svg{width:100%;height:auto;border:1px solid var(--rule);background:#FCFBF7}
figcaption{color:var(--ink2);font-size:12px;margin-top:4px}
footer{margin-top:34px;padding-top:8px;border-top:1px solid var(--rule);color:var(--ink2);font-size:12px}
@page{size:A4;margin:16mm 15mm}
@media print{:root{--desk:#fff;--sheet:#fff;--panel:#fff;--ink:#1C2830;--ink2:#525D66;--ink3:#5F6970;--rule:#DAD6CB;--edge:#827F77;
--live:#0A6A73;--stop:#7E1712;--caution:#8F5600;--met:#326744;--stopsoft:#fff;--cautionsoft:#fff;--metsoft:#fff}
main{max-width:none;margin:0;padding:0;border:0}body{font-size:10pt}table{font-size:8.5pt}
h2,h3,h4{break-after:avoid}tr,.notice,.step,figure{break-inside:avoid}.t{overflow:visible}summary{color:var(--ink)}}
)css";

std::string_view classOf(Tone tone)
{
    switch (tone) {
    case Tone::plain:
        return "";
    case Tone::lead:
        return "lead";
    case Tone::second:
        return "second";
    case Tone::met:
        return "met";
    case Tone::stop:
        return "stop";
    case Tone::caution:
        return "caution";
    case Tone::note:
        return "note";
    }
    return "";
}

class HtmlWriter
{
public:
    std::string write(const Document& document)
    {
        m_out +=
            "<!DOCTYPE html>\n<html lang=\"" + escaped(document.language) +
            "\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
            "<title>" +
            escaped(document.title) + "</title>\n<style>";
        m_out += style;
        m_out += "</style>\n</head>\n<body>\n<main>\n<header>\n<p class=\"kicker\">" + escaped(document.kicker) + "</p>\n<h1>" +
                 escaped(document.title) + "</h1>\n";
        put(document.title_block);
        m_out += "<p class=\"verdict " + std::string(classOf(document.verdict.tone)) + "\">" + escaped(document.verdict.text) +
                 "</p>\n</header>\n";
        int number = 0;
        for (const Chapter& chapter : document.chapters) {
            ++number;
            put(chapter, std::to_string(number), 2);
        }
        m_out += "<footer>" + escaped(document.foot) + "</footer>\n</main>\n</body>\n</html>\n";
        return std::move(m_out);
    }

private:
    std::string m_out;

    void put(const Chapter& chapter, const std::string& number, int level)
    {
        const std::string tag = "h" + std::to_string(level > 4 ? 4 : level);
        m_out += "<section>\n<" + tag + "><span class=\"n\">" + number + "</span>" + escaped(chapter.title) + "</" + tag + ">\n";
        for (const Block& block : chapter.blocks)
            std::visit([this](const auto& one) { put(one); }, block);
        int index = 0;
        for (const Chapter& section : chapter.sections) {
            ++index;
            put(section, number + "." + std::to_string(index), level + 1);
        }
        m_out += "</section>\n";
    }

    void put(const Paragraph& paragraph)
    {
        const std::string_view kind = classOf(paragraph.tone);
        m_out += kind.empty() ? "<p>" : "<p class=\"" + std::string(kind) + "\">";
        m_out += escaped(paragraph.text) + "</p>\n";
    }

    void put(const Facts& facts)
    {
        if (facts.facts.empty())
            return;
        m_out += "<dl>\n";
        for (const Fact& fact : facts.facts)
            m_out += "<dt>" + escaped(fact.label) + "</dt><dd>" + escaped(fact.value) + "</dd>\n";
        m_out += "</dl>\n";
    }

    void put(const Bullets& bullets)
    {
        m_out += "<ul>\n";
        for (const std::string& item : bullets.items)
            m_out += "<li>" + escaped(item) + "</li>\n";
        m_out += "</ul>\n";
    }

    void put(const Notice& notice)
    {
        m_out += "<div class=\"notice " + std::string(classOf(notice.tone)) + "\"><p><b>" +
                 escaped(notice.mark + " " + notice.word) + "</b> " + escaped(notice.text) + "</p>\n";
        if (!notice.advice.empty())
            m_out += "<p>" + escaped(notice.advice) + "</p>\n";
        std::string small = notice.place;
        if (!notice.source.empty())
            small += (small.empty() ? "" : " · ") + notice.source;
        if (!small.empty())
            m_out += "<p class=\"small\">" + escaped(small) + "</p>\n";
        if (!notice.accepted.empty())
            m_out += "<p class=\"small\">" + escaped(notice.accepted) + "</p>\n";
        m_out += "</div>\n";
    }

    void put(const DerivationBlock& block)
    {
        m_out += "<details><summary>" + escaped(block.title) + "</summary>\n";
        for (const DerivationLine& step : block.lines) {
            std::string small = step.name;
            if (!step.source.empty())
                small += (small.empty() ? "" : " · ") + step.source;
            m_out += "<div class=\"step\"><p>" + escaped(step.line) + "</p><p class=\"small\">" + escaped(small) + "</p></div>\n";
        }
        m_out += "</details>\n";
    }

    void put(const Picture& picture)
    {
        m_out += "<figure>" + cleaned(picture.svg) + "<figcaption>" + escaped(picture.caption) + "</figcaption></figure>\n";
    }

    /// Part of a number before its decimal mark, and from it on.
    static std::pair<std::string, std::string> split(const std::string& cell)
    {
        const std::size_t mark = std::min(cell.find_first_of(".,"), cell.size());
        return {cell.substr(0, mark), cell.substr(mark)};
    }

    void put(const Table& table)
    {
        m_out += "<div class=\"t\"><table>\n";
        if (!table.caption.empty())
            m_out += "<caption>" + escaped(table.caption) + "</caption>\n";
        m_out += "<thead><tr>";
        for (const Column& column : table.columns)
            m_out += (column.align == Align::left ? "<th>" : "<th class=\"r\">") + escaped(column.head) + "</th>";
        m_out += "</tr></thead>\n<tbody>\n";
        // Decimal marks stand under each other: the part after the mark gets the width of the widest.
        std::vector<std::size_t> after(table.columns.size(), 0);
        for (const Row& row : table.rows) {
            for (std::size_t c = 0; c < table.columns.size() && c < row.cells.size(); ++c) {
                if (table.columns[c].align == Align::decimal && isNumber(row.cells[c]))
                    after[c] = std::max(after[c], columnsOf(split(row.cells[c]).second));
            }
        }
        for (const Row& row : table.rows) {
            m_out += row.strong ? "<tr class=\"sum\">" : "<tr>";
            for (std::size_t c = 0; c < table.columns.size(); ++c) {
                const std::string cell = c < row.cells.size() ? row.cells[c] : std::string{};
                const bool last = c + 1 == table.columns.size() && row.tone != Tone::plain;
                std::string classes = table.columns[c].align == Align::left ? "" : "r";
                if (last)
                    classes += (classes.empty() ? "" : " ") + std::string(classOf(row.tone));
                m_out += classes.empty() ? "<td>" : "<td class=\"" + classes + "\">";
                if (table.columns[c].align == Align::decimal && after[c] > 0 && isNumber(cell)) {
                    const auto [whole, rest] = split(cell);
                    m_out += escaped(whole) + "<span class=\"f\" style=\"width:" + std::to_string(after[c]) + "ch\">" +
                             escaped(rest) + "</span>";
                } else {
                    m_out += escaped(cell);
                }
                m_out += "</td>";
            }
            m_out += "</tr>\n";
        }
        m_out += "</tbody></table></div>\n";
    }

    static bool isNumber(const std::string& cell)
    {
        return !cell.empty() && ((cell[0] >= '0' && cell[0] <= '9') || cell[0] == '-' || cell.starts_with("\u2212"));
    }
};

} // namespace

std::string writeHtml(const Document& document)
{
    return HtmlWriter().write(document);
}

} // namespace shaftwright::report
