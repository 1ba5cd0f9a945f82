#pragma once
#include "core/report/report_tree.h"

#include <string>
#include <string_view>

namespace shaftwright::report
{

/// Text of at most `width` columns where its words allow it; control characters become spaces.
[[nodiscard]] std::string writeText(const Document& document, int width);

/// One HTML file without scripts and without links to other places; everything but pictures is escaped.
[[nodiscard]] std::string writeHtml(const Document& document);

/// Valid UTF-8 without control or direction-changing characters; broken bytes become U+FFFD, line breaks and tabs a space.
[[nodiscard]] std::string cleaned(std::string_view text);
/// Number of columns of a cleaned text in a terminal: code points without combining marks.
[[nodiscard]] std::size_t columnsOf(std::string_view text);

} // namespace shaftwright::report
