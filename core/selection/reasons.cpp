#include "core/selection/engine.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::selection
{
namespace
{

constexpr const char* practice = "common practice";
constexpr const char* kinematics = "kinematics of the support";

constexpr RuleInfo infos[] = {
    {"X01", "motion", Effect::excludes, "definition"},
    {"X02", "role", Effect::excludes, "ISO 281, bearings at 90 deg"},
    {"X03", "role", Effect::excludes, kinematics},
    {"X04", "role", Effect::excludes, kinematics},
    {"X05", "growth", Effect::excludes, practice},
    {"X06", "growth", Effect::excludes, practice},
    {"X07", "role", Effect::excludes, kinematics},
    {"X08", "role", Effect::excludes, practice},
    {"X09", "axial", Effect::excludes, "ISO 281; Eschmann (from memory)"},
    {"X10", "axial", Effect::excludes, "load zone integrals, derived; ISO 281"},
    {"X11", "tilt", Effect::excludes, "Budynas and Nisbett table 7-2 (from memory); common practice"},
    {"X12", "hardness", Effect::excludes, practice},
    {"X13", "accuracy", Effect::excludes, "ISO 492"},
    {"X14", "temperature", Effect::excludes, "DIN 623 suffixes (from memory); common practice"},
    {"X15", "lubricant", Effect::excludes, "Hamrock (from memory)"},
    {"X16", "lubricant", Effect::excludes, practice},
    {"X17", "plain", Effect::excludes, "table of bush limits"},
    {"X18", "plain", Effect::excludes, "table of bush limits"},
    {"X19", "plain", Effect::excludes, "table of bush limits"},
    {"X20", "catalogue", Effect::excludes, "catalogue in use"},
    {"X21", "space", Effect::excludes, "ISO 15, ISO 355, ISO 104 and the catalogues in use"},
    {"X22", "life", Effect::excludes, "ISO 281, ISO 76"},
    {"X23", "wish", Effect::excludes, "requirement"},
    {"X24", "wish", Effect::excludes, "requirement"},
    {"X25", "speed", Effect::excludes, "n dm limits, common practice"},
    {"X26", "role", Effect::excludes, practice},
    {"R05", "growth", Effect::reserves, practice},
    {"R07", "role", Effect::reserves, practice},
    {"R08", "role", Effect::reserves, practice},
    {"R09", "axial", Effect::reserves, "ISO 281; common practice"},
    {"R10", "axial", Effect::reserves, "load zone integrals, derived"},
    {"R11", "tilt", Effect::reserves, "Budynas and Nisbett table 7-2 (from memory); common practice"},
    {"R12", "hardness", Effect::reserves, practice},
    {"R13", "accuracy", Effect::reserves, "ISO 492"},
    {"R14", "temperature", Effect::reserves, practice},
    {"R15", "mount", Effect::reserves, practice},
    {"R16", "seal", Effect::reserves, "Neale, The Tribology Handbook"},
    {"R17", "seal", Effect::reserves, practice},
    {"R19", "plain", Effect::reserves, practice},
    {"R20", "catalogue", Effect::reserves, "no rating by ISO 281 or ISO 76"},
    {"R22", "life", Effect::reserves, "ISO 281, ISO 76"},
    {"R25", "speed", Effect::reserves, "n dm limits, common practice"},
    {"R26", "life", Effect::reserves, "Eschmann (from memory); common practice"},
    {"R29", "seal", Effect::reserves, practice},
    {"R30", "motion", Effect::reserves, practice},
    {"R31", "life", Effect::reserves, "scope of ISO 281 (from memory)"},
    {"R32", "stiff", Effect::reserves, practice},
    {"R33", "space", Effect::reserves, practice},
    {"R34", "space", Effect::reserves, practice},
    {"R35", "life", Effect::reserves, "scoring"},
    {"R36", "life", Effect::reserves, "scoring"},
    {"P01", "life", Effect::favours, "ISO 281"},
    {"P02", "axial", Effect::favours, "ISO 281; common practice"},
    {"P03", "growth", Effect::favours, practice},
    {"P04", "growth", Effect::informs, practice},
    {"P05", "tilt", Effect::favours, "Budynas and Nisbett table 7-2 (from memory); common practice"},
    {"P06", "tilt", Effect::informs, practice},
    {"P07", "life", Effect::informs, practice},
    {"P08", "cost", Effect::favours, practice},
    {"P09", "seal", Effect::favours, practice},
    {"P10", "mount", Effect::favours, practice},
    {"P11", "stiff", Effect::favours, "Palmgren's deflections (from memory)"},
    {"P12", "fric", Effect::favours, "Palmgren, Harris (from memory)"},
    {"P13", "speed", Effect::informs, "n dm limits, common practice"},
    {"P14", "space", Effect::favours, "ISO 15"},
    {"P15", "space", Effect::informs, "ISO 15"},
    {"P16", "life", Effect::informs, "Eschmann (from memory); common practice"},
    {"P17", "static", Effect::informs, "ISO 76"},
    {"P18", "tilt", Effect::informs, "Budynas and Nisbett table 7-2 (from memory); common practice"},
    {"P19", "plain", Effect::informs, "table of bush limits"},
};
static_assert(std::size(infos) == ruleCount);

class Writer
{
public:
    Writer(const FamilyVerdict& verdict, const Situation& situation, const Field& field)
        : v(verdict), s(situation), q(*situation.question), settled(*situation.settled), n(situation.rules->numbers),
          traits(situation.rules->of(verdict.family)), field_(field)
    {
        if (v.has_row)
            row_name = v.row.row != nullptr ? choiceOf(*v.row.row, v.row.partner_row, traits, s.main_side).designation()
                                            : v.row.rating.designation;
    }

    std::vector<Reason> write()
    {
        out.reserve(8);
        for (std::size_t i = 0; i < ruleCount; ++i) {
            if (v.rules.test(i) && i < static_cast<std::size_t>(Rule::P01))
                add(static_cast<Rule>(i));
        }
        if (v.verdict != Verdict::unsuited)
            inFavour();
        return std::move(out);
    }

private:
    const FamilyVerdict& v;
    const Situation& s;
    const SupportQuestion& q;
    const Settled& settled;
    const RuleNumbers& n;
    const FamilyTraits& traits;
    const Field& field_;
    std::string row_name;
    std::vector<Reason> out;

    Reason& emit(Rule rule, std::string variant, NamedValues values)
    {
        const RuleInfo& info = ruleInfo(rule);
        out.push_back({info.code, std::move(variant), info.criterion, info.effect, std::move(values), info.source});
        return out.back();
    }
    [[nodiscard]] bool pureAxial() const { return !std::isfinite(s.axial_ratio); }
    [[nodiscard]] double required_h() const { return s.required_L10_h.value_or(0.0); }

    /// Exclusions and reservations.
    void add(Rule rule)
    {
        const RowResult& r = v.result;
        switch (rule) {
        case Rule::X01:
            emit(rule, traits.kind == Kind::linear ? "guide" : "", {{"speed_rpm", s.speed_rpm}});
            break;
        case Rule::X02:
            emit(rule, "", {{"Fr_N", s.Fr_max_N}});
            break;
        case Rule::X03:
            emit(rule, s.Fa_max_N > 0.0 ? "" : "keeps", {{"Fa_N", s.Fa_max_N}});
            break;
        case Rule::X04:
            emit(rule,
                 s.both_ways        ? "both"
                 : s.Fa_max_N > 0.0 ? ""
                                    : "unloaded",
                 {{"Fa_N", s.Fa_max_N}, {"Fa_plus_N", s.Fa_plus_N}, {"Fa_minus_N", s.Fa_minus_N}});
            break;
        case Rule::X05:
            emit(rule, traits.compensation == Compensation::inside ? "inside" : "",
                 {{"s_required_mm", q.s_required_mm}, {"s_available_mm", v.row.inside_room_mm}});
            break;
        case Rule::X06:
            emit(rule, "", {{"s_required_mm", q.s_required_mm}});
            break;
        case Rule::X07:
            emit(rule,
                 traits.family == Family::angular_contact_set_tandem ? "tandem"
                 : traits.adjusted == Adjusting::set                 ? "set"
                                                                     : "",
                 {{"axial_ratio", pureAxial() ? 0.0 : s.axial_ratio}});
            break;
        case Rule::X08:
            emit(rule, "", {{"play_mm", q.play_mm}});
            break;
        case Rule::X09:
            if (s.axial_ratio <= traits.share_hard_high)
                emit(rule, "static", {{"Fa_N", s.Fa_max_N}, {"share", n.deep_groove_C0_share}, {"C0_largest_N", v.largest_C0_N}});
            else if (pureAxial())
                emit(rule, "pure", {{"Fa_N", s.Fa_max_N}, {"axial_ratio_limit", traits.share_hard_high}});
            else
                emit(rule, "", {{"axial_ratio", s.axial_ratio}, {"axial_ratio_limit", traits.share_hard_high}});
            break;
        case Rule::X10:
            emit(rule, traits.roller ? "thrust" : "",
                 {{"axial_ratio", s.axial_ratio}, {"axial_ratio_least", traits.share_hard_low}});
            break;
        case Rule::X11:
            emit(rule, "", {{"tilt_judged_mrad", s.tilt_mrad}, {"tilt_limit_mrad", traits.tilt_hard}});
            break;
        case Rule::R11:
            emit(rule, "", {{"tilt_judged_mrad", s.tilt_mrad}, {"tilt_limit_mrad", traits.tilt_permissible}});
            break;
        case Rule::X12:
        case Rule::R12:
            emit(rule, "", {{"hardness_HRC", settled.surface_hardness_HRC}, {"hardness_needed_HRC", n.hardness_needed_HRC}});
            break;
        case Rule::X14:
            if (traits.kind == Kind::plain)
                emit(rule, "plain",
                     {{"temperature_C", settled.temperature_C},
                      {"temperature_limit_C", s.rules->bush(traits.family)->temperature_max_C}});
            else
                emit(rule, "", {{"temperature_C", settled.temperature_C}, {"temperature_limit_C", n.temperature_hard_C}});
            break;
        case Rule::R14:
            emit(rule, "", {{"temperature_C", settled.temperature_C}, {"temperature_limit_C", n.temperature_caution_C}});
            break;
        case Rule::X16:
            emit(rule, "",
                 {{"v_m_s", v.bush_v_m_s},
                  {"v_least_m_s", n.film_speed_least_m_s},
                  {"speed_rpm", s.speed_rpm},
                  {"seat_mm", q.seat_mm}});
            break;
        case Rule::X17:
            emit(rule, "", {{"p_MPa", v.bush_p_MPa}, {"p_limit_MPa", v.bush_p_limit_MPa}});
            break;
        case Rule::X18:
            emit(rule, "", {{"v_m_s", v.bush_v_m_s}, {"v_limit_m_s", s.rules->bush(traits.family)->v_max_m_s}});
            break;
        case Rule::X19:
        case Rule::R19:
            emit(rule, "",
                 {{"pv_MPa_m_s", v.bush_pv},
                  {"pv_limit_MPa_m_s", s.rules->bush(traits.family)->pv_max},
                  {"share", v.bush_pv / s.rules->bush(traits.family)->pv_max}});
            break;
        case Rule::X21:
            space();
            break;
        case Rule::X22:
        case Rule::R22:
            shortfall(rule);
            break;
        case Rule::X25:
        case Rule::R25:
            emit(rule, settled.lubricant == Lubricant::oil ? "oil" : "grease",
                 {{"ndm", r.ndm}, {"ndm_limit", r.ndm_limit}, {"ratio", r.speed_ratio}});
            break;
        case Rule::R05:
            emit(rule, v.has_row ? "" : "bush",
                 {{"s_required_mm", q.s_required_mm}, {"s_available_mm", v.row.inside_room_mm}, {"row", row_name}});
            break;
        case Rule::R07:
            emit(rule, "", {{"axial_ratio", s.axial_ratio}, {"axial_ratio_limit", n.adjusted_deep_groove_share}});
            break;
        case Rule::R08:
            emit(rule, "", {{"play_mm", q.play_mm}});
            break;
        case Rule::R09:
            overUseful();
            break;
        case Rule::R10:
            emit(rule, "", {{"axial_ratio", s.axial_ratio}, {"axial_ratio_least", traits.share_low}});
            break;
        case Rule::R17:
            emit(rule, traits.family == Family::plain_sintered ? "" : "ptfe", {});
            break;
        case Rule::R20:
            emit(rule, traits.kind == Kind::linear ? "guide" : "", {});
            break;
        case Rule::R26:
            emit(rule, traits.roller ? "rollers" : "balls",
                 {{"load_share", r.P_over_C_least_fast},
                  {"load_share_least", leastLoadRatio(traits.family)},
                  {"speed_rpm", r.speed_least_rpm}});
            break;
        case Rule::R29:
            emit(rule, "", {});
            break;
        case Rule::R30:
            emit(rule, settled.swing_deg > 0.0 ? "" : "unstated",
                 {{"swing_deg", settled.swing_deg}, {"swing_least_deg", n.swing_least_deg}});
            break;
        case Rule::R31:
            emit(rule, "", {{"load_share", r.P_over_C_largest}, {"load_share_limit", n.load_valid_share}});
            break;
        case Rule::R33: {
            // ISO 281: single-direction thrust bearings hold Fr up to Fa/e, e = 1.5 tan alpha; thrust rollers 0.001 C0.
            const double slope = v.has_row ? 1.5 * std::tan(v.row.rating.contact_angle_rad) : 0.0;
            const double spring_N = std::max(slope * s.Fr_max_N, v.has_row ? 0.001 * v.row.rating.C0_N : 0.0);
            emit(rule, v.has_row ? "" : "open", {{"spring_N", spring_N}});
            break;
        }
        case Rule::R34:
            emit(rule, "", {{"row", row_name}, {"seat_mm", q.seat_mm}});
            break;
        case Rule::R35: {
            const std::string_view criterion = criterionNames[static_cast<std::size_t>(v.weakest)];
            emit(rule, std::string(criterion), {{"utility", v.weakest_utility}, {"utility_least", n.weak_utility}}).criterion =
                criterion;
            break;
        }
        case Rule::R36:
            emit(rule, "", {{"score", v.score}, {"score_least", n.low_score}});
            break;
        default:
            emit(rule, "", {});
            break;
        }
    }

    void space()
    {
        std::string variant = v.rows_at_seat == 0 ? "none" : "both";
        if (v.rows_at_seat > 0 && !q.greatest_outer_mm)
            variant = "width";
        else if (v.rows_at_seat > 0 && !q.greatest_width_mm)
            variant = "outer";
        emit(Rule::X21, variant,
             {{"seat_mm", q.seat_mm},
              {"greatest_outer_mm", q.greatest_outer_mm.value_or(0.0)},
              {"greatest_width_mm", q.greatest_width_mm.value_or(0.0)},
              {"outer_mm", v.nearest_outer_mm},
              {"width_mm", v.nearest_width_mm}});
    }

    void shortfall(Rule rule)
    {
        const RowResult& r = v.result;
        if (!r.rated) {
            emit(rule, "unrated", {{"row", row_name}, {"Fr_N", s.governing->Fr_N}, {"Fa_N", s.governing->Fa_N}});
            return;
        }
        const bool byLife = v.near_life && r.L10_h && (!v.near_static || *r.L10_h / required_h() <= r.static_ratio);
        if (byLife) {
            const double share = *r.L10_h / required_h();
            emit(rule, "",
                 {{"row", row_name},
                  {"L10_h", *r.L10_h},
                  {"required_L10_h", required_h()},
                  {"missing", 1.0 - share},
                  {"C_N", v.row.rating.C_N},
                  {"C_required_N", v.row.rating.C_N * std::pow(1.0 / share, 1.0 / v.row.rating.life_exponent)}});
        } else {
            emit(rule, "static",
                 {{"row", row_name},
                  {"S0", r.S0},
                  {"S0_required", r.S0_required},
                  {"C0_N", v.row.rating.C0_N},
                  {"C0_required_N", v.row.rating.C0_N * r.S0_required / r.S0}})
                .criterion = "static";
        }
    }

    void overUseful()
    {
        std::string variant = "row_idle";
        switch (traits.family) {
        case Family::deep_groove_ball:
            variant = s.axial_ratio > traits.share_high ? "groove" : "groove_small";
            break;
        case Family::deep_groove_ball_two_row:
            variant = "groove";
            break;
        case Family::cylindrical_roller_NJ:
        case Family::cylindrical_roller_NUP:
        case Family::cylindrical_roller_full:
            variant = "ribs";
            break;
        case Family::tapered_roller:
            variant = "steeper";
            break;
        case Family::angular_contact_ball_15:
        case Family::angular_contact_ball_25:
            variant = "angle";
            break;
        default:
            break;
        }
        NamedValues values{{"Fa_N", s.Fa_max_N}};
        if (pureAxial())
            variant += "_pure";
        else
            values.set("axial_ratio", s.axial_ratio);
        values.set("axial_ratio_best", v.share_high);
        if (v.has_row && v.row.rating.C0_N > 0.0)
            values.set("share", s.Fa_max_N / v.row.rating.C0_N);
        emit(Rule::R09, variant, std::move(values));
    }

    /// What speaks for it, strongest first, then what is worth knowing.
    void inFavour()
    {
        const RowResult& r = v.result;
        const bool nonLocating = q.role == Role::non_locating;
        const std::size_t life = 0;
        if (v.has_row && s.required_L10_h && r.L10_h && *r.L10_h >= required_h()) {
            const double ratio = *r.L10_h / required_h();
            const NamedValues values{{"row", row_name}, {"L10_h", *r.L10_h}, {"ratio", ratio}, {"required_L10_h", required_h()}};
            if (ratio > n.generous_life)
                emit(Rule::P07, "", values);
            else
                emit(Rule::P01, "", values).effect = v.utilities[life] >= n.good_life_utility ? Effect::favours : Effect::informs;
        }
        if (s.Fa_max_N > 0.0 && !nonLocating && v.known[2] && v.utilities[2] >= 1.0 && traits.radial) {
            if (pureAxial())
                emit(Rule::P02, "pure", {{"Fa_N", s.Fa_max_N}});
            else
                emit(Rule::P02, "", {{"axial_ratio", s.axial_ratio}, {"Fa_N", s.Fa_max_N}});
        }
        if (nonLocating && traits.compensation == Compensation::inside)
            emit(Rule::P03, "", {{"s_required_mm", q.s_required_mm}});
        if (nonLocating && traits.compensation == Compensation::seat)
            emit(Rule::P04, q.axle_stands ? "inner" : "outer", {{"s_required_mm", q.s_required_mm}});
        const NamedValues tilt{{"tilt_judged_mrad", s.tilt_mrad}, {"tilt_limit_mrad", traits.tilt_permissible}};
        const bool swivels = traits.tilt_good >= 5.0;
        if (swivels && s.tilt_mrad < 1.0)
            emit(Rule::P06, "", tilt);
        else if (s.tilt_mrad > 0.5 && s.tilt_mrad <= 0.5 * traits.tilt_good)
            emit(Rule::P05, "", tilt);
        if (field_.any && field_.least_friction == v.family && s.speed_rpm > 0.0) {
            const double M_Nmm = 0.5 * traits.friction * std::hypot(s.governing->Fr_N, s.governing->Fa_N) * q.seat_mm;
            const double turn_rpm = std::abs(s.governing->speed_rpm);
            emit(Rule::P12, "",
                 {{"torque_Nmm", M_Nmm}, {"power_W", M_Nmm * 1e-3 * turn_rpm * 0.10471975511965977}, {"speed_rpm", turn_rpm}});
        }
        if (field_.any_section && field_.least_section == v.family)
            emit(Rule::P14, "", {{"outer_mm", v.row.outer_mm}, {"width_mm", v.row.width_mm}});
        if (traits.cost_ratio <= 1.0 && traits.availability == 'A')
            emit(Rule::P08, "", {});
        if (settled.stiffness_wish != StiffnessWish::none) {
            const bool axial = settled.stiffness_wish != StiffnessWish::radial;
            const double k = axial ? traits.stiffness_axial : traits.stiffness_radial;
            if (k >= 2.0)
                emit(Rule::P11, axial ? "axial" : "radial", {{"ratio", k}});
        }
        if (traits.seal >= 1.0 && settled.dirt >= Dirt::dirty && traits.kind == Kind::rolling)
            emit(Rule::P09, "", {});
        if (traits.separable && nonLocating && traits.kind == Kind::rolling)
            emit(Rule::P10, "", {});
        if (v.rules.test(static_cast<std::size_t>(Rule::P16)))
            emit(Rule::P16, traits.spring == SpringPreload::set ? "set" : "",
                 {{"load_share", r.P_over_C_least_fast},
                  {"spring_least_N", n.spring_low_N_per_mm * q.seat_mm},
                  {"spring_largest_N", n.spring_high_N_per_mm * q.seat_mm}});
        if (traits.kind == Kind::plain)
            emit(Rule::P19, "",
                 {{"p_MPa", v.bush_p_MPa},
                  {"p_limit_MPa", v.bush_p_limit_MPa},
                  {"v_m_s", v.bush_v_m_s},
                  {"seat_mm", q.seat_mm},
                  {"length_mm", v.bush_length_mm}});
        if (v.has_row && r.rated && std::isfinite(r.S0))
            emit(Rule::P17, "", {{"row", row_name}, {"S0", r.S0}, {"S0_required", r.S0_required}});
        if (v.has_row && r.ndm > 0.0)
            emit(Rule::P13, r.speed_ratio > 0.7 ? "" : "ample",
                 {{"ratio", r.speed_ratio}, {"ndm", r.ndm}, {"ndm_limit", r.ndm_limit}});
        if (s.tilt_mrad <= traits.tilt_permissible && !(swivels && s.tilt_mrad < 1.0))
            emit(Rule::P18, "", tilt);
        if (field_.better_same_size != nullptr) {
            const FamilyVerdict& other = *field_.better_same_size;
            const std::string name =
                other.row.row != nullptr
                    ? choiceOf(*other.row.row, other.row.partner_row, s.rules->of(other.family), s.main_side).designation()
                    : other.row.rating.designation;
            emit(Rule::P15, "", {{"outer_mm", v.row.outer_mm}, {"width_mm", v.row.width_mm}, {"other", name}});
        }
    }
};

} // namespace

const RuleInfo& ruleInfo(Rule rule)
{
    return infos[static_cast<std::size_t>(rule)];
}

std::vector<Reason> reasonsOf(const FamilyVerdict& verdict, const Situation& situation, const Field& field)
{
    return Writer(verdict, situation, field).write();
}

} // namespace shaftwright::selection
