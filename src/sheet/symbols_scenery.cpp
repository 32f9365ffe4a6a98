#include "sheet/symbols.h"

#include "base/length_text.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

using plan::Scenery;

constexpr Pen kEdge = {Ink::standing, kStanding_mm, LinePattern::solid, 1.0};
constexpr Pen kDetail = {Ink::standing, kConstruction_mm, LinePattern::solid, 1.0};
constexpr Fill kPaper = {Ink::paper, Hatch::solid, 1.0};

/// Half the paper width and height that an outline takes up.
Vec2 half_size(const std::vector<Vec2>& corners) {
    Extent extent;
    for (const Vec2& corner : corners) {
        extent.include(corner);
    }
    return extent.size() / 2.0;
}

/// Draws one piece of scenery by its shape.
class SceneryDrawer {
  public:
    SceneryDrawer(Board& board, const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                  const Scenery& scenery)
        : board_{board}, plan_{plan}, catalogue_{catalogue}, scenery_{scenery} {}

    void operator()(const plan::FlatRun& run) const {
        const ThingFrame thing{board_.frame, run.from, run.heading.rad()};
        const double width_m = run.total_width().m();
        const double back_m = -run.thickness.m();
        add(PlanLayer::built,
            outline(thing.box(0.0, back_m, width_m, 0.0), pen(Ink::built, kBuilt_mm),
                    solid(Ink::built, 0.6)),
            Crowd::never);
        double joint_m = 0.0;
        for (std::size_t i = 0; i <= run.widths.size(); ++i) {
            const double tick_m = 1.5 / board_.frame.mm_per_m;
            add(PlanLayer::built,
                line(thing.at(joint_m, back_m), thing.at(joint_m, back_m - tick_m),
                     pen(Ink::built, kFine_mm)),
                Crowd::never);
            joint_m += i < run.widths.size() ? run.widths[i].m() : 0.0;
        }
        board_.used.insert(LegendEntry::flat);
        label(thing.at(width_m / 2.0, back_m), Vec2::Constant(1.8),
              fmt::format("h {}", height_text(run.height)), false);
    }

    void operator()(const plan::StockPiece& piece) const {
        const catalogue::StockItem* item = catalogue_.stock_item(piece.item);
        if (item == nullptr) {
            return;
        }
        const ThingFrame thing{board_.frame, piece.at, piece.turn.rad()};
        const double half_x_m = item->width.m() / 2.0;
        const double half_y_m = item->depth.m() / 2.0;
        if (item->shape == catalogue::StockShape::round) {
            add(PlanLayer::standing,
                Circle{thing.at(0.0, 0.0), board_.frame.mm(half_x_m), kEdge, kPaper}, Crowd::firm);
            add(PlanLayer::standing,
                Circle{thing.at(0.0, 0.0), board_.frame.mm(half_x_m * 0.82), kDetail, {}},
                Crowd::light);
        } else {
            add(PlanLayer::standing,
                outline(thing.box(-half_x_m, -half_y_m, half_x_m, half_y_m), kEdge, kPaper),
                Crowd::firm);
            if (item->shape == catalogue::StockShape::stairs) {
                draw_treads(thing, half_x_m, half_y_m);
            } else {
                draw_inside(*item, thing, half_x_m, half_y_m);
            }
        }
        board_.used.insert(item->use == catalogue::StockUse::platform ? LegendEntry::riser
                                                                      : LegendEntry::furniture);
        label(thing.at(0.0, 0.0), half_size(thing.box(-half_x_m, -half_y_m, half_x_m, half_y_m)),
              {}, true);
    }

    void operator()(const plan::BoxPiece& box) const {
        const ThingFrame thing{board_.frame, box.at, box.turn.rad()};
        const double x_m = box.width.m() / 2.0;
        const double y_m = box.depth.m() / 2.0;
        add(PlanLayer::standing, outline(thing.box(-x_m, -y_m, x_m, y_m), kEdge, kPaper),
            Crowd::firm);
        add(PlanLayer::standing, line(thing.at(-x_m, -y_m), thing.at(x_m, y_m), kDetail),
            Crowd::light);
        board_.used.insert(LegendEntry::furniture);
        label(thing.at(0.0, 0.0), half_size(thing.box(-x_m, -y_m, x_m, y_m)), {}, true);
    }

