#pragma once
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace shaftwright {

/// How much a finding weighs. A stop cannot be accepted; a caution can, with reason, name and date.
enum class Severity { stop, caution, note };

/// A number (unit in its name) or a word that stands in a sentence.
using TextValue = std::variant<double, std::string>;

/// Named values of a sentence, in the order in which they were added.
/// Names follow the one vocabulary (`Fr_N`, `tilt_mrad`, ...); templates in resources/text refer to them.
struct NamedValues {
    std::vector<std::pair<std::string, TextValue>> entries;

    NamedValues() = default;
    NamedValues(std::initializer_list<std::pair<std::string, TextValue>> list) : entries(list) {}
    void set(std::string name, TextValue value);
    [[nodiscard]] const TextValue* find(const std::string& name) const;
    friend bool operator==(const NamedValues&, const NamedValues&) = default;
};

/// One statement that needs attention. Core knows code and values only; the sentence and the advice are
/// filled from resources/text/<language>.json by core/report ("finding.<code>.text", "finding.<code>.advice").
struct Finding {
    Severity severity = Severity::note;
    std::string code;                   ///< kebab-case, `subject-condition`
    std::string subject;                ///< id of the part, support, segment, case ... at fault; empty: the arrangement
    std::string path;                   ///< addressable input, e.g. `supports.B.x_mm`; empty when none fits
    std::optional<std::string> case_id; ///< load case in which it shows; none: in all, or independent of cases
    NamedValues values;
    std::string variant;                ///< selects another sentence of the same code: "finding.<code>.<variant>"
    std::string source;                 ///< standard, handbook or "common practice"
    bool accepted = false;

    friend bool operator==(const Finding&, const Finding&) = default;
};

using Findings = std::vector<Finding>;

/// True when any finding is a stop.
[[nodiscard]] bool hasStop(const Findings& findings);

} // namespace shaftwright
