#include "ui/panels/panel_parts.h"

#include "core/report/texts.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/widgets/marks.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/theme.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMouseEvent>
#include <QPainter>
#include <QRegularExpression>
#include <QTextLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace shaftwright::ui
{

namespace
{

/// Draws wrapped text, or only measures it; returns the height.
double wrapped(QPainter* painter, const QFont& font, const QString& text, QPointF at, double width)
{
    if (text.isEmpty())
        return 0.0;
    double height = 0.0;
    const double line_height = std::round(QFontMetricsF(font).height() * 1.06);
    // A number never breaks at the thin space between its groups of digits.
    QString whole = text;
    whole.replace(QChar(0x2009), QChar(0x202F));
    for (const QString& paragraph : whole.split(QLatin1Char('\n'))) {
        QTextLayout layout(paragraph, font);
        QTextOption option;
        option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
        layout.setTextOption(option);
        layout.beginLayout();
        while (true) {
            QTextLine line = layout.createLine();
            if (!line.isValid())
                break;
            line.setLineWidth(width);
            line.setPosition(QPointF(0.0, height));
            height += line_height;
        }
        layout.endLayout();
        if (painter != nullptr)
            layout.draw(painter, at);
    }
    return height;
}

QString capitalised(QString text)
{
    if (!text.isEmpty())
        text[0] = text[0].toUpper();
    return text;
}

} // namespace

// --- Labels ---------------------------------------------------------------------------------------------------------

double wrappedText(QPainter* painter, const QFont& font, const QString& text, QPointF at, double width)
{
    return wrapped(painter, font, text, at, width);
}

PanelLabel::PanelLabel(Look look, const QString& text, QWidget* parent) : QWidget(parent), m_look(look), m_text(text)
{
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAccessibleName(text);
}

QFont PanelLabel::fontOf() const
{
    switch (m_look) {
    case Look::title:
        return windowFont(15, QFont::DemiBold);
    case Look::head:
        return windowFont(13, QFont::DemiBold);
    case Look::small:
        return windowFont(11);
    default:
        return windowFont(12);
    }
}

void PanelLabel::setText(const QString& text)
{
    if (m_text == text)
        return;
    m_text = text;
    setAccessibleName(text);
    updateGeometry();
    update();
}

void PanelLabel::setAside(const QString& text, std::optional<Severity> severity)
{
    m_aside = text;
    m_severity = severity;
    update();
}

int PanelLabel::heightForWidth(int width) const
{
    return static_cast<int>(std::ceil(wrapped(nullptr, fontOf(), m_text, {}, width))) + 2;
}

QSize PanelLabel::sizeHint() const
{
    return {200, heightForWidth(std::max(200, width()))};
}

void PanelLabel::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    const bool second = m_look == Look::second || m_look == Look::small;
    painter.setPen(second ? t.ink2 : t.ink);
    double room = width();
    if (!m_aside.isEmpty()) {
        const QFont font = windowFont(12, QFont::DemiBold);
        const double aside = QFontMetricsF(font).horizontalAdvance(m_aside);
        painter.setFont(font);
        painter.setPen(!m_severity
                           ? t.ink2
                           : (*m_severity == Severity::stop ? t.stop : (*m_severity == Severity::caution ? t.caution : t.ink2)));
        painter.drawText(QPointF(width() - aside, QFontMetricsF(fontOf()).ascent() + 1.0), m_aside);
        room -= aside + 8.0;
        painter.setPen(t.ink);
        painter.setFont(fontOf());
        painter.drawText(QPointF(0.0, QFontMetricsF(fontOf()).ascent() + 1.0), elided(fontOf(), m_text, room));
        return;
    }
    wrapped(&painter, fontOf(), m_text, QPointF(0.0, 0.0), room);
}

PanelRule::PanelRule(QWidget* parent) : QWidget(parent)
{
    setFixedHeight(17);
}

void PanelRule::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setPen(QPen(tokens().rule, 1.0));
    painter.drawLine(QPointF(0, 8.5), QPointF(width(), 8.5));
}

// --- Findings -------------------------------------------------------------------------------------------------------

