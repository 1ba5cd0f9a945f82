#include "core/bearings/load_composite.h"
#include "core/bearings/load_rating.h"

#include <numbers>

namespace shaftwright
{
namespace
{

using namespace bearings;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double degree = std::numbers::pi / 180.0;
constexpr const char* source = "ISO 76:2006 (from memory)";

/// Largest Fr beside Fa for which a one-way inclined thrust bearing has a P0: 0.67 Fa cot alpha (ISO 76:2006, from memory).
double inclinedThrustLimit_N(const BearingRating& rating, double Fa_N)
{
    return 0.67 * Fa_N / std::tan(rating.contact_angle_rad);
}

double singleP0_N(const BearingRating& rating, LoadLaw law, double Fr_N, double Fa_N)
{
    switch (law) {
    case LoadLaw::none:
    case LoadLaw::bad_angle:
    case LoadLaw::apart:
        return nan;
    case LoadLaw::radial_only:
        if (axialSense(rating.family) == AxialSense::none && Fa_N > looseRingAxialShare * Fr_N + noForce_N)
            return nan;
        return Fr_N;
    case LoadLaw::axial_only:
        return Fr_N <= flatThrustRadialShare * Fa_N + noForce_N ? Fa_N : nan;
    case LoadLaw::thrust_ball_one_way:
    case LoadLaw::thrust_roller_one_way:
        if (Fr_N > inclinedThrustLimit_N(rating, Fa_N) + noForce_N)
            return nan;
        break;
    default:
        break;
    }
    const StaticFactors f = staticFactors(rating, law);
    const double P0 = f.X0 * Fr_N + f.Y0 * Fa_N;
    return f.least_Fr ? std::max(Fr_N, P0) : P0;
}

Finding refusal(const BearingRating& rating, LoadLaw law, double Fr_N, double Fa_N)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.source = source;
    if (!std::isfinite(Fr_N) || !std::isfinite(Fa_N)) {
        finding.code = "value-invalid";
        finding.variant = "load";
        finding.values = {{"name", std::isfinite(Fr_N) ? "Fa_N" : "Fr_N"}};
        return finding;
    }
    switch (law) {
    case LoadLaw::none:
        finding.severity = Severity::note;
        finding.code = "not-assessed";
        finding.variant = "bearing-life";
        finding.values = {{"family", std::string(toString(rating.family))}};
        return finding;
    case LoadLaw::bad_angle:
        finding.code = "value-invalid";
        finding.variant = "contact-angle";
        finding.values = {{"contact_angle_deg", rating.contact_angle_rad / degree},
                          {"family", std::string(toString(rating.family))}};
        return finding;
    case LoadLaw::radial_only:
        finding.code = "axial-not-carried";
        finding.values = {{"Fr_N", Fr_N}, {"Fa_N", Fa_N}, {"Fa_limit_N", looseRingAxialShare * Fr_N}};
        break;
    case LoadLaw::axial_only:
        finding.code = "radial-on-thrust";
        finding.values = {{"Fr_N", Fr_N}, {"Fa_N", Fa_N}, {"Fr_limit_N", flatThrustRadialShare * Fa_N}};
        break;
    default:
        finding.code = "radial-on-thrust";
        finding.values = {{"Fr_N", Fr_N}, {"Fa_N", Fa_N}, {"Fr_limit_N", inclinedThrustLimit_N(rating, Fa_N)}};
        break;
    }
    finding.variant = "static";
    return finding;
}

const char* formulaX0(LoadLaw law)
{
    return isThrustLaw(law) ? "2.3 tan(alpha)" : "";
}

const char* formulaY0(LoadLaw law, bool two)
{
    if (law == LoadLaw::self_aligning || law == LoadLaw::inclined_roller)
        return two ? "0.44 cot(alpha)" : "0.22 cot(alpha)";
    return "Y0(alpha)";
}

} // namespace

