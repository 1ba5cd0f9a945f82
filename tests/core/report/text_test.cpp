// Sentences: both languages complete, placeholders filled, numbers follow the values.
#include "core/report/texts.h"

#include "core/base/embedded.h"
#include "core/document/document.h"
#include "report_fixture.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

using namespace shaftwright;

namespace
{

struct Emitted {
    const char* code;
    const char* variant;
    std::set<std::string> values;
};

/// What core emits, collected from its sources: code, variant, names of the values. `path` is always there.
const std::vector<Emitted>& emitted()
{
    static const std::set<std::string> bearing = {"support", "bearing", "case"};
    const auto with = [](std::set<std::string> more) {
        more.insert(bearing.begin(), bearing.end());
        return more;
    };
    static const std::vector<Emitted> list = {
        // check
        {"segment-size", "none", {}},
        {"segment-size", "length_mm", {"segment", "high", "value"}},
        {"segment-size", "outer_mm", {"segment", "high", "value"}},
        {"segment-size", "outer_end_mm", {"segment", "high", "value"}},
        {"segment-bore", "", {"segment", "bore_mm", "outer_mm"}},
        {"segment-cone", "", {"segment", "ratio", "half_angle_deg"}},
        {"material-elastic", "modulus_MPa", {"value"}},
        {"material-elastic", "shear_modulus_MPa", {"value"}},
        {"material-elastic", "density_kg_m3", {"value"}},
        {"material-elastic", "poisson", {"poisson"}},
        {"part-x-outside", "", {"part", "length_mm", "x_mm"}},
        {"load-range", "beyond", {"part", "start_mm", "end_mm", "length_mm"}},
        {"support-place", "outside", {"support", "length_mm", "x_mm"}},
        {"support-place", "same", {"support", "other", "x_mm"}},
        {"support-place", "close", {"support", "other", "distance_mm"}},
        {"support-place", "overlap", {"support", "other", "distance_mm", "needed_mm"}},
        {"support-stiffness", "not_finite", {"support"}},
        {"support-stiffness", "not_symmetric", {"support"}},
        {"support-stiffness", "negative", {"support"}},
        {"support-stiffness", "gap", {"support"}},
        {"support-rigid-and-spring", "gap", {"support"}},
        {"value-invalid", "", {"path", "low", "high", "value"}},
        {"value-invalid", "not_finite", {"path", "low", "high"}},
        {"value-invalid", "empty", {"path"}},
        {"value-invalid", "ring", {"path", "bore_mm", "outer_mm"}},
        {"value-invalid", "source", {"path"}},
        {"value-invalid", "reference", {"path", "id"}},
        {"value-invalid", "place", {"path"}},
        {"duty-share", "negative", {"case", "time_share"}},
        {"duty-share", "sum", {"sum"}},
        // loads
        {"gear-size", "teeth", {"value", "low", "part"}},
        {"gear-size", "module", {"value", "low", "high", "part"}},
        {"gear-size", "diameter", {"value", "part"}},
        {"gear-size", "helix", {"value", "low", "high", "part"}},
        {"gear-size", "mate", {"value", "low", "part"}},
        {"gear-size", "pressure_angle", {"value", "low", "high", "part"}},
        {"gear-size", "lead", {"value", "low", "high", "part"}},
        {"gear-size", "friction", {"value", "low", "high", "part"}},
        {"gear-size", "starts", {"value", "low", "part"}},
        {"gear-size", "face_width", {"value", "low", "high", "part"}},
        {"gear-beta-sign", "", {"helix_deg", "part"}},
        {"gear-hand-missing", "", {"helix_deg", "part"}},
        {"gear-hand-useless", "", {"part"}},
        {"gear-smaller-than-shaft", "", {"pitch_diameter_mm", "shaft_mm", "part"}},
        {"gear-centre-distance-small", "", {"centre_distance_mm", "least_mm", "part"}},
        {"bevel-delta", "range", {"cone_angle_deg", "part"}},
        {"bevel-delta", "sum", {"cone_angle_deg", "mate_cone_angle_deg", "shaft_angle_deg", "part"}},
        {"bevel-thrust-to-apex", "", {"Fx_N", "case", "part"}},
        {"worm-self-locking", "", {"mu", "limit", "part"}},
        {"mesh-mismatch", "worm_direction", {"given", "needed", "speed_rpm", "part"}},
        {"mesh-mismatch", "worm_direction_missing", {"part"}},
        {"belt-geometry", "", {"centre_distance_mm", "least_mm", "part"}},
        {"belt-geometry", "diameter", {"value", "part"}},
        {"belt-slips", "", {"ratio", "limit", "wrap_deg", "mu_needed", "part"}},
        {"belt-ratio", "factor", {"value", "low", "part"}},
        {"belt-ratio", "ratio", {"value", "low", "part"}},
        {"belt-ratio", "strands", {"value", "low", "part"}},
        {"belt-ratio", "sag", {"value", "low", "part"}},
        {"belt-slack", "", {"F0_N", "least_N", "Ft_N", "part"}},
        {"cardan-angle", "", {"joint_angle_deg", "limit", "part"}},
        {"weight-value", "mass", {"value", "part"}},
        {"weight-value", "grade", {"value", "part"}},
        {"weight-value", "eccentricity", {"value", "part"}},
        {"load-zero", "", {"part"}},
        {"load-range", "", {"start_mm", "end_mm", "part"}},
        {"value-unusual", "", {"input", "value", "low", "high", "part"}},
        {"part-power-at-standstill", "", {"power_kW", "case", "part"}},
        {"part-torque-contradiction", "", {"power_kW", "torque_Nmm", "torque_from_power_Nmm", "speed_rpm", "part"}},
        {"part-torque-contradiction", "strands", {"tight_N", "slack_N", "torque_Nmm", "torque_from_strands_Nmm", "part"}},
        {"part-torque-contradiction", "remaining", {"part"}},
        {"part-torque-missing", "", {"part"}},
        {"part-role-contradiction", "gives", {"power_kW", "case", "part"}},
        {"part-role-contradiction", "takes", {"power_kW", "case", "part"}},
        {"torque-remainder-twice", "", {"other", "part"}},
        {"torque-unbalanced", "", {"residual_Nm", "largest_Nm", "share_percent", "case"}},
        {"torque-unbalanced", "one_sign", {"residual_Nm", "largest_Nm", "share_percent", "case"}},
        {"torque-unbalanced", "small", {"residual_Nm", "largest_Nm", "share_percent", "case"}},
        // beam
        {"segment-size", "length", {"segment_number", "length_mm"}},
        {"segment-size", "gap", {"segment_number", "x0_mm", "previous_x1_mm"}},
        {"segment-size", "diameter", {"segment_number", "outer_mm"}},
        {"material-elastic", "", {"modulus_MPa", "shear_modulus_MPa", "poisson_ratio"}},
        {"support-stiffness", "symmetry", {"support", "asymmetry"}},
        {"support-stiffness", "gap-and-spring", {"support", "direction"}},
        {"support-rigid-and-spring", "", {"support", "direction"}},
        {"support-place", "same-seat", {"support", "other_support", "x_mm", "distance_mm"}},
        {"shaft-unsupported", "", {}},
        {"shaft-unsupported", "gaps-open", {}},
        {"support-plane-missing", "", {"direction"}},
        {"shaft-tilts", "", {"support", "x_mm"}},
        {"shaft-tilts-centres-coincide", "", {"support", "other_support", "seat_x_mm", "other_seat_x_mm", "x_mm"}},
        {"shaft-nearly-mechanism", "", {"support", "other_support", "x_mm", "distance_mm", "plane", "restraint_ratio"}},
        {"span-stubby", "", {"support", "other_support", "span_mm", "outer_mm"}},
        {"shaft-large-deflection", "", {"deflection_mm", "x_mm", "slope_mrad", "length_mm"}},
        {"bearing-unloaded", "gap-open", {"support"}},
        {"shaft-too-many-nodes", "", {"nodes"}},
        {"internal-balance", "", {"balance_force", "balance_moment"}},
        {"internal-balance", "newton", {"steps"}},
        {"internal-balance", "pivot", {}},
        {"internal-balance", "not-finite", {"balance_force", "balance_moment"}},
        // bearings
        {"value-invalid", "load", with({"name"})},
        {"value-invalid", "contact-angle", with({"contact_angle_deg", "family"})},
        {"value-invalid", "rating", with({"name", "value"})},
        {"not-assessed", "bearing-life", with({"family"})},
        {"axial-not-carried", "loose-rings", with({"Fr_N", "Fa_N", "Fa_limit_N"})},
        {"axial-not-carried", "static", with({"Fr_N", "Fa_N", "Fa_limit_N"})},
        {"axial-not-carried", "wrong-sense", with({"Fr_N", "Fa_N"})},
        {"radial-on-thrust", "", with({"Fr_N", "Fa_N", "Fr_limit_N"})},
        {"radial-on-thrust", "inclined", with({"Fr_N", "Fa_N", "Fr_limit_N"})},
        {"radial-on-thrust", "static", with({"Fr_N", "Fa_N", "Fr_limit_N"})},
        {"axial-beyond-table", "", with({"relative_axial_load", "limit", "Fa_N"})},
        {"default-used", "f0", with({"f0"})},
        {"bearing-unloaded", "", with({"speed_rpm"})},
        {"rib-load", "", with({"Fa_N", "Fr_N", "axial_ratio", "Fa_limit_N"})},
        {"rib-load", "limit", with({"Fa_N", "Fr_N", "axial_ratio", "Fa_limit_N"})},
        {"rib-load", "no-radial", with({"Fa_N", "Fr_N", "axial_ratio", "Fa_limit_N"})},
        {"rib-load", "peak", with({"Fa_N", "Fr_N", "axial_ratio", "Fa_limit_N"})},
        {"rib-load", "stated-limit", with({"Fa_N", "Fr_N", "Fa_limit_N"})},
        {"deep-groove-axial-limit", "", with({"Fa_N", "C0_N", "share_percent"})},
        {"deep-groove-axial-limit", "small", with({"Fa_N", "C0_N", "share_percent"})},
        {"four-point-low-axial", "", with({"Fr_N", "Fa_N", "axial_ratio", "limit"})},
        {"row-unloaded", "", with({"Fr_N", "Fa_N", "axial_ratio", "e"})},
        {"row-unloaded", "axial-only", with({"Fr_N", "Fa_N", "axial_ratio", "e"})},
        {"thrust-unloaded", "", with({"Fa_N", "Fa_min_N", "speed_rpm"})},
        {"thrust-unloaded", "below-least", with({"Fa_N", "Fa_min_N", "speed_rpm"})},
        {"load-above-c", "", with({"P_N", "C_N", "C0_N", "share_percent"})},
        {"load-above-half-c", "", with({"P_N", "C_N", "C0_N", "share_percent"})},
        {"load-above-c0", "", with({"P_N", "C_N", "C0_N", "share_percent"})},
        {"below-minimum-load", "ball", with({"P_N", "C_N", "share_percent", "P_min_N", "speed_rpm", "time_share_percent"})},
        {"below-minimum-load", "roller", with({"P_N", "C_N", "share_percent", "P_min_N", "speed_rpm", "time_share_percent"})},
        {"speed-very-low", "", with({"speed_rpm", "Dpw_mm", "n_Dpw"})},
        {"static-low", "", with({"S0", "S0_required", "P0_N", "C0_N"})},
        {"life-short", "", with({"L10_h", "required_L_h"})},
        {"life-generous", "", with({"L10_h", "required_L_h", "ratio", "C_over_P"})},
        {"life-generous", "million-hours", with({"L10_h"})},
        {"life-generous", "light-load", with({"L10_h", "C_over_P"})},
        // selection
        {"linear-motion", "", {"support"}},
        {"seat-not-standard", "", {"support", "seat_mm", "smaller_mm", "larger_mm"}},
        {"seat-not-standard", "outside", {"support", "seat_mm", "smaller_mm"}},
        {"seat-too-small", "", {"support", "seat_mm", "larger_mm", "row", "outer_mm", "width_mm"}},
        {"no-family", "", {"support", "count"}},
        {"no-suited-family", "", {"support", "family"}},
        {"about-equal", "", {"support", "family", "other", "score", "score_other"}},
        {"close-call", "", {"support", "family", "spread", "verdict"}},
        {"close-call", "life", {"support", "family", "spread", "verdict", "L10_h", "required_L10_h"}},
        {"type-outside-list", "insert", {"support"}},
        {"type-outside-list", "sheave", {"support"}},
        {"type-outside-list", "spindle", {"support"}},
        {"housing-space", "", {"support", "bearing", "outer_mm", "width_mm", "greatest_outer_mm", "greatest_width_mm"}},
        {"housing-space", "outer", {"support", "bearing", "outer_mm", "width_mm", "greatest_outer_mm", "greatest_width_mm"}},
        {"housing-space", "width", {"support", "bearing", "outer_mm", "width_mm", "greatest_outer_mm", "greatest_width_mm"}},
        {"tilt-beyond-limit", "", {"support", "bearing", "tilt_judged_mrad", "tilt_limit_mrad"}},
        {"tilt-costs-life", "", {"support", "bearing", "tilt_judged_mrad", "tilt_limit_mrad"}},
        {"tilt-costs-life", "needle", {"support", "bearing", "tilt_judged_mrad", "tilt_limit_mrad"}},
        {"raceway-too-soft", "", {"support", "bearing", "hardness_HRC", "hardness_needed_HRC"}},
        {"speed-beyond-limit", "oil", {"support", "bearing", "ndm", "ndm_limit", "ratio"}},
        {"speed-beyond-limit", "grease", {"support", "bearing", "ndm", "ndm_limit", "ratio"}},
        {"speed-high", "oil", {"support", "bearing", "ndm", "ndm_limit", "ratio"}},
        {"speed-high", "grease", {"support", "bearing", "ndm", "ndm_limit", "ratio"}},
        {"noise-family", "", {"support", "bearing"}},
        {"magnetic-reserved", "", {"support", "Fr_N", "speed_rpm"}},
        {"chosen-is-excluded", "", {"support", "bearing", "family", "reason"}},
        {"chosen-is-reserved", "", {"support", "bearing", "family", "reason"}},
        {"equal-dimension-better", "", {"support", "bearing", "other", "family", "outer_mm", "width_mm"}},
        {"equal-dimension-better", "life", {"support", "bearing", "other", "family", "outer_mm", "width_mm", "L10_h"}},
        {"belt-pulls-locating", "", {"support", "Fr_N", "Fr_other_N"}},
        // analysis
        {"support-idle", "", {"support", "Fr_N", "largest_N"}},
        {"reaction-reversal", "", {"support", "angle1_deg", "angle2_deg", "case1", "case2"}},
        {"uplift", "", {"support", "Fr_N", "case"}},
        {"three-supports", "", {"count", "support", "dF_N", "error_mm"}},
        {"axial-location-unloaded", "", {"support"}},
        {"rotation-reversal-axial", "both_senses", {"part", "Fa1_N", "Fa2_N"}},
        {"duty-no-load", "", {}},
        {"seat-bore-differs", "", {"support", "bearing", "bore_mm", "seat_mm"}},
        {"fillet-too-large", "", {"support", "fillet_mm", "chamfer_mm"}},
        {"assembly-order", "", {"support", "seat_mm", "obstacle_mm"}},
        {"parts-overlap", "", {"a", "b", "overlap_mm"}},
        {"support-without-bearing", "", {"support"}},
        {"modified-life-missing", "", {}},
        {"generic-rating", "", {}},
        {"default-used", "required_life", {}},
        {"not-assessed", "strength", {}},
        {"not-assessed", "fatigue", {}},
        {"not-assessed", "critical_speed", {}},
        {"axial-location-missing", "", {"direction", "support"}},
        {"axial-location-missing", "both", {"direction", "support"}},
        {"adjusted-single", "", {"support"}},
        {"adjusted-single", "more_than_two", {"support"}},
        {"adjusted-single", "end_play", {"support"}},
        {"adjusted-same-direction", "", {"a", "b", "direction"}},
        {"adjusted-with-locating", "", {"locating", "adjusted"}},
        {"two-locating", "", {"a", "b", "direction", "distance_mm"}},
        {"system-life", "", {"L10_h", "count", "system_L10_h", "required_L_h", "needed_each_h"}},
        {"requirement-missed", "deflection", {"found", "required", "unit", "where"}},
        {"requirement-missed", "slope", {"found", "required", "unit", "where"}},
        {"requirement-missed", "all_supports_life", {"found", "required", "unit", "where"}},
        {"requirement-missed", "static_all", {"found", "required", "unit", "where"}},
        {"requirement-missed", "not_evaluated", {"requirement", "required", "unit", "where"}},
        {"requirement-missed", "no_bearing", {"requirement", "required", "unit", "where"}},
        // catalogue, document, edit
        {"geometry-impossible", "", {"element_diameter_mm", "pitch_diameter_mm"}},
        {"geometry-gamma-range", "", {"gamma", "limit"}},
        {"table-quote", "", {}},
        {"table-column-unknown", "", {"column"}},
        {"table-column-missing", "", {"column"}},
        {"table-row-length", "", {"cells", "columns"}},
        {"table-number", "", {"column", "value"}},
        {"table-value-unknown", "", {"column", "value"}},
        {"table-count", "", {"rows", "wanted"}},
        {"path-unknown", "", {"path", "key", "suggestion"}},
        {"path-not-settable", "", {"path"}},
        {"value-invalid", "quantity", {"value", "unit", "quantity_code", "detail"}},
        {"edit-unknown-id", "", {"id"}},
        {"edit-duplicate-id", "", {"id"}},
        {"segment-size", "", {"value_mm", "least_mm"}},
    };
    return list;
}

NamedValues filledWith(const Emitted& one, double scale)
{
    NamedValues values;
    double number = 1.2345 * scale;
    for (const std::string& name : one.values) {
        const std::set<std::string> words = {
            "part",   "support",     "bearing",       "case",  "case1", "case2",      "other",         "segment",  "path",
            "input",  "family",      "verdict",       "a",     "b",     "direction",  "locating",      "adjusted", "where",
            "unit",   "row",         "name",          "id",    "key",   "suggestion", "other_support", "plane",    "column",
            "reason", "requirement", "quantity_code", "detail"};
        if (words.contains(name)) {
            std::string word = "W";
            if (name == "family" || (name == "other" && std::string(one.code) == "about-equal"))
                word = "deep_groove_ball";
            if (name == "verdict")
                word = "suited";
            if (name == "reason")
                word = "X07";
            if (name == "requirement")
                word = "life";
            if (name == "quantity_code")
                word = "empty";
            values.set(name, word);
        } else {
            values.set(name, number);
            number += scale;
        }
    }
    return values;
}

bool hasDigit(const std::string& text)
{
    return text.find_first_of("0123456789") != std::string::npos;
}

} // namespace

