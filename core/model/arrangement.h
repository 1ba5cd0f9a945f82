#pragma once
// The document as a plain value: inputs only, one fact in one place, no pointers.
// Lengths mm, forces N, moments Nmm, angles in degrees (`_deg`) since they are inputs, speeds rpm signed
// (positive = right-hand rule about +x). An unset std::optional means "left open": the program takes the frozen
// default of core/model/defaults.h and lists it as assumed.

#include "core/base/strong_id.h"
#include "core/model/catalogue_row.h"
#include "core/model/family.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace shaftwright {

struct Vector3 {
    double x = 0.0, y = 0.0, z = 0.0;
    friend bool operator==(const Vector3&, const Vector3&) = default;
};

// --- Shaft -----------------------------------------------------------------------------------------------------

enum class FeatureKind { fillet, chamfer, undercut, groove, keyway, press_seat, thread, centre_hole };

/// Something cut into or set on a segment. Kept in file and drawing; strength is not assessed yet.
struct Feature {
    FeatureId id;
    FeatureKind kind = FeatureKind::fillet;
    double position_mm = 0.0; ///< from the left end of its segment; fillet and chamfer: 0 = left edge, length = right edge
    double length_mm = 0.0;   ///< groove, keyway, seat, thread: along x; fillet: radius; chamfer: leg
    double depth_mm = 0.0;    ///< groove, keyway: depth below the surface; 0 where it has no meaning
    double width_mm = 0.0;    ///< keyway: width across; else 0
    double angle_deg = 0.0;   ///< keyway: place around the shaft; chamfer: angle (default 45)
    friend bool operator==(const Feature&, const Feature&) = default;
};

/// One cylinder (outer_end_mm unset) or cone of the shaft, solid or bored.
struct Segment {
    SegmentId id;
    double length_mm = 0.0;
    double outer_mm = 0.0;                ///< diameter at the left end
    std::optional<double> outer_end_mm;   ///< diameter at the right end of a cone
    std::optional<double> bore_mm;        ///< unset or 0: solid
    std::optional<double> bore_end_mm;    ///< conical bore
    std::vector<Feature> features;
    friend bool operator==(const Segment&, const Segment&) = default;

    [[nodiscard]] double outerRight_mm() const { return outer_end_mm.value_or(outer_mm); }
    [[nodiscard]] double boreLeft_mm() const { return bore_mm.value_or(0.0); }
    [[nodiscard]] double boreRight_mm() const { return bore_end_mm.value_or(boreLeft_mm()); }
};

/// A named material of resources/materials, or free values (then `name` is the user's).
struct Material {
    std::string name = "steel"; ///< key of the material table
    std::optional<double> modulus_MPa, shear_modulus_MPa, expansion_per_K, density_kg_m3;
    friend bool operator==(const Material&, const Material&) = default;
};

struct Shaft {
    Material material;
    std::vector<Segment> segments; ///< from left to right, x = 0 at the left face of the first
    std::optional<double> surface_hardness_HRC;
    friend bool operator==(const Shaft&, const Shaft&) = default;

    [[nodiscard]] double length_mm() const;
};

// --- Parts -----------------------------------------------------------------------------------------------------

enum class PowerSense { driving, driven }; ///< driving: gives power away; driven: takes power in
enum class Hand { none, right, left };
enum class ApexSide { plus, minus };

/// How a part takes part in the torque flow. Exactly one of the three ways.
struct Drive {
    PowerSense power = PowerSense::driven;
    std::optional<double> power_kW;
    std::optional<double> torque_Nmm;   ///< magnitude; at speed 0 signed about +x
    bool takes_remaining = false;       ///< balances what the others leave
    bool sense_fixed = false;           ///< with takes_remaining: the user insists on `power`
    friend bool operator==(const Drive&, const Drive&) = default;
};

/// A further mesh of the same gear (idler, planet): its own direction and torque.
struct FurtherMesh {
    double mesh_angle_deg = 0.0;
    Drive drive;
    friend bool operator==(const FurtherMesh&, const FurtherMesh&) = default;
};

