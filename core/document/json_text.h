#pragma once
// Trees to JSON text.

#include "core/document/json_positions.h"

#include <string>
#include <string_view>

namespace shaftwright
{

/// A finite number as RFC 8785 writes it (the shortest digits, form of ECMAScript's Number to String).
[[nodiscard]] std::string jsonNumber(double value);

/// A text with its quotation marks, escaped as RFC 8785 does (only what must be).
[[nodiscard]] std::string jsonText(std::string_view text);

/// RFC 8785: no white space, members sorted by their UTF-16 code units. Raw nodes must have been parsed before.
[[nodiscard]] std::string canonicalJson(const JsonNode& node);

/// Two spaces a level; lists of numbers and small objects on one line; ends with a line feed.
[[nodiscard]] std::string readableJson(const JsonNode& node);

/// True when every number in the tree is finite (raw text is not looked into).
[[nodiscard]] bool allFinite(const JsonNode& node);

} // namespace shaftwright
