#include "core/loads/part_forces.h"

#include "core/loads/part_builder.h"

#include <cmath>

namespace shaftwright::loads
{
namespace
{

/// The weight joins the part's own load, so that one arrow and one row stand for one part.
void addWeight(PartBuilder& build, std::vector<PartLoad>& loads, std::size_t first)
{
    if (!build.part().mass_kg)
        return;
    const double mass_kg = *build.part().mass_kg;
    if (!(mass_kg > 0.0)) {
        if (!build.stopped())
            build.stop("weight-value", "mass_kg", {{"value", mass_kg}}, "", "mass");
        loads.resize(first);
        return;
    }
    if (build.stopped())
        return;
    const Vector3& g = build.context().gravity_m_s2;
    const double g_m_s2 = std::hypot(g.x, g.z);
    if (loads.size() == first || loads.back().distributed) {
        PartLoad load = build.blank();
        if (loads.size() > first)
            load.x_mm = 0.5 * (loads.back().x_mm + loads.back().end_mm);
        loads.push_back(std::move(load));
    }
    PartLoad& load = loads.back();
    load.force_N.x += mass_kg * g.x;
    load.force_N.y += mass_kg * g.y;
    load.force_N.z += mass_kg * g.z;
    step(load, "weight", "W", "m g", {{"m", mass_kg}, {"g", g_m_s2}}, mass_kg * g_m_s2, "N",
         "standard gravity 9.80665 m/s\u00b2");
    if (!std::isfinite(load.force_N.x) || !std::isfinite(load.force_N.z)) {
        build.stop("weight-value", "mass_kg", {{"value", mass_kg}}, "", "mass");
        loads.resize(first);
    }
}

} // namespace

void appendPartLoads(const PartContext& context, std::vector<PartLoad>& loads)
{
    const std::size_t first = loads.size();
    PartBuilder build(context, loads);
    if (context.active)
        std::visit([&](const auto& body) { addPart(build, body); }, context.part->body);
    if (build.stopped())
        loads.resize(first); // one mesh of an idler may have been fine
    addWeight(build, loads, first);
}

} // namespace shaftwright::loads

namespace shaftwright
{

double actingDiameter_mm(const Part& part)
{
    struct Diameter {
        double operator()(const CylindricalGear& gear) const
        {
            if (gear.working_diameter_mm)
                return *gear.working_diameter_mm;
            return gear.teeth * gear.normal_module_mm / std::cos(gear.helix_deg * loads::degree);
        }
        double operator()(const BevelGear& gear) const
        {
            if (gear.mean_diameter_mm)
                return *gear.mean_diameter_mm;
            return gear.teeth * gear.outer_module_mm - gear.face_width_mm * std::sin(gear.cone_angle_deg * loads::degree);
        }
        double operator()(const Worm& worm) const { return worm.reference_diameter_mm; }
        double operator()(const WormWheel& wheel) const { return wheel.reference_diameter_mm; }
        double operator()(const BeltPulley& pulley) const { return pulley.diameter_mm; }
        double operator()(const ChainSprocket& sprocket) const
        {
            return sprocket.teeth > 0 ? sprocket.pitch_mm / std::sin(std::numbers::pi / sprocket.teeth) : 0.0;
        }
        double operator()(const Coupling& coupling) const { return coupling.outer_mm; }
        double operator()(const Impeller& impeller) const { return impeller.outer_mm; }
        double operator()(const WeightBody& weight) const { return weight.outer_mm; }
        double operator()(const PointLoad&) const { return 0.0; }
        double operator()(const DistributedLoad&) const { return 0.0; }
    };
    return std::visit(Diameter{}, part.body);
}

} // namespace shaftwright
