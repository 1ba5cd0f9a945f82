#include "core/bearings/load_rating.h"
#include "tests/reference/shaft_help.h"

#include <cmath>
#include <cstdio>

namespace reference
{

using namespace sw;

namespace
{

std::string key(const char* before, double value, const char* after)
{
    char digits[32];
    std::snprintf(digits, sizeof digits, "%g", value);
    return before + std::string(digits) + after;
}

Shaft twoSupports(double span_mm, double length_mm, double load_x_mm, double load_N)
{
    Shaft shaft(0.0, length_mm);
    shaft.supportAt(0.0);
    shaft.supportAt(span_mm);
    shaft.force(load_x_mm, {0.0, -load_N, 0.0});
    shaft.solve();
    return shaft;
}

Results lp01(const Json& in)
{
    Results out;
    for (const Json& share : in.at("x_over_span")) {
        const double x = share.get<double>(), span = num(in, "span_mm");
        const Shaft shaft = twoSupports(span, span, x * span, num(in, "load_N"));
        out[key("R_A_", x, "_N")] = shaft.Ry(0);
        out[key("L10_A_", x, "_Mrev")] = ratingLife_Mrev(num(in, "C_N"), shaft.radial(0), num(in, "exponent"));
    }
    return out;
}

Results lp02(const Json& in)
{
    // The life of both bearings together over the place of the load; golden section on the reactions of the beam.
    const double span = num(in, "span_mm"), p = num(in, "exponent");
    const auto life = [&](double x) {
        const Shaft shaft = twoSupports(span, span, x * span, num(in, "load_N"));
        const SystemMember members[] = {{ratingLife_Mrev(num(in, "C_A_N"), shaft.radial(0), p), false},
                                        {ratingLife_Mrev(num(in, "C_B_N"), shaft.radial(1), p), false}};
        return systemLife(members, std::nullopt).L10_h.value();
    };
    const double golden = (std::sqrt(5.0) - 1.0) / 2.0;
    double low = 0.1, high = 0.9;
    while (high - low > 1e-5) {
        const double a = high - golden * (high - low), b = low + golden * (high - low);
        if (life(a) > life(b))
            high = b;
        else
            low = a;
    }
    return {{"best_x_over_span", 0.5 * (low + high)}};
}

Results lp03(const Json& in)
{
    Results out;
    for (const Json& share : in.at("overhang_over_span")) {
        const double o = share.get<double>(), span = num(in, "span_mm");
        const Shaft shaft = twoSupports(span, span * (1.1 + o), span * (1.0 + o), num(in, "load_N"));
        out[key("R_near_", o, "_N")] = shaft.Ry(1);
        out[key("R_far_", o, "_N")] = shaft.Ry(0);
    }
    return out;
}

Results lp04(const Json& in)
{
    const auto deflection = [&](double load_x, double at_x) {
        Shaft shaft(in.at("segments"), num(in, "E_MPa"));
        shaft.supports(in.at("supports"));
        shaft.force(load_x, {0.0, -num(in, "load_N"), 0.0});
        shaft.solve();
        return 1000.0 * std::abs(shaft.at(at_x).v_mm);
    };
    const double a = num(in, "x1_mm"), b = num(in, "x2_mm");
    return {{"deflection_at_300_um", deflection(a, b)}, {"deflection_at_200_um", deflection(b, a)}};
}

} // namespace

const Adapters& placeAdapters()
{
    static const Adapters all = {{"LP-01", lp01}, {"LP-02", lp02}, {"LP-03", lp03}, {"LP-04", lp04}};
    return all;
}

} // namespace reference
