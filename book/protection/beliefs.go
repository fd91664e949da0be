package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// twelve is the wire that the rule and some beliefs are tried on.
func twelve(rules wire.RuleSet) wire.Circuit {
	return wire.Circuit{
		Installation: wire.Installation{Rules: rules, Size: wire.AWG(12), Insulation: wire.Insulation105},
		Load:         8 * units.Ampere,
	}
}

// houseBank is a bank of lithium batteries as in a camper van.
func houseBank() wire.FaultSource {
	return wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm}
}

// solveRule asks the three rule sets about the same wire.
func solveRule(*weave.Inputs) (weave.Answer, error) {
	values := []weave.Value{weave.Say("size", twelve(0).Installation.Size), weave.Say("class", twelve(0).Installation.Insulation)}
	for _, r := range []struct {
		name  string
		rules wire.RuleSet
	}{{"rv", wire.RVLowVoltage}, {"nec", wire.NEC2017}, {"boat", wire.Boat33CFR}} {
		p, err := wire.Protect(twelve(r.rules))
		if err != nil {
			return weave.Answer{}, err
		}
		values = append(values, weave.Show(r.name, p.Limit, "A", 3))
	}
	return weave.Answer{Values: values}, nil
}

// solvePlaces asks how far from the source a device may sit.
func solvePlaces(*weave.Inputs) (weave.Answer, error) {
	var values []weave.Value
	for _, p := range []struct {
		name, number string // of the finding
		rules        wire.RuleSet
		from         units.Length
		post         bool
	}{
		{"rv", "at most", wire.RVLowVoltage, 10 * units.Foot, false},
		{"open", "at most, unless sheathed", wire.Boat33CFR, 1 * units.Foot, false},
		{"sheathed", "at most", wire.Boat33CFR, 10 * units.Foot, false},
		{"post", "at most", wire.Boat33CFR, 10 * units.Foot, true},
	} {
		c := twelve(p.rules)
		c.Device, c.FromSource, c.OnBatteryPost = units.Some(15*units.Ampere), units.Some(p.from), p.post
		judged, err := wire.Protect(c)
		if err != nil {
			return weave.Answer{}, err
		}
		values = append(values, weave.Show(p.name, numberOf(judged.Findings(), "device-far-from-source", p.number), "in", 2))
	}
	return weave.Answer{Values: values}, nil
}

// numberOf returns the number that a finding has under a name, nil if there is
// none, which Show refuses.
func numberOf(findings []working.Finding, rule, name string) units.Value {
	for _, f := range findings {
		for _, n := range f.Numbers {
			if f.Rule == rule && n.Name == name {
				return n.Value
			}
		}
	}
	return nil
}

func solveLabel(*weave.Inputs) (weave.Answer, error) {
	power, nominal := 2000*units.Watt, 12*units.Volt
	tired := inverterCurrent(power, 88*units.Percent, 10.5*units.Volt)
	ladder, err := wire.Ratings(wire.RVLowVoltage)
	if err != nil {
		return weave.Answer{}, err
	}
	believed, err := ladder.Next(power.At(nominal))
	return weave.Answer{
		Text: "{{power}} over {{nominal}} is {{label}}, and the next fuse is {{believed}}. At the end of the battery, with what the " +
			"inverter itself loses, the same load takes {{tired}}: the fuse opens in the middle of dinner, and a cable chosen for it is too thin.",
		Values: []weave.Value{
			weave.Show("power", power, "W", 4),
			weave.Show("nominal", nominal, "V", 3),
			weave.Show("label", power.At(nominal), "A", 3),
			weave.Show("believed", believed, "A", 3),
			weave.Show("tired", tired, "A", 3),
		},
	}, err
}

