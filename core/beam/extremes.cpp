#include "core/beam/extremes.h"

#include <cmath>

namespace shaftwright::beam
{

namespace
{

double deflection(const State& s)
{
    return std::hypot(s.v_mm, s.w_mm);
}
double slope(const State& s)
{
    return std::hypot(s.ry_rad, s.rz_rad);
}
double moment(const State& s)
{
    return std::hypot(s.My_Nmm, s.Mz_Nmm);
}
double shear(const State& s)
{
    return std::hypot(s.Vy_N, s.Vz_N);
}

void take(Extreme& extreme, double value, double x)
{
    // Of equal values the leftmost stays: rounding must not make the place jump from end to end while a part is dragged.
    if (value > extreme.value * (1.0 + 1e-12))
        extreme = {value, x};
}

void takeAll(CaseResult& result, const State& s)
{
    take(result.deflection_mm, deflection(s), s.x_mm);
    take(result.slope_rad, slope(s), s.x_mm);
    take(result.moment_Nmm, moment(s), s.x_mm);
    take(result.shear_N, shear(s), s.x_mm);
    take(result.torque_Nmm, std::abs(s.T_Nmm), s.x_mm);
    take(result.axial_N, std::abs(s.N_N), s.x_mm);
}

// Half the derivative along x of the square of each resultant: it changes sign at an inner extreme.
struct Derivatives {
    double deflection, slope, moment, shear, torque, axial;
};

Derivatives derivatives(const Element& element, const ElementLoad& load, const State& state, double s)
{
    const double shearFlexibility = element.flexibilityAt(s).shear;
    const auto q = [&](std::size_t k) { return load.q0[k] + s * (load.q1[k] + s * load.q2[k]); };
    Derivatives d{};
    d.deflection = state.v_mm * (state.rz_rad + state.Vy_N * shearFlexibility) +
                   state.w_mm * (-state.ry_rad + state.Vz_N * shearFlexibility);
    d.slope = state.rz_rad * state.Mz_Nmm + state.ry_rad * state.My_Nmm;
    d.moment = -state.Mz_Nmm * state.Vy_N + state.My_Nmm * state.Vz_N;
    d.shear = -state.Vy_N * q(1) - state.Vz_N * q(2);
    d.torque = -state.T_Nmm * (load.m0 + load.m1 * s);
    d.axial = -state.N_N * q(0);
    return d;
}

} // namespace

void findExtremes(const Mesh& mesh, CaseResult& result)
{
    constexpr int kParts = 8;
    const double tolerance = 1e-9 * (mesh.x_mm.back() - mesh.x_mm.front());
    for (const State& station : result.stations)
        takeAll(result, station);
    for (std::size_t e = 0; e < mesh.elements.size(); ++e) {
        const Element& element = mesh.elements[e];
        const ElementLoad& load = result.element_loads[e];
        const State& start = result.stations[2 * e + 1];
        const auto at = [&](double s) { return advance(element, start, load, result.temperature_rise_K, s); };
        State a = start;
        Derivatives da = derivatives(element, load, a, 0.0);
        for (int part = 1; part <= kParts; ++part) {
            const double from = element.length_mm * (part - 1) / kParts;
            const double to = element.length_mm * part / kParts;
            const State b = part == kParts ? result.stations[2 * e + 2] : at(to);
            const Derivatives db = derivatives(element, load, b, to);
            // A largest value lies where the derivative of the square turns from plus to minus.
            const auto look = [&](double Derivatives::*which) {
                if (!(da.*which > 0.0 && db.*which < 0.0))
                    return;
                double low = from, high = to, dLow = da.*which, dHigh = db.*which;
                State found = a;
                for (int k = 0; k < 60 && high - low > tolerance; ++k) {
                    // Regula falsi and bisection in turn: fast on the nearly straight derivative, safe on any other.
                    const double s = k % 2 == 0 ? low + (high - low) * dLow / (dLow - dHigh) : 0.5 * (low + high);
                    found = at(s);
                    const double d = derivatives(element, load, found, s).*which;
                    if (d == 0.0)
                        break;
                    (d > 0.0 ? low : high) = s;
                    (d > 0.0 ? dLow : dHigh) = d;
                }
                takeAll(result, found);
            };
            look(&Derivatives::deflection);
            look(&Derivatives::slope);
            look(&Derivatives::moment);
            look(&Derivatives::shear);
            look(&Derivatives::torque);
            look(&Derivatives::axial);
            a = b;
            da = db;
        }
    }
}

} // namespace shaftwright::beam
