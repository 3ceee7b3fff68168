# What .ci/run and .ci/nightly have in common. They source it, from the top folder, with minutes and results set.
# shellcheck shell=bash
# shellcheck disable=SC2154  # minutes and results

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en DOTNET_GENERATE_ASPNET_CERTIFICATE=false
# Build servers would outlive the run.
export MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0 UseSharedCompilation=false
export REDOCLY_TELEMETRY=off REDOCLY_SUPPRESS_UPDATE_NOTICE=true SCARF_ANALYTICS=false
export no_proxy=127.0.0.1,localhost NO_PROXY=127.0.0.1,localhost PYTHONDONTWRITEBYTECODE=1
# Every process that this run starts inherits the mark; by it they are found again at the end.
export RACK_CHECK_CI_RUN="$$.$SRANDOM"

scratch=$(mktemp -d)
# Sockets and temporary files of processes that are ended early go with it.
export TMPDIR=$scratch
passed=0 failed=0 skipped=0 complete=no
# Longest time of a runner of cases.
case_seconds=300
projects=(tests/*.Tests/*.csproj)

end_processes() {
  local signal entry left
  for signal in TERM KILL; do
    left=no
    for entry in /proc/[0-9]*; do
      if grep -qsz "^RACK_CHECK_CI_RUN=$RACK_CHECK_CI_RUN\$" "$entry/environ"; then
        kill -s "$signal" "${entry#/proc/}" 2>/dev/null && left=yes
      fi
    done
    [ "$left" = yes ] || return 0
    sleep 2
  done
}

finish() {
  trap '' TERM INT HUP
  trap - EXIT
  set +e
  end_processes
  rm -rf "$scratch"
  if [ "$complete" = no ]; then
    say "The run broke off."
    failed=$((failed + 1))
  fi
  printf '%d passed, %d failed, %d skipped\n' "$passed" "$failed" "$skipped"
  [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ] && exit 0
  exit 1
}
trap finish EXIT
trap 'exit 1' TERM INT HUP

say() { printf '\n== %s\n' "$*"; }

count() { passed=$((passed + $1)) failed=$((failed + $2)) skipped=$((skipped + ${3:-0})); }

# limited SECONDS COMMAND ...: in the background, so that a signal to this script is heard at once.
limited() {
  local seconds=$1 left=$((minutes * 60 - SECONDS))
  shift
  [ "$seconds" -le "$left" ] || seconds=$left
  if [ "$seconds" -le 0 ]; then
    echo "No time left for: $*"
    return 124
  fi
  timeout --kill-after=20 "$seconds" "$@" &
  wait $!
}

# Adds up one project's results. Skipped tests are neither executed nor counted under any name in the file, hence the difference.
read_trx() {
  python3 - "$1" <<'PYTHON'
import sys, xml.etree.ElementTree as xml
counters = xml.parse(sys.argv[1]).find(".//{*}Counters").attrib
total, executed, passed = (int(counters[name]) for name in ("total", "executed", "passed"))
print(passed, executed - passed, total - executed)
PYTHON
}

# test_run NAME FILES SECONDS HANG ARGUMENT ...: the README's test command with further arguments, over what is built already. Each of so many test
# projects leaves a file of results; one that leaves none has died, as has one in which nothing goes on for the time HANG.
test_run() {
  local name=$1 expected=$2 seconds=$3 hang=$4 code=0 before=$failed file files counts
  shift 4
  say "$name"
  limited "$seconds" dotnet test "$@" -c Release --no-build --results-directory "$results/$name" --logger "trx;LogFilePrefix=results" \
    --blame-hang --blame-hang-timeout "$hang" --blame-hang-dump-type none || code=$?
  files=("$results/$name"/results*.trx)
  for file in "${files[@]}"; do
    if ! counts=$(read_trx "$file"); then
      echo "FAILED: $file cannot be read"
      count 0 1
      continue
    fi
    # shellcheck disable=SC2086  # three numbers
    count $counts
  done
  if [ "${#files[@]}" -ne "$expected" ]; then
    echo "FAILED: $expected test projects left ${#files[@]} results"
    count 0 1
  elif [ "$code" -ne 0 ] && [ "$failed" -eq "$before" ]; then
    echo "FAILED: the test run ended with code $code"
    count 0 1
  fi
}

# run_cases NAME COMMAND ...: a runner whose last line is "N passed, N failed".
run_cases() {
  local name=$1 code=0 last
  shift
  say "$name"
  limited "${case_seconds}" "$@" >"$scratch/cases" 2>&1 || code=$?
  cat "$scratch/cases"
  last=$(tail -n 1 "$scratch/cases")
  if [[ $last =~ ^([0-9]+)\ passed,\ ([0-9]+)\ failed$ ]]; then
    count "${BASH_REMATCH[1]}" "${BASH_REMATCH[2]}"
    [ "$code" -eq 0 ] || [ "${BASH_REMATCH[2]}" -gt 0 ] || count 0 1
  else
    echo "FAILED: $name said no numbers (exit code $code)"
    count 0 1
  fi
}

build() {
  say "Build"
  if ! limited 900 dotnet build RackCheckApi.sln -c Release -warnaserror; then
    echo "FAILED: build"
    failed=1 complete=yes
    exit 1
  fi
}
