package solar_test

import (
	"maps"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// explained is any result.
type explained interface {
	Working() *working.Sheet
	Findings() []working.Finding
}

// everything returns results that make every finding and cite every source
// between them.
func everything(t *testing.T) (all []explained) {
	t.Helper()
	add := func(x explained, err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, x)
	}
	for _, latitude := range []float64{-70, 41.8, 70} {
		all = append(all, sunOn(t, latitude, 349))
	}
	typical := warm()
	typical.Losses = solar.TypicalLosses()
	all = append(all, harvest(t, typical), harvest(t, solar.PanelDay{Peak: units.Watt}))
	add(solar.CellTemperature(noon()))
	for _, series := range []units.Opt[units.Current]{units.None[units.Current](), units.Some(15 * units.Ampere), units.Some(9 * units.Ampere)} {
		for _, fuse := range []units.Opt[units.Current]{units.None[units.Current](), units.Some(8 * units.Ampere), units.Some(20 * units.Ampere)} {
			s := threeStrings()
			s.Array.Panel.SeriesFuse, s.StringFuse = series, fuse
			add(solar.Currents(s))
		}
	}
	for _, kind := range []solar.ControllerKind{solar.MPPT, solar.PWM} {
		for _, beta := range []units.Opt[units.PerKelvin]{units.None[units.PerKelvin](), units.Some(-0.15 * units.PercentPerKelvin)} {
			for _, hottest := range []units.Temperature{{}, units.Celsius(120)} {
				for _, limit := range []units.Opt[units.Current]{units.None[units.Current](), units.Some(7 * units.Ampere), units.Some(5 * units.Ampere)} {
					for _, bank := range []units.Voltage{13 * units.Volt, 70 * units.Volt, 80 * units.Volt} {
						h := demo()
						h.Controller.Kind, h.Hottest, h.Bank = kind, hottest, bank
						h.Controller.Output, h.Controller.InputCurrent = limit, limit
						h.Array.Panel.VoltageCoefficient = beta
						h.Array.Panel.Power, h.Array.Panel.Imp = 150*units.Watt, units.Some(5*units.Ampere)
						add(solar.FitController(h))
					}
				}
			}
		}
	}
	return all
}

// severities says how much each finding matters.
var severities = map[string]working.Severity{
	"string-above-controller": working.Danger, // can burn
	"string-fuse-above-label": working.Danger, // can burn

	"no-losses":                 working.Caution,
	"coefficient-unusual":       working.Caution,
	"power-not-vmp-imp":         working.Caution,
	"fill-factor-unusual":       working.Caution,
	"input-current-above-limit": working.Caution,
	"current-above-controller":  working.Caution,
	"output-limit-not-stated":   working.Caution,
	"string-below-bank":         working.Caution,
	"hot-string-below-bank":     working.Caution,
	"string-fuse-below-need":    working.Caution,
	"fuse-each-string":          working.Caution,
	"no-string-fuse-fits":       working.Caution,
	"series-fuse-not-stated":    working.Caution,

	"above-the-air":            working.Note,
	"winter-beyond-55":         working.Note,
	"temperature-not-counted":  working.Note,
	"harvest-not-accepted":     working.Note,
	"close-to-the-roof":        working.Note,
	"coefficient-not-stated":   working.Note,
	"cells-not-stated":         working.Note,
	"coldest-as-given":         working.Note,
	"input-current-not-stated": working.Note,
	"input-current-near-limit": working.Note,
	"hottest-not-stated":       working.Note,
	"hot-string-not-judged":    working.Note,
	"output-clipped":           working.Note,
	"panels-tied-to-bank":      working.Note,
	"fuse-by-the-bank":         working.Note,
}

// TestSeverities pins the severity of every rule that the package writes, and
// sees each of them.
func TestSeverities(t *testing.T) {
	seen := map[string]working.Severity{}
	for _, x := range everything(t) {
		for _, f := range x.Findings() {
			if before, again := seen[f.Rule]; again && before != f.Severity {
				t.Errorf("%s is %v and %v", f.Rule, before, f.Severity)
			}
			seen[f.Rule] = f.Severity
		}
	}
	if !maps.Equal(seen, severities) {
		t.Errorf("severities %v, want %v", seen, severities)
	}
	written := regexp.MustCompile(`Rule: "([^"]+)"`)
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		code, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range written.FindAllSubmatch(code, -1) {
			if _, ok := severities[string(m[1])]; !ok {
				t.Errorf("%s: the severity of %s is not pinned", name, m[1])
			}
		}
	}
}

