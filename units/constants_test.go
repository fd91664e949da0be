package units_test

import (
	"go/ast"
	"go/token"
	"strings"
	"testing"

	"example.com/drawbar/units"
)

// A declared constant of a quantity type, as the source has it.
type declared struct {
	name, typ, literal, comment string
}

// declaredConstants returns the exported constants of quantity types.
func declaredConstants(t *testing.T) []declared {
	t.Helper()
	var out []declared
	for _, f := range sourceFiles(t) {
		for _, d := range f.Decls {
			group, ok := d.(*ast.GenDecl)
			if !ok || group.Tok != token.CONST {
				continue
			}
			for _, spec := range group.Specs {
				v := spec.(*ast.ValueSpec)
				typ, ok := v.Type.(*ast.Ident)
				if _, quantity := subjects()[identName(typ)]; !ok || !quantity || !v.Names[0].IsExported() {
					continue
				}
				literal, ok := v.Values[0].(*ast.BasicLit)
				if !ok {
					t.Errorf("%s is not a plain decimal: every unit constant is its own", v.Names[0].Name)
					continue
				}
				out = append(out, declared{v.Names[0].Name, typ.Name, literal.Value, strings.TrimSpace(v.Comment.Text())})
			}
		}
	}
	return out
}

func identName(id *ast.Ident) string {
	if id == nil {
		return ""
	}
	return id.Name
}

// TestConstants holds every declared unit constant to the row of its unit:
// the constant's comment names the unit and where its value comes from, its
// decimal is the exact factor to as many digits as stand there, and every
// row has one constant.
func TestConstants(t *testing.T) {
	used := map[string]string{}
	for _, c := range declaredConstants(t) {
		symbol, source, ok := strings.Cut(c.comment, "; ")
		if !ok || !fromSomewhere(source) {
			t.Errorf("%s: the comment %q wants the unit, a semicolon and where the value comes from", c.name, c.comment)
			continue
		}
		key := c.typ + " " + symbol
		if other := used[key]; other != "" {
			t.Errorf("%s and %s are both %s", c.name, other, key)
		}
		used[key] = c.name
		row := rowOf(t, c.typ, symbol)
		literal := rat(t, c.literal)
		if got, _ := literal.Float64(); got != row.Float {
			t.Errorf("%s is %v, its row has %v", c.name, got, row.Float)
		}
		want := factor(t, row)
		if long(c.literal) && !strings.HasPrefix(source, "exact") {
			want = roundAt(t, want, lastPlace(t, c.literal))
		}
		if literal.Cmp(want) != 0 {
			t.Errorf("%s = %s is not %s/%d to its last digit", c.name, c.literal, row.Num, row.Den)
		}
	}
	for kind, s := range subjects() {
		for _, row := range units.Rows(s.zero) {
			if used[kind+" "+row.Symbol] == "" {
				t.Errorf("%s %s has no exported constant", kind, row.Symbol)
			}
		}
	}
	t.Logf("%d constants", len(used))
}

// fromSomewhere reports whether the comment of a constant begins with one of
// the words that the package comment explains.
func fromSomewhere(source string) bool {
	for _, word := range []string{"exact: ", "derived: ", "SI base unit", "SI derived unit", "SI prefix", "conventional, ", "the number one"} {
		if strings.HasPrefix(source, word) {
			return true
		}
	}
	return false
}

// TestConstantValues pins a constant of each type where a reader would look
// it up, through the compiled package and not its tables. They are compared
// settled: a typed constant is a float64 before a number is multiplied with
// it, so 2.5*SquareMillimetre is a bit below 2.5e-6.
func TestConstantValues(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"12.8 V", float64(12.8 * units.Volt), 12.8},
		{"250 mA", float64(250 * units.Milliampere), 0.25},
		{"1.5 mΩ", float64(1.5 * units.Milliohm), 0.0015},
		{"100 Ah", float64(100 * units.AmpereHour), 360000},
		{"2 kA²s", float64(2 * units.KiloampereSquaredSecond), 2e6},
		{"15 ft", float64(15 * units.Foot), 4.572},
		{"2.5 mm²", float64(2.5 * units.SquareMillimetre), 2.5e-6},
		{"1 US gallon", float64(units.GallonUS), 0.003785411784},
		{"1 cfm", float64(units.CubicFootPerMinute), 0.0004719474432},
		{"100 lb", float64(100 * units.Pound), 45.359237},
		{"60 mph", float64(60 * units.MilePerHour), 26.8224},
		{"60 Hz", float64(60 * units.Hertz), 60},
		{"1 hp", float64(units.MechanicalHorsepower), 745.69987158227022},
		{"50 kVA", float64(50 * units.KilovoltAmpere), 50000},
		{"1 kWh", float64(units.KilowattHour), 3.6e6},
		{"1 kW/m²", float64(units.KilowattPerSquareMetre), 1000},
		{"1 kWh/m²", float64(units.KilowattHourPerSquareMetre), 3.6e6},
		{"30 %", float64(30 * units.Percent), 0.3},
		{"9 °F", float64(9 * units.FahrenheitDegree), 5},
		{"0.393 %/K", float64(0.393 * units.PercentPerKelvin), 0.00393},
		{"1 d", float64(units.Day), 86400},
		{"180°", float64(180 * units.Degree), 3.141592653589793},
		{"1 Ω/kft", float64(1000 * units.OhmPerKilofoot), 1 / 0.3048},
		{"1 atm", float64(units.Atmosphere), 101325},
		{"1 lb/kft", float64(1000 * units.PoundPerKilofoot), 0.45359237 / 0.3048},
		{"1 Ω·mm²/m", float64(units.OhmSquareMillimetrePerMetre), 1e-6},
	} {
		if units.Compare(c.got, c.want) != 0 {
			t.Errorf("%s = %v, want %v", c.name, c.got, c.want)
		}
	}
}
