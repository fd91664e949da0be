package wire

import "example.com/drawbar/units"

// LengthBasis says what a stated length counts. The zero value is
// [LengthUnsaid].
type LengthBasis uint8

const (
	// LengthUnsaid is a length of which it is not said; it is worked out as one
	// way, as the trade states a run, and asked for.
	LengthUnsaid LengthBasis = iota
	// LengthOneWay is from the source to the load.
	LengthOneWay
	// LengthThereAndBack counts both conductors.
	LengthThereAndBack
)

var lengthWords = []string{"not said", "one way", "there and back"}

// String returns "not said", "one way" or "there and back".
func (b LengthBasis) String() string { return wordOf(lengthWords, uint8(b)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (b LengthBasis) MarshalText() ([]byte, error) {
	return wordText("wire.LengthBasis.MarshalText", lengthWords, uint8(b))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves b alone.
func (b *LengthBasis) UnmarshalText(text []byte) error {
	i, err := readWord("what a length counts", lengthWords, text)
	if err == nil {
		*b = LengthBasis(i)
	}
	return err
}

// claimIn returns a claim as a quantity, not given if it is not stated.
func claimIn[Q units.Quantity](op, field string, p units.Printed, b units.Bounds[Q]) (units.Opt[Q], error) {
	if !p.IsSet() {
		return units.None[Q](), nil
	}
	v, err := units.As[Q](p)
	if err == nil {
		err = b.Check(op, field, v)
	}
	if err != nil {
		return units.None[Q](), err
	}
	return units.Some(v), nil
}

// read checks the quote and fills in what is worked with.
func (c *Checked) read(op string) error {
	if err := c.Quote.check(op); err != nil {
		return err
	}
	if err := c.readRun(op); err != nil {
		return err
	}
	return c.readCircuit(op)
}

// readRun fills in the length and the current.
func (c *Checked) readRun(op string) error {
	q := &c.Quote
	length, err := claimIn(op, "Length", q.Length, units.Above[units.Length](0))
	if err != nil {
		return err
	}
	if c.OneWay = length.Or(0); q.LengthIs == LengthThereAndBack {
		c.OneWay /= 2
	}
	current, err := claimIn(op, "Current", q.Current, units.Above[units.Current](0))
	if err != nil {
		return err
	}
	c.Circuit.Load = q.Load.Or(current.Or(0))
	return nil
}

// readCircuit fills in what Protect is asked.
func (c *Checked) readCircuit(op string) (err error) {
	q, at := &c.Quote, &c.Circuit
	amperes := units.Above[units.Current](0)
	at.Installation = Installation{Rules: q.Rules, Size: q.Size, Metal: q.Metal.Or(Copper), Insulation: q.Insulation, Terminals: q.Terminals,
		Ambient: q.Ambient, Conductors: q.Conductors, Parallel: q.Parallel, EngineSpace: q.EngineSpace, System: q.Voltage}
	at.Installation = q.judgeable(at.Installation)
	if q.Insulation == 0 {
		at.Installation.Insulation = Insulation105
	}
	at.Continuous, at.Receptacles, at.Kind = q.Continuous, q.Receptacles, q.Kind
	at.Enclosed, at.OnBatteryPost, at.Thermoset = q.Enclosed, q.OnBatteryPost, q.Thermoset
	if at.Device, err = claimIn(op, "Device", q.Device, amperes); err != nil {
		return err
	}
	if at.Interrupting, err = claimIn(op, "Interrupting", q.Interrupting, amperes); err != nil {
		return err
	}
	if at.FromSource, err = claimIn(op, "FromSource", q.FromSource, units.AtLeast[units.Length](0)); err != nil {
		return err
	}
	if from, ok := at.FromSource.Get(); ok && c.OneWay > 0 {
		if err := units.AtLeast[units.Length](0).AtMost(c.OneWay).Check(op, "FromSource", from); err != nil {
			return err
		}
	}
	if c.OneWay > 0 && q.Fault.IsSet() && !q.Chassis.IsSet() {
		at.Fault, at.OneWay, at.Opens = q.Fault, c.OneWay, q.Opens
	}
	if source, ok := q.Fault.Get(); ok && q.Rules == Boat33CFR && !at.Installation.isHigh() {
		if err := units.Above[units.Voltage](0).Below(boatVoltage).Check(op, "Fault.Voltage", source.Voltage); err != nil {
			return err
		}
	}
	probe := *at
	if probe.Load == 0 {
		probe.Load = units.Ampere // any that passes: that none is known is no mistake
	}
	return probe.check(op)
}

// check reports the first field out of range that nothing later checks.
func (q Quote) check(op string) error {
	if err := q.Rules.check(op); err != nil {
		return err
	}
	if q.LengthIs > LengthThereAndBack {
		return &units.RangeError{Op: op, Field: "LengthIs", Value: q.LengthIs, Allowed: wordList(lengthWords)}
	}
	if q.DeviceElsewhere && q.Device.IsSet() {
		return &units.RangeError{Op: op, Field: "DeviceElsewhere", Value: q.DeviceElsewhere, Allowed: allowedText("false with a Device")}
	}
	if load, ok := q.Load.Get(); ok {
		if err := units.Above[units.Current](0).Check(op, "Load", load); err != nil {
			return err
		}
	}
	if v, ok := q.Voltage.Get(); ok {
		if err := (Installation{Rules: q.Rules}).voltages().Check(op, "Voltage", v); err != nil {
			return err
		}
	}
	if pf, ok := q.PowerFactor.Get(); ok {
		if err := units.Above[units.Ratio](0).AtMost(1).Check(op, "PowerFactor", pf); err != nil {
			return err
		}
	}
	if allowed, ok := q.Allowed.Get(); ok {
		if err := allowedDrops().Check(op, "Allowed", allowed); err != nil {
			return err
		}
	}
	if err := q.checkPath(op); err != nil {
		return err
	}
	return q.checkConductor(op)
}

// checkPath reports the first field out of range of what the current passes
// beside the conductor.
func (q Quote) checkPath(op string) error {
	if opens, ok := q.Opens.Get(); ok {
		if err := shortTimes.Check(op, "Opens", opens); err != nil {
			return err
		}
	}
	for _, part := range [...]struct {
		field string
		given units.Opt[units.Resistance]
	}{{"Chassis", q.Chassis}, {"Contacts", q.Contacts}} {
		r, ok := part.given.Get()
		if !ok {
			continue
		}
		if q.Alternating {
			return &units.RangeError{Op: op, Field: part.field, Value: r, Allowed: allowedText("not given with Alternating")}
		}
		if err := units.AtLeast[units.Resistance](0).Check(op, part.field, r); err != nil {
			return err
		}
	}
	if q.Chassis.IsSet() && q.LengthIs == LengthThereAndBack {
		return &units.RangeError{Op: op, Field: "LengthIs", Value: q.LengthIs, Allowed: allowedText("one way with a Chassis, which is the way back")}
	}
	return nil
}

// checkConductor reports the first field out of range of the conductor and of
// claims about it.
func (q Quote) checkConductor(op string) error {
	metal := q.Metal.Or(Copper)
	if metal > CopperClad {
		return &units.RangeError{Op: op, Field: "Metal", Value: metal, Allowed: allowedText("copper, aluminium or copper-clad aluminium")}
	}
	if q.Parallel < 0 || q.Parallel > mostParallel {
		return &units.RangeError{Op: op, Field: "Parallel", Value: q.Parallel, Allowed: parallelRange}
	}
	// What concerns the conductor but not its size is as for one that every table has.
	x := Installation{Rules: q.Rules, Size: AWG(10), Insulation: q.Insulation, Terminals: q.Terminals, Ambient: q.Ambient,
		Conductors: q.Conductors, EngineSpace: q.EngineSpace, System: q.Voltage}
	x = q.judgeable(x)
	if x.Insulation == 0 {
		x.Insulation = Insulation105
	}
	if _, err := ampacity(op, x); err != nil {
		return err
	}
	if _, err := claimIn(op, "Ampacity", q.Ampacity, units.Above[units.Current](0)); err != nil {
		return err
	}
	if _, err := claimIn(op, "Drop", q.Drop, units.AtLeast[units.Voltage](0)); err != nil {
		return err
	}
	if _, err := claimIn(op, "Percent", q.Percent, units.AtLeast[units.Ratio](0)); err != nil {
		return err
	}
	if q.Size.IsValid() {
		_, err := resistance(op, Conductor{Size: q.Size, Metal: metal, Basis: q.Basis, Temperature: q.Temperature})
		return err
	}
	return nil
}
