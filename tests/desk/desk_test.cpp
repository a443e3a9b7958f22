#include <catch2/catch.hpp>

#include <map>
#include <nlohmann/json.hpp>

#include "desk/desk.h"

namespace {
namespace desk = furnish::desk;
using Json = nlohmann::ordered_json;

/// A salon of a few texts, which remembers what was asked of it.
class Texts final : public desk::Salon {
 public:
  std::map<desk::FileId, std::string> files{
      {{"pet", "rex"}, "[pet]\nname = \"Rex\"  # the first\n"}};
  desk::LookOrder looked;
  int writes = 0;
  std::string photo;

  Json facts() override { return {{"salon", {{"name", "Test"}}}}; }
  Json find(std::string_view words, std::size_t) override {
    return {{"pets", {{{"id", words}}}}, {"reading", 0}};
  }
  Json day(furnish::Date date) override { return {{"date", furnish::to_iso(date)}}; }
  std::optional<std::string> shown_path(const desk::FileId& file) override {
    return files.contains(file) ? std::optional(file.kind + "s/" + file.id) : std::nullopt;
  }
  desk::FileText read(const desk::FileId& file) override { return {files.at(file), {}}; }
  std::vector<std::pair<std::string, std::string>> visits(std::string_view pet) override {
    return {{std::string(pet) + "/2026-11-24", "2026-11-24"}};
  }
  Json look(const desk::LookOrder& order) override {
    looked = order;
    return {{"faults", Json::array()},
            {"cautions", Json::array()},
            {"pages", {"<svg/>"}},
            {"figure", nullptr}};
  }
  std::string put_away(const desk::FileId& file) override {
    moved += "away " + file.id + ";";
    return {};
  }
  std::string put_back(const desk::FileId& file) override {
    moved += "back " + file.id + ";";
    return {};
  }
  std::vector<std::pair<std::string, std::string>> away(std::string_view) override { return {}; }
  std::string moved;
  std::string fault;  ///< of the disk
  std::string write(const desk::FileId& file, std::string_view text) override {
    if (!fault.empty()) return fault;
    ++writes;
    files[file] = text;
    return {};
  }
  desk::Made create(std::string_view kind, std::string_view name) override {
    const desk::FileId file{std::string(kind), std::string(name)};
    if (!files.try_emplace(file, "[pet]\nname = \"new\"\n").second) return {{}, "it is there"};
    return {file, {}};
  }
  void take_back(const desk::FileId& file) override { files.erase(file); }
  desk::PhotoMade add_photo(std::string_view visit, std::string_view bytes) override {
    photo = std::string(visit) + ":" + std::string(bytes);
    return {"photos/1.jpg", {}};
  }
  desk::Printed print(const std::vector<desk::SheetWanted>& wanted) override {
    return {"pdf of " + std::to_string(wanted.size()), {}};
  }
  desk::Printed print_day(furnish::Date, std::string_view) override {
    return {std::nullopt, "nothing is booked", "no-day", "Marlow"};
  }
  std::optional<std::string> font(std::string_view name) override {
    return name == "F" ? std::optional<std::string>("font") : std::nullopt;
  }
};

/// A desk without sockets or a disk.
struct Table {
  explicit Table(bool look = false) : desk(salon, drafts, {"", "token", look}) { desk.open_at(1); }
  desk::Response get(const std::string& path) {
    return desk.answer({{"GET", "/token" + path, {}}, {}});
  }
  desk::Response post(const std::string& name, const std::string& body) {
    return desk.answer({{"POST", "/token/api/" + name, {}}, body});
  }
  Json ask(const std::string& name, const Json& body, unsigned status = 200) {
    const desk::Response answer = post(name, body.dump());
    INFO(answer.body);
    CHECK(answer.status == status);
    return Json::parse(answer.body);
  }
  std::string mark() {
    return ask("open", {{"kind", "pet"}, {"id", "rex"}})["mark"].get<std::string>();
  }
  Json with_edits(const Json& edits) {
    return {{"kind", "pet"}, {"id", "rex"}, {"mark", mark()}, {"edits", edits}, {"sheet", "card"}};
  }
  Texts salon;
  desk::Drafts drafts{"", furnish::system_disk()};
  desk::Desk desk;
};

const Json older = {{{"op", "set"}, {"path", {"pet", "colour"}}, {"value", "grey"}}};
}  // namespace

