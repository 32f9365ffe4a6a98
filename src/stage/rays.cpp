#include "stage/rays.h"

#include "stage/embree_scene.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace throwline::stage {

namespace {

/// The origin is a multiple of this, so that few things that come, go or move shift it, and with it
/// how all the others are rounded.
constexpr double kOriginStep_m = 4.0;

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

Vec3 origin_near_middle(std::span<const Solid> solids) {
    Vec3 low = Vec3::Constant(std::numeric_limits<double>::max());
    Vec3 high = -low;
    for (const Solid& solid : solids) {
        for (const Vec3& vertex : solid.mesh.vertices) {
            low = low.cwiseMin(vertex);
            high = high.cwiseMax(vertex);
        }
    }
    if ((low.array() > high.array()).any()) {
        return Vec3::Zero();
    }
    const Vec3 middle = (low + high) / 2.0;
    return (middle / kOriginStep_m).array().round() * kOriginStep_m;
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

constexpr int kOn = -1;
constexpr int kOff = 0;

/// Up to 16 rays as Embree wants them. Directions need not be unit vectors: `scale_m` turns the
/// ray's own measure into metres.
struct Packet {
    RTCRayHit16 rays;
    alignas(64) std::array<int, kPacket> valid;
    std::array<float, kPacket> scale_m;
    std::size_t used = 0;
};

void set_lane(Packet& packet, std::size_t lane, const Vec3& from, const Vec3& direction) {
    packet.rays.ray.org_x[lane] = static_cast<float>(from.x());
    packet.rays.ray.org_y[lane] = static_cast<float>(from.y());
    packet.rays.ray.org_z[lane] = static_cast<float>(from.z());
    packet.rays.ray.dir_x[lane] = static_cast<float>(direction.x());
    packet.rays.ray.dir_y[lane] = static_cast<float>(direction.y());
    packet.rays.ray.dir_z[lane] = static_cast<float>(direction.z());
}

/// What no query changes.
void prepare(Packet& packet) {
    for (std::size_t lane = 0; lane < kPacket; ++lane) {
        packet.rays.ray.time[lane] = 0.0F;
        packet.rays.ray.mask[lane] = kAllSolids;
        packet.rays.ray.id[lane] = 0;
        packet.rays.ray.flags[lane] = 0;
        set_lane(packet, lane, Vec3::Zero(), Vec3::UnitX());
    }
}

void forget_hits(Packet& packet) {
    for (std::size_t lane = 0; lane < kPacket; ++lane) {
        packet.rays.hit.geomID[lane] = RTC_INVALID_GEOMETRY_ID;
        packet.rays.hit.instID[0][lane] = RTC_INVALID_GEOMETRY_ID;
    }
}

/// Rays along whole segments, both ends short by the offset.
struct SegmentRays {
    std::span<const Segment> segments;

    std::size_t count() const { return segments.size(); }
    void fill(Packet& packet, std::size_t first, const Vec3& origin) const {
        for (std::size_t lane = 0; lane < packet.used; ++lane) {
            const Segment& segment = segments[first + lane];
            set_lane(packet, lane, segment.from - origin, segment.to - segment.from);
        }
        RTCRay16& rays = packet.rays.ray;
        for (std::size_t lane = 0; lane < kPacket; ++lane) {
            const float length_m =
                std::sqrt(rays.dir_x[lane] * rays.dir_x[lane] + rays.dir_y[lane] * rays.dir_y[lane]
                          + rays.dir_z[lane] * rays.dir_z[lane]);
            const float margin = static_cast<float>(kRayOffset_m) / length_m;
            packet.scale_m[lane] = length_m;
            rays.tnear[lane] = margin;
            rays.tfar[lane] = 1.0F - margin;
            packet.valid[lane] = lane < packet.used && margin < 0.5F ? kOn : kOff;
        }
    }
};

/// Rays from one point along unit directions.
struct DirectionRays {
    Vec3 from;
    std::span<const Vec3> directions;
    double reach_m;

    std::size_t count() const { return directions.size(); }
    void fill(Packet& packet, std::size_t first, const Vec3& origin) const {
        for (std::size_t lane = 0; lane < packet.used; ++lane) {
            set_lane(packet, lane, from - origin, directions[first + lane]);
        }
        for (std::size_t lane = 0; lane < kPacket; ++lane) {
            packet.scale_m[lane] = 1.0F;
            packet.rays.ray.tnear[lane] = static_cast<float>(kRayOffset_m);
            packet.rays.ray.tfar[lane] = static_cast<float>(reach_m);
            packet.valid[lane] = lane < packet.used && reach_m > kRayOffset_m ? kOn : kOff;
        }
    }
};

/// Calls `ask(packet, first)` for each packet of up to 16 rays.
template <class Rays, class Ask>
void in_packets(const Rays& rays, const Vec3& origin, const Ask& ask) {
    Packet packet;
    prepare(packet);
    for (std::size_t first = 0; first < rays.count(); first += kPacket) {
        packet.used = std::min<std::size_t>(kPacket, rays.count() - first);
        rays.fill(packet, first, origin);
        ask(packet, first);
    }
}

} // namespace

class RayScene::Impl {
  public:
    explicit Impl(std::span<const Solid> solids)
        : origin_{origin_near_middle(solids)}, scene_{merged(solids, origin_)} {
        for (std::size_t i = 0; i < solids.size(); ++i) {
            const std::size_t count = solids[i].mesh.triangles.size();
            firsts_.push_back(static_cast<int>(solids_.size()));
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

    template <class Rays>
    std::vector<std::optional<Hit>> firsts(const Rays& rays, LetThrough through) const {
        std::vector<std::optional<Hit>> hits(rays.count());
        RayQuery query{owners_, through, true};
        in_packets(rays, origin_, [&](Packet& packet, std::size_t first) {
            forget_hits(packet);
            query.intersect(scene_.get(), packet.valid.data(), packet.rays);
            for (std::size_t lane = 0; lane < packet.used; ++lane) {
                if (packet.rays.hit.geomID[lane] != RTC_INVALID_GEOMETRY_ID) {
                    hits[first + lane] = hit_in(packet, lane);
                }
            }
        });
        return hits;
    }

    template <class Rays>
    std::vector<bool> blocked(const Rays& rays, LetThrough through) const {
        std::vector<bool> answers(rays.count());
        RayQuery query{owners_, through, true};
        in_packets(rays, origin_, [&](Packet& packet, std::size_t first) {
            query.occluded(scene_.get(), packet.valid.data(), packet.rays.ray);
            for (std::size_t lane = 0; lane < packet.used; ++lane) {
                answers[first + lane] =
                    packet.valid[lane] == kOn && packet.rays.ray.tfar[lane] < 0.0F;
            }
        });
        return answers;
    }

  private:
    Hit hit_on(unsigned triangle, float distance_m, bool front) const {
        const int solid = solids_[triangle];
        return {static_cast<double>(distance_m), solid, owners_[triangle], front,
                static_cast<int>(triangle) - firsts_[static_cast<std::size_t>(solid)]};
    }

    Hit hit_in(const Packet& packet, std::size_t lane) const {
        const RTCHit16& hit = packet.rays.hit;
        const RTCRay16& ray = packet.rays.ray;
        const float against = hit.Ng_x[lane] * ray.dir_x[lane] + hit.Ng_y[lane] * ray.dir_y[lane]
                              + hit.Ng_z[lane] * ray.dir_z[lane];
        return hit_on(hit.primID[lane], ray.tfar[lane] * packet.scale_m[lane], against < 0.0F);
    }

    Vec3 origin_;
    EmbreeScene scene_;
    /// Solid and owner of each triangle.
    std::vector<int> solids_;
    std::vector<int> owners_;
    /// First triangle of each solid.
    std::vector<int> firsts_;
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
    return impl_->firsts(DirectionRays{from, directions, reach_m}, through);
}

std::vector<std::optional<Hit>> RayScene::firsts_between(std::span<const Segment> segments,
                                                         LetThrough through) const {
    return impl_->firsts(SegmentRays{segments}, through);
}

std::vector<bool> RayScene::blocked(std::span<const Segment> segments, LetThrough through) const {
    return impl_->blocked(SegmentRays{segments}, through);
}

} // namespace throwline::stage
