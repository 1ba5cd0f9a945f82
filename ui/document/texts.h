#pragma once
// The one adapter between codes of core and sentences of the window.

#include "core/analysis/assessment.h"
#include "core/base/finding.h"
#include "core/document/document.h"
#include "core/model/arrangement.h"
#include "core/selection/suggestion.h"

#include <QString>

namespace shaftwright::ui
{

/// What is wrong, with its numbers.
[[nodiscard]] QString findingText(const Finding& finding);
/// What to do about it; may be empty.
[[nodiscard]] QString findingAdvice(const Finding& finding);
[[nodiscard]] QString readErrorText(const ReadError& error);
[[nodiscard]] QString reasonText(const Reason& reason);
[[nodiscard]] QString requirementText(const RequirementResult& requirement, const QString& where);
/// Name of the quantity of a derivation step.
[[nodiscard]] QString derivationName(const DerivationStep& step);
[[nodiscard]] QString quantityErrorText(const std::string& code, const std::string& detail);

/// "deep groove ball", "cylindrical roller NU".
[[nodiscard]] QString familyName(Family family);
[[nodiscard]] QString roleName(Role role);
[[nodiscard]] QString severityName(Severity severity);
[[nodiscard]] QString verdictName(Verdict verdict);
/// Mark that stands before a severity or verdict, never colour alone.
[[nodiscard]] QString severityMark(Severity severity);
[[nodiscard]] QString verdictMark(Verdict verdict);
/// "Helical gear", "Belt pulley", as the kind shows itself.
[[nodiscard]] QString kindName(const Part& part);
/// Name of what a subject path shows: "Support B", "Gear 2", "Segment 3".
[[nodiscard]] QString subjectName(const Arrangement& arrangement, const QString& subject);
/// Path of the subject of a finding ("supports.B"), from its id.
[[nodiscard]] QString subjectPath(const Arrangement& arrangement, const std::string& id);

} // namespace shaftwright::ui
