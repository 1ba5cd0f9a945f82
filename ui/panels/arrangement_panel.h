#pragma once
#include "ui/panels/panel_parts.h"
#include "ui/panels/selection_panel.h"

namespace shaftwright::ui
{

/// With nothing selected: findings, requirements, duty, surroundings, title block.
class ArrangementPanel : public PanelBody
{
    Q_OBJECT
public:
    explicit ArrangementPanel(Document& document);
    void refresh() override;

private:
    void refreshFindings(const Assessment& assessment);
    void refreshRequirements(const Assessment& assessment);
    Document& m_document;
    PanelLabel* m_title = nullptr;
    QWidget *m_findings = nullptr, *m_notes = nullptr;
    Findings m_shown_findings;
    QWidget* m_requirements = nullptr;
    QString m_shown_requirements;
    Form* m_duty = nullptr;
    Form* m_surroundings = nullptr;
    Form* m_block = nullptr;
};

/// One requirement: mark, words, found against required.
class RequirementRow : public QAbstractButton
{
    Q_OBJECT
public:
    RequirementRow(const RequirementResult& result, const QString& where, QWidget* parent);
    [[nodiscard]] QSize sizeHint() const override { return {200, 40}; }

protected:
    void paintEvent(QPaintEvent*) override;

private:
    std::optional<bool> m_met;
    QString m_words, m_found, m_required;
};

} // namespace shaftwright::ui
