#include "tests/reference/solid/solid_mesh.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <iterator>
#include <numbers>
#include <sstream>

namespace solidtest
{

namespace
{

using Point = std::array<double, 2>;
using Patch = std::function<Point(double, double)>;

Point onCircle(double radius, double angle)
{
    return {radius * std::cos(angle), radius * std::sin(angle)};
}
Point between(const Point& p, const Point& q, double t)
{
    return {p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])};
}

// Shape functions of the eight-node quadrilateral and their derivatives.
void quad8(double r, double s, std::array<double, 8>& n, std::array<double, 8>& dr, std::array<double, 8>& ds)
{
    static constexpr std::array<Point, 4> corner{{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}};
    for (std::size_t k = 0; k < 4; ++k) {
        const double a = corner[k][0], b = corner[k][1];
        n[k] = 0.25 * (1 + a * r) * (1 + b * s) * (a * r + b * s - 1);
        dr[k] = 0.25 * a * (1 + b * s) * (2 * a * r + b * s);
        ds[k] = 0.25 * b * (1 + a * r) * (a * r + 2 * b * s);
    }
    n[4] = 0.5 * (1 - r * r) * (1 - s);
    dr[4] = -r * (1 - s);
    ds[4] = -0.5 * (1 - r * r);
    n[5] = 0.5 * (1 + r) * (1 - s * s);
    dr[5] = 0.5 * (1 - s * s);
    ds[5] = -s * (1 + r);
    n[6] = 0.5 * (1 - r * r) * (1 + s);
    dr[6] = -r * (1 + s);
    ds[6] = 0.5 * (1 - r * r);
    n[7] = 0.5 * (1 - r) * (1 - s * s);
    dr[7] = -0.5 * (1 - s * s);
    ds[7] = -s * (1 - r);
}

// Integral of each shape function over a cell: how a uniform load over the section goes to its nodes.
std::array<double, 8> shares(const std::array<Point, 8>& at)
{
    static const double g = std::sqrt(0.6);
    static const std::array<std::pair<double, double>, 3> gauss{{{-g, 5.0 / 9}, {0.0, 8.0 / 9}, {g, 5.0 / 9}}};
    std::array<double, 8> sum{}, n{}, dr{}, ds{};
    for (const auto& [r, wr] : gauss) {
        for (const auto& [s, ws] : gauss) {
            quad8(r, s, n, dr, ds);
            double yr = 0, ys = 0, zr = 0, zs = 0;
            for (std::size_t k = 0; k < 8; ++k) {
                yr += dr[k] * at[k][0];
                ys += ds[k] * at[k][0];
                zr += dr[k] * at[k][1];
                zs += ds[k] * at[k][1];
            }
            for (std::size_t k = 0; k < 8; ++k)
                sum[k] += wr * ws * (yr * zs - ys * zr) * n[k];
        }
    }
    return sum;
}

// Axial division of an interval: small at ends that are shoulders, growing by 1.6 up to a fifth of the interval.
std::vector<double> divide(double from, double to, bool fineLeft, bool fineRight, double fine, double coarse)
{
    std::vector<double> left{from}, right{to};
    double hl = fineLeft ? fine : coarse, hr = fineRight ? fine : coarse;
    while (right.back() - left.back() > 1.3 * (hl + hr)) {
        if (hl <= hr) {
            left.push_back(left.back() + hl);
            hl = std::min(1.6 * hl, coarse);
        } else {
            right.push_back(right.back() - hr);
            hr = std::min(1.6 * hr, coarse);
        }
    }
    if (right.back() - left.back() > 1.3 * std::max(hl, hr))
        left.push_back(0.5 * (left.back() + right.back()));
    left.insert(left.end(), right.rbegin(), right.rend());
    return left;
}

} // namespace

int SolidModel::node(double x, double y, double z)
{
    const auto key = [](double v) { return std::lround(v * 1e5); };
    const auto [it, fresh] = m_index.try_emplace({key(x), key(y), key(z)}, static_cast<int>(m_nodes.size()) + 1);
    if (fresh)
        m_nodes.push_back({x, y, z});
    return it->second;
}

