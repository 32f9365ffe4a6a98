#include "edit/moves.h"
#include "edit/new_names.h"
#include "edit/pick.h"
#include "edit/placing.h"
#include "plan/places.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// More copies than this at once are a slip of the keyboard.
constexpr int kMostCopies = 2000;

/// Makes copies in a plan one after the other.
class Copying {
  public:
    Copying(const Context& context, plan::Plan& plan)
        : context_{context}, plan_{plan}, taken_{taken_names(context.plan)} {}

    Result<Thing> copy(const Thing& thing, const Vec2& by_m);

  private:
    template <class Entity>
    Thing add(std::vector<Entity>& entities, const Entity& original, Kind kind) {
        Entity copy = original;
        copy.id.name = new_name(taken_, original.id.name);
        entities.push_back(std::move(copy));
        return {kind, entities.back().id.name, 0};
    }
    Result<Thing> copy_person(const Thing& thing);
    Result<Thing> copy_camera(const Thing& thing);
    Result<Thing> copied_as_is(const Thing& thing);

    const Context& context_;
    plan::Plan& plan_;
    std::set<std::string> taken_;
};

Result<Thing> Copying::copy_person(const Thing& thing) {
    const plan::Id<plan::Person> id{thing.name};
    const auto marks = plan::marks_at(plan_, context_.now.beat);
    const auto mark = marks.find(id);
    if (mark == marks.end()) {
        return failure(fmt::format("{} is not on the floor in this beat", thing.name));
    }
    const Thing made = add(plan_.people, *plan::find(context_.plan, id), Kind::person);
    plan::Mark copy = mark->second;
    copy.path.clear();
    const auto* faces = std::get_if<plan::ThingName>(&copy.faces);
    if (faces != nullptr && faces->name == made.name) {
        copy.faces = Angle{};
    }
    find(plan_, context_.now.beat)->marks.insert_or_assign(plan::Id<plan::Person>{made.name}, copy);
    return made;
}

Result<Thing> Copying::copy_camera(const Thing& thing) {
    const plan::Id<plan::Camera> id{thing.name};
    const plan::Camera& camera = *plan::find(context_.plan, id);
    const auto place =
        plan::camera_place(context_.plan, camera, context_.now.beat, context_.now.shot);
    if (!place) {
        return failure(fmt::format("{} is not on the floor now", thing.name));
    }
    const Thing made = add(plan_.cameras, camera, Kind::camera);
    find(plan_, plan::Id<plan::Camera>{made.name})->home = place->at;
    return made;
}

Result<Thing> Copying::copied_as_is(const Thing& thing) {
    const plan::Plan& plan = context_.plan;
    switch (thing.kind) {
    case Kind::pipe:
        return add(plan_.pipes, *plan::find(plan, plan::Id<plan::Pipe>{thing.name}), thing.kind);
    case Kind::scenery:
        return add(plan_.scenery, *plan::find(plan, plan::Id<plan::Scenery>{thing.name}),
                   thing.kind);
    case Kind::lamp:
        return add(plan_.lamps, *plan::find(plan, plan::Id<plan::Lamp>{thing.name}), thing.kind);
    case Kind::boom:
        return add(plan_.booms, *plan::find(plan, plan::Id<plan::Boom>{thing.name}), thing.kind);
    case Kind::outlet: {
        auto& outlets = find(plan_, plan::Id<plan::Circuit>{thing.name})->outlets;
        outlets.push_back(outlets[static_cast<std::size_t>(thing.index)]);
        return Thing{Kind::outlet, thing.name, static_cast<int>(outlets.size()) - 1};
    }
    case Kind::opening: {
        const auto& openings = plan.room.openings;
        const auto original =
            std::find_if(openings.begin(), openings.end(),
                         [&](const plan::Opening& other) { return other.id.name == thing.name; });
        return add(plan_.room.openings, *original, thing.kind);
    }
    case Kind::person:
        return copy_person(thing);
    case Kind::camera:
        return copy_camera(thing);
    case Kind::wall:
        break;
    }
    return failure("a wall cannot be copied; draw the room, or use flats");
}

Result<Thing> Copying::copy(const Thing& thing, const Vec2& by_m) {
    const std::optional<Vec2> place = place_of(context_, thing);
    const Result<Thing> made = copied_as_is(thing);
    if (!made) {
        return made;
    }
    if (made->kind == Kind::opening) {
        // It still lies on the original, which the search for a free place keeps clear of.
        const auto done = put_opening(plan_, made->name, place.value_or(Vec2::Zero()) + by_m);
        return done ? made : Result<Thing>{tl::unexpected{done.error()}};
    }
    const Context there{plan_, context_.catalogue, {context_.now.beat, {}}};
    const auto done = put(plan_, there, *made, {{false, {}, by_m}, false});
    return done ? made : Result<Thing>{tl::unexpected{done.error()}};
}

} // namespace

Result<Step> copied(const Context& context, std::span<const Thing> things, const Vec2& by_m) {
    if (const auto there = check_there(context.plan, things); !there) {
        return tl::unexpected{there.error()};
    }
    Step step{fmt::format("Copy {}", words_for(things)), context.plan, {}};
    Copying copying{context, step.plan};
    for (const Thing& thing : things) {
        const Result<Thing> made = copying.copy(thing, by_m);
        if (!made) {
            return tl::unexpected{made.error()};
        }
        step.made.push_back(*made);
    }
    return step;
}

Result<Step> arrayed(const Context& context, std::span<const Thing> things, const Array& array) {
    if (const auto there = check_there(context.plan, things); !there) {
        return tl::unexpected{there.error()};
    }
    if (array.columns < 1 || array.rows < 1 || (array.columns == 1 && array.rows == 1)) {
        return failure("give two columns or rows, or more");
    }
    const double copies =
        static_cast<double>(array.columns) * array.rows * static_cast<double>(things.size());
    if (copies > kMostCopies) {
        return failure(fmt::format("that would be more than {} things at once", kMostCopies));
    }
    Step step{fmt::format("Repeat {} in {} x {}", words_for(things), array.columns, array.rows),
              context.plan,
              {things.begin(), things.end()}};
    Copying copying{context, step.plan};
    for (int row = 0; row < array.rows; ++row) {
        for (int column = 0; column < array.columns; ++column) {
            const Vec2 by_m = column * array.column_step_m + row * array.row_step_m;
            for (const Thing& thing : things) {
                if (row == 0 && column == 0) {
                    continue;
                }
                const Result<Thing> made = copying.copy(thing, by_m);
                if (!made) {
                    return tl::unexpected{made.error()};
                }
                step.made.push_back(*made);
            }
        }
    }
    return step;
}

} // namespace throwline::edit
