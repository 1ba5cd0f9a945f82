#pragma once
// What the file format allows, as data: read by the reader, the schema, its description and the addressable paths.

#include "core/document/json_positions.h"

#include <cstddef>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright
{

struct KeyField;
struct KeyAlternative;

/// Type of one value in the file.
struct KeyType {
    enum class Kind { number, integer, boolean, text, word, id, object, list, map, free_object };
    Kind kind = Kind::text;
    std::string name; ///< of an object type ("Support"); its definition in schema and description
    std::string unit; ///< of a number; empty: dimensionless
    double least = -std::numeric_limits<double>::infinity();
    double greatest = std::numeric_limits<double>::infinity();
    bool least_excluded = false;
    std::vector<std::string> words;           ///< of a word
    std::vector<KeyField> fields;             ///< of an object
    std::string discriminator;                ///< of an object with alternatives: the key whose word picks one
    std::vector<KeyAlternative> alternatives; ///< further fields by word
    std::vector<KeyType> element;             ///< of a list or map: exactly one
    std::size_t fixed_items = 0;              ///< of a list; 0: any number
    std::size_t least_items = 0;              ///< of a list

    /// The field of an object that is described by `fields` and, with this word, by an alternative.
    [[nodiscard]] const KeyField* find(std::string_view key, std::string_view word = {}) const;
    /// All fields that an object with this word may have, in file order.
    [[nodiscard]] std::vector<const KeyField*> allFields(std::string_view word = {}) const;
    /// True for a list whose elements carry an `id`.
    [[nodiscard]] bool isListById() const;
};

struct KeyField {
    std::string key;
    KeyType type;
    bool required = false;
    std::string default_json; ///< what a missing key stands for; empty: left open
    std::string meaning;
    std::string needs; ///< a key that must stand beside this one
};

struct KeyAlternative {
    std::string word;
    std::string meaning;
    std::vector<KeyField> fields;
};

/// The whole document of the current format version.
[[nodiscard]] const KeyType& documentType();

/// JSON Schema (draft 2020-12) of the current format version, as in resources/format.
[[nodiscard]] std::string schemaText();

/// Description of all keys as Markdown tables, as in resources/format.
[[nodiscard]] std::string keyDescription();

/// Names of an id: letters, digits, '-' and '_', 1 to 64 of them.
[[nodiscard]] bool isId(std::string_view text);

/// The candidate nearest to `text` by edit distance; empty when none is near (more than two fifths of the letters differ).
[[nodiscard]] std::string nearestWord(std::string_view text, const std::vector<std::string>& candidates);

} // namespace shaftwright
