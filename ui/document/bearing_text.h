#pragma once
// A bearing as it is typed: "6208", "nu 208", "2x7309-40 O", "NU209 + QJ209".

#include "core/base/result.h"
#include "core/model/arrangement.h"

#include <QString>

namespace shaftwright::ui
{

/// The bearing of the generic catalogue that is meant, alone, as a set of like rows or as a composite of two.
/// `bearing-unknown` (designation) when a row is not in the catalogue.
[[nodiscard]] Result<BearingChoice> bearingFromText(const QString& text);

/// The same rows mounted another way: alone (none), back to back, face to face, in tandem.
[[nodiscard]] BearingChoice mountedAs(const BearingChoice& choice, SetArrangement arrangement);
/// True when like rows of this kind can be mounted as a set.
[[nodiscard]] bool canBeSet(const BearingChoice& choice);

} // namespace shaftwright::ui
