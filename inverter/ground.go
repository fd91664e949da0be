package inverter

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A NeutralReturn is a circuit with a second neutral-ground bond.
type NeutralReturn struct {
	Current units.Current    // that comes back from the loads, > 0
	Neutral units.Resistance // of the neutral between the two bonds, > 0
	Ground  units.Resistance // of ground wire and frame between them, > 0
}

// A GroundShare is the result of [ParallelNeutral].
type GroundShare struct {
	Return NeutralReturn // as used
	Ground units.Current // in ground wire and frame
	Rest   units.Current // in the neutral
}

// ParallelNeutral returns how much of the load current comes back through
// ground wire and frame when neutral and ground are joined at both ends:
//
//	I_g = I · R_n / (R_n + R_g)
//
// A field outside the range that [NeutralReturn] states, or not finite, gives
// a [*units.RangeError]; so does a result that no float64 holds. The
// GroundShare is then the zero value.
func ParallelNeutral(n NeutralReturn) (GroundShare, error) {
	const op = "inverter.ParallelNeutral"
	if err := firstError(
		positive[units.Current]().Check(op, "Current", n.Current),
		positive[units.Resistance]().Check(op, "Neutral", n.Neutral),
		positive[units.Resistance]().Check(op, "Ground", n.Ground),
	); err != nil {
		return GroundShare{}, err
	}
	g := GroundShare{Return: n, Ground: units.Scale(n.Current, units.RatioOf(n.Neutral, n.Neutral+n.Ground))}
	g.Rest = units.Minus(n.Current, g.Ground)
	if err := positive[units.Current]().Check(op, "Ground", g.Ground); err != nil {
		return GroundShare{}, err
	}
	return g, nil
}

// Working returns how the share came about, step by step.
func (g GroundShare) Working() *working.Sheet {
	s := working.NewSheet("Two neutral-ground bonds: current in the ground wire")
	s.Given("I", g.Return.Current, "A", "that comes back from the loads")
	s.Given("R_n", g.Return.Neutral, "mΩ", "neutral between the bonds")
	s.Given("R_g", g.Return.Ground, "mΩ", "ground wire and frame between the bonds")
	s.Formula("I_g", g.Ground, "A", "in ground wire and frame", "I * R_n / (R_n + R_g)")
	s.Formula("I_n", g.Rest, "A", "in the neutral", "I - I_g")
	return s
}

// classATrip is the most that class A ground-fault protection lets pass.
const classATrip = 6 * units.Milliampere

// Findings returns that ground wire and frame carry load current.
func (g GroundShare) Findings() []working.Finding {
	message := "Ground wire and frame carry load current: whoever opens that wire, or touches frame and soil, is in the circuit."
	if units.Exceeds(g.Ground, classATrip) {
		message += " Ground-fault protection of the site trips on it."
	}
	return []working.Finding{{
		Severity: working.Danger, Rule: "load-current-in-ground", Source: classA,
		Numbers: []working.Number{{Name: "in the ground wire", Value: g.Ground}, {Name: "trips at", Value: classATrip}},
		Message: message,
		Fix:     "Remove the bond that is not at the active source.",
	}}
}

// A FrameFault is a hot conductor that touches the frame.
type FrameFault struct {
	Voltage units.Voltage // hot to neutral, > 0
	// Metal is the path back to neutral through ground wire and bond, > 0. Not
	// given: there is no bond.
	Metal units.Opt[units.Resistance]
	// Earth is the path through ground rods and soil, > 0. Not given: none, as
	// with a source that floats. A utility's neutral is earthed, so there is
	// one.
	Earth  units.Opt[units.Resistance]
	Device units.Opt[units.Current] // that should open, > 0
}

// A FaultPath is the result of [FaultToFrame].
type FaultPath struct {
	Fault      FrameFault    // as used
	MetalShare units.Current // through ground wire and bond
	EarthShare units.Current // through soil
	Current    units.Current // both; 0 if there is no path at all
	CanOpen    bool          // Current is above Device, without which it stays closed; whether and how fast it opens is in its curve
}

// FaultToFrame returns the current of f, which must be far above the device's
// rating for it to open at once:
//
//	I = V/R_metal + V/R_earth
//
// Soil is no effective path: a ground rod passes a few amperes, at which no
// breaker opens, and the frame stays live. Without any path nothing flows, no
// breaker notices, and the frame has the full voltage to the neutral: a
// caution, as for a count of no bonds in [Bonding], since it takes a second
// fault to shock.
//
// A field outside the range that [FrameFault] states, or not finite, gives a
// [*units.RangeError]; so does a result that no float64 holds. The FaultPath
// is then the zero value.
func FaultToFrame(f FrameFault) (FaultPath, error) {
	const op = "inverter.FaultToFrame"
	if err := firstError(
		positive[units.Voltage]().Check(op, "Voltage", f.Voltage),
		checkOpt(op, "Metal", f.Metal, positive[units.Resistance]()),
		checkOpt(op, "Earth", f.Earth, positive[units.Resistance]()),
		checkOpt(op, "Device", f.Device, positive[units.Current]()),
	); err != nil {
		return FaultPath{}, err
	}
	p := FaultPath{Fault: f}
	if r, ok := f.Metal.Get(); ok {
		p.MetalShare = f.Voltage.Across(r)
	}
	if r, ok := f.Earth.Get(); ok {
		p.EarthShare = f.Voltage.Across(r)
	}
	p.Current = p.MetalShare + p.EarthShare
	if err := notNegative[units.Current]().Check(op, "Current", p.Current); err != nil {
		return FaultPath{}, err
	}
	device, ok := f.Device.Get()
	p.CanOpen = ok && units.Exceeds(p.Current, device)
	return p, nil
}

