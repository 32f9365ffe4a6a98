#include "card/card_kinds.h"
#include "card/locate.h"

namespace throwline::card {

namespace {

constexpr LengthBounds kSides{Length::metres(0.01), Length::metres(500)};
constexpr LengthBounds kHeights{Length::metres(0.005), Length::metres(100)};
constexpr LengthBounds kElevations{Length::metres(-20), Length::metres(100)};

const auto kScenery = [](auto& plan) -> auto& { return plan.scenery; };
const auto kShape = [](auto& piece) -> auto& { return piece.shape; };

template <class Shape>
Field side(const Parts<Shape>& parts, const char* key, UnitSystem units, Length Shape::* part,
           const LengthBounds& bounds = kSides) {
    return length_field(
        parts, {key, key}, units, bounds, [part](const Shape& shape) { return shape.*part; },
        [part](Shape& shape, Length length) { shape.*part = length; });
}

template <class Shape>
Field turn(const Parts<Shape>& parts) {
    return angle_field(parts, {"turn", "turn"}, [](auto& shape) -> auto& { return shape.turn; });
}

std::string widths_text(const plan::FlatRun& run, UnitSystem units) {
    std::vector<std::string> widths;
    for (const Length width : run.widths) {
        widths.push_back(shown(width, units));
    }
    return joined(widths);
}

std::string put_widths(plan::FlatRun& run, const std::string& text, UnitSystem units) {
    std::vector<Length> widths;
    std::string fault;
    const bool spaced = text.find(", ") != std::string::npos;
    // A comma before a digit is a decimal one where others have a space behind them.
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t end =
            std::min(spaced ? text.find(", ", from) : text.find(',', from), text.size());
        const auto width = read_length(text.substr(from, end - from), units, kSides, fault);
        if (!width) {
            return fault;
        }
        widths.push_back(*width);
        from = end + (spaced ? 2 : 1);
    }
    run.widths = std::move(widths);
    return {};
}

Field widths_field(const Parts<plan::FlatRun>& runs, UnitSystem units) {
    Field widths = field(
        runs, {"widths", "widths"}, FieldKind::text,
        [units](const plan::FlatRun& run) { return widths_text(run, units); },
        [units](plan::FlatRun& run, const std::string& text, const edit::Context&) {
            return put_widths(run, text, units);
        });
    widths.hint = "from the first flat on, with commas between";
    const plan::FlatRun& first = runs.first();
    if (!widths.mixed) {
        widths.working = [texts = widths_text(first, units),
                          total = shown(first.total_width(), units)] {
            return Working{
                "run = sum of the widths", {{"", "flats", texts}}, total, "plain geometry"};
        };
    }
    return widths;
}

void flat_sentences(Card& card, const Parts<plan::FlatRun>& runs, UnitSystem units) {
    say(card, {"Flats of ", widths_field(runs, units), " wide, ",
               side(runs, "height", units, &plan::FlatRun::height, kHeights), " high, ",
               side(runs, "thickness", units, &plan::FlatRun::thickness), " thick."});
    say(card,
        {"They run at ",
         angle_field(runs, {"heading", "heading"}, [](auto& run) -> auto& { return run.heading; }),
         "; the dressed face looks to the left of that."});
}

template <class Shape>
void box_sentence(Card& card, const Parts<Shape>& boxes, const char* what, UnitSystem units) {
    say(card, {std::string{"A "} + what + " ", side(boxes, "width", units, &Shape::width), " by ",
               side(boxes, "depth", units, &Shape::depth), ", ",
               side(boxes, "height", units, &Shape::height, kHeights), " high, turned ",
               turn(boxes), "."});
}

void stock_sentence(Card& card, const CardInput& input, const Parts<plan::StockPiece>& stock) {
    say(card, {"A ",
               row_field(stock, {"item", "item"}, input.context.catalogue.stock,
                         input.context.plan.units, [](auto& part) -> auto& { return part.item; }),
               ", turned ", turn(stock), "."});
}

void round_sentence(Card& card, const Parts<plan::CylinderPiece>& round, UnitSystem units) {
    say(card,
        {"Round, ", side(round, "diameter", units, &plan::CylinderPiece::diameter), " across and ",
         side(round, "height", units, &plan::CylinderPiece::height, kHeights), " high."});
}

void prism_sentence(Card& card, const Parts<plan::PrismPiece>& prisms, UnitSystem units) {
    say(card, {"A block ", side(prisms, "height", units, &plan::PrismPiece::height, kHeights),
               " high, with corners at ",
               points_field(prisms, {"corners", "corners"}, units, 3, "",
                            [](auto& prism) -> auto& { return prism.outline; }),
               "."});
}

void drape_sentence(Card& card, const Parts<plan::Drape>& drapes, UnitSystem units) {
    say(card,
        {"A drape ", side(drapes, "height", units, &plan::Drape::height, kHeights), " high, along ",
         points_field(drapes, {"points", "points"}, units, 2, "",
                      [](auto& drape) -> auto& { return drape.along; }),
         "."});
}

/// Pieces of several shapes have no more in common than what is said of all.
void shape_sentences(Card& card, const CardInput& input, const Parts<plan::Scenery>& pieces) {
    const edit::Context& context = input.context;
    const UnitSystem units = context.plan.units;
    const std::size_t shape = pieces.first().shape.index();
    if (std::any_of(pieces.now.begin(), pieces.now.end(),
                    [&](const plan::Scenery& piece) { return piece.shape.index() != shape; })) {
        return;
    }
    const auto with = [&](auto alternative, auto make) {
        const auto parts = alternatives<decltype(alternative)>(context, pieces, kShape);
        if (!parts.empty()) {
            make(parts);
        }
    };
    with(plan::FlatRun{}, [&](const auto& runs) { flat_sentences(card, runs, units); });
    with(plan::StockPiece{}, [&](const auto& stock) { stock_sentence(card, input, stock); });
    with(plan::BoxPiece{}, [&](const auto& boxes) { box_sentence(card, boxes, "box", units); });
    with(plan::Riser{}, [&](const auto& boxes) { box_sentence(card, boxes, "platform", units); });
    with(plan::CylinderPiece{}, [&](const auto& round) { round_sentence(card, round, units); });
    with(plan::PrismPiece{}, [&](const auto& prisms) { prism_sentence(card, prisms, units); });
    with(plan::Drape{}, [&](const auto& drapes) { drape_sentence(card, drapes, units); });
}

} // namespace

void scenery_card(Card& card, const CardInput& input) {
    const edit::Context& context = input.context;
    const UnitSystem units = context.plan.units;
    const Parts<plan::Scenery> pieces = entities<plan::Scenery>(input, kScenery);
    if (pieces.empty()) {
        return;
    }
    shape_sentences(card, input, pieces);
    say(card, {"Finish ",
               open_row_field(pieces, {"finish", "finish"}, context.catalogue.finishes, units,
                              "as it comes", [](auto& piece) -> auto& { return piece.finish; }),
               "; a shot may see it: ",
               yes_no_field(pieces, {"dressed", "dressing"},
                            [](auto& piece) -> auto& { return piece.dressed; }),
               "; ",
               length_field(
                   pieces, {"elevation", "elevation"}, units, kElevations,
                   [](const plan::Scenery& piece) { return piece.elevation; },
                   [](plan::Scenery& piece, Length up) { piece.elevation = up; }),
               " off the floor."});
}

} // namespace throwline::card
