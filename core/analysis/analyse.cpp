#include "core/analysis/analyse.h"

#include "core/analysis/arrangement_findings.h"
#include "core/analysis/axial_roles.h"
#include "core/analysis/bearing_assessment.h"
#include "core/analysis/requirements.h"
#include "core/analysis/shaft_model.h"
#include "core/analysis/warmth_findings.h"
#include "core/check/check.h"
#include "core/selection/judge.h"
#include "core/selection/rule_data.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <set>

namespace shaftwright
{

const SupportAssessment* Assessment::find(const SupportId& id) const
{
    for (const SupportAssessment& support : supports) {
        if (support.id == id)
            return &support;
    }
    return nullptr;
}

int Assessment::missed() const
{
    int count = 0;
    for (const RequirementResult& requirement : requirements)
        count += requirement.met.value_or(false) ? 0 : 1;
    return count;
}

namespace
{

using namespace analysis;

/// Stops that leave no shaft or no supports to calculate with.
bool spoilsBeam(const Finding& finding)
{
    static const std::set<std::string> codes = {"segment-size",  "segment-bore",      "material-elastic",
                                                "support-place", "support-stiffness", "support-rigid-and-spring"};
    // Two rings in one place cannot be built, but the shaft can be calculated.
    return finding.severity == Severity::stop && codes.contains(finding.code) && finding.variant != "overlap";
}

double angle_deg(double y, double z)
{
    double angle = std::atan2(z, y) / std::numbers::pi * 180.0;
    if (angle < 0.0)
        angle += 360.0;
    return angle >= 360.0 ? 0.0 : angle;
}

/// Largest length of a cos t + b sin t over all t for plane vectors a, b: the largest singular value of the matrix (a b).
double largestOverDirections(double ay, double az, double by, double bz)
{
    const double sum = ay * ay + az * az + by * by + bz * bz;
    const double product = ay * bz - az * by;
    return std::sqrt(0.5 * (sum + std::sqrt(std::max(0.0, sum * sum - 4.0 * product * product))));
}

/// Reaction to forces that turn with the shaft: response in y and z to the force standing in y, and standing in z.
struct RotatingResponse {
    double cosine_y = 0.0, cosine_z = 0.0, sine_y = 0.0, sine_z = 0.0;
    [[nodiscard]] double largest() const { return largestOverDirections(cosine_y, cosine_z, sine_y, sine_z); }
};

/// Mean of |R0 + Rc cos t + Rs sin t| over a turn with the life exponent (periodic trapezoid rule, 64 points).
double meanOverTurn(double Ry, double Rz, const RotatingResponse& rotating, double exponent)
{
    constexpr int points = 64;
    double sum = 0.0;
    for (int i = 0; i < points; ++i) {
        const double t = 2.0 * std::numbers::pi * i / points;
        sum += std::pow(std::hypot(Ry + rotating.cosine_y * std::cos(t) + rotating.sine_y * std::sin(t),
                                   Rz + rotating.cosine_z * std::cos(t) + rotating.sine_z * std::sin(t)),
                        exponent);
    }
    return std::pow(sum / points, 1.0 / exponent);
}

class Analysis
{
public:
    Analysis(const Arrangement& arrangement, const Catalogues& catalogues) : m_arrangement(arrangement), m_catalogues(catalogues)
    {
    }

    Assessment run()
    {
        m_result.settled = settle(m_arrangement);
        m_result.findings = checkArrangement(m_arrangement);
        const bool shaft_good = std::none_of(m_result.findings.begin(), m_result.findings.end(), spoilsBeam);

        findLoads();
        m_roles = settleAxialRoles(m_arrangement);
        take(m_roles.findings);
        startSupports();
        if (shaft_good && !m_arrangement.shaft.segments.empty())
            solveBeam();
        summariseCases();
        if (m_result.beam.usable()) {
            readReactions();
            holdAxially();
            summariseShaft();
        }
        assessBearings();
        suggestBearings();
        judgeRequirements(m_arrangement, m_result);
        appendArrangementFindings(m_arrangement, m_result);
        finish();
        return std::move(m_result);
    }

private:
    const Arrangement& m_arrangement;
    const Catalogues& m_catalogues;
    Assessment m_result;
    AxialRoles m_roles;
    std::vector<int> m_holders;                                ///< per case
    std::vector<std::vector<std::optional<double>>> m_induced; ///< [support][case]
    std::vector<std::vector<Derivation>> m_induced_steps;      ///< [support][case]
    std::vector<std::vector<RotatingResponse>> m_rotating;     ///< [support][case]; empty when nothing turns

