#include "core/report/derivation_text.h"

#include "core/report/report.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace shaftwright::report
{
namespace
{

enum class Kind { number, value, function, plus, minus, times, divide, power, open, close, comma, bar, word };

struct Token {
    Kind kind = Kind::word;
    std::string text;    ///< as in the formula
    double number = 0.0; ///< number, value
    bool space_before = false;
};

bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
}

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

constexpr std::array<std::string_view, 13> functionNames = {"cos",  "sin", "tan", "cot", "acos", "asin", "atan",
                                                            "sqrt", "ln",  "exp", "max", "min",  "lg"};

bool isAngleFunction(std::string_view name)
{
    return name == "cos" || name == "sin" || name == "tan" || name == "cot";
}

/// Pieces of a formula; empty when it holds a word that has no number.
std::vector<Token> tokensOf(const std::string& formula, const NamedValues& inputs)
{
    std::vector<std::pair<std::string, double>> names;
    for (const auto& [name, value] : inputs.entries) {
        if (const double* number = std::get_if<double>(&value); number != nullptr && !name.empty())
            names.emplace_back(name, *number);
    }
    std::stable_sort(names.begin(), names.end(), [](const auto& a, const auto& b) { return a.first.size() > b.first.size(); });

    std::vector<Token> tokens;
    std::size_t at = 0;
    bool space = false;
    while (at < formula.size()) {
        const char c = formula[at];
        if (c == ' ') {
            space = true;
            ++at;
            continue;
        }
        Token token;
        token.space_before = space;
        space = false;
        const bool joined = at > 0 && (isLetter(formula[at - 1]) || isDigit(formula[at - 1]));
        bool found = false;
        for (const auto& [name, number] : names) {
            if (joined || formula.compare(at, name.size(), name) != 0)
                continue;
            const char next = at + name.size() < formula.size() ? formula[at + name.size()] : ' ';
            if ((isLetter(next) || isDigit(next)) && (isLetter(name.back()) || isDigit(name.back())))
                continue;
            token.kind = Kind::value;
            token.text = name;
            token.number = number;
            at += name.size();
            found = true;
            break;
        }
        if (!found && isDigit(c)) {
            std::size_t end = at;
            while (end < formula.size() && (isDigit(formula[end]) || formula[end] == '.'))
                ++end;
            if (end + 1 < formula.size() && formula[end] == 'e' && isDigit(formula[end + 1])) {
                ++end;
                while (end < formula.size() && isDigit(formula[end]))
                    ++end;
            }
            token.kind = Kind::number;
            token.text = formula.substr(at, end - at);
            const auto number = parseDecimal(token.text);
            if (!number)
                return {};
            token.number = *number;
            at = end;
            if (formula.compare(at, 2, "\u00b0") == 0)
                at += 2;
            found = true;
        }
        if (!found && isLetter(c)) {
            std::size_t end = at;
            while (end < formula.size() && (isLetter(formula[end]) || isDigit(formula[end])))
                ++end;
            token.text = formula.substr(at, end - at);
            at = end;
            if (token.text == "pi") {
                token.kind = Kind::number;
                token.number = std::numbers::pi;
            } else if (std::find(functionNames.begin(), functionNames.end(), token.text) != functionNames.end()) {
                token.kind = Kind::function;
            } else {
                return {};
            }
            found = true;
        }
        if (!found) {
            static constexpr std::string_view signs = "+-*/^()[]{},|";
            static constexpr std::array<Kind, 13> kinds = {Kind::plus,  Kind::minus, Kind::times, Kind::divide, Kind::power,
                                                           Kind::open,  Kind::close, Kind::open,  Kind::close,  Kind::open,
                                                           Kind::close, Kind::comma, Kind::bar};
            const std::size_t index = signs.find(c);
            if (index == std::string_view::npos || formula.compare(at, 2, "+-") == 0)
                return {};
            token.kind = kinds[index];
            token.text = std::string(1, c);
            ++at;
        }
        tokens.push_back(std::move(token));
    }
    return tokens;
}

/// Value of a formula as somebody with a pocket calculator works it out: products before sums, left to right, angles in degrees.
class Calculator
{
public:
    explicit Calculator(const std::vector<Token>& tokens) : m_tokens(tokens) {}

    std::optional<double> run()
    {
        const double value = sum();
        if (!m_good || m_at != m_tokens.size() || !std::isfinite(value))
            return std::nullopt;
        return value;
    }

private:
    const std::vector<Token>& m_tokens;
    std::size_t m_at = 0;
    bool m_good = true;
    int m_bars = 0;

    [[nodiscard]] const Token* peek() const { return m_at < m_tokens.size() ? &m_tokens[m_at] : nullptr; }
    bool take(Kind kind)
    {
        if (const Token* token = peek(); token != nullptr && token->kind == kind) {
            ++m_at;
            return true;
        }
        return false;
    }
    double fail()
    {
        m_good = false;
        return 0.0;
    }

    double sum()
    {
        double value = product();
        while (m_good) {
            if (take(Kind::plus))
                value += product();
            else if (take(Kind::minus))
                value -= product();
            else
                break;
        }
        return value;
    }

    /// True when another factor follows without a sign.
    [[nodiscard]] bool factorFollows() const
    {
        const Token* token = peek();
        if (token == nullptr)
            return false;
        switch (token->kind) {
        case Kind::number:
        case Kind::value:
        case Kind::function:
        case Kind::open:
            return true;
        case Kind::bar:
            return m_bars == 0;
        default:
            return false;
        }
    }

    double product()
    {
        if (take(Kind::minus))
            return -product();
        double value = power();
        while (m_good) {
            if (take(Kind::divide))
                value /= power();
            else if (take(Kind::times) || factorFollows())
                value *= power();
            else
                break;
        }
        return value;
    }

    double power()
    {
        const double base = primary();
        if (!take(Kind::power))
            return base;
        const double sign = take(Kind::minus) ? -1.0 : 1.0;
        return std::pow(base, sign * primary());
    }

    double primary()
    {
        const Token* token = peek();
        if (token == nullptr)
            return fail();
        ++m_at;
        switch (token->kind) {
        case Kind::number:
        case Kind::value:
            return token->number;
        case Kind::open: {
            const double value = sum();
            return take(Kind::close) ? value : fail();
        }
        case Kind::bar: {
            ++m_bars;
            const double value = sum();
            --m_bars;
            return take(Kind::bar) ? std::abs(value) : fail();
        }
        case Kind::function:
            return function(token->text);
        default:
            return fail();
        }
    }

    double function(const std::string& name)
    {
        if (name == "max" || name == "min") {
            if (!take(Kind::open))
                return fail();
            double value = sum();
            while (take(Kind::comma)) {
                const double next = sum();
                value = name == "max" ? std::max(value, next) : std::min(value, next);
            }
            return take(Kind::close) ? value : fail();
        }
        const double x = power();
        constexpr double degree = std::numbers::pi / 180.0;
        if (name == "cos")
            return std::cos(x * degree);
        if (name == "sin")
            return std::sin(x * degree);
        if (name == "tan")
            return std::tan(x * degree);
        if (name == "cot")
            return 1.0 / std::tan(x * degree);
        if (name == "acos")
            return std::acos(x) / degree;
        if (name == "asin")
            return std::asin(x) / degree;
        if (name == "atan")
            return std::atan(x) / degree;
        if (name == "sqrt")
            return std::sqrt(x);
        if (name == "ln")
            return std::log(x);
        if (name == "lg")
            return std::log10(x);
        return std::exp(x);
    }
};

std::string withoutTrailingZeros(std::string text)
{
    if (text.find('.') == std::string::npos)
        return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.'))
        text.pop_back();
    return text;
}

/// At most `digits` significant figures, plain.
std::string inputDigits(double value, int digits)
{
    const double size = std::abs(value);
    if (size != 0.0 && (size < 1e-6 || size >= 1e12))
        return shortestDecimal(*parseDecimal(withoutTrailingZeros(significant(value, digits))));
    return withoutTrailingZeros(significant(value, digits));
}

std::string resultDigits(double value)
{
    const double size = std::abs(value);
    if (size >= 9999.5 && size < 1e7)
        return fixedDecimal(value, 0);
    return withoutTrailingZeros(significant(value, size >= 1e7 ? 6 : 5));
}

std::string shown(const std::string& plain, const Texts& texts, Typography typography)
{
    if (typography == Typography::plain)
        return plain;
    std::string text = plain;
    if (texts.language() == Language::german)
        std::replace(text.begin(), text.end(), '.', ',');
    return typographic(text);
}

bool endsOperand(Kind kind)
{
    return kind == Kind::number || kind == Kind::value || kind == Kind::close;
}

/// The formula with its numbers in it.
std::string substituted(const std::vector<Token>& tokens, int digits, const Texts& texts, Typography typography)
{
    std::string out;
    bool bar_open = false;
    int angle_depth = -1; ///< parentheses inside an angle function count from 0
    bool angle_next = false;
    Kind before = Kind::plus;
    bool first = true;
    for (const Token& token : tokens) {
        const bool closes_bar = token.kind == Kind::bar && bar_open;
        const bool begins = token.kind == Kind::number || token.kind == Kind::value || token.kind == Kind::function ||
                            token.kind == Kind::open || (token.kind == Kind::bar && !bar_open);
        const bool after_operand = endsOperand(before) || (before == Kind::bar && !bar_open && !first);
        if (begins && after_operand)
            out += " \u00b7 ";
        else if (token.space_before && !first)
            out += ' ';
        std::string text;
        switch (token.kind) {
        case Kind::number:
            text = token.text == "pi" ? (typography == Typography::fine ? "\u03c0" : "pi") : token.text;
            if (token.text != "pi" && token.text.find('e') == std::string::npos)
                text = shown(token.text, texts, typography);
            break;
        case Kind::value:
            text = shown(inputDigits(token.number, digits), texts, typography);
            if (angle_next || angle_depth >= 0)
                text += "\u00b0";
            if (token.number < 0.0 && !first && before != Kind::open && before != Kind::comma)
                text = "(" + text + ")";
            break;
        case Kind::minus:
            text = typography == Typography::fine ? "\u2212" : "-";
            break;
        default:
            text = token.text;
        }
        out += text;
        if (token.kind == Kind::open && (angle_next || angle_depth >= 0))
            ++angle_depth;
        if (token.kind == Kind::close && angle_depth >= 0)
            --angle_depth;
        angle_next = token.kind == Kind::function && isAngleFunction(token.text);
        if (token.kind == Kind::bar)
            bar_open = !closes_bar;
        before = token.kind;
        first = false;
    }
    return out;
}

/// Greek letters and signs for reading.
std::string readable(const std::string& formula, Typography typography)
{
    if (typography == Typography::plain)
        return formula;
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 17> letters = {{
        {"alpha", "\u03b1"},
        {"beta", "\u03b2"},
        {"gamma", "\u03b3"},
        {"delta", "\u03b4"},
        {"epsilon", "\u03b5"},
        {"theta", "\u03b8"},
        {"kappa", "\u03ba"},
        {"mu", "\u03bc"},
        {"pi", "\u03c0"},
        {"rho", "\u03c1"},
        {"sigma", "\u03c3"},
        {"tau", "\u03c4"},
        {"phi", "\u03c6"},
        {"psi", "\u03c8"},
        {"omega", "\u03c9"},
        {"lambda", "\u03bb"},
        {"eta", "\u03b7"},
    }};
    std::string out;
    std::size_t at = 0;
    while (at < formula.size()) {
        if (!isLetter(formula[at])) {
            out += formula[at] == '-' ? std::string("\u2212") : std::string(1, formula[at]);
            ++at;
            continue;
        }
        std::size_t end = at;
        while (end < formula.size() && isLetter(formula[end]) && formula[end] != '_')
            ++end;
        const std::string_view word = std::string_view(formula).substr(at, end - at);
        const auto it = std::find_if(letters.begin(), letters.end(), [&](const auto& letter) { return letter.first == word; });
        out += it != letters.end() ? it->second : word;
        at = end;
        while (at < formula.size() && (formula[at] == '_' || isDigit(formula[at])))
            out += formula[at++];
    }
    return out;
}

} // namespace

