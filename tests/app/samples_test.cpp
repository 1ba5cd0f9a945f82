// Every sample is opened, analysed, written back, held against the schema, drawn and reported; and together the samples use
// every kind of part and give every family of bearing something to say.

#include "core/analysis/analyse.h"
#include "core/catalogue/family_rows.h"
#include "core/document/document.h"
#include "core/drawing/sheet.h"
#include "core/report/json_report.h"
#include "tests/app/call.h"
#include "tests/support/json_schema.h"

#include <algorithm>
#include <cmath>
#include <iomanip>
#include <iostream>
#include <map>
#include <set>

using namespace shaftwright;
using namespace shaftwright::test;

namespace
{

struct Sample {
    std::string name, text;
    Arrangement arrangement;
    Assessment assessment;
};

const std::vector<Sample>& samples()
{
    static const std::vector<Sample> all = [] {
        std::vector<std::string> files;
        for (const auto& entry : std::filesystem::directory_iterator(std::string(SHAFTWRIGHT_SOURCE_DIR) + "/samples")) {
            if (entry.path().extension() == ".shaftwright")
                files.push_back(entry.path().string());
        }
        std::sort(files.begin(), files.end());
        std::vector<Sample> list;
        for (const std::string& file : files) {
            Sample sample;
            sample.name = std::filesystem::path(file).stem().string();
            sample.text = textOf(file);
            ReadResult read = readArrangement(sample.text, file);
            INFO(file << (read.errors.empty() ? "" : ": " + read.errors.front().code + " " + read.errors.front().path));
            REQUIRE(read.ok());
            CHECK(read.file_version == arrangementFormatVersion);
            sample.arrangement = std::move(*read.arrangement);
            sample.assessment = analyse(sample.arrangement, Catalogues{{&genericCatalogue()}});
            list.push_back(std::move(sample));
        }
        return list;
    }();
    return all;
}

const std::vector<std::string> kinds = {"cylindrical_gear", "bevel_gear", "worm",     "worm_wheel", "belt_pulley",
                                        "chain_sprocket",   "coupling",   "impeller", "weight",     "point_load",
                                        "distributed_load"};

void head(const std::string& title)
{
    std::cout << "matrix " << title << " x sample:";
    for (std::size_t i = 0; i < samples().size(); ++i)
        std::cout << ' ' << (i + 1) << '=' << samples()[i].name;
    std::cout << '\n';
}

void row(const std::string& name, const std::string& marks)
{
    std::cout << "matrix   " << std::left << std::setw(30) << name;
    for (const char mark : marks)
        std::cout << ' ' << mark;
    std::cout << '\n';
}

} // namespace

TEST_CASE("there are samples", "[app][samples]")
{
    CHECK(samples().size() >= 1);
}

TEST_CASE("every sample is solved without a stop that nobody foresaw", "[app][samples]")
{
    for (const Sample& sample : samples()) {
        INFO(sample.name);
        CHECK(sample.assessment.beam.usable());
        CHECK(sample.assessment.supports.size() == sample.arrangement.supports.size());
        for (const SupportAssessment& support : sample.assessment.supports) {
            INFO(support.id.value);
            CHECK(support.cases.size() == sample.arrangement.duty.load_cases.size());
            for (const SupportCase& one : support.cases) {
                CHECK(std::isfinite(one.radial_N));
                CHECK(std::isfinite(one.axial_N));
                CHECK(std::isfinite(one.tilt_mrad));
            }
            CHECK(support.suggestions.size() == allFamilies().size());
        }
        CHECK_FALSE(sample.arrangement.title.title.empty());
        CHECK_FALSE(sample.arrangement.title.purpose.empty());
    }
}

TEST_CASE("every sample is written back byte for byte", "[app][samples]")
{
    for (const Sample& sample : samples()) {
        INFO(sample.name);
        const std::string saved = writeArrangement(sample.arrangement);
        const ReadResult again = readArrangement(saved, sample.name);
        REQUIRE(again.ok());
        CHECK(*again.arrangement == sample.arrangement);
        CHECK(writeArrangement(*again.arrangement) == saved);
        CHECK(saved == sample.text); // the samples are canonical
        CHECK_FALSE(whyNotWritable(sample.arrangement));
    }
}