namespace
{

/// "Static strength, fatigue and critical speed are not assessed here": several notes of this code read as one line.
QString notAssessedSentence(const std::vector<const Finding*>& notes)
{
    QStringList things;
    for (const Finding* note : notes) {
        if (note->variant == "strength")
            things << QObject::tr("static strength");
        else if (note->variant == "fatigue")
            things << QObject::tr("fatigue strength");
        else if (note->variant == "critical_speed")
            things << QObject::tr("critical speed");
        else
            return {};
    }
    return QObject::tr("Of the shaft, not assessed: %1.").arg(things.join(QStringLiteral(", ")));
}

} // namespace

std::vector<FindingGroup> findingGroups(const Findings& findings, const Arrangement& arrangement, bool named,
                                        const std::function<bool(const Finding&)>& wanted)
{
    std::vector<std::vector<const Finding*>> kinds;
    for (const Finding& finding : findings) {
        if (!wanted(finding))
            continue;
        const auto same = finding.severity != Severity::note
                              ? kinds.end()
                              : std::find_if(kinds.begin(), kinds.end(), [&](const std::vector<const Finding*>& kind) {
                                    return kind.front()->code == finding.code && kind.front()->accepted == finding.accepted &&
                                           kind.front()->severity == Severity::note;
                                });
        if (same == kinds.end())
            kinds.push_back({&finding});
        else
            same->push_back(&finding);
    }
    std::vector<FindingGroup> groups;
    for (const auto& kind : kinds) {
        FindingGroup group;
        const Finding& first = *kind.front();
        group.severity = first.severity;
        group.accepted = first.accepted;
        group.source = QString::fromStdString(first.source);
        QStringList heads, sentences, advices;
        for (const Finding* finding : kind) {
            const QString path = subjectPath(arrangement, finding->subject);
            if (group.path.isEmpty())
                group.path = path;
            const QString name = subjectName(arrangement, path);
            if (named && !name.isEmpty() && !heads.contains(name))
                heads << name;
            const QString sentence = findingText(*finding), advice = findingAdvice(*finding);
            if (!sentences.contains(sentence))
                sentences << sentence;
            if (!advice.isEmpty() && !advices.contains(advice))
                advices << advice;
        }
        group.head = heads.join(QStringLiteral(", "));
        if (kind.size() > 1 && first.code == "not-assessed") {
            if (const QString one = notAssessedSentence(kind); !one.isEmpty()) {
                sentences = {one};
                advices = {QObject::tr("Check them separately; moments and torques at every place are given here.")};
            }
        }
        group.sentence = sentences.join(QLatin1Char('\n'));
        group.advice = advices.join(QLatin1Char('\n'));
        groups.push_back(std::move(group));
    }
    return groups;
}

FindingBox::FindingBox(const FindingGroup& group, QWidget* parent) : QAbstractButton(parent)
{
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    m_group.sentence = QStringLiteral("?");
    setGroup(group);
}

void FindingBox::setGroup(const FindingGroup& group)
{
    if (m_group == group)
        return;
    const bool as_high = m_group.sentence.size() == group.sentence.size() && m_group.advice == group.advice;
    m_group = group;
    // Only what leads somewhere is a stop of the keyboard.
    setFocusPolicy(group.path.isEmpty() ? Qt::NoFocus : Qt::TabFocus);
    setCursor(group.path.isEmpty() ? Qt::ArrowCursor : Qt::PointingHandCursor);
    setAccessibleName(severityName(group.severity) + QStringLiteral(", ") +
                      (group.head.isEmpty() ? QString() : group.head + QStringLiteral(", ")) + group.sentence);
    setToolTip(group.source);
    if (!as_high)
        updateGeometry();
    update();
}

int FindingBox::heightForWidth(int width) const
{
    const double room = width - 26.0;
    double height = 9.0 + 17.0;
    height += wrapped(nullptr, windowFont(12), m_group.sentence, {}, room);
    if (!m_group.advice.isEmpty())
        height += 2.0 + wrapped(nullptr, windowFont(12), m_group.advice, {}, room);
    return static_cast<int>(std::ceil(height + 9.0));
}

QSize FindingBox::sizeHint() const
{
    return {200, heightForWidth(std::max(220, width()))};
}

