#pragma once

#include "plan/blocking.h"

namespace throwline::plan {

/// Hung from a grid position. The lamp's turning point is `drop` below the pipe.
struct GridHang {
    /// "C2"
    std::string position;
    Length drop;

    bool operator==(const GridHang&) const = default;
};

/// Hung from a single pipe, `along` from its start.
struct PipeHang {
    Id<Pipe> pipe;
    Length along;
    Length drop;

    bool operator==(const PipeHang&) const = default;
};

/// On a stand; `height` is the turning point above the floor.
struct StandMount {
    Vec2 at = Vec2::Zero();
    Length height;
    /// A catalogue support.
    std::string support;

    bool operator==(const StandMount&) const = default;
};

/// Clamped to a wall of the room, clear of it by the depth of its body.
struct WallMount {
    int wall = 0;
    Length along;
    Length height;

    bool operator==(const WallMount&) const = default;
};

/// Stands or hangs in the set as part of it; a shot may see it.
struct PracticalMount {
    Vec2 at = Vec2::Zero();
    Length height;

    bool operator==(const PracticalMount&) const = default;
};

using LampMount = std::variant<GridHang, PipeHang, StandMount, WallMount, PracticalMount>;

using throwline::LampRole;

/// Barn doors or shutters: how far each side cuts in from the field edge towards the axis, 0 open,
/// 1 closed to the axis. Sides as seen from the lamp looking along its beam.
struct BeamCut {
    double top = 0.0;
    double bottom = 0.0;
    double left = 0.0;
    double right = 0.0;

    bool is_open() const { return top == 0.0 && bottom == 0.0 && left == 0.0 && right == 0.0; }
    bool operator==(const BeamCut&) const = default;
};

struct Lamp {
    Id<Lamp> id;
    /// A catalogue instrument.
    std::string instrument;
    LampMount mount;
    /// A person's face, a thing, a place; straight down when empty. Set once, for the first beat in
    /// which it can be, unless `aim_beat` names another.
    Aim aim;
    Id<Beat> aim_beat;
    LampRole role = LampRole::effect;
    /// 0 spot .. 1 flood
    double focus = 0.0;
    /// Dimmer setting 0..1
    double level = 1.0;
    /// Beats in which it burns; all when empty.
    std::vector<Id<Beat>> beats;
    /// Catalogue filters, nearest the lamp first.
    std::vector<std::string> filters;
    BeamCut cut;
    Id<Circuit> circuit;
    /// 0 when none is given.
    int channel = 0;
    std::vector<std::string> notes;
    Extra extra;

    bool operator==(const Lamp&) const = default;
};

/// Whether a lamp burns in a beat.
bool is_lit(const Lamp& lamp, const Id<Beat>& beat);

} // namespace throwline::plan
