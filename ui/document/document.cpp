#include "ui/document/document.h"

#include "ui/document/texts.h"

#include "core/document/document.h"
#include "core/document/paths.h"

#include <QFileInfo>
#include <QSettings>
#include <QTimer>
#include <QUndoCommand>

#include <map>

namespace shaftwright::ui
{

/// The only kind of undo step: the value before and after.
class ArrangementCommand : public QUndoCommand
{
public:
    ArrangementCommand(Document& document, Arrangement before, Arrangement after, const QString& text, QString gesture)
        : QUndoCommand(text), m_document(document), m_before(std::move(before)), m_after(std::move(after)),
          m_gesture(std::move(gesture))
    {
    }
    int id() const override { return m_gesture.isEmpty() ? -1 : 1; }
    bool mergeWith(const QUndoCommand* other) override
    {
        const auto* next = static_cast<const ArrangementCommand*>(other);
        if (next->m_gesture != m_gesture)
            return false;
        m_after = next->m_after;
        if (m_after == m_before)
            setObsolete(true);
        return true;
    }
    void undo() override { m_document.setValue(m_before); }
    void redo() override { m_document.setValue(m_after); }

private:
    Document& m_document;
    Arrangement m_before, m_after;
    QString m_gesture;
};

Document::Document(Analyser analyser, QObject* parent)
    : QObject(parent), m_analyser(std::move(analyser)), m_announce(new QTimer(this))
{
    m_announce->setSingleShot(true);
    m_announce->setInterval(0);
    connect(m_announce, &QTimer::timeout, this, [this] { emit changed(m_revision); });
    connect(&m_undo, &QUndoStack::cleanChanged, this, [this] { m_announce->start(); });
    m_undo.setUndoLimit(500);
}

Document::~Document()
{
    // The stack announces while it is taken down; nobody may listen any more.
    m_undo.disconnect(this);
}

const Assessment& Document::assessment()
{
    if (m_assessed_revision != m_revision) {
        m_assessment = m_analyser(shown());
        m_assessed_revision = m_revision;
        ++m_analyses;
        if (m_assessment.beam.usable()) {
            m_last_good = m_assessment;
            m_has_good = true;
        }
    }
    return m_assessment;
}

const Assessment& Document::results()
{
    const Assessment& present = assessment();
    return present.beam.usable() || !m_has_good ? present : m_last_good;
}

bool Document::resultsAreOld()
{
    return !assessment().beam.usable() && m_has_good;
}

void Document::touch()
{
    ++m_revision;
    m_announce->start();
}

void Document::setValue(const Arrangement& value)
{
    m_value = value;
    m_preview.reset();
    touch();
}

void Document::reset(Arrangement value, const QString& file)
{
    m_undo.clear();
    m_has_good = false;
    m_file = file;
    m_refusal.clear();
    setValue(value);
    m_undo.setClean();
    if (!m_selection.isEmpty()) {
        m_selection.clear();
        emit selectionChanged();
    }
}

namespace
{

/// A proposed input whose value somebody changed is given from then on; one that is gone is no input any more.
void forgetChangedProposals(const Arrangement& before, Arrangement& next)
{
    if (before.proposed.empty() || next.proposed.empty())
        return;
    std::map<std::string, TextValue> then, now;
    for (AddressedInput& input : addressableInputs(before)) {
        if (before.proposed.count(input.path) > 0)
            then.emplace(std::move(input.path), std::move(input.value));
    }
    for (AddressedInput& input : addressableInputs(next)) {
        if (then.count(input.path) > 0)
            now.emplace(std::move(input.path), std::move(input.value));
    }
    for (const auto& [path, value] : then) {
        const auto found = now.find(path);
        if (found == now.end() || !(found->second == value))
            next.proposed.erase(path);
    }
}

} // namespace

bool Document::push(Arrangement next, const QString& text, const QString& gesture)
{
    m_refusal.clear();
    forgetChangedProposals(m_value, next);
    if (next == m_value) {
        dropPreview();
        return false;
    }
    Arrangement before = m_value;
    m_undo.push(new ArrangementCommand(*this, std::move(before), std::move(next), text, gesture));
    return true;
}

bool Document::push(const Result<Arrangement>& next, const QString& text, const QString& gesture)
{
    if (!next.ok()) {
        dropPreview();
        m_refusal = findingText(next.finding());
        emit refused(m_refusal);
        return false;
    }
    return push(next.value(), text, gesture);
}

void Document::preview(Arrangement value)
{
    if (m_preview && *m_preview == value)
        return;
    m_preview = std::move(value);
    touch();
}

bool Document::commitPreview(const QString& text)
{
    if (!m_preview)
        return false;
    Arrangement next = std::move(*m_preview);
    // The value that was shown stays shown: its results stay valid under the new revision.
    const bool assessed = m_assessed_revision == m_revision;
    m_preview.reset();
    if (next == m_value) {
        touch();
        return false;
    }
    const bool pushed = push(std::move(next), text);
    if (assessed)
        m_assessed_revision = m_revision;
    return pushed;
}

void Document::dropPreview()
{
    if (!m_preview)
        return;
    m_preview.reset();
    touch();
}

void Document::select(const QString& subject)
{
    if (m_selection == subject)
        return;
    m_selection = subject;
    emit selectionChanged();
}

QString Document::name() const
{
    if (!shown().title.title.empty())
        return QString::fromStdString(shown().title.title);
    return m_file.isEmpty() ? tr("Untitled arrangement") : QFileInfo(m_file).completeBaseName();
}

QString Document::open(const QString& file)
{
    const LoadedFile loaded = loadFile(file.toStdString());
    if (loaded.error)
        return readErrorText(*loaded.error);
    ReadResult read = readArrangement(*loaded.text, QFileInfo(file).fileName().toStdString());
    if (!read.ok()) {
        QStringList words;
        for (const ReadError& error : read.errors)
            words << readErrorText(error);
        constexpr qsizetype shown = 6;
        if (words.size() > shown) {
            const auto more = words.size() - shown;
            words = words.mid(0, shown);
            words << tr("and %1 more").arg(more);
        }
        return words.join(QLatin1Char('\n'));
    }
    reset(std::move(*read.arrangement), file);
    rememberFile(file);
    return {};
}

QString Document::save(const QString& file)
{
    if (const auto why = whyNotWritable(m_value))
        return findingText(*why);
    if (const auto error = saveFile(file.toStdString(), writeArrangement(m_value)))
        return readErrorText(*error);
    m_file = file;
    m_undo.setClean();
    rememberFile(file);
    m_announce->start();
    return {};
}

QStringList Document::recentFiles()
{
    QStringList files;
    for (const QString& file : QSettings().value(QStringLiteral("recent")).toStringList()) {
        if (QFileInfo::exists(file))
            files << file;
    }
    return files;
}

void Document::rememberFile(const QString& file)
{
    QSettings settings;
    QStringList files = settings.value(QStringLiteral("recent")).toStringList();
    const QString absolute = QFileInfo(file).absoluteFilePath();
    files.removeAll(absolute);
    files.prepend(absolute);
    settings.setValue(QStringLiteral("recent"), QVariant(files.mid(0, 8)));
}

} // namespace shaftwright::ui