TEST_CASE("the page's files are built in, and nothing else is served", "[desk]") {
  Table table;
  CHECK(table.get("/").type == "text/html; charset=utf-8");
  CHECK(table.get("/desk.css").type == "text/css; charset=utf-8");
  CHECK(table.get("/fonts/F.ttf").body == "font");
  for (const char* const path : {"/../salon.toml", "/pets/rex.toml", "/fonts/G.ttf", "/fonts/.ttf",
                                 "/out/1.pdf", "/index.html/", "/api/start", "/%2e%2e", ""}) {
    INFO(path);
    CHECK(table.get(path).status == 404);
  }
  CHECK(table.get("/api/events").stream);
}

TEST_CASE("a start tells who the salon is, its forms and what is not saved", "[desk]") {
  Table table;
  const Json start = table.ask("start", Json::object());
  CHECK(start["salon"]["name"] == "Test");
  CHECK(start["look"] == false);
  CHECK(start["drafts"].empty());
  CHECK(start["formats"]["pet"]["keys"].size() > 10);
  CHECK(start["formats"]["pet"]["keys"][0]["table"]["keys"][0]["kind"] == "text");
}

TEST_CASE("a file that is opened has its text, tree, mark and visits", "[desk]") {
  Table table;
  const Json open = table.ask("open", {{"kind", "pet"}, {"id", "rex"}});
  CHECK(open["text"] == table.salon.files.at({"pet", "rex"}));
  CHECK(open["tree"]["pet"]["name"] == "Rex");
  CHECK(open["visits"][0]["id"] == "rex/2026-11-24");
  table.ask("open", {{"kind", "pet"}, {"id", "../salon"}}, 404);
  table.ask("open", Json::object(), 404);
}

TEST_CASE("a preview lays edits over the text that was opened, and writes nothing", "[desk]") {
  Table table;
  const Json seen = table.ask("preview", table.with_edits(older));
  CHECK(seen["tree"]["pet"]["colour"] == "grey");
  CHECK(seen["pages"].size() == 1);
  CHECK(table.salon.looked.text == seen["text"]);
  CHECK(table.salon.looked.sheet == "card");
  CHECK(table.salon.writes == 0);
  const Json typed = table.ask(
      "preview", {{"kind", "pet"}, {"id", "rex"}, {"text", "no toml ["}, {"sheet", "card"}});
  CHECK(typed["tree"].is_null());
  CHECK(table.salon.looked.text == "no toml [");
}

TEST_CASE("an edit that cannot be done is a fault, and the others are done", "[desk]") {
  Table table;
  Json edits = older;
  edits.insert(edits.begin(), Json{{"op", "remove"}, {"path", {"bath", "dry"}}});
  const Json seen = table.ask("preview", table.with_edits(edits));
  REQUIRE(seen["faults"].size() == 1);
  CHECK(seen["faults"][0]["path"] == Json{"bath", "dry"});
  CHECK(seen["tree"]["pet"]["colour"] == "grey");
  table.ask("save", table.with_edits(edits), 409);
  CHECK(table.salon.writes == 0);
}

TEST_CASE("a save changes what was asked and no other byte", "[desk]") {
  Table table;
  const Json saved = table.ask("save", table.with_edits(older));
  CHECK(table.salon.files.at({"pet", "rex"}) ==
        "[pet]\nname = \"Rex\"  # the first\ncolour = \"grey\"\n");
  CHECK(saved["text"] == table.salon.files.at({"pet", "rex"}));
  CHECK(saved["mark"] == table.mark());
}

TEST_CASE("edits of an older text are laid on the file as it is now", "[desk]") {
  Table table;
  const Json asked = table.with_edits(older);
  table.salon.files[{"pet", "rex"}] = "[pet]\nname = \"Rex\"\nbreed = \"terrier\"\n";
  table.ask("save", asked);
  const Json tree = table.ask("open", {{"kind", "pet"}, {"id", "rex"}})["tree"];
  CHECK(tree["pet"]["breed"] == "terrier");
  CHECK(tree["pet"]["colour"] == "grey");
}

