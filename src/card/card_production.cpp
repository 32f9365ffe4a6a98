#include "card/fields.h"
#include "card/locate.h"

#include <cmath>

namespace throwline::card {

namespace {

Parts<plan::Plan> whole(const edit::Context& context) {
    return parts_of<plan::Plan>(context, "the production",
                                {[](plan::Plan& plan, const edit::Context&) { return &plan; }});
}

void site_sentences(Card& card, const Parts<plan::Plan>& plan) {
    say(card, {"At ",
               text_field(
                   plan, {"place", "place"}, [](const plan::Plan& part) { return part.site.place; },
                   [](plan::Plan& part, const std::string& text) { part.site.place = text; }),
               ", on ",
               text_field(
                   plan, {"date", "date"}, [](const plan::Plan& part) { return part.site.date; },
                   [](plan::Plan& part, const std::string& text) { part.site.date = text; }),
               ", north ",
               field(
                   plan, {"north", "north"}, FieldKind::angle,
                   [](const plan::Plan& part) { return degrees_text(part.site.north, 1); },
                   [](plan::Plan& part, const std::string& text, const edit::Context&) {
                       std::string fault;
                       if (const auto angle = read_angle(text, fault)) {
                           part.site.north = *angle;
                       }
                       return fault;
                   }),
               " clockwise from up the page."});
    const auto degrees = [&](const char* key, const char* words, double most,
                             std::optional<Angle> plan::Site::* part) {
        return field(
            plan, {key, words}, FieldKind::angle,
            [part](const plan::Plan& whole_plan) {
                const auto& angle = whole_plan.site.*part;
                return angle ? shortest(std::round(angle->deg() * 1e6) / 1e6) + "°"
                             : std::string{"open"};
            },
            [part, most](plan::Plan& whole_plan, const std::string& text, const edit::Context&) {
                std::string fault;
                if (text.empty() || text == "open") {
                    (whole_plan.site.*part).reset();
                } else if (const auto angle = read_angle(text, fault)) {
                    if (std::abs(angle->deg()) > most) {
                        return "degrees from -" + shortest(most) + " to " + shortest(most);
                    }
                    // Both or neither: the other begins at 0.
                    if (!whole_plan.site.latitude) {
                        whole_plan.site.latitude = Angle{};
                    }
                    if (!whole_plan.site.longitude) {
                        whole_plan.site.longitude = Angle{};
                    }
                    whole_plan.site.*part = *angle;
                }
                if (!whole_plan.site.latitude || !whole_plan.site.longitude) {
                    whole_plan.site.latitude.reset();
                    whole_plan.site.longitude.reset();
                }
                return fault;
            });
    };
    say(card,
        {"Latitude ", degrees("latitude", "latitude", 90, &plan::Site::latitude), ", longitude ",
         degrees("longitude", "longitude", 180, &plan::Site::longitude), "."});
}

void room_sentences(Card& card, const CardInput& input, const Parts<plan::Plan>& plan) {
    const UnitSystem units = input.context.plan.units;
    if (input.context.plan.room.outline.empty()) {
        say(card, {"No room yet: draw its walls, or type tape readings."});
        return;
    }
    std::vector<std::string> finishes = row_names(input.context.catalogue.finishes);
    finishes.insert(finishes.begin(), "not told");
    const auto finish = [&](const char* key, const char* words, std::string plan::Room::* part) {
        return choice_field(
            plan, {key, words}, finishes,
            [part](const plan::Plan& whole_plan) {
                const std::string& name = whole_plan.room.*part;
                return name.empty() ? std::string{"not told"} : name;
            },
            [part](plan::Plan& whole_plan, const std::string& name) {
                whole_plan.room.*part = name == "not told" ? "" : name;
            });
    };
    say(card,
        {"The room is ",
         length_field(
             plan, {"room_height", "height of the room"}, units,
             {Length::metres(1), Length::metres(100)},
             [](const plan::Plan& part) { return part.room.height; },
             [](plan::Plan& part, Length height) {
                 for (plan::Wall& wall : part.room.walls) {
                     if (wall.height == part.room.height) {
                         wall.height = height;
                     }
                 }
                 part.room.height = height;
             }),
         " high; walls ", finish("room_finish", "finish of the walls", &plan::Room::finish),
         ", floor ", finish("floor_finish", "finish of the floor", &plan::Room::floor_finish),
         ", ceiling ",
         finish("ceiling_finish", "finish of the ceiling", &plan::Room::ceiling_finish), "."});
}

void grid_sentences(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Grid> grid = parts_of<plan::Grid>(
        input.context, "the grid",
        {[](plan::Plan& plan, const edit::Context&) { return plan.grid ? &*plan.grid : nullptr; }});
    if (grid.empty()) {
        return;
    }
    const auto length = [&](const char* key, const char* words, Length plan::Grid::* part) {
        return length_field(
            grid, {key, words}, units, {Length::metres(0.1), Length::metres(50)},
            [part](const plan::Grid& whole_grid) { return whole_grid.*part; },
            [part](plan::Grid& whole_grid, Length value) { whole_grid.*part = value; });
    };
    const auto load = [&](const char* key, const char* words, double plan::Grid::* part) {
        return number_field(
            grid, {key, words}, 0, 100'000, " kg",
            [part](const plan::Grid& whole_grid) { return whole_grid.*part; },
            [part](plan::Grid& whole_grid, double kg) { whole_grid.*part = kg; });
    };
    say(card, {"Its pipe grid hangs at ", length("grid_height", "height", &plan::Grid::height),
               ", a position every ", length("pitch_x", "pitch across", &plan::Grid::pitch_x),
               " across and ", length("pitch_y", "pitch up the page", &plan::Grid::pitch_y),
               " up the page; by the venue's papers ",
               load("grid_point_load", "point load", &plan::Grid::point_load_kg), " a point, ",
               load("grid_pipe_load", "pipe load", &plan::Grid::pipe_load_kg), " a pipe."});
}

void target_sentences(Card& card, const CardInput& input, const Parts<plan::Plan>& plan) {
    const UnitSystem units = input.context.plan.units;
    const auto target = [&](const char* key, const char* words, double least, double most,
                            double plan::Targets::* part) {
        return number_field(
            plan, {key, words}, least, most, "",
            [part](const plan::Plan& whole_plan) { return whole_plan.targets.*part; },
            [part](plan::Plan& whole_plan, double value) { whole_plan.targets.*part = value; });
    };
    say(card,
        {"Wanted: lighting ratio ",
         target("ratio", "lighting ratio", 0, 1000, &plan::Targets::lighting_ratio),
         " (0 is open), exposure within ",
         target("tolerance", "exposure tolerance", 0, 10, &plan::Targets::exposure_tolerance_stops),
         " stops, ways out ",
         length_field(
             plan, {"way_out_width", "width of ways out"}, units,
             {Length::metres(0.3), Length::metres(10)},
             [](const plan::Plan& part) { return part.targets.way_out_width; },
             [](plan::Plan& part, Length width) { part.targets.way_out_width = width; }),
         " clear; the venue and local code decide."});
}

void beat_sentences(Card& card, const CardInput& input) {
    const plan::Id<plan::Beat> id = input.context.now.beat;
    const Parts<plan::Beat> beat = parts_of<plan::Beat>(
        input.context, "beat " + id.name,
        {[id](plan::Plan& plan, const edit::Context&) { return edit::find(plan, id); }});
    if (beat.empty()) {
        return;
    }
    heading(card, "Beat " + id.name);
    say(card, {"Called ",
               text_field(
                   beat, {"beat_name", "name"}, [](const plan::Beat& part) { return part.name; },
                   [](plan::Beat& part, const std::string& text) { part.name = text; }),
               "."});
}

} // namespace

void production_card(Card& card, const CardInput& input) {
    const Parts<plan::Plan> plan = whole(input.context);
    say(card, {"",
               text_field(
                   plan, {"title", "title"}, [](const plan::Plan& part) { return part.title; },
                   [](plan::Plan& part, const std::string& text) { part.title = text; }),
               ", in ",
               choice_field(
                   plan, {"units", "units"}, choice_names(plan::kUnitSystemNames),
                   [](const plan::Plan& part) { return std::string{plan::name_of(part.units)}; },
                   [](plan::Plan& part, const std::string& name) {
                       part.units = choice_named(plan::kUnitSystemNames, name);
                   }),
               " units."});
    site_sentences(card, plan);
    room_sentences(card, input, plan);
    grid_sentences(card, input);
    target_sentences(card, input, plan);
    beat_sentences(card, input);
    if (!input.context.now.shot.empty()) {
        shot_sentences(card, input, input.context.now.shot);
    }
}

} // namespace throwline::card
