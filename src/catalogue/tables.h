#pragma once

#include "catalogue/catalogue.h"
#include "catalogue/json_document.h"

#include <optional>
#include <string>
#include <string_view>

namespace throwline::catalogue {

/// What one file of tables is read with.
struct TableFile {
    std::string file;
    /// The only table the file may hold; any when empty.
    std::string_view only;
    /// Stands in for a missing "source"; without one it is required in every row.
    std::string_view default_source;
};

/// The keys that tables have at the top of a file, which are also the names of the shipped files.
const std::vector<std::string>& table_names();

/// Reads a parsed file into the tables of `catalogue`. A row replaces the one of the same name;
/// a name that comes twice in the file is an error. What is wrong is added to `errors`.
void read_tables(const JsonNode& root, const TableFile& file, Catalogue& catalogue, Errors& errors);

/// A name without regard to case (ASCII), outer and repeated spaces.
std::string folded_name(std::string_view name);

} // namespace throwline::catalogue
