#pragma once
#include <compare>
#include <string>
#include <utility>

namespace shaftwright {

/// An id that survives editing; ids of different kinds do not mix.
/// Written in files as a plain string of letters, digits, '-' and '_' (no '.', since paths use it).
template <class Tag>
struct StrongId {
    std::string value;

    StrongId() = default;
    explicit StrongId(std::string text) : value(std::move(text)) {}
    [[nodiscard]] bool empty() const { return value.empty(); }
    friend bool operator==(const StrongId&, const StrongId&) = default;
    friend auto operator<=>(const StrongId&, const StrongId&) = default;
};

using SegmentId = StrongId<struct SegmentTag>;
using FeatureId = StrongId<struct FeatureTag>;
using PartId = StrongId<struct PartTag>;
using SupportId = StrongId<struct SupportTag>;
using CaseId = StrongId<struct CaseTag>;
using RequirementId = StrongId<struct RequirementTag>;
using RemarkId = StrongId<struct RemarkTag>;

} // namespace shaftwright
