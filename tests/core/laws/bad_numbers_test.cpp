// Whatever number is wrong, the analysis returns: with a stop where it cannot go on, and without a number that is not finite.
#include "core/analysis/analyse.h"
#include "tests/core/laws/drawn_arrangement.h"
#include "tests/core/laws/law.h"
#include "tests/support/generic_rows.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

using namespace shaftwright;
using namespace shaftwright::test;

namespace
{

const Catalogues& catalogues()
{
    static const Catalogues all{{&genericCatalogue()}};
    return all;
}

bool finite(const Vector3& v)
{
    return std::isfinite(v.x) && std::isfinite(v.y) && std::isfinite(v.z);
}

/// Where a number that is not finite left core; empty: nowhere.
std::string notFinite(const Assessment& result)
{
    for (const Finding& finding : result.findings) {
        for (const auto& [name, value] : finding.values.entries) {
            if (const double* number = std::get_if<double>(&value); number != nullptr && !std::isfinite(*number))
                return "finding " + finding.code + " " + finding.path + " " + name;
        }
    }
    for (const CaseLoads& loads : result.loads) {
        if (!std::isfinite(loads.K_N) || !std::isfinite(loads.torque_residual_Nmm))
            return "loads";
    }
    for (const SupportAssessment& support : result.supports) {
        for (const SupportCase& here : support.cases) {
            if (!finite(here.force_N) || !std::isfinite(here.radial_N) || !std::isfinite(here.tilt_mrad))
                return "reaction of " + support.id.value;
        }
        if (support.bearing && support.bearing->L10_h && !std::isfinite(*support.bearing->L10_h))
            return "life of " + support.id.value;
        for (const Suggestion& suggestion : support.suggestions) {
            if (!std::isfinite(suggestion.score))
                return "suggestion at " + support.id.value;
        }
    }
    return {};
}

/// Numbers of the document that a user may spoil.
std::vector<double*> numbersOf(Arrangement& a)
{
    std::vector<double*> list;
    for (Segment& segment : a.shaft.segments) {
        list.insert(list.end(), {&segment.length_mm, &segment.outer_mm});
        if (segment.bore_mm)
            list.push_back(&*segment.bore_mm);
        if (segment.outer_end_mm)
            list.push_back(&*segment.outer_end_mm);
    }
    for (Support& support : a.supports) {
        list.push_back(&support.x_mm);
        if (support.elastic)
            list.push_back(&support.elastic->stiffness[1][1]);
        if (support.bearing) {
            CatalogueRow& row = support.bearing->rows[0].row;
            list.insert(list.end(), {&row.bore_mm, &row.outer_mm, &row.width_mm, &row.C_N, &row.C0_N, &row.contact_angle_deg});
        }
    }
    for (LoadCase& load_case : a.duty.load_cases)
        list.insert(list.end(),
                    {&load_case.time_share, &load_case.speed_rpm, &load_case.power_factor, &load_case.free_load_factor});
    list.push_back(&*a.duty.required_L_h);
    list.push_back(&*a.surroundings.attitude_deg);
    for (Part& part : a.parts) {
        list.push_back(&part.x_mm);
        if (part.mass_kg)
            list.push_back(&*part.mass_kg);
        if (part.drive && part.drive->power_kW)
            list.push_back(&*part.drive->power_kW);
        if (part.drive && part.drive->torque_Nmm)
            list.push_back(&*part.drive->torque_Nmm);
        if (auto* gear = std::get_if<CylindricalGear>(&part.body))
            list.insert(list.end(), {&gear->helix_deg, &*gear->working_diameter_mm, &gear->mesh_angle_deg});
        else if (auto* bevel = std::get_if<BevelGear>(&part.body))
            list.insert(list.end(), {&bevel->cone_angle_deg, &bevel->spiral_deg, &*bevel->mean_diameter_mm});
        else if (auto* worm = std::get_if<Worm>(&part.body))
            list.insert(list.end(), {&worm->reference_diameter_mm, &*worm->lead_angle_deg, &*worm->friction});
        else if (auto* wheel = std::get_if<WormWheel>(&part.body))
            list.insert(list.end(), {&wheel->reference_diameter_mm, &wheel->lead_angle_deg, &*wheel->friction});
        else if (auto* pulley = std::get_if<BeltPulley>(&part.body))
            list.insert(list.end(),
                        {&pulley->diameter_mm, &pulley->other_diameter_mm, &pulley->centre_distance_mm, &pulley->direction_deg});
        else if (auto* chain = std::get_if<ChainSprocket>(&part.body))
            list.insert(list.end(), {&chain->pitch_mm, &chain->centre_distance_mm});
        else if (auto* impeller = std::get_if<Impeller>(&part.body))
            list.insert(list.end(), {&impeller->thrust_N, &impeller->offset_y_mm});
        else if (auto* point = std::get_if<PointLoad>(&part.body))
            list.insert(list.end(), {&point->force_N.x, &point->force_N.z, &point->moment_Nmm.y, &point->offset_y_mm});
        else if (auto* line = std::get_if<DistributedLoad>(&part.body))
            list.insert(list.end(), {&line->end_mm, &line->start_N_per_mm.z});
    }
    return list;
}

bool says(const Assessment& result, const std::string& code)
{
    for (const Finding& finding : result.findings) {
        if (finding.code == code)
            return finding.severity == Severity::stop;
    }
    return false;
}

} // namespace

