#pragma once

#include "base/result.h"
#include "plan/plan.h"

#include <algorithm>
#include <fmt/format.h>
#include <vector>

/// What edits of the order of beats and of shots share.
namespace throwline::edit {

/// Place in a list, its length when it is not there.
template <class Entity>
std::size_t index_of(const std::vector<Entity>& entities, const plan::Id<Entity>& id) {
    const auto at = std::find_if(entities.begin(), entities.end(),
                                 [&](const Entity& entity) { return entity.id == id; });
    return static_cast<std::size_t>(at - entities.begin());
}

/// Takes one out and puts it in again where it then has the place `to`.
template <class Entity>
void move_to(std::vector<Entity>& entities, std::size_t from, std::size_t to) {
    const auto begin = entities.begin();
    const auto at = [&](std::size_t index) { return begin + static_cast<std::ptrdiff_t>(index); };
    if (from < to) {
        std::rotate(at(from), at(from + 1), at(to + 1));
    } else {
        std::rotate(at(to), at(from), at(from + 1));
    }
}

inline tl::unexpected<Error> no_beat(const plan::Id<plan::Beat>& beat) {
    return failure(fmt::format("there is no beat {}", beat.name));
}

} // namespace throwline::edit
