#include "core/bearings/load_rating.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright
{
namespace
{

/// Mean over half a turn of a function of the angle. The trapezoidal rule converges faster than any power for smooth
/// periodic functions; with F1 = F2 a kink of order p remains and costs (pi/steps)^(p + 1).
template <class Function> double meanOverHalfTurn(Function function)
{
    constexpr int steps = 1024;
    double sum = 0.5 * (function(0.0) + function(std::numbers::pi));
    for (int i = 1; i < steps; ++i)
        sum += function(std::numbers::pi * i / steps);
    return sum / steps;
}

} // namespace

double meanOfLinear_N(double P_from_N, double P_to_N, double life_exponent)
{
    const double low = std::min(P_from_N, P_to_N), high = std::max(P_from_N, P_to_N), p = life_exponent;
    // Close together the difference of powers loses its digits; the middle is then the mean to that accuracy.
    if (high - low <= 1e-6 * high)
        return 0.5 * (low + high);
    const double integral = (std::pow(high, p + 1.0) - std::pow(low, p + 1.0)) / ((p + 1.0) * (high - low));
    return std::pow(integral, 1.0 / p);
}

double meanOfSine_N(double P_peak_N, double life_exponent)
{
    // |sin| over half a turn is |cos(theta/2)| over a whole one: two equal halves, one steady, one turning.
    return meanOfSteadyAndRotating_N(0.5 * P_peak_N, 0.5 * P_peak_N, life_exponent);
}

double meanOfRaisedCosine_N(double P_peak_N, double life_exponent)
{
    const double p = life_exponent;
    return P_peak_N *
           std::pow(meanOverHalfTurn([p](double angle) { return std::pow(0.5 * (1.0 + std::cos(angle)), p); }), 1.0 / p);
}

double meanOfSteadyAndRotating_N(double steady_N, double rotating_N, double life_exponent)
{
    const double a = std::abs(steady_N), b = std::abs(rotating_N), p = life_exponent, sum = a + b;
    if (!(sum > 0.0))
        return 0.0;
    const double x = a / sum, y = b / sum;
    const double mean = meanOverHalfTurn(
        [x, y, p](double angle) { return std::pow(std::max(0.0, x * x + y * y + 2.0 * x * y * std::cos(angle)), 0.5 * p); });
    return sum * std::pow(mean, 1.0 / p);
}

} // namespace shaftwright
