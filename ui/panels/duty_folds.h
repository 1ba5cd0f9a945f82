#pragma once
// Folds of the arrangement panel: load cases, requirements of the user's own, material, surroundings, suggestions, method.

#include "ui/document/view_state.h"
#include "ui/panels/fold.h"

namespace shaftwright::ui
{

[[nodiscard]] PanelFold* loadCasesFold(Document& document, ViewState& view, QWidget* parent);
[[nodiscard]] PanelFold* ownRequirementsFold(Document& document, QWidget* parent);
[[nodiscard]] PanelFold* materialFold(Document& document, QWidget* parent);
[[nodiscard]] PanelFold* surroundingsFold(Document& document, QWidget* parent);
[[nodiscard]] PanelFold* suggestionsFold(Document& document, QWidget* parent);
[[nodiscard]] PanelFold* methodFold(Document& document, QWidget* parent);

} // namespace shaftwright::ui
