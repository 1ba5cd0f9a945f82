// The samples by the names of their files.

#include "tests/support/sample_helpers.h"

namespace shaftwright::samples
{

const std::vector<NamedSample>& all()
{
    static const std::vector<NamedSample> list = {
        {"gearbox-intermediate", intermediateShaft},
        {"fan-overhung-belt", fanShaft},
        {"bevel-pinion", bevelPinion},
        {"worm-shaft", wormShaft},
        {"saw-shaft-fails", hastySawShaft},
        {"classroom-beam", classroomShaft},
        {"tide-mill-reducer", tideMill},
        {"worm-wheel-shaft", wormWheelShaft},
        {"conveyor-three-supports", conveyorHeadShaft},
        {"vertical-agitator", verticalAgitator},
        {"line-shaft-forty-parts", lineShaft},
        {"double-helical-pinion", doubleHelicalPinion},
        {"idler-needle-bearings", idlerShaft},
        {"milling-spindle", millingSpindle},
        {"sluice-cross-shaft", sluiceShaft},
        {"mixer-hollow-shaft", mixerDrum},
        {"brick-press-screw", extruderScrew},
        {"blower-pinion", blowerPinion},
        {"stage-pump", stagePump},
        {"crane-wheel", craneWheel},
        {"knife-shaft", knifeShaft},
        {"drill-spindle-upright", drillHead},
        {"loom-drawn-cups", loomShaft},
        {"winch-drum", winchDrum},
    };
    return list;
}

} // namespace shaftwright::samples
