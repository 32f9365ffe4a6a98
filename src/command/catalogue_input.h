#pragma once

#include "catalogue/catalogue.h"
#include "command/arguments.h"

#include <string_view>
#include <vector>

namespace throwline::command {

/// The shipped tables and, with --lensdata, the user's own items on top.
Checked<catalogue::Catalogue> catalogue_for(const Arguments& arguments);

/// Names of a table's rows, in its order.
template <class Row>
std::vector<std::string> names_of(const std::vector<Row>& rows) {
    std::vector<std::string> names;
    names.reserve(rows.size());
    for (const Row& row : rows) {
        names.push_back(row.name);
    }
    return names;
}

/// Sentence for a name that no row has: there is no lens "filed zoom"; did you mean field zoom 18x?
std::string unknown_name(std::string_view kind, std::string_view typed,
                         const std::vector<std::string>& names);

} // namespace throwline::command