/// Spur, helical, double-helical; external or ring gear. ISO 21771 words.
struct CylindricalGear {
    int teeth = 0;                              ///< z
    double normal_module_mm = 0.0;              ///< m_n
    double helix_deg = 0.0;                     ///< beta >= 0; 0 = spur
    Hand hand = Hand::none;
    bool double_helical = false;
    bool internal = false;                      ///< ring gear
    std::optional<double> pressure_angle_deg;   ///< alpha_n, default 20
    std::optional<double> working_diameter_mm;  ///< d_w; replaces z m_n / cos beta
    std::optional<int> mate_teeth;              ///< with centre_distance_mm: working values of shifted gears; drawing of the mate
    std::optional<double> centre_distance_mm;
    double mesh_angle_deg = 0.0;                ///< phi of the contact point about +x from +y towards +z
    double face_width_mm = 0.0;
    std::vector<FurtherMesh> further_meshes;
    friend bool operator==(const CylindricalGear&, const CylindricalGear&) = default;
};

struct BevelGear {
    int teeth = 0;
    double outer_module_mm = 0.0;               ///< m_et; with teeth gives d_e
    std::optional<double> mean_diameter_mm;     ///< d_m instead of teeth and module
    double cone_angle_deg = 0.0;                ///< delta, pitch cone half angle
    double spiral_deg = 0.0;                    ///< beta_m >= 0; 0 = straight
    Hand hand = Hand::none;
    ApexSide apex = ApexSide::plus;
    std::optional<double> pressure_angle_deg;   ///< default 20
    double mesh_angle_deg = 0.0;
    double face_width_mm = 0.0;                 ///< b, along the cone
    std::optional<double> mate_cone_angle_deg;
    std::optional<double> shaft_angle_deg;      ///< default 90, only checked with mate_cone_angle_deg
    friend bool operator==(const BevelGear&, const BevelGear&) = default;
};

struct Worm {
    int starts = 1;                             ///< z1
    double axial_module_mm = 0.0;               ///< m_x
    double reference_diameter_mm = 0.0;         ///< d_m1
    std::optional<double> lead_angle_deg;       ///< gamma instead of starts and module
    Hand hand = Hand::right;
    std::optional<double> pressure_angle_deg;   ///< default 20
    std::optional<double> friction;             ///< mu; default by sliding speed
    double mesh_angle_deg = 0.0;
    double face_width_mm = 0.0;                 ///< threaded length
    friend bool operator==(const Worm&, const Worm&) = default;
};

struct WormWheel {
    int teeth = 0;
    double reference_diameter_mm = 0.0;         ///< d_2
    double lead_angle_deg = 0.0;                ///< gamma of the worm
    Hand hand = Hand::right;
    std::optional<double> pressure_angle_deg;
    std::optional<double> friction;
    double mesh_angle_deg = 0.0;
    std::optional<int> worm_direction;          ///< +1 or -1; unset: follows from speed and hand
    double face_width_mm = 0.0;
    friend bool operator==(const WormWheel&, const WormWheel&) = default;
};

enum class BeltKind { flat, v, ribbed, toothed };

/// Strand tension of a belt: one way of stating it.
struct TensionRatio { double tight_over_slack = 5.0; friend bool operator==(const TensionRatio&, const TensionRatio&) = default; };
struct TensionFactor { double force_over_useful = 1.5; friend bool operator==(const TensionFactor&, const TensionFactor&) = default; };
struct Pretension { double strand_N = 0.0; std::optional<double> belt_mass_kg_m; friend bool operator==(const Pretension&, const Pretension&) = default; };
struct StrandForces { double tight_N = 0.0, slack_N = 0.0; friend bool operator==(const StrandForces&, const StrandForces&) = default; };
using BeltTension = std::variant<TensionFactor, TensionRatio, Pretension, StrandForces>;

struct BeltPulley {
    BeltKind kind = BeltKind::v;
    double diameter_mm = 0.0;                   ///< pitch or datum diameter
    double other_diameter_mm = 0.0;
    double centre_distance_mm = 0.0;
    bool crossed = false;
    double direction_deg = 0.0;                 ///< psi from this axis to the other
    std::optional<BeltTension> tension;         ///< default: factor of the belt kind
    std::optional<double> friction;             ///< only for the slip check
    std::optional<double> groove_deg;           ///< V groove angle
    double face_width_mm = 0.0;
    int grooves = 1;
    friend bool operator==(const BeltPulley&, const BeltPulley&) = default;
};

struct ChainSprocket {
    int teeth = 0;
    double pitch_mm = 0.0;
    int other_teeth = 0;
    double centre_distance_mm = 0.0;
    double direction_deg = 0.0;
    std::optional<double> force_factor;         ///< k, default 1.05
    std::optional<double> sag_force_N;          ///< instead of k: T2
    double face_width_mm = 0.0;
    int strands = 1;
    friend bool operator==(const ChainSprocket&, const ChainSprocket&) = default;
};

