#pragma once

#include "sheet/marks.h"
#include "sheet/plan_frame.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace throwline::sheet {

/// Words in a row of a panel.
struct PanelCell {
    std::string words;
    /// From the left of the panel's words: where the cell begins, or ends when it
    /// is set to the right.
    double x_mm = 0.0;
    bool to_the_right = false;
    bool bold = false;
};

/// Sets lines of words one under the other into a box, as long as there is
/// room. What does not fit whole is not set at all, and false is returned.
class PanelWriter {
  public:
    /// `keep_mm` of the box's height is left free at its foot.
    PanelWriter(Marks& marks, const Box& box, const TextMeasure& measure, double keep_mm = 0.0);

    /// A bold line with some air above it; not as the last line of the box.
    bool heading(const std::string& words);
    /// Words in as many lines as they take, the later ones set in.
    bool words(const std::string& words, bool bold = false);
    /// A bold word, then what is said about it beside it, from `tab_mm` on.
    bool entry(const std::string& name, const std::string& words, double tab_mm);
    /// One line of cells. A line is kept free under it for left_out().
    bool row(std::span<const PanelCell> cells);
    /// "and 3 more pieces", in the line that is kept for it.
    void left_out(std::size_t count, std::string_view what);
    /// Room for a picture or symbol over the whole width.
    std::optional<Box> room(double height_mm);
    /// Some air.
    void gap();

    double left_mm() const;
    double width_mm() const;
    double top_mm() const { return top_mm_; }
    /// What is left of the box below what is written, with air between.
    Box rest() const;

  private:
    bool fits(double height_mm) const;
    void set(const std::string& words, double left_mm, bool bold,
             TextAnchor anchor = TextAnchor::start);

    Marks& marks_;
    Box box_;
    const TextMeasure& measure_;
    double foot_mm_ = 0.0;
    double top_mm_ = 0.0;
};

} // namespace throwline::sheet
