#include "core/selection/row_source.h"

#include "core/catalogue/family_rows.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::selection
{
namespace
{

constexpr double sameSize_mm = 1e-6;

Carries opposite(Carries side)
{
    return side == Carries::plus ? Carries::minus : Carries::plus;
}

/// The row itself when its ribs are those of the family, or the bearing of its size with such ribs; null: there is none.
const CatalogueRow* withRibs(const Catalogue& catalogue, const CatalogueRow& row, Family family)
{
    const std::optional<Family> natural = naturalFamily(row);
    if (natural == family)
        return &row;
    if (natural != Family::cylindrical_roller_NU || row.designation.compare(0, 2, "NU") != 0)
        return nullptr;
    const char* prefix = family == Family::cylindrical_roller_NJ ? "NJ" : "NUP";
    return catalogue.find(prefix + row.designation.substr(2));
}

} // namespace

BearingRating quickRating(const CatalogueRow& row, const FamilyTraits& traits)
{
    BearingRating rating = ratingOf(row, traits.family);
    if (traits.count < 2)
        return rating;
    // ISO 281:2007, 5.1 (ball) and 7.1 (roller): C of i like rows; ISO 76:2006: C0.
    const double count = traits.count;
    const bool tandem = traits.arrangement == SetArrangement::tandem;
    rating.width_mm *= count;
    rating.C_N *= std::pow(count, rating.roller ? 7.0 / 9.0 : 0.7);
    rating.C0_N *= count;
    rating.rows = tandem ? 1 : traits.count;
    rating.tandem = tandem ? traits.count : 1;
    if (!tandem) {
        rating.angular_or_tapered = false;
        rating.e = rating.X = rating.Y = std::nullopt;
        if (rating.Y0)
            rating.Y0 = 2.0 * *rating.Y0;
    }
    return rating;
}

RatedRow rated(const CatalogueRow& row, const CatalogueRow* partner, const FamilyTraits& traits, std::optional<Carries> main_side,
               const RuleData& rules)
{
    RatedRow out;
    out.row = &row;
    out.partner_row = partner;
    out.rating = traits.kind == Kind::composite ? ratingOf(choiceOf(row, partner, traits, main_side)) : quickRating(row, traits);
    out.bore_mm =
        traits.family == Family::needle_roller_no_inner && row.inner_raceway_mm > 0.0 ? row.inner_raceway_mm : row.bore_mm;
    out.outer_mm = row.outer_mm;
    out.width_mm = row.width_mm * traits.count;
    if (partner != nullptr) {
        out.outer_mm = std::max(row.outer_mm, partner->outer_mm);
        out.width_mm = row.width_mm + partner->width_mm;
    }
    if (traits.compensation == Compensation::inside) {
        out.inside_room_mm = traits.inside_share * row.width_mm;
        // The ring may stand over by its chamfer and a little of the roller's end; the smaller of both counts.
        if (row.chamfer_mm > 0.0 && row.geometry)
            out.inside_room_mm =
                std::min(out.inside_room_mm, rules.numbers.inside_chamfer_factor * row.chamfer_mm +
                                                 rules.numbers.inside_element_share * row.geometry->element_diameter_mm);
    }
    const SeriesTraits* series = rules.seriesOf(row.geometry_class, row.series);
    out.order = series != nullptr ? series->order : static_cast<int>(rules.series.size());
    out.thin = series != nullptr && series->thin;
    out.shallow = series != nullptr && series->shallow;
    out.heavy = series != nullptr && series->heavy;
    return out;
}

BearingChoice choiceOf(const CatalogueRow& row, const CatalogueRow* partner, const FamilyTraits& traits,
                       std::optional<Carries> side)
{
    BearingChoice choice;
    choice.family = traits.family;
    choice.arrangement = traits.arrangement;
    const std::optional<Carries> oneWay = traits.axial == AxialSense::one_way ? side : std::nullopt;
    if (traits.family == Family::composite_tandem_opposed) {
        const Carries main = side.value_or(Carries::plus);
        choice.rows = {{row, main}, {row, main}, {row, opposite(main)}};
    } else if (traits.arrangement == SetArrangement::O) {
        choice.rows = {{row, Carries::plus}, {row, Carries::minus}};
    } else if (traits.arrangement == SetArrangement::X) {
        choice.rows = {{row, Carries::minus}, {row, Carries::plus}};
    } else if (traits.arrangement == SetArrangement::tandem) {
        choice.rows = {{row, oneWay}, {row, oneWay}};
    } else {
        choice.rows = {{row, oneWay}};
        if (partner != nullptr)
            choice.rows.push_back({*partner, std::nullopt});
    }
    return choice;
}

void CatalogueRows::rows(const FamilyTraits& traits, const Seat& seat, std::vector<RatedRow>& out) const
{
    if (!traits.geometry)
        return;
    const bool needsRibs = traits.family == Family::cylindrical_roller_NJ || traits.family == Family::cylindrical_roller_NUP;
    const Family ribFamily = needsRibs ? traits.family : Family::cylindrical_roller_NU;
    const std::vector<const Catalogue*>& list = m_catalogues.list;
    for (std::size_t c = 0; c < list.size(); ++c) {
        const auto add = [&](const CatalogueRow& row) {
            if (traits.contact_angle_deg && std::abs(row.contact_angle_deg - *traits.contact_angle_deg) > 2.5)
                return;
            if (needsRibs || traits.count > 1) {
                const SeriesTraits* series = m_rules.seriesOf(row.geometry_class, row.series);
                if (series != nullptr && ((needsRibs && !series->ribs) || (traits.count > 1 && !series->sets)))
                    return;
            }
            // The first catalogue that holds a designation wins.
            if (c > 0 && m_catalogues.find(row.designation) != &row)
                return;
            const CatalogueRow* partner = nullptr;
            if (traits.family == Family::composite_NU_four_point) {
                for (const Catalogue* other : list) {
                    for (const CatalogueRow* four_point :
                         other->rowsWithBore(GeometryClass::four_point_contact_ball, row.bore_mm)) {
                        if (partner == nullptr && std::abs(four_point->outer_mm - row.outer_mm) < sameSize_mm &&
                            std::abs(four_point->width_mm - row.width_mm) < sameSize_mm)
                            partner = four_point;
                    }
                }
                if (partner == nullptr)
                    return;
            }
            out.push_back(rated(row, partner, traits, seat.main_side, m_rules));
        };
        if (traits.family == Family::needle_roller_no_inner) {
            for (const CatalogueRow* row : list[c]->rowsWithRaceway(seat.bore_mm))
                add(*row);
        } else {
            for (const CatalogueRow* row : list[c]->rowsWithBore(*traits.geometry, seat.bore_mm)) {
                if (*traits.geometry == GeometryClass::cylindrical_roller)
                    row = withRibs(*list[c], *row, ribFamily);
                if (row != nullptr)
                    add(*row);
            }
        }
    }
}

void ChosenRow::rows(const FamilyTraits& traits, const Seat&, std::vector<RatedRow>& out) const
{
    if (m_choice.rows.empty())
        return;
    const CatalogueRow& first = m_choice.rows.front().row;
    RatedRow row = rated(first, nullptr, traits, m_choice.rows.front().carries, m_rules);
    row.rating = ratingOf(m_choice);
    row.width_mm = m_choice.width_mm();
    for (const SetRow& set_row : m_choice.rows)
        row.outer_mm = std::max(row.outer_mm, set_row.row.outer_mm);
    if (m_choice.rows.size() > 1)
        row.partner_row = &m_choice.rows[1].row;
    out.push_back(row);
}

} // namespace shaftwright::selection
