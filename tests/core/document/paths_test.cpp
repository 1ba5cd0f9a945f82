#include "core/document/document.h"
#include "core/document/paths.h"
#include "core/edit/edit.h"
#include "tests/support/rich_arrangement.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace shaftwright;

namespace
{

const AddressedInput* find(const std::vector<AddressedInput>& inputs, const std::string& path)
{
    const auto found =
        std::find_if(inputs.begin(), inputs.end(), [&](const AddressedInput& input) { return input.path == path; });
    return found == inputs.end() ? nullptr : &*found;
}

Arrangement set(const Arrangement& arrangement, std::string_view path, std::string_view value)
{
    const Result<Arrangement> changed = setByPath(arrangement, path, value);
    INFO(path);
    REQUIRE(changed);
    return *changed;
}

Finding refused(const Arrangement& arrangement, std::string_view path, std::string_view value)
{
    const Result<Arrangement> changed = setByPath(arrangement, path, value);
    INFO(path);
    REQUIRE_FALSE(changed);
    return changed.finding();
}

std::string wordOf(const Finding& finding, const char* name)
{
    const TextValue* value = finding.values.find(name);
    REQUIRE(value != nullptr);
    return std::get<std::string>(*value);
}

} // namespace

TEST_CASE("inputs are listed with value, unit and origin", "[core][document]")
{
    const std::vector<AddressedInput> inputs = addressableInputs(test::richArrangement());
    const AddressedInput* x = find(inputs, "supports.B.x_mm");
    REQUIRE(x != nullptr);
    CHECK(x->value == TextValue(280.0));
    CHECK(x->unit == "mm");
    CHECK(x->origin == Origin::given);
    REQUIRE(find(inputs, "duty.load_cases.rated.speed_rpm") != nullptr);
    CHECK(find(inputs, "duty.load_cases.rated.speed_rpm")->value == TextValue(-480.0));
    CHECK(find(inputs, "duty.load_cases.rated.parts.B1.active")->value == TextValue(std::string("false")));
    CHECK(find(inputs, "parts.G1.further_meshes.1.mesh_angle_deg")->value == TextValue(270.0));
    CHECK(find(inputs, "parts.G1.hand")->value == TextValue(std::string("left")));
    CHECK(find(inputs, "surroundings.weights.cost")->value == TextValue(2.0));
    CHECK(find(inputs, "supports.A.bearing.rows.0.row.C_N")->origin == Origin::proposed);
    CHECK(find(inputs, "supports.A.x_mm")->origin == Origin::given);
    CHECK(find(inputs, "remarks.N1.text") == nullptr);
    CHECK(find(inputs, "extra") == nullptr);

    std::set<std::string> paths;
    for (const AddressedInput& input : inputs)
        CHECK(paths.insert(input.path).second);
}

TEST_CASE("inputs that are left open are listed as assumed", "[core][document]")
{
    const std::vector<AddressedInput> inputs = addressableInputs(plainTwoBearingShaft());
    const AddressedInput* reliability = find(inputs, "duty.reliability_percent");
    REQUIRE(reliability != nullptr);
    CHECK(reliability->origin == Origin::assumed);
    CHECK(reliability->value == TextValue(90.0));
    CHECK(reliability->unit == "%");
}

TEST_CASE("every listed input can be set to its own value", "[core][document]")
{
    Arrangement rich = test::richArrangement();
    rich.proposed.clear();
    std::size_t count = 0;
    for (const AddressedInput& input : addressableInputs(rich)) {
        if (input.origin == Origin::assumed)
            continue;
        char buffer[64];
        std::string text;
        if (const double* number = std::get_if<double>(&input.value)) {
            std::snprintf(buffer, sizeof buffer, "%.17g", *number);
            text = buffer;
        } else {
            text = std::get<std::string>(input.value);
        }
        CHECK(isInputPath(rich, input.path));
        CHECK(set(rich, input.path, text) == rich);
        ++count;
    }
    CHECK(count > 300);
}

