#pragma once
// A report as chapters of few kinds of blocks, before any writer gives it a form. Plain values; nothing is escaped yet.

#include <string>
#include <variant>
#include <vector>

namespace shaftwright::report
{

/// Weight of a text. Every tone comes with a mark and a word, so that meaning never rests on colour alone.
enum class Tone { plain, lead, second, met, stop, caution, note };

struct Paragraph {
    std::string text;
    Tone tone = Tone::plain;
};

/// Label and value pairs.
struct Fact {
    std::string label, value;
};
struct Facts {
    std::vector<Fact> facts;
};

enum class Align { left, right, decimal };
struct Column {
    std::string head;
    Align align = Align::left;
};
struct Row {
    std::vector<std::string> cells;
    bool strong = false; ///< a sum
    Tone tone = Tone::plain;
};
struct Table {
    std::string caption;
    std::vector<Column> columns;
    std::vector<Row> rows;
};

/// One line of a calculation: name in words, the line itself, and where it comes from.
struct DerivationLine {
    std::string name, line, source;
};
struct DerivationBlock {
    std::string title;
    std::vector<DerivationLine> lines;
};

/// A finding with its advice.
struct Notice {
    Tone tone = Tone::note;
    std::string mark, word; ///< "■", "stop"
    std::string text, advice;
    std::string place; ///< subject, path and case
    std::string source;
    std::string accepted; ///< who took it on themselves; empty: nobody
};

struct Picture {
    std::string svg; ///< well-formed, from core/drawing only
    std::string caption;
};

struct Bullets {
    std::vector<std::string> items;
};

using Block = std::variant<Paragraph, Facts, Table, DerivationBlock, Notice, Picture, Bullets>;

struct Chapter {
    std::string title;
    std::vector<Block> blocks;
    std::vector<Chapter> sections;
};

struct Document {
    std::string language; ///< "en", "de"
    std::string title;
    std::string kicker; ///< small line over the title
    Facts title_block;
    Paragraph verdict;
    std::vector<Chapter> chapters;
    std::string foot;
};

} // namespace shaftwright::report
