#pragma once

#include "plan/plan.h"
#include "sheet/drawing.h"
#include "sheet/scale_choice.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace throwline::sheet {

/// What goes on a sheet and how.
struct SheetOptions {
    /// A catalogue name, unless `own_paper` is given.
    std::string paper = "A3";
    std::optional<catalogue::Paper> own_paper;
    std::optional<Orientation> orientation;
    /// A scale by name; empty for the largest standard one that fits.
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
    bool ground = true;
    bool coverage = true;
    bool pools = true;
    bool findings = true;
    /// A scale that needs a larger sheet than the paper is cut into tiles that overlap by this.
    std::optional<Length> tile_overlap;
    /// The plan's underlay, read and decoded by who asks; none when there is none.
    std::shared_ptr<const Pixels> underlay;
};

} // namespace throwline::sheet
