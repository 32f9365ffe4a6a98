#include "catalogue/own_items.h"

#include "base/text_file.h"
#include "base/utf8.h"
#include "catalogue/json_document.h"
#include "catalogue/tables.h"

#include <algorithm>
#include <cmath>
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

/// "height m: " of "/stock/0/height_m", for who does not see the file.
std::string field_words(const std::string& pointer) {
    std::string words = pointer.substr(pointer.rfind('/') + 1);
    std::replace(words.begin(), words.end(), '_', ' ');
    return words.empty() ? words : words + ": ";
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
            error = {field_words(error.place.pointer) + error.message, {}};
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

/// Metres to a tenth of a millimetre: what a tape can tell, without the digits of a conversion.
double written_m(Length length) {
    constexpr double kSteps = 10000.0;
    return std::round(length.m() * kSteps) / kSteps;
}

Json row_of(const StockItem& item) {
    Json row{{"name", item.name},
             {"use", file_name_of(item.use)},
             {"shape", file_name_of(item.shape)},
             {"width_m", written_m(item.width)},
             {"depth_m", written_m(item.shape == StockShape::round ? item.width : item.depth)},
             {"height_m", written_m(item.height)}};
    if (item.seat_height > Length{}) {
        row["seat_height_m"] = written_m(item.seat_height);
    }
    if (item.clear_under > Length{}) {
        row["clear_under_m"] = written_m(item.clear_under);
    }
    row["mass_kg"] = item.mass_kg;
    return row;
}

} // namespace

std::string_view file_name_of(StockUse use) {
    switch (use) {
    case StockUse::flat:
        return "flat";
    case StockUse::seat:
        return "seat";
    case StockUse::table:
        return "table";
    case StockUse::storage:
        return "storage";
    case StockUse::bed:
        return "bed";
    case StockUse::appliance:
        return "appliance";
    case StockUse::platform:
        return "platform";
    case StockUse::set_dressing:
        return "set_dressing";
    case StockUse::support:
        return "support";
    }
    return "";
}

std::string_view file_name_of(StockShape shape) {
    switch (shape) {
    case StockShape::box:
        return "box";
    case StockShape::round:
        return "round";
    case StockShape::stairs:
        return "stairs";
    }
    return "";
}

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

Checked<void> own_item_kept(const fs::path& file, const StockItem& item) {
    if (folded_name(item.name).empty()) {
        return failed({"an own item needs a name", {}});
    }
    Checked<Json> root = read(file);
    if (!root) {
        return tl::unexpected<Errors>{root.error()};
    }
    Json& stock = (*root)["stock"];
    if (!stock.is_array()) {
        stock = Json::array();
    }
    const std::string name = folded_name(item.name);
    const auto known = std::find_if(stock.begin(), stock.end(),
                                    [&](const Json& row) { return is_named(row, name); });
    if (known != stock.end()) {
        *known = row_of(item);
    } else {
        stock.push_back(row_of(item));
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
