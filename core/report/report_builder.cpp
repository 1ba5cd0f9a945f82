#include "core/report/report_builder.h"

#include "core/analysis/shares.h"
#include "core/bearings/rating.h"
#include "core/document/document.h"
#include "core/drawing/sheet.h"
#include "core/loads/loads.h"
#include "core/report/derivation_text.h"
#include "core/report/part_words.h"
#include "core/report/wording.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

namespace shaftwright::report
{
namespace
{

Tone toneOf(Severity severity)
{
    return severity == Severity::stop ? Tone::stop : severity == Severity::caution ? Tone::caution : Tone::note;
}

const char* markOf(Severity severity)
{
    return severity == Severity::stop ? "\u25a0" : severity == Severity::caution ? "\u25b2" : "\u25cb";
}

/// Cases beyond this number are not all written out in the text.
constexpr std::size_t manyCases = 3;

class Builder
{
public:
    Builder(const Arrangement& arrangement, const Assessment& assessment, const Catalogues& catalogues,
            const ReportOptions& options, bool pictures, bool all_derivations)
        : m_arrangement(arrangement), m_assessment(assessment), m_catalogues(catalogues), m_options(options),
          m_words(Texts::of(options.language), options.typography), m_pictures(pictures), m_all(all_derivations)
    {
    }

    Document run()
    {
        Document document;
        document.language = m_options.language == Language::german ? "de" : "en";
        document.kicker = say("report.kicker");
        document.title = m_arrangement.title.title.empty() ? say("report.untitled") : m_arrangement.title.title;
        document.title_block = titleBlock();
        document.verdict = verdict();
        document.chapters.push_back(required());
        document.chapters.push_back(findings());
        document.chapters.push_back(arrangement());
        document.chapters.push_back(assumed());
        document.chapters.push_back(loads());
        document.chapters.push_back(reactions());
        document.chapters.push_back(shaft());
        document.chapters.push_back(bearings());
        document.chapters.push_back(suggestions());
        document.chapters.push_back(limits());
        document.chapters.push_back(sources(document));
        document.foot = say("report.foot", {{"version", m_options.program_version}});
        return document;
    }

private:
    const Arrangement& m_arrangement;
    const Assessment& m_assessment;
    const Catalogues& m_catalogues;
    const ReportOptions& m_options;
    Wording m_words;
    bool m_pictures, m_all;

    [[nodiscard]] std::string say(const std::string& key, const NamedValues& values = {}) const
    {
        return m_words.say(key, values);
    }
    [[nodiscard]] const Texts& texts() const { return m_words.texts(); }
    [[nodiscard]] std::size_t caseCount() const { return m_assessment.load_cases.size(); }

    [[nodiscard]] std::string caseName(std::size_t index) const
    {
        return index < caseCount() ? m_assessment.load_cases[index].name : std::string("-");
    }
    [[nodiscard]] std::string caseName(int index) const { return index < 0 ? "-" : caseName(static_cast<std::size_t>(index)); }
    [[nodiscard]] std::string caseName(const std::optional<CaseId>& id) const
    {
        if (!id)
            return "-";
        for (const CaseSummary& summary : m_assessment.load_cases) {
            if (summary.id == *id)
                return summary.name;
        }
        return id->value;
    }
    [[nodiscard]] std::string partName(const PartId& id) const
    {
        const Part* part = findPart(m_arrangement, id);
        return part != nullptr && !part->name.empty() ? part->name : id.value;
    }
    [[nodiscard]] std::string whereName(const std::string& where) const
    {
        if (const SupportAssessment* support = m_assessment.find(SupportId(where)))
            return support->name;
        return where.empty() ? say("report.whole_shaft") : partName(PartId(where));
    }
    [[nodiscard]] std::string sourceName(const std::string& source) const
    {
        if (source == "own_weight" || source == "displacement" || source == "pair")
            return say("source." + source);
        return partName(PartId(source));
    }
    [[nodiscard]] bool reported(std::size_t case_index, const std::set<int>& governing) const
    {
        return m_all || caseCount() <= manyCases || governing.contains(static_cast<int>(case_index));
    }

    [[nodiscard]] DerivationBlock derivationBlock(std::string title, const Derivation& derivation) const
    {
        DerivationBlock block;
        block.title = std::move(title);
        for (const DerivationStep& step : derivation)
            block.lines.push_back(
                {derivationName(step, texts()), stepLine(step, texts(), m_options.typography), m_words.source(step.source)});
        return block;
    }

    // --- Head ------------------------------------------------------------------------------------------------------

    Facts titleBlock() const
    {
        Facts block;
        const TitleBlock& title = m_arrangement.title;
        const auto add = [&](const char* key, const std::string& value) {
            if (!value.empty())
                block.facts.push_back({say(std::string("report.") + key), value});
        };
        add("purpose", title.purpose);
        add("number", title.number);
        add("author", title.author);
        add("organisation", title.organisation);
        add("date", title.date);
        if (!m_arrangement.revisions.empty()) {
            const Revision& last = m_arrangement.revisions.back();
            std::string text = last.letter;
            for (const std::string& more : {last.date, last.author, last.note})
                text += more.empty() ? "" : ", " + more;
            add("revision", text);
        }
        if (!whyNotWritable(m_arrangement)) // what no file can hold has no digest
            add("digest", digestOf(m_arrangement));
        std::string catalogues;
        for (const Catalogue* catalogue : m_catalogues.list)
            catalogues += (catalogues.empty() ? "" : "; ") + m_words.word(catalogue->name) +
                          (catalogue->version.empty() ? "" : " " + catalogue->version);
        add("catalogues", catalogues);
        add("program", m_options.program_version.empty() ? "" : "Shaftwright " + m_options.program_version);
        return block;
    }

    Paragraph verdict() const
    {
        int met = 0, missed = 0, open = 0;
        for (const RequirementResult& requirement : m_assessment.requirements) {
            if (!requirement.met)
                ++open;
            else
                ++(*requirement.met ? met : missed);
        }
        int stops = 0, cautions = 0;
        for (const Finding& finding : m_assessment.findings) {
            if (finding.severity == Severity::stop)
                ++stops;
            else if (finding.severity == Severity::caution && !finding.accepted)
                ++cautions;
        }
        const NamedValues values{{"met", double(met)},     {"missed", double(missed)},
                                 {"open", double(open)},   {"count", double(met + missed + open)},
                                 {"stops", double(stops)}, {"cautions", double(cautions)}};
        std::string text;
        Tone tone = Tone::met;
        if (!m_arrangement.supports.empty() && !m_assessment.beam.usable()) {
            text = say("verdict_sentence.not_solved", values);
            tone = Tone::stop;
        } else if (missed > 0) {
            text = say(missed == 1 ? "verdict_sentence.missed_one" : "verdict_sentence.missed", values);
            tone = Tone::stop;
        } else if (open > 0) {
            text = say(open == 1 ? "verdict_sentence.open_one" : "verdict_sentence.open", values);
            tone = Tone::stop;
        } else if (stops > 0) {
            text = say(met == 0 ? "verdict_sentence.none_stops" : "verdict_sentence.met_but_stops", values);
            tone = Tone::stop;
        } else if (met == 0) {
            text = say("verdict_sentence.none", values);
            tone = Tone::caution;
        } else {
            text = say("verdict_sentence.met", values);
            tone = cautions > 0 ? Tone::caution : Tone::met;
        }
        if (stops > 0 && (missed > 0 || open > 0))
            text += " " + say(stops == 1 ? "verdict_sentence.stops_one" : "verdict_sentence.stops", values);
        if (cautions > 0)
            text += " " + say(cautions == 1 ? "verdict_sentence.cautions_one" : "verdict_sentence.cautions", values);
        return {text, tone};
    }

