// SPDX-License-Identifier: MIT
// 'plugward lint' on many boards against 'xmllint --schema' on the same files, whole processes. lint finds
// all that the schema forbids and what no schema can say. Bar: at least 5 times as fast.
//
//   lint_bench PLUGWARD SOURCE_DIR [BOARDS]
#include <filesystem>

#include "base/file.h"
#include "base/format.h"
#include "support/bench_row.h"
#include "support/many_boards.h"
#include "support/process.h"

int main(int argc, char** argv) {
  using namespace plugward;
  if (argc < 3) {
    std::fprintf(stderr, "usage: lint_bench PLUGWARD SOURCE_DIR [BOARDS]\n");
    return 2;
  }
  const int count = argc > 3 ? std::atoi(argv[3]) : 10000;
  std::string folder = (std::filesystem::temp_directory_path() / "lint_bench-XXXXXX").string();
  if (::mkdtemp(folder.data()) == nullptr) return 2;
  std::vector<std::string> ours{argv[1], "lint"};
  std::vector<std::string> theirs{"xmllint", "--noout", "--schema",
                                  std::string(argv[2]) + "/boards/board.xsd"};
  for (int i = 0; i < count; ++i) {
    const std::string path = format("{}/board-{:05}.xml", folder, i);
    write_file(path, test::board_text({.makers = 0}, static_cast<std::uint32_t>(i)));
    ours.push_back(path);
    theirs.push_back(path);
  }
  const test::Spent lint = test::least_of(3, ours), schema = test::least_of(3, theirs);
  test::bench_row(format("lint of {} boards, whole process, times as fast", count),
                  "xmllint --schema on them", schema.processor / lint.processor, "at least 5");
  test::bench_detail(format("{:.2f} s and {} MB; xmllint {:.2f} s and {} MB", lint.processor,
                            lint.memory / 1024, schema.processor, schema.memory / 1024));
  std::filesystem::remove_all(folder);
}
