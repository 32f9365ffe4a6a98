#include "sheet/furniture.h"

#include "sheet/text_wrap.h"

#include <algorithm>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 3.0;

bool hangs(const plan::Lamp& lamp) {
    return std::holds_alternative<plan::GridHang>(lamp.mount)
           || std::holds_alternative<plan::PipeHang>(lamp.mount)
           || std::holds_alternative<plan::WallMount>(lamp.mount);
}

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

std::vector<std::string> cautions_for(const plan::Plan& plan) {
    std::vector<std::string> cautions{
        "Planning aid only: local law, the venue's rules, makers' instructions and licensed or "
        "qualified people decide."};
    if (std::any_of(plan.lamps.begin(), plan.lamps.end(), hangs)) {
        cautions.emplace_back("Overhead: rated clamp and separate rated safety bond on everything "
                              "that hangs; loads approved by a qualified person; floor below kept "
                              "clear during work aloft.");
    }
    if (!plan.lamps.empty()) {
        cautions.emplace_back("Lamps: keep the maker's distance to people, cloth and paint; let "
                              "them cool. Mains: tested gear, protective earth, distribution by a "
                              "licensed electrician.");
    }
    cautions.emplace_back("Ways out and fire equipment stay clear at full width; cables across "
                          "walks ramped or taped; weights on stands.");
    const bool has_window = std::any_of(
        plan.room.openings.begin(), plan.room.openings.end(),
        [](const plan::Opening& opening) { return opening.kind == plan::OpeningKind::window; });
    if (has_window) {
        cautions.emplace_back("Never look or aim a lens at the sun.");
    }
    return cautions;
}

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
