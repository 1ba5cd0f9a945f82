// What holds the rings, what heat does to the play, and requirements that stay open.
#include "core/analysis/analyse.h"
#include "core/catalogue/catalogue.h"
#include "tests/support/generic_rows.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <numbers>

using namespace shaftwright;
using Catch::Matchers::WithinAbs;

namespace
{

Support supportAt(const char* id, double x_mm, Role role, Family family, const char* designation)
{
    Support support;
    support.id = SupportId(id);
    support.x_mm = x_mm;
    support.role = role;
    support.bearing = test::genericBearing(family, designation);
    return support;
}

/// Shaft of 40 mm between A at 100 and B at `right_mm`, a force across and one along it, one case at 1000 rpm.
Arrangement shaftOn(Support left, Support right, Vector3 F = {0, -3000, 0})
{
    Arrangement a;
    Segment segment;
    segment.id = SegmentId("s1");
    segment.length_mm = right.x_mm + 100;
    segment.outer_mm = 40;
    a.shaft.segments = {segment};
    a.supports = {std::move(left), std::move(right)};
    Part part;
    part.id = PartId("F");
    part.x_mm = 0.5 * (a.supports[0].x_mm + a.supports[1].x_mm);
    part.body = PointLoad{F, {}, 0.0, 0.0, false};
    a.parts = {part};
    LoadCase only;
    only.id = CaseId("run");
    only.speed_rpm = 1000;
    a.duty.load_cases = {only};
    return a;
}

Arrangement usualShaft()
{
    return shaftOn(supportAt("A", 100, Role::locating, Family::deep_groove_ball, "6208"),
                   supportAt("B", 400, Role::non_locating, Family::deep_groove_ball, "6208"));
}

Arrangement adjustedShaft(double distance_mm, bool back_to_back)
{
    Arrangement a = shaftOn(supportAt("A", 100, Role::adjusted, Family::tapered_roller, "30208"),
                            supportAt("B", 100 + distance_mm, Role::adjusted, Family::tapered_roller, "30208"));
    a.supports[0].carries = back_to_back ? Carries::plus : Carries::minus;
    a.supports[1].carries = back_to_back ? Carries::minus : Carries::plus;
    for (Support& support : a.supports) {
        CatalogueRow& row = support.bearing->rows.front().row;
        row.geometry->pitch_diameter_mm = 60;
        row.geometry->element_diameter_mm = 9.5;
        row.contact_angle_deg = 14.036;
        row.geometry->contact_angle_rad = 14.036 / 180 * std::numbers::pi;
    }
    // Shaft, inner rings and rollers 20 K warmer, everything else as assembled.
    a.surroundings.guide = Grade::high;
    a.surroundings.assembly_C = 20;
    a.surroundings.lubricant = Lubricant::oil;
    a.duty.load_cases.front().shaft_temperature_C = 40;
    a.duty.load_cases.front().housing_temperature_C = 20;
    return a;
}

Assessment run(const Arrangement& a)
{
    return analyse(a, Catalogues{{&genericCatalogue()}});
}

const Finding* find(const Assessment& assessment, const std::string& code, const std::string& path = "")
{
    const auto it = std::find_if(assessment.findings.begin(), assessment.findings.end(),
                                 [&](const Finding& f) { return f.code == code && (path.empty() || f.path == path); });
    return it != assessment.findings.end() ? &*it : nullptr;
}

double number(const Finding* finding, const char* name)
{
    REQUIRE(finding != nullptr);
    const TextValue* value = finding->values.find(name);
    REQUIRE(value != nullptr);
    return std::get<double>(*value);
}

} // namespace

TEST_CASE("a ring of the locating support that nothing holds is named with its side", "[core][analysis]")
{
    Arrangement a = usualShaft();
    CHECK(find(run(a), "shoulder-missing") == nullptr); // sides left open are not judged
    a.supports[0].holds = {HoldKind::retaining_ring, HoldKind::retaining_ring, HoldKind::cover, HoldKind::cover};
    CHECK(find(run(a), "shoulder-missing") == nullptr);
    a.supports[0].holds.outer_right = HoldKind::nothing;
    const Assessment open = run(a);
    const Finding* finding = find(open, "shoulder-missing", "supports.A.holds.outer_right");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::caution);
    CHECK(finding->variant == "outer");
    CHECK(std::get<std::string>(*finding->values.find("direction")) == "plus");
}

