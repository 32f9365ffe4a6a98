# Completion of throwline's command line for bash. tests/command/completion_test.cpp holds it to the
# program's own table of commands and options.
# shellcheck shell=bash

_throwline_commands='open check compare figures survey list page sheet lens throw sun scale length catalogue'

# The options of a command, all of them.
_throwline_options() {
    case $1 in
        open) echo --lensdata --json ;;
        check) echo --list --lensdata --json --working ;;
        compare) echo --lensdata --json --working ;;
        figures) echo --shot --lensdata --json ;;
        survey) echo --output -o --into --title --system --lensdata --json --working ;;
        list) echo --output -o --csv --lensdata --json ;;
        page) echo --output -o --lensdata --json ;;
        sheet)
            echo --output -o --which --list --paper --orientation --scale --extras --tile --overlap \
                --margin --shot --beat --along --depth --without --name --revision --since --dpi \
                --lensdata --json
            ;;
        lens)
            echo --sensor --focal --squeeze --distance --stop --coc --person --system --lensdata \
                --json --working
            ;;
        throw)
            echo --instrument --peak --beam --field --focus --filter --level --height --run --at \
                --system --lensdata --json --working
            ;;
        sun) echo --latitude --longitude --time --pressure --temperature --json --working ;;
        scale)
            echo --width --depth --paper --margin --strip --scale --extras --system --lensdata --json \
                --working
            ;;
        length) echo --round --bare --json --working ;;
        catalogue) echo --search --lensdata --json ;;
    esac
    echo --help -h
}

# The words that an option or an operand can be, a line each; nothing where any text may stand.
_throwline_words() {
    case $1 in
        --system | --bare) printf '%s\n' metric imperial ;;
        --orientation) printf '%s\n' landscape portrait ;;
        --without) printf '%s\n' underlay ground coverage pools findings ;;
        --paper)
            printf '%s\n' A4 A3 A2 A1 A0 letter legal tabloid 'arch A' 'arch B' 'arch C' 'arch D' \
                'arch E' 'ansi A' 'ansi B' 'ansi C' 'ansi D' 'ansi E'
            ;;
        --which)
            printf '%s\n' all index floor-plan findings lighting-plan set-plan section shots \
                camera-cards lists recce
            ;;
        list)
            printf '%s\n' all shots running-order camera-cards lamps-by-position lamps-by-channel \
                lamps-by-circuit power cables filters kit flats site-notes
            ;;
        catalogue)
            printf '%s\n' sensors lenses supports instruments filters stock finishes landmarks papers \
                scales
            ;;
    esac
}

# Whether a value stands behind the option.
_throwline_takes_value() {
    case $1 in
        --json | --working | --list | --csv | --extras | --tile | --help | -h) return 1 ;;
        -*) return 0 ;;
        *) return 1 ;;
    esac
}

# COMPREPLY of those of the words on standard input that begin with what is typed, spaces escaped.
_throwline_offer() {
    local word
    while IFS= read -r word; do
        printf -v word '%q' "$word"
        if [[ $word == "$1"* ]]; then
            COMPREPLY+=("$word")
        fi
    done
}

# COMPREPLY of files, and of folders to look into; of those files only that end as asked.
_throwline_offer_files() {
    local file
    compopt -o filenames 2>/dev/null
    while IFS= read -r file; do
        if [[ -d $file || $file == *"$2" ]]; then
            COMPREPLY+=("$file")
        fi
    done < <(compgen -f -- "$1")
}

_throwline_offer_value() {
    case $1 in
        --output | -o | --since | --into | --lensdata) _throwline_offer_files "$2" '' ;;
        *) _throwline_offer "$2" < <(_throwline_words "$1") ;;
    esac
}

_throwline() {
    local typed=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}
    local command=${COMP_WORDS[1]}
    COMPREPLY=()
    if ((COMP_CWORD == 1)); then
        mapfile -t COMPREPLY < <(compgen -W "$_throwline_commands --help --version" -- "$typed")
        return
    fi
    # "--paper=A3" is three words to bash.
    if [[ $typed == = ]]; then
        typed=
    elif [[ $before == = ]]; then
        before=${COMP_WORDS[COMP_CWORD - 2]}
    fi
    if _throwline_takes_value "$before"; then
        _throwline_offer_value "$before" "$typed"
    elif [[ $typed == -* ]]; then
        mapfile -t COMPREPLY < <(compgen -W "$(_throwline_options "$command")" -- "$typed")
    else
        case $command in
            catalogue) _throwline_offer "$typed" < <(_throwline_words catalogue) ;;
            survey) _throwline_offer_files "$typed" '' ;;
            open | check | compare | figures | page | sheet) _throwline_offer_files "$typed" .json ;;
            list)
                # The plan first, then which lists of it.
                if ((COMP_CWORD == 2)); then
                    _throwline_offer_files "$typed" .json
                else
                    _throwline_offer "$typed" < <(_throwline_words list)
                fi
                ;;
        esac
    fi
}

complete -F _throwline throwline
