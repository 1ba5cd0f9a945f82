#include "core/bearings/basic_rating.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>

namespace shaftwright
{
namespace
{

constexpr double pi = std::numbers::pi;
constexpr double A1 = 98.0665;   // N, mm: balls
constexpr double B1 = 551.13373; // N, mm: rollers
constexpr double modulusHertz_MPa = 207000.0;
constexpr double poissonHertz = 0.3;
constexpr double ballPressure_MPa = 4200.0;
constexpr double selfAligningPressure_MPa = 4600.0;
constexpr double fatiguePressure_MPa = 1500.0;

double sphereConformity(double gamma)
{
    return 0.5 * (1.0 + 1.0 / gamma);
}

/// [2f / (2f - 1)], 1 for a flat raceway.
double osculation(double conformity)
{
    return std::isinf(conformity) ? 1.0 : 2.0 * conformity / (2.0 * conformity - 1.0);
}

/// The other contact's share in f_c of balls: (1 + x^(10/3))^(-3/10).
double otherContact(double x)
{
    return std::pow(1.0 + std::pow(x, 10.0 / 3.0), -0.3);
}

/// Ratio R of the osculations, to the power 0.41.
double osculationRatio(double conformity_inner, double conformity_outer)
{
    return std::pow(osculation(conformity_inner) / osculation(conformity_outer), 0.41);
}

/// The curvature difference F(rho) that belongs to the axis ratio chi > 1. The series of the arithmetic-geometric mean
/// is kept apart from its first term, so that nothing cancels near chi = 1.
double differenceOfCurvature(double chi)
{
    const double chi2 = chi * chi;
    double a = 1.0, b = 1.0 / chi; // sqrt(1 - m), m = 1 - 1/chi^2
    double weight = 1.0, tail = 0.0;
    double c = 0.5 * (a - b);
    while (true) {
        tail += weight * c * c;
        const double next = 0.5 * (a + b);
        b = std::sqrt(a * b);
        a = next;
        c = 0.5 * (a - b);
        weight *= 2.0;
        if (c * c * weight < 1e-18 * tail)
            break;
    }
    const double sum = 0.5 * (chi2 - 1.0) / chi2 + tail; // 1 - E/K
    return ((chi2 - 1.0) / (2.0 * chi2) - (chi2 + 1.0) / (chi2 - 1.0) * tail) / (1.0 - sum);
}

enum class Kind { radial_ball, self_aligning, thrust_ball, radial_roller, thrust_roller };

bool isAxial(double contact_angle_rad)
{
    return contact_angle_rad > pi / 4.0 + 1e-9; // degrees may have been turned into radians on the way
}

bool isRightAngle(double contact_angle_rad)
{
    return std::abs(contact_angle_rad - pi / 2.0) < 1e-9;
}

Kind kindOf(GeometryClass geometry_class, double contact_angle_rad)
{
    const bool axial = isAxial(contact_angle_rad);
    if (isRoller(geometry_class))
        return axial ? Kind::thrust_roller : Kind::radial_roller;
    if (geometry_class == GeometryClass::self_aligning_ball && !axial)
        return Kind::self_aligning;
    return axial ? Kind::thrust_ball : Kind::radial_ball;
}

double bm(GeometryClass geometry_class)
{
    switch (geometry_class) {
    case GeometryClass::deep_groove_ball:
    case GeometryClass::deep_groove_ball_two_row:
    case GeometryClass::angular_contact_ball:
    case GeometryClass::angular_contact_ball_double:
    case GeometryClass::four_point_contact_ball:
    case GeometryClass::self_aligning_ball:
    case GeometryClass::thrust_ball:
    case GeometryClass::thrust_ball_double:
        return 1.3;
    case GeometryClass::cylindrical_roller:
    case GeometryClass::cylindrical_roller_full:
    case GeometryClass::needle:
    case GeometryClass::tapered_roller:
        return 1.1;
    case GeometryClass::spherical_roller:
    case GeometryClass::spherical_roller_thrust:
        return 1.15;
    case GeometryClass::needle_drawn_cup:
    case GeometryClass::cylindrical_roller_thrust:
    case GeometryClass::needle_roller_thrust:
        return 1.0;
    }
    return 1.0;
}

Finding invalid(const char* member, double value, const char* wanted)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = "value-invalid";
    finding.path = std::string("geometry.") + member;
    finding.values.set("value", value);
    finding.values.set("wanted", std::string(wanted));
    finding.source = "ISO 281:2007";
    return finding;
}

std::optional<Finding> fault(GeometryClass geometry_class, const InternalGeometry& g)
{
    const auto positive = [](double value) { return std::isfinite(value) && value > 0.0; };
    if (!positive(g.element_diameter_mm))
        return invalid("element_diameter_mm", g.element_diameter_mm, "> 0");
    if (!positive(g.pitch_diameter_mm))
        return invalid("pitch_diameter_mm", g.pitch_diameter_mm, "> 0");
    if (g.elements_per_row < 1)
        return invalid("elements_per_row", g.elements_per_row, ">= 1");
    if (g.rows < 1)
        return invalid("rows", g.rows, ">= 1");
    if (!(g.contact_angle_rad >= 0.0 && g.contact_angle_rad <= pi / 2.0 + 1e-9))
        return invalid("contact_angle_rad", g.contact_angle_rad, "0 ... pi/2");
    if (g.element_diameter_mm * std::max(std::cos(g.contact_angle_rad), 0.0) >= g.pitch_diameter_mm ||
        (isRightAngle(g.contact_angle_rad) && g.element_diameter_mm >= g.pitch_diameter_mm))
        return invalid("pitch_diameter_mm", g.pitch_diameter_mm, "> element_diameter_mm");
    if (isRoller(geometry_class)) {
        if (!positive(g.effective_length_mm))
            return invalid("effective_length_mm", g.effective_length_mm, "> 0");
        return std::nullopt;
    }
    const auto groove = [](double f) { return f == 0.0 || (std::isfinite(f) && f > 0.5); };
    if (!groove(g.conformity_inner))
        return invalid("conformity_inner", g.conformity_inner, "0, > 0.5");
    if (!groove(g.conformity_outer))
        return invalid("conformity_outer", g.conformity_outer, "0, > 0.5");
    return std::nullopt;
}

/// Groove radii that enter f_c and f_0.
struct Conformities {
    double fc_inner, fc_outer, f0_inner, f0_outer;
    bool reference;
};

Conformities conformitiesOf(Kind kind, const InternalGeometry& g, double gamma)
{
    constexpr double slack = 1e-9; // 0.52 read from text is still 0.52
    const double fi = g.conformity_inner, fe = g.conformity_outer;
    switch (kind) {
    case Kind::self_aligning: {
        const double inner = std::max(fi, 0.53);
        const double sphere = sphereConformity(gamma);
        return {inner, sphere, inner, sphere, fi <= 0.53 + slack};
    }
    case Kind::thrust_ball:
        if (fi <= 0.54 + slack && fe <= 0.54 + slack)
            return {0.535, 0.535, 0.54, 0.54, true};
        return {fi > 0.0 ? fi : 0.54, fe > 0.0 ? fe : 0.54, fi > 0.0 ? fi : 0.54, fe > 0.0 ? fe : 0.54, false};
    default:
        if (fi <= 0.52 + slack && fe <= 0.53 + slack)
            return {0.52, 0.52, 0.52, 0.53, true};
        return {fi > 0.0 ? fi : 0.52, fe > 0.0 ? fe : 0.53, fi > 0.0 ? fi : 0.52, fe > 0.0 ? fe : 0.53, false};
    }
}

double ballPower(double element_diameter_mm)
{
    return element_diameter_mm <= 25.4 ? std::pow(element_diameter_mm, 1.8) : 3.647 * std::pow(element_diameter_mm, 1.4);
}

/// Curvatures of the two raceways of a ball of this diameter, rolling direction and across it.
struct Curvatures {
    double inner_rolling, inner_across, outer_rolling, outer_across;
};

Curvatures curvaturesOf(double Dw, double gamma, double conformity_inner, double conformity_outer, bool sphere_outside)
{
    const double outer = -2.0 / Dw * gamma / (1.0 + gamma);
    return {2.0 / Dw * gamma / (1.0 - gamma), -1.0 / (conformity_inner * Dw), outer,
            sphere_outside ? outer : -1.0 / (conformity_outer * Dw)};
}

/// Smaller of the loads on the inner and the outer contact of a ball of diameter 1.
double unitLoad(double pressure_MPa, double gamma, double conformity_inner, double conformity_outer, bool sphere_outside)
{
    const Curvatures c = curvaturesOf(1.0, gamma, conformity_inner, conformity_outer, sphere_outside);
    return std::min(ballLoadAtPressure_N(pressure_MPa, 1.0, c.inner_rolling, c.inner_across),
                    ballLoadAtPressure_N(pressure_MPa, 1.0, c.outer_rolling, c.outer_across));
}

/// Greatest pressure to load of one contact, with everything on the way.
struct PointContact {
    double curvature_sum, curvature_difference, ratio, integral, load_N;
};

PointContact pointContact(double pressure_MPa, double ball_diameter_mm, double rolling, double across)
{
    PointContact c{};
    c.curvature_sum = 4.0 / ball_diameter_mm + rolling + across;
    c.curvature_difference = std::abs(rolling - across) / c.curvature_sum;
    c.ratio = ellipseRatio(c.curvature_difference);
    c.integral = ellipticIntegrals(1.0 - 1.0 / (c.ratio * c.ratio)).E;
    const double length = (1.0 - poissonHertz * poissonHertz) / modulusHertz_MPa * c.integral / c.curvature_sum;
    c.load_N = pressure_MPa * pressure_MPa * pressure_MPa * 32.0 * pi * c.ratio / 3.0 * length * length;
    return c;
}

double thrustRollerEta(double contact_angle_rad)
{
    if (isRightAngle(contact_angle_rad))
        return 0.85;
    const double alpha_deg = contact_angle_rad * 180.0 / pi;
    const double column_deg = alpha_deg < 60.0 - 1e-9 ? 50.0 : alpha_deg < 75.0 - 1e-9 ? 65.0 : 80.0;
    return 1.0 - 0.15 * std::sin(column_deg * pi / 180.0);
}

double pitchCorrection(double pitch_diameter_mm, bool roller)
{
    return pitch_diameter_mm <= 100.0 ? 1.0 : std::pow(100.0 / pitch_diameter_mm, roller ? 0.3 : 0.5);
}

const char* clauseC(Kind kind)
{
    switch (kind) {
    case Kind::radial_ball:
    case Kind::self_aligning:
        return "ISO 281:2007, 5.1";
    case Kind::thrust_ball:
        return "ISO 281:2007, 6.1";
    case Kind::radial_roller:
        return "ISO 281:2007, 7.1";
    case Kind::thrust_roller:
        return "ISO 281:2007, 8.1";
    }
    return "";
}

/// Takes down the steps when somebody wants to read them; costs nothing else.
class Steps
{
public:
    explicit Steps(Derivation* out) : m_out(out) {}
    explicit operator bool() const { return m_out != nullptr; }
    void add(const char* code, const char* symbol, const char* formula, NamedValues inputs, double result, const char* unit,
             const char* source)
    {
        m_out->push_back({code, symbol, formula, std::move(inputs), result, unit, source});
    }

