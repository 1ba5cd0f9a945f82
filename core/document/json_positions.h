#pragma once
// JSON text to a plain tree in which every value knows where it stands in the text.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright
{

struct JsonMember;

/// One JSON value. Members keep their order; `raw` exists in trees that are written only (text pasted as it is).
struct JsonNode {
    enum class Kind { null, boolean, number, text, array, object, raw };
    Kind kind = Kind::null;
    bool flag = false;
    double number = 0.0;
    std::string text; ///< of a text, or the raw JSON
    std::vector<JsonNode> items;
    std::vector<JsonMember> members;
    std::size_t begin = 0; ///< byte offset of the first character of the value
    std::size_t end = 0;   ///< byte offset behind its last character

    [[nodiscard]] const JsonNode* find(std::string_view key) const;
    [[nodiscard]] JsonNode* find(std::string_view key);
    /// Appends a member to an object.
    void add(std::string key, JsonNode value);
    void remove(std::string_view key);

    [[nodiscard]] static JsonNode ofNumber(double value);
    [[nodiscard]] static JsonNode ofText(std::string value);
    [[nodiscard]] static JsonNode ofFlag(bool value);
    [[nodiscard]] static JsonNode ofRaw(std::string value);
    [[nodiscard]] static JsonNode object();
    [[nodiscard]] static JsonNode array();
};

struct JsonMember {
    std::string key;
    JsonNode value;
    std::size_t key_begin = 0; ///< byte offset of the key's quotation mark
};

/// Line and column, both from 1; columns count characters (code points), not bytes.
struct TextPosition {
    int line = 1;
    int column = 1;
};

/// Finds lines in a text.
class LineTable
{
public:
    explicit LineTable(std::string_view text);
    [[nodiscard]] TextPosition at(std::size_t offset) const;

private:
    std::string_view m_text;
    std::vector<std::size_t> m_starts;
};

struct JsonProblem {
    enum class Kind { syntax, truncated, number_too_large, duplicate_key, too_deep, too_many_values, too_long };
    Kind kind = Kind::syntax;
    std::size_t offset = 0;
    std::string detail; ///< the piece of text at fault, the key that stands twice, or the limit
};

struct JsonParse {
    std::optional<JsonNode> root; ///< none when the text is no JSON; set beside duplicate keys
    std::vector<JsonProblem> problems;
};

inline constexpr std::size_t greatestJsonDepth = 64;
inline constexpr std::size_t greatestJsonValues = 1000000;
inline constexpr std::size_t greatestJsonBytes = 64u * 1024u * 1024u;

/// One pass over the text (RFC 8259). Of a duplicate key the first value is kept and a problem stands in the list.
[[nodiscard]] JsonParse parseJson(std::string_view text);

} // namespace shaftwright
