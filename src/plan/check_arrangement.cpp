#include "plan/arrangement.h"
#include "plan/check_names.h"
#include "plan/check_plan.h"

#include "base/utf8.h"

#include <fmt/format.h>
#include <set>

namespace throwline::plan {

namespace {

/// Names of one list: each there, and none among those `seen` before, which they join.
void check_held(Reading& reading, const Value& list, const std::vector<std::string>& names,
                const KnownNames& known, std::set<std::string>& seen, std::string_view twice) {
    for (std::size_t i = 0; i < names.size(); ++i) {
        known.expect(reading, list.item(i), names[i]);
        if (!names[i].empty() && !seen.insert(names[i]).second) {
            reading.wrong(list.item(i), fmt::format("{} is {} twice", in_quotes(names[i]), twice));
        }
    }
}

void check_list(Reading& reading, const Value& list, const std::vector<std::string>& names,
                const KnownNames& known, std::string_view twice) {
    std::set<std::string> seen;
    check_held(reading, list, names, known, seen, twice);
}

} // namespace

void check_arrangement(Reading& reading, const Value& root, const Plan& plan) {
    const Arrangement& held = plan.arrangement;
    const std::optional<Value> room = root.member("room");
    const bool walls_are_known = !room || !reading.is_spoilt(room->at("outline"));
    if (held == Arrangement{} || !walls_are_known) {
        return;
    }
    KnownNames known{"thing on the floor"};
    for (const std::string& name : names_on_floor(plan)) {
        known.add(name);
    }
    const Value value = root.at("arrangement");
    check_list(reading, value.at("locked"), held.locked, known, "locked");
    check_list(reading, value.at("hidden"), held.hidden, known, "hidden");
    std::set<std::string> grouped;
    each(value, "groups", held.groups, [&](const Value& group, const Group& things) {
        if (!reading.is_spoilt(group) && things.things.size() < 2) {
            reading.wrong(group, "a group is of two things or more");
        }
        check_held(reading, group.at("things"), things.things, known, grouped, "grouped");
    });
}

} // namespace throwline::plan
