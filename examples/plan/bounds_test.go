package plan_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
)

// A place is a field of a rig that can be set.
type place struct {
	path  string
	value reflect.Value
}

// placesOf returns every field of a rig that is not made of parts, of lists the
// first entry only.
func placesOf(rig *plan.Rig) (all []place) {
	var below func(p place)
	below = func(p place) {
		switch v := p.value; {
		case v.Kind() == reflect.Pointer:
			if v.IsNil() {
				v.Set(reflect.New(v.Type().Elem()))
			}
			below(place{p.path, v.Elem()})
		case v.Kind() == reflect.Slice:
			if v.Len() == 0 {
				v.Set(reflect.MakeSlice(v.Type(), 1, 1))
			}
			below(place{p.path + "[0]", v.Index(0)})
		case v.Kind() == reflect.Struct && !isText(v):
			for i := range v.NumField() {
				name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
				if name == "" {
					name = strings.ToLower(v.Type().Field(i).Name)
				}
				below(place{strings.TrimPrefix(p.path+"."+name, "."), v.Field(i)})
			}
		default:
			all = append(all, p)
		}
	}
	below(place{"", reflect.ValueOf(rig).Elem()})
	return all
}

// isText reports whether a value is written as text of its own.
func isText(v reflect.Value) bool {
	_, ok := v.Addr().Interface().(interface{ UnmarshalText([]byte) error })
	return ok
}

func some[Q units.Quantity](o *units.Opt[Q], x float64) { *o = units.Some(Q(x)) }

// set sets a quantity or a count, in the units that Go keeps it in, and reports
// whether the field is one.
func set(v reflect.Value, x float64) bool {
	switch o := v.Addr().Interface().(type) {
	case *units.Opt[units.Voltage]:
		some(o, x)
	case *units.Opt[units.Current]:
		some(o, x)
	case *units.Opt[units.Power]:
		some(o, x)
	case *units.Opt[units.ApparentPower]:
		some(o, x)
	case *units.Opt[units.Ratio]:
		some(o, x)
	case *units.Opt[units.Elapsed]:
		some(o, x)
	case *units.Opt[units.Length]:
		some(o, x)
	case *units.Opt[units.Area]:
		some(o, x)
	case *units.Opt[units.Resistance]:
		some(o, x)
	case *units.Opt[units.PerKelvin]:
		some(o, x)
	case *units.Opt[units.Angle]:
		some(o, x)
	case *units.Temperature:
		*o = units.Celsius(x)
	case *int:
		if *o = int(min(x, 1e9)); math.IsNaN(x) {
			*o = math.MinInt
		}
	default:
		if v.Kind() != reflect.Float64 {
			return false
		}
		v.SetFloat(x)
	}
	return true
}

// mayBeNegative are the only quantities of which some negative number is
// allowed, with one that is: it is cold, south, or less with every kelvin.
func mayBeNegative() map[string]float64 {
	return map[string]float64{
		"bank.charge_low": -20, "bank.charge_high": -1, "bank.cell_temperature": -20, "roof.coldest": -40, "roof.cell_temperature": -5,
		"bank.compensation": -0.004, "bank.coldest": -10, "circuits[0].ambient": -10, "roof.sun.latitude": -0.5, "roof.voltage_coefficient": -0.003, "roof.power_coefficient": -0.004,
	}
}

// onlyProblem wants one mistake of err, at path.
func onlyProblem(t *testing.T, what, path string, err error) plan.Problem {
	t.Helper()
	var mistakes *plan.DescriptionError
	if !errors.As(err, &mistakes) || len(mistakes.Problems) != 1 || mistakes.Problems[0].Path != path {
		t.Errorf("%s at %s: %v", what, path, err)
		return plan.Problem{}
	}
	return mistakes.Problems[0]
}

// TestEveryQuantityHasBounds sets every quantity and count of a rig to numbers
// that it cannot have. None is believed, whatever the rig does with it.
func TestEveryQuantityHasBounds(t *testing.T) {
	limited := plan.Limited()
	seen := map[string]bool{}
	for i := range placesOf(new(plan.Rig)) {
		wrong := map[string]float64{"huge": 1e12, "negative": -1e-3}
		if i%2 == 0 {
			wrong["NaN"], wrong["infinite"] = math.NaN(), math.Inf(1)
		} else {
			wrong["very negative"] = -1e9
		}
		for what, x := range wrong {
			rig := demo(t)
			at := placesOf(&rig)[i]
			if !set(at.value, x) {
				continue
			}
			seen[strings.ReplaceAll(at.path, "[0]", "[]")] = true
			if x, ok := mayBeNegative()[at.path]; ok && what == "negative" {
				// A rig with it is planned.
				set(at.value, x)
				if at.path == "bank.charge_high" {
					rig.Bank.ChargeLow = units.Celsius(-20)
				}
				fill(&rig)
				if _, err := plan.Make(rig); err != nil {
					t.Errorf("%s = %v: %v", at.path, x, err)
				}
				continue
			}
			if what == "negative" && at.value.Kind() == reflect.Int {
				set(at.value, -1)
			}
			fill(&rig)
			_, err := plan.Make(rig)
			p := onlyProblem(t, what, at.path, err)
			if p.Value == "" || p.Allowed == "" || !strings.ContainsAny(p.Allowed, "0123456789") {
				t.Errorf("%s: %+v says no value or no range", at.path, p)
			}
		}
	}
	for path := range seen {
		if !limited[path] {
			t.Errorf("%s has no limits", path)
		}
	}
	for path := range limited {
		if !seen[path] {
			t.Errorf("limits of %s, which there is not", path)
		}
	}
}

