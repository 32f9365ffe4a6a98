#include "survey/recce_rows.h"

#include "plan/names.h"
#include "survey/recce_cursor.h"
#include "survey/recce_quotes.h"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace throwline::survey {

namespace {

struct KindWord {
    RowKind kind;
    std::string_view word;
};
/// Kinds whose lines begin with a word of their own.
constexpr std::array<KindWord, 13> kKindWords{{{RowKind::corners, "corners"},
                                               {RowKind::square, "square"},
                                               {RowKind::squareness, "squareness"},
                                               {RowKind::units, "units"},
                                               {RowKind::tape, "tape"},
                                               {RowKind::point, "point"},
                                               {RowKind::along, "along"},
                                               {RowKind::solid, "solid"},
                                               {RowKind::round, "round"},
                                               {RowKind::height, "height"},
                                               {RowKind::outlet, "outlet"},
                                               {RowKind::bearing, "bearing"},
                                               {RowKind::note, "note"}}};

std::string_view word_of(RowKind kind) {
    for (const KindWord& entry : kKindWords) {
        if (entry.kind == kind) {
            return entry.word;
        }
    }
    return {};
}

std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines{{}};
    for (const char c : text) {
        if (c == '\n') {
            lines.emplace_back();
        } else if (c != '\r') {
            lines.back() += c;
        }
    }
    if (lines.back().empty()) {
        lines.pop_back();
    }
    return lines;
}

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) {
        text += line + '\n';
    }
    return text;
}

std::string trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t");
    const std::size_t last = text.find_last_not_of(" \t");
    return first == std::string_view::npos ? std::string{}
                                           : std::string{text.substr(first, last - first + 1)};
}

/// A line without its comment, and the comment without its sign.
struct Parts {
    std::string body;
    std::string remark;
};
Parts parts_of(const std::string& line) {
    RecceCursor cursor{line, {}};
    cursor.next_line();
    if (!cursor.at_quote() && lower_case(cursor.peek_word()) == "note") {
        return {trimmed(line), {}};
    }
    Parts parts{cursor.take_rest(), {}};
    const std::size_t sign = line.find('#', line.find(parts.body) + parts.body.size());
    if (sign != std::string::npos) {
        parts.remark = trimmed(std::string_view{line}.substr(sign + 1));
    }
    return parts;
}

/// Takes the fields of one line apart, left to right.
class RowReader {
  public:
    RowReader(RecceRow& row, const std::string& body) : row_{row}, cursor_{body, {}} {
        cursor_.next_line();
    }

    void read() {
        const bool quoted = cursor_.at_quote();
        const std::string word = quoted ? std::string{} : lower_case(cursor_.peek_word());
        const auto known = std::find_if(kKindWords.begin(), kKindWords.end(),
                                        [&](const KindWord& entry) { return entry.word == word; });
        if (known == kKindWords.end()) {
            read_named();
            return;
        }
        row_.kind = known->kind;
        cursor_.take_word();
        cursor_.skip(U':');
        read_known();
    }

  private:
    void read_known() {
        switch (row_.kind) {
        case RowKind::along:
            take_ends();
            read_start();
            cursor_.skip(U':');
            break;
        case RowKind::bearing:
            take_ends();
            break;
        case RowKind::outlet:
            take_name(RowField::note);
            cursor_.skip_word("along");
            take_ends();
            break;
        case RowKind::height:
            if (cursor_.skip_word("at")) {
                take_name(RowField::from);
            }
            break;
        case RowKind::solid:
        case RowKind::round:
            take_thing();
            break;
        case RowKind::point:
            take_name(RowField::from);
            break;
        case RowKind::note:
            read_note();
            return;
        case RowKind::corners:
        case RowKind::square:
        case RowKind::squareness:
        case RowKind::units:
        case RowKind::tape:
        case RowKind::reading:
        case RowKind::floor_point:
        case RowKind::remark:
        case RowKind::unclear:
            break;
        }
        take_rest(RowField::reading);
    }

