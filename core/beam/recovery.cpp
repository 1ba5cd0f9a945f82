#include "core/beam/recovery.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::beam
{

namespace
{

double length(const Vec3& v)
{
    return std::hypot(v[0], v[1], v[2]);
}

// Largest force that acts on the shaft, moments as forces on the shaft's length; and what rounding of the stiffness
// times the displacements can amount to (forces of that size say nothing about equilibrium).
double forceScale(const Mesh& mesh, const std::vector<Span>& spans, const CaseData& data, const std::vector<Vec6>& seats,
                  const std::vector<Reaction>& reactions)
{
    const double L = mesh.x_mm.back() - mesh.x_mm.front();
    double scale = 0.0;
    for (const Vec6& load : data.loads.nodal) {
        scale = std::max({scale, load.head<3>().norm(), load.tail<2>().norm() / L});
    }
    for (std::size_t e = 0; e < mesh.elements.size(); ++e) {
        const ElementLoad& load = data.loads.distributed[e];
        const double s = mesh.elements[e].length_mm;
        for (std::size_t k = 0; k < 3; ++k)
            scale = std::max(scale, s * std::max(std::abs(load.q0[k]), std::abs(load.q0[k] + s * (load.q1[k] + s * load.q2[k]))));
    }
    for (const Reaction& r : reactions)
        scale = std::max({scale, length(r.force_N), std::hypot(r.my_Nmm, r.mz_Nmm) / L});
    for (std::size_t k = 0; k < spans.size(); ++k) {
        for (const Vec6* q : {&seats[k], &seats[k + 1]}) {
            const double bending =
                spans[k].jj(kV, kV) * q->segment<2>(kV).norm() + std::abs(spans[k].jj(kV, kRz)) * q->tail<2>().norm();
            scale = std::max({scale, 1e-4 * bending, 1e-4 * spans[k].jj(kU, kU) * std::abs((*q)[kU])});
        }
    }
    return scale;
}

} // namespace

CaseResult recover(const Mesh& mesh, const std::vector<std::size_t>& mains, const std::vector<Span>& spans,
                   const std::vector<Restraint>& restraints, const CaseData& data, const std::vector<Vec6>& seats,
                   const std::vector<bool>& contact)
{
    const std::size_t n = mains.size();
    CaseResult result;

    // Reactions from the cuts on both sides of a seat. Taken from relative deformations of whole spans, not from
    // stiffness times displacement and not from spring rate times spring travel: both lose digits where things are stiff.
    std::vector<Vec6> nodeReaction(n);
    {
        Vec6 leftCut = data.left_overhang;
        for (std::size_t i = 0; i < n; ++i) {
            Vec6 rightCut = data.right_overhang;
            Vec6 nextLeft = Vec6::Zero();
            if (i + 1 < n) {
                const SpanForces forces = spanForces(spans[i], data.spans[i], seats[i], seats[i + 1]);
                rightCut = forces.i;
                nextLeft = forces.j;
            }
            nodeReaction[i] = leftCut - rightCut - data.loads.nodal[mains[i]];
            leftCut = nextLeft;
        }
    }
    std::vector<Vec6> nodal = data.loads.nodal; // with the reactions
    result.reactions.resize(restraints.size());
    for (std::size_t s = 0; s < restraints.size(); ++s) {
        const Restraint& r = restraints[s];
        const Vec6& all = nodeReaction[r.main];
        Reaction& reaction = result.reactions[s];
        reaction.in_contact = contact[s];
        for (std::size_t d = 0; d < 3; ++d) {
            const bool open = r.gap && d > 0 && !contact[s];
            reaction.force_N[d] = r.acts(d) && !open ? all[static_cast<Eigen::Index>(d)] : 0.0;
        }
        // About the effective centre. A direction that the support does not hold takes nothing: what is left of it shows
        // in the balance.
        if (r.acts(3))
            reaction.my_Nmm = all[kRy] + r.arm_mm * reaction.force_N[2];
        if (r.acts(4))
            reaction.mz_Nmm = all[kRz] - r.arm_mm * reaction.force_N[1];
        Vec6& f = nodal[mains[r.main]];
        f[kU] += reaction.force_N[0];
        f[kV] += reaction.force_N[1];
        f[kW] += reaction.force_N[2];
        f[kRy] += reaction.my_Nmm - r.arm_mm * reaction.force_N[2];
        f[kRz] += reaction.mz_Nmm + r.arm_mm * reaction.force_N[1];
        const Vec6& q = seats[r.main];
        reaction.displacement_mm = {q[kU], q[kV] + r.arm_mm * q[kRz], q[kW] - r.arm_mm * q[kRy]};
        reaction.ry_rad = q[kRy];
        reaction.rz_rad = q[kRz];
    }

    // States from the left. Forces run through by statics; displacements are anchored anew at every seat.
    MeshLoads applied{std::move(nodal), data.loads.distributed};
    result.stations.resize(2 * mesh.nodes());
    const auto right = [&](std::size_t node, const State& state) { result.stations[2 * node + 1] = state; };
    const auto left = [&](std::size_t node, const State& state) { result.stations[2 * node] = state; };
    const double dT = data.temperature_rise_K;
    const auto anchor = [&](State& state, const Vec6& q) {
        state.u_mm = q[kU];
        state.v_mm = q[kV];
        state.w_mm = q[kW];
        state.ry_rad = q[kRy];
        state.rz_rad = q[kRz];
    };
    State state;
    state.x_mm = mesh.x_mm.front();
    if (mains.front() > 0) {
        // The overhang's own bending first, then the rigid motion that joins it to the seat.
        State trial = state;
        passNode(trial, applied.nodal[0]);
        const State end = walk(
            mesh, 0, mains.front(), trial, applied, dT, [](std::size_t, const State&) {}, [](std::size_t, const State&) {});
        const Vec6& q = seats.front();
        const double L = mesh.x_mm[mains.front()] - mesh.x_mm.front();
        state.u_mm = q[kU] - end.u_mm;
        state.rz_rad = q[kRz] - end.rz_rad;
        state.ry_rad = q[kRy] - end.ry_rad;
        state.v_mm = q[kV] - end.v_mm - state.rz_rad * L;
        state.w_mm = q[kW] - end.w_mm + state.ry_rad * L;
    } else {
        anchor(state, seats.front());
    }
    result.stations[0] = state;
    passNode(state, applied.nodal[0]);
    const auto stretch = [&](std::size_t from, std::size_t to) {
        state = walk(mesh, from, to, state, applied, dT, right, left);
        passNode(state, applied.nodal[to]);
    };
    if (mains.front() > 0)
        stretch(0, mains.front());
    for (std::size_t i = 0; i < n; ++i) {
        anchor(state, seats[i]);
        const std::size_t to = i + 1 < n ? mains[i + 1] : mesh.nodes() - 1;
        if (to > mains[i])
            stretch(mains[i], to);
    }
    state.x_mm = mesh.x_mm.back();
    result.stations.back() = state;
    result.torque_residual_Nmm = state.T_Nmm;
    result.element_loads = data.loads.distributed;
    result.temperature_rise_K = dT;

    const double scale = forceScale(mesh, spans, data, seats, result.reactions);
    const double L = mesh.x_mm.back() - mesh.x_mm.front();
    if (scale > 0.0) {
        result.balance_force = std::hypot(state.N_N, state.Vy_N, state.Vz_N) / scale;
        result.balance_moment = std::hypot(state.My_Nmm, state.Mz_Nmm) / (scale * L);
    }
    return result;
}

} // namespace shaftwright::beam
