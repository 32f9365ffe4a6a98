#include "base/utf8.h"
#include "lists/line_text.h"
#include "lists/table.h"

#include <algorithm>

namespace throwline::lists {

namespace {

std::size_t width_of(const std::string& text) {
    return characters_of(text).size();
}

/// The columns in which something stands, and how wide they are.
struct Layout {
    std::vector<std::size_t> columns;
    std::vector<std::size_t> widths;
};

Layout layout_of(const Table& table) {
    Layout layout;
    for (std::size_t column = 0; column < table.columns.size(); ++column) {
        if (is_empty_column(table, column)) {
            continue;
        }
        std::size_t width = width_of(table.columns[column].title);
        for (const Section& section : table.sections) {
            for (const Row& row : section.rows) {
                width = std::max(width, width_of(line_text(row.cells[column].text)));
            }
        }
        layout.columns.push_back(column);
        layout.widths.push_back(width);
    }
    return layout;
}

/// One line; what is missing to a column's width stands before or behind its text, and nothing at
/// the end of the line.
template <class TextAt>
std::string line(const Table& table, const Layout& layout, const TextAt& text_at) {
    std::string line;
    for (std::size_t i = 0; i < layout.columns.size(); ++i) {
        const std::size_t column = layout.columns[i];
        const std::string text = line_text(text_at(column));
        const std::size_t missing = layout.widths[i] - width_of(text);
        const bool right = table.columns[column].align == Align::right;
        line.append(i == 0 ? 0 : 2, ' ');
        line.append(right ? missing : 0, ' ');
        line += text;
        line.append(right ? 0 : missing, ' ');
    }
    line.erase(line.find_last_not_of(' ') + 1);
    line += '\n';
    return line;
}

std::string section_text(const Table& table, const Layout& layout, const Section& section) {
    std::string text;
    if (!section.heading.empty()) {
        text += line_text(section.heading) + "\n";
    }
    if (!section.rows.empty()) {
        text +=
            line(table, layout, [&](std::size_t column) { return table.columns[column].title; });
    }
    for (const Row& row : section.rows) {
        text += line(table, layout, [&](std::size_t column) { return row.cells[column].text; });
    }
    for (const std::string& remark : section.remarks) {
        text += line_text(remark) + "\n";
    }
    return text;
}

} // namespace

bool is_empty_column(const Table& table, std::size_t column) {
    return std::all_of(table.sections.begin(), table.sections.end(), [&](const Section& section) {
        return std::all_of(section.rows.begin(), section.rows.end(), [&](const Row& row) {
            return row.cells[column].text.empty() && !row.cells[column].number;
        });
    });
}

std::string as_text(const Table& table) {
    const Layout layout = layout_of(table);
    std::string text = line_text(table.title) + "\n";
    for (const Section& section : table.sections) {
        text += '\n';
        text += section_text(table, layout, section);
    }
    if (!table.cautions.empty()) {
        text += "\n";
    }
    for (const std::string& caution : table.cautions) {
        text += caution + "\n";
    }
    return text;
}

} // namespace throwline::lists
