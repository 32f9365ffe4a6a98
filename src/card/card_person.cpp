#include "card/fields.h"
#include "card/locate.h"
#include "checks/light_text.h"
#include "checks/mark_light.h"
#include "photometry/exposure.h"

#include <fmt/format.h>

namespace throwline::card {

namespace {

constexpr LengthBounds kStatures{Length::metres(0.4), Length::metres(2.6)};

std::string facing_text(const plan::Facing& faces, UnitSystem units) {
    if (const auto* angle = std::get_if<Angle>(&faces)) {
        return degrees_text(*angle, 0);
    }
    if (const auto* named = std::get_if<plan::ThingName>(&faces)) {
        return named->name;
    }
    const auto& at = std::get<Vec2>(faces);
    return fmt::format("{}, {}", shown(Length::metres(at.x()), units),
                       shown(Length::metres(at.y()), units));
}

std::string put_facing(plan::Facing& faces, const std::string& text, const edit::Context& context) {
    if (const Result<Angle> angle = parse_angle(text)) {
        faces = *angle;
        return {};
    }
    std::string fault;
    if (const auto name = read_choice(text, aimable(context.plan), fault)) {
        faces = plan::ThingName{*name};
    }
    return fault;
}

/// Their marks in the beat of now, made where they were carried on.
Parts<plan::Mark> marks_of(const CardInput& input) {
    std::vector<Parts<plan::Mark>::Locate> where;
    for (const edit::Thing& thing : input.chosen) {
        where.push_back(
            [id = plan::Id<plan::Person>{thing.name}](plan::Plan& plan, const edit::Context& now) {
                return edit::own_mark(plan, id, now.now.beat);
            });
    }
    return parts_of<plan::Mark>(input.context, what_of(input.chosen), std::move(where));
}

void light_sentences(Card& card, const CardInput& input, const std::string& name) {
    if (input.analysis == nullptr) {
        return;
    }
    const checks::Analysis& known = *input.analysis;
    const checks::CheckInput check{*known.plan, input.context.catalogue, known.shots, known.beats};
    const UnitSystem units = input.context.plan.units;
    for (const checks::ShotScene& scene : known.shots) {
        if (scene.beat->id != input.context.now.beat) {
            continue;
        }
        for (const checks::MarkLight& light : checks::light_at_marks(check, scene)) {
            if (light.person.name != name) {
                continue;
            }
            const stage::Stage& stage = scene.stage;
            std::vector<WorkingTerm> terms = checks::lamp_terms(light, stage, units);
            const std::string level = checks::level_text(light.facing_lx, units);
            Figure figure{"level_" + scene.shot->id.name, level, [terms, level] {
                              return Working{"level on the face = sum over the lamps", terms, level,
                                             "inverse square and cosine laws"};
                          }};
            std::string rest;
            if (light.stops_over) {
                rest = fmt::format(", {} stops {} what the stop asks for",
                                   fixed(std::abs(*light.stops_over), 1),
                                   *light.stops_over >= 0.0 ? "over" : "under");
            }
            if (light.ratio) {
                rest += fmt::format(", ratio {} : 1", fixed(*light.ratio, 1));
            }
            say(card, {"In shot " + scene.shot->id.name + " the face gets ", figure, rest + "."});
        }
    }
}

} // namespace

void person_card(Card& card, const CardInput& input) {
    const edit::Context& context = input.context;
    const UnitSystem units = context.plan.units;
    const Parts<plan::Person> people = entities<plan::Person>(input);
    if (people.empty()) {
        return;
    }
    say(card,
        {"One of the ",
         choice_field(
             people, {"kind", "kind"}, choice_names(plan::kPersonKindNames),
             [](const plan::Person& person) { return std::string{plan::name_of(person.kind)}; },
             [](plan::Person& person, const std::string& name) {
                 person.kind = choice_named(plan::kPersonKindNames, name);
             }),
         ", ",
         length_field(
             people, {"stature", "stature"}, units, kStatures,
             [](const plan::Person& person) { return person.stature; },
             [](plan::Person& person, Length stature) { person.stature = stature; }),
         " tall."});
    const Parts<plan::Mark> marks = marks_of(input);
    if (marks.empty()) {
        say(card, {"Not on the floor in this beat."});
        return;
    }
    Field faces = field(
        marks, {"faces", "facing"}, FieldKind::text,
        [units](const plan::Mark& mark) { return facing_text(mark.faces, units); },
        [](plan::Mark& mark, const std::string& text, const edit::Context& now) {
            return put_facing(mark.faces, text, now);
        });
    faces.choices = aimable(context.plan);
    faces.hint = "a name, or an angle anticlockwise from right across the page";
    say(card, {"In this beat they ",
               choice_field(
                   marks, {"pose", "pose"}, choice_names(plan::kPoseNames),
                   [](const plan::Mark& mark) { return std::string{plan::name_of(mark.pose)}; },
                   [](plan::Mark& mark, const std::string& name) {
                       mark.pose = choice_named(plan::kPoseNames, name);
                   }),
               " and face ", faces, "."});
    const auto open_length = [&](FieldName name, std::optional<Length> plan::Mark::* part,
                                 std::string usual) {
        return field(
            marks, std::move(name), FieldKind::length,
            [=](const plan::Mark& mark) {
                return mark.*part ? shown(*(mark.*part), units) : usual;
            },
            [=](plan::Mark& mark, const std::string& text, const edit::Context&) {
                std::string fault;
                if (text.empty() || text == usual) {
                    (mark.*part).reset();
                } else if (const auto length = read_length(
                               text, units, {Length::metres(-10), Length::metres(30)}, fault)) {
                    mark.*part = *length;
                }
                return fault;
            });
    };
    say(card,
        {"Soles ", open_length({"elevation", "elevation"}, &plan::Mark::elevation, "on the floor"),
         "; seat ", open_length({"seat", "seat height"}, &plan::Mark::seat_height, "as it fits"),
         "."});
    if (input.chosen.size() == 1) {
        light_sentences(card, input, input.chosen.front().name);
    }
}

} // namespace throwline::card
