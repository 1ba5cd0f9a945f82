#pragma once
// A bearing that stands in no catalogue here: its data as the maker states them, with the source that says where from.

#include "ui/document/document.h"

#include <QDialog>

#include <optional>
#include <string>
#include <utility>
#include <vector>

class QLabel;
class QLineEdit;

namespace shaftwright::ui
{

class ChoiceButton;

class OwnBearingDialog : public QDialog
{
    Q_OBJECT
public:
    /// Starts from the present bearing, or from the seat.
    OwnBearingDialog(const std::optional<BearingChoice>& present, double seat_mm, QWidget* parent = nullptr);
    /// What was typed, once the dialog has been accepted.
    [[nodiscard]] BearingChoice choice() const { return m_choice; }
    void accept() override;

private:
    BearingChoice m_choice;
    QLineEdit *m_designation = nullptr, *m_source = nullptr;
    ChoiceButton* m_family = nullptr;
    QLabel* m_message = nullptr;
    [[nodiscard]] std::optional<double>& value(const std::string& name);
    std::vector<std::pair<std::string, std::optional<double>>> m_values;
};

} // namespace shaftwright::ui
