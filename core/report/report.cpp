#include "core/report/report.h"

#include "core/report/report_builder.h"
#include "core/report/writers.h"

namespace shaftwright
{

std::string textReport(const Arrangement& arrangement, const Assessment& assessment, const Catalogues& catalogues,
                       const ReportOptions& options)
{
    return report::writeText(report::buildReport(arrangement, assessment, catalogues, options, false, false), options.width);
}

std::string htmlReport(const Arrangement& arrangement, const Assessment& assessment, const Catalogues& catalogues,
                       const ReportOptions& options)
{
    ReportOptions fine = options;
    fine.typography = Typography::fine;
    return report::writeHtml(report::buildReport(arrangement, assessment, catalogues, fine, options.pictures, true));
}

std::string textBearing(const BearingAssessment& bearing, const Findings& findings, const ReportOptions& options)
{
    return report::writeText(report::buildBearing(bearing, findings, options), options.width);
}

std::string htmlBearing(const BearingAssessment& bearing, const Findings& findings, const ReportOptions& options)
{
    ReportOptions fine = options;
    fine.typography = Typography::fine;
    return report::writeHtml(report::buildBearing(bearing, findings, fine));
}

} // namespace shaftwright
