#include "core/catalogue/catalogue.h"
#include "core/selection/judge.h"
#include "core/selection/rule_data.h"
#include "core/selection/suggestion.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>
#include <string>

using namespace shaftwright;

namespace
{

constexpr unsigned seed = 20261;

struct Sample {
    SupportQuestion question;
    Settled settled;
};

/// Supports of all roles on a grid of usual and harsh conditions.
Sample sample(std::mt19937& random)
{
    const auto pick = [&](auto... values) {
        const std::common_type_t<decltype(values)...> list[] = {values...};
        return list[random() % sizeof...(values)];
    };
    Sample s;
    s.question.role = pick(Role::locating, Role::non_locating, Role::adjusted, Role::end_play, Role::axial_only);
    s.question.seat_mm = pick(10.0, 20.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 32.5);
    const int cases = pick(1, 2, 3);
    for (int i = 0; i < cases; ++i) {
        SupportLoad load;
        load.Fr_N = pick(0.0, 100.0, 1000.0, 5000.0, 20000.0);
        load.Fa_N = s.question.role == Role::non_locating ? 0.0 : pick(0.0, 50.0, 800.0, 4000.0, 15000.0);
        load.axial_sense = load.Fa_N > 0.0 ? pick(1, -1) : 0;
        load.speed_rpm = pick(0.0, 10.0, 300.0, -1500.0, 6000.0, 20000.0);
        load.time_share = 1.0 / cases;
        load.tilt_judged_mrad = pick(0.05, 0.3, 0.7, 1.5, 4.0, 10.0);
        s.question.cases.push_back(load);
    }
    s.question.governing_case = static_cast<int>(random() % static_cast<unsigned>(cases));
    if (pick(0, 1))
        s.question.greatest_outer_mm = s.question.seat_mm + pick(15.0, 40.0, 90.0);
    if (pick(0, 1))
        s.question.greatest_width_mm = pick(12.0, 25.0, 60.0);
    if (pick(0, 1, 1))
        s.question.required_L_h = pick(1000.0, 12000.0, 60000.0);
    s.question.s_required_mm = s.question.role == Role::non_locating ? pick(0.1, 0.5, 2.0) : 0.0;
    s.question.play_mm = 0.3;
    s.settled.lubricant = pick(Lubricant::oil, Lubricant::grease);
    s.settled.accuracy = pick(Grade::normal, Grade::high);
    s.settled.quiet = pick(Grade::normal, Grade::high);
    s.settled.guide = pick(Grade::normal, Grade::high);
    s.settled.dirt = pick(Dirt::clean, Dirt::dirty, Dirt::severe);
    s.settled.stiffness_wish = pick(StiffnessWish::none, StiffnessWish::radial, StiffnessWish::axial);
    s.settled.motion = pick(Motion::rotation, Motion::rotation, Motion::rotation, Motion::oscillation);
    s.settled.temperature_C = pick(40.0, 80.0, 130.0, 210.0);
    s.settled.allow_plain = pick(false, true);
    s.settled.allow_special = pick(false, true);
    s.settled.profile = pick(std::string("general_gearbox"), std::string("agricultural"), std::string("low_friction"));
    return s;
}

Catalogues generic()
{
    return Catalogues{{&genericCatalogue()}};
}

/// All 39 in the order of the enum.
std::vector<Suggestion> byFamily(std::vector<Suggestion> list)
{
    std::sort(list.begin(), list.end(), [](const Suggestion& a, const Suggestion& b) { return a.family < b.family; });
    return list;
}

bool isPlain(Family family)
{
    return family >= Family::plain_sintered && family <= Family::plain_hydrodynamic;
}

bool hasCode(const Suggestion& s, const std::string& code)
{
    return std::any_of(s.reasons.begin(), s.reasons.end(), [&](const Reason& r) { return r.code == code; });
}

} // namespace

