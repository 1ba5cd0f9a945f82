#include "tests/core/laws/drawn_arrangement.h"

#include "tests/support/generic_rows.h"

#include <rapidcheck.h>

#include <algorithm>
#include <string>

namespace shaftwright::test
{
namespace
{

int number(int low, int high)
{
    return *rc::gen::inRange(low, high + 1);
}
double grid(int low, int high, double step)
{
    return step * number(low, high);
}
bool coin()
{
    return number(0, 1) == 1;
}
Hand hand()
{
    return coin() ? Hand::right : Hand::left;
}
double direction_deg()
{
    return grid(0, 23, 15.0);
}

PartBody drawBody(int kind, double x_mm, double length_mm)
{
    switch (kind) {
    case 0: {
        CylindricalGear gear;
        gear.working_diameter_mm = grid(12, 40, 10.0);
        gear.helix_deg = grid(0, 4, 6.0);
        gear.hand = gear.helix_deg > 0.0 ? hand() : Hand::none;
        gear.internal = number(0, 4) == 0;
        gear.double_helical = gear.helix_deg > 0.0 && number(0, 4) == 0;
        gear.mesh_angle_deg = direction_deg();
        return gear;
    }
    case 1: {
        BevelGear gear;
        gear.mean_diameter_mm = grid(8, 30, 10.0);
        gear.cone_angle_deg = grid(2, 16, 5.0);
        gear.spiral_deg = coin() ? 35.0 : 0.0;
        gear.hand = gear.spiral_deg > 0.0 ? hand() : Hand::none;
        gear.apex = coin() ? ApexSide::plus : ApexSide::minus;
        gear.mesh_angle_deg = direction_deg();
        return gear;
    }
    case 2: {
        Worm worm;
        worm.reference_diameter_mm = grid(8, 12, 10.0);
        worm.lead_angle_deg = grid(10, 25, 1.0); // steep enough to turn back
        worm.hand = hand();
        worm.mesh_angle_deg = direction_deg();
        worm.friction = 0.04;
        return worm;
    }
    case 3: {
        WormWheel wheel;
        wheel.teeth = 40;
        wheel.reference_diameter_mm = grid(15, 30, 10.0);
        wheel.lead_angle_deg = grid(10, 25, 1.0);
        wheel.hand = hand();
        wheel.mesh_angle_deg = direction_deg();
        wheel.friction = 0.04;
        return wheel;
    }
    case 4: {
        BeltPulley pulley;
        pulley.kind = static_cast<BeltKind>(number(0, 3));
        pulley.diameter_mm = grid(10, 25, 10.0);
        pulley.other_diameter_mm = grid(10, 40, 10.0);
        pulley.centre_distance_mm = 900.0;
        pulley.crossed = number(0, 3) == 0;
        pulley.direction_deg = direction_deg();
        if (coin())
            pulley.tension = TensionRatio{grid(2, 6, 1.0)};
        return pulley;
    }
    case 5: {
        ChainSprocket sprocket;
        sprocket.teeth = number(17, 40);
        sprocket.other_teeth = number(17, 60);
        sprocket.pitch_mm = 19.05;
        sprocket.centre_distance_mm = 900.0;
        sprocket.direction_deg = direction_deg();
        return sprocket;
    }
    case 6: {
        Coupling coupling;
        if (coin())
            coupling.radial_force_N = grid(0, 10, 50.0);
        if (coin())
            coupling.radial_direction = GivenDirection{direction_deg()};
        if (coin())
            coupling.axial_force_N = grid(-5, 5, 50.0);
        if (coin())
            coupling.bending_moment_Nmm = grid(-5, 5, 1000.0);
        if ((x_mm == 0.0 || x_mm == length_mm) && coin()) {
            coupling.joint_angle_deg = grid(1, 4, 3.0);
            coupling.joint_direction_deg = direction_deg();
        }
        return coupling;
    }
    case 7: {
        Impeller impeller;
        impeller.thrust_N = grid(-10, 10, 100.0);
        impeller.radial_y_N = grid(-5, 5, 50.0);
        impeller.radial_z_N = grid(-5, 5, 50.0);
        impeller.offset_y_mm = grid(-3, 3, 1.0);
        if (coin())
            impeller.rotating_radial_N = grid(0, 5, 20.0);
        return impeller;
    }
    case 8: {
        WeightBody body;
        if (coin())
            body.unbalance = BalanceGrade{6.3};
        return body;
    }
    case 9: {
        PointLoad point;
        point.force_N = {grid(-10, 10, 100.0), grid(-20, 20, 100.0), grid(-20, 20, 100.0)};
        point.moment_Nmm = {0.0, grid(-5, 5, 10000.0), grid(-5, 5, 10000.0)};
        point.offset_y_mm = grid(-2, 2, 10.0);
        return point;
    }
    default: {
        DistributedLoad line;
        line.end_mm = x_mm + 20.0;
        line.start_N_per_mm = {grid(-2, 2, 1.0), grid(-5, 5, 1.0), grid(-5, 5, 1.0)};
        line.end_N_per_mm = {grid(-2, 2, 1.0), grid(-5, 5, 1.0), grid(-5, 5, 1.0)};
        return line;
    }
    }
}

void drawShaft(Arrangement& a)
{
    const int count = number(2, 4);
    for (int i = 0; i < count; ++i) {
        Segment segment;
        segment.id = SegmentId("S" + std::to_string(i + 1));
        segment.length_mm = grid(8, 20, 10.0);
        segment.outer_mm = grid(8, 14, 5.0);
        if (number(0, 3) == 0)
            segment.outer_end_mm = grid(8, 14, 5.0);
        if (number(0, 3) == 0)
            segment.bore_mm = grid(1, 5, 5.0);
        a.shaft.segments.push_back(segment);
    }
}

void drawSupports(Arrangement& a)
{
    const double length_mm = a.shaft.length_mm();
    const int count = number(2, 4);
    const int way = number(0, 3); // locating and non-locating, tapered pair, angular pair, end play
    const bool plus_right = coin();
    for (int i = 0; i < count; ++i) {
        Support support;
        support.id = SupportId(std::string(1, static_cast<char>('A' + i)));
        support.x_mm = std::round(length_mm * (2 * i + 1) / (2.0 * count)) + grid(-1, 1, 5.0);
        const bool end = i == 0 || i == count - 1;
        support.role = Role::non_locating;
        support.bearing = genericBearing(Family::cylindrical_roller_NU, "NU208");
        if (way == 0 && i == 0) {
            support.role = Role::locating;
            support.bearing = genericBearing(Family::deep_groove_ball, "6308");
        } else if (way > 0 && end) {
            support.carries = (i == 0) == plus_right ? Carries::minus : Carries::plus;
            support.role = way == 3 ? Role::end_play : Role::adjusted;
            support.bearing = way == 1   ? genericBearing(Family::tapered_roller, "32008X")
                              : way == 2 ? genericBearing(Family::angular_contact_ball_40, "7208-40")
                                         : genericBearing(Family::deep_groove_ball, "6208");
        }
        if (number(0, 5) == 0) {
            ElasticSupport elastic;
            elastic.stiffness[1][1] = elastic.stiffness[2][2] = grid(1, 5, 1e5);
            support.elastic = elastic;
        }
        a.supports.push_back(std::move(support));
    }
}

} // namespace

Arrangement drawArrangement()
{
    Arrangement a;
    drawShaft(a);
    drawSupports(a);
    const double length_mm = a.shaft.length_mm();

    const int count = number(1, 6);
    bool taker = false;
    for (int i = 0; i < count; ++i) {
        const int kind = number(0, 10);
        Part part;
        part.id = PartId("P" + std::to_string(i + 1));
        part.x_mm = std::floor(length_mm / 10.0 * number(0, 10));
        if (kind == 10)
            part.x_mm = std::min(part.x_mm, length_mm - 20.0);
        part.body = drawBody(kind, part.x_mm, length_mm);
        if (kind == 8 || coin())
            part.mass_kg = grid(1, 20, 0.5);
        if (kind <= 7) {
            Drive drive;
            drive.power = coin() ? PowerSense::driving : PowerSense::driven;
            if (!taker) {
                drive.takes_remaining = taker = true;
            } else if (coin()) {
                drive.power_kW = grid(1, 20, 0.5);
            } else {
                drive.torque_Nmm = grid(1, 20, 5000.0);
            }
            part.drive = drive;
        }
        a.parts.push_back(std::move(part));
    }

    static const std::vector<std::vector<double>> shares = {{1.0}, {0.25, 0.75}, {0.25, 0.25, 0.5}};
    const auto& of = shares[static_cast<std::size_t>(number(0, 2))];
    for (std::size_t i = 0; i < of.size(); ++i) {
        LoadCase load_case;
        load_case.id = CaseId("c" + std::to_string(i + 1));
        load_case.time_share = of[i];
        load_case.speed_rpm = (coin() ? 1.0 : -1.0) * grid(1, 30, 100.0);
        load_case.power_factor = coin() ? 1.0 : 0.5;
        load_case.free_load_factor = coin() ? 1.0 : 0.5;
        a.duty.load_cases.push_back(load_case);
    }
    a.duty.required_L_h = 20000.0;
    if (coin())
        a.duty.K_A = 1.25;
    a.surroundings.attitude_deg = grid(-3, 3, 30.0);
    a.options.own_weight = coin();
    return a;
}

Arrangement mirrored(const Arrangement& arrangement)
{
    Arrangement a = arrangement;
    const double length_mm = a.shaft.length_mm();
    std::reverse(a.shaft.segments.begin(), a.shaft.segments.end());
    for (Segment& segment : a.shaft.segments) {
        const double left = segment.outer_mm;
        if (segment.outer_end_mm) {
            segment.outer_mm = *segment.outer_end_mm;
            segment.outer_end_mm = left;
        }
        if (segment.bore_end_mm)
            std::swap(segment.bore_mm, segment.bore_end_mm);
    }
    const auto other = [](Hand hand) { return hand == Hand::right ? Hand::left : hand == Hand::left ? Hand::right : Hand::none; };
    for (Part& part : a.parts) {
        const double x_mm = part.x_mm;
        part.x_mm = length_mm - x_mm;
        if (auto* gear = std::get_if<CylindricalGear>(&part.body)) {
            gear->hand = other(gear->hand);
        } else if (auto* bevel = std::get_if<BevelGear>(&part.body)) {
            bevel->hand = other(bevel->hand);
            bevel->apex = bevel->apex == ApexSide::plus ? ApexSide::minus : ApexSide::plus;
        } else if (auto* worm = std::get_if<Worm>(&part.body)) {
            worm->hand = other(worm->hand);
        } else if (auto* wheel = std::get_if<WormWheel>(&part.body)) {
            wheel->hand = other(wheel->hand);
        } else if (auto* coupling = std::get_if<Coupling>(&part.body)) {
            if (coupling->axial_force_N)
                *coupling->axial_force_N *= -1.0;
            if (coupling->bending_moment_Nmm)
                *coupling->bending_moment_Nmm *= -1.0;
        } else if (auto* impeller = std::get_if<Impeller>(&part.body)) {
            impeller->thrust_N *= -1.0;
        } else if (auto* point = std::get_if<PointLoad>(&part.body)) {
            point->force_N.x *= -1.0;
            point->moment_Nmm.y *= -1.0;
            point->moment_Nmm.z *= -1.0;
        } else if (auto* line = std::get_if<DistributedLoad>(&part.body)) {
            part.x_mm = length_mm - line->end_mm;
            line->end_mm = length_mm - x_mm;
            std::swap(line->start_N_per_mm, line->end_N_per_mm);
            line->start_N_per_mm.x *= -1.0;
            line->end_N_per_mm.x *= -1.0;
            std::swap(line->start_torque_Nmm_per_mm, line->end_torque_Nmm_per_mm);
        }
    }
    for (Support& support : a.supports) {
        support.x_mm = length_mm - support.x_mm;
        if (support.carries)
            support.carries = *support.carries == Carries::plus ? Carries::minus : Carries::plus;
    }
    if (a.surroundings.attitude_deg)
        *a.surroundings.attitude_deg *= -1.0;
    return a;
}

Arrangement withLoadsTimes(Arrangement a, double k)
{
    const auto times = [k](auto& value) {
        if (value)
            *value *= k;
    };
    a.options.own_weight = false;
    for (Part& part : a.parts) {
        times(part.mass_kg);
        if (part.drive) {
            times(part.drive->power_kW);
            times(part.drive->torque_Nmm);
        }
        if (auto* coupling = std::get_if<Coupling>(&part.body)) {
            times(coupling->radial_force_N);
            times(coupling->axial_force_N);
            times(coupling->bending_moment_Nmm);
        } else if (auto* impeller = std::get_if<Impeller>(&part.body)) {
            impeller->thrust_N *= k;
            impeller->radial_y_N *= k;
            impeller->radial_z_N *= k;
            times(impeller->rotating_radial_N);
        } else if (auto* point = std::get_if<PointLoad>(&part.body)) {
            for (double* value : {&point->force_N.x, &point->force_N.y, &point->force_N.z, &point->moment_Nmm.x,
                                  &point->moment_Nmm.y, &point->moment_Nmm.z})
                *value *= k;
        } else if (auto* line = std::get_if<DistributedLoad>(&part.body)) {
            for (Vector3* q : {&line->start_N_per_mm, &line->end_N_per_mm})
                *q = {k * q->x, k * q->y, k * q->z};
            line->start_torque_Nmm_per_mm *= k;
            line->end_torque_Nmm_per_mm *= k;
        }
    }
    return a;
}

} // namespace shaftwright::test