    Chapter required() const
    {
        Chapter chapter{say("chapter.required"), {}, {}};
        if (m_assessment.requirements.empty()) {
            chapter.blocks.emplace_back(Paragraph{say("report.no_requirement"), Tone::plain});
            return chapter;
        }
        Table table;
        table.columns = {{say("column.requirement"), Align::left},    {say("column.required"), Align::decimal},
                         {say("column.found"), Align::decimal},       {say("column.unit"), Align::left},
                         {say("column.governing_case"), Align::left}, {say("column.met"), Align::left}};
        for (const RequirementResult& in : m_assessment.requirements) {
            Row row;
            const Requirement* stated = nullptr;
            for (const Requirement& requirement : m_arrangement.requirements) {
                if (requirement.id.value == in.id)
                    stated = &requirement;
            }
            const std::string where = stated != nullptr && in.where.empty() && stated->x_mm
                                          ? "x = " + m_words.length(*stated->x_mm) + " mm"
                                          : whereName(in.where);
            const auto number = [&](double value) {
                if (in.unit == "h")
                    return m_words.life(value);
                return m_words.significant(value, in.unit.empty() ? 3 : 3);
            };
            const bool lower = in.kind == "deflection" || in.kind == "slope";
            std::string what = say("requirement." + in.kind, {{"where", where}});
            if (stated != nullptr && !stated->text.empty())
                what += " (" + stated->text + ")";
            row.cells = {what,
                         std::string(lower ? "\u2264 " : "\u2265 ") + number(in.required),
                         in.found ? number(*in.found) : "-",
                         in.unit,
                         caseName(in.case_id),
                         !in.met   ? "? " + say("report.not_evaluated")
                         : *in.met ? "\u2713 " + say("report.met")
                                   : "\u2717 " + say("report.not_met")};
            // The sign stands before the number: keep such cells right-aligned.
            row.tone = in.met.value_or(false) ? Tone::met : Tone::stop;
            table.rows.push_back(std::move(row));
        }
        table.columns[1].align = Align::right;
        table.columns[2].align = Align::right;
        chapter.blocks.emplace_back(std::move(table));
        return chapter;
    }

    // --- Findings --------------------------------------------------------------------------------------------------

    Chapter findings() const
    {
        Chapter chapter{say("chapter.findings"), {}, {}};
        if (m_assessment.findings.empty())
            chapter.blocks.emplace_back(Paragraph{say("report.no_finding"), Tone::plain});
        for (const Severity severity : {Severity::stop, Severity::caution, Severity::note}) {
            Chapter section{say(severity == Severity::stop      ? "report.stops"
                                : severity == Severity::caution ? "report.cautions"
                                                                : "report.notes"),
                            {},
                            {}};
            for (const Finding& finding : m_assessment.findings) {
                if (finding.severity == severity)
                    section.blocks.emplace_back(notice(finding));
            }
            if (!section.blocks.empty())
                chapter.sections.push_back(std::move(section));
        }
        return chapter;
    }

    [[nodiscard]] Notice notice(const Finding& finding) const
    {
        Notice notice = plainNotice(finding, m_words);
        if (finding.case_id) {
            if (!notice.place.empty())
                notice.place += " · ";
            notice.place += say("report.case_named", {{"case", caseName(std::optional<CaseId>(CaseId(*finding.case_id)))}});
        }
        if (finding.accepted) {
            for (const Acceptance& acceptance : m_arrangement.acceptances) {
                if (acceptance.code == finding.code && acceptance.path == finding.path)
                    notice.accepted = say("report.accepted",
                                          {{"name", acceptance.name}, {"date", acceptance.date}, {"reason", acceptance.reason}});
            }
        }
        return notice;
    }

public:
    static Notice plainNotice(const Finding& finding, const Wording& words)
    {
        Notice notice;
        notice.tone = toneOf(finding.severity);
        notice.mark = markOf(finding.severity);
        notice.word = words.say("severity." + std::string(toString(finding.severity)));
        notice.text = findingText(finding, words.texts(), words.typography());
        notice.advice = findingAdvice(finding, words.texts(), words.typography());
        notice.place = finding.path;
        notice.source = words.source(finding.source);
        return notice;
    }

private:
    // --- Arrangement -----------------------------------------------------------------------------------------------

    Chapter arrangement() const
    {
        Chapter chapter{say("chapter.arrangement"), {}, {}};
        chapter.blocks.emplace_back(Paragraph{say("report.axes"), Tone::second});
        if (m_pictures) {
            const drawing::Page page = drawing::pageOf(m_arrangement, m_assessment);
            std::string svg =
                drawing::svg(page.list, page.width_mm, page.height_mm, {m_arrangement.title.title, say("report.picture")});
            if (const std::size_t start = svg.find("<svg"); start != std::string::npos)
                svg.erase(0, start);
            chapter.blocks.emplace_back(Picture{std::move(svg), say("report.picture_caption", {{"scale", page.scale_text}})});
        }
        chapter.sections.push_back(segments());
        chapter.sections.push_back(parts());
        chapter.sections.push_back(supports());
        chapter.sections.push_back(duty());
        chapter.sections.push_back(surroundings());
        return chapter;
    }

