#include "core/analysis/shares.h"

#include "core/analysis/shaft_model.h"

#include <algorithm>
#include <cmath>

namespace shaftwright
{
namespace
{

/// A case without loads, held along the axis as the assessment had it.
beam::LoadCase emptyCase(const Assessment& assessment, std::size_t case_index)
{
    beam::LoadCase result;
    result.holds_x.assign(assessment.supports.size(), false);
    if (const int holder = assessment.load_cases[case_index].axial_holder; holder >= 0)
        result.holds_x[static_cast<std::size_t>(holder)] = true;
    return result;
}

} // namespace

ShareTable loadShares(const Assessment& assessment, std::size_t case_index)
{
    ShareTable table;
    if (!assessment.beam.usable() || case_index >= assessment.beam.cases.size())
        return table;
    const beam::Model& model = assessment.beam.model;
    const bool linear =
        std::none_of(model.supports.begin(), model.supports.end(), [](const beam::Support& support) { return support.gap; });
    if (!linear)
        return table;

    beam::Model still = model;
    for (beam::Support& support : still.supports)
        support.prescribed = {};
    const CaseLoads& loads = assessment.loads[case_index];
    std::vector<beam::LoadCase> cases;
    const beam::LoadCase base = emptyCase(assessment, case_index);
    for (const PartLoad& load : loads.parts) {
        if (!table.sources.empty() && table.sources.back() == load.part.value) {
            analysis::appendPart(cases.back(), load); // the meshes of an idler are one source
            continue;
        }
        beam::LoadCase one = base;
        analysis::appendPart(one, load);
        cases.push_back(std::move(one));
        table.sources.push_back(load.part.value);
    }
    if (loads.gravity_m_s2 != Vector3{}) {
        beam::LoadCase weight = base;
        weight.gravity = {loads.gravity_m_s2.x, loads.gravity_m_s2.y, loads.gravity_m_s2.z};
        cases.push_back(std::move(weight));
        table.sources.push_back("own_weight");
    }
    beam::Solution shares;
    if (!cases.empty())
        shares = beam::solve(still, cases);
    if (!cases.empty() && !shares.usable())
        return table;
    const bool displaced = std::any_of(model.supports.begin(), model.supports.end(), [](const beam::Support& support) {
        return std::any_of(support.prescribed.begin(), support.prescribed.end(), [](double value) { return value != 0.0; });
    });
    if (displaced) {
        const std::vector<beam::LoadCase> nothing{base};
        const beam::Solution moved = beam::solve(model, nothing);
        if (!moved.usable())
            return table;
        shares.cases.push_back(moved.cases.front());
        table.sources.push_back("displacement");
    }

    table.supports.resize(assessment.supports.size());
    table.sums.resize(assessment.supports.size());
    bool any_pair = false;
    for (std::size_t s = 0; s < assessment.supports.size(); ++s) {
        LoadShare& sum = table.sums[s];
        sum.source = "sum";
        for (std::size_t k = 0; k < table.sources.size(); ++k) {
            const beam::Reaction& reaction = shares.cases[k].reactions[s];
            LoadShare share{table.sources[k],
                            {reaction.force_N[0], reaction.force_N[1], reaction.force_N[2]},
                            reaction.my_Nmm,
                            reaction.mz_Nmm};
            sum.force_N.x += share.force_N.x;
            sum.force_N.y += share.force_N.y;
            sum.force_N.z += share.force_N.z;
            sum.moment_y_Nmm += share.moment_y_Nmm;
            sum.moment_z_Nmm += share.moment_z_Nmm;
            table.supports[s].push_back(std::move(share));
        }
        any_pair = any_pair || std::abs(sum.force_N.x - assessment.supports[s].cases[case_index].axial_N) > 1e-6;
    }
    if (any_pair) {
        // The axial force that the two bearings of an adjusted pair put on each other belongs to no single load.
        table.sources.push_back("pair");
        for (std::size_t s = 0; s < assessment.supports.size(); ++s) {
            const double rest_N = assessment.supports[s].cases[case_index].axial_N - table.sums[s].force_N.x;
            table.supports[s].push_back({"pair", {rest_N, 0.0, 0.0}, 0.0, 0.0});
            table.sums[s].force_N.x += rest_N;
        }
    }
    table.valid = true;
    return table;
}

namespace
{

/// One force of the statics in one plane.
struct PlaneLoad {
    std::string name;
    double x_mm = 0.0, force_N = 0.0, moment_Nmm = 0.0; ///< moment about the axis normal to the plane, as it enters the sum
};

} // namespace

std::vector<HandStatics> handStatics(const Assessment& assessment, std::size_t case_index)
{
    std::vector<HandStatics> result;
    if (!assessment.beam.usable() || !assessment.beam.determinate || case_index >= assessment.loads.size())
        return result;
    std::vector<const SupportAssessment*> radial;
    for (std::size_t s = 0; s < assessment.supports.size(); ++s) {
        const beam::Support& held = assessment.beam.model.supports[s];
        if (held.rigid[1] || held.stiffness[1][1] > 0.0 || held.gap) // a thrust bearing holds nothing across
            radial.push_back(&assessment.supports[s]);
    }
    if (radial.size() != 2)
        return result;
    const SupportAssessment& A = *radial[0];
    const SupportAssessment& B = *radial[1];
    const double l_mm = B.centre_x_mm - A.centre_x_mm;
    if (l_mm == 0.0)
        return result;
    const CaseLoads& loads = assessment.loads[case_index];

    for (const StaticsPlane plane : {StaticsPlane::y, StaticsPlane::z}) {
        const bool in_y = plane == StaticsPlane::y;
        std::vector<PlaneLoad> forces;
        const auto add = [&](std::string name, double x_mm, double F, double M) {
            if (F == 0.0 && M == 0.0)
                return;
            for (PlaneLoad& force : forces) {
                if (force.name == name && force.x_mm == x_mm) { // the meshes of an idler are one part
                    force.force_N += F;
                    force.moment_Nmm += M;
                    return;
                }
            }
            forces.push_back({std::move(name), x_mm, F, M});
        };
        // A couple Mz turns as a force pair in y does; My turns the other way round in z.
        for (const PartLoad& load : loads.parts) {
            if (load.distributed) {
                const double length = load.end_mm - load.x_mm;
                const double q0 = in_y ? load.q0_N_mm.y : load.q0_N_mm.z;
                const double q1 = in_y ? load.q1_N_mm.y : load.q1_N_mm.z;
                const double Q = 0.5 * (q0 + q1) * length;
                const double about_start = length * length * (q0 + 2.0 * q1) / 6.0;
                if (Q != 0.0)
                    add(load.part.value, load.x_mm + about_start / Q, Q, 0.0); // resultant at its centre
                else
                    add(load.part.value, load.x_mm, 0.0, about_start);
            } else {
                add(load.part.value, load.x_mm, in_y ? load.force_N.y : load.force_N.z,
                    in_y ? load.moment_Nmm.z : -load.moment_Nmm.y);
            }
        }
        const double g = in_y ? loads.gravity_m_s2.y : loads.gravity_m_s2.z;
        if (g != 0.0) {
            // Weight of the shaft in its centre of gravity, from the pieces of the beam.
            double volume = 0.0;
            double first = 0.0;
            for (const beam::Piece& piece : assessment.beam.model.pieces) {
                const double l = piece.x1_mm - piece.x0_mm;
                const auto frustum = [&](double a, double b) {
                    return l / 12.0 * 3.14159265358979323846 * (a * a + a * b + b * b);
                };
                const auto lever = [&](double a, double b) {
                    return l * l / 48.0 * 3.14159265358979323846 * (a * a + 2.0 * a * b + 3.0 * b * b);
                };
                const double v = frustum(piece.outer0_mm, piece.outer1_mm) - frustum(piece.bore0_mm, piece.bore1_mm);
                volume += v;
                first += v * piece.x0_mm + lever(piece.outer0_mm, piece.outer1_mm) - lever(piece.bore0_mm, piece.bore1_mm);
            }
            const double W = volume * 1e-9 * assessment.beam.model.properties.density_kg_m3 * g;
            add("own_weight", first / volume, W, 0.0);
        }
        if (forces.empty())
            continue;
        HandStatics hand;
        hand.plane = plane;
        const char* symbol_A = in_y ? "Ay" : "Az";
        const char* symbol_B = in_y ? "By" : "Bz";
        double moment_A = 0.0; // of all loads about A
        double sum_F = 0.0;
        NamedValues terms;
        std::string moments;
        std::string sum;
        for (const PlaneLoad& force : forces) {
            const double arm = force.x_mm - A.centre_x_mm;
            moment_A += force.force_N * arm + force.moment_Nmm;
            sum_F += force.force_N;
            // Written out as one would by hand: every force with its arm about A, every couple.
            const std::string F = "F_" + force.name;
            if (force.force_N != 0.0) {
                terms.set(F, force.force_N);
                terms.set("a_" + force.name, arm);
                moments += (moments.empty() ? "" : " + ") + F + " a_" + force.name;
                sum += (sum.empty() ? "" : " + ") + F;
            }
            if (force.moment_Nmm != 0.0) {
                terms.set("M_" + force.name, force.moment_Nmm);
                moments += (moments.empty() ? "M_" : " + M_") + force.name;
            }
        }
        const double R_B = -moment_A / l_mm;
        const double R_A = -sum_F - R_B;
        terms.set("l", l_mm);
        hand.steps.push_back(
            {"statics_moments", symbol_B, "-(" + moments + ") / l", terms, R_B, "N", "sum of moments about A is zero"});
        NamedValues sums;
        for (const PlaneLoad& force : forces) {
            if (force.force_N != 0.0)
                sums.set("F_" + force.name, force.force_N);
        }
        sums.set(symbol_B, R_B);
        hand.steps.push_back({"statics_forces", symbol_A,
                              sum.empty() ? std::string("-") + symbol_B : "-(" + sum + ") - " + symbol_B, sums, R_A, "N",
                              "sum of forces is zero"});
        result.push_back(std::move(hand));
    }
    if (const double K_N = assessment.load_cases[case_index].K_N; K_N != 0.0) {
        HandStatics axial;
        axial.plane = StaticsPlane::x;
        NamedValues terms;
        std::string sum;
        const auto add = [&](const std::string& name, double F) {
            if (F == 0.0)
                return;
            // The meshes of an idler are one part.
            const TextValue* before = terms.find("Fx_" + name);
            if (before == nullptr)
                sum += (sum.empty() ? "Fx_" : " + Fx_") + name;
            terms.set("Fx_" + name, F + (before != nullptr ? std::get<double>(*before) : 0.0));
        };
        for (const PartLoad& load : loads.parts)
            add(load.part.value,
                load.distributed ? 0.5 * (load.q0_N_mm.x + load.q1_N_mm.x) * (load.end_mm - load.x_mm) : load.force_N.x);
        add("own_weight", assessment.beam.mass_kg * loads.gravity_m_s2.x);
        axial.steps.push_back({"statics_axial", "K", sum, terms, K_N, "N", "sum of the external axial forces"});
        result.push_back(std::move(axial));
    }
    return result;
}

} // namespace shaftwright
