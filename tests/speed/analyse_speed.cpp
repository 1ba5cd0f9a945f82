// The whole pipeline on the gearbox sample, and the start-up cost of the generic catalogue.

#include "core/analysis/analyse.h"
#include "core/document/document.h"
#include "core/drawing/sheet.h"
#include "core/report/json_report.h"
#include "tests/speed/stopwatch.h"

#include <cstdio>
#include <string>

using namespace shaftwright;

namespace {

std::size_t sink = 0;

} // namespace

int main()
{
    const std::string path = std::string(SHAFTWRIGHT_SOURCE_DIR) + "/samples/gearbox-intermediate.shaftwright";
    const LoadedFile file = loadFile(path);
    if (!file.text) {
        std::fprintf(stderr, "cannot read %s\n", path.c_str());
        return 2;
    }
    const ReadResult read = readArrangement(*file.text, path);
    if (!read.arrangement) {
        std::fprintf(stderr, "%s is no arrangement\n", path.c_str());
        return 2;
    }
    const Arrangement& arrangement = *read.arrangement;
    const auto before = std::chrono::steady_clock::now();
    const Catalogues catalogues{{&genericCatalogue()}};
    std::printf("%-64s once   %9.2f us\n", "generic catalogue, built at first use",
                std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - before).count());

    const speed::Timing whole = speed::measure(500, 1, [&] { sink += analyse(arrangement, catalogues).findings.size(); });
    speed::print("analyse(): gearbox, 3 cases, all families with sizes", whole);

    const Assessment assessment = analyse(arrangement, catalogues);
    drawing::SheetView view;
    view.strips = {drawing::StripKind::shear, drawing::StripKind::moment, drawing::StripKind::deflection, drawing::StripKind::slope};
    const speed::Timing drawn = speed::measure(500, 1, [&] {
        sink += drawing::drawingList(arrangement, assessment, view).groups.size();
        sink += drawing::loadList(arrangement, assessment, view).groups.size();
        sink += drawing::dimensionList(arrangement, assessment, view).groups.size();
        for (const drawing::StripKind kind : view.strips)
            sink += drawing::stripList(arrangement, assessment, view, kind).groups.size();
        sink += drawing::endViewList(arrangement, assessment, view, 30.0).groups.size();
    });
    speed::print("display lists of the whole sheet", drawn);

    const speed::Timing reading = speed::measure(200, 1, [&] { sink += readArrangement(*file.text, path).errors.size(); });
    speed::print("reading the file", reading);
    const speed::Timing json = speed::measure(100, 1, [&] { sink += jsonReport(arrangement, assessment, catalogues, "speed").size(); });
    speed::print("JSON report", json);

    // Bar: 1 ms, target 0.5 ms.
    const bool met = whole.median_us <= 1000.0;
    std::printf(met ? "all bars met\n" : "analyse() missed its bar of 1000 us\n");
    return met && sink > 0 ? 0 : 1;
}
