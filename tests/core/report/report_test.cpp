#include "core/report/report.h"

#include "core/report/json_report.h"
#include "core/report/writers.h"
#include "report_fixture.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace shaftwright;

namespace
{

ReportOptions options(Language language = Language::english, Typography typography = Typography::plain)
{
    ReportOptions result;
    result.language = language;
    result.typography = typography;
    result.program_version = "0.0";
    return result;
}

std::string text(const Arrangement& a, const ReportOptions& o = options())
{
    return textReport(a, test::analysed(a), test::generic(), o);
}

std::string html(const Arrangement& a, ReportOptions o = options())
{
    return htmlReport(a, test::analysed(a), test::generic(), o);
}

std::size_t count(const std::string& in, const std::string& what)
{
    std::size_t n = 0;
    for (std::size_t at = in.find(what); at != std::string::npos; at = in.find(what, at + what.size()))
        ++n;
    return n;
}

} // namespace

TEST_CASE("reports of the same input have the same bytes", "[core][report]")
{
    const Arrangement a = test::gearbox();
    CHECK(text(a) == text(a));
    CHECK(html(a) == html(a));
    CHECK(jsonReport(a, test::analysed(a), test::generic(), "0.0") == jsonReport(a, test::analysed(a), test::generic(), "0.0"));
}

TEST_CASE("no text key is missing in a report", "[core][report]")
{
    Arrangement a = test::gearbox();
    for (const Language language : {Language::english, Language::german}) {
        for (const bool cut : {false, true}) {
            if (cut)
                a.supports.pop_back();
            const std::string report = text(a, options(language));
            for (const char* space : {"<report.", "<chapter.", "<column.", "<finding.", "<word.", "<input.", "<assumption.",
                                      "<role.", "<kind.", "<family.", "<requirement.", "<verdict", "<severity.", "<extreme.",
                                      "<not_assessed.", "<caution.", "<source."}) {
                INFO(space);
                CHECK(report.find(space) == std::string::npos);
            }
            CHECK(report.find(" nan") == std::string::npos);
            CHECK(report.find(" inf ") == std::string::npos);
        }
        a = test::gearbox();
    }
}

TEST_CASE("the text report keeps within its columns and plain digits", "[core][report]")
{
    const std::string report = text(test::gearbox());
    std::size_t at = 0;
    while (at < report.size()) {
        const std::size_t end = std::min(report.find('\n', at), report.size());
        const std::string line = report.substr(at, end - at);
        INFO(line);
        CHECK(report::columnsOf(line) <= 100);
        at = end + 1;
    }
    CHECK(report.find("\u2009") == std::string::npos);
    CHECK(report.find("\u2212 ") == std::string::npos);
    CHECK(text(test::gearbox(), options(Language::german, Typography::fine)).find("\u2009") != std::string::npos);
}

TEST_CASE("the verdict says how many requirements are met", "[core][report]")
{
    Arrangement a = test::gearbox();
    CHECK(text(a).find("requirements are met") != std::string::npos);
    a.duty.required_L_h = 1e8;
    CHECK(text(a).find("are not met") != std::string::npos);
    a.duty.required_L_h = 12000;
    a.supports[0].bearing.reset();
    CHECK(text(a).find("could not be evaluated") != std::string::npos);
    a.supports.clear();
    CHECK(text(a).find("Nothing is required") != std::string::npos);
}

TEST_CASE("hostile texts of the document stay text", "[core][report]")
{
    Arrangement a = test::gearbox();
    const std::string evil =
        "<script>alert('x')</script> & \"quote\" \x1b[31m\x07\n\r\tline \xe2\x80\xae\xff" + std::string(3000, 'W');
    a.title.title = evil;
    a.title.author = evil;
    a.parts[0].name = evil;
    a.supports[0].name = evil;
    a.duty.load_cases[0].name = evil;
    a.shaft.material.name = evil;
    a.supports[0].shaft_fit = evil;
    a.supports[1].bearing->rows[0].row.designation = "62<06>&";
    a.supports[1].bearing->rows[0].row.source = evil;
    ReportOptions o = options();
    o.pictures = true;
    const std::string page = html(a, o);
    CHECK(page.find("<script") == std::string::npos);
    CHECK(page.find(">alert('x')") == std::string::npos); // an apostrophe may stand in the text of a picture, a tag may not
    CHECK(page.find("62<06>") == std::string::npos);
    CHECK(page.find('\x1b') == std::string::npos);
    CHECK(page.find('\xff') == std::string::npos);
    CHECK(page.find("\xe2\x80\xae") == std::string::npos);
    CHECK(page.find("&lt;script&gt;") != std::string::npos);
    const std::string report = text(a);
    CHECK(report.find('\x1b') == std::string::npos);
    CHECK(report.find('\x07') == std::string::npos);
    CHECK(report.find('\r') == std::string::npos);
    CHECK(report.find('\xff') == std::string::npos);
}

