package units_test

import (
	"encoding/csv"
	"math/big"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/units"
)

// rat returns the number written s.
func rat(t testing.TB, s string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		t.Fatalf("not a number: %q", s)
	}
	return r
}

// factor returns the exact factor of row to coherent SI.
func factor(t testing.TB, row units.Row) *big.Rat {
	t.Helper()
	return new(big.Rat).Quo(rat(t, row.Num), new(big.Rat).SetUint64(row.Den))
}

// rowOf returns the row of a unit by the name of its kind and its symbol.
func rowOf(t testing.TB, kind, symbol string) units.Row {
	t.Helper()
	rows := tables()[kind]
	i := slices.IndexFunc(rows, func(r units.Row) bool { return r.Symbol == symbol })
	if i < 0 {
		t.Fatalf("%s has no unit %q", kind, symbol)
	}
	return rows[i]
}

// records returns the rows of a file in testdata/units by column name.
func records(t testing.TB, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "testdata", "units", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, column := range rows[0] {
			m[column] = row[i]
		}
		out = append(out, m)
	}
	return out
}

// TestFactors holds the float64 of every unit to its exact definition,
// rounded once.
func TestFactors(t *testing.T) {
	for kind, rows := range tables() {
		for _, row := range rows {
			if want, _ := factor(t, row).Float64(); row.Float != want {
				t.Errorf("%s %s: the factor is %v, want %s/%d = %v", kind, row.Symbol, row.Float, row.Num, row.Den, want)
			}
		}
	}
}

// TestSP811 compares the factors with those that NIST SP 811 (2008) prints
// in Appendix B.8: equal where it prints an exact one, else equal when ours
// is rounded to its digits. The rows were typed from memory, so the test
// guards the tables against a slip, and no more.
func TestSP811(t *testing.T) {
	const want = 39 // rows: fewer means that the file was not read whole
	rows := records(t, "sp811.csv")
	if len(rows) != want {
		t.Errorf("%d rows, want %d", len(rows), want)
	}
	for _, r := range rows {
		if r["provenance"] != "memory" {
			t.Errorf("%s: provenance %q", r["name"], r["provenance"])
		}
		row := rowOf(t, r["kind"], r["unit"])
		printed := rat(t, r["printed"]+"e"+r["power"])
		got := factor(t, row)
		if r["exact"] == "no" {
			got = roundAt(t, got, lastPlace(t, r["printed"]+"e"+r["power"]))
		}
		if got.Cmp(printed) != 0 {
			t.Errorf("%s: %s gives %s, SP 811 prints %s E%s", r["name"], row.Symbol, got.FloatString(20), r["printed"], r["power"])
		}
	}
}

// decimals returns how many digits stand behind the point of s.
func decimals(s string) int {
	_, fraction, _ := strings.Cut(s, ".")
	return len(fraction)
}

// roundAt returns r rounded half away from zero to a multiple of ten to the
// power.
func roundAt(t testing.TB, r *big.Rat, power int) *big.Rat {
	t.Helper()
	unit := rat(t, "1e"+strconv.Itoa(power))
	n := new(big.Rat).Quo(r, unit)
	half := big.NewRat(int64(n.Sign()), 2)
	n.Add(n, half)
	whole := new(big.Int).Quo(n.Num(), n.Denom()) // towards zero
	return unit.Mul(unit, new(big.Rat).SetInt(whole))
}

