#include "core/bearings/load_law.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright::bearings
{
namespace
{

constexpr double perRadian_deg = 180.0 / std::numbers::pi;
constexpr double angleSlack_deg = 1e-6; // degrees -> radians -> degrees does not return every digit

double angle_deg(const BearingRating& rating)
{
    return rating.contact_angle_rad * perRadian_deg;
}

bool radialAngle(double alpha_deg)
{
    return alpha_deg > 0.0 && alpha_deg <= factors::greatestRadialAngle_deg + angleSlack_deg;
}

bool flat(double alpha_deg)
{
    return std::abs(alpha_deg - 90.0) < angleSlack_deg;
}

bool steep(double alpha_deg)
{
    return alpha_deg > factors::greatestRadialAngle_deg && alpha_deg < 90.0;
}

double columnAngle(const BearingRating& rating)
{
    return std::clamp(angle_deg(rating), factors::leastAngularAngle_deg, factors::greatestRadialAngle_deg);
}

} // namespace

bool twoRows(const BearingRating& rating)
{
    return rating.rows >= 2 || rating.family == Family::four_point_contact_ball;
}

bool isThrustLaw(LoadLaw law)
{
    return law == LoadLaw::axial_only || law == LoadLaw::thrust_ball_one_way || law == LoadLaw::thrust_ball_two_way ||
           law == LoadLaw::thrust_roller_one_way;
}

LoadLaw lawOf(const BearingRating& rating)
{
    if (!rating.members.empty())
        return LoadLaw::apart;
    const double alpha = angle_deg(rating);
    switch (rating.family) {
    case Family::deep_groove_ball:
    case Family::deep_groove_ball_two_row:
        return LoadLaw::deep_groove;
    case Family::angular_contact_ball_15:
    case Family::angular_contact_ball_25:
    case Family::angular_contact_ball_40:
    case Family::angular_contact_ball_two_row:
    case Family::four_point_contact_ball:
    case Family::angular_contact_set_O:
    case Family::angular_contact_set_X:
    case Family::precision_set_O_25:
    case Family::angular_contact_set_tandem:
        return alpha >= factors::leastAngularAngle_deg - angleSlack_deg && radialAngle(alpha) ? LoadLaw::angular
                                                                                              : LoadLaw::bad_angle;
    case Family::self_aligning_ball:
        return radialAngle(alpha) ? LoadLaw::self_aligning : LoadLaw::bad_angle;
    case Family::tapered_roller:
    case Family::tapered_roller_pair:
    case Family::spherical_roller:
        return radialAngle(alpha) ? LoadLaw::inclined_roller : LoadLaw::bad_angle;
    case Family::cylindrical_roller_NU:
    case Family::cylindrical_roller_NJ:
    case Family::cylindrical_roller_NUP:
    case Family::cylindrical_roller_full:
    case Family::needle_roller:
    case Family::needle_roller_no_inner:
    case Family::needle_drawn_cup:
    case Family::toroidal_roller:
        return LoadLaw::radial_only;
    case Family::thrust_ball:
        return flat(alpha) ? LoadLaw::axial_only : steep(alpha) ? LoadLaw::thrust_ball_one_way : LoadLaw::bad_angle;
    case Family::thrust_ball_double:
    case Family::angular_contact_thrust_ball:
        return flat(alpha) ? LoadLaw::axial_only : steep(alpha) ? LoadLaw::thrust_ball_two_way : LoadLaw::bad_angle;
    case Family::cylindrical_roller_thrust:
    case Family::needle_roller_thrust:
    case Family::spherical_roller_thrust:
        return flat(alpha) ? LoadLaw::axial_only : steep(alpha) ? LoadLaw::thrust_roller_one_way : LoadLaw::bad_angle;
    case Family::needle_thrust_combined:
    case Family::composite_NU_four_point:
    case Family::composite_tandem_opposed:
    case Family::composite_spherical_thrust:
    case Family::plain_sintered:
    case Family::plain_ptfe_composite:
    case Family::plain_bronze:
    case Family::plain_hydrodynamic:
    case Family::magnetic:
    case Family::linear_guide:
        return LoadLaw::none;
    }
    return LoadLaw::none;
}

bool needsF0(const BearingRating& rating, LoadLaw law)
{
    if (rating.Y && rating.e)
        return false; // the row brings its own factors
    if (law == LoadLaw::deep_groove)
        return true;
    return law == LoadLaw::angular && angle_deg(rating) < 20.0 - angleSlack_deg;
}

double relativeAxialLoad(const BearingRating& rating, LoadLaw law, double Fa_N)
{
    const double f0 = rating.f0.value_or(assumedF0);
    // Radial contact: all rows share the axial load. Angular contact: one row of an opposed pair takes all of it, the
    // bearings of a tandem set share it.
    if (law == LoadLaw::deep_groove)
        return rating.C0_N > 0.0 ? f0 * Fa_N / rating.C0_N : 0.0;
    if (law == LoadLaw::angular && angle_deg(rating) < 20.0 - angleSlack_deg && rating.C0_N > 0.0) {
        const int sharing = rating.tandem > 1 ? 1 : rating.rows;
        return f0 * sharing * Fa_N / rating.C0_N;
    }
    return 0.0;
}

factors::LoadFactors loadFactors(const BearingRating& rating, LoadLaw law, double rel)
{
    factors::LoadFactors result;
    switch (law) {
    case LoadLaw::deep_groove:
        result = factors::deepGroove(rel);
        break;
    case LoadLaw::angular:
        result = factors::angular(columnAngle(rating), twoRows(rating), rel);
        break;
    case LoadLaw::self_aligning:
        result = factors::selfAligning(std::tan(rating.contact_angle_rad), twoRows(rating));
        break;
    case LoadLaw::inclined_roller:
        result = factors::radialRoller(std::tan(rating.contact_angle_rad), twoRows(rating));
        break;
    case LoadLaw::thrust_ball_one_way:
    case LoadLaw::thrust_ball_two_way:
        result = factors::thrustBall(rating.contact_angle_rad);
        break;
    case LoadLaw::thrust_roller_one_way:
        result = factors::thrustRoller(rating.contact_angle_rad);
        break;
    default:
        break;
    }
    if (rating.X)
        result.X2 = *rating.X;
    if (rating.Y)
        result.Y2 = *rating.Y;
    if (rating.e)
        result.e = *rating.e;
    return result;
}

StaticFactors staticFactors(const BearingRating& rating, LoadLaw law)
{
    const bool two = twoRows(rating);
    StaticFactors result;
    switch (law) {
    case LoadLaw::deep_groove:
        result = {0.6, 0.5, true};
        break;
    case LoadLaw::angular: {
        const double Y0 = factors::angularY0(columnAngle(rating));
        result = two ? StaticFactors{1.0, 2.0 * Y0, false} : StaticFactors{0.5, Y0, true};
        break;
    }
    case LoadLaw::self_aligning:
    case LoadLaw::inclined_roller: {
        const double cotangent = 1.0 / std::tan(rating.contact_angle_rad);
        result = two ? StaticFactors{1.0, 0.44 * cotangent, false} : StaticFactors{0.5, 0.22 * cotangent, true};
        break;
    }
    case LoadLaw::axial_only:
        result = {0.0, 1.0, false};
        break;
    case LoadLaw::thrust_ball_one_way:
    case LoadLaw::thrust_ball_two_way:
    case LoadLaw::thrust_roller_one_way:
        result = {2.3 * std::tan(rating.contact_angle_rad), 1.0, false};
        break;
    default:
        break;
    }
    if (rating.Y0)
        result.Y0 = *rating.Y0;
    return result;
}

MemberLoad memberLoad(const BearingRating& whole, const BearingRating& member, double Fr_N, double Fa_N,
                      std::optional<Carries> sense)
{
    const bool first = &member == &whole.members.front();
    switch (whole.family) {
    case Family::composite_tandem_opposed: {
        // The rows of the loaded side take both forces, the opposed ones run along. Without a sense: the main direction.
        const bool loaded = sense ? member.carries == sense : first;
        return loaded ? MemberLoad{Fr_N, Fa_N} : MemberLoad{};
    }
    case Family::composite_spherical_thrust:
        return first ? MemberLoad{0.0, Fa_N} : MemberLoad{Fr_N, 0.0};
    default:
        // One takes the radial, the other, with a radially free ring, the axial force.
        return first ? MemberLoad{Fr_N, 0.0} : MemberLoad{0.0, Fa_N};
    }
}

} // namespace shaftwright::bearings
