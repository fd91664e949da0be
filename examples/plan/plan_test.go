package plan_test

import (
	"encoding/json"
	"errors"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/drawbar/battery"
	"example.com/drawbar/examples/plan"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// demo is the invented rig that the program carries. The numbers expected of
// it were worked by hand with published formulas and tables; they are not
// published themselves.
func demo(t *testing.T) plan.Rig {
	t.Helper()
	data, err := os.ReadFile("../rig/demo.json")
	if err != nil {
		t.Fatal(err)
	}
	rig, err := plan.Read(data)
	if err != nil {
		t.Fatal(err)
	}
	return rig
}

func planOf(t *testing.T, change func(*plan.Rig)) plan.Plan {
	t.Helper()
	rig := demo(t)
	change(&rig)
	p, err := plan.Make(rig)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// found returns the severity of a finding about a part, and whether it is
// there.
func found(p plan.Plan, where, rule string) (working.Severity, bool) {
	for _, f := range p.Findings {
		if f.Rule == rule && f.Part == where {
			return f.Severity, true
		}
	}
	return 0, false
}

func TestDemoNumbers(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	for _, c := range []struct {
		what string
		got  units.Value
		want string
	}{
		{"direct loads", p.Use.Direct, "1824 Wh"},
		{"backed loads at 120 V", p.Buses[1].Energy, "845 Wh"},
		{"backed loads at the bank", p.Use.Inverted, "1285 Wh"},
		{"the inverter itself", p.Use.Idle, "336 Wh"},
		{"together", p.Use.Energy, "3109 Wh"},
		{"charge", p.Use.Charge, "243 Ah"},
		{"all direct loads at once", p.Buses[0].Current, "33.3 A"},
		{"what must not stop", p.Use.MustNotStop, "54.2 W"},
		{"with nobody there", p.Use.Unattended, "70 W"},
		{"usable", p.Bank.Usable, "3226 Wh"},
		{"hours on average", p.Bank.AtAverage.Or(0), "25 h"},
		{"hours of what must not stop", p.Bank.AtMustNotStop.Or(0), "59.5 h"},
		{"hours with nobody there", p.Bank.AtUnattended.Or(0), "46 h"},
		{"days with the sun of October", p.Bank.MustNotStopDays.Or(0), "14 d"},
		{"lost in the loop", p.Use.Loop, "173 W"},
		{"the sun", p.Sun.Harvest, "1069 Wh"},
		{"string on the coldest morning", p.Sun.ColdOpen, "104.6 V"},
		{"from the bank at full load", p.Inverter.Current, "156 A"},
		{"for conductor and device", p.Inverter.Required, "195 A"},
		{"drop of C1", p.Circuits[0].Drop, "0.19 V"},
		{"part of C1", p.Circuits[0].Fraction, "1.6 %"},
		{"drop of C2", p.Circuits[1].Drop, "0.17 V"},
		{"drop of C4", p.Circuits[3].Drop, "0.33 V"},
		{"part of C4", p.Circuits[3].Fraction, "2.8 %"},
		{"path of C4", p.Circuits[3].Path, "4.2 %"},
		{"part of C5", p.Circuits[4].Fraction, "2.6 %"},
		{"path of C5", p.Circuits[4].Path, "4.0 %"},
		{"part of C6", p.Circuits[5].Fraction, "2.1 %"},
		{"path of C6", p.Circuits[5].Path, "3.5 %"},
		{"current of C9", p.Circuits[8].Current, "27.1 A"},
		{"drop of C9", p.Circuits[8].Drop, "0.64 V"},
	} {
		printed, err := units.ParsePrinted(c.want)
		if err != nil {
			t.Fatal(err)
		}
		if agrees, err := printed.Agrees(c.got); err != nil || !agrees {
			t.Errorf("%s: %v, want %s", c.what, c.got, c.want)
		}
	}
	// 1.60 V and 10.86 V by NEC Chapter 9 Table 8, which rounds 16 AWG up by
	// 0.2 %: ours come from copper itself.
	for what, pair := range map[string][2]float64{
		"drop of C3 in volts":            {float64(p.Circuits[2].Drop), 1.60},
		"volts at the freezer":           {float64(p.Circuits[2].AtLoad), 10.86},
		"hours until the loop is mended": {units.In(p.Bank.WithLoop.Or(0), units.Hour), 14.2},
		"hours of the converter":         {units.In(p.Use.GapHours.Or(0), units.Hour), 3.15},
	} {
		if off := pair[0]/pair[1] - 1; off > 0.006 || off < -0.006 {
			t.Errorf("%s: %v, want %v within 0.6 %%", what, pair[0], pair[1])
		}
	}
}

// TestSeededMistakes finds each mistake of the demo, sees the finding go when
// the mistake is mended, and come back when it is made elsewhere.
func TestSeededMistakes(t *testing.T) {
	as := func(rating units.Current, at string) *plan.Device { return &plan.Device{Rating: rating, At: at} }
	for _, c := range []struct {
		where, rule string
		severity    working.Severity
		mend        func(*plan.Rig)
		elsewhere   string
		seed        func(*plan.Rig) // on top of mend
	}{
		{"C4", "device-above-limit", working.Danger,
			func(r *plan.Rig) { r.Circuits[3].Device = as(15*units.Ampere, "dc panel") },
			"C6", func(r *plan.Rig) { r.Circuits[5].Device = as(40*units.Ampere, "dc panel") }},
		{"converter", "bank-feeds-its-own-charger", working.Caution,
			func(r *plan.Rig) { r.Converter.Bus = "main" },
			"converter", func(r *plan.Rig) { r.Buses[2].Behind = "inverter" }},
		{"roof", "string-above-controller", working.Danger,
			func(r *plan.Rig) { r.Roof.Series = 1 },
			"roof", func(r *plan.Rig) { r.Roof.Controller.InputLimit = 50 * units.Volt }},
		{"C3", "drop-above-allowed", working.Caution,
			func(r *plan.Rig) { r.Circuits[2].Size = wire.AWG(8) },
			"C5", func(r *plan.Rig) { r.Circuits[4].Length = 40 * units.Foot }},
		{"C3", "below-cut-out", working.Caution,
			func(r *plan.Rig) { r.Circuits[2].Size = wire.AWG(8) },
			"C5", func(r *plan.Rig) { r.Loads[2].CutOut = units.Some(12.5 * units.Volt) }},
	} {
		t.Run(c.rule, func(t *testing.T) {
			if s, ok := found(planOf(t, func(*plan.Rig) {}), c.where, c.rule); !ok || s != c.severity {
				t.Errorf("not found at %s as %v: %v, %v", c.where, c.severity, s, ok)
			}
			if _, ok := found(planOf(t, c.mend), c.where, c.rule); ok {
				t.Errorf("mended, and still found at %s", c.where)
			}
			both := planOf(t, func(r *plan.Rig) { c.mend(r); c.seed(r) })
			if s, ok := found(both, c.elsewhere, c.rule); !ok || s != c.severity {
				t.Errorf("made at %s and not found there: %v, %v", c.elsewhere, s, ok)
			}
		})
	}
	// The relay that opens when the inverter runs mends the loop as well.
	p := planOf(t, func(r *plan.Rig) { r.Converter.OpensInverting = true })
	if _, ok := found(p, "converter", "bank-feeds-its-own-charger"); ok || p.Use.Loop != 0 || p.Bank.WithLoop.IsSet() {
		t.Error("a converter that opens when inverting is still a loop")
	}
}

// TestWhatMustBeSaid are things that are not mistakes and that the owner has to
// know all the same.
func TestWhatMustBeSaid(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	for _, c := range []struct{ where, rule string }{
		{"bank", "discharge-above-limit-one-out"}, {"bank", "charge-above-limit-one-out"},
		{"bank", "lithium-temperature-unknown"}, {"roof air conditioner", "starts-on-shore-only"},
		{"roof", "sun-below-use"}, {"generator", "no-neutral-bond"}, {"generator", "carbon-monoxide"},
		{"shore", "measured-without-load"}, {"alarm", "silent-failover"},
	} {
		if _, ok := found(p, c.where, c.rule); !ok {
			t.Errorf("%s: %s is not said", c.where, c.rule)
		}
	}
	sets := map[string]bool{}
	for _, s := range p.Sets {
		sets[s.On+": "+strings.Join(s.Loads, ", ")] = true
	}
	for _, s := range []string{
		"shore: roof air conditioner, water heater element",
		"shore: roof air conditioner, water heater element, converter",
		"inverter: laptops, microwave",
	} {
		if !sets[s] {
			t.Errorf("the set %q is not listed", s)
		}
	}
	if text := strings.Join(p.Cautions, " "); !strings.Contains(text, working.DeferToCode) {
		t.Errorf("cautions %q", text)
	}
	if !strings.Contains(p.Text(), "on a travel day 1152 Wh") {
		t.Error("the tow vehicle's day is not in the plan")
	}
}

// TestNotesCarryTheirNumbers: what must be said is said with its numbers, and
// the numbers of one part are not said of another.
func TestNotesCarryTheirNumbers(t *testing.T) {
	text := strings.Join(strings.Fields(planOf(t, func(*plan.Rig) {}).Text()), " ")
	for _, want := range []string{"measured 113 V", "takes 1.487 V, at 24 A", "start 7560 VA", "inverter 3000 VA", "generator 2200 VA"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in the text", want)
		}
	}
	// Said of five circuits, whose limits differ.
	if !strings.Contains(text, "for stranded wire only. Confirm the limit") {
		t.Error("the limit of one circuit is said of all")
	}
}

// TestFalseAlarms: what is in order is not found wanting.
func TestFalseAlarms(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	for _, f := range p.Findings {
		switch f.Part {
		case "C1", "C2", "C5", "C6", "C7", "C8", "C9", "C10", "shore", "inverter":
			if f.Severity > working.Note {
				t.Errorf("false alarm at %s: %v %s", f.Part, f.Severity, f.Rule)
			}
		}
		if strings.Contains(f.Rule, "hydrogen") || strings.Contains(f.Rule, "vent") {
			t.Errorf("no lead bank is aboard: %s", f.Rule)
		}
	}
	if c := p.Circuits[3]; c.Worst != working.Danger {
		t.Errorf("C4 is %v", c.Worst)
	}
}

// TestVariants change one line of the description.
func TestVariants(t *testing.T) {
	base := planOf(t, func(*plan.Rig) {})
	p := planOf(t, func(r *plan.Rig) { r.Circuits[0].Device = nil })
	if s, ok := found(p, "C1", "no-device-stated"); !ok || s != working.Danger || p.Circuits[0].Device.Stated {
		t.Errorf("a fuse that is not there: %v, %v, %q", s, ok, p.Circuits[0].Device)
	}
	p = planOf(t, func(r *plan.Rig) {
		r.Bank = plan.Bank{Chemistry: battery.Flooded, Capacity: 200 * units.AmpereHour, Voltage: 12 * units.Volt, Parallel: 2}
	})
	if part := units.RatioOf(p.Bank.Usable, base.Bank.Usable); units.Exceeds(part, 80*units.Percent) || !units.Exceeds(part, 65*units.Percent) {
		t.Errorf("two flooded batteries of 200 Ah have %v of the lithium bank", part)
	}
	text := p.Text()
	for _, word := range []string{"hydrogen", "freez"} {
		if !strings.Contains(strings.ToLower(text), word) {
			t.Errorf("a flooded bank without %q", word)
		}
	}
	if _, ok := found(p, "bank", "lithium-temperature-unknown"); ok {
		t.Error("a flooded bank with the caution for lithium")
	}
	p = planOf(t, func(r *plan.Rig) { r.Bank.CellTemperature = units.Celsius(0) })
	cold := false
	for _, f := range p.Findings {
		cold = cold || f.Part == "bank" && strings.HasPrefix(f.Rule, "lithium-") && f.Severity >= working.Caution && f.Rule != "lithium-temperature-unknown"
	}
	if _, ok := found(p, "bank", "lithium-temperature-unknown"); ok || !cold {
		t.Errorf("0 °C given: unknown %v, caution %v", ok, cold)
	}
	p = planOf(t, func(r *plan.Rig) { r.Inverter.Idle = units.Some(0 * units.Watt) })
	less := base.Use.Energy - p.Use.Energy
	if same, err := units.MustPrinted("336.0", "Wh").Agrees(less); err != nil || !same || p.Use.Idle != 0 {
		t.Errorf("idle of 0 W given: %v less, %v idle", less, p.Use.Idle)
	}
	p = planOf(t, func(r *plan.Rig) {
		r.Bonds = append(r.Bonds, plan.Bond{At: "screw in the main panel", With: []string{"shore"}})
	})
	two := false
	for _, f := range p.Findings {
		two = two || f.Part == "shore" && f.Severity == working.Danger
	}
	if !two {
		t.Error("two bonds on shore are no danger")
	}
	p = planOf(t, func(r *plan.Rig) { r.Shore.Receptacle = units.Some(50 * units.Ampere) })
	if s, ok := found(p, "shore", "cord-behind-larger-device"); !ok || s != working.Caution || p.Sources[0].Power != 3600*units.Watt {
		t.Errorf("a 50 A receptacle: %v, %v, %v", s, ok, p.Sources[0].Power)
	}
	p = planOf(t, func(r *plan.Rig) { r.Circuits[7].Device.At = "controller" })
	if s, ok := found(p, "C8", "device-at-wrong-end"); !ok || s != working.Danger {
		t.Errorf("a fuse at the controller: %v, %v", s, ok)
	}
	for bus, silent := range map[string]bool{"dc": false, "backed": false, "main": true} {
		p = planOf(t, func(r *plan.Rig) { r.Alarm = &plan.Alarm{Bus: bus, What: "message by radio"} })
		if _, ok := found(p, "alarm", "silent-failover"); ok != silent {
			t.Errorf("an alarm on %s: silent %v, want %v", bus, ok, silent)
		}
	}
	p = planOf(t, func(r *plan.Rig) { r.Roof.Sun.Irradiation = 6.5 * units.KilowattHourPerSquareMetre })
	if _, ok := found(p, "roof", "more-sun-than-there-is"); !ok {
		t.Error("more sun than above the air is not found")
	}
	p = planOf(t, func(r *plan.Rig) { r.Shore.Loaded = true })
	if _, ok := found(p, "shore", "measured-without-load"); ok {
		t.Error("a voltage read under load is said to be read without")
	}
}

// TestNothingIsSwitchedOff: a mark or a word that would take a circuit out of a
// check is refused.
func TestNothingIsSwitchedOff(t *testing.T) {
	for path, change := range map[string]func(*plan.Rig){
		"circuits[2].string":    func(r *plan.Rig) { r.Circuits[2].String = true },
		"circuits[2].regulated": func(r *plan.Rig) { r.Circuits[2].Regulated = true },
		"circuits[7].to":        func(r *plan.Rig) { r.Circuits[7].To, r.Circuits[7].Device.At = "battery", "controller" },
		"circuits[0].from":      func(r *plan.Rig) { r.Circuits[0].From, r.Circuits[0].Device.At = "house battery", "house battery" },
		"circuits[2].current":   func(r *plan.Rig) { r.Circuits[2].Current = units.Some(0.1 * units.Ampere) },
		"circuits[2].usual":     func(r *plan.Rig) { r.Circuits[2].Usual = units.Some(300 * units.Ampere) },
		"converter.bus":         func(r *plan.Rig) { r.Converter.Bus = "dc" },
		"loads[0].count":        func(r *plan.Rig) { r.Loads[0].Count = -3 },
		"bank.parallel":         func(r *plan.Rig) { r.Bank.Parallel = -1 },
	} {
		rig := demo(t)
		change(&rig)
		_, err := plan.Make(rig)
		var mistakes *plan.DescriptionError
		if !errors.As(err, &mistakes) || len(mistakes.Problems) != 1 || mistakes.Problems[0].Path != path {
			t.Errorf("%s: %v", path, err)
		}
	}
	// An inverter's cable is held against 125 % whether or not it is marked.
	p := planOf(t, func(r *plan.Rig) { r.Circuits[0].Continuous, r.Circuits[0].Device.Rating = false, 175*units.Ampere })
	if _, ok := found(p, "C1", "device-below-load"); !ok {
		t.Error("175 A for an inverter that needs 195 A is not found")
	}
	// Four strings of 7.4 A need 46.25 A, not 29.6 A, on a wire for 30 A.
	p = planOf(t, func(r *plan.Rig) { r.Roof.Panels, r.Roof.Series, r.Roof.Isc = 4, 1, 7.4*units.Ampere })
	if s, ok := found(p, "C7", "load-above-ampacity"); !ok || s != working.Danger {
		t.Error("four strings on 10 AWG are not found")
	}
}

// TestDeadLoad: what must not stop must not hang on a bus that shore power
// alone feeds.
func TestDeadLoad(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) { r.Loads[15].MustNotStop = true })
	if s, ok := found(p, "roof air conditioner", "must-not-stop-and-dead"); !ok || s != working.Danger {
		t.Errorf("found %v, %v", s, ok)
	}
	p = planOf(t, func(r *plan.Rig) { r.Loads[15].MustNotStop, r.Buses[2].Behind = true, "inverter" })
	if _, ok := found(p, "roof air conditioner", "must-not-stop-and-dead"); ok {
		t.Error("moved behind the inverter, and still found")
	}
}

