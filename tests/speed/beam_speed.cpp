// How long the beam takes. Bars: displacements of a shaft with 40 nodes within three times a bare block tridiagonal
// Cholesky of 40 blocks in Eigen (one right side), measured in the same run; cost linear in the nodes within 20 %.

#include "core/beam/recovery.h"
#include "core/beam/system.h"
#include "tests/speed/stopwatch.h"

#include <Eigen/Cholesky>

#include <cmath>
#include <cstdio>

using namespace shaftwright;
using namespace shaftwright::beam;
using speed::measure;

namespace
{

// The yardstick: the textbook recursion with Eigen's own fixed-size Cholesky and triangular solves.
struct Bare {
    std::vector<Mat6> diagonal, lower, coupling;
    std::vector<Eigen::LLT<Mat6>> factor;
    std::vector<Vec6> rhs;

    explicit Bare(std::size_t n) : diagonal(n), lower(n - 1), coupling(n - 1), factor(n), rhs(n)
    {
        for (std::size_t i = 0; i < n; ++i) {
            diagonal[i] = 10.0 * Mat6::Identity() + 0.1 * Mat6::Ones();
            rhs[i] = Vec6::Ones();
            if (i + 1 < n)
                lower[i] = 0.5 * Mat6::Identity() + 0.05 * Mat6::Ones();
        }
    }
    double run()
    {
        const std::size_t n = diagonal.size();
        std::vector<Vec6>& x = work;
        x = rhs;
        for (std::size_t i = 0; i < n; ++i) {
            Mat6 d = diagonal[i];
            if (i > 0) {
                d.noalias() -= coupling[i - 1] * coupling[i - 1].transpose();
                x[i].noalias() -= coupling[i - 1] * x[i - 1];
            }
            factor[i].compute(d);
            factor[i].matrixL().solveInPlace(x[i]);
            if (i + 1 < n)
                coupling[i] = factor[i].matrixL().solve(lower[i].transpose()).transpose();
        }
        for (std::size_t i = n; i-- > 0;) {
            if (i + 1 < n)
                x[i].noalias() -= coupling[i].transpose() * x[i + 1];
            factor[i].matrixU().solveInPlace(x[i]);
        }
        return x[0][0];
    }
    std::vector<Vec6> work;
};

Model makeShaft(std::size_t nodes, std::size_t supports, double length)
{
    Model m;
    const std::size_t elements = nodes - 1;
    for (std::size_t k = 0; k < elements; ++k) {
        const double d = k % 2 == 0 ? 40.0 : 45.0;
        m.pieces.push_back({length * double(k) / double(elements), length * double(k + 1) / double(elements), d, d, 0.0, 0.0});
    }
    for (std::size_t k = 0; k < supports; ++k) {
        Support s;
        s.id = std::to_string(k);
        const std::size_t at = (elements * k) / (supports - 1);
        s.x_mm = at == elements ? length : m.pieces[at].x0_mm;
        s.rigid = {k == 0, false, false, false, false};
        s.stiffness[1][1] = s.stiffness[2][2] = 2e5;
        s.centre_offset_mm = 0.5;
        m.supports.push_back(s);
    }
    return m;
}

LoadCase makeLoad(double length)
{
    LoadCase c;
    c.point_loads.push_back({length / 2, {300, -4000, 900}, {1e5, 0, 2e4}});
    c.gravity = {0, 0, -9.80665};
    return c;
}

// From model and loads on a mesh to displacements of all seats: spans, load terms, assembly, factor, solution.
double displacements(const Model& model, const LoadCase& load, const Mesh& mesh, LinearSystem& system, std::vector<Vec6>& q)
{
    const std::vector<std::size_t> mains = mainNodes(mesh);
    const std::vector<Span> spans = makeSpans(mesh, mains);
    const CaseData data = makeCaseData(mesh, mains, spans, load, model);
    system.assemble(spans, makeRestraints(model, mesh, mains, {}, false));
    if (!system.factorise())
        return 0.0;
    system.makeRightSide(mains, data, q);
    system.solve(q);
    return q[0][1];
}

volatile double sink = 0.0;

} // namespace