    /// Both contacts of a ball at one pressure. Returns the smaller load.
    double addContacts(double pressure_MPa, double Dw, const Curvatures& c, const char* source)
    {
        const double inner_N = addContact("contact_load_inner", "Qi", pressure_MPa, Dw, c.inner_rolling, c.inner_across, source);
        const double outer_N = addContact("contact_load_outer", "Qe", pressure_MPa, Dw, c.outer_rolling, c.outer_across, source);
        return std::min(inner_N, outer_N);
    }

private:
    double addContact(const char* code, const char* symbol, double pressure_MPa, double Dw, double rolling, double across,
                      const char* source)
    {
        const PointContact c = pointContact(pressure_MPa, Dw, rolling, across);
        add(code, symbol, "p^3 (32 pi chi / 3) [(1 - nu^2) / Em E / rho]^2",
            {{"p", pressure_MPa},
             {"chi", c.ratio},
             {"nu", poissonHertz},
             {"Em", modulusHertz_MPa},
             {"E", c.integral},
             {"rho", c.curvature_sum}},
            c.load_N, "N", source);
        return c.load_N;
    }

    Derivation* m_out;
};

double toDegrees(double rad)
{
    return rad * 180.0 / pi;
}

Result<BasicRating> rate(GeometryClass geometry_class, const InternalGeometry& g, Derivation* derivation)
{
    if (auto finding = fault(geometry_class, g))
        return *finding;
    Steps steps(derivation);
    const Kind kind = kindOf(geometry_class, g.contact_angle_rad);
    const bool roller = isRoller(geometry_class);
    const bool right_angle = isRightAngle(g.contact_angle_rad);
    const double alpha = right_angle ? pi / 2.0 : g.contact_angle_rad;
    const double cosine = right_angle ? 0.0 : std::cos(alpha);
    const double sine = right_angle ? 1.0 : std::sin(alpha);
    const double Dw = g.element_diameter_mm, Dpw = g.pitch_diameter_mm, L = g.effective_length_mm;
    const double Z = g.elements_per_row, i = g.rows;
    const double alpha_deg = toDegrees(alpha);

    BasicRating r;
    r.axial = isAxial(alpha);
    const double gamma_static = Dw * cosine / Dpw;
    r.gamma = right_angle ? Dw / Dpw : gamma_static;
    r.b_m = bm(geometry_class);
    const Conformities f = roller ? Conformities{} : conformitiesOf(kind, g, r.gamma);

    const double gamma_limit = kind == Kind::thrust_ball ? 0.35 : roller ? 0.30 : 0.40;
    if (r.gamma > gamma_limit) {
        Finding finding;
        finding.severity = Severity::note;
        finding.code = "geometry-gamma-range";
        finding.values = {{"gamma", r.gamma}, {"limit", gamma_limit}};
        finding.source = clauseC(kind);
        r.findings.push_back(std::move(finding));
    }
    if (steps) {
        if (right_angle)
            steps.add("gamma", "gamma", "Dw / Dpw", {{"Dw", Dw}, {"Dpw", Dpw}}, r.gamma, "", clauseC(kind));
        else
            steps.add("gamma", "gamma", "Dw cos alpha / Dpw", {{"Dw", Dw}, {"alpha", alpha_deg}, {"Dpw", Dpw}}, r.gamma, "",
                      clauseC(kind));
        steps.add("material_factor", "bm", "bm", {}, r.b_m, "", clauseC(kind));
    }

    switch (kind) {
    case Kind::radial_ball:
    case Kind::self_aligning: {
        const double lambda = kind == Kind::self_aligning ? 1.0
                              : geometry_class == GeometryClass::deep_groove_ball_two_row ||
                                      (geometry_class == GeometryClass::deep_groove_ball && g.rows == 2)
                                  ? 0.90
                                  : 0.95;
        r.f_c = fcRadialBall(r.gamma, lambda, f.fc_inner, f.fc_outer);
        r.C_N = r.b_m * r.f_c * std::pow(i * cosine, 0.7) * std::pow(Z, 2.0 / 3.0) * ballPower(Dw);
        r.f_0 = kind == Kind::self_aligning ? f0SelfAligning(r.gamma, f.f0_inner) : f0RadialBall(r.gamma, f.f0_inner, f.f0_outer);
        r.C0_N = r.f_0 * i * Z * Dw * Dw * cosine;
        if (steps) {
            steps.add("geometry_factor", "fc",
                      "0.41 A1 lambda [2 fi / (2 fi - 1)]^0.41 gamma^0.3 (1 - gamma)^1.39 / (1 + gamma)^(1/3) "
                      "{1 + [1.04 ((1 - gamma) / (1 + gamma))^1.72 (fi (2 fe - 1) / (fe (2 fi - 1)))^0.41]^(10/3)}^-0.3",
                      {{"A1", A1}, {"lambda", lambda}, {"fi", f.fc_inner}, {"fe", f.fc_outer}, {"gamma", r.gamma}}, r.f_c, "",
                      "ISO/TR 1281-1");
            steps.add("dynamic_rating", "C",
                      Dw <= 25.4 ? "bm fc (i cos alpha)^0.7 Z^(2/3) Dw^1.8" : "3.647 bm fc (i cos alpha)^0.7 Z^(2/3) Dw^1.4",
                      {{"bm", r.b_m}, {"fc", r.f_c}, {"i", i}, {"alpha", alpha_deg}, {"Z", Z}, {"Dw", Dw}}, r.C_N, "N",
                      clauseC(kind));
            const bool sphere = kind == Kind::self_aligning;
            const double Q_N = steps.addContacts(sphere ? selfAligningPressure_MPa : ballPressure_MPa, Dw,
                                                 curvaturesOf(Dw, r.gamma, f.f0_inner, f.f0_outer, sphere), "ISO/TR 10657");
            steps.add("static_geometry_factor", "f0", "min(Qi, Qe) / (5 Dw^2)", {{"min(Qi, Qe)", Q_N}, {"Dw", Dw}}, r.f_0, "",
                      "ISO/TR 10657");
            steps.add("static_rating", "C0", "f0 i Z Dw^2 cos alpha",
                      {{"f0", r.f_0}, {"i", i}, {"Z", Z}, {"Dw", Dw}, {"alpha", alpha_deg}}, r.C0_N, "N", "ISO 76:2006, 5.1");
        }
        break;
    }
    case Kind::thrust_ball: {
        r.f_c = fcThrustBall(r.gamma, alpha, f.fc_inner, f.fc_outer);
        const double slant = right_angle ? 1.0 : std::pow(cosine, 0.7) * std::tan(alpha);
        r.C_N = r.b_m * r.f_c * slant * std::pow(Z, 2.0 / 3.0) * ballPower(Dw);
        r.f_0 = f0ThrustBall(gamma_static, f.f0_inner, f.f0_outer);
        r.C0_N = r.f_0 * Z * Dw * Dw * sine;
        if (steps) {
            steps.add("geometry_factor", "fc",
                      right_angle ? "A1 lambda eta [2 fi / (2 fi - 1)]^0.41 gamma^0.3 {1 + [(fi (2 fe - 1) / (fe (2 fi - "
                                    "1)))^0.41]^(10/3)}^-0.3"
                                  : "A1 lambda eta [2 fi / (2 fi - 1)]^0.41 gamma^0.3 (1 - gamma)^1.39 / (1 + gamma)^(1/3) "
                                    "{1 + [((1 - gamma) / (1 + gamma))^1.72 (fi (2 fe - 1) / (fe (2 fi - 1)))^0.41]^(10/3)}^-0.3",
                      {{"A1", A1},
                       {"lambda", 0.90},
                       {"eta", 1.0 - sine / 3.0},
                       {"fi", f.fc_inner},
                       {"fe", f.fc_outer},
                       {"gamma", r.gamma}},
                      r.f_c, "", "ISO/TR 1281-1");
            const char* formula = right_angle ? (Dw <= 25.4 ? "bm fc Z^(2/3) Dw^1.8" : "3.647 bm fc Z^(2/3) Dw^1.4")
                                              : (Dw <= 25.4 ? "bm fc (cos alpha)^0.7 tan alpha Z^(2/3) Dw^1.8"
                                                            : "3.647 bm fc (cos alpha)^0.7 tan alpha Z^(2/3) Dw^1.4");
            steps.add("dynamic_rating", "C", formula, {{"bm", r.b_m}, {"fc", r.f_c}, {"alpha", alpha_deg}, {"Z", Z}, {"Dw", Dw}},
                      r.C_N, "N", clauseC(kind));
            const double Q_N = steps.addContacts(ballPressure_MPa, Dw,
                                                 curvaturesOf(Dw, gamma_static, f.f0_inner, f.f0_outer, false), "ISO/TR 10657");
            steps.add("static_geometry_factor", "f0", "min(Qi, Qe) / Dw^2", {{"min(Qi, Qe)", Q_N}, {"Dw", Dw}}, r.f_0, "",
                      "ISO/TR 10657");
            steps.add("static_rating", "C0", "f0 Z Dw^2 sin alpha", {{"f0", r.f_0}, {"Z", Z}, {"Dw", Dw}, {"alpha", alpha_deg}},
                      r.C0_N, "N", "ISO 76:2006, 6.1");
        }
        break;
    }
    case Kind::radial_roller: {
        r.f_c = fcRadialRoller(r.gamma);
        r.C_N = r.b_m * r.f_c * std::pow(i * L * cosine, 7.0 / 9.0) * std::pow(Z, 0.75) * std::pow(Dw, 29.0 / 27.0);
        r.C0_N = 44.0 * (1.0 - gamma_static) * i * Z * L * Dw * cosine;
        if (steps) {
            steps.add("geometry_factor", "fc",
                      "207.9 lambda_nu gamma^(2/9) (1 - gamma)^(29/27) / (1 + gamma)^(1/4) {1 + [1.04 ((1 - gamma) / (1 + "
                      "gamma))^(143/108)]^(9/2)}^(-2/9)",
                      {{"lambda_nu", 0.83}, {"gamma", r.gamma}}, r.f_c, "", "ISO/TR 1281-1");
            steps.add("dynamic_rating", "C", "bm fc (i Lwe cos alpha)^(7/9) Z^(3/4) Dwe^(29/27)",
                      {{"bm", r.b_m}, {"fc", r.f_c}, {"i", i}, {"Lwe", L}, {"alpha", alpha_deg}, {"Z", Z}, {"Dwe", Dw}}, r.C_N,
                      "N", clauseC(kind));
            steps.add("static_rating", "C0", "44 (1 - Dwe cos alpha / Dpw) i Z Lwe Dwe cos alpha",
                      {{"Dwe", Dw}, {"alpha", alpha_deg}, {"Dpw", Dpw}, {"i", i}, {"Z", Z}, {"Lwe", L}}, r.C0_N, "N",
                      "ISO 76:2006, 7.1");
        }
        break;
    }
    case Kind::thrust_roller: {
        r.f_c = fcThrustRoller(r.gamma, alpha);
        const double shape = right_angle ? std::pow(L, 7.0 / 9.0) : std::pow(L * cosine, 7.0 / 9.0) * std::tan(alpha);
        r.C_N = r.b_m * r.f_c * shape * std::pow(Z, 0.75) * std::pow(Dw, 29.0 / 27.0);
        r.C0_N = 220.0 * (1.0 - gamma_static) * Z * L * Dw * sine;
        if (steps) {
            steps.add("geometry_factor", "fc",
                      right_angle ? "B1 lambda_nu eta gamma^(2/9) 2^(-2/9)"
                                  : "B1 lambda_nu eta gamma^(2/9) (1 - gamma)^(29/27) / (1 + gamma)^(1/4) {1 + [((1 - gamma) / "
                                    "(1 + gamma))^(143/108)]^(9/2)}^(-2/9)",
                      {{"B1", B1}, {"lambda_nu", 0.73}, {"eta", thrustRollerEta(alpha)}, {"gamma", r.gamma}}, r.f_c, "",
                      "ISO/TR 1281-1");
            steps.add("dynamic_rating", "C",
                      right_angle ? "bm fc Lwe^(7/9) Z^(3/4) Dwe^(29/27)"
                                  : "bm fc (Lwe cos alpha)^(7/9) tan alpha Z^(3/4) Dwe^(29/27)",
                      {{"bm", r.b_m}, {"fc", r.f_c}, {"Lwe", L}, {"alpha", alpha_deg}, {"Z", Z}, {"Dwe", Dw}}, r.C_N, "N",
                      clauseC(kind));
            steps.add("static_rating", "C0", "220 (1 - Dwe cos alpha / Dpw) Z Lwe Dwe sin alpha",
                      {{"Dwe", Dw}, {"alpha", alpha_deg}, {"Dpw", Dpw}, {"Z", Z}, {"Lwe", L}}, r.C0_N, "N", "ISO 76:2006, 8.1");
        }
        break;
    }
    }

    const double correction = pitchCorrection(Dpw, roller);
    r.Cu_N = r.C0_N / (roller ? 8.2 : 22.0) * correction;
    if (steps) {
        const char* formula = roller ? (Dpw <= 100.0 ? "C0 / 8.2" : "C0 / 8.2 (100 / Dpw)^0.3")
                                     : (Dpw <= 100.0 ? "C0 / 22" : "C0 / 22 (100 / Dpw)^0.5");
        steps.add("fatigue_load_limit", "Cu", formula, {{"C0", r.C0_N}, {"Dpw", Dpw}}, r.Cu_N, "N", "ISO 281:2007, B.3.3");
        if (const auto hertz = fatigueLoadLimitHertz_N(geometry_class, g)) {
            const double Qu_N = steps.addContacts(
                fatiguePressure_MPa, Dw,
                curvaturesOf(Dw, gamma_static, g.conformity_inner, g.conformity_outer, kind == Kind::self_aligning),
                "ISO 281:2007, B.3.2");
            steps.add("fatigue_load_limit_hertz", "Cu",
                      r.axial        ? (Dpw <= 100.0 ? "Z Qu sin alpha" : "Z Qu sin alpha (100 / Dpw)^0.5")
                      : Dpw <= 100.0 ? "0.2288 Z Qu i cos alpha"
                                     : "0.2288 Z Qu i cos alpha (100 / Dpw)^0.5",
                      {{"Z", Z}, {"Qu", Qu_N}, {"i", i}, {"alpha", alpha_deg}, {"Dpw", Dpw}}, *hertz, "N", "ISO 281:2007, B.3.2");
        }
    }
    return r;
}

} // namespace

