#include "core/beam/element.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright::beam
{

namespace
{

constexpr int kGaussPoints = 12;

struct GaussRule {
    std::array<double, kGaussPoints> x{}, w{}; // on 0..1
};

// Roots of the Legendre polynomial by Newton's method; twelve numbers typed by hand could hide a wrong digit.
GaussRule makeGaussRule()
{
    GaussRule rule;
    for (int i = 0; i < kGaussPoints; ++i) {
        double z = std::cos(std::numbers::pi * (i + 0.75) / (kGaussPoints + 0.5));
        double derivative = 1.0;
        for (int iteration = 0; iteration < 50; ++iteration) {
            double p1 = 1.0, p2 = 0.0;
            for (int k = 0; k < kGaussPoints; ++k) {
                const double p3 = p2;
                p2 = p1;
                p1 = ((2.0 * k + 1.0) * z * p2 - k * p3) / (k + 1.0);
            }
            derivative = kGaussPoints * (z * p1 - p2) / (z * z - 1.0);
            const double step = p1 / derivative;
            z -= step;
            if (std::abs(step) < 1e-16)
                break;
        }
        rule.x[static_cast<std::size_t>(i)] = 0.5 * (1.0 - z);
        rule.w[static_cast<std::size_t>(i)] = 1.0 / ((1.0 - z * z) * derivative * derivative);
    }
    return rule;
}

const GaussRule& gaussRule()
{
    static const GaussRule rule = makeGaussRule();
    return rule;
}

// Calls f(s, weight) at the Gauss points of [0, end]. A steep cone is cut so that no part changes its diameter (or wall)
// by more than a factor of two: 12 points then integrate 1/d^4 to 1e-14.
template <class F> void quadrature(const Element& element, double end_mm, F&& f)
{
    const GaussRule& rule = gaussRule();
    const auto run = [&](double a, double b) {
        for (std::size_t k = 0; k < kGaussPoints; ++k)
            f(a + (b - a) * rule.x[k], (b - a) * rule.w[k]);
    };
    if (element.uniform) {
        run(0.0, end_mm);
        return;
    }
    const double outerEnd = element.outer0_mm + element.outer_slope * end_mm;
    const double wall0 = element.outer0_mm - element.bore0_mm;
    const double wallEnd = outerEnd - (element.bore0_mm + element.bore_slope * end_mm);
    const auto steepness = [](double a, double b) { return std::abs(std::log(b / a)); };
    const bool byWall = steepness(wall0, wallEnd) > steepness(element.outer0_mm, outerEnd);
    const double from = byWall ? wall0 : element.outer0_mm;
    const double to = byWall ? wallEnd : outerEnd;
    const int parts = std::max(1, static_cast<int>(std::ceil(steepness(from, to) / std::log(2.0) - 1e-9)));
    double a = 0.0;
    for (int k = 1; k <= parts; ++k) {
        const double b = k == parts ? end_mm : end_mm * (from * std::pow(to / from, double(k) / parts) - from) / (to - from);
        run(a, b);
        a = b;
    }
}

} // namespace

Element makeElement(const Piece& piece, const Properties& properties, double x0_mm, double x1_mm, const Flexibility* given)
{
    Element e;
    e.x0_mm = x0_mm;
    e.length_mm = x1_mm - x0_mm;
    e.properties = properties;
    e.uniform = given != nullptr || (piece.outer0_mm == piece.outer1_mm && piece.bore0_mm == piece.bore1_mm);
    if (e.uniform) {
        e.outer0_mm = piece.outer0_mm;
        e.bore0_mm = piece.bore0_mm;
        e.flexibility = given != nullptr ? *given : sectionFlexibility(properties, e.outer0_mm, e.bore0_mm);
        return e;
    }
    const double length = piece.x1_mm - piece.x0_mm;
    e.outer_slope = (piece.outer1_mm - piece.outer0_mm) / length;
    e.bore_slope = (piece.bore1_mm - piece.bore0_mm) / length;
    e.outer0_mm = piece.outer0_mm + e.outer_slope * (x0_mm - piece.x0_mm);
    e.bore0_mm = piece.bore0_mm + e.bore_slope * (x0_mm - piece.x0_mm);
    return e;
}

BendingFlexibility& BendingFlexibility::operator+=(const BendingFlexibility& other)
{
    f11 += other.f11;
    f12 += other.f12;
    f22 += other.f22;
    axial += other.axial;
    return *this;
}

BendingFlexibility flexibilityAbout(const Element& e, double beyond_mm)
{
    const double h = e.length_mm;
    const double r0 = beyond_mm + h; // distance of the left node from the point
    const double r1 = beyond_mm;
    BendingFlexibility sum;
    if (e.uniform) {
        const Flexibility& f = e.flexibility;
        sum.f11 = h * ((r0 * r0 + r0 * r1 + r1 * r1) / 3.0 * f.bending + f.shear);
        sum.f12 = h * 0.5 * (r0 + r1) * f.bending;
        sum.f22 = h * f.bending;
        sum.axial = h * f.axial;
    } else {
        quadrature(e, h, [&](double s, double weight) {
            const Flexibility f = e.flexibilityAt(s);
            const double r = r0 - s;
            sum.f11 += weight * (r * r * f.bending + f.shear);
            sum.f12 += weight * r * f.bending;
            sum.f22 += weight * f.bending;
            sum.axial += weight * f.axial;
        });
    }
    sum.f11 += r0 * r0 * e.shoulder_left + r1 * r1 * e.shoulder_right;
    sum.f12 += r0 * e.shoulder_left + r1 * e.shoulder_right;
    sum.f22 += e.shoulder_left + e.shoulder_right;
    return sum;
}

void advanceForces(State& state, const ElementLoad& load, double s)
{
    const auto lost = [&](int k) { return s * (load.q0[k] + s * (load.q1[k] / 2.0 + s * load.q2[k] / 3.0)); };
    const auto bent = [&](int k) { return s * s * (load.q0[k] / 2.0 + s * (load.q1[k] / 6.0 + s * load.q2[k] / 12.0)); };
    state.Mz_Nmm += -state.Vy_N * s + bent(1);
    state.My_Nmm += state.Vz_N * s - bent(2);
    state.N_N -= lost(0);
    state.Vy_N -= lost(1);
    state.Vz_N -= lost(2);
    state.T_Nmm -= s * (load.m0 + s * load.m1 / 2.0);
    state.x_mm += s;
}

State advance(const Element& element, const State& start, const ElementLoad& load, double temperatureRise_K, double s)
{
    State end = start;
    advanceForces(end, load, s);
    const double heat = element.properties.expansion_per_K * temperatureRise_K * s;
    double u = 0.0, rx = 0.0, thz = 0.0, thy = 0.0, v = 0.0, w = 0.0; // what the internal forces add
    if (element.uniform) {
        const Flexibility& f = element.flexibility;
        const double s2 = s * s / 2.0, s3 = s2 * s / 3.0, s4 = s3 * s / 4.0, s5 = s4 * s / 5.0; // s^n/n!
        const auto& a = load.q0;
        const auto& c = load.q1;
        u = f.axial * (start.N_N * s - a[0] * s2 - c[0] * s3);
        rx = f.torsion * (start.T_Nmm * s - load.m0 * s2 - load.m1 * s3);
        thz = f.bending * (start.Mz_Nmm * s - start.Vy_N * s2 + a[1] * s3 + c[1] * s4);
        thy = f.bending * (start.My_Nmm * s + start.Vz_N * s2 - a[2] * s3 - c[2] * s4);
        v = f.bending * (start.Mz_Nmm * s2 - start.Vy_N * s3 + a[1] * s4 + c[1] * s5) +
            f.shear * (start.Vy_N * s - a[1] * s2 - c[1] * s3);
        w = f.bending * (-start.My_Nmm * s2 - start.Vz_N * s3 + a[2] * s4 + c[2] * s5) +
            f.shear * (start.Vz_N * s - a[2] * s2 - c[2] * s3);
    } else {
        quadrature(element, s, [&](double t, double weight) {
            const Flexibility f = element.flexibilityAt(t);
            State inner = start;
            advanceForces(inner, load, t);
            u += weight * inner.N_N * f.axial;
            rx += weight * inner.T_Nmm * f.torsion;
            thz += weight * inner.Mz_Nmm * f.bending;
            thy += weight * inner.My_Nmm * f.bending;
            v += weight * ((s - t) * inner.Mz_Nmm * f.bending + inner.Vy_N * f.shear);
            w += weight * (-(s - t) * inner.My_Nmm * f.bending + inner.Vz_N * f.shear);
        });
    }
    end.u_mm = start.u_mm + u + heat;
    end.v_mm = start.v_mm + start.rz_rad * s + v;
    end.w_mm = start.w_mm - start.ry_rad * s + w;
    end.rx_rad = start.rx_rad + rx;
    end.ry_rad = start.ry_rad + thy;
    end.rz_rad = start.rz_rad + thz;
    return end;
}

} // namespace shaftwright::beam
