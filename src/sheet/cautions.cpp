#include "sheet/furniture.h"

#include "sheet/text_wrap.h"

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 3.0;

std::string run_on(const std::vector<std::string>& sentences) {
    std::string text;
    for (const std::string& sentence : sentences) {
        if (!text.empty()) {
            text += ' ';
        }
        text += sentence;
    }
    return text;
}

} // namespace

double cautions_height_mm(const std::vector<std::string>& cautions, double width_mm,
                          const TextMeasure& measure) {
    const auto lines =
        wrapped_lines(run_on(cautions), width_mm - 2.0 * kPad_mm, kLetter_mm, false, measure);
    return kLinePitch_mm * static_cast<double>(lines.size()) + 2.0;
}

void draw_cautions(Marks& marks, const Box& box, const std::vector<std::string>& cautions,
                   const TextMeasure& measure) {
    double baseline_mm = box.top + kLetter_mm;
    for (const std::string& words :
         wrapped_lines(run_on(cautions), box.width - 2.0 * kPad_mm, kLetter_mm, false, measure)) {
        marks.emplace_back(Text{words,
                                {box.left + kPad_mm, baseline_mm},
                                kLetter_mm,
                                TextAnchor::start,
                                0.0,
                                false,
                                Ink::lettering});
        baseline_mm += kLinePitch_mm;
    }
}

} // namespace throwline::sheet
