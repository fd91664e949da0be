package plan_test

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/examples/plan"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// TestEveryInputHasItsPath walks the inputs of the calculators that a plan
// asks. Each field has a path, which the description has, or is named here as
// one that no description states or that is an input itself.
func TestEveryInputHasItsPath(t *testing.T) {
	for _, c := range []struct {
		context string
		input   any
		none    string // fields without a path
	}{
		{"bank", battery.Battery{}, "Exponent"},
		{"bank", battery.Bank{}, "Battery Multiplier Charging"},
		{"bank", battery.Charging{}, "Reference"},
		{"bank", battery.Hold{}, "Bank Draw StateOfCharge Leads"},
		{"bank", battery.Draw{}, "Current"},
		{"bank", battery.Demand{}, "Bank Charge"},
		{"inverter", inverter.Machine{}, ""},
		{"inverter", inverter.DCSide{}, "Machine Margin"},
		{"inverter", inverter.Day{}, "On Longest"},
		{"inverter", inverter.Carry{}, "Usable"},
		{"inverter", inverter.Passage{}, ""},
		{"inverter", inverter.Demand{}, "StartFor Kind"},
		{"inverter", inverter.Limit{}, "Current Share Passes"},
		{"converter", inverter.Charger{}, ""},
		{"converter", inverter.Feed{}, "Name With Idle"},
		{"roof", solar.Panel{}, "Cells"},
		{"roof", solar.Array{}, "Panel"},
		{"roof", solar.Hookup{}, "Rules Array Controller"},
		{"roof", solar.Controller{}, "Kind InputCurrent Efficiency"},
		{"roof", solar.Strings{}, "Rules Array"},
		{"roof", solar.PanelDay{}, ""},
		{"roof", solar.DayAt{}, ""},
		{"loads", loads.Load{}, "Rating"},
		{"loads", loads.Rating{}, "Output Efficiency"},
		{"loads", inverter.Motor{}, "SoftStart"},
		{"buses", loads.Bus{}, ""},
		{"circuits", wire.Run{}, "Conductor Parallel Chassis Contacts"},
		{"circuits", wire.Conductor{}, "Strand Stated Resistivity Temperature Coated Basis"},
		{"circuits", wire.Circuit{}, "Installation Fault FaultWarm Receptacles Kind Enclosed OnBatteryPost Opens Thermoset"},
		{"circuits", wire.Installation{}, "EngineSpace System"},
		{"circuits", wire.FaultSource{}, "Chassis"},
		{"circuits", battery.Circuit{}, "Draw CutOff"},
		{"circuits", solar.Strings{}, "Rules Array"},
		{"shore", wire.Run{}, "Conductor Allowed Parallel Chassis Contacts"},
		{"shore", wire.Conductor{}, "Strand Stated Resistivity Temperature Metal Coated Basis"},
		{"shore", inverter.Limit{}, "Share Passes"},
		{"shore", inverter.Demand{}, "StartFor Kind"},
		{"bonds", inverter.Bond{}, ""},
	} {
		typ := reflect.TypeOf(c.input)
		none := strings.Fields(c.none)
		for i := range typ.NumField() {
			name := typ.Field(i).Name
			got, ok := plan.FieldPath(c.context, name)
			excused := false
			for _, n := range none {
				excused = excused || n == name
			}
			if ok && strings.HasPrefix(got, ".") {
				got = c.context + got
			}
			switch {
			case !ok && !excused:
				t.Errorf("%v.%s, asked about %s, has no path", typ, name, c.context)
			case ok && !described(got):
				t.Errorf("%v.%s: the description has no %s", typ, name, got)
			}
		}
	}
}

