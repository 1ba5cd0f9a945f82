#pragma once
// The document as the beam sees it. Internal to core/analysis.

#include "core/analysis/axial_roles.h"
#include "core/beam/beam.h"
#include "core/loads/loads.h"
#include "core/model/arrangement.h"
#include "core/model/defaults.h"

#include <vector>

namespace shaftwright::analysis
{

[[nodiscard]] beam::Model beamModel(const Arrangement& arrangement, const Settled& settled, const AxialRoles& roles);

/// Thermal state of one case: rises over the assembly temperature.
struct Warmth {
    double shaft_K = 0.0, housing_K = 0.0;
};
[[nodiscard]] Warmth warmthOf(const LoadCase& load_case, const Settled& settled);

/// Loads of one case on the axis. `holder`: index of the support that holds x, -1 none.
[[nodiscard]] beam::LoadCase beamCase(const Arrangement& arrangement, const Settled& settled, const LoadCase& load_case,
                                      const CaseLoads& loads, int holder);

/// A load case with the point or line loads of one part only (steady forces).
void appendPart(beam::LoadCase& beam_case, const PartLoad& load);

} // namespace shaftwright::analysis
