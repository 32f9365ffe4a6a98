#pragma once

#include "lists/lists.h"

/// One function a file; lists.cpp lists them.
namespace throwline::lists {

Table shots(const ListInput& input);
Table running_order(const ListInput& input);
Table camera_cards(const ListInput& input);
Table lamps_by_position(const ListInput& input);
Table lamps_by_channel(const ListInput& input);
Table lamps_by_circuit(const ListInput& input);
Table power(const ListInput& input);
Table cables(const ListInput& input);
Table filters(const ListInput& input);
Table kit(const ListInput& input);
Table flats(const ListInput& input);
Table site_notes(const ListInput& input);

} // namespace throwline::lists
