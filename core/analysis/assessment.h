#pragma once
// What an analysis returns. A plain value; screen, report, command line and tests read it and compute nothing again.

#include "core/base/derivation.h"
#include "core/base/finding.h"
#include "core/beam/beam.h"
#include "core/bearings/load_rating.h"
#include "core/loads/loads.h"
#include "core/model/arrangement.h"
#include "core/model/defaults.h"
#include "core/selection/suggestion.h"

#include <optional>
#include <string>
#include <vector>

namespace shaftwright
{

/// A support in one load case. Signs: force on the shaft; angles 0..360 from +y towards +z.
struct SupportCase {
    CaseId case_id;
    Vector3 force_N;
    double moment_y_Nmm = 0.0, moment_z_Nmm = 0.0;
    double radial_N = 0.0, radial_angle_deg = 0.0, axial_N = 0.0;
    Vector3 displacement_mm;
    double rotation_y_mrad = 0.0, rotation_z_mrad = 0.0;
    double tilt_mrad = 0.0;        ///< shaft against bore, no assumption in it
    double tilt_judged_mrad = 0.0; ///< with the mounting error
    double worst_direction_N =
        0.0;                 ///< most that forces of unknown direction can add to radial_N; contained in the bearing's Fr_N
    double rotating_N = 0.0; ///< largest reaction to forces that turn with the shaft; contained in the bearing's Fr_N
};

/// The chosen bearing in one load case.
struct BearingCase {
    CaseId case_id;
    double Fr_N = 0.0, Fa_N = 0.0;               ///< for the life: mean over a turn when forces turn with the shaft
    double Fr_static_N = 0.0, Fa_static_N = 0.0; ///< largest, with the peak factor
    std::optional<double> induced_axial_N;
    double X = 1.0, Y = 0.0, e = 0.0;
    std::optional<double> P_N, P0_N, S0, L10_h;
    double damage_share = 0.0;
    Derivation derivation; ///< P, P0, L10, L10h of this case
};

struct BearingAssessment {
    BearingRating rating;
    std::string catalogue; ///< name of the row's catalogue
    std::optional<double> required_L_h;
    std::optional<double> L10_Mrev, L10_h, Lnm_h, P_equivalent_N, S0_min;
    double a1 = 1.0;
    double required_S0 = 0.0;
    std::optional<bool> met; ///< life in the asked basis; none: no life required or none found
    std::optional<bool> static_met;
    std::vector<BearingCase> cases;
    int governing_case = -1; ///< index of the largest damage share
    int governing_static_case = -1;
    double centre_x_mm = 0.0;
    Derivation derivation; ///< over all cases: P_m, L10h, a1, Lnm
};

struct SupportAssessment {
    SupportId id;
    std::string name;
    double x_mm = 0.0;
    Role role = Role::non_locating;
    double seat_mm = 0.0;           ///< shaft diameter at the support
    std::vector<SupportCase> cases; ///< in the order of the load cases; empty when the beam could not be solved
    int governing_case = -1;        ///< of the bearing, else the largest radial force
    std::optional<BearingAssessment> bearing;
    std::vector<Suggestion> suggestions; ///< all 39 families, best first
    double axial_travel_mm = 0.0;        ///< largest |u - housing| over the cases
    std::optional<Carries> carries;      ///< as settled: stated, or by position
    double centre_x_mm = 0.0;            ///< effective centre on the axis
};

struct RequirementResult {
    std::string id;    ///< "supports.B.life", "supports.B.static", or the id of a Requirement
    std::string kind;  ///< text key "requirement.<kind>"
    std::string where; ///< support or part id
    double required = 0.0;
    std::optional<double> found;
    std::string unit;
    std::optional<bool> met;
    std::optional<CaseId> case_id; ///< governing
};

struct ShaftResult {
    double mass_kg = 0.0, length_mm = 0.0;
    double max_deflection_mm = 0.0, max_deflection_x_mm = 0.0;
    double max_moment_Nmm = 0.0, max_moment_x_mm = 0.0;
    std::optional<CaseId> case_id; ///< of the largest deflection
};

struct CaseSummary {
    CaseId id;
    std::string name;
    double time_share = 1.0, speed_rpm = 0.0;
    double torque_residual_Nmm = 0.0;
    double K_N = 0.0;      ///< sum of external axial forces with the own weight, + along +x
    int axial_holder = -1; ///< index of the support that holds x in this case; -1 none
};

struct Assessment {
    Settled settled;
    std::vector<Assumption> assumptions;
    std::vector<CaseSummary> load_cases;
    std::vector<CaseLoads> loads; ///< forces of every part, per case
    beam::Solution beam;          ///< for curves and the hairline; empty `cases` when it could not be solved
    std::vector<SupportAssessment> supports;
    ShaftResult shaft;
    std::vector<RequirementResult> requirements;
    SystemLife all_supports;
    Findings findings; ///< stops first, then cautions, notes; stable order

    [[nodiscard]] const SupportAssessment* find(const SupportId& id) const;
    /// Number of requirements that are not met or could not be evaluated.
    [[nodiscard]] int missed() const;
};

} // namespace shaftwright
