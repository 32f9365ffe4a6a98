#include "stage/framing.h"

#include "optics/shot_size.h"

#include <algorithm>
#include <cmath>

namespace throwline::stage {

namespace {

/// Half angles beyond this are no picture.
constexpr double kWidestHalf_rad = 1.4;
/// Halvings of an interval of 1.4 rad: far below anything drawn or shot.
constexpr int kHalvings = 50;
/// Rounds of fitting tilt and width to each other; they hardly depend on each other.
constexpr int kRounds = 4;
/// Nearer than this along the floor, a subject is above or below the lens.
constexpr double kUnderLens_m = 0.05;
/// Half breadth of a head, share of stature.
constexpr double kHalfHead = 0.045;

/// A point relative to the lens: along the floor in the direction of the pan, to the right of it,
/// and up.
struct Relative {
    double ahead_m, right_m, up_m;

    double elevation_rad() const { return std::atan2(up_m, ahead_m); }
};

Relative relative(const Vec3& point, const Vec3& lens, double pan_rad) {
    const Vec3 offset = point - lens;
    const Vec2 forward = unit_at(pan_rad);
    const Vec2 flat = floor_of(offset);
    return {flat.dot(forward), -cross(forward, flat), offset.z()};
}

/// Bearing in the middle between the outermost heads.
double middle_bearing_rad(std::span<const Figure* const> subjects, const Vec3& lens) {
    const auto bearing = [&](const Figure* figure) {
        return angle_of(floor_of(Vec3{figure->eyes - lens}));
    };
    const double first = bearing(subjects.front());
    double least = 0.0;
    double most = 0.0;
    for (const Figure* subject : subjects) {
        const double turn = wrapped(bearing(subject) - first);
        least = std::min(least, turn);
        most = std::max(most, turn);
    }
    return wrapped(first + (least + most) / 2.0);
}

/// Edges of the wanted frame as elevations seen from the lens.
struct WantedEdges {
    double crown_rad = 0.0;
    double bottom_rad = 0.0;
    double headroom_share = 0.0;

