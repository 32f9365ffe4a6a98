#include "card/shot_working.h"

#include "base/words.h"
#include "card/card_kinds.h"
#include "checks/wording.h"
#include "optics/angle_of_view.h"
#include "optics/coverage.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::card {

namespace {

constexpr Length kUsualStature = Length::metres(1.70);

optics::PictureArea area_of(const stage::ShotView& view) {
    return optics::effective_sensor(*view.sensor, *view.lens);
}

Figure angle_figure(const checks::ShotFigures& figures) {
    const optics::PictureArea area = area_of(figures.view);
    const Length focal = figures.view.focal;
    return {"angle", "Angle of view of shot " + figures.shot.name,
            fmt::format("{} by {}", degrees_text(figures.view.angle.horizontal),
                        degrees_text(figures.view.angle.vertical)),
            [area, focal] { return optics::angle_of_view_working(area, focal); }};
}

Figure sharp_figure(const checks::ShotFigures& figures, UnitSystem units) {
    const optics::FocusSetting setting{figures.view.focal, figures.view.stop,
                                       figures.view.sensor->circle_of_confusion};
    const Length focus = figures.view.focus_distance;
    const std::string value =
        "from " + shown(figures.sharp->near_limit, units)
        + (figures.sharp->far_limit ? " to " + shown(*figures.sharp->far_limit, units) : " on");
    return {"sharp", "What is sharp in shot " + figures.shot.name, value, [=] {
                Working working = optics::near_limit_working(setting, focus);
                working.formula += "; far = u (H - f) / (H - u)";
                working.inputs.push_back(
                    {"", "taken for the f-number", stop_text(setting.f_number)});
                working.result = value;
                return working;
            }};
}

Figure coverage_figure(const checks::ShotFigures& figures, const checks::SubjectFigures& subject,
                       UnitSystem units) {
    const optics::PictureArea area = area_of(figures.view);
    const Length focal = figures.view.focal;
    const Length depth = Length::metres(subject.depth_m);
    const optics::Coverage covers = optics::coverage(area, focal, depth);
    return {"covers_" + subject.person.name, "Frame at " + subject.person.name,
            checks::size_text(covers.width, covers.height, units),
            [=] { return optics::coverage_working(area, focal, depth); }};
}

Figure size_figure(const checks::SubjectFigures& subject) {
    const optics::PersonInFrame person = subject.frame->person;
    return {"size_" + subject.person.name, "Size seen of " + subject.person.name,
            optics::name_of(subject.frame->size),
            [person] { return optics::shot_size_working(person); }};
}

Figure sight_figure(const checks::SubjectFigures& subject) {
    const double share = subject.sight->body.share;
    return {"seen_" + subject.person.name, "Share seen of " + subject.person.name,
            share_text(share), [share] {
                return Working{"share = part of the framed body that the lens sees / the part that "
                               "the frame takes in",
                               {},
                               share_text(share),
                               "rays from the lens to points over the body, plain geometry"};
            }};
}

void subject_sentence(Card& card, const checks::ShotFigures& figures,
                      const checks::SubjectFigures& subject, UnitSystem units) {
    if (subject.depth_m <= optics::kNearPlane_m) {
        say(card, {subject.person.name + " is behind the lens."});
        return;
    }
    std::vector<Piece> pieces{"At " + subject.person.name + ", ",
                              distance_figure(figures, subject, units), " away, the frame is ",
                              coverage_figure(figures, subject, units)};
    if (subject.frame) {
        pieces.insert(pieces.end(), {": a ", size_figure(subject)});
    }
    pieces.emplace_back(subject.sharp ? ", sharp" : ", not sharp");
    if (subject.sight) {
        pieces.insert(pieces.end(), {"; ", sight_figure(subject), " of what is framed is seen."});
    } else {
        pieces.emplace_back("; out of the frame.");
    }
    say(card, std::move(pieces));
}

} // namespace

const checks::ShotScene* scene_of(const CardInput& input, const plan::Id<plan::Shot>& shot) {
    if (input.analysis == nullptr) {
        return nullptr;
    }
    const checks::ShotScene* first = nullptr;
    for (const checks::ShotScene& scene : input.analysis->shots) {
        if (scene.shot->id != shot) {
            continue;
        }
        if (scene.beat->id == input.context.now.beat) {
            return &scene;
        }
        first = first == nullptr ? &scene : first;
    }
    return first;
}

Working focal_working(const stage::ShotView& view) {
    Working working = optics::angle_of_view_working(area_of(view), view.focal);
    working.inputs.push_back(
        {"", "set by", view.focal_chosen ? "the wanted size, within the lens" : "the shot"});
    if (view.wanted_focal) {
        working.inputs.push_back(
            {"", "that the wanted size asks for", focal_text(*view.wanted_focal)});
    }
    return working;
}

Working size_working(ShotSize size) {
    return optics::wanted_frame_height_working(size, kUsualStature);
}

Figure distance_figure(const checks::ShotFigures& figures, const checks::SubjectFigures& subject,
                       UnitSystem units) {
    const Length depth = Length::metres(subject.depth_m);
    const Vec3 lens = figures.view.pose.lens;
    const Angle tilt = figures.view.pose.tilt;
    return {"distance_" + subject.person.name, "Distance of " + subject.person.name,
            shown(depth, units), [=] {
                return Working{"distance = (face - lens) along the optical axis",
                               {{"", "lens across", shown(Length::metres(lens.x()), units)},
                                {"", "lens up the page", shown(Length::metres(lens.y()), units)},
                                {"", "lens height", shown(Length::metres(lens.z()), units)},
                                {"", "tilt of the axis", degrees_text(tilt)}},
                               shown(depth, units),
                               "plain geometry"};
            }};
}

void shot_figures(Card& card, const CardInput& input, const plan::Id<plan::Shot>& shot) {
    const checks::ShotScene* scene = scene_of(input, shot);
    const auto figures = scene != nullptr ? checks::figures_of(*scene) : std::nullopt;
    if (!figures) {
        return;
    }
    const UnitSystem units = input.context.plan.units;
    std::vector<Piece> pieces{"Takes in ", angle_figure(*figures), " at ",
                              focal_text(figures->view.focal) + ", "
                                  + stop_text(figures->view.stop)};
    if (figures->sharp) {
        pieces.insert(pieces.end(), {"; sharp ", sharp_figure(*figures, units)});
    }
    pieces.emplace_back(".");
    say(card, std::move(pieces));
    for (const checks::SubjectFigures& subject : figures->subjects) {
        subject_sentence(card, *figures, subject, units);
    }
}

} // namespace throwline::card
