#pragma once

#include "plan/blocking.h"
#include "plan/lighting.h"
#include "plan/scenery.h"
#include "plan/site.h"
#include "plan/survey.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

/// The Plan: one production as a plain value. Read it first; everything else is a function of it.
namespace throwline::plan {

/// How many of a catalogue thing the crew has.
struct KitItem {
    /// A catalogue name of any table.
    std::string item;
    int count = 0;

    bool operator==(const KitItem&) const = default;
};

/// A finding that the crew has looked at and lives with; `reason` is printed on the sheet.
struct Acceptance {
    /// A check's id, such as "off-the-set".
    std::string check;
    /// Empty: any shot.
    Id<Shot> shot;
    /// All of these must be among the finding's things.
    std::vector<std::string> things;
    std::string reason;

    bool operator==(const Acceptance&) const = default;
};

/// Two things or more that are moved together, by what plan/arrangement.h calls them.
struct Group {
    std::vector<std::string> things;

    bool operator==(const Group&) const = default;
};

/// How the things on the floor are held while somebody draws; no figure depends on it. By the names
/// of what is there ("wall 3", "outlet 1 of C1"); a thing is in one group at most.
struct Arrangement {
    std::vector<Group> groups;
    std::vector<std::string> locked;
    std::vector<std::string> hidden;

    bool operator==(const Arrangement&) const = default;
};

/// Lighting and exposure targets of the production.
struct Targets {
    /// Incident-light meter constant of ISO 2720: flat receptor 240..400.
    double meter_constant = 250.0;
    /// Allowed difference between the level on a face and what the stop needs, in stops.
    double exposure_tolerance_stops = 1.0;
    /// Wanted lighting ratio (key + fill) : fill; 0 when open.
    double lighting_ratio = 0.0;
    /// Share of the subject that must be seen.
    double visible_share = 0.9;
    /// Clear width that a way out needs; the venue and local code decide.
    Length way_out_width = Length::metres(0.9);

    bool operator==(const Targets&) const = default;
};

struct Plan {
    /// The newest file format that this program writes.
    static constexpr int kFormat = 1;

    std::string title;
    UnitSystem units = UnitSystem::metric;
    Site site;
    /// Without corners while nobody has drawn or measured it.
    Room room;
    std::optional<Survey> survey;
    std::optional<Grid> grid;
    std::vector<Pipe> pipes;
    std::vector<Circuit> circuits;
    std::vector<Scenery> scenery;
    std::vector<Person> people;
    std::vector<Beat> beats;
    std::vector<Camera> cameras;
    std::vector<Shot> shots;
    std::vector<Boom> booms;
    std::vector<Lamp> lamps;
    std::optional<Underlay> underlay;
    std::vector<KitItem> kit;
    Targets targets;
    std::vector<Acceptance> accepted;
    Arrangement arrangement;
    Extra extra;

    bool operator==(const Plan&) const = default;
};

using PlanPtr = std::shared_ptr<const Plan>;

/// The entity with that id, or null.
const Person* find(const Plan& plan, const Id<Person>& id);
const Beat* find(const Plan& plan, const Id<Beat>& id);
const Camera* find(const Plan& plan, const Id<Camera>& id);
const Shot* find(const Plan& plan, const Id<Shot>& id);
const Lamp* find(const Plan& plan, const Id<Lamp>& id);
const Scenery* find(const Plan& plan, const Id<Scenery>& id);
const Circuit* find(const Plan& plan, const Id<Circuit>& id);
const Pipe* find(const Plan& plan, const Id<Pipe>& id);
const Boom* find(const Plan& plan, const Id<Boom>& id);

} // namespace throwline::plan
