#pragma once
// The thresholds, utilities and weights behind the verdicts, as read from resources/selection/*.csv. The rules themselves
// are code (engine.cpp) that reads these numbers; every row of the files names its source and how far it can be trusted.

#include "core/base/result.h"
#include "core/bearings/rating.h"
#include "core/model/arrangement.h"
#include "core/model/family.h"
#include "core/selection/suggestion.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright::selection
{

enum class Kind { rolling, plain, magnetic, linear, composite };
/// How a family follows the shaft as a non-locating support: not at all, by a loose ring in its seat, inside itself.
enum class Compensation { none, seat, inside };
/// Whether the clearance can be set: not, against a partner at another support, within the set itself.
enum class Adjusting { no, partner, set };
/// As an end-play support: not suited, possible with its own guidance unused, usual.
enum class EndPlay { no, spare, yes };
enum class SpringPreload { no, yes, set };

/// One row of families.csv. NaN: not stated, has no meaning here. Tilt in mrad, n dm in mm/min.
struct FamilyTraits {
    Family family = Family::deep_groove_ball;
    Kind kind = Kind::rolling;
    std::optional<GeometryClass> geometry;   ///< none: no rows, judged by its kind only
    std::optional<double> contact_angle_deg; ///< rows of the class with this angle only
    int count = 1;                           ///< bearings in the set
    SetArrangement arrangement = SetArrangement::none;
    bool roller = false;
    bool radial = true;
    AxialSense axial = AxialSense::none;
    double share_low = 0.0, share_high = 0.0; ///< Fa/Fr at which it is at its best
    double share_hard_low = 0.0, share_hard_high = 0.0;
    double tilt_good = 0.0, tilt_permissible = 0.0, tilt_hard = 0.0;
    double ndm_grease = 0.0, ndm_oil = 0.0;
    double friction = 0.0;                                ///< M = friction F d / 2
    double stiffness_radial = 0.0, stiffness_axial = 0.0; ///< against a deep groove ball bearing of the same bore
    Compensation compensation = Compensation::none;
    double inside_share = 0.0; ///< room inside as a share of the width
    bool separable = false;
    Adjusting adjusted = Adjusting::no;
    EndPlay end_play = EndPlay::no;
    bool own_play = false; ///< has axial play of its own unless preloaded
    bool raceway_on_shaft = false;
    double accuracy = 0.0, noise = 0.0, dirt = 0.0, seal = 0.0, mounting = 0.0; ///< utilities 0..1, 1 best
    double cost_ratio = 0.0;
    char availability = 'A';                  ///< A stock everywhere, B to order, C project part
    SpringPreload spring = SpringPreload::no; ///< a light load is met by a spring, not a reservation
    std::string source;
};

/// Limits of a plain bush. NaN: has no such limit.
struct BushLimits {
    Family family = Family::plain_sintered;
    double p_slow_MPa = 0.0, v_slow_m_s = 0.0; ///< mean pressure allowed up to this sliding speed
    double p_MPa = 0.0;                        ///< above it
    double v_max_m_s = 0.0, pv_max = 0.0, temperature_max_C = 0.0;
    std::string source;
};

struct SeriesTraits {
    GeometryClass geometry = GeometryClass::deep_groove_ball;
    std::string series;
    int order = 0;        ///< in which it is offered among equal sections
    bool thin = false;    ///< taken only where space demands it
    bool shallow = false; ///< shallow grooves: holds less axial load
    bool heavy = false;   ///< diameter series 4, rarely kept
    bool ribs = true;     ///< made with ribs on both rings
    bool sets = true;     ///< made matched for sets
    std::string source;
};

struct Profile {
    std::string name;
    std::array<double, criterionCount> weight{};
};

/// rules.csv, one field a row; the file is the place to read what each means and where it comes from.
struct RuleNumbers {
    double radial_share_of_axial_bearing, axial_share_of_free_bearing, adjusted_deep_groove_share, inside_hard_factor,
        inside_chamfer_factor, inside_element_share, deep_groove_C0_share, deep_groove_C0_share_small, deep_groove_small_bore_mm,
        deep_groove_pure_axial_C0_share, tapered_share_per_tangent, hardness_needed_HRC, hardness_least_HRC, accuracy_class_least,
        accuracy_class_full, temperature_hard_C, temperature_caution_C, film_speed_least_m_s, life_near_share, static_near_share,
        speed_hard_ratio, speed_load_free, speed_load_mid, speed_load_mid_factor, speed_load_high, speed_load_high_factor,
        least_load_ndm, least_load_time_share, pv_caution_share, swing_least_deg, load_valid_share, seal_poor, weak_utility,
        low_score, equal_score, generous_life, good_life_utility, static_high_load_shock_K_A, thrust_composite_share,
        thrust_composite_reverse_share, weibull_slope_mixed, rating_spread, spring_low_N_per_mm, spring_high_N_per_mm,
        bush_outer_factor, bush_outer_plus_mm, quiet_noise_least;
};

struct RuleData {
    std::array<FamilyTraits, familyCount> families; ///< in the order of the enum
    std::vector<BushLimits> bushes;
    std::vector<SeriesTraits> series;
    std::vector<Profile> profiles;
    RuleNumbers numbers{};

    [[nodiscard]] const FamilyTraits& of(Family family) const { return families[static_cast<std::size_t>(family)]; }
    [[nodiscard]] const BushLimits* bush(Family family) const;
    [[nodiscard]] const SeriesTraits* seriesOf(GeometryClass geometry, std::string_view name) const;
    /// Weights of a profile; the first profile when the name is unknown.
    [[nodiscard]] const Profile& profile(std::string_view name) const;
};

struct RuleTexts {
    std::string_view families, bush_limits, rules, series, weights; ///< the CSV texts
};
/// Strict: unknown, missing or doubled columns, rows and words, and numbers that do not read, are refused with
/// `value-invalid` that names file, line and column.
[[nodiscard]] Result<RuleData> parseRuleData(const RuleTexts& texts);

/// The built-in data, read once.
[[nodiscard]] const RuleData& ruleData();
/// The built-in texts, for tests of the loader.
[[nodiscard]] RuleTexts builtInRuleTexts();

} // namespace shaftwright::selection
