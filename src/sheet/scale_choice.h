#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"

#include <optional>
#include <string>
#include <vector>

namespace throwline::sheet {

enum class Orientation { landscape, portrait };
std::string_view name_of(Orientation orientation);

/// A rectangle to be drawn to scale, and the sheet it is to go on.
struct ScaleQuestion {
    /// Real size; both > 0.
    Length width;
    Length depth;
    /// Any rectangle; which side is longer does not matter.
    catalogue::Paper paper;
    /// Kept free on all four sides.
    Length margin = Length::millimetres(10);
    /// Kept free along the foot, and along the right side, within the margins.
    Length strip;
    Length column;
    UnitSystem system = UnitSystem::metric;
    /// Also scales that are not in the standard set, such as 1:25.
    bool with_extras = false;
    /// Without it either way of turning the sheet will do.
    std::optional<Orientation> orientation;
};

/// A scale that was not taken. `paper` is the smallest of the same family on which it would fit,
/// empty when none would.
struct ScaleAlternative {
    catalogue::DrawingScale scale;
    std::string paper;
    Orientation orientation = Orientation::landscape;
};

struct ScaleChoice {
    catalogue::DrawingScale scale;
    Orientation orientation = Orientation::landscape;
    /// Smallest ratio that would fit this way round.
    double needed_ratio = 0.0;
    double usable_width_mm = 0.0;
    double usable_height_mm = 0.0;
    double drawn_width_mm = 0.0;
    double drawn_height_mm = 0.0;
    /// The next larger scales, nearest first, at most two, with the paper they would need.
    std::vector<ScaleAlternative> larger;
    /// The next smaller scale on the same sheet.
    std::optional<ScaleAlternative> smaller;
};

/// Two ratios nearer than this share are the same: a drawing that fits exactly fits.
inline constexpr double kExactFit = 1e-9;

/// The ratio that fills the sheet one way round; nothing when margins, strip and column leave no
/// room.
std::optional<double> needed_ratio(const ScaleQuestion& question, Orientation orientation);

/// The largest standard scale (ISO 5455 reductions, or the architect's inch scales) at which the
/// rectangle fits the sheet. The way round that lies like the drawing wins a tie. Errors: a size
/// that is not positive, no usable room, or no scale small enough.
Result<ScaleChoice> choose_scale(const ScaleQuestion& question,
                                 const catalogue::Catalogue& catalogue);

/// The same for a scale given by name ("1:50", "1/4 in = 1 ft") or one's own ("1:37"; see
/// scale_named); an error that names the largest one that fits when it does not, or the nearest
/// name when there is no such scale.
Result<ScaleChoice> check_scale(const ScaleQuestion& question, std::string_view scale_name,
                                const catalogue::Catalogue& catalogue);

} // namespace throwline::sheet
