#include "core/catalogue/catalogue.h"
#include "core/selection/judge.h"
#include "core/selection/row_source.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace shaftwright;

namespace
{

Catalogues generic()
{
    return Catalogues{{&genericCatalogue()}};
}

BearingChoice one(const std::string& designation, Family family)
{
    const CatalogueRow* row = genericCatalogue().find(designation);
    REQUIRE(row != nullptr);
    BearingChoice choice;
    choice.family = family;
    choice.rows = {{*row, std::nullopt}};
    return choice;
}

SupportQuestion question(Role role, double seat_mm, double Fr_N, double Fa_N, double speed_rpm, double tilt_mrad)
{
    SupportQuestion q;
    q.role = role;
    q.seat_mm = seat_mm;
    q.required_L_h = 10000.0;
    q.cases = {{Fr_N, Fa_N, Fa_N > 0.0 ? 1 : 0, speed_rpm, 1.0, tilt_mrad}};
    return q;
}

Findings judge(const SupportQuestion& q, const Settled& settled, const std::optional<BearingChoice>& chosen,
               ChoiceSurroundings around = {"B", "right", 0.0, false})
{
    const auto suggestions = suggest(q, settled, {}, generic());
    std::optional<Suggestion> judged;
    if (chosen)
        judged = judgeChoice(*chosen, q, settled, {});
    return choiceFindings(around, q, settled, suggestions, chosen ? &*chosen : nullptr, judged ? &*judged : nullptr, {},
                          generic());
}

const Finding* find(const Findings& findings, const std::string& code)
{
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
    return found == findings.end() ? nullptr : &*found;
}

double number(const Finding* finding, const char* name)
{
    REQUIRE(finding != nullptr);
    const TextValue* value = finding->values.find(name);
    REQUIRE(value != nullptr);
    return std::get<double>(*value);
}

} // namespace

TEST_CASE("a sound choice of bearing brings no stop and no caution", "[core][selection]")
{
    const Findings findings =
        judge(question(Role::locating, 30, 1500, 0, 1450, 0.4), Settled{}, one("6206", Family::deep_groove_ball));
    for (const Finding& finding : findings) {
        INFO(finding.code);
        CHECK(finding.severity == Severity::note);
    }
}

TEST_CASE("a tapered bearing alone cannot locate: the choice is excluded, and the one that would do is named",
          "[core][selection]")
{
    const Findings findings =
        judge(question(Role::locating, 30, 1500, 300, 1450, 0.4), Settled{}, one("30206", Family::tapered_roller));
    const Finding* finding = find(findings, "chosen-is-excluded");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::stop);
    CHECK(finding->subject == "B");
    CHECK(finding->path == "supports.B.bearing");
    CHECK(std::get<std::string>(*finding->values.find("reason")) == "X04");
    CHECK(std::get<std::string>(*finding->values.find("bearing")) == "30206");
    CHECK(finding->values.find("best") != nullptr);
}

TEST_CASE("tilt beyond the hard limit stops, beyond the usual one warns, with the numbers of both", "[core][selection]")
{
    const BearingChoice chosen = one("NU206", Family::cylindrical_roller_NU);
    SupportQuestion q = question(Role::non_locating, 30, 1500, 0, 1450, 1.5);
    const Findings warned = judge(q, Settled{}, chosen);
    CHECK(number(find(warned, "tilt-costs-life"), "tilt_judged_mrad") == 1.5);
    // Budynas and Nisbett table 7-2 (from memory): cylindrical roller bearings up to 1.2 mrad.
    CHECK(number(find(warned, "tilt-costs-life"), "tilt_limit_mrad") == 1.2);
    CHECK(find(warned, "chosen-is-reserved") == nullptr); // one condition, one code
    q.cases[0].tilt_judged_mrad = 2.5;
    const Findings stopped = judge(q, Settled{}, chosen);
    CHECK(find(stopped, "tilt-beyond-limit")->severity == Severity::stop);
    CHECK(find(stopped, "tilt-costs-life") == nullptr);
    CHECK(find(stopped, "chosen-is-excluded") == nullptr);
}

TEST_CASE("needles are warned about tilt earlier than their verdict turns", "[core][selection]")
{
    const Findings findings =
        judge(question(Role::non_locating, 30, 1500, 0, 1450, 0.6), Settled{}, one("NA4906", Family::needle_roller));
    const Finding* finding = find(findings, "tilt-costs-life");
    REQUIRE(finding != nullptr);
    CHECK(finding->variant == "needle");
    CHECK(finding->severity == Severity::caution);
}

