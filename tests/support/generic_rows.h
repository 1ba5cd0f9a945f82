#pragma once
// Rows of the generic catalogue by designation, for tests and samples.

#include "core/catalogue/catalogue.h"
#include "core/model/arrangement.h"

#include <stdexcept>
#include <string>

namespace shaftwright::test
{

[[nodiscard]] inline CatalogueRow genericRow(const std::string& designation)
{
    const CatalogueRow* row = genericCatalogue().find(designation);
    if (row == nullptr)
        throw std::runtime_error("the generic catalogue has no " + designation);
    return *row;
}

/// One row at a support.
[[nodiscard]] inline BearingChoice genericBearing(Family family, const std::string& designation)
{
    return BearingChoice{family, {{genericRow(designation), std::nullopt}}, SetArrangement::none};
}

} // namespace shaftwright::test
