#pragma once
#include <optional>
#include <string>
#include <vector>

namespace shaftwright::command_line {

/// The candidate nearest to a mistyped word (edit distance at most a third of its length, transpositions count one).
[[nodiscard]] std::optional<std::string> nearest(const std::string& word, const std::vector<std::string>& candidates);

} // namespace shaftwright::command_line
