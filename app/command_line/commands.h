#pragma once
// What each command does once its words are understood.

#include "app/command_line/arrangement_input.h"
#include "app/command_line/output.h"
#include "app/command_line/run.h"
#include "core/report/report.h"

namespace shaftwright::command_line {

struct ReportRequest {
    std::string file;
    InputOptions input;
    OutputOptions output;
    std::string language = "en";
    std::vector<std::string> without; ///< "curves", "pictures"
};
[[nodiscard]] int report(const ReportRequest& request, Streams& streams);

struct CheckRequest {
    std::vector<std::string> files;
    InputOptions input;
    OutputOptions output;
    bool strict = false;
};
[[nodiscard]] int check(const CheckRequest& request, Streams& streams);

struct LifeRequest {
    std::string family, designation;
    std::optional<double> radial_N, axial_N, speed_rpm;
    std::vector<std::string> cases; ///< "FR,FA,N,SHARE"
    std::optional<double> required_h, reliability_percent, required_S0;
    // A typed bearing.
    std::optional<double> bore_mm, outer_mm, width_mm, C_N, C0_N, Cu_N, f0, angle_deg, e, X, Y, Y0;
    std::string source;
    OutputOptions output;
    std::string language = "en";
};
[[nodiscard]] int life(const LifeRequest& request, Streams& streams);

[[nodiscard]] int schema(const OutputOptions& output, Streams& streams);

struct PathsRequest {
    std::string file;
    InputOptions input;
    OutputOptions output;
};
[[nodiscard]] int paths(const PathsRequest& request, Streams& streams);

struct NormaliseRequest {
    std::string file;
    InputOptions input;
    OutputOptions output;
    bool in_place = false;
};
[[nodiscard]] int normalise(const NormaliseRequest& request, Streams& streams);

struct DrawRequest {
    std::string file;
    InputOptions input;
    OutputOptions output;
    bool dark = false;
    double pixels_per_mm = 6.0;
};
[[nodiscard]] int draw(const DrawRequest& request, Streams& streams, const Renderer& renderer);

/// en or de; another word is told on the error stream.
[[nodiscard]] bool knownLanguage(const std::string& language, Streams& streams);
/// Language, typography (fine only on a terminal) and version of a report.
[[nodiscard]] ReportOptions reportOptions(const std::string& language, const OutputOptions& output, const Streams& streams);

/// Catalogues of every command.
[[nodiscard]] Catalogues catalogues();

} // namespace shaftwright::command_line
