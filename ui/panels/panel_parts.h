#pragma once
// Pieces of the right panel: heads, findings, form rows, derivations, suggestions.

#include "core/base/derivation.h"
#include "core/base/finding.h"
#include "core/selection/suggestion.h"
#include "ui/document/document.h"
#include "ui/widgets/quantity_field.h"

#include <QAbstractButton>
#include <QWidget>

#include <functional>
#include <optional>
#include <vector>

class QGridLayout;
class QLabel;
class QLineEdit;

namespace shaftwright::ui
{

/// Label whose text wraps and follows the theme.
class PanelLabel : public QWidget
{
    Q_OBJECT
public:
    enum class Look { title, head, text, second, small };
    PanelLabel(Look look, const QString& text, QWidget* parent = nullptr);
    void setText(const QString& text);
    [[nodiscard]] const QString& text() const { return m_text; }
    /// Second text at the right end of the line.
    void setAside(const QString& text, std::optional<Severity> severity = {});
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;

private:
    [[nodiscard]] QFont fontOf() const;
    Look m_look;
    QString m_text, m_aside;
    std::optional<Severity> m_severity;
};

/// Thin line between two groups.
class PanelRule : public QWidget
{
public:
    explicit PanelRule(QWidget* parent = nullptr);

protected:
    void paintEvent(QPaintEvent*) override;
};

/// One finding, or several notes of one kind that are read as one.
struct FindingGroup {
    Severity severity = Severity::note;
    bool accepted = false;
    QString head, sentence, advice, source;
    QString path; ///< of the thing that a click selects
    friend bool operator==(const FindingGroup&, const FindingGroup&) = default;
};
/// Findings that pass `wanted`, in their order; notes of one kind stand together. `named`: each says what it is about.
[[nodiscard]] std::vector<FindingGroup> findingGroups(const Findings& findings, const Arrangement& arrangement, bool named,
                                                      const std::function<bool(const Finding&)>& wanted);

/// Mark, word and sentence of a finding on its ground; a click goes to its subject.
class FindingBox : public QAbstractButton
{
    Q_OBJECT
public:
    explicit FindingBox(const FindingGroup& group, QWidget* parent = nullptr);
    void setGroup(const FindingGroup& group);
    [[nodiscard]] const FindingGroup& group() const { return m_group; }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;

private:
    FindingGroup m_group;
};

/// Boxes of findings below each other, changed in place so that a drag rebuilds nothing.
class FindingList : public QWidget
{
    Q_OBJECT
public:
    explicit FindingList(Document& document, QWidget* parent = nullptr);
    void set(const std::vector<FindingGroup>& groups);

private:
    Document& m_document;
    std::vector<FindingBox*> m_boxes;
};

/// One of a few words, chosen from a menu or with the arrow keys.
class ChoiceButton : public QAbstractButton
{
    Q_OBJECT
public:
    ChoiceButton(const QString& name, QStringList choices, QWidget* parent = nullptr);
    void setCurrent(int index, const QString& open_text = {});
    /// Offers to leave the input open; `chosen` then says -1.
    void setMayBeOpen(bool open) { m_may_be_open = open; }
    [[nodiscard]] int current() const { return m_current; }
    [[nodiscard]] const QStringList& choices() const { return m_choices; }
    [[nodiscard]] QSize sizeHint() const override { return {142, 28}; }

signals:
    void chosen(int index);

protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent*) override;

private:
    QStringList m_choices;
    QString m_open_text;
    int m_current = -1;
    bool m_may_be_open = false;
};

/// Where a value comes from, right of its field: one quiet word.
class OriginLabel : public QWidget
{
public:
    explicit OriginLabel(QWidget* parent = nullptr);
    void setText(const QString& text, const QString& tip);

protected:
    void paintEvent(QPaintEvent*) override;

private:
    QString m_text;
};

/// Rows of label, field, unit and origin that read the document and ask it for edits.
class Form : public QWidget
{
    Q_OBJECT
public:
    explicit Form(Document& document, QWidget* parent = nullptr);

