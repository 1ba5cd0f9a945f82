#include "core/base/finding.h"

#include <algorithm>

namespace shaftwright {

void NamedValues::set(std::string name, TextValue value)
{
    for (auto& [key, old] : entries) {
        if (key == name) {
            old = std::move(value);
            return;
        }
    }
    entries.emplace_back(std::move(name), std::move(value));
}

const TextValue* NamedValues::find(const std::string& name) const
{
    for (const auto& [key, value] : entries) {
        if (key == name)
            return &value;
    }
    return nullptr;
}

bool hasStop(const Findings& findings)
{
    return std::any_of(findings.begin(), findings.end(),
                       [](const Finding& finding) { return finding.severity == Severity::stop; });
}

} // namespace shaftwright