TEST_CASE("a bearing too large for its space, too fast for its lubricant or on a soft raceway is stopped by name",
          "[core][selection]")
{
    SupportQuestion q = question(Role::non_locating, 30, 1500, 0, 1450, 0.2);
    q.greatest_outer_mm = 60.0;
    CHECK(find(judge(q, Settled{}, one("6206", Family::deep_groove_ball)), "housing-space")->variant == "outer");

    q = question(Role::locating, 30, 1500, 0, 20000, 0.2);
    const Findings fast = judge(q, Settled{}, one("6206", Family::deep_groove_ball));
    // (30 + 62)/2 * 20000 = 920 000 mm/min, by hand.
    CHECK(number(find(fast, "speed-beyond-limit"), "ndm") == Approx(920000.0));
    CHECK(find(fast, "chosen-is-excluded") == nullptr);

    q = question(Role::non_locating, 30, 800, 0, 300, 0.2);
    const Finding* soft = nullptr;
    const Findings raceway = judge(q, Settled{}, one("HK3020", Family::needle_drawn_cup));
    soft = find(raceway, "raceway-too-soft");
    REQUIRE(soft != nullptr);
    CHECK(soft->severity == Severity::stop);
    CHECK(number(soft, "hardness_needed_HRC") == 58.0);
}

TEST_CASE("a seat between the standard bores names its neighbours", "[core][selection]")
{
    const Findings findings = judge(question(Role::locating, 31.7, 1500, 0, 1450, 0.2), Settled{}, std::nullopt);
    const Finding* finding = find(findings, "seat-not-standard");
    CHECK(number(finding, "smaller_mm") == 30.0);
    CHECK(number(finding, "larger_mm") == 35.0);
    CHECK(finding->severity == Severity::stop);
    // ISO 15: 3..10, 12, 15, 17, 20, by 5 to 110, by 10 to 200, by 20 to 500.
    CHECK(neighbouringBores(17).standard);
    CHECK(*neighbouringBores(17).larger_mm == 20.0);
    CHECK(*neighbouringBores(110).smaller_mm == 105.0);
    CHECK(*neighbouringBores(110).larger_mm == 120.0);
    CHECK_FALSE(neighbouringBores(500).larger_mm.has_value());
    CHECK_FALSE(neighbouringBores(2).standard);
}

TEST_CASE("where nothing lasts at the seat the next larger one is looked at", "[core][selection]")
{
    SupportQuestion q = question(Role::non_locating, 20, 6000, 0, 1450, 0.2);
    q.greatest_outer_mm = 62.0;
    q.greatest_width_mm = 20.0;
    q.s_required_mm = 0.1;
    const Findings findings = judge(q, Settled{}, std::nullopt);
    const Finding* finding = find(findings, "seat-too-small");
    if (finding == nullptr) {
        for (const Finding& f : findings)
            UNSCOPED_INFO(f.code);
    }
    REQUIRE(finding != nullptr);
    CHECK(number(finding, "larger_mm") == 25.0);
    CHECK(finding->severity == Severity::caution);
}

TEST_CASE("where every family is excluded the list says so and why", "[core][selection]")
{
    SupportQuestion q = question(Role::locating, 30, 90000, 30000, 6000, 9.0);
    q.greatest_outer_mm = 40.0;
    q.greatest_width_mm = 8.0;
    const Findings findings = judge(q, Settled{}, std::nullopt);
    const Finding* finding = find(findings, "no-family");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::stop);
    CHECK(number(finding, "count") >= 2.0);
    CHECK(finding->values.find("reason") != nullptr);
}

TEST_CASE("a bearing of the same space with a better verdict is pointed at", "[core][selection]")
{
    SupportQuestion q = question(Role::non_locating, 40, 5000, 0, 1450, 0.2);
    q.required_L_h = 20000.0;
    q.s_required_mm = 0.1;
    const Findings findings = judge(q, Settled{}, one("6208", Family::deep_groove_ball));
    const Finding* finding = find(findings, "equal-dimension-better");
    REQUIRE(finding != nullptr);
    // ISO 15: 40 x 80 x 18 is the space of 6208 and of NU208.
    CHECK(std::get<std::string>(*finding->values.find("other")) == "NU208");
    CHECK(number(finding, "outer_mm") == 80.0);
    CHECK(number(finding, "width_mm") == 18.0);
}

TEST_CASE("a sliding part is sent to a linear guide and nothing else is said", "[core][selection]")
{
    Settled settled;
    settled.motion = Motion::linear;
    const Findings findings = judge(question(Role::locating, 30, 1500, 0, 0, 0.2), settled, std::nullopt);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].code == "linear-motion");
    CHECK(findings[0].severity == Severity::stop);
}