void FindingBox::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool stop = m_group.severity == Severity::stop, caution = m_group.severity == Severity::caution;
    const QColor colour = stop ? t.stop : (caution ? t.caution : t.ink2);
    const QColor ground = stop ? t.stop_soft : (caution ? t.caution_soft : t.card);
    painter.setPen(stop || caution ? Qt::NoPen : QPen(t.rule, 1.0));
    painter.setBrush(ground);
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6);
    drawMark(painter, stop ? Mark::cross : (caution ? Mark::bang : Mark::info), QPointF(18.0, 17.0), 9.0, colour, 2.0);
    const QFont strong = windowFont(12, QFont::DemiBold);
    painter.setFont(strong);
    painter.setPen(colour);
    QString word = severityName(m_group.severity);
    if (m_group.accepted)
        word += tr(", accepted");
    painter.drawText(QPointF(30.0, 21.0), word);
    if (!m_group.head.isEmpty()) {
        const double at = 30.0 + QFontMetricsF(strong).horizontalAdvance(word) + 12.0;
        painter.setPen(t.ink);
        painter.drawText(QPointF(at, 21.0), elided(strong, m_group.head, width() - at - 12.0));
    }
    double y = 28.0;
    painter.setPen(t.ink);
    y += wrapped(&painter, windowFont(12), m_group.sentence, QPointF(13.0, y), width() - 26.0) + 2.0;
    if (!m_group.advice.isEmpty()) {
        painter.setPen(t.ink2);
        wrapped(&painter, windowFont(12), m_group.advice, QPointF(13.0, y), width() - 26.0);
    }
}

FindingList::FindingList(Document& document, QWidget* parent) : QWidget(parent), m_document(document)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    hide();
}

void FindingList::set(const std::vector<FindingGroup>& groups)
{
    while (m_boxes.size() > groups.size()) {
        delete m_boxes.back();
        m_boxes.pop_back();
    }
    for (std::size_t i = 0; i < groups.size(); ++i) {
        if (i < m_boxes.size()) {
            m_boxes[i]->setGroup(groups[i]);
            continue;
        }
        auto* box = new FindingBox(groups[i], this);
        connect(box, &QAbstractButton::clicked, this, [this, box] {
            if (!box->group().path.isEmpty())
                m_document.select(box->group().path);
        });
        layout()->addWidget(box);
        box->show();
        m_boxes.push_back(box);
    }
    setVisible(!groups.empty());
}

// --- Choice ---------------------------------------------------------------------------------------------------------

ChoiceButton::ChoiceButton(const QString& name, QStringList choices, QWidget* parent)
    : QAbstractButton(parent), m_choices(std::move(choices))
{
    setAccessibleName(name);
    setFocusPolicy(Qt::TabFocus);
    setFixedHeight(28);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    connect(this, &QAbstractButton::clicked, this, [this] {
        QMenu menu(this);
        menu.setMinimumWidth(width());
        if (m_may_be_open) {
            QAction* open = menu.addAction(tr("Leave open"));
            open->setCheckable(true);
            open->setChecked(m_current < 0);
            connect(open, &QAction::triggered, this, [this] { emit chosen(-1); });
            menu.addSeparator();
        }
        for (int i = 0; i < m_choices.size(); ++i) {
            QAction* action = menu.addAction(m_choices[i]);
            action->setCheckable(true);
            action->setChecked(i == m_current);
            connect(action, &QAction::triggered, this, [this, i] { emit chosen(i); });
        }
        menu.exec(mapToGlobal(QPoint(0, height() + 2)));
    });
}

void ChoiceButton::setCurrent(int index, const QString& open_text)
{
    if (m_current == index && m_open_text == open_text)
        return;
    m_current = index;
    m_open_text = open_text;
    setAccessibleDescription(index >= 0 && index < m_choices.size() ? m_choices[index] : open_text);
    update();
}

void ChoiceButton::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(underMouse() ? t.ink2 : t.edge, 1.0));
    painter.setBrush(t.card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6);
    const bool set = m_current >= 0 && m_current < m_choices.size();
    painter.setPen(set ? t.ink : t.ink3);
    const QFont font = windowFont(12);
    painter.setFont(font);
    painter.drawText(QRectF(9, 0, width() - 30.0, height()), Qt::AlignVCenter | Qt::AlignLeft,
                     elided(font, set ? m_choices[m_current] : m_open_text, width() - 30.0));
    drawChevron(painter, QPointF(width() - 13.0, height() / 2.0), 7.0, t.ink2);
}

