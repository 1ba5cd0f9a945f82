#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace shaftwright {

/// Shortest decimal text that reads back as the same double; point, plain minus, no locale. Finite values only.
[[nodiscard]] std::string shortestDecimal(double value);

/// The whole text as a number (point, optional exponent); none for anything else, for nan and for inf.
[[nodiscard]] std::optional<double> parseDecimal(std::string_view text);

/// Fixed number of decimals, plain digits and minus ("-0.00" becomes "0.00").
[[nodiscard]] std::string fixedDecimal(double value, int decimals);

/// `digits` significant figures without exponent ("13700", "0.00123"), plain digits.
[[nodiscard]] std::string significant(double value, int digits);

/// Typography for reading: thin spaces in groups of three from five digits on, true minus sign. Input: plain digits.
[[nodiscard]] std::string typographic(std::string_view plain);

} // namespace shaftwright
