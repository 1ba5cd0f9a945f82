#pragma once
// Where the rows of a family come from, rated as the bearing (set, composite) that would stand at the support.

#include "core/bearings/load_rating.h"
#include "core/catalogue/catalogue.h"
#include "core/selection/rule_data.h"

#include <vector>

namespace shaftwright::selection
{

/// One bearing (set, composite) that could be taken.
struct RatedRow {
    const CatalogueRow* row = nullptr;                    ///< of one bearing; null in tests that bring ratings only
    const CatalogueRow* partner_row = nullptr;            ///< composite of two kinds: the other bearing
    BearingRating rating;                                 ///< of the whole
    double bore_mm = 0.0, outer_mm = 0.0, width_mm = 0.0; ///< whole bearing; width along the shaft
    double inside_room_mm = 0.0;                          ///< displacement that it allows inside
    int order = 0;                                        ///< of its series
    bool thin = false, shallow = false, heavy = false;
    [[nodiscard]] double section_mm2() const { return 0.5 * (outer_mm - bore_mm) * width_mm; }
};

/// Where the rows are wanted.
struct Seat {
    double bore_mm = 0.0;
    std::optional<Carries> main_side; ///< side that holds the largest axial force; composites are built towards it
};

/// What the rules need to know about rows. The program reads catalogues; one bearing alone and tests bring their own.
class RowSource
{
public:
    virtual ~RowSource() = default;
    /// Adds the rows of the family for this seat.
    virtual void rows(const FamilyTraits& traits, const Seat& seat, std::vector<RatedRow>& out) const = 0;
    /// Equivalent loads; NaN when not rated for this load.
    [[nodiscard]] virtual double P_N(const BearingRating& rating, double Fr_N, double Fa_N, std::optional<Carries> sense) const
    {
        return equivalentLoadQuick_N(rating, Fr_N, Fa_N, sense);
    }
    [[nodiscard]] virtual double P0_N(const BearingRating& rating, double Fr_N, double Fa_N, std::optional<Carries> sense) const
    {
        return staticLoadQuick_N(rating, Fr_N, Fa_N, sense);
    }
};

class CatalogueRows final : public RowSource
{
public:
    CatalogueRows(const RuleData& rules, const Catalogues& catalogues) : m_rules(rules), m_catalogues(catalogues) {}
    void rows(const FamilyTraits& traits, const Seat& seat, std::vector<RatedRow>& out) const override;

private:
    const RuleData& m_rules;
    const Catalogues& m_catalogues;
};

/// The bearing of a support as the only row of its family.
class ChosenRow final : public RowSource
{
public:
    ChosenRow(const RuleData& rules, const BearingChoice& choice) : m_rules(rules), m_choice(choice) {}
    void rows(const FamilyTraits& traits, const Seat& seat, std::vector<RatedRow>& out) const override;

private:
    const RuleData& m_rules;
    const BearingChoice& m_choice;
};

/// The numbers of `ratingOf` for one row, or a set of equal rows, of a family without its derivation, since hundreds are
/// looked at; a test holds both against each other.
[[nodiscard]] BearingRating quickRating(const CatalogueRow& row, const FamilyTraits& traits);

/// Everything of a RatedRow from its row. Composites: `partner` is the four-point contact bearing beside a cylindrical
/// roller bearing.
[[nodiscard]] RatedRow rated(const CatalogueRow& row, const CatalogueRow* partner, const FamilyTraits& traits,
                             std::optional<Carries> main_side, const RuleData& rules);

/// The bearing that is placed when this row is taken. `side`: of one-way bearings and the main side of composites; sets
/// that hold both ways follow from their arrangement (O: left plus, right minus).
[[nodiscard]] BearingChoice choiceOf(const CatalogueRow& row, const CatalogueRow* partner, const FamilyTraits& traits,
                                     std::optional<Carries> side);

} // namespace shaftwright::selection
