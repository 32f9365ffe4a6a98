#include "sheet/level_picture.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace throwline::sheet {

namespace {

/// 1 fc in lux: one lumen a square foot.
const double kFootcandle_lx = 1.0 / (0.3048 * 0.3048);
/// Contours lie at these shares of a decade.
constexpr std::array kSteps{1.0, 2.0, 5.0};
constexpr std::size_t kMostContours = 7;

/// Round values below the highest level, in the crew's unit, from the highest down.
std::vector<double> contour_values(double highest_lx, UnitSystem units) {
    const double unit_lx = units == UnitSystem::metric ? 1.0 : kFootcandle_lx;
    std::vector<double> values;
    const double highest = highest_lx / unit_lx;
    if (!(highest > 0.0)) {
        return values;
    }
    const int decade = static_cast<int>(std::floor(std::log10(highest)));
    for (int power = decade; power > decade - 4; --power) {
        for (auto step = kSteps.rbegin(); step != kSteps.rend(); ++step) {
            const double value = *step * std::pow(10.0, power);
            if (value < highest && values.size() < kMostContours) {
                values.push_back(value * unit_lx);
            }
        }
    }
    return values;
}

/// Where between two neighbouring values another lies.
double share_between(double from, double to, double value) {
    return to == from ? 0.5 : std::clamp((value - from) / (to - from), 0.0, 1.0);
}

using Segment = std::pair<Vec2, Vec2>;

/// Joins pieces that share ends into lines.
std::vector<std::vector<Vec2>> joined(const std::vector<Segment>& segments) {
    using Key = std::pair<std::int64_t, std::int64_t>;
    const auto key = [](const Vec2& at) {
        return Key{std::llround(at.x() * 4096.0), std::llround(at.y() * 4096.0)};
    };
    std::multimap<Key, std::size_t> ends;
    for (std::size_t i = 0; i < segments.size(); ++i) {
        ends.emplace(key(segments[i].first), i);
        ends.emplace(key(segments[i].second), i);
    }
    std::vector<bool> used(segments.size(), false);
    const auto grow = [&](std::vector<Vec2>& line) {
        while (true) {
            const auto [begin, end] = ends.equal_range(key(line.back()));
            const auto next =
                std::find_if(begin, end, [&](const auto& entry) { return !used[entry.second]; });
            if (next == end) {
                return;
            }
            const Segment& segment = segments[next->second];
            used[next->second] = true;
            line.push_back(key(segment.first) == key(line.back()) ? segment.second : segment.first);
        }
    };
    std::vector<std::vector<Vec2>> lines;
    for (std::size_t i = 0; i < segments.size(); ++i) {
        if (used[i]) {
            continue;
        }
        used[i] = true;
        std::vector<Vec2> line{segments[i].first, segments[i].second};
        grow(line);
        std::reverse(line.begin(), line.end());
        grow(line);
        lines.push_back(std::move(line));
    }
    return lines;
}

std::shared_ptr<const Pixels> tones_of(const stage::LevelMap& map, double highest_lx) {
    auto pixels = std::make_shared<Pixels>();
    pixels->width = map.columns;
    pixels->height = map.rows;
    pixels->rgb.resize(static_cast<std::size_t>(3 * map.columns * map.rows));
    std::size_t out = 0;
    for (int row = map.rows - 1; row >= 0; --row) {
        for (int column = 0; column < map.columns; ++column) {
            const double level =
                map.levels_lx[static_cast<std::size_t>(row * map.columns + column)];
            // The eye tells shares apart, not differences: over four stops and more, evenly.
            const double share =
                highest_lx > 0.0 ? std::sqrt(std::clamp(level / highest_lx, 0.0, 1.0)) : 0.0;
            for (const std::uint8_t channel : level_colour(share)) {
                pixels->rgb[out++] = channel;
            }
        }
    }
    return pixels;
}

} // namespace

std::array<std::uint8_t, 3> level_colour(double share) {
    // Every eighth of the published table.
    static constexpr std::array<std::array<double, 3>, 9> kTable{{{0, 34, 78},
                                                                  {8, 51, 112},
                                                                  {53, 69, 108},
                                                                  {82, 88, 108},
                                                                  {107, 108, 113},
                                                                  {134, 129, 119},
                                                                  {163, 151, 115},
                                                                  {195, 176, 101},
                                                                  {254, 232, 56}}};
    const double at = std::clamp(share, 0.0, 1.0) * (kTable.size() - 1.0);
    const auto index = std::min(static_cast<std::size_t>(at), kTable.size() - 2);
    const double rest = at - static_cast<double>(index);
    std::array<std::uint8_t, 3> colour{};
    for (std::size_t i = 0; i < 3; ++i) {
        colour[i] = static_cast<std::uint8_t>(
            std::lround(kTable[index][i] * (1.0 - rest) + kTable[index + 1][i] * rest));
    }
    return colour;
}

std::vector<std::vector<Vec2>> contour_lines(const std::vector<double>& values, int columns,
                                             int rows, double value) {
    const auto at = [&](int column, int row) {
        return values[static_cast<std::size_t>(row * columns + column)];
    };
    std::vector<Segment> segments;
    for (int row = 0; row + 1 < rows; ++row) {
        for (int column = 0; column + 1 < columns; ++column) {
            const std::array<double, 4> corner{at(column, row), at(column + 1, row),
                                               at(column + 1, row + 1), at(column, row + 1)};
            const std::array<Vec2, 4> place{
                Vec2{column, row}, {column + 1, row}, {column + 1, row + 1}, {column, row + 1}};
            std::vector<Vec2> crossings;
            for (std::size_t side = 0; side < 4; ++side) {
                const std::size_t next = (side + 1) % 4;
                if ((corner[side] < value) != (corner[next] < value)) {
                    crossings.push_back(place[side]
                                        + (place[next] - place[side])
                                              * share_between(corner[side], corner[next], value));
                }
            }
            // A saddle has four crossings: its lines part what is above in the middle, or join it.
            if (crossings.size() == 4
                && ((corner[0] + corner[1] + corner[2] + corner[3]) / 4.0 < value)
                       != (corner[0] < value)) {
                std::rotate(crossings.begin(), crossings.begin() + 1, crossings.end());
            }
            for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
                segments.emplace_back(crossings[i], crossings[i + 1]);
            }
        }
    }
    return joined(segments);
}

LevelPicture level_picture(const stage::LevelMap& map, UnitSystem units) {
    LevelPicture picture;
    if (map.columns < 2 || map.rows < 2) {
        return picture;
    }
    picture.highest_lx = *std::max_element(map.levels_lx.begin(), map.levels_lx.end());
    picture.height_m = map.height_m;
    picture.pixels = tones_of(map, picture.highest_lx);
    const Vec2 half = Vec2::Constant(map.spacing_m / 2.0);
    picture.low = map.low - half;
    picture.high = map.at(map.columns - 1, map.rows - 1) + half;
    for (const double value : contour_values(picture.highest_lx, units)) {
        Contour contour{value, contour_lines(map.levels_lx, map.columns, map.rows, value)};
        for (std::vector<Vec2>& line : contour.lines) {
            for (Vec2& point : line) {
                point = map.low + point * map.spacing_m;
            }
        }
        picture.contours.push_back(std::move(contour));
    }
    return picture;
}

} // namespace throwline::sheet
