#pragma once
#include "ui/panels/panel_parts.h"
#include "ui/panels/selection_panel.h"

namespace shaftwright::ui
{

/// A part: its natural inputs by kind, its torque, what it does to the shaft.
class PartPanel : public PanelBody
{
    Q_OBJECT
public:
    PartPanel(Document& document, PartId id);
    void refresh() override;

private:
    void buildBody();
    void buildDrive();
    Document& m_document;
    PartId m_id;
    PanelLabel* m_title = nullptr;
    QWidget* m_findings = nullptr;
    Findings m_shown_findings;
    Form* m_form = nullptr;
    Form* m_drive = nullptr;
    DerivationView* m_derivation = nullptr;
    PanelLabel* m_load_head = nullptr;
};

} // namespace shaftwright::ui
