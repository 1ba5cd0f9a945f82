#include "ui/window/title_band.h"

#include "ui/widgets/marks.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/theme.h"

#include <QFileInfo>
#include <QKeyEvent>
#include <QMenu>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include <cmath>

namespace shaftwright::ui
{

namespace
{

/// "7.5 kW · 720/min · 62 %" of one case: the power that is stated, times the factor of the case.
QString caseLine(const Arrangement& arrangement, const LoadCase& load_case)
{
    QStringList parts;
    for (const Part& part : arrangement.parts) {
        if (part.drive && part.drive->power_kW) {
            parts << number(*part.drive->power_kW * load_case.power_factor) + QStringLiteral(" kW");
            break;
        }
    }
    parts << speedText(load_case.speed_rpm);
    parts << fixedNumber(load_case.time_share * 100.0, 1) + QStringLiteral(" %");
    return parts.join(QStringLiteral(" · "));
}

} // namespace

CaseTiles::CaseTiles(Document& document, ViewState& view, QWidget* parent) : QWidget(parent), m_document(document), m_view(view)
{
    setObjectName(QStringLiteral("cases"));
    setAccessibleName(tr("Load case"));
    setFocusPolicy(Qt::TabFocus);
    setMouseTracking(true);
    setCursor(Qt::PointingHandCursor);
}

void CaseTiles::refresh()
{
    m_tiles.clear();
    const Arrangement& shown = m_document.shown();
    const auto& cases = shown.duty.load_cases;
    if (cases.size() > 1)
        m_tiles.push_back({-1, tr("All cases"), tr("governing values"), {}});
    int index = 0;
    for (const LoadCase& load_case : cases) {
        const QString name = QString::fromStdString(load_case.name.empty() ? load_case.id.value : load_case.name);
        m_tiles.push_back({index, name, caseLine(shown, load_case), {}});
        ++index;
    }
    if (m_view.case_index >= static_cast<int>(cases.size()))
        m_view.case_index = -1;
    layoutTiles();
    update();
}

void CaseTiles::choose(int index)
{
    const auto cases = static_cast<int>(m_document.shown().duty.load_cases.size());
    if (index < -1 || index >= cases || index == m_view.case_index)
        return;
    m_view.case_index = index;
    update();
    m_view.notify();
}

void CaseTiles::layoutTiles()
{
    const QFont head = windowFont(12, QFont::DemiBold), line = windowFont(11);
    double x = 0.5;
    for (Tile& tile : m_tiles) {
        const double wide = std::max(tabularWidth(head, tile.head), tabularWidth(line, tile.line)) + 22.0;
        const double w = std::clamp(std::ceil(wide), 100.0, 210.0);
        tile.rect = QRectF(x, 0.5, w, height() - 1.0);
        x += w + 8.0;
    }
    m_natural_width = std::max(0.0, x - 8.0);
    m_folded = x - 8.0 > width() && !m_tiles.empty();
    if (m_folded) {
        for (Tile& tile : m_tiles)
            tile.rect = QRectF(0.5, 0.5, std::min(width() - 1.0, 210.0), height() - 1.0);
    }
}

void CaseTiles::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QFont head = windowFont(12, QFont::DemiBold), line = windowFont(11);
    const int only = m_document.shown().duty.load_cases.size() == 1 ? 0 : m_view.case_index;
    for (const Tile& tile : m_tiles) {
        const bool chosen = tile.index == only;
        if (m_folded && !chosen)
            continue;
        painter.setPen(QPen(chosen ? t.live : (m_hover == tile.index ? t.ink2 : t.edge), chosen ? 1.6 : 1.0));
        painter.setBrush(chosen ? t.live_soft : t.card);
        painter.drawRoundedRect(tile.rect.adjusted(0.5, 0.5, -0.5, -0.5), 6, 6);
        const double room = tile.rect.width() - 20.0 - (m_folded ? 14.0 : 0.0);
        painter.setPen(chosen ? t.live : t.ink);
        painter.setFont(head);
        painter.drawText(QPointF(tile.rect.left() + 10.0, tile.rect.top() + 14.5), elided(head, tile.head, room));
        painter.setPen(t.ink2);
        drawTabular(painter, line, QPointF(tile.rect.left() + 10.0, tile.rect.top() + 28.0), elided(line, tile.line, room));
        if (m_folded)
            drawChevron(painter, QPointF(tile.rect.right() - 14.0, tile.rect.center().y()), 8.0, t.ink2);
    }
}

void CaseTiles::openMenu()
{
    QMenu menu(this);
    for (const Tile& tile : m_tiles) {
        QAction* action = menu.addAction(tile.head + QStringLiteral("   ") + tile.line);
        action->setCheckable(true);
        action->setChecked(tile.index == m_view.case_index);
        connect(action, &QAction::triggered, this, [this, index = tile.index] { choose(index); });
    }
    menu.exec(mapToGlobal(QPoint(0, height() + 2)));
}

void CaseTiles::mousePressEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton)
        return;
    if (m_folded) {
        openMenu();
        return;
    }
    for (const Tile& tile : m_tiles) {
        if (tile.rect.contains(event->position()))
            choose(tile.index);
    }
}

void CaseTiles::mouseDoubleClickEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton && !m_folded)
        emit asked();
}

void CaseTiles::mouseMoveEvent(QMouseEvent* event)
{
    int hover = -2;
    for (const Tile& tile : m_tiles) {
        if (tile.rect.contains(event->position()))
            hover = tile.index;
    }
    if (hover != m_hover) {
        m_hover = hover;
        update();
    }
}

void CaseTiles::leaveEvent(QEvent*)
{
    m_hover = -2;
    update();
}

