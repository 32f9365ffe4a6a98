#pragma once

#include <cstddef>
#include <functional>
#include <stop_token>

namespace throwline {

/// Calls `work(i)` for every i below `count`, spread over the machine's cores. Each i must write
/// only its own result, so that the outcome is the same for any number of threads. Once `stop` is
/// asked for, no further i is begun. An exception in `work` ends the program: it would be a bug.
void parallel_for(std::size_t count, const std::function<void(std::size_t)>& work,
                  const std::stop_token& stop = {});

} // namespace throwline
