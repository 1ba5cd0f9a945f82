#pragma once
#include <array>
#include <optional>
#include <string_view>

namespace shaftwright {

/// The 39 kinds of support bearing that are judged at every support. Spelling = file, JSON and resources.
enum class Family {
    deep_groove_ball,
    deep_groove_ball_two_row,
    self_aligning_ball,
    angular_contact_ball_15,
    angular_contact_ball_25,
    angular_contact_ball_40,
    angular_contact_ball_two_row,
    four_point_contact_ball,
    angular_contact_set_O,
    angular_contact_set_X,
    precision_set_O_25,
    angular_contact_set_tandem,
    cylindrical_roller_NU,
    cylindrical_roller_NJ,
    cylindrical_roller_NUP,
    cylindrical_roller_full,
    needle_roller,
    needle_roller_no_inner,
    needle_drawn_cup,
    tapered_roller,
    tapered_roller_pair,
    spherical_roller,
    toroidal_roller,
    thrust_ball,
    thrust_ball_double,
    angular_contact_thrust_ball,
    cylindrical_roller_thrust,
    needle_roller_thrust,
    spherical_roller_thrust,
    needle_thrust_combined,
    plain_sintered,
    plain_ptfe_composite,
    plain_bronze,
    plain_hydrodynamic,
    magnetic,
    linear_guide,
    composite_NU_four_point,
    composite_tandem_opposed,
    composite_spherical_thrust,
};
inline constexpr int familyCount = 39;

/// All families in the order of the enum.
[[nodiscard]] const std::array<Family, familyCount>& allFamilies();
[[nodiscard]] std::string_view toString(Family family);
[[nodiscard]] std::optional<Family> familyFromString(std::string_view text);

/// Kind of internal geometry of a catalogue row; a family is a class plus angle, ribs, rows and arrangement.
enum class GeometryClass {
    deep_groove_ball,
    deep_groove_ball_two_row, ///< estimated rows 42, 43 (low confidence)
    angular_contact_ball,
    angular_contact_ball_double,
    four_point_contact_ball, ///< estimated rows QJ2, QJ3 (low confidence)
    self_aligning_ball,
    cylindrical_roller,
    cylindrical_roller_full,
    needle,
    needle_drawn_cup,
    tapered_roller,
    spherical_roller,
    thrust_ball,
    thrust_ball_double,
    cylindrical_roller_thrust,
    needle_roller_thrust,
    spherical_roller_thrust,
};
[[nodiscard]] std::string_view toString(GeometryClass geometry);
[[nodiscard]] std::optional<GeometryClass> geometryClassFromString(std::string_view text);

/// How far a datum can be trusted.
enum class Provenance { seen, computed, derived, memory_high, memory_medium, memory_low, practice, own };
[[nodiscard]] std::string_view toString(Provenance provenance);
[[nodiscard]] std::optional<Provenance> provenanceFromString(std::string_view text);

} // namespace shaftwright
