#include "card/card_kinds.h"
#include "card/locate.h"

namespace throwline::card {

namespace {

constexpr LengthBounds kPoles{Length::metres(0.3), Length::metres(20)};
constexpr LengthBounds kHeights{Length::metres(0.1), Length::metres(20)};

const auto kBooms = [](auto& plan) -> auto& { return plan.booms; };

Field length_of(const Parts<plan::Boom>& booms, FieldName name, UnitSystem units,
                const LengthBounds& bounds, Length plan::Boom::* part) {
    return length_field(
        booms, std::move(name), units, bounds,
        [part](const plan::Boom& boom) { return boom.*part; },
        [part](plan::Boom& boom, Length length) { boom.*part = length; });
}

} // namespace

void boom_card(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Boom> booms = entities<plan::Boom>(input, kBooms);
    if (booms.empty()) {
        return;
    }
    say(card, {"A pole of ", length_of(booms, {"pole", "pole"}, units, kPoles, &plan::Boom::pole),
               ", the microphone ",
               length_of(booms, {"height", "height of the microphone"}, units, kHeights,
                         &plan::Boom::height),
               " up at ",
               point_field(booms, {"microphone", "microphone"}, units,
                           [](auto& boom) -> auto& { return boom.microphone; }),
               "."});
    say(card, {"Its operator stands at ",
               point_field(booms, {"operator", "operator"}, units,
                           [](auto& boom) -> auto& { return boom.operator_at; }),
               booms.first().beats.empty() ? "; on the floor in " : "; on the floor in beats ",
               ids_field(
                   input.context, booms, {"beats", "beats"}, "all beats", true,
                   [](const plan::Plan& plan) -> auto& { return plan.beats; },
                   [](auto& boom) -> auto& { return boom.beats; }),
               "."});
}

} // namespace throwline::card
