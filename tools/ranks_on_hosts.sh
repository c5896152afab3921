#!/usr/bin/env bash
# Does a study lose or repeat a sample on many hosts?  ranks_on_hosts.sh [ranks] [hosts] [samples]
#
# Hosts of their own on one machine: each has a network namespace with an address on a bridge, and a
# name (ip-netns, unshare --uts; root).  mpirun starts its daemons there, and ranks of two hosts reach
# each other by TCP alone.  64 ranks on 8 hosts check the business jet 4000 times; the answer must be, to
# the byte, that of one process, and the file hold each number once; so too when a host falls in the
# midst of it.  Nothing of it is left behind.  Exit 77: no such hosts can be made here.
set -euo pipefail
cd "$(dirname "$0")/.."

cannot() {
    echo 'ranks_on_hosts: root, iproute2, Open MPI and namespaces with a bridge are needed'
    exit 77
}
for program in ip mpirun unshare; do command -v "$program" >/dev/null || cannot; done
[ "$(id -u)" = 0 ] || cannot

ranks=${1:-64} hosts=${2:-8} samples=${3:-4000}
command=$PWD/build/release/towershaft
place=$(mktemp -d)
name=tsh$$
head=10.77.0.250

clear() {
    for host in "$name-net" $(seq -f "$name-%g" "$hosts"); do
        { ip netns pids "$host" | xargs -r kill -9; } 2>/dev/null || true
        ip netns del "$host" 2>/dev/null || true
    done
    rm -rf "$place"
}
trap clear EXIT

ip netns add "$name-net" || cannot # the cable, and the host that mpirun itself runs on
in_net() { ip netns exec "$name-net" "$@"; }
in_net ip link set lo up
in_net ip link add name cable type bridge || cannot
in_net ip address add "$head/24" dev cable
in_net ip link set cable up
for ((i = 1; i <= hosts; i++)); do
    ip netns add "$name-$i"
    in_net ip link add name "host$i" type veth peer name eth0 netns "$name-$i"
    in_net ip link set "host$i" master cable up
    ip netns exec "$name-$i" ip link set lo up
    ip netns exec "$name-$i" ip address add "10.77.0.$i/24" dev eth0
    ip netns exec "$name-$i" ip link set eth0 up
    echo "10.77.0.$i slots=$(((ranks + hosts - 1) / hosts))" >>"$place/hosts"
done
# What mpirun takes for a remote shell: its first word is the address of a host.
cat >"$place/agent" <<AGENT
#!/bin/sh
host=\$1
shift
exec ip netns exec "$name-\${host##*.}" unshare --uts sh -c 'hostname "\$0"; exec sh -c "\$*"' "host\${host##*.}" "\$@"
AGENT
chmod +x "$place/agent"

cp examples/bizjet.yaml "$place/"
sed -e "s|^samples:.*|samples: $samples|" -e 's|^drive:.*|drive: bizjet.yaml|' examples/studies/bizjet-loads.yaml >"$place/loads.yaml"
cd "$place"
"$command" study loads.yaml -o alone.sqlite --json >alone.json

on_hosts() { # the base that is written; what mpirun says of a host that fell goes to its own file
    # shellcheck disable=SC2016  # expanded by the shells of the hosts
    ip netns exec "$name-net" unshare --uts sh -c 'hostname head; exec "$@"' - \
        mpirun --allow-run-as-root --oversubscribe --hostfile hosts -n "$ranks" \
        --mca plm_rsh_agent "$place/agent" --mca oob_tcp_if_include 10.77.0.0/24 \
        --mca btl tcp,self,vader --mca btl_tcp_if_include 10.77.0.0/24 \
        sh -c 'hostname >"$0/seen.$OMPI_COMM_WORLD_RANK"; exec "$@"' "$place" \
        "$command" study loads.yaml -o "$1" --json
}

same_as_alone() { # a base and an answer
    cmp alone.json "$2"
    /usr/bin/python3 - "$samples" "$1" <<'SAME'
import sqlite3
import sys
alone, many = (sqlite3.connect(one).execute("SELECT * FROM sample ORDER BY id").fetchall() for one in ("alone.sqlite", sys.argv[2]))
if len(many) != int(sys.argv[1]) or alone != many:
    sys.exit(f"ranks_on_hosts: {len(many)} rows where {sys.argv[1]} were asked for, or not those of one process")
SAME
}

begun=$SECONDS
on_hosts many.sqlite >many.json
took=$((SECONDS - begun))
seen=$(cat seen.* | sort | uniq -c | awk '{ print $1 " on " $2 }' | paste -sd, | sed 's/,/, /g')
same_as_alone many.sqlite many.json
echo "ranks_on_hosts: $ranks ranks ($seen): $samples samples, each once, the same answer to the byte, $took s"

# A host falls once samples of it are kept; whoever goes on with the study has the rest to do.
on_hosts fallen.sqlite >fallen.json 2>fallen.log &
team=$!
whole=$(stat -c %s many.sqlite)
while kill -0 "$team" 2>/dev/null && [ "$(stat -c %s fallen.sqlite 2>/dev/null || echo 0)" -lt $((whole / 4)) ]; do
    sleep 0.05
done
ip netns pids "$name-2" | xargs -r kill -9 2>/dev/null || true
wait "$team" && { echo 'ranks_on_hosts: the team ended before its host fell'; exit 1; }
kept=$(/usr/bin/python3 -c 'import sqlite3
print(sqlite3.connect("fallen.sqlite").execute("SELECT count(*) FROM sample").fetchone()[0])')
"$command" study loads.yaml -o fallen.sqlite --json >rest.json
same_as_alone fallen.sqlite rest.json
echo "ranks_on_hosts: a host killed after $kept of $samples samples: none lost and none twice when the study went on"
