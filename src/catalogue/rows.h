#pragma once

#include "catalogue/catalogue.h"
#include "catalogue/row_reader.h"

/// One function a table: the keys, units and ranges of its rows. lensdata/README.md documents the
/// keys.
namespace throwline::catalogue {

SensorMode sensor_from(RowReader& row);
Lens lens_from(RowReader& row);
Support support_from(RowReader& row);
Instrument instrument_from(RowReader& row);
Filter filter_from(RowReader& row);
Finish finish_from(RowReader& row);
StockItem stock_item_from(RowReader& row);
BodyLandmark landmark_from(RowReader& row);
Paper paper_from(RowReader& row);
DrawingScale scale_from(RowReader& row);

} // namespace throwline::catalogue
