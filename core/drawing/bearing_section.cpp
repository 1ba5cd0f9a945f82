#include "core/bearings/geometry_rules.h"
#include "core/drawing/bearing_shapes.h"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace shaftwright::drawing
{

namespace
{

constexpr double pi = 3.14159265358979323846;

bool positive(double value)
{
    return std::isfinite(value) && value > 0.0;
}

bool isPlain(Family family)
{
    return family == Family::plain_sintered || family == Family::plain_ptfe_composite || family == Family::plain_bronze ||
           family == Family::plain_hydrodynamic;
}

/// Kinds of which the inside is not drawn: their rows carry a class only by courtesy.
bool withoutSection(Family family)
{
    return family == Family::toroidal_roller || family == Family::angular_contact_thrust_ball ||
           family == Family::needle_thrust_combined || family == Family::magnetic || family == Family::linear_guide;
}

/// Usual proportions of a class where a row states no inside (typed or imported bearings). For the picture only.
SeriesRule usualRule(GeometryClass geometry_class)
{
    SeriesRule rule;
    rule.geometry_class = geometry_class;
    rule.spacing = 1.1;
    rule.effective = 0.94;
    switch (geometry_class) {
    case GeometryClass::deep_groove_ball:
        rule.k = 0.31, rule.w = 0.75, rule.fill_deg = 196.0;
        break;
    case GeometryClass::angular_contact_ball:
        rule.k = 0.31, rule.w = 0.80, rule.spacing = 1.05;
        break;
    case GeometryClass::deep_groove_ball_two_row:
        rule.k = 0.28, rule.w = 0.39, rule.fill_deg = 185.0, rule.row_distance = 1.05;
        break;
    case GeometryClass::angular_contact_ball_double:
        rule.k = 0.30, rule.w = 0.41, rule.fill_deg = 214.0, rule.row_distance = 1.05;
        break;
    case GeometryClass::four_point_contact_ball:
        rule.k = 0.30, rule.w = 0.75, rule.coverage = 0.86;
        break;
    case GeometryClass::self_aligning_ball:
        rule.k = 0.235, rule.k_offset_mm = 0.9, rule.w = 0.51, rule.coverage = 0.78, rule.row_distance = 1.03;
        break;
    case GeometryClass::cylindrical_roller:
        rule.k = 0.275, rule.w = 0.66, rule.spacing = 1.2;
        break;
    case GeometryClass::cylindrical_roller_full:
        rule.k = 0.265, rule.w = 0.72, rule.spacing = 1.008;
        break;
    case GeometryClass::needle:
        rule.k = 0.25, rule.w = 0.75, rule.l = 0.73, rule.spacing = 1.35;
        break;
    case GeometryClass::needle_drawn_cup:
        rule.spacing = 1.4;
        break;
    case GeometryClass::tapered_roller:
        rule.k = 0.245, rule.w = 0.86, rule.spacing = 1.12;
        break;
    case GeometryClass::spherical_roller:
        rule.k = 0.262, rule.w = 0.42, rule.row_distance = 0.49;
        break;
    case GeometryClass::thrust_ball:
    case GeometryClass::thrust_ball_double:
        rule.k = 0.358, rule.w = 0.56;
        break;
    case GeometryClass::cylindrical_roller_thrust:
        rule.k = 0.465, rule.l = 0.30, rule.spacing = 1.3;
        break;
    case GeometryClass::needle_roller_thrust:
        rule.k = 1.0, rule.l = 0.25, rule.spacing = 1.5;
        break;
    case GeometryClass::spherical_roller_thrust:
        rule.k = 0.295, rule.w = 0.62, rule.l = 0.37, rule.spacing = 1.06;
        break;
    }
    return rule;
}

bool contains(std::string_view text, std::string_view part)
{
    return text.find(part) != std::string_view::npos;
}
bool endsWith(std::string_view text, std::string_view end)
{
    return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

Ribs ribsOf(std::string_view designation, GeometryClass geometry_class)
{
    const std::string_view letters = designation.substr(0, std::min(designation.find_first_of("0123456789"), designation.size()));
    Ribs ribs; // NU
    if (geometry_class == GeometryClass::cylindrical_roller_full) {
        ribs = {true, true, false, true, false}; // NCF: one outer rib, a snap ring opposite
    } else if (contains(letters, "NUP")) {
        ribs = {true, false, true, true, true};
    } else if (contains(letters, "NJ")) {
        ribs = {true, false, true, true, false};
    } else if (letters == "N" || letters == "NF") {
        ribs = {true, true, false, letters == "NF", false};
    }
    return ribs;
}

void readCovers(std::string_view designation, RowDimensions& row)
{
    const std::size_t dash = designation.find('-');
    if (dash == std::string_view::npos)
        return;
    const std::string_view suffix = designation.substr(dash);
    if (contains(suffix, "2Z"))
        row.covers_left = row.covers_right = Covers::shields;
    else if (contains(suffix, "2RS") || contains(suffix, "2LS"))
        row.covers_left = row.covers_right = Covers::seals;
    else if (endsWith(suffix, "-Z"))
        row.covers_right = Covers::shields;
    else if (endsWith(suffix, "-RS"))
        row.covers_right = Covers::seals;
}

} // namespace

std::optional<RowDimensions> dimensionsOf(const CatalogueRow& source, Family family)
{
    if (!positive(source.outer_mm) || !positive(source.width_mm) || withoutSection(family) || isPlain(family))
        return std::nullopt;
    RowDimensions row;
    row.geometry_class = source.geometry_class;
    row.d = source.bore_mm;
    row.D = source.outer_mm;
    row.W = source.width_mm;
    row.inner_raceway = source.inner_raceway_mm;
    if (row.geometry_class == GeometryClass::needle_drawn_cup) {
        if (!positive(row.inner_raceway))
            row.inner_raceway = row.d;
        row.d = row.inner_raceway;
    } else if (row.geometry_class == GeometryClass::needle) {
        if (!positive(row.inner_raceway))
            row.inner_raceway = row.d;
        row.inner_ring = family != Family::needle_roller_no_inner && row.d < row.inner_raceway - 1e-6;
        if (!row.inner_ring)
            row.d = row.inner_raceway;
    }
    if (!positive(row.d) || row.D <= row.d)
        return std::nullopt;
    row.cone_width = positive(source.inner_width_mm) ? source.inner_width_mm : 0.95 * row.W;
    row.cup_width = positive(source.outer_width_mm) ? source.outer_width_mm : 0.80 * row.W;
    row.cup_small_end = source.outer_small_end_mm;
    row.chamfer = positive(source.chamfer_mm) ? source.chamfer_mm : 0.045 * row.section();
    if (source.geometry && positive(source.geometry->element_diameter_mm) && positive(source.geometry->pitch_diameter_mm)) {
        row.inside = *source.geometry;
    } else {
        BoundaryDimensions size;
        size.bore_mm = row.geometry_class == GeometryClass::needle && !row.inner_ring ? 0.85 * row.d : row.d;
        size.outer_mm = row.D;
        size.width_mm = row.W;
        size.inner_width_mm = row.cone_width;
        size.outer_width_mm = row.cup_width;
        size.inner_raceway_mm = row.inner_raceway;
        size.contact_angle_deg = source.contact_angle_deg;
        if (row.geometry_class == GeometryClass::tapered_roller && !positive(size.contact_angle_deg))
            size.contact_angle_deg = 14.0;
        if (row.geometry_class == GeometryClass::angular_contact_ball && !positive(size.contact_angle_deg))
            size.contact_angle_deg = 30.0;
        if (row.geometry_class == GeometryClass::angular_contact_ball_double && !positive(size.contact_angle_deg))
            size.contact_angle_deg = 30.0;
        SeriesRule rule = usualRule(row.geometry_class);
        if (row.geometry_class == GeometryClass::thrust_ball_double)
            rule.w *= 0.55; // H of both directions
        const Result<InternalGeometry> inside = genericGeometry(rule, size);
        if (!inside)
            return std::nullopt;
        row.inside = inside.value();
    }
    if (row.inside.element_diameter_mm >= row.section() * 1.02)
        return std::nullopt;
    if (row.geometry_class == GeometryClass::cylindrical_roller || row.geometry_class == GeometryClass::cylindrical_roller_full)
        row.ribs = ribsOf(source.designation, row.geometry_class);
    if (row.geometry_class == GeometryClass::deep_groove_ball)
        readCovers(source.designation, row);
    row.effective_from_back = source.pressure_centre_mm && std::isfinite(*source.pressure_centre_mm)
                                  ? *source.pressure_centre_mm
                                  : 0.5 * row.W + 0.5 * row.inside.pitch_diameter_mm *
                                                      std::tan(std::min(row.inside.contact_angle_rad, 80.0 * pi / 180.0));
    return row;
}

Sign signOf(const CatalogueRow& row, Family family)
{
    if (isPlain(family))
        return Sign::plain;
    switch (family) {
    case Family::toroidal_roller:
        return Sign::self_aligning_one_row;
    case Family::angular_contact_thrust_ball:
        return Sign::thrust_angular;
    case Family::needle_thrust_combined:
    case Family::magnetic:
    case Family::linear_guide:
        return Sign::general;
    default:
        break;
    }
    switch (row.geometry_class) {
    case GeometryClass::deep_groove_ball:
    case GeometryClass::cylindrical_roller:
    case GeometryClass::cylindrical_roller_full:
        return Sign::one_row;
    case GeometryClass::deep_groove_ball_two_row:
        return Sign::two_rows;
    case GeometryClass::angular_contact_ball:
    case GeometryClass::tapered_roller:
        return Sign::angular;
    case GeometryClass::angular_contact_ball_double:
        return Sign::angular_O;
    case GeometryClass::four_point_contact_ball:
        return Sign::four_point;
    case GeometryClass::self_aligning_ball:
    case GeometryClass::spherical_roller:
        return Sign::self_aligning;
    case GeometryClass::needle:
    case GeometryClass::needle_drawn_cup:
        return Sign::needle;
    case GeometryClass::thrust_ball:
    case GeometryClass::cylindrical_roller_thrust:
    case GeometryClass::needle_roller_thrust:
        return Sign::thrust;
    case GeometryClass::thrust_ball_double:
        return Sign::thrust_double;
    case GeometryClass::spherical_roller_thrust:
        return Sign::thrust_spherical;
    }
    return Sign::general;
}

void drawSign(SectionBuilder& builder, Sign sign, double bore_mm, double outer_mm, double width_mm)
{
    // Unit square in the middle of the outline: angles survive in any proportion. u to the right, v outwards.
    const double height = 0.5 * (outer_mm - bore_mm), side = std::min(width_mm, height), middle = 0.25 * (outer_mm + bore_mm);
    builder.white(rectangle(-0.5 * width_mm, 0.5 * bore_mm, 0.5 * width_mm, 0.5 * outer_mm));
    const auto at = [&](double u, double v) { return Point{(u - 0.5) * side, middle + (v - 0.5) * side}; };
    const auto line = [&](double u0, double v0, double u1, double v1) { builder.line(at(u0, v0), at(u1, v1), Stroke::thick); };
    const auto arc = [&](double u0, double v0, double u1, double v1) {
        const Point from = at(u0, v0), to = at(u1, v1);
        builder.curve({{from.x, from.y, -0.33}, {to.x, to.y, 0.0}}, Stroke::thick);
    };
    // ISO 8826-1 and ISO 8826-2:1994 table 1 (from memory): long line = axis of the elements, arc = with alignment, short
    // line = one row, lying along the contact line.
    switch (sign) {
    case Sign::general:
        line(0.167, 0.5, 0.833, 0.5);
        line(0.5, 0.167, 0.5, 0.833);
        break;
    case Sign::one_row:
        line(0.167, 0.5, 0.833, 0.5);
        line(0.5, 0.32, 0.5, 0.68);
        break;
    case Sign::two_rows:
        line(0.167, 0.5, 0.833, 0.5);
        line(0.333, 0.32, 0.333, 0.68);
        line(0.667, 0.32, 0.667, 0.68);
        break;
    case Sign::self_aligning_one_row:
        arc(0.167, 0.445, 0.833, 0.445);
        line(0.5, 0.375, 0.5, 0.735);
        break;
    case Sign::self_aligning:
        arc(0.167, 0.445, 0.833, 0.445);
        line(0.388, 0.358, 0.283, 0.702);
        line(0.612, 0.358, 0.717, 0.702);
        break;
    case Sign::angular:
        line(0.214, 0.665, 0.786, 0.335);
        line(0.410, 0.344, 0.590, 0.656);
        break;
    case Sign::angular_O:
        line(0.099, 0.61, 0.481, 0.39);
        line(0.519, 0.39, 0.901, 0.61);
        line(0.215, 0.37, 0.365, 0.63);
        line(0.785, 0.37, 0.635, 0.63);
        break;
    case Sign::angular_X:
        line(0.099, 0.39, 0.481, 0.61);
        line(0.519, 0.61, 0.901, 0.39);
        line(0.365, 0.37, 0.215, 0.63);
        line(0.635, 0.37, 0.785, 0.63);
        break;
    case Sign::needle:
        line(0.1, 0.5, 0.9, 0.5);
        line(0.5, 0.25, 0.5, 0.75);
        break;
    case Sign::four_point:
        line(0.167, 0.5, 0.833, 0.5);
        line(0.410, 0.344, 0.590, 0.656);
        line(0.590, 0.344, 0.410, 0.656);
        break;
    case Sign::thrust:
        line(0.5, 0.167, 0.5, 0.833);
        line(0.32, 0.5, 0.68, 0.5);
        break;
    case Sign::thrust_double:
        line(0.333, 0.167, 0.333, 0.833);
        line(0.667, 0.167, 0.667, 0.833);
        line(0.21, 0.5, 0.457, 0.5);
        line(0.543, 0.5, 0.79, 0.5);
        break;
    case Sign::thrust_spherical:
        arc(0.226, 0.697, 0.697, 0.226);
        line(0.412, 0.412, 0.666, 0.666);
        break;
    case Sign::thrust_angular:
        line(0.335, 0.786, 0.665, 0.214);
        line(0.344, 0.41, 0.656, 0.59);
        break;
    case Sign::plain:
        break; // a bush is its outline
    }
}

Detail detailFor(double half_section_px, std::optional<Detail> previous)
{
    constexpr std::array<Detail, 6> order{Detail::block,        Detail::general_sign, Detail::detailed_sign,
                                          Detail::tone_section, Detail::section,      Detail::full_section};
    constexpr std::array<double, 5> limits{8.0, 14.0, 28.0, 45.0, 90.0}; // px, from the first level to the next
    constexpr double hysteresis = 0.15;
    std::size_t level = 0;
    for (std::size_t i = 0; i < limits.size(); ++i) {
        double limit = limits[i];
        // A level that is shown is left only when its bound is passed by the hysteresis.
        if (previous)
            limit *= *previous > order[i] ? 1.0 - hysteresis : 1.0 + hysteresis;
        if (half_section_px >= limit)
            level = i + 1;
    }
    return order[level];
}

Group bearingSection(const BearingChoice& choice, std::optional<Carries> carries, const SectionStyle& style)
{
    SectionBuilder builder(style);
    const bool drawable = positive(style.scale);
    double total = 0.0;
    for (const SetRow& row : choice.rows)
        total += positive(row.row.width_mm) ? row.row.width_mm : 0.0;
    double left = -0.5 * total;
    const std::size_t count = drawable ? choice.rows.size() : 0;
    for (std::size_t i = 0; i < count; ++i) {
        const CatalogueRow& source = choice.rows[i].row;
        if (!positive(source.width_mm) || !positive(source.outer_mm) || !(source.bore_mm < source.outer_mm) ||
            !std::isfinite(source.bore_mm))
            continue;
        const double middle = left + 0.5 * source.width_mm;
        left += source.width_mm;
        // Sense: stated for the row, else by the set (back-to-back: effective centres outside), else of the support.
        Carries sense = carries.value_or(Carries::plus);
        if (choice.rows[i].carries)
            sense = *choice.rows[i].carries;
        else if (choice.arrangement == SetArrangement::O)
            sense = i + 1 < count || count == 1 ? Carries::plus : Carries::minus;
        else if (choice.arrangement == SetArrangement::X)
            sense = i == 0 && count > 1 ? Carries::minus : Carries::plus;
        builder.place(middle, sense == Carries::minus);
        const double lean = i % 2 == 0 ? 45.0 : -45.0;
        const Hatching ring{lean, style.hatch_spacing_mm, false}, other{-lean, style.hatch_spacing_mm, false};

        const double bore = std::max(source.bore_mm, 0.0);
        double inner = bore;
        if ((source.geometry_class == GeometryClass::needle || source.geometry_class == GeometryClass::needle_drawn_cup) &&
            choice.family == Family::needle_roller_no_inner && positive(source.inner_raceway_mm))
            inner = source.inner_raceway_mm;
        if (style.detail == Detail::block) {
            builder.white(rectangle(-0.5 * source.width_mm, 0.5 * inner, 0.5 * source.width_mm, 0.5 * source.outer_mm),
                          Half::both, Stroke::thin, Ink::hatch);
            continue;
        }
        if (isPlain(choice.family) && style.detail >= Detail::tone_section) {
            const double wall = 0.5 * (source.outer_mm - inner);
            drawBush(builder, inner, source.outer_mm, source.width_mm,
                     choice.family == Family::plain_ptfe_composite ? std::min(0.25 * wall, 0.3) : 0.0, ring);
            continue;
        }
        if (style.detail >= Detail::tone_section) {
            const std::optional<RowDimensions> row = dimensionsOf(source, choice.family);
            if (row && drawRow(builder, *row, ring, other))
                continue;
        }
        drawSign(builder, style.detail == Detail::general_sign ? Sign::general : signOf(source, choice.family), inner,
                 source.outer_mm, source.width_mm);
    }
    return builder.take(Layer::bearing);
}

} // namespace shaftwright::drawing
