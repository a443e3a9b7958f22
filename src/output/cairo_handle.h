#pragma once

#include <cairo.h>

#include <memory>
#include <new>
#include <string>

namespace furnish {

template <auto destroy>
struct CairoDeleter {
  template <typename T>
  void operator()(T* handle) const {
    destroy(handle);
  }
};

/// Owners of cairo's handles. A handle that cairo could not make is not null but in error: ask for
/// its status before it goes, as an error is lost with it.
using CairoSurface = std::unique_ptr<cairo_surface_t, CairoDeleter<cairo_surface_destroy>>;
using CairoPattern = std::unique_ptr<cairo_pattern_t, CairoDeleter<cairo_pattern_destroy>>;
using CairoContext = std::unique_ptr<cairo_t, CairoDeleter<cairo_destroy>>;

/// For cairo's stream surfaces: appends to the std::string that `closure` points to.
inline cairo_status_t append_to_string(void* closure, const unsigned char* data,
                                       unsigned int length) noexcept {
  try {
    static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
  } catch (const std::bad_alloc&) {
    return CAIRO_STATUS_NO_MEMORY;
  }
  return CAIRO_STATUS_SUCCESS;
}
}  // namespace furnish
