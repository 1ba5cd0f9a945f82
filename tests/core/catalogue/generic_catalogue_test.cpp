// The generic catalogue as a whole: how many, what they hold, and whether each could be built.

#include "core/base/embedded.h"
#include "core/bearings/basic_rating.h"
#include "core/bearings/geometry_rules.h"
#include "core/catalogue/catalogue.h"
#include "core/catalogue/csv.h"
#include "core/units/number_text.h"

#include <array>
#include <catch2/catch.hpp>
#include <chrono>
#include <cmath>
#include <fstream>
#include <map>
#include <numbers>
#include <set>
#include <sstream>

using namespace shaftwright;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using namespace std::string_view_literals;

namespace
{

constexpr double pi = std::numbers::pi;
constexpr std::size_t counted = 1913;

std::span<const CatalogueRow> standardRows()
{
    return std::span(genericCatalogue().rows).first(counted);
}

const CatalogueRow& row(std::string_view designation)
{
    const CatalogueRow* found = genericCatalogue().find(designation);
    INFO(designation);
    REQUIRE(found != nullptr);
    return *found;
}

CatalogueTexts embeddedTexts()
{
    return {embeddedResource("catalogue/series.csv"), embeddedResource("catalogue/radial-dimensions.csv"),
            embeddedResource("catalogue/needle-dimensions.csv"), embeddedResource("catalogue/tapered-dimensions.csv"),
            embeddedResource("catalogue/thrust-dimensions.csv")};
}

/// Width of a ball's groove up to its shoulder.
double grooveChord(double Dw)
{
    const double r = 0.52 * Dw, h = 0.2 * Dw;
    return 2.0 * std::sqrt(2.0 * r * h - h * h);
}

} // namespace

TEST_CASE("the generic catalogue holds 1913 bearings, counted by series", "[core][catalogue]")
{
    // Sizes usual in trade (common practice); bores within the range of each series.
    struct Series {
        const char* name;
        std::size_t count;
        double from_mm, to_mm;
    };
    const std::vector<Series> wanted = {
        {"618", 52, 3, 400},    {"619", 52, 3, 400},     {"160", 38, 12, 280},   {"60", 52, 3, 400},     {"62", 48, 3, 320},
        {"63", 44, 3, 240},     {"64", 21, 15, 110},     {"70-15", 37, 10, 240}, {"70-25", 37, 10, 240}, {"70-40", 37, 10, 240},
        {"72-15", 37, 10, 240}, {"72-25", 37, 10, 240},  {"72-40", 37, 10, 240}, {"73-40", 35, 10, 200}, {"32", 23, 10, 110},
        {"33", 21, 15, 110},    {"12", 28, 10, 130},     {"13", 26, 10, 110},    {"22", 26, 10, 110},    {"23", 26, 10, 110},
        {"NU10", 35, 25, 320},  {"NU2", 39, 15, 320},    {"NU22", 39, 15, 320},  {"NU3", 35, 15, 240},   {"NU23", 35, 15, 240},
        {"NU4", 21, 30, 150},   {"NCF29", 17, 100, 300}, {"NCF30", 36, 20, 300}, {"NCF23", 29, 25, 200}, {"213", 20, 25, 110},
        {"222", 35, 25, 320},   {"223", 30, 40, 320},    {"230", 20, 110, 400},  {"231", 21, 100, 400},  {"232", 20, 90, 320},
        {"239", 19, 120, 400},  {"240", 21, 100, 400},   {"241", 21, 100, 400},  {"NA48", 19, 100, 360}, {"NA49", 30, 10, 160},
        {"NA69", 23, 12, 100},  {"NA40", 15, 17, 85},    {"HK", 58, 3, 60},      {"302", 30, 17, 200},   {"322", 24, 17, 150},
        {"303", 25, 15, 150},   {"313", 22, 25, 150},    {"323", 23, 17, 140},   {"320", 31, 20, 200},   {"330", 19, 25, 120},
        {"331", 16, 40, 120},   {"332", 18, 25, 105},    {"329", 28, 20, 200},   {"511", 36, 10, 320},   {"512", 36, 10, 320},
        {"513", 25, 25, 200},   {"514", 22, 25, 170},    {"811", 34, 15, 320},   {"812", 30, 30, 320},   {"893", 24, 30, 200},
        {"292", 7, 200, 320},   {"293", 19, 85, 320},    {"294", 24, 60, 320},   {"522", 27, 10, 170},   {"523", 15, 20, 85},
        {"AXK", 26, 10, 160}};
    struct Found {
        std::size_t count = 0;
        double from_mm = 1e9, to_mm = 0.0;
    };
    std::map<std::string, Found> found;
    for (const CatalogueRow& r : standardRows()) {
        Found& f = found[r.series];
        ++f.count;
        f.from_mm = std::min(f.from_mm, r.bore_mm);
        f.to_mm = std::max(f.to_mm, r.bore_mm);
    }
    std::size_t sum = 0;
    for (const Series& s : wanted) {
        CAPTURE(s.name);
        CHECK(found[s.name].count == s.count);
        CHECK(found[s.name].from_mm == s.from_mm);
        CHECK(found[s.name].to_mm == s.to_mm);
        sum += s.count;
    }
    CHECK(sum == counted);
    CHECK(found.size() == wanted.size());
}

