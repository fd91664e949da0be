package wire

import (
	"errors"

	"example.com/drawbar/units"
)

// A Quote is a circuit as an installer states it, and what the reader knows of
// it beside that. Every field but Rules may be left out: what is not stated is
// asked for by [Checked.Questions] and never assumed to be right.
//
// A number that the installer states is kept as printed, since its digits say
// how closely it is meant.
type Quote struct {
	// Rules is the rule set to hold it against; needed.
	Rules RuleSet
	// Size of one conductor; the zero Size is not stated.
	Size Size `json:",omitzero"`
	// Metal not stated is worked out as copper, the kindest: what is wrong even
	// then is wrong, and what would agree is not stated.
	Metal units.Opt[Metal] `json:",omitzero"`
	// Insulation not stated is worked out as 105 °C, the warmest that wire of
	// vehicles usually has, in the same way. Where a table limits the device by
	// the size alone it is not needed.
	Insulation  Insulation        `json:",omitzero"`
	Terminals   Insulation        `json:",omitzero"` // as in [Installation]
	Ambient     units.Temperature `json:",omitzero"` // as in [Installation]
	Conductors  int               `json:",omitzero"` // as in [Installation]
	Parallel    int               `json:",omitzero"` // as in [Installation]
	EngineSpace bool              `json:",omitzero"` // as in [Installation]
	Basis       units.Opt[Basis]  `json:",omitzero"` // as in [Conductor]
	Temperature units.Temperature `json:",omitzero"` // of the metal, as in [Conductor]
	// Length is that of the run as stated, such as "18 ft"; > 0.
	Length units.Printed `json:",omitzero"`
	// LengthIs says what Length counts.
	LengthIs LengthBasis `json:",omitzero"`
	// Voltage at the source, nominal, of which a drop in per cent is; > 0.
	Voltage units.Opt[units.Voltage] `json:",omitzero"`
	// Alternating says that the circuit is of single-phase alternating current.
	Alternating bool `json:",omitzero"`
	// PowerFactor is that of an alternating-current load, above 0, at most 1. Not
	// given, its drop is not judged.
	PowerFactor units.Opt[units.Ratio] `json:",omitzero"`
	// Load is what the load takes, as the reader works it out; > 0. It is used in
	// place of Current, which is then held against it.
	Load        units.Opt[units.Current] `json:",omitzero"`
	Continuous  bool                     `json:",omitzero"` // as in [Circuit]
	Receptacles bool                     `json:",omitzero"` // as in [Circuit]
	Kind        DeviceKind               `json:",omitzero"` // as in [Circuit]
	// Allowed is the drop that the reader allows, above 0 and below 1; not given
	// means that Size is held against heat alone.
	Allowed units.Opt[units.Ratio] `json:",omitzero"`
	// Fault is the source of fault current, as in [Circuit].
	Fault         units.Opt[FaultSource]   `json:",omitzero"`
	Enclosed      bool                     `json:",omitzero"` // as in [Circuit]
	OnBatteryPost bool                     `json:",omitzero"` // as in [Circuit]
	Opens         units.Opt[units.Elapsed] `json:",omitzero"` // as in [Circuit]; not used without Fault and Length
	Thermoset     bool                     `json:",omitzero"` // as in [Circuit]
	// Chassis is as in [Run]. It needs direct current and a Length of one
	// conductor; the short at the far end is then not worked out.
	Chassis units.Opt[units.Resistance] `json:",omitzero"`
	// Contacts is as in [Run], for direct current.
	Contacts units.Opt[units.Resistance] `json:",omitzero"`
	// DeviceElsewhere says that this is a line about the conductor alone: its
	// device is on another line and is not missed here.
	DeviceElsewhere bool `json:",omitzero"`

	// What the installer claims, each in any unit of its kind.
	Current      units.Printed `json:",omitzero"` // that the load takes, > 0
	Drop         units.Printed `json:",omitzero"` // in volts, >= 0
	Percent      units.Printed `json:",omitzero"` // drop in per cent of Voltage, >= 0
	Ampacity     units.Printed `json:",omitzero"` // of the conductor, > 0
	Device       units.Printed `json:",omitzero"` // rating of the fuse or breaker, > 0
	Interrupting units.Printed `json:",omitzero"` // rating of the device, > 0
	FromSource   units.Printed `json:",omitzero"` // from the source to the device, >= 0 and within the run; "0 in" at the battery
}

