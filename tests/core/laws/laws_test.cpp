// Laws of the whole pipeline on arrangements drawn at random.
#include "core/analysis/analyse.h"
#include "core/analysis/shares.h"
#include "core/document/document.h"
#include "core/edit/edit.h"
#include "tests/core/laws/drawn_arrangement.h"
#include "tests/core/laws/law.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

using namespace shaftwright;
using namespace shaftwright::test;

namespace
{

const Catalogues& catalogues()
{
    static const Catalogues all{{&genericCatalogue()}};
    return all;
}

Assessment analysed(const Arrangement& arrangement)
{
    return analyse(arrangement, catalogues());
}

/// Largest force or moment over the span of a case: what rounding is measured against.
double scaleOf(const Assessment& assessment, std::size_t i)
{
    double scale = assessment.shaft.mass_kg * 10.0 + 1.0;
    for (const PartLoad& load : assessment.loads[i].parts) {
        scale += std::abs(load.force_N.x) + std::abs(load.force_N.y) + std::abs(load.force_N.z);
        scale += (std::abs(load.moment_Nmm.y) + std::abs(load.moment_Nmm.z)) / 50.0;
        const double l = load.end_mm - load.x_mm;
        if (load.distributed)
            scale += l * (std::abs(load.q0_N_mm.x) + std::abs(load.q0_N_mm.y) + std::abs(load.q0_N_mm.z) +
                          std::abs(load.q1_N_mm.x) + std::abs(load.q1_N_mm.y) + std::abs(load.q1_N_mm.z));
    }
    for (const SupportAssessment& support : assessment.supports)
        scale = std::max(scale, support.cases[i].radial_N);
    return scale;
}

struct Resultant {
    Vector3 force, moment; ///< moment about the left end of the axis
    void add(double x, const Vector3& F, const Vector3& M)
    {
        force = {force.x + F.x, force.y + F.y, force.z + F.z};
        moment = {moment.x + M.x, moment.y + M.y - x * F.z, moment.z + M.z + x * F.y};
    }
};

/// Own weight of the shaft by Simpson's rule, exact for cones.
void addOwnWeight(const Arrangement& a, const Assessment& assessment, std::size_t i, Resultant& sum)
{
    const Vector3& g = assessment.loads[i].gravity_m_s2;
    const double rho = assessment.settled.material.density_kg_m3 * 1e-9;
    double start = 0.0;
    for (const Segment& s : a.shaft.segments) {
        const auto line_kg = [&](double t) {
            const double D = s.outer_mm + t * (s.outerRight_mm() - s.outer_mm);
            const double d = s.boreLeft_mm() + t * (s.boreRight_mm() - s.boreLeft_mm());
            return rho * std::acos(-1.0) / 4.0 * (D * D - d * d);
        };
        const double weights[3] = {s.length_mm / 6.0, 4.0 * s.length_mm / 6.0, s.length_mm / 6.0};
        for (int k = 0; k < 3; ++k) {
            const double m = weights[k] * line_kg(0.5 * k);
            sum.add(start + 0.5 * k * s.length_mm, {m * g.x, m * g.y, m * g.z}, {});
        }
        start += s.length_mm;
    }
}

void addLoad(const PartLoad& load, Resultant& sum)
{
    if (!load.distributed) {
        sum.add(load.x_mm, load.force_N, load.moment_Nmm);
        return;
    }
    // A linear load: two thirds of each end's share act at the third of the span next to it.
    const double l = load.end_mm - load.x_mm;
    const auto half = [&](const Vector3& q) { return Vector3{0.5 * l * q.x, 0.5 * l * q.y, 0.5 * l * q.z}; };
    sum.add(load.x_mm + l / 3.0, half(load.q0_N_mm), {});
    sum.add(load.x_mm + 2.0 * l / 3.0, half(load.q1_N_mm), {});
    sum.add(load.x_mm, {}, {0.5 * l * (load.m0_Nmm_mm + load.m1_Nmm_mm), 0.0, 0.0});
}

bool near(double a, double b, double tolerance)
{
    return std::abs(a - b) <= tolerance;
}

/// Shafts on three and four rigid supports pass through a stiffness solution: 1e-8 of the loads covers its rounding.
constexpr double solved = 1e-8;

void requireSameReactions(const Assessment& a, const Assessment& b, double factor = 1.0, double axial_sign = 1.0)
{
    RC_ASSERT(a.supports.size() == b.supports.size());
    for (std::size_t s = 0; s < a.supports.size(); ++s) {
        RC_ASSERT(a.supports[s].cases.size() == b.supports[s].cases.size());
        for (std::size_t i = 0; i < a.supports[s].cases.size(); ++i) {
            const double tolerance = solved * std::max(scaleOf(a, i), scaleOf(b, i));
            const Vector3& F = a.supports[s].cases[i].force_N;
            const Vector3& G = b.supports[s].cases[i].force_N;
            RC_ASSERT(near(axial_sign * factor * F.x, G.x, tolerance));
            RC_ASSERT(near(factor * F.y, G.y, tolerance));
            RC_ASSERT(near(factor * F.z, G.z, tolerance));
        }
    }
}

std::multiset<std::string> codesOf(const Assessment& assessment)
{
    std::multiset<std::string> codes;
    for (const Finding& finding : assessment.findings)
        codes.insert(finding.code + "/" + finding.variant + "/" + finding.path);
    return codes;
}

} // namespace

