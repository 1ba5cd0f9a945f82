#include "core/bearings/geometry_rules.h"

#include "core/bearings/basic_rating.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright
{
namespace
{

constexpr double pi = std::numbers::pi;
constexpr double steelDensity_kg_mm3 = 7.85e-6;
constexpr double grooveRadius = 0.52; // over D_w, inner; the limit of ISO 281 and ISO 76
constexpr double grooveRadiusOuter = 0.53;
constexpr double thrustGrooveRadius = 0.54;
constexpr double shoulderHeight = 0.20; // over D_w
constexpr double selfAligningShoulder = 0.12;
constexpr double ribHeight = 0.22;         // over D_we
constexpr double thrustGrooveDepth = 0.25; // over D_w

double round2(double x)
{
    return std::floor(100.0 * x + 0.5 + 1e-9) / 100.0;
}

/// Sums of lengths without the digits that binary arithmetic leaves behind, so that files stay readable.
double clean(double x)
{
    return std::round(x * 1e9) / 1e9;
}

double radians(double deg)
{
    return deg * pi / 180.0;
}

/// Elements whose centres stand at least spacing * D_w apart. 0: none fits.
int countBySpacing(double spacing, double Dw, double Dpw)
{
    const double sine = spacing * Dw / Dpw;
    return sine < 1.0 ? static_cast<int>(std::floor(pi / std::asin(sine) + 1e-9)) : 0;
}

/// Balls that fill at most this angle, side by side.
int countByFilling(double fill_deg, double Dw, double Dpw)
{
    return Dw < Dpw ? 1 + static_cast<int>(std::floor(radians(fill_deg) / (2.0 * std::asin(Dw / Dpw)) + 1e-9)) : 0;
}

Finding invalid(const char* path, double value)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = "value-invalid";
    finding.path = path;
    finding.values.set("value", value);
    finding.values.set("wanted", std::string("> 0"));
    finding.source = "ISO 15";
    return finding;
}

Finding impossible(double Dw, double Dpw)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = "geometry-impossible";
    finding.path = "geometry";
    finding.values = {{"element_diameter_mm", Dw}, {"pitch_diameter_mm", Dpw}};
    finding.source = "generic internal geometry";
    return finding;
}

double ring(double outer_mm, double inner_mm)
{
    return 0.25 * pi * (outer_mm * outer_mm - inner_mm * inner_mm);
}

/// Area of a circular segment of this height.
double segment(double radius, double height)
{
    return radius * radius * std::acos((radius - height) / radius) -
           (radius - height) * std::sqrt(2.0 * radius * height - height * height);
}

} // namespace

double drawnCupSheet_mm(double section_mm)
{
    return std::clamp(0.5 + 0.5 * (section_mm - 2.0), 0.5, 1.0);
}