/// Direction of a force known in size only: taken as worst for each support.
struct WorstDirection { friend bool operator==(const WorstDirection&, const WorstDirection&) = default; };
struct GivenDirection { double angle_deg = 0.0; friend bool operator==(const GivenDirection&, const GivenDirection&) = default; };
using ForceDirection = std::variant<WorstDirection, GivenDirection>;

struct Coupling {
    std::optional<double> radial_force_N;       ///< residual force of a flexible coupling
    ForceDirection radial_direction;
    std::optional<double> axial_force_N;        ///< signed along +x
    std::optional<double> bending_moment_Nmm;   ///< from angular misalignment
    std::optional<double> bending_moment_axis_deg;
    std::optional<double> joint_angle_deg;      ///< cardan joint: theta
    std::optional<double> joint_direction_deg;  ///< side to which the other shaft leans
    double outer_mm = 0.0;
    double length_mm = 0.0;
    friend bool operator==(const Coupling&, const Coupling&) = default;
};

/// Fan, propeller, screw, pump wheel.
struct Impeller {
    double thrust_N = 0.0;                      ///< signed along +x
    double radial_y_N = 0.0, radial_z_N = 0.0;
    double offset_y_mm = 0.0, offset_z_mm = 0.0; ///< point of action of the thrust
    std::optional<double> rotating_radial_N;    ///< turns with the shaft
    double outer_mm = 0.0;
    double width_mm = 0.0;
    friend bool operator==(const Impeller&, const Impeller&) = default;
};

struct UnbalanceGmm { double kg_mm = 0.0; friend bool operator==(const UnbalanceGmm&, const UnbalanceGmm&) = default; };  ///< U = m e
struct BalanceGrade { double mm_s = 6.3; friend bool operator==(const BalanceGrade&, const BalanceGrade&) = default; };   ///< ISO 21940-11 G
struct MassEccentricity { double mm = 0.0; friend bool operator==(const MassEccentricity&, const MassEccentricity&) = default; };
using Unbalance = std::variant<std::monostate, BalanceGrade, UnbalanceGmm, MassEccentricity>;

/// Flywheel, disk, any weight with unbalance. Its mass is Part::mass_kg.
struct WeightBody {
    Unbalance unbalance;
    double outer_mm = 0.0;
    double width_mm = 0.0;
    friend bool operator==(const WeightBody&, const WeightBody&) = default;
};

/// Free force and moment at a point.
struct PointLoad {
    Vector3 force_N;
    Vector3 moment_Nmm;
    double offset_y_mm = 0.0, offset_z_mm = 0.0;
    bool rotating = false;                      ///< turns with the shaft
    friend bool operator==(const PointLoad&, const PointLoad&) = default;
};

/// Linear between x_mm of the part and end_mm.
struct DistributedLoad {
    double end_mm = 0.0;
    Vector3 start_N_per_mm, end_N_per_mm;
    double start_torque_Nmm_per_mm = 0.0, end_torque_Nmm_per_mm = 0.0;
    friend bool operator==(const DistributedLoad&, const DistributedLoad&) = default;
};

using PartBody = std::variant<CylindricalGear, BevelGear, Worm, WormWheel, BeltPulley, ChainSprocket, Coupling,
                              Impeller, WeightBody, PointLoad, DistributedLoad>;

/// What stands on the shaft and loads it.
struct Part {
    PartId id;
    std::string name;
    double x_mm = 0.0;                          ///< point of action: middle of the face width; distributed load: its start
    std::optional<double> mass_kg;
    std::optional<Drive> drive;                 ///< torque; unset for weights and free loads
    PartBody body;
    friend bool operator==(const Part&, const Part&) = default;
};

/// File word of the kind: cylindrical_gear, bevel_gear, worm, worm_wheel, belt_pulley, chain_sprocket, coupling,
/// impeller, weight, point_load, distributed_load.
[[nodiscard]] const char* kindOf(const Part& part);

// --- Supports --------------------------------------------------------------------------------------------------

enum class Role { locating, non_locating, adjusted, end_play, axial_only };
/// Of a one-way bearing or end-play stop: plus keeps the shaft from moving to +x.
enum class Carries { plus, minus };
enum class SetArrangement { none, O, X, tandem };

struct SetRow {
    CatalogueRow row;
    std::optional<Carries> carries;
    friend bool operator==(const SetRow&, const SetRow&) = default;
};

/// The bearing of one support: one row, or a set or composite of several.
struct BearingChoice {
    Family family = Family::deep_groove_ball;
    std::vector<SetRow> rows; ///< at least one; sets: two or three
    SetArrangement arrangement = SetArrangement::none;
    friend bool operator==(const BearingChoice&, const BearingChoice&) = default;

