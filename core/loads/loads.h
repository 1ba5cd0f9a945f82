#pragma once
// From parts and load cases to forces and moments on the axis of the shaft. s is the sign of the torque
// about +x, h the hand of the teeth (+1 right, -1 left, 0 none), i -1 for external and +1 for ring gears.

#include "core/base/derivation.h"
#include "core/base/finding.h"
#include "core/model/arrangement.h"
#include "core/model/defaults.h"

#include <vector>

namespace shaftwright
{

/// Force and moment of one part on the shaft in one case, about the axis point (x, 0, 0).
struct PartLoad {
    PartId part;
    double x_mm = 0.0;
    Vector3 force_N, moment_Nmm;    ///< steady
    Vector3 rotating_force_N;       ///< amplitude of a force that turns with the shaft: at angle 0 along y (x unused)
    double worst_direction_N = 0.0; ///< radial force of unknown direction
    double worst_moment_Nmm = 0.0;  ///< couple of unknown direction (cardan)
    double torque_Nmm = 0.0;        ///< Mx signed
    double tangential_N = 0.0, radial_N = 0.0,
           axial_N = 0.0;     ///< components at the mesh for report and drawing (0 where meaningless)
    double diameter_mm = 0.0; ///< diameter at which the tangential force acts
    bool distributed = false;
    double end_mm = 0.0; ///< distributed: q below between x_mm and end_mm
    Vector3 q0_N_mm, q1_N_mm;
    double m0_Nmm_mm = 0.0, m1_Nmm_mm = 0.0;
    Derivation derivation;
    friend bool operator==(const PartLoad&, const PartLoad&) = default;
};

struct CaseLoads {
    CaseId case_id;
    std::vector<PartLoad>
        parts; ///< in the order of Arrangement::parts; of inactive parts only their weight; an idler's meshes follow each other
    double torque_residual_Nmm = 0.0; ///< T(L+) = -sum Mx
    double K_N = 0.0;                 ///< sum of external axial forces without own weight
    Vector3 gravity_m_s2;             ///< direction times g in shaft axes; zero when own weight is off
    friend bool operator==(const CaseLoads&, const CaseLoads&) = default;
};

struct LoadResult {
    std::vector<CaseLoads> cases;        ///< one per Settled::load_cases
    std::vector<Assumption> assumptions; ///< open inputs of parts: pressure angle, friction, tension factor ...
    Findings findings;
};

/// A part that cannot be evaluated is left out of its case and a stop says why.
[[nodiscard]] LoadResult evaluateLoads(const Arrangement& arrangement, const Settled& settled);

/// Torque of a part from power and speed. T = 60e6 P / (2 pi |n|) Nmm.
[[nodiscard]] double torque_Nmm(double power_kW, double speed_rpm);

/// Diameter that a part shows on the drawing and acts at: pitch, datum or outside diameter; 0 for free loads.
[[nodiscard]] double actingDiameter_mm(const Part& part);

} // namespace shaftwright