// TestManyLoads: more than the search for sets takes is no mistake.
func TestManyLoads(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		for i := range 20 {
			r.Loads = append(r.Loads, plan.Load{Name: "lamp " + string(rune('a'+i)), Bus: "main", Kind: loads.Resistive,
				Power: units.Some(10 * units.Watt), Hours: units.Some(1 * units.Hour)})
		}
	})
	if _, ok := found(p, "shore", "sets-of-the-largest"); !ok {
		t.Error("loads left out of the sets, and nothing said")
	}
	const within = "A set that is in no row is within the limits"
	if strings.Contains(flat(p), within) || !strings.Contains(flat(planOf(t, func(*plan.Rig) {})), within) {
		t.Error("more is said of the sets than was looked at, or less")
	}
}

// TestSmallRig has nothing that may be left out.
func TestSmallRig(t *testing.T) {
	rig, err := plan.Read([]byte(`{
		"name": "van", "day": "any", "rules": {"direct": "RV low voltage", "alternating": "NEC 2017"},
		"buses": [{"name": "dc", "kind": "direct", "voltage": "12 V"}],
		"loads": [{"name": "lamp", "bus": "dc", "kind": "constant current", "power": "10 W", "hours": "5 h"}],
		"bank": {"chemistry": "AGM", "capacity": "100 Ah", "voltage": "12 V"}
	}`))
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(rig)
	if err != nil {
		t.Fatal(err)
	}
	if p.Use.Energy != 50*units.WattHour || p.Sun != nil || p.Inverter != nil || len(p.Circuits) != 0 {
		t.Errorf("got %+v", p)
	}
	if p.Text() == "" || p.Markdown() == "" {
		t.Error("no text")
	}
}