// TestDefinitions derives every unit that is not an SI unit with a prefix a
// second time, from the definition it rests on, in exact arithmetic. The
// definitions are those of SP 811, from memory:
//
//   - 1959 agreement: the yard is 0.9144 m, the pound 0.453 592 37 kg, and so
//     the grain, a seven-thousandth of it, 64.798 91 mg
//   - standard gravity is 9.806 65 m/s², the standard atmosphere
//     1 013 250 dyn/cm², the conventional density of mercury 13 595.1 kg/m³
//   - the International Table calorie is 4.1868 J, the thermochemical one
//     4.184 J; a Btu warms a pound of water by one degree Fahrenheit where
//     the calorie warms a gram by one kelvin
//   - the US gallon is 231 in³, the imperial one 4.546 09 L
//   - a nautical mile is 1852 m
//
// Factors that no decimal holds are given to 33 digits and must agree to all
// of them.
func TestDefinitions(t *testing.T) {
	n := func(s string) *big.Rat { return rat(t, s) }
	times := func(f ...*big.Rat) *big.Rat {
		p := n("1")
		for _, x := range f {
			p.Mul(p, x)
		}
		return p
	}
	over := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }
	pi := machin()
	yard, pound, gravity := n("0.9144"), times(n("7000"), n("64.79891e-6")), n("9.80665")
	foot, inch := over(yard, n("3")), over(yard, n("36"))
	kilofoot := times(n("1000"), foot)
	mil := over(inch, n("1000"))
	circularMil := times(over(pi, n("4")), mil, mil)
	poundForce := times(pound, gravity)
	gallon := times(n("231"), inch, inch, inch)
	btu := func(calorie string) *big.Rat {
		return times(n(calorie), times(n("1000"), pound), n("5/9"))
	}
	hour := times(n("60"), n("60"))
	definitions := map[string]*big.Rat{
		"Length ft": foot, "Length in": inch, "Length mil": mil, "Length mi": times(n("1760"), yard),
		"Area cmil": circularMil, "Area kcmil": times(n("1000"), circularMil),
		"Area in²": times(inch, inch), "Area ft²": times(foot, foot),
		"Volume gal(US)": gallon, "Volume gal(imp)": n("4.54609e-3"), "Volume ft³": times(foot, foot, foot),
		"VolumeFlow gal(US)/h": over(gallon, hour), "VolumeFlow ft³/min": over(times(foot, foot, foot), n("60")),
		"VolumeFlow m³/h": over(n("1"), hour), "VolumeFlow L/h": over(n("1e-3"), hour), "VolumeFlow L/min": over(n("1e-3"), n("60")),
		"Angle °": over(pi, n("180")), "Angle ′": over(pi, n("10800")), "Angle ″": over(pi, n("648000")),
		"Mass lb": pound, "Mass oz": over(pound, n("16")), "MassPerLength lb/kft": over(pound, kilofoot),
		"Pressure psi":  over(poundForce, times(inch, inch)),
		"Pressure atm":  times(n("1013250"), n("1e-5"), n("1e4")), // dyn over cm²
		"Pressure inHg": roundAt(t, times(n("13595.1"), gravity, inch), -3),
		"Pressure bar":  n("1e5"),
		"Speed km/h":    over(n("1000"), hour), "Speed mph": over(times(n("1760"), yard), hour), "Speed kn": over(n("1852"), hour),
		"Energy Btu(IT)": btu("4.1868"), "Energy Btu(th)": btu("4.184"), "Energy kBtu(IT)": times(n("1000"), btu("4.1868")),
		"Energy Wh": hour, "Energy kWh": times(n("1000"), hour),
		"Power Btu(IT)/h": over(btu("4.1868"), hour), "Power kBtu(IT)/h": over(times(n("1000"), btu("4.1868")), hour),
		"Power hp(mech)": times(n("550"), foot, poundForce), "Power hp(metric)": times(n("75"), gravity), "Power hp(elec)": n("746"),
		"Charge Ah": hour, "Charge mAh": over(hour, n("1000")), "JouleIntegral kA²s": times(n("1000"), n("1000")),
		"Irradiation kWh/m²": times(n("1000"), hour), "Irradiation Wh/m²": hour,
		"Resistivity Ω·cmil/ft":     over(circularMil, foot),
		"Resistivity Ω·mm²/m":       times(n("1e-3"), n("1e-3")),
		"Resistivity µΩ·cm":         times(n("1e-6"), n("1e-2")),
		"ResistancePerLength Ω/kft": over(n("1"), kilofoot),
		"ResistancePerLength Ω/ft":  over(n("1"), foot),
		"TemperatureChange °F":      over(n("100"), n("180")), // from ice to steam
		"Temperature °F":            over(n("100"), n("180")),
		"Ratio %":                   n("1/100"), "Ratio ‰": n("1/1000"), "Ratio 1": n("1"), "PerKelvin %/K": n("1/100"),
		"Elapsed min": n("60"), "Elapsed h": hour, "Elapsed d": times(n("24"), hour),
	}
	used := map[string]bool{}
	for kind, rows := range tables() {
		for _, row := range rows {
			name := kind + " " + row.Symbol
			want, ok := definitions[name]
			if !ok {
				if !powerOfTen(row.Num) || row.Den != 1 {
					t.Errorf("%s is not an SI unit with a prefix and has no definition here", name)
				}
				continue
			}
			used[name] = true
			got := factor(t, row)
			if long(row.Num) {
				want = roundAt(t, want, lastPlace(t, row.Num))
			}
			if got.Cmp(want) != 0 {
				t.Errorf("%s: %s/%d, want %s", name, row.Num, row.Den, want.FloatString(45))
			}
		}
	}
	for name := range definitions {
		if !used[name] {
			t.Errorf("%s is defined here but no unit", name)
		}
	}
}