    using Get = std::function<std::optional<double>(const Arrangement&)>;
    using Set = std::function<Result<Arrangement>(const Arrangement&, std::optional<double>)>;
    struct Quantity {
        QString label;
        QuantityKind kind = QuantityKind::length_mm;
        std::string path; ///< for the origin
        Get get;
        Set set;
        bool may_be_open = false;
        std::function<QString(const Assessment&)> open_text; ///< what stands for an open input
        QString tip;
        std::function<bool(const Arrangement&)> visible = {}; ///< empty: always
    };
    QuantityField* quantity(Quantity row);

    struct Choice {
        QString label;
        QStringList choices;
        std::string path;
        std::function<int(const Arrangement&)> get;
        std::function<Result<Arrangement>(const Arrangement&, int)> set;
        std::function<QString(const Assessment&)> open_text;
        std::function<bool(const Arrangement&)> visible = {}; ///< empty: always
        bool may_be_open = false;                             ///< `set` then understands -1
        QString tip = {};
    };
    ChoiceButton* choice(Choice row);

    struct Words {
        QString label;
        std::string path;
        std::function<QString(const Arrangement&)> get;
        std::function<Result<Arrangement>(const Arrangement&, const QString&)> set;
        bool wide = true;
        QString placeholder;
        std::function<bool(const Arrangement&)> visible = {}; ///< empty: always
        bool span = false;                                    ///< takes the room of the origin too
    };
    QLineEdit* words(Words row);

    /// Reads all rows anew; a row that is being typed into is left alone.
    void refresh();

private:
    struct Row {
        QLabel* name = nullptr;
        QWidget* field = nullptr;
        OriginLabel* origin = nullptr;
        bool spanned = false;
        void setVisible(bool visible) const;
    };
    Row addRow(const QString& label, QWidget* field, const QString& tip = {});
    [[nodiscard]] const Assumption* assumptionOf(const std::string& path);
    void setOrigin(OriginLabel* label, const std::string& path, bool set, bool has_default, const Assumption* assumed);
    Document& m_document;
    QGridLayout* m_grid = nullptr;
    int m_row = 0;
    std::vector<std::function<void()>> m_refreshers;
};

/// A derivation as in a hand calculation: name and result, formula, numbers, source.
class DerivationView : public QWidget
{
    Q_OBJECT
public:
    explicit DerivationView(QWidget* parent = nullptr) : QWidget(parent) {}
    void setSteps(Derivation steps);
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override { return {240, heightForWidth(300)}; }

protected:
    void paintEvent(QPaintEvent*) override;

private:
    int layoutOrPaint(QPainter* painter, int width) const;
    Derivation m_steps;
};

/// One bearing worth considering: mark, family, what it would be, verdict.
class SuggestionRow : public QAbstractButton
{
    Q_OBJECT
public:
    SuggestionRow(const Suggestion& suggestion, const Support& support, QWidget* parent = nullptr);
    /// Shows another state of the arrangement, or another suggestion.
    void set(const Suggestion& suggestion, const Support& support);
    [[nodiscard]] const Suggestion& suggestion() const { return m_suggestion; }
    void setOpen(bool open);
    [[nodiscard]] bool isOpen() const { return m_open; }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;

signals:
    void looked(bool over);
    void take();

protected:
    void paintEvent(QPaintEvent*) override;
    void enterEvent(QEnterEvent*) override;
    void leaveEvent(QEvent*) override;
    void focusInEvent(QFocusEvent*) override;
    void focusOutEvent(QFocusEvent*) override;
    void mouseReleaseEvent(QMouseEvent*) override;
    void keyPressEvent(QKeyEvent*) override;

private:
    [[nodiscard]] QRectF takeRect() const;
    [[nodiscard]] int textHeight(int width) const;
    Suggestion m_suggestion;
    QString m_name, m_line, m_reasons;
    bool m_open = false;
};

/// What a choice changes in words: "10 mm more outside, 5 mm wider, seat 40 → 45 mm".
[[nodiscard]] QString consequenceText(const BearingChoice& choice, const Support& support);
/// A text of the panel that wraps: draws it, or only measures it; returns the height.
double wrappedText(QPainter* painter, const QFont& font, const QString& text, QPointF at, double width);

} // namespace shaftwright::ui
