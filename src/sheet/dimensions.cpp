#include "sheet/dimensions.h"

#include "base/length_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

namespace throwline::sheet {

namespace {

constexpr InchFraction kQuarterInch{4};
constexpr double kTick_mm = 1.2;
/// Of a witness line: from the thing, and beyond the row.
constexpr double kGap_mm = 1.0;
constexpr double kBeyond_mm = 1.5;
/// Between words and their line.
constexpr double kLift_mm = 1.4;
/// Clear paper beside words on their stretch.
constexpr double kAir_mm = 0.6;
/// Price of a cell of crossed line under words; where lines may be lettered over, words rather
/// stay at their own.
constexpr double kCrowdPrice = 0.5;
constexpr double kCrossedPrice = 0.01;
/// Side of the squares that lettering at an angle is entered with.
constexpr double kSquare_mm = 0.8;

const Pen kWitness{Ink::dimension, kHair_mm, LinePattern::solid, 1.0};

/// The row's line on paper.
struct PaperLine {
    Vec2 from = Vec2::Zero();
    Vec2 to = Vec2::Zero();

    double length_mm() const { return (to - from).norm(); }
    Vec2 middle() const { return (from + to) / 2.0; }
};

/// The same direction on paper, whose y runs down.
Vec2 on_paper(const Vec2& direction) {
    return {direction.x(), -direction.y()};
}

Vec2 place_on_row(const PlanFrame& frame, const DimensionRow& row, double stop_m) {
    return frame.at(Vec2{row.origin + row.along * stop_m + row.aside * row.aside_m})
           + on_paper(row.aside) * row.aside_mm;
}

/// Angle, anticlockwise on the page, at which words along a line are read from the foot or the
/// right: (-90, 90] deg.
double reading_turn_rad(const Vec2& along_on_paper) {
    constexpr double kUpright = 1e-6;
    double turn_rad = std::atan2(-along_on_paper.y(), along_on_paper.x());
    if (turn_rad > std::numbers::pi / 2.0 + kUpright) {
        turn_rad -= std::numbers::pi;
    } else if (turn_rad <= -std::numbers::pi / 2.0 + kUpright) {
        turn_rad += std::numbers::pi;
    }
    return turn_rad;
}

/// Words on their way to a place: middle of their baseline, and their size.
struct Words {
    std::string text;
    double turn_rad = 0.0;
    double width_mm = 0.0;
    Ink ink = Ink::dimension;
    /// Of a cell of crossed line, against a place off the stretch.
    double crowd_price = kCrowdPrice;

