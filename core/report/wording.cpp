#include "core/report/wording.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::report
{
namespace
{

std::string trimmed(std::string text)
{
    if (text.find('.') == std::string::npos)
        return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.'))
        text.pop_back();
    return text == "-0" ? "0" : text;
}

} // namespace

std::string Wording::say(const std::string& key, const NamedValues& values) const
{
    return m_texts.fill(key, values, m_typography);
}

std::string Wording::word(const std::string& value) const
{
    const std::string key = "word." + value;
    return m_texts.has(key) ? std::string(m_texts.get(key)) : value;
}

std::string Wording::source(const std::string& value) const
{
    const std::string key = "cite." + value;
    return m_texts.has(key) ? std::string(m_texts.get(key)) : value;
}

std::string Wording::finish(std::string plain) const
{
    if (m_typography == Typography::plain)
        return plain;
    if (m_texts.language() == Language::german)
        std::replace(plain.begin(), plain.end(), '.', ',');
    return typographic(plain);
}

std::string Wording::length(double value) const
{
    if (!std::isfinite(value))
        return "?";
    if (value != 0.0 && (std::abs(value) < 1e-4 || std::abs(value) >= 1e12))
        return finish(shortestDecimal(value));
    return finish(trimmed(fixedDecimal(value, 6)));
}

std::string Wording::force(double value_N) const
{
    if (!std::isfinite(value_N))
        return "?";
    const double size = std::abs(value_N);
    if (size < 5e-4)
        return finish("0");
    return finish(fixedDecimal(value_N, size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2));
}

std::string Wording::moment_Nm(double value_Nmm) const
{
    const double value = value_Nmm / 1000.0;
    if (!std::isfinite(value))
        return "?";
    const double size = std::abs(value);
    if (size < 5e-5)
        return finish("0");
    return finish(fixedDecimal(value, size >= 999.5 ? 0 : size >= 99.95 ? 1 : size >= 9.995 ? 2 : 3));
}

std::string Wording::life(double value_h) const
{
    return significant(value_h, 3);
}

std::string Wording::fixed(double value, int decimals) const
{
    if (!std::isfinite(value))
        return "?";
    return finish(fixedDecimal(value, decimals));
}

std::string Wording::significant(double value, int digits, bool trim) const
{
    if (!std::isfinite(value))
        return "?";
    if (value != 0.0 && std::abs(value) < 1e-6) {
        const auto short_value = parseDecimal(shaftwright::significant(value, digits));
        return finish(shortestDecimal(short_value.value_or(value)));
    }
    const std::string plain = shaftwright::significant(value, digits);
    return finish(trim ? trimmed(plain) : plain);
}

} // namespace shaftwright::report
