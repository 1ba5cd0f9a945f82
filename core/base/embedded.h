#pragma once
#include <string_view>
#include <vector>

namespace shaftwright {

/// Text of a file below resources/ that is built into the program, by its path there ("catalogue/...csv").
/// Empty when no such file is built in (our own mistake: the list stands in resources/CMakeLists.txt).
[[nodiscard]] std::string_view embeddedResource(std::string_view path);

/// Paths of all files that are built in, sorted.
[[nodiscard]] std::vector<std::string_view> embeddedResourcePaths();

} // namespace shaftwright
