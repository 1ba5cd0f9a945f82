// Cylindrical and bevel gears: components of the normal force of the tooth.
#include "core/loads/part_builder.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::loads
{
namespace
{

/// Pitch values at which the force acts.
struct Working {
    double diameter_mm = 0.0, helix_deg = 0.0, pressure_angle_deg = 0.0;
    Derivation derivation;
};

/// Limits of both spur and helical gears; false when a stop stands.
bool checkCylindricalGear(PartBuilder& build, const CylindricalGear& gear)
{
    const bool pitch_known = gear.working_diameter_mm.has_value();
    const int least_teeth = gear.internal ? 12 : 4;
    if (!pitch_known && gear.teeth < least_teeth) {
        build.stop("gear-size", "teeth", {{"value", double(gear.teeth)}, {"low", double(least_teeth)}}, "", "teeth");
        return false;
    }
    if (!pitch_known && !(gear.normal_module_mm > 0.0 && gear.normal_module_mm <= 100.0)) {
        build.stop("gear-size", "normal_module_mm", {{"value", gear.normal_module_mm}, {"low", 0.0}, {"high", 100.0}}, "",
                   "module");
        return false;
    }
    if (pitch_known && !(*gear.working_diameter_mm > 0.0)) {
        build.stop("gear-size", "working_diameter_mm", {{"value", *gear.working_diameter_mm}}, "", "diameter");
        return false;
    }
    if (gear.helix_deg < 0.0) {
        build.stop("gear-beta-sign", "helix_deg", {{"helix_deg", gear.helix_deg}});
        return false;
    }
    if (!(gear.helix_deg < 60.0)) {
        build.stop("gear-size", "helix_deg", {{"value", gear.helix_deg}, {"low", 0.0}, {"high", 60.0}}, "", "helix");
        return false;
    }
    if (gear.helix_deg > 0.0 && gear.hand == Hand::none && !gear.double_helical) {
        build.stop("gear-hand-missing", "hand", {{"helix_deg", gear.helix_deg}});
        return false;
    }
    if (gear.helix_deg == 0.0 && gear.hand != Hand::none)
        build.report(Severity::note, "gear-hand-useless", "hand", {}, "");
    if (!pitch_known) {
        build.caution(gear.teeth < 12 || gear.teeth > 250, "teeth", gear.teeth, 12.0, 250.0);
        build.caution(gear.normal_module_mm < 0.5 || gear.normal_module_mm > 40.0, "normal_module_mm", gear.normal_module_mm, 0.5,
                      40.0);
    }
    const double low = gear.double_helical ? 15.0 : 5.0;
    const double high = gear.double_helical ? 45.0 : 35.0;
    build.caution(gear.helix_deg > 0.0 && (gear.helix_deg < low || gear.helix_deg > high), "helix_deg", gear.helix_deg, low,
                  high);
    return true;
}

/// Pitch values of profile-shifted gears at their centre distance (ISO 21771).
std::optional<Working> shiftedValues(PartBuilder& build, const CylindricalGear& gear, double alpha_n_deg)
{
    const int mate_teeth = gear.mate_teeth.value_or(0);
    const int sum = gear.internal ? gear.teeth - mate_teeth : gear.teeth + mate_teeth;
    if (mate_teeth < 1 || sum < 1) {
        build.stop("gear-size", "mate_teeth", {{"value", double(mate_teeth)}, {"low", 1.0}}, "", "mate");
        return std::nullopt;
    }
    const double a_mm = *gear.centre_distance_mm;
    if (!(a_mm > 0.0)) {
        build.stop("gear-size", "centre_distance_mm", {{"value", a_mm}}, "", "diameter");
        return std::nullopt;
    }
    const double beta = gear.helix_deg * degree;
    const double alpha_t = std::atan(std::tan(alpha_n_deg * degree) / std::cos(beta));
    const double a0_mm = gear.normal_module_mm * sum / (2.0 * std::cos(beta));
    const double cos_alpha_wt = a0_mm * std::cos(alpha_t) / a_mm;
    if (!(cos_alpha_wt <= 1.0)) {
        build.stop("gear-centre-distance-small", "centre_distance_mm",
                   {{"centre_distance_mm", a_mm}, {"least_mm", a0_mm * std::cos(alpha_t)}}, "ISO 21771");
        return std::nullopt;
    }
    const double alpha_wt = std::acos(cos_alpha_wt);
    const double d_w_mm = 2.0 * a_mm * gear.teeth / sum;
    const double d_mm = gear.teeth * gear.normal_module_mm / std::cos(beta);
    const double beta_w = std::atan(std::tan(beta) * d_w_mm / d_mm);
    const double alpha_wn = std::atan(std::tan(alpha_wt) * std::cos(beta_w));

    PartLoad scratch;
    step(scratch, "working_diameter", "d_w", gear.internal ? "2 a_w z / (z - z_mate)" : "2 a_w z / (z + z_mate)",
         {{"a_w", a_mm}, {"z", double(gear.teeth)}, {"z_mate", double(mate_teeth)}}, d_w_mm, "mm", "ISO 21771");
    step(scratch, "working_transverse_angle", "alpha_wt", "acos(a_0 cos alpha_t / a_w)",
         {{"a_0", a0_mm}, {"alpha_t", alpha_t / degree}, {"a_w", a_mm}}, alpha_wt / degree, "\u00b0", "ISO 21771");
    step(scratch, "working_helix_angle", "beta_w", "atan(tan beta d_w / d)",
         {{"beta", gear.helix_deg}, {"d_w", d_w_mm}, {"d", d_mm}}, beta_w / degree, "\u00b0", "ISO 21771");
    step(scratch, "working_normal_angle", "alpha_wn", "atan(tan alpha_wt cos beta_w)",
         {{"alpha_wt", alpha_wt / degree}, {"beta_w", beta_w / degree}}, alpha_wn / degree, "\u00b0", "ISO 21771");
    return Working{d_w_mm, beta_w / degree, alpha_wn / degree, std::move(scratch.derivation)};
}

std::optional<Working> workingValues(PartBuilder& build, const CylindricalGear& gear, double alpha_n_deg)
{
    // The stated angles act at the diameter that is used.
    PartLoad scratch;
    if (gear.working_diameter_mm) {
        step(scratch, "working_diameter", "d_w", "given", {}, *gear.working_diameter_mm, "mm", "input");
        return Working{*gear.working_diameter_mm, gear.helix_deg, alpha_n_deg, std::move(scratch.derivation)};
    }
    if (gear.centre_distance_mm)
        return shiftedValues(build, gear, alpha_n_deg);
    const double d_mm = gear.teeth * gear.normal_module_mm / std::cos(gear.helix_deg * degree);
    step(scratch, "pitch_diameter", "d", "z m_n / cos beta",
         {{"z", double(gear.teeth)}, {"m_n", gear.normal_module_mm}, {"beta", gear.helix_deg}}, d_mm, "mm", "ISO 21771");
    return Working{d_mm, gear.helix_deg, alpha_n_deg, std::move(scratch.derivation)};
}

/// s = sign of the torque about +x, h = +1 right hand, -1 left, i = -1 external, +1 ring gear:
/// F = s Ft e_t + i Ft tan(alpha_n) / cos(beta) e_r - s h Ft tan(beta) e_x; no axial part of a double-helical gear.
/// Source: ISO 6336-1 (tangential force); Budynas and Nisbett, Shigley's Mechanical Engineering Design, ch. 13 (components).
void addMesh(PartBuilder& build, const CylindricalGear& gear, std::size_t mesh, double angle_deg, const Working& working)
{
    const MeshTorque* torque = build.neededTorque(mesh);
    if (torque == nullptr)
        return;
    const double Mx = torque->Mx_Nmm;
    const double s = signOf(Mx);
    const double h = gear.double_helical ? 0.0 : handSign(gear.hand);
    const double i = gear.internal ? 1.0 : -1.0;
    const double alpha = working.pressure_angle_deg * degree;
    const double beta = working.helix_deg * degree;
    const double Ft = 2.0 * std::abs(Mx) / working.diameter_mm;
    const double Fr = i * Ft * std::tan(alpha) / std::cos(beta);
    const double Fx = h == 0.0 || beta == 0.0 ? 0.0 : -s * h * Ft * std::tan(beta);

    PartLoad load = build.blank();
    place(load, Directions(angle_deg), 0.5 * working.diameter_mm, Fr, s * Ft, Fx);
    const char* source = "ISO 6336-1 (tangential force); components by geometry of the tooth normal";
    build.torqueSteps(load, mesh);
    load.derivation.insert(load.derivation.end(), working.derivation.begin(), working.derivation.end());
    step(load, "tangential_force", "Ft", "2 T / d", {{"T", std::abs(Mx)}, {"d", working.diameter_mm}}, Ft, "N", source);
    step(load, "radial_force", "Fr", "Ft tan alpha_n / cos beta",
         {{"Ft", Ft}, {"alpha_n", working.pressure_angle_deg}, {"beta", working.helix_deg}}, std::abs(Fr), "N", source);
    if (beta > 0.0 && gear.double_helical)
        step(load, "axial_force_double_helical", "Fa", "cancels between the two halves", {}, 0.0, "N", "symmetry");
    else if (beta > 0.0)
        step(load, "axial_force", "Fa", "Ft tan beta", {{"Ft", Ft}, {"beta", working.helix_deg}}, std::abs(Fx), "N", source);
    build.push(std::move(load));
}

} // namespace

void addPart(PartBuilder& build, const CylindricalGear& gear)
{
    if (!checkCylindricalGear(build, gear))
        return;
    const double alpha_n_deg = build.assume(gear.pressure_angle_deg, "pressure_angle_deg", 20.0, "\u00b0", "pressure_angle_20");
    if (!build.checkPressureAngle(alpha_n_deg, 14.5, 25.0))
        return;
    const auto working = workingValues(build, gear, alpha_n_deg);
    if (!working)
        return;
    const double shaft_mm = build.context().shaft_diameter_mm;
    if (!gear.internal && shaft_mm > 0.0 && working->diameter_mm < shaft_mm) {
        build.stop("gear-smaller-than-shaft", gear.working_diameter_mm ? "working_diameter_mm" : "teeth",
                   {{"pitch_diameter_mm", working->diameter_mm}, {"shaft_mm", shaft_mm}});
        return;
    }
    addMesh(build, gear, 0, gear.mesh_angle_deg, *working);
    for (std::size_t i = 0; i < gear.further_meshes.size(); ++i)
        addMesh(build, gear, i + 1, gear.further_meshes[i].mesh_angle_deg, *working);
}

namespace
{

bool checkBevelGear(PartBuilder& build, const BevelGear& gear)
{
    if (!(gear.cone_angle_deg > 0.0 && gear.cone_angle_deg < 90.0)) {
        build.stop("bevel-delta", "cone_angle_deg", {{"cone_angle_deg", gear.cone_angle_deg}}, "", "range");
        return false;
    }
    if (gear.mate_cone_angle_deg) {
        const double shaft_angle_deg = gear.shaft_angle_deg.value_or(90.0);
        if (!(std::abs(gear.cone_angle_deg + *gear.mate_cone_angle_deg - shaft_angle_deg) <= 0.01)) {
            build.stop("bevel-delta", "mate_cone_angle_deg",
                       {{"cone_angle_deg", gear.cone_angle_deg},
                        {"mate_cone_angle_deg", *gear.mate_cone_angle_deg},
                        {"shaft_angle_deg", shaft_angle_deg}},
                       "", "sum");
            return false;
        }
    }
    if (gear.spiral_deg < 0.0) {
        build.stop("gear-beta-sign", "spiral_deg", {{"helix_deg", gear.spiral_deg}});
        return false;
    }
    if (!(gear.spiral_deg < 50.0)) {
        build.stop("gear-size", "spiral_deg", {{"value", gear.spiral_deg}, {"low", 0.0}, {"high", 50.0}}, "", "helix");
        return false;
    }
    if (gear.spiral_deg > 0.0 && gear.hand == Hand::none) {
        build.stop("gear-hand-missing", "hand", {{"helix_deg", gear.spiral_deg}});
        return false;
    }
    if (gear.spiral_deg == 0.0 && gear.hand != Hand::none)
        build.report(Severity::note, "gear-hand-useless", "hand", {}, "");
    build.caution(gear.spiral_deg > 45.0, "spiral_deg", gear.spiral_deg, 0.0, 45.0);
    if (gear.mean_diameter_mm) {
        if (!(*gear.mean_diameter_mm > 0.0)) {
            build.stop("gear-size", "mean_diameter_mm", {{"value", *gear.mean_diameter_mm}}, "", "diameter");
            return false;
        }
        return true;
    }
    if (gear.teeth < 4) {
        build.stop("gear-size", "teeth", {{"value", double(gear.teeth)}, {"low", 4.0}}, "", "teeth");
        return false;
    }
    if (!(gear.outer_module_mm > 0.0 && gear.outer_module_mm <= 100.0)) {
        build.stop("gear-size", "outer_module_mm", {{"value", gear.outer_module_mm}, {"low", 0.0}, {"high", 100.0}}, "",
                   "module");
        return false;
    }
    // The mean diameter needs the face width: z m_et - b sin delta, and something must be left of the cone.
    const double outer_mm = gear.teeth * gear.outer_module_mm;
    const double most_mm = outer_mm / std::sin(gear.cone_angle_deg * degree);
    if (!(gear.face_width_mm > 0.0 && gear.face_width_mm < most_mm)) {
        build.stop("gear-size", "face_width_mm", {{"value", gear.face_width_mm}, {"low", 0.0}, {"high", most_mm}}, "",
                   "face_width");
        return false;
    }
    return true;
}

} // namespace

/// c = +1 apex on +x, -1 on -x; otherwise as for cylindrical gears, at the mean diameter:
/// Fr = Ft / cos beta_m (s c h sin beta_m sin delta - tan alpha_n cos delta) along e_r,
/// Fx = -Ft / cos beta_m (s h sin beta_m cos delta + c tan alpha_n sin delta) along e_x.
/// Derived from the normal of the tooth on the pitch cone; as Budynas and Nisbett, ch. 13, for straight teeth.
void addPart(PartBuilder& build, const BevelGear& gear)
{
    if (!checkBevelGear(build, gear))
        return;
    const double alpha_deg = build.assume(gear.pressure_angle_deg, "pressure_angle_deg", 20.0, "\u00b0", "pressure_angle_20");
    if (!build.checkPressureAngle(alpha_deg, 14.5, 25.0))
        return;
    const double delta = gear.cone_angle_deg * degree;
    const double beta = gear.spiral_deg * degree;
    const double d_m =
        gear.mean_diameter_mm ? *gear.mean_diameter_mm : gear.teeth * gear.outer_module_mm - gear.face_width_mm * std::sin(delta);
    // Usual greatest face width: 0.35 of the outer cone distance.
    const double cone_distance_mm = (d_m + gear.face_width_mm * std::sin(delta)) / (2.0 * std::sin(delta));
    build.caution(gear.face_width_mm > 0.35 * cone_distance_mm, "face_width_mm", gear.face_width_mm, 0.0,
                  0.35 * cone_distance_mm);
    const MeshTorque* torque = build.neededTorque(0);
    if (torque == nullptr)
        return;
    const double Mx = torque->Mx_Nmm;
    const double s = signOf(Mx);
    const double h = handSign(gear.hand);
    const double c = gear.apex == ApexSide::plus ? 1.0 : -1.0;
    const double tan_alpha = std::tan(alpha_deg * degree);
    const double Ft = 2.0 * std::abs(Mx) / d_m;
    const double Fr = Ft / std::cos(beta) * (s * c * h * std::sin(beta) * std::sin(delta) - tan_alpha * std::cos(delta));
    const double Fx = -Ft / std::cos(beta) * (s * h * std::sin(beta) * std::cos(delta) + c * tan_alpha * std::sin(delta));

    PartLoad load = build.blank();
    place(load, Directions(gear.mesh_angle_deg), 0.5 * d_m, Fr, s * Ft, Fx);
    const char* source = "components of the tooth normal force at the mean diameter; ISO 23509 terms";
    build.torqueSteps(load, 0);
    step(load, "mean_diameter", "d_m", gear.mean_diameter_mm ? "given" : "z m_et - b sin delta",
         gear.mean_diameter_mm ? NamedValues{}
                               : NamedValues{{"z", double(gear.teeth)},
                                             {"m_et", gear.outer_module_mm},
                                             {"b", gear.face_width_mm},
                                             {"delta", gear.cone_angle_deg}},
         d_m, "mm", "ISO 23509");
    step(load, "tangential_force", "Ft", "2 T / d_m", {{"T", std::abs(Mx)}, {"d_m", d_m}}, Ft, "N", source);
    const NamedValues angles = {
        {"Ft", Ft}, {"alpha_n", alpha_deg}, {"delta", gear.cone_angle_deg}, {"beta_m", gear.spiral_deg}, {"s", s}, {"h", h},
        {"c", c}};
    step(load, "radial_force_bevel", "Fr", "Ft / cos beta_m (s c h sin beta_m sin delta - tan alpha_n cos delta)", angles, Fr,
         "N", source);
    step(load, "axial_force_bevel", "Fx", "-Ft / cos beta_m (s h sin beta_m cos delta + c tan alpha_n sin delta)", angles, Fx,
         "N", source);
    if (c * Fx > 0.0)
        build.reportInCase(Severity::caution, "bevel-thrust-to-apex", "hand",
                           {{"Fx_N", std::abs(Fx)}, {"case", build.caseName()}}, "common practice: thrust away from the apex");
    build.push(std::move(load));
}

} // namespace shaftwright::loads
