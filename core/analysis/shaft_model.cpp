#include "core/analysis/shaft_model.h"

#include "core/bearings/rating.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::analysis
{

beam::Model beamModel(const Arrangement& arrangement, const Settled& settled, const AxialRoles& roles)
{
    beam::Model model;
    double x_mm = 0.0;
    model.pieces.reserve(arrangement.shaft.segments.size());
    for (const Segment& segment : arrangement.shaft.segments) {
        model.pieces.push_back({x_mm, x_mm + segment.length_mm, segment.outer_mm, segment.outerRight_mm(), segment.boreLeft_mm(),
                                segment.boreRight_mm()});
        x_mm += segment.length_mm;
    }
    beam::Properties& properties = model.properties;
    properties.modulus_MPa = settled.material.modulus_MPa;
    properties.shear_modulus_MPa = settled.material.shear_modulus_MPa;
    properties.expansion_per_K = settled.material.expansion_per_K;
    properties.density_kg_m3 = settled.material.density_kg_m3;
    properties.shoulder_flexibility = settled.shoulder_flexibility;
    switch (settled.shear_factor) {
    case ShearModel::cowper:
        properties.shear = beam::Shear::cowper;
        break;
    case ShearModel::hutchinson:
        properties.shear = beam::Shear::hutchinson;
        break;
    case ShearModel::nine_tenths:
        properties.shear = beam::Shear::nine_tenths;
        break;
    case ShearModel::off:
        properties.shear = beam::Shear::off;
        break;
    }

    model.supports.reserve(arrangement.supports.size());
    for (std::size_t i = 0; i < arrangement.supports.size(); ++i) {
        const Support& support = arrangement.supports[i];
        beam::Support held;
        held.id = support.id.value;
        held.x_mm = support.x_mm;
        const bool axial_only = support.role == Role::axial_only || (support.bearing && !carriesRadial(support.bearing->family));
        if (support.bearing && !support.bearing->rows.empty() && !axial_only)
            held.centre_offset_mm = centreOffset_mm(*support.bearing, roles.supports[i].carries);
        held.rigid = {false, !axial_only, !axial_only, false, false};
        if (support.elastic && !axial_only) {
            // Stated directions are elastic; y and z without an entry stay rigid, tilting without an entry stays free.
            const Matrix5& K = support.elastic->stiffness;
            for (std::size_t row = 0; row < 5; ++row) {
                for (std::size_t column = 0; column < 5; ++column)
                    held.stiffness[row][column] = K[row][column];
            }
            const auto stated = [&](std::size_t k) {
                return std::any_of(K[k].begin(), K[k].end(), [](double entry) { return entry != 0.0; });
            };
            held.rigid[1] = !stated(1) && !support.gap;
            held.rigid[2] = !stated(2) && !support.gap;
        }
        if (support.gap && !axial_only) {
            held.gap = beam::Gap{support.gap->gap_mm, support.gap->stiffness, support.gap->exponent};
            held.rigid[1] = held.rigid[2] = false;
        }
        // x is switched per case by `holds_x`; an elastic axial entry takes the place of rigid.
        const bool could_hold = roles.supports[i].plus || roles.supports[i].minus;
        held.rigid[0] = could_hold && held.stiffness[0][0] == 0.0;
        if (!could_hold) {
            for (std::size_t k = 0; k < 5; ++k)
                held.stiffness[0][k] = held.stiffness[k][0] = 0.0;
        }
        if (support.prescribed) {
            const PrescribedDisplacement& given = *support.prescribed;
            held.prescribed = {given.x_mm, given.y_mm, given.z_mm, 1e-3 * given.ry_mrad, 1e-3 * given.rz_mrad};
        }
        model.supports.push_back(held);
    }
    return model;
}

Warmth warmthOf(const LoadCase& load_case, const Settled& settled)
{
    Warmth warmth;
    if (load_case.shaft_temperature_C)
        warmth.shaft_K = *load_case.shaft_temperature_C - settled.assembly_C;
    if (load_case.housing_temperature_C)
        warmth.housing_K = *load_case.housing_temperature_C - settled.assembly_C;
    return warmth;
}

void appendPart(beam::LoadCase& beam_case, const PartLoad& load)
{
    if (load.distributed) {
        beam_case.line_loads.push_back({load.x_mm,
                                        load.end_mm,
                                        {load.q0_N_mm.x, load.q0_N_mm.y, load.q0_N_mm.z},
                                        {load.q1_N_mm.x, load.q1_N_mm.y, load.q1_N_mm.z},
                                        load.m0_Nmm_mm,
                                        load.m1_Nmm_mm});
        return;
    }
    beam_case.point_loads.push_back(
        {load.x_mm, {load.force_N.x, load.force_N.y, load.force_N.z}, {load.moment_Nmm.x, load.moment_Nmm.y, load.moment_Nmm.z}});
}

beam::LoadCase beamCase(const Arrangement& arrangement, const Settled& settled, const LoadCase& load_case, const CaseLoads& loads,
                        int holder)
{
    beam::LoadCase result;
    result.id = load_case.id.value;
    for (const PartLoad& load : loads.parts)
        appendPart(result, load);
    result.gravity = {loads.gravity_m_s2.x, loads.gravity_m_s2.y, loads.gravity_m_s2.z};
    result.holds_x.assign(arrangement.supports.size(), false);
    if (holder >= 0)
        result.holds_x[static_cast<std::size_t>(holder)] = true;
    const Warmth warmth = warmthOf(load_case, settled);
    result.temperature_rise_K = warmth.shaft_K;
    if (warmth.housing_K != 0.0) {
        const double reference_mm = holder >= 0 ? arrangement.supports[static_cast<std::size_t>(holder)].x_mm : 0.0;
        for (const Support& support : arrangement.supports)
            result.prescribed.push_back(
                {settled.housing_expansion_per_K * warmth.housing_K * (support.x_mm - reference_mm), 0, 0, 0, 0});
    }
    return result;
}

} // namespace shaftwright::analysis
