#pragma once
// What is to be said about the bearing that stands at a support, about the suggestions beside it, and about its seat;
// and the sizes through which one may step there.

#include "core/selection/suggestion.h"

namespace shaftwright
{

/// The chosen bearing itself under the rules: its own rows, no walk over sizes. The score's space criterion needs limits of
/// space; without them it has no weight.
[[nodiscard]] Suggestion judgeChoice(const BearingChoice& choice, const SupportQuestion& question, const Settled& settled,
                                     const std::map<std::string, double>& weights);

/// What belongs to the question but not to the rules of one family.
struct ChoiceSurroundings {
    std::string support_id;              ///< subject of the findings; paths are `supports.<id>...`
    std::string support_name;            ///< stands in the sentences
    double largest_Fr_elsewhere_N = 0.0; ///< largest radial force of any other support, over all cases
    bool belt_on_shaft = false;          ///< a belt pulley stands on the shaft
};

/// Findings about choice and suggestions at one support: linear-motion; seat-not-standard, seat-too-small, housing-space;
/// chosen-is-excluded, chosen-is-reserved, equal-dimension-better; no-family, no-suited-family, about-equal, close-call;
/// type-outside-list, noise-family, magnetic-reserved, raceway-too-soft, speed-high, speed-beyond-limit, tilt-costs-life,
/// tilt-beyond-limit, belt-pulls-locating.
/// @param suggestions  of `suggest` for the same question
/// @param chosen       the support's bearing, null when none is chosen; `judged` is judgeChoice of it
[[nodiscard]] Findings choiceFindings(const ChoiceSurroundings& surroundings, const SupportQuestion& question,
                                      const Settled& settled, const std::vector<Suggestion>& suggestions,
                                      const BearingChoice* chosen, const Suggestion* judged,
                                      const std::map<std::string, double>& weights, const Catalogues& catalogues);

/// All rows of the family with this bore (families without inner ring: raceway diameter), by section area, then width.
/// Sets and composites give their first row. Empty when the family has no rows.
[[nodiscard]] std::vector<CatalogueRow> sizesForSeat(Family family, double seat_mm, const Catalogues& catalogues);
/// The same as whole choices, sets and composites complete, ready to be placed. `carries` as in SupportQuestion.
[[nodiscard]] std::vector<BearingChoice> choicesForSeat(Family family, double seat_mm, std::optional<Carries> carries,
                                                        const Catalogues& catalogues);
/// The next larger (step +1) or smaller (-1) section of the same family, bore and arrangement; none at the end.
[[nodiscard]] std::optional<BearingChoice> stepSize(const BearingChoice& choice, int step, double seat_mm,
                                                    const Catalogues& catalogues);
/// Bearings of other families with the same bore, outside diameter and width within 0.05 mm, in the order of the families.
[[nodiscard]] std::vector<BearingChoice> equalDimensionAlternatives(const BearingChoice& choice, const Catalogues& catalogues);

/// Standard bores of rolling bearings (ISO 15): 3 to 10 by 1, 12, 15, 17, 20, then steps of 5 to 110, 10 to 200, 20 to 500.
struct NeighbouringBores {
    bool standard = false;
    std::optional<double> smaller_mm, larger_mm; ///< neighbours in the grid
};
[[nodiscard]] NeighbouringBores neighbouringBores(double seat_mm);

} // namespace shaftwright
