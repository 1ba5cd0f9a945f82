#include "core/catalogue/catalogue.h"
#include "core/selection/judge.h"
#include "decisions.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <functional>
#include <map>
#include <set>
#include <sstream>

using namespace shaftwright;

namespace
{

Catalogues generic()
{
    return Catalogues{{&genericCatalogue()}};
}

const Reason* find(const std::vector<Suggestion>& list, Family family, const std::string& code)
{
    for (const Suggestion& s : list) {
        if (s.family != family)
            continue;
        for (const Reason& reason : s.reasons) {
            if (reason.code == code)
                return &reason;
        }
    }
    return nullptr;
}

double number(const Reason* reason, const char* name)
{
    REQUIRE(reason != nullptr);
    const TextValue* value = reason->values.find(name);
    REQUIRE(value != nullptr);
    return std::get<double>(*value);
}

/// One input changed, and the number that has to follow.
struct Change {
    const char* rule;
    int decision; ///< 1 to 12
    Family family;
    const char* value;
    std::function<void(decisions::Decision&)> change;
    double before, after; ///< NaN: only that it changes
};

const double open = std::nan("");

/// Flat JSON of one language: "key": "text" per line.
std::map<std::string, std::string> sentences(const std::string& language)
{
    const std::string root = std::string(SHAFTWRIGHT_SOURCE_DIR) + "/resources/text/";
    std::map<std::string, std::string> out;
    for (const std::string& name : {"parts/" + language + ".reasons.json", language + ".json"}) {
        std::ifstream file(root + name);
        for (std::string line; std::getline(file, line);) {
            const std::size_t key = line.find('"'), end = line.find("\": \"");
            const std::size_t last = line.rfind('"');
            if (key != std::string::npos && end != std::string::npos && last > end + 3)
                out[line.substr(key + 1, end - key - 1)] = line.substr(end + 4, last - end - 4);
        }
    }
    return out;
}

void checkSentence(const std::map<std::string, std::string>& texts, const Reason& reason)
{
    const std::string key = "reason." + reason.code + (reason.variant.empty() ? "" : "." + reason.variant);
    const auto text = texts.find(key);
    INFO(key);
    REQUIRE(text != texts.end());
    for (std::size_t at = text->second.find('{'); at != std::string::npos; at = text->second.find('{', at + 1)) {
        const std::size_t end = text->second.find_first_of(":}", at);
        const std::string name = text->second.substr(at + 1, end - at - 1);
        INFO(name);
        CHECK(reason.values.find(name) != nullptr);
    }
    CHECK(texts.count("criterion." + reason.criterion) == 1);
}

} // namespace