    [[nodiscard]] std::size_t caseCount() const { return m_result.settled.load_cases.size(); }

    void take(const Findings& findings) { m_result.findings.insert(m_result.findings.end(), findings.begin(), findings.end()); }

    void findLoads()
    {
        // A part that does not stand on the shaft is left out of the calculation; its stop says so.
        const auto outside = [&](const Part& part) {
            return std::any_of(m_result.findings.begin(), m_result.findings.end(), [&](const Finding& finding) {
                return finding.severity == Severity::stop && finding.subject == part.id.value &&
                       (finding.code == "part-x-outside" || finding.code == "load-range" || finding.code == "value-invalid");
            });
        };
        const bool all_inside = std::none_of(m_arrangement.parts.begin(), m_arrangement.parts.end(), outside);
        LoadResult loads;
        if (all_inside) {
            loads = evaluateLoads(m_arrangement, m_result.settled);
        } else {
            Arrangement inside = m_arrangement;
            std::erase_if(inside.parts, outside);
            loads = evaluateLoads(inside, m_result.settled);
        }
        m_result.loads = std::move(loads.cases);
        m_result.assumptions = m_result.settled.assumptions;
        m_result.assumptions.insert(m_result.assumptions.end(), loads.assumptions.begin(), loads.assumptions.end());
        take(loads.findings);
    }

    void startSupports()
    {
        m_result.assumptions.insert(m_result.assumptions.end(), m_roles.assumptions.begin(), m_roles.assumptions.end());
        for (std::size_t i = 0; i < m_arrangement.supports.size(); ++i) {
            const Support& support = m_arrangement.supports[i];
            SupportAssessment assessment;
            assessment.id = support.id;
            assessment.name = support.name.empty() ? support.id.value : support.name;
            assessment.x_mm = support.x_mm;
            assessment.role = support.role;
            assessment.seat_mm = shaftDiameterAt_mm(m_arrangement.shaft, support.x_mm);
            assessment.carries = m_roles.supports[i].carries;
            assessment.centre_x_mm =
                support.x_mm +
                (support.bearing && !support.bearing->rows.empty() ? centreOffset_mm(*support.bearing, assessment.carries) : 0.0);
            m_result.supports.push_back(std::move(assessment));
        }
    }

    /// External axial sum with the shaft's own weight, which the beam adds by itself.
    [[nodiscard]] double axialSum_N(std::size_t case_index, double mass_kg) const
    {
        const CaseLoads& loads = m_result.loads[case_index];
        const double K_N = loads.K_N + mass_kg * loads.gravity_m_s2.x;
        double scale = mass_kg * std::hypot(loads.gravity_m_s2.x, loads.gravity_m_s2.z);
        for (const PartLoad& load : loads.parts)
            scale = std::max(scale, std::abs(load.force_N.x));
        return std::abs(K_N) <= 1e-9 * scale ? 0.0 : K_N; // rounding of forces that cancel has no sense of its own
    }

    [[nodiscard]] double shaftMass_kg() const
    {
        double volume_mm3 = 0.0;
        for (const Segment& s : m_arrangement.shaft.segments) {
            const auto frustum = [&](double a, double b) {
                return std::numbers::pi / 12.0 * s.length_mm * (a * a + a * b + b * b);
            };
            volume_mm3 += frustum(s.outer_mm, s.outerRight_mm()) - frustum(s.boreLeft_mm(), s.boreRight_mm());
        }
        return volume_mm3 * 1e-9 * m_result.settled.material.density_kg_m3;
    }

