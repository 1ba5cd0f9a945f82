#include "tests/reference/shaft_help.h"

#include <cmath>
#include <numbers>

namespace reference
{

using namespace sw;

namespace
{

Shaft stated(const Json& in, double diameter_factor = 1.0)
{
    Shaft shaft(in.at("segments"), num(in, "E_MPa"), diameter_factor);
    shaft.supports(in.at("supports"));
    shaft.forces(in.at("loads"));
    shaft.solve();
    return shaft;
}

/// Slopes and deflections of one plane at the bearings and gears, magnitudes.
Results onePlane(const Json& in, bool vertical)
{
    const Shaft shaft = stated(in);
    const auto slope = [&](double x) { return 1000.0 * std::abs(vertical ? shaft.at(x).ry_rad : shaft.at(x).rz_rad); };
    const auto deflection = [&](double x) { return 1000.0 * std::abs(vertical ? shaft.at(x).w_mm : shaft.at(x).v_mm); };
    const double left = num(in.at("supports").at(0), "x_mm"), right = num(in.at("supports").at(1), "x_mm");
    const double gear3 = num(in.at("loads").at(0), "x_mm"), gear4 = num(in.at("loads").at(1), "x_mm");
    return {{"left_bearing_slope_mrad", slope(left)},       {"right_bearing_slope_mrad", slope(right)},
            {"left_gear_slope_mrad", slope(gear3)},         {"right_gear_slope_mrad", slope(gear4)},
            {"left_gear_deflection_um", deflection(gear3)}, {"right_gear_deflection_um", deflection(gear4)}};
}

Results bd01(const Json& in)
{
    return onePlane(in, true);
}

Results bd02(const Json& in)
{
    return onePlane(in, false);
}

double slopeAt(const Shaft& shaft, double x_mm)
{
    return 1000.0 * std::hypot(shaft.at(x_mm).ry_rad, shaft.at(x_mm).rz_rad);
}

Results bd03(const Json& in)
{
    const double factor = num(in, "diameter_factor"), right = num(in.at("supports").at(1), "x_mm");
    const double before = slopeAt(stated(in), right), after = slopeAt(stated(in, factor), right);
    const auto diameter = [&](std::size_t i) { return num(in.at("segments").at(i), "d_mm") * factor; };
    // The slope wanted is 0.5 mrad; it goes with 1/d^4.
    return {{"required_factor", std::pow(before / 0.5, 0.25)},
            {"right_bearing_slope_mrad", after},
            {"D2_mm", diameter(1)},
            {"D3_mm", diameter(2)},
            {"D4_mm", diameter(3)}};
}

Results bd04(const Json& in)
{
    const double span = num(in, "span_mm"), d = num(in, "d_BC_mm"), E = 206000.0;
    Shaft shaft(0.0, span, d, E);
    shaft.supportAt(0.0);
    shaft.supportAt(span);
    shaft.force(num(in, "load_x_mm"), {0.0, -num(in, "load_N"), 0.0});
    shaft.solve();
    // The second moment that the beam works with, from the deflection under the load: P a^2 b^2/(3 E I l).
    const double a = num(in, "load_x_mm"), b = span - a;
    const double I = num(in, "load_N") * a * a * b * b / (3.0 * E * span * std::abs(shaft.at(a).v_mm));
    return {{"R1_N", shaft.Ry(0)}, {"R2_N", shaft.Ry(1)}, {"I_BC_mm4", I}};
}

Results bd05(const Json& in)
{
    const Shaft shaft = stated(in);
    const beam::Extreme greatest = shaft.result().deflection_mm;
    return {{"max_deflection_um", 1000.0 * std::abs(greatest.value)},
            {"distance_from_far_support_mm", num(in.at("supports").at(1), "x_mm") - greatest.x_mm},
            {"deflection_at_load_um", 1000.0 * std::abs(shaft.at(num(in.at("loads").at(0), "x_mm")).v_mm)}};
}

Results bd06(const Json& in)
{
    const Shaft shaft = stated(in);
    double uplift = 0.0;
    for (const beam::State& state : beam::sample(shaft.solution(), 0, 64))
        uplift = std::max(uplift, state.v_mm);
    return {{"R1_N", shaft.Ry(0)},
            {"R2_N", shaft.Ry(1)},
            {"end_deflection_um", 1000.0 * std::abs(shaft.at(num(in.at("loads").at(0), "x_mm")).v_mm)},
            {"max_uplift_um", 1000.0 * uplift}};
}

Results bd07(const Json& in)
{
    const Shaft shaft = stated(in);
    return {{"R1_N", shaft.Ry(0)}, {"R2_N", shaft.Ry(1)}, {"R3_N", shaft.Ry(2)}};
}

Results bd08(const Json& in)
{
    const Shaft shaft = stated(in);
    return {{"centre_deflection_um", 1000.0 * std::abs(shaft.at(num(in.at("loads").at(0), "x_mm")).v_mm)},
            {"end_slope_mrad", slopeAt(shaft, num(in.at("supports").at(0), "x_mm"))}};
}

Results bd09(const Json& in)
{
    const Shaft shaft = stated(in);
    return {{"deflection_A_um", 1000.0 * std::abs(shaft.reaction(0).displacement_mm[1])},
            {"deflection_B_um", 1000.0 * std::abs(shaft.reaction(1).displacement_mm[1])}};
}

} // namespace

const Adapters& beamAdapters()
{
    static const Adapters all = {{"BD-01", bd01}, {"BD-02", bd02}, {"BD-03", bd03}, {"BD-04", bd04}, {"BD-05", bd05},
                                 {"BD-06", bd06}, {"BD-07", bd07}, {"BD-08", bd08}, {"BD-09", bd09}};
    return all;
}

} // namespace reference
