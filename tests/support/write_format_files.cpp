// Writes what is derived from the list of keys: the schema and the tables of the description. Run after the list changed:
//   write_format_files <folder resources/format/v1>
// The text of README.md above the first table is kept.

#include "core/document/document.h"
#include "core/document/key_table.h"

#include <iostream>

using namespace shaftwright;

int main(int count, char** arguments)
{
    if (count != 2) {
        std::cerr << "usage: write_format_files FOLDER\n";
        return 2;
    }
    const std::string folder = arguments[1];
    const LoadedFile readme = loadFile(folder + "/README.md");
    if (!readme.text) {
        std::cerr << folder << "/README.md cannot be read\n";
        return 2;
    }
    const std::string head = readme.text->substr(0, readme.text->find("\n## Document\n"));
    for (const auto& [name, text] : {std::pair<std::string, std::string>{"/README.md", head + keyDescription()},
                                     {"/arrangement.schema.json", schemaText()}}) {
        if (saveFile(folder + name, text)) {
            std::cerr << folder << name << " cannot be written\n";
            return 2;
        }
    }
    return 0;
}