// fill puts into a rig what placesOf made empty.
func fill(r *plan.Rig) {
	r.Alarm = nil
	r.Places = nil
	if len(r.Loads[0].Windows) > 0 {
		r.Loads[0].Windows = nil
	}
	if len(r.Circuits[0].Loads) > 0 {
		r.Circuits[0].Loads = nil
	}
}

// wholeDemo returns the demo as JSON, with every list and part in it.
func wholeDemo(t *testing.T) (all map[string]any) {
	t.Helper()
	data, err := os.ReadFile("../rig/demo.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	for path, more := range map[string]string{
		"alarm": `{"bus": "dc", "what": "a radio"}`, "places": `["closet"]`,
		"loads[0].windows": `[{"from": "18:00", "to": "22:30"}]`, "circuits[0].loads": `["lamps"]`,
	} {
		var v any
		if err := json.Unmarshal([]byte(more), &v); err != nil || !put(all, path, v) {
			t.Fatal(path, err)
		}
	}
	// A load has either hours or windows.
	if !put(all, "loads[0].hours", gone{}) {
		t.Fatal("no hours to take out")
	}
	return all
}

// readJSON reads a description that was changed.
func readJSON(t *testing.T, all map[string]any) error {
	t.Helper()
	data, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	_, err = plan.Read(data)
	return err
}

// TestEveryFieldInText gives every field of a description what it is not, and
// sees that this is the one mistake, told at its path with what was written.
func TestEveryFieldInText(t *testing.T) {
	if err := readJSON(t, wholeDemo(t)); err != nil {
		t.Fatal(err)
	}
	count := 0
	// Each field has two of the mistakes, in turn: one that has no type and one
	// that has, so that each is tried on many fields.
	for i, at := range placesOf(new(plan.Rig)) {
		wrongs := [...]any{nil, "-5 smoots", []any{}, "nan", map[string]any{}, " ", 1.5, "bell \x07"}
		for _, wrong := range []any{wrongs[2*i%8], wrongs[(2*i+3)%8]} {
			if text, ok := wrong.(string); ok && at.value.Kind() == reflect.String && text != " " && text != "bell \x07" {
				continue // any name will do
			}
			all := wholeDemo(t)
			if !put(all, at.path, wrong) {
				t.Fatalf("no place for %s", at.path)
			}
			count++
			p := onlyProblem(t, fmt.Sprintf("%#v", wrong), at.path, readJSON(t, all))
			if text, ok := wrong.(string); ok && p.Value != strconv.Quote(text) || p.Allowed == "" || !inSchema(p.Path) {
				t.Errorf("%s = %#v: %+v", at.path, wrong, p)
			}
		}
	}
	if count < 200 {
		t.Errorf("only %d mistakes", count)
	}
}

// TestEveryFieldLeftOut takes out every field in turn: what must be there is
// the one mistake, with what it would be.
func TestEveryFieldLeftOut(t *testing.T) {
	missing := 0
	for _, at := range placesOf(new(plan.Rig)) {
		all := wholeDemo(t)
		if strings.HasSuffix(at.path, "]") || !put(all, at.path, gone{}) {
			continue
		}
		if err := readJSON(t, all); err != nil {
			missing++
			if p := onlyProblem(t, "left out", at.path, err); p.Value != "" || p.Allowed == "" {
				t.Errorf("%s left out: %+v", at.path, p)
			}
		}
	}
	if missing < 30 {
		t.Errorf("only %d fields must be there", missing)
	}
}

// gone is a field that is to be taken out.
type gone struct{}

// put sets what is at a path of JSON, and reports whether there is a place for
// it.
func put(all map[string]any, path string, value any) bool {
	var here any = all
	steps := strings.Split(strings.NewReplacer("[", ".", "]", "").Replace(path), ".")
	for i, step := range steps {
		last := i == len(steps)-1
		switch at := here.(type) {
		case map[string]any:
			if here = at[step]; last {
				at[step] = value
			}
			if value == (gone{}) && last {
				delete(at, step)
			}
		case []any:
			n, err := strconv.Atoi(step)
			if err != nil || n >= len(at) {
				return false
			}
			if here = at[n]; last {
				at[n] = value
			}
		default:
			return false
		}
	}
	return true
}

// inSchema reports whether a description has a path.
func inSchema(path string) bool {
	typ := reflect.TypeFor[plan.Rig]()
	for _, name := range strings.Split(path, ".") {
		name, _, _ = strings.Cut(name, "[")
		for typ.Kind() == reflect.Slice || typ.Kind() == reflect.Pointer {
			typ = typ.Elem()
		}
		if typ.Kind() != reflect.Struct {
			return false
		}
		there := false
		for i := range typ.NumField() {
			field := typ.Field(i)
			tag, _, _ := strings.Cut(field.Tag.Get("json"), ",")
			if tag == name || tag == "" && strings.EqualFold(field.Name, name) {
				typ, there = field.Type, true
				break
			}
		}
		if !there {
			return false
		}
	}
	return true
}
