#pragma once
#include "core/analysis/assessment.h"

namespace shaftwright::analysis
{

/// Findings that look at the arrangement as a whole: supports against each other, seats, mounting, what is not assessed.
void appendArrangementFindings(const Arrangement& arrangement, Assessment& assessment);

/// A caution that is accepted in the document with the numbers it has now; it reopens when one of them moved by more than 1 %.
[[nodiscard]] bool acceptedIn(const Arrangement& arrangement, const Finding& finding);

} // namespace shaftwright::analysis