    Chapter segments() const
    {
        Chapter section{say("chapter.segments"), {}, {}};
        if (m_arrangement.shaft.segments.empty()) {
            section.blocks.emplace_back(Paragraph{say("report.no_segment"), Tone::plain});
            return section;
        }
        const SettledMaterial& material = m_assessment.settled.material;
        section.blocks.emplace_back(Paragraph{say("report.material", {{"material", material.name},
                                                                      {"E_MPa", material.modulus_MPa},
                                                                      {"G_MPa", material.shear_modulus_MPa},
                                                                      {"alpha", material.expansion_per_K * 1e6},
                                                                      {"density_kg_m3", material.density_kg_m3}}),
                                              Tone::plain});
        Table table;
        table.columns = {{say("column.segment"), Align::left},   {say("column.from_mm"), Align::decimal},
                         {say("column.to_mm"), Align::decimal},  {say("column.length_mm"), Align::decimal},
                         {say("column.outer_mm"), Align::right}, {say("column.bore_mm"), Align::right},
                         {say("column.features"), Align::left}};
        for (std::size_t i = 0; i < m_arrangement.shaft.segments.size(); ++i) {
            const Segment& segment = m_arrangement.shaft.segments[i];
            const double from_mm = segmentStart_mm(m_arrangement.shaft, i);
            const auto range = [&](double a, double b) {
                return a == b ? m_words.length(a) : m_words.length(a) + " \u2192 " + m_words.length(b);
            };
            std::string features;
            for (const Feature& feature : segment.features)
                features += (features.empty() ? "" : "; ") + featureWords(feature, m_words);
            table.rows.push_back({{segment.id.value, m_words.length(from_mm), m_words.length(from_mm + segment.length_mm),
                                   m_words.length(segment.length_mm), range(segment.outer_mm, segment.outerRight_mm()),
                                   segment.boreLeft_mm() == 0.0 && segment.boreRight_mm() == 0.0
                                       ? say("report.solid")
                                       : range(segment.boreLeft_mm(), segment.boreRight_mm()),
                                   features}});
        }
        section.blocks.emplace_back(std::move(table));
        return section;
    }

    Chapter parts() const
    {
        Chapter section{say("chapter.parts"), {}, {}};
        if (m_arrangement.parts.empty()) {
            section.blocks.emplace_back(Paragraph{say("report.no_part"), Tone::plain});
            return section;
        }
        Table table;
        table.columns = {{say("column.part"), Align::left},
                         {say("column.kind"), Align::left},
                         {say("column.x_mm"), Align::decimal},
                         {say("column.inputs"), Align::left}};
        for (const Part& part : m_arrangement.parts)
            table.rows.push_back({{partName(part.id), say(std::string("kind.") + kindOf(part)), m_words.length(part.x_mm),
                                   partWords(part, m_words)}});
        section.blocks.emplace_back(std::move(table));
        return section;
    }

    Chapter supports() const
    {
        Chapter section{say("chapter.supports"), {}, {}};
        if (m_arrangement.supports.empty()) {
            section.blocks.emplace_back(Paragraph{say("report.no_support"), Tone::plain});
            return section;
        }
        Table table;
        table.columns = {{say("column.support"), Align::left},    {say("column.x_mm"), Align::decimal},
                         {say("column.seat_mm"), Align::decimal}, {say("column.role"), Align::left},
                         {say("column.bearing"), Align::left},    {say("column.more"), Align::left}};
        for (std::size_t s = 0; s < m_arrangement.supports.size(); ++s) {
            const Support& support = m_arrangement.supports[s];
            const SupportAssessment& found = m_assessment.supports[s];
            std::string role = say(std::string("role.") + std::string(toString(support.role)));
            if (found.carries && support.role != Role::locating && support.role != Role::non_locating)
                role += ", " + say(*found.carries == Carries::plus ? "report.carries_plus" : "report.carries_minus");
            std::string bearing = say("report.no_bearing");
            if (support.bearing && !support.bearing->rows.empty())
                bearing = support.bearing->designation() + ", " + say("family." + std::string(toString(support.bearing->family)));
            table.rows.push_back({{found.name, m_words.length(support.x_mm), m_words.length(found.seat_mm), role, bearing,
                                   supportWords(support, m_words)}});
        }
        section.blocks.emplace_back(std::move(table));
        return section;
    }

    Chapter duty() const
    {
        Chapter section{say("chapter.duty"), {}, {}};
        const Duty& duty = m_arrangement.duty;
        Facts facts;
        facts.facts.push_back({say("report.required_life"),
                               duty.required_L_h ? m_words.life(*duty.required_L_h) + " h" : say("report.not_stated")});
        facts.facts.push_back({say("report.reliability"), m_words.length(m_assessment.settled.reliability_percent) + " %"});
        facts.facts.push_back({say("report.application_factor"), m_words.length(m_assessment.settled.K_A)});
        section.blocks.emplace_back(std::move(facts));
        Table table;
        table.columns = {{say("column.case"), Align::left},
                         {say("column.time_share"), Align::decimal},
                         {say("column.speed_rpm"), Align::decimal},
                         {say("column.power_factor"), Align::decimal},
                         {say("column.free_load_factor"), Align::decimal},
                         {say("column.peak_factor"), Align::decimal},
                         {say("column.more"), Align::left}};
        for (std::size_t i = 0; i < m_assessment.settled.load_cases.size(); ++i) {
            const LoadCase& load_case = m_assessment.settled.load_cases[i];
            std::string more;
            const auto add = [&](const std::string& text) { more += (more.empty() ? "" : "; ") + text; };
            if (load_case.shaft_temperature_C)
                add(say("report.shaft_at", {{"temperature_C", *load_case.shaft_temperature_C}}));
            if (load_case.housing_temperature_C)
                add(say("report.housing_at", {{"temperature_C", *load_case.housing_temperature_C}}));
            for (const auto& [part, settings] : load_case.parts) {
                if (!settings.active)
                    add(say("report.part_idle", {{"part", partName(part)}}));
                else if (settings.power_factor)
                    add(say("report.part_factor", {{"part", partName(part)}, {"factor", *settings.power_factor}}));
            }
            table.rows.push_back(
                {{caseName(i), m_words.significant(100.0 * load_case.time_share, 3) + " %", m_words.length(load_case.speed_rpm),
                  m_words.significant(load_case.power_factor, 4, true), m_words.significant(load_case.free_load_factor, 4, true),
                  load_case.peak_factor ? m_words.significant(*load_case.peak_factor, 4, true) : "-", more}});
        }
        section.blocks.emplace_back(std::move(table));
        return section;
    }

    Chapter surroundings() const
    {
        Chapter section{say("chapter.surroundings"), {}, {}};
        const Settled& s = m_assessment.settled;
        Facts facts;
        const auto add = [&](const char* key, std::string value, const std::string& path) {
            const bool open = std::any_of(m_assessment.assumptions.begin(), m_assessment.assumptions.end(),
                                          [&](const Assumption& assumption) { return assumption.path == path; });
            facts.facts.push_back({say(std::string("report.") + key), value + (open ? " (" + say("report.assumed") + ")" : "")});
        };
        const auto degrees = [&](double C) { return m_words.length(C) + " °C"; };
        add("temperature", degrees(s.temperature_C), "surroundings.temperature_C");
        add("ambient", degrees(s.ambient_C), "surroundings.ambient_C");
        add("assembly", degrees(s.assembly_C), "surroundings.assembly_C");
        std::string lubricant = m_words.word(s.lubricant == Lubricant::oil ? "oil" : "grease");
        if (m_arrangement.surroundings.viscosity_grade)
            lubricant += ", ISO VG " + m_words.length(*m_arrangement.surroundings.viscosity_grade);
        add("lubricant", lubricant, "surroundings.lubricant");
        static constexpr const char* dirt[] = {"clean", "normal", "dirty", "severe"};
        add("dirt", m_words.word(dirt[static_cast<std::size_t>(s.dirt)]), "surroundings.dirt");
        add("moist", m_words.word(s.moist ? "yes" : "no"), "surroundings.moist");
        static constexpr const char* housing[] = {"grey_iron", "nodular_iron", "steel", "aluminium"};
        add("housing", m_words.word(housing[static_cast<std::size_t>(s.housing_material)]), "surroundings.housing_material");
        add("attitude", m_words.length(s.attitude_deg) + "°", "surroundings.attitude_deg");
        add("hardness", m_words.length(s.surface_hardness_HRC) + " HRC", "shaft.surface_hardness_HRC");
        static constexpr const char* shear[] = {"cowper", "hutchinson", "nine_tenths", "off"};
        add("shear", m_words.word(shear[static_cast<std::size_t>(s.shear_factor)]), "options.shear_factor");
        add("shoulder_flexibility", m_words.word(s.shoulder_flexibility ? "on" : "off"), "options.shoulder_flexibility");
        add("own_weight", m_words.word(s.own_weight ? "on" : "off"), "options.own_weight");
        add("induced_load", m_words.word(s.induced_load == InducedLoadRule::e_times_Fr ? "e_times_Fr" : "half_Fr_over_Y"),
            "options.induced_load");
        add("profile", m_words.word(s.profile), "surroundings.profile");
        section.blocks.emplace_back(std::move(facts));
        return section;
    }

