#include "ui/panels/fold.h"

#include "ui/widgets/marks.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/segmented.h"
#include "ui/widgets/theme.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QSet>
#include <QVBoxLayout>

namespace shaftwright::ui
{

namespace
{

QSet<QString>& openFolds()
{
    static QSet<QString> names;
    return names;
}

} // namespace

FoldHead::FoldHead(const QString& title, QWidget* parent) : QAbstractButton(parent)
{
    setText(title);
    setAccessibleName(title);
    setCheckable(false);
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    setFixedHeight(30);
}

void FoldHead::setAside(const QString& aside)
{
    if (m_aside == aside)
        return;
    m_aside = aside;
    setAccessibleDescription(aside);
    update();
}

void FoldHead::setOpen(bool open)
{
    m_open = open;
    update();
}

void FoldHead::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (underMouse()) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(t.card);
        painter.drawRoundedRect(QRectF(rect()).adjusted(-2, 1, 0, -1), 6, 6);
    }
    const QFont strong = windowFont(13, QFont::DemiBold), small = windowFont(12);
    painter.setPen(t.ink);
    painter.setFont(strong);
    const double title = QFontMetricsF(strong).horizontalAdvance(text());
    painter.drawText(QRectF(0, 0, width() - 24.0, height()), Qt::AlignVCenter | Qt::AlignLeft, text());
    const double room = width() - 24.0 - title - 12.0;
    if (!m_aside.isEmpty() && room > 20.0) {
        painter.setPen(t.ink2);
        painter.setFont(small);
        painter.drawText(QRectF(title + 12.0, 0, room, height()), Qt::AlignVCenter | Qt::AlignRight,
                         elided(small, m_aside, room));
    }
    painter.translate(width() - 10.0, height() / 2.0);
    if (!m_open)
        painter.rotate(-90.0);
    drawChevron(painter, QPointF(0.0, 0.0), 7.0, t.ink2);
}

void FoldHead::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        click();
        return;
    }
    QAbstractButton::keyPressEvent(event);
}

PanelFold::PanelFold(Document& document, const QString& name, const QString& title, Build build, QWidget* parent)
    : QWidget(parent), m_document(document), m_build(std::move(build))
{
    setObjectName(name);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    m_head = new FoldHead(title, this);
    m_head->setObjectName(QStringLiteral("fold.") + name);
    column->addWidget(m_head);
    connect(m_head, &QAbstractButton::clicked, this, [this] { setOpen(!m_open); });
    m_open = openFolds().contains(name);
    m_head->setOpen(m_open);
}

void PanelFold::setOpen(bool open)
{
    if (m_open == open)
        return;
    m_open = open;
    if (open)
        openFolds().insert(objectName());
    else
        openFolds().remove(objectName());
    m_head->setOpen(open);
    refresh();
    if (m_body != nullptr)
        m_body->setVisible(open);
}

void PanelFold::make()
{
    m_made_for = m_signature ? m_signature() : QString();
    m_body = new QWidget(this);
    m_column = new QVBoxLayout(m_body);
    m_column->setContentsMargins(0, 0, 0, 8);
    m_column->setSpacing(6);
    m_build(*this);
    layout()->addWidget(m_body);
    m_body->show();
}

void PanelFold::refresh()
{
    if (!m_open)
        return;
    if (m_body == nullptr)
        make();
    else if (m_signature && m_signature() != m_made_for)
        rebuild();
    for (Form* form : m_forms)
        form->refresh();
}

void PanelFold::rebuild()
{
    if (m_body == nullptr)
        return;
    // The keyboard stays where it was, if the place still exists.
    QWidget* focus = QApplication::focusWidget();
    const QString focused = focus != nullptr && m_body->isAncestorOf(focus) ? focus->objectName() : QString();
    m_forms.clear();
    m_body->hide();
    m_body->deleteLater();
    make();
    for (Form* form : m_forms)
        form->refresh();
    if (!focused.isEmpty()) {
        if (auto* again = m_body->findChild<QWidget*>(focused))
            again->setFocus(Qt::OtherFocusReason);
    }
}

Form* PanelFold::addForm()
{
    auto* form = new Form(m_document, m_body);
    m_column->addWidget(form);
    m_forms.push_back(form);
    return form;
}

PanelLabel* PanelFold::addLabel(const QString& text, PanelLabel::Look look)
{
    auto* label = new PanelLabel(look, text, m_body);
    m_column->addWidget(label);
    return label;
}

void PanelFold::addButtons(const std::vector<Button>& buttons)
{
    auto* row = new QHBoxLayout;
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(8);
    for (const Button& button : buttons) {
        auto* made = new QuietButton(button.text, m_body);
        made->setObjectName(button.name);
        made->setFramed(true);
        made->setEnabled(button.enabled);
        connect(made, &QuietButton::clicked, this, button.run);
        row->addWidget(made);
    }
    row->addStretch(1);
    m_column->addLayout(row);
}

} // namespace shaftwright::ui
