// The beam from end to end: check, mesh, mechanisms, one factorisation for each group of cases, recovery, extremes.

#include "core/beam/beam.h"

#include "core/beam/extremes.h"
#include "core/beam/gap_law.h"
#include "core/beam/mechanism.h"
#include "core/beam/model_check.h"
#include "core/beam/recovery.h"
#include "core/beam/section.h"
#include "core/beam/solve_given_sections.h"
#include "core/beam/system.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::beam
{

namespace
{

constexpr double kBalanceTolerance = 1e-9;
constexpr std::size_t kManyNodes = 2000;

std::optional<std::string> caseId(const LoadCase& loadCase)
{
    return loadCase.id.empty() ? std::nullopt : std::optional<std::string>(loadCase.id);
}

// Beam theory itself is doubtful on a loaded span shorter than the shaft is thick.
void noteStubbySpans(const Model& model, std::span<const LoadCase> cases, Findings& findings)
{
    std::vector<const Support*> radial;
    for (const Support& s : model.supports) {
        if (s.rigid[1] || s.rigid[2] || s.gap || s.stiffness[1][1] > 0.0 || s.stiffness[2][2] > 0.0)
            radial.push_back(&s);
    }
    std::sort(radial.begin(), radial.end(), [](const Support* a, const Support* b) { return a->x_mm < b->x_mm; });
    for (std::size_t k = 0; k + 1 < radial.size(); ++k) {
        const double from = radial[k]->x_mm, to = radial[k + 1]->x_mm;
        bool loaded = false;
        for (const LoadCase& c : cases) {
            for (const PointLoad& p : c.point_loads)
                loaded = loaded || (p.x_mm > from && p.x_mm < to);
            for (const LineLoad& q : c.line_loads)
                loaded = loaded || (q.x0_mm < to && q.x1_mm > from);
        }
        double outer = 0.0;
        for (const Piece& p : model.pieces) {
            if (p.x0_mm < to && p.x1_mm > from)
                outer = std::max({outer, p.outer0_mm, p.outer1_mm});
        }
        if (loaded && to - from < outer)
            findings.push_back(
                {Severity::note,
                 "span-stubby",
                 radial[k]->id,
                 "supports." + radial[k]->id + ".x_mm",
                 {},
                 {{"support", radial[k]->id}, {"other_support", radial[k + 1]->id}, {"span_mm", to - from}, {"outer_mm", outer}},
                 "",
                 ""});
    }
}

bool allFinite(const CaseResult& result)
{
    const auto finite = [](const State& s) {
        return std::isfinite(s.u_mm) && std::isfinite(s.v_mm) && std::isfinite(s.w_mm) && std::isfinite(s.rx_rad) &&
               std::isfinite(s.ry_rad) && std::isfinite(s.rz_rad) && std::isfinite(s.N_N) && std::isfinite(s.Vy_N) &&
               std::isfinite(s.Vz_N) && std::isfinite(s.T_Nmm) && std::isfinite(s.My_Nmm) && std::isfinite(s.Mz_Nmm);
    };
    return std::all_of(result.stations.begin(), result.stations.end(), finite);
}

void judge(const Model& model, const LoadCase& loadCase, const CaseResult& result, double length_mm, Findings& findings)
{
    if (result.deflection_mm.value > 0.01 * length_mm || result.slope_rad.value > 0.05)
        findings.push_back({Severity::caution,
                            "shaft-large-deflection",
                            "",
                            "shaft",
                            caseId(loadCase),
                            {{"deflection_mm", result.deflection_mm.value},
                             {"x_mm", result.deflection_mm.x_mm},
                             {"slope_mrad", 1000.0 * result.slope_rad.value},
                             {"length_mm", length_mm}},
                            "",
                            ""});
    for (std::size_t s = 0; s < model.supports.size(); ++s) {
        if (!result.reactions[s].in_contact)
            findings.push_back({Severity::caution,
                                "bearing-unloaded",
                                model.supports[s].id,
                                "supports." + model.supports[s].id,
                                caseId(loadCase),
                                {{"support", model.supports[s].id}},
                                "gap-open",
                                ""});
    }
}

Solution solveAll(const Model& model, std::span<const LoadCase> cases, std::span<const Flexibility> given)
{
    Solution solution;
    solution.model = model;
    solution.findings = checkModel(model, cases);
    if (hasStop(solution.findings))
        return solution;
    solution.length_mm = model.pieces.back().x1_mm - model.pieces.front().x0_mm;
    solution.mass_kg = mass_kg(model);
    solution.determinate = isDeterminate(model);

    // Cases that hold the same supports axially share a factorisation.
    struct Group {
        std::vector<bool> holds_x;
        std::vector<std::size_t> cases;
        bool axially_free = false;
    };
    std::vector<Group> groups;
    for (std::size_t c = 0; c < cases.size(); ++c) {
        std::vector<bool> holds = cases[c].holds_x;
        holds.resize(model.supports.size(), true);
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& g) { return g.holds_x == holds; });
        if (same != groups.end())
            same->cases.push_back(c);
        else
            groups.push_back({std::move(holds), {c}, false});
    }
    if (groups.empty())
        groups.push_back({std::vector<bool>(model.supports.size(), true), {}, false});
    for (Group& group : groups) {
        const MechanismReport report = findMechanisms(model, group.holds_x);
        group.axially_free = report.axially_free;
        for (const Finding& f : report.findings) {
            if (std::find(solution.findings.begin(), solution.findings.end(), f) == solution.findings.end())
                solution.findings.push_back(f);
        }
    }
    if (hasStop(solution.findings))
        return solution;
    noteStubbySpans(model, cases, solution.findings);

    const Mesh mesh = makeMesh(model, cases, given);
    solution.node_x_mm = mesh.x_mm;
    solution.merged_x_mm = mesh.merged_x_mm;
    if (mesh.nodes() > kManyNodes)
        solution.findings.push_back(
            {Severity::note, "shaft-too-many-nodes", "", "shaft", {}, {{"nodes", static_cast<double>(mesh.nodes())}}, "", ""});
    const std::vector<std::size_t> mains = mainNodes(mesh);
    const std::vector<Span> spans = makeSpans(mesh, mains);
    const bool anyGap =
        std::any_of(model.supports.begin(), model.supports.end(), [](const Support& s) { return s.gap.has_value(); });

    solution.cases.resize(cases.size());
    Findings stops;
    LinearSystem system;
    std::vector<Vec6> rhs, seats;
    for (const Group& group : groups) {
        if (group.cases.empty())
            continue;
        system.assemble(spans, makeRestraints(model, mesh, mains, group.holds_x, group.axially_free));
        if (!anyGap && !system.factorise()) {
            stops.push_back({Severity::stop, "internal-balance", "", "supports", {}, {}, "pivot", ""});
            break;
        }
        for (const std::size_t c : group.cases) {
            const LoadCase& loadCase = cases[c];
            const CaseData data = makeCaseData(mesh, mains, spans, loadCase, model);
            system.makeRightSide(mains, data, rhs);
            std::vector<bool> contact(model.supports.size(), true);
            GapSolution gaps;
            if (anyGap) {
                gaps = solveWithGaps(system, rhs, data.prescribed, seats);
                if (!gaps.restrained) {
                    stops.push_back({Severity::stop, "shaft-unsupported", "", "supports", caseId(loadCase), {}, "gaps-open", ""});
                    continue;
                }
                if (!gaps.converged) {
                    stops.push_back({Severity::stop,
                                     "internal-balance",
                                     "",
                                     "supports",
                                     caseId(loadCase),
                                     {{"steps", static_cast<double>(gaps.steps)}},
                                     "newton",
                                     ""});
                    continue;
                }
                for (std::size_t s = 0; s < model.supports.size(); ++s) {
                    if (!model.supports[s].gap)
                        continue;
                    const Vec6& q = seats[system.restraints()[s].main];
                    contact[s] =
                        std::hypot(q[kV] - data.prescribed[s][1], q[kW] - data.prescribed[s][2]) > model.supports[s].gap->gap_mm;
                }
            } else {
                seats = rhs;
                system.solve(seats);
            }
            std::vector<Vec6> shaft = seats;
            system.toShaft(shaft);
            CaseResult& result = solution.cases[c];
            result = recover(mesh, mains, spans, system.restraints(), data, shaft, contact);
            if (!anyGap && std::max(result.balance_force, result.balance_moment) > kBalanceTolerance) {
                system.refine(seats, rhs);
                shaft = seats;
                system.toShaft(shaft);
                result = recover(mesh, mains, spans, system.restraints(), data, shaft, contact);
            }
            if (!allFinite(result) || !(std::max(result.balance_force, result.balance_moment) <= kBalanceTolerance)) {
                stops.push_back({Severity::stop,
                                 "internal-balance",
                                 "",
                                 "shaft",
                                 caseId(loadCase),
                                 {{"balance_force", result.balance_force}, {"balance_moment", result.balance_moment}},
                                 allFinite(result) ? "" : "not-finite",
                                 ""});
                continue;
            }
            result.newton_steps = gaps.steps;
            result.axially_free = group.axially_free;
            result.holds_x = group.holds_x;
            result.prescribed = data.prescribed;
            findExtremes(mesh, result);
            judge(model, loadCase, result, solution.length_mm, solution.findings);
        }
    }
    if (!stops.empty()) {
        solution.cases.clear();
        solution.findings.insert(solution.findings.end(), stops.begin(), stops.end());
    }
    return solution;
}

