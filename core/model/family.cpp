#include "core/model/family.h"

#include <utility>

namespace shaftwright {
namespace {

constexpr std::array<std::string_view, familyCount> familyNames = {
    "deep_groove_ball",
    "deep_groove_ball_two_row",
    "self_aligning_ball",
    "angular_contact_ball_15",
    "angular_contact_ball_25",
    "angular_contact_ball_40",
    "angular_contact_ball_two_row",
    "four_point_contact_ball",
    "angular_contact_set_O",
    "angular_contact_set_X",
    "precision_set_O_25",
    "angular_contact_set_tandem",
    "cylindrical_roller_NU",
    "cylindrical_roller_NJ",
    "cylindrical_roller_NUP",
    "cylindrical_roller_full",
    "needle_roller",
    "needle_roller_no_inner",
    "needle_drawn_cup",
    "tapered_roller",
    "tapered_roller_pair",
    "spherical_roller",
    "toroidal_roller",
    "thrust_ball",
    "thrust_ball_double",
    "angular_contact_thrust_ball",
    "cylindrical_roller_thrust",
    "needle_roller_thrust",
    "spherical_roller_thrust",
    "needle_thrust_combined",
    "plain_sintered",
    "plain_ptfe_composite",
    "plain_bronze",
    "plain_hydrodynamic",
    "magnetic",
    "linear_guide",
    "composite_NU_four_point",
    "composite_tandem_opposed",
    "composite_spherical_thrust",
};

constexpr std::array<std::string_view, 17> classNames = {
    "deep_groove_ball",  "deep_groove_ball_two_row",  "angular_contact_ball", "angular_contact_ball_double",
    "four_point_contact_ball", "self_aligning_ball", "cylindrical_roller",  "cylindrical_roller_full",
    "needle",            "needle_drawn_cup",          "tapered_roller",       "spherical_roller",
    "thrust_ball",       "thrust_ball_double",        "cylindrical_roller_thrust", "needle_roller_thrust",
    "spherical_roller_thrust",
};

constexpr std::array<std::string_view, 8> provenanceNames = {"seen",          "computed",   "derived",  "memory_high",
                                                             "memory_medium", "memory_low", "practice", "own"};

template <class Enum, std::size_t N>
std::optional<Enum> lookUp(const std::array<std::string_view, N>& names, std::string_view text)
{
    for (std::size_t i = 0; i < N; ++i) {
        if (names[i] == text)
            return static_cast<Enum>(i);
    }
    return std::nullopt;
}

} // namespace

const std::array<Family, familyCount>& allFamilies()
{
    static const auto families = [] {
        std::array<Family, familyCount> all{};
        for (int i = 0; i < familyCount; ++i)
            all[static_cast<std::size_t>(i)] = static_cast<Family>(i);
        return all;
    }();
    return families;
}

std::string_view toString(Family family)
{
    return familyNames[static_cast<std::size_t>(family)];
}

std::optional<Family> familyFromString(std::string_view text)
{
    return lookUp<Family>(familyNames, text);
}

std::string_view toString(GeometryClass geometry)
{
    return classNames[static_cast<std::size_t>(geometry)];
}

std::optional<GeometryClass> geometryClassFromString(std::string_view text)
{
    return lookUp<GeometryClass>(classNames, text);
}

std::string_view toString(Provenance provenance)
{
    return provenanceNames[static_cast<std::size_t>(provenance)];
}

std::optional<Provenance> provenanceFromString(std::string_view text)
{
    return lookUp<Provenance>(provenanceNames, text);
}

} // namespace shaftwright
