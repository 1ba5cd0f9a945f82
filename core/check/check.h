#pragma once
#include "core/base/finding.h"
#include "core/model/arrangement.h"

namespace shaftwright
{

/// Validity of the inputs by themselves, before any calculation: sizes, places, references, numbers that are not finite.
/// A stop on shaft or supports means that the beam cannot be built; a stop on one part leaves only that part out.
[[nodiscard]] Findings checkArrangement(const Arrangement& arrangement);

} // namespace shaftwright
