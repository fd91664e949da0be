package wire_test

import (
	"fmt"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// printedAs returns a quantity as a cell in the unit that its table prints.
func printedAs[Q units.Quantity](id string, q, unit Q) cell { return cell{id, units.In(q, unit)} }

// TestResistanceTablesGuardEveryDigit changes each digit of each cell of the
// tables that a resistance or a reactance is looked up in.
func TestResistanceTablesGuardEveryDigit(t *testing.T) {
	t.Run("NEC Table 8", func(t *testing.T) {
		var cells []cell
		for _, size := range wire.Gauges() {
			for _, strand := range []wire.Strand{wire.Solid, wire.Stranded} {
				for suffix, c := range map[string]wire.Conductor{"cu": {}, "ct": {Coated: true}, "al": {Metal: wire.Aluminium}} {
					c.Size, c.Strand = size, strand
					if r := wire.Table8(c); r > 0 {
						cells = append(cells, printedAs(fmt.Sprintf("N8-%s-%v-%s", rowName(size), strand, suffix), r, units.OhmPerKilofoot))
					}
				}
			}
		}
		guardEveryDigit(t, cells, secondCopy(t, "wire_resistance.csv", "N8"))
	})
	t.Run("solid copper at 20 °C", func(t *testing.T) {
		var cells []cell
		for n := -3; n <= 20; n++ {
			cells = append(cells, printedAs("NB-"+rowName(wire.AWG(n)), wire.SolidResistance(wire.AWG(n)), units.OhmPerKilofoot))
		}
		guardEveryDigit(t, cells, secondCopy(t, "wire_resistance.csv", "NB"))
	})
	t.Run("IEC 60228, plain and tinned", func(t *testing.T) {
		var cells []cell
		for _, size := range wire.MetricSizes() {
			for suffix, c := range map[string]wire.Conductor{"2": {}, "5": {Strand: wire.Flexible},
				"2t": {Coated: true}, "5t": {Strand: wire.Flexible, Coated: true}} {
				cells = append(cells, printedAs("IEC-"+rowName(size)+"-"+suffix, wire.IECResistance(size, c.Strand, c.Coated), units.MilliohmPerMetre))
			}
		}
		guardEveryDigit(t, cells, secondCopy(t, "wire_resistance.csv", "IEC"))
	})
	t.Run("NEC Table 9", func(t *testing.T) {
		var cells []cell
		metals := map[string]wire.Metal{"Cu": wire.Copper, "Al": wire.Aluminium}
		for _, size := range wire.Gauges() {
			for conduit := wire.PVCConduit; conduit <= wire.SteelConduit; conduit++ {
				for name, metal := range metals {
					if r, _ := wire.Table9(size, metal, conduit); r > 0 {
						cells = append(cells, printedAs(fmt.Sprintf("T9-%s-%s-%v", rowName(size), name, conduit), r, units.OhmPerKilofoot))
					}
				}
				if _, x := wire.Table9(size, wire.Copper, conduit); x > 0 && conduit != wire.AluminiumConduit {
					cells = append(cells, printedAs(fmt.Sprintf("T9-%s-x-%v", rowName(size), conduit), x, units.OhmPerKilofoot))
				}
			}
		}
		guardEveryDigit(t, cells, secondCopy(t, "wire_ac.csv", "T9"))
	})
}

// TestConductorConstantsGuardEveryDigit holds the constants behind all of this
// to what is printed, each through a result.
func TestConductorConstantsGuardEveryDigit(t *testing.T) {
	for name, c := range map[string]struct{ got, want float64 }{
		"copper at 75 °C, NEC note":      {warmFactor(t, wire.Copper, wire.FromNECTable8, 75, 85), 1 + 0.00323*10},
		"aluminium at 75 °C, NEC note":   {warmFactor(t, wire.Aluminium, wire.FromNECTable8, 75, 85), 1 + 0.00330*10},
		"copper at 20 °C":                {warmFactor(t, wire.Copper, wire.FromCopper, 20, 120), 1.393},
		"aluminium at 20 °C":             {warmFactor(t, wire.Aluminium, wire.FromMetal, 20, 120), 1.403},
		"aluminium over copper, 20 °C":   {float64(at(t, wire.Conductor{Metal: wire.Aluminium}, 20) / at(t, wire.Conductor{}, 20)), 0.028264 * 58},
		"lay of strands":                 {float64(at(t, wire.Conductor{}, 20) / at(t, wire.Conductor{Strand: wire.Solid}, 20)), 1.02},
		"copper share of a clad wire":    {float64(at(t, wire.Conductor{}, 20) / at(t, wire.Conductor{Metal: wire.CopperClad}, 20)), 0.1 + 0.9/(0.028264*58)},
		"density of copper":              {massOf(t, wire.Copper), 8.89},
		"density of aluminium":           {massOf(t, wire.Aluminium), 2.703},
		"density of copper-clad":         {massOf(t, wire.CopperClad), 0.889 + 0.9*2.703},
		"resistivity of copper, Ω·mm²/m": {units.In(rho(t), units.OhmSquareMillimetrePerMetre), 1.0 / 58},
	} {
		if units.Compare(c.got, c.want) != 0 {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
}

// at returns the resistance of 10 AWG of the metal and strand of c.
func at(t *testing.T, c wire.Conductor, celsius float64) units.ResistancePerLength {
	t.Helper()
	c.Size, c.Temperature = wire.AWG(10), units.Celsius(celsius)
	p, err := wire.Resistance(c)
	if err != nil {
		t.Fatal(err)
	}
	return p.At
}

func rho(t *testing.T) units.Resistivity {
	t.Helper()
	p, err := wire.Resistance(wire.Conductor{Size: wire.AWG(10), Strand: wire.Solid, Temperature: units.Celsius(20)})
	if err != nil {
		t.Fatal(err)
	}
	return p.Rho
}

// warmFactor returns by what factor the resistance grows between two
// temperatures.
func warmFactor(t *testing.T, m wire.Metal, b wire.Basis, from, to float64) float64 {
	t.Helper()
	c := wire.Conductor{Metal: m, Basis: units.Some(b)}
	return float64(at(t, c, to) / at(t, c, from))
}

// massOf returns the mass of solid wire in g/m for each mm².
func massOf(t *testing.T, m wire.Metal) float64 {
	t.Helper()
	w, err := wire.MassOf(wire.Conductor{Size: wire.AWG(10), Metal: m, Strand: wire.Solid})
	if err != nil {
		t.Fatal(err)
	}
	return units.In(w.PerLength, units.GramPerMetre) / units.In(w.Area, units.SquareMillimetre)
}
