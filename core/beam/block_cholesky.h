#pragma once
// Block tridiagonal symmetric positive definite systems with 6x6 blocks. Internal to the beam.

#include <Eigen/Core>

#include <cstddef>
#include <vector>

namespace shaftwright::beam
{

/// K = tridiag(lower^T, diagonal, lower); lower[i] couples node i+1 (rows) to node i (columns).
/// Factor and solution: Golub & Van Loan, Matrix Computations, block tridiagonal Cholesky.
/// Memory is taken by `resize` only; factorising and solving allocate nothing.
class BlockCholesky
{
public:
    using Mat6 = Eigen::Matrix<double, 6, 6>;
    using Vec6 = Eigen::Matrix<double, 6, 1>;

    void resize(std::size_t nodes);
    [[nodiscard]] std::size_t size() const { return m_diagonal.size(); }

    [[nodiscard]] Mat6& diagonal(std::size_t node) { return m_diagonal[node]; }
    [[nodiscard]] Mat6& lower(std::size_t node) { return m_lower[node]; }
    [[nodiscard]] const Mat6& diagonal(std::size_t node) const { return m_diagonal[node]; }
    [[nodiscard]] const Mat6& lower(std::size_t node) const { return m_lower[node]; }

    /// False when a pivot falls below 1e-13 of the node's own diagonal: the system can move (or nearly so).
    [[nodiscard]] bool factorise();
    /// Solves in place; `rhs` holds one vector a node.
    void solve(Vec6* rhs) const;
    /// y = K x with the matrix before factorising.
    void multiply(const Vec6* x, Vec6* y) const;

private:
    std::vector<Mat6> m_diagonal, m_lower;
    std::vector<Mat6> m_factor, m_coupling; ///< lower triangular C_i, and W_i = lower_i C_i^-T
    std::vector<Vec6> m_inversePivots;
};

} // namespace shaftwright::beam
