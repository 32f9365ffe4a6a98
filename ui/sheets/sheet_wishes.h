#pragma once

#include "base/quantity.h"
#include "sheet/sheet_options.h"

#include <optional>
#include <string>
#include <vector>

class QSettings;

namespace throwline::ui {

/// What somebody wants on paper, whatever the plan; kept from one time to the next.
struct SheetWishes {
    /// Kinds of sheet by name, in the order of the table.
    std::vector<std::string> kinds{"floor-plan"};
    /// A catalogue name.
    std::string paper = "A3";
    /// Without it either way round will do.
    std::optional<sheet::Orientation> way;
    /// A scale by name; empty for the largest standard one that fits.
    std::string scale;
    /// With a scale: a drawing too large for the paper goes on several sheets of it.
    bool tiles = false;
    bool ground = true;
    bool coverage = true;
    bool pools = true;
    bool findings = true;
    bool underlay = true;

    bool operator==(const SheetWishes&) const = default;
};

/// A3 or tabloid, by the units.
std::string_view usual_paper(UnitSystem units);

/// Paper and scale are kept for metric plans and for those in feet, since their names differ.
void keep_wishes(QSettings& settings, const SheetWishes& wishes, UnitSystem units);
/// As kept; the usual ones where nothing is, or something that is none. Names are not looked up.
SheetWishes kept_wishes(const QSettings& settings, UnitSystem units);

/// As the sheets take them: a file that goes on until everything is told, each sheet under its own
/// name, without those that have nothing to show. Lists are on the same paper.
sheet::SheetOptions options_for(const SheetWishes& wishes);

} // namespace throwline::ui
