#include "command/catalogue_input.h"

#include "command/command.h"
#include "command/parse_arguments.h"

#include <fmt/format.h>

namespace throwline::command {

Checked<catalogue::Catalogue> catalogue_for(const Arguments& arguments) {
    const auto folder = catalogue::shipped_folder();
    if (folder.empty()) {
        return tl::unexpected{Errors{
            {"the tables of lenses and lamps are not beside the program; name their folder in the "
             "environment variable THROWLINE_LENSDATA",
             {}}}};
    }
    auto shipped = catalogue::load_catalogue(folder);
    const auto own = arguments.value(kLensdata.name);
    if (!shipped || !own) {
        return shipped;
    }
    return catalogue::with_own_items(std::move(*shipped), *own);
}

std::string unknown_name(std::string_view kind, std::string_view typed,
                         const std::vector<std::string>& names) {
    return fmt::format("there is no {} \"{}\"{}", kind, typed, suggestion(typed, names));
}

} // namespace throwline::command
