#include "card/fields.h"
#include "card/locate.h"
#include "checks/shot_figures.h"
#include "optics/angle_of_view.h"
#include "optics/coverage.h"
#include "plan/places.h"

#include <cmath>

namespace throwline::card {

namespace {

constexpr LengthBounds kHeights{Length::metres(0.02), Length::metres(30)};
constexpr LengthBounds kFocals{Length::millimetres(1), Length::millimetres(3000)};

/// Focal lengths are told in millimetres whatever the units.
std::string focal_text(const std::optional<Length>& focal) {
    return focal ? shortest(std::round(focal->mm() * 10.0) / 10.0) + " mm" : "as the size asks";
}

Parts<plan::Shot> shot_part(const edit::Context& context, const plan::Id<plan::Shot>& id) {
    return parts_of<plan::Shot>(
        context, "shot " + id.name,
        {[id](plan::Plan& plan, const edit::Context&) { return edit::find(plan, id); }});
}

/// What is left to the shot's own rules when the text is empty or says so.
bool leaves_open(const std::string& text) {
    return text.empty() || text == "as the size asks" || text == "widest" || text == "the subject"
           || text == "any" || text == "as the camera";
}

Field focal_field(const Parts<plan::Shot>& shot) {
    Field made = field(
        shot, {"focal", "focal length"}, FieldKind::length,
        [](const plan::Shot& part) { return focal_text(part.focal); },
        [](plan::Shot& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (leaves_open(text)) {
                part.focal.reset();
                return fault;
            }
            const bool bare = text.find_first_not_of("0123456789.,+ ") == std::string::npos;
            if (const auto focal =
                    read_length(bare ? text + " mm" : text, UnitSystem::metric, kFocals, fault)) {
                part.focal = *focal;
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
            return part.stop ? "T" + shortest(*part.stop) : std::string{"widest"};
        },
        [](plan::Shot& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (leaves_open(text)) {
                part.stop.reset();
                return fault;
            }
            const bool with_t = text.front() == 'T' || text.front() == 't';
            if (const auto stop = read_number(with_t ? text.substr(1) : text, 0.5, 128.0, fault)) {
                part.stop = *stop;
            }
            return fault;
        });
    made.hint = "a T-number; empty: the lens's widest";
    return made;
}

Field focus_field(const Parts<plan::Shot>& shot, UnitSystem units) {
    return field(
        shot, {"focus", "focus distance"}, FieldKind::length,
        [units](const plan::Shot& part) {
            return part.focus ? shown(*part.focus, units) : std::string{"the subject"};
        },
        [units](plan::Shot& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (leaves_open(text)) {
                part.focus.reset();
            } else if (const auto focus = read_length(
                           text, units, {Length::metres(0.01), Length::metres(10'000)}, fault)) {
                part.focus = *focus;
            }
            return fault;
        });
}

Field size_field(const Parts<plan::Shot>& shot) {
    std::vector<std::string> sizes = choice_names(kShotSizeNames);
    sizes.insert(sizes.begin(), "any");
    return choice_field(
        shot, {"size", "wanted size"}, sizes,
        [](const plan::Shot& part) {
            return part.size ? std::string{plan::name_of(*part.size)} : std::string{"any"};
        },
        [](plan::Shot& part, const std::string& name) {
            part.size =
                name == "any" ? std::nullopt : std::optional{choice_named(kShotSizeNames, name)};
        });
}

Field subjects_field(const edit::Context& context, const Parts<plan::Shot>& shot) {
    Field made = field(
        shot, {"subjects", "subjects"}, FieldKind::text,
        [](const plan::Shot& part) {
            std::vector<std::string> names;
            for (const auto& subject : part.subjects) {
                names.push_back(subject.name);
            }
            return names.empty() ? std::string{"nobody"} : joined(names);
        },
        [](plan::Shot& part, const std::string& text, const edit::Context& now) {
            std::string fault;
            if (text.empty() || text == "nobody") {
                part.subjects.clear();
            } else if (const auto names = read_names(text, id_names(now.plan.people), fault)) {
                part.subjects.clear();
                for (const std::string& name : *names) {
                    part.subjects.push_back({name});
                }
            }
            return fault;
        });
    made.choices = id_names(context.plan.people);
    made.hint = "names, with commas between";
    return made;
}

Field aim_field(const edit::Context& context, const Parts<plan::Shot>& shot) {
    const UnitSystem units = context.plan.units;
    Field made = field(
        shot, {"aim", "aim"}, FieldKind::text,
        [units](const plan::Shot& part) {
            return std::holds_alternative<std::monostate>(part.aim) ? std::string{"its subjects"}
                                                                    : aim_text(part.aim, units);
        },
        [](plan::Shot& part, const std::string& text, const edit::Context& now) {
            return put_aim(part.aim, text == "its subjects" ? "" : text, now, part.camera.name);
        });
    made.choices = aimable(context.plan);
    made.hint = "a name, or a place: across, up the page, height";
    return made;
}

Field shot_height_field(const Parts<plan::Shot>& shot, UnitSystem units) {
    return field(
        shot, {"shot_height", "lens height"}, FieldKind::length,
        [units](const plan::Shot& part) {
            return part.height ? shown(*part.height, units) : std::string{"as the camera"};
        },
        [units](plan::Shot& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (leaves_open(text)) {
                part.height.reset();
            } else if (const auto height = read_length(text, units, kHeights, fault)) {
                part.height = *height;
            }
            return fault;
        });
}

Figure figure(std::string key, std::string value, std::function<Working()> working) {
    return {std::move(key), std::move(value), std::move(working)};
}

void shot_figures(Card& card, const CardInput& input, const plan::Id<plan::Shot>& id) {
    if (input.analysis == nullptr) {
        return;
    }
    const UnitSystem units = input.context.plan.units;
    for (const checks::ShotScene& scene : input.analysis->shots) {
        const bool is_it =
            scene.shot->id == id
            && (scene.beat->id == input.context.now.beat || scene.shot->beats.size() == 1);
        const auto figures = is_it ? checks::figures_of(scene) : std::nullopt;
        if (!figures) {
            continue;
        }
        const optics::PictureArea area =
            optics::effective_sensor(*figures->view.sensor, *figures->view.lens);
        const Length focal = figures->view.focal;
        say(card, {"Takes in ",
                   figure("angle", degrees_text(figures->view.angle.horizontal),
                          [area, focal] { return optics::angle_of_view_working(area, focal); }),
                   " across at ", shortest(std::round(focal.mm() * 10.0) / 10.0) + " mm."});
        for (const checks::SubjectFigures& subject : figures->subjects) {
            const Length depth = Length::metres(subject.depth_m);
            say(card, {subject.person.name + " is ", shown(depth, units) + " away; the frame is ",
                       figure("covers_" + subject.person.name,
                              shown(subject.coverage.width, units) + " by "
                                  + shown(subject.coverage.height, units),
                              [area, focal, depth] {
                                  return optics::coverage_working(area, focal, depth);
                              }),
                       " there", subject.sharp ? ", in focus." : ", out of focus."});
        }
        if (figures->sharp) {
            say(card, {"Sharp from " + shown(figures->sharp->near_limit, units)
                       + (figures->sharp->far_limit
                              ? " to " + shown(*figures->sharp->far_limit, units) + "."
                              : " on.")});
        }
        return;
    }
}

} // namespace

void shot_sentences(Card& card, const CardInput& input, const plan::Id<plan::Shot>& id) {
    const edit::Context& context = input.context;
    const UnitSystem units = context.plan.units;
    const Parts<plan::Shot> shot = shot_part(context, id);
    if (shot.empty()) {
        return;
    }
    heading(card, "Shot " + id.name);
    say(card, {"Wants ", subjects_field(context, shot), " in a ", size_field(shot), ", with ",
               focal_field(shot), " at ", stop_field(shot), "."});
    say(card, {"Looks at ", aim_field(context, shot), "; focus on ", focus_field(shot, units),
               "; lens ", shot_height_field(shot, units), " up."});
    say(card,
        {"By ",
         choice_field(
             shot, {"shot_camera", "camera"}, id_names(context.plan.cameras),
             [](const plan::Shot& part) { return part.camera.name; },
             [](plan::Shot& part, const std::string& name) { part.camera.name = name; }),
         "; extender ",
         yes_no_field(
             shot, {"extender", "extender"}, [](const plan::Shot& part) { return part.extender; },
             [](plan::Shot& part, bool in) { part.extender = in; }),
         "."});
    say(card, {"Composition: ",
               text_field(
                   shot, {"composition", "composition"},
                   [](const plan::Shot& part) { return part.composition; },
                   [](plan::Shot& part, const std::string& text) { part.composition = text; }),
               "."});
    say(card, {"Notes: ",
               text_field(
                   shot, {"shot_notes", "notes"},
                   [](const plan::Shot& part) {
                       std::string text;
                       for (const std::string& note : part.notes) {
                           text += (text.empty() ? "" : "; ") + note;
                       }
                       return text;
                   },
                   [](plan::Shot& part, const std::string& text) {
                       part.notes.clear();
                       if (!text.empty()) {
                           part.notes.push_back(text);
                       }
                   }),
               "."});
    shot_figures(card, input, id);
}

void camera_card(Card& card, const CardInput& input) {
    const edit::Context& context = input.context;
    const Parts<plan::Camera> cameras = entities<plan::Camera>(input);
    if (cameras.empty()) {
        return;
    }
    say(card, {"On a ",
               choice_field(
                   cameras, {"support", "support"}, row_names(context.catalogue.supports),
                   [](const plan::Camera& part) { return part.support; },
                   [](plan::Camera& part, const std::string& name) { part.support = name; }),
               " at ",
               length_field(
                   cameras, {"eye_height", "lens height"}, context.plan.units, kHeights,
                   [](const plan::Camera& part) { return part.eye_height; },
                   [](plan::Camera& part, Length height) { part.eye_height = height; }),
               ", with ",
               choice_field(
                   cameras, {"lens", "lens"}, row_names(context.catalogue.lenses),
                   [](const plan::Camera& part) { return part.lens; },
                   [](plan::Camera& part, const std::string& name) { part.lens = name; }),
               " on ",
               choice_field(
                   cameras, {"sensor", "sensor"}, row_names(context.catalogue.sensors),
                   [](const plan::Camera& part) { return part.sensor; },
                   [](plan::Camera& part, const std::string& name) { part.sensor = name; }),
               "."});
    say(card,
        {"Exposed at ISO ",
         number_field(
             cameras, {"iso", "ISO speed"}, 10, 1'000'000, "",
             [](const plan::Camera& part) { return part.iso; },
             [](plan::Camera& part, double iso) { part.iso = iso; }),
         " for 1/",
         number_field(
             cameras, {"shutter", "shutter"}, 1, 100'000, " s",
             [](const plan::Camera& part) { return std::round(1000.0 / part.exposure_s) / 1000.0; },
             [](plan::Camera& part, double parts_of_s) { part.exposure_s = 1.0 / parts_of_s; }),
         "."});
    if (input.chosen.size() == 1) {
        const auto place =
            plan::camera_place(context.plan, cameras.first(), context.now.beat, context.now.shot);
        if (place && !place->shot.empty()) {
            shot_sentences(card, input, place->shot);
        }
    }
}

} // namespace throwline::card
