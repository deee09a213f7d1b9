#!/usr/bin/env bash
# Measures the desk over a large store; see README.md.
#
#     crates/server/benches/measure.sh PROGRAM STORE [SECONDS [KIND…]]
set -euo pipefail
here="$(cd "$(dirname "$0")" && pwd)"
program="$1" store="$2" seconds="${3:-15}"
kinds=("${@:4}")
port="${PORT:-8499}" url="http://localhost:${PORT:-8499}"
now() { date +%s%N; }

began="$(now)"
"$program" serve --store "$store" --by Kim --port "$port" 2>/dev/null &
desk=$!
trap 'kill "$desk"' EXIT
until curl -sf -o /dev/null "$url/journal"; do sleep 0.01; done
echo "start to first page: $((($(now) - began) / 1000000)) ms"
rss() { awk '/VmRSS|VmHWM/ {printf "%s %d MB  ", $1, $2 / 1024} END {print ""}' "/proc/$desk/status"; }
rss
while curl -sf "$url/" | grep -q "not checked yet"; do sleep 1; done
echo "all joints looked at: $((($(now) - began) / 1000000)) ms"
rss
further="$(curl -sf "$url/api/v1/questions?limit=200" | grep -o '"id":"[0-9a-f]*"' | tail -1 | cut -d'"' -f4 || true)"
files="$(curl -sf "$url/listings" | grep -o 'href="/listings/[^"?]*"' | cut -d'"' -f2 | cut -d/ -f3 | paste -sd, || true)"
if [[ ${#kinds[@]} == 0 ]]; then
    kinds=(overview joints_of_storey joints_of_barrier joints_by_words joint section reading listings questions
        questions_further question journal api_joints api_joint api_questions api_journal)
fi
# Milliseconds of processor that the desk has used so far.
used() { awk -v tick="$(getconf CLK_TCK)" '{print ($14 + $15) * 1000 / tick}' "/proc/$desk/stat"; }

printf '%-18s %10s %9s %9s %9s %9s %8s\n' page requests/s p50 p90 p99 processor not-2xx
for kind in "${kinds[@]}"; do
    before="$(used)"
    said="$(wrk -t 2 -c 12 -d "${seconds}s" --latency -s "$here/pages.lua" "$url" -- "$kind" "${further:-none}" "$files")"
    requests="$(awk '/requests in/ {print $1}' <<<"$said")"
    printf '%-18s %10s %9s %9s %9s %7.2fms %8s\n' "$kind" \
        "$(awk '/Requests\/sec/ {print $2}' <<<"$said")" \
        "$(awk '$1 == "50%" {print $2}' <<<"$said")" "$(awk '$1 == "90%" {print $2}' <<<"$said")" \
        "$(awk '$1 == "99%" {print $2}' <<<"$said")" \
        "$(awk -v a="$before" -v b="$(used)" -v n="$requests" 'BEGIN {print (b - a) / (n > 0 ? n : 1)}')" \
        "$(awk '/Non-2xx/ {n = $NF} END {print n + 0}' <<<"$said")"
done
rss
