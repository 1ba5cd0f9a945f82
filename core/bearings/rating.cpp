#include "core/bearings/rating.h"

#include "core/bearings/load_law.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright
{
namespace
{

constexpr double degree = std::numbers::pi / 180.0;

bool isTandem(const BearingChoice& choice)
{
    return choice.family == Family::angular_contact_set_tandem || choice.arrangement == SetArrangement::tandem;
}

/// Two like bearings that share the load as one bearing of two rows.
bool isOpposedSet(const BearingChoice& choice)
{
    switch (choice.family) {
    case Family::angular_contact_set_O:
    case Family::angular_contact_set_X:
    case Family::precision_set_O_25:
    case Family::tapered_roller_pair:
        return true;
    default:
        return choice.arrangement == SetArrangement::O || choice.arrangement == SetArrangement::X;
    }
}

bool isComposite(Family family)
{
    return family == Family::composite_NU_four_point || family == Family::composite_tandem_opposed ||
           family == Family::composite_spherical_thrust || family == Family::needle_thrust_combined;
}

bool isRoller(Family family)
{
    switch (family) {
    case Family::cylindrical_roller_NU:
    case Family::cylindrical_roller_NJ:
    case Family::cylindrical_roller_NUP:
    case Family::cylindrical_roller_full:
    case Family::needle_roller:
    case Family::needle_roller_no_inner:
    case Family::needle_drawn_cup:
    case Family::tapered_roller:
    case Family::tapered_roller_pair:
    case Family::spherical_roller:
    case Family::toroidal_roller:
    case Family::cylindrical_roller_thrust:
    case Family::needle_roller_thrust:
    case Family::spherical_roller_thrust:
        return true;
    default:
        return false;
    }
}

/// Rows of the X, Y tables that stand inside one bearing of the family.
int rowsInside(Family family)
{
    switch (family) {
    case Family::deep_groove_ball_two_row:
    case Family::self_aligning_ball:
    case Family::angular_contact_ball_two_row:
    case Family::spherical_roller:
        return 2;
    default:
        return 1;
    }
}

/// Contact angle where a row does not state one.
double usualAngle_deg(Family family)
{
    switch (family) {
    case Family::angular_contact_ball_15:
        return 15.0;
    case Family::angular_contact_ball_25:
    case Family::precision_set_O_25:
        return 25.0;
    case Family::angular_contact_ball_40:
    case Family::angular_contact_set_O:
    case Family::angular_contact_set_X:
    case Family::angular_contact_set_tandem:
        return 40.0;
    case Family::angular_contact_ball_two_row:
        return 30.0;
    case Family::four_point_contact_ball:
        return 35.0;
    case Family::angular_contact_thrust_ball:
        return 60.0;
    case Family::spherical_roller_thrust:
        return 50.0;
    case Family::thrust_ball:
    case Family::thrust_ball_double:
    case Family::cylindrical_roller_thrust:
    case Family::needle_roller_thrust:
        return 90.0;
    default:
        return 0.0;
    }
}

bool angularOrTapered(Family family)
{
    switch (family) {
    case Family::angular_contact_ball_15:
    case Family::angular_contact_ball_25:
    case Family::angular_contact_ball_40:
    case Family::angular_contact_set_tandem:
    case Family::tapered_roller:
        return true;
    default:
        return false;
    }
}

/// tan alpha by what a row states about its factors; the tables know alpha only through them.
/// ISO 281:2007: one tapered row Y = 0.4 cot alpha, e = 1.5 tan alpha; spherical 0.67 cot alpha; self-aligning 0.65 cot alpha.
std::optional<double> angleFromFactors_rad(const CatalogueRow& row)
{
    double perCotangent = 0.0;
    switch (row.geometry_class) {
    case GeometryClass::tapered_roller:
        perCotangent = 0.40;
        break;
    case GeometryClass::spherical_roller:
        perCotangent = 0.67;
        break;
    case GeometryClass::self_aligning_ball:
        perCotangent = 0.65;
        break;
    default:
        return std::nullopt;
    }
    if (row.Y && *row.Y > 0.0)
        return std::atan(perCotangent / *row.Y);
    if (row.e && *row.e > 0.0)
        return std::atan(*row.e / 1.5);
    return std::nullopt;
}

struct SetFactor {
    double dynamic = 1.0; ///< C of the set / C of one
    const char* formula = "C1";
};

SetFactor setFactor(int count, bool roller, bool deepGroovePair)
{
    if (count <= 1)
        return {};
    // Rows of radial contact share less evenly: i^0.7 times 0.90/0.95, the factors behind f_c of two rows and of one.
    if (deepGroovePair)
        return {std::pow(count, 0.7) * 0.90 / 0.95, "i^0.7 0.90/0.95 C1"};
    return roller ? SetFactor{std::pow(count, 7.0 / 9.0), "i^(7/9) C1"} : SetFactor{std::pow(count, 0.7), "i^0.7 C1"};
}

const CatalogueRow& weakest(const std::vector<SetRow>& rows)
{
    const auto least =
        std::min_element(rows.begin(), rows.end(), [](const SetRow& a, const SetRow& b) { return a.row.C_N < b.row.C_N; });
    return least->row;
}

BearingRating likeRows(const BearingChoice& choice)
{
    const CatalogueRow& row = weakest(choice.rows);
    BearingRating rating = ratingOf(row, choice.family);
    const bool opposed = isOpposedSet(choice), tandem = isTandem(choice) && !opposed;
    const bool deepGroove = choice.family == Family::deep_groove_ball;
    int count = static_cast<int>(choice.rows.size());
    if (count == 1 && (opposed || choice.family == Family::angular_contact_set_tandem))
        count = 2;
    rating.designation = choice.designation();
    rating.width_mm = choice.width_mm();
    // Two thrust bearings at one support do not share a load: each sense has one of them.
    if (count > 1 && !rating.axial_bearing) {
        const SetFactor factor = setFactor(count, rating.roller, deepGroove);
        rating.rows = tandem ? 1 : rowsInside(choice.family) * count;
        rating.tandem = tandem ? count : 1;
        rating.derivation.push_back({"set_dynamic_rating",
                                     "C",
                                     factor.formula,
                                     {{"C1", row.C_N}, {"i", static_cast<double>(count)}},
                                     factor.dynamic * row.C_N,
                                     "N",
                                     rating.roller ? "ISO 281:2007, 7.1 (from memory)" : "ISO 281:2007, 5.1 (from memory)"});
        rating.derivation.push_back({"set_static_rating",
                                     "C0",
                                     "i C01",
                                     {{"C01", row.C0_N}, {"i", static_cast<double>(count)}},
                                     count * row.C0_N,
                                     "N",
                                     "ISO 76:2006 (from memory)"});
        rating.C_N = factor.dynamic * row.C_N;
        rating.C0_N = count * row.C0_N;
        rating.C0_single_N = row.C0_N;
        // The fatigue load limit follows the static rating of the set.
        if (row.Cu_N)
            rating.Cu_N = count * *row.Cu_N;
        if (row.axial_limit_N)
            rating.axial_limit_N = tandem ? count * *row.axial_limit_N : *row.axial_limit_N;
        if (!tandem) {
            rating.angular_or_tapered = false;
            // Factors that a row states for itself alone do not hold for the set; its angle does.
            rating.e = rating.X = rating.Y = std::nullopt;
            if (rating.Y0)
                rating.Y0 = 2.0 * *rating.Y0;
        }
    }
    return rating;
}

BearingRating composite(const BearingChoice& choice)
{
    BearingRating rating;
    std::vector<BearingRating> members;
    if (choice.family == Family::composite_tandem_opposed) {
        // Rows of one side work in tandem, the other holds the opposite sense.
        for (const Carries side : {Carries::plus, Carries::minus}) {
            BearingChoice group;
            group.arrangement = SetArrangement::tandem;
            for (const SetRow& row : choice.rows) {
                if (row.carries.value_or(Carries::plus) == side)
                    group.rows.push_back(row);
            }
            if (group.rows.empty())
                continue;
            group.family = group.rows.size() > 1 ? Family::angular_contact_set_tandem : familyByInside(group.rows.front().row);
            members.push_back(likeRows(group));
            members.back().carries = side;
        }
        std::stable_sort(members.begin(), members.end(),
                         [](const BearingRating& a, const BearingRating& b) { return a.tandem > b.tandem; });
    } else {
        for (const SetRow& row : choice.rows) {
            members.push_back(ratingOf(row.row, familyByInside(row.row)));
            members.back().carries = row.carries;
        }
        // The one that takes the radial force leads; the spherical thrust bearing leads its radial guide.
        const bool axialFirst = choice.family == Family::composite_spherical_thrust;
        std::stable_sort(members.begin(), members.end(), [axialFirst](const BearingRating& a, const BearingRating& b) {
            const auto axial = [](const BearingRating& m) {
                return m.axial_bearing || m.family == Family::four_point_contact_ball;
            };
            return axialFirst ? axial(a) && !axial(b) : !axial(a) && axial(b);
        });
    }
    rating = members.front();
    rating.members = std::move(members);
    rating.family = choice.family;
    rating.designation = choice.designation();
    rating.width_mm = choice.width_mm();
    return rating;
}

} // namespace

Family familyByInside(const CatalogueRow& row)
{
    switch (row.geometry_class) {
    case GeometryClass::deep_groove_ball:
        return Family::deep_groove_ball;
    case GeometryClass::deep_groove_ball_two_row:
        return Family::deep_groove_ball_two_row;
    case GeometryClass::angular_contact_ball:
        return row.contact_angle_deg < 20.0   ? Family::angular_contact_ball_15
               : row.contact_angle_deg < 32.5 ? Family::angular_contact_ball_25
                                              : Family::angular_contact_ball_40;
    case GeometryClass::angular_contact_ball_double:
        return Family::angular_contact_ball_two_row;
    case GeometryClass::four_point_contact_ball:
        return Family::four_point_contact_ball;
    case GeometryClass::self_aligning_ball:
        return Family::self_aligning_ball;
    case GeometryClass::cylindrical_roller:
        return Family::cylindrical_roller_NU;
    case GeometryClass::cylindrical_roller_full:
        return Family::cylindrical_roller_full;
    case GeometryClass::needle:
        return Family::needle_roller;
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
    return Family::deep_groove_ball;
}

BearingRating ratingOf(const CatalogueRow& row, Family family)
{
    BearingRating rating;
    rating.family = family;
    rating.designation = row.designation;
    rating.series = row.series;
    rating.C_N = row.C_N;
    rating.C0_N = row.C0_N;
    rating.C0_single_N = row.C0_N;
    rating.Cu_N = row.Cu_N;
    rating.f0 = row.f0;
    rating.e = row.e;
    rating.X = row.X;
    rating.Y = row.Y;
    rating.Y0 = row.Y0;
    rating.axial_limit_N = row.axial_limit_N;
    rating.geometry = row.geometry;
    rating.rows = rowsInside(family);
    rating.bore_mm = family == Family::needle_roller_no_inner && row.inner_raceway_mm > 0.0 ? row.inner_raceway_mm : row.bore_mm;
    rating.outer_mm = row.outer_mm;
    rating.width_mm = row.width_mm;
    rating.dm_mm = (rating.bore_mm + rating.outer_mm) / 2.0;
    rating.roller = isRoller(family);
    rating.life_exponent = rating.roller ? 10.0 / 3.0 : 3.0;
    rating.angular_or_tapered = angularOrTapered(family);

    rating.contact_angle_rad = row.contact_angle_deg * degree;
    if (row.contact_angle_deg == 0.0)
        rating.contact_angle_rad = row.geometry ? row.geometry->contact_angle_rad : 0.0;
    if (const auto angle = angleFromFactors_rad(row))
        rating.contact_angle_rad = *angle;
    if (rating.contact_angle_rad == 0.0)
        rating.contact_angle_rad = usualAngle_deg(family) * degree;
    rating.axial_bearing = rating.contact_angle_rad > (45.0 + 1e-9) * degree;

    rating.Dpw_mm = rating.dm_mm;
    rating.Dpw_assumed = true;
    if (row.geometry && row.geometry->pitch_diameter_mm > 0.0) {
        rating.Dpw_mm = row.geometry->pitch_diameter_mm;
        rating.Dpw_assumed = false;
    }
    // ISO 76:2006: C0r = f0 i Z Dw^2 cos alpha, so a known inside needs no table of f0.
    if (!rating.f0 && !rating.roller && row.geometry && row.geometry->elements_per_row > 0) {
        const InternalGeometry& inside = *row.geometry;
        const double unit = inside.rows * inside.elements_per_row * inside.element_diameter_mm * inside.element_diameter_mm *
                            std::cos(inside.contact_angle_rad);
        if (unit > 0.0 && row.C0_N > 0.0)
            rating.f0 = row.C0_N / unit;
    }
    return rating;
}

BearingRating ratingOf(const BearingChoice& choice)
{
    if (choice.rows.empty()) {
        BearingRating rating;
        rating.family = choice.family;
        return rating;
    }
    if (isComposite(choice.family) && choice.rows.size() > 1)
        return composite(choice);
    if (choice.family == Family::composite_spherical_thrust) {
        // The radial guide beside it is not stated: the thrust bearing is rated with both forces.
        BearingRating rating = ratingOf(choice.rows.front().row, Family::spherical_roller_thrust);
        rating.width_mm = choice.width_mm();
        return rating;
    }
    return likeRows(choice);
}

AxialSense axialSense(Family family)
{
    switch (family) {
    case Family::cylindrical_roller_NU:
    case Family::needle_roller:
    case Family::needle_roller_no_inner:
    case Family::needle_drawn_cup:
    case Family::toroidal_roller:
    case Family::plain_sintered:
    case Family::plain_ptfe_composite:
    case Family::plain_bronze:
    case Family::plain_hydrodynamic:
    case Family::magnetic:
    case Family::linear_guide:
        return AxialSense::none;
    case Family::angular_contact_ball_15:
    case Family::angular_contact_ball_25:
    case Family::angular_contact_ball_40:
    case Family::angular_contact_set_tandem:
    case Family::cylindrical_roller_NJ:
    case Family::cylindrical_roller_full:
    case Family::tapered_roller:
    case Family::thrust_ball:
    case Family::cylindrical_roller_thrust:
    case Family::needle_roller_thrust:
    case Family::spherical_roller_thrust:
    case Family::needle_thrust_combined:
        return AxialSense::one_way;
    case Family::deep_groove_ball:
    case Family::deep_groove_ball_two_row:
    case Family::self_aligning_ball:
    case Family::angular_contact_ball_two_row:
    case Family::four_point_contact_ball:
    case Family::angular_contact_set_O:
    case Family::angular_contact_set_X:
    case Family::precision_set_O_25:
    case Family::cylindrical_roller_NUP:
    case Family::tapered_roller_pair:
    case Family::spherical_roller:
    case Family::thrust_ball_double:
    case Family::angular_contact_thrust_ball:
    case Family::composite_NU_four_point:
    case Family::composite_tandem_opposed:
    case Family::composite_spherical_thrust:
        return AxialSense::both_ways;
    }
    return AxialSense::none;
}

bool carriesRadial(Family family)
{
    switch (family) {
    case Family::thrust_ball:
    case Family::thrust_ball_double:
    case Family::cylindrical_roller_thrust:
    case Family::needle_roller_thrust:
    case Family::linear_guide:
        return false;
    default:
        return true;
    }
}

bool holdsSense(const BearingChoice& choice, std::optional<Carries> carries, Carries sense)
{
    switch (axialSense(choice.family)) {
    case AxialSense::none:
        return false;
    case AxialSense::both_ways:
        return true;
    case AxialSense::one_way:
        break;
    }
    std::optional<Carries> side = carries;
    for (const SetRow& row : choice.rows) {
        if (row.carries) {
            side = row.carries;
            break;
        }
    }
    return !side || *side == sense;
}

double centreOffset_mm(const BearingChoice& choice, std::optional<Carries> carries)
{
    if (choice.rows.empty() || isOpposedSet(choice) || !angularOrTapered(choice.family))
        return 0.0;
    const SetRow& first = choice.rows.front();
    const std::optional<Carries> side = first.carries ? first.carries : carries;
    if (!side)
        return 0.0;
    const double sign = *side == Carries::plus ? 1.0 : -1.0;
    if (first.row.pressure_centre_mm)
        return -sign * (*first.row.pressure_centre_mm - first.row.width_mm / 2.0);
    const BearingRating rating = ratingOf(first.row, choice.family);
    return -sign * rating.Dpw_mm / 2.0 * std::tan(rating.contact_angle_rad);
}

} // namespace shaftwright
