package wire

import "example.com/drawbar/units"

// A Circuit is a conductor, its load and the overcurrent device that is meant
// to protect it, as somebody states them. What was not stated stays not
// given; nothing is assumed in its place.
type Circuit struct {
	Installation Installation  // the conductor and the rules it is held against
	Load         units.Current // greatest current in use, > 0
	Continuous   bool          // for three hours or more
	// ForHours is the part of Load that runs for three hours or more, >= 0 and
	// not above Load; not given means all of it if Continuous, else none.
	ForHours units.Opt[units.Current] `json:",omitzero"`
	// Receptacles says that the circuit feeds more than one receptacle for
	// portable loads. NEC 240.4(B) then does not allow the next rating up.
	Receptacles bool
	// Kind is whether the device is a fuse or a breaker, which the NEC has
	// different ratings for; AnyDevice unless said otherwise.
	Kind DeviceKind `json:",omitzero"`
	// Device is the rating of the fuse or breaker, > 0. Not given means that
	// none was stated, which is a danger and not a default.
	Device units.Opt[units.Current]
	// Interrupting is the greatest fault that the device is rated to break,
	// > 0.
	Interrupting units.Opt[units.Current]
	// FromSource is how far along the conductor the device sits from the
	// source that it protects against, >= 0, and not above OneWay if Fault is
	// given.
	FromSource units.Opt[units.Length]
	// Enclosed says that the conductor is sheathed or enclosed all the way from
	// the source to the device, which 33 CFR 183.455(b) asks beyond 7 in.
	Enclosed bool `json:",omitzero"`
	// OnBatteryPost says that the conductor begins on a post of the battery,
	// for which 33 CFR 183.460 has a distance of its own.
	OnBatteryPost bool `json:",omitzero"`
	// Fault is the source of fault current; not given means that no fault is
	// worked out. OneWay is then needed. Under Boat33CFR its voltage is below 50
	// V, unless Installation.System is not.
	Fault units.Opt[FaultSource]
	// FaultWarm is the source as the short at the far end sees it, if what lies
	// before the run has more resistance warm than cold; not given means Fault,
	// which it needs. The short at the device is that of the cold one.
	FaultWarm units.Opt[FaultSource] `json:",omitzero"`
	// OneWay is the length of the run, for the fault at its far end; > 0 if
	// Fault is given.
	OneWay units.Length
	// Opens is how long the device takes to open on the short at the far end,
	// by its curve; > 0 and not above 5 s, beyond which the conductor does not
	// keep its heat and the check does not hold. It needs Fault. Shorts nearer
	// the source are larger: hold the I²t that the device lets through on them
	// against Heated.Bears.
	Opens units.Opt[units.Elapsed] `json:",omitzero"`
	// Thermoset says that the insulation is cross-linked or rubber, which bears
	// 250 °C for seconds; not said, it is taken to be thermoplastic, for 160 °C.
	Thermoset bool `json:",omitzero"`
}

// A LimitRule is the rule that set the greatest device.
type LimitRule uint8

const (
	// LimitAmpacity: the device must not be above the ampacity.
	LimitAmpacity LimitRule = iota
	// LimitNextRating: the next standard rating above the ampacity is allowed.
	LimitNextRating
	// LimitSmallConductor: a table limits the device for small conductors.
	LimitSmallConductor
	// LimitBoat: 150 % of the ampacity is allowed.
	LimitBoat
)

// A Protection is the result of [Protect].
type Protection struct {
	Circuit  Circuit          // as stated; its Installation as used
	Capacity CarryingCapacity // of the conductor
	Needed   units.Current    // the load, with 125 % of what of it is continuous, which is common practice beyond the NEC
	// Smallest is the smallest rating of the kind not below Needed; 0 if there is
	// none. For 18 and 16 AWG it may be the limit of NEC 240.4(D), 7 or 10 A,
	// which the devices listed for them have.
	Smallest units.Current
	Limit    units.Current // the greatest device that the rule set allows
	Rule     LimitRule     // which rule set it
	// Below is the greatest rating not above the ampacity and not above Limit,
	// for who wants no device above the ampacity; 0 if there is none.
	Below    units.Current
	AtDevice Fault // a short at the device; zero if Fault was not given
	AtEnd    Fault // a short at the far end; zero if Fault was not given
	// Heated is what the short at the far end does to the conductor that began
	// as hot as its insulation bears; zero if Fault was not given, or no factor
	// is known for the metal and the insulation.
	Heated Withstand
}

