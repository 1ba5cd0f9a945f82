#pragma once
// A page as PDF or PNG, painted by the painter of the sheet. Needs no display.

#include "core/drawing/sheet.h"

#include <optional>
#include <string>

namespace shaftwright::ui
{

struct PageImage {
    std::string format; ///< "pdf" or "png"
    std::string title;  ///< UTF-8; stands in the properties of the document
    bool dark = false;
    double pixels_per_mm = 6.0; ///< png only, 1 to 40
};

/// The bytes of the page; the same input gives the same bytes. A date in the PDF is that of SOURCE_DATE_EPOCH (seconds since
/// 1970, UTC), else 2000-01-01.
/// Starts Qt without a screen when no application runs yet; it keeps running until the program ends.
/// @return none with `error` in words: another format, a page without extent, a resolution out of range or too large an image
std::optional<std::string> renderPage(int& argc, char** argv, const drawing::Page& page, const PageImage& request,
                                      std::string& error);

/// Every date of a PDF of Qt replaced by one of equal length. For tests.
void fixDates(std::string& pdf, long long seconds_since_1970);

} // namespace shaftwright::ui
