#include "core/analysis/bearing_assessment.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::analysis
{
namespace
{

class BearingJudge
{
public:
    BearingJudge(const BearingChoice& choice, std::span<const BearingLoad> loads, const BearingContext& context,
                 Findings& findings)
        : m_choice(choice), m_loads(loads), m_context(context), m_findings(findings)
    {
    }

    BearingAssessment run()
    {
        BearingAssessment result;
        result.rating = ratingOf(m_choice);
        result.catalogue = m_choice.rows.front().row.catalogue;
        result.required_L_h = m_context.required_L_h;
        result.a1 = a1(std::clamp(m_context.reliability_percent, 50.0, 99.95));
        result.derivation = result.rating.derivation;

        const bool turns =
            std::any_of(m_loads.begin(), m_loads.end(), [](const BearingLoad& load) { return load.speed_rpm != 0.0; });
        result.required_S0 = m_context.required_S0 ? settledS0(result.rating, *m_context.required_S0, turns)
                                                   : requiredS0(result.rating, m_context.quiet, turns, m_context.shocks);

        for (const BearingLoad& load : m_loads)
            result.cases.push_back(assessCase(result.rating, load));
        judgeLife(result);
        judgeStatic(result);
        return result;
    }

private:
    const BearingChoice& m_choice;
    std::span<const BearingLoad> m_loads;
    const BearingContext& m_context;
    Findings& m_findings;

    Finding& add(Finding finding, const BearingLoad* load)
    {
        finding.subject = m_context.subject;
        finding.path = m_context.path;
        if (load != nullptr) {
            finding.case_id = load->case_id.value;
            finding.values.set("case", load->case_name);
        }
        finding.values.set("support", m_context.name);
        finding.values.set("bearing", m_choice.designation());
        // One statement a code and sentence: the case with the worst severity stands for all.
        for (Finding& old : m_findings) {
            if (old.code == finding.code && old.path == finding.path && old.variant == finding.variant) {
                if (finding.severity < old.severity)
                    old = std::move(finding);
                return old;
            }
        }
        m_findings.push_back(std::move(finding));
        return m_findings.back();
    }

    BearingCase assessCase(const BearingRating& rating, const BearingLoad& load)
    {
        BearingCase result;
        result.case_id = load.case_id;
        result.Fr_N = load.Fr_N;
        result.Fa_N = load.Fa_N;
        result.Fr_static_N = load.Fr_static_N;
        result.Fa_static_N = load.Fa_static_N;
        result.induced_axial_N = load.induced_axial_N;
        result.derivation = load.induced_derivation;
        const bool turning = load.speed_rpm != 0.0;

        // A force in a sense that the bearing cannot hold leaves no rating; loadFindings says so.
        EquivalentLoad dynamic;
        if (load.sense_held)
            dynamic = equivalentLoad(rating, load.Fr_N, load.Fa_N, load.sense);
        result.X = dynamic.X;
        result.Y = dynamic.Y;
        result.e = dynamic.e;
        for (const Finding& finding : dynamic.findings)
            add(finding, &load);
        result.derivation.insert(result.derivation.end(), dynamic.derivation.begin(), dynamic.derivation.end());
        result.P_N = dynamic.P_N;

        const StaticLoad at_rest = staticLoad(rating, load.Fr_static_N, load.Fa_static_N, load.sense);
        result.P0_N = at_rest.P0_N;
        result.S0 = at_rest.S0;
        for (const Finding& finding : at_rest.findings) {
            // The same stop already stands for the turning bearing.
            const bool told = std::any_of(dynamic.findings.begin(), dynamic.findings.end(),
                                          [&](const Finding& other) { return other.code == finding.code; });
            if (!told)
                add(finding, &load);
        }

        if (result.P_N && turning && *result.P_N > 0.0) {
            result.L10_h = hours(ratingLife_Mrev(rating.C_N, *result.P_N, rating.life_exponent), load.speed_rpm);
            const Derivation steps = ratingLifeSteps(rating.C_N, *result.P_N, rating.life_exponent, load.speed_rpm);
            result.derivation.insert(result.derivation.end(), steps.begin(), steps.end());
        }
        result.derivation.insert(result.derivation.end(), at_rest.derivation.begin(), at_rest.derivation.end());
        BearingCondition condition;
        condition.Fr_N = load.Fr_N;
        condition.Fa_N = load.Fa_N;
        condition.speed_rpm = load.speed_rpm;
        condition.time_share = load.time_share;
        condition.pressed = m_context.preloaded_or_sprung;
        condition.sense = load.sense;
        condition.sense_held = load.sense_held;
        for (Finding& finding : loadFindings(rating, condition, dynamic))
            add(std::move(finding), &load);
        return result;
    }

    void judgeLife(BearingAssessment& result)
    {
        std::vector<DutyPoint> points;
        for (std::size_t i = 0; i < m_loads.size(); ++i)
            points.push_back({m_loads[i].time_share, m_loads[i].speed_rpm, result.cases[i].P_N});
        const DutyLife life = dutyLife(result.rating.C_N, result.rating.life_exponent, points);
        for (std::size_t i = 0; i < result.cases.size(); ++i)
            result.cases[i].damage_share = i < life.damage_share.size() ? life.damage_share[i] : 0.0;
        result.governing_case = life.governing;
        result.L10_h = life.L10_h;
        result.L10_Mrev = life.L10_Mrev;
        result.P_equivalent_N = life.P_mean_N;
        result.derivation.insert(result.derivation.end(), life.derivation.begin(), life.derivation.end());
        if (result.a1 != 1.0 && result.L10_h)
            result.derivation.push_back({"reliability_life",
                                         "L_nh",
                                         "a1 L10h",
                                         {{"a1", result.a1}, {"L10h", *result.L10_h}},
                                         result.a1 * *result.L10_h,
                                         "h",
                                         "ISO 281:2007, Table 12"});
        std::optional<double> found_h;
        if (result.L10_h)
            found_h = result.a1 * *result.L10_h;
        const std::optional<double> judged_L_h = m_context.basis == LifeBasis::basic ? result.required_L_h : std::nullopt;
        if (judged_L_h && found_h)
            result.met = *found_h >= *judged_L_h; // without a life the requirement says that it could not be evaluated
        std::optional<double> C_over_P;
        if (result.P_equivalent_N && *result.P_equivalent_N > 0.0)
            C_over_P = result.rating.C_N / *result.P_equivalent_N;
        const BearingLoad* governing =
            result.governing_case >= 0 ? &m_loads[static_cast<std::size_t>(result.governing_case)] : nullptr;
        for (Finding& finding : lifeFindings(found_h, judged_L_h, C_over_P))
            add(std::move(finding), governing);
    }

    /// The largest P0 governs. A case without P0 leaves the safety open unless another one fails already.
    void judgeStatic(BearingAssessment& result)
    {
        bool all_known = true;
        for (const BearingCase& bearing_case : result.cases)
            all_known = all_known && bearing_case.P0_N.has_value();
        for (std::size_t i = 0; i < result.cases.size(); ++i) {
            const BearingCase& bearing_case = result.cases[i];
            if (!bearing_case.P0_N)
                continue;
            const bool largest = result.governing_static_case < 0 ||
                                 *bearing_case.P0_N > *result.cases[static_cast<std::size_t>(result.governing_static_case)].P0_N;
            if (largest)
                result.governing_static_case = static_cast<int>(i);
        }
        if (result.governing_static_case < 0)
            return;
        const auto index = static_cast<std::size_t>(result.governing_static_case);
        result.S0_min = result.cases[index].S0;
        const bool low = result.S0_min && *result.S0_min < result.required_S0; // no load at all is no lack of safety
        if (low || all_known)
            result.static_met = !low;
        if (!result.S0_min)
            return;
        StaticLoad governing;
        governing.P0_N = result.cases[index].P0_N;
        governing.S0 = result.S0_min;
        for (Finding& finding : staticFindings(result.rating, governing, result.required_S0))
            add(std::move(finding), &m_loads[index]);
    }
};

} // namespace

BearingAssessment assessBearing(const BearingChoice& choice, std::span<const BearingLoad> loads, const BearingContext& context,
                                Findings& findings)
{
    return BearingJudge(choice, loads, context, findings).run();
}

} // namespace shaftwright::analysis
