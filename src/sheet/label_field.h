#pragma once

#include "sheet/crowd_map.h"
#include "sheet/occupancy.h"

namespace throwline::sheet {

/// A box that wants to stand near something.
struct BoxRequest {
    /// Paper place of what is named, and how far it reaches to each side of that.
    Vec2 anchor = Vec2::Zero();
    Vec2 half_mm = Vec2::Ones();
    Vec2 size_mm = Vec2::Zero();
    /// How far from the thing at most.
    double farthest_mm = 200.0;
    /// A line to the anchor even from near by.
    bool always_leader = false;
    /// Where there is no other way, leaders may run under lettering; it then needs paper beneath.
    bool under_lettering = false;
    /// Whether it may stand on the thing itself when it is smaller than that.
    bool inside = false;
};

struct PlacedBox {
    Box box;
    /// From the anchor to the box; equal ends when it stands near enough to need none.
    Vec2 leader_from = Vec2::Zero();
    Vec2 leader_to = Vec2::Zero();
    bool has_leader = false;
    /// Whether lines run under the box.
    bool over_lines = false;
    /// Whether the box lies to the left of its anchor.
    bool to_the_left = false;
    /// What it hides, how far off it is and what its leader crosses; less is better.
    double cost = 0.0;
};

/// Knows what is drawn and lettered where, and finds free places for words. Two boxes that were
/// settled never overlap.
class LabelField {
  public:
    LabelField(const Box& area, const TextMeasure& measure);

    /// Lettering must keep off these marks as far as `crowd` says.
    void cover(const Mark& mark, Crowd crowd);
    /// Nothing else may be lettered here.
    void take(const Box& box);
    /// How much is drawn under a box; nothing where it leaves the area, or where lettering or
    /// something that must not be lettered over is in the way.
    std::optional<double> crowding(const Box& box);

    /// The cheapest free place for a box near an anchor, with its leader; nothing when there is
    /// none.
    std::optional<PlacedBox> best_place(const BoxRequest& request);
    /// Takes a place; gives it back.
    void settle(const PlacedBox& placed);
    void release(const PlacedBox& placed);
    /// From now on boxes stand in this part of the area only; the whole of it without one.
    void keep_within(const std::optional<Box>& part) { part_ = part; }
    /// Finds and takes.
    std::optional<PlacedBox> find(const BoxRequest& request);

    /// How many places near an anchor are free.
    int near_places(const BoxRequest& request);
    /// Whether a leader runs under a box that was settled.
    bool has_line_under(const Box& box) const { return settled_.is_crossed(box); }

    const Box& area() const { return crowd_.area(); }
    const TextMeasure& measure() const { return *measure_; }

  private:
    std::optional<double> box_cost(const Box& box, bool under_lettering);
    std::optional<double> leader_cost(const PlacedBox& placed, bool under_lettering) const;
    std::optional<PlacedBox> best_inside(const BoxRequest& request);
    /// Replaces `best` by a place of the ring `away_mm` from the thing, if one is cheaper.
    void try_ring(const BoxRequest& request, double away_mm, std::optional<PlacedBox>& best);

    CrowdMap crowd_;
    Occupancy settled_;
    std::optional<Box> part_;
    const TextMeasure* measure_;
};

/// Words without a leader stand no farther from what they name.
inline constexpr double kLeaderFrom_mm = 2.0;
/// Words of which this is said stand next to what they name.
inline constexpr double kNear_mm = 6.5;

} // namespace throwline::sheet