// provenances says where each source that is cited comes from. One from memory
// must not be called read.
var provenances = map[string]working.Provenance{
	"690.7(A): the maker's coefficient, and the table only where there is none":                 working.Memory,
	"690.8(A)(1): 125 % of the short-circuit current":                                           working.Memory,
	"690.8(B) and 690.9(B): another 125 % for conductors and fuses":                             working.Memory,
	"690.9(A): currents from parallel strings":                                                  working.Memory,
	"1000 W/m² and 25 °C":                                                                       working.Memory,
	"equation 21, on winter months beyond 55°":                                                  working.Memory,
	"equations 21 to 25 and 34":                                                                 working.Read,
	"equation 21":                                                                               working.Read,
	"equation 35 with a_s = 0.25 and b_s = 0.50":                                                working.Read,
	"Table 690.7(A), crystalline silicon, read in a public transcription":                       working.Read,
	"direct-current power, as an open-source modelling library has it":                          working.Read,
	"system losses, as an open-source modelling library has them":                               working.Read,
	"800 W/m² and 20 °C, as an open-source modelling library has it":                            working.Read,
	"45 °C on an open rack against 49 °C on a roof, as an open-source modelling library has it": working.Read,
	"cells at 25 °C throughout, as the nameplate has it":                                        working.CommonPractice,
	"fuse by the source that can burn the conductor":                                            working.CommonPractice,
	"a hot panel loses as many volts at its maximum power as with its circuit open":             working.CommonPractice,
	"what the datasheets of panels have as a rule":                                              working.CommonPractice,
	"-0.5 %/K to -0.2 %/K":                                                                      working.CommonPractice,
	"limits of the controller, as given":                                                        working.Derived,
	"a switching controller ties the panels to the bank":                                        working.Derived,
	"a current flows into a bank only from a higher voltage":                                    working.Derived,
	"conservation of energy":                                                                    working.Derived,
}

// TestProvenances pins where every source cited comes from, and sees each.
func TestProvenances(t *testing.T) {
	seen := map[string]working.Provenance{}
	note := func(s working.Source) {
		switch {
		case s == (working.Source{}):
		case s.Place != "":
			seen[s.Place] = s.Provenance
		default:
			seen[s.Title] = s.Provenance
		}
	}
	for _, x := range everything(t) {
		for _, f := range x.Findings() {
			note(f.Source)
		}
		for _, st := range x.Working().Steps() {
			note(st.Source)
			note(st.Lookup.Source)
		}
	}
	for place, p := range seen {
		if want, ok := provenances[place]; !ok || p != want {
			t.Errorf("%q is %v, want %v (pinned: %v)", place, p, want, ok)
		}
	}
	for place := range provenances {
		if _, ok := seen[place]; !ok {
			t.Errorf("%q is cited nowhere", place)
		}
	}
}

