#pragma once
// Which families suit a support, with reasons in this shaft's own numbers, and the smallest size of each that meets the life.

#include "core/base/finding.h"
#include "core/bearings/load_rating.h"
#include "core/catalogue/catalogue.h"
#include "core/model/arrangement.h"
#include "core/model/defaults.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright
{

enum class Verdict { suited, with_care, unsuited };
enum class Effect { excludes, reserves, favours, informs };

/// One reason. Sentence: "reason.<code>[.variant]" in resources/text, filled with `values`.
struct Reason {
    std::string code; ///< X01, R11, P03, ...
    std::string variant;
    std::string criterion; ///< life static axial tilt speed stiff fric space mount cost noise seal motion role growth ...
    Effect effect = Effect::informs;
    NamedValues values;
    std::string source;
    friend bool operator==(const Reason&, const Reason&) = default;
};

inline constexpr int criterionCount = 12;
/// Order of the utilities; text keys "criterion.<name>".
inline constexpr std::array<std::string_view, criterionCount> criterionNames = {
    "life", "static", "axial", "tilt", "speed", "stiff", "fric", "space", "mount", "cost", "noise", "seal"};
/// 0..1 each. 0 also where nothing could be judged (no row of the family); such a criterion has no weight in the score.
using Utilities = std::array<double, criterionCount>;

struct Suggestion {
    Family family = Family::deep_groove_ball;
    Verdict verdict = Verdict::unsuited;
    double score = 0.0;                  ///< sum w u / sum w; 0 when unsuited
    std::optional<BearingChoice> choice; ///< smallest row that meets the requirement (or the nearest)
    std::optional<double> L10_h, S0;     ///< of that row over the whole duty
    std::optional<double> reserve;       ///< L10_h / required
    Utilities utilities{};
    std::vector<Reason> reasons; ///< deciding one first
    bool close_call = false;     ///< the verdict flips within +-15 % of C
    friend bool operator==(const Suggestion&, const Suggestion&) = default;
};

/// Load of the support in one case.
struct SupportLoad {
    double Fr_N = 0.0, Fa_N = 0.0; ///< magnitudes
    int axial_sense = 0;           ///< +1: the shaft pushes towards +x (Fa held by a bearing that carries plus), -1, 0
    double speed_rpm = 0.0, time_share = 1.0;
    double tilt_judged_mrad = 0.0;
    double peak_factor = 1.0;                 ///< of the static load
    std::optional<double> Fr_static_N{};      ///< largest radial load with the peak; none: peak_factor times Fr_N
    /// Adjusted support: what the partner induces, and the external axial force that pushes onto this support. The axial load of a
    /// row here is then max(own induced load, partner + push); Fa_N stays what the present bearing gets.
    std::optional<double> partner_induced_N{};
    double pushing_N = 0.0;
};

/// Everything the type stage reads about one support.
struct SupportQuestion {
    Role role = Role::non_locating;
    std::vector<SupportLoad> cases;
    int governing_case = 0;
    double seat_mm = 0.0;
    std::optional<double> greatest_outer_mm, greatest_width_mm;
    std::optional<double> required_L_h;
    double a1 = 1.0; ///< the asked life is L10 a1 when basis is basic: required L10 = required / a1
    std::optional<double> required_S0;
    double s_required_mm = 0.0; ///< displacement a non-locating support must allow
    double play_mm = 0.0;       ///< end play
    bool loose_ring_impossible = false;
    bool overhung = false, axle_stands = false;
    std::optional<Carries> carries;
};

/// All 39 families, best first: suited before with care before unsuited, then score, cost, name.
[[nodiscard]] std::vector<Suggestion> suggest(const SupportQuestion& question, const Settled& settled,
                                              const std::map<std::string, double>& weights, const Catalogues& catalogues);

} // namespace shaftwright
