#include "app/command_line/run.h"

#include <csignal>
#include <cstdlib>
#include <iostream>
#include <string>
#include <unistd.h>
#include <vector>

#ifdef SHAFTWRIGHT_WITH_WINDOW
#include "ui/sheet/render_page.h"
#include "ui/window/run_window.h"
#endif

namespace {

bool displayPresent()
{
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) {
        const char* value = std::getenv(name);
        if (value != nullptr && *value != '\0')
            return true;
    }
    return false;
}

} // namespace

int main(int argc, char** argv)
{
    using namespace shaftwright;
    std::signal(SIGPIPE, SIG_IGN); // a closed pipe ends quietly
    const std::vector<std::string> arguments(argv + 1, argv + argc);
    if (command_line::asksForCommand(arguments)) {
        std::ios::sync_with_stdio(false);
        command_line::Streams streams{std::cin, std::cout, std::cerr, isatty(STDOUT_FILENO) == 1};
#ifdef SHAFTWRIGHT_WITH_WINDOW
        const auto render = [&](const drawing::Page& page, const command_line::RenderRequest& request, std::string& error) {
            return ui::renderPage(argc, argv, page, {request.format, request.title, request.dark, request.pixels_per_mm}, error);
        };
        return command_line::run(arguments, streams, render);
#else
        return command_line::run(arguments, streams);
#endif
    }
    if (arguments.size() > 1) {
        std::cerr << "shaftwright: the window opens one file; read '" << arguments[1] << "' besides\n";
        return command_line::unusable;
    }
#ifdef SHAFTWRIGHT_WITH_WINDOW
    if (!displayPresent()) {
        std::cerr << "shaftwright: no display for the window; commands work without one: shaftwright --help\n";
        return command_line::unusable;
    }
    return ui::runWindow(argc, argv, arguments.empty() ? std::nullopt : std::optional<std::string>(arguments.front()));
#else
    (void)displayPresent;
    std::cerr << "shaftwright: this build has no window; commands: shaftwright --help\n";
    return command_line::unusable;
#endif
}