TEST_CASE("utilities and scores lie between 0 and 1, whatever the support", "[core][selection]")
{
    std::mt19937 random(seed);
    for (int i = 0; i < 150; ++i) {
        const Sample s = sample(random);
        const std::vector<Suggestion> list = suggest(s.question, s.settled, {}, generic());
        REQUIRE(list.size() == 39);
        for (const Suggestion& suggestion : list) {
            INFO(i << " " << toString(suggestion.family));
            REQUIRE((suggestion.score >= 0.0 && suggestion.score <= 1.0));
            for (const double utility : suggestion.utilities)
                REQUIRE((utility >= 0.0 && utility <= 1.0));
            REQUIRE_FALSE(suggestion.reasons.empty());
            for (const Reason& reason : suggestion.reasons) {
                for (const auto& [name, value] : reason.values.entries) {
                    INFO(reason.code << " " << name);
                    if (const double* number = std::get_if<double>(&value))
                        REQUIRE(std::isfinite(*number));
                }
            }
        }
    }
}

TEST_CASE("the same question gives the same list", "[core][selection]")
{
    std::mt19937 random(seed + 1);
    for (int i = 0; i < 30; ++i) {
        const Sample s = sample(random);
        CHECK(suggest(s.question, s.settled, {}, generic()) == suggest(s.question, s.settled, {}, generic()));
    }
}

TEST_CASE("loads and ratings scaled by one factor change no verdict of rolling bearings", "[core][selection]")
{
    std::mt19937 random(seed + 2);
    Catalogue scaled = genericCatalogue();
    constexpr double factor = 4.0; // a power of two keeps every ratio exact
    for (CatalogueRow& row : scaled.rows) {
        row.C_N *= factor;
        row.C0_N *= factor;
        // ISO 76: C0 = f0 i Z Dw^2 cos(alpha); stress limits stay, so all stresses are scaled, f0 Fa/C0 is not.
    }
    scaled.buildIndex();
    for (int i = 0; i < 60; ++i) {
        Sample s = sample(random);
        const auto before = byFamily(suggest(s.question, s.settled, {}, generic()));
        for (SupportLoad& load : s.question.cases) {
            load.Fr_N *= factor;
            load.Fa_N *= factor;
        }
        const auto after = byFamily(suggest(s.question, s.settled, {}, Catalogues{{&scaled}}));
        for (std::size_t f = 0; f < before.size(); ++f) {
            if (isPlain(before[f].family))
                continue;
            INFO(i << " " << toString(before[f].family));
            CHECK(before[f].verdict == after[f].verdict);
        }
    }
}

TEST_CASE("more space never takes the last size away", "[core][selection]")
{
    std::mt19937 random(seed + 3);
    for (int i = 0; i < 100; ++i) {
        Sample s = sample(random);
        s.question.greatest_outer_mm = s.question.seat_mm + 40.0;
        s.question.greatest_width_mm = 30.0;
        const auto before = byFamily(suggest(s.question, s.settled, {}, generic()));
        *s.question.greatest_outer_mm *= 1.3;
        *s.question.greatest_width_mm *= 1.3;
        const auto after = byFamily(suggest(s.question, s.settled, {}, generic()));
        for (std::size_t f = 0; f < before.size(); ++f) {
            INFO(i << " " << toString(before[f].family));
            if (before[f].verdict != Verdict::unsuited)
                CHECK_FALSE((hasCode(after[f], "X21") || hasCode(after[f], "X22")));
        }
    }
}

TEST_CASE("a mirrored shaft gets the mirrored answer", "[core][selection]")
{
    std::mt19937 random(seed + 4);
    for (int i = 0; i < 60; ++i) {
        Sample s = sample(random);
        const auto before = byFamily(suggest(s.question, s.settled, {}, generic()));
        for (SupportLoad& load : s.question.cases) {
            load.axial_sense = -load.axial_sense;
            load.speed_rpm = -load.speed_rpm;
        }
        const auto after = byFamily(suggest(s.question, s.settled, {}, generic()));
        for (std::size_t f = 0; f < before.size(); ++f) {
            CHECK(before[f].verdict == after[f].verdict);
            CHECK(before[f].score == Approx(after[f].score).epsilon(1e-12));
        }
    }
}

