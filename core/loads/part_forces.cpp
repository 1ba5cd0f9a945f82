#include "core/loads/part_forces.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace shaftwright::loads {
namespace {

constexpr double degree = std::numbers::pi / 180.0;

/// Radial and tangential unit vectors at angle phi about +x, from +y towards +z; e_r x e_t = e_x.
struct Directions {
    double cosine, sine;
    explicit Directions(double phi_deg) : cosine(std::cos(phi_deg * degree)), sine(std::sin(phi_deg * degree))
    {
        // Quarter turns exactly, so that classroom shafts show clean zeros.
        const double quarter = std::remainder(phi_deg, 90.0);
        if (quarter == 0.0) {
            cosine = std::round(cosine);
            sine = std::round(sine);
        }
    }
};

double signOf(double value)
{
    return value > 0.0 ? 1.0 : value < 0.0 ? -1.0 : 0.0;
}

double handSign(Hand hand)
{
    return hand == Hand::right ? 1.0 : hand == Hand::left ? -1.0 : 0.0;
}

class PartForces {
public:
    PartForces(const PartContext& context, std::vector<PartLoad>& loads)
        : m_context(context), m_part(*context.part), m_case(*context.load_case), m_loads(loads)
    {
    }

    void append()
    {
        std::visit([this](const auto& body) { add(body); }, m_part.body);
        addWeight();
    }

private:
    const PartContext& m_context;
    const Part& m_part;
    const LoadCase& m_case;
    std::vector<PartLoad>& m_loads;

    // --- Helpers ---------------------------------------------------------------------------------------------

    void report(Severity severity, const char* code, const std::string& input, NamedValues values, const char* source,
                const char* variant = "")
    {
        Finding finding;
        finding.severity = severity;
        finding.code = code;
        finding.variant = variant;
        finding.subject = m_part.id.value;
        finding.path = "parts." + m_part.id.value + (input.empty() ? "" : "." + input);
        finding.case_id = m_case.id.value;
        finding.values = std::move(values);
        finding.values.set("part", m_part.name.empty() ? m_part.id.value : m_part.name);
        finding.source = source;
        m_context.findings->push_back(std::move(finding));
    }

    void stop(const char* code, const std::string& input, NamedValues values, const char* source = "", const char* variant = "")
    {
        report(Severity::stop, code, input, std::move(values), source, variant);
    }

    double assume(const std::optional<double>& input, const char* name, double value, const char* unit, const char* reason)
    {
        if (input)
            return *input;
        if (m_context.assumptions != nullptr)
            m_context.assumptions->push_back({"parts." + m_part.id.value + "." + name, value, unit, reason});
        return value;
    }

    /// Torque with the application factor; none: not settled, a finding stands already (or the part takes no torque).
    [[nodiscard]] std::optional<double> torque(std::size_t mesh) const
    {
        for (const MeshTorque& torque : m_context.torques) {
            if (torque.mesh_index == mesh)
                return torque.Mx_Nmm * m_context.K_A;
        }
        return std::nullopt;
    }

    [[nodiscard]] PartLoad blank() const
    {
        PartLoad load;
        load.part = m_part.id;
        load.x_mm = m_part.x_mm;
        return load;
    }

    static void step(PartLoad& load, const char* code, const char* symbol, const char* formula, NamedValues inputs, double result,
                     const char* unit, const char* source)
    {
        load.derivation.push_back({code, symbol, formula, std::move(inputs), result, unit, source});
    }

    void torqueSteps(PartLoad& load, std::size_t mesh, double Mx_Nmm)
    {
        const Drive* drive = m_part.drive ? &*m_part.drive : nullptr;
        if (mesh > 0)
            drive = &std::get<CylindricalGear>(m_part.body).further_meshes[mesh - 1].drive;
        if (drive == nullptr)
            return;
        if (drive->power_kW && m_case.speed_rpm != 0.0 && !drive->torque_Nmm) {
            step(load, "torque_from_power", "T", "60e6 P / (2 pi n) f K_A",
                 {{"P_kW", *drive->power_kW}, {"n_rpm", std::abs(m_case.speed_rpm)}, {"f", std::abs(m_case.power_factor)},
                  {"K_A", m_context.K_A}},
                 std::abs(Mx_Nmm), "N·mm", "definition of power");
        } else if (drive->takes_remaining) {
            step(load, "torque_remaining", "T", "-(sum of the other torques)", {}, Mx_Nmm, "N·mm", "balance of torque");
        } else {
            step(load, "torque_given", "T", "given, times f K_A", {{"f", m_case.power_factor}, {"K_A", m_context.K_A}}, std::abs(Mx_Nmm),
                 "N·mm", "input");
        }
    }

    /// Force from components in e_r, e_t, e_x at radius r; M = (r Ft, r Fx sin phi, -r Fx cos phi).
    static void place(PartLoad& load, const Directions& at, double radius_mm, double Fr, double Ft, double Fx)
    {
        load.force_N = {Fx, Fr * at.cosine - Ft * at.sine, Fr * at.sine + Ft * at.cosine};
        load.moment_Nmm = {radius_mm * Ft, radius_mm * Fx * at.sine, -radius_mm * Fx * at.cosine};
        load.torque_Nmm = load.moment_Nmm.x;
        load.tangential_N = std::abs(Ft);
        load.radial_N = Fr;
        load.axial_N = Fx;
        load.diameter_mm = 2.0 * radius_mm;
    }

    bool checkPressureAngle(double angle_deg, const char* input)
    {
        if (!(angle_deg > 5.0 && angle_deg < 40.0)) {
            stop("gear-size", input, {{"value", angle_deg}, {"low", 5.0}, {"high", 40.0}}, "", "pressure_angle");
            return false;
        }
        return true;
    }

    void caution(bool unusual, const char* input, double value, double low, double high)
    {
        if (unusual)
            report(Severity::caution, "value-unusual", input, {{"input", std::string(input)}, {"value", value}, {"low", low}, {"high", high}},
                   "usual range, handbooks");
    }

    // --- Cylindrical gears -------------------------------------------------------------------------------------

