#include "core/catalogue/family_rows.h"

#include "core/bearings/rating.h"

namespace shaftwright
{

std::optional<Family> naturalFamily(const CatalogueRow& row)
{
    const std::string& designation = row.designation;
    if (row.geometry_class == GeometryClass::cylindrical_roller) {
        if (designation.starts_with("NUP"))
            return Family::cylindrical_roller_NUP;
        if (designation.starts_with("NJ"))
            return Family::cylindrical_roller_NJ;
    }
    if (row.geometry_class == GeometryClass::needle && designation.starts_with("RNA"))
        return Family::needle_roller_no_inner;
    return familyByInside(row);
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