TEST_CASE("estimated rows stand apart with low confidence", "[core][catalogue]")
{
    const auto rows = std::span(genericCatalogue().rows).subspan(counted);
    std::map<std::string, int> count;
    for (const CatalogueRow& r : rows) {
        ++count[r.series];
        CHECK(r.provenance == Provenance::memory_low);
        CHECK(r.note.find("low confidence") != std::string::npos);
        CHECK(r.source.starts_with("estimated"));
    }
    CHECK(count == std::map<std::string, int>{{"42", 22}, {"43", 19}, {"QJ2", 33}, {"QJ3", 33}});
    for (const CatalogueRow& r : standardRows())
        CHECK(r.provenance == Provenance::computed);

    // 4208 (40x80x23): D_w = min(0.28*40, 0.75*23/1.9) = 9.08, Z = floor(1 + 185/(2 asin(9.08/60))) = 11, gamma 0.1513;
    // f_c 56.2 (ISO 281 Table 2, double row), C = 1.3*56.2*2^0.7*11^(2/3)*9.08^1.8 = 31.1 kN, by hand
    const CatalogueRow& deep = row("4208");
    CHECK(deep.geometry_class == GeometryClass::deep_groove_ball_two_row);
    CHECK_THAT(deep.geometry->element_diameter_mm, WithinAbs(9.08, 1e-9));
    CHECK(deep.geometry->elements_per_row == 11);
    CHECK(deep.geometry->rows == 2);
    CHECK_THAT(deep.C_N, WithinRel(1.3 * 56.2 * 1.6245 * 4.9461 * 53.05, 3e-3)); // hand digits
    // QJ208 (40x80x18): D_w = min(12, 13.5) = 12, Z = floor(0.861 pi 60/12) = 13, 35 deg
    const CatalogueRow& four = row("QJ208");
    CHECK(four.geometry_class == GeometryClass::four_point_contact_ball);
    CHECK(four.geometry->element_diameter_mm == 12.0);
    CHECK(four.geometry->elements_per_row == 13);
    CHECK_THAT(four.contact_angle_deg, WithinRel(35.0, 1e-12));
}

TEST_CASE("generic bearings agree with an independent calculation", "[core][catalogue]")
{
    std::ifstream file(std::string(SHAFTWRIGHT_SOURCE_DIR) + "/tests/core/catalogue/check_table.csv");
    REQUIRE(file);
    std::stringstream text;
    text << file.rdbuf();
    const std::string content = text.str();
    const std::array columns = {"designation"sv,
                                "bore_mm"sv,
                                "outer_mm"sv,
                                "width_mm"sv,
                                "element_diameter_mm"sv,
                                "elements_per_row"sv,
                                "rows"sv,
                                "pitch_diameter_mm"sv,
                                "contact_angle_deg"sv,
                                "effective_length_mm"sv,
                                "f_c"sv,
                                "f_0"sv,
                                "C_N"sv,
                                "C0_N"sv,
                                "Cu_N"sv,
                                "mass_kg"sv};
    const auto table = CsvTable::parse("check_table.csv", content, columns);
    REQUIRE(table.ok());
    REQUIRE(table->rows() == 151);
    for (std::size_t i = 0; i < table->rows(); ++i) {
        const auto value = [&](std::size_t column) { return table->number(i, column, 0.0); };
        const CatalogueRow& r = row(table->cell(i, 0));
        CAPTURE(r.designation);
        REQUIRE(r.geometry.has_value());
        const InternalGeometry& g = *r.geometry;
        CHECK(r.bore_mm == value(1));
        CHECK(r.outer_mm == value(2));
        CHECK(r.width_mm == value(3));
        CHECK_THAT(g.element_diameter_mm, WithinAbs(value(4), 0.0101)); // printed to 0.01
        CHECK(g.elements_per_row == value(5));
        CHECK(g.rows == value(6));
        CHECK_THAT(g.pitch_diameter_mm, WithinAbs(value(7), 0.0101));
        CHECK_THAT(r.contact_angle_deg, WithinAbs(value(8), 0.0101));
        CHECK_THAT(g.effective_length_mm, WithinAbs(value(9), 0.0101));
        CHECK_THAT(basicRating(r.geometry_class, g)->f_c, WithinAbs(value(10), 0.0101));
        CHECK_THAT(r.f0.value_or(0.0), WithinAbs(value(11), 0.0101));
        // printed to 1 N; the smallest fatigue limit is 89 N
        CHECK_THAT(r.C_N, WithinAbs(value(12), 0.6 + 1e-6 * value(12)));
        CHECK_THAT(r.C0_N, WithinAbs(value(13), 0.6 + 1e-6 * value(13)));
        CHECK_THAT(r.Cu_N.value_or(0.0), WithinAbs(value(14), 0.6));
        CHECK_THAT(r.mass_kg.value_or(0.0), WithinAbs(value(15), 0.1 * value(15) + 0.0006)); // 10 %: masses are estimates
    }
    CHECK(table->faults().empty());
}