Result<BasicRating> basicRating(GeometryClass geometry_class, const InternalGeometry& geometry)
{
    return rate(geometry_class, geometry, nullptr);
}

Derivation basicRatingDerivation(GeometryClass geometry_class, const InternalGeometry& geometry)
{
    Derivation derivation;
    if (!rate(geometry_class, geometry, &derivation).ok())
        derivation.clear();
    return derivation;
}

bool isRoller(GeometryClass geometry_class)
{
    switch (geometry_class) {
    case GeometryClass::deep_groove_ball:
    case GeometryClass::deep_groove_ball_two_row:
    case GeometryClass::angular_contact_ball:
    case GeometryClass::angular_contact_ball_double:
    case GeometryClass::four_point_contact_ball:
    case GeometryClass::self_aligning_ball:
    case GeometryClass::thrust_ball:
    case GeometryClass::thrust_ball_double:
        return false;
    default:
        return true;
    }
}

double fcRadialBall(double gamma, double lambda, double conformity_inner, double conformity_outer)
{
    const double ratio = osculationRatio(conformity_inner, conformity_outer);
    const double x = 1.04 * std::pow((1.0 - gamma) / (1.0 + gamma), 1.72) * ratio;
    return 0.41 * A1 * lambda * std::pow(osculation(conformity_inner), 0.41) * std::pow(gamma, 0.3) *
           std::pow(1.0 - gamma, 1.39) / std::cbrt(1.0 + gamma) * otherContact(x);
}

