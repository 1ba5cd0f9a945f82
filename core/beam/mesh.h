#pragma once
// Nodes and elements of a model, and loads brought to them. Internal to the beam.

#include "core/beam/element.h"

#include <span>
#include <vector>

namespace shaftwright::beam
{

/// Stations closer than this become one node, mm.
inline constexpr double kMergeDistance_mm = 1e-3;

struct Mesh {
    std::vector<double> x_mm;
    std::vector<double> merged_x_mm;
    std::vector<Element> elements;
    std::vector<std::size_t> support_node;
    std::vector<double> support_arm_mm; ///< effective centre less node

    [[nodiscard]] std::size_t nodes() const { return x_mm.size(); }
};

/// Nodes at ends, steps, seats, point loads and ends of line loads of all cases. The model must have passed `checkModel`.
/// @param given  section flexibilities per piece in place of round ones; empty: none
[[nodiscard]] Mesh makeMesh(const Model& model, std::span<const LoadCase> cases, std::span<const Flexibility> given);

/// Loads of one case: forces and moments at nodes (six a node), polynomials on elements.
struct MeshLoads {
    std::vector<Vec6> nodal;
    std::vector<ElementLoad> distributed;
};
[[nodiscard]] MeshLoads makeLoads(const Mesh& mesh, const LoadCase& loadCase);

/// The piece in which x lies; at a boundary the one to the right, at the end the last.
[[nodiscard]] std::size_t pieceAt(const Model& model, double x_mm);

} // namespace shaftwright::beam
