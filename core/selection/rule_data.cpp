#include "core/selection/rule_data.h"

#include "core/base/embedded.h"
#include "core/units/number_text.h"

#include <cstdlib>
#include <iterator>
#include <limits>

namespace shaftwright::selection
{
namespace
{

constexpr double unstated = std::numeric_limits<double>::quiet_NaN();

using Cells = std::vector<std::string>;

/// One record of RFC 4180: fields in quotes may hold commas; a doubled quote stands for one.
std::optional<Cells> splitRecord(std::string_view line)
{
    Cells cells(1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char c = line[i];
        if (quoted) {
            if (c != '"')
                cells.back() += c;
            else if (i + 1 < line.size() && line[i + 1] == '"')
                cells.back() += line[++i];
            else
                quoted = false;
        } else if (c == '"' && cells.back().empty()) {
            quoted = true;
        } else if (c == ',') {
            cells.emplace_back();
        } else {
            cells.back() += c;
        }
    }
    if (quoted)
        return std::nullopt;
    return cells;
}

/// Reads one table and keeps the first complaint; after a complaint every read gives a harmless value.
class Table
{
public:
    Table(std::string_view file, std::string_view text, Cells columns) : m_file(file), m_columns(std::move(columns))
    {
        int line = 0;
        while (!text.empty()) {
            const std::size_t end = text.find('\n');
            std::string_view record = text.substr(0, end);
            text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
            ++line;
            if (!record.empty() && record.back() == '\r')
                record.remove_suffix(1);
            const auto cells = splitRecord(record);
            if (!cells) {
                complain(line, "", "open quote");
                return;
            }
            if (line == 1) {
                if (*cells != m_columns)
                    complain(1, "", "columns differ from the expected ones");
                continue;
            }
            if (record.empty())
                continue;
            if (cells->size() != m_columns.size()) {
                complain(line, "", "number of cells differs from the header");
                return;
            }
            m_rows.push_back(*cells);
            m_lines.push_back(line);
        }
        if (line == 0)
            complain(0, "", "empty file");
    }

    [[nodiscard]] std::size_t size() const { return m_rows.size(); }
    [[nodiscard]] const std::optional<Finding>& complaint() const { return m_complaint; }

    const std::string& word(std::size_t row, std::string_view column)
    {
        const std::string& cell = m_rows[row][index(column)];
        if (cell.empty())
            complain(m_lines[row], column, "empty cell");
        return cell;
    }
    double number(std::size_t row, std::string_view column, bool may_be_absent = false)
    {
        const std::string& cell = word(row, column);
        if (may_be_absent && cell == "-")
            return unstated;
        if (may_be_absent && cell == "inf")
            return std::numeric_limits<double>::infinity();
        const auto value = parseDecimal(cell);
        if (!value)
            complain(m_lines[row], column, "not a number: " + cell);
        return value.value_or(0.0);
    }
    bool flag(std::size_t row, std::string_view column)
    {
        const std::string& cell = word(row, column);
        if (cell != "0" && cell != "1")
            complain(m_lines[row], column, "neither 0 nor 1: " + cell);
        return cell == "1";
    }
    template <class Enum, std::size_t N>
    Enum choice(std::size_t row, std::string_view column, const std::array<std::string_view, N>& words)
    {
        const std::string& cell = word(row, column);
        for (std::size_t i = 0; i < N; ++i) {
            if (words[i] == cell)
                return static_cast<Enum>(i);
        }
        complain(m_lines[row], column, "unknown word: " + cell);
        return static_cast<Enum>(0);
    }
    /// Every row names its source and a known provenance.
    void checkSource(std::size_t row)
    {
        static_cast<void>(word(row, "source"));
        if (!provenanceFromString(word(row, "provenance")))
            complain(m_lines[row], "provenance", "unknown word: " + m_rows[row][index("provenance")]);
    }
    void complain(std::size_t row_index, std::string_view column, const std::string& what, bool)
    {
        complain(row_index < m_lines.size() ? m_lines[row_index] : 0, column, what);
    }

private:
    std::size_t index(std::string_view column) const
    {
        for (std::size_t i = 0; i < m_columns.size(); ++i) {
            if (m_columns[i] == column)
                return i;
        }
        std::abort(); // our own spelling
    }
    void complain(int line, std::string_view column, const std::string& what)
    {
        if (m_complaint)
            return;
        Finding finding;
        finding.severity = Severity::stop;
        finding.code = "value-invalid";
        finding.path = std::string(m_file) + ":" + std::to_string(line);
        finding.values = {{"column", std::string(column)}, {"problem", what}};
        m_complaint = finding;
    }

