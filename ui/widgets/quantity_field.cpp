#include "ui/widgets/quantity_field.h"

#include "ui/document/texts.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/theme.h"

#include "core/units/number_text.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QStyle>

#include <cmath>

namespace shaftwright::ui
{

QuantityField::QuantityField(QuantityKind kind, const QString& name, QWidget* parent) : QWidget(parent), m_kind(kind)
{
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(6);
    grid->setVerticalSpacing(2);
    m_edit = new QLineEdit(this);
    m_edit->setAccessibleName(name);
    m_edit->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_edit->setFixedHeight(28);
    m_edit->setFixedWidth(90);
    m_edit->setFont(windowFont(13));
    m_edit->installEventFilter(this);
    const std::string_view unit = unitName(kind);
    m_unit = new QLabel(QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size())), this);
    m_unit->setFixedWidth(34);
    grid->addWidget(m_edit, 0, 0);
    grid->addWidget(m_unit, 0, 1);
    grid->setColumnStretch(1, 1);
    setFocusProxy(m_edit);
    connect(m_edit, &QLineEdit::editingFinished, this, &QuantityField::take);
}

void QuantityField::setFieldWidth(int width)
{
    m_edit->setFixedWidth(width);
}

void QuantityField::setUnit(const QString& unit)
{
    m_unit->setText(unit);
}

void QuantityField::setValue(std::optional<double> value, const QString& open_text)
{
    // Most refreshes change nothing: a line edit that is set anew lays its text out anew.
    if (m_shown && m_value == value && m_open_text == open_text && !m_edit->isModified())
        return;
    const bool changed = m_shown && m_value != value;
    m_shown = true;
    m_value = value;
    m_open_text = open_text;
    m_edit->setPlaceholderText(open_text);
    // A value that changed elsewhere (undo) replaces what was refused here.
    const bool refused = m_message != nullptr && m_message->isVisibleTo(this);
    const bool typing = m_edit->hasFocus() && m_edit->isModified() && !(refused && changed);
    if (!typing)
        showValue();
}

QString QuantityField::restText() const
{
    // All digits stand there while it is edited; otherwise as many as fit.
    const QString whole = plainNumber(*m_value);
    constexpr qsizetype fits = 10;
    return whole.size() <= fits ? whole : number(*m_value, 6);
}

void QuantityField::showValue()
{
    if (!m_value)
        m_edit->clear();
    else if (m_edit->hasFocus())
        m_edit->setText(QString::fromStdString(shortestDecimal(*m_value)));
    else
        m_edit->setText(restText());
    m_edit->setModified(false);
    complain({});
}

void QuantityField::complain(const QString& words)
{
    const bool invalid = !words.isEmpty();
    if (m_edit->property("invalid").toBool() != invalid) {
        m_edit->setProperty("invalid", invalid);
        m_edit->style()->unpolish(m_edit);
        m_edit->style()->polish(m_edit);
    }
    if (!invalid) {
        if (m_message != nullptr)
            m_message->hide();
        return;
    }
    if (m_message == nullptr) {
        m_message = new QLabel(this);
        m_message->setWordWrap(true);
        m_message->setObjectName(QStringLiteral("message"));
        static_cast<QGridLayout*>(layout())->addWidget(m_message, 1, 0, 1, 2);
    }
    m_message->setStyleSheet(QStringLiteral("color:%1").arg(tokens().stop.name()));
    m_message->setText(words);
    m_message->show();
}

QString QuantityField::message() const
{
    return m_message != nullptr && m_message->isVisibleTo(this) ? m_message->text() : QString();
}

void QuantityField::take()
{
    if (!m_edit->isModified())
        return;
    const QString text = m_edit->text().trimmed();
    if (text.isEmpty() && m_may_be_open) {
        m_edit->setModified(false);
        complain({});
        if (m_value)
            emit cleared();
        return;
    }
    const auto parsed = parseQuantity(text.toStdString(), m_kind);
    if (const auto* error = std::get_if<QuantityError>(&parsed)) {
        complain(quantityErrorText(error->code, error->detail));
        return;
    }
    const double value = std::get<double>(parsed);
    if (property("whole").toBool() && (value != std::round(value) || std::abs(value) > 1e9)) {
        complain(tr("A whole number is wanted here"));
        return;
    }
    m_edit->setModified(false);
    complain({});
    if (m_value && value == *m_value)
        showValue();
    // Also the same value again: somebody has stated it now.
    emit taken(value);
}

bool QuantityField::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_edit) {
        if (event->type() == QEvent::FocusIn) {
            if (!m_edit->isModified() && m_value) {
                m_edit->setText(QString::fromStdString(shortestDecimal(*m_value)));
                m_edit->setModified(false);
                if (static_cast<QFocusEvent*>(event)->reason() != Qt::MouseFocusReason)
                    m_edit->selectAll();
            }
        } else if (event->type() == QEvent::FocusOut) {
            if (!m_edit->isModified() && m_value)
                m_edit->setText(restText());
        } else if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
            if (m_edit->isModified()) {
                m_edit->setModified(false);
                showValue();
                return true;
            }
        } else if (event->type() == QEvent::KeyPress &&
                   (static_cast<QKeyEvent*>(event)->key() == Qt::Key_Up ||
                    static_cast<QKeyEvent*>(event)->key() == Qt::Key_Down) &&
                   m_value) {
            // A step of one in the last shown place that makes sense: 1, with Shift 10, with Alt 0.1.
            const auto* key = static_cast<QKeyEvent*>(event);
            const double size = key->modifiers() & Qt::ShiftModifier ? 10.0 : (key->modifiers() & Qt::AltModifier ? 0.1 : 1.0);
            const double next = *m_value + (key->key() == Qt::Key_Up ? size : -size);
            emit taken(std::round(next * 1e6) / 1e6);
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace shaftwright::ui