    void add(const CylindricalGear& gear)
    {
        const bool pitch_known = gear.working_diameter_mm.has_value();
        const int least_teeth = gear.internal ? 12 : 4;
        if (!pitch_known && (gear.teeth < least_teeth)) {
            stop("gear-size", "teeth", {{"value", double(gear.teeth)}, {"low", double(least_teeth)}}, "", "teeth");
            return;
        }
        if (!pitch_known && !(gear.normal_module_mm > 0.0 && gear.normal_module_mm <= 100.0)) {
            stop("gear-size", "normal_module_mm", {{"value", gear.normal_module_mm}, {"low", 0.0}, {"high", 100.0}}, "", "module");
            return;
        }
        if (pitch_known && !(*gear.working_diameter_mm > 0.0)) {
            stop("gear-size", "working_diameter_mm", {{"value", *gear.working_diameter_mm}}, "", "diameter");
            return;
        }
        if (gear.helix_deg < 0.0) {
            stop("gear-beta-sign", "helix_deg", {{"helix_deg", gear.helix_deg}});
            return;
        }
        if (gear.helix_deg >= 60.0) {
            stop("gear-size", "helix_deg", {{"value", gear.helix_deg}, {"low", 0.0}, {"high", 60.0}}, "", "helix");
            return;
        }
        if (gear.helix_deg > 0.0 && gear.hand == Hand::none && !gear.double_helical) {
            stop("gear-hand-missing", "hand", {{"helix_deg", gear.helix_deg}});
            return;
        }
        if (gear.helix_deg == 0.0 && gear.hand != Hand::none)
            report(Severity::note, "gear-hand-useless", "hand", {}, "");
        const double alpha_n_deg = assume(gear.pressure_angle_deg, "pressure_angle_deg", 20.0, "°", "pressure_angle_20");
        if (!checkPressureAngle(alpha_n_deg, "pressure_angle_deg"))
            return;
        if (m_context.assumptions != nullptr) {
            caution(!pitch_known && (gear.teeth < 12 || gear.teeth > 250), "teeth", gear.teeth, 12, 250);
            caution(!pitch_known && (gear.normal_module_mm < 0.5 || gear.normal_module_mm > 40.0), "normal_module_mm",
                    gear.normal_module_mm, 0.5, 40.0);
            caution(alpha_n_deg < 14.5 || alpha_n_deg > 25.0, "pressure_angle_deg", alpha_n_deg, 14.5, 25.0);
            const double low = gear.double_helical ? 15.0 : 5.0;
            const double high = gear.double_helical ? 45.0 : 35.0;
            caution(gear.helix_deg > 0.0 && (gear.helix_deg < low || gear.helix_deg > high), "helix_deg", gear.helix_deg, low, high);
        }

        double alpha_deg = alpha_n_deg;
        double beta_deg = gear.helix_deg;
        double diameter_mm = 0.0;
        if (pitch_known) {
            diameter_mm = *gear.working_diameter_mm;
        } else {
            diameter_mm = gear.teeth * gear.normal_module_mm / std::cos(beta_deg * degree);
            if (gear.centre_distance_mm && gear.mate_teeth) {
                const auto working = workingValues(gear, alpha_n_deg);
                if (!working)
                    return;
                diameter_mm = working->diameter_mm;
                beta_deg = working->helix_deg;
                alpha_deg = working->pressure_angle_deg;
            }
        }
        if (!gear.internal && m_context.shaft_diameter_mm > 0.0 && diameter_mm < m_context.shaft_diameter_mm) {
            stop("gear-smaller-than-shaft", "teeth", {{"pitch_diameter_mm", diameter_mm}, {"shaft_mm", m_context.shaft_diameter_mm}});
            return;
        }
        addMesh(gear, 0, gear.mesh_angle_deg, diameter_mm, alpha_deg, beta_deg);
        for (std::size_t i = 0; i < gear.further_meshes.size(); ++i)
            addMesh(gear, i + 1, gear.further_meshes[i].mesh_angle_deg, diameter_mm, alpha_deg, beta_deg);
    }

    struct Working {
        double diameter_mm, helix_deg, pressure_angle_deg;
    };

    /// Working pitch values at a given centre distance (ISO 21771).
    std::optional<Working> workingValues(const CylindricalGear& gear, double alpha_n_deg)
    {
        const double beta = gear.helix_deg * degree;
        const double teeth_term = gear.internal ? double(gear.teeth - *gear.mate_teeth) : double(gear.teeth + *gear.mate_teeth);
        if (*gear.mate_teeth < 1 || !(teeth_term > 0.0) || !(*gear.centre_distance_mm > 0.0)) {
            stop("gear-size", "mate_teeth", {{"value", double(*gear.mate_teeth)}, {"low", 1.0}}, "", "mate");
            return std::nullopt;
        }
        const double alpha_t = std::atan(std::tan(alpha_n_deg * degree) / std::cos(beta));
        const double a0_mm = gear.normal_module_mm * teeth_term / (2.0 * std::cos(beta));
        const double cos_alpha_wt = a0_mm * std::cos(alpha_t) / *gear.centre_distance_mm;
        if (cos_alpha_wt > 1.0) {
            stop("gear-centre-distance-small", "centre_distance_mm",
                 {{"centre_distance_mm", *gear.centre_distance_mm}, {"least_mm", a0_mm * std::cos(alpha_t)}}, "ISO 21771");
            return std::nullopt;
        }
        const double alpha_wt = std::acos(cos_alpha_wt);
        const double d_w = 2.0 * *gear.centre_distance_mm * gear.teeth / teeth_term;
        const double d = gear.teeth * gear.normal_module_mm / std::cos(beta);
        const double beta_w = std::atan(std::tan(beta) * d_w / d);
        const double alpha_wn = std::atan(std::tan(alpha_wt) * std::cos(beta_w));
        return Working{d_w, beta_w / degree, alpha_wn / degree};
    }

    void addMesh(const CylindricalGear& gear, std::size_t mesh, double angle_deg, double diameter_mm, double alpha_deg, double beta_deg)
    {
        const auto Mx = torque(mesh);
        if (!Mx)
            return;
        PartLoad load = blank();
        const double r = 0.5 * diameter_mm;
        const double s = signOf(*Mx);
        const double h = gear.double_helical ? 0.0 : handSign(gear.hand);
        const double i = gear.internal ? 1.0 : -1.0;
        const double Ft = std::abs(*Mx) / r;
        const double Fr = i * Ft * std::tan(alpha_deg * degree) / std::cos(beta_deg * degree);
        const double Fx = h == 0.0 ? 0.0 : -s * h * Ft * std::tan(beta_deg * degree);
        place(load, Directions(angle_deg), r, Fr, s * Ft, Fx);
        const char* source = "ISO 6336-1 (tangential force); components by geometry of the tooth normal";
        torqueSteps(load, mesh, *Mx);
        if (!gear.working_diameter_mm && !gear.centre_distance_mm) {
            step(load, "pitch_diameter", "d", "z m_n / cos beta",
                 {{"z", double(gear.teeth)}, {"m_n", gear.normal_module_mm}, {"beta", gear.helix_deg}}, diameter_mm, "mm", "ISO 21771");
        } else {
            step(load, "working_diameter", "d_w", gear.working_diameter_mm ? "given" : "2 a_w z1 / (z2 +- z1)",
                 gear.working_diameter_mm
                     ? NamedValues{}
                     : NamedValues{{"a_w", gear.centre_distance_mm.value_or(0.0)}, {"z1", double(gear.teeth)},
                                   {"z2", double(gear.mate_teeth.value_or(0))}},
                 diameter_mm, "mm", "ISO 21771");
        }
        step(load, "tangential_force", "Ft", "2 T / d", {{"T", std::abs(*Mx)}, {"d", diameter_mm}}, Ft, "N", source);
        step(load, "radial_force", "Fr", "Ft tan alpha_n / cos beta", {{"Ft", Ft}, {"alpha_n", alpha_deg}, {"beta", beta_deg}},
             std::abs(Fr), "N", source);
        if (beta_deg > 0.0) {
            if (gear.double_helical)
                step(load, "axial_force_double_helical", "Fa", "cancels between the two halves", {}, 0.0, "N", "symmetry");
            else
                step(load, "axial_force", "Fa", "Ft tan beta", {{"Ft", Ft}, {"beta", beta_deg}}, std::abs(Fx), "N", source);
        }
        m_loads.push_back(std::move(load));
    }