// continuousFactor is what a device must have for a load of three hours or
// more: NEC 210.20(A) and 215.3, from memory.
const continuousFactor units.Ratio = 1.25

// boatFactor is what 33 CFR 183.455(c)(1) allows under 50 V, and where (c)(2)
// ends the next rating up from 50 V on.
const boatFactor units.Ratio = 1.5

// nextUpEnds is where 240.4(B) ends.
const nextUpEnds = 800 * units.Ampere

// Protect holds a circuit against its rule set: what device the load needs,
// what device the conductor allows, and whether the device stated is between
// them and can break the fault. What is wrong or missing is in
// [Protection.Findings].
//
// A device at or below its limit protects the conductor from overload; it
// does not follow that it opens on every fault, and Findings says where a
// short at the far end is too weak for it.
//
// Errors are as for [Ampacity], [ShortCircuit] and [Adiabatic]; the Protection is
// then the zero value.
func Protect(c Circuit) (Protection, error) {
	const op = "wire.Protect"
	if err := c.check(op); err != nil {
		return Protection{}, err
	}
	return protect(op, c)
}

// protect works out what Protect returns, for a circuit that is checked. A
// load of 0 is one that nobody stated: it needs nothing, and no rating is the
// smallest for it.
func protect(op string, c Circuit) (Protection, error) {
	capacity, err := ampacity(op, c.Installation)
	if err != nil {
		return Protection{}, err
	}
	c.Installation = capacity.Installation
	p := Protection{Circuit: c, Capacity: capacity, Needed: c.Load}
	if hours := c.continuous(); hours > 0 {
		p.Needed = units.Minus(c.Load, hours) + units.Scale(hours, continuousFactor)
	}
	if c.Load != 0 {
		if err := units.Above[units.Current](0).Check(op, "Needed", p.Needed); err != nil {
			return Protection{}, err
		}
	}
	p.Limit, p.Rule = capacity.deviceLimit(c.Kind, c.Receptacles)
	p.Smallest, p.Below = p.smallest(), p.ratingWithin(min(capacity.Current, p.Limit))
	if !c.Fault.IsSet() {
		return p, nil
	}
	if err := p.faults(op); err != nil {
		return Protection{}, err
	}
	return p, nil
}

// faults works out the shorts at both ends and what the farther one does to
// the conductor.
func (p *Protection) faults(op string) (err error) {
	c := p.Circuit
	// What a device must break is the larger fault of a cold conductor; what
	// must still open it is the smaller one of a warm conductor.
	cold := c.Fault.Or(FaultSource{})
	if p.AtEnd, err = p.faultAt(op, c.FaultWarm.Or(cold), WarmCopper(), c.OneWay); err != nil {
		return err
	}
	if cold.Chassis.IsSet() {
		// How much of the chassis is on the way to the device is not known; none
		// makes the larger fault, which it must break.
		cold.Chassis = units.Some[units.Resistance](0)
	}
	if p.AtDevice, err = p.faultAt(op, cold, reference, c.FromSource.Or(0)); err != nil {
		return err
	}
	x, ok := c.shortTime(units.Scale(p.AtEnd.Current, 1/units.Ratio(p.Capacity.Counted)))
	if !ok {
		return nil
	}
	p.Heated, err = adiabatic(op, x)
	return err
}

// wires returns the conductor of one pole at t. Those in parallel that count
// together are one of a fraction of the resistance.
func (p Protection) wires(op string, t units.Temperature) (Conductor, error) {
	x := p.Circuit.Installation
	c := Conductor{Size: x.Size, Metal: x.Metal, Temperature: t}
	if p.Capacity.Counted <= 1 {
		return c, nil
	}
	r, err := resistance(op, c)
	c.Stated = units.Some(units.Scale(r.At, 1/units.Ratio(p.Capacity.Counted)))
	return c, err
}

// faultAt returns the short of s so far along the run, at the temperature t of
// the conductor.
func (p Protection) faultAt(op string, s FaultSource, t units.Temperature, oneWay units.Length) (Fault, error) {
	wires, err := p.wires(op, t)
	if err != nil {
		return Fault{}, err
	}
	return shortCircuit(op, s, wires, oneWay)
}

