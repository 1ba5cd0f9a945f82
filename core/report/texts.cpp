#include "core/report/texts.h"

#include "core/base/embedded.h"
#include "core/units/number_text.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>

namespace shaftwright
{

Texts::Texts(Language language) : m_language(language)
{
    const std::string prefix = language == Language::german ? "de" : "en";
    for (const std::string_view path : embeddedResourcePaths()) {
        if (!path.starts_with("text/"))
            continue;
        const std::string_view name = path.substr(path.rfind('/') + 1);
        if (!name.starts_with(prefix + "."))
            continue;
        const auto object = nlohmann::json::parse(embeddedResource(path));
        for (const auto& [key, value] : object.items())
            m_entries.emplace_back(key, value.get<std::string>());
    }
    std::sort(m_entries.begin(), m_entries.end());
}

const Texts& Texts::of(Language language)
{
    static const Texts english(Language::english);
    if (language == Language::english)
        return english;
    static const Texts german(Language::german);
    return german;
}

namespace
{

auto locate(const std::vector<std::pair<std::string, std::string>>& entries, std::string_view key)
{
    const auto it = std::lower_bound(entries.begin(), entries.end(), key,
                                     [](const auto& entry, std::string_view k) { return entry.first < k; });
    return it != entries.end() && it->first == key ? it : entries.end();
}

std::string finish(std::string plain, const Texts& texts, Typography typography)
{
    if (typography == Typography::plain)
        return plain;
    if (texts.language() == Language::german)
        std::replace(plain.begin(), plain.end(), '.', ',');
    return typographic(plain);
}

std::string formatted(double value, std::string_view format, const Texts& texts, Typography typography)
{
    if (!std::isfinite(value))
        return "?";
    if (format.empty())
        return finish(shortestDecimal(value), texts, typography);
    if (format.front() == 's') {
        const int digits = format.size() > 1 ? format[1] - '0' : 3;
        return finish(significant(value, digits), texts, typography);
    }
    if (std::abs(value) >= 1e15) // no machine has it: a row of zeros would only hide the slip
        return finish(significant(value, 3), texts, typography);
    const bool percent = format.ends_with('%');
    const std::size_t point = format.find('.');
    int decimals = 0;
    if (point != std::string_view::npos) {
        for (std::size_t i = point + 1; i < format.size() && format[i] == '0'; ++i)
            ++decimals;
    }
    std::string text = finish(fixedDecimal(percent ? 100.0 * value : value, decimals), texts, typography);
    if (percent)
        text += typography == Typography::fine ? "\u202f%" : " %";
    return text;
}

} // namespace

bool Texts::has(std::string_view key) const
{
    return locate(m_entries, key) != m_entries.end();
}

std::string_view Texts::get(std::string_view key) const
{
    const auto it = locate(m_entries, key);
    if (it != m_entries.end())
        return it->second;
    return {};
}

std::vector<std::string> Texts::keys() const
{
    std::vector<std::string> keys;
    for (const auto& [key, text] : m_entries)
        keys.push_back(key);
    return keys;
}

namespace
{

/// Names a value that is there: a word that is not empty, or a number ("name>0": one above zero).
bool holds(std::string_view condition, const NamedValues& values)
{
    const bool positive = condition.ends_with(">0");
    if (positive)
        condition.remove_suffix(2);
    const TextValue* value = values.find(std::string(condition));
    if (value == nullptr)
        return false;
    if (const double* number = std::get_if<double>(value))
        return !positive || *number > 0.0;
    return !std::get<std::string>(*value).empty();
}

bool isNamespace(std::string_view format)
{
    return !format.empty() && ((format[0] >= 'a' && format[0] <= 'z')) &&
           !(format.size() == 2 && format[0] == 's' && format[1] <= '9');
}

} // namespace

std::string Texts::fill(std::string_view key, const NamedValues& values, Typography typography) const
{
    if (!has(key))
        return "<" + std::string(key) + ">";
    return filled(get(key), values, typography, 0);
}

std::string Texts::filled(std::string_view text, const NamedValues& values, Typography typography, int depth) const
{
    std::string out;
    out.reserve(text.size() + 32);
    std::size_t at = 0;
    std::vector<bool> passages; // open ones; false: its value is missing
    const auto isShown = [&] { return std::find(passages.begin(), passages.end(), false) == passages.end(); };
    while (at < text.size()) {
        const std::size_t open = text.find('{', at);
        const std::size_t close = open == std::string_view::npos ? open : text.find('}', open);
        if (isShown())
            out += text.substr(at, close == std::string_view::npos ? close : open - at);
        if (close == std::string_view::npos)
            break;
        const std::string_view inside = text.substr(open + 1, close - open - 1);
        at = close + 1;
        if (inside == "/") {
            if (!passages.empty())
                passages.pop_back();
            continue;
        }
        if (inside.starts_with('?') || inside.starts_with('!')) {
            passages.push_back(holds(inside.substr(1), values) == inside.starts_with('?'));
            continue;
        }
        if (!isShown())
            continue;
        const std::size_t colon = inside.find(':');
        const std::string name(inside.substr(0, colon));
        const std::string_view format = colon == std::string_view::npos ? std::string_view{} : inside.substr(colon + 1);
        const TextValue* value = values.find(name);
        if (value == nullptr) {
            out += "<" + name + ">";
        } else if (const double* number = std::get_if<double>(value)) {
            out += formatted(*number, format, *this, typography);
        } else {
            const std::string& word = std::get<std::string>(*value);
            if (isNamespace(format)) {
                // A sentence of its own, filled with the same values.
                const std::string inner = std::string(format) + "." + word;
                if (has(inner) && depth < 3)
                    out += filled(get(inner), values, typography, depth + 1);
                else
                    out += word;
                continue;
            }
            const std::string word_key = "word." + word;
            out += has(word_key) ? std::string(get(word_key)) : word;
        }
    }
    return out;
}

std::string numberText(double value, int decimals, const Texts& texts, Typography typography)
{
    if (!std::isfinite(value))
        return "?";
    return finish(fixedDecimal(value, decimals), texts, typography);
}

namespace
{

std::string findingSentence(const Finding& finding, const Texts& texts, Typography typography, const char* part)
{
    NamedValues values = finding.values;
    if (values.find("path") == nullptr)
        values.set("path", finding.path);
    if (!finding.variant.empty()) {
        const std::string key = "finding." + finding.code + "." + finding.variant + "." + part;
        if (texts.has(key))
            return texts.fill(key, values, typography);
    }
    const std::string key = "finding." + finding.code + "." + part;
    if (std::string_view(part) == "advice" && !texts.has(key))
        return {};
    return texts.fill(key, values, typography);
}

} // namespace

std::string findingText(const Finding& finding, const Texts& texts, Typography typography)
{
    return findingSentence(finding, texts, typography, "text");
}

std::string findingAdvice(const Finding& finding, const Texts& texts, Typography typography)
{
    return findingSentence(finding, texts, typography, "advice");
}

std::string reasonText(const Reason& reason, const Texts& texts, Typography typography)
{
    if (!reason.variant.empty()) {
        const std::string key = "reason." + reason.code + "." + reason.variant;
        if (texts.has(key))
            return texts.fill(key, reason.values, typography);
    }
    return texts.fill("reason." + reason.code, reason.values, typography);
}

std::string_view toString(Severity severity)
{
    static constexpr std::array<std::string_view, 3> names = {"stop", "caution", "note"};
    return names[static_cast<std::size_t>(severity)];
}

std::string_view toString(Verdict verdict)
{
    static constexpr std::array<std::string_view, 3> names = {"suited", "with_care", "unsuited"};
    return names[static_cast<std::size_t>(verdict)];
}

std::string_view toString(Effect effect)
{
    static constexpr std::array<std::string_view, 4> names = {"excludes", "reserves", "favours", "informs"};
    return names[static_cast<std::size_t>(effect)];
}

std::string_view toString(Role role)
{
    static constexpr std::array<std::string_view, 5> names = {"locating", "non_locating", "adjusted", "end_play", "axial_only"};
    return names[static_cast<std::size_t>(role)];
}

} // namespace shaftwright
