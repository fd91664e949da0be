package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// inverterPath is the cable of a 2000 W inverter after an upgrade that left the
// old battery switch in place.
var inverterPath = []wire.Part{
	{Name: "cable", Rating: 330 * units.Ampere}, {Name: "switch", Rating: 100 * units.Ampere},
	{Name: "bus bar", Rating: 250 * units.Ampere},
}

func TestWeakestPart(t *testing.T) {
	p, err := wire.WeakestPart(216.5*units.Ampere, units.Some(300*units.Ampere), inverterPath)
	if err != nil || p.Weak.Name != "switch" || p.Weak.Rating != 100*units.Ampere || p.Index != 1 {
		t.Fatalf("%+v, %v, want the switch of 100 A", p, err)
	}
	for rule, with := range map[string]bool{"load-above-part": true, "device-above-part": true, "no-device-stated": false} {
		if hasSeverity(p.Findings(), rule, working.Danger) != with {
			t.Errorf("found %v, want %s: %v", p.Findings(), rule, with)
		}
	}
	saysAll(t, p.Findings())
	// With a switch of 300 A the bus bar is next, and with that no part is.
	better := append([]wire.Part(nil), inverterPath...)
	better[1].Rating = 300 * units.Ampere
	p, err = wire.WeakestPart(216.5*units.Ampere, units.Some(300*units.Ampere), better)
	if err != nil || p.Index != 2 || has(p.Findings(), "load-above-part") || !has(p.Findings(), "device-above-part") {
		t.Errorf("%+v, %v, found %v", p, err, p.Findings())
	}
	better[2].Rating = 300 * units.Ampere
	if p, err = wire.WeakestPart(216.5*units.Ampere, units.Some(300*units.Ampere), better); err != nil || p.Index != 1 || len(p.Findings()) != 0 {
		t.Errorf("%+v, %v, found %v", p, err, p.Findings())
	}
	if p, err = wire.WeakestPart(216.5*units.Ampere, units.None[units.Current](), better); err != nil || !hasSeverity(p.Findings(), "no-device-stated", working.Danger) {
		t.Errorf("%+v, %v, found %v", p, err, p.Findings())
	}
	saysAll(t, p.Findings())
}

// TestRelayOfAnInverter: what passes from shore through a transfer relay of 15 A
// is kept in bounds by 15 A, and not by the 20 A that suit the 12 AWG behind it.
func TestRelayOfAnInverter(t *testing.T) {
	parts := []wire.Part{{Name: "12 AWG", Rating: 20 * units.Ampere}, {Name: "transfer relay", Rating: 15 * units.Ampere}}
	for device, want := range map[units.Current]bool{15 * units.Ampere: false, 20 * units.Ampere: true} {
		p, err := wire.WeakestPart(12*units.Ampere, units.Some(device), parts)
		if err != nil || hasSeverity(p.Findings(), "device-above-part", working.Danger) != want {
			t.Errorf("%v: found %v, %v, want %v", device, p.Findings(), err, want)
		}
	}
}

func TestWeakestPartRefuses(t *testing.T) {
	some, none := units.Some(300*units.Ampere), units.None[units.Current]()
	for _, x := range bad {
		_, err := wire.WeakestPart(units.Current(x), none, inverterPath)
		wantRangeError(t, err, "wire.WeakestPart", "load")
		_, err = wire.WeakestPart(1, units.Some(units.Current(x)), inverterPath)
		wantRangeError(t, err, "wire.WeakestPart", "device")
		p, err := wire.WeakestPart(1, some, []wire.Part{{Name: "lug", Rating: 10}, {Name: "switch", Rating: units.Current(x)}})
		wantRangeError(t, err, "wire.WeakestPart", "Rating")
		if p != (wire.PathLimit{}) {
			t.Errorf("%v: %+v, want the zero value", x, p)
		}
	}
	_, err := wire.WeakestPart(1, some, nil)
	wantRangeError(t, err, "wire.WeakestPart", "parts")
	_, err = wire.WeakestPart(1, some, []wire.Part{{Rating: 10}})
	wantRangeError(t, err, "wire.WeakestPart", "Name")
}

// TestFaultBank: two of 13.3 V and 4 mΩ side by side behind 0.8 mΩ make 4750 A,
// one alone 2771 A; in series 26.6 V behind 8.8 mΩ make 3023 A.
func TestFaultBank(t *testing.T) {
	one := wire.FaultBank{Voltage: 13.3 * units.Volt, Resistance: 4 * units.Milliohm, Links: 0.8 * units.Milliohm}
	for _, c := range []struct {
		series, parallel int
		want             units.Current
	}{{0, 0, 2771}, {1, 2, 4750}, {2, 1, 3023}, {2, 2, 5542}} {
		b := one
		b.Series, b.Parallel = c.series, c.parallel
		s, err := b.Source()
		if err != nil {
			t.Fatal(err)
		}
		f, err := wire.ShortCircuit(s, wire.Conductor{}, 0)
		if err != nil || units.Exceeds(f.Current-c.want, 0.5) || units.Exceeds(c.want-f.Current, 0.5) {
			t.Errorf("%d in series, %d beside: %v, %v, want %v", c.series, c.parallel, f.Current, err, c.want)
		}
	}
	for field, spoil := range map[string]func(*wire.FaultBank, float64){
		"Voltage":    func(b *wire.FaultBank, x float64) { b.Voltage = units.Voltage(x) },
		"Resistance": func(b *wire.FaultBank, x float64) { b.Resistance = units.Resistance(x) },
		"Links":      func(b *wire.FaultBank, x float64) { b.Links = units.Resistance(x) },
	} {
		for _, x := range bad {
			if field == "Links" && x == 0 {
				continue
			}
			b := one
			spoil(&b, x)
			s, err := b.Source()
			wantRangeError(t, err, "wire.FaultBank.Source", field)
			if s != (wire.FaultSource{}) {
				t.Errorf("%s: %+v, want the zero value", field, s)
			}
		}
	}
	for field, b := range map[string]wire.FaultBank{
		"Series":     {Voltage: 12, Resistance: 1, Series: -1},
		"Parallel":   {Voltage: 12, Resistance: 1, Parallel: 1001},
		"Voltage":    {Voltage: 1.7e308, Resistance: 1, Series: 2},
		"Resistance": {Voltage: 1, Resistance: 1.7e308, Series: 2},
	} {
		_, err := b.Source()
		wantRangeError(t, err, "wire.FaultBank.Source", field)
	}
}
