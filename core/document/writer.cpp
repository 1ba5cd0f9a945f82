#include "core/document/document.h"

#include "core/document/codec.h"
#include "core/document/document_tree.h"
#include "core/document/json_text.h"

#include <nettle/sha2.h>

#include <array>
#include <stdexcept>

namespace shaftwright
{
namespace
{

/// Raw text becomes a tree, so that it can be written in canonical form.
void expandRaw(JsonNode& node)
{
    if (node.kind == JsonNode::Kind::raw) {
        JsonParse parse = parseJson(node.text);
        if (!parse.root)
            throw std::domain_error("text inside the arrangement is no JSON");
        node = std::move(*parse.root);
        return;
    }
    for (JsonNode& item : node.items)
        expandRaw(item);
    for (JsonMember& member : node.members)
        expandRaw(member.value);
}

std::optional<Finding> firstFault(const JsonNode& root)
{
    const std::vector<format::TreeError> errors = format::checkDocument(root);
    if (errors.empty())
        return std::nullopt;
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = "value-invalid";
    finding.path = errors.front().path;
    finding.values = errors.front().values;
    finding.values.set("reader_code", errors.front().code);
    finding.variant = errors.front().code;
    return finding;
}

JsonNode checkedTree(const Arrangement& arrangement)
{
    JsonNode root = format::encodeDocument(arrangement);
    if (const std::optional<Finding> fault = firstFault(root))
        throw std::domain_error("the arrangement cannot be written: " + fault->path);
    return root;
}

} // namespace

std::optional<Finding> whyNotWritable(const Arrangement& arrangement)
{
    return firstFault(format::encodeDocument(arrangement));
}

std::string writeArrangement(const Arrangement& arrangement)
{
    return readableJson(checkedTree(arrangement));
}

std::string canonicalInputs(const Arrangement& arrangement)
{
    JsonNode root = checkedTree(arrangement);
    root.remove("remarks");
    root.remove("acceptances");
    root.remove("revisions");
    expandRaw(root);
    return canonicalJson(root);
}

std::string sha256Of(std::string_view bytes)
{
    sha256_ctx context;
    sha256_init(&context);
    sha256_update(&context, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
    std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
    sha256_digest(&context, digest.size(), digest.data());
    std::string out = "sha256:";
    static constexpr char hex[] = "0123456789abcdef";
    for (const std::uint8_t byte : digest) {
        out += hex[byte >> 4u];
        out += hex[byte & 0xFu];
    }
    return out;
}

std::string digestOf(const Arrangement& arrangement)
{
    return sha256Of(canonicalInputs(arrangement));
}

} // namespace shaftwright
