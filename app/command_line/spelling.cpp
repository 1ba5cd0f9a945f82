#include "app/command_line/spelling.h"

#include <algorithm>

namespace shaftwright::command_line {
namespace {

/// Optimal string alignment distance.
std::size_t distance(const std::string& a, const std::string& b)
{
    const std::size_t width = b.size() + 1;
    std::vector<std::size_t> table((a.size() + 1) * width);
    const auto at = [&](std::size_t i, std::size_t k) -> std::size_t& { return table[i * width + k]; };
    for (std::size_t i = 0; i <= a.size(); ++i)
        at(i, 0) = i;
    for (std::size_t k = 0; k <= b.size(); ++k)
        at(0, k) = k;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        for (std::size_t k = 1; k <= b.size(); ++k) {
            const std::size_t change = a[i - 1] == b[k - 1] ? 0 : 1;
            at(i, k) = std::min({at(i - 1, k) + 1, at(i, k - 1) + 1, at(i - 1, k - 1) + change});
            if (i > 1 && k > 1 && a[i - 1] == b[k - 2] && a[i - 2] == b[k - 1])
                at(i, k) = std::min(at(i, k), at(i - 2, k - 2) + 1);
        }
    }
    return table.back();
}

} // namespace

std::optional<std::string> nearest(const std::string& word, const std::vector<std::string>& candidates)
{
    std::optional<std::string> best;
    std::size_t least = std::max<std::size_t>(1, word.size() / 3) + 1;
    if (word.size() > 64)
        return std::nullopt;
    for (const std::string& candidate : candidates) {
        const std::size_t d = distance(word, candidate);
        if (d < least) {
            least = d;
            best = candidate;
        }
    }
    return best;
}

} // namespace shaftwright::command_line
