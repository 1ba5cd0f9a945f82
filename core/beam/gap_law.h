#pragma once
// Newton iteration for supports with a radial gap. Internal to the beam.

#include "core/beam/system.h"

namespace shaftwright::beam
{

/// Force of a gap support on the shaft is -force(e), e = displacement of the effective centre less that of the bore.
struct GapForce {
    Eigen::Vector2d force = Eigen::Vector2d::Zero();
    Eigen::Matrix2d tangent = Eigen::Matrix2d::Zero();
    double energy = 0.0;
    bool contact = false;
};
[[nodiscard]] GapForce gapForce(const Gap& gap, const Eigen::Vector2d& e);

struct GapSolution {
    int steps = 0;
    bool converged = false;
    bool restrained = true; ///< false: with the contacts as they are at the end the shaft can still move
};

/// Solves with all gap supports of the system; `solution` comes out in the system's coordinates. The energy is convex, so
/// Newton with step halving on it converges from anywhere. The matrix of `system` is left as it came.
[[nodiscard]] GapSolution solveWithGaps(LinearSystem& system, const std::vector<Vec6>& rhs, const std::vector<Vec5>& prescribed,
                                        std::vector<Vec6>& solution);

} // namespace shaftwright::beam
