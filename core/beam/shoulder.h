#pragma once
// Extra bending compliance of sharp shoulders. Internal to the beam.

#include "core/beam/beam.h"

#include <vector>

namespace shaftwright::beam
{

/// Extra length of thin shaft that one shoulder is worth, mm.
/// @param thin_mm, thick_mm  outer diameters, thin < thick
/// @param bore_mm            bore of the thin side
/// @param collar_width_mm    width of the thick part when it is a collar (thinner on both sides); 0: no collar
/// Source: fit to a solid model of a sharp shoulder in pure bending (axisymmetric, first harmonic, nu 0.3), error of the
/// fit below 2e-4 of the thin diameter for thick/thin 1.05 to 3; collars and bores from the same model.
[[nodiscard]] double shoulderExtraLength_mm(double thin_mm, double thick_mm, double bore_mm, double collar_width_mm);

/// The shoulder at one piece boundary.
struct Shoulder {
    double extra_length_mm = 0.0; ///< 0: none
    bool thin_is_left = false;
};

/// One entry per boundary between pieces (pieces - 1), in order; all zero when the option is off.
[[nodiscard]] std::vector<Shoulder> shoulders(const Model& model);

} // namespace shaftwright::beam
