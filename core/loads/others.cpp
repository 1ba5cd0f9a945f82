// Coupling, impeller, weight and free loads.
#include "core/loads/part_builder.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace shaftwright::loads
{
namespace
{

/// A torque that could not be settled leaves the part's other loads as they are: a stop says so, bending is still solved.
bool addTorque(PartBuilder& build, PartLoad& load)
{
    const MeshTorque* torque = build.torque(0);
    if (torque == nullptr)
        return false;
    load.moment_Nmm.x += torque->Mx_Nmm;
    load.torque_Nmm = torque->Mx_Nmm;
    build.torqueSteps(load, 0);
    return true;
}

bool refuseNegative(PartBuilder& build, const std::optional<double>& value, const char* input)
{
    if (!value || *value >= 0.0)
        return false;
    build.stop("value-invalid", input,
               {{"path", "parts." + build.part().id.value + "." + input}, {"value", *value}, {"low", 0.0}, {"high", 1e9}});
    return true;
}

/// Couple of Hooke's joint on this shaft: T' (1, tan theta sin^2 a, -tan theta sin a cos a) in (e_x', e_j, e_x' x e_j), e_x' away
/// from this shaft, T' = Mx (e_x' . e_x). Its mean stands still along e_j, half as large as the greatest; the other half turns at
/// twice the speed. Derived: the cross carries a couple normal to its plane only; it gives the known ratio of speeds.
void addJoint(PartBuilder& build, const Coupling& coupling, PartLoad& load)
{
    const double theta_deg = *coupling.joint_angle_deg;
    if (!(theta_deg >= 0.0 && theta_deg <= 45.0)) {
        build.stop("cardan-angle", "joint_angle_deg", {{"joint_angle_deg", theta_deg}, {"limit", 45.0}});
        return;
    }
    if (theta_deg > 15.0)
        build.report(Severity::caution, "cardan-angle", "joint_angle_deg", {{"joint_angle_deg", theta_deg}, {"limit", 15.0}},
                     "common practice");
    const double T = load.torque_Nmm;
    const double greatest_Nmm = std::abs(T) * std::tan(theta_deg * degree);
    if (coupling.joint_direction_deg) {
        // The joint stands at the nearer end of the shaft.
        const double away = build.part().x_mm < 0.5 * build.context().shaft_length_mm ? -1.0 : 1.0;
        const double mean_Nmm = 0.5 * away * T * std::tan(theta_deg * degree);
        const Directions at(*coupling.joint_direction_deg);
        load.moment_Nmm.y += mean_Nmm * at.cosine;
        load.moment_Nmm.z += mean_Nmm * at.sine;
        load.worst_moment_Nmm = 0.5 * greatest_Nmm;
    } else {
        load.worst_moment_Nmm = greatest_Nmm;
    }
    step(load, "cardan_couple", "M", "T tan theta", {{"T", std::abs(T)}, {"theta", theta_deg}}, greatest_Nmm, "N\u00b7mm",
         "statics of the cross of Hooke's joint");
}

} // namespace

void addPart(PartBuilder& build, const Coupling& coupling)
{
    if (refuseNegative(build, coupling.radial_force_N, "radial_force_N"))
        return;
    PartLoad load = build.blank();
    const bool torque = addTorque(build, load);
    const bool forces = coupling.radial_force_N || coupling.axial_force_N || coupling.bending_moment_Nmm;
    if (!torque && !forces) {
        if (!build.part().drive)
            build.stop("part-torque-missing", "drive", {});
        return;
    }
    if (coupling.radial_force_N) {
        if (const auto* given = std::get_if<GivenDirection>(&coupling.radial_direction)) {
            const Directions at(given->angle_deg);
            load.force_N.y += *coupling.radial_force_N * at.cosine;
            load.force_N.z += *coupling.radial_force_N * at.sine;
        } else {
            load.worst_direction_N = *coupling.radial_force_N;
        }
    }
    if (coupling.axial_force_N) {
        load.force_N.x += *coupling.axial_force_N;
        load.axial_N = *coupling.axial_force_N;
    }
    if (coupling.bending_moment_Nmm) {
        const Directions at(coupling.bending_moment_axis_deg.value_or(0.0));
        load.moment_Nmm.y += *coupling.bending_moment_Nmm * at.cosine;
        load.moment_Nmm.z += *coupling.bending_moment_Nmm * at.sine;
    }
    if (coupling.joint_angle_deg)
        addJoint(build, coupling, load);
    if (!build.stopped())
        build.push(std::move(load));
}

void addPart(PartBuilder& build, const Impeller& impeller)
{
    if (refuseNegative(build, impeller.rotating_radial_N, "rotating_radial_N"))
        return;
    PartLoad load = build.blank();
    addTorque(build, load);
    const double f = build.loadCase().free_load_factor;
    load.force_N = {f * impeller.thrust_N, f * impeller.radial_y_N, f * impeller.radial_z_N};
    load.moment_Nmm.y += f * impeller.offset_z_mm * impeller.thrust_N;
    load.moment_Nmm.z -= f * impeller.offset_y_mm * impeller.thrust_N;
    load.axial_N = load.force_N.x;
    if (impeller.rotating_radial_N)
        load.rotating_force_N.y = std::abs(f) * *impeller.rotating_radial_N;
    build.push(std::move(load));
}

void addPart(PartBuilder& build, const WeightBody& weight)
{
    const double mass_kg = build.part().mass_kg.value_or(0.0);
    if (!(mass_kg > 0.0)) {
        build.stop("weight-value", "mass_kg", {{"value", mass_kg}}, "", "mass");
        return;
    }
    const double omega = 2.0 * std::numbers::pi * std::abs(build.loadCase().speed_rpm) / 60.0;
    double U_kg_mm = 0.0;
    if (const auto* grade = std::get_if<BalanceGrade>(&weight.unbalance)) {
        // Balance quality grades of ISO 21940-11.
        static constexpr std::array<double, 11> grades = {0.4, 1.0, 2.5, 6.3, 16.0, 40.0, 100.0, 250.0, 630.0, 1600.0, 4000.0};
        const bool known =
            std::any_of(grades.begin(), grades.end(), [&](double g) { return std::abs(grade->mm_s - g) <= 1e-9 * g; });
        if (!known) {
            build.stop("weight-value", "unbalance", {{"value", grade->mm_s}}, "ISO 21940-11", "grade");
            return;
        }
        U_kg_mm = omega > 0.0 ? mass_kg * grade->mm_s / omega : 0.0;
    } else if (const auto* unbalance = std::get_if<UnbalanceGmm>(&weight.unbalance)) {
        U_kg_mm = unbalance->kg_mm;
    } else if (const auto* eccentricity = std::get_if<MassEccentricity>(&weight.unbalance)) {
        U_kg_mm = mass_kg * eccentricity->mm;
    }
    if (!(U_kg_mm >= 0.0)) {
        build.stop("weight-value", "unbalance", {{"value", U_kg_mm}}, "", "eccentricity");
        return;
    }
    PartLoad load = build.blank();
    addTorque(build, load);
    if (U_kg_mm > 0.0) {
        load.rotating_force_N.y = 1e-3 * U_kg_mm * omega * omega;
        step(load, "unbalance_force", "Fu", "U omega^2 / 1000", {{"U", U_kg_mm}, {"omega", omega}}, load.rotating_force_N.y, "N",
             "ISO 21940-11");
    }
    build.push(std::move(load)); // the weight itself is added for every part with a mass
}

/// A force at (y0, z0): M = M_given + (0, y0, z0) x F.
void addPart(PartBuilder& build, const PointLoad& point)
{
    const Vector3& F = point.force_N;
    const Vector3& M = point.moment_Nmm;
    if (F == Vector3{} && M == Vector3{}) {
        build.report(Severity::note, "load-zero", "", {}, "");
        return;
    }
    const double f = build.loadCase().free_load_factor;
    PartLoad load = build.blank();
    if (point.rotating)
        load.rotating_force_N = {0.0, std::abs(f) * std::hypot(F.y, F.z), 0.0};
    else
        load.force_N = {0.0, f * F.y, f * F.z};
    load.force_N.x = f * F.x;
    load.moment_Nmm = {f * (M.x + point.offset_y_mm * F.z - point.offset_z_mm * F.y), f * (M.y + point.offset_z_mm * F.x),
                       f * (M.z - point.offset_y_mm * F.x)};
    load.torque_Nmm = load.moment_Nmm.x;
    load.axial_N = load.force_N.x;
    build.push(std::move(load));
}

void addPart(PartBuilder& build, const DistributedLoad& line)
{
    const double start_mm = build.part().x_mm;
    if (!(line.end_mm > start_mm)) {
        build.stop("load-range", "end_mm", {{"start_mm", start_mm}, {"end_mm", line.end_mm}});
        return;
    }
    const double f = build.loadCase().free_load_factor;
    PartLoad load = build.blank();
    load.distributed = true;
    load.end_mm = line.end_mm;
    load.q0_N_mm = {f * line.start_N_per_mm.x, f * line.start_N_per_mm.y, f * line.start_N_per_mm.z};
    load.q1_N_mm = {f * line.end_N_per_mm.x, f * line.end_N_per_mm.y, f * line.end_N_per_mm.z};
    load.m0_Nmm_mm = f * line.start_torque_Nmm_per_mm;
    load.m1_Nmm_mm = f * line.end_torque_Nmm_per_mm;
    build.push(std::move(load));
}

} // namespace shaftwright::loads
