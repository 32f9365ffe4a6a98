#include <clocale>

namespace {

/// Every test program follows the environment's locale, as a program with a window does, so that
/// one run under a decimal comma shows whatever still reads or writes numbers by the locale.
const bool kFollowsEnvironment = std::setlocale(LC_ALL, "") != nullptr;

} // namespace
