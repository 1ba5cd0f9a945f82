#pragma once
#include "core/model/arrangement.h"
#include "core/report/wording.h"

#include <string>

namespace shaftwright::report
{

/// The inputs of a part as somebody would state them: "z 23, m_n 3 mm, helix 15° right, face width 40 mm, mesh at 90°".
[[nodiscard]] std::string partWords(const Part& part, const Wording& words);
/// Space, fits, holds, stiffness, requirements of a support's own; empty when nothing of it is stated.
[[nodiscard]] std::string supportWords(const Support& support, const Wording& words);
[[nodiscard]] std::string featureWords(const Feature& feature, const Wording& words);

} // namespace shaftwright::report
