#!/usr/bin/env bash
# Installs what the checks need on a fresh Debian machine with Rust, then runs every check there
# is. The last line counts what passed and what failed; any failure makes the whole fail.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.." || exit 1
out=tests/out
mkdir -p "$out"
passed=0
failed=0

install_what_is_missing() {
  local missing=()
  command -v cc >/dev/null || missing+=(gcc libc6-dev)
  command -v chromium >/dev/null || missing+=(chromium)
  command -v chromedriver >/dev/null || missing+=(chromium-driver)
  command -v firefox-esr >/dev/null || missing+=(firefox-esr)
  command -v WebKitWebDriver >/dev/null || missing+=(webkit2gtk-driver)
  command -v Xvfb >/dev/null || missing+=(xvfb)
  command -v npm >/dev/null || missing+=(npm)
  command -v pdftoppm >/dev/null || missing+=(poppler-utils)
  if [ ${#missing[@]} -gt 0 ]; then
    local root=()
    [ "$(id -u)" -eq 0 ] || root=(sudo)
    "${root[@]}" apt-get update &&
      "${root[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y --no-install-recommends "${missing[@]}" || return 1
  fi
  # The checker of accessibility: one file, read by the browser checks, no part of the page.
  local cache=${XDG_CACHE_HOME:-$HOME/.cache}/carryline
  if [ ! -f "$cache/axe-core/axe.min.js" ]; then
    mkdir -p "$cache/axe-core" &&
      (cd "$cache" && tar -xzf "$(npm pack axe-core@4.14.1 --silent)" --strip-components=1 \
        -C axe-core package/axe.min.js) || return 1
  fi
  # Debian has no driver for its Firefox. Built apart from our own folder, it outlives a clean one.
  command -v geckodriver >/dev/null ||
    CARGO_TARGET_DIR=$cache/geckodriver \
      cargo install geckodriver --locked --quiet || return 1
  # The toolchain file names compiler, components and target; rustup brings what is not there.
  rustup target add wasm32-unknown-unknown
}

# Runs one step that is a check by itself.
step() {
  local name=$1
  shift
  echo "== $name"
  if "$@"; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    echo "== $name FAILED"
  fi
}

# Runs tests and adds up what their own closing lines count.
tests() {
  local name=$1 log="$out/$1.txt" status counted
  shift
  echo "== $name"
  "$@" 2>&1 | tee "$log"
  status=${PIPESTATUS[0]}
  counted=$(awk '/^test result: / { p += $4; f += $6 } END { print p + 0, f + 0 }' "$log")
  passed=$((passed + ${counted% *}))
  failed=$((failed + ${counted#* }))
  # Tests that did not compile, or a run that ran nothing, have no line that counts them.
  if [ "$counted" = "0 0" ] || { [ "$status" -ne 0 ] && [ "${counted#* }" -eq 0 ]; }; then
    failed=$((failed + 1))
    echo "== $name FAILED"
  fi
}

install_what_is_missing || {
  echo "what the checks need could not be installed"
  echo "0 passed, 1 failed"
  exit 1
}
step format cargo fmt --all --check
step lints cargo clippy --workspace --all-targets --quiet -- -D warnings
step documentation env RUSTDOCFLAGS="-D warnings" cargo doc --workspace --no-deps --document-private-items --quiet
step host cargo build --release --quiet
tests tests cargo test --workspace --no-fail-fast -- --show-output

# Each case in a browser says how long it took; of all others the program does that holds them.
echo "the ten longest, s:"
awk '/^ +Running / { split($NF, path, "/"); name = path[length(path)]; sub(/-[0-9a-f]+\)$/, "", name) }
  /^ +Doc-tests / { name = "documentation" }
  /^test result: / { sub(/s$/, "", $NF); if (name != "browser") print $NF, name }
  /  took: / { sub(/.*  took: /, ""); print $1, $3 }' "$out/tests.txt" | sort -rn | head -n 10 | sed 's/^/  /'

# The rows of all the tables that the tests print: see tests/checks.rs.
awk '/^  table: / { n++; rows += $2; out += $4; known += $6 }
  END { print rows + 0 " rows in " n + 0 " tables: " out + 0 " out of bound, " known + 0 " known to be out" }' \
  "$out/tests.txt"
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
