#include "app/command_line/output.h"

#include "app/command_line/arrangement_input.h"
#include "core/document/document.h"

#include <algorithm>
#include <ostream>

namespace shaftwright::command_line {
namespace {

std::string formatOfSuffix(const std::string& file)
{
    const std::size_t slash = file.rfind('/');
    const std::size_t dot = file.rfind('.');
    if (dot == std::string::npos || (slash != std::string::npos && dot < slash))
        return {};
    std::string suffix = file.substr(dot + 1);
    std::transform(suffix.begin(), suffix.end(), suffix.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (suffix == "txt")
        return "text";
    if (suffix == "htm")
        return "html";
    return suffix;
}

std::string listed(const std::vector<std::string>& words)
{
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        text += (i == 0 ? "" : i + 1 == words.size() ? " or " : ", ") + words[i];
    return text;
}

} // namespace

std::optional<std::string> settleFormat(const OutputOptions& options, const std::vector<std::string>& known, const std::string& preferred,
                                        Streams& streams)
{
    const bool to_file = !options.file.empty() && options.file != "-";
    const std::string suffix = to_file ? formatOfSuffix(options.file) : std::string{};
    const bool suffix_known = std::find(known.begin(), known.end(), suffix) != known.end();
    if (!options.format.empty()) {
        if (std::find(known.begin(), known.end(), options.format) == known.end()) {
            streams.err << "shaftwright: unknown format '" << options.format << "'; choose " << listed(known) << '\n';
            return std::nullopt;
        }
        if (suffix_known && suffix != options.format) {
            streams.err << "shaftwright: -f " << options.format << " contradicts the suffix of '" << options.file << "' (" << suffix
                        << "); leave one of them out\n";
            return std::nullopt;
        }
        return options.format;
    }
    if (to_file && !suffix_known) {
        streams.err << "shaftwright: cannot tell the format from '" << options.file << "'; add -f with " << listed(known) << '\n';
        return std::nullopt;
    }
    return suffix_known ? suffix : preferred;
}

int deliver(const OutputOptions& options, const std::string& bytes, Streams& streams)
{
    if (options.file.empty() || options.file == "-") {
        streams.out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
        streams.out.flush();
        return streams.out.good() ? fine : unusable;
    }
    if (const auto error = saveFile(options.file, bytes)) {
        streams.err << describe(*error) << '\n';
        return unusable;
    }
    return fine;
}

} // namespace shaftwright::command_line
