#pragma once
// From displacements of the seats to reactions and states along the shaft. Internal to the beam.

#include "core/beam/system.h"

namespace shaftwright::beam
{

/// @param seats  displacements of the shaft at the main nodes, shaft coordinates
/// @param contact  per support: false where a gap is open
[[nodiscard]] CaseResult recover(const Mesh& mesh, const std::vector<std::size_t>& mains, const std::vector<Span>& spans,
                                 const std::vector<Restraint>& restraints, const CaseData& data, const std::vector<Vec6>& seats,
                                 const std::vector<bool>& contact);

} // namespace shaftwright::beam
