#include "core/beam/mechanism.h"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>

namespace shaftwright::beam
{

namespace
{

using M5 = Eigen::Matrix<double, 5, 5>;

constexpr double kFreeBelow = 1e-9;   // of the largest eigenvalue: rounding
constexpr double kNearlyBelow = 1e-5; // supports 2 mm apart on a shaft of 400 mm give 1.3e-5

bool hasX(const std::vector<bool>& holds_x, std::size_t s)
{
    return holds_x.empty() || holds_x[s];
}

double centre(const Support& s)
{
    return s.x_mm + s.centre_offset_mm;
}

// Does the support restrain direction d (x, y, z, ry, rz) by itself?
bool restrains(const Support& s, std::size_t d)
{
    return s.rigid[d] || s.stiffness[d][d] > 0.0 || (s.gap && (d == 1 || d == 2));
}

M5 restraintMatrix(const Model& model, const std::vector<bool>& holds_x)
{
    const double start = model.pieces.front().x0_mm;
    const double L = model.pieces.back().x1_mm - start;
    const double middle = start + 0.5 * L;
    M5 sum = M5::Zero();
    for (std::size_t n = 0; n < model.supports.size(); ++n) {
        const Support& s = model.supports[n];
        M5 k = M5::Zero();
        for (int i = 0; i < 5; ++i) {
            for (int j = 0; j < 5; ++j) {
                const double scale = (i > 2 ? 1.0 / L : 1.0) * (j > 2 ? 1.0 / L : 1.0);
                k(i, j) = scale * s.stiffness[std::size_t(i)][std::size_t(j)];
            }
        }
        if (s.gap) {
            k(1, 1) += s.gap->stiffness;
            k(2, 2) += s.gap->stiffness;
        }
        if (!hasX(holds_x, n)) {
            k.row(0).setZero();
            k.col(0).setZero();
        }
        const double largest = k.cwiseAbs().maxCoeff();
        if (largest > 0.0)
            k /= largest;
        for (int d = 0; d < 5; ++d) {
            if (s.rigid[std::size_t(d)] && (d > 0 || hasX(holds_x, n)))
                k(d, d) = 1.0;
        }
        M5 motion = M5::Identity(); // of the effective centre under the rigid modes
        motion(1, 4) = (centre(s) - middle) / L;
        motion(2, 3) = -(centre(s) - middle) / L;
        sum += motion.transpose() * k * motion;
    }
    return sum;
}

void nameFree(const Model& model, bool freeInY, bool freeInZ, Findings& findings)
{
    std::array<std::vector<std::size_t>, 2> holders; // supports that hold y, z
    for (std::size_t s = 0; s < model.supports.size(); ++s) {
        for (std::size_t plane = 0; plane < 2; ++plane) {
            if (restrains(model.supports[s], 1 + plane))
                holders[plane].push_back(s);
        }
    }
    if (holders[0].empty() && holders[1].empty()) {
        findings.push_back({Severity::stop, "shaft-unsupported", "", "supports", {}, {}, "", ""});
        return;
    }
    std::array<bool, 2> free{freeInY, freeInZ};
    const double L = model.pieces.back().x1_mm - model.pieces.front().x0_mm;
    std::vector<Finding> named;
    for (std::size_t plane = 0; plane < 2; ++plane) {
        if (!free[plane])
            continue;
        const auto& list = holders[plane];
        const std::string axis = plane == 0 ? "y" : "z";
        Finding f;
        f.severity = Severity::stop;
        if (list.empty()) {
            f.code = "support-plane-missing";
            f.path = "supports";
            f.values = {{"direction", axis}};
        } else if (list.size() == 1) {
            const Support& s = model.supports[list.front()];
            f.code = "shaft-tilts";
            f.subject = s.id;
            f.path = "supports." + s.id;
            f.values = {{"support", s.id}, {"x_mm", centre(s)}};
        } else {
            // Several supports, and yet it turns: their effective centres meet.
            std::size_t first = list.front(), last = list.front();
            for (const std::size_t s : list) {
                if (centre(model.supports[s]) < centre(model.supports[first]))
                    first = s;
                if (centre(model.supports[s]) > centre(model.supports[last]))
                    last = s;
            }
            if (first == last)
                last = list.back();
            const Support& a = model.supports[std::min(first, last)];
            const Support& b = model.supports[std::max(first, last)];
            const bool meet = std::abs(centre(a) - centre(b)) < 1e-4 * L;
            f.code = meet ? "shaft-tilts-centres-coincide" : "shaft-tilts";
            f.subject = a.id;
            f.path = "supports." + a.id + ".x_mm";
            f.values = {{"support", a.id},
                        {"other_support", b.id},
                        {"seat_x_mm", a.x_mm},
                        {"other_seat_x_mm", b.x_mm},
                        {"x_mm", 0.5 * (centre(a) + centre(b))}};
        }
        const bool same = std::any_of(named.begin(), named.end(), [&](const Finding& other) { return other == f; });
        if (!same)
            named.push_back(f);
    }
    findings.insert(findings.end(), named.begin(), named.end());
}

} // namespace

MechanismReport findMechanisms(const Model& model, const std::vector<bool>& holds_x)
{
    MechanismReport report;
    if (model.supports.empty()) {
        report.findings.push_back({Severity::stop, "shaft-unsupported", "", "supports", {}, {}, "", ""});
        return report;
    }
    M5 restraint = restraintMatrix(model, holds_x);
    Eigen::SelfAdjointEigenSolver<M5> eigen(restraint);
    double largest = std::max(eigen.eigenvalues()[4], 1e-300);

    // Does x alone move freely? Then hold it at the first support, as the beam does, and look at the rest.
    if (restraint.col(0).cwiseAbs().maxCoeff() < kFreeBelow * largest) {
        report.axially_free = true;
        restraint(0, 0) += 1.0;
        eigen.compute(restraint);
        largest = eigen.eigenvalues()[4];
    }
    bool freeInY = false, freeInZ = false;
    for (int k = 0; k < 5; ++k) {
        if (eigen.eigenvalues()[k] >= kFreeBelow * largest)
            continue;
        const auto mode = eigen.eigenvectors().col(k);
        freeInY = freeInY || std::hypot(mode[1], mode[4]) > 1e-3;
        freeInZ = freeInZ || std::hypot(mode[2], mode[3]) > 1e-3;
    }
    if (freeInY || freeInZ) {
        nameFree(model, freeInY, freeInZ, report.findings);
        return report;
    }
    const double smallest = eigen.eigenvalues()[0];
    if (smallest < kNearlyBelow) {
        const auto mode = eigen.eigenvectors().col(0);
        double low = 0.0, high = 0.0;
        std::size_t lowAt = 0, highAt = 0;
        bool any = false;
        for (std::size_t s = 0; s < model.supports.size(); ++s) {
            const Support& support = model.supports[s];
            if (!restrains(support, 1) && !restrains(support, 2))
                continue;
            if (!any || centre(support) < low) {
                low = centre(support);
                lowAt = s;
            }
            if (!any || centre(support) > high) {
                high = centre(support);
                highAt = s;
            }
            any = true;
        }
        Finding f;
        f.severity = Severity::caution;
        f.code = "shaft-nearly-mechanism";
        f.subject = any ? model.supports[lowAt].id : "";
        f.path = "supports";
        f.values = {{"support", any ? model.supports[lowAt].id : std::string{}},
                    {"other_support", any ? model.supports[highAt].id : std::string{}},
                    {"x_mm", 0.5 * (low + high)},
                    {"distance_mm", high - low},
                    {"plane", std::string(std::hypot(mode[1], mode[4]) > std::hypot(mode[2], mode[3]) ? "y" : "z")},
                    {"restraint_ratio", smallest / largest}};
        report.findings.push_back(f);
    }
    return report;
}

bool isDeterminate(const Model& model)
{
    std::array<int, 2> count{}; // reactions in plane xy (y, rz) and xz (z, ry)
    for (const Support& s : model.supports) {
        count[0] += restrains(s, 1) + restrains(s, 4);
        count[1] += restrains(s, 2) + restrains(s, 3);
    }
    return count[0] == 2 && count[1] == 2;
}

} // namespace shaftwright::beam
