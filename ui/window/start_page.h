#pragma once
// What an empty arrangement shows: ways to begin.

#include <QAbstractButton>
#include <QStringList>
#include <QWidget>

namespace shaftwright::ui
{

class StartTile : public QAbstractButton
{
    Q_OBJECT
public:
    StartTile(const QString& head, const QString& line, bool large, QWidget* parent);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;

private:
    QString m_line;
    bool m_large;
};

class StartPage : public QWidget
{
    Q_OBJECT
public:
    explicit StartPage(QWidget* parent = nullptr);
    void setRecent(const QStringList& files);
    void setSamples(const QStringList& files);
    /// Why a file could not be opened; empty hides it.
    void setComplaint(const QString& words);

signals:
    void firstSegment();
    void twoBearings();
    void oneBearing();
    void openOther();
    void openFile(const QString& file);

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { arrange(); }

private:
    void arrange();
    void fill(QList<StartTile*>& tiles, const QStringList& files, bool of_the_program);
    QList<StartTile*> m_ways, m_recent, m_samples;
    StartTile* m_open = nullptr;
    QString m_complaint;
    struct Head {
        QString text;
        QPointF at;
    };
    QList<Head> m_heads;
    QRectF m_complaint_rect;
};

} // namespace shaftwright::ui
