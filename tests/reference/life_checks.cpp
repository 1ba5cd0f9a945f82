#include "core/bearings/load_rating.h"
#include "tests/reference/shaft_help.h"

#include <cmath>
#include <stdexcept>
#include <vector>

namespace reference
{

using namespace sw;

namespace
{

constexpr double rollerExponent = 10.0 / 3.0;

CatalogueRow row(GeometryClass geometry, double C_N, double C0_N)
{
    CatalogueRow r;
    r.designation = "as stated";
    r.source = "published check";
    r.geometry_class = geometry;
    r.bore_mm = 40.0;
    r.outer_mm = 80.0;
    r.width_mm = 18.0;
    r.C_N = C_N;
    r.C0_N = C0_N;
    return r;
}

BearingRating ball(double C_N, double C0_N, std::optional<double> X = {}, std::optional<double> Y = {})
{
    CatalogueRow r = row(GeometryClass::deep_groove_ball, C_N, C0_N);
    r.f0 = 12.3; // the older tables over Fa/C0 are those of f0 = 12.3
    r.X = X;
    r.Y = Y;
    return ratingOf(r, Family::deep_groove_ball);
}

// The three-parameter Weibull of the textbooks; ISO 281 has its own law, this one serves these checks only.
struct BookWeibull {
    double x0, theta, b;
    explicit BookWeibull(const Json& in) : x0(num(in, "x0")), theta(num(in, "theta")), b(num(in, "b")) {}
    [[nodiscard]] double factor(double R) const { return x0 + (theta - x0) * std::pow(std::log(1.0 / R), 1.0 / b); }
    [[nodiscard]] double reliability(double life_over_L10) const
    {
        return std::exp(-std::pow((life_over_L10 - x0) / (theta - x0), b));
    }
};

double requiredAt(const BookWeibull& weibull, double P, double life_h, double speed_rpm, double R, double p)
{
    // Hours at 90 % that leave R at the life asked.
    return requiredC_N(P, life_h / weibull.factor(R), speed_rpm, p);
}

Results ratingAndReliability(const Json& in, bool plain)
{
    const BookWeibull weibull(in.at("weibull"));
    const double p = num(in, "exponent") > 3.1 ? rollerExponent : 3.0;
    const double P = num(in, "P_kN"), h = num(in, "life_h"), n = num(in, "speed_rpm");
    Results out;
    out["C_required_kN"] = plain ? requiredC_N(P, h, n, p) : requiredAt(weibull, P, h, n, num(in, "reliability"), p);
    if (!in.at("selected_C_kN").is_null())
        out["reliability_with_selected"] = weibull.reliability(h / hours(ratingLife_Mrev(num(in, "selected_C_kN"), P, p), n));
    return out;
}

Results weibullRating(const Json& in)
{
    return ratingAndReliability(in, false);
}

Results bl02(const Json& in)
{
    return ratingAndReliability(in, true); // the print takes C at 90 % without the Weibull parameters
}

Results bl08(const Json& in)
{
    return {{"R_system", num(in, "R_A") * num(in, "R_B")}};
}

Results bl09(const Json& in)
{
    // The book's induced load 0.47 Fr/K instead of 0.5 Fr/Y; pair and equivalent load are those of core.
    CatalogueRow r = row(GeometryClass::tapered_roller, 50000, 60000);
    r.Y = num(in, "K");
    r.X = num(in, "X");
    const BearingRating bearing = ratingOf(r, Family::tapered_roller);
    const double A = num(in, "Fr_A_kN"), B = num(in, "Fr_B_kN");
    const double S_A = num(in, "induced_factor") * A / num(in, "K"), S_B = num(in, "induced_factor") * B / num(in, "K");
    const PairAxialLoads pair = adjustedPair(S_A, S_B, num(in, "external_axial_kN"));
    return {{"induced_A_kN", S_A},
            {"induced_B_kN", S_B},
            {"Fa_A_kN", pair.plus_N},
            {"P_A_kN", equivalentLoad(bearing, A, pair.plus_N).P_N.value()},
            {"P_B_kN", equivalentLoad(bearing, B, pair.minus_N).P_N.value()}};
}

Results bl10(const Json& in)
{
    const BearingRating bearing = ball(num(in, "C_N"), num(in, "C0_N"), num(in, "X"), num(in, "Y"));
    const auto life = [&](double V) {
        return ratingLife_Mrev(bearing.C_N, equivalentLoad(bearing, V * num(in, "Fr_N"), num(in, "Fa_N")).P_N.value(),
                               bearing.life_exponent);
    };
    return {{"L10_inner_rotating_Mrev", life(in.at("V").at(0).get<double>())},
            {"L10_outer_rotating_Mrev", life(in.at("V").at(1).get<double>())}};
}

Results lifeInHours(const Json& in)
{
    return {{"L10_h", hours(ratingLife_Mrev(num(in, "C_N"), num(in, "P_N"), num(in, "exponent")), num(in, "speed_rpm"))}};
}

Results bl12(const Json& in)
{
    const double L10_h = num(in, "life_h") *
                         std::pow(std::log(1.0 / 0.9) / std::log(1.0 / num(in, "reliability")), 1.0 / num(in, "weibull_slope"));
    return {{"C_N", requiredC_N(num(in, "P_N"), L10_h, num(in, "speed_rpm"), num(in, "exponent"))}};
}

Results bl13(const Json& in)
{
    std::vector<DutyPoint> points;
    for (const Json& c : in.at("cases"))
        points.push_back({num(c, "time_share"), num(c, "speed_rpm"), num(c, "P_N")});
    // Mean load and mean speed do not depend on C.
    const DutyLife life = dutyLife(30000.0, num(in, "exponent"), points);
    return {{"mean_speed_rpm", life.mean_speed_rpm},
            {"C_required_N", requiredC_N(life.P_mean_N.value(), num(in, "life_h"), life.mean_speed_rpm, num(in, "exponent"))}};
}

Results bl15(const Json& in)
{
    return {{"L10_Mrev", ratingLife_Mrev(num(in, "C_N"), num(in, "P_N"), num(in, "exponent"))}};
}

Results bl16(const Json& in)
{
    const EquivalentLoad load =
        equivalentLoad(ball(1e5, 1000.0 * num(in, "C0_kN")), 1000.0 * num(in, "V") * num(in, "Fr_kN"), 1000.0 * num(in, "Fa_kN"));
    return {{"Y", load.Y}, {"P_kN", load.P_N.value() / 1000.0}};
}

Results bl17(const Json& in)
{
    return {{"C_kN", requiredC_N(num(in, "P_kN"), num(in, "life_h"), num(in, "speed_rpm"), num(in, "exponent"))}};
}

Results bl18(const Json& in)
{
    const auto P = [&](const char* Y) {
        return equivalentLoad(ball(1e5, 1e5, num(in, "X"), num(in, Y)), num(in, "Fr_N"), num(in, "Fa_N")).P_N.value();
    };
    const auto C = [&](double P_N) { return requiredC_N(P_N, num(in, "life_h"), num(in, "speed_rpm"), num(in, "exponent")); };
    return {{"P_first_N", P("Y_first")},
            {"C_first_N", C(P("Y_first"))},
            {"P_second_N", P("Y_second")},
            {"C_second_N", C(P("Y_second"))}};
}

Results bl19(const Json& in)
{
    Results out;
    for (const Json& count : in.at("bearings")) {
        const std::vector<SystemMember> members(count.get<std::size_t>(), SystemMember{1000.0, false});
        const SystemLife life = systemLife(members, std::nullopt);
        if (std::abs(life.slope - num(in, "weibull_slope")) > 1e-6)
            throw std::runtime_error("another slope than the check's");
        out["ratio_" + std::to_string(count.get<int>())] = life.L10_h.value() / 1000.0;
    }
    return out;
}

Results bl20(const Json& in)
{
    // Maximum likelihood of a two-parameter Weibull: a test of the reading of the data, core fits nothing.
    const auto lives = in.at("lives_Mrev").get<std::vector<double>>();
    const auto condition = [&](double k) {
        double a = 0.0, b = 0.0, logs = 0.0;
        for (const double t : lives) {
            a += std::pow(t, k) * std::log(t);
            b += std::pow(t, k);
            logs += std::log(t);
        }
        return a / b - 1.0 / k - logs / static_cast<double>(lives.size());
    };
    double low = 0.1, high = 20.0;
    for (int i = 0; i < 200; ++i) {
        const double k = 0.5 * (low + high);
        (condition(k) < 0.0 ? low : high) = k;
    }
    double mean = 0.0;
    for (const double t : lives)
        mean += std::pow(t, low) / static_cast<double>(lives.size());
    return {{"shape", low}, {"scale_Mrev", std::pow(mean, 1.0 / low)}};
}

Results runToFailure(const Json& in)
{
    // These tests ran far outside the formula's range: the number is formal, and the program has to say so.
    const BearingRating bearing = ball(num(in, "C_N"), num(in, "C_N"));
    BearingCondition condition;
    condition.Fr_N = num(in, "P_N");
    condition.speed_rpm = num(in, "speed_rpm");
    bool warned = false;
    for (const Finding& finding : loadFindings(bearing, condition, equivalentLoad(bearing, condition.Fr_N, 0.0)))
        warned = warned || finding.code == "load-above-half-c" || finding.code == "load-above-c";
    if (!warned)
        throw std::runtime_error("no finding about a load beyond the range of the life formula");
    return {{"L10_h", hours(ratingLife_Mrev(num(in, "C_N"), num(in, "P_N"), 3.0), num(in, "speed_rpm"))}};
}

Results bl25(const Json& in)
{
    Shaft shaft(0.0, 1100.0);
    shaft.supports(in.at("supports"));
    shaft.forces(in.at("loads"));
    shaft.solve();
    const BookWeibull weibull(in.at("weibull"));
    const double P_O = num(in, "application_factor") * shaft.radial(0), P_C = num(in, "application_factor") * shaft.radial(1);
    const auto C = [&](double P) {
        return requiredAt(weibull, P, num(in, "life_h"), num(in, "speed_rpm"), num(in, "reliability"), num(in, "exponent"));
    };
    return {{"P_O_N", P_O}, {"P_C_N", P_C}, {"C_O_N", C(P_O)}, {"C_C_N", C(P_C)}};
}

Results bl26(const Json& in)
{
    Shaft shaft(0.0, 300.0);
    shaft.supports(in.at("supports"));
    shaft.forces(in.at("loads"));
    shaft.solve();
    const BookWeibull weibull(in.at("weibull"));
    // 1e6/60 h at 1 rpm are 10^6 revolutions.
    const auto C = [&](double p) {
        return requiredAt(weibull, shaft.radial(1), num(in, "life_Mrev") * 1e6 / 60.0, 1.0, num(in, "reliability"), p);
    };
    return {{"R_B_N", shaft.radial(1)}, {"C_B_ball_N", C(3.0)}, {"C_B_roller_N", C(rollerExponent)}};
}

} // namespace

const Adapters& lifeAdapters()
{
    static const Adapters all = {
        {"BL-01", weibullRating}, {"BL-02", bl02},          {"BL-03", weibullRating}, {"BL-04", weibullRating},
        {"BL-05", weibullRating}, {"BL-06", weibullRating}, {"BL-07", weibullRating}, {"BL-08", bl08},
        {"BL-09", bl09},          {"BL-10", bl10},          {"BL-11", lifeInHours},   {"BL-12", bl12},
        {"BL-13", bl13},          {"BL-14", lifeInHours},   {"BL-15", bl15},          {"BL-16", bl16},
        {"BL-17", bl17},          {"BL-18", bl18},          {"BL-19", bl19},          {"BL-20", bl20},
        {"BL-21", runToFailure},  {"BL-22", runToFailure},  {"BL-23", runToFailure},  {"BL-24", runToFailure},
        {"BL-25", bl25},          {"BL-26", bl26}};
    return all;
}

} // namespace reference
