#include "edit/on_paper.h"

#include "plan/read_values.h"

#include <algorithm>
#include <cmath>

namespace throwline::edit {

bool is_on_paper(const Vec2& place) {
    return std::abs(place.x()) <= plan::kFarthest.m() && std::abs(place.y()) <= plan::kFarthest.m();
}

bool are_on_paper(std::span<const Vec2> places) {
    return std::all_of(places.begin(), places.end(), is_on_paper);
}

bool is_a_size(Length size) {
    return size.m() > 0.0 && size <= plan::kFarthest;
}

} // namespace throwline::edit
