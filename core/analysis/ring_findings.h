#pragma once
#include "core/analysis/assessment.h"

namespace shaftwright::analysis
{

/// Whether each ring is held where its role needs it, stays free where it has to move, and finds a shoulder high enough.
/// Sides that the document leaves open are not judged. Codes: shoulder-missing, non-locating-clamped, shoulder-low.
void appendRingFindings(const Arrangement& arrangement, Assessment& assessment);

} // namespace shaftwright::analysis