    // --- Bevel gears -------------------------------------------------------------------------------------------

    void add(const BevelGear& gear)
    {
        if (!(gear.cone_angle_deg > 0.0 && gear.cone_angle_deg < 90.0)) {
            stop("bevel-delta", "cone_angle_deg", {{"cone_angle_deg", gear.cone_angle_deg}}, "", "range");
            return;
        }
        if (gear.mate_cone_angle_deg) {
            const double shaft_angle_deg = gear.shaft_angle_deg.value_or(90.0);
            if (std::abs(gear.cone_angle_deg + *gear.mate_cone_angle_deg - shaft_angle_deg) > 0.01) {
                stop("bevel-delta", "mate_cone_angle_deg",
                     {{"cone_angle_deg", gear.cone_angle_deg},
                      {"mate_cone_angle_deg", *gear.mate_cone_angle_deg},
                      {"shaft_angle_deg", shaft_angle_deg}},
                     "", "sum");
                return;
            }
        }
        if (gear.spiral_deg < 0.0) {
            stop("gear-beta-sign", "spiral_deg", {{"helix_deg", gear.spiral_deg}});
            return;
        }
        if (gear.spiral_deg >= 50.0) {
            stop("gear-size", "spiral_deg", {{"value", gear.spiral_deg}, {"low", 0.0}, {"high", 50.0}}, "", "helix");
            return;
        }
        if (gear.spiral_deg > 0.0 && gear.hand == Hand::none) {
            stop("gear-hand-missing", "hand", {{"helix_deg", gear.spiral_deg}});
            return;
        }
        if (gear.spiral_deg == 0.0 && gear.hand != Hand::none)
            report(Severity::note, "gear-hand-useless", "hand", {}, "");
        const double alpha_deg = assume(gear.pressure_angle_deg, "pressure_angle_deg", 20.0, "°", "pressure_angle_20");
        if (!checkPressureAngle(alpha_deg, "pressure_angle_deg"))
            return;
        double d_m = 0.0;
        if (gear.mean_diameter_mm) {
            d_m = *gear.mean_diameter_mm;
        } else {
            if (gear.teeth < 4) {
                stop("gear-size", "teeth", {{"value", double(gear.teeth)}, {"low", 4.0}}, "", "teeth");
                return;
            }
            if (!(gear.outer_module_mm > 0.0 && gear.outer_module_mm <= 100.0)) {
                stop("gear-size", "outer_module_mm", {{"value", gear.outer_module_mm}, {"low", 0.0}, {"high", 100.0}}, "", "module");
                return;
            }
            d_m = gear.teeth * gear.outer_module_mm - gear.face_width_mm * std::sin(gear.cone_angle_deg * degree);
        }
        if (!(d_m > 0.0)) {
            stop("gear-size", "mean_diameter_mm", {{"value", d_m}}, "", "diameter");
            return;
        }
        const auto Mx = torque(0);
        if (!Mx)
            return;
        const double s = signOf(*Mx);
        const double h = handSign(gear.hand);
        const double c = gear.apex == ApexSide::plus ? 1.0 : -1.0;
        const double delta = gear.cone_angle_deg * degree;
        const double beta = gear.spiral_deg * degree;
        const double tan_alpha = std::tan(alpha_deg * degree);
        const double Ft = 2.0 * std::abs(*Mx) / d_m;
        const double Fr = Ft / std::cos(beta) * (s * c * h * std::sin(beta) * std::sin(delta) - tan_alpha * std::cos(delta));
        const double Fx = -Ft / std::cos(beta) * (s * h * std::sin(beta) * std::cos(delta) + c * tan_alpha * std::sin(delta));
        PartLoad load = blank();
        place(load, Directions(gear.mesh_angle_deg), 0.5 * d_m, Fr, s * Ft, Fx);
        const char* source = "components of the tooth normal force at the mean diameter; ISO 23509 terms";
        torqueSteps(load, 0, *Mx);
        step(load, "mean_diameter", "d_m", gear.mean_diameter_mm ? "given" : "z m_et - b sin delta",
             gear.mean_diameter_mm ? NamedValues{}
                                   : NamedValues{{"z", double(gear.teeth)}, {"m_et", gear.outer_module_mm}, {"b", gear.face_width_mm},
                                                 {"delta", gear.cone_angle_deg}},
             d_m, "mm", "ISO 23509");
        step(load, "tangential_force", "Ft", "2 T / d_m", {{"T", std::abs(*Mx)}, {"d_m", d_m}}, Ft, "N", source);
        const NamedValues angles = {{"Ft", Ft},
                                    {"alpha_n", alpha_deg},
                                    {"delta", gear.cone_angle_deg},
                                    {"beta_m", gear.spiral_deg},
                                    {"s", s},
                                    {"h", h},
                                    {"c", c}};
        step(load, "radial_force_bevel", "Fr", "Ft / cos beta_m (s c h sin beta_m sin delta - tan alpha_n cos delta)", angles, Fr, "N",
             source);
        step(load, "axial_force_bevel", "Fx", "-Ft / cos beta_m (s h sin beta_m cos delta + c tan alpha_n sin delta)", angles, Fx, "N",
             source);
        if (c * Fx > 0.0)
            report(Severity::caution, "bevel-thrust-to-apex", "hand", {{"Fx_N", std::abs(Fx)}, {"case", m_case.name}},
                   "common practice: thrust away from the apex");
        m_loads.push_back(std::move(load));
    }