void ChoiceButton::keyPressEvent(QKeyEvent* event)
{
    const int step = event->key() == Qt::Key_Down ? 1 : (event->key() == Qt::Key_Up ? -1 : 0);
    if ((event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace) && m_may_be_open) {
        emit chosen(-1);
        return;
    }
    if (step != 0) {
        const int next = m_current + step;
        if (next >= 0 && next < m_choices.size())
            emit chosen(next);
        return;
    }
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        click();
        return;
    }
    QAbstractButton::keyPressEvent(event);
}

// --- Form -----------------------------------------------------------------------------------------------------------

Form::Form(Document& document, QWidget* parent) : QWidget(parent), m_document(document)
{
    m_grid = new QGridLayout(this);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(6);
    m_grid->setVerticalSpacing(4);
    m_grid->setColumnStretch(0, 1);
}

OriginLabel::OriginLabel(QWidget* parent) : QWidget(parent)
{
    setFixedSize(54, 28);
}

void OriginLabel::setText(const QString& text, const QString& tip)
{
    if (m_text == text && toolTip() == tip)
        return;
    m_text = text;
    setToolTip(tip);
    setAccessibleName(text);
    update();
}

void OriginLabel::paintEvent(QPaintEvent*)
{
    if (m_text.isEmpty())
        return;
    QPainter painter(this);
    painter.setPen(tokens().ink2);
    painter.setFont(windowFont(11));
    painter.drawText(rect(), Qt::AlignRight | Qt::AlignVCenter, m_text);
}

void Form::Row::setVisible(bool visible) const
{
    if (field->isVisibleTo(field->parentWidget()) == visible)
        return;
    name->setVisible(visible);
    field->setVisible(visible);
    origin->setVisible(visible && !spanned);
}

Form::Row Form::addRow(const QString& label, QWidget* field, const QString& tip)
{
    auto* name = new QLabel(label, this);
    name->setWordWrap(true);
    name->setBuddy(field);
    if (!tip.isEmpty()) {
        name->setToolTip(tip);
        field->setToolTip(tip);
    }
    auto* origin = new OriginLabel(this);
    name->setMinimumHeight(28);
    m_grid->addWidget(name, m_row, 0, Qt::AlignTop);
    m_grid->addWidget(field, m_row, 1, Qt::AlignTop);
    m_grid->addWidget(origin, m_row, 2, Qt::AlignTop);
    ++m_row;
    return {name, field, origin};
}

const Assumption* Form::assumptionOf(const std::string& path)
{
    for (const Assumption& assumption : m_document.assessment().assumptions) {
        if (assumption.path == path)
            return &assumption;
    }
    return nullptr;
}

void Form::setOrigin(OriginLabel* label, const std::string& path, bool set, bool has_default, const Assumption* assumed)
{
    if (path.empty()) {
        label->setText({}, {});
        return;
    }
    const auto proposed = m_document.shown().proposed.find(path);
    if (set && proposed != m_document.shown().proposed.end()) {
        label->setText(tr("proposed"), QString::fromStdString(proposed->second.reason));
    } else if (set) {
        label->setText(tr("given"), {});
    } else if (assumed != nullptr) {
        const Texts& texts = Texts::of(Language::english);
        QStringList why;
        for (const char* part : {".reason", ".effect"}) {
            const std::string key = "assumption." + assumed->reason + part;
            if (texts.has(key))
                why << QString::fromStdString(texts.fill(key, {}, Typography::fine));
        }
        label->setText(tr("assumed"), why.join(QLatin1Char('\n')));
    } else {
        label->setText(has_default ? tr("assumed") : tr("open"), {});
    }
}

namespace
{

/// What an assumption put in place of an open input.
QString assumedText(const Assumption& assumption)
{
    if (const auto* value = std::get_if<double>(&assumption.value))
        return number(*value, 4);
    QString word = QString::fromStdString(std::get<std::string>(assumption.value));
    return word.replace(QLatin1Char('_'), QLatin1Char(' '));
}

} // namespace

