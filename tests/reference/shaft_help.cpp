#include "tests/reference/shaft_help.h"

#include <cmath>
#include <stdexcept>

namespace reference
{

using namespace sw;

Shaft::Shaft(double from_mm, double to_mm, double diameter_mm, double E_MPa)
{
    beam::Piece piece;
    piece.x0_mm = from_mm;
    piece.x1_mm = to_mm;
    piece.outer0_mm = piece.outer1_mm = diameter_mm;
    m_model.pieces.push_back(piece);
    m_model.properties.modulus_MPa = E_MPa;
    m_model.properties.shear_modulus_MPa = E_MPa / 2.6;
}

Shaft::Shaft(const Json& segments, double E_MPa, double diameter_factor)
{
    for (const Json& segment : segments) {
        beam::Piece piece;
        piece.x0_mm = num(segment, "x0_mm");
        piece.x1_mm = num(segment, "x1_mm");
        piece.outer0_mm = piece.outer1_mm = num(segment, "d_mm") * diameter_factor;
        m_model.pieces.push_back(piece);
    }
    m_model.properties.modulus_MPa = E_MPa;
    m_model.properties.shear_modulus_MPa = E_MPa / 2.6;
}

void Shaft::supportAt(double x_mm, std::optional<double> stiffness_N_mm)
{
    beam::Support support;
    support.id = "S" + std::to_string(m_model.supports.size() + 1);
    support.x_mm = x_mm;
    if (stiffness_N_mm) {
        support.stiffness[1][1] = support.stiffness[2][2] = *stiffness_N_mm;
    } else {
        support.rigid[1] = support.rigid[2] = true;
    }
    m_model.supports.push_back(support);
}

void Shaft::supports(const Json& list, const char* place)
{
    for (const Json& support : list) {
        supportAt(num(support, place),
                  support.contains("stiffness_N_mm") ? std::optional<double>(num(support, "stiffness_N_mm")) : std::nullopt);
        if (support.value("axial", false))
            m_axial = m_model.supports.size() - 1;
    }
}

void Shaft::force(double x_mm, beam::Vec3 force_N, beam::Vec3 moment_Nmm)
{
    beam::PointLoad load;
    load.x_mm = x_mm;
    load.force_N = force_N;
    load.moment_Nmm = moment_Nmm;
    m_case.point_loads.push_back(load);
}

void Shaft::forces(const Json& list)
{
    for (const Json& load : list)
        force(num(load, "x_mm"), {0.0, load.value("Fy_N", 0.0), load.value("Fz_N", 0.0)});
}

void Shaft::part(const PartLoad& load)
{
    force(load.x_mm, {load.force_N.x, load.force_N.y, load.force_N.z}, {load.moment_Nmm.x, load.moment_Nmm.y, load.moment_Nmm.z});
}

void Shaft::solve(bool shear)
{
    m_model.supports.at(m_axial).rigid[0] = true;
    m_model.properties.shear = shear ? beam::Shear::cowper : beam::Shear::off;
    m_solution = beam::solve(m_model, std::span(&m_case, 1));
    if (!m_solution.usable())
        throw std::runtime_error("shaft not solved: " +
                                 (m_solution.findings.empty() ? std::string("?") : m_solution.findings.front().code));
}

const beam::Reaction& Shaft::reaction(std::size_t support) const
{
    return result().reactions.at(support);
}

double Shaft::radial(std::size_t support) const
{
    return std::hypot(Ry(support), Rz(support));
}

beam::State Shaft::at(double x_mm) const
{
    return beam::stateAt(m_solution, 0, x_mm, beam::Side::left);
}

PartLoad loadOf(PartBody body, double x_mm, std::optional<Drive> drive, double speed_rpm)
{
    Arrangement arrangement;
    Part part;
    part.id = PartId("part");
    part.x_mm = x_mm;
    part.drive = std::move(drive);
    part.body = std::move(body);
    arrangement.parts.push_back(std::move(part));
    Settled settled;
    LoadCase load_case;
    load_case.id = CaseId("case");
    load_case.speed_rpm = speed_rpm;
    settled.load_cases.push_back(load_case);
    const LoadResult result = evaluateLoads(arrangement, settled);
    if (result.cases.empty() || result.cases.front().parts.size() != 1)
        throw std::runtime_error("part not evaluated: " +
                                 (result.findings.empty() ? std::string("?") : result.findings.front().code));
    return result.cases.front().parts.front();
}

Drive power(double power_W, PowerSense sense)
{
    Drive drive;
    drive.power = sense;
    drive.power_kW = power_W / 1000.0;
    return drive;
}

Drive torque(double torque_Nmm, PowerSense sense)
{
    Drive drive;
    drive.power = sense;
    drive.torque_Nmm = torque_Nmm;
    return drive;
}

} // namespace reference
