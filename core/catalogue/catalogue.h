#pragma once
#include "core/base/derivation.h"
#include "core/base/finding.h"
#include "core/model/catalogue_row.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright {

struct Catalogue {
    std::string name;      ///< "generic"
    std::string version;
    std::string digest;    ///< "sha256:..." over its rows; filled by core/document
    std::vector<CatalogueRow> rows;

    /// Rows of a class with exactly this bore (within 1e-6 mm), in catalogue order.
    [[nodiscard]] std::span<const CatalogueRow* const> rowsWithBore(GeometryClass geometry, double bore_mm) const;
    [[nodiscard]] const CatalogueRow* find(std::string_view designation) const;

    /// Must be called after rows changed. Builds the look-up tables.
    void buildIndex();

private:
    struct Bucket {
        GeometryClass geometry;
        double bore_mm;
        std::vector<const CatalogueRow*> rows;
    };
    std::vector<Bucket> m_buckets;
};

/// All catalogues an analysis may draw from; generic first. The first catalogue that holds a designation wins.
struct Catalogues {
    std::vector<const Catalogue*> list;
    [[nodiscard]] const CatalogueRow* find(std::string_view designation) const;
};

/// The generic catalogue: 1,913 bearings rated here from standard dimensions, plus the estimated low-confidence rows
/// (42, 43, QJ2, QJ3). Built once on first use; the returned value never changes.
[[nodiscard]] const Catalogue& genericCatalogue();

/// How C, C0, Cu of a row came about from its internal geometry, step by step.
[[nodiscard]] Derivation ratingDerivation(const CatalogueRow& row);

} // namespace shaftwright