TEST_CASE("an adjusted bearing needs its rings held on the thrust faces only", "[core][analysis]")
{
    Arrangement a = adjustedShaft(160, true);
    // O: the shaft pushes A to the right through the left face of its inner ring; the housing stands at the right of the outer
    // ring.
    a.supports[0].holds = {HoldKind::sleeve, HoldKind::nothing, HoldKind::nothing, HoldKind::cover};
    CHECK(find(run(a), "shoulder-missing") == nullptr);
    a.supports[0].holds = {HoldKind::nothing, HoldKind::sleeve, HoldKind::cover, HoldKind::nothing};
    const Assessment wrong = run(a);
    CHECK(find(wrong, "shoulder-missing", "supports.A.holds.inner_left") != nullptr);
    CHECK(find(wrong, "shoulder-missing", "supports.A.holds.outer_right") != nullptr);
    CHECK(find(wrong, "shoulder-missing", "supports.A.holds.inner_right") == nullptr);
}

TEST_CASE("a following ball bearing must not be held by both rings, a roller bearing that moves inside must be",
          "[core][analysis]")
{
    Arrangement a = usualShaft();
    a.supports[1].holds = {HoldKind::retaining_ring, HoldKind::retaining_ring, HoldKind::cover, HoldKind::cover};
    const Assessment clamped = run(a);
    REQUIRE(find(clamped, "non-locating-clamped") != nullptr);
    CHECK(find(clamped, "non-locating-clamped")->severity == Severity::stop);
    a.supports[1].bearing = test::genericBearing(Family::cylindrical_roller_NU, "NU208");
    const Assessment inside = run(a);
    CHECK(find(inside, "non-locating-clamped") == nullptr);
    CHECK(find(inside, "shoulder-missing") == nullptr);
    a.supports[1].holds.outer_left = HoldKind::nothing;
    CHECK(find(run(a), "shoulder-missing", "supports.B.holds.outer_left") != nullptr);
}

TEST_CASE("a shoulder is measured against the chamfer of the ring", "[core][analysis]")
{
    Arrangement a = usualShaft();
    Segment seat = a.shaft.segments.front(), shoulder = seat;
    seat.length_mm = 109; // 6208: 18 mm wide, the ring ends at 109 mm
    shoulder.id = SegmentId("s2");
    shoulder.length_mm = 300;
    shoulder.outer_mm = 44;
    a.shaft.segments = {seat, shoulder};
    a.supports[1].bearing.reset();
    a.supports[0].holds.inner_right = HoldKind::shoulder;
    // Chamfer 1.1 mm: 3.25 mm without axial load (JIS B 1566, from memory); here (44 - 40) / 2 = 2 mm.
    const Assessment low = run(a);
    CHECK_THAT(number(find(low, "shoulder-low"), "height_mm"), WithinAbs(2.0, 1e-12));
    CHECK_THAT(number(find(low, "shoulder-low"), "needed_mm"), WithinAbs(3.25, 1e-12));
    a.shaft.segments[1].outer_mm = 46.5;
    CHECK(find(run(a), "shoulder-low") == nullptr);
    a.shaft.segments[1].outer_mm = 40;
    const Assessment none = run(a);
    REQUIRE(find(none, "shoulder-missing") != nullptr);
    CHECK(find(none, "shoulder-missing")->variant == "none");
}

TEST_CASE("heat takes play from an adjusted pair, face to face above all", "[core][analysis]")
{
    // Dpw 60, Dw 9.5, alpha 14.036 deg, L 160, +20 K inside, 11.5e-6 /K: with F = Dpw - Dw cos a and h = Dw sin a,
    // face to face -alpha dT (L - h) - 2 [alpha dT (F + 2 Dw cos a) / 2 cot a + alpha dT Dw sin a] = -101.010 um,
    // back to back +alpha dT (L + h) - the same bracket = -27.410 um. Derived; worked out beside the program.
    const Assessment face = run(adjustedShaft(160, false));
    CHECK_THAT(number(find(face, "adjusted-span-long"), "change_um"), WithinAbs(-101.010, 5e-4)); // as printed above
    CHECK_THAT(number(find(face, "adjusted-span-long"), "limit_um"), WithinAbs(60, 0));
    CHECK(find(run(adjustedShaft(160, true)), "adjusted-span-long") == nullptr);
    const Assessment stretched = run(adjustedShaft(420, true));
    REQUIRE(find(stretched, "adjusted-span-long") != nullptr);
    CHECK(find(stretched, "adjusted-span-long")->variant == "span"); // ten seats of 40 mm
}

TEST_CASE("end play is used up by growth", "[core][analysis]")
{
    Arrangement a = shaftOn(supportAt("A", 100, Role::end_play, Family::deep_groove_ball, "6208"),
                            supportAt("B", 600, Role::end_play, Family::deep_groove_ball, "6208"));
    a.surroundings.assembly_C = 20;
    a.duty.load_cases.front().shaft_temperature_C = 60;
    a.duty.load_cases.front().housing_temperature_C = 20;
    a.supports[0].play_mm = 0.2; // 500 mm x 11.5e-6 /K x 40 K = 0.23 mm
    const Assessment gone = run(a);
    CHECK_THAT(number(find(gone, "growth-exceeds-play"), "growth_mm"), WithinAbs(0.23, 1e-12));
    a.supports[0].play_mm = 0.25;
    CHECK_THAT(number(find(run(a), "floating-too-tight"), "needed_mm"), WithinAbs(0.28, 1e-12));
    a.supports[0].play_mm = 0.28;
    const Assessment enough = run(a);
    CHECK(find(enough, "growth-exceeds-play") == nullptr);
    CHECK(find(enough, "floating-too-tight") == nullptr);
}

