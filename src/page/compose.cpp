#include "page/compose.h"

#include <functional>

#include "page/divide.h"
#include "page/fitter.h"

namespace furnish {

std::optional<FittedPage> fit(const PageRequest& request, TextShaper& shaper,
                              DiagnosticSink& sink) {
  struct Attempt {
    SideStyle style;
    Fitter fitter;
    BlockPtr root;
    Measured smallest{};
    bool hopeless = false;
  };
  std::vector<Attempt> attempts;
  const Attempt* chosen = nullptr;
  FittedPage page;
  attempts.reserve(request.layouts.size());
  const auto squeeze = [&] {
    for (std::size_t i = 0; i < attempts.size(); ++i) {
      Attempt& attempt = attempts[i];
      if (!request.layouts[i].squeezes) continue;
      // The last is measured in any case, for the message.
      if (attempt.hopeless && &attempt != &attempts.back()) continue;
      attempt.smallest = attempt.fitter.measure(*attempt.root, 0, Precision::exact);
      if (!attempt.smallest.fits_squeezed()) continue;
      chosen = &attempt;
      page.squeezed = true;
      return;
    }
  };
  const auto is_wanted = [&](const Layout& layout) {
    return layout.name == request.wanted || layout.name.ends_with(", " + request.wanted);
  };
  if (!request.wanted.empty()) {
    PageRequest one = request;
    std::erase_if(one.layouts, std::not_fn(is_wanted));
    one.divisions.clear();
    one.wanted.clear();
    DiagnosticSink unheard;
    auto as_wanted = one.layouts.empty() ? std::nullopt : fit(one, shaper, unheard);
    if (as_wanted && !as_wanted->squeezed) return as_wanted;
  }
  for (const Layout& layout : request.layouts) {
    const SideStyle style{layout.rhythm, layout.leading, request.footer};
    Attempt& attempt =
        attempts.emplace_back(Attempt{style, {request, style, shaper}, layout.make()});
    attempt.hopeless = attempt.fitter.hopeless(*attempt.root);
    if (attempt.hopeless) continue;
    if (const auto step = attempt.fitter.largest_step(*attempt.root, request.steps)) {
      chosen = &attempt;
      page.step = *step;
      break;
    }
  }
  if (!chosen) squeeze();
  if (!chosen && !request.divisions.empty()) {
    auto divided = divide(request, shaper, sink);
    if (!divided) return std::nullopt;
    page = *std::move(divided);
  } else if (!chosen) {
    if (!attempts.empty()) {
      const Attempt& last = attempts.back();
      last.fitter.report(*last.root, last.smallest, sink);
    }
    return std::nullopt;
  } else {
    page.layout = request.layouts[static_cast<std::size_t>(chosen - attempts.data())].name;
    page.sides = {{chosen->root, page.step, chosen->style}};
  }
  for (const Attempt& attempt : attempts) {
    page.measures += attempt.fitter.measures();
    page.drafts += attempt.fitter.drafts();
  }
  return page;
}

ComposedPage set(const PageRequest& request, const FittedPage& fitted, TextShaper& shaper) {
  ComposedPage page{fitted, {}, {}};
  for (const FittedPage::Side& side : fitted.sides) {
    Frame frame = Fitter(request, side.style, shaper).set(*side.root, side.step);
    if (&side == fitted.sides.data()) {
      page.frame = std::move(frame);
    } else {
      page.more.push_back(std::move(frame));
    }
  }
  return page;
}

std::optional<ComposedPage> compose(const PageRequest& request, TextShaper& shaper,
                                    DiagnosticSink& sink) {
  const auto fitted = fit(request, shaper, sink);
  if (!fitted) return std::nullopt;
  return set(request, *fitted, shaper);
}

std::vector<Frame> sides(const ComposedPage& page) {
  std::vector<Frame> out{page.frame};
  out.insert(out.end(), page.more.begin(), page.more.end());
  return out;
}
}  // namespace furnish
