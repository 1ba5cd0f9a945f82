#include "core/beam/system.h"

#include <algorithm>

namespace shaftwright::beam
{

bool Restraint::acts(std::size_t direction) const
{
    if (rigid[direction])
        return true;
    if (gap && (direction == 1 || direction == 2))
        return true;
    const auto d = static_cast<Eigen::Index>(direction);
    return (stiffness.row(d).array() != 0.0).any();
}

std::vector<Restraint> makeRestraints(const Model& model, const Mesh& mesh, const std::vector<std::size_t>& mains,
                                      const std::vector<bool>& holds_x, bool axiallyFree)
{
    std::vector<Restraint> restraints;
    restraints.reserve(model.supports.size());
    for (std::size_t s = 0; s < model.supports.size(); ++s) {
        const Support& support = model.supports[s];
        Restraint r;
        r.main = static_cast<std::size_t>(std::lower_bound(mains.begin(), mains.end(), mesh.support_node[s]) - mains.begin());
        r.arm_mm = mesh.support_arm_mm[s];
        r.rigid = support.rigid;
        for (int i = 0; i < 5; ++i) {
            for (int j = 0; j < 5; ++j) {
                // Symmetric to rounding by the check of the model; made so exactly here.
                const double k =
                    0.5 * (support.stiffness[std::size_t(i)][std::size_t(j)] + support.stiffness[std::size_t(j)][std::size_t(i)]);
                r.stiffness(i, j) = k;
            }
        }
        if (!holds_x.empty() && !holds_x[s]) {
            r.rigid[0] = false;
            r.stiffness.row(0).setZero();
            r.stiffness.col(0).setZero();
        }
        r.gap = support.gap;
        if (axiallyFree && s == 0) {
            r.rigid[0] = true;
            r.stiffness.row(0).setZero();
            r.stiffness.col(0).setZero();
        }
        restraints.push_back(r);
    }
    return restraints;
}

void LinearSystem::assemble(const std::vector<Span>& spans, std::vector<Restraint> restraints)
{
    m_restraints = std::move(restraints);
    m_given.clear();
    const std::size_t n = spans.size() + 1;
    m_matrix.resize(n);
    for (std::size_t k = 0; k < spans.size(); ++k) {
        m_matrix.diagonal(k) += spans[k].ii;
        m_matrix.diagonal(k + 1) += spans[k].jj;
        m_matrix.lower(k) = spans[k].ji;
    }
    for (std::size_t i = 0; i < n; ++i)
        m_matrix.diagonal(i)(kRx, kRx) = 1.0; // torsion is found by summation; here it only fills its place
    for (const Restraint& r : m_restraints) {
        const std::size_t i = r.main;
        if (r.arm_mm != 0.0) {
            // q = S q' with v = v_e - a rz, w = w_e + a ry: K' = S^T K S on this block row and column.
            Mat6 S = Mat6::Identity();
            S(kV, kRz) = -r.arm_mm;
            S(kW, kRy) = r.arm_mm;
            m_matrix.diagonal(i) = (S.transpose() * m_matrix.diagonal(i) * S).eval();
            if (i > 0)
                m_matrix.lower(i - 1) = (S.transpose() * m_matrix.lower(i - 1)).eval();
            if (i + 1 < n)
                m_matrix.lower(i) = (m_matrix.lower(i) * S).eval();
        }
        for (std::size_t a = 0; a < 5; ++a) {
            for (std::size_t b = 0; b < 5; ++b)
                m_matrix.diagonal(i)(kSupportCoordinate[a], kSupportCoordinate[b]) +=
                    r.stiffness(static_cast<Eigen::Index>(a), static_cast<Eigen::Index>(b));
        }
    }
    for (std::size_t s = 0; s < m_restraints.size(); ++s) {
        const Restraint& r = m_restraints[s];
        for (std::size_t d = 0; d < 5; ++d) {
            if (!r.rigid[d])
                continue;
            Given g;
            g.support = s;
            g.direction = d;
            g.node = r.main;
            g.coordinate = kSupportCoordinate[d];
            g.own = m_matrix.diagonal(g.node).col(g.coordinate);
            g.left.setZero();
            g.right.setZero();
            if (g.node > 0)
                g.left = m_matrix.lower(g.node - 1).row(g.coordinate).transpose();
            if (g.node + 1 < n)
                g.right = m_matrix.lower(g.node).col(g.coordinate);
            m_given.push_back(g);
        }
    }
    for (const Given& g : m_given) {
        Mat6& own = m_matrix.diagonal(g.node);
        own.row(g.coordinate).setZero();
        own.col(g.coordinate).setZero();
        own(g.coordinate, g.coordinate) = 1.0;
        if (g.node > 0)
            m_matrix.lower(g.node - 1).row(g.coordinate).setZero();
        if (g.node + 1 < n)
            m_matrix.lower(g.node).col(g.coordinate).setZero();
    }
}

void LinearSystem::makeRightSide(const std::vector<std::size_t>& mains, const CaseData& data, std::vector<Vec6>& rhs) const
{
    const std::size_t n = mains.size();
    const std::vector<Vec5>& prescribed = data.prescribed;
    rhs.resize(n);
    for (std::size_t i = 0; i < n; ++i)
        rhs[i] = data.loads.nodal[mains[i]];
    rhs.front() -= data.left_overhang;
    rhs.back() += data.right_overhang;
    for (std::size_t k = 0; k + 1 < n; ++k) {
        rhs[k] += data.spans[k].i;
        rhs[k + 1] += data.spans[k].j;
    }
    for (std::size_t s = 0; s < m_restraints.size(); ++s) {
        const Restraint& r = m_restraints[s];
        Vec6& f = rhs[r.main];
        f[kRz] -= r.arm_mm * f[kV];
        f[kRy] += r.arm_mm * f[kW];
        Eigen::Matrix<double, 5, 1> q0;
        for (std::size_t d = 0; d < 5; ++d)
            q0[static_cast<Eigen::Index>(d)] = prescribed[s][d];
        const Eigen::Matrix<double, 5, 1> force = r.stiffness * q0;
        for (std::size_t d = 0; d < 5; ++d)
            f[kSupportCoordinate[d]] += force[static_cast<Eigen::Index>(d)];
    }
    for (const Given& g : m_given) {
        const double q0 = prescribed[g.support][g.direction];
        rhs[g.node] -= g.own * q0;
        if (g.node > 0)
            rhs[g.node - 1] -= g.left * q0;
        if (g.node + 1 < n)
            rhs[g.node + 1] -= g.right * q0;
    }
    for (const Given& g : m_given)
        rhs[g.node][g.coordinate] = prescribed[g.support][g.direction];
    for (Vec6& f : rhs)
        f[kRx] = 0.0;
}

void LinearSystem::refine(std::vector<Vec6>& solution, const std::vector<Vec6>& rhs) const
{
    std::vector<Vec6> residual(rhs.size());
    m_matrix.multiply(solution.data(), residual.data());
    for (std::size_t i = 0; i < rhs.size(); ++i)
        residual[i] = rhs[i] - residual[i];
    m_matrix.solve(residual.data());
    for (std::size_t i = 0; i < rhs.size(); ++i)
        solution[i] += residual[i];
}

void LinearSystem::toShaft(std::vector<Vec6>& solution) const
{
    for (const Restraint& r : m_restraints) {
        Vec6& q = solution[r.main];
        q[kV] -= r.arm_mm * q[kRz];
        q[kW] += r.arm_mm * q[kRy];
    }
}

} // namespace shaftwright::beam
