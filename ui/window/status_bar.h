#pragma once
#include <QAbstractButton>
#include <QString>
#include <QWidget>

#include <optional>

class QTimer;

namespace shaftwright::ui
{

/// Foot of the window: where the ratings come from, the scale, how many requirements are not met.
class StatusBar : public QWidget
{
    Q_OBJECT
public:
    explicit StatusBar(QWidget* parent = nullptr);
    void setNote(const QString& note);
    void setScale(double ratio);
    /// `without_bearing`: names of supports that have none yet. What is not judged is never shown as met.
    void setRequirements(int missed, int all, const QStringList& without_bearing = {});
    /// A hint takes the place of the note for some seconds.
    void hint(const QString& words);
    [[nodiscard]] QString shownHint() const { return m_hint; }

signals:
    void requirementsAsked();

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override;

private:
    class Pill;
    Pill* m_pill = nullptr;
    QString m_note, m_hint, m_scale;
    QTimer* m_timer = nullptr;
};

} // namespace shaftwright::ui
