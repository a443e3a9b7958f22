#pragma once

namespace furnish {

/// A function of a library that is opened when it is first asked for and stays open: what few runs
/// need costs the others nothing. Throws std::runtime_error if this machine has no such library, or
/// the library no such function.
void* late_function(const char* library, const char* name);
}  // namespace furnish

/// Defines a function that its header has declared, as one that calls it in the library:
///     FURNISH_LATE("libm.so.6", double, cbrt, (double x), (x))
#define FURNISH_LATE(library, result, name, parameters, arguments)                 \
  result name parameters {                                                         \
    static const auto there =                                                      \
        reinterpret_cast<decltype(&name)>(furnish::late_function(library, #name)); \
    return there arguments;                                                        \
  }
