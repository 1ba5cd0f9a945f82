#include "core/analysis/requirements.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::analysis
{
namespace
{

std::optional<CaseId> caseAt(const Assessment& assessment, int index)
{
    if (index < 0 || static_cast<std::size_t>(index) >= assessment.load_cases.size())
        return std::nullopt;
    return assessment.load_cases[static_cast<std::size_t>(index)].id;
}

void judgeSupports(const Arrangement& arrangement, Assessment& assessment)
{
    for (std::size_t s = 0; s < assessment.supports.size(); ++s) {
        const SupportAssessment& support = assessment.supports[s];
        const Support& given = arrangement.supports[s];
        const std::optional<double> required_h = given.required_L_h ? given.required_L_h : arrangement.duty.required_L_h;
        const std::string base = "supports." + support.id.value;
        if (required_h) {
            RequirementResult life;
            life.id = base + ".life";
            life.kind = "life";
            life.where = support.id.value;
            life.required = *required_h;
            life.unit = "h";
            if (support.bearing) {
                if (support.bearing->L10_h && assessment.settled.basis == LifeBasis::basic)
                    life.found = support.bearing->a1 * *support.bearing->L10_h;
                life.met = support.bearing->met;
                life.case_id = caseAt(assessment, support.bearing->governing_case);
            }
            assessment.requirements.push_back(std::move(life));
        }
        if (support.bearing) {
            RequirementResult safety;
            safety.id = base + ".static";
            safety.kind = "static";
            safety.where = support.id.value;
            safety.required = support.bearing->required_S0;
            safety.found = support.bearing->S0_min;
            safety.met = support.bearing->static_met;
            safety.case_id = caseAt(assessment, support.bearing->governing_static_case);
            assessment.requirements.push_back(std::move(safety));
        }
    }
}

void judgeSystem(const Arrangement& arrangement, Assessment& assessment)
{
    std::vector<SystemMember> members;
    for (const SupportAssessment& support : assessment.supports) {
        if (support.bearing && support.bearing->L10_h)
            members.push_back({*support.bearing->L10_h, support.bearing->rating.roller});
        else
            return; // a support without a life leaves the whole without one
    }
    if (members.empty())
        return;
    assessment.all_supports = systemLife(members, arrangement.duty.required_L_h);
    const auto& required_h = arrangement.duty.required_L_h;
    const bool each_met = std::all_of(assessment.supports.begin(), assessment.supports.end(),
                                      [](const SupportAssessment& support) { return support.bearing->met.value_or(false); });
    const bool asked =
        std::any_of(arrangement.requirements.begin(), arrangement.requirements.end(),
                    [](const Requirement& requirement) { return requirement.kind == RequirementKind::all_supports_life; });
    if (required_h && each_met && !asked && assessment.all_supports.L10_h && *assessment.all_supports.L10_h < *required_h) {
        double shortest = members.front().L10_h;
        for (const SystemMember& member : members)
            shortest = std::min(shortest, member.L10_h);
        Finding finding;
        finding.severity = Severity::note;
        finding.code = "system-life";
        finding.path = "duty.required_L_h";
        finding.values = {{"L10_h", shortest},
                          {"count", double(members.size())},
                          {"system_L10_h", *assessment.all_supports.L10_h},
                          {"required_L_h", *required_h},
                          {"needed_each_h", *required_h * shortest / *assessment.all_supports.L10_h}};
        finding.source = "Weibull statistics, slope 10/9 (ball) and 9/8 (roller)";
        assessment.findings.push_back(std::move(finding));
    }
}

/// Largest value over the cases of a quantity at x.
template <class Quantity> std::pair<double, int> largestAt(const Assessment& assessment, double x_mm, Quantity quantity)
{
    std::pair<double, int> largest{0.0, -1};
    for (std::size_t i = 0; i < assessment.beam.cases.size(); ++i) {
        const double value = quantity(beam::stateAt(assessment.beam, i, x_mm, beam::Side::left));
        if (largest.second < 0 || value > largest.first)
            largest = {value, static_cast<int>(i)};
    }
    return largest;
}

void judgeStated(const Arrangement& arrangement, Assessment& assessment)
{
    for (const Requirement& requirement : arrangement.requirements) {
        RequirementResult result;
        result.id = requirement.id.value;
        result.where = requirement.where;
        result.required = requirement.limit;
        int governing = -1;
        bool lower_is_better = true;
        std::optional<double> x_mm = requirement.x_mm;
        if (const Part* part = findPart(arrangement, PartId(requirement.where)))
            x_mm = part->x_mm;
        else if (const Support* support = findSupport(arrangement, SupportId(requirement.where)))
            x_mm = support->x_mm;
        switch (requirement.kind) {
        case RequirementKind::deflection_at:
            result.kind = "deflection";
            result.unit = "mm";
            if (x_mm && assessment.beam.usable()) {
                const auto [value, index] =
                    largestAt(assessment, *x_mm, [](const beam::State& state) { return std::hypot(state.v_mm, state.w_mm); });
                result.found = value;
                governing = index;
            }
            break;
        case RequirementKind::slope_at:
            result.kind = "slope";
            result.unit = "mrad";
            if (x_mm && assessment.beam.usable()) {
                const auto [value, index] = largestAt(
                    assessment, *x_mm, [](const beam::State& state) { return 1e3 * std::hypot(state.ry_rad, state.rz_rad); });
                result.found = value;
                governing = index;
            }
            break;
        case RequirementKind::all_supports_life:
            result.kind = "all_supports_life";
            result.unit = "h";
            if (assessment.settled.basis == LifeBasis::basic)
                result.found = assessment.all_supports.L10_h;
            lower_is_better = false;
            break;
        case RequirementKind::static_safety:
            result.kind = "static_all";
            lower_is_better = false;
            for (const SupportAssessment& support : assessment.supports) {
                if (!requirement.where.empty() && support.id.value != requirement.where)
                    continue;
                if (support.bearing && support.bearing->S0_min && (!result.found || *support.bearing->S0_min < *result.found)) {
                    result.found = support.bearing->S0_min;
                    governing = support.bearing->governing_static_case;
                }
            }
            break;
        }
        if (result.found)
            result.met = lower_is_better ? *result.found <= result.required : *result.found >= result.required;
        result.case_id = caseAt(assessment, governing);
        if (result.met && !*result.met) {
            Finding finding;
            finding.severity = Severity::stop;
            finding.code = "requirement-missed";
            finding.variant = result.kind;
            finding.subject = requirement.where.empty() ? requirement.id.value : requirement.where;
            finding.path = "requirements." + requirement.id.value;
            if (result.case_id)
                finding.case_id = result.case_id->value;
            finding.values = {
                {"found", *result.found}, {"required", result.required}, {"unit", result.unit}, {"where", requirement.where}};
            if (x_mm)
                finding.values.set("x_mm", *x_mm);
            finding.source = "requirement of the arrangement";
            assessment.findings.push_back(std::move(finding));
        }
        assessment.requirements.push_back(std::move(result));
    }
}

} // namespace

void judgeRequirements(const Arrangement& arrangement, Assessment& assessment)
{
    judgeSupports(arrangement, assessment);
    judgeSystem(arrangement, assessment);
    judgeStated(arrangement, assessment);
    // What could not be evaluated counts as not met, and says so once a requirement.
    for (const RequirementResult& requirement : assessment.requirements) {
        if (requirement.met)
            continue;
        Finding finding;
        finding.severity = Severity::stop;
        finding.code = "requirement-missed";
        finding.variant = "not_evaluated";
        for (const Support& support : arrangement.supports) {
            if (support.id.value == requirement.where && (!support.bearing || support.bearing->rows.empty()))
                finding.variant = "no_bearing";
        }
        finding.subject = requirement.where;
        finding.path = requirement.id.starts_with("supports.") ? "supports." + requirement.where + ".bearing"
                                                               : "requirements." + requirement.id;
        finding.values = {{"requirement", requirement.kind},
                          {"required", requirement.required},
                          {"unit", requirement.unit},
                          {"where", requirement.where}};
        finding.source = "a requirement that cannot be evaluated counts as not met";
        const bool told = std::any_of(assessment.findings.begin(), assessment.findings.end(), [&](const Finding& other) {
            return other.severity == Severity::stop && other.path == finding.path;
        });
        if (!told)
            assessment.findings.push_back(std::move(finding));
    }
}

} // namespace shaftwright::analysis