    Vec2 reading() const { return paper_direction(turn_rad); }
    Vec2 up() const { return paper_direction(turn_rad + std::numbers::pi / 2.0); }
};

/// Boxes that together cover words at an angle.
std::vector<Box> boxes_under(const Words& words, const Vec2& at) {
    constexpr double kLow_mm = -kDescent * kLetter_mm;
    constexpr double kHigh_mm = kLetter_mm;
    const double left_mm = -words.width_mm / 2.0;
    const bool is_level = std::abs(std::sin(words.turn_rad)) < 1e-9;
    const bool is_upright = std::abs(std::cos(words.turn_rad)) < 1e-9;
    if (is_level) {
        return {{at.x() + left_mm, at.y() - kHigh_mm, words.width_mm, kHigh_mm - kLow_mm}};
    }
    if (is_upright) {
        return {{at.x() - kHigh_mm, at.y() + left_mm, kHigh_mm - kLow_mm, words.width_mm}};
    }
    // Their middles lie a half within, so that hardly a corner sticks out.
    const double wide_mm = words.width_mm - kSquare_mm;
    const double high_mm = kHigh_mm - kLow_mm - kSquare_mm;
    const int along = std::max(1, static_cast<int>(std::ceil(wide_mm / kSquare_mm)));
    const int across = std::max(1, static_cast<int>(std::ceil(high_mm / kSquare_mm)));
    const Vec2 corner = at + words.reading() * ((kSquare_mm - words.width_mm) / 2.0)
                        + words.up() * (kLow_mm + kSquare_mm / 2.0);
    std::vector<Box> boxes;
    for (int i = 0; i <= along; ++i) {
        for (int k = 0; k <= across; ++k) {
            const Vec2 middle = corner + words.reading() * (wide_mm * i / along)
                                + words.up() * (high_mm * k / across);
            boxes.push_back({middle.x() - kSquare_mm / 2.0, middle.y() - kSquare_mm / 2.0,
                             kSquare_mm, kSquare_mm});
        }
    }
    return boxes;
}

std::optional<double> crowding_under(LabelField& field, const Words& words, const Vec2& at) {
    double sum = 0.0;
    for (const Box& box : boxes_under(words, at)) {
        const auto crowd = field.crowding(box);
        if (!crowd) {
            return std::nullopt;
        }
        sum += *crowd;
    }
    return sum;
}

/// Shifts along the stretch and lifts off it that are tried, nearest first.
struct Offer {
    double shift_mm = 0.0;
    double lift_mm = 0.0;
    double cost = 0.0;
};

std::vector<Offer> offers_for(const Words& words, double stretch_mm) {
    constexpr double kStep_mm = kLetter_mm * (1.0 + kDescent) + 0.5;
    constexpr double kBelow_mm = -kLift_mm - kLetter_mm;
    const double beside_mm = (stretch_mm + words.width_mm) / 2.0 + 2.0 * kAir_mm;
    const double slack_mm = (stretch_mm - words.width_mm) / 2.0 - kAir_mm;
    std::vector<Offer> offers;
    if (slack_mm >= 0.0) {
        for (const double share : {0.0, 0.25, -0.25, 0.5, -0.5, 0.7, -0.7, 0.9, -0.9}) {
            offers.push_back({share * slack_mm, kLift_mm, 4.0 * std::abs(share)});
        }
        offers.push_back({0.0, kBelow_mm, 6.0});
    }
    for (int level = 0; level < 4; ++level) {
        for (const double sign : {1.0, -1.0}) {
            const double lift_mm =
                sign > 0.0 ? kLift_mm + kStep_mm * (level + 1) : kBelow_mm - kStep_mm * level - 0.6;
            const double cost = 14.0 + 10.0 * level + (sign > 0.0 ? 0.0 : 3.0);
            offers.push_back({0.0, lift_mm, cost});
            for (const double shift : {0.5, -0.5, 1.0, -1.0, 1.6, -1.6}) {
                offers.push_back({shift * beside_mm, lift_mm, cost + 6.0 * std::abs(shift)});
            }
        }
    }
    // Beyond an end of the row there is only paper on the line.
    offers.push_back({beside_mm + kTick_mm, kLift_mm, 12.0});
    offers.push_back({-beside_mm - kTick_mm, kLift_mm, 12.0});
    return offers;
}

/// Whether words there still stand on their stretch, as those who read them expect.
bool is_at_home(const Offer& offer, const Words& words, double stretch_mm) {
    return std::abs(offer.shift_mm) + words.width_mm / 2.0 <= stretch_mm / 2.0
           && offer.lift_mm > -kLetter_mm - 2.0 * kLift_mm && offer.lift_mm < kLetter_mm;
}

std::optional<Offer> best_offer(Board& board, const Words& words, const PaperLine& stretch) {
    std::optional<Offer> best;
    for (Offer offer : offers_for(words, stretch.length_mm())) {
        const Vec2 at =
            stretch.middle() + words.reading() * offer.shift_mm + words.up() * offer.lift_mm;
        const auto crowd = crowding_under(board.field, words, at);
        if (!crowd) {
            continue;
        }
        offer.cost += words.crowd_price * *crowd;
        if (!best || offer.cost < best->cost) {
            best = offer;
        }
    }
    return best;
}

void knock_out(Board& board, const Words& words, const Vec2& at) {
    const Vec2 middle = at + words.up() * (0.5 * kLetter_mm);
    board.add(PlanLayer::lettering, outline(corners_of_words(middle, words.width_mm + 0.8,
                                                             kLetter_mm + 0.8, words.turn_rad),
                                            no_pen(), solid(Ink::paper, 0.85)));
}

/// Where the drawing is too full beside the stretch: level, with a leader, wherever there is room.
void set_words_apart(Board& board, const Words& words, const PaperLine& stretch) {
    BoxRequest request;
    request.anchor = stretch.middle();
    request.half_mm = Vec2::Constant(0.5);
    request.size_mm = {words.width_mm, kLetter_mm * (1.0 + kDescent)};
    request.always_leader = true;
    request.under_lettering = true;
    const auto placed = board.field.find(request);
    if (!placed) {
        return; // Not a millimetre of paper is free.
    }
    board.add(PlanLayer::lettering, line(placed->leader_from, placed->leader_to, kWitness));
    board.add(PlanLayer::lettering, Text{words.text,
                                         {placed->box.left, placed->box.top + kLetter_mm},
                                         kLetter_mm,
                                         TextAnchor::start,
                                         0.0,
                                         false,
                                         words.ink});
}

void set_words(Board& board, const Words& words, const PaperLine& stretch) {
    const std::optional<Offer> found = best_offer(board, words, stretch);
    if (!found) {
        return set_words_apart(board, words, stretch);
    }
    const Offer& offer = *found;
    const Vec2 at =
        stretch.middle() + words.reading() * offer.shift_mm + words.up() * offer.lift_mm;
    if (!is_at_home(offer, words, stretch.length_mm())) {
        const double towards = offer.lift_mm > 0.0 ? -0.4 : kLetter_mm + 0.4;
        const double reach_mm = std::max(0.0, words.width_mm / 2.0 - 1.0);
        const Vec2 end = at + words.up() * towards
                         - words.reading() * std::clamp(offer.shift_mm, -reach_mm, reach_mm);
        const Path leader = line(stretch.middle(), end, kWitness);
        board.add(PlanLayer::lettering, leader, Crowd::firm);
    }
    if (crowding_under(board.field, words, at).value_or(1.0) > 0.0) {
        knock_out(board, words, at);
    }
    for (const Box& box : boxes_under(words, at)) {
        board.field.take(box);
    }
    board.add(PlanLayer::lettering, Text{words.text, at, kLetter_mm, TextAnchor::middle,
                                         words.turn_rad, false, words.ink});
}

void draw_witness(Board& board, const DimensionRow& row, std::size_t stop) {
    const Vec2 thing = board.frame.at(
        Vec2{row.origin + row.along * row.stops_m[stop] + row.aside * row.feet_m[stop]});
    const Vec2 end = place_on_row(board.frame, row, row.stops_m[stop]);
    const Vec2 way = end - thing;
    const double length_mm = way.norm();
    if (length_mm > 2.0 * kGap_mm) {
        const Vec2 unit = way / length_mm;
        board.add(PlanLayer::lettering,
                  line(thing + unit * kGap_mm, end + unit * kBeyond_mm, kWitness), Crowd::firm);
    }
}

void draw_lines(Board& board, const DimensionRow& row) {
    const Vec2 from = place_on_row(board.frame, row, row.stops_m.front());
    const Vec2 to = place_on_row(board.frame, row, row.stops_m.back());
    board.add(PlanLayer::lettering, line(from, to, pen(row.ink, kConstruction_mm, row.pattern)),
              row.crowd);
    const Vec2 slant = paper_direction(reading_turn_rad(to - from) + std::numbers::pi / 4.0);
    for (std::size_t i = 0; i < row.stops_m.size(); ++i) {
        const Vec2 at = place_on_row(board.frame, row, row.stops_m[i]);
        if (row.with_strokes) {
            board.add(
                PlanLayer::lettering,
                line(at - slant * kTick_mm, at + slant * kTick_mm, pen(row.ink, kStanding_mm)),
                Crowd::firm);
        }
        if (!row.feet_m.empty()) {
            draw_witness(board, row, i);
        }
    }
}

Words words_for(Board& board, const DimensionRow& row, std::size_t index,
                const PaperLine& stretch) {
    const std::string& text = row.words[index];
    return {text, reading_turn_rad(stretch.to - stretch.from),
            board.field.measure().width_mm(text, kLetter_mm, false), row.ink,
            row.crowd == Crowd::never ? kCrowdPrice : kCrossedPrice};
}

PaperLine stretch_of(const PlanFrame& frame, const DimensionRow& row, std::size_t index) {
    return {place_on_row(frame, row, row.stops_m[index]),
            place_on_row(frame, row, row.stops_m[index + 1])};
}

} // namespace

TapeStep tape_step(UnitSystem units) {
    return units == UnitSystem::metric ? TapeStep{Length::millimetres(5), "5 mm"}
                                       : TapeStep{Length::inches(0.25), "1/4 in"};
}

std::int64_t steps_of(Length size, UnitSystem units) {
    return std::llround(size / tape_step(units).step);
}

std::vector<std::int64_t> spread_steps(std::span<const Length> parts, UnitSystem units) {
    const Length step = tape_step(units).step;
    std::vector<std::int64_t> steps;
    std::vector<double> left_over;
    Length sum;
    for (const Length& part : parts) {
        const double exact = part / step;
        // A size that is a whole number of steps but for the last bits of the double is one.
        constexpr double kLastBits = 1e-6;
        steps.push_back(static_cast<std::int64_t>(std::floor(exact + kLastBits)));
        left_over.push_back(exact - static_cast<double>(steps.back()));
        sum += part;
    }
    std::vector<std::size_t> order(parts.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return left_over[a] > left_over[b]; });
    std::int64_t missing =
        steps_of(sum, units) - std::accumulate(steps.begin(), steps.end(), std::int64_t{0});
    for (std::size_t i = 0; i < order.size() && missing > 0; ++i, --missing) {
        ++steps[order[i]];
    }
    return steps;
}

