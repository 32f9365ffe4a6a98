#include "card/aims.h"
#include "card/card_kinds.h"
#include "card/locate.h"
#include "plan/places.h"

namespace throwline::card {

namespace {

constexpr LengthBounds kStatures{Length::metres(0.4), Length::metres(2.8)};
constexpr LengthBounds kSoles{Length::metres(-10), Length::metres(100)};
constexpr LengthBounds kSeats{Length::metres(0), Length::metres(3)};

const auto kPeople = [](auto& plan) -> auto& { return plan.people; };

/// Their marks in the beat of now, made where they were carried on.
Parts<plan::Mark> marks_of(const CardInput& input) {
    std::vector<Locator<plan::Mark>> where;
    const auto marks = plan::marks_at(input.context.plan, input.context.now.beat);
    for (const edit::Thing& thing : input.chosen) {
        const plan::Id<plan::Person> id{thing.name};
        const auto found = marks.find(id);
        const std::optional<plan::Mark> mark =
            found != marks.end() ? std::optional{found->second} : std::nullopt;
        where.push_back({[mark](const edit::Context&) { return mark; },
                         [id](plan::Plan& plan, const edit::Context& now) {
                             return edit::own_mark(plan, id, now.now.beat);
                         }});
    }
    return parts_of<plan::Mark>(input.context, what_of(input.chosen), where,
                                {input.chosen.begin(), input.chosen.end()});
}

/// Somebody put on the floor where they were before, else in the middle of the room.
plan::Mark mark_for(const plan::Plan& plan, const plan::Id<plan::Person>& person) {
    for (const plan::Beat& beat : plan.beats) {
        const auto found = beat.marks.find(person);
        const auto* mark =
            found != beat.marks.end() ? std::get_if<plan::Mark>(&found->second) : nullptr;
        if (mark != nullptr) {
            plan::Mark again = *mark;
            again.path.clear();
            return again;
        }
    }
    plan::Mark mark;
    mark.at = plan.room.outline.empty() ? Vec2{Vec2::Zero()} : centroid(plan.room.outline);
    return mark;
}

/// Whether they are on the floor in the beat of now.
Field presence_field(const CardInput& input, const Parts<plan::Mark>& marks) {
    Field made;
    made.key = "on_floor";
    made.label = capitalised("presence of " + what_of(input.chosen));
    made.kind = FieldKind::yes_no;
    made.choices = {"yes", "no"};
    made.mixed = !marks.empty() && marks.now.size() != input.chosen.size();
    if (!made.mixed) {
        made.value = std::string{marks.empty() ? "no" : "yes"};
    }
    made.set = [things = std::vector(input.chosen.begin(), input.chosen.end()),
                what = what_of(input.chosen)](const edit::Context& now,
                                              const std::string& text) -> Result<edit::Step> {
        std::string fault;
        const auto yes = read_yes_no(text, fault);
        const std::string lock = lock_on(now.plan, things);
        if (!yes || !lock.empty()) {
            return failure(yes ? lock : fault);
        }
        edit::Step step{"Set presence of " + what, now.plan, {}};
        plan::Beat* beat = edit::find(step.plan, now.now.beat);
        if (beat == nullptr) {
            return failure("there is no beat to be on the floor in");
        }
        const auto marks_now = plan::marks_at(now.plan, now.now.beat);
        for (const edit::Thing& thing : things) {
            const plan::Id<plan::Person> id{thing.name};
            if (*yes && !marks_now.contains(id)) {
                beat->marks[id] = mark_for(now.plan, id);
            } else if (!*yes && marks_now.contains(id)) {
                beat->marks[id] = plan::OffFloor{};
            }
        }
        return step;
    };
    return made;
}

Field facing_field(const CardInput& input, const Parts<plan::Mark>& marks) {
    const UnitSystem units = input.context.plan.units;
    const std::string self = input.chosen.size() == 1 ? input.chosen.front().name : std::string{};
    Field faces = field(
        marks, {"faces", "facing"}, FieldKind::text,
        [units](const plan::Mark& mark) { return facing_text(mark.faces, units); },
        [self](plan::Mark& mark, const std::string& text, const edit::Context& now) {
            return put_facing(mark.faces, text, now, self);
        });
    faces.choices = aimable(input.context.plan);
    faces.hint = "a name, a place, or an angle anticlockwise from right across the page";
    return faces;
}

void mark_sentences(Card& card, const CardInput& input, const Parts<plan::Mark>& marks) {
    const UnitSystem units = input.context.plan.units;
    say(card,
        {"In beat " + input.context.now.beat.name + " they ",
         enum_field(marks, {"pose", "pose"}, plan::kPoseNames,
                    [](auto& mark) -> auto& { return mark.pose; }),
         " and face ", facing_field(input, marks), "; soles ",
         open_length_field(marks, {"elevation", "elevation"}, units, kSoles, "on what is there",
                           [](auto& mark) -> auto& { return mark.elevation; }),
         ", seat ",
         open_length_field(marks, {"seat", "seat height"}, units, kSeats, "as it fits",
                           [](auto& mark) -> auto& { return mark.seat_height; }),
         "."});
    say(card, {"They come by ",
               points_field(marks, {"path", "path"}, units, 0, "the straight way",
                            [](auto& mark) -> auto& { return mark.path; }),
               "."});
}

} // namespace

void person_card(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Person> people = entities<plan::Person>(input, kPeople);
    if (people.empty()) {
        return;
    }
    say(card, {"One of the ",
               enum_field(people, {"kind", "kind"}, plan::kPersonKindNames,
                          [](auto& person) -> auto& { return person.kind; }),
               ", ",
               length_field(
                   people, {"stature", "stature"}, units, kStatures,
                   [](const plan::Person& person) { return person.stature; },
                   [](plan::Person& person, Length stature) { person.stature = stature; }),
               " tall."});
    const Parts<plan::Mark> marks = marks_of(input);
    if (!marks.empty()) {
        mark_sentences(card, input, marks);
    }
    if (input.chosen.size() == 1) {
        face_figures(card, input, {input.chosen.front().name});
    }
    if (!input.context.now.beat.empty()) {
        say(card, {"On the floor in this beat: ", presence_field(input, marks), "."});
    }
}

} // namespace throwline::card
