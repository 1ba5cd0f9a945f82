#include "core/catalogue/csv.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace shaftwright
{
namespace
{

Finding tableFinding(const char* code, std::string_view name, std::size_t line)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = code;
    finding.path = std::string(name) + ":" + std::to_string(line);
    return finding;
}

/// Splits the line that starts at `at` and moves `at` behind it. False: a quote is not closed.
bool splitLine(std::string_view text, std::size_t& at, std::vector<std::string_view>& cells)
{
    while (true) {
        std::size_t end = at;
        if (at < text.size() && text[at] == '"') {
            std::size_t close = at + 1;
            while (true) {
                close = text.find('"', close);
                if (close == std::string_view::npos)
                    return false;
                if (close + 1 >= text.size() || text[close + 1] != '"')
                    break;
                close += 2;
            }
            cells.push_back(text.substr(at + 1, close - at - 1));
            end = close + 1;
        } else {
            while (end < text.size() && text[end] != ',' && text[end] != '\n' && text[end] != '\r')
                ++end;
            cells.push_back(text.substr(at, end - at));
        }
        if (end < text.size() && text[end] == ',') {
            at = end + 1;
            continue;
        }
        if (end < text.size() && text[end] == '\r')
            ++end;
        if (end < text.size() && text[end] != '\n')
            return false; // text behind a closing quote, or a lone carriage return
        at = std::min(end + 1, text.size());
        return true;
    }
}

} // namespace

Result<CsvTable> CsvTable::parse(std::string_view name, std::string_view text, std::span<const std::string_view> columns)
{
    CsvTable table;
    table.m_name = name;
    std::size_t at = 0, line = 1;
    std::vector<std::string_view> header;
    if (!splitLine(text, at, header))
        return tableFinding("table-quote", name, line);
    for (const std::string_view column : header) {
        if (std::find(columns.begin(), columns.end(), column) == columns.end() ||
            std::count(header.begin(), header.end(), column) > 1) {
            Finding finding = tableFinding("table-column-unknown", name, line);
            finding.values.set("column", std::string(column));
            return finding;
        }
    }
    for (const std::string_view column : columns) {
        const auto found = std::find(header.begin(), header.end(), column);
        if (found == header.end()) {
            Finding finding = tableFinding("table-column-missing", name, line);
            finding.values.set("column", std::string(column));
            return finding;
        }
        table.m_place.push_back(static_cast<std::size_t>(found - header.begin()));
        table.m_names.emplace_back(column);
    }
    table.m_columns = header.size();
    table.m_cells.reserve(text.size() / 4);
    while (at < text.size()) {
        ++line;
        const std::size_t before = table.m_cells.size();
        if (!splitLine(text, at, table.m_cells))
            return tableFinding("table-quote", name, line);
        const std::size_t count = table.m_cells.size() - before;
        if (count != header.size()) {
            Finding finding = tableFinding("table-row-length", name, line);
            finding.values = {{"cells", static_cast<double>(count)}, {"columns", static_cast<double>(header.size())}};
            return finding;
        }
    }
    return table;
}

double CsvTable::number(std::size_t row, std::size_t column, double fallback) const
{
    const std::string_view text = cell(row, column);
    if (text.empty())
        return fallback;
    if (const auto value = parseDecimal(text))
        return *value;
    Finding finding = tableFinding("table-number", m_name, row + 2);
    finding.values = {{"column", m_names[column]}, {"value", std::string(text)}};
    m_faults.push_back(std::move(finding));
    return fallback;
}

} // namespace shaftwright
