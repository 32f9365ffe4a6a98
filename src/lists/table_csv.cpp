#include "base/length_text.h"
#include "lists/plain_number.h"
#include "lists/table.h"

#include <string_view>

namespace throwline::lists {

namespace {

/// What a spreadsheet takes for the beginning of a formula.
constexpr std::string_view kFormulaStarts = "=+-@\t\r";

std::string field(std::string_view text) {
    const bool quoted = text.find_first_of(",\"\r\n") != std::string_view::npos;
    if (!quoted) {
        return std::string{text};
    }
    std::string field{'"'};
    for (const char c : text) {
        field += c;
        if (c == '"') {
            field += c;
        }
    }
    return field + '"';
}

std::string text_field(const std::string& text) {
    const bool formula = !text.empty() && kFormulaStarts.find(text.front()) != std::string::npos;
    return field(formula ? "'" + text : text);
}

std::string cell_field(const Cell& cell) {
    return cell.number ? shortest(plain_number(*cell.number)) : text_field(cell.text);
}

void add_line(std::string& csv, const std::vector<std::string>& fields) {
    for (std::size_t i = 0; i < fields.size(); ++i) {
        csv += i == 0 ? "" : ",";
        csv += fields[i];
    }
    csv += "\r\n";
}

} // namespace

std::string as_csv(const Table& table) {
    const bool with_section = table.sections.size() > 1;
    std::string csv;
    std::vector<std::string> header;
    if (with_section) {
        header.emplace_back("section");
    }
    for (const Column& column : table.columns) {
        header.push_back(field(column.key));
    }
    add_line(csv, header);
    for (const Section& section : table.sections) {
        for (const Row& row : section.rows) {
            if (row.total) {
                continue;
            }
            std::vector<std::string> fields;
            if (with_section) {
                fields.push_back(text_field(section.heading));
            }
            for (const Cell& cell : row.cells) {
                fields.push_back(cell_field(cell));
            }
            add_line(csv, fields);
        }
    }
    return csv;
}

} // namespace throwline::lists