TEST_CASE("every generic bearing could be built", "[core][catalogue]")
{
    // Conditions of space (derived): elements do not touch, rings keep a wall, everything stays within the width.
    for (const CatalogueRow& r : genericCatalogue().rows) {
        CAPTURE(r.designation);
        REQUIRE(r.geometry.has_value());
        const InternalGeometry& g = *r.geometry;
        const double Dw = g.element_diameter_mm, Dpw = g.pitch_diameter_mm, L = g.roller_length_mm, B = r.width_mm;
        const double S = r.outer_mm - r.bore_mm, a = g.row_distance_mm, sine = std::sin(g.contact_angle_rad),
                     cosine = std::cos(g.contact_angle_rad);
        const int Z = g.elements_per_row;
        CHECK(Z >= 5);
        CHECK(Dpw * std::sin(pi / Z) >= 1.004 * Dw);
        CHECK(r.C_N > 0.0);
        CHECK(r.C0_N > 0.0);
        CHECK(r.Cu_N.value() > 0.0);
        CHECK(r.mass_kg.value() > 0.0);
        CHECK_FALSE(r.source.empty());
        switch (r.geometry_class) {
        case GeometryClass::deep_groove_ball:
            CHECK(2.0 * (Z - 1) * std::asin(Dw / Dpw) <= 196.0 * pi / 180.0 + 1e-9);
            [[fallthrough]];
        case GeometryClass::angular_contact_ball:
        case GeometryClass::angular_contact_ball_double:
        case GeometryClass::deep_groove_ball_two_row:
        case GeometryClass::four_point_contact_ball:
            CHECK(0.5 * (g.raceway_inner_mm - r.bore_mm) >= 0.05 * S);
            CHECK(0.5 * (r.outer_mm - g.raceway_outer_mm) >= 0.05 * S);
            CHECK(grooveChord(Dw) <= 0.9 * B);
            CHECK(g.shoulder_inner_mm < Dpw);
            CHECK(g.shoulder_outer_mm > Dpw);
            if (g.rows == 2) {
                CHECK(2.1 * Dw <= B);
                CHECK(a + Dw <= B);
            }
            break;
        case GeometryClass::self_aligning_ball:
            CHECK(a + Dw <= B + 0.006); // the distance is rounded to 0.01 mm
            CHECK(std::hypot(a, pi * Dpw / (2.0 * Z)) >= 1.01 * Dw);
            CHECK(0.5 * (g.raceway_inner_mm - r.bore_mm) >= 0.05 * S);
            CHECK(0.5 * (r.outer_mm - g.raceway_outer_mm) >= 0.05 * S);
            break;
        case GeometryClass::cylindrical_roller:
        case GeometryClass::cylindrical_roller_full:
            CHECK(0.5 * (B - L) >= 0.10 * B);
            CHECK(0.5 * (g.raceway_inner_mm - r.bore_mm) >= 0.06 * S);
            CHECK(0.5 * (r.outer_mm - g.raceway_outer_mm) >= 0.06 * S);
            break;
        case GeometryClass::needle:
            CHECK(0.5 * (g.raceway_inner_mm - r.bore_mm) >= 0.06 * S);
            CHECK(0.5 * (r.outer_mm - g.raceway_outer_mm) >= 0.06 * S);
            CHECK(g.rows * L <= B);
            if (g.rows == 2)
                CHECK(a + L <= B);
            break;
        case GeometryClass::needle_drawn_cup:
            CHECK(g.raceway_outer_mm < r.outer_mm);
            CHECK(L < B);
            break;
        case GeometryClass::tapered_roller: {
            // Common apex on the axis: half angle of the roller from its distance to the apex (derived).
            double mean = g.contact_angle_rad, half = 0.0;
            for (int round = 0; round < 3; ++round) {
                half = std::atan(Dw / (2.0 * (0.5 * Dpw / std::sin(mean))));
                mean = g.contact_angle_rad - half;
            }
            const double cone_small = 0.5 * (Dpw - Dw * std::cos(mean)) - 0.5 * L * std::sin(g.contact_angle_rad - 2.0 * half);
            CHECK(cone_small - 0.5 * r.bore_mm >= 0.02 * S);
            const double cup_large = 0.5 * (Dpw + Dw * std::cos(mean)) + 0.5 * L * std::sin(g.contact_angle_rad);
            CHECK(0.5 * r.outer_mm - cup_large >= 0.02 * S);
            CHECK(r.outer_width_mm <= r.width_mm);
            CHECK(r.inner_width_mm <= r.width_mm);
            break;
        }
        case GeometryClass::spherical_roller:
            CHECK(a + L * cosine + Dw * sine <= 1.05 * B);
            CHECK(0.5 * (g.raceway_inner_mm - r.bore_mm) >= 0.06 * S);
            CHECK(0.5 * (r.outer_mm - g.raceway_outer_mm) >= 0.06 * S);
            break;
        case GeometryClass::thrust_ball:
        case GeometryClass::cylindrical_roller_thrust:
            CHECK(Dw <= 0.62 * B);
            CHECK(L <= 0.35 * S);
            break;
        case GeometryClass::thrust_ball_double:
            CHECK(2.0 * Dw <= 0.62 * 2.0 * B);
            break;
        case GeometryClass::needle_roller_thrust:
            CHECK(Dw == B);
            CHECK(L <= 0.35 * S);
            break;
        case GeometryClass::spherical_roller_thrust:
            CHECK(L * cosine + Dw * sine <= 0.9 * B);
            CHECK(L * sine + Dw * cosine <= 0.5 * S);
            break;
        default:
            FAIL("a class without conditions");
        }
    }
}

