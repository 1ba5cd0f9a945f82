#pragma once
#include "ui/panels/fold.h"
#include "ui/panels/panel_parts.h"
#include "ui/panels/selection_panel.h"

namespace shaftwright::ui
{

class RequirementRow;

/// With nothing selected: findings, requirements, duty, surroundings, title block.
class ArrangementPanel : public PanelBody
{
    Q_OBJECT
public:
    ArrangementPanel(Document& document, ViewState& view);
    void refresh() override;

private:
    void refreshFindings(const Assessment& assessment);
    void refreshRequirements(const Assessment& assessment);
    Document& m_document;
    PanelLabel* m_title = nullptr;
    FindingList *m_findings = nullptr, *m_notes = nullptr;
    QWidget* m_requirements = nullptr;
    PanelLabel* m_no_requirement = nullptr;
    std::vector<RequirementRow*> m_rows;
    std::vector<PanelFold*> m_folds;
    Form* m_duty = nullptr;
    Form* m_surroundings = nullptr;
    Form* m_block = nullptr;
};

/// One requirement: mark, words, found against required.
class RequirementRow : public QAbstractButton
{
    Q_OBJECT
public:
    explicit RequirementRow(QWidget* parent);
    /// @param case_name of the case that governs; empty when it says nothing
    void set(const RequirementResult& result, const QString& where, const QString& case_name, const QString& path);
    [[nodiscard]] const QString& path() const { return m_path; }
    [[nodiscard]] QSize sizeHint() const override { return {200, 40}; }

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { place(); }

private:
    void place();
    [[nodiscard]] QString verdict() const;
    std::optional<bool> m_met;
    QString m_words, m_found, m_required, m_case, m_path;
    bool m_case_below = false; ///< the case has a line of its own
};

} // namespace shaftwright::ui
