#include "core/selection/engine.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace shaftwright::selection
{
namespace
{

constexpr double infinite = std::numeric_limits<double>::infinity();
/// A row that misses a limit by rounding only does not miss it.
constexpr double slack = 1e-9;

enum Criterion { life, staticSafety, axial, tilt, speed, stiff, fric, space, mount, cost, noise, seal };

double clamp01(double value)
{
    return std::min(1.0, std::max(0.0, value));
}

bool has(const FamilyVerdict& verdict, Rule rule)
{
    return verdict.rules.test(static_cast<std::size_t>(rule));
}
void set(FamilyVerdict& verdict, Rule rule, bool on = true)
{
    if (on)
        verdict.rules.set(static_cast<std::size_t>(rule));
}

bool anyBetween(const RuleSet& rules, Rule first, Rule last)
{
    for (auto i = static_cast<std::size_t>(first); i <= static_cast<std::size_t>(last); ++i) {
        if (rules.test(i))
            return true;
    }
    return false;
}
bool excluded(const FamilyVerdict& verdict)
{
    return anyBetween(verdict.rules, Rule::X01, Rule::X26);
}

std::optional<Carries> senseOf(const SupportLoad& load)
{
    if (load.axial_sense == 0)
        return std::nullopt;
    return load.axial_sense > 0 ? Carries::plus : Carries::minus;
}

bool isSingleTapered(const FamilyTraits& traits)
{
    return traits.family == Family::tapered_roller;
}

/// (C/P)^-p without pow for the two exponents of ISO 281.
double damagePerRevolution(double P_over_C, double exponent)
{
    const double cube = P_over_C * P_over_C * P_over_C;
    return exponent > 3.0 ? cube * std::cbrt(P_over_C) : cube;
}

/// Factor on the n dm limit for load, linear between the given points and constant beyond them.
double speedLoadFactor(double P_over_C, const RuleNumbers& n)
{
    if (!(P_over_C > n.speed_load_free))
        return 1.0;
    if (P_over_C < n.speed_load_mid)
        return 1.0 - (1.0 - n.speed_load_mid_factor) * (P_over_C - n.speed_load_free) / (n.speed_load_mid - n.speed_load_free);
    if (P_over_C < n.speed_load_high)
        return n.speed_load_mid_factor - (n.speed_load_mid_factor - n.speed_load_high_factor) * (P_over_C - n.speed_load_mid) /
                                             (n.speed_load_high - n.speed_load_mid);
    return n.speed_load_high_factor;
}

RowResult evaluate(const RatedRow& row, const FamilyTraits& traits, const Situation& s, const RowSource& source)
{
    const RuleNumbers& n = s.rules->numbers;
    const BearingRating& rating = row.rating;
    RowResult out;
    out.S0 = out.static_ratio = out.P_over_C_least_fast = infinite;
    const double dm_mm = 0.5 * (row.bore_mm + row.outer_mm);
    const double limit = s.settled->lubricant == Lubricant::oil ? traits.ndm_oil : traits.ndm_grease;
    double damage_per_h = 0.0;
    for (const SupportLoad& load : s.question->cases) {
        const auto sense = senseOf(load);
        // Against the short upthrust springs hold the thrust bearing; the guide takes the shaft.
        const bool onGuide = traits.family == Family::composite_spherical_thrust && sense != s.main_side;
        double Fa_N = load.Fa_N;
        if (load.partner_induced_N)
            Fa_N = std::max(inducedLoadQuick_N(rating, load.Fr_N, s.settled->induced_load), *load.partner_induced_N + load.pushing_N);
        const double P_N = onGuide ? 0.0 : source.P_N(rating, load.Fr_N, Fa_N, sense);
        const double P0_N = onGuide ? 0.0
                                    : source.P0_N(rating, load.Fr_static_N.value_or(load.peak_factor * load.Fr_N), load.peak_factor * Fa_N, sense);
        const double turn_rpm = std::abs(load.speed_rpm);
        const bool turning = turn_rpm > 0.0;
        if (std::isnan(P_N) || std::isnan(P0_N)) {
            out.rated = false;
            continue;
        }
        const double share = s.share_sum > 0.0 ? load.time_share / s.share_sum : 1.0;
        const double P_over_C = P_N / rating.C_N;
        damage_per_h += share * turn_rpm * 60e-6 * damagePerRevolution(P_over_C, rating.life_exponent);
        if (&load == s.governing) {
            out.P_N = P_N;
            out.P_over_C = P_over_C;
        }
        out.P_over_C_largest = std::max(out.P_over_C_largest, P_over_C);
        if (P0_N > 0.0) {
            const double S0 = rating.C0_N / P0_N;
            double required = s.question->required_S0 ? settledS0(rating, *s.question->required_S0, turning)
                                                      : requiredS0(rating, s.settled->quiet, turning, s.shocks);
            required = std::max(required, 1e-6);
            if (S0 / required < out.static_ratio) {
                out.static_ratio = S0 / required;
                out.S0_required = required;
            }
            out.S0 = std::min(out.S0, S0);
        }
        if (turning && dm_mm * turn_rpm > n.least_load_ndm && share > n.least_load_time_share &&
            P_over_C < out.P_over_C_least_fast) {
            out.P_over_C_least_fast = P_over_C;
            out.speed_least_rpm = turn_rpm;
        }
        if (turning && limit > 0.0) {
            const double corrected = limit * speedLoadFactor(P_over_C, n);
            const double ratio = dm_mm * turn_rpm / corrected;
            if (ratio > out.speed_ratio) {
                out.speed_ratio = ratio;
                out.ndm = dm_mm * turn_rpm;
                out.ndm_limit = corrected;
            }
        }
    }
    if (out.rated && damage_per_h > 0.0)
        out.L10_h = 1.0 / damage_per_h;
    if (traits.family == Family::deep_groove_ball)
        out.groove_ok = s.Fa_max_N <= n.deep_groove_C0_share * rating.C0_N * (1.0 + slack);
    return out;
}

/// Rules of kind: whether a bearing like this can serve here at all. Not asked for: the only reason.
void kindRules(FamilyVerdict& v, const FamilyTraits& traits, const Situation& s)
{
    const SupportQuestion& q = *s.question;
    const Settled& settled = *s.settled;
    const RuleNumbers& n = s.rules->numbers;
    const bool linear = settled.motion == Motion::linear;
    if (linear != (traits.kind == Kind::linear))
        return set(v, Rule::X01);
    if (traits.kind == Kind::linear)
        return set(v, Rule::R20);
    if (traits.kind == Kind::plain && !settled.allow_plain && settled.motion != Motion::oscillation)
        return set(v, Rule::X23);
    if (traits.kind == Kind::magnetic && !settled.allow_special)
        return set(v, Rule::X24);
    if (traits.kind == Kind::composite) {
        bool tried = q.role == Role::locating && s.Fa_max_N > 0.0;
        if (traits.family == Family::composite_spherical_thrust)
            tried = tried && s.axial_ratio >= n.thrust_composite_share &&
                    std::min(s.Fa_plus_N, s.Fa_minus_N) < n.thrust_composite_reverse_share * s.Fa_max_N;
        if (!tried)
            return set(v, Rule::X26);
    }

    set(v, Rule::X02, !traits.radial && s.slides_across);
    set(v, Rule::X03, traits.axial == AxialSense::none && (q.role != Role::non_locating || s.axial_beyond_free));
    set(v, Rule::X04,
        traits.axial == AxialSense::one_way && (q.role == Role::locating || (q.role == Role::axial_only && s.both_ways)));
    if (q.role == Role::non_locating) {
        set(v, Rule::X05, traits.compensation == Compensation::none);
        set(v, Rule::X06, traits.compensation == Compensation::seat && q.loose_ring_impossible);
    }
    if (q.role == Role::adjusted) {
        const bool sprung =
            traits.family == Family::deep_groove_ball && s.axial_ratio <= n.adjusted_deep_groove_share * (1.0 + slack);
        set(v, Rule::X07, traits.adjusted != Adjusting::partner && !sprung);
        set(v, Rule::R07, sprung);
    }
    if (q.role == Role::end_play) {
        set(v, Rule::X08, traits.end_play == EndPlay::no);
        set(v, Rule::R08, traits.end_play == EndPlay::spare);
    }
    const bool sharesAxial = traits.radial && traits.axial != AxialSense::none;
    set(v, Rule::X09, sharesAxial && s.axial_ratio > traits.share_hard_high * (1.0 + slack));
    set(v, Rule::X10, sharesAxial && traits.share_hard_low > 0.0 && s.axial_ratio < traits.share_hard_low * (1.0 - slack));
    set(v, Rule::X11, s.tilt_mrad > traits.tilt_hard * (1.0 + slack));
    set(v, Rule::R11, s.tilt_mrad > traits.tilt_permissible * (1.0 + slack) && !has(v, Rule::X11));
    if (traits.raceway_on_shaft) {
        set(v, Rule::X12, settled.surface_hardness_HRC < n.hardness_least_HRC);
        set(v, Rule::R12,
            settled.surface_hardness_HRC >= n.hardness_least_HRC && settled.surface_hardness_HRC < n.hardness_needed_HRC);
    }
    if (settled.accuracy == Grade::high) {
        set(v, Rule::X13, traits.accuracy < n.accuracy_class_least);
        set(v, Rule::R13, traits.accuracy >= n.accuracy_class_least && traits.accuracy < n.accuracy_class_full);
    }
    const bool rolls = traits.kind == Kind::rolling || traits.kind == Kind::composite;
    if (rolls) {
        set(v, Rule::X14, settled.temperature_C > n.temperature_hard_C);
        set(v, Rule::R14, settled.temperature_C > n.temperature_caution_C && settled.temperature_C <= n.temperature_hard_C);
        set(v, Rule::R15, settled.separable_wanted && !traits.separable);
        set(v, Rule::R29, settled.dirt == Dirt::severe && traits.seal < n.seal_poor);
        set(v, Rule::R30, settled.motion == Motion::oscillation && settled.swing_deg < n.swing_least_deg);
    }
    set(v, Rule::R16, traits.family == Family::plain_sintered && settled.moist);
    set(v, Rule::R17,
        (traits.family == Family::plain_sintered && settled.dirt >= Dirt::dirty) ||
            (traits.family == Family::plain_ptfe_composite && settled.dirt == Dirt::severe));
    set(v, Rule::R20, !traits.geometry && (traits.kind == Kind::rolling || traits.kind == Kind::magnetic));
    set(v, Rule::R32,
        settled.guide == Grade::high && traits.own_play && q.role != Role::non_locating && q.role != Role::adjusted);
    set(v, Rule::R33, traits.family == Family::composite_spherical_thrust);
    if (sharesAxial) {
        v.share_low = traits.share_low;
        v.share_high = traits.share_high;
        set(v, Rule::R10, traits.share_hard_low > 0.0 && s.axial_ratio < traits.share_low * (1.0 - slack) && !has(v, Rule::X10));
        // Where the useful share depends on the row, the row stage decides.
        set(v, Rule::R09,
            traits.family != Family::deep_groove_ball && !isSingleTapered(traits) && !has(v, Rule::X09) &&
                s.axial_ratio > traits.share_high * (1.0 + slack));
    }
}

/// Rules that no size can change: the row stage is spared.
bool outOfQuestion(const FamilyVerdict& v)
{
    return anyBetween(v.rules, Rule::X01, Rule::X08) || anyBetween(v.rules, Rule::X23, Rule::X24) || has(v, Rule::X26);
}
/// Verdicts that another rating could change.
bool dependsOnRating(const FamilyVerdict& v)
{
    RuleSet others = v.rules;
    for (const Rule rule : {Rule::X05, Rule::X09, Rule::X22, Rule::X25})
        others.reset(static_cast<std::size_t>(rule));
    return v.has_row && !anyBetween(others, Rule::X01, Rule::X26);
}

void plainRules(FamilyVerdict& v, const FamilyTraits& traits, const Situation& s)
{
    const SupportQuestion& q = *s.question;
    const RuleNumbers& n = s.rules->numbers;
    const BushLimits* limits = s.rules->bush(traits.family);
    if (limits == nullptr)
        return;
    const double d = q.seat_mm;
    const double b = std::min(q.greatest_width_mm.value_or(d), d);
    const double outer_mm = n.bush_outer_factor * d + n.bush_outer_plus_mm;
    v.bush_length_mm = b;
    v.rows_at_seat = 1;
    if (q.greatest_outer_mm && outer_mm > *q.greatest_outer_mm * (1.0 + slack)) {
        v.nearest_outer_mm = outer_mm;
        v.nearest_width_mm = b;
        set(v, Rule::X21);
    }
    v.bush_p_limit_MPa = limits->p_MPa;
    double worst_use = -1.0;
    for (const SupportLoad& load : q.cases) {
        const double p = b > 0.0 ? load.Fr_N / (d * b) : infinite;
        const double v_m_s = std::numbers::pi * d * std::abs(load.speed_rpm) / 60000.0;
        const double p_limit = v_m_s <= limits->v_slow_m_s ? limits->p_slow_MPa : limits->p_MPa;
        if (p / p_limit > worst_use) {
            worst_use = p / p_limit;
            v.bush_p_MPa = p;
            v.bush_p_limit_MPa = p_limit;
        }
        v.bush_v_m_s = std::max(v.bush_v_m_s, v_m_s);
        v.bush_pv = std::max(v.bush_pv, p * v_m_s);
    }
    set(v, Rule::X14, s.settled->temperature_C > limits->temperature_max_C);
    if (traits.family == Family::plain_hydrodynamic) {
        set(v, Rule::X15, s.settled->lubricant != Lubricant::oil);
        set(v, Rule::X16, v.bush_v_m_s < n.film_speed_least_m_s);
    }
    set(v, Rule::X17, v.bush_p_MPa > v.bush_p_limit_MPa * (1.0 + slack));
    set(v, Rule::X18, v.bush_v_m_s > limits->v_max_m_s * (1.0 + slack));
    set(v, Rule::X19, v.bush_pv > limits->pv_max * (1.0 + slack));
    set(v, Rule::R19, v.bush_pv > n.pv_caution_share * limits->pv_max && !has(v, Rule::X19));
    if (q.role == Role::non_locating) {
        const double room = traits.inside_share * b;
        set(v, Rule::X05, q.s_required_mm > n.inside_hard_factor * room * (1.0 + slack));
        set(v, Rule::R05, q.s_required_mm > room * (1.0 + slack) && !has(v, Rule::X05));
        v.row.inside_room_mm = room;
    }
    v.row.bore_mm = d;
    v.row.outer_mm = outer_mm;
    v.row.width_mm = b;
}

/// Which row is taken, and what follows from it.
void rowRules(FamilyVerdict& v, const FamilyTraits& traits, const Situation& s, const RowSource& source,
              const std::vector<RatedRow>& rows, std::vector<RowResult>& results, std::vector<std::size_t>& kept)
{
    const SupportQuestion& q = *s.question;
    const RuleNumbers& n = s.rules->numbers;
    v.rows_at_seat = static_cast<int>(rows.size());
    results.clear();
    kept.clear();
    double nearest_section = infinite;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const RatedRow& row = rows[i];
        const bool fits = (!q.greatest_outer_mm || row.outer_mm <= *q.greatest_outer_mm * (1.0 + slack)) &&
                          (!q.greatest_width_mm || row.width_mm <= *q.greatest_width_mm * (1.0 + slack));
        if (!fits) {
            results.emplace_back();
            if (row.section_mm2() < nearest_section) {
                nearest_section = row.section_mm2();
                v.nearest_outer_mm = row.outer_mm;
                v.nearest_width_mm = row.width_mm;
            }
            continue;
        }
        results.push_back(evaluate(row, traits, s, source));
        kept.push_back(i);
        v.largest_C0_N = std::max(v.largest_C0_N, row.rating.C0_N);
    }
    if (kept.empty())
        return set(v, Rule::X21);

    const auto lifeShare = [&](const RowResult& r) {
        if (!r.rated)
            return 0.0;
        return s.required_L10_h && r.L10_h ? *r.L10_h / *s.required_L10_h : infinite;
    };
    const auto meets = [&](const RowResult& r, double life_share, double static_share) {
        return r.groove_ok && lifeShare(r) >= life_share * (1.0 - slack) && r.static_ratio >= static_share * (1.0 - slack);
    };
    const auto keep = [&](auto wanted) {
        const auto middle = std::stable_partition(kept.begin(), kept.end(), wanted);
        if (middle == kept.begin())
            return false;
        kept.erase(middle, kept.end());
        return true;
    };
    const bool anyGroove = std::any_of(kept.begin(), kept.end(), [&](std::size_t i) { return results[i].groove_ok; });
    if (!anyGroove) {
        set(v, Rule::X09);
    } else if (!keep([&](std::size_t i) { return meets(results[i], 1.0, 1.0); })) {
        set(v, keep([&](std::size_t i) { return meets(results[i], n.life_near_share, n.static_near_share); }) ? Rule::R22
                                                                                                              : Rule::X22);
    }
    std::size_t taken = kept.front();
    if (has(v, Rule::X22) || has(v, Rule::X09)) {
        // Nothing reaches: the one that comes nearest is named.
        const auto nearness = [&](std::size_t i) {
            return std::min(lifeShare(results[i]), results[i].static_ratio) * (results[i].groove_ok ? 1.0 : 0.5);
        };
        for (const std::size_t i : kept) {
            if (nearness(i) > nearness(taken))
                taken = i;
        }
    } else {
        const bool onlyHeavy = std::all_of(kept.begin(), kept.end(), [&](std::size_t i) { return rows[i].heavy; });
        set(v, Rule::R34, onlyHeavy);
        if (!keep([&](std::size_t i) { return results[i].speed_ratio <= 1.0; }))
            keep([&](std::size_t i) { return results[i].speed_ratio <= n.speed_hard_ratio; });
        keep([&](std::size_t i) { return !rows[i].thin; });
        if (isSingleTapered(traits))
            keep([&](std::size_t i) {
                return s.axial_ratio <= n.tapered_share_per_tangent * std::tan(rows[i].rating.contact_angle_rad) * (1.0 + slack);
            });
        if (traits.family == Family::deep_groove_ball && s.axial_ratio > traits.share_high)
            keep([&](std::size_t i) { return s.Fa_max_N <= n.deep_groove_pure_axial_C0_share * rows[i].rating.C0_N; });
        taken = kept.front();
        for (const std::size_t i : kept) {
            const double a = rows[i].section_mm2(), b = rows[taken].section_mm2();
            if (a < b * (1.0 - slack) || (a <= b * (1.0 + slack) && rows[i].order < rows[taken].order))
                taken = i;
        }
    }
    v.has_row = true;
    v.row = rows[taken];
    v.result = results[taken];
    const RatedRow& row = v.row;
    const RowResult& r = v.result;
    v.near_life = s.required_L10_h && lifeShare(r) < 1.0 - slack;
    v.near_static = r.static_ratio < 1.0 - slack;

    if (q.role == Role::non_locating && traits.compensation == Compensation::inside) {
        set(v, Rule::X05, q.s_required_mm > n.inside_hard_factor * row.inside_room_mm * (1.0 + slack));
        set(v, Rule::R05, q.s_required_mm > row.inside_room_mm * (1.0 + slack) && !has(v, Rule::X05));
    }
    if (traits.family == Family::deep_groove_ball) {
        const bool small = row.bore_mm < n.deep_groove_small_bore_mm || row.shallow;
        set(v, Rule::R09,
            (s.axial_ratio > traits.share_high && s.Fa_max_N > n.deep_groove_pure_axial_C0_share * row.rating.C0_N) ||
                (small && s.Fa_max_N > n.deep_groove_C0_share_small * row.rating.C0_N));
    }
    if (isSingleTapered(traits)) {
        v.share_high = n.tapered_share_per_tangent * std::tan(row.rating.contact_angle_rad);
        set(v, Rule::R09, s.axial_ratio > v.share_high * (1.0 + slack));
    }
    set(v, Rule::X25, r.speed_ratio > n.speed_hard_ratio);
    set(v, Rule::R25, r.speed_ratio > 1.0 + slack && r.speed_ratio <= n.speed_hard_ratio);
    if (traits.kind == Kind::rolling && r.rated && r.P_over_C_least_fast < leastLoadRatio(traits.family))
        set(v, traits.spring == SpringPreload::no ? Rule::R26 : Rule::P16);
    set(v, Rule::R31, r.P_over_C_largest > n.load_valid_share);
}

double lifeUtility(double ratio, double generous)
{
    if (ratio < 1.0)
        return 0.0;
    if (ratio <= generous)
        return clamp01(0.6 + 0.2 * std::log2(ratio));
    return std::max(0.5, 1.0 - 0.125 * std::log2(ratio / generous));
}
double staticUtility(double ratio)
{
    if (ratio < 1.0)
        return 0.0;
    return std::isinf(ratio) ? 1.0 : clamp01(0.6 + 0.4 * std::log2(ratio));
}
double between(double x, double x0, double y0, double x1, double y1)
{
    return x1 > x0 ? y0 + (y1 - y0) * (x - x0) / (x1 - x0) : y1;
}
double tiltUtility(double t, const FamilyTraits& traits)
{
    if (t <= 0.5 * traits.tilt_good)
        return 1.0;
    if (t <= traits.tilt_good)
        return between(t, 0.5 * traits.tilt_good, 1.0, traits.tilt_good, 0.7);
    if (t <= traits.tilt_permissible)
        return between(t, traits.tilt_good, 0.7, traits.tilt_permissible, 0.3);
    if (t <= traits.tilt_hard)
        return between(t, traits.tilt_permissible, 0.3, traits.tilt_hard, 0.0);
    return 0.0;
}
double axialUtility(const FamilyVerdict& v, const FamilyTraits& traits, const Situation& s)
{
    if (traits.kind == Kind::composite || !traits.radial)
        return 1.0;
    if (s.question->role == Role::non_locating)
        return traits.compensation == Compensation::inside ? 1.0 : traits.compensation == Compensation::seat ? 0.6 : 0.0;
    if (traits.axial == AxialSense::none)
        return 0.0;
    const double x = s.axial_ratio, low = v.share_low, high = v.share_high;
    if (x < low)
        return 0.4 + 0.6 * x / low;
    if (x <= high)
        return 1.0;
    if (std::isinf(traits.share_hard_high)) {
        const bool rests = traits.family == Family::deep_groove_ball && v.has_row &&
                           s.Fa_max_N <= s.rules->numbers.deep_groove_pure_axial_C0_share * v.row.rating.C0_N;
        return rests ? 0.8 : 0.5;
    }
    return clamp01(1.0 - (x - high) / (traits.share_hard_high - high));
}
double speedUtility(double ratio, double hard)
{
    if (ratio <= 0.5)
        return 1.0;
    if (ratio <= 1.0)
        return between(ratio, 0.5, 1.0, 1.0, 0.5);
    return ratio <= hard ? between(ratio, 1.0, 0.5, hard, 0.0) : 0.0;
}
double stiffUtility(const FamilyTraits& traits, StiffnessWish wish)
{
    if (traits.kind == Kind::composite)
        return 1.0;
    const bool axialWish = wish == StiffnessWish::axial || wish == StiffnessWish::both;
    double k = axialWish ? traits.stiffness_axial : traits.stiffness_radial;
    if (std::isnan(k)) {
        if (axialWish && traits.radial)
            return 0.0;
        k = 1.0;
    }
    return clamp01(0.5 + 0.35 * std::log2(k));
}

/// Utilities, score and verdict. @param least_section_mm2 of the families not excluded, 0: none
void finish(FamilyVerdict& v, const FamilyTraits& traits, const Situation& s, const std::array<double, criterionCount>& weights,
            double least_section_mm2)
{
    const SupportQuestion& q = *s.question;
    const RuleNumbers& n = s.rules->numbers;
    v.known.fill(false);
    v.utilities.fill(0.0);
    const auto know = [&](Criterion criterion, double utility) {
        if (std::isnan(utility))
            return;
        v.known[criterion] = true;
        v.utilities[criterion] = clamp01(utility);
    };
    const BushLimits* bush = traits.kind == Kind::plain ? s.rules->bush(traits.family) : nullptr;
    if (bush != nullptr) {
        if (!std::isnan(bush->pv_max))
            know(life, 1.0 - 0.6 * v.bush_pv / bush->pv_max);
        know(staticSafety, v.bush_p_MPa > 0.0 ? staticUtility(v.bush_p_limit_MPa / v.bush_p_MPa) : 1.0);
        know(speed, 1.0 - 0.5 * v.bush_v_m_s / bush->v_max_m_s);
    } else if (v.has_row) {
        if (s.required_L10_h && v.result.L10_h)
            know(life, lifeUtility(*v.result.L10_h / *s.required_L10_h, n.generous_life));
        else if (s.required_L10_h && !v.result.rated)
            know(life, 0.0);
        know(staticSafety, v.result.rated ? staticUtility(v.result.static_ratio) : 0.0);
        know(speed, speedUtility(v.result.speed_ratio, n.speed_hard_ratio));
    }
    if (traits.kind != Kind::linear) {
        know(axial, axialUtility(v, traits, s));
        know(tilt, tiltUtility(s.tilt_mrad, traits));
        know(stiff, stiffUtility(traits, s.settled->stiffness_wish));
        know(fric, 1.0 - std::log2(traits.friction / 0.001) / 3.0);
        know(mount, s.settled->separable_wanted && !traits.separable ? 0.2 : traits.mounting);
        const double scarce = traits.availability == 'B' ? 0.1 : traits.availability == 'C' ? 0.2 : 0.0;
        know(cost, clamp01(1.0 - std::log2(std::max(traits.cost_ratio, 0.001)) / 4.0) - scarce);
        know(noise, traits.noise);
        know(seal, 0.5 * traits.seal + 0.5 * traits.dirt);
    }
    if (v.has_row || bush != nullptr) {
        const double section = v.row.section_mm2();
        if (q.greatest_outer_mm && q.greatest_width_mm) {
            const double available = 0.5 * (*q.greatest_outer_mm - q.seat_mm) * *q.greatest_width_mm;
            if (available > 0.0)
                know(space, 1.25 - section / available);
        } else if (least_section_mm2 > 0.0 && section > 0.0) {
            know(space, least_section_mm2 / section);
        }
    }
    double sum = 0.0, weight = 0.0;
    for (std::size_t c = 0; c < criterionCount; ++c) {
        if (v.known[c]) {
            sum += weights[c] * v.utilities[c];
            weight += weights[c];
        }
    }
    const double score = weight > 0.0 ? clamp01(sum / weight) : 0.0;

    v.weakest = -1;
    v.weakest_utility = n.weak_utility;
    for (const Criterion c : {life, staticSafety, axial, tilt, speed}) {
        if (v.known[c] && v.utilities[c] < v.weakest_utility) {
            v.weakest = c;
            v.weakest_utility = v.utilities[c];
        }
    }
    if (excluded(v)) {
        v.verdict = Verdict::unsuited;
        v.score = 0.0;
        return;
    }
    v.score = score;
    if (!anyBetween(v.rules, Rule::R05, Rule::R34)) {
        set(v, Rule::R35, v.weakest >= 0);
        set(v, Rule::R36, score < n.low_score && v.weakest < 0);
    }
    v.verdict = anyBetween(v.rules, Rule::R05, Rule::R36) ? Verdict::with_care : Verdict::suited;
}

void scale(std::vector<RatedRow>& rows, double factor)
{
    const auto apply = [factor](BearingRating& rating) {
        rating.C_N *= factor;
        rating.C0_N *= factor;
        rating.C0_single_N *= factor;
    };
    for (RatedRow& row : rows) {
        apply(row.rating);
        for (BearingRating& member : row.rating.members)
            apply(member);
    }
}

/// Buffers that all families of one question share.
struct Scratch {
    std::vector<RatedRow> rows;
    std::vector<RowResult> results;
    std::vector<std::size_t> kept;
};

/// The rule stage at the ratings as they are and, where it matters, at both ends of their spread.
struct Passes {
    FamilyVerdict base;
    std::optional<FamilyVerdict> low, high;
};

Passes runRules(const FamilyTraits& traits, const Situation& s, const RowSource& source, Scratch& scratch, bool whole)
{
    Passes out;
    FamilyVerdict& v = out.base;
    v.family = traits.family;
    kindRules(v, traits, s);
    if (traits.kind == Kind::plain && (whole || !outOfQuestion(v)) && !has(v, Rule::X23))
        plainRules(v, traits, s);
    if (!traits.geometry || (!whole && outOfQuestion(v)))
        return out;
    const FamilyVerdict kindOnly = v;
    scratch.rows.clear();
    source.rows(traits, {s.question->seat_mm, s.main_side}, scratch.rows);
    rowRules(v, traits, s, source, scratch.rows, scratch.results, scratch.kept);
    if (whole || !dependsOnRating(v))
        return out;
    const double spread = s.rules->numbers.rating_spread;
    scale(scratch.rows, 1.0 - spread);
    out.low = kindOnly;
    rowRules(*out.low, traits, s, source, scratch.rows, scratch.results, scratch.kept);
    scale(scratch.rows, (1.0 + spread) / (1.0 - spread));
    out.high = kindOnly;
    rowRules(*out.high, traits, s, source, scratch.rows, scratch.results, scratch.kept);
    return out;
}

std::array<double, criterionCount> settledWeights(const RuleData& rules, const Settled& settled,
                                                  const std::map<std::string, double>& changed)
{
    std::array<double, criterionCount> weights = rules.profile(settled.profile).weight;
    if (changed.empty())
        return weights;
    for (std::size_t c = 0; c < criterionCount; ++c) {
        const auto found = changed.find(std::string(criterionNames[c]));
        if (found != changed.end() && std::isfinite(found->second) && found->second >= 0.0)
            weights[c] = found->second;
    }
    return weights;
}

Suggestion suggestionOf(const FamilyVerdict& v, const Situation& s, const Field& field)
{
    const FamilyTraits& traits = s.rules->of(v.family);
    Suggestion out;
    out.family = v.family;
    out.verdict = v.verdict;
    out.score = v.score;
    out.utilities = v.utilities;
    if (v.has_row) {
        if (v.row.row != nullptr)
            out.choice = choiceOf(*v.row.row, v.row.partner_row, traits, s.main_side);
        out.L10_h = v.result.L10_h;
        if (v.result.rated && std::isfinite(v.result.S0))
            out.S0 = v.result.S0;
        if (s.required_L10_h && v.result.L10_h)
            out.reserve = *v.result.L10_h / *s.required_L10_h;
    }
    out.reasons = reasonsOf(v, s, field);
    return out;
}

} // namespace