    // --- Worm and wheel ----------------------------------------------------------------------------------------

    /// Coefficient of friction of hardened steel on bronze by sliding speed in m/s (ANSI/AGMA 6034 curve, from memory).
    static double wormFriction(double sliding_m_s)
    {
        if (sliding_m_s <= 0.0)
            return 0.15;
        if (sliding_m_s <= 0.0508)
            return 0.124 * std::exp(-2.233 * std::pow(sliding_m_s, 0.645));
        return 0.103 * std::exp(-1.185 * std::pow(sliding_m_s, 0.45)) + 0.012;
    }

    bool checkWorm(double gamma_deg, double mu, Hand hand, const char* gamma_input)
    {
        if (!(gamma_deg > 0.0 && gamma_deg < 60.0)) {
            stop("gear-size", gamma_input, {{"value", gamma_deg}, {"low", 0.0}, {"high", 60.0}}, "", "lead");
            return false;
        }
        if (!(mu >= 0.0 && mu <= 0.2)) {
            stop("gear-size", "friction", {{"value", mu}, {"low", 0.0}, {"high", 0.2}}, "", "friction");
            return false;
        }
        if (hand == Hand::none) {
            stop("gear-hand-missing", "hand", {{"helix_deg", gamma_deg}});
            return false;
        }
        return true;
    }

    void add(const Worm& worm)
    {
        if (!(worm.reference_diameter_mm > 0.0)) {
            stop("gear-size", "reference_diameter_mm", {{"value", worm.reference_diameter_mm}}, "", "diameter");
            return;
        }
        double gamma_deg = 0.0;
        if (worm.lead_angle_deg) {
            gamma_deg = *worm.lead_angle_deg;
        } else {
            if (worm.starts < 1 || !(worm.axial_module_mm > 0.0)) {
                stop("gear-size", "starts", {{"value", double(worm.starts)}, {"low", 1.0}}, "", "starts");
                return;
            }
            gamma_deg = std::atan(worm.starts * worm.axial_module_mm / worm.reference_diameter_mm) / degree;
        }
        const double alpha_deg = assume(worm.pressure_angle_deg, "pressure_angle_deg", 20.0, "°", "pressure_angle_20");
        if (!checkPressureAngle(alpha_deg, "pressure_angle_deg"))
            return;
        const double gamma = gamma_deg * degree;
        const double sliding_m_s =
            std::numbers::pi * worm.reference_diameter_mm * std::abs(m_case.speed_rpm) / (60000.0 * std::cos(gamma));
        const double mu = assume(worm.friction, "friction", wormFriction(sliding_m_s), "", "worm_friction");
        if (!checkWorm(gamma_deg, mu, worm.hand, worm.lead_angle_deg ? "lead_angle_deg" : "axial_module_mm"))
            return;
        const auto Mx = torque(0);
        if (!Mx)
            return;
        const double s = signOf(*Mx);
        const double h = handSign(worm.hand);
        // The worm drives when its torque opposes the rotation; at standstill the stated sense decides.
        const bool driving = m_case.speed_rpm != 0.0 ? s * signOf(m_case.speed_rpm) < 0.0
                                                     : m_part.drive && m_part.drive->power == PowerSense::driving;
        const double k = driving ? 1.0 : -1.0;
        const double alpha = alpha_deg * degree;
        if (!driving && s != 0.0 && std::cos(alpha) * std::tan(gamma) <= mu) {
            stop("worm-self-locking", "friction", {{"mu", mu}, {"limit", std::cos(alpha) * std::tan(gamma)}}, "statics of the thread");
            return;
        }
        const double Ft = 2.0 * std::abs(*Mx) / worm.reference_diameter_mm;
        const double Fn = Ft / (std::cos(alpha) * std::sin(gamma) + k * mu * std::cos(gamma));
        const double Fr = -Fn * std::sin(alpha);
        const double Fx = -s * h * Fn * (std::cos(alpha) * std::cos(gamma) - k * mu * std::sin(gamma));
        PartLoad load = blank();
        place(load, Directions(worm.mesh_angle_deg), 0.5 * worm.reference_diameter_mm, Fr, s * Ft, Fx);
        const char* source = "statics of the thread with friction; Carvill, Mechanical Engineer's Data Handbook, 2.10.6";
        torqueSteps(load, 0, *Mx);
        step(load, "lead_angle", "gamma", worm.lead_angle_deg ? "given" : "atan(z1 m_x / d_m1)",
             worm.lead_angle_deg ? NamedValues{}
                                 : NamedValues{{"z1", double(worm.starts)}, {"m_x", worm.axial_module_mm}, {"d_m1", worm.reference_diameter_mm}},
             gamma_deg, "°", source);
        step(load, "tangential_force", "Ft", "2 T / d_m1", {{"T", std::abs(*Mx)}, {"d_m1", worm.reference_diameter_mm}}, Ft, "N", source);
        step(load, "normal_force", "Fn", "Ft / (cos alpha_n sin gamma + k mu cos gamma)",
             {{"Ft", Ft}, {"alpha_n", alpha_deg}, {"gamma", gamma_deg}, {"mu", mu}, {"k", k}}, Fn, "N", source);
        step(load, "radial_force", "Fr", "Fn sin alpha_n", {{"Fn", Fn}, {"alpha_n", alpha_deg}}, std::abs(Fr), "N", source);
        step(load, "axial_force", "Fa", "Fn (cos alpha_n cos gamma - k mu sin gamma)",
             {{"Fn", Fn}, {"alpha_n", alpha_deg}, {"gamma", gamma_deg}, {"mu", mu}, {"k", k}}, std::abs(Fx), "N", source);
        m_loads.push_back(std::move(load));
    }

