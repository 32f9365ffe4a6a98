#pragma once

#include "lists/lists.h"
#include "support/demo_plan.h"

#include <map>
#include <string>
#include <vector>

/// Productions to make lists of, and ways to read a list.
namespace throwline::lists_test {

/// An analysis that keeps its plan alive; the catalogue is the shipped one.
struct Production {
    std::string name;
    checks::Analysis analysis;

    const plan::Plan& plan() const { return *analysis.plan; }
};

/// Every plan of demo/, the cookery production tenfold, and an empty room.
const std::vector<Production>& productions();
Production production_of(const plan::Plan& plan, const std::string& name = "plan");

/// A list by its name; a failed test when there is none of that name.
lists::Table list(const Production& production, const std::string& name);

/// Texts under a column, of all rows that are no totals.
std::vector<std::string> texts(const lists::Table& table, const std::string& key);
/// Sum of the numbers under a column, over the rows that are no totals.
double sum(const lists::Table& table, const std::string& key);
/// The cell of a row under a column.
const lists::Cell& cell(const lists::Table& table, const lists::Row& row, const std::string& key);

} // namespace throwline::lists_test
