#pragma once
// A group of the panel that opens on demand. Its rows are made when it is opened for the first time; whether it is open is
// remembered while the program runs, so that the next selection looks the same.

#include "ui/panels/panel_parts.h"

#include <functional>
#include <vector>

class QVBoxLayout;

namespace shaftwright::ui
{

/// Head of a fold: title, a few words about what is inside, chevron.
class FoldHead : public QAbstractButton
{
    Q_OBJECT
public:
    FoldHead(const QString& title, QWidget* parent);
    void setAside(const QString& aside);
    void setOpen(bool open);
    [[nodiscard]] QSize sizeHint() const override { return {200, 30}; }

protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QString m_aside;
    bool m_open = false;
};

class PanelFold : public QWidget
{
    Q_OBJECT
public:
    using Build = std::function<void(PanelFold&)>;
    /// @param name object name; open folds are remembered by it
    PanelFold(Document& document, const QString& name, const QString& title, Build build, QWidget* parent);

    /// Rows are made anew when this text changes (cases came or went).
    void setSignature(std::function<QString()> signature) { m_signature = std::move(signature); }
    void setAside(const QString& aside) { m_head->setAside(aside); }
    [[nodiscard]] bool isOpen() const { return m_open; }
    void setOpen(bool open);
    void refresh();
    /// Makes the rows anew, for choices of the fold itself.
    void rebuild();

    // --- While building ---
    [[nodiscard]] Form* addForm();
    PanelLabel* addLabel(const QString& text, PanelLabel::Look look = PanelLabel::Look::second);
    /// Small buttons side by side.
    struct Button {
        QString text, name;
        std::function<void()> run;
        bool enabled = true;
    };
    void addButtons(const std::vector<Button>& buttons);

private:
    void make();
    Document& m_document;
    FoldHead* m_head = nullptr;
    QWidget* m_body = nullptr;
    QVBoxLayout* m_column = nullptr;
    Build m_build;
    std::function<QString()> m_signature;
    QString m_made_for;
    std::vector<Form*> m_forms;
    bool m_open = false;
};

} // namespace shaftwright::ui