TEST_CASE("C falls between neighbours only where the standard sizes make it fall", "[core][catalogue]")
{
    // Drawn cups come in several widths for one bore, in no order of size: left out.
    std::map<std::string, double> large;
    int falls = 0;
    const auto rows = standardRows();
    for (std::size_t i = 1; i < rows.size(); ++i) {
        const CatalogueRow &a = rows[i - 1], &b = rows[i];
        if (a.series != b.series || a.geometry_class == GeometryClass::needle_drawn_cup || b.C_N >= a.C_N)
            continue;
        ++falls;
        const double fall = 1.0 - b.C_N / a.C_N;
        if (fall > 0.0205)
            large[a.designation + " " + b.designation] = fall;
    }
    CHECK(falls == 35);
    // In each of these the standard's section D - d or width is no larger at the larger bore (ISO 15, ISO 104).
    REQUIRE(large.size() == 5);
    CHECK_THAT(large["61909 61910"], WithinAbs(0.06, 0.005));
    CHECK_THAT(large["12/22 1205"], WithinAbs(0.06, 0.005));
    CHECK_THAT(large["22/22 2205"], WithinAbs(0.05, 0.005));
    CHECK_THAT(large["51101 51102"], WithinAbs(0.07, 0.005));
    CHECK_THAT(large["2213 2214"], WithinAbs(0.03, 0.005));
}

