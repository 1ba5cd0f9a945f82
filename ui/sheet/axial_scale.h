#pragma once

namespace shaftwright::ui {

/// The one mapping of x along the shaft to pixels: drawing, strips, ruler, hairline and cards share it.
struct AxialScale {
    double zero_px = 0.0;      ///< pixel of x = 0
    double px_per_mm = 1.0;    ///< pixels per model mm, > 0

    [[nodiscard]] double toPx(double x_mm) const { return zero_px + x_mm * px_per_mm; }
    [[nodiscard]] double toMm(double px) const { return (px - zero_px) / px_per_mm; }
};

} // namespace shaftwright::ui
