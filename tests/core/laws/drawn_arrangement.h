#pragma once
// Whole arrangements drawn at random: 2 to 4 supports with generic bearings, 1 to 6 parts of all kinds, 1 to 3 cases.
// All numbers lie on coarse grids, so that a counter-example can be read and shrunk.

#include "core/model/arrangement.h"

namespace shaftwright::test
{

/// Draws from rapidcheck; to be called inside a property only.
[[nodiscard]] Arrangement drawArrangement();

/// x -> L - x: hands and apex sides change; speeds, power senses and directions stay; moments are axial vectors.
[[nodiscard]] Arrangement mirrored(const Arrangement& arrangement);

/// Every load times k: powers, torques, forces, moments, strand forces, masses, unbalance. The shaft's own weight is off in both.
[[nodiscard]] Arrangement withLoadsTimes(Arrangement arrangement, double k);

} // namespace shaftwright::test