    Chapter assumed() const
    {
        Chapter chapter{say("chapter.assumed"), {}, {}};
        chapter.blocks.emplace_back(
            Paragraph{say(m_assessment.assumptions.empty() ? "report.nothing_assumed" : "report.assumed_lead",
                          {{"count", double(m_assessment.assumptions.size())}}),
                      Tone::plain});
        if (!m_assessment.assumptions.empty()) {
            Table table;
            table.columns = {{say("column.input"), Align::left},
                             {say("column.value"), Align::left},
                             {say("column.reason"), Align::left},
                             {say("column.effect"), Align::left}};
            for (const Assumption& in : m_assessment.assumptions) {
                std::string value;
                if (const double* number = std::get_if<double>(&in.value))
                    value = m_words.significant(*number, 6, true);
                else
                    value = m_words.word(std::get<std::string>(in.value));
                if (!in.unit.empty())
                    value += (in.unit == "°" ? "" : " ") + unitText(in.unit, texts());
                table.rows.push_back(
                    {{in.path, value, say("assumption." + in.reason + ".reason"), say("assumption." + in.reason + ".effect")}});
            }
            chapter.blocks.emplace_back(std::move(table));
        }
        if (!m_arrangement.proposed.empty()) {
            chapter.blocks.emplace_back(Paragraph{say("report.proposed_lead"), Tone::plain});
            Bullets list;
            for (const auto& [path, origin] : m_arrangement.proposed)
                list.items.push_back(path + ": " + origin.reason);
            chapter.blocks.emplace_back(std::move(list));
        }
        return chapter;
    }

    // --- Loads -----------------------------------------------------------------------------------------------------

    /// Cases whose numbers are written out when not all of them are.
    [[nodiscard]] std::set<int> governingCases() const
    {
        std::set<int> cases;
        for (const SupportAssessment& support : m_assessment.supports) {
            if (support.governing_case >= 0)
                cases.insert(support.governing_case);
            if (support.bearing && support.bearing->governing_static_case >= 0)
                cases.insert(support.bearing->governing_static_case);
        }
        if (cases.empty())
            cases.insert(0);
        return cases;
    }

    Chapter loads() const
    {
        Chapter chapter{say("chapter.loads"), {}, {}};
        chapter.blocks.emplace_back(Paragraph{say("report.loads_lead"), Tone::second});
        const std::set<int> governing = governingCases();
        for (std::size_t i = 0; i < m_assessment.loads.size(); ++i) {
            const CaseLoads& loads = m_assessment.loads[i];
            const CaseSummary& summary = m_assessment.load_cases[i];
            Chapter section{say("report.case_title", {{"case", summary.name}, {"speed_rpm", summary.speed_rpm}}), {}, {}};
            if (loads.parts.empty()) {
                section.blocks.emplace_back(Paragraph{say("report.no_load"), Tone::plain});
                chapter.sections.push_back(std::move(section));
                continue;
            }
            section.blocks.emplace_back(torqueFlow(loads, summary));
            section.blocks.emplace_back(Paragraph{torqueBalance(loads, summary), Tone::plain});
            section.blocks.emplace_back(forceTable(loads, summary));
            if (reported(i, governing)) {
                for (const PartLoad& load : loads.parts) {
                    if (!load.derivation.empty())
                        section.blocks.emplace_back(
                            derivationBlock(say("report.load_derivation", {{"part", partName(load.part)}}), load.derivation));
                }
            } else {
                section.blocks.emplace_back(Paragraph{say("report.derivation_elsewhere"), Tone::second});
            }
            chapter.sections.push_back(std::move(section));
        }
        return chapter;
    }

    [[nodiscard]] Table torqueFlow(const CaseLoads& loads, const CaseSummary& summary) const
    {
        Table table;
        table.caption = say("report.torque_flow");
        table.columns = {{say("column.part"), Align::left},
                         {say("column.x_mm"), Align::decimal},
                         {say("column.torque_Nm"), Align::decimal},
                         {say("column.power_kW"), Align::decimal},
                         {say("column.flow"), Align::left}};
        double sum_Nmm = 0.0;
        for (const PartLoad& load : loads.parts) {
            double torque_Nmm = load.torque_Nmm;
            if (load.distributed)
                torque_Nmm = 0.5 * (load.m0_Nmm_mm + load.m1_Nmm_mm) * (load.end_mm - load.x_mm);
            if (torque_Nmm == 0.0)
                continue;
            sum_Nmm += torque_Nmm;
            const double power_kW = torque_Nmm * summary.speed_rpm * 2.0 * std::numbers::pi / 60.0 / 1e6;
            table.rows.push_back(
                {{partName(load.part), m_words.length(load.x_mm), m_words.moment_Nm(torque_Nmm),
                  summary.speed_rpm == 0.0 ? "-" : m_words.significant(std::abs(power_kW), 4),
                  summary.speed_rpm == 0.0 ? "-" : say(power_kW > 0.0 ? "report.gives_in" : "report.takes_out")}});
        }
        table.rows.push_back({{say("report.sum"), "", m_words.moment_Nm(-loads.torque_residual_Nmm), "", ""}, true});
        return table;
    }

    [[nodiscard]] std::string torqueBalance(const CaseLoads& loads, const CaseSummary& summary) const
    {
        if (loads.torque_residual_Nmm == 0.0)
            return say("report.torque_balanced");
        return say("report.torque_open", {{"residual_Nm", std::abs(loads.torque_residual_Nmm) / 1000.0}, {"case", summary.name}});
    }