// shortTime returns the question of what i does to one conductor, and whether
// there is a factor for it.
func (c Circuit) shortTime(i units.Current) (x ShortTime, ok bool) {
	x = ShortTime{Size: c.Installation.Size, Metal: c.Installation.Metal, Current: i, Time: c.Opens,
		Initial: c.Installation.Insulation.Temperature(), Final: thermoplasticEnd}
	if c.Thermoset {
		x.Final = thermosetEnd
	}
	return x, x.Metal != CopperClad && x.Initial.Compare(x.Final) < 0
}

// continuous returns the part of the load that runs for three hours or more.
func (c Circuit) continuous() units.Current {
	if c.Continuous {
		return c.ForHours.Or(c.Load)
	}
	return c.ForHours.Or(0)
}

// deviceLimit returns the greatest device and the rule that set it.
func (c CarryingCapacity) deviceLimit(kind DeviceKind, receptacles bool) (units.Current, LimitRule) {
	x := c.Installation
	limit, rule := c.Current, LimitAmpacity
	next := nextRating(x.ratings(), kind, c.Current)
	switch {
	case x.Rules == RVLowVoltage && c.Governs == ByDeviceTable:
		return c.Current, LimitSmallConductor
	case x.Rules == RVLowVoltage:
		return c.Current, LimitAmpacity
	case x.Rules == Boat33CFR && !x.isHigh():
		return units.Scale(c.Current, boatFactor), LimitBoat
	case x.Rules == Boat33CFR:
		if units.Exceeds(next, limit) && !units.Exceeds(next, units.Scale(limit, boatFactor)) {
			limit, rule = next, LimitNextRating
		}
		return limit, rule
	}
	if !receptacles && units.Exceeds(next, limit) && !units.Exceeds(next, nextUpEnds) {
		limit, rule = next, LimitNextRating
	}
	if small, ok := limitOf(necSmallLimits[:], x.Size, x.Metal); ok && !units.Exceeds(small, limit) {
		limit, rule = small, LimitSmallConductor
	}
	return limit, rule
}

func (c Circuit) check(op string) error {
	positive := units.Above[units.Current](0)
	if err := positive.Check(op, "Load", c.Load); err != nil {
		return err
	}
	if hours, ok := c.ForHours.Get(); ok {
		if err := units.AtLeast[units.Current](0).AtMost(c.Load).Check(op, "ForHours", hours); err != nil {
			return err
		}
	}
	if err := c.Kind.check(op, "Kind"); err != nil {
		return err
	}
	if device, ok := c.Device.Get(); ok {
		if err := positive.Check(op, "Device", device); err != nil {
			return err
		}
	}
	if breaks, ok := c.Interrupting.Get(); ok {
		if err := positive.Check(op, "Interrupting", breaks); err != nil {
			return err
		}
	}
	if from, ok := c.FromSource.Get(); ok {
		if err := units.AtLeast[units.Length](0).Check(op, "FromSource", from); err != nil {
			return err
		}
	}
	if opens, ok := c.Opens.Get(); ok {
		if err := shortTimes.Check(op, "Opens", opens); err != nil {
			return err
		}
	}
	return c.checkFault(op)
}

// checkFault reports the first field out of range that a fault needs.
func (c Circuit) checkFault(op string) error {
	source, ok := c.Fault.Get()
	if !ok {
		if c.Opens.IsSet() {
			return &units.RangeError{Op: op, Field: "Opens", Value: c.Opens.Or(0), Allowed: allowedText("not given without Fault")}
		}
		if warm, ok := c.FaultWarm.Get(); ok {
			return &units.RangeError{Op: op, Field: "FaultWarm", Value: warm.Resistance, Allowed: allowedText("not given without Fault")}
		}
		return nil
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", c.OneWay); err != nil {
		return err
	}
	if err := units.AtLeast[units.Length](0).AtMost(c.OneWay).Check(op, "FromSource", c.FromSource.Or(0)); err != nil {
		return err
	}
	if c.Installation.Rules == Boat33CFR && !c.Installation.isHigh() {
		volts := max(source.Voltage, c.FaultWarm.Or(source).Voltage)
		return units.Above[units.Voltage](0).Below(boatVoltage).Check(op, "Voltage", volts)
	}
	return nil
}
