#pragma once
#include <optional>
#include <string>

namespace shaftwright::ui
{

/// Runs the window until it is closed. `file`: opened at once; without one the start page invites.
/// @return exit code of the program
int runWindow(int argc, char** argv, const std::optional<std::string>& file);

} // namespace shaftwright::ui
