#pragma once
// 3-D Timoshenko beam of round sections, six degrees of freedom a node. Knows nothing of bearings or documents.
// Axes and signs: x along the shaft, y horizontal, z up; a reaction is the force of the support on the shaft;
// internal forces act on the face whose outward normal is +x: N' = -qx, Vy' = -qy, Vz' = -qz, T' = -mx,
// Mz' = -Vy, My' = +Vz; v' = rz + Vy/(kappa G A), w' = -ry + Vz/(kappa G A). N, mm, MPa, rad.

#include "core/base/finding.h"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace shaftwright::beam
{

using Vec3 = std::array<double, 3>;
using Vec5 = std::array<double, 5>; ///< x, y, z, ry, rz
using Mat5 = std::array<std::array<double, 5>, 5>;

/// Uniform or conical piece of the shaft. Pieces follow each other without gap or overlap.
struct Piece {
    double x0_mm = 0.0, x1_mm = 0.0;
    double outer0_mm = 0.0, outer1_mm = 0.0;
    double bore0_mm = 0.0, bore1_mm = 0.0;
};

enum class Shear { cowper, hutchinson, nine_tenths, off };

struct Properties {
    double modulus_MPa = 206000.0;
    double shear_modulus_MPa = 206000.0 / 2.6;
    double expansion_per_K = 11.5e-6;
    double density_kg_m3 = 7850.0;
    Shear shear = Shear::cowper;
    bool shoulder_flexibility = false; ///< extra bending compliance of shoulders
};

/// Radial gap: force -k (r - c)^n towards the centre for r > c.
struct Gap {
    double gap_mm = 0.0, stiffness = 0.0, exponent = 1.0;
};

struct Support {
    std::string id;
    double x_mm = 0.0;             ///< seat
    double centre_offset_mm = 0.0; ///< effective centre = x_mm + centre_offset_mm
    std::array<bool, 5> rigid{};   ///< x, y, z, ry, rz
    Mat5 stiffness{};              ///< tangent for the directions that are not rigid
    Vec5 prescribed{};             ///< displacement of the bore, mm and rad
    std::optional<Gap> gap;        ///< radial; then y and z are neither rigid nor in `stiffness`
};

struct PointLoad {
    double x_mm = 0.0;
    Vec3 force_N{}, moment_Nmm{};
};

struct LineLoad {
    double x0_mm = 0.0, x1_mm = 0.0;
    Vec3 q0_N_mm{}, q1_N_mm{};
    double m0_Nmm_mm = 0.0, m1_Nmm_mm = 0.0;
};

struct LoadCase {
    std::vector<PointLoad> point_loads;
    std::vector<LineLoad> line_loads;
    Vec3 gravity{};                  ///< g times direction, m/s^2; zero: own weight off
    double temperature_rise_K = 0.0; ///< of the shaft over the assembly state
    /// Which supports' rigid or elastic x restraint acts in this case; empty: all of them.
    std::vector<bool> holds_x;
    /// Per support, added to Support::prescribed (housing growth); empty: nothing.
    std::vector<Vec5> prescribed;
    /// Copied into `case_id` of findings that belong to this case; may stay empty.
    std::string id;
};

struct Model {
    std::vector<Piece> pieces;
    Properties properties;
    std::vector<Support> supports;
};

/// Displacements and internal forces at one place, on one side of it.
struct State {
    double x_mm = 0.0;
    double u_mm = 0.0, v_mm = 0.0, w_mm = 0.0;
    double rx_rad = 0.0, ry_rad = 0.0, rz_rad = 0.0;
    double N_N = 0.0, Vy_N = 0.0, Vz_N = 0.0;
    double T_Nmm = 0.0, My_Nmm = 0.0, Mz_Nmm = 0.0;
};

enum class Side { left, right };

/// What a support does in one case; force and moment on the shaft, moment about the effective centre.
struct Reaction {
    Vec3 force_N{};
    double my_Nmm = 0.0, mz_Nmm = 0.0;
    Vec3 displacement_mm{};            ///< of the effective centre
    double ry_rad = 0.0, rz_rad = 0.0; ///< of the shaft at the seat
    bool in_contact = true;            ///< false: the gap is open
};

struct Extreme {
    double value = 0.0;
    double x_mm = 0.0;
};

/// Line load on one element as a polynomial of the distance s from its left node: q = q0 + q1 s + q2 s^2
/// (the last term is the own weight of a cone), torque density m = m0 + m1 s.
struct ElementLoad {
    Vec3 q0{}, q1{}, q2{};
    double m0 = 0.0, m1 = 0.0;
};

/// Result of one case. `stations` holds node states, left and right limit of each node, left first:
/// 2 * nodes entries; between nodes `stateAt` integrates exactly.
struct CaseResult {
    std::vector<Reaction> reactions; ///< one per support
    std::vector<State> stations;
    double torque_residual_Nmm = 0.0;                                           ///< T(L+)
    double balance_force = 0.0, balance_moment = 0.0;                           ///< relative residual of equilibrium
    Extreme deflection_mm, slope_rad, moment_Nmm, shear_N, torque_Nmm, axial_N; ///< largest absolute resultant values
    int newton_steps = 0; ///< of the gap law; 0 when all supports are linear
    /// True when no support that acts in this case holds x: u was then fixed at the first support, whose
    /// axial reaction is what a locating support would have to carry. The caller says what that means.
    bool axially_free = false;
    std::vector<ElementLoad> element_loads; ///< one per element, for `stateAt`
    double temperature_rise_K = 0.0;
    std::vector<bool> holds_x;    ///< one per support, as it was
    std::vector<Vec5> prescribed; ///< one per support: model and case together
};

/// Everything that was found; a plain value that can be asked at any x without solving again.
struct Solution {
    Model model;
    std::vector<double> node_x_mm;
    std::vector<double> merged_x_mm; ///< places that were taken to a node less than 1e-3 mm away
    std::vector<CaseResult> cases;
    double mass_kg = 0.0, length_mm = 0.0;
    bool determinate = false; ///< radial reactions follow from equilibrium alone
    Findings findings;        ///< mechanisms, balance, ...; with a stop `cases` is empty
    [[nodiscard]] bool usable() const { return !cases.empty(); }
};

/// Solves all cases. Linear supports: cases that hold the same supports axially share one factorisation.
/// Never throws on data; findings name mechanisms (`shaft-unsupported`, `shaft-tilts`, ...).
[[nodiscard]] Solution solve(const Model& model, std::span<const LoadCase> cases);

/// Exact state at x on the given side of a jump. x is clamped to the shaft.
[[nodiscard]] State stateAt(const Solution& solution, std::size_t case_index, double x_mm, Side side);

/// Sampled curve for drawing: both limits of every node, `per_element` inner points. States in order of x.
[[nodiscard]] std::vector<State> sample(const Solution& solution, std::size_t case_index, int per_element = 8);

/// Influence of a unit load on the reactions: one entry per support, each (x, y, z, ry, rz) about its effective centre.
struct InfluenceShapes {
    std::vector<Vec5> reaction_per_fx, reaction_per_fy, reaction_per_fz, reaction_per_my, reaction_per_mz;
};
/// The shapes from which influence lines are read (Mueller-Breslau): the supported shaft with each restrained component of
/// a support displaced by one in turn, nothing else acting. Prepared once per case, then asked at any number of places.
struct InfluenceBasis {
    struct Component {
        std::size_t support = 0, direction = 0;
    };
    Solution unit; ///< one case per component
    std::vector<Component> components;
    std::size_t support_count = 0;
};
/// Valid while shaft and support tangents stay as they are in that case (gap law: tangent at its solution).
/// Empty when the solution is not usable.
[[nodiscard]] InfluenceBasis influenceBasis(const Solution& solution, std::size_t case_index);
[[nodiscard]] InfluenceShapes influenceAt(const InfluenceBasis& basis, double x_mm);

/// Reactions of every support to unit forces and moments at x, one entry per support. Prepares the basis anew:
/// for many places use `influenceBasis`.
[[nodiscard]] InfluenceShapes influenceAt(const Solution& solution, std::size_t case_index, double x_mm);

/// Shear correction factor of a round section, bore ratio m = bore/outer in 0..1, Poisson ratio 0..0.5. 0 when shear is off.
[[nodiscard]] double shearFactor(Shear shear, double poissonRatio, double boreRatio);

} // namespace shaftwright::beam
