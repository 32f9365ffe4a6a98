#pragma once

#include "catalogue/catalogue.h"

#include <array>
#include <cstddef>
#include <string_view>
#include <utility>

/// What files call the kinds of things, and figures that stand for what a row leaves out: read and
/// written alike.
namespace throwline::catalogue {

template <class Value>
using RowWord = std::pair<std::string_view, Value>;

inline constexpr std::array<RowWord<StockUse>, 9> kUses{{{"flat", StockUse::flat},
                                                         {"seat", StockUse::seat},
                                                         {"table", StockUse::table},
                                                         {"storage", StockUse::storage},
                                                         {"bed", StockUse::bed},
                                                         {"appliance", StockUse::appliance},
                                                         {"platform", StockUse::platform},
                                                         {"set_dressing", StockUse::set_dressing},
                                                         {"support", StockUse::support}}};

inline constexpr std::array<RowWord<StockShape>, 3> kShapes{
    {{"box", StockShape::box}, {"round", StockShape::round}, {"stairs", StockShape::stairs}}};

inline constexpr std::array<RowWord<InstrumentKind>, 10> kInstrumentKinds{
    {{"fresnel", InstrumentKind::fresnel},
     {"open_face", InstrumentKind::open_face},
     {"profile", InstrumentKind::profile},
     {"par", InstrumentKind::par},
     {"led_panel", InstrumentKind::led_panel},
     {"tube", InstrumentKind::tube},
     {"soft_box", InstrumentKind::soft_box},
     {"lantern", InstrumentKind::lantern},
     {"practical", InstrumentKind::practical},
     {"cyc", InstrumentKind::cyc}}};

inline constexpr std::array<RowWord<FilterKind>, 4> kFilterKinds{
    {{"conversion", FilterKind::conversion},
     {"colour", FilterKind::colour},
     {"diffusion", FilterKind::diffusion},
     {"neutral", FilterKind::neutral}}};

inline constexpr std::array<RowWord<PaperFamily>, 4> kPaperFamilies{
    {{"iso", PaperFamily::iso},
     {"us_office", PaperFamily::us_office},
     {"architectural", PaperFamily::architectural},
     {"ansi", PaperFamily::ansi}}};

inline constexpr std::array<RowWord<UnitSystem>, 2> kUnitSystems{
    {{"metric", UnitSystem::metric}, {"imperial", UnitSystem::imperial}}};

/// What a file calls a value.
template <class Value, std::size_t N>
constexpr std::string_view word_of(Value value, const std::array<RowWord<Value>, N>& words) {
    for (const RowWord<Value>& word : words) {
        if (word.second == value) {
            return word.first;
        }
    }
    return "";
}

/// Common practice, no source: the blur that passes as sharp is this part of the diagonal.
inline constexpr double kDiagonalsPerCircle = 1500.0;

} // namespace throwline::catalogue
