#include "sheet/panel_writer.h"

#include "sheet/text_wrap.h"

#include <fmt/format.h>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 2.5;
constexpr double kAir_mm = 1.6;
/// Lines after the first of a wrapped sentence are set in by this.
constexpr double kSetIn_mm = 3.0;

} // namespace

PanelWriter::PanelWriter(Marks& marks, const Box& box, const TextMeasure& measure, double keep_mm)
    : marks_{marks}, box_{box}, measure_{measure}, foot_mm_{box.bottom() - keep_mm - kPad_mm / 2.0},
      top_mm_{box.top + kPad_mm} {}

double PanelWriter::left_mm() const {
    return box_.left + kPad_mm;
}

double PanelWriter::width_mm() const {
    return box_.width - 2.0 * kPad_mm;
}

Box PanelWriter::rest() const {
    const double top_mm = top_mm_ + kAir_mm;
    return {box_.left, top_mm, box_.width, box_.bottom() - top_mm};
}

/// A line stays free for what is left out.
bool PanelWriter::fits(double height_mm) const {
    return top_mm_ + height_mm + kLinePitch_mm <= foot_mm_;
}

void PanelWriter::set(const std::string& words, double left_mm, bool bold, TextAnchor anchor) {
    marks_.emplace_back(Text{
        words, {left_mm, top_mm_ + kLetter_mm}, kLetter_mm, anchor, 0.0, bold, Ink::lettering});
}

bool PanelWriter::heading(const std::string& words) {
    if (!fits(2.0 * kLinePitch_mm)) {
        return false;
    }
    set(cut_to_width(words, width_mm(), kLetter_mm, true, measure_), left_mm(), true);
    top_mm_ += kLinePitch_mm + 0.4;
    return true;
}

bool PanelWriter::words(const std::string& words, bool bold) {
    const auto lines = wrapped_lines(words, width_mm() - kSetIn_mm, kLetter_mm, bold, measure_);
    if (!fits(kLinePitch_mm * static_cast<double>(lines.size()))) {
        return false;
    }
    for (const std::string& line : lines) {
        set(line, left_mm() + (&line == &lines.front() ? 0.0 : kSetIn_mm), bold);
        top_mm_ += kLinePitch_mm;
    }
    return true;
}

bool PanelWriter::entry(const std::string& name, const std::string& words, double tab_mm) {
    const auto lines = wrapped_lines(words, width_mm() - tab_mm, kLetter_mm, false, measure_);
    if (!fits(kLinePitch_mm * static_cast<double>(lines.size()))) {
        return false;
    }
    set(cut_to_width(name, tab_mm - 1.0, kLetter_mm, true, measure_), left_mm(), true);
    for (const std::string& line : lines) {
        set(line, left_mm() + tab_mm, false);
        top_mm_ += kLinePitch_mm;
    }
    return true;
}

bool PanelWriter::row(std::span<const PanelCell> cells) {
    if (!fits(kLinePitch_mm)) {
        return false;
    }
    for (const PanelCell& cell : cells) {
        set(cell.words, left_mm() + cell.x_mm, cell.bold,
            cell.to_the_right ? TextAnchor::end : TextAnchor::start);
    }
    top_mm_ += kLinePitch_mm;
    return true;
}

void PanelWriter::left_out(std::size_t count, std::string_view what) {
    set(fmt::format("and {} more {}", count, what), left_mm(), false);
    top_mm_ += kLinePitch_mm;
}

std::optional<Box> PanelWriter::room(double height_mm) {
    if (!fits(height_mm)) {
        return std::nullopt;
    }
    const Box taken{left_mm(), top_mm_, width_mm(), height_mm};
    top_mm_ += height_mm;
    return taken;
}

void PanelWriter::gap() {
    top_mm_ += kAir_mm;
}

} // namespace throwline::sheet
