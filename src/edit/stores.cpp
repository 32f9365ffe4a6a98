#include "edit/stores.h"

#include "base/length_text.h"
#include "base/nearest_name.h"
#include "base/words.h"
#include "checks/things_used.h"
#include "edit/say_words.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// More of one thing than any crew has.
constexpr int kMostOwned = 9999;
/// So many near names are offered when nothing has the words searched for.
constexpr std::size_t kMostNear = 6;

StoresShelf shelf_of(catalogue::StockUse use) {
    switch (use) {
    case catalogue::StockUse::flat:
    case catalogue::StockUse::platform:
        return StoresShelf::flats;
    case catalogue::StockUse::seat:
    case catalogue::StockUse::table:
    case catalogue::StockUse::storage:
    case catalogue::StockUse::bed:
    case catalogue::StockUse::appliance:
        return StoresShelf::furniture;
    case catalogue::StockUse::set_dressing:
    case catalogue::StockUse::support:
        return StoresShelf::dressing;
    }
    return StoresShelf::dressing;
}

/// Fills the shelves with the rows of the catalogue.
class Filler {
  public:
    Filler(const plan::Plan& plan, const catalogue::Catalogue& catalogue)
        : plan_{plan}, catalogue_{catalogue}, used_{checks::things_used(plan)} {}

    std::vector<StoresRow> filled() {
        add_stock();
        add_people();
        add_cameras();
        add_lamps();
        add_supports();
        add_filters();
        add({StoresShelf::sound, "boom", "", "", StoreItem{Shelf::boom, {}},
             "pole with a microphone and who holds it"});
        add({StoresShelf::power, "outlet", "", "", StoreItem{Shelf::outlet, {}},
             "of a new circuit; its values are in the Card"});
        std::stable_sort(rows_.begin(), rows_.end(),
                         [](const StoresRow& a, const StoresRow& b) { return a.shelf < b.shelf; });
        return std::move(rows_);
    }

  private:
    /// What is in a table of the catalogue: kit lists call it by its name.
    void add_row(StoresShelf shelf, const std::string& name, std::string_view table,
                 std::optional<StoreItem> put, std::string size) {
        add({shelf, name, name, table, std::move(put), std::move(size)});
    }

    void add(StoresRow row) {
        if (const auto users = used_.find(row.item); !row.item.empty() && users != used_.end()) {
            row.used = static_cast<int>(users->second.size());
        }
        for (const plan::KitItem& owned : plan_.kit) {
            if (!row.item.empty() && owned.item == row.item) {
                row.owned = owned.count;
            }
        }
        rows_.push_back(std::move(row));
    }

    std::string text(Length length) const { return shown(length, plan_.units); }

    void add_stock() {
        for (const catalogue::StockItem& item : catalogue_.stock) {
            const bool is_round = item.shape == catalogue::StockShape::round;
            const std::string floor =
                is_round ? fmt::format("{} across", text(item.width))
                         : fmt::format("{} × {}", text(item.width), text(item.depth));
            const StoresShelf shelf =
                item.name == "distribution box" ? StoresShelf::power : shelf_of(item.use);
            add_row(shelf, item.name, "stock", StoreItem{Shelf::stock, item.name},
                    fmt::format("{}, {} high", floor, text(item.height)));
        }
    }

    void add_people() {
        add({StoresShelf::people, "cast", "", "", StoreItem{Shelf::person, "cast"},
             "may be in the frame"});
        add({StoresShelf::people, "crew", "", "", StoreItem{Shelf::person, "crew"},
             "may not be in the frame"});
    }

    void add_cameras() {
        for (const catalogue::Lens& lens : catalogue_.lenses) {
            const std::string focal = lens.is_zoom()
                                          ? fmt::format("{} to {}", focal_text(lens.focal_min),
                                                        focal_text(lens.focal_max))
                                          : focal_text(lens.focal_min);
            add_row(StoresShelf::cameras, lens.name, "lenses", StoreItem{Shelf::camera, lens.name},
                    fmt::format("camera, {}, {}", focal, stop_text(lens.stop_wide)));
        }
        for (const catalogue::SensorMode& sensor : catalogue_.sensors) {
            add_row(StoresShelf::cameras, sensor.name, "sensors", std::nullopt,
                    fmt::format("picture area {} × {} mm", fixed(sensor.width.mm(), 1),
                                fixed(sensor.height.mm(), 1)));
        }
    }

