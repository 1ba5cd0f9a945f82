#pragma once
// The condensed system of one group of load cases: same supports acting, one factorisation. Internal to the beam.

#include "core/beam/block_cholesky.h"
#include "core/beam/span.h"

namespace shaftwright::beam
{

/// How one support acts in a group of cases.
struct Restraint {
    std::size_t main = 0; ///< number of its main node
    double arm_mm = 0.0;  ///< effective centre less node
    std::array<bool, 5> rigid{};
    Eigen::Matrix<double, 5, 5> stiffness = Eigen::Matrix<double, 5, 5>::Zero();
    std::optional<Gap> gap;
    /// True for a direction in which the support can give a force or moment at all.
    [[nodiscard]] bool acts(std::size_t direction) const;
};

/// Coordinate of a node that belongs to a support direction (x, y, z, ry, rz).
inline constexpr std::array<int, 5> kSupportCoordinate{kU, kV, kW, kRy, kRz};

/// @param holds_x  per support; empty: all
/// @param axiallyFree  then x is made rigid at the first support
[[nodiscard]] std::vector<Restraint> makeRestraints(const Model& model, const Mesh& mesh, const std::vector<std::size_t>& mains,
                                                    const std::vector<bool>& holds_x, bool axiallyFree);

/// Assembled and reduced matrix. At a seat the coordinates are those of the effective centre (v_e = v + a rz,
/// w_e = w - a ry), so that a rigid direction is one coordinate, which is given instead of being held by a stiff spring.
class LinearSystem
{
public:
    void assemble(const std::vector<Span>& spans, std::vector<Restraint> restraints);
    [[nodiscard]] bool factorise() { return m_matrix.factorise(); }

    /// Right side of a case in the coordinates of the system.
    void makeRightSide(const std::vector<std::size_t>& mains, const CaseData& data, std::vector<Vec6>& rhs) const;
    void solve(std::vector<Vec6>& rhs) const { m_matrix.solve(rhs.data()); }
    /// One step of iterative refinement.
    void refine(std::vector<Vec6>& solution, const std::vector<Vec6>& rhs) const;
    /// From the system's coordinates to displacements of the shaft at the main nodes.
    void toShaft(std::vector<Vec6>& solution) const;

    [[nodiscard]] const std::vector<Restraint>& restraints() const { return m_restraints; }
    [[nodiscard]] BlockCholesky& matrix() { return m_matrix; }
    [[nodiscard]] const BlockCholesky& matrix() const { return m_matrix; }

private:
    // Columns of the unreduced matrix at a given coordinate: rows of its own node and of both neighbours.
    struct Given {
        std::size_t support = 0, direction = 0, node = 0;
        int coordinate = 0;
        Vec6 own, left, right;
    };
    BlockCholesky m_matrix;
    std::vector<Restraint> m_restraints;
    std::vector<Given> m_given;
};

} // namespace shaftwright::beam
