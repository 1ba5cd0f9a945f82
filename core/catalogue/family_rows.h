#pragma once
// How catalogue rows and families belong together.

#include "core/model/arrangement.h"

#include <optional>

namespace shaftwright {

/// The family that a catalogue row is by itself, by class, contact angle and the prefix of its designation.
[[nodiscard]] std::optional<Family> naturalFamily(const CatalogueRow& row);

/// How many like rows a family is made of, and how they stand.
struct FamilySet {
    int rows = 1;
    SetArrangement arrangement = SetArrangement::none;
};
[[nodiscard]] FamilySet setOf(Family family);

/// Geometry class of the rows of a family, also for a typed bearing of a family without rows.
[[nodiscard]] GeometryClass geometryClassOf(Family family);

} // namespace shaftwright
