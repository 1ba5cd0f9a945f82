#pragma once
// Where a reaction comes from: the share of each load by superposition, and the sums of moments and forces of a
// determinate shaft as one would write them by hand. Asked for by panel and report; both read the assessment's own model.

#include "core/analysis/assessment.h"

#include <string>
#include <vector>

namespace shaftwright
{

/// Share of one load in the reaction of one support.
struct LoadShare {
    std::string source; ///< part id, "own_weight", "displacement" (prescribed and thermal) or "pair" (axial force within a pair)
    Vector3 force_N;
    double moment_y_Nmm = 0.0, moment_z_Nmm = 0.0;
};

/// One case: for every support the shares of every source in one order, and their sum.
struct ShareTable {
    std::vector<std::string> sources;
    std::vector<std::vector<LoadShare>> supports; ///< [support][source]
    std::vector<LoadShare> sums;                  ///< per support; equals the reaction of the assessment
    bool valid = false;                           ///< false: not solved, or a gap law makes superposition meaningless
};
[[nodiscard]] ShareTable loadShares(const Assessment& assessment, std::size_t case_index);

/// Sums of moments about the second radial support and of forces, per plane, with their numbers, for a determinate shaft with two
/// radial supports; empty otherwise. `plane`: y = forces in y and moments about z.
enum class StaticsPlane { y, z, x };
struct HandStatics {
    StaticsPlane plane = StaticsPlane::y;
    Derivation steps;
};
[[nodiscard]] std::vector<HandStatics> handStatics(const Assessment& assessment, std::size_t case_index);

} // namespace shaftwright
