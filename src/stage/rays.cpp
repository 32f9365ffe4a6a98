#include "stage/rays.h"

#include "stage/embree_scene.h"

#include <algorithm>
#include <array>

namespace throwline::stage {

namespace {

/// All solids as one mesh about `origin`: coordinates near 0 keep their millimetres in single
/// precision wherever the plan lies.
Mesh merged(std::span<const Solid> solids, const Vec3& origin) {
    Mesh mesh;
    for (const Solid& solid : solids) {
        mesh.append(solid.mesh);
    }
    for (Vec3& vertex : mesh.vertices) {
        vertex -= origin;
    }
    return mesh;
}

Vec3 middle_of(std::span<const Solid> solids) {
    Vec3 low = Vec3::Constant(std::numeric_limits<double>::max());
    Vec3 high = -low;
    for (const Solid& solid : solids) {
        for (const Vec3& vertex : solid.mesh.vertices) {
            low = low.cwiseMin(vertex);
            high = high.cwiseMax(vertex);
        }
    }
    return (low.array() <= high.array()).all() ? Vec3{(low + high) / 2.0} : Vec3{Vec3::Zero()};
}

/// A ray in doubles: from, unit direction, and the stretch that counts.
struct Stretch {
    Vec3 from = Vec3::Zero();
    Vec3 direction = Vec3::UnitX();
    double start_m = 0.0;
    /// Below the start: nothing can be met.
    double end_m = -1.0;

    bool is_empty() const { return end_m <= start_m; }
};

Stretch along(const Vec3& from, const Vec3& direction, double reach_m) {
    return {from, direction, kRayOffset_m, reach_m};
}

Stretch between(const Segment& segment) {
    const Vec3 whole = segment.to - segment.from;
    const double length_m = whole.norm();
    if (length_m <= 2.0 * kRayOffset_m) {
        return {};
    }
    return {segment.from, whole / length_m, kRayOffset_m, length_m - kRayOffset_m};
}

void fill(RTCRay& ray, const Stretch& stretch, const Vec3& origin) {
    const Vec3 from = stretch.from - origin;
    ray.org_x = static_cast<float>(from.x());
    ray.org_y = static_cast<float>(from.y());
    ray.org_z = static_cast<float>(from.z());
    ray.dir_x = static_cast<float>(stretch.direction.x());
    ray.dir_y = static_cast<float>(stretch.direction.y());
    ray.dir_z = static_cast<float>(stretch.direction.z());
    ray.tnear = static_cast<float>(stretch.start_m);
    ray.tfar = static_cast<float>(stretch.end_m);
    ray.time = 0.0F;
    ray.mask = kAllSolids;
    ray.id = 0;
    ray.flags = 0;
}

void fill(RTCRay16& rays, int lane, const Stretch& stretch, const Vec3& origin) {
    RTCRay ray;
    fill(ray, stretch, origin);
    rays.org_x[lane] = ray.org_x;
    rays.org_y[lane] = ray.org_y;
    rays.org_z[lane] = ray.org_z;
    rays.dir_x[lane] = ray.dir_x;
    rays.dir_y[lane] = ray.dir_y;
    rays.dir_z[lane] = ray.dir_z;
    rays.tnear[lane] = ray.tnear;
    rays.tfar[lane] = ray.tfar;
    rays.time[lane] = ray.time;
    rays.mask[lane] = ray.mask;
    rays.id[lane] = ray.id;
    rays.flags[lane] = ray.flags;
}

constexpr int kOn = -1;
constexpr int kOff = 0;

/// Calls `ask(valid, stretches)` for each packet of up to 16 questions.
template <class StretchOf, class Ask>
void in_packets(std::size_t count, const StretchOf& stretch_of, const Ask& ask) {
    for (std::size_t first = 0; first < count; first += kPacket) {
        const std::size_t used = std::min<std::size_t>(kPacket, count - first);
        std::array<Stretch, kPacket> stretches;
        alignas(64) std::array<int, kPacket> valid;
        valid.fill(kOff);
        for (std::size_t lane = 0; lane < used; ++lane) {
            stretches[lane] = stretch_of(first + lane);
            valid[lane] = stretches[lane].is_empty() ? kOff : kOn;
        }
        ask(first, used, valid, stretches);
    }
}

} // namespace

class RayScene::Impl {
  public:
    explicit Impl(std::span<const Solid> solids)
        : origin_{middle_of(solids)}, scene_{merged(solids, origin_)} {
        for (std::size_t i = 0; i < solids.size(); ++i) {
            const std::size_t count = solids[i].mesh.triangles.size();
            solids_.insert(solids_.end(), count, static_cast<int>(i));
            owners_.insert(owners_.end(), count, solids[i].owner_index);
        }
    }

    std::optional<Hit> first_on(const Stretch& stretch, LetThrough through) const {
        if (stretch.is_empty()) {
            return std::nullopt;
        }
        RTCRayHit ray;
        fill(ray.ray, stretch, origin_);
        ray.hit.geomID = RTC_INVALID_GEOMETRY_ID;
        ray.hit.instID[0] = RTC_INVALID_GEOMETRY_ID;
        RayQuery query{owners_, through, false};
        query.intersect(scene_.get(), ray);
        if (ray.hit.geomID == RTC_INVALID_GEOMETRY_ID) {
            return std::nullopt;
        }
        const Vec3 normal{ray.hit.Ng_x, ray.hit.Ng_y, ray.hit.Ng_z};
        return hit_on(ray.hit.primID, ray.ray.tfar, normal.dot(stretch.direction) < 0.0);
    }

