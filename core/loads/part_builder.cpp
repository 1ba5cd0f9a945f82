#include "core/loads/part_builder.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::loads
{

Directions::Directions(double phi_deg) : cosine(std::cos(phi_deg * degree)), sine(std::sin(phi_deg * degree))
{
    // Quarter turns exactly, so that classroom shafts show clean zeros.
    if (std::remainder(phi_deg, 90.0) == 0.0) {
        cosine = std::round(cosine);
        sine = std::round(sine);
    }
}

double signOf(double value)
{
    return value > 0.0 ? 1.0 : value < 0.0 ? -1.0 : 0.0;
}

double handSign(Hand hand)
{
    return hand == Hand::right ? 1.0 : hand == Hand::left ? -1.0 : 0.0;
}

void step(PartLoad& load, const char* code, const char* symbol, const char* formula, NamedValues inputs, double result,
          const char* unit, const char* source)
{
    load.derivation.push_back({code, symbol, formula, std::move(inputs), result, unit, source});
}

void place(PartLoad& load, const Directions& at, double radius_mm, double Fr, double Ft, double Fx)
{
    load.force_N = {Fx, Fr * at.cosine - Ft * at.sine, Fr * at.sine + Ft * at.cosine};
    load.moment_Nmm = {radius_mm * Ft, radius_mm * Fx * at.sine, -radius_mm * Fx * at.cosine};
    load.torque_Nmm = load.moment_Nmm.x;
    load.tangential_N = std::abs(Ft);
    load.radial_N = Fr;
    load.axial_N = Fx;
    load.diameter_mm = 2.0 * radius_mm;
}

PartBuilder::PartBuilder(const PartContext& context, std::vector<PartLoad>& loads) : m_context(context), m_loads(loads) {}

void PartBuilder::report(Severity severity, const char* code, const std::string& input, NamedValues values, const char* source,
                         const char* variant)
{
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.variant = variant;
    finding.subject = part().id.value;
    finding.path = "parts." + part().id.value + (input.empty() ? "" : "." + input);
    // No number that is not finite leaves core, not even in a sentence.
    std::erase_if(values.entries, [](const auto& entry) {
        const double* number = std::get_if<double>(&entry.second);
        return number != nullptr && !std::isfinite(*number);
    });
    finding.values = std::move(values);
    finding.values.set("part", part().name.empty() ? part().id.value : part().name);
    finding.source = source;
    m_context.findings->push_back(std::move(finding));
    m_stopped = m_stopped || severity == Severity::stop;
}

void PartBuilder::reportInCase(Severity severity, const char* code, const std::string& input, NamedValues values,
                               const char* source, const char* variant)
{
    report(severity, code, input, std::move(values), source, variant);
    m_context.findings->back().case_id = loadCase().id.value;
}

void PartBuilder::stop(const char* code, const std::string& input, NamedValues values, const char* source, const char* variant)
{
    report(Severity::stop, code, input, std::move(values), source, variant);
}

void PartBuilder::stopInCase(const char* code, const std::string& input, NamedValues values, const char* source,
                             const char* variant)
{
    reportInCase(Severity::stop, code, input, std::move(values), source, variant);
}

double PartBuilder::assume(const std::optional<double>& input, const char* name, double value, const char* unit,
                           const char* reason)
{
    if (input)
        return *input;
    // The same once for all cases; a value that depends on the speed of the case stands once for each.
    const Assumption assumption{"parts." + part().id.value + "." + name, value, unit, reason};
    auto& list = *m_context.assumptions;
    if (std::find(list.begin(), list.end(), assumption) == list.end())
        list.push_back(assumption);
    return value;
}

void PartBuilder::caution(bool unusual, const char* input, double value, double low, double high)
{
    if (unusual)
        report(Severity::caution, "value-unusual", input,
               {{"input", std::string(input)}, {"value", value}, {"low", low}, {"high", high}}, "usual range, handbooks");
}

bool PartBuilder::checkPressureAngle(double angle_deg, double usual_low_deg, double usual_high_deg)
{
    if (!(angle_deg > 5.0 && angle_deg < 40.0)) {
        stop("gear-size", "pressure_angle_deg", {{"value", angle_deg}, {"low", 5.0}, {"high", 40.0}}, "", "pressure_angle");
        return false;
    }
    caution(angle_deg < usual_low_deg || angle_deg > usual_high_deg, "pressure_angle_deg", angle_deg, usual_low_deg,
            usual_high_deg);
    return true;
}

const MeshTorque* PartBuilder::torque(std::size_t mesh) const
{
    for (const MeshTorque& torque : m_context.torques) {
        if (torque.mesh_index == mesh)
            return &torque;
    }
    return nullptr;
}

const MeshTorque* PartBuilder::neededTorque(std::size_t mesh)
{
    if (mesh == 0 && !part().drive)
        stop("part-torque-missing", "drive", {});
    return torque(mesh);
}

void PartBuilder::torqueSteps(PartLoad& load, std::size_t mesh)
{
    const MeshTorque* settled = torque(mesh);
    const Drive* drive = part().drive ? &*part().drive : nullptr;
    if (mesh > 0)
        drive = &std::get<CylindricalGear>(part().body).further_meshes[mesh - 1].drive;
    if (settled == nullptr || drive == nullptr)
        return;
    const double T = std::abs(settled->Mx_Nmm);
    const double f = std::abs(settled->factor);
    if (drive->takes_remaining) {
        step(load, "torque_remaining", "T", "size of the sum of the other torques", {}, T, "N\u00b7mm", "balance of torque");
    } else if (drive->torque_Nmm) {
        step(load, "torque_given", "T", "T_given f K_A",
             {{"T_given", std::abs(*drive->torque_Nmm)}, {"f", f}, {"K_A", settled->K_A}}, T, "N\u00b7mm", "input");
    } else if (drive->power_kW && loadCase().speed_rpm != 0.0) {
        step(load, "torque_from_power", "T", "60e6 P / (2 pi n) f K_A",
             {{"P", *drive->power_kW}, {"n", std::abs(loadCase().speed_rpm)}, {"f", f}, {"K_A", settled->K_A}}, T, "N\u00b7mm",
             "definition of power");
    }
}

bool PartBuilder::givesPower(const MeshTorque& torque) const
{
    const double turning = signOf(loadCase().speed_rpm);
    if (turning != 0.0)
        return signOf(torque.Mx_Nmm) * turning < 0.0;
    const bool stated = part().drive && part().drive->power == PowerSense::driving;
    return stated != (torque.factor < 0.0); // power flows back: the senses swap
}

PartLoad PartBuilder::blank() const
{
    PartLoad load;
    load.part = part().id;
    load.x_mm = part().x_mm;
    return load;
}

void PartBuilder::push(PartLoad load)
{
    const auto finite = [](const Vector3& v) { return std::isfinite(v.x) && std::isfinite(v.y) && std::isfinite(v.z); };
    const bool good = std::isfinite(load.x_mm) && std::isfinite(load.end_mm) && finite(load.force_N) && finite(load.moment_Nmm) &&
                      finite(load.rotating_force_N) && finite(load.q0_N_mm) && finite(load.q1_N_mm) &&
                      std::isfinite(load.m0_Nmm_mm) && std::isfinite(load.m1_Nmm_mm) && std::isfinite(load.worst_direction_N) &&
                      std::isfinite(load.worst_moment_Nmm);
    if (good)
        m_loads.push_back(std::move(load));
    else
        stop("value-invalid", "", {{"path", "parts." + part().id.value}}, "", "not_finite");
}

} // namespace shaftwright::loads
