#pragma once

#include "command/command.h"

/// One function a file command_<name>.cpp; commands.cpp lists them.
namespace throwline::command {

Command open_command();
Command check_command();
Command compare_command();
Command figures_command();
Command survey_command();
Command list_command();
Command page_command();
Command sheet_command();
Command lens_command();
Command throw_command();
Command sun_command();
Command scale_command();
Command length_command();
Command catalogue_command();

} // namespace throwline::command
