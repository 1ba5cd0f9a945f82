#pragma once
#include "core/analysis/assessment.h"
#include "core/catalogue/catalogue.h"

namespace shaftwright
{

/// The one pipeline: check, loads, beam, roles and pairs, bearings, suggestions, requirements.
/// Pure: the same input gives the same value. Never throws on data; what cannot be done is left empty and a finding says why.
[[nodiscard]] Assessment analyse(const Arrangement& arrangement, const Catalogues& catalogues);

/// One bearing without a shaft: an arrangement of one support with given loads, through the same calculators.
struct SingleBearingLoad {
    double Fr_N = 0.0, Fa_N = 0.0, speed_rpm = 0.0, time_share = 1.0;
    std::string name;
};
struct SingleBearingInput {
    BearingChoice bearing;
    std::vector<SingleBearingLoad> loads;
    std::optional<double> required_L_h;
    double reliability_percent = 90.0;
    std::optional<double> required_S0;
};
[[nodiscard]] BearingAssessment analyseSingleBearing(const SingleBearingInput& input, Findings& findings);

} // namespace shaftwright