    void add(const WormWheel& wheel)
    {
        if (!(wheel.reference_diameter_mm > 0.0)) {
            stop("gear-size", "reference_diameter_mm", {{"value", wheel.reference_diameter_mm}}, "", "diameter");
            return;
        }
        const double alpha_deg = assume(wheel.pressure_angle_deg, "pressure_angle_deg", 20.0, "°", "pressure_angle_20");
        if (!checkPressureAngle(alpha_deg, "pressure_angle_deg"))
            return;
        // The sliding speed belongs to the worm, which is not on this shaft: 1 m/s taken when friction is open.
        const double mu = assume(wheel.friction, "friction", wormFriction(1.0), "", "wheel_friction");
        if (!checkWorm(wheel.lead_angle_deg, mu, wheel.hand, "lead_angle_deg"))
            return;
        const auto Mx = torque(0);
        if (!Mx)
            return;
        const double s = signOf(*Mx);
        const double h = handSign(wheel.hand);
        const double n = signOf(m_case.speed_rpm);
        double direction = 0.0;
        if (n != 0.0) {
            direction = -h * n; // sliding lies along the thread, whoever drives
            if (wheel.worm_direction && *wheel.worm_direction != static_cast<int>(direction)) {
                stop("mesh-mismatch", "worm_direction",
                     {{"given", double(*wheel.worm_direction)}, {"needed", direction}, {"speed_rpm", m_case.speed_rpm}}, "kinematics",
                     "worm_direction");
                return;
            }
        } else if (wheel.worm_direction) {
            direction = *wheel.worm_direction < 0 ? -1.0 : 1.0;
        } else if (s != 0.0) {
            stop("mesh-mismatch", "worm_direction", {}, "", "worm_direction_missing");
            return;
        }
        const double alpha = alpha_deg * degree;
        const double gamma = wheel.lead_angle_deg * degree;
        const bool driving = n != 0.0 ? s * n < 0.0 : m_part.drive && m_part.drive->power == PowerSense::driving;
        if (driving && s != 0.0 && std::cos(alpha) * std::tan(gamma) <= mu) {
            stop("worm-self-locking", "friction", {{"mu", mu}, {"limit", std::cos(alpha) * std::tan(gamma)}}, "statics of the thread");
            return;
        }
        const double dir_t = s * std::cos(alpha) * std::cos(gamma) + direction * mu * h * std::sin(gamma);
        const double dir_r = -std::sin(alpha);
        const double dir_x = -s * std::cos(alpha) * h * std::sin(gamma) + direction * mu * std::cos(gamma);
        const double Fn = s == 0.0 ? 0.0 : (2.0 * *Mx / wheel.reference_diameter_mm) / dir_t;
        PartLoad load = blank();
        place(load, Directions(wheel.mesh_angle_deg), 0.5 * wheel.reference_diameter_mm, Fn * dir_r, Fn * dir_t, Fn * dir_x);
        const char* source = "statics of the thread with friction, seen from the wheel";
        torqueSteps(load, 0, *Mx);
        step(load, "tangential_force", "Ft", "2 T / d_2", {{"T", std::abs(*Mx)}, {"d_2", wheel.reference_diameter_mm}},
             std::abs(Fn * dir_t), "N", source);
        step(load, "normal_force", "Fn", "Ft / |cos alpha_n cos gamma +- mu sin gamma|",
             {{"Ft", std::abs(Fn * dir_t)}, {"alpha_n", alpha_deg}, {"gamma", wheel.lead_angle_deg}, {"mu", mu}}, std::abs(Fn), "N", source);
        step(load, "radial_force", "Fr", "Fn sin alpha_n", {{"Fn", std::abs(Fn)}, {"alpha_n", alpha_deg}}, std::abs(Fn * dir_r), "N", source);
        step(load, "axial_force", "Fa", "Fn |cos alpha_n sin gamma +- mu cos gamma|",
             {{"Fn", std::abs(Fn)}, {"alpha_n", alpha_deg}, {"gamma", wheel.lead_angle_deg}, {"mu", mu}}, std::abs(Fn * dir_x), "N", source);
        m_loads.push_back(std::move(load));
    }

    // --- Belts and chains --------------------------------------------------------------------------------------

    struct Strands {
        double tight_N = 0.0, slack_N = 0.0;
    };

    void addStrands(double diameter_mm, double other_mm, double centre_mm, bool crossed, double direction_deg, double Mx, Strands strands,
                    Derivation derivation)
    {
        const double sin_g = (crossed ? -(other_mm + diameter_mm) : other_mm - diameter_mm) / (2.0 * centre_mm);
        const double cos_g = std::sqrt(1.0 - sin_g * sin_g);
        const Directions at(direction_deg);
        const auto along = [&](double side) {
            return std::pair{cos_g * at.cosine - side * sin_g * at.sine, cos_g * at.sine + side * sin_g * at.cosine};
        };
        const auto plus = along(1.0);
        const auto minus = along(-1.0);
        // Pull in the plus strand turns the pulley negatively: the tight strand is the minus one for Mx > 0.
        const double on_minus = Mx > 0.0 ? strands.tight_N : strands.slack_N;
        const double on_plus = Mx > 0.0 ? strands.slack_N : strands.tight_N;
        PartLoad load = blank();
        load.force_N = {0.0, on_minus * minus.first + on_plus * plus.first, on_minus * minus.second + on_plus * plus.second};
        load.moment_Nmm = {Mx, 0.0, 0.0};
        load.torque_Nmm = Mx;
        load.tangential_N = 2.0 * std::abs(Mx) / diameter_mm;
        load.radial_N = std::hypot(load.force_N.y, load.force_N.z);
        load.diameter_mm = diameter_mm;
        load.derivation = std::move(derivation);
        const double g_deg = std::asin(sin_g) / degree;
        step(load, "strand_angle", "g", crossed ? "asin(-(d_other + d) / (2 a))" : "asin((d_other - d) / (2 a))",
             {{"d_other", other_mm}, {"d", diameter_mm}, {"a", centre_mm}}, g_deg, "°", "geometry of the drive");
        step(load, "shaft_load", "F", "vector sum of T1 and T2 along their strands",
             {{"T1", strands.tight_N}, {"T2", strands.slack_N}, {"g", g_deg}, {"psi", direction_deg}}, load.radial_N, "N",
             "statics of the pulley");
        m_loads.push_back(std::move(load));
    }

