#pragma once
#include "app/command_line/run.h"

#include <optional>
#include <string>
#include <vector>

namespace shaftwright::command_line {

/// -o and -f as every command takes them. Empty file or "-": standard output.
struct OutputOptions {
    std::string file;
    std::string format;
};

/// The format that file suffix and -f agree on, else `preferred`. None and a message when they contradict or the format is not
/// one of `known`.
[[nodiscard]] std::optional<std::string> settleFormat(const OutputOptions& options, const std::vector<std::string>& known,
                                                      const std::string& preferred, Streams& streams);

/// Writes the whole text at once; a file appears whole or not at all.
[[nodiscard]] int deliver(const OutputOptions& options, const std::string& bytes, Streams& streams);

} // namespace shaftwright::command_line
