#pragma once
// Bearings as a catalogue would state them, for tests. Numbers are chosen, not those of a maker.

#include "core/bearings/load_rating.h"
#include "core/bearings/rating.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace shaftwright::fixtures
{

inline CatalogueRow row(GeometryClass geometry, double C_N, double C0_N, double alpha_deg = 0.0)
{
    CatalogueRow r;
    r.catalogue = "typed";
    r.designation = "T";
    r.geometry_class = geometry;
    r.bore_mm = 45.0;
    r.outer_mm = 85.0;
    r.width_mm = 19.0;
    r.C_N = C_N;
    r.C0_N = C0_N;
    r.contact_angle_deg = alpha_deg;
    r.source = "typed in a test";
    return r;
}

inline BearingChoice single(Family family, const CatalogueRow& r)
{
    BearingChoice choice;
    choice.family = family;
    choice.rows.push_back({r, std::nullopt});
    return choice;
}

inline BearingChoice setOf(Family family, SetArrangement arrangement, const CatalogueRow& r, int count = 2)
{
    BearingChoice choice;
    choice.family = family;
    choice.arrangement = arrangement;
    for (int i = 0; i < count; ++i)
        choice.rows.push_back({r, std::nullopt});
    return choice;
}

inline BearingRating deepGroove(double C_N, double C0_N, double f0)
{
    CatalogueRow r = row(GeometryClass::deep_groove_ball, C_N, C0_N);
    r.f0 = f0;
    return ratingOf(single(Family::deep_groove_ball, r));
}

inline BearingRating angular(double C_N, double C0_N, double alpha_deg, double f0 = 14.5)
{
    CatalogueRow r = row(GeometryClass::angular_contact_ball, C_N, C0_N, alpha_deg);
    r.f0 = f0;
    return ratingOf(single(Family::angular_contact_ball_40, r));
}

inline BearingRating tapered(double C_N, double C0_N, double alpha_deg)
{
    return ratingOf(single(Family::tapered_roller, row(GeometryClass::tapered_roller, C_N, C0_N, alpha_deg)));
}

inline BearingRating cylindrical(Family family, double C_N, double C0_N)
{
    return ratingOf(single(family, row(GeometryClass::cylindrical_roller, C_N, C0_N)));
}

inline BearingRating thrust(Family family, double C_N, double C0_N, double alpha_deg)
{
    const GeometryClass geometry = family == Family::spherical_roller_thrust     ? GeometryClass::spherical_roller_thrust
                                   : family == Family::cylindrical_roller_thrust ? GeometryClass::cylindrical_roller_thrust
                                                                                 : GeometryClass::thrust_ball;
    return ratingOf(single(family, row(geometry, C_N, C0_N, alpha_deg)));
}

inline const Finding* find(const Findings& findings, const std::string& code)
{
    const auto at = std::find_if(findings.begin(), findings.end(), [&code](const Finding& f) { return f.code == code; });
    return at == findings.end() ? nullptr : &*at;
}

inline double number(const Finding& finding, const std::string& name)
{
    const TextValue* value = finding.values.find(name);
    return value ? std::get<double>(*value) : std::nan("");
}

inline const DerivationStep* step(const Derivation& derivation, const std::string& code)
{
    const auto at =
        std::find_if(derivation.begin(), derivation.end(), [&code](const DerivationStep& s) { return s.code == code; });
    return at == derivation.end() ? nullptr : &*at;
}

inline double input(const DerivationStep& s, const std::string& symbol)
{
    const TextValue* value = s.inputs.find(symbol);
    return value ? std::get<double>(*value) : std::nan("");
}

} // namespace shaftwright::fixtures
