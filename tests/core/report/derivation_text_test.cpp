#include "core/report/derivation_text.h"

#include "core/analysis/shares.h"
#include "core/report/report.h"
#include "core/units/number_text.h"
#include "report_fixture.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace shaftwright;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace
{

DerivationStep step(const char* formula, NamedValues inputs, double result, const char* symbol = "R", const char* unit = "N")
{
    return {"equivalent_load", symbol, formula, std::move(inputs), result, unit, ""};
}

std::string plain(const DerivationStep& one)
{
    return derivationLine(one, Texts::of(Language::english), Typography::plain);
}

/// Numbers of a text in order; a pocket calculator's user reads them off the line.
std::vector<double> numbersOf(const std::string& text)
{
    std::vector<double> numbers;
    std::size_t at = 0;
    while (at < text.size()) {
        if (text[at] >= '0' && text[at] <= '9' && (at == 0 || !std::isalpha(static_cast<unsigned char>(text[at - 1])))) {
            std::size_t end = at;
            while (end < text.size() && ((text[end] >= '0' && text[end] <= '9') || text[end] == '.'))
                ++end;
            if (const auto number = parseDecimal(std::string_view(text).substr(at, end - at)))
                numbers.push_back(*number);
            at = end;
        } else {
            ++at;
        }
    }
    return numbers;
}

void collect(const Assessment& assessment, std::vector<DerivationStep>& steps)
{
    const auto take = [&](const Derivation& derivation) { steps.insert(steps.end(), derivation.begin(), derivation.end()); };
    for (const CaseLoads& loads : assessment.loads) {
        for (const PartLoad& load : loads.parts)
            take(load.derivation);
    }
    for (std::size_t i = 0; i < assessment.beam.cases.size(); ++i) {
        for (const HandStatics& hand : handStatics(assessment, i))
            take(hand.steps);
    }
    for (const SupportAssessment& support : assessment.supports) {
        if (!support.bearing)
            continue;
        take(support.bearing->derivation);
        for (const BearingCase& in : support.bearing->cases)
            take(in.derivation);
    }
}

} // namespace

TEST_CASE("a derivation shows formula, numbers and result in one line", "[core][report]")
{
    // By hand: 0.56 x 1200 + 1.8 x 400 = 672 + 720 = 1392.
    CHECK(plain(step("X Fr + Y Fa", {{"X", 0.56}, {"Fr", 1200.0}, {"Y", 1.8}, {"Fa", 400.0}}, 1392.0, "P")) ==
          "P = X Fr + Y Fa = 0.56 \u00b7 1200 + 1.8 \u00b7 400 = 1392 N");
    CHECK(plain(step("Fr", {{"Fr", 1200.0}}, 1200.0, "P")) == "P = Fr = 1200 N");
    CHECK(plain(step("C", {}, 29500.0, "C")) == "C = 29500 N");
}

TEST_CASE("negative numbers stand in brackets after a sign and angles carry their degree", "[core][report]")
{
    CHECK(plain(step("a + b", {{"a", 1.0}, {"b", -2.0}}, -1.0)) == "R = a + b = 1 + (-2) = -1 N");
    // tan 30 deg = 0.57735 (any table of trigonometric functions).
    CHECK(plain(step("F tan beta", {{"F", 100.0}, {"beta", 30.0}}, 57.735026918962574)) ==
          "R = F tan beta = 100 \u00b7 tan 30\u00b0 = 57.735 N");
}

TEST_CASE("a formula in words lists its inputs instead", "[core][report]")
{
    CHECK(plain(step("vector sum of T1 and T2 along their strands", {{"T1", 300.0}, {"T2", 100.0}}, 380.0, "F")) ==
          "F = vector sum of T1 and T2 along their strands = 380 N (T1 = 300, T2 = 100)");
}

