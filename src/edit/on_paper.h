#pragma once

#include "base/vec.h"
#include "plan/plan.h"

#include <span>
#include <string_view>

/// How far a plan reaches, asked before an edit makes one that cannot be opened again.
namespace throwline::edit {

inline constexpr std::string_view kOffPaper = "a plan reaches 1000 m from its origin, no farther";

/// Whether a place is one that a plan can have.
bool is_on_paper(const Vec2& place);
bool are_on_paper(std::span<const Vec2> places);
/// Whether something can be so large: above 0, and no larger than a plan reaches.
bool is_a_size(Length size);

} // namespace throwline::edit