QuantityField* Form::quantity(Quantity row)
{
    auto* field = new QuantityField(row.kind, row.label, this);
    field->setObjectName(QStringLiteral("field.") + QString::fromStdString(row.path).section(QLatin1Char('.'), -1));
    field->setMayBeOpen(row.may_be_open);
    const Row placed = addRow(row.label, field, row.tip);
    const auto apply = [this, field, set = row.set, label = row.label, path = row.path](std::optional<double> value) {
        const Result<Arrangement> next = set(m_document.committed(), value);
        if (!next.ok()) {
            field->edit()->setModified(true);
            field->complain(findingText(next.finding()));
            return;
        }
        // What is typed is given, also when it is what was proposed.
        Arrangement typed = next.value();
        typed.proposed.erase(path);
        m_document.push(std::move(typed), tr("Change %1").arg(label.toLower()),
                        QStringLiteral("field ") + QString::fromStdString(path));
    };
    connect(field, &QuantityField::taken, this, [apply](double value) { apply(value); });
    connect(field, &QuantityField::cleared, this, [apply] { apply(std::nullopt); });
    m_refreshers.emplace_back([this, field, placed, row = std::move(row)] {
        const bool visible = !row.visible || row.visible(m_document.shown());
        placed.setVisible(visible);
        if (!visible)
            return;
        const std::optional<double> value = row.get(m_document.shown());
        QString open = row.open_text ? row.open_text(m_document.assessment()) : QString();
        const Assumption* assumed = value ? nullptr : assumptionOf(row.path);
        if (assumed != nullptr && (open.isEmpty() || !open.front().isDigit()))
            open = assumedText(*assumed);
        field->setValue(value, open);
        setOrigin(placed.origin, row.path, value.has_value(), !open.isEmpty() && open.front().isDigit(), assumed);
    });
    return field;
}

ChoiceButton* Form::choice(Choice row)
{
    auto* button = new ChoiceButton(row.label, row.choices, this);
    button->setObjectName(QStringLiteral("field.") + QString::fromStdString(row.path).section(QLatin1Char('.'), -1));
    button->setFixedWidth(130);
    button->setMayBeOpen(row.may_be_open);
    const Row placed = addRow(row.label, button, row.tip);
    connect(button, &ChoiceButton::chosen, this, [this, set = row.set, label = row.label](int index) {
        m_document.push(set(m_document.committed(), index), tr("Change %1").arg(label.toLower()));
    });
    m_refreshers.emplace_back([this, button, placed, row = std::move(row)] {
        const bool visible = !row.visible || row.visible(m_document.shown());
        placed.setVisible(visible);
        if (!visible)
            return;
        const int index = row.get(m_document.shown());
        const Assumption* assumed = index >= 0 ? nullptr : assumptionOf(row.path);
        const QString open = row.open_text        ? row.open_text(m_document.assessment())
                             : assumed != nullptr ? assumedText(*assumed)
                                                  : tr("left open");
        button->setCurrent(index, open);
        setOrigin(placed.origin, row.path, index >= 0, static_cast<bool>(row.open_text), assumed);
    });
    return button;
}

QLineEdit* Form::words(Words row)
{
    auto* edit = new QLineEdit(this);
    edit->setObjectName(QStringLiteral("field.") + QString::fromStdString(row.path).section(QLatin1Char('.'), -1));
    edit->setAccessibleName(row.label);
    edit->setFixedHeight(28);
    edit->setPlaceholderText(row.placeholder);
    if (row.wide)
        edit->setFixedWidth(130);
    else
        edit->setFixedWidth(90);
    Row placed = addRow(row.label, edit);
    placed.spanned = row.span;
    if (row.span) {
        // Sentences need the room of the origin, which has nothing to say of them.
        m_grid->removeWidget(edit);
        edit->setMinimumWidth(130);
        edit->setMaximumWidth(QWIDGETSIZE_MAX);
        m_grid->addWidget(edit, m_row - 1, 1, 1, 2, Qt::AlignTop);
        placed.origin->hide();
    }
    connect(edit, &QLineEdit::editingFinished, this, [this, edit, get = row.get, set = row.set, label = row.label] {
        if (!edit->isModified())
            return;
        edit->setModified(false);
        if (edit->text() != get(m_document.committed()))
            m_document.push(set(m_document.committed(), edit->text()), tr("Change %1").arg(label.toLower()));
    });
    m_refreshers.emplace_back([this, edit, placed, row = std::move(row)] {
        const bool visible = !row.visible || row.visible(m_document.shown());
        placed.setVisible(visible);
        if (!visible)
            return;
        const QString text = row.get(m_document.shown());
        if (!(edit->hasFocus() && edit->isModified()) && edit->text() != text) {
            edit->setText(text);
            edit->setCursorPosition(0); // a long text shows its beginning
        }
        if (!edit->hasFocus() && edit->toolTip() != text && edit->fontMetrics().horizontalAdvance(text) > edit->width() - 16)
            edit->setToolTip(text);
        placed.origin->setText(text.isEmpty() && !row.span ? tr("open") : QString(), {});
    });
    return edit;
}

