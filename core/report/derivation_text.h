#pragma once
#include "core/base/derivation.h"
#include "core/report/texts.h"

#include <optional>
#include <string>

namespace shaftwright::report
{

/// What a pocket calculator gives for the formula of a step with its inputs: products before sums from left to right, a gap is a
/// product, angles in degrees. None for a formula in words, or one that names something which is not among the inputs.
[[nodiscard]] std::optional<double> formulaValue(const DerivationStep& step);

/// "P = X Fr + Y Fa = 0.56 · 1200 + 1.8 · 400 = 1392 N". The inputs carry as many digits as it takes to arrive at the printed
/// result.
[[nodiscard]] std::string stepLine(const DerivationStep& step, const Texts& texts, Typography typography);

/// Unit as read: "unit.<unit>" of the texts when there is such a key, else the unit itself.
[[nodiscard]] std::string unitText(const std::string& unit, const Texts& texts);

} // namespace shaftwright::report
