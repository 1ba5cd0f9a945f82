#pragma once
// One small adapter for each published check: inputs of the entry in, results by the names of its expected values out.

#include <nlohmann/json.hpp>

#include <map>
#include <string>

namespace reference
{

using Json = nlohmann::json;
using Results = std::map<std::string, double>;
using Adapter = Results (*)(const Json& inputs);
using Adapters = std::map<std::string, Adapter>;

const Adapters& gearAdapters();
const Adapters& beamAdapters();
const Adapters& lifeAdapters();
const Adapters& tableAdapters();
const Adapters& placeAdapters();

inline double num(const Json& object, const char* key)
{
    return object.at(key).get<double>();
}

} // namespace reference
