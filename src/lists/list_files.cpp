#include "lists/list_files.h"

#include "base/text_file.h"

#include <filesystem>
#include <fmt/format.h>

namespace throwline::lists {

namespace {

std::string_view extension_of(ListForm form) {
    switch (form) {
    case ListForm::text:
        return ".txt";
    case ListForm::csv:
        return ".csv";
    case ListForm::json:
        return ".json";
    }
    return {};
}

} // namespace

std::string lists_in_one(std::span<const Table> tables, ListForm form) {
    if (form == ListForm::json) {
        return tables.size() == 1 ? as_json(tables.front()) : as_json(tables);
    }
    std::string text;
    for (const Table& table : tables) {
        text += text.empty() ? "" : "\n\n";
        text += form == ListForm::csv ? as_csv(table) : as_text(table);
    }
    return text;
}

bool names_folder(const std::string& path) {
    std::error_code error;
    return path.ends_with('/') || std::filesystem::is_directory(path, error);
}

std::string file_in(const std::string& folder, std::string_view list, ListForm form) {
    std::filesystem::path file{folder};
    file /= list;
    file += extension_of(form);
    return file.string();
}

Result<std::vector<std::string>> write_each(std::span<const Table> tables, ListForm form,
                                            const std::string& folder) {
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (error) {
        return failure(fmt::format("folder {} cannot be made: {}", folder, error.message()));
    }
    std::vector<std::string> files;
    for (const Table& table : tables) {
        const std::string file = file_in(folder, table.name, form);
        const std::span<const Table> one{&table, 1};
        if (const auto written = write_file_whole(file, lists_in_one(one, form)); !written) {
            return tl::unexpected{written.error()};
        }
        files.push_back(file);
    }
    return files;
}

} // namespace throwline::lists
