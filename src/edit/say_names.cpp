#include "edit/say_names.h"

#include "base/words.h"
#include "edit/moves.h"
#include "edit/say_words.h"
#include "plan/names.h"

#include <algorithm>
#include <array>
#include <functional>
#include <utility>

namespace throwline::edit {

namespace {

/// The first meaning of a name stays.
template <class Meaning>
void add(Names<Meaning>& names, const std::string& name, const Meaning& meaning,
         bool is_offered = true) {
    const SaidWords words{name};
    if (words.count() == 0
        || !names.by_name.emplace(words.joined(0, words.count()), meaning).second) {
        return;
    }
    names.longest = std::max(names.longest, words.count());
    if (is_offered) {
        names.shown.push_back(name);
    }
}

/// What is on the floor now, and who and what waits beside it.
std::vector<Thing> all_things(const Context& context) {
    std::vector<Thing> things = things_on_floor(context);
    const auto add_missing = [&](Kind kind, const std::string& name) {
        const Thing thing{kind, name, 0};
        if (std::find(things.begin(), things.end(), thing) == things.end()) {
            things.push_back(thing);
        }
    };
    for (const plan::Person& person : context.plan.people) {
        add_missing(Kind::person, person.id.name);
    }
    for (const plan::Camera& camera : context.plan.cameras) {
        add_missing(Kind::camera, camera.id.name);
    }
    for (const plan::Boom& boom : context.plan.booms) {
        add_missing(Kind::boom, boom.id.name);
    }
    return things;
}

struct Plural {
    Kind kind;
    const char* word;
};
constexpr std::array kPlurals{Plural{Kind::camera, "all cameras"},
                              Plural{Kind::lamp, "all lamps"},
                              Plural{Kind::person, "all people"},
                              Plural{Kind::scenery, "all scenery"},
                              Plural{Kind::boom, "all booms"},
                              Plural{Kind::wall, "all walls"},
                              Plural{Kind::opening, "all doors and windows"},
                              Plural{Kind::opening, "all openings"},
                              Plural{Kind::pipe, "all pipes"},
                              Plural{Kind::outlet, "all outlets"}};

using Wanted = std::function<bool(const Thing&)>;

/// All that are on the floor now and not hidden; nothing is named when there are none.
void add_all(Names<std::vector<Thing>>& names, const Context& context, const std::string& name,
             const Wanted& wanted) {
    std::vector<Thing> things;
    for (const Thing& thing : things_on_floor(context)) {
        if (wanted(thing) && !is_hidden(context.plan, thing)) {
            things.push_back(thing);
        }
    }
    if (!things.empty()) {
        add(names, name, things);
    }
}

void add_collections(Names<std::vector<Thing>>& names, const Context& context) {
    for (const Plural& plural : kPlurals) {
        add_all(names, context, plural.word,
                [&](const Thing& thing) { return thing.kind == plural.kind; });
    }
    for (const auto& [kind, word] : {std::pair{plan::PersonKind::cast, "all cast"},
                                     std::pair{plan::PersonKind::crew, "all crew"}}) {
        add_all(names, context, word, [&, wanted = kind](const Thing& thing) {
            const plan::Person* person =
                thing.kind == Kind::person
                    ? plan::find(context.plan, plan::Id<plan::Person>{thing.name})
                    : nullptr;
            return person != nullptr && person->kind == wanted;
        });
    }
    add_all(names, context, "everything", [](const Thing&) { return true; });
}

/// "key": the lamps of that role that burn now.
void add_roles(Names<std::vector<Thing>>& names, const Context& context) {
    for (const auto& role : kLampRoleNames) {
        std::vector<Thing> things;
        for (const plan::Lamp& lamp : context.plan.lamps) {
            if (lamp.role == role.value && plan::is_lit(lamp, context.now.beat)) {
                things.push_back({Kind::lamp, lamp.id.name, 0});
            }
        }
        if (!things.empty()) {
            add(names, std::string{role.name}, things);
            add(names, "all " + std::string{role.name} + " lamps", things, false);
        }
    }
}

Names<std::vector<Thing>> names_of_things(const Context& context, std::span<const Thing> chosen) {
    Names<std::vector<Thing>> names;
    const std::vector<Thing> things = all_things(context);
    for (const Thing& thing : things) {
        add(names, with_kind(name_of(thing.kind), name_of(thing)), {thing},
            thing.kind == Kind::camera || thing.kind == Kind::lamp || thing.kind == Kind::wall);
    }
    for (const Thing& thing : things) {
        add(names, name_of(thing), {thing}, thing.kind != Kind::lamp);
    }
    add_roles(names, context);
    add_collections(names, context);
    const std::vector<Thing> held{chosen.begin(), chosen.end()};
    for (const char* const word : {"it", "them"}) {
        if (!held.empty()) {
            add(names, word, held);
        }
    }
    return names;
}

template <class Row>
void add_rows(Names<StoreItem>& names, Shelf shelf, const std::vector<Row>& rows) {
    for (const Row& row : rows) {
        add(names, row.name, StoreItem{shelf, row.name});
    }
}

Names<StoreItem> names_of_items(const Context& context) {
    const catalogue::Catalogue& tables = context.catalogue;
    Names<StoreItem> names;
    for (const char* const kind : {"cast", "crew"}) {
        add(names, kind, StoreItem{Shelf::person, kind});
    }
    add(names, "boom", StoreItem{Shelf::boom, {}});
    add(names, "outlet", StoreItem{Shelf::outlet, {}});
    add_rows(names, Shelf::stock, tables.stock);
    add_rows(names, Shelf::lamp, tables.instruments);
    add_rows(names, Shelf::camera, tables.lenses);
    return names;
}

} // namespace

Vocabulary vocabulary(const Context& context, std::span<const Thing> chosen) {
    Vocabulary words;
    words.things = names_of_things(context, chosen);
    for (const plan::Beat& beat : context.plan.beats) {
        add(words.beats, beat.id.name, beat.id);
    }
    for (const plan::Beat& beat : context.plan.beats) {
        add(words.beats, beat.name, beat.id, false);
    }
    for (const plan::Shot& shot : context.plan.shots) {
        add(words.shots, shot.id.name, shot.id);
    }
    for (const plan::Circuit& circuit : context.plan.circuits) {
        add(words.circuits, circuit.id.name, circuit.id);
    }
    words.items = names_of_items(context);
    return words;
}

} // namespace throwline::edit
