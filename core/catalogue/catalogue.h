#pragma once
#include "core/base/derivation.h"
#include "core/base/finding.h"
#include "core/base/result.h"
#include "core/model/catalogue_row.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright
{

struct Catalogue {
    std::string name; ///< "generic"
    std::string version;
    std::string digest; ///< "sha256:..." over its rows; filled by core/document
    std::vector<CatalogueRow> rows;
    /// Bearings with the inside and the ratings of a row but other ribs, a tapered bore or no inner ring (NJ208, N208,
    /// NUP208, 22220K, RNA4908). Found by designation and by raceway only; neither counted nor listed by bore.
    std::vector<CatalogueRow> variants;

    Catalogue() = default;
    Catalogue(const Catalogue& other);
    Catalogue(Catalogue&&) noexcept = default;
    Catalogue& operator=(const Catalogue& other);
    Catalogue& operator=(Catalogue&&) noexcept = default;
    ~Catalogue() = default;

    /// Rows of a class with exactly this bore (within 1e-6 mm), in catalogue order. O(log n), no allocation.
    [[nodiscard]] std::span<const CatalogueRow* const> rowsWithBore(GeometryClass geometry, double bore_mm) const;
    /// Needle bearings without inner ring (RNA..., `bore_mm` = F_w) for a shaft of this diameter, in catalogue order.
    /// The shaft is the raceway. O(log n), no allocation.
    [[nodiscard]] std::span<const CatalogueRow* const> rowsWithRaceway(double Fw_mm) const;
    /// A row or variant by its designation; gaps, if any, must be left out ("NU208"). O(log n).
    [[nodiscard]] const CatalogueRow* find(std::string_view designation) const;
    /// Bores of a class, ascending, each once.
    [[nodiscard]] std::vector<double> bores(GeometryClass geometry) const;

    /// Must be called after rows or variants changed. Builds the look-up tables.
    void buildIndex();

private:
    std::vector<const CatalogueRow*> m_by_bore, m_by_raceway, m_by_name;
};

/// All catalogues an analysis may draw from; generic first. The first catalogue that holds a designation wins.
struct Catalogues {
    std::vector<const Catalogue*> list;
    [[nodiscard]] const CatalogueRow* find(std::string_view designation) const;
};

/// The generic catalogue: 1,913 bearings rated here from standard dimensions, plus the estimated low-confidence rows
/// (42, 43, QJ2, QJ3). Built once on first use; the returned value never changes.
[[nodiscard]] const Catalogue& genericCatalogue();

/// Texts from which the generic catalogue is built: the tables of resources/catalogue.
struct CatalogueTexts {
    std::string_view series, radial, needle, tapered, thrust;
};
/// @return the catalogue; else the finding of the first table, row or geometry that is wrong (`table-...`,
/// `value-invalid`, `geometry-impossible`). Unknown columns are refused.
[[nodiscard]] Result<Catalogue> buildGenericCatalogue(const CatalogueTexts& texts);

/// The same inside with other ribs: "N", "NU", "NJ", "NUP" in place of the letters in front ("NU208" -> "NJ208").
/// Ribs of the geometry follow. @pre nu_row is a cylindrical roller row whose designation starts with "NU"
[[nodiscard]] CatalogueRow withPrefix(const CatalogueRow& nu_row, std::string_view prefix);
/// NA4908 -> RNA4908: bore = F_w, mass less the inner ring. @pre na_row is a needle row
[[nodiscard]] CatalogueRow withoutInnerRing(const CatalogueRow& na_row);

/// How C, C0, Cu of a row came about from its internal geometry, step by step.
[[nodiscard]] Derivation ratingDerivation(const CatalogueRow& row);

} // namespace shaftwright
