#include "desk/desk.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <exception>
#include <nlohmann/json.hpp>
#include <utility>

#include "desk/formats.h"
#include "desk/page_files.h"
#include "desk/tree.h"
#include "spec/document.h"

namespace furnish::desk {
namespace {
using Json = Desk::Json;
constexpr std::string_view fonts = "/fonts/", font_ending = ".ttf", api = "/api/";
constexpr std::size_t most_found = 60;
/// What comes in is nested no deeper than any file may be, and its edits.
constexpr int deepest = 48;

Response json(const Json& body, unsigned status = 200) {
  // What a person wrote may be no UTF-8, and is shown as such.
  return {status, "application/json", body.dump(-1, ' ', false, Json::error_handler_t::replace)};
}

/// Empty if it is no JSON object, or nested too deep.
std::optional<Json> asked_in(const std::string& body) {
  bool too_deep = false;
  const auto keep = [&](int depth, Json::parse_event_t, Json&) {
    too_deep = too_deep || depth > deepest;
    return !too_deep;
  };
  Json out = Json::parse(body, keep, false);
  if (too_deep || !out.is_object()) return std::nullopt;
  return out;
}

/// A text of what is asked; empty if it is not there. Throws Json::exception for another kind.
std::string text_of(const Json& asked, const char* key) {
  return asked.contains(key) ? asked.at(key).get<std::string>() : std::string();
}

FileId file_of(const Json& asked) {
  return {text_of(asked, "kind"), text_of(asked, "id")};
}

Response no_file() {
  return refusal(404, "there is no such file in the salon's folder");
}
}  // namespace

Desk::Desk(Salon& salon, Drafts& drafts, Door door)
    : salon_(salon), drafts_(drafts), door_(std::move(door)) {}

void Desk::open_at(std::uint16_t port) {
  door_.authority = fmt::format("127.0.0.1:{}", port);
}

Response Desk::answer(const Request& request) {
  const std::string path = inside(request.head, door_);
  try {
    if (request.head.method == "GET") return get(path);
    if (path == photo_path) return upload(request);
    const auto asked = asked_in(request.body);
    if (!asked) return refusal(400, "that is not asked in JSON");
    if (!path.starts_with(api)) return refusal(404, "there is no such page");
    return post(path.substr(api.size()), *asked);
  } catch (const Json::exception&) {
    return refusal(400, "that is not asked as it should be");
  } catch (const std::exception& fault) {
    return refusal(500, fmt::format("{}; please report this", fault.what()));
  }
}

Response Desk::get(const std::string& path) {
  if (path == "/api/events") {
    Response out;
    out.stream = true;
    return out;
  }
  if (path.starts_with(fonts) && path.ends_with(font_ending)) {
    const std::size_t size = path.size() - fonts.size() - font_ending.size();
    auto font = salon_.font(path.substr(fonts.size(), size));
    if (font) return {200, "font/ttf", *std::move(font)};
  }
  const auto now = std::chrono::steady_clock::now();
  std::erase_if(kept_, [&](const Kept& one) { return one.until < now; });
  for (const Kept& one : kept_) {
    if (path == fmt::format("/out/{}.pdf", one.handle)) return {200, "application/pdf", one.pdf};
  }
  const auto file = page_file(path == "/" ? "index.html" : path.substr(1));
  if (file) return {200, std::string(file->type), std::string(file->bytes)};
  return refusal(404, "there is no such page");
}

Response Desk::post(const std::string& name, const Json& asked) {
  if (name == "start") return start();
  if (name == "find") return json({{"pets", salon_.find(text_of(asked, "words"), most_found)}});
  if (name == "open") return open(file_of(asked));
  if (name == "preview") return preview(asked);
  if (name == "day") {
    const auto date = parse_date(text_of(asked, "date"));
    return date ? json(salon_.day(*date)) : refusal(400, "that is no day");
  }
  if (name == "print") return print(asked);
  constexpr std::array<std::string_view, 3> writes{"save", "draft", "create"};
  if (std::ranges::find(writes, name) == writes.end()) return refusal(404, "nothing is asked so");
  if (door_.look) return refusal(403, "this desk is for looking only");
  if (name == "save") return save(asked);
  return name == "draft" ? draft(asked) : create(asked);
}

Response Desk::start() {
  Json out = salon_.facts();
  out["look"] = door_.look;
  out["formats"] = formats_json();
  out["sheets"] = {"card", "style", "care", "note", "note-owner"};
  out["drafts"] = door_.look ? Json::array() : drafts_.all();
  return json(out);
}

Response Desk::open(const FileId& file) {
  const auto shown = salon_.shown_path(file);
  if (!shown) return no_file();
  const FileText read = salon_.read(file);
  if (!read.text) return refusal(422, read.fault);
  const auto document = parsed(*read.text);
  Json out{{"kind", file.kind},
           {"id", file.id},
           {"mark", given_.give(*read.text)},
           {"text", *read.text},
           {"tree", document ? tree_json(*document) : Json()},
           {"path_of_file", *shown}};
  out["visits"] = Json::array();
  if (file.kind == "pet") {
    for (const auto& [id, date] : salon_.visits(file.id)) {
      out["visits"].push_back({{"id", id}, {"date", date}});
    }
  }
  out["faults"] = salon_.look({file, *read.text, "", false})["faults"];
  return json(out);
}

Response Desk::preview(const Json& asked) {
  const FileId file = file_of(asked);
  if (!salon_.shown_path(file)) return no_file();
  const std::string text = text_of(asked, "text");
  const auto document = parsed(text);
  Json out{{"tree", document ? tree_json(*document) : Json()}, {"text", text}};
  out.update(salon_.look({file, text, text_of(asked, "sheet"), true}));
  out["lost"] = Json::array();
  return json(out);
}

Response Desk::save(const Json&) {
  return refusal(501, "not yet");
}

Response Desk::draft(const Json& asked) {
  const FileId file = file_of(asked);
  if (!salon_.shown_path(file)) return no_file();
  const std::string fault = drafts_.keep(file, asked);
  return fault.empty() ? json(Json::object()) : refusal(507, fault);
}

Response Desk::create(const Json& asked) {
  const std::string kind = text_of(asked, "kind");
  const std::string name = text_of(asked, kind == "visit" ? "id" : "name");
  const Made made = salon_.create(kind, name);
  return made.fault.empty() ? open(made.file) : refusal(409, made.fault);
}

Response Desk::print(const Json& asked) {
  Printed printed;
  const Json& what = asked.at("what");
  if (what.is_object()) {
    const auto date = parse_date(text_of(what, "day"));
    if (!date) return refusal(400, "that is no day");
    printed = salon_.print_day(*date, text_of(what, "sheet"));
  } else {
    std::vector<SheetWanted> wanted;
    for (const Json& one : what) wanted.push_back({file_of(one), text_of(one, "sheet")});
    printed = salon_.print(wanted);
  }
  if (!printed.pdf) return refusal(422, printed.fault);
  return refusal(501, "not yet");
}

Response Desk::upload(const Request&) {
  if (door_.look) return refusal(403, "this desk is for looking only");
  return refusal(501, "not yet");
}
}  // namespace furnish::desk
