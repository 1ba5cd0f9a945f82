#pragma once
#include "core/analysis/assessment.h"

namespace shaftwright::analysis
{

/// Required against found: life and static safety of every support, the life of all supports together, and the requirements
/// that the document states. Appends to `assessment.requirements`, `all_supports` and findings.
void judgeRequirements(const Arrangement& arrangement, Assessment& assessment);

} // namespace shaftwright::analysis
