#pragma once
// Reading an arrangement for a command: file or standard input, `--set`, errors in words.

#include "app/command_line/run.h"
#include "core/document/document.h"
#include "core/model/arrangement.h"

#include <optional>
#include <string>
#include <vector>

namespace shaftwright::command_line {

struct InputOptions {
    std::vector<std::string> settings; ///< PATH=VALUE of --set
};

struct Input {
    std::string name;                  ///< as given; "standard input" for -
    std::string text;
    Arrangement arrangement;
};

/// None: the reasons went to `streams.err`, one line each: file:line:col: error: text [code].
[[nodiscard]] std::optional<Input> readInput(const std::string& file, const InputOptions& options, Streams& streams);

/// One line for a reading error.
[[nodiscard]] std::string describe(const ReadError& error);

} // namespace shaftwright::command_line
