// SPDX-License-Identifier: MIT
// Networks solved by ngspice, many in one run. Diodes become current sources of two straight pieces; the leak
// of 1e-12 S from every node to ground is the program's option rshunt.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "base/format.h"
#include "circuit/network.h"

namespace plugward::test {

inline std::string netlist(const Network& n) {
  std::string text = "* one network\n.options rshunt=1e12 reltol=1e-7 vntol=1e-9 abstol=1e-14 itl1=2000\n";
  for (std::size_t i = 0; i < n.fixed.size(); ++i) {
    text += format("V{} {} 0 {:.17g}\n", i, n.fixed[i].node, n.fixed[i].volts);
  }
  for (std::size_t i = 0; i < n.resistors.size(); ++i) {
    const auto& r = n.resistors[i];
    if (r.ohms != open_circuit) text += format("R{} {} {} {:.17g}\n", i, r.a, r.b, r.ohms);
  }
  for (std::size_t i = 0; i < n.diodes.size(); ++i) {
    const auto& d = n.diodes[i];
    const std::string u = format("V({},{})", d.anode, d.cathode);
    if (d.ohms == open_circuit) {
      text += format("B{} {} {} I={}*1e-12\n", i, d.anode, d.cathode, u);
    } else {
      text += format("B{} {} {} I={}>{:.17g} ? ({}-{:.17g})/{:.17g} : {}*1e-12\n", i, d.anode, d.cathode, u,
                     d.drop, u, d.drop, d.ohms, u);
    }
  }
  for (std::size_t i = 0; i < n.currents.size(); ++i) {
    const auto& c = n.currents[i];
    text += format("I{} {} {} DC {:.17g}\n", i, c.from, c.to, c.amps);
  }
  // A node that nothing is connected to must still exist.
  for (int node = 1; node < n.nodes; ++node) text += format("Rn{} {} 0 1e15\n", node, node);
  return text + ".end\n";
}

/// By network, by node; an inner vector is empty where the program gave no answer.
inline std::vector<std::vector<double>> solve_with_ngspice(const std::vector<Network>& networks,
                                                           const std::string& name) {
  namespace fs = std::filesystem;
  const fs::path folder = fs::path(PLUGWARD_BINARY_DIR) / ("ngspice_" + name);
  fs::create_directories(folder);
  std::ofstream script(folder / "run.cir");
  script << "* all networks\n.control\nset numdgt=12\n";
  for (std::size_t i = 0; i < networks.size(); ++i) {
    std::ofstream(folder / format("n{}.cir", i)) << netlist(networks[i]);
    script << "source " << (folder / format("n{}.cir", i)).string() << "\nop\necho network " << i << '\n';
    for (int node = 1; node < networks[i].nodes; ++node) script << "print v(" << node << ")\n";
    script << "destroy all\nremcirc\n";
  }
  script << "quit 0\n.endc\n.end\n";
  script.close();
  const fs::path out = folder / "out.txt";
  const std::string command = format("ngspice -b '{}' > '{}' 2> '{}'", (folder / "run.cir").string(),
                                     out.string(), (folder / "errors.txt").string());
  const int status = std::system(command.c_str());
  std::vector<std::vector<double>> volts(networks.size());
  if (status != 0) return volts;

  std::ifstream in(out);
  std::string line;
  std::size_t current = networks.size();
  while (std::getline(in, line)) {
    std::istringstream words(line);
    std::string first, second;
    words >> first >> second;
    if (first == "network") {
      current = std::stoul(second);
      volts[current].assign(1, 0.0);
    } else if (first.rfind("v(", 0) == 0 && second == "=" && current < networks.size()) {
      double value = 0;
      words >> value;
      volts[current].push_back(value);
    }
  }
  for (std::size_t i = 0; i < networks.size(); ++i) {
    if (volts[i].size() != static_cast<std::size_t>(networks[i].nodes)) volts[i].clear();
  }
  return volts;
}

}  // namespace plugward::test
