#include "card/card_kinds.h"
#include "card/kit_text.h"
#include "card/locate.h"
#include "card/site_fields.h"

#include <cmath>

namespace throwline::card {

namespace {

Parts<plan::Plan> whole(const edit::Context& context) {
    return parts_of<plan::Plan>(context, "the production",
                                std::vector{locator<plan::Plan>([](auto& plan) { return &plan; })});
}

void title_sentence(Card& card, const Parts<plan::Plan>& plan) {
    say(card, {text_field(plan, {"title", "title"}, [](auto& part) -> auto& { return part.title; }),
               ", in ",
               enum_field(plan, {"units", "units"}, plan::kUnitSystemNames,
                          [](auto& part) -> auto& { return part.units; }),
               " units."});
}

Field room_height_field(const Parts<plan::Plan>& plan, UnitSystem units) {
    return length_field(
        plan, {"room_height", "room height"}, units, {Length::metres(1), Length::metres(100)},
        [](const plan::Plan& part) { return part.room.height; },
        [](plan::Plan& part, Length height) {
            for (plan::Wall& wall : part.room.walls) {
                if (wall.height == part.room.height) {
                    wall.height = height;
                }
            }
            part.room.height = height;
        });
}

void room_sentences(Card& card, const CardInput& input, const Parts<plan::Plan>& plan) {
    const UnitSystem units = input.context.plan.units;
    heading(card, "Room");
    if (input.context.plan.room.outline.empty()) {
        say(card, {"None yet: draw its walls, or type tape readings."});
        return;
    }
    const auto finish = [&](const char* key, const char* words, std::string plan::Room::* part) {
        return open_row_field(plan, {key, words}, input.context.catalogue.finishes, units,
                              "not told", [part](auto& all) -> auto& { return all.room.*part; });
    };
    say(card, {room_height_field(plan, units), " high; walls ",
               finish("room_finish", "wall finish", &plan::Room::finish), ", floor ",
               finish("floor_finish", "floor finish", &plan::Room::floor_finish), ", ceiling ",
               finish("ceiling_finish", "ceiling finish", &plan::Room::ceiling_finish), "."});
    say(card, {"A shot may see the floor: ",
               yes_no_field(plan, {"floor_dressed", "floor dressing"},
                            [](auto& all) -> auto& { return all.room.floor_dressed; }),
               "; the ceiling: ",
               yes_no_field(plan, {"ceiling_dressed", "ceiling dressing"},
                            [](auto& all) -> auto& { return all.room.ceiling_dressed; }),
               "."});
}

Field target(const Parts<plan::Plan>& plan, FieldName name, const NumberBounds& bounds,
             double plan::Targets::* part) {
    return number_field(
        plan, std::move(name), bounds, [part](const plan::Plan& all) { return all.targets.*part; },
        [part](plan::Plan& all, double value) { all.targets.*part = value; });
}

void target_sentences(Card& card, const Parts<plan::Plan>& plan, UnitSystem units) {
    heading(card, "Wanted");
    say(card,
        {"Lighting ratio ",
         target(plan, {"ratio", "lighting ratio"}, {0, 1000}, &plan::Targets::lighting_ratio),
         " to 1 (0 is open), exposure within ",
         target(plan, {"tolerance", "exposure tolerance"}, {0, 10},
                &plan::Targets::exposure_tolerance_stops),
         " stops by a meter constant of ",
         target(plan, {"meter", "meter constant"}, {240, 400}, &plan::Targets::meter_constant),
         ", ",
         percent_field(plan, {"visible_share", "visible share"},
                       [](auto& all) -> auto& { return all.targets.visible_share; }),
         " of a subject seen."});
    say(card, {"Ways out ",
               length_field(
                   plan, {"way_out_width", "way out width"}, units,
                   {Length::metres(0.3), Length::metres(10)},
                   [](const plan::Plan& part) { return part.targets.way_out_width; },
                   [](plan::Plan& part, Length width) { part.targets.way_out_width = width; }),
               " clear; the venue and local code decide."});
}

Field kit_field(const CardInput& input, const Parts<plan::Plan>& plan) {
    const std::vector<std::string> known = kit_names(input.context.catalogue);
    Field made = field(
        plan, {"kit", "kit"}, FieldKind::many_lines,
        [](const plan::Plan& part) { return kit_text(part.kit); },
        [known](plan::Plan& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (const auto kit = read_kit(text, known, fault)) {
                part.kit = *kit;
            }
            return fault;
        });
    made.hint = "3 tripod; 1 prime 50 T1.5; an item on each line";
    return made;
}

void accepted_sentences(Card& card, const CardInput& input, const Parts<plan::Plan>& plan) {
    const std::vector<plan::Acceptance>& accepted = input.context.plan.accepted;
    for (std::size_t i = 0; i < accepted.size(); ++i) {
        const std::string where =
            accepted[i].shot.empty() ? "any shot" : "shot " + accepted[i].shot.name;
        say(card,
            {"Lives with " + accepted[i].check + " in " + where + ": ",
             field(
                 plan, {"accepted_" + std::to_string(i), "reason for " + accepted[i].check},
                 FieldKind::text, [i](const plan::Plan& part) { return part.accepted[i].reason; },
                 [i](plan::Plan& part, const std::string& text, const edit::Context&) {
                     if (i >= part.accepted.size()) {
                         return std::string{"that is not accepted any more"};
                     }
                     part.accepted[i].reason = trimmed(text);
                     return std::string{};
                 }),
             "."});
    }
}

void beat_sentences(Card& card, const CardInput& input) {
    const plan::Id<plan::Beat> id = input.context.now.beat;
    const Parts<plan::Beat> beat = entity<plan::Beat>(
        input.context, "beat " + id.name, id, [](auto& plan) -> auto& { return plan.beats; });
    if (beat.empty()) {
        return;
    }
    heading(card, "Beat " + id.name);
    say(card,
        {"In it: ",
         text_field(beat, {"beat_name", "name"}, [](auto& part) -> auto& { return part.name; }),
         "."});
}

} // namespace

void production_card(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Plan> plan = whole(input.context);
    title_sentence(card, plan);
    production_figures(card, input);
    beat_sentences(card, input);
    shot_sentences(card, input, input.context.now.shot);
    site_sentences(card, plan);
    room_sentences(card, input, plan);
    grid_sentences(card, input);
    target_sentences(card, plan, units);
    heading(card, "Kit");
    say(card, {"The crew has: ", kit_field(input, plan)});
    accepted_sentences(card, input, plan);
    underlay_sentences(card, input.context);
}

} // namespace throwline::card
