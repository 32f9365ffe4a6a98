#pragma once

#include "card/fields.h"
#include "edit/placing.h"

#include <fmt/format.h>

namespace throwline::card {

/// What things are called together: "camera 2", "3 cameras".
inline std::string what_of(std::span<const edit::Thing> things) {
    return things.size() == 1
               ? edit::name_of(things.front())
               : fmt::format("{} {}s", things.size(), edit::name_of(things.front().kind));
}

/// The entities of a kind themselves.
template <class Entity>
Parts<Entity> entities(const CardInput& input) {
    std::vector<typename Parts<Entity>::Locate> where;
    for (const edit::Thing& thing : input.chosen) {
        where.push_back(
            [id = plan::Id<Entity>{thing.name}](plan::Plan& plan, const edit::Context&) {
                return edit::find(plan, id);
            });
    }
    return parts_of<Entity>(input.context, what_of(input.chosen), std::move(where));
}

/// Those parts of entities that are of one alternative, for variants.
template <class Alternative, class Entity, class Get>
Parts<Alternative> alternatives(const edit::Context& context, const Parts<Entity>& parts, Get get) {
    std::vector<typename Parts<Alternative>::Locate> where;
    for (const auto& locate : parts.where) {
        where.push_back([locate, get](plan::Plan& plan, const edit::Context& now) -> Alternative* {
            Entity* entity = locate(plan, now);
            return entity == nullptr ? nullptr : std::get_if<Alternative>(&get(*entity));
        });
    }
    return parts_of<Alternative>(context, parts.what, std::move(where));
}

} // namespace throwline::card
