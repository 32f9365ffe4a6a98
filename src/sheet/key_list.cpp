#include "sheet/key_list.h"

#include "sheet/text_wrap.h"

#include <algorithm>
#include <fmt/format.h>
#include <numbers>
#include <numeric>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 2.5;
constexpr double kHeading_mm = 6.6;
constexpr double kTwoColumnsFrom_mm = 90.0;
constexpr double kRing_mm = 4.4;
constexpr double kRow_mm = 4.9;
/// Room for numbers of two digits, before the words.
constexpr double kWordsFrom_mm = 6.6;

double height_of(std::size_t lines) {
    return std::max(kRow_mm, kLinePitch_mm * static_cast<double>(lines) + 0.8);
}

int columns_in(double width_mm) {
    return width_mm >= kTwoColumnsFrom_mm ? 2 : 1;
}

void add_words(Marks& marks, const std::string& words, const Vec2& at, bool bold = false) {
    marks.emplace_back(Text{words, at, kLetter_mm, TextAnchor::start, 0.0, bold, Ink::lettering});
}

std::string left_out_words(int count) {
    return fmt::format("{} {} left out; print larger", count, count == 1 ? "name" : "names");
}

} // namespace

KeyList::KeyList(double width_mm, double most_height_mm, const TextMeasure& measure)
    : width_mm_{width_mm}, most_height_mm_{most_height_mm}, measure_{measure} {}

double KeyList::column_width_mm() const {
    return (width_mm_ - kPad_mm) / columns_in(width_mm_);
}

KeyList::Lines KeyList::wrapped(const std::string& words) const {
    return wrapped_lines(words, column_width_mm() - kWordsFrom_mm - kPad_mm, kLetter_mm, false,
                         measure_);
}

double KeyList::columns_height_mm(const std::vector<Lines>& entries) const {
    std::vector<double> heights_mm;
    for (const Lines& lines : entries) {
        heights_mm.push_back(height_of(lines.size()));
    }
    const double total_mm = std::accumulate(heights_mm.begin(), heights_mm.end(), 0.0);
    const int columns = columns_in(width_mm_);
    // The lowest height at which the entries, in order, take no more columns than there are.
    const double least_mm =
        heights_mm.empty() ? 0.0 : *std::max_element(heights_mm.begin(), heights_mm.end());
    for (double height_mm = std::max(least_mm, total_mm / columns);; height_mm += 0.5) {
        int column = 1;
        double used_mm = 0.0;
        for (const double entry_mm : heights_mm) {
            if (used_mm > 0.0 && used_mm + entry_mm > height_mm + 1e-9) {
                ++column;
                used_mm = 0.0;
            }
            used_mm += entry_mm;
        }
        if (column <= columns) {
            return height_mm;
        }
    }
}

double KeyList::whole_height_mm(const std::vector<Lines>& entries, bool with_left_out) const {
    return (entries.empty() ? kPad_mm - 0.5 : kHeading_mm + columns_height_mm(entries))
           + (with_left_out ? kRow_mm : 0.0) + 0.5;
}

std::optional<int> KeyList::add(const std::string& words) {
    std::vector<Lines> longer = entries_;
    longer.push_back(wrapped(words));
    // Leaves room to tell of what does not fit any more.
    if (whole_height_mm(longer, true) > most_height_mm_) {
        return std::nullopt;
    }
    entries_ = std::move(longer);
    return static_cast<int>(entries_.size());
}

double KeyList::height_mm() const {
    return entries_.empty() && left_out_ == 0 ? 0.0 : whole_height_mm(entries_, left_out_ > 0);
}

void KeyList::draw(Marks& marks, const Box& box) const {
    const double top_mm = box.top + (entries_.empty() ? kPad_mm - 0.5 : kHeading_mm);
    const double columns_mm = entries_.empty() ? 0.0 : columns_height_mm(entries_);
    if (!entries_.empty()) {
        add_words(marks, "Key", {box.left + kPad_mm, box.top + kPad_mm + kLetter_mm}, true);
    }
    double left_mm = box.left + kPad_mm;
    double down_mm = 0.0;
    for (std::size_t i = 0; i < entries_.size(); ++i) {
        const double height_mm = height_of(entries_[i].size());
        if (down_mm > 0.0 && down_mm + height_mm > columns_mm + 1e-9) {
            left_mm += column_width_mm();
            down_mm = 0.0;
        }
        const double middle_mm = top_mm + down_mm + kRow_mm / 2.0;
        add_key_mark(marks, {left_mm + kRing_mm / 2.0, middle_mm}, static_cast<int>(i) + 1,
                     measure_);
        double baseline_mm = middle_mm + kLetter_mm / 2.0;
        for (const std::string& words : entries_[i]) {
            add_words(marks, words, {left_mm + kWordsFrom_mm, baseline_mm});
            baseline_mm += kLinePitch_mm;
        }
        down_mm += height_mm;
    }
    if (left_out_ > 0) {
        add_words(marks, left_out_words(left_out_),
                  {box.left + kPad_mm, top_mm + columns_mm + kLetter_mm + 0.8}, true);
    }
}

Vec2 key_mark_size(int number, const TextMeasure& measure) {
    const double digits_mm = measure.width_mm(fmt::format("{}", number), kLetter_mm, false);
    return {std::max(kRing_mm, digits_mm + 2.0), kRing_mm};
}

void add_key_mark(Marks& marks, const Vec2& centre, int number, const TextMeasure& measure) {
    constexpr double kQuarter_rad = std::numbers::pi / 2.0;
    const Vec2 size_mm = key_mark_size(number, measure);
    const double radius_mm = size_mm.y() / 2.0;
    const Vec2 out{size_mm.x() / 2.0 - radius_mm, 0.0};
    std::vector<Vec2> ring = arc_points(centre + out, radius_mm, -kQuarter_rad, kQuarter_rad);
    const std::vector<Vec2> left =
        arc_points(centre - out, radius_mm, kQuarter_rad, 3.0 * kQuarter_rad);
    ring.insert(ring.end(), left.begin(), left.end());
    marks.emplace_back(
        outline(std::move(ring), pen(Ink::lettering, kConstruction_mm), solid(Ink::paper)));
    marks.emplace_back(Text{fmt::format("{}", number), centre + Vec2{0.0, kLetter_mm / 2.0},
                            kLetter_mm, TextAnchor::middle, 0.0, false, Ink::lettering});
}

} // namespace throwline::sheet