    void solveBeam()
    {
        const double mass_kg = shaftMass_kg();
        const beam::Model model = beamModel(m_arrangement, m_result.settled, m_roles);
        std::vector<beam::LoadCase> cases;
        bool rotates = false;
        for (std::size_t i = 0; i < caseCount(); ++i) {
            const double K_N = axialSum_N(i, mass_kg);
            int holder = m_roles.holder(K_N);
            if (holder < 0)
                holder =
                    m_roles.holder(0.0); // held in the other sense only: a stop stands already, show what it would have to carry
            m_holders.push_back(holder);
            cases.push_back(beamCase(m_arrangement, m_result.settled, m_result.settled.load_cases[i], m_result.loads[i], holder));
            for (const PartLoad& load : m_result.loads[i].parts)
                rotates = rotates || load.rotating_force_N.y != 0.0;
        }
        if (rotates) {
            // The force that turns with the shaft, once standing in y, once in z; all such forces in phase.
            for (const bool in_z : {false, true}) {
                for (std::size_t i = 0; i < caseCount(); ++i) {
                    beam::LoadCase turning;
                    turning.id = cases[i].id;
                    turning.holds_x = cases[i].holds_x;
                    for (const PartLoad& load : m_result.loads[i].parts) {
                        const double F = load.rotating_force_N.y;
                        if (F != 0.0)
                            turning.point_loads.push_back({load.x_mm, {0.0, in_z ? 0.0 : F, in_z ? F : 0.0}, {}});
                    }
                    cases.push_back(std::move(turning));
                }
            }
        }
        m_result.beam = beam::solve(model, cases);
        for (Finding finding : m_result.beam.findings) {
            // What the check has said with the ids of the document is not said again by number.
            const bool said = std::any_of(m_result.findings.begin(), m_result.findings.end(), [&](const Finding& other) {
                return other.code == finding.code && other.severity == finding.severity;
            });
            if (said)
                continue;
            if (finding.path.empty())
                finding.path = finding.subject.empty() ? "supports" : "supports." + finding.subject;
            m_result.findings.push_back(std::move(finding));
        }
        if (!m_result.beam.usable())
            return;
        if (rotates) {
            const std::size_t n = caseCount();
            m_rotating.assign(m_arrangement.supports.size(), std::vector<RotatingResponse>(n));
            for (std::size_t s = 0; s < m_arrangement.supports.size(); ++s) {
                for (std::size_t i = 0; i < n; ++i) {
                    const auto& in_y = m_result.beam.cases[n + i].reactions[s].force_N;
                    const auto& in_z = m_result.beam.cases[2 * n + i].reactions[s].force_N;
                    m_rotating[s][i] = {in_y[1], in_y[2], in_z[1], in_z[2]};
                }
            }
            m_result.beam.cases.resize(n);
        }
    }

    void summariseCases()
    {
        const double mass_kg = m_result.beam.usable() ? m_result.beam.mass_kg : 0.0;
        for (std::size_t i = 0; i < caseCount(); ++i) {
            const LoadCase& load_case = m_result.settled.load_cases[i];
            m_result.load_cases.push_back({load_case.id, load_case.name.empty() ? load_case.id.value : load_case.name,
                                           load_case.time_share, load_case.speed_rpm, m_result.loads[i].torque_residual_Nmm,
                                           axialSum_N(i, mass_kg), m_result.beam.usable() ? m_holders[i] : -1});
        }
    }

