#include "core/check/part_values.h"

#include <type_traits>

namespace shaftwright::check
{
namespace
{

/// One call a number; the groups share limits.
class Numbers
{
public:
    explicit Numbers(const TakeNumber& take) : m_take(take) {}

    void size(double value, const std::string& input) { m_take(value, -largest_length_mm, largest_length_mm, input); }
    void angle(double value, const std::string& input) { m_take(value, -3600.0, 3600.0, input); }
    void magnitude(double value, const std::string& input) { m_take(value, -largest_magnitude, largest_magnitude, input); }
    void size(const std::optional<double>& value, const std::string& input)
    {
        each(value, [&](double v) { size(v, input); });
    }
    void angle(const std::optional<double>& value, const std::string& input)
    {
        each(value, [&](double v) { angle(v, input); });
    }
    void magnitude(const std::optional<double>& value, const std::string& input)
    {
        each(value, [&](double v) { magnitude(v, input); });
    }
    void vector(const Vector3& v, const std::string& input)
    {
        magnitude(v.x, input + ".x");
        magnitude(v.y, input + ".y");
        magnitude(v.z, input + ".z");
    }
    void drive(const Drive& drive, const std::string& path)
    {
        if (drive.power_kW)
            m_take(*drive.power_kW, 0.0, 1e7, path + ".power_kW");
        if (drive.torque_Nmm)
            magnitude(*drive.torque_Nmm, path + ".torque_Nmm");
    }

