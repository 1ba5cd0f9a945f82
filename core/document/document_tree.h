#pragma once
// The document as a JSON tree: what reader, writer and addressable paths share. Included by this folder's sources only.

#include "core/base/finding.h"
#include "core/document/json_positions.h"
#include "core/document/key_table.h"
#include "core/model/arrangement.h"

#include <string>
#include <string_view>
#include <vector>

namespace shaftwright::format
{

struct TreeError {
    std::string code; ///< as in ReadError
    std::size_t offset = 0;
    std::string path;
    NamedValues values;
};

/// Holds a whole tree of the current version against the key table; then references and ids.
[[nodiscard]] std::vector<TreeError> checkDocument(const JsonNode& root);

[[nodiscard]] JsonNode encodeDocument(const Arrangement& arrangement);

/// Needs a tree without errors.
[[nodiscard]] Arrangement decodeDocument(const JsonNode& root, std::string_view source);

/// A step from one format version to the next, on the tree.
using MigrationStep = void (*)(JsonNode& root);

/// The steps of this program: the first leads from version 1 to 2. Version 1 is the only one so far.
[[nodiscard]] const std::vector<MigrationStep>& migrationSteps();

/// Applies the steps from `version` on and sets `format_version`.
void migrate(JsonNode& root, int version, const std::vector<MigrationStep>& steps);

/// True when the text is UTF-8 without forbidden sequences (RFC 3629).
[[nodiscard]] bool isUtf8(std::string_view text);

} // namespace shaftwright::format
