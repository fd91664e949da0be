package wire

import "example.com/drawbar/units"

// CordType is the kind of a flexible cord or cable. The zero value is
// [FlexibleCord].
type CordType uint8

const (
	// FlexibleCord is a cord of Table 400.5(A)(1), as shore cords and extension
	// cords are.
	FlexibleCord CordType = iota
	// HeaterCord is a heater cord of that table, types HPD, HPN, HSJ and the
	// like.
	HeaterCord
	// PortableCable is a portable power cable of Table 400.5(A)(2), such as
	// type W or G.
	PortableCable
)

// A Cord is a flexible copper cord and what it feeds.
type Cord struct {
	Type CordType // a flexible cord unless said otherwise
	Size Size     // 20 AWG to 2 AWG; a portable cable 12 AWG to 4/0
	// Conductors is how many of the cord carry current, 1 to 1000: the ground
	// does not count, and the neutral of a 120/240 V cord does not if it carries
	// only what the legs differ by. One is for a portable cable only.
	Conductors int
	// Rating is the temperature class of a portable cable, 60, 75 or 90 °C; for
	// the others it is not given, unless Ambient is.
	Rating Insulation
	// Ambient is the temperature of the air; not given means 30 °C. Another one
	// needs Rating, since the factor is that of the cord's class.
	Ambient units.Temperature
	Load    units.Current            // greatest current in one conductor, > 0
	Device  units.Opt[units.Current] // the device before the cord, > 0
	// Coiled says that the cord lies in a coil, on a reel or under something.
	Coiled bool
}

// A CordCapacity is the result of [CordAmpacity].
type CordCapacity struct {
	Cord    Cord          // as used; Ambient is filled in
	Table   units.Current // before correction
	Ambient units.Ratio   // correction for ambient temperature
	Bundle  units.Ratio   // adjustment for more than three conductors
	Current units.Current // the ampacity: Table · Ambient · Bundle
}

// CordAmpacity returns the current that each conductor of a flexible cord may
// carry:
//
//	I_z = I_table · k_ambient · k_bundle
//
// by NEC Table 400.5(A)(1) or (2), adjusted by 400.5(A)(3). The values are those
// of the editions of 2017 and 2023, which agree. A cord that is coiled or
// covered carries less, by how much no table says; it is a finding.
//
// A field outside the range that [Cord] states, or a blank of the table, gives a
// [*units.RangeError] and the zero CordCapacity.
func CordAmpacity(x Cord) (CordCapacity, error) {
	const op = "wire.CordAmpacity"
	if err := x.check(op); err != nil {
		return CordCapacity{}, err
	}
	x.Ambient = x.Ambient.Or(units.Celsius(30))
	c := CordCapacity{Cord: x, Ambient: 1, Bundle: bundleFactor(cordBundleFactors[:], x.Conductors)}
	if c.Table = cordCell(x.Type, x.Size, x.Rating, x.Conductors); c.Table == 0 {
		return CordCapacity{}, &units.RangeError{Op: op, Field: "Size", Value: x.Size, Allowed: cordRange{x.Type}}
	}
	if x.Rating != 0 {
		if err := ambientRange(NEC2017, x.Rating).Check(op, "Ambient", x.Ambient); err != nil {
			return CordCapacity{}, err
		}
		c.Ambient = ambientFactor(NEC2017, x.Rating, x.Ambient)
	}
	c.Current = units.Scale(c.Table, c.Ambient*c.Bundle)
	return c, nil
}

// check reports the first field out of range.
func (x Cord) check(op string) error {
	if x.Type > PortableCable {
		return &units.RangeError{Op: op, Field: "Type", Value: x.Type, Allowed: wordList(cordWords)}
	}
	if err := x.Size.check(op, "Size"); err != nil {
		return err
	}
	least, count := 2, allowedText("2 to 1000")
	if x.Type == PortableCable {
		least, count = 1, "1 to 1000"
	}
	if x.Conductors < least || x.Conductors > mostConductors {
		return &units.RangeError{Op: op, Field: "Conductors", Value: x.Conductors, Allowed: count}
	}
	if err := x.checkRating(op); err != nil {
		return err
	}
	positive := units.Above[units.Current](0)
	if err := positive.Check(op, "Load", x.Load); err != nil {
		return err
	}
	if device, ok := x.Device.Get(); ok {
		return positive.Check(op, "Device", device)
	}
	return nil
}

// checkRating wants a class of the tables where one is needed.
func (x Cord) checkRating(op string) error {
	switch x.Rating {
	case Insulation60, Insulation75, Insulation90:
		return nil
	case 0:
		if x.Type == PortableCable {
			return &units.RangeError{Op: op, Field: "Rating", Value: x.Rating, Allowed: allowedText("60, 75 or 90 °C")}
		}
		if x.Ambient.IsSet() && x.Ambient.Compare(units.Celsius(30)) != 0 {
			return &units.RangeError{Op: op, Field: "Rating", Value: x.Rating, Allowed: allowedText("60, 75 or 90 °C, to correct for Ambient")}
		}
		return nil
	}
	return &units.RangeError{Op: op, Field: "Rating", Value: x.Rating, Allowed: allowedText("60, 75 or 90 °C")}
}

// cordRange says which sizes a table has.
type cordRange struct{ kind CordType }

// String names the sizes.
func (r cordRange) String() string {
	switch r.kind {
	case HeaterCord:
		return "18 AWG to 14, 12 or 10 AWG of Table 400.5(A)(1), heater cords"
	case PortableCable:
		return "12 AWG to 4/0 AWG of Table 400.5(A)(2), a single conductor from 8 AWG up"
	}
	return "18 AWG to 2 AWG of Table 400.5(A)(1), 20 AWG with two conductors"
}