void Form::refresh()
{
    for (const auto& refresher : m_refreshers)
        refresher();
}

// --- Derivation -----------------------------------------------------------------------------------------------------

namespace
{

/// Greek letters, minus signs and small powers of a formula as they are written by hand.
QString typeset(QString formula)
{
    static const std::pair<QRegularExpression, QString> letters[] = {
        {QRegularExpression(QStringLiteral("\\balpha(?![a-z])")), QStringLiteral("α")},
        {QRegularExpression(QStringLiteral("\\bbeta(?![a-z])")), QStringLiteral("β")},
        {QRegularExpression(QStringLiteral("\\bgamma(?![a-z])")), QStringLiteral("γ")},
        {QRegularExpression(QStringLiteral("\\bdelta(?![a-z])")), QStringLiteral("δ")},
        {QRegularExpression(QStringLiteral("\\bpi(?![a-z])")), QStringLiteral("π")},
        {QRegularExpression(QStringLiteral("\\b(\\d+)e6\\b")), QStringLiteral("\\1·10⁶")},
        {QRegularExpression(QStringLiteral("\\^6(?![\\d.])")), QStringLiteral("⁶")},
        {QRegularExpression(QStringLiteral("\\^4(?![\\d.])")), QStringLiteral("⁴")},
        {QRegularExpression(QStringLiteral("\\^3(?![\\d.])")), QStringLiteral("³")},
        {QRegularExpression(QStringLiteral("\\^2(?![\\d.])")), QStringLiteral("²")},
    };
    for (const auto& [pattern, sign] : letters)
        formula.replace(pattern, sign);
    return formula.replace(QLatin1Char('-'), QChar(0x2212)).replace(QStringLiteral(" * "), QStringLiteral(" · "));
}

} // namespace

void DerivationView::setSteps(Derivation steps)
{
    if (m_steps == steps)
        return;
    m_steps = std::move(steps);
    updateGeometry();
    update();
}

int DerivationView::layoutOrPaint(QPainter* painter, int width) const
{
    const Tokens& t = tokens();
    const QFont text = windowFont(12), strong = windowFont(12, QFont::DemiBold), small = windowFont(11);
    double y = 0.0;
    QStringList sources;
    for (const DerivationStep& step : m_steps) {
        QString result = number(step.result, 4);
        QString unit = QString::fromStdString(step.unit);
        if (unit == QLatin1String("N"))
            result = forceText(step.result);
        else if (unit == QLatin1String("h"))
            result = lifeText(step.result);
        else if (!unit.isEmpty())
            result += (unit.startsWith(QLatin1String("10^6")) ? QStringLiteral(" × 10⁶") + unit.mid(4) : QLatin1Char(' ') + unit);
        const double result_width = tabularWidth(strong, result);
        if (painter != nullptr) {
            painter->setPen(t.ink);
            painter->setFont(text);
            painter->drawText(QPointF(0.0, y + 13.0), elided(text, derivationName(step), width - result_width - 12.0));
            drawTabular(*painter, strong, QPointF(width, y + 13.0), result, Qt::AlignRight);
        }
        y += 18.0;
        QString formula = QString::fromStdString(step.symbol);
        if (!step.formula.empty())
            formula += QStringLiteral(" = ") + QString::fromStdString(step.formula);
        formula = typeset(formula);
        if (painter != nullptr)
            painter->setPen(t.live);
        y += wrapped(painter, strong, formula, QPointF(0.0, y), width);
        QStringList inputs;
        for (const auto& [name, value] : step.inputs.entries) {
            const QString shown = std::holds_alternative<double>(value) ? number(std::get<double>(value), 5)
                                                                        : QString::fromStdString(std::get<std::string>(value));
            inputs << typeset(QString::fromStdString(name)) + QLatin1Char(' ') + shown;
        }
        if (!inputs.isEmpty()) {
            if (painter != nullptr)
                painter->setPen(t.ink2);
            y += wrapped(painter, small, inputs.join(QStringLiteral(", ")), QPointF(0.0, y), width);
        }
        y += 7.0;
        const QString source = QString::fromStdString(step.source);
        if (!source.isEmpty() && !sources.contains(source))
            sources << source;
    }
    if (!sources.isEmpty()) {
        if (painter != nullptr)
            painter->setPen(t.ink3);
        y += wrapped(painter, small, sources.join(QStringLiteral("; ")), QPointF(0.0, y), width);
    }
    return static_cast<int>(std::ceil(y));
}

