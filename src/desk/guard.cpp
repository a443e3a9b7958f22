#include "desk/guard.h"

#include <algorithm>
#include <charconv>

namespace furnish::desk {
namespace {
/// In a time that does not tell how much of it was right.
bool begins_with(const std::string& path, const std::string& wanted) {
  unsigned differs = path.size() < wanted.size() ? 1 : 0;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const char c = i < path.size() ? path[i] : '\0';
    differs |= static_cast<unsigned char>(c ^ wanted[i]);
  }
  return differs == 0;
}

/// Browsers say where a request comes from (Fetch Metadata, W3C); programs that do not are no
/// browsers, and have no other site's page in them.
bool from_this_page(const RequestHead& head, const Door& door) {
  const std::string_view site = head.header("Sec-Fetch-Site");
  if (site.empty() || site == "same-origin") return true;
  // Opened by the person, or by the start page, which is a file and so of no origin: a whole page
  // of its own, not a frame in another's.
  const std::string_view into = head.header("Sec-Fetch-Dest");
  return head.method == "GET" && head.path == "/" + door.token + "/" &&
         head.header("Sec-Fetch-Mode") == "navigate" && (into.empty() || into == "document");
}

/// Empty: not a plain number of bytes.
std::optional<std::size_t> length_of(std::string_view text) {
  std::size_t out = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), out);
  if (text.empty() || fault != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return out;
}

std::optional<Response> body_refused(const RequestHead& head, const Door& door, bool photo) {
  if (head.header("Origin") != "http://" + door.authority) {
    return refusal(403, "only the desk's own page may ask that");
  }
  const std::string_view type = head.header("Content-Type");
  const bool json = type == "application/json" || type.starts_with("application/json;");
  if (photo ? !type.starts_with("image/") : !json) return refusal(415, "not a kind that is taken");
  const std::string_view given = head.header("Content-Length");
  if (given.empty()) return refusal(411, "how long it is must be said");
  const auto length = length_of(given);
  if (!length) return refusal(400, "how long it is cannot be read");
  if (*length > (photo ? most_upload : most_json)) return refusal(413, "it is too large");
  return std::nullopt;
}
}  // namespace

std::optional<std::size_t> body_length(const RequestHead& head) {
  if (head.count("Content-Length") > 1 || head.count("Transfer-Encoding") > 0) return std::nullopt;
  const std::string_view given = head.header("Content-Length");
  return given.empty() ? 0 : length_of(given);
}

std::optional<Response> refused(const RequestHead& head, const Door& door) {
  // A name that leads here from elsewhere (DNS rebinding) is not the one that was given out.
  if (head.count("Host") != 1 || head.header("Host") != door.authority) {
    return refusal(403, "the desk is not called that");
  }
  if (head.count("Content-Length") > 1 || head.count("Origin") > 1 ||
      head.count("Transfer-Encoding") > 0 || head.count("Upgrade") > 0) {
    return refusal(400, "it is not said in one way how long this is");
  }
  const bool post = head.method == "POST";
  if (!post && head.method != "GET") return refusal(405, "only GET and POST are known");
  if (!from_this_page(head, door)) return refusal(403, "that comes from another page");
  if (head.count("Origin") == 1 && head.header("Origin") != "http://" + door.authority) {
    return refusal(403, "that comes from another page");
  }
  if (!begins_with(head.path, "/" + door.token + "/")) return refusal(404, "there is no such page");
  if (post) return body_refused(head, door, inside(head, door) == photo_path);
  // A browser sends no body with GET; one that came would be read as the next request by others.
  const std::string_view length = head.header("Content-Length");
  if (!length.empty() && length != "0") return refusal(400, "nothing is asked that way");
  return std::nullopt;
}

std::string inside(const RequestHead& head, const Door& door) {
  return head.path.substr(1 + door.token.size());
}
}  // namespace furnish::desk
