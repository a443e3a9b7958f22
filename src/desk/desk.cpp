#include "desk/desk.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <exception>
#include <nlohmann/json.hpp>
#include <utility>

#include "base/text.h"
#include "desk/chance.h"
#include "desk/edits_json.h"
#include "desk/formats.h"
#include "desk/page_files.h"
#include "desk/text_merge.h"
#include "spec/edit_merge.h"

namespace furnish::desk {
namespace {
using Json = Desk::Json;
constexpr std::string_view fonts = "/fonts/", font_ending = ".ttf", api = "/api/";
constexpr std::size_t most_found = 60;
/// PDFs wait for who prints them.
constexpr std::size_t most_kept = 8;
constexpr std::chrono::minutes keeps{10};
/// What comes in is nested no deeper than any file may be, and its edits.
constexpr int deepest = 48;

Response json(const Json& body, unsigned status = 200) {
  // What a person wrote may be no UTF-8, and is shown as such.
  return {status, "application/json", body.dump(-1, ' ', false, Json::error_handler_t::replace)};
}

/// In quotes as JSON has them. pre: UTF-8
std::string in_quotes(std::string_view text) {
  const auto written_otherwise = [](char c) {
    return c == '"' || c == '\\' || static_cast<unsigned char>(c) < 0x20;
  };
  std::string out = "\"";
  for (auto at = text.begin();; ++at) {
    const auto next = std::find_if(at, text.end(), written_otherwise);
    out.append(at, next);
    if (next == text.end()) return out += '"';
    out +=
        *next == '"' || *next == '\\' ? std::string{'\\', *next} : fmt::format("\\u{:04x}", *next);
    at = next;
  }
}

/// An answer with the sides of a sheet, which are most of it: drawings are long, and have little in
/// them that JSON writes in another way, so that they are not looked through letter by letter.
Response with_pages(Json body) {
  const Json pages = std::exchange(body["pages"], Json());
  body.erase("pages");
  Response out = json(body);
  out.body.back() = ',';
  out.body += "\"pages\":[";
  for (const Json& page : pages) {
    const auto& svg = page.get_ref<const std::string&>();
    if (&page != &pages.front()) out.body += ',';
    out.body += first_bad_utf8(svg) ? json(page).body : in_quotes(svg);
  }
  out.body += "]}";
  return out;
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

/// RFC 4648, section 5, without padding; empty if it is something else.
std::optional<std::string> from_base64url(std::string_view text) {
  constexpr std::string_view letters =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
  std::string out;
  unsigned bits = 0, held = 0;
  for (const char c : text) {
    const std::size_t value = letters.find(c);
    if (value == std::string_view::npos) return std::nullopt;
    held = (held << 6U | static_cast<unsigned>(value)) & 0xFFFFU;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    out += static_cast<char>(held >> bits & 0xFFU);
  }
  return out;
}

FileId file_of(const Json& asked) {
  return {text_of(asked, "kind"), text_of(asked, "id")};
}

/// An edit that was not done, as the page shows faults.
Json refused_json(const Edit& edit, const std::string& why) {
  return {{"level", "error"}, {"code", "edit"},         {"message", why},
          {"hint", ""},       {"notes", Json::array()}, {"path", path_json(edit.path)}};
}

Json conflict_json(const EditConflict& one) {
  const auto value = [](const std::optional<EditValue>& given) {
    return given ? value_json(*given) : Json();
  };
  return {{"path", path_json(one.path)},
          {"base", value(one.base)},
          {"theirs", value(one.theirs)},
          {"yours", value(one.yours)}};
}

/// A tablet lies about where owners stand: how to reach one is not on it.
void without_contact(Json& out) {
  out["text"] = "";
  if (!out["tree"].is_object() || !out["tree"].contains("owner")) return;
  Json& owner = out["tree"]["owner"];
  if (!owner.is_object()) return;
  for (const char* const key : {"phone", "email", "address"}) owner.erase(key);
}

Response unknown_mark() {
  return refusal(410, "the text this was made of is not known any more; open the file again");
}

Response no_file() {
  return refusal(404, "there is no such file in the salon's folder", "gone");
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
  const auto file =
      page_file(path == "/" ? "index.html" : std::string_view(path).substr(path.empty() ? 0 : 1));
  if (file) return {200, std::string(file->type), std::string(file->bytes)};
  return refusal(404, "there is no such page");
}

Response Desk::post(const std::string& name, const Json& asked) {
  if (name == "start") return start();
  if (name == "find") return json(salon_.find(text_of(asked, "words"), most_found));
  if (name == "open") return open(file_of(asked));
  if (name == "preview") return preview(asked);
  if (name == "day") {
    const auto date = parse_date(text_of(asked, "date"));
    if (!date) return refusal(400, "that is no day");
    Json day = salon_.day(*date);
    if (door_.look) {
      for (Json& one : day["ring"]) {
        one.erase("phone");
        one.erase("email");
      }
    }
    return json(day);
  }
  if (name == "print") return print(asked);
  constexpr std::array<std::string_view, 5> writes{"save", "draft", "create", "away", "back"};
  if (std::ranges::find(writes, name) == writes.end()) return refusal(404, "nothing is asked so");
  if (door_.look) return refusal(403, "this desk is for looking only");
  if (name == "save") return save(asked);
  if (name == "away" || name == "back") return move(name == "away", file_of(asked));
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
  Json out{{"kind", file.kind},
           {"id", file.id},
           {"mark", given_.give(*read.text)},
           {"text", *read.text},
           {"tree", tree_json(text_to_edit(file.kind, *read.text))},
           {"path_of_file", *shown}};
  out["visits"] = Json::array();
  if (file.kind == "pet") {
    for (const auto& [id, date] : salon_.visits(file.id)) {
      out["visits"].push_back({{"id", id}, {"date", date}});
    }
    for (const auto& [id, date] : salon_.away(file.id)) {
      out["away"].push_back({{"id", id}, {"date", date}});
    }
  }
  out["faults"] = salon_.look({file, *read.text, "", "", false})["faults"];
  if (door_.look) without_contact(out);
  return json(out);
}

std::optional<std::string> Desk::text_of_mark(const FileId& file, const std::string& mark) {
  if (const std::string* const given = given_.find(mark)) return *given;
  // A desk that was started again has given out nothing yet.
  FileText read = salon_.read(file);
  return read.text && mark_of(*read.text) == mark ? std::move(read.text) : std::nullopt;
}

Response Desk::preview(const Json& asked) {
  const FileId file = file_of(asked);
  if (!salon_.shown_path(file)) return no_file();
  const bool typed = asked.contains("text");
  const auto base =
      typed ? std::optional(text_of(asked, "text")) : text_of_mark(file, text_of(asked, "mark"));
  if (!base) return unknown_mark();
  EditedText text = text_to_edit(file.kind, *base);
  Json refused = Json::array();
  if (!typed) {
    for (const Edit& edit : edits_in(asked.at("edits"))) {
      if (!text.apply(edit)) refused.push_back(refused_json(edit, text.fault()));
    }
  }
  Json out =
      salon_.look({file, text.text(), text_of(asked, "sheet"), text_of(asked, "language"), true});
  // What cannot be done to the file stands before what the file says.
  for (Json& fault : out["faults"]) refused.push_back(std::move(fault));
  out["faults"] = std::move(refused);
  out["tree"] = tree_json(text);
  out["text"] = text.text();
  out["lost"] = text.lost();
  if (door_.look) without_contact(out);
  return with_pages(std::move(out));
}

Response Desk::save(const Json& asked) {
  const FileId file = file_of(asked);
  const FileText now = salon_.shown_path(file) ? salon_.read(file) : FileText{};
  if (!now.text) return no_file();
  const std::string mark = text_of(asked, "mark");
  if (asked.contains("text")) {
    std::string typed = text_of(asked, "text");
    if (mark_of(*now.text) == mark || typed == *now.text) {
      return written(file, std::move(typed), {});
    }
    const std::string* const then = given_.find(mark);
    if (auto merged = then != nullptr ? merged_texts(*then, *now.text, typed) : std::nullopt) {
      // Two changes that are right by themselves may be wrong together: a key twice.
      const bool right =
          text_to_edit(file.kind, typed).good() && text_to_edit(file.kind, *now.text).good();
      if (!right || text_to_edit(file.kind, *merged).good()) {
        return written(file, *std::move(merged), {});
      }
    }
    const Json both{
        {"path", Json::array()}, {"base", nullptr}, {"theirs", *now.text}, {"yours", typed}};
    return json({{"error", "the file was changed by others meanwhile"}, {"conflicts", {both}}},
                409);
  }
  const auto base = text_of_mark(file, mark);
  if (!base) return unknown_mark();
  const std::vector<Edit> edits = edits_in(asked.at("edits"));
  const EditedText then = text_to_edit(file.kind, *base), here = text_to_edit(file.kind, *now.text);
  if (!then.good() || !here.good()) {
    return refusal(409, "the file is no TOML any more; look at its text", "text");
  }
  const MergedEdits both = merged(then, edits, here);
  if (both.conflicts.empty() && both.fault.empty()) {
    return written(file, both.text.text(), both.text.lost());
  }
  Json out{{"error", both.fault.empty() ? "others changed the same meanwhile" : both.fault},
           {"conflicts", Json::array()}};
  for (const EditConflict& one : both.conflicts) out["conflicts"].push_back(conflict_json(one));
  return json(out, 409);
}

Response Desk::written(const FileId& file, std::string text, const std::vector<std::string>& lost) {
  const std::string fault = salon_.write(file, text);
  if (!fault.empty()) return refusal(507, fault, "write");
  drafts_.forget(file);
  Json out{{"mark", given_.give(text)}};
  out["tree"] = tree_json(text_to_edit(file.kind, text));
  out["faults"] = salon_.look({file, text, "", "", false})["faults"];
  out["text"] = std::move(text);
  out["lost"] = lost;
  return json(out);
}

Response Desk::draft(const Json& asked) {
  const FileId file = file_of(asked);
  if (!salon_.shown_path(file)) return no_file();
  const std::string fault = drafts_.keep(file, asked);
  return fault.empty() ? json(Json::object()) : refusal(507, fault, "write");
}

Response Desk::create(const Json& asked) {
  const std::string kind = text_of(asked, "kind");
  const std::string name = text_of(asked, kind == "visit" ? "id" : "name");
  const Made made = salon_.create(kind, name);
  if (!made.fault.empty()) return refusal(409, made.fault, made.code);
  if (asked.contains("edits") && !asked["edits"].empty()) {
    const FileText fresh = salon_.read(made.file);
    EditedText text = text_to_edit(kind, fresh.text.value_or(""));
    for (const Edit& edit : edits_in(asked["edits"])) text.apply(edit);  // `open` shows what came
    const std::string fault = salon_.write(made.file, text.text());
    if (!fault.empty()) {
      salon_.take_back(made.file);
      return refusal(507, fault, "write");
    }
  }
  return open(made.file);
}

Response Desk::move(bool away, const FileId& file) {
  const std::string fault = away ? salon_.put_away(file) : salon_.put_back(file);
  if (!fault.empty()) return refusal(409, fault);
  if (away) drafts_.forget(file);
  return json(Json::object());
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
    for (const Json& one : what)
      wanted.push_back({file_of(one), text_of(one, "sheet"), text_of(one, "language")});
    printed = salon_.print(wanted);
  }
  if (!printed.pdf) return refusal(422, printed.fault, printed.code, printed.about);
  while (kept_.size() >= most_kept) kept_.pop_front();
  kept_.push_back({chance(), *std::move(printed.pdf), std::chrono::steady_clock::now() + keeps});
  return json({{"url", fmt::format("out/{}.pdf", kept_.back().handle)}});
}

Response Desk::upload(const Request& request) {
  if (door_.look) return refusal(403, "this desk is for looking only");
  const auto visit = from_base64url(request.head.header("X-Furnish-For"));
  if (!visit || !salon_.shown_path({"visit", *visit})) return no_file();
  const PhotoMade made = salon_.add_photo(*visit, request.body);
  return made.fault.empty() ? json({{"path", made.path}}) : refusal(422, made.fault);
}
}  // namespace furnish::desk