TEST_CASE("change one input and the number in the reason changes with it", "[core][selection]")
{
    const std::vector<Change> changes = {
        {"X02", 1, Family::thrust_ball, "Fr_N", [](auto& d) { d.question.cases[0].Fr_N = 1700; }, 1500, 1700},
        {"X03", 11, Family::cylindrical_roller_NU, "Fa_N",
         [](auto& d) { d.question.cases[0].Fa_N = d.question.cases[1].Fa_N = 6500; }, 6000, 6500},
        {"X04", 10, Family::tapered_roller, "Fa_minus_N", [](auto& d) { d.question.cases[1].Fa_N = 1800; }, 1500, 1800},
        {"X05", 2, Family::tapered_roller, "s_required_mm", [](auto& d) { d.question.s_required_mm = 0.25; }, 0.1, 0.25},
        // Fa/Fr = 3600/4200 and 3900/4200 by hand.
        {"X09", 3, Family::spherical_roller, "axial_ratio",
         [](auto& d) { d.question.cases[0].Fa_N = d.question.cases[1].Fa_N = 3900; }, 0.857142857, 0.928571429},
        {"X10", 5, Family::four_point_contact_ball, "axial_ratio", [](auto& d) { d.question.cases[0].Fa_N = 1900; }, 0.047368421,
         0.1},
        {"X11", 5, Family::deep_groove_ball, "tilt_judged_mrad", [](auto& d) { d.question.cases[0].tilt_judged_mrad = 7.5; }, 6.0,
         7.5},
        {"X12", 2, Family::needle_drawn_cup, "hardness_HRC", [](auto& d) { d.settled.surface_hardness_HRC = 45; }, 30, 45},
        {"X21", 1, Family::angular_contact_ball_two_row, "greatest_width_mm", [](auto& d) { d.question.greatest_width_mm = 20; },
         22, 20},
        {"X22", 5, Family::self_aligning_ball, "L10_h", [](auto& d) { d.question.cases[0].speed_rpm = 120; }, open, open},
        {"X25", 7, Family::angular_contact_set_O, "ratio",
         [](auto& d) { d.question.cases[0].speed_rpm = d.question.cases[1].speed_rpm = 9000; }, open, open},
        {"R11", 12, Family::needle_roller, "tilt_judged_mrad", [](auto& d) { d.question.cases[0].tilt_judged_mrad = 1.4; }, 1.5,
         1.4},
        {"R14", 1, Family::deep_groove_ball, "temperature_C", [](auto& d) { d.settled.temperature_C = 150; }, open, open},
        {"R22", 4, Family::angular_contact_ball_40, "missing", [](auto& d) { d.question.required_L_h = 12500; }, open, open},
        {"R26", 8, Family::cylindrical_roller_NUP, "load_share", [](auto& d) { d.question.cases[0].Fr_N = 700; }, open, open},
        {"R30", 12, Family::deep_groove_ball, "swing_deg", [](auto& d) { d.settled.swing_deg = 40; }, open, open},
        {"P01", 1, Family::deep_groove_ball, "required_L10_h", [](auto& d) { d.question.a1 = 0.64 / 0.5; }, open, open},
        {"P03", 2, Family::cylindrical_roller_NU, "s_required_mm", [](auto& d) { d.question.s_required_mm = 0.2; }, 0.1, 0.2},
        {"P19", 12, Family::plain_bronze, "p_MPa", [](auto& d) { d.question.cases[0].Fr_N = 3600; }, 3000.0 / 900.0, 4.0},
    };
    for (Change change : changes) {
        INFO(change.rule << " of " << toString(change.family));
        decisions::Decision d = decisions::all()[static_cast<std::size_t>(change.decision - 1)];
        if (std::string(change.rule) == "R14")
            d.settled.temperature_C = 130;
        if (std::string(change.rule) == "R30")
            d.settled.swing_deg = 60;
        const double before =
            number(find(suggest(d.question, d.settled, {}, generic()), change.family, change.rule), change.value);
        change.change(d);
        const double after =
            number(find(suggest(d.question, d.settled, {}, generic()), change.family, change.rule), change.value);
        CHECK(before != after);
        if (!std::isnan(change.before)) {
            // 1e-8: the expected quotients are written with nine digits.
            CHECK(before == Approx(change.before).epsilon(1e-8));
            CHECK(after == Approx(change.after).epsilon(1e-8));
        }
    }
}

TEST_CASE("every reason that the twelve supports and their harsher cousins bring has its sentence in both languages",
          "[core][selection]")
{
    const auto en = sentences("en"), de = sentences("de");
    std::set<std::string> met;
    std::vector<decisions::Decision> questions = decisions::all();
    const std::size_t count = questions.size();
    for (std::size_t i = 0; i < count; ++i) {
        decisions::Decision d = questions[i];
        for (SupportLoad& load : d.question.cases) {
            load.Fr_N = 0.0;
            load.speed_rpm *= 3.0;
        }
        questions.push_back(d);
        d = questions[i];
        d.question.role = i % 2 == 0 ? Role::end_play : Role::axial_only;
        d.question.required_L_h.reset();
        d.question.greatest_outer_mm.reset();
        d.settled.guide = Grade::high;
        d.settled.accuracy = Grade::high;
        d.settled.temperature_C = i % 3 == 0 ? 220.0 : 130.0;
        d.settled.separable_wanted = true;
        d.settled.allow_plain = d.settled.allow_special = true;
        questions.push_back(d);
        d = questions[i];
        d.question.role = Role::adjusted;
        d.question.greatest_width_mm.reset();
        d.settled.stiffness_wish = StiffnessWish::both;
        questions.push_back(d);
        d = questions[i];
        d.question.role = Role::non_locating;
        d.question.loose_ring_impossible = i % 2 == 0;
        d.question.s_required_mm = 1.0 + 0.3 * static_cast<double>(i);
        d.settled.surface_hardness_HRC = 56;
        d.settled.allow_plain = true;
        d.settled.lubricant = Lubricant::oil;
        questions.push_back(d);
        d = questions[i];
        d.settled.motion = i % 2 == 0 ? Motion::linear : Motion::oscillation;
        d.question.seat_mm = 31.7;
        questions.push_back(d);
    }
    for (const decisions::Decision& d : questions) {
        for (const Suggestion& s : suggest(d.question, d.settled, {}, generic())) {
            CHECK(en.count("family." + std::string(toString(s.family))) == 1);
            CHECK(de.count("family." + std::string(toString(s.family))) == 1);
            for (const Reason& reason : s.reasons) {
                met.insert(reason.code);
                checkSentence(en, reason);
                checkSentence(de, reason);
            }
        }
    }
    // Most rules are met on the way; a rule that nothing meets would be dead.
    CHECK(met.size() >= 55);
    for (const char* verdict : {"suited", "with_care", "unsuited"})
        CHECK(en.count(std::string("verdict.") + verdict) == 1);
}
