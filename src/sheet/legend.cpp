#include "sheet/clouds.h"
#include "sheet/furniture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 2.5;
constexpr double kRow_mm = 5.4;
/// As high as a finding's lozenge.
constexpr double kLeastRow_mm = 4.4;
constexpr double kSample_mm = 10.0;
constexpr double kTwoColumnsFrom_mm = 100.0;
constexpr double kHeading_mm = 7.0;
constexpr double kFoot_mm = 1.25;

std::string_view words_for(LegendEntry entry) {
    switch (entry) {
    case LegendEntry::wall:
        return "Wall";
    case LegendEntry::door:
        return "Door and its swing";
    case LegendEntry::window:
        return "Window";
    case LegendEntry::flat:
        return "Flats, ticks behind";
    case LegendEntry::furniture:
        return "Furniture";
    case LegendEntry::riser:
        return "Platform";
    case LegendEntry::drape:
        return "Drape";
    case LegendEntry::person:
        return "Person, nose ahead";
    case LegendEntry::walk:
        return "Walk";
    case LegendEntry::camera:
        return "Camera";
    case LegendEntry::coverage:
        return "What a shot takes in";
    case LegendEntry::hung_lamp:
        return "Lamp, hung";
    case LegendEntry::standing_lamp:
        return "Lamp on a stand";
    case LegendEntry::practical:
        return "Practical";
    case LegendEntry::pool:
        return "Beam to half its peak";
    case LegendEntry::boom:
        return "Boom";
    case LegendEntry::outlet:
        return "Outlet, circuit";
    case LegendEntry::pipe:
        return "Pipe overhead";
    case LegendEntry::error:
        return "Must be put right";
    case LegendEntry::caution:
        return "Look at this";
    case LegendEntry::note:
        return "Worth knowing";
    case LegendEntry::revised:
        return "Revised";
    }
    return "";
}

/// Draws each entry's sample, kSample_mm wide, around a middle.
class Sample {
  public:
    Sample(Marks& marks, const Vec2& centre) : marks_{marks}, c_{centre} {}

    void draw(LegendEntry entry) const {
        switch (entry) {
        case LegendEntry::wall:
            return box(4.0, 0.9, pen(Ink::built, kBuilt_mm), solid(Ink::built, 0.38));
        case LegendEntry::door:
            return door();
        case LegendEntry::window:
            return window();
        case LegendEntry::flat:
            return flat();
        case LegendEntry::furniture:
            box(3.0, 1.5, pen(Ink::standing, kStanding_mm), {});
            return box(2.3, 0.8, pen(Ink::standing, kConstruction_mm), {});
        case LegendEntry::riser:
            return box(4.0, 1.6, pen(Ink::standing, kStanding_mm),
                       hatched(Ink::standing, Hatch::diagonal, 0.3));
        case LegendEntry::drape:
            return wave();
        case LegendEntry::person:
            return person();
        case LegendEntry::walk:
            return walk();
        case LegendEntry::camera:
            return camera();
        case LegendEntry::coverage:
            return coverage();
        case LegendEntry::hung_lamp:
        case LegendEntry::standing_lamp:
            return lamp(entry == LegendEntry::standing_lamp);
        case LegendEntry::practical:
            return practical();
        case LegendEntry::pool:
            return box(4.2, 1.7, pen(Ink::lamp, kConstruction_mm, LinePattern::long_dash),
                       solid(Ink::lamp, 0.12));
        case LegendEntry::boom:
            return boom();
        case LegendEntry::outlet:
            return box(1.3, 1.3, pen(Ink::power, kStanding_mm), {});
        case LegendEntry::pipe:
            add(line(at(-5.0, 0.0), at(5.0, 0.0),
                     pen(Ink::power, kConstruction_mm, LinePattern::dash_dot)));
            return;
        case LegendEntry::error:
            return add_lozenge(marks_, c_, 1, checks::Severity::error);
        case LegendEntry::caution:
            return add_lozenge(marks_, c_, 2, checks::Severity::caution);
        case LegendEntry::note:
            return add_lozenge(marks_, c_, 3, checks::Severity::note);
        case LegendEntry::revised:
            return revised();
        }
    }