// described reports whether the description has a path, its indexes left out.
func described(path string) bool {
	typ := reflect.TypeFor[plan.Rig]()
	for _, name := range strings.Split(path, ".") {
		for typ.Kind() == reflect.Slice || typ.Kind() == reflect.Pointer {
			typ = typ.Elem()
		}
		if typ.Kind() != reflect.Struct {
			return false
		}
		found := false
		for i := range typ.NumField() {
			if tag, _, _ := strings.Cut(typ.Field(i).Tag.Get("json"), ","); tag == name {
				typ, found = typ.Field(i).Type, true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

func TestPathOf(t *testing.T) {
	for _, c := range []struct{ path, field, want string }{
		{"roof", "Voc", "roof.open_circuit_voltage"},
		{"roof", "losses[1].Fraction (soiling)", "roof"},
		{"roof", "OfYear", "roof.sun.day_of_year"},
		{"inverter", "LowestVoltage", "inverter.cut_off"},
		{"inverter", "demands[3].Power", "loads"},
		{"bonds", "bonds[1].With", "bonds[1].with"},
		{"bonds", "sources[0]", "bonds"},
		{"loads[4]", "Windows[2]", "loads[4].windows[2]"},
		{"loads[4]", "Rating.PowerFactor", "loads[4].power_factor"},
		{"buses[1]", "Bus.Voltage", "buses[1].voltage"},
		{"circuits[2]", "OneWay", "circuits[2].length"},
		{"circuits[2]", "Heat", "circuits[2]"},
		{"moon", "Power", "moon"},
	} {
		if got := plan.PathOf(c.path, c.field); got != c.want {
			t.Errorf("PathOf(%q, %q) = %q, want %q", c.path, c.field, got, c.want)
		}
	}
}

// TestErrorsHaveThePathsOfTheDescription asks for mistakes that a calculator
// finds.
func TestErrorsHaveThePathsOfTheDescription(t *testing.T) {
	for path, change := range map[string]func(*plan.Rig){
		"roof.open_circuit_voltage":   func(r *plan.Rig) { r.Roof.Voc = -1 * units.Volt },
		"roof.short_circuit_current":  func(r *plan.Rig) { r.Roof.Isc = 0 },
		"roof.controller.input_limit": func(r *plan.Rig) { r.Roof.Controller.InputLimit = -100 * units.Volt },
		"roof.sun.irradiation":        func(r *plan.Rig) { r.Roof.Sun.Irradiation = -1 },
		"roof.sun.day_of_year":        func(r *plan.Rig) { r.Roof.Sun.DayOfYear = 400 },
		"inverter.cut_off":            func(r *plan.Rig) { r.Inverter.CutOff = -10 * units.Volt },
		"loads[1].hours":              func(r *plan.Rig) { r.Loads[1].Hours = units.Some(25 * units.Hour) },
		"loads[11].power_factor":      func(r *plan.Rig) { r.Loads[11].PowerFactor = units.Some(2 * units.One) },
		"buses[0].voltage":            func(r *plan.Rig) { r.Buses[0].Voltage = 0 },
		"circuits[3].length":          func(r *plan.Rig) { r.Circuits[3].Length = -1 },
		"bank.discharge_limit":        func(r *plan.Rig) { r.Bank.DischargeLimit = units.Some(-1 * units.Ampere) },
		"bonds[0].with[0]":            func(r *plan.Rig) { r.Bonds[0].With = []string{"moon"} },
		"bonds[1].at":                 func(r *plan.Rig) { r.Bonds[1].At = r.Bonds[0].At },
	} {
		rig := demo(t)
		change(&rig)
		_, err := plan.Make(rig)
		var mistakes *plan.DescriptionError
		if !errors.As(err, &mistakes) || mistakes.Problems[0].Path != path {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// goName is a field or function of a calculator in text for its user.
var goName = regexp.MustCompile(`\b[A-Z][a-z]+[A-Z]\w*|\b[Gg]ive [A-Z]\w+|\band [A-Z][a-z]+\b|; [A-Z]\w+ `)

// TestAdviceIsInWordsOfTheDescription reads what the calculators' sources say
// to do and sees that no name of Go code is left in it.
func TestAdviceIsInWordsOfTheDescription(t *testing.T) {
	seen, changed := 0, 0
	for _, folder := range []string{"battery", "wire", "solar", "inverter", "loads"} {
		files, err := filepath.Glob("../../" + folder + "/*.go")
		if err != nil || len(files) == 0 {
			t.Fatal(folder, err)
		}
		for _, file := range files {
			parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(parsed, func(n ast.Node) bool {
				pair, ok := n.(*ast.KeyValueExpr)
				if !ok || strings.HasSuffix(file, "_test.go") {
					return true
				}
				if key, ok := pair.Key.(*ast.Ident); !ok || key.Name != "Fix" {
					return true
				}
				ast.Inspect(pair.Value, func(n ast.Node) bool {
					lit, ok := n.(*ast.BasicLit)
					if !ok || lit.Kind != token.STRING {
						return true
					}
					text, err := strconv.Unquote(lit.Value)
					if err != nil {
						t.Fatal(err)
					}
					said := plan.Described(text)
					if seen++; said != text {
						changed++
					}
					if name := goName.FindString(said); name != "" {
						t.Errorf("%s: %q has the name %q", file, said, name)
					}
					return true
				})
				return true
			})
		}
	}
	if seen < 60 || changed < 10 {
		t.Errorf("only %d texts, %d changed", seen, changed)
	}
}

// TestOwnWordsStay: what the owner called a load is not rewritten.
func TestOwnWordsStay(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) { r.Loads[3].Name = "Give Usable CellTemperature" })
	said := ""
	for _, f := range p.Findings {
		if f.Rule == "silent-failover" {
			said = f.Message
		}
	}
	if !strings.Contains(said, `"Give Usable CellTemperature" must not stop`) {
		t.Errorf("got %q", said)
	}
}

func TestNearest(t *testing.T) {
	list := []string{"bank", "inverter", "dc", "dc panel", "efficiency", "roof"}
	for word, want := range map[string]string{
		"bnak": "bank", "Bank": "bank", "bans": "bank", "bankk": "bank", "ban": "bank", "invetrer": "inverter", "eficiency": "efficiency",
		"efficincy": "efficiency", "ca": "", "DC": "dc", "pump": "", "furnace": "", "": "", "dc-panel": "dc panel", "room": "roof",
	} {
		if got := plan.Nearest(word, list); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
}