int DerivationView::heightForWidth(int width) const
{
    return layoutOrPaint(nullptr, width);
}

void DerivationView::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    layoutOrPaint(&painter, width());
}

// --- Suggestions ----------------------------------------------------------------------------------------------------

QString consequenceText(const BearingChoice& choice, const Support& support)
{
    if (choice.rows.empty() || !support.bearing || support.bearing->rows.empty())
        return {};
    const auto difference = [](double now, double then, const QString& more, const QString& less) -> QString {
        const double d = std::round((then - now) * 100.0) / 100.0;
        if (std::abs(d) < 0.005)
            return {};
        return QStringLiteral("%1 mm %2").arg(fixedNumber(std::abs(d), 2), d > 0.0 ? more : less);
    };
    QStringList words;
    const CatalogueRow& now = support.bearing->rows.front().row;
    const CatalogueRow& then = choice.rows.front().row;
    const QString outside = difference(now.outer_mm, then.outer_mm, QObject::tr("more outside"), QObject::tr("less outside"));
    const QString width =
        difference(support.bearing->width_mm(), choice.width_mm(), QObject::tr("wider"), QObject::tr("narrower"));
    for (const QString& word : {outside, width}) {
        if (!word.isEmpty())
            words << word;
    }
    if (std::abs(now.bore_mm - then.bore_mm) > 0.005)
        words << QObject::tr("seat %1 → %2 mm").arg(lengthText(now.bore_mm), lengthText(then.bore_mm));
    return words.isEmpty() ? QObject::tr("same space") : words.join(QStringLiteral(", "));
}

SuggestionRow::SuggestionRow(const Suggestion& suggestion, const Support& support, QWidget* parent) : QAbstractButton(parent)
{
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
    set(suggestion, support);
}

void SuggestionRow::set(const Suggestion& suggestion, const Support& support)
{
    const QString before_line = m_line, before_reasons = m_reasons;
    m_suggestion = suggestion;
    m_name = capitalised(familyName(suggestion.family));
    QStringList line;
    if (suggestion.choice) {
        line << QString::fromStdString(suggestion.choice->designation());
        if (suggestion.L10_h)
            line << lifeText(*suggestion.L10_h);
        const QString change = consequenceText(*suggestion.choice, support);
        if (!change.isEmpty())
            line << change;
        else if (!suggestion.choice->rows.empty())
            line << tr("⌀ %1 outside, %2 wide")
                        .arg(lengthText(suggestion.choice->rows.front().row.outer_mm), lengthText(suggestion.choice->width_mm()));
    }
    if (suggestion.verdict == Verdict::unsuited && !suggestion.reasons.empty())
        m_line = reasonText(suggestion.reasons.front());
    else if (line.isEmpty() && !suggestion.reasons.empty())
        m_line = reasonText(suggestion.reasons.front());
    else
        m_line = line.join(QStringLiteral(" · "));
    QStringList reasons;
    for (const Reason& reason : suggestion.reasons) {
        const QString sentence = reasonText(reason);
        if (!sentence.isEmpty() && sentence != m_line)
            reasons << sentence;
        if (reasons.size() == 5)
            break;
    }
    m_reasons = reasons.join(QLatin1Char('\n'));
    setAccessibleName(m_name + QStringLiteral(", ") + verdictName(suggestion.verdict) + QStringLiteral(", ") + m_line);
    setObjectName(QStringLiteral("suggestion.") + QString::fromUtf8(toString(suggestion.family).data()));
    if (m_line.size() != before_line.size() || m_reasons.size() != before_reasons.size())
        updateGeometry();
    update();
}

