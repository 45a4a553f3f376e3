# Writes the manual page, packed where the machine has gzip: cmake -DPROGRAM=... -DMANUAL=... -DGZIP=... -P manual.cmake
execute_process(COMMAND ${PROGRAM} manual OUTPUT_FILE ${MANUAL} COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${GZIP} -9nfk ${MANUAL} COMMAND_ERROR_IS_FATAL ANY)