// A Checked is the result of [Check]: what was worked out from a quote. What
// became of its claims is in [Checked.Lines] and [Checked.Verdict].
type Checked struct {
	Quote Quote // as stated
	// Circuit is what was asked of [Protect], with copper and 105 °C where nothing
	// was stated, and without what the rule set has no factor for. Its Load is 0 if no current is known, and its Fault not given
	// if no length is.
	Circuit Circuit
	OneWay  units.Length  // length of the run; 0 if not stated
	Voltage units.Voltage // drop of the run; 0 if an input is missing
	// Drop is how it came about in direct current; zero if the run is not of that,
	// or an input is missing, the source voltage among them.
	Drop Drop
	// AlternatingDrop is the same for alternating current.
	AlternatingDrop AlternatingDrop
	// Protection is zero if there is no size. If the rule set does not judge the
	// conductor, it has the shorts alone, which need no table, and Limit is 0.
	Protection Protection
	// AtDevice is the short that the device has to break: at its place, or at the
	// source, which is more, if no length is stated. Zero if Fault is not given.
	AtDevice Fault
	// Needed is the smallest gauge that carries the load, or 125 % of one that runs
	// for hours, with a device that the rule set allows, and keeps Allowed if that
	// and the run are known; the zero Size if no current is known, or none is
	// enough.
	Needed Size
}

// Check holds a circuit as an installer states it against what [VoltageDrop] or
// [ACDrop], [Ampacity] and [Protect] make of it. The sense of it is in the
// methods of the result: a verdict on each claim with the rule for it, what
// was found beside, and what to ask the installer.
//
// A claim in numbers agrees within half of its last stated digit or 5 % (common
// practice), whichever is wider; an error to the safe side is "agree,
// conservative"; a danger that was found makes the claim it belongs to
// "unsafe". A device is held against the load below and the limit of the
// conductor above, a size against the smallest that passes, an interrupting
// rating against the fault: there the digits give no leeway. An ampacity above
// that of the table agrees within the digits alone.
//
// A service of two legs is left out: see [LegDrop]. Workmanship, and parts that
// are not named, are not in it.
//
// A claim in a unit of another kind is a [*units.ParseError]; a field outside
// the range that [Quote] and the types it refers to state is a
// [*units.RangeError]. The Checked is then the zero value. A conductor that the
// rule set has no row for is not an error but not judged; nor is a warmer place
// or a number of conductors that it has no factor for, with which what would
// agree is not stated.
func Check(q Quote) (Checked, error) {
	const op = "wire.Check"
	c := Checked{Quote: q}
	if err := c.read(op); err != nil {
		return Checked{}, err
	}
	for _, step := range [...]func(*Checked, string) error{(*Checked).workOutDrop, (*Checked).workOutProtection, (*Checked).workOutSize} {
		if err := step(&c, op); err != nil {
			return Checked{}, err
		}
	}
	return c, nil
}

// conductor returns one conductor of the run.
func (c Checked) conductor(s Size) Conductor {
	q := c.Quote
	return Conductor{Size: s, Metal: q.Metal.Or(Copper), Basis: q.Basis, Temperature: q.Temperature}
}

// run returns the direct-current run with conductors of a size.
func (c Checked) run(s Size) Run {
	return Run{Current: c.Circuit.Load, OneWay: c.OneWay, Source: c.Quote.Voltage.Or(0), Conductor: c.conductor(s),
		Allowed: c.Quote.Allowed, Parallel: c.Quote.Parallel, Chassis: c.Quote.Chassis, Contacts: c.Quote.Contacts}
}

// acRun returns the alternating-current run with conductors of a size.
func (c Checked) acRun(s Size) ACRun {
	line := ACConductor{Conductor: c.conductor(s)}
	// At power factor 1 a reactance turns the voltage and hardly lowers it: up to
	// 4/0 AWG a size that Table 9 does not have needs none.
	if _, x := table9(s, line.Conductor.Metal, line.Conduit); x == 0 && units.Compare(c.Quote.PowerFactor.Or(0), 1) == 0 && s.Compare(Aught(4)) <= 0 {
		line.Reactance = units.Some[units.ResistancePerLength](0)
	}
	return ACRun{Current: c.Circuit.Load, OneWay: c.OneWay, Source: c.Quote.Voltage.Or(0), Line: line,
		PowerFactor: c.Quote.PowerFactor, Allowed: c.Quote.Allowed, Parallel: c.Quote.Parallel}
}

// hasRun reports whether everything is known that a drop in volts needs.
func (c Checked) hasRun() bool {
	q := c.Quote
	return q.Size.IsValid() && c.OneWay > 0 && c.Circuit.Load > 0 && (!q.Alternating || q.Voltage.IsSet() && q.PowerFactor.IsSet())
}