TEST_CASE("fine typography uses Greek letters, thin spaces and a true minus; German a comma", "[core][report]")
{
    const DerivationStep one = step("F tan alpha_n", {{"F", -12345.6}, {"alpha_n", 45.0}}, -12345.6);
    CHECK(derivationLine(one, Texts::of(Language::german), Typography::fine).find("\u03b1_n") != std::string::npos);
    CHECK(derivationLine(one, Texts::of(Language::german), Typography::fine).find("\u221212\u2009346") != std::string::npos);
    CHECK(derivationLine(step("a / b", {{"a", 1.0}, {"b", 8.0}}, 0.125), Texts::of(Language::german), Typography::fine)
              .find("0,125") != std::string::npos);
}

TEST_CASE("the calculator follows the rules of arithmetic", "[core][report]")
{
    const auto value = [](const char* formula, NamedValues inputs) {
        return report::formulaValue(step(formula, std::move(inputs), 0));
    };
    CHECK_THAT(*value("2 + 3 4", {}), WithinAbs(14.0, 1e-12));
    CHECK_THAT(*value("12 / (2 3)", {}), WithinAbs(2.0, 1e-12));
    CHECK_THAT(*value("12 / 2 3", {}), WithinAbs(18.0, 1e-12));
    CHECK_THAT(*value("-(1 + 2) / 4", {}), WithinAbs(-0.75, 1e-12));
    CHECK_THAT(*value("2^3 2", {}), WithinAbs(16.0, 1e-12));
    CHECK_THAT(*value("{1 + [2]^2}^-1", {}), WithinAbs(0.2, 1e-12));
    CHECK_THAT(*value("max(S+, S- + K)", {{"S+", 3.0}, {"S-", 2.0}, {"K", 5.0}}), WithinAbs(7.0, 1e-12));
    CHECK_THAT(*value("|a - b|", {{"a", 1.0}, {"b", 4.0}}), WithinAbs(3.0, 1e-12));
    CHECK_THAT(*value("sin(180\u00b0/z)", {{"z", 6.0}}), WithinAbs(0.5, 1e-12));
    CHECK_FALSE(value("sum(F)", {}));
    CHECK_FALSE(value("a +- b", {{"a", 1.0}, {"b", 1.0}}));
}

TEST_CASE("every derivation of a gearbox shaft gives its own result again", "[core][report]")
{
    std::vector<DerivationStep> steps;
    collect(test::analysed(test::gearbox()), steps);
    REQUIRE(steps.size() > 20);
    int worked = 0;
    for (const DerivationStep& one : steps) {
        const auto value = report::formulaValue(one);
        if (!value)
            continue;
        ++worked;
        INFO(one.code << ": " << plain(one));
        // The inputs stand in the step at full precision; only the order of operations differs.
        CHECK_THAT(*value, WithinRel(one.result, 1e-9) || WithinAbs(one.result, 1e-9));
    }
    CHECK(worked > 20);
}

TEST_CASE("the printed life formula recomputes with the printed numbers", "[core][report]")
{
    const Assessment assessment = test::analysed(test::gearbox());
    REQUIRE(assessment.supports[0].bearing);
    int seen = 0;
    for (const BearingCase& in : assessment.supports[0].bearing->cases) {
        for (const DerivationStep& one : in.derivation) {
            if (one.symbol != "L10" && one.symbol != "L10h")
                continue;
            ++seen;
            const std::string line = plain(one);
            const std::string tail = line.substr(line.find("= ", line.find("= ") + 1) + 2);
            const std::vector<double> n = numbersOf(tail);
            INFO(line);
            if (one.symbol == "L10") {
                REQUIRE(n.size() >= 4); // C, P, p, result
                const double expected = std::pow(n[0] / n[1], n[2]);
                // Printed with five figures: half a unit of the last.
                CHECK_THAT(n[3], WithinRel(expected, 6e-5));
            } else {
                REQUIRE(n.size() >= 6); // 10, 6, L10, 60, n, result
                const double expected = 1e6 * n[2] / (60.0 * n[4]);
                CHECK_THAT(n[5], WithinRel(expected, 6e-5));
            }
        }
    }
    CHECK(seen == 4);
}
