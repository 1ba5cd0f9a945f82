#pragma once
// Force system of one part in one load case. Internal to core/loads.

#include "core/loads/loads.h"

#include <vector>

namespace shaftwright::loads {

struct MeshTorque {
    std::size_t mesh_index = 0;
    double Mx_Nmm = 0.0;         ///< nominal torque of the part on the shaft, signed about +x
};

struct PartContext {
    const Part* part = nullptr;
    const LoadCase* load_case = nullptr;
    std::vector<MeshTorque> torques;
    Vector3 gravity_m_s2;        ///< acts on stated masses; the shaft's own weight is the beam's
    double K_A = 1.0;
    double shaft_diameter_mm = 0.0;
    std::vector<Assumption>* assumptions = nullptr; ///< null: already listed by an earlier case
    Findings* findings = nullptr;
};

/// Appends the load (several for an idler). Appends nothing and a stop when the part's inputs make no force system.
void appendPartLoads(const PartContext& context, std::vector<PartLoad>& loads);

} // namespace shaftwright::loads
