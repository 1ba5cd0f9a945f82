#pragma once
// What a person types into a field: numbers with units and simple arithmetic.

#include <string>
#include <string_view>
#include <variant>

namespace shaftwright {

/// Kind of quantity; fixes the base unit in which core computes.
enum class QuantityKind { number, length_mm, angle_deg, force_N, moment_Nmm, power_kW, speed_rpm, life_h, percent, mass_kg,
                          temperature_C, stiffness_N_per_mm, line_load_N_per_mm, tilt_mrad };

struct QuantityError {
    std::string code;      ///< text key "quantity.<code>": empty, not_a_number, unknown_unit, wrong_unit, unbalanced, divide_by_zero, too_large
    std::string detail;    ///< the piece that was not understood
};

/// "2.5 in", "12+3", "1.2 kN", "3*(4-1) mm", "1,5" (decimal comma when no point stands in the text) to the base unit.
[[nodiscard]] std::variant<double, QuantityError> parseQuantity(std::string_view text, QuantityKind kind);

/// Name of the base unit as shown: "mm", "N", "N·mm" ...
[[nodiscard]] std::string_view unitName(QuantityKind kind);

} // namespace shaftwright
