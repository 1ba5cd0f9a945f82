#pragma once
// Inputs by their path: supports.B.x_mm, parts.G1.mesh_angle_deg, duty.load_cases.rated.speed_rpm.
// Elements of lists that carry an id are found by it, others by their number from 0.

#include "core/base/finding.h"
#include "core/base/result.h"
#include "core/model/arrangement.h"

#include <string>
#include <string_view>
#include <vector>

namespace shaftwright
{

enum class Origin { given, assumed, proposed };
[[nodiscard]] std::string_view toString(Origin origin);

/// One input that has a value.
struct AddressedInput {
    std::string path;
    TextValue value;  ///< number, or word ("true" and "false" for switches)
    std::string unit; ///< "" for words and dimensionless numbers
    Origin origin = Origin::given;
    friend bool operator==(const AddressedInput&, const AddressedInput&) = default;
};

/// All inputs that have a value, in the order of the file: set ones, then those that were left open and are assumed.
/// Title block, remarks, acceptances, revisions and `extra` are not among them.
[[nodiscard]] std::vector<AddressedInput> addressableInputs(const Arrangement& arrangement);

/// The arrangement with one input changed.
/// @param value a number (point or comma, with or without unit: "120", "4,7 in"), a word, true or false;
///              empty: an optional input is left open again
/// Findings: `path-unknown` (path, key, suggestion), `path-not-settable` (path), `value-invalid` (reader_code and the values
/// of the reader's error; or reader_code `quantity`, with quantity_code and detail)
[[nodiscard]] Result<Arrangement> setByPath(const Arrangement& arrangement, std::string_view path, std::string_view value);

/// True when `path` leads to an input of this arrangement, set or open.
[[nodiscard]] bool isInputPath(const Arrangement& arrangement, std::string_view path);

} // namespace shaftwright
