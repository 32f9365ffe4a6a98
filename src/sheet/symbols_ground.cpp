#include "sheet/symbols.h"

#include "base/length_text.h"
#include "plan/places.h"
#include "sheet/text_box.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::sheet {

namespace {

constexpr double kMetricSquare_m = 1.0;
constexpr double kImperialSquare_m = 1.2192;
/// Distance of letters, then of dimension lines, from the walls.
constexpr double kLettersOut_mm = 4.5;
constexpr double kSizesOut_mm = 6.0;

/// The raster of squares: an origin, two pitches and a turn.
struct Raster {
    Vec2 origin = Vec2::Zero();
    double pitch_x_m = kMetricSquare_m;
    double pitch_y_m = kMetricSquare_m;
    double turn_rad = 0.0;
};

Raster raster_of(const plan::Plan& plan) {
    if (plan.grid && plan.grid->pitch_x.m() > 0.0 && plan.grid->pitch_y.m() > 0.0) {
        return {plan.grid->origin, plan.grid->pitch_x.m(), plan.grid->pitch_y.m(),
                plan.grid->turn.rad()};
    }
    const double square_m = plan.units == UnitSystem::metric ? kMetricSquare_m : kImperialSquare_m;
    return {plan.room.outline.front(), square_m, square_m, 0.0};
}

/// Parts of the line through `through` along `angle_rad` that lie inside an outline (even-odd).
std::vector<LineSegment> inside_parts(std::span<const Vec2> outline, const Vec2& through,
                                      double angle_rad) {
    const Vec2 direction = unit_at(angle_rad);
    const Vec2 normal = turned_left(direction);
    std::vector<double> along;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 a = outline[i] - through;
        const Vec2 b = outline[(i + 1) % outline.size()] - through;
        const double side_a = a.dot(normal);
        const double side_b = b.dot(normal);
        if ((side_a <= 0.0) != (side_b <= 0.0)) {
            along.push_back((a + (b - a) * (side_a / (side_a - side_b))).dot(direction));
        }
    }
    std::sort(along.begin(), along.end());
    std::vector<LineSegment> parts;
    for (std::size_t i = 0; i + 1 < along.size(); i += 2) {
        if (along[i] < along[i + 1]) { // A corner that is only touched has no part inside.
            parts.emplace_back(through + direction * along[i], through + direction * along[i + 1]);
        }
    }
    return parts;
}

/// The raster's lines in one direction across the room.
void draw_squares(Board& board, std::span<const Vec2> outline, const Vec2& origin, double pitch_m,
                  double line_angle_rad) {
    constexpr double kMostLines = 400.0;
    const Vec2 across = turned_left(unit_at(line_angle_rad));
    double low = 0.0;
    double high = 0.0;
    for (const Vec2& corner : outline) {
        low = std::min(low, (corner - origin).dot(across));
        high = std::max(high, (corner - origin).dot(across));
    }
    if ((high - low) / pitch_m > kMostLines) {
        return;
    }
    for (double n = std::ceil(low / pitch_m); n * pitch_m <= high; n += 1.0) {
        for (const auto& [from, to] :
             inside_parts(outline, origin + across * (n * pitch_m), line_angle_rad)) {
            board.add(PlanLayer::ground, line(board.frame.at(from), board.frame.at(to),
                                              pen(Ink::ground, kHair_mm, LinePattern::solid, 0.6)));
        }
    }
}

void draw_pipe(Board& board, const Vec2& from, const Vec2& to) {
    board.add(PlanLayer::ground,
              line(board.frame.at(from), board.frame.at(to),
                   pen(Ink::power, kConstruction_mm, LinePattern::dash_dot)),
              Crowd::light);
    board.used.insert(LegendEntry::pipe);
}

Vec2 grid_place(const plan::Grid& grid, int column, int row) {
    return grid.origin
           + rotated(Vec2{column * grid.pitch_x.m(), row * grid.pitch_y.m()}, grid.turn.rad());
}

void draw_grid_pipes(Board& board, const plan::Grid& grid) {
    if (grid.run != plan::PipeRun::along_numbers) {
        for (int row = 0; row < grid.rows; ++row) {
            draw_pipe(board, grid_place(grid, 0, row), grid_place(grid, grid.columns - 1, row));
        }
    }
    if (grid.run != plan::PipeRun::along_letters) {
        for (int column = 0; column < grid.columns; ++column) {
            draw_pipe(board, grid_place(grid, column, 0), grid_place(grid, column, grid.rows - 1));
        }
    }
}

/// From a point inside a box along a direction to its edge.
Vec2 out_of(const Box& box, const Vec2& from, const Vec2& direction) {
    double reach = box.width + box.height;
    if (direction.x() != 0.0) {
        const double edge = direction.x() > 0.0 ? box.right() : box.left;
        reach = std::min(reach, (edge - from.x()) / direction.x());
    }
    if (direction.y() != 0.0) {
        const double edge = direction.y() > 0.0 ? box.bottom() : box.top;
        reach = std::min(reach, (edge - from.y()) / direction.y());
    }
    return from + direction * std::max(0.0, reach);
}

Box paper_box(const PlanFrame& frame, const Extent& extent) {
    const Vec2 top_left = frame.at(Vec2{extent.low.x(), extent.high.y()});
    return {top_left.x(), top_left.y(), frame.mm(extent.size().x()), frame.mm(extent.size().y())};
}