int main()
{
    constexpr int kSamples = 400;
    int missed = 0;
    const double length = 1000.0;

    Bare bare(40);
    const speed::Timing yardstick = measure(kSamples, 20, [&] { sink = sink + bare.run(); });
    speed::print("bare block Cholesky in Eigen, 40 blocks, one right side", yardstick);

    LinearSystem system;
    std::vector<Vec6> q;
    {
        // All 40 nodes are seats: the condensed system is as large as the yardstick's.
        const Model m = makeShaft(40, 40, length);
        const LoadCase c = makeLoad(length);
        const Mesh mesh = makeMesh(m, std::vector<LoadCase>{c}, {});
        const std::vector<std::size_t> mains = mainNodes(mesh);
        const std::vector<Span> spans = makeSpans(mesh, mains);
        const CaseData data = makeCaseData(mesh, mains, spans, c, m);
        system.assemble(spans, makeRestraints(m, mesh, mains, {}, false));
        const speed::Timing t = measure(kSamples, 20, [&] {
            sink = sink + double(system.factorise());
            system.makeRightSide(mains, data, q);
            system.solve(q);
            sink = sink + q[0][1];
        });
        speed::print("factor, right side and solution, 40 seats", t);
        std::printf("    ratio to the yardstick %.2f (bar 3)\n", t.median_us / yardstick.median_us);
        missed += t.median_us > 3.0 * yardstick.median_us;
    }
    {
        const Model m = makeShaft(40, 3, length);
        const LoadCase c = makeLoad(length);
        const Mesh mesh = makeMesh(m, std::vector<LoadCase>{c}, {});
        const speed::Timing t = measure(kSamples, 20, [&] { sink = sink + displacements(m, c, mesh, system, q); });
        speed::print("from the mesh to displacements, 40 nodes, 3 seats", t);
        std::printf("    ratio to the yardstick %.2f (bar 3)\n", t.median_us / yardstick.median_us);
        missed += t.median_us > 3.0 * yardstick.median_us;
    }
    {
        const Model m = makeShaft(40, 3, length);
        const std::vector<LoadCase> one{makeLoad(length)}, eight(8, makeLoad(length));
        speed::print("solve(): check, mesh, solution, stations, extremes; 40 nodes, 1 case",
                     measure(kSamples, 4, [&] { sink = sink + solve(m, one).mass_kg; }));
        speed::print("the same, 8 cases", measure(kSamples, 2, [&] { sink = sink + solve(m, eight).mass_kg; }));
        const Solution s = solve(m, one);
        const InfluenceBasis basis = influenceBasis(s, 0);
        speed::print("basis of influence lines, 40 nodes, 3 seats",
                     measure(kSamples, 2, [&] { sink = sink + double(influenceBasis(s, 0).components.size()); }));
        speed::print("influence at 500 places", measure(kSamples / 4, 1, [&] {
                         for (int k = 0; k < 500; ++k)
                             sink = sink + influenceAt(basis, length * k / 500.0).reaction_per_fy[0][1];
                     }));
    }
    std::printf("\nGrowth with the nodes, every node a seat (factor and solution) and three seats (whole solve()):\n");
    double base = 0.0, baseWhole = 0.0;
    for (const std::size_t n : {10, 20, 40, 80, 160, 320, 640}) {
        const double L = 25.0 * double(n - 1);
        const LoadCase c = makeLoad(L);
        const Model seats = makeShaft(n, n, L);
        const Mesh mesh = makeMesh(seats, std::vector<LoadCase>{c}, {});
        const std::vector<std::size_t> mains = mainNodes(mesh);
        const std::vector<Span> spans = makeSpans(mesh, mains);
        const CaseData data = makeCaseData(mesh, mains, spans, c, seats);
        system.assemble(spans, makeRestraints(seats, mesh, mains, {}, false));
        const int repeats = std::max(1, int(640 / n));
        const speed::Timing t = measure(kSamples, repeats, [&] {
            sink = sink + double(system.factorise());
            system.makeRightSide(mains, data, q);
            system.solve(q);
        });
        const Model three = makeShaft(n, 3, L);
        const std::vector<LoadCase> one{c};
        const speed::Timing whole = measure(kSamples / 4, repeats, [&] { sink = sink + solve(three, one).mass_kg; });
        const double nodes = double(mesh.nodes());
        const double perNode = t.median_us / nodes;
        const double perNodeWhole = whole.median_us / nodes;
        if (n == 40) {
            base = perNode;
            baseWhole = perNodeWhole;
        }
        std::printf("%4zu nodes   factor and solution %8.2f us (%.3f a node)   solve() %8.2f us (%.3f a node)\n", mesh.nodes(),
                    t.median_us, perNode, whole.median_us, perNodeWhole);
        // Below 40 nodes fixed costs show; above, growth must be linear within 20 %.
        if (n > 40) {
            missed += perNode > 1.2 * base;
            missed += perNodeWhole > 1.2 * baseWhole;
        }
    }
    std::printf(missed == 0 ? "all bars met\n" : "%d bars missed\n", missed);
    return missed == 0 ? 0 : 1;
}
