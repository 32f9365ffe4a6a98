#include "edit/accept.h"

#include "checks/check.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace throwline::edit {

namespace {

constexpr std::string_view kSpaces = " \t\r\n";

std::string trimmed(const std::string& text) {
    const std::size_t from = text.find_first_not_of(kSpaces);
    return from == std::string::npos ? std::string{}
                                     : text.substr(from, text.find_last_not_of(kSpaces) - from + 1);
}

std::string title_of(const std::string& check) {
    for (const checks::Check& one : checks::all_checks()) {
        if (one.id == check) {
            return std::string{one.title};
        }
    }
    return check;
}

template <class Entity>
void add_all(std::map<std::string, Thing>& things, Kind kind, const std::vector<Entity>& entities) {
    for (const Entity& entity : entities) {
        const Thing thing{kind, entity.id.name, 0};
        things.emplace(name_of(thing), thing);
    }
}

std::map<std::string, Thing> things_by_name(const plan::Plan& plan) {
    std::map<std::string, Thing> things;
    add_all(things, Kind::person, plan.people);
    add_all(things, Kind::camera, plan.cameras);
    add_all(things, Kind::lamp, plan.lamps);
    add_all(things, Kind::scenery, plan.scenery);
    add_all(things, Kind::boom, plan.booms);
    add_all(things, Kind::opening, plan.room.openings);
    add_all(things, Kind::pipe, plan.pipes);
    for (std::size_t i = 0; i < plan.room.outline.size(); ++i) {
        const Thing wall{Kind::wall, {}, static_cast<int>(i)};
        things.emplace(name_of(wall), wall);
    }
    for (const plan::Circuit& circuit : plan.circuits) {
        for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
            const Thing outlet{Kind::outlet, circuit.id.name, static_cast<int>(i)};
            things.emplace(name_of(outlet), outlet);
        }
    }
    return things;
}

} // namespace

Result<Step> accepted(const Context& context, std::span<const checks::Finding> findings,
                      const std::string& reason) {
    const std::string why = trimmed(reason);
    if (why.empty()) {
        return failure("say why the crew lives with it; the reason is printed on the sheet");
    }
    if (findings.empty()) {
        return failure("there is no finding to accept");
    }
    Step step{
        fmt::format("Accept finding \"{}\"", title_of(findings.front().check)), context.plan, {}};
    for (const checks::Finding& finding : findings) {
        plan::Acceptance acceptance{finding.check, finding.shot, finding.things, why};
        std::vector<plan::Acceptance>& all = step.plan.accepted;
        if (std::find(all.begin(), all.end(), acceptance) == all.end()) {
            all.push_back(std::move(acceptance));
        }
    }
    return step;
}

Result<Step> acceptance_taken_back(const Context& context,
                                   std::span<const checks::Finding> findings) {
    Step step{"Take back acceptance", context.plan, {}};
    const std::size_t gone =
        std::erase_if(step.plan.accepted, [&](const plan::Acceptance& acceptance) {
            return std::any_of(findings.begin(), findings.end(),
                               [&](const checks::Finding& finding) {
                                   return checks::covers(acceptance, finding);
                               });
        });
    if (gone == 0) {
        return failure("it is not accepted");
    }
    return step;
}

std::vector<Thing> things_named(const plan::Plan& plan, std::span<const std::string> names) {
    const std::map<std::string, Thing> known = things_by_name(plan);
    std::vector<Thing> things;
    for (const std::string& name : names) {
        const auto thing = known.find(name);
        if (thing != known.end()
            && std::find(things.begin(), things.end(), thing->second) == things.end()) {
            things.push_back(thing->second);
        }
    }
    return things;
}

} // namespace throwline::edit
