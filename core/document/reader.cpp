#include "core/document/document.h"

#include "core/document/document_tree.h"
#include "core/document/json_text.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shaftwright
{
namespace
{

/// The piece of text at fault as it can be shown: no control characters, at most 40 bytes.
std::string shownToken(std::string_view token)
{
    std::string out;
    for (const char c : token.substr(0, 40)) {
        if (static_cast<unsigned char>(c) >= 0x20u)
            out += c;
    }
    while (!out.empty() && !format::isUtf8(out))
        out.pop_back();
    return out;
}

class Errors
{
public:
    Errors(std::string_view text, std::string file) : m_lines(text), m_file(std::move(file)) {}

    void add(std::string code, std::size_t offset, std::string path, NamedValues values)
    {
        const TextPosition position = m_lines.at(offset);
        m_list.push_back({offset, {std::move(code), m_file, position.line, position.column, std::move(path), std::move(values)}});
    }

    [[nodiscard]] std::vector<ReadError> sorted()
    {
        std::stable_sort(m_list.begin(), m_list.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
        std::vector<ReadError> out;
        for (auto& [offset, error] : m_list)
            out.push_back(std::move(error));
        return out;
    }

private:
    LineTable m_lines;
    std::string m_file;
    std::vector<std::pair<std::size_t, ReadError>> m_list;
};

void addProblem(const JsonProblem& problem, Errors& errors)
{
    switch (problem.kind) {
    case JsonProblem::Kind::syntax:
        errors.add("file-not-json", problem.offset, "", {{"found", shownToken(problem.detail)}});
        break;
    case JsonProblem::Kind::truncated:
        errors.add("file-truncated", problem.offset, "", {});
        break;
    case JsonProblem::Kind::number_too_large:
        errors.add("file-range", problem.offset, "",
                   {{"value", shownToken(problem.detail)},
                    {"least", -std::numeric_limits<double>::max()},
                    {"greatest", std::numeric_limits<double>::max()},
                    {"unit", ""},
                    {"least_excluded", 0.0}});
        break;
    case JsonProblem::Kind::duplicate_key:
        errors.add("file-duplicate-key", problem.offset, "", {{"key", shownToken(problem.detail)}});
        break;
    case JsonProblem::Kind::too_deep:
        errors.add("file-too-large", problem.offset, "", {{"what", "depth"}, {"limit", static_cast<double>(greatestJsonDepth)}});
        break;
    case JsonProblem::Kind::too_many_values:
        errors.add("file-too-large", problem.offset, "",
                   {{"what", "values"}, {"limit", static_cast<double>(greatestJsonValues)}});
        break;
    case JsonProblem::Kind::too_long:
        errors.add("file-too-large", problem.offset, "", {{"what", "bytes"}, {"limit", static_cast<double>(greatestJsonBytes)}});
        break;
    }
}

} // namespace

ReadResult readArrangement(std::string_view text, std::string file_name)
{
    ReadResult result;
    Errors errors(text, std::move(file_name));
    JsonParse parse = parseJson(text);
    for (const JsonProblem& problem : parse.problems)
        addProblem(problem, errors);
    if (!parse.root) {
        result.errors = errors.sorted();
        return result;
    }
    JsonNode& root = *parse.root;

    const JsonNode* name = root.find("format");
    if (root.kind != JsonNode::Kind::object || name == nullptr || name->kind != JsonNode::Kind::text ||
        name->text != arrangementFormat) {
        errors.add("file-foreign", name == nullptr ? root.begin : name->begin, name == nullptr ? "" : "format",
                   {{"expected", arrangementFormat}, {"found", name == nullptr ? std::string() : shownToken(name->text)}});
        result.errors = errors.sorted();
        return result;
    }
    const JsonNode* version = root.find("format_version");
    if (version != nullptr && version->kind == JsonNode::Kind::number && version->number == std::floor(version->number)) {
        if (version->number > arrangementFormatVersion) {
            errors.add("file-newer", version->begin, "format_version",
                       {{"version_needed", version->number}, {"version_known", static_cast<double>(arrangementFormatVersion)}});
            result.errors = errors.sorted();
            return result;
        }
        if (version->number >= 1.0) {
            result.file_version = static_cast<int>(version->number);
            format::migrate(root, result.file_version, format::migrationSteps());
        }
    }

    for (format::TreeError& error : format::checkDocument(root))
        errors.add(std::move(error.code), error.offset, std::move(error.path), std::move(error.values));
    result.errors = errors.sorted();
    if (result.errors.empty())
        result.arrangement = format::decodeDocument(root, text);
    return result;
}

} // namespace shaftwright
