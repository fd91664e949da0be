#!/bin/sh
# Records what the circuit simulator ngspice says of every network here: one
# .txt for each .cir. It needs only the program (Debian package "ngspice").
# Run it anywhere:
#
#	sh testdata/harness/run.sh
#
# Plus and minus conductors are resistors of their own, constant power is a
# current source of P/V. The two large networks are written here first, as are
# the options that every netlist runs with. v_ is the voltage at the end of a
# branch, i_ the current in its feeder, b_ that of a battery, most_ the largest
# power of a branch.
set -eu
cd "$(dirname "$0")"

# A tree of 127 branches, each with two below it: branch n hangs on n/2, the
# first on the bank. Its feeder has 2 + n mod 7 mohm each way above n = 1, and
# it draws 0.02·(n mod 5) A, (n mod 11)/4 W, and 100 + n ohm where 3 divides n.
awk 'BEGIN {
	print "* a tree of 127 branches, seven deep"
	print "vbat pb0 m0 12.8"; print "rbat pb0 p0 3m"
	for (n = 1; n <= 127; n++) {
		up = int(n/2)
		r = n == 1 ? 1 : 2 + n%7
		printf "v%d p%d a%d 0\nrp%d a%d p%d %dm\nrm%d m%d m%d %dm\n", n, up, n, n, n, n, r, n, n, up, r
		if (n%5) printf "i%d p%d m%d %g\n", n, n, n, 0.02*(n%5)
		if (n%11) printf "b%d p%d m%d i=%g/v(p%d,m%d)\n", n, n, n, (n%11)/4, n, n
		if (n%3 == 0) printf "r%d p%d m%d %d\n", n, n, n, 100+n
		printf ".nodeset v(p%d)=12\n", n
	}
	print ".control\nop"
	for (n = 1; n <= 127; n++) {
		printf "let v_%d = v(p%d)-v(m%d)\nlet i_%d = i(v%d)\nprint v_%d i_%d\n", n, n, n, n, n, n, n
	}
	print ".endc\n.end"
}' | sed 's/\bm0\b/0/g' > tree.cir

# A chain of 150 branches, each on the one before: 0.5 mohm each way, and
# 30 + 15·(n mod 3) W each, three quarters of what the chain could feed.
awk 'BEGIN {
	print "* a chain of 150 constant powers"
	print "vbat pb0 m0 51.2"; print "rbat pb0 p0 12m"
	for (n = 1; n <= 150; n++) {
		printf "v%d p%d a%d 0\nrp%d a%d p%d 0.5m\nrm%d m%d m%d 0.5m\n", n, n-1, n, n, n, n, n, n, n-1
		printf "b%d p%d m%d i=%d/v(p%d,m%d)\n.nodeset v(p%d)=40\n", n, n, n, 30+15*(n%3), n, n, n
	}
	print ".control\nop"
	for (n = 1; n <= 150; n++) {
		printf "let v_%d = v(p%d)-v(m%d)\nlet i_%d = i(v%d)\nprint v_%d i_%d\n", n, n, n, n, n, n, n
	}
	print ".endc\n.end"
}' | sed 's/\bm0\b/0/g' > chain.cir

version=$(ngspice --version | grep -o 'ngspice-[0-9.]*' | head -n 1)
rc=$(mktemp -d)
trap 'rm -rf "$rc"' EXIT
cat > "$rc/.spiceinit" <<'RC'
set numdgt=15
option reltol=1e-10 abstol=1e-11 vntol=1e-11 gmin=1e-20 itl1=1000 itl2=1000
RC
for net in *.cir; do
	{
		echo "# $net, operating point by $version (Debian package ngspice); made by testdata/harness/run.sh"
		# The path of the rc file is HOME; only lines "name = value" are results.
		HOME=$rc ngspice -b "$net" 2> "$rc/err" | sed -n 's/^\([vib]_[a-z0-9]*\|most_[a-z]*\) = \(.*\)$/\1,\2/p'
	} > "${net%.cir}.txt"
	want=$(grep -c '^let [vib]_\|^let most_' "$net")
	got=$(grep -c '^[vibm][a-z]*_' "${net%.cir}.txt" || true)
	if [ "$got" != "$want" ]; then
		echo "$net: $got values of $want" >&2
		cat "$rc/err" >&2
		exit 1
	fi
	echo "$net: $got values"
done
