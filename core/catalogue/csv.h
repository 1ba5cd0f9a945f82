#pragma once
// Tables with comma, header and quotes where a field holds a comma. Strict: the columns must be the ones asked for.

#include "core/base/result.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright
{

/// Cells are views into the text, which must outlive the table. No allocation per row.
class CsvTable
{
public:
    /// @param name  stands in the findings
    /// @return findings `table-column-unknown`, `table-column-missing`, `table-row-length`, `table-quote` with the path
    /// "<name>:<line>" and the value `column` or the counts.
    [[nodiscard]] static Result<CsvTable> parse(std::string_view name, std::string_view text,
                                                std::span<const std::string_view> columns);

    [[nodiscard]] std::size_t rows() const { return m_columns == 0 ? 0 : m_cells.size() / m_columns; }
    /// Column by its place in the list asked for. Quotes around the field are taken off; doubled ones inside stay doubled.
    [[nodiscard]] std::string_view cell(std::size_t row, std::size_t column) const
    {
        return m_cells[row * m_columns + m_place[column]];
    }
    /// An empty cell is `fallback`. Else the number; `table-number` in `fault` when it is none (the first one stays).
    [[nodiscard]] double number(std::size_t row, std::size_t column, double fallback) const;
    [[nodiscard]] const std::vector<Finding>& faults() const { return m_faults; }

private:
    std::string m_name;
    std::size_t m_columns = 0;
    std::vector<std::size_t> m_place;
    std::vector<std::string_view> m_cells;
    std::vector<std::string> m_names;
    mutable std::vector<Finding> m_faults;
};

} // namespace shaftwright
