package wire

import (
	"math"

	"example.com/drawbar/units"
)

// A FreeAirCable is one insulated cable that hangs level in still air, out of
// the sun, far from anything warm.
type FreeAirCable struct {
	Size Size // of stranded copper
	// Metal is how warm the copper is, above Ambient and not above 150 °C.
	Metal units.Temperature
	// Ambient is that of the air and of what the cable sees, -60 °C to 100 °C;
	// not given means 30 °C.
	Ambient units.Temperature
	// Thickness of the insulation, > 0 to 20 mm; not given means that of
	// thermoplastic building wire of the size.
	Thickness units.Opt[units.Length]
	// Emissivity of the surface, 0 to 1; not given means 0.9, which most
	// plastics have, black or white.
	Emissivity units.Opt[units.Ratio]
}

// A HeatBalance is the result of [FreeAir]. Powers are those of one metre.
type HeatBalance struct {
	Cable    FreeAirCable      // as used; what was not given is filled in
	Strands  units.Length      // diameter over the strands
	Outer    units.Length      // diameter over the insulation
	Surface  units.Temperature // of the insulation
	Film     units.Temperature // mean of surface and air, for the properties of air
	Air      AirProperties     // at Film
	Rayleigh units.Ratio       // buoyancy against what slows it
	Nusselt  units.Ratio       // heat carried off against heat conducted through still air
	// Convection, Radiation and their sum Loss leave the surface; Through
	// reaches it, and is the same once the balance is found.
	Convection, Radiation, Loss, Through units.Power
	PerLength                            units.ResistancePerLength // of the copper at Metal
	Current                              units.Current             // whose heat that is
	Halvings                             int                       // how often the search halved its interval
}

// AirProperties are those of dry air at one standard atmosphere.
type AirProperties struct {
	Density      units.Ratio // kg/m³
	Viscosity    units.Ratio // Pa·s
	Conductivity units.Ratio // W/(m·K)
	Prandtl      units.Ratio // Viscosity · specific heat / Conductivity
}

// What the heat balance takes as given.
// Sources: specific heat of dry air about 300 K, thermal resistivity of PVC
// (IEC 60287-2-1) and the gas constant of air from memory; emissivity of
// plastics by common practice; gravity and pressure by definition;
// Stefan-Boltzmann constant of the SI of 2019, from memory.
const (
	airHeat           = 1006.0         // J/(kg·K)
	airGas            = 287.05         // J/(kg·K)
	standardPressure  = 101325.0       // Pa
	standardGravity   = 9.80665        // m/s²
	stefanBoltzmann   = 5.670374419e-8 // W/(m²·K⁴)
	plasticResistance = 5.0            // K·m/W

	plasticEmissivity units.Ratio = 0.9
)

// A thicknessRow is the thickness of insulation up to a size, and of how many
// strands such a conductor is made.
type thicknessRow struct {
	upTo      Size
	thickness units.Length
	// over is the diameter over the strands in diameters of one strand, and
	// count how many strands there are.
	over, count float64
}

// Thermoplastic building wire (type TW), concentric strands of class B.
// Source: NEC Table 310.104(A) of 2017 and ASTM B8. Provenance: from memory.
var thermoplasticWire = [...]thicknessRow{
	{Size{gauge, 10}, 0.76 * units.Millimetre, 3, 7},
	{Size{gauge, 8}, 1.14 * units.Millimetre, 3, 7},
	{Size{gauge, 2}, 1.52 * units.Millimetre, 3, 7},
	{Size{gauge, -3}, 2.03 * units.Millimetre, 5, 19},
	{Size{kcmil, 500}, 2.41 * units.Millimetre, 7, 37},
}

// Bounds of what a cable in free air may be.
var (
	freeAirAmbients   = units.TemperatureBounds{Low: units.Celsius(-60), High: units.Celsius(100)}
	freeAirThickness  = units.Above[units.Length](0).AtMost(20 * units.Millimetre)
	freeAirEmissivity = units.Between[units.Ratio](0, 1)
)

// mostHalvings bring the width of any interval of temperatures below the last
// bit of a float64.
const mostHalvings = 60

