#pragma once

#include "edit/snap_index.h"

namespace throwline::edit {

/// A line without ends that a place can lie on.
struct SnapRay {
    Vec2 from = Vec2::Zero();
    Vec2 along = Vec2::UnitX();
    std::string words;

    Vec2 nearest(const Vec2& point) const { return from + along * along.dot(point - from); }
};

/// One question, asked of what is indexed. Lives no longer than what it refers to.
struct SnapQuestion {
    const SnapIndex& index;
    const SnapSettings& settings;
    UnitSystem units;
    Vec2 point;
    /// Where the line being drawn, or the drag, began.
    std::optional<Vec2> from;

    /// What draws the point most strongly, in the order that snap.h tells.
    std::optional<Snap> answer() const;

  private:
    double away_m(const Vec2& at) const { return (at - point).norm(); }
    bool in_reach(const Vec2& at) const { return away_m(at) <= settings.reach_m; }
    /// Puts a snap in the place of one that is farther away or absent.
    void offer(std::optional<Snap>& best, Snap snap) const;
    void offer_crossings(std::optional<Snap>& best) const;
    std::vector<SnapRay> rays_from_start() const;

    std::optional<Snap> at_point() const;
    std::optional<Snap> at_middle() const;
    std::optional<Snap> on_side() const;
    std::optional<Snap> squared() const;
    std::optional<Snap> squared_and_aligned(const SnapRay& ray) const;
    Snap evened(const SnapRay& ray) const;
    std::optional<Snap> aligned() const;
    std::optional<Snap> on_square() const;
    std::optional<Snap> even_length() const;
};

} // namespace throwline::edit
