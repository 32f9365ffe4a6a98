#include "checks/cautions.h"

#include <algorithm>

namespace throwline::checks {

namespace {

bool hangs(const plan::Lamp& lamp) {
    return std::holds_alternative<plan::GridHang>(lamp.mount)
           || std::holds_alternative<plan::PipeHang>(lamp.mount)
           || std::holds_alternative<plan::WallMount>(lamp.mount);
}

} // namespace

std::string_view caution_about(Danger danger) {
    switch (danger) {
    case Danger::any:
        return "Planning aid only: local law, the venue's rules, makers' instructions and licensed "
               "or qualified people decide.";
    case Danger::overhead:
        return "Overhead: rated clamp and separate rated safety bond on everything that hangs; "
               "loads approved by a qualified person; floor below kept clear during work aloft.";
    case Danger::hot_lamps:
        return "Lamps: keep the maker's distance to people, cloth and paint; let them cool.";
    case Danger::mains:
        return "Mains: tested gear, protective earth, distribution by a licensed electrician.";
    case Danger::ways_and_cables:
        return "Ways out and fire equipment stay clear at full width; cables across walks ramped "
               "or taped; weights on stands.";
    case Danger::sun:
        return "Never look or aim a lens at the sun.";
    }
    return {};
}

std::vector<std::string> cautions_for(const plan::Plan& plan) {
    const bool overhead = std::any_of(plan.lamps.begin(), plan.lamps.end(), hangs);
    const bool lit = !plan.lamps.empty();
    const bool has_window = std::any_of(
        plan.room.openings.begin(), plan.room.openings.end(),
        [](const plan::Opening& opening) { return opening.kind == plan::OpeningKind::window; });
    std::vector<std::string> cautions;
    const auto say = [&](Danger danger, bool wanted) {
        if (wanted) {
            cautions.emplace_back(caution_about(danger));
        }
    };
    say(Danger::any, true);
    say(Danger::overhead, overhead);
    say(Danger::hot_lamps, lit);
    say(Danger::mains, lit);
    say(Danger::ways_and_cables, true);
    say(Danger::sun, has_window);
    return cautions;
}

} // namespace throwline::checks
