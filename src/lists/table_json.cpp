#include "lists/plain_number.h"
#include "lists/table.h"

#include <nlohmann/json.hpp>

namespace throwline::lists {

namespace {

using Json = nlohmann::ordered_json;

Json cell_json(const Cell& cell) {
    if (cell.number) {
        return plain_number(*cell.number);
    }
    return cell.text.empty() ? Json{} : Json(cell.text);
}

Json rows_json(const Table& table, const Section& section, bool totals) {
    Json rows = Json::array();
    for (const Row& row : section.rows) {
        if (row.total != totals) {
            continue;
        }
        Json object = Json::object();
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            object[table.columns[i].key] = cell_json(row.cells[i]);
        }
        rows.push_back(std::move(object));
    }
    return rows;
}

Json table_json(const Table& table) {
    Json columns = Json::array();
    for (const Column& column : table.columns) {
        columns.push_back(Json{{"key", column.key}, {"title", column.title}});
    }
    Json sections = Json::array();
    for (const Section& section : table.sections) {
        sections.push_back(Json{{"heading", section.heading},
                                {"rows", rows_json(table, section, false)},
                                {"totals", rows_json(table, section, true)},
                                {"remarks", section.remarks}});
    }
    return Json{{"name", table.name},
                {"title", table.title},
                {"columns", std::move(columns)},
                {"sections", std::move(sections)},
                {"cautions", table.cautions}};
}

std::string text_of(const Json& json) {
    constexpr int kIndent = 2;
    return json.dump(kIndent, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace

std::string as_json(const Table& table) {
    return text_of(table_json(table));
}

std::string as_json(std::span<const Table> tables) {
    Json lists = Json::array();
    for (const Table& table : tables) {
        lists.push_back(table_json(table));
    }
    return text_of(Json{{"lists", std::move(lists)}});
}

} // namespace throwline::lists