TEST_CASE("for a given bearing life never rises with load or demand, nor the tilt mark with tilt", "[core][selection]")
{
    const CatalogueRow* row = genericCatalogue().find("6206");
    REQUIRE(row != nullptr);
    BearingChoice choice;
    choice.rows = {{*row, std::nullopt}};
    SupportQuestion question;
    question.role = Role::locating;
    question.seat_mm = 30.0;
    question.required_L_h = 15000.0;
    question.cases = {{500.0, 0.0, 0, 1450.0, 1.0, 0.1}};
    // Above 16 times the demand the mark falls again on purpose: the bearing is too large. Up to there it must not rise.
    double last = 2.0;
    for (double Fr = 700.0; Fr < 6000.0; Fr *= 1.1) {
        question.cases[0].Fr_N = Fr;
        const Suggestion s = judgeChoice(choice, question, Settled{}, {});
        if (*s.reserve <= 16.0) {
            CHECK(s.utilities[0] <= last);
            last = s.utilities[0];
        }
    }
    CHECK(last == 0.0);
    question.cases[0].Fr_N = 1000.0;
    last = 2.0;
    for (double hours = 5000.0; hours < 400000.0; hours *= 1.3) {
        question.required_L_h = hours;
        const Suggestion s = judgeChoice(choice, question, Settled{}, {});
        if (*s.reserve <= 16.0) {
            CHECK(s.utilities[0] <= last);
            last = s.utilities[0];
        }
    }
    last = 2.0;
    for (double tilt = 0.0; tilt < 6.0; tilt += 0.05) {
        question.cases[0].tilt_judged_mrad = tilt;
        const Suggestion s = judgeChoice(choice, question, Settled{}, {});
        CHECK(s.utilities[3] <= last);
        last = s.utilities[3];
    }
    CHECK(last == 0.0);
}

TEST_CASE("without a life asked nothing is said about life", "[core][selection]")
{
    std::mt19937 random(seed + 5);
    for (int i = 0; i < 60; ++i) {
        Sample s = sample(random);
        s.question.required_L_h.reset();
        for (const Suggestion& suggestion : suggest(s.question, s.settled, {}, generic())) {
            CHECK_FALSE(suggestion.reserve.has_value());
            CHECK_FALSE(hasCode(suggestion, "P01"));
            CHECK_FALSE(hasCode(suggestion, "P07"));
            for (const Reason& reason : suggestion.reasons) {
                if (reason.code == "X22" || reason.code == "R22")
                    CHECK_FALSE(reason.variant.empty()); // static safety or no rating only
            }
        }
    }
}

TEST_CASE("a question with a number that is not finite, or without loads, gets no answer", "[core][selection]")
{
    SupportQuestion question;
    question.seat_mm = 30.0;
    CHECK(suggest(question, Settled{}, {}, generic()).empty());
    question.cases = {{std::nan(""), 0.0, 0, 1000.0, 1.0, 0.1}};
    CHECK(suggest(question, Settled{}, {}, generic()).empty());
    question.cases[0].Fr_N = -5.0;
    CHECK(suggest(question, Settled{}, {}, generic()).empty());
    question.cases[0].Fr_N = 5.0;
    question.seat_mm = 0.0;
    CHECK(suggest(question, Settled{}, {}, generic()).empty());
    question.seat_mm = 30.0;
    CHECK(suggest(question, Settled{}, {}, generic()).size() == 39);
    question.a1 = std::nan("");
    CHECK(suggest(question, Settled{}, {}, generic()).empty());
}

TEST_CASE("no catalogue at all still gives 39 verdicts", "[core][selection]")
{
    SupportQuestion question;
    question.role = Role::locating;
    question.seat_mm = 30.0;
    question.cases = {{1000.0, 0.0, 0, 1000.0, 1.0, 0.1}};
    const auto list = suggest(question, Settled{}, {}, Catalogues{});
    REQUIRE(list.size() == 39);
    CHECK(list.front().verdict == Verdict::unsuited);
    for (const Suggestion& s : list) {
        if (s.family == Family::deep_groove_ball)
            CHECK(hasCode(s, "X21"));
    }
}
