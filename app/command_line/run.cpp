#include "app/command_line/run.h"

#include "app/command_line/commands.h"
#include "app/command_line/spelling.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <exception>
#include <filesystem>
#include <ostream>

namespace shaftwright::command_line {
namespace {

const std::vector<std::string>& commandNames()
{
    static const std::vector<std::string> names = {"report", "check", "life", "schema", "paths", "normalise", "draw"};
    return names;
}

constexpr const char* caution = "A calculation does not replace the maker's data, local codes or licensed practice.";

void addInput(CLI::App& command, std::string& file, InputOptions& input)
{
    command.add_option("FILE", file, "arrangement file; - reads standard input")->required()->type_name("");
    command.add_option("--set", input.settings, "change an input for this run, for instance --set supports.B.x_mm=212; may be repeated")
        ->type_name("PATH=VALUE")
        ->allow_extra_args(false);
}

void addOutput(CLI::App& command, OutputOptions& output, const std::string& formats)
{
    command.add_option("-o,--output", output.file, "write to this file instead of standard output")->type_name("FILE");
    command.add_option("-f,--format", output.format, formats)->type_name("FORMAT");
}

/// What CLI11 made of the words, told in our own manner.
int explain(const CLI::ParseError& error, const CLI::App& app, const std::vector<std::string>& arguments, Streams& streams)
{
    const CLI::App* command = &app;
    for (const CLI::App* sub : app.get_subcommands())
        command = sub;
    if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
        // Help, asked for.
        streams.out << command->help(command == &app ? std::string() : app.get_name());
        return fine;
    }
    std::string message = error.what();
    std::optional<std::string> suggestion;
    if (dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr) {
        std::vector<std::string> known;
        for (const CLI::Option* option : command->get_options()) {
            for (const std::string& name : option->get_lnames())
                known.push_back("--" + name);
        }
        for (const std::string& word : arguments) {
            if (!word.starts_with("--"))
                continue;
            const std::string name = word.substr(0, word.find('='));
            if (std::find(known.begin(), known.end(), name) != known.end())
                continue;
            message = "unknown option '" + name + "'";
            suggestion = nearest(name, known);
            break;
        }
    }
    streams.err << "shaftwright: " << message;
    if (suggestion)
        streams.err << "; did you mean '" << *suggestion << "'?";
    streams.err << "\n  more: shaftwright " << (command == &app ? "" : command->get_name() + " ") << "--help\n";
    return unusable;
}

} // namespace

bool looksLikeFile(const std::string& argument)
{
    std::error_code ignored;
    return argument.find('/') != std::string::npos || argument.ends_with(".shaftwright") || std::filesystem::exists(argument, ignored);
}

bool asksForCommand(const std::vector<std::string>& arguments)
{
    if (arguments.empty())
        return false;
    const std::string& first = arguments.front();
    if (std::find(commandNames().begin(), commandNames().end(), first) != commandNames().end())
        return true;
    if (first.starts_with("-") && first != "-")
        return true;
    return !looksLikeFile(first);
}

