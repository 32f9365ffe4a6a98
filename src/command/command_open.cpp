#include "command/catalogue_input.h"
#include "command/commands.h"
#include "ui/window/open_window.h"

#include <memory>

namespace throwline::command {

namespace {

Checked<Answer> answer(const Arguments& arguments, std::istream&) {
    auto catalogue = catalogue_for(arguments);
    if (!catalogue) {
        return tl::unexpected{catalogue.error()};
    }
    if (!ui::open_windows(std::make_shared<const catalogue::Catalogue>(std::move(*catalogue)),
                          arguments.operands())) {
        return tl::unexpected{Errors{{"there is no screen to open a window on", {}}}};
    }
    return Answer{};
}

} // namespace

Command open_command() {
    return {.name = "open",
            .summary = "the window: draw, block and light a production by hand",
            .operands = "[PLAN ...]",
            .operands_min = 0,
            .operands_max = 100,
            .options = {kLensdata, kJson},
            .example = "throwline open demo/cookery.json",
            .answer = answer};
}

} // namespace throwline::command
