#pragma once

#include "base/vec.h"

#include <Eigen/Geometry>

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace throwline::stage {

/// Triangles with outward faces: corners run anticlockwise seen from outside.
struct Mesh {
    std::vector<Vec3> vertices;
    std::vector<std::array<std::uint32_t, 3>> triangles;

    /// Adds another mesh's triangles.
    void append(const Mesh& other);
};

enum class OwnerKind { room, scenery, cast, crew, camera, lamp, boom };

/// What a solid is of its owner; decides how a check names it.
enum class Part {
    wall,
    floor,
    ceiling,
    door_leaf,
    window_pane,
    flat_front,
    flat_back,
    body,
    head,
    neck,
    torso,
    arms,
    legs,
    feet,
    camera_body,
    lens_barrel,
    support,
    camera_operator,
    housing,
    stand,
    pole,
    microphone,
    boom_operator
};

/// "head", "stand", "support", ... as a crew says it in a sentence.
std::string_view name_of(Part part);

/// A closed or open surface in the room that knows whose it is.
struct Solid {
    OwnerKind kind = OwnerKind::scenery;
    /// The plan id of what it belongs to; "wall 2", "floor" and the like for the room.
    std::string owner;
    /// Index of the owner in Stage::owners.
    int owner_index = 0;
    Part part = Part::body;
    Mesh mesh;
    /// Diffuse, 0..1.
    double reflectance = 0.5;
    /// Whether a shot may see it.
    bool dressed = true;
};

} // namespace throwline::stage
