#include "command/commands.h"

#include <array>

namespace throwline::command {

std::span<const Command> all_commands() {
    static const std::array commands{
        open_command(), check_command(), compare_command(), figures_command(),  survey_command(),
        list_command(), page_command(),  sheet_command(),   lens_command(),     throw_command(),
        sun_command(),  scale_command(), length_command(),  catalogue_command()};
    return commands;
}

} // namespace throwline::command