    [[nodiscard]] Table forceTable(const CaseLoads& loads, const CaseSummary& summary) const
    {
        Table table;
        table.caption = say("report.forces_caption");
        table.columns = {{say("column.part"), Align::left}, {say("column.x_mm"), Align::decimal},
                         {"Fx N", Align::decimal},          {"Fy N", Align::decimal},
                         {"Fz N", Align::decimal},          {"Mx N·m", Align::decimal},
                         {"My N·m", Align::decimal},        {"Mz N·m", Align::decimal},
                         {say("column.more"), Align::left}};
        Vector3 force{}, moment{};
        for (const PartLoad& load : loads.parts) {
            Vector3 F = load.force_N;
            double Mx = load.moment_Nmm.x;
            std::string more;
            const auto add = [&](const std::string& text) { more += (more.empty() ? "" : "; ") + text; };
            if (load.distributed) {
                const double l = load.end_mm - load.x_mm;
                F = {0.5 * (load.q0_N_mm.x + load.q1_N_mm.x) * l, 0.5 * (load.q0_N_mm.y + load.q1_N_mm.y) * l,
                     0.5 * (load.q0_N_mm.z + load.q1_N_mm.z) * l};
                Mx = 0.5 * (load.m0_Nmm_mm + load.m1_Nmm_mm) * l;
                add(say("report.distributed_to", {{"end_mm", load.end_mm}}));
            }
            if (load.rotating_force_N.y != 0.0)
                add(say("report.turning_force", {{"F_N", std::abs(load.rotating_force_N.y)}}));
            if (load.worst_direction_N != 0.0)
                add(say("report.any_direction", {{"F_N", load.worst_direction_N}}));
            if (load.worst_moment_Nmm != 0.0)
                add(say("report.any_direction_moment", {{"M_Nm", load.worst_moment_Nmm / 1000.0}}));
            force = {force.x + F.x, force.y + F.y, force.z + F.z};
            moment.x += Mx;
            table.rows.push_back(
                {{partName(load.part), m_words.length(load.x_mm), m_words.force(F.x), m_words.force(F.y), m_words.force(F.z),
                  m_words.moment_Nm(Mx), m_words.moment_Nm(load.moment_Nmm.y), m_words.moment_Nm(load.moment_Nmm.z), more}});
        }
        if (loads.gravity_m_s2 != Vector3{} && m_assessment.beam.usable()) {
            const double m = m_assessment.beam.mass_kg;
            const Vector3 W{m * loads.gravity_m_s2.x, m * loads.gravity_m_s2.y, m * loads.gravity_m_s2.z};
            force = {force.x + W.x, force.y + W.y, force.z + W.z};
            table.rows.push_back(
                {{say("source.own_weight"), "-", m_words.force(W.x), m_words.force(W.y), m_words.force(W.z), m_words.force(0.0),
                  m_words.force(0.0), m_words.force(0.0), say("report.own_mass", {{"mass_kg", m}})}});
        }
        table.rows.push_back(
            {{say("report.sum"), "", m_words.force(std::abs(force.x) < 1e-9 * (std::abs(summary.K_N) + 1.0) ? 0.0 : force.x),
              m_words.force(force.y), m_words.force(force.z), m_words.moment_Nm(-loads.torque_residual_Nmm), "", "", ""},
             true});
        return table;
    }

    // --- Reactions -------------------------------------------------------------------------------------------------

    Chapter reactions() const
    {
        Chapter chapter{say("chapter.reactions"), {}, {}};
        if (!m_assessment.beam.usable()) {
            chapter.blocks.emplace_back(Paragraph{say("report.not_solved"), Tone::plain});
            return chapter;
        }
        chapter.blocks.emplace_back(Paragraph{say("report.reactions_lead"), Tone::second});
        const std::set<int> governing = governingCases();
        for (std::size_t i = 0; i < caseCount(); ++i) {
            Chapter section{
                say("report.case_title", {{"case", caseName(i)}, {"speed_rpm", m_assessment.load_cases[i].speed_rpm}}), {}, {}};
            Table table;
            table.columns = {{say("column.support"), Align::left},
                             {"Rx N", Align::decimal},
                             {"Ry N", Align::decimal},
                             {"Rz N", Align::decimal},
                             {say("column.radial_N"), Align::decimal},
                             {say("column.at_deg"), Align::decimal},
                             {say("column.tilt_mrad"), Align::decimal},
                             {say("column.travel_mm"), Align::decimal},
                             {say("column.more"), Align::left}};
            for (const SupportAssessment& support : m_assessment.supports) {
                const SupportCase& here = support.cases[i];
                std::string more;
                const auto add = [&](const std::string& text) { more += (more.empty() ? "" : "; ") + text; };
                if (here.worst_direction_N > 0.0)
                    add(say("report.worst_direction", {{"F_N", here.worst_direction_N}}));
                if (here.rotating_N > 0.0)
                    add(say("report.turning_reaction", {{"F_N", here.rotating_N}}));
                if (std::hypot(here.moment_y_Nmm, here.moment_z_Nmm) > 0.0)
                    add(say("report.clamping_moment", {{"M_Nm", std::hypot(here.moment_y_Nmm, here.moment_z_Nmm) / 1000.0}}));
                table.rows.push_back(
                    {{support.name, m_words.force(here.force_N.x), m_words.force(here.force_N.y), m_words.force(here.force_N.z),
                      m_words.force(here.radial_N), here.radial_N > 0.0 ? m_words.fixed(here.radial_angle_deg, 1) : "-",
                      m_words.fixed(here.tilt_mrad, 3), m_words.fixed(here.displacement_mm.x, 4), more}});
            }
            section.blocks.emplace_back(std::move(table));
            const beam::CaseResult& result = m_assessment.beam.cases[i];
            section.blocks.emplace_back(Paragraph{
                say(std::max(result.balance_force, result.balance_moment) < 1e-9 ? "report.balance" : "report.balance_rough"),
                Tone::second});
            if (reported(i, governing)) {
                appendShares(section, i);
                appendStatics(section, i);
            }
            chapter.sections.push_back(std::move(section));
        }
        return chapter;
    }

