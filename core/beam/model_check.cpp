#include "core/beam/model_check.h"

#include "core/beam/mesh.h"
#include "core/beam/section.h"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shaftwright::beam
{

namespace
{

// Lengths are typed to a micrometre at best; a gap below this is rounding of sums.
constexpr double kLengthTolerance_mm = 1e-6;

template <class Range> bool allFinite(const Range& range)
{
    return std::all_of(range.begin(), range.end(), [](double v) { return std::isfinite(v); });
}

std::optional<std::string> caseId(const LoadCase& loadCase)
{
    return loadCase.id.empty() ? std::nullopt : std::optional<std::string>(loadCase.id);
}

void checkPieces(const Model& model, Findings& findings)
{
    const auto add = [&](Severity severity, const char* code, std::size_t i, const char* variant, NamedValues values) {
        values.set("segment_number", static_cast<double>(i + 1));
        findings.push_back({severity, code, "", "shaft.segments", {}, std::move(values), variant, ""});
    };
    if (model.pieces.empty()) {
        findings.push_back({Severity::stop, "segment-size", "", "shaft.segments", {}, {}, "none", ""});
        return;
    }
    for (std::size_t i = 0; i < model.pieces.size(); ++i) {
        const Piece& p = model.pieces[i];
        const std::array<double, 6> numbers{p.x0_mm, p.x1_mm, p.outer0_mm, p.outer1_mm, p.bore0_mm, p.bore1_mm};
        if (!allFinite(numbers)) {
            findings.push_back({Severity::stop,
                                "value-invalid",
                                "",
                                "shaft.segments",
                                {},
                                {{"segment_number", static_cast<double>(i + 1)}},
                                "",
                                ""});
            continue;
        }
        const double length = p.x1_mm - p.x0_mm;
        if (!(length >= kMergeDistance_mm)) {
            add(Severity::stop, "segment-size", i, "length", {{"length_mm", length}});
            continue;
        }
        if (i > 0 && std::abs(p.x0_mm - model.pieces[i - 1].x1_mm) > kLengthTolerance_mm)
            add(Severity::stop, "segment-size", i, "gap", {{"x0_mm", p.x0_mm}, {"previous_x1_mm", model.pieces[i - 1].x1_mm}});
        if (!(p.outer0_mm > 0.0) || !(p.outer1_mm > 0.0)) {
            add(Severity::stop, "segment-size", i, "diameter", {{"outer_mm", std::min(p.outer0_mm, p.outer1_mm)}});
            continue;
        }
        for (const auto& [outer, bore] : {std::pair{p.outer0_mm, p.bore0_mm}, std::pair{p.outer1_mm, p.bore1_mm}}) {
            if (bore < 0.0 || bore >= outer) {
                add(Severity::stop, "segment-bore", i, "", {{"bore_mm", bore}, {"outer_mm", outer}});
                break;
            }
        }
        const double ratio = std::max(p.outer0_mm, p.outer1_mm) / std::min(p.outer0_mm, p.outer1_mm);
        const double halfAngle_deg = std::atan(std::abs(p.outer1_mm - p.outer0_mm) / (2.0 * length)) * 180.0 / std::numbers::pi;
        if (ratio > 10.0 || halfAngle_deg > 45.0)
            add(Severity::caution, "segment-cone", i, "", {{"diameter_ratio", ratio}, {"half_angle_deg", halfAngle_deg}});
    }
}

void checkMaterial(const Properties& p, Findings& findings)
{
    if (!allFinite(std::array<double, 4>{p.modulus_MPa, p.shear_modulus_MPa, p.expansion_per_K, p.density_kg_m3})) {
        findings.push_back({Severity::stop, "value-invalid", "", "shaft.material", {}, {}, "", ""});
        return;
    }
    const double nu = p.shear_modulus_MPa > 0.0 ? poissonRatio(p) : -1.0;
    if (!(p.modulus_MPa > 0.0) || !(p.shear_modulus_MPa > 0.0) || nu < -1e-9 || nu > 0.5 + 1e-9) {
        findings.push_back({Severity::stop,
                            "material-elastic",
                            "",
                            "shaft.material",
                            {},
                            {{"modulus_MPa", p.modulus_MPa}, {"shear_modulus_MPa", p.shear_modulus_MPa}, {"poisson_ratio", nu}},
                            "",
                            ""});
    }
    if (p.density_kg_m3 < 0.0)
        findings.push_back(
            {Severity::stop, "value-invalid", "", "shaft.material", {}, {{"density_kg_m3", p.density_kg_m3}}, "", ""});
}

void checkStiffness(const Support& s, Findings& findings)
{
    const std::string path = "supports." + s.id + ".stiffness";
    Eigen::Matrix<double, 5, 5> k;
    for (int i = 0; i < 5; ++i) {
        for (int j = 0; j < 5; ++j)
            k(i, j) = s.stiffness[std::size_t(i)][std::size_t(j)];
    }
    const double largest = k.cwiseAbs().maxCoeff();
    if (largest > 0.0) {
        const double asymmetry = (k - k.transpose()).cwiseAbs().maxCoeff() / largest;
        Eigen::SelfAdjointEigenSolver<Eigen::Matrix<double, 5, 5>> eigen(0.5 * (k + k.transpose()), Eigen::EigenvaluesOnly);
        const double smallest = eigen.eigenvalues()[0] / std::max(eigen.eigenvalues().cwiseAbs().maxCoeff(), 1e-300);
        if (asymmetry > 1e-9)
            findings.push_back({Severity::stop,
                                "support-stiffness",
                                s.id,
                                path,
                                {},
                                {{"support", s.id}, {"asymmetry", asymmetry}},
                                "symmetry",
                                ""});
        else if (smallest < -1e-9)
            findings.push_back({Severity::stop,
                                "support-stiffness",
                                s.id,
                                path,
                                {},
                                {{"support", s.id}, {"smallest_eigenvalue", eigen.eigenvalues()[0]}},
                                "negative",
                                ""});
    }
    static const std::array<const char*, 5> names{"x", "y", "z", "ry", "rz"};
    for (std::size_t d = 0; d < 5; ++d) {
        bool spring = s.gap && (d == 1 || d == 2);
        for (std::size_t other = 0; other < 5; ++other)
            spring = spring || s.stiffness[d][other] != 0.0 || s.stiffness[other][d] != 0.0;
        if (s.rigid[d] && spring)
            findings.push_back({Severity::stop,
                                "support-rigid-and-spring",
                                s.id,
                                path,
                                {},
                                {{"support", s.id}, {"direction", std::string(names[d])}},
                                "",
                                ""});
    }
    if (s.gap) {
        const Gap& g = *s.gap;
        if (!(g.gap_mm >= 0.0) || !(g.stiffness > 0.0) || !(g.exponent >= 1.0)) {
            findings.push_back({Severity::stop,
                                "support-stiffness",
                                s.id,
                                path,
                                {},
                                {{"support", s.id}, {"gap_mm", g.gap_mm}, {"stiffness", g.stiffness}, {"exponent", g.exponent}},
                                "gap",
                                ""});
        }
        for (std::size_t d = 1; d < 3; ++d) {
            for (std::size_t other = 0; other < 5; ++other) {
                if (s.stiffness[d][other] != 0.0) {
                    findings.push_back({Severity::stop,
                                        "support-stiffness",
                                        s.id,
                                        path,
                                        {},
                                        {{"support", s.id}, {"direction", std::string(names[d])}},
                                        "gap-and-spring",
                                        ""});
                    return;
                }
            }
        }
    }
}

void checkSupports(const Model& model, Findings& findings)
{
    const double start = model.pieces.front().x0_mm;
    const double end = model.pieces.back().x1_mm;
    for (std::size_t i = 0; i < model.supports.size(); ++i) {
        const Support& s = model.supports[i];
        bool finite = std::isfinite(s.x_mm) && std::isfinite(s.centre_offset_mm) && allFinite(s.prescribed);
        for (const auto& row : s.stiffness)
            finite = finite && allFinite(row);
        if (s.gap)
            finite = finite && std::isfinite(s.gap->gap_mm) && std::isfinite(s.gap->stiffness) && std::isfinite(s.gap->exponent);
        if (!finite) {
            findings.push_back({Severity::stop, "value-invalid", s.id, "supports." + s.id, {}, {{"support", s.id}}, "", ""});
            continue;
        }
        if (s.x_mm < start - kLengthTolerance_mm || s.x_mm > end + kLengthTolerance_mm)
            findings.push_back({Severity::stop,
                                "support-place",
                                s.id,
                                "supports." + s.id + ".x_mm",
                                {},
                                {{"support", s.id}, {"x_mm", s.x_mm}, {"length_mm", end - start}},
                                "outside",
                                ""});
        for (std::size_t j = 0; j < i; ++j) {
            const Support& other = model.supports[j];
            const double distance = std::abs(s.x_mm - other.x_mm);
            if (!(distance < 0.1))
                continue;
            // Two seats closer than the merge distance twice over could fall on one node.
            const bool same = distance < 2.0 * kMergeDistance_mm;
            findings.push_back({same ? Severity::stop : Severity::caution,
                                "support-place",
                                s.id,
                                "supports." + s.id + ".x_mm",
                                {},
                                {{"support", s.id}, {"other_support", other.id}, {"x_mm", s.x_mm}, {"distance_mm", distance}},
                                same ? "same-seat" : "close",
                                ""});
        }
        checkStiffness(s, findings);
    }
}

void checkLoads(const Model& model, std::span<const LoadCase> cases, Findings& findings)
{
    const double start = model.pieces.front().x0_mm;
    const double end = model.pieces.back().x1_mm;
    const auto outside = [&](double x) { return x < start - kLengthTolerance_mm || x > end + kLengthTolerance_mm; };
    for (const LoadCase& c : cases) {
        bool finite = std::isfinite(c.temperature_rise_K) && allFinite(c.gravity);
        for (const Vec5& q : c.prescribed)
            finite = finite && allFinite(q);
        for (const PointLoad& p : c.point_loads) {
            finite = finite && std::isfinite(p.x_mm) && allFinite(p.force_N) && allFinite(p.moment_Nmm);
            if (std::isfinite(p.x_mm) && outside(p.x_mm))
                findings.push_back({Severity::stop,
                                    "part-x-outside",
                                    "",
                                    "parts",
                                    caseId(c),
                                    {{"x_mm", p.x_mm}, {"length_mm", end - start}},
                                    "",
                                    ""});
        }
        for (const LineLoad& q : c.line_loads) {
            finite = finite && std::isfinite(q.x0_mm) && std::isfinite(q.x1_mm) && allFinite(q.q0_N_mm) && allFinite(q.q1_N_mm) &&
                     std::isfinite(q.m0_Nmm_mm) && std::isfinite(q.m1_Nmm_mm);
            if (std::isfinite(q.x0_mm) && std::isfinite(q.x1_mm) &&
                (outside(q.x0_mm) || outside(q.x1_mm) || !(q.x0_mm < q.x1_mm)))
                findings.push_back({Severity::stop,
                                    "load-range",
                                    "",
                                    "parts",
                                    caseId(c),
                                    {{"x0_mm", q.x0_mm}, {"x1_mm", q.x1_mm}, {"length_mm", end - start}},
                                    "",
                                    ""});
        }
        if (!finite)
            findings.push_back({Severity::stop, "value-invalid", "", "duty.load_cases", caseId(c), {}, "", ""});
    }
}

} // namespace

Findings checkModel(const Model& model, std::span<const LoadCase> cases)
{
    Findings findings;
    checkPieces(model, findings);
    checkMaterial(model.properties, findings);
    if (hasStop(findings))
        return findings;
    checkSupports(model, findings);
    checkLoads(model, cases, findings);
    return findings;
}

} // namespace shaftwright::beam
