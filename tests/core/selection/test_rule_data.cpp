#include "core/selection/rule_data.h"

#include <catch2/catch.hpp>

#include <string>

using namespace shaftwright;
using namespace shaftwright::selection;

namespace
{

RuleTexts withFamilies(const std::string& text)
{
    RuleTexts texts = builtInRuleTexts();
    texts.families = text;
    return texts;
}

std::string replaced(std::string text, const std::string& from, const std::string& to)
{
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

} // namespace

TEST_CASE("the built-in thresholds, weights and series read without complaint", "[core][selection]")
{
    const Result<RuleData> data = parseRuleData(builtInRuleTexts());
    if (!data)
        FAIL(data.finding().path);
    CHECK(data->families.size() == 39);
    CHECK(data->profiles.size() == 8);
    CHECK(data->bushes.size() == 4);
    // Budynas and Nisbett table 7-2 (from memory): deep groove 1 to 3 mrad, cylindrical 0.8 to 1.2, tapered 0.5 to 1.2.
    CHECK(data->of(Family::deep_groove_ball).tilt_good == 1.0);
    CHECK(data->of(Family::deep_groove_ball).tilt_permissible == 3.0);
    CHECK(data->of(Family::cylindrical_roller_NU).tilt_good == 0.8);
    CHECK(data->of(Family::cylindrical_roller_NU).tilt_permissible == 1.2);
    CHECK(data->of(Family::tapered_roller).tilt_permissible == 1.2);
    for (const FamilyTraits& traits : data->families)
        CHECK_FALSE(traits.source.empty());
}

TEST_CASE("the table of families refuses what it does not know", "[core][selection]")
{
    const std::string good(builtInRuleTexts().families);
    SECTION("an unknown column")
    {
        const auto data = parseRuleData(withFamilies(replaced(good, "family,kind", "family,kinds")));
        REQUIRE_FALSE(data.ok());
        CHECK(data.finding().code == "value-invalid");
        CHECK(data.finding().path == "selection/families.csv:1");
    }
    SECTION("a word where a number stands, with its line")
    {
        const auto data = parseRuleData(withFamilies(replaced(good, "500000,750000", "many,750000")));
        REQUIRE_FALSE(data.ok());
        CHECK(data.finding().path == "selection/families.csv:2");
        CHECK(std::get<std::string>(*data.finding().values.find("column")) == "ndm_grease");
    }
    SECTION("a family that is missing")
    {
        const std::size_t line = good.find("self_aligning_ball,");
        const std::string without = good.substr(0, line) + good.substr(good.find('\n', line) + 1);
        CHECK_FALSE(parseRuleData(withFamilies(without)).ok());
    }
    SECTION("an unknown provenance")
    {
        CHECK_FALSE(parseRuleData(withFamilies(replaced(good, ",practice\n", ",hearsay\n"))).ok());
    }
    SECTION("nothing at all")
    {
        CHECK_FALSE(parseRuleData(withFamilies("")).ok());
    }
}

TEST_CASE("a rule number that is missing, doubled or unknown is refused", "[core][selection]")
{
    RuleTexts texts = builtInRuleTexts();
    const std::string good(texts.rules);
    const std::string doubled = good + "equal_score,0.02,-,own,own\n";
    const std::string unknown = good + "lucky_number,7,-,own,own\n";
    const std::size_t line = good.find("equal_score");
    const std::string missing = good.substr(0, line) + good.substr(good.find('\n', line) + 1);
    for (const std::string& bad : {doubled, unknown, missing}) {
        texts.rules = bad;
        CHECK_FALSE(parseRuleData(texts).ok());
    }
}
