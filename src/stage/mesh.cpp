#include "stage/mesh.h"

#include <cmath>
#include <map>
#include <numbers>
#include <utility>

namespace throwline::stage {

namespace {

using Index = std::uint32_t;

Index size_of(const Mesh& mesh) {
    return static_cast<Index>(mesh.vertices.size());
}

bool is_point(const Ring& ring) {
    return ring.across.isZero() && ring.along.isZero();
}

/// Adds the corners of a ring; a point is one corner.
Index add_ring(Mesh& mesh, const Ring& ring, int sides) {
    const Index first = size_of(mesh);
    if (is_point(ring)) {
        mesh.vertices.push_back(ring.centre);
        return first;
    }
    for (int i = 0; i < sides; ++i) {
        // From +along towards -across: anticlockwise about across x along.
        const double turn = 2.0 * std::numbers::pi * i / sides;
        mesh.vertices.emplace_back(ring.centre - std::sin(turn) * ring.across
                                   + std::cos(turn) * ring.along);
    }
    return first;
}

/// The corner of a ring at a side, counted round.
Index corner(const Ring& ring, Index first, int side, int sides) {
    return is_point(ring) ? first : first + static_cast<Index>(side % sides);
}

void join_rings(Mesh& mesh, const Ring& low, Index low_first, const Ring& high, Index high_first,
                int sides) {
    for (int i = 0; i < sides; ++i) {
        const Index a = corner(low, low_first, i, sides);
        const Index b = corner(low, low_first, i + 1, sides);
        const Index c = corner(high, high_first, i + 1, sides);
        const Index d = corner(high, high_first, i, sides);
        if (!is_point(low)) {
            mesh.triangles.push_back({a, b, c});
        }
        if (!is_point(high)) {
            mesh.triangles.push_back({a, c, d});
        }
    }
}

void close_ring(Mesh& mesh, const Ring& ring, Index first, int sides, bool at_start) {
    if (is_point(ring)) {
        return;
    }
    for (int i = 1; i + 1 < sides; ++i) {
        const Index a = first + static_cast<Index>(i);
        const Index b = a + 1;
        mesh.triangles.push_back(at_start ? std::array{first, b, a} : std::array{first, a, b});
    }
}

/// Two unit vectors square to a direction and to each other; first x second = direction.
std::pair<Vec3, Vec3> square_to(const Vec3& direction) {
    const Vec3 helper = std::abs(direction.z()) < 0.9 ? Vec3::UnitZ() : Vec3::UnitX();
    const Vec3 first = helper.cross(direction).normalized();
    return {first, direction.cross(first)};
}

Polygon anticlockwise(std::span<const Vec2> outline) {
    Polygon corners{outline.begin(), outline.end()};
    return signed_area(corners) < 0.0 ? Polygon{corners.rbegin(), corners.rend()} : corners;
}

void add_level_triangles(Mesh& mesh, std::span<const Vec2> outline, Index first, bool front_up) {
    for (const auto& [i, j, k] : triangulated(outline)) {
        const auto at = [&](int corner_index) {
            return outline[static_cast<std::size_t>(corner_index)];
        };
        const bool runs_left = cross(at(j) - at(i), at(k) - at(i)) > 0.0;
        const auto index = [&](int corner_index) {
            return first + static_cast<Index>(corner_index);
        };
        mesh.triangles.push_back(runs_left == front_up ? std::array{index(i), index(j), index(k)}
                                                       : std::array{index(i), index(k), index(j)});
    }
}

} // namespace

void Mesh::append(const Mesh& other) {
    const Index shift = size_of(*this);
    vertices.insert(vertices.end(), other.vertices.begin(), other.vertices.end());
    for (const auto& [a, b, c] : other.triangles) {
        triangles.push_back({a + shift, b + shift, c + shift});
    }
}

Mesh loft(std::span<const Ring> rings, int sides) {
    Mesh mesh;
    Index below = 0;
    for (std::size_t i = 0; i < rings.size(); ++i) {
        const Index first = add_ring(mesh, rings[i], sides);
        if (i == 0) {
            close_ring(mesh, rings[i], first, sides, true);
        } else {
            join_rings(mesh, rings[i - 1], below, rings[i], first, sides);
        }
        below = first;
    }
    if (!rings.empty()) {
        close_ring(mesh, rings.back(), below, sides, false);
    }
    return mesh;
}

Mesh box(const Vec3& centre, const Vec3& half_x, const Vec3& half_y, const Vec3& half_z) {
    Mesh mesh;
    for (const double z : {-1.0, 1.0}) {
        mesh.vertices.emplace_back(centre - half_x - half_y + z * half_z);
        mesh.vertices.emplace_back(centre + half_x - half_y + z * half_z);
        mesh.vertices.emplace_back(centre + half_x + half_y + z * half_z);
        mesh.vertices.emplace_back(centre - half_x + half_y + z * half_z);
    }
    mesh.triangles = {{0, 2, 1}, {0, 3, 2}, {4, 5, 6}, {4, 6, 7}, {0, 1, 5}, {0, 5, 4},
                      {1, 2, 6}, {1, 6, 5}, {2, 3, 7}, {2, 7, 6}, {3, 0, 4}, {3, 4, 7}};
    return mesh;
}

Mesh upright_box(const Vec2& centre, double width_m, double depth_m, double turn_rad,
                 double bottom_z_m, double top_z_m) {
    const Vec2 across = unit_at(turn_rad) * (width_m / 2.0);
    const Vec2 along = turned_left(unit_at(turn_rad)) * (depth_m / 2.0);
    return box(raised(centre, (bottom_z_m + top_z_m) / 2.0), raised(across, 0.0),
               raised(along, 0.0), Vec3{0.0, 0.0, (top_z_m - bottom_z_m) / 2.0});
}

Mesh prism(std::span<const Vec2> outline, double bottom_z_m, double top_z_m) {
    const Polygon corners = anticlockwise(outline);
    const auto count = static_cast<Index>(corners.size());
    Mesh mesh;
    if (triangulated(corners).empty()) {
        return mesh;
    }
    for (const double z_m : {bottom_z_m, top_z_m}) {
        for (const Vec2& at : corners) {
            mesh.vertices.push_back(raised(at, z_m));
        }
    }
    add_level_triangles(mesh, corners, 0, false);
    add_level_triangles(mesh, corners, count, true);
    for (Index i = 0; i < count; ++i) {
        const Index next = (i + 1) % count;
        mesh.triangles.push_back({i, next, count + next});
        mesh.triangles.push_back({i, count + next, count + i});
    }
    return mesh;
}

Mesh cylinder(const Vec3& base, double radius_m, double height_m, int sides) {
    const std::array rings{
        Ring{base, Vec3::UnitX() * radius_m, Vec3::UnitY() * radius_m},
        Ring{base + Vec3::UnitZ() * height_m, Vec3::UnitX() * radius_m, Vec3::UnitY() * radius_m}};
    return loft(rings, sides);
}

Mesh ellipsoid(const Vec3& centre, const Vec3& half_x, const Vec3& half_y, const Vec3& half_z,
               int bands, int sides) {
    std::vector<Ring> rings{{centre - half_z, Vec3::Zero(), Vec3::Zero()}};
    for (int band = 1; band < bands; ++band) {
        const double latitude = std::numbers::pi * (static_cast<double>(band) / bands - 0.5);
        const double share = std::cos(latitude);
        rings.push_back({centre + std::sin(latitude) * half_z, share * half_x, share * half_y});
    }
    rings.push_back({centre + half_z, Vec3::Zero(), Vec3::Zero()});
    return loft(rings, sides);
}

Mesh capsule(const Vec3& from, const Vec3& to, double radius_m, int sides) {
    const Vec3 direction = (to - from).stableNormalized();
    const std::pair<Vec3, Vec3> square = square_to(direction);
    // Rounded by one ring between end and rim, at 60 degrees.
    constexpr double kRim = 0.5;
    constexpr double kRise = 0.8660254037844386;
    const auto ring = [&](const Vec3& centre, double rise, double share) {
        return Ring{centre + direction * (rise * radius_m), square.first * (share * radius_m),
                    square.second * (share * radius_m)};
    };
    const std::array rings{ring(from, -1.0, 0.0), ring(from, -kRise, kRim), ring(from, 0.0, 1.0),
                           ring(to, 0.0, 1.0),    ring(to, kRise, kRim),    ring(to, 1.0, 0.0)};
    return loft(rings, sides);
}

Mesh rod(const Vec3& from, const Vec3& to, double from_radius_m, double to_radius_m, int sides) {
    const auto [across, along] = square_to((to - from).stableNormalized());
    const std::array rings{Ring{from, across * from_radius_m, along * from_radius_m},
                           Ring{to, across * to_radius_m, along * to_radius_m}};
    return loft(rings, sides);
}

Mesh sheet(const Vec3& a, const Vec3& b, const Vec3& c, const Vec3& d) {
    return Mesh{{a, b, c, d}, {{0, 1, 2}, {0, 2, 3}}};
}

Mesh level_sheet(std::span<const Vec2> outline, double z_m, bool front_up) {
    Mesh mesh;
    for (const Vec2& at : outline) {
        mesh.vertices.push_back(raised(at, z_m));
    }
    add_level_triangles(mesh, outline, 0, front_up);
    return mesh;
}

double volume_m3(const Mesh& mesh) {
    double six_volumes = 0.0;
    for (const auto& [a, b, c] : mesh.triangles) {
        six_volumes += mesh.vertices[a].dot(mesh.vertices[b].cross(mesh.vertices[c]));
    }
    return six_volumes / 6.0;
}

bool is_closed(const Mesh& mesh) {
    std::map<std::pair<Index, Index>, int> uses;
    for (const auto& [a, b, c] : mesh.triangles) {
        ++uses[{a, b}];
        ++uses[{b, c}];
        ++uses[{c, a}];
    }
    for (const auto& [edge, count] : uses) {
        const auto opposite = uses.find({edge.second, edge.first});
        if (count != 1 || opposite == uses.end() || opposite->second != 1) {
            return false;
        }
    }
    return !uses.empty();
}

} // namespace throwline::stage