// machin returns π to more than 40 decimals: 16·arctan(1/5) - 4·arctan(1/239).
func machin() *big.Rat {
	arctan := func(inverse int64) *big.Rat {
		const terms = 32 // 25^-32 is below 1e-44
		sum := new(big.Rat)
		power, square := big.NewRat(1, inverse), big.NewRat(1, inverse*inverse)
		for i := range int64(terms) {
			term := new(big.Rat).Mul(power, big.NewRat(1-2*(i%2), 2*i+1))
			sum.Add(sum, term)
			power.Mul(power, square)
		}
		return sum
	}
	pi := arctan(5)
	pi.Mul(pi, big.NewRat(16, 1))
	return pi.Sub(pi, new(big.Rat).Mul(big.NewRat(4, 1), arctan(239)))
}

// long reports whether the number s is written with so many digits that it
// must be a rounded one; no defined number has half as many.
func long(s string) bool {
	const digits = 33
	mantissa, _, _ := strings.Cut(s, "e")
	return len(strings.TrimLeft(strings.ReplaceAll(mantissa, ".", ""), "0")) >= digits
}

// lastPlace returns the power of ten of the last digit of the number s.
func lastPlace(t testing.TB, s string) int {
	t.Helper()
	mantissa, exponent, ok := strings.Cut(s, "e")
	power := 0
	if ok {
		var err error
		if power, err = strconv.Atoi(exponent); err != nil {
			t.Fatal(err)
		}
	}
	return power - decimals(mantissa)
}

// powerOfTen reports whether s is 1, or 1e and an exponent.
func powerOfTen(s string) bool {
	exponent, ok := strings.CutPrefix(s, "1e")
	_, err := strconv.Atoi(exponent)
	return s == "1" || ok && err == nil
}

// TestRoundAt checks the rounding that the comparison with print rests on.
func TestRoundAt(t *testing.T) {
	for _, c := range []struct {
		in    string
		power int
		want  string
	}{
		{"2.5", 0, "3"}, {"-2.5", 0, "-3"}, {"2.4999", 0, "2"}, {"0.05", -1, "0.1"},
		{"1234.5", 1, "1230"}, {"1235", 1, "1240"}, {"0", 0, "0"}, {"-0.04", -1, "0"},
	} {
		if got := roundAt(t, rat(t, c.in), c.power); got.Cmp(rat(t, c.want)) != 0 {
			t.Errorf("roundAt(%s, %d) = %s, want %s", c.in, c.power, got.RatString(), c.want)
		}
	}
}
