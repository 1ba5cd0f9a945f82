#pragma once
// The one list of keys: every field of the model with its key, unit, hard range and meaning.
// Visitors of Keys<T>::visit read, write and describe it. Included by the sources of this folder only.
//
// Hard ranges are wide on purpose: they keep what no document can mean (a negative length) and what no calculation
// can digest (1e300) out of the program. Whether a value makes sense is judged by core/check.

#include "core/catalogue/catalogue.h"
#include "core/model/arrangement.h"

#include <array>
#include <limits>
#include <string_view>

namespace shaftwright::format
{

enum class Presence { required, optional };

struct Limits {
    const char* unit = "";
    double least = -std::numeric_limits<double>::infinity();
    double greatest = std::numeric_limits<double>::infinity();
    bool least_excluded = false;
};

inline constexpr Limits size_mm{"mm", 0.0, 1e5};
inline constexpr Limits positive_mm{"mm", 0.0, 1e5, true};
inline constexpr Limits place_mm{"mm", -1e5, 1e5};
inline constexpr Limits angle_deg{"deg", -360.0, 360.0};
inline constexpr Limits slope_deg{"deg", -90.0, 90.0};
inline constexpr Limits force_N{"N", -1e9, 1e9};
inline constexpr Limits strength_N{"N", 0.0, 1e9};
inline constexpr Limits moment_Nmm{"Nmm", -1e12, 1e12};
inline constexpr Limits line_load{"N/mm", -1e9, 1e9};
inline constexpr Limits line_torque{"Nmm/mm", -1e12, 1e12};
inline constexpr Limits power_kW{"kW", 0.0, 1e6};
inline constexpr Limits mass_kg{"kg", 0.0, 1e7};
inline constexpr Limits speed_rpm{"rpm", -1e6, 1e6};
inline constexpr Limits signed_factor{"", -1000.0, 1000.0};
inline constexpr Limits factor{"", 0.0, 1000.0};
inline constexpr Limits positive_factor{"", 0.0, 1000.0, true};
inline constexpr Limits friction_range{"", 0.0, 10.0};
inline constexpr Limits life_h{"h", 0.0, 1e9, true};
inline constexpr Limits reliability_range{"%", 0.0, 99.9999, true};
inline constexpr Limits temperature_C{"degC", -273.15, 2000.0};
inline constexpr Limits teeth_range{"", 0.0, 10000.0};
inline constexpr Limits count_range{"", 1.0, 1000.0};
inline constexpr Limits tilt_range{"mrad", -1000.0, 1000.0};
inline constexpr Limits positive_tilt{"mrad", 0.0, 1000.0};

template <class T> struct Keys; // static constexpr name; static visit(V&&)

template <class E> struct Words; // static words(), in the order of the enum

#define SHAFTWRIGHT_WORDS(Enum, ...)                                                                                             \
    template <> struct Words<Enum> {                                                                                             \
        static std::vector<std::string_view> words() { return {__VA_ARGS__}; }                                                   \
    }

SHAFTWRIGHT_WORDS(FeatureKind, "fillet", "chamfer", "undercut", "groove", "keyway", "press_seat", "thread", "centre_hole");
SHAFTWRIGHT_WORDS(PowerSense, "driving", "driven");
SHAFTWRIGHT_WORDS(Hand, "none", "right", "left");
SHAFTWRIGHT_WORDS(ApexSide, "plus", "minus");
SHAFTWRIGHT_WORDS(BeltKind, "flat", "v", "ribbed", "toothed");
SHAFTWRIGHT_WORDS(Role, "locating", "non_locating", "adjusted", "end_play", "axial_only");
SHAFTWRIGHT_WORDS(Carries, "plus", "minus");
SHAFTWRIGHT_WORDS(SetArrangement, "none", "O", "X", "tandem");
SHAFTWRIGHT_WORDS(HoldKind, "shoulder", "retaining_ring", "nut", "sleeve", "end_plate", "cover", "nothing");
SHAFTWRIGHT_WORDS(LifeBasis, "basic", "modified");
SHAFTWRIGHT_WORDS(Lubricant, "oil", "grease");
SHAFTWRIGHT_WORDS(Dirt, "clean", "normal", "dirty", "severe");
SHAFTWRIGHT_WORDS(Grade, "unimportant", "normal", "raised", "high");
SHAFTWRIGHT_WORDS(StiffnessWish, "none", "radial", "axial", "both");
SHAFTWRIGHT_WORDS(Motion, "rotation", "oscillation", "linear");
SHAFTWRIGHT_WORDS(HousingMaterial, "grey_iron", "nodular_iron", "steel", "aluminium");
SHAFTWRIGHT_WORDS(RequirementKind, "deflection_at", "slope_at", "all_supports_life", "static_safety");
SHAFTWRIGHT_WORDS(ShearModel, "cowper", "hutchinson", "nine_tenths", "off");
SHAFTWRIGHT_WORDS(InducedLoadRule, "e_times_Fr", "half_Fr_over_Y");
#undef SHAFTWRIGHT_WORDS

template <> struct Words<Family> {
    static std::vector<std::string_view> words()
    {
        std::vector<std::string_view> all;
        for (const Family family : allFamilies())
            all.push_back(toString(family));
        return all;
    }
};

template <> struct Words<GeometryClass> {
    static std::vector<std::string_view> words()
    {
        std::vector<std::string_view> all;
        for (int i = 0; i <= static_cast<int>(GeometryClass::spherical_roller_thrust); ++i)
            all.push_back(toString(static_cast<GeometryClass>(i)));
        return all;
    }
};

template <> struct Words<Provenance> {
    static std::vector<std::string_view> words()
    {
        std::vector<std::string_view> all;
        for (int i = 0; i <= static_cast<int>(Provenance::own); ++i)
            all.push_back(toString(static_cast<Provenance>(i)));
        return all;
    }
};

/// Variants: the key that tells the alternative, and a word for each; an empty word: nothing is written.
template <class V> struct Alternatives;

template <> struct Alternatives<PartBody> {
    static constexpr const char* key = "kind";
    static constexpr const char* meaning = "what the part is; decides which keys stand beside it";
    static constexpr std::array<const char*, 11> words = {
        "cylindrical_gear", "bevel_gear", "worm",   "worm_wheel", "belt_pulley",     "chain_sprocket",
        "coupling",         "impeller",   "weight", "point_load", "distributed_load"};
};

template <> struct Alternatives<BeltTension> {
    static constexpr const char* key = "given_as";
    static constexpr const char* meaning = "the way in which the strand tension is stated";
    static constexpr std::array<const char*, 4> words = {"factor", "ratio", "pretension", "strand_forces"};
};

template <> struct Alternatives<Unbalance> {
    static constexpr const char* key = "given_as";
    static constexpr const char* meaning = "the way in which the unbalance is stated";
    static constexpr std::array<const char*, 4> words = {"", "grade", "moment", "eccentricity"};
};

constexpr auto required = Presence::required;
constexpr auto optional = Presence::optional;

// --- Shaft -----------------------------------------------------------------------------------------------------

template <> struct Keys<Vector3> {
    static constexpr const char* name = "Vector";
    template <class V> static void visit(V&& v)
    {
        v("x", &Vector3::x, optional, Limits{"", -1e12, 1e12}, "along the shaft, unit of the key above");
        v("y", &Vector3::y, optional, Limits{"", -1e12, 1e12}, "horizontal");
        v("z", &Vector3::z, optional, Limits{"", -1e12, 1e12}, "vertical, up");
    }
};

template <> struct Keys<Feature> {
    static constexpr const char* name = "Feature";
    template <class V> static void visit(V&& v)
    {
        v("id", &Feature::id, required, "unique on its segment");
        v("kind", &Feature::kind, required, "what is cut into the segment or set on it");
        v("position_mm", &Feature::position_mm, optional, size_mm,
          "from the left end of the segment; fillet, chamfer: 0 is the left edge, the length the right edge");
        v("length_mm", &Feature::length_mm, optional, size_mm, "along x; fillet: radius; chamfer: leg");
        v("depth_mm", &Feature::depth_mm, optional, size_mm, "groove, keyway: depth below the surface");
        v("width_mm", &Feature::width_mm, optional, size_mm, "keyway: width across");
        v("angle_deg", &Feature::angle_deg, optional, angle_deg, "keyway: place around the shaft; chamfer: its angle");
    }
};

template <> struct Keys<Segment> {
    static constexpr const char* name = "Segment";
    template <class V> static void visit(V&& v)
    {
        v("id", &Segment::id, required, "unique among segments");
        v("length_mm", &Segment::length_mm, required, size_mm, "along the shaft");
        v("outer_mm", &Segment::outer_mm, required, size_mm, "outside diameter, at the left end");
        v("outer_end_mm", &Segment::outer_end_mm, optional, size_mm, "outside diameter at the right end of a cone");
        v("bore_mm", &Segment::bore_mm, optional, size_mm, "diameter of the bore, at the left end; open or 0: solid");
        v("bore_end_mm", &Segment::bore_end_mm, optional, size_mm, "diameter at the right end of a conical bore");
        v("features", &Segment::features, optional, "fillets, grooves, keyways ... on this segment");
    }
};

template <> struct Keys<Material> {
    static constexpr const char* name = "Material";
    template <class V> static void visit(V&& v)
    {
        v("name", &Material::name, required, "name in the material table, or of the material whose values follow");
        v("modulus_MPa", &Material::modulus_MPa, optional, Limits{"MPa", 0.0, 1e7, true}, "modulus of elasticity E");
        v("shear_modulus_MPa", &Material::shear_modulus_MPa, optional, Limits{"MPa", 0.0, 1e7, true}, "shear modulus G");
        v("expansion_per_K", &Material::expansion_per_K, optional, Limits{"1/K", -1e-3, 1e-3}, "linear thermal expansion");
        v("density_kg_m3", &Material::density_kg_m3, optional, Limits{"kg/m3", 0.0, 1e5}, "density");
    }
};

template <> struct Keys<Shaft> {
    static constexpr const char* name = "Shaft";
    template <class V> static void visit(V&& v)
    {
        v("material", &Shaft::material, required, "of the whole shaft");
        v("surface_hardness_HRC", &Shaft::surface_hardness_HRC, optional, Limits{"HRC", 0.0, 100.0},
          "where rolling elements run on the shaft itself");
        v("segments", &Shaft::segments, required, "from left to right; x = 0 at the left face of the first");
    }
};

// --- Parts -----------------------------------------------------------------------------------------------------

template <> struct Keys<Drive> {
    static constexpr const char* name = "Drive";
    template <class V> static void visit(V&& v)
    {
        v("power", &Drive::power, required, "driven: takes power in; driving: gives power away");
        v("power_kW", &Drive::power_kW, optional, power_kW, "power of this part");
        v("torque_Nmm", &Drive::torque_Nmm, optional, moment_Nmm, "instead of the power: size; at speed 0 signed about +x");
        v("takes_remaining", &Drive::takes_remaining, optional, "balances what the other parts leave");
        v("sense_fixed", &Drive::sense_fixed, optional, "with takes_remaining: `power` must come out as stated");
    }
};

template <> struct Keys<FurtherMesh> {
    static constexpr const char* name = "FurtherMesh";
    template <class V> static void visit(V&& v)
    {
        v("mesh_angle_deg", &FurtherMesh::mesh_angle_deg, required, angle_deg, "direction of the contact point");
        v.flat(&FurtherMesh::drive);
    }
};

template <> struct Keys<CylindricalGear> {
    static constexpr const char* name = "CylindricalGear";
    static constexpr const char* meaning = "spur, helical or double-helical gear, external or ring gear";
    template <class V> static void visit(V&& v)
    {
        using G = CylindricalGear;
        v("teeth", &G::teeth, required, teeth_range, "number of teeth z");
        v("normal_module_mm", &G::normal_module_mm, required, size_mm, "normal module m_n");
        v("helix_deg", &G::helix_deg, optional, slope_deg, "helix angle beta at the reference cylinder; 0: spur");
        v("hand", &G::hand, optional, "hand of the helix");
        v("double_helical", &G::double_helical, optional, "two halves of opposite hand");
        v("internal", &G::internal, optional, "ring gear");
        v("pressure_angle_deg", &G::pressure_angle_deg, optional, slope_deg, "normal pressure angle alpha_n");
        v("working_diameter_mm", &G::working_diameter_mm, optional, size_mm,
          "working pitch diameter d_w; replaces z m_n / cos beta");
        v("mate_teeth", &G::mate_teeth, optional, teeth_range, "teeth of the mate; with the centre distance");
        v("centre_distance_mm", &G::centre_distance_mm, optional, size_mm, "working centre distance");
        v("mesh_angle_deg", &G::mesh_angle_deg, required, angle_deg,
          "direction of the contact point about +x from +y towards +z");
        v("face_width_mm", &G::face_width_mm, optional, size_mm, "along the shaft");
        v("further_meshes", &G::further_meshes, optional, "other meshes of the same gear");
    }
};

template <> struct Keys<BevelGear> {
    static constexpr const char* name = "BevelGear";
    static constexpr const char* meaning = "bevel gear, straight or spiral";
    template <class V> static void visit(V&& v)
    {
        using G = BevelGear;
        v("teeth", &G::teeth, required, teeth_range, "number of teeth z; 0 with mean_diameter_mm");
        v("outer_module_mm", &G::outer_module_mm, required, size_mm, "outer transverse module m_et; 0 with mean_diameter_mm");
        v("mean_diameter_mm", &G::mean_diameter_mm, optional, size_mm, "mean pitch diameter d_m, instead of teeth and module");
        v("cone_angle_deg", &G::cone_angle_deg, required, slope_deg, "pitch cone half angle delta");
        v("spiral_deg", &G::spiral_deg, optional, slope_deg, "mean spiral angle beta_m; 0: straight");
        v("hand", &G::hand, optional, "hand of the spiral");
        v("apex", &G::apex, required, "side on which the apex of the cone lies");
        v("pressure_angle_deg", &G::pressure_angle_deg, optional, slope_deg, "normal pressure angle alpha_n");
        v("mesh_angle_deg", &G::mesh_angle_deg, required, angle_deg,
          "direction of the contact point about +x from +y towards +z");
        v("face_width_mm", &G::face_width_mm, optional, size_mm, "along the cone");
        v("mate_cone_angle_deg", &G::mate_cone_angle_deg, optional, slope_deg, "pitch cone half angle of the mate");
        v("shaft_angle_deg", &G::shaft_angle_deg, optional, Limits{"deg", 0.0, 180.0}, "angle between the axes");
    }
};

template <> struct Keys<Worm> {
    static constexpr const char* name = "Worm";
    static constexpr const char* meaning = "worm on its own shaft";
    template <class V> static void visit(V&& v)
    {
        v("starts", &Worm::starts, required, teeth_range, "number of starts z_1");
        v("axial_module_mm", &Worm::axial_module_mm, required, size_mm, "axial module m_x; 0 with lead_angle_deg");
        v("reference_diameter_mm", &Worm::reference_diameter_mm, required, size_mm, "reference diameter d_m1");
        v("lead_angle_deg", &Worm::lead_angle_deg, optional, slope_deg, "lead angle gamma, instead of starts and module");
        v("hand", &Worm::hand, required, "hand of the thread");
        v("pressure_angle_deg", &Worm::pressure_angle_deg, optional, slope_deg, "normal pressure angle alpha_n");
        v("friction", &Worm::friction, optional, friction_range, "coefficient of friction mu; open: by the sliding speed");
        v("mesh_angle_deg", &Worm::mesh_angle_deg, required, angle_deg,
          "direction of the contact point about +x from +y towards +z");
        v("face_width_mm", &Worm::face_width_mm, optional, size_mm, "threaded length");
    }
};

template <> struct Keys<WormWheel> {
    static constexpr const char* name = "WormWheel";
    static constexpr const char* meaning = "worm wheel on its own shaft";
    template <class V> static void visit(V&& v)
    {
        using W = WormWheel;
        v("teeth", &W::teeth, required, teeth_range, "number of teeth z_2");
        v("reference_diameter_mm", &W::reference_diameter_mm, required, size_mm, "reference diameter d_2");
        v("lead_angle_deg", &W::lead_angle_deg, required, slope_deg, "lead angle gamma of the worm");
        v("hand", &W::hand, required, "hand of the teeth, the same as the worm's");
        v("pressure_angle_deg", &W::pressure_angle_deg, optional, slope_deg, "normal pressure angle alpha_n");
        v("friction", &W::friction, optional, friction_range, "coefficient of friction mu; open: by the sliding speed");
        v("mesh_angle_deg", &W::mesh_angle_deg, required, angle_deg,
          "direction of the contact point about +x from +y towards +z");
        v("worm_direction", &W::worm_direction, optional, Limits{"", -1.0, 1.0},
          "+1 or -1: the worm's surface at the contact moves to +x or -x; open: follows from speed and hand");
        v("face_width_mm", &W::face_width_mm, optional, size_mm, "along the shaft");
    }
};

template <> struct Keys<TensionFactor> {
    static constexpr const char* name = "TensionFactor";
    static constexpr const char* meaning = "sum of the strand forces over the useful force";
    template <class V> static void visit(V&& v)
    {
        v("force_over_useful", &TensionFactor::force_over_useful, required, factor, "(T1 + T2) / (T1 - T2)");
    }
};

template <> struct Keys<TensionRatio> {
    static constexpr const char* name = "TensionRatio";
    static constexpr const char* meaning = "tight over slack strand";
    template <class V> static void visit(V&& v)
    {
        v("tight_over_slack", &TensionRatio::tight_over_slack, required, factor, "T1 / T2");
    }
};

template <> struct Keys<Pretension> {
    static constexpr const char* name = "Pretension";
    static constexpr const char* meaning = "set at rest with fixed centres";
    template <class V> static void visit(V&& v)
    {
        v("strand_N", &Pretension::strand_N, required, strength_N, "force in each strand, all belts together");
        v("belt_mass_kg_m", &Pretension::belt_mass_kg_m, optional, Limits{"kg/m", 0.0, 1e4}, "mass of the belt by its length");
    }
};

template <> struct Keys<StrandForces> {
    static constexpr const char* name = "StrandForces";
    static constexpr const char* meaning = "both strand forces";
    template <class V> static void visit(V&& v)
    {
        v("tight_N", &StrandForces::tight_N, required, strength_N, "T1");
        v("slack_N", &StrandForces::slack_N, required, strength_N, "T2");
    }
};

template <> struct Keys<BeltPulley> {
    static constexpr const char* name = "BeltPulley";
    static constexpr const char* meaning = "belt pulley: flat, V, ribbed or toothed belt";
    template <class V> static void visit(V&& v)
    {
        using P = BeltPulley;
        v("belt", &P::kind, required, "kind of belt");
        v("diameter_mm", &P::diameter_mm, required, size_mm, "pitch or datum diameter");
        v("other_diameter_mm", &P::other_diameter_mm, required, size_mm, "pitch or datum diameter of the other pulley");
        v("centre_distance_mm", &P::centre_distance_mm, required, size_mm, "between the two axes");
        v("crossed", &P::crossed, optional, "crossed belt");
        v("direction_deg", &P::direction_deg, required, angle_deg, "direction from this axis to the other");
        v("tension", &P::tension, optional, "strand tension, stated in one way; open: factor of the belt kind");
        v("friction", &P::friction, optional, friction_range, "coefficient of friction, for the check of slip");
        v("groove_deg", &P::groove_deg, optional, Limits{"deg", 0.0, 180.0}, "angle of the V groove");
        v("face_width_mm", &P::face_width_mm, optional, size_mm, "along the shaft");
        v("grooves", &P::grooves, optional, count_range, "number of grooves or ribs");
    }
};

template <> struct Keys<ChainSprocket> {
    static constexpr const char* name = "ChainSprocket";
    static constexpr const char* meaning = "chain sprocket";
    template <class V> static void visit(V&& v)
    {
        using C = ChainSprocket;
        v("teeth", &C::teeth, required, teeth_range, "number of teeth z");
        v("pitch_mm", &C::pitch_mm, required, size_mm, "pitch of the chain p");
        v("other_teeth", &C::other_teeth, required, teeth_range, "teeth of the other sprocket");
        v("centre_distance_mm", &C::centre_distance_mm, required, size_mm, "between the two axes");
        v("direction_deg", &C::direction_deg, required, angle_deg, "direction from this axis to the other");
        v("force_factor", &C::force_factor, optional, factor, "sum of the strand forces over the useful force");
        v("sag_force_N", &C::sag_force_N, optional, strength_N, "force of the slack strand, instead of the factor");
        v("face_width_mm", &C::face_width_mm, optional, size_mm, "along the shaft");
        v("strands", &C::strands, optional, count_range, "number of strands");
    }
};

template <> struct Keys<Coupling> {
    static constexpr const char* name = "Coupling";
    static constexpr const char* meaning = "coupling or cardan joint";
    template <class V> static void visit(V&& v)
    {
        using C = Coupling;
        v("radial_force_N", &C::radial_force_N, optional, strength_N, "residual radial force of a flexible coupling");
        v("radial_direction_deg", &C::radial_direction, optional, angle_deg,
          "direction of the radial force; open: taken as worst for each support");
        v("axial_force_N", &C::axial_force_N, optional, force_N, "signed along +x");
        v("bending_moment_Nmm", &C::bending_moment_Nmm, optional, moment_Nmm, "from angular misalignment");
        v("bending_moment_axis_deg", &C::bending_moment_axis_deg, optional, angle_deg, "direction of the moment vector");
        v("joint_angle_deg", &C::joint_angle_deg, optional, slope_deg, "cardan joint: angle between the axes");
        v("joint_direction_deg", &C::joint_direction_deg, optional, angle_deg, "side to which the other shaft leans");
        v("outer_mm", &C::outer_mm, optional, size_mm, "outside diameter");
        v("length_mm", &C::length_mm, optional, size_mm, "along the shaft");
    }
};

template <> struct Keys<Impeller> {
    static constexpr const char* name = "Impeller";
    static constexpr const char* meaning = "fan, propeller, screw or pump wheel";
    template <class V> static void visit(V&& v)
    {
        v("thrust_N", &Impeller::thrust_N, optional, force_N, "signed along +x");
        v("radial_y_N", &Impeller::radial_y_N, optional, force_N, "steady radial force along y");
        v("radial_z_N", &Impeller::radial_z_N, optional, force_N, "steady radial force along z");
        v("offset_y_mm", &Impeller::offset_y_mm, optional, place_mm, "point of action of the thrust");
        v("offset_z_mm", &Impeller::offset_z_mm, optional, place_mm, "point of action of the thrust");
        v("rotating_radial_N", &Impeller::rotating_radial_N, optional, strength_N, "radial force that turns with the shaft");
        v("outer_mm", &Impeller::outer_mm, optional, size_mm, "outside diameter");
        v("width_mm", &Impeller::width_mm, optional, size_mm, "along the shaft");
    }
};

template <> struct Keys<std::monostate> {
    static constexpr const char* name = "None";
    static constexpr const char* meaning = "";
    template <class V> static void visit(V&&) {}
};

template <> struct Keys<BalanceGrade> {
    static constexpr const char* name = "BalanceGrade";
    static constexpr const char* meaning = "balance quality grade G (ISO 21940-11)";
    template <class V> static void visit(V&& v)
    {
        v("grade_mm_s", &BalanceGrade::mm_s, required, Limits{"mm/s", 0.0, 1e4}, "G, eccentricity times angular speed");
    }
};

template <> struct Keys<UnbalanceGmm> {
    static constexpr const char* name = "UnbalanceMoment";
    static constexpr const char* meaning = "mass times eccentricity";
    template <class V> static void visit(V&& v)
    {
        v("moment_kg_mm", &UnbalanceGmm::kg_mm, required, Limits{"kg mm", 0.0, 1e6}, "U");
    }
};

template <> struct Keys<MassEccentricity> {
    static constexpr const char* name = "MassEccentricity";
    static constexpr const char* meaning = "distance of the centre of mass from the axis";
    template <class V> static void visit(V&& v) { v("eccentricity_mm", &MassEccentricity::mm, required, size_mm, "e"); }
};

template <> struct Keys<WeightBody> {
    static constexpr const char* name = "Weight";
    static constexpr const char* meaning = "flywheel, disk or any weight; its mass is `mass_kg` of the part";
    template <class V> static void visit(V&& v)
    {
        v("unbalance", &WeightBody::unbalance, optional, "stated in one way; open: none");
        v("outer_mm", &WeightBody::outer_mm, optional, size_mm, "outside diameter");
        v("width_mm", &WeightBody::width_mm, optional, size_mm, "along the shaft");
    }
};

template <> struct Keys<PointLoad> {
    static constexpr const char* name = "PointLoad";
    static constexpr const char* meaning = "free force and moment at a point";
    template <class V> static void visit(V&& v)
    {
        v("force_N", &PointLoad::force_N, optional, "components of the force, N");
        v("moment_Nmm", &PointLoad::moment_Nmm, optional, "components of the moment, Nmm, right-hand rule");
        v("offset_y_mm", &PointLoad::offset_y_mm, optional, place_mm, "point of action beside the axis");
        v("offset_z_mm", &PointLoad::offset_z_mm, optional, place_mm, "point of action beside the axis");
        v("rotating", &PointLoad::rotating, optional, "turns with the shaft");
    }
};

template <> struct Keys<DistributedLoad> {
    static constexpr const char* name = "DistributedLoad";
    static constexpr const char* meaning = "load by length, linear from `x_mm` of the part to `end_mm`";
    template <class V> static void visit(V&& v)
    {
        using D = DistributedLoad;
        v("end_mm", &D::end_mm, required, place_mm, "where the load ends");
        v("start_N_per_mm", &D::start_N_per_mm, optional, "components at the start, N/mm");
        v("end_N_per_mm", &D::end_N_per_mm, optional, "components at the end, N/mm");
        v("start_torque_Nmm_per_mm", &D::start_torque_Nmm_per_mm, optional, line_torque, "torque by length at the start");
        v("end_torque_Nmm_per_mm", &D::end_torque_Nmm_per_mm, optional, line_torque, "torque by length at the end");
    }
};

template <> struct Keys<Part> {
    static constexpr const char* name = "Part";
    template <class V> static void visit(V&& v)
    {
        v("id", &Part::id, required, "unique among parts and supports");
        v("name", &Part::name, optional, "shown name");
        v.choice(&Part::body);
        v("x_mm", &Part::x_mm, required, place_mm, "point of action: middle of the face width; distributed load: its start");
        v("mass_kg", &Part::mass_kg, optional, mass_kg, "adds weight");
        v.flat(&Part::drive);
        v.body(&Part::body);
    }
};

// --- Supports --------------------------------------------------------------------------------------------------

template <> struct Keys<InternalGeometry> {
    static constexpr const char* name = "InternalGeometry";
    template <class V> static void visit(V&& v)
    {
        using G = InternalGeometry;
        v("element_diameter_mm", &G::element_diameter_mm, optional, size_mm, "D_w; rollers: D_we at mid length");
        v("effective_length_mm", &G::effective_length_mm, optional, size_mm, "L_we; 0 for balls");
        v("roller_length_mm", &G::roller_length_mm, optional, size_mm, "overall roller length; 0 for balls");
        v("elements_per_row", &G::elements_per_row, optional, Limits{"", 0.0, 10000.0}, "Z");
        v("rows", &G::rows, optional, Limits{"", 1.0, 100.0}, "rows that share a radial load, i");
        v("pitch_diameter_mm", &G::pitch_diameter_mm, optional, size_mm, "D_pw");
        v("contact_angle_rad", &G::contact_angle_rad, optional, Limits{"rad", 0.0, 1.5707963267948966},
          "nominal contact angle alpha");
        v("conformity_inner", &G::conformity_inner, optional, factor, "groove radius over D_w; 0 for rollers");
        v("conformity_outer", &G::conformity_outer, optional, factor, "groove radius over D_w; 0 for rollers");
        v("row_distance_mm", &G::row_distance_mm, optional, size_mm, "between the centres of two rows");
        v("raceway_inner_mm", &G::raceway_inner_mm, optional, size_mm, "groove bottom or inner raceway at mid length");
        v("raceway_outer_mm", &G::raceway_outer_mm, optional, size_mm, "groove bottom or outer raceway at mid length");
        v("shoulder_inner_mm", &G::shoulder_inner_mm, optional, size_mm, "diameter of the inner shoulder or rib; 0: none");
        v("shoulder_outer_mm", &G::shoulder_outer_mm, optional, size_mm, "inside diameter of the outer shoulder or rib; 0: none");
    }
};

template <> struct Keys<CatalogueRow> {
    static constexpr const char* name = "CatalogueRow";
    template <class V> static void visit(V&& v)
    {
        using R = CatalogueRow;
        v("catalogue", &R::catalogue, required, "`generic`, `typed` or the name of an imported catalogue");
        v("catalogue_version", &R::catalogue_version, optional, "version of that catalogue");
        v("designation", &R::designation, required, "letters and digits without gaps");
        v("series", &R::series, optional, "dimension series or the maker's series");
        v("geometry_class", &R::geometry_class, required, "kind of internal geometry");
        v("bore_mm", &R::bore_mm, required, positive_mm, "d");
        v("outer_mm", &R::outer_mm, required, positive_mm, "D");
        v("width_mm", &R::width_mm, required, positive_mm, "B; tapered: T; axial bearings: H");
        v("inner_width_mm", &R::inner_width_mm, optional, size_mm, "tapered: B of the cone");
        v("outer_width_mm", &R::outer_width_mm, optional, size_mm, "tapered: C of the cup");
        v("inner_raceway_mm", &R::inner_raceway_mm, optional, size_mm, "needle: raceway under the needles");
        v("outer_small_end_mm", &R::outer_small_end_mm, optional, size_mm,
          "tapered: inside diameter of the cup at its small end");
        v("chamfer_mm", &R::chamfer_mm, optional, size_mm, "smallest chamfer dimension; 0: unknown");
        v("C_N", &R::C_N, required, strength_N, "basic dynamic rating");
        v("C0_N", &R::C0_N, required, strength_N, "basic static rating");
        v("Cu_N", &R::Cu_N, optional, strength_N, "fatigue load limit");
        v("f0", &R::f0, optional, factor, "factor for X and Y of ball bearings (ISO 76)");
        v("contact_angle_deg", &R::contact_angle_deg, optional, Limits{"deg", 0.0, 90.0}, "nominal contact angle");
        v("e", &R::e, optional, factor, "stated limit of Fa/Fr");
        v("X", &R::X, optional, factor, "stated radial factor");
        v("Y", &R::Y, optional, factor, "stated axial factor");
        v("Y0", &R::Y0, optional, factor, "stated static axial factor");
        v("pressure_centre_mm", &R::pressure_centre_mm, optional, place_mm, "a, from the back face");
        v("axial_limit_N", &R::axial_limit_N, optional, strength_N, "stated greatest axial load");
        v("speed_limit_rpm", &R::speed_limit_rpm, optional, Limits{"rpm", 0.0, 1e7}, "stated speed limit");
        v("mass_kg", &R::mass_kg, optional, mass_kg, "of the bearing");
        v("geometry", &R::geometry, optional, "inside of the bearing");
        v("source", &R::source, required, "where the ratings come from");
        v("provenance", &R::provenance, required, "how far the row can be trusted");
        v("note", &R::note, optional, "anything else about the row");
    }
};

template <> struct Keys<SetRow> {
    static constexpr const char* name = "SetRow";
    template <class V> static void visit(V&& v)
    {
        v("carries", &SetRow::carries, optional, "of a one-way bearing: plus keeps the shaft from moving to +x");
        v("row", &SetRow::row, required, "the whole catalogue row");
    }
};

template <> struct Keys<BearingChoice> {
    static constexpr const char* name = "BearingChoice";
    template <class V> static void visit(V&& v)
    {
        v("family", &BearingChoice::family, required, "kind of bearing");
        v("arrangement", &BearingChoice::arrangement, optional, "of a set: O back to back, X face to face, tandem");
        v.rows("rows", &BearingChoice::rows, required, "one row; of a set or composite several, from left to right");
    }
};

template <> struct Keys<Holds> {
    static constexpr const char* name = "Holds";
    template <class V> static void visit(V&& v)
    {
        v("inner_left", &Holds::inner_left, optional, "inner ring, left side");
        v("inner_right", &Holds::inner_right, optional, "inner ring, right side");
        v("outer_left", &Holds::outer_left, optional, "outer ring, left side");
        v("outer_right", &Holds::outer_right, optional, "outer ring, right side");
    }
};

template <> struct Keys<RadialGap> {
    static constexpr const char* name = "RadialGap";
    template <class V> static void visit(V&& v)
    {
        v("gap_mm", &RadialGap::gap_mm, required, size_mm, "radial gap c");
        v("stiffness", &RadialGap::stiffness, required, Limits{"N/mm^n", 0.0, 1e15}, "k in k (r - c)^n");
        v("exponent", &RadialGap::exponent, optional, Limits{"", 0.0, 10.0, true}, "n");
    }
};

template <> struct Keys<PrescribedDisplacement> {
    static constexpr const char* name = "PrescribedDisplacement";
    template <class V> static void visit(V&& v)
    {
        using P = PrescribedDisplacement;
        v("x_mm", &P::x_mm, optional, place_mm, "displacement of the housing bore along x");
        v("y_mm", &P::y_mm, optional, place_mm, "along y");
        v("z_mm", &P::z_mm, optional, place_mm, "along z");
        v("ry_mrad", &P::ry_mrad, optional, tilt_range, "rotation about y");
        v("rz_mrad", &P::rz_mrad, optional, tilt_range, "rotation about z");
    }
};

template <> struct Keys<Support> {
    static constexpr const char* name = "Support";
    template <class V> static void visit(V&& v)
    {
        v("id", &Support::id, required, "unique among parts and supports");
        v("name", &Support::name, optional, "shown name");
        v("x_mm", &Support::x_mm, required, place_mm, "middle of the seat");
        v("role", &Support::role, required, "what the support does along the shaft");
        v("carries", &Support::carries, optional, "of a one-way support: plus keeps the shaft from moving to +x");
        v("bearing", &Support::bearing, optional, "the chosen bearing; open: not chosen");
        v("greatest_outer_mm", &Support::greatest_outer_mm, optional, size_mm, "space: greatest outside diameter");
        v("greatest_width_mm", &Support::greatest_width_mm, optional, size_mm, "space: greatest width");
        v("required_L_h", &Support::required_L_h, optional, life_h, "required life here, instead of the duty's");
        v("reliability_percent", &Support::reliability_percent, optional, reliability_range, "here, instead of the duty's");
        v("required_S0", &Support::required_S0, optional, factor, "required static safety");
        v("play_mm", &Support::play_mm, optional, size_mm, "end play of an end-play pair");
        v("mounting_error_mrad", &Support::mounting_error_mrad, optional, positive_tilt, "misalignment by mounting");
        v("shaft_fit", &Support::shaft_fit, optional, "tolerance class of the seat, such as k6");
        v("housing_fit", &Support::housing_fit, optional, "tolerance class of the housing bore, such as H7");
        v("holds", &Support::holds, optional, "what keeps each side of each ring in place");
        v("stiffness", &Support::elastic, optional, Limits{"N/mm, N/rad, Nmm/mm, Nmm/rad", -1e18, 1e18},
          "5 x 5 in the order x, y, z, ry, rz at the effective centre; open: rigid");
        v("gap", &Support::gap, optional, "radial gap and contact law");
        v("prescribed", &Support::prescribed, optional, "given displacement of the housing bore");
    }
};

// --- Duty, surroundings, requirements --------------------------------------------------------------------------

template <> struct Keys<PartInCase> {
    static constexpr const char* name = "PartInCase";
    template <class V> static void visit(V&& v)
    {
        v("power_factor", &PartInCase::power_factor, optional, signed_factor, "multiplies the case's factor for this part");
        v("active", &PartInCase::active, optional, "false: the part loads nothing in this case");
    }
};

template <> struct Keys<LoadCase> {
    static constexpr const char* name = "LoadCase";
    template <class V> static void visit(V&& v)
    {
        v("id", &LoadCase::id, required, "unique among load cases");
        v("name", &LoadCase::name, optional, "shown name");
        v("time_share", &LoadCase::time_share, required, Limits{"", 0.0, 1000.0}, "of the running time; the sum should be 1");
        v("speed_rpm", &LoadCase::speed_rpm, required, speed_rpm, "positive by the right-hand rule about +x; 0: standstill");
        v("power_factor", &LoadCase::power_factor, optional, signed_factor, "multiplies every power and torque");
        v("free_load_factor", &LoadCase::free_load_factor, optional, signed_factor,
          "multiplies free forces, moments, distributed loads and thrust");
        v("peak_factor", &LoadCase::peak_factor, optional, factor, "for static safety");
        v("shaft_temperature_C", &LoadCase::shaft_temperature_C, optional, temperature_C, "of the shaft");
        v("housing_temperature_C", &LoadCase::housing_temperature_C, optional, temperature_C, "of the housing");
        v("parts", &LoadCase::parts, optional, "what single parts do differently, by part id");
    }
};

template <> struct Keys<Duty> {
    static constexpr const char* name = "Duty";
    template <class V> static void visit(V&& v)
    {
        v("required_L_h", &Duty::required_L_h, optional, life_h, "required life; open: the life is not judged");
        v("reliability_percent", &Duty::reliability_percent, optional, reliability_range, "for which the life holds");
        v("basis", &Duty::basis, optional, "life that must reach the requirement");
        v("K_A", &Duty::K_A, optional, positive_factor, "application factor on torque-borne forces");
        v("load_cases", &Duty::load_cases, optional, "load cases");
    }
};

template <> struct Keys<Surroundings> {
    static constexpr const char* name = "Surroundings";
    template <class V> static void visit(V&& v)
    {
        using S = Surroundings;
        v("temperature_C", &S::temperature_C, optional, temperature_C, "at the bearings");
        v("ambient_C", &S::ambient_C, optional, temperature_C, "of the room");
        v("assembly_C", &S::assembly_C, optional, temperature_C, "at assembly");
        v("lubricant", &S::lubricant, optional, "what lubricates the bearings");
        v("viscosity_grade", &S::viscosity_grade, optional, Limits{"mm2/s", 0.0, 1e5}, "ISO VG of the oil or base oil");
        v("dirt", &S::dirt, optional, "contamination");
        v("moist", &S::moist, optional, "moisture reaches the bearings");
        v("housing_material", &S::housing_material, optional, "material of the housing");
        v("attitude_deg", &S::attitude_deg, optional, slope_deg, "elevation of the +x end above the horizontal");
        v("accuracy", &S::accuracy, optional, "how much running accuracy counts");
        v("quiet", &S::quiet, optional, "how much quiet running counts");
        v("guide", &S::guide, optional, "how much tight axial guidance counts");
        v("stiffness_wish", &S::stiffness_wish, optional, "direction in which stiffness counts");
        v("motion", &S::motion, optional, "kind of motion");
        v("swing_deg", &S::swing_deg, optional, Limits{"deg", 0.0, 36000.0}, "oscillation: whole angle from end to end");
        v("swings_per_min", &S::swings_per_min, optional, Limits{"1/min", 0.0, 1e6}, "oscillation: swings in a minute");
        v("separable_wanted", &S::separable_wanted, optional, "rings must be mounted apart");
        v("allow_plain", &S::allow_plain, optional, "plain bearings may be suggested");
        v("allow_special", &S::allow_special, optional, "special kinds may be suggested");
        v("profile", &S::profile, optional, "name of the weights of the suggestions");
        v("weights", &S::weights, optional, Limits{"", 0.0, 1000.0}, "changed weights, by criterion");
    }
};

template <> struct Keys<Requirement> {
    static constexpr const char* name = "Requirement";
    template <class V> static void visit(V&& v)
    {
        v("id", &Requirement::id, required, "unique among requirements");
        v("kind", &Requirement::kind, required, "what is limited");
        v("where", &Requirement::where, optional, "id of a part or support");
        v("x_mm", &Requirement::x_mm, optional, place_mm, "place on the shaft, instead of `where`");
        v("limit", &Requirement::limit, required, Limits{"mm, mrad, h or 1 by kind", 0.0, 1e9},
          "deflection and slope: at most; life, safety: at least");
        v("text", &Requirement::text, optional, "the user's words");
    }
};

// --- Whole document --------------------------------------------------------------------------------------------

template <> struct Keys<TitleBlock> {
    static constexpr const char* name = "TitleBlock";
    template <class V> static void visit(V&& v)
    {
        v("title", &TitleBlock::title, optional, "title of the arrangement");
        v("number", &TitleBlock::number, optional, "drawing or order number");
        v("author", &TitleBlock::author, optional, "who made it");
        v("organisation", &TitleBlock::organisation, optional, "for whom the author works");
        v("date", &TitleBlock::date, optional, "as text, preferably YYYY-MM-DD");
        v("purpose", &TitleBlock::purpose, optional, "what the arrangement is for, in a line");
    }
};

template <> struct Keys<Remark> {
    static constexpr const char* name = "Remark";
    template <class V> static void visit(V&& v)
    {
        v("id", &Remark::id, required, "unique among remarks");
        v("path", &Remark::path, optional, "what it is about, such as supports.B.x_mm");
        v("author", &Remark::author, optional, "who wrote it");
        v("date", &Remark::date, optional, "as text, preferably YYYY-MM-DD");
        v("text", &Remark::text, required, "the remark");
        v("resolved", &Remark::resolved, optional, "settled");
    }
};

template <> struct Keys<Acceptance> {
    static constexpr const char* name = "Acceptance";
    template <class V> static void visit(V&& v)
    {
        v.id("id", &Acceptance::id, "unique among acceptances");
        v("code", &Acceptance::code, required, "code of the accepted finding");
        v("path", &Acceptance::path, optional, "path of the accepted finding");
        v("reason", &Acceptance::reason, required, "why it is accepted");
        v("name", &Acceptance::name, required, "who takes it on themselves");
        v("date", &Acceptance::date, optional, "as text, preferably YYYY-MM-DD");
        v("values", &Acceptance::values, optional, Limits{"", -1e18, 1e18}, "numbers of the finding when it was accepted");
    }
};

template <> struct Keys<Revision> {
    static constexpr const char* name = "Revision";
    template <class V> static void visit(V&& v)
    {
        v("letter", &Revision::letter, required, "of the revision");
        v("date", &Revision::date, optional, "as text, preferably YYYY-MM-DD");
        v("author", &Revision::author, optional, "who released it");
        v("note", &Revision::note, optional, "what changed");
        v("digest", &Revision::digest, optional, "sha256: over the canonical JSON of the inputs");
        v.freeObject("inputs", &Revision::inputs_json, true, "the inputs of that revision");
    }
};

template <> struct Keys<MethodOptions> {
    static constexpr const char* name = "MethodOptions";
    template <class V> static void visit(V&& v)
    {
        using O = MethodOptions;
        v("shear_factor", &O::shear_factor, optional, "shear factor of the beam");
        v("shoulder_flexibility", &O::shoulder_flexibility, optional, "soft material behind a shoulder");
        v("own_weight", &O::own_weight, optional, "the shaft's own weight loads it");
        v("induced_load", &O::induced_load, optional, "induced axial force of angular contact");
    }
};

template <> struct Keys<ProposedOrigin> {
    static constexpr const char* name = "Origin";
    template <class V> static void visit(V&& v)
    {
        v.constant("origin", "proposed", "the program proposed the value, the user took it over");
        v("reason", &ProposedOrigin::reason, optional, "why it was proposed");
    }
};

template <> struct Keys<Arrangement> {
    static constexpr const char* name = "Document";
    template <class V> static void visit(V&& v)
    {
        using A = Arrangement;
        v("arrangement", &A::title, optional, "title block");
        v("shaft", &A::shaft, required, "the shaft");
        v("parts", &A::parts, optional, "what stands on the shaft and loads it");
        v("supports", &A::supports, optional, "where the shaft is held");
        v("duty", &A::duty, optional, "load cases, required life and reliability");
        v("surroundings", &A::surroundings, optional, "temperatures, lubricant, dirt, wishes");
        v("requirements", &A::requirements, optional, "requirements beside life and static safety");
        v("options", &A::options, optional, "choices of method");
        v("origins", &A::proposed, optional, "inputs that the program proposed, by path; all other set inputs are given");
        v("remarks", &A::remarks, optional, "remarks of reviewers");
        v("acceptances", &A::acceptances, optional, "accepted cautions");
        v("revisions", &A::revisions, optional, "released states");
        v.freeObject("extra", &A::extra_json, false, "free object for other systems, kept verbatim");
    }
};

} // namespace shaftwright::format
