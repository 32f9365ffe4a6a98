#include "checks/sight.h"

#include "checks/framing.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace throwline::checks {

namespace {

/// Rays over body and face. About half of the cells meet a body, which leaves a standard error of
/// under two percent of it even if the cells were random; a grid does better.
constexpr GridSize kBodyGrid{40, 48};
constexpr GridSize kFaceGrid{24, 24};
/// Fewer rays than this on a body or a face say nothing about it.
constexpr int kLeastRays = 12;
/// An eye lies on the face; a head made of flat faces may cover it by this much.
constexpr double kEyeDepth_m = 0.03;

/// A subject with nothing else on the stage.
struct Alone {
    std::vector<stage::Solid> solids;
    stage::RayScene rays;

    explicit Alone(std::vector<stage::Solid> own) : solids{std::move(own)}, rays{solids} {}
};

Alone alone(const stage::Stage& stage, int owner) {
    std::vector<stage::Solid> own;
    for (const stage::Solid& solid : stage.solids) {
        if (solid.owner_index == owner) {
            own.push_back(solid);
        }
    }
    return Alone{std::move(own)};
}

/// Rays that meet the subject alone, and how far away.
struct Silhouette {
    std::vector<Vec3> directions;
    std::vector<double> distances_m;
};

/// In which of its rays the lens sees the subject, and who is in front in the others. What is met
/// behind the subject, where a ray grazes its outline, hides nothing.
SeenShare seen_in(const Silhouette& outline, const ShotScene& scene, const stage::ShotView& view,
                  int subject) {
    const std::vector<std::optional<stage::Hit>> hits = scene.stage.rays->nearest_hits(
        view.pose.lens, outline.directions, kSight_m, {view.owner, -1});
    std::map<int, int> hidden_by;
    int seen = 0;
    for (std::size_t i = 0; i < hits.size(); ++i) {
        const std::optional<stage::Hit>& hit = hits[i];
        if (!hit || hit->owner == subject || hit->distance_m >= outline.distances_m[i]) {
            ++seen;
        } else {
            ++hidden_by[hit->owner];
        }
    }
    const double all = std::max(1.0, static_cast<double>(hits.size()));
    SeenShare result{seen / all, static_cast<int>(hits.size()), {}};
    for (const auto& [owner, count] : hidden_by) {
        result.hiders.push_back({owner, count / all});
    }
    std::stable_sort(result.hiders.begin(), result.hiders.end(),
                     [](const Hider& a, const Hider& b) { return a.share > b.share; });
    return result;
}

/// The rays over a part of the frame that meet the subject alone where `keep` says yes.
template <class Keep>
Silhouette silhouette(const Alone& subject, const stage::ShotView& view, const FrameBounds& bounds,
                      GridSize grid, Keep keep) {
    Silhouette outline;
    if (bounds.is_empty()) {
        return outline;
    }
    const std::vector<Vec3> directions = directions_over(view.frame, bounds, grid);
    const std::vector<std::optional<stage::Hit>> hits =
        subject.rays.nearest_hits(view.pose.lens, directions, kSight_m);
    for (std::size_t i = 0; i < directions.size(); ++i) {
        if (hits[i] && keep(*hits[i], directions[i])) {
            outline.directions.push_back(directions[i]);
            outline.distances_m.push_back(hits[i]->distance_m);
        }
    }
    return outline;
}

FrameBounds bounds_in_frame(const stage::ShotView& view, std::span<const Vec3> corners) {
    const std::optional<FrameBounds> bounds = bounds_of(view.frame, corners);
    return bounds ? bounds->inside_frame() : FrameBounds{};
}

/// The half of the head that the face looks out of.
struct FaceSide {
    Vec3 middle = Vec3::Zero();
    Vec3 out = Vec3::UnitX();
};

FaceSide face_side(const stage::Figure& figure, const std::vector<Vec3>& head) {
    FaceSide side;
    for (const Vec3& corner : head) {
        side.middle += corner / static_cast<double>(head.size());
    }
    side.out = (figure.face - side.middle).normalized();
    return side;
}

std::optional<SeenShare> face_seen(const Alone& subject, const ShotScene& scene,
                                   const stage::ShotView& view, const FaceSide& side,
                                   std::span<const Vec3> head, int owner) {
    const auto on_face = [&](const stage::Hit& hit, const Vec3& direction) {
        const Vec3 point = view.pose.lens + direction * hit.distance_m;
        return subject.solids[static_cast<std::size_t>(hit.solid)].part == stage::Part::head
               && side.out.dot(point - side.middle) > 0.0;
    };
    const Silhouette face =
        silhouette(subject, view, bounds_in_frame(view, head), kFaceGrid, on_face);
    if (static_cast<int>(face.directions.size()) < kLeastRays) {
        return std::nullopt;
    }
    return seen_in(face, scene, view, owner);
}

EyesSeen eyes_seen(const Alone& subject, const ShotScene& scene, const stage::ShotView& view,
                   const stage::Figure& figure) {
    EyesSeen eyes;
    for (const Vec3& eye : {figure.left_eye, figure.right_eye}) {
        const stage::Segment segment{view.pose.lens, eye};
        const std::optional<stage::Hit> own = subject.rays.first_between(segment);
        const bool behind_own_head =
            own && own->distance_m < (eye - view.pose.lens).norm() - kEyeDepth_m;
        if (behind_own_head || !view.frame.contains(eye)) {
            continue;
        }
        ++eyes.asked;
        const std::optional<stage::Hit> hit =
            scene.stage.rays->first_between(segment, {view.owner, figure.owner});
        if (hit) {
            eyes.hiders.push_back(hit->owner);
        } else {
            ++eyes.seen;
        }
    }
    return eyes;
}

} // namespace

std::optional<Sight> sight_of(const ShotScene& scene, const stage::ShotView& view,
                              const stage::Figure& figure) {
    const std::vector<Vec3> corners = corners_of(scene.stage, figure.owner);
    const std::vector<Vec3> head = corners_of(scene.stage, figure.owner, stage::Part::head);
    if (corners.empty() || head.empty()) {
        return std::nullopt;
    }
    const Alone subject = alone(scene.stage, figure.owner);
    const Silhouette body = silhouette(subject, view, bounds_in_frame(view, corners), kBodyGrid,
                                       [](const stage::Hit&, const Vec3&) { return true; });
    if (static_cast<int>(body.directions.size()) < kLeastRays) {
        return std::nullopt;
    }
    Sight sight;
    sight.body = seen_in(body, scene, view, figure.owner);
    const FaceSide side = face_side(figure, head);
    sight.turned_away = side.out.dot(view.pose.lens - figure.face) <= 0.0;
    if (!sight.turned_away) {
        sight.face = face_seen(subject, scene, view, side, head, figure.owner);
        sight.eyes = eyes_seen(subject, scene, view, figure);
    }
    return sight;
}

} // namespace throwline::checks
