#include "plan/arrangement.h"

#include "plan/names.h"

#include <fmt/format.h>
#include <set>

namespace throwline::plan {

namespace {

template <class Thing>
void add_all(std::vector<std::string>& names, const std::vector<Thing>& things) {
    for (const Thing& thing : things) {
        names.push_back(thing.id.name);
    }
}

/// Every list of names that an arrangement has.
template <class Change>
void each_list(Arrangement& arrangement, const Change& change) {
    change(arrangement.locked);
    change(arrangement.hidden);
    for (Group& group : arrangement.groups) {
        change(group.things);
    }
}

} // namespace

std::string name_on_floor(int wall) {
    return fmt::format("wall {}", number_of_wall(wall));
}

std::string name_on_floor(const Id<Circuit>& circuit, int outlet) {
    return fmt::format("outlet {} of {}", outlet + 1, circuit.name);
}

std::vector<std::string> names_on_floor(const Plan& plan) {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < plan.room.outline.size(); ++i) {
        names.push_back(name_on_floor(static_cast<int>(i)));
    }
    add_all(names, plan.room.openings);
    for (const Circuit& circuit : plan.circuits) {
        for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
            names.push_back(name_on_floor(circuit.id, static_cast<int>(i)));
        }
    }
    add_all(names, plan.pipes);
    add_all(names, plan.scenery);
    add_all(names, plan.people);
    add_all(names, plan.cameras);
    add_all(names, plan.booms);
    add_all(names, plan.lamps);
    return names;
}

void rename_held(Arrangement& arrangement, const std::map<std::string, std::string>& names) {
    each_list(arrangement, [&](std::vector<std::string>& held) {
        for (std::string& name : held) {
            if (const auto found = names.find(name); found != names.end()) {
                name = found->second;
            }
        }
    });
}

void forget_gone(Plan& plan) {
    if (plan.arrangement == Arrangement{}) {
        return;
    }
    const std::vector<std::string> all = names_on_floor(plan);
    const std::set<std::string> there{all.begin(), all.end()};
    each_list(plan.arrangement, [&](std::vector<std::string>& held) {
        std::erase_if(held, [&](const std::string& name) { return !there.contains(name); });
    });
    std::erase_if(plan.arrangement.groups,
                  [](const Group& group) { return group.things.size() < 2; });
}

} // namespace throwline::plan
