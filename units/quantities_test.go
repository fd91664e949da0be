package units_test

import (
	"encoding"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/units"
)

// A subject is one quantity type, for the tests that every type must pass.
// Values are float64 in coherent SI.
type subject struct {
	zero      units.Value
	of        func(x float64) units.Value
	parse     func(s string) (float64, error)
	marshal   func(x float64) ([]byte, error)
	append    func(b []byte, x float64) ([]byte, error)
	unmarshal func(was float64, text []byte) (float64, error)
}

func subjectOf[Q units.Quantity]() subject {
	of := func(x float64) units.Value { return any(Q(x)).(units.Value) }
	return subject{
		zero:    of(0),
		of:      of,
		parse:   func(s string) (float64, error) { q, err := units.Parse[Q](s); return float64(q), err },
		marshal: func(x float64) ([]byte, error) { return any(Q(x)).(encoding.TextMarshaler).MarshalText() },
		append: func(b []byte, x float64) ([]byte, error) {
			return any(Q(x)).(encoding.TextAppender).AppendText(b)
		},
		unmarshal: func(was float64, text []byte) (float64, error) {
			q := Q(was)
			err := any(&q).(encoding.TextUnmarshaler).UnmarshalText(text)
			return float64(q), err
		},
	}
}

// subjects returns every quantity type by its name.
func subjects() map[string]subject {
	return map[string]subject{
		"Voltage":             subjectOf[units.Voltage](),
		"Current":             subjectOf[units.Current](),
		"Resistance":          subjectOf[units.Resistance](),
		"Charge":              subjectOf[units.Charge](),
		"JouleIntegral":       subjectOf[units.JouleIntegral](),
		"Resistivity":         subjectOf[units.Resistivity](),
		"ResistancePerLength": subjectOf[units.ResistancePerLength](),
		"Length":              subjectOf[units.Length](),
		"Area":                subjectOf[units.Area](),
		"Volume":              subjectOf[units.Volume](),
		"VolumeFlow":          subjectOf[units.VolumeFlow](),
		"Angle":               subjectOf[units.Angle](),
		"Mass":                subjectOf[units.Mass](),
		"MassPerLength":       subjectOf[units.MassPerLength](),
		"Pressure":            subjectOf[units.Pressure](),
		"Speed":               subjectOf[units.Speed](),
		"Frequency":           subjectOf[units.Frequency](),
		"Power":               subjectOf[units.Power](),
		"ApparentPower":       subjectOf[units.ApparentPower](),
		"Energy":              subjectOf[units.Energy](),
		"Irradiance":          subjectOf[units.Irradiance](),
		"Irradiation":         subjectOf[units.Irradiation](),
		"Ratio":               subjectOf[units.Ratio](),
		"TemperatureChange":   subjectOf[units.TemperatureChange](),
		"PerKelvin":           subjectOf[units.PerKelvin](),
		"Elapsed":             subjectOf[units.Elapsed](),
	}
}

// subjectNames returns the names of subjects in order.
func subjectNames() []string { return slices.Sorted(maps.Keys(subjects())) }

// sourceFiles returns the parsed files of the package, tests left out.
func sourceFiles(t *testing.T) []*ast.File {
	t.Helper()
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var files []*ast.File
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	return files
}

// TestSubjects fails when a type that is a quantity is not among subjects,
// and so would miss every test that goes over them.
func TestSubjects(t *testing.T) {
	var declared []string
	for _, f := range sourceFiles(t) {
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || fn.Name.Name != "kind" || fn.Recv == nil {
				continue
			}
			if name := fn.Recv.List[0].Type.(*ast.Ident).Name; name != "Temperature" {
				declared = append(declared, name)
			}
		}
	}
	slices.Sort(declared)
	if got := subjectNames(); !slices.Equal(got, declared) {
		t.Errorf("subjects() = %v, want the types that have a kind: %v", got, declared)
	}
	for name, s := range subjects() {
		if words, typ := units.KindName(s.zero); typ != name || words == "" {
			t.Errorf("the kind of %s says it is %q in Go and %q in words", name, typ, words)
		}
	}
}
