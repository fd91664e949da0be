package wire

import (
	"example.com/drawbar/units"
)

// A Run is a two-conductor direct-current circuit from a source to one load.
// Both conductors are alike, unless the chassis is one of them.
type Run struct {
	Current   units.Current // steady current of the load, > 0
	OneWay    units.Length  // source to load, not there and back, > 0
	Conductor Conductor     // one of the two
	Source    units.Voltage // at the source end, > 0
	// Allowed is the drop that is allowed, as a fraction of Source, 0 to 1,
	// neither included. Common practice is 3 % where the load is sensitive and
	// 10 % elsewhere. Not given means that nothing is judged; the inverse
	// questions need it.
	Allowed units.Opt[units.Ratio]
	// Parallel is how many equal conductors lie side by side in each direction,
	// 0 to 100; 0 means one.
	Parallel int `json:",omitzero"`
	// Chassis, if given, says that the current returns through the chassis, and
	// is the resistance of that path from lug to lug, >= 0. It is measured: no
	// table has it. The conductors then run one way only.
	Chassis units.Opt[units.Resistance] `json:",omitzero"`
	// Contacts, if given, is the resistance of all joints, fuses and switches of
	// the loop together, >= 0. Not given, they are left out.
	Contacts units.Opt[units.Resistance] `json:",omitzero"`
}

// mostParallel is the range of Run.Parallel.
const mostParallel = 100

// parallelRange says in words what Run.Parallel may be.
const parallelRange wording = "0 to 100 conductors side by side"

// sideBySide returns how many conductors share the current.
func (r Run) sideBySide() int { return max(r.Parallel, 1) }

// each returns the current of one conductor.
func (r Run) each() units.Current { return units.Current(float64(r.Current) / float64(r.sideBySide())) }

// wired returns how much conductor there is in the loop, there and back.
func (r Run) wired(oneWay units.Length) units.Length {
	if r.Chassis.IsSet() {
		return oneWay
	}
	return 2 * oneWay
}

// fixed returns the resistance in the loop that does not depend on the
// conductor.
func (r Run) fixed() units.Resistance { return r.Chassis.Or(0) + r.Contacts.Or(0) }

// loop returns the resistance of so much conductor and of what else is in the
// loop.
func (r Run) loop(at units.ResistancePerLength, wired units.Length) units.Resistance {
	return units.Resistance(float64(at.Over(wired))/float64(r.sideBySide())) + r.fixed()
}

// A Drop is the result of [VoltageDrop].
type Drop struct {
	Run        Run              // as used
	PerLength  PerLength        // resistance of one conductor
	Loop       units.Length     // of conductor: there and back, or there only if the chassis returns
	Resistance units.Resistance // of the loop
	Voltage    units.Voltage    // lost in the loop
	AtLoad     units.Voltage    // what is left; not above 0 if the load cannot run
	Fraction   units.Ratio      // Voltage over Source
	Heat       units.Power      // given off along the loop
}

// VoltageDrop returns the steady direct-current drop of r:
//
//	R  = r · 2L / N + R_contacts
//	ΔV = I · R
//
// where r is the [Resistance] per length of one conductor and N are side by
// side; with a chassis return R is r · L / N + R_chassis + R_contacts. The
// current is that of the load at the voltage it gets: a load that takes more
// current at lower voltage drops more than its nameplate current says. Joints,
// fuses and switches are not in it unless Contacts is given.
//
// A field outside the range that [Run] and [Conductor] state, or not finite,
// gives a [*units.RangeError], which matches [units.ErrRange]; so does a
// result that no float64 holds. The Drop is then the zero value. A drop of
// more than the source has is a result, with AtLoad not above 0 and a finding.
func VoltageDrop(r Run) (Drop, error) {
	const op = "wire.VoltageDrop"
	p, err := r.prepare(op)
	if err != nil {
		return Drop{}, err
	}
	return r.drop(op, p)
}

// drop works out the drop of r, whose fields and resistance are checked.
func (r Run) drop(op string, p PerLength) (Drop, error) {
	r.Conductor, r.Parallel = p.Conductor, r.sideBySide()
	d := Drop{Run: r, PerLength: p, Loop: r.wired(r.OneWay)}
	d.Resistance = r.loop(p.At, d.Loop)
	d.Voltage = r.Current.Through(d.Resistance)
	d.AtLoad = units.Minus(r.Source, d.Voltage)
	d.Fraction = units.RatioOf(d.Voltage, r.Source)
	d.Heat = r.Current.At(d.Voltage)
	if err := units.Above[units.Power](0).Check(op, "Heat", d.Heat); err != nil {
		return Drop{}, err
	}
	if err := units.Above[units.Ratio](0).Check(op, "Fraction", d.Fraction); err != nil {
		return Drop{}, err
	}
	return d, nil
}

// prepare checks r and returns the resistance of its conductor.
func (r Run) prepare(op string) (PerLength, error) {
	if err := r.check(op); err != nil {
		return PerLength{}, err
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", r.OneWay); err != nil {
		return PerLength{}, err
	}
	return resistance(op, r.Conductor)
}

// check reports the first field out of range, but for OneWay and Conductor,
// which not every question needs.
func (r Run) check(op string) error {
	if err := units.Above[units.Current](0).Check(op, "Current", r.Current); err != nil {
		return err
	}
	return r.checkCircuit(op)
}

// checkCircuit is check without Current.
func (r Run) checkCircuit(op string) error {
	if err := units.Above[units.Voltage](0).Check(op, "Source", r.Source); err != nil {
		return err
	}
	if allowed, ok := r.Allowed.Get(); ok {
		if err := allowedDrops().Check(op, "Allowed", allowed); err != nil {
			return err
		}
	}
	if r.Parallel < 0 || r.Parallel > mostParallel {
		return &units.RangeError{Op: op, Field: "Parallel", Value: r.Parallel, Allowed: parallelRange}
	}
	if chassis, ok := r.Chassis.Get(); ok {
		if err := units.AtLeast[units.Resistance](0).Check(op, "Chassis", chassis); err != nil {
			return err
		}
	}
	if contacts, ok := r.Contacts.Get(); ok {
		return units.AtLeast[units.Resistance](0).Check(op, "Contacts", contacts)
	}
	return nil
}

// allowedDrops is the range of Run.Allowed.
func allowedDrops() units.Bounds[units.Ratio] { return units.Above[units.Ratio](0).Below(1) }

// allowedVoltage returns the drop that r allows, in volts.
func (r Run) allowedVoltage(op string) (units.Voltage, error) {
	allowed, ok := r.Allowed.Get()
	if !ok {
		return 0, &units.RangeError{Op: op, Field: "Allowed", Value: r.Allowed, Allowed: allowedDrops()}
	}
	return units.Scale(r.Source, allowed), nil
}
