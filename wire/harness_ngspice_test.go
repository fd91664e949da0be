package wire_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// spiceDifference is the relative difference allowed between a solved network
// and the recorded output of the circuit simulator. Its own tolerance is 1e-10
// of each voltage and current a step.
const spiceDifference = 1e-6

// feederOf is a feeder of so many ohms there and back.
func feederOf(name, parent string, ohms units.Resistance, load wire.Load) wire.Branch {
	return wire.Branch{Name: name, Parent: parent, Extra: ohms, Load: load}
}

// ampsOf, wattsOf and ohmsOf are loads of one kind.
func ampsOf(i units.Current) wire.Load    { return wire.Load{Current: i} }
func wattsOf(p units.Power) wire.Load     { return wire.Load{Power: p} }
func ohmsOf(r units.Resistance) wire.Load { return wire.Load{Resistance: units.Some(r)} }

// bankOf is a bank known by its voltage and resistance.
func bankOf(v units.Voltage, r units.Resistance) []wire.Battery {
	return []wire.Battery{{Voltage: v, Resistance: r}}
}

// leadsOf is a link of so many ohms in the plus and in the minus lead.
func leadsOf(plus, minus units.Resistance) wire.Link {
	return wire.Link{Plus: wire.Lead{Extra: plus}, Minus: wire.Lead{Extra: minus}}
}

const mOhm = units.Milliohm

// fourBatteries are those of oneend.cir and opposite.cir.
func fourBatteries(minus string) wire.Network {
	b := func(name string) wire.Battery {
		return wire.Battery{Name: name, Voltage: 13.25, Resistance: 2.8 * mOhm}
	}
	link := leadsOf(0.31*mOhm, 0.27*mOhm)
	return wire.Network{
		Batteries: []wire.Battery{b("one"), b("two"), b("three"), b("four")},
		Links:     []wire.Link{link, link, link},
		Plus:      "one", Minus: minus,
		Branches: []wire.Branch{feederOf("inverter", "", 1.8*mOhm, wattsOf(2400)), feederOf("lamps", "", 48*mOhm, ampsOf(9))},
	}
}

// spiceNetworks are the netlists of testdata/harness, written anew.
func spiceNetworks() map[string]wire.Network {
	return map[string]wire.Network{
		"inverter": {Batteries: bankOf(12.2, 6*mOhm), Branches: []wire.Branch{feederOf("inverter", "", 4.2*mOhm, wattsOf(1750))}},
		"panel": {Batteries: bankOf(13.1, 4*mOhm), Branches: []wire.Branch{
			feederOf("panel", "", 12*mOhm, wire.Load{}),
			feederOf("lamps", "panel", 70*mOhm, ampsOf(4.2)),
			feederOf("fridge", "panel", 56*mOhm, wattsOf(72)),
			feederOf("heater", "panel", 44*mOhm, ohmsOf(1.15)),
			feederOf("pump", "panel", 80*mOhm, wire.Load{Power: 54, Current: 0.8}),
			feederOf("radio", "panel", 122*mOhm, wire.Load{Resistance: units.Some[units.Resistance](96), Current: 0.15, Power: 11}),
		}},
		"chassis": {Batteries: bankOf(12.75, 9*mOhm), Branches: []wire.Branch{
			{Name: "panel", Conductor: statedOf(14 * mOhm), OneWay: 1, Return: units.Some(3 * mOhm)},
			{Name: "lights", Parent: "panel", Conductor: statedOf(82 * mOhm), OneWay: 1, Return: units.Some(0.5 * mOhm), Load: ampsOf(6.5)},
			{Name: "jack", Parent: "panel", Conductor: statedOf(9.5 * mOhm), OneWay: 2, Return: units.Some(mOhm), Extra: 0.25 * mOhm, Load: wattsOf(310)},
			{Name: "fan", Parent: "panel", Load: ohmsOf(7.4)},
		}},
		"limit": {Batteries: bankOf(12.4, 5*mOhm), Branches: []wire.Branch{
			feederOf("bar", "", 0.8*mOhm, wire.Load{}),
			feederOf("large", "bar", 2.6*mOhm, wattsOf(3500)),
			feederOf("small", "bar", 9*mOhm, wattsOf(1312)),
			feederOf("lamps", "bar", 60*mOhm, ampsOf(14.8)),
		}},
		"most": {Batteries: bankOf(12.6, 5*mOhm), Branches: []wire.Branch{
			feederOf("bar", "", 2*mOhm, ohmsOf(0.6)),
			feederOf("other", "bar", 6*mOhm, wattsOf(400)),
			feederOf("inverter", "bar", 4.4*mOhm, wire.Load{}),
		}},
		"oneend":   fourBatteries("one"),
		"opposite": fourBatteries("four"),
		"mixed": {
			Batteries: []wire.Battery{
				{Name: "one", Voltage: 13.3, Resistance: 10 * mOhm},
				{Name: "two", Voltage: 12.9, Resistance: 4 * mOhm},
				{Name: "three", Voltage: 12.4, Resistance: 6 * mOhm},
			},
			Links: []wire.Link{leadsOf(0.8*mOhm, 1.1*mOhm), leadsOf(2.2*mOhm, 0.6*mOhm)},
			Plus:  "two", Minus: "three",
			Branches: []wire.Branch{feederOf("box", "", 10*mOhm, wire.Load{Power: 140, Resistance: units.Some[units.Resistance](3.3)})},
		},
		"idle": {
			Batteries: []wire.Battery{{Name: "lithium", Voltage: 13.3, Resistance: 10 * mOhm}, {Name: "lead", Voltage: 12.4, Resistance: 6 * mOhm}},
			Links:     []wire.Link{leadsOf(2.5*mOhm, 1.5*mOhm)},
		},
		"tree":  spiceTree(),
		"chain": spiceChain(),
	}
}