// The element in which x lies on the given side, and the distance from its left node.
std::size_t elementAt(const Solution& solution, double x_mm, Side side)
{
    const auto& xs = solution.node_x_mm;
    const auto above =
        side == Side::right ? std::upper_bound(xs.begin(), xs.end(), x_mm) : std::lower_bound(xs.begin(), xs.end(), x_mm);
    const auto node = static_cast<std::size_t>(above - xs.begin());
    return std::clamp<std::size_t>(node, 1, xs.size() - 1) - 1;
}

Element elementOf(const Solution& solution, std::size_t e)
{
    const double x0 = solution.node_x_mm[e], x1 = solution.node_x_mm[e + 1];
    const Piece& piece = solution.model.pieces[pieceAt(solution.model, 0.5 * (x0 + x1))];
    return makeElement(piece, solution.model.properties, x0, x1, nullptr);
}

} // namespace

Solution solve(const Model& model, std::span<const LoadCase> cases)
{
    return solveAll(model, cases, {});
}

Solution solveWithGivenSections(const Model& model, std::span<const LoadCase> cases, std::span<const Flexibility> given)
{
    return solveAll(model, cases, given);
}

State stateAt(const Solution& solution, std::size_t case_index, double x_mm, Side side)
{
    const CaseResult& result = solution.cases.at(case_index);
    const auto& xs = solution.node_x_mm;
    const double x = std::isfinite(x_mm) ? std::clamp(x_mm, xs.front(), xs.back()) : xs.front();
    const std::size_t e = elementAt(solution, x, side);
    // At a node itself the stored limit, so that both sides of a jump are the ones of the stations.
    if (x == xs[e])
        return result.stations[2 * e + (side == Side::right ? 1 : 0)];
    if (x == xs[e + 1])
        return result.stations[2 * (e + 1) + (side == Side::right ? 1 : 0)];
    return advance(elementOf(solution, e), result.stations[2 * e + 1], result.element_loads[e], result.temperature_rise_K,
                   x - xs[e]);
}

std::vector<State> sample(const Solution& solution, std::size_t case_index, int per_element)
{
    const CaseResult& result = solution.cases.at(case_index);
    const std::size_t elements = solution.node_x_mm.size() - 1;
    std::vector<State> states;
    states.reserve(result.stations.size() + elements * static_cast<std::size_t>(std::max(per_element, 0)));
    states.push_back(result.stations.front());
    for (std::size_t e = 0; e < elements; ++e) {
        const State& start = result.stations[2 * e + 1];
        states.push_back(start);
        const Element element = elementOf(solution, e);
        for (int k = 1; k <= per_element; ++k)
            states.push_back(advance(element, start, result.element_loads[e], result.temperature_rise_K,
                                     element.length_mm * k / (per_element + 1)));
        states.push_back(result.stations[2 * e + 2]);
    }
    states.push_back(result.stations.back());
    return states;
}

} // namespace shaftwright::beam
