#include "plan/places.h"

#include <algorithm>
#include <optional>

namespace throwline::plan {

namespace {

constexpr int kLetters = 26;
/// Neither columns nor rows go beyond this; it keeps the counting below far from overflow.
constexpr int kLargestCount = 100'000;

bool is_letter(char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

int letter_value(char c) {
    return (c >= 'a' ? c - 'a' : c - 'A') + 1;
}

/// A = 0, Z = 25, AA = 26; -1 when there are no letters, or too many.
int column_of(std::string_view letters) {
    int column = 0;
    for (const char c : letters) {
        column = column * kLetters + letter_value(c);
        if (column > kLargestCount) {
            return -1;
        }
    }
    return column - 1;
}

/// "1" = 0; -1 for none, too large, or a leading zero, so that every place has one name.
int row_of(std::string_view digits) {
    if (digits.empty() || digits.front() == '0') {
        return -1;
    }
    int row = 0;
    for (const char c : digits) {
        row = row * 10 + (c - '0');
        if (row > kLargestCount) {
            return -1;
        }
    }
    return row - 1;
}

} // namespace

std::string grid_name(int column, int row) {
    std::string letters;
    for (int rest = column + 1; rest > 0; rest = (rest - 1) / kLetters) {
        letters.insert(letters.begin(), static_cast<char>('A' + (rest - 1) % kLetters));
    }
    return letters + std::to_string(row + 1);
}

std::optional<Vec2> grid_point(const Grid& grid, std::string_view position) {
    const auto split = std::find_if_not(position.begin(), position.end(), is_letter);
    if (!std::all_of(split, position.end(), is_digit)) {
        return std::nullopt;
    }
    const auto letters = static_cast<std::size_t>(split - position.begin());
    const int column = column_of(position.substr(0, letters));
    const int row = row_of(position.substr(letters));
    if (column < 0 || column >= grid.columns || row < 0 || row >= grid.rows) {
        return std::nullopt;
    }
    const Vec2 in_grid{column * grid.pitch_x.m(), row * grid.pitch_y.m()};
    return Vec2{grid.origin + rotated(in_grid, grid.turn.rad())};
}

} // namespace throwline::plan
