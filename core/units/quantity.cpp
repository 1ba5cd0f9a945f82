#include "core/units/quantity.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace shaftwright
{
namespace
{

constexpr double pi = 3.14159265358979323846;

// Exact by definition: international inch 25.4 mm, pound 0.453 592 37 kg, standard gravity 9.806 65 m/s2, hence the
// pound-force; horsepower of 550 ft lbf/s; metric horsepower of 75 kgf m/s.
constexpr double inch_mm = 25.4;
constexpr double pound_kg = 0.45359237;
constexpr double poundForce_N = pound_kg * 9.80665;
constexpr double horsepower_kW = 550.0 * 12.0 * inch_mm * 1e-3 * poundForce_N * 1e-3;
constexpr double metricHorsepower_kW = 75.0 * 9.80665 * 1e-3;

/// base = number * factor + offset
struct Unit {
    QuantityKind kind;
    std::string_view name; ///< after normalisation: micro sign for both letters, '.' never, '*' for the middle dot
    double factor;
    double offset = 0.0;
};

using Q = QuantityKind;

constexpr std::array<Unit, 77> units = {{
    {Q::number, "%", 0.01},
    {Q::length_mm, "mm", 1.0},
    {Q::length_mm, "cm", 10.0},
    {Q::length_mm, "m", 1000.0},
    {Q::length_mm, "um", 1e-3},
    {Q::length_mm, "in", inch_mm},
    {Q::length_mm, "\"", inch_mm},
    {Q::length_mm, "ft", 12.0 * inch_mm},
    {Q::angle_deg, "deg", 1.0},
    {Q::angle_deg, "\u00b0", 1.0},
    {Q::angle_deg, "'", 1.0 / 60.0},
    {Q::angle_deg, "rad", 180.0 / pi},
    {Q::angle_deg, "mrad", 0.18 / pi},
    {Q::force_N, "N", 1.0},
    {Q::force_N, "kN", 1e3},
    {Q::force_N, "MN", 1e6},
    {Q::force_N, "lbf", poundForce_N},
    {Q::moment_Nmm, "N*mm", 1.0},
    {Q::moment_Nmm, "Nmm", 1.0},
    {Q::moment_Nmm, "N mm", 1.0},
    {Q::moment_Nmm, "N*m", 1e3},
    {Q::moment_Nmm, "Nm", 1e3},
    {Q::moment_Nmm, "N m", 1e3},
    {Q::moment_Nmm, "kN*m", 1e6},
    {Q::moment_Nmm, "kNm", 1e6},
    {Q::moment_Nmm, "kN m", 1e6},
    {Q::moment_Nmm, "lbf*in", poundForce_N* inch_mm},
    {Q::moment_Nmm, "lbf in", poundForce_N* inch_mm},
    {Q::moment_Nmm, "lbf*ft", poundForce_N * 12.0 * inch_mm},
    {Q::moment_Nmm, "lbf ft", poundForce_N * 12.0 * inch_mm},
    {Q::power_kW, "kW", 1.0},
    {Q::power_kW, "W", 1e-3},
    {Q::power_kW, "MW", 1e3},
    {Q::power_kW, "hp", horsepower_kW},
    {Q::power_kW, "PS", metricHorsepower_kW},
    {Q::speed_rpm, "rpm", 1.0},
    {Q::speed_rpm, "1/min", 1.0},
    {Q::speed_rpm, "/min", 1.0},
    {Q::speed_rpm, "min-1", 1.0},
    {Q::speed_rpm, "min^-1", 1.0},
    {Q::speed_rpm, "1/s", 60.0},
    {Q::speed_rpm, "/s", 60.0},
    {Q::speed_rpm, "rad/s", 30.0 / pi},
    {Q::life_h, "h", 1.0},
    {Q::life_h, "min", 1.0 / 60.0},
    {Q::life_h, "d", 24.0},
    {Q::percent, "%", 1.0},
    {Q::mass_kg, "kg", 1.0},
    {Q::mass_kg, "g", 1e-3},
    {Q::mass_kg, "t", 1e3},
    {Q::mass_kg, "lb", pound_kg},
    {Q::temperature_C, "\u00b0C", 1.0},
    {Q::temperature_C, "degC", 1.0},
    {Q::temperature_C, "C", 1.0},
    {Q::temperature_C, "\u00b0F", 5.0 / 9.0, -160.0 / 9.0},
    {Q::temperature_C, "degF", 5.0 / 9.0, -160.0 / 9.0},
    {Q::temperature_C, "F", 5.0 / 9.0, -160.0 / 9.0},
    {Q::temperature_C, "K", 1.0, -273.15},
    {Q::stiffness_N_per_mm, "N/mm", 1.0},
    {Q::stiffness_N_per_mm, "kN/mm", 1e3},
    {Q::stiffness_N_per_mm, "N/um", 1e3},
    {Q::stiffness_N_per_mm, "kN/um", 1e6},
    {Q::stiffness_N_per_mm, "N/m", 1e-3},
    {Q::stiffness_N_per_mm, "kN/m", 1.0},
    {Q::stiffness_N_per_mm, "lbf/in", poundForce_N / inch_mm},
    {Q::line_load_N_per_mm, "N/mm", 1.0},
    {Q::line_load_N_per_mm, "kN/mm", 1e3},
    {Q::line_load_N_per_mm, "N/m", 1e-3},
    {Q::line_load_N_per_mm, "kN/m", 1.0},
    {Q::line_load_N_per_mm, "lbf/in", poundForce_N / inch_mm},
    {Q::tilt_mrad, "mrad", 1.0},
    {Q::tilt_mrad, "rad", 1e3},
    {Q::tilt_mrad, "urad", 1e-3},
    {Q::tilt_mrad, "deg", 1e3 * pi / 180.0},
    {Q::tilt_mrad, "\u00b0", 1e3 * pi / 180.0},
    {Q::tilt_mrad, "'", 1e3 * pi / 10800.0},
    {Q::tilt_mrad, "mm/m", 1.0},
}};

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80u;
}

/// One spelling of what looks alike: minus signs, multiplication signs, micro signs, kinds of spaces.
std::string normalised(std::string_view raw)
{
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 16> alike = {{
        {"\u2212", "-"},      // minus sign
        {"\u2013", "-"},      // en dash
        {"\u00d7", "*"},      // multiplication sign
        {"\u00b7", "*"},      // middle dot
        {"\u22c5", "*"},      // dot operator
        {"\u00b5", "u"},      // micro sign
        {"\u03bc", "u"},      // Greek mu
        {"\u00ba", "\u00b0"}, // ordinal sign typed as degree
        {"\u2032", "'"},      // prime
        {"\u207b", "-"},      // superscript minus
        {"\u00b9", "1"},      // superscript one
        {"\u00a0", " "},      // spaces
        {"\u2009", " "},
        {"\u202f", " "},
        {"\u2007", " "},
        {"\t", " "},
    }};
    std::string text;
    while (!raw.empty()) {
        const auto found =
            std::find_if(alike.begin(), alike.end(), [&](const auto& pair) { return raw.starts_with(pair.first); });
        if (found == alike.end()) {
            text += raw.front();
            raw.remove_prefix(1);
        } else {
            text += found->second;
            raw.remove_prefix(found->first.size());
        }
    }
    return text;
}

/// A number in a unit; no unit: plain.
struct Value {
    double number = 0.0;
    const Unit* unit = nullptr;
    [[nodiscard]] double base() const { return unit == nullptr ? number : number * unit->factor + unit->offset; }
};

class Parser
{
public:
    Parser(std::string text, QuantityKind kind)
        : m_text(std::move(text)), m_kind(kind), m_comma(m_text.find('.') == std::string::npos)
    {
    }

    std::variant<double, QuantityError> run()
    {
        skip();
        if (m_at == m_text.size())
            return QuantityError{"empty", ""};
        const std::optional<Value> value = sum(0);
        skip();
        if (value && !m_error && m_at < m_text.size())
            fail(m_text[m_at] == ')' ? "unbalanced" : "not_a_number", rest());
        if (m_error)
            return *m_error;
        const double base = value->base();
        if (!std::isfinite(base) || std::abs(base) > 1e15)
            return QuantityError{"too_large", m_text};
        return base == 0.0 ? 0.0 : base;
    }

private:
    static constexpr int greatestDepth = 50;

    std::optional<Value> fail(const char* code, std::string detail)
    {
        if (!m_error)
            m_error = QuantityError{code, std::move(detail)};
        return std::nullopt;
    }

    void skip()
    {
        while (m_at < m_text.size() && m_text[m_at] == ' ')
            ++m_at;
    }

    [[nodiscard]] std::string rest() const
    {
        std::string text = m_text.substr(m_at);
        while (!text.empty() && text.back() == ' ')
            text.pop_back();
        return text;
    }

    [[nodiscard]] bool isBase(const Unit& unit) const { return unit.factor == 1.0 && unit.offset == 0.0; }

    std::optional<Value> sum(int depth)
    {
        std::optional<Value> left = product(depth);
        for (;;) {
            skip();
            if (!left || m_at == m_text.size() || (m_text[m_at] != '+' && m_text[m_at] != '-'))
                return left;
            const double sign = m_text[m_at++] == '+' ? 1.0 : -1.0;
            const std::optional<Value> right = product(depth);
            if (!right)
                return right;
            // "1 + 2 kN" can be read in two ways, and so can a sum of temperatures on other scales.
            const Unit* one = left->unit != nullptr ? left->unit : right->unit;
            const bool mixed = (left->unit == nullptr) != (right->unit == nullptr);
            if (one != nullptr && mixed && !isBase(*one))
                return fail("wrong_unit", std::string(one->name));
            for (const Unit* unit : {left->unit, right->unit}) {
                if (unit != nullptr && unit->offset != 0.0)
                    return fail("wrong_unit", std::string(unit->name));
            }
            if (left->unit == right->unit)
                left = Value{left->number + sign * right->number, left->unit};
            else
                left = Value{left->base() + sign * right->base(), baseUnit()};
        }
    }

    [[nodiscard]] const Unit* baseUnit() const
    {
        const auto found = std::find_if(units.begin(), units.end(), [&](const Unit& unit) {
            return unit.kind == m_kind && unit.factor == 1.0 && unit.offset == 0.0 && !unit.name.empty();
        });
        return found == units.end() ? nullptr : &*found;
    }

    std::optional<Value> product(int depth)
    {
        std::optional<Value> left = factor(depth);
        for (;;) {
            skip();
            if (!left || m_at == m_text.size() || (m_text[m_at] != '*' && m_text[m_at] != '/' && m_text[m_at] != ':'))
                return left;
            const bool divide = m_text[m_at++] != '*';
            const std::optional<Value> right = factor(depth);
            if (!right)
                return right;
            if (divide) {
                const bool ratio = left->unit != nullptr && right->unit != nullptr;
                const double below = ratio ? right->base() : right->number;
                if (below == 0.0)
                    return fail("divide_by_zero", m_text);
                if (ratio && m_kind != QuantityKind::number)
                    left = Value{left->base() / below, nullptr};
                else
                    left = Value{(ratio ? left->base() : left->number) / below, ratio ? nullptr : either(*left, *right)};
            } else {
                if (left->unit != nullptr && right->unit != nullptr && m_kind != QuantityKind::number)
                    return fail("wrong_unit", std::string(right->unit->name));
                if (left->unit != nullptr && right->unit != nullptr)
                    left = Value{left->base() * right->base(), nullptr};
                else
                    left = Value{left->number * right->number, either(*left, *right)};
            }
        }
    }

    static const Unit* either(const Value& left, const Value& right) { return left.unit != nullptr ? left.unit : right.unit; }

    std::optional<Value> factor(int depth)
    {
        if (depth > greatestDepth)
            return fail("too_large", m_text);
        skip();
        if (m_at == m_text.size())
            return fail("not_a_number", "");
        const char c = m_text[m_at];
        if (c == '-' || c == '+') {
            ++m_at;
            std::optional<Value> value = factor(depth + 1);
            if (value && c == '-')
                value->number = -value->number;
            return value;
        }
        std::optional<Value> value;
        if (c == '(') {
            ++m_at;
            value = sum(depth + 1);
            if (!value)
                return value;
            skip();
            if (m_at == m_text.size() || m_text[m_at] != ')')
                return fail("unbalanced", m_text);
            ++m_at;
        } else {
            value = number();
        }
        return value ? withUnit(*value) : value;
    }

    std::optional<Value> number()
    {
        std::string digits(1, '0'); // ".5" is a number too; a leading zero does no harm
        const std::size_t start = m_at;
        bool any = false;
        const auto takeDigits = [&] {
            while (m_at < m_text.size() && isDigit(m_text[m_at])) {
                digits += m_text[m_at++];
                any = true;
            }
        };
        takeDigits();
        // Groups of three after a space: 13 700.
        while (any && m_at + 3 < m_text.size() && m_text[m_at] == ' ' && isDigit(m_text[m_at + 1]) && isDigit(m_text[m_at + 2]) &&
               isDigit(m_text[m_at + 3]) && (m_at + 4 >= m_text.size() || !isDigit(m_text[m_at + 4]))) {
            ++m_at;
            takeDigits();
        }
        if (m_at < m_text.size() && m_text[m_at] == (m_comma ? ',' : '.')) {
            ++m_at;
            digits += '.';
            takeDigits();
        }
        if (any && m_at < m_text.size() && (m_text[m_at] == 'e' || m_text[m_at] == 'E')) {
            std::size_t next = m_at + 1;
            if (next < m_text.size() && (m_text[next] == '+' || m_text[next] == '-'))
                ++next;
            if (next < m_text.size() && isDigit(m_text[next])) {
                digits += m_text.substr(m_at, next - m_at);
                m_at = next;
                takeDigits();
            }
        }
        if (!any) {
            m_at = start;
            return fail("not_a_number", rest());
        }
        if (digits.back() == '.')
            digits.pop_back();
        const std::optional<double> value = parseDecimal(digits);
        if (!value)
            return fail("too_large", digits);
        return Value{*value, nullptr};
    }

    std::optional<Value> withUnit(Value value)
    {
        const std::size_t before = m_at;
        skip();
        const Unit* mine = nullptr;
        const Unit* other = nullptr;
        for (const Unit& unit : units) {
            if (unit.name.empty() || m_text.compare(m_at, unit.name.size(), unit.name) != 0)
                continue;
            const std::size_t end = m_at + unit.name.size();
            if (isLetter(unit.name.back()) && end < m_text.size() && isLetter(m_text[end]))
                continue;
            const Unit*& best = unit.kind == m_kind ? mine : other;
            if (best == nullptr || unit.name.size() > best->name.size())
                best = &unit;
        }
        if (mine != nullptr && (other == nullptr || mine->name.size() >= other->name.size() || !continues(*other))) {
            if (value.unit != nullptr)
                return fail("wrong_unit", std::string(mine->name));
            m_at += mine->name.size();
            value.unit = mine;
            return value;
        }
        if (other != nullptr)
            return fail("wrong_unit", std::string(other->name));
        if (m_at < m_text.size() && isLetter(m_text[m_at])) {
            std::size_t end = m_at;
            while (end < m_text.size() && (isLetter(m_text[end]) || isDigit(m_text[end])))
                ++end;
            return fail("unknown_unit", m_text.substr(m_at, end - m_at));
        }
        m_at = before;
        return value;
    }

    /// True when the longer name is meant as one unit (N/mm typed into a force), not as an operator behind a shorter one.
    [[nodiscard]] static bool continues(const Unit& unit)
    {
        return unit.name.find('/') == std::string_view::npos || isLetter(unit.name.back());
    }

    std::string m_text;
    QuantityKind m_kind;
    bool m_comma;
    std::size_t m_at = 0;
    std::optional<QuantityError> m_error;
};

} // namespace

std::variant<double, QuantityError> parseQuantity(std::string_view text, QuantityKind kind)
{
    if (text.size() > 1000)
        return QuantityError{"too_large", ""};
    return Parser(normalised(text), kind).run();
}

std::string_view unitName(QuantityKind kind)
{
    switch (kind) {
    case QuantityKind::number:
        return "";
    case QuantityKind::length_mm:
        return "mm";
    case QuantityKind::angle_deg:
        return "\u00b0";
    case QuantityKind::force_N:
        return "N";
    case QuantityKind::moment_Nmm:
        return "N\u00b7mm";
    case QuantityKind::power_kW:
        return "kW";
    case QuantityKind::speed_rpm:
        return "1/min";
    case QuantityKind::life_h:
        return "h";
    case QuantityKind::percent:
        return "%";
    case QuantityKind::mass_kg:
        return "kg";
    case QuantityKind::temperature_C:
        return "\u00b0C";
    case QuantityKind::stiffness_N_per_mm:
    case QuantityKind::line_load_N_per_mm:
        return "N/mm";
    case QuantityKind::tilt_mrad:
        return "mrad";
    }
    return "";
}

} // namespace shaftwright