TEST_CASE("a roller bearing that moves inside says when its room does not suffice", "[core][analysis]")
{
    Arrangement a = shaftOn(supportAt("A", 100, Role::locating, Family::deep_groove_ball, "6208"),
                            supportAt("B", 6100, Role::non_locating, Family::cylindrical_roller_NU, "NU208"));
    a.duty.load_cases.front().shaft_temperature_C = 80; // 6 m of shaft grow by 4 mm against the housing
    a.duty.load_cases.front().housing_temperature_C = 20;
    const Assessment assessment = run(a);
    const Finding* finding = find(assessment, "growth-exceeds-room");
    CHECK(number(finding, "s_required_mm") > number(finding, "s_available_mm"));
    CHECK(find(assessment, "chosen-is-excluded", "supports.B.bearing") == nullptr); // one condition, one code
}

TEST_CASE("the temperature of the bearings is graded", "[core][analysis]")
{
    Arrangement a = usualShaft();
    const auto severity = [&](double temperature_C) {
        a.surroundings.temperature_C = temperature_C;
        const Assessment assessment = run(a);
        const Finding* finding = find(assessment, "temperature-high");
        return finding != nullptr ? std::optional(finding->severity) : std::nullopt;
    };
    CHECK(!severity(70));
    CHECK(severity(71) == Severity::note);
    CHECK(severity(101) == Severity::caution);
    CHECK(severity(151) == Severity::stop);
}

TEST_CASE("a life asked in the modified sense stays open and counts as not met", "[core][analysis]")
{
    Arrangement a = usualShaft();
    a.duty.required_L_h = 100;
    CHECK(run(a).missed() == 0);
    a.duty.basis = LifeBasis::modified;
    const Assessment open = run(a);
    CHECK(open.missed() == 2);
    REQUIRE(open.supports[0].bearing);
    CHECK(!open.supports[0].bearing->met);
    CHECK(open.supports[0].bearing->L10_h); // the basic life is still told
    REQUIRE(find(open, "requirement-missed", "supports.A.bearing") != nullptr);
    CHECK(find(open, "requirement-missed", "supports.A.bearing")->variant == "not_evaluated");
}

TEST_CASE("a case without static rating leaves the static safety open", "[core][analysis]")
{
    Arrangement a = shaftOn(supportAt("A", 100, Role::locating, Family::cylindrical_roller_NU, "NU208"),
                            supportAt("B", 400, Role::non_locating, Family::deep_groove_ball, "6208"), {2000, -3000, 0});
    LoadCase quiet = a.duty.load_cases.front();
    quiet.id = CaseId("quiet");
    quiet.parts[PartId("F")].active = false;
    a.duty.load_cases.front().time_share = 0.5;
    quiet.time_share = 0.5;
    a.duty.load_cases.push_back(quiet);
    const Assessment assessment = run(a);
    REQUIRE(assessment.supports[0].bearing);
    CHECK(!assessment.supports[0].bearing->static_met); // the first case pushes 2 kN along rings that hold nothing
    CHECK(find(assessment, "axial-not-carried") != nullptr);
}

TEST_CASE("a support without a bearing and bodies in the same place are said", "[core][analysis]")
{
    const auto count = [](const Arrangement& a, const char* code) {
        const Assessment assessment = analyse(a, {{&genericCatalogue()}});
        return std::count_if(assessment.findings.begin(), assessment.findings.end(),
                             [&](const Finding& finding) { return finding.code == code && finding.severity == Severity::caution; });
    };
    Arrangement a = usualShaft();
    CHECK(count(a, "support-without-bearing") == 0);
    CHECK(count(a, "parts-overlap") == 0);
    // 6208 is 18 mm wide: its side stands at 109; a disk of 60 mm about 138 begins at 108.
    Part disk;
    disk.id = PartId("M1");
    disk.x_mm = 139;
    disk.mass_kg = 5;
    disk.body = WeightBody{std::monostate{}, 200, 60};
    a.parts.push_back(disk);
    CHECK(count(a, "parts-overlap") == 0);
    a.parts.back().x_mm = 138;
    CHECK(count(a, "parts-overlap") == 1);
    disk.id = PartId("M2");
    disk.x_mm = 197;
    a.parts.push_back(disk); // 167 to 227 meets 108 to 168
    CHECK(count(a, "parts-overlap") == 2);
    a.supports[1].bearing.reset();
    CHECK(count(a, "support-without-bearing") == 1);
}
