#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <optional>

namespace throwline::edit {

/// A stand as most lamps have it, with the turning point 2.4 m up or as near as it goes (common
/// practice, no source). Nothing when the catalogue has no stand for lamps.
std::optional<plan::StandMount> stand_at(const catalogue::Catalogue& catalogue, const Vec2& at);

} // namespace throwline::edit
