#pragma once
// Every word that is drawn on the sheet, in one place, so that it can be translated. Short English; sentences of findings and
// reasons live in resources/text.

#include "core/drawing/sheet.h"

#include <string_view>

namespace shaftwright::drawing::labels
{

inline constexpr std::string_view inviteHead = "Draw the first segment";
inline constexpr std::string_view inviteLine = "begin with the task, or with the loads of one bearing";
inline constexpr std::string_view notSolved = "no curve: the supports do not hold the shaft, see findings";
inline constexpr std::string_view notSolvedShort = "no curve, see findings";
inline constexpr std::string_view endView = "End view";
inline constexpr std::string_view fromRight = "from the right end";
inline constexpr std::string_view forcesIn = "forces in ";
inline constexpr std::string_view caseWord = "case ";
inline constexpr std::string_view arrowsOfCase = "arrows: case";
inline constexpr std::string_view mesh = "mesh";
inline constexpr std::string_view belt = "belt";
inline constexpr std::string_view chain = "chain";
inline constexpr std::string_view standstill = "standstill";
inline constexpr std::string_view perMinute = " /min";
inline constexpr std::string_view anyDirection = "worst direction";
inline constexpr std::string_view allCases = "all cases";
inline constexpr std::string_view largestOf = "largest of ";
inline constexpr std::string_view cases = " cases";
inline constexpr std::string_view forcesOf = "Forces of case ";
inline constexpr std::string_view shownPlaneY = "plane y, up = +y (away from the viewer)";
inline constexpr std::string_view shownPlaneZ = "plane z, up = +z";
inline constexpr std::string_view shownResultant = "resultants, direction in degrees";
inline constexpr std::string_view at = " at ";
inline constexpr std::string_view axialShort = "axial ";
inline constexpr std::string_view torqueShort = "torque ";
inline constexpr std::string_view distributed = "distributed";

// Page
inline constexpr std::string_view notAssessed = "Strength, fatigue and critical speed are not assessed.";
inline constexpr std::string_view genericRatings = "Generic catalogue: ratings computed from standard dimensions, not a maker's.";
inline constexpr std::string_view legalOwner = "Legal owner";
inline constexpr std::string_view documentType = "Document type";
inline constexpr std::string_view documentTypeValue = "Shaft and bearing arrangement";
inline constexpr std::string_view dateOfIssue = "Date of issue";
inline constexpr std::string_view scale = "Scale";
inline constexpr std::string_view title = "Title";
inline constexpr std::string_view purpose = "Supplementary title";
inline constexpr std::string_view projection = "Projection, units";
inline constexpr std::string_view number = "Identification number";
inline constexpr std::string_view createdBy = "Created by";
inline constexpr std::string_view approvedBy = "Approved by";
inline constexpr std::string_view revision = "Rev.";
inline constexpr std::string_view language = "Lang.";
inline constexpr std::string_view languageValue = "en";
inline constexpr std::string_view sheet = "Sheet";
inline constexpr std::string_view sheetValue = "1/1";
inline constexpr std::string_view millimetres = "mm";
inline constexpr std::string_view items = "Items";
inline constexpr std::string_view untitled = "untitled";

inline constexpr std::string_view loadCase = "Load case";
inline constexpr std::string_view speed = "Speed";
inline constexpr std::string_view timeShare = "Time share";
inline constexpr std::string_view theRequirementMet = "The requirement is met";
inline constexpr std::string_view allOf = "All ";
inline constexpr std::string_view requirementsMet = " requirements met";
inline constexpr std::string_view ofWord = " of ";
inline constexpr std::string_view requirementsNotMet = " requirements not met or not judged";

// Cards
inline constexpr std::string_view radial = "Radial";
inline constexpr std::string_view axial = "Axial";
inline constexpr std::string_view tilt = "Tilt";
inline constexpr std::string_view staticSafety = "S0";
inline constexpr std::string_view none = "none";
inline constexpr std::string_view noBearing = "no bearing chosen";
inline constexpr std::string_view noLife = "no life found";
inline constexpr std::string_view noResult = "no result, see findings";
inline constexpr std::string_view met = "met";
inline constexpr std::string_view notMet = "not met";
inline constexpr std::string_view notJudged = "not judged";
inline constexpr std::string_view required = " required";
inline constexpr std::string_view of = "of ";
inline constexpr std::string_view governs = " governs";
inline constexpr std::string_view million = " million h";
inline constexpr std::string_view hours = " h";
inline constexpr std::string_view least = "least ";

[[nodiscard]] constexpr std::string_view role(Role value)
{
    switch (value) {
    case Role::locating:
        return "locating";
    case Role::non_locating:
        return "non-locating";
    case Role::adjusted:
        return "adjusted";
    case Role::end_play:
        return "both ways with end play";
    case Role::axial_only:
        return "axial only";
    }
    return "";
}

[[nodiscard]] constexpr std::string_view family(Family value)
{
    switch (value) {
    case Family::deep_groove_ball:
        return "deep groove ball";
    case Family::deep_groove_ball_two_row:
        return "deep groove ball, two rows";
    case Family::self_aligning_ball:
        return "self-aligning ball";
    case Family::angular_contact_ball_15:
        return "angular contact ball 15°";
    case Family::angular_contact_ball_25:
        return "angular contact ball 25°";
    case Family::angular_contact_ball_40:
        return "angular contact ball 40°";
    case Family::angular_contact_ball_two_row:
        return "angular contact ball, two rows";
    case Family::four_point_contact_ball:
        return "four-point contact ball";
    case Family::angular_contact_set_O:
        return "angular contact set, back to back";
    case Family::angular_contact_set_X:
        return "angular contact set, face to face";
    case Family::precision_set_O_25:
        return "precision set 25°, back to back";
    case Family::angular_contact_set_tandem:
        return "angular contact set, tandem";
    case Family::cylindrical_roller_NU:
    case Family::cylindrical_roller_NJ:
    case Family::cylindrical_roller_NUP:
        return "cylindrical roller";
    case Family::cylindrical_roller_full:
        return "cylindrical roller, full";
    case Family::needle_roller:
        return "needle roller";
    case Family::needle_roller_no_inner:
        return "needle roller, no inner ring";
    case Family::needle_drawn_cup:
        return "needle roller, drawn cup";
    case Family::tapered_roller:
        return "tapered roller";
    case Family::tapered_roller_pair:
        return "tapered roller pair";
    case Family::spherical_roller:
        return "spherical roller";
    case Family::toroidal_roller:
        return "toroidal roller";
    case Family::thrust_ball:
        return "thrust ball";
    case Family::thrust_ball_double:
        return "thrust ball, both ways";
    case Family::angular_contact_thrust_ball:
        return "angular contact thrust ball";
    case Family::cylindrical_roller_thrust:
        return "cylindrical roller thrust";
    case Family::needle_roller_thrust:
        return "needle roller thrust";
    case Family::spherical_roller_thrust:
        return "spherical roller thrust";
    case Family::needle_thrust_combined:
        return "needle and thrust combined";
    case Family::plain_sintered:
        return "sintered bush";
    case Family::plain_ptfe_composite:
        return "PTFE composite bush";
    case Family::plain_bronze:
        return "bronze bush";
    case Family::plain_hydrodynamic:
        return "hydrodynamic bush";
    case Family::magnetic:
        return "magnetic bearing";
    case Family::linear_guide:
        return "linear guide";
    case Family::composite_NU_four_point:
        return "cylindrical roller with four-point ball";
    case Family::composite_tandem_opposed:
        return "tandem with opposed row";
    case Family::composite_spherical_thrust:
        return "spherical thrust with radial row";
    }
    return "";
}

/// Word under a load's number when the part has no name.
[[nodiscard]] inline std::string_view kind(const Part& part)
{
    static constexpr std::array<std::string_view, 11> words{
        "gear force", "bevel gear force", "worm force", "worm wheel force", "belt pull", "chain pull", "coupling",
        "impeller",   "weight",           "force",      "distributed load"};
    return words[part.body.index()];
}

[[nodiscard]] constexpr std::string_view stripHead(StripKind value, Plane plane)
{
    const int column = plane == Plane::y ? 0 : plane == Plane::z ? 1 : 2;
    constexpr std::string_view words[6][3] = {
        {"Shear Vy", "Shear Vz", "Shear, resultant"},
        {"Moment Mz", "Moment My", "Moment, resultant"},
        {"Torque T", "Torque T", "Torque T"},
        {"Axial force N", "Axial force N", "Axial force N"},
        {"Deflection v", "Deflection w", "Deflection, resultant"},
        {"Slope rz", "Slope ry", "Slope, resultant"},
    };
    return words[static_cast<int>(value)][column];
}

[[nodiscard]] constexpr std::string_view signNote(StripKind value, Plane plane)
{
    if (plane == Plane::resultant && value != StripKind::torque && value != StripKind::axial)
        return "Resultant of both planes, never negative.";
    const bool y = plane == Plane::y;
    switch (value) {
    case StripKind::shear:
        return y ? "Vy acts on the face whose outward normal is +x; positive along +y. A load along +y makes it fall."
                 : "Vz acts on the face whose outward normal is +x; positive along +z. A load along +z makes it fall.";
    case StripKind::moment:
        return y ? "Mz acts on the face whose outward normal is +x; positive: tension on the side of -y."
                 : "My acts on the face whose outward normal is +x; positive: tension on the side of +z, above.";
    case StripKind::torque:
        return "T acts on the face whose outward normal is +x; positive by the right-hand rule about +x.";
    case StripKind::axial:
        return "N acts on the face whose outward normal is +x; positive: tension.";
    case StripKind::deflection:
        return y ? "v is positive towards +y." : "w is positive towards +z, up.";
    case StripKind::slope:
        return y ? "rz turns by the right-hand rule about +z; positive: v rises with x."
                 : "ry turns by the right-hand rule about +y; positive: w falls with x.";
    }
    return "";
}

} // namespace shaftwright::drawing::labels
