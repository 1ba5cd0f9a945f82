#include "tests/reference/reference.h"

#define CATCH_CONFIG_EXTERNAL_INTERFACES // the listener below
#include <catch2/catch.hpp>

#include <cmath>
#include <fstream>
#include <iostream>
#include <set>

using namespace reference;

namespace
{

const Json& published()
{
    static const Json data = [] {
        std::ifstream file(std::string(SHAFTWRIGHT_SOURCE_DIR) + "/tests/reference/published-checks.json");
        return Json::parse(file);
    }();
    return data;
}

const Adapters& adaptersOf(const std::string& area)
{
    if (area == "gear")
        return gearAdapters();
    if (area == "beam")
        return beamAdapters();
    if (area == "life")
        return lifeAdapters();
    if (area == "tables")
        return tableAdapters();
    return placeAdapters();
}

struct Tally {
    int run = 0, values = 0, waiting = 0, outside = 0;
    double worst_of_tolerance = 0.0, worst_relative = 0.0;
    std::string worst_of_tolerance_at, worst_relative_at;
};
Tally& tally()
{
    static Tally all;
    return all;
}

/// A value passes when |value - expected| <= max(abs, rel |expected|).
void compare(const Json& check, const std::string& name, double expected, const Results& results)
{
    const std::string id = check.at("id").get<std::string>();
    const auto found = results.find(name);
    INFO(id << " " << check.at("title").get<std::string>() << ": " << name);
    REQUIRE(found != results.end());
    const Json& tolerance = check.at("tolerance");
    const double allowed = std::max(tolerance.value("abs", 0.0), tolerance.value("rel", 0.0) * std::abs(expected));
    const double off = std::abs(found->second - expected);
    const bool plausibility = check.at("kind").get<std::string>() == "plausibility";
    Tally& t = tally();
    ++t.values;
    if (!(off <= allowed))
        ++t.outside;
    if (const double share = off / allowed; !(share <= t.worst_of_tolerance)) {
        t.worst_of_tolerance = share;
        t.worst_of_tolerance_at = id + " " + name;
    }
    if (const double relative = expected != 0.0 ? off / std::abs(expected) : 0.0; !(relative <= t.worst_relative)) {
        t.worst_relative = relative;
        t.worst_relative_at = id + " " + name;
    }
    INFO("found " << found->second << ", expected " << expected << ", allowed +-" << allowed << " ("
                  << tolerance.at("reason").get<std::string>() << ")");
    // Values set beside measured lives are compared and counted, but decide nothing.
    if (plausibility)
        CHECK_NOFAIL(off <= allowed);
    else
        CHECK(off <= allowed);
}

void runArea(const std::string& area)
{
    int entries = 0;
    for (const Json& check : published().at("checks")) {
        if (check.at("area").get<std::string>() != area)
            continue;
        ++entries;
        const std::string id = check.at("id").get<std::string>();
        if (check.contains("later")) {
            ++tally().waiting;
            continue;
        }
        INFO(id);
        const auto adapter = adaptersOf(area).find(id);
        REQUIRE(adapter != adaptersOf(area).end());
        const Results results = adapter->second(check.at("inputs"));
        for (const auto& [name, expected] : check.at("expected").items())
            compare(check, name, expected.get<double>(), results);
        ++tally().run;
    }
    CHECK(entries > 0);
}

struct Summary : Catch::TestEventListenerBase {
    using TestEventListenerBase::TestEventListenerBase;
    void testRunEnded(const Catch::TestRunStats&) override
    {
        const Tally& t = tally();
        std::cout << "reference checks: " << t.run << " run with " << t.values << " values, " << t.waiting
                  << " wait for the modified life, " << t.outside << " values outside their tolerance, worst deviation "
                  << 100.0 * t.worst_of_tolerance << " % of its tolerance (" << t.worst_of_tolerance_at << "), largest relative "
                  << 100.0 * t.worst_relative << " % (" << t.worst_relative_at << ")\n";
    }
};
CATCH_REGISTER_LISTENER(Summary)

} // namespace

TEST_CASE("tooth and belt forces and reactions in two planes meet the published ones", "[reference]")
{
    runArea("gear");
}

TEST_CASE("reactions, slopes and deflections meet the published ones", "[reference]")
{
    runArea("beam");
}

TEST_CASE("rating lives meet the published ones", "[reference]")
{
    runArea("life");
}

TEST_CASE("factors meet the tables of the standards", "[reference]")
{
    runArea("tables");
}

TEST_CASE("life and reactions follow the place of a load as published", "[reference]")
{
    runArea("place");
}

TEST_CASE("every entry of the published checks states what a reader needs", "[reference]")
{
    std::set<std::string> ids;
    for (const Json& check : published().at("checks")) {
        INFO(check.at("id"));
        CHECK(ids.insert(check.at("id").get<std::string>()).second);
        CHECK_FALSE(check.at("source").get<std::string>().empty());
        CHECK_FALSE(check.at("expected").empty());
        CHECK_FALSE(check.at("tolerance").at("reason").get<std::string>().empty());
        CHECK((check.at("tolerance").contains("rel") || check.at("tolerance").contains("abs")));
    }
    CHECK(ids.size() == 71);
}
