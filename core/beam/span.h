#pragma once
// The shaft between two neighbouring main nodes (the seats), condensed to its two ends; overhangs are pure statics.
// Between seats a shaft is a chain of pieces that carries loads only; its end stiffness follows from flexibility integrals
// over the pieces, and what the loads do from one walk along it. So the system to be factorised has one block a seat,
// whatever the number of steps and loads, and short pieces cost no digits. Internal to the beam.

#include "core/beam/mesh.h"

namespace shaftwright::beam
{

struct Span {
    std::size_t first = 0, last = 0; ///< elements first .. last-1; also its nodes first and last
    double length_mm = 0.0;
    Mat6 ii, ji, jj; ///< stiffness of the two ends; torsion is left out (the walk finds it)
};

/// Numbers of the main nodes, ascending: all seats.
[[nodiscard]] std::vector<std::size_t> mainNodes(const Mesh& mesh);
[[nodiscard]] std::vector<Span> makeSpans(const Mesh& mesh, const std::vector<std::size_t>& mains);

/// Loads between the ends of a span, as they act on its ends.
struct SpanLoads {
    State clamped; ///< internal forces at the left end when the right end is free (displacements zero)
    Vec6 free_end; ///< displacements of the free right end then
    Vec6 i, j;     ///< forces on the two main nodes when both ends are clamped
};
[[nodiscard]] SpanLoads spanLoads(const Mesh& mesh, const Span& span, const MeshLoads& loads, double temperatureRise_K);

/// One case, brought to the mesh.
struct CaseData {
    MeshLoads loads;
    std::vector<SpanLoads> spans;
    Vec6 left_overhang, right_overhang; ///< internal forces left of the first and right of the last seat (torque left out)
    std::vector<Vec5> prescribed;       ///< per support, all parts together
    double temperature_rise_K = 0.0;
};
[[nodiscard]] CaseData makeCaseData(const Mesh& mesh, const std::vector<std::size_t>& mains, const std::vector<Span>& spans,
                                    const LoadCase& loadCase, const Model& model);

/// Internal forces at both ends of a span from the displacements of its ends (in shaft coordinates).
struct SpanForces {
    Vec6 i, j; ///< N, Vy, Vz, 0, My, Mz on the +x face, right of node i and left of node j
};
[[nodiscard]] SpanForces spanForces(const Span& span, const SpanLoads& loads, const Vec6& qi, const Vec6& qj);

/// Applies the loads of a node to internal forces: from its left to its right side.
void passNode(State& state, const Vec6& nodal);

/// Walks the elements first .. last-1 from the state right of node `first` (shoulders of elements are not in it yet).
/// Calls right(e, state) with the right limit of node e and left(e + 1, state) with the left limit of node e + 1.
/// Returns the state left of node `last`, behind the shoulder that may sit there.
template <class Right, class Left>
State walk(const Mesh& mesh, std::size_t first, std::size_t last, State state, const MeshLoads& loads, double temperatureRise_K,
           Right&& right, Left&& left)
{
    for (std::size_t e = first; e < last; ++e) {
        const Element& element = mesh.elements[e];
        state.rz_rad += state.Mz_Nmm * element.shoulder_left;
        state.ry_rad += state.My_Nmm * element.shoulder_left;
        right(e, state);
        state = advance(element, state, loads.distributed[e], temperatureRise_K, element.length_mm);
        state.x_mm = mesh.x_mm[e + 1];
        left(e + 1, state);
        state.rz_rad += state.Mz_Nmm * element.shoulder_right;
        state.ry_rad += state.My_Nmm * element.shoulder_right;
        if (e + 1 < last)
            passNode(state, loads.nodal[e + 1]);
    }
    return state;
}

} // namespace shaftwright::beam
