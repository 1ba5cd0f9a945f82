#include "core/bearings/basic_rating.h"
#include "core/bearings/load_rating.h"
#include "tests/reference/reference.h"

#include <cmath>
#include <cstdio>
#include <stdexcept>

namespace reference
{

using namespace shaftwright;

namespace
{

/// Key with a number in it as the file writes it.
std::string key(const char* name, double value, const char* format)
{
    char digits[32];
    std::snprintf(digits, sizeof digits, format, value);
    return std::string(name) + digits;
}

BearingRating bearing(Family family, GeometryClass geometry, double alpha_deg, double f0 = 14.0)
{
    CatalogueRow r;
    r.designation = "as stated";
    r.source = "published check";
    r.geometry_class = geometry;
    r.bore_mm = 40.0;
    r.outer_mm = 80.0;
    r.C_N = 30000.0;
    r.C0_N = 20000.0;
    r.contact_angle_deg = alpha_deg;
    r.f0 = f0;
    return ratingOf(r, family);
}

Results tb01(const Json& in)
{
    Results out;
    const double f = num(in, "groove_radius_ratio");
    for (const Json& gamma : in.at("gamma"))
        out[key("fc_", gamma.get<double>(), "%.2f")] = fcRadialBall(gamma.get<double>(), 0.95, f, f);
    return out;
}

/// The factors of the branch with axial load, at a relative axial load.
EquivalentLoad axialAt(double rel)
{
    // Without radial load the axial branch governs; f0 Fa/C0 = rel.
    return equivalentLoad(bearing(Family::deep_groove_ball, GeometryClass::deep_groove_ball, 0.0), 0.0, rel * 20000.0 / 14.0);
}

Results tb02(const Json& in)
{
    Results out;
    for (const Json& rel : in.at("f0Fa_over_C0")) {
        const EquivalentLoad load = axialAt(rel.get<double>());
        if (load.X != num(in, "X_above_e"))
            throw std::runtime_error("X of the axial branch");
        out[key("e_", rel.get<double>(), "%g")] = load.e;
        out[key("Y_", rel.get<double>(), "%g")] = load.Y;
    }
    return out;
}

Results tb03(const Json& in)
{
    // The pairs of the check stand at the nodes of the table, which the program must have too.
    const double nodes[] = {0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89};
    double least = 2.0, greatest = 0.0;
    std::size_t i = 0;
    for (const double rel : nodes) {
        const EquivalentLoad load = axialAt(rel);
        const Json& pair = in.at("pairs").at(i++);
        if (std::abs(load.e - num(pair, "e")) > 1e-9 || std::abs(load.Y - num(pair, "Y")) > 1e-9)
            throw std::runtime_error("node of the table");
        least = std::min(least, load.X + load.Y * load.e);
        greatest = std::max(greatest, load.X + load.Y * load.e);
    }
    return {{"min", least}, {"max", greatest}};
}

Results tb04(const Json& in)
{
    Results out;
    for (const Json& angle : in.at("contact_angle_deg")) {
        const double alpha = angle.get<double>();
        const EquivalentLoad load =
            equivalentLoad(bearing(Family::angular_contact_ball_40, GeometryClass::angular_contact_ball, alpha), 0.0, 1000.0);
        out[key("e_", alpha, "%g")] = load.e;
        out[key("X_", alpha, "%g")] = load.X;
        out[key("Y_", alpha, "%g")] = load.Y;
    }
    return out;
}

Results tb05(const Json& in)
{
    Results out;
    for (const Json& angle : in.at("contact_angle_deg")) {
        const double alpha = angle.get<double>();
        const EquivalentLoad load =
            equivalentLoad(bearing(Family::tapered_roller, GeometryClass::tapered_roller, alpha), 0.0, 1000.0);
        if (load.X != 0.4)
            throw std::runtime_error("X of a tapered row");
        out[key("e_", alpha, "%g")] = load.e;
        out[key("Y_", alpha, "%g")] = load.Y;
    }
    return out;
}

Results tb06(const Json& in)
{
    Results out;
    for (const Json& S : in.at("reliability_percent"))
        out[key("a1_", S.get<double>(), "%g")] = a1(S.get<double>());
    return out;
}

Results tb07(const Json& in)
{
    // The former edition, two parameters of slope 1.5: stands beside the program for the reading of older books.
    Results out;
    for (const Json& S : in.at("reliability_percent"))
        out[key("a1_", S.get<double>(), "%g")] = std::pow(std::log(100.0 / S.get<double>()) / std::log(100.0 / 90.0), 1.0 / 1.5);
    return out;
}

Results tb08(const Json& in)
{
    Results out;
    for (const Json& gamma : in.at("gamma"))
        out[key("f0_", gamma.get<double>(), "%.2f")] = f0RadialBall(gamma.get<double>(), 0.52, 0.53);
    return out;
}

Results tb09(const Json&)
{
    const auto factors = [](Family family, GeometryClass geometry, double alpha) {
        return staticLoad(bearing(family, geometry, alpha), 0.0, 1000.0);
    };
    const StaticLoad deep = factors(Family::deep_groove_ball, GeometryClass::deep_groove_ball, 0.0);
    const StaticLoad fifteen = factors(Family::angular_contact_ball_15, GeometryClass::angular_contact_ball, 15.0);
    const StaticLoad twentyFive = factors(Family::angular_contact_ball_25, GeometryClass::angular_contact_ball, 25.0);
    const StaticLoad forty = factors(Family::angular_contact_ball_40, GeometryClass::angular_contact_ball, 40.0);
    const StaticLoad taper = factors(Family::tapered_roller, GeometryClass::tapered_roller, 15.0);
    return {{"X0_deep", deep.X0},     {"Y0_deep", deep.Y0}, {"X0_ang", fifteen.X0}, {"Y0_15", fifteen.Y0},
            {"Y0_25", twentyFive.Y0}, {"Y0_40", forty.Y0},  {"X0_taper", taper.X0}, {"Y0_taper15", taper.Y0}};
}

/// Inside of a bearing whose static rating is the one of the check: the limit goes with C0 at equal pitch circle.
double fatigueLimit(double C0_N, const std::string& type, double Dpw_mm)
{
    InternalGeometry inside;
    inside.pitch_diameter_mm = Dpw_mm;
    inside.elements_per_row = 12;
    inside.element_diameter_mm = 0.15 * Dpw_mm;
    inside.conformity_inner = inside.conformity_outer = 0.52;
    const bool roller = type == "roller";
    if (roller) {
        inside.effective_length_mm = inside.roller_length_mm = inside.element_diameter_mm;
        inside.conformity_inner = inside.conformity_outer = 0.0;
    }
    const auto rating = basicRating(roller ? GeometryClass::cylindrical_roller : GeometryClass::deep_groove_ball, inside);
    if (!rating)
        throw std::runtime_error("geometry refused: " + rating.finding().code);
    return rating->Cu_N * C0_N / rating->C0_N;
}

Results tb13(const Json& in)
{
    Results out;
    for (const Json& c : in.at("cases")) {
        const std::string type = c.at("type").get<std::string>();
        const double Dpw = num(c, "Dpw_mm");
        out[key((type + "_").c_str(), Dpw, "%g") + "_N"] = fatigueLimit(num(in, "C0_N"), type, Dpw);
    }
    return out;
}

} // namespace

const Adapters& tableAdapters()
{
    static const Adapters all = {{"TB-01", tb01}, {"TB-02", tb02}, {"TB-03", tb03}, {"TB-04", tb04}, {"TB-05", tb05},
                                 {"TB-06", tb06}, {"TB-07", tb07}, {"TB-08", tb08}, {"TB-09", tb09}, {"TB-13", tb13}};
    return all;
}

} // namespace reference