    void operator()(const CylindricalGear& g)
    {
        size(g.normal_module_mm, "normal_module_mm");
        angle(g.helix_deg, "helix_deg");
        angle(g.pressure_angle_deg, "pressure_angle_deg");
        size(g.working_diameter_mm, "working_diameter_mm");
        size(g.centre_distance_mm, "centre_distance_mm");
        angle(g.mesh_angle_deg, "mesh_angle_deg");
        size(g.face_width_mm, "face_width_mm");
        for (std::size_t i = 0; i < g.further_meshes.size(); ++i) {
            const std::string path = "further_meshes." + std::to_string(i + 1);
            angle(g.further_meshes[i].mesh_angle_deg, path + ".mesh_angle_deg");
            drive(g.further_meshes[i].drive, path + ".drive");
        }
    }
    void operator()(const BevelGear& g)
    {
        size(g.outer_module_mm, "outer_module_mm");
        size(g.mean_diameter_mm, "mean_diameter_mm");
        angle(g.cone_angle_deg, "cone_angle_deg");
        angle(g.spiral_deg, "spiral_deg");
        angle(g.pressure_angle_deg, "pressure_angle_deg");
        angle(g.mesh_angle_deg, "mesh_angle_deg");
        size(g.face_width_mm, "face_width_mm");
        angle(g.mate_cone_angle_deg, "mate_cone_angle_deg");
        angle(g.shaft_angle_deg, "shaft_angle_deg");
    }
    void operator()(const Worm& w)
    {
        size(w.axial_module_mm, "axial_module_mm");
        size(w.reference_diameter_mm, "reference_diameter_mm");
        angle(w.lead_angle_deg, "lead_angle_deg");
        angle(w.pressure_angle_deg, "pressure_angle_deg");
        magnitude(w.friction, "friction");
        angle(w.mesh_angle_deg, "mesh_angle_deg");
        size(w.face_width_mm, "face_width_mm");
    }
    void operator()(const WormWheel& w)
    {
        size(w.reference_diameter_mm, "reference_diameter_mm");
        angle(w.lead_angle_deg, "lead_angle_deg");
        angle(w.pressure_angle_deg, "pressure_angle_deg");
        magnitude(w.friction, "friction");
        angle(w.mesh_angle_deg, "mesh_angle_deg");
        size(w.face_width_mm, "face_width_mm");
    }
    void operator()(const BeltPulley& p)
    {
        size(p.diameter_mm, "diameter_mm");
        size(p.other_diameter_mm, "other_diameter_mm");
        size(p.centre_distance_mm, "centre_distance_mm");
        angle(p.direction_deg, "direction_deg");
        magnitude(p.friction, "friction");
        angle(p.groove_deg, "groove_deg");
        size(p.face_width_mm, "face_width_mm");
        if (!p.tension)
            return;
        if (const auto* factor = std::get_if<TensionFactor>(&*p.tension)) {
            magnitude(factor->force_over_useful, "tension.force_over_useful");
        } else if (const auto* ratio = std::get_if<TensionRatio>(&*p.tension)) {
            magnitude(ratio->tight_over_slack, "tension.tight_over_slack");
        } else if (const auto* pretension = std::get_if<Pretension>(&*p.tension)) {
            magnitude(pretension->strand_N, "tension.strand_N");
            magnitude(pretension->belt_mass_kg_m, "tension.belt_mass_kg_m");
        } else if (const auto* strands = std::get_if<StrandForces>(&*p.tension)) {
            magnitude(strands->tight_N, "tension.tight_N");
            magnitude(strands->slack_N, "tension.slack_N");
        }
    }
    void operator()(const ChainSprocket& c)
    {
        size(c.pitch_mm, "pitch_mm");
        size(c.centre_distance_mm, "centre_distance_mm");
        angle(c.direction_deg, "direction_deg");
        magnitude(c.force_factor, "force_factor");
        magnitude(c.sag_force_N, "sag_force_N");
        size(c.face_width_mm, "face_width_mm");
    }
    void operator()(const Coupling& c)
    {
        magnitude(c.radial_force_N, "radial_force_N");
        if (const auto* given = std::get_if<GivenDirection>(&c.radial_direction))
            angle(given->angle_deg, "radial_direction_deg");
        magnitude(c.axial_force_N, "axial_force_N");
        magnitude(c.bending_moment_Nmm, "bending_moment_Nmm");
        angle(c.bending_moment_axis_deg, "bending_moment_axis_deg");
        angle(c.joint_angle_deg, "joint_angle_deg");
        angle(c.joint_direction_deg, "joint_direction_deg");
        size(c.outer_mm, "outer_mm");
        size(c.length_mm, "length_mm");
    }
    void operator()(const Impeller& i)
    {
        magnitude(i.thrust_N, "thrust_N");
        magnitude(i.radial_y_N, "radial_y_N");
        magnitude(i.radial_z_N, "radial_z_N");
        size(i.offset_y_mm, "offset_y_mm");
        size(i.offset_z_mm, "offset_z_mm");
        magnitude(i.rotating_radial_N, "rotating_radial_N");
        size(i.outer_mm, "outer_mm");
        size(i.width_mm, "width_mm");
    }
    void operator()(const WeightBody& w)
    {
        if (const auto* grade = std::get_if<BalanceGrade>(&w.unbalance))
            magnitude(grade->mm_s, "unbalance.grade_mm_s");
        else if (const auto* moment = std::get_if<UnbalanceGmm>(&w.unbalance))
            magnitude(moment->kg_mm, "unbalance.moment_kg_mm");
        else if (const auto* eccentricity = std::get_if<MassEccentricity>(&w.unbalance))
            size(eccentricity->mm, "unbalance.eccentricity_mm");
        size(w.outer_mm, "outer_mm");
        size(w.width_mm, "width_mm");
    }
    void operator()(const PointLoad& p)
    {
        vector(p.force_N, "force_N");
        vector(p.moment_Nmm, "moment_Nmm");
        size(p.offset_y_mm, "offset_y_mm");
        size(p.offset_z_mm, "offset_z_mm");
    }
    void operator()(const DistributedLoad& d)
    {
        size(d.end_mm, "end_mm");
        vector(d.start_N_per_mm, "start_N_per_mm");
        vector(d.end_N_per_mm, "end_N_per_mm");
        magnitude(d.start_torque_Nmm_per_mm, "start_torque_Nmm_per_mm");
        magnitude(d.end_torque_Nmm_per_mm, "end_torque_Nmm_per_mm");
    }

private:
    const TakeNumber& m_take;

    template <class Action> static void each(const std::optional<double>& value, Action action)
    {
        if (value)
            action(*value);
    }
};

} // namespace

void visitNumbers(const Part& part, const TakeNumber& take)
{
    Numbers numbers(take);
    std::visit(numbers, part.body);
    if (part.drive)
        numbers.drive(*part.drive, "drive");
}

} // namespace shaftwright::check
