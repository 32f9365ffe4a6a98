/// A shot in sentences: what it wants to see, and with what.

#include "card/aims.h"
#include "card/card_kinds.h"
#include "card/locate.h"
#include "card/shot_working.h"
#include "checks/shot_figures.h"

namespace throwline::card {

namespace {

constexpr LengthBounds kHeights{Length::metres(0.02), Length::metres(30)};
constexpr LengthBounds kFocals{Length::millimetres(1), Length::metres(5)};
constexpr LengthBounds kFocuses{Length::metres(0.01), Length::metres(1000)};
constexpr const char* kAsSize = "as the size asks";
constexpr const char* kWidest = "widest";
constexpr const char* kSubjects = "its subjects";

const auto kShots = [](auto& plan) -> auto& { return plan.shots; };

/// What the camera's own lock does not hold.
Parts<plan::Shot> shot_part(const edit::Context& context, const plan::Id<plan::Shot>& id) {
    return entity<plan::Shot>(context, "shot " + id.name, id, kShots);
}

/// What belongs to how the camera is set up.
Parts<plan::Shot> set_up(Parts<plan::Shot> shot) {
    shot.things = {{edit::Kind::camera, shot.first().camera.name, 0}};
    return shot;
}

Field focal_field(const Parts<plan::Shot>& shot) {
    Field made = field(
        shot, {"focal", "focal length"}, FieldKind::length,
        [](const plan::Shot& part) {
            return part.focal ? focal_text(*part.focal) : std::string{kAsSize};
        },
        [](plan::Shot& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (trimmed(text).empty() || says(text, kAsSize)) {
                part.focal.reset();
                return fault;
            }
            // Told in millimetres whatever the units of the plan.
            const bool bare = text.find_first_not_of("0123456789.,+ ") == std::string::npos;
            if (const auto focal =
                    read_length(bare ? text + " mm" : text, UnitSystem::metric, kFocals, fault)) {
                part.focal = *focal;
            } else if (bare) {
                fault = "give a focal length from 1 mm to 5000 mm";
            }
            return fault;
        });
    made.hint = "millimetres, within the lens; empty: as the wanted size asks";
    return made;
}

Field stop_field(const Parts<plan::Shot>& shot) {
    Field made = field(
        shot, {"stop", "stop"}, FieldKind::number,
        [](const plan::Shot& part) {
            return part.stop ? stop_text(*part.stop) : std::string{kWidest};
        },
        [](plan::Shot& part, const std::string& text, const edit::Context&) {
            std::string fault;
            const std::string bare = trimmed(text);
            if (bare.empty() || says(bare, kWidest)) {
                part.stop.reset();
                return fault;
            }
            const bool with_t = bare.front() == 'T' || bare.front() == 't';
            if (const auto stop = read_number(with_t ? bare.substr(1) : bare, 0.5, 128.0, fault)) {
                part.stop = *stop;
            }
            return fault;
        });
    made.hint = "a T-number from 0.5 to 128; empty: the lens's widest";
    return made;
}

Field size_field(const Parts<plan::Shot>& shot) {
    std::vector<std::string> sizes{"any size"};
    for (const auto& entry : kShotSizeNames) {
        sizes.emplace_back(entry.name);
    }
    Field made = field(
        shot, {"size", "wanted size"}, FieldKind::choice,
        [](const plan::Shot& part) {
            return part.size ? std::string{plan::name_of(*part.size)} : std::string{"any size"};
        },
        [](plan::Shot& part, const std::string& text, const edit::Context&) {
            if (trimmed(text).empty() || says(text, "any size") || says(text, "any")) {
                part.size.reset();
                return std::string{};
            }
            const Result<ShotSize> size = optics::parse_shot_size(text);
            if (size) {
                part.size = *size;
            }
            return size ? std::string{} : size.error().message;
        });
    made.choices = std::move(sizes);
    made.hint = "a size or its short form, such as MCU; empty: any";
    if (shot.first().size) {
        made.working = [size = *shot.first().size] { return size_working(size); };
    }
    return made;
}

Field aim_field(const edit::Context& context, const Parts<plan::Shot>& shot) {
    const UnitSystem units = context.plan.units;
    Field made = field(
        shot, {"aim", "aim"}, FieldKind::text,
        [units](const plan::Shot& part) { return aim_text(part.aim, units, kSubjects); },
        [](plan::Shot& part, const std::string& text, const edit::Context& now) {
            return put_aim(part.aim, text, now, kSubjects, part.camera.name);
        });
    made.choices = aimable(context.plan);
    made.hint = "a name, or a place: across, up the page, height";
    return made;
}

Field subjects_field(const edit::Context& context, const Parts<plan::Shot>& shot) {
    return ids_field(
        context, shot, {"subjects", "subjects"}, "nobody", false,
        [](const plan::Plan& plan) -> auto& { return plan.people; },
        [](auto& part) -> auto& { return part.subjects; });
}

Field camera_field(const edit::Context& context, const Parts<plan::Shot>& shot) {
    return choice_field(
        shot, {"shot_camera", "camera"}, id_names(context.plan.cameras),
        [](const plan::Shot& part) { return part.camera.name; },
        [](plan::Shot& part, const std::string& name) { part.camera.name = name; });
}

/// What stands before a size.
const char* in_a(const std::optional<ShotSize>& size) {
    if (!size) {
        return " in ";
    }
    return plan::name_of(*size).front() == 'e' ? " in an " : " in a ";
}

/// "from 2.90 m": the first subject's distance.
void add_distance(std::vector<Piece>& pieces, const CardInput& input,
                  const plan::Id<plan::Shot>& id) {
    const checks::ShotScene* scene = scene_of(input, id);
    const auto figures = scene != nullptr ? checks::figures_of(*scene) : std::nullopt;
    if (figures && !figures->subjects.empty()) {
        pieces.emplace_back(" from ");
        pieces.emplace_back(
            distance_figure(*figures, figures->subjects.front(), input.context.plan.units));
    }
}

void looking_sentences(Card& card, const edit::Context& context, const Parts<plan::Shot>& shot) {
    const UnitSystem units = context.plan.units;
    const Parts<plan::Shot> held = set_up(shot);
    say(card, {"Looks at ", aim_field(context, held), ", focused on ",
               open_length_field(held, {"focus", "focus distance"}, units, kFocuses, "the subject",
                                 [](auto& part) -> auto& { return part.focus; }),
               "; lens height ",
               open_length_field(held, {"shot_height", "height"}, units, kHeights, "as the camera",
                                 [](auto& part) -> auto& { return part.height; }),
               ", extender ",
               yes_no_field(held, {"extender", "extender"},
                            [](auto& part) -> auto& { return part.extender; }),
               "."});
    say(card, {"During it the camera goes by ",
               points_field(held, {"moves", "moves"}, units, 0, "no other place",
                            [](auto& part) -> auto& { return part.moves; }),
               "."});
}

void order_sentence(Card& card, const edit::Context& context, const Parts<plan::Shot>& shot) {
    say(card, {"In beats ",
               ids_field(
                   context, shot, {"shot_beats", "beats"}, "", true,
                   [](const plan::Plan& plan) -> auto& { return plan.beats; },
                   [](auto& part) -> auto& { return part.beats; }),
               ", by ", camera_field(context, shot), ", cut to ",
               ids_field(
                   context, shot, {"cuts_to", "cuts"}, "the next shot", true,
                   [](const plan::Plan& plan) -> auto& { return plan.shots; },
                   [](auto& part) -> auto& { return part.cuts_to; }),
               "."});
}

} // namespace

std::vector<Piece> picture_pieces(const CardInput& input, const plan::Id<plan::Shot>& id) {
    const edit::Context& context = input.context;
    const Parts<plan::Shot> shot = shot_part(context, id);
    const Parts<plan::Shot> held = set_up(shot);
    Field focal = focal_field(held);
    if (const checks::ShotScene* scene = scene_of(input, id); scene != nullptr && scene->view) {
        focal.working = [view = *scene->view] { return focal_working(view); };
    } else if (shot.first().focal) {
        focal.working = length_working(*shot.first().focal);
    }
    std::vector<Piece> pieces{std::move(focal),
                              " at ",
                              stop_field(held),
                              ", sees ",
                              subjects_field(context, shot),
                              in_a(shot.first().size),
                              size_field(shot)};
    add_distance(pieces, input, id);
    pieces.emplace_back(".");
    return pieces;
}

void shot_sentences(Card& card, const CardInput& input, const plan::Id<plan::Shot>& id) {
    const edit::Context& context = input.context;
    const Parts<plan::Shot> shot = shot_part(context, id);
    if (shot.empty()) {
        return;
    }
    heading(card, "Shot " + id.name);
    if (input.chosen.empty()) {
        say(card, picture_pieces(input, id));
    }
    shot_figures(card, input, id);
    looking_sentences(card, context, shot);
    order_sentence(card, context, shot);
    say(card, {"Composition: ",
               text_field(shot, {"composition", "composition"},
                          [](auto& part) -> auto& { return part.composition; }),
               "."});
    say(card, {"Notes: ", notes_field(shot, {"shot_notes", "notes"},
                                      [](auto& part) -> auto& { return part.notes; })});
}

} // namespace throwline::card
