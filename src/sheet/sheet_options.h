#pragma once

#include "plan/differences.h"
#include "plan/plan.h"
#include "sheet/drawing.h"
#include "sheet/scale_choice.h"

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace throwline::sheet {

/// Where a room is cut for a section, which looks to the left of the line.
struct SectionLine {
    /// From this shot's camera through its first subject; empty for what the sheet chooses, unless
    /// there are ends.
    plan::Id<plan::Shot> shot;
    /// Two different places; the cut goes on beyond both as far as the room does.
    std::optional<std::pair<Vec2, Vec2>> ends;
    /// How far from the line things are shown; all of them without it.
    std::optional<Length> depth;
};

/// What goes on a sheet and how.
struct SheetOptions {
    /// A catalogue name or a size such as "500x700mm", unless `own_paper` is given.
    std::string paper = "A3";
    std::optional<catalogue::Paper> own_paper;
    /// The paper of pages that are not to scale, a catalogue name; that of the others when empty.
    std::string text_paper;
    std::optional<Orientation> orientation;
    /// A scale by name, or one's own such as "1:37"; empty for the largest standard one that fits.
    std::string scale;
    bool extra_scales = false;
    Length margin = Length::millimetres(10);
    /// Shown in the title block.
    std::string sheet_name = "Floor plan";
    int sheet_number = 1;
    int sheet_count = 1;
    std::string revision;
    /// First 8 hex digits of a hash of the plan's file, so that a print can be told from a later
    /// one.
    std::string file_hash;
    /// Only these shots, and the beats that they need; empty for all.
    std::vector<plan::Id<plan::Shot>> shots;
    /// Only this beat; empty for all.
    plan::Id<plan::Beat> beat;
    SectionLine section;
    bool ground = true;
    bool coverage = true;
    bool pools = true;
    bool findings = true;
    /// Whether a set in which errors found no room in their panels goes on with a list of them.
    bool goes_on = false;
    /// Whether a set leaves out kinds of sheet that have nothing to show, instead of being refused.
    bool leaves_out_empty = false;
    /// A scale that needs a larger sheet than the paper is cut into tiles that overlap by this.
    std::optional<Length> tile_overlap;
    /// The plan's underlay, read and decoded by who asks; none when there is none.
    std::shared_ptr<const Pixels> underlay;
    /// What is clouded on a plan, and what that changed since ("file 3fa9c021", the hash on the
    /// older print); no clouds when empty.
    std::vector<plan::Difference> changes;
    std::string changes_since;
};

} // namespace throwline::sheet