double fcThrustBall(double gamma, double contact_angle_rad, double conformity_inner, double conformity_outer)
{
    const double ratio = osculationRatio(conformity_inner, conformity_outer);
    const double eta = 1.0 - std::sin(contact_angle_rad) / 3.0;
    const double common = A1 * 0.90 * eta * std::pow(osculation(conformity_inner), 0.41) * std::pow(gamma, 0.3);
    if (isRightAngle(contact_angle_rad))
        return common * otherContact(ratio);
    return common * std::pow(1.0 - gamma, 1.39) / std::cbrt(1.0 + gamma) *
           otherContact(std::pow((1.0 - gamma) / (1.0 + gamma), 1.72) * ratio);
}

double fcRadialRoller(double gamma)
{
    const double x = 1.04 * std::pow((1.0 - gamma) / (1.0 + gamma), 143.0 / 108.0);
    return 207.9 * 0.83 * std::pow(gamma, 2.0 / 9.0) * std::pow(1.0 - gamma, 29.0 / 27.0) / std::pow(1.0 + gamma, 0.25) *
           std::pow(1.0 + std::pow(x, 4.5), -2.0 / 9.0);
}

double fcThrustRoller(double gamma, double contact_angle_rad)
{
    const double common = B1 * 0.73 * thrustRollerEta(contact_angle_rad) * std::pow(gamma, 2.0 / 9.0);
    if (isRightAngle(contact_angle_rad))
        return common * std::pow(2.0, -2.0 / 9.0);
    const double x = std::pow((1.0 - gamma) / (1.0 + gamma), 143.0 / 108.0);
    return common * std::pow(1.0 - gamma, 29.0 / 27.0) / std::pow(1.0 + gamma, 0.25) *
           std::pow(1.0 + std::pow(x, 4.5), -2.0 / 9.0);
}

