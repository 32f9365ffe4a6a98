#pragma once

#include "base/quantity.h"
#include "base/working.h"
#include "catalogue/catalogue.h"

#include <functional>

/// What is known about a value that was typed or chosen.
namespace throwline::card {

/// A length in every unit that a crew uses.
std::function<Working()> length_working(Length length);

/// What the catalogue knows of a row, and where from.
Working row_working(const catalogue::SensorMode& row, UnitSystem units);
Working row_working(const catalogue::Lens& row, UnitSystem units);
Working row_working(const catalogue::Support& row, UnitSystem units);
Working row_working(const catalogue::Instrument& row, UnitSystem units);
Working row_working(const catalogue::StockItem& row, UnitSystem units);
Working row_working(const catalogue::Finish& row, UnitSystem units);

} // namespace throwline::card