    void add_lamps() {
        for (const catalogue::Instrument& lamp : catalogue_.instruments) {
            add_row(StoresShelf::lamps, lamp.name, "instruments", StoreItem{Shelf::lamp, lamp.name},
                    fmt::format("{} W, {} kg, beam {} to {}", shortest(lamp.watts),
                                fixed(lamp.mass_kg, 1), degrees_text(lamp.spot.beam, 0),
                                degrees_text(lamp.flood.beam, 0)));
        }
    }

    void add_supports() {
        for (const catalogue::Support& support : catalogue_.supports) {
            add_row(StoresShelf::stands, support.name, "supports", std::nullopt,
                    fmt::format("{} to {} high, {} around it", text(support.height_min),
                                text(support.height_max), text(support.footprint_radius)));
        }
    }

    void add_filters() {
        for (const catalogue::Filter& filter : catalogue_.filters) {
            add_row(StoresShelf::filters, filter.name, "filters", std::nullopt,
                    fmt::format("lets {} through", share_text(filter.transmission)));
        }
    }

    const plan::Plan& plan_;
    const catalogue::Catalogue& catalogue_;
    checks::ThingsUsed used_;
    std::vector<StoresRow> rows_;
};

bool has_all(const std::string& text, const SaidWords& words) {
    for (std::size_t i = 0; i < words.count(); ++i) {
        if (!words[i].is_comma && text.find(words[i].folded) == std::string::npos) {
            return false;
        }
    }
    return true;
}

/// The nearest names first, by the words within them too: "char" is near to "dining chair".
std::vector<std::size_t> nearest_rows(const std::vector<StoresRow>& rows,
                                      const std::string& typed) {
    std::vector<std::pair<std::size_t, std::size_t>> by_distance;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::string name = folded(rows[i].name);
        const SaidWords words{name};
        std::size_t least = typing_distance(typed, name);
        for (std::size_t word = 0; word < words.count(); ++word) {
            least = std::min(least, typing_distance(typed, words[word].folded));
        }
        if (3 * least <= typed.size()) { // a letter in three, else it is another word
            by_distance.emplace_back(least, i);
        }
    }
    std::stable_sort(by_distance.begin(), by_distance.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    by_distance.resize(std::min(by_distance.size(), kMostNear));
    std::vector<std::size_t> found;
    for (const auto& [distance, index] : by_distance) {
        found.push_back(index);
    }
    std::sort(found.begin(), found.end());
    return found;
}

} // namespace

std::string_view name_of(StoresShelf shelf) {
    switch (shelf) {
    case StoresShelf::flats:
        return "Flats and platforms";
    case StoresShelf::furniture:
        return "Furniture";
    case StoresShelf::dressing:
        return "Dressing";
    case StoresShelf::people:
        return "People";
    case StoresShelf::cameras:
        return "Cameras and lenses";
    case StoresShelf::lamps:
        return "Lamps";
    case StoresShelf::stands:
        return "Stands and supports";
    case StoresShelf::filters:
        return "Filters";
    case StoresShelf::sound:
        return "Sound";
    case StoresShelf::power:
        return "Power";
    }
    return "";
}

std::string count_words(const StoresRow& row) {
    if (!row.owned) {
        return row.used == 0 ? "" : fmt::format("{} on the plan", row.used);
    }
    const int left = *row.left();
    return left >= 0 ? fmt::format("owned {}, {} left", *row.owned, left)
                     : fmt::format("owned {}, {} too few", *row.owned, -left);
}

std::vector<StoresRow> stores_rows(const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    return Filler{plan, catalogue}.filled();
}

std::vector<std::size_t> found_in_stores(const std::vector<StoresRow>& rows,
                                         std::string_view search) {
    const SaidWords words{search};
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::string text =
            folded(rows[i].name) + " " + folded(std::string{name_of(rows[i].shelf)});
        if (has_all(text, words)) {
            found.push_back(i);
        }
    }
    return found.empty() ? nearest_rows(rows, folded(search)) : found;
}

Result<Step> kit_set(const Context& context, const std::string& item, std::optional<int> count) {
    if (count && (*count < 0 || *count > kMostOwned)) {
        return failure(fmt::format("a crew owns 0 to {} of a thing", kMostOwned));
    }
    Step step{"Set kit", context.plan, {}};
    std::vector<plan::KitItem>& kit = step.plan.kit;
    const auto known = std::find_if(kit.begin(), kit.end(),
                                    [&](const plan::KitItem& one) { return one.item == item; });
    if (!count) {
        if (known != kit.end()) {
            kit.erase(known);
        }
    } else if (known != kit.end()) {
        known->count = *count;
    } else {
        kit.push_back({item, *count});
    }
    return step;
}

} // namespace throwline::edit
