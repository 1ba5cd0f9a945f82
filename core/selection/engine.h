#pragma once
// The rules. First every family is judged in plain numbers without text (`FamilyVerdict`), three times for the spread of
// ratings; then the reasons of what came out are written.

#include "core/selection/row_source.h"

#include <bitset>

namespace shaftwright::selection
{

/// Codes of reasons in the order in which they stand: the first exclusion that holds is the verdict's reason.
/// X excludes, R caps at "with care", P speaks for the family or informs.
enum class Rule {
    X01,
    X02,
    X03,
    X04,
    X05,
    X06,
    X07,
    X08,
    X09,
    X10,
    X11,
    X12,
    X13,
    X14,
    X15,
    X16,
    X17,
    X18,
    X19,
    X20,
    X21,
    X22,
    X23,
    X24,
    X25,
    X26,
    R05,
    R07,
    R08,
    R09,
    R10,
    R11,
    R12,
    R13,
    R14,
    R15,
    R16,
    R17,
    R19,
    R20,
    R22,
    R25,
    R26,
    R29,
    R30,
    R31,
    R32,
    R33,
    R34,
    R35,
    R36,
    P01,
    P02,
    P03,
    P04,
    P05,
    P06,
    P07,
    P08,
    P09,
    P10,
    P11,
    P12,
    P13,
    P14,
    P15,
    P16,
    P17,
    P18,
    P19
};
inline constexpr std::size_t ruleCount = static_cast<std::size_t>(Rule::P19) + 1;
using RuleSet = std::bitset<ruleCount>;

struct RuleInfo {
    const char* code;
    const char* criterion;
    Effect effect;
    const char* source;
};
[[nodiscard]] const RuleInfo& ruleInfo(Rule rule);

/// The question in the form in which the rules read it. All loads over all cases unless "governing" is said.
struct Situation {
    const SupportQuestion* question = nullptr;
    const Settled* settled = nullptr;
    const RuleData* rules = nullptr;
    const SupportLoad* governing = nullptr;
    double axial_ratio = 0.0; ///< Fa/Fr of the governing case; infinite for a pure axial load
    double Fr_max_N = 0.0, Fa_max_N = 0.0;
    double Fa_plus_N = 0.0, Fa_minus_N = 0.0; ///< largest in either sense
    bool both_ways = false;
    double tilt_mrad = 0.0; ///< largest
    double speed_rpm = 0.0; ///< largest amount
    double share_sum = 0.0; ///< of the time shares
    std::optional<double> required_L10_h;
    std::optional<Carries> main_side;
    bool shocks = false;
    bool slides_across = false;     ///< some case with Fr beyond what a bearing at 90 deg stands
    bool axial_beyond_free = false; ///< some case with Fa beyond what loose rings stand
};
/// None when the question is no question: a number that is not finite, a seat that is not positive.
[[nodiscard]] std::optional<Situation> situate(const SupportQuestion& question, const Settled& settled, const RuleData& rules);

/// What one row does in the duty.
struct RowResult {
    bool rated = true;                                                        ///< a P in every case
    std::optional<double> L10_h;                                              ///< none: nothing turns under load, or not rated
    double S0 = 0.0;                                                          ///< least; infinite when unloaded
    double S0_required = 0.0;                                                 ///< in that case
    double static_ratio = 0.0;                                                ///< least S0/S0_required
    double P_N = 0.0;                                                         ///< governing case
    double P_over_C = 0.0, P_over_C_largest = 0.0, P_over_C_least_fast = 0.0; ///< least: turning fast enough to skid, else inf
    double speed_least_rpm = 0.0;                                             ///< of that case
    double speed_ratio = 0.0;                                                 ///< n dm / limit, largest
    double ndm = 0.0, ndm_limit = 0.0;                                        ///< of that case
    bool groove_ok = true;                                                    ///< deep groove: Fa within the share of C0
};

/// Result of one family without text.
struct FamilyVerdict {
    Family family = Family::deep_groove_ball;
    RuleSet rules;
    Verdict verdict = Verdict::unsuited;
    double score = 0.0;
    Utilities utilities{};
    std::array<bool, criterionCount> known{};
    bool has_row = false;
    RatedRow row;
    RowResult result;
    // For the sentences.
    int rows_at_seat = 0;
    double nearest_outer_mm = 0.0, nearest_width_mm = 0.0; ///< smallest section that does not fit; 0: none
    double largest_C0_N = 0.0;
    double share_low = 0.0, share_high = 0.0; ///< as they hold for the row taken
    double bush_length_mm = 0.0, bush_p_MPa = 0.0, bush_p_limit_MPa = 0.0, bush_v_m_s = 0.0, bush_pv = 0.0;
    bool near_life = false, near_static = false; ///< what falls short: X22, R22
    double weakest_utility = 1.0;
    int weakest = -1;
    int weak_count = 0;
};

/// Every family, in the order of the enum.
[[nodiscard]] std::vector<Suggestion> suggestWith(const RuleData& rules, const RowSource& source, const SupportQuestion& question,
                                                  const Settled& settled, const std::map<std::string, double>& weights);
/// One family.
[[nodiscard]] std::optional<Suggestion> judgeWith(const RuleData& rules, const RowSource& source, Family family,
                                                  const SupportQuestion& question, const Settled& settled,
                                                  const std::map<std::string, double>& weights);

/// Numbers of the other candidates that some reasons speak of.
struct Field {
    Family least_friction = Family::deep_groove_ball;
    Family least_section = Family::deep_groove_ball;
    bool any = false, any_section = false;
    const FamilyVerdict* better_same_size = nullptr;
};
/// Reasons of a verdict, deciding one first.
[[nodiscard]] std::vector<Reason> reasonsOf(const FamilyVerdict& verdict, const Situation& situation, const Field& field);

} // namespace shaftwright::selection
