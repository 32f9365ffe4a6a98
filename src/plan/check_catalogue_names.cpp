#include "plan/check_names.h"
#include "plan/check_plan.h"

#include "base/utf8.h"

#include <fmt/format.h>
#include <set>

namespace throwline::plan {

namespace {

/// The catalogue's tables as they are called in a message, each with its look-up.
class CatalogueNames {
  public:
    explicit CatalogueNames(Reading& reading) : reading_{reading}, tables_{reading.catalogue()} {}

    void sensor(const Value& value, const std::string& name) const {
        expect(value, name, tables_.sensor(name) != nullptr, "sensor", tables_.sensors);
    }
    void lens(const Value& value, const std::string& name) const {
        expect(value, name, tables_.lens(name) != nullptr, "lens", tables_.lenses);
    }
    void support(const Value& value, const std::string& name) const {
        expect(value, name, tables_.support(name) != nullptr, "support", tables_.supports);
    }
    void instrument(const Value& value, const std::string& name) const {
        expect(value, name, tables_.instrument(name) != nullptr, "instrument", tables_.instruments);
    }
    void filter(const Value& value, const std::string& name) const {
        expect(value, name, tables_.filter(name) != nullptr, "filter", tables_.filters);
    }
    void stock(const Value& value, const std::string& name) const {
        expect(value, name, tables_.stock_item(name) != nullptr, "stock item", tables_.stock);
    }
    void finish(const Value& value, const std::string& name) const {
        expect(value, name, tables_.finish(name) != nullptr, "finish", tables_.finishes);
    }
    void any_item(const Value& value, const std::string& name) const;

  private:
    template <class Row>
    void expect(const Value& value, const std::string& name, bool known, std::string_view table,
                const std::vector<Row>& rows) const {
        if (name.empty() || known) {
            return;
        }
        if (reading_.is_full()) {
            reading_.wrong(value, {});
            return;
        }
        KnownNames names{table};
        add_rows(names, rows);
        reading_.wrong(value, names.complaint(name) + " in the catalogue");
    }

    template <class Row>
    static void add_rows(KnownNames& names, const std::vector<Row>& rows) {
        for (const Row& row : rows) {
            names.add(row.name);
        }
    }

    Reading& reading_;
    const catalogue::Catalogue& tables_;
};

void CatalogueNames::any_item(const Value& value, const std::string& name) const {
    const bool known = tables_.sensor(name) != nullptr || tables_.lens(name) != nullptr
                       || tables_.instrument(name) != nullptr || tables_.filter(name) != nullptr
                       || tables_.stock_item(name) != nullptr || tables_.support(name) != nullptr;
    if (name.empty() || known) {
        return;
    }
    KnownNames names{"sensor, lens, instrument, filter, stock item or support"};
    add_rows(names, tables_.sensors);
    add_rows(names, tables_.lenses);
    add_rows(names, tables_.instruments);
    add_rows(names, tables_.filters);
    add_rows(names, tables_.stock);
    add_rows(names, tables_.supports);
    reading_.wrong(value, names.complaint(name) + " in the catalogue");
}

void check_finishes(const CatalogueNames& names, const Value& root, const Plan& plan) {
    const Value room = root.at("room");
    names.finish(room.at("finish"), plan.room.finish);
    names.finish(room.at("floor_finish"), plan.room.floor_finish);
    names.finish(room.at("ceiling_finish"), plan.room.ceiling_finish);
    const Value walls = room.at("walls");
    for (std::size_t i = 0; i < walls.node->items.size(); ++i) {
        const auto finish = walls.item(i).member("finish");
        if (finish && finish->is(catalogue::JsonKind::string)) {
            names.finish(*finish, finish->node->text);
        }
    }
    each(root, "scenery", plan.scenery, [&](const Value& value, const Scenery& scenery) {
        names.finish(value.at("finish"), scenery.finish);
    });
}

void check_lamp(const CatalogueNames& names, const Value& value, const Lamp& lamp) {
    names.instrument(value.at("instrument"), lamp.instrument);
    for (std::size_t i = 0; i < lamp.filters.size(); ++i) {
        names.filter(value.at("filters").item(i), lamp.filters[i]);
    }
    if (const auto* stand = std::get_if<StandMount>(&lamp.mount)) {
        names.support(value.at("support"), stand->support);
    }
}

void check_kit(Reading& reading, const CatalogueNames& names, const Value& root, const Plan& plan) {
    std::set<std::string> seen;
    each(root, "kit", plan.kit, [&](const Value& value, const KitItem& item) {
        names.any_item(value.at("item"), item.item);
        if (!item.item.empty() && !seen.insert(item.item).second) {
            reading.wrong(value.at("item"), fmt::format("{} is in the kit twice; add the counts",
                                                        in_quotes(item.item)));
        }
    });
}

} // namespace

void check_catalogue_names(Reading& reading, const Value& root, const Plan& plan) {
    const CatalogueNames names{reading};
    check_finishes(names, root, plan);
    each(root, "scenery", plan.scenery, [&](const Value& value, const Scenery& scenery) {
        if (const auto* piece = std::get_if<StockPiece>(&scenery.shape)) {
            names.stock(value.at("item"), piece->item);
        }
    });
    each(root, "cameras", plan.cameras, [&](const Value& value, const Camera& camera) {
        names.sensor(value.at("sensor"), camera.sensor);
        names.lens(value.at("lens"), camera.lens);
        names.support(value.at("support"), camera.support);
    });
    each(root, "lamps", plan.lamps,
         [&](const Value& value, const Lamp& lamp) { check_lamp(names, value, lamp); });
    check_kit(reading, names, root, plan);
}

} // namespace throwline::plan
