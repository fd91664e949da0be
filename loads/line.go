package loads

import "example.com/drawbar/units"

// A Line is what one [Load] comes to: a line of the ledger. Powers are those
// at the nominal voltage of the bus. On a direct-current bus the power factor
// is 1, and volt-amperes are the same number as watts.
type Line struct {
	Name        string        // of the load
	Bus         Bus           // it is connected to
	Kind        Kind          // how it answers to another voltage
	MustNotStop bool          // as marked
	Rating      Rating        // as given
	Count       int           // how many
	Duty        units.Ratio   // as used
	Hours       units.Elapsed // in use a day; the sum of its windows if it has any
	Schedule    string        // its windows, "18:30 to 05:30, 12:00 to 13:00"; empty if it has none
	StandbyEach units.Power   // one, while it does not run

	RatedVoltage       units.Voltage       // of the nameplate, as used
	PowerFactor        units.Ratio         // as used
	PowerFactorAssumed bool                // 1 is used since none was given
	Rated              units.Power         // one, running, at RatedVoltage
	RatedApparent      units.ApparentPower // one, running, at RatedVoltage
	Each               units.Power         // one, running, on its bus

	Power    units.Power         // all Count, running
	Apparent units.ApparentPower // all Count, running
	Current  units.Current       // all Count, running, at the voltage of the bus
	Running  units.Elapsed       // a day: Hours times Duty

	RunEnergy     units.Energy // a day, while running
	StandbyEnergy units.Energy // a day, while not
	Energy        units.Energy // a day, both
	// Charge is Energy in ampere-hours a day at the voltage of the bus. It is
	// not given on an alternating-current bus: ampere-hours at 120 V are not
	// what leaves a battery.
	Charge  units.Opt[units.Charge]
	Average units.Power // Energy spread over 24 hours
}

// Take returns what one load takes on its bus:
//
//	P = n · P_each
//	E = P · t · d + n · P_standby · (24 h − t · d)
//	Q = E/V   I = P/V   S = P/PF
//
// with t the hours in use and d the duty. Where the nameplate's voltage is not
// that of the bus, P_each follows from the kind of the load.
//
// Everything wrong with b and l is reported at once: each as a
// [*units.RangeError], several joined. So is a result that no float64 holds.
// The Line is then the zero value.
func Take(b Bus, l Load) (Line, error) {
	const op = "loads.Take"
	f := b.check(op)
	f = append(f, l.check(op, b.Kind)...)
	if l.Bus != b.Name {
		f.add(&units.RangeError{Op: op, Field: "Bus", Value: l.Bus, Allowed: wording(b.Name)})
	}
	if err := f.join(); err != nil {
		return Line{}, err
	}
	return take(op, b, l)
}

// take is Take for input that is checked.
func take(op string, b Bus, l Load) (Line, error) {
	v := Line{
		Name: l.Name, Bus: b, Kind: l.Kind, MustNotStop: l.MustNotStop, Rating: l.Rating, Count: l.Count,
		Duty: l.Duty.Or(1), Hours: l.hours(), Schedule: l.schedule(), StandbyEach: l.Standby,
		RatedVoltage: l.Rating.Voltage.Or(b.Voltage),
	}
	count := units.Ratio(l.Count)
	v.PowerFactor, v.PowerFactorAssumed = l.Rating.powerFactor(l.Kind, b.Kind)
	v.Rated, v.RatedApparent = l.Rating.take(v.RatedVoltage, v.PowerFactor)
	v.Each = units.Scale(v.Rated, l.Kind.factor(v.RatedVoltage, b.Voltage))
	v.Power = units.Scale(v.Each, count)
	v.Apparent = v.Power.Apparent(v.PowerFactor)
	v.Current = v.Apparent.At(b.Voltage)
	v.Running = units.Scale(v.Hours, v.Duty)
	v.RunEnergy = v.Power.For(v.Running)
	v.StandbyEnergy = units.Scale(v.StandbyEach, count).For(units.Minus(day, v.Running))
	v.Energy = v.RunEnergy + v.StandbyEnergy
	v.Average = v.Energy.In(day)
	charge := v.Energy.At(b.Voltage)
	if b.Kind == Direct {
		v.Charge = units.Some(charge)
	}
	return v, v.finite(op, charge)
}

// inUse returns how long a day v needs its bus.
func (v Line) inUse() units.Elapsed {
	if v.StandbyEach > 0 {
		return day
	}
	return v.Hours
}

// finite checks that the results which grow fastest are numbers.
func (v *Line) finite(op string, charge units.Charge) error {
	var f faults
	f.add(units.AtLeast[units.Energy](0).Check(op, "Energy", v.Energy))
	f.add(units.AtLeast[units.ApparentPower](0).Check(op, "RatedApparent", v.RatedApparent))
	f.add(units.AtLeast[units.ApparentPower](0).Check(op, "Apparent", v.Apparent))
	f.add(units.AtLeast[units.Current](0).Check(op, "Current", v.Current))
	f.add(units.AtLeast[units.Charge](0).Check(op, "Charge", charge))
	if len(f) > 0 {
		*v = Line{}
	}
	return f.join()
}

// A Draw is what a line takes while it runs, at a voltage that is not the
// nominal one of its bus.
type Draw struct {
	Line     Line                // as the ledger has it
	Voltage  units.Voltage       // as given
	Power    units.Power         // all Count
	Apparent units.ApparentPower // all Count
	Current  units.Current       // all Count
}

// At returns what v takes while it runs at the voltage u, which is > 0: on a
// weak pedestal, on a low battery. Resistive loads take less, constant-power
// loads and running motors take more current:
//
//	P = P_bus · (u/V_bus)²    resistive
//	P = P_bus · u/V_bus       constant current
//	P = P_bus                 constant power, motor
//
// with the power factor unchanged. Whether the load stands the voltage is not
// worked out; a finding names one that is far from its nameplate. A voltage
// out of range, a line that [Take] did not make, and a result that no float64
// holds are each a [*units.RangeError].
func (v Line) At(u units.Voltage) (Draw, error) {
	const op = "loads.Line.At"
	if err := units.Above[units.Voltage](0).Check(op, "u", u); err != nil {
		return Draw{}, err
	}
	d := Draw{Line: v, Voltage: u}
	d.Power = units.Scale(v.Power, v.Kind.factor(v.Bus.Voltage, u))
	d.Apparent = d.Power.Apparent(v.PowerFactor)
	d.Current = d.Apparent.At(u)
	if err := units.AtLeast[units.ApparentPower](0).Check(op, "Apparent", d.Apparent); err != nil {
		return Draw{}, err
	}
	if err := units.AtLeast[units.Current](0).Check(op, "Current", d.Current); err != nil {
		return Draw{}, err
	}
	return d, nil
}
