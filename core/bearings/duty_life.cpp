#include "core/bearings/load_rating.h"

#include <algorithm>
#include <cmath>

namespace shaftwright
{

double ratingLife_Mrev(double C_N, double P_N, double life_exponent)
{
    return std::pow(C_N / P_N, life_exponent);
}

double hours(double life_Mrev, double speed_rpm)
{
    return 1e6 * life_Mrev / (60.0 * std::abs(speed_rpm));
}

double requiredC_N(double P_N, double life_h, double speed_rpm, double life_exponent)
{
    return P_N * std::pow(60.0 * std::abs(speed_rpm) * life_h / 1e6, 1.0 / life_exponent);
}

Derivation ratingLifeSteps(double C_N, double P_N, double life_exponent, double speed_rpm)
{
    Derivation steps;
    const double life = ratingLife_Mrev(C_N, P_N, life_exponent);
    const char* source = "ISO 281:2007, 5.3, 6.3, 7.3, 8.3 (from memory)";
    steps.push_back(
        {"rating_life", "L10", "(C / P)^p", {{"C", C_N}, {"P", P_N}, {"p", life_exponent}}, life, "10^6 rev", source});
    if (speed_rpm != 0.0) {
        const double n = std::abs(speed_rpm);
        steps.push_back(
            {"rating_life_hours", "L10h", "10^6 L10 / (60 n)", {{"L10", life}, {"n", n}}, hours(life, n), "h", source});
    }
    return steps;
}

DutyLife dutyLife(double C_N, double life_exponent, std::span<const DutyPoint> points)
{
    DutyLife out;
    if (!(C_N > 0.0) || !std::isfinite(C_N) || !(life_exponent > 0.0))
        return out;
    double shares = 0.0;
    for (const DutyPoint& point : points) {
        if (!(point.time_share >= 0.0) || !std::isfinite(point.time_share) || !std::isfinite(point.speed_rpm))
            return out;
        if (point.P_N && (!(*point.P_N >= 0.0) || !std::isfinite(*point.P_N)))
            return out;
        shares += point.time_share;
    }
    if (!(shares > 0.0))
        return out;

    double revolutions = 0.0, damage = 0.0; // per unit of time; damage in 1/h
    bool rated = true;
    out.damage_share.assign(points.size(), 0.0);
    out.L10_h_each.assign(points.size(), std::nullopt);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const DutyPoint& point = points[i];
        const double share = point.time_share / shares, speed = std::abs(point.speed_rpm);
        revolutions += share * speed;
        if (speed == 0.0)
            continue;
        if (!point.P_N) {
            rated = rated && share == 0.0;
            continue;
        }
        if (*point.P_N == 0.0)
            continue;
        const double each_h = hours(ratingLife_Mrev(C_N, *point.P_N, life_exponent), speed);
        out.L10_h_each[i] = each_h;
        out.damage_share[i] = share / each_h;
        damage += share / each_h;
    }
    out.mean_speed_rpm = revolutions;
    if (!(damage > 0.0) || !std::isfinite(damage))
        return out;
    for (std::size_t i = 0; i < points.size(); ++i) {
        out.damage_share[i] /= damage;
        if (out.governing < 0 || out.damage_share[i] > out.damage_share[static_cast<std::size_t>(out.governing)])
            out.governing = static_cast<int>(i);
    }
    if (!rated)
        return out;

    // Miner and the mean load are the same statement: 1/L = sum of q/L_i.
    const double life_h = 1.0 / damage;
    const double life_Mrev = life_h * 60.0 * revolutions / 1e6;
    const double mean_N = C_N * std::pow(life_Mrev, -1.0 / life_exponent);
    out.L10_h = life_h;
    out.L10_Mrev = life_Mrev;
    out.P_mean_N = mean_N;

    DerivationStep speed{"mean_speed", "nm", "sum(q n)", {}, revolutions, "rpm", "ISO 281:2007 with linear damage (Miner)"};
    DerivationStep mean{"mean_load", "Pm", "(sum(P^p n q) / sum(n q))^(1/p)", {}, mean_N, "N", speed.source};
    mean.inputs.set("p", life_exponent);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const std::string k = std::to_string(i + 1);
        const double share = points[i].time_share / shares, n = std::abs(points[i].speed_rpm);
        speed.inputs.set("q" + k, share);
        speed.inputs.set("n" + k, n);
        mean.inputs.set("q" + k, share);
        mean.inputs.set("n" + k, n);
        mean.inputs.set("P" + k, points[i].P_N.value_or(0.0));
    }
    if (points.size() > 1) {
        out.derivation.push_back(std::move(speed));
        out.derivation.push_back(std::move(mean));
    }
    for (DerivationStep& step : ratingLifeSteps(C_N, mean_N, life_exponent, revolutions))
        out.derivation.push_back(std::move(step));
    return out;
}

} // namespace shaftwright