TEST_CASE("every sample fits the schema", "[app][samples]")
{
    const JsonNode schema = json(textOf(std::string(SHAFTWRIGHT_SOURCE_DIR) + "/resources/format/v1/arrangement.schema.json"));
    const SchemaCheck check(schema);
    for (const Sample& sample : samples()) {
        const std::vector<std::string> errors = check.errors(json(sample.text));
        INFO(sample.name << (errors.empty() ? "" : ": " + errors.front()));
        CHECK(errors.empty());
    }
}

TEST_CASE("every sample is drawn and reported", "[app][samples]")
{
    for (const Sample& sample : samples()) {
        INFO(sample.name);
        const drawing::Page page = drawing::pageOf(sample.arrangement, sample.assessment);
        const std::string picture = drawing::svg(page.list, page.width_mm, page.height_mm, {sample.arrangement.title.title, ""});
        CHECK(picture.size() > 5000);
        CHECK_FALSE(has(picture, "nan"));
        // One group for each thing on the shaft.
        std::set<std::string> subjects;
        for (const drawing::Group& group : page.list.groups)
            subjects.insert(group.subject);
        for (const Part& part : sample.arrangement.parts) {
            // A load that rests in the case that is drawn is not drawn.
            if (std::any_of(sample.arrangement.duty.load_cases.begin(), sample.arrangement.duty.load_cases.end(),
                            [&](const LoadCase& one) {
                                const auto found = one.parts.find(part.id);
                                return found != one.parts.end() && !found->second.active;
                            }))
                continue;
            INFO(part.id.value);
            CHECK(subjects.count("parts." + part.id.value) == 1);
        }
        for (const Support& support : sample.arrangement.supports) {
            INFO(support.id.value);
            CHECK(subjects.count("supports." + support.id.value) == 1);
        }
        const JsonNode report =
            json(jsonReport(sample.arrangement, sample.assessment, Catalogues{{&genericCatalogue()}}, "0", {true}));
        REQUIRE(report.find("supports") != nullptr);
        CHECK(report.find("supports")->items.size() == sample.arrangement.supports.size());
    }
}

TEST_CASE("the samples use every kind of part", "[app][samples]")
{
    head("part");
    for (const std::string& kind : kinds) {
        std::string marks;
        for (const Sample& sample : samples()) {
            const auto count = std::count_if(sample.arrangement.parts.begin(), sample.arrangement.parts.end(),
                                             [&](const Part& part) { return kind == kindOf(part); });
            marks += count == 0 ? '.' : (count > 9 ? '+' : static_cast<char>('0' + count));
        }
        row(kind, marks);
        INFO(kind);
        CHECK(marks.find_first_not_of('.') != std::string::npos);
    }
}

TEST_CASE("every family of bearing is judged by the samples, and every rated one has its place in one of them", "[app][samples]")
{
    // Without rows in the generic catalogue: no standard rates them, so that no sample can choose them.
    const std::set<Family> unrated = {
        Family::needle_thrust_combined, Family::plain_sintered, Family::plain_ptfe_composite, Family::plain_bronze,
        Family::plain_hydrodynamic,     Family::magnetic,       Family::linear_guide};
    head("family (B bearing, p part of a composite, s suited, c with care, - unsuited)");
    for (const Family family : allFamilies()) {
        std::string marks;
        for (const Sample& sample : samples()) {
            char mark = '.';
            const auto rank = [](char c) { return std::string(".-cspB").find(c); };
            const auto take = [&](char c) { mark = rank(c) > rank(mark) ? c : mark; };
            for (const SupportAssessment& support : sample.assessment.supports) {
                for (const Suggestion& suggestion : support.suggestions) {
                    if (suggestion.family == family)
                        take(suggestion.verdict == Verdict::suited ? 's' : suggestion.verdict == Verdict::with_care ? 'c' : '-');
                }
            }
            for (const Support& support : sample.arrangement.supports) {
                if (!support.bearing)
                    continue;
                if (support.bearing->family == family)
                    take('B');
                for (const SetRow& one : support.bearing->rows) {
                    if (naturalFamily(one.row) == family)
                        take('p');
                }
            }
            marks += mark;
        }
        row(std::string(toString(family)), marks);
        INFO(toString(family));
        CHECK(marks.find('.') == std::string::npos); // judged at every sample
        CHECK((unrated.count(family) > 0 || marks.find_first_of("Bpsc") != std::string::npos));
    }
}
