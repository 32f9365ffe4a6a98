#include "checks/lens_reach.h"

#include "checks/framing.h"
#include "checks/subject_frame.h"
#include "checks/wording.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Furniture that stops a support stands at this height at least (common practice, no source).
constexpr double kKneeHeight_m = 0.3;
/// A camera that looks more steeply than this is not helped by going back.
constexpr double kLeastLevel = 0.2;

/// What a shot would be called if only its focal length changed, with the usual headroom.
optics::ShotSize size_at(Length focal, const stage::ShotView& view, const SizedSubject& subject,
                         optics::ShotSize wanted) {
    const double frame_share = subject.frame.person.frame_height_share * (view.focal / focal);
    const double headroom = optics::wanted_frame(wanted).headroom_share;
    return optics::classify_shot_size({1.0 - frame_share * (1.0 - headroom), frame_share});
}

std::string room_text(const LensShortfall& shortfall, const FreeBehind& behind,
                      const ShotScene& scene, UnitSystem units) {
    if (behind.obstacle < 0 || shortfall.move <= behind.free) {
        return "and there is room for that";
    }
    return fmt::format("but {} leaves only {} behind the camera",
                       said(scene.stage.owners[static_cast<std::size_t>(behind.obstacle)]),
                       shown(behind.free, units));
}

std::string advice(const LensShortfall& shortfall, const ShotScene& scene,
                   const stage::ShotView& view, const CheckInput& input) {
    const UnitSystem units = input.plan.units;
    std::string move =
        fmt::format("it would do from {}, {} {}", shown(shortfall.distance, units),
                    shown(shortfall.move, units), shortfall.back ? "farther back" : "nearer");
    if (shortfall.back) {
        return move + ", " + room_text(shortfall, free_behind(scene, view, input), scene, units);
    }
    const double extender = view.lens->extender;
    if (!scene.shot->extender && shortfall.needed <= shortfall.nearest * extender) {
        return move + ", or with the extender in";
    }
    if (shortfall.distance < view.lens->close_focus) {
        return move
               + fmt::format(", but it focuses no nearer than {}",
                             shown(view.lens->close_focus, units));
    }
    return move;
}

Working range_working(const LensShortfall& shortfall, const ShotScene& scene,
                      const stage::ShotView& view, UnitSystem units) {
    const FocalRange range = focal_range(view, *scene.shot);
    return {"needed distance = distance x focal length of the lens / needed focal length",
            {{"", "needed focal length", focal_text(shortfall.needed)},
             {"", "lens", focal_text(range.widest) + " to " + focal_text(range.longest)},
             {"", "extender", scene.shot->extender ? shortest(view.lens->extender) : "out"},
             {"", "distance now",
              shown(shortfall.distance * (shortfall.needed / shortfall.nearest), units)}},
            shown(shortfall.distance, units),
            "plain geometry of a rectilinear lens; size boundaries: common practice, no source"};
}

} // namespace

FocalRange focal_range(const stage::ShotView& view, const plan::Shot& shot) {
    const double factor = shot.extender ? view.lens->extender : 1.0;
    return {view.lens->focal_min * factor, view.lens->focal_max * factor};
}

std::optional<LensShortfall> lens_shortfall(const ShotScene& scene, const stage::ShotView& view) {
    if (!scene.shot->size || !view.wanted_focal) {
        return std::nullopt;
    }
    const optics::ShotSize wanted = *scene.shot->size;
    const std::optional<SizedSubject> subject = best_sized_subject(scene, wanted);
    const FocalRange range = focal_range(view, *scene.shot);
    const Length needed = *view.wanted_focal;
    const Length nearest = std::clamp(needed, range.widest, range.longest);
    const double level = std::cos(view.pose.tilt.rad());
    if (!subject || nearest == needed || level < kLeastLevel
        || size_at(nearest, view, *subject, wanted) == wanted) {
        return std::nullopt;
    }
    const double distance_m = subject->frame.depth_m * (nearest / needed);
    return LensShortfall{needed, nearest, Length::metres(distance_m),
                         Length::metres(std::abs(distance_m - subject->frame.depth_m) / level),
                         distance_m > subject->frame.depth_m};
}

FreeBehind free_behind(const ShotScene& scene, const stage::ShotView& view,
                       const CheckInput& input) {
    const plan::Camera* camera = plan::find(input.plan, scene.shot->camera);
    const catalogue::Support* support =
        camera != nullptr ? input.catalogue.support(camera->support) : nullptr;
    const double own_m =
        support != nullptr ? (support->footprint_radius + support->operator_room).m() : 0.0;
    const Vec2 back = -unit_at(view.pose.pan.rad());
    const Vec3 lens = view.pose.lens;
    const double knee_m = std::min(lens.z(), kKneeHeight_m);
    FreeBehind result{Length::metres(kSight_m), -1};
    for (const double height_m : {knee_m, lens.z()}) {
        const std::optional<stage::Hit> hit = scene.stage.rays->nearest_hit(
            raised(floor_of(lens), height_m), raised(back, 0.0), kSight_m, {view.owner, -1});
        if (hit && hit->distance_m - own_m < result.free.m()) {
            result = {Length::metres(std::max(0.0, hit->distance_m - own_m)), hit->owner};
        }
    }
    return result;
}

std::optional<Finding> lens_range_finding(const ShotScene& scene, const stage::ShotView& view,
                                          const CheckInput& input) {
    const std::optional<LensShortfall> shortfall = lens_shortfall(scene, view);
    if (!shortfall) {
        return std::nullopt;
    }
    Finding finding = finding_in(scene, "coverage", Severity::error);
    finding.things = {scene.shot->camera.name};
    finding.at = floor_of(view.pose.lens);
    finding.weight = std::abs(std::log2(shortfall->needed / shortfall->nearest));
    finding.message =
        fmt::format("{} {} would need {} for the {} but its lens {} {}; {}.",
                    capitalised(said(scene.shot->camera)), in_shot(*scene.shot, scene.beat->id),
                    focal_text(shortfall->needed), optics::name_of(*scene.shot->size),
                    shortfall->back ? "begins at" : "ends at", focal_text(shortfall->nearest),
                    advice(*shortfall, scene, view, input));
    finding.working = range_working(*shortfall, scene, view, input.plan.units);
    return finding;
}

} // namespace throwline::checks