    void appendShares(Chapter& section, std::size_t i) const
    {
        const ShareTable shares = loadShares(m_assessment, i);
        if (!shares.valid) {
            section.blocks.emplace_back(Paragraph{say("report.no_shares"), Tone::second});
            return;
        }
        if (shares.sources.size() < 2)
            return;
        Table table;
        table.caption = say("report.shares");
        table.columns = {{say("column.load"), Align::left}};
        for (const SupportAssessment& support : m_assessment.supports) {
            for (const char* axis : {"x", "y", "z"})
                table.columns.push_back({support.name + " R" + axis + " N", Align::decimal});
        }
        // Many supports: one table each, so that the columns stay readable.
        const bool apart = m_assessment.supports.size() > 3;
        if (!apart) {
            for (std::size_t k = 0; k < shares.sources.size(); ++k) {
                Row row{{sourceName(shares.sources[k])}};
                for (std::size_t s = 0; s < shares.supports.size(); ++s)
                    addForce(row, shares.supports[s][k].force_N, shares.sums[s].force_N);
                table.rows.push_back(std::move(row));
            }
            Row sum{{say("report.sum")}, true};
            for (const LoadShare& share : shares.sums)
                addForce(sum, share.force_N, share.force_N);
            table.rows.push_back(std::move(sum));
            section.blocks.emplace_back(std::move(table));
            return;
        }
        for (std::size_t s = 0; s < shares.supports.size(); ++s) {
            Table one;
            one.caption = say("report.shares_at", {{"support", m_assessment.supports[s].name}});
            one.columns = {
                {say("column.load"), Align::left}, {"Rx N", Align::decimal}, {"Ry N", Align::decimal}, {"Rz N", Align::decimal}};
            for (std::size_t k = 0; k < shares.sources.size(); ++k) {
                Row row{{sourceName(shares.sources[k])}};
                addForce(row, shares.supports[s][k].force_N, shares.sums[s].force_N);
                one.rows.push_back(std::move(row));
            }
            Row sum{{say("report.sum")}, true};
            addForce(sum, shares.sums[s].force_N, shares.sums[s].force_N);
            one.rows.push_back(std::move(sum));
            section.blocks.emplace_back(std::move(one));
        }
    }

    void addForce(Row& row, const Vector3& F, const Vector3& scale) const
    {
        // Rounding of shares that cancel is no force.
        const double size = 1e-9 * (std::abs(scale.x) + std::abs(scale.y) + std::abs(scale.z) + 1.0);
        for (const double value : {F.x, F.y, F.z})
            row.cells.push_back(m_words.force(std::abs(value) < size ? 0.0 : value));
    }

    void appendStatics(Chapter& section, std::size_t i) const
    {
        const std::vector<HandStatics> statics = handStatics(m_assessment, i);
        for (const HandStatics& hand : statics) {
            const char* key = hand.plane == StaticsPlane::y   ? "report.statics_y"
                              : hand.plane == StaticsPlane::z ? "report.statics_z"
                                                              : "report.statics_x";
            section.blocks.emplace_back(derivationBlock(say(key), hand.steps));
        }
    }

    // --- Shaft -----------------------------------------------------------------------------------------------------

    Chapter shaft() const
    {
        Chapter chapter{say("chapter.shaft"), {}, {}};
        if (!m_assessment.beam.usable()) {
            chapter.blocks.emplace_back(Paragraph{say("report.not_solved"), Tone::plain});
            return chapter;
        }
        const ShaftResult& shaft = m_assessment.shaft;
        chapter.blocks.emplace_back(
            Paragraph{say("report.shaft_lead", {{"length_mm", shaft.length_mm}, {"mass_kg", shaft.mass_kg}}), Tone::plain});
        Table table;
        table.columns = {{say("column.case"), Align::left},
                         {say("column.largest"), Align::left},
                         {say("column.value"), Align::right},
                         {say("column.unit"), Align::left},
                         {say("column.at_x_mm"), Align::decimal}};
        for (std::size_t i = 0; i < caseCount(); ++i) {
            const beam::CaseResult& result = m_assessment.beam.cases[i];
            const auto add = [&](const char* key, double value, const char* unit, double x_mm, bool first) {
                table.rows.push_back(
                    {{first ? caseName(i) : "", say(std::string("extreme.") + key), m_words.significant(value, 4), unit,
                      value == 0.0 ? "-" : m_words.length(std::round(x_mm * 10.0) / 10.0)}});
            };
            add("moment", result.moment_Nmm.value / 1000.0, "N·m", result.moment_Nmm.x_mm, true);
            add("shear", result.shear_N.value, "N", result.shear_N.x_mm, false);
            add("torque", result.torque_Nmm.value / 1000.0, "N·m", result.torque_Nmm.x_mm, false);
            add("axial", result.axial_N.value, "N", result.axial_N.x_mm, false);
            add("deflection", result.deflection_mm.value, "mm", result.deflection_mm.x_mm, false);
            add("slope", 1e3 * result.slope_rad.value, "mrad", result.slope_rad.x_mm, false);
        }
        chapter.blocks.emplace_back(std::move(table));
        Table tilt;
        tilt.caption = say("report.tilt_caption");
        tilt.columns = {{say("column.support"), Align::left},
                        {say("column.case"), Align::left},
                        {say("column.tilt_mrad"), Align::decimal},
                        {say("column.tilt_judged_mrad"), Align::decimal},
                        {say("column.tilt_arcmin"), Align::decimal}};
        for (const SupportAssessment& support : m_assessment.supports) {
            std::size_t worst = 0;
            for (std::size_t i = 1; i < support.cases.size(); ++i) {
                if (support.cases[i].tilt_mrad > support.cases[worst].tilt_mrad)
                    worst = i;
            }
            if (support.cases.empty())
                continue;
            const SupportCase& here = support.cases[worst];
            tilt.rows.push_back(
                {{support.name, caseName(worst), m_words.fixed(here.tilt_mrad, 3), m_words.fixed(here.tilt_judged_mrad, 3),
                  m_words.fixed(here.tilt_judged_mrad * 180.0 * 60.0 / std::numbers::pi / 1000.0, 2)}});
        }
        chapter.blocks.emplace_back(std::move(tilt));
        return chapter;
    }

    // --- Bearings --------------------------------------------------------------------------------------------------

