#include "core/catalogue/catalogue.h"
#include "core/selection/suggestion.h"
#include "decisions.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <set>

using namespace shaftwright;

namespace
{

Catalogues generic()
{
    return Catalogues{{&genericCatalogue()}};
}

const Suggestion& of(const std::vector<Suggestion>& list, const std::string& family)
{
    const auto found = std::find_if(list.begin(), list.end(), [&](const Suggestion& s) { return toString(s.family) == family; });
    REQUIRE(found != list.end());
    return *found;
}

/// Where the program knowingly differs from the table, and the verdict it gives instead.
const std::map<std::string, std::string>& differences()
{
    static const std::map<std::string, std::string> list = {
        // No standard rates toroidal roller bearings: judged by kind, with care, without a size that could fail to fit.
        {"D2 toroidal_roller", "with_care"},
        {"D6 toroidal_roller", "with_care"},
        {"D9 toroidal_roller", "with_care"},
        // The catalogue holds the thin tapered series 329, which the estimate behind the table did not try; it fits.
        {"D8 tapered_roller_pair", "with_care"},
        // The table lets the single bearing carry the whole force all the time; here each sense has half of it.
        {"D11 composite_tandem_opposed", "suited"},
    };
    return list;
}

} // namespace

TEST_CASE("twelve supports get the verdicts that practice gives them, from the generic catalogue", "[core][selection]")
{
    std::map<std::string, std::vector<Suggestion>> results;
    for (const decisions::Decision& d : decisions::all())
        results[d.name] = suggest(d.question, d.settled, {}, generic());
    std::map<std::string, std::pair<double, std::string>> tabled_best;
    std::set<std::string> differing;
    for (const decisions::Row& row : decisions::table()) {
        const Suggestion& s = of(results[row.decision], row.family);
        const std::string verdict = decisions::word(s.verdict);
        const std::string key = row.decision + " " + row.family;
        INFO(key << ": " << verdict << ", tabled " << row.verdict << "; " << (s.choice ? s.choice->designation() : "-") << " L "
                 << s.L10_h.value_or(-1) << " S0 " << s.S0.value_or(-1) << " score " << s.score << " first "
                 << (s.reasons.empty() ? "-" : s.reasons.front().code));
        if (const auto other = differences().find(key); other != differences().end()) {
            CHECK(verdict == other->second);
            differing.insert(key);
        } else {
            CHECK((verdict == row.verdict || std::find(row.also.begin(), row.also.end(), verdict) != row.also.end()));
        }
        if (row.verdict == "suited" && std::stod(row.score) > tabled_best[row.decision].first)
            tabled_best[row.decision] = {std::stod(row.score), row.family};
    }
    CHECK(differing.size() == differences().size());
    CHECK(tabled_best.size() == 12);
    for (const auto& [name, best] : tabled_best) {
        const double lead = results[name].front().score - of(results[name], best.second).score;
        INFO(name << ": tabled first " << best.second << ", here " << toString(results[name].front().family) << " by " << lead);
        // 0.05: the ratings of the table are estimates that differ by some 15 % from the catalogue's.
        CHECK(lead <= 0.05);
    }
}

TEST_CASE("all 39 families are returned, best first, each with its reasons", "[core][selection]")
{
    for (const decisions::Decision& d : decisions::all()) {
        const std::vector<Suggestion> list = suggest(d.question, d.settled, {}, generic());
        REQUIRE(list.size() == 39);
        std::set<Family> families;
        for (std::size_t i = 0; i < list.size(); ++i) {
            const Suggestion& s = list[i];
            INFO(d.name << " " << toString(s.family));
            families.insert(s.family);
            if (i > 0) {
                CHECK(list[i - 1].verdict <= s.verdict);
                if (list[i - 1].verdict == s.verdict)
                    CHECK(list[i - 1].score >= s.score - 1e-9);
            }
            if (s.verdict == Verdict::unsuited) {
                REQUIRE_FALSE(s.reasons.empty());
                CHECK(s.reasons.front().effect == Effect::excludes);
                CHECK(s.score == 0.0);
            } else {
                const auto numbered = std::count_if(s.reasons.begin(), s.reasons.end(),
                                                    [](const Reason& reason) { return !reason.values.entries.empty(); });
                CHECK(numbered >= 2);
                if (s.verdict == Verdict::with_care)
                    CHECK(s.reasons.front().effect == Effect::reserves);
                else
                    CHECK(s.reasons.front().effect > Effect::reserves);
            }
        }
        CHECK(families.size() == 39);
    }
}

// Supports at which simpler rules had failed; practice (handbook examples, from memory) has the answers named.
TEST_CASE("a vertical motor rests on a deep groove ball bearing", "[core][selection]")
{
    SupportQuestion q;
    q.role = Role::locating;
    q.seat_mm = 45;
    q.cases = {{120, 650, -1, 1480, 1.0, 0.4}};
    q.required_L_h = 30000;
    q.greatest_outer_mm = 100;
    q.greatest_width_mm = 36;
    Settled settled;
    settled.quiet = Grade::high;
    settled.profile = "electric_motor";
    const auto list = suggest(q, settled, {}, generic());
    CHECK(list.front().family == Family::deep_groove_ball);
    CHECK(list.front().verdict == Verdict::suited);
}

TEST_CASE("a worm support in an adjusted pair takes steep tapered rollers or 40 degree balls", "[core][selection]")
{
    SupportQuestion q;
    q.role = Role::adjusted;
    q.seat_mm = 35;
    q.cases = {{1300, 3600, 1, 1450, 1.0, 0.3}};
    q.required_L_h = 10000;
    q.greatest_outer_mm = 80;
    q.greatest_width_mm = 32;
    q.carries = Carries::plus;
    Settled settled;
    settled.lubricant = Lubricant::oil;
    const auto list = suggest(q, settled, {}, generic());
    CHECK(of(list, "tapered_roller").verdict == Verdict::suited);
    CHECK(of(list, "tapered_roller").choice->designation() == "31307");
    CHECK(of(list, "tapered_roller").choice->rows.front().carries == Carries::plus);
    CHECK(of(list, "angular_contact_ball_40").verdict == Verdict::suited);
}

TEST_CASE("a light fast spindle gets a sprung deep groove ball bearing, not a reservation", "[core][selection]")
{
    SupportQuestion q;
    q.role = Role::locating;
    q.seat_mm = 10;
    q.cases = {{25, 10, 1, 14000, 1.0, 0.1}};
    q.required_L_h = 10000;
    const Suggestion s = of(suggest(q, Settled{}, {}, generic()), "deep_groove_ball");
    CHECK(s.verdict == Verdict::suited);
    CHECK(std::any_of(s.reasons.begin(), s.reasons.end(), [](const Reason& r) { return r.code == "P16"; }));
}

TEST_CASE("a joint that swings half a turn is not reserved for its swing", "[core][selection]")
{
    SupportQuestion q;
    q.role = Role::non_locating;
    q.seat_mm = 30;
    q.cases = {{2000, 0, 0, 20, 1.0, 0.2}};
    q.required_L_h = 5000;
    Settled settled;
    settled.motion = Motion::oscillation;
    for (const double swing : {60.0, 180.0}) {
        settled.swing_deg = swing;
        const Suggestion s = of(suggest(q, settled, {}, generic()), "deep_groove_ball");
        const bool reserved = std::any_of(s.reasons.begin(), s.reasons.end(), [](const Reason& r) { return r.code == "R30"; });
        CHECK(reserved == (swing < 90.0));
    }
}
