#include "catalogue/own_items.h"

#include "base/text_file.h"
#include "base/utf8.h"
#include "catalogue/json_document.h"
#include "catalogue/tables.h"

#include <algorithm>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace throwline::catalogue {

namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

constexpr std::uintmax_t kLargestFile = std::uintmax_t{32} * 1024 * 1024;

tl::unexpected<Errors> failed(Error error) {
    return tl::unexpected<Errors>{Errors{std::move(error)}};
}

/// The file's object; an empty one when there is no file.
Checked<Json> read(const fs::path& file) {
    std::error_code ignored;
    if (!fs::exists(file, ignored)) {
        return Json::object();
    }
    const Result<std::string> text = read_text_file(file, kLargestFile);
    if (!text) {
        return failed(text.error());
    }
    // The strict reader has the better errors.
    if (const Checked<JsonNode> checked = parse_json(*text, file.string()); !checked) {
        return tl::unexpected<Errors>{checked.error()};
    }
    Json root = Json::parse(*text, nullptr, false);
    if (!root.is_object()) {
        return failed({"a file of own items is an object of tables", {file.string(), {}, 1, 1}});
    }
    return root;
}

/// "/height_m" of "/stock/0/height_m": who is asked for the item does not see the file.
std::string key_pointer(const std::string& pointer) {
    const bool is_key = std::count(pointer.begin(), pointer.end(), '/') > 2;
    return is_key ? pointer.substr(pointer.rfind('/')) : std::string{};
}

/// Written beside the file first and read as the program will read it, so that a file that does not
/// open again never takes its place.
Checked<void> write(const fs::path& file, const Json& root) {
    std::error_code failed_to;
    if (file.has_parent_path()) {
        fs::create_directories(file.parent_path(), failed_to);
    }
    fs::path trial = file;
    trial += ".trial";
    const std::string text = root.dump(2) + "\n";
    if (const Result<void> written = write_file_whole(trial, text); !written) {
        return failed(written.error());
    }
    const Checked<Catalogue> readable = with_own_items({}, trial);
    fs::remove(trial, failed_to);
    if (!readable) {
        Errors errors = readable.error();
        for (Error& error : errors) {
            error.place = {{}, key_pointer(error.place.pointer)};
        }
        return tl::unexpected<Errors>{std::move(errors)};
    }
    if (const Result<void> written = write_file_whole(file, text); !written) {
        return failed(written.error());
    }
    return {};
}

bool is_named(const Json& row, const std::string& folded) {
    const auto name = row.is_object() ? row.find("name") : row.end();
    return row.is_object() && name != row.end() && name->is_string()
           && folded_name(name->get<std::string>()) == folded;
}

Json json_of(const OwnRow& row) {
    Json object = Json::object();
    for (const auto& [key, value] : row.values) {
        std::visit([&, &key = key](const auto& held) { object[key] = held; }, value);
    }
    return object;
}

} // namespace

Checked<std::vector<std::string>> own_names(const fs::path& file) {
    const Checked<Json> root = read(file);
    if (!root) {
        return tl::unexpected<Errors>{root.error()};
    }
    std::vector<std::string> names;
    for (const auto& table : *root) {
        for (const auto& row : table) {
            if (row.is_object() && row.contains("name") && row["name"].is_string()) {
                names.push_back(row["name"].get<std::string>());
            }
        }
    }
    return names;
}

Checked<void> own_item_kept(const fs::path& file, const OwnRow& row) {
    const std::string name = folded_name(row.name());
    if (name.empty()) {
        return failed({"an own item needs a name", {{}, "/name"}});
    }
    Checked<Json> root = read(file);
    if (!root) {
        return tl::unexpected<Errors>{root.error()};
    }
    Json& table = (*root)[row.table];
    if (!table.is_array()) {
        table = Json::array();
    }
    const auto known = std::find_if(table.begin(), table.end(),
                                    [&](const Json& one) { return is_named(one, name); });
    if (known != table.end()) {
        *known = json_of(row);
    } else {
        table.push_back(json_of(row));
    }
    return write(file, *root);
}

Checked<void> own_item_removed(const fs::path& file, const std::string& name) {
    Checked<Json> root = read(file);
    if (!root) {
        return tl::unexpected<Errors>{root.error()};
    }
    const std::string folded = folded_name(name);
    bool was_there = false;
    for (auto& table : *root) {
        for (std::size_t i = table.size(); i-- > 0;) {
            if (is_named(table[i], folded)) {
                table.erase(i);
                was_there = true;
            }
        }
    }
    if (!was_there) {
        return failed({fmt::format("{} is no own item", in_quotes(name)), {}});
    }
    return write(file, *root);
}

} // namespace throwline::catalogue