    Chapter bearings() const
    {
        Chapter chapter{say("chapter.bearings"), {}, {}};
        bool any = false;
        for (std::size_t s = 0; s < m_assessment.supports.size(); ++s) {
            const SupportAssessment& support = m_assessment.supports[s];
            if (!support.bearing)
                continue;
            any = true;
            const BearingChoice* choice = m_arrangement.supports[s].bearing ? &*m_arrangement.supports[s].bearing : nullptr;
            std::vector<std::string> names;
            std::vector<double> shares;
            for (const CaseSummary& summary : m_assessment.load_cases) {
                names.push_back(summary.name);
                shares.push_back(summary.time_share);
            }
            std::set<int> written{support.bearing->governing_case, support.bearing->governing_static_case};
            chapter.sections.push_back(bearingChapter(
                say("report.bearing_at", {{"support", support.name}, {"bearing", support.bearing->rating.designation}}),
                *support.bearing, choice, names, m_words, [&](std::size_t i) { return reported(i, written); }));
        }
        if (!any)
            chapter.blocks.emplace_back(Paragraph{say("report.no_bearing_chosen"), Tone::plain});
        const SystemLife& system = m_assessment.all_supports;
        if (system.L10_h) {
            Chapter section{say("chapter.all_bearings"), {}, {}};
            const double slope = system.slope;
            section.blocks.emplace_back(Paragraph{say(slope > 0.0 ? "report.system_life" : "report.system_life_mixed",
                                                      {{"L10_h", *system.L10_h}, {"slope", slope}}),
                                                  Tone::plain});
            if (system.reliability_at_required && m_arrangement.duty.required_L_h)
                section.blocks.emplace_back(
                    Paragraph{say("report.system_reliability", {{"reliability", *system.reliability_at_required},
                                                                {"required_L_h", *m_arrangement.duty.required_L_h}}),
                              Tone::plain});
            chapter.sections.push_back(std::move(section));
        } else if (any) {
            Chapter section{say("chapter.all_bearings"), {}, {}};
            section.blocks.emplace_back(Paragraph{say("report.no_system_life"), Tone::plain});
            chapter.sections.push_back(std::move(section));
        }
        return chapter;
    }

public:
    template <class Reported>
    static Chapter bearingChapter(std::string title, const BearingAssessment& bearing, const BearingChoice* choice,
                                  const std::vector<std::string>& case_names, const Wording& words, Reported reported)
    {
        const BearingRating& rating = bearing.rating;
        const auto say = [&](const std::string& key, const NamedValues& values = {}) { return words.say(key, values); };
        const auto nameOf = [&](std::size_t i) { return i < case_names.size() ? case_names[i] : bearing.cases[i].case_id.value; };
        Chapter section{std::move(title), {}, {}};

        Facts facts;
        facts.facts.push_back({say("report.family"), say("family." + std::string(toString(rating.family)))});
        facts.facts.push_back({say("report.dimensions"), "d " + words.length(rating.bore_mm) + " \u00d7 D " +
                                                             words.length(rating.outer_mm) + " \u00d7 B " +
                                                             words.length(rating.width_mm) + " mm"});
        facts.facts.push_back({"C", words.force(rating.C_N) + " N"});
        facts.facts.push_back({"C0", words.force(rating.C0_N) + " N"});
        if (rating.Cu_N)
            facts.facts.push_back({"Cu", words.force(*rating.Cu_N) + " N"});
        facts.facts.push_back({say("report.catalogue"), words.word(bearing.catalogue)});
        if (choice != nullptr && !choice->rows.empty())
            facts.facts.push_back({say("report.row_source"), words.source(choice->rows.front().row.source)});
        section.blocks.emplace_back(std::move(facts));
        if (choice != nullptr) {
            std::set<std::string> told;
            for (const SetRow& set_row : choice->rows) {
                if (!told.insert(set_row.row.designation).second)
                    continue;
                const Derivation steps = ratingDerivation(set_row.row);
                if (!steps.empty())
                    section.blocks.emplace_back(
                        derivationLines(say("report.rating_derivation", {{"bearing", set_row.row.designation}}), steps, words));
            }
        }
        if (!rating.derivation.empty())
            section.blocks.emplace_back(derivationLines(say("report.set_derivation"), rating.derivation, words));

        Table loads;
        loads.caption = say("report.bearing_loads");
        loads.columns = {{say("column.case"), Align::left},
                         {"Fr N", Align::decimal},
                         {"Fa N", Align::decimal},
                         {"e", Align::decimal},
                         {"X", Align::decimal},
                         {"Y", Align::decimal},
                         {"P N", Align::decimal},
                         {"L10h h", Align::decimal},
                         {say("column.damage"), Align::decimal}};
        Table rest;
        rest.caption = say("report.static_loads");
        rest.columns = {{say("column.case"), Align::left},
                        {say("column.Fr_largest"), Align::decimal},
                        {say("column.Fa_largest"), Align::decimal},
                        {"P0 N", Align::decimal},
                        {"S0", Align::decimal}};
        for (std::size_t i = 0; i < bearing.cases.size(); ++i) {
            const BearingCase& in = bearing.cases[i];
            loads.rows.push_back(
                {{nameOf(i), words.force(in.Fr_N), words.force(in.Fa_N), in.P_N ? words.significant(in.e, 3, true) : "-",
                  in.P_N ? words.significant(in.X, 3, true) : "-", in.P_N ? words.significant(in.Y, 3, true) : "-",
                  in.P_N ? words.force(*in.P_N) : "-", in.L10_h ? words.life(*in.L10_h) : "-",
                  words.fixed(100.0 * in.damage_share, 1) + " %"}});
            rest.rows.push_back({{nameOf(i), words.force(in.Fr_static_N), words.force(in.Fa_static_N),
                                  in.P0_N ? words.force(*in.P0_N) : "-", in.S0 ? words.significant(*in.S0, 3) : "-"}});
        }
        section.blocks.emplace_back(std::move(loads));
        section.blocks.emplace_back(std::move(rest));
        for (std::size_t i = 0; i < bearing.cases.size(); ++i) {
            if (!bearing.cases[i].derivation.empty() && reported(i))
                section.blocks.emplace_back(
                    derivationLines(say("report.case_derivation", {{"case", nameOf(i)}}), bearing.cases[i].derivation, words));
        }
        Derivation duty = bearing.derivation;
        duty.erase(duty.begin(), duty.begin() + static_cast<std::ptrdiff_t>(std::min(duty.size(), rating.derivation.size())));
        if (!duty.empty())
            section.blocks.emplace_back(derivationLines(say("report.duty_derivation"), duty, words));

        if (bearing.L10_h) {
            NamedValues values{{"L10_h", *bearing.L10_h}, {"a1", bearing.a1}, {"L_h", bearing.a1 * *bearing.L10_h}};
            std::string key = "report.life_found";
            if (bearing.required_L_h) {
                values.set("required_L_h", *bearing.required_L_h);
                key = bearing.met.value_or(false) ? "report.life_met" : "report.life_missed";
            }
            std::string text = say(key, values);
            if (bearing.a1 != 1.0)
                text += " " + say("report.life_a1", values);
            section.blocks.emplace_back(Paragraph{text, Tone::plain});
        } else {
            section.blocks.emplace_back(Paragraph{say("report.no_life"), Tone::plain});
        }
        if (bearing.S0_min)
            section.blocks.emplace_back(
                Paragraph{say(bearing.static_met.value_or(false) ? "report.static_met" : "report.static_missed",
                              {{"S0", *bearing.S0_min}, {"required_S0", bearing.required_S0}}),
                          Tone::plain});
        return section;
    }

    static DerivationBlock derivationLines(std::string title, const Derivation& derivation, const Wording& words)
    {
        DerivationBlock block;
        block.title = std::move(title);
        for (const DerivationStep& step : derivation)
            block.lines.push_back({derivationName(step, words.texts()), stepLine(step, words.texts(), words.typography()),
                                   words.source(step.source)});
        return block;
    }

private:
    // --- Suggestions -----------------------------------------------------------------------------------------------

