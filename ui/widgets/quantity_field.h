#pragma once
// A number with its unit. Understands units and simple arithmetic ("2.5 in", "12+3", "1.2 kN"); what it does not understand it
// says below itself and keeps until it is mended.

#include "core/units/quantity.h"

#include <QWidget>

#include <optional>

class QLabel;
class QLineEdit;

namespace shaftwright::ui
{

class QuantityField : public QWidget
{
    Q_OBJECT
public:
    QuantityField(QuantityKind kind, const QString& name, QWidget* parent = nullptr);

    /// Shows a value unless the user is typing. None: empty, with `open_text` as placeholder ("not limited", "90 assumed").
    void setValue(std::optional<double> value, const QString& open_text = {});
    /// An empty field is a value of its own: the input is left open.
    void setMayBeOpen(bool open) { m_may_be_open = open; }
    void setUnit(const QString& unit);
    /// Shows why the document refused the value.
    void complain(const QString& words);
    [[nodiscard]] QLineEdit* edit() const { return m_edit; }
    [[nodiscard]] QString message() const;
    void setFieldWidth(int width);

signals:
    void taken(double value);
    void cleared();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void take();
    void showValue();
    [[nodiscard]] QString restText() const;

    QuantityKind m_kind;
    QLineEdit* m_edit = nullptr;
    QLabel* m_unit = nullptr;
    QLabel* m_message = nullptr;
    std::optional<double> m_value;
    QString m_open_text;
    bool m_may_be_open = false;
    bool m_shown = false;
};

} // namespace shaftwright::ui
