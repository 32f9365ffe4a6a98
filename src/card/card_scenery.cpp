#include "card/fields.h"
#include "card/locate.h"

namespace throwline::card {

namespace {

constexpr LengthBounds kSides{Length::metres(0.01), Length::metres(500)};
constexpr LengthBounds kHeights{Length::metres(0.005), Length::metres(100)};
constexpr LengthBounds kElevations{Length::metres(-20), Length::metres(100)};

plan::SceneryShape& shape_of(plan::Scenery& piece) {
    return piece.shape;
}

template <class Shape>
Field side(const Parts<Shape>& parts, const char* key, const char* words, UnitSystem units,
           Length Shape::* part, LengthBounds bounds = kSides) {
    return length_field(
        parts, {key, words}, units, bounds, [part](const Shape& shape) { return shape.*part; },
        [part](Shape& shape, Length length) { shape.*part = length; });
}

template <class Shape>
Field turn(const Parts<Shape>& parts) {
    return angle_field(
        parts, {"turn", "turn"}, [](const Shape& shape) { return shape.turn; },
        [](Shape& shape, Angle angle) { shape.turn = angle; });
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
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t comma = std::min(text.find(',', from), text.size());
        const auto width = read_length(text.substr(from, comma - from), units, kSides, fault);
        if (!width) {
            return fault;
        }
        widths.push_back(*width);
        from = comma + 1;
    }
    run.widths = std::move(widths);
    return {};
}

void flat_sentences(Card& card, const Parts<plan::FlatRun>& runs, UnitSystem units) {
    Field widths = field(
        runs, {"widths", "widths"}, FieldKind::text,
        [units](const plan::FlatRun& run) { return widths_text(run, units); },
        [units](plan::FlatRun& run, const std::string& text, const edit::Context&) {
            return put_widths(run, text, units);
        });
    widths.hint = "widths from the first flat on, with commas between";
    say(card, {"Flats of ", widths, " wide, ",
               side(runs, "height", "height", units, &plan::FlatRun::height, kHeights), " high, ",
               side(runs, "thickness", "thickness", units, &plan::FlatRun::thickness), " thick."});
    say(card,
        {"They run at ",
         angle_field(
             runs, {"heading", "heading"}, [](const plan::FlatRun& run) { return run.heading; },
             [](plan::FlatRun& run, Angle angle) { run.heading = angle; }),
         "; the dressed face looks to the left of that."});
}

void shape_sentences(Card& card, const CardInput& input, const Parts<plan::Scenery>& pieces) {
    const edit::Context& context = input.context;
    const UnitSystem units = context.plan.units;
    if (const auto runs = alternatives<plan::FlatRun>(context, pieces, shape_of); !runs.empty()) {
        flat_sentences(card, runs, units);
    }
    if (const auto stock = alternatives<plan::StockPiece>(context, pieces, shape_of);
        !stock.empty()) {
        say(card, {"A ",
                   choice_field(
                       stock, {"item", "item"}, row_names(context.catalogue.stock),
                       [](const plan::StockPiece& part) { return part.item; },
                       [](plan::StockPiece& part, const std::string& name) { part.item = name; }),
                   ", turned ", turn(stock), "."});
    }
    if (const auto boxes = alternatives<plan::BoxPiece>(context, pieces, shape_of);
        !boxes.empty()) {
        say(card, {"A box ", side(boxes, "width", "width", units, &plan::BoxPiece::width), " by ",
                   side(boxes, "depth", "depth", units, &plan::BoxPiece::depth), ", ",
                   side(boxes, "height", "height", units, &plan::BoxPiece::height, kHeights),
                   " high, turned ", turn(boxes), "."});
    }
    if (const auto risers = alternatives<plan::Riser>(context, pieces, shape_of); !risers.empty()) {
        say(card, {"A platform ", side(risers, "width", "width", units, &plan::Riser::width),
                   " by ", side(risers, "depth", "depth", units, &plan::Riser::depth), ", ",
                   side(risers, "height", "height", units, &plan::Riser::height, kHeights),
                   " high, turned ", turn(risers), "."});
    }
    if (const auto round = alternatives<plan::CylinderPiece>(context, pieces, shape_of);
        !round.empty()) {
        say(card,
            {"Round, ", side(round, "diameter", "diameter", units, &plan::CylinderPiece::diameter),
             " across and ",
             side(round, "height", "height", units, &plan::CylinderPiece::height, kHeights),
             " high."});
    }
    if (const auto prisms = alternatives<plan::PrismPiece>(context, pieces, shape_of);
        !prisms.empty()) {
        say(card, {"A block ",
                   side(prisms, "height", "height", units, &plan::PrismPiece::height, kHeights),
                   " high; its corners are dragged on the floor."});
    }
    if (const auto drapes = alternatives<plan::Drape>(context, pieces, shape_of); !drapes.empty()) {
        say(card,
            {"A drape ", side(drapes, "height", "height", units, &plan::Drape::height, kHeights),
             " high."});
    }
}

} // namespace

void scenery_card(Card& card, const CardInput& input) {
    const edit::Context& context = input.context;
    const Parts<plan::Scenery> pieces = entities<plan::Scenery>(input);
    if (pieces.empty()) {
        return;
    }
    shape_sentences(card, input, pieces);
    std::vector<std::string> finishes = row_names(context.catalogue.finishes);
    finishes.insert(finishes.begin(), "as it comes");
    say(card, {"Finish ",
               choice_field(
                   pieces, {"finish", "finish"}, finishes,
                   [](const plan::Scenery& piece) {
                       return piece.finish.empty() ? std::string{"as it comes"} : piece.finish;
                   },
                   [](plan::Scenery& piece, const std::string& name) {
                       piece.finish = name == "as it comes" ? "" : name;
                   }),
               "; a shot may see it: ",
               yes_no_field(
                   pieces, {"dressed", "dressing"},
                   [](const plan::Scenery& piece) { return piece.dressed; },
                   [](plan::Scenery& piece, bool dressed) { piece.dressed = dressed; }),
               "; ",
               length_field(
                   pieces, {"elevation", "elevation"}, context.plan.units, kElevations,
                   [](const plan::Scenery& piece) { return piece.elevation; },
                   [](plan::Scenery& piece, Length up) { piece.elevation = up; }),
               " off the floor."});
}

} // namespace throwline::card