Text grid_letter(const std::string& letter, const Vec2& at) {
    return {
        letter,        at + Vec2{0.0, kLetter_mm / 2.0}, kLetter_mm, TextAnchor::middle, 0.0, true,
        Ink::dimension};
}

/// Letters a row of positions at even distances; where they would touch, every second, third, ...
void add_grid_letters(Board& board, const std::vector<Text>& row) {
    constexpr double kApart_mm = 0.6;
    Vec2 widest = Vec2::Zero();
    for (const Text& letter : row) {
        const Box box = text_box(letter, board.field.measure());
        widest = widest.cwiseMax(Vec2{box.width + kApart_mm, box.height + kApart_mm});
    }
    const Vec2 apart =
        row.size() > 1 ? Vec2{(row[1].at - row[0].at).cwiseAbs()} : Vec2::Constant(1.0);
    const double steps =
        std::min(widest.x() / std::max(apart.x(), 1e-6), widest.y() / std::max(apart.y(), 1e-6));
    const auto every = static_cast<std::size_t>(
        std::clamp(std::ceil(steps), 1.0, static_cast<double>(row.size())));
    for (std::size_t i = 0; i < row.size(); i += every) {
        if (board.field.crowding(text_box(row[i], board.field.measure()))) {
            board.add(PlanLayer::lettering, row[i], Crowd::never);
        }
    }
}

/// Where the words stand on the line: its middle, else where no other lettering is.
Text size_text(const Board& board, const Vec2& from, const Vec2& to, const std::string& words) {
    const Vec2 along = to - from;
    const bool upright = std::abs(along.y()) > std::abs(along.x());
    const Vec2 beside = upright ? Vec2{-1.0, 0.0} : Vec2{0.0, -1.0};
    Text text{words,
              Vec2::Zero(),
              kLetter_mm,
              TextAnchor::middle,
              upright ? std::numbers::pi / 2.0 : 0.0,
              false,
              Ink::dimension};
    for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
        text.at = from + along * share + beside;
        if (board.field.crowding(text_box(text, board.field.measure()))) {
            return text;
        }
    }
    text.at = from + along / 2.0 + beside;
    return text;
}

void add_size_line(Board& board, const Vec2& from, const Vec2& to, const std::string& words) {
    constexpr double kTick_mm = 1.2;
    const Pen fine = pen(Ink::dimension, kConstruction_mm);
    const Vec2 along = (to - from).normalized();
    board.add(PlanLayer::lettering, size_text(board, from, to, words), Crowd::never);
    board.add(PlanLayer::lettering, line(from, to, fine), Crowd::never);
    for (const Vec2& end : {from, to}) {
        const Vec2 slant = rotated(along, std::numbers::pi / 4.0) * kTick_mm;
        board.add(PlanLayer::lettering,
                  line(end - slant, end + slant, pen(Ink::dimension, kFine_mm)));
    }
}

} // namespace

void draw_ground(Board& board, const plan::Plan& plan) {
    if (plan.room.outline.size() < 3) {
        return;
    }
    const Raster raster = raster_of(plan);
    draw_squares(board, plan.room.outline, raster.origin, raster.pitch_y_m, raster.turn_rad);
    draw_squares(board, plan.room.outline, raster.origin, raster.pitch_x_m,
                 raster.turn_rad + std::numbers::pi / 2.0);
    if (plan.grid) {
        draw_grid_pipes(board, *plan.grid);
    }
    for (const plan::Pipe& pipe : plan.pipes) {
        draw_pipe(board, pipe.from, pipe.to);
    }
}

void letter_grid(Board& board, const plan::Plan& plan, const Extent& extent) {
    if (!plan.grid || plan.grid->columns < 1 || plan.grid->rows < 1) {
        return;
    }
    const plan::Grid& grid = *plan.grid;
    const Box around = paper_box(board.frame, extent).inset(-kLettersOut_mm);
    const Vec2 up = paper_direction(grid.turn.rad() + std::numbers::pi / 2.0);
    const Vec2 left = paper_direction(grid.turn.rad() + std::numbers::pi);
    std::vector<Text> letters;
    for (int column = 0; column < grid.columns; ++column) {
        const std::string name = plan::grid_name(column, 0);
        const Vec2 from = board.frame.at(grid_place(grid, column, grid.rows - 1));
        letters.push_back(grid_letter(name.substr(0, name.find_first_of("0123456789")),
                                      out_of(around, from, up)));
    }
    add_grid_letters(board, letters);
    std::vector<Text> numbers;
    for (int row = 0; row < grid.rows; ++row) {
        const std::string name = plan::grid_name(0, row);
        const Vec2 from = board.frame.at(grid_place(grid, 0, row));
        numbers.push_back(
            grid_letter(name.substr(name.find_first_of("0123456789")), out_of(around, from, left)));
    }
    add_grid_letters(board, numbers);
}

void draw_overall_sizes(Board& board, const plan::Plan& plan, const Extent& extent) {
    Extent inside;
    for (const Vec2& corner : plan.room.outline) {
        inside.include(corner);
    }
    if (inside.empty) {
        return;
    }
    const Box walls = paper_box(board.frame, inside);
    const Box around = paper_box(board.frame, extent).inset(-kSizesOut_mm);
    add_size_line(board, {walls.left, around.bottom()}, {walls.right(), around.bottom()},
                  shown(Length::metres(inside.size().x()), plan.units));
    add_size_line(board, {around.right(), walls.bottom()}, {around.right(), walls.top},
                  shown(Length::metres(inside.size().y()), plan.units));
}

} // namespace throwline::sheet