    void add(const BeltPulley& pulley)
    {
        const double d = pulley.diameter_mm;
        if (!(d > 0.0) || !(pulley.other_diameter_mm > 0.0)) {
            stop("belt-geometry", d > 0.0 ? "other_diameter_mm" : "diameter_mm", {{"value", d > 0.0 ? pulley.other_diameter_mm : d}}, "",
                 "diameter");
            return;
        }
        if (!(pulley.centre_distance_mm > 0.5 * (d + pulley.other_diameter_mm))) {
            stop("belt-geometry", "centre_distance_mm",
                 {{"centre_distance_mm", pulley.centre_distance_mm}, {"least_mm", 0.5 * (d + pulley.other_diameter_mm)}});
            return;
        }
        const auto Mx = torque(0);
        if (!Mx)
            return;
        PartLoad scratch;
        torqueSteps(scratch, 0, *Mx);
        const double Ft = 2.0 * std::abs(*Mx) / d;
        step(scratch, "belt_useful_force", "Ft", "2 T / d", {{"T", std::abs(*Mx)}, {"d", d}}, Ft, "N", "definition of torque");
        BeltTension tension;
        if (pulley.tension) {
            tension = *pulley.tension;
        } else {
            static constexpr double factors[] = {2.0, 1.5, 1.5, 1.1}; // flat, V, ribbed, toothed: handbooks, from memory
            const double factor = factors[static_cast<std::size_t>(pulley.kind)];
            static constexpr const char* reasons[] = {"belt_factor_flat", "belt_factor_v", "belt_factor_v", "belt_factor_toothed"};
            assume(std::nullopt, "tension.force_over_useful", factor, "", reasons[static_cast<std::size_t>(pulley.kind)]);
            tension = TensionFactor{factor};
        }
        Strands strands;
        const bool fine = std::visit([&](const auto& way) { return strandsOf(way, pulley, Ft, *Mx, strands, scratch); }, tension);
        if (!fine)
            return;
        const double sin_g = (pulley.crossed ? -(pulley.other_diameter_mm + d) : pulley.other_diameter_mm - d) /
                             (2.0 * pulley.centre_distance_mm);
        const double wrap = std::numbers::pi - 2.0 * std::asin(sin_g);
        if (pulley.kind != BeltKind::toothed && pulley.friction && strands.slack_N > 0.0) {
            const bool wedged = pulley.kind != BeltKind::flat;
            const double mu_e =
                wedged ? *pulley.friction / std::sin(0.5 * pulley.groove_deg.value_or(38.0) * degree) : *pulley.friction;
            const double ratio = strands.tight_N / strands.slack_N;
            if (ratio > std::exp(mu_e * wrap))
                report(Severity::caution, "belt-slips", "tension",
                       {{"ratio", ratio}, {"limit", std::exp(mu_e * wrap)}, {"wrap_deg", wrap / degree}, {"mu_needed", std::log(ratio) / wrap}},
                       "Eytelwein's rope equation");
        }
        addStrands(d, pulley.other_diameter_mm, pulley.centre_distance_mm, pulley.crossed, pulley.direction_deg, *Mx, strands,
                   std::move(scratch.derivation));
    }

    bool strandsOf(const TensionFactor& way, const BeltPulley&, double Ft, double, Strands& strands, PartLoad& scratch)
    {
        const double k = way.force_over_useful;
        if (!(k >= 1.0)) {
            stop("belt-ratio", "tension.force_over_useful", {{"value", k}, {"low", 1.0}}, "", "factor");
            return false;
        }
        strands = {0.5 * (k + 1.0) * Ft, 0.5 * (k - 1.0) * Ft};
        step(scratch, "belt_tight", "T1", "(k + 1) Ft / 2", {{"k", k}, {"Ft", Ft}}, strands.tight_N, "N", "handbook factor k");
        step(scratch, "belt_slack", "T2", "(k - 1) Ft / 2", {{"k", k}, {"Ft", Ft}}, strands.slack_N, "N", "handbook factor k");
        return true;
    }

    bool strandsOf(const TensionRatio& way, const BeltPulley&, double Ft, double, Strands& strands, PartLoad& scratch)
    {
        const double rho = way.tight_over_slack;
        if (!(rho > 1.0)) {
            stop("belt-ratio", "tension.tight_over_slack", {{"value", rho}, {"low", 1.0}}, "", "ratio");
            return false;
        }
        strands.slack_N = Ft / (rho - 1.0);
        strands.tight_N = strands.slack_N + Ft;
        step(scratch, "belt_slack", "T2", "Ft / (rho - 1)", {{"Ft", Ft}, {"rho", rho}}, strands.slack_N, "N", "definition of the ratio");
        step(scratch, "belt_tight", "T1", "T2 + Ft", {{"T2", strands.slack_N}, {"Ft", Ft}}, strands.tight_N, "N", "equilibrium");
        return true;
    }

    bool strandsOf(const Pretension& way, const BeltPulley& pulley, double Ft, double, Strands& strands, PartLoad& scratch)
    {
        double F0 = way.strand_N;
        if (way.belt_mass_kg_m) {
            const double v = std::numbers::pi * pulley.diameter_mm * std::abs(m_case.speed_rpm) / 60000.0;
            F0 -= *way.belt_mass_kg_m * v * v;
        }
        if (F0 < 0.5 * Ft) {
            stop("belt-slack", "tension.strand_N", {{"F0_N", F0}, {"least_N", 0.5 * Ft}, {"Ft_N", Ft}}, "equilibrium of the strands");
            return false;
        }
        strands = {F0 + 0.5 * Ft, F0 - 0.5 * Ft};
        step(scratch, "belt_tight", "T1", "F0 + Ft / 2", {{"F0", F0}, {"Ft", Ft}}, strands.tight_N, "N", "fixed centre distance");
        step(scratch, "belt_slack", "T2", "F0 - Ft / 2", {{"F0", F0}, {"Ft", Ft}}, strands.slack_N, "N", "fixed centre distance");
        return true;
    }

    bool strandsOf(const StrandForces& way, const BeltPulley& pulley, double Ft, double Mx, Strands& strands, PartLoad&)
    {
        if (!(way.tight_N > way.slack_N && way.slack_N >= 0.0)) {
            stop("belt-ratio", "tension.tight_N", {{"value", way.tight_N}, {"low", way.slack_N}}, "", "strands");
            return false;
        }
        if (std::abs((way.tight_N - way.slack_N) - Ft) > 0.01 * std::max(Ft, 1e-9)) {
            stop("part-torque-contradiction", "tension.tight_N",
                 {{"tight_N", way.tight_N},
                  {"slack_N", way.slack_N},
                  {"torque_Nmm", std::abs(Mx)},
                  {"torque_from_strands_Nmm", 0.5 * pulley.diameter_mm * (way.tight_N - way.slack_N)}},
                 "equilibrium", "strands");
            return false;
        }
        strands = {way.tight_N, way.slack_N};
        return true;
    }

