#pragma once

#include "base/working.h"
#include "catalogue/catalogue.h"

#include <optional>
#include <span>

namespace throwline::photometry {

/// Light lost to a transmission (0..1]: log2(1 / T). Plain algebra.
double stops_of_transmission(double transmission);
double transmission_of_stops(double stops);
/// 10^-d of a neutral density.
double transmission_of_density(double density);
/// Transmissions of stacked filters multiply; 1 for none.
double stacked_transmission(std::span<const catalogue::Filter> filters);

/// 10^6 / K, and back. Both > 0.
double mired(double temperature_k);
double temperature_from_mired_k(double mired_value);
/// Colour temperature behind filters: mired shifts add. Empty when the sum leaves nothing above 0.
std::optional<double> temperature_behind_k(double source_k,
                                           std::span<const catalogue::Filter> filters);

/// Tungsten on reduced volts (share 0..1 of the rated): flux goes as V^3.4, temperature as V^0.42.
/// From memory: IES handbook.
double tungsten_flux_share(double voltage_share);
double tungsten_temperature_k(double rated_k, double voltage_share);

Working temperature_behind_working(double source_k, std::span<const catalogue::Filter> filters);

} // namespace throwline::photometry