TEST_CASE("both languages have the same keys", "[core][report]")
{
    const std::vector<std::string> en = Texts::of(Language::english).keys();
    const std::vector<std::string> de = Texts::of(Language::german).keys();
    for (const std::string& key : en)
        CHECK(Texts::of(Language::german).has(key));
    for (const std::string& key : de)
        CHECK(Texts::of(Language::english).has(key));
    CHECK(std::set<std::string>(en.begin(), en.end()).size() == en.size()); // no key twice
    CHECK(en.size() > 900);
}

TEST_CASE("every code that core emits has a sentence that its values fill", "[core][report]")
{
    for (const Language language : {Language::english, Language::german}) {
        const Texts& texts = Texts::of(language);
        for (const Emitted& one : emitted()) {
            Finding finding;
            finding.code = one.code;
            finding.variant = one.variant;
            finding.values = filledWith(one, 1.0);
            INFO(one.code << " " << one.variant << ": " << findingText(finding, texts) << " / " << findingAdvice(finding, texts));
            CHECK(findingText(finding, texts).find('<') == std::string::npos);
            CHECK(findingAdvice(finding, texts).find('<') == std::string::npos);
            CHECK(findingText(finding, texts).find('{') == std::string::npos);
            CHECK(findingText(finding, texts).find('}') == std::string::npos);
            CHECK(findingAdvice(finding, texts).find('}') == std::string::npos);
        }
    }
}