TEST_CASE("tapered pitch circles agree with the cup diameters of the standard", "[core][catalogue]")
{
    // ISO 355: E is the inside diameter of the cup at its small end; E + C tan a - D_we cos a is the pitch circle, derived
    // without the rule D_pw = (D + d)/2.
    double sum = 0.0, least = 1.0, most = -1.0;
    int count = 0;
    for (const CatalogueRow& r : standardRows()) {
        if (r.outer_small_end_mm == 0.0)
            continue;
        const InternalGeometry& g = *r.geometry;
        const double derived = r.outer_small_end_mm + r.outer_width_mm * std::tan(g.contact_angle_rad) -
                               g.element_diameter_mm * std::cos(g.contact_angle_rad);
        const double deviation = (derived - g.pitch_diameter_mm) / (r.outer_mm - r.bore_mm);
        sum += deviation;
        least = std::min(least, deviation);
        most = std::max(most, deviation);
        ++count;
    }
    CHECK(count == 206);
    CHECK_THAT(sum / count, WithinAbs(0.004, 0.0006)); // the figures are the known agreement, printed to 0.1 %
    CHECK_THAT(least, WithinAbs(-0.032, 0.0006));
    CHECK_THAT(most, WithinAbs(0.048, 0.0006));
}

TEST_CASE("designations and bores lead to the rows", "[core][catalogue]")
{
    const Catalogue& c = genericCatalogue();
    CHECK(row("608").bore_mm == 8.0);
    CHECK(row("618/8").bore_mm == 8.0);
    CHECK(row("60/22").bore_mm == 22.0);
    CHECK(row("6000").bore_mm == 10.0);
    CHECK(row("6003").bore_mm == 17.0);
    CHECK(row("7208-40").contact_angle_deg == Approx(40.0).margin(1e-9));
    CHECK(c.find("6299") == nullptr);
    CHECK(c.find("") == nullptr);

    std::set<std::string> names;
    for (const CatalogueRow& r : c.rows)
        CHECK(names.insert(r.designation).second);
    for (const CatalogueRow& r : c.variants)
        CHECK(names.insert(r.designation).second);

    for (const CatalogueRow& r : c.rows) { // each row is found by its bore and its name
        CHECK(c.find(r.designation) == &r);
        const auto same = c.rowsWithBore(r.geometry_class, r.bore_mm);
        CHECK(std::find(same.begin(), same.end(), &r) != same.end());
    }
    const auto forty = c.rowsWithBore(GeometryClass::deep_groove_ball, 40.0);
    std::vector<std::string> found;
    for (const CatalogueRow* r : forty)
        found.push_back(r->designation);
    CHECK(found == std::vector<std::string>{"61808", "61908", "16008", "6008", "6208", "6308", "6408"});
    CHECK(c.rowsWithBore(GeometryClass::deep_groove_ball, 40.5).empty());
    CHECK(c.rowsWithBore(GeometryClass::deep_groove_ball, std::nan("")).empty());
    CHECK(c.rowsWithBore(GeometryClass::deep_groove_ball, 40.0 + 5e-7).size() == 7);
    const auto bores = c.bores(GeometryClass::spherical_roller_thrust);
    CHECK(bores.front() == 60.0);
    CHECK(std::is_sorted(bores.begin(), bores.end()));
}

TEST_CASE("rib forms, tapered bores and rings left out share the ratings", "[core][catalogue]")
{
    const CatalogueRow& nu = row("NU208");
    for (const char* name : {"NJ208", "NUP208", "N208"}) {
        const CatalogueRow& r = row(name);
        CHECK(r.C_N == nu.C_N);
        CHECK(r.C0_N == nu.C0_N);
        CHECK(r.bore_mm == nu.bore_mm);
        CHECK(r.geometry_class == GeometryClass::cylindrical_roller);
    }
    CHECK(row("NJ208").series == "NJ2");
    CHECK(row("NJ208") == withPrefix(nu, "NJ"));
    // ribs: outer ring for NU, inner ring for N, both for NJ and NUP (ISO 15, DIN 5412)
    CHECK(nu.geometry->shoulder_inner_mm == 0.0);
    CHECK(nu.geometry->shoulder_outer_mm > 0.0);
    CHECK(row("N208").geometry->shoulder_outer_mm == 0.0);
    CHECK(row("N208").geometry->shoulder_inner_mm > row("N208").geometry->raceway_inner_mm);
    CHECK(row("NUP208").geometry->shoulder_inner_mm > 0.0);
    CHECK(row("NUP208").geometry->shoulder_outer_mm > 0.0);

    const CatalogueRow &na = row("NA4908"), &rna = row("RNA4908");
    CHECK(na.inner_raceway_mm == 48.0); // ISO 1206
    CHECK(rna.bore_mm == 48.0);
    CHECK(rna.C_N == na.C_N);
    CHECK(*rna.mass_kg < *na.mass_kg);
    CHECK(*rna.mass_kg > 0.3 * *na.mass_kg);
    CHECK(rna == withoutInnerRing(na));
    bool listed = false;
    for (const CatalogueRow* r : genericCatalogue().rowsWithRaceway(48.0)) {
        CHECK(r->inner_raceway_mm == 48.0);
        listed = listed || r == &rna;
    }
    CHECK(listed);
    CHECK(genericCatalogue().rowsWithRaceway(48.3).empty());

    CHECK(row("22220K").C_N == row("22220").C_N);
    CHECK(row("22220K").note.find("1:12") != std::string::npos);
    CHECK(row("24130K").note.find("1:30") != std::string::npos);
    CHECK(genericCatalogue().find("6208K") == nullptr);
    for (const CatalogueRow* r : genericCatalogue().rowsWithBore(GeometryClass::cylindrical_roller, 40.0))
        CHECK(r->designation.starts_with("NU")); // variants are not listed by bore
}

