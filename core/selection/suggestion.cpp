#include "core/selection/suggestion.h"

#include "core/selection/engine.h"

namespace shaftwright
{

std::vector<Suggestion> suggest(const SupportQuestion& question, const Settled& settled,
                                const std::map<std::string, double>& weights, const Catalogues& catalogues)
{
    const selection::RuleData& rules = selection::ruleData();
    return selection::suggestWith(rules, selection::CatalogueRows(rules, catalogues), question, settled, weights);
}

} // namespace shaftwright
