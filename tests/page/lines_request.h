#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/paper.h"
#include "page/compose.h"
#include "page/paragraph.h"
#include "page/stack.h"

namespace furnish::test {

/// A page of A6 with one layout: so many lines "a", a gap that gives way, and "end".
inline PageRequest lines_request(int lines, Origin origin = {"notes", {}}) {
  PageRequest request;
  request.size = parse_paper("A6")->size;
  request.paper_name = "A6";
  request.noun = "card";
  request.margins = {Length::mm(10), Length::mm(10), Length::mm(10), Length::mm(10)};
  request.roles = {{Role::body, Length::mm(600)}};
  request.layouts = {{"only", [lines, origin] {
                        std::string text = "a";
                        for (int i = 1; i < lines; ++i) text += "\na";
                        return std::make_shared<Column>(std::vector<BlockPtr>{
                            paragraph(text, {}, origin), std::make_shared<Gap>(3, 0.5),
                            paragraph("end", {}, Origin{"end", {}})});
                      }}};
  return request;
}
}  // namespace furnish::test
