#include "command/differences_output.h"

#include "base/words.h"
#include "command/cautions.h"
#include "command/working_output.h"

#include <fmt/format.h>
#include <string_view>

namespace throwline::command {

namespace {

using plan::Difference;
using plan::Gathering;
using plan::ThingKind;

std::string_view heading_of(ThingKind kind) {
    switch (kind) {
    case ThingKind::room:
    case ThingKind::wall:
    case ThingKind::opening:
        return "Room";
    case ThingKind::grid:
    case ThingKind::pipe:
        return "Grid and pipes";
    case ThingKind::scenery:
        return "Set";
    case ThingKind::person:
    case ThingKind::beat:
    case ThingKind::mark:
        return "People and beats";
    case ThingKind::camera:
    case ThingKind::shot:
        return "Cameras and shots";
    case ThingKind::boom:
        return "Sound";
    case ThingKind::lamp:
        return "Lamps";
    case ThingKind::circuit:
        return "Power";
    case ThingKind::production:
    case ThingKind::site:
    case ThingKind::survey:
    case ThingKind::underlay:
    case ThingKind::kit_item:
    case ThingKind::targets:
    case ThingKind::acceptance:
        return "Papers";
    }
    return {};
}

std::string_view heading_of(const Difference& difference) {
    switch (difference.gathering) {
    case Gathering::one:
        return heading_of(difference.things.front().kind);
    case Gathering::together:
        return "Moved together";
    case Gathering::slight:
        return "Hardly moved";
    }
    return {};
}

std::string_view name_of(Gathering gathering) {
    switch (gathering) {
    case Gathering::one:
        return "one";
    case Gathering::together:
        return "together";
    case Gathering::slight:
        return "slight";
    }
    return {};
}

JsonValue json_of(const std::vector<Vec2>& places) {
    JsonValue::Array points;
    for (const Vec2& place : places) {
        points.emplace_back(JsonValue::Array{place.x(), place.y()});
    }
    return points;
}

JsonValue json_of(const Difference& difference) {
    JsonValue::Array things;
    for (const plan::ChangedThing& thing : difference.things) {
        things.emplace_back(JsonValue::Object{{"kind", std::string{plan::name_of(thing.kind)}},
                                              {"name", thing.name},
                                              {"before_m", json_of(thing.before)},
                                              {"now_m", json_of(thing.now)}});
    }
    return JsonValue::Object{
        {"change", std::string{plan::name_of(difference.change)}},
        {"about", std::string{name_of(difference.gathering)}},
        {"sentence", difference.sentence},
        {"things", std::move(things)},
        {"working", difference.working ? working_json(*difference.working) : JsonValue{}}};
}

std::string summary(std::size_t count) {
    return count == 0 ? "no differences\n"
                      : fmt::format("\n{}\n", counted(static_cast<int>(count), "difference"));
}

} // namespace

std::string differences_text(std::span<const Difference> differences, bool with_working) {
    std::string text;
    std::string_view heading;
    for (const Difference& difference : differences) {
        if (const std::string_view next = heading_of(difference); next != heading) {
            text += fmt::format("{}{}\n", heading.empty() ? "" : "\n", next);
            heading = next;
        }
        text += fmt::format("  {}\n", difference.sentence);
        if (with_working && difference.working) {
            text += working_text({&*difference.working, 1}, "    ");
        }
    }
    text += summary(differences.size());
    for (const std::string& caution : cautions_for(differences)) {
        text += caution + "\n";
    }
    return text;
}

JsonValue::Object differences_json(std::span<const Difference> differences) {
    JsonValue::Array all;
    for (const Difference& difference : differences) {
        all.push_back(json_of(difference));
    }
    const std::vector<std::string> mind = cautions_for(differences);
    return {{"differences", std::move(all)},
            {"count", static_cast<int>(differences.size())},
            {"mind", JsonValue::Array(mind.begin(), mind.end())}};
}

} // namespace throwline::command
