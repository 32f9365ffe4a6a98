#include "lists/list_cases.h"

#include "support/small_plan.h"
#include "support/tenfold.h"

#include <algorithm>

namespace throwline::lists_test {

Production production_of(const plan::Plan& plan, const std::string& name) {
    return {name, support::analysis_of(plan)};
}

const std::vector<Production>& productions() {
    static const std::vector<Production> kAll = [] {
        std::vector<Production> all;
        for (const auto& entry :
             std::filesystem::directory_iterator(support::source_folder() / "demo")) {
            if (entry.path().extension() == ".json") {
                const std::string name = entry.path().filename().string();
                all.push_back(production_of(support::demo_plan(name), name));
            }
        }
        std::sort(all.begin(), all.end(),
                  [](const Production& a, const Production& b) { return a.name < b.name; });
        all.push_back(production_of(support::repeated(support::demo_plan("cookery.json"), 10),
                                    "cookery tenfold"));
        plan::Plan empty = testing_support::bare_room();
        empty.beats.clear();
        all.push_back(production_of(empty, "an empty room"));
        return all;
    }();
    return kAll;
}

lists::Table list(const Production& production, const std::string& name) {
    for (const lists::ListKind& kind : lists::all_lists()) {
        if (kind.name == name) {
            return kind.make({production.analysis, support::shipped_catalogue()});
        }
    }
    ADD_FAILURE() << "there is no list " << name;
    return {};
}

const lists::Cell& cell(const lists::Table& table, const lists::Row& row, const std::string& key) {
    static const lists::Cell kNothing;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (table.columns[i].key == key) {
            return row.cells[i];
        }
    }
    ADD_FAILURE() << table.name << " has no column " << key;
    return kNothing;
}

std::vector<std::string> texts(const lists::Table& table, const std::string& key) {
    std::vector<std::string> all;
    for (const lists::Section& section : table.sections) {
        for (const lists::Row& row : section.rows) {
            if (!row.total) {
                all.push_back(cell(table, row, key).text);
            }
        }
    }
    return all;
}

double sum(const lists::Table& table, const std::string& key) {
    double sum = 0.0;
    for (const lists::Section& section : table.sections) {
        for (const lists::Row& row : section.rows) {
            sum += row.total ? 0.0 : cell(table, row, key).number.value_or(0.0);
        }
    }
    return sum;
}

} // namespace throwline::lists_test
