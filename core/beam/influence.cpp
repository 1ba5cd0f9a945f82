// Influence lines of the reactions by reciprocity (Betti, Maxwell, Mueller-Breslau): impose a unit displacement of one
// restrained component of a support; the deflected shape, with a minus sign, is that component's reaction to unit loads.
// The rule is one for rigid and elastic supports, since a unit displacement of an elastic support's bore does the same.

#include "core/beam/beam.h"

#include "core/beam/gap_law.h"

namespace shaftwright::beam
{

InfluenceBasis influenceBasis(const Solution& solution, std::size_t case_index)
{
    InfluenceBasis basis;
    if (case_index >= solution.cases.size())
        return basis;
    const CaseResult& at = solution.cases[case_index];
    basis.support_count = solution.model.supports.size();

    // The same shaft with the supports' tangents of that case, nothing prescribed.
    Model model = solution.model;
    for (std::size_t s = 0; s < model.supports.size(); ++s) {
        Support& support = model.supports[s];
        if (support.gap) {
            const Reaction& r = at.reactions[s];
            const Vec5& bore = at.prescribed[s];
            const GapForce f =
                gapForce(*support.gap, Eigen::Vector2d(r.displacement_mm[1] - bore[1], r.displacement_mm[2] - bore[2]));
            for (std::size_t i = 0; i < 2; ++i) {
                for (std::size_t j = 0; j < 2; ++j)
                    support.stiffness[1 + i][1 + j] = f.tangent(Eigen::Index(i), Eigen::Index(j));
            }
            support.gap.reset();
        }
        support.prescribed = {};
        const bool holds = at.holds_x.empty() || at.holds_x[s];
        const bool fixedHere = at.axially_free && s == 0;
        if (!holds || fixedHere) {
            support.rigid[0] = fixedHere;
            for (std::size_t d = 0; d < 5; ++d)
                support.stiffness[0][d] = support.stiffness[d][0] = 0.0;
        }
    }
    std::vector<LoadCase> cases;
    for (std::size_t s = 0; s < model.supports.size(); ++s) {
        const Support& support = model.supports[s];
        for (std::size_t d = 0; d < 5; ++d) {
            bool acts = support.rigid[d];
            for (std::size_t other = 0; other < 5; ++other)
                acts = acts || support.stiffness[d][other] != 0.0;
            if (!acts)
                continue;
            LoadCase unit;
            unit.prescribed.assign(model.supports.size(), Vec5{});
            unit.prescribed[s][d] = 1.0;
            basis.components.push_back({s, d});
            cases.push_back(std::move(unit));
        }
    }
    basis.unit = solve(model, cases);
    if (!basis.unit.usable())
        basis.components.clear();
    return basis;
}

InfluenceShapes influenceAt(const InfluenceBasis& basis, double x_mm)
{
    InfluenceShapes shapes;
    for (auto* list : {&shapes.reaction_per_fx, &shapes.reaction_per_fy, &shapes.reaction_per_fz, &shapes.reaction_per_my,
                       &shapes.reaction_per_mz})
        list->assign(basis.support_count, Vec5{});
    for (std::size_t k = 0; k < basis.components.size(); ++k) {
        const auto [s, d] = basis.components[k];
        const State g = stateAt(basis.unit, k, x_mm, Side::right);
        shapes.reaction_per_fx[s][d] = -g.u_mm;
        shapes.reaction_per_fy[s][d] = -g.v_mm;
        shapes.reaction_per_fz[s][d] = -g.w_mm;
        shapes.reaction_per_my[s][d] = -g.ry_rad;
        shapes.reaction_per_mz[s][d] = -g.rz_rad;
    }
    return shapes;
}

InfluenceShapes influenceAt(const Solution& solution, std::size_t case_index, double x_mm)
{
    return influenceAt(influenceBasis(solution, case_index), x_mm);
}

} // namespace shaftwright::beam