TEST_CASE("where both changed one value, both are shown and nothing is written", "[desk]") {
  Table table;
  const Json asked = table.with_edits(older);
  const std::string theirs = "[pet]\nname = \"Rex\"\ncolour = \"black\"\n";
  table.salon.files[{"pet", "rex"}] = theirs;
  const Json refused = table.ask("save", asked, 409);
  REQUIRE(refused["conflicts"].size() == 1);
  CHECK(refused["conflicts"][0]["path"] == Json{"pet", "colour"});
  CHECK(refused["conflicts"][0]["base"].is_null());
  CHECK(refused["conflicts"][0]["theirs"] == "black");
  CHECK(refused["conflicts"][0]["yours"] == "grey");
  CHECK(table.salon.files.at({"pet", "rex"}) == theirs);
  // What both changed to the same is none.
  table.salon.files[{"pet", "rex"}] = "[pet]\nname = \"Rex\"\ncolour = \"grey\"\n";
  table.ask("save", asked);
}

TEST_CASE("a text that was typed never replaces what others wrote meanwhile", "[desk]") {
  Table table;
  const Json asked{{"kind", "pet"}, {"id", "rex"}, {"mark", table.mark()}, {"text", "a = 1\n"}};
  table.salon.files[{"pet", "rex"}] = "b = 2\n";
  const Json refused = table.ask("save", asked, 409);
  CHECK(refused["conflicts"][0]["theirs"] == "b = 2\n");
  CHECK(table.salon.files.at({"pet", "rex"}) == "b = 2\n");
  table.salon.files[{"pet", "rex"}] = "[pet]\nname = \"Rex\"  # the first\n";
  table.ask("save", asked);
  CHECK(table.salon.files.at({"pet", "rex"}) == "a = 1\n");
}

TEST_CASE("a text that was typed is merged with what others wrote in other lines", "[desk]") {
  Table table;
  const std::string first = "[pet]\nname = \"Rex\"\n\n[owner]\nname = \"A. Nobody\"\n";
  table.salon.files[{"pet", "rex"}] = first;
  const Json asked{
      {"kind", "pet"}, {"id", "rex"}, {"mark", table.mark()}, {"text", "# mine\n" + first}};
  table.salon.files[{"pet", "rex"}] = first + "phone = \"1\"\n";
  CHECK(table.ask("save", asked)["text"] == "# mine\n" + first + "phone = \"1\"\n");
  // Each is right by itself, and both together would name one key twice.
  Json twice = asked;
  twice["mark"] = table.mark();
  const std::string now = table.salon.files.at({"pet", "rex"});
  twice["text"] = "[bath]\ndry = \"cool\"\n" + now;
  table.salon.files[{"pet", "rex"}] = now + "\n[bath]\ndry = \"warm\"\n";
  const Json refused = table.ask("save", twice, 409);
  CHECK(refused["conflicts"][0]["theirs"] == now + "\n[bath]\ndry = \"warm\"\n");
  CHECK(refused["conflicts"][0]["yours"] == twice["text"]);
  CHECK(table.salon.files.at({"pet", "rex"}) == now + "\n[bath]\ndry = \"warm\"\n");
}

TEST_CASE("a mark that nobody gave out is told, not guessed at", "[desk]") {
  Table table;
  Json asked = table.with_edits(older);
  asked["mark"] = "0000000000000000-1";
  table.ask("preview", asked, 410);
  table.ask("save", asked, 410);
}

TEST_CASE("a new file begins with what is known, and is never put over another", "[desk]") {
  Table table;
  const Json made = table.ask("create", {{"kind", "pet"}, {"name", "pip"}, {"edits", older}});
  CHECK(made["id"] == "pip");
  CHECK(made["tree"]["pet"]["colour"] == "grey");
  table.ask("create", {{"kind", "pet"}, {"name", "rex"}}, 409);
  table.salon.fault = "no space left";
  table.ask("create", {{"kind", "pet"}, {"name", "wren"}, {"edits", older}}, 507);
  CHECK_FALSE(table.salon.files.contains({"pet", "wren"}));
  CHECK(table.salon.files.at({"pet", "rex"}).find("Rex") != std::string::npos);
}

