// SPDX-License-Identifier: MIT
// A document becomes pieces, the pieces flow down pages, each page gets its frame. Tested in
// sheet_pages_test.cpp; measured in tests/bench/draw_bench.cpp.
#include "draw/sheet_pages.h"

#include <algorithm>

#include "base/format.h"
#include "draw/canvas.h"
#include "draw/shapes.h"
#include "draw/sheet_flow_steps.h"
#include "draw/sheet_flow_table.h"
#include "draw/sheet_pages_frame.h"

namespace plugward {
namespace {

constexpr double caption_room = 10;  ///< of a picture, mm
constexpr double most_above = 60;    ///< on the page of a picture; more than that is parted from it

class Composer {
 public:
  Composer(const SheetPictures& pictures, View view, double width, double height, const TextMeasure& measure)
      : pictures_(pictures), view_(view), height_(height), text_(width, measure) {}

  void add(const sheet::Section& section) {
    const std::size_t first = text_.pieces.size();
    text_.heading(section.title, section.id, 0);
    for (const sheet::Block& block : section.blocks) {
      std::visit([&](const auto& b) { add(b); }, block);
    }
    text_.pieces.back().with_next = false;
    text_.pieces[first].new_page = section.own_page;
  }

  const std::vector<FlowPiece>& pieces() const { return text_.pieces; }

 private:
  void add(const sheet::Text& text) {
    // A strong text names what follows it, a caution belongs to it.
    text_.paragraph(
        text.text,
        {.type = text.strong ? flow_type::strong : flow_type::body, .before = 1.5, .with_next = text.strong});
  }

  void add(const sheet::Warning& warning) {
    text_.paragraph(warning.text,
                    {.type = flow_type::strong, .mark = FlowMark::Warning, .before = 1.8, .with_next = true});
  }

  void add(const sheet::List& list) {
    int number = 0;
    for (const std::string& item : list.items) {
      FlowParagraph p{.before = number == 0 ? 1.5 : 0.7};
      ++number;
      if (list.numbered) p.sign = format("{}.", number);
      if (list.boxes) p.mark = FlowMark::Box;
      if (!list.boxes && !list.numbered) p.mark = FlowMark::Bullet;
      text_.paragraph(item, p);
    }
  }

  void add(const sheet::Table& table) { add_table(text_, table, height_); }

  void add(const sheet::Steps& steps) { add_steps(text_, steps); }

  /// What is left of a page below the picture's caption and all that wants to stay with it.
  double picture_height() const {
    double above = caption_room;
    for (auto piece = text_.pieces.rbegin(); piece != text_.pieces.rend() && piece->with_next; ++piece)
      above += piece->height + piece->before;
    return height_ - std::min(above, most_above);
  }

  void add(const sheet::Picture& picture) {
    const double height = picture_height();
    if (picture.kind == sheet::PictureKind::TrueSize) {
      bool first = true;
      for (Scene& page : pictures_.true_size({text_.width(), height}, text_.measure())) {
        if (first) text_.heading(picture.title, picture.id, 1);
        set(std::move(page), !first);
        first = false;
      }
      return;
    }
    const PictureRoom upright{text_.width(), height}, lying{height, text_.width()};
    const bool turn = lying.width > upright.width &&
                      !pictures_.fits(picture, upright, view_, text_.measure()) &&
                      pictures_.fits(picture, lying, view_, text_.measure());
    Scene scene = pictures_.scene(picture, turn ? lying : upright, view_, text_.measure());
    text_.heading(picture.title, picture.id, 1);
    set(turn ? turned(std::move(scene)) : std::move(scene), false);
  }

  void set(Scene scene, bool new_page) {
    FlowPiece piece;
    piece.height = scene.height;
    piece.new_page = new_page;
    const double left = (text_.width() - scene.width) / 2;
    for (Group& group : scene.groups) {
      shift(group, left, 0);
      piece.groups.push_back(std::move(group));
    }
    text_.add(std::move(piece));
  }

  const SheetPictures& pictures_;
  View view_;
  double height_;  ///< of a page's room
  FlowText text_;
};

}  // namespace

SheetPages sheet_pages(const sheet::Document& document, const SheetPictures& pictures,
                       const SheetPagesOptions& options, const TextMeasure& measure) {
  const SheetPaper paper = sheet_paper(options.letter, options.landscape);
  const SheetFrame frame(document, paper, measure);
  const FlowRoom other = frame.other();
  Composer composer(pictures, options.view, paper.content_width(), other.bottom - other.top, measure);
  for (const sheet::Section& section : document.sections) composer.add(section);
  FlowPages flowed = flow(composer.pieces(), frame.first(), other, measure);

  SheetPages result;
  result.outline = std::move(flowed.outline);
  result.links = std::move(flowed.links);
  const std::size_t count = flowed.pages.size();
  for (std::size_t i = 0; i < count; ++i) {
    Scene page{paper.width, paper.height, heading_of(document), document.summary, frame.groups(i + 1, count)};
    for (Group& group : flowed.pages[i]) page.groups.push_back(std::move(group));
    result.pages.push_back(std::move(page));
  }
  return result;
}

std::string sheet_pdf(const sheet::Document& document, const SheetPictures& pictures,
                      const SheetPagesOptions& options, const TextMeasure& measure) {
  SheetPages laid = sheet_pages(document, pictures, options, measure);
  PageFacts facts;
  facts.title = heading_of(document);
  facts.subject = document.summary;
  std::vector<std::string> keywords;
  const sheet::Title& title = document.title;
  for (const std::string& word :
       {document.verdict, title.machine, title.harness, title.board, title.old_board}) {
    if (!word.empty()) keywords.push_back(word);
  }
  facts.keywords = format("{}", join(keywords, ", "));
  facts.date = title.date;
  facts.outline = std::move(laid.outline);
  facts.links = std::move(laid.links);
  return render_book(laid.pages, facts);
}

}  // namespace plugward