TEST_CASE("reactions balance loads and weight", "[core][laws]")
{
    law("equilibrium", [] {
        const Arrangement a = drawArrangement();
        const Assessment result = analysed(a);
        RC_ASSERT(result.beam.usable());
        const double L = a.shaft.length_mm();
        for (std::size_t i = 0; i < result.load_cases.size(); ++i) {
            Resultant sum;
            for (const PartLoad& load : result.loads[i].parts)
                addLoad(load, sum);
            addOwnWeight(a, result, i, sum);
            for (const SupportAssessment& support : result.supports) {
                const SupportCase& here = support.cases[i];
                sum.add(support.centre_x_mm, here.force_N, {0.0, here.moment_y_Nmm, here.moment_z_Nmm});
            }
            const double tolerance = 1e-9 * scaleOf(result, i);
            RC_ASSERT(near(sum.force.x, 0.0, tolerance));
            RC_ASSERT(near(sum.force.y, 0.0, tolerance));
            RC_ASSERT(near(sum.force.z, 0.0, tolerance));
            RC_ASSERT(near(sum.moment.y, 0.0, L * tolerance));
            RC_ASSERT(near(sum.moment.z, 0.0, L * tolerance));
            // What torque remains is shown at the right end, not hidden in a support.
            RC_ASSERT(near(sum.moment.x, -result.load_cases[i].torque_residual_Nmm, L * tolerance));
        }
    });
}

TEST_CASE("the shares of the loads add up to the reactions", "[core][laws]")
{
    law("superposition", [] {
        const Assessment result = analysed(drawArrangement());
        for (std::size_t i = 0; i < result.load_cases.size(); ++i) {
            const ShareTable table = loadShares(result, i);
            RC_ASSERT(table.valid);
            const double tolerance = solved * scaleOf(result, i);
            for (std::size_t s = 0; s < result.supports.size(); ++s) {
                Vector3 sum;
                for (const LoadShare& share : table.supports[s])
                    sum = {sum.x + share.force_N.x, sum.y + share.force_N.y, sum.z + share.force_N.z};
                const Vector3& F = result.supports[s].cases[i].force_N;
                RC_ASSERT(near(sum.x, F.x, tolerance));
                RC_ASSERT(near(sum.y, F.y, tolerance));
                RC_ASSERT(near(sum.z, F.z, tolerance));
            }
        }
    });
}