    Chapter suggestions() const
    {
        Chapter chapter{say("chapter.suggestions"), {}, {}};
        bool any = false;
        for (const SupportAssessment& support : m_assessment.supports) {
            if (support.suggestions.empty())
                continue;
            any = true;
            Chapter section{say("report.suggestions_at", {{"support", support.name}}), {}, {}};
            Table table;
            table.columns = {{say("column.family"), Align::left},
                             {say("column.verdict"), Align::left},
                             {say("column.score"), Align::decimal},
                             {say("column.bearing"), Align::left},
                             {"L10h h", Align::decimal}};
            Facts why;
            std::string unsuited;
            std::size_t out = 0;
            for (const Suggestion& suggestion : support.suggestions) {
                if (suggestion.verdict == Verdict::unsuited) {
                    const std::string reason =
                        suggestion.reasons.empty() ? "" : reasonText(suggestion.reasons.front(), texts(), m_options.typography);
                    unsuited += (unsuited.empty() ? "" : "\n") + say("family." + std::string(toString(suggestion.family))) +
                                ": " + reason;
                    ++out;
                    continue;
                }
                std::string reasons;
                for (const Reason& reason : suggestion.reasons) {
                    if (reason.effect == Effect::informs && reasons.size() > 200)
                        continue;
                    reasons += (reasons.empty() ? "" : " ") + reasonText(reason, texts(), m_options.typography);
                }
                std::string mark = suggestion.verdict == Verdict::suited ? "\u2713 " : "\u25b2 ";
                table.rows.push_back(
                    {{say("family." + std::string(toString(suggestion.family))),
                      mark + say("verdict." + std::string(toString(suggestion.verdict))),
                      m_words.fixed(100.0 * suggestion.score, 0), suggestion.choice ? suggestion.choice->designation() : "-",
                      suggestion.L10_h ? m_words.life(*suggestion.L10_h) : "-"}});
                why.facts.push_back({say("family." + std::string(toString(suggestion.family))), reasons});
            }
            if (table.rows.empty())
                section.blocks.emplace_back(Paragraph{say("report.nothing_suited"), Tone::plain});
            else {
                section.blocks.emplace_back(std::move(table));
                section.blocks.emplace_back(std::move(why));
            }
            if (out > 0) {
                section.blocks.emplace_back(Paragraph{say("report.unsuited_lead", {{"count", double(out)}}), Tone::plain});
                Bullets list;
                std::size_t at = 0;
                while (at <= unsuited.size()) {
                    const std::size_t end = std::min(unsuited.find('\n', at), unsuited.size());
                    list.items.push_back(unsuited.substr(at, end - at));
                    at = end + 1;
                }
                section.blocks.emplace_back(std::move(list));
            }
            chapter.sections.push_back(std::move(section));
        }
        if (any)
            chapter.blocks.emplace_back(Paragraph{say("report.suggestions_lead"), Tone::second});
        else
            chapter.blocks.emplace_back(Paragraph{say("report.no_suggestion"), Tone::plain});
        return chapter;
    }

    // --- End -------------------------------------------------------------------------------------------------------

    Chapter limits() const
    {
        Chapter chapter{say("chapter.limits"), {}, {}};
        Chapter missing{say("chapter.not_assessed"), {}, {}};
        Bullets list;
        for (const char* key : {"strength", "fatigue", "critical_speed", "modified_life", "clearance", "lubrication", "housing"})
            list.items.push_back(say(std::string("not_assessed.") + key));
        missing.blocks.emplace_back(std::move(list));
        chapter.sections.push_back(std::move(missing));
        Chapter cautions{say("chapter.cautions"), {}, {}};
        Bullets words;
        for (const char* key : {"no_replacement", "statistical", "generic", "people"})
            words.items.push_back(say(std::string("caution.") + key));
        cautions.blocks.emplace_back(std::move(words));
        chapter.sections.push_back(std::move(cautions));
        return chapter;
    }

    static void collect(const Chapter& chapter, std::set<std::string>& sources)
    {
        for (const Block& block : chapter.blocks) {
            if (const auto* derivation = std::get_if<DerivationBlock>(&block)) {
                for (const DerivationLine& step : derivation->lines)
                    sources.insert(step.source);
            } else if (const auto* notice = std::get_if<Notice>(&block)) {
                sources.insert(notice->source);
            }
        }
        for (const Chapter& section : chapter.sections)
            collect(section, sources);
    }

    Chapter sources(const Document& document) const
    {
        Chapter chapter{say("chapter.sources"), {}, {}};
        std::set<std::string> found;
        for (const Chapter& one : document.chapters)
            collect(one, found);
        if (!m_assessment.settled.material.source.empty())
            found.insert(m_words.source(m_assessment.settled.material.source));
        found.erase("");
        Bullets list;
        list.items.assign(found.begin(), found.end());
        chapter.blocks.emplace_back(std::move(list));
        return chapter;
    }
};

} // namespace

Document buildReport(const Arrangement& arrangement, const Assessment& assessment, const Catalogues& catalogues,
                     const ReportOptions& options, bool pictures, bool all_derivations)
{
    return Builder(arrangement, assessment, catalogues, options, pictures, all_derivations).run();
}

Document buildBearing(const BearingAssessment& bearing, const Findings& findings, const ReportOptions& options)
{
    const Wording words(Texts::of(options.language), options.typography);
    Document document;
    document.language = options.language == Language::german ? "de" : "en";
    document.kicker = words.say("report.kicker_bearing");
    document.title = bearing.rating.designation.empty() ? words.say("report.untitled") : bearing.rating.designation;
    const bool stops = hasStop(findings);
    if (bearing.L10_h && bearing.required_L_h)
        document.verdict = {words.say(bearing.met.value_or(false) ? "report.life_met" : "report.life_missed",
                                      {{"L10_h", *bearing.L10_h},
                                       {"a1", bearing.a1},
                                       {"L_h", bearing.a1 * *bearing.L10_h},
                                       {"required_L_h", *bearing.required_L_h}}),
                            bearing.met.value_or(false) && !stops ? Tone::met : Tone::stop};
    else if (bearing.L10_h)
        document.verdict = {
            words.say("report.life_found", {{"L10_h", *bearing.L10_h}, {"a1", bearing.a1}, {"L_h", bearing.a1 * *bearing.L10_h}}),
            stops ? Tone::stop : Tone::plain};
    else
        document.verdict = {words.say("report.no_life"), stops ? Tone::stop : Tone::plain};
    if (!findings.empty()) {
        Chapter chapter{words.say("chapter.findings"), {}, {}};
        for (const Severity severity : {Severity::stop, Severity::caution, Severity::note}) {
            for (const Finding& finding : findings) {
                if (finding.severity == severity)
                    chapter.blocks.emplace_back(Builder::plainNotice(finding, words));
            }
        }
        document.chapters.push_back(std::move(chapter));
    }
    if (!bearing.rating.designation.empty())
        document.chapters.push_back(
            Builder::bearingChapter(words.say("chapter.bearing"), bearing, nullptr, {}, words, [](std::size_t) { return true; }));
    Chapter cautions{words.say("chapter.cautions"), {}, {}};
    Bullets list;
    for (const char* key : {"no_replacement", "statistical", "people"})
        list.items.push_back(words.say(std::string("caution.") + key));
    cautions.blocks.emplace_back(std::move(list));
    document.chapters.push_back(std::move(cautions));
    document.foot = words.say("report.foot", {{"version", options.program_version}});
    return document;
}

} // namespace shaftwright::report
