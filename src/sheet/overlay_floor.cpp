#include "checks/opening_place.h"
#include "sheet/floor_parts.h"
#include "sheet/furniture.h"
#include "sheet/symbols.h"

#include <algorithm>

namespace throwline::sheet {

namespace {

/// How deep the floor in front of a way out is kept clear, as the check has it.
constexpr double kApproach_m = 1.2;

bool is_about_now(const checks::Finding& finding, const FloorQuestion& question) {
    const bool other_shot = !finding.shot.empty() && finding.shot != question.shot;
    const bool other_beat = !finding.beat.empty() && finding.beat != question.beat;
    return !other_shot && !other_beat;
}

} // namespace

void draw_ways_out(Board& board, const FloorScene& scene) {
    const plan::Plan& plan = scene.question.plan;
    for (const plan::Opening& opening : plan.room.openings) {
        if (!opening.way_out) {
            continue;
        }
        const checks::OpeningPlace place = checks::place_of(plan.room, opening);
        const Vec2 deep = place.inward * kApproach_m;
        const Polygon clear{place.start, place.end, place.end + deep, place.start + deep};
        board.add(PlanLayer::standing,
                  outline(board.frame.at(clear), pen(Ink::caution, kFine_mm, LinePattern::dash),
                          hatched(Ink::caution, Hatch::diagonal, 0.5)),
                  Crowd::light);
        LabelRequest label;
        label.anchor = board.frame.at(Vec2{place.middle() + deep / 2.0});
        label.half_mm = Vec2::Constant(board.frame.mm(0.3));
        label.ink = Ink::caution;
        label.lines = {{"keep clear"}};
        label.inside = true;
        label.may_drop = true;
        board.labels.push_back(label);
    }
}

void draw_findings_now(Board& board, const FloorScene& scene) {
    const checks::Analysis* analysis = scene.question.analysis;
    if (analysis == nullptr) {
        return;
    }
    std::vector<const checks::Finding*> all;
    for (const checks::Finding& finding : analysis->findings) {
        all.push_back(&finding);
    }
    std::vector<NumberedFinding> numbered;
    for (const FindingGroup& group : grouped(all)) {
        const auto now = std::find_if(
            group.members.begin(), group.members.end(), [&](const checks::Finding* finding) {
                return is_about_now(*finding, scene.question) && !finding->accepted;
            });
        if (now != group.members.end() && board.shows(board.frame.at((*now)->at))) {
            numbered.push_back({group.number, *now});
        }
    }
    in_sight_first(
        board, scene.question.in_sight.value_or(scene.question.window), numbered,
        [&](const NumberedFinding& finding) { return board.frame.at(finding.finding->at); },
        [&](std::span<const NumberedFinding> findings) {
            draw_finding_marks(board, findings, CrowdedSpot::worst_and_rest);
        });
}

} // namespace throwline::sheet
