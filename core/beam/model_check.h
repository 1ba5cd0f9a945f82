#pragma once
// Refuses what the beam cannot be built from. Internal to the beam.

#include "core/beam/beam.h"

#include <span>

namespace shaftwright::beam
{

/// Findings on geometry, material, supports and loads. With a stop among them the model must not be meshed.
[[nodiscard]] Findings checkModel(const Model& model, std::span<const LoadCase> cases);

} // namespace shaftwright::beam
