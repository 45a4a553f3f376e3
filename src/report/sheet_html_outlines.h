// SPDX-License-Identifier: MIT
// Pictures of one file share the outlines of their letters: twenty plugs seen from two sides repeat the same
// letters forty times, which is most of their size. Not for use outside sheet_html*.cpp.
//
//   SharedOutlines outlines;
//   html += outlines.taken_from(svg);      // again for each picture
//   html += outlines.svg();                // once, anywhere in the page
#pragma once

#include <functional>
#include <map>
#include <string>
#include <string_view>

namespace plugward {

class SharedOutlines {
 public:
  /// The picture without its outlines (`<path id="..." d="..."/>` and no other attribute), its references
  /// leading to those that are kept here. Anything else stays as it is.
  std::string taken_from(std::string_view svg);

  /// An element of no size that holds them; "" when there are none. In the order in which they were met.
  std::string svg() const;

 private:
  std::map<std::string, std::string, std::less<>> id_of_;  ///< by path data
  std::string paths_;
};

}  // namespace plugward
