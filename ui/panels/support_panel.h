#pragma once
#include "ui/panels/fold.h"
#include "ui/panels/panel_parts.h"
#include "ui/panels/selection_panel.h"

class QVBoxLayout;

namespace shaftwright::ui
{

class QuietButton;

/// A support: its inputs, how the life comes about, what is worth considering here.
class SupportPanel : public PanelBody
{
    Q_OBJECT
public:
    SupportPanel(Document& document, ViewState& view, SupportId id);
    ~SupportPanel() override;
    void refresh() override;

private:
    void buildForm();
    void buildSeat(PanelFold& fold);
    void buildStiffness(PanelFold& fold);
    void typeOwnBearing();
    void refreshFindings(const Assessment& assessment);
    void refreshSuggestions(const Support& support, const SupportAssessment* found);
    void lookAt(const Suggestion& suggestion, bool over);
    void take(const Suggestion& suggestion);

    Document& m_document;
    ViewState& m_view;
    SupportId m_id;
    PanelLabel* m_title = nullptr;
    FindingList *m_findings = nullptr, *m_notes = nullptr;
    Form* m_form = nullptr;
    std::vector<PanelFold*> m_folds;
    PanelLabel* m_life_head = nullptr;
    DerivationView *m_derivation = nullptr, *m_all_derivation = nullptr;
    PanelLabel* m_all_head = nullptr;
    QuietButton* m_steps_button = nullptr;
    bool m_every_step = false;
    PanelLabel* m_life_note = nullptr;
    PanelLabel* m_suggestion_head = nullptr;
    QWidget* m_suggestions = nullptr;
    QuietButton* m_all_button = nullptr;
    std::vector<SuggestionRow*> m_rows;
    std::vector<Suggestion> m_shown_suggestions;
    std::optional<Family> m_looked_at;
    std::optional<BearingChoice> m_shown_bearing;
    std::optional<Family> m_open;
    bool m_all = false;
};

} // namespace shaftwright::ui