TEST_CASE("a shaft and its mirror image have mirrored reactions and the same lives", "[core][laws]")
{
    int lives = 0;
    law("mirror", [&] {
        const Arrangement a = drawArrangement();
        const Assessment one = analysed(a);
        const Assessment two = analysed(mirrored(a));
        requireSameReactions(one, two, 1.0, -1.0);
        RC_ASSERT(near(one.shaft.max_deflection_mm, two.shaft.max_deflection_mm, 1e-7 * (one.shaft.max_deflection_mm + 1e-6)));
        for (std::size_t s = 0; s < one.supports.size(); ++s) {
            const auto& first = one.supports[s].bearing;
            const auto& second = two.supports[s].bearing;
            RC_ASSERT(first.has_value() == second.has_value());
            if (first && first->L10_h && second->L10_h) {
                ++lives;
                RC_ASSERT(near(*first->L10_h / *second->L10_h, 1.0, 1e-6)); // rounding of the load, to the third or 10/3rd power
            }
        }
    });
    CHECK(lives > 0);
}

TEST_CASE("k times the loads gives k times the reactions", "[core][laws]")
{
    law("scaling", [] {
        const Arrangement a = drawArrangement();
        const double k = 0.25 * *rc::gen::inRange(1, 13);
        requireSameReactions(analysed(withLoadsTimes(a, 1.0)), analysed(withLoadsTimes(a, k)), k);
    });
}

TEST_CASE("less load, more life", "[core][laws]")
{
    int lives = 0;
    law("life", [&] {
        const Arrangement a = drawArrangement();
        const Assessment full = analysed(withLoadsTimes(a, 1.0));
        const Assessment less = analysed(withLoadsTimes(a, 0.8));
        for (std::size_t s = 0; s < full.supports.size(); ++s) {
            const auto& first = full.supports[s].bearing;
            const auto& second = less.supports[s].bearing;
            if (first && second && first->L10_h && second->L10_h) {
                ++lives;
                RC_ASSERT(*second->L10_h > *first->L10_h);
            }
        }
    });
    CHECK(lives > 0);
}

TEST_CASE("splitting a segment changes nothing", "[core][laws]")
{
    law("split", [] {
        const Arrangement a = drawArrangement();
        const auto index = static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(a.shaft.segments.size())));
        const Segment& segment = a.shaft.segments[index];
        const double at = segment.length_mm * 0.1 * *rc::gen::inRange(1, 10);
        const auto split = splitSegment(a, segment.id, at);
        RC_ASSERT(split.ok());
        RC_ASSERT(split->shaft.segments.size() == a.shaft.segments.size() + 1);
        const Assessment one = analysed(a), two = analysed(*split);
        requireSameReactions(one, two);
        RC_ASSERT(near(one.shaft.mass_kg, two.shaft.mass_kg, 1e-9 * one.shaft.mass_kg));
    });
}

TEST_CASE("the order of the parts does not matter", "[core][laws]")
{
    law("order", [] {
        const Arrangement a = drawArrangement();
        Arrangement b = a;
        std::reverse(b.parts.begin(), b.parts.end());
        const Assessment one = analysed(a), two = analysed(b);
        requireSameReactions(one, two);
        RC_ASSERT(codesOf(one) == codesOf(two));
    });
}

TEST_CASE("an adjusted pair holds the axial force and its induced loads", "[core][laws]")
{
    int pairs = 0;
    law("pair", [&] {
        const Arrangement a = drawArrangement();
        const Assessment result = analysed(a);
        for (std::size_t i = 0; i < result.load_cases.size(); ++i) {
            double sum = 0.0;
            for (const SupportAssessment& support : result.supports)
                sum += support.cases[i].axial_N;
            RC_ASSERT(near(sum, -result.load_cases[i].K_N, 1e-9 * scaleOf(result, i)));
            for (std::size_t s = 0; s < result.supports.size(); ++s) {
                const SupportAssessment& support = result.supports[s];
                if (support.role != Role::adjusted || !support.bearing)
                    continue;
                ++pairs;
                const BearingCase& here = support.bearing->cases[i];
                RC_ASSERT(here.induced_axial_N.has_value());
                RC_ASSERT(std::abs(support.cases[i].axial_N) >= *here.induced_axial_N * (1.0 - 1e-9));
                // pushed apart by the rollers: the plus bearing holds towards -x
                RC_ASSERT((a.supports[s].carries == Carries::plus ? -1.0 : 1.0) * support.cases[i].axial_N >= 0.0);
            }
        }
    });
    CHECK(pairs > 0);
}

