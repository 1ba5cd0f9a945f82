#pragma once
// The arrangement file: `*.shaftwright`, UTF-8 JSON. Keys are listed in resources/format.

#include "core/base/finding.h"
#include "core/base/result.h"
#include "core/catalogue/catalogue.h"
#include "core/model/arrangement.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright
{

inline constexpr const char* arrangementFormat = "shaftwright-arrangement";
inline constexpr int arrangementFormatVersion = 1;

/// Why a file cannot be used. Sentences: "reader.<code>.text" with `values`.
///
/// code                 values
/// file-unreadable      reason (not_found, no_permission, directory, io_error)
/// file-not-json        found (text at the place)
/// file-truncated       -
/// file-too-large       what (depth, values, bytes), limit
/// file-foreign         expected, found ("" when there is no `format`)
/// file-newer           version_needed, version_known
/// file-unknown-key     key, suggestion ("" when none is near)
/// file-duplicate-key   key
/// file-missing-key     key
/// file-type            expected (number, integer, boolean, text, word, id, object, list, any of words), found, words, suggestion
/// file-range           value, least, greatest, unit, least_excluded (0 or 1)
/// file-count           expected, found (number of entries of a list)
/// file-reference       id, expected (part, part_or_support)
/// file-duplicate-id    id
struct ReadError {
    std::string code;
    std::string file;
    int line = 0;     ///< from 1; 0: no place in the text
    int column = 0;   ///< from 1, in characters
    std::string path; ///< addressable form by ids, such as supports.B.x_mm; empty: the whole file
    NamedValues values;
    friend bool operator==(const ReadError&, const ReadError&) = default;
};

struct ReadResult {
    std::optional<Arrangement> arrangement; ///< none when there is any error
    std::vector<ReadError> errors;          ///< all of them, in the order of the text
    int file_version = 0;                   ///< format version that the text has; 0: not known
    [[nodiscard]] bool ok() const { return arrangement.has_value(); }
};

/// Reads a whole text; nothing is taken when anything is wrong.
/// @param file_name stands in the errors only
[[nodiscard]] ReadResult readArrangement(std::string_view text, std::string file_name);

/// The text of the file: stable order of keys, shortest exact decimals, line feed at the end.
/// The same arrangement always gives the same bytes.
/// Throws std::domain_error when the arrangement holds what no file can hold (see `whyNotWritable`).
[[nodiscard]] std::string writeArrangement(const Arrangement& arrangement);

/// What keeps an arrangement out of a file: a number that is not finite, text that is no UTF-8, a value beyond its hard
/// range, an id twice, `extra` that is no JSON. Finding `value-invalid` with path; none when it can be written.
[[nodiscard]] std::optional<Finding> whyNotWritable(const Arrangement& arrangement);

/// Canonical JSON (RFC 8785) of the inputs: without remarks, acceptances and revisions.
[[nodiscard]] std::string canonicalInputs(const Arrangement& arrangement);

/// "sha256:" and 64 hexadecimal digits over `canonicalInputs`.
[[nodiscard]] std::string digestOf(const Arrangement& arrangement);

/// "sha256:..." over name, version and every field of every row, as text in a fixed order.
[[nodiscard]] std::string digestOf(const Catalogue& catalogue);

/// "sha256:..." of any bytes.
[[nodiscard]] std::string sha256Of(std::string_view bytes);

// --- Files -----------------------------------------------------------------------------------------------------

/// The bytes of a file, or file-unreadable.
struct LoadedFile {
    std::optional<std::string> text;
    std::optional<ReadError> error;
};
[[nodiscard]] LoadedFile loadFile(const std::string& path);

/// Writes a file as a whole or not at all: a new file beside it, flushed to the disk, takes its name. Permissions stay,
/// a symbolic link is followed. A file that holds the same bytes already is left alone.
/// @return none when the file holds `text` now; else file-unwritable with reason (no_folder, no_permission, directory,
///         no_space, io_error)
[[nodiscard]] std::optional<ReadError> saveFile(const std::string& path, std::string_view text);

} // namespace shaftwright
