#include "ui/running_order/order_layout.h"

#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr double kMargin_px = 10.0;
/// Between the head of a beat and the pictures that hang on it.
constexpr double kStem_px = 9.0;
constexpr double kShotGap_px = 14.0;
constexpr double kLetteringGap_px = 6.0;
/// A walk takes room by its length, within what can be taken hold of and what can be overlooked.
constexpr double kWalkLeast_px = 30.0;
constexpr double kWalkMost_px = 150.0;
constexpr double kWalk_px_per_m = 16.0;
/// Either side of the words over a walk.
constexpr double kWordsGap_px = 8.0;
constexpr double kPictureLeast_px = 36.0;
constexpr double kPictureMost_px = 170.0;

double walk_width(const edit::HungBeat& beat, double words) {
    const double by_length =
        std::min(kWalkLeast_px + beat.longest_walk_m * kWalk_px_per_m, kWalkMost_px);
    return std::max(by_length, words > 0.0 ? words + 2.0 * kWordsGap_px : 0.0);
}

double head_height(const QFontMetricsF& font) {
    return std::ceil(font.height()) + 6.0;
}

ShotBox shot_box(double x, double top, double height, double aspect, double lettering) {
    ShotBox box;
    box.picture = QRectF{x, top, std::round(height * aspect), height};
    box.lettering = QRectF{box.picture.right() + kLetteringGap_px, top, lettering, height};
    box.whole = box.picture.united(box.lettering);
    return box;
}

} // namespace

const QRectF& OrderLayout::box(const OrderPlace& place) const {
    const BeatBox& beat = beats[static_cast<std::size_t>(place.beat)];
    return place.is_shot() ? beat.shots[static_cast<std::size_t>(place.shot)].whole : beat.head;
}

OrderPlace OrderLayout::at(const QPointF& point) const {
    for (std::size_t b = 0; b < beats.size(); ++b) {
        const BeatBox& beat = beats[b];
        for (std::size_t s = 0; s < beat.shots.size(); ++s) {
            if (beat.shots[s].whole.contains(point)) {
                return {static_cast<int>(b), static_cast<int>(s)};
            }
        }
        if (beat.head.contains(point)) {
            return {static_cast<int>(b), -1};
        }
    }
    return {};
}

std::optional<OrderMoment> OrderLayout::moment_at(double x) const {
    if (beats.empty()) {
        return std::nullopt;
    }
    OrderMoment moment{{0, -1}, 1.0};
    for (std::size_t b = 0; b < beats.size(); ++b) {
        const BeatBox& beat = beats[b];
        if (b > 0 && x >= beat.walk.left()) {
            moment = {{static_cast<int>(b), -1},
                      std::clamp((x - beat.walk.left()) / beat.walk.width(), 0.0, 1.0)};
        }
        for (std::size_t s = 0; s < beat.shots.size(); ++s) {
            if (x >= beat.shots[s].whole.left() - kShotGap_px / 2.0) {
                moment = {{static_cast<int>(b), static_cast<int>(s)}, 1.0};
            }
        }
    }
    return moment;
}

double OrderLayout::x_of(const OrderMoment& moment) const {
    const BeatBox& beat = beats[static_cast<std::size_t>(moment.place.beat)];
    if (moment.way < 1.0 && moment.place.beat > 0) {
        return beat.walk.left() + moment.way * beat.walk.width();
    }
    if (moment.place.is_shot()) {
        return beat.shots[static_cast<std::size_t>(moment.place.shot)].whole.left()
               - kShotGap_px / 2.0;
    }
    return beat.head.left() - kShotGap_px / 2.0;
}

DropPlace OrderLayout::drop_of_shot(double x) const {
    DropPlace drop;
    for (std::size_t b = 0; b < beats.size(); ++b) {
        const BeatBox& beat = beats[b];
        const double middle_of_walk = b == 0 ? beat.whole.left() : beat.walk.center().x();
        if (b > 0 && x < middle_of_walk) {
            break;
        }
        drop = {static_cast<int>(b), 0, {}};
        double line = beat.head.left() - kShotGap_px / 2.0;
        for (const ShotBox& shot : beat.shots) {
            if (x >= shot.whole.center().x()) {
                ++drop.slot;
                line = shot.whole.right() + kShotGap_px / 2.0;
            }
        }
        drop.line =
            QRectF{line - 1.5, beat.head.bottom() + 2.0, 3.0, height - beat.head.bottom() - 4.0};
    }
    return drop;
}

DropPlace OrderLayout::drop_of_beat(double x) const {
    DropPlace drop;
    double line = kMargin_px / 2.0;
    for (std::size_t b = 0; b < beats.size(); ++b) {
        if (x >= beats[b].whole.center().x()) {
            drop.beat = static_cast<int>(b) + 1;
            line = b + 1 < beats.size() ? beats[b + 1].walk.center().x()
                                        : beats[b].whole.right() + kShotGap_px / 2.0;
        }
    }
    drop.line = QRectF{line - 1.5, 2.0, 3.0, height - 4.0};
    return drop;
}

OrderLayout laid_out(const std::vector<edit::HungBeat>& order,
                     const std::vector<LetteringWidths>& widths, const QFontMetricsF& font,
                     double height) {
    OrderLayout layout;
    const double head = head_height(font);
    const double top = head + kStem_px;
    const double picture =
        std::clamp(std::floor(height - top - 6.0), kPictureLeast_px, kPictureMost_px);
    layout.height = std::max(height, top + picture + 6.0);
    double x = kMargin_px;
    for (std::size_t b = 0; b < order.size(); ++b) {
        BeatBox& box = layout.beats.emplace_back();
        if (b > 0) {
            box.walk = QRectF{x, 0.0, walk_width(order[b], widths[b].walk), head};
            x = box.walk.right() + kShotGap_px / 2.0;
        }
        const double left = x;
        for (std::size_t s = 0; s < order[b].shots.size(); ++s) {
            box.shots.push_back(
                shot_box(x, top, picture, order[b].shots[s].aspect, widths[b].shots[s]));
            x = box.shots.back().whole.right() + kShotGap_px;
        }
        const double shots_right = box.shots.empty() ? left : x - kShotGap_px;
        const double right = std::ceil(std::max(shots_right, left + widths[b].name));
        box.head = QRectF{left, 0.0, right - left, head};
        box.whole = QRectF{left, 0.0, right - left, layout.height};
        x = right + kShotGap_px / 2.0;
    }
    layout.width = x + kMargin_px;
    return layout;
}

} // namespace throwline::ui
