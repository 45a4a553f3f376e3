# The main job from end to end, run from the source folder: cmake -DPROGRAM=... -P src/cli/demo.cmake
# The five-lead probe 'Kite' is to go on the board 'Heron M7', whose probe header has another pin order.
set(mating boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --at trigger=J10 --jumper JP2=5V)
list(JOIN mating " " mating_words)
file(MAKE_DIRECTORY out)

# Runs the program and stops the demo when it ends with another status than expected.
function(step expected command)
  list(JOIN ARGN " " more)
  message("\n$ plugward ${command} ${mating_words} ${more}\n")
  execute_process(COMMAND ${PROGRAM} ${command} ${mating} ${ARGN} RESULT_VARIABLE status)
  if(NOT status EQUAL expected)
    message(FATAL_ERROR "the demo expected status ${expected}, not ${status}")
  endif()
endfunction()

message("
The question: may the cable of a bed probe be plugged on this board?
You should see a verdict (REPIN: contacts are to be moved first), the harm that plugging it in as it is would do,
the moves, and then the whole procedure.")
step(1 check)
step(0 repin)
step(1 check -o out/kite-probe-check.txt)
step(0 repin -o out/kite-probe-repin.txt)
foreach(suffix svg pdf png)
  step(0 draw --plug control -o out/kite-probe.${suffix})
endforeach()
step(0 sheet --machine "Wren no. 3" --date 2026-03-02 -o out/kite-probe-sheet.pdf)
step(0 sheet --machine "Wren no. 3" --date 2026-03-02 -o out/kite-probe-sheet.html)
message("
The sheet for the bench is out/kite-probe-sheet.pdf (to print) and .html (for a phone or tablet).
The picture of the housing now and then is in out/kite-probe.svg (.pdf to print, .png to send);
what you have read is in out/kite-probe-check.txt and out/kite-probe-repin.txt.
'check' ended with status 1, as for every verdict but MATE; the demo itself went well.")
