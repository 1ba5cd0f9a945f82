#include "ui/window/start_page.h"

#include "core/document/document.h"
#include "ui/widgets/marks.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/theme.h"

#include <QFileInfo>
#include <QPainter>

namespace shaftwright::ui
{

StartTile::StartTile(const QString& head, const QString& line, bool large, QWidget* parent)
    : QAbstractButton(parent), m_line(line), m_large(large)
{
    setText(head);
    setAccessibleName(head);
    setAccessibleDescription(line);
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
}

QSize StartTile::sizeHint() const
{
    return m_large ? QSize(320, 68) : QSize(320, 44);
}

void StartTile::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(underMouse() ? t.live : t.edge, underMouse() ? 1.6 : 1.0));
    painter.setBrush(isDown() ? t.live_soft : t.card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 8, 8);
    const QFont head = windowFont(m_large ? 14 : 12, QFont::DemiBold), line = windowFont(12);
    painter.setPen(t.ink);
    painter.setFont(head);
    const double y = m_large ? 29.0 : 19.0;
    painter.drawText(QPointF(16.0, y), elided(head, text(), width() - 32.0));
    painter.setPen(t.ink2);
    painter.setFont(line);
    painter.drawText(QPointF(16.0, y + (m_large ? 20.0 : 16.0)),
                     QFontMetricsF(line).elidedText(m_line, Qt::ElideRight, width() - 32.0));
}

StartPage::StartPage(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("start"));
    setAccessibleName(tr("Begin"));
    const auto way = [&](const QString& name, const QString& head, const QString& line, void (StartPage::*signal)()) {
        auto* tile = new StartTile(head, line, true, this);
        tile->setObjectName(name);
        connect(tile, &QAbstractButton::clicked, this, signal);
        m_ways << tile;
    };
    way(QStringLiteral("start.segment"), tr("Draw the first segment"), tr("An empty sheet with one cylinder to pull and type on"),
        &StartPage::firstSegment);
    way(QStringLiteral("start.two"), tr("Plain shaft on two bearings"),
        tr("Stepped, with a gear and a coupling, ready to change"), &StartPage::twoBearings);
    way(QStringLiteral("start.one"), tr("Loads of one bearing"), tr("Forces, speed and bore: which type, which size"),
        &StartPage::oneBearing);
    m_open = new StartTile(tr("Open a file …"), tr("An arrangement that was saved before"), false, this);
    m_open->setObjectName(QStringLiteral("start.open"));
    connect(m_open, &QAbstractButton::clicked, this, &StartPage::openOther);
}

namespace
{

/// What a file says of itself; empty when it cannot be read.
TitleBlock titleOf(const QString& file)
{
    const LoadedFile loaded = loadFile(file.toStdString());
    if (loaded.error || !loaded.text)
        return {};
    const ReadResult read = readArrangement(*loaded.text, QFileInfo(file).fileName().toStdString());
    return read.ok() ? read.arrangement->title : TitleBlock{};
}

} // namespace

void StartPage::fill(QList<StartTile*>& tiles, const QStringList& files, bool of_the_program)
{
    qDeleteAll(tiles);
    tiles.clear();
    for (const QString& file : files.mid(0, 6)) {
        const QFileInfo info(file);
        const TitleBlock said = titleOf(file);
        const QString head = said.title.empty() ? info.completeBaseName() : QString::fromStdString(said.title);
        const QString purpose = QString::fromStdString(said.purpose);
        auto* tile = new StartTile(head, of_the_program && !purpose.isEmpty() ? purpose : info.absoluteFilePath(), false, this);
        tile->setToolTip(purpose.isEmpty() ? info.absoluteFilePath() : purpose + QLatin1Char('\n') + info.absoluteFilePath());
        connect(tile, &QAbstractButton::clicked, this, [this, file] { emit openFile(file); });
        tiles << tile;
        tile->show();
    }
    arrange();
}

void StartPage::setRecent(const QStringList& files)
{
    fill(m_recent, files, false);
}

void StartPage::setSamples(const QStringList& files)
{
    fill(m_samples, files, true);
}

void StartPage::setComplaint(const QString& words)
{
    m_complaint = words;
    arrange();
    update();
}

void StartPage::arrange()
{
    const int column = std::min(390, (width() - 96) / 2);
    const int total = 2 * column + 32;
    const int left = (width() - total) / 2, right = left + column + 32;
    m_heads.clear();
    int y = std::max(32, std::min(height() / 2 - 240, 140));
    m_heads.append({tr("Begin"), QPointF(left, y + 14.0)});
    m_heads.append({m_recent.isEmpty() ? tr("Samples") : tr("Recent"), QPointF(right, y + 14.0)});
    y += 30;
    if (!m_complaint.isEmpty()) {
        const int lines = static_cast<int>(m_complaint.count(QLatin1Char('\n'))) + 1;
        m_complaint_rect = QRectF(left, y, total, 22.0 + 18.0 * lines + 18.0);
        y += static_cast<int>(m_complaint_rect.height()) + 12;
    } else {
        m_complaint_rect = {};
    }
    int ly = y;
    for (StartTile* tile : std::as_const(m_ways)) {
        tile->setGeometry(left, ly, column, 68);
        ly += 76;
    }
    m_open->setGeometry(left, ly, column, 44);
    int ry = y;
    for (StartTile* tile : std::as_const(m_recent)) {
        tile->setGeometry(right, ry, column, 44);
        ry += 50;
    }
    if (!m_recent.isEmpty() && !m_samples.isEmpty()) {
        m_heads.append({tr("Samples"), QPointF(right, ry + 26.0)});
        ry += 40;
    }
    for (StartTile* tile : std::as_const(m_samples)) {
        tile->setGeometry(right, ry, column, 44);
        ry += 50;
    }
    if (m_recent.isEmpty() && m_samples.isEmpty())
        m_heads.removeAt(1);
}

void StartPage::paintEvent(QPaintEvent*)
{
    const Tokens& t = tokens();
    QPainter painter(this);
    painter.fillRect(rect(), t.sheet);
    painter.setPen(t.ink);
    painter.setFont(windowFont(15, QFont::DemiBold));
    for (const Head& head : std::as_const(m_heads))
        painter.drawText(head.at, head.text);
    if (!m_complaint_rect.isNull()) {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(Qt::NoPen);
        painter.setBrush(t.stop_soft);
        painter.drawRoundedRect(m_complaint_rect, 6, 6);
        drawMark(painter, Mark::cross, m_complaint_rect.topLeft() + QPointF(18, 17), 9, t.stop, 2.0);
        painter.setPen(t.stop);
        painter.setFont(windowFont(12, QFont::DemiBold));
        painter.drawText(m_complaint_rect.topLeft() + QPointF(32, 21), tr("This file cannot be used"));
        painter.setPen(t.ink);
        painter.setFont(windowFont(12));
        painter.drawText(m_complaint_rect.adjusted(14, 30, -14, -6), Qt::AlignLeft | Qt::TextWordWrap, m_complaint);
    }
}

} // namespace shaftwright::ui