  private:
    Vec2 at(double x_mm, double y_mm) const { return c_ + Vec2{x_mm, y_mm}; }
    void add(Mark mark) const { marks_.push_back(std::move(mark)); }
    void box(double half_x_mm, double half_y_mm, const Pen& edge, const Fill& fill) const {
        add(outline({at(-half_x_mm, -half_y_mm), at(half_x_mm, -half_y_mm),
                     at(half_x_mm, half_y_mm), at(-half_x_mm, half_y_mm)},
                    edge, fill));
    }
    void door() const {
        add(line(at(-2.0, 1.6), at(-2.0, -1.8), pen(Ink::built, kFine_mm)));
        add(open_path(arc_points(at(-2.0, 1.6), 3.4, 0.0, std::numbers::pi / 2.0),
                      pen(Ink::built, kConstruction_mm)));
    }
    void window() const {
        for (const double y : {-0.9, 0.0, 0.9}) {
            add(line(at(-4.0, y), at(4.0, y),
                     pen(Ink::built, y == 0.0 ? kConstruction_mm : kFine_mm)));
        }
    }
    void revised() const {
        const std::vector<Vec2> corners{at(-3.75, -1.25), at(-3.75, 1.25), at(-1.25, 1.25),
                                        at(1.25, 1.25),   at(3.75, 1.25),  at(3.75, -1.25),
                                        at(1.25, -1.25),  at(-1.25, -1.25)};
        std::vector<Vec2> points;
        for (std::size_t i = 0; i < corners.size(); ++i) {
            const auto arc = scallop(corners[i], corners[(i + 1) % corners.size()]);
            points.insert(points.end(), arc.begin(), arc.end() - 1);
        }
        add(outline(points, pen(Ink::lettering, kStanding_mm)));
    }
    void flat() const {
        box(4.0, 0.5, pen(Ink::built, kBuilt_mm), solid(Ink::built, 0.6));
        for (const double x : {-4.0, 0.0, 4.0}) {
            add(line(at(x, -0.5), at(x, -1.8), pen(Ink::built, kFine_mm)));
        }
    }
    void walk() const {
        add(line(at(-4.5, 0.0), at(4.5, 0.0), pen(Ink::people, kStanding_mm, LinePattern::dot)));
        add(open_path({at(-0.5, -1.1), at(1.0, 0.0), at(-0.5, 1.1)}, pen(Ink::people, kFine_mm)));
    }
    void coverage() const {
        add(outline({at(-4.5, 0.0), at(4.5, -1.8), at(4.5, 1.8)}, no_pen(),
                    solid(Ink::camera, 0.07)));
        add(open_path({at(4.5, -1.8), at(-4.5, 0.0), at(4.5, 1.8)},
                      pen(Ink::camera, kConstruction_mm)));
    }
    void practical() const {
        add(Circle{c_, 1.7, pen(Ink::built, kStanding_mm), solid(Ink::lamp, 0.3)});
        add(line(at(-1.2, -1.2), at(1.2, 1.2), pen(Ink::built, kFine_mm)));
        add(line(at(-1.2, 1.2), at(1.2, -1.2), pen(Ink::built, kFine_mm)));
    }
    void boom() const {
        add(line(at(-4.5, 0.0), at(4.0, 0.0),
                 pen(Ink::sound, kStanding_mm, LinePattern::dash_dot)));
        add(line(at(4.0, -1.5), at(4.0, 1.5), pen(Ink::sound, 1.0)));
    }
    void wave() const {
        std::vector<Vec2> points;
        for (int i = 0; i <= 32; ++i) {
            points.push_back(at(-4.0 + 0.25 * i, 0.9 * std::sin(2.0 * std::numbers::pi * i / 8.0)));
        }
        add(open_path(points, pen(Ink::standing, kStanding_mm)));
    }
    void person() const {
        const Pen edge = pen(Ink::people, kStanding_mm);
        std::vector<Vec2> shoulders;
        for (int i = 0; i < 24; ++i) {
            const double turn = 2.0 * std::numbers::pi * i / 24.0;
            shoulders.push_back(at(1.1 * std::cos(turn), 2.1 * std::sin(turn)));
        }
        add(outline(shoulders, edge, solid(Ink::people, 0.22)));
        add(Circle{c_, 0.9, edge, solid(Ink::paper)});
        add(outline({at(0.8, -0.4), at(1.8, 0.0), at(0.8, 0.4)}, edge, solid(Ink::people)));
    }
    void camera() const {
        const Pen edge = pen(Ink::camera, kStanding_mm);
        add(outline({at(-3.5, -1.1), at(0.5, -1.1), at(0.5, 1.1), at(-3.5, 1.1)}, edge,
                    solid(Ink::camera, 0.3)));
        add(outline({at(0.5, -0.6), at(2.5, -1.5), at(2.5, 1.5), at(0.5, 0.6)}, edge));
    }
    void lamp(bool on_stand) const {
        if (on_stand) {
            add(Circle{c_, 2.2, pen(Ink::built, kConstruction_mm), {}});
        }
        box(1.8, 1.2, pen(Ink::built, kStanding_mm), solid(Ink::lamp, 0.45));
        add(line(at(1.8, -1.2), at(1.8, 1.2), pen(Ink::lamp, 0.8)));
        if (!on_stand) {
            add(Circle{at(-0.6, 0.0), 0.6, pen(Ink::built, kFine_mm), solid(Ink::built)});
        }
    }