TEST_CASE("a belt beside the locating support is worth a note, a loud family in a quiet machine too", "[core][selection]")
{
    Settled settled;
    settled.quiet = Grade::high;
    const Findings findings = judge(question(Role::locating, 30, 1500, 0, 1450, 0.2), settled,
                                    one("22206", Family::spherical_roller), {"B", "right", 700.0, true});
    CHECK(number(find(findings, "belt-pulls-locating"), "Fr_other_N") == 700.0);
    CHECK(find(findings, "noise-family") != nullptr);
}

TEST_CASE("sizes at a seat grow by section and can be stepped through to both ends", "[core][selection]")
{
    const std::vector<BearingChoice> sizes = choicesForSeat(Family::deep_groove_ball, 40.0, std::nullopt, generic());
    REQUIRE(sizes.size() == 7); // 618, 619, 160, 60, 62, 63, 64
    double last = 0.0;
    for (const BearingChoice& size : sizes) {
        const CatalogueRow& row = size.rows.front().row;
        const double section = 0.5 * (row.outer_mm - row.bore_mm) * row.width_mm;
        CHECK(section >= last);
        last = section;
    }
    BearingChoice here = sizes.front();
    int steps = 0;
    while (const auto next = stepSize(here, 1, 40.0, generic())) {
        here = *next;
        ++steps;
    }
    CHECK(steps == 6);
    CHECK(here.designation() == "6408");
    CHECK(stepSize(here, -1, 40.0, generic())->designation() == "6308");
    CHECK_FALSE(stepSize(sizes.front(), -1, 40.0, generic()).has_value());
    CHECK(sizesForSeat(Family::toroidal_roller, 40.0, generic()).empty());
    CHECK(sizesForSeat(Family::plain_bronze, 40.0, generic()).empty());
}

TEST_CASE("a stepped set stays a set with the sides that it had", "[core][selection]")
{
    const auto sets = choicesForSeat(Family::angular_contact_set_O, 45.0, std::nullopt, generic());
    REQUIRE(sets.size() >= 2);
    CHECK(sets.front().rows.size() == 2);
    CHECK(sets.front().rows[0].carries == Carries::plus);
    CHECK(sets.front().rows[1].carries == Carries::minus);
    BearingChoice turned = sets.front();
    std::swap(turned.rows[0].carries, turned.rows[1].carries);
    const auto next = stepSize(turned, 1, 45.0, generic());
    REQUIRE(next.has_value());
    CHECK(next->rows[0].carries == Carries::minus);
}

TEST_CASE("the space of 40 x 80 x 18 takes what the dimension plan of ISO 15 puts there", "[core][selection]")
{
    std::vector<std::string> names;
    for (const BearingChoice& other : equalDimensionAlternatives(one("6208", Family::deep_groove_ball), generic()))
        names.push_back(other.designation());
    for (const char* expected : {"1208", "7208-40", "QJ208", "NU208", "NJ208", "NUP208"}) {
        INFO(expected);
        CHECK(std::find(names.begin(), names.end(), expected) != names.end());
    }
}

TEST_CASE("the quick rating of the suggestions is the rating of the bearing that is placed", "[core][selection]")
{
    const selection::RuleData& rules = selection::ruleData();
    for (const Family family : allFamilies()) {
        const selection::FamilyTraits& traits = rules.of(family);
        if (!traits.geometry || traits.kind == selection::Kind::composite)
            continue;
        int count = 0;
        for (const double bore : {30.0, 45.0, 100.0}) {
            for (const BearingChoice& choice : choicesForSeat(family, bore, Carries::plus, generic())) {
                const BearingRating slow = ratingOf(choice);
                const BearingRating quick = selection::quickRating(choice.rows.front().row, traits);
                INFO(choice.designation());
                ++count;
                CHECK(quick.C_N == Approx(slow.C_N).epsilon(1e-12));
                CHECK(quick.C0_N == Approx(slow.C0_N).epsilon(1e-12));
                for (const double Fa : {0.0, 500.0, 2000.0}) {
                    const double P = equivalentLoadQuick_N(slow, 3000.0, Fa), Q = equivalentLoadQuick_N(quick, 3000.0, Fa);
                    CHECK(((std::isnan(P) && std::isnan(Q)) || P == Approx(Q).epsilon(1e-12)));
                    const double P0 = staticLoadQuick_N(slow, 3000.0, Fa), Q0 = staticLoadQuick_N(quick, 3000.0, Fa);
                    CHECK(((std::isnan(P0) && std::isnan(Q0)) || P0 == Approx(Q0).epsilon(1e-12)));
                }
            }
        }
        INFO(toString(family));
        CHECK(count > 0);
    }
}
