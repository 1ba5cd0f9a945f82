// Pictures of the window for the README, made from the program itself:
//   make_pictures SAMPLE FOLDER [WIDTH HEIGHT]
// writes window-light.png and window-dark.png with the support of the most work selected and the hairline set.
#include "ui/document/subject.h"
#include "ui/sheet/sheet_view.h"
#include "ui/widgets/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QStandardPaths>
#include <QStyleFactory>

#include <cstdio>

using namespace shaftwright;
using namespace shaftwright::ui;

int main(int argc, char** argv)
{
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    QApplication::setOrganizationName(QStringLiteral("ShaftwrightTest"));
    QApplication::setApplicationName(QStringLiteral("ShaftwrightTest"));
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    const QStringList arguments = QApplication::arguments();
    if (arguments.size() != 3 && arguments.size() < 5) {
        std::fprintf(stderr, "usage: make_pictures SAMPLE FOLDER [WIDTH HEIGHT [SUBJECT|- [CASE]]]\n");
        return 2;
    }
    const int width = arguments.size() > 4 ? arguments[3].toInt() : 1440;
    const int height = arguments.size() > 4 ? arguments[4].toInt() : 900;
    for (const bool dark : {false, true}) {
        Theme::instance().setChoice(dark ? ThemeChoice::dark : ThemeChoice::light);
        MainWindow window;
        window.resize(width, height);
        if (!window.openFile(arguments[1])) {
            std::fprintf(stderr, "cannot open %s\n", qPrintable(arguments[1]));
            return 2;
        }
        window.show();
        QApplication::processEvents();
        // The support whose life is shortest against what is required: what a user would look at first.
        QString subject;
        double least = 1e300;
        for (const SupportAssessment& support : window.document().assessment().supports) {
            if (!support.bearing || !support.bearing->L10_h)
                continue;
            const double reserve = *support.bearing->L10_h / support.bearing->required_L_h.value_or(1.0);
            if (reserve < least) {
                least = reserve;
                subject = pathOf(support.id);
            }
        }
        if (arguments.size() > 5)
            subject = arguments[5] == QLatin1String("-") ? QString() : arguments[5];
        if (arguments.size() > 6)
            window.view().case_index = arguments[6].toInt();
        window.document().select(subject);
        window.view().hairline_mm = std::round(0.62 * window.document().committed().shaft.length_mm());
        window.view().strips = {drawing::StripKind::moment, drawing::StripKind::torque, drawing::StripKind::deflection};
        window.view().notify();
        for (int i = 0; i < 4; ++i)
            QApplication::processEvents();
        const QString file = arguments[2] + (dark ? QStringLiteral("/window-dark.png") : QStringLiteral("/window-light.png"));
        if (!window.grab().save(file)) {
            std::fprintf(stderr, "cannot write %s\n", qPrintable(file));
            return 2;
        }
    }
    return 0;
}