double f0RadialBall(double gamma, double conformity_inner, double conformity_outer)
{
    return unitLoad(ballPressure_MPa, gamma, conformity_inner, conformity_outer, false) / 5.0;
}

double f0SelfAligning(double gamma, double conformity_inner)
{
    return unitLoad(selfAligningPressure_MPa, gamma, conformity_inner, 0.0, true) / 5.0;
}

double f0ThrustBall(double gamma, double conformity_inner, double conformity_outer)
{
    // All bearings with 90 deg and the groove radii of the standard share one value.
    static const double flat = unitLoad(ballPressure_MPa, 0.0, 0.54, 0.54, false);
    if (gamma == 0.0 && conformity_inner == 0.54 && conformity_outer == 0.54)
        return flat;
    return unitLoad(ballPressure_MPa, gamma, conformity_inner, conformity_outer, false);
}

double rowsFactor(bool roller, int rows)
{
    return std::pow(rows, roller ? 7.0 / 9.0 : 0.7);
}

double deepGroovePairFactor()
{
    return rowsFactor(false, 2) * 0.90 / 0.95;
}

double thrustRowsRating_N(std::span<const ThrustRow> rows, bool roller)
{
    double sum = 0.0, damage = 0.0;
    for (const ThrustRow& row : rows) {
        assert(row.elements > 0 && row.C_N > 0.0);
        const double share = roller ? row.elements * row.effective_length_mm : static_cast<double>(row.elements);
        sum += share;
        damage += std::pow(share / row.C_N, roller ? 4.5 : 10.0 / 3.0);
    }
    return rows.empty() ? 0.0 : sum * std::pow(damage, roller ? -2.0 / 9.0 : -0.3);
}