Result<InternalGeometry> genericGeometry(const SeriesRule& rule, const BoundaryDimensions& size)
{
    const auto positive = [](double value) { return std::isfinite(value) && value > 0.0; };
    const double d = size.bore_mm, D = size.outer_mm, B = size.width_mm;
    if (!positive(d))
        return invalid("bore_mm", d);
    if (!positive(D) || D <= d)
        return invalid("outer_mm", D);
    if (!positive(B))
        return invalid("width_mm", B);

    const double S = D - d;
    double k = rule.k;
    if (rule.k_growth_section_mm > 0.0)
        k += rule.k_growth * std::min(1.0, S / rule.k_growth_section_mm);
    double angle_deg = size.contact_angle_deg;

    InternalGeometry g;
    g.pitch_diameter_mm = 0.5 * (D + d);
    const double Dpw = g.pitch_diameter_mm;
    double& Dw = g.element_diameter_mm;

    switch (rule.geometry_class) {
    case GeometryClass::deep_groove_ball:
        Dw = round2(std::min(k * S, rule.w * B));
        g.elements_per_row = countByFilling(rule.fill_deg, Dw, Dpw);
        break;
    case GeometryClass::angular_contact_ball:
        Dw = round2(std::min(k * S, rule.w * B));
        g.elements_per_row = countBySpacing(rule.spacing, Dw, Dpw);
        break;
    case GeometryClass::deep_groove_ball_two_row:
    case GeometryClass::angular_contact_ball_double:
        Dw = round2(std::min(k * S, rule.w * B));
        g.elements_per_row = countByFilling(rule.fill_deg, Dw, Dpw);
        g.rows = 2;
        g.row_distance_mm = round2(rule.row_distance * Dw);
        break;
    case GeometryClass::four_point_contact_ball:
        Dw = round2(std::min(k * S, rule.w * B));
        g.elements_per_row = static_cast<int>(std::floor(rule.coverage * pi * Dpw / Dw));
        break;
    case GeometryClass::self_aligning_ball: {
        Dw = round2(std::min(k * S + rule.k_offset_mm, rule.w * B));
        if (Dw >= Dpw)
            return impossible(Dw, Dpw);
        g.elements_per_row = static_cast<int>(std::floor(rule.coverage * pi / std::asin(Dw / Dpw)));
        g.rows = 2;
        const double distance = B - rule.row_distance * Dw;
        angle_deg = round2(std::atan(distance / Dpw) * 180.0 / pi); // the normals meet in the centre of the sphere
        g.row_distance_mm = round2(distance);
        break;
    }
    case GeometryClass::cylindrical_roller:
    case GeometryClass::cylindrical_roller_full:
        Dw = round2(k * S);
        g.roller_length_mm = round2((rule.w + rule.w_growth * std::clamp((B - 15.0) / 30.0, 0.0, 1.0)) * B);
        g.effective_length_mm = round2(rule.effective * g.roller_length_mm);
        g.elements_per_row = countBySpacing(rule.spacing, Dw, Dpw);
        break;
    case GeometryClass::needle: {
        const double Fw = size.inner_raceway_mm;
        if (!positive(Fw) || Fw <= d || Fw >= D)
            return invalid("inner_raceway_mm", Fw);
        Dw = round2(k * (D - Fw));
        g.pitch_diameter_mm = Fw + Dw;
        g.rows = rule.two_rows_from_mm > 0.0 && d >= rule.two_rows_from_mm ? 2 : 1;
        g.effective_length_mm = round2(rule.l * B / g.rows);
        g.roller_length_mm = round2(rule.w * B / g.rows);
        if (g.rows == 2)
            g.row_distance_mm = round2(rule.row_distance * B);
        g.elements_per_row = countBySpacing(rule.spacing, Dw, g.pitch_diameter_mm);
        break;
    }
    case GeometryClass::needle_drawn_cup: {
        const double Fw = size.inner_raceway_mm;
        if (!positive(Fw) || Fw >= D)
            return invalid("inner_raceway_mm", Fw);
        const double section = 0.5 * (D - Fw);
        Dw = round2(section - drawnCupSheet_mm(section));
        g.pitch_diameter_mm = Fw + Dw;
        g.effective_length_mm = round2(B - 2.0 * (B < 9.0 ? 1.9 : 2.3)); // sheet, play and rounded ends at both sides
        g.roller_length_mm = g.effective_length_mm;
        g.elements_per_row = countBySpacing(rule.spacing, Dw, g.pitch_diameter_mm);
        break;
    }
    case GeometryClass::tapered_roller:
        if (!positive(size.outer_width_mm))
            return invalid("outer_width_mm", size.outer_width_mm);
        if (!(angle_deg > 0.0 && angle_deg < 45.0))
            return invalid("contact_angle_deg", angle_deg);
        Dw = round2(k * S);
        g.roller_length_mm = round2(rule.w * size.outer_width_mm / std::cos(radians(angle_deg)));
        g.effective_length_mm = round2(rule.effective * g.roller_length_mm);
        g.elements_per_row = countBySpacing(rule.spacing, Dw, Dpw);
        break;
    case GeometryClass::spherical_roller: {
        Dw = round2(k * S);
        g.roller_length_mm = round2(rule.w * B);
        g.effective_length_mm = round2(rule.effective * g.roller_length_mm);
        g.elements_per_row = countBySpacing(rule.spacing, Dw, Dpw);
        g.rows = 2;
        const double distance = rule.row_distance * B;
        angle_deg = round2(std::atan(distance / Dpw) * 180.0 / pi);
        g.row_distance_mm = round2(distance);
        break;
    }
    case GeometryClass::thrust_ball:
    case GeometryClass::thrust_ball_double:
        Dw = round2(std::min(k * S, rule.w * B));
        g.elements_per_row = countBySpacing(rule.spacing, Dw, Dpw);
        break;
    case GeometryClass::cylindrical_roller_thrust:
        Dw = round2(k * B);
        g.effective_length_mm = round2(rule.l * S);
        g.roller_length_mm = g.effective_length_mm;
        g.elements_per_row = countBySpacing(rule.spacing, Dw, Dpw);
        break;
    case GeometryClass::needle_roller_thrust:
        Dw = round2(k * B);
        g.effective_length_mm = round2(rule.l * S);
        g.roller_length_mm = g.effective_length_mm;
        g.elements_per_row = countBySpacing(rule.spacing, Dw, Dpw);
        break;
    case GeometryClass::spherical_roller_thrust:
        Dw = round2(k * S);
        g.roller_length_mm = round2(std::min(rule.l * S, rule.w * B));
        g.effective_length_mm = round2(rule.effective * g.roller_length_mm);
        g.elements_per_row = countBySpacing(rule.spacing, Dw, Dpw);
        break;
    }
    if (!positive(Dw) || Dw >= g.pitch_diameter_mm || g.elements_per_row < 3 ||
        (isRoller(rule.geometry_class) && !positive(g.effective_length_mm)))
        return impossible(Dw, g.pitch_diameter_mm);

    const bool right_angle = std::abs(angle_deg - 90.0) < 1e-9;
    g.contact_angle_rad = right_angle ? pi / 2.0 : radians(angle_deg);
    const double radial = right_angle ? 0.0 : Dw * std::cos(g.contact_angle_rad);

    switch (rule.geometry_class) {
    case GeometryClass::deep_groove_ball:
    case GeometryClass::deep_groove_ball_two_row:
    case GeometryClass::angular_contact_ball:
    case GeometryClass::angular_contact_ball_double:
    case GeometryClass::four_point_contact_ball:
        g.conformity_inner = grooveRadius;
        g.conformity_outer = grooveRadiusOuter;
        g.raceway_inner_mm = Dpw - Dw;
        g.raceway_outer_mm = Dpw + Dw;
        g.shoulder_inner_mm = g.raceway_inner_mm + 2.0 * shoulderHeight * Dw;
        g.shoulder_outer_mm = g.raceway_outer_mm - 2.0 * shoulderHeight * Dw;
        break;
    case GeometryClass::self_aligning_ball:
        g.conformity_inner = grooveRadiusOuter;
        g.conformity_outer = 0.5 * (1.0 + Dpw / radial); // sphere about the bearing centre
        g.raceway_inner_mm = Dpw - Dw;
        g.raceway_outer_mm = Dpw + radial;
        g.shoulder_inner_mm = g.raceway_inner_mm + 2.0 * selfAligningShoulder * Dw;
        break;
    case GeometryClass::cylindrical_roller: // as NU: ribs at the outer ring
    case GeometryClass::cylindrical_roller_full:
    case GeometryClass::needle:
        g.raceway_inner_mm = g.pitch_diameter_mm - Dw;
        g.raceway_outer_mm = g.pitch_diameter_mm + Dw;
        g.shoulder_outer_mm = g.raceway_outer_mm - 2.0 * ribHeight * Dw;
        if (rule.geometry_class == GeometryClass::cylindrical_roller_full)
            g.shoulder_inner_mm = g.raceway_inner_mm + 2.0 * ribHeight * Dw;
        break;
    case GeometryClass::needle_drawn_cup:
        g.raceway_inner_mm = size.inner_raceway_mm;
        g.raceway_outer_mm = g.pitch_diameter_mm + Dw;
        g.shoulder_outer_mm = size.inner_raceway_mm + 0.2 * Dw; // the turned-in lips
        break;
    case GeometryClass::tapered_roller:
    case GeometryClass::spherical_roller:
    case GeometryClass::spherical_roller_thrust:
        g.raceway_inner_mm = Dpw - radial;
        g.raceway_outer_mm = Dpw + radial;
        break;
    case GeometryClass::thrust_ball:
    case GeometryClass::thrust_ball_double:
        g.conformity_inner = g.conformity_outer = thrustGrooveRadius;
        g.raceway_inner_mm = g.raceway_outer_mm = Dpw;
        break;
    case GeometryClass::cylindrical_roller_thrust:
    case GeometryClass::needle_roller_thrust:
        g.raceway_inner_mm = g.raceway_outer_mm = Dpw;
        break;
    }
    for (double* length :
         {&g.pitch_diameter_mm, &g.raceway_inner_mm, &g.raceway_outer_mm, &g.shoulder_inner_mm, &g.shoulder_outer_mm})
        *length = clean(*length);
    return g;
}

