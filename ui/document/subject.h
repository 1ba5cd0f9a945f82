#pragma once
// What a subject path names. Paths are those of the display lists and of findings: "supports.B", "parts.G1",
// "shaft.segments.s3".

#include "core/model/arrangement.h"

#include <QString>

namespace shaftwright::ui
{

enum class SubjectKind { nothing, support, part, segment };

struct Subject {
    SubjectKind kind = SubjectKind::nothing;
    std::string id;
};

[[nodiscard]] inline Subject subjectOf(const QString& path)
{
    const auto rest = [&](const char* prefix) {
        QString id = path.mid(static_cast<qsizetype>(qstrlen(prefix)));
        const qsizetype dot = id.indexOf(QLatin1Char('.'));
        return (dot < 0 ? id : id.left(dot)).toStdString();
    };
    if (path.startsWith(QLatin1String("supports.")))
        return {SubjectKind::support, rest("supports.")};
    if (path.startsWith(QLatin1String("parts.")))
        return {SubjectKind::part, rest("parts.")};
    if (path.startsWith(QLatin1String("shaft.segments.")))
        return {SubjectKind::segment, rest("shaft.segments.")};
    return {};
}

[[nodiscard]] inline QString pathOf(const SupportId& id)
{
    return QStringLiteral("supports.") + QString::fromStdString(id.value);
}
[[nodiscard]] inline QString pathOf(const PartId& id)
{
    return QStringLiteral("parts.") + QString::fromStdString(id.value);
}
[[nodiscard]] inline QString pathOf(const SegmentId& id)
{
    return QStringLiteral("shaft.segments.") + QString::fromStdString(id.value);
}

} // namespace shaftwright::ui