StaticLoad staticLoad(const BearingRating& rating, double Fr_N, double Fa_N, std::optional<Carries> sense)
{
    StaticLoad out;
    Fr_N = std::abs(Fr_N);
    Fa_N = std::abs(Fa_N);
    const LoadLaw law = lawOf(rating);
    if (!(rating.C0_N > 0.0) || !std::isfinite(rating.C0_N)) {
        Finding finding;
        finding.severity = Severity::stop;
        finding.code = "value-invalid";
        finding.variant = "rating";
        finding.values = {{"name", "C0_N"}, {"value", rating.C0_N}};
        if (law == LoadLaw::none)
            finding = refusal(rating, law, Fr_N, Fa_N);
        out.findings.push_back(std::move(finding));
        return out;
    }
    if (law == LoadLaw::apart) {
        const double P0 = jointP0_N(rating, Fr_N, Fa_N, sense, [&out](const BearingRating& member, const MemberLoad& load) {
            StaticLoad one = staticLoad(member, load.Fr_N, load.Fa_N);
            out.findings.insert(out.findings.end(), one.findings.begin(), one.findings.end());
            out.derivation.insert(out.derivation.end(), one.derivation.begin(), one.derivation.end());
            return one.P0_N.value_or(nan);
        });
        if (!std::isfinite(P0))
            return out;
        out.P0_N = P0;
        DerivationStep step{"static_load_joint", "P0", "C0 max(P0k / C0k)", {{"C0", rating.C0_N}}, P0, "N", "derived"};
        int number = 1;
        for (const BearingRating& member : rating.members) {
            const MemberLoad load = memberLoad(rating, member, Fr_N, Fa_N, sense);
            const std::string k = std::to_string(number++);
            step.inputs.set("P0" + k, staticLoadQuick_N(member, load.Fr_N, load.Fa_N));
            step.inputs.set("C0" + k, member.C0_N);
        }
        out.derivation.push_back(std::move(step));
    } else {
        const double P0 = singleP0_N(rating, law, Fr_N, Fa_N);
        if (!std::isfinite(P0)) {
            out.findings.push_back(refusal(rating, law, Fr_N, Fa_N));
            return out;
        }
        const StaticFactors f = staticFactors(rating, law);
        out.P0_N = P0;
        out.X0 = f.X0;
        out.Y0 = f.Y0;
        if (law == LoadLaw::radial_only) {
            out.derivation.push_back({"static_load", "P0", "Fr", {{"Fr", Fr_N}}, P0, "N", source});
        } else if (law == LoadLaw::axial_only) {
            out.derivation.push_back({"static_load", "P0", "Fa", {{"Fa", Fa_N}}, P0, "N", source});
        } else {
            const NamedValues angle = {{"alpha", rating.contact_angle_rad / degree}};
            if (*formulaX0(law))
                out.derivation.push_back({"static_radial_factor", "X0", formulaX0(law), angle, f.X0, "", source});
            if (rating.Y0)
                out.derivation.push_back({"static_axial_factor", "Y0", "Y0", {}, f.Y0, "", "catalogue data of the row"});
            else if (law != LoadLaw::deep_groove && !isThrustLaw(law))
                out.derivation.push_back({"static_axial_factor", "Y0", formulaY0(law, twoRows(rating)), angle, f.Y0, "", source});
            out.derivation.push_back({"static_load",
                                      "P0",
                                      f.least_Fr ? "max(Fr, X0 Fr + Y0 Fa)" : "X0 Fr + Y0 Fa",
                                      {{"X0", f.X0}, {"Fr", Fr_N}, {"Y0", f.Y0}, {"Fa", Fa_N}},
                                      P0,
                                      "N",
                                      source});
        }
    }
    if (*out.P0_N > 0.0) {
        out.S0 = rating.C0_N / *out.P0_N;
        out.derivation.push_back(
            {"static_safety", "S0", "C0 / P0", {{"C0", rating.C0_N}, {"P0", *out.P0_N}}, *out.S0, "", source});
    }
    return out;
}

double staticLoadQuick_N(const BearingRating& rating, double Fr_N, double Fa_N, std::optional<Carries> sense)
{
    Fr_N = std::abs(Fr_N);
    Fa_N = std::abs(Fa_N);
    if (!std::isfinite(Fr_N) || !std::isfinite(Fa_N) || !(rating.C0_N > 0.0))
        return nan;
    const LoadLaw law = lawOf(rating);
    if (law == LoadLaw::apart) {
        return jointP0_N(rating, Fr_N, Fa_N, sense, [](const BearingRating& member, const MemberLoad& load) {
            return staticLoadQuick_N(member, load.Fr_N, load.Fa_N);
        });
    }
    return singleP0_N(rating, law, Fr_N, Fa_N);
}

double requiredS0(const BearingRating& rating, Grade quiet, bool turning, bool shocks)
{
    // Edge loading and thin case-hardened rings ask for more than the table, whatever the motion.
    if (rating.family == Family::spherical_roller_thrust || rating.family == Family::composite_spherical_thrust)
        return 4.0;
    if (rating.family == Family::needle_drawn_cup)
        return 3.0;
    double required = 0.0;
    for (const BearingRating& member : rating.members)
        required = std::max(required, requiredS0(member, quiet, turning, shocks));
    if (required > 0.0)
        return required;
    const bool smooth = quiet == Grade::raised || quiet == Grade::high;
    const bool roller = rating.roller;
    if (!turning && !smooth) {
        // Standing or rare small swings, accuracy unimportant (common practice).
        const double standing = roller ? 1.0 : 0.5;
        return shocks ? 2.0 * standing : standing;
    }
    required = smooth ? (roller ? 3.0 : 2.0) : (roller ? 1.5 : 1.0);
    if (shocks)
        required = std::max(required, roller ? 3.0 : 1.5);
    return required;
}

double settledS0(const BearingRating& rating, double own, bool turning)
{
    return turning ? std::max(own, rating.roller ? 1.5 : 1.0) : own;
}

} // namespace shaftwright
