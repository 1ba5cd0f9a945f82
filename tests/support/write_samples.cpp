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
    const std::pair<const char*, Arrangement (*)()> list[] = {
        {"gearbox-intermediate", samples::intermediateShaft},
        {"fan-overhung-belt", samples::fanShaft},
        {"bevel-pinion", samples::bevelPinion},
        {"worm-shaft", samples::wormShaft},
        {"saw-shaft-fails", samples::hastySawShaft},
        {"classroom-beam", samples::classroomShaft},
        {"tide-mill-reducer", samples::tideMill},
        {"worm-wheel-shaft", samples::wormWheelShaft},
        {"conveyor-three-supports", samples::conveyorHeadShaft},
        {"vertical-agitator", samples::verticalAgitator},
        {"line-shaft-forty-parts", samples::lineShaft},
        {"double-helical-pinion", samples::doubleHelicalPinion},
        {"idler-needle-bearings", samples::idlerShaft},
        {"milling-spindle", samples::millingSpindle},
        {"sluice-cross-shaft", samples::sluiceShaft},
        {"mixer-hollow-shaft", samples::mixerDrum},
        {"brick-press-screw", samples::extruderScrew},
        {"blower-pinion", samples::blowerPinion},
        {"stage-pump", samples::stagePump},
        {"crane-wheel", samples::craneWheel},
        {"knife-shaft", samples::knifeShaft},
        {"drill-spindle-upright", samples::drillHead},
        {"loom-drawn-cups", samples::loomShaft},
        {"winch-drum", samples::winchDrum},
    };
    for (const auto& [name, make] : list) {
        const std::string path = std::string(arguments[1]) + "/" + name + ".shaftwright";
        if (saveFile(path, writeArrangement(make()))) {
            std::cerr << path << " cannot be written\n";
            return 2;
        }
    }
    return 0;
}
