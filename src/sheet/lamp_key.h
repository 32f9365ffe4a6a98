#pragma once

#include "sheet/composition.h"

namespace throwline::sheet {

/// The instruments that a plan uses, each with its symbol and how many; then what each circuit
/// would carry with all its lamps at full, against its breaker. As much as the box takes with room
/// for a finding left. Returns what is left of the box.
Box draw_lamp_key(Marks& marks, const Box& box, const SheetInput& input);

/// "2600 W, 11.3 A; plan to 12.8 A of 16 A": a circuit's sum against its breaker; "OVER" first when
/// it is more than may be planned.
std::string circuit_words(const plan::Circuit& circuit, const plan::Plan& plan,
                          const catalogue::Catalogue& catalogue);

} // namespace throwline::sheet
