#include "sheet/scale_choice.h"

#include "base/length_text.h"
#include "sheet/scale_name.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace throwline::sheet {

namespace {

using catalogue::Catalogue;
using catalogue::DrawingScale;
using catalogue::Paper;

struct SheetSize {
    double width_mm = 0.0;
    double height_mm = 0.0;
};

SheetSize turned(const Paper& paper, Orientation orientation) {
    const double shorter = std::min(paper.width.mm(), paper.height.mm());
    const double longer = std::max(paper.width.mm(), paper.height.mm());
    return orientation == Orientation::portrait ? SheetSize{shorter, longer}
                                                : SheetSize{longer, shorter};
}

SheetSize usable(const ScaleQuestion& question, Orientation orientation) {
    const SheetSize sheet = turned(question.paper, orientation);
    return {sheet.width_mm - 2.0 * question.margin.mm() - question.column.mm(),
            sheet.height_mm - 2.0 * question.margin.mm() - question.strip.mm()};
}

bool fits(double ratio, double needed) {
    return ratio >= needed * (1.0 - kExactFit);
}

/// Scales of the asked-for set, largest drawing first.
std::vector<DrawingScale> offered_scales(const ScaleQuestion& question,
                                         const Catalogue& catalogue) {
    std::vector<DrawingScale> scales;
    for (const DrawingScale& scale : catalogue.scales) {
        if (scale.system == question.system && (scale.standard || question.with_extras)) {
            scales.push_back(scale);
        }
    }
    std::stable_sort(
        scales.begin(), scales.end(),
        [](const DrawingScale& a, const DrawingScale& b) { return a.ratio < b.ratio; });
    return scales;
}

std::vector<Orientation> ways_round(const ScaleQuestion& question) {
    if (question.orientation) {
        return {*question.orientation};
    }
    if (question.width >= question.depth) {
        return {Orientation::landscape, Orientation::portrait};
    }
    return {Orientation::portrait, Orientation::landscape};
}

/// Index of the largest scale that fits and the way round that takes it.
struct Best {
    std::size_t scale = 0;
    Orientation orientation = Orientation::landscape;
    double needed = 0.0;
};

std::optional<Best> best_fit(const ScaleQuestion& question,
                             const std::vector<DrawingScale>& scales) {
    std::optional<Best> best;
    for (const Orientation orientation : ways_round(question)) {
        const std::optional<double> needed = needed_ratio(question, orientation);
        if (!needed) {
            continue;
        }
        const auto found =
            std::find_if(scales.begin(), scales.end(),
                         [&](const DrawingScale& scale) { return fits(scale.ratio, *needed); });
        const auto index = static_cast<std::size_t>(found - scales.begin());
        if (found != scales.end() && (!best || index < best->scale)) {
            best = Best{index, orientation, *needed};
        }
    }
    return best;
}

/// The smallest paper of the same family that takes a scale, either way round.
ScaleAlternative on_its_paper(const ScaleQuestion& question, const DrawingScale& scale,
                              const Catalogue& catalogue) {
    ScaleAlternative found{scale, {}, Orientation::landscape};
    double least_area = std::numeric_limits<double>::max();
    for (const Paper& paper : catalogue.papers) {
        const double paper_area = paper.width.m() * paper.height.m();
        if (paper.family != question.paper.family || paper_area >= least_area) {
            continue;
        }
        ScaleQuestion other = question;
        other.paper = paper;
        other.orientation.reset();
        if (const auto best = best_fit(other, {scale})) {
            found.paper = paper.name;
            found.orientation = best->orientation;
            least_area = paper_area;
        }
    }
    return found;
}

ScaleChoice described(const ScaleQuestion& question, const std::vector<DrawingScale>& scales,
                      const Best& best, const Catalogue& catalogue) {
    constexpr std::size_t kLargerShown = 2;
    const SheetSize room = usable(question, best.orientation);
    ScaleChoice choice;
    choice.scale = scales[best.scale];
    choice.orientation = best.orientation;
    choice.needed_ratio = best.needed;
    choice.usable_width_mm = room.width_mm;
    choice.usable_height_mm = room.height_mm;
    choice.drawn_width_mm = question.width.mm() / choice.scale.ratio;
    choice.drawn_height_mm = question.depth.mm() / choice.scale.ratio;
    for (std::size_t step = 1; step <= std::min(kLargerShown, best.scale); ++step) {
        choice.larger.push_back(on_its_paper(question, scales[best.scale - step], catalogue));
    }
    if (best.scale + 1 < scales.size()) {
        choice.smaller =
            ScaleAlternative{scales[best.scale + 1], question.paper.name, best.orientation};
    }
    return choice;
}

std::string size_text(const ScaleQuestion& question) {
    return fmt::format("{} by {}", shown(question.width, question.system),
                       shown(question.depth, question.system));
}

Result<void> sound(const ScaleQuestion& question) {
    if (!(question.width.m() > 0.0 && question.depth.m() > 0.0)) {
        return failure(fmt::format("the drawing is {}; both sides must be longer than nothing",
                                   size_text(question)));
    }
    for (const Orientation orientation : ways_round(question)) {
        if (needed_ratio(question, orientation)) {
            return {};
        }
    }
    return failure(
        fmt::format("margins of {} mm and the title strip leave no room on {} ({} by {} mm)",
                    shortest(question.margin.mm()), question.paper.name,
                    shortest(question.paper.width.mm()), shortest(question.paper.height.mm())));
}

} // namespace

