# Sourced by app/start and tests/run: the packages of app/packages, installed with consent.

# missing_packages GROUP...: prints those that are not installed; without_qt=1 leaves out what only the window needs.
missing_packages() {
    local group name status
    while read -r group name; do
        case " $* " in *" $group "*) ;; *) continue ;; esac
        if [ "${without_qt:-0}" = 1 ]; then case "$name" in *qt6* | fonts-* | libgl* | xvfb | xdotool | openbox) continue ;; esac; fi
        status=$(dpkg-query -W -f='${db:Status-Status}' "$name" 2>/dev/null || true)
        [ "$status" = installed ] || printf '%s\n' "$name"
    done < <(grep -v '^#' "$root/app/packages")
}

# ensure_packages WHY GROUP...: installs what is missing; asks on a terminal, needs root rights.
ensure_packages() {
    local why=$1 missing answer
    shift
    command -v dpkg-query >/dev/null || { echo "This is not Debian; install the packages listed in app/packages by hand." >&2; return 0; }
    missing=$(missing_packages "$@" | tr '\n' ' ')
    [ -n "${missing// /}" ] || return 0
    echo "$why needs these Debian packages: $missing" >&2
    local apt="apt-get install -y --no-install-recommends $missing"
    if [ "$(id -u)" = 0 ]; then
        if [ -t 0 ] && [ -z "${CI:-}" ]; then
            read -r -p "Install them now? [Y/n] " answer
            case "$answer" in [nN]*) exit 2 ;; esac
        fi
        export DEBIAN_FRONTEND=noninteractive
        { apt-get update -q && $apt; } >&2 || { echo "Installing failed; see above." >&2; exit 2; }
    elif [ -t 0 ] && command -v sudo >/dev/null; then
        read -r -p "Install them now with sudo? [Y/n] " answer
        case "$answer" in [nN]*) exit 2 ;; esac
        { sudo apt-get update -q && sudo $apt; } >&2 || { echo "Installing failed; see above." >&2; exit 2; }
    else
        echo "Root rights are needed: sudo $apt" >&2
        exit 2
    fi
}