    std::string_view m_file;
    Cells m_columns;
    std::vector<Cells> m_rows;
    std::vector<int> m_lines;
    std::optional<Finding> m_complaint;
};

constexpr std::array<std::string_view, 5> kindWords = {"rolling", "plain", "magnetic", "linear", "composite"};
constexpr std::array<std::string_view, 4> arrangementWords = {"-", "O", "X", "tandem"};
constexpr std::array<std::string_view, 3> axialWords = {"none", "one_way", "both_ways"};
constexpr std::array<std::string_view, 3> compensationWords = {"none", "seat", "inside"};
constexpr std::array<std::string_view, 3> adjustedWords = {"no", "partner", "set"};
constexpr std::array<std::string_view, 3> endPlayWords = {"no", "spare", "yes"};
constexpr std::array<std::string_view, 3> springWords = {"0", "1", "set"};
constexpr std::array<std::string_view, 3> elementWords = {"-", "ball", "roller"};
constexpr std::array<std::string_view, 4> availabilityWords = {"-", "A", "B", "C"};

const Cells familyColumns = {"family",
                             "kind",
                             "geometry",
                             "contact_angle_deg",
                             "count",
                             "arrangement",
                             "element",
                             "radial",
                             "axial",
                             "share_low",
                             "share_high",
                             "share_hard_low",
                             "share_hard_high",
                             "tilt_good_mrad",
                             "tilt_permissible_mrad",
                             "tilt_hard_mrad",
                             "ndm_grease",
                             "ndm_oil",
                             "friction",
                             "stiffness_radial",
                             "stiffness_axial",
                             "compensation",
                             "inside_share",
                             "separable",
                             "adjusted",
                             "end_play",
                             "own_play",
                             "raceway_on_shaft",
                             "accuracy",
                             "noise",
                             "dirt",
                             "seal",
                             "mounting",
                             "cost_ratio",
                             "availability",
                             "spring_preloaded",
                             "source",
                             "provenance"};

std::optional<Finding> readFamilies(std::string_view text, RuleData& data)
{
    Table table("selection/families.csv", text, familyColumns);
    if (table.complaint())
        return table.complaint();
    if (table.size() != data.families.size())
        table.complain(0, "family", "one row for each family is expected", true);
    for (std::size_t i = 0; i < table.size() && !table.complaint(); ++i) {
        const auto family = familyFromString(table.word(i, "family"));
        if (!family || static_cast<std::size_t>(*family) != i) {
            table.complain(i, "family", "unknown, doubled or out of order: " + table.word(i, "family"), true);
            break;
        }
        FamilyTraits& traits = data.families[i];
        traits.family = *family;
        traits.kind = table.choice<Kind>(i, "kind", kindWords);
        if (const std::string& geometry = table.word(i, "geometry"); geometry != "-") {
            traits.geometry = geometryClassFromString(geometry);
            if (!traits.geometry)
                table.complain(i, "geometry", "unknown word: " + geometry, true);
        }
        if (table.word(i, "contact_angle_deg") != "-")
            traits.contact_angle_deg = table.number(i, "contact_angle_deg");
        traits.count = static_cast<int>(table.number(i, "count"));
        if (traits.count < 1 || traits.count > 3)
            table.complain(i, "count", "1 to 3 is expected", true);
        traits.arrangement = table.choice<SetArrangement>(i, "arrangement", arrangementWords);
        traits.roller = table.choice<int>(i, "element", elementWords) == 2;
        traits.radial = table.flag(i, "radial");
        traits.axial = table.choice<AxialSense>(i, "axial", axialWords);
        traits.share_low = table.number(i, "share_low", true);
        traits.share_high = table.number(i, "share_high", true);
        traits.share_hard_low = table.number(i, "share_hard_low", true);
        traits.share_hard_high = table.number(i, "share_hard_high", true);
        traits.tilt_good = table.number(i, "tilt_good_mrad", true);
        traits.tilt_permissible = table.number(i, "tilt_permissible_mrad", true);
        traits.tilt_hard = table.number(i, "tilt_hard_mrad", true);
        traits.ndm_grease = table.number(i, "ndm_grease", true);
        traits.ndm_oil = table.number(i, "ndm_oil", true);
        traits.friction = table.number(i, "friction", true);
        traits.stiffness_radial = table.number(i, "stiffness_radial", true);
        traits.stiffness_axial = table.number(i, "stiffness_axial", true);
        traits.compensation = table.choice<Compensation>(i, "compensation", compensationWords);
        traits.inside_share = table.number(i, "inside_share", true);
        traits.separable = table.flag(i, "separable");
        traits.adjusted = table.choice<Adjusting>(i, "adjusted", adjustedWords);
        traits.end_play = table.choice<EndPlay>(i, "end_play", endPlayWords);
        traits.own_play = table.flag(i, "own_play");
        traits.raceway_on_shaft = table.flag(i, "raceway_on_shaft");
        traits.accuracy = table.number(i, "accuracy", true);
        traits.noise = table.number(i, "noise", true);
        traits.dirt = table.number(i, "dirt", true);
        traits.seal = table.number(i, "seal", true);
        traits.mounting = table.number(i, "mounting", true);
        traits.cost_ratio = table.number(i, "cost_ratio", true);
        traits.availability = "-ABC"[table.choice<int>(i, "availability", availabilityWords)];
        traits.spring = table.choice<SpringPreload>(i, "spring_preloaded", springWords);
        traits.source = table.word(i, "source");
        table.checkSource(i);
    }
    return table.complaint();
}

std::optional<Finding> readBushes(std::string_view text, RuleData& data)
{
    Table table("selection/bush_limits.csv", text,
                {"family", "p_slow_MPa", "v_slow_m_s", "p_MPa", "v_max_m_s", "pv_max_MPa_m_s", "temperature_max_C", "source",
                 "provenance"});
    if (table.complaint())
        return table.complaint();
    for (std::size_t i = 0; i < table.size() && !table.complaint(); ++i) {
        BushLimits bush;
        const auto family = familyFromString(table.word(i, "family"));
        if (!family || data.of(*family).kind != Kind::plain || data.bush(*family) != nullptr) {
            table.complain(i, "family", "no plain bearing, or doubled: " + table.word(i, "family"), true);
            break;
        }
        bush.family = *family;
        bush.p_slow_MPa = table.number(i, "p_slow_MPa");
        bush.v_slow_m_s = table.number(i, "v_slow_m_s");
        bush.p_MPa = table.number(i, "p_MPa");
        bush.v_max_m_s = table.number(i, "v_max_m_s");
        bush.pv_max = table.number(i, "pv_max_MPa_m_s", true);
        bush.temperature_max_C = table.number(i, "temperature_max_C");
        bush.source = table.word(i, "source");
        table.checkSource(i);
        data.bushes.push_back(bush);
    }
    for (const FamilyTraits& traits : data.families) {
        if (traits.kind == Kind::plain && data.bush(traits.family) == nullptr)
            table.complain(0, "family", "no row for " + std::string(toString(traits.family)), true);
    }
    return table.complaint();
}

std::optional<Finding> readSeries(std::string_view text, RuleData& data)
{
    Table table("selection/series.csv", text,
                {"geometry", "series", "order", "thin", "shallow", "heavy", "ribs", "sets", "source", "provenance"});
    if (table.complaint())
        return table.complaint();
    for (std::size_t i = 0; i < table.size() && !table.complaint(); ++i) {
        SeriesTraits series;
        const auto geometry = geometryClassFromString(table.word(i, "geometry"));
        series.series = table.word(i, "series");
        if (!geometry || data.seriesOf(*geometry, series.series) != nullptr) {
            table.complain(i, "series", "unknown class, or doubled: " + series.series, true);
            break;
        }
        series.geometry = *geometry;
        series.order = static_cast<int>(table.number(i, "order"));
        series.thin = table.flag(i, "thin");
        series.shallow = table.flag(i, "shallow");
        series.heavy = table.flag(i, "heavy");
        series.ribs = table.flag(i, "ribs");
        series.sets = table.flag(i, "sets");
        series.source = table.word(i, "source");
        table.checkSource(i);
        data.series.push_back(series);
    }
    return table.complaint();
}

std::optional<Finding> readProfiles(std::string_view text, RuleData& data)
{
    Cells columns = {"profile"};
    for (const std::string_view name : criterionNames)
        columns.emplace_back(name);
    columns.emplace_back("source");
    columns.emplace_back("provenance");
    Table table("selection/weights.csv", text, columns);
    if (table.complaint())
        return table.complaint();
    for (std::size_t i = 0; i < table.size() && !table.complaint(); ++i) {
        Profile profile;
        profile.name = table.word(i, "profile");
        for (const Profile& other : data.profiles) {
            if (other.name == profile.name)
                table.complain(i, "profile", "doubled: " + profile.name, true);
        }
        for (std::size_t c = 0; c < criterionNames.size(); ++c) {
            profile.weight[c] = table.number(i, criterionNames[c]);
            if (profile.weight[c] < 0.0)
                table.complain(i, criterionNames[c], "negative weight", true);
        }
        table.checkSource(i);
        data.profiles.push_back(profile);
    }
    if (data.profiles.empty())
        table.complain(0, "profile", "no profile", true);
    return table.complaint();
}

struct NumberField {
    std::string_view name;
    double RuleNumbers::*field;
};
#define NUMBER_FIELD(name)                                                                                                       \
    NumberField                                                                                                                  \
    {                                                                                                                            \
#name, &RuleNumbers::name                                                                                                \
    }
constexpr NumberField numberFields[] = {NUMBER_FIELD(radial_share_of_axial_bearing),
                                        NUMBER_FIELD(axial_share_of_free_bearing),
                                        NUMBER_FIELD(adjusted_deep_groove_share),
                                        NUMBER_FIELD(inside_hard_factor),
                                        NUMBER_FIELD(inside_chamfer_factor),
                                        NUMBER_FIELD(inside_element_share),
                                        NUMBER_FIELD(deep_groove_C0_share),
                                        NUMBER_FIELD(deep_groove_C0_share_small),
                                        NUMBER_FIELD(deep_groove_small_bore_mm),
                                        NUMBER_FIELD(deep_groove_pure_axial_C0_share),
                                        NUMBER_FIELD(tapered_share_per_tangent),
                                        NUMBER_FIELD(hardness_needed_HRC),
                                        NUMBER_FIELD(hardness_least_HRC),
                                        NUMBER_FIELD(accuracy_class_least),
                                        NUMBER_FIELD(accuracy_class_full),
                                        NUMBER_FIELD(temperature_hard_C),
                                        NUMBER_FIELD(temperature_caution_C),
                                        NUMBER_FIELD(film_speed_least_m_s),
                                        NUMBER_FIELD(life_near_share),
                                        NUMBER_FIELD(static_near_share),
                                        NUMBER_FIELD(speed_hard_ratio),
                                        NUMBER_FIELD(speed_load_free),
                                        NUMBER_FIELD(speed_load_mid),
                                        NUMBER_FIELD(speed_load_mid_factor),
                                        NUMBER_FIELD(speed_load_high),
                                        NUMBER_FIELD(speed_load_high_factor),
                                        NUMBER_FIELD(least_load_ndm),
                                        NUMBER_FIELD(least_load_time_share),
                                        NUMBER_FIELD(pv_caution_share),
                                        NUMBER_FIELD(swing_least_deg),
                                        NUMBER_FIELD(load_valid_share),
                                        NUMBER_FIELD(seal_poor),
                                        NUMBER_FIELD(weak_utility),
                                        NUMBER_FIELD(low_score),
                                        NUMBER_FIELD(equal_score),
                                        NUMBER_FIELD(generous_life),
                                        NUMBER_FIELD(good_life_utility),
                                        NUMBER_FIELD(static_high_load_shock_K_A),
                                        NUMBER_FIELD(thrust_composite_share),
                                        NUMBER_FIELD(thrust_composite_reverse_share),
                                        NUMBER_FIELD(weibull_slope_mixed),
                                        NUMBER_FIELD(rating_spread),
                                        NUMBER_FIELD(spring_low_N_per_mm),
                                        NUMBER_FIELD(spring_high_N_per_mm),
                                        NUMBER_FIELD(bush_outer_factor),
                                        NUMBER_FIELD(bush_outer_plus_mm),
                                        NUMBER_FIELD(quiet_noise_least)};
#undef NUMBER_FIELD
static_assert(sizeof(RuleNumbers) == std::size(numberFields) * sizeof(double), "a rule number without a row");

std::optional<Finding> readNumbers(std::string_view text, RuleData& data)
{
    Table table("selection/rules.csv", text, {"rule", "value", "unit", "source", "provenance"});
    if (table.complaint())
        return table.complaint();
    std::array<bool, std::size(numberFields)> seen{};
    for (std::size_t i = 0; i < table.size() && !table.complaint(); ++i) {
        const std::string& name = table.word(i, "rule");
        std::size_t at = 0;
        while (at < std::size(numberFields) && numberFields[at].name != name)
            ++at;
        if (at == std::size(numberFields) || seen[at]) {
            table.complain(i, "rule", "unknown or doubled: " + name, true);
            break;
        }
        seen[at] = true;
        data.numbers.*numberFields[at].field = table.number(i, "value");
        static_cast<void>(table.word(i, "unit"));
        table.checkSource(i);
    }
    for (std::size_t at = 0; at < seen.size(); ++at) {
        if (!seen[at])
            table.complain(0, "rule", "missing: " + std::string(numberFields[at].name), true);
    }
    return table.complaint();
}

} // namespace

const BushLimits* RuleData::bush(Family family) const
{
    for (const BushLimits& limits : bushes) {
        if (limits.family == family)
            return &limits;
    }
    return nullptr;
}

const SeriesTraits* RuleData::seriesOf(GeometryClass geometry, std::string_view name) const
{
    // Cylindrical roller bearings of one dimension series differ by their ribs only: NU2, NJ2, NUP2, N2.
    const bool digitsOnly = geometry == GeometryClass::cylindrical_roller;
    const auto key = [digitsOnly](std::string_view text) {
        const std::size_t first = digitsOnly ? text.find_first_of("0123456789") : 0;
        return first == std::string_view::npos ? text : text.substr(first);
    };
    for (const SeriesTraits& traits : series) {
        if (traits.geometry == geometry && key(traits.series) == key(name))
            return &traits;
    }
    return nullptr;
}

const Profile& RuleData::profile(std::string_view name) const
{
    for (const Profile& candidate : profiles) {
        if (candidate.name == name)
            return candidate;
    }
    return profiles.front();
}

Result<RuleData> parseRuleData(const RuleTexts& texts)
{
    RuleData data;
    if (auto finding = readFamilies(texts.families, data))
        return *finding;
    if (auto finding = readBushes(texts.bush_limits, data))
        return *finding;
    if (auto finding = readSeries(texts.series, data))
        return *finding;
    if (auto finding = readProfiles(texts.weights, data))
        return *finding;
    if (auto finding = readNumbers(texts.rules, data))
        return *finding;
    return data;
}

RuleTexts builtInRuleTexts()
{
    return {embeddedResource("selection/families.csv"), embeddedResource("selection/bush_limits.csv"),
            embeddedResource("selection/rules.csv"), embeddedResource("selection/series.csv"),
            embeddedResource("selection/weights.csv")};
}

const RuleData& ruleData()
{
    static const RuleData data = [] {
        Result<RuleData> parsed = parseRuleData(builtInRuleTexts());
        if (!parsed)
            std::abort(); // the built-in files are held by a test
        return std::move(parsed.value());
    }();
    return data;
}

} // namespace shaftwright::selection
