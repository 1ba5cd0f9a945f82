#include "app/command_line/arrangement_input.h"

#include "core/document/paths.h"
#include "core/report/texts.h"

#include <istream>
#include <iterator>
#include <ostream>

namespace shaftwright::command_line {

std::string describe(const ReadError& error)
{
    const Texts& texts = Texts::of(Language::english);
    std::string line = error.file;
    if (error.line > 0)
        line += ":" + std::to_string(error.line) + ":" + std::to_string(error.column);
    line += ": error: ";
    if (!error.path.empty())
        line += error.path + ": ";
    line += texts.fill("reader." + error.code + ".text", error.values, Typography::plain);
    line += " [" + error.code + "]";
    return line;
}

std::optional<Input> readInput(const std::string& file, const InputOptions& options, Streams& streams)
{
    Input input;
    input.name = file == "-" ? "standard input" : file;
    if (file == "-") {
        input.text.assign(std::istreambuf_iterator<char>(streams.in), {});
    } else {
        LoadedFile loaded = loadFile(file);
        if (loaded.error) {
            streams.err << describe(*loaded.error) << '\n';
            return std::nullopt;
        }
        input.text = std::move(*loaded.text);
    }
    ReadResult read = readArrangement(input.text, input.name);
    for (const ReadError& error : read.errors)
        streams.err << describe(error) << '\n';
    if (!read.arrangement)
        return std::nullopt;
    input.arrangement = std::move(*read.arrangement);
    for (const std::string& setting : options.settings) {
        const std::size_t equals = setting.find('=');
        if (equals == std::string::npos || equals == 0) {
            streams.err << "shaftwright: --set wants PATH=VALUE, for instance --set supports.B.x_mm=212; read '" << setting << "'\n";
            return std::nullopt;
        }
        Result<Arrangement> changed = setByPath(input.arrangement, setting.substr(0, equals), setting.substr(equals + 1));
        if (!changed) {
            const Texts& texts = Texts::of(Language::english);
            const std::string advice = findingAdvice(changed.finding(), texts, Typography::plain);
            streams.err << "shaftwright: --set " << setting << ": " << findingText(changed.finding(), texts, Typography::plain)
                        << (advice.empty() ? "" : " " + advice) << '\n';
            return std::nullopt;
        }
        input.arrangement = std::move(changed.value());
    }
    return input;
}

} // namespace shaftwright::command_line
