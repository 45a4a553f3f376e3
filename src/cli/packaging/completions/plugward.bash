# SPDX-License-Identifier: MIT
# bash: what could come next is asked of plugward itself (src/cli/complete.h).

_plugward() {
  COMPREPLY=()
  local -a words=()
  local word says i join=no
  # Readline cuts words at '=' and ':' too; plugward does not.
  for ((i = 1; i <= COMP_CWORD; i++)); do
    word=${COMP_WORDS[i]//[\\\"\']/}
    if [[ ${#words[@]} -gt 0 && ($join == yes || $word == [=:]) ]]; then
      words[${#words[@]} - 1]+=$word
    else
      words+=("$word")
    fi
    [[ $word == [=:] ]] && join=yes || join=no
  done
  local last=${words[${#words[@]} - 1]}
  local current=${last##*[=:]}
  local cut=${last%"$current"}
  local name
  while IFS=$'\t' read -r word says; do
    case $word in
      :nospace) compopt -o nospace 2>/dev/null ;;
      :xml | :files | :folders)
        compopt -o filenames 2>/dev/null
        while IFS= read -r name; do
          if [[ -d $name || $word == :files || ($word == :xml && $name == *.xml) ]]; then
            COMPREPLY+=("$name")
          fi
        done < <(compgen -f -- "$current")
        ;;
      *) COMPREPLY+=("${word#"$cut"}") ;;
    esac
  done < <("${COMP_WORDS[0]}" complete "${words[@]}" 2>/dev/null)
}

complete -F _plugward plugward
