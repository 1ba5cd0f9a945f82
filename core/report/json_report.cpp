#include "core/report/json_report.h"

#include "core/document/document.h"
#include "core/units/number_text.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <stdexcept>

namespace shaftwright
{
namespace
{

using Json = nlohmann::ordered_json;

/// Readable JSON: objects over lines, lists of plain numbers on one line, shortest exact decimals.
class Writer
{
public:
    static std::string write(const Json& value)
    {
        Writer writer;
        writer.put(value, 0);
        writer.m_out += '\n';
        return std::move(writer.m_out);
    }

private:
    std::string m_out;

    void newLine(int depth)
    {
        m_out += '\n';
        m_out.append(static_cast<std::size_t>(2 * depth), ' ');
    }

    void number(double value)
    {
        if (!std::isfinite(value))
            throw std::domain_error("a number of the report is not finite");
        m_out += shortestDecimal(value == 0.0 ? 0.0 : value);
    }

    void put(const Json& value, int depth)
    {
        if (value.is_number_float()) {
            number(value.get<double>());
        } else if (value.is_object() && !value.empty()) {
            m_out += '{';
            bool first = true;
            for (const auto& [key, inner] : value.items()) {
                if (!first)
                    m_out += ',';
                first = false;
                newLine(depth + 1);
                m_out += Json(key).dump() + ": ";
                put(inner, depth + 1);
            }
            newLine(depth);
            m_out += '}';
        } else if (value.is_array() && !value.empty()) {
            const bool flat = std::none_of(value.begin(), value.end(), [](const Json& inner) { return inner.is_structured(); });
            m_out += '[';
            bool first = true;
            for (const Json& inner : value) {
                if (!first)
                    m_out += flat ? ", " : ",";
                first = false;
                if (!flat)
                    newLine(depth + 1);
                put(inner, depth + 1);
            }
            if (!flat)
                newLine(depth);
            m_out += ']';
        } else {
            m_out += value.dump();
        }
    }
};

template <class T> Json orNull(const std::optional<T>& value)
{
    return value ? Json(*value) : Json(nullptr);
}

Json plain(const TextValue& value)
{
    if (const double* number = std::get_if<double>(&value))
        return *number;
    return std::get<std::string>(value);
}

Json valuesOf(const NamedValues& values)
{
    Json object = Json::object();
    for (const auto& [name, value] : values.entries)
        object[name] = plain(value);
    return object;
}

Json xyz(const Vector3& v)
{
    return {{"x", v.x}, {"y", v.y}, {"z", v.z}};
}

Json derivationOf(const Derivation& derivation, const Texts& texts)
{
    Json list = Json::array();
    for (const DerivationStep& step : derivation) {
        Json entry;
        entry["quantity"] = texts.has("derivation." + step.code) ? std::string(texts.get("derivation." + step.code)) : step.code;
        entry["symbol"] = step.symbol;
        entry["formula"] = step.formula;
        entry["inputs"] = valuesOf(step.inputs);
        entry["result"] = step.result;
        entry["unit"] = step.unit;
        entry["source"] = step.source;
        list.push_back(std::move(entry));
    }
    return list;
}

Json caseName(const Assessment& assessment, int index)
{
    if (index < 0 || static_cast<std::size_t>(index) >= assessment.load_cases.size())
        return nullptr;
    return assessment.load_cases[static_cast<std::size_t>(index)].id.value;
}

Json bearingOf(const BearingAssessment& bearing, const Texts& texts)
{
    const BearingRating& rating = bearing.rating;
    Json object;
    object["designation"] = rating.designation;
    object["family"] = std::string(toString(rating.family));
    object["catalogue"] = bearing.catalogue;
    object["bore_mm"] = rating.bore_mm;
    object["outer_mm"] = rating.outer_mm;
    object["width_mm"] = rating.width_mm;
    object["C_N"] = rating.C_N;
    object["C0_N"] = rating.C0_N;
    object["Cu_N"] = orNull(rating.Cu_N);
    object["required_L_h"] = orNull(bearing.required_L_h);
    object["L10_Mrev"] = orNull(bearing.L10_Mrev);
    object["L10_h"] = orNull(bearing.L10_h);
    object["a1"] = bearing.a1;
    object["Lnm_h"] = orNull(bearing.Lnm_h);
    object["P_equivalent_N"] = orNull(bearing.P_equivalent_N);
    object["met"] = orNull(bearing.met);
    object["S0_min"] = orNull(bearing.S0_min);
    object["S0_required"] = bearing.required_S0;
    object["centre_x_mm"] = bearing.centre_x_mm;
    object["damage_share"] = Json::array();
    for (const BearingCase& in : bearing.cases)
        object["damage_share"].push_back(in.damage_share);
    object["cases"] = Json::array();
    for (const BearingCase& in : bearing.cases) {
        Json out;
        out["case"] = in.case_id.value;
        out["Fr_N"] = in.Fr_N;
        out["Fa_N"] = in.Fa_N;
        out["induced_axial_N"] = orNull(in.induced_axial_N);
        out["X"] = in.X;
        out["Y"] = in.Y;
        out["e"] = in.e;
        out["P_N"] = orNull(in.P_N);
        out["P0_N"] = orNull(in.P0_N);
        out["S0"] = orNull(in.S0);
        out["L10_h"] = orNull(in.L10_h);
        out["damage_share"] = in.damage_share;
        for (const char* later : {"kappa", "e_C", "a_iso", "Lnm_h"})
            out[later] = nullptr;
        out["derivation"] = derivationOf(in.derivation, texts);
        object["cases"].push_back(std::move(out));
    }
    object["derivation"] = derivationOf(bearing.derivation, texts);
    return object;
}

Json findingsOf(const Findings& findings, const Texts& texts)
{
    Json list = Json::array();
    for (const Finding& finding : findings) {
        Json entry;
        entry["severity"] = std::string(toString(finding.severity));
        entry["code"] = finding.code;
        entry["subject"] = finding.subject;
        entry["path"] = finding.path;
        entry["case"] = orNull(finding.case_id);
        entry["text"] = findingText(finding, texts, Typography::plain);
        entry["values"] = valuesOf(finding.values);
        entry["advice"] = findingAdvice(finding, texts, Typography::plain);
        entry["source"] = finding.source;
        entry["accepted"] = finding.accepted;
        list.push_back(std::move(entry));
    }
    return list;
}

Json supportsOf(const Assessment& assessment, const Texts& texts)
{
    Json list = Json::array();
    for (const SupportAssessment& in : assessment.supports) {
        Json support;
        support["id"] = in.id.value;
        support["name"] = in.name;
        support["x_mm"] = in.x_mm;
        support["role"] = std::string(toString(in.role));
        support["cases"] = Json::array();
        for (const SupportCase& here : in.cases) {
            Json out;
            out["case"] = here.case_id.value;
            out["force_N"] = xyz(here.force_N);
            out["moment_Nmm"] = {{"y", here.moment_y_Nmm}, {"z", here.moment_z_Nmm}};
            out["radial_N"] = here.radial_N;
            out["radial_angle_deg"] = here.radial_angle_deg;
            out["axial_N"] = here.axial_N;
            out["displacement_mm"] = xyz(here.displacement_mm);
            out["rotation_mrad"] = {{"y", here.rotation_y_mrad}, {"z", here.rotation_z_mrad}};
            out["tilt_mrad"] = here.tilt_mrad;
            out["tilt_judged_mrad"] = here.tilt_judged_mrad;
            support["cases"].push_back(std::move(out));
        }
        support["governing_case"] = caseName(assessment, in.governing_case);
        support["bearing"] = in.bearing ? bearingOf(*in.bearing, texts) : Json(nullptr);
        support["suggestions"] = Json::array();
        for (const Suggestion& suggestion : in.suggestions) {
            Json out;
            out["family"] = std::string(toString(suggestion.family));
            out["verdict"] = std::string(toString(suggestion.verdict));
            out["score"] = suggestion.score;
            out["designation"] = suggestion.choice ? Json(suggestion.choice->designation()) : Json(nullptr);
            out["L10_h"] = orNull(suggestion.L10_h);
            out["reserve"] = orNull(suggestion.reserve);
            out["close_call"] = suggestion.close_call;
            out["reasons"] = Json::array();
            for (const Reason& reason : suggestion.reasons)
                out["reasons"].push_back({{"code", reason.code},
                                          {"criterion", reason.criterion},
                                          {"text", reasonText(reason, texts, Typography::plain)},
                                          {"effect", std::string(toString(reason.effect))},
                                          {"values", valuesOf(reason.values)},
                                          {"source", reason.source}});
            support["suggestions"].push_back(std::move(out));
        }
        list.push_back(std::move(support));
    }
    return list;
}

Json curvesOf(const Assessment& assessment)
{
    Json list = Json::array();
    for (std::size_t i = 0; i < assessment.beam.cases.size(); ++i) {
        Json curve;
        curve["case"] = assessment.load_cases[i].id.value;
        const std::vector<beam::State> states = beam::sample(assessment.beam, i);
        const auto column = [&](const char* key, double factor, double beam::State::*member) {
            Json numbers = Json::array();
            for (const beam::State& state : states)
                numbers.push_back(factor * (state.*member));
            curve[key] = std::move(numbers);
        };
        column("x_mm", 1.0, &beam::State::x_mm);
        column("N_N", 1.0, &beam::State::N_N);
        column("Vy_N", 1.0, &beam::State::Vy_N);
        column("Vz_N", 1.0, &beam::State::Vz_N);
        column("T_Nmm", 1.0, &beam::State::T_Nmm);
        column("My_Nmm", 1.0, &beam::State::My_Nmm);
        column("Mz_Nmm", 1.0, &beam::State::Mz_Nmm);
        column("u_mm", 1.0, &beam::State::u_mm);
        column("v_mm", 1.0, &beam::State::v_mm);
        column("w_mm", 1.0, &beam::State::w_mm);
        column("rx_mrad", 1e3, &beam::State::rx_rad);
        column("ry_mrad", 1e3, &beam::State::ry_rad);
        column("rz_mrad", 1e3, &beam::State::rz_rad);
        list.push_back(std::move(curve));
    }
    return list;
}

Json requirementsOf(const Assessment& assessment, const Texts& texts)
{
    Json list = Json::array();
    for (const RequirementResult& in : assessment.requirements)
        list.push_back({{"id", in.id},
                        {"text", texts.fill("requirement." + in.kind, {{"where", in.where}}, Typography::plain)},
                        {"required", in.required},
                        {"found", orNull(in.found)},
                        {"unit", in.unit},
                        {"met", orNull(in.met)},
                        {"where", in.where},
                        {"case", in.case_id ? Json(in.case_id->value) : Json(nullptr)}});
    return list;
}

} // namespace

std::string jsonReport(const Arrangement& arrangement, const Assessment& assessment, const Catalogues& catalogues,
                       std::string_view program_version, const JsonReportOptions& options)
{
    const Texts& texts = Texts::of(Language::english);
    Json report;
    report["format"] = reportFormat;
    report["format_version"] = reportFormatVersion;
    report["program"] = {{"name", "shaftwright"}, {"version", std::string(program_version)}};
    report["arrangement"] = {
        {"title", arrangement.title.title},
        {"revision", arrangement.revisions.empty() ? Json(nullptr) : Json(arrangement.revisions.back().letter)},
        {"digest", whyNotWritable(arrangement) ? Json(nullptr) : Json(digestOf(arrangement))}};
    report["catalogues"] = Json::array();
    for (const Catalogue* catalogue : catalogues.list)
        report["catalogues"].push_back(
            {{"name", catalogue->name}, {"version", catalogue->version}, {"digest", digestOf(*catalogue)}});
    report["assumptions"] = Json::array();
    for (const Assumption& in : assessment.assumptions) {
        report["assumptions"].push_back({{"path", in.path},
                                         {"value", plain(in.value)},
                                         {"unit", in.unit},
                                         {"reason", texts.fill("assumption." + in.reason + ".reason", {}, Typography::plain)},
                                         {"effect", texts.fill("assumption." + in.reason + ".effect", {}, Typography::plain)}});
    }
    report["load_cases"] = Json::array();
    for (const CaseSummary& in : assessment.load_cases)
        report["load_cases"].push_back({{"id", in.id.value},
                                        {"name", in.name},
                                        {"time_share", in.time_share},
                                        {"speed_rpm", in.speed_rpm},
                                        {"torque_residual_Nmm", in.torque_residual_Nmm},
                                        {"axial_sum_N", in.K_N}});
    report["supports"] = supportsOf(assessment, texts);
    const bool solved = assessment.beam.usable();
    const auto found = [&](double value) { return solved ? Json(value) : Json(nullptr); };
    report["shaft"] = {{"mass_kg", found(assessment.shaft.mass_kg)},
                       {"length_mm", found(assessment.shaft.length_mm)},
                       {"max_deflection_mm", found(assessment.shaft.max_deflection_mm)},
                       {"max_deflection_x_mm", found(assessment.shaft.max_deflection_x_mm)},
                       {"max_moment_Nmm", found(assessment.shaft.max_moment_Nmm)},
                       {"max_moment_x_mm", found(assessment.shaft.max_moment_x_mm)},
                       {"case", assessment.shaft.case_id ? Json(assessment.shaft.case_id->value) : Json(nullptr)}};
    if (options.curves)
        report["curves"] = curvesOf(assessment);
    report["requirements"] = requirementsOf(assessment, texts);
    report["all_supports"] = {{"L10_h", orNull(assessment.all_supports.L10_h)},
                              {"Lnm_h", nullptr},
                              {"reliability_at_required", orNull(assessment.all_supports.reliability_at_required)},
                              {"weibull_slope", assessment.all_supports.slope}};
    report["findings"] = findingsOf(assessment.findings, texts);
    return Writer::write(report);
}

std::string jsonBearing(const BearingAssessment& bearing, const Findings& findings, std::string_view program_version)
{
    const Texts& texts = Texts::of(Language::english);
    Json report;
    report["format"] = reportFormat;
    report["format_version"] = reportFormatVersion;
    report["program"] = {{"name", "shaftwright"}, {"version", std::string(program_version)}};
    report["bearing"] = bearingOf(bearing, texts);
    report["findings"] = findingsOf(findings, texts);
    return Writer::write(report);
}

} // namespace shaftwright
