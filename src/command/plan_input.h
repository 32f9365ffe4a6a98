#pragma once

#include "command/arguments.h"
#include "plan/read_plan.h"

#include <cstdint>
#include <iosfwd>
#include <string>

namespace throwline::command {

/// All of a file, or of standard input for "-"; more than `most_bytes` is refused.
Result<std::string> text_input(const std::string& name, std::istream& in,
                               std::uintmax_t most_bytes);
/// What errors call a file.
std::string file_label(const std::string& name);

/// The plan that a command's first operand names ("-" is standard input), with the catalogue that
/// it was read with.
struct PlanInput {
    catalogue::Catalogue catalogue;
    plan::PlanPtr plan;
    /// Tells this state of the file from others; see file_mark().
    std::string mark;
};
Checked<PlanInput> plan_input(const Arguments& arguments, std::istream& in);

/// A plan that was read in a catalogue.
struct NamedPlan {
    plan::PlanPtr plan;
    std::string mark;
};
/// The plan in a file, or on standard input when it is named "-".
Checked<NamedPlan> named_plan(const std::string& name, const catalogue::Catalogue& catalogue,
                              std::istream& in);

} // namespace throwline::command