    /// "6208", "2x7309-40 O", "NU209 + QJ209".
    [[nodiscard]] std::string designation() const;
    /// Sum of the widths along the shaft.
    [[nodiscard]] double width_mm() const;
};

enum class HoldKind { shoulder, retaining_ring, nut, sleeve, end_plate, cover, nothing };

/// What keeps each side of each ring in place.
struct Holds {
    std::optional<HoldKind> inner_left, inner_right, outer_left, outer_right;
    friend bool operator==(const Holds&, const Holds&) = default;
};

/// 5x5 in the order x, y, z, ry, rz at the effective centre; N/mm, N/rad, Nmm/mm, Nmm/rad.
using Matrix5 = std::array<std::array<double, 5>, 5>;

struct ElasticSupport {
    Matrix5 stiffness{};
    friend bool operator==(const ElasticSupport&, const ElasticSupport&) = default;
};

/// Radial gap with contact law k (r - c)^n.
struct RadialGap {
    double gap_mm = 0.0;       ///< c
    double stiffness = 0.0;    ///< k in N/mm^n
    double exponent = 1.0;     ///< n: 1, 10/9 or 3/2 usual
    friend bool operator==(const RadialGap&, const RadialGap&) = default;
};

/// Given displacement of the housing bore: x, y, z in mm, ry, rz in mrad.
struct PrescribedDisplacement {
    double x_mm = 0.0, y_mm = 0.0, z_mm = 0.0, ry_mrad = 0.0, rz_mrad = 0.0;
    friend bool operator==(const PrescribedDisplacement&, const PrescribedDisplacement&) = default;
};

struct Support {
    SupportId id;
    std::string name;
    double x_mm = 0.0;                              ///< middle of the seat
    Role role = Role::non_locating;
    std::optional<Carries> carries;                 ///< adjusted, end play, axial only, one-way bearings
    std::optional<BearingChoice> bearing;
    std::optional<double> greatest_outer_mm, greatest_width_mm; ///< space; unset: not limited
    std::optional<double> required_L_h;             ///< replaces Duty::required_L_h here
    std::optional<double> reliability_percent;      ///< replaces Duty::reliability_percent here
    std::optional<double> required_S0;
    std::optional<double> play_mm;                  ///< end play of an end-play pair
    std::optional<double> mounting_error_mrad;
    std::string shaft_fit, housing_fit;             ///< tolerance classes as text, e.g. "k6", "H7"; empty: not settled
    Holds holds;
    std::optional<ElasticSupport> elastic;          ///< radial and tilting stiffness instead of rigid
    std::optional<RadialGap> gap;
    std::optional<PrescribedDisplacement> prescribed;
    friend bool operator==(const Support&, const Support&) = default;
};

// --- Duty, surroundings, requirements --------------------------------------------------------------------------

/// What one part does differently in one case.
struct PartInCase {
    std::optional<double> power_factor;  ///< multiplies the case's factor for this part
    bool active = true;
    friend bool operator==(const PartInCase&, const PartInCase&) = default;
};

struct LoadCase {
    CaseId id;
    std::string name;
    double time_share = 1.0;             ///< of the running time, sum 1
    double speed_rpm = 0.0;              ///< signed; 0: standstill
    double power_factor = 1.0;           ///< multiplies every power and torque
    double free_load_factor = 1.0;       ///< multiplies free forces, moments, distributed loads, thrust
    std::optional<double> peak_factor;   ///< for static safety
    std::optional<double> shaft_temperature_C, housing_temperature_C;
    std::map<PartId, PartInCase> parts;
    friend bool operator==(const LoadCase&, const LoadCase&) = default;
};

enum class LifeBasis { basic, modified };

struct Duty {
    std::vector<LoadCase> load_cases;
    std::optional<double> required_L_h;  ///< never assumed: unset means the life is not judged
    std::optional<double> reliability_percent; ///< default 90
    std::optional<LifeBasis> basis;      ///< default basic
    std::optional<double> K_A;           ///< application factor on torque-borne forces, default 1
    friend bool operator==(const Duty&, const Duty&) = default;
};

enum class Lubricant { oil, grease };
enum class Dirt { clean, normal, dirty, severe };
enum class Grade { unimportant, normal, raised, high };
enum class StiffnessWish { none, radial, axial, both };
enum class Motion { rotation, oscillation, linear };
enum class HousingMaterial { grey_iron, nodular_iron, steel, aluminium };