// FreeAir returns the current that keeps the copper of one cable in still air at
// a temperature, from first principles:
//
//	I²·r = P_convection + P_radiation, per metre
//
// The heat passes the insulation, whose thermal resistance is that of a tube,
// and leaves the surface by free convection, with the correlation of Churchill
// and Chu (1975) for a level cylinder at the properties of air of the film
// between surface and air, and by radiation. Sun, wind, height above the sea,
// neighbours and the skin effect are left out. It is no rule and no substitute
// for a table: it shows where tables come from, and lands within -5 % and +21 %
// of that for free air ([Boat33CFR] from 6 AWG up is such a table).
//
// A field outside the range that [FreeAirCable] states gives a
// [*units.RangeError] and the zero HeatBalance.
func FreeAir(x FreeAirCable) (HeatBalance, error) {
	const op = "wire.FreeAir"
	x.Ambient = x.Ambient.Or(units.Celsius(30))
	if err := x.check(op); err != nil {
		return HeatBalance{}, err
	}
	row := wireRow(x.Size)
	x.Thickness = units.Some(x.Thickness.Or(row.thickness))
	x.Emissivity = units.Some(x.Emissivity.Or(plasticEmissivity))
	b := HeatBalance{Cable: x, Strands: units.Scale(x.Size.Diameter(), units.Ratio(row.over/math.Sqrt(row.count)))}
	b.Outer = b.Strands + 2*x.Thickness.Or(0)
	p, err := resistance(op, Conductor{Size: x.Size, Temperature: x.Metal})
	if err != nil {
		return HeatBalance{}, err
	}
	b.PerLength = p.At
	cool, warm := x.Ambient.Celsius(), x.Metal.Celsius()
	for b.Halvings < mostHalvings {
		b.Halvings++
		middle := cool + (warm-cool)/2
		if middle <= cool || middle >= warm {
			break
		}
		if b = b.at(units.Celsius(middle)); b.Through > b.Loss {
			cool = middle
		} else {
			warm = middle
		}
	}
	b.Current = units.Current(math.Sqrt(float64(b.Loss) / float64(b.PerLength)))
	if err := units.Above[units.Current](0).Check(op, "Current", b.Current); err != nil {
		return HeatBalance{}, err
	}
	return b, nil
}

// at returns b with its surface at t.
func (b HeatBalance) at(t units.Temperature) HeatBalance {
	x := b.Cable
	b.Surface = t
	b.Film = units.Celsius((t.Celsius() + x.Ambient.Celsius()) / 2)
	b.Air = airAt(b.Film)
	warmer := float64(t.Sub(x.Ambient))
	d, film := float64(b.Outer), b.Film.Kelvin()
	k, mu := float64(b.Air.Conductivity), float64(b.Air.Viscosity)
	rho, pr := float64(b.Air.Density), float64(b.Air.Prandtl)
	b.Rayleigh = units.Ratio(standardGravity / film * warmer * d * d * d * rho * rho * airHeat / (mu * k))
	nu := 0.60 + 0.387*math.Pow(float64(b.Rayleigh), 1.0/6)/math.Pow(1+math.Pow(0.559/pr, 9.0/16), 8.0/27)
	b.Nusselt = units.Ratio(nu * nu)
	b.Convection = units.Power(float64(b.Nusselt) * k * math.Pi * warmer)
	b.Radiation = units.Power(float64(x.Emissivity.Or(0)) * stefanBoltzmann * math.Pi * d *
		(math.Pow(t.Kelvin(), 4) - math.Pow(x.Ambient.Kelvin(), 4)))
	b.Loss = b.Convection + b.Radiation
	b.Through = units.Power(2 * math.Pi * float64(x.Metal.Sub(t)) / (plasticResistance * math.Log(d/float64(b.Strands))))
	return b
}

// airAt returns the properties of air at t, by the formulas of the U.S. Standard
// Atmosphere for viscosity and conductivity.
func airAt(t units.Temperature) AirProperties {
	k := t.Kelvin()
	a := AirProperties{
		Density:      units.Ratio(standardPressure / (airGas * k)),
		Viscosity:    units.Ratio(1.458e-6 * math.Pow(k, 1.5) / (k + 110.4)),
		Conductivity: units.Ratio(2.64638e-3 * math.Pow(k, 1.5) / (k + 245.4*math.Pow(10, -12/k))),
	}
	a.Prandtl = units.Ratio(float64(a.Viscosity) * airHeat / float64(a.Conductivity))
	return a
}

// wireRow returns the row of thermoplasticWire for s; that of the thickest for
// what is thicker.
func wireRow(s Size) thicknessRow {
	for _, r := range thermoplasticWire {
		if s.Compare(r.upTo) <= 0 {
			return r
		}
	}
	return thermoplasticWire[len(thermoplasticWire)-1]
}

// check reports the first field out of range.
func (x FreeAirCable) check(op string) error {
	if err := x.Size.check(op, "Size"); err != nil {
		return err
	}
	if err := freeAirAmbients.Check(op, "Ambient", x.Ambient); err != nil {
		return err
	}
	if err := metalTemperatures.Check(op, "Metal", x.Metal); err != nil {
		return err
	}
	if x.Metal.Compare(x.Ambient) <= 0 {
		return &units.RangeError{Op: op, Field: "Metal", Value: x.Metal, Allowed: allowedText("above Ambient")}
	}
	if t, ok := x.Thickness.Get(); ok {
		if err := freeAirThickness.Check(op, "Thickness", t); err != nil {
			return err
		}
	}
	if e, ok := x.Emissivity.Get(); ok {
		return freeAirEmissivity.Check(op, "Emissivity", e)
	}
	return nil
}
