#include "base/length_text.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/cover_length.h"
#include "lists/each_list.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace throwline::lists {

namespace {

/// A piece deeper than this is no plain flat: a fireplace, a porch (common practice, no source).
constexpr Length kDeepest = Length::millimetres(150);
/// Flats whose tops differ by no more than this go side by side.
constexpr Length kSameHeight = Length::millimetres(5);

std::vector<Column> columns() {
    return {{"made", "Made"},
            {"piece", "Piece"},
            {"pieces", "Pieces", Align::right},
            {"width_m", "Width", Align::right},
            {"height_m", "Height", Align::right},
            {"run_m", "Together", Align::right},

            {"owned", "Owned", Align::right},
            {"short", "Short", Align::right}};
}

/// Flats of the catalogue by name, and how many of each the crew has when its list names any.
struct Store {
    std::vector<const catalogue::StockItem*> flats;
    std::map<std::string, int> owned;
    std::map<std::string, int> needed;
};

/// Of flats of one size the lightest, which is the one without a door or window in it.
std::vector<const catalogue::StockItem*> plain_flats(const catalogue::Catalogue& catalogue) {
    std::vector<const catalogue::StockItem*> flats;
    for (const catalogue::StockItem& item : catalogue.stock) {
        if (item.use != catalogue::StockUse::flat || item.depth > kDeepest) {
            continue;
        }
        const auto same = std::find_if(flats.begin(), flats.end(), [&](const auto* other) {
            return other->width == item.width && other->height == item.height;
        });
        if (same == flats.end()) {
            flats.push_back(&item);
        } else if (item.mass_kg < (*same)->mass_kg) {
            *same = &item;
        }
    }
    return flats;
}

Store store_of(const ListInput& input) {
    Store store{plain_flats(input.catalogue), {}, {}};
    for (const plan::KitItem& owned : input.analysis.plan->kit) {
        const catalogue::StockItem* item = input.catalogue.stock_item(owned.item);
        if (item != nullptr && item->use == catalogue::StockUse::flat) {
            store.owned[item->name] = owned.count;
        }
    }
    return store;
}

/// Those of the lowest height that reaches as high as the run.
std::vector<const catalogue::StockItem*> as_high_as(const Store& store, Length height) {
    std::optional<Length> lowest;
    for (const catalogue::StockItem* flat : store.flats) {
        if (flat->height + kSameHeight >= height && (!lowest || flat->height < *lowest)) {
            lowest = flat->height;
        }
    }
    std::vector<const catalogue::StockItem*> flats;
    for (const catalogue::StockItem* flat : store.flats) {
        if (lowest && flat->height >= *lowest && flat->height <= *lowest + kSameHeight) {
            flats.push_back(flat);
        }
    }
    return flats;
}

/// From what the crew has left, where its list names flats and they are enough; else as if there
/// were any number of each.
std::optional<Cover> cover_of(const plan::FlatRun& run, const Store& store,
                              const std::vector<const catalogue::StockItem*>& flats) {
    std::vector<StockLength> any;
    std::vector<StockLength> left;
    for (const catalogue::StockItem* flat : flats) {
        const auto owned = store.owned.find(flat->name);
        const auto needed = store.needed.find(flat->name);
        any.push_back({flat->width, std::nullopt});
        left.push_back({flat->width, (owned == store.owned.end() ? 0 : owned->second)
                                         - (needed == store.needed.end() ? 0 : needed->second)});
    }
    const std::optional<Cover> from_left = cover_length(run.total_width(), left);
    return from_left ? from_left : cover_length(run.total_width(), any);
}

void add_drawn(Section& section, const plan::FlatRun& run, UnitSystem units) {
    std::map<Length, std::size_t> pieces_by_width;
    for (const Length& width : run.widths) {
        ++pieces_by_width[width];
    }
    for (auto it = pieces_by_width.rbegin(); it != pieces_by_width.rend(); ++it) {
        const auto& [width, pieces] = *it;
        section.rows.push_back(
            {{words("as drawn"), nothing(), count(pieces), length(width, units),
              length(run.height, units), length(width * static_cast<double>(pieces), units),
              nothing(), nothing()},
             false});
    }
}

void add_from_stock(Section& section, const plan::FlatRun& run, Store& store, UnitSystem units) {
    const auto flats = as_high_as(store, run.height);
    const std::optional<Cover> cover = cover_of(run, store, flats);
    if (!cover) {
        section.remarks.push_back(
            flats.empty()
                ? fmt::format("No flat in the catalogue is {} high.", shown(run.height, units))
                : std::string{"Too long to be made up from stock in one run."});
        return;
    }
    for (std::size_t i = 0; i < flats.size(); ++i) {
        const int pieces = cover->pieces[i];
        if (pieces == 0) {
            continue;
        }
        store.needed[flats[i]->name] += pieces;
        section.rows.push_back(
            {{words("from stock"), words(flats[i]->name), count(static_cast<std::size_t>(pieces)),
              length(flats[i]->width, units), length(flats[i]->height, units),
              length(flats[i]->width * pieces, units), nothing(), nothing()},
             false});
    }
    const Length over = cover->total - run.total_width();
    section.remarks.push_back(
        over <= kJointPlay ? "The stock flats make its length."
                           : fmt::format("The stock flats are {} longer than the run, the least "
                                         "that they can be.",
                                         shown(over, units)));
}

Section in_all(const Store& store, const ListInput& input) {
    Section section{"Flats in all, from stock", {}, {}};
    const UnitSystem units = input.analysis.plan->units;
    for (const auto& [name, needed] : store.needed) {
        const catalogue::StockItem& item = *input.catalogue.stock_item(name);
        const auto owned = store.owned.find(name);
        const bool counted = owned != store.owned.end();
        const bool is_short = counted && needed > owned->second;
        section.rows.push_back(
            {{nothing(), words(name), count(static_cast<std::size_t>(needed)),
              length(item.width, units), length(item.height, units),
              length(item.width * needed, units),
              counted ? count(static_cast<std::size_t>(owned->second)) : nothing(),
              is_short ? count(static_cast<std::size_t>(needed - owned->second)) : nothing()},
             false});
    }
    if (store.owned.empty()) {
        section.remarks.emplace_back("The kit list holds no flats, so none are counted as short.");
    }
    return section;
}

} // namespace

Table flats(const ListInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    Table table{"flats", "Flats", columns(), {}, {}};
    Store store = store_of(input);
    for (const plan::Scenery& scenery : plan.scenery) {
        const auto* run = std::get_if<plan::FlatRun>(&scenery.shape);
        if (run == nullptr) {
            continue;
        }
        Section& section = table.sections.emplace_back();
        section.heading =
            fmt::format("{}, {} long, {} high", checks::capitalised(scenery.id.name),
                        shown(run->total_width(), plan.units), shown(run->height, plan.units));
        add_drawn(section, *run, plan.units);
        add_from_stock(section, *run, store, plan.units);
    }
    if (table.sections.empty()) {
        table.sections.push_back({"", {}, {"The plan has no run of flats."}});
    } else {
        table.sections.push_back(in_all(store, input));
    }
    table.cautions = cautions_about({checks::Danger::ways_and_cables});
    return table;
}

} // namespace throwline::lists
