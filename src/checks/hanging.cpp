#include "checks/hanging.h"

#include "base/length_text.h"
#include "base/mass.h"
#include "checks/wording.h"
#include "plan/places.h"

namespace throwline::checks {

namespace {

void hang(HangingByName& all, const std::string& name, double limit_kg, const plan::Lamp& lamp,
          double mass_kg, const Vec2& at) {
    Hanging& hanging = all[name];
    hanging.limit_kg = limit_kg;
    hanging.mass_kg += mass_kg;
    hanging.lamps.push_back(lamp.id.name);
    hanging.at += (at - hanging.at) / static_cast<double>(hanging.lamps.size());
}

/// "C2" hangs from the pipe along number 2, the pipe along letter C, or both.
void hang_on_grid(HangingByName& all, const plan::Grid& grid, const std::string& typed,
                  const plan::Lamp& lamp, double mass_kg, const Vec2& at) {
    const std::string position = grid_position(typed);
    hang(all, "grid point " + position, grid.point_load_kg, lamp, mass_kg, at);
    const std::size_t digits = position.find_first_of("0123456789");
    if (grid.run != plan::PipeRun::along_numbers) {
        hang(all, "grid pipe " + position.substr(digits), grid.pipe_load_kg, lamp, mass_kg, at);
    }
    if (grid.run != plan::PipeRun::along_letters) {
        hang(all, "grid pipe " + position.substr(0, digits), grid.pipe_load_kg, lamp, mass_kg, at);
    }
}

/// Lamps that hang from the same place of a pipe, to what the crew's tape shows, share its point.
void hang_on_pipe(HangingByName& all, const plan::Plan& plan, const plan::PipeHang& mount,
                  const plan::Lamp& lamp, double mass_kg, const Vec2& at) {
    const plan::Pipe& pipe = *plan::find(plan, mount.pipe);
    hang(all, said(pipe.id), pipe.load_kg, lamp, mass_kg, at);
    hang(all, said(pipe.id) + " at " + shown(mount.along, plan.units), pipe.point_load_kg, lamp,
         mass_kg, at);
}

} // namespace

std::string grid_position(std::string_view typed) {
    std::string position{typed};
    for (char& c : position) {
        c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    return position;
}

HangingByName everything_hanging(const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    HangingByName all;
    for (const plan::Lamp& lamp : plan.lamps) {
        const catalogue::Instrument* instrument = catalogue.instrument(lamp.instrument);
        const std::optional<Vec3> point = plan::lamp_point(plan, lamp);
        if (instrument == nullptr || !point) {
            continue;
        }
        if (const auto* on_grid = std::get_if<plan::GridHang>(&lamp.mount)) {
            hang_on_grid(all, *plan.grid, on_grid->position, lamp, instrument->mass_kg,
                         floor_of(*point));
        } else if (const auto* on_pipe = std::get_if<plan::PipeHang>(&lamp.mount)) {
            hang_on_pipe(all, plan, *on_pipe, lamp, instrument->mass_kg, floor_of(*point));
        }
    }
    return all;
}

std::string mass_text(double mass_kg, UnitSystem units) {
    const bool imperial = units == UnitSystem::imperial;
    const double shown_mass = imperial ? mass_kg * kPoundsPerKilogram : mass_kg;
    const int usual = imperial ? 0 : 1;
    const double least_shown = imperial ? 0.5 : 0.05;
    const int decimals = shown_mass < least_shown ? 2 : usual;
    return fixed(shown_mass, decimals) + (imperial ? " lb" : " kg");
}

} // namespace throwline::checks
