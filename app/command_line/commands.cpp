#include "app/command_line/commands.h"

#include "core/analysis/analyse.h"
#include "core/base/embedded.h"
#include "core/document/locate.h"
#include "core/document/paths.h"
#include "core/report/json_report.h"
#include "core/report/report.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <cstdio>
#include <ostream>

namespace shaftwright::command_line
{

Catalogues catalogues()
{
    return {{&genericCatalogue()}};
}

namespace
{

/// JSON text of a string.
std::string quoted(std::string_view text)
{
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (static_cast<unsigned char>(c) < 0x20) {
            char code[8];
            std::snprintf(code, sizeof code, "\\u%04x", static_cast<unsigned>(static_cast<unsigned char>(c)));
            out += code;
        } else {
            out += c;
        }
    }
    return out + '"';
}

} // namespace

ReportOptions reportOptions(const std::string& language, const OutputOptions& output, const Streams& streams)
{
    ReportOptions options;
    options.language = language == "de" ? Language::german : Language::english;
    const bool terminal = streams.out_is_terminal && (output.file.empty() || output.file == "-");
    options.typography = terminal ? Typography::fine : Typography::plain;
    options.program_version = SHAFTWRIGHT_VERSION;
    return options;
}

bool knownLanguage(const std::string& language, Streams& streams)
{
    if (language == "en" || language == "de")
        return true;
    streams.err << "shaftwright: unknown language '" << language << "'; choose en or de\n";
    return false;
}

/// A report on a shaft that cannot be used is still a report; its findings say why.
int report(const ReportRequest& request, Streams& streams)
{
    const auto format = settleFormat(request.output, {"text", "json", "html"}, "text", streams);
    if (!format || !knownLanguage(request.language, streams))
        return unusable;
    for (const std::string& word : request.without) {
        if (word != "curves" && word != "pictures") {
            streams.err << "shaftwright: --without takes curves or pictures; read '" << word << "'\n";
            return unusable;
        }
    }
    const auto without = [&](const char* word) {
        return std::find(request.without.begin(), request.without.end(), word) != request.without.end();
    };
    const auto input = readInput(request.file, request.input, streams);
    if (!input)
        return unusable;
    const Catalogues sources = catalogues();
    const Assessment assessment = analyse(input->arrangement, sources);
    ReportOptions options = reportOptions(request.language, request.output, streams);
    options.pictures = !without("pictures");
    std::string text;
    if (*format == "json")
        text = jsonReport(input->arrangement, assessment, sources, SHAFTWRIGHT_VERSION, {!without("curves")});
    else if (*format == "html")
        text = htmlReport(input->arrangement, assessment, sources, options);
    else
        text = textReport(input->arrangement, assessment, sources, options);
    return deliver(request.output, text, streams);
}

int check(const CheckRequest& request, Streams& streams)
{
    const auto format = settleFormat(request.output, {"text", "json"}, "text", streams);
    if (!format)
        return unusable;
    const Texts& texts = Texts::of(Language::english);
    int worst = fine;
    std::string out;
    bool first = true;
    if (*format == "json")
        out += "[";
    for (const std::string& file : request.files) {
        const auto input = readInput(file, request.input, streams);
        if (!input) {
            worst = std::max(worst, static_cast<int>(unusable));
            continue;
        }
        const Assessment assessment = analyse(input->arrangement, catalogues());
        const PathLocator locator(input->text);
        for (const Finding& finding : assessment.findings) {
            const TextPosition place = locator.find(finding.path);
            const bool open_caution = finding.severity == Severity::caution && !finding.accepted;
            if (finding.severity == Severity::stop || (request.strict && open_caution))
                worst = std::max(worst, static_cast<int>(requirement_missed));
            const std::string sentence = findingText(finding, texts, Typography::plain);
            if (*format == "json") {
                out += first ? "\n" : ",\n";
                out += "  {\"file\": " + quoted(input->name) + ", \"line\": " + std::to_string(place.line) +
                       ", \"column\": " + std::to_string(place.column) + ", \"severity\": " + quoted(toString(finding.severity)) +
                       ", \"code\": " + quoted(finding.code) + ", \"path\": " + quoted(finding.path) +
                       ", \"text\": " + quoted(sentence) + ", \"accepted\": " + (finding.accepted ? "true" : "false") + "}";
                first = false;
            } else {
                out += input->name + ":" + std::to_string(place.line) + ":" + std::to_string(place.column) + ": " +
                       std::string(toString(finding.severity)) + ": " + sentence + (finding.accepted ? " (accepted)" : "") +
                       " [" + finding.code + "]\n";
            }
        }
        if (assessment.missed() > 0)
            worst = std::max(worst, static_cast<int>(requirement_missed));
    }
    if (*format == "json")
        out += first ? "]\n" : "\n]\n";
    const int delivered = deliver(request.output, out, streams);
    return std::max(worst, delivered);
}

int schema(const OutputOptions& output, Streams& streams)
{
    const auto format = settleFormat(output, {"json"}, "json", streams);
    if (!format)
        return unusable;
    return deliver(output, std::string(embeddedResource("format/v1/arrangement.schema.json")), streams);
}

int paths(const PathsRequest& request, Streams& streams)
{
    const auto format = settleFormat(request.output, {"text", "json"}, "text", streams);
    if (!format)
        return unusable;
    const auto input = readInput(request.file, request.input, streams);
    if (!input)
        return unusable;
    const auto inputs = addressableInputs(input->arrangement);
    std::string out;
    if (*format == "json")
        out += "[";
    bool first = true;
    std::size_t width = 0;
    for (const AddressedInput& entry : inputs)
        width = std::max(width, entry.path.size());
    for (const AddressedInput& entry : inputs) {
        const double* number = std::get_if<double>(&entry.value);
        const std::string value = number != nullptr ? shortestDecimal(*number) : std::get<std::string>(entry.value);
        static constexpr const char* origins[] = {"given", "assumed", "proposed"};
        const std::string origin = origins[static_cast<std::size_t>(entry.origin)];
        if (*format == "json") {
            out += first ? "\n" : ",\n";
            out += "  {\"path\": " + quoted(entry.path) + ", \"value\": " + (number != nullptr ? value : quoted(value)) +
                   ", \"unit\": " + quoted(entry.unit) + ", \"origin\": " + quoted(origin) + "}";
            first = false;
        } else {
            out += entry.path + std::string(width - entry.path.size() + 2, ' ') + value +
                   (entry.unit.empty() ? "" : " " + entry.unit) + "  (" + origin + ")\n";
        }
    }
    if (*format == "json")
        out += "\n]\n";
    return deliver(request.output, out, streams);
}

int normalise(const NormaliseRequest& request, Streams& streams)
{
    if (request.in_place && (!request.output.file.empty() || request.file == "-")) {
        streams.err << "shaftwright: --in-place writes the file it reads; leave out -o and -\n";
        return unusable;
    }
    const auto input = readInput(request.file, request.input, streams);
    if (!input)
        return unusable;
    if (const auto problem = whyNotWritable(input->arrangement)) {
        streams.err << request.file << ": error: " << findingText(*problem, Texts::of(Language::english), Typography::plain)
                    << " [" << problem->code << "]\n";
        return unusable;
    }
    OutputOptions output = request.output;
    if (request.in_place)
        output.file = request.file;
    return deliver(output, writeArrangement(input->arrangement), streams);
}

} // namespace shaftwright::command_line