    /// Tilt that leaves the headroom above the crown with this half angle of view.
    double tilt_rad(double half_rad) const {
        return crown_rad - std::atan(std::tan(half_rad) * (1.0 - 2.0 * headroom_share));
    }
    /// Half angle with which the lower edge falls where it is wanted; nothing for a body on edge.
    std::optional<double> half_rad() const {
        if (crown_rad <= bottom_rad) {
            return std::nullopt;
        }
        double low = 0.0;
        double high = kWidestHalf_rad;
        for (int i = 0; i < kHalvings; ++i) {
            const double half = (low + high) / 2.0;
            (tilt_rad(half) - half > bottom_rad ? low : high) = half;
        }
        return (low + high) / 2.0;
    }
};

WantedEdges edges_of(optics::ShotSize size, std::span<const Figure* const> subjects,
                     const Vec3& lens, double pan_rad) {
    const optics::WantedFrame wanted = optics::wanted_frame(size);
    const Figure& first = *subjects.front();
    Vec3 bottom = first.crown;
    bottom.z() = first.landmark_z_m(wanted.bottom_cut_share);
    WantedEdges edges;
    edges.headroom_share = wanted.headroom_share;
    edges.bottom_rad = relative(bottom, lens, pan_rad).elevation_rad();
    edges.crown_rad = relative(first.crown, lens, pan_rad).elevation_rad();
    for (const Figure* subject : subjects) {
        edges.crown_rad =
            std::max(edges.crown_rad, relative(subject->crown, lens, pan_rad).elevation_rad());
    }
    return edges;
}

double half_angle_rad(const LensReach& reach, Length focal) {
    return std::atan(reach.area.height / focal / 2.0);
}

Length focal_for(const LensReach& reach, double half_rad) {
    return reach.area.height / (2.0 * std::tan(half_rad));
}

/// Longest focal length with which all heads are inside the frame's width.
Length focal_for_heads(const LensReach& reach, std::span<const Figure* const> subjects,
                       const optics::CameraPose& pose) {
    double widest_tan = 0.0;
    for (const Figure* subject : subjects) {
        const Relative head = relative(subject->eyes, pose.lens, pose.pan.rad());
        const double depth_m =
            head.ahead_m * std::cos(pose.tilt.rad()) + head.up_m * std::sin(pose.tilt.rad());
        if (depth_m > kUnderLens_m) {
            const double reach_m = std::abs(head.right_m) + kHalfHead * subject->stature.m();
            widest_tan = std::max(widest_tan, reach_m / depth_m);
        }
    }
    return widest_tan > 0.0 ? reach.area.width * reach.area.squeeze / (2.0 * widest_tan)
                            : reach.focal_max;
}

Length within(const LensReach& reach, Length focal) {
    return std::clamp(focal, reach.focal_min, reach.focal_max);
}

/// The focal length by the shot, else by the size and the heads.
Length focal_of(const plan::Shot& shot, const LensReach& reach,
                std::span<const Figure* const> subjects, const Framing& framing) {
    if (shot.focal) {
        return *shot.focal;
    }
    if (!framing.wanted_focal) {
        return reach.focal_min;
    }
    return within(reach,
                  std::min(*framing.wanted_focal, focal_for_heads(reach, subjects, framing.pose)));
}

/// With an aim of its own: the pose is given, the wanted frame stands at the first subject.
Framing framed_at(const plan::Shot& shot, const LensReach& reach, const optics::CameraPose& pose,
                  std::span<const Figure* const> subjects) {
    Framing framing;
    framing.pose = pose;
    framing.focal_chosen = !shot.focal;
    if (shot.size && !subjects.empty()) {
        const optics::WantedFrame wanted = optics::wanted_frame(*shot.size);
        const Figure& first = *subjects.front();
        const double tall_m = first.crown.z() - first.landmark_z_m(wanted.bottom_cut_share);
        const double frame_m = tall_m / (1.0 - wanted.headroom_share);
        const double depth_m = optics::axes_of(pose).forward.dot(first.crown - pose.lens);
        if (depth_m > kUnderLens_m && frame_m > 0.0) {
            framing.wanted_focal = reach.area.height * (depth_m / frame_m);
        }
    }
    framing.focal = focal_of(shot, reach, subjects, framing);
    return framing;
}

Framing framed_on_subjects(const plan::Shot& shot, const LensReach& reach, const Vec3& lens,
                           std::span<const Figure* const> subjects) {
    const double pan_rad = middle_bearing_rad(subjects, lens);
    Framing framing;
    framing.pose.lens = lens;
    framing.pose.pan = Angle::radians(pan_rad);
    framing.focal_chosen = !shot.focal;
    std::optional<WantedEdges> edges;
    if (shot.size) {
        edges = edges_of(*shot.size, subjects, lens, pan_rad);
        if (const std::optional<double> half_rad = edges->half_rad()) {
            framing.wanted_focal = focal_for(reach, *half_rad);
            framing.pose.tilt = Angle::radians(edges->tilt_rad(*half_rad));
        }
    }
    if (!framing.wanted_focal) {
        const Relative chest = relative(subjects.front()->chest, lens, pan_rad);
        framing.pose.tilt = Angle::radians(chest.elevation_rad());
        framing.focal = focal_of(shot, reach, subjects, framing);
        return framing;
    }
    for (int round = 0; round < kRounds; ++round) {
        framing.focal = focal_of(shot, reach, subjects, framing);
        framing.pose.tilt = Angle::radians(edges->tilt_rad(half_angle_rad(reach, framing.focal)));
    }
    return framing;
}

} // namespace

LensReach reach_of(const catalogue::SensorMode& sensor, const catalogue::Lens& lens,
                   bool extender) {
    const double factor = extender ? lens.extender : 1.0;
    return {optics::effective_sensor(sensor, lens), lens.focal_min * factor,
            lens.focal_max * factor};
}

std::vector<const Figure*> subjects_of(const Stage& stage, const plan::Shot& shot) {
    std::vector<const Figure*> subjects;
    for (const plan::Id<plan::Person>& id : shot.subjects) {
        if (const Figure* figure = stage.figure(id)) {
            subjects.push_back(figure);
        }
    }
    return subjects;
}

std::optional<Framing> framed(const plan::Shot& shot, const LensReach& reach, const Vec3& lens,
                              std::span<const Figure* const> subjects,
                              const std::optional<Vec3>& aim) {
    if (aim) {
        const std::optional<optics::CameraPose> pose = optics::look_at(lens, *aim);
        return pose ? std::optional{framed_at(shot, reach, *pose, subjects)} : std::nullopt;
    }
    if (subjects.empty()) {
        return std::nullopt;
    }
    const Vec3 to_first = subjects.front()->face - lens;
    if (floor_of(to_first).norm() < kUnderLens_m) {
        const auto pose = optics::look_at(lens, subjects.front()->face);
        return pose ? std::optional{framed_at(shot, reach, *pose, subjects)} : std::nullopt;
    }
    return framed_on_subjects(shot, reach, lens, subjects);
}

} // namespace throwline::stage