TEST_CASE("what the standard states reaches the row", "[core][catalogue]")
{
    // ISO 355, from memory: 30208 40 x 80 x 19.75, B 18, C 16, 14 deg 2' 10", E 65.730; r_s min 1.5
    const CatalogueRow& r = row("30208");
    CHECK(r.width_mm == 19.75);
    CHECK(r.inner_width_mm == 18.0);
    CHECK(r.outer_width_mm == 16.0);
    CHECK(r.outer_small_end_mm == 65.73);
    CHECK(r.chamfer_mm == 1.5);
    CHECK_THAT(r.contact_angle_deg, WithinAbs(14.0 + 2.0 / 60.0 + 10.0 / 3600.0, 5e-5)); // four decimals in the table
    CHECK(row("6208").chamfer_mm == 1.1);                                                // ISO 15, from memory
    CHECK(genericCatalogue().find("30202") == nullptr);                                  // no contact angle, no rating
    // ISO 582: the chamfers a bearing may have, from memory
    const std::set<double> iso582 = {0.0, 0.05, 0.08, 0.1, 0.15, 0.2, 0.3, 0.6, 1.0,  1.1,  1.5, 2.0,
                                     2.1, 2.5,  3.0,  4.0, 5.0,  6.0, 7.5, 9.5, 12.0, 15.0, 19.0};
    for (const CatalogueRow& each : genericCatalogue().rows) {
        CAPTURE(each.designation, each.chamfer_mm);
        CHECK(iso582.contains(each.chamfer_mm));
        const bool without = each.series == "HK" || each.series == "AXK";
        CHECK((each.chamfer_mm == 0.0) == without);
        CHECK(each.catalogue == "generic");
        CHECK_FALSE(each.catalogue_version.empty());
    }
    CHECK(row("6208").source.starts_with("computed from the standard boundary dimensions with the generic internal geometry"));
    CHECK(row("6208").note.find("±15 %") != std::string::npos);
}

TEST_CASE("contact angles of two-row bearings give the e that practice knows", "[core][catalogue]")
{
    // e = 1.5 tan alpha (ISO 281:2007 Tables 3 and 8); values usual in trade, from memory, two digits.
    const std::vector<std::pair<const char*, double>> known = {{"22208", 0.28}, {"22220", 0.24}, {"22308", 0.37}, {"23030", 0.22},
                                                               {"24030", 0.29}, {"1208", 0.21},  {"2308", 0.41}};
    for (const auto& [name, e] : known) {
        CAPTURE(name);
        CHECK_THAT(1.5 * std::tan(row(name).geometry->contact_angle_rad), WithinAbs(e, 0.0051));
    }
}

TEST_CASE("a copied catalogue points into its own rows", "[core][catalogue]")
{
    Catalogue copy = genericCatalogue();
    const CatalogueRow* found = copy.find("6208");
    REQUIRE(found != nullptr);
    CHECK(found >= copy.rows.data());
    CHECK(found < copy.rows.data() + copy.rows.size());
    const Catalogue moved = std::move(copy);
    CHECK(moved.find("6208") == found);
    Catalogue assigned;
    CHECK(assigned.find("6208") == nullptr);
    assigned = moved;
    CHECK(assigned.find("6208") != found);
    CHECK(assigned.find("6208")->C_N == found->C_N);
}