TEST_CASE("what is printed waits under a name that nobody can guess", "[desk]") {
  Table table;
  const Json one{{"kind", "pet"}, {"id", "rex"}, {"sheet", "card"}};
  const auto url =
      table.ask("print", {{"what", Json::array({one, one})}})["url"].get<std::string>();
  CHECK(url.find("rex") == std::string::npos);
  CHECK(url.size() == std::string("out/.pdf").size() + 32);
  const desk::Response pdf = table.get("/" + url);
  CHECK(pdf.type == "application/pdf");
  CHECK(pdf.body == "pdf of 2");
  const Json day = table.ask("print", {{"what", {{"day", "2026-11-24"}, {"sheet", "card"}}}}, 422);
  CHECK(day["error"] == "nothing is booked");
  // So that the page can say it in its own words and language.
  CHECK(day["code"] == "no-day");
  CHECK(day["about"] == "Marlow");
  table.ask("print", {{"what", {{"day", "tomorrow"}}}}, 400);
}

TEST_CASE("a photo says in a header whose it is", "[desk]") {
  Table table;
  table.salon.files[{"visit", "rex/2026-11-24"}] = "";
  const auto send = [&](const char* whose) {
    return table.desk.answer({{"POST", "/token/api/photo", {{"X-Furnish-For", whose}}}, "bytes"});
  };
  CHECK(send("cmV4LzIwMjYtMTEtMjQ").body == R"({"path":"photos/1.jpg"})");
  CHECK(table.salon.photo == "rex/2026-11-24:bytes");
  CHECK(send("cmV4").status == 404);
  CHECK(send("***").status == 404);
}

TEST_CASE("a desk for looking changes nothing", "[desk]") {
  Table table(true);
  const Json asked = table.with_edits(older);
  for (const char* const name : {"save", "draft", "create", "away", "back"}) {
    INFO(name);
    table.ask(name, asked, 403);
  }
  CHECK(table.desk.answer({{"POST", "/token/api/photo", {}}, "x"}).status == 403);
  table.ask("preview", asked);
  CHECK(table.salon.writes == 0);
  CHECK(table.salon.moved.empty());
}

TEST_CASE("a desk for looking does not say how to reach an owner", "[desk]") {
  for (const bool look : {false, true}) {
    Table table(look);
    table.salon.files[{"pet", "rex"}] =
        "[pet]\nname = \"Rex\"\n[owner]\nname = \"O\"\nphone = \"555\"\nemail = \"o@o\"\n";
    const std::string opened = table.ask("open", {{"kind", "pet"}, {"id", "rex"}}).dump();
    const std::string seen = table.ask("preview", table.with_edits(older)).dump();
    for (const std::string& answer : {opened, seen}) {
      CHECK((answer.find("555") == std::string::npos) == look);
      CHECK((answer.find("o@o") == std::string::npos) == look);
      CHECK(answer.find("Rex") != std::string::npos);
    }
  }
}

TEST_CASE("a visit is put away and back again, and a sheet can be in another language", "[desk]") {
  Table table;
  const Json visit{{"kind", "visit"}, {"id", "rex/2026-11-24"}};
  table.ask("away", visit);
  table.ask("back", visit);
  CHECK(table.salon.moved == "away rex/2026-11-24;back rex/2026-11-24;");
  Json asked = table.with_edits(Json::array());
  asked["language"] = "es";
  table.ask("preview", asked);
  CHECK(table.salon.looked.language == "es");
}

TEST_CASE("what is no question is told apart, whatever its shape", "[desk]") {
  Table table;
  for (const std::string& body :
       {std::string("{"), std::string("[1]"), std::string(), std::string("null"),
        std::string(100000, '['), std::string(R"({"kind": 1})"),
        std::string(R"({"kind": "pet", "id": ["rex"]})")}) {
    INFO(body.substr(0, 30));
    CHECK(table.post("open", body).status == 400);
  }
  const std::string deep = R"({"a":)" + std::string(60, '[') + std::string(60, ']') + "}";
  CHECK(table.post("start", deep).status == 400);
  CHECK(table.post("nothing", "{}").status == 404);
  CHECK(table.post("../start", "{}").status == 404);
  const Json no_edits{{"kind", "pet"}, {"id", "rex"}, {"mark", table.mark()}};
  table.ask("preview", no_edits, 400);
}
