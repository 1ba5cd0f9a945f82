#include "ui/document/bearing_text.h"

#include "core/catalogue/catalogue.h"
#include "core/catalogue/family_rows.h"

#include <QRegularExpression>

#include <algorithm>

namespace shaftwright::ui
{

namespace
{

Family familyOf(const CatalogueRow& row)
{
    return std::optional<Family>(naturalFamily(row)).value_or(Family::deep_groove_ball);
}

Result<CatalogueRow> rowOf(const QString& designation)
{
    const CatalogueRow* row = genericCatalogue().find(designation.toStdString());
    if (row == nullptr)
        row = genericCatalogue().find(designation.toUpper().toStdString());
    if (row != nullptr)
        return *row;
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = "bearing-unknown";
    finding.values.set("designation", designation.toStdString());
    return finding;
}

} // namespace

bool canBeSet(const BearingChoice& choice)
{
    if (choice.rows.empty())
        return false;
    const CatalogueRow& row = choice.rows.front().row;
    const bool alike =
        std::all_of(choice.rows.begin(), choice.rows.end(), [&](const SetRow& set_row) { return set_row.row == row; });
    return alike &&
           (row.geometry_class == GeometryClass::angular_contact_ball || row.geometry_class == GeometryClass::tapered_roller);
}

BearingChoice mountedAs(const BearingChoice& choice, SetArrangement arrangement)
{
    BearingChoice next;
    if (choice.rows.empty())
        return choice;
    const CatalogueRow& row = choice.rows.front().row;
    const bool tapered = row.geometry_class == GeometryClass::tapered_roller;
    next.rows.push_back({row, std::nullopt});
    next.arrangement = arrangement;
    if (arrangement == SetArrangement::none) {
        next.family = familyOf(row);
        return next;
    }
    next.rows.push_back({row, std::nullopt});
    if (tapered)
        next.family = Family::tapered_roller_pair;
    else if (arrangement == SetArrangement::tandem)
        next.family = Family::angular_contact_set_tandem;
    else if (arrangement == SetArrangement::X)
        next.family = Family::angular_contact_set_X;
    else
        next.family =
            familyOf(row) == Family::angular_contact_ball_25 ? Family::precision_set_O_25 : Family::angular_contact_set_O;
    return next;
}

Result<BearingChoice> bearingFromText(const QString& text)
{
    QString wanted = text;
    wanted.remove(QRegularExpression(QStringLiteral("[\\s\\x{2009}\\x{202F}]")));
    static const QRegularExpression set(QStringLiteral("^2[x×*](.+?)([OXT])$"), QRegularExpression::CaseInsensitiveOption);
    if (const auto match = set.match(wanted); match.hasMatch()) {
        const Result<CatalogueRow> row = rowOf(match.captured(1));
        if (!row.ok())
            return row.finding();
        const QString letter = match.captured(2).toUpper();
        BearingChoice one;
        one.rows.push_back({row.value(), std::nullopt});
        if (!canBeSet(one)) {
            Finding finding;
            finding.severity = Severity::stop;
            finding.code = "bearing-unknown";
            finding.values.set("designation", wanted.toStdString());
            return finding;
        }
        return mountedAs(one, letter == QLatin1String("O")   ? SetArrangement::O
                              : letter == QLatin1String("X") ? SetArrangement::X
                                                             : SetArrangement::tandem);
    }
    BearingChoice choice;
    for (const QString& piece : wanted.split(QLatin1Char('+'))) {
        const Result<CatalogueRow> row = rowOf(piece);
        if (!row.ok())
            return row.finding();
        choice.rows.push_back({row.value(), std::nullopt});
    }
    choice.family = familyOf(choice.rows.front().row);
    if (choice.rows.size() == 2 && choice.rows[1].row.geometry_class == GeometryClass::four_point_contact_ball)
        choice.family = Family::composite_NU_four_point;
    return choice;
}

} // namespace shaftwright::ui
