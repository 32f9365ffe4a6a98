#include "sheet/mask.h"
#include "sheet/symbols.h"

#include <fmt/format.h>

namespace throwline::sheet {

namespace {

using checks::Severity;

/// Findings nearer to each other than this share a leader.
constexpr double kSamePlace_mm = 3.0;
/// Of more than this many findings at a spot the screen counts the rest.
constexpr std::size_t kMostNumbers = 3;
/// Free paper to each side of the count.
constexpr double kBesideCount_mm = 0.8;

Ink ink_of(Severity severity) {
    switch (severity) {
    case Severity::error:
        return Ink::error;
    case Severity::caution:
        return Ink::caution;
    case Severity::note:
        return Ink::note;
    }
    return Ink::note;
}

LinePattern leader_of(Severity severity) {
    switch (severity) {
    case Severity::error:
        return LinePattern::solid;
    case Severity::caution:
        return LinePattern::dash;
    case Severity::note:
        return LinePattern::dot;
    }
    return LinePattern::dot;
}

LegendEntry legend_of(Severity severity) {
    switch (severity) {
    case Severity::error:
        return LegendEntry::error;
    case Severity::caution:
        return LegendEntry::caution;
    case Severity::note:
        return LegendEntry::note;
    }
    return LegendEntry::note;
}

std::vector<Vec2> lozenge(const Vec2& centre, double shrink_mm) {
    const double half_x = kLozengeWidth_mm / 2.0 - shrink_mm;
    const double half_y = kLozengeHeight_mm / 2.0 - shrink_mm;
    const double shoulder = half_x - 2.0;
    return {centre + Vec2{-half_x, 0.0},      centre + Vec2{-shoulder, -half_y},
            centre + Vec2{shoulder, -half_y}, centre + Vec2{half_x, 0.0},
            centre + Vec2{shoulder, half_y},  centre + Vec2{-shoulder, half_y}};
}

/// Findings about one place.
struct Spot {
    Vec2 at = Vec2::Zero();
    std::vector<NumberedFinding> findings;
};

std::vector<Spot> spots_of(const Board& board, std::span<const NumberedFinding> findings) {
    std::vector<Spot> spots;
    for (const NumberedFinding& numbered : findings) {
        const Vec2 at = board.frame.at(numbered.finding->at);
        Spot* known = nullptr;
        for (Spot& spot : spots) {
            if ((spot.at - at).norm() < kSamePlace_mm) {
                known = &spot;
            }
        }
        if (known == nullptr) {
            spots.push_back({at, {}});
            known = &spots.back();
        }
        known->findings.push_back(numbered);
    }
    return spots;
}

/// The lozenges of one spot: in rows, and how many findings have none.
struct Cluster {
    int shown = 0;
    int across = 0;
    int down = 0;
    /// "+12"; empty when all are shown.
    std::string rest;
    double rest_mm = 0.0;

    Vec2 size_mm() const { return {across * kLozengeWidth_mm + rest_mm, down * kLozengeHeight_mm}; }
    Vec2 centre_of(int i, const Box& box) const {
        return {box.left + (i % across + 0.5) * kLozengeWidth_mm,
                box.top + (i / across + 0.5) * kLozengeHeight_mm};
    }
};

Cluster cluster_of(const Spot& spot, CrowdedSpot crowded, const TextMeasure& measure) {
    const int count = static_cast<int>(spot.findings.size());
    if (crowded == CrowdedSpot::worst_and_rest && spot.findings.size() > kMostNumbers) {
        std::string rest = fmt::format("+{}", count - 1);
        const double wide_mm = measure.width_mm(rest, kLetter_mm, false) + 2.0 * kBesideCount_mm;
        return {1, 1, 1, std::move(rest), wide_mm};
    }
    const int across = count <= 3 ? count : (count + 2) / 3;
    return {count, across, (count + across - 1) / across, {}, 0.0};
}

void add_rest(Marks& marks, const Cluster& cluster, const Box& box) {
    const Box paper{box.right() - cluster.rest_mm, box.top, cluster.rest_mm, box.height};
    marks.emplace_back(box_outline(paper, no_pen(), solid(Ink::paper)));
    marks.emplace_back(Text{cluster.rest, paper.centre() + Vec2{0.0, kLetter_mm / 2.0}, kLetter_mm,
                            TextAnchor::middle});
}

void draw_spot(Board& board, const Spot& spot, CrowdedSpot crowded) {
    const Cluster cluster = cluster_of(spot, crowded, board.field.measure());
    BoxRequest request;
    request.anchor = spot.at;
    request.size_mm = cluster.size_mm();
    request.always_leader = true;
    request.under_lettering = true;
    const auto placed = board.field.find(request);
    if (!placed) {
        return;
    }
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::findings)];
    const Severity worst = spot.findings.front().finding->severity;
    marks.emplace_back(
        line(spot.at, placed->leader_to, pen(ink_of(worst), kFine_mm, leader_of(worst))));
    marks.emplace_back(Circle{spot.at, 0.6, no_pen(), solid(ink_of(worst))});
    for (int i = 0; i < cluster.shown; ++i) {
        const NumberedFinding& numbered = spot.findings[static_cast<std::size_t>(i)];
        add_lozenge(marks, cluster.centre_of(i, placed->box), numbered.number,
                    numbered.finding->severity);
        board.used.insert(legend_of(numbered.finding->severity));
    }
    if (!cluster.rest.empty()) {
        add_rest(marks, cluster, placed->box);
    }
}

} // namespace

void add_lozenge(Marks& marks, const Vec2& centre, int number, Severity severity) {
    const Ink ink = ink_of(severity);
    const bool filled = severity == Severity::error;
    marks.emplace_back(
        outline(lozenge(centre, 0.35),
                pen(ink, severity == Severity::note ? kConstruction_mm : kStanding_mm),
                solid(filled ? ink : Ink::paper)));
    if (severity == Severity::caution) {
        marks.emplace_back(outline(lozenge(centre, 0.9), pen(ink, kConstruction_mm)));
    }
    marks.emplace_back(Text{fmt::format("{}", number), centre + Vec2{0.0, kLetter_mm / 2.0},
                            kLetter_mm, TextAnchor::middle, 0.0, filled,
                            filled ? Ink::paper : Ink::lettering});
}

void draw_finding_marks(Board& board, std::span<const NumberedFinding> findings,
                        CrowdedSpot crowded) {
    for (const Spot& spot : spots_of(board, findings)) {
        draw_spot(board, spot, crowded);
    }
}

} // namespace throwline::sheet
