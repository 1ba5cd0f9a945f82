#pragma once
// The chosen bearing of one support over all cases. The same steps serve a bearing without a shaft. Internal to core/analysis.

#include "core/analysis/assessment.h"

#include <span>
#include <string>

namespace shaftwright::analysis
{

struct BearingLoad {
    CaseId case_id;
    std::string case_name;
    double Fr_N = 0.0, Fa_N = 0.0;               ///< for the life
    double Fr_static_N = 0.0, Fa_static_N = 0.0; ///< for static safety
    std::optional<double> induced_axial_N;
    Derivation induced_derivation;
    std::optional<Carries> sense; ///< which way it keeps the shaft from moving in this case
    bool sense_held = true;       ///< false: the axial force acts in a sense this bearing cannot hold
    double time_share = 1.0, speed_rpm = 0.0;
};

struct BearingContext {
    std::string subject; ///< support id
    std::string path;    ///< "supports.B.bearing", "bearing" without a shaft
    std::string name;    ///< as shown
    std::optional<double> required_L_h;
    LifeBasis basis = LifeBasis::basic; ///< modified: not found yet, so the requirement stays open
    double reliability_percent = 90.0;
    std::optional<double> required_S0;
    Grade quiet = Grade::normal;
    bool preloaded_or_sprung = false;
    bool shocks = false; ///< pronounced shocks: higher static safety
};

[[nodiscard]] BearingAssessment assessBearing(const BearingChoice& choice, std::span<const BearingLoad> loads,
                                              const BearingContext& context, Findings& findings);

} // namespace shaftwright::analysis