TEST_CASE("numbers of a sentence follow the values", "[core][report]")
{
    const Texts& texts = Texts::of(Language::english);
    int moved = 0;
    for (const Emitted& one : emitted()) {
        Finding finding;
        finding.code = one.code;
        finding.variant = one.variant;
        finding.values = filledWith(one, 1.0);
        const std::string before = findingText(finding, texts) + findingAdvice(finding, texts);
        finding.values = filledWith(one, 37.0);
        const std::string after = findingText(finding, texts) + findingAdvice(finding, texts);
        const bool any_number = std::any_of(finding.values.entries.begin(), finding.values.entries.end(),
                                            [](const auto& entry) { return std::holds_alternative<double>(entry.second); });
        if (any_number && hasDigit(after) && before != after)
            ++moved;
    }
    CHECK(moved > 120);
}

TEST_CASE("every assumption of a bare arrangement has its words", "[core][report]")
{
    for (const Language language : {Language::english, Language::german}) {
        const Texts& texts = Texts::of(language);
        Arrangement bare = test::gearbox();
        bare.duty.required_L_h.reset();
        bare.shaft.material.name = "something else";
        bare.surroundings.motion = Motion::oscillation;
        for (Support& support : bare.supports) {
            support.role = Role::adjusted;
            support.bearing.reset();
        }
        const Assessment assessment = test::analysed(bare);
        CHECK(assessment.assumptions.size() > 20);
        for (const Assumption& assumption : assessment.assumptions) {
            INFO(assumption.reason);
            CHECK(texts.has("assumption." + assumption.reason + ".reason"));
            CHECK(texts.has("assumption." + assumption.reason + ".effect"));
        }
    }
}

