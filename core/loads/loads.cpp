#include "core/loads/loads.h"

#include "core/loads/part_forces.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright {

namespace {

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

/// One torque-carrying place: a part, or one mesh of an idler.
struct Torque {
    std::size_t part_index = 0;
    std::size_t mesh_index = 0;
    const Drive* drive = nullptr;
    double factor = 1.0;         ///< power factor of part and case, signed
    double Mx_Nmm = 0.0;         ///< nominal, without the application factor
    bool known = false;
    bool takes_remaining = false;
};

/// Gravity in shaft axes: elevation of the +x end above the horizontal; y stays horizontal.
Vector3 gravityVector(double attitude_deg)
{
    const double elevation = attitude_deg * std::numbers::pi / 180.0;
    return {-std::sin(elevation) * standard_gravity_m_s2, 0.0, -std::cos(elevation) * standard_gravity_m_s2};
}

std::vector<Torque> torquesOf(const Arrangement& arrangement, const LoadCase& load_case)
{
    std::vector<Torque> torques;
    for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
        const Part& part = arrangement.parts[i];
        double factor = load_case.power_factor;
        if (const auto it = load_case.parts.find(part.id); it != load_case.parts.end()) {
            if (!it->second.active)
                continue;
            factor *= it->second.power_factor.value_or(1.0);
        }
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

/// Nominal Mx of a part that states power or torque. False and a finding when it cannot be told.
bool settleTorque(Torque& torque, const Part& part, const LoadCase& load_case, Findings& findings)
{
    const Drive& drive = *torque.drive;
    const double speed_rpm = load_case.speed_rpm;
    const double sense = drive.power == PowerSense::driven ? 1.0 : -1.0;
    std::optional<double> from_power;
    if (drive.power_kW) {
        if (speed_rpm == 0.0) {
            if (!drive.torque_Nmm) {
                if (*drive.power_kW * torque.factor != 0.0) {
                    Finding finding = stop("part-power-at-standstill", part, drivePath(torque, "power_kW"),
                                           {{"power_kW", *drive.power_kW}, {"case", load_case.name}});
                    finding.case_id = load_case.id.value;
                    findings.push_back(std::move(finding));
                    return false;
                }
                torque.known = true;
                return true;
            }
        } else {
            from_power = torque_Nmm(*drive.power_kW, speed_rpm);
        }
    }
    if (drive.torque_Nmm) {
        const double stated = *drive.torque_Nmm;
        if (from_power && std::abs(*from_power - std::abs(stated)) > 1e-3 * std::max(std::abs(*from_power), std::abs(stated))) {
            Finding finding = stop("part-torque-contradiction", part, drivePath(torque, "torque_Nmm"),
                                   {{"power_kW", *drive.power_kW},
                                    {"torque_Nmm", stated},
                                    {"torque_from_power_Nmm", *from_power},
                                    {"speed_rpm", std::abs(speed_rpm)}});
            finding.case_id = load_case.id.value;
            findings.push_back(std::move(finding));
            return false;
        }
        torque.Mx_Nmm = speed_rpm == 0.0 ? stated * torque.factor
                                         : sense * signOf(speed_rpm) * std::abs(stated) * torque.factor;
        torque.known = true;
        return true;
    }
    if (from_power) {
        torque.Mx_Nmm = sense * signOf(speed_rpm) * std::abs(*from_power) * torque.factor;
        torque.known = true;
        return true;
    }
    findings.push_back(stop("part-torque-missing", part, drivePath(torque, "power_kW"), {}));
    return false;
}

void balanceTorques(const Arrangement& arrangement, const LoadCase& load_case, std::vector<Torque>& torques, Findings& findings)
{
    Torque* taker = nullptr;
    double sum_Nmm = 0.0;
    double largest_Nmm = 0.0;
    bool all_known = true;
    for (Torque& torque : torques) {
        const Part& part = arrangement.parts[torque.part_index];
        if (torque.takes_remaining) {
            if (taker != nullptr) {
                const Part& first = arrangement.parts[taker->part_index];
                findings.push_back(stop("torque-remainder-twice", part, drivePath(torque, "takes_remaining"),
                                        {{"other", first.name.empty() ? first.id.value : first.name}}));
                all_known = false;
                continue;
            }
            taker = &torque;
            continue;
        }
        if (settleTorque(torque, part, load_case, findings)) {
            sum_Nmm += torque.Mx_Nmm;
            largest_Nmm = std::max(largest_Nmm, std::abs(torque.Mx_Nmm));
        } else {
            all_known = false;
        }
    }
    for (const Part& part : arrangement.parts) {
        if (const auto* load = std::get_if<DistributedLoad>(&part.body)) {
            const auto it = load_case.parts.find(part.id);
            if (it == load_case.parts.end() || it->second.active) {
                const double m = 0.5 * (load->start_torque_Nmm_per_mm + load->end_torque_Nmm_per_mm) * (load->end_mm - part.x_mm) *
                                 load_case.free_load_factor;
                sum_Nmm += m;
                largest_Nmm = std::max(largest_Nmm, std::abs(m));
            }
        } else if (const auto* point = std::get_if<PointLoad>(&part.body)) {
            const auto it = load_case.parts.find(part.id);
            if (it == load_case.parts.end() || it->second.active) {
                const double m = load_case.free_load_factor * (point->moment_Nmm.x + point->offset_y_mm * point->force_N.z -
                                                               point->offset_z_mm * point->force_N.y);
                sum_Nmm += m;
                largest_Nmm = std::max(largest_Nmm, std::abs(m));
            }
        }
    }
    if (taker != nullptr && all_known) {
        const Part& part = arrangement.parts[taker->part_index];
        taker->Mx_Nmm = sum_Nmm == 0.0 ? 0.0 : -sum_Nmm;
        taker->known = true;
        if (taker->drive->sense_fixed && load_case.speed_rpm != 0.0 && taker->Mx_Nmm != 0.0) {
            const bool driven = signOf(taker->Mx_Nmm) == signOf(load_case.speed_rpm * (taker->factor < 0.0 ? -1.0 : 1.0));
            if (driven != (taker->drive->power == PowerSense::driven)) {
                const double power_kW = std::abs(taker->Mx_Nmm) * std::abs(load_case.speed_rpm) * 2.0 * std::numbers::pi / 60.0 / 1e6;
                Finding finding = stop("part-role-contradiction", part, drivePath(*taker, "power"),
                                       {{"power_kW", power_kW}, {"case", load_case.name}});
                finding.variant = taker->drive->power == PowerSense::driving ? "gives" : "takes";
                finding.case_id = load_case.id.value;
                findings.push_back(std::move(finding));
            }
        }
        return;
    }
    if (!all_known || torques.empty())
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
                      {"case", load_case.name}};
    bool positive = false;
    bool negative = false;
    for (const Torque& torque : torques) {
        positive = positive || torque.Mx_Nmm > 0.0;
        negative = negative || torque.Mx_Nmm < 0.0;
    }
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
        balanceTorques(arrangement, load_case, torques, result.findings);

        const bool first_case = &load_case == &settled.load_cases.front();
        for (std::size_t i = 0; i < arrangement.parts.size(); ++i) {
            const Part& part = arrangement.parts[i];
            if (const auto it = load_case.parts.find(part.id); it != load_case.parts.end() && !it->second.active)
                continue;
            loads::PartContext context;
            context.part = &part;
            context.load_case = &load_case;
            context.gravity_m_s2 = gravityVector(settled.attitude_deg);
            context.K_A = settled.K_A;
            context.shaft_diameter_mm = shaftDiameterAt_mm(arrangement.shaft, part.x_mm, false);
            context.assumptions = first_case ? &result.assumptions : nullptr;
            context.findings = &result.findings;
            for (const Torque& torque : torques) {
                if (torque.part_index == i && torque.known)
                    context.torques.push_back({torque.mesh_index, torque.Mx_Nmm});
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
        double largest = 0.0;
        for (const PartLoad& load : loads.parts)
            largest = std::max(largest, std::abs(load.moment_Nmm.x));
        if (std::abs(loads.torque_residual_Nmm) <= 1e-12 * largest)
            loads.torque_residual_Nmm = 0.0;
        result.cases.push_back(std::move(loads));
    }

    // The same stop once, not once a case, when nothing but the case differs.
    Findings unique;
    for (Finding& finding : result.findings) {
        const auto same = std::find_if(unique.begin(), unique.end(), [&](const Finding& other) {
            return other.code == finding.code && other.path == finding.path && other.values == finding.values;
        });
        if (same == unique.end())
            unique.push_back(std::move(finding));
        else if (same->case_id != finding.case_id)
            same->case_id.reset();
    }
    result.findings = std::move(unique);
    return result;
}

} // namespace shaftwright
