#pragma once

#include "sheet/composition.h"

#include <string>
#include <vector>

/// Pages that are not to scale: cards, lists, the index. A frame, words in the body, cautions, and
/// a foot with what the title block of a scaled sheet says and a check length.
namespace throwline::sheet {

/// How such a page is divided.
struct TextPage {
    catalogue::Paper paper;
    Orientation orientation = Orientation::portrait;
    double width_mm = 0.0;
    double height_mm = 0.0;
    /// Within the margins.
    Box frame;
    Box body;
    Box cautions;
    Box foot;
};

/// Height of the foot.
inline constexpr double kFootHeight_mm = 28.0;

/// The page on the paper for such pages, upright unless the options or `usual` say otherwise.
/// Errors: no such paper, or one that leaves no body.
Result<TextPage> text_page(const SheetInput& input, const SheetOptions& options,
                           const std::vector<std::string>& cautions,
                           Orientation usual = Orientation::portrait);

/// The drawing with what has been set into the body.
Drawing finished_page(const SheetInput& input, const SheetOptions& options, const TextPage& page,
                      const std::vector<std::string>& cautions, Marks body);

} // namespace throwline::sheet