std::optional<double> fatigueLoadLimitHertz_N(GeometryClass geometry_class, const InternalGeometry& g)
{
    if (isRoller(geometry_class) || fault(geometry_class, g) || g.conformity_inner == 0.0 || g.conformity_outer == 0.0)
        return std::nullopt;
    const Kind kind = kindOf(geometry_class, g.contact_angle_rad);
    const bool right_angle = isRightAngle(g.contact_angle_rad);
    const double cosine = right_angle ? 0.0 : std::cos(g.contact_angle_rad);
    const double gamma = g.element_diameter_mm * cosine / g.pitch_diameter_mm;
    const double Qu_N =
        unitLoad(fatiguePressure_MPa, gamma, g.conformity_inner, g.conformity_outer, kind == Kind::self_aligning) *
        g.element_diameter_mm * g.element_diameter_mm;
    const double correction = pitchCorrection(g.pitch_diameter_mm, false);
    if (kind == Kind::thrust_ball)
        return g.elements_per_row * Qu_N * std::sin(g.contact_angle_rad) * correction;
    return 0.2288 * g.elements_per_row * Qu_N * g.rows * cosine * correction;
}

EllipticIntegrals ellipticIntegrals(double m)
{
    assert(m >= 0.0 && m < 1.0);
    double a = 1.0, b = std::sqrt(1.0 - m), c2 = m, weight = 0.5, sum = 0.0;
    while (true) {
        sum += weight * c2;
        if (c2 * weight < 1e-17)
            break;
        const double next = 0.5 * (a + b), c = 0.5 * (a - b);
        b = std::sqrt(a * b);
        a = next;
        c2 = c * c;
        weight *= 2.0;
    }
    const double K = pi / (2.0 * a);
    return {K, K * (1.0 - sum)};
}

