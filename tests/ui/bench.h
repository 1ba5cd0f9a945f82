#pragma once
// The window on a plain shaft, with gestures sent to it as a user makes them.

#include "core/edit/edit.h"
#include "ui/document/actions.h"
#include "ui/document/subject.h"
#include "ui/sheet/sheet_view.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QTest>

namespace bench
{

using namespace shaftwright;
using namespace shaftwright::ui;

inline void settle()
{
    for (int i = 0; i < 3; ++i)
        QCoreApplication::processEvents();
}

struct Bench {
    MainWindow window;
    Bench()
    {
        window.resize(1440, 900);
        Arrangement value = plainTwoBearingShaft();
        value.duty.required_L_h = 20000.0;
        window.document().reset(value);
        window.show();
        settle();
        settle();
    }
    Document& document() { return window.document(); }
    SheetView& sheet() { return window.sheet(); }
    /// A pixel on a thing that no other thing covers: near the outline of the gear.
    QPoint onPart(const PartId& id, double radius_mm)
    {
        return sheet().pixelOf(findPart(document().committed(), id)->x_mm, radius_mm).toPoint();
    }
    void drag(QPoint from, QPoint to, bool release = true, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        QTest::mousePress(&sheet(), Qt::LeftButton, modifiers, from);
        for (int step = 1; step <= 5; ++step) {
            QTest::mouseMove(&sheet(), from + (to - from) * step / 5);
            settle();
        }
        if (release) {
            QTest::mouseRelease(&sheet(), Qt::LeftButton, modifiers, to);
            settle();
        }
    }
};

} // namespace bench
