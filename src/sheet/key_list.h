#pragma once

#include "sheet/marks.h"
#include "sheet/plan_frame.h"

#include <optional>
#include <string>
#include <vector>

namespace throwline::sheet {

/// The list in the panel of the words that found no room on the drawing, where a ringed number
/// stands for them, and how many found no room at all.
class KeyList {
  public:
    KeyList(double width_mm, double most_height_mm, const TextMeasure& measure);

    /// The number that stands for the words; nothing when the list is as high as it may be.
    std::optional<int> add(const std::string& words);
    void tell_left_out(int count) { left_out_ += count; }
    int left_out() const { return left_out_; }

    /// 0 when there is nothing to tell.
    double height_mm() const;
    void draw(Marks& marks, const Box& box) const;

  private:
    using Lines = std::vector<std::string>;
    double column_width_mm() const;
    Lines wrapped(const std::string& words) const;
    double columns_height_mm(const std::vector<Lines>& entries) const;
    double whole_height_mm(const std::vector<Lines>& entries, bool with_left_out) const;

    double width_mm_;
    double most_height_mm_;
    const TextMeasure& measure_;
    std::vector<Lines> entries_;
    int left_out_ = 0;
};

/// Size of a ringed number.
Vec2 key_mark_size(int number, const TextMeasure& measure);
void add_key_mark(Marks& marks, const Vec2& centre, int number, const TextMeasure& measure);

} // namespace throwline::sheet
