#include "core/loads/loads.h"

#include "core/loads/part_forces.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <iterator>
#include <numbers>

namespace shaftwright
{

namespace
{

constexpr double standard_gravity_m_s2 = 9.80665;

Finding stop(std::string code, const Part& part, const std::string& input, NamedValues values, std::string source = {})
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = std::move(code);
    finding.subject = part.id.value;
    finding.path = "parts." + part.id.value + (input.empty() ? "" : "." + input);
    finding.values = std::move(values);
    finding.values.set("part", part.name.empty() ? part.id.value : part.name);
    finding.source = std::move(source);
    return finding;
}

double signOf(double value)
{
    return value > 0.0 ? 1.0 : value < 0.0 ? -1.0 : 0.0;
}

std::string nameOf(const Part& part)
{
    return part.name.empty() ? part.id.value : part.name;
}

std::string nameOf(const LoadCase& load_case)
{
    return load_case.name.empty() ? load_case.id.value : load_case.name;
}

bool isActive(const Part& part, const LoadCase& load_case)
{
    const auto it = load_case.parts.find(part.id);
    return it == load_case.parts.end() || it->second.active;
}

/// One torque-carrying place: a part, or one mesh of an idler.
struct Torque {
    std::size_t part_index = 0;
    std::size_t mesh_index = 0;
    const Drive* drive = nullptr;
    double factor = 1.0; ///< power factor of part and case, signed
    double Mx_Nmm = 0.0; ///< with the application factor
    bool known = false;
    bool takes_remaining = false;
};

/// Gravity in shaft axes: elevation of the +x end above the horizontal; y stays horizontal.
Vector3 gravityVector(double attitude_deg)
{
    const double elevation = attitude_deg * std::numbers::pi / 180.0;
    const bool quarter = std::remainder(attitude_deg, 90.0) == 0.0; // a vertical shaft has no trace of a sideways weight
    const double sine = quarter ? std::round(std::sin(elevation)) : std::sin(elevation);
    const double cosine = quarter ? std::round(std::cos(elevation)) : std::cos(elevation);
    return {0.0 - sine * standard_gravity_m_s2, 0.0, 0.0 - cosine * standard_gravity_m_s2};
}

std::vector<Torque> torquesOf(const Arrangement& arrangement, const LoadCase& load_case)
{
    std::vector<Torque> torques;
    for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
        const Part& part = arrangement.parts[i];
        if (!isActive(part, load_case))
            continue;
        double factor = load_case.power_factor;
        if (const auto it = load_case.parts.find(part.id); it != load_case.parts.end())
            factor *= it->second.power_factor.value_or(1.0);
        const auto add = [&](const Drive& drive, std::size_t mesh) {
            Torque torque;
            torque.part_index = i;
            torque.mesh_index = mesh;
            torque.drive = &drive;
            torque.factor = factor;
            torque.takes_remaining = drive.takes_remaining;
            torques.push_back(torque);
        };
        if (part.drive)
            add(*part.drive, 0);
        if (const auto* gear = std::get_if<CylindricalGear>(&part.body)) {
            for (std::size_t k = 0; k < gear->further_meshes.size(); ++k)
                add(gear->further_meshes[k].drive, k + 1);
        }
    }
    return torques;
}

std::string drivePath(const Torque& torque, const char* input)
{
    if (torque.mesh_index == 0)
        return std::string("drive.") + input;
    return "further_meshes." + std::to_string(torque.mesh_index) + ".drive." + input;
}

