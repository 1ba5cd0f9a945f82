#pragma once
// The open document: present value, undo, preview during a gesture, file state, selection. Views read it and ask it for edits;
// they never write the value themselves.

#include "core/analysis/assessment.h"
#include "core/base/result.h"
#include "core/model/arrangement.h"

#include <QObject>
#include <QString>
#include <QUndoStack>

#include <functional>
#include <memory>
#include <optional>

class QTimer;

namespace shaftwright::ui
{

class Document : public QObject
{
    Q_OBJECT
public:
    using Analyser = std::function<Assessment(const Arrangement&)>;

    explicit Document(Analyser analyser, QObject* parent = nullptr);
    ~Document() override;

    // --- Value ---
    /// What is to be shown: the preview of a running gesture, else the committed value.
    [[nodiscard]] const Arrangement& shown() const { return m_preview ? *m_preview : m_value; }
    [[nodiscard]] const Arrangement& committed() const { return m_value; }
    [[nodiscard]] bool empty() const
    {
        return m_value.shaft.segments.empty() && m_value.supports.empty() && m_value.parts.empty();
    }
    /// Counts up with every change of the shown value.
    [[nodiscard]] quint64 revision() const { return m_revision; }

    /// Results of the shown value; analysed on the first read after a change, so at most once per revision.
    [[nodiscard]] const Assessment& assessment();
    /// Results to look at: those of the shown value, or the last ones that exist when a stop prevents new ones.
    [[nodiscard]] const Assessment& results();
    /// True when results() belong to an older value.
    [[nodiscard]] bool resultsAreOld();
    /// Analyses so far. A test counts them.
    [[nodiscard]] int analysisCount() const { return m_analyses; }

    /// New or opened document: no undo, not modified.
    void reset(Arrangement value, const QString& file = {});
    /// One undoable step. Steps of the same non-empty gesture that follow each other merge. False: nothing changed.
    bool push(Arrangement next, const QString& text, const QString& gesture = {});
    /// The same with an edit that may be refused; the refusal is returned and announced.
    bool push(const Result<Arrangement>& next, const QString& text, const QString& gesture = {});

    // --- Preview of a gesture ---
    void preview(Arrangement value);
    [[nodiscard]] bool previewing() const { return m_preview.has_value(); }
    /// Makes the preview one undoable step.
    bool commitPreview(const QString& text);
    /// Leaves no trace.
    void dropPreview();

    [[nodiscard]] QUndoStack& undoStack() { return m_undo; }

    // --- Selection: the path of a subject, "supports.B"; survives undo, empty when nothing is selected ---
    [[nodiscard]] const QString& selection() const { return m_selection; }
    void select(const QString& subject);

    // --- File ---
    [[nodiscard]] const QString& file() const { return m_file; }
    /// What the document is called: its title, else its file, else untitled.
    [[nodiscard]] QString name() const;
    [[nodiscard]] bool modified() const { return !m_undo.isClean(); }
    /// Empty: done. Else what was wrong, in words.
    QString open(const QString& file);
    QString save(const QString& file);
    [[nodiscard]] static QStringList recentFiles();
    static void rememberFile(const QString& file);

    /// The last edit that was refused, in words; empty after the next success.
    [[nodiscard]] const QString& refusal() const { return m_refusal; }

signals:
    /// The shown value or its file state changed; at most once per turn of the event loop.
    void changed(quint64 revision);
    void selectionChanged();
    void refused(const QString& message);

private:
    friend class ArrangementCommand;
    void setValue(const Arrangement& value);
    void touch();

    Analyser m_analyser;
    Arrangement m_value;
    std::optional<Arrangement> m_preview;
    quint64 m_revision = 1;
    QUndoStack m_undo;
    QString m_selection, m_file, m_refusal;

    Assessment m_assessment, m_last_good;
    quint64 m_assessed_revision = 0;
    bool m_has_good = false;
    int m_analyses = 0;
    QTimer* m_announce = nullptr;
};

} // namespace shaftwright::ui