TEST_CASE("sentences of every sample are complete", "[core][report]")
{
    const std::filesystem::path folder = std::filesystem::path(SHAFTWRIGHT_SOURCE_DIR) / "samples";
    int samples = 0;
    std::vector<std::filesystem::path> files;
    if (std::filesystem::exists(folder)) {
        for (const auto& entry : std::filesystem::directory_iterator(folder)) {
            if (entry.path().extension() == ".shaftwright")
                files.push_back(entry.path());
        }
    }
    for (const std::filesystem::path& file : files) {
        std::ifstream in(file);
        std::stringstream text;
        text << in.rdbuf();
        const ReadResult read = readArrangement(text.str(), file.filename().string());
        REQUIRE(read.ok());
        ++samples;
        const Assessment assessment = test::analysed(*read.arrangement);
        for (const Language language : {Language::english, Language::german}) {
            const Texts& texts = Texts::of(language);
            for (const Finding& finding : assessment.findings) {
                INFO(file.filename() << ": " << finding.code << " " << finding.variant);
                CHECK(findingText(finding, texts).find('<') == std::string::npos);
                CHECK(findingAdvice(finding, texts).find('<') == std::string::npos);
            }
            for (const SupportAssessment& support : assessment.supports) {
                for (const Suggestion& suggestion : support.suggestions) {
                    for (const Reason& reason : suggestion.reasons)
                        CHECK(reasonText(reason, texts).find('<') == std::string::npos);
                }
            }
        }
    }
    CHECK(samples >= 1);
}

TEST_CASE("passages stand only with their value", "[core][report]")
{
    const Texts& texts = Texts::of(Language::english);
    const NamedValues with{{"key", std::string("colour")}, {"suggestion", std::string("color")}};
    const NamedValues without{{"key", std::string("colour")}, {"suggestion", std::string()}};
    CHECK(texts.fill("reader.file-unknown-key.text", with, Typography::plain) == "colour is not known here. Did you mean color?");
    CHECK(texts.fill("reader.file-unknown-key.text", without, Typography::plain) == "colour is not known here.");
    CHECK(texts.fill("no.such.key", {}, Typography::plain) == "<no.such.key>");
}
