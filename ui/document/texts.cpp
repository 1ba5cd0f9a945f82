#include "ui/document/texts.h"

#include "core/drawing/labels.h"
#include "core/report/report.h"
#include "core/report/texts.h"
#include "ui/document/subject.h"
#include "ui/widgets/number_text.h"

namespace shaftwright::ui
{

namespace
{

QString words(const std::string& code)
{
    QString text = QString::fromStdString(code);
    text.replace(QLatin1Char('-'), QLatin1Char(' ')).replace(QLatin1Char('_'), QLatin1Char(' '));
    if (!text.isEmpty())
        text[0] = text[0].toUpper();
    return text;
}

/// "Fr_N" 1200 -> "Fr 1 200 N": the unit stands in the name.
QString valueWords(const std::string& name, const TextValue& value)
{
    const QString full = QString::fromStdString(name);
    if (const auto* word = std::get_if<std::string>(&value))
        return QString::fromStdString(*word);
    const qsizetype bar = full.lastIndexOf(QLatin1Char('_'));
    const QString unit = bar > 0 ? full.mid(bar + 1) : QString();
    QString label = bar > 0 ? full.left(bar) : full;
    label.replace(QLatin1Char('_'), QLatin1Char(' '));
    return label + QLatin1Char(' ') + number(std::get<double>(value)) + (unit.isEmpty() ? QString() : QLatin1Char(' ') + unit);
}

QString valueList(const NamedValues& values)
{
    QStringList list;
    for (const auto& [name, value] : values.entries)
        list << valueWords(name, value);
    return list.join(QStringLiteral(", "));
}

} // namespace

QString findingText(const Finding& finding)
{
    const Texts& texts = Texts::of(Language::english);
    const std::string key = "finding." + finding.code;
    if (texts.has(key + ".text") || (!finding.variant.empty() && texts.has(key + "." + finding.variant + ".text")))
        return QString::fromStdString(shaftwright::findingText(finding, texts));
    const QString values = valueList(finding.values);
    return values.isEmpty() ? words(finding.code) : words(finding.code) + QStringLiteral(": ") + values;
}

QString findingAdvice(const Finding& finding)
{
    const Texts& texts = Texts::of(Language::english);
    const std::string key = "finding." + finding.code;
    if (texts.has(key + ".advice") || (!finding.variant.empty() && texts.has(key + "." + finding.variant + ".advice")))
        return QString::fromStdString(shaftwright::findingAdvice(finding, texts));
    return {};
}

QString readErrorText(const ReadError& error)
{
    const Texts& texts = Texts::of(Language::english);
    const std::string key = "reader." + error.code + ".text";
    QString text = texts.has(key) ? QString::fromStdString(texts.fill(key, error.values, Typography::fine))
                                  : words(error.code) + QStringLiteral(": ") + valueList(error.values);
    if (error.line > 0)
        text += QObject::tr(" (line %1, column %2)").arg(error.line).arg(error.column);
    if (!error.path.empty())
        text += QStringLiteral(" [") + QString::fromStdString(error.path) + QLatin1Char(']');
    return text;
}

QString reasonText(const Reason& reason)
{
    const Texts& texts = Texts::of(Language::english);
    const std::string key = "reason." + reason.code;
    if (texts.has(key) || (!reason.variant.empty() && texts.has(key + "." + reason.variant)))
        return QString::fromStdString(shaftwright::reasonText(reason, texts));
    const QString values = valueList(reason.values);
    return words(reason.criterion) + (values.isEmpty() ? QString() : QStringLiteral(": ") + values);
}

QString requirementText(const RequirementResult& requirement, const QString& where)
{
    const Texts& texts = Texts::of(Language::english);
    const std::string key = "requirement." + requirement.kind;
    if (!texts.has(key))
        return words(requirement.kind);
    NamedValues values;
    if (!where.isEmpty())
        values.set("where", where.toStdString());
    return QString::fromStdString(texts.fill(key, values, Typography::fine));
}

QString derivationName(const DerivationStep& step)
{
    const Texts& texts = Texts::of(Language::english);
    return texts.has("derivation." + step.code) ? QString::fromStdString(shaftwright::derivationName(step, texts))
                                                : words(step.code);
}

QString quantityErrorText(const std::string& code, const std::string& detail)
{
    const QString piece = QString::fromStdString(detail);
    if (code == "empty")
        return QObject::tr("Needs a value");
    if (code == "unknown_unit")
        return QObject::tr("“%1” is no unit known here").arg(piece);
    if (code == "wrong_unit")
        return QObject::tr("“%1” measures something else").arg(piece);
    if (code == "unbalanced")
        return QObject::tr("A bracket is missing");
    if (code == "divide_by_zero")
        return QObject::tr("Divides by zero");
    if (code == "too_large")
        return QObject::tr("Too large a number");
    return piece.isEmpty() ? QObject::tr("Needs a number, such as 12.5 or 3*4") : QObject::tr("“%1” is not a number").arg(piece);
}

QString familyName(Family family)
{
    const std::string_view word = drawing::labels::family(family);
    return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

QString roleName(Role role)
{
    const std::string_view word = drawing::labels::role(role);
    return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

QString severityName(Severity severity)
{
    switch (severity) {
    case Severity::stop:
        return QObject::tr("Stop");
    case Severity::caution:
        return QObject::tr("Caution");
    case Severity::note:
        return QObject::tr("Note");
    }
    return {};
}

QString verdictName(Verdict verdict)
{
    switch (verdict) {
    case Verdict::suited:
        return QObject::tr("suited");
    case Verdict::with_care:
        return QObject::tr("with care");
    case Verdict::unsuited:
        return QObject::tr("unsuited");
    }
    return {};
}

QString severityMark(Severity severity)
{
    switch (severity) {
    case Severity::stop:
        return QStringLiteral("✕");
    case Severity::caution:
        return QStringLiteral("!");
    case Severity::note:
        return QStringLiteral("i");
    }
    return {};
}

QString verdictMark(Verdict verdict)
{
    switch (verdict) {
    case Verdict::suited:
        return QStringLiteral("✓");
    case Verdict::with_care:
        return QStringLiteral("~");
    case Verdict::unsuited:
        return QStringLiteral("✕");
    }
    return {};
}

QString kindName(const Part& part)
{
    struct Namer {
        QString operator()(const CylindricalGear& gear) const
        {
            if (gear.internal)
                return QObject::tr("Ring gear");
            if (gear.double_helical)
                return QObject::tr("Double-helical gear");
            return gear.helix_deg > 0.0 ? QObject::tr("Helical gear") : QObject::tr("Spur gear");
        }
        QString operator()(const BevelGear&) const { return QObject::tr("Bevel gear"); }
        QString operator()(const Worm&) const { return QObject::tr("Worm"); }
        QString operator()(const WormWheel&) const { return QObject::tr("Worm wheel"); }
        QString operator()(const BeltPulley&) const { return QObject::tr("Belt pulley"); }
        QString operator()(const ChainSprocket&) const { return QObject::tr("Sprocket"); }
        QString operator()(const Coupling&) const { return QObject::tr("Coupling"); }
        QString operator()(const Impeller&) const { return QObject::tr("Impeller"); }
        QString operator()(const WeightBody&) const { return QObject::tr("Weight"); }
        QString operator()(const PointLoad&) const { return QObject::tr("Free force"); }
        QString operator()(const DistributedLoad&) const { return QObject::tr("Line load"); }
    };
    return std::visit(Namer{}, part.body);
}

QString subjectName(const Arrangement& arrangement, const QString& subject)
{
    const Subject what = subjectOf(subject);
    switch (what.kind) {
    case SubjectKind::support:
        if (const Support* support = findSupport(arrangement, SupportId(what.id)))
            return QObject::tr("Support %1")
                .arg(QString::fromStdString(support->name.empty() ? support->id.value : support->name));
        break;
    case SubjectKind::part:
        if (const Part* part = findPart(arrangement, PartId(what.id)))
            return part->name.empty() ? kindName(*part) : QString::fromStdString(part->name);
        break;
    case SubjectKind::segment: {
        // By the id that tables and report have too; a number by place would change with every insertion.
        for (const Segment& segment : arrangement.shaft.segments) {
            if (segment.id.value == what.id)
                return QObject::tr("Segment %1").arg(QString::fromStdString(what.id));
        }
        break;
    }
    case SubjectKind::nothing:
        break;
    }
    return {};
}

QString subjectPath(const Arrangement& arrangement, const std::string& id)
{
    if (findSupport(arrangement, SupportId(id)) != nullptr)
        return pathOf(SupportId(id));
    if (findPart(arrangement, PartId(id)) != nullptr)
        return pathOf(PartId(id));
    if (findSegment(arrangement, SegmentId(id)) != nullptr)
        return pathOf(SegmentId(id));
    return {};
}

} // namespace shaftwright::ui
