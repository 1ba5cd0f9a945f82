#pragma once
// Random shafts for the laws: 1 to 5 pieces, cylinders and cones, bored or solid, 2 to 4 supports, rigid or elastic with full
// coupling, offset centres, point and line loads, weight, heat. All numbers lie on coarse grids.

#include "tests/core/beam/beam_cases.h"

#include <cstdint>

namespace beamtest
{

class Dice
{
public:
    explicit Dice(unsigned seed) : m_state(seed * 2862933555777941757ULL + 3037000493ULL) {}
    int upTo(int most) // 0 .. most
    {
        m_state ^= m_state << 13;
        m_state ^= m_state >> 7;
        m_state ^= m_state << 17;
        return static_cast<int>((m_state >> 11) % static_cast<std::uint64_t>(most + 1));
    }
    double grid(int low, int high, double step) { return step * (low + upTo(high - low)); }
    bool coin() { return upTo(1) == 1; }

private:
    std::uint64_t m_state;
};

struct Problem {
    Model model;
    LoadCase load;
    double length_mm = 0.0;
};

inline LoadCase randomLoad(double length, unsigned seed)
{
    Dice dice(seed * 7 + 3);
    LoadCase c;
    const int forces = 1 + dice.upTo(3);
    for (int k = 0; k < forces; ++k) {
        PointLoad p;
        p.x_mm = length * dice.grid(0, 100, 0.01);
        p.force_N = {dice.grid(-5, 5, 200), dice.grid(-20, 20, 250), dice.grid(-20, 20, 250)};
        p.moment_Nmm = {dice.grid(-5, 5, 1e4), dice.grid(-5, 5, 1e4), dice.grid(-5, 5, 1e4)};
        c.point_loads.push_back(p);
    }
    if (dice.coin()) {
        LineLoad q;
        q.x0_mm = length * dice.grid(0, 50, 0.01);
        q.x1_mm = q.x0_mm + length * dice.grid(5, 50, 0.01);
        q.q0_N_mm = {dice.grid(-5, 5, 1), dice.grid(-5, 5, 5), dice.grid(-5, 5, 5)};
        q.q1_N_mm = {dice.grid(-5, 5, 1), dice.grid(-5, 5, 5), dice.grid(-5, 5, 5)};
        q.m0_Nmm_mm = dice.grid(-5, 5, 100);
        q.m1_Nmm_mm = dice.grid(-5, 5, 100);
        q.x1_mm = std::min(q.x1_mm, length);
        c.line_loads.push_back(q);
    }
    if (dice.coin())
        c.gravity = {0, 0, -9.80665};
    if (dice.coin())
        c.temperature_rise_K = dice.grid(-5, 10, 10);
    return c;
}

inline Problem randomProblem(unsigned seed)
{
    Dice dice(seed);
    for (int k = 0; k < 8; ++k)
        dice.upTo(1);
    Problem p;
    std::vector<Piece> pieces;
    const int count = 1 + dice.upTo(4);
    double x = 0;
    for (int k = 0; k < count; ++k) {
        Piece piece;
        piece.x0_mm = x;
        piece.x1_mm = x + dice.grid(2, 15, 10);
        piece.outer0_mm = dice.grid(5, 16, 5);
        piece.outer1_mm = dice.upTo(3) == 0 ? dice.grid(5, 16, 5) : piece.outer0_mm;
        if (dice.coin()) {
            piece.bore0_mm = piece.outer0_mm * dice.grid(1, 7, 0.1);
            piece.bore1_mm = piece.outer1_mm == piece.outer0_mm ? piece.bore0_mm : piece.outer1_mm * dice.grid(1, 7, 0.1);
        }
        x = piece.x1_mm;
        pieces.push_back(piece);
    }
    p.length_mm = x;
    p.model = shaft(pieces);
    const int supports = 2 + dice.upTo(2);
    for (int k = 0; k < supports; ++k) {
        Support s;
        s.id = std::string(1, static_cast<char>('A' + k));
        // Spread over the shaft, at least a tenth of it apart, overhangs on both sides possible.
        s.x_mm = p.length_mm * (dice.grid(0, 100, 0.001) + k * 0.8 / (supports - 1) + 0.05 * (k == 0 ? 0 : 1));
        s.centre_offset_mm = dice.grid(-2, 2, 0.01) * p.length_mm;
        s.rigid = {k == 0, true, true, false, false};
        if (dice.coin()) { // elastic, full coupling: K = G^T G with scaled columns is symmetric and not negative
            s.rigid = {};
            std::array<std::array<double, 5>, 5> g{};
            for (std::size_t i = 0; i < 5; ++i) {
                for (std::size_t j = 0; j < 5; ++j)
                    g[i][j] = (i == j ? 1.0 : dice.grid(-3, 3, 0.1)) * (j > 2 ? 20.0 : 1.0) * 300.0;
            }
            for (std::size_t i = 0; i < 5; ++i) {
                for (std::size_t j = 0; j < 5; ++j) {
                    for (std::size_t m = 0; m < 5; ++m)
                        s.stiffness[i][j] += g[m][i] * g[m][j];
                }
            }
        }
        if (dice.upTo(3) == 0)
            s.prescribed = {0, dice.grid(-3, 3, 0.01), dice.grid(-3, 3, 0.01), 0, 0};
        p.model.supports.push_back(s);
    }
    p.load = randomLoad(p.length_mm, seed);
    return p;
}

inline Problem mirrored(const Problem& p)
{
    const double L = p.length_mm;
    const std::array<double, 5> sign{-1, 1, 1, -1, -1};
    Problem q = p;
    q.model.pieces.clear();
    for (auto it = p.model.pieces.rbegin(); it != p.model.pieces.rend(); ++it)
        q.model.pieces.push_back({L - it->x1_mm, L - it->x0_mm, it->outer1_mm, it->outer0_mm, it->bore1_mm, it->bore0_mm});
    q.model.pieces.front().x0_mm = 0.0;
    q.model.supports.clear();
    for (auto it = p.model.supports.rbegin(); it != p.model.supports.rend(); ++it) {
        Support s = *it;
        s.x_mm = L - s.x_mm;
        s.centre_offset_mm = -s.centre_offset_mm;
        for (std::size_t i = 0; i < 5; ++i) {
            s.prescribed[i] *= sign[i];
            for (std::size_t j = 0; j < 5; ++j)
                s.stiffness[i][j] *= sign[i] * sign[j];
        }
        q.model.supports.push_back(s);
    }
    for (PointLoad& l : q.load.point_loads) {
        l.x_mm = L - l.x_mm;
        l.force_N[0] *= -1;
        l.moment_Nmm[1] *= -1;
        l.moment_Nmm[2] *= -1;
    }
    for (LineLoad& l : q.load.line_loads) {
        const LineLoad old = l;
        l.x0_mm = L - old.x1_mm;
        l.x1_mm = L - old.x0_mm;
        l.q0_N_mm = {-old.q1_N_mm[0], old.q1_N_mm[1], old.q1_N_mm[2]};
        l.q1_N_mm = {-old.q0_N_mm[0], old.q0_N_mm[1], old.q0_N_mm[2]};
        l.m0_Nmm_mm = old.m1_Nmm_mm;
        l.m1_Nmm_mm = old.m0_Nmm_mm;
    }
    return q;
}

} // namespace beamtest
