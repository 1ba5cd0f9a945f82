#pragma once
// Force system of one part in one load case. Internal to core/loads.

#include "core/loads/loads.h"

#include <vector>

namespace shaftwright::loads
{

/// Torque of a part, or of one mesh of an idler, in this case.
struct MeshTorque {
    std::size_t mesh_index = 0;
    double Mx_Nmm = 0.0; ///< on the shaft, signed about +x, with factors
    double factor = 1.0; ///< power factor of case and part, signed
    double K_A = 1.0;    ///< contained in Mx
};

struct PartContext {
    const Part* part = nullptr;
    const LoadCase* load_case = nullptr;
    std::vector<MeshTorque> torques; ///< those that could be settled
    Vector3 gravity_m_s2;            ///< acts on stated masses; the shaft's own weight is the beam's
    double shaft_diameter_mm = 0.0;
    double shaft_length_mm = 0.0;
    bool active = true; ///< false: only its weight acts
    std::vector<Assumption>* assumptions = nullptr;
    Findings* findings = nullptr;
};

/// Appends the load (several for an idler). Appends nothing and a stop when the part's inputs make no force system.
void appendPartLoads(const PartContext& context, std::vector<PartLoad>& loads);

} // namespace shaftwright::loads