/// Mx of a part that states power or torque. False and a finding when it cannot be told.
bool settleTorque(Torque& torque, const Part& part, const LoadCase& load_case, double K_A, Findings& findings)
{
    const Drive& drive = *torque.drive;
    const double speed_rpm = load_case.speed_rpm;
    const auto refuse = [&](const char* code, const char* input, NamedValues values, const char* variant = "",
                            bool in_case = false) {
        Finding finding = stop(code, part, drivePath(torque, input), std::move(values));
        finding.variant = variant;
        if (in_case)
            finding.case_id = load_case.id.value;
        findings.push_back(std::move(finding));
        return false;
    };
    if (drive.power_kW && !(std::isfinite(*drive.power_kW) && *drive.power_kW >= 0.0)) {
        NamedValues values{{"path", "parts." + part.id.value + "." + drivePath(torque, "power_kW")}, {"low", 0.0}, {"high", 1e7}};
        if (!std::isfinite(*drive.power_kW))
            return refuse("value-invalid", "power_kW", std::move(values), "not_finite");
        values.set("value", *drive.power_kW);
        return refuse("value-invalid", "power_kW", std::move(values));
    }
    if ((drive.torque_Nmm && !std::isfinite(*drive.torque_Nmm)) || !std::isfinite(speed_rpm) || !std::isfinite(torque.factor) ||
        !std::isfinite(K_A))
        return refuse("value-invalid", "torque_Nmm", {{"path", "parts." + part.id.value + "." + drivePath(torque, "torque_Nmm")}},
                      "not_finite");

    std::optional<double> from_power_Nmm;
    if (drive.power_kW && speed_rpm != 0.0)
        from_power_Nmm = torque_Nmm(*drive.power_kW, speed_rpm);
    if (drive.power_kW && speed_rpm == 0.0 && !drive.torque_Nmm) {
        if (*drive.power_kW * torque.factor != 0.0)
            return refuse("part-power-at-standstill", "power_kW", {{"power_kW", *drive.power_kW}, {"case", nameOf(load_case)}},
                          "", true);
        torque.known = true;
        return true;
    }
    if (from_power_Nmm && drive.torque_Nmm) {
        const double stated_Nmm = std::abs(*drive.torque_Nmm);
        if (std::abs(*from_power_Nmm - stated_Nmm) > 1e-3 * std::max(*from_power_Nmm, stated_Nmm))
            return refuse("part-torque-contradiction", "torque_Nmm",
                          {{"power_kW", *drive.power_kW},
                           {"torque_Nmm", *drive.torque_Nmm},
                           {"torque_from_power_Nmm", *from_power_Nmm},
                           {"speed_rpm", std::abs(speed_rpm)}},
                          "", true);
    }
    if (!from_power_Nmm && !drive.torque_Nmm)
        return refuse("part-torque-missing", "power_kW", {});
    const double sense = (drive.power == PowerSense::driven ? 1.0 : -1.0) * signOf(speed_rpm);
    if (drive.torque_Nmm)
        torque.Mx_Nmm = speed_rpm == 0.0 ? *drive.torque_Nmm : sense * std::abs(*drive.torque_Nmm);
    else
        torque.Mx_Nmm = sense * *from_power_Nmm;
    torque.Mx_Nmm *= torque.factor * K_A;
    torque.known = true;
    return true;
}

/// Torques that free moments and eccentric forces bring, without any factor of the drive.
std::vector<double> freeTorques(const Arrangement& arrangement, const LoadCase& load_case)
{
    std::vector<double> torques_Nmm;
    for (const Part& part : arrangement.parts) {
        if (!isActive(part, load_case))
            continue;
        if (const auto* line = std::get_if<DistributedLoad>(&part.body))
            torques_Nmm.push_back(load_case.free_load_factor * 0.5 *
                                  (line->start_torque_Nmm_per_mm + line->end_torque_Nmm_per_mm) * (line->end_mm - part.x_mm));
        else if (const auto* point = std::get_if<PointLoad>(&part.body))
            torques_Nmm.push_back(load_case.free_load_factor * (point->moment_Nmm.x + point->offset_y_mm * point->force_N.z -
                                                                point->offset_z_mm * point->force_N.y));
    }
    return torques_Nmm;
}