TEST_CASE("the first catalogue that holds a designation wins", "[core][catalogue]")
{
    Catalogue own;
    own.name = "own";
    own.rows.push_back(row("6208"));
    own.rows.back().C_N = 1.0;
    own.rows.push_back(row("6208"));
    own.rows.back().designation = "X1";
    own.buildIndex();
    const Catalogues both{{&genericCatalogue(), &own}};
    CHECK(both.find("6208")->C_N > 1.0);
    CHECK(both.find("X1") == &own.rows.back());
    CHECK(both.find("X2") == nullptr);
    CHECK(Catalogues{{&own, &genericCatalogue()}}.find("6208")->C_N == 1.0);
}

TEST_CASE("the rating of every row can be followed step by step", "[core][catalogue]")
{
    for (const CatalogueRow& r : genericCatalogue().rows) {
        const Derivation steps = ratingDerivation(r);
        CAPTURE(r.designation);
        int seen = 0;
        for (const DerivationStep& step : steps) {
            CHECK(step.source.find("ISO") != std::string::npos);
            seen += (step.code == "dynamic_rating" && step.result == r.C_N) +
                    (step.code == "static_rating" && step.result == r.C0_N) +
                    (step.code == "fatigue_load_limit" && step.result == *r.Cu_N);
        }
        CHECK(seen == 3);
    }
    CatalogueRow typed; // a bearing with nothing but stated ratings
    typed.C_N = 30000.0;
    typed.C0_N = 19000.0;
    typed.source = "stated by the user";
    const Derivation stated = ratingDerivation(typed);
    REQUIRE(stated.size() == 2);
    CHECK(stated.front().result == 30000.0);
    CHECK(stated.front().source == "stated by the user");
}

TEST_CASE("tables with a fault are refused with the line named", "[core][catalogue]")
{
    const std::array columns = {"a"sv, "b"sv};
    const auto code = [&](std::string_view text) {
        const auto table = CsvTable::parse("t", text, columns);
        return table.ok() ? std::string("read") : table.finding().code + " " + table.finding().path;
    };
    CHECK(code("a,b\n1,2\n") == "read");
    CHECK(code("b,a\r\n1,2\r\n") == "read");
    CHECK(code("a,b,c\n1,2,3\n") == "table-column-unknown t:1");
    CHECK(code("a,a\n1,2\n") == "table-column-unknown t:1");
    CHECK(code("a\n1\n") == "table-column-missing t:1");
    CHECK(code("") == "table-column-unknown t:1");
    CHECK(code("a,b\n1,2\n3\n") == "table-row-length t:3");
    CHECK(code("a,b\n1,\"2\n") == "table-quote t:2");
    CHECK(code("a,b\n1,\"2\"x\n") == "table-quote t:2");
    const auto table = CsvTable::parse("t", "b,a\n\"x,\"\"y\",2\n", columns);
    REQUIRE(table.ok());
    CHECK(table->cell(0, 0) == "2");
    CHECK(table->cell(0, 1) == "x,\"\"y");
    CHECK(table->number(0, 0, 0.0) == 2.0);
    CHECK(table->number(0, 1, 7.0) == 7.0);
    REQUIRE(table->faults().size() == 1);
    CHECK(table->faults().front().code == "table-number");
    CHECK(table->faults().front().path == "t:2");
}

TEST_CASE("a damaged table of dimensions does not become a catalogue", "[core][catalogue]")
{
    const CatalogueTexts good = embeddedTexts();
    REQUIRE(buildGenericCatalogue(good).ok());
    const auto code = [](const CatalogueTexts& texts) {
        const auto built = buildGenericCatalogue(texts);
        return built.ok() ? std::string("built") : built.finding().code;
    };
    const auto changed = [](std::string_view text, std::string_view from, std::string_view to) {
        std::string copy(text);
        const auto at = copy.find(from);
        REQUIRE(at != std::string::npos);
        copy.replace(at, from.size(), to);
        return copy;
    };
    CatalogueTexts bad = good;
    const std::string column = changed(good.radial, "outer_mm", "outside_mm");
    bad.radial = column;
    CHECK(code(bad) == "table-column-unknown");
    const std::string number = changed(good.radial, "02,0,2,40,80,18", "02,0,2,40,8O,18");
    bad.radial = number;
    CHECK(code(bad) == "value-invalid");
    const std::string chamfer = changed(good.radial, "02,0,2,40,80,18,1.1", "02,0,2,40,80,18,one");
    bad.radial = chamfer;
    CHECK(code(bad) == "table-number");
    const std::string missing = changed(good.radial, "02,0,2,40,80,18", "99,0,2,40,80,18");
    bad.radial = missing;
    CHECK(code(bad) == "table-count");
    bad = good;
    const std::string geometry = changed(good.series, "self_aligning_ball", "selfaligning_ball");
    bad.series = geometry;
    CHECK(code(bad) == "table-value-unknown");
    bad = good;
    bad.thrust = {};
    CHECK(code(bad) == "table-column-unknown");
}