    void add(const ChainSprocket& sprocket)
    {
        if (sprocket.teeth < 6 || sprocket.other_teeth < 6) {
            const bool own = sprocket.teeth < 6;
            stop("gear-size", own ? "teeth" : "other_teeth", {{"value", double(own ? sprocket.teeth : sprocket.other_teeth)}, {"low", 6.0}}, "",
                 "teeth");
            return;
        }
        if (!(sprocket.pitch_mm > 0.0)) {
            stop("gear-size", "pitch_mm", {{"value", sprocket.pitch_mm}}, "", "diameter");
            return;
        }
        const double d = sprocket.pitch_mm / std::sin(std::numbers::pi / sprocket.teeth);
        const double other = sprocket.pitch_mm / std::sin(std::numbers::pi / sprocket.other_teeth);
        if (!(sprocket.centre_distance_mm > 0.5 * (d + other))) {
            stop("belt-geometry", "centre_distance_mm", {{"centre_distance_mm", sprocket.centre_distance_mm}, {"least_mm", 0.5 * (d + other)}});
            return;
        }
        if (m_context.assumptions != nullptr)
            caution(sprocket.teeth < 17 || sprocket.teeth > 120, "teeth", sprocket.teeth, 17, 120);
        const auto Mx = torque(0);
        if (!Mx)
            return;
        PartLoad scratch;
        torqueSteps(scratch, 0, *Mx);
        step(scratch, "sprocket_diameter", "d", "p / sin(180°/z)", {{"p", sprocket.pitch_mm}, {"z", double(sprocket.teeth)}}, d, "mm",
             "ISO 606");
        const double Ft = 2.0 * std::abs(*Mx) / d;
        step(scratch, "tangential_force", "Ft", "2 T / d", {{"T", std::abs(*Mx)}, {"d", d}}, Ft, "N", "definition of torque");
        Strands strands;
        if (sprocket.sag_force_N) {
            if (*sprocket.sag_force_N < 0.0) {
                stop("belt-ratio", "sag_force_N", {{"value", *sprocket.sag_force_N}, {"low", 0.0}}, "", "sag");
                return;
            }
            strands = {Ft + *sprocket.sag_force_N, *sprocket.sag_force_N};
        } else {
            const double k = assume(sprocket.force_factor, "force_factor", 1.05, "", "chain_factor");
            if (!(k >= 1.0)) {
                stop("belt-ratio", "force_factor", {{"value", k}, {"low", 1.0}}, "", "factor");
                return;
            }
            strands = {0.5 * (k + 1.0) * Ft, 0.5 * (k - 1.0) * Ft};
        }
        step(scratch, "belt_tight", "T1", sprocket.sag_force_N ? "Ft + Fs" : "(k + 1) Ft / 2", {{"Ft", Ft}}, strands.tight_N, "N",
             "handbook factor k");
        addStrands(d, other, sprocket.centre_distance_mm, false, sprocket.direction_deg, *Mx, strands, std::move(scratch.derivation));
    }

    // --- Others ------------------------------------------------------------------------------------------------

    void add(const Coupling& coupling)
    {
        PartLoad load = blank();
        bool any = false;
        if (const auto Mx = torque(0)) {
            load.moment_Nmm.x = *Mx;
            load.torque_Nmm = *Mx;
            torqueSteps(load, 0, *Mx);
            any = true;
        } else if (m_part.drive) {
            return;
        }
        if (coupling.radial_force_N) {
            if (*coupling.radial_force_N < 0.0) {
                stop("value-invalid", "radial_force_N", {{"value", *coupling.radial_force_N}, {"low", 0.0}});
                return;
            }
            if (const auto* given = std::get_if<GivenDirection>(&coupling.radial_direction)) {
                const Directions at(given->angle_deg);
                load.force_N.y += *coupling.radial_force_N * at.cosine;
                load.force_N.z += *coupling.radial_force_N * at.sine;
            } else {
                load.worst_direction_N = *coupling.radial_force_N;
            }
            any = true;
        }
        if (coupling.axial_force_N) {
            load.force_N.x += *coupling.axial_force_N;
            load.axial_N = *coupling.axial_force_N;
            any = true;
        }
        if (coupling.bending_moment_Nmm) {
            const Directions at(coupling.bending_moment_axis_deg.value_or(0.0));
            load.moment_Nmm.y += *coupling.bending_moment_Nmm * at.cosine;
            load.moment_Nmm.z += *coupling.bending_moment_Nmm * at.sine;
            any = true;
        }
        if (coupling.joint_angle_deg) {
            const double theta_deg = *coupling.joint_angle_deg;
            if (!(theta_deg >= 0.0 && theta_deg <= 45.0)) {
                stop("cardan-angle", "joint_angle_deg", {{"joint_angle_deg", theta_deg}, {"limit", 45.0}});
                return;
            }
            if (theta_deg > 15.0)
                report(Severity::caution, "cardan-angle", "joint_angle_deg", {{"joint_angle_deg", theta_deg}, {"limit", 15.0}},
                       "common practice");
            // Couple of Hooke's joint: mean part T tan(theta)/2 fixed in space, the other half turns at twice the shaft speed.
            const double half = 0.5 * std::abs(load.torque_Nmm) * std::tan(theta_deg * degree);
            if (coupling.joint_direction_deg) {
                const Directions at(*coupling.joint_direction_deg);
                const double s = signOf(load.torque_Nmm);
                load.moment_Nmm.y += s * half * at.cosine;
                load.moment_Nmm.z += s * half * at.sine;
                load.worst_moment_Nmm = half;
            } else {
                load.worst_moment_Nmm = 2.0 * half;
            }
            step(load, "cardan_couple", "M", "T tan theta", {{"T", std::abs(load.torque_Nmm)}, {"theta", theta_deg}}, 2.0 * half, "N·mm",
                 "statics of the cross of Hooke's joint");
            any = true;
        }
        if (any)
            m_loads.push_back(std::move(load));
    }

    void add(const Impeller& impeller)
    {
        PartLoad load = blank();
        if (const auto Mx = torque(0)) {
            load.moment_Nmm.x = *Mx;
            load.torque_Nmm = *Mx;
            torqueSteps(load, 0, *Mx);
        } else if (m_part.drive) {
            return;
        }
        const double f = m_case.free_load_factor;
        load.force_N = {f * impeller.thrust_N, f * impeller.radial_y_N, f * impeller.radial_z_N};
        load.moment_Nmm.y += f * impeller.offset_z_mm * impeller.thrust_N;
        load.moment_Nmm.z -= f * impeller.offset_y_mm * impeller.thrust_N;
        load.axial_N = load.force_N.x;
        if (impeller.rotating_radial_N) {
            if (*impeller.rotating_radial_N < 0.0) {
                stop("value-invalid", "rotating_radial_N", {{"value", *impeller.rotating_radial_N}, {"low", 0.0}});
                return;
            }
            load.rotating_force_N.y = f * *impeller.rotating_radial_N;
        }
        m_loads.push_back(std::move(load));
    }

