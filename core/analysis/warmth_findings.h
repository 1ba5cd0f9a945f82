#pragma once
#include "core/analysis/assessment.h"

namespace shaftwright::analysis
{

/// Thermal states that supports have to live with: start, working temperature and what the load cases state.
struct ThermalState {
    double shaft_K = 0.0, housing_K = 0.0; ///< rises over the assembly temperature
};
[[nodiscard]] std::vector<ThermalState> thermalStates(const Settled& settled);

/// Largest growth of a length of shaft against the housing over these states, without sign.
[[nodiscard]] double largestGrowth_mm(const Settled& settled, double length_mm);

/// What heat does to the arrangement: adjusted-span-long, growth-exceeds-play, floating-too-tight, locating-at-far-end,
/// temperature-high.
void appendWarmthFindings(const Arrangement& arrangement, Assessment& assessment);

} // namespace shaftwright::analysis
