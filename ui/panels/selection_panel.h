#pragma once
// The right panel: a card about what is selected, or about the whole arrangement.

#include "ui/document/document.h"
#include "ui/document/view_state.h"

#include <QScrollArea>

namespace shaftwright::ui
{

/// Body of the panel for one subject. Built once for a subject, refreshed with every change.
class PanelBody : public QWidget
{
    Q_OBJECT
public:
    using QWidget::QWidget;
    virtual void refresh() = 0;
};

class SelectionPanel : public QScrollArea
{
    Q_OBJECT
public:
    SelectionPanel(Document& document, ViewState& view, QWidget* parent = nullptr);
    /// Moves the keyboard to the first field.
    void focusFirst();
    /// Opens a group of the present body ("loadCases") and shows it.
    void openFold(const QString& name);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    Document& m_document;
    ViewState& m_view;
    PanelBody* m_body = nullptr;
    QString m_subject;
    std::size_t m_kind = 0; ///< a part whose kind changed needs another body
};

} // namespace shaftwright::ui
