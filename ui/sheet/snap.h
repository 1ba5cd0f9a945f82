#pragma once
// Where a thing that is dragged along the shaft comes to rest.

#include "core/model/arrangement.h"

#include <QString>

#include <vector>

namespace shaftwright::ui
{

/// Places that attract the middle of `subject`: faces on shoulders, middles of segments, other planes. Model mm, sorted.
[[nodiscard]] std::vector<double> snapPlaces(const Arrangement& arrangement, const QString& subject);
/// Places that attract the shoulder at the right end of segment `index`.
[[nodiscard]] std::vector<double> shoulderSnapPlaces(const Arrangement& arrangement, std::size_t index);
/// The nearest place within `reach_mm`, else x rounded to a step that suits the zoom.
[[nodiscard]] double snapped(double x_mm, const std::vector<double>& places, double reach_mm, double step_mm);
/// 1, 0.5, 0.1 ... mm: the largest step that is below two pixels.
[[nodiscard]] double dragStep_mm(double px_per_mm);

} // namespace shaftwright::ui
