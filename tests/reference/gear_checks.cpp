#include "tests/reference/shaft_help.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace reference
{

using namespace sw;

namespace
{

constexpr double degree = std::numbers::pi / 180.0;

double input(const DerivationStep& step, const char* symbol)
{
    return std::get<double>(*step.inputs.find(symbol));
}

const DerivationStep& stepOf(const PartLoad& load, const std::string& code)
{
    for (const DerivationStep& step : load.derivation) {
        if (step.code == code)
            return step;
    }
    throw std::runtime_error("no step " + code);
}

CylindricalGear spur(double diameter_mm, double pressure_angle_deg, double mesh_angle_deg = 0.0)
{
    CylindricalGear gear;
    gear.teeth = 40;
    gear.normal_module_mm = diameter_mm / 40.0;
    gear.pressure_angle_deg = pressure_angle_deg;
    gear.mesh_angle_deg = mesh_angle_deg;
    return gear;
}

CylindricalGear helical(int teeth, double module_mm, double alpha_n_deg, double beta_deg)
{
    CylindricalGear gear;
    gear.teeth = teeth;
    gear.normal_module_mm = module_mm;
    gear.pressure_angle_deg = alpha_n_deg;
    gear.helix_deg = beta_deg;
    gear.hand = beta_deg > 0.0 ? Hand::right : Hand::none;
    return gear;
}

/// A stated tooth force at a contact point on +y, as a free force off the axis.
PartLoad toothForce(const Json& load)
{
    PointLoad force;
    force.force_N = {num(load, "Fx_N"), num(load, "Fy_N"), num(load, "Fz_N")};
    force.offset_y_mm = num(load, "contact_point_y_mm");
    return loadOf(force, num(load, "x_mm"), std::nullopt, 0.0);
}

Shaft loadedShaft(const Json& in)
{
    double from = -20.0, to = 20.0;
    for (const Json& support : in.at("supports")) {
        from = std::min(from, num(support, "x_mm") - 20.0);
        to = std::max(to, num(support, "x_mm") + 20.0);
    }
    if (in.contains("load")) {
        from = std::min(from, num(in.at("load"), "x_mm") - 20.0);
        to = std::max(to, num(in.at("load"), "x_mm") + 20.0);
    }
    Shaft shaft(from, to);
    shaft.supports(in.at("supports"));
    return shaft;
}

Results gf01(const Json& in)
{
    const PartLoad load = loadOf(helical(in.at("teeth").get<int>(), num(in, "normal_module_mm"),
                                         num(in, "normal_pressure_angle_deg"), num(in, "helix_angle_deg")),
                                 0.0, power(num(in, "power_W"), PowerSense::driving), num(in, "speed_rpm"));
    const double Ft = load.tangential_N, Fr = std::abs(load.radial_N), Fa = std::abs(load.axial_N);
    return {{"transverse_pressure_angle_deg", std::atan(Fr / Ft) / degree},
            {"pitch_diameter_mm", load.diameter_mm},
            {"Ft_N", Ft},
            {"Fr_N", Fr},
            {"Fa_N", Fa},
            {"Fn_N", std::hypot(Ft, Fr, Fa)}};
}

Results gf02(const Json& in)
{
    Shaft shaft = loadedShaft(in);
    const PartLoad load = toothForce(in.at("load"));
    shaft.part(load);
    shaft.solve();
    return {{"A_x_N", shaft.reaction(0).force_N[0]},
            {"A_y_N", shaft.Ry(0)},
            {"A_z_N", shaft.Rz(0)},
            {"B_y_N", shaft.Ry(1)},
            {"B_z_N", shaft.Rz(1)},
            {"torque_Nmm", load.torque_Nmm}};
}

Results gf03(const Json& in)
{
    const double r2 = num(in, "pitch_radius_gear2_mm"), r3 = num(in, "pitch_radius_gear3_mm"),
                 r4 = num(in, "pitch_radius_gear4_mm");
    const double alpha = num(in, "pressure_angle_deg"), n = num(in, "speed_input_rpm");
    const PartLoad first = loadOf(spur(2.0 * r2, alpha), 0.0, power(num(in, "power_W"), PowerSense::driving), n);
    const PartLoad second = loadOf(spur(2.0 * r4, alpha), 0.0, power(num(in, "power_W"), PowerSense::driving), n * r2 / r3);
    return {{"torque_input_Nmm", std::abs(first.torque_Nmm)},
            {"Ft_2_N", first.tangential_N},
            {"Fr_2_N", std::abs(first.radial_N)},
            {"Ft_4_N", second.tangential_N},
            {"Fr_4_N", std::abs(second.radial_N)}};
}

Results gf04(const Json& in)
{
    // The book's axis is y: its y, z, x are our x, y, z. The mesh lies on its +x, which is our +z (90 deg).
    BevelGear gear;
    gear.mean_diameter_mm = num(in, "pitch_diameter_gear_mm");
    gear.cone_angle_deg = std::atan(num(in, "pitch_diameter_gear_mm") / num(in, "pitch_diameter_pinion_mm")) / degree;
    gear.pressure_angle_deg = num(in, "pressure_angle_deg");
    gear.mesh_angle_deg = 90.0;
    gear.apex = ApexSide::plus; // thrust away from the apex, towards -y of the book
    const Json& contact = in.at("contact_point_mm");
    const double T = num(in, "Ft_N") * contact.at(0).get<double>();
    // Ft towards +z of the book is +y of ours, which turns the shaft negatively at a contact on +z.
    const PartLoad load = loadOf(gear, contact.at(1).get<double>(), torque(T, PowerSense::driving), 1000.0);
    Shaft shaft(-40.0, 40.0);
    shaft.supports(in.at("supports"), "y_mm");
    shaft.part(load);
    shaft.solve();
    // Magnitudes of radial and axial; the print has C on its +x, +z against the load on the other side of D.
    return {{"pitch_angle_gear_deg", gear.cone_angle_deg},
            {"Fr_N", std::abs(load.radial_N)},
            {"Fa_N", std::abs(load.axial_N)},
            {"torque_Nmm", std::abs(load.torque_Nmm)},
            {"C_radial_N", shaft.radial(1)},
            {"C_x_N", shaft.Rz(1)},
            {"C_z_N", shaft.Ry(1)},
            {"D_radial_N", shaft.radial(0)},
            {"D_thrust_N", std::abs(shaft.reaction(0).force_N[0])}};
}

Results gf05(const Json& in)
{
    Shaft shaft = loadedShaft(in);
    const PartLoad load = toothForce(in.at("load"));
    shaft.part(load);
    shaft.solve();
    return {{"torque_Nmm", load.torque_Nmm}, {"C_x_N", shaft.reaction(0).force_N[0]},
            {"C_y_N", shaft.Ry(0)},          {"C_z_N", shaft.Rz(0)},
            {"D_y_N", shaft.Ry(1)},          {"D_z_N", shaft.Rz(1)}};
}

Results gf06(const Json& in)
{
    Shaft shaft = loadedShaft(in);
    const PartLoad load = toothForce(in.at("load"));
    shaft.part(load);
    shaft.solve();
    return {{"torque_Nmm", std::abs(load.torque_Nmm)},
            {"C_y_N", shaft.Ry(1)},
            {"C_z_N", shaft.Rz(1)},
            {"C_radial_N", shaft.radial(1)},
            {"D_x_N", shaft.reaction(0).force_N[0]},
            {"D_y_N", shaft.Ry(0)},
            {"D_z_N", shaft.Rz(0)}};
}

Results gf07(const Json& in)
{
    Shaft shaft = loadedShaft(in);
    shaft.forces(in.at("loads"));
    shaft.solve();
    return {{"O_y_N", shaft.Ry(0)}, {"O_z_N", shaft.Rz(0)},          {"C_y_N", shaft.Ry(1)},
            {"C_z_N", shaft.Rz(1)}, {"O_radial_N", shaft.radial(0)}, {"C_radial_N", shaft.radial(1)}};
}

Results gf08(const Json& in)
{
    const double T = num(in, "F_A_N") * std::cos(num(in, "angle_A_deg") * degree) * num(in, "radius_A_mm");
    const PartLoad A =
        loadOf(spur(2.0 * num(in, "radius_A_mm"), num(in, "angle_A_deg")), 0.0, torque(T, PowerSense::driven), 100.0);
    const PartLoad B =
        loadOf(spur(2.0 * num(in, "radius_B_mm"), num(in, "angle_B_deg")), 0.0, torque(A.torque_Nmm, PowerSense::driving), 100.0);
    // The given force comes back from the gear it acts on; the torque is then the gear's own.
    const double F_A = std::hypot(A.tangential_N, A.radial_N);
    if (std::abs(F_A / num(in, "F_A_N") - 1.0) > 1e-12)
        throw std::runtime_error("gear A does not return its tooth force");
    return {{"torque_Nmm", A.torque_Nmm}, {"F_B_N", std::hypot(B.tangential_N, B.radial_N)}};
}

Results gf09(const Json& in)
{
    const PartLoad load = loadOf(helical(in.at("teeth_pinion").get<int>(), num(in, "normal_module_mm"),
                                         num(in, "normal_pressure_angle_deg"), num(in, "helix_angle_deg")),
                                 0.0, power(num(in, "power_W"), PowerSense::driving), num(in, "speed_rpm"));
    return {{"Ft_N", load.tangential_N}, {"Fa_N", std::abs(load.axial_N)}, {"Fr_N", std::abs(load.radial_N)}};
}

Results gf10(const Json& in)
{
    const double r = num(in, "pitch_radius_pinion_mm");
    const double delta = std::atan(num(in, "speed_gear_rpm") / num(in, "speed_pinion_rpm"));
    BevelGear gear;
    gear.teeth = 20;
    gear.outer_module_mm = 2.0 * r / gear.teeth;
    gear.cone_angle_deg = delta / degree;
    gear.face_width_mm = num(in, "face_width_ratio_to_cone_distance") * r / std::sin(delta);
    gear.pressure_angle_deg = num(in, "pressure_angle_deg");
    const PartLoad load = loadOf(gear, 0.0, power(num(in, "power_W"), PowerSense::driving), num(in, "speed_pinion_rpm"));
    return {{"Ft_N", load.tangential_N},
            {"Fr_N", std::abs(load.radial_N)},
            {"Fa_N", std::abs(load.axial_N)},
            {"F_separating_N", std::hypot(load.radial_N, load.axial_N)}};
}

Results gf11(const Json& in)
{
    Worm worm;
    worm.starts = in.at("starts").get<int>();
    worm.axial_module_mm = num(in, "module_mm");
    worm.reference_diameter_mm = num(in, "diameter_quotient") * num(in, "module_mm");
    worm.pressure_angle_deg = num(in, "pressure_angle_deg");
    worm.friction = num(in, "friction");
    const PartLoad load = loadOf(worm, 0.0, power(num(in, "power_W"), PowerSense::driving), num(in, "speed_rpm"));
    return {{"Ft_worm_N", load.tangential_N}, {"Fa_worm_N", std::abs(load.axial_N)}};
}

Results gf12(const Json& in)
{
    const PartLoad load = loadOf(helical(in.at("teeth").get<int>(), num(in, "module_mm"), num(in, "pressure_angle_deg"), 0.0),
                                 0.0, power(num(in, "power_W"), PowerSense::driving), num(in, "speed_rpm"));
    return {
        {"Ft_N", load.tangential_N}, {"Fr_N", std::abs(load.radial_N)}, {"Fn_N", std::hypot(load.tangential_N, load.radial_N)}};
}

Results gf13(const Json& in)
{
    ChainSprocket sprocket;
    sprocket.teeth = in.at("teeth").get<int>();
    sprocket.other_teeth = 24;
    sprocket.pitch_mm = num(in, "pitch_mm");
    sprocket.centre_distance_mm = 400.0;
    const PartLoad load = loadOf(sprocket, 0.0, power(num(in, "power_W"), PowerSense::driving), num(in, "speed_rpm"));
    return {{"chain_force_N", load.tangential_N},
            {"chain_speed_m_s", std::numbers::pi * load.diameter_mm * num(in, "speed_rpm") / 60000.0}};
}

Results gf14(const Json& in)
{
    const double span = num(in, "span_mm");
    const PartLoad load = loadOf(helical(in.at("teeth").get<int>(), num(in, "module_mm"), num(in, "pressure_angle_deg"), 0.0),
                                 0.5 * span, power(num(in, "power_W"), PowerSense::driving), num(in, "speed_rpm"));
    Shaft shaft(0.0, span);
    shaft.supportAt(0.0);
    shaft.supportAt(span);
    shaft.part(load);
    shaft.solve();
    return {{"torque_Nmm", std::abs(load.torque_Nmm)},
            {"Ft_N", load.tangential_N},
            {"F_resultant_N", std::hypot(load.tangential_N, load.radial_N)},
            {"moment_max_Nmm", std::abs(shaft.result().moment_Nmm.value)}};
}

Results gf15(const Json& in)
{
    const double d = num(in, "d_small_mm"), n = num(in, "speed_rpm");
    const double v = std::numbers::pi * d * n / 60000.0;
    const double mass_kg_m =
        num(in, "weight_density_N_m3") / num(in, "g_m_s2") * num(in, "belt_width_mm") * num(in, "belt_thickness_mm") * 1e-6;
    // At the limit of slip: effective strand forces in the ratio of the capstan equation; the wrap is that of the small pulley.
    const double wrap = std::numbers::pi - 2.0 * std::asin((num(in, "d_large_mm") - d) / (2.0 * num(in, "centre_distance_mm")));
    const double ratio = std::exp(num(in, "friction") * wrap), Ft = num(in, "power_W") / v, Tc = mass_kg_m * v * v;
    BeltPulley pulley;
    pulley.kind = BeltKind::flat;
    pulley.diameter_mm = d;
    pulley.other_diameter_mm = num(in, "d_large_mm");
    pulley.centre_distance_mm = num(in, "centre_distance_mm");
    // Pretension at rest that leaves exactly these forces when running: core takes the centrifugal force off again.
    pulley.tension = Pretension{0.5 * Ft * (ratio + 1.0) / (ratio - 1.0) + Tc, mass_kg_m};
    const PartLoad load = loadOf(pulley, 0.0, power(num(in, "power_W"), PowerSense::driving), n);
    const DerivationStep& force = stepOf(load, "shaft_load");
    return {{"Tc_N", Tc}, {"T1_N", input(force, "T1") + Tc}, {"T2_N", input(force, "T2") + Tc}};
}

Results gf16(const Json& in)
{
    BeltPulley pulley;
    pulley.kind = BeltKind::flat;
    pulley.diameter_mm = pulley.other_diameter_mm = 2.0 * num(in, "pulley_radius_mm");
    pulley.centre_distance_mm = 1000.0;
    pulley.tension = TensionRatio{std::exp(num(in, "friction") * num(in, "wrap_deg") * degree)};
    const PartLoad load = loadOf(pulley, 0.0, torque(num(in, "torque_Nmm"), PowerSense::driving), 100.0);
    const DerivationStep& force = stepOf(load, "shaft_load");
    return {{"T1_N", input(force, "T1")}, {"T2_N", input(force, "T2")}};
}

Results gf17(const Json& in)
{
    const Json &g = in.at("gear"), &p = in.at("pulley");
    const double T = (num(p, "T1_N") - num(p, "T2_N")) * 0.5 * num(p, "diameter_mm");
    BeltPulley pulley;
    pulley.kind = BeltKind::flat;
    pulley.diameter_mm = pulley.other_diameter_mm = num(p, "diameter_mm");
    pulley.centre_distance_mm = 3000.0;
    pulley.tension = StrandForces{num(p, "T1_N"), num(p, "T2_N")};
    pulley.direction_deg = 0.0; // horizontal, +y
    const PartLoad belt = loadOf(pulley, num(p, "x_mm"), torque(T, PowerSense::driving), -100.0);
    // Contact at -y: the separating force pushes to +y like the belt, the tangential one down like the pulley's weight.
    const PartLoad gear = loadOf(spur(num(g, "pitch_diameter_mm"), num(g, "pressure_angle_deg"), 180.0), num(g, "x_mm"),
                                 torque(T, PowerSense::driving), -100.0);
    Shaft shaft(0.0, num(in, "span_mm"));
    shaft.supportAt(0.0);
    shaft.supportAt(num(in, "span_mm"));
    shaft.part(gear);
    shaft.part(belt);
    shaft.force(num(p, "x_mm"), {0.0, 0.0, -num(p, "weight_N")});
    shaft.solve();
    const beam::State D = shaft.at(num(p, "x_mm"));
    return {{"torque_Nmm", std::abs(gear.torque_Nmm)},  {"Ft_N", gear.tangential_N},
            {"Fr_N", std::abs(gear.radial_N)},          {"RA_vertical_N", std::abs(shaft.Rz(0))},
            {"RB_vertical_N", std::abs(shaft.Rz(1))},   {"RA_horizontal_N", std::abs(shaft.Ry(0))},
            {"RB_horizontal_N", std::abs(shaft.Ry(1))}, {"moment_D_Nmm", std::hypot(D.My_Nmm, D.Mz_Nmm)}};
}

Results gf18(const Json& in)
{
    // The book leaves the pressure angle out: with mu = f cos alpha the angle cancels in the formulas of core.
    const double alpha = 20.0, lambda = num(in, "lead_angle_deg");
    Worm worm;
    worm.reference_diameter_mm = 50.0; // cancels
    worm.lead_angle_deg = lambda;
    worm.pressure_angle_deg = alpha;
    worm.friction = num(in, "friction") * std::cos(alpha * degree);
    const PartLoad load = loadOf(worm, 0.0, power(num(in, "power_W"), PowerSense::driving), num(in, "speed_rpm"));
    const double efficiency = std::abs(load.axial_N) * std::tan(lambda * degree) / load.tangential_N;
    return {{"efficiency", efficiency}, {"torque_out_Nmm", std::abs(load.torque_Nmm) * num(in, "ratio") * efficiency}};
}

Results gf19(const Json& in)
{
    Shaft shaft(0.0, 300.0);
    shaft.supports(in.at("supports"));
    shaft.forces(in.at("loads"));
    shaft.solve();
    return {{"A_y_N", shaft.Ry(0)}, {"A_z_N", shaft.Rz(0)}, {"B_y_N", shaft.Ry(1)}, {"B_z_N", shaft.Rz(1)}};
}

} // namespace

const Adapters& gearAdapters()
{
    static const Adapters all = {{"GF-01", gf01}, {"GF-02", gf02}, {"GF-03", gf03}, {"GF-04", gf04}, {"GF-05", gf05},
                                 {"GF-06", gf06}, {"GF-07", gf07}, {"GF-08", gf08}, {"GF-09", gf09}, {"GF-10", gf10},
                                 {"GF-11", gf11}, {"GF-12", gf12}, {"GF-13", gf13}, {"GF-14", gf14}, {"GF-15", gf15},
                                 {"GF-16", gf16}, {"GF-17", gf17}, {"GF-18", gf18}, {"GF-19", gf19}};
    return all;
}

} // namespace reference