    void readReactions()
    {
        const bool any_worst = std::any_of(m_result.loads.begin(), m_result.loads.end(), [](const CaseLoads& loads) {
            return std::any_of(loads.parts.begin(), loads.parts.end(), [](const PartLoad& load) {
                return load.worst_direction_N != 0.0 || load.worst_moment_Nmm != 0.0;
            });
        });
        for (std::size_t s = 0; s < m_result.supports.size(); ++s) {
            SupportAssessment& support = m_result.supports[s];
            const Support& given = m_arrangement.supports[s];
            const double mounting_mrad = given.mounting_error_mrad.value_or(defaultMountingError_mrad);
            for (std::size_t i = 0; i < caseCount(); ++i) {
                const beam::Reaction& reaction = m_result.beam.cases[i].reactions[s];
                SupportCase result;
                result.case_id = m_result.settled.load_cases[i].id;
                result.force_N = {reaction.force_N[0], reaction.force_N[1], reaction.force_N[2]};
                result.moment_y_Nmm = reaction.my_Nmm;
                result.moment_z_Nmm = reaction.mz_Nmm;
                result.radial_N = std::hypot(result.force_N.y, result.force_N.z);
                result.radial_angle_deg = angle_deg(result.force_N.y, result.force_N.z);
                result.axial_N = result.force_N.x;
                result.displacement_mm = {reaction.displacement_mm[0], reaction.displacement_mm[1], reaction.displacement_mm[2]};
                result.rotation_y_mrad = 1e3 * reaction.ry_rad;
                result.rotation_z_mrad = 1e3 * reaction.rz_rad;
                const double bore_y = given.prescribed ? given.prescribed->ry_mrad : 0.0;
                const double bore_z = given.prescribed ? given.prescribed->rz_mrad : 0.0;
                result.tilt_mrad = std::hypot(result.rotation_y_mrad - bore_y, result.rotation_z_mrad - bore_z);
                result.tilt_judged_mrad = result.tilt_mrad + mounting_mrad;
                if (!m_rotating.empty())
                    result.rotating_N = m_rotating[s][i].largest();
                const Warmth warmth = warmthOf(m_result.settled.load_cases[i], m_result.settled);
                const int holder = m_holders[i];
                const double reference_mm = holder >= 0 ? m_arrangement.supports[static_cast<std::size_t>(holder)].x_mm : 0.0;
                const double housing_mm =
                    m_result.settled.housing_expansion_per_K * warmth.housing_K * (given.x_mm - reference_mm);
                support.axial_travel_mm = std::max(support.axial_travel_mm, std::abs(result.displacement_mm.x - housing_mm));
                support.cases.push_back(result);
            }
        }
        if (!any_worst)
            return;
        for (std::size_t i = 0; i < caseCount(); ++i) {
            const beam::InfluenceBasis basis = beam::influenceBasis(m_result.beam, i);
            for (const PartLoad& load : m_result.loads[i].parts) {
                if (load.worst_direction_N == 0.0 && load.worst_moment_Nmm == 0.0)
                    continue;
                const beam::InfluenceShapes shapes = beam::influenceAt(basis, load.x_mm);
                for (std::size_t s = 0; s < m_result.supports.size(); ++s) {
                    const auto largest = [](const beam::Vec5& in_y, const beam::Vec5& in_z) {
                        return largestOverDirections(in_y[1], in_y[2], in_z[1], in_z[2]);
                    };
                    SupportCase& support_case = m_result.supports[s].cases[i];
                    support_case.worst_direction_N +=
                        load.worst_direction_N * largest(shapes.reaction_per_fy[s], shapes.reaction_per_fz[s]);
                    support_case.worst_direction_N +=
                        load.worst_moment_Nmm * largest(shapes.reaction_per_my[s], shapes.reaction_per_mz[s]);
                }
            }
        }
    }

    /// Radial force that counts for the life: mean over a turn when forces turn with the shaft, and the worst of what has no
    /// known direction.
    [[nodiscard]] double lifeRadial_N(std::size_t s, std::size_t i, double exponent) const
    {
        const SupportCase& here = m_result.supports[s].cases[i];
        const bool turns = !m_rotating.empty() && here.rotating_N > 0.0;
        return (turns ? meanOverTurn(here.force_N.y, here.force_N.z, m_rotating[s][i], exponent) : here.radial_N) +
               here.worst_direction_N;
    }

