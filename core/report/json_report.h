#pragma once
#include "core/analysis/assessment.h"
#include "core/catalogue/catalogue.h"
#include "core/report/texts.h"

#include <string>
#include <string_view>

namespace shaftwright {

inline constexpr const char* reportFormat = "shaftwright-report";
inline constexpr int reportFormatVersion = 1;

struct JsonReportOptions {
    bool curves = true;
};

/// The report for machines: the documented keys, SI-derived units in every key, plain numbers, English sentences.
/// What could not be found is null and a finding with its path says why. Same bytes for the same input.
/// Throws std::domain_error on a number that is not finite: our own mistake.
[[nodiscard]] std::string jsonReport(const Arrangement& arrangement, const Assessment& assessment, const Catalogues& catalogues,
                                     std::string_view program_version, const JsonReportOptions& options = {});

/// The bearing part of the report alone, for a bearing without a shaft.
[[nodiscard]] std::string jsonBearing(const BearingAssessment& bearing, const Findings& findings, std::string_view program_version);

} // namespace shaftwright