TEST_CASE("the tables carry a source and a known provenance on every row", "[core][catalogue]")
{
    const std::vector<std::pair<const char*, std::size_t>> files = {{"series", 70},
                                                                    {"radial-dimensions", 721},
                                                                    {"needle-dimensions", 145},
                                                                    {"tapered-dimensions", 237},
                                                                    {"thrust-dimensions", 325}};
    for (const auto& [name, count] : files) {
        const std::string_view text = embeddedResource("catalogue/" + std::string(name) + ".csv");
        const std::string header(text.substr(0, text.find('\n')));
        std::vector<std::string> names;
        std::istringstream words(header);
        for (std::string word; std::getline(words, word, ',');)
            names.push_back(word);
        const std::vector<std::string_view> columns(names.begin(), names.end());
        const auto table = CsvTable::parse(name, text, columns);
        CAPTURE(name);
        REQUIRE(table.ok());
        CHECK(table->rows() == count);
        const auto place = [&](std::string_view column) {
            return static_cast<std::size_t>(std::find(columns.begin(), columns.end(), column) - columns.begin());
        };
        for (std::size_t i = 0; i < table->rows(); ++i) {
            CHECK_FALSE(table->cell(i, place("source")).empty());
            CHECK(provenanceFromString(table->cell(i, place("provenance"))).has_value());
        }
    }
}

TEST_CASE("the material table is whole and plausible", "[core][catalogue]")
{
    const std::array columns = {"name"sv,   "E_MPa"sv,  "G_MPa"sv,      "expansion_per_K"sv, "density_kg_m3"sv,
                                "Rm_MPa"sv, "Re_MPa"sv, "provenance"sv, "source"sv};
    const auto table = CsvTable::parse("materials.csv", embeddedResource("materials/materials.csv"), columns);
    REQUIRE(table.ok());
    REQUIRE(table->rows() == 26);
    std::set<std::string_view> names;
    for (std::size_t i = 0; i < table->rows(); ++i) {
        CAPTURE(table->cell(i, 0));
        CHECK(names.insert(table->cell(i, 0)).second);
        const double poisson = table->number(i, 1, 0.0) / (2.0 * table->number(i, 2, 1.0)) - 1.0;
        CHECK(poisson > 0.25); // handbook range of metals
        CHECK(poisson < 0.34);
        CHECK(table->number(i, 3, 0.0) > 1e-5);
        CHECK(table->number(i, 4, 0.0) > 2000.0);
        CHECK(table->number(i, 5, 1.0) >= table->number(i, 6, 0.0));
        CHECK(table->cell(i, 5).empty() == table->cell(i, 6).empty());
        CHECK(provenanceFromString(table->cell(i, 7)).has_value());
        CHECK_FALSE(table->cell(i, 8).empty());
    }
    CHECK(table->faults().empty());
    CHECK(names.contains("steel"));
    CHECK(table->cell(0, 0) == "steel");
}

TEST_CASE("numbers of a row read back short", "[core][catalogue]")
{
    // lengths of a row are decimals of a table or a rule with two decimals: nothing longer belongs into a file
    for (const CatalogueRow& r : genericCatalogue().rows) {
        CAPTURE(r.designation);
        for (const double length_mm :
             {r.bore_mm, r.outer_mm, r.width_mm, r.chamfer_mm, r.geometry->element_diameter_mm, r.geometry->effective_length_mm,
              r.geometry->pitch_diameter_mm, r.geometry->row_distance_mm, r.geometry->raceway_inner_mm,
              r.geometry->shoulder_outer_mm, r.contact_angle_deg})
            CHECK(shortestDecimal(length_mm).size() <= 14);
    }
}

TEST_CASE("the generic catalogue is built quickly", "[core][catalogue]")
{
    double best_ms = 1e9;
    for (int round = 0; round < 5; ++round) {
        const auto begin = std::chrono::steady_clock::now();
        REQUIRE(buildGenericCatalogue(embeddedTexts()).ok());
        best_ms = std::min(best_ms, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count());
    }
    // Measured 3 to 4 ms optimised; the limit leaves room for unoptimised and instrumented builds on a busy machine.
    INFO(best_ms);
    CHECK(best_ms < 250.0);
}
