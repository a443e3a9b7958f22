#pragma once

#include <string>
#include <utility>
#include <vector>

namespace furnish::test {

/// Files that are TOML, and hard to change without harm.
inline std::vector<std::pair<std::string, std::string>> tricky_files() {
  std::string windows =
      "\xEF\xBB\xBF# made elsewhere\n\n[pet]\nname = \"Ana\"\ncoat = \"silky\"\n\n[owner]\nname = "
      "\"L.\"  # next door\ncollects = [\n\t\"A\",\n\t\"B\", # b\n]\n[health]\nnotes = "
      "\"\"\"\nx\n# "
      "y\"\"\"\n";
  for (std::size_t i = 0; (i = windows.find('\n', i)) != std::string::npos; i += 2) {
    windows.insert(i, "\r");
  }
  return {
      {"empty", ""},
      {"mark only", "\xEF\xBB\xBF"},
      {"remark without an end", "# nothing yet"},
      {"windows", windows},
      {"plain",
       "# Zoë's file. Ask before changing.   <- top\n\n[pet]   # who it is\nname    = \"Zoë 🐶\"    "
       "  "
       "# dots!\nbreed   = 'spitz \\ cross'\ncoat    = \"double\"\n\n# --- people "
       "---\n[owner]\nname  "
       "   = \"R. Adeyemi\"\ncollects = [\n  \"Priya\",   # mother\n  \"Tom\"      # Fridays\n]"},
      {"braces",
       "[bath]\nshampoo     = { product = \"oat\", dwell = \"4 min\" }   # never "
       "lavender\nconditioner "
       "= {product=\"nourish\"}\nothers      = [ { product = \"ear\" }, { product = \"spray\", "
       "kind = "
       "\"spray\" }, ]\ndry = \"towel\"\n[preferences]\nkeep_under = { ears = \"40 mm\", \"left "
       "hock\" "
       "= \"12 mm\" } # she measures\ndislikes = []\nodd = { a.b = 1, c = { d.e.f = [ [ ], {} ] }, "
       "a.g "
       "= 2 }\n"},
      {"dotted",
       "pet.name = \"Otto\"      # dotted all the way\npet . \"coat\" = \"wire\"\ntrim.style = "
       "\"wire-jacket\"\ntrim.chest.strip = \"hand\"   # his best part\ntrim.chest.note  = \"leave "
       "the "
       "apron\"\nowner.name = \"K.\"\n\n[finish]\nears = \"clean\"\ntail.en = 'x'\ntail.es = "
       "'y'\n"},
      {"sections",
       "[[alert]]            # the worst\nlevel = \"danger\"\ntext  = \"Bites\"\ndo    = "
       "\"\"\"\nmuzzle\"\"\" # yes\n\n# about the hock\n[[ alert ]]\nlevel = \"caution\"\ntext  = "
       "\"Hock\"\navoid = [\"left hock\"]\n  [alert.extra]      # nested\n  since = 2026-01-01\n  "
       "[[alert.extra.more]]\n  x = 1\n  [[alert.extra.more]]\n\n[pet]\nname = "
       "\"Ida\"\n\n[[alert]]\n"
       "level = \"notice\"\ntext  = \"Out of order, after [pet]\"\n# last words\n"},
      {"strings",
       "note1 = \"\"\"\na [b] # not a remark\n= \"quoted\" \"\"\" # a remark\nnote2 = '''raw ''' # "
       "c2\nnote3 = \"\"\"two quotes \"\"\"\"\"\nlist = [ # head\n  1, 2, # two\n  # between\n  [ "
       "\"x\", # nested\n    \"y\" ],   \n  # tail\n]   # end\n\"key # with = signs\" = \"v\" # "
       "k\n'' = "
       "\"no name\"\n\"\\u00e9\\\\\" = \"esc\"\n[a.b.c]\nd = 1\n[a]\nz = 2\n"},
      {"numbers",
       "n = nan\nm = -inf\nx = 0x1F\nbig = 9_223_372_036_854_775_807\nf = 6.02e23\nz = -0.0\nt = "
       "9:30 # early\nlater = 10:30:00.5\nwhen = 1979-05-27T07:32:00.999-07:00\nlocal = 1979-05-27 "
       "07:32:00\nyes = true\n"},
      {"lists",
       "a = [\n  1\n  , 2 # two\n  , 3\n]\nb = [ [1, 2], [ ], [\n 3 ] ]\nc = [\n  { x = 1 }, # "
       "one\n\n  # lonely\n  { y = [ 2, # deep\n 3 ] },\n]\nd=[]\ne = [ # nothing\n]\nf = [1, # "
       "one\n "
       " 2, 3, # three\n]\n"},
      {"indented",
       "  [pet]\n    name = \"A\"\n\n    # her vet\n    [owner.vet]\n      "
       "name='B'\n\t[trim]\n\tears = "
       "{}\n\n\n\n[trim.\"left hock\"]\nblade = \"10\"\n[ trim . tail ]\nblade = \"7\"\n\n\n"},
      {"as new makes them",
       "#:schema pet.json\n# One pet: pets/PET.toml.\n\n[pet]  # who it is\nname = \"Rex\"  # what "
       "it "
       "is called\n# breed = \"spitz cross\"  # or cross\n# coat = \"double\"  # growth\n\n[owner] "
       " # "
       "whose it is\n# name = \"R.\"  # who\n# phone = \"555\"  # only\n\n# [[alert]]  # beware\n# "
       "level "
       "= \"warning\"\n\n[trim]  # the style\n# style = \"x\"\n# chest = {}  # a place\n# In "
       "braces:\n#  "
       " blade = \"10\"\n"},
  };
}
}  // namespace furnish::test