TEST_CASE("inputs are set by ids", "[core][document]")
{
    const Arrangement plain = plainTwoBearingShaft();
    CHECK(set(plain, "supports.B.x_mm", "150.5").supports[1].x_mm == 150.5);
    CHECK(set(plain, "supports.B.x_mm", "15,05 cm").supports[1].x_mm == Approx(150.5).epsilon(1e-12));
    CHECK(std::get<CylindricalGear>(set(plain, "parts.G1.mesh_angle_deg", "-45").parts[0].body).mesh_angle_deg == -45.0);
    CHECK(std::get<CylindricalGear>(set(plain, "parts.G1.teeth", "31").parts[0].body).teeth == 31);
    CHECK(set(plain, "duty.required_L_h", "20000").duty.required_L_h == 20000.0);
    CHECK(set(plain, "duty.load_cases.rated.speed_rpm", "-480").duty.load_cases[0].speed_rpm == -480.0);
    CHECK(
        set(plain, "duty.load_cases.rated.parts.G1.power_factor", "0.5").duty.load_cases[0].parts.at(PartId("G1")).power_factor ==
        0.5);
    CHECK(set(plain, "surroundings.lubricant", "grease").surroundings.lubricant == Lubricant::grease);
    CHECK(set(plain, "options.own_weight", "false").options.own_weight == false);
    CHECK(set(plain, "supports.A.holds.inner_left", "nut").supports[0].holds.inner_left == HoldKind::nut);
    CHECK(set(plain, "shaft.segments.S2.outer_mm", "55").shaft.segments[1].outer_mm == 55.0);
    CHECK(set(plain, "shaft.material.name", "grey_iron").shaft.material.name == "grey_iron");
    CHECK(set(plain, "surroundings.weights.cost", "3").surroundings.weights.at("cost") == 3.0);
}

TEST_CASE("an empty value leaves an optional input open again", "[core][document]")
{
    const Arrangement with_life = set(plainTwoBearingShaft(), "duty.required_L_h", "20000");
    CHECK(set(with_life, "duty.required_L_h", "") == plainTwoBearingShaft());
    CHECK(refused(with_life, "supports.A.x_mm", "").code == "value-invalid");
}

TEST_CASE("setting an input makes it given", "[core][document]")
{
    Arrangement arrangement = plainTwoBearingShaft();
    arrangement.proposed["supports.A.x_mm"] = {"suits"};
    CHECK(set(arrangement, "supports.A.x_mm", "13").proposed.empty());
}

TEST_CASE("a path that leads nowhere is named with the nearest one", "[core][document]")
{
    const Arrangement plain = plainTwoBearingShaft();
    const Finding key = refused(plain, "supports.B.x_m", "1");
    CHECK(key.code == "path-unknown");
    CHECK(wordOf(key, "key") == "x_m");
    CHECK(wordOf(key, "suggestion") == "x_mm");
    CHECK(wordOf(refused(plain, "suports.B.x_mm", "1"), "suggestion") == "supports");
    CHECK(refused(plain, "supports.C.x_mm", "1").code == "path-unknown");
    CHECK(refused(plain, "supports.0.x_mm", "1").code == "path-unknown");
    for (const char* path : {"", ".", "supports.", "supports..x_mm", "supports.B.x_mm.", "supports.B.x_mm.y", "format_version",
                             "extra", "remarks.N1.text", "duty.load_cases.rated.parts"}) {
        const Finding finding = refused(plain, path, "1");
        CHECK((finding.code == "path-unknown" || finding.code == "path-not-settable"));
    }
    CHECK(refused(plain, "supports", "1").code == "path-not-settable");
    CHECK(refused(plain, "supports.B.id", "C").code == "path-not-settable");
    CHECK(refused(plain, "shaft.segments.S1", "1").code == "path-not-settable");
}

TEST_CASE("a value that cannot be is refused with its range or words", "[core][document]")
{
    const Arrangement plain = plainTwoBearingShaft();
    const Finding range = refused(plain, "shaft.segments.S1.length_mm", "-1");
    CHECK(range.code == "value-invalid");
    CHECK(range.path == "shaft.segments.S1.length_mm");
    CHECK(*range.values.find("greatest") == TextValue(100000.0));
    CHECK(wordOf(refused(plain, "supports.A.role", "located"), "suggestion") == "locating");
    for (const char* value : {"NaN", "inf", "1e999", "abc", "1 kN", "--", "1;2", "true"})
        CHECK(refused(plain, "supports.A.x_mm", value).code == "value-invalid");
    CHECK(refused(plain, "parts.G1.teeth", "20.5").code == "value-invalid");
    CHECK(refused(plain, "options.own_weight", "yes").code == "value-invalid");
    CHECK(refused(plain, "duty.load_cases.rated.parts.G9.active", "true").path == "duty.load_cases.rated.parts.G9");
}
