/// What kinds of rows are called, and what goes into their fields.

#include "survey/recce_rows.h"

namespace throwline::survey {

namespace {

constexpr std::string_view kLengthHint = "a length, such as 3.2 m, 320cm or 10ft 6in";

struct Hints {
    std::string_view from;
    std::string_view to;
    std::string_view reading;
    std::string_view note;
};

Hints hints_of(RowKind kind) {
    switch (kind) {
    case RowKind::corners:
        return {{}, {}, "names in walking order: A B C D; clockwise behind them if walked so", {}};
    case RowKind::reading:
        return {"corner or point", "corner or point", kLengthHint, "a remark"};
    case RowKind::along:
        return {"corner read from",
                "corner at the other end",
                "wall 1ft 7in, door 81cm high 2.03m, wall 2m; rest when the rest was not read",
                {}};
    case RowKind::height:
        return {"corner or point, or nothing", {}, kLengthHint, {}};
    case RowKind::square:
        return {{}, {}, "corners believed to be square: B C, or all", {}};
    case RowKind::floor_point:
        return {"the point's name", {}, "A 2.31m, B 3.08m, C 2.93m", {}};
    case RowKind::outlet:
        return {"corner read from", "corner at the other end", "6ft up 14in", "circuit"};
    case RowKind::note:
        return {"power, breaker, noise, sun, light, access or nothing", {}, "what was noticed", {}};
    case RowKind::bearing:
        return {"first corner", "second corner", "95deg, clockwise from true north", {}};
    case RowKind::solid:
        return {"the thing's name", {}, "its corners, then its height: p q r s high 36in", {}};
    case RowKind::round:
        return {"the thing's name", {}, "its middle and size: p across 20cm high 1m", {}};
    case RowKind::point:
        return {"the point's name", {}, "outside, when it lies outside the room", {}};
    case RowKind::units:
        return {{}, {}, "what a bare number is: m, cm, mm, ft or in", {}};
    case RowKind::tape:
        return {{}, {}, "how good a reading is: 2mm + 0.5mm/m", {}};
    case RowKind::squareness:
        return {{}, {}, "how well corners are square: 0.5deg", {}};
    case RowKind::remark:
        return {{}, {}, "words for whoever reads the page", {}};
    case RowKind::unclear:
        return {{}, {}, "the line as it was typed", {}};
    }
    return {};
}

} // namespace

std::string_view name_of(RowKind kind) {
    switch (kind) {
    case RowKind::corners:
        return "corners";
    case RowKind::reading:
        return "reading";
    case RowKind::along:
        return "along a wall";
    case RowKind::height:
        return "ceiling";
    case RowKind::square:
        return "square";
    case RowKind::floor_point:
        return "floor point";
    case RowKind::outlet:
        return "outlet";
    case RowKind::note:
        return "site note";
    case RowKind::bearing:
        return "bearing";
    case RowKind::solid:
        return "solid";
    case RowKind::round:
        return "round";
    case RowKind::point:
        return "point";
    case RowKind::units:
        return "units";
    case RowKind::tape:
        return "tape";
    case RowKind::squareness:
        return "squareness";
    case RowKind::remark:
        return "remark";
    case RowKind::unclear:
        return "unclear";
    }
    return {};
}

std::string_view field_hint(RowKind kind, RowField field) {
    const Hints hints = hints_of(kind);
    switch (field) {
    case RowField::from:
        return hints.from;
    case RowField::to:
        return hints.to;
    case RowField::reading:
        return hints.reading;
    case RowField::note:
        return hints.note;
    }
    return {};
}

bool is_whole(const RecceRow& row) {
    const auto has = [](const std::string& text) { return !text.empty(); };
    switch (row.kind) {
    case RowKind::reading:
    case RowKind::along:
    case RowKind::bearing:
        return has(row.from) && has(row.to) && has(row.reading);
    case RowKind::outlet:
        return has(row.from) && has(row.to) && has(row.reading) && has(row.note);
    case RowKind::floor_point:
    case RowKind::solid:
    case RowKind::round:
        return has(row.from) && has(row.reading);
    case RowKind::point:
        return has(row.from);
    case RowKind::corners:
    case RowKind::height:
    case RowKind::square:
    case RowKind::units:
    case RowKind::tape:
    case RowKind::squareness:
    case RowKind::note:
    case RowKind::remark:
    case RowKind::unclear:
        return has(row.reading);
    }
    return false;
}

} // namespace throwline::survey
