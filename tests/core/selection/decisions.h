#pragma once
// Twelve supports whose right answer practice knows, with the verdict of every family. Handbook application tables
// (Eschmann, Roloff/Matek; from memory) say which types belong there; the tables of decisions.csv were computed from the
// rules by an independent program with rating estimates of its own.

#include "core/selection/suggestion.h"

#include <string>
#include <vector>

namespace decisions
{

struct Decision {
    std::string name;
    shaftwright::SupportQuestion question;
    shaftwright::Settled settled;
};
/// D1 to D12.
std::vector<Decision> all();

struct Row {
    std::string decision, family, verdict;
    std::vector<std::string> also; ///< verdicts that a rating within +-15 % gives
    std::string score, row, L10_h, S0, ratio;
    std::vector<std::string> codes; ///< X: the first; else all R in any order
};
/// The rows of decisions.csv.
std::vector<Row> table();

const char* word(shaftwright::Verdict verdict);

} // namespace decisions
