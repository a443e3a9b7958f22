#pragma once

#include <string_view>

namespace furnish::fuzz {

// What strange bytes are thrown at, each a function that takes any bytes whatever, touches no disk,
// and aborts where a promise does not hold. libFuzzer runs one a program; an ordinary test replays
// what was kept.

/// A pet's file: read, planned, told; what was read is written and read again.
void pet(std::string_view);
/// A catalogue's file, beside the shipped English, and its texts as patterns.
void catalogue(std::string_view);
/// A file of a visit, a day, a salon or a style, as its first letter says.
void others(std::string_view);
/// A PDF whose attachments are wanted.
void unpack(std::string_view);
/// A photo's head, and its pixels where they are few.
void photo(std::string_view);
/// A list of clients.
void csv(std::string_view);
/// What comes to the desk: a head that the guard looks at, or a body for one of its questions.
void requests(std::string_view);
/// A file and edits of it in JSON, with "\n---\n" between.
void edits(std::string_view);

/// A pet with a visit, a salon and a style: read, planned, a sheet of it composed in some language,
/// and of a fourth of them a PDF. Two bytes say which, then the files with "\n---\n" between.
void whole(std::string_view);

struct Target {
  std::string_view name;
  void (*run)(std::string_view);
};
inline constexpr Target targets[] = {
    {"pet", pet},           {"catalogue", catalogue}, {"others", others},
    {"unpack", unpack},     {"photo", photo},         {"csv", csv},
    {"requests", requests}, {"edits", edits},         {"whole", whole}};

/// Ends the program with a word on what does not hold.
void hold(bool, const char* what);
}  // namespace furnish::fuzz
