#include "core/analysis/warmth_findings.h"

#include "core/analysis/add_finding.h"
#include "core/analysis/shaft_model.h"
#include "core/bearings/rating.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::analysis
{
namespace
{

constexpr double bearingSteel_per_K = 11.5e-6;
constexpr const char* practice = "common practice";

/// Change of the axial play of an adjusted pair by heat; plus: play grows. Shaft, inner rings and rolling elements rise with
/// the shaft, outer rings with the housing. Derived from the growth of rings, rolling elements and distance; none when the
/// inside of a bearing is not known.
std::optional<double> playChange_mm(const Support& a, const Support& b, bool back_to_back, const Settled& settled,
                                    const ThermalState& state)
{
    double h_mm = 0.0;
    double radial_mm = 0.0;
    for (const Support* support : {&a, &b}) {
        if (!support->bearing || support->bearing->rows.empty())
            return std::nullopt;
        const BearingRating rating = ratingOf(*support->bearing);
        if (!rating.geometry || !(rating.contact_angle_rad > 0.0) || rating.contact_angle_rad >= 0.78)
            return std::nullopt;
        const double Dw = rating.geometry->element_diameter_mm, Dpw = rating.geometry->pitch_diameter_mm,
                     angle = rating.contact_angle_rad;
        const double F = Dpw - Dw * std::cos(angle), E = Dpw + Dw * std::cos(angle);
        h_mm += 0.5 * Dw * std::sin(angle);
        const double loss_mm =
            bearingSteel_per_K * (F * state.shaft_K + 2.0 * Dw * std::cos(angle) * state.shaft_K - E * state.housing_K);
        radial_mm += 0.5 * loss_mm / std::tan(angle) + bearingSteel_per_K * state.shaft_K * Dw * std::sin(angle);
    }
    const double length_mm = std::abs(b.x_mm - a.x_mm);
    const double shaft = settled.material.expansion_per_K * state.shaft_K,
                 housing = settled.housing_expansion_per_K * state.housing_K;
    if (back_to_back)
        return shaft * (length_mm + h_mm) - housing * (length_mm - h_mm) - radial_mm;
    return -shaft * (length_mm - h_mm) + housing * (length_mm + h_mm) - radial_mm;
}

class Thermometer
{
public:
    Thermometer(const Arrangement& arrangement, Assessment& assessment) : m_arrangement(arrangement), m_assessment(assessment) {}

    void run()
    {
        lookAtAdjustedPair();
        lookAtEndPlay();
        lookAtPlaces();
        lookAtTemperature();
    }

private:
    const Arrangement& m_arrangement;
    Assessment& m_assessment;

    /// The only two supports of a role, left one first; empty otherwise.
    [[nodiscard]] std::vector<std::size_t> pairOf(Role role) const
    {
        std::vector<std::size_t> found;
        for (std::size_t s = 0; s < m_assessment.supports.size(); ++s) {
            if (m_assessment.supports[s].role == role)
                found.push_back(s);
        }
        if (found.size() != 2)
            return {};
        if (m_assessment.supports[found[0]].x_mm > m_assessment.supports[found[1]].x_mm)
            std::swap(found[0], found[1]);
        return found;
    }

    void lookAtAdjustedPair()
    {
        const std::vector<std::size_t> pair = pairOf(Role::adjusted);
        if (pair.empty())
            return;
        const SupportAssessment& left = m_assessment.supports[pair[0]];
        const SupportAssessment& right = m_assessment.supports[pair[1]];
        if (left.carries == right.carries)
            return;
        const Settled& settled = m_assessment.settled;
        double change_mm = 0.0;
        for (const ThermalState& state : thermalStates(settled)) {
            const auto change = playChange_mm(m_arrangement.supports[pair[0]], m_arrangement.supports[pair[1]],
                                              left.carries == Carries::plus, settled, state);
            if (change && std::abs(*change) > std::abs(change_mm))
                change_mm = *change;
        }
        const double limit_um = settled.guide == Grade::high ? 60.0 : 150.0;
        const double span_mm = right.x_mm - left.x_mm, seat_mm = std::min(left.seat_mm, right.seat_mm);
        const bool moves = 1e3 * std::abs(change_mm) > limit_um;
        if (!moves && !(span_mm > 10.0 * seat_mm))
            return;
        addFinding(m_assessment, Severity::caution, "adjusted-span-long", left.id.value, "supports." + left.id.value + ".role",
                   {{"a", left.name},
                    {"b", right.name},
                    {"span_mm", span_mm},
                    {"seat_mm", seat_mm},
                    {"change_um", 1e3 * change_mm},
                    {"limit_um", limit_um}},
                   practice, moves ? "" : "span");
    }

    void lookAtEndPlay()
    {
        const std::vector<std::size_t> pair = pairOf(Role::end_play);
        if (pair.empty())
            return;
        const SupportAssessment& left = m_assessment.supports[pair[0]];
        const auto& first = m_arrangement.supports[pair[0]].play_mm;
        const auto& second = m_arrangement.supports[pair[1]].play_mm;
        if (!first && !second)
            return;
        const double play_mm = std::max(first.value_or(0.0), second.value_or(0.0));
        const double growth_mm = largestGrowth_mm(m_assessment.settled, m_assessment.supports[pair[1]].x_mm - left.x_mm);
        constexpr double spare_mm = 0.05; // common practice
        if (play_mm >= growth_mm + spare_mm)
            return;
        const bool gone = growth_mm > play_mm;
        addFinding(m_assessment, gone ? Severity::stop : Severity::caution, gone ? "growth-exceeds-play" : "floating-too-tight",
                   left.id.value, "supports." + (first ? left.id.value : m_assessment.supports[pair[1]].id.value) + ".play_mm",
                   {{"support", left.name},
                    {"other", m_assessment.supports[pair[1]].name},
                    {"growth_mm", growth_mm},
                    {"play_mm", play_mm},
                    {"left_mm", play_mm - growth_mm},
                    {"needed_mm", growth_mm + spare_mm}},
                   practice);
    }

    /// Bevel and worm meshes ask for their place along the shaft; it moves with the distance to the support that locates.
    void lookAtPlaces()
    {
        if (m_assessment.settled.guide != Grade::high)
            return;
        const auto locating = std::find_if(m_assessment.supports.begin(), m_assessment.supports.end(),
                                           [](const SupportAssessment& support) { return support.role == Role::locating; });
        if (locating == m_assessment.supports.end())
            return;
        constexpr double near_mm = 150.0; // common practice
        for (const Part& part : m_arrangement.parts) {
            const bool needs_place = std::holds_alternative<BevelGear>(part.body) || std::holds_alternative<Worm>(part.body) ||
                                     std::holds_alternative<WormWheel>(part.body);
            const double distance_mm = std::abs(part.x_mm - locating->x_mm);
            if (!needs_place || distance_mm <= near_mm)
                continue;
            addFinding(m_assessment, Severity::note, "locating-at-far-end", locating->id.value,
                       "supports." + locating->id.value + ".role",
                       {{"part", part.name.empty() ? part.id.value : part.name},
                        {"support", locating->name},
                        {"distance_mm", distance_mm},
                        {"growth_mm", largestGrowth_mm(m_assessment.settled, distance_mm)}},
                       practice);
        }
    }

    void lookAtTemperature()
    {
        const auto& stated_C = m_arrangement.surroundings.temperature_C;
        const bool rolling = std::any_of(m_assessment.supports.begin(), m_assessment.supports.end(),
                                         [](const SupportAssessment& support) { return support.bearing.has_value(); });
        if (!stated_C || !rolling || !(*stated_C > 70.0))
            return;
        // Above 150 deg C rings of usual heat treatment grow; the rows say nothing of a better one.
        const bool beyond = *stated_C > 150.0, hot = *stated_C > 100.0;
        addFinding(m_assessment,
                   beyond ? Severity::stop
                   : hot  ? Severity::caution
                          : Severity::note,
                   "temperature-high", "", "surroundings.temperature_C", {{"temperature_C", *stated_C}}, practice,
                   beyond ? "beyond"
                   : hot  ? "hot"
                          : "");
    }
};

} // namespace

std::vector<ThermalState> thermalStates(const Settled& settled)
{
    std::vector<ThermalState> states;
    // At start shaft and rings are warm and the housing still cold (common practice).
    const double start_K = settled.lubricant == Lubricant::oil ? 20.0 : 10.0;
    states.push_back({start_K, 0.0});
    bool all_stated = true;
    for (const LoadCase& load_case : settled.load_cases) {
        const Warmth warmth = warmthOf(load_case, settled);
        states.push_back({warmth.shaft_K, warmth.housing_K});
        all_stated = all_stated && load_case.shaft_temperature_C && load_case.housing_temperature_C;
    }
    if (!all_stated) {
        const double working_K = settled.temperature_C - settled.assembly_C;
        states.push_back({working_K, working_K - start_K});
    }
    return states;
}

double largestGrowth_mm(const Settled& settled, double length_mm)
{
    double growth_mm = 0.0;
    for (const ThermalState& state : thermalStates(settled)) {
        const double strain =
            settled.material.expansion_per_K * state.shaft_K - settled.housing_expansion_per_K * state.housing_K;
        growth_mm = std::max(growth_mm, std::abs(strain * length_mm));
    }
    return growth_mm;
}

void appendWarmthFindings(const Arrangement& arrangement, Assessment& assessment)
{
    Thermometer(arrangement, assessment).run();
}

} // namespace shaftwright::analysis
