package loads

import (
	"slices"
	"strings"

	"example.com/drawbar/units"
)

// A Ledger is the result of [Audit].
type Ledger struct {
	Loads []Load  // as given
	Lines []Line  // Lines[i] is what Loads[i] comes to
	Buses []Total // one a bus, in the order given
}

// A Total is what all loads of a bus come to.
type Total struct {
	Bus   Bus // as given
	Lines int // how many of the ledger are on this bus

	Energy        units.Energy            // a day, standby included
	StandbyEnergy units.Energy            // a day, of loads that do not run
	Charge        units.Opt[units.Charge] // a day at the voltage of the bus; not given for alternating current
	Average       units.Power             // Energy spread over 24 hours

	// Everything connected running at once: what the bus sees when nobody
	// looks what else is on. Duty and hours play no part. Volt-amperes are
	// added as plain numbers, which is never less than their true sum.
	Connected         units.Power         // all loads running
	ConnectedApparent units.ApparentPower // all loads running
	ConnectedCurrent  units.Current       // all loads running, at the voltage of the bus

	// Longest is how long a day that load is in use which is in use the
	// longest, whether its thermostat lets it run or not; 24 h for one that
	// takes standby power. What feeds the bus is on at least that long.
	Longest     units.Elapsed
	MustNotStop Share // of the loads so marked
}

// A Share is the part of a [Total] that some of its loads have.
type Share struct {
	Lines     int          // how many
	Energy    units.Energy // a day
	Average   units.Power  // Energy spread over 24 hours
	Connected units.Power  // all of them running at once
}

// Audit returns what the loads come to, line by line as [Take] has it and in
// total for each bus. The slices of the result are its own.
//
// Nothing is worked out until all is right. Every mistake is reported, joined:
// each is an [*EntryError], which says what bus or load it is about and wraps
// a [*units.RangeError]. Names of buses must differ, and a load must name one
// of them. The Ledger is then the zero value.
func Audit(buses []Bus, list []Load) (Ledger, error) {
	const op = "loads.Audit"
	if err := check(op, buses, list); err != nil {
		return Ledger{}, err
	}
	l := Ledger{Loads: slices.Clone(list), Lines: make([]Line, len(list)), Buses: make([]Total, len(buses))}
	for i, b := range buses {
		l.Buses[i].Bus = b
	}
	var f faults
	for i, load := range list {
		l.Loads[i].Windows = slices.Clone(load.Windows)
		at := indexOf(buses, load.Bus)
		line, err := take(op, buses[at], load)
		if err != nil {
			f.addEntry("load", i, load.Name, faults{err})
			continue
		}
		l.Lines[i] = line
		l.Buses[at].add(line)
	}
	for i := range l.Buses {
		f.addEntry("bus", i, buses[i].Name, l.Buses[i].finish(op))
	}
	if err := f.join(); err != nil {
		return Ledger{}, err
	}
	return l, nil
}

// check returns all that is wrong with the input of [Audit].
func check(op string, buses []Bus, list []Load) error {
	var f faults
	for i, b := range buses {
		wrong := b.check(op)
		if b.Name != "" && indexOf(buses, b.Name) < i {
			wrong.add(&units.RangeError{Op: op, Field: "Bus.Name", Value: b.Name, Allowed: wording("a name that no other bus has")})
		}
		f.addEntry("bus", i, b.Name, wrong)
	}
	for i, l := range list {
		var bus Bus
		var wrong faults
		if at := indexOf(buses, l.Bus); at >= 0 {
			bus = buses[at]
		} else {
			wrong.add(&units.RangeError{Op: op, Field: "Bus", Value: l.Bus, Allowed: names(buses)})
		}
		f.addEntry("load", i, l.Name, append(wrong, l.check(op, bus.Kind)...))
	}
	return f.join()
}

func indexOf(buses []Bus, name string) int {
	return slices.IndexFunc(buses, func(b Bus) bool { return b.Name == name })
}

// names lists the buses that a load may name.
func names(buses []Bus) wording {
	if len(buses) == 0 {
		return "a bus, of which there is none"
	}
	list := make([]string, len(buses))
	for i, b := range buses {
		list[i] = b.Name
	}
	return wording("one of " + strings.Join(list, ", "))
}

// add counts a line of the bus.
func (t *Total) add(v Line) {
	t.Lines++
	t.Longest = max(t.Longest, v.inUse())
	t.Energy += v.Energy
	t.StandbyEnergy += v.StandbyEnergy
	t.Connected += v.Power
	t.ConnectedApparent += v.Apparent
	if v.MustNotStop {
		t.MustNotStop.Lines++
		t.MustNotStop.Energy += v.Energy
		t.MustNotStop.Connected += v.Power
	}
}

// finish works out what follows from the sums, and returns those that no
// float64 holds.
func (t *Total) finish(op string) faults {
	t.Average = t.Energy.In(day)
	t.MustNotStop.Average = t.MustNotStop.Energy.In(day)
	t.ConnectedCurrent = t.ConnectedApparent.At(t.Bus.Voltage)
	charge := t.Energy.At(t.Bus.Voltage)
	if t.Bus.Kind == Direct {
		t.Charge = units.Some(charge)
	}
	var f faults
	f.add(units.AtLeast[units.Energy](0).Check(op, "Energy", t.Energy))
	f.add(units.AtLeast[units.Charge](0).Check(op, "Charge", charge))
	f.add(units.AtLeast[units.ApparentPower](0).Check(op, "ConnectedApparent", t.ConnectedApparent))
	f.add(units.AtLeast[units.Current](0).Check(op, "ConnectedCurrent", t.ConnectedCurrent))
	return f
}

// On returns the total of the bus called name, and whether there is one.
func (l Ledger) On(name string) (Total, bool) {
	i := slices.IndexFunc(l.Buses, func(t Total) bool { return t.Bus.Name == name })
	if i < 0 {
		return Total{}, false
	}
	return l.Buses[i], true
}
