#pragma once

#include "stage/rays.h"

#if __has_include(<embree4/rtcore.h>)
#include <embree4/rtcore.h>
#else
#include <embree3/rtcore.h>
#endif

#include <string>

/// The only file that knows Embree's two versions apart; rays.cpp alone includes it.
namespace throwline::stage {

inline constexpr unsigned kAllSolids = 0xffffffffU;
inline constexpr int kPacket = 16;

/// What goes with a query: Embree's own context first, so that a filter finds the rest behind it.
struct RayQuery {
#if RTC_VERSION_MAJOR >= 4
    RTCRayQueryContext context;
#else
    RTCIntersectContext context;
#endif
    /// Owner of each triangle.
    const int* owners = nullptr;
    LetThrough through;

    /// `filter` is called only when something is let through. Not copied: Embree keeps addresses.
    RayQuery(const std::vector<int>& triangle_owners, LetThrough let_through, bool is_coherent);
    RayQuery(const RayQuery&) = delete;
    RayQuery& operator=(const RayQuery&) = delete;

    void intersect(RTCScene scene, RTCRayHit& ray);
    void occluded(RTCScene scene, RTCRay& ray);
    void intersect(RTCScene scene, const int* valid, RTCRayHit16& rays);
    void occluded(RTCScene scene, const int* valid, RTCRay16& rays);

  private:
#if RTC_VERSION_MAJOR >= 4
    RTCIntersectArguments intersect_;
    RTCOccludedArguments occluded_;
#endif
};

/// A device of one thread, a scene of one triangle mesh, committed. Errors throw
/// std::runtime_error: they are bugs or a lack of memory.
class EmbreeScene {
  public:
    explicit EmbreeScene(const Mesh& mesh);
    ~EmbreeScene();
    EmbreeScene(const EmbreeScene&) = delete;
    EmbreeScene& operator=(const EmbreeScene&) = delete;

    RTCScene get() const { return scene_; }

  private:
    void attach(const Mesh& mesh);
    void throw_on_error() const;

    std::string error_;
    RTCDevice device_ = nullptr;
    RTCScene scene_ = nullptr;
};

} // namespace throwline::stage
