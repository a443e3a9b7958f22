#include "sheet/kind.h"

#include "sheet/roles.h"

namespace furnish::kinds {
namespace {
constexpr Insets note_margins{12_mm, 13_mm, 11_mm, 13_mm};
constexpr auto card_paper = &PaperSettings::card, sheet_paper = &PaperSettings::sheet;
}  // namespace

const SheetKind card{
    .name = "card",
    .noun = "card",
    .reader = Audience::staff,
    .paper = card_paper,
    .about = AboutVisit::never,
    .margins = {10_mm, 10_mm, 10_mm, 10_mm},
    .roles = hanging_roles,
};
const SheetKind style{
    .name = "style",
    .noun = "style sheet",
    .reader = Audience::staff,
    .paper = sheet_paper,
    .about = AboutVisit::never,
    .margins = {11_mm, 12_mm, 10_mm, 12_mm},
    .roles = table_roles,
};
const SheetKind note{
    .name = "note",
    .noun = "note",
    .reader = Audience::staff,
    .paper = sheet_paper,
    .about = AboutVisit::always,
    .margins = note_margins,
    .roles = hand_roles,
};
const SheetKind owner_note{
    .name = "note-owner",
    .noun = "note",
    .reader = Audience::everyone,
    .paper = sheet_paper,
    .about = AboutVisit::always,
    .margins = note_margins,
    .roles = hand_roles,
};
const SheetKind care{
    .name = "care",
    .noun = "care sheet",
    .reader = Audience::everyone,
    .paper = sheet_paper,
    .about = AboutVisit::sometimes,
    .margins = {13_mm, 14_mm, 11_mm, 14_mm},
    .roles = fridge_roles,
};
const SheetKind rules{
    .name = "rules",
    .noun = "page of rules",
    .reader = Audience::staff,
    .paper = sheet_paper,
    .about = AboutVisit::never,
    .margins = {14_mm, 15_mm, 12_mm, 15_mm},
    .roles = wall_roles,
};
const SheetKind day{
    .name = "day",
    .noun = "day sheet",
    .reader = Audience::staff,
    .paper = sheet_paper,
    .about = AboutVisit::never,
    .margins = {9_mm, 9_mm, 8_mm, 9_mm},
    .roles = day_roles,
};
const SheetKind list{
    .name = "list",
    .noun = "list",
    .reader = Audience::staff,
    .paper = sheet_paper,
    .about = AboutVisit::never,
    .margins = {11_mm, 12_mm, 10_mm, 12_mm},
    .roles = desk_roles,
};
const SheetKind book{
    .name = "book",
    .noun = "book's index",
    .reader = Audience::staff,
    .paper = sheet_paper,
    .about = AboutVisit::never,
    .margins = {11_mm, 13_mm, 10_mm, 13_mm},
    .roles = hand_roles,
};
}  // namespace furnish::kinds