    /// Axial reactions of adjusted pairs with their induced loads; N(x) between the two follows.
    void holdAxially()
    {
        m_induced.assign(m_result.supports.size(), std::vector<std::optional<double>>(caseCount()));
        m_induced_steps.assign(m_result.supports.size(), std::vector<Derivation>(caseCount()));
        if (m_roles.pair_plus < 0)
            return;
        const auto plus = static_cast<std::size_t>(m_roles.pair_plus);
        const auto minus = static_cast<std::size_t>(m_roles.pair_minus);
        bool estimated = false;
        for (std::size_t i = 0; i < caseCount(); ++i) {
            const auto induced = [&](std::size_t s) {
                const Support& support = m_arrangement.supports[s];
                InducedLoad load;
                if (support.bearing && !support.bearing->rows.empty()) {
                    const BearingRating rating = ratingOf(*support.bearing);
                    load = inducedLoad(rating, lifeRadial_N(s, i, rating.life_exponent), m_result.settled.induced_load);
                } else {
                    // No bearing yet: a tapered roller bearing of Y = 1.6 stands in, so that types can be compared.
                    estimated = true;
                    load.factor = 1.0 / (2.0 * 1.6);
                    load.S_N = load.factor * lifeRadial_N(s, i, 10.0 / 3.0);
                }
                m_induced[s][i] = load.S_N;
                m_induced_steps[s][i] = load.derivation;
                return load.S_N;
            };
            const double S_plus = induced(plus);
            const double S_minus = induced(minus);
            const double K_N = m_result.load_cases[i].K_N;
            const PairAxialLoads pair = adjustedPair(S_plus, S_minus, K_N);
            for (const std::size_t s : {plus, minus})
                m_induced_steps[s][i].insert(m_induced_steps[s][i].end(), pair.derivation.begin(), pair.derivation.end());
            setAxial(i, plus, -pair.plus_N);
            setAxial(i, minus, pair.minus_N);
        }
        if (estimated) {
            for (const std::size_t s : {plus, minus}) {
                if (!m_arrangement.supports[s].bearing)
                    m_result.assumptions.push_back({"supports." + m_result.supports[s].id.value + ".bearing",
                                                    std::string("Y = 1.6"), "", "induced_load_estimate"});
            }
        }
    }

    /// Sets the axial reaction of a support and carries the change into N of every station to its right.
    void setAxial(std::size_t case_index, std::size_t s, double axial_N)
    {
        SupportCase& support_case = m_result.supports[s].cases[case_index];
        const double change_N = axial_N - support_case.axial_N;
        support_case.axial_N = axial_N;
        support_case.force_N.x = axial_N;
        beam::CaseResult& beam_case = m_result.beam.cases[case_index];
        beam_case.reactions[s].force_N[0] = axial_N;
        if (change_N == 0.0)
            return;
        const double seat_mm = m_result.supports[s].x_mm;
        for (std::size_t k = 0; k < beam_case.stations.size(); ++k) {
            const beam::State& station = beam_case.stations[k];
            const bool right_limit = k % 2 == 1;
            const bool beyond = station.x_mm > seat_mm + 1e-6 || (std::abs(station.x_mm - seat_mm) <= 1e-3 && right_limit);
            if (beyond)
                beam_case.stations[k].N_N -= change_N;
        }
        beam_case.axial_N = {};
        for (const beam::State& station : beam_case.stations) {
            if (std::abs(station.N_N) > std::abs(beam_case.axial_N.value))
                beam_case.axial_N = {station.N_N, station.x_mm};
        }
    }

    void summariseShaft()
    {
        ShaftResult& shaft = m_result.shaft;
        shaft.mass_kg = m_result.beam.mass_kg;
        shaft.length_mm = m_result.beam.length_mm;
        for (std::size_t i = 0; i < caseCount(); ++i) {
            const beam::CaseResult& result = m_result.beam.cases[i];
            if (std::abs(result.deflection_mm.value) > shaft.max_deflection_mm) {
                shaft.max_deflection_mm = std::abs(result.deflection_mm.value);
                shaft.max_deflection_x_mm = result.deflection_mm.x_mm;
                shaft.case_id = m_result.settled.load_cases[i].id;
            }
            if (std::abs(result.moment_Nmm.value) > shaft.max_moment_Nmm) {
                shaft.max_moment_Nmm = std::abs(result.moment_Nmm.value);
                shaft.max_moment_x_mm = result.moment_Nmm.x_mm;
            }
        }
    }

