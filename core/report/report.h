#pragma once
// The calculation report for people: the assessment as chapters, tables and derivations, as text or HTML.

#include "core/analysis/assessment.h"
#include "core/catalogue/catalogue.h"
#include "core/report/texts.h"

#include <string>
#include <string_view>

namespace shaftwright {

struct ReportOptions {
    Language language = Language::english;
    Typography typography = Typography::fine; ///< text: plain when piped; HTML is always fine
    int width = 100;                          ///< text: columns
    std::string program_version;
    bool pictures = true;                     ///< HTML: drawing and strips as inline SVG
};

[[nodiscard]] std::string textReport(const Arrangement& arrangement, const Assessment& assessment, const Catalogues& catalogues,
                                     const ReportOptions& options);
/// One self-contained file: no scripts, no links to other places, printable on A4; everything from the document escaped.
[[nodiscard]] std::string htmlReport(const Arrangement& arrangement, const Assessment& assessment, const Catalogues& catalogues,
                                     const ReportOptions& options);

/// One bearing without a shaft.
[[nodiscard]] std::string textBearing(const BearingAssessment& bearing, const Findings& findings, const ReportOptions& options);
[[nodiscard]] std::string htmlBearing(const BearingAssessment& bearing, const Findings& findings, const ReportOptions& options);

/// A derivation in words: "P = X Fr + Y Fa = 0.56 · 1 200 + 1.8 · 400 = 1 392 N" with enough digits that a pocket calculator
/// gives the printed result.
[[nodiscard]] std::string derivationLine(const DerivationStep& step, const Texts& texts, Typography typography);
/// The name of the quantity of a step in words.
[[nodiscard]] std::string derivationName(const DerivationStep& step, const Texts& texts);

} // namespace shaftwright
