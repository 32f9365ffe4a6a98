#include "photometry/filters.h"

#include "base/length_text.h"

#include <cmath>

namespace throwline::photometry {

double stops_of_transmission(double transmission) {
    return -std::log2(transmission);
}

double transmission_of_stops(double stops) {
    return std::exp2(-stops);
}

double transmission_of_density(double density) {
    return std::pow(10.0, -density);
}

double stacked_transmission(std::span<const catalogue::Filter> filters) {
    double transmission = 1.0;
    for (const catalogue::Filter& filter : filters) {
        transmission *= filter.transmission;
    }
    return transmission;
}

double mired(double temperature_k) {
    return 1e6 / temperature_k;
}

double temperature_from_mired_k(double mired_value) {
    return 1e6 / mired_value;
}

std::optional<double> temperature_behind_k(double source_k,
                                           std::span<const catalogue::Filter> filters) {
    double sum = mired(source_k);
    for (const catalogue::Filter& filter : filters) {
        sum += filter.mired_shift;
    }
    if (sum <= 0.0) {
        return std::nullopt;
    }
    return temperature_from_mired_k(sum);
}

double tungsten_flux_share(double voltage_share) {
    return std::pow(voltage_share, 3.4);
}

double tungsten_temperature_k(double rated_k, double voltage_share) {
    return rated_k * std::pow(voltage_share, 0.42);
}

Working temperature_behind_working(double source_k, std::span<const catalogue::Filter> filters) {
    std::vector<WorkingTerm> terms{{"K", "source", fixed(source_k, 0) + " K"}};
    for (const catalogue::Filter& filter : filters) {
        terms.push_back({"M", filter.name, fixed(filter.mired_shift, 0) + " mired"});
    }
    const std::optional<double> behind = temperature_behind_k(source_k, filters);
    return {"temperature = 10^6 / (10^6 / K + sum of M)", terms,
            behind ? fixed(*behind, 0) + " K" : "none: the shifts leave nothing",
            "plain algebra: mired shifts add; filter shifts from their tables"};
}

} // namespace throwline::photometry
