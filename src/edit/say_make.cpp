#include "edit/say_make.h"

#include "edit/pick.h"
#include "edit/placing.h"
#include "plan/places.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

Result<Said> as_said(Result<Step> step) {
    if (!step) {
        return tl::unexpected{step.error()};
    }
    return Said{std::move(*step)};
}

Result<Step> each_in_turn(
    const Context& context, std::span<const Thing> things, const std::string& verb,
    const std::function<Result<Step>(const Context& context, const Thing& thing)>& change) {
    const std::vector<Thing> all{things.begin(), things.end()};
    Step whole{fmt::format("{} {}", verb, words_for(all)), context.plan, {}};
    for (const Thing& thing : all) {
        const plan::Plan before = std::move(whole.plan);
        Result<Step> step = change({before, context.catalogue, context.now}, thing);
        if (!step) {
            return step;
        }
        whole.plan = std::move(step->plan);
    }
    return whole;
}

Vec2 direction_of(const std::string& word) {
    if (word == "left") {
        return -Vec2::UnitX();
    }
    if (word == "right") {
        return Vec2::UnitX();
    }
    return word == "up" ? Vec2{Vec2::UnitY()} : Vec2{-Vec2::UnitY()};
}

Result<Vec2> middle_of(const Context& context, std::span<const Thing> things) {
    std::optional<Vec2> low;
    Vec2 high = Vec2::Zero();
    for (const Thing& thing : things) {
        const std::optional<Vec2> at = place_of(context, thing);
        if (!at) {
            return failure(fmt::format("{} is not on the floor now", name_of(thing)));
        }
        high = low ? Vec2{high.cwiseMax(*at)} : *at;
        low = low ? Vec2{low->cwiseMin(*at)} : *at;
    }
    if (!low) {
        return failure("nothing is named that has a place");
    }
    return Vec2{(*low + high) / 2.0};
}

Result<plan::Id<plan::Shot>> shot_of(const Context& context, const Thing& camera) {
    const plan::Camera* found = plan::find(context.plan, plan::Id<plan::Camera>{camera.name});
    const auto place = found == nullptr ? std::nullopt
                                        : plan::camera_place(context.plan, *found, context.now.beat,
                                                             context.now.shot);
    if (!place || place->shot.empty()) {
        return failure(fmt::format(
            "{} takes no shot now; go to one of its shots, or make one with \"new shot on {}\"",
            name_of(camera), name_of(camera)));
    }
    return place->shot;
}

std::string in_capitals(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](char c) {
        return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    });
    return text;
}

} // namespace throwline::edit
