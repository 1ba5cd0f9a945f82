#pragma once
// What leaves the window as a file of its own: the report and the drawing. The suffix of the file says the form.

#include "ui/document/document.h"

namespace shaftwright::ui
{

/// Writes the report: .html, .txt or .json. Empty: done. Else what was wrong, in words.
[[nodiscard]] QString writeReport(Document& document, const QString& file);
/// Writes the sheet in its light colours: .pdf, .svg or .png. Empty: done. Else what was wrong, in words.
[[nodiscard]] QString writeDrawing(Document& document, const QString& file);

/// Why a file cannot be written, in words that name its folder where that is the cause; `else_words` otherwise.
[[nodiscard]] QString whyNotWritten(const QString& file, const QString& else_words);

} // namespace shaftwright::ui
