// Where things lie in the window: opens a file in a window of the given size, without a screen, and prints the pixel of a place
// on the sheet, counted from the upper left corner of the window, and the pixels of one millimetre along the shaft.
//   sheet_pixel FILE WIDTH HEIGHT X_MM RADIUS_MM

#include "ui/sheet/sheet_view.h"
#include "ui/widgets/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QStandardPaths>
#include <QStyleFactory>

#include <cstdio>

int main(int argc, char** argv)
{
    using namespace shaftwright::ui;
    if (argc != 6) {
        std::fprintf(stderr, "usage: sheet_pixel FILE WIDTH HEIGHT X_MM RADIUS_MM\n");
        return 2;
    }
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    Theme::instance().setChoice(ThemeChoice::light);
    MainWindow window;
    window.resize(QString::fromLocal8Bit(argv[2]).toInt(), QString::fromLocal8Bit(argv[3]).toInt());
    if (!window.openFile(QString::fromLocal8Bit(argv[1])))
        return 2;
    window.show();
    for (int i = 0; i < 10; ++i)
        QCoreApplication::processEvents();
    const double x_mm = QString::fromLocal8Bit(argv[4]).toDouble(), radius_mm = QString::fromLocal8Bit(argv[5]).toDouble();
    const QPoint at = window.sheet().mapTo(&window, window.sheet().pixelOf(x_mm, radius_mm).toPoint());
    std::printf("%d %d %.6f\n", at.x(), at.y(), window.sheet().pixelOf(x_mm + 1.0).x() - window.sheet().pixelOf(x_mm).x());
    return 0;
}
