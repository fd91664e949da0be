package harness

import (
	"strconv"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// solve prepares a network and solves it as described.
func solve(n wire.Network) (*wire.Harness, *wire.Flow, error) {
	h, err := wire.NewHarness(n)
	if err != nil {
		return nil, nil, err
	}
	f := new(wire.Flow)
	return h, f, h.Solve(f, wire.Moment{})
}

// collapsed is the answer for loads that no voltage feeds.
func collapsed(f *wire.Flow, c wire.Collapse) weave.Answer {
	return weave.Answer{
		Text: "It does not settle: there is no voltage at " +
			"which these loads get what they ask for. All " +
			"together they could be {{scale}} of what they " +
			"are.",
		Values: []weave.Value{
			weave.Show("scale", c.Scale, "%", 3),
		},
		Working:  f.Working(c.Branch),
		Findings: f.Findings(),
	}
}

// oneBank is a bank that is known by its voltage and resistance.
func oneBank(e units.Voltage, r units.Resistance) []wire.Battery {
	limit := units.Some(400 * units.Ampere)
	return []wire.Battery{
		{Voltage: e, Resistance: r, Limit: limit},
	}
}

// row is n batteries alike, named 1, 2, 3 ..., with links alike of
// two leads each.
func row(
	n int, b wire.Battery, lead units.Resistance,
) wire.Network {
	var net wire.Network
	for i := range n {
		b.Name = strconv.Itoa(i + 1)
		net.Batteries = append(net.Batteries, b)
		if i > 0 {
			net.Links = append(net.Links, wire.Link{
				Plus:  wire.Lead{Extra: lead},
				Minus: wire.Lead{Extra: lead},
			})
		}
	}
	return net
}

// hardest returns the place of the battery that gives most.
func hardest(f *wire.Flow) int {
	best := 0
	for i, s := range f.Shares {
		if units.Exceeds(s.Current, f.Shares[best].Current) {
			best = i
		}
	}
	return best
}
