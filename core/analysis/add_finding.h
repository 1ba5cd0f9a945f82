#pragma once
// Internal to core/analysis.

#include "core/analysis/assessment.h"

#include <string>
#include <utility>

namespace shaftwright::analysis
{

inline Finding& addFinding(Assessment& assessment, Severity severity, const char* code, std::string subject, std::string path,
                           NamedValues values, const char* source, const char* variant = "")
{
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.variant = variant;
    finding.subject = std::move(subject);
    finding.path = std::move(path);
    finding.values = std::move(values);
    finding.source = source;
    assessment.findings.push_back(std::move(finding));
    return assessment.findings.back();
}

} // namespace shaftwright::analysis
