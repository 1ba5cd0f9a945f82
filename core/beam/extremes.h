#pragma once
// Largest resultant values along the shaft. Internal to the beam.

#include "core/beam/mesh.h"

namespace shaftwright::beam
{

/// Fills the extremes of a case from its stations. Between nodes: deflection and slope by the zero of the derivative of
/// their square, place to 1e-9 of the length; moment and shear at nodes, and inside where a line load acts.
void findExtremes(const Mesh& mesh, CaseResult& result);

} // namespace shaftwright::beam
