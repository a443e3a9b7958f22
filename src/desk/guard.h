#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "desk/request.h"

namespace furnish::desk {

/// Where the desk stands, and what has to be known to come in.
struct Door {
  std::string authority;  ///< "127.0.0.1:41234", as a browser names it
  std::string token;      ///< 128 bits by chance, in hexadecimal
  bool look = false;      ///< nothing may be written
};

/// A file of the largest size there is, escaped letter by letter in JSON, and what stands around
/// it.
inline constexpr std::size_t most_json = std::size_t{512} * 1024;
/// A photo, as most_photo_bytes has it.
inline constexpr std::size_t most_upload = std::size_t{32} * 1024 * 1024;
inline constexpr const char* photo_path = "/api/photo";

/// How many bytes come behind the head; empty if that is not said in one way.
std::optional<std::size_t> body_length(const RequestHead&);

/// Whether who asks may ask at all, by the head alone, before any of the body is read. What it
/// holds off: another computer, a page of another origin, a name that was bent to this address, a
/// frame, a form, a guess at the token, a body that is too large or has no known end. Empty if this
/// one may come in.
std::optional<Response> refused(const RequestHead&, const Door&);
/// What stands behind the token, from its slash on; pre: it was not refused.
std::string inside(const RequestHead&, const Door&);
}  // namespace furnish::desk