func TestFindingsAreSorted(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	seen := map[string]bool{}
	for i, f := range p.Findings {
		if i > 0 && f.Severity > p.Findings[i-1].Severity {
			t.Errorf("%s comes after %s", f.Rule, p.Findings[i-1].Rule)
		}
		if key := f.Part + f.Rule + f.Message; seen[key] {
			t.Errorf("%s at %s is there twice", f.Rule, f.Part)
		} else {
			seen[key] = true
		}
		if f.Message == "" || f.Mend == "" || f.Source == (plan.Source{}) || f.Rule == "" {
			t.Errorf("incomplete finding %+v", f)
		}
	}
}

// TestSheetPlan: every number of the plan has working that gives it, but a
// resistance or a device that was stated and is only repeated.
func TestSheetPlan(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	if len(p.Working()) < 40 {
		t.Errorf("only %d sheets", len(p.Working()))
	}
	for _, s := range p.Working() {
		unitstest.CheckSheet(t, s.Sheet)
	}
}

// TestRecordedPlans holds the demo's plan in all formats.
func TestRecordedPlans(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	text := p.Text()
	for i, line := range strings.Split(text, "\n") {
		if n := len([]rune(line)); n > 80 || strings.TrimRight(line, " ") != line {
			t.Errorf("line %d has %d columns or ends in a space: %q", i+1, n, line)
		}
	}
	data, err := p.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var back plan.Plan
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatalf("the JSON does not read back: %v", err)
	}
	// Six digits of each number come back.
	if diff := cmp.Diff(p, back, unitstest.Near(1e-5), cmpopts.IgnoreUnexported(plan.Plan{}, plan.SetLine{}), cmpopts.EquateEmpty()); diff != "" {
		t.Errorf("(-plan +read back)\n%s", diff)
	}
	unitstest.Golden(t, "plan/demo.txt", []byte(text))
	unitstest.Golden(t, "plan/demo.md", []byte(p.Markdown()))
	unitstest.Golden(t, "plan/demo.json", data)
}