    /// Whether the bearing there can hold the axial force of this case.
    [[nodiscard]] bool senseHeld(const Support& support, std::size_t s, double axial_N, double radial_N) const
    {
        if (axial_N == 0.0)
            return true;
        const AxialSense sense = axialSense(support.bearing->family);
        if (sense == AxialSense::none)
            return std::abs(axial_N) <= 0.02 * radial_N; // guiding friction only
        const Carries needed = axial_N < 0.0 ? Carries::plus : Carries::minus;
        return holdsSense(*support.bearing, m_roles.supports[s].carries, needed);
    }

    void assessBearings()
    {
        for (std::size_t s = 0; s < m_result.supports.size(); ++s) {
            const Support& support = m_arrangement.supports[s];
            SupportAssessment& assessment = m_result.supports[s];
            if (support.bearing && !support.bearing->rows.empty() && !assessment.cases.empty() && ratable(s)) {
                std::vector<BearingLoad> loads;
                const double exponent = ratingOf(*support.bearing).life_exponent;
                for (std::size_t i = 0; i < caseCount(); ++i)
                    loads.push_back(bearingLoad(support, s, i, exponent));
                BearingContext context;
                context.subject = support.id.value;
                context.path = "supports." + support.id.value + ".bearing";
                context.name = assessment.name;
                context.required_L_h = support.required_L_h ? support.required_L_h : m_arrangement.duty.required_L_h;
                context.reliability_percent = support.reliability_percent.value_or(m_result.settled.reliability_percent);
                context.basis = m_result.settled.basis;
                context.required_S0 = support.required_S0;
                context.quiet = m_result.settled.quiet;
                context.shocks = m_result.settled.K_A >= selection::ruleData().numbers.static_high_load_shock_K_A;
                context.preloaded_or_sprung = support.role == Role::adjusted;
                assessment.bearing = assessBearing(*support.bearing, loads, context, m_result.findings);
                assessment.bearing->centre_x_mm = assessment.centre_x_mm;
                assessment.governing_case = assessment.bearing->governing_case;
            }
            if (assessment.governing_case < 0) {
                for (std::size_t i = 0; i < assessment.cases.size(); ++i) {
                    if (assessment.governing_case < 0 ||
                        assessment.cases[i].radial_N >
                            assessment.cases[static_cast<std::size_t>(assessment.governing_case)].radial_N)
                        assessment.governing_case = static_cast<int>(i);
                }
            }
        }
    }

    /// No rating from a row whose own numbers are refused.
    [[nodiscard]] bool ratable(std::size_t s) const
    {
        const std::string prefix = "supports." + m_arrangement.supports[s].id.value + ".bearing";
        return std::none_of(m_result.findings.begin(), m_result.findings.end(), [&](const Finding& finding) {
            return finding.code == "value-invalid" && finding.path.starts_with(prefix);
        });
    }

    BearingLoad bearingLoad(const Support& support, std::size_t s, std::size_t i, double exponent) const
    {
        const LoadCase& load_case = m_result.settled.load_cases[i];
        const SupportCase& here = m_result.supports[s].cases[i];
        BearingLoad load;
        load.case_id = load_case.id;
        load.case_name = m_result.load_cases[i].name;
        load.time_share = load_case.time_share;
        load.speed_rpm = load_case.speed_rpm;
        load.Fr_N = lifeRadial_N(s, i, exponent);
        load.Fa_N = std::abs(here.axial_N);
        if (here.axial_N != 0.0)
            load.sense = here.axial_N < 0.0 ? Carries::plus : Carries::minus;
        load.sense_held = senseHeld(support, s, here.axial_N, load.Fr_N);
        if (axialSense(support.bearing->family) == AxialSense::none && load.sense_held)
            load.Fa_N = 0.0;
        // The peak factor is put on the whole load: cautious, since weight and pretension do not rise with it.
        const double peak = load_case.peak_factor.value_or(1.0);
        load.Fr_static_N = peak * (here.radial_N + here.worst_direction_N + here.rotating_N);
        load.Fa_static_N = peak * load.Fa_N;
        load.induced_axial_N = m_induced[s][i];
        load.induced_derivation = m_induced_steps[s][i];
        return load;
    }

