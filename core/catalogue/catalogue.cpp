#include "core/catalogue/catalogue.h"

#include "core/bearings/basic_rating.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace shaftwright
{
namespace
{

constexpr double boreTolerance_mm = 1e-6;

struct BoreKey {
    GeometryClass geometry;
    double bore_mm;
};

bool byName(const CatalogueRow* a, const CatalogueRow* b)
{
    return a->designation < b->designation;
}

std::span<const CatalogueRow* const> between(std::vector<const CatalogueRow*>::const_iterator begin,
                                             std::vector<const CatalogueRow*>::const_iterator end)
{
    if (begin == end)
        return {};
    return {&*begin, static_cast<std::size_t>(end - begin)};
}

} // namespace

Catalogue::Catalogue(const Catalogue& other)
    : name(other.name), version(other.version), digest(other.digest), rows(other.rows), variants(other.variants)
{
    buildIndex(); // the look-up tables point into the rows
}

Catalogue& Catalogue::operator=(const Catalogue& other)
{
    if (this != &other)
        *this = Catalogue(other);
    return *this;
}

void Catalogue::buildIndex()
{
    m_by_bore.clear();
    m_by_raceway.clear();
    m_by_name.clear();
    m_by_bore.reserve(rows.size());
    m_by_name.reserve(rows.size() + variants.size());
    for (const CatalogueRow& row : rows) {
        m_by_bore.push_back(&row);
        m_by_name.push_back(&row);
    }
    for (const CatalogueRow& row : variants) {
        m_by_name.push_back(&row);
        if (row.geometry_class == GeometryClass::needle)
            m_by_raceway.push_back(&row);
    }
    // Stable: within a bore the order of the catalogue, within a designation the first row.
    std::stable_sort(m_by_bore.begin(), m_by_bore.end(), [](const CatalogueRow* a, const CatalogueRow* b) {
        return a->geometry_class != b->geometry_class ? a->geometry_class < b->geometry_class : a->bore_mm < b->bore_mm;
    });
    std::stable_sort(m_by_raceway.begin(), m_by_raceway.end(),
                     [](const CatalogueRow* a, const CatalogueRow* b) { return a->bore_mm < b->bore_mm; });
    std::stable_sort(m_by_name.begin(), m_by_name.end(), byName);
}

std::span<const CatalogueRow* const> Catalogue::rowsWithBore(GeometryClass geometry, double bore_mm) const
{
    if (!std::isfinite(bore_mm))
        return {}; // the search needs an order
    const auto begin = std::lower_bound(m_by_bore.begin(), m_by_bore.end(), BoreKey{geometry, bore_mm - boreTolerance_mm},
                                        [](const CatalogueRow* row, const BoreKey& key) {
                                            return row->geometry_class != key.geometry ? row->geometry_class < key.geometry
                                                                                       : row->bore_mm < key.bore_mm;
                                        });
    const auto end = std::upper_bound(
        begin, m_by_bore.end(), BoreKey{geometry, bore_mm + boreTolerance_mm}, [](const BoreKey& key, const CatalogueRow* row) {
            return row->geometry_class != key.geometry ? key.geometry < row->geometry_class : key.bore_mm < row->bore_mm;
        });
    return between(begin, end);
}

std::span<const CatalogueRow* const> Catalogue::rowsWithRaceway(double Fw_mm) const
{
    if (!std::isfinite(Fw_mm))
        return {};
    const auto begin = std::lower_bound(m_by_raceway.begin(), m_by_raceway.end(), Fw_mm - boreTolerance_mm,
                                        [](const CatalogueRow* row, double bore) { return row->bore_mm < bore; });
    const auto end = std::upper_bound(begin, m_by_raceway.end(), Fw_mm + boreTolerance_mm,
                                      [](double bore, const CatalogueRow* row) { return bore < row->bore_mm; });
    return between(begin, end);
}

const CatalogueRow* Catalogue::find(std::string_view designation) const
{
    const auto found = std::lower_bound(m_by_name.begin(), m_by_name.end(), designation,
                                        [](const CatalogueRow* row, std::string_view text) { return row->designation < text; });
    return found != m_by_name.end() && (*found)->designation == designation ? *found : nullptr;
}

std::vector<double> Catalogue::bores(GeometryClass geometry) const
{
    std::vector<double> result;
    for (const CatalogueRow* row : m_by_bore) {
        if (row->geometry_class == geometry && (result.empty() || row->bore_mm > result.back() + boreTolerance_mm))
            result.push_back(row->bore_mm);
    }
    return result;
}

const CatalogueRow* Catalogues::find(std::string_view designation) const
{
    for (const Catalogue* catalogue : list) {
        if (const CatalogueRow* row = catalogue->find(designation))
            return row;
    }
    return nullptr;
}

Derivation ratingDerivation(const CatalogueRow& row)
{
    if (row.geometry) {
        Derivation derivation = basicRatingDerivation(row.geometry_class, *row.geometry);
        if (!derivation.empty())
            return derivation;
    }
    // Stated, not calculated here: the numbers and who states them.
    Derivation derivation;
    derivation.push_back({"dynamic_rating", "C", "C", {}, row.C_N, "N", row.source});
    derivation.push_back({"static_rating", "C0", "C0", {}, row.C0_N, "N", row.source});
    if (row.Cu_N)
        derivation.push_back({"fatigue_load_limit", "Cu", "Cu", {}, *row.Cu_N, "N", row.source});
    return derivation;
}

} // namespace shaftwright