TEST_CASE("all 39 kinds are judged at every support, best first", "[core][laws]")
{
    law("suggestions", [] {
        const Assessment result = analysed(drawArrangement());
        for (const SupportAssessment& support : result.supports) {
            RC_ASSERT(support.suggestions.size() == std::size_t(39));
            std::set<Family> seen;
            for (std::size_t k = 0; k < support.suggestions.size(); ++k) {
                const Suggestion& here = support.suggestions[k];
                seen.insert(here.family);
                RC_ASSERT(std::isfinite(here.score));
                RC_ASSERT(!here.reasons.empty() || here.verdict != Verdict::unsuited);
                if (k == 0)
                    continue;
                const Suggestion& before = support.suggestions[k - 1];
                RC_ASSERT(static_cast<int>(before.verdict) <= static_cast<int>(here.verdict));
                if (before.verdict == here.verdict)
                    RC_ASSERT(before.score >= here.score);
            }
            RC_ASSERT(seen.size() == std::size_t(39));
        }
    });
}

TEST_CASE("the same input gives the same assessment", "[core][laws]")
{
    law("pure", [] {
        const Arrangement a = drawArrangement();
        const Arrangement before = a;
        const Assessment one = analysed(a), two = analysed(a);
        RC_ASSERT(a == before);
        RC_ASSERT(one.findings == two.findings);
        RC_ASSERT(one.loads == two.loads);
        RC_ASSERT(one.assumptions == two.assumptions);
        for (std::size_t s = 0; s < one.supports.size(); ++s) {
            RC_ASSERT(one.supports[s].suggestions == two.supports[s].suggestions);
            for (std::size_t i = 0; i < one.load_cases.size(); ++i)
                RC_ASSERT(one.supports[s].cases[i].force_N == two.supports[s].cases[i].force_N);
        }
        for (const Finding& finding : one.findings) {
            for (const auto& [name, value] : finding.values.entries) {
                if (const double* number = std::get_if<double>(&value))
                    RC_ASSERT(std::isfinite(*number));
            }
        }
    });
}

TEST_CASE("an arrangement comes back from its file as it was", "[core][laws]")
{
    law("round trip", [] {
        const Arrangement a = drawArrangement();
        const std::string text = writeArrangement(a);
        const ReadResult read = readArrangement(text, "drawn");
        RC_ASSERT(read.ok());
        RC_ASSERT(*read.arrangement == a);
        RC_ASSERT(writeArrangement(*read.arrangement) == text);
    });
}

TEST_CASE("what is done can be undone", "[core][laws]")
{
    law("undo", [] {
        const Arrangement a = drawArrangement();
        const Arrangement before = a;
        static const std::vector<std::string> kinds = {"cylindrical_gear", "bevel_gear", "worm",      "belt_pulley",
                                                       "coupling",         "weight",     "point_load"};
        const auto kind = static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(kinds.size())));
        const auto part = newPart(a, kinds[kind], 0.5 * a.shaft.length_mm());
        RC_ASSERT(part.has_value());
        const auto added = addPart(a, *part);
        RC_ASSERT(added.ok());
        RC_ASSERT(a == before); // an edit leaves its input alone
        RC_ASSERT(!(*added == before));
        const auto removed = removePart(*added, part->id);
        RC_ASSERT(removed.ok());
        RC_ASSERT(*removed == before);
    });
}
