#include "edit/moves.h"
#include "edit/new_names.h"
#include "edit/placing.h"
#include "plan/renames.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

bool holds(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

/// Puts names into a list, or takes them out.
void hold(std::vector<std::string>& names, std::span<const Thing> things, bool held) {
    for (const Thing& thing : things) {
        const std::string name = name_of(thing);
        std::erase(names, name);
        if (held) {
            names.push_back(name);
        }
    }
}

/// Takes things out of every group; a group of one is none.
void leave_groups(plan::Arrangement& arrangement, std::span<const Thing> things) {
    for (plan::Group& group : arrangement.groups) {
        hold(group.things, things, false);
    }
    std::erase_if(arrangement.groups,
                  [](const plan::Group& group) { return group.things.size() < 2; });
}

Result<Step> arranged(const Context& context, std::span<const Thing> things, std::string name,
                      const std::function<void(plan::Arrangement&)>& change) {
    if (const auto there = check_there(context.plan, things); !there) {
        return tl::unexpected{there.error()};
    }
    Step step{std::move(name), context.plan, {}};
    change(step.plan.arrangement);
    return step;
}

} // namespace

Result<Step> renamed(const Context& context, const Thing& thing, const std::string& name) {
    if (!exists(context.plan, thing)) {
        return failure(fmt::format("{} is not there any more", name_of(thing)));
    }
    if (const auto good = check_new_name(context.plan, thing.name, name); !good) {
        return tl::unexpected{good.error()};
    }
    Step step{fmt::format("Rename {}", name_of(thing)), context.plan, {{thing.kind, name, 0}}};
    plan::Plan& plan = step.plan;
    switch (thing.kind) {
    case Kind::wall:
        return failure("walls have numbers, not names");
    case Kind::outlet:
        plan::rename(plan, plan::Id<plan::Circuit>{thing.name}, name);
        step.made.front().index = thing.index;
        break;
    case Kind::opening:
        plan::rename(plan, plan::Id<plan::Opening>{thing.name}, name);
        break;
    case Kind::pipe:
        plan::rename(plan, plan::Id<plan::Pipe>{thing.name}, name);
        break;
    case Kind::scenery:
        plan::rename(plan, plan::Id<plan::Scenery>{thing.name}, name);
        break;
    case Kind::person:
        plan::rename(plan, plan::Id<plan::Person>{thing.name}, name);
        break;
    case Kind::camera:
        plan::rename(plan, plan::Id<plan::Camera>{thing.name}, name);
        break;
    case Kind::lamp:
        plan::rename(plan, plan::Id<plan::Lamp>{thing.name}, name);
        break;
    case Kind::boom:
        plan::rename(plan, plan::Id<plan::Boom>{thing.name}, name);
        break;
    }
    return step;
}

Result<Step> locked(const Context& context, std::span<const Thing> things, bool lock) {
    return arranged(context, things,
                    fmt::format("{} {}", lock ? "Lock" : "Unlock", words_for(things)),
                    [&](plan::Arrangement& held) { hold(held.locked, things, lock); });
}

Result<Step> hidden(const Context& context, std::span<const Thing> things, bool hide) {
    return arranged(context, things,
                    fmt::format("{} {}", hide ? "Hide" : "Show", words_for(things)),
                    [&](plan::Arrangement& held) { hold(held.hidden, things, hide); });
}

Result<Step> everything_shown(const Context& context) {
    Step step{"Show what was hidden", context.plan, {}};
    step.plan.arrangement.hidden.clear();
    return step;
}

Result<Step> grouped(const Context& context, std::span<const Thing> things) {
    std::set<std::string> names;
    for (const Thing& thing : things) {
        names.insert(name_of(thing));
    }
    if (names.size() < 2) {
        return failure("choose two things or more to group them");
    }
    return arranged(context, things, fmt::format("Group {}", words_for(things)),
                    [&](plan::Arrangement& held) {
                        leave_groups(held, things);
                        hold(held.groups.emplace_back().things, things, true);
                    });
}

Result<Step> ungrouped(const Context& context, std::span<const Thing> things) {
    return arranged(context, things, fmt::format("Ungroup {}", words_for(things)),
                    [&](plan::Arrangement& held) {
                        std::erase_if(held.groups, [&](const plan::Group& group) {
                            return std::any_of(things.begin(), things.end(),
                                               [&](const Thing& thing) {
                                                   return holds(group.things, name_of(thing));
                                               });
                        });
                    });
}

bool is_locked(const plan::Plan& plan, const Thing& thing) {
    return holds(plan.arrangement.locked, name_of(thing));
}

bool is_hidden(const plan::Plan& plan, const Thing& thing) {
    return holds(plan.arrangement.hidden, name_of(thing));
}

std::vector<Thing> whole_groups(const Context& context, std::span<const Thing> things) {
    std::set<std::string> names;
    for (const Thing& thing : things) {
        names.insert(name_of(thing));
    }
    for (const plan::Group& group : context.plan.arrangement.groups) {
        if (std::any_of(group.things.begin(), group.things.end(),
                        [&](const std::string& name) { return names.contains(name); })) {
            names.insert(group.things.begin(), group.things.end());
        }
    }
    std::vector<Thing> whole;
    for (const Thing& thing : things_on_floor(context)) {
        if (names.contains(name_of(thing))) {
            whole.push_back(thing);
        }
    }
    return whole;
}

} // namespace throwline::edit