std::string_view name_of(Orientation orientation) {
    switch (orientation) {
    case Orientation::landscape:
        return "landscape";
    case Orientation::portrait:
        return "portrait";
    }
    return "";
}

std::optional<double> needed_ratio(const ScaleQuestion& question, Orientation orientation) {
    const SheetSize room = usable(question, orientation);
    if (!(room.width_mm > 0.0 && room.height_mm > 0.0)) {
        return std::nullopt;
    }
    return std::max(question.width.mm() / room.width_mm, question.depth.mm() / room.height_mm);
}

Result<ScaleChoice> choose_scale(const ScaleQuestion& question, const Catalogue& catalogue) {
    if (const auto checked = sound(question); !checked) {
        return tl::unexpected{checked.error()};
    }
    const std::vector<DrawingScale> scales = offered_scales(question, catalogue);
    const std::optional<Best> best = best_fit(question, scales);
    if (!best) {
        return failure(fmt::format("{} does not fit {} at any scale; take a larger paper",
                                   size_text(question), question.paper.name));
    }
    return described(question, scales, *best, catalogue);
}

Result<ScaleChoice> check_scale(const ScaleQuestion& question, std::string_view scale_name,
                                const Catalogue& catalogue) {
    if (const auto checked = sound(question); !checked) {
        return tl::unexpected{checked.error()};
    }
    const Result<DrawingScale> named = scale_named(scale_name, catalogue);
    if (!named) {
        return tl::unexpected{named.error()};
    }
    ScaleQuestion asked = question;
    asked.system = named->system;
    std::vector<DrawingScale> scales = offered_scales(asked, catalogue);
    auto from = std::find_if(scales.begin(), scales.end(), [&](const DrawingScale& scale) {
        return scale.ratio >= named->ratio;
    });
    if (from == scales.end() || from->name != named->name) {
        from = scales.insert(from, *named);
    }
    const auto index = static_cast<std::size_t>(from - scales.begin());
    for (const Orientation orientation : ways_round(asked)) {
        const auto needed = needed_ratio(asked, orientation);
        if (needed && fits(named->ratio, *needed)) {
            return described(asked, scales, Best{index, orientation, *needed}, catalogue);
        }
    }
    const auto largest = choose_scale(asked, catalogue);
    return failure(fmt::format(
        "{} does not fit {} at {}{}", size_text(asked), asked.paper.name, named->name,
        largest ? fmt::format("; the largest scale that fits is {}", largest->scale.name)
                : std::string{"; take a larger paper"}));
}

} // namespace throwline::sheet
