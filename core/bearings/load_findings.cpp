#include "core/bearings/load_law.h"
#include "core/bearings/load_rating.h"

#include <cmath>
#include <numbers>

namespace shaftwright
{
namespace
{

using namespace bearings;

constexpr const char* practice = "common practice";
constexpr double shortCaseShare = 0.05; // cases below it are idle moments: light load there is a note

void add(Findings& findings, Severity severity, const char* code, NamedValues values, const char* source,
         const char* variant = "")
{
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.variant = variant;
    finding.values = std::move(values);
    finding.source = source;
    findings.push_back(std::move(finding));
}

bool hasRibs(Family family)
{
    return family == Family::cylindrical_roller_NJ || family == Family::cylindrical_roller_NUP ||
           family == Family::cylindrical_roller_full;
}

/// Roller ends slide on the ribs: heat and wear there limit the axial force, not fatigue (common practice, from memory).
void ribFindings(Findings& out, const BearingRating& rating, const BearingCondition& condition)
{
    const double Fr = condition.Fr_N, Fa = condition.Fa_N;
    if (Fa <= noForce_N)
        return;
    if (rating.axial_limit_N && Fa > *rating.axial_limit_N) {
        add(out, Severity::stop, "rib-load", {{"Fa_N", Fa}, {"Fr_N", Fr}, {"Fa_limit_N", *rating.axial_limit_N}},
            "catalogue data of the row", "stated-limit");
        return;
    }
    const double free = 0.1, limit = condition.short_peak ? 0.5 : 0.4;
    const NamedValues values = {
        {"Fa_N", Fa}, {"Fr_N", Fr}, {"axial_ratio", Fr > 0.0 ? Fa / Fr : 0.0}, {"Fa_limit_N", limit * Fr}};
    if (Fr <= noForce_N)
        add(out, Severity::stop, "rib-load", values, practice, "no-radial");
    else if (Fa > limit * Fr)
        add(out, Severity::stop, "rib-load", values, practice, "limit");
    else if (Fa > free * Fr)
        add(out, Severity::caution, "rib-load", values, practice, condition.short_peak ? "peak" : "");
}

bool shallowGroove(const BearingRating& rating)
{
    return rating.bore_mm < 12.0 || rating.series == "618" || rating.series == "619" || rating.series == "18" ||
           rating.series == "19";
}

void axialShareFindings(Findings& out, const BearingRating& rating, LoadLaw law, const BearingCondition& condition,
                        const EquivalentLoad& load)
{
    const double Fr = condition.Fr_N, Fa = condition.Fa_N;
    if (law == LoadLaw::deep_groove && rating.C0_N > 0.0) {
        const double share = Fa / rating.C0_N;
        const NamedValues values = {{"Fa_N", Fa}, {"C0_N", rating.C0_N}, {"share_percent", 100.0 * share}};
        if (share > 0.5)
            add(out, Severity::stop, "deep-groove-axial-limit", values, practice);
        else if (share > 0.25 && shallowGroove(rating))
            add(out, Severity::caution, "deep-groove-axial-limit", values, practice, "small");
        return;
    }
    if (rating.family == Family::four_point_contact_ball) {
        const double least = 1.3;
        if (condition.speed_rpm != 0.0 && Fr > noForce_N && Fa < least * Fr)
            add(out, Severity::caution, "four-point-low-axial",
                {{"Fr_N", Fr}, {"Fa_N", Fa}, {"axial_ratio", Fa / Fr}, {"limit", least}}, practice);
        return;
    }
    const bool rowsApart =
        rating.rows >= 2 && (law == LoadLaw::self_aligning || law == LoadLaw::inclined_roller || law == LoadLaw::angular);
    if (rowsApart && !condition.pressed && load.P_N && Fa > load.e * Fr + noForce_N)
        add(out, Severity::caution, "row-unloaded",
            {{"Fr_N", Fr}, {"Fa_N", Fa}, {"axial_ratio", Fr > noForce_N ? Fa / Fr : 0.0}, {"e", load.e}}, practice,
            Fr > noForce_N ? "" : "axial-only");
}

void thrustFindings(Findings& out, const BearingRating& rating, const BearingCondition& condition)
{
    if (condition.speed_rpm == 0.0 || condition.pressed)
        return;
    const double Fa = condition.Fa_N, least = leastThrustLoad_N(rating, condition.speed_rpm);
    const NamedValues values = {{"Fa_N", Fa}, {"Fa_min_N", least}, {"speed_rpm", std::abs(condition.speed_rpm)}};
    if (Fa <= noForce_N)
        add(out, Severity::stop, "thrust-unloaded", values, practice);
    else if (Fa < least)
        add(out, Severity::caution, "thrust-unloaded", values,
            rating.roller ? practice : "gyroscopic moment after Harris (from memory)", "below-least");
}

/// How far the load is from where the life formula holds.
void rangeFindings(Findings& out, const BearingRating& rating, double P)
{
    const char* source = "ISO 281:2007, 5.3, 7.3 (from memory)";
    const NamedValues values = {{"P_N", P},
                                {"C_N", rating.C_N},
                                {"C0_N", rating.C0_N},
                                {"share_percent", 100.0 * P / rating.C_N},
                                {"row", rating.designation}};
    if (P > rating.C_N)
        add(out, Severity::stop, "load-above-c", values, source);
    else if (P > 0.5 * rating.C_N)
        add(out, Severity::caution, "load-above-half-c", values, source);
    if (!rating.roller && rating.C0_N > 0.0 && P > rating.C0_N)
        add(out, Severity::stop, "load-above-c0", values, source);
}

void leastLoadFindings(Findings& out, const BearingRating& rating, const BearingCondition& condition, double P)
{
    const double least = leastLoadRatio(rating.family);
    if (condition.speed_rpm == 0.0 || condition.pressed || !(P > 0.0) || P >= least * rating.C_N)
        return;
    const Severity severity = condition.time_share > shortCaseShare ? Severity::caution : Severity::note;
    add(out, severity, "below-minimum-load",
        {{"P_N", P},
         {"C_N", rating.C_N},
         {"share_percent", 100.0 * P / rating.C_N},
         {"P_min_N", least * rating.C_N},
         {"speed_rpm", std::abs(condition.speed_rpm)},
         {"time_share_percent", 100.0 * condition.time_share}},
        practice, rating.roller ? "roller" : "ball");
}

/// The bearings of a composite are each judged by their own share of the load.
void memberFindings(Findings& out, const BearingRating& whole, const BearingCondition& condition)
{
    for (const BearingRating& member : whole.members) {
        const MemberLoad share = memberLoad(whole, member, condition.Fr_N, condition.Fa_N, condition.sense);
        const double P = equivalentLoadQuick_N(member, share.Fr_N, share.Fa_N);
        if (std::isfinite(P) && P > 0.0)
            rangeFindings(out, member, P);
        if (isThrustLaw(lawOf(member))) {
            BearingCondition own = condition;
            own.Fr_N = share.Fr_N;
            own.Fa_N = share.Fa_N;
            thrustFindings(out, member, own);
        }
    }
}

} // namespace

Findings loadFindings(const BearingRating& rating, const BearingCondition& given, const EquivalentLoad& load)
{
    Findings out;
    BearingCondition condition = given;
    condition.Fr_N = std::abs(given.Fr_N);
    condition.Fa_N = std::abs(given.Fa_N);
    // Forces that are no numbers were refused with P; nothing can be said about them here.
    if (!std::isfinite(condition.Fr_N) || !std::isfinite(condition.Fa_N) || !std::isfinite(condition.speed_rpm))
        return out;
    const LoadLaw law = lawOf(rating);
    const bool turning = condition.speed_rpm != 0.0;

    if (condition.sense_held == false && condition.Fa_N > noForce_N)
        add(out, Severity::stop, "axial-not-carried", {{"Fr_N", condition.Fr_N}, {"Fa_N", condition.Fa_N}}, practice,
            "wrong-sense");
    if (hasRibs(rating.family) && turning)
        ribFindings(out, rating, condition);
    axialShareFindings(out, rating, law, condition, load);
    if (isThrustLaw(law))
        thrustFindings(out, rating, condition);
    if (law == LoadLaw::apart)
        memberFindings(out, rating, condition);
    if (load.P_N) {
        const bool unloaded = condition.Fr_N <= noForce_N && condition.Fa_N <= noForce_N;
        if (unloaded && turning && !isThrustLaw(law))
            add(out, Severity::caution, "bearing-unloaded", {{"speed_rpm", std::abs(condition.speed_rpm)}}, practice);
        if (!unloaded) {
            leastLoadFindings(out, rating, condition, *load.P_N);
            if (law != LoadLaw::apart)
                rangeFindings(out, rating, *load.P_N);
        }
    }
    if (turning) {
        const double n = std::abs(condition.speed_rpm), product = n * rating.Dpw_mm;
        if (n < 10.0 || (rating.Dpw_mm > 0.0 && product < 1000.0))
            add(out, Severity::note, "speed-very-low", {{"speed_rpm", n}, {"Dpw_mm", rating.Dpw_mm}, {"n_Dpw", product}},
                practice);
    }
    return out;
}

Findings staticFindings(const BearingRating& rating, const StaticLoad& load, double required_S0)
{
    Findings out;
    // A ratio that misses by a rounding error is met.
    if (load.S0 && *load.S0 < required_S0 * (1.0 - 1e-12))
        add(out, Severity::stop, "static-low",
            {{"S0", *load.S0}, {"S0_required", required_S0}, {"P0_N", load.P0_N.value_or(0.0)}, {"C0_N", rating.C0_N}},
            "ISO 76:2006 (from memory)");
    return out;
}

Findings lifeFindings(std::optional<double> life_h, std::optional<double> required_h, std::optional<double> C_over_P)
{
    Findings out;
    if (!life_h)
        return out;
    if (required_h && *life_h < *required_h * (1.0 - 1e-12)) {
        add(out, Severity::stop, "life-short", {{"L10_h", *life_h}, {"required_L_h", *required_h}}, "ISO 281:2007");
        return out;
    }
    NamedValues values = {{"L10_h", *life_h}};
    if (required_h && *required_h > 0.0) {
        values.set("required_L_h", *required_h);
        values.set("ratio", *life_h / *required_h);
    }
    if (C_over_P)
        values.set("C_over_P", *C_over_P);
    const char* variant = nullptr;
    if (required_h && *required_h > 0.0 && *life_h > 16.0 * *required_h)
        variant = "";
    else if (*life_h > 1e6)
        variant = "million-hours";
    else if (C_over_P && *C_over_P > 30.0)
        variant = "light-load";
    if (variant)
        add(out, Severity::note, "life-generous", values, practice, variant);
    return out;
}

double leastThrustLoad_N(const BearingRating& rating, double speed_rpm)
{
    const LoadLaw law = lawOf(rating);
    if (!isThrustLaw(law) || speed_rpm == 0.0)
        return 0.0;
    // The spherical one is held by Fa >= e Fr, which stands with its equivalent load.
    if (rating.family == Family::spherical_roller_thrust)
        return 0.0;
    if (rating.roller)
        return 0.001 * rating.C0_N;
    if (law != LoadLaw::axial_only || !rating.geometry)
        return 0.0;
    const InternalGeometry& inside = *rating.geometry;
    constexpr double density_t_mm3 = 7.8e-9, friction = 0.02; // bearing steel; ball on raceway
    const double omega = std::numbers::pi / 30.0 * speed_rpm, Dw = inside.element_diameter_mm;
    // Gyroscopic moment rho pi Dw^5/60 (omega/2)^2 Dpw/Dw held by mu Q Dw at each of Z balls.
    return inside.elements_per_row * density_t_mm3 * std::numbers::pi * Dw * Dw * Dw * inside.pitch_diameter_mm * omega * omega /
           (240.0 * friction);
}

double leastLoadRatio(Family family)
{
    switch (family) {
    case Family::deep_groove_ball:
    case Family::self_aligning_ball:
    case Family::angular_contact_ball_15:
    case Family::angular_contact_ball_25:
    case Family::angular_contact_ball_40:
    case Family::angular_contact_ball_two_row:
    case Family::four_point_contact_ball:
    case Family::angular_contact_set_O:
    case Family::angular_contact_set_X:
    case Family::precision_set_O_25:
    case Family::angular_contact_set_tandem:
    case Family::composite_tandem_opposed:
        return 0.01;
    case Family::deep_groove_ball_two_row:
        return 0.015;
    case Family::cylindrical_roller_NU:
    case Family::cylindrical_roller_NJ:
    case Family::cylindrical_roller_NUP:
    case Family::needle_roller:
    case Family::needle_roller_no_inner:
    case Family::needle_drawn_cup:
    case Family::tapered_roller:
    case Family::tapered_roller_pair:
    case Family::spherical_roller:
    case Family::toroidal_roller:
    case Family::needle_thrust_combined:
    case Family::composite_NU_four_point:
        return 0.02;
    case Family::cylindrical_roller_full:
        return 0.04;
    default:
        return 0.0; // thrust: an axial least load of its own; plain, magnetic, linear: none
    }
}

} // namespace shaftwright
