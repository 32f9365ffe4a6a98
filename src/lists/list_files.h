#pragma once

#include "base/result.h"
#include "lists/table.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Lists as files: which form they take, and where they go.
namespace throwline::lists {

enum class ListForm { text, csv, json };

/// Several lists in one text or one JSON object; as CSV there can be one only.
std::string lists_in_one(std::span<const Table> tables, ListForm form);

/// Whether a name stands for a folder: it ends in a slash, or there is a folder of that name.
bool names_folder(const std::string& path);

/// The file of a list in a folder.
std::string file_in(const std::string& folder, std::string_view list, ListForm form);

/// Writes each list to its file in a folder, which is made when it is not there. Gives the
/// names of the files.
Result<std::vector<std::string>> write_each(std::span<const Table> tables, ListForm form,
                                            const std::string& folder);

} // namespace throwline::lists
