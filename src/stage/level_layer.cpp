#include "stage/level_layer.h"

#include "base/digest.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace throwline::stage {

namespace {

/// Boxes are grown by this beyond what rays need, against rounding.
constexpr double kSlack_m = 0.002;

void add_solid(OwnerShape& shape, Digest& digest, const Solid& solid) {
    digest.add(static_cast<int>(solid.part));
    digest.add(static_cast<int>(solid.mesh.triangles.size()));
    for (const Vec3& vertex : solid.mesh.vertices) {
        digest.add(vertex);
        shape.low = shape.low.cwiseMin(vertex);
        shape.high = shape.high.cwiseMax(vertex);
    }
}

/// Farthest point of the bright face from its middle.
double face_reach_m(const PlacedLamp& lamp) {
    return Vec2{lamp.instrument->face_width.m(), lamp.instrument->face_height.m()}.norm() / 2.0;
}

/// Whether the stretch between two points meets an upright box.
bool meets(const Vec3& from, const Vec3& to, const Vec3& low, const Vec3& high) {
    double first = 0.0;
    double last = 1.0;
    for (int axis = 0; axis < 3; ++axis) {
        const double way = to[axis] - from[axis];
        if (way == 0.0) {
            if (from[axis] < low[axis] || from[axis] > high[axis]) {
                return false;
            }
            continue;
        }
        const double a = (low[axis] - from[axis]) / way;
        const double b = (high[axis] - from[axis]) / way;
        first = std::max(first, std::min(a, b));
        last = std::min(last, std::max(a, b));
    }
    return first <= last;
}

/// What a box may keep a lamp's light from.
class Shade {
  public:
    Shade(const ChangedBox& box, const PlacedLamp& lamp)
        : face_{lamp.face}, low_{box.low}, high_{box.high} {
        const Vec3 grown = Vec3::Constant(face_reach_m(lamp) + kSlack_m);
        low_ -= grown;
        high_ += grown;
        const Vec3 to_middle = (low_ + high_) / 2.0 - face_;
        const double around2 = (high_ - low_).squaredNorm() / 4.0;
        const double away2 = to_middle.squaredNorm();
        is_inside_ = away2 <= around2;
        if (!is_inside_) {
            middle_ = to_middle / std::sqrt(away2);
            least_cosine2_ = 1.0 - around2 / away2;
        }
    }

    bool may_hide(const Vec3& point) const {
        const Vec3 way = point - face_;
        const double ahead = way.dot(middle_);
        // Outside the cone around the box there is no need to look closer.
        if (!is_inside_ && (ahead < 0.0 || ahead * ahead < least_cosine2_ * way.squaredNorm())) {
            return false;
        }
        return meets(point, face_, low_, high_);
    }

  private:
    Vec3 face_;
    Vec3 low_;
    Vec3 high_;
    /// Unit vector from the face to the middle of the box.
    Vec3 middle_ = Vec3::Zero();
    double least_cosine2_ = 0.0;
    bool is_inside_ = false;
};

using OwnerKey = std::pair<OwnerKind, std::string>;

OwnerKey key_of(const OwnerShape& shape) {
    return {shape.kind, shape.name};
}

std::map<OwnerKey, const OwnerShape*> by_key(std::span<const OwnerShape> shapes) {
    std::map<OwnerKey, const OwnerShape*> found;
    for (const OwnerShape& shape : shapes) {
        found.emplace(key_of(shape), &shape);
    }
    return found;
}

void add_unlike(std::vector<ChangedBox>& boxes, std::span<const OwnerShape> shapes,
                const std::map<OwnerKey, const OwnerShape*>& others) {
    for (const OwnerShape& shape : shapes) {
        const auto other = others.find(key_of(shape));
        if (other == others.end() || other->second->shape != shape.shape) {
            boxes.push_back({shape.kind, shape.name, shape.low, shape.high});
        }
    }
}

} // namespace

std::uint64_t state_of(const PlacedLamp& lamp) {
    Digest digest;
    for (const Vec3& vector : {lamp.point, lamp.face, lamp.axis, lamp.right, lamp.up}) {
        digest.add(vector);
    }
    for (const double number :
         {lamp.beam.peak_cd, lamp.beam.beam.rad(), lamp.beam.field.rad(), lamp.cut.top,
          lamp.cut.bottom, lamp.cut.left, lamp.cut.right, lamp.instrument->face_width.m(),
          lamp.instrument->face_height.m(), is_all_round(lamp) ? 1.0 : 0.0,
          lamp.instrument->soft ? 1.0 : 0.0, lamp.instrument->round_face ? 1.0 : 0.0}) {
        digest.add(number);
    }
    return digest.value();
}

std::vector<OwnerShape> shapes_of(const Stage& stage) {
    std::vector<OwnerShape> shapes(stage.owners.size());
    std::vector<Digest> digests(stage.owners.size());
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        shapes[i].kind = stage.owners[i].kind;
        shapes[i].name = stage.owners[i].name;
        shapes[i].low = Vec3::Constant(std::numeric_limits<double>::max());
        shapes[i].high = -shapes[i].low;
    }
    for (const Solid& solid : stage.solids) {
        const auto owner = static_cast<std::size_t>(solid.owner_index);
        add_solid(shapes[owner], digests[owner], solid);
    }
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        shapes[i].shape = digests[i].value();
    }
    std::erase_if(shapes, [](const OwnerShape& shape) { return shape.low.x() > shape.high.x(); });
    return shapes;
}

std::vector<ChangedBox> changed_boxes(std::span<const OwnerShape> before,
                                      std::span<const OwnerShape> now) {
    std::vector<ChangedBox> boxes;
    add_unlike(boxes, before, by_key(now));
    add_unlike(boxes, now, by_key(before));
    return boxes;
}

std::vector<std::size_t> points_behind(std::span<const ChangedBox> boxes, const PlacedLamp& lamp,
                                       std::span<const Vec3> points) {
    std::vector<Shade> shades;
    for (const ChangedBox& box : boxes) {
        if (box.kind != OwnerKind::lamp || box.name != lamp.lamp.name) {
            shades.emplace_back(box, lamp);
        }
    }
    std::vector<std::size_t> behind;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (std::any_of(shades.begin(), shades.end(),
                        [&](const Shade& shade) { return shade.may_hide(points[i]); })) {
            behind.push_back(i);
        }
    }
    return behind;
}

} // namespace throwline::stage