void CaseTiles::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Right || event->key() == Qt::Key_Down)
        choose(m_view.case_index + 1);
    else if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Up)
        choose(m_view.case_index - 1);
    else if (event->key() == Qt::Key_Space && m_folded)
        openMenu();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        emit asked();
    else
        QWidget::keyPressEvent(event);
}

IconButton::IconButton(Icon icon, const QString& name, QWidget* parent) : QAbstractButton(parent), m_icon(icon)
{
    setAccessibleName(name);
    setToolTip(name);
    setFocusPolicy(Qt::TabFocus);
    setAttribute(Qt::WA_Hover);
    setFixedSize(30, 30);
}

void IconButton::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if ((underMouse() || isDown()) && isEnabled()) {
        painter.setPen(QPen(t.edge, 1.0));
        painter.setBrush(t.card);
        painter.drawRoundedRect(QRectF(0.5, 0.5, width() - 1.0, height() - 1.0), 6, 6);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(isEnabled() ? t.ink : t.edge, 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.translate(width() / 2.0, height() / 2.0);
    if (m_icon == Icon::menu) {
        for (const double y : {-4.5, 0.0, 4.5})
            painter.drawLine(QPointF(-7, y), QPointF(7, y));
        return;
    }
    if (m_icon == Icon::redo)
        painter.scale(-1.0, 1.0);
    QPainterPath path;
    path.moveTo(-2.5, -6.5);
    path.lineTo(-6.5, -2.5);
    path.lineTo(-2.5, 1.5);
    path.moveTo(-6.5, -2.5);
    path.lineTo(2.5, -2.5);
    path.cubicTo(8.0, -2.5, 8.0, 6.0, 2.5, 6.0);
    path.lineTo(-1.5, 6.0);
    painter.drawPath(path);
}

TitleBand::TitleBand(Document& document, ViewState& view, QWidget* parent) : QWidget(parent), m_document(document)
{
    setObjectName(QStringLiteral("band"));
    setFixedHeight(47);
    m_tiles = new CaseTiles(document, view, this);
    m_tiles->setToolTip(tr("Double click or Enter: change the load cases"));
    connect(m_tiles, &CaseTiles::asked, this, &TitleBand::caseAsked);
    m_undo = new IconButton(IconButton::Icon::undo, tr("Undo"), this);
    m_undo->setObjectName(QStringLiteral("undo"));
    m_redo = new IconButton(IconButton::Icon::redo, tr("Redo"), this);
    m_redo->setObjectName(QStringLiteral("redo"));
    m_menu = new IconButton(IconButton::Icon::menu, tr("Menu"), this);
    m_menu->setObjectName(QStringLiteral("menu"));
}

void TitleBand::refresh()
{
    const Arrangement& shown = m_document.shown();
    m_title = m_document.name();
    QStringList state;
    if (!shown.revisions.empty())
        state << tr("Revision %1, working").arg(QString::fromStdString(shown.revisions.back().letter));
    if (m_document.modified())
        state << tr("changed, not saved");
    else if (m_document.file().isEmpty())
        state << tr("not saved yet");
    else
        state << tr("saved");
    m_state = state.join(QStringLiteral(" · "));
    m_undo->setEnabled(m_document.undoStack().canUndo());
    m_redo->setEnabled(m_document.undoStack().canRedo());
    const auto tip = [](const QString& verb, const QString& text) {
        return text.isEmpty() ? verb : verb + QStringLiteral(": ") + text;
    };
    m_undo->setToolTip(tip(tr("Undo"), m_document.undoStack().undoText()));
    m_redo->setToolTip(tip(tr("Redo"), m_document.undoStack().redoText()));
    m_tiles->refresh();
    arrange();
    update();
}

void TitleBand::arrange()
{
    m_menu->move(width() - 16 - 30, 8);
    m_redo->move(m_menu->x() - 38, 8);
    m_undo->move(m_redo->x() - 32, 8);
    // The title takes the room that the tiles leave.
    const double wished = QFontMetricsF(windowFont(15, QFont::DemiBold)).horizontalAdvance(m_title) + 10.0;
    const int least = width() >= 1200 ? 240 : 200;
    const int most = std::max(least, m_undo->x() - 16 - 18 - 46 - static_cast<int>(std::ceil(m_tiles->naturalWidth())));
    const int title_width = std::clamp(static_cast<int>(std::ceil(wished)), least, most);
    const int left = 18 + title_width + 46;
    m_tiles->setGeometry(left, 6, std::max(80, m_undo->x() - 16 - left), 35);
    m_tiles->setVisible(!m_document.empty() && !m_document.shown().duty.load_cases.empty());
}

void TitleBand::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.fillRect(rect(), t.panel);
    painter.setPen(QPen(t.rule, 1.0));
    painter.drawLine(QPointF(0, height() - 0.5), QPointF(width(), height() - 0.5));
    const QFont title = windowFont(15, QFont::DemiBold), small = windowFont(11);
    const double room = m_tiles->x() - 18.0 - 52.0;
    painter.setPen(t.ink);
    painter.setFont(title);
    painter.drawText(QPointF(18, 21), elided(title, m_title, room));
    painter.setPen(t.ink2);
    painter.setFont(small);
    painter.drawText(QPointF(18, 38), elided(small, m_state, room));
    if (m_tiles->isVisible()) {
        painter.setFont(windowFont(12));
        painter.drawText(QRectF(m_tiles->x() - 44.0, 0, 36.0, height()), Qt::AlignVCenter | Qt::AlignRight, tr("Duty"));
    }
}

} // namespace shaftwright::ui