// TestNoiseDoesNotMoveThePlan changes every quantity by a part in 1e12.
func TestNoiseDoesNotMoveThePlan(t *testing.T) {
	noisy := planOf(t, func(r *plan.Rig) {
		const up = 1 + 1e-12
		r.Bank.Capacity *= up
		r.Inverter.Continuous *= up
		r.Roof.Power *= up
		for i := range r.Circuits {
			r.Circuits[i].Length *= up
		}
	})
	if noisy.Text() != planOf(t, func(*plan.Rig) {}).Text() {
		t.Error("the plan moves with float64 noise")
	}
}

// TestDemandKeepsEveryField fills every field of a ledger's line that a demand
// has a place for and sees that none is dropped on the way.
func TestDemandKeepsEveryField(t *testing.T) {
	line, err := loads.Take(loads.Bus{Name: "backed", Kind: loads.Alternating, Voltage: 120 * units.Volt}, loads.Load{
		Name: "air conditioner", Bus: "backed", Kind: loads.Motor, Count: 1, Hours: units.Some(1 * units.Hour),
		Rating: loads.Rating{Power: units.Some(1200 * units.Watt), PowerFactor: units.Some(80 * units.Percent)},
	})
	if err != nil {
		t.Fatal(err)
	}
	got := plan.DemandOf(line, units.Some(60*units.Ampere))
	want := inverter.Demand{Name: "air conditioner", Power: 1200 * units.Watt, Kind: inverter.MotorLoad,
		Apparent: units.Some(1500 * units.VoltAmpere), Start: units.Some(7200 * units.VoltAmpere)}
	if diff := cmp.Diff(want, got, unitstest.Near(1e-12)); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	// What a demand has and a line does not: the power factor, which the
	// apparent power says already, and how long a start lasts.
	v := reflect.ValueOf(got)
	for i := range v.NumField() {
		name := v.Type().Field(i).Name
		if left := v.Field(i).IsZero(); left != (name == "PowerFactor" || name == "StartFor") {
			t.Errorf("%s left empty: %v", name, left)
		}
	}
}
