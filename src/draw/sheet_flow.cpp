// SPDX-License-Identifier: MIT
// Idea: a greedy pass. A run of pieces that want to stay together is measured as one; it goes where the last
// one ended, or on a fresh page, or, when no page holds it, piece by piece. Linear in the number of pieces.
// Example: heading, caption, picture is one run; five rows of a table with their head are five runs.
// Not taken: the best breaks over the whole document (as for lines of a paragraph): with pieces this small
// the greedy pages differ from the best by a few lines, and a reader on the bench gains nothing. Tested in
// sheet_flow_test.cpp.
#include "draw/sheet_flow.h"

#include <map>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

class Flow {
 public:
  Flow(const FlowRoom& first, const FlowRoom& other, const TextMeasure& measure)
      : first_(first), other_(other), measure_(measure) {
    result_.pages.emplace_back();
    y_ = room().top;
  }

  void run(const std::vector<FlowPiece>& pieces, std::size_t from, std::size_t to) {
    if (pieces[from].new_page && !fresh_) next_page();
    double height = 0;
    for (std::size_t i = from; i < to; ++i) height += pieces[i].height + (i > from ? pieces[i].before : 0);
    const double gap = fresh_ ? head_of(pieces[from]) : pieces[from].before;
    const bool fits = y_ + gap + height <= room().bottom + 1e-6;
    // Alone at the top of page 1 it may still be too low for it.
    if (!fits && (!fresh_ || page() == 0)) {
      const double whole = head_of(pieces[from]) + height;
      const bool leave_little = y_ + gap + pieces[from].height + 30 > room().bottom;
      if (whole <= other_.bottom - other_.top + 1e-6 || leave_little) next_page();
    }
    for (std::size_t i = from; i < to; ++i) set(pieces[i]);
  }

  FlowPages finish() {
    for (const Pending& p : pending_) {
      const auto place = places_.find(p.link.to);
      if (place == places_.end()) continue;
      const Box& b = p.link.box;
      result_.links.push_back({p.page, b.left, b.top, b.right, b.bottom, place->second});
      if (!p.link.numbered) continue;
      Group group{tr("where to look"), {}};
      const TextMeasure::Size size = measure_.measure("Ag", style::small_type, false);
      group.add(Words{{b.right, b.top + size.ascent},
                      format("→ page {}", place->second.page + 1),
                      style::small_type,
                      false,
                      style::move,
                      Anchor::End,
                      0});
      result_.pages[p.page].push_back(std::move(group));
    }
    return std::move(result_);
  }

 private:
  struct Pending {
    std::size_t page = 0;
    FlowLink link;  ///< its box on the paper
  };

  std::size_t page() const { return result_.pages.size() - 1; }
  const FlowRoom& room() const { return page() == 0 ? first_ : other_; }
  static double head_of(const FlowPiece& piece) { return piece.again ? piece.again->height : 0; }

  void next_page() {
    result_.pages.emplace_back();
    y_ = room().top;
    fresh_ = true;
  }

  void set(const FlowPiece& piece) {
    const double need = fresh_ ? 0 : piece.before + piece.height;
    if (!fresh_ && y_ + need > room().bottom + 1e-6) next_page();
    if (fresh_ && piece.again) {
      put(*piece.again, false);
    } else if (!fresh_) {
      y_ += piece.before;
    }
    put(piece, true);
  }

  void put(const FlowPiece& piece, bool counted) {
    for (Group group : piece.groups) {
      shift(group, room().left, y_);
      result_.pages.back().push_back(std::move(group));
    }
    for (FlowLink link : piece.links) {
      link.box = {link.box.left + room().left, link.box.top + y_, link.box.right + room().left,
                  link.box.bottom + y_};
      pending_.push_back({page(), std::move(link)});
    }
    if (counted && !piece.name.empty()) {
      const PagePoint place{page(), y_, piece.name};
      places_.emplace(piece.name, place);
      if (!piece.title.empty()) result_.outline.push_back({piece.title, piece.level, place});
    }
    y_ += piece.height;
    fresh_ = false;
  }

  FlowRoom first_, other_;
  const TextMeasure& measure_;
  FlowPages result_;
  std::map<std::string, PagePoint> places_;
  std::vector<Pending> pending_;
  double y_ = 0;
  bool fresh_ = true;  ///< nothing stands on this page yet
};

}  // namespace

FlowPages flow(const std::vector<FlowPiece>& pieces, const FlowRoom& first, const FlowRoom& other,
               const TextMeasure& measure) {
  Flow flow(first, other, measure);
  for (std::size_t from = 0; from < pieces.size();) {
    std::size_t to = from + 1;
    while (to < pieces.size() && pieces[to - 1].with_next && !pieces[to].new_page) ++to;
    flow.run(pieces, from, to);
    from = to;
  }
  return flow.finish();
}

}  // namespace plugward
