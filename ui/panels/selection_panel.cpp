#include "ui/panels/selection_panel.h"

#include "ui/document/subject.h"
#include "ui/panels/arrangement_panel.h"
#include "ui/panels/fold.h"
#include "ui/panels/part_panel.h"
#include "ui/panels/segment_panel.h"
#include "ui/panels/support_panel.h"
#include "ui/widgets/theme.h"

#include <QPainter>
#include <QScrollBar>
#include <QTimer>

namespace shaftwright::ui
{

SelectionPanel::SelectionPanel(Document& document, ViewState& view, QWidget* parent)
    : QScrollArea(parent), m_document(document), m_view(view)
{
    setObjectName(QStringLiteral("panel"));
    setAccessibleName(tr("Panel of the selection"));
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
    connect(&m_document, &Document::changed, this, &SelectionPanel::refresh);
    connect(&m_document, &Document::selectionChanged, this, &SelectionPanel::refresh);
    connect(&m_view, &ViewState::changed, this, &SelectionPanel::refresh);
    connect(&Theme::instance(), &Theme::changed, this, [this] {
        m_subject = QStringLiteral("?");
        refresh();
    });
    refresh();
}

void SelectionPanel::refresh()
{
    const Arrangement& shown = m_document.shown();
    const Subject what = subjectOf(m_document.selection());
    const Support* support = what.kind == SubjectKind::support ? findSupport(shown, SupportId(what.id)) : nullptr;
    const Part* part = what.kind == SubjectKind::part ? findPart(shown, PartId(what.id)) : nullptr;
    const Segment* segment = what.kind == SubjectKind::segment ? findSegment(shown, SegmentId(what.id)) : nullptr;
    const bool exists = support != nullptr || part != nullptr || segment != nullptr;
    const QString subject = exists ? m_document.selection() : QString();
    const std::size_t kind = part != nullptr ? PartPanel::shapeOf(*part) : 0;
    if (m_body == nullptr || subject != m_subject || kind != m_kind) {
        const int kept = subject == m_subject ? verticalScrollBar()->value() : 0;
        m_subject = subject;
        m_kind = kind;
        if (support != nullptr)
            m_body = new SupportPanel(m_document, m_view, support->id);
        else if (part != nullptr)
            m_body = new PartPanel(m_document, m_view, part->id);
        else if (segment != nullptr)
            m_body = new SegmentPanel(m_document, segment->id);
        else
            m_body = new ArrangementPanel(m_document, m_view);
        m_body->refresh();
        setWidget(m_body);
        verticalScrollBar()->setValue(kept);
    } else {
        m_body->refresh();
    }
    viewport()->update();
}

void SelectionPanel::openFold(const QString& name)
{
    auto* fold = m_body->findChild<PanelFold*>(name);
    if (fold == nullptr)
        return;
    fold->setOpen(true);
    // The rows have their places once the layout has run.
    QTimer::singleShot(0, fold, [this, fold] { ensureWidgetVisible(fold, 0, 12); });
}

void SelectionPanel::focusFirst()
{
    for (QWidget* child : m_body->findChildren<QWidget*>()) {
        if (child->isVisible() && child->isEnabled() && (child->focusPolicy() & Qt::TabFocus)) {
            child->setFocus(Qt::ShortcutFocusReason);
            return;
        }
    }
}

void SelectionPanel::resizeEvent(QResizeEvent* event)
{
    QScrollArea::resizeEvent(event);
}

void SelectionPanel::paintEvent(QPaintEvent* event)
{
    QPainter painter(viewport());
    painter.fillRect(viewport()->rect(), tokens().panel);
    painter.setPen(QPen(tokens().rule, 1.0));
    painter.drawLine(QPointF(0.5, 0), QPointF(0.5, viewport()->height()));
    QScrollArea::paintEvent(event);
}

} // namespace shaftwright::ui