TEST_CASE("one bad number anywhere gives findings, never a crash or a number that is none", "[core][laws][rejection]")
{
    law("bad number", [] {
        Arrangement a = drawArrangement();
        const std::vector<double*> numbers = numbersOf(a);
        static const std::vector<double> bad = {std::numeric_limits<double>::quiet_NaN(),
                                                std::numeric_limits<double>::infinity(),
                                                -std::numeric_limits<double>::infinity(),
                                                0.0,
                                                -1.0,
                                                1e300,
                                                -1e300,
                                                1e-300,
                                                1e9};
        double& number = *numbers[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(numbers.size())))];
        const double value = bad[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(bad.size())))];
        const double before = number;
        number = value;
        RC_LOG() << before << " became " << value << "\n";
        const Assessment result = analyse(a, catalogues());
        RC_ASSERT(notFinite(result) == std::string());
        if (!std::isfinite(value))
            RC_ASSERT(hasStop(result.findings));
    });
}

TEST_CASE("shafts that nothing holds say so", "[core][laws][rejection]")
{
    Arrangement a;
    Segment segment;
    segment.id = SegmentId("S1");
    segment.length_mm = 300.0;
    segment.outer_mm = 40.0;
    a.shaft.segments = {segment};
    Part part;
    part.id = PartId("F");
    part.x_mm = 150.0;
    PointLoad load;
    load.force_N.z = -1000.0;
    part.body = load;
    a.parts = {part};

    SECTION("no support")
    {
        const Assessment result = analyse(a, catalogues());
        CHECK(says(result, "shaft-unsupported"));
        CHECK_FALSE(result.beam.usable());
        CHECK(result.loads.size() == 1); // what could be done stays visible
    }
    SECTION("one support")
    {
        Support only;
        only.id = SupportId("A");
        only.x_mm = 100.0;
        only.role = Role::locating;
        a.supports = {only};
        CHECK(says(analyse(a, catalogues()), "shaft-tilts"));
    }
    SECTION("two supports, none of which locates")
    {
        Support left, right;
        left.id = SupportId("A");
        left.x_mm = 20.0;
        right.id = SupportId("B");
        right.x_mm = 280.0;
        a.supports = {left, right};
        const Assessment result = analyse(a, catalogues());
        CHECK(says(result, "axial-location-missing"));
        CHECK(result.beam.usable()); // bending does not need it
    }
    SECTION("rings that overlap are refused, the shaft is still calculated")
    {
        Support left, right;
        left.id = SupportId("A");
        left.x_mm = 100.0;
        left.role = Role::locating;
        left.bearing = genericBearing(Family::deep_groove_ball, "6208");
        right = left;
        right.id = SupportId("B");
        right.role = Role::non_locating;
        right.x_mm = 110.0;
        a.supports = {left, right};
        const Assessment result = analyse(a, catalogues());
        CHECK(says(result, "support-place"));
        CHECK(result.beam.usable());
    }
    SECTION("an empty document")
    {
        const Assessment result = analyse(Arrangement{}, catalogues());
        CHECK(says(result, "segment-size"));
        CHECK(notFinite(result) == std::string());
    }
}