std::optional<double> formulaValue(const DerivationStep& step)
{
    const std::vector<Token> tokens = tokensOf(step.formula, step.inputs);
    if (tokens.empty())
        return std::nullopt;
    return Calculator(tokens).run();
}

std::string unitText(const std::string& unit, const Texts& texts)
{
    const std::string key = "unit." + unit;
    return texts.has(key) ? std::string(texts.get(key)) : unit;
}

std::string stepLine(const DerivationStep& step, const Texts& texts, Typography typography)
{
    const std::string result = resultDigits(step.result);
    std::string end = shown(result, texts, typography);
    if (!step.unit.empty())
        end += " " + unitText(step.unit, texts);
    std::string out = readable(step.symbol, typography);

    const std::vector<Token> tokens = tokensOf(step.formula, step.inputs);
    const bool trivial = step.formula.empty() || step.formula == step.symbol;
    if (!trivial) {
        const std::string key = "formula." + step.formula;
        out += " = " + (texts.has(key) ? std::string(texts.get(key)) : readable(step.formula, typography));
    }
    if (!tokens.empty() && Calculator(tokens).run()) {
        // As many digits as somebody needs to arrive at the printed result.
        int digits = 5;
        bool arrived = false;
        for (; digits <= 15 && !arrived; ++digits) {
            std::vector<Token> rounded = tokens;
            for (Token& token : rounded) {
                if (token.kind == Kind::value)
                    token.number = parseDecimal(inputDigits(token.number, digits)).value_or(token.number);
            }
            const auto value = Calculator(rounded).run();
            arrived = value && resultDigits(*value) == result;
            if (arrived)
                break;
        }
        const std::string middle = substituted(tokens, arrived ? digits : 7, texts, typography);
        const bool only_a_copy = tokens.size() == 1 && shown(inputDigits(tokens[0].number, arrived ? digits : 7), texts,
                                                             typography) == shown(result, texts, typography);
        if (!only_a_copy)
            out += " = " + middle;
        return out + " = " + end;
    }
    out += " = " + end;
    std::string where;
    for (const auto& [name, value] : step.inputs.entries) {
        where += where.empty() ? "" : ", ";
        where += readable(name, typography) + " = ";
        if (const double* number = std::get_if<double>(&value)) {
            where += shown(inputDigits(*number, 7), texts, typography);
        } else {
            const std::string& word = std::get<std::string>(value);
            where += texts.has("word." + word) ? std::string(texts.get("word." + word)) : word;
        }
    }
    if (!where.empty())
        out += " (" + where + ")";
    return out;
}

} // namespace shaftwright::report

namespace shaftwright
{

std::string derivationLine(const DerivationStep& step, const Texts& texts, Typography typography)
{
    return report::stepLine(step, texts, typography);
}

std::string derivationName(const DerivationStep& step, const Texts& texts)
{
    const std::string key = "derivation." + step.code;
    return texts.has(key) ? std::string(texts.get(key)) : step.code;
}

} // namespace shaftwright
