#include <catch2/catch.hpp>

#include "desk/guard.h"

namespace {
using furnish::desk::Door;
using furnish::desk::RequestHead;

const Door door{"127.0.0.1:4242", "0123456789abcdef0123456789abcdef"};

RequestHead get(const std::string& path = "/") {
  return {"GET", "/" + door.token + path, {{"Host", door.authority}}};
}
RequestHead post(const std::string& length = "2") {
  return {"POST",
          "/" + door.token + "/api/start",
          {{"Host", door.authority},
           {"Origin", "http://" + door.authority},
           {"Content-Type", "application/json"},
           {"Content-Length", length}}};
}
void set(RequestHead& head, const std::string& name, const std::string& value) {
  for (auto& [key, old] : head.headers) {
    if (key == name) {
      old = value;
      return;
    }
  }
  head.headers.emplace_back(name, value);
}
/// 0: it may come in.
unsigned status(const RequestHead& head) {
  const auto refused = furnish::desk::refused(head, door);
  return refused ? refused->status : 0;
}
unsigned with(RequestHead head, const std::string& name, const std::string& value) {
  set(head, name, value);
  return status(head);
}
}  // namespace

TEST_CASE("the desk's own page may ask", "[guard]") {
  CHECK(status(get()) == 0);
  CHECK(status(post()) == 0);
  CHECK(with(get(), "Sec-Fetch-Site", "same-origin") == 0);
  CHECK(with(post(), "Content-Type", "application/json; charset=utf-8") == 0);
  CHECK(furnish::desk::inside(post(), door) == "/api/start");
}

TEST_CASE("a name that leads here from elsewhere is refused", "[guard]") {
  for (const char* const host : {"evil.example:4242", "localhost:4242", "127.0.0.1:1", "127.0.0.1",
                                 "127.0.0.1:4242.evil.example", ""}) {
    INFO(host);
    CHECK(with(get(), "Host", host) == 403);
  }
  RequestHead two = get();
  two.headers.emplace_back("host", "evil.example");
  CHECK(status(two) == 403);
  RequestHead none = get();
  none.headers.clear();
  CHECK(status(none) == 403);
}

TEST_CASE("another origin is refused", "[guard]") {
  for (const char* const origin : {"http://evil.example", "null", "https://127.0.0.1:4242",
                                   "http://127.0.0.1:4243", "http://localhost:4242"}) {
    INFO(origin);
    CHECK(with(get(), "Origin", origin) == 403);
    CHECK(with(post(), "Origin", origin) == 403);
  }
  for (const char* const site : {"cross-site", "same-site", "none"}) {
    INFO(site);
    CHECK(with(get("/desk.js"), "Sec-Fetch-Site", site) == 403);
    CHECK(with(post(), "Sec-Fetch-Site", site) == 403);
  }
  RequestHead unsaid = post();
  std::erase_if(unsaid.headers, [](const auto& one) { return one.first == "Origin"; });
  CHECK(status(unsaid) == 403);
}

TEST_CASE("the page alone may be opened from outside, and in no frame", "[guard]") {
  RequestHead opened = get();
  set(opened, "Sec-Fetch-Site", "cross-site");  // the start page is a file
  set(opened, "Sec-Fetch-Mode", "navigate");
  set(opened, "Sec-Fetch-Dest", "document");
  CHECK(status(opened) == 0);
  CHECK(with(opened, "Sec-Fetch-Dest", "iframe") == 403);
  CHECK(with(opened, "Sec-Fetch-Mode", "no-cors") == 403);
  opened.path += "out/1.pdf";
  CHECK(status(opened) == 403);
}

TEST_CASE("who does not know the token finds nothing", "[guard]") {
  const std::string& token = door.token;
  for (const std::string& path :
       {std::string("/"), "/" + token, "/" + token.substr(1) + "/",
        "/" + std::string(32, '0') + "/", "//" + token + "/", std::string()}) {
    INFO(path);
    RequestHead head = get();
    head.path = path;
    CHECK(status(head) == 404);
  }
}

TEST_CASE("only GET and POST are known, and a form is no request", "[guard]") {
  for (const char* const method : {"OPTIONS", "PUT", "DELETE", "TRACE", "HEAD", "CONNECT", "get"}) {
    INFO(method);
    RequestHead head = get();
    head.method = method;
    CHECK(status(head) == 405);
  }
  for (const char* const type : {"text/plain", "application/x-www-form-urlencoded", "",
                                 "multipart/form-data", "application/jsonx", "image/png"}) {
    INFO(type);
    CHECK(with(post(), "Content-Type", type) == 415);
  }
}

TEST_CASE("a body has a length, one, and within bounds", "[guard]") {
  CHECK(status(post("524288")) == 0);
  CHECK(status(post("524289")) == 413);
  CHECK(status(post("99999999999999999999")) == 400);
  for (const char* const length : {"-1", "+1", "1 ", "0x10", "1,1"}) {
    INFO(length);
    CHECK(status(post(length)) == 400);
  }
  CHECK(status(post("")) == 411);
  RequestHead two = post();
  two.headers.emplace_back("Content-Length", "3");
  CHECK(status(two) == 400);
  CHECK(with(post(), "Transfer-Encoding", "chunked") == 400);
  CHECK(with(get(), "Content-Length", "5") == 400);
  CHECK(with(get(), "Upgrade", "websocket") == 400);
}

TEST_CASE("a photo may be large, and must be a picture", "[guard]") {
  RequestHead photo = post("1000000");
  photo.path = "/" + door.token + furnish::desk::photo_path;
  CHECK(status(photo) == 415);
  set(photo, "Content-Type", "image/jpeg");
  CHECK(status(photo) == 0);
  CHECK(with(photo, "Content-Length", "33554433") == 413);
}