std::optional<Situation> situate(const SupportQuestion& question, const Settled& settled, const RuleData& rules)
{
    if (!(question.seat_mm > 0.0) || !std::isfinite(question.seat_mm) || question.cases.empty())
        return std::nullopt;
    for (const double number :
         {question.s_required_mm, question.play_mm, question.a1, question.greatest_outer_mm.value_or(1.0),
          question.greatest_width_mm.value_or(1.0), question.required_L_h.value_or(1.0), question.required_S0.value_or(1.0)}) {
        if (!std::isfinite(number))
            return std::nullopt;
    }
    Situation s;
    s.question = &question;
    s.settled = &settled;
    s.rules = &rules;
    const auto count = static_cast<int>(question.cases.size());
    const int governing = question.governing_case >= 0 && question.governing_case < count ? question.governing_case : 0;
    s.governing = &question.cases[static_cast<std::size_t>(governing)];
    const RuleNumbers& n = rules.numbers;
    double largest = -1.0;
    for (const SupportLoad& load : question.cases) {
        for (const double number : {load.Fr_N, load.Fa_N, load.speed_rpm, load.time_share, load.tilt_judged_mrad}) {
            if (!std::isfinite(number))
                return std::nullopt;
        }
        if (load.Fr_N < 0.0 || load.Fa_N < 0.0 || load.time_share < 0.0)
            return std::nullopt;
        s.Fr_max_N = std::max(s.Fr_max_N, load.Fr_N);
        s.Fa_max_N = std::max(s.Fa_max_N, load.Fa_N);
        if (load.axial_sense > 0)
            s.Fa_plus_N = std::max(s.Fa_plus_N, load.Fa_N);
        if (load.axial_sense < 0)
            s.Fa_minus_N = std::max(s.Fa_minus_N, load.Fa_N);
        if (load.axial_sense != 0 && load.Fa_N > largest) {
            largest = load.Fa_N;
            s.main_side = senseOf(load);
        }
        s.tilt_mrad = std::max(s.tilt_mrad, std::abs(load.tilt_judged_mrad));
        s.speed_rpm = std::max(s.speed_rpm, std::abs(load.speed_rpm));
        s.share_sum += load.time_share;
        s.slides_across = s.slides_across || load.Fr_N > n.radial_share_of_axial_bearing * load.Fa_N * (1.0 + slack);
        s.axial_beyond_free = s.axial_beyond_free || load.Fa_N > n.axial_share_of_free_bearing * load.Fr_N * (1.0 + slack);
    }
    if (question.carries)
        s.main_side = question.carries;
    s.both_ways = s.Fa_plus_N > 0.0 && s.Fa_minus_N > 0.0;
    if (s.governing->Fa_N > 0.0)
        s.axial_ratio = s.governing->Fr_N > 0.0 ? s.governing->Fa_N / s.governing->Fr_N : infinite;
    if (question.required_L_h && *question.required_L_h > 0.0 && question.a1 > 0.0)
        s.required_L10_h = *question.required_L_h / question.a1;
    s.shocks = settled.K_A >= n.static_high_load_shock_K_A;
    return s;
}

