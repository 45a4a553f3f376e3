// SPDX-License-Identifier: MIT
// sheet: the paper that lies on the bench. Tested in tests/cases.
#include <array>
#include <cstdlib>
#include <utility>

#include "base/format.h"
#include "cli/load.h"
#include "cli/progress.h"
#include "cli/retell.h"
#include "cli/sheet_date.h"
#include "draw/canvas.h"
#include "draw/sheet_pages.h"
#include "report/sheet_html.h"
#include "report/sheet_markdown.h"
#include "report/sheet_text.h"
#include "sheet/documents.h"
#include "sheet/languages.h"

namespace plugward {
namespace {

enum class SheetKind { Pdf, Html, Text, Markdown };

struct KindName {
  std::string_view word, suffix;
  SheetKind kind;
};
constexpr std::array<KindName, 4> kinds{{{"pdf", ".pdf", SheetKind::Pdf},
                                         {"html", ".html", SheetKind::Html},
                                         {"text", ".txt", SheetKind::Text},
                                         {"markdown", ".md", SheetKind::Markdown}}};

SheetKind kind_of(const Options& options) {
  for (const KindName& one : kinds) {
    if (options.sheet_as == one.word) return one.kind;
    if (options.sheet_as.empty() && !options.to_stdout() && options.output.ends_with(one.suffix))
      return one.kind;
  }
  std::vector<std::string_view> words, suffixes;
  for (const KindName& one : kinds) {
    words.push_back(one.word);
    suffixes.push_back(one.suffix);
  }
  if (options.to_stdout())
    throw UsageError(format("'sheet' needs -o FILE, which ends in {}; or --as {}", join(suffixes, ", "),
                            join(words, ", ")));
  throw UsageError(format("'{}' does not end in {}: say which kind with --as {}", options.output,
                          join(suffixes, ", "), join(words, ", ")));
}

void check_words(const Options& options) {
  if (options.to_board.empty()) return;
  if (options.place)
    throw UsageError("'--to' moves a machine and places its plugs itself: leave out '--place'");
  if (!options.seen.empty())
    throw UsageError("'--to' takes a loom, which says itself where its leads are: leave out '--seen'");
  if (options.words.size() > 1)
    throw UsageError(
        format("'--to' goes with one loom file alone; {} files are given", options.words.size()));
}

/// Printed by a browser at 100 % they are as large as on the PDF's page.
std::string true_size_svgs(const SheetPictures& pictures, const TextMeasure& measure) {
  std::string svgs;
  PictureOptions how;
  for (const Scene& page : pictures.true_size(PictureRoom{}, measure)) {
    how.prefix = verbatim("true-size-{}-", svgs.size());
    const std::string svg = render(page, how);
    svgs += svg.substr(svg.find("<svg"));
  }
  return svgs;
}

std::string svg_of(const SheetPictures& pictures, const sheet::Picture& picture, PictureFace face,
                   const TextMeasure& measure) {
  if (picture.kind == sheet::PictureKind::TrueSize) return true_size_svgs(pictures, measure);
  const View view = face == PictureFace::Wire ? View::WireSide : View::MatingFace;
  PictureOptions how;
  how.prefix = format("{}-{}-", picture.id, face == PictureFace::Wire ? "w" : "m");
  return render(pictures.scene(picture, PictureRoom{}, view, measure), how);
}

std::string written(const Options& options, const sheet::Document& document, const SheetPictures& pictures,
                    SheetKind kind) {
  if (kind == SheetKind::Text) return sheet_text(document, {.colour = options.colour_out});
  if (kind == SheetKind::Markdown) return sheet_markdown(document);
  const std::unique_ptr<TextMeasure> measure = make_text_measure();
  if (kind == SheetKind::Html) {
    return sheet_html(document, [&](const sheet::Picture& picture, PictureFace face) {
      return svg_of(pictures, picture, face, *measure);
    });
  }
  SheetPagesOptions pages;
  pages.letter = options.paper == "letter";
  pages.landscape = options.landscape;
  pages.view = options.view == "wire" ? View::WireSide : View::MatingFace;
  return sheet_pdf(document, pictures, pages, *measure);
}

Outcome swap_sheet(const Options& options, SheetKind kind, sheet::SheetFacts facts) {
  Workbench bench;
  const std::optional<Fitting> machine = load_machine(bench, options);
  if (!machine) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const std::string told = stderr_text(bench, options);
  const auto how = swap_options(bench, options);
  speak(language_of(options.language));
  const auto plan = plan_swap(*machine, *bench.board, how);
  if (plan->result.clean()) facts.command = retell("swap", options) + " --record refit";
  return {ExitStatus::Fine,
          written(options, sheet::swap_document(swap_papers(*plan), facts), SheetPictures(*plan), kind),
          told};
}

Outcome placement_sheet(const Options& options, SheetKind kind, sheet::SheetFacts facts) {
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options, Placing::StatedOnly);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  if (bench.loom)
    throw UsageError(format("'{}' is a loom and says itself where its plugs are: leave out '--place'",
                            options.words.front()));
  facts.sources = &bench.sources;
  const std::string told = stderr_text(bench, options);
  speak(language_of(options.language));
  PlaceOptions how;
  how.advice.budget = true;
  const PlacementPlan plan = place(*fitting, how);
  const Fitting placed = plan.best ? sheet::placed_fitting(*fitting, *plan.best) : *fitting;
  const Advice none;  // nothing is placed, and no picture is asked for
  const SheetPictures pictures(placed, plan.best ? plan.best->advice : none);
  return {ExitStatus::Fine,
          written(options, sheet::placement_document(*fitting, plan, facts), pictures, kind),
          told};
}

Outcome check_sheet(const Options& options, SheetKind kind, sheet::SheetFacts facts) {
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const std::string told = stderr_text(bench, options);
  speak(language_of(options.language));
  const AdviseOptions whole{.budget = true};
  const Advice advice =
      bench.loom ? advise_loom(*bench.loom, bench.loom_bench, *fitting, whole) : advise(*fitting, whole);
  facts.sources = &bench.sources;
  facts.standing = bench.loom != nullptr;
  if (!bench.loom) facts.command = retell("repin", options);
  return {
      ExitStatus::Fine,
      written(options, sheet::check_document(*fitting, advice, facts), SheetPictures(*fitting, advice), kind),
      told};
}

}  // namespace

/// Files are read, and messages about them told, in English; then the sheet's language is spoken.
Outcome run_sheet(const Options& options) {
  speak(nullptr);
  const SheetKind kind = kind_of(options);
  check_words(options);
  const Stage stage(options, "making the sheet");
  const sheet::SheetFacts facts{.machine = options.machine,
                                .date = sheet_date(options.date, std::getenv("SOURCE_DATE_EPOCH")),
                                .sources = nullptr,
                                .standing = false,
                                .command = ""};
  if (!options.to_board.empty()) return swap_sheet(options, kind, facts);
  return options.place ? placement_sheet(options, kind, facts) : check_sheet(options, kind, facts);
}

}  // namespace plugward