    bool is_blocked(const Stretch& stretch, LetThrough through) const {
        if (stretch.is_empty()) {
            return false;
        }
        RTCRay ray;
        fill(ray, stretch, origin_);
        RayQuery query{owners_, through, false};
        query.occluded(scene_.get(), ray);
        return ray.tfar < 0.0F;
    }

    template <class StretchOf>
    std::vector<std::optional<Hit>> firsts(std::size_t count, const StretchOf& stretch_of,
                                           LetThrough through) const {
        std::vector<std::optional<Hit>> hits(count);
        RayQuery query{owners_, through, true};
        in_packets(count, stretch_of,
                   [&](std::size_t first, std::size_t used, const auto& valid,
                       const std::array<Stretch, kPacket>& stretches) {
                       RTCRayHit16 rays;
                       for (int lane = 0; lane < kPacket; ++lane) {
                           const Stretch& stretch = stretches[static_cast<std::size_t>(lane)];
                           fill(rays.ray, lane, stretch, origin_);
                           rays.hit.geomID[lane] = RTC_INVALID_GEOMETRY_ID;
                           rays.hit.instID[0][lane] = RTC_INVALID_GEOMETRY_ID;
                       }
                       query.intersect(scene_.get(), valid.data(), rays);
                       for (std::size_t lane = 0; lane < used; ++lane) {
                           hits[first + lane] = hit_in(rays, lane, stretches[lane]);
                       }
                   });
        return hits;
    }

    template <class StretchOf>
    std::vector<bool> blocked(std::size_t count, const StretchOf& stretch_of,
                              LetThrough through) const {
        std::vector<bool> answers(count);
        RayQuery query{owners_, through, true};
        in_packets(count, stretch_of,
                   [&](std::size_t first, std::size_t used, const auto& valid,
                       const std::array<Stretch, kPacket>& stretches) {
                       RTCRay16 rays;
                       for (int lane = 0; lane < kPacket; ++lane) {
                           const Stretch& stretch = stretches[static_cast<std::size_t>(lane)];
                           fill(rays, lane, stretch, origin_);
                       }
                       query.occluded(scene_.get(), valid.data(), rays);
                       for (std::size_t lane = 0; lane < used; ++lane) {
                           answers[first + lane] = valid[lane] == kOn && rays.tfar[lane] < 0.0F;
                       }
                   });
        return answers;
    }

  private:
    Hit hit_on(unsigned triangle, float distance_m, bool front) const {
        return {static_cast<double>(distance_m), solids_[triangle], owners_[triangle], front};
    }

    std::optional<Hit> hit_in(const RTCRayHit16& rays, std::size_t lane,
                              const Stretch& stretch) const {
        if (rays.hit.geomID[lane] == RTC_INVALID_GEOMETRY_ID) {
            return std::nullopt;
        }
        const Vec3 normal{rays.hit.Ng_x[lane], rays.hit.Ng_y[lane], rays.hit.Ng_z[lane]};
        return hit_on(rays.hit.primID[lane], rays.ray.tfar[lane],
                      normal.dot(stretch.direction) < 0.0);
    }

    Vec3 origin_;
    EmbreeScene scene_;
    /// Solid and owner of each triangle.
    std::vector<int> solids_;
    std::vector<int> owners_;
};

RayScene::RayScene(std::span<const Solid> solids) : impl_{std::make_unique<Impl>(solids)} {}
RayScene::~RayScene() = default;
RayScene::RayScene(RayScene&&) noexcept = default;
RayScene& RayScene::operator=(RayScene&&) noexcept = default;

std::optional<Hit> RayScene::nearest_hit(const Vec3& from, const Vec3& direction, double reach_m,
                                         LetThrough through) const {
    return impl_->first_on(along(from, direction, reach_m), through);
}

std::optional<Hit> RayScene::first_between(const Segment& segment, LetThrough through) const {
    return impl_->first_on(between(segment), through);
}

bool RayScene::is_blocked(const Segment& segment, LetThrough through) const {
    return impl_->is_blocked(between(segment), through);
}

std::vector<std::optional<Hit>> RayScene::nearest_hits(const Vec3& from,
                                                       std::span<const Vec3> directions,
                                                       double reach_m, LetThrough through) const {
    return impl_->firsts(
        directions.size(), [&](std::size_t i) { return along(from, directions[i], reach_m); },
        through);
}

std::vector<std::optional<Hit>> RayScene::firsts_between(std::span<const Segment> segments,
                                                         LetThrough through) const {
    return impl_->firsts(
        segments.size(), [&](std::size_t i) { return between(segments[i]); }, through);
}

std::vector<bool> RayScene::blocked(std::span<const Segment> segments, LetThrough through) const {
    return impl_->blocked(
        segments.size(), [&](std::size_t i) { return between(segments[i]); }, through);
}

} // namespace throwline::stage