int run(const std::vector<std::string>& arguments, Streams streams, const Renderer& renderer)
{
    CLI::App app{std::string("Shaftwright: from a shaft and what it carries to bearings that last.\n"
                             "With a file or without anything it opens the window; the commands below need none.\n") +
                     caution,
                 "shaftwright"};
    app.set_version_flag("--version", std::string("shaftwright ") + SHAFTWRIGHT_VERSION);
    app.require_subcommand(1);
    app.footer("Exit codes: 0 fine, 1 a requirement not met (check), 2 unusable input or usage, 3 our own error.\n"
               "Example: shaftwright report samples/gearbox-intermediate.shaftwright");
    int code = fine;

    ReportRequest report_request;
    CLI::App& report_command = *app.add_subcommand("report", "Analyse an arrangement and report reactions, bearings, lives, findings and derivations");
    addInput(report_command, report_request.file, report_request.input);
    addOutput(report_command, report_request.output, "text, json or html; else by the suffix of -o");
    report_command.add_option("--language", report_request.language, "en or de (text and html)")->type_name("CODE");
    report_command.add_option("--without", report_request.without, "leave out: curves (json), pictures (html)")->type_name("WORD")->allow_extra_args(false);
    report_command.footer("Exit codes: 0 fine, 2 unusable input or usage, 3 our own error.\nExample: shaftwright report samples/gearbox-intermediate.shaftwright -o gearbox.html");
    report_command.callback([&] { code = report(report_request, streams); });

    CheckRequest check_request;
    CLI::App& check_command = *app.add_subcommand("check", "One line a finding: file:line:col: severity: text [code]; exit 1 when a requirement is missed");
    check_command.add_option("FILE", check_request.files, "arrangement files; - reads standard input")->required()->type_name("");
    check_command.add_option("--set", check_request.input.settings, "change an input for this run; may be repeated")->type_name("PATH=VALUE")->allow_extra_args(false);
    check_command.add_flag("--strict", check_request.strict, "cautions that nobody accepted count as missed too");
    addOutput(check_command, check_request.output, "text or json; else by the suffix of -o");
    check_command.footer("Exit codes: 0 fine, 1 a requirement not met, 2 unusable input or usage, 3 our own error.\nExample: shaftwright check --strict samples/*.shaftwright");
    check_command.callback([&] { code = check(check_request, streams); });

    LifeRequest life_request;
    CLI::App& life_command = *app.add_subcommand("life", "Equivalent load, rating life and static safety of one bearing without a shaft");
    life_command.add_option("--designation", life_request.designation, "bearing of the generic catalogue, for instance 6208, NU208, 30208")->type_name("NAME");
    life_command.add_option("--family", life_request.family, "family, for instance deep_groove_ball; needed for sets and typed bearings")->type_name("FAMILY");
    life_command.add_option("--radial-N", life_request.radial_N, "radial load of the bearing, magnitude")->type_name("N");
    life_command.add_option("--axial-N", life_request.axial_N, "axial load of the bearing, magnitude")->type_name("N");
    life_command.add_option("--speed-rpm", life_request.speed_rpm, "speed of one ring against the other")->type_name("RPM");
    life_command.add_option("--case", life_request.cases, "a load case: radial N, axial N, speed 1/min, share of time; may be repeated")->type_name("FR,FA,N,SHARE")->allow_extra_args(false)->delimiter('\0');
    life_command.add_option("--required-h", life_request.required_h, "required life")->type_name("H");
    life_command.add_option("--reliability-percent", life_request.reliability_percent, "50 to 99.95, default 90")->type_name("PERCENT");
    life_command.add_option("--required-S0", life_request.required_S0, "least static safety instead of the standard's")->type_name("S0");
    const std::string typed = "Typed bearing";
    life_command.add_option("--bore-mm", life_request.bore_mm, "bore d")->type_name("MM")->group(typed);
    life_command.add_option("--outer-mm", life_request.outer_mm, "outside diameter D")->type_name("MM")->group(typed);
    life_command.add_option("--width-mm", life_request.width_mm, "width B (tapered T, axial H)")->type_name("MM")->group(typed);
    life_command.add_option("--C-N", life_request.C_N, "basic dynamic rating")->type_name("N")->group(typed);
    life_command.add_option("--C0-N", life_request.C0_N, "basic static rating")->type_name("N")->group(typed);
    life_command.add_option("--Cu-N", life_request.Cu_N, "fatigue load limit")->type_name("N")->group(typed);
    life_command.add_option("--f0", life_request.f0, "factor f0 of ISO 76")->type_name("F0")->group(typed);
    life_command.add_option("--contact-angle-deg", life_request.angle_deg, "nominal contact angle")->type_name("DEG")->group(typed);
    life_command.add_option("--e", life_request.e, "limiting ratio e")->type_name("E")->group(typed);
    life_command.add_option("--X", life_request.X, "radial factor above e")->type_name("X")->group(typed);
    life_command.add_option("--Y", life_request.Y, "axial factor above e")->type_name("Y")->group(typed);
    life_command.add_option("--Y0", life_request.Y0, "static axial factor")->type_name("Y0")->group(typed);
    life_command.add_option("--source", life_request.source, "where the ratings come from (required)")->type_name("TEXT")->group(typed);
    life_command.add_option("--language", life_request.language, "en or de (text and html)")->type_name("CODE");
    addOutput(life_command, life_request.output, "text, json or html; else by the suffix of -o");
    life_command.footer("Exit codes: 0 fine, 2 unusable input or usage, 3 our own error.\n"
                        "Example: shaftwright life --designation 6208 --radial-N 3500 --axial-N 420 --speed-rpm 720 --required-h 20000");
    life_command.callback([&] { code = life(life_request, streams); });

    OutputOptions schema_output;
    CLI::App& schema_command = *app.add_subcommand("schema", "The JSON Schema of the arrangement file");
    addOutput(schema_command, schema_output, "json");
    schema_command.footer("Exit codes: 0 fine, 2 unusable input or usage, 3 our own error.\nExample: shaftwright schema -o shaftwright.schema.json");
    schema_command.callback([&] { code = schema(schema_output, streams); });

    PathsRequest paths_request;
    CLI::App& paths_command = *app.add_subcommand("paths", "Every input that --set can change, with its value and origin");
    addInput(paths_command, paths_request.file, paths_request.input);
    addOutput(paths_command, paths_request.output, "text or json; else by the suffix of -o");
    paths_command.footer("Exit codes: 0 fine, 2 unusable input or usage, 3 our own error.\nExample: shaftwright paths samples/gearbox-intermediate.shaftwright");
    paths_command.callback([&] { code = paths(paths_request, streams); });

    NormaliseRequest normalise_request;
    CLI::App& normalise_command = *app.add_subcommand("normalise", "The file in its canonical form, for version control");
    addInput(normalise_command, normalise_request.file, normalise_request.input);
    normalise_command.add_option("-o,--output", normalise_request.output.file, "write to this file instead of standard output")->type_name("FILE");
    normalise_command.add_flag("--in-place", normalise_request.in_place, "write the file that was read");
    normalise_command.footer("Exit codes: 0 fine, 2 unusable input or usage, 3 our own error.\nExample: shaftwright normalise --in-place gearbox.shaftwright");
    normalise_command.callback([&] { code = normalise(normalise_request, streams); });

    DrawRequest draw_request;
    CLI::App& draw_command = *app.add_subcommand("draw", "The sheet as svg, pdf or png");
    addInput(draw_command, draw_request.file, draw_request.input);
    addOutput(draw_command, draw_request.output, "svg, pdf or png; else by the suffix of -o");
    draw_command.add_flag("--dark", draw_request.dark, "dark colours");
    draw_command.add_option("--pixels-per-mm", draw_request.pixels_per_mm, "png: resolution, 1 to 40, default 6")->type_name("N");
    draw_command.footer("Exit codes: 0 fine, 2 unusable input or usage, 3 our own error.\nExample: shaftwright draw samples/gearbox-intermediate.shaftwright -o gearbox.pdf");
    draw_command.callback([&] { code = draw(draw_request, streams, renderer); });

    if (!arguments.empty() && !arguments.front().starts_with("-") &&
        std::find(commandNames().begin(), commandNames().end(), arguments.front()) == commandNames().end()) {
        streams.err << "shaftwright: '" << arguments.front() << "' is neither a command nor a file";
        if (const auto near = nearest(arguments.front(), commandNames()))
            streams.err << "; did you mean '" << *near << "'?";
        streams.err << "\n  commands:";
        for (const std::string& name : commandNames())
            streams.err << ' ' << name;
        streams.err << "\n  more: shaftwright --help\n";
        return unusable;
    }

    std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
    try {
        app.parse(reversed);
    } catch (const CLI::CallForVersion& version) {
        streams.out << version.what() << '\n';
        return fine;
    } catch (const CLI::ParseError& error) {
        return explain(error, app, arguments, streams);
    } catch (const std::exception& error) {
        streams.err << "shaftwright: our own error: " << error.what() << "\n  please report it with the file that led to it\n";
        return our_error;
    }
    return code;
}

} // namespace shaftwright::command_line