void balanceTorques(const Arrangement& arrangement, const LoadCase& load_case, double K_A, std::vector<Torque>& torques,
                    Findings& findings)
{
    Torque* taker = nullptr;
    double sum_Nmm = 0.0;
    double largest_Nmm = 0.0;
    bool all_known = true;
    bool positive = false;
    bool negative = false;
    const auto count = [&](double Mx_Nmm) {
        sum_Nmm += Mx_Nmm;
        largest_Nmm = std::max(largest_Nmm, std::abs(Mx_Nmm));
        positive = positive || Mx_Nmm > 0.0;
        negative = negative || Mx_Nmm < 0.0;
    };
    for (Torque& torque : torques) {
        const Part& part = arrangement.parts[torque.part_index];
        if (torque.takes_remaining) {
            if (taker != nullptr) {
                findings.push_back(stop("torque-remainder-twice", part, drivePath(torque, "takes_remaining"),
                                        {{"other", nameOf(arrangement.parts[taker->part_index])}}));
                all_known = false;
                continue;
            }
            if (torque.drive->power_kW || torque.drive->torque_Nmm) {
                findings.push_back(stop("part-torque-contradiction", part, drivePath(torque, "takes_remaining"), {}));
                findings.back().variant = "remaining";
            }
            taker = &torque;
            continue;
        }
        if (settleTorque(torque, part, load_case, K_A, findings))
            count(torque.Mx_Nmm);
        else
            all_known = false;
    }
    for (const double free_Nmm : freeTorques(arrangement, load_case))
        count(free_Nmm);
    if (!std::isfinite(sum_Nmm))
        return; // the part at fault is refused with its own finding
    if (taker != nullptr && all_known) {
        const Part& part = arrangement.parts[taker->part_index];
        // What is left of rounding when the others balance is no torque.
        taker->Mx_Nmm = std::abs(sum_Nmm) <= 1e-12 * largest_Nmm ? 0.0 : -sum_Nmm;
        taker->known = true;
        if (taker->drive->sense_fixed && load_case.speed_rpm != 0.0 && taker->Mx_Nmm != 0.0) {
            const bool driven = signOf(taker->Mx_Nmm) == signOf(load_case.speed_rpm * (taker->factor < 0.0 ? -1.0 : 1.0));
            if (driven != (taker->drive->power == PowerSense::driven)) {
                const double power_kW =
                    std::abs(taker->Mx_Nmm) * std::abs(load_case.speed_rpm) * 2.0 * std::numbers::pi / 60.0 / 1e6;
                Finding finding = stop("part-role-contradiction", part, drivePath(*taker, "power"),
                                       {{"power_kW", power_kW}, {"case", nameOf(load_case)}});
                finding.variant = taker->drive->power == PowerSense::driving ? "gives" : "takes";
                finding.case_id = load_case.id.value;
                findings.push_back(std::move(finding));
            }
        }
        return;
    }
    if (!all_known)
        return;
    const double residual_Nmm = std::abs(sum_Nmm);
    if (residual_Nmm <= 1e-6 * largest_Nmm || largest_Nmm == 0.0)
        return;
    Finding finding;
    finding.code = "torque-unbalanced";
    finding.subject = load_case.id.value;
    finding.path = "duty.load_cases." + load_case.id.value;
    finding.case_id = load_case.id.value;
    finding.values = {{"residual_Nm", residual_Nmm / 1000.0},
                      {"largest_Nm", largest_Nmm / 1000.0},
                      {"share_percent", 100.0 * residual_Nmm / largest_Nmm},
                      {"case", nameOf(load_case)}};
    // The numbers of all parts, so that the one at fault can be seen.
    std::string list;
    for (const Torque& torque : torques) {
        if (torque.Mx_Nmm == 0.0)
            continue;
        char number[32];
        const auto end =
            std::to_chars(std::begin(number), std::end(number), torque.Mx_Nmm / 1000.0, std::chars_format::general, 4);
        list += (list.empty() ? "" : ", ") + nameOf(arrangement.parts[torque.part_index]) + " " + std::string(number, end.ptr) +
                " N\u00b7m";
    }
    finding.values.set("parts", list);
    if (positive != negative) {
        finding.severity = Severity::stop;
        finding.variant = "one_sign";
    } else if (residual_Nmm <= 0.02 * largest_Nmm) {
        finding.severity = Severity::note;
        finding.variant = "small";
    } else {
        finding.severity = Severity::caution;
    }
    finding.source = "steady running: the torques on the shaft add up to zero";
    findings.push_back(std::move(finding));
}

} // namespace

