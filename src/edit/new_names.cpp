#include "edit/new_names.h"

#include "base/utf8.h"
#include "plan/arrangement.h"
#include "plan/read_values.h"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>
#include <optional>
#include <string_view>

namespace throwline::edit {

namespace {

template <class Thing>
void add(std::set<std::string>& names, const std::vector<Thing>& things) {
    for (const Thing& thing : things) {
        names.insert(thing.id.name);
    }
}

/// Nothing for what is not a number that one counts on from.
std::optional<int> number_in(std::string_view digits) {
    int number = 0;
    const char* end = digits.data() + digits.size();
    const auto [stop, fault] = std::from_chars(digits.data(), end, number);
    const bool counts = fault == std::errc{} && stop == end && number > 0 && number < 1'000'000;
    return counts ? std::optional{number} : std::nullopt;
}

/// "chair 2" is the second of "chair"; lamps and beats often have a number alone.
std::pair<std::string, int> stem_and_number(const std::string& name) {
    if (const auto number = number_in(name)) {
        return {{}, *number};
    }
    const std::size_t space = name.find_last_of(' ');
    if (space != std::string::npos && space > 0) {
        if (const auto number = number_in(std::string_view{name}.substr(space + 1))) {
            return {name.substr(0, space), *number};
        }
    }
    return {name, 1};
}

/// The stem with its number, without the last letters of a stem that leaves no place for it.
std::string numbered(const std::string& stem, int number) {
    if (stem.empty()) {
        return fmt::format("{}", number);
    }
    const std::string end = fmt::format(" {}", number);
    std::vector<char32_t> letters = characters_of(stem);
    while (utf8_of(letters).size() + end.size() > plan::kLongestName) {
        letters.pop_back();
    }
    return utf8_of(letters) + end;
}

} // namespace

std::set<std::string> taken_names(const plan::Plan& plan) {
    const std::vector<std::string> on_floor = plan::names_on_floor(plan);
    std::set<std::string> names{on_floor.begin(), on_floor.end()};
    add(names, plan.circuits);
    add(names, plan.beats);
    add(names, plan.shots);
    return names;
}

std::string new_name(std::set<std::string>& taken, const std::string& wanted) {
    if (taken.insert(wanted).second) {
        return wanted;
    }
    auto [stem, number] = stem_and_number(wanted);
    std::string name;
    do {
        name = numbered(stem, ++number);
    } while (!taken.insert(name).second);
    return name;
}

std::string new_name(const plan::Plan& plan, const std::string& wanted) {
    std::set<std::string> taken = taken_names(plan);
    return new_name(taken, wanted);
}

Result<void> check_new_name(const plan::Plan& plan, const std::string& old,
                            const std::string& now) {
    if (const std::string_view fault = plan::fault_of_name(now); !fault.empty()) {
        return failure(std::string{fault});
    }
    if (plan::reads_as_angle(now)) {
        return failure(fmt::format("{} reads as an angle; choose another name", now));
    }
    if (now != old && taken_names(plan).contains(now)) {
        return failure(fmt::format("something is called {} already", now));
    }
    return {};
}

} // namespace throwline::edit
