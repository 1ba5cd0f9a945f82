#include "core/units/number_text.h"

#include <array>
#include <charconv>
#include <cmath>

namespace shaftwright {

std::string shortestDecimal(double value)
{
    std::array<char, 64> buffer{};
    const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
    return {buffer.data(), result.ptr};
}

std::optional<double> parseDecimal(std::string_view text)
{
    if (!text.empty() && text.front() == '+') {
        text.remove_prefix(1);
        if (text.starts_with('-'))
            return std::nullopt;
    }
    double value = 0.0;
    const auto result = std::from_chars(text.data(), text.data() + text.size(), value);
    if (result.ec != std::errc{} || result.ptr != text.data() + text.size() || text.empty() || !std::isfinite(value))
        return std::nullopt;
    return value;
}

std::string fixedDecimal(double value, int decimals)
{
    std::array<char, 400> buffer{};
    const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
    std::string text(buffer.data(), result.ptr);
    if (text.starts_with('-') && text.find_first_not_of("-0.") == std::string::npos)
        text.erase(0, 1);
    return text;
}

std::string significant(double value, int digits)
{
    if (value == 0.0 || !std::isfinite(value))
        return "0";
    std::array<char, 64> buffer{};
    const auto result =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::scientific, digits - 1);
    double rounded = 0.0;
    std::from_chars(buffer.data(), result.ptr, rounded);
    const int exponent = static_cast<int>(std::floor(std::log10(std::abs(rounded)) + 1e-12));
    // Beyond any quantity of a machine: no rows of zeros.
    if (exponent > 14 || exponent < -14)
        return {buffer.data(), result.ptr};
    const int decimals = digits - 1 - exponent;
    return fixedDecimal(rounded, decimals > 0 ? decimals : 0);
}

std::string typographic(std::string_view plain)
{
    std::string out;
    std::size_t start = 0;
    if (!plain.empty() && plain.front() == '-') {
        out += "\u2212";
        start = 1;
    }
    std::size_t end = start;
    while (end < plain.size() && plain[end] >= '0' && plain[end] <= '9')
        ++end;
    const std::size_t count = end - start;
    for (std::size_t i = start; i < end; ++i) {
        if (count >= 5 && i > start && (end - i) % 3 == 0)
            out += "\u2009";
        out += plain[i];
    }
    out += plain.substr(end);
    return out;
}

} // namespace shaftwright