    /// Largest displacement that a non-locating support has to allow: growth of its distance to the support that holds the
    /// shaft, and what a chain of tolerances may add at assembly.
    [[nodiscard]] double requiredTravel_mm(std::size_t s) const
    {
        const int holder = m_roles.holder(0.0);
        if (holder < 0 || static_cast<std::size_t>(holder) == s)
            return 0.0;
        const double distance_mm = m_arrangement.supports[s].x_mm - m_arrangement.supports[static_cast<std::size_t>(holder)].x_mm;
        constexpr double tolerances_mm = 0.3; // common practice
        return largestGrowth_mm(m_result.settled, distance_mm) + tolerances_mm;
    }

    [[nodiscard]] bool overhung() const
    {
        double inside_N = 0.0;
        double outside_N = 0.0;
        double left_mm = 1e300;
        double right_mm = -1e300;
        for (const Support& support : m_arrangement.supports) {
            left_mm = std::min(left_mm, support.x_mm);
            right_mm = std::max(right_mm, support.x_mm);
        }
        for (const CaseLoads& loads : m_result.loads) {
            for (const PartLoad& load : loads.parts) {
                const double force_N = std::hypot(load.force_N.y, load.force_N.z);
                (load.x_mm < left_mm || load.x_mm > right_mm ? outside_N : inside_N) += force_N;
            }
        }
        return outside_N > inside_N;
    }

    void suggestBearings()
    {
        const bool is_overhung = overhung();
        const bool belt = std::any_of(m_arrangement.parts.begin(), m_arrangement.parts.end(),
                                      [](const Part& part) { return std::holds_alternative<BeltPulley>(part.body); });
        for (std::size_t s = 0; s < m_result.supports.size(); ++s) {
            SupportAssessment& assessment = m_result.supports[s];
            const Support& support = m_arrangement.supports[s];
            if (assessment.cases.empty() || !(assessment.seat_mm > 0.0))
                continue;
            SupportQuestion question;
            question.role = support.role;
            question.governing_case = std::max(0, assessment.governing_case);
            question.seat_mm = assessment.seat_mm;
            question.greatest_outer_mm = support.greatest_outer_mm;
            question.greatest_width_mm = support.greatest_width_mm;
            question.required_L_h = support.required_L_h ? support.required_L_h : m_arrangement.duty.required_L_h;
            question.a1 = a1(std::clamp(support.reliability_percent.value_or(m_result.settled.reliability_percent), 50.0, 99.95));
            question.required_S0 = support.required_S0;
            question.s_required_mm = support.role == Role::non_locating ? requiredTravel_mm(s) : 0.0;
            question.play_mm = support.play_mm.value_or(0.0);
            question.overhung = is_overhung;
            question.carries = assessment.carries;
            for (std::size_t i = 0; i < caseCount(); ++i) {
                const SupportCase& here = assessment.cases[i];
                SupportLoad load;
                load.Fr_N = lifeRadial_N(s, i, 3.0); // ball or roller is not known yet; the means differ by about 1 %
                load.Fa_N = std::abs(here.axial_N);
                load.axial_sense = here.axial_N < 0.0 ? 1 : here.axial_N > 0.0 ? -1 : 0;
                load.speed_rpm = m_result.settled.load_cases[i].speed_rpm;
                load.time_share = m_result.settled.load_cases[i].time_share;
                load.tilt_judged_mrad = here.tilt_judged_mrad;
                load.peak_factor = m_result.settled.load_cases[i].peak_factor.value_or(1.0);
                load.Fr_static_N = load.peak_factor * (here.radial_N + here.worst_direction_N + here.rotating_N);
                const int index = static_cast<int>(s);
                if (index == m_roles.pair_plus || index == m_roles.pair_minus) {
                    const bool plus = index == m_roles.pair_plus;
                    load.partner_induced_N = m_induced[static_cast<std::size_t>(plus ? m_roles.pair_minus : m_roles.pair_plus)][i];
                    load.pushing_N = plus ? m_result.load_cases[i].K_N : -m_result.load_cases[i].K_N;
                }
                question.cases.push_back(load);
            }
            const auto& weights = m_arrangement.surroundings.weights;
            assessment.suggestions = suggest(question, m_result.settled, weights, m_catalogues);

            ChoiceSurroundings surroundings;
            surroundings.support_id = support.id.value;
            surroundings.support_name = assessment.name;
            surroundings.belt_on_shaft = belt;
            for (std::size_t other = 0; other < m_result.supports.size(); ++other) {
                if (other == s)
                    continue;
                for (const SupportCase& there : m_result.supports[other].cases)
                    surroundings.largest_Fr_elsewhere_N = std::max(surroundings.largest_Fr_elsewhere_N, there.radial_N);
            }
            const bool chosen = support.bearing && !support.bearing->rows.empty() && ratable(s);
            std::optional<Suggestion> judged;
            if (chosen)
                judged = judgeChoice(*support.bearing, question, m_result.settled, weights);
            take(choiceFindings(surroundings, question, m_result.settled, assessment.suggestions,
                                chosen ? &*support.bearing : nullptr, judged ? &*judged : nullptr, weights, m_catalogues));
        }
    }

