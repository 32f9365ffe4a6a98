#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <optional>

namespace throwline::edit {

/// The stand that most lamps have; null when the catalogue has none for lamps.
const catalogue::Support* usual_lamp_stand(const catalogue::Catalogue& catalogue);

/// The usual stand at a place, with the turning point 2.4 m up or as near as it goes (common
/// practice, no source). Nothing when there is no stand.
std::optional<plan::StandMount> stand_at(const catalogue::Catalogue& catalogue, const Vec2& at);

} // namespace throwline::edit
