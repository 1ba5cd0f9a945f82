#pragma once
#include "ui/panels/panel_parts.h"
#include "ui/panels/selection_panel.h"

namespace shaftwright::ui
{

/// A segment of the shaft: length, diameters, bore, features.
class SegmentPanel : public PanelBody
{
    Q_OBJECT
public:
    SegmentPanel(Document& document, SegmentId id);
    void refresh() override;

private:
    void buildFeatures(const Segment& segment);
    Document& m_document;
    SegmentId m_id;
    PanelLabel* m_title = nullptr;
    Form* m_form = nullptr;
    QWidget* m_features = nullptr;
    std::vector<Form*> m_feature_forms;
    std::vector<FeatureId> m_shown_features;
};

} // namespace shaftwright::ui
