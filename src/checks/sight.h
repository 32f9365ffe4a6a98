#pragma once

#include "checks/check.h"

#include <optional>
#include <vector>

namespace throwline::checks {

/// Something in front of a subject, with the share of the subject that it hides.
struct Hider {
    int owner = -1;
    double share = 0.0;
};

/// What of something a lens sees, and what hides the rest, most hiding first.
struct SeenShare {
    double share = 1.0;
    int rays = 0;
    std::vector<Hider> hiders;
};

/// Eyes of a subject that lie in the frame and are not hidden by the subject's own head.
struct EyesSeen {
    int asked = 0;
    int seen = 0;
    /// Owners in front of an eye.
    std::vector<int> hiders;
};

/// What a lens sees of the part of a subject that lies in the frame.
struct Sight {
    SeenShare body;
    /// Nothing when no face is in the frame, or it is turned away.
    std::optional<SeenShare> face;
    EyesSeen eyes;
    bool turned_away = false;
};

/// Casts rays over the subject's place in the frame. What the subject alone would show is the
/// whole, so that more things in front never make more of it seen. Nothing when less than a trace
/// of the subject lies in the frame.
std::optional<Sight> sight_of(const ShotScene& scene, const stage::ShotView& view,
                              const stage::Figure& figure);

} // namespace throwline::checks