// workOutDrop fills in the drop, as far as the inputs go.
func (c *Checked) workOutDrop(op string) (err error) {
	q := c.Quote
	switch {
	case !c.hasRun():
	case q.Alternating:
		c.AlternatingDrop, err = acDrop(op, c.acRun(q.Size))
		c.Voltage = c.AlternatingDrop.Voltage
		var limits *units.RangeError
		if errors.As(err, &limits) && limits.Field == "Reactance" { // Table 9 has no such row
			return nil
		}
	default:
		r := c.run(q.Size)
		p, err := resistance(op, r.Conductor)
		if err != nil {
			return err
		}
		c.Voltage = r.Current.Through(r.loop(p.At, r.wired(r.OneWay)))
		if !q.Voltage.IsSet() {
			return units.Above[units.Voltage](0).Check(op, "Voltage", c.Voltage)
		}
		c.Drop, err = r.drop(op, p)
		return err
	}
	return err
}

// fraction returns the drop as a part of Voltage; 0 if that is not known.
func (c Checked) fraction() units.Ratio {
	if c.Quote.Alternating {
		return c.AlternatingDrop.Fraction
	}
	return c.Drop.Fraction
}

// workOutProtection fills in what the rule set says of the conductor.
func (c *Checked) workOutProtection(op string) error {
	q := &c.Quote
	if source, ok := q.Fault.Get(); ok {
		at, err := shortCircuit(op, source, Conductor{}, 0)
		if err != nil {
			return err
		}
		c.AtDevice = at
	}
	if !q.Size.IsValid() {
		return nil
	}
	p, err := protect(op, c.Circuit)
	if isUntabulated(err) {
		return c.workOutShorts(op)
	}
	if err != nil {
		return err
	}
	if p.AtDevice.Current > 0 {
		c.AtDevice = p.AtDevice
	}
	c.Protection = p
	return nil
}

// isUntabulated reports whether a rule set has no row or column for a
// conductor.
func isUntabulated(err error) bool {
	var limits *units.RangeError
	return errors.As(err, &limits) && (limits.Field == "Size" || limits.Field == "Metal")
}

// isJudged reports whether the rule set has a row for the conductor.
func (c Checked) isJudged() bool { return c.Protection.Limit > 0 }

// workOutSize fills in the smallest size that passes.
func (c *Checked) workOutSize(op string) error {
	if c.Circuit.Load == 0 {
		return nil
	}
	for _, s := range gaugeStock {
		ok, err := c.passes(op, s)
		if err != nil {
			return err
		}
		if ok {
			c.Needed = s
			return nil
		}
	}
	return nil
}

// passes reports whether a size would do for heat, with some device, and for
// the drop that is allowed.
func (c Checked) passes(op string, s Size) (bool, error) {
	at := c.Circuit
	at.Installation.Size, at.Fault, at.FromSource, at.Interrupting = s, units.None[FaultSource](), units.None[units.Length](), units.None[units.Current]()
	p, err := protect(op, at)
	switch {
	case isUntabulated(err):
		return false, nil
	case err != nil:
		return false, err
	}
	fits, ok := p.fitting()
	if !ok {
		return false, nil
	}
	// The NEC has a rule of its own for what runs for hours, and a finding for it.
	if !c.Quote.Rules.isNEC() && units.Exceeds(p.Needed, p.Capacity.Current) {
		return false, nil
	}
	p.Circuit.Device = units.Some(fits)
	for _, f := range p.Findings() {
		if isDangerous(f) {
			return false, nil
		}
	}
	return c.keepsDrop(op, s)
}

// fitting returns a device that carries the load and protects the conductor, and
// whether there is one. For 18 and 16 AWG 240.4(D) names devices that are not
// among the standard ratings.
func (p Protection) fitting() (units.Current, bool) {
	switch {
	case p.Smallest > 0 && !units.Exceeds(p.Smallest, p.Limit):
		return p.Smallest, true
	case p.Rule == LimitSmallConductor && p.Circuit.Installation.Rules.isNEC() && !units.Exceeds(p.Needed, p.Limit):
		return p.Limit, true
	}
	return 0, false
}

// keepsDrop reports whether a size keeps the drop that is allowed, as far as
// that and the run are known.
func (c Checked) keepsDrop(op string, s Size) (bool, error) {
	q := c.Quote
	allowed, ok := q.Allowed.Get()
	if !ok || c.OneWay == 0 || !q.Voltage.IsSet() || q.Alternating && !q.PowerFactor.IsSet() {
		return true, nil
	}
	if q.Alternating {
		d, err := acDrop(op, c.acRun(s))
		if errors.Is(err, units.ErrRange) { // no such row of Table 9, or no voltage left
			return false, nil
		}
		return !units.Exceeds(d.Fraction, allowed), err
	}
	r := c.run(s)
	p, err := resistance(op, r.Conductor)
	if errors.Is(err, units.ErrRange) { // no such row of the basis
		return false, nil
	}
	d, err := r.drop(op, p)
	return !units.Exceeds(d.Fraction, allowed), err
}