double ellipseRatio(double curvature_difference)
{
    assert(curvature_difference >= 0.0 && curvature_difference < 1.0);
    if (curvature_difference < 1e-12)
        return 1.0;
    // Secant in ln chi from a power law that is within a few per cent, held between bounds that close in.
    double low = 0.0, high = 40.0;
    double t0 = 0.636 * std::log((1.0 + curvature_difference) / (1.0 - curvature_difference)), t1 = t0 * 1.01;
    double g0 = differenceOfCurvature(std::exp(t0)) - curvature_difference;
    for (int round = 0; round < 200; ++round) {
        const double g1 = differenceOfCurvature(std::exp(t1)) - curvature_difference;
        (g1 > 0.0 ? high : low) = t1;
        double next = g1 == g0 ? t1 : t1 - g1 * (t1 - t0) / (g1 - g0);
        if (g1 == 0.0 || std::abs(next - t1) <= 1e-13 * t1)
            return std::exp(next);
        if (!(next > low && next < high)) {
            if (high - low <= 1e-13 * high)
                return std::exp(t1);
            next = 0.5 * (low + high);
        }
        t0 = t1;
        g0 = g1;
        t1 = next;
    }
    return std::exp(t1);
}

double ballLoadAtPressure_N(double pressure_MPa, double ball_diameter_mm, double raceway_curvature_rolling_per_mm,
                            double raceway_curvature_across_per_mm)
{
    return pointContact(pressure_MPa, ball_diameter_mm, raceway_curvature_rolling_per_mm, raceway_curvature_across_per_mm).load_N;
}

} // namespace shaftwright
