package wire_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

func TestSheetFlow(t *testing.T) {
	networks := spiceNetworks()
	delete(networks, "chain") // its sheets have 150 feeders
	networks["trailer"] = trailer()
	over := trailer()
	over.Branches[4].Load.Power = 20000
	networks["over"] = over
	two := trailer()
	two.Branches[1].Load.Power, two.Branches[2].Load.Power = 9000, 9000
	networks["two over"] = two
	current := trailer()
	current.Branches[1].Load.Current = 900
	networks["current over"] = current
	for name, n := range networks {
		t.Run(name, func(t *testing.T) {
			f := flowOf(t, n)
			for i := range n.Branches {
				unitstest.CheckSheet(t, f.Working(i))
			}
			for i := range f.Shares {
				unitstest.CheckSheet(t, f.ShareWorking(i))
			}
		})
	}
	// Random ones, with feeders and links of no resistance, idle ones too.
	r := rand.New(rand.NewPCG(5, 5))
	for range 60 {
		n := randomNetwork(r, 5, 3)
		f := flowOf(t, n)
		for i := range n.Branches {
			unitstest.CheckSheet(t, f.Working(i))
		}
		for i := range f.Shares {
			unitstest.CheckSheet(t, f.ShareWorking(i))
		}
	}
}

// TestHarnessSheetSays looks for what a reader needs in the sheets.
func TestHarnessSheetSays(t *testing.T) {
	f := solved(t, trailer())
	for _, c := range []struct {
		text string
		want []string
	}{
		{f.Working(1).Text(), []string{`Voltage at branch "lamps"`, "6 AWG copper", "14 AWG copper", `voltage at "panel"`, "current against the limit", "voltage against what is allowed", "holds"}},
		{f.Working(3).Text(), []string{"resistance of its way back", "constant-resistance load"}},
		{f.ShareWorking(1).Text(), []string{"plus lead of link number 1", "the same by way of every battery", "current against the share"}},
	} {
		for _, want := range c.want {
			if !strings.Contains(strings.Join(strings.Fields(c.text), " "), want) {
				t.Errorf("the working says nothing of %q:\n%s", want, c.text)
			}
		}
	}
	for _, i := range []int{-1, 5} {
		if got := f.Working(i).Steps(); len(got) != 0 {
			t.Errorf("branch %d has steps %v", i, got)
		}
		if got := f.ShareWorking(i).Steps(); len(got) != 0 {
			t.Errorf("battery %d has steps %v", i, got)
		}
	}
	over := trailer()
	over.Branches[4].Load.Power = 20000
	if got := flowOf(t, over).Working(4).Text(); !strings.Contains(got, "asked against the most") || !strings.Contains(got, "does not hold") {
		t.Errorf("the working of a collapse:\n%s", got)
	}
	if got := flowOf(t, wire.Network{Batteries: bankOf(12, 0), Branches: []wire.Branch{{Name: "a", Load: ampsOf(1)}, feederOf("b", "", units.Ohm, wattsOf(100))}}).Working(0); got.Err() != nil {
		t.Errorf("a way without resistance: %v", got.Err())
	}
}
