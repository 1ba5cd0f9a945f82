#include "ui/window/run_window.h"

#include "ui/widgets/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QScreen>
#include <QSettings>
#include <QStyleFactory>

namespace shaftwright::ui
{

int runWindow(int argc, char** argv, const std::optional<std::string>& file)
{
    // What Qt itself has to say (missing theme plugins and the like) is of no use to the user.
    qInstallMessageHandler([](QtMsgType type, const QMessageLogContext&, const QString& message) {
        if (type == QtFatalMsg)
            fprintf(stderr, "%s\n", qPrintable(message));
    });
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("Shaftwright"));
    QApplication::setOrganizationName(QStringLiteral("Shaftwright"));
    QApplication::setDesktopFileName(QStringLiteral("shaftwright"));
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    Theme& theme = Theme::instance();
    const QString choice = QSettings().value(QStringLiteral("theme"), QStringLiteral("system")).toString();
    theme.setChoice(choice == QLatin1String("light")
                        ? ThemeChoice::light
                        : (choice == QLatin1String("dark") ? ThemeChoice::dark : ThemeChoice::system));
    theme.followDesktop();

    MainWindow window;
    // As large as it is drawn for, unless the screen with a title bar of the desktop has less.
    constexpr int titleBar = 36;
    QSize size(1440, 900);
    if (const QScreen* screen = QGuiApplication::primaryScreen())
        size = size.boundedTo(screen->availableSize() - QSize(0, titleBar));
    window.resize(size);
    if (file)
        window.openFile(QString::fromStdString(*file));
    window.show();
    return QApplication::exec();
}

} // namespace shaftwright::ui
