#pragma once
// A way in with given section properties in place of round ones, for published examples of other sections.

#include "core/beam/section.h"

#include <span>

namespace shaftwright::beam
{

/// As `solve`, but piece k has the flexibilities given[k]; the diameters only serve weight. `stateAt` does not know
/// them: read the stations.
[[nodiscard]] Solution solveWithGivenSections(const Model& model, std::span<const LoadCase> cases,
                                              std::span<const Flexibility> given);

} // namespace shaftwright::beam