std::string tape_text(std::int64_t steps, UnitSystem units) {
    if (units == UnitSystem::imperial) {
        return feet_inches(Length::inches(static_cast<double>(steps) / kQuarterInch.denominator),
                           kQuarterInch);
    }
    constexpr std::int64_t kStepsPerCentimetre = 2;
    const double metres = static_cast<double>(steps) * tape_step(units).step.m();
    return fixed(metres, steps % kStepsPerCentimetre == 0 ? 2 : 3);
}

std::string tape_text(Length size, UnitSystem units) {
    return tape_text(steps_of(size, units), units);
}

std::vector<std::string> chain_words(std::span<const double> stops_m, UnitSystem units) {
    std::vector<Length> parts;
    for (std::size_t i = 0; i + 1 < stops_m.size(); ++i) {
        parts.push_back(Length::metres(stops_m[i + 1] - stops_m[i]));
    }
    std::vector<std::string> words;
    for (const std::int64_t steps : spread_steps(parts, units)) {
        words.push_back(tape_text(steps, units));
    }
    return words;
}

void DimensionRows::add(DimensionRow row) {
    rows_.push_back(std::move(row));
}

std::optional<DimensionRow> overall_of(DimensionRow row, UnitSystem units) {
    if (row.stops_m.size() < 3) {
        return std::nullopt;
    }
    row.stops_m = {row.stops_m.front(), row.stops_m.back()};
    if (!row.feet_m.empty()) {
        row.feet_m = {row.feet_m.front(), row.feet_m.back()};
    }
    row.aside_mm += kRowPitch_mm;
    row.words = {tape_text(Length::metres(row.stops_m[1] - row.stops_m[0]), units)};
    return row;
}

