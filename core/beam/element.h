#pragma once
// One element: a uniform or conical piece between two nodes. Internal to the beam.

#include "core/beam/section.h"

#include <Eigen/Core>

#include <array>
#include <cstddef>
#include <utility>

namespace shaftwright::beam
{

using Mat6 = Eigen::Matrix<double, 6, 6>;
using Vec6 = Eigen::Matrix<double, 6, 1>;

/// Order of the six coordinates and of the forces that go with them.
enum Coordinate { kU = 0, kV = 1, kW = 2, kRx = 3, kRy = 4, kRz = 5 };

struct Element {
    double x0_mm = 0.0, length_mm = 0.0;
    // Diameters at the left node and their change per mm.
    double outer0_mm = 0.0, outer_slope = 0.0;
    double bore0_mm = 0.0, bore_slope = 0.0;
    bool uniform = true;
    Flexibility flexibility; ///< of a uniform element
    Properties properties;
    double shoulder_left = 0.0, shoulder_right = 0.0; ///< rotation per moment of a shoulder at the end, rad/Nmm

    [[nodiscard]] Flexibility flexibilityAt(double s_mm) const
    {
        return uniform ? flexibility
                       : sectionFlexibility(properties, outer0_mm + outer_slope * s_mm, bore0_mm + bore_slope * s_mm);
    }
};

/// The element of `piece` from x0 to x1. `given` replaces the properties of a round section when not null.
[[nodiscard]] Element makeElement(const Piece& piece, const Properties& properties, double x0_mm, double x1_mm,
                                  const Flexibility* given);

/// Free end of a piece clamped at its left: displacement and rotation per unit force and moment there (f11, f12, f22),
/// elongation per unit force. Sums of positive terms: nothing cancels, however short an element is.
struct BendingFlexibility {
    double f11 = 0.0, f12 = 0.0, f22 = 0.0, axial = 0.0;
    BendingFlexibility& operator+=(const BendingFlexibility& other);
};
/// What one element adds, seen from a point `beyond_mm` to the right of its right node. Shoulders included.
[[nodiscard]] BendingFlexibility flexibilityAbout(const Element& element, double beyond_mm);

/// State at distance s from the left node, from the state on the right side of that node (exact integration).
[[nodiscard]] State advance(const Element& element, const State& start, const ElementLoad& load, double temperatureRise_K,
                            double s_mm);

/// Internal forces only, at distance s (statics; no stiffness in it).
void advanceForces(State& state, const ElementLoad& load, double s_mm);

} // namespace shaftwright::beam