// solvePair opens one of two wires that share a load.
func solvePair(*weave.Inputs) (weave.Answer, error) {
	fuse := 60 * units.Ampere
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(10), Insulation: wire.Insulation105},
		Load:         fuse, // all of it, once the other wire is open
		Device:       units.Some(fuse),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	times := units.RatioOf(fuse, p.Limit)
	return weave.Answer{
		Text: "As long as both crimps hold. When one lets go, all {{fuse}} are in a {{size}} wire that may have {{limit}}, which is {{heat}} " +
			"times the heat, and the fuse is content. One larger cable, or a fuse for each wire.",
		Values: []weave.Value{
			weave.Show("fuse", fuse, "A", 3),
			weave.Say("size", p.Circuit.Installation.Size),
			weave.Show("limit", p.Limit, "A", 3),
			weave.Show("heat", times*times, "1", 2),
		},
	}, nil
}

// solveCharger shorts a cable that has a source at each end.
func solveCharger(*weave.Inputs) (weave.Answer, error) {
	charger := 30 * units.Ampere
	f, err := wire.ShortCircuit(houseBank(), wire.Conductor{Size: wire.AWG(8)}, 10*units.Foot)
	return weave.Answer{
		Text: "The controller gives {{charger}} and no more. The battery at the other end of the same {{one_way}} of {{size}} gives {{bank}} " +
			"into a short at the controller. In a cable with two sources the fuse sits by the one that can burn it.",
		Values: []weave.Value{
			weave.Show("charger", charger, "A", 3),
			weave.Show("one_way", f.OneWay, "ft", 3),
			weave.Say("size", f.Conductor.Conductor.Size),
			weave.Show("bank", f.Current, "A", 3),
		},
	}, err
}

// solveAlways shorts the end of a long thin wire.
func solveAlways(*weave.Inputs) (weave.Answer, error) {
	fuse := 10 * units.Ampere
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(18), Insulation: wire.Insulation90},
		Load:         1 * units.Ampere,
		Device:       units.Some(fuse),
		Fault:        units.Some(houseBank()),
		OneWay:       100 * units.Foot,
	})
	return weave.Answer{
		Text: "Not the {{fuse}} one at the head of {{one_way}} of {{size}}. The loop of the wire has {{loop}}, and a dead short at its end draws {{short}}: " +
			"the fuse carries that for ever, and {{heat}} go into the wire. For the {{limit}} that this wire may have at most, the short is {{times}} times the " +
			"rating. A fuse opens within minutes at about twice its rating; this near to it, it may take hours or never open. A lower rating, a thicker or a shorter wire mends that.",
		Values: []weave.Value{
			weave.Show("fuse", fuse, "A", 3),
			weave.Show("one_way", p.AtEnd.OneWay, "ft", 3),
			weave.Say("size", p.AtEnd.Conductor.Conductor.Size),
			weave.Show("loop", p.AtEnd.Loop, "Ω", 3),
			weave.Show("short", p.AtEnd.Current, "A", 3),
			weave.Show("heat", p.AtEnd.Current.Heating(p.AtEnd.Loop), "W", 3),
			weave.Show("limit", p.Limit, "A", 3),
			weave.Show("times", units.RatioOf(p.AtEnd.Current, p.Limit), "1", 2),
		},
	}, err
}

// solveThick lets the short of a large bank into a battery cable.
func solveThick(*weave.Inputs) (weave.Answer, error) {
	source, err := wire.FaultBank{Voltage: 13.3 * units.Volt, Resistance: 4 * units.Milliohm, Parallel: 6}.Source()
	if err != nil {
		return weave.Answer{}, err
	}
	f, err := wire.ShortCircuit(source, wire.Conductor{}, 0)
	if err != nil {
		return weave.Answer{}, err
	}
	w, err := wire.Adiabatic(wire.ShortTime{Size: wire.AWG(4), Core: wire.CorePVC90, Current: f.Current})
	return weave.Answer{
		Text: "Six lithium batteries of 4 mΩ side by side give {{short}} at their posts. {{size}} with thermoplastic insulation of 90 °C bears that for {{longest}}.",
		Values: []weave.Value{
			weave.Show("short", f.Current, "kA", 3),
			weave.Say("size", w.ShortTime.Size),
			weave.Show("longest", w.Longest.Or(0), "s", 2),
		},
	}, err
}
