#pragma once
#include "core/base/finding.h"

#include <string>
#include <vector>

namespace shaftwright {

/// One step of a calculation as it would stand in a hand calculation.
/// The calculator fills it beside the number; nothing is computed again for display.
struct DerivationStep {
    std::string code;      ///< text key "derivation.<code>": the name of the quantity in words
    std::string symbol;    ///< as printed, e.g. "P", "L10h"
    std::string formula;   ///< with symbols, e.g. "X Fr + Y Fa"
    NamedValues inputs;    ///< symbol -> value, the numbers that stand in the formula
    double result = 0.0;
    std::string unit;      ///< as printed, e.g. "N", "h", "" for dimensionless
    std::string source;    ///< standard or book with clause; "common practice"; "from memory" stays in the text
    friend bool operator==(const DerivationStep&, const DerivationStep&) = default;
};

using Derivation = std::vector<DerivationStep>;

} // namespace shaftwright
