# SPDX-License-Identifier: MIT
# fish: what could come next is asked of plugward itself (src/cli/complete.h).

function __plugward_complete
    set -l words (commandline -opc)
    set -l program $words[1]
    set -e words[1]
    for line in ($program complete $words (commandline -ct) 2>/dev/null)
        switch $line
            case :nospace
            case :xml
                __fish_complete_suffix .xml
            case :files
                __fish_complete_path (commandline -ct)
            case :folders
                __fish_complete_directories (commandline -ct) ''
            case '*'
                echo $line
        end
    end
end

complete -c plugward -f -a '(__plugward_complete)'
