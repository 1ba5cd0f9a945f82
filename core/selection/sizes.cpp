#include "core/selection/engine.h"
#include "core/selection/judge.h"

#include <algorithm>
#include <cmath>

namespace shaftwright
{
namespace
{

constexpr double equal_mm = 0.05;

std::vector<selection::RatedRow> rowsForSeat(Family family, double seat_mm, std::optional<Carries> side,
                                             const Catalogues& catalogues)
{
    const selection::RuleData& rules = selection::ruleData();
    std::vector<selection::RatedRow> rows;
    selection::CatalogueRows(rules, catalogues).rows(rules.of(family), {seat_mm, side}, rows);
    std::stable_sort(rows.begin(), rows.end(), [](const selection::RatedRow& a, const selection::RatedRow& b) {
        if (a.section_mm2() != b.section_mm2())
            return a.section_mm2() < b.section_mm2();
        return a.width_mm != b.width_mm ? a.width_mm < b.width_mm : a.order < b.order;
    });
    return rows;
}

double seatOf(const BearingChoice& choice)
{
    if (choice.rows.empty())
        return 0.0;
    const CatalogueRow& row = choice.rows.front().row;
    return choice.family == Family::needle_roller_no_inner && row.inner_raceway_mm > 0.0 ? row.inner_raceway_mm : row.bore_mm;
}

double outerOf(const BearingChoice& choice)
{
    double outer = 0.0;
    for (const SetRow& row : choice.rows)
        outer = std::max(outer, row.row.outer_mm);
    return outer;
}

} // namespace

std::vector<CatalogueRow> sizesForSeat(Family family, double seat_mm, const Catalogues& catalogues)
{
    std::vector<CatalogueRow> out;
    for (const BearingChoice& choice : choicesForSeat(family, seat_mm, std::nullopt, catalogues))
        out.push_back(choice.rows.front().row);
    return out;
}

std::vector<BearingChoice> choicesForSeat(Family family, double seat_mm, std::optional<Carries> carries,
                                          const Catalogues& catalogues)
{
    std::vector<BearingChoice> out;
    for (const selection::RatedRow& row : rowsForSeat(family, seat_mm, carries, catalogues))
        out.push_back(selection::choiceOf(*row.row, row.partner_row, selection::ruleData().of(family), carries));
    return out;
}

std::optional<BearingChoice> stepSize(const BearingChoice& choice, int step, double seat_mm, const Catalogues& catalogues)
{
    if (choice.rows.empty() || step == 0)
        return std::nullopt;
    const std::optional<Carries> side = choice.rows.front().carries;
    std::vector<BearingChoice> sizes = choicesForSeat(choice.family, seat_mm, side, catalogues);
    const std::string& designation = choice.rows.front().row.designation;
    const auto here = std::find_if(sizes.begin(), sizes.end(),
                                   [&](const BearingChoice& size) { return size.rows.front().row.designation == designation; });
    auto next = sizes.end();
    if (here != sizes.end()) {
        const auto at = std::distance(sizes.begin(), here) + (step > 0 ? 1 : -1);
        if (at >= 0 && at < static_cast<std::ptrdiff_t>(sizes.size()))
            next = sizes.begin() + at;
    } else {
        // A row of the user's own: the neighbour by section.
        const double section = 0.5 * (outerOf(choice) - seatOf(choice)) * choice.width_mm();
        const auto sectionOf = [](const BearingChoice& c) { return 0.5 * (outerOf(c) - seatOf(c)) * c.width_mm(); };
        for (auto it = sizes.begin(); it != sizes.end(); ++it) {
            if (step > 0 && sectionOf(*it) > section) {
                next = it;
                break;
            }
            if (step < 0 && sectionOf(*it) < section)
                next = it;
        }
    }
    if (next == sizes.end())
        return std::nullopt;
    // Sets keep the arrangement and the sides that the user gave them.
    BearingChoice result = *next;
    result.arrangement = choice.arrangement;
    for (std::size_t i = 0; i < result.rows.size() && i < choice.rows.size(); ++i)
        result.rows[i].carries = choice.rows[i].carries;
    return result;
}

std::vector<BearingChoice> equalDimensionAlternatives(const BearingChoice& choice, const Catalogues& catalogues)
{
    std::vector<BearingChoice> out;
    if (choice.rows.empty())
        return out;
    const double seat_mm = seatOf(choice), outer_mm = outerOf(choice), width_mm = choice.width_mm();
    const std::optional<Carries> side = choice.rows.front().carries;
    for (const Family family : allFamilies()) {
        for (const selection::RatedRow& row : rowsForSeat(family, seat_mm, side, catalogues)) {
            if (std::abs(row.outer_mm - outer_mm) > equal_mm || std::abs(row.width_mm - width_mm) > equal_mm)
                continue;
            BearingChoice other = selection::choiceOf(*row.row, row.partner_row, selection::ruleData().of(family), side);
            if (other.family == choice.family && other.designation() == choice.designation())
                continue;
            out.push_back(std::move(other));
        }
    }
    return out;
}

NeighbouringBores neighbouringBores(double seat_mm)
{
    NeighbouringBores out;
    const auto look = [&](double bore_mm) {
        if (std::abs(bore_mm - seat_mm) < 1e-6)
            out.standard = true;
        else if (bore_mm < seat_mm)
            out.smaller_mm = bore_mm;
        else if (!out.larger_mm)
            out.larger_mm = bore_mm;
    };
    for (int bore = 3; bore <= 10; ++bore)
        look(bore);
    for (const int bore : {12, 15, 17})
        look(bore);
    for (int bore = 20; bore < 110; bore += 5)
        look(bore);
    for (int bore = 110; bore < 200; bore += 10)
        look(bore);
    for (int bore = 200; bore <= 500; bore += 20)
        look(bore);
    return out;
}

} // namespace shaftwright
