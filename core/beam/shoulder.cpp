#include "core/beam/shoulder.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace shaftwright::beam
{

namespace
{

template <std::size_t N> double interpolate(const std::array<double, N>& xs, const std::array<double, N>& ys, double x)
{
    if (x <= xs.front())
        return ys.front();
    for (std::size_t i = 1; i < N; ++i) {
        if (x <= xs[i])
            return ys[i - 1] + (ys[i] - ys[i - 1]) * (x - xs[i - 1]) / (xs[i] - xs[i - 1]);
    }
    return ys.back();
}

constexpr std::array<double, 3> kRatios{1.25, 1.5, 2.0}; // thick/thin of both tables below

double boreFactor(double boreRatio, double thickRatio)
{
    const double at07 = interpolate(kRatios, std::array<double, 3>{1.13, 1.08, 1.04}, thickRatio);
    return interpolate(std::array<double, 4>{0.0, 0.3, 0.5, 0.7}, std::array<double, 4>{1.0, 1.04, 1.09, at07}, boreRatio);
}

// Share of the plain-theory stiffening that a collar of width w/d really gives.
double collarShare(double widthRatio, double thickRatio)
{
    constexpr std::array<double, 3> widths{0.1, 0.25, 0.5};
    const std::array<double, 3> shares{interpolate(widths, std::array<double, 3>{0.23, 0.35, 0.55}, widthRatio),
                                       interpolate(widths, std::array<double, 3>{0.23, 0.31, 0.45}, widthRatio),
                                       interpolate(widths, std::array<double, 3>{0.23, 0.29, 0.41}, widthRatio)};
    return interpolate(kRatios, shares, thickRatio);
}

} // namespace

double shoulderExtraLength_mm(double thin_mm, double thick_mm, double bore_mm, double collar_width_mm)
{
    if (thick_mm <= thin_mm)
        return 0.0;
    const double ratio = thin_mm / thick_mm;
    double extra = 0.2512 * thin_mm * std::pow(1.0 - std::pow(ratio, 2.885), 1.710);
    extra *= boreFactor(bore_mm / thin_mm, thick_mm / thin_mm);
    if (collar_width_mm > 0.0) {
        // Two shoulders cannot take more than the collar gives: w (1 - (d/D)^4) is its whole stiffening.
        const double whole = collar_width_mm * (1.0 - std::pow(ratio, 4));
        const double widthRatio = collar_width_mm / thin_mm;
        const double lost = widthRatio >= 0.5 ? 0.3 : 0.5 * (1.0 - collarShare(widthRatio, thick_mm / thin_mm));
        extra = std::min(extra, lost * whole);
    }
    return extra;
}

std::vector<Shoulder> shoulders(const Model& model)
{
    const auto& pieces = model.pieces;
    std::vector<Shoulder> result(pieces.empty() ? 0 : pieces.size() - 1);
    if (!model.properties.shoulder_flexibility)
        return result;
    for (std::size_t i = 0; i + 1 < pieces.size(); ++i) {
        const Piece& left = pieces[i];
        const Piece& right = pieces[i + 1];
        if (left.outer1_mm == right.outer0_mm)
            continue; // a step of the bore alone is not covered by the model behind the fit
        const bool thinIsLeft = left.outer1_mm < right.outer0_mm;
        const double thin = std::min(left.outer1_mm, right.outer0_mm);
        const double thick = std::max(left.outer1_mm, right.outer0_mm);
        const double bore = thinIsLeft ? left.bore1_mm : right.bore0_mm;
        // Width over which the shaft stays at least as thick; a collar only if it gets thinner again before the end.
        double width = 0.0;
        bool endsInside = false;
        const std::ptrdiff_t step = thinIsLeft ? 1 : -1;
        for (std::ptrdiff_t k = static_cast<std::ptrdiff_t>(thinIsLeft ? i + 1 : i);
             k >= 0 && k < static_cast<std::ptrdiff_t>(pieces.size()); k += step) {
            const Piece& piece = pieces[static_cast<std::size_t>(k)];
            if (std::min(piece.outer0_mm, piece.outer1_mm) < thick) {
                endsInside = true;
                break;
            }
            width += piece.x1_mm - piece.x0_mm;
        }
        // A cone that starts at the shoulder and tapers has no width of its own here.
        const double collar = endsInside ? width : 0.0;
        result[i] = {shoulderExtraLength_mm(thin, thick, bore, collar), thinIsLeft};
    }
    return result;
}

} // namespace shaftwright::beam
