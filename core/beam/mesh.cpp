#include "core/beam/mesh.h"

#include "core/beam/shoulder.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright::beam
{

namespace
{

// Which of two stations on nearly one spot gives its x to the node.
enum class Rank { boundary, seat, load };

struct Station {
    double x_mm;
    Rank rank;
};

std::size_t nearestNode(const std::vector<double>& xs, double x)
{
    const auto above = std::lower_bound(xs.begin(), xs.end(), x);
    if (above == xs.begin())
        return 0;
    if (above == xs.end())
        return xs.size() - 1;
    const auto i = static_cast<std::size_t>(above - xs.begin());
    return x - xs[i - 1] < xs[i] - x ? i - 1 : i;
}

// A force that is moved to a node keeps its moment about every point.
void addForce(Vec6& node, const Vec3& force, const Vec3& moment, double arm_mm)
{
    node[kU] += force[0];
    node[kV] += force[1];
    node[kW] += force[2];
    node[kRx] += moment[0];
    node[kRy] += moment[1] - arm_mm * force[2];
    node[kRz] += moment[2] + arm_mm * force[1];
}

} // namespace

std::size_t pieceAt(const Model& model, double x_mm)
{
    const auto next = std::upper_bound(model.pieces.begin(), model.pieces.end(), x_mm,
                                       [](double x, const Piece& piece) { return x < piece.x0_mm; });
    return next == model.pieces.begin() ? 0 : static_cast<std::size_t>(next - model.pieces.begin()) - 1;
}

Mesh makeMesh(const Model& model, std::span<const LoadCase> cases, std::span<const Flexibility> given)
{
    std::vector<Station> stations;
    for (const Piece& piece : model.pieces)
        stations.push_back({piece.x0_mm, Rank::boundary});
    stations.push_back({model.pieces.back().x1_mm, Rank::boundary});
    for (const Support& support : model.supports)
        stations.push_back({support.x_mm, Rank::seat});
    for (const LoadCase& loadCase : cases) {
        for (const PointLoad& load : loadCase.point_loads)
            stations.push_back({load.x_mm, Rank::load});
        for (const LineLoad& load : loadCase.line_loads) {
            stations.push_back({load.x0_mm, Rank::load});
            stations.push_back({load.x1_mm, Rank::load});
        }
    }
    const double first = model.pieces.front().x0_mm;
    const double last = model.pieces.back().x1_mm;
    for (Station& station : stations)
        station.x_mm = std::clamp(station.x_mm, first, last);
    std::sort(stations.begin(), stations.end(),
              [](const Station& a, const Station& b) { return a.x_mm != b.x_mm ? a.x_mm < b.x_mm : a.rank < b.rank; });

    Mesh mesh;
    Rank rank = Rank::load;
    for (const Station& station : stations) {
        if (!mesh.x_mm.empty() && station.x_mm - mesh.x_mm.back() < kMergeDistance_mm) {
            if (station.x_mm == mesh.x_mm.back())
                continue;
            if (station.rank < rank) {
                mesh.merged_x_mm.push_back(mesh.x_mm.back());
                mesh.x_mm.back() = station.x_mm;
                rank = station.rank;
            } else {
                mesh.merged_x_mm.push_back(station.x_mm);
            }
            continue;
        }
        mesh.x_mm.push_back(station.x_mm);
        rank = station.rank;
    }

    const std::vector<Shoulder> steps = shoulders(model);
    const std::size_t n = mesh.nodes();
    mesh.elements.reserve(n - 1);
    std::size_t previousPiece = 0;
    for (std::size_t i = 0; i + 1 < n; ++i) {
        const std::size_t piece = pieceAt(model, 0.5 * (mesh.x_mm[i] + mesh.x_mm[i + 1]));
        mesh.elements.push_back(makeElement(model.pieces[piece], model.properties, mesh.x_mm[i], mesh.x_mm[i + 1],
                                            given.empty() ? nullptr : &given[piece]));
        if (i > 0 && piece == previousPiece + 1) {
            const Shoulder& step = steps[previousPiece];
            Element& left = mesh.elements[i - 1];
            Element& right = mesh.elements[i];
            if (step.thin_is_left)
                left.shoulder_right = step.extra_length_mm * left.flexibilityAt(left.length_mm).bending;
            else
                right.shoulder_left = step.extra_length_mm * right.flexibilityAt(0.0).bending;
        }
        previousPiece = piece;
    }
    for (const Support& support : model.supports) {
        const std::size_t node = nearestNode(mesh.x_mm, support.x_mm);
        mesh.support_node.push_back(node);
        mesh.support_arm_mm.push_back(support.x_mm + support.centre_offset_mm - mesh.x_mm[node]);
    }
    return mesh;
}

MeshLoads makeLoads(const Mesh& mesh, const LoadCase& loadCase)
{
    MeshLoads loads;
    loads.nodal.assign(mesh.nodes(), Vec6::Zero());
    loads.distributed.assign(mesh.elements.size(), ElementLoad{});
    for (const PointLoad& load : loadCase.point_loads) {
        const std::size_t node = nearestNode(mesh.x_mm, load.x_mm);
        addForce(loads.nodal[node], load.force_N, load.moment_Nmm, load.x_mm - mesh.x_mm[node]);
    }
    for (const LineLoad& load : loadCase.line_loads) {
        const double length = load.x1_mm - load.x0_mm;
        const std::size_t from = nearestNode(mesh.x_mm, load.x0_mm);
        const std::size_t to = nearestNode(mesh.x_mm, load.x1_mm);
        if (from == to) { // shorter than the merge distance: its resultant
            Vec3 force{}, moment{};
            for (std::size_t k = 0; k < 3; ++k)
                force[k] = 0.5 * length * (load.q0_N_mm[k] + load.q1_N_mm[k]);
            moment[0] = 0.5 * length * (load.m0_Nmm_mm + load.m1_Nmm_mm);
            addForce(loads.nodal[from], force, moment, load.x0_mm + 0.5 * length - mesh.x_mm[from]);
            continue;
        }
        for (std::size_t e = from; e < to; ++e) {
            ElementLoad& on = loads.distributed[e];
            const double s = mesh.x_mm[e] - load.x0_mm;
            for (std::size_t k = 0; k < 3; ++k) {
                const double slope = (load.q1_N_mm[k] - load.q0_N_mm[k]) / length;
                on.q0[k] += load.q0_N_mm[k] + slope * s;
                on.q1[k] += slope;
            }
            const double slope = (load.m1_Nmm_mm - load.m0_Nmm_mm) / length;
            on.m0 += load.m0_Nmm_mm + slope * s;
            on.m1 += slope;
        }
    }
    const Vec3& g = loadCase.gravity;
    if (g[0] != 0.0 || g[1] != 0.0 || g[2] != 0.0) {
        for (std::size_t e = 0; e < mesh.elements.size(); ++e) {
            const Element& element = mesh.elements[e];
            // rho A(s) g, with A = pi/4 (outer^2 - bore^2) quadratic in s; kg/m^3 times mm^2 times m/s^2 is 1e-9 N/mm.
            const double scale = 1e-9 * element.properties.density_kg_m3 * std::numbers::pi / 4.0;
            const double d = element.outer0_mm, dd = element.outer_slope;
            const double b = element.bore0_mm, bb = element.bore_slope;
            for (std::size_t k = 0; k < 3; ++k) {
                loads.distributed[e].q0[k] += scale * g[k] * (d * d - b * b);
                loads.distributed[e].q1[k] += scale * g[k] * 2.0 * (d * dd - b * bb);
                loads.distributed[e].q2[k] += scale * g[k] * (dd * dd - bb * bb);
            }
        }
    }
    return loads;
}

} // namespace shaftwright::beam
