#pragma once
// Names what can still move before anything is solved. Internal to the beam.

#include "core/beam/beam.h"

#include <vector>

namespace shaftwright::beam
{

struct MechanismReport {
    bool axially_free = false; ///< nothing that acts holds x; the beam then fixes u at the first support
    Findings findings;         ///< stops: the shaft can move; cautions: it nearly can
};

/// Restraint matrix of the supports on the five rigid motions of the shaft (u, v, w, and the two tilts about its middle).
/// Gap supports count as closed: whether they are is found by the solution.
/// @param holds_x  per support; empty: all
[[nodiscard]] MechanismReport findMechanisms(const Model& model, const std::vector<bool>& holds_x);

/// True when the radial reactions follow from equilibrium alone.
[[nodiscard]] bool isDeterminate(const Model& model);

} // namespace shaftwright::beam
