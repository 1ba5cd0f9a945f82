#pragma once
// The numbers of a part with their places and the limits beyond which no machine is meant. Internal to core/check.

#include "core/model/arrangement.h"

#include <functional>
#include <string>

namespace shaftwright::check
{

inline constexpr double largest_length_mm = 1e5;
inline constexpr double largest_diameter_mm = 1e4;
inline constexpr double largest_magnitude = 1e12;

/// Value, limits and key below `parts.<id>`.
using TakeNumber = std::function<void(double value, double low, double high, const std::string& input)>;

/// Visits every number of the part's body and of its drives. Limits of the trade (teeth, angles ...) belong to core/loads;
/// here only what is not finite or far beyond any machine is caught.
void visitNumbers(const Part& part, const TakeNumber& take);

} // namespace shaftwright::check
