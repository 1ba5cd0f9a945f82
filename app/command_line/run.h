#pragma once
// The command line without a window: hermetic runs, stated streams, fixed exit codes.

#include "core/drawing/sheet.h"

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright::command_line {

/// Exit codes of every command.
enum ExitCode : int {
    fine = 0,
    requirement_missed = 1, ///< only `check`
    unusable = 2,           ///< unusable input or usage
    our_error = 3
};

struct Streams {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
    bool out_is_terminal = false;
};

/// How a page becomes PDF or PNG.
struct RenderRequest {
    std::string format; ///< "pdf" or "png"
    std::string title;
    bool dark = false;
    double pixels_per_mm = 6.0; ///< png only
};

/// Renders a page; given by a build with the window. Empty: this build writes SVG only. Returns no bytes and fills `error` on failure.
using Renderer = std::function<std::optional<std::string>(const drawing::Page& page, const RenderRequest& request, std::string& error)>;

/// True when the words ask for a command (or help, or version) and not for the window.
[[nodiscard]] bool asksForCommand(const std::vector<std::string>& arguments);

/// True when the word can only be a file: it exists, has a path separator or ends in .shaftwright.
[[nodiscard]] bool looksLikeFile(const std::string& argument);

[[nodiscard]] int run(const std::vector<std::string>& arguments, Streams streams, const Renderer& renderer = {});

} // namespace shaftwright::command_line
