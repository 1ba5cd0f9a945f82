#pragma once
// Sentences of findings, reasons, derivations and reports, by language. Core gives code and values; the words stand in
// resources/text/<language>*.json as flat objects of key and template.

#include "core/base/finding.h"
#include "core/selection/suggestion.h"

#include <string>
#include <string_view>
#include <vector>

namespace shaftwright {

enum class Language { english, german };

/// How numbers are written inside a sentence.
enum class Typography {
    plain, ///< plain digits, point, minus: for machines
    fine   ///< thin spaces, true minus; decimal mark of the language
};

class Texts {
public:
    /// The sentences of one language; built once.
    [[nodiscard]] static const Texts& of(Language language);

    [[nodiscard]] bool has(std::string_view key) const;
    /// Template of a key; the key itself in angle brackets when it is missing (a test looks for these).
    [[nodiscard]] std::string_view get(std::string_view key) const;
    /// Template with its placeholders filled. `{name:0.0}` decimals, `{name:0 %}` share as per cent, `{name:s3}` significant
    /// figures, `{name}` a word (translated by "word.<value>" when there is such a key) or the shortest number;
    /// `{name:family}` the text "family.<value>", filled with the same values. A passage `{?name}...{/}` stands only when there is
    /// such a value (a word that is not empty, any number; `{?name>0}` a number above zero), `{!name}...{/}` only when not.
    [[nodiscard]] std::string fill(std::string_view key, const NamedValues& values, Typography typography) const;
    [[nodiscard]] std::vector<std::string> keys() const;
    [[nodiscard]] Language language() const { return m_language; }

private:
    explicit Texts(Language language);
    [[nodiscard]] std::string filled(std::string_view text, const NamedValues& values, Typography typography, int depth) const;
    Language m_language;
    std::vector<std::pair<std::string, std::string>> m_entries; ///< sorted by key
};

/// What is wrong, with its numbers.
[[nodiscard]] std::string findingText(const Finding& finding, const Texts& texts, Typography typography = Typography::fine);
/// What to do about it; empty when there is nothing to advise.
[[nodiscard]] std::string findingAdvice(const Finding& finding, const Texts& texts, Typography typography = Typography::fine);
[[nodiscard]] std::string reasonText(const Reason& reason, const Texts& texts, Typography typography = Typography::fine);

/// A number for reading: `decimals` places, thin spaces and true minus when fine.
[[nodiscard]] std::string numberText(double value, int decimals, const Texts& texts, Typography typography = Typography::fine);

[[nodiscard]] std::string_view toString(Severity severity);
[[nodiscard]] std::string_view toString(Verdict verdict);
[[nodiscard]] std::string_view toString(Effect effect);
[[nodiscard]] std::string_view toString(Role role);

} // namespace shaftwright