    void operator()(const plan::CylinderPiece& cylinder) const {
        const double radius_mm = board_.frame.mm(cylinder.diameter.m() / 2.0);
        const Vec2 centre = board_.frame.at(cylinder.at);
        add(PlanLayer::standing, Circle{centre, radius_mm, kEdge, kPaper}, Crowd::firm);
        board_.used.insert(LegendEntry::furniture);
        label(centre, Vec2::Constant(radius_mm), {}, true);
    }

    void operator()(const plan::PrismPiece& prism) const {
        if (prism.outline.size() < 3) {
            return;
        }
        add(PlanLayer::standing, outline(board_.frame.at(prism.outline), kEdge, kPaper),
            Crowd::firm);
        board_.used.insert(LegendEntry::furniture);
        label(board_.frame.at(centroid(prism.outline)), half_size(board_.frame.at(prism.outline)),
              {}, true);
    }

    void operator()(const plan::Riser& riser) const {
        const ThingFrame thing{board_.frame, riser.at, riser.turn.rad()};
        const double x_m = riser.width.m() / 2.0;
        const double y_m = riser.depth.m() / 2.0;
        const std::vector<Vec2> corners = thing.box(-x_m, -y_m, x_m, y_m);
        add(PlanLayer::standing, outline(corners, no_pen(), kPaper));
        add(PlanLayer::standing,
            outline(corners, kEdge, hatched(Ink::standing, Hatch::diagonal, 0.3)), Crowd::firm);
        board_.used.insert(LegendEntry::riser);
        label(thing.at(0.0, 0.0), half_size(corners), fmt::format("+{}", height_text(riser.height)),
              false);
    }

    void operator()(const plan::Drape& drape) const {
        if (drape.along.size() < 2) {
            return;
        }
        add(PlanLayer::standing, open_path(folds(drape), kEdge), Crowd::never);
        board_.used.insert(LegendEntry::drape);
        const Vec2 middle = (drape.along[0] + drape.along[1]) / 2.0;
        label(board_.frame.at(middle), Vec2::Constant(1.8),
              fmt::format("h {}", height_text(drape.height)), true);
    }

  private:
    void add(PlanLayer layer, Mark mark, Crowd crowd = Crowd::none) const {
        board_.add(layer, std::move(mark), crowd);
    }

    std::string height_text(Length height) const { return shown(height, plan_.units); }

    void label(const Vec2& anchor, const Vec2& half_mm, const std::string& second,
               bool may_drop) const {
        LabelRequest request;
        request.anchor = anchor;
        request.half_mm = half_mm;
        request.inside = true;
        const std::string raised = scenery_.elevation.m() > 0.0
                                       ? fmt::format("{} up", height_text(scenery_.elevation))
                                       : std::string{};
        request.lines = {{scenery_.id.name}};
        for (const std::string& words : {second, raised}) {
            if (!words.empty()) {
                request.lines.front().text += fmt::format(", {}", words);
            }
        }
        request.may_drop = may_drop;
        board_.labels.push_back(request);
    }

    /// A wave along the drape, as its folds hang.
    std::vector<Vec2> folds(const plan::Drape& drape) const {
        constexpr double kFold_mm = 2.4;
        const double half_mm = std::max(0.6, board_.frame.mm(plan::kDrapeDepth.m()) / 2.0);
        std::vector<Vec2> points;
        for (std::size_t i = 0; i + 1 < drape.along.size(); ++i) {
            const Vec2 from = board_.frame.at(drape.along[i]);
            const Vec2 to = board_.frame.at(drape.along[i + 1]);
            const double length_mm = (to - from).norm();
            if (length_mm <= 0.0) {
                continue;
            }
            const Vec2 along = (to - from) / length_mm;
            const int folds = std::max(1, static_cast<int>(std::round(length_mm / kFold_mm)));
            constexpr int kPointsPerFold = 8;
            for (int k = 0; k <= folds * kPointsPerFold; ++k) {
                const double turn = 2.0 * std::numbers::pi * k / kPointsPerFold;
                points.emplace_back(from + along * (length_mm * k / (folds * kPointsPerFold))
                                    + turned_left(along) * (half_mm * std::sin(turn)));
            }
        }
        return points;
    }

