#pragma once
#include "core/report/report.h"
#include "core/report/report_tree.h"

namespace shaftwright::report
{

/// The whole assessment in the order in which somebody who checks it reads.
/// @param all_derivations  false: where a duty has many cases, only the governing ones are written out
[[nodiscard]] Document buildReport(const Arrangement& arrangement, const Assessment& assessment, const Catalogues& catalogues,
                                   const ReportOptions& options, bool pictures, bool all_derivations);

/// One bearing without a shaft.
[[nodiscard]] Document buildBearing(const BearingAssessment& bearing, const Findings& findings, const ReportOptions& options);

} // namespace shaftwright::report
