#include "page/frame.h"

#include <catch2/catch.hpp>

#include "support.h"

using namespace furnish;

TEST_CASE("a small page as text", "[page][frame]") {
  test::Desk desk;
  PageRequest request;
  request.size = parse_paper("A6")->size;
  request.paper_name = "A6";
  request.noun = "card";
  request.margins = {Length::mm(8), Length::mm(8), Length::mm(8), Length::mm(8)};
  request.rhythm = Length::mm(3);
  request.roles = {{Role::title, Length::mm(1200), 16}, {Role::body, Length::mm(450), 16}};
  request.layouts = {
      {"only", [] {
         auto edge = std::make_shared<LabelColumn>();
         return std::make_shared<Column>(std::vector<BlockPtr>{
             paragraph("Rex",
                       {.role = Role::title, .face = Face::bold, .structure = Structure::title}),
             std::make_shared<Rule>(rule_name),
             std::make_shared<Rows>(
                 std::vector<LabelRow>{
                     {"Trim", std::make_shared<BulletList>(std::vector<BulletList::Item>{
                                  {paragraph({{"No \"bow\"", Face::bold}, {" today"}})}})},
                     {"Sign", std::make_shared<BlankLine>()}},
                 edge)});
       }}};
  request.footer = paragraph("24 November", {.structure = Structure::note});
  const auto page = compose(request, desk.shaper, desk.sink);
  REQUIRE(page);
  CHECK(to_text(page->frame) == R"(page 105.000 148.000
  stroke 8.000 19.167 -> 97.000 19.167 0.900
  stroke 8.000 74.568 -> 97.000 74.568 0.120 quiet
  stroke 8.000 132.829 -> 97.000 132.829 0.250
  document:
    title:
      title 7.335 15.459 "Rex" 24.50pt bold
    list:
      item:
        label:
          label 8.000 47.855 "Trim" 9.25pt semibold
        list:
          item:
            sign:
              path from 18.278 46.246 curves 3 closed fill text
            paragraph:
              body 20.562 47.855 "No \"bow\" today" 9.25pt bold 9.25pt regular
      item:
        label:
          label 8.000 106.051 "Sign" 9.25pt semibold
        form:
          stroke 17.462 106.901 -> 97.000 106.901 0.300 dotted
    note:
      body 8.000 138.770 "24 November" 9.25pt regular
)");
}

TEST_CASE("every kind of mark has its line", "[page][frame]") {
  Frame frame;
  frame.size = {Length::mm(10), Length::mm(20)};
  const Contour contour{{Length::mm(1), Length::mm(2)}, {}, true};
  frame.marks.emplace_back(OpenTag{Structure::figure, "a \"dog\"", "fig"});
  frame.marks.emplace_back(
      HatchMark{{contour}, 30, Length::mm(1), Length::mm(0.1), Ink::quiet, false});
  frame.marks.emplace_back(
      PathMark{{contour}, Ink::tint, Ink::text, Length::mm(0.25), Dash::dashed});
  frame.marks.emplace_back(ImageMark{{{}, {Length::mm(4), Length::mm(3)}},
                                     std::make_shared<const Photograph>(Photograph{
                                         "photos/rex.jpg", PhotoKind::png, 80, 70, 1, "bytes"}),
                                     {1, 2, 64, 48}});
  frame.marks.emplace_back(CloseTag{});
  frame.marks.emplace_back(LinkMark{{{}, {Length::mm(1), Length::mm(1)}}, "fig", "to the figure"});
  frame.marks.emplace_back(
      FillMark{{{-Length::mm(0.5), {}}, {Length::mm(2), Length::mm(3)}}, Ink::paper});
  CHECK(to_text(frame) ==
        "page 10.000 20.000\n"
        "  figure: #fig \"a \\\"dog\\\"\"\n"
        "    hatch from 1.000 2.000 curves 0 closed 30 degrees 1.000 0.100 quiet\n"
        "    path from 1.000 2.000 curves 0 closed fill tint stroke text 0.250 dashed\n"
        "    image 0.000 0.000 4.000 3.000 pixels 1 2 64 48\n"
        "  link 0.000 0.000 1.000 1.000 #fig \"to the figure\"\n"
        "  fill -0.500 0.000 2.000 3.000 paper\n");
}