    /// "A-B 3m" or "jar: A 3m, B 2m".
    void read_named() {
        RecceCursor start = cursor_;
        take_name(RowField::from);
        if (cursor_.skip_dash()) {
            row_.kind = RowKind::reading;
            take_name(RowField::to);
            if (!cursor_.skip(U':')) {
                cursor_.skip(U'=');
            }
            mark(RowField::reading);
            row_.reading = cursor_.take_length();
            if (cursor_.at_quote()) {
                take_quoted_note();
            }
            row_.reading += trailing();
        } else if (cursor_.skip(U':')) {
            row_.kind = RowKind::floor_point;
            take_rest(RowField::reading);
        } else {
            cursor_ = start;
            row_.kind = RowKind::unclear;
            row_.from.clear();
            row_.columns = {};
            take_rest(RowField::reading);
        }
    }

    /// What stands behind a reading and does not belong to it stays with it, so that it is seen.
    std::string trailing() {
        const std::string rest = cursor_.take_rest();
        return rest.empty() || row_.reading.empty() ? rest : fmt::format(" {}", rest);
    }

    /// "from B" turns a chain round.
    void read_start() {
        if (cursor_.at_quote() || !cursor_.skip_word("from")) {
            return;
        }
        std::string start = name();
        if (start == row_.to) {
            std::swap(row_.from, row_.to);
        }
    }

    void read_note() {
        const std::string text = cursor_.take_raw_rest();
        row_.columns[2] = 1;
        const std::size_t colon = text.find(':');
        for (const auto& entry : plan::kSiteNoteKindNames) {
            if (colon != std::string::npos && lower_case(text.substr(0, colon)) == entry.name) {
                row_.from = entry.name;
                row_.reading = trimmed(std::string_view{text}.substr(colon + 1));
                return;
            }
        }
        row_.reading = text;
    }

    void take_thing() {
        mark(RowField::from);
        if (cursor_.at_quote()) {
            row_.from = cursor_.take_quoted().value_or(std::string{});
        } else {
            row_.from = cursor_.take_words();
        }
        cursor_.skip(U':');
    }

    void take_quoted_note() {
        mark(RowField::note);
        if (const Result<std::string> note = cursor_.take_quoted()) {
            row_.note = *note;
        }
    }

    void take_ends() {
        take_name(RowField::from);
        if (cursor_.skip_dash()) {
            take_name(RowField::to);
        }
    }

    std::string name() {
        return cursor_.at_quote() ? cursor_.take_quoted().value_or(std::string{})
                                  : cursor_.take_word();
    }
    void take_name(RowField field) {
        mark(field);
        row_.field(field) = name();
    }
    void take_rest(RowField field) {
        mark(field);
        row_.field(field) = cursor_.take_raw_rest();
    }
    void mark(RowField field) {
        row_.columns[static_cast<std::size_t>(field)] = cursor_.place().column;
    }

    RecceRow& row_;
    RecceCursor cursor_;
};

/// The name of what the ends belong to, then "A-B".
std::string ends_text(const RecceRow& row) {
    return row.to.empty() ? recce_name(row.from)
                          : fmt::format("{}-{}", recce_name(row.from), recce_name(row.to));
}

std::string behind(const std::string& text) {
    return text.empty() ? text : fmt::format(" {}", text);
}

