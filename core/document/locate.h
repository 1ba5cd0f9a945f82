#pragma once
#include "core/document/json_positions.h"

#include <string_view>

namespace shaftwright
{

/// Finds places of inputs in the text of a file.
class PathLocator
{
public:
    /// @param text must outlive the locator
    explicit PathLocator(std::string_view text);
    /// Where the input with that path stands; the nearest enclosing value when it is left open; line 1 when nothing fits.
    [[nodiscard]] TextPosition find(std::string_view path) const;

private:
    JsonParse m_parse;
    LineTable m_lines;
};

} // namespace shaftwright