int SuggestionRow::textHeight(int width) const
{
    return static_cast<int>(std::ceil(wrapped(nullptr, windowFont(12), m_line, {}, width - 54.0)));
}

int SuggestionRow::heightForWidth(int width) const
{
    int height = 9 + 18 + textHeight(width) + 9;
    if (m_open) {
        if (!m_reasons.isEmpty())
            height += 6 + static_cast<int>(std::ceil(wrapped(nullptr, windowFont(12), m_reasons, {}, width - 54.0)));
        if (m_suggestion.choice)
            height += 36;
    }
    return height;
}

QSize SuggestionRow::sizeHint() const
{
    return {220, heightForWidth(std::max(240, width()))};
}

void SuggestionRow::setOpen(bool open)
{
    m_open = open;
    updateGeometry();
    update();
}

QRectF SuggestionRow::takeRect() const
{
    if (!m_open || !m_suggestion.choice)
        return {};
    const QString words = tr("Take %1").arg(QString::fromStdString(m_suggestion.choice->designation()));
    const double w = QFontMetricsF(windowFont(12, QFont::DemiBold)).horizontalAdvance(words) + 24.0;
    return {41.0, height() - 37.0, std::min(w, width() - 54.0), 28.0};
}

void SuggestionRow::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(m_open ? t.live : (underMouse() ? t.ink2 : t.edge), m_open ? 1.6 : 1.0));
    painter.setBrush(t.card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 7, 7);
    const bool suited = m_suggestion.verdict == Verdict::suited, care = m_suggestion.verdict == Verdict::with_care;
    const QColor colour = suited ? t.met : (care ? t.caution : t.stop);
    const QColor ground = suited ? t.met_soft : (care ? t.caution_soft : t.stop_soft);
    drawMarkOnDisc(painter, suited ? Mark::tick : (care ? Mark::tilde : Mark::cross), QPointF(22.0, 23.0), 10.0, colour, ground);
    const QFont strong = windowFont(12, QFont::DemiBold), text = windowFont(12);
    const QString verdict = verdictName(m_suggestion.verdict);
    const double verdict_width = QFontMetricsF(strong).horizontalAdvance(verdict);
    painter.setFont(strong);
    painter.setPen(colour);
    painter.drawText(QPointF(width() - 13.0 - verdict_width, 21.0), verdict);
    painter.setPen(t.ink);
    painter.drawText(QPointF(41.0, 21.0), elided(strong, m_name, width() - 41.0 - 13.0 - verdict_width - 10.0));
    painter.setPen(t.ink2);
    double y = 27.0;
    y += wrapped(&painter, text, m_line, QPointF(41.0, y), width() - 54.0);
    if (!m_open)
        return;
    if (!m_reasons.isEmpty()) {
        painter.setPen(t.ink);
        wrapped(&painter, text, m_reasons, QPointF(41.0, y + 6.0), width() - 54.0);
    }
    const QRectF take = takeRect();
    if (!take.isNull()) {
        painter.setPen(QPen(t.live, 1.4));
        painter.setBrush(t.live_soft);
        painter.drawRoundedRect(take, 6, 6);
        painter.setPen(t.live);
        painter.setFont(strong);
        painter.drawText(take, Qt::AlignCenter, tr("Take %1").arg(QString::fromStdString(m_suggestion.choice->designation())));
    }
}

void SuggestionRow::enterEvent(QEnterEvent*)
{
    update();
    emit looked(true);
}

void SuggestionRow::leaveEvent(QEvent*)
{
    update();
    emit looked(false);
}

void SuggestionRow::focusInEvent(QFocusEvent* event)
{
    QAbstractButton::focusInEvent(event);
    if (event->reason() != Qt::MouseFocusReason && event->reason() != Qt::ActiveWindowFocusReason)
        emit looked(true);
}

void SuggestionRow::focusOutEvent(QFocusEvent* event)
{
    QAbstractButton::focusOutEvent(event);
    if (!underMouse())
        emit looked(false);
}

void SuggestionRow::mouseReleaseEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton && takeRect().contains(event->position())) {
        setDown(false);
        emit take();
        return;
    }
    QAbstractButton::mouseReleaseEvent(event);
}

void SuggestionRow::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        if (m_open)
            emit take();
        else
            click();
        return;
    }
    QAbstractButton::keyPressEvent(event);
}

} // namespace shaftwright::ui
