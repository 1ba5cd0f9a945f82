// Worm and worm wheel with friction in the mesh; shaft angle 90 degrees.
#include "core/loads/part_builder.h"

#include <cmath>

namespace shaftwright::loads
{
namespace
{

/// Coefficient of friction of hardened steel on bronze by sliding speed in m/s (curves of ANSI/AGMA 6034, from memory).
double wormFriction(double sliding_m_s)
{
    if (sliding_m_s <= 0.0)
        return 0.15;
    if (sliding_m_s <= 0.0508)
        return 0.124 * std::exp(-2.233 * std::pow(sliding_m_s, 0.645));
    return 0.103 * std::exp(-1.185 * std::pow(sliding_m_s, 0.45)) + 0.012;
}

bool checkMesh(PartBuilder& build, double gamma_deg, double mu, bool mu_given, Hand hand, const char* gamma_input)
{
    if (!(gamma_deg > 0.0 && gamma_deg < 60.0)) {
        build.stop("gear-size", gamma_input, {{"value", gamma_deg}, {"low", 0.0}, {"high", 60.0}}, "", "lead");
        return false;
    }
    if (!(mu >= 0.0 && mu <= 0.2)) {
        build.stop("gear-size", "friction", {{"value", mu}, {"low", 0.0}, {"high", 0.2}}, "", "friction");
        return false;
    }
    if (hand == Hand::none) {
        build.stop("gear-hand-missing", "hand", {{"helix_deg", gamma_deg}});
        return false;
    }
    build.caution(gamma_deg < 3.0 || gamma_deg > 30.0, gamma_input, gamma_deg, 3.0, 30.0);
    build.caution(mu_given && (mu < 0.015 || mu > 0.1), "friction", mu, 0.015, 0.1);
    return true;
}

/// A driven worm locks when cos alpha_n tan gamma <= mu.
bool locks(PartBuilder& build, double alpha_deg, double gamma_deg, double mu)
{
    const double limit = std::cos(alpha_deg * degree) * std::tan(gamma_deg * degree);
    if (limit > mu)
        return false;
    build.stopInCase("worm-self-locking", "friction", {{"mu", mu}, {"limit", limit}}, "statics of the thread");
    return true;
}

} // namespace

/// k = +1 worm drives, -1 wheel drives: Fn = Ft / (cos alpha_n sin gamma + k mu cos gamma),
/// F = s Ft e_t - Fn sin alpha_n e_r - s h Fn (cos alpha_n cos gamma - k mu sin gamma) e_x.
/// Source: Carvill, Mechanical Engineer's Data Handbook, 2.10.6; Budynas and Nisbett, ch. 13.
void addPart(PartBuilder& build, const Worm& worm)
{
    if (!(worm.reference_diameter_mm > 0.0)) {
        build.stop("gear-size", "reference_diameter_mm", {{"value", worm.reference_diameter_mm}}, "", "diameter");
        return;
    }
    double gamma_deg = 0.0;
    if (worm.lead_angle_deg) {
        gamma_deg = *worm.lead_angle_deg;
    } else {
        if (worm.starts < 1) {
            build.stop("gear-size", "starts", {{"value", double(worm.starts)}, {"low", 1.0}}, "", "starts");
            return;
        }
        if (!(worm.axial_module_mm > 0.0 && worm.axial_module_mm <= 100.0)) {
            build.stop("gear-size", "axial_module_mm", {{"value", worm.axial_module_mm}, {"low", 0.0}, {"high", 100.0}}, "",
                       "module");
            return;
        }
        gamma_deg = std::atan(worm.starts * worm.axial_module_mm / worm.reference_diameter_mm) / degree;
    }
    const double alpha_deg = build.assume(worm.pressure_angle_deg, "pressure_angle_deg", 20.0, "\u00b0", "pressure_angle_20");
    if (!build.checkPressureAngle(alpha_deg, 14.5, 30.0))
        return;
    const double alpha = alpha_deg * degree;
    const double gamma = gamma_deg * degree;
    const double sliding_m_s =
        std::numbers::pi * worm.reference_diameter_mm * std::abs(build.loadCase().speed_rpm) / (60000.0 * std::cos(gamma));
    const double mu = build.assume(worm.friction, "friction", wormFriction(sliding_m_s), "", "worm_friction");
    if (!checkMesh(build, gamma_deg, mu, worm.friction.has_value(), worm.hand,
                   worm.lead_angle_deg ? "lead_angle_deg" : "axial_module_mm"))
        return;
    const MeshTorque* torque = build.neededTorque(0);
    if (torque == nullptr)
        return;
    const double Mx = torque->Mx_Nmm;
    const double s = signOf(Mx);
    const double h = handSign(worm.hand);
    const bool driving = build.givesPower(*torque);
    const double k = driving ? 1.0 : -1.0;
    if (!driving && s != 0.0 && locks(build, alpha_deg, gamma_deg, mu))
        return;
    PartLoad load = build.blank();
    build.torqueSteps(load, 0);
    if (s == 0.0) { // nothing to carry; a mesh that would lock has no denominator
        build.push(std::move(load));
        return;
    }
    const double Ft = 2.0 * std::abs(Mx) / worm.reference_diameter_mm;
    const double Fn = Ft / (std::cos(alpha) * std::sin(gamma) + k * mu * std::cos(gamma));
    const double Fr = -Fn * std::sin(alpha);
    const double Fx = -s * h * Fn * (std::cos(alpha) * std::cos(gamma) - k * mu * std::sin(gamma));
    place(load, Directions(worm.mesh_angle_deg), 0.5 * worm.reference_diameter_mm, Fr, s * Ft, Fx);
    const char* source = "statics of the thread with friction; Carvill, Mechanical Engineer's Data Handbook, 2.10.6";
    step(load, "lead_angle", "gamma", worm.lead_angle_deg ? "given" : "atan(z1 m_x / d_m1)",
         worm.lead_angle_deg
             ? NamedValues{}
             : NamedValues{{"z1", double(worm.starts)}, {"m_x", worm.axial_module_mm}, {"d_m1", worm.reference_diameter_mm}},
         gamma_deg, "\u00b0", source);
    step(load, "tangential_force", "Ft", "2 T / d_m1", {{"T", std::abs(Mx)}, {"d_m1", worm.reference_diameter_mm}}, Ft, "N",
         source);
    step(load, "normal_force", "Fn", "Ft / (cos alpha_n sin gamma + k mu cos gamma)",
         {{"Ft", Ft}, {"alpha_n", alpha_deg}, {"gamma", gamma_deg}, {"mu", mu}, {"k", k}}, Fn, "N", source);
    step(load, "radial_force", "Fr", "Fn sin alpha_n", {{"Fn", Fn}, {"alpha_n", alpha_deg}}, std::abs(Fr), "N", source);
    step(load, "axial_force", "Fa", "Fn (cos alpha_n cos gamma - k mu sin gamma)",
         {{"Fn", Fn}, {"alpha_n", alpha_deg}, {"gamma", gamma_deg}, {"mu", mu}, {"k", k}}, std::abs(Fx), "N", source);
    build.push(std::move(load));
}

/// The normal force acts along s cos alpha_n m - sin alpha_n e_r, the friction along the sliding of the worm's thread:
/// tau = cos gamma e_x + h sin gamma e_t, m = cos gamma e_t - h sin gamma e_x.
/// Sliding lies along the thread whoever drives, so the worm's surface moves towards -h sgn(n) of the wheel's axis.
void addPart(PartBuilder& build, const WormWheel& wheel)
{
    if (!(wheel.reference_diameter_mm > 0.0)) {
        build.stop("gear-size", "reference_diameter_mm", {{"value", wheel.reference_diameter_mm}}, "", "diameter");
        return;
    }
    const double alpha_deg = build.assume(wheel.pressure_angle_deg, "pressure_angle_deg", 20.0, "\u00b0", "pressure_angle_20");
    if (!build.checkPressureAngle(alpha_deg, 14.5, 30.0))
        return;
    // The sliding speed belongs to the worm, which is not on this shaft: 1 m/s taken when friction is open.
    const double mu = build.assume(wheel.friction, "friction", wormFriction(1.0), "", "wheel_friction");
    if (!checkMesh(build, wheel.lead_angle_deg, mu, wheel.friction.has_value(), wheel.hand, "lead_angle_deg"))
        return;
    if (wheel.worm_direction && *wheel.worm_direction != 1 && *wheel.worm_direction != -1) {
        build.stop("value-invalid", "worm_direction",
                   {{"path", "parts." + build.part().id.value + ".worm_direction"},
                    {"value", double(*wheel.worm_direction)},
                    {"low", -1.0},
                    {"high", 1.0}});
        return;
    }
    const MeshTorque* torque = build.neededTorque(0);
    if (torque == nullptr)
        return;
    const double Mx = torque->Mx_Nmm;
    const double s = signOf(Mx);
    const double h = handSign(wheel.hand);
    const double turning = signOf(build.loadCase().speed_rpm);
    double direction = turning != 0.0 ? -h * turning : double(wheel.worm_direction.value_or(0));
    if (turning != 0.0 && wheel.worm_direction && *wheel.worm_direction != static_cast<int>(direction)) {
        build.stopInCase(
            "mesh-mismatch", "worm_direction",
            {{"given", double(*wheel.worm_direction)}, {"needed", direction}, {"speed_rpm", build.loadCase().speed_rpm}},
            "kinematics", "worm_direction");
        return;
    }
    if (direction == 0.0 && s != 0.0) {
        build.stopInCase("mesh-mismatch", "worm_direction", {}, "", "worm_direction_missing");
        return;
    }
    if (s != 0.0 && build.givesPower(*torque) && locks(build, alpha_deg, wheel.lead_angle_deg, mu))
        return;
    PartLoad load = build.blank();
    build.torqueSteps(load, 0);
    if (s == 0.0) {
        build.push(std::move(load));
        return;
    }
    const double alpha = alpha_deg * degree;
    const double gamma = wheel.lead_angle_deg * degree;
    const double friction_sign = s * h * direction; // +1: friction helps the tangential force
    const double along_t = std::cos(alpha) * std::cos(gamma) + friction_sign * mu * std::sin(gamma);
    const double along_x = std::cos(alpha) * std::sin(gamma) - friction_sign * mu * std::cos(gamma);
    const double Ft = 2.0 * std::abs(Mx) / wheel.reference_diameter_mm;
    const double Fn = Ft / along_t;
    const double Fr = -Fn * std::sin(alpha);
    const double Fx = -s * h * Fn * along_x;
    place(load, Directions(wheel.mesh_angle_deg), 0.5 * wheel.reference_diameter_mm, Fr, s * Ft, Fx);
    const char* source = "statics of the thread with friction, seen from the wheel";
    step(load, "tangential_force", "Ft", "2 T / d_2", {{"T", std::abs(Mx)}, {"d_2", wheel.reference_diameter_mm}}, Ft, "N",
         source);
    const NamedValues mesh = {{"alpha_n", alpha_deg}, {"gamma", wheel.lead_angle_deg}, {"mu", mu}, {"k", friction_sign}};
    NamedValues inputs = mesh;
    inputs.set("Ft", Ft);
    step(load, "normal_force", "Fn", "Ft / (cos alpha_n cos gamma + k mu sin gamma)", inputs, Fn, "N", source);
    step(load, "radial_force", "Fr", "Fn sin alpha_n", {{"Fn", Fn}, {"alpha_n", alpha_deg}}, std::abs(Fr), "N", source);
    inputs = mesh;
    inputs.set("Fn", Fn);
    step(load, "axial_force", "Fa", "|Fn (cos alpha_n sin gamma - k mu cos gamma)|", inputs, std::abs(Fx), "N", source);
    build.push(std::move(load));
}

} // namespace shaftwright::loads
