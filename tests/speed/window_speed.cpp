// The window on the gearbox sample, offscreen raster at 1440x900: a drag step from the posted mouse event to the painted frame
// (panel, cards, end view, four strips and suggestions all live), start to first frame, memory.

#include "tests/speed/stopwatch.h"
#include "ui/window/main_window.h"
#include "ui/sheet/sheet_view.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QMouseEvent>

#include <cmath>
#include <cstdio>
#include <fstream>
#include <string>

using namespace shaftwright;

namespace {

/// Resident memory of this process in MB.
double memory_MB()
{
    std::ifstream status("/proc/self/status");
    std::string word;
    while (status >> word) {
        if (word == "VmRSS:") {
            double kB = 0.0;
            status >> kB;
            return kB / 1024.0;
        }
    }
    return 0.0;
}

void settle()
{
    for (int i = 0; i < 5; ++i)
        QCoreApplication::processEvents();
}

void send(QWidget& widget, QEvent::Type type, QPointF at, Qt::MouseButton button, Qt::MouseButtons held,
          Qt::KeyboardModifiers modifiers = Qt::NoModifier)
{
    QCoreApplication::postEvent(&widget, new QMouseEvent(type, at, widget.mapToGlobal(at), button, held, modifiers));
}

} // namespace

int main(int argc, char** argv)
{
    QElapsedTimer start;
    start.start();
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    ui::MainWindow window;
    window.resize(1440, 900);
    if (!window.openFile(QStringLiteral(SHAFTWRIGHT_SOURCE_DIR "/samples/gearbox-intermediate.shaftwright"))) {
        std::fprintf(stderr, "the sample cannot be opened\n");
        return 2;
    }
    window.view().strips = {drawing::StripKind::shear, drawing::StripKind::moment, drawing::StripKind::deflection, drawing::StripKind::slope};
    window.view().notify();
    window.show();
    settle();
    const double started_ms = double(start.nsecsElapsed()) / 1e6;
    const double memory = memory_MB();

    ui::SheetView& sheet = window.sheet();
    const Part& gear = window.document().committed().parts.front();
    window.document().select(QStringLiteral("supports.B"));
    settle();
    const QPointF grip = sheet.pixelOf(gear.x_mm, 60.0);
    const int analyses_before = window.document().analysisCount();
    send(sheet, QEvent::MouseButtonPress, grip, Qt::LeftButton, Qt::LeftButton);
    settle();
    std::vector<double> frames;
    int primitives = 0;
    for (int i = 0; i < 500; ++i) {
        const double dx = 12.0 * std::sin(i * 0.07) + 6.0;
        const auto begin = std::chrono::steady_clock::now();
        send(sheet, QEvent::MouseMove, grip + QPointF(dx, 0.0), Qt::NoButton, Qt::LeftButton, Qt::ControlModifier); // no snapping: every frame is new
        QCoreApplication::processEvents();
        frames.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count());
        primitives = sheet.lastPrimitives();
    }
    send(sheet, QEvent::MouseButtonRelease, grip, Qt::LeftButton, Qt::NoButton);
    settle();
    const int analyses = window.document().analysisCount() - analyses_before;
    std::sort(frames.begin(), frames.end());
    const double median = frames[250];
    const double p99 = frames[495];
    const double worst = frames.back();
    std::printf("drag step, event to frame      median %6.2f ms (bar 8)   p99 %6.2f ms (bar 16)   worst of 500 %6.2f ms (bar 33)\n", median, p99, worst);
    std::printf("  primitives a frame %d, analyses a frame %.2f\n", primitives, analyses / 500.0);
    std::printf("start to first frame in process %7.1f ms (bar 250)\n", started_ms);
    std::printf("memory with the sample          %7.1f MB (bar 100)\n", memory);
    const bool met = median < 8.0 && p99 < 16.0 && worst < 33.0 && started_ms < 250.0 && memory < 100.0 && analyses > 0;
    std::printf(met ? "all bars met\n" : "a bar was missed\n");
    return met ? 0 : 1;
}
