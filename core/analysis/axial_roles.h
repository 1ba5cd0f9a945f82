#pragma once
// Who holds the shaft along its axis: by role, side and case. Internal to core/analysis.

#include "core/base/finding.h"
#include "core/model/arrangement.h"
#include "core/model/defaults.h"

#include <optional>
#include <vector>

namespace shaftwright::analysis
{

struct AxialRole {
    bool plus = false, minus = false; ///< holds the shaft against moving to +x, -x
    std::optional<Carries> carries;   ///< settled side of one-way roles
};

struct AxialRoles {
    std::vector<AxialRole> supports;
    int pair_plus = -1, pair_minus = -1; ///< indices of a proper adjusted pair, else -1
    std::vector<Assumption> assumptions;
    Findings findings;

    /// Support that holds x in a case with external axial sum K: the first that can hold that sense; K = 0: the first that could.
    [[nodiscard]] int holder(double K_N) const;
};

/// Roles by the document; the bearing chosen at a locating support does not change who is meant to hold the shaft.
[[nodiscard]] AxialRoles settleAxialRoles(const Arrangement& arrangement);

} // namespace shaftwright::analysis