    void add(const WeightBody& weight)
    {
        PartLoad load = blank();
        if (!m_part.mass_kg || !(*m_part.mass_kg > 0.0)) {
            stop("weight-value", "mass_kg", {{"value", m_part.mass_kg.value_or(0.0)}}, "", "mass");
            return;
        }
        const double omega = 2.0 * std::numbers::pi * std::abs(m_case.speed_rpm) / 60.0;
        double U_kg_mm = 0.0;
        if (const auto* grade = std::get_if<BalanceGrade>(&weight.unbalance)) {
            if (!(grade->mm_s > 0.0)) {
                stop("weight-value", "unbalance", {{"value", grade->mm_s}}, "ISO 21940-11", "grade");
                return;
            }
            U_kg_mm = omega > 0.0 ? *m_part.mass_kg * grade->mm_s / omega : 0.0;
        } else if (const auto* unbalance = std::get_if<UnbalanceGmm>(&weight.unbalance)) {
            U_kg_mm = unbalance->kg_mm;
        } else if (const auto* eccentricity = std::get_if<MassEccentricity>(&weight.unbalance)) {
            U_kg_mm = *m_part.mass_kg * eccentricity->mm;
        }
        if (U_kg_mm < 0.0) {
            stop("weight-value", "unbalance", {{"value", U_kg_mm}}, "", "eccentricity");
            return;
        }
        if (const auto Mx = torque(0)) {
            load.moment_Nmm.x = *Mx;
            load.torque_Nmm = *Mx;
            torqueSteps(load, 0, *Mx);
        }
        if (U_kg_mm > 0.0) {
            load.rotating_force_N.y = 1e-3 * U_kg_mm * omega * omega;
            step(load, "unbalance_force", "Fu", "U omega^2 / 1000", {{"U_kg_mm", U_kg_mm}, {"omega", omega}}, load.rotating_force_N.y, "N",
                 "ISO 21940-11");
        }
        m_loads.push_back(std::move(load)); // the weight itself is added for every part with a mass
    }

    void add(const PointLoad& point)
    {
        const Vector3& F = point.force_N;
        const Vector3& M = point.moment_Nmm;
        if (F == Vector3{} && M == Vector3{}) {
            if (m_context.assumptions != nullptr)
                report(Severity::note, "load-zero", "", {}, "");
            return;
        }
        const double f = m_case.free_load_factor;
        PartLoad load = blank();
        if (point.rotating)
            load.rotating_force_N = {0.0, f * std::hypot(F.y, F.z), 0.0};
        else
            load.force_N = {0.0, f * F.y, f * F.z};
        load.force_N.x = f * F.x;
        load.moment_Nmm = {f * (M.x + point.offset_y_mm * F.z - point.offset_z_mm * F.y), f * (M.y + point.offset_z_mm * F.x),
                           f * (M.z - point.offset_y_mm * F.x)};
        load.torque_Nmm = load.moment_Nmm.x;
        load.axial_N = load.force_N.x;
        m_loads.push_back(std::move(load));
    }

    void add(const DistributedLoad& line)
    {
        if (!(line.end_mm > m_part.x_mm)) {
            stop("load-range", "end_mm", {{"start_mm", m_part.x_mm}, {"end_mm", line.end_mm}});
            return;
        }
        const double f = m_case.free_load_factor;
        PartLoad load = blank();
        load.distributed = true;
        load.end_mm = line.end_mm;
        load.q0_N_mm = {f * line.start_N_per_mm.x, f * line.start_N_per_mm.y, f * line.start_N_per_mm.z};
        load.q1_N_mm = {f * line.end_N_per_mm.x, f * line.end_N_per_mm.y, f * line.end_N_per_mm.z};
        load.m0_Nmm_mm = f * line.start_torque_Nmm_per_mm;
        load.m1_Nmm_mm = f * line.end_torque_Nmm_per_mm;
        m_loads.push_back(std::move(load));
    }

    void addWeight()
    {
        if (!m_part.mass_kg)
            return;
        const double mass = *m_part.mass_kg;
        if (!(mass > 0.0)) {
            if (!std::holds_alternative<WeightBody>(m_part.body))
                stop("weight-value", "mass_kg", {{"value", mass}}, "", "mass");
            return;
        }
        const Vector3& g = m_context.gravity_m_s2;
        const Vector3 weight{mass * g.x, mass * g.y, mass * g.z};
        // Weight joins the part's own load, so that one arrow and one row stand for one part.
        if (!m_loads.empty() && m_loads.back().part == m_part.id && !m_loads.back().distributed) {
            PartLoad& load = m_loads.back();
            load.force_N.x += weight.x;
            load.force_N.y += weight.y;
            load.force_N.z += weight.z;
            step(load, "weight", "W", "m g", {{"m", mass}, {"g", std::hypot(g.x, g.z)}}, mass * std::hypot(g.x, g.z), "N",
                 "standard gravity 9.80665 m/s²");
        } else if (std::holds_alternative<DistributedLoad>(m_part.body) || std::holds_alternative<WeightBody>(m_part.body) ||
                   m_context.findings->empty() || m_context.findings->back().subject != m_part.id.value) {
            PartLoad load = blank();
            load.force_N = weight;
            step(load, "weight", "W", "m g", {{"m", mass}, {"g", std::hypot(g.x, g.z)}}, mass * std::hypot(g.x, g.z), "N",
                 "standard gravity 9.80665 m/s²");
            m_loads.push_back(std::move(load));
        }
    }
};

} // namespace

void appendPartLoads(const PartContext& context, std::vector<PartLoad>& loads)
{
    PartForces(context, loads).append();
}

} // namespace shaftwright::loads

namespace shaftwright {

double actingDiameter_mm(const Part& part)
{
    struct Diameter {
        double operator()(const CylindricalGear& gear) const
        {
            if (gear.working_diameter_mm)
                return *gear.working_diameter_mm;
            return gear.teeth * gear.normal_module_mm / std::cos(gear.helix_deg * loads::degree);
        }
        double operator()(const BevelGear& gear) const
        {
            if (gear.mean_diameter_mm)
                return *gear.mean_diameter_mm;
            return gear.teeth * gear.outer_module_mm - gear.face_width_mm * std::sin(gear.cone_angle_deg * loads::degree);
        }
        double operator()(const Worm& worm) const { return worm.reference_diameter_mm; }
        double operator()(const WormWheel& wheel) const { return wheel.reference_diameter_mm; }
        double operator()(const BeltPulley& pulley) const { return pulley.diameter_mm; }
        double operator()(const ChainSprocket& sprocket) const
        {
            return sprocket.teeth > 0 ? sprocket.pitch_mm / std::sin(std::numbers::pi / sprocket.teeth) : 0.0;
        }
        double operator()(const Coupling& coupling) const { return coupling.outer_mm; }
        double operator()(const Impeller& impeller) const { return impeller.outer_mm; }
        double operator()(const WeightBody& weight) const { return weight.outer_mm; }
        double operator()(const PointLoad&) const { return 0.0; }
        double operator()(const DistributedLoad&) const { return 0.0; }
    };
    return std::visit(Diameter{}, part.body);
}

} // namespace shaftwright
