#include "plan/read_plan.h"

#include "base/text_file.h"
#include "plan/check_plan.h"
#include "plan/object_reader.h"
#include "plan/read_parts.h"

namespace throwline::plan {

namespace {

/// Whether this program knows the format. When kFormat grows, the steps from older formats work on
/// the JSON tree behind this test, before any part is read.
bool has_known_format(Reading& reading, const Value& root) {
    const std::optional<Value> format = root.member("format");
    if (!format || !format->is(catalogue::JsonKind::number)) {
        return true;
    }
    const double number = format->node->number;
    if (number > Plan::kFormat) {
        reading.wrong(*format, fmt::format("format {} is newer than this program, which reads "
                                           "formats up to {}; use a newer version",
                                           described(*format->node), Plan::kFormat));
        return false;
    }
    return true;
}

tl::unexpected<Errors> refused(std::string message, const std::string& file) {
    return tl::unexpected<Errors>{Errors{{std::move(message), {file, {}, 0, 0}}}};
}

} // namespace

void read_value(Reading& reading, const Value& root, Plan& plan) {
    const ObjectReader object{reading, root, kPlanKeys};
    int format = Plan::kFormat;
    object.read("format", format, WholeRange{1, Plan::kFormat});
    object.read("title", plan.title);
    object.read("units", plan.units, std::string_view{"unit system"});
    object.read("site", plan.site);
    object.read("room", plan.room);
    object.read("survey", plan.survey);
    object.read("grid", plan.grid);
    object.read("pipes", plan.pipes);
    object.read("circuits", plan.circuits);
    object.read("scenery", plan.scenery);
    object.read("people", plan.people);
    object.read("beats", plan.beats);
    object.read("cameras", plan.cameras);
    object.read("shots", plan.shots);
    object.read("booms", plan.booms);
    object.read("lamps", plan.lamps);
    object.read("underlay", plan.underlay);
    object.read("kit", plan.kit);
    object.read("targets", plan.targets);
    object.read("accepted", plan.accepted);
    object.read("arrangement", plan.arrangement);
    object.read("extra", plan.extra);
}

void check_whole(Reading& reading, const Value& root, const Plan& plan) {
    check_room(reading, root, plan);
    if (plan.survey) {
        check_survey(reading, root.at("survey"), *plan.survey);
    }
    check_scenery(reading, root, plan);
    check_mounts(reading, root, plan);
    check_unique_names(reading, root, plan);
    check_references(reading, root, plan);
    check_catalogue_names(reading, root, plan);
    check_lenses(reading, root, plan);
    check_arrangement(reading, root, plan);
}

Checked<Plan> read_plan(std::string_view json, const catalogue::Catalogue& catalogue,
                        const std::string& file) {
    if (json.size() > kLargestPlanBytes) {
        return refused(fmt::format("a plan has at most {} bytes", kLargestPlanBytes), file);
    }
    const Checked<catalogue::JsonNode> tree = catalogue::parse_json(json, file);
    if (!tree) {
        return tl::unexpected<Errors>{tree.error()};
    }
    Reading reading{catalogue, file};
    const Value root{&*tree, {}};
    Plan plan;
    if (has_known_format(reading, root)) {
        read_value(reading, root, plan);
        check_whole(reading, root, plan);
    }
    if (reading.any_wrong()) {
        return tl::unexpected<Errors>{reading.errors()};
    }
    return plan;
}

Checked<SurveyFile> read_survey(std::string_view json, const catalogue::Catalogue& catalogue,
                                const std::string& file) {
    if (json.size() > kLargestPlanBytes) {
        return refused(fmt::format("a plan has at most {} bytes", kLargestPlanBytes), file);
    }
    const Checked<catalogue::JsonNode> tree = catalogue::parse_json(json, file);
    if (!tree) {
        return tl::unexpected<Errors>{tree.error()};
    }
    const Value root{&*tree, {}};
    if (root.member("format") || root.member("room")) {
        const Checked<Plan> plan = read_plan(json, catalogue, file);
        if (!plan) {
            return tl::unexpected<Errors>{plan.error()};
        }
        if (!plan->survey) {
            return refused("the plan holds no survey", file);
        }
        return SurveyFile{*plan->survey, plan->units};
    }
    Reading reading{catalogue, file};
    SurveyFile read;
    read_value(reading, root, read.survey);
    check_survey(reading, root, read.survey);
    if (reading.any_wrong()) {
        return tl::unexpected<Errors>{reading.errors()};
    }
    return read;
}

Checked<Plan> read_plan_file(const std::filesystem::path& path,
                             const catalogue::Catalogue& catalogue) {
    const Result<std::string> text = read_text_file(path, kLargestPlanBytes);
    if (!text) {
        return tl::unexpected<Errors>{Errors{text.error()}};
    }
    return read_plan(*text, catalogue, path == "-" ? "standard input" : path.string());
}

} // namespace throwline::plan
