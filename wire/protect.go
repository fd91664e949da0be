package wire

import "example.com/drawbar/units"

// A Circuit is a conductor, its load and the overcurrent device that is meant
// to protect it, as somebody states them. What was not stated stays not
// given; nothing is assumed in its place.
type Circuit struct {
	Installation Installation  // the conductor and the rules it is held against
	Load         units.Current // greatest current in use, > 0
	Continuous   bool          // for three hours or more
	// Receptacles says that the circuit feeds more than one receptacle for
	// portable loads. NEC 240.4(B) then does not allow the next rating up.
	Receptacles bool
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
	// Fault is the source of fault current; not given means that no fault is
	// worked out. OneWay is then needed.
	Fault units.Opt[FaultSource]
	// OneWay is the length of the run, for the fault at its far end; > 0 if
	// Fault is given.
	OneWay units.Length
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
	Needed   units.Current    // 125 % of a continuous load, else the load
	Smallest units.Current    // the smallest rating not below Needed; 0 if there is none
	Limit    units.Current    // the greatest device that the rule set allows
	Rule     LimitRule        // which rule set it
	// Below is the greatest rating not above the ampacity and not above Limit,
	// for who wants no device above the ampacity; 0 if there is none.
	Below    units.Current
	AtDevice Fault // a short at the device; zero if Fault was not given
	AtEnd    Fault // a short at the far end; zero if Fault was not given
}

// continuousFactor is what a device must have for a load of three hours or
// more: NEC 210.20(A) and 215.3, from memory.
const continuousFactor units.Ratio = 1.25

// boatVoltage is where the rule for boats that is used here ends: 33 CFR
// 183.455(c)(1).
const boatVoltage = 50 * units.Volt

// boatFactor is what 33 CFR 183.455(c)(1) allows under 50 V.
const boatFactor units.Ratio = 1.5

// Protect holds a circuit against its rule set: what device the load needs,
// what device the conductor allows, and whether the device stated is between
// them and can break the fault. What is wrong or missing is in
// [Protection.Findings].
//
// A device at or below its limit protects the conductor from overload; it
// does not follow that it opens on every fault, and Findings says where a
// short at the far end is too weak for it.
//
// Errors are as for [Ampacity] and [ShortCircuit]; the Protection is then the
// zero value.
func Protect(c Circuit) (Protection, error) {
	const op = "wire.Protect"
	if err := c.check(op); err != nil {
		return Protection{}, err
	}
	capacity, err := ampacity(op, c.Installation)
	if err != nil {
		return Protection{}, err
	}
	c.Installation = capacity.Installation
	p := Protection{Circuit: c, Capacity: capacity, Needed: c.Load}
	if c.Continuous {
		p.Needed = units.Scale(c.Load, continuousFactor)
	}
	if err := units.Above[units.Current](0).Check(op, "Needed", p.Needed); err != nil {
		return Protection{}, err
	}
	rules := c.Installation.Rules
	p.Smallest = nextRating(rules, p.Needed)
	p.Limit, p.Rule = capacity.deviceLimit(c.Receptacles)
	p.Below = ratingBelow(rules, min(capacity.Current, p.Limit))
	source, hasFault := c.Fault.Get()
	if !hasFault {
		return p, nil
	}
	wires := Conductor{Size: c.Installation.Size}
	if p.AtEnd, err = shortCircuit(op, source, wires, c.OneWay); err != nil {
		return Protection{}, err
	}
	// What a device must break is the larger fault of a cold conductor; what
	// must still open it is the smaller one of a warm conductor.
	wires.Temperature = reference
	if p.AtDevice, err = shortCircuit(op, source, wires, c.FromSource.Or(0)); err != nil {
		return Protection{}, err
	}
	return p, nil
}

// deviceLimit returns the greatest device and the rule that set it.
func (c CarryingCapacity) deviceLimit(receptacles bool) (units.Current, LimitRule) {
	switch c.Installation.Rules {
	case Boat33CFR:
		return units.Scale(c.Current, boatFactor), LimitBoat
	case RVLowVoltage:
		if c.Governs == ByDeviceTable {
			return c.Current, LimitSmallConductor
		}
		return c.Current, LimitAmpacity
	}
	limit, rule := c.Current, LimitAmpacity
	// 240.4(B) ends at 800 A, which no size of the table reaches.
	if next := nextRating(NEC2017, c.Current); !receptacles && units.Exceeds(next, limit) {
		limit, rule = next, LimitNextRating
	}
	if small, ok := limitOf(necSmallLimits[:], c.Installation.Size); ok && !units.Exceeds(small, limit) {
		limit, rule = small, LimitSmallConductor
	}
	return limit, rule
}

func (c Circuit) check(op string) error {
	positive := units.Above[units.Current](0)
	if err := positive.Check(op, "Load", c.Load); err != nil {
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
	source, ok := c.Fault.Get()
	if !ok {
		return nil
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", c.OneWay); err != nil {
		return err
	}
	if err := units.AtLeast[units.Length](0).AtMost(c.OneWay).Check(op, "FromSource", c.FromSource.Or(0)); err != nil {
		return err
	}
	if c.Installation.Rules == Boat33CFR {
		return units.Above[units.Voltage](0).Below(boatVoltage).Check(op, "Voltage", source.Voltage)
	}
	return nil
}
