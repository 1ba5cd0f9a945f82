#include "core/selection/judge.h"

#include "core/selection/engine.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace shaftwright
{
namespace
{

using selection::FamilyTraits;
using selection::Kind;

/// Above this tilt needle rollers begin to carry on their ends although the verdict still holds (common practice).
constexpr double needleTilt_mrad = 0.5;
constexpr double slack = 1.0 + 1e-9;

bool isNeedle(Family family)
{
    return family == Family::needle_roller || family == Family::needle_roller_no_inner || family == Family::needle_drawn_cup;
}

/// Uses that are never proposed, yet are sound when the designer wants them: sliding cartridges, flanged bushes, rings
/// that slide one way. They get a caution instead of a stop.
bool soundByChoice(Family family, const std::string& code)
{
    switch (family) {
    case Family::angular_contact_set_O:
    case Family::angular_contact_set_X:
    case Family::tapered_roller_pair:
    case Family::cylindrical_roller_NJ:
        return code == "X05";
    case Family::cylindrical_roller_full:
        return code == "X04" || code == "X05";
    case Family::angular_contact_set_tandem:
    case Family::spherical_roller_thrust:
        return code == "X07";
    case Family::needle_thrust_combined:
        return code == "X04" || code == "X07" || code == "X08";
    case Family::plain_sintered:
    case Family::plain_ptfe_composite:
    case Family::plain_bronze:
    case Family::plain_hydrodynamic:
        return code == "X03";
    default:
        return false;
    }
}

/// One condition, one code: these reasons have a finding of their own, here or where the bearing is rated.
bool hasOwnFinding(const Reason& reason)
{
    static constexpr std::array<std::string_view, 13> own = {"X01", "X02", "X11", "X12", "X21", "X22", "X25",
                                                             "R10", "R11", "R12", "R14", "R22", "R25"};
    static constexpr std::array<std::string_view, 2> load = {"R26", "R31"};
    if (std::find(own.begin(), own.end(), reason.code) != own.end() ||
        std::find(load.begin(), load.end(), reason.code) != load.end())
        return true;
    return (reason.code == "X09" && reason.variant == "static") || (reason.code == "X03" && reason.variant.empty()) ||
           (reason.code == "X04" && reason.variant == "both") || (reason.code == "X05" && reason.variant == "inside");
}

class Judge
{
public:
    Judge(const ChoiceSurroundings& surroundings, const SupportQuestion& question, const Settled& settled,
          const std::vector<Suggestion>& suggestions, const std::map<std::string, double>& weights, const Catalogues& catalogues)
        : m_around(surroundings), m_question(question), m_settled(settled), m_suggestions(suggestions), m_weights(weights),
          m_catalogues(catalogues), m_rules(selection::ruleData())
    {
    }

    Findings run(const BearingChoice* chosen, const Suggestion* judged)
    {
        if (m_settled.motion == Motion::linear) {
            add(Severity::stop, "linear-motion", "role", {}, "definition");
            return std::move(m_findings);
        }
        if (m_suggestions.empty())
            return std::move(m_findings);
        seat();
        list(chosen);
        practiceOutside();
        if (chosen != nullptr && judged != nullptr)
            choice(*chosen, *judged);
        belt();
        return std::move(m_findings);
    }

private:
    const ChoiceSurroundings& m_around;
    const SupportQuestion& m_question;
    const Settled& m_settled;
    const std::vector<Suggestion>& m_suggestions;
    const std::map<std::string, double>& m_weights;
    const Catalogues& m_catalogues;
    const selection::RuleData& m_rules;
    Findings m_findings;

    Finding& add(Severity severity, const char* code, const std::string& key, NamedValues values, std::string source)
    {
        Finding finding;
        finding.severity = severity;
        finding.code = code;
        finding.subject = m_around.support_id;
        finding.path = "supports." + m_around.support_id + (key.empty() ? "" : "." + key);
        finding.values = {{"support", m_around.support_name}};
        for (auto& [name, value] : values.entries)
            finding.values.set(name, value);
        finding.source = std::move(source);
        m_findings.push_back(std::move(finding));
        return m_findings.back();
    }

    /// Values of a reason with its text key, so that the finding's sentence can hold the reason's sentence.
    static NamedValues withReason(NamedValues values, const Reason& reason)
    {
        values.set("reason", reason.variant.empty() ? reason.code : reason.code + "." + reason.variant);
        for (const auto& [name, value] : reason.values.entries)
            values.set(name, value);
        return values;
    }

    [[nodiscard]] bool anySuited(const std::vector<Suggestion>& suggestions) const
    {
        return std::any_of(suggestions.begin(), suggestions.end(),
                           [](const Suggestion& s) { return s.verdict == Verdict::suited; });
    }
    [[nodiscard]] const Suggestion* of(Family family) const
    {
        for (const Suggestion& suggestion : m_suggestions) {
            if (suggestion.family == family)
                return &suggestion;
        }
        return nullptr;
    }
    [[nodiscard]] double largestFr() const
    {
        double Fr = 0.0;
        for (const SupportLoad& load : m_question.cases)
            Fr = std::max(Fr, load.Fr_N);
        return Fr;
    }
    [[nodiscard]] double largestSpeed() const
    {
        double speed = 0.0;
        for (const SupportLoad& load : m_question.cases)
            speed = std::max(speed, std::abs(load.speed_rpm));
        return speed;
    }
    [[nodiscard]] double largestTilt() const
    {
        double tilt = 0.0;
        for (const SupportLoad& load : m_question.cases)
            tilt = std::max(tilt, std::abs(load.tilt_judged_mrad));
        return tilt;
    }

    void seat()
    {
        const NeighbouringBores bores = neighbouringBores(m_question.seat_mm);
        if (!bores.standard) {
            bool any = false;
            for (const Family family : allFamilies())
                any = any || !sizesForSeat(family, m_question.seat_mm, m_catalogues).empty();
            if (!any) {
                NamedValues values{{"seat_mm", m_question.seat_mm}};
                std::string variant = "outside";
                if (bores.smaller_mm && bores.larger_mm)
                    variant.clear();
                if (bores.smaller_mm)
                    values.set("smaller_mm", *bores.smaller_mm);
                if (bores.larger_mm)
                    values.set("larger_mm", *bores.larger_mm);
                add(Severity::stop, "seat-not-standard", "x_mm", std::move(values), "ISO 15").variant = variant;
                return;
            }
        }
        if (anySuited(m_suggestions) || !bores.larger_mm)
            return;
        SupportQuestion larger = m_question;
        larger.seat_mm = *bores.larger_mm;
        const std::vector<Suggestion> there = suggest(larger, m_settled, m_weights, m_catalogues);
        const auto first = std::find_if(there.begin(), there.end(),
                                        [](const Suggestion& s) { return s.verdict == Verdict::suited && s.choice.has_value(); });
        if (first == there.end())
            return;
        const CatalogueRow& row = first->choice->rows.front().row;
        NamedValues values{{"seat_mm", m_question.seat_mm},
                           {"larger_mm", *bores.larger_mm},
                           {"row", first->choice->designation()},
                           {"outer_mm", row.outer_mm},
                           {"width_mm", first->choice->width_mm()}};
        if (first->L10_h)
            values.set("L10_h", *first->L10_h);
        if (m_question.required_L_h)
            values.set("required_L_h", *m_question.required_L_h);
        add(Severity::caution, "seat-too-small", "x_mm", std::move(values), "common practice");
    }

    void list(const BearingChoice* chosen)
    {
        const Suggestion& best = m_suggestions.front();
        if (best.verdict == Verdict::unsuited) {
            std::map<std::string, int> counts;
            const Reason* frequent = nullptr;
            int most = 0;
            for (const Suggestion& s : m_suggestions) {
                // What was never asked for is no reason.
                if (s.reasons.empty() || s.reasons.front().criterion == "wish" || s.reasons.front().code == "X26" ||
                    s.reasons.front().code == "X01")
                    continue;
                const int count = ++counts[s.reasons.front().code];
                if (count > most) {
                    most = count;
                    frequent = &s.reasons.front();
                }
            }
            NamedValues values{{"count", static_cast<double>(most)}};
            if (frequent != nullptr)
                values = withReason(std::move(values), *frequent);
            add(Severity::stop, "no-family", "", std::move(values), "scoring");
            return;
        }
        if (best.verdict == Verdict::with_care) {
            NamedValues values{{"family", std::string(toString(best.family))}};
            if (!best.reasons.empty())
                values = withReason(std::move(values), best.reasons.front());
            add(Severity::caution, "no-suited-family", "", std::move(values), "scoring");
        }
        const Suggestion& second = m_suggestions[1];
        if (chosen == nullptr && second.verdict == best.verdict &&
            best.score - second.score <= m_rules.numbers.equal_score + 1e-9)
            add(Severity::note, "about-equal", "",
                {{"family", std::string(toString(best.family))},
                 {"other", std::string(toString(second.family))},
                 {"score", best.score},
                 {"score_other", second.score}},
                "scoring");
        // A suggestion of another size says nothing about the bearing that stands there.
        const Suggestion* close = chosen != nullptr ? of(chosen->family) : &best;
        if (chosen != nullptr && close != nullptr && (!close->choice || close->choice->designation() != chosen->designation()))
            close = nullptr;
        if (close != nullptr && close->close_call) {
            NamedValues values{{"family", std::string(toString(close->family))},
                               {"spread", m_rules.numbers.rating_spread},
                               {"verdict", std::string(close->verdict == Verdict::suited      ? "suited"
                                                       : close->verdict == Verdict::with_care ? "with_care"
                                                                                              : "unsuited")}};
            std::string variant;
            if (close->L10_h && m_question.required_L_h) {
                const double required_L10_h = *m_question.required_L_h / m_question.a1;
                const double spread = m_rules.numbers.rating_spread, steepest = 10.0 / 3.0; // life goes with C^(10/3) at most
                if (*close->L10_h * std::pow(1.0 - spread, steepest) < required_L10_h &&
                    *close->L10_h * std::pow(1.0 + spread, steepest) >= required_L10_h) {
                    values.set("L10_h", *close->L10_h);
                    values.set("required_L10_h", required_L10_h);
                    variant = "life";
                }
            }
            add(Severity::note, "close-call", "", std::move(values), "scoring").variant = variant;
        }
    }

    /// Types that practice often uses under such conditions and that are not rated here.
    void practiceOutside()
    {
        const auto type = [this](const char* which) {
            add(Severity::note, "type-outside-list", "", {}, "common practice").variant = which;
        };
        const double seat_mm = m_question.seat_mm, tilt = largestTilt(), speed = largestSpeed();
        const Suggestion* ball = of(Family::deep_groove_ball);
        const double C_N = ball != nullptr && ball->choice ? ball->choice->rows.front().row.C_N : 0.0;
        if (tilt >= 3.0 && tilt <= 35.0 && seat_mm >= 12.0 && seat_mm <= 90.0 && m_settled.lubricant == Lubricant::grease &&
            C_N > 0.0 && largestFr() <= 0.1 * C_N)
            type("insert");
        if (m_question.axle_stands && m_question.role == Role::locating && 1.5 * seat_mm * speed < 50000.0 && C_N > 0.0 &&
            largestFr() > 0.2 * C_N)
            type("sheave");
        if (m_settled.accuracy == Grade::high && m_question.role == Role::non_locating) {
            const Suggestion* roller = of(Family::cylindrical_roller_NU);
            if (roller != nullptr && std::any_of(roller->reasons.begin(), roller->reasons.end(), [](const Reason& reason) {
                    return reason.code == "X25" || reason.code == "R25";
                }))
                type("spindle");
        }
    }

    void choice(const BearingChoice& chosen, const Suggestion& judged)
    {
        const FamilyTraits& traits = m_rules.of(chosen.family);
        const std::string bearing = chosen.designation();
        double outer_mm = 0.0;
        for (const SetRow& row : chosen.rows)
            outer_mm = std::max(outer_mm, row.row.outer_mm);

        if ((m_question.greatest_outer_mm && outer_mm > *m_question.greatest_outer_mm * slack) ||
            (m_question.greatest_width_mm && chosen.width_mm() > *m_question.greatest_width_mm * slack)) {
            std::string variant;
            if (!m_question.greatest_width_mm)
                variant = "outer";
            else if (!m_question.greatest_outer_mm)
                variant = "width";
            add(Severity::stop, "housing-space", "bearing",
                {{"bearing", bearing},
                 {"outer_mm", outer_mm},
                 {"width_mm", chosen.width_mm()},
                 {"greatest_outer_mm", m_question.greatest_outer_mm.value_or(0.0)},
                 {"greatest_width_mm", m_question.greatest_width_mm.value_or(0.0)}},
                "requirement")
                .variant = variant;
        }

        const double tilt = largestTilt();
        if (tilt > traits.tilt_hard * slack)
            add(Severity::stop, "tilt-beyond-limit", "bearing",
                {{"bearing", bearing}, {"tilt_judged_mrad", tilt}, {"tilt_limit_mrad", traits.tilt_hard}}, traits.source);
        else if (tilt > traits.tilt_permissible * slack)
            add(Severity::caution, "tilt-costs-life", "bearing",
                {{"bearing", bearing}, {"tilt_judged_mrad", tilt}, {"tilt_limit_mrad", traits.tilt_permissible}}, traits.source);
        else if (isNeedle(chosen.family) && tilt > needleTilt_mrad * slack)
            add(Severity::caution, "tilt-costs-life", "bearing",
                {{"bearing", bearing}, {"tilt_judged_mrad", tilt}, {"tilt_limit_mrad", needleTilt_mrad}}, "common practice")
                .variant = "needle";

        if (traits.raceway_on_shaft && m_settled.surface_hardness_HRC < m_rules.numbers.hardness_needed_HRC)
            add(m_settled.surface_hardness_HRC < m_rules.numbers.hardness_least_HRC ? Severity::stop : Severity::caution,
                "raceway-too-soft", "bearing",
                {{"bearing", bearing},
                 {"hardness_HRC", m_settled.surface_hardness_HRC},
                 {"hardness_needed_HRC", m_rules.numbers.hardness_needed_HRC}},
                "common practice");

        for (const Reason& reason : judged.reasons) {
            if (reason.code == "X25" || reason.code == "R25") {
                NamedValues values = reason.values;
                values.set("bearing", bearing);
                add(reason.code == "X25" ? Severity::stop : Severity::caution,
                    reason.code == "X25" ? "speed-beyond-limit" : "speed-high", "bearing", std::move(values), reason.source)
                    .variant = reason.variant;
            } else if (reason.code == "X05" && reason.variant == "inside") {
                NamedValues values = reason.values;
                values.set("bearing", bearing);
                add(Severity::stop, "growth-exceeds-room", "bearing", std::move(values), reason.source);
            }
        }

        if (m_settled.quiet == Grade::high && traits.noise < m_rules.numbers.quiet_noise_least)
            add(Severity::note, "noise-family", "bearing", {{"bearing", bearing}}, "common practice");
        if (traits.kind == Kind::magnetic)
            add(Severity::note, "magnetic-reserved", "bearing", {{"Fr_N", largestFr()}, {"speed_rpm", largestSpeed()}},
                "common practice");

        // The deciding reason that no finding of its own tells already.
        const Effect effect = judged.verdict == Verdict::unsuited ? Effect::excludes : Effect::reserves;
        if (judged.verdict != Verdict::suited) {
            const auto telling = std::find_if(judged.reasons.begin(), judged.reasons.end(), [&](const Reason& reason) {
                return reason.effect == effect && !hasOwnFinding(reason);
            });
            if (telling != judged.reasons.end()) {
                const bool stop = effect == Effect::excludes && !soundByChoice(chosen.family, telling->code);
                NamedValues values{{"bearing", bearing}, {"family", std::string(toString(chosen.family))}};
                const Suggestion& best = m_suggestions.front();
                if (best.verdict == Verdict::suited && best.choice)
                    values.set("best", best.choice->designation());
                add(stop ? Severity::stop : Severity::caution, stop ? "chosen-is-excluded" : "chosen-is-reserved", "bearing",
                    withReason(std::move(values), *telling), telling->source);
            }
            equalDimensions(chosen, judged, bearing);
        }
    }

    void equalDimensions(const BearingChoice& chosen, const Suggestion& judged, const std::string& bearing)
    {
        std::optional<Suggestion> best;
        for (const BearingChoice& other : equalDimensionAlternatives(chosen, m_catalogues)) {
            Suggestion verdict = judgeChoice(other, m_question, m_settled, m_weights);
            if (verdict.verdict >= judged.verdict)
                continue;
            if (!best || verdict.verdict < best->verdict || (verdict.verdict == best->verdict && verdict.score > best->score))
                best = std::move(verdict);
        }
        if (!best || !best->choice)
            return;
        NamedValues values{{"bearing", bearing},
                           {"other", best->choice->designation()},
                           {"family", std::string(toString(best->family))},
                           {"outer_mm", chosen.rows.front().row.outer_mm},
                           {"width_mm", chosen.width_mm()}};
        std::string variant;
        if (best->L10_h) {
            values.set("L10_h", *best->L10_h);
            variant = "life";
        }
        Finding& finding = add(Severity::note, "equal-dimension-better", "bearing", std::move(values), "ISO 15");
        finding.variant = variant;
    }

    void belt()
    {
        const double Fr = largestFr();
        if (m_around.belt_on_shaft && m_question.role == Role::locating && m_around.largest_Fr_elsewhere_N > 0.0 &&
            Fr > 2.0 * m_around.largest_Fr_elsewhere_N)
            add(Severity::note, "belt-pulls-locating", "role", {{"Fr_N", Fr}, {"Fr_other_N", m_around.largest_Fr_elsewhere_N}},
                "common practice");
    }
};

} // namespace

Suggestion judgeChoice(const BearingChoice& choice, const SupportQuestion& question, const Settled& settled,
                       const std::map<std::string, double>& weights)
{
    // Who places a plain or magnetic bearing has asked for it.
    Settled asked = settled;
    asked.allow_plain = asked.allow_special = true;
    const selection::RuleData& rules = selection::ruleData();
    auto judged = selection::judgeWith(rules, selection::ChosenRow(rules, choice), choice.family, question, asked, weights);
    Suggestion out = judged ? std::move(*judged) : Suggestion{};
    out.family = choice.family;
    if (judged && !choice.rows.empty())
        out.choice = choice;
    return out;
}

Findings choiceFindings(const ChoiceSurroundings& surroundings, const SupportQuestion& question, const Settled& settled,
                        const std::vector<Suggestion>& suggestions, const BearingChoice* chosen, const Suggestion* judged,
                        const std::map<std::string, double>& weights, const Catalogues& catalogues)
{
    return Judge(surroundings, question, settled, suggestions, weights, catalogues).run(chosen, judged);
}

} // namespace shaftwright
