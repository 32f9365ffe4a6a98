#include "plan/picture_placing.h"

namespace throwline::plan {

namespace {

Vec2 complex_product(const Vec2& a, const Vec2& b) {
    return {a.x() * b.x() - a.y() * b.y(), a.x() * b.y() + a.y() * b.x()};
}

Vec2 complex_quotient(const Vec2& a, const Vec2& b) {
    return complex_product(a, {b.x(), -b.y()}) / b.squaredNorm();
}

} // namespace

PicturePlacing::PicturePlacing(const Underlay& underlay)
    : pixel_a_{underlay.pixel_a}, at_a_{underlay.at_a}, mirrored_{underlay.mirrored} {
    turn_ = complex_quotient(underlay.at_b - underlay.at_a, upright(underlay.pixel_b));
}

Vec2 PicturePlacing::upright(const Vec2& pixel) const {
    const Vec2 from = pixel - pixel_a_;
    return {mirrored_ ? -from.x() : from.x(), -from.y()};
}

Vec2 PicturePlacing::at(const Vec2& pixel) const {
    return at_a_ + complex_product(turn_, upright(pixel));
}

Vec2 PicturePlacing::pixel(const Vec2& at) const {
    const Vec2 from = complex_quotient(at - at_a_, turn_);
    return pixel_a_ + Vec2{mirrored_ ? -from.x() : from.x(), -from.y()};
}

} // namespace throwline::plan