    void finish()
    {
        Findings& findings = m_result.findings;
        // No number that is not finite leaves core, not even in a sentence.
        for (Finding& finding : findings) {
            for (auto& [name, value] : finding.values.entries) {
                if (const double* number = std::get_if<double>(&value); number != nullptr && !std::isfinite(*number))
                    value = std::string("not finite");
            }
        }
        for (Finding& finding : findings)
            finding.accepted = acceptedIn(m_arrangement, finding);
        std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
            return static_cast<int>(a.severity) < static_cast<int>(b.severity);
        });
    }
};

} // namespace

Assessment analyse(const Arrangement& arrangement, const Catalogues& catalogues)
{
    return Analysis(arrangement, catalogues).run();
}

BearingAssessment analyseSingleBearing(const SingleBearingInput& input, Findings& findings)
{
    if (input.loads.empty() || input.bearing.rows.empty())
        return {};
    std::vector<analysis::BearingLoad> loads;
    for (std::size_t i = 0; i < input.loads.size(); ++i) {
        const SingleBearingLoad& given = input.loads[i];
        analysis::BearingLoad load;
        load.case_id = CaseId(given.name.empty() ? "case" + std::to_string(i + 1) : given.name);
        load.case_name = given.name.empty() ? "Case " + std::to_string(i + 1) : given.name;
        load.Fr_N = load.Fr_static_N = given.Fr_N;
        load.Fa_N = load.Fa_static_N = given.Fa_N;
        load.speed_rpm = given.speed_rpm;
        load.time_share = given.time_share;
        if (axialSense(input.bearing.family) == AxialSense::none && given.Fa_N > 0.02 * given.Fr_N)
            load.sense_held = false;
        loads.push_back(load);
    }
    analysis::BearingContext context;
    context.subject = "bearing";
    context.path = "bearing";
    context.name = "stated_loads"; // word.stated_loads: stands where a support has its name
    context.required_L_h = input.required_L_h;
    context.reliability_percent = input.reliability_percent;
    context.required_S0 = input.required_S0;
    return analysis::assessBearing(input.bearing, loads, context, findings);
}

} // namespace shaftwright
