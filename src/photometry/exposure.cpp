#include "photometry/exposure.h"

#include "base/length_text.h"
#include "photometry/words.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::photometry {

namespace {

const char* const kIncidentForm = "ISO 2720:1974 incident form; range of C from memory";

std::vector<WorkingTerm> terms_of(const ExposureSetting& setting) {
    return {{"C", "calibration constant", fixed(setting.calibration, 0)},
            {"S", "ISO speed", fixed(setting.iso, 0)},
            {"t", "exposure time", fmt::format("1/{} s", fixed(1.0 / setting.exposure_s, 1))}};
}

} // namespace

double shutter_time_s(Angle shutter, double frames_per_s) {
    return shutter.deg() / (360.0 * frames_per_s);
}

double illuminance_for_stop_lx(const ExposureSetting& setting, double stop) {
    return setting.calibration * stop * stop / (setting.iso * setting.exposure_s);
}

std::optional<double> stop_for_illuminance(const ExposureSetting& setting, double illuminance_lx) {
    if (illuminance_lx <= 0.0) {
        return std::nullopt;
    }
    return std::sqrt(illuminance_lx * setting.iso * setting.exposure_s / setting.calibration);
}

std::optional<double> stops_over(const ExposureSetting& setting, double stop,
                                 double illuminance_lx) {
    if (illuminance_lx <= 0.0) {
        return std::nullopt;
    }
    return std::log2(illuminance_lx / illuminance_for_stop_lx(setting, stop));
}

double illuminance_for_ev100_lx(double exposure_value) {
    return kFlatReceptorConstant / 100.0 * std::exp2(exposure_value);
}

Working illuminance_for_stop_working(const ExposureSetting& setting, double stop) {
    std::vector<WorkingTerm> terms = terms_of(setting);
    terms.push_back({"N", "stop", fmt::format("T{}", shortest(stop))});
    return {"E = C N^2 / (S t)", terms, lux_text(illuminance_for_stop_lx(setting, stop)),
            kIncidentForm};
}

Working stop_for_illuminance_working(const ExposureSetting& setting, double illuminance_lx) {
    std::vector<WorkingTerm> terms = terms_of(setting);
    terms.push_back({"E", "level", lux_text(illuminance_lx)});
    const std::optional<double> stop = stop_for_illuminance(setting, illuminance_lx);
    return {"N = sqrt(E S t / C)", terms,
            stop ? fmt::format("T{}", fixed(*stop, 1)) : "none: no light", kIncidentForm};
}

} // namespace throwline::photometry