    void draw_treads(const ThingFrame& thing, double x_m, double y_m) const {
        constexpr double kTread_m = 0.28;
        for (double y = -y_m + kTread_m; y < y_m - kTread_m / 2.0; y += kTread_m) {
            add(PlanLayer::standing, line(thing.at(-x_m, y), thing.at(x_m, y), kDetail),
                Crowd::light);
        }
    }

    /// What tells one use from another inside the outline.
    void draw_inside(const catalogue::StockItem& item, const ThingFrame& thing, double x_m,
                     double y_m) const {
        using catalogue::StockUse;
        const double in_m = std::min({0.06, x_m / 3.0, y_m / 3.0});
        switch (item.use) {
        case StockUse::seat: // A back rest at the rear.
            add(PlanLayer::standing,
                outline(thing.box(-x_m, y_m - 1.5 * in_m, x_m, y_m), kDetail, {}), Crowd::light);
            return;
        case StockUse::table:
            add(PlanLayer::standing,
                outline(thing.box(in_m - x_m, in_m - y_m, x_m - in_m, y_m - in_m), kDetail, {}),
                Crowd::light);
            return;
        case StockUse::storage: // Shut fronts: one diagonal.
            add(PlanLayer::standing, line(thing.at(-x_m, -y_m), thing.at(x_m, y_m), kDetail),
                Crowd::light);
            return;
        case StockUse::bed: // A pillow at the head.
            add(PlanLayer::standing,
                outline(thing.box(in_m - x_m, y_m - 0.35, x_m - in_m, y_m - in_m), kDetail, {}),
                Crowd::light);
            return;
        case StockUse::appliance:
            add(PlanLayer::standing,
                Circle{thing.at(0.0, 0.0), board_.frame.mm(0.5 * std::min(x_m, y_m)), kDetail, {}},
                Crowd::light);
            return;
        case StockUse::platform:
            add(PlanLayer::standing, outline(thing.box(-x_m, -y_m, x_m, y_m), no_pen(),
                                             hatched(Ink::standing, Hatch::diagonal, 0.3)));
            return;
        case StockUse::flat:
            add(PlanLayer::built,
                outline(thing.box(-x_m, -y_m, x_m, y_m), pen(Ink::built, kBuilt_mm),
                        solid(Ink::built, 0.6)),
                Crowd::never);
            return;
        case StockUse::set_dressing:
        case StockUse::support:
            add(PlanLayer::standing, line(thing.at(-x_m, -y_m), thing.at(x_m, y_m), kDetail),
                Crowd::light);
            add(PlanLayer::standing, line(thing.at(-x_m, y_m), thing.at(x_m, -y_m), kDetail),
                Crowd::light);
            return;
        }
    }

    Board& board_;
    const plan::Plan& plan_;
    const catalogue::Catalogue& catalogue_;
    const Scenery& scenery_;
};

bool is_platform(const Scenery& scenery, const catalogue::Catalogue& catalogue) {
    if (std::holds_alternative<plan::Riser>(scenery.shape)) {
        return true;
    }
    const auto* piece = std::get_if<plan::StockPiece>(&scenery.shape);
    const catalogue::StockItem* item =
        piece != nullptr ? catalogue.stock_item(piece->item) : nullptr;
    return item != nullptr && item->use == catalogue::StockUse::platform;
}

} // namespace

void draw_scenery(Board& board, const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    // What is stood upon lies under what stands on it.
    for (const bool platforms : {true, false}) {
        for (const Scenery& scenery : plan.scenery) {
            if (is_platform(scenery, catalogue) == platforms) {
                std::visit(SceneryDrawer{board, plan, catalogue, scenery}, scenery.shape);
            }
        }
    }
}

} // namespace throwline::sheet
