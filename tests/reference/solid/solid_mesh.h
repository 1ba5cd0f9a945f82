#pragma once
// A stepped solid round shaft of 20-node bricks, half of it (the plane z = 0 is a plane of symmetry), and its solution by an
// external solver. Independent of core: no beam in here.

#include <array>
#include <map>
#include <string>
#include <vector>

namespace solidtest
{

/// Thin pieces of one diameter and thick pieces of another, alternating freely along x.
struct SolidShaft {
    struct Piece {
        double x0_mm = 0.0, x1_mm = 0.0;
        bool thick = false;
    };
    std::vector<Piece> pieces;
    double thin_mm = 0.0, thick_mm = 0.0;
    std::vector<double> planes_mm; ///< cross-sections at which forces act or displacements are asked
    double modulus_MPa = 0.0, poisson_ratio = 0.0;
};

/// Fineness: cells along half a side of the core square, layers of the rings, axial size at shoulders, mm.
struct Fineness {
    int core = 2, inner_ring = 1, outer_ring = 1;
    double at_shoulder_mm = 4.0;
};

/// Mean transverse displacement of each plane for a set of load cases. Two planes are held on average (no mean transverse
/// displacement), which is what a beam's simple support is.
class SolidModel
{
public:
    SolidModel(const SolidShaft& shaft, const Fineness& fineness);

    [[nodiscard]] std::size_t degreesOfFreedom() const { return 3 * m_nodes.size(); }

    struct Force {
        std::size_t plane = 0;
        double force_N = 0.0;
    };
    /// @param held  two planes
    /// @return for each case the mean displacement (y) of every plane; empty when the solver gave nothing
    [[nodiscard]] std::vector<std::vector<double>>
    solve(std::array<std::size_t, 2> held, const std::vector<std::vector<Force>>& cases, const std::string& directory) const;

private:
    struct Cell2 {
        std::array<std::array<double, 2>, 8> at; ///< corners, then middles of sides
    };
    [[nodiscard]] int node(double x, double y, double z);
    [[nodiscard]] std::vector<Cell2> section(bool thick) const;

    SolidShaft m_shaft;
    Fineness m_fineness;
    std::vector<std::array<double, 3>> m_nodes;
    std::map<std::array<long, 3>, int> m_index;
    std::vector<std::array<int, 20>> m_elements;
    std::vector<std::map<int, double>> m_weights; ///< per plane: area share of each node, sum = half the section
};

} // namespace solidtest
