#pragma once

#include "sheet/key_list.h"
#include "sheet/label_field.h"

#include <span>
#include <string>
#include <vector>

namespace throwline::sheet {

struct LabelLine {
    std::string text;
    bool bold = false;
};

/// Words that want to stand beside something.
struct LabelRequest {
    /// Paper place of what is named, and how far it reaches to each side of that.
    Vec2 anchor = Vec2::Zero();
    Vec2 half_mm = Vec2::Ones();
    /// Whether the words may stand on the thing itself when they are shorter than it.
    bool inside = false;
    std::vector<LabelLine> lines;
    Ink ink = Ink::lettering;
    double height_mm = kLetter_mm;
    /// Not worth a far place with a leader: the key takes it when there is no place near by.
    bool may_drop = false;
    /// A line to the anchor even from near by.
    bool always_leader = false;
    /// A leader up to this long is better than fewer words; usual ones are when it is 0.
    double farthest_mm = 0.0;
    /// Fewer words for where the room is short, longest first. Without any, the first line.
    std::vector<std::vector<LabelLine>> shorter{};
};

/// Sets words down so that no lettering lies over other lettering. Each finds the first of: a place
/// near by; a far place with a leader; a place for fewer words; a ringed number, whose words stand
/// in the key; a place anywhere on the sheet. What finds none is counted as left out in the key.
void set_lettering(std::span<const LabelRequest> requests, LabelField& field, KeyList& key,
                   Marks& marks);

} // namespace throwline::sheet