std::vector<SolidModel::Cell2> SolidModel::section(bool thick) const
{
    const double r1 = m_shaft.thin_mm / 2, r2 = m_shaft.thick_mm / 2, c = 0.5 * r1;
    constexpr double pi = std::numbers::pi;
    std::vector<Cell2> cells;
    const auto mesh = [&](const Patch& patch, int na, int nb) {
        for (int i = 0; i < na; ++i) {
            for (int j = 0; j < nb; ++j) {
                const double a0 = double(i) / na, a1 = double(i + 1) / na, am = 0.5 * (a0 + a1);
                const double b0 = double(j) / nb, b1 = double(j + 1) / nb, bm = 0.5 * (b0 + b1);
                cells.push_back({{patch(a0, b0), patch(a1, b0), patch(a1, b1), patch(a0, b1), patch(am, b0), patch(a1, bm),
                                  patch(am, b1), patch(a0, bm)}});
            }
        }
    };
    const int n = m_fineness.core;
    mesh([&](double a, double b) { return Point{-c + 2 * c * a, c * b}; }, 2 * n, n);
    struct Side {
        std::function<Point(double)> inner;
        double from, to;
        int cells;
    };
    const std::vector<Side> sides{
        {[&](double b) {
             return Point{c, c * b};
         },
         0, pi / 4, n},
        {[&](double b) {
             return Point{c - 2 * c * b, c};
         },
         pi / 4, 3 * pi / 4, 2 * n},
        {[&](double b) {
             return Point{-c, c - c * b};
         },
         3 * pi / 4, pi, n},
    };
    for (const Side& side : sides) {
        const auto angle = [&](double b) { return side.from + b * (side.to - side.from); };
        mesh([&](double a, double b) { return between(side.inner(b), onCircle(r1, angle(b)), a); }, m_fineness.inner_ring,
             side.cells);
        if (thick)
            mesh([&](double a, double b) { return onCircle(r1 + a * (r2 - r1), angle(b)); }, m_fineness.outer_ring, side.cells);
    }
    return cells;
}

SolidModel::SolidModel(const SolidShaft& shaft, const Fineness& fineness) : m_shaft(shaft), m_fineness(fineness)
{
    m_weights.resize(shaft.planes_mm.size());
    const auto weigh = [&](double x, const std::vector<Cell2>& cells) {
        for (std::size_t p = 0; p < shaft.planes_mm.size(); ++p) {
            if (std::abs(shaft.planes_mm[p] - x) > 1e-6 || !m_weights[p].empty())
                continue;
            for (const Cell2& cell : cells) {
                const std::array<double, 8> share = shares(cell.at);
                for (std::size_t k = 0; k < 8; ++k)
                    m_weights[p][node(x, cell.at[k][0], cell.at[k][1])] += share[k];
            }
        }
    };
    for (std::size_t i = 0; i < shaft.pieces.size(); ++i) {
        const SolidShaft::Piece& piece = shaft.pieces[i];
        std::vector<double> stations{piece.x0_mm, piece.x1_mm};
        for (const double x : shaft.planes_mm) {
            if (x > piece.x0_mm + 1e-6 && x < piece.x1_mm - 1e-6)
                stations.push_back(x);
        }
        std::sort(stations.begin(), stations.end());
        const std::vector<Cell2> cells = section(piece.thick);
        const double coarse = 5.0 * fineness.at_shoulder_mm;
        for (std::size_t k = 0; k + 1 < stations.size(); ++k) {
            const bool shoulderLeft = k == 0 && i > 0;
            const bool shoulderRight = k + 2 == stations.size() && i + 1 < shaft.pieces.size();
            const std::vector<double> xs =
                divide(stations[k], stations[k + 1], shoulderLeft, shoulderRight, fineness.at_shoulder_mm, coarse);
            for (std::size_t e = 0; e + 1 < xs.size(); ++e) {
                const double x0 = xs[e], x1 = xs[e + 1], xm = 0.5 * (x0 + x1);
                for (const Cell2& cell : cells) {
                    std::array<int, 20> element{};
                    for (std::size_t v = 0; v < 4; ++v) {
                        element[v] = node(x0, cell.at[v][0], cell.at[v][1]);
                        element[4 + v] = node(x1, cell.at[v][0], cell.at[v][1]);
                        element[8 + v] = node(x0, cell.at[4 + v][0], cell.at[4 + v][1]);
                        element[12 + v] = node(x1, cell.at[4 + v][0], cell.at[4 + v][1]);
                        element[16 + v] = node(xm, cell.at[v][0], cell.at[v][1]);
                    }
                    m_elements.push_back(element);
                }
            }
            weigh(stations[k], cells);
            weigh(stations[k + 1], cells);
        }
    }
}

