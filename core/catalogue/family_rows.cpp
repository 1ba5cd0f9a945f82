#include "core/catalogue/family_rows.h"

namespace shaftwright {

std::optional<Family> naturalFamily(const CatalogueRow& row)
{
    const std::string& designation = row.designation;
    switch (row.geometry_class) {
    case GeometryClass::deep_groove_ball:
        return Family::deep_groove_ball;
    case GeometryClass::deep_groove_ball_two_row:
        return Family::deep_groove_ball_two_row;
    case GeometryClass::angular_contact_ball:
        return row.contact_angle_deg < 20.0   ? Family::angular_contact_ball_15
               : row.contact_angle_deg < 32.0 ? Family::angular_contact_ball_25
                                              : Family::angular_contact_ball_40;
    case GeometryClass::angular_contact_ball_double:
        return Family::angular_contact_ball_two_row;
    case GeometryClass::four_point_contact_ball:
        return Family::four_point_contact_ball;
    case GeometryClass::self_aligning_ball:
        return Family::self_aligning_ball;
    case GeometryClass::cylindrical_roller:
        if (designation.starts_with("NUP"))
            return Family::cylindrical_roller_NUP;
        if (designation.starts_with("NJ"))
            return Family::cylindrical_roller_NJ;
        return Family::cylindrical_roller_NU;
    case GeometryClass::cylindrical_roller_full:
        return Family::cylindrical_roller_full;
    case GeometryClass::needle:
        return designation.starts_with("RNA") ? Family::needle_roller_no_inner : Family::needle_roller;
    case GeometryClass::needle_drawn_cup:
        return Family::needle_drawn_cup;
    case GeometryClass::tapered_roller:
        return Family::tapered_roller;
    case GeometryClass::spherical_roller:
        return Family::spherical_roller;
    case GeometryClass::thrust_ball:
        return Family::thrust_ball;
    case GeometryClass::thrust_ball_double:
        return Family::thrust_ball_double;
    case GeometryClass::cylindrical_roller_thrust:
        return Family::cylindrical_roller_thrust;
    case GeometryClass::needle_roller_thrust:
        return Family::needle_roller_thrust;
    case GeometryClass::spherical_roller_thrust:
        return Family::spherical_roller_thrust;
    }
    return std::nullopt;
}

FamilySet setOf(Family family)
{
    switch (family) {
    case Family::angular_contact_set_O:
    case Family::precision_set_O_25:
        return {2, SetArrangement::O};
    case Family::angular_contact_set_X:
    case Family::tapered_roller_pair: // as the suggestions place it
        return {2, SetArrangement::X};
    case Family::angular_contact_set_tandem:
        return {2, SetArrangement::tandem};
    default:
        return {};
    }
}

GeometryClass geometryClassOf(Family family)
{
    if (const auto known = geometryClassFromString(toString(family)))
        return *known;
    switch (family) {
    case Family::angular_contact_ball_15:
    case Family::angular_contact_ball_25:
    case Family::angular_contact_ball_40:
        return GeometryClass::angular_contact_ball;
    case Family::angular_contact_ball_two_row:
        return GeometryClass::angular_contact_ball_double;
    case Family::cylindrical_roller_NU:
    case Family::cylindrical_roller_NJ:
    case Family::cylindrical_roller_NUP:
        return GeometryClass::cylindrical_roller;
    case Family::needle_roller:
    case Family::needle_roller_no_inner:
        return GeometryClass::needle;
    case Family::tapered_roller_pair:
        return GeometryClass::tapered_roller;
    case Family::angular_contact_set_O:
    case Family::angular_contact_set_X:
    case Family::angular_contact_set_tandem:
    case Family::precision_set_O_25:
        return GeometryClass::angular_contact_ball;
    case Family::toroidal_roller:
        return GeometryClass::cylindrical_roller;
    default:
        return GeometryClass::deep_groove_ball;
    }
}

} // namespace shaftwright
