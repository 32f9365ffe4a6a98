#include "edit/new_names.h"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

template <class Thing>
void add(std::set<std::string>& names, const std::vector<Thing>& things) {
    for (const Thing& thing : things) {
        names.insert(thing.id.name);
    }
}

/// "chair 2" is the second of "chair".
std::pair<std::string, int> stem_and_number(const std::string& name) {
    const std::size_t space = name.find_last_of(' ');
    int number = 0;
    if (space != std::string::npos && space > 0 && space + 1 < name.size()) {
        const char* end = name.data() + name.size();
        const auto [stop, fault] = std::from_chars(name.data() + space + 1, end, number);
        if (fault == std::errc{} && stop == end && number > 0 && number < 1'000'000) {
            return {name.substr(0, space), number};
        }
    }
    return {name, 1};
}

} // namespace

std::set<std::string> taken_names(const plan::Plan& plan) {
    std::set<std::string> names;
    add(names, plan.room.openings);
    add(names, plan.pipes);
    add(names, plan.circuits);
    add(names, plan.scenery);
    add(names, plan.people);
    add(names, plan.beats);
    add(names, plan.cameras);
    add(names, plan.shots);
    add(names, plan.booms);
    add(names, plan.lamps);
    return names;
}

std::string new_name(std::set<std::string>& taken, const std::string& wanted) {
    if (taken.insert(wanted).second) {
        return wanted;
    }
    auto [stem, number] = stem_and_number(wanted);
    std::string name;
    do {
        name = fmt::format("{} {}", stem, ++number);
    } while (!taken.insert(name).second);
    return name;
}

std::string new_name(const plan::Plan& plan, const std::string& wanted) {
    std::set<std::string> taken = taken_names(plan);
    return new_name(taken, wanted);
}

} // namespace throwline::edit