std::vector<std::vector<double>> SolidModel::solve(std::array<std::size_t, 2> held, const std::vector<std::vector<Force>>& cases,
                                                   const std::string& directory) const
{
    const std::string stem = directory + "/solid";
    {
        std::ofstream out(stem + ".inp");
        out.precision(12);
        out << "*NODE, NSET=NALL\n";
        for (std::size_t k = 0; k < m_nodes.size(); ++k)
            out << k + 1 << "," << m_nodes[k][0] << "," << m_nodes[k][1] << "," << m_nodes[k][2] << "\n";
        out << "*ELEMENT, TYPE=C3D20R, ELSET=EALL\n";
        for (std::size_t e = 0; e < m_elements.size(); ++e) {
            // The solver reads at most sixteen numbers a line; a line that goes on ends with a comma.
            out << e + 1;
            for (std::size_t v = 0; v < 20; ++v)
                out << (v == 10 ? ",\n" : ",") << m_elements[e][v];
            out << "\n";
        }
        out << "*MATERIAL, NAME=STEEL\n*ELASTIC\n" << m_shaft.modulus_MPa << "," << m_shaft.poisson_ratio << "\n";
        out << "*SOLID SECTION, ELSET=EALL, MATERIAL=STEEL\n";
        for (const std::size_t plane : held) {
            const auto& weights = m_weights[plane];
            // The first node of an equation is eliminated: take the one with the largest share.
            const auto first = std::max_element(weights.begin(), weights.end(),
                                                [](const auto& a, const auto& b) { return a.second < b.second; });
            out << "*EQUATION\n" << weights.size() << "\n" << first->first << ",2," << first->second;
            int terms = 1; // the solver wants four a line
            for (const auto& [n, w] : weights) {
                if (n == first->first)
                    continue;
                out << (terms++ % 4 == 0 ? "\n" : ",") << n << ",2," << w;
            }
            out << "\n";
        }
        out << "*BOUNDARY\n";
        for (std::size_t k = 0; k < m_nodes.size(); ++k) {
            if (std::abs(m_nodes[k][2]) < 1e-6)
                out << k + 1 << ",3,3\n";
        }
        // One node on the axis holds x.
        const auto axis = std::find_if(m_nodes.begin(), m_nodes.end(), [&](const auto& p) {
            return std::abs(p[0] - m_shaft.planes_mm[held[0]]) < 1e-6 && std::hypot(p[1], p[2]) < 1e-6;
        });
        out << axis - m_nodes.begin() + 1 << ",1,1\n";
        for (std::size_t p = 0; p < m_weights.size(); ++p) {
            out << "*NSET, NSET=PLANE" << p << "\n";
            for (const auto& entry : m_weights[p])
                out << entry.first << ",\n";
        }
        for (const auto& forces : cases) {
            out << "*STEP\n*STATIC\n*CLOAD, OP=NEW\n";
            for (const Force& f : forces) {
                double area = 0;
                for (const auto& entry : m_weights[f.plane])
                    area += entry.second;
                for (const auto& [n, w] : m_weights[f.plane])
                    out << n << ",2," << 0.5 * f.force_N * w / area << "\n"; // half the shaft, half the force
            }
            for (std::size_t p = 0; p < m_weights.size(); ++p)
                out << "*NODE PRINT, NSET=PLANE" << p << "\nU\n";
            out << "*END STEP\n";
        }
    }
    const std::string command = "cd '" + directory + "' && OMP_NUM_THREADS=1 ccx solid > solid.log 2>&1";
    if (std::system(command.c_str()) != 0) {
        std::ifstream log(directory + "/solid.log");
        std::fputs(std::string(std::istreambuf_iterator<char>(log), {}).c_str(), stderr);
        return {};
    }

    std::vector<std::vector<double>> result;
    std::ifstream in(stem + ".dat");
    std::string text;
    std::size_t plane = 0;
    std::vector<double> sums, areas;
    while (std::getline(in, text)) {
        const auto set = text.find("PLANE");
        if (text.find("displacements") != std::string::npos && set != std::string::npos) {
            plane = static_cast<std::size_t>(std::strtoul(text.c_str() + set + 5, nullptr, 10));
            if (plane == 0) {
                result.emplace_back(m_weights.size(), 0.0);
            }
            continue;
        }
        std::istringstream numbers(text);
        int n = 0;
        double ux = 0, uy = 0, uz = 0;
        if (result.empty() || !(numbers >> n >> ux >> uy >> uz))
            continue;
        double area = 0;
        for (const auto& entry : m_weights[plane])
            area += entry.second;
        const auto share = m_weights[plane].find(n);
        if (share != m_weights[plane].end())
            result.back()[plane] += share->second * uy / area;
    }
    return result;
}

} // namespace solidtest
