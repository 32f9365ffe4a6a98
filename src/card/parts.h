#pragma once

#include "base/utf8.h"
#include "card/card.h"
#include "edit/moves.h"

#include <algorithm>
#include <fmt/format.h>
#include <functional>
#include <memory>
#include <string>
#include <vector>

/// The parts of a plan that are chosen, and the changes that fields make of all of them at once.
namespace throwline::card {

/// Where a part lies: looked at in the plan of the context, or taken hold of in one that is to be
/// changed. Nothing when it is not there.
template <class Part>
struct Locator {
    std::function<std::optional<Part>(const edit::Context&)> see;
    std::function<Part*(plan::Plan&, const edit::Context&)> reach;
};

/// A locator from one function of a plan, constant or not, that returns a pointer.
template <class Part, class Find>
Locator<Part> locator(Find find) {
    return {[find](const edit::Context& context) {
                const Part* part = find(context.plan);
                return part != nullptr ? std::optional<Part>{*part} : std::nullopt;
            },
            [find](plan::Plan& plan, const edit::Context&) -> Part* { return find(plan); }};
}

/// The parts that a field is about, one a chosen thing: where each lies, and how it is now.
template <class Part>
struct Parts {
    std::shared_ptr<const std::vector<Locator<Part>>> where;
    std::vector<Part> now;
    /// "camera 2", "3 lamps": for the names of steps and for a reader of the screen.
    std::string what;
    /// While one of these is locked nothing is set.
    std::vector<edit::Thing> things{};

    bool empty() const { return now.empty(); }
    const Part& first() const { return now.front(); }
};

/// Those of the parts that are there.
template <class Part>
Parts<Part> parts_of(const edit::Context& context, std::string what,
                     const std::vector<Locator<Part>>& where,
                     std::vector<edit::Thing> things = {}) {
    Parts<Part> parts;
    parts.what = std::move(what);
    parts.things = std::move(things);
    std::vector<Locator<Part>> found;
    for (const Locator<Part>& locator : where) {
        if (std::optional<Part> part = locator.see(context)) {
            parts.now.push_back(std::move(*part));
            found.push_back(locator);
        }
    }
    parts.where = std::make_shared<const std::vector<Locator<Part>>>(std::move(found));
    return parts;
}

/// A field before its value: how it is called.
struct FieldName {
    std::string key;
    /// "height": completes "Set height of camera 2" and "Height of camera 2".
    std::string words;
};

/// Why things may not be changed; empty when they may.
inline std::string lock_on(const plan::Plan& plan, const std::vector<edit::Thing>& things) {
    for (const edit::Thing& thing : things) {
        if (edit::is_locked(plan, thing)) {
            return fmt::format("{} is locked; unlock it first", edit::name_of(thing));
        }
    }
    return {};
}

/// Sets every part by a text; `put` returns a sentence when the text will not do, else an empty
/// one.
template <class Part, class Put>
auto setter(const Parts<Part>& parts, const FieldName& name, Put put) {
    return [where = parts.where, what = parts.what, things = parts.things, words = name.words,
            put](const edit::Context& context, const std::string& text) -> Result<edit::Step> {
        if (std::string lock = lock_on(context.plan, things); !lock.empty()) {
            return failure(std::move(lock));
        }
        edit::Step step{"Set " + words + " of " + what, context.plan, {}};
        for (const Locator<Part>& locator : *where) {
            Part* part = locator.reach(step.plan, context);
            if (part == nullptr) {
                return failure(what + " is not there any more");
            }
            if (std::string fault = put(*part, text, context); !fault.empty()) {
                return failure(std::move(fault));
            }
        }
        return step;
    };
}

} // namespace throwline::card
