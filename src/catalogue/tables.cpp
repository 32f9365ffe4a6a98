#include "catalogue/tables.h"

#include "base/nearest_name.h"
#include "base/utf8.h"
#include "catalogue/rows.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <map>

namespace throwline::catalogue {

namespace {

template <class Row>
void put(std::vector<Row>& rows, Row row) {
    const std::string name = folded_name(row.name);
    const auto same = std::find_if(rows.begin(), rows.end(), [&](const Row& other) {
        return folded_name(other.name) == name;
    });
    if (same == rows.end()) {
        rows.push_back(std::move(row));
    } else {
        *same = std::move(row);
    }
}

void note(Errors& errors, const TableFile& file, std::string message, std::string pointer,
          const JsonNode& at) {
    errors.push_back({std::move(message), {file.file, std::move(pointer), at.line, at.column}});
}

/// False when a row of that name came before in the same file.
bool first_of_its_name(const JsonNode& row, const std::string& pointer, const TableFile& file,
                       std::map<std::string, int>& line_of_name, Errors& errors) {
    const JsonNode* name = row.find("name");
    if (name == nullptr || !name->is(JsonKind::string)) {
        return true;
    }
    const auto [before, fresh] = line_of_name.emplace(folded_name(name->text), name->line);
    if (!fresh) {
        note(errors, file,
             fmt::format("the name {} is used twice, before in line {}", in_quotes(name->text),
                         before->second),
             pointer_to(pointer, "name"), *name);
    }
    return fresh;
}

template <class Row>
void read_rows(const JsonNode& table, std::string_view key, const TableFile& file,
               Row (*row_from)(RowReader&), std::vector<Row>& rows, Errors& errors) {
    const std::string pointer = pointer_to("", key);
    if (!table.is(JsonKind::array)) {
        note(errors, file, fmt::format("expected an array, found {}", name_of(table.kind)), pointer,
             table);
        return;
    }
    std::map<std::string, int> line_of_name;
    for (std::size_t i = 0; i < table.items.size() && errors.size() <= kMostTableErrors; ++i) {
        const JsonNode& node = table.items[i];
        const std::string place = pointer_to(pointer, i);
        if (!node.is(JsonKind::object)) {
            note(errors, file, fmt::format("expected an object, found {}", name_of(node.kind)),
                 place, node);
            continue;
        }
        RowReader reader{node, place, file.file, errors, file.default_source};
        Row row = row_from(reader);
        reader.refuse_unknown_keys();
        if (first_of_its_name(node, place, file, line_of_name, errors) && reader.sound()) {
            put(rows, std::move(row));
        }
    }
}

using TableReader = void (*)(const JsonNode&, std::string_view, const TableFile&, Catalogue&,
                             Errors&);

template <auto row_from, auto rows>
void read_table(const JsonNode& table, std::string_view key, const TableFile& file,
                Catalogue& catalogue, Errors& errors) {
    read_rows(table, key, file, row_from, catalogue.*rows, errors);
}

struct NamedTable {
    std::string_view name;
    TableReader read;
};

constexpr NamedTable kTables[] = {
    {"sensors", read_table<sensor_from, &Catalogue::sensors>},
    {"lenses", read_table<lens_from, &Catalogue::lenses>},
    {"instruments", read_table<instrument_from, &Catalogue::instruments>},
    {"filters", read_table<filter_from, &Catalogue::filters>},
    {"stock", read_table<stock_item_from, &Catalogue::stock>},
    {"supports", read_table<support_from, &Catalogue::supports>},
    {"landmarks", read_table<landmark_from, &Catalogue::landmarks>},
    {"finishes", read_table<finish_from, &Catalogue::finishes>},
    {"papers", read_table<paper_from, &Catalogue::papers>},
    {"scales", read_table<scale_from, &Catalogue::scales>},
};

void refuse_table(const JsonMember& member, const TableFile& file, Errors& errors) {
    const std::string nearest = nearest_name(member.key, table_names());
    std::string message = fmt::format("there is no table {}", in_quotes(member.key));
    message += nearest.empty() ? fmt::format("; there are: {}", fmt::join(table_names(), ", "))
                               : fmt::format("; did you mean \"{}\"?", nearest);
    errors.push_back(
        {std::move(message), {file.file, pointer_to("", member.key), member.line, member.column}});
}

void read_member(const JsonMember& member, const TableFile& file, Catalogue& catalogue,
                 Errors& errors) {
    const auto* const table =
        std::find_if(std::begin(kTables), std::end(kTables),
                     [&](const NamedTable& t) { return t.name == member.key; });
    if (table == std::end(kTables)) {
        refuse_table(member, file, errors);
    } else if (!file.only.empty() && member.key != file.only) {
        note(errors, file, fmt::format("this file holds the table \"{}\" only", file.only),
             pointer_to("", member.key), member.value);
    } else {
        table->read(member.value, member.key, file, catalogue, errors);
    }
}

std::vector<std::string> all_names() {
    std::vector<std::string> names;
    for (const NamedTable& table : kTables) {
        names.emplace_back(table.name);
    }
    return names;
}

} // namespace

const std::vector<std::string>& table_names() {
    static const std::vector<std::string> names = all_names();
    return names;
}

void read_tables(const JsonNode& root, const TableFile& file, Catalogue& catalogue,
                 Errors& errors) {
    if (!root.is(JsonKind::object)) {
        note(errors, file,
             fmt::format("expected an object of tables, found {}", name_of(root.kind)), "", root);
        return;
    }
    for (const JsonMember& member : root.members) {
        if (errors.size() > kMostTableErrors) {
            return;
        }
        read_member(member, file, catalogue, errors);
    }
    if (!file.only.empty() && root.find(file.only) == nullptr) {
        note(errors, file, fmt::format("the table \"{}\" is missing", file.only), "", root);
    }
}

std::string folded_name(std::string_view name) {
    std::string folded;
    for (const char c : name) {
        const bool space = c == ' ' || c == '\t' || c == '\n' || c == '\r';
        if (space && (folded.empty() || folded.back() == ' ')) {
            continue;
        }
        folded.push_back(space                    ? ' '
                         : (c >= 'A' && c <= 'Z') ? static_cast<char>(c - 'A' + 'a')
                                                  : c);
    }
    if (!folded.empty() && folded.back() == ' ') {
        folded.pop_back();
    }
    return folded;
}

} // namespace throwline::catalogue
