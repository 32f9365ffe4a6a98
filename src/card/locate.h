#pragma once

#include "card/fields.h"
#include "card/thing_words.h"
#include "edit/placing.h"

#include <map>

namespace throwline::card {

/// Finds an entity where it was; where lists have changed since, by its name.
template <class Entity>
struct EntityFinder {
    plan::Id<Entity> id;
    std::size_t likely = 0;

    template <class List>
    auto operator()(List& list) const {
        if (likely < list.size() && list[likely].id == id) {
            return &list[likely];
        }
        const auto found = std::find_if(list.begin(), list.end(),
                                        [&](const Entity& entity) { return entity.id == id; });
        return found != list.end() ? &*found : nullptr;
    }
};

/// The entities that the chosen things are; `list` gives their list of a plan, constant or not.
template <class Entity, class List>
Parts<Entity> entities(const CardInput& input, List list) {
    std::map<std::string_view, std::size_t> order;
    for (const Entity& entity : list(input.context.plan)) {
        order.emplace(entity.id.name, order.size());
    }
    std::vector<Locator<Entity>> where;
    for (const edit::Thing& thing : input.chosen) {
        const auto known = order.find(thing.name);
        const EntityFinder<Entity> find{{thing.name}, known != order.end() ? known->second : 0};
        where.push_back(locator<Entity>([find, list](auto& plan) { return find(list(plan)); }));
    }
    return parts_of<Entity>(input.context, what_of(input.chosen), where,
                            {input.chosen.begin(), input.chosen.end()});
}

/// One entity by its name, without regard to what is chosen.
template <class Entity, class List>
Parts<Entity> entity(const edit::Context& context, std::string what, const plan::Id<Entity>& id,
                     List list, std::vector<edit::Thing> things = {}) {
    const EntityFinder<Entity> find{id, 0};
    return parts_of<Entity>(
        context, std::move(what),
        std::vector{locator<Entity>([find, list](auto& plan) { return find(list(plan)); })},
        std::move(things));
}

/// Those parts of entities that are of one alternative; `get` gives the variant of an entity,
/// constant or not.
template <class Alternative, class Entity, class Get>
Parts<Alternative> alternatives(const edit::Context& context, const Parts<Entity>& parts, Get get) {
    std::vector<Locator<Alternative>> where;
    for (const Locator<Entity>& locator : *parts.where) {
        where.push_back(
            {[locator, get](const edit::Context& now) -> std::optional<Alternative> {
                 const std::optional<Entity> entity = locator.see(now);
                 const auto* part = entity ? std::get_if<Alternative>(&get(*entity)) : nullptr;
                 return part != nullptr ? std::optional{*part} : std::nullopt;
             },
             [locator, get](plan::Plan& plan, const edit::Context& now) {
                 Entity* entity = locator.reach(plan, now);
                 return entity == nullptr ? nullptr : std::get_if<Alternative>(&get(*entity));
             }});
    }
    return parts_of<Alternative>(context, parts.what, where, parts.things);
}

} // namespace throwline::card