TEST_CASE("the page stands alone: no scripts, no other places, balanced tags", "[core][report]")
{
    const std::string page = html(test::gearbox());
    CHECK(page.starts_with("<!DOCTYPE html>"));
    CHECK(page.find("<script") == std::string::npos);
    CHECK(page.find("<link") == std::string::npos);
    CHECK(page.find("@import") == std::string::npos);
    CHECK(page.find("url(http") == std::string::npos);
    CHECK(page.find("src=") == std::string::npos);
    CHECK(page.find("<svg") != std::string::npos);
    for (const char* tag : {"section", "table", "details", "dl", "ul", "figure", "div", "svg"}) {
        INFO(tag);
        CHECK(count(page, std::string("<") + tag) == count(page, std::string("</") + tag + ">"));
    }
    ReportOptions without = options();
    without.pictures = false;
    CHECK(html(test::gearbox(), without).find("<svg") == std::string::npos);
}

TEST_CASE("the report for machines has the promised keys", "[core][report]")
{
    const Arrangement a = test::gearbox();
    const auto json = nlohmann::json::parse(jsonReport(a, test::analysed(a), test::generic(), "0.0"));
    const auto has = [](const nlohmann::json& object, std::initializer_list<const char*> keys) {
        for (const char* key : keys) {
            INFO(key);
            CHECK(object.contains(key));
        }
    };
    has(json, {"format", "format_version", "program", "arrangement", "catalogues", "assumptions", "load_cases", "supports",
               "shaft", "curves", "requirements", "all_supports", "findings"});
    has(json["arrangement"], {"title", "revision", "digest"});
    has(json["catalogues"][0], {"name", "version", "digest"});
    has(json["assumptions"][0], {"path", "value", "unit", "reason", "effect"});
    has(json["load_cases"][0], {"id", "name", "time_share", "speed_rpm", "torque_residual_Nmm"});
    const auto& support = json["supports"][0];
    has(support, {"id", "name", "x_mm", "role", "cases", "governing_case", "bearing", "suggestions"});
    has(support["cases"][0], {"case", "force_N", "moment_Nmm", "radial_N", "radial_angle_deg", "axial_N", "displacement_mm",
                              "rotation_mrad", "tilt_mrad"});
    has(support["bearing"], {"designation", "family", "catalogue", "bore_mm", "outer_mm", "width_mm", "C_N", "C0_N", "Cu_N",
                             "required_L_h", "L10_Mrev", "L10_h", "a1", "Lnm_h", "P_equivalent_N", "met", "cases"});
    has(support["bearing"]["cases"][0], {"case", "Fr_N", "Fa_N", "induced_axial_N", "X", "Y", "e", "P_N", "P0_N", "S0", "L10_h",
                                         "kappa", "e_C", "a_iso", "Lnm_h"});
    has(support["suggestions"][0], {"family", "verdict", "score", "designation", "L10_h", "reasons"});
    CHECK(support["suggestions"].size() == 39);
    has(json["shaft"],
        {"mass_kg", "length_mm", "max_deflection_mm", "max_deflection_x_mm", "max_moment_Nmm", "max_moment_x_mm", "case"});
    has(json["curves"][0], {"case", "x_mm", "N_N", "Vy_N", "Vz_N", "T_Nmm", "My_Nmm", "Mz_Nmm", "u_mm", "v_mm", "w_mm", "rx_mrad",
                            "ry_mrad", "rz_mrad"});
    has(json["requirements"][0], {"id", "text", "required", "found", "unit", "met", "where", "case"});
    has(json["all_supports"], {"L10_h", "Lnm_h", "reliability_at_required"});
    has(json["findings"][0], {"severity", "code", "subject", "path", "case", "text", "values", "advice", "source", "accepted"});
    CHECK(jsonReport(a, test::analysed(a), test::generic(), "0.0", {false}).find("\"curves\"") == std::string::npos);
}

TEST_CASE("what could not be found is null and a finding says why", "[core][report]")
{
    Arrangement a = test::gearbox();
    a.supports.pop_back();
    const auto json = nlohmann::json::parse(jsonReport(a, test::analysed(a), test::generic(), "0.0"));
    CHECK(json["shaft"]["max_deflection_mm"].is_null());
    CHECK(json["supports"][0]["bearing"].is_null());
    bool told = false;
    for (const auto& finding : json["findings"])
        told = told || (finding["severity"] == "stop" && finding["code"] == "shaft-tilts");
    CHECK(told);
}

TEST_CASE("one bearing alone has its own report", "[core][report]")
{
    SingleBearingInput input;
    input.bearing = BearingChoice{Family::deep_groove_ball, {{*genericCatalogue().find("6208"), {}}}, SetArrangement::none};
    input.loads = {{3000, 500, 1500, 1.0, "run"}};
    input.required_L_h = 10000;
    Findings findings;
    const BearingAssessment bearing = analyseSingleBearing(input, findings);
    const std::string report = textBearing(bearing, findings, options());
    CHECK(report.find("6208") != std::string::npos);
    CHECK(report.find("L10") != std::string::npos);
    CHECK(report.find("<report") == std::string::npos);
    CHECK(htmlBearing(bearing, findings, options()).starts_with("<!DOCTYPE html>"));
}