double needleInnerRingMass_kg(const BoundaryDimensions& size)
{
    return steelDensity_kg_mm3 * size.width_mm * ring(size.inner_raceway_mm, size.bore_mm);
}

double genericMass_kg(GeometryClass geometry_class, const BoundaryDimensions& size, const InternalGeometry& g)
{
    const double d = size.bore_mm, D = size.outer_mm, B = size.width_mm;
    const double Dw = g.element_diameter_mm, Dpw = g.pitch_diameter_mm, L = g.roller_length_mm;
    const double cosine = std::cos(g.contact_angle_rad);
    const int count = g.rows * g.elements_per_row;
    const double elements =
        count * (isRoller(geometry_class) ? 0.25 * pi * Dw * Dw * L : pi / 6.0 * Dw * Dw * Dw); // cages as a share of it

    double volume = 0.0;
    switch (geometry_class) {
    case GeometryClass::deep_groove_ball:
    case GeometryClass::deep_groove_ball_two_row:
    case GeometryClass::angular_contact_ball:
    case GeometryClass::angular_contact_ball_double:
    case GeometryClass::four_point_contact_ball: {
        const double h = shoulderHeight * Dw, groove = segment(grooveRadius * Dw, h);
        volume = B * ring(D, Dpw + Dw - 2.0 * h) - g.rows * groove * pi * (Dpw + Dw - h) + B * ring(Dpw - Dw + 2.0 * h, d) -
                 g.rows * groove * pi * (Dpw - Dw + h);
        if (geometry_class == GeometryClass::angular_contact_ball)
            volume += 1.10 * elements - 0.5 * (B - 0.8 * Dw) * ring(Dpw + Dw, Dpw + Dw - 2.0 * h);
        else
            volume += (g.rows == 2 ? 1.10 : 1.08) * elements;
        break;
    }
    case GeometryClass::self_aligning_ball: {
        const double h = selfAligningShoulder * Dw, groove = segment(grooveRadius * Dw, h);
        volume =
            B * ring(D, Dpw + 0.94 * Dw) + B * ring(Dpw - Dw + 2.0 * h, d) - 2.0 * groove * pi * (Dpw - Dw + h) + 1.08 * elements;
        break;
    }
    case GeometryClass::cylindrical_roller:
    case GeometryClass::cylindrical_roller_full:
    case GeometryClass::needle: {
        const double ribs = geometry_class == GeometryClass::needle ? 0.6 : 0.8;
        volume = B * ring(D, Dpw + Dw) + ribs * (B - g.rows * L) * ring(Dpw + Dw, Dpw + Dw - 2.0 * ribHeight * Dw) +
                 B * ring(Dpw - Dw, d) + 1.12 * elements;
        break;
    }
    case GeometryClass::needle_drawn_cup:
        volume = B * ring(D, Dpw + Dw) + (D - Dpw - Dw) * ring(Dpw + Dw, size.inner_raceway_mm + 0.2 * Dw) + 1.12 * elements;
        break;
    case GeometryClass::tapered_roller:
        volume = size.outer_width_mm * ring(D, Dpw + Dw * cosine) + 1.08 * size.inner_width_mm * ring(Dpw - Dw * cosine, d) +
                 1.09 * elements;
        break;
    case GeometryClass::spherical_roller:
        volume = 0.97 * B * ring(D, Dpw + Dw * cosine) + 1.08 * B * ring(Dpw - Dw * cosine, d) + 1.09 * elements;
        break;
    case GeometryClass::thrust_ball:
    case GeometryClass::thrust_ball_double: {
        const double depth = thrustGrooveDepth * Dw;
        const double washer = 0.95 * ring(D, d) * (0.5 * (B - Dw) + depth) - segment(0.535 * Dw, depth) * pi * Dpw;
        volume = 2.0 * washer + 1.08 * elements;
        if (geometry_class == GeometryClass::thrust_ball_double)
            volume += 0.9 * ring(D, size.centre_washer_bore_mm) * size.centre_washer_mm + 1.08 * elements;
        break;
    }
    case GeometryClass::cylindrical_roller_thrust:
        volume = 0.96 * ring(D, d) * (B - Dw) + 1.20 * elements;
        break;
    case GeometryClass::needle_roller_thrust:
        volume = 1.38 * elements; // cage and needles only, the washers are parts of their own
        break;
    case GeometryClass::spherical_roller_thrust:
        volume = 0.77 * ring(D, d) * B;
        break;
    }
    return steelDensity_kg_mm3 * volume;
}

} // namespace shaftwright