void DimensionRows::add_with_overall(DimensionRow row, UnitSystem units) {
    std::optional<DimensionRow> overall = overall_of(row, units);
    add(std::move(row));
    if (overall) {
        add(*std::move(overall));
    }
}

void DimensionRows::lay_down() {
    for (const DimensionRow& row : rows_) {
        draw_lines(board_, row);
    }
    // Those that fit their stretch first, so that the others find what is left.
    for (const bool fitting : {true, false}) {
        for (const DimensionRow& row : rows_) {
            for (std::size_t i = 0; i < row.words.size(); ++i) {
                const PaperLine stretch = stretch_of(board_.frame, row, i);
                const Words words = words_for(board_, row, i, stretch);
                if ((words.width_mm + 2.0 * kAir_mm <= stretch.length_mm()) == fitting) {
                    set_words(board_, words, stretch);
                }
            }
        }
    }
    rows_.clear();
}

std::vector<Vec2> corners_of_words(const Vec2& at, double width_mm, double height_mm,
                                   double turn_rad) {
    const Vec2 across = paper_direction(turn_rad) * (width_mm / 2.0);
    const Vec2 up = paper_direction(turn_rad + std::numbers::pi / 2.0) * (height_mm / 2.0);
    return {at - across - up, at + across - up, at + across + up, at - across + up};
}

std::optional<double> crowding_of(Board& board, const DimensionRow& row) {
    double sum = 0.0;
    for (std::size_t i = 0; i < row.words.size(); ++i) {
        const PaperLine stretch = stretch_of(board.frame, row, i);
        const Words words = words_for(board, row, i, stretch);
        const auto offer = best_offer(board, words, stretch);
        if (!offer) {
            return std::nullopt;
        }
        sum += offer->cost;
        constexpr double kSample_mm = 1.0;
        const int samples = std::max(2, static_cast<int>(stretch.length_mm() / kSample_mm));
        for (int k = 1; k < samples; ++k) {
            const Vec2 at = stretch.from + (stretch.to - stretch.from) * k / samples;
            constexpr double kOverSymbol = 4.0;
            const Box dot{at.x() - 0.1, at.y() - 0.1, 0.2, 0.2};
            sum += board.field.crowding(dot).value_or(kOverSymbol);
        }
    }
    return sum;
}

} // namespace throwline::sheet