double torque_Nmm(double power_kW, double speed_rpm)
{
    return power_kW * 60e6 / (2.0 * std::numbers::pi * std::abs(speed_rpm));
}

LoadResult evaluateLoads(const Arrangement& arrangement, const Settled& settled)
{
    LoadResult result;
    result.cases.reserve(settled.load_cases.size());
    for (const LoadCase& load_case : settled.load_cases) {
        CaseLoads loads;
        loads.case_id = load_case.id;
        if (settled.own_weight)
            loads.gravity_m_s2 = gravityVector(settled.attitude_deg);
        std::vector<Torque> torques = torquesOf(arrangement, load_case);
        balanceTorques(arrangement, load_case, settled.K_A, torques, result.findings);

        for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
            const Part& part = arrangement.parts[i];
            loads::PartContext context;
            context.active = isActive(part, load_case);
            // What is switched off still weighs; a weight that is switched off is not there.
            if (!context.active && (!part.mass_kg || std::holds_alternative<WeightBody>(part.body)))
                continue;
            context.part = &part;
            context.load_case = &load_case;
            context.gravity_m_s2 = gravityVector(settled.attitude_deg);
            context.shaft_diameter_mm = shaftDiameterAt_mm(arrangement.shaft, part.x_mm, false);
            context.shaft_length_mm = arrangement.shaft.length_mm();
            context.assumptions = &result.assumptions;
            context.findings = &result.findings;
            for (const Torque& torque : torques) {
                if (torque.part_index == i && torque.known)
                    context.torques.push_back({torque.mesh_index, torque.Mx_Nmm, torque.factor, settled.K_A});
            }
            loads::appendPartLoads(context, loads.parts);
        }
        for (const PartLoad& load : loads.parts) {
            double Mx = load.moment_Nmm.x;
            double Fx = load.force_N.x;
            if (load.distributed) {
                const double l = load.end_mm - load.x_mm;
                Mx += 0.5 * (load.m0_Nmm_mm + load.m1_Nmm_mm) * l;
                Fx += 0.5 * (load.q0_N_mm.x + load.q1_N_mm.x) * l;
            }
            loads.torque_residual_Nmm -= Mx;
            loads.K_N += Fx;
        }
        // A balanced case sums to rounding noise; show an exact zero instead of 1e-12.
        double size_Nmm = 0.0;
        for (const PartLoad& load : loads.parts)
            size_Nmm += std::abs(load.moment_Nmm.x);
        if (std::abs(loads.torque_residual_Nmm) <= 1e-12 * size_Nmm)
            loads.torque_residual_Nmm = 0.0;
        result.cases.push_back(std::move(loads));
    }

    // The same statement once, not once a case; without a case when it holds in all of them.
    struct Count {
        Finding finding;
        std::size_t cases = 1;
    };
    std::vector<Count> unique;
    for (Finding& finding : result.findings) {
        const auto same = std::find_if(unique.begin(), unique.end(), [&](const Count& other) {
            return other.finding.code == finding.code && other.finding.variant == finding.variant &&
                   other.finding.subject == finding.subject && other.finding.path == finding.path &&
                   other.finding.values == finding.values;
        });
        if (same == unique.end())
            unique.push_back({std::move(finding)});
        else if (same->finding.case_id && ++same->cases == settled.load_cases.size())
            same->finding.case_id.reset();
    }
    result.findings.clear();
    for (Count& count : unique)
        result.findings.push_back(std::move(count.finding));
    return result;
}

} // namespace shaftwright
