#pragma once
// How the document is looked at. Neither undone nor in the file.

#include "core/drawing/sheet.h"
#include "core/model/arrangement.h"

#include <QObject>
#include <QString>

#include <optional>
#include <vector>

namespace shaftwright::ui
{

class ViewState : public QObject
{
    Q_OBJECT
public:
    using QObject::QObject;

    int case_index = -1; ///< -1: all cases
    drawing::Plane plane = drawing::Plane::z;
    std::vector<drawing::StripKind> strips{drawing::StripKind::moment, drawing::StripKind::deflection};
    std::optional<double> hairline_mm;
    bool dimensions = true;
    bool loads = true;
    /// A suggestion looked at before it is taken, drawn as a ghost.
    std::optional<Arrangement> ghost;
    QString ghost_text, ghost_subject;

    void notify() { emit changed(); }

signals:
    void changed();
};

} // namespace shaftwright::ui
