package wire

import (
	"example.com/drawbar/units"
)

// Strand is how a conductor is made up. The zero value is [Stranded], as the
// wire of a vehicle must be.
type Strand uint8

const (
	// Stranded is a conductor of concentric strands, class 2 of IEC 60228.
	Stranded Strand = iota
	// Solid is a conductor of one wire, class 1 of IEC 60228.
	Solid
	// Flexible is a conductor of many fine strands, class 5 of IEC 60228. For
	// gauges there is no one figure; give the datasheet's as Conductor.Stated.
	Flexible
)

// WarmCopper is the temperature that a Conductor is taken at if none is
// given: that of NEC Chapter 9 Table 8, copper as warm as the usual insulation
// allows. Cooler copper drops less, 18 % less at 20 °C.
func WarmCopper() units.Temperature { return units.Celsius(75) }

// A Conductor is one conductor. Give a Size, for which the resistance is worked
// out or looked up, or a Stated resistance.
type Conductor struct {
	// Size is needed unless Stated is given, and then only a name.
	Size Size
	// Metal is Copper unless said otherwise. With Resistivity or Stated it is for
	// the findings only.
	Metal Metal `json:",omitzero"`
	// Strand is Stranded unless said otherwise; Flexible needs a metric Size.
	Strand Strand
	// Coated says that the strands are tinned. What that costs is in the tables
	// of the NEC and of IEC 60228 only, and not for solid metric conductors.
	Coated bool `json:",omitzero"`
	// Temperature of the metal, -40 °C to 150 °C; not given means WarmCopper.
	// Not the temperature of the air.
	Temperature units.Temperature
	// Basis, if given, chooses where the resistance comes from. Not given means
	// FromCopper for a gauge, FromIEC60228 for a metric size, and FromMetal for
	// a gauge of another metal.
	Basis units.Opt[Basis] `json:",omitzero"`
	// Resistivity, if given, is used for the metal as it is: at its working
	// temperature and with the lay of strands in it, as the K of North
	// American handbooks is. Nothing above but Size is then used. > 0.
	Resistivity units.Opt[units.Resistivity]
	// Stated, if given, is the resistance per length of one conductor at its
	// working temperature, from a table or a datasheet, and beats everything
	// above. > 0.
	Stated units.Opt[units.ResistancePerLength]
}

// Basis says where the resistance of a conductor comes from. They differ, each
// for a reason: what temperature the source belongs to, whether strands are
// longer than the conductor, and whether it is a mean or the most allowed.
type Basis uint8

const (
	// FromCopper is the resistivity of copper and the geometry of the size.
	FromCopper Basis = iota
	// FromIEC60228 is the limit of IEC 60228 for the metric size, warmed from
	// 20 °C: the most that a conductor sold by that name may have.
	FromIEC60228
	// FromResistivity is the caller's resistivity and the area of the size. It
	// is not chosen: give Conductor.Resistivity.
	FromResistivity
	// FromStated is the caller's resistance per length. It is not chosen: give
	// Conductor.Stated.
	FromStated
	// FromMetal is FromCopper for the other metals.
	FromMetal
	// FromNECTable8 is NEC Chapter 9 Table 8, 18 AWG to 500 kcmil at 75 °C,
	// with the correction for temperature that its note has.
	FromNECTable8
	// FromNBSHandbook100 is the table of solid annealed copper at 20 °C, 20 AWG
	// to 4/0, that NBS Handbook 100 and the handbooks after it print; warmed,
	// and longer by the lay of strands if Stranded.
	FromNBSHandbook100
)

// PerLength is the result of [Resistance].
type PerLength struct {
	Conductor Conductor // as used; Temperature is filled in
	Basis     Basis     // which of the ways gave At
	// Area of the metal, nominal for a metric size; 0 if Stated was used.
	Area units.Area
	// Rho is the resistivity at the temperature, lay included; 0 if it was not
	// used.
	Rho units.Resistivity
	// At20 is the tabulated resistance per length at 20 °C; 0 if the basis is
	// no table of 20 °C.
	At20 units.ResistancePerLength
	// At75 is the tabulated resistance per length at 75 °C; 0 but for
	// FromNECTable8.
	At75 units.ResistancePerLength
	// At is the resistance per length of the one conductor at its temperature.
	At units.ResistancePerLength
}

// Resistance returns the resistance per length of one conductor in direct
// current:
//
//	r = ρ20 · (1 + α20 · (T - 20 °C)) · lay / A
//
// for gauges and kcmil, with lay 1.02 for stranded and 1 for solid; and for
// metric sizes the limit of IEC 60228 at 20 °C, warmed in the same way. A
// Basis given by the caller takes another table. A Resistivity or a Stated
// resistance given by the caller is used as it is. Joints and skin effect are
// left out, and tinning but for the tables that have it.
//
// A field outside the range that [Conductor] states, or a size that the chosen
// Basis does not have, gives a [*units.RangeError] that matches
// [units.ErrRange], and the zero PerLength.
func Resistance(c Conductor) (PerLength, error) { return resistance("wire.Resistance", c) }

func resistance(op string, c Conductor) (PerLength, error) {
	if err := c.check(op); err != nil {
		return PerLength{}, err
	}
	p := PerLength{Conductor: c, Basis: c.basis()}
	if p.Basis != FromStated {
		p.Area = c.Size.Area()
	}
	switch p.Basis {
	case FromStated:
		p.At, _ = c.Stated.Get()
	case FromResistivity:
		p.Rho, _ = c.Resistivity.Get()
		p.At = p.Rho.Over(p.Area)
	default:
		p.Conductor.Temperature = c.Temperature.Or(WarmCopper())
		p.look()
	}
	if err := units.Above[units.ResistancePerLength](0).Check(op, "PerLength", p.At); err != nil {
		return PerLength{}, err
	}
	return p, nil
}

// look fills p in from the metal or from a table.
func (p *PerLength) look() {
	c := p.Conductor
	switch p.Basis {
	case FromIEC60228:
		p.At20 = iecResistance(c.Size, c.Strand, c.Coated)
		p.At = units.Scale(p.At20, warming(c.Temperature))
	case FromNBSHandbook100:
		p.At20 = solidResistance(c.Size)
		p.At = units.Scale(p.At20, warming(c.Temperature)*c.Strand.lay())
	case FromNECTable8:
		p.At75 = c.table8()
		p.At = units.Scale(p.At75, 1+c.Metal.alpha75().Over(c.Temperature.Sub(tableTemperature)))
	default:
		p.Rho = units.Scale(c.Metal.resistivity(c.Temperature), c.Strand.lay())
		p.At = p.Rho.Over(p.Area)
	}
}

// basis returns the one that c asks for, or what not given means.
func (c Conductor) basis() Basis {
	switch {
	case c.Stated.IsSet():
		return FromStated
	case c.Resistivity.IsSet():
		return FromResistivity
	case c.Basis.IsSet():
		b, _ := c.Basis.Get()
		return b
	case c.Size.IsMetric():
		return FromIEC60228
	case c.Metal != Copper:
		return FromMetal
	}
	return FromCopper
}

// lay returns the allowance for strands that go round the axis.
func (s Strand) lay() units.Ratio {
	if s == Solid {
		return 1
	}
	return strandLay
}
