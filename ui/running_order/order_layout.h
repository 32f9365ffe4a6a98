#pragma once

#include "edit/hung_order.h"

#include <QFontMetricsF>
#include <QPointF>
#include <QRectF>
#include <optional>
#include <vector>

/// Where everything lies along the strip of the running order, logical pixels from its left top.
namespace throwline::ui {

/// A beat (shot -1) or a shot, both by their place in the order.
struct OrderPlace {
    int beat = -1;
    int shot = -1;

    bool operator==(const OrderPlace&) const = default;
    bool is_shot() const { return shot >= 0; }
    explicit operator bool() const { return beat >= 0; }
};

struct ShotBox {
    /// Picture and lettering.
    QRectF whole;
    QRectF picture;
    QRectF lettering;
};

struct BeatBox {
    /// From the beat's first pixel to where the next walk begins, whole height.
    QRectF whole;
    /// The line with its name.
    QRectF head;
    /// The time before it in which people walk; empty before the first beat.
    QRectF walk;
    std::vector<ShotBox> shots;
};

/// Where on the strip a moment is: in a beat, at a shot of it, or on the way into it.
struct OrderMoment {
    OrderPlace place;
    double way = 1.0;
};

/// Where a thing would be put: before the shot at `slot` of a beat, or for beats at a place among
/// them.
struct DropPlace {
    int beat = 0;
    int slot = 0;
    /// Where it is shown.
    QRectF line;
};

struct OrderLayout {
    std::vector<BeatBox> beats;
    double width = 0.0;
    double height = 0.0;

    const QRectF& box(const OrderPlace& place) const;
    /// The beat or shot under a point.
    OrderPlace at(const QPointF& point) const;
    /// The moment that a place along the strip stands for; nothing on an empty strip.
    std::optional<OrderMoment> moment_at(double x) const;
    /// The place along the strip of a moment.
    double x_of(const OrderMoment& moment) const;
    DropPlace drop_of_shot(double x) const;
    DropPlace drop_of_beat(double x) const;
};

/// Widths that lettering needs: of each beat's name, of the words over the walk into it, and beside
/// its shots' pictures.
struct LetteringWidths {
    double name = 0.0;
    double walk = 0.0;
    std::vector<double> shots;
};

/// Lays an order out in a strip of a height; `widths` has an entry a beat.
OrderLayout laid_out(const std::vector<edit::HungBeat>& order,
                     const std::vector<LetteringWidths>& widths, const QFontMetricsF& font,
                     double height);

} // namespace throwline::ui
