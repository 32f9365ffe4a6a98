#include "base/length_text.h"
#include "checks/opening_place.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/each_list.h"
#include "lists/place_text.h"
#include "plan/calendar_text.h"
#include "plan/names.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::lists {

namespace {

void add(Section& section, std::string what, std::string note) {
    if (!note.empty()) {
        section.rows.push_back({{words(std::move(what)), words(std::move(note))}, false});
    }
}

std::string hours_text(const plan::Site& site) {
    if (!site.hours) {
        return {};
    }
    const std::string hours =
        fmt::format("{} to {}", plan::text_of(site.hours->from), plan::text_of(site.hours->to));
    return site.hours->to < site.hours->from ? hours + " on the morning after" : hours;
}

/// Clockwise from up the page, 0 to 360 degrees.
std::string north_text(const plan::Site& site) {
    constexpr double kFull_deg = 360.0;
    const double turned_deg =
        std::fmod(std::fmod(site.north.deg(), kFull_deg) + kFull_deg, kFull_deg);
    return turned_deg == 0.0
               ? "up the page"
               : degrees_text(Angle::degrees(turned_deg)) + " clockwise from up the page";
}

std::string position_text(const plan::Site& site) {
    if (!site.latitude || !site.longitude) {
        return {};
    }
    constexpr int kDecimals = 4;
    return fmt::format("latitude {}, longitude {}", degrees_text(*site.latitude, kDecimals),
                       degrees_text(*site.longitude, kDecimals));
}

Section place_section(const plan::Plan& plan) {
    const plan::Site& site = plan.site;
    Section section{"The place", {}, {}};
    add(section, "place", site.place);
    add(section, "date", site.date);
    add(section, "hours", hours_text(site));
    add(section, "clock",
        site.utc_offset_minutes ? "UTC" + plan::utc_offset_text(*site.utc_offset_minutes) : "");
    add(section, "position", position_text(site));
    add(section, "north", north_text(site));
    return section;
}

/// Those taken with the tape by kind, then those of the plan.
Section notes_section(const plan::Plan& plan) {
    Section section{"Notes", {}, {}};
    for (const auto& kind : plan::kSiteNoteKindNames) {
        for (const plan::SiteNote& note :
             plan.survey ? plan.survey->notes : std::vector<plan::SiteNote>{}) {
            if (note.kind == kind.value) {
                add(section, std::string{kind.name}, note.text);
            }
        }
    }
    for (const std::string& note : plan.site.notes) {
        add(section, "note", note);
    }
    return section;
}

Section power_section(const plan::Plan& plan) {
    Section section{"Circuits and outlets", {}, {}};
    for (const plan::Circuit& circuit : plan.circuits) {
        const std::string name = checks::said(circuit.id);
        add(section, name,
            fmt::format("{} V, {} A breaker{}", shortest(circuit.volts),
                        shortest(circuit.breaker_amps),
                        circuit.outlets.empty() ? ", no outlet on the plan" : ""));
        for (const Vec2& outlet : circuit.outlets) {
            add(section, "outlet of " + name, place_text(plan, outlet));
        }
    }
    return section;
}

std::string opening_text(const plan::Plan& plan, const plan::Opening& opening) {
    return fmt::format("{}, {} from its start, {} wide, from {} to {} up",
                       wall_text(plan.room, opening.wall), shown(opening.from_start, plan.units),
                       shown(opening.width, plan.units), shown(opening.sill, plan.units),
                       shown(opening.head, plan.units));
}

Section ways_out_section(const plan::Plan& plan) {
    Section section{"Ways out", {}, {}};
    for (const plan::Opening& opening : plan.room.openings) {
        if (opening.way_out) {
            const Length clear = std::min(plan.targets.way_out_width, opening.width);
            add(section, opening.id.name,
                fmt::format("{}; keep {} clear", opening_text(plan, opening),
                            shown(clear, plan.units)));
        }
    }
    if (section.rows.empty()) {
        section.remarks.emplace_back("The plan marks no way out; the venue tells which there are.");
    }
    return section;
}

Section other_openings_section(const plan::Plan& plan) {
    Section section{"Other doors and windows", {}, {}};
    for (const plan::Opening& opening : plan.room.openings) {
        if (!opening.way_out) {
            add(section, opening.id.name,
                fmt::format("{}: {}", plan::name_of(opening.kind), opening_text(plan, opening)));
        }
    }
    return section;
}

} // namespace

Table site_notes(const ListInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    Table table{"site-notes", "Site notes", {{"what", "What"}, {"note", "Note"}}, {}, {}};
    for (Section (*make)(const plan::Plan&) :
         {place_section, notes_section, power_section, ways_out_section, other_openings_section}) {
        Section section = make(plan);
        if (!section.rows.empty() || !section.remarks.empty()) {
            table.sections.push_back(std::move(section));
        }
    }
    table.cautions = checks::cautions_for(plan);
    return table;
}

} // namespace throwline::lists
