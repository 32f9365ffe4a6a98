#include "catalogue/catalogue.h"

#include "base/text_file.h"
#include "catalogue/json_document.h"
#include "catalogue/row_reader.h"
#include "catalogue/tables.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <fmt/format.h>

namespace throwline::catalogue {

namespace fs = std::filesystem;

namespace {

/// 32 MiB: far above any real table, far below what would hurt a small machine.
constexpr std::uintmax_t kLargestTableFile = std::uintmax_t{32} * 1024 * 1024;

void read_file(const fs::path& path, const TableFile& file, Catalogue& catalogue, Errors& errors) {
    const Result<std::string> text = read_text_file(path, kLargestTableFile);
    if (!text) {
        errors.push_back(text.error());
        return;
    }
    const Checked<JsonNode> root = parse_json(*text, file.file);
    if (!root) {
        errors.insert(errors.end(), root.error().begin(), root.error().end());
        return;
    }
    read_tables(*root, file, catalogue, errors);
}

/// What a user gets of so many errors: the first, and word that there are more.
Errors bounded(Errors errors) {
    if (errors.size() > kMostTableErrors) {
        const std::string file = errors.front().place.file;
        errors.resize(kMostTableErrors);
        errors.push_back({"there are more errors than are told here", {file, {}, 0, 0}});
    }
    return errors;
}

/// The rest of the program asks for these by name and has no answer without them.
void require_landmarks(const Catalogue& catalogue, const std::string& file, Errors& errors) {
    for (const std::string_view name : kLandmarks) {
        const bool known = std::any_of(catalogue.landmarks.begin(), catalogue.landmarks.end(),
                                       [&](const BodyLandmark& row) { return row.name == name; });
        if (!known) {
            errors.push_back(
                {fmt::format("the landmark \"{}\" is missing", name), {file, {}, 0, 0}});
        }
    }
}

bool holds_tables(const fs::path& folder) {
    std::error_code ignored;
    return fs::is_regular_file(folder / "sensors.json", ignored);
}

} // namespace

Checked<Catalogue> load_catalogue(const fs::path& folder) {
    Catalogue catalogue;
    Errors errors;
    for (const std::string& table : table_names()) {
        const fs::path path = folder / (table + ".json");
        read_file(path, {path.string(), table, {}}, catalogue, errors);
    }
    if (errors.empty()) {
        require_landmarks(catalogue, (folder / "landmarks.json").string(), errors);
    }
    if (!errors.empty()) {
        return tl::unexpected<Errors>{bounded(std::move(errors))};
    }
    return catalogue;
}

Checked<Catalogue> with_own_items(Catalogue base, const fs::path& file) {
    Errors errors;
    read_file(file, {file.string(), {}, "own item, no source given"}, base, errors);
    if (!errors.empty()) {
        return tl::unexpected<Errors>{bounded(std::move(errors))};
    }
    return base;
}

fs::path tables_beside(const fs::path& program) {
    for (const char* const place :
         {"../lensdata", "lensdata", "../share/throwline/lensdata", "../../lensdata"}) {
        const fs::path folder = (program.parent_path() / place).lexically_normal();
        if (holds_tables(folder)) {
            return folder;
        }
    }
    return {};
}

fs::path shipped_folder() {
    const char* const named = std::getenv("THROWLINE_LENSDATA");
    if (named != nullptr && *named != '\0') {
        return named;
    }
    std::error_code code;
    const fs::path program = fs::read_symlink("/proc/self/exe", code);
    return code ? fs::path{} : tables_beside(program);
}

} // namespace throwline::catalogue