std::vector<Suggestion> suggestWith(const RuleData& rules, const RowSource& source, const SupportQuestion& question,
                                    const Settled& settled, const std::map<std::string, double>& weights)
{
    const auto situation = situate(question, settled, rules);
    if (!situation)
        return {};
    const auto weight = settledWeights(rules, settled, weights);
    Scratch scratch;
    scratch.rows.reserve(32);
    scratch.results.reserve(32);
    scratch.kept.reserve(32);
    std::vector<Passes> passes;
    passes.reserve(familyCount);
    double least_section = infinite;
    for (const FamilyTraits& traits : rules.families) {
        passes.push_back(runRules(traits, *situation, source, scratch, false));
        const FamilyVerdict& v = passes.back().base;
        if (!excluded(v) && (v.has_row || traits.kind == Kind::plain))
            least_section = std::min(least_section, v.row.section_mm2());
    }
    if (std::isinf(least_section))
        least_section = 0.0;
    std::array<bool, familyCount> close{};
    Field field;
    for (std::size_t i = 0; i < passes.size(); ++i) {
        const FamilyTraits& traits = rules.families[i];
        FamilyVerdict& v = passes[i].base;
        finish(v, traits, *situation, weight, least_section);
        for (auto* other : {&passes[i].low, &passes[i].high}) {
            if (*other) {
                finish(**other, traits, *situation, weight, least_section);
                close[i] = close[i] || (*other)->verdict != v.verdict;
            }
        }
        if (v.verdict == Verdict::unsuited)
            continue;
        if (!std::isnan(traits.friction) && (!field.any || traits.friction < rules.of(field.least_friction).friction)) {
            field.least_friction = v.family;
            field.any = true;
        }
        if (v.has_row && (!field.any_section ||
                          v.row.section_mm2() < passes[static_cast<std::size_t>(field.least_section)].base.row.section_mm2())) {
            field.least_section = v.family;
            field.any_section = true;
        }
    }
    std::vector<Suggestion> out;
    out.reserve(familyCount);
    for (std::size_t i = 0; i < passes.size(); ++i) {
        const FamilyVerdict& v = passes[i].base;
        field.better_same_size = nullptr;
        if (v.verdict == Verdict::with_care && v.has_row) {
            for (const Passes& other : passes) {
                const RatedRow& row = other.base.row;
                if (other.base.verdict == Verdict::suited && other.base.has_row &&
                    std::abs(row.bore_mm - v.row.bore_mm) <= 0.05 && std::abs(row.outer_mm - v.row.outer_mm) <= 0.05 &&
                    std::abs(row.width_mm - v.row.width_mm) <= 0.05) {
                    field.better_same_size = &other.base;
                    break;
                }
            }
        }
        out.push_back(suggestionOf(v, *situation, field));
        out.back().close_call = close[i];
    }
    // A strict order, so that the same input gives the same list.
    std::stable_sort(out.begin(), out.end(), [&rules](const Suggestion& a, const Suggestion& b) {
        if (a.verdict != b.verdict)
            return a.verdict < b.verdict;
        const auto rounded = [](double score) { return std::llround(score * 1e9); };
        if (rounded(a.score) != rounded(b.score))
            return rounded(a.score) > rounded(b.score);
        const auto costOf = [&rules](Family family) {
            const double value = rules.of(family).cost_ratio;
            return std::isnan(value) ? infinite : value;
        };
        if (costOf(a.family) != costOf(b.family))
            return costOf(a.family) < costOf(b.family);
        return toString(a.family) < toString(b.family);
    });
    return out;
}

std::optional<Suggestion> judgeWith(const RuleData& rules, const RowSource& source, Family family,
                                    const SupportQuestion& question, const Settled& settled,
                                    const std::map<std::string, double>& weights)
{
    const auto situation = situate(question, settled, rules);
    if (!situation)
        return std::nullopt;
    Scratch scratch;
    Passes passes = runRules(rules.of(family), *situation, source, scratch, true);
    finish(passes.base, rules.of(family), *situation, settledWeights(rules, settled, weights), 0.0);
    return suggestionOf(passes.base, *situation, Field{});
}

} // namespace shaftwright::selection
