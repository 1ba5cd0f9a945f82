#pragma once
// Pure edits: an arrangement in, the changed arrangement or a finding out. Sheet, form fields and tests move a gear by
// the same call. Nothing here judges engineering; an edit refuses only what cannot be meant.
//
// Findings of all edits:
//   edit-unknown-id    (id)                      nothing in the arrangement has this id
//   edit-duplicate-id  (id)                      the id is taken, or no id at all
//   value-invalid      (value, least, greatest, unit)  not finite or beyond what the document can hold
//   segment-size       (value_mm, least_mm)      a segment would get no length or diameter
//   segment-bore       (bore_mm, outer_mm)       the bore would leave no wall

#include "core/base/result.h"
#include "core/model/arrangement.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright
{

/// Shortest segment that an edit leaves, and smallest step of a drag, mm.
inline constexpr double leastSegment_mm = 0.1;

// --- Ids -------------------------------------------------------------------------------------------------------

/// First free id for a part of this kind: gears G1, worms and worm wheels W1, pulleys P1, sprockets C1, couplings K1,
/// impellers I1, weights M1, point loads F1, distributed loads Q1.
[[nodiscard]] PartId freePartId(const Arrangement& arrangement, const PartBody& body);
/// A, B, ... Z, A2, B2, ...
[[nodiscard]] SupportId freeSupportId(const Arrangement& arrangement);
/// S1, S2, ...
[[nodiscard]] SegmentId freeSegmentId(const Arrangement& arrangement);
/// F1, F2, ... within the segment
[[nodiscard]] FeatureId freeFeatureId(const Segment& segment);
/// LC1, LC2, ...
[[nodiscard]] CaseId freeCaseId(const Arrangement& arrangement);
/// R1, R2, ...
[[nodiscard]] RequirementId freeRequirementId(const Arrangement& arrangement);
/// N1, N2, ...
[[nodiscard]] RemarkId freeRemarkId(const Arrangement& arrangement);

// --- Templates -------------------------------------------------------------------------------------------------

/// No shaft yet: steel, one load case at 1000 rpm.
[[nodiscard]] Arrangement emptyArrangement();

/// A stepped shaft on a locating support A and a non-locating support B, a spur gear between them that takes in 5.5 kW,
/// and a coupling at the right end that gives the power away.
[[nodiscard]] Arrangement plainTwoBearingShaft();

/// A part of this kind (words of the file: cylindrical_gear ...) with a free id and values that suit the shaft at x_mm.
/// Its torque: the first part takes in 5.5 kW, the second gives the remaining power away, further ones give 1 kW away.
/// None for an unknown word.
[[nodiscard]] std::optional<Part> newPart(const Arrangement& arrangement, std::string_view kind, double x_mm);

/// A support with a free id: locating when no other support is, else non-locating.
[[nodiscard]] Support newSupport(const Arrangement& arrangement, double x_mm);

/// A segment with a free id, as thick as its neighbour at `index` (30 mm on an empty shaft), 40 mm long.
[[nodiscard]] Segment newSegment(const Arrangement& arrangement, std::size_t index);

// --- Parts -----------------------------------------------------------------------------------------------------

/// Where a place beyond the ends lands: 0..length of the shaft; unchanged while there is no shaft.
[[nodiscard]] double clampedToShaft_mm(const Arrangement& arrangement, double x_mm);

/// Adds a part; beyond the ends of the shaft it lands at the end.
[[nodiscard]] Result<Arrangement> addPart(const Arrangement& arrangement, Part part);
/// Removes it with what refers to it: its entries in load cases, requirements at it, its origins.
[[nodiscard]] Result<Arrangement> removePart(const Arrangement& arrangement, const PartId& id);
/// Moves the point of action; the end of a distributed load goes with it. Beyond the ends it stops at the end.
[[nodiscard]] Result<Arrangement> movePart(const Arrangement& arrangement, const PartId& id, double x_mm);
/// Replaces a part by one with the same id.
[[nodiscard]] Result<Arrangement> setPart(const Arrangement& arrangement, Part part);
/// A copy with a free id stands `offset_mm` to the right; the copy does not take the remaining power a second time.
[[nodiscard]] Result<Arrangement> duplicatePart(const Arrangement& arrangement, const PartId& id, double offset_mm);

// --- Supports --------------------------------------------------------------------------------------------------

[[nodiscard]] Result<Arrangement> addSupport(const Arrangement& arrangement, Support support);
[[nodiscard]] Result<Arrangement> removeSupport(const Arrangement& arrangement, const SupportId& id);
[[nodiscard]] Result<Arrangement> moveSupport(const Arrangement& arrangement, const SupportId& id, double x_mm);
[[nodiscard]] Result<Arrangement> setSupport(const Arrangement& arrangement, Support support);
/// A copy with a free id; never locating, since one support locates already.
[[nodiscard]] Result<Arrangement> duplicateSupport(const Arrangement& arrangement, const SupportId& id, double offset_mm);
/// Changes the role. `carries` is dropped where the new role has no use for it.
[[nodiscard]] Result<Arrangement> setRole(const Arrangement& arrangement, const SupportId& id, Role role);
/// Puts a bearing in. With a reason the choice is marked as proposed by the program, else as given.
[[nodiscard]] Result<Arrangement> setBearing(const Arrangement& arrangement, const SupportId& id, BearingChoice bearing,
                                             const std::optional<std::string>& proposal_reason = std::nullopt);
[[nodiscard]] Result<Arrangement> clearBearing(const Arrangement& arrangement, const SupportId& id);

// --- Segments --------------------------------------------------------------------------------------------------

/// What happens right of a changed length.
enum class Rest {
    neighbour_gives_way, ///< the next segment takes it up, the total stays
    moves_along          ///< everything right of it shifts, with parts and supports
};

/// Inserts before `index` (count: at the right end). What stands at or right of that place shifts by its length.
[[nodiscard]] Result<Arrangement> insertSegment(const Arrangement& arrangement, std::size_t index, Segment segment);
/// Removes it; what stands right of it shifts left, what stands on it lands at its left end.
[[nodiscard]] Result<Arrangement> removeSegment(const Arrangement& arrangement, const SegmentId& id);
/// Two segments of the same shape meet `from_left_mm` from its left end; the right one gets a free id.
[[nodiscard]] Result<Arrangement> splitSegment(const Arrangement& arrangement, const SegmentId& id, double from_left_mm);
/// Changes a length. The last segment has no neighbour: its free end moves.
[[nodiscard]] Result<Arrangement> resizeSegment(const Arrangement& arrangement, const SegmentId& id, double length_mm, Rest rest);
/// Moves the face between segments `index - 1` and `index` to x; 0 is the left end, count the right end of the shaft.
/// A face stops `leastSegment_mm` before its neighbours. Moving the left end keeps all else where it stands in space, so
/// that every x changes by the same amount.
[[nodiscard]] Result<Arrangement> moveShoulder(const Arrangement& arrangement, std::size_t index, double x_mm, Rest rest);
/// Changes the outside diameter; `outer_end_mm` makes a cone, none a cylinder.
[[nodiscard]] Result<Arrangement> setDiameter(const Arrangement& arrangement, const SegmentId& id, double outer_mm,
                                              std::optional<double> outer_end_mm = std::nullopt);
/// Bores a segment; none makes it solid.
[[nodiscard]] Result<Arrangement> setBore(const Arrangement& arrangement, const SegmentId& id, std::optional<double> bore_mm,
                                          std::optional<double> bore_end_mm = std::nullopt);
[[nodiscard]] Result<Arrangement> addFeature(const Arrangement& arrangement, const SegmentId& id, Feature feature);
[[nodiscard]] Result<Arrangement> removeFeature(const Arrangement& arrangement, const SegmentId& id, const FeatureId& feature);

// --- Duty ------------------------------------------------------------------------------------------------------

[[nodiscard]] Result<Arrangement> addLoadCase(const Arrangement& arrangement, LoadCase load_case);
[[nodiscard]] Result<Arrangement> removeLoadCase(const Arrangement& arrangement, const CaseId& id);
[[nodiscard]] Result<Arrangement> setLoadCase(const Arrangement& arrangement, LoadCase load_case);

} // namespace shaftwright
