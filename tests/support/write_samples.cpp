// Writes the samples, so that their catalogue rows are those of the generic catalogue:
//   write_samples <folder samples>
// The plants in them are invented.

#include "core/document/document.h"
#include "tests/support/sample_helpers.h"

#include <iostream>

using namespace shaftwright;

int main(int count, char** arguments)
{
    if (count != 2) {
        std::cerr << "usage: write_samples FOLDER\n";
        return 2;
    }
    for (const auto& [name, make] : samples::all()) {
        const std::string path = std::string(arguments[1]) + "/" + name + ".shaftwright";
        if (saveFile(path, writeArrangement(make()))) {
            std::cerr << path << " cannot be written\n";
            return 2;
        }
    }
    return 0;
}
