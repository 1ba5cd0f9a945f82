#include "app/command_line/commands.h"

#include "core/analysis/analyse.h"
#include "core/drawing/sheet.h"

#include <ostream>

namespace shaftwright::command_line {

int draw(const DrawRequest& request, Streams& streams, const Renderer& renderer)
{
    const auto format = settleFormat(request.output, {"svg", "pdf", "png"}, "svg", streams);
    if (!format)
        return unusable;
    if (*format != "svg" && !renderer) {
        streams.err << "shaftwright: this build has no window and draws svg only; build it with Qt for " << *format << '\n';
        return unusable;
    }
    if (!(request.pixels_per_mm >= 1.0 && request.pixels_per_mm <= 40.0)) {
        streams.err << "shaftwright: --pixels-per-mm lies between 1 and 40\n";
        return unusable;
    }
    const auto input = readInput(request.file, request.input, streams);
    if (!input)
        return unusable;
    const Assessment assessment = analyse(input->arrangement, catalogues());
    const drawing::Page page = drawing::pageOf(input->arrangement, assessment);
    const std::string title = input->arrangement.title.title.empty() ? "Shaft arrangement" : input->arrangement.title.title;
    if (*format == "svg") {
        const drawing::SvgMeta meta{title, "Shaft and bearing arrangement, lengths in mm. A calculation does not replace the maker's data, local codes "
                                           "or licensed practice."};
        return deliver(request.output, drawing::svg(page.list, page.width_mm, page.height_mm, meta, request.dark), streams);
    }
    std::string error;
    const auto bytes = renderer(page, {*format, title, request.dark, request.pixels_per_mm}, error);
    if (!bytes) {
        streams.err << "shaftwright: " << error << '\n';
        return our_error;
    }
    return deliver(request.output, *bytes, streams);
}

} // namespace shaftwright::command_line
