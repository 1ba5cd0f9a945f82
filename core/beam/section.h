#pragma once
// Section properties of round pieces. Internal to the beam.

#include "core/beam/beam.h"

namespace shaftwright::beam
{

/// Reciprocal stiffnesses of one section: 1/EA, 1/GJ, 1/EI, 1/(kappa G A). Reciprocals, because "shear off" is then
/// a plain zero and because a cone is integrated from them.
struct Flexibility {
    double axial = 0.0, torsion = 0.0, bending = 0.0, shear = 0.0;
};

[[nodiscard]] double poissonRatio(const Properties& properties);

/// Flexibilities of a ring section, outer > bore >= 0, mm.
[[nodiscard]] Flexibility sectionFlexibility(const Properties& properties, double outer_mm, double bore_mm);

/// Volume of a piece (frustum less frustum), mm^3.
[[nodiscard]] double volume_mm3(const Piece& piece);

/// Mass of all pieces, kg.
[[nodiscard]] double mass_kg(const Model& model);

} // namespace shaftwright::beam
