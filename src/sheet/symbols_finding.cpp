#include "sheet/symbols.h"

#include <fmt/format.h>

namespace throwline::sheet {

namespace {

using checks::Severity;

/// Findings nearer to each other than this share a leader.
constexpr double kSamePlace_mm = 3.0;

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

/// Lozenges of one spot stand in rows of at most this many.
int lozenges_across(int count) {
    return count <= 3 ? count : (count + 2) / 3;
}

void draw_spot(Board& board, const Spot& spot) {
    const int count = static_cast<int>(spot.findings.size());
    const int across = lozenges_across(count);
    const int down = (count + across - 1) / across;
    BoxRequest request;
    request.anchor = spot.at;
    request.size_mm = {across * kLozengeWidth_mm, down * kLozengeHeight_mm};
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
    for (int i = 0; i < count; ++i) {
        const int column = i % across;
        const int row = i / across;
        const Vec2 centre{placed->box.left + (column + 0.5) * kLozengeWidth_mm,
                          placed->box.top + (row + 0.5) * kLozengeHeight_mm};
        const NumberedFinding& numbered = spot.findings[static_cast<std::size_t>(i)];
        add_lozenge(marks, centre, numbered.number, numbered.finding->severity);
        board.used.insert(legend_of(numbered.finding->severity));
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

void draw_finding_marks(Board& board, std::span<const NumberedFinding> findings) {
    for (const Spot& spot : spots_of(board, findings)) {
        draw_spot(board, spot);
    }
}

} // namespace throwline::sheet
