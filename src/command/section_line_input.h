#pragma once

#include "command/arguments.h"
#include "sheet/sheet_options.h"

namespace throwline::command {

/// Reads --along, a shot's name or two places such as "1m,2m to 5m,2m", and --depth.
void read_section_line(const Arguments& arguments, OptionReader& options,
                       sheet::SectionLine& section);

} // namespace throwline::command
