#pragma once
// Shafts of published checks on the beam and the loads of core.

#include "core/beam/beam.h"
#include "core/loads/loads.h"
#include "tests/reference/reference.h"

#include <optional>
#include <vector>

namespace reference
{

namespace sw = shaftwright;

/// A shaft on supports as a check states it. Places may be negative; the first support with `axial`, else the first, is
/// rigid along x.
class Shaft
{
public:
    /// Uniform shaft of any stiffness: for reactions of determinate shafts.
    Shaft(double from_mm, double to_mm, double diameter_mm = 50.0, double E_MPa = 206000.0);
    /// Pieces as stated.
    Shaft(const Json& segments, double E_MPa, double diameter_factor = 1.0);

    void supportAt(double x_mm, std::optional<double> stiffness_N_mm = {});
    void supports(const Json& list, const char* place = "x_mm");
    void force(double x_mm, sw::beam::Vec3 force_N, sw::beam::Vec3 moment_Nmm = {});
    /// `loads` entries with x_mm, Fy_N, Fz_N.
    void forces(const Json& list);
    void part(const sw::PartLoad& load);
    void solve(bool shear = false);

    [[nodiscard]] const sw::beam::Reaction& reaction(std::size_t support) const;
    [[nodiscard]] double Ry(std::size_t support) const { return reaction(support).force_N[1]; }
    [[nodiscard]] double Rz(std::size_t support) const { return reaction(support).force_N[2]; }
    [[nodiscard]] double radial(std::size_t support) const;
    [[nodiscard]] sw::beam::State at(double x_mm) const;
    [[nodiscard]] const sw::beam::CaseResult& result() const { return m_solution.cases.at(0); }
    [[nodiscard]] const sw::beam::Solution& solution() const { return m_solution; }

private:
    sw::beam::Model m_model;
    sw::beam::LoadCase m_case;
    sw::beam::Solution m_solution;
    std::size_t m_axial = 0;
};

/// Load of one part at a speed, nothing else on the shaft.
sw::PartLoad loadOf(sw::PartBody body, double x_mm, std::optional<sw::Drive> drive, double speed_rpm);
sw::Drive power(double power_W, sw::PowerSense sense);
sw::Drive torque(double torque_Nmm, sw::PowerSense sense);

} // namespace reference