    Marks& marks_;
    Vec2 c_;
};

/// Given up in this order where the box is low: first what a reader knows without a legend.
constexpr std::array kGivenUp{LegendEntry::wall,      LegendEntry::door,   LegendEntry::window,
                              LegendEntry::furniture, LegendEntry::drape,  LegendEntry::boom,
                              LegendEntry::practical, LegendEntry::flat,   LegendEntry::riser,
                              LegendEntry::pipe,      LegendEntry::outlet, LegendEntry::walk};
/// As many of these are given up before the legend asks for more height.
constexpr std::size_t kGladlyGivenUp = 7;

int columns_in(double width_mm) {
    return width_mm >= kTwoColumnsFrom_mm ? 2 : 1;
}

int rows_in(const std::set<LegendEntry>& used, double width_mm) {
    const int columns = columns_in(width_mm);
    return (static_cast<int>(used.size()) + columns - 1) / columns;
}

/// The entries without what a reader knows anyway.
std::set<LegendEntry> without_known(std::set<LegendEntry> used) {
    for (std::size_t i = 0; i < kGladlyGivenUp; ++i) {
        used.erase(kGivenUp[i]);
    }
    return used;
}

/// The entries that a box takes.
std::set<LegendEntry> fitting(std::set<LegendEntry> used, const Box& box) {
    for (const LegendEntry entry : kGivenUp) {
        if (kHeading_mm + kLeastRow_mm * rows_in(used, box.width) + kFoot_mm > box.height) {
            used.erase(entry);
        }
    }
    return used;
}

} // namespace

double legend_height_mm(const std::set<LegendEntry>& used, double width_mm, double most_mm) {
    const double wanted_mm = kHeading_mm + kRow_mm * rows_in(used, width_mm) + kFoot_mm;
    const double least_mm =
        kHeading_mm + kLeastRow_mm * rows_in(without_known(used), width_mm) + kFoot_mm;
    return std::clamp(most_mm, std::min(least_mm, wanted_mm), wanted_mm);
}

void draw_legend(Marks& marks, const Box& box, const std::set<LegendEntry>& used) {
    marks.emplace_back(Text{"Legend",
                            {box.left + kPad_mm, box.top + kPad_mm + kLetter_mm},
                            kLetter_mm,
                            TextAnchor::start,
                            0.0,
                            true,
                            Ink::lettering});
    const std::set<LegendEntry> shown = fitting(used, box);
    const int rows = std::max(1, rows_in(shown, box.width));
    const double column_mm = box.width / columns_in(box.width);
    // A low box sets its rows closer before it loses any.
    const double row_mm = std::min(kRow_mm, (box.height - kHeading_mm - kFoot_mm) / rows);
    int index = 0;
    for (const LegendEntry entry : shown) {
        const int column = index / rows;
        const double left_mm = box.left + kPad_mm + column_mm * column;
        const double middle_mm = box.top + kHeading_mm + row_mm * (index % rows + 0.5);
        Sample{marks, {left_mm + kSample_mm / 2.0, middle_mm}}.draw(entry);
        marks.emplace_back(Text{std::string{words_for(entry)},
                                {left_mm + kSample_mm + 1.5, middle_mm + kLetter_mm / 2.0},
                                kLetter_mm,
                                TextAnchor::start,
                                0.0,
                                false,
                                Ink::lettering});
        ++index;
    }
}

} // namespace throwline::sheet
