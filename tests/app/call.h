#pragma once
// Runs the command line with stated streams and keeps what came out; a folder that vanishes; the sample that most tests read.

#include "app/command_line/run.h"
#include "core/document/document.h"
#include "core/document/json_positions.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

namespace shaftwright::test
{

struct Outcome {
    int code = -1;
    std::string out, err;
};

inline Outcome call(const std::vector<std::string>& arguments, const std::string& in = {},
                    const command_line::Renderer& renderer = {})
{
    std::istringstream input(in);
    std::ostringstream out, err;
    Outcome outcome;
    outcome.code = command_line::run(arguments, command_line::Streams{input, out, err, false}, renderer);
    outcome.out = out.str();
    outcome.err = err.str();
    return outcome;
}

/// A folder of its own, removed with everything in it.
class Folder
{
public:
    Folder()
    {
        std::string name = (std::filesystem::temp_directory_path() / "shaftwright-test-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr)
            throw std::runtime_error("no folder for the test");
        m_path = name;
    }
    ~Folder()
    {
        std::error_code ignored;
        std::filesystem::remove_all(m_path, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    [[nodiscard]] std::string operator/(const std::string& name) const { return (m_path / name).string(); }
    std::string write(const std::string& name, const std::string& text) const
    {
        std::ofstream(m_path / name, std::ios::binary) << text;
        return *this / name;
    }
    [[nodiscard]] std::size_t count() const
    {
        return static_cast<std::size_t>(
            std::distance(std::filesystem::directory_iterator(m_path), std::filesystem::directory_iterator()));
    }

private:
    std::filesystem::path m_path;
};

inline std::string textOf(const std::string& file)
{
    std::ifstream stream(file, std::ios::binary);
    return std::string(std::istreambuf_iterator<char>(stream), {});
}

inline const std::string& gearbox()
{
    static const std::string file = std::string(SHAFTWRIGHT_SOURCE_DIR) + "/samples/gearbox-intermediate.shaftwright";
    return file;
}

inline bool has(const std::string& text, const std::string& piece)
{
    return text.find(piece) != std::string::npos;
}

inline std::vector<std::string> linesOf(const std::string& text)
{
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

inline JsonNode json(const std::string& text)
{
    JsonParse parse = parseJson(text);
    INFO(text.substr(0, 400));
    REQUIRE(parse.problems.empty());
    REQUIRE(parse.root);
    return std::move(*parse.root);
}

} // namespace shaftwright::test
