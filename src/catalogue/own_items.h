#pragma once

#include "catalogue/own_rows.h"

#include <filesystem>
#include <string>
#include <vector>

/// A user's file of own items, as with_own_items() reads it; changed here, and always written
/// whole. What it holds besides the item that is meant stays as it is.
namespace throwline::catalogue {

/// Names of all rows of the file; none when there is no such file. Errors: it is no file of items.
Checked<std::vector<std::string>> own_names(const std::filesystem::path& file);

/// Puts an item into its table of the file, in place of the one of that name. Makes the file and
/// its folder when they are not there. Errors: no name, values that the tables would refuse, with
/// the key as the place ("/height_m"), a file that cannot be read or written.
Checked<void> own_item_kept(const std::filesystem::path& file, const OwnRow& row);
/// Takes an item of any table out of the file. Errors: it is not there.
Checked<void> own_item_removed(const std::filesystem::path& file, const std::string& name);

} // namespace throwline::catalogue
