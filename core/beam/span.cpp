#include "core/beam/span.h"

#include <algorithm>

namespace shaftwright::beam
{

namespace
{

// The two ends' stiffness from the flexibility of the piece clamped at i. Order of a plane: (v, theta).
void fillPlane(Span& span, int v, int theta, double sign, double k11, double k12, double k22)
{
    const double L = span.length_mm;
    // theta = rz in plane xy; plane xz is the same beam with theta = -ry, which the sign turns.
    const auto put = [&](Mat6& m, double vv, double vt, double tv, double tt) {
        m(v, v) = vv;
        m(v, theta) = sign * vt;
        m(theta, v) = sign * tv;
        m(theta, theta) = tt;
    };
    // With H = [1 0; L 1]: K_ij = -H K_jj, K_ii = H K_jj H^T.
    put(span.jj, k11, k12, k12, k22);
    put(span.ji, -k11, -(L * k11 + k12), -k12, -(L * k12 + k22));
    put(span.ii, k11, L * k11 + k12, L * k11 + k12, L * (L * k11 + 2.0 * k12) + k22);
}

const auto kNothing = [](std::size_t, const State&) {};

} // namespace

std::vector<std::size_t> mainNodes(const Mesh& mesh)
{
    std::vector<std::size_t> mains = mesh.support_node;
    std::sort(mains.begin(), mains.end());
    return mains;
}

std::vector<Span> makeSpans(const Mesh& mesh, const std::vector<std::size_t>& mains)
{
    std::vector<Span> spans(mains.size() - 1);
    for (std::size_t k = 0; k < spans.size(); ++k) {
        Span& span = spans[k];
        span.first = mains[k];
        span.last = mains[k + 1];
        const double end = mesh.x_mm[span.last];
        span.length_mm = end - mesh.x_mm[span.first];
        BendingFlexibility f;
        for (std::size_t e = span.first; e < span.last; ++e)
            f += flexibilityAbout(mesh.elements[e], end - mesh.x_mm[e + 1]);
        const double determinant = f.f11 * f.f22 - f.f12 * f.f12;
        const double k11 = f.f22 / determinant, k12 = -f.f12 / determinant, k22 = f.f11 / determinant;
        span.ii.setZero();
        span.ji.setZero();
        span.jj.setZero();
        span.ii(kU, kU) = span.jj(kU, kU) = 1.0 / f.axial;
        span.ji(kU, kU) = -1.0 / f.axial;
        fillPlane(span, kV, kRz, 1.0, k11, k12, k22);
        fillPlane(span, kW, kRy, -1.0, k11, k12, k22);
    }
    return spans;
}

void passNode(State& state, const Vec6& nodal)
{
    state.N_N -= nodal[kU];
    state.Vy_N -= nodal[kV];
    state.Vz_N -= nodal[kW];
    state.T_Nmm -= nodal[kRx];
    state.My_Nmm -= nodal[kRy];
    state.Mz_Nmm -= nodal[kRz];
}

SpanLoads spanLoads(const Mesh& mesh, const Span& span, const MeshLoads& loads, double temperatureRise_K)
{
    const double L = span.length_mm;
    // Statics: what arrives at the right end when nothing acts at the left ...
    State arriving;
    for (std::size_t e = span.first; e < span.last; ++e) {
        advanceForces(arriving, loads.distributed[e], mesh.elements[e].length_mm);
        if (e + 1 < span.last)
            passNode(arriving, loads.nodal[e + 1]);
    }
    // ... and the forces at the left that leave the right end free.
    SpanLoads result;
    State& start = result.clamped;
    start.x_mm = mesh.x_mm[span.first];
    start.N_N = -arriving.N_N;
    start.Vy_N = -arriving.Vy_N;
    start.Vz_N = -arriving.Vz_N;
    start.Mz_Nmm = start.Vy_N * L - arriving.Mz_Nmm;
    start.My_Nmm = -start.Vz_N * L - arriving.My_Nmm;
    const State end = walk(mesh, span.first, span.last, start, loads, temperatureRise_K, kNothing, kNothing);
    result.free_end << end.u_mm, end.v_mm, end.w_mm, 0.0, end.ry_rad, end.rz_rad;
    result.j.noalias() = span.jj * result.free_end;
    const Vec6& j = result.j;
    result.i << start.N_N - j[kU], start.Vy_N - j[kV], start.Vz_N - j[kW], 0.0, start.My_Nmm - j[kRy] + L * j[kW],
        start.Mz_Nmm - j[kRz] - L * j[kV];
    return result;
}

CaseData makeCaseData(const Mesh& mesh, const std::vector<std::size_t>& mains, const std::vector<Span>& spans,
                      const LoadCase& loadCase, const Model& model)
{
    CaseData data;
    data.loads = makeLoads(mesh, loadCase);
    data.temperature_rise_K = loadCase.temperature_rise_K;
    data.spans.reserve(spans.size());
    for (const Span& span : spans)
        data.spans.push_back(spanLoads(mesh, span, data.loads, data.temperature_rise_K));

    State left;
    for (std::size_t e = 0; e < mains.front(); ++e) {
        passNode(left, data.loads.nodal[e]);
        advanceForces(left, data.loads.distributed[e], mesh.elements[e].length_mm);
    }
    data.left_overhang << left.N_N, left.Vy_N, left.Vz_N, 0.0, left.My_Nmm, left.Mz_Nmm;

    State right;
    for (std::size_t e = mains.back(); e < mesh.elements.size(); ++e) {
        advanceForces(right, data.loads.distributed[e], mesh.elements[e].length_mm);
        passNode(right, data.loads.nodal[e + 1]);
    }
    const double L = mesh.x_mm.back() - mesh.x_mm[mains.back()];
    data.right_overhang << -right.N_N, -right.Vy_N, -right.Vz_N, 0.0, -right.My_Nmm + right.Vz_N * L,
        -right.Mz_Nmm - right.Vy_N * L;

    data.prescribed.resize(model.supports.size());
    for (std::size_t s = 0; s < model.supports.size(); ++s) {
        data.prescribed[s] = model.supports[s].prescribed;
        if (s < loadCase.prescribed.size()) {
            for (std::size_t d = 0; d < 5; ++d)
                data.prescribed[s][d] += loadCase.prescribed[s][d];
        }
    }
    return data;
}

SpanForces spanForces(const Span& span, const SpanLoads& loads, const Vec6& qi, const Vec6& qj)
{
    const double L = span.length_mm;
    // Deformation relative to the left end's rigid motion first: a shaft that only moves shows no forces.
    Vec6 relative = qj - qi;
    relative[kV] -= L * qi[kRz];
    relative[kW] += L * qi[kRy];
    relative[kRx] = 0.0;
    relative -= loads.free_end;
    SpanForces forces;
    forces.j.noalias() = span.jj * relative;
    const State& clamped = loads.clamped;
    const Vec6& j = forces.j;
    forces.i << clamped.N_N + j[kU], clamped.Vy_N + j[kV], clamped.Vz_N + j[kW], 0.0, clamped.My_Nmm + j[kRy] - L * j[kW],
        clamped.Mz_Nmm + j[kRz] + L * j[kV];
    return forces;
}

} // namespace shaftwright::beam
