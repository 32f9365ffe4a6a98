#include "command/arguments.h"
#include "command/catalogue_input.h"
#include "command/commands.h"
#include "command/parse_arguments.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::command {

namespace {

struct Row {
    std::string name;
    std::string source;
};

struct Table {
    std::string name;
    std::vector<Row> rows;
};

template <class CatalogueRow>
Table table_of(std::string name, const std::vector<CatalogueRow>& rows) {
    Table table{std::move(name), {}};
    for (const CatalogueRow& row : rows) {
        table.rows.push_back({row.name, row.source});
    }
    return table;
}

std::vector<Table> tables_of(const catalogue::Catalogue& catalogue) {
    return {
        table_of("sensors", catalogue.sensors),   table_of("lenses", catalogue.lenses),
        table_of("supports", catalogue.supports), table_of("instruments", catalogue.instruments),
        table_of("filters", catalogue.filters),   table_of("stock", catalogue.stock),
        table_of("finishes", catalogue.finishes), table_of("landmarks", catalogue.landmarks),
        table_of("papers", catalogue.papers),     table_of("scales", catalogue.scales)};
}

/// ASCII letters only, whatever the locale.
std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return text;
}

/// Leaves the named table only. An error names the nearest one.
Result<std::vector<Table>> narrowed(std::vector<Table> tables, const std::string& name) {
    const auto found = std::find_if(tables.begin(), tables.end(),
                                    [&](const Table& table) { return table.name == name; });
    if (found == tables.end()) {
        return failure(unknown_name("table", name, names_of(tables)));
    }
    return std::vector<Table>{std::move(*found)};
}

/// Leaves the rows whose name has the word in it, and the tables that still have rows.
void search(std::vector<Table>& tables, const std::string& word) {
    const std::string wanted = lower(word);
    for (Table& table : tables) {
        std::erase_if(table.rows, [&](const Row& row) {
            return lower(row.name).find(wanted) == std::string::npos;
        });
    }
    std::erase_if(tables, [](const Table& table) { return table.rows.empty(); });
}

std::string text_of(const std::vector<Table>& tables) {
    std::string text;
    for (const Table& table : tables) {
        text += fmt::format("{}{}\n", text.empty() ? "" : "\n", table.name);
        for (const Row& row : table.rows) {
            text += fmt::format("  {}\n", row.name);
        }
    }
    return text;
}

JsonValue::Object json_of(const std::vector<Table>& tables) {
    JsonValue::Object json;
    for (const Table& table : tables) {
        JsonValue::Array rows;
        for (const Row& row : table.rows) {
            rows.emplace_back(JsonValue::Object{{"name", row.name}, {"source", row.source}});
        }
        json.emplace_back(table.name, std::move(rows));
    }
    return json;
}

Checked<Answer> answer(const Arguments& arguments, std::istream&) {
    const auto catalogue = catalogue_for(arguments);
    if (!catalogue) {
        return tl::unexpected{catalogue.error()};
    }
    std::vector<Table> tables = tables_of(*catalogue);
    if (!arguments.operands().empty()) {
        auto one = narrowed(std::move(tables), arguments.operands().front());
        if (!one) {
            return tl::unexpected{Errors{one.error()}};
        }
        tables = std::move(*one);
    }
    if (const auto word = arguments.value("--search")) {
        search(tables, *word);
    }
    Answer answer;
    answer.text = tables.empty() ? "nothing has that name\n" : text_of(tables);
    answer.json = json_of(tables);
    return answer;
}

} // namespace

Command catalogue_command() {
    return {.name = "catalogue",
            .summary = "names that a plan can use: lenses, lamps, furniture, papers, ...",
            .operands = "[TABLE]",
            .operands_min = 0,
            .operands_max = 1,
            .options = {{"--search", "", "WORD", "only names with this in it"}, kLensdata, kJson},
            .example = "throwline catalogue instruments --search fresnel",
            .answer = answer};
}

} // namespace throwline::command