// statedOf is a conductor of so many ohms a metre.
func statedOf(r units.Resistance) wire.Conductor {
	return wire.Conductor{Stated: units.Some(r.Along(1))}
}

// spiceTree is the tree that run.sh describes.
func spiceTree() wire.Network {
	n := wire.Network{Batteries: bankOf(12.8, 3*mOhm)}
	for k := 1; k <= 127; k++ {
		b := wire.Branch{Name: strconv.Itoa(k), Parent: strconv.Itoa(k / 2), Extra: 2 * units.Resistance(2+k%7) * mOhm}
		if k == 1 {
			b.Parent, b.Extra = "", 2*mOhm
		}
		b.Load = wire.Load{Current: 0.02 * units.Current(k%5), Power: units.Power(k%11) / 4}
		if k%3 == 0 {
			b.Load.Resistance = units.Some(units.Resistance(100 + k))
		}
		n.Branches = append(n.Branches, b)
	}
	return n
}

// spiceChain is the chain that run.sh describes.
func spiceChain() wire.Network {
	n := wire.Network{Batteries: bankOf(51.2, 12*mOhm)}
	for k := 1; k <= 150; k++ {
		b := feederOf(strconv.Itoa(k), strconv.Itoa(k-1), mOhm, wattsOf(units.Power(30+15*(k%3))))
		if k == 1 {
			b.Parent = ""
		}
		n.Branches = append(n.Branches, b)
	}
	return n
}

// recordedOf reads one output of the simulator, by name.
func recordedOf(t *testing.T, file string) map[string]float64 {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	values := map[string]float64{}
	for _, row := range rows {
		x, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		values[row[0]] = x
	}
	return values
}

// TestNgspice holds every network of testdata/harness against what the circuit
// simulator recorded, to 1e-6: each voltage, feeder current and battery. The
// chassis, bank and collapse cases are among them, and every recorded number
// is looked at.
func TestNgspice(t *testing.T) {
	networks := spiceNetworks()
	files, err := filepath.Glob(filepath.Join(unitstest.Root(t), "testdata", "harness", "*.txt"))
	if err != nil || len(files) != len(networks) {
		t.Fatalf("%d recorded outputs for %d networks, %v", len(files), len(networks), err)
	}
	worst, numbers := 0.0, 0
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".txt")
		t.Run(name, func(t *testing.T) {
			network, ok := networks[name]
			if !ok {
				t.Fatal("no network of that name")
			}
			got := solvedValues(t, network)
			for key, want := range recordedOf(t, file) {
				numbers++
				ours, ok := got[key]
				off := math.Abs(ours - want)
				if want != 0 {
					off /= math.Abs(want)
					worst = max(worst, off)
				}
				if !ok || !(off <= spiceDifference) {
					t.Errorf("%s is %v, the simulator has %v: off by %.2g", key, ours, want, off)
				}
			}
		})
	}
	if numbers < 600 {
		t.Errorf("%d numbers compared, want the 613 or so that are recorded", numbers)
	}
	t.Logf("%d networks, %d numbers, worst relative difference %.1e", len(files), numbers, worst)
}

// solvedValues names what is solved as the recorded outputs do.
func solvedValues(t *testing.T, network wire.Network) map[string]float64 {
	t.Helper()
	f := solved(t, network)
	got := map[string]float64{"v_bank": float64(f.Voltage)}
	for _, p := range f.Points {
		got["v_"+p.Name], got["i_"+p.Name] = float64(p.Voltage), float64(p.Current)
		h, err := wire.NewHarness(network)
		if err != nil {
			t.Fatal(err)
		}
		if len(f.Points) < 10 {
			most, err := h.MostPower(p.Name, wire.Moment{})
			if err != nil {
				t.Fatal(err)
			}
			got["most_"+p.Name] = float64(most)
		}
	}
	for _, s := range f.Shares {
		got["b_"+s.Battery.Name] = float64(s.Current)
	}
	return got
}

// solved solves n as described, which must not collapse.
func solved(t *testing.T, n wire.Network) *wire.Flow {
	t.Helper()
	h, err := wire.NewHarness(n)
	if err != nil {
		t.Fatal(err)
	}
	f := new(wire.Flow)
	if err := h.Solve(f, wire.Moment{}); err != nil {
		t.Fatal(err)
	}
	if c, ok := f.Collapse.Get(); ok {
		t.Fatalf("collapsed: %+v", c)
	}
	return f
}
