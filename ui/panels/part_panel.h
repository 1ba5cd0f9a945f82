#pragma once
#include "ui/panels/fold.h"
#include "ui/panels/panel_parts.h"
#include "ui/panels/selection_panel.h"

namespace shaftwright::ui
{

/// A part: its natural inputs by kind, its torque, what it does to the shaft.
class PartPanel : public PanelBody
{
    Q_OBJECT
public:
    PartPanel(Document& document, ViewState& view, PartId id);
    void refresh() override;
    /// Changes when a part needs other rows (another kind, one mesh more).
    [[nodiscard]] static std::size_t shapeOf(const Part& part);

private:
    void buildBody();
    void buildMeshes(PanelFold& fold);
    void buildCases(PanelFold& fold);
    Document& m_document;
    ViewState& m_view;
    PartId m_id;
    PanelLabel* m_title = nullptr;
    FindingList* m_findings = nullptr;
    Form* m_form = nullptr;
    Form* m_drive = nullptr;
    std::vector<PanelFold*> m_folds;
    DerivationView* m_derivation = nullptr;
    PanelLabel* m_load_head = nullptr;
};

} // namespace shaftwright::ui