// Working returns how the fault current came about, step by step.
func (p FaultPath) Working() *working.Sheet {
	s := working.NewSheet("Fault of a hot conductor to the frame")
	s.Given("V", p.Fault.Voltage, "V", "hot to neutral")
	metal, hasMetal := p.Fault.Metal.Get()
	earth, hasEarth := p.Fault.Earth.Get()
	if hasMetal {
		s.Given("R_metal", metal, "Ω", "ground wire and bond")
		s.Formula("I_metal", p.MetalShare, "A", "through them", "V / R_metal")
	}
	if hasEarth {
		s.Given("R_earth", earth, "Ω", "ground rods and soil")
		s.Formula("I_earth", p.EarthShare, "A", "through them", "V / R_earth")
	}
	switch {
	case hasMetal && hasEarth:
		s.Formula("I", p.Current, "A", "fault current", "I_metal + I_earth")
	case hasMetal:
		s.Formula("I", p.Current, "A", "fault current", "I_metal")
	case hasEarth:
		s.Formula("I", p.Current, "A", "fault current", "I_earth")
	default:
		s.Given("I", p.Current, "A", "no path, no current")
	}
	if device, ok := p.Fault.Device.Get(); ok {
		s.Given("I_device", device, "A", "device that should open")
		s.Test("fault against the device", "I > I_device", p.CanOpen)
	}
	return s
}

// opensAtOnce is how many times its rating opens a breaker without delay, and
// breakerSpeed where that is from.
const opensAtOnce = 5

var breakerSpeed = working.Source{Title: "a breaker opens without delay from five times its rating up, or more", Provenance: working.CommonPractice}

// Findings returns what is wrong with the path, and what is not judged.
func (p FaultPath) Findings() []working.Finding {
	numbers := []working.Number{{Name: "fault current", Value: p.Current}}
	device, hasDevice := p.Fault.Device.Get()
	if hasDevice {
		numbers = append(numbers, working.Number{Name: "device", Value: device})
	}
	switch {
	case !p.Fault.Metal.IsSet() && !p.Fault.Earth.IsSet():
		return []working.Finding{{
			Severity: working.Caution, Rule: "no-fault-path", Source: necGenerator, Numbers: numbers,
			Message: "There is no path from the frame to neutral: this fault trips nothing, the frame has the full voltage to neutral, and the next fault shocks.",
			Fix:     "Have one neutral-ground bond made at the source.",
		}}
	case !p.Fault.Metal.IsSet():
		return []working.Finding{{
			Severity: working.Danger, Rule: "earth-is-no-fault-path", Source: necEarth, Numbers: numbers,
			Message: "The only path from the frame to neutral is soil: the device does not open in time if at all, and the frame stays live.",
			Fix:     "Have one neutral-ground bond made at the source; a ground rod does not replace it.",
		}}
	case !hasDevice:
		return []working.Finding{{
			Severity: working.Caution, Rule: "fault-device-not-stated", Source: currentDivision, Numbers: numbers,
			Message: "No device is stated, so whether anything cuts this fault off is not judged.",
			Fix:     "Find the device and state its rating.",
		}}
	case !p.CanOpen:
		return []working.Finding{{
			Severity: working.Danger, Rule: "fault-cannot-open-device", Source: currentDivision, Numbers: numbers,
			Message: "The fault current is not above the device: it stays closed and the frame stays live.",
			Fix:     "Find the resistance in ground wire and bond, or use a smaller device.",
		}}
	}
	if device, _ := p.Fault.Device.Get(); units.Exceeds(opensAtOnce*device, p.Current) {
		return []working.Finding{{
			Severity: working.Danger, Rule: "fault-opens-slowly", Source: breakerSpeed, Numbers: numbers,
			Message: "The fault current is less than five times the device: it may stay closed for minutes or for good, with the frame live.",
			Fix:     "Find the resistance in ground wire and bond.",
		}}
	}
	return []working.Finding{{
		Severity: working.Note, Rule: "opening-time-not-judged", Source: currentDivision, Numbers: numbers,
		Message: "How fast the device opens at this current is in its time-current curve and not judged here.",
		Fix:     "Look the current up in the curve of the device.",
	}}
}