// TestBounds takes both ends of what a field may be; what is beyond them is
// refused elsewhere.
func TestBounds(t *testing.T) {
	roof := func(change func(*solar.PanelDay)) error {
		r := warm()
		change(&r)
		_, err := solar.DailyHarvest(r)
		return err
	}
	cells := func(air, light, nominal float64) error {
		_, err := solar.CellTemperature(solar.Exposure{Air: units.Celsius(air), Irradiance: units.Irradiance(light), Nominal: units.Celsius(nominal)})
		return err
	}
	hookup := func(change func(*solar.Hookup)) error {
		h := demo()
		change(&h)
		_, err := solar.FitController(h)
		return err
	}
	for what, c := range map[string]struct {
		err  error
		good bool
	}{
		"irradiation 15":         {roof(func(r *solar.PanelDay) { r.Irradiation = 15 * units.KilowattHourPerSquareMetre }), true},
		"irradiation 15.01":      {roof(func(r *solar.PanelDay) { r.Irradiation = 15.01 * units.KilowattHourPerSquareMetre }), false},
		"cells -60":              {roof(func(r *solar.PanelDay) { r.CellTemperature = units.Celsius(-60) }), true},
		"cells -60.1":            {roof(func(r *solar.PanelDay) { r.CellTemperature = units.Celsius(-60.1) }), false},
		"cells 120":              {roof(func(r *solar.PanelDay) { r.CellTemperature = units.Celsius(120) }), true},
		"cells 120.1":            {roof(func(r *solar.PanelDay) { r.CellTemperature = units.Celsius(120.1) }), false},
		"power coefficient -1":   {roof(func(r *solar.PanelDay) { r.PowerCoefficient = units.Some(-1 * units.PercentPerKelvin) }), true},
		"power coefficient 0":    {roof(func(r *solar.PanelDay) { r.PowerCoefficient = units.Some[units.PerKelvin](0) }), true},
		"air -60":                {cells(-60, 800, 45), true},
		"air -60.1":              {cells(-60.1, 800, 45), false},
		"air 60":                 {cells(60, 800, 45), true},
		"air 60.1":               {cells(60.1, 800, 45), false},
		"light 0":                {cells(20, 0, 45), true},
		"light 1500":             {cells(20, 1500, 45), true},
		"light 1500.1":           {cells(20, 1500.1, 45), false},
		"nominal 25":             {cells(20, 800, 25), true},
		"nominal 24.9":           {cells(20, 800, 24.9), false},
		"nominal 80":             {cells(20, 800, 80), true},
		"nominal 80.1":           {cells(20, 800, 80.1), false},
		"coldest -90":            {hookup(func(h *solar.Hookup) { h.Coldest = units.Celsius(-90) }), true},
		"coldest -90.1":          {hookup(func(h *solar.Hookup) { h.Coldest = units.Celsius(-90.1) }), false},
		"coldest 25":             {hookup(func(h *solar.Hookup) { h.Coldest = units.Celsius(25) }), true},
		"hottest 25":             {hookup(func(h *solar.Hookup) { h.Hottest = units.Celsius(25) }), true},
		"hottest 120":            {hookup(func(h *solar.Hookup) { h.Hottest = units.Celsius(120) }), true},
		"hottest 120.1":          {hookup(func(h *solar.Hookup) { h.Hottest = units.Celsius(120.1) }), false},
		"1000 in series":         {hookup(func(h *solar.Hookup) { h.Array.Series = 1000 }), true},
		"1000 in parallel":       {hookup(func(h *solar.Hookup) { h.Array.Parallel = 1000 }), true},
		"an efficiency of 100 %": {hookup(func(h *solar.Hookup) { h.Controller.Efficiency = units.Some(units.One) }), true},
		"a panel of a watch": {hookup(func(h *solar.Hookup) {
			p := &h.Array.Panel
			p.Power, p.Voc, p.Vmp, p.Isc, p.Imp = 0.01*units.Watt, 0.5*units.Volt, 0.4*units.Volt, 0.03*units.Ampere, units.Some(0.025*units.Ampere)
			p.SeriesFuse, h.StringFuse, h.Bank = units.Some(0.1*units.Ampere), units.Some(0.1*units.Ampere), 0.3*units.Volt
			h.Array.Series = 1
			h.Controller = solar.Controller{Kind: solar.MPPT, InputVoltage: 0.9 * units.Volt, InputCurrent: units.Some(0.1 * units.Ampere),
				Output: units.Some(0.1 * units.Ampere), Efficiency: units.Some(50 * units.Percent)}
		}), true},
		"a peak of a watch": {roof(func(r *solar.PanelDay) { r.Peak = 0.01 * units.Watt }), true},
	} {
		if (c.err == nil) != c.good {
			t.Errorf("%s: %v", what, c.err)
		}
	}
	if solar.MaxLosses != 16 {
		t.Errorf("%d losses", solar.MaxLosses)
	}
}

// TestNumbersOfFindings pins those that a finding works out itself: a quarter
// and three quarters of what is above the air (FAO-56 equation 35), and what
// the typical losses leave (14.0757 % lost).
func TestNumbersOfFindings(t *testing.T) {
	s := sunOn(t, 41.8, 288)
	numbers := s.Findings()[0].Numbers
	for i, want := range []float64{1, 0.25, 0.75} {
		got, ok := numbers[i].Value.(units.Irradiation)
		if !ok || units.Compare(got, units.Scale(s.AboveAir, units.Ratio(want))) != 0 {
			t.Errorf("%s %v, want %v of %v", numbers[i].Name, numbers[i].Value, want, s.AboveAir)
		}
	}
	h := harvest(t, solar.PanelDay{Peak: 100 * units.Watt, Irradiation: units.KilowattHourPerSquareMetre})
	got, ok := h.Findings()[0].Numbers[1].Value.(units.Energy)
	if !ok || math.Abs(units.In(got, units.WattHour)-85.9243) > 5e-5 {
		t.Errorf("with the typical list %v, want 85.9243 Wh", h.Findings()[0].Numbers[1])
	}
	for latitude, found := range map[float64]bool{55: false, 55.1: true, -55: false} {
		if has(sunOn(t, latitude, 349).Findings(), "winter-beyond-55") != found {
			t.Errorf("%v° in December", latitude)
		}
	}
	if !slices.IsSortedFunc(fit(t, demo()).Findings(), func(a, b working.Finding) int { return int(b.Severity) - int(a.Severity) }) {
		t.Error("not worst first")
	}
}