std::string body_text(const RecceRow& row) {
    const std::string_view word = word_of(row.kind);
    switch (row.kind) {
    case RowKind::reading:
        return ends_text(row) + behind(row.reading)
               + behind(row.note.empty() ? row.note : recce_quoted(row.note));
    case RowKind::floor_point:
        return fmt::format("{}: {}", recce_name(row.from), row.reading);
    case RowKind::along:
        return fmt::format("{} {}: {}", word, ends_text(row), row.reading);
    case RowKind::bearing:
        return fmt::format("{} {}{}", word, ends_text(row), behind(row.reading));
    case RowKind::outlet:
        return fmt::format("{} {} along {}{}", word, recce_name(row.note), ends_text(row),
                           behind(row.reading));
    case RowKind::height:
        return fmt::format("{}{}{}", word,
                           row.from.empty() ? row.from
                                            : fmt::format(" at {}", recce_name(row.from)),
                           behind(row.reading));
    case RowKind::solid:
    case RowKind::round:
        return fmt::format("{} {}: {}", word, recce_name(row.from), row.reading);
    case RowKind::point:
        return fmt::format("{} {}{}", word, recce_name(row.from), behind(row.reading));
    case RowKind::note:
        return fmt::format("{} {}{}", word,
                           row.from.empty() ? row.from : fmt::format("{}: ", row.from),
                           row.reading);
    case RowKind::corners:
    case RowKind::square:
    case RowKind::squareness:
    case RowKind::units:
    case RowKind::tape:
        return fmt::format("{}{}", word, behind(row.reading));
    case RowKind::remark:
        return fmt::format("# {}", row.reading);
    case RowKind::unclear:
        return row.reading;
    }
    return {};
}

bool goes_on(const std::string& body) {
    return !body.empty() && body.back() == ',';
}

/// One row from a line and those that it goes on in.
RecceRow row_at(const std::vector<std::string>& lines, std::size_t& index) {
    RecceRow row;
    row.line = static_cast<int>(index) + 1;
    Parts parts = parts_of(lines[index]);
    if (parts.body.empty()) {
        row.kind = RowKind::remark;
        row.reading = parts.remark;
        return row;
    }
    while (goes_on(parts.body) && index + 1 < lines.size()) {
        const Parts more = parts_of(lines[++index]);
        parts.body += behind(more.body);
        parts.remark += parts.remark.empty() ? more.remark : behind(more.remark);
        ++row.lines;
    }
    row.remark = parts.remark;
    RowReader{row, parts.body}.read();
    return row;
}

} // namespace

const std::string& RecceRow::field(RowField which) const {
    switch (which) {
    case RowField::from:
        return from;
    case RowField::to:
        return to;
    case RowField::reading:
        return reading;
    case RowField::note:
        break;
    }
    return note;
}

std::string& RecceRow::field(RowField which) {
    return const_cast<std::string&>(std::as_const(*this).field(which));
}

std::vector<RecceRow> recce_rows(std::string_view text) {
    std::vector<RecceRow> rows;
    const std::vector<std::string> lines = lines_of(text);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (!trimmed(lines[i]).empty()) {
            rows.push_back(row_at(lines, i));
        }
    }
    return rows;
}

std::string row_text(const RecceRow& row) {
    return body_text(row) + (row.remark.empty() ? row.remark : fmt::format("  # {}", row.remark));
}

std::string with_row(std::string_view text, const RecceRow& row) {
    std::vector<std::string> lines = lines_of(text);
    if (row.line < 1) {
        lines.push_back(row_text(row));
        return joined(lines);
    }
    lines = lines_of(without_row(text, row));
    lines.insert(lines.begin() + row.line - 1, row_text(row));
    return joined(lines);
}

std::string without_row(std::string_view text, const RecceRow& row) {
    std::vector<std::string> lines = lines_of(text);
    if (row.line >= 1) {
        const auto first = lines.begin() + row.line - 1;
        lines.erase(first, first + row.lines);
    }
    return joined(lines);
}

RowField field_at(const RecceRow& row, const Place& place) {
    RowField found = RowField::reading;
    int nearest = 0;
    if (place.line > row.line) {
        return found;
    }
    for (const RowField field : kRowFields) {
        const int column = row.columns[static_cast<std::size_t>(field)];
        if (column > nearest && column <= place.column) {
            found = field;
            nearest = column;
        }
    }
    return found;
}

} // namespace throwline::survey
