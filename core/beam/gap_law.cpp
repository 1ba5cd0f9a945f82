#include "core/beam/gap_law.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::beam
{

namespace
{

struct GapSupport {
    std::size_t node = 0;
    Gap gap;
    Eigen::Vector2d bore;
    Mat6 base; ///< diagonal block without the gap's tangent

    [[nodiscard]] Eigen::Vector2d eccentricity(const std::vector<Vec6>& q) const
    {
        return Eigen::Vector2d(q[node][kV], q[node][kW]) - bore;
    }
};

double dot(const std::vector<Vec6>& a, const std::vector<Vec6>& b)
{
    double sum = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i)
        sum += a[i].dot(b[i]);
    return sum;
}

} // namespace

GapForce gapForce(const Gap& gap, const Eigen::Vector2d& e)
{
    GapForce result;
    const double r = e.norm();
    const double depth = r - gap.gap_mm;
    if (!(depth > 0.0) || r == 0.0)
        return result;
    result.contact = true;
    const Eigen::Vector2d n = e / r;
    const double force = gap.stiffness * std::pow(depth, gap.exponent);
    result.force = force * n;
    const double along = gap.exponent * force / depth;
    const double across = force / r;
    result.tangent = across * Eigen::Matrix2d::Identity() + (along - across) * n * n.transpose();
    result.energy = force * depth / (gap.exponent + 1.0);
    return result;
}

GapSolution solveWithGaps(LinearSystem& system, const std::vector<Vec6>& rhs, const std::vector<Vec5>& prescribed,
                          std::vector<Vec6>& solution)
{
    BlockCholesky& matrix = system.matrix();
    const std::size_t n = matrix.size();
    std::vector<GapSupport> gaps;
    for (std::size_t s = 0; s < system.restraints().size(); ++s) {
        const Restraint& r = system.restraints()[s];
        if (r.gap)
            gaps.push_back({r.main, *r.gap, Eigen::Vector2d(prescribed[s][1], prescribed[s][2]), matrix.diagonal(r.main)});
    }
    const auto setTangent = [&](const GapSupport& g, const Eigen::Matrix2d& tangent) {
        Mat6& block = matrix.diagonal(g.node);
        block = g.base;
        block.block<2, 2>(kV, kV) += tangent;
    };
    const auto restore = [&] {
        for (const GapSupport& g : gaps)
            matrix.diagonal(g.node) = g.base;
    };
    std::vector<Vec6> product(n), trial(n), step(n);
    const auto energy = [&](const std::vector<Vec6>& q) {
        restore();
        matrix.multiply(q.data(), product.data());
        double sum = 0.5 * dot(q, product) - dot(q, rhs);
        for (const GapSupport& g : gaps)
            sum += gapForce(g.gap, g.eccentricity(q)).energy;
        return sum;
    };

    // Start: springs without gap.
    GapSolution result;
    solution = rhs;
    for (const GapSupport& g : gaps) {
        setTangent(g, g.gap.stiffness * Eigen::Matrix2d::Identity());
        solution[g.node].segment<2>(kV) += g.gap.stiffness * g.bore;
    }
    if (!matrix.factorise()) {
        restore();
        result.restrained = false;
        return result;
    }
    matrix.solve(solution.data());

    constexpr int kMostSteps = 100;
    double previous_change = -1.0;
    for (result.steps = 1; result.steps <= kMostSteps; ++result.steps) {
        // Linearised gap forces at the present state.
        bool regularised = false;
        for (int attempt = 0; attempt < 2; ++attempt) {
            trial = rhs;
            for (const GapSupport& g : gaps) {
                const Eigen::Vector2d e = g.eccentricity(solution);
                const GapForce f = gapForce(g.gap, e);
                Eigen::Matrix2d tangent = f.tangent;
                if (regularised)
                    tangent += 1e-3 * g.gap.stiffness * Eigen::Matrix2d::Identity();
                setTangent(g, tangent);
                trial[g.node].segment<2>(kV) += -f.force + tangent * (e + g.bore);
            }
            if (matrix.factorise())
                break;
            regularised = true; // all contacts of a needed direction are open: a weak spring for this step only
        }
        matrix.solve(trial.data());
        for (std::size_t i = 0; i < n; ++i)
            step[i] = trial[i] - solution[i];
        double change = 0.0, size = 0.0;
        for (const GapSupport& g : gaps) {
            change = std::max(change, step[g.node].segment<2>(kV).norm());
            size = std::max({size, trial[g.node].segment<2>(kV).norm(), g.gap.gap_mm, g.bore.norm()});
        }
        if (change <= 1e-13 * size || change == 0.0) {
            solution = trial;
            result.converged = true;
            result.restrained = !regularised;
            break;
        }
        const double before = energy(solution);
        const double rounding = 1e-14 * (std::abs(before) + std::abs(dot(solution, rhs)));
        double length = 1.0;
        // Steps this small change the energy by less than its rounding: it can no longer tell good from bad.
        const bool tiny = change <= 1e-8 * size;
        for (int halving = 0; halving < 60 && !tiny; ++halving) {
            if (energy(trial) <= before + rounding)
                break;
            length *= 0.5;
            for (std::size_t i = 0; i < n; ++i)
                trial[i] = solution[i] + length * step[i];
        }
        solution = trial;
        // Below this the step is rounding: the change of the displacement, not of the state of contact. A soft shaft behind a
        // stiff contact has a higher floor: near the solution Newton's steps shrink by far more than four, unless they are noise.
        const bool floor_reached = tiny && previous_change >= 0.0 && change > 0.25 * previous_change;
        if (length == 1.0 && !regularised && (change <= 1e-12 * size || floor_reached)) {
            result.converged = true;
            break;
        }
        previous_change = length == 1.0 && !regularised ? change : -1.0;
    }
    restore();
    return result;
}

} // namespace shaftwright::beam
