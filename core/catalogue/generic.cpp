// The generic catalogue from the tables of standard dimensions and the proportions of each series.

#include "core/base/embedded.h"
#include "core/bearings/basic_rating.h"
#include "core/bearings/geometry_rules.h"
#include "core/catalogue/catalogue.h"
#include "core/catalogue/csv.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace shaftwright
{
namespace
{

using namespace std::string_view_literals;

constexpr const char* spreadNote = "generic geometry; bearings on the market differ, C by about ±15 %, C0 by about ±25 %, mass "
                                   "by about ±10 %; use the maker's values before release";
constexpr const char* lowNote = "estimated with low confidence; use the maker's values before release";

namespace series_column
{
enum : std::size_t {
    series,
    geometry_class,
    dimension_series,
    bore_from,
    bore_to,
    count,
    contact_angle,
    k,
    k_growth,
    k_growth_section,
    k_offset,
    w,
    w_growth,
    l,
    effective,
    fill,
    spacing,
    coverage,
    row_distance,
    two_rows_from,
    tapered_bore,
    estimated,
    provenance,
    source
};
} // namespace series_column
constexpr std::array seriesColumns = {"series"sv,
                                      "geometry_class"sv,
                                      "dimension_series"sv,
                                      "bore_from_mm"sv,
                                      "bore_to_mm"sv,
                                      "count"sv,
                                      "contact_angle_deg"sv,
                                      "k"sv,
                                      "k_growth"sv,
                                      "k_growth_section_mm"sv,
                                      "k_offset_mm"sv,
                                      "w"sv,
                                      "w_growth"sv,
                                      "l"sv,
                                      "effective"sv,
                                      "fill_deg"sv,
                                      "spacing"sv,
                                      "coverage"sv,
                                      "row_distance"sv,
                                      "two_rows_from_mm"sv,
                                      "tapered_bore"sv,
                                      "estimated"sv,
                                      "provenance"sv,
                                      "source"sv};

namespace radial_column
{
enum : std::size_t { dimension_series, width_series, diameter_series, bore, outer, width, chamfer, provenance, note, source };
} // namespace radial_column
constexpr std::array radialColumns = {"dimension_series"sv, "width_series"sv,   "diameter_series"sv, "bore_mm"sv, "outer_mm"sv,
                                      "width_mm"sv,         "chamfer_min_mm"sv, "provenance"sv,      "note"sv,    "source"sv};

namespace needle_column
{
enum : std::size_t { designation, series, bore, raceway, outer, width, chamfer, lower, upper, provenance, note, source };
} // namespace needle_column
constexpr std::array needleColumns = {"designation"sv,
                                      "series"sv,
                                      "bore_mm"sv,
                                      "inscribed_diameter_Fw_mm"sv,
                                      "outer_mm"sv,
                                      "width_mm"sv,
                                      "chamfer_min_mm"sv,
                                      "Fw_lower_deviation_um"sv,
                                      "Fw_upper_deviation_um"sv,
                                      "provenance"sv,
                                      "note"sv,
                                      "source"sv};

namespace tapered_column
{
enum : std::size_t {
    designation,
    series,
    bore,
    outer,
    T,
    B,
    C,
    cone_chamfer,
    cup_chamfer,
    dms,
    angle,
    e,
    Y,
    Y0,
    E,
    provenance,
    note,
    source
};
} // namespace tapered_column
constexpr std::array taperedColumns = {"designation"sv,
                                       "series"sv,
                                       "bore_mm"sv,
                                       "outer_mm"sv,
                                       "assembled_width_T_mm"sv,
                                       "cone_width_B_mm"sv,
                                       "cup_width_C_mm"sv,
                                       "cone_chamfer_min_mm"sv,
                                       "cup_chamfer_min_mm"sv,
                                       "contact_angle_dms"sv,
                                       "contact_angle_deg"sv,
                                       "e"sv,
                                       "Y"sv,
                                       "Y0"sv,
                                       "cup_small_inside_diameter_mm"sv,
                                       "provenance"sv,
                                       "note"sv,
                                       "source"sv};

namespace thrust_column
{
enum : std::size_t {
    designation,
    series,
    family,
    direction,
    bore,
    outer,
    height,
    chamfer,
    housing_bore,
    shaft_outer,
    centre_height,
    centre_chamfer,
    pressure_centre,
    provenance,
    note,
    source
};
} // namespace thrust_column
constexpr std::array thrustColumns = {"designation"sv,
                                      "series"sv,
                                      "family"sv,
                                      "direction"sv,
                                      "bore_mm"sv,
                                      "outer_mm"sv,
                                      "height_mm"sv,
                                      "chamfer_min_mm"sv,
                                      "housing_washer_bore_mm"sv,
                                      "shaft_washer_outer_mm"sv,
                                      "centre_washer_height_mm"sv,
                                      "centre_washer_chamfer_min_mm"sv,
                                      "pressure_centre_distance_mm"sv,
                                      "provenance"sv,
                                      "note"sv,
                                      "source"sv};

/// Bore code of DIN 623-1: 10, 12, 15, 17 mm -> 00 to 03, 20 to 480 mm in fives d/5, else "/d"; below 10 mm the bore
/// itself, after a stroke where the series has three digits.
std::string designationOf(std::string_view series, double bore_mm)
{
    const std::size_t dash = series.find('-'); // contact angle stands last
    std::string text(series.substr(0, dash));
    const int bore = static_cast<int>(std::lround(bore_mm));
    const bool whole = std::abs(bore_mm - bore) < 1e-9;
    constexpr std::array small = {10, 12, 15, 17};
    const auto code = std::find(small.begin(), small.end(), bore);
    if (whole && code != small.end()) {
        text += '0';
        text += static_cast<char>('0' + (code - small.begin()));
    } else if (whole && bore < 10) {
        if (text.size() > 2)
            text += '/';
        text += std::to_string(bore);
    } else if (whole && bore % 5 == 0 && bore >= 20 && bore <= 480) {
        if (bore < 50)
            text += '0';
        text += std::to_string(bore / 5);
    } else {
        std::string digits = std::to_string(bore_mm);
        digits.erase(digits.find_last_not_of('0') + 1);
        if (digits.back() == '.')
            digits.pop_back();
        text += '/';
        text += digits;
    }
    if (dash != std::string_view::npos)
        text += series.substr(dash);
    return text;
}

/// The estimate is good to a tenth at best; tenths of a gram keep the smallest apart.
double roundedMass_kg(double mass_kg)
{
    return std::round(mass_kg * 1e4) / 1e4;
}

struct SeriesEntry {
    std::string_view name, dimension_series, tapered_bore;
    SeriesRule rule;
    double bore_from_mm = 0.0, bore_to_mm = 0.0, contact_angle_deg = 0.0;
    std::size_t count = 0;
    bool estimated = false;
};

Finding wrongCell(std::string_view table, std::size_t row, std::string_view column, std::string_view value)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = "table-value-unknown";
    finding.path = std::string(table) + ":" + std::to_string(row + 2);
    finding.values = {{"column", std::string(column)}, {"value", std::string(value)}};
    return finding;
}

/// Walks the series in their order and stops at the first fault.
class Builder
{
public:
    explicit Builder(const CatalogueTexts& texts) : m_texts(texts) {}

    Result<Catalogue> build()
    {
        if (!load(m_series, "series.csv", m_texts.series, seriesColumns) ||
            !load(m_radial, "radial-dimensions.csv", m_texts.radial, radialColumns) ||
            !load(m_needle, "needle-dimensions.csv", m_texts.needle, needleColumns) ||
            !load(m_tapered, "tapered-dimensions.csv", m_texts.tapered, taperedColumns) ||
            !load(m_thrust, "thrust-dimensions.csv", m_texts.thrust, thrustColumns))
            return *m_fault;
        m_catalogue.name = "generic";
        m_catalogue.version = "1";
        m_catalogue.rows.reserve(2100);
        m_catalogue.variants.reserve(1100);
        for (const bool estimated : {false, true}) { // the estimated part comes last
            for (std::size_t i = 0; i < m_series.rows(); ++i) {
                const auto entry = entryOf(i);
                if (!entry)
                    return *m_fault;
                if (entry->estimated == estimated && !addSeries(*entry))
                    return *m_fault;
            }
        }
        for (const CsvTable* table : {&m_series, &m_radial, &m_needle, &m_tapered, &m_thrust}) {
            if (!table->faults().empty())
                return table->faults().front();
        }
        m_catalogue.buildIndex();
        return std::move(m_catalogue);
    }

private:
    template <std::size_t N>
    bool load(CsvTable& table, std::string_view name, std::string_view text, const std::array<std::string_view, N>& columns)
    {
        auto parsed = CsvTable::parse(name, text, columns);
        if (!parsed.ok()) {
            m_fault = parsed.finding();
            return false;
        }
        table = std::move(parsed.value());
        return true;
    }

    std::optional<SeriesEntry> entryOf(std::size_t i)
    {
        namespace c = series_column;
        SeriesEntry entry;
        const auto geometry = geometryClassFromString(m_series.cell(i, c::geometry_class));
        if (!geometry) {
            m_fault = wrongCell("series.csv", i, "geometry_class", m_series.cell(i, c::geometry_class));
            return std::nullopt;
        }
        const auto number = [&](std::size_t column, double fallback = 0.0) { return m_series.number(i, column, fallback); };
        entry.name = m_series.cell(i, c::series);
        entry.dimension_series = m_series.cell(i, c::dimension_series);
        entry.tapered_bore = m_series.cell(i, c::tapered_bore);
        entry.estimated = m_series.cell(i, c::estimated) == "yes";
        entry.bore_from_mm = number(c::bore_from);
        entry.bore_to_mm = number(c::bore_to);
        entry.count = static_cast<std::size_t>(std::max(number(c::count), 0.0));
        entry.contact_angle_deg = number(c::contact_angle);
        SeriesRule& rule = entry.rule;
        rule.geometry_class = *geometry;
        rule.k = number(c::k);
        rule.k_growth = number(c::k_growth);
        rule.k_growth_section_mm = number(c::k_growth_section);
        rule.k_offset_mm = number(c::k_offset);
        rule.w = number(c::w);
        rule.w_growth = number(c::w_growth);
        rule.l = number(c::l);
        rule.effective = number(c::effective, 1.0);
        rule.fill_deg = number(c::fill);
        rule.spacing = number(c::spacing);
        rule.coverage = number(c::coverage);
        rule.row_distance = number(c::row_distance);
        rule.two_rows_from_mm = number(c::two_rows_from);
        return entry;
    }

    bool addSeries(const SeriesEntry& entry)
    {
        const std::size_t before = m_catalogue.rows.size();
        bool good = false;
        switch (entry.rule.geometry_class) {
        case GeometryClass::needle:
        case GeometryClass::needle_drawn_cup:
            good = addNeedle(entry);
            break;
        case GeometryClass::tapered_roller:
            good = addTapered(entry);
            break;
        case GeometryClass::thrust_ball:
        case GeometryClass::thrust_ball_double:
        case GeometryClass::cylindrical_roller_thrust:
        case GeometryClass::needle_roller_thrust:
        case GeometryClass::spherical_roller_thrust:
            good = addThrust(entry);
            break;
        default:
            good = addRadial(entry);
            break;
        }
        if (!good)
            return false;
        const std::size_t added = m_catalogue.rows.size() - before;
        if (added != entry.count) { // the table of dimensions and the list of series must agree
            Finding finding;
            finding.severity = Severity::stop;
            finding.code = "table-count";
            finding.path = "series.csv:" + std::string(entry.name);
            finding.values = {{"rows", static_cast<double>(added)}, {"wanted", static_cast<double>(entry.count)}};
            m_fault = std::move(finding);
            return false;
        }
        return true;
    }

    static bool inRange(const SeriesEntry& entry, double bore_mm)
    {
        return bore_mm >= entry.bore_from_mm && bore_mm <= entry.bore_to_mm;
    }

    bool addRadial(const SeriesEntry& entry)
    {
        namespace c = radial_column;
        for (std::size_t i = 0; i < m_radial.rows(); ++i) {
            if (m_radial.cell(i, c::dimension_series) != entry.dimension_series)
                continue;
            BoundaryDimensions size;
            size.bore_mm = m_radial.number(i, c::bore, 0.0);
            if (!inRange(entry, size.bore_mm))
                continue;
            size.outer_mm = m_radial.number(i, c::outer, 0.0);
            size.width_mm = m_radial.number(i, c::width, 0.0);
            size.contact_angle_deg = entry.contact_angle_deg;
            CatalogueRow* row = add(entry, size, designationOf(entry.name, size.bore_mm), size.bore_mm, size.width_mm);
            if (row == nullptr)
                return false;
            describe(*row, entry, m_radial, i, c::chamfer, c::provenance, c::note, c::source);
            if (entry.rule.geometry_class == GeometryClass::cylindrical_roller) {
                for (const std::string_view prefix : {"NJ"sv, "NUP"sv, "N"sv})
                    m_catalogue.variants.push_back(withPrefix(*row, prefix));
            } else if (!entry.tapered_bore.empty()) {
                CatalogueRow& variant = m_catalogue.variants.emplace_back(*row);
                variant.designation += 'K';
                variant.note.insert(0, "tapered bore " + std::string(entry.tapered_bore) + "; ");
            }
        }
        return true;
    }

    bool addNeedle(const SeriesEntry& entry)
    {
        namespace c = needle_column;
        const bool cup = entry.rule.geometry_class == GeometryClass::needle_drawn_cup;
        for (std::size_t i = 0; i < m_needle.rows(); ++i) {
            if (m_needle.cell(i, c::series) != entry.name)
                continue;
            BoundaryDimensions size;
            size.inner_raceway_mm = m_needle.number(i, c::raceway, 0.0);
            size.bore_mm = cup ? size.inner_raceway_mm : m_needle.number(i, c::bore, 0.0);
            if (!inRange(entry, size.bore_mm))
                continue;
            size.outer_mm = m_needle.number(i, c::outer, 0.0);
            size.width_mm = m_needle.number(i, c::width, 0.0);
            CatalogueRow* row = add(entry, size, std::string(m_needle.cell(i, c::designation)), size.bore_mm, size.width_mm);
            if (row == nullptr)
                return false;
            row->inner_raceway_mm = size.inner_raceway_mm;
            describe(*row, entry, m_needle, i, c::chamfer, c::provenance, c::note, c::source);
            if (!cup)
                m_catalogue.variants.push_back(withoutInnerRing(*row));
        }
        return true;
    }

    bool addTapered(const SeriesEntry& entry)
    {
        namespace c = tapered_column;
        for (std::size_t i = 0; i < m_tapered.rows(); ++i) {
            if (m_tapered.cell(i, c::series) != entry.name || m_tapered.cell(i, c::angle).empty()) // without angle no rating
                continue;
            BoundaryDimensions size;
            size.bore_mm = m_tapered.number(i, c::bore, 0.0);
            if (!inRange(entry, size.bore_mm))
                continue;
            size.outer_mm = m_tapered.number(i, c::outer, 0.0);
            size.width_mm = m_tapered.number(i, c::T, 0.0);
            size.inner_width_mm = m_tapered.number(i, c::B, 0.0);
            size.outer_width_mm = m_tapered.number(i, c::C, 0.0);
            size.contact_angle_deg = m_tapered.number(i, c::angle, 0.0);
            CatalogueRow* row = add(entry, size, std::string(m_tapered.cell(i, c::designation)), size.bore_mm, size.width_mm);
            if (row == nullptr)
                return false;
            row->inner_width_mm = size.inner_width_mm;
            row->outer_width_mm = size.outer_width_mm;
            row->outer_small_end_mm = m_tapered.number(i, c::E, 0.0);
            describe(*row, entry, m_tapered, i, c::cone_chamfer, c::provenance, c::note, c::source);
            const double cup_mm = m_tapered.number(i, c::cup_chamfer, 0.0);
            if (cup_mm > 0.0)
                row->chamfer_mm = row->chamfer_mm > 0.0 ? std::min(row->chamfer_mm, cup_mm) : cup_mm;
        }
        return true;
    }

    bool addThrust(const SeriesEntry& entry)
    {
        namespace c = thrust_column;
        const bool both_ways = entry.rule.geometry_class == GeometryClass::thrust_ball_double;
        for (std::size_t i = 0; i < m_thrust.rows(); ++i) {
            if (m_thrust.cell(i, c::series) != entry.name)
                continue;
            BoundaryDimensions size;
            const double bore_mm = m_thrust.number(i, c::bore, 0.0), height_mm = m_thrust.number(i, c::height, 0.0);
            if (!inRange(entry, bore_mm))
                continue;
            size.bore_mm = bore_mm;
            size.outer_mm = m_thrust.number(i, c::outer, 0.0);
            size.width_mm = height_mm;
            size.contact_angle_deg = entry.contact_angle_deg;
            if (both_ways && !takeSingle(entry, size, i))
                return false;
            CatalogueRow* row = add(entry, size, std::string(m_thrust.cell(i, c::designation)), bore_mm, height_mm);
            if (row == nullptr)
                return false;
            describe(*row, entry, m_thrust, i, c::chamfer, c::provenance, c::note, c::source);
        }
        return true;
    }

    /// The rows of a double-direction bearing are those of the single bearing with the same outer diameter.
    bool takeSingle(const SeriesEntry& entry, BoundaryDimensions& size, std::size_t i)
    {
        namespace c = thrust_column;
        size.centre_washer_mm = m_thrust.number(i, c::centre_height, 0.0);
        size.centre_washer_bore_mm = size.bore_mm;
        for (std::size_t j = 0; j < m_thrust.rows(); ++j) {
            if (m_thrust.cell(j, c::series) == entry.dimension_series &&
                m_thrust.cell(j, c::outer) == m_thrust.cell(i, c::outer)) {
                size.bore_mm = m_thrust.number(j, c::bore, 0.0);
                size.width_mm = m_thrust.number(j, c::height, 0.0);
                return true;
            }
        }
        m_fault = wrongCell("thrust-dimensions.csv", i, "outer_mm", m_thrust.cell(i, c::outer));
        return false;
    }

    /// Geometry, ratings and mass of one size. Null: see the fault.
    CatalogueRow* add(const SeriesEntry& entry, const BoundaryDimensions& size, std::string designation, double bore_mm,
                      double width_mm)
    {
        const GeometryClass geometry_class = entry.rule.geometry_class;
        const auto geometry = genericGeometry(entry.rule, size);
        if (!geometry.ok()) {
            m_fault = geometry.finding();
            m_fault->subject = std::move(designation);
            return nullptr;
        }
        const auto rating = basicRating(geometry_class, *geometry);
        if (!rating.ok()) {
            m_fault = rating.finding();
            m_fault->subject = std::move(designation);
            return nullptr;
        }
        CatalogueRow& row = m_catalogue.rows.emplace_back();
        row.catalogue = m_catalogue.name;
        row.catalogue_version = m_catalogue.version;
        row.designation = std::move(designation);
        row.series = entry.name;
        row.geometry_class = geometry_class;
        row.bore_mm = bore_mm;
        row.outer_mm = size.outer_mm;
        row.width_mm = width_mm;
        row.C_N = rating->C_N;
        row.C0_N = rating->C0_N;
        row.Cu_N = rating->Cu_N;
        if (!isRoller(geometry_class))
            row.f0 = rating->f_0;
        row.contact_angle_deg = std::round(geometry->contact_angle_rad * 180.0 / std::numbers::pi * 1e9) / 1e9;
        row.mass_kg = roundedMass_kg(genericMass_kg(geometry_class, size, *geometry));
        row.geometry = *geometry;
        return &row;
    }

    void describe(CatalogueRow& row, const SeriesEntry& entry, const CsvTable& table, std::size_t i, std::size_t chamfer,
                  std::size_t provenance, std::size_t note, std::size_t source)
    {
        row.chamfer_mm = table.number(i, chamfer, 0.0);
        const std::string_view standard = table.cell(i, source);
        row.source = entry.estimated ? "estimated from the standard boundary dimensions with an assumed internal geometry ("
                                     : "computed from the standard boundary dimensions with the generic internal geometry (";
        row.source.append(standard).append("; ISO 281:2007; ISO 76:2006)");
        row.provenance = entry.estimated ? Provenance::memory_low : Provenance::computed;
        const std::string_view trust = table.cell(i, provenance), remark = table.cell(i, note);
        const bool unsure = trust == "memory_low" || trust == "memory_medium";
        row.note.reserve(std::string_view(spreadNote).size() + (unsure ? 70 : 0) + remark.size() + 2);
        row.note = entry.estimated ? lowNote : spreadNote;
        if (unsure)
            row.note.append("; dimensions from memory of ").append(standard);
        if (trust == "memory_low")
            row.note.append(", low confidence");
        if (!remark.empty())
            row.note.append("; ").append(remark);
    }

    CatalogueTexts m_texts;
    CsvTable m_series, m_radial, m_needle, m_tapered, m_thrust;
    Catalogue m_catalogue;
    std::optional<Finding> m_fault;
};

} // namespace

