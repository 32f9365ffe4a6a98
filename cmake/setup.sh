# Sourced by demo/run, tests/run and .ci/run: installs what is missing and builds.
# THROWLINE_BUILD names another build folder than build/ in the tree, RC_PARAMS other cases of the properties.
# shellcheck shell=bash

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
build=${THROWLINE_BUILD:-$root/build}
# Qt asks for a display as soon as a program paints; none of this needs one.
export QT_QPA_PLATFORM=${QT_QPA_PLATFORM:-offscreen}
export LC_ALL=C.UTF-8
# So that a copy of the tree finds what another copy compiled.
export CCACHE_BASEDIR=$root CCACHE_NOHASHDIR=1
# The program looks beside itself, which another build folder is not.
export THROWLINE_LENSDATA=${THROWLINE_LENSDATA:-$root/lensdata}

# The same cases of each property every time, so that a tree that passed passes; tests/soak tries new ones.
export RC_PARAMS=${RC_PARAMS:-seed=1}

say() {
    printf '%s: %s\n' "${0#"$root"/}" "$*" >&2
}

# Prints those packages of the given lists that are not installed; needs no network and no rights.
missing_packages() {
    local package
    sort -u "$@" | while read -r package; do
        if [[ $(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) != installed ]]; then
            printf '%s\n' "$package"
        fi
    done
}

# apt-get with the rights it needs: sudo drops the environment, so it is set behind it.
as_root() {
    if [[ $EUID -eq 0 ]]; then
        env DEBIAN_FRONTEND=noninteractive "$@"
    else
        sudo env DEBIAN_FRONTEND=noninteractive "$@"
    fi
}

can_be_root() {
    [[ $EUID -eq 0 ]] || { command -v sudo >/dev/null && { [[ -t 0 ]] || sudo -n true 2>/dev/null; }; }
}

# Installs the packages of the given lists. Exit 3 when it may not.
install_packages() {
    local -a missing
    mapfile -t missing < <(missing_packages "$@")
    if [[ ${#missing[@]} -eq 0 ]]; then
        return
    fi
    if ! can_be_root; then
        say "these packages are missing: ${missing[*]}"
        say "run this once as root, or with sudo at hand, to install them"
        exit 3
    fi
    say "installing ${missing[*]}"
    # Another apt may hold the lock for a while; a mirror may fail once.
    local -a apt=(apt-get -q -o DPkg::Lock::Timeout=600 -o Acquire::Retries=3)
    as_root "${apt[@]}" update >&2 </dev/null
    as_root "${apt[@]}" install -y --no-install-recommends "${missing[@]}" >&2 </dev/null
}

# A build folder copied or moved with its tree cannot be used again; CMake only says so and stops.
drop_moved_build() {
    local cache=$build/CMakeCache.txt home
    [[ -f $cache ]] || return 0
    home=$(sed -n 's/^CMAKE_HOME_DIRECTORY:INTERNAL=//p' "$cache")
    if [[ $home != "$root" ]]; then
        say "starting $build afresh: it was made for $home"
        rm -rf "$build"
    fi
}

# Configures with the given options and builds the given target; `all` is one.
build_with() {
    local target=$1
    shift
    (
        cd "$root" || exit
        cmake --preset release -B "$build" "$@" >&2
        # More jobs than cores only wait for each other.
        cmake --build "$build" --target "$target" --parallel "$(nproc)" >&2
    )
}

# The program alone. A new build folder is set up without tests, which need packages of their own;
# one that has them keeps them.
build_program() {
    drop_moved_build
    local -a options=()
    if [[ ! -f $build/CMakeCache.txt ]]; then
        options=(-DTHROWLINE_TESTS=OFF -DTHROWLINE_BENCH=OFF)
    fi
    build_with throwline "${options[@]}"
}

# Program, tests and benchmarks.
build_everything() {
    drop_moved_build
    build_with all -DTHROWLINE_TESTS=ON -DTHROWLINE_BENCH=ON
}
