#include "app/command_line/commands.h"

#include "app/command_line/spelling.h"
#include "core/analysis/analyse.h"
#include "core/catalogue/family_rows.h"
#include "core/report/json_report.h"
#include "core/report/report.h"
#include "core/units/number_text.h"

#include <cmath>
#include <ostream>

namespace shaftwright::command_line
{
namespace
{

std::vector<std::string> familyWords()
{
    std::vector<std::string> words;
    for (const Family family : allFamilies())
        words.emplace_back(toString(family));
    return words;
}

bool rolling(Family family)
{
    return family < Family::plain_sintered && family != Family::needle_thrust_combined;
}

/// Why no bearing could be made of the words, already told; or the bearing.
std::optional<BearingChoice> chooseBearing(const LifeRequest& request, Streams& streams)
{
    std::optional<Family> family;
    if (!request.family.empty()) {
        family = familyFromString(request.family);
        if (!family) {
            streams.err << "shaftwright: unknown family '" << request.family << "'";
            if (const auto near = nearest(request.family, familyWords()))
                streams.err << "; did you mean '" << *near << "'?";
            streams.err << "\n  families:";
            for (const std::string& word : familyWords())
                streams.err << ' ' << word;
            streams.err << '\n';
            return std::nullopt;
        }
        if (!rolling(*family)) {
            streams.err << "shaftwright: no rating life by ISO 281 for '" << request.family << "'\n";
            return std::nullopt;
        }
    }
    CatalogueRow row;
    const bool typed = request.C_N || request.bore_mm || request.outer_mm;
    if (typed) {
        if (!family) {
            streams.err << "shaftwright: a typed bearing needs --family\n";
            return std::nullopt;
        }
        const auto needed = [&](const std::optional<double>& value, const char* option) {
            if (value && std::isfinite(*value) && *value > 0.0)
                return true;
            streams.err << "shaftwright: a typed bearing needs " << option << " above 0\n";
            return false;
        };
        if (!needed(request.bore_mm, "--bore-mm") || !needed(request.outer_mm, "--outer-mm") ||
            !needed(request.width_mm, "--width-mm") || !needed(request.C_N, "--C-N") || !needed(request.C0_N, "--C0-N"))
            return std::nullopt;
        if (*request.outer_mm <= *request.bore_mm) {
            streams.err << "shaftwright: --outer-mm must be larger than --bore-mm\n";
            return std::nullopt;
        }
        if (request.source.empty()) {
            streams.err << "shaftwright: a typed bearing needs --source, where its ratings come from\n";
            return std::nullopt;
        }
        row.catalogue = "typed";
        row.designation = request.designation.empty() ? "typed" : request.designation;
        row.geometry_class = geometryClassOf(*family);
        row.bore_mm = *request.bore_mm;
        row.outer_mm = *request.outer_mm;
        row.width_mm = *request.width_mm;
        row.C_N = *request.C_N;
        row.C0_N = *request.C0_N;
        row.Cu_N = request.Cu_N;
        row.f0 = request.f0;
        row.contact_angle_deg = request.angle_deg.value_or(0.0);
        row.e = request.e;
        row.X = request.X;
        row.Y = request.Y;
        row.Y0 = request.Y0;
        row.source = request.source;
        row.provenance = Provenance::own;
    } else {
        if (request.designation.empty()) {
            streams.err << "shaftwright: name a bearing with --designation (6208), or type one with --bore-mm, --outer-mm, "
                           "--width-mm, --C-N, "
                           "--C0-N, --source\n";
            return std::nullopt;
        }
        const auto found = genericCatalogue().find(request.designation);
        if (!found) {
            streams.err << "shaftwright: the generic catalogue has no bearing '" << request.designation << "'";
            std::vector<std::string> names;
            for (const CatalogueRow& candidate : genericCatalogue().rows)
                names.push_back(candidate.designation);
            if (const auto near = nearest(request.designation, names))
                streams.err << "; did you mean '" << *near << "'?";
            streams.err << '\n';
            return std::nullopt;
        }
        row = *found;
        if (!family)
            family = naturalFamily(row);
        if (geometryClassOf(*family) != row.geometry_class) {
            streams.err << "shaftwright: " << request.designation << " is no " << toString(*family) << " but "
                        << toString(*naturalFamily(row)) << "; leave out --family or name another bearing\n";
            return std::nullopt;
        }
    }
    BearingChoice choice;
    choice.family = *family;
    const FamilySet set = setOf(*family);
    choice.arrangement = set.arrangement;
    for (int i = 0; i < set.rows; ++i) {
        std::optional<Carries> carries;
        if (set.rows == 2 && choice.arrangement != SetArrangement::tandem)
            carries = (choice.arrangement == SetArrangement::O) == (i == 0) ? Carries::plus : Carries::minus;
        choice.rows.push_back({row, carries});
    }
    return choice;
}

bool readCase(const std::string& text, std::size_t number, SingleBearingLoad& load, Streams& streams)
{
    std::vector<double> values;
    std::size_t start = 0;
    bool good = true;
    while (good && start <= text.size()) {
        const std::size_t comma = std::min(text.find(',', start), text.size());
        const auto value = parseDecimal(std::string_view(text).substr(start, comma - start));
        good = value.has_value();
        if (good)
            values.push_back(*value);
        start = comma + 1;
    }
    if (!good || values.size() != 4 || values[0] < 0.0 || values[3] < 0.0) {
        streams.err
            << "shaftwright: --case wants FR,FA,N,SHARE in N, N, 1/min and share of time, for instance 3200,450,720,0.6; read '"
            << text << "'\n";
        return false;
    }
    load.name = "case" + std::to_string(number);
    load.Fr_N = values[0];
    load.Fa_N = std::abs(values[1]);
    load.speed_rpm = values[2];
    load.time_share = values[3];
    return true;
}

} // namespace

int life(const LifeRequest& request, Streams& streams)
{
    const auto format = settleFormat(request.output, {"text", "json", "html"}, "text", streams);
    if (!format || !knownLanguage(request.language, streams))
        return unusable;
    // The parser of options takes "nan" and "inf" for numbers.
    for (const auto& [value, option] : {std::pair{request.radial_N, "--radial-N"},
                                        {request.axial_N, "--axial-N"},
                                        {request.speed_rpm, "--speed-rpm"},
                                        {request.required_h, "--required-h"},
                                        {request.reliability_percent, "--reliability-percent"},
                                        {request.required_S0, "--required-S0"},
                                        {request.Cu_N, "--Cu-N"},
                                        {request.f0, "--f0"},
                                        {request.angle_deg, "--contact-angle-deg"},
                                        {request.e, "--e"},
                                        {request.X, "--X"},
                                        {request.Y, "--Y"},
                                        {request.Y0, "--Y0"}}) {
        if (value && !std::isfinite(*value)) {
            streams.err << "shaftwright: " << option << " wants a number; read one that is not finite\n";
            return unusable;
        }
    }
    const auto choice = chooseBearing(request, streams);
    if (!choice)
        return unusable;
    SingleBearingInput input;
    input.bearing = *choice;
    if (request.cases.empty()) {
        if ((!request.radial_N && !request.axial_N) || !request.speed_rpm) {
            streams.err << "shaftwright: state --radial-N or --axial-N or both, and --speed-rpm, or one --case FR,FA,N,SHARE for "
                           "each load case\n";
            return unusable;
        }
        const double radial_N = request.radial_N.value_or(0.0);
        if (radial_N < 0.0) {
            streams.err << "shaftwright: --radial-N is a magnitude, 0 or more; read " << shortestDecimal(radial_N) << '\n';
            return unusable;
        }
        input.loads.push_back({radial_N, std::abs(request.axial_N.value_or(0.0)), *request.speed_rpm, 1.0, "case1"});
    } else {
        if (request.radial_N || request.axial_N || request.speed_rpm) {
            streams.err << "shaftwright: --case already holds loads and speed; leave out --radial-N, --axial-N and --speed-rpm\n";
            return unusable;
        }
        for (std::size_t i = 0; i < request.cases.size(); ++i) {
            SingleBearingLoad load;
            if (!readCase(request.cases[i], i + 1, load, streams))
                return unusable;
            input.loads.push_back(load);
        }
    }
    const double reliability = request.reliability_percent.value_or(90.0);
    if (!(reliability >= 50.0 && reliability <= 99.95)) {
        streams.err << "shaftwright: --reliability-percent lies between 50 and 99.95; read " << shortestDecimal(reliability)
                    << '\n';
        return unusable;
    }
    if (request.required_h && !(*request.required_h > 0.0)) {
        streams.err << "shaftwright: --required-h must be above 0\n";
        return unusable;
    }
    input.required_L_h = request.required_h;
    input.reliability_percent = reliability;
    input.required_S0 = request.required_S0;
    Findings findings;
    const BearingAssessment bearing = analyseSingleBearing(input, findings);
    const ReportOptions options = reportOptions(request.language, request.output, streams);
    if (*format == "json")
        return deliver(request.output, jsonBearing(bearing, findings, SHAFTWRIGHT_VERSION), streams);
    return deliver(request.output,
                   *format == "html" ? htmlBearing(bearing, findings, options) : textBearing(bearing, findings, options),
                   streams);
}

} // namespace shaftwright::command_line