struct Surroundings {
    std::optional<double> temperature_C;          ///< at the bearings
    std::optional<double> ambient_C;
    std::optional<double> assembly_C;
    std::optional<Lubricant> lubricant;
    std::optional<double> viscosity_grade;        ///< ISO VG
    std::optional<Dirt> dirt;
    std::optional<bool> moist;
    std::optional<HousingMaterial> housing_material;
    std::optional<double> attitude_deg;           ///< elevation of the +x end above the horizontal, -90..90
    std::optional<Grade> accuracy, quiet, guide;
    std::optional<StiffnessWish> stiffness_wish;
    std::optional<Motion> motion;
    std::optional<double> swing_deg, swings_per_min;
    std::optional<bool> separable_wanted, allow_plain, allow_special;
    std::optional<std::string> profile;           ///< weights of the suggestions, e.g. "general_gearbox"
    std::map<std::string, double> weights;        ///< changed weights by criterion
    friend bool operator==(const Surroundings&, const Surroundings&) = default;
};

enum class RequirementKind { deflection_at, slope_at, all_supports_life, static_safety };

/// A requirement beside the life and static safety of each support.
struct Requirement {
    RequirementId id;
    RequirementKind kind = RequirementKind::deflection_at;
    std::string where;     ///< id of a part or support; empty with x_mm
    std::optional<double> x_mm;
    double limit = 0.0;    ///< mm for deflection, mrad for slope, h for life
    std::string text;      ///< the user's words
    friend bool operator==(const Requirement&, const Requirement&) = default;
};

// --- Whole document --------------------------------------------------------------------------------------------

struct TitleBlock {
    std::string title, number, author, organisation, date, purpose;
    friend bool operator==(const TitleBlock&, const TitleBlock&) = default;
};

struct Remark {
    RemarkId id;
    std::string path, author, date, text;
    bool resolved = false;
    friend bool operator==(const Remark&, const Remark&) = default;
};

/// A caution that somebody took on themselves; reopens when its numbers get worse.
struct Acceptance {
    std::string id, code, path, reason, name, date;
    std::map<std::string, double> values;
    friend bool operator==(const Acceptance&, const Acceptance&) = default;
};

struct Revision {
    std::string letter, date, author, note, digest;
    std::string inputs_json; ///< canonical JSON of the inputs of that revision; may be empty
    friend bool operator==(const Revision&, const Revision&) = default;
};

enum class ShearModel { cowper, hutchinson, nine_tenths, off };
enum class InducedLoadRule { e_times_Fr, half_Fr_over_Y };

/// Choices of method; printed in the report.
struct MethodOptions {
    std::optional<ShearModel> shear_factor;       ///< default cowper
    std::optional<bool> shoulder_flexibility;     ///< default off
    std::optional<bool> own_weight;               ///< default on
    std::optional<InducedLoadRule> induced_load;  ///< angular contact: default e_times_Fr
    friend bool operator==(const MethodOptions&, const MethodOptions&) = default;
};

/// A value that the program proposed and the user took over.
struct ProposedOrigin {
    std::string reason;
    friend bool operator==(const ProposedOrigin&, const ProposedOrigin&) = default;
};

struct Arrangement {
    TitleBlock title;
    Shaft shaft;
    std::vector<Part> parts;
    std::vector<Support> supports;
    Duty duty;
    Surroundings surroundings;
    std::vector<Requirement> requirements;
    std::vector<Remark> remarks;
    std::vector<Acceptance> acceptances;
    std::vector<Revision> revisions;
    std::map<std::string, ProposedOrigin> proposed; ///< path -> why; set inputs not listed here are `given`
    MethodOptions options;
    std::string extra_json; ///< the free object `extra`, verbatim; empty: absent
    friend bool operator==(const Arrangement&, const Arrangement&) = default;
};

[[nodiscard]] const Part* findPart(const Arrangement& arrangement, const PartId& id);
[[nodiscard]] const Support* findSupport(const Arrangement& arrangement, const SupportId& id);
[[nodiscard]] const Segment* findSegment(const Arrangement& arrangement, const SegmentId& id);
[[nodiscard]] const LoadCase* findCase(const Arrangement& arrangement, const CaseId& id);
/// x of the left face of segment `index`; index = count gives the length.
[[nodiscard]] double segmentStart_mm(const Shaft& shaft, std::size_t index);
/// Outside diameter at x; at a step the smaller one if `smaller`, else the larger one. 0 outside the shaft.
[[nodiscard]] double shaftDiameterAt_mm(const Shaft& shaft, double x_mm, bool smaller = true);

} // namespace shaftwright