Result<Catalogue> buildGenericCatalogue(const CatalogueTexts& texts)
{
    return Builder(texts).build();
}

const Catalogue& genericCatalogue()
{
    static const Catalogue catalogue = [] {
        auto built = buildGenericCatalogue(
            {embeddedResource("catalogue/series.csv"), embeddedResource("catalogue/radial-dimensions.csv"),
             embeddedResource("catalogue/needle-dimensions.csv"), embeddedResource("catalogue/tapered-dimensions.csv"),
             embeddedResource("catalogue/thrust-dimensions.csv")});
        if (!built.ok()) // the tables are part of the program: our own mistake, and nothing can be rated without them
            throw std::logic_error("generic catalogue: " + built.finding().code + " at " + built.finding().path);
        return std::move(built.value());
    }();
    return catalogue;
}

CatalogueRow withPrefix(const CatalogueRow& nu_row, std::string_view prefix)
{
    assert(nu_row.geometry_class == GeometryClass::cylindrical_roller && nu_row.designation.starts_with("NU"));
    CatalogueRow row = nu_row;
    row.designation.replace(0, 2, prefix);
    row.series.replace(0, 2, prefix);
    if (row.geometry) { // ribs: NU outer ring, N inner ring, NJ and NUP both
        InternalGeometry& g = *row.geometry;
        const double height_mm = 0.5 * (nu_row.geometry->raceway_outer_mm - nu_row.geometry->shoulder_outer_mm);
        if (prefix != "NU")
            g.shoulder_inner_mm = g.raceway_inner_mm + 2.0 * height_mm;
        if (prefix == "N")
            g.shoulder_outer_mm = 0.0;
    }
    return row;
}

CatalogueRow withoutInnerRing(const CatalogueRow& na_row)
{
    assert(na_row.geometry_class == GeometryClass::needle);
    CatalogueRow row = na_row;
    row.designation.insert(0, 1, 'R');
    row.series.insert(0, 1, 'R');
    row.bore_mm = na_row.inner_raceway_mm;
    if (row.mass_kg) {
        BoundaryDimensions size;
        size.bore_mm = na_row.bore_mm;
        size.width_mm = na_row.width_mm;
        size.inner_raceway_mm = na_row.inner_raceway_mm;
        row.mass_kg = roundedMass_kg(*na_row.mass_kg - needleInnerRingMass_kg(size));
    }
    row.note.insert(0, "without inner ring: the shaft is the raceway, hardened to 58 HRC at least; ");
    return row;
}

} // namespace shaftwright
