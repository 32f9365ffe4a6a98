#include "stage/embree_scene.h"

#include <fmt/format.h>

#include <stdexcept>

namespace throwline::stage {

namespace {

void note_error(void* text, RTCError code, const char* message) {
    auto& error = *static_cast<std::string*>(text);
    error = fmt::format("ray library: {} (code {})", message != nullptr ? message : "",
                        static_cast<int>(code));
}

/// Refuses hits on what is let through. The context stands first in the query.
void refuse_let_through(const RTCFilterFunctionNArguments* args) {
    const auto* query = reinterpret_cast<const RayQuery*>(args->context);
    for (unsigned i = 0; i < args->N; ++i) {
        if (args->valid[i] != -1) {
            continue;
        }
        const int owner = query->owners[RTCHitN_primID(args->hit, args->N, i)];
        if (owner == query->through.first || owner == query->through.second) {
            args->valid[i] = 0;
        }
    }
}

bool lets_something_through(const LetThrough& through) {
    return through.first >= 0 || through.second >= 0;
}

} // namespace

#if RTC_VERSION_MAJOR >= 4

RayQuery::RayQuery(const std::vector<int>& triangle_owners, LetThrough let_through,
                   bool is_coherent)
    : owners{triangle_owners.data()}, through{let_through} {
    rtcInitRayQueryContext(&context);
    rtcInitIntersectArguments(&intersect_);
    rtcInitOccludedArguments(&occluded_);
    int flags = is_coherent ? RTC_RAY_QUERY_FLAG_COHERENT : RTC_RAY_QUERY_FLAG_INCOHERENT;
    if (lets_something_through(through)) {
        flags |= RTC_RAY_QUERY_FLAG_INVOKE_ARGUMENT_FILTER;
        intersect_.filter = refuse_let_through;
        occluded_.filter = refuse_let_through;
    }
    intersect_.flags = static_cast<RTCRayQueryFlags>(flags);
    occluded_.flags = static_cast<RTCRayQueryFlags>(flags);
    intersect_.context = &context;
    occluded_.context = &context;
}

void RayQuery::intersect(RTCScene scene, RTCRayHit& ray) {
    rtcIntersect1(scene, &ray, &intersect_);
}
void RayQuery::occluded(RTCScene scene, RTCRay& ray) {
    rtcOccluded1(scene, &ray, &occluded_);
}
void RayQuery::intersect(RTCScene scene, const int* valid, RTCRayHit16& rays) {
    rtcIntersect16(valid, scene, &rays, &intersect_);
}
void RayQuery::occluded(RTCScene scene, const int* valid, RTCRay16& rays) {
    rtcOccluded16(valid, scene, &rays, &occluded_);
}

#else

RayQuery::RayQuery(const std::vector<int>& triangle_owners, LetThrough let_through,
                   bool is_coherent)
    : owners{triangle_owners.data()}, through{let_through} {
    rtcInitIntersectContext(&context);
    context.flags =
        is_coherent ? RTC_INTERSECT_CONTEXT_FLAG_COHERENT : RTC_INTERSECT_CONTEXT_FLAG_INCOHERENT;
    if (lets_something_through(through)) {
        context.filter = refuse_let_through;
    }
}

void RayQuery::intersect(RTCScene scene, RTCRayHit& ray) {
    rtcIntersect1(scene, &context, &ray);
}
void RayQuery::occluded(RTCScene scene, RTCRay& ray) {
    rtcOccluded1(scene, &context, &ray);
}
void RayQuery::intersect(RTCScene scene, const int* valid, RTCRayHit16& rays) {
    rtcIntersect16(valid, scene, &context, &rays);
}
void RayQuery::occluded(RTCScene scene, const int* valid, RTCRay16& rays) {
    rtcOccluded16(valid, scene, &context, &rays);
}

#endif

EmbreeScene::EmbreeScene(const Mesh& mesh) {
    device_ = rtcNewDevice("threads=1");
    if (device_ == nullptr) {
        throw std::runtime_error{"ray library: no device"};
    }
    rtcSetDeviceErrorFunction(device_, note_error, &error_);
    scene_ = rtcNewScene(device_);
#if RTC_VERSION_MAJOR >= 4
    const int flags = RTC_SCENE_FLAG_ROBUST | RTC_SCENE_FLAG_FILTER_FUNCTION_IN_ARGUMENTS;
#else
    const int flags = RTC_SCENE_FLAG_ROBUST | RTC_SCENE_FLAG_CONTEXT_FILTER_FUNCTION;
#endif
    rtcSetSceneFlags(scene_, static_cast<RTCSceneFlags>(flags));
    rtcSetSceneBuildQuality(scene_, RTC_BUILD_QUALITY_MEDIUM);
    if (!mesh.triangles.empty()) {
        attach(mesh);
    }
    rtcCommitScene(scene_);
    throw_on_error();
}

EmbreeScene::~EmbreeScene() {
    rtcReleaseScene(scene_);
    rtcReleaseDevice(device_);
}

void EmbreeScene::attach(const Mesh& mesh) {
    RTCGeometry geometry = rtcNewGeometry(device_, RTC_GEOMETRY_TYPE_TRIANGLE);
    auto* vertices = static_cast<float*>(
        rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3,
                                3 * sizeof(float), mesh.vertices.size()));
    auto* corners = static_cast<unsigned*>(
        rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3,
                                3 * sizeof(unsigned), mesh.triangles.size()));
    if (vertices == nullptr || corners == nullptr) {
        rtcReleaseGeometry(geometry);
        return;
    }
    for (const Vec3& vertex : mesh.vertices) {
        for (const double coordinate : vertex) {
            *vertices++ = static_cast<float>(coordinate);
        }
    }
    for (const auto& triangle : mesh.triangles) {
        for (const std::uint32_t corner : triangle) {
            *corners++ = corner;
        }
    }
    // Version 4 has another default than version 3; named, both see everything.
    rtcSetGeometryMask(geometry, kAllSolids);
    rtcCommitGeometry(geometry);
    rtcAttachGeometry(scene_, geometry);
    rtcReleaseGeometry(geometry);
}

void EmbreeScene::throw_on_error() const {
    if (!error_.empty()) {
        rtcReleaseScene(scene_);
        rtcReleaseDevice(device_);
        throw std::runtime_error{error_};
    }
}

} // namespace throwline::stage
